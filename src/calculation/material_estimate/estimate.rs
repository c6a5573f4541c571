//! The job in a choice of constructions: each loop with its cuts, and the sums over all loops.

use uom::si::f64::{Length, Volume};
use uom::si::length::inch;
use uom::si::ratio::ratio;

use super::cut::{CutGeometry, CutVolumes};
use super::loop_cuts::LoopCuts;
use super::report::{LoopMaterials, SawCut, SlotVolumes};
use super::resolved::{ResolvedEstimatedLoop, ResolvedMaterialEstimate, StockDecision, saw_passes};
use super::wire::{WireRequirement, group_wire};
use crate::calculation::input::{ResolvedStockItem, Shape};
use crate::practice::site::Construction;

/// Loops that are alike, in one construction.
pub struct LoopEstimate<'a> {
    /// The loop.
    pub resolved: &'a ResolvedEstimatedLoop,
    /// How it is made here.
    pub construction: Construction,
    /// Its cuts; absent where nothing is sawn.
    pub cuts: Option<LoopCuts>,
}

impl LoopEstimate<'_> {
    /// How many.
    pub fn count(&self) -> f64 {
        f64::from(self.resolved.quantity)
    }

    /// The wire to pull for one of them; `None` for a preformed loop.
    pub fn wire_length(&self) -> Option<Length> {
        (!self.construction.is_preformed()).then(|| self.resolved.wire_length())
    }

    /// How often wire is pulled round for one of them: once for each turn, or once for all turns of a preformed loop.
    pub fn pulls(&self) -> u32 {
        if self.construction.is_preformed() {
            return 1;
        }
        match self.resolved.coil.shape {
            Shape::Rectangle => self.resolved.coil.turns,
            Shape::Quadrupole => 2 * self.resolved.coil.turns,
        }
    }

    /// How much of the lead-in of one of them lies in conduit: what lies in no saw cut, unless the request says how much.
    pub fn conduit_length(&self) -> Length {
        let (lead_in, is_sawn) = (&self.resolved.lead_in, self.cuts.is_some());
        match lead_in.in_conduit {
            Some(given) if is_sawn || !self.resolved.construction.is_sawn() => given,
            None if is_sawn => (lead_in.length - self.resolved.in_slot).max(Length::default()),
            // What is sawn as asked for lies in conduit where the loop is buried instead.
            Some(_) | None => lead_in.length,
        }
    }

    /// What of the lead-in of one of them lies neither in a cut nor in conduit.
    pub fn unaccounted_lead_in(&self) -> Length {
        let in_slot = self.cuts.as_ref().map_or_else(Length::default, LoopCuts::lead_in_length);
        (self.resolved.lead_in.length - in_slot - self.conduit_length()).max(Length::default())
    }

    /// The stock loop that it is: the one that the layout took, or one with these legs and turns whose lead-in is the shortest that
    /// reaches with its spare. `None` when there is none.
    pub fn find_in_stock<'j>(&'j self, job: &'j ResolvedMaterialEstimate) -> Option<&'j ResolvedStockItem> {
        if let StockDecision::Decided(item) = &self.resolved.stock
            && self.is_stock_decided()
        {
            return item.as_ref();
        }
        let coil = &self.resolved.coil;
        // A leg that is off by half an inch fits the same cut.
        let alike = |a: Length, b: Length| (a - b).abs() <= Length::new::<inch>(0.5);
        let needed = self.resolved.lead_in_needed();
        job.stock
            .iter()
            .flatten()
            .filter(|item| alike(item.along_travel, coil.along_travel) && alike(item.across_lane, coil.across_lane))
            .filter(|item| item.turns.is_none_or(|turns| turns == coil.turns))
            .filter(|item| item.construction.is_none_or(|made| made == self.construction))
            .filter(|item| item.lead_in_length >= needed * 0.999_999)
            .min_by(|a, b| a.lead_in_length.value.total_cmp(&b.lead_in_length.value))
    }

    /// Whether the layout has decided which stock item it is, or that it is none. It decides for the loop as it is asked for.
    pub fn is_stock_decided(&self) -> bool {
        let is_decided = matches!(self.resolved.stock, StockDecision::Decided(_));
        is_decided && self.construction == self.resolved.construction
    }

    /// Whether the bundle is only assumed, for the diameter over the jacket that lies in its cut was not given.
    pub fn lacks_jacket(&self) -> bool {
        self.construction == Construction::PreformedSawCut && self.resolved.coil.wire.over_jacket.is_none()
    }

    /// The loop by itself, in the report.
    pub fn to_report(&self, job: &ResolvedMaterialEstimate) -> LoopMaterials {
        let cuts = self.cuts.as_ref();
        let loop_cut = cuts.map(|cuts| &cuts.loop_cut);
        let lead_in_cut = cuts.and_then(|cuts| cuts.lead_in_cut.as_ref());
        let rod_height = |cut: &CutGeometry| cut.rod_form.is_laid().then(|| job.rod.height_in(cut.width).into());
        LoopMaterials {
            label: self.resolved.label.clone(),
            mark: self.resolved.mark,
            quantity: self.resolved.quantity,
            construction: self.construction,
            wire_length: self.wire_length().map(Into::into),
            slot_width: loop_cut.map(|cut| cut.width.into()),
            slot_depth: loop_cut.map(|cut| cut.depth().into()),
            cover: loop_cut.map(|cut| cut.levels.cover_left().into()),
            run_out: loop_cut.map(|cut| cut.ends.run_out.into()),
            blade_diameter: loop_cut.map(|cut| cut.blade.into()),
            saw_cut: cuts.map(|cuts| cuts.total_length().into()),
            sealant_net: cuts.map(|cuts| cuts.volumes().sealant().into()),
            wires_height: loop_cut.map(|cut| cut.levels.stack.into()),
            backer_rod: loop_cut.map(|cut| cut.rod_form),
            rod_height: loop_cut.and_then(rod_height),
            lead_in_slot_width: lead_in_cut.map(|cut| cut.width.into()),
            lead_in_slot_depth: lead_in_cut.map(|cut| cut.depth().into()),
            lead_in_cover: lead_in_cut.map(|cut| cut.levels.cover_left().into()),
            lead_in_rod_height: lead_in_cut.and_then(rod_height),
        }
    }
}

/// The job in a choice of constructions.
pub struct MaterialEstimate<'a> {
    /// The job.
    pub job: &'a ResolvedMaterialEstimate,
    /// Its loops.
    pub loops: Vec<LoopEstimate<'a>>,
    /// The wire of those that are wound on site, by its sort, on its spools.
    pub wires: Vec<WireRequirement>,
}

impl<'a> MaterialEstimate<'a> {
    /// The job with each loop in the construction that `construction` gives.
    pub fn new(
        job: &'a ResolvedMaterialEstimate,
        construction: impl Fn(&ResolvedEstimatedLoop) -> Construction,
    ) -> Self {
        let loops = job.loops.iter().map(|resolved| {
            let construction = construction(resolved);
            LoopEstimate { resolved, construction, cuts: LoopCuts::compute(resolved, construction, job) }
        });
        let loops: Vec<_> = loops.collect();
        let wound = loops.iter().filter(|each| !each.construction.is_preformed()).map(|each| each.resolved);
        let wires = group_wire(wound, &job.spools);
        Self { job, loops, wires }
    }

    /// How many loops there are.
    pub fn loop_count(&self) -> u64 {
        self.loops.iter().map(|each| u64::from(each.resolved.quantity)).sum()
    }

    /// The sum of a number of every loop.
    pub fn total_of(&self, number: impl Fn(&LoopEstimate<'a>) -> u32) -> u64 {
        self.loops.iter().map(|each| u64::from(each.resolved.quantity) * u64::from(number(each))).sum()
    }

    /// Loops that lie in a saw cut, with their cuts.
    pub fn sawn_loops(&self) -> impl Iterator<Item = (&LoopEstimate<'a>, &LoopCuts)> {
        self.loops.iter().filter_map(|each| Some((each, each.cuts.as_ref()?)))
    }

    /// Every cut with the loops that have it.
    pub fn cuts(&self) -> impl Iterator<Item = (&LoopEstimate<'a>, &CutGeometry)> {
        self.sawn_loops().flat_map(|(each, cuts)| cuts.iter().map(move |cut| (each, cut)))
    }

    /// The sum of a length of the cuts of every loop.
    pub fn sum_of_cuts(&self, length: impl Fn(&LoopCuts) -> Length) -> Length {
        self.sawn_loops().map(|(each, cuts)| each.count() * length(cuts)).fold(Length::default(), |a, b| a + b)
    }

    /// The rod to lay: diameters with their lengths.
    pub fn rods(&self) -> Vec<(Length, Length)> {
        let mut rods: Vec<(Length, Length)> = Vec::new();
        for (each, cut) in self.cuts().filter(|(_, cut)| cut.rod > Length::default()) {
            let diameter = self.job.rod.diameter_for(cut.width);
            let length = each.count() * cut.rod;
            match rods.iter_mut().find(|(known, _)| (*known - diameter).abs() < 1e-6 * diameter) {
                Some((_, sum)) => *sum += length,
                None => rods.push((diameter, length)),
            }
        }
        rods
    }

    /// The volumes of all cuts.
    pub fn volumes(&self) -> CutVolumes {
        self.sawn_loops()
            .map(|(each, cuts)| cuts.volumes().times(each.count()))
            .fold(CutVolumes::default(), CutVolumes::plus)
    }

    /// The sealant in the slots.
    pub fn sealant(&self) -> Volume {
        self.volumes().sealant()
    }

    /// The sealant to load.
    pub fn sealant_with_waste(&self) -> Volume {
        self.sealant() * (1.0 + self.job.waste.get::<ratio>())
    }

    /// The saw cuts of the report.
    pub fn saw_cut_report(&self) -> SawCut {
        let count = |number: fn(&LoopCuts) -> u32| {
            self.sawn_loops().map(|(each, cuts)| each.resolved.quantity * number(cuts)).sum()
        };
        SawCut {
            straight: self.sum_of_cuts(|cuts| cuts.straight).into(),
            diagonals: self.sum_of_cuts(|cuts| cuts.diagonals).into(),
            overruns: self.sum_of_cuts(LoopCuts::overruns).into(),
            lead_in: self.sum_of_cuts(LoopCuts::lead_in_length).into(),
            total: self.sum_of_cuts(LoopCuts::total_length).into(),
            cut_ends: count(LoopCuts::end_count),
            cored_corners: count(|cuts| cuts.cores),
            passes: self.cuts().map(|(_, cut)| saw_passes(cut.depth())).max().unwrap_or_default(),
        }
    }

    /// The volumes of the report.
    pub fn volumes_report(&self) -> SlotVolumes {
        let volumes = self.volumes();
        SlotVolumes {
            slot: volumes.slot.into(),
            wire: volumes.wire.into(),
            rod: volumes.rod.into(),
            left_open: volumes.left_open.into(),
            sealant_net: volumes.sealant().into(),
            sealant_with_waste: self.sealant_with_waste().into(),
        }
    }
}
