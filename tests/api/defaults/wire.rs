//! Wire by gauge: what is over it where nobody said, and what is in it.

use serde_json::{Value, json};

use super::super::requests::{all, with, without};
use super::{answered, assumed, number};

/// Requests that hold a wire, each with its place.
fn with_wire(wire: &Value) -> Vec<(&'static str, &'static str, Value)> {
    let place = |calculation: &str| match calculation {
        "loop-sizing" | "cure-guidance" => "/wire",
        "detector-compatibility" | "material-estimate" => "/loops/0/loop/wire",
        _ => "/loop/wire",
    };
    // Of a loop in the ground nobody knows the wire.
    let all =
        all().into_iter().filter(|(calculation, _)| *calculation != "existing-loop").map(|(calculation, request)| {
            let request = with(&request, place(calculation), wire.clone());
            // The slot that was sent is that of thin wire.
            let request = if request.get("slot").is_some() { without(&request, "/slot") } else { request };
            (calculation, place(calculation), request)
        });
    all.collect()
}

#[test]
fn every_gauge_alone_is_answered_with_the_insulation_of_loop_wire() {
    // Bare, and 0.130 in less 14 AWG of 0.0641 in; 14 AWG and 1.5 mm2 are the usual loop wire itself.
    let rows = [
        ("8 AWG", "0.194 in"),
        ("10 AWG", "0.168 in"),
        ("12 AWG", "0.147 in"),
        ("14 AWG", "0.130 in"),
        ("1.5 mm2", "0.130 in"),
        ("2.5 mm2", "3.46 mm"),
        ("16 AWG", "0.117 in"),
        ("18 AWG", "0.106 in"),
        ("24 AWG", "0.086 in"),
    ];
    for (gauge, over) in rows {
        for (calculation, place, request) in with_wire(&json!({ "gauge": gauge })) {
            let answer = answered(calculation, &request);
            // The cure needs nothing of the wire but its rating.
            if calculation != "cure-guidance" {
                let value = assumed(&answer, &format!("#{place}/over_insulation")).0;
                assert_eq!(value, over, "{calculation} {gauge}");
            }
        }
    }
}

#[test]
fn a_default_gauge_gives_way_to_thin_insulation() {
    for (over, gauge) in [("0.07 in", "14 AWG"), ("0.06 in", "18 AWG"), ("0.03 in", "24 AWG")] {
        for (calculation, place, request) in with_wire(&json!({ "over_insulation": over })) {
            let answer = answered(calculation, &request);
            if calculation != "cure-guidance" {
                assert_eq!(assumed(&answer, &format!("#{place}/gauge")).0, gauge, "{calculation} {over}");
            }
        }
    }
}

#[test]
fn a_default_wire_goes_into_the_jacket_that_was_sent() {
    let coil =
        json!({ "along_travel": "6 ft", "across_lane": "6 ft", "turns": 3, "wire": { "over_jacket": "0.05 in" } });
    let request = json!({ "loops": [{ "label": "one", "loop": coil, "construction": "preformed_saw_cut" }] });
    let report = answered("material-estimate", &request);
    assert_eq!(number(&report, "/inputs/loops/0/loop/wire/over_insulation/inch"), 0.05);
    assert_eq!(report.body["inputs"]["loops"][0]["loop"]["wire"]["gauge"], "20 AWG");
    answered("material-estimate", &with(&request, "/loops/0/construction", "hand_wound"));
}

#[test]
fn a_jacket_counts_in_the_slot_of_a_sized_loop() {
    let job = json!({
        "opening": { "width": "24 ft", "barrier": "slide_gate" }, "roles": ["exit"], "construction": "preformed_saw_cut",
        "wire": { "over_jacket": "5/16 in" }, "slot": { "width": "3/16 in", "cover": "1-1/4 in" }
    });
    let answer = answered("loop-sizing", &job);
    assert!(answer.findings("stop").contains(&"slot_too_narrow"));
    // 1-1/4 in and a jacket of 5/16 in, in the next quarter of an inch.
    assert_eq!(number(&answer, "/loops/0/slot_depth/inch"), 1.75);
    assert!(!answer.body["unused"].as_array().unwrap().contains(&json!("#/wire/over_jacket")));
}
