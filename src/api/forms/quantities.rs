//! Quantities of fields in both systems of units: units, ranges and defaults, as texts that a request takes.

use serde_json::Value;

use super::shape::TextBySystem;
use crate::quantity::dimension::{
    DepthPerDay, InductancePerLength, Length, Magnitude, Share, Speed, Temperature, TemperatureDifference, Time, Unit,
    Volume, WireSize, shown,
};
use crate::quantity::{Dimension, UnitSystem, parse};

/// Numbers below this are said in a smaller unit, where one makes at least ten of it.
const SMALL: f64 = 0.1;

/// A text that is taken, in US customary and in metric units, where that of the schema would not be usual.
type OwnExample = Option<[&'static str; 2]>;

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
pub fn texts_of(schema: &Value, own_example: OwnExample, default: Option<&str>) -> Option<QuantityTexts> {
    texts::<Length>(schema, own_example, default)
        .or_else(|| texts::<Temperature>(schema, own_example, default))
        .or_else(|| texts::<Speed>(schema, own_example, default))
        .or_else(|| texts::<Time>(schema, own_example, default))
        .or_else(|| texts::<Volume>(schema, own_example, default))
        .or_else(|| texts::<WireSize>(schema, own_example, default))
        .or_else(|| texts::<InductancePerLength>(schema, own_example, default))
        .or_else(|| texts::<DepthPerDay>(schema, own_example, default))
        .or_else(|| texts::<Share>(schema, own_example, default))
        .or_else(|| texts::<TemperatureDifference>(schema, own_example, default))
}

/// The same, where the units of the schema are those of a dimension.
fn texts<D: Dimension>(schema: &Value, own_example: OwnExample, default: Option<&str>) -> Option<QuantityTexts> {
    let spellings = D::UNITS.iter().map(|unit| unit.spellings[0]);
    if !spellings.eq(schema["x-units"].as_array()?.iter().filter_map(Value::as_str)) {
        return None;
    }
    let of_schema = |index: usize| schema["examples"].get(index).and_then(Value::as_str);
    let [us_example, metric_example] = match own_example {
        Some(own) => own,
        None => [of_schema(0)?, of_schema(1)?],
    };
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
        default: default.and_then(|default| usual.said(default)),
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
            // Of a greatest number the largest unit that leaves no fraction of one: 37.8 l, not 37800 ml. Of a least one a unit
            // that leaves no small fraction: 25.4 mm, not 0.0254 m.
            let others = D::UNITS.iter().filter(|other| other.system == unit.system && !other.whole);
            let others = others.map(|other| (number_in::<D>(value, other), other));
            let fitting = match number.abs() {
                large if large >= 1000.0 => Some(1.0..large),
                small if small > 0.0 && small < SMALL => Some(10.0..1000.0),
                _ => None,
            };
            let fitting = fitting.and_then(|range| {
                let other = others.filter(|(other, _)| range.contains(&other.abs()));
                other.min_by(|a, b| a.0.abs().total_cmp(&b.0.abs()))
            });
            let (number, unit) = fitting.unwrap_or((number, unit));
            Some(written::<D>(rounded(number, bound_digits(number), inwards), unit))
        })
    }

    /// A default in both systems: as it is in its own, and in the other as the words of the service round it. A temperature is rounded
    /// upwards: what is converted is the least at which a sealant may be applied.
    fn said(&self, text: &str) -> Option<TextBySystem> {
        self.in_both(text, |value, unit| {
            let scale = 10_f64.powi(decimals_of(unit.spellings[0])?);
            let number = number_in::<D>(value, unit) * scale;
            let number = if unit.spellings[0].starts_with('°') { (number - 1e-6).ceil() } else { number.round() };
            Some(written::<D>(number / scale, unit))
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

/// Significant digits of a bound that is converted: three, and fewer of what is small for its unit.
fn bound_digits(number: f64) -> i32 {
    match number.abs() {
        small if small < 0.01 => 1,
        small if small < SMALL => 2,
        _ => 3,
    }
}

/// The decimals of a default that is converted into a unit, as findings and drawings round it; `None` where it stays as it is.
fn decimals_of(unit: &str) -> Option<i32> {
    match unit {
        "m" | "uh/m" => Some(2),
        "mm" | "m/min" | "°c" | "°f" => Some(1),
        "ml" => Some(0),
        _ => None,
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
    use crate::calculation::input::{
        CartridgeVolume, ConductorSize, CureTime, FirstDayDepth, LeafGroundGap, OpeningTime, OpeningWidth,
        PourTemperature, RodSpacing, SlotWidth, WorkSpeed,
    };
    use utoipa::PartialSchema;

    fn of<F: PartialSchema>(default: &str) -> QuantityTexts {
        texts_of(&serde_json::to_value(F::schema()).unwrap(), None, Some(default)).unwrap()
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
    fn small_bounds_are_said_in_a_smaller_unit_or_with_fewer_digits() {
        assert_eq!(pair(&of::<RodSpacing>("2 ft").least), ["1 in", "25.4 mm"]);
        assert_eq!(pair(&of::<WorkSpeed>("8 ft/min").least), ["0.1 ft/min", "0.031 m/min"]);
        assert_eq!(pair(&of::<FirstDayDepth>("3 mm/day").least), ["0.008 in/day", "0.2 mm/day"]);
    }

    #[test]
    fn an_example_of_its_own_sets_the_usual_unit() {
        let schema = serde_json::to_value(CureTime::schema()).unwrap();
        let texts = texts_of(&schema, Some(["3 d", "3 d"]), None).unwrap();
        assert_eq!((pair(&texts.example), pair(&texts.usual_unit)), (["3 d", "3 d"], ["d", "d"]));
        assert_eq!(texts.units[0], "d");
    }

    #[test]
    fn defaults_are_rounded_in_the_other_system_as_people_say_them() {
        let default = |texts: QuantityTexts| texts.default.unwrap();
        assert_eq!(pair(&default(of::<OpeningWidth>("50 ft"))), ["50 ft", "15.24 m"]);
        assert_eq!(pair(&default(of::<RodSpacing>("3 ft"))), ["3 ft", "0.91 m"]);
        assert_eq!(pair(&default(of::<SlotWidth>("3/16 in"))), ["3/16 in", "4.8 mm"]);
        assert_eq!(pair(&default(of::<WorkSpeed>("8 ft/min"))), ["8 ft/min", "2.4 m/min"]);
        assert_eq!(pair(&default(of::<CartridgeVolume>("29 fl oz"))), ["29 fl oz", "858 ml"]);
        assert_eq!(pair(&default(of::<PourTemperature>("50 °C"))), ["122 °F", "50 °C"]);
        assert_eq!(pair(&default(of::<ConductorSize>("14 AWG"))), ["14 AWG", "14 AWG"]);
    }
}
