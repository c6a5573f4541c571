//! A loop as the wire lies: turns of straight filaments, stacked in a saw cut.
//!
//! `L = Σ self + Σ mutual` over all filaments. Turns are alike and lie at equal steps of depth, so
//! a pair of turns is worked out once for each step, and within it once for each kind of side.

mod turn;

use super::filament::{Filament, Point3, mutual};
use std::f64::consts::SQRT_2;
use turn::{TurnFilaments, wire};

pub use turn::WindingShape;

/// A wound loop, centred on the origin; all lengths in metres.
///
/// Valid for sides that are long against the pitch, and a pitch of at least the wire's diameter.
/// Source: Neumann's integral, with the geometric mean distance of Rosa & Grover, NBS Bulletin 8
/// no. 1. Worked number: 6 × 6 ft of 14 AWG at a pitch of 0.150 in, 3 turns, 76.97 µH.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Winding {
    /// How the wire goes round.
    pub shape: WindingShape,
    /// Size in the direction of travel.
    pub along: f64,
    /// Size across the lane; of both cells together in a quadrupole.
    pub across: f64,
    /// Leg that a diagonal removes from each outer corner, 0 for sharp ones. More than half the
    /// smaller size counts as half. A leg of a·(1 - 1/√2) makes a square of side a an octagon.
    pub corner_cut: f64,
    /// Times that the wire goes round (each cell).
    pub turns: u32,
    /// Distance of stacked wires from centre to centre.
    pub pitch: f64,
    /// Radius of the bare wire.
    pub wire_radius: f64,
}

/// Some wires of a loop that share one place, for sums in which their stacking does not matter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strand {
    /// Place and direction of the current, at the mean depth of the wires.
    pub segment: Filament,
    /// How many wires run there.
    pub wires: f64,
}

impl Winding {
    /// Wire of one turn in metres, all cells. Worked number: 6 × 6 ft with corner cuts of 12 in,
    /// 6.601 m (21.66 ft).
    pub fn turn_length(&self) -> f64 {
        // A diagonal is √2 legs long and replaces two.
        self.straight_cut() + self.centre_slot() - 4.0 * self.leg() * (2.0 - SQRT_2)
    }

    /// Wire of all turns in metres, without the tails. Worked number: 3 turns of 6 × 6 ft, 21.946 m
    /// (72 ft).
    pub fn wire_length(&self) -> f64 {
        f64::from(self.turns) * self.turn_length()
    }

    /// Straight saw cuts in metres: the outline cut full, as if its corners were sharp, and the
    /// centre slot of a quadrupole. Worked number: 6 × 6 ft, 7.315 m (24 ft).
    pub fn straight_cut(&self) -> f64 {
        2.0 * (self.along + self.across) + self.centre_slot()
    }

    /// Diagonal saw cuts of the four corners in metres. Worked number: legs of 12 in, 1.724 m
    /// (5.66 ft), which with the straight ones of a 6 × 6 ft loop makes 29.66 ft.
    pub fn diagonal_cut(&self) -> f64 {
        4.0 * self.leg() * SQRT_2
    }

    /// What the diagonals spare of the straight saw cuts in metres, where the sides end at them: both legs of four corners.
    pub fn spared_cut(&self) -> f64 {
        8.0 * self.leg()
    }

    /// Self-inductance in henry, in free space and without capacitance.
    ///
    /// `internal_factor` is Y of the wire, from 1/4 (low frequency) to 0; see
    /// [`skin_effect`](super::conductor::skin_effect). Worked number: a square of 1 m, one turn of
    /// 1 mm radius, 5.1070 µH at Y = 1/4 and 4.9070 µH at 0.
    pub fn inductance(&self, internal_factor: f64) -> f64 {
        let mean_distance = self.wire_radius * (-internal_factor).exp();
        self.sum_levels(levels_apart, mean_distance, |step| f64::from(step) * self.pitch)
    }

    /// Mutual inductance in henry with the loop's own image in a perfectly conducting plane,
    /// `plane_depth` metres below the centre of the lowest wire.
    ///
    /// L less this is the inductance above the plane: the worst that steel below can do, as a mesh
    /// is no sheet. Source: method of images. Worked number: 6 × 6 ft, 3 turns at 0.150 in, the plane
    /// 3.85 in below the lowest wire and so 4 in below the middle one, 20.2 µH of 77.0 µH (26.2 %).
    pub fn mirror_mutual(&self, plane_depth: f64) -> f64 {
        let deepest = self.stack().saturating_sub(1);
        let lowest = 2.0 * (plane_depth + f64::from(deepest) * self.pitch);
        self.sum_levels(levels_together, self.wire_radius, |step| lowest - f64::from(step) * self.pitch)
    }

    /// Mutual inductance in henry with another loop whose centre lies at `offset` from this one's,
    /// positive when a current in one makes flux of its own sense through the other. So it is
    /// negative for neighbours side by side that are wound the same way.
    ///
    /// No wire of one may lie on a wire of the other. Worked number: two squares of 6 × 6 ft, one
    /// turn each, 16 in above one another, 1.38976 µH.
    pub fn mutual(&self, other: &Winding, offset: Point3) -> f64 {
        let theirs: Vec<Filament> = other.wires().map(|wire| wire.shifted(offset)).collect();
        self.wires().map(|wire| theirs.iter().map(|their| mutual(&wire, their)).sum::<f64>()).sum()
    }

    /// Coupling coefficient with another loop, signed like [`Winding::mutual`]: M / √(L₁ L₂).
    ///
    /// Worked number: two 6 × 6 ft loops of 3 turns, a gap of 3 ft between them, -0.0094.
    pub fn coupling(&self, other: &Winding, offset: Point3, internal_factor: f64) -> f64 {
        let own = self.inductance(internal_factor) * other.inductance(internal_factor);
        self.mutual(other, offset) / own.sqrt()
    }

    /// The loop as seen from a distance that is long against the stack: one outline at the mean
    /// depth of its wires, each strand with the number of wires in it.
    ///
    /// Worked number: a sharp rectangle has 4 strands, a quadrupole with corner cuts 11.
    pub fn outline(&self) -> Vec<Strand> {
        let turn = self.turn();
        let strand = |segment: Filament, wires: u32| Strand {
            segment: segment.shifted([0.0, 0.0, -0.5 * self.pitch * f64::from(wires.max(1) - 1)]),
            wires: f64::from(wires),
        };
        turn.ring()
            .map(|side| strand(side, self.turns))
            .chain(turn.centre.map(|slot| strand(slot, self.stack())))
            .collect()
    }

    /// The filaments of one turn.
    fn turn(&self) -> TurnFilaments {
        TurnFilaments::new(self.shape, self.across, self.along, self.leg())
    }

    /// The legs of the corner cuts, as far as the sides allow.
    fn leg(&self) -> f64 {
        let most = 0.5 * self.along.min(self.across);
        self.corner_cut.max(0.0).min(most)
    }

    fn centre_slot(&self) -> f64 {
        match self.shape {
            WindingShape::Rectangle => 0.0,
            WindingShape::Quadrupole => self.along,
        }
    }

    /// Wires in the fullest slot.
    fn stack(&self) -> u32 {
        match self.shape {
            WindingShape::Rectangle => self.turns,
            WindingShape::Quadrupole => self.turns.saturating_mul(2),
        }
    }

    /// Every filament at its own depth.
    fn wires(&self) -> impl Iterator<Item = Filament> {
        let turn = self.turn();
        let stacked = |segment: Filament, wires: u32| {
            let pitch = self.pitch;
            (0..wires).map(move |level| segment.shifted([0.0, 0.0, -pitch * f64::from(level)]))
        };
        let ring: Vec<Filament> = turn.ring().flat_map(|side| stacked(side, self.turns)).collect();
        let centre = turn.centre.map(|slot| stacked(slot, self.stack()));
        ring.into_iter().chain(centre.into_iter().flatten())
    }

    /// Sum over all pairs of a wire of this loop and one of its copy, in groups of one height.
    ///
    /// `count(n, m, step)` is the number of pairs of levels, from stacks of n and m wires, which
    /// `height(step)` separates. Wires closer than `mean_distance` to themselves lie at that.
    fn sum_levels(&self, count: fn(u32, u32, u32) -> u32, mean_distance: f64, height: impl Fn(u32) -> f64) -> f64 {
        let turn = self.turn();
        let (ring, stack) = (self.turns, self.stack());
        (0..stack.saturating_mul(2))
            .map(|step| {
                let pairs = |n, m| f64::from(count(n, m, step));
                let height = height(step);
                let mut sum = 0.0;
                if count(ring, ring, step) > 0 {
                    sum += pairs(ring, ring) * turn.with_copy(height, mean_distance);
                }
                if let Some(slot) = turn.centre
                    && count(stack, stack, step) > 0
                {
                    sum += pairs(stack, stack) * wire(&slot, height, mean_distance);
                    sum += 2.0 * pairs(ring, stack) * turn.with_wire(&slot, height);
                }
                sum
            })
            .sum()
    }
}

/// How many pairs of levels, from stacks of n and m, are `step` apart.
fn levels_apart(n: u32, m: u32, step: u32) -> u32 {
    let down = n.min(m.saturating_sub(step));
    let up = m.min(n.saturating_sub(step));
    if step == 0 { down } else { down + up }
}

/// How many pairs of levels, from stacks of n and m, have numbers that add to `step`.
fn levels_together(n: u32, m: u32, step: u32) -> u32 {
    let first = (step + 1).saturating_sub(m);
    n.min(step + 1).saturating_sub(first)
}

/// The installer's rule for the inductance in henry, P·(N² + N)/4 in µH with P in feet.
///
/// `perimeter` in metres, for a plain rectangle 2·(along + across); blind to wire, pitch and
/// corners. Common practice, no source: within about +14 and -17 % of the filament sum for loops
/// 6 ft wide. Worked number: 24 ft, 3 turns, 72 µH.
pub fn quick_rule(perimeter: f64, turns: u32) -> f64 {
    const METRES_PER_FOOT: f64 = 0.3048;
    let turns = f64::from(turns);
    perimeter / METRES_PER_FOOT * (turns * turns + turns) / 4.0 * 1e-6
}

#[cfg(test)]
mod tests;
