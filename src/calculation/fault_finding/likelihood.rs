//! How likely each fault is, given all that is known: Bayes' rule over the hypotheses.

use super::meters::{MeterKind, MeterReading};
use super::predicted_readings::{FaultForm, FaultHypothesis};
use super::request::Substitution;
use super::sound_loop::SoundLoopModel;
use super::test_outcomes::{OutcomeTable, fails_on_inductor};
use crate::practice::detectors::Limits;
use crate::practice::fault_signs::Observation;
use crate::practice::fault_tests::{FaultTest, FaultTestOutcome};
use crate::practice::faults::{FaultLocation, LoopFault, PerFault};
use crate::vocabulary::Vocabulary;

/// All that speaks for or against a fault.
pub struct FaultEvidence<'a> {
    /// What the meters show, each at most once.
    pub readings: &'a [(MeterKind, MeterReading)],
    /// What was noticed.
    pub observations: &'a [Observation],
    /// A substitution that is not void.
    pub substitution: Option<&'a Substitution>,
    /// Tests that were done and that no reading stands for.
    pub tests_done: &'a [(FaultTest, FaultTestOutcome)],
    /// What tests show.
    pub table: &'a OutcomeTable,
}

impl FaultEvidence<'_> {
    /// What was noticed, each once and in the order of the list: the order of the request must not change rounding.
    pub fn observed(&self) -> impl Iterator<Item = Observation> {
        Observation::ALL.iter().copied().filter(|observation| self.observations.contains(observation))
    }

    /// How likely the readings are with a hypothesis.
    fn readings_likelihood(&self, hypothesis: &FaultHypothesis) -> f64 {
        self.readings
            .iter()
            .map(|(meter, reading)| hypothesis.prediction(*meter).likelihood(*meter, *reading))
            .product()
    }

    /// How likely all of it is with a hypothesis, which stands so in the list.
    fn likelihood(&self, index: usize, hypothesis: &FaultHypothesis) -> f64 {
        let FaultForm { fault, manner, .. } = hypothesis.form;
        let noticed: f64 = self.observed().map(|observation| observation.weight_for(fault, manner)).product();
        let substituted = self.substitution.map_or(1.0, |done| substitution_likelihood(done, &hypothesis.form));
        let shown = |(test, outcome): &(FaultTest, FaultTestOutcome)| self.table.likelihood(*test, *outcome, index);
        let tested: f64 = self.tests_done.iter().map(shown).product();
        self.readings_likelihood(hypothesis) * noticed * substituted * tested
    }

    /// Whether no hypothesis explains every reading better than chance does.
    pub fn is_contradictory(&self, hypotheses: &[FaultHypothesis]) -> bool {
        let explains_all = |hypothesis: &FaultHypothesis| {
            self.readings.iter().all(|(meter, reading)| hypothesis.prediction(*meter).explains(*meter, *reading))
        };
        !hypotheses.iter().any(explains_all)
    }
}

/// How likely the outcome of a substitution is with a fault of this form.
pub fn substitution_likelihood(substitution: &Substitution, form: &FaultForm) -> f64 {
    let fails = fails_on_inductor(substitution.connected_at, form);
    let runs = if substitution.unit_runs { 1.0 - fails } else { fails };
    let is_of_unit = form.location == FaultLocation::Unit;
    match substitution.simulated_vehicle_switches {
        None => runs,
        Some(true) if form.fault == LoopFault::Settings => runs * 0.5,
        Some(true) => runs * if is_of_unit { 0.2 } else { 0.95 },
        // A unit that runs and does not switch is at fault itself, whatever it is connected to. Choices made here.
        Some(false) if is_of_unit => 0.4,
        Some(false) => runs * 0.01,
    }
}

/// The posterior probability of each hypothesis, in their order; they sum to 1.
pub fn posterior(hypotheses: &[FaultHypothesis], evidence: &FaultEvidence<'_>, prior: &PerFault<f64>) -> Vec<f64> {
    let weight = |(index, hypothesis): (usize, &FaultHypothesis)| {
        prior[hypothesis.form.fault] * hypothesis.form.share * evidence.likelihood(index, hypothesis)
    };
    normalise(hypotheses.iter().enumerate().map(weight).collect())
}

/// Scales weights to a sum of 1. Each is above 0, so the sum is, too.
fn normalise(weights: Vec<f64>) -> Vec<f64> {
    let sum: f64 = weights.iter().sum::<f64>().max(f64::MIN_POSITIVE);
    weights.into_iter().map(|weight| weight / sum).collect()
}

/// The probability of each fault: the sum over its variants.
pub fn sum_by_fault(hypotheses: &[FaultHypothesis], probabilities: &[f64]) -> PerFault<f64> {
    let mut sums = PerFault::new(|_| 0.0);
    for (hypothesis, probability) in hypotheses.iter().zip(probabilities) {
        sums[hypothesis.form.fault] += probability;
    }
    sums
}

/// How often each fault is the cause before anything is measured. Whether the loop suits the unit needs no measuring where
/// design or record tell it: then the probability is computed, not assumed.
pub fn prior(sound: &SoundLoopModel, limits: &Limits) -> PerFault<f64> {
    let mut prior = PerFault::new(LoopFault::prior_share);
    if let Some(probability) = outside_envelope_probability(sound, limits) {
        prior[LoopFault::OutsideEnvelope] = probability.max(0.001);
    }
    prior
}

/// How likely the sound loop lies outside what the unit tunes to; unknown without figures.
fn outside_envelope_probability(sound: &SoundLoopModel, limits: &Limits) -> Option<f64> {
    // Limits are crossed over some 3 % of their value, as installed loops stray.
    let below = |value: f64, limit: f64| 1.0 / (1.0 + ((value / limit).ln() / 0.015).exp());
    let inductance = sound
        .terminal_uh
        .map(|value| (below(value, limits.inductance_min_uh) + below(limits.inductance_max_uh, value)).min(1.0));
    let quality = sound.greatest_quality.map(|value| below(value, limits.quality_factor_min));
    if inductance.is_none() && quality.is_none() {
        return None;
    }
    Some(1.0 - (1.0 - inductance.unwrap_or(0.0)) * (1.0 - quality.unwrap_or(0.0)))
}
