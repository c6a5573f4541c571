//! What is noted while a body is read for its faults.

use std::cell::RefCell;

use super::fault::{StructureFault, child};
use crate::api::json_limits::JsonLimits;
use crate::api::problem::MAX_ERRORS;
use crate::calculation::report::FieldError;

/// The faults of a body, and what became of its fields.
#[derive(Default)]
pub struct CollectedFaults {
    /// As many as an answer lists.
    pub errors: Vec<FieldError>,
    /// How many there are.
    pub count: usize,
    /// Whether something sent was replaced by a stand-in, so that what holds between fields cannot be judged.
    pub has_stand_ins: bool,
    /// The places where something is wrong, as the request has them.
    faulty: Vec<String>,
    /// The fields that were taken for others: the place that the request has, and the one that was sent.
    renamed: Vec<(String, String)>,
}

impl CollectedFaults {
    /// Whether something at or above a place of the request is wrong already.
    pub fn covers(&self, pointer: &str) -> bool {
        self.faulty.iter().any(|place| is_within(pointer, place))
    }

    /// A place of the request as it was sent.
    pub fn sent_pointer(&self, pointer: String) -> String {
        let renamed = self.renamed.iter().filter(|(asked, _)| is_within(&pointer, asked));
        let innermost = renamed.max_by_key(|(asked, _)| asked.len());
        innermost.map(|(asked, sent)| pointer.replacen(asked.as_str(), sent, 1)).unwrap_or(pointer)
    }
}

fn is_within(pointer: &str, place: &str) -> bool {
    pointer.strip_prefix(place).is_some_and(|rest| rest.is_empty() || rest.starts_with('/'))
}

/// What is noted while a body is read.
pub struct FaultNotes {
    /// How much structure a body may have.
    pub limits: JsonLimits,
    faults: RefCell<CollectedFaults>,
}

impl FaultNotes {
    /// Notes of a body that may have so much structure.
    pub fn within(limits: JsonLimits) -> Self {
        Self { limits, faults: RefCell::default() }
    }

    /// What was noted.
    pub fn into_faults(self) -> CollectedFaults {
        self.faults.into_inner()
    }

    /// Notes that a field which was misspelt is read as the one that was meant.
    pub fn add_renamed(&self, at: &JsonPlace) {
        self.faults.borrow_mut().renamed.push((at.asked.clone(), at.sent.clone()));
    }

    /// Notes a fault. Of those that no answer lists only the number is kept, and nothing is done for them.
    pub fn add(&self, at: &JsonPlace, fault: &StructureFault<'_>) {
        let mut faults = self.faults.borrow_mut();
        faults.count += 1;
        faults.has_stand_ins |=
            !matches!(fault, StructureFault::UnknownField { .. } | StructureFault::DuplicateField(_));
        if faults.errors.len() < MAX_ERRORS {
            faults.errors.push(fault.at(at.sent.clone()));
            faults.faulty.push(at.asked.clone());
        }
    }

    /// Whether no answer lists a further fault.
    pub fn is_full(&self) -> bool {
        self.faults.borrow().errors.len() >= MAX_ERRORS
    }
}

/// A place in a body: as the request has it, and as it was sent. They differ below a name that was misspelt.
#[derive(Clone)]
pub struct JsonPlace {
    asked: String,
    sent: String,
}

impl JsonPlace {
    /// The whole body.
    pub fn body() -> Self {
        Self { asked: "#".to_owned(), sent: "#".to_owned() }
    }

    /// A member of the object here, under its name in the request and the one that was sent.
    pub fn member(&self, asked: &str, sent: &str) -> Self {
        Self { asked: child(&self.asked, asked), sent: child(&self.sent, sent) }
    }

    /// An item of the list here.
    pub fn item(&self, index: usize) -> Self {
        Self { asked: format!("{}/{index}", self.asked), sent: format!("{}/{index}", self.sent) }
    }
}
