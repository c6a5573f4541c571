//! What the ground asks for: construction, hazards, cautions.

use serde_json::{Value, json};

use super::{finding, gate, level, sized};

fn cautions(body: &Value) -> Vec<&str> {
    body["cautions"].as_array().unwrap().iter().map(|caution| caution["code"].as_str().unwrap()).collect()
}

#[test]
fn every_hazard_has_its_finding_and_its_caution() {
    // Hazard; its finding; the level in a saw cut and in a new surface; the cautions that come with it.
    let rows: [(&str, &str, &str, &str, &[&str]); 12] = [
        ("reinforcing_mesh", "reinforcing_mesh", "warning", "warning", &["slab_steel"]),
        ("post_tensioned_slab", "tensioned_deck", "stop", "warning", &["slab_steel", "tensioned_slab"]),
        ("bridge_deck", "tensioned_deck", "stop", "warning", &["slab_steel", "tensioned_slab"]),
        ("snow_melt_cable", "snow_melt", "stop", "warning", &["snow_melt"]),
        ("snow_melt_pipe", "snow_melt", "stop", "warning", &["snow_melt"]),
        ("overhead_power_line", "power_line", "note", "note", &[]),
        ("buried_power_line", "power_line", "stop", "warning", &["buried_services"]),
        ("adjacent_traffic", "adjacent_traffic", "note", "note", &["work_zone"]),
        ("freezing_climate", "freezing_climate", "warning", "warning", &[]),
        ("pavement_joint", "pavement_joint", "warning", "warning", &[]),
        ("cracked_pavement", "cracked_pavement", "warning", "note", &[]),
        ("old_loop_cut", "old_loop_cut", "note", "note", &[]),
    ];
    let table = crate::harness::get("/v1/reference/site-hazards").body;
    let known: Vec<_> = table["rows"].as_array().unwrap().iter().map(|row| row["code"].as_str().unwrap()).collect();
    assert_eq!(known, rows.map(|(hazard, ..)| hazard), "a hazard is not tested");
    let special = ["slab_steel", "tensioned_slab", "snow_melt"];
    for (hazard, code, sawn, buried, expected) in rows {
        for (surface, construction, weight) in
            [("existing_asphalt", "hand_wound", sawn), ("new_concrete", "preformed_direct_burial", buried)]
        {
            let site = json!({ "surface": surface, "construction": construction, "site_hazards": [hazard] });
            let answer = sized(&gate("24 ft", "slide_gate", site));
            let found = finding(&answer, code).unwrap_or_else(|| panic!("{hazard} finds no {code}"));
            assert_eq!((&found["level"], &found["about"]), (&json!(weight), &json!("#/site_hazards/0")), "{hazard}");
            let said = cautions(&answer.body);
            assert!(expected.iter().all(|code| said.contains(code)), "{hazard}: {said:?}");
            assert!(special.iter().all(|code| expected.contains(code) || !said.contains(code)), "{hazard}: {said:?}");
        }
    }
}

#[test]
fn a_hazard_that_is_named_twice_is_found_once() {
    let hazards = json!({ "site_hazards": ["old_loop_cut", "pavement_joint", "old_loop_cut"] });
    let answer = sized(&gate("24 ft", "slide_gate", hazards));
    let findings = answer.body["findings"].as_array().unwrap();
    assert_eq!(findings.iter().filter(|finding| finding["code"] == "old_loop_cut").count(), 1);
    assert_eq!(finding(&answer, "pavement_joint").unwrap()["about"], "#/site_hazards/1");
}

#[test]
fn construction_follows_the_surface() {
    let rows = [
        ("existing_asphalt", "hand_wound"),
        ("existing_concrete", "hand_wound"),
        ("new_asphalt", "preformed_direct_burial"),
        ("new_concrete", "preformed_direct_burial"),
        ("gravel", "preformed_direct_burial"),
        ("soil", "preformed_direct_burial"),
        ("pavers", "preformed_direct_burial"),
    ];
    for (surface, construction) in rows {
        let answer = sized(&gate("24 ft", "slide_gate", json!({ "surface": surface })));
        assert_eq!(answer.body["inputs"]["construction"], construction, "{surface}");
        assert_eq!(level(&answer, "wrong_construction"), "", "{surface}");
        for sized in answer.body["loops"].as_array().unwrap() {
            let is_sawn = construction == "hand_wound";
            assert_eq!(sized["construction"], construction);
            assert_eq!((sized.get("saw_cut").is_some(), sized.get("slot_depth").is_some()), (is_sawn, is_sawn));
        }
    }
    let cracked = json!({ "surface": "existing_asphalt", "site_hazards": ["cracked_pavement"] });
    assert_eq!(sized(&gate("24 ft", "slide_gate", cracked)).body["inputs"]["construction"], "preformed_saw_cut");
}

#[test]
fn a_construction_that_the_surface_does_not_take_is_stopped() {
    for (surface, construction, weight) in [
        ("existing_asphalt", "preformed_direct_burial", "stop"),
        ("existing_concrete", "preformed_direct_burial", "stop"),
        ("gravel", "hand_wound", "stop"),
        ("soil", "preformed_saw_cut", "stop"),
        ("pavers", "hand_wound", "stop"),
        // A slab that is new today can be sawn tomorrow.
        ("new_concrete", "hand_wound", "note"),
        ("new_asphalt", "preformed_saw_cut", "note"),
        ("existing_asphalt", "preformed_saw_cut", ""),
    ] {
        let site = json!({ "surface": surface, "construction": construction });
        let answer = sized(&gate("24 ft", "slide_gate", site));
        assert_eq!(level(&answer, "wrong_construction"), weight, "{construction} in {surface}");
        assert!(weight.is_empty() || finding(&answer, "wrong_construction").unwrap()["about"] == "#/construction");
    }
}

#[test]
fn the_saw_and_the_gate_have_their_cautions_where_there_are_any() {
    for (barrier, surface, moves, sawn) in [
        ("slide_gate", "existing_asphalt", true, true),
        ("slide_gate", "gravel", true, false),
        ("barrier_arm", "existing_asphalt", true, true),
        ("none", "existing_asphalt", false, true),
        ("none", "soil", false, false),
    ] {
        let answer = sized(&gate("16 ft", barrier, json!({ "surface": surface })));
        let said = cautions(&answer.body);
        for (codes, applies) in
            [(["gate_can_move", "live_parts"].as_slice(), moves), (&["silica", "saw", "sealant"], sawn)]
        {
            assert!(codes.iter().all(|code| said.contains(code) == applies), "{barrier} {surface}: {said:?}");
        }
        assert!(["buried_services", "work_zone"].iter().all(|code| said.contains(code)), "{said:?}");
    }
}

#[test]
fn sawn_concrete_is_taken_as_stressed_until_shown_otherwise() {
    for (surface, special) in [("existing_concrete", true), ("existing_asphalt", false), ("new_concrete", false)] {
        let answer = sized(&gate("24 ft", "slide_gate", json!({ "surface": surface })));
        let said = cautions(&answer.body);
        assert_eq!(said.contains(&"tensioned_slab") && said.contains(&"slab_steel"), special, "{surface}: {said:?}");
    }
}

#[test]
fn a_buried_loop_lies_as_deep_as_its_surface_asks_and_sees_less() {
    let change = |surface: &str, with: serde_json::Value| {
        let mut site = json!({ "surface": surface, "roles": ["exit"] });
        for (key, value) in with.as_object().unwrap() {
            site[key] = value.clone();
        }
        let answer = sized(&gate("24 ft", "slide_gate", site));
        let seen = answer.body["loops"][0]["vehicles"][0]["change_percent"].as_f64().unwrap();
        (answer.body["inputs"]["cover"]["inch"].as_f64().unwrap(), seen)
    };
    let (lift, gravel, own) = (
        change("new_asphalt", json!({})),
        change("gravel", json!({})),
        change("gravel", json!({ "slot": { "cover": "12 in" } })),
    );
    assert_eq!((lift.0, gravel.0, own.0), (2.0, 6.0, 12.0));
    assert!(lift.1 > gravel.1 && gravel.1 > own.1, "{lift:?} {gravel:?} {own:?}");
}
