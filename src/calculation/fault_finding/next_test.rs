//! The test to do next: the one whose outcome is expected to narrow the suspects most.

use super::likelihood::sum_by_fault;
use super::meters::{MeterKind, Prediction};
use super::predicted_readings::{FaultHypothesis, HypothesisSet};
use super::report::{NextTest, TestOutcome};
use crate::calculation::report::Statement;
use crate::practice::fault_tests::FaultTest;
use crate::practice::faults::{FaultLocation, LoopFault, PerFault, SubstitutionPoint};
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// How often a test shows what is there: meters err, faults hide. A choice made here.
const TEST_SHOWS: f64 = 0.9;
/// How often a substitution fails although the fault is not in the circuit. A choice made here.
const SUBSTITUTION_ERRS: f64 = 0.02;
/// A fault is pointed to from this likelihood on. A choice made here.
const POINTS_FROM: f64 = 0.15;
/// Differences of information below this are rounding errors and no reason to prefer a test, bits.
const INFORMATION_TOLERANCE: f64 = 1e-9;

/// The hypotheses at both places of measurement, with their posterior probabilities; all lists in the same order.
pub struct Posterior<'a> {
    /// With the predictions at the detector end.
    pub at_detector: &'a HypothesisSet,
    /// With the predictions at the loop's tails.
    pub at_loop: &'a HypothesisSet,
    /// How likely each hypothesis is.
    pub probabilities: &'a [f64],
}

/// The outcomes that a test can have.
fn outcomes_of(test: FaultTest) -> &'static [Statement] {
    match test {
        FaultTest::Insulation => const { &[Statement::new("faults-seen-leak"), Statement::new("faults-seen-sound")] },
        FaultTest::SplitAtSplice => {
            const {
                &[
                    Statement::new("faults-seen-loop-leaks"),
                    Statement::new("faults-seen-lead-in-leaks"),
                    Statement::new("faults-seen-both-sound"),
                ]
            }
        }
        FaultTest::Resistance | FaultTest::ResistanceAtLoop => {
            const {
                &[
                    Statement::new("faults-seen-open-circuit"),
                    Statement::new("faults-seen-too-high"),
                    Statement::new("faults-seen-as-expected"),
                    Statement::new("faults-seen-too-low"),
                ]
            }
        }
        FaultTest::Inductance | FaultTest::InductanceAtLoop => {
            const {
                &[
                    Statement::new("faults-seen-no-reading"),
                    Statement::new("faults-seen-next-to-nothing"),
                    Statement::new("faults-seen-too-low"),
                    Statement::new("faults-seen-as-expected"),
                    Statement::new("faults-seen-too-high"),
                ]
            }
        }
        FaultTest::SubstituteAtUnit | FaultTest::SubstituteAtHarness | FaultTest::SubstituteAtLeadIn => {
            const { &[Statement::new("faults-seen-unit-does-not-run"), Statement::new("faults-seen-unit-runs")] }
        }
        FaultTest::NeighboursOff => {
            const { &[Statement::new("faults-seen-fault-goes"), Statement::new("faults-seen-fault-stays")] }
        }
        FaultTest::LoadAndWiggle => {
            const { &[Statement::new("faults-seen-reading-jumps"), Statement::new("faults-seen-reading-steady")] }
        }
        FaultTest::LookForSteel => {
            const { &[Statement::new("faults-seen-metal"), Statement::new("faults-seen-no-metal")] }
        }
    }
}

/// Probabilities of outcomes of which one is shown mostly; the others share the rest.
fn mostly(outcome: usize, test: FaultTest) -> Vec<f64> {
    let count = outcomes_of(test).len();
    let other = (1.0 - TEST_SHOWS) / (count - 1) as f64;
    (0..count).map(|index| if index == outcome { TEST_SHOWS } else { other }).collect()
}

/// Probabilities of two outcomes.
fn odds(first: f64) -> Vec<f64> {
    vec![first, 1.0 - first]
}

/// A predicted number as a multiple of a sound loop's; `allowance`, in the unit of the meter, keeps small numbers comparable.
fn ratio_to_sound(prediction: &Prediction, sound: &Prediction, allowance: f64) -> f64 {
    let ratio = |bound: f64| (bound + allowance) / (sound.band.middle() + allowance);
    0.5 * (ratio(prediction.band.low) + ratio(prediction.band.high))
}

/// The likeliest outcome of a resistance test, as an index into [`outcomes_of`].
fn resistance_outcome(hypothesis: &FaultHypothesis, set: &HypothesisSet) -> usize {
    let prediction = hypothesis.prediction(MeterKind::Resistance);
    let ratio = ratio_to_sound(prediction, &set.sound.resistance, 0.2);
    if prediction.is_over_range() {
        0
    } else if ratio > 1.2 {
        1
    } else if ratio < 0.85 {
        3
    } else {
        2
    }
}

/// The likeliest outcome of an inductance test, as an index into [`outcomes_of`].
fn inductance_outcome(hypothesis: &FaultHypothesis, set: &HypothesisSet) -> usize {
    let prediction = hypothesis.prediction(MeterKind::Inductance);
    let ratio = ratio_to_sound(prediction, &set.sound.inductance, 0.5);
    if prediction.is_over_range() {
        0
    } else if ratio < 0.1 {
        1
    } else if ratio < 0.9 {
        2
    } else if ratio > 1.1 {
        4
    } else {
        3
    }
}

/// How likely each outcome of a test is with a hypothesis: from what the physics predicts for meters, else a choice made here.
fn outcome_probabilities(test: FaultTest, index: usize, posterior: &Posterior<'_>) -> Vec<f64> {
    let hypothesis = &posterior.at_detector.hypotheses[index];
    let leaks = hypothesis.prediction(MeterKind::Insulation).band.high < 50.0;
    let resistance = |set: &HypothesisSet| mostly(resistance_outcome(&set.hypotheses[index], set), test);
    let inductance = |set: &HypothesisSet| mostly(inductance_outcome(&set.hypotheses[index], set), test);
    let substitution = |point: SubstitutionPoint| {
        odds(if point.reaches(hypothesis.location) { TEST_SHOWS } else { SUBSTITUTION_ERRS })
    };
    match test {
        FaultTest::Insulation => mostly(usize::from(!leaks), test),
        FaultTest::SplitAtSplice => {
            let outcome = match hypothesis.location {
                FaultLocation::Loop if leaks => 0,
                FaultLocation::LeadIn if leaks => 1,
                FaultLocation::Unit
                | FaultLocation::Harness
                | FaultLocation::LeadIn
                | FaultLocation::Splice
                | FaultLocation::Loop
                | FaultLocation::Beyond => 2,
            };
            mostly(outcome, test)
        }
        FaultTest::Resistance => resistance(posterior.at_detector),
        FaultTest::ResistanceAtLoop => resistance(posterior.at_loop),
        FaultTest::Inductance => inductance(posterior.at_detector),
        FaultTest::InductanceAtLoop => inductance(posterior.at_loop),
        FaultTest::SubstituteAtUnit => substitution(SubstitutionPoint::UnitTerminals),
        FaultTest::SubstituteAtHarness => substitution(SubstitutionPoint::HarnessEnd),
        FaultTest::SubstituteAtLeadIn => substitution(SubstitutionPoint::LeadInEnd),
        FaultTest::NeighboursOff => odds(hypothesis.fault.goes_with_neighbours_off()),
        FaultTest::LoadAndWiggle => odds(hypothesis.fault.jumps_under_load()),
        FaultTest::LookForSteel => odds(hypothesis.fault.is_found_as_metal()),
    }
}

/// Uncertainty in bits.
fn entropy(probabilities: &PerFault<f64>) -> f64 {
    probabilities
        .values()
        .iter()
        .filter(|probability| **probability > 0.0)
        .map(|probability| -probability * probability.log2())
        .sum()
}

/// Each outcome of a test: how likely it is, and how likely each fault is after it.
fn outcomes_with_faults(test: FaultTest, posterior: &Posterior<'_>) -> Vec<(f64, PerFault<f64>)> {
    let hypotheses = &posterior.at_detector.hypotheses;
    let table: Vec<_> = (0..hypotheses.len()).map(|index| outcome_probabilities(test, index, posterior)).collect();
    let outcome = |index: usize| {
        let joint: Vec<f64> =
            posterior.probabilities.iter().zip(&table).map(|(probability, row)| probability * row[index]).collect();
        let probability: f64 = joint.iter().sum();
        let faults = sum_by_fault(hypotheses, &joint).map(|joint| joint / probability.max(f64::MIN_POSITIVE));
        (probability, faults)
    };
    (0..outcomes_of(test).len()).map(outcome).collect()
}

/// The test of `open` that is expected to lower the uncertainty most; on a tie the first.
pub fn choose(open: &[FaultTest], posterior: &Posterior<'_>) -> NextTest {
    let now = entropy(&sum_by_fault(&posterior.at_detector.hypotheses, posterior.probabilities));
    let mut best = (FaultTest::LookForSteel, f64::NEG_INFINITY, Vec::new());
    for test in open {
        let outcomes = outcomes_with_faults(*test, posterior);
        let left: f64 = outcomes.iter().map(|(probability, faults)| probability * entropy(faults)).sum();
        if now - left > best.1 + INFORMATION_TOLERANCE {
            best = (*test, now - left, outcomes);
        }
    }
    let (test, information, outcomes) = best;
    NextTest {
        test,
        label: test.label(),
        how: test.description(),
        expected_information_bits: round(information.max(0.0), 3),
        outcomes: outcomes_of(test)
            .iter()
            .zip(outcomes)
            .map(|(outcome, (probability, faults))| TestOutcome {
                outcome: outcome.clone().into(),
                probability: round(probability, 3),
                points_to: pointed_to(&faults),
            })
            .collect(),
        cautions: test.cautions().to_vec(),
    }
}

fn pointed_to(faults: &PerFault<f64>) -> Vec<LoopFault> {
    let ranked = faults.ranked();
    let most = ranked.first().map_or(0.0, |(_, probability)| *probability);
    ranked
        .into_iter()
        .take_while(|(_, probability)| *probability >= POINTS_FROM.min(most))
        .map(|(fault, _)| fault)
        .collect()
}
