//! A noun goes everywhere with all its fields: those that a calculation does not need come back as `unused`, never refused
//! when they are sound, and refused like any other when they are not.

use std::collections::BTreeSet;

use serde_json::{Value, json};

use super::harness::calculate;
use super::requests::{all, loop_characteristics, loop_sizing, places, vehicle_response, with, without};

fn unused(calculation: &str, request: &Value) -> BTreeSet<String> {
    let answer = calculate(calculation, request);
    assert_eq!(answer.status, 200, "{:#}", answer.body);
    let pointers: Vec<_> =
        answer.body["unused"].as_array().unwrap().iter().map(|pointer| pointer.as_str().unwrap().to_owned()).collect();
    let set: BTreeSet<_> = pointers.iter().cloned().collect();
    assert_eq!(set.len(), pointers.len(), "a field is named twice: {pointers:?}");
    for pointer in &set {
        assert!(request.pointer(pointer.trim_start_matches('#')).is_some(), "{pointer} was not sent");
    }
    set
}

#[test]
fn a_measured_loop_needs_no_cover_and_no_parts_of_the_lead_in() {
    let named = unused("loop-characteristics", &loop_characteristics());
    let expected = [
        "#/loop/cover",
        "#/loop/wire/over_jacket",
        "#/loop/wire/insulation_rating",
        "#/lead_in/in_slot",
        "#/lead_in/in_shared_slot",
        "#/lead_in/in_conduit",
        "#/lead_in/pair",
        "#/lead_in/spare",
    ];
    assert_eq!(named, expected.map(str::to_owned).into());
}

#[test]
fn a_plate_needs_no_lane_and_no_parts_of_the_lead_in() {
    let named = unused("vehicle-response", &vehicle_response());
    for pointer in ["#/lead_in/in_slot", "#/lead_in/in_conduit", "#/lead_in/spare", "#/lane_width"] {
        assert!(named.contains(pointer), "{pointer} is not in {named:?}");
    }
    let class = with(&without(&vehicle_response(), "/plate"), "/vehicle", "small_motorcycle");
    assert!(!unused("vehicle-response", &class).contains("#/lane_width"));
}

#[test]
fn only_the_estimate_needs_the_ways_of_the_lead_in() {
    // The sizing says which way each pair goes.
    let needs = |name: &str| name == "material-estimate" || name == "loop-sizing";
    for (calculation, request) in all().into_iter().filter(|(name, _)| !needs(name)) {
        let named = unused(calculation, &request);
        for (place, _) in places(&request) {
            if place.ends_with("/lead_in/in_slot") || place.ends_with("/lead_in/in_conduit") {
                assert!(named.contains(&format!("#{place}")), "{calculation}: {place} is not in {named:?}");
            }
        }
    }
}

#[test]
fn what_is_unused_changes_no_figure() {
    for (calculation, request) in all() {
        unused_changes_no_figure(calculation, &request);
    }
}

fn unused_changes_no_figure(calculation: &str, request: &Value) {
    let figures = |request: &Value| {
        let mut body = calculate(calculation, request).body;
        for part in ["inputs", "unused", "assumed", "basis"] {
            body.as_object_mut().unwrap().shift_remove(part).unwrap();
        }
        body
    };
    let full = figures(request);
    for pointer in unused(calculation, request) {
        assert_eq!(figures(&without(request, pointer.trim_start_matches('#'))), full, "{pointer}");
    }
}

#[test]
fn a_job_names_the_fields_of_its_nouns_that_it_does_not_need() {
    let named = unused("loop-sizing", &loop_sizing());
    for pointer in ["#/lead_in/in_shared_slot", "#/detector/tuning_capacitance_nf", "#/detector/insulation_min_megohm"]
    {
        assert!(named.contains(pointer), "{pointer} is not in {named:?}");
    }
}

#[test]
fn an_opening_without_a_leaf_needs_no_figures_of_a_leaf() {
    for barrier in ["none", "barrier_arm"] {
        let request = with(&loop_sizing(), "/opening/barrier", barrier);
        let request = without(&with(&request, "/roles", json!(["presence"])), "/fixed_loops");
        let named = unused("loop-sizing", &request);
        assert!(named.contains("#/opening/leaf_height") && named.contains("#/opening/leaf_ground_gap"), "{named:?}");
    }
}

#[test]
fn a_buried_loop_needs_no_slot() {
    let request = with(&loop_sizing(), "/surface", "gravel");
    let request = with(&request, "/construction", "preformed_direct_burial");
    let named = unused("loop-sizing", &request);
    assert!(
        named.contains("#/slot/width") && named.contains("#/slot/depth") && !named.contains("#/slot/cover"),
        "{named:?}"
    );
    let answer = calculate("loop-sizing", &request);
    assert!(answer.body["inputs"].get("slot").is_none() && answer.body["loops"][0].get("slot_depth").is_none());
}

#[test]
fn an_unused_field_must_be_sound_all_the_same() {
    let buried = with(&loop_sizing(), "/construction", "preformed_direct_burial");
    let no_leaf = with(&loop_sizing(), "/opening/barrier", "none");
    let rows = [
        ("loop-characteristics", loop_characteristics(), "/loop/cover", json!("1"), "unit_missing"),
        ("loop-characteristics", loop_characteristics(), "/lead_in/spare", json!("3 h"), "unit_wrong_dimension"),
        ("loop-sizing", buried.clone(), "/slot/width", json!("0,250 in"), "decimal_comma"),
        ("loop-sizing", buried, "/slot/cover", json!("3 in"), "contradiction"),
        ("loop-sizing", no_leaf.clone(), "/opening/leaf_height", json!("tall"), "number_invalid"),
        ("loop-sizing", no_leaf, "/opening/leaf_ground_gap", json!("-1 in"), "out_of_range"),
        ("loop-sizing", loop_sizing(), "/detector/insulation_min_megohm", json!(0), "out_of_range"),
    ];
    for (calculation, request, pointer, value, code) in rows {
        let answer = calculate(calculation, &with(&request, pointer, value));
        assert_eq!(answer.status, 422, "{pointer}: {:#}", answer.body);
        assert_eq!(answer.faults(), [(format!("#{pointer}"), code.to_owned())]);
    }
}

#[test]
fn the_same_nouns_are_taken_by_both_calculations() {
    // What one calculation takes of the lead-in and the wire, the other takes, too.
    let (characteristics, sizing) = (loop_characteristics(), loop_sizing());
    let fields = |request: &Value, noun: &str| -> BTreeSet<String> {
        places(request.pointer(noun).unwrap()).into_iter().map(|(pointer, _)| pointer).collect()
    };
    assert_eq!(fields(&characteristics, "/lead_in"), fields(&sizing, "/lead_in"));
    assert_eq!(fields(&characteristics, "/loop/wire"), fields(&sizing, "/wire"));
    let swapped = with(&characteristics, "/lead_in", sizing["lead_in"].clone());
    assert_eq!(calculate("loop-characteristics", &swapped).status, 200);
}
