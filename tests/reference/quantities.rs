//! Quantities as they are written, read and shown: here the laws for every text, below what single texts become.

mod fields;
mod output;
mod people;
mod published;
mod suggestions;
mod texts;
mod units;

use loopwright::calculation::report::{FieldError, FieldPath};
use loopwright::quantity::dimension::{
    DepthPerDay, Dimension, InductancePerLength, Length, Speed, Temperature, TemperatureDifference, Time, Volume,
    WireSize,
};
use loopwright::quantity::output::round;
use loopwright::quantity::{QuantityError, UnitSystem, parse};
use loopwright::wording::{Language, Worded};
use proptest::prelude::*;
use uom::si::length::{foot, inch, millimeter};
use uom::si::thermodynamic_temperature::{degree_celsius, degree_fahrenheit};

/// What a caller reads of an error: the detail and the hint.
fn said(error: QuantityError) -> [String; 2] {
    let error = FieldError::of_text(&FieldPath::BODY, error).worded(Language::English);
    [error.detail.words().to_owned(), error.hint.words().to_owned()]
}

proptest! {
    #[test]
    fn case_and_typographic_signs_change_nothing(number in 0..1000_u32, unit in "( |\t|\u{a0})?(FT|ft|Ft|′|’|MM|Mm)( |\u{2003}|\n)?") {
        let plain = unit.trim().to_lowercase().replace(['′', '’'], "'");
        let (written, expected) = (format!("{number}{unit}"), format!("{number} {plain}"));
        prop_assert_eq!(parse::<Length>(&written).unwrap().si, parse::<Length>(&expected).unwrap().si);
        prop_assert_eq!(parse::<Length>(&written).unwrap().text, written.trim());
    }

    #[test]
    fn a_length_reads_back_as_it_was_written(micrometres in 0..100_000_000_u64, sixteenths in 1..100_000_u64) {
        let text = format!("{}.{:03} mm", micrometres / 1000, micrometres % 1000);
        let written = parse::<Length>(&text).unwrap();
        prop_assert_eq!(format!("{:.3} mm", round(written.si.get::<millimeter>(), 3)), text.clone());
        prop_assert_eq!((written.system, written.text), (UnitSystem::Metric, text.as_str()));

        let text = format!("{}-{}/16 in", sixteenths / 16, sixteenths % 16);
        let written = parse::<Length>(&text).unwrap();
        prop_assert_eq!(round(written.si.get::<inch>() * 16.0, 6), sixteenths as f64);
        let compound = format!("{} ft {} {}/16 in", sixteenths / 192, sixteenths % 192 / 16, sixteenths % 16);
        let compound = parse::<Length>(&compound).unwrap();
        prop_assert!((compound.si - written.si).abs().get::<millimeter>() < 1e-6);
        prop_assert_eq!(compound.system, UnitSystem::UsCustomary);
        prop_assert!((compound.si.get::<foot>() - sixteenths as f64 / 192.0).abs() < 1e-9);
    }

    #[test]
    fn a_temperature_reads_back_as_it_was_written(hundredths in -5_000..20_000_i32) {
        let number = f64::from(hundredths) / 100.0;
        let celsius = parse::<Temperature>(&format!("{number} °C")).unwrap().si;
        prop_assert_eq!(round(celsius.get::<degree_celsius>(), 2), number);
        let fahrenheit = parse::<Temperature>(&format!("{number} °F")).unwrap().si;
        prop_assert_eq!(round(fahrenheit.get::<degree_fahrenheit>(), 2), number);
        prop_assert!((celsius.get::<degree_fahrenheit>() - (number * 1.8 + 32.0)).abs() < 1e-9);
    }

    #[test]
    fn no_text_breaks_the_reader(text in prop_oneof![".{0,60}", "[-+]?[0-9 ./,'\"-]{0,12} ?[a-zA-Z°µ/' \"²³0-9-]{0,12}"]) {
        fn reads<D: Dimension>(text: &str) -> bool {
            match parse::<D>(text) {
                Ok(written) => written.text == text.trim(),
                Err(fault) => said(fault).iter().all(|words| !words.is_empty()),
            }
        }
        prop_assert!(reads::<Length>(&text) && reads::<Temperature>(&text) && reads::<TemperatureDifference>(&text));
        prop_assert!(reads::<Speed>(&text) && reads::<Volume>(&text) && reads::<Time>(&text));
        prop_assert!(reads::<InductancePerLength>(&text) && reads::<DepthPerDay>(&text) && reads::<WireSize>(&text));
    }
}
