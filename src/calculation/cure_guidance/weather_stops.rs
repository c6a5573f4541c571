//! What in the weather stops the work at a time: at the start, and at every later hour for the windows.

use uom::si::f64::{TemperatureInterval, ThermodynamicTemperature, Time};
use uom::si::thermodynamic_temperature::degree_celsius;

use super::candidate::{Hardening, SealantCandidate};
use super::request::ResolvedCureGuidance;
use super::weather_series::{WeatherHour, WeatherSeries};
use crate::calculation::report::{FieldPath, Finding};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::sealing::{RAIN_STOPS_PERCENT, dew_point_margin, freezing};
use crate::quantity::UnitSystem;
use crate::quantity::format::{format_detail_length, format_temperature, format_temperature_difference};

/// What in the weather stops the work, with the index of its hour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WeatherStop {
    /// The slab is frozen.
    Frozen(usize),
    /// Air or slab is too cold.
    TooCold(usize),
    /// Air or slab is too hot.
    TooHot(usize),
    /// The slab is near the dew point.
    NearDewPoint(usize),
    /// Rain or snow before the sealant keeps it out.
    Rain(usize),
    /// The air falls too cold before a skin has formed.
    ColdBeforeSkin(usize),
}

/// Every stop of the weather for a sealant that is applied at a time, at most one of each kind.
pub fn find_stops(candidate: &SealantCandidate, at: Time, weather: &WeatherSeries) -> Vec<WeatherStop> {
    let hour = weather.hour_at(at);
    let minimum = candidate.sheet.minimum;
    let mut stops = Vec::new();
    if hour.surface <= freezing() {
        stops.push(WeatherStop::Frozen(hour.index));
    } else if hour.surface < minimum || hour.air < minimum {
        stops.push(WeatherStop::TooCold(hour.index));
    }
    let is_over = |maximum: ThermodynamicTemperature| hour.surface > maximum || hour.air > maximum;
    if candidate.sheet.maximum.is_some_and(is_over) {
        stops.push(WeatherStop::TooHot(hour.index));
    }
    if hour.dew_point_margin() < dew_point_margin() {
        stops.push(WeatherStop::NearDewPoint(hour.index));
    }
    let safe = candidate.safe_time(at, weather).unwrap_or_else(|| weather.end());
    let rain = weather.hours_between(at, safe).find(|hour| hour.is_rain_likely());
    stops.extend(rain.map(|hour| WeatherStop::Rain(hour.index)));
    // A sheet's own limit says nothing of what comes after; the usual one is "and rising". What only cools does not mind the cold.
    let cold_matters = match candidate.hardening {
        Hardening::Cures(_) => candidate.sheet.minimum_is_usual && hour.air >= minimum,
        Hardening::Cools(_) => false,
    };
    if cold_matters {
        let cold = weather.hours_between(at, safe).find(|hour| hour.air < minimum);
        stops.extend(cold.map(|hour| WeatherStop::ColdBeforeSkin(hour.index)));
    }
    stops
}

/// Whether nothing in the weather stops the work at a time, and the sealant is safe from rain before the weather ends.
pub fn passes(candidate: &SealantCandidate, at: Time, weather: &WeatherSeries) -> bool {
    candidate.safe_time(at, weather).is_some() && find_stops(candidate, at, weather).is_empty()
}

impl WeatherStop {
    /// The finding of a stop.
    pub fn finding(self, job: &ResolvedCureGuidance, candidate: &SealantCandidate) -> Finding {
        let (Self::Frozen(index)
        | Self::TooCold(index)
        | Self::TooHot(index)
        | Self::NearDewPoint(index)
        | Self::Rain(index)
        | Self::ColdBeforeSkin(index)) = self;
        let (hour, system) = (&job.weather.hours[index], job.weather.system);
        let row = |field| FieldPath::BODY.field("weather").field("conditions").item(index).field(field).pointer();
        let format = |temperature| format_temperature(temperature, system);
        // An hour that began before the start counts from the start.
        let when = job.weather.date_time(hour.from.max(job.weather.start)).format_for_sentence();
        let slab = if hour.surface_is_assumed {
            format!(
                "The slab is taken to be at {}, as cold as the air of the hours before left it",
                format(hour.surface)
            )
        } else {
            format!("The slab is at {}", format(hour.surface))
        };
        let measure = if hour.surface_is_assumed { " Measure the slab temperature before you decide." } else { "" };
        let minimum = format(candidate.sheet.minimum);
        let until = candidate.safe_event();
        let (code, about, message) = match self {
            Self::Frozen(_) => (
                FindingCode::SlabFrozen,
                row("surface"),
                format!(
                    "{slab}: frozen, and nothing bonds to it. Warm air does not make a warm slab. Wait until the slab itself is at {minimum} and rising.{measure}"
                ),
            ),
            Self::TooCold(_) if hour.surface < candidate.sheet.minimum => (
                FindingCode::BelowMinimumTemperature,
                row("surface"),
                format!(
                    "{slab}, below the {minimum} that this sealant asks for. Wait until slab and air are there and rising.{measure}"
                ),
            ),
            Self::TooCold(_) => (
                FindingCode::BelowMinimumTemperature,
                row("air"),
                format!(
                    "The air is at {}, below the {minimum} that this sealant asks for. Wait until slab and air are there and rising.",
                    format(hour.air)
                ),
            ),
            Self::TooHot(_) => {
                let (what, field, hottest) = if hour.air > hour.surface {
                    ("The air", "air", hour.air)
                } else {
                    ("The slab", "surface", hour.surface)
                };
                let maximum = candidate.sheet.maximum.map(format).unwrap_or_default();
                (
                    FindingCode::AboveMaximumTemperature,
                    row(field),
                    format!(
                        "{what} is at {}, above the {maximum} that the sheet allows. Work in the cooler hours, out of the sun.",
                        format(hottest)
                    ),
                )
            }
            Self::NearDewPoint(_) => (FindingCode::NearDewPoint, row("surface"), format_condensation(hour, system)),
            Self::Rain(_) => (
                FindingCode::RainBeforeSkin,
                row("precipitation_probability_percent"),
                format_rain(hour, &when, until, system),
            ),
            Self::ColdBeforeSkin(_) => (
                FindingCode::ColdBeforeSkin,
                row("air"),
                format!(
                    "At {when} the air falls to {}, below the {minimum} that is asked for, before {until}. Start earlier on a warmer day, or take a sealant that sets faster.",
                    format(hour.air)
                ),
            ),
        };
        let finding = Finding::at(code, Level::Stop, about, message);
        match self {
            Self::NearDewPoint(_) => finding
                .figure("surface", hour.surface.get::<degree_celsius>(), "celsius")
                .figure("dew_point", hour.dew_point.get::<degree_celsius>(), "celsius")
                .figure(
                    "margin",
                    hour.dew_point_margin().get::<uom::si::temperature_interval::degree_celsius>(),
                    "celsius",
                ),
            Self::Frozen(_) => finding.figure("surface", hour.surface.get::<degree_celsius>(), "celsius"),
            Self::TooCold(_) | Self::TooHot(_) => finding
                .figure("surface", hour.surface.get::<degree_celsius>(), "celsius")
                .figure("air", hour.air.get::<degree_celsius>(), "celsius"),
            Self::ColdBeforeSkin(_) => finding.figure("air", hour.air.get::<degree_celsius>(), "celsius"),
            Self::Rain(_) => match hour.rain_percent {
                Some(percent) => finding.figure("probability", percent, "percent"),
                None => finding,
            },
        }
    }
}

/// How near the dew point is, and what to do about it.
fn format_condensation(hour: &WeatherHour, system: UnitSystem) -> String {
    let (margin, zero) = (hour.dew_point_margin(), TemperatureInterval::default());
    let format = |difference| format_temperature_difference(difference, system);
    let (how, what) = if format(margin) == format(zero) {
        ("at".to_owned(), "water condenses")
    } else if margin < zero {
        (format!("{} below", format(zero - margin)), "water condenses")
    } else {
        (format!("only {} above", format(margin)), "water may condense")
    };
    let taken = if hour.surface_is_assumed { "is taken to be" } else { "is" };
    format!(
        "The slab {taken} at {}, {how} the dew point of {}: {what} on it. Wait until it is {} above, or dry and warm the slot.",
        format_temperature(hour.surface, system),
        format_temperature(hour.dew_point, system),
        format_temperature_difference(dew_point_margin(), system),
    )
}

/// How likely the rain is or how much falls, and what to do about it.
fn format_rain(hour: &WeatherHour, when: &str, until: &str, system: UnitSystem) -> String {
    let what = match (hour.rain_percent, hour.rain) {
        (Some(percent), _) if percent >= RAIN_STOPS_PERCENT => format!("rain or snow is likely ({percent:.0} %)"),
        (_, Some(fall)) => format!("{} of rain or snow is due", format_detail_length(fall, system)),
        _ => "rain or snow is due".to_owned(),
    };
    format!("At {when} {what}, before {until}. Start in a dry window, or take a sealant that sets before it.")
}
