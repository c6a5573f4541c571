//! All faults of quantities, counts, lists and cross-field rules come in one answer.

use serde_json::{Value, json};

use super::{calculate, hint, refused};
use crate::requests::{loop_characteristics, loop_sizing, with};

#[test]
fn every_fault_of_a_measured_loop_is_reported_at_once() {
    let request = json!({
        "loop": {
            "along_travel": "6", "across_lane": "20 mph", "turns": 21, "corner_cut": "1e1 in", "cover": "-1 in",
            "wire": { "gauge": "14.5 AWG", "over_insulation": "3,302 mm" }
        },
        "lead_in": { "length": "10 ft", "in_slot": "8 ft", "in_conduit": "8 ft", "gauge": "big", "spare": 3 },
        "frequency_khz": 0, "temperature": "20", "reinforcement": { "depth_below_loop": "2 cubits" },
        "shunt_capacitance_nf": -1
    });
    let answer = refused(
        "loop-characteristics",
        &request,
        &[
            ("#/loop/along_travel", "unit_missing"),
            ("#/loop/across_lane", "unit_wrong_dimension"),
            ("#/loop/turns", "out_of_range"),
            ("#/loop/corner_cut", "number_invalid"),
            ("#/loop/cover", "out_of_range"),
            ("#/loop/wire/gauge", "number_invalid"),
            ("#/loop/wire/over_insulation", "decimal_comma"),
            ("#/lead_in/length", "contradiction"),
            ("#/lead_in/gauge", "number_invalid"),
            ("#/lead_in/spare", "unit_missing"),
            ("#/frequency_khz", "out_of_range"),
            ("#/temperature", "unit_missing"),
            ("#/reinforcement/depth_below_loop", "unit_unknown"),
            ("#/shunt_capacitance_nf", "out_of_range"),
        ],
    );
    assert!(answer.body["detail"].as_str().unwrap().starts_with("14 fields "), "{}", answer.body["detail"]);
}

#[test]
fn every_fault_of_a_job_is_reported_at_once() {
    let mut request = loop_sizing();
    let changes = [
        ("/opening/width", json!("7,200 mm")),
        ("/opening/approach_speed", json!("fast")),
        ("/site_hazards", json!(vec!["old_loop_cut"; 13])),
        ("/vehicles", json!(vec!["pickup"; 12])),
        ("/lead_in/in_conduit", json!("59 ft")),
        ("/wire/over_insulation", json!("0.05 in")),
        ("/slot/cover", json!("3 in")),
        ("/detector/inductance_min_uh", json!(1000)),
        ("/detector/threshold_percent", json!(90)),
        ("/detector/threshold_steps_percent/2", json!(0)),
        ("/stock/1/along_travel", json!("6")),
        ("/stock/1/sku", json!("s".repeat(65))),
        ("/stock/0/turns", json!(0)),
    ];
    for (pointer, value) in changes {
        request = with(&request, pointer, value);
    }
    refused(
        "loop-sizing",
        &request,
        &[
            ("#/opening/width", "decimal_comma"),
            ("#/opening/approach_speed", "number_invalid"),
            ("#/vehicles", "list_size"),
            ("#/site_hazards", "list_size"),
            ("#/lead_in/length", "contradiction"),
            ("#/wire/over_insulation", "contradiction"),
            ("#/slot/cover", "contradiction"),
            ("#/detector/inductance_min_uh", "contradiction"),
            ("#/detector/threshold_percent", "out_of_range"),
            ("#/detector/threshold_steps_percent/2", "out_of_range"),
            ("#/stock/1/along_travel", "unit_missing"),
            ("#/stock/1/sku", "text_size"),
            ("#/stock/0/turns", "out_of_range"),
        ],
    );
}

#[test]
fn one_fault_is_announced_as_one() {
    let request = with(&loop_characteristics(), "/loop/along_travel", "6");
    let answer = refused("loop-characteristics", &request, &[("#/loop/along_travel", "unit_missing")]);
    assert_eq!(answer.body["detail"], "One field cannot be used; the list of errors says what to send instead.");
    assert_eq!(hint(&answer), "Write a length as \"6 ft\" or \"1.8 m\".");
}

#[test]
fn of_many_faults_the_first_hundred_are_listed_and_all_are_counted() {
    let row = json!({ "time": "noon", "air": "warm", "dew_point": "damp", "surface": "cold" });
    let rows = |count: usize| json!({ "conditions": vec![row.clone(); count] });
    let request = |count: usize| {
        json!({ "opening": { "width": "12 ft", "barrier": "none" },
        "start": "2026-05-14T08:30:00-04:00", "sealant": { "kind": "two_part_reactive" }, "weather": rows(count) })
    };
    let check = |problem: &Value, count: usize| {
        let listed = problem["errors"].as_array().unwrap();
        let detail = problem["detail"].as_str().unwrap();
        assert_eq!((problem["error_count"].as_u64(), listed.len()), (Some(count as u64), count.min(100)), "{detail}");
        assert!(detail.starts_with(&format!("{count} fields cannot be used")), "{detail}");
        assert_eq!(detail.contains("has the first 100"), count > 100, "{detail}");
    };
    for (rows, faults) in [(25, 100), (26, 104), (336, 1344)] {
        let answer = calculate("installation-plan", &request(rows));
        assert_eq!(answer.status, 422);
        check(&answer.body, faults);
    }
    // What is sent grows with the faults, what is answered does not.
    let length = |rows: usize| calculate("installation-plan", &request(rows)).body.to_string().len();
    assert!(length(336) < length(26) + 100, "{} and {}", length(336), length(26));
    // Each item of a batch likewise, with the item in its pointers.
    let items = json!({ "items": [{ "id": "yard", "request": request(336) }] });
    let batch = calculate("installation-plan/batch", &items);
    let problem = &batch.body["results"][0]["problem"];
    check(problem, 1344);
    assert!(problem["errors"][99]["pointer"].as_str().unwrap().starts_with("#/items/0/request/weather/"), "{problem}");
    // Other kinds have none.
    let other = super::super::harness::get("/nope").body;
    assert_eq!((&other["error_count"], &other["errors"]), (&json!(0), &json!([])));
}
