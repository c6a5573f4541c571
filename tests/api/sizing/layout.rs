//! How wide the loops are, and where they lie.

use serde_json::json;

use super::{feet, finding, gate, jobs, level, metres, of_role, sized};

#[test]
fn an_opening_of_24_ft_takes_loops_of_20_ft_and_one_of_7_2_m_takes_6_m() {
    // Common practice: 2 ft clear at each side, 6 ft along travel.
    let answer = sized(&gate("24 ft", "slide_gate", json!({ "roles": ["exit"] })));
    let exit = of_role(&answer, "exit");
    assert_eq!((&exit["across_lane"]["ft"], &exit["along_travel"]["ft"]), (&json!(20.0), &json!(6.0)));
    assert_eq!(exit["edge_setback"]["ft"], 2.0);
    let answer = sized(&gate("7.2 m", "slide_gate", json!({ "roles": ["exit"] })));
    let exit = of_role(&answer, "exit");
    assert_eq!((&exit["across_lane"]["m"], &exit["edge_setback"]["m"]), (&json!(6.0), &json!(0.6)));
}

#[test]
fn sizes_are_tidy_in_the_system_of_the_width() {
    for (width, across) in [("23.9 ft", 19.0), ("25 ft 11 in", 21.0), ("16 ft", 12.0), ("8 yd", 20.0)] {
        let answer = sized(&gate(width, "slide_gate", json!({})));
        assert!((feet(&answer.body["loops"][0]["across_lane"]) - across).abs() < 1e-9, "{width}");
    }
    for (width, across) in [("7.29 m", 6.0), ("7315.2 mm", 6.1), ("400 cm", 2.8)] {
        let answer = sized(&gate(width, "slide_gate", json!({})));
        assert!((metres(&answer.body["loops"][0]["across_lane"]) - across).abs() < 1e-9, "{width}");
    }
    for job in jobs() {
        let answer = sized(&job);
        let is_us = job["opening"]["width"].as_str().unwrap().ends_with("ft");
        for sized in answer.body["loops"].as_array().unwrap() {
            for leg in ["across_lane", "along_travel"] {
                let steps = if is_us { feet(&sized[leg]) } else { metres(&sized[leg]) * 10.0 };
                assert!((steps - steps.round()).abs() < 1e-6, "{job}: {leg} {}", sized[leg]);
            }
        }
    }
}

#[test]
fn traffic_next_door_takes_3_ft_at_each_edge() {
    let answer = sized(&gate("24 ft", "slide_gate", json!({ "site_hazards": ["adjacent_traffic"] })));
    for sized in answer.body["loops"].as_array().unwrap() {
        assert_eq!((&sized["across_lane"]["ft"], &sized["edge_setback"]["ft"]), (&json!(18.0), &json!(3.0)));
    }
    let answer = sized(&gate("7.2 m", "slide_gate", json!({ "site_hazards": ["adjacent_traffic"] })));
    assert_eq!(answer.body["loops"][0]["across_lane"]["m"], 5.4);
}

#[test]
fn a_setback_that_is_asked_for_is_kept() {
    let asked = gate("24 ft", "slide_gate", json!({ "opening": { "edge_setback": "4 ft" } }));
    let answer = sized(&asked);
    assert_eq!(answer.body["loops"][0]["across_lane"]["ft"], 16.0);
    assert_eq!(level(&answer, "edge_setback_reduced"), "");
}

#[test]
fn a_narrow_opening_gives_up_setback_and_says_so() {
    let answer = sized(&gate("6 ft", "slide_gate", json!({})));
    let first = &answer.body["loops"][0];
    assert_eq!((&first["across_lane"]["ft"], &first["edge_setback"]["ft"]), (&json!(4.0), &json!(1.0)));
    let said = finding(&answer, "edge_setback_reduced").unwrap();
    assert_eq!((&said["level"], &said["about"]), (&json!("note"), &json!("#/opening/width")));
    assert_eq!((&said["figures"][0]["value"], &said["figures"][1]["value"]), (&json!(1.0), &json!(2.0)));
    assert_eq!(level(&sized(&gate("8 ft", "slide_gate", json!({}))), "edge_setback_reduced"), "");
    for width in ["3 ft", "1 m"] {
        let answer = sized(&gate(width, "slide_gate", json!({})));
        let setback = feet(&answer.body["loops"][0]["edge_setback"]);
        assert!(setback > 0.4, "{width} leaves {setback} ft");
    }
}

#[test]
fn a_loop_lies_clear_of_a_metal_leaf_in_any_position() {
    for job in jobs() {
        let barrier = job["opening"]["barrier"].as_str().unwrap();
        if matches!(barrier, "barrier_arm" | "none") {
            continue;
        }
        let answer = sized(&job);
        let width = feet(&answer.body["inputs"]["opening"]["width"]);
        let sweep = match barrier {
            "swing_gate" => width,
            "swing_gate_pair" => width / 2.0,
            _ => 0.0,
        };
        for sized in answer.body["loops"].as_array().unwrap() {
            let role = sized["role"].as_str().unwrap();
            let swept = if matches!(role, "exit" | "obstruction_inside") { sweep } else { 0.0 };
            let distance = feet(&sized["distance_from_barrier"]);
            // 4 ft, or 1.2 m.
            assert!(distance >= swept + 3.93, "{job}: {role} lies {distance} ft away");
        }
        // The leaf's change is told either way: under half the threshold, or over it where a car must not hide between loops.
        let told = (level(&answer, "leaf_clearance"), level(&answer, "leaf_seen"));
        assert!(matches!(told, ("note", "") | ("", "warning")), "{job}: {told:?}");
    }
}

#[test]
fn loops_of_one_side_do_not_overlap() {
    for job in jobs() {
        let answer = sized(&job);
        let mut sides: Vec<_> = answer.body["loops"]
            .as_array()
            .unwrap()
            .iter()
            .map(|sized| {
                let near = feet(sized.get("distance_from_barrier").unwrap_or(&sized["distance_from_reference"]));
                (sized["side"].as_str().unwrap(), near, near + feet(&sized["along_travel"]))
            })
            .collect();
        sides.sort_by(|a, b| a.partial_cmp(b).unwrap());
        for pair in sides.windows(2) {
            assert!(pair[0].0 != pair[1].0 || pair[0].2 < pair[1].1, "{job}: {pair:?}");
        }
    }
}

#[test]
fn a_loop_without_a_barrier_is_placed_from_its_reference() {
    let answer = sized(&gate("12 ft", "none", json!({ "roles": ["presence"] })));
    let presence = of_role(&answer, "presence");
    assert_eq!((&presence["side"], &presence["distance_from_reference"]["ft"]), (&json!("on_the_line"), &json!(0.0)));
    assert!(presence.get("distance_from_barrier").is_none());
}

#[test]
fn a_closing_loop_straddles_the_line_of_an_arm() {
    let answer = sized(&gate("12 ft", "barrier_arm", json!({ "roles": ["arming", "closing"] })));
    let closing = of_role(&answer, "closing");
    assert_eq!((&closing["side"], &closing["distance_from_barrier"]["ft"]), (&json!("on_the_line"), &json!(0.0)));
    let arming = of_role(&answer, "arming");
    let half = feet(&closing["along_travel"]) / 2.0;
    assert!(arming["side"] == "outside" && feet(&arming["distance_from_barrier"]) > half, "{arming}");
    assert_eq!(level(&answer, "closing_under_leaf"), "");
}

#[test]
fn a_closing_loop_under_a_metal_leaf_is_stopped() {
    for barrier in ["slide_gate", "swing_gate", "vertical_lift_gate", "overhead_door"] {
        assert_eq!(
            level(&sized(&gate("16 ft", barrier, json!({ "roles": ["closing"] }))), "closing_under_leaf"),
            "stop"
        );
    }
}

#[test]
fn a_pair_of_leaves_needs_a_loop_between_them() {
    let without = json!({ "roles": ["exit", "obstruction_outside", "obstruction_inside"] });
    let answer = sized(&gate("16 ft", "swing_gate_pair", without.clone()));
    let stop = finding(&answer, "between_leaves_missing").unwrap();
    assert_eq!((&stop["level"], &stop["about"]), (&json!("stop"), &json!("#/roles")));
    assert!(stop["message"].as_str().unwrap().contains("a loop between the leaves"));
    let with = json!({ "roles": ["exit", "obstruction_outside", "between_leaves", "obstruction_inside"] });
    assert_eq!(level(&sized(&gate("16 ft", "swing_gate_pair", with.clone())), "between_leaves_missing"), "");
    assert_eq!(level(&sized(&gate("16 ft", "swing_gate_pair", json!({}))), "between_leaves_missing"), "");
    assert_eq!(level(&sized(&gate("16 ft", "slide_gate", without)), "between_leaves_missing"), "");
    assert_eq!(level(&sized(&gate("16 ft", "slide_gate", with)), "role_does_not_fit"), "warning");
}

#[test]
fn a_stretch_between_loops_that_hides_a_car_is_stopped() {
    let roles = json!({ "roles": ["obstruction_outside", "obstruction_inside"] });
    let swing = sized(&gate("16 ft", "swing_gate", roles));
    assert_eq!(level(&swing, "unseen_stretch"), "stop");
    // From 4 ft outside to beyond the sweep and 4 ft more.
    assert!(feet(&swing.body["unseen_stretch"]) >= 24.0, "{}", swing.body["unseen_stretch"]);
    let one = sized(&gate("16 ft", "slide_gate", json!({ "roles": ["exit", "obstruction_inside"] })));
    assert!(one.body.get("unseen_stretch").is_none());
    assert_eq!(level(&one, "one_side_only"), "warning");
}

#[test]
fn an_exit_loop_lies_so_far_that_the_gate_is_open_on_arrival() {
    let exit = |speed: &str, time: &str, lead_in: &str| {
        let opening = json!({ "approach_speed": speed, "opening_time": time });
        sized(&gate("24 ft", "slide_gate", json!({ "opening": opening, "lead_in": { "length": lead_in } })))
    };
    // 5 mph is 7.33 ft/s, so 29.3 ft in 4 s.
    let near = exit("5 mph", "4 s", "60 ft");
    let distance = feet(&of_role(&near, "exit")["distance_from_barrier"]);
    assert!((29.3..=31.0).contains(&distance), "{distance}");
    for code in ["exit_time_unknown", "exit_far_away", "exit_beyond_lead_in"] {
        assert_eq!(level(&near, code), "", "{code}");
    }
    // 10 mph is 14.67 ft/s, so 176 ft in 12 s: farther than 100 ft it is not laid.
    let far = exit("10 mph", "12 s", "90 ft");
    let distance = feet(&of_role(&far, "exit")["distance_from_barrier"]);
    assert!((99.99..=100.01).contains(&distance), "{distance}");
    assert_eq!((level(&far, "exit_far_away"), level(&far, "exit_beyond_lead_in")), ("warning", "warning"));
    assert_eq!(finding(&far, "exit_beyond_lead_in").unwrap()["about"], "#/lead_in/length");
    assert_eq!(level(&exit("10 mph", "12 s", "200 ft"), "exit_beyond_lead_in"), "");

    for opening in [json!({}), json!({ "approach_speed": "5 mph" }), json!({ "opening_time": "4 s" })] {
        let answer = sized(&gate("24 ft", "slide_gate", json!({ "opening": opening })));
        assert_eq!(level(&answer, "exit_time_unknown"), "note");
    }
    let none = sized(&gate("24 ft", "slide_gate", json!({ "roles": ["obstruction_inside"] })));
    assert_eq!(level(&none, "exit_time_unknown"), "");
}
