//! Which loops an opening needs: practice first, physics to confirm.
//!
//! - `request`, `resolved`: what is asked, as sent and in typed quantities
//! - `design`: a loop of given legs, its turns and its figures
//! - `search`, `stock`, `selection`: the loop of a role, or the stock item that is laid for it; the loops of all roles and their steps
//! - `leaf_clearance`, `placement`: where the loops lie
//! - `solve`: all of it together, as a layout
//! - `alternatives`, `side_by_side`, `lead_in`, `vehicle_sighting`: what a counter is asked next
//! - `findings`, `site`: what is missed, and what the ground demands
//! - `report`: what is answered

mod alternatives;
mod design;
mod findings;
mod lead_in;
mod leaf_clearance;
mod placement;
mod report;
mod request;
mod resolved;
mod search;
mod selection;
mod side_by_side;
mod site;
mod solve;
mod stock;
mod vehicle_sighting;

pub use alternatives::Alternative;
pub use lead_in::{LeadInAdvice, LoopLeadIn};
pub use report::{LoopSizingInputs, LoopSizingReport, SizedLoop};
pub use request::LoopSizingRequest;
pub use resolved::ResolvedLoopSizing;
pub use side_by_side::{OneChannel, SideBySide};
pub use site::{SiteConditions, judge as judge_site, judge_construction};
pub use solve::{LoopSizing, solve};
pub use stock::StockChoice;
pub use vehicle_sighting::VehicleSighting;

use super::input::Shape;
use super::layout::LaidLoop;
use super::loop_characteristics::{self, JudgementContext, MeasurementConditions, judge};
use super::report::{Diagnostics, FieldPath, InvalidRequest};
use super::{Calculation, Example, vehicle_response};
use crate::practice::sources::Source;
use alternatives::OfferedCandidate;
use selection::{FoundDetails, FoundLoop};

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

    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest> {
        let resolved = self.resolve(diagnostics);
        let resolved = diagnostics.finish(resolved)?;
        let conditions = MeasurementConditions::usual();
        Ok(report(self, &resolved, &solve(&resolved, &conditions), diagnostics))
    }
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
        let [in_slot, in_conduit, _] = lead_in.parts_sent();
        diagnostics.mark_unneeded(&body.field("lead_in"), &[in_slot, in_conduit]);
    }
    if let Some(detector) = &request.detector {
        diagnostics.mark_unneeded(&body.field("detector"), &detector.parts_sent());
    }
    if let Some(clearance) = &solved.leaf_clearance {
        clearance.judge(resolved, diagnostics);
    }
    let loops =
        solved.loops().map(|(laid, found, details)| report_loop(laid, found, details, resolved, diagnostics)).collect();
    findings::judge_sensitivity(&solved.layout, diagnostics);
    findings::judge_widths(resolved, diagnostics);
    let unseen_stretch = placement::judge(resolved, &solved.layout.loops, diagnostics);
    let lead_in = lead_in::advise(resolved, diagnostics);
    let site = SiteConditions {
        surface: resolved.surface,
        hazards: &resolved.hazards,
        construction: resolved.construction,
        construction_at: body.field("construction"),
        has_barrier: resolved.opening.barrier.is_present(),
        cut_approved: false,
    };
    site::judge(&site, diagnostics);
    diagnostics.add_sources(loop_characteristics::SOURCES);
    diagnostics.add_sources(vehicle_response::SOURCES);
    diagnostics.add_sources(&[Source::CommonPractice]);

    let covers = solved.layout.covers();
    if let Some(slot) = &resolved.slot {
        slot.say_cover(&covers, resolved.system(), &body.field("slot"), diagnostics);
    }
    let inputs = LoopSizingInputs::of(resolved, &covers);
    let closing = diagnostics.into_parts();
    LoopSizingReport {
        inputs,
        loops,
        lead_in,
        unseen_stretch: unseen_stretch.map(Into::into),
        findings: closing.findings,
        assumed: closing.assumed,
        unused: closing.unused,
        cautions: closing.cautions,
        basis: closing.basis,
    }
}

/// One loop of the report, and what is to be said about it.
fn report_loop(
    laid: &LaidLoop,
    found: &FoundLoop<'_>,
    details: &FoundDetails,
    resolved: &ResolvedLoopSizing,
    diagnostics: &mut Diagnostics,
) -> SizedLoop {
    let (role, chosen) = (laid.role, (&found.chosen, &details.seen));
    let body = FieldPath::BODY;
    let context = JudgementContext {
        coil: body.field("opening"),
        lead_in: body.field("lead_in"),
        unit: body.field("detector"),
        system: resolved.system(),
        subject: Some(role),
    };
    let conditions = MeasurementConditions::usual();
    judge(&laid.electrical, &conditions, &resolved.detector.limits, &context, diagnostics);
    findings::judge_fit(role, &found.chosen.design, resolved, diagnostics);
    findings::judge_vehicles(laid, &details.seen, resolved, diagnostics);
    let is_quadrupole = |offered: &&OfferedCandidate| offered.candidate.design.coil.shape == Shape::Quadrupole;
    if let Some(quadrupole) = details.alternatives.iter().find(is_quadrupole) {
        alternatives::judge_quadrupole(role, quadrupole, chosen, resolved, diagnostics);
    }
    let stock = found.stock.as_ref();
    let stock_choice = stock.map(|stock| StockChoice::of(stock, &found.chosen, role, &found.search, diagnostics));
    SizedLoop::of(laid, found, details, resolved, stock_choice)
}
