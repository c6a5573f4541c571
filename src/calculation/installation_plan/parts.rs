//! The parts of a plan, each solved for the loops that the sizing has laid.

use uom::si::f64::Time;

use super::merge::with_plan_pointers;
use super::request::InstallationPlanRequest;
use crate::calculation::budget::WorkBudget;
use crate::calculation::cure_guidance::{self, CureGuidanceReport, EstimatedWork, PlannedSealing};
use crate::calculation::detector_compatibility::{self, DetectorCompatibilityReport};
use crate::calculation::layout::{JobLayout, LaidLoop};
use crate::calculation::loop_characteristics::MeasurementConditions;
use crate::calculation::loop_sizing::{self, LoopSizingReport};
use crate::calculation::material_estimate::{self, LaidLoops, MaterialEstimateReport};
use crate::calculation::report::{Diagnostics, FieldPath, InvalidRequest, Statement};
use crate::practice::detectors::Wiring;
use crate::practice::job_steps::PlanPart;
use crate::practice::materials::{Corner, MaterialItem, WorkStep};
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
        let sizing = solve_sizing(plan, diagnostics);
        // Without an answer of the sizing no loop is laid, and the errors of all other fields are found with its own.
        let laid = sizing.as_ref().ok().map(|(layout, _)| layout);
        let none_laid = JobLayout::default();
        let layout = laid.unwrap_or(&none_laid);
        let construction = layout.loops.first().map(|first| first.construction).or(plan.construction);
        let construction = construction.unwrap_or(Construction::HandWound);
        let materials = plan.asks_for(PlanPart::Materials).then(|| solve_materials(plan, layout));
        let detector = plan.asks_for(PlanPart::Detector).then(|| solve_detector(plan, layout, diagnostics.budget()));
        let work = materials.as_ref().and_then(|report| estimated_work(report.as_ref().ok()?));
        let cure = asks_for_cure && construction.is_sawn();
        let cure = cure.then(|| solve_cure(plan, layout, construction, work)).flatten();
        let sizing = report_or_errors(sizing, diagnostics);
        let materials = materials.map(|report| report_or_errors(report, diagnostics));
        let detector = detector.map(|report| report_or_errors(report, diagnostics));
        let cure = cure.map(|report| report_or_errors(report, diagnostics));
        let (layout, mut sizing) = diagnostics.finish(sizing)?;
        let materials = materials.flatten();
        // The estimate knows what else lies in the slot, rod and a finish below the surface, what the saw does, and what no spool holds.
        for made in materials.iter().flat_map(|materials| &materials.loops) {
            if let Some(sized) = sizing.loops.iter_mut().find(|sized| Some(sized.mark) == made.mark) {
                sized.slot_depth = made.slot_depth;
                sized.corner = made.corner;
                sized.run_out = made.run_out;
                sized.lead_in.has_pull_box = made.splices > 0;
            }
        }
        Ok(Self { layout, sizing, detector: detector.flatten(), materials, cure: cure.flatten() })
    }
}

fn solve_sizing(
    plan: &InstallationPlanRequest,
    of_plan: &Diagnostics,
) -> Result<(JobLayout, LoopSizingReport), InvalidRequest> {
    let (request, mut diagnostics) = (plan.sizing_request(), Diagnostics::within(of_plan.budget().clone()));
    let resolved = request.resolve(&mut diagnostics);
    let mut resolved = diagnostics.finish(resolved)?;
    // A plan that is refused already needs no loops, only its other faults.
    if of_plan.has_errors() {
        return Err(InvalidRequest::default());
    }
    resolved.wiring = plan.wiring.unwrap_or(Wiring::Separate);
    if plan.asks_for(PlanPart::Materials) {
        let materials = plan.materials_request();
        if let Some(slot) = &mut resolved.slot {
            material_estimate::fill_slot(&materials, resolved.construction, slot);
        }
        let corner = plan.saw.as_ref().and_then(|saw| saw.corner);
        resolved.cuts_square_full = corner == Some(Corner::DiagonalFull);
        let corner = corner.filter(|corner| !corner.is_diagonal());
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

/// The work as it was estimated; `None` where nothing is sealed.
fn estimated_work(materials: &MaterialEstimateReport) -> Option<EstimatedWork> {
    let steps = &materials.labour.steps;
    let sealing = steps.iter().position(|timed| timed.step == WorkStep::Seal)?;
    let before = steps[..sealing].iter().filter(|timed| timed.step != WorkStep::SetUp);
    let cartridges = materials.items.iter().find(|line| line.item == MaterialItem::SealantCartridge);
    Some(EstimatedWork {
        sealing: steps[sealing].time.0,
        cartridges: cartridges.map_or(0, |line| line.quantity),
        before_sealing: before.map(|timed| timed.time.0).fold(Time::default(), |a, b| a + b),
    })
}

fn solve_cure(
    plan: &InstallationPlanRequest,
    layout: &JobLayout,
    construction: Construction,
    work: Option<EstimatedWork>,
) -> Option<Result<CureGuidanceReport, InvalidRequest>> {
    let (request, mut diagnostics) = (plan.cure_request()?, Diagnostics::default());
    let covers = layout.covers();
    let planned = PlannedSealing { covers: &covers, system: plan.system(), work };
    let planned = Some(planned).filter(|_| !covers.is_empty());
    let resolved = request.resolve_for(construction, planned, &mut diagnostics);
    Some(diagnostics.finish(resolved).map(|resolved| cure_guidance::solve(&request, &resolved, &mut diagnostics)))
}

/// The report of a part; adds its errors to those of the plan.
fn report_or_errors<R>(answer: Result<R, InvalidRequest>, diagnostics: &mut Diagnostics) -> Option<R> {
    let add_errors = |refused: InvalidRequest| {
        with_plan_pointers(refused.errors).for_each(|error| diagnostics.push_error(error));
    };
    answer.map_err(add_errors).ok()
}
