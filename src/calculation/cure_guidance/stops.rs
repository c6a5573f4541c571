//! What of the weather stops the work at a time: looked for at the start, and at every other hour for the windows.

use uom::si::f64::{TemperatureInterval, ThermodynamicTemperature, Time};
use uom::si::thermodynamic_temperature::degree_celsius;

use super::job::Job;
use super::product::Product;
use super::sky::{Hour, Sky};
use crate::calculation::report::{FieldPath, Finding};
use crate::practice::cure::{RAIN_CARE_PERCENT, RAIN_STOPS_PERCENT, dew_point_margin, freezing, rain_stops};
use crate::practice::findings::{FindingCode, Level};
use crate::practice::sealants::SealantKind;
use crate::quantity::UnitSystem;
use crate::quantity::format::{format_detail_length, format_temperature, format_temperature_difference};

/// A stop of the weather, by the row that it stands in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stop {
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

/// Every stop of the weather for a product that is applied at a time, one of each sort.
pub fn stops(product: &Product, at: Time, sky: &Sky) -> Vec<Stop> {
    let hour = sky.hour(at);
    let least = product.sheet.least_temperature();
    let mut stops = Vec::new();
    if hour.surface <= freezing() {
        stops.push(Stop::Frozen(hour.index));
    } else if hour.surface < least || hour.air < least {
        stops.push(Stop::TooCold(hour.index));
    }
    let is_over = |maximum: ThermodynamicTemperature| hour.surface > maximum || hour.air > maximum;
    if product.sheet.maximum.is_some_and(is_over) {
        stops.push(Stop::TooHot(hour.index));
    }
    if hour.margin() < dew_point_margin() {
        stops.push(Stop::NearDewPoint(hour.index));
    }
    let safe = product.safe(at, sky).unwrap_or_else(|| sky.end());
    let rain = sky.between(at, safe).find(|hour| hour.is_rain_likely());
    stops.extend(rain.map(|hour| Stop::Rain(hour.index)));
    // A sheet's own limit says nothing of what comes after; the usual one is "and rising".
    let is_cold_already = hour.air < least;
    if product.sheet.minimum.is_none() && !is_cold_already && product.kind != SealantKind::HotApplied {
        let cold = sky.between(at, safe).find(|hour| hour.air < least);
        stops.extend(cold.map(|hour| Stop::ColdBeforeSkin(hour.index)));
    }
    stops
}

impl Hour {
    /// Whether so much rain or snow is likely or due that it stops the work.
    fn is_rain_likely(&self) -> bool {
        self.rain_percent.is_some_and(|percent| percent >= RAIN_STOPS_PERCENT)
            || self.rain.is_some_and(|fall| fall >= rain_stops())
    }

    /// The rain or snow of this hour in a word; `None` where the weather says nothing of it.
    pub fn rain_said(&self) -> Option<&'static str> {
        if self.is_rain_likely() {
            return Some("likely");
        }
        let is_possible = self.rain_percent.is_some_and(|percent| percent >= RAIN_CARE_PERCENT);
        let is_known = self.rain_percent.is_some() || self.rain.is_some();
        is_known.then_some(if is_possible { "possible" } else { "unlikely" })
    }
}

/// Whether a start at a time passes, and a skin forms before the forecast ends.
pub fn passes(product: &Product, at: Time, sky: &Sky) -> bool {
    product.safe(at, sky).is_some() && stops(product, at, sky).is_empty()
}

impl Stop {
    /// The stop as a statement.
    pub fn finding(self, job: &Job, product: &Product) -> Finding {
        let (Self::Frozen(index)
        | Self::TooCold(index)
        | Self::TooHot(index)
        | Self::NearDewPoint(index)
        | Self::Rain(index)
        | Self::ColdBeforeSkin(index)) = self;
        let (hour, system) = (&job.sky.hours[index], job.sky.system);
        let row = |field| FieldPath::BODY.field("weather").field("conditions").item(index).field(field).pointer();
        let say = |temperature| format_temperature(temperature, system);
        // What began before the start is met at the start.
        let when = job.sky.moment(hour.from.max(job.sky.start)).say();
        let slab = if hour.surface_is_assumed {
            format!("The slab is taken to be at {}, as cold as the air of the hours before left it", say(hour.surface))
        } else {
            format!("The slab is at {}", say(hour.surface))
        };
        let measure = if hour.surface_is_assumed { " Measure the slab temperature before you decide." } else { "" };
        let least = say(product.sheet.least_temperature());
        let until = product.when_safe();
        let (code, about, message) = match self {
            Self::Frozen(_) => (
                FindingCode::SlabFrozen,
                row("surface"),
                format!(
                    "{slab}: frozen, and nothing bonds to it. Warm air does not make a warm slab. Wait until the slab itself is at {least} and rising.{measure}"
                ),
            ),
            Self::TooCold(_) if hour.surface < product.sheet.least_temperature() => (
                FindingCode::BelowMinimumTemperature,
                row("surface"),
                format!(
                    "{slab}, below the {least} that this sealant asks for. Wait until slab and air are there and rising.{measure}"
                ),
            ),
            Self::TooCold(_) => (
                FindingCode::BelowMinimumTemperature,
                row("air"),
                format!(
                    "The air is at {}, below the {least} that this sealant asks for. Wait until slab and air are there and rising.",
                    say(hour.air)
                ),
            ),
            Self::TooHot(_) => {
                let (what, field, hottest) = if hour.air > hour.surface {
                    ("The air", "air", hour.air)
                } else {
                    ("The slab", "surface", hour.surface)
                };
                let most = product.sheet.maximum.map(say).unwrap_or_default();
                (
                    FindingCode::AboveMaximumTemperature,
                    row(field),
                    format!(
                        "{what} is at {}, above the {most} that the sheet allows. Work in the cooler hours, out of the sun.",
                        say(hottest)
                    ),
                )
            }
            Self::NearDewPoint(_) => (FindingCode::NearDewPoint, row("surface"), condensation(hour, system)),
            Self::Rain(_) => (
                FindingCode::RainBeforeSkin,
                row("precipitation_probability_percent"),
                rain(hour, &when, until, system),
            ),
            Self::ColdBeforeSkin(_) => (
                FindingCode::ColdBeforeSkin,
                row("air"),
                format!(
                    "At {when} the air falls to {}, below the {least} that is asked for, before {until}. Start earlier on a warmer day, or take a sealant that sets faster.",
                    say(hour.air)
                ),
            ),
        };
        let finding = Finding::at(code, Level::Stop, about, message);
        match self {
            Self::NearDewPoint(_) => finding
                .figure("surface", hour.surface.get::<degree_celsius>(), "celsius")
                .figure("dew_point", hour.dew_point.get::<degree_celsius>(), "celsius")
                .figure("margin", hour.margin().get::<uom::si::temperature_interval::degree_celsius>(), "celsius"),
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
fn condensation(hour: &Hour, system: UnitSystem) -> String {
    let (margin, zero) = (hour.margin(), TemperatureInterval::default());
    let say = |difference| format_temperature_difference(difference, system);
    let (how, what) = if say(margin) == say(zero) {
        ("at".to_owned(), "water condenses")
    } else if margin < zero {
        (format!("{} below", say(zero - margin)), "water condenses")
    } else {
        (format!("only {} above", say(margin)), "water may condense")
    };
    let taken = if hour.surface_is_assumed { "is taken to be" } else { "is" };
    format!(
        "The slab {taken} at {}, {how} the dew point of {}: {what} on it. Wait until it is {} above, or dry and warm the slot.",
        format_temperature(hour.surface, system),
        format_temperature(hour.dew_point, system),
        format_temperature_difference(dew_point_margin(), system),
    )
}

fn rain(hour: &Hour, when: &str, until: &str, system: UnitSystem) -> String {
    let what = match (hour.rain_percent, hour.rain) {
        (Some(percent), _) if percent >= RAIN_STOPS_PERCENT => format!("rain or snow is likely ({percent:.0} %)"),
        (_, Some(fall)) => format!("{} of rain or snow is due", format_detail_length(fall, system)),
        _ => "rain or snow is due".to_owned(),
    };
    format!("At {when} {what}, before {until}. Start in a dry window, or take a sealant that sets before it.")
}
