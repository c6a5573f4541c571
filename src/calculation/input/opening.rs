//! The opening: what closes it, and which vehicles pass through.

use serde::{Deserialize, Serialize};
use uom::si::f64::{Length, Time, Velocity};
use utoipa::ToSchema;
use validator::Validate;

use super::{ApproachSpeed, LeafGroundGap, LeafHeight, OpeningTime, OpeningWidth, Setback};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::practice::site::Barrier;
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use crate::quantity::output::{DurationValue, PlanLength, SpeedValue};
use crate::quantity::{QuantityField, UnitSystem};
use crate::vocabulary::join_codes;

/// What vehicles pass through.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Opening {
    /// The clear width. Tidy sizes follow the system that it is written in.
    pub width: OpeningWidth,
    /// What closes it.
    pub barrier: Barrier,
    /// The clear strip to leave at each edge. Default 2 ft / 0.6 m, or 3 ft / 0.9 m beside other traffic.
    pub edge_setback: Option<Setback>,
    /// How fast vehicles come up to the opening from inside; with `opening_time` it places the exit loop.
    pub approach_speed: Option<ApproachSpeed>,
    /// How long the barrier takes to open.
    pub opening_time: Option<OpeningTime>,
    /// The height of a metal leaf. Default 6 ft.
    pub leaf_height: Option<LeafHeight>,
    /// The gap under a metal leaf. Default 4 in.
    pub leaf_ground_gap: Option<LeafGroundGap>,
}

/// An opening as it was understood.
#[derive(Clone, Debug, Serialize, ToSchema)]
#[schema(as = OpeningEcho)]
pub struct ResolvedOpening {
    /// The clear width.
    #[serde(serialize_with = "PlanLength::write")]
    #[schema(value_type = PlanLength)]
    pub width: Length,
    /// What closes it.
    #[schema(value_type = String)]
    pub barrier: Barrier,
    /// The asked setback; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "PlanLength::write_option")]
    #[schema(value_type = Option<PlanLength>)]
    pub edge_setback: Option<Length>,
    /// Speed of approach; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "SpeedValue::write_option")]
    #[schema(value_type = Option<SpeedValue>)]
    pub approach_speed: Option<Velocity>,
    /// Opening time; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "DurationValue::write_option")]
    #[schema(value_type = Option<DurationValue>)]
    pub opening_time: Option<Time>,
    /// Height of the metal leaf; absent where there is none.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "PlanLength::write_option")]
    #[schema(value_type = Option<PlanLength>)]
    pub leaf_height: Option<Length>,
    /// Gap under the metal leaf; absent where there is none.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "PlanLength::write_option")]
    #[schema(value_type = Option<PlanLength>)]
    pub leaf_ground_gap: Option<Length>,
    /// The system that the width was written in.
    #[serde(skip)]
    pub system: UnitSystem,
}

impl Opening {
    /// The system that its width is written in.
    pub fn system(&self) -> UnitSystem {
        self.width.read().map_or(UnitSystem::Metric, |width| width.system)
    }

    /// Reads the opening.
    pub fn resolve(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<ResolvedOpening> {
        let width = diagnostics.parse(&at.field("width"), &self.width);
        let edge_setback = diagnostics.parse_optional(&at.field("edge_setback"), self.edge_setback.as_ref());
        let approach_speed = diagnostics.parse_optional(&at.field("approach_speed"), self.approach_speed.as_ref());
        let opening_time = diagnostics.parse_optional(&at.field("opening_time"), self.opening_time.as_ref());
        let leaf = self.resolve_leaf(at, diagnostics);
        let width = width?;
        if edge_setback.is_some_and(|setback| 2.0 * setback > 0.8 * width.si) {
            diagnostics.add_error(
                &at.field("edge_setback"),
                FieldErrorCode::Contradiction,
                Statement::new("errors-wide-setback"),
                Statement::new("errors-wide-setback-hint"),
            );
        }
        Some(ResolvedOpening {
            system: width.system,
            width: width.si,
            barrier: self.barrier,
            edge_setback,
            approach_speed,
            opening_time,
            leaf_height: leaf.map(|(height, _)| height),
            leaf_ground_gap: leaf.map(|(_, gap)| gap),
        })
    }

    fn resolve_leaf(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<(Length, Length)> {
        let (height_at, gap_at) = (at.field("leaf_height"), at.field("leaf_ground_gap"));
        if !self.barrier.has_metal_leaf() {
            diagnostics.parse_optional(&height_at, self.leaf_height.as_ref());
            diagnostics.parse_optional(&gap_at, self.leaf_ground_gap.as_ref());
            diagnostics.mark_unneeded(
                at,
                &[("leaf_height", self.leaf_height.is_some()), ("leaf_ground_gap", self.leaf_ground_gap.is_some())],
            );
            return None;
        }
        let height = diagnostics.parse_or_default(
            &height_at,
            self.leaf_height.as_ref(),
            "6 ft",
            Statement::new("input-usual-leaf-height"),
            Source::OwnChoice,
        );
        let gap = diagnostics.parse_or_default(
            &gap_at,
            self.leaf_ground_gap.as_ref(),
            "4 in",
            Statement::new("input-usual-leaf-gap"),
            Source::OwnChoice,
        );
        height.zip(gap)
    }
}

/// The vehicles that must be seen, each once; the usual ones when none are named.
pub fn resolve_vehicles(
    sent: Option<&[VehicleClass]>,
    at: &FieldPath<'_>,
    diagnostics: &mut Diagnostics,
) -> Vec<VehicleClass> {
    let Some(vehicles) = sent else {
        let reason = Statement::new("input-usual-vehicles");
        diagnostics.add_assumption(at, join_codes(&VehicleClass::USUAL), reason, &[Source::CommonPractice]);
        return VehicleClass::USUAL.to_vec();
    };
    let mut once = vehicles.to_vec();
    once.sort_unstable();
    once.dedup();
    once
}
