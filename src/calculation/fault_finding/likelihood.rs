//! How likely each fault is, given all that is known: Bayes' rule over the faults in their forms.

use super::hypotheses::Form;
use super::reading::{Meter, Shown};
use super::request::Substitution;
use super::sound::Sound;
use super::substitution;
use crate::practice::detectors::Limits;
use crate::practice::faults::{LoopFault, Observation};
use crate::vocabulary::Vocabulary;

/// All that speaks for or against a fault.
pub struct Evidence<'a> {
    /// What the meters show, each at most once.
    pub readings: Vec<(Meter, Shown)>,
    /// What was noticed.
    pub observations: &'a [Observation],
    /// A substitution that is not void.
    pub substitution: Option<&'a Substitution>,
}

impl Evidence<'_> {
    /// What was noticed, each once and in one order, so that no order of the request shows in the last digit.
    pub fn observed(&self) -> impl Iterator<Item = Observation> {
        Observation::ALL.iter().copied().filter(|observation| self.observations.contains(observation))
    }

    /// How likely the readings are with a form.
    fn of_readings(&self, form: &Form) -> f64 {
        self.readings.iter().map(|(meter, shown)| form.forecast(*meter).likelihood(*meter, *shown)).product()
    }

    /// How likely all of it is with a form.
    fn of(&self, form: &Form) -> f64 {
        let noticed: f64 = self.observed().map(|observation| observation.weight_for(form.fault)).product();
        let substituted = self.substitution.map_or(1.0, |done| substitution::likelihood(done, form.place));
        self.of_readings(form) * noticed * substituted
    }

    /// Whether no form of any fault explains every reading better than chance does.
    pub fn contradicts_itself(&self, forms: &[Form]) -> bool {
        let explains_all =
            |form: &Form| self.readings.iter().all(|(meter, shown)| form.forecast(*meter).explains(*meter, *shown));
        !forms.iter().any(explains_all)
    }
}

/// How likely each form is, in the order of the forms; they sum to 1.
pub fn posterior(forms: &[Form], evidence: &Evidence<'_>, before: impl Fn(LoopFault) -> f64) -> Vec<f64> {
    let weights: Vec<f64> = forms.iter().map(|form| before(form.fault) * form.share * evidence.of(form)).collect();
    normalised(weights)
}

/// Scales weights to a sum of 1. Each is above 0, so the sum is, too.
fn normalised(weights: Vec<f64>) -> Vec<f64> {
    let sum: f64 = weights.iter().sum::<f64>().max(f64::MIN_POSITIVE);
    weights.into_iter().map(|weight| weight / sum).collect()
}

/// How likely each fault is, in the order of [`LoopFault::ALL`].
pub fn by_fault(forms: &[Form], chances: &[f64]) -> [f64; 13] {
    let mut sums = [0.0; 13];
    for (form, chance) in forms.iter().zip(chances) {
        sums[form.fault as usize] += chance;
    }
    sums
}

/// How often each fault is the cause before anything is measured. Whether the loop suits the unit needs no measuring where
/// design or record tell it: then it is known rather than guessed.
pub fn before(sound: &Sound, limits: &Limits) -> impl Fn(LoopFault) -> f64 {
    let misfit = misfit(sound, limits);
    move |fault| match (fault, misfit) {
        (LoopFault::OutsideEnvelope, Some(misfit)) => misfit.max(0.001),
        _ => fault.share_before(),
    }
}

/// How likely the sound loop lies outside what the unit tunes to; unknown without figures.
fn misfit(sound: &Sound, limits: &Limits) -> Option<f64> {
    // Limits are crossed over some 3 % of their value, as installed loops stray.
    let below = |value: f64, limit: f64| 1.0 / (1.0 + ((value / limit).ln() / 0.015).exp());
    let inductance = sound
        .terminal_uh
        .map(|value| (below(value, limits.inductance_min_uh) + below(limits.inductance_max_uh, value)).min(1.0));
    let quality = sound.greatest_quality.map(|value| below(value, limits.quality_factor_min));
    match (inductance, quality) {
        (None, None) => None,
        (inductance, quality) => Some(1.0 - (1.0 - inductance.unwrap_or(0.0)) * (1.0 - quality.unwrap_or(0.0))),
    }
}
