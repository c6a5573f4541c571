//! Which loops an opening needs: practice first, physics to confirm.
//!
//! `request` asks and `job` reads it. `search` tries `design`s, and rows of them, until every vehicle is in `sight`; `leaf` and
//! `layout` place the loops; `judgement` says what is missed; `row`, `alternatives`, `stock` and `lead_in` add what a counter is
//! asked next, `site` says what the ground demands, `report` answers.

mod alternatives;
mod design;
mod job;
mod judgement;
mod layout;
mod lead_in;
mod leaf;
mod report;
mod request;
mod row;
mod search;
mod sight;
mod site;
mod stock;

use std::rc::Rc;

use uom::si::f64::Length;
use uom::si::length::inch;
use uom::si::ratio::percent;

pub use report::{
    Alternative, LeadInAdvice, LoopSizingInputs, LoopSizingReport, OneChannel, SideBySide, SizedLoop, StockChoice,
    VehicleSighting,
};
pub use request::LoopSizingRequest;
pub use site::{Site, judge as judge_site, judge_construction};

use super::input::Shape;
use super::loop_characteristics::{self, Conditions, Places, judge};
use super::report::{Diagnostics, FieldPath, Finding, InvalidRequest};
use super::vehicle_response::{self, SeenHeight, usual_conditions};
use super::{Calculation, Example};
use crate::practice::findings::{FindingCode, Level};
use crate::practice::roles::Role;
use crate::practice::site::Barrier;
use crate::practice::sources::Source;
use crate::practice::wires::least_clearance;
use crate::quantity::format::format_detail_length;
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;
use alternatives::Other;
use design::{Design, Grade};
use job::Job;
use layout::Place;
use search::{Brief, Choice};

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
        let job = self.read(diagnostics);
        let job = diagnostics.finish(job)?;
        if let Some(lead_in) = &self.lead_in {
            let [in_slot, in_conduit, _] = lead_in.parts_sent();
            diagnostics.mark_unneeded(&FieldPath::BODY.field("lead_in"), &[in_slot, in_conduit]);
        }
        if let Some(detector) = &self.detector {
            diagnostics.mark_unneeded(&FieldPath::BODY.field("detector"), &detector.parts_sent());
        }
        let conditions = usual_conditions();
        let choices = choose(&job, &conditions);
        let legs: Vec<_> =
            choices.iter().map(|chosen| (chosen.role, chosen.choice().design.coil.along_travel)).collect();
        let leaf_clearance = leaf::clearance(&job, &choices, diagnostics);
        let places = layout::place(&job, &legs, leaf_clearance);
        let loops = places
            .iter()
            .zip(&choices)
            .map(|(place, chosen)| size(place, chosen, &job, &conditions, diagnostics))
            .collect();
        judgement::judge_sensitivity(&job, diagnostics);
        judgement::judge_widths(&job, diagnostics);
        let unseen_stretch = layout::judge(&job, &places, diagnostics);
        let lead_in = lead_in::advise(&job, diagnostics);
        let site = Site {
            surface: job.surface,
            hazards: &job.hazards,
            construction: job.construction,
            construction_at: FieldPath::BODY.field("construction"),
            has_barrier: job.opening.barrier != Barrier::None,
            cut_approved: false,
        };
        site::judge(&site, diagnostics);
        diagnostics.add_sources(loop_characteristics::SOURCES);
        diagnostics.add_sources(vehicle_response::SOURCES);
        diagnostics.add_sources(&[Source::CommonPractice]);

        let inputs = job.echo();
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

/// The loop that a search found, and its alternatives.
type Found = Rc<(Choice, Vec<Other>)>;

/// What was found for a role. Roles that ask for the same loop share it.
struct Chosen {
    role: Role,
    found: Found,
}

impl Chosen {
    fn choice(&self) -> &Choice {
        &self.found.0
    }

    fn others(&self) -> &[Other] {
        &self.found.1
    }
}

/// Searches the loop of each role, once for all that ask for the same.
fn choose(job: &Job, conditions: &Conditions) -> Vec<Chosen> {
    let mut done: Vec<(Brief<'_>, Found)> = Vec::new();
    let mut chosen = Vec::new();
    for role in &job.roles {
        let brief = Brief::of(*role, job, conditions);
        let known = done.iter().find(|(other, _)| other.is_like(&brief)).map(|(_, found)| found.clone());
        let found = known.unwrap_or_else(|| {
            let choice = brief.search();
            let others = alternatives::others(&brief, &choice);
            let found = Rc::new((choice, others));
            done.push((brief, found.clone()));
            found
        });
        chosen.push(Chosen { role: *role, found });
    }
    chosen
}

/// One loop of the report, and what is to be said about it.
fn size(
    place: &Place,
    chosen: &Chosen,
    job: &Job,
    conditions: &Conditions,
    diagnostics: &mut Diagnostics,
) -> SizedLoop {
    let choice = chosen.choice();
    let Design { coil, electrical, .. } = &choice.design;
    let role = place.role.code();
    let body = FieldPath::BODY;
    let places = Places {
        coil: body.field("opening"),
        lead_in: body.field("lead_in"),
        unit: body.field("detector"),
        system: job.system(),
        subject: Some(role),
    };
    judge(electrical, conditions, &job.detector.limits, &places, diagnostics);
    judge_fit(role, &choice.design, job, diagnostics);
    judgement::judge(place.role, choice, job, diagnostics);
    let quadrupole = chosen.others().iter().find(|(_, other)| other.design.coil.shape == Shape::Quadrupole);
    if let Some(other) = quadrupole {
        alternatives::judge_quadrupole(place.role, other, choice, job, diagnostics);
    }

    let distance = place.distance().into();
    let has_barrier = job.opening.barrier != Barrier::None;
    SizedLoop {
        role,
        construction: job.construction.code(),
        shape: coil.shape.code(),
        count: choice.centres.len(),
        along_travel: coil.along_travel.into(),
        across_lane: coil.across_lane.into(),
        turns: coil.turns,
        corner_cut: coil.corner_cut.into(),
        edge_setback: edge_setback(choice, job).into(),
        side: place.side.code(),
        distance_from_barrier: has_barrier.then_some(distance),
        distance_from_reference: (!has_barrier).then_some(distance),
        slot_depth: design::slot_depth(coil, job).map(Into::into),
        saw_cut: design::saw_cut(coil, job).map(Into::into),
        electrical: electrical.into(),
        seen_height: SeenHeight::of(&choice.field, choice.seen_height),
        vehicles: choice.sightings.iter().map(|sighting| VehicleSighting::of(sighting, job)).collect(),
        side_by_side: row::plan(choice, job),
        alternatives: chosen.others().iter().map(|other| alternatives::describe(other, choice, job)).collect(),
        stock_choice: stock::choose(place.role, choice, job, conditions, diagnostics),
    }
}

/// From the outermost wire to the edge of the opening.
fn edge_setback(choice: &Choice, job: &Job) -> Length {
    let outermost = choice.centres.iter().copied().fold(Length::default(), Length::max);
    job.opening.width / 2.0 - outermost - choice.design.coil.across_lane / 2.0
}

fn judge_fit(role: &'static str, design: &Design, job: &Job, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    if design.grade == Grade::Untunable {
        let message = "No number of turns brings this loop, with this lead-in, wholly inside what the unit tunes to. Shorten \
                       the lead-in, take heavier wire, or choose a unit with a wider range.";
        diagnostics.add_finding(
            Finding::new(FindingCode::NoWorkingTurns, Level::Stop, &body.field("detector"), message).on(Some(role)),
        );
    }
    if let Some(slot) = job.slot.as_ref().filter(|slot| slot.width < job.wire.over_insulation + least_clearance()) {
        let message = format!(
            "A slot of {} leaves no room for sealant to flow round wire of {}. Cut it wider: wire and {} at the least.",
            format_detail_length(slot.width, job.system()),
            format_detail_length(job.wire.over_insulation, job.system()),
            format_detail_length(least_clearance(), job.system())
        );
        let slot_at = body.field("slot");
        diagnostics.add_finding(
            Finding::new(FindingCode::SlotTooNarrow, Level::Warning, &slot_at.field("width"), message)
                .on(Some(role))
                .figure("slot_width", slot.width.get::<inch>(), "inch"),
        );
    }
    let Some(needed) = design::needed_depth(&design.coil, job) else { return };
    if design.grade == Grade::TooDeep {
        let message = format!(
            "{} turns under the asked cover need a slot {} deep. Cut that deep if the slab allows it, or take thinner \
             wire.",
            design.coil.turns,
            format_detail_length(needed, job.system())
        );
        let slot_at = body.field("slot");
        diagnostics.add_finding(
            Finding::new(FindingCode::SlotTooShallow, Level::Stop, &slot_at.field("depth"), message)
                .on(Some(role))
                .figure("needed_depth", needed.get::<inch>(), "inch")
                .figure("slot_depth", design::deepest_slot(job).get::<inch>(), "inch"),
        );
    }
}

impl Job {
    fn echo(&self) -> LoopSizingInputs {
        LoopSizingInputs {
            opening: self.opening.echo(),
            roles: codes(&self.roles),
            vehicles: codes(&self.vehicles),
            seen_by_other_devices: codes(&self.seen_elsewhere),
            threshold_percent: round(self.threshold().get::<percent>(), 3),
            surface: self.surface.code(),
            site_hazards: codes(&self.hazards),
            construction: self.construction.code(),
            lead_in: self.lead_in.echo(),
            wire: self.wire.echo(),
            slot: self.slot.as_ref().map(super::input::ResolvedSlot::echo),
            cover: self.cover.into(),
            detector: self.detector.echo(),
            stock_items: self.stock.as_ref().map_or(0, Vec::len),
        }
    }
}

fn codes<T: Vocabulary>(members: &[T]) -> Vec<&'static str> {
    members.iter().map(|member| member.code()).collect()
}
