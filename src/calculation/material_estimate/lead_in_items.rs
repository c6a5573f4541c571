//! What the way to the unit takes: conduit by length and fill, and, for a home run, cable of its own gauge, splice kits and pull boxes.

use uom::si::f64::Length;
use uom::si::ratio::{percent, ratio};

use super::bill::{BillLine, length_in};
use super::estimate::MaterialEstimate;
use super::loop_estimate::LoopEstimate;
use super::resolved::ResolvedMaterialEstimate;
use crate::calculation::report::{Decimals, Statement};
use crate::practice::lead_ins::{ConduitSize, conduit_fill, conduit_for};
use crate::practice::materials::MaterialItem;

/// Where pairs leave the pavement together: each has a conduit of its own.
struct Outlet {
    /// How many such outlets there are.
    count: f64,
    /// How many cables lie in the conduit.
    cables: u64,
    /// The thickest of them.
    diameter: Length,
    /// The length of the conduit.
    length: Length,
    /// How many boxes its pairs need: one where they leave the pavement, and more where spools end on a longer way.
    boxes: f64,
}

impl Outlet {
    fn of(loops: &[&LoopEstimate<'_>], count: f64, cables: u64, job: &ResolvedMaterialEstimate) -> Self {
        let greatest = |lengths: &mut dyn Iterator<Item = Length>| lengths.fold(Length::default(), Length::max);
        Self {
            count,
            cables,
            diameter: greatest(&mut loops.iter().map(|each| each.cable_diameter())),
            length: greatest(&mut loops.iter().map(|each| each.conduit_length())),
            boxes: loops.iter().map(|each| f64::from(each.splices(job))).fold(0.0, f64::max),
        }
    }
}

/// The outlets of a job: one for each shared slot, and one for each pair in a slot of its own.
fn outlets(estimate: &MaterialEstimate<'_>) -> Vec<Outlet> {
    let shared = estimate.shared_slots.iter().map(|slot| {
        let loops: Vec<_> = slot.pairs_of.iter().map(|index| &estimate.loops[*index]).collect();
        Outlet::of(&loops, 1.0, u64::from(slot.pairs), estimate.job)
    });
    let is_shared = |index: usize| estimate.shared_slots.iter().any(|slot| slot.pairs_of.contains(&index));
    let alone = estimate.loops.iter().enumerate().filter(|(index, _)| !is_shared(*index));
    shared.chain(alone.map(|(_, each)| Outlet::of(&[each], each.count(), 1, estimate.job))).collect()
}

/// The lines of the way to the unit.
pub fn lead_in_lines(estimate: &MaterialEstimate<'_>) -> Vec<BillLine> {
    let outlets = outlets(estimate);
    let mut lines = home_run_lines(estimate);
    lines.extend(splice_line(estimate));
    let boxes: f64 = outlets.iter().map(|outlet| outlet.count * outlet.boxes).sum();
    if boxes > 0.0 {
        lines.push(BillLine::new(MaterialItem::PullBox, "each", boxes, Statement::new("materials-pull-boxes")));
    }
    lines.extend(conduit_lines(&outlets, estimate));
    lines
}

/// A kit for each splice: to a home run, or where no spool holds a piece.
fn splice_line(estimate: &MaterialEstimate<'_>) -> Option<BillLine> {
    let kits: f64 = estimate.loops.iter().map(|each| each.count() * f64::from(each.splices(estimate.job))).sum();
    let is_home_run = estimate.loops.iter().any(|each| each.resolved.home_run.is_some());
    let how =
        || Statement::new("materials-splice-kits").code("to", if is_home_run { "home_run" } else { "next_piece" });
    (kits > 0.0).then(|| BillLine::new(MaterialItem::SpliceKit, "each", kits, how()))
}

/// Cable by its gauge.
fn home_run_lines(estimate: &MaterialEstimate<'_>) -> Vec<BillLine> {
    let system = estimate.job.system();
    let allowance = 1.0 + estimate.job.wire_allowance.get::<ratio>();
    let mut cables: Vec<(String, Length)> = Vec::new();
    for each in &estimate.loops {
        let Some(home_run) = &each.resolved.home_run else { continue };
        let length = each.count() * allowance * home_run.cable;
        match cables.iter_mut().find(|(gauge, _)| *gauge == home_run.gauge) {
            Some((_, total)) => *total += length,
            None => cables.push((home_run.gauge.clone(), length)),
        }
    }
    let cable = |(gauge, length): (String, Length)| {
        let (unit, exact) = length_in(length, system);
        let how = Statement::new("materials-home-run-cable").text("gauge", gauge.clone()).length(
            "cable_length",
            length,
            system,
        );
        let how = how.percent("allowance", estimate.job.wire_allowance.get::<percent>(), Decimals::AtMost(1));
        BillLine::new(MaterialItem::HomeRunCable, unit, exact, how).of_size(gauge)
    };
    cables.into_iter().map(cable).collect()
}

/// Conduit by its size: one run from each place where pairs leave the pavement.
fn conduit_lines(outlets: &[Outlet], estimate: &MaterialEstimate<'_>) -> Vec<BillLine> {
    struct Conduit {
        size: ConduitSize,
        length: Length,
        runs: f64,
        cables: u64,
    }
    let system = estimate.job.system();
    let mut conduits: Vec<Conduit> = Vec::new();
    for outlet in outlets.iter().filter(|outlet| outlet.length > Length::default()) {
        let size = conduit_for(outlet.cables, outlet.diameter, system);
        let length = outlet.count * outlet.length;
        match conduits.iter_mut().find(|known| known.size.name == size.name) {
            Some(known) => {
                known.length += length;
                known.runs += outlet.count;
                known.cables = known.cables.max(outlet.cables);
            }
            None => conduits.push(Conduit { size, length, runs: outlet.count, cables: outlet.cables }),
        }
    }
    let line = |conduit: Conduit| {
        let (unit, exact) = length_in(conduit.length, system);
        let how = Statement::new("materials-conduit")
            .text("size", conduit.size.name)
            .count("runs", conduit.runs as u64)
            .count("cables", conduit.cables)
            .percent("fill", 100.0 * conduit_fill(conduit.cables), Decimals::AtMost(0));
        BillLine::new(MaterialItem::LeadInConduit, unit, exact, how).of_size(conduit.size.name.to_owned())
    };
    conduits.into_iter().map(line).collect()
}
