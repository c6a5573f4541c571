//! The service's documents, and the rows that they hold.
//!
//! Two steps, from memory: `GET {base}/points/{latitude},{longitude}` answers a `GeoJSON` feature whose
//! `properties.forecastHourly` is the address of the second, a feature whose `properties.periods[]` are hours. Fields that are
//! not needed are not looked at; what is needed and not as expected makes the whole document malformed, for a forecast with a
//! wrong row is worse than none.

use jiff::{SignedDuration, Timestamp};
use reqwest::Url;
use serde::Deserialize;
use serde::de::DeserializeOwned;
use serde_json::Value;

use super::Failure;
use super::units;
use crate::calculation::input::{HourlyConditions, WeatherTemperature};

/// The most rows that a request takes: 14 days.
pub const MAX_ROWS: usize = 336;

/// From the first row to the last at most, so that all of them, the last one's hour included, are 14 days.
const MAX_SPAN: SignedDuration = SignedDuration::from_hours(14 * 24 - 1);

/// The longest stretch between two rows. A row holds until the next, so an hour without figures may be bridged, but not the
/// turn of the weather. Choice made here.
const MAX_GAP: SignedDuration = SignedDuration::from_hours(3);

/// The least humidity that a request takes, percent.
const MIN_HUMIDITY: f64 = 0.5;

#[derive(Deserialize)]
struct Feature<P> {
    properties: P,
}

#[derive(Deserialize)]
struct PointProperties {
    #[serde(rename = "forecastHourly")]
    forecast_hourly: Value,
}

#[derive(Deserialize)]
struct HourlyProperties {
    periods: Vec<Period>,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct Period {
    start_time: String,
    temperature: Option<Reading>,
    temperature_unit: Option<String>,
    dewpoint: Option<Measure>,
    relative_humidity: Option<Measure>,
    probability_of_precipitation: Option<Measure>,
}

/// A temperature: a number whose unit stands beside it, or a measure.
#[derive(Deserialize)]
#[serde(untagged)]
enum Reading {
    Number(f64),
    Measure(Measure),
}

#[derive(Deserialize)]
struct Measure {
    #[serde(rename = "unitCode")]
    unit_code: String,
    value: Option<f64>,
}

/// The address of the second step, from the document of the first. It stays with the service that was asked.
///
/// # Errors
/// [`Failure::NotCovered`] where the place has no hourly forecast, [`Failure::Malformed`] for what is no such document or leads
/// elsewhere.
pub fn second_step(body: &[u8], base: &Url) -> Result<Url, Failure> {
    let address = match parsed::<PointProperties>(body)?.forecast_hourly {
        Value::Null => return Err(Failure::NotCovered),
        Value::String(address) => address,
        _ => return Err(malformed("the second step is no text")),
    };
    let address = Url::parse(&address).map_err(|_| malformed("the second step is no address"))?;
    let stays = address.origin() == base.origin() && address.username().is_empty() && address.password().is_none();
    if stays { Ok(address) } else { Err(malformed("the second step leads elsewhere")) }
}

/// The rows of an hourly forecast, at most [`MAX_ROWS`].
///
/// # Errors
/// [`Failure::Malformed`] for what is no such document.
pub fn rows(body: &[u8]) -> Result<Vec<HourlyConditions>, Failure> {
    let mut rows = Vec::new();
    let (mut first, mut last): (Option<Timestamp>, Option<Timestamp>) = (None, None);
    for period in parsed::<HourlyProperties>(body)?.periods {
        let start = start(&period.start_time)?;
        let Some(row) = row(period).map_err(Failure::Malformed)? else { continue };
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

/// One hour in the form of a request, or nothing where its temperature or humidity is not given.
fn row(period: Period) -> Result<Option<HourlyConditions>, String> {
    let Some(air) = air(&period)? else { return Ok(None) };
    let measured = |measure: &Option<Measure>| {
        measure.as_ref().and_then(|measure| Some((measure.value?, measure.unit_code.clone())))
    };
    let humidity = measured(&period.relative_humidity)
        .map(|(value, unit)| units::percent(value, &unit, MIN_HUMIDITY))
        .transpose()?;
    // Either says how damp the air is, and a request takes one of them.
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

fn air(period: &Period) -> Result<Option<WeatherTemperature>, String> {
    match &period.temperature {
        None | Some(Reading::Measure(Measure { value: None, .. })) => Ok(None),
        Some(Reading::Measure(Measure { value: Some(value), unit_code })) => {
            units::temperature(*value, unit_code).map(Some)
        }
        Some(Reading::Number(value)) => {
            let unit = period.temperature_unit.as_deref().ok_or("a temperature without unit")?;
            units::temperature(*value, unit).map(Some)
        }
    }
}

/// The start of an hour, which must be plain RFC 3339 with its offset: it goes into a request as it stands.
fn start(text: &str) -> Result<Timestamp, Failure> {
    let is_plain = text.len() <= 40 && !text.contains('[');
    text.parse().ok().filter(|_| is_plain).ok_or_else(|| malformed("a start that is no RFC 3339 time"))
}

fn parsed<P: DeserializeOwned>(body: &[u8]) -> Result<P, Failure> {
    serde_json::from_slice::<Feature<P>>(body).map(|feature| feature.properties).map_err(|error| {
        // The library's text could repeat what the document holds; where it failed says enough.
        let what = if error.is_data() { "another shape" } else { "not JSON" };
        Failure::Malformed(format!("{what}, at line {} column {}", error.line(), error.column()))
    })
}

fn malformed(what: &str) -> Failure {
    Failure::Malformed(what.to_owned())
}
