//! Leaves: closed, open and on their way; the loops in a sweep; roles that do not fit; what the caller has decided.

use serde_json::{Value, json};

use super::{feet, finding, gate, level, of_role, sized};
use crate::harness::{Answer, calculate};

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("no number: {value}"))
}

fn loops(answer: &Answer) -> &[Value] {
    answer.body["loops"].as_array().unwrap()
}

fn codes(answer: &Answer) -> Vec<(&str, &str)> {
    let text = |finding: &'_ Value, name: &str| -> &'static str {
        Box::leak(finding[name].as_str().unwrap().to_owned().into_boxed_str())
    };
    answer.body["findings"].as_array().unwrap().iter().map(|one| (text(one, "code"), text(one, "level"))).collect()
}

#[test]
fn a_long_single_leaf_gets_as_many_loops_in_its_sweep_as_leave_no_car_unseen() {
    let answer = sized(&gate("24 ft", "swing_gate", json!({})));
    assert!(answer.findings("stop").is_empty(), "{:?}", answer.findings("stop"));
    let in_sweep: Vec<_> = loops(&answer).iter().filter(|laid| laid["role"] == "between_leaves").collect();
    assert_eq!(in_sweep.len(), 2);
    assert!(in_sweep.iter().all(|laid| feet(&laid["position"]["across"]) > 0.0), "off the hinge side");
    assert!((feet(&in_sweep[1]["distance_from_barrier"]) - 5.0).abs() < 0.01);
    assert_eq!(in_sweep[0]["unit"], of_role(&answer, "obstruction_inside")["unit"]);
    assert_eq!(level(&answer, "pair_advised"), "note");
    assert_eq!(level(&sized(&gate("20 ft", "swing_gate", json!({}))), "pair_advised"), "");
    // Each is a loop of its own on every page of the plan.
    let plan = calculate("installation-plan", &gate("24 ft", "swing_gate", json!({})));
    let marks: Vec<_> = plan.body["materials"]["loops"].as_array().unwrap().iter().map(|laid| &laid["mark"]).collect();
    assert_eq!(marks.len(), 5);
    let labels: Vec<_> = plan.body["detector"]["inputs"]["loops"]
        .as_array()
        .unwrap()
        .iter()
        .map(|one| one["label"].as_str().unwrap())
        .collect();
    assert!(labels.contains(&"between_leaves 1") && labels.contains(&"between_leaves 2"), "{labels:?}");
}

#[test]
fn usual_jobs_up_to_24_ft_have_no_stop_at_any_barrier() {
    let barriers =
        ["slide_gate", "swing_gate", "swing_gate_pair", "barrier_arm", "vertical_lift_gate", "overhead_door", "none"];
    for barrier in barriers {
        for width in
            ["8 ft", "10 ft", "12 ft", "14 ft", "16 ft", "18 ft", "20 ft", "22 ft", "24 ft", "3 m", "5 m", "7.2 m"]
        {
            let answer = sized(&gate(width, barrier, json!({})));
            assert!(answer.findings("stop").is_empty(), "{width} {barrier}: {:#}", answer.body["findings"]);
        }
    }
}

#[test]
fn beside_an_open_leaf_its_change_under_half_the_step_decides() {
    for (width, barrier) in [("12 ft", "swing_gate"), ("16 ft", "swing_gate"), ("24 ft", "swing_gate_pair")] {
        let answer = sized(&gate(width, barrier, json!({})));
        for laid in loops(&answer) {
            let (step, leaf) = (number(&laid["threshold_percent"]), &laid["leaf"]);
            assert!(number(&leaf["open_percent"]) <= step / 2.0 + 5e-4, "{width} {barrier}: {laid}");
            assert!(number(&leaf["closed_percent"]) <= step / 2.0 + 5e-4, "{width} {barrier}: {laid}");
            assert_eq!(leaf.get("moving_percent").is_none(), laid["role"] == "between_leaves");
        }
        assert_eq!(level(&answer, "leaf_seen"), "");
    }
    // Nearer than that, the leaf holds the gate itself.
    let near = json!({ "opening": { "edge_setback": "6 in" } });
    let near = sized(&gate("12 ft", "swing_gate", near));
    let stop = finding(&near, "leaf_seen").expect("the open leaf is seen");
    assert_eq!((&stop["level"], &stop["subject"]), (&json!("stop"), &json!("between_leaves")));
}

#[test]
fn an_overhead_door_is_judged_where_its_leaf_lies_open() {
    let door = |height: &str, open: &str| {
        let opening = json!({ "leaf_height": height, "leaf_open": open });
        sized(&gate("24 ft", "overhead_door", json!({ "opening": opening })))
    };
    let open = |answer: &Answer| number(&of_role(answer, "obstruction_inside")["leaf"]["open_percent"]);
    let (low, high) = (door("7 ft", "level"), door("8 ft", "level"));
    // A level leaf 7 to 8 ft up over a loop of 6 x 20 ft.
    for answer in [&low, &high] {
        assert!((0.06..0.15).contains(&open(answer)), "{} %", open(answer));
    }
    assert_eq!(level(&high, "leaf_seen"), "warning");
    assert!(open(&door("8 ft", "coiled")) < 0.01);
    let usual = sized(&gate("12 ft", "overhead_door", json!({})));
    assert_eq!(usual.body["inputs"]["opening"]["leaf_open"], "level");
    let holds = |role: &str| loops(&usual).iter().any(|laid| laid["role"] == role);
    assert!(holds("obstruction_inside") && holds("obstruction_outside"));
    assert_eq!(level(&usual, "nothing_holds_the_gate"), "");
}

#[test]
fn two_roles_at_one_place_are_stopped_with_the_role_to_leave_out() {
    let answer = sized(&gate("12 ft", "none", json!({ "roles": ["closing", "presence"] })));
    let stop = finding(&answer, "same_place").expect("a stop");
    assert_eq!((&stop["level"], &stop["subject"]), (&json!("stop"), &json!("presence")));
    let alone = sized(&gate("12 ft", "none", json!({ "roles": ["closing"] })));
    assert!(alone.findings("stop").is_empty());
}

#[test]
fn a_role_that_does_not_fit_says_so_once() {
    let answer = sized(&gate("20 ft", "slide_gate", json!({ "roles": ["between_leaves", "obstruction_outside"] })));
    let about: Vec<_> =
        answer.body["findings"].as_array().unwrap().iter().filter(|one| one["subject"] == "between_leaves").collect();
    assert_eq!(about.len(), 1, "{about:#?}");
    assert_eq!(about[0]["code"], "role_does_not_fit");
    assert!(codes(&answer).iter().all(|(code, _)| *code != "leaf_sweeps"));
}

#[test]
fn what_is_decided_already_is_kept_and_judged() {
    let fixed = json!([
        { "role": "closing", "shape": "quadrupole", "along_travel": "6 ft", "across_lane": "9 ft", "turns": 4 },
        { "role": "arming", "distance": "15 ft" },
    ]);
    let answer = sized(&gate(
        "12 ft",
        "barrier_arm",
        json!({ "fixed_loops": fixed, "vehicles": ["passenger_car", "large_motorcycle"] }),
    ));
    let closing = of_role(&answer, "closing");
    assert_eq!((&closing["shape"], &closing["turns"]), (&json!("quadrupole"), &json!(4)));
    assert!((feet(&closing["across_lane"]) - 9.0).abs() < 0.01 && (feet(&closing["along_travel"]) - 6.0).abs() < 0.01);
    assert!((feet(&of_role(&answer, "arming")["distance_from_barrier"]) - 15.0).abs() < 0.01);
    assert_eq!(answer.body["inputs"]["fixed_loops"].as_array().unwrap().len(), 2);
    // What cannot be decided so is refused at its field.
    let refused = |fixed: Value| {
        let answer = calculate("loop-sizing", &gate("12 ft", "barrier_arm", json!({ "fixed_loops": fixed })));
        assert_eq!(answer.status, 422);
        answer.faults().into_iter().map(|(pointer, code)| format!("{pointer} {code}")).collect::<Vec<_>>().join(", ")
    };
    assert_eq!(refused(json!([{ "role": "exit" }])), "#/fixed_loops/0/role contradiction");
    assert_eq!(refused(json!([{ "role": "closing" }, { "role": "closing" }])), "#/fixed_loops/1/role contradiction");
    assert_eq!(
        refused(json!([{ "role": "arming", "across_lane": "13 ft" }])),
        "#/fixed_loops/0/across_lane contradiction"
    );
    assert_eq!(refused(json!([{ "role": "closing", "distance": "2 ft" }])), "#/fixed_loops/0/distance contradiction");
}
