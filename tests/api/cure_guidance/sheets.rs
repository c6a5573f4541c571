//! What a sealant takes: usual times, values of its data sheet, its shelf life, and a forecast that ends first.

use serde_json::{Value, json};

use super::{ONE, TWO, ask, at, message, mild, milestone, reasons, request, span, steady, verdict};
use crate::requests::{with, without};

/// A request with a data sheet.
fn sheet(kind: &str, hours: usize, sheet: Value) -> Value {
    with(&request(kind, mild(hours)), "/sealant/data_sheet", sheet)
}

#[test]
fn one_part_skins_over_in_2_to_3_hours_and_two_parts_set_in_10_to_15_minutes() {
    let one = ask(&request(ONE, mild(24)));
    assert_eq!(span(&one, "skin_over"), [at(2), at(3)]);
    assert_eq!(span(&one, "rain_safe"), span(&one, "skin_over"));
    let two = ask(&request(TWO, mild(24)));
    assert_eq!(span(&two, "skin_over"), ["2026-05-01T00:10:00-04:00", "2026-05-01T00:15:00-04:00"]);
    // 25 and 60 min at 25 °C take a little longer at 23 °C.
    let [earliest, latest] = span(&two, "open_to_traffic");
    assert!(earliest.as_str() > "2026-05-01T00:25" && latest.as_str() < "2026-05-01T01:12", "{earliest} {latest}");
}

#[test]
fn the_practice_slot_cures_through_in_3_to_7_days_as_it_is_calibrated_to() {
    let slot = json!({ "depth": "1-1/2 in", "cover": "1-1/4 in" });
    let answer = ask(&with(&request(ONE, mild(200)), "/slot", slot));
    assert_eq!(span(&answer, "full_cure"), [at(72), at(168)]);
    assert!(message(&answer, "front_calibrated").contains("calibrated"));
}

#[test]
fn values_of_the_sheet_replace_what_is_usual() {
    let answer = ask(&sheet(ONE, 100, json!({ "skin_over": "30 min", "depth_per_day": "10 mm/day" })));
    assert_eq!(span(&answer, "skin_over"), ["2026-05-01T00:20:00-04:00", "2026-05-01T00:30:00-04:00"]);
    // 6 mm of 10 mm in a day: 0.36 days. 25.4 mm: 6.45 days, beyond this forecast.
    assert_eq!(span(&answer, "open_to_traffic"), ["2026-05-01T08:38:00-04:00"; 2]);
    assert_eq!(span(&answer, "full_cure"), ["beyond", "beyond"]);
    // The depth after the 99 h behind the last foot: 10 mm x sqrt(99/24).
    let depth = milestone(&answer, "full_cure")["depth_low"]["mm"].as_f64().unwrap();
    assert!((depth - 20.310).abs() < 0.01, "{depth}");
    let percent = milestone(&answer, "full_cure")["progress_low_percent"].as_f64().unwrap();
    assert!((percent - 80.0).abs() < 0.11, "{percent}");
    assert_eq!(answer.body["inputs"]["sealant"]["data_sheet"]["depth_per_day"]["mm_per_day"], 10.0);

    let times = ask(&sheet(TWO, 24, json!({ "skin_over": "5 min", "open_to_traffic": "20 min", "full_cure": "2 h" })));
    assert_eq!(span(&times, "open_to_traffic"), ["2026-05-01T00:20:00-04:00"; 2]);
    assert_eq!(span(&times, "full_cure"), [at(2), at(2)]);
    // A sheet that knows traffic alone draws the rest along.
    let alone = ask(&sheet(TWO, 24, json!({ "open_to_traffic": "4 min" })));
    assert_eq!(span(&alone, "skin_over"), ["2026-05-01T00:04:00-04:00"; 2]);
}

#[test]
fn a_sheet_that_holds_elsewhere_is_brought_to_the_weather() {
    let climate = json!({ "skin_over": "2 h", "at_temperature": "10 °C", "at_relative_humidity_percent": 70 });
    let cool =
        |sheet: &Value| with(&request(ONE, steady(24, "10 °C", "10 °C", 70)), "/sealant/data_sheet", sheet.clone());
    assert_eq!(span(&ask(&cool(&climate)), "skin_over"), ["2026-05-01T01:20:00-04:00".to_owned(), at(2)]);
    // At 23 °C and 50 % vapour alone is 1.634 times faster: 73 min; with 60 kJ/mol at most 3.06 times more, and two thirds of that.
    let [earliest, latest] = span(&ask(&sheet(ONE, 24, climate)), "skin_over");
    assert_eq!((earliest.as_str(), latest.as_str()), ("2026-05-01T00:16:00-04:00", "2026-05-01T01:13:00-04:00"));
}

#[test]
fn an_activation_energy_of_the_sheet_narrows_the_band() {
    let cold = |energy: Value| {
        let request = with(
            &request(TWO, steady(24, "6 °C", "6 °C", 30)),
            "/sealant/data_sheet",
            json!({ "skin_over": "20 min" }),
        );
        ask(&with(&request, "/sealant/data_sheet/activation_energy_kj_per_mol", energy))
    };
    let [earliest, latest] = span(&cold(json!(50)), "skin_over");
    assert_eq!(earliest, latest);
    // exp(50000/8.314 (1/279.15 - 1/296.15)) = 3.45: 69 min.
    assert_eq!(earliest, "2026-05-01T01:09:00-04:00");
}

#[test]
fn times_that_contradict_each_other_are_refused() {
    for (sheet_, pointer) in [
        (json!({ "skin_over": "1 h", "open_to_traffic": "50 min" }), "open_to_traffic"),
        (json!({ "open_to_traffic": "5 h", "full_cure": "4 h" }), "full_cure"),
        (
            json!({ "minimum_application_temperature": "10 °C", "maximum_application_temperature": "5 °C" }),
            "maximum_application_temperature",
        ),
    ] {
        let answer = crate::harness::calculate("cure-guidance", &sheet(ONE, 3, sheet_));
        assert_eq!(answer.faults(), [(format!("#/sealant/data_sheet/{pointer}"), "contradiction".to_owned())]);
    }
}

#[test]
fn sealant_keeps_for_a_year_from_manufacture() {
    let made = |made_on: &str| with(&request(ONE, mild(24)), "/sealant/made_on", made_on);
    // The start is 2026-05-01.
    for (made_on, ends_on, left, expected) in [
        ("2026-05-01", "2027-05-01", 365, vec!["fit_to_apply"]),
        ("2025-05-01", "2026-05-01", 0, vec!["fit_to_apply"]),
        ("2025-04-30", "2026-04-30", -1, vec!["past_shelf_life"]),
    ] {
        let answer = ask(&made(made_on));
        assert_eq!(answer.body["shelf"], json!({ "ends_on": ends_on, "days_left": left }), "{made_on}");
        assert_eq!(reasons(&answer), expected);
    }
    let old = ask(&made("2024-01-01"));
    assert_eq!(verdict(&old), "do_not_apply", "no hour makes it younger");
    assert_eq!(ask(&made("2025-05-20")).findings("note")[1], "shelf_life_short");
    let short = with(&made("2026-01-01"), "/sealant/shelf_life", "90 d");
    assert_eq!(reasons(&ask(&short)), ["past_shelf_life"]);
    let later = crate::harness::calculate("cure-guidance", &made("2026-05-02"));
    assert_eq!(later.faults(), [("#/sealant/made_on".to_owned(), "contradiction".to_owned())]);
    assert!(ask(&request(ONE, mild(24))).body.get("shelf").is_none());
}

#[test]
fn nothing_is_guessed_beyond_the_forecast() {
    let answer = ask(&request(ONE, mild(2)));
    assert_eq!((verdict(&answer), reasons(&answer)), ("go_with_care", vec!["forecast_too_short"]));
    let skin = milestone(&answer, "skin_over");
    assert!(
        skin.get("earliest").is_none() && skin.get("latest").is_none() && skin.get("depth_low").is_none(),
        "{skin}"
    );
    let progress = ["progress_low_percent", "progress_high_percent"].map(|key| skin[key].as_f64().unwrap());
    assert_eq!(progress, [33.3, 50.0]);
    // A reached milestone needs no progress.
    let reached = ask(&request(ONE, mild(24)));
    assert!(milestone(&reached, "skin_over").get("progress_low_percent").is_none());
}

#[test]
fn humidity_may_come_as_a_dew_point() {
    let by_share = request(ONE, steady(24, "20 °C", "20 °C", 50));
    let mut by_dew_point = by_share.clone();
    for row in by_dew_point["weather"]["conditions"].as_array_mut().unwrap() {
        row.as_object_mut().unwrap().shift_remove("relative_humidity_percent");
        row["dew_point"] = json!("9.261 °C");
    }
    let (one, other) = (ask(&by_share).body, ask(&by_dew_point).body);
    assert_eq!(one["milestones"], other["milestones"]);
    assert_eq!(one["hourly"][0]["dew_point"]["c"], json!(9.26));
    assert!(one["hourly"][0].get("frost_point").is_none());
    let frosty = ask(&request(ONE, steady(3, "-5 °C", "-5 °C", 70)));
    // Over water -9.63, over ice -8.55 °C.
    assert_eq!(frosty.body["hourly"][0]["dew_point"]["c"], json!(-9.63));
    assert_eq!(frosty.body["hourly"][0]["frost_point"]["c"], json!(-8.55));
    let none = without(&by_share, "/weather/conditions/1/relative_humidity_percent");
    let faults = crate::harness::calculate("cure-guidance", &none).faults();
    assert_eq!(faults, [("#/weather/conditions/1/relative_humidity_percent".to_owned(), "field_missing".to_owned())]);
    for wrong in ["25 °C", "15 °C"] {
        let both = with(&by_share, "/weather/conditions/1/dew_point", wrong);
        let faults = crate::harness::calculate("cure-guidance", &both).faults();
        assert!(
            faults.contains(&("#/weather/conditions/1/dew_point".to_owned(), "contradiction".to_owned())),
            "{faults:?}"
        );
    }
}
