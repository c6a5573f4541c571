//! The suspects of a report: what speaks for and against each fault, in sentences, and its predictions beside the measurements.

use super::likelihood::{FaultEvidence, substitution_likelihood, sum_by_fault};
use super::meters::{MeterKind, MeterReading, plain_decimals};
use super::predicted_readings::{FaultForm, FaultHypothesis};
use super::report::{FaultSuspect, ReadingCompared};
use crate::calculation::report::{Message, Statement};
use crate::practice::faults::LoopFault;
use crate::quantity::output::round;

/// Evidence is mentioned when it shifts the odds of a fault by this factor at the least. A choice made here.
const MIN_ODDS_FACTOR: f64 = 1.5;

/// Sentences for and against.
#[derive(Default)]
struct EvidenceSentences {
    in_favour: Vec<Message>,
    against: Vec<Message>,
}

impl EvidenceSentences {
    /// Adds a sentence with its verdict, `for` or `against`, if its weight is large enough.
    fn add(&mut self, weight: f64, sentence: impl FnOnce() -> Statement) {
        if weight >= MIN_ODDS_FACTOR {
            self.in_favour.push(sentence().code("verdict", "for").into());
        } else if weight * MIN_ODDS_FACTOR <= 1.0 {
            self.against.push(sentence().code("verdict", "against").into());
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
    let all = hypotheses.iter().zip(probabilities).enumerate();
    let own = all.filter(|(_, (hypothesis, _))| hypothesis.form.fault == fault);
    let best =
        own.max_by(|(_, (_, a)), (_, (_, b))| a.total_cmp(b)).map(|(index, (hypothesis, _))| (index, hypothesis));
    let comparison: Vec<_> = best.map_or_else(Vec::new, |(_, hypothesis)| {
        evidence.readings.iter().map(|(meter, reading)| compare(hypothesis, *meter, *reading)).collect()
    });
    let mut sentences = EvidenceSentences::default();
    for ((meter, reading), compared) in evidence.readings.iter().zip(&comparison) {
        let weight = reading_weight(fault, hypotheses, *meter, *reading);
        // What is said agrees with the figures beside it: inside the expected range nothing speaks against, outside nothing for.
        if compared.is_expected() != (weight >= 1.0) {
            continue;
        }
        sentences.add(weight, || {
            let evidence = Statement::new("faults-reading-evidence").phrase("reading", meter.state_reading(*reading));
            match best {
                Some((_, hypothesis)) => with_expected(evidence, hypothesis, *meter),
                None => evidence.code("expected", "unknown"),
            }
        });
    }
    if let Some((index, hypothesis)) = best {
        add_signs(fault, index, &hypothesis.form, evidence, &mut sentences);
    }
    FaultSuspect {
        fault,
        label: Message::label_of(fault),
        likelihood: round(likelihood, 3),
        variant: best.and_then(|(_, hypothesis)| hypothesis.form.variant.clone()).map(Into::into),
        evidence_for: sentences.in_favour,
        evidence_against: sentences.against,
        comparison,
    }
}

/// Adds what observations, a substitution and tests say of a fault in its best form.
fn add_signs(
    fault: LoopFault,
    index: usize,
    form: &FaultForm,
    evidence: &FaultEvidence<'_>,
    sentences: &mut EvidenceSentences,
) {
    for observation in evidence.observed() {
        sentences.add(observation.weight_for(fault, form.manner), || {
            Statement::new("faults-observation-evidence").member("observation", observation)
        });
    }
    if let Some(done) = evidence.substitution {
        // Against an even chance: the outcome either needs the fault where the inductor was, or rules it out there.
        sentences.add(2.0 * substitution_likelihood(done, form), || {
            Statement::new("faults-substitution-evidence")
                .code("outcome", if done.unit_runs { "runs" } else { "does_not_run" })
                .member("connected_at", done.connected_at)
        });
    }
    for (test, outcome) in evidence.tests_done {
        let even = 1.0 / test.outcomes().len() as f64;
        sentences.add(evidence.table.likelihood(*test, *outcome, index) / even, || {
            Statement::new("faults-test-evidence").member("test", *test).member("outcome", *outcome)
        });
    }
}

/// How much better a fault explains a reading than the others do, all of them as frequent as before any measurement.
fn reading_weight(fault: LoopFault, hypotheses: &[FaultHypothesis], meter: MeterKind, reading: MeterReading) -> f64 {
    let explained = |is_own: bool| {
        let chosen = || hypotheses.iter().filter(|hypothesis| (hypothesis.form.fault == fault) == is_own);
        let share = |hypothesis: &FaultHypothesis| hypothesis.form.fault.prior_share() * hypothesis.form.share;
        let sum: f64 = chosen()
            .map(|hypothesis| share(hypothesis) * hypothesis.prediction(meter).likelihood(meter, reading))
            .sum();
        sum / chosen().map(share).sum::<f64>().max(f64::MIN_POSITIVE)
    };
    explained(true) / explained(false).max(f64::MIN_POSITIVE)
}

/// Adds what a hypothesis predicts.
fn with_expected(evidence: Statement, hypothesis: &FaultHypothesis, meter: MeterKind) -> Statement {
    let prediction = hypothesis.prediction(meter);
    if prediction.is_over_range() {
        return evidence.code("expected", "over_range");
    }
    let (low, high) = prediction.band.expected_range(meter);
    evidence.code("expected", "range").number("expected_low", low, plain_decimals(low)).number(
        "expected_high",
        high,
        plain_decimals(high),
    )
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
