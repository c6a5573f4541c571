//! The opening: what closes it, and which vehicles pass through.

use serde::{Deserialize, Serialize};
use uom::si::f64::{Length, Time, Velocity};
use utoipa::ToSchema;
use validator::Validate;

use super::{ApproachSpeed, GroundDistance, LeafGroundGap, LeafHeight, OpeningTime, OpeningWidth, Setback};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::practice::site::{Barrier, LeafOpen, UnitSide};
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use crate::quantity::output::{DurationValue, PlanLength, SpeedValue};
use crate::quantity::{QuantityField, UnitSystem};
use crate::vocabulary::{Vocabulary, join_codes};

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
    /// How far the drive inside runs straight up to the opening; the exit loop stays on it.
    pub drive_length: Option<GroundDistance>,
    /// The height of a metal leaf. Default 6 ft; 12 ft of an overhead door.
    pub leaf_height: Option<LeafHeight>,
    /// The gap under a metal leaf. Default 4 in; none under an overhead door.
    pub leaf_ground_gap: Option<LeafGroundGap>,
    /// Where the leaf of an overhead door is while it stands open. Default `level`.
    pub leaf_open: Option<LeafOpen>,
    /// The side of the opening on which the detector unit stands, as one leaves: the pairs leave the pavement there. Default `right`.
    pub unit_side: Option<UnitSide>,
    /// Whether another device (a beam across, a camera) watches the line of the gate from edge to edge. Default false.
    pub seen_otherwise: Option<bool>,
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
    /// Length of the drive inside; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "PlanLength::write_option")]
    #[schema(value_type = Option<PlanLength>)]
    pub drive_length: Option<Length>,
    /// Height of the metal leaf; absent where there is none.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "PlanLength::write_option")]
    #[schema(value_type = Option<PlanLength>)]
    pub leaf_height: Option<Length>,
    /// Gap under the metal leaf; absent where there is none.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "PlanLength::write_option")]
    #[schema(value_type = Option<PlanLength>)]
    pub leaf_ground_gap: Option<Length>,
    /// Where the leaf of an overhead door is while it stands open; absent at other barriers.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>)]
    pub leaf_open: Option<LeafOpen>,
    /// The side on which the unit stands, as one leaves.
    #[schema(value_type = String)]
    pub unit_side: UnitSide,
    /// Whether another device watches the line of the gate.
    pub seen_otherwise: bool,
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
        let drive_length = diagnostics.parse_optional(&at.field("drive_length"), self.drive_length.as_ref());
        let leaf = self.resolve_leaf(at, diagnostics);
        let leaf_open = self.resolve_leaf_open(at, diagnostics);
        let unit_side = diagnostics.value_or_default(
            &at.field("unit_side"),
            self.unit_side,
            (UnitSide::Right, UnitSide::Right.code()),
            Statement::new("input-usual-unit-side"),
            Source::OwnChoice,
        );
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
            drive_length,
            leaf_height: leaf.map(|(height, _)| height),
            leaf_ground_gap: leaf.map(|(_, gap)| gap),
            leaf_open,
            unit_side,
            seen_otherwise: self.seen_otherwise.unwrap_or(false),
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
        let (usual_height, usual_gap) = self.barrier.usual_leaf();
        let height = diagnostics.parse_or_default(
            &height_at,
            self.leaf_height.as_ref(),
            usual_height,
            Statement::new("input-usual-leaf-height"),
            Source::OwnChoice,
        );
        let gap = diagnostics.parse_or_default(
            &gap_at,
            self.leaf_ground_gap.as_ref(),
            usual_gap,
            Statement::new("input-usual-leaf-gap"),
            Source::OwnChoice,
        );
        height.zip(gap)
    }

    fn resolve_leaf_open(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<LeafOpen> {
        if self.barrier != Barrier::OverheadDoor {
            diagnostics.mark_unneeded(at, &[("leaf_open", self.leaf_open.is_some())]);
            return None;
        }
        Some(diagnostics.value_or_default(
            &at.field("leaf_open"),
            self.leaf_open,
            (LeafOpen::Level, LeafOpen::Level.code()),
            Statement::new("input-usual-leaf-open"),
            Source::CommonPractice,
        ))
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
