//! A vehicle over the loop of a role, in the report.

use serde::Serialize;
use uom::si::f64::{Length, Ratio};
use uom::si::ratio::{percent, ratio};
use utoipa::ToSchema;

use crate::calculation::layout::ClassSighting;
use crate::calculation::vehicle_response::{BlindStrip, UnseenStrips};
use crate::practice::vehicles::VehicleClass;
use crate::quantity::output::round;

/// A vehicle over the loop, or the row of loops, of a role.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct VehicleSighting {
    /// The class of the vehicle.
    #[schema(value_type = String)]
    pub vehicle: VehicleClass,
    /// The change at the unit's terminals with the vehicle's middle over the middle of a loop, percent, 3 decimals; for two-wheelers
    /// 0.3 m inside a side wire, or over the centre slot of a quadrupole; for a vehicle of several parts, the middle of the longest.
    pub change_percent: f64,
    /// The least such change across the lane, percent, 3 decimals: over the gaps of a row, and hard against either edge where the
    /// loop holds a gate, 1 ft / 0.3 m off an open swing leaf. The same as `change_percent` for two-wheelers.
    pub least_change_percent: f64,
    /// The change that the unit switches at, percent, 3 decimals.
    pub threshold_percent: f64,
    /// `change_percent` over the threshold, 2 decimals. The margin of `least_change_percent` decides.
    pub times_threshold: f64,
    /// Whether `least_change_percent` reaches the threshold.
    pub detected: bool,
    /// Whether the unit lets go, at the hardest place, before the vehicle's tail has reached the loop. A vehicle
    /// whose first part is not seen there does not drop out.
    pub drops_out: bool,
    /// Where across the lane a two-wheeler is not seen; absent for other vehicles.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub blind_strip: Option<BlindStrip>,
}

impl VehicleSighting {
    /// A vehicle over loops across a lane whose units switch at `threshold`.
    pub fn of(sighting: &ClassSighting, unseen: Option<&UnseenStrips>, threshold: Ratio, lane: Length) -> Self {
        Self {
            vehicle: sighting.class,
            change_percent: round(sighting.change.get::<percent>(), 3),
            least_change_percent: round(sighting.least.get::<percent>(), 3),
            threshold_percent: round(threshold.get::<percent>(), 3),
            times_threshold: round((sighting.change / threshold).get::<ratio>(), 2),
            detected: sighting.least >= threshold,
            drops_out: sighting.drops_out(threshold),
            blind_strip: unseen.map(|unseen| BlindStrip::of(unseen, lane)),
        }
    }
}
