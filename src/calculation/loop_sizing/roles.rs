//! What the roles that were asked for mean at this barrier, and what the places of their loops demand.

use uom::si::f64::Length;

use super::resolved::ResolvedLoopSizing;
use super::scanning::share_a_place;
use crate::calculation::layout::{JobLayout, LaidLoop};
use crate::calculation::report::{Diagnostics, FieldPath, Finding, Statement};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::layout::LONG_SINGLE_LEAF;
use crate::practice::roles::{Role, Side};
use crate::practice::site::{Barrier, SiteHazard};

/// States it.
pub fn judge(layout: &JobLayout, job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    judge_setback(&layout.loops, job, diagnostics);
    judge_lead_ins(&layout.loops, job, diagnostics);
    judge_fit(job, diagnostics);
    judge_single_places(&layout.loops, job, diagnostics);
    judge_leaves(&layout.loops, job, diagnostics);
    judge_road(&layout.loops, job, diagnostics);
}

fn judge_setback(loops: &[LaidLoop], job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    let left = loops.iter().map(LaidLoop::edge_setback).fold(job.opening.width, Length::min);
    let asked = job.edge_setback();
    if left < 0.999 * asked {
        let system = job.system();
        let message = Statement::new("sizing-edge-setback-reduced").length("edge_setback", left, system).length(
            "usual_edge_setback",
            asked,
            system,
        );
        let opening = FieldPath::BODY.field("opening");
        diagnostics.add_finding(
            Finding::new(FindingCode::EdgeSetbackReduced, Level::Note, &opening.field("width"), message)
                .length("edge_setback", left, system)
                .length("usual_edge_setback", asked, system),
        );
    }
}

/// States which loops lie farther away than the lead-in that was sent reaches.
fn judge_lead_ins(loops: &[LaidLoop], job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    let (lead_in, system) = (FieldPath::BODY.field("lead_in"), job.system());
    for laid in loops.iter().filter(|laid| laid.lead_in.length > job.lead_in.length) {
        let row = laid.lane.row_width();
        let message = Statement::new("sizing-exit-beyond-lead-in")
            .code("row", if row > Length::default() { "row" } else { "single" })
            .length("row_width", row, system)
            .member("role", laid.role)
            .length("distance_from_barrier", laid.place.distance(), system)
            .length("lead_in_length", job.lead_in.length, system)
            .length("order_length", laid.lead_in.order_length(), system);
        diagnostics.add_finding(
            Finding::new(FindingCode::ExitBeyondLeadIn, Level::Warning, &lead_in.field("length"), message)
                .on(Some(laid.role))
                .length("distance_from_barrier", laid.place.distance(), system)
                .length("lead_in_length", job.lead_in.length, system),
        );
    }
}

/// States which roles do not go with the barrier, each once.
fn judge_fit(job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    let roles = FieldPath::BODY.field("roles");
    let barrier = job.opening.barrier;
    if barrier.is_present() && !job.roles.iter().any(|role| role.holds_the_gate() && role.fits(barrier)) {
        let message = Statement::new("sizing-nothing-holds-the-gate");
        let finding = Finding::new(FindingCode::NothingHoldsTheGate, Level::Warning, &roles, message);
        diagnostics.add_finding(finding.send(&roles));
    }
    for (index, role) in job.roles.iter().enumerate().filter(|(_, role)| !role.fits(barrier)) {
        let (code, level, message) = match role {
            Role::Closing => (FindingCode::ClosingUnderLeaf, Level::Stop, Statement::new("sizing-closing-under-leaf")),
            _ => (FindingCode::RoleDoesNotFit, Level::Warning, Statement::new("sizing-no-leaf-sweeps")),
        };
        diagnostics.add_finding(Finding::new(code, level, &roles.item(index), message).on(Some(*role)).send(&roles));
    }
}

/// States which roles would lie in one slot: one loop does for both, or one of them moves.
fn judge_single_places(loops: &[LaidLoop], job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    let fits = |laid: &&LaidLoop| laid.role.fits(job.opening.barrier);
    for (index, other) in loops.iter().enumerate().filter(|(_, laid)| fits(laid)) {
        for one in loops[..index].iter().filter(fits).filter(|one| share_a_place(one, other)) {
            // What holds the gate stays; of two that do, or two that do not, the one that is asked for first.
            let order = |laid: &LaidLoop| {
                let asked = job.roles.iter().position(|role| *role == laid.role);
                (!laid.role.holds_the_gate(), asked)
            };
            let (kept, left_out) = if order(one) <= order(other) { (one, other) } else { (other, one) };
            let is_fixed = [kept, left_out].iter().any(|laid| {
                job.fixed(laid.role).is_some_and(|fixed| fixed.distance.is_some() || fixed.along_travel.is_some())
            });
            let message = Statement::new("sizing-same-place")
                .member("kept", kept.role)
                .member("left_out", left_out.role)
                .code("cure", if is_fixed { "move" } else { "leave_out" });
            let at = FieldPath::BODY.field(if is_fixed { "fixed_loops" } else { "roles" });
            let finding = Finding::new(FindingCode::SamePlace, Level::Stop, &at, message);
            diagnostics.add_finding(finding.on(Some(left_out.role)).send(&at));
        }
    }
}

/// States what swing leaves ask for.
fn judge_leaves(loops: &[LaidLoop], job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    let barrier = job.opening.barrier;
    if !barrier.has_sweep() {
        return;
    }
    let at = FieldPath::BODY.field("opening");
    diagnostics.add_finding(Finding::new(
        FindingCode::LeafSweeps,
        Level::Note,
        &at.field("barrier"),
        Statement::new("sizing-leaves-swing-inwards")
            .code("hinges", if barrier == Barrier::SwingGate { "one_side" } else { "both_sides" }),
    ));
    let sweep = barrier.sweep_share() * job.opening.width;
    let mut between = loops.iter().filter(|laid| laid.role == Role::BetweenLeaves).peekable();
    let is_decided = job.fixed(Role::BetweenLeaves).is_some_and(|fixed| fixed.distance.is_some());
    if is_decided && between.peek().is_some() && between.all(|laid| laid.place.from >= sweep) {
        let message = Statement::new("sizing-between-leaves-beyond-sweep").length("sweep", sweep, job.system());
        let fixed_at = FieldPath::BODY.field("fixed_loops");
        diagnostics.add_finding(
            Finding::new(FindingCode::BetweenLeavesMissing, Level::Stop, &fixed_at, message)
                .on(Some(Role::BetweenLeaves))
                .send(&fixed_at),
        );
    }
    if !job.roles.contains(&Role::BetweenLeaves) {
        let (roles, message) = (FieldPath::BODY.field("roles"), Statement::new("sizing-between-leaves-missing"));
        let finding = Finding::new(FindingCode::BetweenLeavesMissing, Level::Stop, &roles, message);
        diagnostics.add_finding(finding.send(&roles));
    }
    let system = job.system();
    let longest = LONG_SINGLE_LEAF.in_system(system);
    if barrier == Barrier::SwingGate && job.opening.width > 1.000_001 * longest {
        let message = Statement::new("sizing-pair-advised")
            .length("leaf", job.opening.width, system)
            .length("longest", longest, system);
        diagnostics.add_finding(Finding::new(FindingCode::PairAdvised, Level::Note, &at.field("barrier"), message));
    }
}

/// States that road traffic may hold the gate, where a loop that does lies outside beside it.
fn judge_road(loops: &[LaidLoop], job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    let outside = loops.iter().find(|laid| laid.role.holds_the_gate() && laid.place.side == Side::Outside);
    if let Some(laid) = outside.filter(|_| job.has(SiteHazard::AdjacentTraffic)) {
        diagnostics.add_finding(
            Finding::new(
                FindingCode::RoadHoldsGate,
                Level::Note,
                &FieldPath::BODY.field("site_hazards"),
                Statement::new("sizing-road-holds-the-gate"),
            )
            .on(Some(laid.role)),
        );
    }
}
