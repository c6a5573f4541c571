//! What fails in a loop installation, how often, when it shows, and where it sits.
//!
//! No public statistics of loop faults in these terms exist: shares are choices made here after common practice. They decide only
//! where meter readings do not. What people notice of a fault stands in [`super::fault_signs`], what it does to the readings in
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
        TornWire "torn_wire" "Torn wire" "A wire has parted and its end lies bare in wet ground: the circuit is open and earthed at once, by one fault." [CommonPractice];
        HighResistanceJoint "high_resistance_joint" "High-resistance joint" "A splice or terminal is corroded or loose and adds resistance." [CommonPractice];
        ShortedTurn "shorted_turn" "Shorted turn or pair" "Wires touch: a turn is closed on itself, or the loop or its pair is bridged." [CommonPractice CircuitTheory];
        WrongTurnCount "wrong_turn_count" "Wrong number of turns" "The loop was wound with one or two turns more or less than its record says." [CommonPractice];
        SwappedPair "swapped_pair" "Swapped pair" "The wires of two loops are exchanged: another loop is connected, or one wire of each." [CommonPractice];
        SteelNearby "steel_nearby" "Steel nearby" "Mesh, a cover or a metal leaf near the loop takes part of its inductance." [CommonPractice MethodOfImages];
        OutsideEnvelope "outside_envelope" "Outside the unit's envelope" "The loop is sound, but its inductance or quality factor lies outside what the unit tunes to." [NemaEnvelope];
        DetectorUnit "detector_unit" "Detector unit or its supply" "The unit or its supply has failed." [CommonPractice];
        Settings "settings" "Settings of the unit" "The unit is sound and set wrong: its sensitivity step, its mode or what its output does on failure." [CommonPractice];
        SurgeDamage "surge_damage" "Surge damage" "Lightning or a surge of the mains has hurt the unit's input or the surge arrester before it." [CommonPractice];
        Harness "harness" "Harness" "The wiring from the unit's terminals to the lead-in, with its plug and base, has failed." [CommonPractice];
        Crosstalk "crosstalk" "Crosstalk" "Another loop or unit that runs at nearly the same frequency disturbs this one." [CommonPractice];
        None "none" "No fault found" "Nothing is wrong with loop, wiring or unit, or the fault is not there now." [CommonPractice];
    }
}

impl LoopFault {
    /// How often it is the cause, before anything is measured or noticed; the shares sum to 1. Installation, sealant and wire
    /// fail more often than units (Bikowitz and Ross, 1985); the numbers are choices made here.
    ///
    /// - Leaks are the usual call-back of an older loop, and splices leak nearly as often as nicked wire.
    /// - Pavement that moves breaks wires and works joints loose.
    /// - Touching turns, wrong counts and swapped pairs are mostly errors of the day of installation, and found then.
    /// - Units are blamed more often than they fail, and are set wrong nearly as often.
    /// - A wire that parts in wet ground mostly keeps its end dry inside the insulation; some tear and lie bare.
    pub fn prior_share(self) -> f64 {
        match self {
            Self::InsulationBreach => 0.17,
            Self::WetSplice => 0.13,
            Self::BrokenConductor | Self::None => 0.09,
            Self::HighResistanceJoint => 0.08,
            Self::DetectorUnit => 0.06,
            Self::ShortedTurn | Self::Settings => 0.05,
            Self::WrongTurnCount | Self::SteelNearby | Self::OutsideEnvelope | Self::Harness | Self::Crosstalk => 0.04,
            Self::TornWire | Self::SwappedPair => 0.03,
            Self::SurgeDamage => 0.02,
        }
    }
}

/// When a fault shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FaultManner {
    /// At all times.
    Always,
    /// Only while the ground is wet.
    WhenWet,
    /// Only while the pavement is loaded or wires are moved.
    UnderLoad,
    /// Only as the metal of the gate moves.
    WithTheGate,
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_before_sum_to_one_and_indices_follow_the_list() {
        let sum: f64 = LoopFault::ALL.iter().map(|fault| fault.prior_share()).sum();
        assert!((sum - 1.0).abs() < 1e-12, "{sum}");
        assert!(LoopFault::ALL.iter().enumerate().all(|(index, fault)| *fault as usize == index));
    }
}
