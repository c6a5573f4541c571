//! Which part has failed, from meter readings, observations and substitution, and what to test next.
//!
//! Each fault, in each of its variants, predicts what meters show, with the physics of the other calculations. What was
//! measured is scored against the predictions with stated uncertainty, combined with what was noticed, and ranked by Bayes' rule
//! under the assumption of a single cause.
//!
//! - `request`: what is asked; `resolve`: the same in typed quantities.
//! - `meters`: readings, predictions, and how well the two agree.
//! - `sound_loop`: what a sound loop shows, and what a change makes of that.
//! - `predicted_readings`: the faults in their variants.
//! - `likelihood`: the probability of each from all evidence.
//! - `next_test`: which test is expected to narrow the suspects most.
//! - `suspects`, `findings`: the result in sentences; `report`: what is answered.

mod findings;
mod likelihood;
mod meters;
mod next_test;
mod predicted_readings;
mod report;
mod request;
mod resolve;
mod sound_loop;
mod suspects;

pub use report::*;
pub use request::*;

use self::findings::{InsulationTest, judge_contradiction, judge_insulation, judge_substitution, judge_temperature};
use self::likelihood::FaultEvidence;
use self::meters::MeterKind;
use self::next_test::Posterior;
use self::predicted_readings::HypothesisSet;
use self::resolve::{ReadingConditions, ResolvedFaultFinding};
use self::sound_loop::SoundLoopModel;
use super::cost::CostTerm;
use super::report::{Diagnostics, InvalidRequest};
use super::{Calculation, Example, loop_characteristics};
use crate::practice::cautions::CautionCode;
use crate::practice::faults::ReadingPlace;
use crate::practice::sources::Source;

impl Calculation for FaultFindingRequest {
    type Report = FaultFindingReport;
    const NAME: &'static str = "fault-finding";
    const OPERATION_ID: &'static str = "find_fault";
    const SUMMARY: &'static str = "What has failed, and what to test next";
    const DESCRIPTION: &'static str = "For the call-back: from what a loop should measure (its design or its commissioning \
        record), what meters show now, what people notice, and how the unit runs on a known inductor, to the likely faults and \
        the test that separates them best. Each fault's readings are predicted with the physics of loop-characteristics (a \
        shorted turn is a coupled secondary, a wrong turn count recomputes the loop, copper warms) and scored against the \
        measurement. One reading is enough to start with; a single cause is assumed, and readings that no single fault \
        explains are said to contradict each other. Shares and weights of faults are choices made here after common practice.";
    const EXAMPLES: &'static [Example] = &[
        Example {
            name: "leak_after_rain",
            summary: "Tern Island Boatyard: the yard gate stays open after rain, and insulation is 0.3 megohm",
            request: include_str!("../../../openapi/examples/fault-finding/leak_after_rain.request.json"),
        },
        Example {
            name: "shorted_turn",
            summary: "Tern Island Boatyard: the barrier lane never detects, and the inductance is a third of the design's",
            request: include_str!("../../../openapi/examples/fault-finding/shorted_turn.request.json"),
        },
        Example {
            name: "unit_on_known_inductor",
            summary: "Tern Island Boatyard: the café's unit does not run on a known inductor at its terminals",
            request: include_str!("../../../openapi/examples/fault-finding/unit_on_known_inductor.request.json"),
        },
    ];

    fn cost_terms(&self) -> Vec<CostTerm> {
        vec![CostTerm::new("a diagnosis", 1, 90)]
    }

    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest> {
        let resolved = ResolvedFaultFinding::resolve(self, diagnostics);
        let resolved = diagnostics.finish(resolved)?;
        Ok(solve(self, &resolved, diagnostics))
    }
}

/// Weighs the evidence, and reports.
fn solve(
    request: &FaultFindingRequest,
    resolved: &ResolvedFaultFinding,
    diagnostics: &mut Diagnostics,
) -> FaultFindingReport {
    let ResolvedFaultFinding { design, detector, conditions, readings, observations } = resolved;

    let [at_detector, at_loop] = [ReadingPlace::DetectorEnd, ReadingPlace::LoopEnd].map(|place| {
        let conditions = ReadingConditions { place, ..*conditions };
        let sound = SoundLoopModel::new(design.as_ref(), request.expected.as_ref(), &conditions);
        (HypothesisSet::new(&sound, place), sound)
    });
    let (set, sound) = match conditions.place {
        ReadingPlace::DetectorEnd => &at_detector,
        ReadingPlace::LoopEnd => &at_loop,
    };
    let hypotheses = &set.hypotheses;
    let evidence = FaultEvidence {
        readings,
        observations,
        substitution: request.substitution.as_ref().filter(|done| !done.is_void(&detector.limits)),
    };
    let prior = likelihood::prior(sound, &detector.limits);
    let probabilities = likelihood::posterior(hypotheses, &evidence, &prior);
    let suspects = suspects::rank(hypotheses, &probabilities, &evidence);
    let posterior = Posterior { at_detector: &at_detector.0, at_loop: &at_loop.0, probabilities: &probabilities };
    let next_test = next_test::choose(&resolved.open_tests(evidence.substitution), &posterior);

    if let Some((_, reading)) = readings.iter().find(|(meter, _)| *meter == MeterKind::Insulation) {
        let test = InsulationTest {
            voltage: request.readings.as_ref().and_then(|readings| readings.test_voltage_v),
            asked_megohm: request.detector.as_ref().and_then(|detector| detector.insulation_min_megohm),
        };
        judge_insulation(*reading, test, diagnostics);
    }
    if resolved.has_reading(MeterKind::Resistance) {
        judge_temperature(sound, conditions, diagnostics);
    }
    if evidence.is_contradictory(hypotheses) {
        judge_contradiction(readings, diagnostics);
    }
    if let Some(done) = &request.substitution {
        judge_substitution(done, &detector.limits, diagnostics);
    }
    diagnostics.add_sources(&[Source::BayesRule, Source::CommonPractice, Source::OwnChoice]);
    diagnostics.add_sources(if design.is_some() { loop_characteristics::SOURCES } else { &[Source::IacsCopper] });
    diagnostics.add_cautions(&next_test.cautions);
    diagnostics.add_cautions(&[
        CautionCode::GateCanMove,
        CautionCode::InsulationTester,
        CautionCode::LiveParts,
        CautionCode::NotForPeople,
        CautionCode::LocalCodes,
    ]);

    let inputs = FaultFindingInputs::new(resolved, request.substitution.as_ref(), sound);
    let closing = diagnostics.into_parts();
    FaultFindingReport {
        suspects,
        next_test,
        inputs,
        findings: closing.findings,
        assumed: closing.assumed,
        unused: closing.unused,
        cautions: closing.cautions,
        basis: closing.basis,
    }
}
