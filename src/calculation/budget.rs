//! How much one answer may compute, in counted steps, and whether anybody still waits for it.
//!
//! What is computed is counted where it is computed: positions of metal over a loop, leaves beside it, coupling, what a loop measures. A
//! search asks before each trial whether it may go on. What is no search is bounded by the limits of requests and is only counted.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};

/// The searches of an answer, in their order. Each has the steps that those before it have left, and leaves some for those behind it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Search {
    /// For the loops.
    Loops,
    /// For their places and their steps: a loop that nothing serves leaves these to the others.
    Places,
    /// For other sizes and shapes.
    Alternatives,
    /// For what would turn a check of a detector unit.
    Remedies,
}

impl Search {
    /// The steps after which an answer begins no further trial of this search. A choice made here, for some 25 ms of a usual core in all: a
    /// quarter of that ended searches for usual trucks at swing gates early, with a loop that lets go of them.
    pub fn most_steps(self) -> u64 {
        match self {
            Self::Loops => 12_000_000,
            Self::Places => 13_000_000,
            Self::Alternatives => 14_500_000,
            Self::Remedies => 16_000_000,
        }
    }
}

/// The steps of an answer. Steps are counted, never timed: the same request is always answered alike. A step is about as much work as the
/// distance of one corner of a cell from one end of a wire.
#[derive(Clone, Debug, Default)]
pub struct WorkBudget {
    counts: Arc<WorkCounts>,
    is_abandoned: Arc<AtomicBool>,
}

#[derive(Debug, Default)]
struct WorkCounts {
    used: AtomicU64,
    was_reached: AtomicBool,
}

impl WorkBudget {
    /// A whole budget for an answer that nobody waits for any more once the flag is set.
    pub fn until(is_abandoned: Arc<AtomicBool>) -> Self {
        Self { counts: Arc::default(), is_abandoned }
    }

    /// Whether the caller has left, so that what is computed is thrown away.
    pub fn is_abandoned(&self) -> bool {
        self.is_abandoned.load(Ordering::Relaxed)
    }

    /// The steps that were used.
    pub fn used(&self) -> u64 {
        self.counts.used.load(Ordering::Relaxed)
    }

    /// Counts what was computed.
    pub fn count(&self, steps: u64) {
        self.counts.used.fetch_add(steps, Ordering::Relaxed);
    }

    /// Whether a search may try once more: steps are left for it, and somebody waits. That it may not is noted.
    pub fn allows(&self, search: Search) -> bool {
        let allows = self.used() < search.most_steps() && !self.is_abandoned();
        if !allows {
            self.counts.was_reached.store(true, Ordering::Relaxed);
        }
        allows
    }

    /// Whether a search was ended early since this was last asked.
    pub fn take_was_reached(&self) -> bool {
        self.counts.was_reached.swap(false, Ordering::Relaxed)
    }
}
