//! Sizing proves its choice: every required vehicle is seen, or the report says what is not and what would cure it.

use serde_json::{Value, json};

use super::harness::{Answer, calculate};

fn size(request: &Value) -> Answer {
    let answer = calculate("loop-sizing", request);
    assert_eq!(answer.status, 200, "{:#}", answer.body);
    answer
}

fn gate(width: &str, barrier: &str, with: Value) -> Answer {
    let mut request = json!({ "opening": { "width": width, "barrier": barrier } });
    for (key, value) in with.as_object().unwrap() {
        request[key] = value.clone();
    }
    size(&request)
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("{value} is no number"))
}

fn loop_of<'a>(answer: &'a Answer, role: &str) -> &'a Value {
    let loops = answer.body["loops"].as_array().unwrap();
    loops.iter().find(|sized| sized["role"] == role).unwrap_or_else(|| panic!("no {role}"))
}

/// Common practice: 2 ft clear at each side.
#[test]
fn a_24_ft_slide_gate_gets_6_by_20_ft() {
    let answer = gate("24 ft", "slide_gate", json!({ "roles": ["exit"] }));
    let exit = loop_of(&answer, "exit");
    assert_eq!((&exit["along_travel"]["ft"], &exit["across_lane"]["ft"]), (&json!(6.0), &json!(20.0)));
    assert_eq!(exit["edge_setback"]["ft"], 2.0);
    assert!((2..=3).contains(&exit["turns"].as_u64().unwrap()));
}

#[test]
fn every_vehicle_is_seen_by_twice_the_threshold_wherever_nothing_is_said() {
    for (width, barrier) in [
        ("10 ft", "barrier_arm"),
        ("16 ft", "swing_gate_pair"),
        ("24 ft", "slide_gate"),
        ("9 m", "overhead_door"),
        ("40 ft", "slide_gate"),
    ] {
        for vehicles in [json!(["passenger_car"]), json!(["pickup", "high_bed_truck"]), json!(["tractor_trailer"])] {
            let answer = gate(width, barrier, json!({ "vehicles": vehicles }));
            for sized in answer.body["loops"].as_array().unwrap() {
                for seen in sized["vehicles"].as_array().unwrap() {
                    let sound = number(&seen["least_change_percent"])
                        >= 2.0 * number(&seen["threshold_percent"]) - 0.001
                        && seen["detected"] == true
                        && seen["drops_out"] == false;
                    let said = answer.body["findings"].as_array().unwrap().iter().any(|finding| {
                        let about = ["vehicle_not_seen", "thin_margin", "drops_out"]
                            .iter()
                            .any(|code| finding["code"] == *code);
                        let vehicle = json!({ "name": "vehicle", "code": seen["vehicle"] });
                        let params = finding["params"].as_array().unwrap();
                        about && finding["subject"] == sized["role"] && params.contains(&vehicle)
                    });
                    assert_eq!(sound, !said, "{width} {barrier} {}: {seen}", sized["role"]);
                }
            }
        }
    }
}

/// The change that sizing shows is that of a vehicle whose middle stands over the loop's; vehicle-response answers the same for that
/// loop and looks for the peak, which a plate reaches a little before or after.
#[test]
fn the_figures_are_those_of_vehicle_response() {
    let answer = gate("7.2 m", "slide_gate", json!({ "lead_in": { "length": "18 m" } }));
    let sized = loop_of(&answer, "obstruction_inside");
    let metres = |key: &str| format!("{} m", sized[key]["m"]);
    for seen in sized["vehicles"].as_array().unwrap() {
        let response = calculate(
            "vehicle-response",
            &json!({
                "loop": { "along_travel": metres("along_travel"), "across_lane": metres("across_lane"), "turns": sized["turns"],
                          "corner_cut": format!("{} mm", sized["corner_cut"]["mm"]), "cover": "1 in" },
                "lead_in": { "length": "18 m" },
                "vehicle": seen["vehicle"],
                "threshold_percent": seen["threshold_percent"],
            }),
        );
        let (peak, centred) = (number(&response.body["peak_change_percent"]), number(&seen["change_percent"]));
        assert!(centred <= peak + 0.001 && centred > 0.98 * peak, "{centred} of {peak}: {seen}");
    }
}

/// The step of the one loop of a lane: the coarsest at which every vehicle makes twice the step at its hardest place.
#[test]
fn the_coarsest_step_that_serves_is_set() {
    let lane = |vehicles: Value, detector: Value| {
        let answer = gate("12 ft", "none", json!({ "vehicles": vehicles, "detector": detector }));
        let sized = loop_of(&answer, "presence").clone();
        let least = sized["vehicles"].as_array().unwrap().iter().map(|seen| number(&seen["least_change_percent"]));
        (
            number(&answer.body["inputs"]["threshold_percent"]),
            number(&sized["threshold_percent"]),
            least.fold(100.0, f64::min),
        )
    };
    let (design, step, least) = lane(json!(["passenger_car", "pickup"]), json!({}));
    assert!(design == 0.13 && step == 0.32 && least >= 0.64, "{design} {step} {least}");
    let (design, step, least) = lane(json!(["passenger_car", "bicycle"]), json!({}));
    assert!(design == 0.13 && step == 0.13 && least < 0.64, "{design} {step} {least}");
    // The one that is given is designed for and set.
    let (design, step, _) = lane(json!(["bicycle"]), json!({ "threshold_percent": 0.2 }));
    assert_eq!((design, step), (0.2, 0.2));
    // Of the steps on the sheet: designed for the coarsest of 0.13 % or finer, or the finest; set to the coarsest that serves.
    let (design, step, least) =
        lane(json!(["high_bed_truck"]), json!({ "threshold_steps_percent": [0.02, 0.08, 0.12, 0.3] }));
    let serves = if least >= 0.6 { 0.3 } else { 0.12 };
    assert_eq!((design, step), (0.12, serves), "{least}");
    let (design, step, _) = lane(json!(["high_bed_truck"]), json!({ "threshold_steps_percent": [0.5, 0.3] }));
    assert_eq!((design, step), (0.3, 0.3));
}

/// Between one and a half times and twice a coarse step the margin is thin, and no finer step is taken.
#[test]
fn a_thin_margin_does_not_ask_for_a_finer_step() {
    let steps = json!({ "threshold_steps_percent": [0.32, 0.13, 0.05] });
    let answer = gate("26 ft", "slide_gate", json!({ "detector": steps }));
    let outside = loop_of(&answer, "obstruction_outside");
    let least = number(&outside["vehicles"][1]["least_change_percent"]);
    assert!((1.5 * 0.13..2.0 * 0.13).contains(&least), "{least}");
    assert_eq!(outside["threshold_percent"], 0.13);
    assert!(answer.findings("warning").contains(&"thin_margin"));
}

#[test]
fn a_fine_threshold_is_warned_of() {
    let steps = json!({ "threshold_steps_percent": [0.32, 0.13, 0.05] });
    let answer = gate("10 ft", "none", json!({ "vehicles": ["bicycle"], "detector": steps }));
    assert!(answer.findings("warning").contains(&"fine_threshold"));
    assert_eq!(loop_of(&answer, "presence")["threshold_percent"], 0.05);
    // Without a sheet that has it, no unit is taken to have a finer step.
    let answer = gate("10 ft", "none", json!({ "vehicles": ["bicycle"] }));
    assert!(!answer.findings("warning").contains(&"fine_threshold"));
}

#[test]
fn a_two_wheeler_in_the_middle_is_a_stop_where_the_loop_holds_a_gate_unless_another_device_sees_it() {
    let with = |more: Value| {
        let mut request = json!({ "vehicles": ["passenger_car", "small_motorcycle"], "roles": ["closing"] });
        for (key, value) in more.as_object().unwrap() {
            request[key] = value.clone();
        }
        gate("10 ft", "barrier_arm", request)
    };
    let bare = with(json!({}));
    // The arm falls behind a rider too: what sees no rider lets go of none in time.
    assert_eq!(bare.findings("stop"), ["blind_strip", "arm_falls_early"]);
    assert_eq!(loop_of(&bare, "closing")["vehicles"][1]["blind_strip"]["contains_centre"], true);
    let covered = with(json!({ "seen_by_other_devices": ["small_motorcycle"] }));
    assert!(covered.findings("stop").is_empty());
    assert!(covered.findings("warning").contains(&"blind_strip"));
    let arming = with(json!({ "roles": ["arming"] }));
    assert!(arming.findings("stop").is_empty() && arming.findings("warning").contains(&"blind_strip"));
}

#[test]
fn a_quadrupole_is_offered_wherever_a_two_wheeler_is_asked_for_with_what_it_costs() {
    let answer = gate("10 ft", "barrier_arm", json!({ "vehicles": ["high_bed_truck", "small_motorcycle"] }));
    for sized in answer.body["loops"].as_array().unwrap() {
        let alternatives = sized["alternatives"].as_array().unwrap();
        let quadrupole = alternatives.iter().find(|other| other["alternative"] == "quadrupole").expect("a quadrupole");
        assert_eq!(quadrupole["shape"], "quadrupole");
        assert!(number(&quadrupole["seen_height_change"]["m"]) < 0.0);
        let motorcycle = &quadrupole["vehicles"][1];
        assert_eq!(motorcycle["blind_strip"]["contains_centre"], false);
        let truck =
            (number(&quadrupole["vehicles"][0]["times_threshold"]), number(&sized["vehicles"][0]["times_threshold"]));
        assert!(truck.0 < truck.1, "{truck:?}");
    }
    assert!(answer.findings("note").contains(&"quadrupole_offered"));
    assert!(!gate("10 ft", "barrier_arm", json!({})).findings("note").contains(&"quadrupole_offered"));
}

#[test]
fn an_opening_too_wide_for_one_loop_gets_several_side_by_side() {
    let answer = gate(
        "60 ft",
        "slide_gate",
        json!({ "vehicles": ["passenger_car"], "roles": ["obstruction_outside", "obstruction_inside"],
                "detector": { "threshold_percent": 0.32 } }),
    );
    assert!(answer.findings("note").contains(&"side_by_side"));
    let sized = loop_of(&answer, "obstruction_outside");
    let count = sized["count"].as_u64().unwrap();
    let row = &sized["side_by_side"];
    assert!(count >= 2);
    let centres: Vec<_> = row["centres"].as_array().unwrap().iter().map(|centre| number(&centre["ft"])).collect();
    assert_eq!(centres.len() as u64, count);
    let (leg, gap) = (number(&sized["across_lane"]["ft"]), number(&row["gap"]["ft"]));
    assert!(centres.windows(2).all(|pair| (pair[1] - pair[0] - leg - gap).abs() < 0.02), "{centres:?}");
    let whole = leg * count as f64 + gap * (count - 1) as f64 + 2.0 * number(&sized["edge_setback"]["ft"]);
    assert!((whole - 60.0).abs() < 0.05, "{whole}");
    let wound: Vec<_> = row["wound"].as_array().unwrap().iter().map(|sense| sense.as_str().unwrap()).collect();
    assert!(wound.windows(2).all(|pair| pair[0] != pair[1]), "{wound:?}");
    assert_eq!(sized["vehicles"][0]["detected"], true);
    // One channel for all dilutes the change to about an nth either way.
    for channel in row["one_channel"].as_array().unwrap() {
        let ratio = number(&sized["vehicles"][0]["change_percent"]) / number(&channel["change_percent"]);
        assert!((ratio / count as f64 - 1.0).abs() < 0.2, "{channel}: {ratio}");
    }
}

#[test]
fn the_leaf_decides_the_distance_and_the_unseen_stretch_wins() {
    let distance = |with: Value| {
        let answer = gate("24 ft", "slide_gate", with);
        let near = number(&loop_of(&answer, "obstruction_outside")["distance_from_barrier"]["ft"]);
        let unseen = number(&answer.body["unseen_stretch"]["ft"]);
        (near, answer.findings("warning").contains(&"leaf_seen"), unseen)
    };
    let (coarse, ..) = distance(json!({ "detector": { "threshold_percent": 0.32 } }));
    let (fine, ..) = distance(json!({ "detector": { "threshold_percent": 0.13 } }));
    assert!(coarse >= 4.0 && fine > coarse, "{coarse} and {fine} ft");
    // Of a leaf so high that it would be seen from where a car could stand unseen between the loops.
    let (near, warned, unseen) =
        distance(json!({ "opening": { "width": "24 ft", "barrier": "slide_gate", "leaf_height": "16 ft" } }));
    assert!(warned && unseen <= 4.5 / 0.3048, "{near} ft, warned: {warned}, {unseen} ft unseen");
}

#[test]
fn no_distance_from_a_leaf_is_asked_for_where_there_is_none() {
    for barrier in ["barrier_arm", "none"] {
        let answer = gate("12 ft", barrier, json!({}));
        assert!(!answer.findings("note").contains(&"leaf_clearance"), "{barrier}");
    }
}

#[test]
fn a_trailer_must_not_drop_out_of_a_loop_that_holds_the_gate() {
    for vehicle in ["tractor_trailer", "car_with_trailer"] {
        let answer = gate("24 ft", "slide_gate", json!({ "vehicles": [vehicle] }));
        let sized = loop_of(&answer, "obstruction_outside");
        assert_eq!(sized["vehicles"][0]["drops_out"], false, "{vehicle}");
        assert!(number(&sized["along_travel"]["ft"]) > 6.0, "{vehicle}: the leg was lengthened");
    }
}

#[test]
fn what_no_search_can_serve_is_a_stop_that_names_the_vehicle_and_a_cure() {
    let answer = gate(
        "30 ft",
        "slide_gate",
        json!({
            "vehicles": ["bicycle"], "detector": { "threshold_percent": 0.32 }, "roles": ["obstruction_outside", "obstruction_inside"],
        }),
    );
    let stops =
        answer.body["findings"].as_array().unwrap().iter().filter(|finding| finding["code"] == "vehicle_not_seen");
    for stop in stops.clone() {
        assert_eq!(stop["level"], "stop");
        let message = stop["message"].as_str().unwrap();
        assert!(message.contains("bicycle") && message.contains("sensitivity"), "{message}");
    }
    assert_eq!(stops.count(), 2);
}

#[test]
fn a_vehicle_that_does_not_pass_the_opening_is_named_once() {
    let answer = gate("5 ft", "slide_gate", json!({ "vehicles": ["passenger_car", "small_motorcycle"] }));
    let named: Vec<_> = answer.findings("warning").into_iter().filter(|code| *code == "vehicle_too_wide").collect();
    assert_eq!(named.len(), 1);
    assert!(!gate("12 ft", "slide_gate", json!({})).findings("warning").contains(&"vehicle_too_wide"));
}

#[test]
fn a_slot_too_narrow_for_sealant_is_warned_of_and_one_that_the_wire_does_not_go_into_is_a_stop() {
    let narrow = |width: &str| {
        let answer = gate("24 ft", "slide_gate", json!({ "slot": { "width": width } }));
        let is_it = |level: &str| answer.findings(level).contains(&"slot_too_narrow");
        (is_it("stop"), is_it("warning"))
    };
    assert_eq!(narrow("1/8 in"), (true, false));
    assert_eq!(narrow("0.14 in"), (false, true));
    assert_eq!((narrow("3/16 in"), narrow("1/4 in")), ((false, false), (false, false)));
}

#[test]
fn a_gate_that_nothing_holds_is_warned_of() {
    let warned = |roles: Value| {
        gate("24 ft", "slide_gate", json!({ "roles": roles })).findings("warning").contains(&"nothing_holds_the_gate")
    };
    assert!(warned(json!(["exit"])));
    assert!(!warned(json!(["exit", "obstruction_outside"])));
}
