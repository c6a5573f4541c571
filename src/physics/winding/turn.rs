//! One turn of a loop: where its filaments lie, and what two turns make of each other.

use super::{Shape, Winding};
use crate::physics::MU_0;
use crate::physics::filament::{Segment, mutual, self_inductance};
use std::f64::consts::TAU;

/// The filaments of one turn at z = 0.
pub(super) struct Turn {
    /// First a leg across the lane, then one along travel, then the rest.
    sides: Vec<Segment>,
    /// How many of the sides are mirror images of the first, itself included.
    legs_across: f64,
    /// The four diagonals, or none.
    corners: Vec<Segment>,
    /// The centre slot of a quadrupole, which has two wires for each turn.
    pub(super) centre: Option<Segment>,
}

impl Turn {
    /// One turn of `winding`.
    pub(super) fn of(winding: &Winding) -> Self {
        let (x, y) = (0.5 * winding.across, 0.5 * winding.along);
        let leg = winding.leg();
        let line = |x0, y0, x1, y1| Segment { from: [x0, y0, 0.0], to: [x1, y1, 0.0] };
        // The left half is wound alike in both shapes; the right half of a quadrupole is reversed.
        let right = |segment: Segment| match winding.shape {
            Shape::Rectangle => segment,
            Shape::Quadrupole => segment.reversed(),
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
        match winding.shape {
            Shape::Rectangle => Self {
                sides: vec![line(leg - x, -y, x - leg, -y), right_side, line(x - leg, y, leg - x, y), left_side],
                legs_across: 2.0,
                corners,
                centre: None,
            },
            Shape::Quadrupole => Self {
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
    pub(super) fn ring(&self) -> impl Iterator<Item = Segment> {
        self.sides.iter().chain(&self.corners).copied()
    }

    /// Mutual inductance of the ring and its copy `height` below it, which at 0 is its own
    /// inductance. By symmetry one filament of each kind stands for all of that kind.
    pub(super) fn with_copy(&self, height: f64, mean_distance: f64) -> f64 {
        let own = |kind: &[Segment], index: usize| -> f64 {
            let pair = |(other, segment): (usize, &Segment)| {
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
    pub(super) fn with_wire(&self, wire: &Segment, height: f64) -> f64 {
        self.ring().map(|side| below(wire, &side, height)).sum()
    }
}

/// Mutual inductance of a wire and its copy `height` below it, which at 0 is its own inductance.
///
/// Then the share of free ends, (μ0/2π) · mean distance, is left out as in Rosa & Grover's formula
/// for a rectangle: the sides of a closed turn have none.
pub(super) fn wire(one: &Segment, height: f64, mean_distance: f64) -> f64 {
    if height > mean_distance {
        self_inductance(one.length(), height)
    } else {
        self_inductance(one.length(), mean_distance) - MU_0 / TAU * mean_distance
    }
}

/// Mutual inductance of a filament and another that is moved down by `height`.
fn below(one: &Segment, other: &Segment, height: f64) -> f64 {
    mutual(one, &other.shifted([0.0, 0.0, -height]))
}
