//! How many questions are under way, in all and of one asker.

use std::collections::HashMap;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use super::AskerId;

/// Bounds the questions under way: in all, and to half of that, at least one, for any one asker. So no asker can take the service from
/// the others by asking about many places. The share is a choice made here.
#[derive(Debug)]
pub struct QuestionLimiter {
    max_questions: usize,
    under_way: Mutex<HashMap<AskerId, usize>>,
}

/// Permission for one question, until it is dropped.
#[derive(Debug)]
pub struct QuestionPermit {
    limiter: Arc<QuestionLimiter>,
    asker: AskerId,
}

impl QuestionLimiter {
    /// A limiter of so many questions at once.
    pub fn new(max_questions: usize) -> Self {
        Self { max_questions, under_way: Mutex::default() }
    }

    /// Permits one question, unless the asker or all together have as many under way as they may.
    pub fn try_acquire(self: &Arc<Self>, asker: AskerId) -> Option<QuestionPermit> {
        let mut under_way = self.under_way();
        let of_asker = under_way.get(&asker).copied().unwrap_or(0);
        let in_all: usize = under_way.values().sum();
        if in_all >= self.max_questions || of_asker >= (self.max_questions / 2).max(1) {
            return None;
        }
        under_way.insert(asker, of_asker + 1);
        Some(QuestionPermit { limiter: self.clone(), asker })
    }

    fn under_way(&self) -> MutexGuard<'_, HashMap<AskerId, usize>> {
        self.under_way.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Drop for QuestionPermit {
    fn drop(&mut self) {
        let mut under_way = self.limiter.under_way();
        if let Some(of_asker) = under_way.get_mut(&self.asker) {
            *of_asker -= 1;
            if *of_asker == 0 {
                under_way.remove(&self.asker);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_asker_has_half_of_the_questions_and_all_together_no_more_than_all() {
        let limiter = Arc::new(QuestionLimiter::new(5));
        let ask = |asker| limiter.try_acquire(AskerId(asker));
        let mut first: Vec<_> = (0..3).map_while(|_| ask(1)).collect();
        assert_eq!(first.len(), 2);
        let others = [ask(2), ask(2), ask(3)];
        assert!(others.iter().all(Option::is_some));
        assert!(ask(4).is_none(), "more than all");
        first.pop();
        assert!(ask(4).is_some());
        drop((first, others));
        assert!(limiter.under_way().is_empty(), "askers without a question are kept");
    }

    #[test]
    fn one_question_is_the_least_share() {
        let limiter = Arc::new(QuestionLimiter::new(1));
        let held = limiter.try_acquire(AskerId(1));
        assert!(held.is_some() && limiter.try_acquire(AskerId(2)).is_none());
        drop(held);
        assert!(limiter.try_acquire(AskerId(2)).is_some());
    }
}
