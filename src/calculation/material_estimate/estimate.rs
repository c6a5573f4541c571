//! The job in a choice of constructions: each loop with its cuts, and the sums over all loops.

use uom::si::f64::{Length, Volume};
use uom::si::ratio::ratio;

use super::cut::{CutGeometry, CutVolumes};
use super::loop_cuts::LoopCuts;
use super::loop_estimate::LoopEstimate;
use super::productivity::saw_passes;
use super::report::{SawCut, SlotVolumes};
use super::resolved::{ResolvedEstimatedLoop, ResolvedMaterialEstimate};
use super::shared_slots::{SharedSlotCut, cut_shared_slots};
use super::wire::{WireRequirement, group_wire};
use crate::calculation::input::CutPlace;
use crate::practice::site::Construction;

/// The job in a choice of constructions.
pub struct MaterialEstimate<'a> {
    /// The job.
    pub job: &'a ResolvedMaterialEstimate,
    /// Its loops.
    pub loops: Vec<LoopEstimate<'a>>,
    /// The slots that pairs of several loops lie in.
    pub shared_slots: Vec<SharedSlotCut>,
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
        let wires = group_wire(wound, job);
        let shared_slots = cut_shared_slots(&loops, job);
        Self { job, loops, shared_slots, wires }
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

    /// Every cut with a loop that has it, and how many such cuts there are.
    pub fn cuts(&self) -> impl Iterator<Item = (f64, &LoopEstimate<'a>, &CutGeometry)> {
        let own = self.sawn_loops().flat_map(|(each, cuts)| cuts.iter().map(move |cut| (each.count(), each, cut)));
        own.chain(self.shared_slots.iter().map(|shared| (1.0, &self.loops[shared.pairs_of[0]], &shared.cut)))
    }

    /// The sum of a length of the cuts of every loop, without shared slots.
    fn sum_of_loops(&self, length: impl Fn(&LoopCuts) -> Length) -> Length {
        self.sawn_loops().map(|(each, cuts)| each.count() * length(cuts)).fold(Length::default(), |a, b| a + b)
    }

    /// The sum of a length of every cut.
    fn sum_of_cuts(&self, length: impl Fn(&CutGeometry) -> Length) -> Length {
        self.cuts().map(|(count, _, cut)| count * length(cut)).fold(Length::default(), |a, b| a + b)
    }

    /// The length of all cuts, with what runs on at their ends.
    pub fn cut_length(&self) -> Length {
        self.sum_of_cuts(CutGeometry::length)
    }

    /// The rod to lay: diameters with their lengths.
    pub fn rods(&self) -> Vec<(Length, Length)> {
        let mut rods: Vec<(Length, Length)> = Vec::new();
        for (count, _, cut) in self.cuts().filter(|(_, _, cut)| cut.rod > Length::default()) {
            let diameter = self.job.rod.diameter_for(cut.width);
            let length = count * cut.rod;
            match rods.iter_mut().find(|(known, _)| (*known - diameter).abs() < 1e-6 * diameter) {
                Some((_, sum)) => *sum += length,
                None => rods.push((diameter, length)),
            }
        }
        rods
    }

    /// The volumes of all cuts.
    pub fn volumes(&self) -> CutVolumes {
        self.cuts().map(|(count, _, cut)| cut.volumes.times(count)).fold(CutVolumes::default(), CutVolumes::plus)
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
        let is_lead_in = |cut: &CutGeometry| cut.place() == CutPlace::LeadIn;
        let ends = self.cuts().map(|(count, _, cut)| count as u32 * cut.ends.count()).sum();
        let cores = self.sawn_loops().map(|(each, cuts)| each.resolved.quantity * cuts.cores).sum();
        SawCut {
            straight: self.sum_of_loops(|cuts| cuts.straight).into(),
            diagonals: self.sum_of_loops(|cuts| cuts.diagonals).into(),
            overruns: self.sum_of_cuts(|cut| cut.ends.length()).into(),
            lead_in: self.sum_of_cuts(|cut| if is_lead_in(cut) { cut.plan } else { Length::default() }).into(),
            total: self.cut_length().into(),
            cut_ends: ends,
            cored_corners: cores,
            passes: self.cuts().map(|(_, _, cut)| saw_passes(cut.depth())).max().unwrap_or_default(),
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
