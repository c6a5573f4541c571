//! What [`super`] answers.

use serde::{Serialize, Serializer};
use uom::si::f64::Length;
use uom::si::inductance::microhenry;
use uom::si::ratio::percent;
use utoipa::ToSchema;

use super::request::ResolvedVehicleResponse;
use super::seen_height::SeenHeight;
use super::unseen_strips::UnseenStrips;
use super::vehicle_pass::VehiclePass;
use crate::calculation::input::{ResolvedLeadIn, ResolvedLoop};
use crate::calculation::loop_characteristics::ElectricalFigures;
use crate::calculation::report::{Assumed, Basis, Caution, Diagnostics, Finding, has_messages};
use crate::practice::vehicles::VehicleClass;
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
    /// Where the vehicle's front is when the unit last switches off; absent when it never switches. After a drop-out from which it does
    /// not come back, the begin of that.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub switches_off_at: Option<PlanLength>,
    /// Whether the unit lets go before the vehicle's tail has reached the loop's leading edge, whether or not it comes back, or lets go
    /// later and comes back. Letting go for good while the tail crosses the loop is the release.
    pub drops_out: bool,
    /// Where it does, each until the unit comes back, or until the tail reaches the loop's leading edge: with the front one
    /// `inputs.vehicle_length` past it.
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

has_messages! {
    VehicleResponseReport: findings, assumed, cautions, basis;
}

impl VehicleResponseReport {
    pub(super) fn of(
        resolved: &ResolvedVehicleResponse,
        electrical: &ElectricalFigures,
        pass: &VehiclePass,
        unseen: Option<&UnseenStrips>,
        seen_height: SeenHeight,
        diagnostics: &mut Diagnostics,
    ) -> Self {
        let peak = pass.peak.1;
        let undiluted = peak
            * (electrical.terminal_inductance.get::<microhenry>() / electrical.loop_inductance.get::<microhenry>());
        let closing = diagnostics.into_parts();
        Self {
            peak_change_percent: round(peak.get::<percent>(), 3),
            peak_change_at_loop_percent: round(undiluted.get::<percent>(), 3),
            peak_position: pass.peak.0.into(),
            threshold_percent: round(resolved.threshold.get::<percent>(), 3),
            times_threshold: round(peak.get::<percent>() / resolved.threshold.get::<percent>(), 2),
            detected: peak >= resolved.threshold,
            switches_on_at: pass.seen.first().map(|(from, _)| (*from).into()),
            switches_off_at: pass.seen.last().map(|(_, to)| (*to).into()),
            drops_out: !pass.drop_outs.is_empty(),
            drop_outs: pass.drop_outs.iter().copied().map(Stretch::from).collect(),
            profile: pass
                .profile
                .iter()
                .map(|(position, change)| ProfilePoint {
                    position: (*position).into(),
                    change_percent: round(change.get::<percent>(), 3),
                })
                .collect(),
            blind_strip: unseen.map(|unseen| BlindStrip::of(unseen, resolved.lane)),
            seen_height,
            model: resolved.class.map_or("plate", VehicleClass::model),
            inputs: VehicleResponseInputs {
                r#loop: resolved.coil.clone(),
                lead_in: resolved.lead_in.clone(),
                vehicle: resolved.class.map_or(DrivenVehicle::Plate, DrivenVehicle::Class),
                vehicle_length: resolved.model.length.into(),
                vehicle_width: resolved.model.width.into(),
                effective_height: resolved.model.height.into(),
                offset_across: resolved.offset.into(),
                lane_width: resolved.lane.into(),
                positions: resolved.positions,
            },
            findings: closing.findings,
            assumed: closing.assumed,
            unused: closing.unused,
            cautions: closing.cautions,
            basis: closing.basis,
        }
    }
}

/// A stretch of the way, by the position of the vehicle's front past the loop's leading edge.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct Stretch {
    /// Its begin.
    pub from: PlanLength,
    /// Its end.
    pub to: PlanLength,
}

impl Stretch {
    /// Whether it is a drop-out after which the unit is on again, until it switches off `last`.
    pub fn comes_back_before(&self, last: PlanLength) -> bool {
        self.to.m() < last.m()
    }
}

impl From<(Length, Length)> for Stretch {
    fn from((from, to): (Length, Length)) -> Self {
        Self { from: from.into(), to: to.into() }
    }
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
    pub fn of(unseen: &UnseenStrips, lane: Length) -> Self {
        Self {
            width: unseen.width().into(),
            share_of_lane_percent: round((unseen.width() / lane).get::<percent>(), 3),
            contains_centre: unseen.contains_centre(),
            strips: unseen.strips.iter().copied().map(Stretch::from).collect(),
        }
    }
}

/// What drives over the loop.
#[derive(Clone, Copy, Debug)]
pub enum DrivenVehicle {
    /// A vehicle of a class.
    Class(VehicleClass),
    /// A flat underside of the caller's.
    Plate,
}

impl Serialize for DrivenVehicle {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Class(class) => class.serialize(serializer),
            Self::Plate => serializer.serialize_str("plate"),
        }
    }
}

/// What was understood of a vehicle-response request.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct VehicleResponseInputs {
    /// The loop.
    pub r#loop: ResolvedLoop,
    /// The lead-in.
    pub lead_in: ResolvedLeadIn,
    /// The class of the vehicle, or `plate`.
    #[schema(value_type = String)]
    pub vehicle: DrivenVehicle,
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
