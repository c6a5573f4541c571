//! The geometry of one saw cut with what lies in it: that of a loop, or that of its lead-in; and the blade that reaches its depth.

use std::f64::consts::FRAC_1_SQRT_2;

use uom::si::area::square_meter;
use uom::si::f64::{Area, Length, Volume};
use uom::si::length::meter;

use crate::calculation::input::{CutLevels, CutPlace, ResolvedLoop, Shape};
use crate::physics::saw;
use crate::practice::materials::{Corner, RodForm, blade_diameters, flange_radius};

/// Relative tolerance of a blade that fits exactly.
const FIT_TOLERANCE: f64 = 1e-6;

/// Whether a blade reaches a depth.
pub fn blade_reaches(blade: Length, depth: Length) -> bool {
    depth <= (blade / 2.0 - flange_radius()) * (1.0 + FIT_TOLERANCE)
}

/// The blade itself where it reaches a depth, else the smallest that does.
pub fn blade_that_reaches(blade: Length, depth: Length) -> Length {
    if blade_reaches(blade, depth) {
        return blade;
    }
    blade_diameters().into_iter().find(|blade| blade_reaches(*blade, depth)).unwrap_or(2.0 * (depth + flange_radius()))
}

/// One cut. Its section is the same all along it.
pub struct CutGeometry {
    /// What lies in it, from the bottom to the pavement.
    pub levels: CutLevels,
    /// The cuts as drawn in plan: outline and diagonals, or the way of the pair; without what runs on past their ends.
    pub plan: Length,
    /// Width.
    pub width: Length,
    /// Whether a depth that nobody sent gave way to slab and steel.
    pub depth_gave_way: bool,
    /// The widest that lies across it: wire, pair or jacket.
    pub widest: Length,
    /// The widest that must go in as one: a wire of a pair can lie over the other, a jacket cannot.
    pub stiffest: Length,
    /// How single wire is held down in it; pieces take none of the cover.
    pub rod_form: RodForm,
    /// The rod in it.
    pub rod: Length,
    /// The diameter of the blade that is loaded for it.
    pub blade: Length,
    /// Its ends.
    pub ends: CutEnds,
    /// What fills it.
    pub volumes: CutVolumes,
}

impl CutGeometry {
    /// What lies in it.
    pub fn place(&self) -> CutPlace {
        self.levels.place
    }

    /// Depth.
    pub fn depth(&self) -> Length {
        self.levels.depth
    }

    /// Its whole length, with what runs on past its ends.
    pub fn length(&self) -> Length {
        self.plan + self.ends.length()
    }
}

/// Volumes of one cut.
#[derive(Clone, Copy, Default)]
pub struct CutVolumes {
    /// What the saw takes away.
    pub slot: Volume,
    /// The wires, insulated.
    pub wire: Volume,
    /// The backer rod.
    pub rod: Volume,
    /// What stays open between sealant and pavement.
    pub left_open: Volume,
}

impl CutVolumes {
    /// The same, with no more in it than the slot holds, so that the parts add up. A finding names what does not fit.
    pub fn limited_to_slot(self) -> Self {
        let wire = self.wire.min(self.slot);
        let rod = self.rod.min(self.slot - wire);
        Self { wire, rod, left_open: self.left_open.min(self.slot - wire - rod), ..self }
    }

    /// What the sealant fills.
    pub fn sealant(&self) -> Volume {
        (self.slot - self.wire - self.rod - self.left_open).max(Volume::default())
    }

    /// Those of `count` cuts that are alike.
    pub fn times(self, count: f64) -> Self {
        Self {
            slot: count * self.slot,
            wire: count * self.wire,
            rod: count * self.rod,
            left_open: count * self.left_open,
        }
    }

    /// The sum of both.
    pub fn plus(self, other: Self) -> Self {
        Self {
            slot: self.slot + other.slot,
            wire: self.wire + other.wire,
            rod: self.rod + other.rod,
            left_open: self.left_open + other.left_open,
        }
    }
}

/// The ends of a cut that must have their full depth, so that the blade runs on past them.
///
/// At a sharp corner both sides must be deep enough, so both run on. At a diagonal corner the sides end at the diagonal: both of its ends
/// and both sides run on. Where the square is cut full first, the sides need their depth only where the diagonal meets them, so that
/// their run-out lies within the leg that the diagonal spares, or partly so. A drilled corner needs none. The centre slot of a
/// quadrupole ends on two sides, and there is drilled as well where corners are. A lead-in must be deep where it meets the loop and
/// where it leaves the slab.
pub struct CutEnds {
    /// Ends that run on by the whole run-out.
    pub full: u32,
    /// Ends that run on by what the leg of a corner cut leaves of it.
    pub partial: u32,
    /// The whole run-out.
    pub run_out: Length,
    /// The leg of the corner cuts.
    leg: Length,
    /// How far past the outline they reach.
    pub reach: Length,
}

impl CutEnds {
    /// Those of a loop.
    pub fn of_loop(coil: &ResolvedLoop, corner: Corner, run_out: Length) -> Self {
        let (leg, none) = (coil.corner_cut, Length::default());
        let (full, partial, reach) = match corner {
            Corner::SquareOverrun => (8, 0, run_out),
            Corner::Diagonal => (16, 0, (FRAC_1_SQRT_2 * run_out).max(run_out - leg)),
            Corner::DiagonalFull if leg < run_out => (8, 8, (FRAC_1_SQRT_2 * run_out).max(run_out - leg)),
            Corner::DiagonalFull => (8, 0, FRAC_1_SQRT_2 * run_out),
            Corner::Cored => (0, 0, none),
        };
        let of_centre = match coil.shape {
            Shape::Quadrupole if !corner.is_cored() => 2,
            Shape::Quadrupole | Shape::Rectangle => 0,
        };
        let reach = if of_centre > 0 { run_out } else { reach };
        Self { full: full + of_centre, partial, run_out, leg, reach }
    }

    /// Those of a lead-in.
    pub fn of_lead_in(run_out: Length) -> Self {
        Self { full: 2, partial: 0, run_out, leg: Length::default(), reach: run_out }
    }

    /// How many run on.
    pub fn count(&self) -> u32 {
        self.full + self.partial
    }

    /// The length of all of them.
    pub fn length(&self) -> Length {
        f64::from(self.full) * self.run_out + f64::from(self.partial) * (self.run_out - self.leg)
    }

    /// What the blade takes at all of them, seen from the side.
    pub fn area(&self, depth: Length, blade: Length) -> Area {
        let beyond = |from: Length| {
            let [depth, blade, from] = [depth, blade, from].map(|length| length.get::<meter>());
            Area::new::<square_meter>(saw::run_out_area(depth, blade, from))
        };
        f64::from(self.full) * beyond(Length::default()) + f64::from(self.partial) * beyond(self.leg)
    }
}
