//! What a loop in the ground is, whether it is sound, and whether to keep it: for the installer who finds one without a record.
//!
//! - `request`: what is asked, as sent and in typed quantities
//! - `candidates`: the turns and the wire that the readings speak for
//! - `tuning`: whether the unit tunes to it, and by which limit
//! - `assessment`: condition, vehicles, and the verdict
//! - `report`: what is answered

mod assessment;
mod candidates;
mod report;
mod request;
mod tuning;

pub use report::{ExistingLoopCandidate, ExistingLoopInputs, ExistingLoopReport, ExistingLoopTuning, SettlingTest};
pub use request::{ExistingLoopRequest, ResolvedExistingLoop, SteelBelow};

use self::assessment::LoopAssessment;
use self::candidates::TurnCandidates;
use super::cost::CostTerm;
use super::fault_finding::{InsulationTest, MeterKind, judge_insulation};
use super::report::{Diagnostics, FieldPath, Finding, InvalidRequest, ListJoin, Statement};
use super::{Calculation, Example, loop_characteristics, vehicle_response};
use crate::practice::cautions::CautionCode;
use crate::practice::existing_loops::ExistingLoopVerdict;
use crate::practice::fault_tests::FaultTest;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use crate::quantity::output::round;

impl Calculation for ExistingLoopRequest {
    type Report = ExistingLoopReport;
    const NAME: &'static str = "existing-loop";
    const OPERATION_ID: &'static str = "assess_existing_loop";
    const SUMMARY: &'static str = "What a loop in the ground is, and whether to keep it";
    const DESCRIPTION: &'static str = "For a loop that is there and of which nothing is known: from its legs as paced out and what \
        meters show at the end of its lead-in to the turn counts that it may have (and its wire, where the resistance tells it), \
        whether it is sound, whether the unit tunes to it, which vehicles it sees, whether to keep it or to cut a new one, and the \
        test that would settle what is open. Inductance goes with the square of the turns and resistance with the turns and the wire, \
        so that together they tell more than each alone. With steel below at least two counts stand, and the loop is kept with care \
        at most; one that holds a gate is never simply kept without insulation of 100 megohm and a drive-over. How usual turns and \
        wires are is a choice made here. The loop is taken as a rectangle.";
    const EXAMPLES: &'static [Example] = &[
        Example {
            name: "car_park_lane",
            summary: "Tern Island Boatyard: an old loop in the car-park lane, measured in full",
            request: include_str!("../../../openapi/examples/existing-loop/car_park_lane.request.json"),
        },
        Example {
            name: "over_mesh",
            summary: "Tern Island Boatyard: a loop at the yard gate over a slab with mesh",
            request: include_str!("../../../openapi/examples/existing-loop/over_mesh.request.json"),
        },
    ];

    fn cost_terms(&self) -> Vec<CostTerm> {
        let vehicles = self.vehicles.as_deref().unwrap_or(&VehicleClass::USUAL);
        let of = |counts: fn(VehicleClass) -> bool| vehicles.iter().filter(|class| counts(**class)).count();
        vec![
            CostTerm::new("the turn counts of an existing loop", 1, 1000),
            CostTerm::new("a vehicle over an existing loop", of(|class| !class.has_gap()), 80),
            CostTerm::new("a vehicle of several parts over an existing loop", of(VehicleClass::has_gap), 150),
        ]
    }

    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest> {
        let resolved = self.resolve(diagnostics);
        let resolved = diagnostics.finish(resolved)?;
        Ok(solve(self, &resolved, diagnostics))
    }
}

/// Judges the loop, and reports.
fn solve(
    request: &ExistingLoopRequest,
    resolved: &ResolvedExistingLoop,
    diagnostics: &mut Diagnostics,
) -> ExistingLoopReport {
    mark_unneeded(request, resolved, diagnostics);
    let candidates = TurnCandidates::find(resolved);
    let assessment = LoopAssessment::new(resolved, &candidates, &diagnostics.budget().clone());
    state_verdict(&assessment, diagnostics);
    if let Some(reading) = resolved.readings.of(MeterKind::Insulation) {
        let test = InsulationTest::sent(request.readings.as_ref(), request.detector.as_ref());
        judge_insulation(reading, test, diagnostics);
    }
    diagnostics.add_sources(loop_characteristics::SOURCES);
    diagnostics.add_sources(vehicle_response::SOURCES);
    diagnostics.add_sources(&[Source::BayesRule, Source::CommonPractice, Source::OwnChoice, Source::NemaEnvelope]);
    if let Some(test) = &assessment.settling_test {
        diagnostics.add_cautions(&test.cautions);
    }
    diagnostics.add_cautions(CautionCode::AT_A_LOOP_IN_USE);
    let LoopAssessment { verdict, reasons, condition, tuning, vehicles, settling_test } = assessment;
    let closing = diagnostics.into_parts();
    ExistingLoopReport {
        verdict,
        reasons: reasons.into_iter().map(Into::into).collect(),
        candidates: ExistingLoopCandidate::of(&candidates),
        condition,
        steel_likelihood: round(candidates.steel(), 3),
        tuning,
        vehicles,
        settling_test,
        inputs: ExistingLoopInputs::new(resolved),
        findings: closing.findings,
        assumed: closing.assumed,
        unused: closing.unused,
        cautions: closing.cautions,
        basis: closing.basis,
    }
}

/// Lists what this request has no use for.
fn mark_unneeded(request: &ExistingLoopRequest, resolved: &ResolvedExistingLoop, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    if let Some(detector) = &request.detector {
        let [frequency_min, frequency_max, tank, insulation] = detector.parts_sent();
        // Frequencies follow from the tank alone.
        let frequencies = [frequency_min, frequency_max].into_iter().filter(|_| !tank.1);
        let insulation = Some(insulation).filter(|_| resolved.readings.of(MeterKind::Insulation).is_none());
        let unneeded: Vec<_> = frequencies.chain(insulation).collect();
        diagnostics.mark_unneeded(&body.field("detector"), &unneeded);
    }
    if let Some(readings) = &request.readings {
        let capacitance = [
            ("capacitance_nf", readings.capacitance_nf.is_some()),
            ("whole_capacitance_nf", readings.whole_capacitance_nf.is_some()),
        ];
        diagnostics.mark_unneeded(&body.field("readings"), &capacitance);
    }
}

/// States the verdict with all that stands behind it.
fn state_verdict(assessment: &LoopAssessment, diagnostics: &mut Diagnostics) {
    let level = match assessment.verdict {
        ExistingLoopVerdict::Keep => Level::Note,
        ExistingLoopVerdict::KeepWithCare => Level::Warning,
        ExistingLoopVerdict::Recut => Level::Stop,
    };
    let message = Statement::new("existing-verdict").member("verdict", assessment.verdict).phrases(
        "reasons",
        assessment.reasons.clone(),
        ListJoin::Semicolon,
    );
    let message = match assessment.verdict {
        ExistingLoopVerdict::Keep => Statement::new("existing-keep"),
        ExistingLoopVerdict::KeepWithCare | ExistingLoopVerdict::Recut => message,
    };
    let body = FieldPath::BODY;
    let readings_at = body.field("readings");
    let finding = Finding::new(FindingCode::ExistingLoop, level, &body, message);
    let missed = assessment.reasons.iter().filter_map(missed_reading);
    let finding = missed.fold(finding, |finding, reading| finding.send(&readings_at.field(reading)));
    let settles = |test| assessment.settling_test.as_ref().is_some_and(|settling| settling.test == test);
    let told_by_tests = [(FaultTest::DriveOver, "drive_over_passed"), (FaultTest::LookForSteel, "over_steel")];
    let told = told_by_tests.into_iter().filter(|(test, _)| settles(*test));
    diagnostics.add_finding(told.fold(finding, |finding, (_, field)| finding.send(&body.field(field))));
}

/// The field of the reading that a reason misses.
fn missed_reading(reason: &Statement) -> Option<&'static str> {
    match reason.id() {
        "existing-insulation-unknown" => Some(MeterKind::Insulation.field()),
        "existing-inductance-unknown" => Some(MeterKind::Inductance.field()),
        "existing-resistance-unknown" => Some(MeterKind::Resistance.field()),
        _ => None,
    }
}
