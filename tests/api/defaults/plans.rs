//! In a plan the sizing and the estimate decide alike, and say it once.

use serde_json::{Value, json};

use super::{answered, assumed, number, of_code};

fn plan(more: Value) -> Value {
    let mut request = json!({ "opening": { "width": "24 ft", "barrier": "slide_gate" }, "roles": ["exit"] });
    request.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
    request
}

/// What a part of a plan says of its slot.
fn of_slot(report: &Value) -> Vec<Value> {
    let codes = ["slot_too_shallow", "slot_too_narrow"].map(Value::from);
    let findings = report["findings"].as_array().unwrap().iter();
    findings
        .filter(|finding| codes.contains(&finding["code"]) && finding["about"].as_str().unwrap().starts_with("#/slot"))
        .cloned()
        .collect()
}

#[test]
fn a_slot_has_one_verdict_in_a_plan() {
    let slots = [
        (json!({ "width": "1/8 in" }), vec!["stop"]),
        (json!({ "width": "0.14 in" }), vec!["warning"]),
        (json!({ "width": "3/16 in" }), vec![]),
        (json!({ "depth": "3/4 in" }), vec!["warning"]),
        (json!({ "depth": "1/4 in" }), vec!["stop"]),
        (json!({ "depth": "1-1/4 in", "cover": "1.2 in" }), vec!["stop"]),
        (json!({ "width": "1/8 in", "depth": "1/2 in" }), vec!["stop", "warning"]),
    ];
    for (slot, levels) in slots {
        for more in [json!({}), json!({ "construction": "preformed_saw_cut", "wire": { "over_jacket": "0.130 in" } })] {
            let mut request = plan(more);
            request["slot"] = slot.clone();
            let answer = answered("installation-plan", &request);
            let said = of_slot(&answer.body);
            let of = |part: &str| of_slot(&answer.body[part]);
            assert_eq!((&of("sizing"), &of("materials")), (&said, &said), "{request}");
            let found: Vec<_> = said.iter().map(|finding| finding["level"].as_str().unwrap()).collect();
            if request.get("wire").is_none() {
                assert_eq!(found, levels, "{request}");
            }
        }
    }
}

#[test]
fn the_cover_that_gives_way_is_the_same_in_every_part_of_a_plan() {
    let sealed = json!({
        "slot": { "depth": "1-1/4 in" }, "lead_in": { "length": "150 ft" },
        "sealant": { "kind": "one_part_moisture_cure", "finish_below_surface": "1/8 in" },
        "start": "2026-06-01T08:00:00-04:00",
        "weather": { "conditions": [{ "time": "2026-06-01T08:00:00-04:00", "air": "62 °F", "relative_humidity_percent": 60 }] }
    });
    let buried = json!({ "surface": "existing_concrete", "slab": { "reinforcement_depth": "1-3/4 in" } });
    for (more, finish) in [(sealed, 0.125), (buried, 0.0)] {
        let answer = answered("installation-plan", &plan(more));
        let turns = number(&answer, "/sizing/loops/0/turns");
        let left = ((1.25 - 0.130 * turns - finish) * 1e4_f64).round() / 1e4;
        let covers = assumed(&answer, "#/slot/cover");
        let entries = answer.body["assumed"].as_array().unwrap().iter();
        assert_eq!(entries.filter(|entry| entry["about"] == "#/slot/cover").count(), 1);
        let usual = if left < 1.0 { left } else { 1.0 };
        assert_eq!(covers.0, format!("{usual} in"));
        assert!((number(&answer, "/sizing/inputs/cover/inch") - usual).abs() < 1e-3);
        assert!((number(&answer, "/materials/inputs/loops/0/cover/inch") - usual).abs() < 1e-3);
        if finish > 0.0 {
            assert!((number(&answer, "/cure/inputs/slot/cover/inch") - usual).abs() < 1e-3);
        }
        assert!(!answer.findings("stop").iter().any(|code| code.starts_with("slot_too") || *code == "steel_near_cut"));
    }
}

#[test]
fn a_saw_that_cuts_no_diagonals_leaves_the_corners_square() {
    for corner in ["square_overrun", "cored"] {
        let answer = answered("installation-plan", &plan(json!({ "saw": { "corner": corner } })));
        assert_eq!(number(&answer, "/sizing/loops/0/corner_cut/inch"), 0.0);
        assert_eq!(number(&answer, "/materials/inputs/loops/0/loop/corner_cut/inch"), 0.0);
        assert_eq!(number(&answer, "/materials/saw_cut/diagonals/ft"), 0.0);
        assert!(assumed(&answer, "#/saw/corner").1.contains("gives way"));
    }
    let diagonal = answered("installation-plan", &plan(json!({ "saw": { "corner": "diagonal" } })));
    assert!(number(&diagonal, "/sizing/loops/0/corner_cut/inch") > 0.0);
}

#[test]
fn an_agency_says_its_own_beside_the_verdict_of_the_slot() {
    let narrow = json!({
        "slot": { "width": "1/8 in" }, "agency_minimum": { "agency": "Tern Island Harbour Office", "slot_width": "1/4 in" }
    });
    let answer = answered("installation-plan", &plan(narrow));
    let said: Vec<_> =
        of_code(&answer, "slot_too_narrow").into_iter().filter(|finding| finding["about"] == "#/slot/width").collect();
    assert_eq!(said.iter().map(|finding| finding["level"].as_str().unwrap()).collect::<Vec<_>>(), ["stop", "warning"]);
    assert!(said[1]["message"].as_str().unwrap().contains("Tern Island Harbour Office"));
}
