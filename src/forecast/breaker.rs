//! A circuit breaker: when a failing service is not asked.
//!
//! After some failures in a row no request is sent for a while, then one at a time until one succeeds. Callers get their answer at
//! once instead of after a timeout, and the service can recover.
//!
//! Askers choose the places, and a service may fail at some places alone: whoever asks about a few of them must not take the service
//! from all others. So a failure counts by what may have caused it:
//!
//! - What no place can cause counts each time: no connection, and the statuses 401, 403 and 429.
//! - Anything else (too late, broken off, any other status, malformed) may be due to the place. It counts once for a place, and
//!   [`BreakerRule::max_of_asker`] times for an asker: the service is down when it fails at several places of several askers.
//! - A place that is not covered is no failure. Like every success, it ends the row.
//!
//! While one request tries whether the service is back, the same holds: a trial that fails opens the breaker again when no place can
//! be the cause, or when [`BreakerRule::max_trials`] of as many askers have failed; else the next asker may try.

use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};

use super::AskerId;
use super::grid_point::GridPoint;

/// How long a caller should wait while one request tries whether the service is back.
const TRIAL_WAIT: Duration = Duration::from_secs(1);

/// When a breaker opens, and for how long.
#[derive(Clone, Copy, Debug)]
pub struct BreakerRule {
    /// How many failures in a row open it.
    pub max_failures: usize,
    /// How many of them one asker may add whose places may be the cause.
    pub max_of_asker: usize,
    /// How many trials open it again that failed at different places of different askers.
    pub max_trials: usize,
    /// How long it stays open.
    pub open_for: Duration,
}

/// Counts failures in a row. Time is an argument, so that tests need not wait.
#[derive(Debug)]
pub struct CircuitBreaker {
    rule: BreakerRule,
    state: Mutex<BreakerState>,
}

#[derive(Debug, Default)]
struct BreakerState {
    /// The failures in a row that count; while it is open those of the trials.
    failures: Vec<FailedQuestion>,
    open_until: Option<Instant>,
    is_trying: bool,
}

/// A question that failed.
#[derive(Clone, Copy, Debug)]
pub struct FailedQuestion {
    /// What it was about.
    pub place: GridPoint,
    /// Who asked.
    pub asker: AskerId,
    /// Whether no place can be the cause.
    pub is_certain: bool,
}

/// Permission to ask the service. Dropped without an outcome, as when its caller disconnected, it is not counted.
#[derive(Debug)]
pub struct BreakerPermit {
    breaker: Arc<CircuitBreaker>,
    is_trial: bool,
}

impl CircuitBreaker {
    /// A breaker that opens by this rule.
    pub fn new(rule: BreakerRule) -> Self {
        Self { rule, state: Mutex::default() }
    }

    /// Permits one request to the service.
    ///
    /// # Errors
    /// How long to wait, when the service must not be asked.
    pub fn try_acquire(self: &Arc<Self>, now: Instant) -> Result<BreakerPermit, Duration> {
        let mut state = self.state();
        let is_trial = match state.open_until {
            None => false,
            Some(until) if now < until => return Err(until - now),
            Some(_) if state.is_trying => return Err(TRIAL_WAIT),
            Some(_) => true,
        };
        state.is_trying |= is_trial;
        Ok(BreakerPermit { breaker: self.clone(), is_trial })
    }

    fn state(&self) -> MutexGuard<'_, BreakerState> {
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl BreakerPermit {
    /// Whether this request tries if the service is back.
    pub fn is_trial(&self) -> bool {
        self.is_trial
    }

    /// Records that the service answered.
    pub fn record_success(self) {
        let mut state = self.breaker.state();
        state.failures.clear();
        state.open_until = None;
    }

    /// Records that the request failed.
    pub fn record_failure(self, failed: FailedQuestion, now: Instant) {
        let rule = self.breaker.rule;
        let mut state = self.breaker.state();
        if state.open_until.is_some() && !self.is_trial {
            // It was sent before the breaker opened, and tells nothing new.
            return;
        }
        let (max_of_asker, max_failures) =
            if self.is_trial { (1, rule.max_trials) } else { (rule.max_of_asker, rule.max_failures) };
        if state.counts(failed, max_of_asker) {
            state.failures.push(failed);
        }
        if state.failures.len() >= max_failures || (self.is_trial && failed.is_certain) {
            state.failures.clear();
            state.open_until = now.checked_add(rule.open_for);
        }
    }

    /// Records a failure that opens the breaker at once.
    pub fn record_last_failure(self, now: Instant) {
        let mut state = self.breaker.state();
        state.failures.clear();
        state.open_until = now.checked_add(self.breaker.rule.open_for);
    }
}

impl BreakerState {
    fn counts(&self, failed: FailedQuestion, max_of_asker: usize) -> bool {
        let mut unclear = self.failures.iter().filter(|known| !known.is_certain);
        let of_asker = unclear.clone().filter(|known| known.asker == failed.asker).count();
        failed.is_certain || (of_asker < max_of_asker && unclear.all(|known| known.place != failed.place))
    }
}

impl Drop for BreakerPermit {
    fn drop(&mut self) {
        if self.is_trial {
            self.breaker.state().is_trying = false;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calculation::input::Location;

    const OPEN_FOR: Duration = Duration::from_secs(30);

    const RULE: BreakerRule = BreakerRule { max_failures: 3, max_of_asker: 2, max_trials: 2, open_for: OPEN_FOR };

    fn breaker() -> Arc<CircuitBreaker> {
        Arc::new(CircuitBreaker::new(RULE))
    }

    /// A failure of an asker at a place that may be the cause.
    fn unclear(asker: u64, latitude: i32) -> FailedQuestion {
        let place = Location { latitude: latitude.into(), longitude: -68.0 }.into();
        FailedQuestion { place, asker: AskerId(asker), is_certain: false }
    }

    /// A failure that no place can cause.
    const fn certain(failed: FailedQuestion) -> FailedQuestion {
        FailedQuestion { is_certain: true, ..failed }
    }

    fn fail(breaker: &Arc<CircuitBreaker>, failed: FailedQuestion, now: Instant) {
        breaker.try_acquire(now).unwrap().record_failure(failed, now);
    }

    /// A breaker that has just opened.
    fn opened(now: Instant) -> Arc<CircuitBreaker> {
        let breaker = breaker();
        (0..3).for_each(|_| fail(&breaker, certain(unclear(1, 44)), now));
        breaker
    }

    fn is_open(breaker: &Arc<CircuitBreaker>, now: Instant) -> bool {
        breaker.try_acquire(now).is_err()
    }

    #[test]
    fn it_opens_after_failures_in_a_row_only() {
        let (breaker, now) = (breaker(), Instant::now());
        let failed = certain(unclear(1, 44));
        for has_failed in [true, true, false, true, true] {
            let permit = breaker.try_acquire(now).unwrap();
            if has_failed { permit.record_failure(failed, now) } else { permit.record_success() }
        }
        assert!(!is_open(&breaker, now));
        fail(&breaker, failed, now);
        assert_eq!(breaker.try_acquire(now).unwrap_err(), OPEN_FOR);
    }

    #[test]
    fn bad_places_of_one_asker_do_not_open_it_and_those_of_several_do() {
        let (breaker, now) = (breaker(), Instant::now());
        (0..9).for_each(|latitude| fail(&breaker, unclear(1, latitude), now));
        assert!(!is_open(&breaker, now));
        fail(&breaker, unclear(2, 50), now);
        assert!(is_open(&breaker, now));
    }

    #[test]
    fn one_bad_place_does_not_open_it_whoever_asks() {
        let (breaker, now) = (breaker(), Instant::now());
        (0..9).for_each(|asker| fail(&breaker, unclear(asker, 44), now));
        assert!(!is_open(&breaker, now));
        // What no place can cause counts beside what one may.
        (0..2).for_each(|_| fail(&breaker, certain(unclear(1, 44)), now));
        assert!(is_open(&breaker, now));
    }

    #[test]
    fn open_it_tells_how_long_to_wait_then_permits_one_trial() {
        let now = Instant::now();
        let breaker = opened(now);
        assert_eq!(breaker.try_acquire(now + OPEN_FOR / 3).unwrap_err(), OPEN_FOR * 2 / 3);
        let trial = breaker.try_acquire(now + OPEN_FOR).unwrap();
        assert!(trial.is_trial());
        assert_eq!(breaker.try_acquire(now + OPEN_FOR).unwrap_err(), TRIAL_WAIT);
        trial.record_success();
        assert!(!is_open(&breaker, now + OPEN_FOR));
    }

    #[test]
    fn a_trial_that_fails_opens_it_again_when_no_place_can_be_the_cause() {
        let now = Instant::now();
        let breaker = opened(now);
        fail(&breaker, certain(unclear(1, 44)), now + OPEN_FOR);
        assert_eq!(breaker.try_acquire(now + OPEN_FOR).unwrap_err(), OPEN_FOR);
        assert!(!is_open(&breaker, now + OPEN_FOR * 2));
    }

    #[test]
    fn a_trial_at_a_bad_place_leaves_the_next_asker_to_try() {
        let now = Instant::now();
        let (breaker, later) = (opened(now), now + OPEN_FOR);
        for failed in [unclear(1, 44), unclear(1, 45), unclear(2, 44)] {
            fail(&breaker, failed, later);
            assert!(!is_open(&breaker, later), "{failed:?}");
        }
        fail(&breaker, unclear(2, 46), later);
        assert_eq!(breaker.try_acquire(later).unwrap_err(), OPEN_FOR);
    }

    #[test]
    fn a_trial_whose_caller_disconnected_leaves_the_next_one_to_try() {
        let now = Instant::now();
        let breaker = opened(now);
        drop(breaker.try_acquire(now + OPEN_FOR).unwrap());
        breaker.try_acquire(now + OPEN_FOR).unwrap().record_success();
        assert!(!is_open(&breaker, now + OPEN_FOR));
    }

    #[test]
    fn what_was_asked_before_it_opened_does_not_keep_it_open_longer() {
        let (breaker, now) = (breaker(), Instant::now());
        let late = breaker.try_acquire(now).unwrap();
        (0..3).for_each(|_| fail(&breaker, certain(unclear(1, 44)), now));
        late.record_failure(certain(unclear(1, 44)), now + OPEN_FOR / 2);
        assert_eq!(breaker.try_acquire(now + OPEN_FOR / 2).unwrap_err(), OPEN_FOR / 2);
    }
}
