//! The parts of a plan, each solved for the loops that the sizing has laid.

use super::merge::with_plan_pointers;
use super::request::InstallationPlanRequest;
use crate::calculation::budget::WorkBudget;
use crate::calculation::cure_guidance::{self, CureGuidanceReport, LaidCovers};
use crate::calculation::detector_compatibility::{self, DetectorCompatibilityReport};
use crate::calculation::layout::{JobLayout, LaidLoop};
use crate::calculation::loop_characteristics::MeasurementConditions;
use crate::calculation::loop_sizing::{self, LoopSizingReport};
use crate::calculation::material_estimate::{self, LaidLoops, MaterialEstimateReport};
use crate::calculation::report::{Diagnostics, FieldPath, InvalidRequest, Statement};
use crate::practice::detectors::Wiring;
use crate::practice::job_steps::PlanPart;
use crate::practice::site::Construction;
use crate::practice::sources::Source;
use crate::vocabulary::Vocabulary;

/// The parts that were asked for.
pub struct PlannedParts {
    /// The loops that are laid.
    pub layout: JobLayout,
    /// What the sizing reports of them.
    pub sizing: LoopSizingReport,
    /// The unit.
    pub detector: Option<DetectorCompatibilityReport>,
    /// The materials.
    pub materials: Option<MaterialEstimateReport>,
    /// The cure, where something is sealed.
    pub cure: Option<CureGuidanceReport>,
}

impl PlannedParts {
    /// Solves the sizing, then the other parts.
    ///
    /// # Errors
    /// What is wrong with any field of the request, in whichever part.
    pub fn solve(
        plan: &InstallationPlanRequest,
        asks_for_cure: bool,
        diagnostics: &mut Diagnostics,
    ) -> Result<Self, InvalidRequest> {
        let sizing = solve_sizing(plan, diagnostics.budget());
        // Without an answer of the sizing no loop is laid, and the errors of all other fields are found with its own.
        let laid = sizing.as_ref().ok().map(|(layout, _)| layout);
        let none_laid = JobLayout::default();
        let layout = laid.unwrap_or(&none_laid);
        let construction = layout.loops.first().map(|first| first.construction).or(plan.construction);
        let construction = construction.unwrap_or(Construction::HandWound);
        let materials = plan.asks_for(PlanPart::Materials).then(|| solve_materials(plan, layout));
        let detector = plan.asks_for(PlanPart::Detector).then(|| solve_detector(plan, layout, diagnostics.budget()));
        let cure = (asks_for_cure && construction.is_sawn()).then(|| solve_cure(plan, layout, construction)).flatten();
        let sizing = report_or_errors(sizing, diagnostics);
        let materials = materials.map(|report| report_or_errors(report, diagnostics));
        let detector = detector.map(|report| report_or_errors(report, diagnostics));
        let cure = cure.map(|report| report_or_errors(report, diagnostics));
        let (layout, mut sizing) = diagnostics.finish(sizing)?;
        let materials = materials.flatten();
        // The estimate knows what else lies in the slot: rod, and a finish below the surface.
        for made in materials.iter().flat_map(|materials| &materials.loops) {
            if let Some(sized) = sizing.loops.iter_mut().find(|sized| Some(sized.mark) == made.mark) {
                sized.slot_depth = made.slot_depth;
            }
        }
        Ok(Self { layout, sizing, detector: detector.flatten(), materials, cure: cure.flatten() })
    }
}

fn solve_sizing(
    plan: &InstallationPlanRequest,
    budget: &WorkBudget,
) -> Result<(JobLayout, LoopSizingReport), InvalidRequest> {
    let (request, mut diagnostics) = (plan.sizing_request(), Diagnostics::within(budget.clone()));
    let resolved = request.resolve(&mut diagnostics);
    let mut resolved = diagnostics.finish(resolved)?;
    resolved.wiring = plan.wiring.unwrap_or(Wiring::Separate);
    if plan.asks_for(PlanPart::Materials) {
        let materials = plan.materials_request();
        if let Some(slot) = &mut resolved.slot {
            material_estimate::fill_slot(&materials, resolved.construction, slot);
        }
        let corner = plan.saw.as_ref().and_then(|saw| saw.corner).filter(|corner| !corner.is_diagonal());
        if let Some(corner) = corner.filter(|_| resolved.construction.is_sawn()) {
            resolved.has_square_corners = true;
            let (body, reason) = (FieldPath::BODY, Statement::new("plan-square-corners"));
            let saw_at = body.field("saw");
            diagnostics.add_assumption(&saw_at.field("corner"), corner.code(), reason, &[Source::OwnChoice]);
        }
    }
    let conditions = MeasurementConditions::usual();
    let solved = loop_sizing::solve(&resolved, &conditions);
    let report = loop_sizing::report(&request, &resolved, &solved, &mut diagnostics);
    Ok((solved.layout, report))
}

fn solve_detector(
    plan: &InstallationPlanRequest,
    layout: &JobLayout,
    budget: &WorkBudget,
) -> Result<DetectorCompatibilityReport, InvalidRequest> {
    let (request, mut diagnostics) = (plan.detector_request(), Diagnostics::within(budget.clone()));
    let loops = layout.loops.iter().flat_map(LaidLoop::channel_loops).collect();
    let resolved = request.resolve_for(loops, &mut diagnostics);
    let resolved = diagnostics.finish(resolved)?;
    Ok(detector_compatibility::solve(&request, &resolved, &mut diagnostics))
}

fn solve_materials(
    plan: &InstallationPlanRequest,
    layout: &JobLayout,
) -> Result<MaterialEstimateReport, InvalidRequest> {
    let (request, mut diagnostics) = (plan.materials_request(), Diagnostics::default());
    let laid = LaidLoops { layout, wire: plan.wire.as_ref(), lead_in: plan.lead_in.as_ref() };
    let resolved = material_estimate::resolve(&request, Some(laid), &mut diagnostics);
    let resolved = diagnostics.finish(resolved)?;
    Ok(material_estimate::solve(&resolved, &mut diagnostics))
}

fn solve_cure(
    plan: &InstallationPlanRequest,
    layout: &JobLayout,
    construction: Construction,
) -> Option<Result<CureGuidanceReport, InvalidRequest>> {
    let (request, mut diagnostics) = (plan.cure_request()?, Diagnostics::default());
    let covers = layout.covers();
    let laid = Some(LaidCovers { covers: &covers, system: plan.system() }).filter(|_| !covers.is_empty());
    let resolved = request.resolve_for(construction, laid, &mut diagnostics);
    Some(diagnostics.finish(resolved).map(|resolved| cure_guidance::solve(&request, &resolved, &mut diagnostics)))
}

/// The report of a part; adds its errors to those of the plan.
fn report_or_errors<R>(answer: Result<R, InvalidRequest>, diagnostics: &mut Diagnostics) -> Option<R> {
    let add_errors = |refused: InvalidRequest| {
        with_plan_pointers(refused.errors).for_each(|error| diagnostics.push_error(error));
    };
    answer.map_err(add_errors).ok()
}
