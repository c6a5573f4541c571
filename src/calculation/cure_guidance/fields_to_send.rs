//! Fields of a request that could be sent so that more is known.

use crate::calculation::report::{FieldPath, Finding};

/// The pointer to a field of a row of weather.
pub fn weather_pointer(index: usize, field: &'static str) -> String {
    FieldPath::BODY.field("weather").field("conditions").item(index).field(field).pointer()
}

/// Names a field of a row of weather that could be sent.
pub fn with_row_field(finding: Finding, index: usize, field: &'static str) -> Finding {
    finding.send(&FieldPath::BODY.field("weather").field("conditions").item(index).field(field))
}

/// Names the weather, of which more hours could be sent.
pub fn with_more_hours(finding: Finding) -> Finding {
    finding.send(&FieldPath::BODY.field("weather").field("conditions"))
}

/// Names the state of the slot, which somebody could see.
pub fn with_slot_condition(finding: Finding) -> Finding {
    finding.send(&FieldPath::BODY.field("surface_condition"))
}
