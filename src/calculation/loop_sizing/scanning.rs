//! Which loops go on one unit: those that couple and cannot be moved apart, so that only one of them is alive at a time.

use std::cell::RefCell;
use std::collections::BTreeMap;

use uom::si::f64::Ratio;
use uom::si::ratio::percent;

use super::resolved::ResolvedLoopSizing;
use crate::calculation::budget::WorkBudget;
use crate::calculation::layout::{JobLayout, LaidLoop, PlacedCoil, coupling};
use crate::calculation::report::{Diagnostics, FieldPath, Finding, ListJoin, Statement};
use crate::practice::detectors::{HARMLESS_COUPLING, Wiring};
use crate::practice::finding_codes::{FindingCode, Level};

/// The loops of a layout entry on the ground.
fn coils(laid: &LaidLoop) -> impl Iterator<Item = PlacedCoil<'_>> {
    let position = move |across| (laid.place.middle(), across);
    laid.lane.centres.iter().map(move |across| PlacedCoil {
        coil: &laid.coil,
        inductance: laid.electrical.loop_inductance,
        position: position(*across),
    })
}

/// How the entries of a layout couple, each pair computed when it is first asked for.
#[derive(Default)]
pub struct LayoutCouplings(RefCell<BTreeMap<(usize, usize), Ratio>>);

impl LayoutCouplings {
    /// The strongest coupling of two entries, the first before the second.
    fn strongest(&self, loops: &[LaidLoop], (one, other): (usize, usize), budget: &WorkBudget) -> Ratio {
        let compute = || {
            let of = |ours| coils(&loops[other]).map(move |theirs| coupling(&ours, &theirs, budget));
            coils(&loops[one]).flat_map(of).fold(Ratio::default(), Ratio::max)
        };
        *self.0.borrow_mut().entry((one, other)).or_insert_with(compute)
    }
}

/// Whether two entries lie over one another.
pub fn share_a_place(one: &LaidLoop, other: &LaidLoop) -> bool {
    coils(one).any(|ours| coils(other).any(|theirs| ours.overlaps(&theirs)))
}

/// Gives each loop its unit: loops that couple share one, and all do that share a channel. What was computed of their coupling is kept.
pub fn assign_units(layout: &mut JobLayout, job: &ResolvedLoopSizing) -> LayoutCouplings {
    let (loops, couplings) = (&layout.loops, LayoutCouplings::default());
    let couples = |one: usize, other: usize| {
        job.wiring != Wiring::Separate
            || couplings.strongest(loops, (one, other), &job.budget).value >= HARMLESS_COUPLING
    };
    let mut groups: Vec<usize> = (0..loops.len()).collect();
    for other in 0..loops.len() {
        for one in 0..other {
            if groups[one] != groups[other] && couples(one, other) {
                let (kept, joined) = (groups[one].min(groups[other]), groups[one].max(groups[other]));
                groups.iter_mut().filter(|group| **group == joined).for_each(|group| *group = kept);
            }
        }
    }
    let mut known = Vec::new();
    for (laid, group) in layout.loops.iter_mut().zip(groups) {
        let unit = known.iter().position(|other| *other == group).unwrap_or_else(|| {
            known.push(group);
            known.len() - 1
        });
        laid.unit = unit + 1;
    }
    couplings
}

/// States which loops go on one scanning unit, and why.
pub fn judge(layout: &JobLayout, couplings: &LayoutCouplings, job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    if job.wiring != Wiring::Separate {
        return;
    }
    let units = layout.loops.iter().map(|laid| laid.unit).max().unwrap_or_default();
    for unit in 1..=units {
        let loops = &layout.loops;
        let together: Vec<_> = (0..loops.len()).filter(|index| loops[*index].unit == unit).collect();
        if together.len() < 2 {
            continue;
        }
        let pairs = together.iter().enumerate().flat_map(|(place, other)| {
            together[..place].iter().map(move |one| couplings.strongest(loops, (*one, *other), &job.budget))
        });
        let coupling = pairs.fold(Ratio::default(), Ratio::max).get::<percent>();
        let mark = |index: &usize| Statement::new("sizing-loop-mark").text("mark", loops[*index].mark.to_string());
        let marks = together.iter().map(mark);
        let message = Statement::new("sizing-scanning-unit")
            .phrases("loops", marks.collect(), ListJoin::Comma)
            .percent("coupling", coupling, 1);
        diagnostics.add_finding(
            Finding::new(FindingCode::ScanningUnit, Level::Note, &FieldPath::BODY.field("detector"), message)
                .figure("coupling", coupling, "percent"),
        );
    }
}
