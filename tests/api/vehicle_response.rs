//! What a vehicle does to a loop: the profile, where the unit switches, what is missed.

mod classes;
mod drop_outs;

use serde_json::{Value, json};

use super::harness::calculate;

fn request(with: Value) -> Value {
    let mut request = json!({
        "loop": { "along_travel": "6 ft", "across_lane": "6 ft", "turns": 3 },
        "lead_in": { "length": "50 ft" },
    });
    for (key, value) in with.as_object().unwrap() {
        request[key] = value.clone();
    }
    request
}

fn answer(with: Value) -> Value {
    let answer = calculate("vehicle-response", &request(with));
    assert_eq!(answer.status, 200, "{:#}", answer.body);
    answer.body
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("{value} is no number"))
}

#[test]
fn a_car_switches_the_unit_once_and_is_seen_from_end_to_end() {
    let report = answer(json!({ "vehicle": "passenger_car", "positions": 201 }));
    let (on, off) = (number(&report["switches_on_at"]["m"]), number(&report["switches_off_at"]["m"]));
    // The front is over the loop when it switches on, the tail when it switches off.
    assert!((0.0..1.83).contains(&on), "on at {on} m");
    assert!((4.5..4.5 + 1.83).contains(&off), "off at {off} m");
    assert_eq!(report["drops_out"], false);
    assert_eq!(report["profile"].as_array().unwrap().len(), 201);
    let peak = number(&report["peak_change_percent"]);
    let highest =
        report["profile"].as_array().unwrap().iter().map(|point| number(&point["change_percent"])).fold(0.0, f64::max);
    assert!((peak - highest).abs() < 0.01 * peak && peak >= highest, "peak {peak}, profile up to {highest}");
    assert!(report["blind_strip"].is_null(), "only two-wheelers have one");
}

#[test]
fn the_profile_agrees_with_where_the_unit_switches() {
    let report = answer(json!({ "vehicle": "pickup", "positions": 41 }));
    let threshold = number(&report["threshold_percent"]);
    let (on, off) = (number(&report["switches_on_at"]["m"]), number(&report["switches_off_at"]["m"]));
    for point in report["profile"].as_array().unwrap() {
        let (position, change) = (number(&point["position"]["m"]), number(&point["change_percent"]));
        let over = position > on + 0.01 && position < off - 0.01;
        let outside = position < on - 0.01 || position > off + 0.01;
        assert!(!over || change >= threshold - 0.001, "{position} m: {change} %");
        assert!(!outside || change <= threshold + 0.001, "{position} m: {change} %");
    }
}

#[test]
fn the_lead_in_dilutes_what_the_loop_sees() {
    let near = answer(json!({ "vehicle": "passenger_car", "lead_in": { "length": "0 ft" } }));
    let far = answer(json!({ "vehicle": "passenger_car", "lead_in": { "length": "350 ft" } }));
    assert_eq!(near["peak_change_percent"], near["peak_change_at_loop_percent"]);
    assert_eq!(near["peak_change_at_loop_percent"], far["peak_change_at_loop_percent"]);
    // 77 µH of lead-in on a loop of 77 µH halve the change.
    let share = number(&far["peak_change_percent"]) / number(&near["peak_change_percent"]);
    assert!((share - 0.5).abs() < 0.01, "{share}");
}

#[test]
fn a_tractor_and_trailer_drops_out_of_a_short_loop_and_not_of_a_long_one() {
    let over = |along: &str| {
        answer(json!({
            "loop": { "along_travel": along, "across_lane": "10 ft", "turns": 3 },
            "vehicle": "tractor_trailer",
        }))
    };
    let short = over("4 ft");
    assert_eq!(short["drops_out"], true, "{short:#}");
    assert_eq!(short["drop_outs"].as_array().unwrap().len(), 1);
    let codes: Vec<_> = short["findings"].as_array().unwrap().iter().map(|finding| finding["code"].clone()).collect();
    assert!(codes.contains(&json!("drops_out")), "{codes:?}");
    assert_eq!(over("10 ft")["drops_out"], false);
}

#[test]
fn a_two_wheeler_is_blind_in_the_middle_of_a_rectangle_and_not_of_a_quadrupole() {
    let rectangle = answer(json!({ "vehicle": "small_motorcycle" }));
    assert_eq!(rectangle["blind_strip"]["contains_centre"], true);
    assert!(rectangle["findings"].as_array().unwrap().iter().any(|finding| finding["code"] == "blind_strip"));
    let quadrupole = answer(json!({
        "loop": { "shape": "quadrupole", "along_travel": "6 ft", "across_lane": "6 ft", "turns": 2 },
        "vehicle": "small_motorcycle",
    }));
    assert_eq!(quadrupole["blind_strip"]["contains_centre"], false);
    assert!(number(&quadrupole["peak_change_percent"]) > 4.0 * number(&rectangle["peak_change_percent"]));
    // Its own nulls are reported: over the middle of each cell the machine is not seen.
    assert!(!quadrupole["blind_strip"]["strips"].as_array().unwrap().is_empty());
    assert_eq!(quadrupole["inputs"]["offset_across"]["m"], 0.0);
}

#[test]
fn a_quadrupole_loses_height() {
    let height = |shape: &str| {
        let report = answer(json!({
            "loop": { "shape": shape, "along_travel": "6 ft", "across_lane": "6 ft", "turns": 2 },
            "vehicle": "high_bed_truck",
        }));
        number(&report["seen_height"]["flat_underside"]["m"])
    };
    assert!(height("quadrupole") < 0.7 * height("rectangle"));
}

#[test]
fn the_seen_height_is_where_a_plate_just_switches_the_unit() {
    let plate = |height: &str| json!({ "width": "6 ft", "length": "15 ft", "effective_height": height });
    let report = answer(json!({ "plate": plate("0.5 m"), "threshold_percent": 1.0 }));
    let height = number(&report["seen_height"]["flat_underside"]["m"]);
    let at = answer(json!({ "plate": plate(&format!("{height} m")), "threshold_percent": 1.0 }));
    assert!((number(&at["peak_change_percent"]) - 1.0).abs() < 0.01, "at {height} m: {}", at["peak_change_percent"]);
}

#[test]
fn feet_and_metres_and_both_sides_of_the_lane_agree() {
    let at = |offset: &str| {
        number(&answer(json!({ "vehicle": "passenger_car", "offset_across": offset }))["peak_change_percent"])
    };
    assert_eq!(at("2 ft"), at("0.6096 m"));
    assert_eq!(at("2 ft"), at("-2 ft"));
    assert!(at("2 ft") < at("0 ft"));
}

#[test]
fn thresholds_follow_the_class_unless_given() {
    for (vehicle, threshold) in [
        ("passenger_car", 0.32),
        ("pickup", 0.32),
        ("high_bed_truck", 0.13),
        ("tractor_trailer", 0.13),
        ("car_with_trailer", 0.32),
        ("bus", 0.13),
        ("forklift", 0.32),
        ("golf_cart", 0.32),
        ("large_motorcycle", 0.13),
        ("small_motorcycle", 0.05),
        ("bicycle", 0.05),
    ] {
        assert_eq!(answer(json!({ "vehicle": vehicle }))["threshold_percent"], threshold, "{vehicle}");
    }
    let given = answer(json!({ "vehicle": "bicycle", "threshold_percent": 0.02 }));
    assert_eq!(given["threshold_percent"], 0.02);
    assert!(given["findings"].as_array().unwrap().iter().any(|finding| finding["code"] == "fine_threshold"));
}

#[test]
fn a_vehicle_or_a_plate_is_asked_for_and_not_both() {
    let neither = calculate("vehicle-response", &request(json!({})));
    assert_eq!((neither.status, neither.faults()), (422, vec![("#/vehicle".to_owned(), "field_missing".to_owned())]));
    let both = calculate(
        "vehicle-response",
        &request(json!({
            "vehicle": "pickup", "plate": { "width": "6 ft", "length": "15 ft", "effective_height": "2 ft" },
        })),
    );
    assert_eq!((both.status, both.faults()), (422, vec![("#/plate".to_owned(), "contradiction".to_owned())]));
    let too_long = calculate(
        "vehicle-response",
        &request(
            json!({ "plate": { "width": "6 ft", "length": "17 m", "effective_height": "20 ft" }, "positions": 202 }),
        ),
    );
    let faults = too_long.faults();
    for pointer in ["#/plate/length", "#/plate/effective_height", "#/positions"] {
        assert!(faults.contains(&(pointer.to_owned(), "out_of_range".to_owned())), "{pointer} of {faults:?}");
    }
}

#[test]
fn a_plate_lower_than_the_cells_resolve_says_that_it_is_rough() {
    let report = answer(json!({ "plate": { "width": "4 m", "length": "16 m", "effective_height": "6 in" } }));
    assert!(report["findings"].as_array().unwrap().iter().any(|finding| finding["code"] == "rough_answer"));
}
