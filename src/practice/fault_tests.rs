//! The tests that separate faults: how each is done, what it takes, what it can show, and what can hurt someone meanwhile.
//!
//! Minutes and what counts as disturbed are choices made here after common practice.

use super::cautions::CautionCode;
use super::faults::FaultLocation;
use super::meter_readings::SubstitutionPoint;
use super::sources::sourced_vocabulary;

sourced_vocabulary! {
    /// A test on the way to a fault; the description says how it is done.
    FaultTest {
        CheckSettings "check_settings" "Look at the settings" "Read the unit's sensitivity step, its mode and what its output does on failure, and hold them against its sheet and what the loop is for. Nothing is disconnected." [CommonPractice];
        WatchReadingWithGate "watch_reading_with_gate" "Unit's reading, gate open and closed" "Leave the loops connected. Read the unit's level or frequency with the gate closed and again with it open; or lock out the operator and move the leaf by hand, its path watched." [CommonPractice];
        DriveOver "drive_over" "Drive over each loop" "Hold the gate open and locked out. Drive each kind of vehicle over each loop in turn and watch which channel answers, and whether it holds to the vehicle's tail." [CommonPractice];
        RestartEmpty "restart_empty" "Restart with the loops empty" "Lock the gate out and clear all vehicles off the loops. Restart the unit, and see whether the fault is there." [CommonPractice];
        Insulation "insulation_test" "Insulation to earth" "Lock the gate out. Disconnect the lead-in from the unit and from surge arresters, join its two wires, and test them to earth at 500 V for one minute. Discharge them. Say whether the ground was dry or wet." [CommonPractice InsulationTest];
        InsulationWet "insulation_test_wet" "Insulation to earth, wetted" "Lock the gate out. With the lead-in off the unit and the arresters, pour water along the slot, over the splice and along the lead-in, wait five minutes, and test the insulation to earth again. Discharge the wires." [CommonPractice InsulationTest];
        Resistance "resistance_test" "Resistance at the detector end" "Lock the gate out. Disconnect the lead-in from the unit and measure its resistance to direct current with the meter's leads zeroed." [CommonPractice];
        Inductance "inductance_test" "Inductance at the detector end" "Lock the gate out. Disconnect the lead-in from the unit and measure its inductance near the unit's frequency, with no vehicle near the loop." [CommonPractice];
        Capacitance "capacitance_test" "Capacitance from the unit's end" "Lock the gate out. With the lead-in off the unit and its circuit open, measure the capacitance from wire to wire, and of a like pair that is whole, or take it from the cable's sheet: the share tells how far the open wire reaches." [CommonPractice CircuitTheory];
        SubstituteAtUnit "substitute_at_unit_terminals" "Known inductor at the unit's terminals" "Lock the gate out. Disconnect everything from the unit's loop terminals, connect an inductor from the middle of the unit's range, reset the unit and see whether it runs." [CommonPractice];
        SubstituteAtHarness "substitute_at_harness_end" "Known inductor at the end of the harness" "Lock the gate out. Take the lead-in off the far end of the harness, connect an inductor from the middle of the unit's range there, reset the unit and see whether it runs." [CommonPractice];
        ExchangeUnit "exchange_unit" "A unit that is known to be good" "Lock the gate out. Put a unit that is known to be good, set alike, in the place of this one, with the loops empty, and see whether the fault goes." [CommonPractice];
        LookForSurge "look_for_surge_damage" "Look for surge damage" "Lock the gate out and switch the supply off. Look at arresters, fuses and the unit's input for scorch marks and tripped indicators, and disconnect each arrester in turn." [CommonPractice];
        NeighboursOff "neighbours_off" "Other channels off" "Lock out every gate whose loops hang on them. Switch off every other unit and channel nearby, one after the other, and watch whether the fault goes." [CommonPractice];
        LookForSteel "look_for_steel" "Look for steel" "Lock the gate out. Look round the loop for metal that was not there when it was commissioned: covers, plates, a leaf nearer than before; scan the slab for mesh." [CommonPractice];
        LoadAndWiggle "load_and_wiggle" "Load the pavement, move the wires" "Lock the gate out. With the unit disconnected and a resistance meter on the lead-in, move splices and plugs by hand and have a heavy vehicle roll over the slot from a safe distance: watch for jumps." [CommonPractice];
        SplitAtSplice "split_at_splice" "Open the splice, test both sides" "Lock the gate out. Open the splice between loop and lead-in, dry the ends and hold them apart, and wet slot and lead-in where the fault comes with rain. Then, with the unit and the arresters off the lead-in, test the insulation of the loop and of the lead-in to earth, each alone. Discharge them." [CommonPractice InsulationTest];
        ResistanceAtLoop "resistance_at_loop_end" "Resistance at the loop end" "Lock the gate out. Open the splice and measure the resistance of the loop alone at its own tails, with the meter's leads zeroed." [CommonPractice];
        InductanceAtLoop "inductance_at_loop_end" "Inductance at the loop end" "Lock the gate out. Open the splice and measure the inductance of the loop alone at its own tails, with no vehicle near it." [CommonPractice];
        SubstituteAtLeadIn "substitute_at_lead_in_end" "Known inductor at the end of the lead-in" "Lock the gate out. Open the splice, connect an inductor from the middle of the unit's range to the lead-in in place of the loop, reset the unit and see whether it runs." [CommonPractice];
        CountTurns "count_turns_in_slot" "Count the wires in the slot" "Lock the gate out and close the lane. Take the sealant out of a hand's length of slot, count the wires without hurting them, and seal the slot again. Only where nothing else tells." [CommonPractice];
    }
}

sourced_vocabulary! {
    /// What a test disturbs, the least first.
    Disturbance {
        Nothing "nothing" "Nothing" "Nothing is disconnected." [CommonPractice];
        Plug "plug" "A plug or terminals" "Wires are taken off the unit, its plug or its terminals, and put back." [CommonPractice];
        Splice "splice" "The splice" "The splice of loop and lead-in is opened, and must be made and sealed anew." [CommonPractice];
        Pavement "pavement" "The pavement" "Sealant or pavement is opened, and must be sealed again." [CommonPractice];
    }
}

sourced_vocabulary! {
    /// What a test showed, or can show.
    FaultTestOutcome {
        Leak "leak" "below 10 megohm" "Insulation to earth is below 10 megohm." [OwnChoice];
        Sound "sound" "sound" "Insulation to earth is good." [CommonPractice];
        LoopLeaks "loop_leaks" "the loop leaks" "With the splice open the loop leaks to earth, the lead-in does not." [CommonPractice];
        LeadInLeaks "lead_in_leaks" "the lead-in leaks" "With the splice open the lead-in leaks to earth, the loop does not." [CommonPractice];
        BothSound "both_sound" "both are sound once apart" "With the splice open neither side leaks: it was the splice." [CommonPractice];
        OpenCircuit "open_circuit" "open circuit" "The meter shows more than its range." [CommonPractice];
        TooHigh "too_high" "too high" "More than a sound loop shows." [CommonPractice];
        AsExpected "as_expected" "as expected" "What a sound loop shows." [CommonPractice];
        TooLow "too_low" "too low" "Less than a sound loop shows." [CommonPractice];
        NoReading "no_reading" "no sensible reading" "The meter settles on nothing." [CommonPractice];
        NextToNothing "next_to_nothing" "next to nothing" "Under a tenth of what a sound loop shows." [OwnChoice];
        WholeLength "whole_length" "the whole pair, or more" "The open wire reaches the end of the lead-in: it parted at the splice or in the loop." [CircuitTheory];
        EndsShort "ends_short" "less than the whole pair" "The open wire ends within the lead-in, at the share of its length that the capacitance has." [CircuitTheory];
        UnitDoesNotRun "unit_does_not_run" "the unit does not run" "The unit does not tune to the known inductor, or shows the fault." [CommonPractice];
        UnitRuns "unit_runs" "the unit runs" "The unit tunes to the known inductor and shows no fault." [CommonPractice];
        FaultGoes "fault_goes" "the fault goes" "The fault is not there any more." [CommonPractice];
        FaultStays "fault_stays" "the fault stays" "The fault is there as before." [CommonPractice];
        ReadingJumps "reading_jumps" "the reading jumps" "The resistance jumps as wires or pavement move." [CommonPractice];
        ReadingSteady "reading_steady" "the reading is steady" "The resistance stays as it is." [CommonPractice];
        Metal "metal" "metal is found" "There is metal that the loop's record does not know." [CommonPractice];
        NoMetal "no_metal" "no metal is found" "There is no metal beyond what the record knows." [CommonPractice];
        SettingsWrong "settings_wrong" "a setting is wrong" "Step, mode or fail state is not what the loop is for." [CommonPractice];
        SettingsRight "settings_right" "the settings are right" "Step, mode and fail state are what the loop is for." [CommonPractice];
        FollowsGate "follows_gate" "the reading follows the gate" "The unit's level or frequency moves with the leaf." [CommonPractice];
        IgnoresGate "ignores_gate" "the reading ignores the gate" "The unit's level or frequency stays as the leaf moves." [CommonPractice];
        AllSeen "all_seen" "all are seen as they should be" "Each vehicle is seen by its own channel, to its tail." [CommonPractice];
        OtherChannel "other_channel" "another channel answers" "A vehicle on one loop switches the channel of another." [CommonPractice];
        Missed "missed" "a vehicle is missed or dropped" "A vehicle is not seen, or let go before its tail." [CommonPractice];
        Damage "damage" "damage is found" "Scorch marks, a tripped indicator, or the fault goes as an arrester is disconnected." [CommonPractice];
        NoDamage "no_damage" "no damage is found" "Arresters, fuses and input look whole." [CommonPractice];
        CountDiffers "count_differs" "the count differs" "The slot holds more or fewer wires than the record says." [CommonPractice];
        CountRight "count_right" "the count is right" "The slot holds as many wires as the record says." [CommonPractice];
    }
}

impl Disturbance {
    /// What putting it right costs beyond the test, in minutes. A choice made here: a splice is made and sealed anew, a slot is sealed
    /// and the lane closed until it has cured.
    pub fn penalty_minutes(self) -> f64 {
        match self {
            Self::Nothing => 0.0,
            Self::Plug => 2.0,
            Self::Splice => 30.0,
            Self::Pavement => 480.0,
        }
    }
}

impl FaultTest {
    /// What to heed. Whatever disconnects a loop or restarts a unit can set the gate moving.
    pub fn cautions(self) -> &'static [CautionCode] {
        use CautionCode::{GateCanMove, InsulationTester, LiveParts, PowerUpEmpty, Saw, Silica, WorkZone};
        match self {
            Self::Insulation | Self::InsulationWet | Self::SplitAtSplice => &[GateCanMove, InsulationTester, LiveParts],
            Self::LookForSteel | Self::DriveOver => &[GateCanMove, WorkZone],
            Self::LoadAndWiggle => &[GateCanMove, WorkZone, LiveParts],
            Self::CountTurns => &[GateCanMove, WorkZone, Silica, Saw],
            Self::RestartEmpty
            | Self::ExchangeUnit
            | Self::SubstituteAtUnit
            | Self::SubstituteAtHarness
            | Self::SubstituteAtLeadIn
            | Self::NeighboursOff => &[GateCanMove, PowerUpEmpty, LiveParts],
            Self::CheckSettings
            | Self::WatchReadingWithGate
            | Self::LookForSurge
            | Self::Resistance
            | Self::ResistanceAtLoop
            | Self::Inductance
            | Self::InductanceAtLoop
            | Self::Capacitance => &[GateCanMove, LiveParts],
        }
    }

    /// How long it takes, in minutes, with the splice closed as it is found.
    pub fn minutes(self) -> u32 {
        match self {
            Self::CheckSettings | Self::WatchReadingWithGate | Self::RestartEmpty | Self::Capacitance => 5,
            Self::Resistance | Self::Inductance => 6,
            Self::Insulation | Self::LookForSurge => 8,
            Self::DriveOver
            | Self::SubstituteAtUnit
            | Self::SubstituteAtHarness
            | Self::NeighboursOff
            | Self::LookForSteel => 10,
            Self::LoadAndWiggle => 12,
            Self::ExchangeUnit | Self::InsulationWet => 15,
            Self::ResistanceAtLoop | Self::InductanceAtLoop => 25,
            Self::SplitAtSplice | Self::SubstituteAtLeadIn => 30,
            Self::CountTurns => 120,
        }
    }

    /// What it disturbs.
    pub fn disturbs(self) -> Disturbance {
        match self {
            Self::CheckSettings
            | Self::WatchReadingWithGate
            | Self::DriveOver
            | Self::RestartEmpty
            | Self::NeighboursOff
            | Self::LookForSteel => Disturbance::Nothing,
            Self::Insulation
            | Self::InsulationWet
            | Self::Resistance
            | Self::Inductance
            | Self::Capacitance
            | Self::SubstituteAtUnit
            | Self::SubstituteAtHarness
            | Self::ExchangeUnit
            | Self::LookForSurge
            | Self::LoadAndWiggle => Disturbance::Plug,
            Self::SplitAtSplice | Self::ResistanceAtLoop | Self::InductanceAtLoop | Self::SubstituteAtLeadIn => {
                Disturbance::Splice
            }
            Self::CountTurns => Disturbance::Pavement,
        }
    }

    /// What it can show.
    pub fn outcomes(self) -> &'static [FaultTestOutcome] {
        use FaultTestOutcome::{
            AllSeen, AsExpected, BothSound, CountDiffers, CountRight, Damage, EndsShort, FaultGoes, FaultStays,
            FollowsGate, IgnoresGate, LeadInLeaks, Leak, LoopLeaks, Metal, Missed, NextToNothing, NoDamage, NoMetal,
            NoReading, OpenCircuit, OtherChannel, ReadingJumps, ReadingSteady, SettingsRight, SettingsWrong, Sound,
            TooHigh, TooLow, UnitDoesNotRun, UnitRuns, WholeLength,
        };
        match self {
            Self::CheckSettings => &[SettingsWrong, SettingsRight],
            Self::WatchReadingWithGate => &[FollowsGate, IgnoresGate],
            Self::DriveOver => &[AllSeen, OtherChannel, Missed],
            Self::RestartEmpty | Self::ExchangeUnit | Self::NeighboursOff => &[FaultGoes, FaultStays],
            Self::Insulation | Self::InsulationWet => &[Leak, Sound],
            Self::Resistance | Self::ResistanceAtLoop => &[OpenCircuit, TooHigh, AsExpected, TooLow],
            Self::Inductance | Self::InductanceAtLoop => &[NoReading, NextToNothing, TooLow, AsExpected, TooHigh],
            Self::Capacitance => &[WholeLength, EndsShort],
            Self::SubstituteAtUnit | Self::SubstituteAtHarness | Self::SubstituteAtLeadIn => {
                &[UnitDoesNotRun, UnitRuns]
            }
            Self::LookForSurge => &[Damage, NoDamage],
            Self::LookForSteel => &[Metal, NoMetal],
            Self::LoadAndWiggle => &[ReadingJumps, ReadingSteady],
            Self::SplitAtSplice => &[LoopLeaks, LeadInLeaks, BothSound],
            Self::CountTurns => &[CountDiffers, CountRight],
        }
    }

    /// The parts that it looks at, from the nearest to the unit to the farthest.
    pub fn looks_at(self) -> [FaultLocation; 2] {
        use FaultLocation::{Beyond, Harness, LeadIn, Loop, Unit};
        match self {
            Self::CheckSettings | Self::ExchangeUnit | Self::SubstituteAtUnit => [Unit, Unit],
            Self::LookForSurge | Self::SubstituteAtHarness => [Unit, Harness],
            Self::SubstituteAtLeadIn => [Unit, LeadIn],
            Self::DriveOver | Self::RestartEmpty => [Unit, Beyond],
            Self::Insulation
            | Self::InsulationWet
            | Self::Resistance
            | Self::Inductance
            | Self::Capacitance
            | Self::LoadAndWiggle
            | Self::SplitAtSplice => [LeadIn, Loop],
            Self::ResistanceAtLoop | Self::InductanceAtLoop | Self::CountTurns => [Loop, Loop],
            Self::WatchReadingWithGate | Self::NeighboursOff | Self::LookForSteel => [Beyond, Beyond],
        }
    }

    /// The point at which it puts a known inductor.
    pub fn substitution_point(self) -> Option<SubstitutionPoint> {
        match self {
            Self::SubstituteAtUnit => Some(SubstitutionPoint::UnitTerminals),
            Self::SubstituteAtHarness => Some(SubstitutionPoint::HarnessEnd),
            Self::SubstituteAtLeadIn => Some(SubstitutionPoint::LeadInEnd),
            _ => None,
        }
    }

    /// Whether the loop must be on its unit for it: a splice that stands open is made first.
    pub fn needs_connected_loop(self) -> bool {
        matches!(
            self,
            Self::WatchReadingWithGate
                | Self::DriveOver
                | Self::RestartEmpty
                | Self::ExchangeUnit
                | Self::NeighboursOff
        )
    }

    /// Whether it measures the whole circuit from the unit's end, which an open splice does not let it.
    pub fn needs_closed_splice(self) -> bool {
        matches!(
            self,
            Self::Insulation | Self::InsulationWet | Self::Resistance | Self::Inductance | Self::LoadAndWiggle
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::vocabulary::Vocabulary;

    #[test]
    fn no_test_is_unsafe() {
        for test in FaultTest::ALL {
            let (how, cautions) = (test.description(), test.cautions());
            assert!(cautions.contains(&CautionCode::GateCanMove), "{test:?}");
            let restarts = test.outcomes().contains(&FaultTestOutcome::UnitRuns);
            assert!(!restarts || cautions.contains(&CautionCode::PowerUpEmpty), "{test:?}");
            // Whatever takes a loop off its unit begins with the gate locked out.
            if test.disturbs() != Disturbance::Nothing {
                assert!(how.starts_with("Lock the gate out"), "{test:?}: {how}");
            }
            // The tester's voltage kills units and arresters, and stays on the wires.
            if how.contains("nsulation to earth") || how.contains("to earth") {
                assert!(cautions.contains(&CautionCode::InsulationTester), "{test:?}");
                assert!(how.contains("unit") && how.contains("arresters") && how.contains("ischarge"), "{how}");
            }
        }
        // A loop that holds the gate stays connected while the gate moves.
        let moving = FaultTest::WatchReadingWithGate;
        assert!(
            moving.disturbs() == Disturbance::Nothing && moving.description().contains("Leave the loops connected")
        );
    }

    #[test]
    fn every_outcome_belongs_to_a_test() {
        for outcome in FaultTestOutcome::ALL {
            assert!(FaultTest::ALL.iter().any(|test| test.outcomes().contains(outcome)), "{outcome:?}");
        }
    }
}
