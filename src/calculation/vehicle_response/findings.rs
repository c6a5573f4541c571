//! What a vehicle's pass means: the findings.

use uom::si::ratio::percent;

use super::request::ResolvedVehicleResponse;
use super::unseen_strips::UnseenStrips;
use super::vehicle_pass::VehiclePass;
use crate::calculation::report::{Decimals, Diagnostics, FieldPath, Finding, Statement};
use crate::practice::detectors::{FINEST_CLASS_PERCENT, MIN_TIMES_THRESHOLD};
use crate::practice::finding_codes::{FindingCode, Level};
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
    let of_change =
        |statement: Statement| statement.percent("change", peak, 3).percent("threshold", threshold, Decimals::All);
    if peak < threshold {
        let message = of_change(Statement::new("response-not-seen"));
        let finding = Finding::new(FindingCode::VehicleNotSeen, Level::Warning, &vehicle_at, message);
        diagnostics.add_finding(figures(finding).send(&threshold_at));
    } else if peak < MIN_TIMES_THRESHOLD * threshold {
        let message = of_change(Statement::new("response-thin-margin"));
        let finding = Finding::new(FindingCode::ThinMargin, Level::Warning, &vehicle_at, message);
        diagnostics.add_finding(figures(finding).send(&threshold_at));
    }
    if let Some((lets_go_at, _)) = pass.drop_outs.first() {
        let (system, tail) = (resolved.coil.system, resolved.model.length);
        let message = Statement::new("response-drops-out").length("lets_go_at", *lets_go_at, system).length(
            "tail_reaches_loop_at",
            tail,
            system,
        );
        diagnostics.add_finding(
            Finding::new(FindingCode::DropsOut, Level::Warning, &vehicle_at, message)
                .length("lets_go_at", *lets_go_at, system)
                .length("tail_reaches_loop_at", tail, system)
                .send(&threshold_at),
        );
    }
    if let Some(unseen) = unseen.filter(|unseen| unseen.contains_centre()) {
        let message =
            Statement::new("response-blind-strip").length("blind_strip", unseen.width(), resolved.coil.system);
        diagnostics.add_finding(
            Finding::new(FindingCode::BlindStrip, Level::Warning, &vehicle_at, message)
                .length("blind_strip", unseen.width(), resolved.coil.system)
                .send(&FieldPath::BODY.field("loop").field("shape")),
        );
    }
    if threshold < FINEST_CLASS_PERCENT {
        let message = Statement::new("input-fine-threshold").percent("threshold", threshold, Decimals::All).percent(
            "finest_class",
            FINEST_CLASS_PERCENT,
            Decimals::All,
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
        let message = Statement::new("response-rough-answer").length(
            "least_height",
            resolved.model.least_height(),
            resolved.coil.system,
        );
        diagnostics.add_finding(Finding::new(FindingCode::RoughAnswer, Level::Note, &vehicle_at, message));
    }
}
