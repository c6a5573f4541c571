//! Which loops an opening needs: practice first, physics to confirm.
//!
//! - `request`, `resolved`: what is asked, as sent and in typed quantities
//! - `design`: a loop of given legs, its turns and its figures
//! - `search`, `stock`, `selection`: the loop of a role, or the stock item that is laid for it; the loops of all roles and their steps
//! - `fixed_loop`: what the caller has decided already
//! - `arm`, `leaf_clearance`, `unseen`, `exit`, `adjacent_lane`, `scanning`: what the places mean for arm, leaf, vehicles and neighbours
//! - `placement`: where the loops lie
//! - `solve`: all of it together, as a layout
//! - `alternatives`, `side_by_side`, `lead_in`, `vehicle_sighting`: what a counter is asked next
//! - `findings`, `site`: what is missed, and what the ground demands
//! - `report`: what is answered

mod adjacent_lane;
mod alternatives;
mod arm;
mod design;
mod exit;
mod findings;
mod fixed_loop;
mod lead_in;
mod leaf_clearance;
mod placement;
mod report;
mod request;
mod resolved;
mod roles;
mod scanning;
mod search;
mod selection;
mod side_by_side;
mod site;
mod solve;
mod stock;
mod summary;
mod unseen;
mod vehicle_sighting;

pub use adjacent_lane::AdjacentLane;
pub use alternatives::Alternative;
pub use fixed_loop::{FixedLoop, ResolvedFixedLoop};
pub use lead_in::{LeadInAdvice, LoopLeadIn};
pub use report::{LeafOverLoop, LoopPosition, LoopSizingInputs, LoopSizingReport, SizedLoop};
pub use request::LoopSizingRequest;
pub use resolved::ResolvedLoopSizing;
pub use side_by_side::{OneChannel, SideBySide};
pub use site::{SiteConditions, judge as judge_site, judge_construction};
pub use solve::{LoopSizing, SolvedLoop, solve};
pub use stock::StockChoice;
pub use summary::summarize;
pub use vehicle_sighting::VehicleSighting;

use super::cost::CostTerm;
use super::input::{Shape, StockItem, judge_shortage};
use super::layout::LeafChanges;
use super::loop_characteristics::{self, JudgementContext, MeasurementConditions, judge};
use super::report::{Diagnostics, FieldPath, Finding, InvalidRequest, Statement};
use super::{Calculation, Example, vehicle_response};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::roles::Role;
use crate::practice::site::Barrier;
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use alternatives::OfferedCandidate;
use exit::ExitTimes;
use report::LoopSurroundings;

impl Calculation for LoopSizingRequest {
    type Report = LoopSizingReport;
    const NAME: &'static str = "loop-sizing";
    const OPERATION_ID: &'static str = "size_loops";
    const SUMMARY: &'static str = "Which loops an opening needs";
    const DESCRIPTION: &'static str = "From an opening to loops that can be cut: for each role the legs, the turns, the place, \
        the saw cut, what the finished loop will measure and which vehicles it sees. Practice gives the first size; physics \
        lengthens it, adds turns or puts several side by side until every required vehicle changes the loop by twice what the \
        unit switches at, and until loops that hold a gate see it everywhere across the lane. The as-built inductance must lie \
        wholly inside what the unit tunes to, the loop should have twice the inductance of its lead-in, and the turns must fit \
        the slot. Then each channel gets the coarsest step of the unit at which every vehicle makes twice the step where it is \
        hardest to see. Sizes are tidy in the system that `opening.width` is written in. A layout that should not be built is \
        answered all the same, with a `stop` among its findings.";
    const EXAMPLES: &'static [Example] = &[
        Example {
            name: "yard_gate",
            summary: "Tern Island Boatyard: a 7.2 m sliding yard gate",
            request: include_str!("../../../openapi/examples/loop-sizing/yard_gate.request.json"),
        },
        Example {
            name: "cafe_window",
            summary: "Tern Island Boatyard: the café drive-through, from stock",
            request: include_str!("../../../openapi/examples/loop-sizing/cafe_window.request.json"),
        },
    ];

    fn cost_terms(&self) -> Vec<CostTerm> {
        sizing_terms(self.opening.barrier, self.roles.as_deref(), self.vehicles.as_deref(), self.stock.as_deref())
    }

    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest> {
        let resolved = self.resolve(diagnostics);
        let resolved = diagnostics.finish(resolved)?;
        let conditions = MeasurementConditions::usual();
        Ok(report(self, &resolved, &solve(&resolved, &conditions), diagnostics))
    }
}

/// What a sizing is estimated to cost.
pub fn sizing_terms(
    barrier: Barrier,
    roles: Option<&[Role]>,
    vehicles: Option<&[VehicleClass]>,
    stock: Option<&[StockItem]>,
) -> Vec<CostTerm> {
    let roles = roles.unwrap_or(Role::usual_for(barrier)).len();
    let vehicles = vehicles.unwrap_or(&VehicleClass::USUAL);
    let leaves = usize::from(barrier.has_metal_leaf()) + usize::from(barrier.has_sweep());
    let of = |counts: fn(VehicleClass) -> bool| roles * vehicles.iter().filter(|class| counts(**class)).count();
    vec![
        CostTerm::new("a sizing", 1, 200),
        CostTerm::new("a leaf, and another one that swings", leaves, 150),
        CostTerm::new("a vehicle over the loop of a role", of(|class| !class.is_two_wheeler()), 120),
        CostTerm::new("a two-wheeler over the loop of a role", of(VehicleClass::is_two_wheeler), 600),
        CostTerm::new("a vehicle of several parts over the loop of a role", of(VehicleClass::has_gap), 200),
        CostTerm::new("an item of stock of a sizing", stock.map_or(0, <[StockItem]>::len), 20),
    ]
}

/// The report of a layout, with what is to be said about it.
pub fn report(
    request: &LoopSizingRequest,
    resolved: &ResolvedLoopSizing,
    solved: &LoopSizing<'_>,
    diagnostics: &mut Diagnostics,
) -> LoopSizingReport {
    let body = FieldPath::BODY;
    if let Some(lead_in) = &request.lead_in {
        let [_, in_shared_slot, ..] = lead_in.parts_sent();
        diagnostics.mark_unneeded(&body.field("lead_in"), &[in_shared_slot]);
    }
    if let Some(detector) = &request.detector {
        diagnostics.mark_unneeded(&body.field("detector"), &detector.parts_sent());
    }
    if let Some(slab) = &request.slab {
        let sent = [("edge_distance", slab.edge_distance.is_some()), ("is_suspended", slab.is_suspended.is_some())];
        diagnostics.mark_unneeded(&body.field("slab"), &sent);
    }
    let layout = &solved.layout;
    let leaf_over = |one: &SolvedLoop<'_, '_>| {
        // What is thrown away looks at no leaf.
        let leaf = solved.leaf.as_ref().filter(|_| !resolved.budget.is_abandoned());
        leaf.map(|leaf| leaf_clearance::leaf_changes(leaf, one.laid, one.choice.share))
    };
    let by_leaf: Vec<_> = solved.loops().map(|one| leaf_over(&one)).collect();
    let changed = solved.loops().zip(&by_leaf).filter_map(|(one, changes)| Some((one.laid, (*changes)?)));
    leaf_clearance::judge(changed, resolved, diagnostics);
    let exit = ExitTimes::of(&layout.loops, resolved);
    let report = |(one, changes): (SolvedLoop<'_, '_>, &Option<LeafChanges>)| {
        let exit = exit.map(|(_, times)| times).filter(|_| one.laid.role == Role::Exit);
        report_loop(&one, (*changes, exit), resolved, diagnostics)
    };
    let loops: Vec<_> = solved.loops().zip(&by_leaf).map(report).collect();
    findings::judge_sensitivity(layout, diagnostics);
    findings::judge_widths(resolved, diagnostics);
    roles::judge(layout, resolved, diagnostics);
    if let Some((laid, times)) = exit {
        exit::judge(laid, &times, resolved, diagnostics);
    }
    let taken = layout.loops.iter().filter_map(|laid| Some((laid.stock.as_ref()?, laid.count() as u64)));
    judge_shortage(taken, &body.field("stock"), diagnostics);
    scanning::judge(layout, &solved.couplings, resolved, diagnostics);
    let held = solved.loops().map(|one| (one.laid, &one.found.chosen.field, one.choice.step_at_loop()));
    unseen::judge(held, solved.unseen_stretch, resolved, diagnostics);
    lead_in::judge_slot_ends(layout, resolved, diagnostics);
    let lead_in = lead_in::advise(resolved, diagnostics);
    let site = SiteConditions {
        surface: resolved.surface,
        hazards: &resolved.hazards,
        construction: resolved.construction,
        construction_at: body.field("construction"),
        has_barrier: resolved.opening.barrier.is_present(),
        cut_approved: resolved.slab.cut_approved,
    };
    site::judge(&site, diagnostics);
    diagnostics.add_sources(loop_characteristics::SOURCES);
    diagnostics.add_sources(vehicle_response::SOURCES);
    diagnostics.add_sources(&[Source::CommonPractice]);

    let covers = solved.layout.covers();
    if let Some(slot) = &resolved.slot {
        slot.say_cover(&covers, resolved.system(), &body.field("slot"), diagnostics);
    }
    if resolved.budget.take_was_reached() {
        let message = Statement::new("sizing-search-bounded");
        let finding = Finding::new(FindingCode::SearchBounded, Level::Warning, &body.field("roles"), message);
        let (steps, stock) = (body.field("detector"), body.field("stock"));
        let finding = finding.send(&body.field("roles")).send(&body.field("vehicles"));
        diagnostics.add_finding(finding.send(&steps.field("threshold_steps_percent")).send(&stock));
    }
    let inputs = LoopSizingInputs::of(resolved, &covers);
    let closing = diagnostics.into_parts();
    LoopSizingReport {
        summary: summarize(&inputs, &loops, &closing.findings, Vec::new()),
        inputs,
        loops,
        lead_in,
        unseen_stretch: solved.unseen_stretch.map(Into::into),
        findings: closing.findings,
        assumed: closing.assumed,
        unused: closing.unused,
        cautions: closing.cautions,
        basis: closing.basis,
    }
}

/// One loop of the report, and what is to be said about it. Of several loops one behind the other it is said of the first.
fn report_loop(
    solved: &SolvedLoop<'_, '_>,
    (leaf, exit): (Option<LeafChanges>, Option<ExitTimes>),
    resolved: &ResolvedLoopSizing,
    diagnostics: &mut Diagnostics,
) -> SizedLoop {
    let SolvedLoop { laid, choice, found, .. } = solved;
    let mut aside = Diagnostics::default();
    let told = if laid.ordinal.is_none_or(|ordinal| ordinal == 1) { diagnostics } else { &mut aside };
    let adjacent_lane = AdjacentLane::of(laid, &found.chosen.field, choice.share, resolved);
    judge_make(solved, resolved, told);
    // Of a role that does not fit the barrier it is said that it does not, and no more of what its loop would see.
    if laid.role.fits(resolved.opening.barrier) {
        if let Some(adjacent_lane) = &adjacent_lane {
            adjacent_lane.judge(laid, resolved, told);
        }
        judge_seen(solved, resolved, told);
    }
    let stock = found.stock.as_ref();
    let surroundings = LoopSurroundings {
        leaf,
        adjacent_lane,
        exit,
        stock_choice: stock.map(|stock| StockChoice::of(stock, &found.chosen, laid.role, &found.search, told)),
    };
    SizedLoop::of(solved, surroundings, resolved)
}

/// States whether a loop can be made, and whether the unit tunes to it.
fn judge_make(solved: &SolvedLoop<'_, '_>, resolved: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    let SolvedLoop { laid, found, .. } = solved;
    let (role, body) = (laid.role, FieldPath::BODY);
    let context = JudgementContext {
        coil: body.field("opening"),
        lead_in: body.field("lead_in"),
        unit: body.field("detector"),
        system: resolved.system(),
        subject: Some(role),
    };
    // What steel below means is said once, of the hazard.
    judge(&laid.electrical, &MeasurementConditions::usual(), &resolved.detector.limits, &context, diagnostics);
    findings::judge_fit(role, &found.chosen.design, resolved, diagnostics);
}

/// States what a loop sees, and where it lets go.
fn judge_seen(solved: &SolvedLoop<'_, '_>, resolved: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    let SolvedLoop { laid, choice, found, details } = solved;
    let (role, chosen) = (laid.role, (&found.chosen, &details.seen));
    findings::judge_vehicles(laid, &details.seen, resolved, diagnostics);
    if laid.role == Role::Closing {
        arm::judge(laid, &found.chosen.row(), choice.step_at_loop(), resolved, diagnostics);
    }
    let is_quadrupole = |offered: &&OfferedCandidate| offered.candidate.design.coil.shape == Shape::Quadrupole;
    if let Some(quadrupole) = details.alternatives.iter().find(is_quadrupole) {
        alternatives::judge_quadrupole(role, quadrupole, chosen, resolved, diagnostics);
    }
}
