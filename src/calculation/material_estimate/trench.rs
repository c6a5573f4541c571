//! The saw cut of one loop: what is cut, and what fills it.

use std::f64::consts::{FRAC_1_SQRT_2, FRAC_PI_4};

use uom::si::area::square_meter;
use uom::si::f64::{Area, Length, Volume};
use uom::si::length::meter;

use super::job::{Job, LoopJob};
use crate::calculation::subject::{LoopUnderstood, Shape};
use crate::physics::saw;
use crate::practice::materials::{Corner, RodForm, blade_widths};
use crate::practice::site::Construction;
use crate::practice::wires::least_clearance;

/// The cut of one loop with its lead-in.
pub struct Trench {
    /// Width of the loop's slot.
    pub width: Length,
    /// Depth of the loop's slot.
    pub depth: Length,
    /// The depth that wires, rod and the asked cover need.
    pub needed_depth: Length,
    /// What lies over the top wire, up to the pavement.
    pub cover: Length,
    /// The height of the wires, jacket included.
    pub stack: Length,
    /// Straight cuts, the outline cut full.
    pub straight: Length,
    /// Diagonal cuts.
    pub diagonals: Length,
    /// How far the blade runs on past one end for full depth there.
    pub run_out: Length,
    /// The ends of the loop's cuts that run on.
    pub ends: Ends,
    /// Drilled corners.
    pub cores: u32,
    /// The cut of the lead-in; absent where none is sawn.
    pub lead_in: Option<LeadInCut>,
    /// How single wire is held down in it.
    pub rod_form: RodForm,
    /// The rod in the loop's slot and the lead-in's.
    pub rod: Length,
    /// What fills it.
    pub filling: Filling,
}

/// The cut of a lead-in.
pub struct LeadInCut {
    /// Length.
    pub length: Length,
    /// Width.
    pub width: Length,
    /// Depth.
    pub depth: Length,
    /// How far the blade runs on past an end.
    pub run_out: Length,
}

impl LeadInCut {
    /// Where it meets the loop, and where it leaves the slab.
    pub const ENDS: u32 = 2;
}

/// Volumes of one trench.
#[derive(Clone, Copy, Default)]
pub struct Filling {
    /// What the saw takes away.
    pub slot: Volume,
    /// The wires, insulated.
    pub wire: Volume,
    /// The backer rod.
    pub rod: Volume,
    /// What stays open between sealant and pavement.
    pub left_open: Volume,
}

impl Filling {
    /// What the sealant fills.
    pub fn sealant(&self) -> Volume {
        (self.slot - self.wire - self.rod - self.left_open).max(Volume::default())
    }

    /// So many alike.
    pub fn times(self, count: f64) -> Self {
        Self {
            slot: count * self.slot,
            wire: count * self.wire,
            rod: count * self.rod,
            left_open: count * self.left_open,
        }
    }

    /// Both together.
    pub fn plus(self, other: Self) -> Self {
        Self {
            slot: self.slot + other.slot,
            wire: self.wire + other.wire,
            rod: self.rod + other.rod,
            left_open: self.left_open + other.left_open,
        }
    }
}

impl Trench {
    /// All cuts of the surface, with what runs on at their ends.
    pub fn total(&self) -> Length {
        self.straight + self.diagonals + self.overruns() + self.lead_in_length()
    }

    /// What runs on past the ends.
    pub fn overruns(&self) -> Length {
        let lead_in =
            self.lead_in.as_ref().map_or_else(Length::default, |cut| f64::from(LeadInCut::ENDS) * cut.run_out);
        self.ends.length() + lead_in
    }

    /// The ends that run on, those of the lead-in included.
    pub fn all_ends(&self) -> u32 {
        self.ends.full + self.ends.partial + self.lead_in.as_ref().map_or(0, |_| LeadInCut::ENDS)
    }

    /// The cut of the lead-in.
    pub fn lead_in_length(&self) -> Length {
        self.lead_in.as_ref().map_or_else(Length::default, |cut| cut.length)
    }
}

/// The widest that lies across the loop's slot: wire, or the jacket of a preformed loop.
pub fn widest(coil: &LoopUnderstood, construction: Construction) -> Length {
    jacket(coil, construction).unwrap_or(coil.wire.over_insulation)
}

/// The widest of the pair: two wires beside each other where they are twisted on site; a jacketed pair is as wide as its loop.
pub fn widest_of_pair(coil: &LoopUnderstood, construction: Construction) -> Length {
    match construction {
        Construction::HandWound => 2.0 * coil.wire.over_insulation,
        _ => widest(coil, construction),
    }
}

fn jacket(coil: &LoopUnderstood, construction: Construction) -> Option<Length> {
    coil.wire.over_jacket.filter(|_| construction != Construction::HandWound)
}

/// The trench of one loop in a construction; `None` where nothing is sawn.
pub fn dig(one: &LoopJob, construction: Construction, job: &Job) -> Option<Trench> {
    let slot = one.slot(construction)?;
    let coil = &one.coil;
    let winding = coil.winding();
    let rod_form = job.rod.form_for(construction);
    let rod_height = if rod_form == RodForm::Continuous { job.rod.height_in(slot.width) } else { Length::default() };
    let stack = jacket(coil, construction).unwrap_or_else(|| coil.stack());
    let needed_depth = slot.needed_depth(stack + rod_height);
    let depth = slot.depth_to_cut(needed_depth, coil.system);
    let straight = Length::new::<meter>(winding.straight_cut());
    let diagonals = Length::new::<meter>(winding.diagonal_cut());
    let run_out = run_out(depth, job.saw.blade);
    let corner = one.corner(&job.saw);
    let ends = Ends::of(coil, corner, run_out);
    let cores = if corner == Corner::Cored { 4 } else { 0 };
    let lead_in = (one.in_slot > Length::default()).then(|| lead_in(one, construction, slot.width, depth, job));

    let path = Length::new::<meter>(winding.turn_length());
    let bends = if corner == Corner::Diagonal { 8 } else { 4 };
    let loop_rod = job.rod.length_for(rod_form, path, bends);
    let lead_in_rod = job.rod.length_for(rod_form, one.in_slot, 0);
    let insulated = |diameter: Length| FRAC_PI_4 * diameter * diameter;
    let turns = match jacket(coil, construction) {
        Some(jacket) => insulated(jacket),
        None => f64::from(coil.turns) * insulated(coil.wire.over_insulation),
    };
    let pair = 2.0 * insulated(coil.wire.over_insulation);
    let loop_cut = straight + diagonals + ends.length();
    let core = FRAC_PI_4 * job.saw.core * job.saw.core;
    let mut filling = Filling {
        slot: slot.width * depth * (straight + diagonals)
            + slot.width * ends.area(depth, job.saw.blade)
            + f64::from(cores) * (core * depth),
        wire: turns * path,
        rod: job.rod.area_in(slot.width) * loop_rod,
        left_open: slot.width * job.sealant.finish * loop_cut + f64::from(cores) * (core * job.sealant.finish),
    };
    if let Some(cut) = &lead_in {
        let runs = f64::from(LeadInCut::ENDS);
        filling = filling.plus(Filling {
            slot: cut.width * cut.depth * cut.length
                + runs * (cut.width * overrun_area(cut.depth, job.saw.blade, Length::default())),
            wire: pair * cut.length,
            rod: job.rod.area_in(cut.width) * lead_in_rod,
            left_open: cut.width * job.sealant.finish * (cut.length + runs * cut.run_out),
        });
    }
    Some(Trench {
        width: slot.width,
        depth,
        needed_depth,
        cover: depth - stack - rod_height,
        stack,
        straight,
        diagonals,
        run_out,
        ends,
        cores,
        lead_in,
        rod_form,
        rod: loop_rod + lead_in_rod,
        filling,
    })
}

/// The ends of a loop's cuts that must have their full depth, so that the blade runs on past them.
///
/// The sides are cut full, as if corners were sharp. At a sharp corner both must be deep enough, so both run on. A diagonal must at
/// both of its ends; the sides need their depth only where it meets them, so that their run-out lies within the leg that the
/// diagonal spares, or partly so. A drilled corner needs none. The centre slot of a quadrupole ends on two sides.
pub struct Ends {
    /// Ends that run on by the whole run-out.
    pub full: u32,
    /// Ends that run on by what the leg of a corner cut leaves of it.
    pub partial: u32,
    /// The whole run-out.
    run_out: Length,
    /// The leg of the corner cuts.
    leg: Length,
    /// How far past the outline they reach.
    pub reach: Length,
}

impl Ends {
    fn of(coil: &LoopUnderstood, corner: Corner, run_out: Length) -> Self {
        let of_centre = if coil.shape == Shape::Quadrupole { 2 } else { 0 };
        let leg = coil.corner_cut;
        let (full, partial, reach) = match corner {
            Corner::SquareOverrun => (8, 0, run_out),
            Corner::Diagonal if leg < run_out => (8, 8, (FRAC_1_SQRT_2 * run_out).max(run_out - leg)),
            Corner::Diagonal => (8, 0, FRAC_1_SQRT_2 * run_out),
            Corner::Cored => (0, 0, Length::default()),
        };
        let reach = if of_centre > 0 { run_out } else { reach };
        Self { full: full + of_centre, partial, run_out, leg, reach }
    }

    /// The length of all of them.
    pub fn length(&self) -> Length {
        f64::from(self.full) * self.run_out + f64::from(self.partial) * (self.run_out - self.leg)
    }

    fn area(&self, depth: Length, blade: Length) -> Area {
        f64::from(self.full) * overrun_area(depth, blade, Length::default())
            + f64::from(self.partial) * overrun_area(depth, blade, self.leg)
    }
}

fn lead_in(one: &LoopJob, construction: Construction, width: Length, depth: Length, job: &Job) -> LeadInCut {
    let given = &job.lead_in_slot;
    let pair = widest_of_pair(&one.coil, construction);
    let width = given.width.unwrap_or_else(|| {
        let needed = pair + least_clearance();
        if needed <= width {
            return width;
        }
        // A hair, so that a blade that fits exactly does fit.
        blade_widths(one.coil.system).into_iter().find(|blade| *blade >= needed * 0.999_999).unwrap_or(needed)
    });
    let depth = given.depth.unwrap_or_else(|| match given.cover {
        Some(cover) => depth.max(cover + pair),
        None => depth,
    });
    LeadInCut { length: one.in_slot, width, depth, run_out: run_out(depth, job.saw.blade) }
}

fn run_out(depth: Length, blade: Length) -> Length {
    Length::new::<meter>(saw::run_out(depth.get::<meter>(), blade.get::<meter>()))
}

fn overrun_area(depth: Length, blade: Length, beyond: Length) -> Area {
    let [depth, blade, beyond] = [depth, blade, beyond].map(|length| length.get::<meter>());
    Area::new::<square_meter>(saw::run_out_area(depth, blade, beyond))
}
