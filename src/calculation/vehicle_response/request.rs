//! What is asked of [`super`].

use serde::Deserialize;
use uom::si::f64::{Length, Ratio};
use uom::si::ratio::percent;
use utoipa::ToSchema;
use validator::Validate;

use super::vehicle_model::VehicleModel;
use crate::calculation::input::{
    LaneWidth, LeadIn, Loop, PlateHeight, PlateLength, PlateWidth, ResolvedLeadIn, ResolvedLoop, SideOffset,
};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::practice::layout::EDGE_SETBACK;
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use crate::quantity::format::format_length_input;

/// How many positions a profile has.
pub(super) const USUAL_POSITIONS: (u32, &str) = (41, "41");

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

/// A request in typed quantities.
pub struct ResolvedVehicleResponse {
    /// The loop.
    pub coil: ResolvedLoop,
    /// The pair to the unit.
    pub lead_in: ResolvedLeadIn,
    /// The class of the vehicle; `None` for a plate of the caller's.
    pub class: Option<VehicleClass>,
    /// The metal of the vehicle.
    pub model: VehicleModel,
    /// From the middle of the loop to the middle of the vehicle.
    pub offset: Length,
    /// The change that the unit switches at.
    pub threshold: Ratio,
    /// How many positions the profile has.
    pub positions: usize,
    /// The width of the lane.
    pub lane: Length,
}

impl ResolvedVehicleResponse {
    /// A vehicle over a loop, on the line where it is usually looked at.
    pub fn of_class(
        class: VehicleClass,
        coil: ResolvedLoop,
        lead_in: ResolvedLeadIn,
        threshold: Ratio,
        lane: Length,
    ) -> Self {
        Self {
            lead_in,
            class: Some(class),
            model: VehicleModel::of_class(class).clone(),
            offset: if class.is_two_wheeler() { coil.riding_line() } else { Length::default() },
            threshold,
            positions: USUAL_POSITIONS.0 as usize,
            lane,
            coil,
        }
    }
}

impl VehicleResponseRequest {
    /// Reads the request; `None` after an error.
    pub(super) fn resolve(&self, diagnostics: &mut Diagnostics) -> Option<ResolvedVehicleResponse> {
        let body = FieldPath::BODY;
        let coil = self.r#loop.resolve(&body.field("loop"), diagnostics);
        let lead_in = self.lead_in.resolve(&body.field("lead_in"), diagnostics);
        let model = self.resolve_model(&body, diagnostics);
        let offset = diagnostics.parse_optional(&body.field("offset_across"), self.offset_across.as_ref());
        let lane = diagnostics.parse_optional(&body.field("lane_width"), self.lane_width.as_ref());
        let threshold = self.threshold_percent.unwrap_or_else(|| {
            let class = self.vehicle.unwrap_or(VehicleClass::PassengerCar);
            let threshold = class.threshold_percent();
            let reason = Statement::new("response-usual-threshold");
            diagnostics.add_assumption(
                &body.field("threshold_percent"),
                threshold.to_string(),
                reason,
                class.threshold_sources(),
            );
            threshold
        });
        let positions = diagnostics.value_or_default(
            &body.field("positions"),
            self.positions,
            USUAL_POSITIONS,
            Statement::new("response-usual-positions"),
            Source::OwnChoice,
        );
        let (coil, model) = (coil?, model?);
        let offset = offset.unwrap_or_else(|| {
            let (offset, reason) = if self.vehicle.is_some_and(VehicleClass::is_two_wheeler) {
                (coil.riding_line(), Statement::new("response-riding-line"))
            } else {
                (Length::default(), Statement::new("response-over-middle"))
            };
            diagnostics.add_assumption(
                &body.field("offset_across"),
                format_length_input(offset, coil.system),
                reason,
                &[Source::OwnChoice],
            );
            offset
        });
        let lane = lane.unwrap_or_else(|| {
            let lane = coil.across_lane + 2.0 * EDGE_SETBACK.in_system(coil.system);
            let reason = Statement::new("response-usual-lane");
            diagnostics.add_assumption(
                &body.field("lane_width"),
                format_length_input(lane, coil.system),
                reason,
                &[Source::CommonPractice],
            );
            lane
        });
        Some(ResolvedVehicleResponse {
            lead_in: lead_in?,
            class: self.vehicle,
            model,
            offset,
            threshold: Ratio::new::<percent>(threshold),
            positions: positions as usize,
            lane,
            coil,
        })
    }

    fn resolve_model(&self, body: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<VehicleModel> {
        let plate_at = body.field("plate");
        let own = self.plate.as_ref().and_then(|plate| {
            let width = diagnostics.parse(&plate_at.field("width"), &plate.width);
            let length = diagnostics.parse(&plate_at.field("length"), &plate.length);
            let height = diagnostics.parse(&plate_at.field("effective_height"), &plate.effective_height);
            VehicleModel::of_plate(width?.si, length?.si, height?.si)
        });
        match (self.vehicle, &self.plate) {
            (Some(class), None) => Some(VehicleModel::of_class(class).clone()),
            (None, Some(_)) => own,
            (Some(_), Some(_)) => {
                diagnostics.add_error(
                    &plate_at,
                    FieldErrorCode::Contradiction,
                    Statement::new("errors-vehicle-and-plate"),
                    Statement::new("errors-vehicle-and-plate-hint"),
                );
                None
            }
            (None, None) => {
                diagnostics.add_error(
                    &body.field("vehicle"),
                    FieldErrorCode::FieldMissing,
                    Statement::new("errors-no-vehicle"),
                    Statement::new("errors-no-vehicle-hint"),
                );
                None
            }
        }
    }
}
