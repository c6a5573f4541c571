//! The winter job at the invented Tern Island Boatyard: air from -4 to 6 °C, damp.

use serde_json::Value;

use super::{HOT, ONE, TWO, alternative, ask, message, reasons, verdict};
use crate::requests::with;

const REQUEST: &str = include_str!("../../../openapi/examples/cure-guidance/winter_gate_damp.request.json");

fn winter(kind: &str) -> Value {
    with(&serde_json::from_str(REQUEST).unwrap(), "/sealant/kind", kind)
}

#[test]
fn warm_air_on_a_frozen_damp_slab_is_a_go_for_no_sealant() {
    let rows = winter(ONE)["weather"]["conditions"].as_array().unwrap().clone();
    let celsius = |row: &Value| row["air"].as_str().unwrap().trim_end_matches(" °C").parse::<f64>().unwrap();
    let first = rows.iter().find(|row| celsius(row) >= 5.0).unwrap();
    assert_eq!(first["time"], winter(ONE)["start"], "the start is the hour at which the air first reaches 5 °C");
    for kind in [ONE, TWO, HOT] {
        let answer = ask(&winter(kind));
        assert_eq!(verdict(&answer), "do_not_apply", "{kind}");
        for code in ["slab_frozen", "near_dew_point", "slot_damp", "surface_assumed"] {
            assert!(reasons(&answer).contains(&code), "{kind}: {code} is not among {:?}", reasons(&answer));
        }
        let slab = message(&answer, "slab_frozen");
        assert!(slab.contains("-4 °C") && slab.contains("Measure the slab"), "{slab}");
        assert!(message(&answer, "slot_damp").starts_with("The slot is damp"));
        assert!(answer.body["windows"].as_array().unwrap().is_empty());
        for other in [ONE, TWO, HOT] {
            let row = alternative(&answer, other);
            assert!(["wait", "do_not_apply"].contains(&row["verdict"].as_str().unwrap()), "{row}");
            assert_eq!(row["is_chosen"], other == kind);
        }
    }
}

#[test]
fn the_advice_is_that_of_a_careful_foreman() {
    let answer = ask(&winter(ONE));
    let advice: Vec<_> =
        answer.body["handling"].as_array().unwrap().iter().map(|advice| advice["code"].as_str().unwrap()).collect();
    assert_eq!(
        advice,
        [
            "store_warm",
            "condition_cartridges",
            "dry_and_warm_slot",
            "check_by_touch",
            "cap_part_used",
            "keep_wheels_off"
        ]
    );
    // It says where a deadline stands, and that nothing meets it.
    assert!(
        message(&answer, "opens_late").contains("Nothing in this weather meets it"),
        "{}",
        message(&answer, "opens_late")
    );
    let cautions: Vec<_> = answer.body["cautions"].as_array().unwrap().iter().map(|caution| &caution["code"]).collect();
    assert!(cautions.iter().any(|code| **code == "sealant") && cautions.iter().any(|code| **code == "work_zone"));
    assert_eq!(answer.body["shelf"]["ends_on"], "2026-06-12");
}

#[test]
fn a_measured_warm_dry_slab_turns_the_same_hour_for_two_part() {
    let mut request = winter(TWO);
    for row in request["weather"]["conditions"].as_array_mut().unwrap() {
        row["surface"] = "9 °C".into();
    }
    let request = with(&with(&request, "/surface_condition", "dry"), "/needed_open_by", "2026-01-20T20:00:00-05:00");
    let answer = ask(&request);
    assert_eq!((verdict(&answer), reasons(&answer)), ("go_with_care", vec!["cold_after_skin"]));
    // One part skins over too slowly for the evening's cold and rain.
    assert_eq!(alternative(&answer, ONE)["verdict"], "do_not_apply");
}
