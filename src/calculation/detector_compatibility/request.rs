//! What is asked of [`super`], as sent and in typed quantities.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use validator::Validate;

use super::channel::{ChannelLoop, DetectorChannel};
use super::report::{ConnectedLoopEcho, DetectorCompatibilityInputs};
use crate::calculation::input::{Coordinate, Detector, LeadIn, Loop, PresenceTime, ResolvedDetector, resolve_vehicles};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::practice::detectors::{FailureBehaviour, OutputMode, USUAL_STEPS_PERCENT, Wiring};
use crate::practice::layout::MAX_SIDE_BY_SIDE;
use crate::practice::roles::Role;
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use crate::vocabulary::Vocabulary;

/// The most loops of a request: every role at one opening, as many side by side as there may be.
pub const MAX_LOOPS: u64 = Role::COUNT * MAX_SIDE_BY_SIDE as u64;

/// Loops, and the detector unit that is to tune to them.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct DetectorCompatibilityRequest {
    /// The loops.
    #[validate(nested, length(min = 1, max = MAX_LOOPS))]
    #[schema(min_items = 1)]
    pub loops: Vec<ConnectedLoop>,
    /// How they come to the unit. Default `separate`.
    pub wiring: Option<Wiring>,
    /// The unit. Default: the standard minimum.
    #[validate(nested)]
    pub detector: Option<Detector>,
    /// The vehicles that must be seen. Default: passenger car and high-bed truck.
    #[validate(length(min = 1, max = VehicleClass::COUNT))]
    #[schema(min_items = 1)]
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

/// A request in typed quantities.
pub struct ResolvedDetectorCompatibility {
    /// The loops.
    pub loops: Vec<ChannelLoop>,
    /// How they come to the unit.
    pub wiring: Wiring,
    /// The unit.
    pub detector: ResolvedDetector,
    /// The vehicles that must be seen.
    pub vehicles: Vec<VehicleClass>,
}

impl ConnectedLoop {
    fn resolve(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<ChannelLoop> {
        let coil = self.r#loop.resolve(&at.field("loop"), diagnostics);
        let lead_in = self.lead_in.resolve(&at.field("lead_in"), diagnostics);
        let position_at = at.field("position");
        let position = self.position.as_ref().and_then(|position| {
            let along = diagnostics.parse(&position_at.field("along"), &position.along);
            let across = diagnostics.parse(&position_at.field("across"), &position.across);
            Some((along?.si, across?.si))
        });
        let presence_time = diagnostics.parse_optional(&at.field("presence_time"), self.presence_time.as_ref());
        diagnostics.mark_unneeded(&at.field("lead_in"), &self.lead_in.parts_sent());
        Some(ChannelLoop {
            label: self.label.clone(),
            role: self.role,
            coil: coil?,
            lead_in: lead_in?,
            position,
            output: self.output,
            presence_time,
            on_loop_failure: self.on_loop_failure,
        })
    }
}

impl DetectorCompatibilityRequest {
    /// Resolves the request; `None` when it has an error.
    pub fn resolve(&self, diagnostics: &mut Diagnostics) -> Option<ResolvedDetectorCompatibility> {
        let body = FieldPath::BODY;
        let loops_at = body.field("loops");
        let mut loops = Vec::new();
        for (index, connected) in self.loops.iter().enumerate() {
            let at = loops_at.item(index);
            if self.loops[..index].iter().any(|other| other.label == connected.label) {
                diagnostics.add_error(
                    &at.field("label"),
                    FieldErrorCode::Contradiction,
                    Statement::new("errors-label-twice").text("label", connected.label.clone()),
                    Statement::new("errors-label-twice-hint"),
                );
            }
            loops.extend(connected.resolve(&at, diagnostics));
        }
        let wiring = diagnostics.value_or_default(
            &body.field("wiring"),
            self.wiring,
            (Wiring::Separate, Wiring::Separate.code()),
            "Every loop has its own channel.",
            Source::CommonPractice,
        );
        let detector = Detector::resolve(self.detector.as_ref(), &body.field("detector"), diagnostics);
        let vehicles = resolve_vehicles(self.vehicles.as_deref(), &body.field("vehicles"), diagnostics);
        let mut detector = detector?;
        if detector.threshold_percent.is_none() && detector.threshold_steps_percent.is_empty() {
            let steps = USUAL_STEPS_PERCENT.map(|step| step.to_string()).join(", ");
            let reason = "Steps of the standard's sensitivity classes and a finer one; the unit's sheet governs.";
            let sources = [Source::NemaSensitivity, Source::FromMemory];
            diagnostics.add_assumption(
                &body.field("detector").field("threshold_steps_percent"),
                steps,
                reason,
                &sources,
            );
            detector.threshold_steps_percent = USUAL_STEPS_PERCENT.to_vec();
        }
        Some(ResolvedDetectorCompatibility { loops, wiring, detector, vehicles })
    }
}

impl ResolvedDetectorCompatibility {
    /// One channel per loop, or one for all.
    pub fn channels(&self) -> Vec<DetectorChannel> {
        match self.wiring {
            Wiring::Separate => {
                self.loops.iter().map(|one| DetectorChannel::new(vec![one.clone()], Wiring::Separate)).collect()
            }
            wiring @ (Wiring::Series | Wiring::Parallel) => vec![DetectorChannel::new(self.loops.clone(), wiring)],
        }
    }

    /// The echo of the request.
    pub fn echo(&self) -> DetectorCompatibilityInputs {
        DetectorCompatibilityInputs {
            loops: self
                .loops
                .iter()
                .map(|resolved| ConnectedLoopEcho {
                    label: resolved.label.clone(),
                    role: resolved.role,
                    r#loop: resolved.coil.echo(),
                    lead_in: resolved.lead_in.echo(),
                    along: resolved.position.map(|(along, _)| along.into()),
                    across: resolved.position.map(|(_, across)| across.into()),
                })
                .collect(),
            wiring: self.wiring,
            detector: self.detector.echo(),
            vehicles: self.vehicles.clone(),
        }
    }
}
