//! What is decided of the way of a pair from its loop to the unit.

use uom::si::f64::Length;

use super::marks::LoopMark;
use crate::practice::lead_ins::LeadInPair;

/// Which slot several pairs lie in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SharedSlotKey {
    /// That of screened pairs, of whatever unit.
    AllUnits,
    /// That of the pairs of one unit.
    Unit(String),
    /// That of the pairs of a row.
    Row(LoopMark),
}

/// The way of the pairs of a loop, or of a row of loops that are alike.
#[derive(Clone, Debug, PartialEq)]
pub struct LeadInWay {
    /// How each pair is made.
    pub pair: LeadInPair,
    /// What each pair lies in a slot of its own.
    pub own_slot: Length,
    /// What each pair of the row lies in a slot with others; empty where none does.
    pub shared_slots: Vec<Length>,
    /// Which shared slot that is.
    pub shared_slot: Option<SharedSlotKey>,
}

impl LeadInWay {
    /// A way in a slot of its own.
    pub fn alone(pair: LeadInPair, own_slot: Length) -> Self {
        Self { pair, own_slot, shared_slots: Vec::new(), shared_slot: None }
    }

    /// What a pair lies in a slot, on the average of the row.
    pub fn in_slot(&self) -> Length {
        self.own_slot + self.in_shared_slot()
    }

    /// What the pair that goes farthest lies in a slot: as much of each is cut before their conduit begins.
    pub fn farthest_in_slot(&self) -> Length {
        self.shared_slots.iter().fold(self.own_slot, |farthest, shared| farthest.max(self.own_slot + *shared))
    }

    /// The length of the slot that it shares: that of the pair that lies in it farthest.
    pub fn shared_slot_length(&self) -> Length {
        self.shared_slots.iter().copied().fold(Length::default(), Length::max)
    }

    /// What of it a pair lies in a shared slot, on the average of the row.
    pub fn in_shared_slot(&self) -> Length {
        let total = self.shared_slots.iter().fold(Length::default(), |sum, shared| sum + *shared);
        total / self.shared_slots.len().max(1) as f64
    }
}
