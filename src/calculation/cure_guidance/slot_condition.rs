//! Whether the slot, and the wire in it, can take the sealant.

use uom::si::thermodynamic_temperature::degree_celsius;

use super::candidate::SealantCandidate;
use super::request::ResolvedCureGuidance;
use crate::calculation::report::{FieldPath, Finding, Statement};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::sealing::SurfaceCondition;

/// What follows from the state of the slot.
pub fn slot_finding(job: &ResolvedCureGuidance, candidate: &SealantCandidate) -> Option<Finding> {
    let at = FieldPath::BODY.field("surface_condition").pointer();
    let find = |code, level, message: Statement| Some(Finding::at(code, level, at.clone(), message));
    let is_poured_hot = candidate.kind.is_poured_hot();
    let is_not_allowed = job.condition.needs_sheet_approval(candidate.kind) && !candidate.sheet.damp_allowed;
    match job.condition {
        SurfaceCondition::Wet if is_poured_hot => {
            find(FindingCode::SlotWet, Level::Stop, Statement::new("cure-slot-wet-for-hot-sealant"))
        }
        SurfaceCondition::Wet => find(FindingCode::SlotWet, Level::Stop, Statement::new("cure-slot-wet")),
        SurfaceCondition::Frost => find(FindingCode::SlabFrozen, Level::Stop, Statement::new("cure-frost-on-slab")),
        SurfaceCondition::Damp if is_not_allowed && is_poured_hot => {
            find(FindingCode::SlotDamp, Level::Stop, Statement::new("cure-slot-damp-for-hot-sealant"))
        }
        SurfaceCondition::Damp if is_not_allowed => find(
            FindingCode::SlotDamp,
            Level::Stop,
            Statement::new("cure-slot-damp-not-allowed").member("kind", candidate.kind),
        ),
        SurfaceCondition::Damp => find(FindingCode::SlotDamp, Level::Warning, Statement::new("cure-slot-damp")),
        SurfaceCondition::Dry if job.condition_is_assumed => {
            find(FindingCode::SurfaceConditionAssumed, Level::Warning, Statement::new("cure-surface-condition-assumed"))
        }
        SurfaceCondition::Dry => None,
    }
}

/// Whether insulation and jacket stand the pour; `None` where they do, or nothing is poured.
pub fn insulation_finding(job: &ResolvedCureGuidance, candidate: &SealantCandidate) -> Option<Finding> {
    let pour = candidate.sheet.pour?;
    let at = FieldPath::BODY.field("wire").field("insulation_rating").pointer();
    let system = job.weather.system;
    match job.rating {
        Some(rating) if rating >= pour => None,
        Some(rating) => Some(
            Finding::at(
                FindingCode::InsulationTooLow,
                Level::Stop,
                at,
                Statement::new("cure-insulation-too-low")
                    .temperature("rating", rating, system)
                    .temperature("pour", pour, system),
            )
            .figure("rating", rating.get::<degree_celsius>(), "celsius")
            .figure("pour", pour.get::<degree_celsius>(), "celsius"),
        ),
        None => Some(Finding::at(
            FindingCode::InsulationUnknown,
            Level::Stop,
            at,
            Statement::new("cure-insulation-unknown").temperature("pour", pour, system),
        )),
    }
}
