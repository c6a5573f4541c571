//! The finding of each stop.

use uom::si::f64::{Length, TemperatureInterval, Time};
use uom::si::temperature_interval;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::candidate::SealantCandidate;
use super::fields_to_send::{weather_pointer, with_more_hours, with_row_field, with_slot_condition};
use super::request::ResolvedCureGuidance;
use super::traffic_findings::late_finding;
use super::weather_series::WeatherHour;
use super::work_stops::{HourStop, WorkStop};
use crate::calculation::report::{FieldPath, Finding, Statement};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::sealing::{RAIN_STOPS_PERCENT, SurfaceCondition, dew_point_margin, freezing};
use crate::quantity::UnitSystem;
use crate::quantity::output::round;

/// The finding of a stop at a start.
pub fn stop_finding(job: &ResolvedCureGuidance, candidate: &SealantCandidate, start: Time, stop: WorkStop) -> Finding {
    match stop {
        WorkStop::InHour(stop, index) => {
            StoppingHour { job, candidate, start, hour: &job.weather.hours[index] }.finding(stop)
        }
        WorkStop::WetByRain(index) => wet_finding(job, index, start),
        WorkStop::SlotAsSeen(seen) => seen_finding(candidate, seen),
        WorkStop::Insulation => insulation_finding(job, candidate),
        WorkStop::BeyondWeather => {
            let weather_end = job.weather.date_time(job.weather.end()).format_for_sentence();
            let message = Statement::new("cure-weather-ends-before-sealed").text("weather_end", weather_end);
            let at = FieldPath::BODY.field("weather").pointer();
            with_more_hours(Finding::at(FindingCode::ForecastTooShort, Level::Stop, at, message))
        }
        WorkStop::PastShelfLife => {
            let shelf_life = job.shelf_life.as_ref();
            let ends_on = shelf_life.map_or_else(String::new, |shelf_life| shelf_life.until.to_string());
            let left = shelf_life.map_or(0, |shelf_life| shelf_life.days_left);
            let is_past = shelf_life.is_some_and(|life| job.weather.date_time(start).date() > life.until);
            let message = Statement::new("cure-past-shelf-life")
                .text("ends_on", ends_on)
                .code("moment", if is_past { "past" } else { "during" });
            let at = FieldPath::BODY.field("sealant").field("made_on").pointer();
            Finding::at(FindingCode::PastShelfLife, Level::Stop, at, message).figure("left", 24.0 * left as f64, "h")
        }
        WorkStop::OpensLate(late) => late_finding(job, candidate, &late),
    }
}

/// Adds the temperature of the slab, and how it is known.
pub fn with_surface(statement: Statement, hour: &WeatherHour, system: UnitSystem) -> Statement {
    statement
        .temperature("surface", hour.surface, system)
        .code("surface_origin", if hour.surface_is_assumed { "assumed" } else { "measured" })
}

/// An hour of weather that stops the work.
struct StoppingHour<'a> {
    job: &'a ResolvedCureGuidance,
    candidate: &'a SealantCandidate,
    start: Time,
    hour: &'a WeatherHour,
}

impl StoppingHour<'_> {
    fn system(&self) -> UnitSystem {
        self.job.weather.system
    }

    /// When it is; an hour that began before the start counts from the start.
    fn time(&self) -> String {
        self.job.weather.date_time(self.hour.from.max(self.start)).format_for_sentence()
    }

    /// Adds when it is.
    fn with_time(&self, statement: Statement) -> Statement {
        let moment = if self.hour.from <= self.start { "start" } else { "later" };
        statement.code("moment", moment).text("time", self.time())
    }

    fn with_minimum(&self, statement: Statement) -> Statement {
        statement.temperature("minimum", self.candidate.sheet.minimum, self.system())
    }

    /// Adds what the sealant has come to, once the stop no longer matters.
    fn with_event(&self, statement: Statement) -> Statement {
        statement.text("time", self.time()).phrase("safe_event", self.candidate.safe_event())
    }

    fn of_slab(&self, statement: Statement) -> Statement {
        let statement = self.with_time(with_surface(statement, self.hour, self.system()));
        if self.hour.surface_is_assumed {
            statement.followed_by(Statement::new("cure-measure-slab"))
        } else {
            statement
        }
    }

    fn finding(&self, stop: HourStop) -> Finding {
        let (code, field, message) = self.state(stop);
        let finding = Finding::at(code, Level::Stop, weather_pointer(self.hour.index, field), message);
        let asks_for_slab = field == "surface" && self.hour.surface_is_assumed;
        let finding = if asks_for_slab { with_row_field(finding, self.hour.index, field) } else { finding };
        let surface = self.hour.surface.get::<degree_celsius>();
        let air = self.hour.air.get::<degree_celsius>();
        match stop {
            HourStop::NearDewPoint => finding
                .figure("surface", surface, "celsius")
                .figure("dew_point", self.hour.dew_point.get::<degree_celsius>(), "celsius")
                .figure(
                    "margin",
                    self.hour.dew_point_margin().get::<temperature_interval::degree_celsius>(),
                    "celsius",
                ),
            HourStop::Frost | HourStop::SlabUnknown => finding.figure("surface", surface, "celsius"),
            HourStop::ColdBeforeSkin => finding.figure("air", air, "celsius"),
            HourStop::Rain => match self.hour.rain_percent {
                Some(percent) => finding.figure("probability", percent, "percent"),
                None => finding,
            },
            HourStop::TooCold | HourStop::TooHot | HourStop::SawWaterFreezes => {
                finding.figure("surface", surface, "celsius").figure("air", air, "celsius")
            }
        }
    }

    /// The code, the field of the row and the words.
    fn state(&self, stop: HourStop) -> (FindingCode, &'static str, Statement) {
        let (hour, system) = (self.hour, self.system());
        match stop {
            HourStop::Frost => {
                let minimum = self.candidate.sheet.minimum;
                let warm = if minimum > freezing() { minimum } else { freezing() };
                let message = Statement::new("cure-slab-frozen").temperature("warm", warm, system);
                (FindingCode::SlabFrozen, "surface", self.of_slab(message))
            }
            HourStop::SlabUnknown => {
                let message = Statement::new("cure-surface-unknown")
                    .text("weather_begin", self.job.weather.begin.format_for_sentence())
                    .temperature("surface", hour.surface, system);
                (FindingCode::SurfaceAssumed, "surface", message)
            }
            HourStop::TooCold if hour.surface < self.candidate.sheet.minimum => {
                let message = self.with_minimum(Statement::new("cure-slab-below-minimum"));
                (FindingCode::BelowMinimumTemperature, "surface", self.of_slab(message))
            }
            HourStop::TooCold => {
                let message =
                    self.with_minimum(Statement::new("cure-air-below-minimum").temperature("air", hour.air, system));
                (FindingCode::BelowMinimumTemperature, "air", self.with_time(message))
            }
            HourStop::TooHot => {
                let (field, hottest) =
                    if hour.air > hour.surface { ("air", hour.air) } else { ("surface", hour.surface) };
                // Where the sheet allows any heat, this is no stop.
                let maximum = self.candidate.sheet.maximum.unwrap_or(hottest);
                let message = Statement::new("cure-above-maximum")
                    .code("field", field)
                    .temperature("hottest", hottest, system)
                    .temperature("maximum", maximum, system);
                (FindingCode::AboveMaximumTemperature, field, self.with_time(message))
            }
            HourStop::NearDewPoint => {
                (FindingCode::NearDewPoint, "surface", self.with_time(state_condensation(hour, system)))
            }
            HourStop::ColdBeforeSkin => {
                let message = Statement::new("cure-cold-before-safe").temperature("air", hour.air, system);
                (FindingCode::ColdBeforeSkin, "air", self.with_minimum(self.with_event(message)))
            }
            HourStop::SawWaterFreezes => {
                let (field, coldest) =
                    if hour.air < hour.surface { ("air", hour.air) } else { ("surface", hour.surface) };
                let time = self.job.weather.date_time(hour.from).format_for_sentence();
                let message = Statement::new("cure-saw-water-freezes")
                    .text("time", time)
                    .code("field", field)
                    .temperature("coldest", coldest, system);
                (FindingCode::SawWaterFreezes, field, message)
            }
            HourStop::Rain => (
                FindingCode::RainBeforeSkin,
                "precipitation_probability_percent",
                self.with_event(with_outlook(Statement::new("cure-rain-before-safe"), hour, system)),
            ),
        }
    }
}

/// What rain has left in a slot of which nobody said that it is dry.
fn wet_finding(job: &ResolvedCureGuidance, rain: usize, start: Time) -> Finding {
    let hour = &job.weather.hours[rain];
    let until = job.weather.date_time(hour.until).format_for_sentence();
    let message = Statement::new("cure-slot-wet-by-rain").text("rained_until", until);
    let message = match job.condition.spell_at(start).and_then(|spell| spell.dry) {
        Some(dry) => message.followed_by(
            Statement::new("cure-slot-dries")
                .text("dry", job.weather.date_time(dry).round_to_minute().format_for_sentence()),
        ),
        None => message.followed_by(Statement::new("cure-slot-stays-wet")),
    };
    let at = FieldPath::BODY.field("surface_condition").pointer();
    with_slot_condition(Finding::at(FindingCode::SlotWet, Level::Stop, at, message))
}

/// What follows from the state of the slot as it was seen.
fn seen_finding(candidate: &SealantCandidate, seen: SurfaceCondition) -> Finding {
    let is_poured_hot = candidate.kind.is_poured_hot();
    let (code, message) = match seen {
        SurfaceCondition::Wet | SurfaceCondition::Dry if is_poured_hot => {
            (FindingCode::SlotWet, Statement::new("cure-slot-wet-for-hot-sealant"))
        }
        SurfaceCondition::Wet | SurfaceCondition::Dry => (FindingCode::SlotWet, Statement::new("cure-slot-wet")),
        SurfaceCondition::Frost => (FindingCode::SlabFrozen, Statement::new("cure-frost-on-slab")),
        SurfaceCondition::Damp if is_poured_hot => {
            (FindingCode::SlotDamp, Statement::new("cure-slot-damp-for-hot-sealant"))
        }
        SurfaceCondition::Damp => {
            (FindingCode::SlotDamp, Statement::new("cure-slot-damp-not-allowed").member("kind", candidate.kind))
        }
    };
    Finding::at(code, Level::Stop, FieldPath::BODY.field("surface_condition").pointer(), message)
}

/// That insulation and jacket do not stand the pour, or that nobody said it.
fn insulation_finding(job: &ResolvedCureGuidance, candidate: &SealantCandidate) -> Finding {
    let (body, at) = (FieldPath::BODY, FieldPath::BODY.field("wire").field("insulation_rating").pointer());
    // Sealant that is applied cold is never stopped by this.
    let pour = candidate.sheet.pour.unwrap_or(candidate.sheet.minimum);
    let system = job.weather.system;
    let state = |statement: Statement| statement.temperature("pour", pour, system);
    if let Some(rating) = job.rating {
        let message = state(Statement::new("cure-insulation-too-low").temperature("rating", rating, system));
        Finding::at(FindingCode::InsulationTooLow, Level::Stop, at, message)
            .figure("rating", rating.get::<degree_celsius>(), "celsius")
            .figure("pour", pour.get::<degree_celsius>(), "celsius")
    } else {
        let message = state(Statement::new("cure-insulation-unknown"));
        Finding::at(FindingCode::InsulationUnknown, Level::Stop, at, message)
            .send(&body.field("wire").field("insulation_rating"))
    }
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

/// Adds how likely the rain of an hour is, or how much falls.
pub fn with_outlook(statement: Statement, hour: &WeatherHour, system: UnitSystem) -> Statement {
    let is_likely = hour.rain_percent.is_some_and(|percent| percent >= RAIN_STOPS_PERCENT);
    match (hour.rain_percent, hour.rain.filter(|fall| *fall > Length::default() && !is_likely)) {
        (_, Some(fall)) => statement.code("outlook", "amount").detail_length("fall", fall, system),
        (Some(percent), None) => statement.code("outlook", "likely").percent("probability", percent, 0),
        (None, None) => statement.code("outlook", "due"),
    }
}
