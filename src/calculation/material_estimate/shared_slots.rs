//! Slots that pairs of several loops lie in: each is cut once, for the pairs that lie in it.

use uom::si::f64::Length;

use super::cut::CutGeometry;
use super::loop_cuts::PairsInSlot;
use super::loop_estimate::LoopEstimate;
use super::report::SharedLeadInSlot;
use super::resolved::ResolvedMaterialEstimate;
use crate::calculation::layout::SharedSlotKey;

/// One such slot.
pub struct SharedSlotCut {
    /// The loops whose pairs lie in it, by their index; at least one.
    pub pairs_of: Vec<usize>,
    /// How many pairs.
    pub pairs: u32,
    /// The cut.
    pub cut: CutGeometry,
}

/// The shared slots of these loops, each as long as the pair that lies in it farthest.
pub fn cut_shared_slots(loops: &[LoopEstimate<'_>], job: &ResolvedMaterialEstimate) -> Vec<SharedSlotCut> {
    let mut keys: Vec<&SharedSlotKey> = Vec::new();
    for key in loops.iter().filter_map(|each| each.resolved.way.shared_slot.as_ref()) {
        if !keys.contains(&key) {
            keys.push(key);
        }
    }
    keys.into_iter().filter_map(|key| cut_shared_slot(key, loops, job)).collect()
}

fn cut_shared_slot(
    key: &SharedSlotKey,
    loops: &[LoopEstimate<'_>],
    job: &ResolvedMaterialEstimate,
) -> Option<SharedSlotCut> {
    let is_in_it = |each: &LoopEstimate<'_>| each.cuts.is_some() && each.resolved.way.shared_slot.as_ref() == Some(key);
    let pairs_of: Vec<_> = (0..loops.len()).filter(|index| is_in_it(&loops[*index])).collect();
    let first = &loops[*pairs_of.first()?];
    let ways = || pairs_of.iter().flat_map(|index| &loops[*index].resolved.way.shared_slots);
    let pairs = PairsInSlot {
        one: first.resolved,
        construction: first.construction,
        path: ways().fold(Length::default(), |sum, way| sum + *way),
        length: ways().copied().fold(Length::default(), Length::max),
        most: ways().count() as u32,
    };
    let slot = first.resolved.slots.of(first.construction)?;
    let cut = pairs.cut(slot, &first.cuts.as_ref()?.loop_cut, job);
    Some(SharedSlotCut { pairs_of, pairs: pairs.most, cut })
}

impl SharedSlotCut {
    /// The names of the loops, in a row.
    pub fn label(&self, loops: &[LoopEstimate<'_>]) -> String {
        let labels: Vec<_> = self.pairs_of.iter().map(|index| loops[*index].resolved.label.as_str()).collect();
        labels.join(", ")
    }

    /// The slot in the report.
    pub fn to_report(&self, loops: &[LoopEstimate<'_>], job: &ResolvedMaterialEstimate) -> SharedLeadInSlot {
        let of_loops = || self.pairs_of.iter().map(|index| loops[*index].resolved);
        SharedLeadInSlot {
            labels: of_loops().map(|resolved| resolved.label.clone()).collect(),
            marks: of_loops().filter_map(|resolved| resolved.mark).collect(),
            pairs: self.pairs,
            length: self.cut.plan.into(),
            saw_cut: self.cut.length().into(),
            width: self.cut.width.into(),
            depth: self.cut.depth().into(),
            cover: self.cut.levels.cover_left().into(),
            rod_height: self.cut.rod_form.is_laid().then(|| job.rod.height_in(self.cut.width).into()),
        }
    }
}
