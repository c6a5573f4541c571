//! The suspects of a report: what speaks for and against each fault, in sentences, and its predictions beside the measurements.

use super::likelihood::{FaultEvidence, substitution_likelihood, sum_by_fault};
use super::meters::{MeterKind, MeterReading, format_plain};
use super::predicted_readings::FaultHypothesis;
use super::report::{FaultSuspect, ReadingCompared};
use crate::practice::faults::LoopFault;
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// Evidence is mentioned when it shifts the odds of a fault by this factor at the least. A choice made here.
const MIN_ODDS_FACTOR: f64 = 1.5;

/// Sentences for and against.
#[derive(Default)]
struct EvidenceSentences {
    in_favour: Vec<String>,
    against: Vec<String>,
}

impl EvidenceSentences {
    /// Adds a sentence for or against, if its weight is large enough; `sentence` takes whether it is in favour.
    fn add(&mut self, weight: f64, sentence: impl FnOnce(bool) -> String) {
        if weight >= MIN_ODDS_FACTOR {
            self.in_favour.push(sentence(true));
        } else if weight * MIN_ODDS_FACTOR <= 1.0 {
            self.against.push(sentence(false));
        }
    }
}

/// Every fault with its evidence, the most likely first.
pub fn rank(hypotheses: &[FaultHypothesis], probabilities: &[f64], evidence: &FaultEvidence<'_>) -> Vec<FaultSuspect> {
    let by_fault = sum_by_fault(hypotheses, probabilities);
    let suspect = |(fault, likelihood)| suspect(fault, likelihood, hypotheses, probabilities, evidence);
    by_fault.ranked().into_iter().map(suspect).collect()
}

fn suspect(
    fault: LoopFault,
    likelihood: f64,
    hypotheses: &[FaultHypothesis],
    probabilities: &[f64],
    evidence: &FaultEvidence<'_>,
) -> FaultSuspect {
    let own = hypotheses.iter().zip(probabilities).filter(|(hypothesis, _)| hypothesis.fault == fault);
    let best = own.max_by(|(_, a), (_, b)| a.total_cmp(b)).map(|(hypothesis, _)| hypothesis);
    let mut sentences = EvidenceSentences::default();
    for (meter, reading) in evidence.readings {
        sentences.add(reading_weight(fault, hypotheses, *meter, *reading), |fits| {
            let verdict = if fits { "fits this fault" } else { "does not fit this fault" };
            let expected = best.map_or(String::new(), |hypothesis| format_expected(hypothesis, *meter));
            format!("{} {verdict}{expected}.", meter.format_reading(*reading))
        });
    }
    for observation in evidence.observed() {
        sentences.add(observation.weight_for(fault), |fits| {
            let verdict = if fits { "is usual with this fault" } else { "is unusual with this fault" };
            format!("\"{}\" {verdict}.", observation.label())
        });
    }
    if let (Some(done), Some(best)) = (evidence.substitution, best) {
        // Against an even chance: the outcome either needs the fault where the inductor was, or rules it out there.
        sentences.add(2.0 * substitution_likelihood(done, best.location), |fits| {
            let verdict = if fits { "agrees with this fault" } else { "speaks against a fault at that place" };
            let runs = if done.unit_runs { "runs" } else { "does not run" };
            format!("The unit {runs} on a known inductor ({}), which {verdict}.", done.connected_at.label())
        });
    }
    FaultSuspect {
        fault,
        label: fault.label(),
        likelihood: round(likelihood, 3),
        variant: best.and_then(|hypothesis| hypothesis.variant.clone()),
        evidence_for: sentences.in_favour,
        evidence_against: sentences.against,
        comparison: best.map_or_else(Vec::new, |hypothesis| {
            evidence.readings.iter().map(|(meter, reading)| compare(hypothesis, *meter, *reading)).collect()
        }),
    }
}

/// How much better a fault explains a reading than the others do, all of them as frequent as before any measurement.
fn reading_weight(fault: LoopFault, hypotheses: &[FaultHypothesis], meter: MeterKind, reading: MeterReading) -> f64 {
    let explained = |is_own: bool| {
        let chosen = || hypotheses.iter().filter(|hypothesis| (hypothesis.fault == fault) == is_own);
        let share = |hypothesis: &FaultHypothesis| hypothesis.fault.prior_share() * hypothesis.share;
        let sum: f64 = chosen()
            .map(|hypothesis| share(hypothesis) * hypothesis.prediction(meter).likelihood(meter, reading))
            .sum();
        sum / chosen().map(share).sum::<f64>().max(f64::MIN_POSITIVE)
    };
    explained(true) / explained(false).max(f64::MIN_POSITIVE)
}

/// What a hypothesis predicts, as a clause: ` (0.001 to 10 expected)`.
fn format_expected(hypothesis: &FaultHypothesis, meter: MeterKind) -> String {
    let prediction = hypothesis.prediction(meter);
    if prediction.is_over_range() {
        return " (over range expected)".to_owned();
    }
    let (low, high) = prediction.band.expected_range(meter);
    format!(" ({} to {} expected)", format_plain(low), format_plain(high))
}

fn compare(hypothesis: &FaultHypothesis, meter: MeterKind, reading: MeterReading) -> ReadingCompared {
    let prediction = hypothesis.prediction(meter);
    let (low, high) = prediction.band.expected_range(meter);
    ReadingCompared {
        reading: meter.field(),
        predicted_low: round(low, 3),
        predicted_high: round(high, 3),
        predicted_over_range: prediction.is_over_range(),
        measured: match reading {
            MeterReading::Number(number) => Some(round(number, 3)),
            MeterReading::OverRange => None,
        },
        measured_over_range: reading == MeterReading::OverRange,
        unit: meter.unit(),
    }
}
