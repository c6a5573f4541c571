//! Numbers, lists and texts of the wrong size.

use serde_json::{Value, json};

use super::{hint, refused, taken};
use crate::requests::{detector_compatibility, loop_characteristics, loop_sizing, with};

#[test]
fn turns_are_a_whole_number_from_1_to_20() {
    let (characteristics, sizing) = (loop_characteristics(), loop_sizing());
    let rows = [
        (json!(0), "out_of_range"),
        (json!(21), "out_of_range"),
        (json!(-1), "out_of_range"),
        (json!(1e30), "out_of_range"),
        (json!(5_000_000_000_u64), "out_of_range"),
        (json!(u64::MAX), "out_of_range"),
        (json!(2.5), "type_wrong"),
        (json!("3"), "type_wrong"),
        (json!(true), "type_wrong"),
        (json!([3]), "type_wrong"),
    ];
    for (turns, code) in rows {
        for (calculation, request, pointer) in
            [("loop-characteristics", &characteristics, "/loop/turns"), ("loop-sizing", &sizing, "/stock/0/turns")]
        {
            let request = with(request, pointer, turns.clone());
            let answer = refused(calculation, &request, &[(&format!("#{pointer}"), code)]);
            let errors = answer.body["errors"].to_string();
            assert!(!errors.contains("u32") && !errors.contains('`'), "words of the machine: {errors}");
        }
    }
}

#[test]
fn a_whole_number_may_be_written_with_a_point() {
    for turns in [json!(3.0), json!(1), json!(20)] {
        let answer = taken("loop-characteristics", &with(&loop_characteristics(), "/loop/turns", turns.clone()));
        assert_eq!(answer.body["inputs"]["loop"]["turns"].as_f64(), turns.as_f64());
    }
}

#[test]
fn numbers_keep_to_their_ranges() {
    let (characteristics, sizing) = (loop_characteristics(), loop_sizing());
    let rows: [(&str, &Value, &str, f64, f64); 11] = [
        ("loop-characteristics", &characteristics, "/frequency_khz", 1.0, 500.0),
        ("loop-characteristics", &characteristics, "/shunt_capacitance_nf", 0.0, 100.0),
        ("loop-sizing", &sizing, "/detector/inductance_min_uh", 1.0, 10_000.0),
        ("loop-sizing", &sizing, "/detector/inductance_max_uh", 1.0, 10_000.0),
        ("loop-sizing", &sizing, "/detector/quality_factor_min", 0.1, 1_000.0),
        ("loop-sizing", &sizing, "/detector/frequency_min_khz", 1.0, 1_000.0),
        ("loop-sizing", &sizing, "/detector/frequency_max_khz", 1.0, 1_000.0),
        ("loop-sizing", &sizing, "/detector/tuning_capacitance_nf", 0.1, 10_000.0),
        ("loop-sizing", &sizing, "/detector/threshold_percent", 0.001, 50.0),
        ("loop-sizing", &sizing, "/detector/threshold_steps_percent/1", 0.001, 50.0),
        ("loop-sizing", &sizing, "/detector/insulation_min_megohm", 0.001, 100_000.0),
    ];
    for (calculation, request, pointer, least, greatest) in rows {
        let fault = format!("#{pointer}");
        for number in [json!(least - 1e-6), json!(greatest * 1.000_001), json!(-greatest), json!(1e300)] {
            let answer = crate::harness::calculate(calculation, &with(request, pointer, number.clone()));
            assert_eq!(answer.status, 422, "{pointer} {number}");
            // A limit so far out crosses the other limit, too.
            assert!(answer.faults().contains(&(fault.clone(), "out_of_range".to_owned())), "{pointer} {number}");
        }
        for text in [json!("50"), json!("50 kHz"), json!(true), json!({})] {
            let answer = refused(calculation, &with(request, pointer, text), &[(&fault, "type_wrong")]);
            assert_eq!(hint(&answer), "Send a number.");
        }
    }
    for bound in [1.0, 500.0] {
        taken("loop-characteristics", &with(&characteristics, "/frequency_khz", bound));
    }
}

#[test]
fn lists_keep_to_their_sizes() {
    let sizing = loop_sizing();
    let items = |count: usize, item: &Value| Value::Array(vec![item.clone(); count]);
    let item = &sizing["stock"][1];
    let rows = [
        ("/vehicles", items(12, &json!("pickup")), "Send at most 11 items."),
        ("/site_hazards", items(13, &json!("old_loop_cut")), "Send at most 12 items."),
        ("/detector/threshold_steps_percent", items(33, &json!(0.5)), "Send at most 32 items."),
        ("/stock", items(201, item), "Send at most 200 items."),
    ];
    for (pointer, list, expected) in rows {
        let answer = refused("loop-sizing", &with(&sizing, pointer, list), &[(&format!("#{pointer}"), "list_size")]);
        assert_eq!(hint(&answer), expected, "{pointer}");
    }
    taken("loop-sizing", &with(&sizing, "/stock", items(200, item)));
    taken("loop-sizing", &with(&sizing, "/stock", json!([])));
    taken("loop-sizing", &with(&sizing, "/site_hazards", json!([])));
}

#[test]
fn a_unit_is_held_against_1_to_28_loops() {
    let request = detector_compatibility();
    let loops = |count: usize| {
        let labelled = (0..count).map(|index| with(&request["loops"][0], "/label", format!("lane {index}")));
        with(&request, "/loops", labelled.collect::<Vec<_>>())
    };
    for count in [0, 29] {
        let answer = refused("detector-compatibility", &loops(count), &[("#/loops", "list_size")]);
        assert_eq!(hint(&answer), "Send from 1 to 28 items.");
    }
    taken("detector-compatibility", &loops(28));
    let named_too_long = with(&request, "/loops/0/label", "n".repeat(65));
    refused("detector-compatibility", &named_too_long, &[("#/loops/0/label", "text_size")]);
}

#[test]
fn eight_roles_are_too_many_and_one_of_them_stands_twice() {
    let roles = [
        "exit",
        "obstruction_outside",
        "obstruction_inside",
        "between_leaves",
        "arming",
        "closing",
        "presence",
        "exit",
    ];
    refused(
        "loop-sizing",
        &with(&loop_sizing(), "/roles", json!(roles)),
        &[("#/roles", "list_size"), ("#/roles/7", "contradiction")],
    );
}

#[test]
fn a_stock_number_is_from_1_to_64_characters() {
    let sizing = loop_sizing();
    for sku in [String::new(), "T".repeat(65)] {
        let answer = refused("loop-sizing", &with(&sizing, "/stock/1/sku", sku), &[("#/stock/1/sku", "text_size")]);
        assert_eq!(hint(&answer), "Send from 1 to 64 characters.");
    }
    taken("loop-sizing", &with(&sizing, "/stock/1/sku", "é".repeat(64)));
}
