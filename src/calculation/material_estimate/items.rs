//! What to load on the van.

use uom::si::f64::{Length, Volume};
use uom::si::length::{foot, meter};
use uom::si::ratio::{percent, ratio};
use uom::si::volume::{fluid_ounce, gallon, liter, milliliter};

use super::estimate::{LoopEstimate, MaterialEstimate};
use super::report::MaterialLine;
use super::resolved::ResolvedWireSpool;
use super::wire::WireRequirement;
use crate::practice::Sourced;
use crate::practice::materials::{MaterialItem, SLEEVE_EACH_SIDE};
use crate::practice::sources::Source;
use crate::quantity::UnitSystem;
use crate::quantity::format::{format_count, format_detail_length, format_length};
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// One thing to load.
pub struct BillLine {
    /// What.
    pub item: MaterialItem,
    /// The caller's own number.
    pub sku: Option<String>,
    /// The unit.
    pub unit: &'static str,
    /// How many, before rounding up.
    pub exact: f64,
    /// How it comes about.
    pub how: String,
}

impl BillLine {
    fn new(item: MaterialItem, unit: &'static str, exact: f64, how: impl Into<String>) -> Self {
        Self { item, sku: None, unit, exact, how: how.into() }
    }

    /// The quantity in whole units. The tolerance keeps a whole number from being rounded up for its binary fraction.
    pub fn quantity(&self) -> u64 {
        (self.exact - 1e-9).ceil().max(0.0) as u64
    }

    /// The line of the report.
    pub fn to_report(&self) -> MaterialLine {
        let mut source_ids = self.item.sources().to_vec();
        if !source_ids.contains(&Source::Geometry) && self.item.is_measured() {
            source_ids.push(Source::Geometry);
        }
        MaterialLine {
            item: self.item,
            sku: self.sku.clone(),
            quantity: self.quantity(),
            unit: self.unit,
            exact: round(self.exact, 3),
            how: self.how.clone(),
            source_ids,
        }
    }
}

/// All lines of the bill, in the order of the work.
pub fn bill_lines(estimate: &MaterialEstimate<'_>) -> Vec<BillLine> {
    let mut lines = blade_lines(estimate);
    lines.extend(preformed_lines(estimate));
    lines.extend(wire_lines(estimate));
    lines.extend(rod_lines(estimate));
    lines.extend(conduit_line(estimate));
    lines.extend(sleeve_line(estimate));
    lines.extend(sealant_lines(estimate));
    let ends = 2.0 * estimate.loop_count() as f64;
    lines.push(BillLine::new(
        MaterialItem::Termination,
        "each",
        ends,
        "Two ends for each loop, tinned or soldered and sealed.",
    ));
    lines
}

/// What blades of one width and diameter cut.
struct BladeUse {
    width: Length,
    blade: Length,
    length: Length,
    depth: Length,
    run_out: Length,
}

fn blade_lines(estimate: &MaterialEstimate<'_>) -> Vec<BillLine> {
    let (job, system) = (estimate.job, estimate.job.system());
    let mut all: Vec<BladeUse> = Vec::new();
    for (loop_estimate, cut) in estimate.cuts() {
        let (length, alike) = (loop_estimate.count() * cut.length(), |a: Length, b: Length| (a - b).abs() < 1e-6 * b);
        if let Some(known) = all.iter_mut().find(|known| alike(known.width, cut.width) && alike(known.blade, cut.blade))
        {
            known.length += length;
            known.depth = known.depth.max(cut.depth);
            known.run_out = known.run_out.max(cut.ends.run_out);
        } else {
            let (depth, run_out) = (cut.depth, cut.ends.run_out);
            all.push(BladeUse { width: cut.width, blade: cut.blade, length, depth, run_out });
        }
    }
    let line = |sawn: BladeUse| {
        let exact = job.saw.blade_life.map_or(1.0, |life| (sawn.length / life).get::<ratio>());
        let how = format!(
            "{} wide and {} across, for {} of cut down to {}; at an end that must be deep it runs {} on: where a kerb, a box or \
             an edge stands in the way, finish with a chisel or a drill.",
            format_detail_length(sawn.width, system),
            format_detail_length(sawn.blade, system),
            format_length(sawn.length, system),
            format_detail_length(sawn.depth, system),
            format_detail_length(sawn.run_out, system)
        );
        BillLine::new(MaterialItem::SawBlade, "each", exact, how)
    };
    all.into_iter().map(line).collect()
}

fn preformed_lines(estimate: &MaterialEstimate<'_>) -> Vec<BillLine> {
    let system = estimate.job.system();
    let line = |loop_estimate: &LoopEstimate<'_>| {
        let coil = &loop_estimate.resolved.coil;
        let found = loop_estimate.find_in_stock(estimate.job);
        let how = format!(
            "{}: {} x {}, {}, with {} of lead-in{}.",
            loop_estimate.resolved.label,
            format_length(coil.along_travel, system),
            format_length(coil.across_lane, system),
            format_count(f64::from(coil.turns), "turn"),
            format_length(found.map_or(loop_estimate.resolved.lead_in_needed(), |item| item.lead_in_length), system),
            if found.is_some() { ", from stock" } else { "; order it made to size" },
        );
        let mut line = BillLine::new(MaterialItem::PreformedLoop, "each", loop_estimate.count(), how);
        line.sku = found.map(|item| item.sku.clone());
        line
    };
    estimate.loops.iter().filter(|loop_estimate| loop_estimate.construction.is_preformed()).map(line).collect()
}

fn wire_lines(estimate: &MaterialEstimate<'_>) -> Vec<BillLine> {
    let (job, system) = (estimate.job, estimate.job.system());
    let lines = |group: &WireRequirement| {
        let what = format!(
            "{} of {} wire, {} over insulation, in {}: the turns, and twice each lead-in with its spare",
            format_length(group.total_length(), system),
            group.gauge,
            format_detail_length(group.over_insulation, system),
            format_count(group.piece_count() as f64, "length")
        );
        if group.spools.is_empty() {
            let (unit, exact) = by_length(group.total_length(), system);
            return vec![BillLine::new(MaterialItem::LoopWire, unit, exact, format!("{what}, each without a splice."))];
        }
        let taken = job.spools.iter().zip(&group.spools).filter(|(_, count)| **count > 0);
        let line = |(spool, count): (&ResolvedWireSpool, &u64)| {
            let how = format!(
                "Spools of {}. {what}, each from one spool where a spool holds it.",
                format_length(spool.length, system)
            );
            let mut line = BillLine::new(MaterialItem::LoopWire, MaterialItem::SPOOL, *count as f64, how);
            line.sku.clone_from(&spool.sku);
            line
        };
        taken.map(line).collect()
    };
    estimate.wires.iter().flat_map(lines).collect()
}

/// Rod: one line for each diameter.
fn rod_lines(estimate: &MaterialEstimate<'_>) -> Vec<BillLine> {
    let (job, system) = (estimate.job, estimate.job.system());
    let line = |(diameter, length): (Length, Length)| {
        let (unit, exact) = by_length(length, system);
        let how = format!(
            "{} of rod {} across, {} in all.",
            job.rod.form.label(),
            format_detail_length(diameter, system),
            format_length(length, system)
        );
        BillLine::new(MaterialItem::BackerRod, unit, exact, how)
    };
    estimate.rods().into_iter().map(line).collect()
}

fn conduit_line(estimate: &MaterialEstimate<'_>) -> Option<BillLine> {
    let system = estimate.job.system();
    let each = estimate.loops.iter().map(|loop_estimate| loop_estimate.count() * loop_estimate.conduit_length());
    let total = each.fold(Length::default(), |a, b| a + b);
    let (unit, exact) = by_length(total, system);
    let how = "The way of the lead-ins outside saw cuts, sealed against water at both ends.";
    (total > Length::default()).then(|| BillLine::new(MaterialItem::LeadInConduit, unit, exact, how))
}

fn sleeve_line(estimate: &MaterialEstimate<'_>) -> Option<BillLine> {
    let crossings = estimate.job.crossings;
    let how = format!("One at each joint or crack, {SLEEVE_EACH_SIDE} to each side, with slack wire inside.");
    (crossings > 0).then(|| BillLine::new(MaterialItem::JointSleeve, "each", f64::from(crossings), how))
}

fn sealant_lines(estimate: &MaterialEstimate<'_>) -> Vec<BillLine> {
    let (job, system) = (estimate.job, estimate.job.system());
    let volume = estimate.sealant_with_waste();
    if volume <= Volume::default() {
        return Vec::new();
    }
    let blends = job.surface.blending_colour();
    let colour = blends.map_or_else(String::new, |(colour, with)| format!("; {colour}, to blend in with {with}"));
    let what = format!(
        "{} of slot less wire and rod, and {} % for waste{colour}",
        format_sealant_volume(estimate.sealant(), system),
        round(job.waste.get::<percent>(), 1),
    );
    let mut lines = Vec::new();
    if job.sealant.kind.is_poured_hot() {
        let (unit, exact) = match system {
            UnitSystem::UsCustomary => ("gal", volume.get::<gallon>()),
            UnitSystem::Metric => ("l", volume.get::<liter>()),
        };
        lines.push(BillLine::new(MaterialItem::HotSealant, unit, exact, format!("{what}.")));
    } else {
        let exact = (volume / job.sealant.cartridge).get::<ratio>();
        let how = format!("{what}; cartridges of {}.", format_sealant_volume(job.sealant.cartridge, system));
        lines.push(BillLine::new(MaterialItem::SealantCartridge, "cartridge", exact, how));
    }
    if job.sealant.kind.is_mixed_on_site() {
        let loops = estimate.sawn_loops().map(|(loop_estimate, _)| loop_estimate.count()).sum();
        let how = "One for each loop: what stands in a nozzle sets while the next loop is laid.";
        lines.push(BillLine::new(MaterialItem::MixingNozzle, "each", loops, how));
    }
    if let Some((_, with)) = blends {
        let how = format!("Sand of the colour of the {with} over the wet sealant, so that it blends in.");
        lines.push(BillLine::new(MaterialItem::BlendingSand, "lot", 1.0, how));
    }
    lines
}

fn by_length(length: Length, system: UnitSystem) -> (&'static str, f64) {
    match system {
        UnitSystem::UsCustomary => ("ft", length.get::<foot>()),
        UnitSystem::Metric => ("m", length.get::<meter>()),
    }
}

fn format_sealant_volume(volume: Volume, system: UnitSystem) -> String {
    match system {
        UnitSystem::UsCustomary => format!("{} fl oz", round(volume.get::<fluid_ounce>(), 1)),
        UnitSystem::Metric => format!("{} ml", round(volume.get::<milliliter>(), 0)),
    }
}
