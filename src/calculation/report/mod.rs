//! The common parts of reports: findings, defaults used, cautions, basis; refusals; and statements, which are sentences without words.

mod diagnostics;
mod field_path;
mod invalid_request;
mod message;
mod param;
mod parts;
mod statement;

pub use diagnostics::{Diagnostics, ReportParts};
pub use field_path::{FieldPath, MAX_NAME_CHARS};
pub use invalid_request::{FieldError, FieldErrorCode, InvalidRequest};
pub use message::{HasMessages, Meaning, Message};
pub use param::Param;
pub use parts::{Assumed, Basis, Caution, Figure, Finding, SourceEntry, Subject};
pub use statement::{Decimals, Fact, FactValue, ListJoin, MemberFact, Statement};

pub(crate) use message::has_messages;
