//! What [`super`] answers.

use serde::Serialize;
use uom::si::f64::Length;
use uom::si::ratio::percent;
use utoipa::ToSchema;

use super::height::SeenHeight;
use super::strip::Blind;
use crate::calculation::input::{LeadInEcho, LoopEcho};
use crate::calculation::report::{Assumed, Basis, Caution, Finding};
use crate::quantity::output::{PlanLength, round};

/// What a vehicle does to a loop, all the way over it.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct VehicleResponseReport {
    /// The greatest change at the unit's terminals, percent, 3 decimals.
    pub peak_change_percent: f64,
    /// The same at the loop itself, before the lead-in dilutes it, percent, 3 decimals.
    pub peak_change_at_loop_percent: f64,
    /// Where the vehicle's front is then, past the loop's leading edge.
    pub peak_position: PlanLength,
    /// The change that the unit switches at, percent, 3 decimals.
    pub threshold_percent: f64,
    /// The peak over the threshold, 2 decimals; a design wants 2 at least.
    pub times_threshold: f64,
    /// Whether the peak reaches the threshold.
    pub detected: bool,
    /// Where the vehicle's front is when the unit first switches on; absent when it never does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub switches_on_at: Option<PlanLength>,
    /// Where the vehicle's front is when the unit last switches off; absent when it never switches.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub switches_off_at: Option<PlanLength>,
    /// Whether the unit lets go in between.
    pub drops_out: bool,
    /// Where it lets go in between.
    pub drop_outs: Vec<Stretch>,
    /// The change along the way.
    pub profile: Vec<ProfilePoint>,
    /// Where across the lane a two-wheeler is not seen; absent for other vehicles.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub blind_strip: Option<BlindStrip>,
    /// How high metal is seen.
    pub seen_height: SeenHeight,
    /// How the vehicle's model is known: `calibrated` on a published figure, `assumed`, or the caller's `plate`.
    pub model: &'static str,
    /// What was understood of the request.
    pub inputs: VehicleResponseInputs,
    /// Statements about the loop and the vehicle, the gravest first.
    pub findings: Vec<Finding>,
    /// Defaults that stood in for fields that were not sent.
    pub assumed: Vec<Assumed>,
    /// Fields that were sent and are not needed here, as JSON Pointers.
    pub unused: Vec<String>,
    /// What can hurt someone on this job.
    pub cautions: Vec<Caution>,
    /// What the figures rest on.
    pub basis: Basis,
}

/// A stretch of the way, by the position of the vehicle's front past the loop's leading edge.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct Stretch {
    /// Its begin.
    pub from: PlanLength,
    /// Its end.
    pub to: PlanLength,
}

/// A point of the profile.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct ProfilePoint {
    /// The vehicle's front past the loop's leading edge.
    pub position: PlanLength,
    /// The change at the unit's terminals, percent, 3 decimals.
    pub change_percent: f64,
}

/// Where across a lane a two-wheeler is not seen.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct BlindStrip {
    /// All strips together.
    pub width: PlanLength,
    /// Their share of the lane, percent, 3 decimals.
    pub share_of_lane_percent: f64,
    /// Whether the lane's centre lies in one.
    pub contains_centre: bool,
    /// The strips, as offsets from the lane's centre, left to right.
    pub strips: Vec<Stretch>,
}

impl BlindStrip {
    /// The strips of a lane.
    pub fn of(blind: &Blind, lane: Length) -> Self {
        Self {
            width: blind.width().into(),
            share_of_lane_percent: round((blind.width() / lane).get::<percent>(), 3),
            contains_centre: blind.contains_centre(),
            strips: blind.strips.iter().map(|(from, to)| Stretch { from: (*from).into(), to: (*to).into() }).collect(),
        }
    }
}

/// What was understood of a vehicle-response request.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct VehicleResponseInputs {
    /// The loop.
    pub r#loop: LoopEcho,
    /// The lead-in.
    pub lead_in: LeadInEcho,
    /// The class of the vehicle, or `plate`.
    pub vehicle: &'static str,
    /// The vehicle's length over all.
    pub vehicle_length: PlanLength,
    /// The vehicle's width over all.
    pub vehicle_width: PlanLength,
    /// The lowest flat part of the vehicle's model above the pavement.
    pub effective_height: PlanLength,
    /// From the middle of the loop to the middle of the vehicle.
    pub offset_across: PlanLength,
    /// The width of the lane.
    pub lane_width: PlanLength,
    /// How many positions the profile has.
    pub positions: usize,
}
