//! What is asked of [`super`].

use serde::Deserialize;
use uom::si::f64::{Length, Ratio};
use uom::si::thermodynamic_temperature::degree_celsius;
use utoipa::ToSchema;
use validator::Validate;

use crate::calculation::fault_finding::{FaultReadings, ResolvedReadings};
use crate::calculation::input::{
    Detector, LaneWidth, LeadIn, LoopLeg, Reinforcement, ResolvedDetector, ResolvedLeadIn, SizeUncertainty,
    resolve_vehicles,
};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::practice::layout::EDGE_SETBACK;
use crate::practice::roles::Role;
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use crate::quantity::UnitSystem;
use crate::quantity::format::format_length_input;
use crate::vocabulary::Vocabulary;

/// A loop that lies in the ground, and of which nothing is known but what can be paced out and measured.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ExistingLoopRequest {
    /// The leg in the direction of driving, as the slot shows it.
    pub along_travel: LoopLeg,
    /// The leg across the lane, as the slot shows it.
    pub across_lane: LoopLeg,
    /// How far the legs may be off, as a share. Default 10 %.
    pub size_uncertainty: Option<SizeUncertainty>,
    /// The pair to the unit. Default 50 ft.
    #[validate(nested)]
    pub lead_in: Option<LeadIn>,
    /// What the meters show, with the unit disconnected.
    #[validate(nested)]
    pub readings: Option<FaultReadings>,
    /// The unit that it is to come to. Default: the standard minimum.
    #[validate(nested)]
    pub detector: Option<Detector>,
    /// The vehicles that must be seen, each once. Default: the usual ones.
    #[validate(length(max = VehicleClass::COUNT))]
    pub vehicles: Option<Vec<VehicleClass>>,
    /// What the loop is for. Of one that holds a gate more is asked. Default: not said.
    pub role: Option<Role>,
    /// The clear width of the lane. Default: the leg across and 2 ft / 0.6 m on each side.
    pub lane_width: Option<LaneWidth>,
    /// Whether steel lies below it: mesh, a plate, a deck. Default: not known, and possible.
    pub over_steel: Option<bool>,
    /// Steel in the slab below it, where the depth is known.
    #[validate(nested)]
    pub reinforcement: Option<Reinforcement>,
    /// Whether each of `vehicles` was driven over it and seen from its front to its tail. Default: not driven over.
    pub drive_over_passed: Option<bool>,
}

/// What is known of steel below a loop.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SteelBelow {
    /// Nobody knows.
    Unknown,
    /// There is none.
    Absent,
    /// There is some, at this depth under the lowest turn where that is known.
    Present(Option<Length>),
}

/// A request in typed quantities.
pub struct ResolvedExistingLoop {
    /// The leg in the direction of driving.
    pub along_travel: Length,
    /// The leg across the lane.
    pub across_lane: Length,
    /// The system of the legs.
    pub system: UnitSystem,
    /// How far the legs may be off, as a share.
    pub size_uncertainty: Ratio,
    /// The pair to the unit.
    pub lead_in: ResolvedLeadIn,
    /// What the meters show.
    pub readings: ResolvedReadings,
    /// The unit.
    pub detector: ResolvedDetector,
    /// Whether anything was told of the unit.
    pub unit_is_told: bool,
    /// The vehicles that must be seen.
    pub vehicles: Vec<VehicleClass>,
    /// What the loop is for, when said.
    pub role: Option<Role>,
    /// The lane.
    pub lane_width: Length,
    /// Steel below.
    pub steel: SteelBelow,
    /// Whether vehicles were driven over it and seen, when tried.
    pub drive_over_passed: Option<bool>,
}

impl ExistingLoopRequest {
    /// Reads the request; `None` after an error.
    pub(super) fn resolve(&self, diagnostics: &mut Diagnostics) -> Option<ResolvedExistingLoop> {
        let body = FieldPath::BODY;
        let along = diagnostics.parse(&body.field("along_travel"), &self.along_travel);
        let across = diagnostics.parse(&body.field("across_lane"), &self.across_lane);
        let size_uncertainty = diagnostics.parse_or_default(
            &body.field("size_uncertainty"),
            self.size_uncertainty.as_ref(),
            "10 %",
            Statement::new("existing-usual-uncertainty"),
            Source::OwnChoice,
        );
        let lead_in_at = body.field("lead_in");
        let lead_in = LeadIn::resolve_or_default(self.lead_in.as_ref(), &lead_in_at, diagnostics);
        diagnostics.mark_unneeded(&lead_in_at, &LeadIn::parts_sent_of(self.lead_in.as_ref()));
        let tank_nf = self.detector.as_ref().and_then(|detector| detector.tuning_capacitance_nf);
        let readings = ResolvedReadings::resolve(self.readings.as_ref(), &body.field("readings"), tank_nf, diagnostics);
        let detector = Detector::resolve(self.detector.as_ref(), &body.field("detector"), diagnostics);
        let vehicles = resolve_vehicles(self.vehicles.as_deref(), &body.field("vehicles"), diagnostics);
        let lane_width = diagnostics.parse_optional(&body.field("lane_width"), self.lane_width.as_ref());
        let depth = Reinforcement::resolve(self.reinforcement.as_ref(), &body.field("reinforcement"), diagnostics);
        let steel = match (self.over_steel, depth) {
            (Some(false), Some(_)) => {
                diagnostics.add_error(
                    &body.field("over_steel"),
                    FieldErrorCode::Contradiction,
                    Statement::new("errors-no-steel-with-depth"),
                    Statement::new("errors-no-steel-with-depth-hint"),
                );
                SteelBelow::Unknown
            }
            (_, Some(depth)) => SteelBelow::Present(Some(depth)),
            (Some(true), None) => SteelBelow::Present(None),
            (Some(false), None) => SteelBelow::Absent,
            (None, None) => SteelBelow::Unknown,
        };
        let (along, across) = (along?, across?);
        let lane_width = lane_width.unwrap_or_else(|| {
            let usual = across.si + 2.0 * EDGE_SETBACK.in_system(across.system);
            let value = format_length_input(usual, across.system);
            let reason = Statement::new("existing-usual-lane");
            diagnostics.add_assumption(&body.field("lane_width"), value, reason, &[Source::CommonPractice]);
            usual
        });
        Some(ResolvedExistingLoop {
            along_travel: along.si,
            across_lane: across.si,
            system: along.system,
            size_uncertainty: size_uncertainty?,
            lead_in: lead_in?,
            readings: readings?,
            detector: detector?,
            unit_is_told: self.detector.is_some(),
            vehicles,
            role: self.role,
            lane_width,
            steel,
            drive_over_passed: self.drive_over_passed,
        })
    }
}

impl ResolvedExistingLoop {
    /// Whether it is known to hold a gate or barrier.
    pub fn holds_the_gate(&self) -> bool {
        self.role.is_some_and(Role::holds_the_gate)
    }

    /// The resistance of the pair to the unit, there and back, at the temperature of the readings, ohm.
    pub fn lead_in_ohms(&self) -> f64 {
        self.lead_in.ohms(self.readings.conditions.temperature.get::<degree_celsius>())
    }
}
