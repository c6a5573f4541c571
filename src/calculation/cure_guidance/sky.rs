//! The weather as it is computed with: hours from their beginning until the next, with the water in the air and a slab.

use uom::si::f64::{Length, Pressure, TemperatureInterval, ThermodynamicTemperature, Time};
use uom::si::length::millimeter;
use uom::si::pressure::pascal;
use uom::si::temperature_interval::kelvin as kelvins;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};
use uom::si::time::hour as an_hour;

use super::moment::Moment;
use crate::calculation::input::{HourlyConditions, Weather};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath};
use crate::physics::psychrometrics::{dew_point, frost_point, saturation_pressure, vapour_pressure};
use crate::practice::cure::{NIGHT, longest_gap, longest_weather, night_drop, slab_memory};
use crate::practice::sources::Source;
use crate::quantity::UnitSystem;
use crate::quantity::format::{format_temperature, format_temperature_input};
use crate::quantity::output::round;

/// The most by which two statements of the water in the air may differ, as dew points. A choice made here: services round them.
const DEW_POINTS_APART: f64 = 2.0;
/// The most by which a rounded dew point may lie over the air, K. A choice made here.
const DEW_POINT_OVER_AIR: f64 = 0.5;

/// One row of weather; times count from the first row.
#[derive(Clone, Debug)]
pub struct Hour {
    /// Its place in the request.
    pub index: usize,
    /// When it begins.
    pub from: Time,
    /// When the next begins.
    pub until: Time,
    /// The air.
    pub air: ThermodynamicTemperature,
    /// The slab, measured or assumed.
    pub surface: ThermodynamicTemperature,
    /// Whether nobody measured the slab.
    pub surface_is_assumed: bool,
    /// The pressure of water vapour.
    pub vapour: Pressure,
    /// The dew point over water.
    pub dew_point: ThermodynamicTemperature,
    /// The frost point over ice, below 0 °C.
    pub frost_point: Option<ThermodynamicTemperature>,
    /// How likely rain or snow is, percent.
    pub rain_percent: Option<f64>,
    /// How much of it falls.
    pub rain: Option<Length>,
}

impl Hour {
    /// The sealant's own temperature: that of the slab where it was measured, of the air elsewhere.
    pub fn sealant(&self) -> ThermodynamicTemperature {
        if self.surface_is_assumed { self.air } else { self.surface }
    }

    /// How far the slab lies above the dew point.
    pub fn margin(&self) -> TemperatureInterval {
        difference(self.surface, self.dew_point)
    }
}

/// From one temperature to another.
pub fn difference(upper: ThermodynamicTemperature, lower: ThermodynamicTemperature) -> TemperatureInterval {
    TemperatureInterval::new::<kelvins>(upper.get::<kelvin>() - lower.get::<kelvin>())
}

/// All hours, and the clock of the caller.
#[derive(Clone, Debug)]
pub struct Sky {
    /// The hours, in order, without a gap.
    pub hours: Vec<Hour>,
    /// The beginning of the first, on the clock of the start.
    pub begin: Moment,
    /// The start, from the beginning of the first hour.
    pub start: Time,
    /// The system that the first air temperature was written in.
    pub system: UnitSystem,
}

impl Sky {
    /// The end of the last hour.
    pub fn end(&self) -> Time {
        self.hours.last().map_or_else(Time::default, |hour| hour.until)
    }

    /// A time of the weather on the clock of the start.
    pub fn moment(&self, time: Time) -> Moment {
        self.begin.later(time)
    }

    /// The hour that a time lies in.
    pub fn hour(&self, time: Time) -> &Hour {
        let next = self.hours.partition_point(|hour| hour.from <= time);
        &self.hours[next.saturating_sub(1)]
    }

    /// The hours that overlap a stretch of time.
    pub fn between(&self, from: Time, until: Time) -> impl Iterator<Item = &Hour> {
        let first = self.hours.partition_point(|hour| hour.until <= from);
        self.hours[first..].iter().take_while(move |hour| hour.from < until)
    }

    /// The times at which it might be applied: the start, and the beginning of every later hour.
    pub fn starts(&self) -> impl Iterator<Item = Time> {
        let later = self.hours.iter().map(|hour| hour.from).filter(|from| *from > self.start);
        std::iter::once(self.start).chain(later)
    }
}

/// A row in typed quantities, before it knows its neighbours.
struct Row {
    moment: Moment,
    air: ThermodynamicTemperature,
    surface: Option<ThermodynamicTemperature>,
    vapour: Pressure,
    rain_percent: Option<f64>,
    rain: Option<Length>,
    system: UnitSystem,
}

impl Weather {
    /// Reads the weather round a start.
    pub(super) fn read_sky(
        &self,
        start: Option<Moment>,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Option<Sky> {
        let (conditions_at, location_at) = (at.field("conditions"), at.field("location"));
        // What the edge noted of the place is not said again.
        let is_said = diagnostics.has_error_at(&location_at);
        let Some(conditions) = &self.conditions else {
            let detail = match self.location {
                Some(_) => "The weather at location was not fetched.",
                None => "Nothing is known of the weather.",
            };
            if !is_said {
                diagnostics.add_error(
                    &conditions_at,
                    FieldErrorCode::FieldMissing,
                    detail,
                    "Send conditions, the weather hour by hour.",
                );
            }
            return None;
        };
        if self.location.is_some() && !is_said {
            let detail = "The weather is given twice, by conditions and by location.";
            diagnostics.add_error(
                &location_at,
                FieldErrorCode::Contradiction,
                detail,
                "Send conditions or location, not both.",
            );
        }
        let rows: Vec<_> = conditions
            .iter()
            .enumerate()
            .map(|(index, row)| row.read(&conditions_at.item(index), diagnostics))
            .collect();
        let is_in_order = check_times(&rows, &conditions_at, diagnostics);
        // Whatever looks back or ahead takes the rows to rise.
        let rows: Vec<Row> = rows.into_iter().collect::<Option<_>>().filter(|_| is_in_order)?;
        let (first, last, start) = (rows.first()?, rows.last()?, start?);
        let begin = Moment { at: first.moment.at, offset: start.offset };
        let end = Moment { at: last.moment.at, offset: start.offset }.later(Time::new::<an_hour>(1.0));
        if start.at < begin.at || start.at >= end.at {
            let hint =
                format!("Send a start from {} to before {}, or weather that reaches it.", begin.write(), end.write());
            diagnostics.add_error(
                &FieldPath::BODY.field("start"),
                FieldErrorCode::OutOfRange,
                "The start lies outside the weather.",
                hint,
            );
        }
        let system = first.system;
        let froms: Vec<_> = rows.iter().map(|row| row.moment.since(begin.at)).collect();
        let until = |index: usize| froms.get(index + 1).copied().unwrap_or(froms[index] + Time::new::<an_hour>(1.0));
        let surfaces: Vec<_> = (0..rows.len()).map(|index| slab(&rows, &froms, index, begin)).collect();
        let hours: Vec<_> = rows
            .into_iter()
            .enumerate()
            .map(|(index, row)| {
                let pascals = row.vapour.get::<pascal>();
                let frost = Some(frost_point(pascals)).filter(|celsius| *celsius < 0.0);
                Hour {
                    index,
                    from: froms[index],
                    until: until(index),
                    air: row.air,
                    surface: surfaces[index],
                    surface_is_assumed: row.surface.is_none(),
                    vapour: row.vapour,
                    dew_point: ThermodynamicTemperature::new::<degree_celsius>(dew_point(pascals)),
                    frost_point: frost.map(ThermodynamicTemperature::new::<degree_celsius>),
                    rain_percent: row.rain_percent,
                    rain: row.rain,
                }
            })
            .collect();
        let sky = Sky { hours, begin, start: start.since(begin.at), system };
        sky.note_assumed(&conditions_at, diagnostics);
        Some(sky)
    }
}

impl Sky {
    /// The first slab temperature that was assumed stands for all that were.
    fn note_assumed(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) {
        let from_start = self.hours.iter().filter(|hour| hour.until > self.start);
        if let Some(hour) = from_start.into_iter().find(|hour| hour.surface_is_assumed) {
            diagnostics.add_assumption(
                &at.item(hour.index).field("surface"),
                format_temperature_input(hour.surface, self.system),
                "The lowest air of the last 12 hours that were sent, at night 2 °C (3.6 °F) less; so for every hour without a measured \
                 slab.",
                &[Source::OwnChoice],
            );
        }
    }
}

/// A slab as it was measured, or as cold as the last hours allow, and colder under the night sky.
fn slab(rows: &[Row], froms: &[Time], index: usize, begin: Moment) -> ThermodynamicTemperature {
    if let Some(measured) = rows[index].surface {
        return measured;
    }
    let since = froms[index] - slab_memory();
    // A row that begins before that time still holds after it.
    let first = froms.partition_point(|from| *from <= since).saturating_sub(1);
    let lowest = rows[first..=index]
        .iter()
        .map(|row| row.air)
        .fold(rows[index].air, |low, air| if air < low { air } else { low });
    let (dusk, dawn) = NIGHT;
    let hour = begin.later(froms[index]).hour();
    if hour >= dusk || hour < dawn { lowest - night_drop() } else { lowest }
}

/// Rows must rise in time, lie close together, and be no more than two weeks; whether they are.
fn check_times(rows: &[Option<Row>], at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> bool {
    let moments: Vec<_> = rows.iter().map(|row| row.as_ref().map(|row| row.moment)).collect();
    let mut is_sound = true;
    for (index, pair) in moments.windows(2).enumerate() {
        // What lies round a row that cannot be read is not judged.
        let [Some(before), Some(moment)] = pair else { continue };
        let step = moment.since(before.at);
        let (code, detail, hint) = if moment.at == before.at {
            let detail = "The same instant as the row before, offsets considered.".to_owned();
            (FieldErrorCode::TimeOrder, detail, "Send each hour once.")
        } else if moment.at < before.at {
            let detail = "The row is earlier than the one before, offsets considered.".to_owned();
            (FieldErrorCode::TimeOrder, detail, "Send the rows in order of time.")
        } else if step > longest_gap() {
            let detail = format!("{} h lie between this row and the one before.", round(step.get::<an_hour>(), 2));
            (FieldErrorCode::TimeGap, detail, "Send a row for every hour; at most 3 h may lie between two.")
        } else {
            continue;
        };
        is_sound = false;
        diagnostics.add_error(&at.item(index + 1).field("time"), code, detail, hint);
    }
    let Some(first) = moments.iter().flatten().next() else { return false };
    let last_start = longest_weather() - Time::new::<an_hour>(1.0);
    let is_late = |moment: &Option<Moment>| moment.is_some_and(|moment| moment.since(first.at) > last_start);
    if let Some(index) = moments.iter().position(is_late) {
        is_sound = false;
        let detail = "The weather is longer than 14 days.";
        diagnostics.add_error(
            &at.item(index).field("time"),
            FieldErrorCode::OutOfRange,
            detail,
            "Send at most 14 days.",
        );
    }
    is_sound
}

impl HourlyConditions {
    fn read(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<Row> {
        let moment = Moment::read(&self.time, &at.field("time"), diagnostics);
        let air = diagnostics.parse(&at.field("air"), &self.air);
        let sent_dew_point = diagnostics.parse_optional(&at.field("dew_point"), self.dew_point.as_ref());
        let surface = diagnostics.parse_optional(&at.field("surface"), self.surface.as_ref());
        let rain = diagnostics.parse_optional(&at.field("precipitation"), self.precipitation.as_ref());
        if self.relative_humidity_percent.is_none() && self.dew_point.is_none() {
            diagnostics.add_error(
                &at.field("relative_humidity_percent"),
                FieldErrorCode::FieldMissing,
                "Nothing is known of the water in the air.",
                "Send relative_humidity_percent or dew_point.",
            );
        }
        let air = air?;
        let celsius = air.si.get::<degree_celsius>();
        let sent = sent_dew_point.map(|dew| dew.get::<degree_celsius>());
        let is_over_air = sent.is_some_and(|dew| dew > celsius + DEW_POINT_OVER_AIR);
        if is_over_air {
            let detail = "The dew point lies above the air.";
            let hint = "Send the dew point of the same hour as air, at most as high.";
            diagnostics.add_error(&at.field("dew_point"), FieldErrorCode::Contradiction, detail, hint);
        }
        let pascals = match (self.relative_humidity_percent, sent) {
            (Some(percent), _) => vapour_pressure(celsius, percent.clamp(0.5, 100.0) / 100.0),
            (None, dew) => saturation_pressure(dew?.min(celsius)),
        };
        if !is_over_air
            && self.relative_humidity_percent.is_some()
            && sent.is_some_and(|sent| (sent - dew_point(pascals)).abs() > DEW_POINTS_APART)
        {
            let dew = ThermodynamicTemperature::new::<degree_celsius>(dew_point(pascals));
            let detail = format!("At this humidity the dew point is {}.", format_temperature(dew, air.system));
            let hint = "Send relative_humidity_percent or dew_point, not both.";
            diagnostics.add_error(&at.field("dew_point"), FieldErrorCode::Contradiction, detail, hint);
        }
        Some(Row {
            moment: moment?,
            air: air.si,
            surface,
            vapour: Pressure::new::<pascal>(pascals),
            rain_percent: self.precipitation_probability_percent,
            rain: rain.map(|fall| fall.max(Length::new::<millimeter>(0.0))),
            system: air.system,
        })
    }
}
