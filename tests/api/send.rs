//! What a caller could send to learn more, or to have it otherwise, stands beside the sentence and not in it.

use serde_json::{Value, json};

use super::harness::calculate;
use super::requests::need;

/// The fields that a finding of a code names, of the first such finding.
fn named(report: &Value, code: &str) -> Vec<String> {
    let findings = report["findings"].as_array().unwrap();
    let finding = findings.iter().find(|finding| finding["code"] == code);
    let finding = finding.unwrap_or_else(|| panic!("no {code}: {findings:#?}"));
    let send = finding.get("send").and_then(Value::as_array).cloned().unwrap_or_default();
    send.iter().map(|pointer| pointer.as_str().unwrap().to_owned()).collect()
}

fn report(calculation: &str, request: &Value) -> Value {
    let answer = calculate(calculation, request);
    assert_eq!(answer.status, 200, "{request}: {:#}", answer.body);
    // Panics when the description does not have the place.
    for finding in answer.body["findings"].as_array().unwrap() {
        for pointer in finding.get("send").and_then(Value::as_array).into_iter().flatten() {
            need(calculation, pointer.as_str().unwrap().trim_start_matches('#'));
        }
    }
    answer.body
}

/// A swing gate without a loop between its leaves, with a bus that does not pass and a bicycle that is not seen.
fn swing_gate() -> Value {
    json!({
        "opening": { "width": "8 ft", "barrier": "swing_gate_pair" },
        "roles": ["exit", "obstruction_outside", "obstruction_inside", "closing"],
        "vehicles": ["passenger_car", "bicycle", "bus"],
        "site_hazards": ["cracked_pavement"],
        "construction": "hand_wound"
    })
}

#[test]
fn a_finding_of_the_sizing_names_what_could_be_sent() {
    let answer = report("loop-sizing", &swing_gate());
    assert_eq!(named(&answer, "between_leaves_missing"), ["#/roles"]);
    assert_eq!(named(&answer, "closing_under_leaf"), ["#/roles"]);
    assert_eq!(named(&answer, "vehicle_too_wide"), ["#/opening/width", "#/vehicles"]);
    assert_eq!(named(&answer, "exit_time_unknown"), ["#/opening/approach_speed", "#/opening/opening_time"]);
    assert_eq!(named(&answer, "blind_strip"), ["#/fixed_loops", "#/seen_by_other_devices"]);
    assert_eq!(named(&answer, "cracked_pavement"), ["#/construction"]);
    assert_eq!(named(&answer, "exit_reopens"), [""; 0], "a timer is set on site");
    let mut half = swing_gate();
    half["opening"]["approach_speed"] = json!("10 mph");
    assert_eq!(named(&report("loop-sizing", &half), "exit_time_unknown"), ["#/opening/opening_time"]);
}

#[test]
fn a_finding_of_a_plan_names_fields_of_the_plan() {
    let answer = report("installation-plan", &swing_gate());
    assert_eq!(named(&answer, "between_leaves_missing"), ["#/roles"]);
    assert_eq!(named(&answer, "exit_time_unknown"), ["#/opening/approach_speed", "#/opening/opening_time"]);
}

#[test]
fn a_finding_of_the_unit_names_the_loop_that_it_is_about() {
    let one = |label: &str, role: &str| {
        json!({
            "label": label, "role": role, "output": "pulse", "presence_time": "5 min", "on_loop_failure": "no_detect",
            "loop": { "along_travel": "6 ft", "across_lane": "8 ft", "turns": 3 }, "lead_in": { "length": "50 ft" }
        })
    };
    let loops = json!([one("North", "exit"), one("South", "obstruction_inside")]);
    let answer = report("detector-compatibility", &json!({ "loops": loops }));
    assert_eq!(named(&answer, "position_unknown"), ["#/loops/0/position", "#/loops/1/position"]);
    assert_eq!(named(&answer, "pulse_holds_nothing"), ["#/loops/1/output"]);
    assert_eq!(named(&answer, "presence_runs_out"), ["#/loops/1/presence_time"]);
    assert_eq!(named(&answer, "fails_to_no_detect"), ["#/loops/1/on_loop_failure"]);
    let joined = report("detector-compatibility", &json!({ "loops": loops, "wiring": "series" }));
    assert_eq!(named(&joined, "mixed_roles"), ["#/wiring"]);
}

#[test]
fn a_loop_of_a_plan_is_called_by_its_mark_and_what_it_is_for() {
    let request = json!({
        "opening": { "width": "24 ft", "barrier": "barrier_arm" }, "vehicles": ["passenger_car"], "wiring": "series"
    });
    let answer = report("installation-plan", &request);
    let findings = answer["findings"].as_array().unwrap();
    let mixed = findings.iter().find(|finding| finding["code"] == "mixed_roles").unwrap();
    let message = mixed["message"].as_str().unwrap();
    assert!(message.contains("(closing)") && message.contains("(arming)") && !message.contains('_'), "{message}");
    let params = mixed["params"].as_array().unwrap();
    assert!(params.iter().any(|param| param["name"] == "channel" && param["code"] == "closing"), "{params:?}");
}
