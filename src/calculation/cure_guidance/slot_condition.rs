//! Whether the slot, and the wire in it, can take the sealant.

use uom::si::thermodynamic_temperature::degree_celsius;

use super::candidate::SealantCandidate;
use super::request::ResolvedCureGuidance;
use crate::calculation::report::{FieldPath, Finding};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::sealing::SurfaceCondition;
use crate::quantity::format::format_temperature;

/// What follows from the state of the slot.
pub fn slot_finding(job: &ResolvedCureGuidance, candidate: &SealantCandidate) -> Option<Finding> {
    let at = FieldPath::BODY.field("surface_condition").pointer();
    let find = |code, level, message: &str| Some(Finding::at(code, level, at.clone(), message.to_owned()));
    let is_poured_hot = candidate.kind.is_poured_hot();
    let is_not_allowed = job.condition.needs_sheet_approval(candidate.kind) && !candidate.sheet.damp_allowed;
    match job.condition {
        SurfaceCondition::Wet if is_poured_hot => find(
            FindingCode::SlotWet,
            Level::Stop,
            "There is water in the slot, and molten sealant turns it to steam that spatters. Blow it out and dry the slot first.",
        ),
        SurfaceCondition::Wet => find(
            FindingCode::SlotWet,
            Level::Stop,
            "There is water in the slot: it spoils the seal. Blow it out, dry the slot and let no more in, then begin.",
        ),
        SurfaceCondition::Frost => find(
            FindingCode::SlabFrozen,
            Level::Stop,
            "Frost or ice lies on the slab, and nothing bonds to it. Melt it, dry the slot, and warm the slab itself before you begin.",
        ),
        SurfaceCondition::Damp if is_not_allowed && is_poured_hot => find(
            FindingCode::SlotDamp,
            Level::Stop,
            "The slot is damp, and molten sealant makes steam of it: bubbles, spatter, no bond. Dry the slot with hot air first.",
        ),
        SurfaceCondition::Damp if is_not_allowed => find(
            FindingCode::SlotDamp,
            Level::Stop,
            &format!(
                "The slot is damp, and {} sealant does not bond to damp unless its data sheet says so. Dry the slot first.",
                candidate.kind.adjective()
            ),
        ),
        SurfaceCondition::Damp => find(
            FindingCode::SlotDamp,
            Level::Warning,
            "The slot is damp. Blow it out and dry it until nothing shows on a paper towel; a film of water lets the seal go.",
        ),
        SurfaceCondition::Dry if job.condition_is_assumed => find(
            FindingCode::SurfaceConditionAssumed,
            Level::Warning,
            "Nobody said whether the slot is dry. See that it is, to the bottom, before the sealant goes in.",
        ),
        SurfaceCondition::Dry => None,
    }
}

/// Whether insulation and jacket stand the pour; `None` where they do, or nothing is poured.
pub fn insulation_finding(job: &ResolvedCureGuidance, candidate: &SealantCandidate) -> Option<Finding> {
    let pour = candidate.sheet.pour?;
    let at = FieldPath::BODY.field("wire").field("insulation_rating").pointer();
    let format = |temperature| format_temperature(temperature, job.weather.system);
    match job.rating {
        Some(rating) if rating >= pour => None,
        Some(rating) => Some(
            Finding::at(
                FindingCode::InsulationTooLow,
                Level::Stop,
                at,
                format!(
                    "The insulation stands {}, and the sealant is poured at {}: it would soften and the wires would touch. Take wire and jacket rated for the pour, or a sealant that is applied cold.",
                    format(rating),
                    format(pour)
                ),
            )
            .figure("rating", rating.get::<degree_celsius>(), "celsius")
            .figure("pour", pour.get::<degree_celsius>(), "celsius"),
        ),
        None => Some(Finding::at(
            FindingCode::InsulationUnknown,
            Level::Stop,
            at,
            format!(
                "Nobody said what the insulation and the jacket stand. Send wire.insulation_rating from the wire's sheet: it must be at least the {} of the pour.",
                format(pour)
            ),
        )),
    }
}
