//! Every fault of the structure of a body, found at once.

mod collector;
mod fault;
mod names;
mod notes;

pub use collector::collect_faults;
pub use fault::{StructureFault, child, nearest};
pub use notes::CollectedFaults;
