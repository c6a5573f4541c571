//! When a failing service is left alone.
//!
//! After some failures in a row nobody is let through for a while, then one question at a time until one succeeds: callers are
//! told at once instead of after a timeout, and the service can recover.

use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};

/// How long a caller should wait while one question tries whether the service is back.
const WHILE_TRYING: Duration = Duration::from_secs(1);

/// Counts failures in a row. Time is an argument, so that tests need not wait.
#[derive(Debug)]
pub struct Breaker {
    open_after: u32,
    open_for: Duration,
    state: Mutex<State>,
}

#[derive(Debug, Default)]
struct State {
    failures: u32,
    open_until: Option<Instant>,
    is_trying: bool,
}

/// Leave to ask the service. Dropped without an outcome, as when its caller went away, it counts for nothing.
#[derive(Debug)]
pub struct Turn<'a> {
    breaker: &'a Breaker,
    is_trial: bool,
}

impl Breaker {
    /// Opens after so many failures in a row, for so long.
    pub fn new(open_after: u32, open_for: Duration) -> Self {
        Self { open_after, open_for, state: Mutex::default() }
    }

    /// Lets a question through.
    ///
    /// # Errors
    /// How long to wait, when it is not let through.
    pub fn admit(&self, now: Instant) -> Result<Turn<'_>, Duration> {
        let mut state = self.state();
        let is_trial = match state.open_until {
            None => false,
            Some(until) if now < until => return Err(until - now),
            Some(_) if state.is_trying => return Err(WHILE_TRYING),
            Some(_) => true,
        };
        state.is_trying |= is_trial;
        Ok(Turn { breaker: self, is_trial })
    }

    fn state(&self) -> MutexGuard<'_, State> {
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Turn<'_> {
    /// Says how it went.
    pub fn end(self, has_failed: bool, now: Instant) {
        let mut state = self.breaker.state();
        if !has_failed {
            state.failures = 0;
            state.open_until = None;
            return;
        }
        state.failures = state.failures.saturating_add(1);
        if self.is_trial || state.failures >= self.breaker.open_after {
            state.open_until = now.checked_add(self.breaker.open_for);
        }
    }
}

impl Drop for Turn<'_> {
    fn drop(&mut self) {
        if self.is_trial {
            self.breaker.state().is_trying = false;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const REST: Duration = Duration::from_secs(30);

    /// A breaker that opens after two failures and has just opened.
    fn opened(now: Instant) -> Breaker {
        let breaker = Breaker::new(2, REST);
        for _ in 0..2 {
            breaker.admit(now).unwrap().end(true, now);
        }
        breaker
    }

    #[test]
    fn it_opens_after_failures_in_a_row_only() {
        let (breaker, now) = (Breaker::new(2, REST), Instant::now());
        for has_failed in [true, false, true, false, true] {
            breaker.admit(now).unwrap().end(has_failed, now);
        }
        assert!(breaker.admit(now).is_ok());
        breaker.admit(now).unwrap().end(true, now);
        assert_eq!(breaker.admit(now).unwrap_err(), REST);
    }

    #[test]
    fn open_it_tells_how_long_to_wait_then_lets_one_through() {
        let now = Instant::now();
        let breaker = opened(now);
        assert_eq!(breaker.admit(now + REST / 3).unwrap_err(), REST * 2 / 3);
        let trial = breaker.admit(now + REST).unwrap();
        assert_eq!(breaker.admit(now + REST).unwrap_err(), WHILE_TRYING);
        trial.end(false, now + REST);
        assert!(breaker.admit(now + REST).is_ok());
    }

    #[test]
    fn a_trial_that_fails_opens_it_again() {
        let now = Instant::now();
        let breaker = opened(now);
        breaker.admit(now + REST).unwrap().end(true, now + REST);
        assert_eq!(breaker.admit(now + REST).unwrap_err(), REST);
        assert!(breaker.admit(now + REST * 2).is_ok());
    }

    #[test]
    fn a_trial_whose_caller_went_away_leaves_the_next_one_to_try() {
        let now = Instant::now();
        let breaker = opened(now);
        drop(breaker.admit(now + REST).unwrap());
        breaker.admit(now + REST).unwrap().end(false, now + REST);
        assert!(breaker.admit(now + REST).is_ok());
    }
}
