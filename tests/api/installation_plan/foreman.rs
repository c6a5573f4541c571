//! What a foreman would not do, over drawn openings.
//!
//! `LOOPWRIGHT_TEST_OPENINGS=500` draws as many; a few by default.

use proptest::prelude::*;
use serde_json::{Value, json};

use super::openings::{count, opening};
use crate::harness::calculate;

fn list<'a>(value: &'a Value, name: &str) -> &'a [Value] {
    value[name].as_array().map_or(&[], Vec::as_slice)
}

fn metres(length: &Value) -> f64 {
    length["m"].as_f64().unwrap_or_else(|| panic!("no length: {length}"))
}

/// Whether a finding of this code and level is made.
fn has(report: &Value, code: &str, level: &str) -> bool {
    list(report, "findings").iter().any(|finding| finding["code"] == code && finding["level"] == level)
}

/// Every wire lies within the lane, and no loop under a leaf that stands in the line or open at the edge of the lane.
fn no_loop_lies_where_it_must_not(sizing: &Value) {
    let half = metres(&sizing["inputs"]["opening"]["width"]) / 2.0;
    let has_leaf = sizing["inputs"]["opening"].get("leaf_height").is_some();
    for sized in list(sizing, "loops") {
        let alone = || vec![metres(&sized["position"]["across"])];
        let centres: Vec<f64> =
            sized.get("side_by_side").map_or_else(alone, |row| list(row, "centres").iter().map(metres).collect());
        for centre in centres {
            let outermost = centre.abs() + metres(&sized["across_lane"]) / 2.0;
            assert!(outermost <= half + 0.002, "{} reaches {outermost} m of {half} m", sized["role"]);
        }
        let fits = !(has_leaf && sized["role"] == "closing");
        if has_leaf && fits && list(&sizing["inputs"], "fixed_loops").is_empty() {
            assert!(metres(&sized["distance_from_barrier"]) >= 1.19, "{} lies under the leaf", sized["role"]);
        }
    }
}

/// Loops on channels of their own couple less than they tolerate, or one unit scans them, or the plan is stopped for it.
fn no_loop_is_closer_than_another_tolerates(plan: &Value) {
    let is_stopped = has(plan, "same_place", "stop");
    for pair in list(&plan["detector"], "neighbours") {
        let coupling = pair["coupling_percent"].as_f64().unwrap();
        assert!(coupling <= 0.5 || pair["scanned_together"] == true || is_stopped, "{pair}");
    }
    assert!(!has(plan, "crosstalk", "warning"), "{:#}", plan["findings"]);
}

/// A stop never asks for what was sent, or is there already.
fn no_stop_asks_for_what_is_there(plan: &Value, request: &Value) {
    let sizing = &plan["sizing"];
    let roles = list(&sizing["inputs"], "roles");
    for stop in list(sizing, "findings").iter().filter(|finding| finding["level"] == "stop") {
        match stop["code"].as_str().unwrap() {
            "between_leaves_missing" => assert!(!roles.contains(&json!("between_leaves"))),
            "unseen_stretch" => assert_ne!(request["opening"]["seen_otherwise"], true),
            "same_place" | "closing_under_leaf" => assert!(roles.contains(&stop["subject"])),
            "drive_too_short" => assert!(request["opening"].get("drive_length").is_some()),
            "leaf_seen" => {
                let of = |sized: &&Value| sized["role"] == stop["subject"];
                let leaf = &list(sizing, "loops").iter().find(of).unwrap()["leaf"];
                assert_ne!(leaf, &Value::Null);
            }
            // These speak of the unit, the slot, the vehicles and the site.
            _ => {}
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: count(), failure_persistence: None, max_shrink_iters: 64, ..ProptestConfig::default() })]

    #[test]
    fn a_plan_is_one_that_a_foreman_would_cut(request in opening()) {
        let answer = calculate("installation-plan", &request);
        assert_eq!(answer.status, 200, "{:#}", answer.body);
        let plan = &answer.body;
        no_loop_lies_where_it_must_not(&plan["sizing"]);
        no_loop_is_closer_than_another_tolerates(plan);
        no_stop_asks_for_what_is_there(plan, &request);
    }
}
