//! Every unit against its definition. NIST SP 811 (2008), appendix B: the inch is 25.4 mm and the US gallon 231 in³, exactly.

use loopwright::quantity::dimension::{
    DepthPerDay, Dimension, InductancePerLength, Length, Magnitude, Speed, Temperature, TemperatureDifference, Time,
    Volume, WireSize, is_known_unit,
};
use loopwright::quantity::{UnitSystem, parse};

const FOOT: f64 = 0.3048;
const INCH: f64 = 0.0254;
const GALLON: f64 = 231.0 * INCH * INCH * INCH;
const DAY: f64 = 86_400.0;

/// Each of the spellings of a unit is so many of the SI's, to the last digits, and says which system its writer works in.
#[track_caller]
fn is_worth<D: Dimension>(system: UnitSystem, spellings: &[&str], si: f64) {
    for spelling in spellings {
        let text = format!("3 {spelling}");
        let written = parse::<D>(&text).unwrap_or_else(|fault| panic!("{spelling}: {fault:?}"));
        let found = written.si.magnitude() / 3.0;
        // Conversion factors of the units library have seven digits where they are not exact.
        assert!((found / si - 1.0).abs() < 3e-7, "1 {spelling} is {found}, expected {si}");
        assert_eq!(written.system, system, "{spelling}");
        let plain = spelling.to_lowercase().replace(['µ', 'μ'], "u");
        assert!(is_known_unit(&plain), "{spelling}");
    }
}

use UnitSystem::{Metric, UsCustomary};

#[test]
fn lengths() {
    is_worth::<Length>(UsCustomary, &["ft", "'", "ft.", "foot", "feet"], FOOT);
    is_worth::<Length>(UsCustomary, &["in", "\"", "in.", "inch", "inches"], INCH);
    is_worth::<Length>(UsCustomary, &["yd", "yard", "yards"], 0.9144);
    is_worth::<Length>(Metric, &["m", "metre", "metres", "meter", "meters"], 1.0);
    is_worth::<Length>(Metric, &["cm"], 1e-2);
    is_worth::<Length>(Metric, &["mm"], 1e-3);
}

#[test]
fn speeds_and_paces() {
    is_worth::<Speed>(UsCustomary, &["mph", "mi/h"], 5280.0 * FOOT / 3600.0);
    is_worth::<Speed>(UsCustomary, &["ft/s"], FOOT);
    is_worth::<Speed>(UsCustomary, &["ft/min"], FOOT / 60.0);
    is_worth::<Speed>(UsCustomary, &["ft/h"], FOOT / 3600.0);
    is_worth::<Speed>(Metric, &["km/h", "kmh", "kph"], 1.0 / 3.6);
    is_worth::<Speed>(Metric, &["m/s"], 1.0);
    is_worth::<Speed>(Metric, &["m/min"], 1.0 / 60.0);
    is_worth::<Speed>(Metric, &["m/h"], 1.0 / 3600.0);
    is_worth::<DepthPerDay>(UsCustomary, &["in/day", "in/d", "in per day"], INCH / DAY);
    is_worth::<DepthPerDay>(Metric, &["mm/day", "mm/d", "mm per day"], 1e-3 / DAY);
}

#[test]
fn volumes() {
    is_worth::<Volume>(UsCustomary, &["fl oz", "floz", "fl_oz", "fl. oz", "fl. oz."], GALLON / 128.0);
    is_worth::<Volume>(UsCustomary, &["qt", "quart", "quarts"], GALLON / 4.0);
    is_worth::<Volume>(UsCustomary, &["gal", "gallon", "gallons"], GALLON);
    is_worth::<Volume>(UsCustomary, &["in3", "in³", "cu in"], INCH * INCH * INCH);
    is_worth::<Volume>(Metric, &["ml", "millilitre", "milliliter"], 1e-6);
    is_worth::<Volume>(Metric, &["l", "litre", "liter", "litres", "liters"], 1e-3);
}

#[test]
fn durations() {
    is_worth::<Time>(Metric, &["h", "hr", "hrs", "hour", "hours"], 3600.0);
    is_worth::<Time>(Metric, &["min", "mins", "minute", "minutes"], 60.0);
    is_worth::<Time>(Metric, &["s", "sec", "second", "seconds"], 1.0);
    is_worth::<Time>(Metric, &["d", "day", "days"], DAY);
}

#[test]
fn inductances_per_length() {
    is_worth::<InductancePerLength>(UsCustomary, &["uH/ft", "uH/foot", "µH per ft"], 1e-6 / FOOT);
    is_worth::<InductancePerLength>(Metric, &["uH/m", "μH/metre", "uh/meter", "uH per m"], 1e-6);
}

#[test]
fn temperatures_have_a_zero_point_and_their_differences_none() {
    let kelvin = |text| parse::<Temperature>(text).unwrap().si.magnitude();
    for text in ["-40 °F", "-40 °C", "-40 deg F", "-40 degc", "-40 fahrenheit", "-40 celsius", "233.15 K"] {
        assert!((kelvin(text) - 233.15).abs() < 1e-9, "{text}");
    }
    is_worth::<TemperatureDifference>(UsCustomary, &["°F", "F", "degF", "deg F"], 5.0 / 9.0);
    is_worth::<TemperatureDifference>(Metric, &["°C", "C", "degC", "deg C"], 1.0);
    is_worth::<TemperatureDifference>(Metric, &["K", "kelvin"], 1.0);
}

/// ASTM B258: half of the last printed digit, in mm². A number beyond the gauges has no area, which no range admits.
#[test]
fn wire_sizes() {
    let area = |text: &str| parse::<WireSize>(text).unwrap().si.magnitude() * 1e6;
    for (gauge, expected) in [(0, 53.5), (8, 8.37), (14, 2.08), (24, 0.205), (40, 0.00501)] {
        assert!((area(&format!("{gauge} AWG")) / expected - 1.0).abs() < 0.003, "{gauge} AWG");
    }
    for beyond in ["41 AWG", "-1 AWG"] {
        assert_eq!(area(beyond), 0.0, "{beyond}");
    }
    for text in ["1.5 mm2", "1.5 mm²", "1.5 sq mm", "1.5 mm^2"] {
        assert!((area(text) - 1.5).abs() < 1e-12, "{text}");
    }
    assert!(is_known_unit("awg") && is_known_unit("mm2") && !is_known_unit("furlongs"));
}
