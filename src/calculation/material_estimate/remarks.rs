//! What is said once for the whole job: rod, wire, jackets, heat, joints, stock, and what is left out.

use uom::si::f64::Length;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::estimate::{Estimate, Part};
use super::job::Job;
use super::stock;
use crate::calculation::report::{Diagnostics, FieldPath, Finding};
use crate::practice::cautions::CautionCode;
use crate::practice::findings::{FindingCode, Level};
use crate::practice::materials::RodForm;
use crate::practice::site::{Construction, SiteHazard};
use crate::quantity::format::{format_count, format_length, format_temperature};

/// Says it.
pub fn judge_job(estimate: &Estimate<'_>, diagnostics: &mut Diagnostics) {
    rod(estimate, diagnostics);
    spools(estimate, diagnostics);
    jackets(estimate, diagnostics);
    heat(estimate, diagnostics);
    joints(estimate.job, diagnostics);
    shelf(estimate, diagnostics);
    suspended(estimate, diagnostics);
    ways(estimate, diagnostics);
    left_out(estimate, diagnostics);
}

fn rod(estimate: &Estimate<'_>, diagnostics: &mut Diagnostics) {
    let (job, body) = (estimate.job, FieldPath::BODY);
    let at = body.field("backer_rod");
    let form_at = at.field("form");
    let is_wound = |part: &Part<'_>| part.construction == Construction::HandWound;
    let wound = estimate.trenches().any(|(part, _)| is_wound(part));
    if wound && job.rod.form == RodForm::Continuous {
        let freezes = job.hazards.contains(&SiteHazard::FreezingClimate);
        let (level, end) = if freezes {
            (Level::Stop, " Here it freezes: water that follows the rod lifts the sealant out.")
        } else {
            (Level::Warning, "")
        };
        let message = format!(
            "Continuous backer rod keeps sealant from flowing round the wire. Use short pieces with gaps between.{end}"
        );
        diagnostics.add_finding(Finding::new(FindingCode::ContinuousRod, level, &form_at, message));
    }
    if wound && job.rod.form == RodForm::None {
        let message = "Nothing holds the single wire down: it floats up in wet sealant. Take short pieces of rod, or say on site \
                       what else holds it.";
        diagnostics.add_finding(Finding::new(FindingCode::WireLoose, Level::Warning, &form_at, message));
    }
    if wound && job.rod.form != RodForm::None && job.sealant.pour.is_some() {
        let message = "Hot-applied sealant melts common foam rod. Take rod that its sheet allows for the temperature of the pour.";
        diagnostics.add_finding(Finding::new(FindingCode::RodMelts, Level::Warning, &form_at, message));
    }
    let jacketed = estimate.parts.iter().any(|part| !is_wound(part));
    if job.rod_is_asked && job.rod.form != RodForm::None && jacketed {
        let message = "A jacketed loop stays down by itself: no backer rod is counted for it.";
        diagnostics.add_finding(Finding::new(FindingCode::RodNotNeeded, Level::Note, &form_at, message));
    }
}

fn spools(estimate: &Estimate<'_>, diagnostics: &mut Diagnostics) {
    let (job, body) = (estimate.job, FieldPath::BODY);
    let Some(spool) = job.spools.iter().map(|(length, _)| *length).reduce(Length::max) else { return };
    let longest = estimate.wires.iter().map(super::wire::WireGroup::longest).fold(Length::default(), Length::max);
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

/// Whether the bundle of this loop was measured over its jacket.
pub fn lacks_jacket(part: &Part<'_>) -> bool {
    part.construction == Construction::PreformedSawCut && part.one.coil.wire.over_jacket.is_none()
}

fn jackets(estimate: &Estimate<'_>, diagnostics: &mut Diagnostics) {
    let (body, without) = (FieldPath::BODY, estimate.parts.iter().position(lacks_jacket));
    let Some(index) = without else { return };
    let (loops, one) = (body.field("loops"), |at: &FieldPath<'_>| at.field("over_jacket").pointer());
    let item = loops.item(index);
    let coil = item.field("loop");
    let message = "Whether a preformed loop fits its slot is only assumed: send wire.over_jacket, the diameter over the jacket, from \
                   the loop's sheet.";
    diagnostics.add_finding(Finding::at(FindingCode::JacketAssumed, Level::Note, one(&coil.field("wire")), message));
}

/// Whether wires stand the pour; of loops that are alike in this the first is named.
fn heat(estimate: &Estimate<'_>, diagnostics: &mut Diagnostics) {
    let (job, body) = (estimate.job, FieldPath::BODY);
    let Some(pour) = job.sealant.pour else { return };
    let (loops, system) = (body.field("loops"), job.system());
    let degrees = |temperature| format_temperature(temperature, system);
    let mut is_unknown_said = false;
    for (index, part) in estimate.parts.iter().enumerate().filter(|(_, part)| part.trench.is_some()) {
        let (item, label) = (loops.item(index), Some(part.one.label.as_str()));
        let coil = item.field("loop");
        let wire = coil.field("wire");
        let at = wire.field("insulation_rating");
        match part.one.rating {
            Some(rating) if rating >= pour => {}
            Some(rating) => {
                let message = format!(
                    "The insulation stands {}, and the sealant is poured at {}: it would soften and the wires would touch. Take \
                     wire and jacket rated for the pour, or a sealant that is applied cold.",
                    degrees(rating),
                    degrees(pour)
                );
                let finding = Finding::new(FindingCode::InsulationTooLow, Level::Stop, &at, message).on(label);
                diagnostics.add_finding(finding.figure("rating", rating.get::<degree_celsius>(), "celsius").figure(
                    "pour",
                    pour.get::<degree_celsius>(),
                    "celsius",
                ));
            }
            None if is_unknown_said => {}
            None => {
                is_unknown_said = true;
                let message = format!(
                    "Nobody said what insulation and jacket stand. Send insulation_rating from the wire's sheet: it must be at \
                     least the {} of the pour.",
                    degrees(pour)
                );
                diagnostics
                    .add_finding(Finding::new(FindingCode::InsulationUnknown, Level::Warning, &at, message).on(label));
            }
        }
    }
}

fn joints(job: &Job, diagnostics: &mut Diagnostics) {
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

fn shelf(estimate: &Estimate<'_>, diagnostics: &mut Diagnostics) {
    let (job, body) = (estimate.job, FieldPath::BODY);
    if job.stock.is_none() {
        return;
    }
    for part in estimate.parts.iter().filter(|part| part.construction != Construction::HandWound) {
        if stock::find(part.one, part.construction, job).is_some() {
            continue;
        }
        let system = part.one.coil.system;
        let message = format!(
            "No loop in stock is {} x {} with {} and {} of lead-in, its spare included. Order it, or ask loop-sizing which stock \
             loop would serve.",
            format_length(part.one.coil.along_travel, system),
            format_length(part.one.coil.across_lane, system),
            format_count(f64::from(part.one.coil.turns), "turn"),
            format_length(part.one.lead_in_needed(), system)
        );
        let finding = Finding::new(FindingCode::NoStockFits, Level::Note, &body.field("stock"), message);
        diagnostics.add_finding(finding.on(Some(&part.one.label)));
    }
}

/// A suspended slab is a deck like any other; the hazards of the site say so themselves.
fn suspended(estimate: &Estimate<'_>, diagnostics: &mut Diagnostics) {
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
    let body = FieldPath::BODY;
    let slab_at = body.field("slab");
    diagnostics.add_finding(Finding::new(FindingCode::TensionedDeck, level, &slab_at.field("is_suspended"), message));
    diagnostics.add_cautions(&[CautionCode::TensionedSlab]);
}

/// Lead-ins of which a part lies neither in a cut nor in conduit.
fn ways(estimate: &Estimate<'_>, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let loops = body.field("loops");
    for (index, part) in estimate.parts.iter().enumerate() {
        let (rest, system) = (part.nowhere(), part.one.coil.system);
        if rest <= 1e-6 * part.one.lead_in.length {
            continue;
        }
        let message = format!(
            "{} of the lead-in lies neither in a saw cut nor in conduit, and nothing is counted for it. Send in_slot and in_conduit \
             that make up its length.",
            format_length(rest, system)
        );
        let at = loops.item(index);
        let finding = Finding::new(FindingCode::NotEstimated, Level::Note, &at.field("lead_in"), message);
        diagnostics.add_finding(finding.on(Some(&part.one.label)).length("rest", rest, system));
    }
}

fn left_out(estimate: &Estimate<'_>, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let mut left: Vec<&str> = Vec::new();
    if estimate.parts.iter().any(|part| part.construction == Construction::PreformedDirectBurial) {
        left.push("digging, bedding sand and what is laid over a buried loop");
    }
    if estimate.parts.iter().any(|part| part.conduit() > Length::default()) {
        left.push("the hours to lay conduit");
    }
    if !left.is_empty() {
        let message = format!("Not counted here: {}.", left.join("; "));
        diagnostics.add_finding(Finding::new(FindingCode::NotEstimated, Level::Note, &body.field("loops"), message));
    }
}

/// Says what the total leaves out.
pub fn judge_cost(unpriced: &[String], diagnostics: &mut Diagnostics) {
    if unpriced.is_empty() {
        return;
    }
    let spool = if unpriced.iter().any(|name| name == "loop_wire") {
        " Wire on a spool is priced by the sku of the spool: give it one."
    } else {
        ""
    };
    let message = format!("The total leaves out {}: send prices under these names.{spool}", unpriced.join(", "));
    let body = FieldPath::BODY;
    let finding = Finding::new(FindingCode::Unpriced, Level::Warning, &body.field("prices"), message);
    diagnostics.add_finding(finding.figure("unpriced", unpriced.len() as f64, "count"));
}
