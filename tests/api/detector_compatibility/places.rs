//! Loops over one another, loops of one unit, and loops over steel.

use serde_json::{Value, json};

use super::{check, checked, connected, number};
use crate::harness::{Answer, calculate};

fn placed(label: &str, role: &str, along: &str, across: &str) -> Value {
    connected(label, 3, "50 ft", json!({ "role": role, "position": { "along": along, "across": across } }))
}

fn message<'a>(answer: &'a Answer, code: &str) -> &'a str {
    let findings = answer.body["findings"].as_array().unwrap();
    findings.iter().find(|finding| finding["code"] == code).unwrap()["message"].as_str().unwrap()
}

#[test]
fn two_loops_at_one_place_are_a_stop_and_no_turns_are_offered() {
    for (along, across) in [("0 ft", "0 ft"), ("2 ft", "0 ft"), ("5.9 ft", "5.9 ft"), ("-3 ft", "3 ft")] {
        let (exit, inside) = (placed("A", "exit", "0 ft", "0 ft"), placed("B", "obstruction_inside", along, across));
        let answer = check(&json!({ "loops": [exit, inside] }));
        assert_eq!(answer.findings("stop"), ["same_place"], "{along} {across}");
        assert_eq!(answer.body["verdict"], "unsuitable");
        assert!(!answer.findings("warning").contains(&"crosstalk"));
        assert!(answer.body["neighbours"][0]["actions"].as_array().unwrap().is_empty());
        assert!(message(&answer, "same_place").contains("one loop for both roles"));
    }
    let alike = [placed("A", "exit", "0 ft", "0 ft"), placed("B", "exit", "3 ft", "0 ft")];
    assert!(message(&check(&json!({ "loops": alike })), "same_place").contains("Take one loop there"));
}

#[test]
fn loops_that_only_touch_or_share_a_channel_are_at_no_one_place() {
    let beside = [placed("A", "exit", "0 ft", "0 ft"), placed("B", "closing", "6 ft", "0 ft")];
    let touching = check(&json!({ "loops": beside }));
    assert!(touching.findings("stop").is_empty() && touching.findings("warning").contains(&"crosstalk"));
    let over = [placed("A", "presence", "0 ft", "0 ft"), placed("B", "presence", "2 ft", "0 ft")];
    assert!(check(&json!({ "loops": over, "wiring": "series" })).findings("stop").is_empty());
}

#[test]
fn a_quadrupole_lies_where_its_outline_lies() {
    let mut wide = placed("A", "presence", "0 ft", "0 ft");
    wide["loop"] = json!({ "shape": "quadrupole", "along_travel": "6 ft", "across_lane": "12 ft", "turns": 2 });
    let stops = |across: &str| {
        let answer = check(&json!({ "loops": [wide.clone(), placed("B", "exit", "0 ft", across)] }));
        answer.findings("stop").contains(&"same_place")
    };
    assert!(stops("8.9 ft") && !stops("9 ft"));
}

// Loops in line are summed over half of the wires, others over all of them.
#[test]
fn loops_in_line_couple_like_loops_a_hair_aside() {
    for shapes in [["rectangle"; 2], ["quadrupole"; 2], ["rectangle", "quadrupole"]] {
        let coupling = |across: &str| {
            let mut loops = [placed("A", "exit", "0 ft", "0 ft"), placed("B", "presence", "7.5 ft", across)];
            for (one, shape) in loops.iter_mut().zip(shapes) {
                one["loop"]["shape"] = json!(shape);
                one["loop"]["corner_cut"] = json!("8 in");
            }
            check(&json!({ "loops": loops })).body["neighbours"][0]["coupling_percent"].as_f64().unwrap()
        };
        let in_line = coupling("0 ft");
        assert!((in_line - coupling("0.001 mm")).abs() <= 0.001, "{shapes:?}: {in_line}");
        assert_eq!(in_line > 0.0, shapes[0] == shapes[1], "{shapes:?}: {in_line}");
    }
}

#[test]
fn loops_that_one_unit_scans_in_turn_do_not_disturb_each_other() {
    let pair = |units: [Option<&str>; 2]| {
        let loops = [placed("A", "presence", "0 ft", "0 ft"), placed("B", "presence", "7 ft", "0 ft")];
        let loops: Vec<_> = loops
            .into_iter()
            .zip(units)
            .map(|(mut one, unit)| {
                if let Some(unit) = unit {
                    one["unit"] = json!(unit);
                }
                one
            })
            .collect();
        check(&json!({ "loops": loops }))
    };
    for units in [[None, None], [Some("1"), None], [Some("1"), Some("2")]] {
        let answer = pair(units);
        assert!(answer.findings("warning").contains(&"crosstalk"), "{units:?}");
        assert_eq!(
            (&answer.body["verdict"], &answer.body["neighbours"][0]["scanned_together"]),
            (&json!("marginal"), &json!(false))
        );
    }
    let scanned = pair([Some("1"), Some("1")]);
    let neighbours = &scanned.body["neighbours"][0];
    assert_eq!((&scanned.body["verdict"], &neighbours["scanned_together"]), (&json!("suitable"), &json!(true)));
    assert!(scanned.findings("warning").is_empty() && neighbours["actions"].as_array().unwrap().is_empty());
    assert!(neighbours["message"].as_str().unwrap().contains("scans them in turn"), "{neighbours}");
    assert_eq!(neighbours["coupling_percent"], pair([None, None]).body["neighbours"][0]["coupling_percent"]);
    assert_eq!(scanned.body["inputs"]["loops"][1]["unit"], "1");
}

#[test]
fn loops_of_one_unit_at_one_place_are_a_stop_all_the_same() {
    let mut loops = [placed("A", "exit", "0 ft", "0 ft"), placed("B", "closing", "2 ft", "0 ft")];
    for one in &mut loops {
        one["unit"] = json!("1");
    }
    assert_eq!(check(&json!({ "loops": loops })).findings("stop"), ["same_place"]);
}

#[test]
fn a_unit_is_of_no_use_where_loops_share_a_channel() {
    let loops = ["A", "B"].map(|label| connected(label, 3, "50 ft", json!({ "unit": "1" })));
    let answer = check(&json!({ "loops": loops, "wiring": "series" }));
    let unused = answer.body["unused"].as_array().unwrap();
    assert!(unused.contains(&json!("#/loops/0/unit")) && unused.contains(&json!("#/loops/1/unit")), "{unused:?}");
    let long = calculate(
        "detector-compatibility",
        &json!({ "loops": [connected("A", 3, "50 ft", json!({ "unit": "u".repeat(65) }))] }),
    );
    assert_eq!(long.faults(), [("#/loops/0/unit".to_owned(), "text_size".to_owned())]);
}

/// The low end is that of loop-characteristics, which takes it with the steel's image.
#[test]
fn steel_below_lowers_the_low_end_of_the_band_as_it_does_for_the_loop_alone() {
    let steel = json!({ "depth_below_loop": "2 in" });
    let coil = json!({ "along_travel": "6 ft", "across_lane": "6 ft", "turns": 3 });
    let alone = calculate(
        "loop-characteristics",
        &json!({ "loop": coil, "lead_in": { "length": "100 ft" }, "reinforcement": steel }),
    );
    let low = number(&alone.body["as_built_low_uh"]);
    let terminal = number(&alone.body["terminal_inductance_uh"]);
    assert!(low < 0.9 * terminal, "{low} of {terminal}");
    let with = |least: f64, more: Value| {
        check(&json!({ "loops": [connected("A", 3, "100 ft", more)], "detector": { "inductance_min_uh": least } }))
    };
    let over_steel = |least| with(least, json!({ "reinforcement": steel }));
    assert_eq!(checked(&over_steel(low - 0.1), "inductance")["verdict"], "suitable");
    assert_eq!(checked(&over_steel(low + 0.1), "inductance")["verdict"], "marginal");
    assert_eq!(checked(&with(low + 0.1, json!({})), "inductance")["verdict"], "suitable");
    assert!(over_steel(low).findings("warning").contains(&"steel_below"));
    assert_eq!(over_steel(low).body["inputs"]["loops"][0]["steel_below"]["inch"], 2.0);
    // One turn more is judged over the same steel.
    let remedies = over_steel(low + 0.1).body["remedies"].clone();
    let turns = remedies.as_array().unwrap().iter().find(|remedy| remedy["change"] == "turns").unwrap();
    assert_eq!((&turns["to"], &turns["cures_channel"]), (&json!("4"), &json!(true)));
}
