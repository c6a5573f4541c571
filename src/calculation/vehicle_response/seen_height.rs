//! How high above the pavement metal is seen.

use serde::Serialize;
use uom::si::f64::{Length, Ratio};
use uom::si::length::meter;
use utoipa::ToSchema;

use super::loop_field::LoopField;
use super::root_finding::find_crossing;
use super::vehicle_model::VehicleModel;
use crate::practice::layout::seen_height_share;
use crate::quantity::output::PlanLength;

/// The greatest height that is searched, metres.
const MAX_HEIGHT_M: f64 = 4.0;

/// How high above the pavement metal is seen, by physics and by the rule of thumb.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct SeenHeight {
    /// The highest flat underside, as large as the vehicle's (a car's for two-wheelers), that still switches the unit when it
    /// stands over the middle of the loop, or where the vehicle itself is seen best if the middle does not see it; 0 when none does.
    pub flat_underside: PlanLength,
    /// Two thirds of the short leg: what is commonly said.
    pub rule_of_thumb: PlanLength,
}

impl SeenHeight {
    /// Both heights of a loop, given the first.
    pub fn of(field: &LoopField, flat_underside: Length) -> Self {
        Self {
            flat_underside: flat_underside.into(),
            rule_of_thumb: (seen_height_share() * field.along.min(field.across)).into(),
        }
    }
}

/// The highest place of an underside over the middle of the loop at which the change is the threshold.
///
/// The change falls with height while the plate covers the loop's middle.
pub fn find_seen_height(field: &LoopField, underside: &VehicleModel, threshold: Ratio) -> Length {
    find_at(field, underside, (field.centred(underside), Length::default()), threshold)
}

/// The same where a vehicle has been driven over the loop, and was seen best at a place: `seen_at`, of its front and across.
///
/// What was seen is seen: a plate that only the loop's wires see, or one at a side of a quadrupole, is looked for at its own place, and a
/// vehicle of several parts counts by its lowest.
pub fn find_with_vehicle(
    field: &LoopField,
    underside: &VehicleModel,
    vehicle: &VehicleModel,
    seen_at: Option<(Length, Length)>,
    threshold: Ratio,
) -> Length {
    let over_middle = find_seen_height(field, underside, threshold);
    match seen_at {
        Some(place) if over_middle < vehicle.height && vehicle.gaps.is_empty() => {
            find_at(field, vehicle, place, threshold).max(vehicle.height)
        }
        Some(_) => over_middle.max(vehicle.height),
        None => over_middle,
    }
}

fn find_at(field: &LoopField, underside: &VehicleModel, (front, offset): (Length, Length), threshold: Ratio) -> Length {
    let change = |height: Length| field.change_at_height(underside, height, front, offset);
    let (least, most) = (underside.least_height(), Length::new::<meter>(MAX_HEIGHT_M));
    // An underside may lie lower than the solver resolves, and be seen there only.
    let from = if change(least) >= threshold { least } else { underside.height };
    if change(from) < threshold {
        return Length::default();
    }
    if change(most) >= threshold {
        return most;
    }
    find_crossing(from, most, threshold, change)
}
