//! What is asked of [`super`], as sent and in typed quantities.

use serde::{Deserialize, Serialize};
use uom::si::f64::Length;
use uom::si::length::millimeter;
use utoipa::ToSchema;
use validator::Validate;

use super::report::{ConnectedLoopEcho, DetectorCompatibilityInputs};
use crate::calculation::input::{
    Coordinate, Detector, LaneWidth, LeadIn, Loop, PresenceTime, ResolvedDetector, ResolvedLoop, resolve_vehicles,
};
use crate::calculation::layout::{ChannelLoop, DetectorChannel, Lane, join_channels};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::practice::detectors::{FailureBehaviour, OutputMode, USUAL_STEPS_PERCENT, Wiring};
use crate::practice::layout::{EDGE_SETBACK, MAX_SIDE_BY_SIDE, NEIGHBOUR_GAP};
use crate::practice::roles::Role;
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use crate::quantity::format::format_length_input;
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
    /// The width of the lane that it lies across, for a vehicle hard against the edge of it. Default: the loop, or the row of loops of its
    /// role that lie side by side, and 2 ft / 0.6 m on each side.
    pub lane_width: Option<LaneWidth>,
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

/// Where across the loops of one row lie, left to right: those of the role that are alike and lie side by side, each no farther from the
/// next than a neighbour's gap, and all within the lane where its width was sent.
fn row_of(one: &ChannelLoop, loops: &[ChannelLoop], width_is_sent: bool) -> Vec<Length> {
    let Some((_, own)) = one.position else { return Vec::new() };
    let beside = loops.iter().filter(|other| is_beside(one, other)).filter_map(|other| other.position);
    let mut across: Vec<_> = beside.map(|(_, across)| across).collect();
    across.sort_by(|a, b| a.value.total_cmp(&b.value));
    let reach = one.coil.across_lane + NEIGHBOUR_GAP.in_system(one.coil.system);
    let is_next = |pair: &[Length]| pair[1] - pair[0] <= reach;
    let own_at = across.iter().position(|other| *other == own).unwrap_or_default();
    let before = across[..=own_at].windows(2).rev().take_while(|pair| is_next(pair)).count();
    let behind = across[own_at..].windows(2).take_while(|pair| is_next(pair)).count();
    let row = across[own_at - before..=own_at + behind].to_vec();
    let span = row[row.len() - 1] - row[0] + one.coil.across_lane;
    if width_is_sent && span > one.lane.width { vec![own] } else { row }
}

/// Whether two loops of one role are alike and lie side by side, or are the same.
fn is_beside(one: &ChannelLoop, other: &ChannelLoop) -> bool {
    let near = |a: Length, b: Length| (a - b).abs() <= Length::new::<millimeter>(1.0);
    let are_alike = |a: &ResolvedLoop, b: &ResolvedLoop| {
        a.turns == b.turns && near(a.along_travel, b.along_travel) && near(a.across_lane, b.across_lane)
    };
    let places = one.position.zip(other.position);
    one.role == other.role
        && are_alike(&one.coil, &other.coil)
        && places.is_some_and(|((ours, _), (theirs, _))| near(ours, theirs))
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
        let lane_width = diagnostics.parse_optional(&at.field("lane_width"), self.lane_width.as_ref());
        let coil = coil?;
        let lane = Lane::of(self.role, lane_width.unwrap_or_default(), vec![Length::default()], coil.system);
        Some(ChannelLoop {
            position,
            output: self.output,
            presence_time,
            on_loop_failure: self.on_loop_failure,
            ..ChannelLoop::new(self.label.clone(), self.role, coil, lead_in?, lane)
        })
    }
}

impl DetectorCompatibilityRequest {
    /// Resolves the request; `None` when it has an error.
    pub fn resolve(&self, diagnostics: &mut Diagnostics) -> Option<ResolvedDetectorCompatibility> {
        let loops = self.resolve_loops(diagnostics);
        self.resolve_for(loops, diagnostics)
    }

    fn resolve_loops(&self, diagnostics: &mut Diagnostics) -> Vec<ChannelLoop> {
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
        if loops.len() == self.loops.len() {
            self.resolve_lanes(&mut loops, diagnostics);
        }
        loops
    }

    /// Loops of one role that are alike and lie side by side form a row across one lane. A width that was not sent is assumed.
    fn resolve_lanes(&self, loops: &mut [ChannelLoop], diagnostics: &mut Diagnostics) {
        let body = FieldPath::BODY;
        let loops_at = body.field("loops");
        for index in 0..loops.len() {
            let (one, is_sent) = (&loops[index], self.loops[index].lane_width.is_some());
            let (row, system) = (row_of(one, loops, is_sent), one.coil.system);
            let (first, last) = (row.first().copied().unwrap_or_default(), row.last().copied().unwrap_or_default());
            let usual = last - first + one.coil.across_lane + 2.0 * EDGE_SETBACK.in_system(system);
            let lane = &mut loops[index].lane;
            if row.len() > 1 {
                lane.centres = row.iter().map(|across| *across - (first + last) / 2.0).collect();
            }
            if is_sent {
                continue;
            }
            lane.width = usual;
            let at = loops_at.item(index);
            diagnostics.add_assumption(
                &at.field("lane_width"),
                format_length_input(usual, system),
                Statement::new("compatibility-usual-lane-width"),
                &[Source::CommonPractice],
            );
        }
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
        Some(ResolvedDetectorCompatibility { loops, wiring, detector, vehicles })
    }
}

impl ResolvedDetectorCompatibility {
    /// One channel per loop, or one for all.
    pub fn channels(&self) -> Vec<DetectorChannel> {
        join_channels(self.loops.clone(), self.wiring)
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
                    r#loop: resolved.coil.clone(),
                    lead_in: resolved.lead_in.clone(),
                    lane_width: resolved.lane.width.into(),
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
