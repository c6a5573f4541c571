//! What traffic in the next lane makes over a loop: the same plates, offset.

use serde::Serialize;
use uom::si::f64::{Length, Ratio};
use uom::si::ratio::percent;
use utoipa::ToSchema;

use super::resolved::ResolvedLoopSizing;
use crate::calculation::layout::{LaidLoop, LoopRow};
use crate::calculation::report::{Decimals, Diagnostics, FieldPath, Finding, Statement};
use crate::calculation::vehicle_response::LoopField;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::layout::NEXT_LANE_MARGIN;
use crate::practice::site::SiteHazard;
use crate::practice::vehicles::VehicleClass;
use crate::quantity::output::{PlanLength, round};

/// The vehicle in the next lane that a loop sees best.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct AdjacentLane {
    /// The class of the vehicle.
    #[schema(value_type = String)]
    pub vehicle: VehicleClass,
    /// From the nearest wire to the side of the vehicle, which passes 1 ft / 0.3 m off the edge of the opening.
    pub distance: PlanLength,
    /// The change that it makes at the unit's terminals, percent, 3 decimals.
    pub change_percent: f64,
    /// The step that the unit is set to, percent, 3 decimals.
    pub threshold_percent: f64,
    /// Whether the unit switches for it.
    pub seen: bool,
}

impl AdjacentLane {
    /// The worst of the vehicles that come, and a usual car, in the lane beside the loop; `None` without traffic there. `share` is what
    /// the other loops of its channel leave of a change.
    pub(super) fn of(laid: &LaidLoop, field: &LoopField, share: Ratio, job: &ResolvedLoopSizing) -> Option<Self> {
        if !job.has(SiteHazard::AdjacentTraffic) {
            return None;
        }
        let row = LoopRow { field, lane: &laid.lane };
        let margin = NEXT_LANE_MARGIN.in_system(job.system());
        let edge = laid.lane.width / 2.0 + margin;
        let passing = job.vehicles.iter().chain([&VehicleClass::PassengerCar]).filter(|class| !class.is_two_wheeler());
        let seen = passing.map(|class| (*class, share * row.peak_beside(*class, edge)));
        let (vehicle, change) = seen.max_by(|a, b| a.1.value.total_cmp(&b.1.value))?;
        Some(Self {
            vehicle,
            distance: (laid.edge_setback() + margin).into(),
            change_percent: round(change.get::<percent>(), 3),
            threshold_percent: round(laid.step.get::<percent>(), 3),
            seen: change >= laid.step,
        })
    }

    /// States where traffic there is seen, or nearly.
    pub(super) fn judge(&self, laid: &LaidLoop, job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
        let Some(index) = job.hazards.iter().position(|hazard| *hazard == SiteHazard::AdjacentTraffic) else { return };
        let times = self.change_percent / self.threshold_percent;
        if times <= 0.5 {
            return;
        }
        let (distance, system): (Length, _) = (self.distance.0, job.system());
        let message = Statement::new("sizing-next-lane")
            .member("vehicle", self.vehicle)
            .length("distance", distance, system)
            .percent("change", self.change_percent, Decimals::AtMost(3))
            .percent("threshold", self.threshold_percent, Decimals::AtMost(3))
            .code("outcome", if self.seen { "seen" } else { "nearly" });
        let at = FieldPath::BODY.field("site_hazards");
        diagnostics.add_finding(
            Finding::new(FindingCode::AdjacentTraffic, Level::Warning, &at.item(index), message)
                .on(Some(laid.role))
                .length("distance", distance, system)
                .figure("change", self.change_percent, "percent")
                .figure("threshold", self.threshold_percent, "percent"),
        );
    }
}
