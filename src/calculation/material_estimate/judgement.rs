//! What is to be said about cuts, slots, rod and wire.

use uom::si::f64::Length;
use uom::si::length::inch;

use super::estimate::{Estimate, Part};
use super::fit::{Fit, Verdict};
use super::items::{blade_for, reaches};
use super::job::Job;
use super::trench::Trench;
use super::{items, stock, wire};
use crate::calculation::answer::{At, Finding, Notes};
use crate::practice::findings::{FindingCode, Level};
use crate::practice::materials::{RodForm, steel_clearance};
use crate::practice::site::{Construction, SiteHazard};
use crate::quantity::System;
use crate::quantity::shown::{counted, say, say_small};

/// Judges one loop with its trench; `slot_at` is the place of its slot in the request.
pub fn judge_trench(part: &Part<'_>, trench: &Trench, slot_at: &At<'_>, job: &Job, notes: &mut Notes) {
    let (label, system) = (part.one.label.as_str(), part.one.coil.system);
    let mut find = |code, level, at: &At<'_>, message: String, figures: &[(&'static str, Length)]| {
        let finding = Finding::new(code, level, at, message).on(Some(label));
        let finding = figures.iter().fold(finding, |finding, (name, value)| small(finding, name, *value, system));
        notes.find(finding);
    };
    let body = At::BODY;
    let (slab_at, saw_at) = (body.field("slab"), body.field("saw"));
    let depth = say_small(trench.depth, system);
    let hair = 1e-9 * trench.depth;
    if trench.needed_depth > trench.depth + hair {
        let message = format!(
            "Wires {} high under the asked cover need a slot {} deep. Cut that deep if the slab allows it, or take thinner wire \
             or less cover.",
            say_small(trench.stack, system),
            say_small(trench.needed_depth, system)
        );
        let figures =
            [("needed_depth", trench.needed_depth), ("slot_depth", trench.depth), ("cover_left", trench.cover)];
        find(FindingCode::SlotTooShallow, Level::Stop, &slot_at.field("depth"), message, &figures);
    }
    if let Some(thickness) = job.slab.thickness {
        let at = slab_at.field("thickness");
        let figures = [("slot_depth", trench.depth), ("slab_thickness", thickness)];
        if trench.depth >= thickness - hair {
            let message = format!(
                "A cut of {depth} goes through the slab. Do not cut; take a thinner wire, fewer turns or less cover."
            );
            find(FindingCode::CutDeepForSlab, Level::Stop, &at, message, &figures);
        } else if trench.depth > thickness / 3.0 + hair {
            let message = format!(
                "A cut of {depth} is deeper than a third of the slab and weakens it. Cut less deep, or ask whoever answers for the \
                 slab."
            );
            find(FindingCode::CutDeepForSlab, Level::Warning, &at, message, &figures);
        }
    }
    if let Some(steel) = job.slab.steel.filter(|steel| trench.depth > *steel - steel_clearance() + hair) {
        let message = format!(
            "A cut of {depth} comes within {} of steel that lies {} deep. Do not cut it so deep: never cut steel. Take fewer turns, \
             thinner wire or less cover, so that {} is enough.",
            say_small(steel_clearance(), system),
            say_small(steel, system),
            say_small((steel - steel_clearance()).max(Length::default()), system)
        );
        let figures = [("slot_depth", trench.depth), ("steel_depth", steel)];
        find(FindingCode::SteelNearCut, Level::Stop, &slab_at.field("reinforcement_depth"), message, &figures);
    }
    if !reaches(job.saw.blade, trench.depth) {
        let message = format!(
            "A blade of {} does not reach {depth}. Take one of {}.",
            say_small(job.saw.blade, system),
            say_small(blade_for(trench.depth), system)
        );
        let figures = [("blade_diameter", job.saw.blade), ("slot_depth", trench.depth)];
        find(FindingCode::BladeTooSmall, Level::Warning, &saw_at.field("blade_diameter"), message, &figures);
    }
    if let Some(edge) = job.slab.edge.filter(|edge| trench.ends.reach > *edge + hair) {
        let message = format!(
            "For full depth the blade runs {} past the loop, and the edge is {} away. Drill the corners (cored), take a smaller \
             blade, or finish the ends with a chisel.",
            say_small(trench.ends.reach, system),
            say_small(edge, system)
        );
        let figures = [("reach", trench.ends.reach), ("edge_distance", edge)];
        find(FindingCode::OverrunLeavesSlab, Level::Warning, &slab_at.field("edge_distance"), message, &figures);
    }
    let rod = job.rod.height_in(trench.width);
    let room = trench.depth - trench.stack - job.sealant.finish;
    if trench.rod_form != RodForm::None && rod > room + hair {
        let message = format!(
            "Rod {} high does not fit between the wire and the finished sealant. Take thinner rod or cut deeper.",
            say_small(rod, system)
        );
        let figures = [("rod_height", rod), ("room", room)];
        find(FindingCode::RodStandsOut, Level::Warning, &body.field("backer_rod"), message, &figures);
    }
}

/// Says where a slot is too narrow for sealant, or wider than needed.
pub fn judge_fit(fit: &Fit, part: &Part<'_>, slot_at: &At<'_>, notes: &mut Notes) {
    let body = At::BODY;
    let (at, what) = match fit.place {
        "lead_in" => (body.field("lead_in_slot"), "The lead-in's slot"),
        _ => (*slot_at, "The slot"),
    };
    let (code, level) = match fit.verdict {
        Verdict::Right => return,
        Verdict::TooNarrow => (FindingCode::SlotTooNarrow, Level::Warning),
        Verdict::Generous => (FindingCode::SlotGenerous, Level::Note),
    };
    let system = part.one.coil.system;
    let message = format!("{what} of {}: {}", say_small(fit.width, system), fit.advice);
    let finding = Finding::new(code, level, &at.field("width"), message).on(Some(&part.one.label));
    let finding = small(finding, "slot_width", fit.width, system);
    notes.find(small(finding, "widest", fit.widest, system));
}

/// What is said once for the whole job.
pub fn judge_job(estimate: &Estimate<'_>, notes: &mut Notes) {
    let job = estimate.job;
    judge_rod(estimate, notes);
    judge_wire(estimate, notes);
    judge_stock(estimate, notes);
    judge_suspended(estimate, notes);
    let body = At::BODY;
    if estimate.trenches().any(|(_, trench)| trench.lead_in.is_some()) {
        let deepest = estimate.trenches().filter_map(|(_, trench)| trench.lead_in.as_ref().map(|cut| cut.run_out));
        let reach = deepest.fold(Length::default(), Length::max);
        let message = format!(
            "The cut of a lead-in must be deep where it meets the loop and where it leaves the slab: the blade runs {} on at both \
             ends. Where a kerb, a box or the edge stands in the way, finish that end with a chisel or a drill.",
            say_small(reach, job.system())
        );
        let finding = Finding::new(FindingCode::OverrunLeavesSlab, Level::Note, &body.field("lead_in_slot"), message);
        notes.find(small(finding, "run_out", reach, job.system()));
    }
    if estimate.parts.iter().any(|part| part.construction == Construction::PreformedDirectBurial) {
        let message =
            "Not counted here: digging, bedding sand and what is laid over a buried loop; take them with the surface.";
        notes.find(Finding::new(FindingCode::NotEstimated, Level::Note, &body.field("loops"), message));
    }
}

fn judge_rod(estimate: &Estimate<'_>, notes: &mut Notes) {
    let (job, body) = (estimate.job, At::BODY);
    let at = body.field("backer_rod");
    let form_at = at.field("form");
    if job.rod.form == RodForm::Continuous {
        let freezes = job.hazards.contains(&SiteHazard::FreezingClimate);
        let (level, end) = if freezes {
            (Level::Stop, " Here it freezes: water that follows the rod lifts the sealant out.")
        } else {
            (Level::Warning, "")
        };
        let message = format!(
            "Continuous backer rod keeps sealant from flowing round the wire. Use short pieces with gaps between.{end}"
        );
        notes.find(Finding::new(FindingCode::ContinuousRod, level, &form_at, message));
    }
    let jacketed = estimate.parts.iter().any(|part| part.construction != Construction::HandWound);
    if job.rod_is_asked && job.rod.form != RodForm::None && jacketed {
        let message = "A jacketed loop stays down by itself: no backer rod is counted for it.";
        notes.find(Finding::new(FindingCode::RodNotNeeded, Level::Note, &form_at, message));
    }
}

fn judge_wire(estimate: &Estimate<'_>, notes: &mut Notes) {
    let (job, body) = (estimate.job, At::BODY);
    let pieces = items::pieces(estimate);
    if job.spools.is_empty() || pieces.is_empty() {
        return;
    }
    let spliced = wire::choose(&pieces, job).spliced;
    let Some(longest) = spliced.iter().map(|index| pieces[*index]).reduce(Length::max) else { return };
    let message = format!(
        "A loop with its lead-in needs {} in one length, and no spool holds that. Take a longer spool; or end the loop in a pull box \
         beside the pavement and splice it to the lead-in there, soldered and sealed: never in the slot.",
        say(longest, job.system())
    );
    let finding = Finding::new(FindingCode::SpliceForced, Level::Warning, &body.field("wire_spools"), message);
    notes.find(finding.length("needed", longest, job.system()));
}

fn judge_stock(estimate: &Estimate<'_>, notes: &mut Notes) {
    let (job, body) = (estimate.job, At::BODY);
    if job.stock.is_none() {
        return;
    }
    for part in estimate.parts.iter().filter(|part| part.construction != Construction::HandWound) {
        if stock::find(part.one, part.construction, job).is_some() {
            continue;
        }
        let system = part.one.coil.system;
        let message = format!(
            "No loop in stock is {} x {} with {} and {} of lead-in. Order it, or ask loop-sizing which stock loop would serve.",
            say(part.one.coil.along_travel, system),
            say(part.one.coil.across_lane, system),
            counted(f64::from(part.one.coil.turns), "turn"),
            say(part.one.lead_in.length, system)
        );
        let finding = Finding::new(FindingCode::NoStockFits, Level::Note, &body.field("stock"), message);
        notes.find(finding.on(Some(&part.one.label)));
    }
}

/// A suspended slab is a deck like any other; the hazards of the site say so themselves.
fn judge_suspended(estimate: &Estimate<'_>, notes: &mut Notes) {
    let job = estimate.job;
    let named =
        [SiteHazard::PostTensionedSlab, SiteHazard::BridgeDeck].iter().any(|hazard| job.hazards.contains(hazard));
    if !job.slab.is_suspended || named || estimate.trenches().next().is_none() {
        return;
    }
    let (level, message) = if job.slab.cut_approved {
        (
            Level::Warning,
            "Keep the scan and the engineer's written word on site, and cut only where and as deep as they allow.",
        )
    } else {
        let message = "Treat a suspended slab as post-tensioned until drawings or a scan show otherwise: no cut without a scan and \
                       the engineer's written word. Send cut_approved once you have both.";
        (Level::Stop, message)
    };
    let body = At::BODY;
    let slab_at = body.field("slab");
    notes.find(Finding::new(FindingCode::TensionedDeck, level, &slab_at.field("is_suspended"), message));
    notes.caution(&[crate::practice::cautions::CautionCode::TensionedSlab]);
}

/// Says what the total leaves out.
pub fn judge_cost(unpriced: &[String], notes: &mut Notes) {
    if unpriced.is_empty() {
        return;
    }
    let message = format!("The total leaves out {}: send their prices.", unpriced.join(", "));
    let body = At::BODY;
    let finding = Finding::new(FindingCode::Unpriced, Level::Warning, &body.field("prices"), message);
    notes.find(finding.figure("unpriced", unpriced.len() as f64, "count"));
}

/// Adds a small length in the system of the reader.
fn small(finding: Finding, name: &'static str, length: Length, system: System) -> Finding {
    match system {
        System::UsCustomary => finding.figure(name, length.get::<inch>(), "inch"),
        System::Metric => finding.figure(name, length.get::<uom::si::length::millimeter>(), "mm"),
    }
}
