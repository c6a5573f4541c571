//! One call for the whole job: loops, unit, materials, cure, commissioning, and the order of the work.
//!
//! - `request`: the flat union of the nouns
//! - `requests`: the requests of the single calculations; they are answered as on their own, so that no number differs
//! - `merge`: what their reports state, with pointers into the plan's request, each statement once
//! - `commissioning`, `steps`: what only the whole job has
//! - `report`: what is answered

mod commissioning;
mod merge;
mod report;
mod request;
mod requests;
mod steps;

pub use report::{
    Commissioning, ExpectedReading, Illustrator, InstallationPlanReport, PlanDrawings, PlanStep, PlanTrial,
};
pub use request::InstallationPlanRequest;

use super::input::Weather;
use super::loop_sizing::LoopSizingReport;
use super::report::{Diagnostics, FieldErrorCode, FieldPath, InvalidRequest, Statement};
use super::vehicle_response::VehicleResponseReport;
use super::{Calculation, Example};
use crate::practice::job_steps::{JobStep, PlanExtra, PlanPart};
use crate::practice::sealants::SealantKind;
use crate::practice::sources::Source;
use crate::vocabulary::Vocabulary;
use merge::{MergeableReport, merge};

impl Calculation for InstallationPlanRequest {
    type Report = InstallationPlanReport;
    const NAME: &'static str = "installation-plan";
    const OPERATION_ID: &'static str = "plan_installation";
    const SUMMARY: &'static str = "One call for the whole job";
    const DESCRIPTION: &'static str = "From an opening to everything that goes in the van and on paper: the loops, whether the detector \
        unit tunes to them, what to load, whether to seal in this weather, what to measure and to try, and the order of the work with \
        its cautions. The request is the flat union of the single calculations' fields; each of them is fed from the one before and \
        answered as on its own, so no number differs. Only the opening is needed. `parts` chooses what is planned beside the sizing, \
        `cure` needs `weather` and `start`, and `include` adds drawings. Pointers of all parts lead into this request; `findings` \
        holds those of all parts, the gravest first.";
    const BODY_LIMIT_FACTOR: usize = 4;
    const REPORT_CAPACITY: usize = 128 * 1024;
    const EXAMPLES: &'static [Example] = &[
        Example {
            name: "yard_gate_in_january",
            summary: "Tern Island Boatyard: the yard gate, in January",
            request: include_str!("../../../openapi/examples/installation-plan/yard_gate_in_january.request.json"),
        },
        Example {
            name: "barrier_lane",
            summary: "The ticketed barrier lane of the car park",
            request: include_str!("../../../openapi/examples/installation-plan/barrier_lane.request.json"),
        },
        Example {
            name: "cafe_drive_through",
            summary: "The café drive-through, preformed, sizing and materials only",
            request: include_str!("../../../openapi/examples/installation-plan/cafe_drive_through.request.json"),
        },
    ];

    fn weather_mut(&mut self) -> Option<&mut Weather> {
        self.weather.as_mut()
    }

    fn illustrate(&self, report: &mut Self::Report, illustrator: &dyn Illustrator) {
        if self.include.as_deref().unwrap_or_default().contains(&PlanExtra::Drawings) {
            let response = hardest_response(self, &report.sizing);
            report.drawings = Some(PlanDrawings::draw(report, response.as_ref(), self.system(), illustrator));
        }
    }

    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest> {
        let sizing = requests::sizing_request(self).answer();
        let loops = sizing
            .as_ref()
            .map_or_else(|_| requests::stand_in_loops(self), |report| requests::planned_loops(self, report));
        let cover = sizing.as_ref().ok().map(|report| report.inputs.cover);
        let is_sealed = loops.iter().any(|sized| sized.construction.is_sawn());
        let materials = self.asks_for(PlanPart::Materials).then(|| requests::materials_request(self, &loops).answer());
        let detector = self.asks_for(PlanPart::Detector).then(|| requests::detector_request(self, &loops).answer());
        let cure =
            (asks_for_cure(self, diagnostics) && is_sealed).then(|| requests::cure_request(self, cover)).flatten();
        let cure = cure.map(|request| request.answer());
        let sizing = report_or_errors(sizing, diagnostics);
        let materials = materials.map(|report| report_or_errors(report, diagnostics));
        let detector = detector.map(|report| report_or_errors(report, diagnostics));
        let cure = cure.map(|report| report_or_errors(report, diagnostics));
        let mut sizing = diagnostics.finish(sizing)?;
        let (mut detector, mut materials, mut cure) = (detector.flatten(), materials.flatten(), cure.flatten());

        mark_unplanned_fields(self, is_sealed, diagnostics);
        let mut parts: Vec<&mut dyn MergeableReport> = vec![&mut sizing];
        parts.extend(detector.as_mut().map(|part| part as &mut dyn MergeableReport));
        parts.extend(materials.as_mut().map(|part| part as &mut dyn MergeableReport));
        parts.extend(cure.as_mut().map(|part| part as &mut dyn MergeableReport));
        merge(&mut parts, diagnostics);

        let hazards = self.site_hazards.as_deref().unwrap_or_default();
        let commissioning = self
            .asks_for(PlanPart::Commissioning)
            .then(|| commissioning::plan(&sizing, &loops, self.opening.barrier, hazards));
        if let Some(commissioning) = &commissioning {
            for reading in &commissioning.readings {
                diagnostics.add_sources(&reading.source_ids);
            }
        }
        let steps = steps::plan_steps(&steps::StepContext {
            sizing: &sizing,
            loops: &loops,
            materials: materials.as_ref(),
            cure: cure.as_ref(),
            barrier: self.opening.barrier,
            system: self.system(),
        });
        diagnostics.add_sources(&[Source::CommonPractice]);
        let taken = JobStep::ALL.iter().filter(|step| steps.iter().any(|taken| taken.step == **step));
        let cautions: Vec<_> = taken.flat_map(|step| step.cautions()).copied().collect();
        diagnostics.add_cautions(&cautions);

        let closing = diagnostics.into_parts();
        Ok(InstallationPlanReport {
            sizing,
            detector,
            materials,
            cure,
            commissioning,
            steps,
            drawings: None,
            findings: closing.findings,
            assumed: closing.assumed,
            unused: closing.unused,
            cautions: closing.cautions,
            basis: closing.basis,
        })
    }
}

/// The report of a part; adds its errors to those of the plan.
fn report_or_errors<R>(answer: Result<R, InvalidRequest>, diagnostics: &mut Diagnostics) -> Option<R> {
    let add_errors = |refused: InvalidRequest| {
        merge::with_plan_pointers(refused.errors).for_each(|error| diagnostics.push_error(error));
    };
    answer.map_err(add_errors).ok()
}

/// Whether the cure is to be planned; notes what is missing for it.
fn asks_for_cure(plan: &InstallationPlanRequest, diagnostics: &mut Diagnostics) -> bool {
    let body = FieldPath::BODY;
    let is_named = plan.parts.as_ref().is_some_and(|parts| parts.contains(&PlanPart::Cure));
    if is_named && plan.weather.is_none() {
        let hint = Statement::new("errors-cure-without-weather-hint");
        diagnostics.add_error(
            &body.field("weather"),
            FieldErrorCode::FieldMissing,
            Statement::new("errors-cure-without-weather"),
            hint,
        );
    }
    // A location without a forecast has its error already; cure-guidance would report it once more.
    let asks = plan.asks_for(PlanPart::Cure)
        && plan.weather.is_some()
        && !diagnostics.has_error_at(&body.field("weather").field("location"));
    if asks && plan.start.is_none() {
        let hint = Statement::new("errors-weather-without-start-hint");
        diagnostics.add_error(
            &body.field("start"),
            FieldErrorCode::FieldMissing,
            Statement::new("errors-weather-without-start"),
            hint,
        );
    }
    if asks && plan.sealant.is_none() {
        let kind = SealantKind::DEFAULT.code();
        diagnostics.add_assumption(
            &body.field("sealant").field("kind"),
            kind,
            "The usual loop sealant.",
            &[Source::CommonPractice],
        );
    }
    asks
}

/// Lists fields of parts that are not planned.
fn mark_unplanned_fields(plan: &InstallationPlanRequest, is_sealed: bool, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let plans_cure = plan.asks_for(PlanPart::Cure) && plan.weather.is_some() && is_sealed;
    let plans_materials = plan.asks_for(PlanPart::Materials);
    let fields = [
        (plan.asks_for(PlanPart::Detector), "wiring", plan.wiring.is_some()),
        (plans_materials, "lead_in_slot", plan.lead_in_slot.is_some()),
        (plans_materials, "saw", plan.saw.is_some()),
        (plans_materials || plans_cure, "sealant", plan.sealant.is_some()),
        (plans_materials, "backer_rod", plan.backer_rod.is_some()),
        (plans_materials, "wire_spools", plan.wire_spools.is_some()),
        (plans_materials, "waste_percent", plan.waste_percent.is_some()),
        (plans_materials, "slab", plan.slab.is_some()),
        (plans_materials, "crossings", plan.crossings.is_some()),
        (plans_materials, "agency_minimum", plan.agency_minimum.is_some()),
        (plans_materials, "prices", plan.prices.is_some()),
        (plans_materials, "productivity", plan.productivity.is_some()),
        (plans_cure, "start", plan.start.is_some()),
        (plans_cure, "surface_condition", plan.surface_condition.is_some()),
        (plans_cure, "needed_open_by", plan.needed_open_by.is_some()),
        (plans_cure, "weather", plan.weather.is_some()),
    ];
    for (_, name, _) in fields.into_iter().filter(|(is_planned, _, is_sent)| !is_planned && *is_sent) {
        diagnostics.mark_unused(&body.field(name));
    }
}

/// The response of the hardest vehicle over the first loop.
fn hardest_response(plan: &InstallationPlanRequest, sizing: &LoopSizingReport) -> Option<VehicleResponseReport> {
    let loops = requests::planned_loops(plan, sizing);
    let (sized, found) = (loops.first()?, sizing.loops.first()?);
    let hardest = found.vehicles.iter().min_by(|a, b| a.times_threshold.total_cmp(&b.times_threshold))?;
    requests::response_request(plan, sized, hardest.vehicle, sizing.inputs.threshold_percent).answer().ok()
}
