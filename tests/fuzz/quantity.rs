//! The laws of the grammar of quantities, for any text.

use loopwright::calculation::input::{
    ApproachSpeed, CableLength, CartridgeVolume, ConductorSize, FirstDayDepth, LeadInInductance, OpeningTime,
    OpeningWidth, SideOffset, SizeUncertainty, WeatherTemperature,
};
use loopwright::calculation::report::{FieldError, FieldPath};
use loopwright::quantity::dimension::{
    DepthPerDay, Dimension, InductancePerLength, Length, Magnitude, Share, Speed, Temperature, TemperatureDifference,
    Time, Volume, WireSize,
};
use loopwright::quantity::format::{format_length_input, format_temperature_input};
use loopwright::quantity::{ParsedQuantity, QuantityError, QuantityErrorCode, QuantityField, parse};
use loopwright::wording::{Language, Worded};

/// Holds the laws against the text of some bytes, for every dimension and for a kind of each.
pub fn check(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    let readers = [
        reads::<Length>(text),
        reads::<Temperature>(text),
        reads::<Speed>(text),
        reads::<Volume>(text),
        reads::<Time>(text),
        reads::<InductancePerLength>(text),
        reads::<DepthPerDay>(text),
        reads::<WireSize>(text),
        reads::<Share>(text),
    ];
    assert!(readers.iter().filter(|reads| **reads).count() <= 1, "{text:?} is read as two dimensions");
    // A difference of temperatures is written like a temperature, but not spelled out: 5 degrees more are no place on a scale.
    assert!(!reads::<TemperatureDifference>(text) || readers[1], "{text:?}");

    keeps_its_range::<OpeningWidth>(text);
    keeps_its_range::<CableLength>(text);
    keeps_its_range::<SizeUncertainty>(text);
    keeps_its_range::<SideOffset>(text);
    keeps_its_range::<WeatherTemperature>(text);
    keeps_its_range::<ApproachSpeed>(text);
    keeps_its_range::<CartridgeVolume>(text);
    keeps_its_range::<OpeningTime>(text);
    keeps_its_range::<LeadInInductance>(text);
    keeps_its_range::<FirstDayDepth>(text);
    keeps_its_range::<ConductorSize>(text);

    a_length_is_written_as_it_is_read(text);
    a_temperature_is_written_as_it_is_read(text);
}

/// Whether a text is a quantity of a dimension. If so it is finite, and letters and spaces do not matter; if not, it says why.
fn reads<D: Dimension>(text: &str) -> bool {
    let read = parse::<D>(text);
    if let Err(fault) = &read {
        assert_explained(fault, text);
        assert_ne!(fault.code, QuantityErrorCode::OutOfRange, "the grammar knows no range");
        return false;
    }
    let written = read.expect("was looked at");
    let value = written.si.magnitude();
    assert!(value.is_finite(), "{text:?} is {value}");
    assert_eq!(written.text, text.trim());
    // Forty characters are the most, and space counts; some letters are longer in upper case.
    if text.chars().count() + 2 <= 40 {
        assert_same::<D>(&written, &format!(" {text} "));
        assert_same::<D>(&written, &text.to_lowercase());
        if text.is_ascii() {
            assert_same::<D>(&written, &text.to_uppercase());
        }
        assert_same::<D>(&written, &text.replace(' ', "\u{202f}"));
        assert_same::<D>(&written, &text.replace('\'', "′").replace('"', "″"));
    }
    means_what_its_first_number_says::<D>(&written, text);
    true
}

/// A comma is the point of the same text, never a mark of thousands; a text has a digit or a fraction, and never two commas, a comma
/// with a point between digits, or an exponent.
fn means_what_its_first_number_says<D: Dimension>(written: &ParsedQuantity<D::Si>, text: &str) {
    let marks: Vec<_> = text.char_indices().filter(|(_, c)| *c == ',').map(|(at, _)| at).collect();
    for &at in &marks {
        let behind = text[at + 1..].bytes().take_while(u8::is_ascii_digit).count();
        assert!(behind != 3 && behind != 0, "{text:?} is read, and its comma may be for thousands");
    }
    let is_digit = |c: char| c.is_ascii_digit() || "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞".contains(c);
    assert!(text.contains(is_digit), "{text:?} is read without a digit");
    if !marks.is_empty() {
        let point = text.replace(',', ".");
        assert_same::<D>(written, &point);
    }
}

fn assert_same<D: Dimension>(written: &ParsedQuantity<D::Si>, text: &str) {
    let again = parse::<D>(text).unwrap_or_else(|fault| panic!("{text:?}: {fault:?}"));
    assert_eq!((again.si.magnitude(), again.system), (written.si.magnitude(), written.system), "{text:?}");
}

fn assert_explained(fault: &QuantityError, text: &str) {
    let error = FieldError::of_text(&FieldPath::BODY, fault.clone()).worded(Language::English);
    assert!(!error.detail.words().is_empty() && !error.hint.words().is_empty(), "{text:?}: {fault:?}");
}

/// What a field takes lies in its range; what it refuses, it explains, and takes what it suggests instead.
fn keeps_its_range<K: QuantityField>(text: &str) {
    match K::from_text(text.to_owned()).read() {
        Ok(written) => {
            let [least, greatest] =
                K::RANGE.map(|bound| parse::<K::Dimension>(bound).expect("a bound is a quantity").si.magnitude());
            // A wire size falls as its gauge rises; its bounds are given by area.
            let hair = 1e-9 * (least.abs() + greatest.abs());
            let value = written.si.magnitude();
            assert!(value >= least - hair && value <= greatest + hair, "{text:?} is {value}");
        }
        Err(fault) => {
            assert_explained(&fault, text);
            if let Some(suggestion) = fault.suggestion {
                let taken = K::from_text(suggestion.clone());
                assert!(taken.read().is_ok(), "{text:?}: {suggestion:?} is suggested and refused");
            }
        }
    }
}

/// A length that a report repeats as a request would hold it is the same to the decimals that it is written with.
fn a_length_is_written_as_it_is_read(text: &str) {
    if let Some(written) = parse::<Length>(text).ok().filter(|written| written.si.magnitude().abs() < 1e9) {
        let shown = format_length_input(written.si, written.system);
        let again = parse::<Length>(&shown).unwrap_or_else(|fault| panic!("{shown:?}: {fault:?}"));
        let apart = (again.si.magnitude() - written.si.magnitude()).abs();
        assert!(apart <= 0.51e-4 + 1e-12 * written.si.magnitude().abs(), "{text:?} is shown as {shown:?}");
        assert_eq!(again.system, written.system);
    }
}

/// The same for a temperature.
fn a_temperature_is_written_as_it_is_read(text: &str) {
    if let Some(written) = parse::<Temperature>(text).ok().filter(|written| written.si.magnitude().abs() < 1e9) {
        let shown = format_temperature_input(written.si, written.system);
        let again = parse::<Temperature>(&shown).unwrap_or_else(|fault| panic!("{shown:?}: {fault:?}"));
        let apart = (again.si.magnitude() - written.si.magnitude()).abs();
        assert!(apart <= 0.51e-2 + 1e-9 * written.si.magnitude().abs(), "{text:?} is shown as {shown:?}");
        assert_eq!(again.system, written.system);
    }
}
