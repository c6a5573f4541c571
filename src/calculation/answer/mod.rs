//! The common parts of reports: findings, defaults used, cautions, basis; and refusals.

mod at;
mod notes;
mod parts;
mod refusal;

pub use at::{At, LONGEST_NAME};
pub use notes::{Closing, Notes};
pub use parts::{Assumed, Basis, Caution, Figure, Finding, SourceEntry};
pub use refusal::{Fault, FaultCode, Refusal};
