//! Distances and sizes of layouts, tidy in both systems of units.

use uom::si::f64::{Length, Ratio};
use uom::si::length::{foot, meter};
use uom::si::ratio::percent;

use super::site::Construction;
use crate::quantity::UnitSystem;

/// A length that is tidy in both systems: so many feet, or so many metres.
#[derive(Clone, Copy, Debug)]
pub struct NominalLength {
    feet: f64,
    metres: f64,
}

impl NominalLength {
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

/// The distance beyond which an exit loop needs a second device instead: 100 ft / 30 m. Common practice.
pub const FAR_EXIT: NominalLength = NominalLength { feet: 100.0, metres: 30.0 };

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

/// The share of the short leg up to which metal is commonly said to be seen: two thirds. A rule of thumb.
pub fn seen_height_share() -> Ratio {
    Ratio::new::<percent>(200.0 / 3.0)
}
