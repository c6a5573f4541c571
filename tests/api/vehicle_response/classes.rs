//! The classes of vehicles beyond cars, trucks and two-wheelers: assumed plates.

use serde_json::{Value, json};

use super::super::harness::get;
use super::{answer, number};

fn over_test_loop(vehicle: &str) -> Value {
    answer(json!({
        "loop": { "along_travel": "6 ft", "across_lane": "6 ft", "turns": 3, "corner_cut": "12 in", "cover": "1.05 in" },
        "lead_in": { "length": "100 ft" }, "vehicle": vehicle,
    }))
}

#[test]
fn the_table_of_classes_lists_them_behind_those_that_were_there() {
    let table = get("/v1/reference/vehicle-classes").body;
    let rows = table["rows"].as_array().unwrap();
    let listed: Vec<_> = rows.iter().map(|row| (row["code"].as_str().unwrap(), number(&row["length"]["m"]))).collect();
    let added = [("car_with_trailer", 8.2), ("bus", 12.0), ("forklift", 2.3), ("golf_cart", 2.4)];
    assert_eq!((listed[0].0, listed[6].0, &listed[7..]), ("passenger_car", "bicycle", &added[..]));
}

/// A car with trailer is seen as a car is, a bus between a pickup and a truck. A forklift's steel lies low, and a golf cart is seen less
/// than a pickup.
#[test]
fn each_drives_over_the_standard_test_loop() {
    let peak = |vehicle: &str| {
        let report = over_test_loop(vehicle);
        assert_eq!(report["detected"], true, "{vehicle}");
        assert!(number(&report["times_threshold"]) >= 2.0, "{vehicle}");
        number(&report["peak_change_percent"])
    };
    let (car, pickup, truck) = (peak("passenger_car"), peak("pickup"), peak("high_bed_truck"));
    assert!((peak("car_with_trailer") - car).abs() < 0.02 * car);
    assert!((truck..pickup).contains(&peak("bus")));
    assert!((car..2.0 * car).contains(&peak("forklift")));
    assert!((0.3 * car..pickup).contains(&peak("golf_cart")));
    for vehicle in ["car_with_trailer", "bus", "forklift", "golf_cart"] {
        assert_eq!(over_test_loop(vehicle)["model"], "assumed");
    }
}

#[test]
fn a_car_with_trailer_is_let_go_at_the_tongue_of_a_short_loop_at_a_coarse_step_and_not_of_a_long_one_at_a_fine_step() {
    let over = |along: &str, threshold: f64| {
        answer(json!({
            "loop": { "along_travel": along, "across_lane": "8 ft", "turns": 3 },
            "vehicle": "car_with_trailer", "threshold_percent": threshold,
        }))
    };
    let short = over("4 ft", 0.32);
    let stretches = short["drop_outs"].as_array().unwrap();
    assert_eq!((&short["drops_out"], stretches.len()), (&json!(true), 1), "{short:#}");
    // The tongue, 4.5 to 5.8 m behind the front, passes over a loop of 1.2 m.
    let (from, to) = (number(&stretches[0]["from"]["m"]), number(&stretches[0]["to"]["m"]));
    assert!(4.5 < from && from < to && to < 5.8 + 1.2, "{from} to {to} m");
    assert_eq!(over("8 ft", 0.13)["drops_out"], false);
}
