//! One call for the whole job: loops, unit, materials, cure, commissioning, and the order of the work.
//!
//! - `request`: the flat union of the nouns
//! - `defaults`: what many plans have in common
//! - `fields`: the table of its fields, and the requests of the parts that are made of them
//! - `parts`: the parts, each solved for the layout of the sizing
//! - `merge`: what their reports state, with pointers into the plan's request, each statement once
//! - `commissioning`, `steps`: what only the whole job has
//! - `report`: what is answered

mod commissioning;
mod defaults;
mod fields;
mod merge;
mod parts;
mod report;
mod request;
mod steps;

pub use defaults::PlanDefaults;
pub use report::{
    Commissioning, ExpectedReading, Illustrator, InstallationPlanReport, PlanDrawings, PlanStep, PlanTrial,
};
pub use request::InstallationPlanRequest;

use super::cost::CostTerm;
use super::input::Weather;
use super::layout::JobLayout;
use super::material_estimate::MaterialEstimateReport;
use super::report::{Diagnostics, FieldErrorCode, FieldPath, InvalidRequest, Statement};
use super::vehicle_response::{ResolvedVehicleResponse, VehicleResponseReport};
use super::{Calculation, Example, loop_sizing, vehicle_response};
use crate::practice::job_steps::{JobStep, PlanExtra, PlanPart};
use crate::practice::materials::MaterialItem;
use crate::practice::roles::Role;
use crate::practice::sealants::SealantKind;
use crate::practice::sources::Source;
use crate::vocabulary::Vocabulary;
use merge::{MergeableReport, merge};
use parts::PlannedParts;

impl Calculation for InstallationPlanRequest {
    type Report = InstallationPlanReport;
    const NAME: &'static str = "installation-plan";
    const OPERATION_ID: &'static str = "plan_installation";
    const SUMMARY: &'static str = "One call for the whole job";
    const DESCRIPTION: &'static str = "From an opening to everything that goes in the van and on paper: the loops, whether the detector \
        unit tunes to them, what to load, whether to seal in this weather, what to measure and to try, and the order of the work with \
        its cautions. The request is the flat union of the single calculations' fields; each part is computed for the loops that the \
        sizing has laid, as on its own, so no number differs but for loops that share a channel. Only the opening is needed. `parts` \
        chooses what is planned beside the sizing, `cure` needs `weather` and `start`, and `include` adds drawings. Pointers of all \
        parts lead into this request; `findings` holds those of all parts, the gravest first.";
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
            let response = hardest_response(&report.layout);
            report.drawings = Some(PlanDrawings::draw(report, response.as_ref(), self.system(), illustrator));
        }
    }

    fn cost_terms(&self) -> Vec<CostTerm> {
        let (roles, vehicles) = (self.roles.as_deref(), self.vehicles.as_deref());
        let mut terms = loop_sizing::sizing_terms(self.opening.barrier, roles, vehicles, self.stock.as_deref());
        let hours = self.weather.as_ref().and_then(|weather| weather.conditions.as_ref()).map_or(0, Vec::len);
        let role_count = roles.unwrap_or(Role::usual_for(self.opening.barrier)).len();
        terms.extend([
            CostTerm::new("the parts of a plan for the loop of a role", role_count, 400),
            CostTerm::new("an hour of weather", hours, 4),
        ]);
        terms
    }

    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest> {
        let asks_for_cure = asks_for_cure(self, diagnostics);
        let PlannedParts { layout, mut sizing, mut detector, mut materials, mut cure } =
            PlannedParts::solve(self, asks_for_cure, diagnostics)?;

        let mut parts: Vec<&mut dyn MergeableReport> = vec![&mut sizing];
        parts.extend(detector.as_mut().map(|part| part as &mut dyn MergeableReport));
        parts.extend(materials.as_mut().map(|part| part as &mut dyn MergeableReport));
        parts.extend(cure.as_mut().map(|part| part as &mut dyn MergeableReport));
        merge(&self.fields(), &mut parts, diagnostics);

        let hazards = self.site_hazards.as_deref().unwrap_or_default();
        let commissioning = self
            .asks_for(PlanPart::Commissioning)
            .then(|| commissioning::plan(&sizing, &layout, self.opening.barrier, hazards));
        if let Some(commissioning) = &commissioning {
            for reading in &commissioning.readings {
                diagnostics.add_sources(&reading.source_ids);
            }
        }
        let steps = steps::plan_steps(&steps::StepContext {
            layout: &layout,
            sizing: &sizing,
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
        let packs = materials.as_ref().map_or_else(Vec::new, numbered_packs);
        Ok(InstallationPlanReport {
            summary: loop_sizing::summarize(&sizing.inputs, &sizing.loops, &closing.findings, packs),
            layout,
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

/// What a bill has by the caller's numbers beside the loops, whose numbers the sizing has.
fn numbered_packs(materials: &MaterialEstimateReport) -> Vec<(String, u64)> {
    let bought = materials.items.iter().filter(|line| line.item != MaterialItem::PreformedLoop && !line.is_owned);
    bought.filter_map(|line| Some((line.sku.clone()?, line.quantity))).collect()
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
            Statement::new("input-usual-sealant"),
            &[Source::CommonPractice],
        );
    }
    asks
}

/// The response of the hardest vehicle over the first loop.
fn hardest_response(layout: &JobLayout) -> Option<VehicleResponseReport> {
    let first = layout.loops.first()?;
    let hardest = first.sightings.iter().min_by(|a, b| a.least.value.total_cmp(&b.least.value))?;
    let (coil, lead_in, lane) = (first.coil.clone(), first.lead_in.clone(), first.lane.width);
    let response = ResolvedVehicleResponse::of_class(hardest.class, coil, lead_in, first.step, lane);
    Some(vehicle_response::solve(&response, &mut Diagnostics::default()))
}
