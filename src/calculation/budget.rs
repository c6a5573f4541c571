//! How much one answer may compute, in counted steps, and whether anybody still waits for it.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};

/// The steps that are left of an answer. Steps are counted, never timed: the same request is always answered alike.
#[derive(Clone, Debug, Default)]
pub struct WorkBudget {
    used: Arc<AtomicU64>,
    is_abandoned: Arc<AtomicBool>,
}

impl WorkBudget {
    /// A whole budget for an answer that nobody waits for any more once the flag is set.
    pub fn until(is_abandoned: Arc<AtomicBool>) -> Self {
        Self { used: Arc::default(), is_abandoned }
    }

    /// Whether the caller has left, so that what is computed is thrown away.
    pub fn is_abandoned(&self) -> bool {
        self.is_abandoned.load(Ordering::Relaxed)
    }

    /// The steps that were used.
    pub fn used(&self) -> u64 {
        self.used.load(Ordering::Relaxed)
    }
}
