//! What is asked of [`super`].

use serde::Deserialize;
use utoipa::ToSchema;
use validator::Validate;

use crate::calculation::input::{LaneWidth, LeadIn, Loop, PlateHeight, PlateLength, PlateWidth, SideOffset};
use crate::practice::vehicles::VehicleClass;

/// A loop and a vehicle that drives over it.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct VehicleResponseRequest {
    /// The loop.
    #[validate(nested)]
    pub r#loop: Loop,
    /// The pair to the detector unit. Send a length of 0 ft for the loop at its own tails.
    #[validate(nested)]
    pub lead_in: LeadIn,
    /// The class of the vehicle. Send this or `plate`.
    pub vehicle: Option<VehicleClass>,
    /// A flat underside of your own. Send this or `vehicle`.
    #[validate(nested)]
    pub plate: Option<PlateSize>,
    /// From the middle of the loop to the middle of the vehicle, across the lane. Default 0; for two-wheelers 0.3 m inside the
    /// side wire.
    pub offset_across: Option<SideOffset>,
    /// The change at the unit's terminals that it switches at, percent. Default: what the class asks for; 0.32 for a plate.
    #[validate(range(min = 0.001, max = 50.0))]
    #[schema(minimum = 0.001, maximum = 50)]
    pub threshold_percent: Option<f64>,
    /// How many positions the profile has. Default 41.
    #[validate(range(min = 2, max = 201))]
    #[schema(minimum = 2, maximum = 201)]
    pub positions: Option<u32>,
    /// The width of the lane, for the blind strip of two-wheelers. Default: the loop and 2 ft on each side.
    pub lane_width: Option<LaneWidth>,
}

/// A flat underside.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PlateSize {
    /// The side across the lane.
    pub width: PlateWidth,
    /// The side along travel.
    pub length: PlateLength,
    /// The height above the pavement at which a flat plate acts as the underside does: about twice the clearance of a car, the
    /// clearance itself of a closed floor.
    pub effective_height: PlateHeight,
}
