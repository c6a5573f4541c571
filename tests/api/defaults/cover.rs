//! Cover and width of slots: what nobody sent gives way to the depth, the slab and the wire that were.

use serde_json::{Value, json};

use super::super::harness::calculate;
use super::super::requests::{cure_guidance, with, without};
use super::{answered, assumed, number, of_code};

fn gate(more: Value) -> Value {
    let mut request = json!({ "opening": { "width": "24 ft", "barrier": "slide_gate" }, "roles": ["exit"] });
    request.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
    request
}

fn estimate(turns: u32, more: Value) -> Value {
    let coil = json!({ "along_travel": "6 ft", "across_lane": "6 ft", "turns": turns });
    let mut request = json!({ "loops": [{ "label": "one", "loop": coil, "lead_in": { "length": "0 ft" } }] });
    request.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
    request
}

fn levels<'a>(answer: &'a super::Answer, code: &str) -> Vec<&'a str> {
    of_code(answer, code).iter().map(|finding| finding["level"].as_str().unwrap()).collect()
}

#[test]
fn a_default_cover_gives_way_to_a_depth_that_was_sent() {
    // Three turns of 0.130 in leave 0.86 in of 1-1/4 in.
    let report = answered("material-estimate", &estimate(3, json!({ "slot": { "depth": "1-1/4 in" } })));
    assert_eq!(report.findings("stop"), Vec::<&str>::new());
    assert_eq!(levels(&report, "slot_too_shallow"), Vec::<&str>::new());
    let (value, reason) = assumed(&report, "#/slot/cover");
    assert!(value == "0.86 in" && reason.contains("gives way"), "{value} {reason}");
    assert_eq!((number(&report, "/inputs/loops/0/cover/inch"), number(&report, "/loops/0/cover/inch")), (0.86, 0.86));
    // A usual cover that fits stays.
    let deep = answered("material-estimate", &estimate(3, json!({ "slot": { "depth": "2 in" } })));
    assert_eq!(assumed(&deep, "#/slot/cover").0, "1 in");
    // What was sent with the depth stays a stop, and a contradiction where nothing is left.
    let sent = estimate(3, json!({ "slot": { "depth": "1-1/4 in", "cover": "1 in" } }));
    assert_eq!(levels(&answered("material-estimate", &sent), "slot_too_shallow"), ["stop"]);
    let faults = calculate("material-estimate", &with(&sent, "/slot/depth", "1 in")).faults();
    assert_eq!(faults, [("#/slot/cover".to_owned(), "contradiction".to_owned())]);
}

#[test]
fn a_thin_default_cover_is_a_warning_and_only_wire_that_stands_out_a_stop() {
    for (depth, level) in
        [("1-1/4 in", vec![]), ("1.14 in", vec![]), ("1 in", vec!["warning"]), ("3/8 in", vec!["stop"])]
    {
        let report = answered("material-estimate", &estimate(3, json!({ "slot": { "depth": depth } })));
        assert_eq!(levels(&report, "slot_too_shallow"), level, "{depth}");
    }
    let thin = answered("material-estimate", &estimate(3, json!({ "slot": { "depth": "1 in" } })));
    let message = of_code(&thin, "slot_too_shallow")[0]["message"].as_str().unwrap();
    assert!(message.contains("leaves 5/8 in of sealant") && message.contains("Cut it 1-3/16 in deep"), "{message}");
    for request in [gate(json!({ "slot": { "depth": "1/2 in" } })), gate(json!({ "slot": { "depth": "3/4 in" } }))] {
        for construction in ["hand_wound", "preformed_saw_cut"] {
            let answer = answered("loop-sizing", &with(&request, "/construction", construction));
            assert_eq!(levels(&answer, "slot_too_shallow"), ["warning"], "{request}");
        }
    }
}

#[test]
fn a_sized_loop_lies_under_the_cover_that_gave_way() {
    // A unit that needs more turns than two, and 1-1/4 in hold three under 0.86 in.
    let job = |slot: Value| gate(json!({ "detector": { "inductance_min_uh": 140 }, "slot": slot }));
    let shallow = answered("loop-sizing", &job(json!({ "depth": "1-1/4 in" })));
    let turns = number(&shallow, "/loops/0/turns");
    assert!(turns >= 3.0 && shallow.findings("stop").is_empty(), "{turns} turns");
    let left = 1.25 - 0.130 * turns;
    assert!((number(&shallow, "/inputs/cover/inch") - left).abs() < 1e-3);
    assert!((number(&shallow, "/inputs/slot/cover/inch") - left).abs() < 1e-3);
    assert_eq!(assumed(&shallow, "#/slot/cover").0, format!("{} in", (left * 1e4).round() / 1e4));
    // Sent as it was assumed, nothing else changes.
    let sent = json!({ "depth": "1-1/4 in", "cover": assumed(&shallow, "#/slot/cover").0 });
    assert_eq!(answered("loop-sizing", &job(sent)).body["loops"], shallow.body["loops"]);
}

#[test]
fn a_depth_that_nobody_sent_is_what_turns_and_cover_need() {
    let deep = answered("loop-sizing", &gate(json!({ "slot": { "cover": "4 in" } })));
    assert_eq!(deep.findings("stop"), Vec::<&str>::new());
    assert!(number(&deep, "/loops/0/slot_depth/inch") > 4.0);
    // The usual depth and cover give way to slab and steel, down to the least cover.
    let concrete = |slab: Value| {
        let more = json!({ "surface": "existing_concrete", "slab": slab });
        answered("material-estimate", &estimate(3, more))
    };
    let steel = concrete(json!({ "reinforcement_depth": "1-3/4 in" }));
    assert_eq!((steel.findings("stop"), number(&steel, "/loops/0/slot_depth/inch")), (vec![], 1.25));
    assert_eq!(assumed(&steel, "#/slot/depth").0, "1.25 in");
    assert_eq!(assumed(&steel, "#/slot/cover").0, "0.86 in");
    let high = concrete(json!({ "reinforcement_depth": "1 in" }));
    assert_eq!((high.findings("stop"), number(&high, "/loops/0/slot_depth/inch")), (vec!["steel_near_cut"], 1.14));
}

#[test]
fn without_wires_a_default_cover_is_the_share_of_the_depth_that_it_usually_is() {
    let request = without(&cure_guidance(), "/slot/cover");
    for (depth, cover) in [("2 in", 1.0), ("1-1/2 in", 1.0), ("1 in", 0.6667), ("1/4 in", 0.1667)] {
        let report = answered("cure-guidance", &with(&request, "/slot/depth", depth));
        assert_eq!(number(&report, "/inputs/slot/cover/inch"), cover, "{depth}");
        assert_eq!(assumed(&report, "#/slot/cover").1.contains("gives way"), cover < 1.0);
    }
    let both = with(&cure_guidance(), "/slot", json!({ "depth": "1 in", "cover": "1 in" }));
    let faults = calculate("cure-guidance", &both).faults();
    assert_eq!(faults, [("#/slot/cover".to_owned(), "contradiction".to_owned())]);
}

#[test]
fn a_default_width_is_wide_enough_for_the_wire() {
    let thick = json!({ "over_insulation": "1/4 in" });
    let sized = answered("loop-sizing", &gate(json!({ "wire": thick })));
    assert_eq!((number(&sized, "/inputs/slot/width/inch"), levels(&sized, "slot_too_narrow")), (0.3125, vec![]));
    let (value, reason) = assumed(&sized, "#/slot/width");
    assert!(value == "0.3125 in" && reason.contains("room"), "{value} {reason}");
}

#[test]
fn a_pair_in_a_shallow_slot_has_the_cover_that_is_left() {
    let request = json!({ "lead_in_slot": { "depth": "1 in" } });
    let request = with(&estimate(3, request), "/loops/0/lead_in", json!({ "length": "20 ft" }));
    let report = answered("material-estimate", &request);
    assert_eq!(levels(&report, "slot_too_shallow"), ["warning"]);
    assert_eq!(assumed(&report, "#/lead_in_slot/cover").0, "0.74 in");
}
