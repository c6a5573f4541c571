//! The saw cuts of one loop: its own and that of its lead-in.

use std::f64::consts::FRAC_PI_4;

use uom::si::f64::{Area, Length, Volume};
use uom::si::length::meter;

use super::blade;
use super::cut::{Cut, Ends, Filling, Place};
use super::job::{Job, LoopJob};
use crate::calculation::input::{ResolvedLoop, ResolvedSlot, Shape};
use crate::physics::saw;
use crate::practice::materials::{Corner, RodForm, best_width};
use crate::practice::site::Construction;
use crate::practice::wires::least_clearance;

/// The cuts of one loop with its lead-in.
pub struct Trench {
    /// Straight cuts, the outline cut full.
    pub straight: Length,
    /// Diagonal cuts.
    pub diagonals: Length,
    /// Drilled holes: the corners, and the ends of the centre slot of a quadrupole.
    pub cores: u32,
    /// The cut of the loop.
    pub of_loop: Cut,
    /// The cut of the lead-in; absent where none is sawn.
    pub lead_in: Option<Cut>,
}

impl Trench {
    /// Both cuts.
    pub fn cuts(&self) -> impl Iterator<Item = &Cut> {
        std::iter::once(&self.of_loop).chain(&self.lead_in)
    }

    /// All cuts of the surface, with what runs on at their ends.
    pub fn total(&self) -> Length {
        self.cuts().map(Cut::length).fold(Length::default(), |a, b| a + b)
    }

    /// What runs on past the ends.
    pub fn overruns(&self) -> Length {
        self.cuts().map(|cut| cut.ends.length()).fold(Length::default(), |a, b| a + b)
    }

    /// The ends that run on.
    pub fn ends(&self) -> u32 {
        self.cuts().map(|cut| cut.ends.count()).sum()
    }

    /// The cut of the lead-in, without what runs on.
    pub fn lead_in_length(&self) -> Length {
        self.lead_in.as_ref().map_or_else(Length::default, |cut| cut.plan)
    }

    /// What fills it.
    pub fn filling(&self) -> Filling {
        self.cuts().map(|cut| cut.filling).fold(Filling::default(), Filling::plus)
    }
}

/// What lies in a cut, in section.
struct Bundle {
    /// Across the slot.
    widest: Length,
    /// The widest that must go in as one.
    stiffest: Length,
    /// Over one another.
    height: Length,
    /// Of the wires that lie along each metre of path.
    area: Area,
}

fn disc(diameter: Length) -> Area {
    FRAC_PI_4 * diameter * diameter
}

/// The diameter over the jacket, where the loop has one and it is known.
fn jacket(coil: &ResolvedLoop, construction: Construction) -> Option<Length> {
    coil.wire.over_jacket.filter(|_| construction != Construction::HandWound)
}

/// The turns of a loop. Without the diameter over its jacket a preformed bundle is taken to lie flat: one wire wide, its turns high.
fn turns(coil: &ResolvedLoop, construction: Construction) -> Bundle {
    let wire = coil.wire.over_insulation;
    match jacket(coil, construction) {
        // Those of both cells lie in the centre slot of a quadrupole.
        Some(jacket) => {
            let high = if coil.shape == Shape::Quadrupole { 2.0 } else { 1.0 };
            Bundle { widest: jacket, stiffest: jacket, height: high * jacket, area: disc(jacket) }
        }
        None => Bundle { widest: wire, stiffest: wire, height: coil.stack(), area: f64::from(coil.turns) * disc(wire) },
    }
}

/// The pair. Twisted on site it is two wires wide and two high; a jacketed pair lies in its loop's own width, as high as the jacket,
/// or as two wires where that is not known.
fn pair(coil: &ResolvedLoop, construction: Construction) -> Bundle {
    let wire = coil.wire.over_insulation;
    let area = 2.0 * disc(wire);
    match (jacket(coil, construction), construction) {
        (Some(jacket), _) => Bundle { widest: jacket, stiffest: jacket, height: jacket, area: disc(jacket) },
        (None, Construction::HandWound) => Bundle { widest: 2.0 * wire, stiffest: wire, height: 2.0 * wire, area },
        (None, _) => Bundle { widest: wire, stiffest: wire, height: 2.0 * wire, area },
    }
}

/// The widest that lies across the slot of a loop.
pub fn widest(coil: &ResolvedLoop, construction: Construction) -> Length {
    turns(coil, construction).widest
}

/// The trench of one loop in a construction; `None` where nothing is sawn.
pub fn dig(one: &LoopJob, construction: Construction, job: &Job) -> Option<Trench> {
    let slot = one.slot(construction)?;
    let coil = &one.coil;
    let winding = coil.winding();
    let corner = one.corner(&job.saw);
    let bundle = turns(coil, construction);
    let straight = Length::new::<meter>(winding.straight_cut());
    let diagonals = Length::new::<meter>(winding.diagonal_cut());
    let path = Length::new::<meter>(winding.turn_length());
    let is_double = coil.shape == Shape::Quadrupole;
    // Wires of both cells share the centre slot, and so its rod; its ends are two bends more.
    let shared = if is_double { coil.along_travel } else { Length::default() };
    let (bends_of_corners, holes) = (if corner == Corner::Diagonal { 8 } else { 4 }, if is_double { 6 } else { 4 });
    let bends = bends_of_corners + if is_double { 2 } else { 0 };
    let cores = if corner == Corner::Cored { holes } else { 0 };
    let dug =
        Dig { place: Place::Loop, slot, bundle, path, rod_path: path - shared, bends, plan: straight + diagonals };
    let mut of_loop = dug.cut(one, construction, job, |run_out| Ends::of_loop(coil, corner, run_out));
    let holes = f64::from(cores) * disc(job.saw.core);
    of_loop.filling.slot += holes * of_loop.depth;
    of_loop.filling.left_open += holes * job.sealant.finish;
    of_loop.filling = of_loop.filling.fitted();
    let lead_in = (one.in_slot > Length::default()).then(|| lead_in(one, construction, slot, &of_loop, job));
    Some(Trench { straight, diagonals, cores, of_loop, lead_in })
}

fn lead_in(one: &LoopJob, construction: Construction, slot: &ResolvedSlot, of_loop: &Cut, job: &Job) -> Cut {
    let given = &job.lead_in_slot;
    let bundle = pair(&one.coil, construction);
    let has_room = bundle.widest + least_clearance() <= of_loop.width * 1.000_001;
    let usual = if has_room { of_loop.width } else { best_width(bundle.widest, one.coil.system) };
    let slot = ResolvedSlot {
        width: given.width.unwrap_or(usual.max(job.agency_width())),
        depth: given.depth.unwrap_or(of_loop.depth),
        depth_is_fixed: given.depth.is_some(),
        cover: given.cover.unwrap_or(slot.cover),
    };
    let path = one.in_slot;
    let dug = Dig { place: Place::LeadIn, slot: &slot, bundle, path, rod_path: path, bends: 0, plan: path };
    let mut cut = dug.cut(one, construction, job, Ends::of_lead_in);
    cut.filling = cut.filling.fitted();
    cut
}

/// What a cut is made of.
struct Dig<'a> {
    place: Place,
    slot: &'a ResolvedSlot,
    bundle: Bundle,
    /// The way of the bundle.
    path: Length,
    /// The way of the rod.
    rod_path: Length,
    bends: u32,
    plan: Length,
}

impl Dig<'_> {
    fn cut(&self, one: &LoopJob, construction: Construction, job: &Job, ends: impl Fn(Length) -> Ends) -> Cut {
        let (width, bundle) = (self.slot.width, &self.bundle);
        let rod_form = job.rod.form_for(construction);
        let mut cut = Cut {
            place: self.place,
            plan: self.plan,
            width,
            depth: self.slot.depth,
            asked_cover: self.slot.cover,
            finish: job.sealant.finish,
            widest: bundle.widest,
            stiffest: bundle.stiffest,
            stack: bundle.height,
            rod_form,
            rod_height: if rod_form == RodForm::Continuous { job.rod.height_in(width) } else { Length::default() },
            rod: job.rod.length_for(rod_form, self.rod_path, self.bends),
            blade: job.saw.blade,
            ends: ends(Length::default()),
            filling: Filling::default(),
        };
        cut.depth = self.slot.depth_to_cut(cut.needed_depth(), one.coil.system);
        // A blade that does not reach is exchanged, and the larger one runs on farther.
        cut.blade = blade::that_reaches(job.saw.blade, cut.depth);
        cut.ends = ends(Length::new::<meter>(saw::run_out(cut.depth.get::<meter>(), cut.blade.get::<meter>())));
        let area = width * cut.depth;
        let slot: Volume = area * cut.plan + width * cut.ends.area(cut.depth, cut.blade);
        cut.filling = Filling {
            slot,
            wire: bundle.area * self.path,
            rod: job.rod.area_in(width) * cut.rod,
            left_open: width * cut.finish * cut.length(),
        };
        cut
    }
}
