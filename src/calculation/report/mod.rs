//! The common parts of reports: findings, defaults used, cautions, basis; and refusals.

mod diagnostics;
mod field_path;
mod invalid_request;
mod parts;

pub use diagnostics::{Diagnostics, ReportParts};
pub use field_path::{FieldPath, MAX_NAME_CHARS};
pub use invalid_request::{FieldError, FieldErrorCode, InvalidRequest};
pub use parts::{Assumed, Basis, Caution, Figure, Finding, SourceEntry, Subject};
