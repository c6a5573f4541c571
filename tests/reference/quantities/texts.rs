//! Single texts: what the grammar makes of them, and in which words it refuses them.

use loopwright::quantity::dimension::{Dimension, InductancePerLength, Length, Magnitude, Temperature, Time, WireSize};
use loopwright::quantity::text::parse_like;
use loopwright::quantity::{QuantityError, QuantityErrorCode, parse};

use super::said;

fn metres(text: &str) -> f64 {
    parse::<Length>(text).unwrap_or_else(|fault| panic!("{text}: {fault:?}")).si.magnitude()
}

#[track_caller]
fn refused<D: Dimension>(text: &str) -> QuantityError {
    parse::<D>(text).map(|written| written.text).expect_err(text)
}

#[test]
fn numbers_in_all_their_forms() {
    for (text, expected) in [
        ("1-1/4 m", 1.25),
        ("1 1/4 m", 1.25),
        ("5/4 m", 1.25),
        ("10 / 8 m", 1.25),
        ("+1.25m", 1.25),
        ("-1.25 m", -1.25),
        ("- 1-1/4 m", -1.25),
        ("−.25 m", -0.25),
        ("0 m", 0.0),
        ("007.50 m", 7.5),
        ("0/4 m", 0.0),
        ("1\u{a0}1/4\tm", 1.25),
    ] {
        assert!((metres(text) - expected).abs() < 1e-15, "{text}: {}", metres(text));
    }
}

#[test]
fn feet_with_inches_and_hours_with_minutes() {
    for text in [
        "6 ft 6 in",
        "6ft6in",
        "6 ft-6 in",
        "6' 6\"",
        "6'-6\"",
        "6’ 6”",
        "6 feet 6 inches",
        "6 ft 12/2 in",
        "6 FT 6 IN",
    ] {
        assert!((metres(text) - 1.9812).abs() < 1e-12, "{text}: {}", metres(text));
    }
    // A larger part of nothing is a whole number as well; one below nothing says not which way its inches go.
    assert!((metres("0 ft 6 in") - 0.1524).abs() < 1e-12);
    for text in [
        "-6 ft 6 in",
        "-0 ft 6 in",
        "-6 ft 6",
        "6.5 ft 6 in",
        "6 in 6 ft",
        "6 ft 6 m",
        "6 m 6 in",
        "6 yd 6 in",
        "6 ft 6 in 6 in",
        "6 ft 6 ft",
        "6' 6'",
        "-7 m 20 cm",
        "-7m20",
        "7 m 5 ft",
        "7 m 120 cm",
        "7.5 m 20 cm",
    ] {
        assert_eq!(refused::<Length>(text).code, QuantityErrorCode::UnitUnknown, "{text}");
    }
    let seconds = |text| parse::<Time>(text).unwrap().si.magnitude();
    assert!((seconds("1 h 30 min") - 5400.0).abs() < 1e-9 && (seconds("2 hours 0.5 minutes") - 7230.0).abs() < 1e-9);
    // Kelvin have no smaller part.
    assert_eq!(refused::<Temperature>("5 °C 5 °C").code, QuantityErrorCode::UnitUnknown);
}

#[test]
fn numbers_that_are_none() {
    for text in [
        "",
        " ",
        ".",
        ". m",
        "6. m",
        "6.' 6",
        "6..2 m",
        "1.2.3 m",
        "1.5/2 m",
        "1.5-1/4 m",
        "1.5 1/4 m",
        "3/0 m",
        "1-1/0 m",
        "1/2/3 m",
        "/2 m",
        "ft",
        "--6 m",
        "+-6 m",
        "1e3 m",
        "1e-3 m",
        "1e+3 m",
        "٦ m",
        "6 .5 m",
    ] {
        assert_eq!(refused::<Length>(text).code, QuantityErrorCode::NumberInvalid, "{text}");
    }
    // An e that no digit follows is the beginning of a unit that nobody knows.
    assert_eq!(refused::<Length>("1em").code, QuantityErrorCode::UnitUnknown);
    assert_eq!(refused::<WireSize>("14.5 AWG").code, QuantityErrorCode::NumberInvalid);
    assert!(parse::<WireSize>("14.0 AWG").is_ok() && parse::<WireSize>("1.5 mm2").is_ok());
}

#[test]
fn forty_characters_and_no_more() {
    let text = |zeros: usize| format!("{}6 m", "0".repeat(zeros));
    assert!((metres(&text(37)) - 6.0).abs() < 1e-15);
    let fault = refused::<Length>(&text(38));
    assert_eq!(fault.code, QuantityErrorCode::NumberInvalid);
    assert_eq!(said(fault)[0], "The text is longer than 40 characters.");
    // Characters, not bytes.
    assert!(parse::<InductancePerLength>(&format!("{}6 µH/m", "0".repeat(33))).is_ok());
}

#[test]
fn a_refusal_says_what_to_write() {
    let like = "\"24 ft\" or \"7.2 m\"";
    for (text, expected) in [
        ("ft", format!("A length starts with a number; \"ft\" has none that can be read. Write {like}.")),
        ("6", format!("A length needs a unit; \"6\" has none. Write a length as {like}.")),
        ("6 mph", format!("\"mph\" is not a unit of length. Write a length as {like}.")),
        ("6 ft 6 m", format!("\"6 ft 6 m\" has more than a number and its unit, or parts that do not go together. Write a length as {like}.")),
        ("6 bananas", format!("\"bananas\" is not a unit that is known here. Write a length as {like}.")),
        ("1E3 m", format!("The number in \"1e3 m\" has a form that is not read. Write {like}.")),
        ("0,200 m", "\"0,200 m\" has a comma in its number. Write \"0.200 m\", with a point.".to_owned()),
        (",500 m", "\",500 m\" has a comma in its number. Write \"0.500 m\", with a point.".to_owned()),
        ("1,000 ft", "\"1,000 ft\" has a comma in its number. Write \"1000 ft\", without a separator, or \"1.000 ft\", with a point.".to_owned()),
        ("1,000.5 ft", format!("\"1,000.5 ft\" has a comma in its number. Write the number without a comma, with a point for decimals, as {like}.")),
        ("1,000,000 ft", format!("\"1,000,000 ft\" has a comma in its number. Write the number without a comma, with a point for decimals, as {like}.")),
    ] {
        assert_eq!(said(refused::<Length>(text)).join(" "), expected);
    }
    let fault = refused::<InductancePerLength>("0.22");
    assert_eq!(said(fault)[0], "An inductance per length needs a unit; \"0.22\" has none.");
    assert_eq!(said(refused::<InductancePerLength>("6 ft"))[0], "\"ft\" is not a unit of inductance per length.");
    assert_eq!(said(refused::<WireSize>("14.5 AWG"))[0], "This unit counts in whole numbers.");
    // A field may have examples that fit it better.
    let fault = parse_like::<Length>("6", &["1 in", "25 mm"]).map(|written| written.text).unwrap_err();
    assert_eq!(said(fault)[1], "Write a length as \"1 in\" or \"25 mm\".");
}
