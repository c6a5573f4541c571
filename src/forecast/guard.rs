//! Whether the service may be asked now, and by whom.
//!
//! Three reasons speak against it. The service has asked for a pause (`Retry-After`): nobody asks. It fails: a breaker for all holds
//! everybody back, as [`super::breaker`] tells. And the asker: each has a breaker of its own, which opens after as many failures in a
//! row at different places, whoever is to blame; and each has a share of the questions under way.

use std::sync::{Arc, Mutex, PoisonError};
use std::time::{Duration, Instant};

use super::breaker::{BreakerPermit, BreakerRule, CircuitBreaker, FailedQuestion};
use super::cache::ExpiringCache;
use super::grid_point::GridPoint;
use super::lifetime::Lifetime;
use super::limits::{ASKER_AGE, ForecastLimits, MAX_ASKERS, MAX_FAILURES_OF_ASKER};
use super::question_limiter::{QuestionLimiter, QuestionPermit};
use super::{AskerId, ForecastError};

/// Decides whether the service may be asked. Time is an argument, so that tests need not wait.
#[derive(Debug)]
pub struct ServiceGuard {
    everybody: Arc<CircuitBreaker>,
    askers: Mutex<ExpiringCache<AskerId, Arc<CircuitBreaker>>>,
    rule_of_asker: BreakerRule,
    questions: Arc<QuestionLimiter>,
    paused_until: Mutex<Option<Instant>>,
}

/// Permission for one question. Dropped without an outcome, it is not counted.
#[derive(Debug)]
pub struct GuardPermit {
    asker: AskerId,
    of_asker: BreakerPermit,
    of_everybody: BreakerPermit,
    _question: QuestionPermit,
}

impl ServiceGuard {
    /// A guard with these limits.
    pub fn new(limits: &ForecastLimits) -> Self {
        let max_failures = limits.max_failures.max(1);
        let rule_of_asker =
            BreakerRule { max_failures, max_of_asker: max_failures, max_trials: 1, open_for: limits.open_for };
        let rule_of_all =
            BreakerRule { max_of_asker: MAX_FAILURES_OF_ASKER, max_trials: 2.min(max_failures), ..rule_of_asker };
        Self {
            everybody: Arc::new(CircuitBreaker::new(rule_of_all)),
            askers: Mutex::new(ExpiringCache::new(MAX_ASKERS)),
            rule_of_asker,
            questions: Arc::new(QuestionLimiter::new(limits.max_concurrent)),
            paused_until: Mutex::default(),
        }
    }

    /// Permits one question.
    ///
    /// # Errors
    /// [`ForecastError::Paused`], [`ForecastError::Open`] or [`ForecastError::Busy`] when the service must not be asked.
    pub fn try_acquire(&self, asker: AskerId, now: Instant) -> Result<GuardPermit, ForecastError> {
        let paused_until = *self.paused_until.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(until) = paused_until.filter(|until| now < *until) {
            return Err(ForecastError::Paused(until - now));
        }
        Ok(GuardPermit {
            asker,
            of_asker: self.breaker_of(asker, now).try_acquire(now).map_err(ForecastError::Open)?,
            of_everybody: self.everybody.try_acquire(now).map_err(ForecastError::Open)?,
            _question: self.questions.try_acquire(asker).ok_or(ForecastError::Busy)?,
        })
    }

    /// Records how a question ended.
    pub fn record(&self, permit: GuardPermit, place: GridPoint, failure: Option<&ForecastError>, now: Instant) {
        let GuardPermit { asker, of_asker, of_everybody, .. } = permit;
        match failure {
            Some(ForecastError::Paused(wait)) => self.pause(*wait, now),
            Some(failure) if failure.is_service_fault() => {
                let failed = FailedQuestion { place, asker, is_certain: failure.is_certain() };
                // Who has spent a trial of all lets others try.
                if of_everybody.is_trial() {
                    of_asker.record_last_failure(now);
                } else {
                    of_asker.record_failure(failed, now);
                }
                of_everybody.record_failure(failed, now);
            }
            _ => {
                of_asker.record_success();
                of_everybody.record_success();
            }
        }
    }

    fn pause(&self, wait: Duration, now: Instant) {
        let mut paused_until = self.paused_until.lock().unwrap_or_else(PoisonError::into_inner);
        *paused_until = (*paused_until).max(now.checked_add(wait));
    }

    fn breaker_of(&self, asker: AskerId, now: Instant) -> Arc<CircuitBreaker> {
        let mut askers = self.askers.lock().unwrap_or_else(PoisonError::into_inner);
        let known = askers.get(asker, now);
        let breaker = known.unwrap_or_else(|| Arc::new(CircuitBreaker::new(self.rule_of_asker)));
        askers.insert(asker, breaker.clone(), Lifetime::fresh(ASKER_AGE), now);
        breaker
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calculation::input::Location;

    const SECOND: Duration = Duration::from_secs(1);

    fn guard() -> ServiceGuard {
        ServiceGuard::new(&ForecastLimits::within(4 * SECOND))
    }

    fn place(latitude: i32) -> GridPoint {
        Location { latitude: latitude.into(), longitude: -68.0 }.into()
    }

    fn record(guard: &ServiceGuard, asker: u64, latitude: i32, failure: &ForecastError, now: Instant) {
        let permit = guard.try_acquire(AskerId(asker), now).unwrap();
        guard.record(permit, place(latitude), Some(failure), now);
    }

    fn refusal(guard: &ServiceGuard, asker: u64, now: Instant) -> Option<ForecastError> {
        guard.try_acquire(AskerId(asker), now).err()
    }

    #[test]
    fn an_asker_whose_places_are_bad_is_held_back_alone() {
        let (guard, now) = (guard(), Instant::now());
        (0..5).for_each(|latitude| record(&guard, 1, latitude, &ForecastError::Refused(500), now));
        assert_eq!(refusal(&guard, 1, now), Some(ForecastError::Open(30 * SECOND)));
        assert_eq!(refusal(&guard, 2, now), None);
        let later = now + 30 * SECOND;
        record(&guard, 1, 6, &ForecastError::Timeout, later);
        assert_eq!(refusal(&guard, 1, later), Some(ForecastError::Open(30 * SECOND)));
    }

    #[test]
    fn a_service_that_fails_for_several_askers_or_beyond_doubt_is_left_alone_by_all() {
        let now = Instant::now();
        let (doubtful, certain) = (guard(), guard());
        for (asker, latitude) in [(1, 1), (1, 2), (2, 3), (2, 4), (3, 5)] {
            record(&doubtful, asker, latitude, &ForecastError::Timeout, now);
        }
        (0..5).for_each(|_| record(&certain, 1, 1, &ForecastError::Unreachable(String::new()), now));
        for guard in [doubtful, certain] {
            assert_eq!(refusal(&guard, 4, now), Some(ForecastError::Open(30 * SECOND)));
        }
    }

    #[test]
    fn whoever_fails_in_a_trial_lets_others_try() {
        let (guard, now) = (guard(), Instant::now());
        (0..5).for_each(|_| record(&guard, 1, 1, &ForecastError::Refused(403), now));
        let later = now + 30 * SECOND;
        record(&guard, 2, 2, &ForecastError::Timeout, later);
        assert_eq!(refusal(&guard, 2, later), Some(ForecastError::Open(30 * SECOND)));
        record(&guard, 3, 3, &ForecastError::NotCovered, later);
        assert_eq!(refusal(&guard, 4, later), None);
    }

    #[test]
    fn a_pause_holds_for_all_and_is_no_failure() {
        let (guard, now) = (guard(), Instant::now());
        record(&guard, 1, 1, &ForecastError::Paused(9 * SECOND), now);
        for asker in [1, 2] {
            assert_eq!(refusal(&guard, asker, now + SECOND), Some(ForecastError::Paused(8 * SECOND)));
            assert_eq!(refusal(&guard, asker, now + 9 * SECOND), None);
        }
        // A shorter one that comes later ends none.
        let late = guard.try_acquire(AskerId(1), now + 9 * SECOND).unwrap();
        record(&guard, 2, 1, &ForecastError::Paused(60 * SECOND), now + 9 * SECOND);
        guard.record(late, place(1), Some(&ForecastError::Paused(SECOND)), now + 9 * SECOND);
        assert_eq!(refusal(&guard, 2, now + 10 * SECOND), Some(ForecastError::Paused(59 * SECOND)));
    }

    #[test]
    fn one_asker_has_half_of_the_questions() {
        let (guard, now) = (guard(), Instant::now());
        let held: Vec<_> = (0..4).map(|_| guard.try_acquire(AskerId(1), now).unwrap()).collect();
        assert_eq!(refusal(&guard, 1, now), Some(ForecastError::Busy));
        assert_eq!(refusal(&guard, 2, now), None);
        drop(held);
        assert_eq!(refusal(&guard, 1, now), None);
    }
}
