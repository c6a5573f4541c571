//! The drawings of a plan. They are made outside this room, which knows no drawing: [`Illustrator`] is what it needs of them.

use super::report::{InstallationPlanReport, PlanDrawings};
use crate::calculation::cure_guidance::CureGuidanceReport;
use crate::calculation::loop_sizing::LoopSizingReport;
use crate::calculation::material_estimate::MaterialEstimateReport;
use crate::calculation::vehicle_response::VehicleResponseReport;
use crate::quantity::UnitSystem;

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

/// The drawings of the parts that the report has.
pub fn draw(
    report: &InstallationPlanReport,
    response: Option<&VehicleResponseReport>,
    system: UnitSystem,
    illustrator: &dyn Illustrator,
) -> PlanDrawings {
    PlanDrawings {
        plan: Some(illustrator.plan(&report.sizing, system)),
        slot_section: report.materials.as_ref().map(|materials| illustrator.slot_section(materials, system)),
        response_profile: response.map(|response| illustrator.response_profile(response, system)),
        cure_timeline: report.cure.as_ref().map(|cure| illustrator.cure_timeline(cure, system)),
    }
}
