//! How long an answer may be used, from its `Cache-Control` and `Age` (RFC 9111, RFC 5861).

use std::time::Duration;

/// How long an answer may be used.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Lifetime {
    /// In place of a new one.
    pub fresh: Duration,
    /// After that, when the service gives no new one: `stale-if-error`.
    pub stale: Duration,
}

impl Lifetime {
    /// A lifetime that ends when the answer is no longer fresh.
    pub fn fresh(fresh: Duration) -> Self {
        Self { fresh, stale: Duration::ZERO }
    }

    /// The lifetime that an answer states. Zero unless it says otherwise: this is a shared cache.
    ///
    /// Also where `s-maxage` is stated, `stale-if-error` holds: who writes both means both.
    pub fn stated(cache_control: &str, age: &str) -> Self {
        let directives: Vec<_> =
            cache_control.split(',').map(|directive| directive.trim().to_ascii_lowercase()).collect();
        let has_any = |names: &[&str]| {
            let name = |directive: &str| directive.split('=').next().unwrap_or_default().trim_end().to_owned();
            directives.iter().any(|directive| names.contains(&name(directive).as_str()))
        };
        if has_any(&["no-store", "no-cache", "private"]) {
            return Self::default();
        }
        let seconds = |name: &str| {
            let value = directives.iter().find_map(|directive| directive.strip_prefix(name)?.strip_prefix('='))?;
            value.trim_matches('"').parse::<u32>().ok()
        };
        let age = age.trim().parse::<u32>().unwrap_or(0);
        let fresh = seconds("s-maxage").or_else(|| seconds("max-age")).unwrap_or(0);
        let stale = if has_any(&["must-revalidate", "proxy-revalidate"]) { None } else { seconds("stale-if-error") };
        let time = |seconds: u32| Duration::from_secs(seconds.into());
        Self {
            fresh: time(fresh.saturating_sub(age)),
            // What it is already too old for is over.
            stale: time(stale.unwrap_or(0).saturating_sub(age.saturating_sub(fresh))),
        }
    }

    /// The same lifetime, cut off.
    #[must_use]
    pub fn at_most(self, fresh: Duration, stale: Duration) -> Self {
        Self { fresh: self.fresh.min(fresh), stale: self.stale.min(stale) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn seconds(cache_control: &str, age: &str) -> (u64, u64) {
        let lifetime = Lifetime::stated(cache_control, age);
        (lifetime.fresh.as_secs(), lifetime.stale.as_secs())
    }

    #[test]
    fn an_answer_is_fresh_for_as_long_as_the_service_says() {
        let fresh = |cache_control, age| seconds(cache_control, age).0;
        assert_eq!(fresh("public, max-age=600, s-maxage=900", ""), 900);
        assert_eq!(fresh("Max-Age=600", "200"), 400);
        assert_eq!(fresh("max-age=600", "700"), 0);
        assert_eq!(fresh("max-age=\"600\"", ""), 600);
        for barred in
            ["", "no-store", "no-cache, max-age=600", "private, max-age=600", "private=\"x\", max-age=9", "max-age"]
        {
            assert_eq!(fresh(barred, ""), 0, "{barred}");
        }
        assert_eq!(fresh("max-age=-5", ""), 0);
    }

    #[test]
    fn an_old_answer_may_stand_in_only_where_the_service_says_so() {
        assert_eq!(seconds("max-age=600, stale-if-error=3600", ""), (600, 3600));
        assert_eq!(seconds("s-maxage=600, Stale-If-Error=\"3600\"", "100"), (500, 3600));
        assert_eq!(seconds("max-age=600, stale-if-error=3600", "700"), (0, 3500));
        assert_eq!(seconds("stale-if-error=3600", "4000"), (0, 0));
        for barred in ["", "no-store, ", "no-cache, ", "private, ", "must-revalidate, ", "proxy-revalidate, "] {
            let stale = seconds(&format!("{barred}max-age=600, stale-if-error=3600"), "").1;
            assert_eq!(stale > 0, barred.is_empty(), "{barred}");
        }
        assert_eq!(seconds("max-age=600, stale-while-revalidate=3600", ""), (600, 0));
    }

    #[test]
    fn a_lifetime_is_cut_off_at_our_own_limits() {
        let (hour, day) = (Duration::from_secs(3600), Duration::from_secs(86400));
        assert_eq!(
            Lifetime { fresh: day, stale: day }.at_most(hour, 2 * hour),
            Lifetime { fresh: hour, stale: 2 * hour }
        );
        assert_eq!(Lifetime::fresh(hour).at_most(day, day), Lifetime::fresh(hour));
    }
}
