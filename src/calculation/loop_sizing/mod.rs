//! Which loops an opening needs: practice first, physics to confirm.
//!
//! - `request`, `resolved`: what is asked, as sent and in typed quantities
//! - `design`: a loop of given legs, its turns and its figures
//! - `sightings`: which vehicles a loop, or a row of loops, sees
//! - `search`, `selection`: the loop of a role, and of all roles
//! - `alternatives`, `side_by_side`, `stock`, `lead_in`: what a counter is asked next
//! - `leaf_clearance`, `layout`: where the loops lie
//! - `findings`, `site`: what is missed, and what the ground demands
//! - `report`: what is answered

mod alternatives;
mod design;
mod findings;
mod layout;
mod lead_in;
mod leaf_clearance;
mod report;
mod request;
mod resolved;
mod search;
mod selection;
mod side_by_side;
mod sightings;
mod site;
mod stock;

pub use alternatives::Alternative;
pub use lead_in::LeadInAdvice;
pub use report::{LoopSizingInputs, LoopSizingReport, SizedLoop};
pub use request::LoopSizingRequest;
pub use side_by_side::{OneChannel, SideBySide};
pub use sightings::VehicleSighting;
pub use site::{SiteConditions, judge as judge_site, judge_construction};
pub use stock::StockChoice;

use super::input::Shape;
use super::loop_characteristics::{self, JudgementContext, MeasurementConditions, judge};
use super::report::{Diagnostics, FieldPath, InvalidRequest};
use super::{Calculation, Example, vehicle_response};
use crate::practice::sources::Source;
use crate::vocabulary::Vocabulary;
use layout::LoopPlacement;
use resolved::ResolvedLoopSizing;
use selection::{RoleSelection, select_loops};

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
        the slot. Sizes are tidy in the system that `opening.width` is written in. A layout that should not be built is answered \
        all the same, with a `stop` among its findings.";
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
        if let Some(lead_in) = &self.lead_in {
            let [in_slot, in_conduit, _] = lead_in.parts_sent();
            diagnostics.mark_unneeded(&FieldPath::BODY.field("lead_in"), &[in_slot, in_conduit]);
        }
        if let Some(detector) = &self.detector {
            diagnostics.mark_unneeded(&FieldPath::BODY.field("detector"), &detector.parts_sent());
        }
        let conditions = MeasurementConditions::usual();
        let selections = select_loops(&resolved, &conditions);
        let legs: Vec<_> =
            selections.iter().map(|selection| (selection.role, selection.chosen().design.coil.along_travel)).collect();
        let leaf_clearance = leaf_clearance::compute(&resolved, &selections, diagnostics);
        let placements = layout::place(&resolved, &legs, leaf_clearance);
        let loops = placements
            .iter()
            .zip(&selections)
            .map(|(placement, selection)| size(selection, placement, &resolved, &conditions, diagnostics))
            .collect();
        findings::judge_sensitivity(&resolved, diagnostics);
        findings::judge_widths(&resolved, diagnostics);
        let unseen_stretch = layout::judge(&resolved, &placements, diagnostics);
        let lead_in = lead_in::advise(&resolved, diagnostics);
        let site = SiteConditions {
            surface: resolved.surface,
            hazards: &resolved.hazards,
            construction: resolved.construction,
            construction_at: FieldPath::BODY.field("construction"),
            has_barrier: resolved.opening.barrier.is_present(),
            cut_approved: false,
        };
        site::judge(&site, diagnostics);
        diagnostics.add_sources(loop_characteristics::SOURCES);
        diagnostics.add_sources(vehicle_response::SOURCES);
        diagnostics.add_sources(&[Source::CommonPractice]);

        let inputs = LoopSizingInputs::of(&resolved);
        let closing = diagnostics.into_parts();
        Ok(LoopSizingReport {
            inputs,
            loops,
            lead_in,
            unseen_stretch: unseen_stretch.map(Into::into),
            findings: closing.findings,
            assumed: closing.assumed,
            unused: closing.unused,
            cautions: closing.cautions,
            basis: closing.basis,
        })
    }
}

/// One loop of the report, and what is to be said about it.
fn size(
    selection: &RoleSelection,
    placement: &LoopPlacement,
    resolved: &ResolvedLoopSizing,
    conditions: &MeasurementConditions,
    diagnostics: &mut Diagnostics,
) -> SizedLoop {
    let (role, chosen) = (selection.role, selection.chosen());
    let body = FieldPath::BODY;
    let context = JudgementContext {
        coil: body.field("opening"),
        lead_in: body.field("lead_in"),
        unit: body.field("detector"),
        system: resolved.system(),
        subject: Some(role.code()),
    };
    judge(&chosen.design.electrical, conditions, &resolved.detector.limits, &context, diagnostics);
    findings::judge_fit(role, &chosen.design, resolved, diagnostics);
    findings::judge_vehicles(role, chosen, resolved, diagnostics);
    let mut alternatives = selection.alternatives().iter().map(|offered| &offered.candidate);
    if let Some(quadrupole) = alternatives.find(|candidate| candidate.design.coil.shape == Shape::Quadrupole) {
        alternatives::judge_quadrupole(role, quadrupole, chosen, resolved, diagnostics);
    }
    let stock_choice = stock::choose(role, chosen, resolved, conditions, diagnostics);
    SizedLoop::of(selection, placement, resolved, stock_choice)
}
