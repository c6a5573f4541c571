//! Which loops an opening needs: practice first, physics to confirm.
//!
//! `request` asks and `job` reads it; `layout` places the loops, `design` finds legs and turns, `alternatives`, `stock` and
//! `lead_in` add what a counter is asked next, `site` says what the ground demands, `report` answers.

mod alternatives;
mod design;
mod job;
mod layout;
mod lead_in;
mod report;
mod request;
mod site;
mod stock;

use uom::si::f64::{Capacitance, Frequency, ThermodynamicTemperature};
use uom::si::frequency::kilohertz;
use uom::si::length::inch;
use uom::si::thermodynamic_temperature::degree_celsius;

pub use report::{Alternative, LeadInAdvice, LoopSizingInputs, LoopSizingReport, SeenHeight, SizedLoop, StockChoice};
pub use request::LoopSizingRequest;

use super::answer::{At, Finding, Notes, Refusal};
use super::loop_characteristics::{Conditions, Places, SOURCES, USUAL_FREQUENCY_KHZ, judge};
use super::{Calculation, Example};
use crate::practice::Vocabulary;
use crate::practice::findings::{FindingCode, Level};
use crate::practice::site::Barrier;
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use crate::quantity::shown::{say, say_small};
use design::{Design, Grade};
use job::Job;
use layout::Place;

impl Calculation for LoopSizingRequest {
    type Report = LoopSizingReport;
    const NAME: &'static str = "loop-sizing";
    const OPERATION_ID: &'static str = "size_loops";
    const SUMMARY: &'static str = "Which loops an opening needs";
    const DESCRIPTION: &'static str = "From an opening to loops that can be cut: for each role the legs, the turns, the place, \
        the saw cut, and what the finished loop will measure. Practice gives the first size, physics confirms the turns: the \
        as-built inductance must lie wholly inside what the detector unit tunes to, the loop should have twice the inductance \
        of its lead-in, and the turns must fit the slot. Sizes are tidy in the system that `opening.width` is written in. A \
        layout that should not be built is answered all the same, with a `stop` among its findings.";
    const EXAMPLES: &'static [Example] = &[
        Example {
            name: "yard_gate",
            summary: "Tern Island Boatyard: a 7.2 m sliding yard gate",
            request: include_str!("../../../openapi/examples/loop-sizing/yard_gate.request.json"),
            answer: include_str!("../../../openapi/examples/loop-sizing/yard_gate.answer.json"),
        },
        Example {
            name: "cafe_window",
            summary: "Tern Island Boatyard: the café drive-through, from stock",
            request: include_str!("../../../openapi/examples/loop-sizing/cafe_window.request.json"),
            answer: include_str!("../../../openapi/examples/loop-sizing/cafe_window.answer.json"),
        },
    ];

    fn calculate(&self, notes: &mut Notes) -> Result<Self::Report, Refusal> {
        let job = self.read(notes);
        let job = notes.settle(job)?;
        let lead_in_at = At::BODY.field("lead_in");
        if let Some(lead_in) = &self.lead_in {
            let [in_slot, in_conduit, _] = lead_in.parts_sent();
            notes.not_needed(&lead_in_at, &[in_slot, in_conduit]);
        }
        if let Some(detector) = &self.detector {
            notes.not_needed(&At::BODY.field("detector"), &detector.parts_sent());
        }
        notes.not_needed(
            &At::BODY.field("opening"),
            &[
                ("leaf_height", self.opening.leaf_height.is_some()),
                ("leaf_ground_gap", self.opening.leaf_ground_gap.is_some()),
            ],
        );

        let conditions = Conditions {
            frequency: Frequency::new::<kilohertz>(USUAL_FREQUENCY_KHZ),
            temperature: ThermodynamicTemperature::new::<degree_celsius>(20.0),
            steel_below: None,
            shunt_capacitance: Capacitance::default(),
        };
        let across = design::leg_across(&job);
        let legs: Vec<_> = job.roles.iter().map(|role| (*role, design::first_leg(*role, &job))).collect();
        let places = layout::place(&job, &legs);
        let loops = places
            .iter()
            .map(|place| {
                let design = design::design(place.to - place.from, across, &job, &conditions);
                size(place, &design, &job, &conditions, notes)
            })
            .collect();
        let unseen_stretch = layout::judge(&job, &places, notes);
        let lead_in = lead_in::advise(&job, notes);
        site::judge(&job, notes);
        notes.rest_on(SOURCES);
        notes.rest_on(&[Source::CommonPractice, Source::OwnChoice]);

        let inputs = job.echo();
        let closing = notes.close();
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
fn size(place: &Place, design: &Design, job: &Job, conditions: &Conditions, notes: &mut Notes) -> SizedLoop {
    let Design { coil, electrical, .. } = design;
    let role = place.role.code();
    let body = At::BODY;
    let places = Places {
        coil: body.field("opening"),
        lead_in: body.field("lead_in"),
        unit: body.field("detector"),
        system: job.system(),
        subject: Some(role),
    };
    judge(electrical, conditions, &job.detector.limits, &places, notes);
    judge_fit(role, design, job, notes);
    judge_height(role, design, job, notes);

    let distance = place.distance().into();
    let has_barrier = job.opening.barrier != Barrier::None;
    SizedLoop {
        role,
        construction: job.construction.code(),
        shape: coil.shape.code(),
        along_travel: coil.along_travel.into(),
        across_lane: coil.across_lane.into(),
        turns: coil.turns,
        corner_cut: coil.corner_cut.into(),
        edge_setback: ((job.opening.width - coil.across_lane) / 2.0).into(),
        side: place.side.code(),
        distance_from_barrier: has_barrier.then_some(distance),
        distance_from_reference: (!has_barrier).then_some(distance),
        slot_depth: design::slot_depth(coil, job).map(Into::into),
        saw_cut: design::saw_cut(coil, job).map(Into::into),
        electrical: electrical.into(),
        seen_height: SeenHeight { rule_of_thumb: design::seen_height(coil).into() },
        alternatives: alternatives::offer(place.role, design, job, conditions),
        stock_choice: stock::choose(place.role, design, job, conditions, notes),
    }
}

fn judge_fit(role: &'static str, design: &Design, job: &Job, notes: &mut Notes) {
    let body = At::BODY;
    if design.grade == Grade::Untunable {
        let message = "No number of turns brings this loop, with this lead-in, wholly inside what the unit tunes to. Shorten \
                       the lead-in, take heavier wire, or choose a unit with a wider range.";
        notes.find(
            Finding::new(FindingCode::NoWorkingTurns, Level::Stop, &body.field("detector"), message).on(Some(role)),
        );
    }
    let (Some(needed), Some(slot)) = (design::needed_depth(&design.coil, job), &job.slot) else { return };
    if design.grade == Grade::TooDeep {
        let message = format!(
            "{} turns under the asked cover need a slot {} deep. Cut that deep if the slab allows it, or take thinner \
             wire.",
            design.coil.turns,
            say_small(needed, job.system())
        );
        let slot_at = body.field("slot");
        notes.find(
            Finding::new(FindingCode::SlotTooShallow, Level::Stop, &slot_at.field("depth"), message)
                .on(Some(role))
                .figure("needed_depth", needed.get::<inch>(), "inch")
                .figure("slot_depth", slot.depth.get::<inch>(), "inch"),
        );
    }
}

fn judge_height(role: &'static str, design: &Design, job: &Job, notes: &mut Notes) {
    let high_bed_comes =
        job.vehicles.iter().any(|vehicle| matches!(vehicle, VehicleClass::HighBedTruck | VehicleClass::TractorTrailer));
    let (height, bed, system) = (design::seen_height(&design.coil), VehicleClass::lowest_high_bed(), job.system());
    if high_bed_comes && height < bed {
        let message = format!(
            "By the rule of thumb metal is seen up to {}, and a high bed lies at {} and more. Lengthen the short leg.",
            say(height, system),
            say(bed, system)
        );
        notes.find(
            Finding::new(FindingCode::HighBedBeyondRule, Level::Warning, &At::BODY.field("vehicles"), message)
                .on(Some(role))
                .length("seen_height_rule_of_thumb", height, system)
                .length("high_bed", bed, system),
        );
    }
}

impl Job {
    fn echo(&self) -> LoopSizingInputs {
        LoopSizingInputs {
            opening: self.opening.echo(),
            roles: codes(&self.roles),
            vehicles: codes(&self.vehicles),
            surface: self.surface.code(),
            site_hazards: codes(&self.hazards),
            construction: self.construction.code(),
            lead_in: self.lead_in.echo(),
            wire: self.wire.echo(),
            slot: self.slot.as_ref().map(super::subject::SlotUnderstood::echo),
            detector: self.detector.echo(),
            stock_items: self.stock.as_ref().map_or(0, Vec::len),
        }
    }
}

fn codes<T: Vocabulary>(members: &[T]) -> Vec<&'static str> {
    members.iter().map(|member| member.code()).collect()
}
