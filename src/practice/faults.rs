//! What fails in a loop installation, what people notice of it, and how much each sign weighs.
//!
//! No public statistics of loop faults in these terms exist: shares and weights are choices made here after common practice.
//! They decide only where meter readings do not. What a fault does to the readings stands in
//! `calculation/fault_finding/predicted_readings.rs`.

use std::ops::{Index, IndexMut};

use super::sources::sourced_vocabulary;
use crate::vocabulary::Vocabulary;

sourced_vocabulary! {
    /// What may have failed.
    LoopFault {
        InsulationBreach "insulation_breach" "Insulation breach" "The insulation of the loop or of the lead-in is cut or worn, and water connects the copper to earth." [CommonPractice];
        WetSplice "wet_splice" "Wet splice" "The splice between loop and lead-in has taken water and leaks to earth." [CommonPractice];
        BrokenConductor "broken_conductor" "Broken conductor" "The circuit is open: a wire has parted in the loop or in the lead-in." [CommonPractice];
        HighResistanceJoint "high_resistance_joint" "High-resistance joint" "A splice or terminal is corroded or loose and adds resistance." [CommonPractice];
        ShortedTurn "shorted_turn" "Shorted turn or pair" "Wires touch: a turn is closed on itself, or the loop or its pair is bridged." [CommonPractice CircuitTheory];
        WrongTurnCount "wrong_turn_count" "Wrong number of turns" "The loop was wound with one or two turns more or less than its record says." [CommonPractice];
        SwappedPair "swapped_pair" "Swapped pair" "The wires of two loops are exchanged: another loop is connected, or one wire of each." [CommonPractice];
        SteelNearby "steel_nearby" "Steel nearby" "Mesh, a cover or a metal leaf near the loop takes part of its inductance." [CommonPractice MethodOfImages];
        OutsideEnvelope "outside_envelope" "Outside the unit's envelope" "The loop is sound, but its inductance or quality factor lies outside what the unit tunes to." [NemaEnvelope];
        DetectorUnit "detector_unit" "Detector unit or its supply" "The unit, its settings or its supply has failed." [CommonPractice];
        Harness "harness" "Harness" "The wiring from the unit's terminals to the lead-in, with its plug and base, has failed." [CommonPractice];
        Crosstalk "crosstalk" "Crosstalk" "Another loop or unit that runs at nearly the same frequency disturbs this one." [CommonPractice];
        None "none" "No fault found" "Nothing is wrong with loop, wiring or unit, or the fault is not there now." [CommonPractice];
    }
}

sourced_vocabulary! {
    /// What people notice.
    Observation {
        FaultAfterRain "fault_after_rain" "Fault after rain" "The fault comes with rain and goes as the ground dries." [CommonPractice];
        FaultInFrost "fault_in_frost" "Fault in frost" "The fault comes with frost." [CommonPractice];
        StuckInDetect "stuck_in_detect" "Stuck in detect" "The output stays on with nothing on the loop." [CommonPractice];
        NeverDetects "never_detects" "Never detects" "The output never switches, whatever stands on the loop." [CommonPractice];
        Intermittent "intermittent" "Intermittent" "The fault comes and goes without an evident cause." [CommonPractice];
        DetectsTheGate "detects_the_gate" "Detects the gate" "The output switches as the gate moves." [CommonPractice];
        DetectsNextLane "detects_next_lane" "Detects the next lane" "The output switches with traffic in another lane or on another loop." [CommonPractice];
        Drifts "drifts" "Drifts" "The unit retunes often, or its reading wanders." [CommonPractice];
        FaultWhenPavementFlexes "fault_when_pavement_flexes" "Fault when the pavement flexes" "The fault comes as a heavy vehicle loads the pavement, or as wires are moved." [CommonPractice];
    }
}

sourced_vocabulary! {
    /// Where a meter was connected.
    ReadingPlace {
        DetectorEnd "detector_end" "Detector end" "At the unit's end of the lead-in, with the unit disconnected: lead-in and loop are measured together." [CommonPractice];
        LoopEnd "loop_end" "Loop end" "At the loop's own tails, with the splice opened: the loop is measured alone." [CommonPractice];
    }
}

sourced_vocabulary! {
    /// Where a known inductor stood in for what lies beyond.
    SubstitutionPoint {
        UnitTerminals "unit_terminals" "Unit's terminals" "At the terminals of the unit, with nothing else connected to them." [CommonPractice];
        HarnessEnd "harness_end" "End of the harness" "At the far end of the harness, in place of the lead-in." [CommonPractice];
        LeadInEnd "lead_in_end" "End of the lead-in" "At the far end of the lead-in, in place of the loop, with the splice opened." [CommonPractice];
    }
}

impl LoopFault {
    /// How often it is the cause, before anything is measured or noticed; the shares sum to 1. Installation, sealant and wire
    /// fail more often than units (Bikowitz and Ross, 1985); the numbers are choices made here.
    ///
    /// - Leaks are the usual call-back of an older loop, and splices leak nearly as often as nicked wire.
    /// - Pavement that moves breaks wires and works joints loose.
    /// - Touching turns, wrong counts and swapped pairs are mostly errors of the day of installation, and found then.
    /// - Units are blamed more often than they fail.
    pub fn prior_share(self) -> f64 {
        match self {
            Self::InsulationBreach => 0.18,
            Self::WetSplice => 0.14,
            Self::BrokenConductor | Self::None => 0.10,
            Self::HighResistanceJoint => 0.08,
            Self::DetectorUnit => 0.07,
            Self::SwappedPair => 0.03,
            Self::ShortedTurn
            | Self::WrongTurnCount
            | Self::SteelNearby
            | Self::OutsideEnvelope
            | Self::Harness
            | Self::Crosstalk => 0.05,
        }
    }
}

impl LoopFault {
    /// How much more often (above 1) or less often (below 1) each observation is made with this fault than in all call-backs.
    /// [`Observation::weight_for`] names the columns.
    ///
    /// A choice made here after common practice: 6 and 8 mark the classic sign of a fault, 2 to 4 a usual one, 1 no bearing,
    /// below that a sign that hardly fits.
    fn observation_weights(self) -> [f64; Observation::ALL.len()] {
        match self {
            // Rain, frost, stuck, never, intermittent, gate, lane, drifts, flexes.
            Self::InsulationBreach => [6.0, 2.0, 3.0, 0.5, 2.0, 0.3, 0.4, 3.0, 2.0],
            Self::WetSplice => [6.0, 2.0, 3.0, 0.5, 2.0, 0.3, 0.4, 3.0, 1.0],
            Self::BrokenConductor => [1.0, 3.0, 2.0, 3.0, 2.0, 0.1, 0.2, 0.5, 5.0],
            Self::HighResistanceJoint => [2.0, 2.0, 1.5, 1.0, 4.0, 0.3, 0.4, 2.5, 4.0],
            Self::ShortedTurn => [1.0, 1.5, 1.5, 2.5, 1.5, 0.3, 0.3, 1.0, 3.0],
            Self::WrongTurnCount => [0.3, 0.3, 0.5, 1.5, 0.3, 0.7, 1.0, 0.3, 0.3],
            Self::SwappedPair => [0.3, 0.3, 0.7, 2.5, 0.3, 0.7, 6.0, 0.3, 0.3],
            Self::SteelNearby => [0.3, 0.3, 1.0, 1.5, 0.5, 8.0, 0.7, 1.0, 0.7],
            Self::OutsideEnvelope => [0.3, 0.3, 1.0, 3.0, 1.0, 0.5, 0.4, 1.5, 0.3],
            Self::DetectorUnit => [0.4, 0.8, 2.0, 2.5, 1.5, 0.5, 0.5, 2.0, 0.3],
            Self::Harness => [1.0, 1.0, 1.5, 2.5, 3.0, 0.3, 0.5, 1.5, 0.5],
            Self::Crosstalk => [0.3, 0.3, 1.0, 0.3, 3.0, 1.0, 6.0, 1.5, 0.5],
            Self::None => [0.2, 0.2, 0.2, 0.2, 0.3, 0.3, 0.3, 0.3, 0.2],
        }
    }

    /// How often the fault goes while the other units and channels nearby are switched off, 0 to 1. A choice made here.
    pub fn goes_with_neighbours_off(self) -> f64 {
        match self {
            Self::Crosstalk => 0.9,
            Self::SwappedPair => 0.4,
            Self::InsulationBreach
            | Self::WetSplice
            | Self::BrokenConductor
            | Self::HighResistanceJoint
            | Self::ShortedTurn
            | Self::WrongTurnCount
            | Self::SteelNearby
            | Self::OutsideEnvelope
            | Self::DetectorUnit
            | Self::Harness
            | Self::None => 0.05,
        }
    }

    /// How often the resistance jumps while the pavement is loaded and wires are moved, 0 to 1. A choice made here.
    pub fn jumps_under_load(self) -> f64 {
        match self {
            Self::HighResistanceJoint => 0.6,
            Self::BrokenConductor | Self::ShortedTurn => 0.3,
            Self::InsulationBreach | Self::WetSplice => 0.1,
            Self::WrongTurnCount
            | Self::SwappedPair
            | Self::SteelNearby
            | Self::OutsideEnvelope
            | Self::DetectorUnit
            | Self::Harness
            | Self::Crosstalk
            | Self::None => 0.03,
        }
    }

    /// How often a search round the loop finds metal that was not there before, 0 to 1. A choice made here.
    pub fn is_found_as_metal(self) -> f64 {
        match self {
            Self::SteelNearby => 0.8,
            Self::InsulationBreach
            | Self::WetSplice
            | Self::BrokenConductor
            | Self::HighResistanceJoint
            | Self::ShortedTurn
            | Self::WrongTurnCount
            | Self::SwappedPair
            | Self::OutsideEnvelope
            | Self::DetectorUnit
            | Self::Harness
            | Self::Crosstalk
            | Self::None => 0.1,
        }
    }
}

impl Observation {
    /// How much more often (above 1) or less often (below 1) this is noticed with a fault than in all call-backs. What was not
    /// noticed counts for nothing, as nobody may have looked.
    pub fn weight_for(self, fault: LoopFault) -> f64 {
        let [rain, frost, stuck, never, intermittent, gate, lane, drifts, flexes] = fault.observation_weights();
        match self {
            Self::FaultAfterRain => rain,
            Self::FaultInFrost => frost,
            Self::StuckInDetect => stuck,
            Self::NeverDetects => never,
            Self::Intermittent => intermittent,
            Self::DetectsTheGate => gate,
            Self::DetectsNextLane => lane,
            Self::Drifts => drifts,
            Self::FaultWhenPavementFlexes => flexes,
        }
    }
}

/// A value for each fault; it cannot miss one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PerFault<T>([T; LoopFault::ALL.len()]);

impl<T> PerFault<T> {
    /// Computes the value of each fault.
    pub fn new(mut value_of: impl FnMut(LoopFault) -> T) -> Self {
        Self(std::array::from_fn(|index| value_of(LoopFault::ALL[index])))
    }

    /// The values in the order of [`LoopFault::ALL`].
    pub fn values(&self) -> &[T] {
        &self.0
    }

    /// Transforms each value.
    pub fn map<U>(self, transform: impl FnMut(T) -> U) -> PerFault<U> {
        PerFault(self.0.map(transform))
    }
}

impl PerFault<f64> {
    /// The faults with their values, the greatest first; equals stay in the order of the list.
    pub fn ranked(&self) -> Vec<(LoopFault, f64)> {
        let mut ranked: Vec<_> = LoopFault::ALL.iter().copied().zip(self.0).collect();
        ranked.sort_by(|(_, a), (_, b)| b.total_cmp(a));
        ranked
    }
}

impl<T> Index<LoopFault> for PerFault<T> {
    type Output = T;

    fn index(&self, fault: LoopFault) -> &T {
        &self.0[fault as usize]
    }
}

impl<T> IndexMut<LoopFault> for PerFault<T> {
    fn index_mut(&mut self, fault: LoopFault) -> &mut T {
        &mut self.0[fault as usize]
    }
}

/// Where a fault sits in the circuit, from the unit outwards.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum FaultLocation {
    /// The unit and its supply.
    Unit,
    /// The wiring between the unit and the lead-in.
    Harness,
    /// The pair to the loop.
    LeadIn,
    /// The splice of lead-in and loop.
    Splice,
    /// The loop.
    Loop,
    /// Outside the circuit: near the loop, or nowhere.
    Beyond,
}

impl ReadingPlace {
    /// The nearest location to the unit that a meter there measures; what lies nearer is disconnected.
    pub fn measures_from(self) -> FaultLocation {
        match self {
            Self::DetectorEnd => FaultLocation::LeadIn,
            Self::LoopEnd => FaultLocation::Loop,
        }
    }
}

impl SubstitutionPoint {
    /// Whether what sits at a location stays in the circuit with the inductor.
    pub fn reaches(self, location: FaultLocation) -> bool {
        let farthest = match self {
            Self::UnitTerminals => FaultLocation::Unit,
            Self::HarnessEnd => FaultLocation::Harness,
            Self::LeadInEnd => FaultLocation::LeadIn,
        };
        location <= farthest
    }
}

/// What an insulation reading means: from this value up, in whose words, and by whom.
#[derive(Clone, Copy, Debug)]
pub struct InsulationBand {
    /// The least reading of the band, megohm.
    pub from_megohm: f64,
    /// Its name in statements.
    pub code: &'static str,
    /// Whether it calls for work.
    pub is_bad: bool,
    /// Whose limit it is.
    pub sources: &'static [super::sources::Source],
}

/// The bands, best first. Agencies differ, and the lower ones are nobody's limit but engineering judgement.
pub const INSULATION_BANDS: [InsulationBand; 5] = {
    use super::sources::Source::{Caltrans87, Fp96, FromMemory, OwnChoice, Wsdot820};
    [
        InsulationBand {
            from_megohm: 200.0,
            code: "strictest_agency",
            is_bad: false,
            sources: &[Wsdot820, FromMemory],
        },
        InsulationBand {
            from_megohm: 100.0,
            code: "stricter_agency",
            is_bad: false,
            sources: &[Caltrans87, Wsdot820, FromMemory],
        },
        InsulationBand { from_megohm: 10.0, code: "lenient_agency", is_bad: false, sources: &[Fp96, OwnChoice] },
        InsulationBand { from_megohm: 1.0, code: "poor", is_bad: true, sources: &[OwnChoice] },
        InsulationBand { from_megohm: 0.0, code: "failed", is_bad: true, sources: &[OwnChoice] },
    ]
};

/// The test voltage of the agencies' limits, V (WSDOT and Caltrans, from memory).
pub const USUAL_TEST_VOLTAGE_V: f64 = 500.0;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_before_sum_to_one_and_indices_follow_the_list() {
        let sum: f64 = LoopFault::ALL.iter().map(|fault| fault.prior_share()).sum();
        assert!((sum - 1.0).abs() < 1e-12, "{sum}");
        assert!(LoopFault::ALL.iter().enumerate().all(|(index, fault)| *fault as usize == index));
    }

    #[test]
    fn every_observation_speaks_for_some_fault_and_against_no_fault_at_all() {
        for observation in Observation::ALL {
            let weights = LoopFault::ALL.iter().map(|fault| observation.weight_for(*fault));
            assert!(weights.fold(0.0, f64::max) >= 3.0, "{observation:?}");
            assert!(observation.weight_for(LoopFault::None) <= 0.3, "{observation:?}");
        }
    }
}
