//! One turn of a loop: where its filaments lie, and what two turns make of each other.

use crate::physics::MU_0;
use crate::physics::filament::{Filament, mutual, self_inductance};
use std::f64::consts::TAU;

/// How the wire goes round.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WindingShape {
    /// One cell, wound anticlockwise seen from above.
    Rectangle,
    /// Two cells side by side across the lane, each half as wide as the whole and as long. The left
    /// one is wound anticlockwise and the right one clockwise, so that the currents add in the slot
    /// between them, which runs along travel.
    ///
    /// Wires count where they lie: the centre slot holds 2·turns of them, one on the other at the
    /// pitch, and every other slot `turns`. The short rise of a wire to its place in the taller
    /// stack is left out. Worked number: 6 × 6 ft of 14 AWG at 0.150 in, 3 turns, 128.8 µH.
    Quadrupole,
}

/// The filaments of one turn at z = 0.
pub(super) struct TurnFilaments {
    /// First a leg across the lane, then one along travel, then the rest.
    sides: Vec<Filament>,
    /// How many of the sides are mirror images of the first, itself included.
    legs_across: f64,
    /// The four diagonals, or none.
    corners: Vec<Filament>,
    /// The centre slot of a quadrupole, which has two wires for each turn.
    pub(super) centre: Option<Filament>,
}

impl TurnFilaments {
    /// One turn of these sizes, with diagonals that remove `leg` from each corner.
    pub(super) fn new(shape: WindingShape, across: f64, along: f64, leg: f64) -> Self {
        let (x, y) = (0.5 * across, 0.5 * along);
        let line = |x0, y0, x1, y1| Filament { from: [x0, y0, 0.0], to: [x1, y1, 0.0] };
        // The left half is wound alike in both shapes; the right half of a quadrupole is reversed.
        let right = |segment: Filament| match shape {
            WindingShape::Rectangle => segment,
            WindingShape::Quadrupole => segment.reversed(),
        };
        let left_side = line(-x, y - leg, -x, leg - y);
        let right_side = right(line(x, leg - y, x, y - leg));
        let corners = if leg > 0.0 {
            vec![
                line(-x, leg - y, leg - x, -y),
                right(line(x - leg, -y, x, leg - y)),
                right(line(x, y - leg, x - leg, y)),
                line(leg - x, y, -x, y - leg),
            ]
        } else {
            Vec::new()
        };
        match shape {
            WindingShape::Rectangle => Self {
                sides: vec![line(leg - x, -y, x - leg, -y), right_side, line(x - leg, y, leg - x, y), left_side],
                legs_across: 2.0,
                corners,
                centre: None,
            },
            WindingShape::Quadrupole => Self {
                sides: vec![
                    line(leg - x, -y, 0.0, -y),
                    left_side,
                    right(line(0.0, -y, x - leg, -y)),
                    right_side,
                    right(line(x - leg, y, 0.0, y)),
                    line(0.0, y, leg - x, y),
                ],
                legs_across: 4.0,
                corners,
                centre: Some(line(0.0, -y, 0.0, y)),
            },
        }
    }

    /// Sides and corners, without the centre slot.
    pub(super) fn ring(&self) -> impl Iterator<Item = Filament> {
        self.sides.iter().chain(&self.corners).copied()
    }

    /// Mutual inductance of the ring and its copy `height` below it, which at 0 is its own
    /// inductance. By symmetry one filament of each kind stands for all of that kind.
    pub(super) fn with_copy(&self, height: f64, mean_distance: f64) -> f64 {
        let own = |kind: &[Filament], index: usize| -> f64 {
            let pair = |(other, segment): (usize, &Filament)| {
                if other == index { wire(segment, height, mean_distance) } else { below(&kind[index], segment, height) }
            };
            kind.iter().enumerate().map(pair).sum()
        };
        // Each pair of a corner and a side counts twice, as does every other pair of two filaments.
        let across_corners = self.corners.first().map_or(0.0, |corner| {
            let sides = self.sides.iter();
            2.0 * sides.map(|side| below(corner, side, height)).sum::<f64>()
        });
        self.legs_across * own(&self.sides, 0)
            + 2.0 * own(&self.sides, 1)
            + 4.0 * (own(&self.corners, 0) + across_corners)
    }

    /// Mutual inductance of the ring and a wire, `height` apart.
    pub(super) fn with_wire(&self, wire: &Filament, height: f64) -> f64 {
        self.ring().map(|side| below(wire, &side, height)).sum()
    }
}

/// Mutual inductance of a wire and its copy `height` below it, which at 0 is its own inductance.
///
/// Then the share of free ends, (μ0/2π) · mean distance, is left out as in Rosa & Grover's formula
/// for a rectangle: the sides of a closed turn have none.
pub(super) fn wire(one: &Filament, height: f64, mean_distance: f64) -> f64 {
    if height > mean_distance {
        self_inductance(one.length(), height)
    } else {
        self_inductance(one.length(), mean_distance) - MU_0 / TAU * mean_distance
    }
}

/// Mutual inductance of a filament and another that is moved down by `height`.
fn below(one: &Filament, other: &Filament, height: f64) -> f64 {
    mutual(one, &other.shifted([0.0, 0.0, -height]))
}
