//! What to load on the van.

use uom::si::f64::{Length, Volume};
use uom::si::length::{foot, meter};
use uom::si::ratio::{percent, ratio};
use uom::si::volume::{fluid_ounce, gallon, liter, milliliter};

use super::estimate::{Estimate, Part};
use super::report::MaterialLine;
use super::{stock, wire};
use crate::practice::Vocabulary;
use crate::practice::materials::{MaterialItem, SLEEVE_EACH_SIDE, blade_diameters, colour, flange_radius, pavement};
use crate::practice::sealants::SealantKind;
use crate::practice::site::Construction;
use crate::practice::sources::Source;
use crate::quantity::System;
use crate::quantity::shown::{counted, round, say, say_small};

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

fn blades(estimate: &Estimate<'_>) -> Vec<Line> {
    let (job, system) = (estimate.job, estimate.job.system());
    // Width, length and depth of what each blade cuts.
    let mut cuts: Vec<(Length, Length, Length)> = Vec::new();
    for (part, trench) in estimate.trenches() {
        let of_loop = trench.straight + trench.diagonals + trench.ends.length();
        let of_lead_in = trench.lead_in.as_ref().map(|cut| (cut.width, trench.total() - of_loop, cut.depth));
        for (width, length, depth) in [Some((trench.width, of_loop, trench.depth)), of_lead_in].into_iter().flatten() {
            let length = part.count() * length;
            match cuts.iter_mut().find(|(known, ..)| (*known - width).abs() < 1e-6 * width) {
                Some(cut) => *cut = (cut.0, cut.1 + length, cut.2.max(depth)),
                None => cuts.push((width, length, depth)),
            }
        }
    }
    let line = |(width, length, depth): (Length, Length, Length)| {
        let exact = job.saw.blade_life.map_or(1.0, |life| (length / life).get::<ratio>());
        let enough = reaches(job.saw.blade, depth);
        let blade = if enough { job.saw.blade } else { blade_for(depth) };
        let how = format!(
            "{} wide and {} across, for {} of cut down to {}.",
            say_small(width, system),
            say_small(blade, system),
            say(length, system),
            say_small(depth, system)
        );
        Line::new(MaterialItem::SawBlade, "each", exact, how)
    };
    cuts.into_iter().map(line).collect()
}

/// Whether a blade reaches a depth.
pub fn reaches(blade: Length, depth: Length) -> bool {
    depth <= (blade / 2.0 - flange_radius()) * 1.000_001
}

/// The smallest blade that reaches a depth.
pub fn blade_for(depth: Length) -> Length {
    blade_diameters().into_iter().find(|blade| reaches(*blade, depth)).unwrap_or(2.0 * (depth + flange_radius()))
}

fn preformed(estimate: &Estimate<'_>) -> Vec<Line> {
    let system = estimate.job.system();
    let line = |part: &Part<'_>| {
        let coil = &part.one.coil;
        let found = stock::find(part.one, part.construction, estimate.job);
        let how = format!(
            "{}: {} x {}, {}, with {} of lead-in{}.",
            part.one.label,
            say(coil.along_travel, system),
            say(coil.across_lane, system),
            counted(f64::from(coil.turns), "turn"),
            say(part.one.lead_in.length + part.one.lead_in.spare, system),
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
    let pieces: Vec<Length> = pieces(estimate);
    let total = pieces.iter().copied().fold(Length::default(), |a, b| a + b);
    if pieces.is_empty() {
        return Vec::new();
    }
    let wound = estimate.parts.iter().filter(|part| part.wire().is_some());
    let mut gauges: Vec<_> = wound.map(|part| part.one.coil.wire.gauge.as_str()).collect();
    gauges.dedup();
    let what = format!(
        "{} of {} in {}: the turns, and twice each lead-in with its spare",
        say(total, system),
        gauges.join(" and "),
        counted(pieces.len() as f64, "length")
    );
    if job.spools.is_empty() {
        let (unit, exact) = by_length(total, system);
        return vec![Line::new(MaterialItem::LoopWire, unit, exact, format!("{what}, each without a splice."))];
    }
    let chosen = wire::choose(&pieces, job);
    let taken = job.spools.iter().zip(chosen.counts).filter(|(_, count)| *count > 0);
    let line = |((length, sku), count): (&(Length, Option<String>), u32)| {
        let how = format!("Spools of {}. {what}, each from one spool where a spool holds it.", say(*length, system));
        let mut line = Line::new(MaterialItem::LoopWire, "spool", f64::from(count), how);
        line.sku.clone_from(sku);
        line
    };
    taken.map(line).collect()
}

/// The wire of each hand-wound loop, one length each.
pub fn pieces(estimate: &Estimate<'_>) -> Vec<Length> {
    let each = |part: &Part<'_>| part.wire().map(|wire| vec![wire; part.one.quantity as usize]);
    estimate.parts.iter().filter_map(each).flatten().collect()
}

fn rod(estimate: &Estimate<'_>) -> Option<Line> {
    let (job, system) = (estimate.job, estimate.job.system());
    let total = estimate.sum(|trench| trench.rod);
    let (_, trench) = estimate.trenches().find(|(_, trench)| trench.rod > Length::default())?;
    let (unit, exact) = by_length(total, system);
    let how = format!(
        "{} of {} rod, {} in all.",
        job.rod.form.label(),
        say_small(job.rod.diameter_for(trench.width), system),
        say(total, system)
    );
    Some(Line::new(MaterialItem::BackerRod, unit, exact, how))
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
    let colour = colour(job.surface);
    let what = format!(
        "{} of slot less wire and rod, and {} % for waste; {colour}, to blend in with {}",
        say_volume(estimate.sealant(), system),
        round(job.waste.get::<percent>(), 1),
        pavement(job.surface),
    );
    let mut lines = Vec::new();
    if job.sealant.kind == SealantKind::HotApplied {
        let (unit, exact) = match system {
            System::UsCustomary => ("gal", volume.get::<gallon>()),
            System::Metric => ("l", volume.get::<liter>()),
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
    let how = format!(
        "Sand of the colour of {} over the wet sealant, so that it blends in.",
        job.surface.label().to_lowercase()
    );
    lines.push(Line::new(MaterialItem::BlendingSand, "lot", 1.0, how));
    lines
}

fn by_length(length: Length, system: System) -> (&'static str, f64) {
    match system {
        System::UsCustomary => ("ft", length.get::<foot>()),
        System::Metric => ("m", length.get::<meter>()),
    }
}

fn say_volume(volume: Volume, system: System) -> String {
    match system {
        System::UsCustomary => format!("{} fl oz", round(volume.get::<fluid_ounce>(), 1)),
        System::Metric => format!("{} ml", round(volume.get::<milliliter>(), 0)),
    }
}
