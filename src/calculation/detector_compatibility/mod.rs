//! Whether a detector unit tunes to loops, and how to set it: before the cut.
//!
//! - `request`: what is asked, as sent and in typed quantities
//! - `checks`: each figure of a channel against its limit, and each vehicle at each sensitivity step
//! - `neighbours`: the coupling of loops on different channels
//! - `settings`: how to set each channel
//! - `remedies`: what would turn a bad check
//! - `report`: what is answered

mod checks;
mod neighbours;
mod remedies;
mod report;
mod request;
mod settings;

use uom::si::f64::Ratio;
use uom::si::inductance::microhenry;

pub use report::{
    ChannelSettings, Check, ConnectedLoopEcho, DetectorCompatibilityInputs, DetectorCompatibilityReport,
    NeighbourAction, Neighbours, Remedy, Sensitivity, SensitivityStep,
};
use request::MAX_LOOPS;
pub use request::{ConnectedLoop, DetectorCompatibilityRequest, Position, ResolvedDetectorCompatibility};

use super::input::ResolvedDetector;
use super::layout::DetectorChannel;
use super::report::{Diagnostics, FieldPath, Finding, InvalidRequest, Statement};
use super::{Calculation, Example, loop_characteristics, vehicle_response};
use crate::practice::cautions::CautionCode;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use checks::CheckVerdict;

impl Calculation for DetectorCompatibilityRequest {
    type Report = DetectorCompatibilityReport;
    const NAME: &'static str = "detector-compatibility";
    const OPERATION_ID: &'static str = "check_detector";
    const SUMMARY: &'static str = "Whether a detector unit tunes to loops";
    const DESCRIPTION: &'static str = "Holds loops, each at the end of its lead-in, against what a detector unit tunes to: \
        inductance with its as-built band, quality factor, resistance, the share that the lead-in leaves, the frequency where the \
        unit's tank capacitance is known, and every vehicle at every sensitivity step. Says how neighbours couple, how to set each \
        channel, and what change would turn a bad check, with the figure that it gives. Send the figures of the unit's own sheet in \
        `detector`, or let an envelope of `reference/detector-envelopes` stand in for it.";
    const MAX_ITEMS: &'static [(&'static str, u64)] = &[("loops", MAX_LOOPS)];
    const EXAMPLES: &'static [Example] = &[
        Example {
            name: "yard_gate_pair",
            summary: "Tern Island Boatyard: two obstruction loops of the yard gate on one unit",
            request: include_str!("../../../openapi/examples/detector-compatibility/yard_gate_pair.request.json"),
        },
        Example {
            name: "one_turn",
            summary: "One turn is too few: what would do",
            request: include_str!("../../../openapi/examples/detector-compatibility/one_turn.request.json"),
        },
    ];

    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest> {
        let resolved = self.resolve(diagnostics);
        let resolved = diagnostics.finish(resolved)?;
        Ok(solve(self, &resolved, diagnostics))
    }
}

/// Checks the loops, which a layout may have decided, and reports.
pub fn solve(
    request: &DetectorCompatibilityRequest,
    resolved: &ResolvedDetectorCompatibility,
    diagnostics: &mut Diagnostics,
) -> DetectorCompatibilityReport {
    if let Some(detector) = &request.detector {
        let [_, _, _, insulation] = detector.parts_sent();
        diagnostics.mark_unneeded(&FieldPath::BODY.field("detector"), &[insulation]);
    }
    let (detector, vehicles) = (&resolved.detector, &resolved.vehicles);
    let channels = resolved.channels();
    let mut verdict = CheckVerdict::Suitable;
    let (mut reported, mut sensitivities, mut settings, mut remedies) =
        (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    let mut first = 0;
    for channel in &channels {
        let step = channel.step(detector, vehicles);
        let checks = checks::check(channel, step, detector, vehicles);
        verdict = checks.iter().map(|check| check.verdict).fold(verdict, CheckVerdict::max);
        for check in &checks {
            diagnostics.add_sources(check.sources);
        }
        reported.extend(checks.iter().map(|check| check.to_report(channel)));
        sensitivities.extend(checks::sensitivities(channel, detector, vehicles));
        judge_joined(channel, detector, diagnostics);
        judge_gaps(channel, step, vehicles, diagnostics);
        settings.push(settings::choose(channel, first, step, detector, diagnostics));
        remedies.extend(remedies::find(channel, step, detector, vehicles));
        first += channel.loops.len();
    }
    let neighbours = neighbours::pairs(&channels, detector, diagnostics);
    diagnostics.add_sources(loop_characteristics::SOURCES);
    diagnostics.add_sources(vehicle_response::SOURCES);
    diagnostics.add_sources(&[Source::NemaEnvelope, Source::Everett]);
    diagnostics.add_cautions(&[
        CautionCode::NotForPeople,
        CautionCode::LocalCodes,
        CautionCode::GateCanMove,
        CautionCode::LiveParts,
        CautionCode::InsulationTester,
    ]);
    let inputs = resolved.echo();
    let closing = diagnostics.into_parts();
    let verdict = closing.findings.iter().map(verdict_of_finding).fold(verdict, CheckVerdict::max);
    DetectorCompatibilityReport {
        verdict: verdict.code(),
        checks: reported,
        sensitivities,
        neighbours,
        settings,
        remedies,
        inputs,
        findings: closing.findings,
        assumed: closing.assumed,
        unused: closing.unused,
        cautions: closing.cautions,
        basis: closing.basis,
    }
}

/// What a finding makes of the verdict: a stop makes it unsuitable, neighbours that disturb each other marginal.
fn verdict_of_finding(finding: &Finding) -> CheckVerdict {
    match finding.level {
        Level::Stop => CheckVerdict::Unsuitable,
        Level::Warning | Level::Note if finding.code == FindingCode::Crosstalk => CheckVerdict::Marginal,
        Level::Warning | Level::Note => CheckVerdict::Suitable,
    }
}

/// States where loops that share a channel come to what the unit does not tune to, though each may suit it alone.
fn judge_joined(channel: &DetectorChannel, detector: &ResolvedDetector, diagnostics: &mut Diagnostics) {
    let (low, high) = (channel.low.get::<microhenry>(), channel.high.get::<microhenry>());
    let (least, most) = (detector.limits.inductance_min_uh, detector.limits.inductance_max_uh);
    let code = match channel.loops.len() {
        0 | 1 => return,
        _ if high < least => FindingCode::BelowEnvelope,
        _ if low > most => FindingCode::AboveEnvelope,
        _ => return,
    };
    let message = Statement::new("compatibility-channel-untunable")
        .text("channel", channel.label())
        .quantity("as_built_low", low, 0, "uH")
        .quantity("as_built_high", high, 0, "uH")
        .quantity("inductance_min", least, 0, "uH")
        .quantity("inductance_max", most, 0, "uH");
    diagnostics.add_finding(
        Finding::new(code, Level::Stop, &FieldPath::BODY.field("wiring"), message)
            .figure("as_built_low", low, "uH")
            .figure("as_built_high", high, "uH")
            .figure("inductance_min", least, "uH")
            .figure("inductance_max", most, "uH"),
    );
}

/// States where the unit would let go before a vehicle's tail has reached the loop.
fn judge_gaps(channel: &DetectorChannel, step: Ratio, vehicles: &[VehicleClass], diagnostics: &mut Diagnostics) {
    for class in vehicles {
        let letting_go = channel.loops.iter().zip(channel.sightings(*class));
        for (missed, _) in letting_go.filter(|(_, sighting)| sighting.drops_out(step)) {
            let level = if channel.holds_the_gate() { Level::Stop } else { Level::Warning };
            let message =
                Statement::new("compatibility-drops-out").text("loop", missed.label.clone()).member("vehicle", *class);
            diagnostics.add_finding(
                Finding::new(FindingCode::DropsOut, level, &FieldPath::BODY.field("vehicles"), message)
                    .on(Some(missed.role)),
            );
        }
    }
}
