//! The vehicles of a request.

use crate::calculation::report::{Diagnostics, FieldPath};
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use crate::vocabulary::Vocabulary;

impl VehicleClass {
    /// The vehicles that must be seen, each once; the usual ones when none are named.
    pub fn read_list(sent: Option<&[Self]>, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Vec<Self> {
        let Some(vehicles) = sent else {
            let reason = "What comes to most openings, and sits highest.";
            diagnostics.add_assumption(at, list(&Self::USUAL), reason, &[Source::CommonPractice]);
            return Self::USUAL.to_vec();
        };
        let mut once = vehicles.to_vec();
        once.sort_unstable();
        once.dedup();
        once
    }
}

/// Codes in a row, as a request would list them.
pub fn list<T: Vocabulary>(members: &[T]) -> String {
    members.iter().map(|member| member.code()).collect::<Vec<_>>().join(", ")
}
