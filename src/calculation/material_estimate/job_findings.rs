//! Findings about the whole job: rod, wire, jackets, heat, joints, stock, and what is left out.

use uom::si::f64::Length;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::estimate::MaterialEstimate;
use super::loop_estimate::LoopEstimate;
use super::resolved::ResolvedMaterialEstimate;
use super::wire::WireRequirement;
use crate::calculation::input::judge_shortage;
use crate::calculation::report::{Diagnostics, FieldPath, Finding, ListJoin, Statement};
use crate::practice::burial::{Burial, LoopBed, usual_cover};
use crate::practice::cautions::CautionCode;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::materials::{Corner, RodForm};
use crate::practice::site::SiteHazard;

/// Adds the findings.
pub fn judge_job(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    judge_corners(estimate, diagnostics);
    judge_steel(estimate, diagnostics);
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

/// Where cuts along both sides reach the sharp corner and a diagonal crosses it, the corner stands alone.
fn judge_corners(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    let (job, body) = (estimate.job, FieldPath::BODY);
    let cut_free = estimate.sawn_loops().find_map(|(each, cuts)| {
        let (leg, run_out) = (each.resolved.coil.corner_cut, cuts.loop_cut.ends.run_out);
        let is_free = match each.resolved.corner(&job.saw) {
            Corner::DiagonalFull => true,
            Corner::Diagonal => run_out >= leg,
            Corner::SquareOverrun | Corner::Cored => false,
        };
        is_free.then_some((leg, run_out))
    });
    let Some((leg, run_out)) = cut_free else { return };
    let (saw_at, system) = (body.field("saw"), job.system());
    let message = Statement::new("materials-corner-stands-alone")
        .detail_length("corner_cut", leg, system)
        .detail_length("run_out", run_out, system)
        .code("by", if run_out >= leg { "run_out" } else { "full_cut" });
    diagnostics.add_finding(Finding::new(
        FindingCode::CornerStandsAlone,
        Level::Note,
        &saw_at.field("corner"),
        message,
    ));
}

/// Where a loop that is tied in concrete does not lie over its steel.
fn judge_steel(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    let (job, body) = (estimate.job, FieldPath::BODY);
    let Some(steel) = job.slab.steel else { return };
    let buried = estimate.loops.iter().filter(|each| !each.construction.is_sawn());
    let bottom = |each: &LoopEstimate<'_>| {
        let cover = each.burial_cover(job);
        (cover, cover + each.resolved.coil.height_in_slot(each.construction))
    };
    let is_tied = Burial::in_surface(job.surface).bed == LoopBed::TiedInForm;
    let Some((cover, _)) = buried.map(bottom).find(|(_, bottom)| is_tied && *bottom > steel) else { return };
    let (slab_at, system) = (body.field("slab"), job.system());
    let message = Statement::new("materials-buried-at-steel")
        .detail_length("cover", cover, system)
        .detail_length("steel_depth", steel, system)
        .detail_length("enough", usual_cover(job.surface, Some(steel), system), system);
    let at = slab_at.field("reinforcement_depth");
    diagnostics.add_finding(Finding::new(FindingCode::BuriedAtSteel, Level::Warning, &at, message));
}

fn judge_rod(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    let (job, body) = (estimate.job, FieldPath::BODY);
    let (at, form) = (body.field("backer_rod"), job.rod.form);
    let mut add = |code, level, message: Statement| {
        diagnostics.add_finding(Finding::new(code, level, &at.field("form"), message));
    };
    let is_preformed = |each: &LoopEstimate<'_>| each.construction.is_preformed();
    if estimate.sawn_loops().any(|(each, _)| !is_preformed(each)) {
        match form {
            RodForm::Continuous => {
                let freezes = job.hazards.contains(&SiteHazard::FreezingClimate);
                let message = Statement::new("materials-continuous-rod");
                if freezes {
                    let message = message.followed_by(Statement::new("materials-continuous-rod-freezes"));
                    add(FindingCode::ContinuousRod, Level::Stop, message);
                } else {
                    add(FindingCode::ContinuousRod, Level::Warning, message);
                }
            }
            RodForm::None => {
                add(FindingCode::WireLoose, Level::Warning, Statement::new("materials-wire-loose"));
            }
            RodForm::Pieces => {}
        }
        if form.is_laid() && job.sealant.pour.is_some() {
            add(FindingCode::RodMelts, Level::Warning, Statement::new("materials-rod-melts"));
        }
    }
    if job.rod_is_asked && form.is_laid() && estimate.loops.iter().any(is_preformed) {
        add(FindingCode::RodNotNeeded, Level::Note, Statement::new("materials-rod-not-needed"));
    }
}

fn judge_spools(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    let (job, body) = (estimate.job, FieldPath::BODY);
    let Some(spool) = job.spools.iter().map(|spool| spool.length).reduce(Length::max) else { return };
    let longest = estimate.wires.iter().map(WireRequirement::longest_piece).fold(Length::default(), Length::max);
    if longest <= spool * 1.000_000_001 {
        return;
    }
    let message = Statement::new("materials-splice-forced").length("needed", longest, job.system());
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
    let (at, message) = (wire_at.field("over_jacket"), Statement::new("materials-jacket-assumed"));
    diagnostics.add_finding(Finding::new(FindingCode::JacketAssumed, Level::Note, &at, message).send(&at));
}

/// Whether wires stand the pour. Every loop whose insulation does not is named; of those whose rating is unknown, the first.
fn judge_heat(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    let (job, body) = (estimate.job, FieldPath::BODY);
    let Some(pour) = job.sealant.pour else { return };
    let (loops, system) = (body.field("loops"), job.system());
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
                let message = Statement::new("materials-insulation-too-low")
                    .temperature("rating", rating, system)
                    .temperature("pour", pour, system);
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
                let message = Statement::new("materials-insulation-unknown").temperature("pour", pour, system);
                diagnostics.add_finding(
                    Finding::new(FindingCode::InsulationUnknown, Level::Warning, &at, message)
                        .on(Some(loop_estimate.resolved.subject()))
                        .send(&at),
                );
            }
        }
    }
}

fn judge_joints(job: &ResolvedMaterialEstimate, diagnostics: &mut Diagnostics) {
    if job.crossings == 0 && job.hazards.contains(&SiteHazard::PavementJoint) {
        let message = Statement::new("materials-joint-not-counted");
        let body = FieldPath::BODY;
        let at = body.field("crossings");
        diagnostics.add_finding(Finding::new(FindingCode::PavementJoint, Level::Warning, &at, message).send(&at));
    }
}

fn judge_stock(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    let (job, body) = (estimate.job, FieldPath::BODY);
    if job.stock.is_none() {
        return;
    }
    // What a layout takes is counted there.
    let open = estimate.loops.iter().filter(|each| each.construction.is_preformed() && !each.is_stock_decided());
    let taken = open.filter_map(|each| Some((each.find_in_stock(job)?, u64::from(each.resolved.quantity))));
    judge_shortage(taken, &body.field("stock"), diagnostics);
    for loop_estimate in estimate.loops.iter().filter(|loop_estimate| loop_estimate.construction.is_preformed()) {
        // That the layout found none is said there.
        if loop_estimate.is_stock_decided() || loop_estimate.find_in_stock(job).is_some() {
            continue;
        }
        let coil = &loop_estimate.resolved.coil;
        let message = Statement::new("materials-no-stock-fits")
            .length("along_travel", coil.along_travel, coil.system)
            .length("across_lane", coil.across_lane, coil.system)
            .count("turns", u64::from(coil.turns))
            .length("lead_in_length", loop_estimate.resolved.lead_in_needed(), coil.system);
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
        (Level::Warning, Statement::new("materials-suspended-slab-approved"))
    } else {
        (Level::Stop, Statement::new("materials-suspended-slab"))
    };
    let body = FieldPath::BODY;
    let slab_at = body.field("slab");
    let finding = Finding::new(FindingCode::TensionedDeck, level, &slab_at.field("is_suspended"), message);
    let approved_at = slab_at.field("cut_approved");
    diagnostics.add_finding(if job.slab.cut_approved { finding } else { finding.send(&approved_at) });
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
        let message = Statement::new("materials-lead-in-unaccounted").length("rest", rest, system);
        let at = loops.item(index);
        let lead_in_at = at.field("lead_in");
        let finding = Finding::new(FindingCode::NotEstimated, Level::Note, &lead_in_at, message)
            .send(&lead_in_at.field("in_slot"))
            .send(&lead_in_at.field("in_conduit"));
        diagnostics.add_finding(finding.on(Some(loop_estimate.resolved.subject())).length("rest", rest, system));
    }
}

/// Names the work that the estimate leaves out.
fn list_left_out(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let mut left = Vec::new();
    if estimate.loops.iter().any(|loop_estimate| !loop_estimate.construction.is_sawn()) {
        left.push(Statement::new("materials-left-out-burial"));
    }
    if estimate.loops.iter().any(|loop_estimate| loop_estimate.conduit_length() > Length::default()) {
        left.push(Statement::new("materials-left-out-conduit"));
    }
    if !left.is_empty() {
        let message = Statement::new("materials-left-out").phrases("left_out", left, ListJoin::Semicolon);
        diagnostics.add_finding(Finding::new(FindingCode::NotEstimated, Level::Note, &body.field("loops"), message));
    }
}
