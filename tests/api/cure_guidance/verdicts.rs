//! What stops the work, what asks for care, and which hours would do.

use serde_json::{Value, json};

use super::{HOT, ONE, TWO, alternative, ask, at, finding, message, mild, reasons, request, span, steady, verdict};
use crate::requests::{with, without};

/// With another value in one row.
fn row(request: &Value, index: usize, field: &str, value: impl Into<Value>) -> Value {
    with(request, &format!("/weather/conditions/{index}/{field}"), value)
}

/// Hot-applied sealant on wire that stands it.
fn hot(conditions: Vec<Value>) -> Value {
    with(&request(HOT, conditions), "/wire", json!({ "insulation_rating": "400 °F" }))
}

#[test]
fn a_dry_slot_in_mild_weather_is_a_go_for_every_kind() {
    for request in [request(ONE, mild(24)), request(TWO, mild(24)), hot(mild(24))] {
        let answer = ask(&request);
        assert_eq!((verdict(&answer), reasons(&answer)), ("go", vec!["fit_to_apply"]), "{:#}", answer.body["findings"]);
        assert_eq!(answer.body["windows"][0]["start"], json!(at(0)));
    }
}

#[test]
fn water_and_frost_stop_every_kind_and_damp_what_does_not_take_it() {
    let rows = [
        (ONE, "wet", "slot_wet", "wait"),
        (TWO, "wet", "slot_wet", "wait"),
        (HOT, "wet", "slot_wet", "wait"),
        (ONE, "frost", "slab_frozen", "wait"),
        (TWO, "frost", "slab_frozen", "wait"),
        (HOT, "frost", "slab_frozen", "wait"),
        (ONE, "damp", "slot_damp", "go_with_care"),
        (TWO, "damp", "slot_damp", "wait"),
        (HOT, "damp", "slot_damp", "wait"),
    ];
    for (kind, condition, code, expected) in rows {
        let request = with(&with(&hot(mild(24)), "/sealant/kind", kind), "/surface_condition", condition);
        let answer = ask(&request);
        assert_eq!((verdict(&answer), reasons(&answer)), (expected, vec![code]), "{kind} {condition}");
    }
    let allowed = with(&request(TWO, mild(24)), "/sealant/data_sheet", json!({ "damp_slot_allowed": true }));
    assert_eq!(verdict(&ask(&with(&allowed, "/surface_condition", "damp"))), "go_with_care");
}

#[test]
fn a_slot_that_nobody_looked_at_is_never_a_plain_go() {
    let answer = ask(&without(&request(TWO, mild(6)), "/surface_condition"));
    assert_eq!((verdict(&answer), reasons(&answer)), ("go_with_care", vec!["surface_condition_assumed"]));
}

#[test]
fn a_slab_less_than_3_degrees_above_the_dew_point_is_stopped() {
    // Air of 5 °C at 80 % has its dew point at 1.84 °C: a margin of 1.16 °C stops, one of 4.16 °C does not.
    for (surface, margin, expected) in
        [("3 °C", 1.16, "do_not_apply"), ("4.7 °C", 2.86, "do_not_apply"), ("4.9 °C", 3.06, "go"), ("6 °C", 4.16, "go")]
    {
        let request = request(TWO, steady(12, "5 °C", surface, 80));
        let sheet = json!({ "minimum_application_temperature": "0 °C" });
        let answer = ask(&with(&request, "/sealant/data_sheet", sheet));
        assert_eq!(verdict(&answer), expected, "{surface}");
        let shown = answer.body["hourly"][0]["dew_point_margin"]["c"].as_f64().unwrap();
        assert!((shown - margin).abs() <= 0.05, "{surface}: {shown}");
        assert_eq!(answer.findings("stop").contains(&"near_dew_point"), expected != "go");
    }
}

#[test]
fn cold_stops_the_work_unless_the_sheet_allows_it() {
    for (air, surface, code) in [
        ("4 °C", "10 °C", "below_minimum_temperature"),
        ("10 °C", "4 °C", "below_minimum_temperature"),
        ("10 °C", "0 °C", "below_minimum_temperature"),
    ] {
        let answer = ask(&request(TWO, steady(12, air, surface, 30)));
        assert_eq!((verdict(&answer), reasons(&answer)), ("do_not_apply", vec![code]), "{air} {surface}");
    }
    let cold = with(
        &request(TWO, steady(12, "1 °C", "2 °C", 30)),
        "/sealant/data_sheet",
        json!({ "minimum_application_temperature": "25 °F" }),
    );
    assert_eq!(verdict(&ask(&cold)), "go");
    // 40 °F and rising: it may not fall below before the skin is there.
    let falling = row(&request(ONE, steady(24, "10 °C", "10 °C", 50)), 3, "air", "4 °C");
    let answer = ask(&falling);
    assert_eq!(
        (reasons(&answer), answer.body["hourly"][0]["can_apply"].as_bool()),
        (vec!["cold_before_skin"], Some(false))
    );
    assert!(message(&answer, "cold_before_skin").contains("2026-05-01 03:00"));
    let two = ask(&with(&falling, "/sealant/kind", TWO));
    assert_eq!((verdict(&two), reasons(&two)), ("go_with_care", vec!["cold_after_skin"]), "two parts have set by then");
}

#[test]
fn rain_before_the_skin_stops_and_rain_after_it_does_not() {
    let chance = |index, percent| row(&request(ONE, mild(24)), index, "precipitation_probability_percent", percent);
    // The last foot is sealed after an hour, and has its skin after three more.
    for (index, percent, expected) in [
        (0, 50, vec!["rain_before_skin"]),
        (3, 50, vec!["rain_before_skin"]),
        (3, 49, vec!["rain_possible"]),
        (3, 20, vec!["rain_possible"]),
        (3, 19, vec!["fit_to_apply"]),
        (4, 100, vec!["rain_after_skin"]),
        (5, 100, vec!["fit_to_apply"]),
    ] {
        assert_eq!(reasons(&ask(&chance(index, percent))), expected, "{index} {percent} %");
    }
    let falls = |index, text: &str| row(&request(ONE, mild(24)), index, "precipitation", text);
    assert_eq!(reasons(&ask(&falls(1, "0.2 mm"))), ["rain_before_skin"]);
    assert_eq!(reasons(&ask(&falls(1, "0.1 mm"))), ["rain_possible"]);
    assert_eq!(reasons(&ask(&falls(0, "0.1 mm"))), ["rain_before_skin"], "the slot is open");
    let silent = without(&request(ONE, mild(24)), "/weather/conditions/2/precipitation_probability_percent");
    assert_eq!((verdict(&ask(&silent)), reasons(&ask(&silent))), ("go_with_care", vec!["rain_unknown"]));
}

#[test]
fn windows_are_the_hours_that_would_do() {
    // Rain in the hour from 10:00 has dried by 13:00; the work and one part's skin need four dry hours, and as many of forecast.
    let wet = row(&request(ONE, mild(24)), 10, "precipitation_probability_percent", 80);
    let answer = ask(&with(&wet, "/start", at(9)));
    assert_eq!(verdict(&answer), "wait");
    let windows = answer.body["windows"].as_array().unwrap();
    assert_eq!((windows.len(), &windows[0]["start"], &windows[0]["end"]), (1, &json!(at(13)), &json!(at(20))));
    assert_eq!(windows[0]["ends_because"]["code"], "forecast_too_short");
    let hours = answer.body["hourly"].as_array().unwrap();
    let can: Vec<_> = hours.iter().map(|hour| hour["can_apply"].as_bool().unwrap()).collect();
    assert_eq!(can, (9..24).map(|hour| (13..=20).contains(&hour)).collect::<Vec<_>>());
    assert_eq!(alternative(&answer, ONE)["earliest_start"], json!(at(13)));
    assert_eq!(
        (&alternative(&answer, TWO)["verdict"], &alternative(&answer, TWO)["milestones_from"]),
        (&json!("wait"), &json!(at(13)))
    );
    // Each window's hours, asked about as a start, are a go; the hour before is not.
    for (start, expected) in [(13, "go_with_care"), (20, "go"), (8, "wait"), (10, "wait")] {
        assert_eq!(verdict(&ask(&with(&wet, "/start", at(start)))), expected, "{start}");
    }
}

#[test]
fn a_slab_that_was_not_measured_is_as_cold_as_the_last_night() {
    let mut conditions = steady(24, "12 °C", "12 °C", 40);
    for (hour, row) in conditions.iter_mut().enumerate() {
        row.as_object_mut().unwrap().shift_remove("surface");
        row["air"] = json!(if hour == 3 { "6 °C" } else { "12 °C" });
    }
    let surfaces: Vec<_> = ask(&request(TWO, conditions.clone())).body["hourly"]
        .as_array()
        .unwrap()
        .iter()
        .map(|hour| (hour["surface_is_assumed"].as_bool().unwrap(), hour["surface"]["c"].as_f64().unwrap()))
        .collect();
    for (hour, expected) in [(0, 10.0), (3, 4.0), (5, 4.0), (6, 6.0), (15, 6.0), (16, 12.0), (17, 12.0), (18, 10.0)] {
        assert_eq!(surfaces[hour], (true, expected), "{hour}:00");
    }
    let answer = ask(&with(&request(TWO, conditions), "/start", at(16)));
    assert_eq!((verdict(&answer), reasons(&answer)), ("go_with_care", vec!["surface_assumed"]));
    let assumed = &answer.body["assumed"]
        .as_array()
        .unwrap()
        .iter()
        .find(|entry| entry["about"] == "#/weather/conditions/16/surface");
    assert_eq!(assumed.unwrap()["value"], "12 °C");
}

#[test]
fn a_summer_heat_shortens_pot_life_and_may_pass_the_sheet() {
    let heat = request(TWO, steady(12, "35 °C", "52 °C", 30));
    let answer = ask(&heat);
    assert_eq!((verdict(&answer), reasons(&answer)), ("go_with_care", vec!["short_pot_life"]));
    let sheet = json!({ "pot_life": "8 min", "maximum_application_temperature": "50 °C" });
    let answer = ask(&with(&heat, "/sealant/data_sheet", sheet));
    assert_eq!(
        (verdict(&answer), reasons(&answer)),
        ("do_not_apply", vec!["above_maximum_temperature", "short_pot_life"])
    );
    // exp(E/R (1/296.15 - 1/325.15)) at 45 and 60 kJ/mol: 5.1 and 8.8 times faster.
    let minutes = ["least", "most"].map(|key| answer.body["pot_life"][key]["min"].as_f64().unwrap());
    assert!((minutes[0] - 0.91).abs() < 0.02 && (minutes[1] - 1.57).abs() < 0.02, "{minutes:?}");
    let advice = answer.body["handling"].to_string();
    assert!(advice.contains("mix_small") && advice.contains("keep_shaded"), "{advice}");
}

#[test]
fn hot_sealant_wants_wire_that_stands_it_and_cools() {
    let unknown = ask(&request(HOT, mild(6)));
    assert_eq!((verdict(&unknown), reasons(&unknown)), ("do_not_apply", vec!["insulation_unknown"]));
    assert!(message(&unknown, "insulation_unknown").contains("on the wire's sheet"));
    assert_eq!(finding(&unknown, "insulation_unknown")["send"], json!(["#/wire/insulation_rating"]));
    for (rating, pour, expected) in [
        ("386 °F", "387 °F", false),
        ("387 °F", "387 °F", true),
        ("90 °C", "170 °C", false),
        ("200 °C", "170 °C", true),
    ] {
        let request = with(&request(HOT, mild(6)), "/wire", json!({ "insulation_rating": rating }));
        let answer = ask(&with(&request, "/sealant/data_sheet", json!({ "pour_temperature": pour })));
        assert_eq!(verdict(&answer), if expected { "go" } else { "do_not_apply" }, "{rating} {pour}");
        assert_eq!(answer.findings("stop"), if expected { vec![] } else { vec!["insulation_too_low"] });
    }
    let answer = ask(&hot(mild(6)));
    assert_eq!(span(&answer, "open_to_traffic"), ["2026-05-01T00:15:00-04:00", "2026-05-01T01:00:00-04:00"]);
    assert_eq!(answer.body["milestones"].as_array().unwrap().len(), 1);
    assert!(answer.body.get("equivalent_hours").is_none() && answer.body["hourly"][0].get("rate_low").is_none());
    let cautions = answer.body["cautions"].to_string();
    assert!(cautions.contains("hot_work") && cautions.contains("classified_area"));
}

#[test]
fn a_deadline_is_met_missed_or_in_doubt_and_what_would_meet_it_is_named() {
    let by = |kind, hour| ask(&with(&request(kind, mild(24)), "/needed_open_by", at(hour)));
    // One part carries traffic 3 to 6 h after the last foot, if a skin of 6 mm does; two parts are fast enough for sure.
    assert_eq!(reasons(&by(ONE, 7)), ["traffic_by_skin"]);
    assert_eq!(verdict(&by(TWO, 7)), "go");
    let doubt = by(ONE, 6);
    assert_eq!((verdict(&doubt), reasons(&doubt)), ("go_with_care", vec!["opens_late"]));
    let missed = by(ONE, 3);
    assert_eq!((verdict(&missed), reasons(&missed)), ("do_not_apply", vec!["opens_late"]));
    let what = message(&missed, "opens_late");
    assert!(what.contains("two-part, reactive sealant from 2026-05-01 00:00"), "{what}");
    assert_eq!(alternative(&missed, TWO)["earliest_start"], json!(at(0)));
    // Beyond the weather nobody knows.
    let beyond = ask(&with(&request(ONE, steady(4, "8 °C", "10 °C", 40)), "/needed_open_by", at(30)));
    assert!(
        reasons(&beyond).contains(&"forecast_too_short") && verdict(&beyond) == "go_with_care",
        "{:?}",
        reasons(&beyond)
    );
}
