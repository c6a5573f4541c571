//! Loops without a label are called by their numbers, and a loop of which nothing is said is set as one that holds a gate.

use serde_json::{Value, json};

use crate::harness::calculate;
use crate::requests::{detector_compatibility, material_estimate, without};

fn assumed<'a>(report: &'a Value, about: &str) -> Option<&'a Value> {
    report["assumed"].as_array().unwrap().iter().find(|assumed| assumed["about"] == about)
}

fn labels(report: &Value) -> Vec<&str> {
    report["inputs"]["loops"].as_array().unwrap().iter().map(|one| one["label"].as_str().unwrap()).collect()
}

#[test]
fn a_loop_without_a_label_is_called_by_its_number_which_is_said() {
    for (calculation, request) in
        [("material-estimate", material_estimate()), ("detector-compatibility", detector_compatibility())]
    {
        let report = calculate(calculation, &without(&request, "/loops/0/label")).body;
        assert_eq!(labels(&report), ["1"], "{calculation}");
        let said = assumed(&report, "#/loops/0/label").unwrap();
        assert_eq!((&said["value"], &said["source_ids"]), (&json!("1"), &json!(["own_choice"])));
        // Sending the default changes nothing but that.
        let mut sent = request.clone();
        sent["loops"][0]["label"] = json!("1");
        let sent = calculate(calculation, &sent).body;
        assert_eq!(report["findings"], sent["findings"]);
        assert!(assumed(&sent, "#/loops/0/label").is_none());
    }
}

#[test]
fn no_label_that_was_sent_is_given_to_another_loop() {
    for (calculation, request) in
        [("material-estimate", material_estimate()), ("detector-compatibility", detector_compatibility())]
    {
        let plain = without(&without(&request, "/loops/0/label"), "/loops/0/unit")["loops"][0].clone();
        let named = |label: &str| {
            let mut one = plain.clone();
            one["label"] = json!(label);
            one
        };
        let mut request = request.clone();
        request["loops"] = json!([named("2"), plain, plain, named("4")]);
        let report = calculate(calculation, &request).body;
        assert_eq!(labels(&report), ["2", "3", "5", "4"], "{calculation}: {report:#}");
        request["loops"] = json!([plain, plain]);
        assert_eq!(labels(&calculate(calculation, &request).body), ["1", "2"]);
        request["loops"] = json!([named("1"), named("1")]);
        let refused = calculate(calculation, &request);
        assert_eq!(refused.faults(), [("#/loops/1/label".to_owned(), "contradiction".to_owned())]);
    }
}

#[test]
fn a_loop_of_which_nothing_is_said_is_set_for_a_gate() {
    let request = without(&detector_compatibility(), "/loops/0/role");
    let report = calculate("detector-compatibility", &request).body;
    assert_eq!(report["inputs"]["loops"][0]["role"], "obstruction_inside");
    let said = assumed(&report, "#/loops/0/role").unwrap();
    assert_eq!(said["value"], "obstruction_inside");
    assert!(said["reason"].as_str().unwrap().ends_with("Say what it is for."), "{said}");
    // What would let a gate close is told, for it may hold one.
    let mut careless = request.clone();
    careless["loops"][0]["on_loop_failure"] = json!("no_detect");
    let report = calculate("detector-compatibility", &careless);
    assert!(report.findings("stop").contains(&"fails_to_no_detect"), "{:#}", report.body["findings"]);
}
