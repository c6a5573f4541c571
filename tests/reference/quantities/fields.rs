//! Kinds: the range of a field, what JSON it takes, and the schema that it publishes.

use loopwright::quantity::dimension::Magnitude;
use loopwright::quantity::{QuantityErrorCode, QuantityField};
use serde_json::json;

use super::said;

loopwright::quantity_fields! {
    /// A side of the yard.
    Side: Length, "1 ft" to "200 ft", as "6 ft" or "1.8 m";
    /// A way to the side.
    Aside: Length, "-10 ft" to "10 ft", as "2 ft" or "0.6 m";
    /// The warmth of the day.
    Warmth: Temperature, "1 °C" to "85 °C", as "68 °F" or "20 °C";
    /// The wire.
    Strand: WireSize, "24 AWG" to "8 AWG", as "14 AWG" or "1.5 mm2";
}

fn code<K: QuantityField>(text: &str) -> Option<QuantityErrorCode> {
    K::from_text(text.to_owned()).read().err().map(|fault| fault.code)
}

#[test]
fn a_range_holds_its_bounds_in_every_unit() {
    for text in ["1 ft", "12 in", "1/3 yd", "0.3048 m", "304.8 mm", "200 ft", "2400 in", "60.96 m", "6 ft"] {
        assert_eq!(code::<Side>(text), None, "{text}");
    }
    for text in ["0.999999 ft", "11.9999 in", "304.799 mm", "200.0001 ft", "60.9601 m", "-1 ft", "0 ft"] {
        assert_eq!(code::<Side>(text), Some(QuantityErrorCode::OutOfRange), "{text}");
    }
    for text in ["-10 ft", "-120 in", "10 ft", "0 m"] {
        assert_eq!(code::<Aside>(text), None, "{text}");
    }
    for text in ["-10.00001 ft", "10.00001 ft"] {
        assert_eq!(code::<Aside>(text), Some(QuantityErrorCode::OutOfRange), "{text}");
    }
    // The rounding of a conversion is let pass, and no more: a millionth of a millionth of both bounds together.
    assert_eq!(code::<Side>("200.0000000001 ft"), None);
    assert_eq!(code::<Side>("200.000000001 ft"), Some(QuantityErrorCode::OutOfRange));
    assert_eq!(code::<Side>("0.9999999999 ft"), None);
    assert_eq!(code::<Side>("0.999999999 ft"), Some(QuantityErrorCode::OutOfRange));
    assert_eq!(code::<Aside>("-10.00000000001 ft"), None);
    assert_eq!(code::<Aside>("-10.0000000001 ft"), Some(QuantityErrorCode::OutOfRange));
    // The bounds are gauges, and what lies between them is told by area.
    for (text, expected) in [("25 AWG", true), ("24 AWG", false), ("8 AWG", false), ("7 AWG", true), ("41 AWG", true)] {
        assert_eq!(code::<Strand>(text) == Some(QuantityErrorCode::OutOfRange), expected, "{text}");
    }
}

#[test]
fn a_refusal_shows_the_range_and_the_examples_of_the_field() {
    let fault = Side::from_text(" 300 ft ".to_owned()).read().unwrap_err();
    let [detail, hint] = said(fault);
    assert_eq!(detail, "\"300 ft\" lies outside 1 ft to 200 ft.");
    assert_eq!(hint, "Send a length from 1 ft to 200 ft, such as \"6 ft\" or \"1.8 m\".");
    let fault = Side::from_text("6".to_owned()).read().unwrap_err();
    assert_eq!(said(fault)[1], "Write a length as \"6 ft\" or \"1.8 m\".");
}

#[test]
fn json_text_is_kept_as_it_came_and_a_bare_number_awaits_its_refusal() {
    let kept = |value| {
        serde_json::from_value::<Side>(value).map(|side| side.text().to_owned()).map_err(|error| error.to_string())
    };
    assert_eq!(kept(json!(" 6 ft ")), Ok(" 6 ft ".to_owned()));
    assert_eq!(kept(json!(6)), Ok("6".to_owned()));
    assert_eq!(kept(json!(-6)), Ok("-6".to_owned()));
    assert_eq!(kept(json!(6.5)), Ok("6.5".to_owned()));
    let refusal = kept(json!(true)).unwrap_err();
    assert!(refusal.ends_with("expected length as text, such as \"6 ft\""), "{refusal}");
    assert_eq!(serde_json::to_value(Side::from_text("6 ft".to_owned())).unwrap(), json!("6 ft"));
    assert!((Side::from_text("6 ft".to_owned()).read().unwrap().si.magnitude() - 1.8288).abs() < 1e-12);
}

/// The published pattern lets through what the grammar reads: a sign only where the range reaches below zero.
#[test]
fn the_schema_of_a_kind() {
    let schema = |schema| serde_json::to_value(schema).unwrap();
    let side = schema(<Side as utoipa::PartialSchema>::schema());
    assert_eq!(side["type"], "string");
    assert_eq!(side["description"], "A side of the yard. From 1 ft to 200 ft. Units: ft, in, yd, m, cm, mm.");
    assert_eq!((&side["maxLength"], &side["examples"]), (&json!(40), &json!(["6 ft", "1.8 m"])));
    let pattern = |value: &serde_json::Value| value["pattern"].as_str().unwrap().to_owned();
    let (side, aside) = (pattern(&side), pattern(&schema(<Aside as utoipa::PartialSchema>::schema())));
    let warmth = pattern(&schema(<Warmth as utoipa::PartialSchema>::schema()));
    assert!(side.starts_with(r"^\s*\+?\s*[0-9.,") && side.contains('\'') && !side.contains('°'), "{side}");
    assert!(aside.starts_with("^\\s*[-+−") && aside.contains('\''), "{aside}");
    assert!(warmth.starts_with(r"^\s*\+?\s*[0-9.,") && warmth.contains('°') && !warmth.contains('\''), "{warmth}");
    assert_eq!(<Side as utoipa::ToSchema>::name(), "Side");
}
