//! What in the weather stops the work at a time: at the start, and at every later hour for the windows.

use uom::si::f64::{TemperatureInterval, ThermodynamicTemperature, Time};
use uom::si::temperature_interval;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::candidate::{Hardening, SealantCandidate};
use super::request::ResolvedCureGuidance;
use super::weather_series::{WeatherHour, WeatherSeries};
use crate::calculation::report::{FieldPath, Finding, Statement};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::sealing::{RAIN_STOPS_PERCENT, dew_point_margin, freezing};
use crate::quantity::UnitSystem;
use crate::quantity::output::round;

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
        // An hour that began before the start counts from the start.
        let at_hour = |statement: Statement| {
            let time = job.weather.date_time(hour.from.max(job.weather.start)).format_for_sentence();
            statement.text("time", time).phrase("safe_event", candidate.safe_event())
        };
        let with_minimum = |statement: Statement| statement.temperature("minimum", candidate.sheet.minimum, system);
        let of_slab = |statement: Statement| {
            let statement = with_minimum(with_surface(statement, hour, system));
            if hour.surface_is_assumed { statement.followed_by(Statement::new("cure-measure-slab")) } else { statement }
        };
        let (code, about, message) = match self {
            Self::Frozen(_) => (FindingCode::SlabFrozen, row("surface"), of_slab(Statement::new("cure-slab-frozen"))),
            Self::TooCold(_) if hour.surface < candidate.sheet.minimum => (
                FindingCode::BelowMinimumTemperature,
                row("surface"),
                of_slab(Statement::new("cure-slab-below-minimum")),
            ),
            Self::TooCold(_) => (
                FindingCode::BelowMinimumTemperature,
                row("air"),
                with_minimum(Statement::new("cure-air-below-minimum").temperature("air", hour.air, system)),
            ),
            Self::TooHot(_) => {
                let (field, hottest) =
                    if hour.air > hour.surface { ("air", hour.air) } else { ("surface", hour.surface) };
                // Where the sheet allows any heat, this is no stop.
                let maximum = candidate.sheet.maximum.unwrap_or(hottest);
                (
                    FindingCode::AboveMaximumTemperature,
                    row(field),
                    Statement::new("cure-above-maximum")
                        .code("field", field)
                        .temperature("hottest", hottest, system)
                        .temperature("maximum", maximum, system),
                )
            }
            Self::NearDewPoint(_) => (FindingCode::NearDewPoint, row("surface"), state_condensation(hour, system)),
            Self::Rain(_) => (
                FindingCode::RainBeforeSkin,
                row("precipitation_probability_percent"),
                at_hour(state_rain(hour, system)),
            ),
            Self::ColdBeforeSkin(_) => (
                FindingCode::ColdBeforeSkin,
                row("air"),
                with_minimum(at_hour(Statement::new("cure-cold-before-safe").temperature("air", hour.air, system))),
            ),
        };
        let finding = Finding::at(code, Level::Stop, about, message);
        match self {
            Self::NearDewPoint(_) => finding
                .figure("surface", hour.surface.get::<degree_celsius>(), "celsius")
                .figure("dew_point", hour.dew_point.get::<degree_celsius>(), "celsius")
                .figure("margin", hour.dew_point_margin().get::<temperature_interval::degree_celsius>(), "celsius"),
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

/// Adds the temperature of the slab, and how it is known.
fn with_surface(statement: Statement, hour: &WeatherHour, system: UnitSystem) -> Statement {
    statement
        .temperature("surface", hour.surface, system)
        .code("surface_origin", if hour.surface_is_assumed { "assumed" } else { "measured" })
}

/// How near the dew point is, and what to do about it.
fn state_condensation(hour: &WeatherHour, system: UnitSystem) -> Statement {
    let (margin, zero) = (hour.dew_point_margin(), TemperatureInterval::default());
    let degrees = match system {
        UnitSystem::UsCustomary => margin.get::<temperature_interval::degree_fahrenheit>(),
        UnitSystem::Metric => margin.get::<temperature_interval::degree_celsius>(),
    };
    let (side, distance) = if round(degrees, 1) == 0.0 {
        ("at", zero)
    } else if margin < zero {
        ("below", zero - margin)
    } else {
        ("above", margin)
    };
    with_surface(Statement::new("cure-near-dew-point"), hour, system)
        .code("side", side)
        .temperature_difference("distance", distance, system)
        .temperature("dew_point", hour.dew_point, system)
        .temperature_difference("least_margin", dew_point_margin(), system)
}

/// How likely the rain is or how much falls, and what to do about it.
fn state_rain(hour: &WeatherHour, system: UnitSystem) -> Statement {
    let statement = Statement::new("cure-rain-before-safe");
    match (hour.rain_percent, hour.rain) {
        (Some(percent), _) if percent >= RAIN_STOPS_PERCENT => {
            statement.code("outlook", "likely").percent("probability", percent, 0)
        }
        (_, Some(fall)) => statement.code("outlook", "amount").detail_length("fall", fall, system),
        _ => statement.code("outlook", "due"),
    }
}
