//! What to load on the van.

use uom::si::f64::{Length, Volume};
use uom::si::length::{foot, meter};
use uom::si::ratio::{percent, ratio};
use uom::si::volume::{fluid_ounce, gallon, liter, milliliter};

use super::estimate::{Estimate, Part};
use super::report::MaterialLine;
use super::stock;
use super::wire::WireGroup;
use crate::practice::Sourced;
use crate::practice::materials::{MaterialItem, SLEEVE_EACH_SIDE, blends_with};
use crate::practice::sealants::SealantKind;
use crate::practice::site::Construction;
use crate::practice::sources::Source;
use crate::quantity::UnitSystem;
use crate::quantity::format::{format_count, format_detail_length, format_length};
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// One thing to load.
pub struct Line {
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

impl Line {
    fn new(item: MaterialItem, unit: &'static str, exact: f64, how: impl Into<String>) -> Self {
        Self { item, sku: None, unit, exact, how: how.into() }
    }

    /// So many of them, whole. A hair below a whole number is that number.
    pub fn quantity(&self) -> u64 {
        (self.exact - 1e-9).ceil().max(0.0) as u64
    }

    /// The line of the report.
    pub fn shown(&self) -> MaterialLine {
        let mut source_ids = self.item.sources().to_vec();
        if !source_ids.contains(&Source::Geometry) && self.unit != "lot" {
            source_ids.push(Source::Geometry);
        }
        MaterialLine {
            item: self.item.code(),
            sku: self.sku.clone(),
            quantity: self.quantity(),
            unit: self.unit,
            exact: round(self.exact, 3),
            how: self.how.clone(),
            source_ids,
        }
    }
}

/// All lines, in the order of the work.
pub fn list(estimate: &Estimate<'_>) -> Vec<Line> {
    let mut lines = blades(estimate);
    lines.extend(preformed(estimate));
    lines.extend(loop_wire(estimate));
    lines.extend(rod(estimate));
    lines.extend(conduit(estimate));
    lines.extend(sleeves(estimate));
    lines.extend(sealant(estimate));
    let ends = 2.0 * estimate.loops() as f64;
    lines.push(Line::new(
        MaterialItem::Termination,
        "each",
        ends,
        "Two ends for each loop, tinned or soldered and sealed.",
    ));
    lines
}

/// What one blade cuts.
struct Sawn {
    width: Length,
    blade: Length,
    length: Length,
    depth: Length,
    run_out: Length,
}

fn blades(estimate: &Estimate<'_>) -> Vec<Line> {
    let (job, system) = (estimate.job, estimate.job.system());
    let mut all: Vec<Sawn> = Vec::new();
    for (part, cut) in estimate.cuts() {
        let (length, alike) = (part.count() * cut.length(), |a: Length, b: Length| (a - b).abs() < 1e-6 * b);
        if let Some(known) = all.iter_mut().find(|known| alike(known.width, cut.width) && alike(known.blade, cut.blade))
        {
            known.length += length;
            known.depth = known.depth.max(cut.depth);
            known.run_out = known.run_out.max(cut.ends.run_out);
        } else {
            let (depth, run_out) = (cut.depth, cut.ends.run_out);
            all.push(Sawn { width: cut.width, blade: cut.blade, length, depth, run_out });
        }
    }
    let line = |sawn: Sawn| {
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
        Line::new(MaterialItem::SawBlade, "each", exact, how)
    };
    all.into_iter().map(line).collect()
}

fn preformed(estimate: &Estimate<'_>) -> Vec<Line> {
    let system = estimate.job.system();
    let line = |part: &Part<'_>| {
        let coil = &part.one.coil;
        let found = stock::find(part.one, part.construction, estimate.job);
        let how = format!(
            "{}: {} x {}, {}, with {} of lead-in{}.",
            part.one.label,
            format_length(coil.along_travel, system),
            format_length(coil.across_lane, system),
            format_count(f64::from(coil.turns), "turn"),
            format_length(found.map_or(part.one.lead_in_needed(), |item| item.lead_in_length), system),
            if found.is_some() { ", from stock" } else { "; order it made to size" },
        );
        let mut line = Line::new(MaterialItem::PreformedLoop, "each", part.count(), how);
        line.sku = found.map(|item| item.sku.clone());
        line
    };
    estimate.parts.iter().filter(|part| part.construction != Construction::HandWound).map(line).collect()
}

fn loop_wire(estimate: &Estimate<'_>) -> Vec<Line> {
    let (job, system) = (estimate.job, estimate.job.system());
    let lines = |group: &WireGroup| {
        let what = format!(
            "{} of {} wire, {} over insulation, in {}: the turns, and twice each lead-in with its spare",
            format_length(group.total(), system),
            group.gauge,
            format_detail_length(group.over_insulation, system),
            format_count(group.count() as f64, "length")
        );
        if group.spools.is_empty() {
            let (unit, exact) = by_length(group.total(), system);
            return vec![Line::new(MaterialItem::LoopWire, unit, exact, format!("{what}, each without a splice."))];
        }
        let taken = job.spools.iter().zip(&group.spools).filter(|(_, count)| **count > 0);
        let line = |((length, sku), count): (&(Length, Option<String>), &u64)| {
            let how = format!(
                "Spools of {}. {what}, each from one spool where a spool holds it.",
                format_length(*length, system)
            );
            let mut line = Line::new(MaterialItem::LoopWire, MaterialItem::SPOOL, *count as f64, how);
            line.sku.clone_from(sku);
            line
        };
        taken.map(line).collect()
    };
    estimate.wires.iter().flat_map(lines).collect()
}

/// One line for each diameter.
fn rod(estimate: &Estimate<'_>) -> Vec<Line> {
    let (job, system) = (estimate.job, estimate.job.system());
    let line = |(diameter, length): (Length, Length)| {
        let (unit, exact) = by_length(length, system);
        let how = format!(
            "{} of rod {} across, {} in all.",
            job.rod.form.label(),
            format_detail_length(diameter, system),
            format_length(length, system)
        );
        Line::new(MaterialItem::BackerRod, unit, exact, how)
    };
    estimate.rods().into_iter().map(line).collect()
}

fn conduit(estimate: &Estimate<'_>) -> Option<Line> {
    let system = estimate.job.system();
    let each = estimate.parts.iter().map(|part| part.count() * part.conduit());
    let total = each.fold(Length::default(), |a, b| a + b);
    let (unit, exact) = by_length(total, system);
    let how = "The way of the lead-ins outside saw cuts, sealed against water at both ends.";
    (total > Length::default()).then(|| Line::new(MaterialItem::LeadInConduit, unit, exact, how))
}

fn sleeves(estimate: &Estimate<'_>) -> Option<Line> {
    let crossings = estimate.job.crossings;
    let how = format!("One at each joint or crack, {SLEEVE_EACH_SIDE} to each side, with slack wire inside.");
    (crossings > 0).then(|| Line::new(MaterialItem::JointSleeve, "each", f64::from(crossings), how))
}

fn sealant(estimate: &Estimate<'_>) -> Vec<Line> {
    let (job, system) = (estimate.job, estimate.job.system());
    let volume = estimate.sealant_with_waste();
    if volume <= Volume::default() {
        return Vec::new();
    }
    let blends = blends_with(job.surface);
    let colour = blends.map_or_else(String::new, |(colour, with)| format!("; {colour}, to blend in with {with}"));
    let what = format!(
        "{} of slot less wire and rod, and {} % for waste{colour}",
        say_volume(estimate.sealant(), system),
        round(job.waste.get::<percent>(), 1),
    );
    let mut lines = Vec::new();
    if job.sealant.kind == SealantKind::HotApplied {
        let (unit, exact) = match system {
            UnitSystem::UsCustomary => ("gal", volume.get::<gallon>()),
            UnitSystem::Metric => ("l", volume.get::<liter>()),
        };
        lines.push(Line::new(MaterialItem::HotSealant, unit, exact, format!("{what}.")));
    } else {
        let exact = (volume / job.sealant.cartridge).get::<ratio>();
        let how = format!("{what}; cartridges of {}.", say_volume(job.sealant.cartridge, system));
        lines.push(Line::new(MaterialItem::SealantCartridge, "cartridge", exact, how));
    }
    if job.sealant.kind == SealantKind::TwoPartReactive {
        let loops = estimate.trenches().map(|(part, _)| part.count()).sum();
        let how = "One for each loop: what stands in a nozzle sets while the next loop is laid.";
        lines.push(Line::new(MaterialItem::MixingNozzle, "each", loops, how));
    }
    if let Some((_, with)) = blends {
        let how = format!("Sand of the colour of the {with} over the wet sealant, so that it blends in.");
        lines.push(Line::new(MaterialItem::BlendingSand, "lot", 1.0, how));
    }
    lines
}

fn by_length(length: Length, system: UnitSystem) -> (&'static str, f64) {
    match system {
        UnitSystem::UsCustomary => ("ft", length.get::<foot>()),
        UnitSystem::Metric => ("m", length.get::<meter>()),
    }
}

fn say_volume(volume: Volume, system: UnitSystem) -> String {
    match system {
        UnitSystem::UsCustomary => format!("{} fl oz", round(volume.get::<fluid_ounce>(), 1)),
        UnitSystem::Metric => format!("{} ml", round(volume.get::<milliliter>(), 0)),
    }
}
