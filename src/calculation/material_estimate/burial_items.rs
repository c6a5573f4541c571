//! What buried loops take: sand for their trenches, and ties.

use uom::si::f64::Length;
use uom::si::length::meter;
use uom::si::volume::{cubic_foot, cubic_meter};

use super::bill::BillLine;
use super::estimate::MaterialEstimate;
use super::loop_estimate::LoopEstimate;
use crate::calculation::report::{Decimals, Statement};
use crate::practice::burial::Burial;
use crate::practice::materials::MaterialItem;
use crate::quantity::UnitSystem;

/// Sand for the trenches of buried loops, and ties along them.
pub fn burial_lines(estimate: &MaterialEstimate<'_>) -> Vec<BillLine> {
    let (burial, system) = (Burial::in_surface(estimate.job.surface), estimate.job.system());
    let buried = || estimate.loops.iter().filter(|each| !each.construction.is_sawn());
    let path = |each: &LoopEstimate<'_>| Length::new::<meter>(each.resolved.coil.winding().turn_length());
    let total = buried().map(|each| each.count() * path(each)).fold(Length::default(), |a, b| a + b);
    let mut lines = Vec::new();
    if total <= Length::default() {
        return lines;
    }
    let (under, over) = (burial.under.in_system(system), burial.over.in_system(system));
    if let Some(width) = burial.trench_width {
        let width = width.in_system(system);
        let sand = width * (under + over) * total;
        let (unit, exact) = match system {
            UnitSystem::UsCustomary => ("ft3", sand.get::<cubic_foot>()),
            UnitSystem::Metric => ("m3", sand.get::<cubic_meter>()),
        };
        let how = Statement::new("materials-bedding-sand")
            .detail_length("trench_width", width, system)
            .detail_length("bed_under", under, system)
            .detail_length("bed_over", over, system)
            .length("path", total, system);
        lines.push(BillLine::new(MaterialItem::BeddingSand, unit, exact, how));
    }
    if let Some(spacing) = burial.tie_spacing {
        let spacing = spacing.in_system(system);
        // Whole ties of each loop, and one more at each corner.
        let ties = |each: &LoopEstimate<'_>| {
            let steps: f64 = (path(each) / spacing).into();
            each.count() * ((steps - 1e-9).ceil() + 4.0)
        };
        let count: f64 = buried().map(ties).sum();
        let how = Statement::new("materials-ties").length("tie_spacing", spacing, system).number(
            "ties",
            count,
            Decimals::AtMost(0),
        );
        lines.push(BillLine::new(MaterialItem::Tie, "each", count, how));
    }
    lines
}
