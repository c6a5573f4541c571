//! The test to do next: the one whose outcome is expected to tell most about the suspects.

use super::hypotheses::{Form, Place};
use super::likelihood::by_fault;
use super::reading::Meter;
use super::report::{NextTest, TestOutcome};
use super::substitution;
use crate::practice::fault_tests::FaultTest;
use crate::practice::faults::{LoopFault, SubstitutionPoint};
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// How often a test shows what is there: meters err, faults hide. A choice made here.
const SHOWS: f64 = 0.9;
/// A fault is pointed to from this likelihood on. A choice made here.
const POINTS_FROM: f64 = 0.15;

/// What is known of the forms at both places of measurement; all lists in the same order.
pub struct Outlook<'a> {
    /// The forms with their forecasts at the detector end.
    pub at_detector: &'a [Form],
    /// The forms with their forecasts at the loop's tails.
    pub at_loop: &'a [Form],
    /// How likely each form is.
    pub chances: &'a [f64],
}

/// The outcomes that a test can have, in words.
fn outcomes(test: FaultTest) -> &'static [&'static str] {
    match test {
        FaultTest::Insulation => &["below 10 megohm", "sound"],
        FaultTest::SplitAtSplice => &["the loop leaks", "the lead-in leaks", "both are sound once apart"],
        FaultTest::Resistance | FaultTest::ResistanceAtLoop => &["open circuit", "too high", "as expected", "too low"],
        FaultTest::Inductance | FaultTest::InductanceAtLoop => {
            &["no sensible reading", "next to nothing", "too low", "as expected", "too high"]
        }
        FaultTest::SubstituteAtUnit | FaultTest::SubstituteAtHarness | FaultTest::SubstituteAtLeadIn => {
            &["the unit does not run", "the unit runs"]
        }
        FaultTest::NeighboursOff => &["the fault goes", "the fault stays"],
        FaultTest::LoadAndWiggle => &["the reading jumps", "the reading is steady"],
        FaultTest::LookForSteel => &["metal is found", "no metal is found"],
    }
}

/// One outcome as the test mostly shows it; the others share the rest.
fn mostly(outcome: usize, of: usize) -> Vec<f64> {
    let other = (1.0 - SHOWS) / (of - 1) as f64;
    (0..of).map(|place| if place == outcome { SHOWS } else { other }).collect()
}

/// A first outcome of a likelihood, and its opposite.
fn odds(first: f64) -> Vec<f64> {
    vec![first, 1.0 - first]
}

/// Where the forecast of a meter lies against a sound loop's: open, then bounds of the ratio from below.
fn compared(form: &Form, sound: &Form, meter: Meter, allowance: f64) -> (bool, f64, f64) {
    let (forecast, sound) = (form.forecast(meter), sound.forecast(meter).band);
    let ratio = |bound: f64| (bound + allowance) / (sound.middle() + allowance);
    (forecast.over_range > 0.5, ratio(forecast.band.low), ratio(forecast.band.high))
}

/// How likely each outcome of a test is with a form: from what the physics predicts for meters, else a choice made here.
fn chances(test: FaultTest, form: usize, outlook: &Outlook<'_>) -> Vec<f64> {
    let (here, apart) = (&outlook.at_detector[form], &outlook.at_loop[form]);
    // The last form is that of nothing wrong.
    let sound = |forms: &'_ [Form]| forms.len() - 1;
    let leaks = |form: &Form| form.forecast(Meter::Insulation).band.high < 50.0;
    let resistance = |forms: &[Form]| {
        let (open, low, high) = compared(&forms[form], &forms[sound(forms)], Meter::Resistance, 0.2);
        let outcome = match (0.5 * (low + high), open) {
            (_, true) => 0,
            (ratio, _) if ratio > 1.2 => 1,
            (ratio, _) if ratio < 0.85 => 3,
            _ => 2,
        };
        mostly(outcome, 4)
    };
    let inductance = |forms: &[Form]| {
        let (open, low, high) = compared(&forms[form], &forms[sound(forms)], Meter::Inductance, 0.5);
        let outcome = match (0.5 * (low + high), open) {
            (_, true) => 0,
            (ratio, _) if ratio < 0.1 => 1,
            (ratio, _) if ratio < 0.9 => 2,
            (ratio, _) if ratio > 1.1 => 4,
            _ => 3,
        };
        mostly(outcome, 5)
    };
    let substituted = |point| odds(if substitution::reaches(point, here.place) { SHOWS } else { 0.02 });
    match test {
        FaultTest::Insulation => mostly(usize::from(!leaks(here)), 2),
        FaultTest::SplitAtSplice => mostly(
            match (leaks(here), here.place) {
                (true, Place::Loop) => 0,
                (true, Place::LeadIn) => 1,
                _ => 2,
            },
            3,
        ),
        FaultTest::Resistance => resistance(outlook.at_detector),
        FaultTest::ResistanceAtLoop => resistance(outlook.at_loop),
        FaultTest::Inductance => inductance(outlook.at_detector),
        FaultTest::InductanceAtLoop => inductance(outlook.at_loop),
        FaultTest::SubstituteAtUnit => substituted(SubstitutionPoint::UnitTerminals),
        FaultTest::SubstituteAtHarness => substituted(SubstitutionPoint::HarnessEnd),
        FaultTest::SubstituteAtLeadIn => substituted(SubstitutionPoint::LeadInEnd),
        FaultTest::NeighboursOff => odds(match apart.fault {
            LoopFault::Crosstalk => 0.9,
            LoopFault::SwappedPair => 0.4,
            _ => 0.05,
        }),
        FaultTest::LoadAndWiggle => odds(match apart.fault {
            LoopFault::HighResistanceJoint => 0.6,
            LoopFault::BrokenConductor | LoopFault::ShortedTurn => 0.3,
            LoopFault::InsulationBreach | LoopFault::WetSplice => 0.1,
            _ => 0.03,
        }),
        FaultTest::LookForSteel => odds(if apart.fault == LoopFault::SteelNearby { 0.8 } else { 0.1 }),
    }
}

/// Uncertainty in bits.
fn entropy(chances: &[f64]) -> f64 {
    chances.iter().filter(|chance| **chance > 0.0).map(|chance| -chance * chance.log2()).sum()
}

/// Each outcome of a test: how likely it is, and the faults after it.
fn after(test: FaultTest, outlook: &Outlook<'_>) -> Vec<(f64, [f64; 13])> {
    let forms = outlook.at_detector;
    let table: Vec<_> = (0..forms.len()).map(|form| chances(test, form, outlook)).collect();
    let outcome = |place: usize| {
        let joint: Vec<f64> = outlook.chances.iter().zip(&table).map(|(chance, row)| chance * row[place]).collect();
        let probability: f64 = joint.iter().sum();
        let faults = by_fault(forms, &joint).map(|joint| joint / probability.max(f64::MIN_POSITIVE));
        (probability, faults)
    };
    (0..outcomes(test).len()).map(outcome).collect()
}

/// The test of `open` that is expected to lower the uncertainty most; on a tie the first.
pub fn choose(open: &[FaultTest], outlook: &Outlook<'_>) -> NextTest {
    let now = entropy(&by_fault(outlook.at_detector, outlook.chances));
    let mut best = (FaultTest::LookForSteel, f64::NEG_INFINITY, Vec::new());
    for test in open {
        let outcomes = after(*test, outlook);
        let left: f64 = outcomes.iter().map(|(probability, faults)| probability * entropy(faults)).sum();
        // A hair's breadth is no advantage: ties must not hang on the last digit.
        if now - left > best.1 + 1e-9 {
            best = (*test, now - left, outcomes);
        }
    }
    let (test, information, after) = best;
    NextTest {
        test: test.code(),
        label: test.label(),
        how: test.description(),
        expected_information_bits: round(information.max(0.0), 3),
        outcomes: outcomes(test)
            .iter()
            .zip(after)
            .map(|(outcome, (probability, faults))| TestOutcome {
                outcome,
                probability: round(probability, 3),
                points_to: pointed_to(&faults),
            })
            .collect(),
        cautions: test.cautions().to_vec(),
    }
}

fn pointed_to(faults: &[f64; 13]) -> Vec<&'static str> {
    let mut ranked: Vec<_> = LoopFault::ALL.iter().map(|fault| (*fault, faults[*fault as usize])).collect();
    ranked.sort_by(|(_, a), (_, b)| b.total_cmp(a));
    let most = ranked.first().map_or(0.0, |(_, chance)| *chance);
    ranked
        .into_iter()
        .take_while(|(_, chance)| *chance >= POINTS_FROM.min(most))
        .map(|(fault, _)| fault.code())
        .collect()
}
