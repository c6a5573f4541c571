//! Drop-outs: the unit lets go before the vehicle's tail has reached the loop, whether or not it comes back. No figure depends on how
//! many positions the profile has.

use proptest::prelude::*;
use serde_json::{Value, json};

use super::super::harness::{calculate, get};
use super::super::requests::with;
use super::{answer, number};

fn rig(shape: &str, threshold: f64) -> Value {
    json!({
        "loop": { "shape": shape, "along_travel": "6 ft", "across_lane": "6 ft", "turns": 3 },
        "lead_in": { "length": "50 ft" }, "vehicle": "tractor_trailer", "threshold_percent": threshold,
    })
}

fn finding(report: &Value) -> Option<&Value> {
    report["findings"].as_array().unwrap().iter().find(|finding| finding["code"] == "drops_out")
}

#[test]
fn a_unit_that_lets_go_under_a_trailer_and_never_comes_back_drops_out() {
    for (shape, threshold) in [("quadrupole", 0.13), ("rectangle", 0.9)] {
        let report = calculate("vehicle-response", &rig(shape, threshold)).body;
        assert_eq!(report["drops_out"], true, "{shape}: {report:#}");
        let stretches = report["drop_outs"].as_array().unwrap();
        let [stretch] = stretches.as_slice() else { panic!("{stretches:?}") };
        // From under the tractor until the tail has come: a rig of 18 m lets go at a third of its length.
        assert_eq!(stretch["from"], report["switches_off_at"]);
        assert_eq!(stretch["to"], report["inputs"]["vehicle_length"]);
        assert!((4.0..7.0).contains(&number(&stretch["from"]["m"])), "{stretch}");
        let finding = finding(&report).unwrap();
        assert!(
            finding["figures"].as_array().unwrap().iter().any(|figure| figure["name"] == "lets_go_at"),
            "{finding}"
        );
    }
}

#[test]
fn letting_go_while_the_tail_crosses_the_loop_is_the_release() {
    for vehicle in ["passenger_car", "high_bed_truck", "bus", "forklift"] {
        let report = answer(json!({ "vehicle": vehicle }));
        let (off, length) = (number(&report["switches_off_at"]["m"]), number(&report["inputs"]["vehicle_length"]["m"]));
        assert!((length..length + 1.83).contains(&off), "{vehicle} of {length} m off at {off} m");
        assert_eq!((&report["drops_out"], &report["drop_outs"]), (&json!(false), &json!([])));
        assert!(finding(&report).is_none());
    }
}

/// A truck at 1.2 m is seen by 0.18 % while it covers a loop of 2 ft, and by half of that with its tail over the first wire.
#[test]
fn a_vehicle_of_one_part_drops_out_where_the_step_is_hardly_reached() {
    let pass = json!({
        "loop": { "along_travel": "2 ft", "across_lane": "6 ft", "turns": 3 }, "lead_in": { "length": "0 ft" },
        "vehicle": "high_bed_truck", "threshold_percent": 0.13,
    });
    let report = answer(pass.clone());
    assert_eq!((&report["detected"], &report["drops_out"]), (&json!(true), &json!(true)));
    assert!(finding(&checked(&pass, "exit")).is_some());
}

#[test]
fn the_drawing_shows_a_drop_out_without_a_return() {
    let svg = calculate("drawings/response-profile", &rig("quadrupole", 0.13)).body;
    let svg = svg.as_str().unwrap();
    assert_eq!(svg.matches(r#"class="dot""#).count(), 2, "{svg}");
    assert!(svg.contains(">lets go<") && !svg.contains(">off<") && !svg.contains(">on again<"), "{svg}");
    assert!(svg.contains("Lets go before the tail reaches the loop"), "{svg}");
}

fn checked(request: &Value, role: &str) -> Value {
    let connected = json!({ "label": "A", "role": role, "loop": request["loop"], "lead_in": request["lead_in"] });
    let request = json!({
        "loops": [connected], "vehicles": [request["vehicle"]],
        "detector": { "threshold_percent": request["threshold_percent"] },
    });
    let answer = calculate("detector-compatibility", &request);
    assert_eq!(answer.status, 200, "{request}: {:#}", answer.body);
    answer.body
}

#[test]
fn a_trailers_floor_that_is_not_seen_is_a_drop_out_of_the_channel_too() {
    for (shape, threshold) in [("quadrupole", 0.13), ("rectangle", 0.9)] {
        let report = checked(&rig(shape, threshold), "exit");
        assert_eq!(finding(&report).map(|finding| &finding["level"]), Some(&json!("warning")), "{shape}: {report:#}");
        let report = checked(&rig(shape, threshold), "obstruction_inside");
        assert_eq!(finding(&report).map(|finding| &finding["level"]), Some(&json!("stop")), "{shape}: {report:#}");
    }
}

#[test]
fn a_vehicle_that_is_not_seen_does_not_drop_out() {
    let unseen = json!({
        "loop": { "along_travel": "6 ft", "across_lane": "6 ft", "turns": 3 }, "lead_in": { "length": "50 ft" },
        "vehicle": "passenger_car", "threshold_percent": 5.0,
    });
    assert!(finding(&checked(&unseen, "obstruction_inside")).is_none());
    let report = calculate("vehicle-response", &unseen).body;
    assert_eq!((&report["detected"], &report["drops_out"]), (&json!(false), &json!(false)));
}

prop_compose! {
    /// A pass over a loop of an opening's size.
    fn pass()(
        shape in prop::sample::select(vec!["rectangle", "quadrupole"]), along in 20..120_u32, across in 40..200_u32, turns in 2..=5_u32,
        vehicle in prop::sample::select(vec![
            "passenger_car", "pickup", "high_bed_truck", "tractor_trailer", "car_with_trailer", "bus", "forklift", "golf_cart",
            "small_motorcycle", "large_motorcycle", "bicycle",
        ]),
        threshold in 0.02..2.0_f64, offset in -40..=40_i32,
    ) -> Value {
        let feet = |tenths: f64| format!("{} ft", tenths / 10.0);
        json!({
            "loop": { "shape": shape, "along_travel": feet(along.into()), "across_lane": feet(across.into()), "turns": turns },
            "lead_in": { "length": "50 ft" }, "vehicle": vehicle, "threshold_percent": threshold,
            "offset_across": feet(offset.into())
        })
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 150, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn where_the_unit_switches_does_not_depend_on_the_positions(pass in pass(), few in 2..12_u32, many in 12..=201_u32) {
        let at = |positions: u32| calculate("vehicle-response", &with(&pass, "/positions", positions)).body;
        let (coarse, fine) = (at(few), at(many));
        for name in [
            "peak_change_percent", "peak_position", "detected", "switches_on_at", "switches_off_at", "drops_out", "drop_outs",
            "seen_height", "findings",
        ] {
            prop_assert_eq!(&coarse[name], &fine[name], "{} of {}", name, pass);
        }
        for report in [coarse, fine] {
            let metres = |value: &Value| value["m"].as_f64();
            let stretches: Vec<_> = report["drop_outs"].as_array().unwrap().iter()
                .map(|stretch| (metres(&stretch["from"]).unwrap(), metres(&stretch["to"]).unwrap()))
                .collect();
            prop_assert_eq!(report["drops_out"] == true, !stretches.is_empty(), "{}", pass);
            prop_assert_eq!(finding(&report).is_some(), !stretches.is_empty(), "{}", pass);
            prop_assert_eq!(report["detected"] == true, !report["switches_on_at"].is_null(), "{}", pass);
            let (Some(on), Some(off)) = (metres(&report["switches_on_at"]), metres(&report["switches_off_at"])) else { continue };
            let tail = metres(&report["inputs"]["vehicle_length"]).unwrap();
            let threshold = pass["threshold_percent"].as_f64().unwrap();
            for point in report["profile"].as_array().unwrap() {
                let (front, change) = (metres(&point["position"]).unwrap(), point["change_percent"].as_f64().unwrap());
                // What is published is rounded to millimetres and to thousandths of a percent.
                let inside = stretches.iter().any(|(from, to)| (from - 0.001..=to + 0.001).contains(&front));
                let within = stretches.iter().any(|(from, to)| (from + 0.001..=to - 0.001).contains(&front));
                let is_asked = front > on && front < off.max(tail);
                prop_assert!(!is_asked || change >= threshold - 0.001 || inside, "{} m: {} % of {}", front, change, pass);
                prop_assert!(!within || change <= threshold + 0.001, "{} m: {} % of {}", front, change, pass);
                prop_assert!((on..=off).contains(&front) || change <= threshold + 0.001, "{} m: {} % of {}", front, change, pass);
            }
        }
    }

    /// The channel samples where the response searches: within 3 % of the step they may differ. Of a vehicle that is shorter than the loop
    /// and that only the wires see, the channel says that it is not seen.
    #[test]
    fn a_channel_drops_out_where_the_response_does(pass in pass()) {
        let pass = with(&pass, "/offset_across", "0 ft");
        let two_wheeler = ["small_motorcycle", "large_motorcycle", "bicycle"].contains(&pass["vehicle"].as_str().unwrap());
        let row = get("/v1/reference/vehicle-classes").body["rows"].as_array().unwrap().iter().find(|row| row["code"] == pass["vehicle"]).unwrap().clone();
        let along: f64 = pass["loop"]["along_travel"].as_str().unwrap().trim_end_matches(" ft").parse().unwrap();
        let is_longer = number(&row["length"]["ft"]) > along;
        let at = |share: f64| {
            let threshold = share * pass["threshold_percent"].as_f64().unwrap();
            calculate("vehicle-response", &with(&pass, "/threshold_percent", threshold)).body["drops_out"].clone()
        };
        let (lower, drops_out, upper) = (at(0.97), at(1.0), at(1.03));
        if !two_wheeler && is_longer && lower == drops_out && upper == drops_out {
            let report = checked(&pass, "exit");
            prop_assert_eq!(finding(&report).is_some(), drops_out == true, "{}: {:#}", pass, report);
        }
    }

    #[test]
    fn what_is_seen_is_not_higher_than_what_is_seen_at_all(
        pass in pass(), own in prop::option::of((10..130_u32, 10..500_u32, 15..180_u32)),
    ) {
        let mut pass = pass;
        if let Some((width, length, height)) = own {
            let feet = |tenths: u32| format!("{} ft", f64::from(tenths) / 10.0);
            pass.as_object_mut().unwrap().shift_remove("vehicle").unwrap();
            pass["plate"] = json!({
                "width": feet(width), "length": feet(length), "effective_height": format!("{} m", f64::from(height) / 100.0 + 0.01)
            });
        }
        let report = calculate("vehicle-response", &pass).body;
        if report["detected"] == true && report["blind_strip"].is_null() {
            let (seen, own) = (&report["seen_height"]["flat_underside"]["m"], &report["inputs"]["effective_height"]["m"]);
            prop_assert!(seen.as_f64() >= own.as_f64(), "{}: {} under {}", pass, seen, own);
        }
    }
}
