//! What a careful foreman adds: heat, a skin that is no cure, weather that begins too late, and words on the caller's scale.

use serde_json::{Value, json};

use super::{HOT, ONE, TWO, ask, at, finding, message, mild, milestone, reasons, request, span, steady, verdict};
use crate::harness::calculate;
use crate::requests::{with, without};

fn heat(kind: &str) -> Value {
    request(kind, steady(24, "38 °C", "56 °C", 40))
}

#[test]
fn a_hot_slab_is_no_plain_go_for_one_part() {
    let answer = ask(&heat(ONE));
    assert_eq!((verdict(&answer), reasons(&answer)), ("go_with_care", vec!["hot_slab"]));
    assert!(message(&answer, "hot_slab").starts_with("It is 56 °C, and nobody said how hot"));
    let known = with(&heat(ONE), "/sealant/data_sheet", json!({ "maximum_application_temperature": "60 °C" }));
    assert_eq!((verdict(&ask(&known)), reasons(&ask(&known))), ("go", vec!["fit_to_apply"]));
    let passed = with(&heat(ONE), "/sealant/data_sheet", json!({ "maximum_application_temperature": "50 °C" }));
    let what = ask(&passed);
    assert!(message(&what, "above_maximum_temperature").starts_with("The slab is at 56 °C, above the 50 °C"));
    assert_eq!(what.body["findings"][0]["about"], "#/weather/conditions/0/surface");
    // 90 °F is where it begins.
    for (air, expected) in [("89 °F", "fit_to_apply"), ("90 °F", "hot_slab")] {
        assert_eq!(reasons(&ask(&request(ONE, steady(24, air, air, 40)))), [expected], "{air}");
    }
}

#[test]
fn heat_hastens_one_part_by_the_water_of_the_air_alone_and_shortens_its_pot_life_in_full() {
    // 40 % at 38 °C is 1.890 times the water of 23 °C and 50 %: 3 h take 95 min, however hot the slab, and 2 h take 64.
    let answer = ask(&heat(ONE));
    assert_eq!(span(&answer, "skin_over"), ["2026-05-01T01:04:00-04:00", "2026-05-01T01:35:00-04:00"]);
    assert_eq!(milestone(&answer, "full_cure").get("earliest"), None, "an inch takes days, in heat, too");
    let rates = ["rate_low", "rate_high"].map(|key| answer.body["hourly"][0][key].as_f64().unwrap());
    assert!(rates.iter().all(|rate| (rate - 1.890).abs() < 0.002), "{rates:?}");
    // A sheet that holds at 40 °C is followed as far as that: by both laws traffic returns at one time.
    let sheet = json!({ "open_to_traffic": "200 min", "at_temperature": "40 °C" });
    let [earliest, latest] = span(&ask(&with(&heat(ONE), "/sealant/data_sheet", sheet)), "open_to_traffic");
    assert_eq!(earliest, latest);
    let pot = ask(&with(&heat(ONE), "/sealant/data_sheet", json!({ "pot_life": "30 min" })));
    let minutes = ["least", "most"].map(|key| pot.body["pot_life"][key]["min"].as_f64().unwrap());
    // 30 / 1.890, and exp(60000/8.314 (1/296.15 - 1/329.15)) = 11.51 times less.
    assert!((minutes[1] - 15.87).abs() < 0.05 && (minutes[0] - 1.379).abs() < 0.01, "{minutes:?}");
}

#[test]
fn a_skin_that_stands_in_for_the_sheet_says_so_and_is_not_relied_on() {
    let plain = ask(&request(ONE, mild(24)));
    assert!(verdict(&plain) == "go" && plain.findings("note").contains(&"traffic_by_skin"));
    let what = message(&plain, "traffic_by_skin");
    assert!(what.contains("skin of 6 mm") && what.contains("nothing tracks"), "{what}");
    assert!(message(&plain, "front_calibrated").contains("not validated"));
    let us = with(&request(ONE, steady(24, "73 °F", "73 °F", 50)), "/slot", json!({ "cover": "3/8 in" }));
    assert!(message(&ask(&us), "traffic_by_skin").contains("skin of 3/16 in"), "half of a thin cover");
    let needed = with(&request(ONE, mild(24)), "/needed_open_by", at(8));
    let relied = ask(&needed);
    assert_eq!((verdict(&relied), reasons(&relied)), ("go_with_care", vec!["traffic_by_skin"]));
    let told = ask(&with(&needed, "/sealant/data_sheet", json!({ "open_to_traffic": "7 h" })));
    assert_eq!((verdict(&told), reasons(&told)), ("go", vec!["fit_to_apply"]));
    for kind in [TWO, HOT] {
        assert!(!ask(&request(kind, mild(24))).findings("note").contains(&"traffic_by_skin"), "{kind}");
    }
}

#[test]
fn a_deadline_beyond_the_weather_is_not_called_late() {
    // The skin may be there within the five hours that are known, and need not be.
    let answer = ask(&with(&request(ONE, mild(5)), "/needed_open_by", at(48)));
    assert_eq!((verdict(&answer), reasons(&answer)), ("go_with_care", vec!["forecast_too_short"]));
    assert_eq!(answer.body["findings"][0]["about"], "#/needed_open_by");
}

/// A sky of 12 °C in which nobody measured the slab.
fn unmeasured(hours: usize) -> Vec<Value> {
    steady(hours, "12 °C", "12 °C", 40).iter().map(|row| without(row, "/surface")).collect()
}

#[test]
fn a_night_that_was_not_sent_is_not_known() {
    let of = |start: usize| ask(&with(&request(TWO, unmeasured(24)), "/start", at(start)));
    let short = of(11);
    assert_eq!((verdict(&short), reasons(&short)), ("go_with_care", vec!["surface_assumed"]));
    let what = message(&short, "surface_assumed");
    assert!(what.contains("begins only at 2026-05-01 00:00") && what.contains("say what it is"), "{what}");
    assert_eq!(finding(&short, "surface_assumed")["send"], json!(["#/weather/conditions/11/surface"]));
    let long = of(12);
    assert!(message(&long, "surface_assumed").contains("the lowest air of the last 12 hours"));
}

#[test]
fn what_is_said_stands_on_the_scale_of_the_caller() {
    let rows = |scale: &str| {
        let (air, slab) = if scale == "°F" { ("54 °F", "54 °F") } else { ("12.22 °C", "12.22 °C") };
        steady(24, air, slab, 40)
    };
    let assumed = |scale: &str| {
        let rows = rows(scale).iter().map(|row| without(row, "/surface")).collect();
        let answer = ask(&request(TWO, rows));
        let all = answer.body["assumed"].as_array().unwrap().clone();
        let slab = all.iter().find(|entry| entry["about"] == "#/weather/conditions/0/surface").unwrap();
        slab["value"].as_str().unwrap().to_owned()
    };
    // Midnight: 2 °C (3.6 °F) less than the air.
    assert_eq!((assumed("°F"), assumed("°C")), ("50.4 °F".to_owned(), "10.22 °C".to_owned()));
    let contradiction = |scale: &str, dew: &str| {
        let wrong = with(&request(TWO, rows(scale)), "/weather/conditions/1/dew_point", dew);
        let errors = calculate("cure-guidance", &wrong).body["errors"].as_array().unwrap().clone();
        assert_eq!(errors.len(), 1, "{errors:?}");
        errors[0]["detail"].as_str().unwrap().to_owned()
    };
    assert_eq!(contradiction("°F", "50 °F"), "At this humidity the dew point is 30.2 °F.");
    assert_eq!(contradiction("°C", "10 °C"), "At this humidity the dew point is -1 °C.");
    assert_eq!(contradiction("°C", "15 °C"), "The dew point lies above the air.");
}

#[test]
fn at_the_dew_point_water_condenses_and_near_it_it_may() {
    let near = |surface: &str, humidity| {
        let answer = ask(&request(TWO, steady(12, "8 °C", surface, humidity)));
        message(&answer, "near_dew_point").to_owned()
    };
    let fog = near("8 °C", 100);
    assert!(fog.starts_with("The slab is at 8 °C, at the dew point of 8 °C: water condenses on it."), "{fog}");
    let damp = near("8 °C", 90);
    assert!(damp.contains("only 1.5 °C above the dew point of 6.5 °C: water may condense on it."), "{damp}");
    let cold = near("5 °C", 90);
    assert!(cold.contains("1.5 °C below the dew point of 6.5 °C: water condenses on it."), "{cold}");
}

#[test]
fn a_sheet_is_corrected_at_once() {
    let absurd = json!({
        "skin_over": "5 h", "open_to_traffic": "1 h", "full_cure": "30 min", "at_temperature": "cold",
        "minimum_application_temperature": "20 °C", "maximum_application_temperature": "10 °C"
    });
    let answer = calculate("cure-guidance", &with(&request(ONE, mild(3)), "/sealant/data_sheet", absurd));
    let mut fields: Vec<_> = answer.faults().into_iter().map(|(pointer, _)| pointer).collect();
    fields.sort();
    let expected = ["at_temperature", "full_cure", "maximum_application_temperature", "open_to_traffic"];
    assert_eq!(fields, expected.map(|field| format!("#/sealant/data_sheet/{field}")));
}

#[test]
fn words_fit_what_was_sent() {
    let made = |made_on: &str| ask(&with(&request(ONE, mild(24)), "/sealant/made_on", made_on));
    assert!(message(&made("2025-05-01"), "shelf_life_short").contains("on 2026-05-01, the day of the start."));
    assert!(message(&made("2025-05-02"), "shelf_life_short").contains("on 2026-05-02, in 1 day."));
    assert!(message(&made("2025-05-03"), "shelf_life_short").contains("in 2 days."));
    // What the sheet gave is not asked for again.
    let cools = |sheet: Value| {
        finding(&ask(&with(&request(HOT, mild(6)), "/sealant/data_sheet", sheet)), "cools_not_cures").clone()
    };
    let usual = cools(json!({}));
    assert!(usual["message"].as_str().unwrap().ends_with("Say after what time the sheet lets traffic return."));
    assert_eq!(usual["send"], json!(["#/sealant/data_sheet/open_to_traffic"]));
    let told = cools(json!({ "open_to_traffic": "40 min" }));
    assert!(!told["message"].as_str().unwrap().contains("Say ") && told.get("send").is_none(), "{told:#}");
    // Rain that began before the start is met at the start.
    let wet = with(&request(ONE, mild(24)), "/weather/conditions/0/precipitation_probability_percent", 80);
    let what = ask(&with(&wet, "/start", "2026-05-01T00:20:00-04:00"));
    assert!(message(&what, "rain_before_skin").starts_with("At 2026-05-01 00:20 rain or snow is likely (80 %)"));
    let fit = ask(&request(TWO, mild(6)));
    assert!(
        message(&fit, "fit_to_apply")
            .ends_with("rain is unlikely before the sealant has surely set, by 2026-05-01 01:15. Begin.")
    );
}
