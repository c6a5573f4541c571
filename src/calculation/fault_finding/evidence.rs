//! What speaks for and against a fault, in sentences, and its predictions beside the measurements.

use super::hypotheses::Form;
use super::likelihood::{Evidence, by_fault};
use super::reading::{Meter, Shown, plain};
use super::report::{FaultSuspect, ReadingCompared};
use super::substitution;
use crate::practice::faults::LoopFault;
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// Evidence is told when it shifts the odds of a fault by this factor at the least. A choice made here.
const TOLD_FROM: f64 = 1.5;

/// Sentences for and against.
#[derive(Default)]
struct Sides {
    in_favour: Vec<String>,
    against: Vec<String>,
}

impl Sides {
    /// Tells a piece of evidence on the side where its weight puts it.
    fn tell(&mut self, weight: f64, words: impl FnOnce(bool) -> String) {
        if weight >= TOLD_FROM {
            self.in_favour.push(words(true));
        } else if weight * TOLD_FROM <= 1.0 {
            self.against.push(words(false));
        }
    }
}

/// Every fault with its evidence, the most likely first.
pub fn suspects(forms: &[Form], chances: &[f64], evidence: &Evidence<'_>) -> Vec<FaultSuspect> {
    let likelihoods = by_fault(forms, chances);
    let mut ranked = LoopFault::ALL.to_vec();
    ranked.sort_by(|a, b| likelihoods[*b as usize].total_cmp(&likelihoods[*a as usize]));
    ranked.into_iter().map(|fault| suspect(fault, likelihoods[fault as usize], forms, chances, evidence)).collect()
}

fn suspect(
    fault: LoopFault,
    likelihood: f64,
    forms: &[Form],
    chances: &[f64],
    evidence: &Evidence<'_>,
) -> FaultSuspect {
    let own = || forms.iter().zip(chances).filter(|(form, _)| form.fault == fault);
    let best = own().max_by(|(_, a), (_, b)| a.total_cmp(b)).map(|(form, _)| form);
    let mut sides = Sides::default();
    for (meter, shown) in &evidence.readings {
        sides.tell(weight(fault, forms, *meter, *shown), |fits| {
            let verdict = if fits { "fits this fault" } else { "does not fit this fault" };
            format!("{} {verdict}{}.", meter.say(*shown), best.map_or(String::new(), |form| expects(form, *meter)))
        });
    }
    for observation in evidence.observed() {
        sides.tell(observation.weight_for(fault), |fits| {
            let verdict = if fits { "is usual with this fault" } else { "is unusual with this fault" };
            format!("\"{}\" {verdict}.", observation.label())
        });
    }
    if let (Some(done), Some(best)) = (evidence.substitution, best) {
        // Against an even chance: the outcome either needs the fault where the inductor was, or rules it out there.
        sides.tell(2.0 * substitution::likelihood(done, best.place), |fits| {
            let verdict = if fits { "agrees with this fault" } else { "speaks against a fault at that place" };
            let runs = if done.unit_runs { "runs" } else { "does not run" };
            format!("The unit {runs} on a known inductor ({}), which {verdict}.", done.connected_at.label())
        });
    }
    FaultSuspect {
        fault: fault.code(),
        label: fault.label(),
        likelihood: round(likelihood, 3),
        variant: best.and_then(|form| form.variant.clone()),
        evidence_for: sides.in_favour,
        evidence_against: sides.against,
        comparison: best.map_or_else(Vec::new, |form| {
            evidence.readings.iter().map(|(meter, shown)| compare(form, *meter, *shown)).collect()
        }),
    }
}

/// How much better a fault explains a reading than the others do, all of them as frequent as before any measurement.
fn weight(fault: LoopFault, forms: &[Form], meter: Meter, shown: Shown) -> f64 {
    let explained = |is_own: bool| {
        let chosen = || forms.iter().filter(|form| (form.fault == fault) == is_own);
        let share = |form: &Form| form.fault.share_before() * form.share;
        let sum: f64 = chosen().map(|form| share(form) * form.forecast(meter).likelihood(meter, shown)).sum();
        sum / chosen().map(share).sum::<f64>().max(f64::MIN_POSITIVE)
    };
    explained(true) / explained(false).max(f64::MIN_POSITIVE)
}

/// What a form expects, as a clause: ` (0.001 to 10 expected)`.
fn expects(form: &Form, meter: Meter) -> String {
    let forecast = form.forecast(meter);
    if forecast.over_range > 0.5 {
        return " (over range expected)".to_owned();
    }
    let (low, high) = forecast.band.shown(meter);
    format!(" ({} to {} expected)", plain(low), plain(high))
}

fn compare(form: &Form, meter: Meter, shown: Shown) -> ReadingCompared {
    let forecast = form.forecast(meter);
    let (low, high) = forecast.band.shown(meter);
    ReadingCompared {
        reading: meter.field(),
        predicted_low: round(low, 3),
        predicted_high: round(high, 3),
        predicted_over_range: forecast.over_range > 0.5,
        measured: match shown {
            Shown::Number(number) => Some(round(number, 3)),
            Shown::OverRange => None,
        },
        measured_over_range: shown == Shown::OverRange,
        unit: meter.unit(),
    }
}
