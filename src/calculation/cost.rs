//! What a request is estimated to cost, from what it asks for: known before anything is computed, and charged to the caller's rate.

/// One kind of work that a request asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CostTerm {
    /// The work, in a phrase.
    pub work: &'static str,
    /// How often the request asks for it.
    pub count: u64,
    /// How long each takes on a usual core, µs. Measured, within a factor of three.
    pub micros: u64,
}

impl CostTerm {
    /// So much work of a kind.
    pub const fn new(work: &'static str, count: usize, micros: u64) -> Self {
        Self { work, count: count as u64, micros }
    }

    /// All of it, µs.
    pub fn total(&self) -> u64 {
        self.count.saturating_mul(self.micros)
    }
}
