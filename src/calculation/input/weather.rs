//! The weather: hour by hour as the caller has it, or a place whose forecast the service fetches.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use validator::Validate;

use super::{HourlyPrecipitation, WeatherTemperature};

/// The weather of the work: `conditions`, or `location`.
#[derive(Clone, Debug, Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Weather {
    /// The weather hour by hour, in order of time, at most 14 days. Each row holds until the next; the last for one hour.
    #[validate(nested, length(max = 336))]
    #[schema(min_items = 1, max_items = 336)]
    pub conditions: Option<Vec<HourlyConditions>>,
    /// A place whose hourly forecast is fetched instead; only where the operator has switched that on.
    #[validate(nested)]
    pub location: Option<Location>,
}

/// The weather of one hour.
#[derive(Clone, Debug, Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct HourlyConditions {
    /// The start of the hour, RFC 3339 with offset: `2026-01-20T07:00:00-05:00`.
    #[validate(length(min = 1, max = 40))]
    #[schema(min_length = 1, max_length = 40, format = DateTime)]
    pub time: String,
    /// The air.
    pub air: WeatherTemperature,
    /// The relative humidity over water, percent. Send this or `dew_point`.
    #[validate(range(min = 0.5, max = 100.0))]
    #[schema(minimum = 0.5, maximum = 100)]
    pub relative_humidity_percent: Option<f64>,
    /// The dew point over water. Send this or `relative_humidity_percent`.
    pub dew_point: Option<WeatherTemperature>,
    /// The pavement, where it was measured.
    pub surface: Option<WeatherTemperature>,
    /// How likely rain or snow is in this hour, percent.
    #[validate(range(min = 0.0, max = 100.0))]
    #[schema(minimum = 0, maximum = 100)]
    pub precipitation_probability_percent: Option<f64>,
    /// How much falls in this hour.
    pub precipitation: Option<HourlyPrecipitation>,
}

/// A place on earth.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Location {
    /// Degrees north.
    #[validate(range(min = -90.0, max = 90.0))]
    #[schema(minimum = -90, maximum = 90)]
    pub latitude: f64,
    /// Degrees east.
    #[validate(range(min = -180.0, max = 180.0))]
    #[schema(minimum = -180, maximum = 180)]
    pub longitude: f64,
}
