//! What the caller has decided: kept, judged by its gravest state, and never answered with what is there already.

use serde_json::{Value, json};

use super::{feet, finding, gate, level, of_role, sized};
use crate::harness::calculate;

#[test]
fn a_leaf_that_is_seen_as_it_moves_is_a_stop_though_the_closed_one_changes_more() {
    let near = json!({ "fixed_loops": [{ "role": "obstruction_outside", "distance": "1 ft" }] });
    let answer = sized(&gate("20 ft", "slide_gate", near));
    let leaf = &of_role(&answer, "obstruction_outside")["leaf"];
    assert!(leaf["closed_percent"].as_f64() > leaf["moving_percent"].as_f64());
    let stop = finding(&answer, "leaf_seen").unwrap();
    assert_eq!((&stop["level"], &stop["subject"]), (&json!("stop"), &json!("obstruction_outside")));
    // A little over half the step, it is the place that was decided.
    let farther = json!({ "fixed_loops": [{ "role": "obstruction_outside", "distance": "4 ft" }] });
    let farther = sized(&gate("24 ft", "slide_gate", farther));
    let warning = finding(&farther, "leaf_seen").unwrap();
    assert!(warning["message"].as_str().unwrap().contains("Change what was decided"), "{warning}");
}

#[test]
fn an_exit_loop_on_a_drive_of_any_length_leaves_no_stop_of_its_own_rounding() {
    for drive in ["60 ft", "60.4 ft", "60.5 ft", "86.7 ft", "18.24 m", "18.26 m"] {
        let opening = json!({ "approach_speed": "10 mph", "opening_time": "12 s", "drive_length": drive });
        let answer = sized(&gate("24 ft", "slide_gate", json!({ "opening": opening })));
        assert_eq!(level(&answer, "drive_too_short"), "", "{drive}");
    }
}

#[test]
fn a_loop_across_the_line_takes_no_distance() {
    let fixed = json!({ "roles": ["presence"], "fixed_loops": [{ "role": "presence", "distance": "10 ft" }] });
    let answer = calculate("loop-sizing", &gate("20 ft", "none", fixed.clone()));
    assert_eq!(answer.faults(), [("#/fixed_loops/0/distance".to_owned(), "contradiction".to_owned())]);
    let beside = sized(&gate("20 ft", "overhead_door", fixed));
    assert!((feet(&of_role(&beside, "presence")["distance_from_barrier"]) - 10.0).abs() < 0.01);
}

#[test]
fn stock_that_contradicts_a_decision_is_not_taken() {
    let stock = json!([{ "sku": "TIB-0810", "along_travel": "8 ft", "across_lane": "10 ft", "lead_in_length": "100 ft", "turns": 3 }]);
    let job = |fixed: Value| {
        sized(&gate("14 ft", "barrier_arm", json!({ "roles": ["arming"], "stock": stock, "fixed_loops": [fixed] })))
    };
    let taken = job(json!({ "role": "arming", "along_travel": "8 ft" }));
    assert_eq!(of_role(&taken, "arming")["stock_choice"]["sku"], "TIB-0810");
    for fixed in [json!({ "role": "arming", "turns": 4 }), json!({ "role": "arming", "shape": "quadrupole" })] {
        let answer = job(fixed);
        assert!(of_role(&answer, "arming")["stock_choice"].get("sku").is_none());
    }
}

#[test]
fn a_loop_beyond_the_sweep_holds_no_leaves() {
    let fixed = json!({ "fixed_loops": [{ "role": "between_leaves", "distance": "30 ft" }] });
    let answer = sized(&gate("16 ft", "swing_gate_pair", fixed));
    let stop = finding(&answer, "between_leaves_missing").unwrap();
    assert_eq!((&stop["level"], &stop["about"]), (&json!("stop"), &json!("#/fixed_loops")));
    let says_it_sweeps = |finding: &&Value| finding["subject"] == "between_leaves" && finding["code"] == "leaf_sweeps";
    assert!(!answer.body["findings"].as_array().unwrap().iter().any(|one| says_it_sweeps(&one)));
}

#[test]
fn a_quadrupole_is_not_answered_with_a_quadrupole() {
    let fixed = json!({
        "vehicles": ["passenger_car", "small_motorcycle"],
        "roles": ["obstruction_outside"],
        "fixed_loops": [{ "role": "obstruction_outside", "shape": "quadrupole" }],
    });
    let answer = sized(&gate("14 ft", "slide_gate", fixed));
    if let Some(strip) = finding(&answer, "blind_strip") {
        assert!(!strip["message"].as_str().unwrap().contains("take a quadrupole"), "{strip}");
    }
    assert_eq!(of_role(&answer, "obstruction_outside")["shape"], "quadrupole");
}

#[test]
fn loops_that_share_a_channel_share_its_step() {
    for wiring in ["series", "parallel"] {
        let mut request = gate("10 ft", "slide_gate", json!({ "vehicles": ["passenger_car"] }));
        request["wiring"] = wiring.into();
        let plan = calculate("installation-plan", &request);
        let loops = plan.body["sizing"]["loops"].as_array().unwrap();
        assert!(loops.iter().all(|laid| laid["threshold_percent"] == loops[0]["threshold_percent"]), "{wiring}");
    }
}

#[test]
fn a_role_that_does_not_fit_takes_no_place_from_the_others() {
    let alone = sized(&gate("14 ft", "slide_gate", json!({})));
    for misfit in ["between_leaves", "closing"] {
        let roles = json!({ "roles": ["exit", "obstruction_outside", "obstruction_inside", misfit] });
        let with = sized(&gate("14 ft", "slide_gate", roles));
        for role in ["exit", "obstruction_outside", "obstruction_inside"] {
            assert_eq!(of_role(&with, role)["position"], of_role(&alone, role)["position"], "{misfit} moves {role}");
        }
    }
}
