//! Distances and sizes of layouts, tidy in both systems of units.

use uom::si::f64::{Length, Ratio, Velocity};
use uom::si::length::{foot, meter};
use uom::si::ratio::percent;
use uom::si::velocity::meter_per_second;

use super::site::Construction;
use crate::quantity::UnitSystem;

/// A length that is tidy in both systems: so many feet, or so many metres.
#[derive(Clone, Copy, Debug)]
pub struct NominalLength {
    feet: f64,
    metres: f64,
}

impl NominalLength {
    /// So many feet, or so many metres.
    pub const fn new(feet: f64, metres: f64) -> Self {
        Self { feet, metres }
    }

    /// Rounds a length down to whole multiples of this one.
    pub fn floor(self, length: Length, system: UnitSystem) -> Length {
        // The small number keeps 20 ft that arrives as 19.999… from becoming 19 ft.
        self.multiple(|steps| (steps + 1e-9).floor(), length, system)
    }

    /// Rounds a length up to whole multiples of this one.
    pub fn ceil(self, length: Length, system: UnitSystem) -> Length {
        self.multiple(|steps| (steps - 1e-9).ceil(), length, system)
    }

    fn multiple(self, round: impl Fn(f64) -> f64, length: Length, system: UnitSystem) -> Length {
        match system {
            UnitSystem::UsCustomary => Length::new::<foot>(round(length.get::<foot>() / self.feet) * self.feet),
            UnitSystem::Metric => Length::new::<meter>(round(length.get::<meter>() / self.metres) * self.metres),
        }
    }

    /// The length in the given system.
    pub fn in_system(self, system: UnitSystem) -> Length {
        match system {
            UnitSystem::UsCustomary => Length::new::<foot>(self.feet),
            UnitSystem::Metric => Length::new::<meter>(self.metres),
        }
    }
}

/// The usual leg along travel: 6 ft / 1.8 m. Common practice.
pub const USUAL_LEG: NominalLength = NominalLength { feet: 6.0, metres: 1.8 };
/// The shortest leg along travel of a loop that holds a gate, and the short leg where only cars and pickups come: 4 ft / 1.2 m. Common practice.
pub const SHORT_LEG: NominalLength = NominalLength { feet: 4.0, metres: 1.2 };
/// The longest leg along travel that the sizing tries: 12 ft / 3.6 m. A choice made here.
pub const MAX_LEG: NominalLength = NominalLength { feet: 12.0, metres: 3.6 };
/// The leg along travel of the narrow loop at a drive-through window: 2 ft / 0.6 m. Common practice.
pub const WINDOW_LEG: NominalLength = NominalLength { feet: 2.0, metres: 0.6 };
/// The clear strip between the loop and the edge of the opening: 2 ft / 0.6 m. Common practice.
pub const EDGE_SETBACK: NominalLength = NominalLength { feet: 2.0, metres: 0.6 };
/// The same beside traffic that must not be seen: 3 ft / 0.9 m. Common practice.
pub const EDGE_SETBACK_BESIDE_TRAFFIC: NominalLength = NominalLength { feet: 3.0, metres: 0.9 };
/// The least setback in a narrow opening: 0.5 ft / 0.15 m. A choice made here.
pub const MIN_EDGE_SETBACK: NominalLength = NominalLength { feet: 0.5, metres: 0.15 };
/// The leg across that a narrow opening should keep before its setback is cut: 4 ft / 1.2 m. A choice made here.
pub const MIN_ACROSS: NominalLength = NominalLength { feet: 4.0, metres: 1.2 };
/// The step of tidy sizes: 1 ft / 0.1 m.
pub const STEP: NominalLength = NominalLength { feet: 1.0, metres: 0.1 };
/// Half of it, where a loop must keep between two bounds: 6 in / 0.05 m.
pub const HALF_STEP: NominalLength = NominalLength { feet: 0.5, metres: 0.05 };
/// The step from a loop to the next larger or smaller one offered: 1 ft / 0.3 m.
pub const ALTERNATIVE_STEP: NominalLength = NominalLength { feet: 1.0, metres: 0.3 };
/// The least distance from a metal leaf: 4 ft / 1.2 m. Common practice.
pub const LEAF_CLEARANCE: NominalLength = NominalLength { feet: 4.0, metres: 1.2 };
/// The clear strip between a thin arm and a loop beside it: 1 ft / 0.3 m. A choice made here.
pub const ARM_CLEARANCE: NominalLength = NominalLength { feet: 1.0, metres: 0.3 };
/// The least gap between neighbouring loops: 3 ft / 0.9 m. A choice made here; two 6 x 6 ft loops couple by 0.6 % across it.
pub const NEIGHBOUR_GAP: NominalLength = NominalLength { feet: 3.0, metres: 0.9 };
/// How far a vehicle keeps off an open swing leaf: 1 ft / 0.3 m. A choice made here.
pub const LEAF_MARGIN: NominalLength = NominalLength { feet: 1.0, metres: 0.3 };
/// The least distance of a loop's leg from a leaf that stands open beside it: 2 ft / 0.6 m. Common practice.
pub const OPEN_LEAF_CLEARANCE: NominalLength = NominalLength { feet: 2.0, metres: 0.6 };
/// How far past the line of an arm every tail must be when the unit lets go: 1 ft / 0.3 m. A choice made here.
pub const PAST_THE_ARM: NominalLength = NominalLength { feet: 1.0, metres: 0.3 };
/// How much of a closing loop stays before the line of the arm where it is moved towards travel: 1 ft / 0.3 m. A choice made here: a nose
/// under the arm is seen.
pub const BEFORE_THE_ARM: NominalLength = NominalLength { feet: 1.0, metres: 0.3 };
/// How far off the edge of the opening traffic in the next lane passes: 1 ft / 0.3 m. A choice made here.
pub const NEXT_LANE_MARGIN: NominalLength = NominalLength { feet: 1.0, metres: 0.3 };
/// The most loops one behind the other in the sweep of a leaf. A choice made here: the channels of one scanning unit.
pub const MAX_IN_SWEEP: usize = 4;
/// The length of a single swing leaf over which a pair of leaves serves better: 20 ft / 6 m. A choice made here: one loop no longer
/// sees all of its sweep.
pub const LONG_SINGLE_LEAF: NominalLength = NominalLength { feet: 20.0, metres: 6.0 };
/// From the lowest turn down to reinforcing mesh whose depth nobody sent: 2 in / 50 mm. A choice made here: the least that is kept.
pub const MESH_BELOW_LOOP: NominalLength = NominalLength { feet: 2.0 / 12.0, metres: 0.05 };
/// The smallest and the largest loops at openings, legs along travel and across: 4 x 6 ft to 6 x 20 ft. A choice made here, for a loop of
/// which no size is known.
pub const USUAL_LOOP_SIZES: [[NominalLength; 2]; 2] = [
    [NominalLength { feet: 4.0, metres: 1.2 }, NominalLength { feet: 6.0, metres: 1.8 }],
    [NominalLength { feet: 6.0, metres: 1.8 }, NominalLength { feet: 20.0, metres: 6.0 }],
];
/// From the gate to the unit beside it, for a loop that lies so far away that the lead-in sent does not reach: 10 ft / 3 m. A choice made
/// here.
pub const WAY_TO_UNIT: NominalLength = NominalLength { feet: 10.0, metres: 3.0 };
/// The corner cut of a loop that is wound in a saw cut: 12 in / 0.3 m, as on the standard test loop.
pub const CORNER_CUT: NominalLength = NominalLength { feet: 1.0, metres: 0.3 };
/// The corner cut that a construction usually gets in a loop with this short leg: none where nothing is sawn, half of it for a jacket
/// that bends by itself and for small loops, a quarter of the short leg at the most. A choice made here.
pub fn usual_corner_cut(construction: Construction, short: Length, system: UnitSystem) -> Length {
    let usual = CORNER_CUT.in_system(system);
    let cut = match construction {
        Construction::PreformedDirectBurial => Length::default(),
        Construction::HandWound if short >= SHORT_LEG.in_system(system) => usual,
        Construction::HandWound | Construction::PreformedSawCut => usual / 2.0,
    };
    cut.min(0.25 * short)
}

/// The farthest that an exit loop is laid from the gate: 100 ft / 30 m. A choice made here: beyond it a second device serves better.
pub const FARTHEST_EXIT: NominalLength = NominalLength { feet: 100.0, metres: 30.0 };

/// The gap between loops side by side that share an opening: 1 ft / 0.3 m. A choice made here: a car over it still covers enough of
/// both, and a unit that scans its channels in turn does not mind their coupling of 3 %.
pub const ROW_GAP: NominalLength = NominalLength { feet: 1.0, metres: 0.3 };
/// The least leg across of a loop in such a row: 4 ft / 1.2 m. A choice made here.
pub const MIN_ROW_LEG: NominalLength = NominalLength { feet: 4.0, metres: 1.2 };
/// The most loops side by side. A choice made here: the channels of one scanning unit.
pub const MAX_SIDE_BY_SIDE: usize = 4;

/// From the side wire inwards to the line that two-wheelers are calibrated on: 0.3 m in both systems. A choice made here.
pub fn two_wheeler_inset() -> Length {
    Length::new::<meter>(0.3)
}

/// How slowly a vehicle may come from the exit loop to the gate: walking pace, 1.4 m/s. A choice made here.
pub fn slowest_approach() -> Velocity {
    Velocity::new::<meter_per_second>(1.4)
}

/// The share of the short leg up to which metal is commonly said to be seen: two thirds. A rule of thumb.
pub fn seen_height_share() -> Ratio {
    Ratio::new::<percent>(200.0 / 3.0)
}
