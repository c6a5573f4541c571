//! How far the tests have come: what was done, which parts it has cleared, and what can be done from there.

use super::request::Substitution;
use crate::practice::fault_tests::{Disturbance, FaultTest, FaultTestOutcome};
use crate::practice::faults::FaultLocation;
use crate::practice::meter_readings::InsulationState;
use crate::vocabulary::Vocabulary;

/// What a test takes where the splice stands open already, minutes. A choice made here.
const MINUTES_AT_OPEN_SPLICE: u32 = 10;
/// What a reading takes where the lead-in is off the unit already, minutes. A choice made here.
const MINUTES_AT_FREE_END: u32 = 3;
/// The same of insulation, which is held for a minute and discharged. A choice made here.
const MINUTES_OF_INSULATION_AT_FREE_END: u32 = 5;
/// The same of loading the pavement, with the meter connected already. A choice made here.
const MINUTES_OF_LOAD_AT_FREE_END: u32 = 7;

/// What joining an open splice well enough for a test takes, minutes, before one that needs the loop on its unit. A choice made here.
const MINUTES_TO_JOIN_SPLICE: u32 = 10;

/// How things stand at the loop, as far as the tests that come next depend on it.
#[derive(Clone, Copy, Debug)]
enum Circumstance {
    /// The splice is open.
    SpliceOpen,
    /// The circuit is open from the unit's end.
    CircuitOpen,
    /// The lead-in is off the unit.
    LeadInOff,
    /// Insulation was measured in wet ground.
    GroundWet,
    /// The fault comes with rain.
    ComesWithRain,
    /// A good reading of insulation in dry ground stands against a fault that comes with rain.
    WantsWetting,
    /// Insulation was measured and is bad.
    LeakFound,
}

/// The tests that were done, and what follows from them for those that were not.
#[derive(Clone, Debug)]
pub struct TestProgress {
    is_done: [bool; FaultTest::ALL.len()],
    /// By [`Circumstance`].
    holds: [bool; 7],
    /// The farthest part from the unit with which it ran on a known inductor.
    runs_with: Option<FaultLocation>,
    /// The farthest part from the unit with which it did not run.
    fails_with: Option<FaultLocation>,
    /// How long there still is, minutes; infinite where nobody said.
    minutes_left: f64,
    /// The most that tests may disturb.
    disturb_at_most: Disturbance,
}

impl TestProgress {
    /// Nothing was done yet, in such ground.
    pub fn new(ground: InsulationState) -> Self {
        let mut progress = Self {
            is_done: [false; FaultTest::ALL.len()],
            holds: [false; 7],
            runs_with: None,
            fails_with: None,
            minutes_left: f64::INFINITY,
            disturb_at_most: Disturbance::Pavement,
        };
        progress.set(Circumstance::GroundWet, ground == InsulationState::Wet);
        progress
    }

    fn is(&self, circumstance: Circumstance) -> bool {
        self.holds[circumstance as usize]
    }

    fn set(&mut self, circumstance: Circumstance, holds: bool) {
        self.holds[circumstance as usize] = holds;
    }

    /// A test was done. `outcome` is `None` where a meter's number stands for it.
    pub fn take(&mut self, test: FaultTest, outcome: Option<FaultTestOutcome>) {
        self.is_done[test as usize] = true;
        if test.disturbs() == Disturbance::Splice {
            self.set(Circumstance::SpliceOpen, true);
        }
        if test.needs_connected_loop() {
            self.set(Circumstance::SpliceOpen, false);
        }
        match test.disturbs() {
            Disturbance::Plug => self.set(Circumstance::LeadInOff, test.looks_at()[0] == FaultLocation::LeadIn),
            Disturbance::Nothing if test != FaultTest::LookForSteel => self.set(Circumstance::LeadInOff, false),
            Disturbance::Nothing | Disturbance::Splice | Disturbance::Pavement => {}
        }
        match outcome {
            Some(FaultTestOutcome::Sound) if test == FaultTest::Insulation => self.find_sound_insulation(),
            Some(FaultTestOutcome::Leak) => self.set(Circumstance::LeakFound, true),
            Some(FaultTestOutcome::OpenCircuit) if test == FaultTest::Resistance => {
                self.set(Circumstance::CircuitOpen, true);
            }
            _ => {}
        }
        if test == FaultTest::InsulationWet {
            self.set(Circumstance::GroundWet, true);
            self.is_done[FaultTest::Insulation as usize] = true;
        }
        let Some(point) = test.substitution_point() else { return };
        let farthest = point.farthest();
        match outcome {
            Some(FaultTestOutcome::UnitRuns) => self.runs_with = self.runs_with.max(Some(farthest)),
            Some(_) => self.fails_with = Some(self.fails_with.map_or(farthest, |other| other.min(farthest))),
            None => {}
        }
    }

    /// No test may take longer, or disturb more.
    pub fn limit_to(&mut self, minutes: Option<f64>, disturb_at_most: Disturbance) {
        self.minutes_left = minutes.unwrap_or(f64::INFINITY);
        self.disturb_at_most = disturb_at_most;
    }

    /// Whether a test is shorter than the time that is left, and disturbs no more than it may.
    pub fn is_allowed(&self, test: FaultTest) -> bool {
        f64::from(self.minutes(test)) <= self.minutes_left && self.disturbs(test) <= self.disturb_at_most
    }

    /// Time that a test takes is gone.
    pub fn spend(&mut self, minutes: u32) {
        self.minutes_left -= f64::from(minutes);
    }

    /// A known inductor was connected.
    pub fn take_substitution(&mut self, done: &Substitution) {
        let outcome = if done.unit_runs { FaultTestOutcome::UnitRuns } else { FaultTestOutcome::UnitDoesNotRun };
        let test = FaultTest::ALL.iter().find(|test| test.substitution_point() == Some(done.connected_at));
        if let Some(test) = test {
            self.take(*test, Some(outcome));
        }
    }

    /// The splice was found or left open.
    pub fn open_splice(&mut self) {
        self.set(Circumstance::SpliceOpen, true);
    }

    /// The fault comes with rain.
    pub fn fault_comes_with_rain(&mut self) {
        self.set(Circumstance::ComesWithRain, true);
    }

    /// A good reading of insulation in dry ground says little about a fault that comes with rain: it is wetted first.
    pub fn find_sound_insulation(&mut self) {
        let wants_wetting = self.is(Circumstance::ComesWithRain) && !self.is(Circumstance::GroundWet);
        self.set(Circumstance::WantsWetting, wants_wetting);
    }

    /// Whether an open splice is joined before a test.
    pub fn joins_splice_first(&self, test: FaultTest) -> bool {
        self.is(Circumstance::SpliceOpen) && test.needs_connected_loop()
    }

    /// A reading of insulation is bad: the circuit leaks, and only the open splice tells on which side.
    pub fn find_leak(&mut self) {
        self.set(Circumstance::LeakFound, true);
    }

    /// Whether the trade does a test first, whatever else would tell.
    pub fn comes_first(&self, test: FaultTest) -> bool {
        match test {
            FaultTest::InsulationWet => self.is(Circumstance::WantsWetting),
            // Of a torn wire the capacitance tells the end without opening anything.
            FaultTest::SplitAtSplice => self.is(Circumstance::LeakFound) && !self.is(Circumstance::CircuitOpen),
            _ => false,
        }
    }

    /// The circuit is open from the unit's end.
    pub fn open_circuit(&mut self) {
        self.set(Circumstance::CircuitOpen, true);
    }

    /// The tests that can still tell something of a part that is not cleared.
    pub fn open_tests(&self) -> impl Iterator<Item = FaultTest> + '_ {
        FaultTest::ALL.iter().copied().filter(|test| self.is_open(*test) && self.is_allowed(*test))
    }

    /// Whether the unit ran on a known inductor with more in the circuit than where it did not: one of the two tests is wrong, or the fault
    /// comes and goes. Then neither clears anything, and both are to be done again.
    pub fn substitutions_contradict(&self) -> bool {
        self.fails_with.is_some_and(|fails| self.runs_with >= Some(fails))
    }

    /// Whether the fault comes with rain and the ground is dry: a good reading of insulation clears nothing.
    pub fn clears_nothing_when_sound(&self, test: FaultTest) -> bool {
        test == FaultTest::Insulation && self.is(Circumstance::ComesWithRain) && !self.is(Circumstance::GroundWet)
    }

    fn is_open(&self, test: FaultTest) -> bool {
        if self.substitutions_contradict() && test.substitution_point().is_some() {
            // Both are done again.
            return true;
        }
        let [nearest, farthest] = test.looks_at();
        let is_cleared = !self.substitutions_contradict()
            && (self.runs_with.is_some_and(|cleared| farthest <= cleared)
                || self.fails_with.is_some_and(|last| nearest > last));
        // Beyond a point at which the unit does not run it cannot run either.
        let is_idle =
            test.substitution_point().is_some_and(|point| self.fails_with.is_some_and(|last| point.farthest() > last));
        let is_barred = match test {
            // Wetted only after a reading of the ground as it is found.
            FaultTest::InsulationWet => {
                !self.is_done[FaultTest::Insulation as usize] || self.is(Circumstance::GroundWet)
            }
            // An open circuit leaves inductance nothing to read, and a closed one capacitance.
            FaultTest::Inductance | FaultTest::InductanceAtLoop => self.is(Circumstance::CircuitOpen),
            FaultTest::Capacitance => !self.is(Circumstance::CircuitOpen),
            _ => false,
        };
        !(self.is_done[test as usize]
            || is_cleared
            || is_idle
            || is_barred
            || test.needs_closed_splice() && self.is(Circumstance::SpliceOpen))
    }

    /// How long a test takes from here, minutes.
    pub fn minutes(&self, test: FaultTest) -> u32 {
        let most = match test {
            FaultTest::Resistance | FaultTest::Inductance | FaultTest::Capacitance
                if self.is(Circumstance::LeadInOff) =>
            {
                MINUTES_AT_FREE_END
            }
            FaultTest::Insulation if self.is(Circumstance::LeadInOff) => MINUTES_OF_INSULATION_AT_FREE_END,
            FaultTest::LoadAndWiggle if self.is(Circumstance::LeadInOff) => MINUTES_OF_LOAD_AT_FREE_END,
            _ if self.is(Circumstance::SpliceOpen) && test.disturbs() == Disturbance::Splice => MINUTES_AT_OPEN_SPLICE,
            _ => u32::MAX,
        };
        let before = if self.joins_splice_first(test) { MINUTES_TO_JOIN_SPLICE } else { 0 };
        test.minutes().min(most) + before
    }

    /// What a test disturbs from here: a splice that stands open, and a lead-in that is off, are disturbed no more.
    pub fn disturbs(&self, test: FaultTest) -> Disturbance {
        match test.disturbs() {
            Disturbance::Splice if self.is(Circumstance::SpliceOpen) => Disturbance::Nothing,
            Disturbance::Plug if self.is(Circumstance::LeadInOff) => Disturbance::Nothing,
            other => other,
        }
    }

    /// What a test costs from here, minutes: its own, and those of putting right what it disturbs.
    pub fn cost(&self, test: FaultTest) -> f64 {
        f64::from(self.minutes(test)) + self.disturbs(test).penalty_minutes()
    }
}
