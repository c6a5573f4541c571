//! Loops in the ground: their bill, and how they lie.

use serde_json::{Value, json};

use super::{calculate, estimated, holds};
use crate::harness::post;
use crate::requests::with;

fn buried(surface: &str) -> Value {
    json!({
        "loops": [{
            "label": "one", "loop": { "along_travel": "6 ft", "across_lane": "12 ft", "turns": 3 },
            "construction": "preformed_direct_burial", "lead_in": { "length": "40 ft" }
        }],
        "surface": surface
    })
}

#[test]
fn ten_a_loop_in_gravel() {
    // 36 ft of trench, 6 in wide, 2 in of sand under and 2 in over: 0.5 x 0.3333 x 36 = 6 ft³. The pair lies in conduit all the way.
    let report = estimated(&buried("gravel"));
    holds(
        &report,
        &[
            ("preformed_loop", "6 ft x 12 ft, 3 turns, 43 ft", "each", 1.0, 1),
            ("bedding_sand", "", "ft3", 6.0, 6),
            ("lead_in_conduit", "1/2 in", "ft", 40.0, 40),
            ("termination", "", "each", 2.0, 2),
        ],
    );
    // 6 in of cover, three turns of 0.130 in, 2 in of sand: 8.39 in, dug to the next 1/2 in.
    let burial = &report["loops"][0]["burial"];
    assert_eq!((&burial["cover"]["inch"], &burial["trench_width"]["inch"]), (&json!(6.0), &json!(6.0)));
    assert_eq!(burial["trench_depth"]["inch"], 8.5);
    assert!(burial["message"].as_str().unwrap().starts_with("Dig 8-1/2 in"), "{burial}");
}

#[test]
fn a_pour_takes_ties_and_blocks_a_bed() {
    // 36 ft every 2 ft, and one at each corner.
    let concrete = estimated(&buried("new_concrete"));
    holds(
        &concrete,
        &[
            ("preformed_loop", "6 ft x 12 ft, 3 turns, 43 ft", "each", 1.0, 1),
            ("tie", "", "each", 22.0, 22),
            ("lead_in_conduit", "1/2 in", "ft", 40.0, 40),
            ("termination", "", "each", 2.0, 2),
        ],
    );
    let blocks = estimated(&buried("pavers"));
    assert_eq!(blocks["loops"][0]["burial"]["bed"], "bedding_course");
    // A cover that was sent is the one that is dug for.
    let deep = estimated(&with(&buried("soil"), "/loops/0/loop/cover", "10 in"));
    assert_eq!(deep["loops"][0]["burial"]["trench_depth"]["inch"], 12.5);
}

#[test]
fn depth_bed_and_ties_stand_in_the_steps_on_the_section_and_on_the_sheet() {
    for (surface, words) in [
        ("gravel", "2 in of sand"),
        ("soil", "2 in of sand"),
        ("pavers", "bedding course"),
        ("new_asphalt", "final lift"),
        ("new_concrete", "before the pour"),
    ] {
        let plan = json!({ "opening": { "width": "12 ft", "barrier": "none" }, "surface": surface });
        let report = calculate("installation-plan", &plan).body;
        let bed = report["steps"].as_array().unwrap().iter().find(|step| step["step"] == "bed").unwrap();
        assert!(bed["message"].as_str().unwrap().contains(words), "{surface}: {bed}");
        let laid = report["materials"]["loops"][0]["burial"]["message"].as_str().unwrap();
        assert!(bed["message"].as_str().unwrap().contains(laid));
        let sheet = post("/v1/installation-plan/job-sheet", plan.to_string()).body;
        assert!(sheet.as_str().unwrap().replace('\u{a0}', " ").contains(words), "{surface}");
        let section = post("/v1/drawings/slot-section", buried(surface).to_string()).body;
        let section = section.as_str().unwrap().replace('\u{a0}', " ");
        assert!(section.contains("Cover over it") && !section.contains("Not to scale"), "{section}");
    }
    let sawn = json!({ "opening": { "width": "12 ft", "barrier": "none" }, "surface": "pavers", "construction": "hand_wound" });
    let said = calculate("installation-plan", &sawn).body["findings"].to_string();
    assert!(said.contains("Blocks are not sawn for a loop") && !said.contains("offers nothing"), "{said}");
}

#[test]
fn a_loop_in_a_form_lies_over_the_steel() {
    let tied = with(&buried("new_concrete"), "/slab", json!({ "reinforcement_depth": "2 in" }));
    let report = estimated(&tied);
    // 1 in less than the steel: the loop, and half an inch of concrete.
    assert_eq!(report["loops"][0]["burial"]["cover"]["inch"], 1.0);
    assert_eq!(codes(&report).iter().filter(|code| *code == "buried_at_steel").count(), 0);
    let deep = estimated(&with(&tied, "/loops/0/loop/cover", "2 in"));
    assert!(codes(&deep).contains(&"buried_at_steel".to_owned()), "{:#}", deep["findings"]);
    // Steel that lies deep changes nothing.
    let below = estimated(&with(&tied, "/slab/reinforcement_depth", "4 in"));
    assert_eq!(below["loops"][0]["burial"]["cover"]["inch"], 2.0);
    let sizing = json!({
        "opening": { "width": "12 ft", "barrier": "none" }, "surface": "new_concrete",
        "site_hazards": ["reinforcing_mesh"], "slab": { "reinforcement_depth": "2 in" }
    });
    let plan = calculate("installation-plan", &sizing).body;
    assert_eq!(plan["materials"]["loops"][0]["burial"]["cover"]["inch"], 1.0, "{:#}", plan["materials"]["loops"][0]);
    let assumed = plan["assumed"].as_array().unwrap();
    assert!(assumed.iter().any(|one| one["about"] == "#/slot/cover" && one["value"] == "1 in"), "{assumed:#?}");
}

fn codes(report: &Value) -> Vec<String> {
    report["findings"].as_array().unwrap().iter().map(|one| one["code"].as_str().unwrap().to_owned()).collect()
}
