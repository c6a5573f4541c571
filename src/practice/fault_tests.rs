//! The tests that separate faults, how each is done, and what can hurt someone meanwhile.

use super::cautions::CautionCode;
use super::sources::sourced_vocabulary;

sourced_vocabulary! {
    /// A test on the way to a fault; the description says how it is done.
    FaultTest {
        Insulation "insulation_test" "Insulation to earth" "Disconnect the lead-in from the unit and from surge arresters, join its two wires, and test them to earth at 500 V for one minute, in wet weather if the fault comes with rain." [CommonPractice InsulationTest];
        SplitAtSplice "split_at_splice" "Open the splice, test both sides" "Open the splice between loop and lead-in, dry the ends and hold them apart, then test the insulation of the loop and of the lead-in to earth, each alone." [CommonPractice InsulationTest];
        Resistance "resistance_test" "Resistance at the detector end" "Disconnect the lead-in from the unit and measure its resistance to direct current with the meter's leads zeroed." [CommonPractice];
        ResistanceAtLoop "resistance_at_loop_end" "Resistance at the loop end" "Open the splice and measure the resistance of the loop alone at its own tails, with the meter's leads zeroed." [CommonPractice];
        Inductance "inductance_test" "Inductance at the detector end" "Disconnect the lead-in from the unit and measure its inductance near the unit's frequency, with no vehicle near the loop." [CommonPractice];
        InductanceAtLoop "inductance_at_loop_end" "Inductance at the loop end" "Open the splice and measure the inductance of the loop alone at its own tails, with no vehicle near it." [CommonPractice];
        SubstituteAtUnit "substitute_at_unit_terminals" "Known inductor at the unit's terminals" "Disconnect everything from the unit's loop terminals, connect an inductor from the middle of the unit's range, reset the unit and see whether it runs." [CommonPractice];
        SubstituteAtHarness "substitute_at_harness_end" "Known inductor at the end of the harness" "Take the lead-in off the far end of the harness, connect an inductor from the middle of the unit's range there, reset the unit and see whether it runs." [CommonPractice];
        SubstituteAtLeadIn "substitute_at_lead_in_end" "Known inductor at the end of the lead-in" "Open the splice, connect an inductor from the middle of the unit's range to the lead-in in place of the loop, reset the unit and see whether it runs." [CommonPractice];
        NeighboursOff "neighbours_off" "Other channels off" "Switch off every other unit and channel nearby, one after the other, and watch whether the fault goes." [CommonPractice];
        LoadAndWiggle "load_and_wiggle" "Load the pavement, move the wires" "With the unit disconnected and a resistance meter on the lead-in, move splices and plugs by hand and have a heavy vehicle roll over the slot from a safe distance: watch for jumps." [CommonPractice];
        LookForSteel "look_for_steel" "Look for steel" "Look round the loop for metal that was not there when it was commissioned: covers, plates, a leaf nearer than before; scan the slab for mesh." [CommonPractice];
    }
}

impl FaultTest {
    /// What to heed. Whatever disconnects a loop or restarts a unit can set the gate moving.
    pub fn cautions(self) -> &'static [CautionCode] {
        use CautionCode::{GateCanMove, InsulationTester, LiveParts, WorkZone};
        match self {
            Self::Insulation | Self::SplitAtSplice => &[GateCanMove, InsulationTester, LiveParts],
            Self::LookForSteel => &[GateCanMove, WorkZone],
            Self::LoadAndWiggle => &[GateCanMove, WorkZone, LiveParts],
            Self::Resistance
            | Self::ResistanceAtLoop
            | Self::Inductance
            | Self::InductanceAtLoop
            | Self::SubstituteAtUnit
            | Self::SubstituteAtHarness
            | Self::SubstituteAtLeadIn
            | Self::NeighboursOff => &[GateCanMove, LiveParts],
        }
    }
}
