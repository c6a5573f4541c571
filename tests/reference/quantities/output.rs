//! Quantities as reports show them: rounding, words, and both systems from one value. Expected figures by hand.

use loopwright::quantity::UnitSystem::{Metric, UsCustomary};
use loopwright::quantity::dimension::{
    DepthPerDay, Dimension, InductancePerLength, Length, Speed, Temperature, TemperatureDifference, Time, Volume,
};
use loopwright::quantity::format::{
    TapeReading, format_count, format_detail_length, format_duration, format_length, format_length_input,
    format_temperature, format_temperature_difference, format_temperature_input,
};
use loopwright::quantity::output::{
    DepthPerDayValue, DetailLength, DurationValue, InductancePerLengthValue, PlanLength, SpeedValue,
    TemperatureDifferenceValue, TemperatureValue, VolumeValue, WorkSpeedValue, round,
};
use loopwright::quantity::parse;

fn json(value: impl serde::Serialize) -> String {
    serde_json::to_string(&value).unwrap()
}

fn si<D: Dimension>(text: &str) -> D::Si {
    parse::<D>(text).unwrap_or_else(|fault| panic!("{text}: {fault:?}")).si
}

#[test]
fn halves_go_away_from_zero_and_nothing_is_below_it() {
    for (value, decimals, expected) in [
        (2.5, 0, 3.0),
        (-2.5, 0, -3.0),
        (1.005, 2, 1.01), // slightly below in binary
        (-1.005, 2, -1.01),
        (4.7625, 3, 4.763),
        (1234.4, 0, 1234.0),
        (1250.0, -2, 1300.0),
        (0.4, 0, 0.0),
        (1e6 + 0.049, 1, 1e6),
    ] {
        assert_eq!(round(value, decimals), expected, "{value}");
    }
    assert!(round(-0.4, 0).is_sign_positive());
}

/// What the guard takes back is noise: a digit that somebody could have meant stays.
#[test]
fn rounding_guards_against_noise_alone() {
    assert_eq!(round(0.499_999_999_99, 0), 0.0);
    assert_eq!(round(0.499_999_999_999_9, 0), 1.0);
    assert_eq!(round(999.499_999_99, 0), 999.0);
    assert_eq!(round(999_999.499_999_999_9, 0), 1e6);
    assert_eq!(round(-999_999.499_999_999_9, 0), -1e6);
    assert_eq!(round(-0.499_999_999_99, 0), 0.0);
}

#[test]
fn lengths_in_words() {
    let yard = si::<Length>("12.84 ft");
    assert_eq!([format_length(yard, UsCustomary), format_length(yard, Metric)], ["12.8 ft", "3.91 m"]);
    assert_eq!([format_length_input(yard, UsCustomary), format_length_input(yard, Metric)], ["12.84 ft", "3.9136 m"]);
    let cover = si::<Length>("1.3904 in");
    let said = |inches: &str, mark| format_detail_length(si::<Length>(inches), mark, UsCustomary);
    assert_eq!(format_detail_length(cover, TapeReading::Nearest, Metric), "35.3 mm");
    assert_eq!(said("1.3904 in", TapeReading::Nearest), "1-3/8 in");
    // A slot of less would be too shallow.
    assert_eq!(said("1.3904 in", TapeReading::AtLeast), "1-7/16 in");
    assert_eq!(said("1.43 in", TapeReading::AtMost), "1-3/8 in");
    for mark in [TapeReading::Nearest, TapeReading::AtLeast, TapeReading::AtMost] {
        assert_eq!(
            ["0.1875 in", "3.9999 in", "0.13 in"].map(|inches| said(inches, mark)),
            ["3/16 in", "4 in", "0.13 in"]
        );
    }
    assert_eq!(["loop", "day"].map(|thing| format_count(1.0, thing)), ["1 loop", "1 day"]);
    assert_eq!(
        [format_count(0.0, "loop"), format_count(3.0, "loop"), format_count(1.5, "day")],
        ["0 loops", "3 loops", "1.5 days"]
    );
}

#[test]
fn temperatures_in_words() {
    let cold = si::<Temperature>("-3.456 °C");
    assert_eq!([format_temperature(cold, UsCustomary), format_temperature(cold, Metric)], ["25.8 °F", "-3.5 °C"]);
    assert_eq!(
        [format_temperature_input(cold, UsCustomary), format_temperature_input(cold, Metric)],
        ["25.78 °F", "-3.46 °C"]
    );
    let margin = si::<TemperatureDifference>("3 °C");
    assert_eq!(
        [format_temperature_difference(margin, UsCustomary), format_temperature_difference(margin, Metric)],
        ["5.4 °F", "3 °C"]
    );
}

/// Minutes to two hours, hours to two days.
#[test]
fn durations_in_words() {
    for (text, expected) in [
        ("45 min", "45 min"),
        ("119 min", "119 min"),
        ("119.69 min", "120 min"),
        ("119.7 min", "2 h"),
        ("2 h", "2 h"),
        ("3.54 h", "3.5 h"),
        ("47.9 h", "47.9 h"),
        ("48 h", "2 days"),
        ("100 h", "4.2 days"),
    ] {
        assert_eq!(format_duration(si::<Time>(text)), expected, "{text}");
    }
}

#[test]
fn both_systems_from_one_value() {
    assert_eq!(json(PlanLength(si::<Length>("10 ft"))), r#"{"ft":10.0,"m":3.048}"#);
    assert_eq!(json(DetailLength(si::<Length>("3/16 in"))), r#"{"inch":0.1875,"mm":4.763}"#);
    assert_eq!(json(TemperatureValue(si::<Temperature>("23 °C"))), r#"{"f":73.4,"c":23.0}"#);
    assert_eq!(json(TemperatureDifferenceValue(si::<TemperatureDifference>("2.5 °C"))), r#"{"f":4.5,"c":2.5}"#);
    assert_eq!(json(DepthPerDayValue(si::<DepthPerDay>("1/8 in/day"))), r#"{"inch_per_day":0.125,"mm_per_day":3.175}"#);
    assert_eq!(json(SpeedValue(si::<Speed>("10 mph"))), r#"{"mph":10.0,"km_h":16.09}"#);
    assert_eq!(json(WorkSpeedValue(si::<Speed>("6 ft/min"))), r#"{"ft_per_min":6.0,"m_per_min":1.829}"#);
    assert_eq!(json(VolumeValue(si::<Volume>("29 fl oz"))), r#"{"fl_oz":29.0,"ml":858.0}"#);
    assert_eq!(json(DurationValue(si::<Time>("1 h 30 min"))), r#"{"h":1.5,"min":90.0,"s":5400.0}"#);
    let lead_in = InductancePerLengthValue(si::<InductancePerLength>("0.22 uH/ft"));
    assert_eq!(json(lead_in), r#"{"uh_per_ft":0.22,"uh_per_m":0.7218}"#);
}

#[test]
fn accessors_are_rounded_as_the_fields_are_and_the_value_is_not() {
    let third = PlanLength(si::<Length>("10 ft") / 3.0);
    assert_eq!((third.ft(), third.m()), (3.33, 1.016));
    assert_eq!(PlanLength(third.0 * 3.0).ft(), 10.0);
    assert_eq!((PlanLength(-third.0).abs().m(), PlanLength::zero().ft()), (1.016, 0.0));
}
