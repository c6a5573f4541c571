//! The way of each pair to the unit: decided once, and read by the sizing, the bill and the steps.

use proptest::prelude::*;
use serde_json::{Value, json};

use super::plan;
use crate::harness::{calculate, post};
use crate::requests::with;

fn slide_gate() -> Value {
    json!({ "opening": { "width": "24 ft", "barrier": "slide_gate" } })
}

fn feet(value: &Value, pointer: &str) -> f64 {
    value.pointer(pointer).and_then(Value::as_f64).unwrap_or_else(|| panic!("no {pointer}: {value:#}"))
}

fn near(found: f64, expected: f64) {
    assert!((found - expected).abs() < 0.011, "{found} is not {expected}");
}

fn conduit(report: &Value) -> f64 {
    let lines = report["materials"]["items"].as_array().unwrap().iter();
    lines.filter(|line| line["item"] == "lead_in_conduit").map(|line| line["exact"].as_f64().unwrap()).sum()
}

#[test]
fn a_pair_goes_the_shortest_way_to_the_edge_and_on_in_conduit() {
    let report = plan(&slide_gate());
    for sized in report["sizing"]["loops"].as_array().unwrap() {
        // Loops of 20 ft across an opening of 24 ft: 2 ft to the edge, 48 ft of conduit.
        assert_eq!((feet(sized, "/lead_in/in_slot/ft"), feet(sized, "/lead_in/in_conduit/ft")), (2.0, 48.0));
        assert_eq!((&sized["lead_in"]["unit_side"], &sized["lead_in"]["pair"]), (&json!("right"), &json!("twisted")));
    }
    near(feet(&report, "/materials/saw_cut/lead_in/ft"), 6.0);
    near(conduit(&report), 144.0);
    let cut = report["steps"].as_array().unwrap().iter().find(|step| step["step"] == "cut").unwrap();
    assert!(cut["message"].as_str().unwrap().contains("to the edge on the right as one leaves"), "{cut}");
    let left = plan(&with(&slide_gate(), "/opening/unit_side", "left"));
    assert!(left["steps"].to_string().contains("to the edge on the left as one leaves"));
}

#[test]
fn only_what_is_sent_lies_in_the_slab_farther_and_pairs_of_one_unit_share_it() {
    let sent = with(&slide_gate(), "/lead_in", json!({ "length": "50 ft", "in_slot": "50 ft" }));
    // Each on a unit of its own: three slots of 50 ft.
    let apart = plan(&sent);
    assert_eq!(apart["materials"]["shared_slots"], json!([]));
    near(feet(&apart, "/materials/saw_cut/lead_in/ft"), 150.0);
    // In series they come to one unit: 2 ft each to the edge, and 48 ft together.
    let together = plan(&with(&sent, "/wiring", "series"));
    let shared = &together["materials"]["shared_slots"][0];
    assert_eq!((&shared["pairs"], &shared["marks"]), (&json!(3), &json!(["A", "B", "C"])));
    near(feet(shared, "/length/ft"), 48.0);
    near(feet(&together, "/materials/saw_cut/lead_in/ft"), 54.0);
    // Three pairs of two wires of 0.130 in one on the other, and 1 in of cover: 1.78 in, cut to 2 in.
    near(feet(shared, "/depth/inch"), 2.0);
    // Loose pairs couple; screened ones may lie together whatever their units are.
    let loose = plan(&with(&with(&sent, "/wiring", "series"), "/lead_in/pair", "loose"));
    near(feet(&loose, "/materials/saw_cut/lead_in/ft"), 150.0);
    let screened = plan(&with(&sent, "/lead_in/pair", "screened"));
    near(feet(&screened, "/materials/saw_cut/lead_in/ft"), 54.0);
    assert_eq!(conduit(&screened), 0.0);
}

#[test]
fn the_pairs_of_a_row_run_beside_it_into_one_slot() {
    let report = plan(&json!({
        "opening": { "width": "60 ft", "barrier": "slide_gate" }, "vehicles": ["small_motorcycle", "passenger_car"]
    }));
    let loops = report["sizing"]["loops"].as_array().unwrap();
    let rows: Vec<_> = loops.iter().filter(|sized| sized["count"] != 1).collect();
    assert!(!rows.is_empty());
    let shared = report["materials"]["shared_slots"].as_array().unwrap();
    assert_eq!(shared.len(), rows.len());
    for (row, slot) in rows.iter().zip(shared) {
        assert_eq!(slot["pairs"], row["count"]);
        // As long as the way of the loop farthest from the unit: all but its own leg and the strip at the edge.
        let farthest = 60.0 - feet(row, "/across_lane/ft") - feet(row, "/edge_setback/ft");
        near(feet(slot, "/length/ft"), farthest);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 16, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn every_pair_lies_in_slot_or_conduit_and_each_slot_is_cut_once(
        width in 10..40_u32, length in 10..120_u32, series in any::<bool>(), in_slot in proptest::option::of(0..10_u32)
    ) {
        let mut request = json!({
            "opening": { "width": format!("{width} ft"), "barrier": "slide_gate" },
            "lead_in": { "length": format!("{length} ft") }, "wiring": if series { "series" } else { "separate" },
            "parts": ["materials"]
        });
        if let Some(in_slot) = in_slot {
            request["lead_in"]["in_slot"] = json!(format!("{in_slot} ft"));
        }
        let report = plan(&request);
        let (mut ways, mut slots, mut together) = (0.0, 0.0, 0.0_f64);
        for sized in report["sizing"]["loops"].as_array().unwrap() {
            let count = sized["count"].as_f64().unwrap();
            let part = |name: &str| feet(sized, &format!("/lead_in/{name}/ft"));
            prop_assert!((part("in_slot") + part("in_conduit") - part("length")).abs() < 0.02);
            // Pairs that leave the pavement together go on in one conduit.
            if part("in_shared_slot") > 0.0 {
                together = together.max(part("in_conduit"));
            } else {
                ways += count * part("in_conduit");
            }
            slots += count * (part("in_slot") - part("in_shared_slot"));
        }
        ways += together;
        prop_assert!((conduit(&report) - ways).abs() < 0.05 * (1.0 + ways / 100.0), "{} of {ways}", conduit(&report));
        let shared = report["materials"]["shared_slots"].as_array().unwrap();
        slots += shared.iter().map(|slot| feet(slot, "/length/ft")).sum::<f64>();
        prop_assert!((feet(&report, "/materials/saw_cut/lead_in/ft") - slots).abs() < 0.06);
    }
}

#[test]
fn the_papers_show_the_unit_the_way_to_it_and_what_is_filled_in_by_hand() {
    let request = with(&slide_gate(), "/include", json!(["drawings"]));
    let drawing = plan(&request)["drawings"]["plan"].as_str().unwrap().replace('\u{a0}', " ");
    for words in
        [">U</text>", "on the right as one leaves", "The pair of C crosses the line at the dot", "where the leaf parks"]
    {
        assert!(drawing.contains(words), "{words} is not on the plan");
    }
    let swing =
        plan(&with(&request, "/opening", json!({ "width": "12 ft", "barrier": "barrier_arm", "unit_side": "left" })));
    let swing = swing["drawings"]["plan"].as_str().unwrap().replace('\u{a0}', " ");
    assert!(swing.contains("on the left as one leaves") && !swing.contains("where the leaf parks"));
    let sheet = post("/v1/installation-plan/job-sheet", slide_gate().to_string()).body;
    let sheet = sheet.as_str().unwrap().replace('\u{a0}', " ");
    for words in [
        "Hours of the crew: ",
        "label its pair A at both ends: 2 ft in a slot of its own to the edge on the right as one leaves, 48 ft in conduit, to unit 1",
        "<th class=\"blank\">Unit, serial</th><th class=\"blank\">As left</th>",
        "<figure class=\"section\">",
    ] {
        assert!(sheet.contains(words), "{words} is not on the sheet");
    }
}

#[test]
fn every_pair_of_a_row_reaches() {
    for (opening, lead_in) in [
        (json!({ "width": "100 ft", "barrier": "none" }), None),
        (json!({ "width": "120 ft", "barrier": "slide_gate" }), None),
        (json!({ "width": "100 ft", "barrier": "none" }), Some(json!({ "length": "150 ft" }))),
    ] {
        let mut request = json!({ "opening": opening, "roles": ["presence"] });
        if opening["barrier"] != "none" {
            request.as_object_mut().unwrap().remove("roles");
        }
        if let Some(lead_in) = &lead_in {
            request["lead_in"] = lead_in.clone();
        }
        let report = plan(&request);
        let mut rows = 0;
        for sized in report["sizing"]["loops"].as_array().unwrap() {
            let (count, across) = (sized["count"].as_f64().unwrap(), feet(sized, "/across_lane/ft"));
            rows += u32::from(count > 1.0);
            // The farthest pair passes all loops of its row but its own.
            let length = feet(sized, "/lead_in/length/ft");
            let least = (count - 1.0) * across;
            assert!(length > least, "{length} of {least}: {sized:#}");
            assert!(feet(sized, "/lead_in/in_conduit/ft") <= length - least, "{sized:#}");
        }
        assert!(rows > 0, "no row: {report:#}");
        let shared = report["materials"]["shared_slots"].as_array().unwrap();
        assert!(shared.iter().all(|slot| feet(slot, "/length/ft") > 60.0), "{shared:#?}");
    }
}

#[test]
fn a_loose_pair_has_the_inductance_of_one() {
    let of = |pair: &str| {
        let request = with(&slide_gate(), "/lead_in", json!({ "length": "200 ft", "pair": pair }));
        let answer = calculate("loop-sizing", &request);
        answer.body["loops"][0]["electrical"]["lead_in_inductance_uh"].as_f64().unwrap()
    };
    // 0.36 µH a foot for 0.22.
    near(of("loose"), 72.0);
    near(of("twisted"), 44.0);
    let own = json!({ "length": "200 ft", "pair": "loose", "inductance": "0.3 uH/ft" });
    let answer = calculate("loop-sizing", &with(&slide_gate(), "/lead_in", own));
    near(answer.body["loops"][0]["electrical"]["lead_in_inductance_uh"].as_f64().unwrap(), 60.0);
}
