//! How likely each outcome of each test is with each hypothesis: what a test is expected to tell, and what one that was done does tell.

use super::meters::{MeterKind, Prediction};
use super::predicted_readings::{FaultForm, FaultHypothesis, HypothesisSet};
use crate::practice::fault_tests::{FaultTest, FaultTestOutcome};
use crate::practice::faults::{FaultLocation, FaultManner, LoopFault};
use crate::practice::meter_readings::{InsulationState, SubstitutionPoint};
use crate::vocabulary::Vocabulary;

/// How often a meter shows what is there: clips slip, numbers are misheard. A choice made here.
const METER_SHOWS: f64 = 0.95;
/// How often a fault that is in the circuit shows on a known inductor. A choice made here.
const FAULT_SHOWS: f64 = 0.95;
/// The same of one that shows only at times.
const FAULT_SHOWS_AT_TIMES: f64 = 0.3;
/// The same of a unit that is only set wrong: it tunes all the same.
const SETTINGS_SHOW: f64 = 0.05;
/// How often a fault that is not in the circuit seems to show, by an error of the test. A choice made here.
const FAULT_SEEMS_TO_SHOW: f64 = 0.002;
/// The most outcomes that a test has.
const MAX_OUTCOMES: usize = 5;

/// Probabilities of the outcomes of a test, in the order of [`FaultTest::outcomes`]; 0 beyond.
pub type OutcomeOdds = [f64; MAX_OUTCOMES];

/// The hypotheses at both places of measurement, in the same order.
pub struct HypothesesByPlace<'a> {
    /// With the predictions at the detector end.
    pub at_detector: &'a HypothesisSet,
    /// With the predictions at the loop's tails.
    pub at_loop: &'a HypothesisSet,
    /// How wet the ground is, as far as it was said.
    pub ground: InsulationState,
}

/// The outcomes of all tests with all hypotheses.
pub struct OutcomeTable {
    /// By test, then by hypothesis.
    odds: Vec<Vec<OutcomeOdds>>,
}

impl OutcomeTable {
    /// Computes it: from what the physics predicts for meters, else from choices made here.
    pub fn new(sets: &HypothesesByPlace<'_>) -> Self {
        let of_test = |test: &FaultTest| {
            (0..sets.at_detector.hypotheses.len()).map(|index| outcome_odds(*test, index, sets)).collect()
        };
        Self { odds: FaultTest::ALL.iter().map(of_test).collect() }
    }

    /// The odds of a test, by hypothesis.
    pub fn of(&self, test: FaultTest) -> &[OutcomeOdds] {
        &self.odds[test as usize]
    }

    /// How likely an outcome is with a hypothesis.
    pub fn likelihood(&self, test: FaultTest, outcome: FaultTestOutcome, hypothesis: usize) -> f64 {
        let place = test.outcomes().iter().position(|other| *other == outcome);
        place.map_or(1.0, |place| self.of(test)[hypothesis][place].max(1e-3))
    }
}

/// How often the unit does not run on a known inductor, with a fault of this form.
pub fn fails_on_inductor(point: SubstitutionPoint, form: &FaultForm) -> f64 {
    if !point.reaches(form.location) {
        FAULT_SEEMS_TO_SHOW
    } else if form.fault == LoopFault::Settings {
        SETTINGS_SHOW
    } else if form.manner == FaultManner::Always {
        FAULT_SHOWS
    } else {
        FAULT_SHOWS_AT_TIMES
    }
}

/// Two outcomes, or the first of more.
fn odds(first: f64) -> OutcomeOdds {
    [first, 1.0 - first, 0.0, 0.0, 0.0]
}

/// Of what is there, what a meter shows: the rest is shared by all outcomes alike.
fn shown(shares: OutcomeOdds, count: usize) -> OutcomeOdds {
    let err = (1.0 - METER_SHOWS) / count as f64;
    let mut shown = shares.map(|share| METER_SHOWS * share);
    shown.iter_mut().take(count).for_each(|share| *share += err);
    shown
}

/// The shares of a predicted range that lie between limits, on a logarithmic scale, as multiples of a sound loop's reading. `allowance`, in
/// the unit of the meter, keeps small numbers comparable. The last but one of `limits` begins where the one before ends.
fn shares_between<const N: usize>(
    prediction: &Prediction,
    sound: &Prediction,
    allowance: f64,
    limits: [f64; N],
) -> ([f64; N], f64) {
    let ratio = |bound: f64| ((bound + allowance) / (sound.band.middle() + allowance)).max(1e-6).ln();
    let (low, high) = (ratio(prediction.band.low), ratio(prediction.band.high));
    let below = |limit: f64| {
        let limit = limit.ln();
        if high - low < 1e-9 {
            f64::from(u8::from(low < limit))
        } else {
            ((limit - low) / (high - low)).clamp(0.0, 1.0)
        }
    };
    let mut before = 0.0;
    let shares = limits.map(|limit| {
        let share = below(limit) - before;
        before += share;
        share
    });
    (shares, 1.0 - before)
}

fn resistance(hypothesis: &FaultHypothesis, set: &HypothesisSet) -> OutcomeOdds {
    let prediction = hypothesis.prediction(MeterKind::Resistance);
    if prediction.is_over_range() {
        return shown([1.0, 0.0, 0.0, 0.0, 0.0], 4);
    }
    let ([low, right], high) = shares_between(prediction, &set.sound.resistance, 0.2, [0.85, 1.2]);
    shown([0.0, high, right, low, 0.0], 4)
}

fn inductance(hypothesis: &FaultHypothesis, set: &HypothesisSet) -> OutcomeOdds {
    let prediction = hypothesis.prediction(MeterKind::Inductance);
    if prediction.is_over_range() {
        return shown([1.0, 0.0, 0.0, 0.0, 0.0], 5);
    }
    let ([nothing, low, right], high) = shares_between(prediction, &set.sound.inductance, 0.5, [0.1, 0.9, 1.1]);
    shown([0.0, nothing, low, right, high], 5)
}

fn insulation(form: &FaultForm, ground: InsulationState) -> OutcomeOdds {
    shown(odds(f64::from(u8::from(form.leaks_in(ground)))), 2)
}

/// With the splice open, and wetted where the fault comes with rain: the loop leaks, the lead-in leaks, neither does.
fn split(form: &FaultForm) -> OutcomeOdds {
    let place = match form.location {
        FaultLocation::Loop if form.leaks => 0,
        FaultLocation::LeadIn if form.leaks => 1,
        FaultLocation::Unit
        | FaultLocation::Harness
        | FaultLocation::LeadIn
        | FaultLocation::Splice
        | FaultLocation::Loop
        | FaultLocation::Beyond => 2,
    };
    let mut shares = OutcomeOdds::default();
    shares[place] = 1.0;
    shown(shares, 3)
}

/// Of a wire that is open always: how far it reaches. Of a closed circuit the test tells nothing.
fn capacitance(form: &FaultForm) -> OutcomeOdds {
    if !form.parts || form.manner != FaultManner::Always {
        return odds(0.5);
    }
    shown(odds(f64::from(u8::from(form.location >= FaultLocation::Splice))), 2)
}

fn outcome_odds(test: FaultTest, index: usize, sets: &HypothesesByPlace<'_>) -> OutcomeOdds {
    let HypothesesByPlace { at_detector, at_loop, ground } = *sets;
    let hypothesis = &at_detector.hypotheses[index];
    let form = &hypothesis.form;
    let signs = form.fault.signs(form.manner);
    match test {
        FaultTest::CheckSettings => odds(signs.settings),
        FaultTest::WatchReadingWithGate => odds(signs.gate),
        FaultTest::DriveOver => {
            let [seen, other, missed] = signs.driven_over;
            [seen, other, missed, 0.0, 0.0]
        }
        FaultTest::RestartEmpty => odds(signs.restart),
        FaultTest::Insulation => insulation(form, ground),
        FaultTest::InsulationWet => insulation(form, InsulationState::Wet),
        FaultTest::Resistance => resistance(hypothesis, at_detector),
        FaultTest::Inductance => inductance(hypothesis, at_detector),
        FaultTest::Capacitance => capacitance(form),
        FaultTest::SubstituteAtUnit => odds(fails_on_inductor(SubstitutionPoint::UnitTerminals, form)),
        FaultTest::SubstituteAtHarness => odds(fails_on_inductor(SubstitutionPoint::HarnessEnd, form)),
        FaultTest::SubstituteAtLeadIn => odds(fails_on_inductor(SubstitutionPoint::LeadInEnd, form)),
        FaultTest::ExchangeUnit => odds(signs.another_unit),
        FaultTest::LookForSurge => odds(signs.surge),
        FaultTest::NeighboursOff => odds(signs.neighbours_off),
        FaultTest::LookForSteel => odds(signs.metal),
        FaultTest::LoadAndWiggle => odds(signs.load),
        FaultTest::SplitAtSplice => split(form),
        FaultTest::ResistanceAtLoop => resistance(&at_loop.hypotheses[index], at_loop),
        FaultTest::InductanceAtLoop => inductance(&at_loop.hypotheses[index], at_loop),
        FaultTest::CountTurns => odds(signs.count),
    }
}
