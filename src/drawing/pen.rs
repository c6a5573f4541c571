//! The drawings of a plan, for the calculation that asks for them without knowing them.

use super::Drawing;
use super::cure_timeline::CureTimeline;
use super::plan::Plan;
use super::response_profile::ResponseProfile;
use super::slot_section::SlotSection;
use crate::calculation::cure_guidance::CureGuidanceReport;
use crate::calculation::installation_plan::Illustrator;
use crate::calculation::loop_sizing::LoopSizingReport;
use crate::calculation::material_estimate::MaterialEstimateReport;
use crate::calculation::vehicle_response::VehicleResponseReport;
use crate::quantity::UnitSystem;

/// Draws whatever a plan asks for.
pub struct Pen;

impl Illustrator for Pen {
    fn plan(&self, report: &LoopSizingReport, system: UnitSystem) -> String {
        Plan::draw(report, system)
    }

    fn slot_section(&self, report: &MaterialEstimateReport, system: UnitSystem) -> String {
        SlotSection::draw(report, system)
    }

    fn response_profile(&self, report: &VehicleResponseReport, system: UnitSystem) -> String {
        ResponseProfile::draw(report, system)
    }

    fn cure_timeline(&self, report: &CureGuidanceReport, system: UnitSystem) -> String {
        CureTimeline::draw(report, system)
    }
}
