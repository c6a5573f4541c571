//! What [`super`] answers.

use serde::Serialize;
use utoipa::ToSchema;

use crate::calculation::input::{DetectorEcho, ResolvedLeadIn, ResolvedLoop};
use crate::calculation::layout::LoopMark;
use crate::calculation::report::{Assumed, Basis, Caution, Finding, Message, has_messages};
use crate::practice::detectors::{FailureBehaviour, OutputMode, Wiring};
use crate::practice::roles::Role;
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use crate::quantity::output::{DetailLength, DurationValue, PlanLength};

/// Whether a detector unit tunes to loops, and how to set it.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct DetectorCompatibilityReport {
    /// The worst of all checks, a `stop` among the findings and disturbing neighbours included: `suitable`, `marginal` or
    /// `unsuitable`.
    pub verdict: &'static str,
    /// The checks of each channel, in order.
    pub checks: Vec<Check>,
    /// Every vehicle at every sensitivity step.
    pub sensitivities: Vec<Sensitivity>,
    /// Pairs of loops on different channels, and what to do about their coupling.
    pub neighbours: Vec<Neighbours>,
    /// How to set each channel.
    pub settings: Vec<ChannelSettings>,
    /// What would turn each check that is not `suitable`: whole changes, each computed and judged as the request would be, the smallest
    /// first, none that leaves a check or a finding worse. Two changes together where no single one makes a channel suitable.
    pub remedies: Vec<Remedy>,
    /// What was understood of the request.
    pub inputs: DetectorCompatibilityInputs,
    /// Statements about the job, the gravest first.
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
    DetectorCompatibilityReport: checks, neighbours, settings, remedies, findings, assumed, cautions, basis;
    Check: message;
    Neighbours: actions, message;
    NeighbourAction: message;
    ChannelSettings: frequency_setting, failure_consequence;
    Remedy: changes, from, to, message;
    RemedyChange: from, to;
}

/// One figure against one limit.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct Check {
    /// The channel: the label of its loop, or of all joined by ` + `.
    pub channel: String,
    /// What is checked: `inductance`, `quality_factor`, `dc_quality_factor`, `dc_resistance`, `lead_in_share`, `frequency` or
    /// `vehicle`.
    pub check: &'static str,
    /// The vehicle, for a check of `vehicle`; absent for others.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>)]
    pub vehicle: Option<VehicleClass>,
    /// `suitable`, `marginal` or `unsuitable`.
    pub verdict: &'static str,
    /// The figure, 3 decimals.
    pub value: f64,
    /// The limit that it is nearest to, 3 decimals.
    pub limit: f64,
    /// How far the figure, or the near end of its as-built band, lies inside the limit; negative is outside. 3 decimals.
    pub margin: f64,
    /// The unit of the three: `uH`, `ohm`, `percent`, `kHz` or `ratio`.
    pub unit: &'static str,
    /// What that means, in a sentence.
    #[schema(value_type = String)]
    pub message: Message,
    /// Where the limit comes from.
    #[schema(value_type = Vec<String>)]
    pub source_ids: Vec<Source>,
}

/// One vehicle over one loop of a channel, at each step.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct Sensitivity {
    /// The channel.
    pub channel: String,
    /// The loop that the vehicle is over.
    pub r#loop: String,
    /// The vehicle.
    #[schema(value_type = String)]
    pub vehicle: VehicleClass,
    /// The change at the terminals at its hardest place, percent, 3 decimals: over the gaps of a row, and hard against either edge of the
    /// lane for a loop that holds a gate.
    pub change_percent: f64,
    /// The steps, coarsest first.
    pub steps: Vec<SensitivityStep>,
}

/// A vehicle at one sensitivity step.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct SensitivityStep {
    /// The change that the step switches at, percent, 3 decimals.
    pub threshold_percent: f64,
    /// `suitable` from twice the threshold on, `marginal` from the threshold on, else `unsuitable`.
    pub verdict: &'static str,
}

/// Two loops on different channels.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct Neighbours {
    /// The labels of the two.
    pub between: Vec<String>,
    /// Their marks in the plan that they belong to; absent elsewhere.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(value_type = Vec<String>)]
    pub marks: Vec<LoopMark>,
    /// Their coupling coefficient, percent, 3 decimals.
    pub coupling_percent: f64,
    /// The frequencies that they would run at, kHz, 3 decimals; empty unless the unit's tank capacitance is known.
    pub frequencies_khz: Vec<f64>,
    /// How far apart they would run on alike channels at the same setting, percent of the lower, 3 decimals.
    pub frequency_separation_percent: f64,
    /// Whether one unit scans the two in turn, so that they do not disturb each other.
    pub scanned_together: bool,
    /// What to do, the easiest first; empty where nothing needs to be done, and for loops that lie at one place.
    pub actions: Vec<NeighbourAction>,
    /// What it comes to, in a sentence.
    #[schema(value_type = String)]
    pub message: Message,
}

/// Something to do about two neighbours.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct NeighbourAction {
    /// `frequency_setting`, `scanning_unit`, `turn_count` or `distance`.
    pub action: &'static str,
    /// How, with the figure that it gives.
    #[schema(value_type = String)]
    pub message: Message,
}

/// How to set a channel.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct ChannelSettings {
    /// The channel.
    pub channel: String,
    /// The marks of its loops in the plan that it belongs to; absent elsewhere.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(value_type = Vec<String>)]
    pub marks: Vec<LoopMark>,
    /// The sensitivity step that switches at this change, percent, 3 decimals.
    pub threshold_percent: f64,
    /// The frequency that it would run at, kHz, 3 decimals; absent unless the unit's tank capacitance is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub frequency_khz: Option<f64>,
    /// The frequency setting to choose, in words.
    #[schema(value_type = String)]
    pub frequency_setting: Message,
    /// How to set the output: safe for what the loops are for, whatever was sent.
    pub to_set: OutputSettings,
    /// What was sent and is not what to set; absent where nothing else was sent than `to_set`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub as_sent: Option<SentSettings>,
    /// The `output` of `to_set`.
    #[schema(value_type = String)]
    pub output: OutputMode,
    /// The `presence_time` of `to_set`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub presence_time: Option<DurationValue>,
    /// The `on_loop_failure` of `to_set`.
    #[schema(value_type = String)]
    pub on_loop_failure: FailureBehaviour,
    /// What the gate does when the loop fails, with the behaviour of `to_set`.
    #[schema(value_type = String)]
    pub failure_consequence: Message,
    /// The input of the operator that it drives: `open`, `hold_or_reverse`, `hold_while_still` (watched only while the leaves stand),
    /// `close` or `presence`.
    pub operator_input: &'static str,
}

/// The settings of an output.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct OutputSettings {
    /// `presence` or `pulse`.
    #[schema(value_type = String)]
    pub output: OutputMode,
    /// After how long it lets go of a vehicle that stays; absent for never.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub presence_time: Option<DurationValue>,
    /// `detect` or `no_detect`.
    #[schema(value_type = String)]
    pub on_loop_failure: FailureBehaviour,
}

/// Settings that were sent and are not what to set.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct SentSettings {
    /// `presence` or `pulse`; absent where nothing else was sent than is to be set.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>)]
    pub output: Option<OutputMode>,
    /// After how long it was to let go of a vehicle that stays; absent where nothing else was sent than is to be set.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub presence_time: Option<DurationValue>,
    /// `detect` or `no_detect`; absent where nothing else was sent than is to be set.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>)]
    pub on_loop_failure: Option<FailureBehaviour>,
}

/// A whole change that turns a check.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct Remedy {
    /// The channel.
    pub channel: String,
    /// The check that it turns to `suitable`.
    pub check: &'static str,
    /// All that is to be changed, and nothing else.
    pub changes: Vec<RemedyChange>,
    /// Whether all checks of the channel are then `suitable`, its loops let go of no vehicle and the unit tunes to it; else only the check
    /// is.
    pub cures_channel: bool,
    /// What to change first: the `change` of the first of `changes`.
    pub change: &'static str,
    /// From what: the `from` of the first of `changes`.
    #[schema(value_type = String)]
    pub from: Message,
    /// To what: the `to` of the first of `changes`.
    #[schema(value_type = String)]
    pub to: Message,
    /// The figure of the check after all changes, 3 decimals, in the unit of the check.
    pub value: f64,
    /// What to do, in a sentence.
    #[schema(value_type = String)]
    pub message: Message,
}

/// One thing to change.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct RemedyChange {
    /// The label of the loop; absent for the wiring, which is that of all.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub r#loop: Option<String>,
    /// What to change: `turns`, `wiring`, `lead_in_length`, `lead_in_gauge` or `along_travel`.
    pub change: &'static str,
    /// From what.
    #[schema(value_type = String)]
    pub from: Message,
    /// To what.
    #[schema(value_type = String)]
    pub to: Message,
    /// The same as the request takes it: `5` turns (there a number), `18 ft`, `12 AWG`, `series`.
    pub set: String,
}

/// What was understood of a detector-compatibility request.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct DetectorCompatibilityInputs {
    /// The loops.
    pub loops: Vec<ConnectedLoopEcho>,
    /// How they come to the unit.
    #[schema(value_type = String)]
    pub wiring: Wiring,
    /// The unit.
    pub detector: DetectorEcho,
    /// The vehicles that must be seen.
    #[schema(value_type = Vec<String>)]
    pub vehicles: Vec<VehicleClass>,
}

/// A loop as it was understood.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct ConnectedLoopEcho {
    /// The caller's name for it.
    pub label: String,
    /// What it is for.
    #[schema(value_type = String)]
    pub role: Role,
    /// The loop.
    pub r#loop: ResolvedLoop,
    /// The lead-in.
    pub lead_in: ResolvedLeadIn,
    /// The width of the lane that it lies across.
    pub lane_width: PlanLength,
    /// From its lowest turn down to steel; absent when none was given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub steel_below: Option<DetailLength>,
    /// The unit that it comes to; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit: Option<String>,
    /// Where its middle lies along travel; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub along: Option<PlanLength>,
    /// Where its middle lies across the lane; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub across: Option<PlanLength>,
}
