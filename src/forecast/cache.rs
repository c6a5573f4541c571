//! A bounded cache of the service's answers, and how long each may be used.

use std::collections::HashMap;
use std::time::{Duration, Instant};

use super::grid_point::GridPoint;

/// A bounded cache of one kind of answer, by place. Time is an argument, so that tests need not wait.
#[derive(Debug)]
pub struct ExpiringCache<V> {
    entries: HashMap<GridPoint, CacheEntry<V>>,
    max_entries: usize,
}

#[derive(Debug)]
struct CacheEntry<V> {
    expires_at: Instant,
    value: V,
}

impl<V: Clone> ExpiringCache<V> {
    /// A cache of at most `max_entries` places.
    pub fn new(max_entries: usize) -> Self {
        Self { entries: HashMap::new(), max_entries }
    }

    /// The value of a place, unless it has expired.
    pub fn get(&self, grid_point: GridPoint, now: Instant) -> Option<V> {
        self.entries.get(&grid_point).filter(|entry| now < entry.expires_at).map(|entry| entry.value.clone())
    }

    /// Stores a value for `lifetime`. In a full cache it replaces the entry that would expire first.
    pub fn insert(&mut self, grid_point: GridPoint, value: V, lifetime: Duration, now: Instant) {
        self.entries.remove(&grid_point);
        let Some(expires_at) = now.checked_add(lifetime).filter(|expires_at| *expires_at > now) else { return };
        self.entries.retain(|_, entry| now < entry.expires_at);
        if self.entries.len() >= self.max_entries {
            let first =
                self.entries.iter().min_by_key(|(_, entry)| entry.expires_at).map(|(grid_point, _)| *grid_point);
            first.and_then(|grid_point| self.entries.remove(&grid_point));
        }
        self.entries.insert(grid_point, CacheEntry { expires_at, value });
    }

    /// Removes the value of a place.
    pub fn remove(&mut self, grid_point: GridPoint) {
        self.entries.remove(&grid_point);
    }
}

/// How long an answer may be used again, from its `Cache-Control` and `Age` (RFC 9111). Zero unless the answer says otherwise:
/// this is a shared cache.
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

    fn grid_point(latitude: f64) -> GridPoint {
        GridPoint::from(Location { latitude, longitude: -68.0 })
    }

    const MINUTE: Duration = Duration::from_secs(60);

    #[test]
    fn a_value_lasts_for_its_lifetime_and_no_longer() {
        let (mut cache, start) = (ExpiringCache::new(4), Instant::now());
        cache.insert(grid_point(44.0), "snow", MINUTE, start);
        assert_eq!(cache.get(grid_point(44.0), start + MINUTE / 2), Some("snow"));
        assert_eq!(cache.get(grid_point(44.0), start + MINUTE), None);
        assert_eq!(cache.get(grid_point(45.0), start), None);
        cache.insert(grid_point(44.0), "sun", Duration::ZERO, start);
        assert_eq!(cache.get(grid_point(44.0), start), None, "a value that must not be used again is");
        cache.insert(grid_point(44.0), "rain", MINUTE, start);
        cache.remove(grid_point(44.0));
        assert_eq!(cache.get(grid_point(44.0), start), None);
    }

    #[test]
    fn a_full_cache_drops_what_has_ended_then_what_would_end_first() {
        let (mut cache, start) = (ExpiringCache::new(2), Instant::now());
        cache.insert(grid_point(1.0), 1, 3 * MINUTE, start);
        cache.insert(grid_point(2.0), 2, 2 * MINUTE, start);
        cache.insert(grid_point(3.0), 3, 4 * MINUTE, start);
        let cached = |cache: &ExpiringCache<i32>, now| [1.0, 2.0, 3.0, 4.0].map(|at| cache.get(grid_point(at), now));
        assert_eq!(cached(&cache, start), [Some(1), None, Some(3), None]);
        cache.insert(grid_point(4.0), 4, MINUTE, start + 3 * MINUTE);
        assert_eq!(cached(&cache, start + 3 * MINUTE), [None, None, Some(3), Some(4)]);
        cache.insert(grid_point(4.0), 5, MINUTE, start + 3 * MINUTE);
        assert_eq!(
            cached(&cache, start + 3 * MINUTE),
            [None, None, Some(3), Some(5)],
            "the same place takes no second entry"
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
