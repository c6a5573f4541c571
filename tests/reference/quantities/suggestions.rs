//! What a refusal suggests: the field takes it, and it is what was likely meant.

use loopwright::quantity::QuantityField;
use loopwright::quantity::dimension::Magnitude;
use proptest::prelude::*;

use super::said;

loopwright::quantity_fields! {
    /// An opening.
    Opening: Length, "3 ft" to "200 ft", as "24 ft" or "7.2 m";
    /// A cable.
    Cable: Length, "0 ft" to "5000 ft", as "50 ft" or "15 m";
    /// A wire over its insulation.
    Thickness: Length, "0.03 in" to "1/2 in", as "0.130 in" or "3.3 mm";
    /// A place beside the loop.
    Beside: Length, "-100 ft" to "100 ft", as "2 ft" or "0.6 m";
    /// The air.
    Air: Temperature, "-60 °C" to "80 °C", as "40 °F" or "4.5 °C";
    /// A pot of sealant.
    Pot: Temperature, "40 °C" to "260 °C", as "387 °F" or "190 °C";
    /// A pace.
    Pace: Speed, "1 mph" to "60 mph", as "10 mph" or "15 km/h";
    /// A time.
    Wait: Time, "1 min" to "90 d", as "3 h" or "15 min";
    /// A wire.
    Size: WireSize, "24 AWG" to "8 AWG", as "14 AWG" or "1.5 mm2";
    /// A cartridge.
    Tube: Volume, "1 fl oz" to "10 gal", as "29 fl oz" or "850 ml";
    /// A lead-in.
    Pair: InductancePerLength, "0.05 uH/ft" to "1 uH/ft", as "0.22 uH/ft" or "0.72 uH/m";
    /// A front.
    Front: DepthPerDay, "0.2 mm/day" to "2 in/day", as "1/8 in/day" or "3 mm/day";
    /// A part.
    Part: Share, "0 %" to "50 %", as "10 %" or "5 percent";
}

/// What a field suggests for a text that it refuses; the field takes it.
#[track_caller]
fn suggested<F: QuantityField>(text: &str) -> Option<String> {
    let suggestion = F::from_text(text.to_owned()).read().expect_err(text).suggestion;
    if let Some(suggestion) = &suggestion {
        assert!(F::from_text(suggestion.clone()).read().is_ok(), "{text}: {suggestion} is refused");
    }
    suggestion
}

#[track_caller]
fn suggests<F: QuantityField>(rows: &[(&str, &str)]) {
    for (text, expected) in rows {
        assert_eq!(suggested::<F>(text).as_deref(), Some(*expected), "{text}");
    }
}

#[track_caller]
fn suggests_nothing<F: QuantityField>(texts: &[&str]) {
    for text in texts {
        assert_eq!(suggested::<F>(text), None, "{text}");
    }
}

#[test]
fn thousands_are_suggested_where_they_fit() {
    suggests::<Opening>(&[
        ("1,200 mm", "1200 mm"),
        ("1 200 mm", "1200 mm"),
        ("1\u{202f}200 mm", "1200 mm"),
        ("1,200.5 mm", "1200.5 mm"),
        ("1.200,5 mm", "1200.5 mm"),
        ("1 200,5 mm", "1200.5 mm"),
        ("5,500 m", "5.500 m"),
        ("1,200 m", "1.200 m"),
        ("12,345 m", "12.345 m"),
    ]);
    suggests::<Cable>(&[
        ("1,200 mm", "1200 mm"),
        ("1,200 ft", "1200 ft"),
        ("0,500 m", "0.500 m"),
        (",500 m", "0.500 m"),
    ]);
    suggests::<Cable>(&[("1,000,000 mm", "1000000 mm"), ("1.000.000 mm", "1000000 mm"), ("+1,200 ft", "+1200 ft")]);
    suggests::<Thickness>(&[("3,302 mm", "3.302 mm"), ("0,130 in", "0.130 in")]);
    suggests::<Beside>(&[("-1,200 mm", "-1200 mm"), ("−1 200 mm", "−1200 mm")]);
    suggests_nothing::<Opening>(&[
        "1,000 ft",
        "0,500 m",
        "1,5,2 m",
        "1 ,5 m",
        "1,2000,000 mm",
        "1.5.2 m",
        "12 34 m",
        "0 200 mm",
        "5, m",
    ]);
    suggests_nothing::<Pot>(&["1,200 °F"]);
    // A point is a decimal mark, but for metric thousands where nothing else fits.
    suggests::<Opening>(&[("7.200 mm", "7200 mm"), ("2.400 cm", "2400 cm")]);
    suggests_nothing::<Opening>(&["2.000 in", "0.200 m", "7.20 mm", "1.000.000 m", "201 ft", "900.000 m"]);
}

#[test]
fn a_bare_number_gets_the_only_unit_that_fits() {
    suggests::<Opening>(&[("7200", "7200 mm")]);
    suggests::<Size>(&[("14", "14 AWG"), ("1.5", "1.5 mm2"), ("1,5", "1,5 mm2")]);
    suggests::<Pot>(&[("387", "387 °F")]);
    suggests::<Part>(&[("10", "10 %"), ("7,5", "7,5 %")]);
    suggests::<Front>(&[("3", "3 mm/day"), ("1/8", "1/8 in/day")]);
    suggests::<Thickness>(&[("3.3", "3.3 mm")]);
    suggests_nothing::<Opening>(&["24", "24½", "7,2", "0", "1000000000"]);
    suggests_nothing::<Air>(&["20", "-5", "300"]);
    suggests_nothing::<Pot>(&["190"]);
    suggests_nothing::<Pace>(&["10"]);
    suggests_nothing::<Wait>(&["5"]);
    suggests_nothing::<Tube>(&["29", "850"]);
    suggests_nothing::<Pair>(&["0.22"]);
}

#[test]
fn units_that_may_be_meant() {
    suggests::<Opening>(&[
        ("24 f", "24 ft"),
        ("24 feets", "24 ft"),
        ("7.2 metrs", "7.2 m"),
        ("24 - ft", "24 ft"),
        ("24 ft,", "24 ft"),
        ("7.2 m..", "7.2 m"),
        ("24. ft", "24 ft"),
        ("1e1 m", "10 m"),
        ("~24 ft", "24 ft"),
        ("about 24 ft", "24 ft"),
    ]);
    suggests::<Size>(&[
        ("14 ga", "14 AWG"),
        ("14 gauge", "14 AWG"),
        ("#14", "14 AWG"),
        ("AWG 14", "14 AWG"),
        ("awg14", "14 AWG"),
    ]);
    suggests::<Pace>(&[("16 km", "16 km/h"), ("10 miles", "10 mph"), ("10 millas", "10 mph"), ("10 m.p.h.", "10 mph")]);
    suggests::<Wait>(&[("5m", "5 min"), ("7m20", "7 min 20 s"), ("1h30m", "1 h 30 min")]);
    suggests::<Tube>(&[("29 oz", "29 fl oz"), ("850 cc", "850 ml"), ("850 cm³", "850 ml")]);
    suggests::<Front>(&[("3 mm", "3 mm/day"), ("1/8 in", "1/8 in/day"), ("3 mm/24 h", "3 mm/day")]);
    // More or less than a number is not that number, and what measures something else stands for nothing.
    suggests_nothing::<Opening>(&[
        "24 cubits",
        "24 mph",
        "24 x 6 ft",
        "24 ft wide",
        "under 24 ft",
        "min 24 ft",
        "24 p",
        "wide",
        "",
    ]);
    suggests_nothing::<Air>(&["20 grados", "20°", "20-C", "minus 5 °C", "~", "300 °F"]);
    suggests_nothing::<Size>(&["1.5 mm", "14.5 AWG", "2 AWG", "AWG 2"]);
    suggests_nothing::<Pair>(&["0.22 uH"]);
}

#[test]
fn parts_that_may_be_meant() {
    suggests::<Opening>(&[
        ("7m2", "7.2 m"),
        ("7m200", "7.200 m"),
        ("7 m 2", "7.2 m"),
        ("5 ft, 6 in", "5 ft 6 in"),
        ("5 ft and 6 in", "5 ft 6 in"),
        ("5 pies y 6 pulgadas", "5 ft 6 in"),
        ("5 pieds et 6 pouces", "5 ft 6 in"),
        ("5 Fuß und 6 Zoll", "5 ft 6 in"),
        ("5' - 6", "5 ft 6 in"),
        ("5 ft -6", "5 ft 6 in"),
        ("5 ft.6", "5 ft 6 in"),
        ("5 ft 1/2", "5 ft 1/2 in"),
    ]);
    suggests::<Wait>(&[("1h5", "1 h 5 min"), ("1 hora y 30 minutos", "1 h 30 min"), ("7 min 20", "7 min 20 s")]);
    suggests::<Beside>(&[
        ("-0 ft 6 in", "-6 in"),
        ("-1 ft 6 in", "-18 in"),
        ("-1 ft 6", "-18 in"),
        ("-1'-6½\"", "-18.5 in"),
        ("-1m20", "-120 cm"),
    ]);
    suggests_nothing::<Opening>(&[
        "5 ft 13",
        "5' 6'",
        "5 ft 6 ft",
        "7 m 5 ft",
        "7 m 120 cm",
        "5.5 ft 6 in",
        "2½½ ft",
        "-5 ft 6 in",
        "5 ft 6 in 7",
    ]);
    suggests_nothing::<Wait>(&["1h75", "7 min 2", "1:30"]);
}

#[test]
fn the_hint_says_what_is_suggested() {
    let hint = |text: &str| said(Opening::from_text(text.to_owned()).read().unwrap_err())[1].clone();
    assert_eq!(hint("1,200 mm"), "Write \"1200 mm\", without a separator.");
    assert_eq!(hint("5,500 m"), "Write \"5.500 m\", with a point.");
    assert_eq!(hint("24 feets"), "Did you mean \"24 ft\"? Otherwise write a length as \"24 ft\" or \"7.2 m\".");
    // Neither reading lies in the range, so neither is shown.
    let examples = "Write the number without a comma, with a point for decimals, as \"24 ft\" or \"7.2 m\".";
    assert_eq!(hint("1,000 ft"), examples);
    let both = said(Cable::from_text("1,200 m".to_owned()).read().unwrap_err())[1].clone();
    assert_eq!(both, "Write \"1200 m\", without a separator, or \"1.200 m\", with a point.");
}

proptest! {
    /// Whatever is sent, the field takes what it suggests, and a suggestion needs no other.
    #[test]
    fn every_suggestion_is_taken(
        text in prop_oneof![
            "[-+−~#]?[0-9]{0,4}[., ]?[0-9]{0,4}[., /-]?[0-9]{0,3} ?(ft|in|m|cm|mm|'|\"|yd|h|min|s|d|m|°C|F|AWG|ga|oz|ml|km|mph|mm/day|%|uH/m|pies|metrs|)[.,]?",
            "-?[0-9]{1,2} ?(ft|'|m|h|min|d|pies|mètres)( |-|, | y | and |)[0-9½]{1,3} ?(in|\"|cm|min|m|s|h|)",
            ".{0,30}",
        ],
    ) {
        fn holds<F: QuantityField>(text: &str) -> Result<(), TestCaseError> {
            let refusal = F::from_text(text.to_owned()).read().err();
            if let Some(suggestion) = refusal.and_then(|error| error.suggestion) {
                let field = F::from_text(suggestion.clone());
                let read = field.read();
                prop_assert!(read.is_ok_and(|read| read.si.magnitude().is_finite()), "{text}: {suggestion} is refused");
            }
            Ok(())
        }
        holds::<Opening>(&text)?;
        holds::<Cable>(&text)?;
        holds::<Thickness>(&text)?;
        holds::<Beside>(&text)?;
        holds::<Air>(&text)?;
        holds::<Pot>(&text)?;
        holds::<Pace>(&text)?;
        holds::<Wait>(&text)?;
        holds::<Size>(&text)?;
        holds::<Tube>(&text)?;
        holds::<Pair>(&text)?;
        holds::<Front>(&text)?;
        holds::<Part>(&text)?;
    }
}
