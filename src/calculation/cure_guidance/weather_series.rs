//! The weather in typed quantities: hours without a gap, each with the water in the air and the temperature of the slab.

use uom::si::f64::{Length, Pressure, TemperatureInterval, ThermodynamicTemperature, Time};
use uom::si::length::millimeter;
use uom::si::pressure::pascal;
use uom::si::temperature_interval::kelvin as kelvins;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};
use uom::si::time::hour as an_hour;

use super::offset_date_time::OffsetDateTime;
use crate::calculation::input::{HourlyConditions, Weather};
use crate::calculation::report::{Decimals, Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::physics::psychrometrics::{dew_point, frost_point, saturation_pressure, vapour_pressure};
use crate::practice::sealing::{
    NIGHT, RAIN_CARE_PERCENT, RAIN_STOPS_PERCENT, dew_point_margin, freezing, longest_gap, longest_weather,
    measured_memory, night_drop, rain_stops, slab_memory,
};
use crate::practice::sources::Source;
use crate::quantity::UnitSystem;
use crate::quantity::format::format_temperature_input;

/// The most by which the humidity and the dew point of a row may differ, as dew points, K. A choice made here: services round both.
const DEW_POINT_TOLERANCE: f64 = 2.0;
/// The most by which a dew point may lie above the air, K, since both are rounded. A choice made here.
const DEW_POINT_OVER_AIR_TOLERANCE: f64 = 0.5;

/// One row of weather; times count from the first row.
#[derive(Clone, Debug)]
pub struct WeatherHour {
    /// Its place in the request.
    pub index: usize,
    /// When it begins.
    pub from: Time,
    /// When it ends: where the next begins; the last holds for an hour.
    pub until: Time,
    /// The air.
    pub air: ThermodynamicTemperature,
    /// The slab, measured or assumed.
    pub surface: ThermodynamicTemperature,
    /// Whether the slab was not measured in this row.
    pub surface_is_assumed: bool,
    /// Whether it was measured in this row or in the hours before.
    pub surface_is_known: bool,
    /// The pressure of water vapour.
    pub vapour: Pressure,
    /// The relative humidity over water, percent.
    pub humidity_percent: f64,
    /// The dew point over water.
    pub dew_point: ThermodynamicTemperature,
    /// The frost point over ice; only below 0 °C.
    pub frost_point: Option<ThermodynamicTemperature>,
    /// How likely rain or snow is, percent.
    pub rain_percent: Option<f64>,
    /// How much of it falls.
    pub rain: Option<Length>,
}

impl WeatherHour {
    /// The temperature of the sealant: that of the slab where it was measured, of the air elsewhere.
    pub fn sealant_temperature(&self) -> ThermodynamicTemperature {
        if self.surface_is_assumed { self.air } else { self.surface }
    }

    /// How far the slab lies above the dew point.
    pub fn dew_point_margin(&self) -> TemperatureInterval {
        TemperatureInterval::new::<kelvins>(self.surface.get::<kelvin>() - self.dew_point.get::<kelvin>())
    }

    /// Whether so much rain or snow is likely or due that it stops the work.
    pub fn is_rain_likely(&self) -> bool {
        self.rain_percent.is_some_and(|percent| percent >= RAIN_STOPS_PERCENT)
            || self.rain.is_some_and(|fall| fall >= rain_stops())
    }

    /// Whether rain or snow is likely, or any is due: it wets an open slot.
    pub fn is_wetting(&self) -> bool {
        self.rain_percent.is_some_and(|percent| percent >= RAIN_STOPS_PERCENT)
            || self.rain.is_some_and(|fall| fall > Length::default())
    }

    /// Whether rain or snow is possible, which asks for care, and no more than that.
    pub fn is_rain_possible(&self) -> bool {
        !self.is_rain_likely()
            && (self.is_wetting() || self.rain_percent.is_some_and(|percent| percent >= RAIN_CARE_PERCENT))
    }

    /// Whether the slab is at the freezing point or below.
    pub fn is_frozen(&self) -> bool {
        self.surface <= freezing()
    }

    /// Whether a frozen slab lies so near the frost point that rime may grow on it.
    pub fn is_near_frost_point(&self) -> bool {
        let margin = |frost: ThermodynamicTemperature| self.surface.get::<kelvin>() - frost.get::<kelvin>();
        // Air whose dew point lies above 0 °C has no frost point, and water enough for rime.
        self.frost_point.is_none_or(|frost| margin(frost) < dew_point_margin().get::<kelvins>())
    }

    /// Whether the weather that was sent tells of rain and snow.
    pub fn is_rain_known(&self) -> bool {
        self.rain_percent.is_some() || self.rain.is_some()
    }

    /// The rain or snow of this hour in a word; `None` where the weather does not tell of it.
    pub fn rain_chance(&self) -> Option<&'static str> {
        if self.is_rain_likely() {
            return Some("likely");
        }
        self.is_rain_known().then_some(if self.is_rain_possible() { "possible" } else { "unlikely" })
    }
}

/// The hours of the weather, and the start in it. Times count from the beginning of the first hour.
#[derive(Clone, Debug)]
pub struct WeatherSeries {
    /// The hours, in order, without a gap.
    pub hours: Vec<WeatherHour>,
    /// The beginning of the first hour, on the clock of the start.
    pub begin: OffsetDateTime,
    /// The start, from the beginning of the first hour.
    pub start: Time,
    /// The system that the first air temperature was written in.
    pub system: UnitSystem,
}

impl WeatherSeries {
    /// Resolves the weather, which must reach round the start; `None` after an error.
    pub fn resolve(
        weather: &Weather,
        start: Option<OffsetDateTime>,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Option<Self> {
        let (conditions_at, location_at) = (at.field("conditions"), at.field("location"));
        // Where the forecast of the location failed, the caller of this has added the error.
        let has_location_error = diagnostics.has_error_at(&location_at);
        let Some(conditions) = &weather.conditions else {
            let detail = match weather.location {
                Some(_) => Statement::new("errors-weather-not-fetched"),
                None => Statement::new("errors-no-weather"),
            };
            if !has_location_error {
                diagnostics.add_error(
                    &conditions_at,
                    FieldErrorCode::FieldMissing,
                    detail,
                    Statement::new("errors-no-weather-hint"),
                );
            }
            return None;
        };
        if weather.location.is_some() && !has_location_error {
            let detail = Statement::new("errors-weather-twice");
            diagnostics.add_error(
                &location_at,
                FieldErrorCode::Contradiction,
                detail,
                Statement::new("errors-weather-twice-hint"),
            );
        }
        let rows: Vec<_> = conditions
            .iter()
            .enumerate()
            .map(|(index, row)| WeatherRow::resolve(row, &conditions_at.item(index), diagnostics))
            .collect();
        let is_in_order = check_times(&rows, &conditions_at, diagnostics);
        // All that follows relies on rows in order of time.
        let rows: Vec<WeatherRow> = rows.into_iter().collect::<Option<_>>().filter(|_| is_in_order)?;
        let (first, last, start) = (rows.first()?, rows.last()?, start?);
        let begin = OffsetDateTime { at: first.date_time.at, offset: start.offset };
        let end = OffsetDateTime { at: last.date_time.at, offset: start.offset }.plus(Time::new::<an_hour>(1.0));
        if start.at < begin.at || start.at >= end.at {
            let hint = Statement::new("errors-start-outside-weather-hint")
                .text("begin", begin.format_rfc_3339())
                .text("end", end.format_rfc_3339());
            diagnostics.add_error(
                &FieldPath::BODY.field("start"),
                FieldErrorCode::OutOfRange,
                Statement::new("errors-start-outside-weather"),
                hint,
            );
        }
        let system = first.system;
        let froms: Vec<_> = rows.iter().map(|row| row.date_time.since(begin.at)).collect();
        let until = |index: usize| froms.get(index + 1).copied().unwrap_or(froms[index] + Time::new::<an_hour>(1.0));
        let surfaces: Vec<_> = (0..rows.len()).map(|index| surface_temperature(&rows, &froms, index, begin)).collect();
        let hours: Vec<_> = rows
            .into_iter()
            .enumerate()
            .map(|(index, row)| {
                let (surface, surface_is_known) = surfaces[index];
                let pascals = row.vapour.get::<pascal>();
                let frost = Some(frost_point(pascals)).filter(|celsius| *celsius < 0.0);
                WeatherHour {
                    index,
                    from: froms[index],
                    until: until(index),
                    air: row.air,
                    surface,
                    surface_is_assumed: row.surface.is_none(),
                    surface_is_known,
                    vapour: row.vapour,
                    humidity_percent: row.humidity_percent,
                    dew_point: ThermodynamicTemperature::new::<degree_celsius>(dew_point(pascals)),
                    frost_point: frost.map(ThermodynamicTemperature::new::<degree_celsius>),
                    rain_percent: row.rain_percent,
                    rain: row.rain,
                }
            })
            .collect();
        let series = Self { hours, begin, start: start.since(begin.at), system };
        series.add_surface_assumption(&conditions_at, diagnostics);
        Some(series)
    }

    /// The end of the last hour.
    pub fn end(&self) -> Time {
        self.hours.last().map_or_else(Time::default, |hour| hour.until)
    }

    /// A time of the weather on the clock of the start.
    pub fn date_time(&self, time: Time) -> OffsetDateTime {
        self.begin.plus(time)
    }

    /// The hour that a time lies in.
    pub fn hour_at(&self, time: Time) -> &WeatherHour {
        let next = self.hours.partition_point(|hour| hour.from <= time);
        &self.hours[next.saturating_sub(1)]
    }

    /// The hours that overlap a span of time.
    pub fn hours_between(&self, from: Time, until: Time) -> impl Iterator<Item = &WeatherHour> {
        let first = self.hours.partition_point(|hour| hour.until <= from);
        self.hours[first..].iter().take_while(move |hour| hour.from < until)
    }

    /// Adds the first assumed slab temperature from the start on; its reason speaks for the others.
    fn add_surface_assumption(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) {
        let mut from_start = self.hours.iter().filter(|hour| hour.until > self.start);
        if let Some(hour) = from_start.find(|hour| hour.surface_is_assumed) {
            diagnostics.add_assumption(
                &at.item(hour.index).field("surface"),
                format_temperature_input(hour.surface, self.system),
                Statement::new("cure-surface-by-air"),
                &[Source::OwnChoice],
            );
        }
    }
}

/// A row of weather in typed quantities, before the next row tells when it ends and the rows before it how cold its slab is.
struct WeatherRow {
    date_time: OffsetDateTime,
    air: ThermodynamicTemperature,
    surface: Option<ThermodynamicTemperature>,
    vapour: Pressure,
    humidity_percent: f64,
    rain_percent: Option<f64>,
    rain: Option<Length>,
    system: UnitSystem,
}

impl WeatherRow {
    /// Resolves a row; `None` after an error.
    fn resolve(sent: &HourlyConditions, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<Self> {
        let date_time = OffsetDateTime::resolve(&sent.time, &at.field("time"), diagnostics);
        let air = diagnostics.parse(&at.field("air"), &sent.air);
        let sent_dew_point = diagnostics.parse_optional(&at.field("dew_point"), sent.dew_point.as_ref());
        let surface = diagnostics.parse_optional(&at.field("surface"), sent.surface.as_ref());
        let rain = diagnostics.parse_optional(&at.field("precipitation"), sent.precipitation.as_ref());
        if sent.relative_humidity_percent.is_none() && sent.dew_point.is_none() {
            diagnostics.add_error(
                &at.field("relative_humidity_percent"),
                FieldErrorCode::FieldMissing,
                Statement::new("errors-no-humidity"),
                Statement::new("errors-no-humidity-hint"),
            );
        }
        let air = air?;
        let celsius = air.si.get::<degree_celsius>();
        let stated = sent_dew_point.map(|dew| dew.get::<degree_celsius>());
        let is_over_air = stated.is_some_and(|dew| dew > celsius + DEW_POINT_OVER_AIR_TOLERANCE);
        if is_over_air {
            let detail = Statement::new("errors-dew-point-above-air");
            let hint = Statement::new("errors-dew-point-above-air-hint");
            diagnostics.add_error(&at.field("dew_point"), FieldErrorCode::Contradiction, detail, hint);
        }
        let pascals = match (sent.relative_humidity_percent, stated) {
            (Some(percent), _) => vapour_pressure(celsius, percent.clamp(0.5, 100.0) / 100.0),
            (None, dew) => saturation_pressure(dew?.min(celsius)),
        };
        if !is_over_air
            && sent.relative_humidity_percent.is_some()
            && stated.is_some_and(|dew| (dew - dew_point(pascals)).abs() > DEW_POINT_TOLERANCE)
        {
            let dew = ThermodynamicTemperature::new::<degree_celsius>(dew_point(pascals));
            let detail = Statement::new("errors-dew-point-differs").temperature("dew_point", dew, air.system);
            let hint = Statement::new("errors-dew-point-differs-hint");
            diagnostics.add_error(&at.field("dew_point"), FieldErrorCode::Contradiction, detail, hint);
        }
        Some(Self {
            date_time: date_time?,
            air: air.si,
            surface,
            vapour: Pressure::new::<pascal>(pascals),
            humidity_percent: sent
                .relative_humidity_percent
                .unwrap_or_else(|| 100.0 * pascals / saturation_pressure(celsius)),
            rain_percent: sent.precipitation_probability_percent,
            rain: rain.map(|fall| fall.max(Length::new::<millimeter>(0.0))),
            system: air.system,
        })
    }
}

/// The temperature of the slab of a row, and whether it rests on a measurement: its own; or that of the last hours, which falls with the
/// air and does not rise; or the lowest of the air in the hours before, less at night.
fn surface_temperature(
    rows: &[WeatherRow],
    froms: &[Time],
    index: usize,
    begin: OffsetDateTime,
) -> (ThermodynamicTemperature, bool) {
    let mut last = (0..=index).rev().take_while(|earlier| froms[index] - froms[*earlier] <= measured_memory());
    let measured = last.find_map(|earlier| Some((&rows[earlier], rows[earlier].surface?)));
    if let Some((row, surface)) = measured {
        let fall = (row.air.get::<kelvin>() - rows[index].air.get::<kelvin>()).max(0.0);
        return (surface - TemperatureInterval::new::<kelvins>(fall), true);
    }
    let since = froms[index] - slab_memory();
    // The first is the row that holds at that time, so it may begin earlier.
    let first = froms.partition_point(|from| *from <= since).saturating_sub(1);
    let lowest = rows[first..=index]
        .iter()
        .map(|row| row.air)
        .fold(rows[index].air, |low, air| if air < low { air } else { low });
    let (dusk, dawn) = NIGHT;
    let hour = begin.plus(froms[index]).hour();
    (if hour >= dusk || hour < dawn { lowest - night_drop() } else { lowest }, false)
}

/// Whether the rows are in order of time, without long gaps, and within two weeks; adds the errors.
fn check_times(rows: &[Option<WeatherRow>], at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> bool {
    let times: Vec<_> = rows.iter().map(|row| row.as_ref().map(|row| row.date_time)).collect();
    let mut is_valid = true;
    for (index, pair) in times.windows(2).enumerate() {
        // A row with an error has no time to compare with.
        let [Some(before), Some(time)] = pair else { continue };
        let step = time.since(before.at);
        let (code, detail, hint) = if time.at == before.at {
            let detail = Statement::new("errors-row-twice");
            (FieldErrorCode::TimeOrder, detail, Statement::new("errors-row-twice-hint"))
        } else if time.at < before.at {
            let detail = Statement::new("errors-row-too-early");
            (FieldErrorCode::TimeOrder, detail, Statement::new("errors-row-too-early-hint"))
        } else if step > longest_gap() {
            let detail = Statement::new("errors-gap-between-rows").quantity(
                "gap",
                step.get::<an_hour>(),
                Decimals::AtMost(2),
                "h",
            );
            (FieldErrorCode::TimeGap, detail, Statement::new("errors-gap-between-rows-hint"))
        } else {
            continue;
        };
        is_valid = false;
        diagnostics.add_error(&at.item(index + 1).field("time"), code, detail, hint);
    }
    let Some(first) = times.iter().flatten().next() else { return false };
    let last_start = longest_weather() - Time::new::<an_hour>(1.0);
    let is_late = |time: &Option<OffsetDateTime>| time.is_some_and(|time| time.since(first.at) > last_start);
    if let Some(index) = times.iter().position(is_late) {
        is_valid = false;
        let detail = Statement::new("errors-weather-too-long");
        diagnostics.add_error(
            &at.item(index).field("time"),
            FieldErrorCode::OutOfRange,
            detail,
            Statement::new("errors-weather-too-long-hint"),
        );
    }
    is_valid
}
