//! A two-wheeler: one shorted turn that stands upright along travel.

use super::super::filament::{NEUMANN, Point3, self_inductance};
use super::potential::Facing;
use super::primary::PrimaryLoop;

/// An upright rectangular turn of round conductor, shorted, in the direction of travel. Metres.
///
/// Stands for a machine that is tall and long but not wide. Only the loop's wires along travel, and
/// corner cuts, couple with it: over the middle of a loop their fluxes cancel.
///
/// Valid for sides that are long against `radius`; its resistance is left out, so the change is an
/// upper bound.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UprightTurn {
    length: f64,
    height: f64,
    inductance: f64,
}

impl UprightTurn {
    /// A turn of a horizontal side along travel, a vertical one, and the radius of its conductor, which carries the current on its surface.
    pub fn new(length: f64, height: f64, radius: f64) -> Self {
        let side = |length, other| self_inductance(length, radius) - self_inductance(length, other);
        Self { length, height, inductance: 2.0 * (side(length, height) + side(height, length)) }
    }

    /// Self-inductance in henry.
    ///
    /// Source: Rosa & Grover, NBS Bulletin 8 no. 1, rectangle of round wire with the current on its
    /// surface. DIFFERENCE: the free ends of the sides count here, (μ0/2π) · radius each, which that formula leaves out; the
    /// radii that stand for two-wheelers were fitted with them. Worked number: 1 × 1 m, radius 1 mm, 4.9078 µH, where the formula
    /// gives 4.9070.
    pub const fn inductance(&self) -> f64 {
        self.inductance
    }

    /// Mutual inductance in henry with a loop, of either sign.
    ///
    /// `foot` is the middle of the lower side, in the loop's axes: its height counts from the top
    /// wire and is positive. Source: Neumann's integral over parallel filaments.
    pub fn mutual(&self, primary: &PrimaryLoop, foot: Point3) -> f64 {
        let [x, y, z] = foot;
        let (front, back, top) = (y + 0.5 * self.length, y - 0.5 * self.length, z + self.height);
        let corners = [[x, front, top], [x, front, z], [x, back, top], [x, back, z]];
        let potentials = primary.potentials_at(Facing::Across, corners);
        NEUMANN * (potentials[0] - potentials[1] - (potentials[2] - potentials[3]))
    }

    /// Fall of the loop's inductance in henry, M²/L₂ of a lossless shorted secondary.
    ///
    /// Source: circuit theory. Worked number: 1.25 × 0.6 m, radius 22.9 mm, 0.6 m beside the centre
    /// of a 6 × 6 ft loop of 3 turns and 0.18 m over its wire: 0.104 µH of 77.0 µH.
    pub fn change(&self, primary: &PrimaryLoop, foot: Point3) -> f64 {
        self.mutual(primary, foot).powi(2) / self.inductance
    }
}
