//! What [`super`] answers, and what it needs of the drawings: [`Illustrator`], for calculations know no drawing.

use serde::Serialize;
use utoipa::ToSchema;

use crate::calculation::Example;
use crate::calculation::cure_guidance::CureGuidanceReport;
use crate::calculation::detector_compatibility::DetectorCompatibilityReport;
use crate::calculation::layout::{JobLayout, LoopMark};
use crate::calculation::loop_sizing::LoopSizingReport;
use crate::calculation::material_estimate::MaterialEstimateReport;
use crate::calculation::report::{Assumed, Basis, Caution, Finding, Message, has_messages};
use crate::calculation::summary::{JobSummary, Summarized};
use crate::calculation::vehicle_response::VehicleResponseReport;
use crate::practice::cautions::CautionCode;
use crate::practice::job_steps::{JobStep, Trial};
use crate::practice::sources::Source;
use crate::quantity::UnitSystem;

/// A whole job. Each part is the report of its own calculation for the loops that the sizing has laid; its pointers lead into the plan's request.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct InstallationPlanReport {
    /// The loops that are laid, as the parts were given them.
    #[serde(skip)]
    pub layout: JobLayout,
    /// The job in a few lines; its findings are those of all parts.
    pub summary: JobSummary,
    /// The loops.
    pub sizing: LoopSizingReport,
    /// Whether the unit tunes to them; absent when not asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub detector: Option<DetectorCompatibilityReport>,
    /// What to load; absent when not asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub materials: Option<MaterialEstimateReport>,
    /// Whether to seal, and when traffic may return; absent without weather, where nothing is sealed, or when not asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cure: Option<CureGuidanceReport>,
    /// What to measure and to try before the site is left; absent when not asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub commissioning: Option<Commissioning>,
    /// The order of the work.
    pub steps: Vec<PlanStep>,
    /// Drawings as SVG texts; absent unless `include` asks for them.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub drawings: Option<PlanDrawings>,
    /// What all parts state about the job, the gravest first, each once.
    pub findings: Vec<Finding>,
    /// Defaults that stood in for fields that were not sent.
    pub assumed: Vec<Assumed>,
    /// Fields that were sent and that no part needs, as JSON Pointers.
    pub unused: Vec<String>,
    /// What can hurt someone on this job.
    pub cautions: Vec<Caution>,
    /// What the figures rest on.
    pub basis: Basis,
}

has_messages! {
    InstallationPlanReport: summary, sizing, detector, materials, cure, commissioning, steps, findings, assumed, cautions, basis;
    Commissioning: readings, trials;
    ExpectedReading: message;
    PlanTrial: label, message;
    PlanStep: label, message;
}

impl Summarized for InstallationPlanReport {
    const PATH: &'static str = "/v1/installation-plan/summary";
    const OPERATION_ID: &'static str = "summarize_plan";
    const EXAMPLES: &'static [Example] = &[
        Example {
            name: "yard_gate_in_january",
            summary: "Tern Island Boatyard: the yard gate, in January",
            request: include_str!(
                "../../../openapi/examples/installation-plan/summary/yard_gate_in_january.request.json"
            ),
        },
        Example {
            name: "cafe_drive_through",
            summary: "The café drive-through, preformed, with its cart",
            request: include_str!(
                "../../../openapi/examples/installation-plan/summary/cafe_drive_through.request.json"
            ),
        },
    ];

    fn summary(&self) -> &JobSummary {
        &self.summary
    }
}

/// What to measure and to try.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct Commissioning {
    /// What a meter should show, loop by loop.
    pub readings: Vec<ExpectedReading>,
    /// What to try, in order.
    pub trials: Vec<PlanTrial>,
}

/// What a meter should show at the end of the lead-in.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct ExpectedReading {
    /// The loop, by its role.
    pub label: String,
    /// The loop, by its mark; each loop of a row measures alike.
    #[schema(value_type = String)]
    pub mark: LoopMark,
    /// `resistance`, `inductance`, `quality_factor` or `insulation`.
    pub reading: &'static str,
    /// The unit: `ohm`, `uH`, `ratio` or `megohm`.
    pub unit: &'static str,
    /// What was computed, 3 decimals; absent for insulation.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub expected: Option<f64>,
    /// The low end of what a sound loop shows, 3 decimals.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub low: Option<f64>,
    /// The high end of what a sound loop shows, 3 decimals.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub high: Option<f64>,
    /// The least that is accepted; absent where there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_least: Option<f64>,
    /// The most that is accepted; absent where there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_most: Option<f64>,
    /// When to take it: `after_winding`, `before_sealing`, `after_sealing`.
    pub stages: Vec<&'static str>,
    /// How to read it, in a sentence.
    #[schema(value_type = String)]
    pub message: Message,
    /// Where the limits come from; ids of `reference/sources`.
    #[schema(value_type = Vec<String>)]
    pub source_ids: Vec<Source>,
}

/// What to try before the site is left.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct PlanTrial {
    /// Which; a `code` of `reference/trials`.
    #[schema(value_type = String)]
    pub trial: Trial,
    /// A short name.
    #[schema(value_type = String)]
    pub label: Message,
    /// What to do, and what must happen.
    #[schema(value_type = String)]
    pub message: Message,
    /// What to heed; codes among `cautions`.
    #[schema(value_type = Vec<String>)]
    pub cautions: Vec<CautionCode>,
}

/// One step of the work.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct PlanStep {
    /// Which; a `code` of `reference/job-steps`.
    #[schema(value_type = String)]
    pub step: JobStep,
    /// A short name.
    #[schema(value_type = String)]
    pub label: Message,
    /// What to do, with the figures of this job.
    #[schema(value_type = String)]
    pub message: Message,
    /// What to heed; codes among `cautions`.
    #[schema(value_type = Vec<String>)]
    pub cautions: Vec<CautionCode>,
}

/// Drawings of the job, SVG texts.
#[derive(Clone, Debug, Default, Serialize, ToSchema)]
pub struct PlanDrawings {
    /// The plan of the loops.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub plan: Option<String>,
    /// The sections of the slots; absent without materials.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slot_section: Option<String>,
    /// The change that the hardest vehicle makes on its way over the first loop.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub response_profile: Option<String>,
    /// Weather, windows and milestones; absent without cure.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cure_timeline: Option<String>,
}

/// Draws reports as SVG texts, in the caller's system.
pub trait Illustrator {
    /// The plan of loops.
    fn plan(&self, report: &LoopSizingReport, system: UnitSystem) -> String;
    /// The sections of slots.
    fn slot_section(&self, report: &MaterialEstimateReport, system: UnitSystem) -> String;
    /// The change along a vehicle's way.
    fn response_profile(&self, report: &VehicleResponseReport, system: UnitSystem) -> String;
    /// The times of the cure.
    fn cure_timeline(&self, report: &CureGuidanceReport, system: UnitSystem) -> String;
}

impl PlanDrawings {
    /// The drawings of the parts that the report has; `response` is that of the hardest vehicle.
    pub fn draw(
        report: &InstallationPlanReport,
        response: Option<&VehicleResponseReport>,
        system: UnitSystem,
        illustrator: &dyn Illustrator,
    ) -> Self {
        Self {
            plan: Some(illustrator.plan(&report.sizing, system)),
            slot_section: report.materials.as_ref().map(|materials| illustrator.slot_section(materials, system)),
            response_profile: response.map(|response| illustrator.response_profile(response, system)),
            cure_timeline: report.cure.as_ref().map(|cure| illustrator.cure_timeline(cure, system)),
        }
    }
}
