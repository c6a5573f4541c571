//! Quantities of fields in both systems of units: units, ranges and defaults, as texts that a request takes.

use serde_json::Value;

use super::shape::TextBySystem;
use crate::quantity::dimension::{
    DepthPerDay, InductancePerLength, Length, Magnitude, Share, Speed, Temperature, TemperatureDifference, Time, Unit,
    Volume, WireSize, shown,
};
use crate::quantity::{Dimension, UnitSystem, parse};

/// Significant digits of a bound that is converted.
const BOUND_DIGITS: i32 = 3;
/// Significant digits of a default that is converted. One that needs more stays as it is.
const DEFAULT_DIGITS: i32 = 6;

/// What a form says of a quantity.
pub struct QuantityTexts {
    /// The units that are taken, the usual one of each system first.
    pub units: Vec<&'static str>,
    /// The usual unit of each system.
    pub usual_unit: TextBySystem,
    /// A text that is taken.
    pub example: TextBySystem,
    /// The least.
    pub least: TextBySystem,
    /// The greatest.
    pub greatest: TextBySystem,
    /// The default.
    pub default: Option<TextBySystem>,
}

/// What the schema of a quantity says, and a default; `None` for a schema of no dimension, which a test rules out.
pub fn texts_of(schema: &Value, default: Option<&str>) -> Option<QuantityTexts> {
    texts::<Length>(schema, default)
        .or_else(|| texts::<Temperature>(schema, default))
        .or_else(|| texts::<Speed>(schema, default))
        .or_else(|| texts::<Time>(schema, default))
        .or_else(|| texts::<Volume>(schema, default))
        .or_else(|| texts::<WireSize>(schema, default))
        .or_else(|| texts::<InductancePerLength>(schema, default))
        .or_else(|| texts::<DepthPerDay>(schema, default))
        .or_else(|| texts::<Share>(schema, default))
        .or_else(|| texts::<TemperatureDifference>(schema, default))
}

/// The same, where the units of the schema are those of a dimension.
fn texts<D: Dimension>(schema: &Value, default: Option<&str>) -> Option<QuantityTexts> {
    let spellings = D::UNITS.iter().map(|unit| unit.spellings[0]);
    if !spellings.eq(schema["x-units"].as_array()?.iter().filter_map(Value::as_str)) {
        return None;
    }
    let examples = schema["examples"].as_array()?;
    let [us_example, metric_example] = [examples.first()?.as_str()?, examples.get(1)?.as_str()?];
    // What belongs to no system is written alike in both.
    let has_systems = D::UNITS.iter().any(|unit| unit.system != D::UNITS[0].system);
    let metric_example = if has_systems { metric_example } else { us_example };
    let usual = Usual::<D> { us: unit_of::<D>(us_example)?, metric: unit_of::<D>(metric_example)?, has_systems };
    let mut units = vec![shown(usual.us.spellings[0])];
    for unit in std::iter::once(usual.metric).chain(D::UNITS) {
        let symbol = shown(unit.spellings[0]);
        if !units.contains(&symbol) {
            units.push(symbol);
        }
    }
    Some(QuantityTexts {
        units,
        usual_unit: both(shown(usual.us.spellings[0]), shown(usual.metric.spellings[0])),
        example: both(us_example, metric_example),
        least: usual.bound(schema["x-minimum"].as_str()?, f64::ceil)?,
        greatest: usual.bound(schema["x-maximum"].as_str()?, f64::floor)?,
        default: default.and_then(|default| usual.exact(default)),
    })
}

fn both(us: &str, metric: &str) -> TextBySystem {
    TextBySystem { us: us.to_owned(), metric: metric.to_owned() }
}

/// The unit that an example is written in.
fn unit_of<D: Dimension>(example: &str) -> Option<&'static Unit<D::Si>> {
    let unit = example.trim_start_matches(|letter: char| letter.is_ascii_digit() || " ./-".contains(letter));
    let unit = unit.to_lowercase();
    D::UNITS.iter().find(|known| known.spellings.contains(&unit.as_str()))
}

/// The usual unit of each system.
struct Usual<D: Dimension> {
    us: &'static Unit<D::Si>,
    metric: &'static Unit<D::Si>,
    has_systems: bool,
}

impl<D: Dimension> Usual<D> {
    /// A bound in both systems: as it is in its own, rounded inwards in the other.
    fn bound(&self, text: &str, inwards: fn(f64) -> f64) -> Option<TextBySystem> {
        self.in_both(text, |value, unit| {
            let number = number_in::<D>(value, unit);
            // Of a greatest number the largest unit that leaves no fraction of one: 37.8 l, not 37800 ml.
            let larger = D::UNITS.iter().filter(|other| other.system == unit.system && !other.whole);
            let larger = larger.map(|other| (number_in::<D>(value, other), other));
            let (number, unit) = if number.abs() < 1000.0 {
                (number, unit)
            } else {
                let shorter = larger.filter(|(other, _)| (1.0..number.abs()).contains(&other.abs()));
                shorter.min_by(|a, b| a.0.abs().total_cmp(&b.0.abs())).unwrap_or((number, unit))
            };
            Some(written::<D>(rounded(number, BOUND_DIGITS, inwards), unit))
        })
    }

    /// A default in both systems: as it is where the other system has no short number for it.
    fn exact(&self, text: &str) -> Option<TextBySystem> {
        self.in_both(text, |value, unit| {
            let number = number_in::<D>(value, unit);
            let short = rounded(number, DEFAULT_DIGITS, f64::round);
            ((short - number).abs() <= 1e-9 * number.abs()).then(|| written::<D>(short, unit))
        })
    }

    fn in_both(
        &self,
        text: &str,
        convert: impl Fn(D::Si, &'static Unit<D::Si>) -> Option<String>,
    ) -> Option<TextBySystem> {
        let parsed = parse::<D>(text).ok()?;
        let convert = |unit: &'static Unit<D::Si>| {
            let other = (!unit.whole).then(|| convert(parsed.si, unit)).flatten();
            other.unwrap_or_else(|| text.to_owned())
        };
        Some(match parsed.system {
            _ if !self.has_systems => both(text, text),
            UnitSystem::UsCustomary => both(text, &convert(self.metric)),
            UnitSystem::Metric => both(&convert(self.us), text),
        })
    }
}

/// A quantity as a number of a unit. Units are straight lines, but for gauges, which nothing is converted into.
fn number_in<D: Dimension>(value: D::Si, unit: &Unit<D::Si>) -> f64 {
    let zero = (unit.to_si)(0.0).magnitude();
    (value.magnitude() - zero) / ((unit.to_si)(1.0).magnitude() - zero)
}

/// A number of so many significant digits. What is a binary fraction off one of them is that one.
fn rounded(number: f64, digits: i32, round: fn(f64) -> f64) -> f64 {
    if number.abs() < 1e-9 {
        return 0.0;
    }
    let scale = 10_f64.powi(digits - 1 - number.abs().log10().floor() as i32);
    let scaled = number * scale;
    let nearest = scaled.round();
    (if (scaled - nearest).abs() < 1e-6 { nearest } else { round(scaled) }) / scale
}

fn written<D: Dimension>(number: f64, unit: &Unit<D::Si>) -> String {
    format!("{number} {}", shown(unit.spellings[0]))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calculation::input::CartridgeVolume;
    use crate::calculation::input::{
        ConductorSize, LeafGroundGap, OpeningTime, OpeningWidth, PourTemperature, SlotWidth,
    };
    use utoipa::PartialSchema;

    fn of<F: PartialSchema>(default: &str) -> QuantityTexts {
        texts_of(&serde_json::to_value(F::schema()).unwrap(), Some(default)).unwrap()
    }

    fn pair(texts: &TextBySystem) -> [&str; 2] {
        [&texts.us, &texts.metric]
    }

    #[test]
    fn bounds_stay_in_their_own_system_and_are_rounded_inwards_in_the_other() {
        let width = of::<OpeningWidth>("24 ft");
        assert_eq!(pair(&width.least), ["3 ft", "0.915 m"]);
        assert_eq!(pair(&width.greatest), ["200 ft", "60.9 m"]);
        assert_eq!(pair(&of::<SlotWidth>("3/16 in").greatest), ["2 in", "50.8 mm"]);
        assert_eq!(pair(&of::<LeafGroundGap>("4 in").least), ["0 in", "0 mm"]);
        assert_eq!(pair(&of::<PourTemperature>("387 °F").least), ["104 °F", "40 °C"]);
        assert_eq!(pair(&of::<CartridgeVolume>("29 fl oz").greatest), ["10 gal", "37.8 l"]);
        assert_eq!(pair(&of::<ConductorSize>("14 AWG").least), ["24 AWG", "0.205 mm2"]);
    }

    #[test]
    fn units_begin_with_the_usual_one_of_each_system() {
        let gap = of::<LeafGroundGap>("4 in");
        assert_eq!((&gap.units[..3], pair(&gap.usual_unit)), (&["in", "mm", "ft"][..], ["in", "mm"]));
        let time = of::<OpeningTime>("12 s");
        assert_eq!((time.units.as_slice(), pair(&time.usual_unit)), (&["s", "h", "min", "d"][..], ["s", "s"]));
    }

    #[test]
    fn defaults_are_converted_where_nothing_is_lost() {
        let default = |texts: QuantityTexts| texts.default.unwrap();
        assert_eq!(pair(&default(of::<OpeningWidth>("50 ft"))), ["50 ft", "15.24 m"]);
        assert_eq!(pair(&default(of::<SlotWidth>("3/16 in"))), ["3/16 in", "4.7625 mm"]);
        assert_eq!(pair(&default(of::<PourTemperature>("50 °C"))), ["122 °F", "50 °C"]);
        assert_eq!(pair(&default(of::<ConductorSize>("14 AWG"))), ["14 AWG", "14 AWG"]);
    }
}
