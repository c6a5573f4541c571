//! The service's documents, and the rows that they hold.
//!
//! Two steps, from memory: `GET {base}/points/{latitude},{longitude}` answers a `GeoJSON` feature whose
//! `properties.forecastHourly` is the address of the second, a feature whose `properties.periods[]` are hours. Fields that are
//! not needed are ignored. A needed field that is not as expected makes the whole document malformed, because a forecast with a
//! wrong row is worse than none.

use jiff::{SignedDuration, Timestamp};
use reqwest::Url;
use serde::Deserialize;
use serde::de::DeserializeOwned;
use serde_json::Value;

use super::ForecastError;
use super::units;
use crate::calculation::input::{HourlyConditions, WeatherTemperature};

/// The most rows that a request takes: 14 days.
pub const MAX_ROWS: usize = 336;

/// The longest time from the first row to the last: 14 days with the hour of the last row.
const MAX_SPAN: SignedDuration = SignedDuration::from_hours(14 * 24 - 1);

/// The longest time between two rows. A row applies until the next one, so a few hours without figures can be bridged, but not
/// a change of the weather. Choice made here.
const MAX_GAP: SignedDuration = SignedDuration::from_hours(3);

/// The lowest humidity that a request accepts, percent.
const MIN_HUMIDITY: f64 = 0.5;

#[derive(Deserialize)]
struct GeoJsonFeature<P> {
    properties: P,
}

#[derive(Deserialize)]
struct PointProperties {
    #[serde(rename = "forecastHourly")]
    forecast_hourly: Value,
}

#[derive(Deserialize)]
struct HourlyProperties {
    periods: Vec<ForecastPeriod>,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct ForecastPeriod {
    start_time: String,
    temperature: Option<PeriodTemperature>,
    temperature_unit: Option<String>,
    dewpoint: Option<QuantitativeValue>,
    relative_humidity: Option<QuantitativeValue>,
    probability_of_precipitation: Option<QuantitativeValue>,
}

/// A temperature: a number whose unit is in `temperatureUnit`, or a value with its own unit.
#[derive(Deserialize)]
#[serde(untagged)]
enum PeriodTemperature {
    Number(f64),
    QuantitativeValue(QuantitativeValue),
}

#[derive(Deserialize)]
struct QuantitativeValue {
    #[serde(rename = "unitCode")]
    unit_code: String,
    value: Option<f64>,
}

/// Parses the document of the first step for the address of the second, which must have the same origin as `base`; `None` where the
/// place has no hourly forecast.
///
/// # Errors
/// [`ForecastError::Malformed`] for any other document and for an address of another origin.
pub fn parse_hourly_url(body: &[u8], base: &Url) -> Result<Option<Url>, ForecastError> {
    let address = match parse_properties::<PointProperties>(body)?.forecast_hourly {
        Value::Null => return Ok(None),
        Value::String(address) => address,
        _ => return Err(malformed("the second step is no text")),
    };
    let address = Url::parse(&address).map_err(|_| malformed("the second step is no address"))?;
    let stays = address.origin() == base.origin() && address.username().is_empty() && address.password().is_none();
    if stays { Ok(Some(address)) } else { Err(malformed("the second step leads elsewhere")) }
}

/// Parses an hourly forecast into at most [`MAX_ROWS`] rows.
///
/// # Errors
/// [`ForecastError::Malformed`] for any other document.
pub fn parse_hourly(body: &[u8]) -> Result<Vec<HourlyConditions>, ForecastError> {
    let mut rows = Vec::new();
    let (mut first, mut last): (Option<Timestamp>, Option<Timestamp>) = (None, None);
    for period in parse_properties::<HourlyProperties>(body)?.periods {
        let start = parse_start(&period.start_time)?;
        let Some(row) = parse_row(period).map_err(ForecastError::Malformed)? else { continue };
        if let Some(last) = last {
            let gap = start.duration_since(last);
            if gap <= SignedDuration::ZERO {
                return Err(malformed("hours out of order"));
            }
            if gap > MAX_GAP {
                return Err(malformed("a gap of more than 3 h"));
            }
        }
        if rows.len() == MAX_ROWS || start.duration_since(*first.get_or_insert(start)) > MAX_SPAN {
            break;
        }
        last = Some(start);
        rows.push(row);
    }
    if rows.is_empty() { Err(malformed("no hour with temperature and humidity")) } else { Ok(rows) }
}

/// One hour in the form of a request, or `None` without temperature or humidity.
fn parse_row(period: ForecastPeriod) -> Result<Option<HourlyConditions>, String> {
    let Some(air) = parse_air(&period)? else { return Ok(None) };
    let measured = |measure: &Option<QuantitativeValue>| {
        measure.as_ref().and_then(|measure| Some((measure.value?, measure.unit_code.clone())))
    };
    let humidity = measured(&period.relative_humidity)
        .map(|(value, unit)| units::percent(value, &unit, MIN_HUMIDITY))
        .transpose()?;
    // A request accepts humidity or dew point, not both.
    let dew_point = match (humidity, measured(&period.dewpoint)) {
        (None, Some((value, unit))) => Some(units::temperature(value, &unit)?),
        (None, None) => return Ok(None),
        (Some(_), _) => None,
    };
    let precipitation_probability_percent = measured(&period.probability_of_precipitation)
        .map(|(value, unit)| units::percent(value, &unit, 0.0))
        .transpose()?;
    Ok(Some(HourlyConditions {
        time: period.start_time,
        air,
        relative_humidity_percent: humidity,
        dew_point,
        surface: None,
        precipitation_probability_percent,
        precipitation: None,
    }))
}

fn parse_air(period: &ForecastPeriod) -> Result<Option<WeatherTemperature>, String> {
    match &period.temperature {
        None | Some(PeriodTemperature::QuantitativeValue(QuantitativeValue { value: None, .. })) => Ok(None),
        Some(PeriodTemperature::QuantitativeValue(QuantitativeValue { value: Some(value), unit_code })) => {
            units::temperature(*value, unit_code).map(Some)
        }
        Some(PeriodTemperature::Number(value)) => {
            let unit = period.temperature_unit.as_deref().ok_or("a temperature without unit")?;
            units::temperature(*value, unit).map(Some)
        }
    }
}

/// The start of an hour, which must be plain RFC 3339 with an offset: the text is used in the request unchanged.
fn parse_start(text: &str) -> Result<Timestamp, ForecastError> {
    let is_plain = text.len() <= 40 && !text.contains('[');
    text.parse().ok().filter(|_| is_plain).ok_or_else(|| malformed("a start that is no RFC 3339 time"))
}

fn parse_properties<P: DeserializeOwned>(body: &[u8]) -> Result<P, ForecastError> {
    serde_json::from_slice::<GeoJsonFeature<P>>(body).map(|feature| feature.properties).map_err(|error| {
        // The library's text could repeat content of the document, so only the position is reported.
        let what = if error.is_data() { "another shape" } else { "not JSON" };
        ForecastError::Malformed(format!("{what}, at line {} column {}", error.line(), error.column()))
    })
}

fn malformed(what: &str) -> ForecastError {
    ForecastError::Malformed(what.to_owned())
}
