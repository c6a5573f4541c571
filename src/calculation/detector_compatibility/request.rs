//! What is asked of [`super`].

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use validator::Validate;

use crate::calculation::input::{Coordinate, Detector, LeadIn, Loop, PresenceTime};
use crate::practice::detectors::{FailureBehaviour, OutputMode, Wiring};
use crate::practice::roles::Role;
use crate::practice::vehicles::VehicleClass;

/// Loops, and the detector unit that is to tune to them.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct DetectorCompatibilityRequest {
    /// The loops.
    #[validate(nested, length(min = 1, max = 28))]
    #[schema(min_items = 1, max_items = 28)]
    pub loops: Vec<ConnectedLoop>,
    /// How they come to the unit. Default `separate`.
    pub wiring: Option<Wiring>,
    /// The unit. Default: the standard minimum.
    #[validate(nested)]
    pub detector: Option<Detector>,
    /// The vehicles that must be seen. Default: passenger car and high-bed truck.
    #[validate(length(min = 1, max = 7))]
    #[schema(min_items = 1, max_items = 7)]
    pub vehicles: Option<Vec<VehicleClass>>,
}

/// A loop on its way to the unit.
#[derive(Clone, Debug, Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ConnectedLoop {
    /// The caller's name for it, each once.
    #[validate(length(min = 1, max = 64))]
    #[schema(min_length = 1, max_length = 64)]
    pub label: String,
    /// What it is for.
    pub role: Role,
    /// The loop.
    #[validate(nested)]
    pub r#loop: Loop,
    /// The pair to the unit.
    #[validate(nested)]
    pub lead_in: LeadIn,
    /// Where its middle lies; without it the coupling of neighbours is not told.
    #[validate(nested)]
    pub position: Option<Position>,
    /// What its output does while a vehicle is there. Default: what the role asks for.
    pub output: Option<OutputMode>,
    /// After how long its output lets go of a vehicle that stays. Default: never.
    pub presence_time: Option<PresenceTime>,
    /// What its output does when the loop fails. Default: what the role asks for.
    pub on_loop_failure: Option<FailureBehaviour>,
}

/// The middle of a loop, from a point of the caller's choice that is the same for all.
#[derive(Clone, Debug, Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Position {
    /// In the direction of driving.
    pub along: Coordinate,
    /// Across the lane, to the right in the direction of driving.
    pub across: Coordinate,
}
