//! Which part has failed, from meter readings, observations and substitution, and what to test next.
//!
//! Each fault, in each of its variants, predicts what meters show, with the physics of the other calculations. What was
//! measured is scored against the predictions with stated uncertainty, combined with what was noticed, and ranked by Bayes' rule
//! under the assumption of a single cause.
//!
//! - `request`: what is asked; `resolve`: the same in typed quantities.
//! - `meters`: readings, predictions, and how well the two agree.
//! - `sound_loop`: what a sound loop shows, and what a change makes of that; `designed_turns`: other counts, and closed turns;
//!   `usual_loops`: what stands in without a design and a record.
//! - `predicted_readings`: the faults in their variants.
//! - `test_outcomes`: what each test shows with each of them; `test_progress`: what was done and cleared.
//! - `likelihood`: the probability of each from all evidence.
//! - `test_choice`: which test tells most for its cost, and the likely order to the end.
//! - `suspects`, `findings`: the result in sentences; `report`: what is answered.

mod designed_turns;
mod findings;
mod likelihood;
mod meters;
mod predicted_readings;
mod readings;
mod report;
mod request;
mod resolve;
mod sound_loop;
mod suspects;
mod test_choice;
mod test_outcomes;
mod test_progress;
mod usual_loops;

pub use designed_turns::inductance_ladder;
pub use findings::{InsulationTest, judge_insulation};
pub use meters::{MeterKind, MeterReading, Prediction, ReadingBand};
pub use readings::{ReadingConditions, ResolvedReadings};
pub use report::*;
pub use request::*;

use self::findings::{
    judge_break, judge_contradiction, judge_gate, judge_substitution, judge_substitutions_apart, judge_temperature,
};
use self::likelihood::FaultEvidence;
use self::predicted_readings::HypothesisSet;
use self::resolve::ResolvedFaultFinding;
use self::sound_loop::SoundLoopModel;
use self::test_choice::TestChoice;
use self::test_outcomes::{HypothesesByPlace, OutcomeTable};
use super::cost::CostTerm;
use super::report::{Diagnostics, InvalidRequest};
use super::{Calculation, Example, loop_characteristics};
use crate::practice::cautions::CautionCode;
use crate::practice::fault_signs::Observation;
use crate::practice::fault_tests::FaultTest;
use crate::practice::meter_readings::{InsulationState, ReadingPlace};
use crate::practice::sources::Source;
use crate::vocabulary::Vocabulary;

impl Calculation for FaultFindingRequest {
    type Report = FaultFindingReport;
    const NAME: &'static str = "fault-finding";
    const OPERATION_ID: &'static str = "find_fault";
    const SUMMARY: &'static str = "What has failed, and what to test next";
    const DESCRIPTION: &'static str = "For the call-back: from what a loop should measure (its design or its commissioning \
        record, else usual loops), what meters show now, what people notice, how the unit runs on a known inductor and what tests \
        have shown, to the likely faults and the test that tells most for its minutes and for what it disturbs. Each fault's \
        readings are predicted with the physics of loop-characteristics (a shorted turn is a coupled secondary, a wrong turn count \
        recomputes the loop, copper warms) and scored against the measurement. Send what `next_test` showed in `readings` or \
        `tests_done`, and ask again. A single cause is assumed, and readings that no single fault explains are said to contradict \
        each other. Shares, weights and minutes are choices made here after common practice.";
    const MAX_ITEMS: &'static [(&'static str, u64)] = &[("tests_done", FaultTest::COUNT)];
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
        vec![CostTerm::new("a diagnosis", 1, 500)]
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
    let ResolvedFaultFinding { design, usual, detector, readings, observations, tests_done, .. } = resolved;
    let ResolvedReadings { conditions, shown: readings } = readings;

    let [at_detector, at_loop] = [ReadingPlace::DetectorEnd, ReadingPlace::LoopEnd].map(|place| {
        let conditions = ReadingConditions { place, ..*conditions };
        let sound = SoundLoopModel::new(design.as_ref(), request.expected.as_ref(), usual.as_ref(), &conditions);
        (HypothesisSet::new(&sound, place, conditions.ground), sound)
    });
    let (set, sound) = match conditions.place {
        ReadingPlace::DetectorEnd => &at_detector,
        ReadingPlace::LoopEnd => &at_loop,
    };
    let hypotheses = &set.hypotheses;
    let sets = HypothesesByPlace { at_detector: &at_detector.0, at_loop: &at_loop.0, ground: conditions.ground };
    let table = OutcomeTable::new(&sets);
    let evidence = FaultEvidence {
        readings,
        observations,
        substitution: request.substitution.as_ref().filter(|done| !done.is_void(&detector.limits)),
        tests_done,
        table: &table,
    };
    let prior = likelihood::prior(sound, &detector.limits);
    let probabilities = likelihood::posterior(hypotheses, &evidence, &prior);
    let suspects = suspects::rank(hypotheses, &probabilities, &evidence);
    let choice = TestChoice::new(hypotheses, &table);
    let settled = choice.is_settled(&probabilities);
    let progress = resolved.progress(evidence.substitution);
    let (next_test, plan_of_tests, open_tests) = choice.choose(&progress, &probabilities);

    if let Some(reading) = resolved.readings.of(MeterKind::Insulation) {
        let clears_nothing =
            conditions.ground == InsulationState::Dry && observations.contains(&Observation::FaultAfterRain);
        let test = InsulationTest::sent(request.readings.as_ref(), request.detector.as_ref());
        let test = InsulationTest { clears_nothing, ..test };
        judge_insulation(reading, test, diagnostics);
    }
    if resolved.readings.of(MeterKind::Resistance).is_some() {
        judge_temperature(sound, conditions, diagnostics);
    }
    if evidence.is_contradictory(hypotheses) {
        judge_contradiction(readings, diagnostics);
    }
    let contradict = progress.substitutions_contradict();
    if contradict {
        judge_substitutions_apart(diagnostics);
    }
    judge_break(resolved, diagnostics);
    judge_gate(observations, diagnostics);
    // What contradicts another test is not said to show anything by itself.
    if let Some(done) = request.substitution.as_ref().filter(|done| !contradict || done.is_void(&detector.limits)) {
        judge_substitution(done, &detector.limits, diagnostics);
    }
    diagnostics.add_sources(&[Source::BayesRule, Source::CommonPractice, Source::OwnChoice]);
    diagnostics.add_sources(if design.is_some() { loop_characteristics::SOURCES } else { &[Source::IacsCopper] });
    diagnostics.add_cautions(&next_test.cautions);
    if observations.iter().any(|observation| observation.follows_power_up()) || request.substitution.is_some() {
        diagnostics.add_cautions(&[CautionCode::PowerUpEmpty]);
    }
    diagnostics.add_cautions(CautionCode::AT_A_LOOP_IN_USE);

    let inputs = FaultFindingInputs::new(resolved, request.substitution.as_ref(), sound);
    let closing = diagnostics.into_parts();
    FaultFindingReport {
        suspects,
        settled,
        next_test,
        plan_of_tests,
        open_tests,
        inputs,
        findings: closing.findings,
        assumed: closing.assumed,
        unused: closing.unused,
        cautions: closing.cautions,
        basis: closing.basis,
    }
}
