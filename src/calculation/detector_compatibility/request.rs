//! What is asked of [`super`], as sent and in typed quantities.

use serde::{Deserialize, Serialize};
use uom::si::f64::Length;
use utoipa::ToSchema;
use validator::Validate;

use super::lanes::{SentLane, lane_of};
use super::report::{ConnectedLoopEcho, DetectorCompatibilityInputs};
use crate::calculation::budget::WorkBudget;
use crate::calculation::input::{
    Coordinate, Detector, LaneWidth, LeadIn, Loop, PresenceTime, Reinforcement, ResolvedDetector, resolve_labels,
    resolve_vehicles,
};
use crate::calculation::layout::{ChannelLoop, Lane};
use crate::calculation::report::{Diagnostics, FieldPath, Statement};
use crate::practice::detectors::{FailureBehaviour, OutputMode, USUAL_STEPS_PERCENT, Wiring};
use crate::practice::layout::MAX_SIDE_BY_SIDE;
use crate::practice::roles::Role;
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use crate::quantity::format::format_length_input;
use crate::vocabulary::Vocabulary;

/// The most loops of a request: every role at one opening, as many side by side as there may be.
pub const MAX_LOOPS: u64 = Role::COUNT * MAX_SIDE_BY_SIDE as u64;

/// The role of a loop of which nothing is said: one that must not be set to let go.
const USUAL_ROLE: Role = Role::ObstructionInside;

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
    #[validate(length(max = VehicleClass::COUNT))]
    #[schema(min_items = 1)]
    pub vehicles: Option<Vec<VehicleClass>>,
}

/// A loop on its way to the unit.
#[derive(Clone, Debug, Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ConnectedLoop {
    /// The caller's name for it, each once. Default: its number.
    #[validate(length(min = 1, max = 64))]
    #[schema(min_length = 1, max_length = 64)]
    pub label: Option<String>,
    /// What it is for. Default `obstruction_inside`: its channel is set for a loop that holds a gate, which is the safe side.
    pub role: Option<Role>,
    /// The loop.
    #[validate(nested)]
    pub r#loop: Loop,
    /// The pair to the unit.
    #[validate(nested)]
    pub lead_in: LeadIn,
    /// Where its middle lies; without it the coupling of neighbours is not told.
    #[validate(nested)]
    pub position: Option<Position>,
    /// The width of the lane that it lies across, for a vehicle hard against the edge of it. Default: the loop, or the row of loops of its
    /// role that lie side by side, and 2 ft / 0.6 m on each side.
    pub lane_width: Option<LaneWidth>,
    /// Where the middle of that lane lies across, from the point that `position` counts from. Default: the middle of the loop, or of its row.
    pub lane_middle: Option<Coordinate>,
    /// Steel in the slab below it: the low end of its as-built band is then that over the steel.
    #[validate(nested)]
    pub reinforcement: Option<Reinforcement>,
    /// The unit that it comes to, by the caller's name. Loops of one unit are on channels that it scans in turn, and do not disturb each
    /// other. Default: a unit of its own.
    #[validate(length(min = 1, max = 64))]
    #[schema(min_length = 1, max_length = 64)]
    pub unit: Option<String>,
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
    /// What was sent of each loop's lane; `None` where a layout has decided the lanes.
    pub sent_lanes: Option<Vec<SentLane>>,
    /// What the checks and the search for remedies may still compute.
    pub budget: WorkBudget,
}

impl ConnectedLoop {
    /// The loop, with what was sent of its lane.
    fn resolve(
        &self,
        label: &str,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Option<(ChannelLoop, SentLane)> {
        let role = diagnostics.value_or_default(
            &at.field("role"),
            self.role,
            (USUAL_ROLE, USUAL_ROLE.code()),
            Statement::new("compatibility-usual-role"),
            Source::OwnChoice,
        );
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
        let width = diagnostics.parse_optional(&at.field("lane_width"), self.lane_width.as_ref());
        let middle = diagnostics.parse_optional(&at.field("lane_middle"), self.lane_middle.as_ref());
        let is_lost = self.lane_middle.is_some() && self.position.is_none();
        diagnostics.mark_unneeded(at, &[("lane_middle", is_lost)]);
        let reinforcement_at = at.field("reinforcement");
        let steel_below = Reinforcement::resolve(self.reinforcement.as_ref(), &reinforcement_at, diagnostics);
        let coil = coil?;
        let lane = Lane::of(role, Length::default(), vec![Length::default()], coil.system);
        let resolved = ChannelLoop {
            position,
            steel_below,
            unit: self.unit.clone(),
            output: self.output,
            presence_time,
            on_loop_failure: self.on_loop_failure,
            ..ChannelLoop::new(label.to_owned(), role, coil, lead_in?, lane)
        };
        Some((resolved, SentLane { width, middle }))
    }
}

/// A lane whose width was not sent is assumed.
fn resolve_lanes(loops: &mut [ChannelLoop], sent: &[SentLane], diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let loops_at = body.field("loops");
    let lanes: Vec<_> = loops.iter().zip(sent).map(|(one, sent)| lane_of(one, loops, *sent)).collect();
    for (index, (one, lane)) in loops.iter_mut().zip(lanes).enumerate() {
        one.lane = lane;
        if sent[index].width.is_some() {
            continue;
        }
        let at = loops_at.item(index);
        diagnostics.add_assumption(
            &at.field("lane_width"),
            format_length_input(one.lane.width, one.coil.system),
            Statement::new("compatibility-usual-lane-width"),
            &[Source::CommonPractice],
        );
    }
}

impl DetectorCompatibilityRequest {
    /// Resolves the request; `None` when it has an error.
    pub fn resolve(&self, diagnostics: &mut Diagnostics) -> Option<ResolvedDetectorCompatibility> {
        let (loops, sent_lanes) = self.resolve_loops(diagnostics);
        let resolved = self.resolve_for(loops, diagnostics)?;
        Some(ResolvedDetectorCompatibility { sent_lanes: Some(sent_lanes), ..resolved })
    }

    fn resolve_loops(&self, diagnostics: &mut Diagnostics) -> (Vec<ChannelLoop>, Vec<SentLane>) {
        let body = FieldPath::BODY;
        let loops_at = body.field("loops");
        let (mut loops, mut widths) = (Vec::new(), Vec::new());
        let sent = self.loops.iter().map(|connected| connected.label.as_deref());
        let labels = resolve_labels(sent, &loops_at, &Statement::new("errors-label-twice-hint"), diagnostics);
        for (index, connected) in self.loops.iter().enumerate() {
            let at = loops_at.item(index);
            let is_shared = self.wiring.is_some_and(|wiring| wiring != Wiring::Separate);
            diagnostics.mark_unneeded(&at, &[("unit", connected.unit.is_some() && is_shared)]);
            if let Some((resolved, width)) = connected.resolve(&labels[index], &at, diagnostics) {
                loops.push(resolved);
                widths.push(width);
            }
        }
        if loops.len() == self.loops.len() {
            resolve_lanes(&mut loops, &widths, diagnostics);
        }
        (loops, widths)
    }

    /// Resolves everything but the loops, which a layout may have decided; `None` when it has an error.
    pub fn resolve_for(
        &self,
        loops: Vec<ChannelLoop>,
        diagnostics: &mut Diagnostics,
    ) -> Option<ResolvedDetectorCompatibility> {
        let body = FieldPath::BODY;
        let wiring = diagnostics.value_or_default(
            &body.field("wiring"),
            self.wiring,
            (Wiring::Separate, Wiring::Separate.code()),
            Statement::new("compatibility-usual-wiring"),
            Source::CommonPractice,
        );
        let detector = Detector::resolve(self.detector.as_ref(), &body.field("detector"), diagnostics);
        let vehicles = resolve_vehicles(self.vehicles.as_deref(), &body.field("vehicles"), diagnostics);
        let mut detector = detector?;
        if detector.threshold_percent.is_none() && detector.threshold_steps_percent.is_empty() {
            let steps = USUAL_STEPS_PERCENT.map(|step| step.to_string()).join(", ");
            let reason = Statement::new("compatibility-usual-steps");
            let sources = [Source::NemaSensitivity, Source::FromMemory];
            diagnostics.add_assumption(
                &body.field("detector").field("threshold_steps_percent"),
                steps,
                reason,
                &sources,
            );
            detector.threshold_steps_percent = USUAL_STEPS_PERCENT.to_vec();
        }
        Some(ResolvedDetectorCompatibility {
            loops,
            wiring,
            detector,
            vehicles,
            sent_lanes: None,
            budget: diagnostics.budget().clone(),
        })
    }
}

impl ResolvedDetectorCompatibility {
    /// The echo of the request.
    pub fn echo(&self) -> DetectorCompatibilityInputs {
        DetectorCompatibilityInputs {
            loops: self
                .loops
                .iter()
                .map(|resolved| ConnectedLoopEcho {
                    label: resolved.label.clone(),
                    role: resolved.role,
                    r#loop: resolved.coil.clone(),
                    lead_in: resolved.lead_in.clone(),
                    lane_width: resolved.lane.width.into(),
                    steel_below: resolved.steel_below.map(Into::into),
                    unit: resolved.unit.clone(),
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
