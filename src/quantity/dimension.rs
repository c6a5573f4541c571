//! The dimensions of request fields and the units that each is written in.
//!
//! A dimension is a marker type: it names the typed quantity that its texts become and lists its units. The conversion
//! factors are those of the units library; only wire sizes, which no units library holds, convert by a formula here.

use uom::si::{area, f64 as si, length, thermodynamic_temperature as temperature, time, velocity, volume};

use crate::physics::conductor;

/// The system of units that a text was written in. Tidy sizes follow it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UnitSystem {
    /// Feet, inches, degrees Fahrenheit, US fluid ounces.
    UsCustomary,
    /// Metres, millimetres, degrees Celsius, millilitres.
    Metric,
}

/// One unit: how it is spelled, the system that it belongs to, and its way to the typed quantity.
pub struct Unit<Si> {
    /// Spellings in lower case, the preferred one first.
    pub spellings: &'static [&'static str],
    /// The system that a person who writes this unit works in.
    pub system: UnitSystem,
    /// Whether only whole numbers make sense (wire gauges).
    pub whole: bool,
    /// From a number of this unit to the typed quantity.
    pub to_si: fn(f64) -> Si,
}

/// The plain number behind a typed quantity, in SI base units: for comparing, not for computing.
pub trait Magnitude {
    /// The number.
    fn magnitude(self) -> f64;
}

impl<D, U> Magnitude for uom::si::Quantity<D, U, f64>
where
    D: uom::si::Dimension + ?Sized,
    U: uom::si::Units<f64> + ?Sized,
{
    fn magnitude(self) -> f64 {
        self.value
    }
}

/// A dimension: the typed quantity of its texts, and its units.
pub trait Dimension: Sized + 'static {
    /// The typed quantity that a text becomes.
    type Si: Copy + Magnitude + std::fmt::Debug + Send + Sync + 'static;
    /// What it is: `length`, `wire_size`.
    const CODE: &'static str;
    /// Two texts that are right, one in each system where there are two.
    const EXAMPLES: [&'static str; 2];
    /// The units, smallest set that the trade writes.
    const UNITS: &'static [Unit<Self::Si>];
    /// Pairs of units that may stand in one text, as feet and inches.
    const COMPOUNDS: &'static [Compound] = &[];
    /// Whether a hyphen may join number and unit: `24-ft`. Not where it may be a minus that is written behind.
    const MAY_BE_HYPHENATED: bool = true;
    /// Spellings that are not read, for they have other meanings as well, each with the unit that they most likely stand for in a
    /// field of this dimension; by preferred spelling.
    const LIKELY: &'static [(&'static str, &'static str)] = &[];
    /// The sum of two parts of a compound text.
    fn sum(larger: Self::Si, _smaller: Self::Si) -> Self::Si {
        larger
    }
}

/// A larger and a smaller unit of one text; by preferred spelling.
pub struct Compound {
    /// The unit of the first number.
    pub larger: &'static str,
    /// The unit of the second.
    pub smaller: &'static str,
    /// How many of the smaller make one of the larger.
    pub ratio: f64,
    /// Whether there may be as many of the smaller as make one of the larger, or more: `5 ft 14 in`.
    pub may_exceed: bool,
    /// Where the second number needs no unit.
    pub bare: BareSmaller,
}

/// When the smaller number of a compound text needs no unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BareSmaller {
    /// It always needs one.
    Never,
    /// Where it is less than one of the larger: `5 ft 6`.
    AnyNumber,
    /// Where it is less than one of the larger, and of two digits: `7m20`. One digit may be a decimal.
    TwoDigits,
}

/// A unit as people write it in a suggestion; spellings are in lower case.
pub fn shown(spelling: &str) -> &str {
    match spelling {
        "°f" => "°F",
        "°c" => "°C",
        "k" => "K",
        "awg" => "AWG",
        "uh/ft" => "uH/ft",
        "uh/m" => "uH/m",
        other => other,
    }
}

/// Declares the unit table of a dimension, a line per unit.
macro_rules! units {
    ($($system:ident $($spelling:literal)|+ => $to_si:expr;)+) => {
        &[$(Unit { spellings: &[$($spelling),+], system: UnitSystem::$system, whole: false, to_si: $to_si }),+]
    };
}

/// A length: plan dimensions, depths, widths, diameters. In metres.
pub struct Length;

impl Dimension for Length {
    type Si = si::Length;
    const CODE: &'static str = "length";
    const EXAMPLES: [&'static str; 2] = ["24 ft", "7.2 m"];
    const UNITS: &'static [Unit<Self::Si>] = units! {
        UsCustomary "ft" | "'" | "ft." | "foot" | "feet" => si::Length::new::<length::foot>;
        UsCustomary "in" | "\"" | "''" | "in." | "inch" | "inches" => si::Length::new::<length::inch>;
        UsCustomary "yd" | "yard" | "yards" => si::Length::new::<length::yard>;
        Metric "m" | "metre" | "metres" | "meter" | "meters" => si::Length::new::<length::meter>;
        Metric "cm" => si::Length::new::<length::centimeter>;
        Metric "mm" => si::Length::new::<length::millimeter>;
    };
    const COMPOUNDS: &'static [Compound] = &[
        Compound { larger: "ft", smaller: "in", ratio: 12.0, may_exceed: true, bare: BareSmaller::AnyNumber },
        Compound { larger: "m", smaller: "cm", ratio: 100.0, may_exceed: false, bare: BareSmaller::TwoDigits },
        Compound { larger: "m", smaller: "mm", ratio: 1000.0, may_exceed: false, bare: BareSmaller::Never },
    ];
    const LIKELY: &'static [(&'static str, &'static str)] = &[("f", "ft"), ("y", "yd")];

    fn sum(larger: Self::Si, smaller: Self::Si) -> Self::Si {
        larger + smaller
    }
}

/// A temperature on a scale with a zero point.
pub struct Temperature;

impl Dimension for Temperature {
    type Si = si::ThermodynamicTemperature;
    const CODE: &'static str = "temperature";
    const EXAMPLES: [&'static str; 2] = ["23 °F", "-5 °C"];
    const UNITS: &'static [Unit<Self::Si>] = units! {
        UsCustomary "°f" | "f" | "degf" | "deg f" | "fahrenheit" => si::ThermodynamicTemperature::new::<temperature::degree_fahrenheit>;
        Metric "°c" | "c" | "degc" | "deg c" | "celsius" => si::ThermodynamicTemperature::new::<temperature::degree_celsius>;
        Metric "k" | "kelvin" | "°k" => si::ThermodynamicTemperature::new::<temperature::kelvin>;
    };
    const MAY_BE_HYPHENATED: bool = false;
}

/// A difference of temperatures, such as a margin above the dew point: no zero point, so 1 °C is 1.8 °F.
pub struct TemperatureDifference;

impl Dimension for TemperatureDifference {
    type Si = si::TemperatureInterval;
    const CODE: &'static str = "temperature_difference";
    const EXAMPLES: [&'static str; 2] = ["5 °F", "3 °C"];
    const UNITS: &'static [Unit<Self::Si>] = units! {
        UsCustomary "°f" | "f" | "degf" | "deg f" => si::TemperatureInterval::new::<uom::si::temperature_interval::degree_fahrenheit>;
        Metric "°c" | "c" | "degc" | "deg c" => si::TemperatureInterval::new::<uom::si::temperature_interval::degree_celsius>;
        Metric "k" | "kelvin" | "°k" => si::TemperatureInterval::new::<uom::si::temperature_interval::kelvin>;
    };
    const MAY_BE_HYPHENATED: bool = false;
}

/// A speed.
pub struct Speed;

impl Dimension for Speed {
    type Si = si::Velocity;
    const CODE: &'static str = "speed";
    const EXAMPLES: [&'static str; 2] = ["10 mph", "15 km/h"];
    const UNITS: &'static [Unit<Self::Si>] = units! {
        UsCustomary "mph" | "mi/h" => si::Velocity::new::<velocity::mile_per_hour>;
        UsCustomary "ft/s" => si::Velocity::new::<velocity::foot_per_second>;
        UsCustomary "ft/min" => |n| si::Length::new::<length::foot>(n) / si::Time::new::<time::minute>(1.0);
        UsCustomary "ft/h" => |n| si::Length::new::<length::foot>(n) / si::Time::new::<time::hour>(1.0);
        Metric "km/h" | "kmh" | "kph" => si::Velocity::new::<velocity::kilometer_per_hour>;
        Metric "m/s" => si::Velocity::new::<velocity::meter_per_second>;
        Metric "m/min" => |n| si::Length::new::<length::meter>(n) / si::Time::new::<time::minute>(1.0);
        Metric "m/h" => |n| si::Length::new::<length::meter>(n) / si::Time::new::<time::hour>(1.0);
    };
    const LIKELY: &'static [(&'static str, &'static str)] =
        &[("km", "km/h"), ("mi", "mph"), ("mps", "m/s"), ("m.p.h", "mph"), ("m.p.h.", "mph")];
}

/// A volume of sealant. US fluid ounces, quarts and gallons.
pub struct Volume;

impl Dimension for Volume {
    type Si = si::Volume;
    const CODE: &'static str = "volume";
    const EXAMPLES: [&'static str; 2] = ["29 fl oz", "850 ml"];
    const UNITS: &'static [Unit<Self::Si>] = units! {
        UsCustomary "fl oz" | "floz" | "fl_oz" | "fl. oz" | "fl. oz." | "oz fl" => si::Volume::new::<volume::fluid_ounce>;
        UsCustomary "qt" | "quart" | "quarts" => si::Volume::new::<volume::quart_liquid>;
        UsCustomary "gal" | "gallon" | "gallons" => si::Volume::new::<volume::gallon>;
        UsCustomary "in3" | "in³" | "cu in" | "in cu" => si::Volume::new::<volume::cubic_inch>;
        Metric "ml" | "millilitre" | "milliliter" => si::Volume::new::<volume::milliliter>;
        Metric "l" | "litre" | "liter" | "litres" | "liters" => si::Volume::new::<volume::liter>;
    };
    // An ounce is a weight as well.
    const LIKELY: &'static [(&'static str, &'static str)] =
        &[("oz", "fl oz"), ("cc", "ml"), ("cm3", "ml"), ("cm³", "ml"), ("cu cm", "ml")];
}

/// A duration. The system follows no unit, so it is metric by convention.
pub struct Time;

impl Dimension for Time {
    type Si = si::Time;
    const CODE: &'static str = "duration";
    const EXAMPLES: [&'static str; 2] = ["3 h", "15 min"];
    const UNITS: &'static [Unit<Self::Si>] = units! {
        Metric "h" | "hr" | "hrs" | "hour" | "hours" => si::Time::new::<time::hour>;
        Metric "min" | "mins" | "minute" | "minutes" => si::Time::new::<time::minute>;
        Metric "s" | "sec" | "second" | "seconds" => si::Time::new::<time::second>;
        Metric "d" | "day" | "days" => si::Time::new::<time::day>;
    };
    const COMPOUNDS: &'static [Compound] = &[
        Compound { larger: "h", smaller: "min", ratio: 60.0, may_exceed: true, bare: BareSmaller::TwoDigits },
        Compound { larger: "min", smaller: "s", ratio: 60.0, may_exceed: false, bare: BareSmaller::Never },
        Compound { larger: "d", smaller: "h", ratio: 24.0, may_exceed: false, bare: BareSmaller::Never },
    ];
    // A metre elsewhere.
    const LIKELY: &'static [(&'static str, &'static str)] = &[("m", "min")];

    fn sum(larger: Self::Si, smaller: Self::Si) -> Self::Si {
        larger + smaller
    }
}

/// Henries per metre, as the units library writes them.
pub type PerLength = uom::si::f64::MagneticPermeability;

/// Inductance per length of a lead-in.
///
/// The quotient has the dimension of a magnetic permeability, so that is its type; no cast hides in the name.
pub struct InductancePerLength;

impl Dimension for InductancePerLength {
    type Si = PerLength;
    const CODE: &'static str = "inductance_per_length";
    const EXAMPLES: [&'static str; 2] = ["0.22 uH/ft", "0.72 uH/m"];
    const UNITS: &'static [Unit<Self::Si>] = units! {
        UsCustomary "uh/ft" | "uh/foot" | "uh per ft" => |n| microhenries(n) / si::Length::new::<length::foot>(1.0);
        Metric "uh/m" | "uh/metre" | "uh/meter" | "uh per m" => |n| microhenries(n) / si::Length::new::<length::meter>(1.0);
    };
}

fn microhenries(n: f64) -> si::Inductance {
    si::Inductance::new::<uom::si::inductance::microhenry>(n)
}

/// Depth per day, the advance of a curing front.
pub struct DepthPerDay;

impl Dimension for DepthPerDay {
    type Si = si::Velocity;
    const CODE: &'static str = "depth_per_day";
    const EXAMPLES: [&'static str; 2] = ["1/8 in/day", "3 mm/day"];
    const UNITS: &'static [Unit<Self::Si>] = units! {
        UsCustomary "in/day" | "in/d" | "in per day" => |n| si::Length::new::<length::inch>(n) / si::Time::new::<time::day>(1.0);
        Metric "mm/day" | "mm/d" | "mm per day" => |n| si::Length::new::<length::millimeter>(n) / si::Time::new::<time::day>(1.0);
    };
    const LIKELY: &'static [(&'static str, &'static str)] =
        &[("in", "in/day"), ("mm", "mm/day"), ("in/24 h", "in/day"), ("mm/24 h", "mm/day")];
}

/// A share of a whole. It belongs to no system, so it is metric by convention.
pub struct Share;

impl Dimension for Share {
    type Si = si::Ratio;
    const CODE: &'static str = "share";
    const EXAMPLES: [&'static str; 2] = ["10 %", "5 percent"];
    const UNITS: &'static [Unit<Self::Si>] = units! {
        Metric "%" | "percent" | "per cent" | "pct" | "por ciento" | "porciento" | "pour cent" | "pourcent" | "prozent" => si::Ratio::new::<uom::si::ratio::percent>;
    };
}

/// A wire size, as the area of the conductor: American Wire Gauge (ASTM B258) or square millimetres.
pub struct WireSize;

impl Dimension for WireSize {
    type Si = si::Area;
    const CODE: &'static str = "wire_size";
    const EXAMPLES: [&'static str; 2] = ["14 AWG", "1.5 mm2"];
    const UNITS: &'static [Unit<Self::Si>] = &[
        Unit { spellings: &["awg"], system: UnitSystem::UsCustomary, whole: true, to_si: area_of_gauge },
        Unit {
            spellings: &["mm2", "mm²", "sq mm", "mm^2", "mm sq"],
            system: UnitSystem::Metric,
            whole: false,
            to_si: si::Area::new::<area::square_millimeter>,
        },
    ];
    // There are other gauges.
    const LIKELY: &'static [(&'static str, &'static str)] = &[
        ("ga", "awg"),
        ("gauge", "awg"),
        ("gage", "awg"),
        ("g", "awg"),
        ("calibre", "awg"),
        ("a.w.g", "awg"),
        ("a.w.g.", "awg"),
    ];
}

/// Conductor area of a gauge number. A number that is no gauge becomes an area that no range admits.
fn area_of_gauge(number: f64) -> si::Area {
    let diameter = if (0.0..=40.0).contains(&number) { conductor::awg_diameter(number as u32) } else { 0.0 };
    si::Area::new::<area::square_meter>(std::f64::consts::FRAC_PI_4 * diameter * diameter)
}

/// The unit of a spelling, written in full or short. Most texts have the preferred one.
pub fn find_unit<D: Dimension>(spelling: &str) -> Option<&'static Unit<D::Si>> {
    let preferred = D::UNITS.iter().find(|unit| unit.spellings[0] == spelling);
    preferred.or_else(|| D::UNITS.iter().find(|unit| unit.spellings.contains(&spelling)))
}

/// Whether any dimension has this spelling: tells a wrong dimension from an unknown unit.
pub fn is_known_unit(spelling: &str) -> bool {
    fn has<D: Dimension>(spelling: &str) -> bool {
        find_unit::<D>(spelling).is_some()
    }
    has::<Length>(spelling)
        || has::<Temperature>(spelling)
        || has::<Speed>(spelling)
        || has::<Volume>(spelling)
        || has::<Time>(spelling)
        || has::<InductancePerLength>(spelling)
        || has::<DepthPerDay>(spelling)
        || has::<WireSize>(spelling)
}
