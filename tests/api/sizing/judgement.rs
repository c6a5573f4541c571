//! What a foreman decides: the step by the hardest place, what stands unseen, where the arm falls, how far the exit loop lies.

use serde_json::{Value, json};

use super::{feet, finding, gate, level, of_role, sized};
use crate::harness::{Answer, calculate};

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("no number: {value}"))
}

/// The step of the loop of a role.
fn step(answer: &Answer, role: &str) -> f64 {
    number(&of_role(answer, role)["threshold_percent"])
}

/// How often a vehicle makes the step at its hardest place.
fn times(answer: &Answer, role: &str, vehicle: &str) -> f64 {
    let vehicles = of_role(answer, role)["vehicles"].as_array().unwrap();
    let seen = vehicles.iter().find(|seen| seen["vehicle"] == vehicle).unwrap();
    number(&seen["least_change_percent"]) / number(&seen["threshold_percent"])
}

#[test]
fn the_step_follows_the_hardest_place() {
    for width in ["20 ft", "18 ft", "17 ft"] {
        let beside = sized(&gate(width, "slide_gate", json!({ "site_hazards": ["adjacent_traffic"] })));
        for role in ["obstruction_outside", "obstruction_inside"] {
            assert!((step(&beside, role) - 0.13).abs() < 1e-9, "{width} {role}");
            assert!(times(&beside, role, "high_bed_truck") >= 1.9, "{width} {role}");
        }
    }
    for width in ["16 ft", "17 ft", "18 ft"] {
        let answer = sized(&gate(width, "slide_gate", json!({})));
        let times = times(&answer, "obstruction_outside", "high_bed_truck");
        assert!((step(&answer, "obstruction_outside") - 0.13).abs() < 1e-9 && (2.7..4.2).contains(&times), "{times}");
    }
}

#[test]
fn a_wide_gate_has_a_thin_margin_and_takes_a_finer_step_where_the_sheet_has_it() {
    let thirty = sized(&gate("30 ft", "slide_gate", json!({})));
    assert!((1.5..2.0).contains(&times(&thirty, "obstruction_outside", "high_bed_truck")));
    assert_eq!(level(&thirty, "thin_margin"), "warning");
    assert!((step(&thirty, "obstruction_outside") - 0.13).abs() < 1e-9);
    let forty = sized(&gate("40 ft", "slide_gate", json!({})));
    assert!(times(&forty, "obstruction_outside", "high_bed_truck") < 1.5);
    assert_eq!(level(&forty, "thin_margin"), "warning");
    assert!(forty.findings("stop").is_empty(), "{:?}", forty.findings("stop"));
    let finer = json!({ "detector": { "threshold_steps_percent": [0.32, 0.13, 0.08, 0.05] } });
    let finer = sized(&gate("40 ft", "slide_gate", finer));
    assert!((step(&finer, "obstruction_outside") - 0.08).abs() < 1e-9);
    assert_eq!(level(&finer, "thin_margin"), "");
    assert_eq!(level(&finer, "fine_threshold"), "warning");
}

/// Where the tail of a vehicle hard against the edge is when the unit lets go of it, feet past the line of the arm.
fn tail_past_the_arm(laid: &Value, vehicle: &str, lane_ft: f64, vehicle_ft: (f64, f64), lead_in: &str) -> f64 {
    let (width, length) = vehicle_ft;
    let response = calculate(
        "vehicle-response",
        &json!({
            "loop": {
                "along_travel": format!("{} ft", feet(&laid["along_travel"])),
                "across_lane": format!("{} ft", feet(&laid["across_lane"])),
                "turns": laid["turns"],
                "corner_cut": format!("{} in", laid["corner_cut"]["inch"]),
            },
            "lead_in": { "length": lead_in },
            "vehicle": vehicle,
            "offset_across": format!("{} ft", (lane_ft - width) / 2.0),
            "threshold_percent": laid["threshold_percent"],
        }),
    );
    let off = feet(&response.body["switches_off_at"]);
    off - length - feet(&laid["along_travel"]) / 2.0 + feet(&laid["position"]["along"])
}

#[test]
fn every_tail_is_past_the_arm_when_the_unit_lets_go() {
    const TRUCK_FT: (f64, f64) = (2.4 / 0.3048, 7.0 / 0.3048);
    // One way: the loop is moved towards travel.
    let one_way = sized(&gate("12 ft", "barrier_arm", json!({})));
    let closing = of_role(&one_way, "closing");
    let past = tail_past_the_arm(closing, "high_bed_truck", 12.0, TRUCK_FT, "50 ft");
    assert!((1.0..2.2).contains(&past), "{past} ft: {closing}");
    assert!(feet(&closing["position"]["along"]) > 0.0);
    assert_eq!(level(&one_way, "arm_falls_early"), "");
    // Both ways: a longer leg, and nothing is moved.
    let both_ways = sized(&gate("12 ft", "barrier_arm", json!({ "roles": ["closing"] })));
    let closing = of_role(&both_ways, "closing");
    let past = tail_past_the_arm(closing, "high_bed_truck", 12.0, TRUCK_FT, "50 ft");
    assert!(past >= 1.0 && feet(&closing["position"]["along"]) == 0.0, "{past} ft: {closing}");
    assert!(feet(&closing["along_travel"]) > 6.0);
    // What nothing cures is a stop that says how far the tail is.
    let fixed = json!({
        "roles": ["closing"],
        "detector": { "threshold_percent": 0.32 },
        "fixed_loops": [{ "role": "closing", "along_travel": "6 ft", "turns": 3 }],
    });
    let fixed = sized(&gate("12 ft", "barrier_arm", fixed));
    let stop = finding(&fixed, "arm_falls_early").expect("a stop");
    assert_eq!(stop["level"], "stop");
    let past = tail_past_the_arm(of_role(&fixed, "closing"), "high_bed_truck", 12.0, TRUCK_FT, "50 ft");
    assert!((-1.3..-0.9).contains(&past), "{past} ft");
}

#[test]
fn what_stands_unseen_is_a_plate_and_not_the_distance_of_the_wires() {
    let answer = sized(&gate("24 ft", "slide_gate", json!({})));
    let [inside, outside] = ["obstruction_inside", "obstruction_outside"].map(|role| of_role(&answer, role));
    let wires = feet(&inside["distance_from_barrier"]) + feet(&outside["distance_from_barrier"]);
    let unseen = feet(&answer.body["unseen_stretch"]);
    assert!((wires - 10.0).abs() < 0.01 && (unseen - 14.6).abs() < 0.05, "{wires} ft of wires, {unseen} ft unseen");
    let short_car = finding(&answer, "unseen_stretch").unwrap();
    assert_eq!(short_car["level"], "warning");
    let watched = sized(&gate("24 ft", "slide_gate", json!({ "opening": { "seen_otherwise": true } })));
    assert_eq!(level(&watched, "unseen_stretch"), "note");
    // A usual car that stands there is a stop, which another device cures.
    let far_apart = json!([
        { "role": "obstruction_outside", "distance": "7 ft" },
        { "role": "obstruction_inside", "distance": "7 ft" },
    ]);
    let car = sized(&gate("24 ft", "slide_gate", json!({ "fixed_loops": far_apart })));
    assert_eq!(level(&car, "unseen_stretch"), "stop");
    let car = gate("24 ft", "slide_gate", json!({ "fixed_loops": far_apart, "opening": { "seen_otherwise": true } }));
    assert_eq!(level(&sized(&car), "unseen_stretch"), "note");
}

#[test]
fn the_exit_loop_lies_no_farther_than_a_driver_would_understand() {
    let driven = |speed: &str, time: &str, more: Value| {
        let mut opening = json!({ "approach_speed": speed, "opening_time": time });
        opening.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
        sized(&gate("24 ft", "slide_gate", json!({ "opening": opening })))
    };
    let far = driven("10 mph", "12 s", json!({}));
    let exit = of_role(&far, "exit");
    assert!((feet(&exit["distance_from_barrier"]) - 100.0).abs() < 0.01);
    // 176 ft at 10 mph, less the 100 ft that it has.
    assert!((number(&exit["wait_s"]) - (12.0 - 100.0 / (10.0 * 5280.0 / 3600.0))).abs() < 0.06, "{exit}");
    assert_eq!(level(&far, "exit_far_away"), "warning");
    assert!(feet(&exit["lead_in"]["length"]) >= 110.0);
    assert!(
        number(&exit["electrical"]["lead_in_inductance_uh"])
            > number(&of_role(&far, "obstruction_inside")["electrical"]["lead_in_inductance_uh"])
    );
    let farther = driven("60 mph", "120 s", json!({}));
    assert!((feet(&of_role(&farther, "exit")["distance_from_barrier"]) - 100.0).abs() < 0.01);
    // The drive has the last word.
    let short = driven("10 mph", "12 s", json!({ "drive_length": "50 ft" }));
    let exit = of_role(&short, "exit");
    assert!(feet(&exit["distance_from_barrier"]) + feet(&exit["along_travel"]) <= 50.01);
    let tiny = driven("10 mph", "12 s", json!({ "drive_length": "15 ft" }));
    assert_eq!(level(&tiny, "drive_too_short"), "stop");
    // Near enough, nobody waits; the close timer brings the slowest to where he is held.
    let near = driven("5 mph", "5 s", json!({}));
    let exit = of_role(&near, "exit");
    assert_eq!(number(&exit["wait_s"]), 0.0);
    let held_to = feet(&of_role(&near, "obstruction_inside")["distance_from_barrier"]) + 6.0;
    let way = (feet(&exit["distance_from_barrier"]) - held_to) * 0.3048;
    assert!(number(&exit["close_timer_min_s"]) >= way / 1.4);
    assert_eq!(level(&near, "exit_reopens"), "note");
}

#[test]
fn free_loops_move_until_they_hardly_couple_and_the_others_share_a_unit() {
    let answer = sized(&gate("24 ft", "slide_gate", json!({})));
    let exit = of_role(&answer, "exit");
    assert!((feet(&exit["distance_from_barrier"]) - 21.0).abs() < 0.01, "{}", exit["distance_from_barrier"]);
    let plan = calculate("installation-plan", &gate("24 ft", "slide_gate", json!({})));
    for pair in plan.body["detector"]["neighbours"].as_array().unwrap() {
        let is_cured = pair["scanned_together"] == true;
        assert!(is_cured || number(&pair["coupling_percent"]) < 0.5, "{pair}");
    }
    assert!(plan.body["findings"].as_array().unwrap().iter().all(|finding| finding["code"] != "crosstalk"));
    // Both sides of a wide gate couple and cannot move: one unit.
    let wide = sized(&gate("40 ft", "slide_gate", json!({})));
    assert_eq!(of_role(&wide, "obstruction_inside")["unit"], of_role(&wide, "obstruction_outside")["unit"]);
    assert_ne!(of_role(&wide, "exit")["unit"], of_role(&wide, "obstruction_outside")["unit"]);
    assert_eq!(level(&wide, "scanning_unit"), "note");
}

#[test]
fn the_low_end_keeps_its_margin_and_steel_counts_for_tuning() {
    let arm = sized(&gate("12 ft", "barrier_arm", json!({})));
    let mesh = json!({
        "surface": "existing_concrete",
        "construction": "preformed_saw_cut",
        "site_hazards": ["reinforcing_mesh"],
    });
    let over_mesh = sized(&gate("12 ft", "barrier_arm", mesh.clone()));
    for answer in [&arm, &over_mesh] {
        for laid in answer.body["loops"].as_array().unwrap() {
            assert!(number(&laid["turns"]) >= 3.0, "{laid}");
            assert!(number(&laid["electrical"]["as_built_low_uh"]) >= 60.0, "{}", laid["electrical"]);
        }
    }
    let low = |answer: &Answer| number(&of_role(answer, "closing")["electrical"]["as_built_low_uh"]);
    assert!(low(&over_mesh) < 0.8 * low(&arm));
    assert_eq!(level(&over_mesh, "reinforcing_mesh"), "warning");
    // Steel that is known to lie deep takes less.
    let mut deep = mesh;
    deep["slab"] = json!({ "reinforcement_depth": "8 in" });
    assert!(low(&sized(&gate("12 ft", "barrier_arm", deep))) > low(&over_mesh));
    // Where a narrow envelope has no such turns, the nearest, with a note.
    let narrow = json!({ "detector": { "inductance_min_uh": 90, "inductance_max_uh": 110 } });
    let narrow = sized(&gate("12 ft", "barrier_arm", narrow));
    assert_eq!(level(&narrow, "near_least_inductance"), "note");
    assert!(narrow.findings("stop").is_empty());
}

#[test]
fn traffic_in_the_next_lane_is_computed() {
    let answer = sized(&gate("20 ft", "slide_gate", json!({ "site_hazards": ["adjacent_traffic"] })));
    let beside = &of_role(&answer, "obstruction_outside")["adjacent_lane"];
    // 3 ft of setback and 1 ft to the side of the vehicle.
    assert!((feet(&beside["distance"]) - 4.0).abs() < 0.01, "{beside}");
    assert_eq!(beside["seen"], false);
    let near = json!({ "site_hazards": ["adjacent_traffic"], "opening": { "edge_setback": "0 ft" } });
    let near = sized(&gate("20 ft", "slide_gate", near));
    let change = |answer: &Answer| number(&of_role(answer, "obstruction_outside")["adjacent_lane"]["change_percent"]);
    assert!(change(&near) > 2.0 * change(&answer));
    assert_eq!(level(&answer, "road_holds_gate"), "note");
}
