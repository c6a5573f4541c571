//! What is remembered of the service's answers, and how long.

use std::collections::HashMap;
use std::time::{Duration, Instant};

use super::place::Place;

/// A bounded memory of one kind of answer, by place. Time is an argument, so that tests need not wait.
#[derive(Debug)]
pub struct Cache<V> {
    entries: HashMap<Place, Entry<V>>,
    most: usize,
}

#[derive(Debug)]
struct Entry<V> {
    until: Instant,
    value: V,
}

impl<V: Clone> Cache<V> {
    /// A memory of at most so many places.
    pub fn new(most: usize) -> Self {
        Self { entries: HashMap::new(), most }
    }

    /// What is remembered of a place and still holds.
    pub fn get(&self, place: Place, now: Instant) -> Option<V> {
        self.entries.get(&place).filter(|entry| now < entry.until).map(|entry| entry.value.clone())
    }

    /// Remembers a value for a while. In a full memory, the one that would end first makes room.
    pub fn put(&mut self, place: Place, value: V, lifetime: Duration, now: Instant) {
        self.entries.remove(&place);
        let Some(until) = now.checked_add(lifetime).filter(|until| *until > now) else { return };
        self.entries.retain(|_, entry| now < entry.until);
        if self.entries.len() >= self.most {
            let first = self.entries.iter().min_by_key(|(_, entry)| entry.until).map(|(place, _)| *place);
            first.and_then(|place| self.entries.remove(&place));
        }
        self.entries.insert(place, Entry { until, value });
    }

    /// Forgets a place.
    pub fn forget(&mut self, place: Place) {
        self.entries.remove(&place);
    }
}

/// How long an answer may be used again, from its `Cache-Control` and `Age` (RFC 9111): not at all unless it says so, for this is
/// a memory that callers share.
pub fn lifetime(cache_control: &str, age: &str) -> Duration {
    let directives: Vec<_> = cache_control.split(',').map(|directive| directive.trim().to_ascii_lowercase()).collect();
    let is_barred = |directive: &String| {
        let name = directive.split('=').next().unwrap_or_default().trim_end();
        ["no-store", "no-cache", "private"].contains(&name)
    };
    if directives.iter().any(is_barred) {
        return Duration::ZERO;
    }
    let seconds = |name: &str| {
        let value = directives.iter().find_map(|directive| directive.strip_prefix(name)?.strip_prefix('='))?;
        value.trim_matches('"').parse::<u32>().ok()
    };
    let fresh = seconds("s-maxage").or_else(|| seconds("max-age")).unwrap_or(0);
    Duration::from_secs(fresh.saturating_sub(age.trim().parse::<u32>().unwrap_or(0)).into())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calculation::input::Location;

    fn place(latitude: f64) -> Place {
        Place::from(Location { latitude, longitude: -68.0 })
    }

    const MINUTE: Duration = Duration::from_secs(60);

    #[test]
    fn a_value_holds_for_its_lifetime_and_no_longer() {
        let (mut cache, start) = (Cache::new(4), Instant::now());
        cache.put(place(44.0), "snow", MINUTE, start);
        assert_eq!(cache.get(place(44.0), start + MINUTE / 2), Some("snow"));
        assert_eq!(cache.get(place(44.0), start + MINUTE), None);
        assert_eq!(cache.get(place(45.0), start), None);
        cache.put(place(44.0), "sun", Duration::ZERO, start);
        assert_eq!(cache.get(place(44.0), start), None, "a value that must not be used again is");
        cache.put(place(44.0), "rain", MINUTE, start);
        cache.forget(place(44.0));
        assert_eq!(cache.get(place(44.0), start), None);
    }

    #[test]
    fn a_full_memory_drops_what_has_ended_then_what_would_end_first() {
        let (mut cache, start) = (Cache::new(2), Instant::now());
        cache.put(place(1.0), 1, 3 * MINUTE, start);
        cache.put(place(2.0), 2, 2 * MINUTE, start);
        cache.put(place(3.0), 3, 4 * MINUTE, start);
        let held = |cache: &Cache<i32>, now| [1.0, 2.0, 3.0, 4.0].map(|at| cache.get(place(at), now));
        assert_eq!(held(&cache, start), [Some(1), None, Some(3), None]);
        cache.put(place(4.0), 4, MINUTE, start + 3 * MINUTE);
        assert_eq!(held(&cache, start + 3 * MINUTE), [None, None, Some(3), Some(4)]);
        cache.put(place(4.0), 5, MINUTE, start + 3 * MINUTE);
        assert_eq!(
            held(&cache, start + 3 * MINUTE),
            [None, None, Some(3), Some(5)],
            "the same place takes no more room"
        );
    }

    #[test]
    fn a_lifetime_is_what_the_service_allows() {
        let seconds = |text: &str, age| lifetime(text, age).as_secs();
        assert_eq!(seconds("public, max-age=600, s-maxage=900", ""), 900);
        assert_eq!(seconds("Max-Age=600", "200"), 400);
        assert_eq!(seconds("max-age=600", "700"), 0);
        assert_eq!(seconds("max-age=\"600\"", ""), 600);
        for barred in
            ["", "no-store", "no-cache, max-age=600", "private, max-age=600", "private=\"x\", max-age=9", "max-age"]
        {
            assert_eq!(seconds(barred, ""), 0, "{barred}");
        }
        assert_eq!(seconds("max-age=-5", ""), 0);
    }
}
