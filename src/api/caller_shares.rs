//! Something of which there is a fixed amount, of which no caller may have more than a share: bytes, connections, places.

use std::collections::HashMap;
use std::hash::BuildHasherDefault;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use rustc_hash::FxHasher;

/// What is taken by callers, who are numbers: [`super::admission::Caller::id`].
pub struct CallerShares {
    whole: usize,
    share: usize,
    taken: Mutex<TakenAmounts>,
}

#[derive(Default)]
struct TakenAmounts {
    by_all: usize,
    by_caller: HashMap<u64, usize, BuildHasherDefault<FxHasher>>,
}

/// Which amount is used up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Exhausted {
    /// That of the caller.
    Share,
    /// That of all callers together.
    Whole,
}

impl Exhausted {
    /// Whose amount it is: `caller` or `all`.
    pub fn code(self) -> &'static str {
        match self {
            Self::Share => "caller",
            Self::Whole => "all",
        }
    }
}

/// What a caller has taken; given back when it is dropped.
pub struct TakenShare {
    shares: Arc<CallerShares>,
    caller: u64,
    amount: usize,
}

impl CallerShares {
    /// So much for all callers, of which each may have a share.
    pub fn new(whole: usize, share: usize) -> Arc<Self> {
        Arc::new(Self { whole, share, taken: Mutex::default() })
    }

    /// Takes an amount for a caller.
    ///
    /// # Errors
    /// What is used up; then nothing is taken.
    pub fn take(self: &Arc<Self>, caller: u64, amount: usize) -> Result<TakenShare, Exhausted> {
        let mut taken = TakenShare { shares: self.clone(), caller, amount: 0 };
        taken.grow(amount).map(|()| taken)
    }

    fn taken(&self) -> MutexGuard<'_, TakenAmounts> {
        self.taken.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl TakenShare {
    /// Takes more.
    ///
    /// # Errors
    /// What is used up; then nothing more is taken.
    pub fn grow(&mut self, amount: usize) -> Result<(), Exhausted> {
        let mut taken = self.shares.taken();
        let of_caller = taken.by_caller.get(&self.caller).copied().unwrap_or_default();
        if taken.by_all + amount > self.shares.whole {
            return Err(Exhausted::Whole);
        }
        if of_caller + amount > self.shares.share {
            return Err(Exhausted::Share);
        }
        if amount > 0 {
            taken.by_all += amount;
            taken.by_caller.insert(self.caller, of_caller + amount);
            self.amount += amount;
        }
        Ok(())
    }
}

impl Drop for TakenShare {
    fn drop(&mut self) {
        if self.amount == 0 {
            return;
        }
        let mut taken = self.shares.taken();
        taken.by_all -= self.amount;
        if let Some(of_caller) = taken.by_caller.get_mut(&self.caller) {
            *of_caller -= self.amount;
            if *of_caller == 0 {
                taken.by_caller.remove(&self.caller);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_caller_has_a_share_and_all_have_the_whole() {
        let shares = CallerShares::new(10, 6);
        let mut first = shares.take(1, 4).unwrap();
        assert_eq!(first.grow(3), Err(Exhausted::Share));
        assert_eq!(first.grow(2), Ok(()));
        let second = shares.take(2, 4).unwrap();
        assert_eq!(shares.take(3, 1).err(), Some(Exhausted::Whole));
        drop(second);
        assert!(shares.take(3, 4).is_ok());
    }

    #[test]
    fn what_is_given_back_leaves_nothing_behind() {
        let shares = CallerShares::new(10, 10);
        for caller in 0..100 {
            let mut taken = shares.take(caller, 3).unwrap();
            let _ = (taken.grow(7), taken.grow(1));
        }
        let left = shares.taken();
        assert_eq!((left.by_all, left.by_caller.len()), (0, 0));
    }
}
