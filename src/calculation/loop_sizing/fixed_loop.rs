//! What the caller has decided already for the loop of a role.

use serde::{Deserialize, Serialize};
use uom::si::f64::Length;
use uom::si::length::millimeter;
use utoipa::ToSchema;
use validator::Validate;

use crate::calculation::input::{GroundDistance, LoopLeg, ResolvedStockItem, Shape};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::practice::roles::{Role, Side};
use crate::practice::site::Barrier;
use crate::quantity::output::PlanLength;

/// What is decided already for the loop of a role: any of its shape, legs, turns and distance. The sizing fills in the rest, and judges it as
/// it judges its own.
#[derive(Clone, Debug, Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct FixedLoop {
    /// The role; one of `roles`.
    pub role: Role,
    /// The shape. Default: a rectangle.
    pub shape: Option<Shape>,
    /// The leg in the direction of driving.
    pub along_travel: Option<LoopLeg>,
    /// The leg across the lane.
    pub across_lane: Option<LoopLeg>,
    /// Turns.
    #[validate(range(min = 1, max = 20))]
    #[schema(minimum = 1, maximum = 20)]
    pub turns: Option<u32>,
    /// From the line of the barrier or the reference to the nearest wire. A loop that straddles the line (`closing`, and `presence` without a barrier) takes none.
    pub distance: Option<GroundDistance>,
}

/// What is decided already, in typed quantities.
#[derive(Clone, Debug, Serialize, ToSchema)]
#[schema(as = FixedLoopEcho)]
pub struct ResolvedFixedLoop {
    /// The role.
    #[schema(value_type = String)]
    pub role: Role,
    /// The shape; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>)]
    pub shape: Option<Shape>,
    /// The leg in the direction of driving; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "PlanLength::write_option")]
    #[schema(value_type = Option<PlanLength>)]
    pub along_travel: Option<Length>,
    /// The leg across the lane; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "PlanLength::write_option")]
    #[schema(value_type = Option<PlanLength>)]
    pub across_lane: Option<Length>,
    /// Turns; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub turns: Option<u32>,
    /// The distance; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "PlanLength::write_option")]
    #[schema(value_type = Option<PlanLength>)]
    pub distance: Option<Length>,
}

impl ResolvedFixedLoop {
    /// Whether an item of stock is as it was decided.
    pub(super) fn allows(&self, item: &ResolvedStockItem) -> bool {
        let is_same = |decided: Option<Length>, own: Length| {
            decided.is_none_or(|decided| (decided - own).abs() < Length::new::<millimeter>(1.0))
        };
        self.shape.is_none_or(|shape| shape == Shape::Rectangle)
            && is_same(self.along_travel, item.along_travel)
            && is_same(self.across_lane, item.across_lane)
            && self.turns.is_none_or(|turns| item.turns.is_none_or(|own| own == turns))
    }
}

impl FixedLoop {
    /// Reads the decision, for an opening of a width with these roles.
    pub(super) fn resolve(
        &self,
        (roles, barrier, width): (&[Role], Barrier, Option<Length>),
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> ResolvedFixedLoop {
        let along_travel = diagnostics.parse_optional(&at.field("along_travel"), self.along_travel.as_ref());
        let across_lane = diagnostics.parse_optional(&at.field("across_lane"), self.across_lane.as_ref());
        let distance = diagnostics.parse_optional(&at.field("distance"), self.distance.as_ref());
        let role = self.role;
        let mut refuse = |field: &'static str, message: Statement, hint: Statement| {
            diagnostics.add_error(&at.field(field), FieldErrorCode::Contradiction, message, hint);
        };
        // A list of no roles is a fault of its own.
        if !roles.is_empty() && !roles.contains(&role) {
            refuse(
                "role",
                Statement::new("errors-fixed-role-absent").member("role", role),
                Statement::new("errors-fixed-role-absent-hint"),
            );
        }
        if across_lane.zip(width).is_some_and(|(across, width)| across > 1.000_001 * width) {
            refuse(
                "across_lane",
                Statement::new("errors-fixed-loop-wide"),
                Statement::new("errors-fixed-loop-wide-hint"),
            );
        }
        if role.side(barrier) == Side::OnTheLine && distance.is_some() {
            refuse(
                "distance",
                Statement::new("errors-fixed-distance-on-line").member("role", role),
                Statement::new("errors-fixed-distance-on-line-hint"),
            );
        }
        ResolvedFixedLoop { role, shape: self.shape, along_travel, across_lane, turns: self.turns, distance }
    }
}
