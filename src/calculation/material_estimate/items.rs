//! What to load on the van.

use uom::si::f64::{Length, Volume};
use uom::si::ratio::{percent, ratio};
use uom::si::volume::{gallon, liter};

use super::bill::{BillLine, length_in, length_in_unit, whole};
use super::burial_items::burial_lines;
use super::estimate::MaterialEstimate;
use super::lead_in_items::lead_in_lines;
use super::loop_estimate::LoopEstimate;
use super::resolved::{ResolvedMaterialEstimate, ResolvedWireSpool};
use super::wire::WireRequirement;
use crate::calculation::report::{Decimals, Statement};
use crate::practice::materials::{MaterialItem, SLEEVE_EACH_SIDE};
use crate::quantity::UnitSystem;
use crate::quantity::format::{format_detail_length_input, format_length_input, format_volume_input};

/// All lines of the bill, in the order of the work.
pub fn bill_lines(estimate: &MaterialEstimate<'_>) -> Vec<BillLine> {
    let mut lines = blade_lines(estimate);
    lines.extend(preformed_lines(estimate));
    lines.extend(wire_lines(estimate));
    lines.extend(rod_lines(estimate));
    lines.extend(burial_lines(estimate));
    lines.extend(lead_in_lines(estimate));
    lines.extend(sleeve_line(estimate));
    lines.extend(sealant_lines(estimate));
    let ends = 2.0 * estimate.loop_count() as f64;
    lines.push(BillLine::new(MaterialItem::Termination, "each", ends, Statement::new("materials-terminations")));
    if estimate.job.needs_line_device {
        lines.push(BillLine::new(MaterialItem::LineDevice, "each", 1.0, Statement::new("materials-line-device")));
    }
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
    for (count, _, cut) in estimate.cuts() {
        let (length, alike) = (count * cut.length(), |a: Length, b: Length| (a - b).abs() < 1e-6 * b);
        if let Some(known) = all.iter_mut().find(|known| alike(known.width, cut.width) && alike(known.blade, cut.blade))
        {
            known.length += length;
            known.depth = known.depth.max(cut.depth());
            known.run_out = known.run_out.max(cut.ends.run_out);
        } else {
            let (depth, run_out) = (cut.depth(), cut.ends.run_out);
            all.push(BladeUse { width: cut.width, blade: cut.blade, length, depth, run_out });
        }
    }
    let by_length = priced_by_length(job);
    let line = |sawn: BladeUse| {
        let blades = (sawn.length / job.saw.blade_life).get::<ratio>();
        let how = Statement::new("materials-blade")
            .detail_length("slot_width", sawn.width, system)
            .detail_length("blade_diameter", sawn.blade, system)
            .length("saw_cut", sawn.length, system)
            .detail_length("slot_depth", sawn.depth, system)
            .detail_length("run_out", sawn.run_out, system)
            .code("charge", blade_charge(job.saw.owns_blades, by_length.is_some()))
            .length("blade_life", job.saw.blade_life, system)
            .count("blades", whole(blades));
        let (unit, exact) = by_length.map_or(("each", blades), |unit| length_in_unit(sawn.length, unit));
        let size = format!(
            "{} x {}",
            format_detail_length_input(sawn.width, system),
            format_detail_length_input(sawn.blade, system)
        );
        let is_owned = job.saw.owns_blades && by_length.is_none();
        BillLine { size: Some(size), is_owned, ..BillLine::new(MaterialItem::SawBlade, unit, exact, how) }
    };
    all.into_iter().map(line).collect()
}

/// The unit of length that the wear of blades is priced by; `None` where blades are bought by the piece.
fn priced_by_length(job: &ResolvedMaterialEstimate) -> Option<&'static str> {
    let prices = job.prices.as_ref()?;
    let own = length_in(Length::default(), job.system()).0;
    let units = [own, "ft", "m"];
    units.into_iter().find(|unit| MaterialItem::SawBlade.price_key(unit).is_some_and(|key| prices.of(&key).is_some()))
}

fn blade_charge(owns_blades: bool, is_by_length: bool) -> &'static str {
    match (owns_blades, is_by_length) {
        (_, true) => "wear",
        (true, false) => "owned",
        (false, false) => "bought",
    }
}

fn preformed_lines(estimate: &MaterialEstimate<'_>) -> Vec<BillLine> {
    let system = estimate.job.system();
    let line = |loop_estimate: &LoopEstimate<'_>| {
        let coil = &loop_estimate.resolved.coil;
        let found = loop_estimate.find_in_stock(estimate.job);
        let needed = loop_estimate.resolved.lead_in_needed();
        let lead_in = found.map_or(needed, |item| item.lead_in_length);
        let supply = match found {
            None => "made_to_size",
            Some(item) if item.lead_in_length > needed * 1.000_001 => "in_stock_longer",
            Some(_) => "in_stock",
        };
        let how = Statement::new("materials-preformed-loop")
            .text("label", loop_estimate.resolved.name())
            .length("along_travel", coil.along_travel, system)
            .length("across_lane", coil.across_lane, system)
            .count("turns", u64::from(coil.turns))
            .length("lead_in_length", lead_in, system)
            .length("lead_in_needed", needed, system)
            .code("supply", supply);
        let mut line = BillLine::new(MaterialItem::PreformedLoop, "each", loop_estimate.count(), how);
        line.sku = found.map(|item| item.sku.clone());
        // Without a number its size is what it is ordered by.
        let length = |length| format_length_input(length, system);
        let made = || {
            let (along, across) = (length(coil.along_travel), length(coil.across_lane));
            format!("{along} x {across}, {} turns, {}", coil.turns, length(lead_in))
        };
        line.size = found.is_none().then(made);
        line
    };
    estimate.loops.iter().filter(|loop_estimate| loop_estimate.construction.is_preformed()).map(line).collect()
}

fn wire_lines(estimate: &MaterialEstimate<'_>) -> Vec<BillLine> {
    let (job, system) = (estimate.job, estimate.job.system());
    let lines = |group: &WireRequirement| {
        let wire = Statement::new("materials-wire")
            .length("wire_length", group.total_length(), system)
            .text("gauge", group.gauge.clone())
            .detail_length("over_insulation", group.over_insulation, system)
            .count("pieces", group.piece_count())
            .percent("allowance", job.wire_allowance.get::<percent>(), Decimals::AtMost(1));
        if group.spools.is_empty() {
            let (unit, exact) = length_in(group.total_length(), system);
            let line = BillLine::new(MaterialItem::LoopWire, unit, exact, wire.code("supply", "by_length"));
            return vec![line.of_size(group.size.clone())];
        }
        let wire = wire.code("supply", "on_spools");
        let taken = job.spools.iter().zip(&group.spools).filter(|(_, count)| **count > 0);
        let line = |(spool, count): (&ResolvedWireSpool, &u64)| {
            let how = Statement::new("materials-spools").length("spool_length", spool.length, system);
            let how = how.followed_by(wire.clone());
            let mut line = BillLine::new(MaterialItem::LoopWire, MaterialItem::SPOOL, *count as f64, how);
            line.sku.clone_from(&spool.sku);
            line.of_size(group.size.clone())
        };
        taken.map(line).collect()
    };
    estimate.wires.iter().flat_map(lines).collect()
}

/// Rod: one line for each diameter.
fn rod_lines(estimate: &MaterialEstimate<'_>) -> Vec<BillLine> {
    let (job, system) = (estimate.job, estimate.job.system());
    let line = |(diameter, length): (Length, Length)| {
        let (unit, exact) = length_in(length, system);
        let how = Statement::new("materials-rod")
            .member("form", job.rod.form)
            .detail_length("rod_diameter", diameter, system)
            .length("rod_length", length, system);
        let size = format_detail_length_input(diameter, system);
        BillLine::new(MaterialItem::BackerRod, unit, exact, how).of_size(size)
    };
    estimate.rods().into_iter().map(line).collect()
}

fn sleeve_line(estimate: &MaterialEstimate<'_>) -> Option<BillLine> {
    let crossings = estimate.job.crossings;
    let how = || Statement::new("materials-sleeves").text("each_side", SLEEVE_EACH_SIDE);
    (crossings > 0).then(|| BillLine::new(MaterialItem::JointSleeve, "each", f64::from(crossings), how()))
}

fn sealant_lines(estimate: &MaterialEstimate<'_>) -> Vec<BillLine> {
    let (job, system) = (estimate.job, estimate.job.system());
    let volume = estimate.sealant_with_waste();
    if volume <= Volume::default() {
        return Vec::new();
    }
    let blends_with = job.surface.blends_with();
    let sealant = Statement::new("materials-sealant")
        .volume("sealant_net", estimate.sealant(), system)
        .percent("waste_percent", job.waste.get::<percent>(), Decimals::AtMost(1))
        .code("pavement", blends_with.unwrap_or("other"));
    let mut lines = Vec::new();
    if job.sealant.kind.is_poured_hot() {
        let (unit, exact) = match system {
            UnitSystem::UsCustomary => ("gal", volume.get::<gallon>()),
            UnitSystem::Metric => ("l", volume.get::<liter>()),
        };
        let line = BillLine::new(MaterialItem::HotSealant, unit, exact, sealant.code("supply", "by_volume"));
        lines.push(BillLine { sealant: Some(job.sealant.kind), blends_with, ..line });
    } else {
        let exact = (volume / job.sealant.cartridge).get::<ratio>();
        let how = sealant.code("supply", "in_cartridges").volume("cartridge", job.sealant.cartridge, system);
        let line = BillLine::new(MaterialItem::SealantCartridge, "cartridge", exact, how);
        let line = line.of_size(format_volume_input(job.sealant.cartridge, system));
        lines.push(BillLine { sealant: Some(job.sealant.kind), blends_with, ..line });
    }
    if job.sealant.kind.is_mixed_on_site() {
        let loops = estimate.sawn_loops().map(|(loop_estimate, _)| loop_estimate.count()).sum();
        let how = Statement::new("materials-nozzles");
        lines.push(BillLine::new(MaterialItem::MixingNozzle, "each", loops, how));
    }
    if let Some(pavement) = blends_with {
        let how = Statement::new("materials-sand").code("pavement", pavement);
        lines.push(BillLine { blends_with, ..BillLine::new(MaterialItem::BlendingSand, "lot", 1.0, how) });
    }
    lines
}
