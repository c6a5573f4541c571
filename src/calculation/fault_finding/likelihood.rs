//! How likely each fault is, given all that is known: Bayes' rule over the hypotheses.

use super::meters::{MeterKind, MeterReading};
use super::predicted_readings::FaultHypothesis;
use super::request::Substitution;
use super::sound_loop::SoundLoopModel;
use crate::practice::detectors::Limits;
use crate::practice::faults::{FaultLocation, LoopFault, Observation, PerFault};
use crate::vocabulary::Vocabulary;

/// How often a fault that is in the circuit shows: others come and go. A choice made here.
const FAULT_SHOWS: f64 = 0.9;
/// How often a fault that is not in the circuit seems to show, by an error of the test. A choice made here.
const FAULT_SEEMS_TO_SHOW: f64 = 0.002;

/// All that speaks for or against a fault.
pub struct FaultEvidence<'a> {
    /// What the meters show, each at most once.
    pub readings: &'a [(MeterKind, MeterReading)],
    /// What was noticed.
    pub observations: &'a [Observation],
    /// A substitution that is not void.
    pub substitution: Option<&'a Substitution>,
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

    /// How likely all of it is with a hypothesis.
    fn likelihood(&self, hypothesis: &FaultHypothesis) -> f64 {
        let noticed: f64 = self.observed().map(|observation| observation.weight_for(hypothesis.fault)).product();
        let substituted = self.substitution.map_or(1.0, |done| substitution_likelihood(done, hypothesis.location));
        self.readings_likelihood(hypothesis) * noticed * substituted
    }

    /// Whether no hypothesis explains every reading better than chance does.
    pub fn is_contradictory(&self, hypotheses: &[FaultHypothesis]) -> bool {
        let explains_all = |hypothesis: &FaultHypothesis| {
            self.readings.iter().all(|(meter, reading)| hypothesis.prediction(*meter).explains(*meter, *reading))
        };
        !hypotheses.iter().any(explains_all)
    }
}

/// How likely the outcome of a substitution is with a fault at a location.
pub fn substitution_likelihood(substitution: &Substitution, location: FaultLocation) -> f64 {
    let is_in_circuit = substitution.connected_at.reaches(location);
    let fails = if is_in_circuit { FAULT_SHOWS } else { FAULT_SEEMS_TO_SHOW };
    let runs = if substitution.unit_runs { 1.0 - fails } else { fails };
    match substitution.simulated_vehicle_switches {
        None => runs,
        Some(true) => runs * if location == FaultLocation::Unit { 0.2 } else { 0.95 },
        // A unit that runs and does not switch is at fault itself, whatever it is connected to. Choices made here.
        Some(false) if location == FaultLocation::Unit => 0.4,
        Some(false) => runs * 0.01,
    }
}

/// The posterior probability of each hypothesis, in their order; they sum to 1.
pub fn posterior(hypotheses: &[FaultHypothesis], evidence: &FaultEvidence<'_>, prior: &PerFault<f64>) -> Vec<f64> {
    let weight =
        |hypothesis: &FaultHypothesis| prior[hypothesis.fault] * hypothesis.share * evidence.likelihood(hypothesis);
    normalise(hypotheses.iter().map(weight).collect())
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
        sums[hypothesis.fault] += probability;
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
