//! A bounded cache of answers, each for as long as it may be used.

use std::collections::HashMap;
use std::hash::Hash;
use std::time::Instant;

use super::lifetime::Lifetime;

/// A bounded cache of one kind of answer. Time is an argument, so that tests need not wait.
#[derive(Debug)]
pub struct ExpiringCache<K, V> {
    entries: HashMap<K, CacheEntry<V>>,
    max_entries: usize,
}

#[derive(Debug)]
struct CacheEntry<V> {
    fresh_until: Instant,
    stale_until: Instant,
    value: V,
}

impl<K: Copy + Eq + Hash, V: Clone> ExpiringCache<K, V> {
    /// A cache of at most `max_entries` keys.
    pub fn new(max_entries: usize) -> Self {
        Self { entries: HashMap::new(), max_entries }
    }

    /// The value of a key, unless it has expired.
    pub fn get(&self, key: K, now: Instant) -> Option<V> {
        self.entries.get(&key).filter(|entry| now < entry.fresh_until).map(|entry| entry.value.clone())
    }

    /// The value of a key, also when it has expired, as long as it may be used for want of a newer one.
    pub fn get_stale(&self, key: K, now: Instant) -> Option<V> {
        self.entries.get(&key).filter(|entry| now < entry.stale_until).map(|entry| entry.value.clone())
    }

    /// Stores a value for its lifetime. In a full cache it replaces the entry that would expire first.
    pub fn insert(&mut self, key: K, value: V, lifetime: Lifetime, now: Instant) {
        self.entries.remove(&key);
        let Some(fresh_until) = now.checked_add(lifetime.fresh) else { return };
        let Some(stale_until) = fresh_until.checked_add(lifetime.stale).filter(|end| *end > now) else { return };
        self.entries.retain(|_, entry| now < entry.stale_until);
        if self.entries.len() >= self.max_entries {
            let first = self.entries.iter().min_by_key(|(_, entry)| entry.fresh_until).map(|(key, _)| *key);
            first.and_then(|key| self.entries.remove(&key));
        }
        self.entries.insert(key, CacheEntry { fresh_until, stale_until, value });
    }

    /// Removes the value of a key.
    pub fn remove(&mut self, key: K) {
        self.entries.remove(&key);
    }
}

#[cfg(test)]
mod tests {
    use std::time::Duration;

    use super::*;

    const MINUTE: Duration = Duration::from_secs(60);

    fn fresh(minutes: u32) -> Lifetime {
        Lifetime::fresh(MINUTE * minutes)
    }

    #[test]
    fn a_value_lasts_for_its_lifetime_and_no_longer() {
        let (mut cache, start) = (ExpiringCache::new(4), Instant::now());
        cache.insert(44, "snow", fresh(1), start);
        assert_eq!(cache.get(44, start + MINUTE / 2), Some("snow"));
        assert_eq!((cache.get(44, start + MINUTE), cache.get_stale(44, start + MINUTE)), (None, None));
        assert_eq!(cache.get(45, start), None);
        cache.insert(44, "sun", fresh(0), start);
        assert_eq!(cache.get(44, start), None, "a value that must not be used again is");
        cache.insert(44, "rain", fresh(1), start);
        cache.remove(44);
        assert_eq!(cache.get(44, start), None);
    }

    #[test]
    fn a_value_that_has_expired_is_given_only_where_a_stale_one_is_asked_for() {
        let (mut cache, start) = (ExpiringCache::new(4), Instant::now());
        for fresh in [MINUTE, Duration::ZERO] {
            cache.insert(44, "snow", Lifetime { fresh, stale: MINUTE }, start);
            assert_eq!(cache.get(44, start + fresh), None);
            assert_eq!(cache.get_stale(44, start + fresh), Some("snow"));
            assert_eq!(cache.get_stale(44, start + fresh + MINUTE), None);
        }
    }

    #[test]
    fn a_full_cache_drops_what_has_ended_then_what_would_end_first() {
        let (mut cache, start) = (ExpiringCache::new(2), Instant::now());
        cache.insert(1, 1, fresh(3), start);
        cache.insert(2, 2, Lifetime { stale: 9 * MINUTE, ..fresh(2) }, start);
        cache.insert(3, 3, fresh(4), start);
        let cached = |cache: &ExpiringCache<i32, i32>, now| [1, 2, 3, 4].map(|key| cache.get_stale(key, now));
        assert_eq!(cached(&cache, start), [Some(1), None, Some(3), None]);
        cache.insert(4, 4, fresh(1), start + 3 * MINUTE);
        assert_eq!(cached(&cache, start + 3 * MINUTE), [None, None, Some(3), Some(4)]);
        cache.insert(4, 5, fresh(1), start + 3 * MINUTE);
        assert_eq!(
            cached(&cache, start + 3 * MINUTE),
            [None, None, Some(3), Some(5)],
            "the same key takes no second entry"
        );
    }
}
