//! Findings about the whole job: rod, wire, jackets, heat, joints, stock, and what is left out.

use uom::si::f64::Length;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::estimate::{LoopEstimate, MaterialEstimate};
use super::resolved::ResolvedMaterialEstimate;
use super::wire::WireRequirement;
use crate::calculation::report::{Diagnostics, FieldPath, Finding};
use crate::practice::cautions::CautionCode;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::materials::RodForm;
use crate::practice::site::SiteHazard;
use crate::quantity::format::{format_count, format_length, format_temperature};

/// Adds the findings.
pub fn judge_job(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    judge_rod(estimate, diagnostics);
    judge_spools(estimate, diagnostics);
    judge_jackets(estimate, diagnostics);
    judge_heat(estimate, diagnostics);
    judge_joints(estimate.job, diagnostics);
    judge_stock(estimate, diagnostics);
    judge_suspended_slab(estimate, diagnostics);
    judge_lead_ins(estimate, diagnostics);
    list_left_out(estimate, diagnostics);
}

fn judge_rod(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    let (job, body) = (estimate.job, FieldPath::BODY);
    let (at, form) = (body.field("backer_rod"), job.rod.form);
    let mut add = |code, level, message: String| {
        diagnostics.add_finding(Finding::new(code, level, &at.field("form"), message));
    };
    let is_preformed = |each: &LoopEstimate<'_>| each.construction.is_preformed();
    if estimate.sawn_loops().any(|(each, _)| !is_preformed(each)) {
        match form {
            RodForm::Continuous => {
                let freezes = job.hazards.contains(&SiteHazard::FreezingClimate);
                let (level, end) = if freezes {
                    (Level::Stop, " Here it freezes: water that follows the rod lifts the sealant out.")
                } else {
                    (Level::Warning, "")
                };
                let message = format!(
                    "Continuous backer rod keeps sealant from flowing round the wire. Use short pieces with gaps between.{end}"
                );
                add(FindingCode::ContinuousRod, level, message);
            }
            RodForm::None => {
                let message = "Nothing holds the single wire down: it floats up in wet sealant. Take short pieces of rod, or say \
                               on site what else holds it.";
                add(FindingCode::WireLoose, Level::Warning, message.to_owned());
            }
            RodForm::Pieces => {}
        }
        if form.is_laid() && job.sealant.pour.is_some() {
            let message = "Hot-applied sealant melts common foam rod. Take rod that its sheet allows for the temperature of the pour.";
            add(FindingCode::RodMelts, Level::Warning, message.to_owned());
        }
    }
    if job.rod_is_asked && form.is_laid() && estimate.loops.iter().any(is_preformed) {
        let message = "A jacketed loop stays down by itself: no backer rod is counted for it.";
        add(FindingCode::RodNotNeeded, Level::Note, message.to_owned());
    }
}

fn judge_spools(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    let (job, body) = (estimate.job, FieldPath::BODY);
    let Some(spool) = job.spools.iter().map(|spool| spool.length).reduce(Length::max) else { return };
    let longest = estimate.wires.iter().map(WireRequirement::longest_piece).fold(Length::default(), Length::max);
    if longest <= spool * 1.000_000_001 {
        return;
    }
    let message = format!(
        "A loop with its lead-in needs {} in one length, and no spool holds that. Take a longer spool; or end the loop in a pull box \
         beside the pavement and splice it to the lead-in there, soldered and sealed: never in the slot.",
        format_length(longest, job.system())
    );
    let finding = Finding::new(FindingCode::SpliceForced, Level::Warning, &body.field("wire_spools"), message);
    diagnostics.add_finding(finding.length("needed", longest, job.system()));
}

fn judge_jackets(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    let (body, first) = (FieldPath::BODY, estimate.loops.iter().position(LoopEstimate::lacks_jacket));
    let Some(index) = first else { return };
    let loops_at = body.field("loops");
    let item_at = loops_at.item(index);
    let loop_at = item_at.field("loop");
    let wire_at = loop_at.field("wire");
    let message = "Whether a preformed loop fits its slot is only assumed: send wire.over_jacket, the diameter over the jacket, from \
                   the loop's sheet.";
    diagnostics.add_finding(Finding::new(
        FindingCode::JacketAssumed,
        Level::Note,
        &wire_at.field("over_jacket"),
        message,
    ));
}

/// Whether wires stand the pour. Every loop whose insulation does not is named; of those whose rating is unknown, the first.
fn judge_heat(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    let (job, body) = (estimate.job, FieldPath::BODY);
    let Some(pour) = job.sealant.pour else { return };
    let (loops, system) = (body.field("loops"), job.system());
    let degrees = |temperature| format_temperature(temperature, system);
    let mut names_unknown = false;
    for (index, loop_estimate) in
        estimate.loops.iter().enumerate().filter(|(_, loop_estimate)| loop_estimate.cuts.is_some())
    {
        let item = loops.item(index);
        let coil = item.field("loop");
        let wire = coil.field("wire");
        let at = wire.field("insulation_rating");
        match loop_estimate.resolved.rating {
            Some(rating) if rating >= pour => {}
            Some(rating) => {
                let message = format!(
                    "The insulation stands {}, and the sealant is poured at {}: it would soften and the wires would touch. Take \
                     wire and jacket rated for the pour, or a sealant that is applied cold.",
                    degrees(rating),
                    degrees(pour)
                );
                let finding = Finding::new(FindingCode::InsulationTooLow, Level::Stop, &at, message)
                    .on(Some(loop_estimate.resolved.subject()));
                diagnostics.add_finding(finding.figure("rating", rating.get::<degree_celsius>(), "celsius").figure(
                    "pour",
                    pour.get::<degree_celsius>(),
                    "celsius",
                ));
            }
            None if names_unknown => {}
            None => {
                names_unknown = true;
                let message = format!(
                    "Nobody said what insulation and jacket stand. Send insulation_rating from the wire's sheet: it must be at \
                     least the {} of the pour.",
                    degrees(pour)
                );
                diagnostics.add_finding(
                    Finding::new(FindingCode::InsulationUnknown, Level::Warning, &at, message)
                        .on(Some(loop_estimate.resolved.subject())),
                );
            }
        }
    }
}

fn judge_joints(job: &ResolvedMaterialEstimate, diagnostics: &mut Diagnostics) {
    if job.crossings == 0 && job.hazards.contains(&SiteHazard::PavementJoint) {
        let message = "There is a joint, and no crossing is counted. Send crossings, so that sleeves are loaded.";
        let body = FieldPath::BODY;
        diagnostics.add_finding(Finding::new(
            FindingCode::PavementJoint,
            Level::Warning,
            &body.field("crossings"),
            message,
        ));
    }
}

fn judge_stock(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    let (job, body) = (estimate.job, FieldPath::BODY);
    if job.stock.is_none() {
        return;
    }
    for loop_estimate in estimate.loops.iter().filter(|loop_estimate| loop_estimate.construction.is_preformed()) {
        // That the layout found none is said there.
        if loop_estimate.is_stock_decided() || loop_estimate.find_in_stock(job).is_some() {
            continue;
        }
        let system = loop_estimate.resolved.coil.system;
        let message = format!(
            "No loop in stock is {} x {} with {} and {} of lead-in, its spare included. Order it, or ask loop-sizing which stock \
             loop would serve.",
            format_length(loop_estimate.resolved.coil.along_travel, system),
            format_length(loop_estimate.resolved.coil.across_lane, system),
            format_count(f64::from(loop_estimate.resolved.coil.turns), "turn"),
            format_length(loop_estimate.resolved.lead_in_needed(), system)
        );
        let finding = Finding::new(FindingCode::NoStockFits, Level::Note, &body.field("stock"), message);
        diagnostics.add_finding(finding.on(Some(loop_estimate.resolved.subject())));
    }
}

/// A suspended slab is judged as a tensioned deck, unless the site hazards name one: these have findings of their own.
fn judge_suspended_slab(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    let job = estimate.job;
    let named =
        [SiteHazard::PostTensionedSlab, SiteHazard::BridgeDeck].iter().any(|hazard| job.hazards.contains(hazard));
    if !job.slab.is_suspended || named || estimate.sawn_loops().next().is_none() {
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
    let body = FieldPath::BODY;
    let slab_at = body.field("slab");
    diagnostics.add_finding(Finding::new(FindingCode::TensionedDeck, level, &slab_at.field("is_suspended"), message));
    diagnostics.add_cautions(&[CautionCode::TensionedSlab]);
}

/// Names lead-ins of which a part lies neither in a cut nor in conduit.
fn judge_lead_ins(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let loops = body.field("loops");
    for (index, loop_estimate) in estimate.loops.iter().enumerate() {
        let (rest, system) = (loop_estimate.unaccounted_lead_in(), loop_estimate.resolved.coil.system);
        if rest <= 1e-6 * loop_estimate.resolved.lead_in.length {
            continue;
        }
        let message = format!(
            "{} of the lead-in lies neither in a saw cut nor in conduit, and nothing is counted for it. Send in_slot and in_conduit \
             that make up its length.",
            format_length(rest, system)
        );
        let at = loops.item(index);
        let finding = Finding::new(FindingCode::NotEstimated, Level::Note, &at.field("lead_in"), message);
        diagnostics.add_finding(finding.on(Some(loop_estimate.resolved.subject())).length("rest", rest, system));
    }
}

/// Names the work that the estimate leaves out.
fn list_left_out(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let mut left: Vec<&str> = Vec::new();
    if estimate.loops.iter().any(|loop_estimate| !loop_estimate.construction.is_sawn()) {
        left.push("digging, bedding sand and what is laid over a buried loop");
    }
    if estimate.loops.iter().any(|loop_estimate| loop_estimate.conduit_length() > Length::default()) {
        left.push("the hours to lay conduit");
    }
    if !left.is_empty() {
        let message = format!("Not counted here: {}.", left.join("; "));
        diagnostics.add_finding(Finding::new(FindingCode::NotEstimated, Level::Note, &body.field("loops"), message));
    }
}
