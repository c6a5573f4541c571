//! What a vehicle's pass means: the findings.

use uom::si::ratio::percent;

use super::request::ResolvedVehicleResponse;
use super::unseen_strips::UnseenStrips;
use super::vehicle_pass::VehiclePass;
use crate::calculation::report::{Diagnostics, FieldPath, Finding};
use crate::practice::detectors::{FINEST_CLASS_PERCENT, MIN_TIMES_THRESHOLD};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::quantity::format::format_length;
use crate::quantity::output::round;

/// States whether the unit sees the vehicle, all the way and all across, and how far the figures hold.
pub fn judge(
    resolved: &ResolvedVehicleResponse,
    pass: &VehiclePass,
    unseen: Option<&UnseenStrips>,
    diagnostics: &mut Diagnostics,
) {
    let vehicle_at = FieldPath::BODY.field(if resolved.class.is_some() { "vehicle" } else { "plate" });
    let threshold_at = FieldPath::BODY.field("threshold_percent");
    let (peak, threshold) = (pass.peak.1.get::<percent>(), round(resolved.threshold.get::<percent>(), 3));
    let figures =
        |finding: Finding| finding.figure("change", peak, "percent").figure("threshold", threshold, "percent");
    if peak < threshold {
        let message = format!(
            "The vehicle changes the loop by {peak:.3} % at most, and the unit switches at {threshold} %. Set a finer \
             sensitivity, lengthen the short leg, add a turn, or shorten the lead-in."
        );
        diagnostics.add_finding(figures(Finding::new(
            FindingCode::VehicleNotSeen,
            Level::Warning,
            &vehicle_at,
            message,
        )));
    } else if peak < MIN_TIMES_THRESHOLD * threshold {
        let message = format!(
            "The vehicle changes the loop by {peak:.3} %, less than twice the {threshold} % that the unit switches at. Pavement, \
             age and weather take their part: set a finer sensitivity or enlarge the loop."
        );
        diagnostics.add_finding(figures(Finding::new(FindingCode::ThinMargin, Level::Warning, &vehicle_at, message)));
    }
    if pass.gaps().next().is_some() {
        let message = "The unit lets go while the vehicle is still over the loop. A longer loop along travel bridges the gap; do \
                       not use this one to hold a gate.";
        diagnostics.add_finding(Finding::new(FindingCode::DropsOut, Level::Warning, &vehicle_at, message));
    }
    if let Some(unseen) = unseen.filter(|unseen| unseen.contains_centre()) {
        let message = format!(
            "Over {} of the lane, its centre included, the machine is not seen: only the wires along travel couple with it. A \
             quadrupole sees the centre.",
            format_length(unseen.width(), resolved.coil.system)
        );
        diagnostics.add_finding(Finding::new(FindingCode::BlindStrip, Level::Warning, &vehicle_at, message).length(
            "blind_strip",
            unseen.width(),
            resolved.coil.system,
        ));
    }
    if threshold < FINEST_CLASS_PERCENT {
        let message = format!(
            "{threshold} % is finer than the finest class of the standard ({FINEST_CLASS_PERCENT} %). The unit's own sheet must \
             show that it switches there."
        );
        diagnostics.add_finding(
            Finding::new(FindingCode::FineThreshold, Level::Warning, &threshold_at, message).figure(
                "threshold",
                threshold,
                "percent",
            ),
        );
    }
    if resolved.model.height < resolved.model.least_height() {
        let message = format!(
            "The underside lies lower than the solver resolves for its size ({}): the figure is rough by more than 3 %.",
            format_length(resolved.model.least_height(), resolved.coil.system)
        );
        diagnostics.add_finding(Finding::new(FindingCode::RoughAnswer, Level::Note, &vehicle_at, message));
    }
}
