//! The saw cuts of one loop: its own and that of its lead-in, each made for the bundle of wire that lies in it.

use std::f64::consts::FRAC_PI_4;

use uom::si::f64::{Area, Length, Volume};
use uom::si::length::meter;

use super::cut::{CutEnds, CutGeometry, CutVolumes, blade_that_reaches};
use super::resolved::{ResolvedEstimatedLoop, ResolvedMaterialEstimate};
use crate::calculation::input::{CutPlace, ResolvedLoop, ResolvedSlot, Shape, SlotAllowance};
use crate::physics::saw;
use crate::practice::materials::{Corner, best_width, is_wide_enough};
use crate::practice::site::Construction;

/// The cuts of one loop with its lead-in.
pub struct LoopCuts {
    /// Straight cuts: the outline, without what diagonals spare.
    pub straight: Length,
    /// Diagonal cuts.
    pub diagonals: Length,
    /// Drilled holes: the corners, and the ends of the centre slot of a quadrupole.
    pub cores: u32,
    /// The cut of the loop.
    pub loop_cut: CutGeometry,
    /// The cut of the lead-in; absent where none is sawn.
    pub lead_in_cut: Option<CutGeometry>,
}

impl LoopCuts {
    /// The cuts of one loop in a construction; `None` where nothing is sawn.
    pub fn compute(
        resolved: &ResolvedEstimatedLoop,
        construction: Construction,
        job: &ResolvedMaterialEstimate,
    ) -> Option<Self> {
        let slot = resolved.slots.of(construction)?;
        let coil = &resolved.coil;
        let winding = coil.winding();
        let corner = resolved.corner(&job.saw);
        // A diagonal spares both sides the leg of the corner that it cuts, unless the square is cut full first.
        let spared = if corner == Corner::Diagonal { winding.spared_cut() } else { 0.0 };
        let straight = Length::new::<meter>(winding.straight_cut() - spared);
        let diagonals = Length::new::<meter>(winding.diagonal_cut());
        let path = Length::new::<meter>(winding.turn_length());
        // Wires of both cells of a quadrupole share the centre slot, and so its rod; its ends are two bends and two holes more.
        let (shared, ends_of_centre) = match coil.shape {
            Shape::Rectangle => (Length::default(), 0),
            Shape::Quadrupole => (coil.along_travel, 2),
        };
        let cores = if corner.is_cored() { CORNERS + ends_of_centre } else { 0 };
        let plan = CutPlan {
            place: CutPlace::Loop,
            slot,
            bundle: WireBundle::of_turns(coil, construction),
            path,
            rod_path: path - shared,
            bends: CORNERS * corner.bends() + ends_of_centre,
            length: straight + diagonals,
        };
        let mut loop_cut = plan.cut(resolved, construction, job, |run_out| CutEnds::of_loop(coil, corner, run_out));
        let holes = f64::from(cores) * disc(job.saw.core);
        loop_cut.volumes.slot += holes * loop_cut.depth();
        loop_cut.volumes.left_open += holes * job.sealant.finish;
        loop_cut.volumes = loop_cut.volumes.limited_to_slot();
        let own_slot = resolved.way.own_slot;
        let pairs = PairsInSlot { one: resolved, construction, path: own_slot, length: own_slot, most: 1 };
        let lead_in_cut = (own_slot > Length::default()).then(|| pairs.cut(slot, &loop_cut, job));
        Some(Self { straight, diagonals, cores, loop_cut, lead_in_cut })
    }

    /// Both cuts.
    pub fn iter(&self) -> impl Iterator<Item = &CutGeometry> {
        std::iter::once(&self.loop_cut).chain(&self.lead_in_cut)
    }

    /// The length of all cuts of the surface, with what runs on at their ends.
    pub fn total_length(&self) -> Length {
        self.iter().map(CutGeometry::length).fold(Length::default(), |a, b| a + b)
    }

    /// The volumes of both cuts.
    pub fn volumes(&self) -> CutVolumes {
        self.iter().map(|cut| cut.volumes).fold(CutVolumes::default(), CutVolumes::plus)
    }
}

/// The corners of a loop's outline.
const CORNERS: u32 = 4;

/// The section of what lies in a cut.
struct WireBundle {
    /// The widest that lies across the slot.
    widest: Length,
    /// The widest that must go in as one.
    stiffest: Length,
    /// Its height, wires one on the other.
    height: Length,
    /// The area of the wires that lie along each metre of path.
    area: Area,
}

impl WireBundle {
    /// The turns of a loop. Without the diameter over its jacket a preformed bundle is taken to lie flat: one wire wide, its turns
    /// high.
    fn of_turns(coil: &ResolvedLoop, construction: Construction) -> Self {
        let (widest, height) = (coil.wire.widest(construction), coil.height_in_slot(construction));
        let area = match coil.wire.jacket(construction) {
            Some(jacket) => disc(jacket),
            None => f64::from(coil.turns) * disc(coil.wire.over_insulation),
        };
        Self { widest, stiffest: widest, height, area }
    }

    /// The pair of a lead-in. Twisted on site it is two wires wide and two high. A jacketed pair lies in its loop's own width: as high
    /// as the jacket, or as two wires where that is not known.
    fn of_pair(coil: &ResolvedLoop, construction: Construction) -> Self {
        let wire = coil.wire.over_insulation;
        if let Some(jacket) = coil.wire.jacket(construction) {
            return Self { widest: jacket, stiffest: jacket, height: jacket, area: disc(jacket) };
        }
        let widest = if construction.is_preformed() { wire } else { 2.0 * wire };
        Self { widest, stiffest: wire, height: 2.0 * wire, area: 2.0 * disc(wire) }
    }

    /// The same, so many one on the other. The area stays that of one, for each has a way of its own.
    fn stacked(self, count: u32) -> Self {
        Self { height: f64::from(count) * self.height, ..self }
    }
}

fn disc(diameter: Length) -> Area {
    FRAC_PI_4 * diameter * diameter
}

/// The pairs that lie in one slot.
pub struct PairsInSlot<'a> {
    /// The loop of one of them: they are taken to be alike.
    pub one: &'a ResolvedEstimatedLoop,
    /// How that is made.
    pub construction: Construction,
    /// The way of all of them together.
    pub path: Length,
    /// The length of the slot.
    pub length: Length,
    /// How many lie one on the other, where most do.
    pub most: u32,
}

impl PairsInSlot<'_> {
    /// The cut of the slot, beside a loop whose slot and cut are given.
    pub fn cut(&self, slot: &ResolvedSlot, loop_cut: &CutGeometry, job: &ResolvedMaterialEstimate) -> CutGeometry {
        let (given, resolved) = (&job.lead_in_slot, self.one);
        let bundle = WireBundle::of_pair(&resolved.coil, self.construction).stacked(self.most);
        let usual = if is_wide_enough(loop_cut.width, bundle.widest) {
            loop_cut.width
        } else {
            best_width(bundle.widest, resolved.coil.system)
        };
        let slot = ResolvedSlot {
            width: given.width.unwrap_or(usual.max(job.agency_width())),
            depth: given.depth.unwrap_or(loop_cut.depth()),
            depth_is_fixed: given.depth.is_some(),
            cover: given.cover.unwrap_or(if given.depth.is_some() { slot.cover } else { loop_cut.levels.asked_cover }),
            cover_is_fixed: given.cover.is_some(),
            allowance: SlotAllowance::default(),
        };
        let (path, length) = (self.path, self.length);
        let place = CutPlace::LeadIn;
        let plan = CutPlan { place, slot: &slot, bundle, path, rod_path: length, bends: 0, length };
        let mut cut = plan.cut(resolved, self.construction, job, CutEnds::of_lead_in);
        cut.volumes = cut.volumes.limited_to_slot();
        cut
    }
}

/// What a cut is planned for.
struct CutPlan<'a> {
    place: CutPlace,
    slot: &'a ResolvedSlot,
    bundle: WireBundle,
    /// The way of the bundle.
    path: Length,
    /// The way of the rod.
    rod_path: Length,
    /// The bends of the wire, each with a piece of rod.
    bends: u32,
    /// The length of the cut, without what runs on.
    length: Length,
}

impl CutPlan<'_> {
    fn cut(
        &self,
        resolved: &ResolvedEstimatedLoop,
        construction: Construction,
        job: &ResolvedMaterialEstimate,
        ends: impl Fn(Length) -> CutEnds,
    ) -> CutGeometry {
        let (width, bundle) = (self.slot.width, &self.bundle);
        let slot = ResolvedSlot { allowance: job.slot_allowance(construction, width), ..self.slot.clone() };
        let levels = slot.levels(self.place, bundle.height, resolved.coil.system);
        let rod_form = job.rod.form_for(construction);
        let mut cut = CutGeometry {
            levels,
            plan: self.length,
            width,
            depth_gave_way: levels.depth < slot.depth,
            widest: bundle.widest,
            stiffest: bundle.stiffest,
            rod_form,
            rod: job.rod.length_for(rod_form, self.rod_path, self.bends),
            blade: job.saw.blade,
            ends: ends(Length::default()),
            volumes: CutVolumes::default(),
        };
        // A blade that does not reach is exchanged for a larger one, which runs on farther.
        cut.blade = blade_that_reaches(job.saw.blade, levels.depth);
        cut.ends = ends(Length::new::<meter>(saw::run_out(levels.depth.get::<meter>(), cut.blade.get::<meter>())));
        let area = width * levels.depth;
        let slot: Volume = area * cut.plan + width * cut.ends.area(levels.depth, cut.blade);
        cut.volumes = CutVolumes {
            slot,
            wire: bundle.area * self.path,
            rod: job.rod.area_in(width) * cut.rod,
            left_open: width * levels.finish * cut.length(),
        };
        cut
    }
}
