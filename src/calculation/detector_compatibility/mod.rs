//! Whether a detector unit tunes to loops, and how to set it: before the cut.
//!
//! - `request`: what is asked, as sent and in typed quantities
//! - `checks`: each figure of a channel against its limit, and each vehicle at each sensitivity step
//! - `judgement`: how a channel stands as a whole
//! - `lanes`: the lanes of loops that no layout has decided
//! - `names`: what loops are called where a person reads of them
//! - `neighbours`: the coupling of loops on different channels
//! - `settings`: how to set each channel
//! - `remedies`: what would turn a bad check
//! - `report`: what is answered

mod checks;
mod judgement;
mod lanes;
mod names;
mod neighbours;
mod remedies;
mod report;
mod request;
mod settings;

pub use report::{
    ChannelSettings, Check, ConnectedLoopEcho, DetectorCompatibilityInputs, DetectorCompatibilityReport,
    NeighbourAction, Neighbours, OutputSettings, Remedy, RemedyChange, Sensitivity, SensitivityStep, SentSettings,
};
use request::MAX_LOOPS;
pub use request::{ConnectedLoop, DetectorCompatibilityRequest, Position, ResolvedDetectorCompatibility};

use super::cost::CostTerm;
use super::layout::{ChannelLoop, DetectorChannel, MeasuredLoop, join_channels};
use super::report::{Diagnostics, FieldPath, Finding, InvalidRequest, ListJoin, Statement};
use super::{Calculation, Example, loop_characteristics, vehicle_response};
use crate::practice::cautions::CautionCode;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use checks::CheckVerdict;
use judgement::ChannelJudgement;
use remedies::Workshop;

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

    fn cost_terms(&self) -> Vec<CostTerm> {
        let positioned = self.loops.iter().filter(|one| one.position.is_some()).count();
        compatibility_terms(self.loops.len(), positioned, self.vehicles.as_deref())
    }

    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest> {
        let resolved = self.resolve(diagnostics);
        let resolved = diagnostics.finish(resolved)?;
        Ok(solve(self, &resolved, diagnostics))
    }
}

/// What the checks of so many loops, some of them with positions, are estimated to cost.
fn compatibility_terms(loops: usize, positioned: usize, vehicles: Option<&[VehicleClass]>) -> Vec<CostTerm> {
    let vehicles = vehicles.unwrap_or(&VehicleClass::USUAL);
    let of = |counts: fn(VehicleClass) -> bool| loops * vehicles.iter().filter(|class| counts(**class)).count();
    vec![
        CostTerm::new("a loop of a unit", loops, 100),
        CostTerm::new("a vehicle over a loop of a unit", of(|class| !class.is_two_wheeler()), 60),
        CostTerm::new("a vehicle of several parts over a loop of a unit", of(VehicleClass::has_gap), 120),
        CostTerm::new("a pair of loops with positions", positioned * positioned.saturating_sub(1) / 2, 30),
    ]
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
    let measured = MeasuredLoop::measure_all(&resolved.loops, &resolved.budget);
    let channels = join_channels(measured, resolved.wiring);
    let judge = |channel: &DetectorChannel| {
        // What is thrown away looks at no vehicle.
        let vehicles = if resolved.budget.is_abandoned() { &[] } else { vehicles.as_slice() };
        ChannelJudgement::new(channel, channel.step(detector, vehicles), detector, vehicles)
    };
    let judged: Vec<_> = channels.iter().map(judge).collect();
    let workshop = Workshop::new(resolved, &channels, &judged);
    let mut verdict = CheckVerdict::Suitable;
    let (mut reported, mut sensitivities, mut settings, mut remedies) =
        (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    let mut first = 0;
    for (index, (channel, judgement)) in channels.iter().zip(&judged).enumerate() {
        let checks = &judgement.checks;
        verdict = checks.iter().map(|check| check.verdict).fold(verdict, CheckVerdict::max);
        for check in checks {
            diagnostics.add_sources(check.sources);
        }
        reported.extend(checks.iter().map(|check| check.to_report(channel)));
        if !resolved.budget.is_abandoned() {
            sensitivities.extend(checks::sensitivities(channel, detector, vehicles));
        }
        judgement.state(channel, detector, diagnostics);
        settings.push(settings::choose(channel, first, judgement.step, detector, diagnostics));
        remedies.extend(remedies::find(&workshop, index));
        first += channel.loops.len();
    }
    if resolved.budget.take_was_reached() {
        let message = Statement::new("compatibility-search-bounded");
        let at = FieldPath::BODY.field("loops");
        let finding = Finding::new(FindingCode::SearchBounded, Level::Warning, &at, message);
        diagnostics.add_finding(finding.send(&FieldPath::BODY.field("vehicles")));
    }
    state_steel(&resolved.loops, diagnostics);
    let neighbours =
        if resolved.budget.is_abandoned() { Vec::new() } else { neighbours::pairs(&channels, detector, diagnostics) };
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

/// States that steel lies below loops: it counts for tuning, and not for what vehicles make. Of the loops of a layout it was told already.
fn state_steel(loops: &[ChannelLoop], diagnostics: &mut Diagnostics) {
    let over_steel: Vec<_> = loops.iter().filter(|one| one.steel_below.is_some() && one.mark.is_none()).collect();
    if over_steel.is_empty() {
        return;
    }
    let name = |one: &&ChannelLoop| Statement::new("compatibility-changed-loop").text("loop", one.label.clone());
    let message = Statement::new("compatibility-steel-below").count("count", over_steel.len() as u64).phrases(
        "loops",
        over_steel.iter().map(name).collect(),
        ListJoin::And,
    );
    let at = FieldPath::BODY.field("loops");
    diagnostics.add_finding(Finding::new(FindingCode::SteelBelow, Level::Warning, &at, message));
}
