//! A circuit breaker: when a failing service is not asked.
//!
//! After some failures in a row no request is sent for a while, then one at a time until one succeeds. Callers get their answer at
//! once instead of after a timeout, and the service can recover.

use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};

/// How long a caller should wait while one request tries whether the service is back.
const TRIAL_WAIT: Duration = Duration::from_secs(1);

/// Counts failures in a row. Time is an argument, so that tests need not wait.
#[derive(Debug)]
pub struct CircuitBreaker {
    max_failures: u32,
    open_for: Duration,
    state: Mutex<BreakerState>,
}

#[derive(Debug, Default)]
struct BreakerState {
    failures: u32,
    open_until: Option<Instant>,
    is_trying: bool,
}

/// Permission to ask the service. Dropped without an outcome, as when its caller disconnected, it is not counted.
#[derive(Debug)]
pub struct BreakerPermit<'a> {
    breaker: &'a CircuitBreaker,
    is_trial: bool,
}

impl CircuitBreaker {
    /// A breaker that opens for `open_for` after `max_failures` failures in a row.
    pub fn new(max_failures: u32, open_for: Duration) -> Self {
        Self { max_failures, open_for, state: Mutex::default() }
    }

    /// Permits one request to the service.
    ///
    /// # Errors
    /// How long to wait, when the service must not be asked.
    pub fn try_acquire(&self, now: Instant) -> Result<BreakerPermit<'_>, Duration> {
        let mut state = self.state();
        let is_trial = match state.open_until {
            None => false,
            Some(until) if now < until => return Err(until - now),
            Some(_) if state.is_trying => return Err(TRIAL_WAIT),
            Some(_) => true,
        };
        state.is_trying |= is_trial;
        Ok(BreakerPermit { breaker: self, is_trial })
    }

    fn state(&self) -> MutexGuard<'_, BreakerState> {
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl BreakerPermit<'_> {
    /// Records how the request ended.
    pub fn record(self, has_failed: bool, now: Instant) {
        let mut state = self.breaker.state();
        if !has_failed {
            state.failures = 0;
            state.open_until = None;
            return;
        }
        state.failures = state.failures.saturating_add(1);
        if self.is_trial || state.failures >= self.breaker.max_failures {
            state.open_until = now.checked_add(self.breaker.open_for);
        }
    }
}

impl Drop for BreakerPermit<'_> {
    fn drop(&mut self) {
        if self.is_trial {
            self.breaker.state().is_trying = false;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const OPEN_FOR: Duration = Duration::from_secs(30);

    /// A breaker that opens after two failures and has just opened.
    fn opened(now: Instant) -> CircuitBreaker {
        let breaker = CircuitBreaker::new(2, OPEN_FOR);
        for _ in 0..2 {
            breaker.try_acquire(now).unwrap().record(true, now);
        }
        breaker
    }

    #[test]
    fn it_opens_after_failures_in_a_row_only() {
        let (breaker, now) = (CircuitBreaker::new(2, OPEN_FOR), Instant::now());
        for has_failed in [true, false, true, false, true] {
            breaker.try_acquire(now).unwrap().record(has_failed, now);
        }
        assert!(breaker.try_acquire(now).is_ok());
        breaker.try_acquire(now).unwrap().record(true, now);
        assert_eq!(breaker.try_acquire(now).unwrap_err(), OPEN_FOR);
    }

    #[test]
    fn open_it_tells_how_long_to_wait_then_permits_one_trial() {
        let now = Instant::now();
        let breaker = opened(now);
        assert_eq!(breaker.try_acquire(now + OPEN_FOR / 3).unwrap_err(), OPEN_FOR * 2 / 3);
        let trial = breaker.try_acquire(now + OPEN_FOR).unwrap();
        assert_eq!(breaker.try_acquire(now + OPEN_FOR).unwrap_err(), TRIAL_WAIT);
        trial.record(false, now + OPEN_FOR);
        assert!(breaker.try_acquire(now + OPEN_FOR).is_ok());
    }

    #[test]
    fn a_trial_that_fails_opens_it_again() {
        let now = Instant::now();
        let breaker = opened(now);
        breaker.try_acquire(now + OPEN_FOR).unwrap().record(true, now + OPEN_FOR);
        assert_eq!(breaker.try_acquire(now + OPEN_FOR).unwrap_err(), OPEN_FOR);
        assert!(breaker.try_acquire(now + OPEN_FOR * 2).is_ok());
    }

    #[test]
    fn a_trial_whose_caller_disconnected_leaves_the_next_one_to_try() {
        let now = Instant::now();
        let breaker = opened(now);
        drop(breaker.try_acquire(now + OPEN_FOR).unwrap());
        breaker.try_acquire(now + OPEN_FOR).unwrap().record(false, now + OPEN_FOR);
        assert!(breaker.try_acquire(now + OPEN_FOR).is_ok());
    }
}
