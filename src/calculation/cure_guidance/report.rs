//! What [`super`] answers.

use serde::Serialize;
use utoipa::ToSchema;

use super::echo::CureGuidanceInputs;
use crate::calculation::input::HourlyConditions;
use crate::calculation::report::{Assumed, Basis, Caution, Finding, Message, has_messages};
use crate::practice::sealants::SealantKind;
use crate::practice::sealing::{CureMilestone, CureVerdict};
use crate::practice::sources::Source;
use crate::quantity::QuantityField;
use crate::quantity::output::{DetailLength, DurationValue, TemperatureDifferenceValue, TemperatureValue};

/// Whether to seal at the start that was asked for, and when traffic may return.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct CureGuidanceReport {
    /// `go`, `go_with_care`, `wait` (not at this start; the forecast has hours that would do) or `do_not_apply` (it has none).
    #[schema(value_type = String)]
    pub verdict: CureVerdict,
    /// Why, the gravest first; each is among `findings`, too.
    pub reasons: Vec<CureReason>,
    /// Spans of possible starts, from the asked one on: whoever begins at any time from `start` to `end` passes every stop that the
    /// verdict knows, and is surely safe from rain before the weather ends.
    pub windows: Vec<CureWindow>,
    /// The windows that there would be in a slot that somebody has dried and looked at; only where `surface_condition` stops the work.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub windows_once_dry: Vec<CureWindow>,
    /// The start that `milestones` and `hourly` count for: the asked one where the verdict allows it, else that of the first window.
    /// Absent where there is none, and then there are no milestones.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(format = DateTime)]
    pub milestones_from: Option<String>,
    /// When the last foot is sealed after that start: `inputs.work_duration` later. Every milestone counts from here.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(format = DateTime)]
    pub last_foot_sealed: Option<String>,
    /// What the sealant comes to, in this order; empty without `milestones_from`.
    pub milestones: Vec<CureMilestoneReached>,
    /// The hours before the start, at most 12, in order: the rain that was, and what the slab remembers.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub hours_before: Vec<CureHour>,
    /// The weather hour by hour, from the start on.
    pub hourly: Vec<CureHour>,
    /// What the weather from the start to its end is worth, in hours of the reference climate. Absent for `hot_applied`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub equivalent_hours: Option<CureEquivalentHours>,
    /// Every kind of sealant on the same weather, side by side.
    pub alternatives: Vec<CureAlternative>,
    /// How long the sealant still keeps; absent without `made_on`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shelf: Option<CureShelf>,
    /// How long mixed or opened sealant can be worked at `milestones_from`, else at the start; absent where the sheet gives no pot life.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pot_life: Option<CureTimes>,
    /// How to treat sealant and slot in the weather of `milestones_from`, else of the start.
    pub handling: Vec<CureAdvice>,
    /// The weather that was used, as a request holds it in `weather.conditions`: sent back, it gives the same answer.
    pub conditions_used: Vec<CureConditions>,
    /// What was understood.
    pub inputs: CureGuidanceInputs,
    /// Statements about the job, the gravest first.
    pub findings: Vec<Finding>,
    /// Defaults that stood in for absent fields.
    pub assumed: Vec<Assumed>,
    /// Fields that were sent and not needed, as JSON Pointers.
    pub unused: Vec<String>,
    /// What can hurt someone on this job.
    pub cautions: Vec<Caution>,
    /// What the figures rest on.
    pub basis: Basis,
}

has_messages! {
    CureGuidanceReport: reasons, windows, windows_once_dry, alternatives, handling, findings, assumed, cautions, basis;
    CureWindow: ends_because;
    CureReason: message;
    CureAdvice: message;
    CureAlternative: reasons;
}

/// A reason of a verdict.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct CureReason {
    /// The statement, for a program; a `code` of `reference/findings`.
    pub code: &'static str,
    /// How much it weighs: `note`, `warning` or `stop`.
    #[schema(value_type = String)]
    pub level: crate::practice::finding_codes::Level,
    /// The statement, for a person.
    #[schema(value_type = String)]
    pub message: Message,
}

/// A span of starts that would do.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct CureWindow {
    /// The first start, RFC 3339 on the clock of the asked one.
    #[schema(format = DateTime)]
    pub start: String,
    /// The last start, to the minute.
    #[schema(format = DateTime)]
    pub end: String,
    /// From the first start to the last.
    pub duration: DurationValue,
    /// Whether the sealant can be worked for as long as it takes to empty a cartridge, and traffic surely returns in time; prefer such
    /// windows.
    pub preferred: bool,
    /// Why there is no later start: the stop that meets it, the end of the weather, or what makes it less preferred than the next.
    pub ends_because: CureReason,
}

/// When a milestone is reached.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct CureMilestoneReached {
    /// A `code` of `reference/cure-milestones`.
    #[schema(value_type = String)]
    pub milestone: CureMilestone,
    /// At the earliest, RFC 3339 on the clock of the start, to the minute. Absent when it lies beyond the forecast.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(format = DateTime)]
    pub earliest: Option<String>,
    /// At the latest. Absent when it lies beyond the forecast: nothing is guessed there.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(format = DateTime)]
    pub latest: Option<String>,
    /// How far it has surely come by the end of the forecast, percent, 1 decimal; only where `latest` is absent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub progress_low_percent: Option<f64>,
    /// How far it may have come by then, percent, 1 decimal.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub progress_high_percent: Option<f64>,
    /// How deep one-part sealant has surely cured by then.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub depth_low: Option<DetailLength>,
    /// How deep it may have cured by then.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub depth_high: Option<DetailLength>,
}

/// An hour of the weather.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct CureHour {
    /// Its beginning, RFC 3339 on the clock of the start.
    #[schema(format = DateTime)]
    pub time: String,
    /// The air.
    pub air: TemperatureValue,
    /// The slab, measured or assumed.
    pub surface: TemperatureValue,
    /// Whether nobody measured the slab.
    pub surface_is_assumed: bool,
    /// The dew point over water.
    pub dew_point: TemperatureValue,
    /// The frost point over ice; absent from 0 °C up.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub frost_point: Option<TemperatureValue>,
    /// How far the slab lies above the dew point.
    pub dew_point_margin: TemperatureDifferenceValue,
    /// Whether rain or snow is `unlikely`, `possible` (it asks for care) or `likely` (it stops the work before a skin has formed). Absent
    /// where the weather does not say.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rain: Option<&'static str>,
    /// Whether the work may begin with this hour, as in `windows`; never for an hour before the start.
    pub can_apply: bool,
    /// The least rate of cure against 23 °C and 50 %, 4 decimals. Absent for `hot_applied`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rate_low: Option<f64>,
    /// The greatest rate.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rate_high: Option<f64>,
    /// How far the full cure has surely come at the end of the hour, percent, 1 decimal: for one part the depth of the front as a share
    /// of the cover. Absent without `milestones_from`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub progress_low_percent: Option<f64>,
    /// How far it may have come.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub progress_high_percent: Option<f64>,
}

/// Hours at 23 °C and 50 % that cure as much as the weather from the start to its end.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct CureEquivalentHours {
    /// By the pressure of water vapour alone: the earliest of one part. 3 decimals.
    pub vapour_pressure: f64,
    /// By temperature at the low activation energy. 3 decimals.
    pub arrhenius_low: f64,
    /// By temperature at the high activation energy. 3 decimals.
    pub arrhenius_high: f64,
    /// By vapour pressure, and slowed by cold at the high activation energy: the latest of one part. 3 decimals.
    pub vapour_pressure_and_arrhenius: f64,
}

/// A kind of sealant on the same weather. Only the chosen one has a data sheet.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct CureAlternative {
    /// A `code` of `reference/sealant-kinds`.
    #[schema(value_type = String)]
    pub kind: SealantKind,
    /// Whether it is the one that was asked about.
    pub is_chosen: bool,
    /// The verdict at the start, as for the chosen one.
    #[schema(value_type = String)]
    pub verdict: CureVerdict,
    /// Why, the gravest first.
    pub reasons: Vec<CureReason>,
    /// The start that its times of traffic count for: the asked one where its verdict allows it, else that of its first window.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(format = DateTime)]
    pub milestones_from: Option<String>,
    /// Traffic at the earliest. Absent beyond the forecast, and where no start would do.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(format = DateTime)]
    pub open_to_traffic_earliest: Option<String>,
    /// Traffic at the latest.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(format = DateTime)]
    pub open_to_traffic_latest: Option<String>,
    /// The earliest start in the forecast that passes every stop, and surely meets `needed_open_by` where that was sent. Absent when
    /// there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(format = DateTime)]
    pub earliest_start: Option<String>,
}

/// How long a sealant keeps.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct CureShelf {
    /// The day on which its shelf life ends.
    #[schema(format = Date)]
    pub ends_on: String,
    /// Whole days from the start until then; negative when it is past.
    pub days_left: i64,
}

/// A band of times.
#[derive(Clone, Copy, Debug, Serialize, ToSchema)]
pub struct CureTimes {
    /// At least.
    pub least: DurationValue,
    /// At most.
    pub most: DurationValue,
}

/// How to treat sealant and slot.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct CureAdvice {
    /// What it is about, for a program.
    pub code: &'static str,
    /// What to do.
    #[schema(value_type = String)]
    pub message: Message,
    /// Where it comes from.
    #[schema(value_type = Vec<String>)]
    pub source_ids: Vec<Source>,
}

/// An hour of weather as it was sent.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct CureConditions {
    /// The start of the hour.
    #[schema(format = DateTime)]
    pub time: String,
    /// The air.
    pub air: String,
    /// The relative humidity over water, percent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub relative_humidity_percent: Option<f64>,
    /// The dew point over water.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dew_point: Option<String>,
    /// The pavement.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub surface: Option<String>,
    /// How likely rain or snow is, percent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub precipitation_probability_percent: Option<f64>,
    /// How much falls.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub precipitation: Option<String>,
}

impl From<&HourlyConditions> for CureConditions {
    fn from(sent: &HourlyConditions) -> Self {
        Self {
            time: sent.time.clone(),
            air: sent.air.text().to_owned(),
            relative_humidity_percent: sent.relative_humidity_percent,
            dew_point: sent.dew_point.as_ref().map(|text| text.text().to_owned()),
            surface: sent.surface.as_ref().map(|text| text.text().to_owned()),
            precipitation_probability_percent: sent.precipitation_probability_percent,
            precipitation: sent.precipitation.as_ref().map(|text| text.text().to_owned()),
        }
    }
}
