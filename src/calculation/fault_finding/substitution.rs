//! A known inductor in place of the loop: what its outcome says of each fault, and in words.

use super::hypotheses::Place;
use super::request::Substitution;
use crate::calculation::report::{Diagnostics, FieldPath, Finding};
use crate::practice::detectors::Limits;
use crate::practice::faults::SubstitutionPoint;
use crate::practice::findings::{FindingCode, Level};

/// How often a fault that is in the circuit shows: others come and go. A choice made here.
const SHOWS: f64 = 0.9;
/// How often a fault that is not in the circuit seems to show, by an error of the test. A choice made here.
const ERRS: f64 = 0.002;

/// Whether the unit would tune to the inductor at all.
pub fn is_void(substitution: &Substitution, limits: &Limits) -> bool {
    !(limits.inductance_min_uh..=limits.inductance_max_uh).contains(&substitution.inductance_uh)
}

/// Whether what sits at a place is in the circuit with the inductor.
pub fn reaches(point: SubstitutionPoint, place: Place) -> bool {
    place
        <= match point {
            SubstitutionPoint::UnitTerminals => Place::Unit,
            SubstitutionPoint::HarnessEnd => Place::Harness,
            SubstitutionPoint::LeadInEnd => Place::LeadIn,
        }
}

/// How likely the outcome is with a fault at a place.
pub fn likelihood(substitution: &Substitution, place: Place) -> f64 {
    let fails = if reaches(substitution.connected_at, place) { SHOWS } else { ERRS };
    let runs = if substitution.unit_runs { 1.0 - fails } else { fails };
    match substitution.simulated_vehicle_switches {
        None => runs,
        Some(true) => runs * if place == Place::Unit { 0.2 } else { 0.95 },
        // A unit that runs and does not switch is at fault itself, whatever it is connected to. Choices made here.
        Some(false) if place == Place::Unit => 0.4,
        Some(false) => runs * 0.01,
    }
}

/// Says what the substitution shows, or that it shows nothing.
pub fn judge(substitution: &Substitution, limits: &Limits, diagnostics: &mut Diagnostics) {
    let at = FieldPath::BODY;
    let at = at.field("substitution");
    let Limits { inductance_min_uh: least, inductance_max_uh: most, .. } = *limits;
    if is_void(substitution, limits) {
        let message = format!(
            "The known inductor has {} µH and the unit tunes {least} to {most} µH: whether it runs says nothing. Repeat \
             the test with an inductor from the middle of that range.",
            substitution.inductance_uh
        );
        diagnostics.add_finding(
            Finding::new(FindingCode::SubstitutionVoid, Level::Warning, &at.field("inductance_uh"), message)
                .figure("inductance", substitution.inductance_uh, "uH")
                .figure("inductance_min", least, "uH")
                .figure("inductance_max", most, "uH"),
        );
        return;
    }
    let (within, beyond) = match substitution.connected_at {
        SubstitutionPoint::UnitTerminals => ("the unit or its supply", "the harness, the lead-in or the loop"),
        SubstitutionPoint::HarnessEnd => ("the unit, its supply or the harness", "the lead-in or the loop"),
        SubstitutionPoint::LeadInEnd => ("the unit, its supply, the harness or the lead-in", "the splice or the loop"),
    };
    let message = match (substitution.unit_runs, substitution.simulated_vehicle_switches) {
        (false, _) => format!("On a known inductor the unit does not run: the fault is in {within}, not in the loop."),
        (true, Some(false)) => {
            "On a known inductor the unit runs but does not switch: look at the unit, its sensitivity \
             and its output first."
                .to_owned()
        }
        (true, _) => format!("On a known inductor the unit runs: {within} will do, and the fault is in {beyond}."),
    };
    diagnostics.add_finding(Finding::new(FindingCode::SubstitutionResult, Level::Note, &at, message));
}
