//! Turns, slot, lead-in and other sizes: what is answered for a loop holds for it.

use serde_json::{Value, json};

use super::{feet, finding, gate, jobs, level, of_role, sized};
use crate::harness::calculate;
use crate::requests::with;

#[test]
fn the_figures_of_a_loop_are_those_that_loop_characteristics_answers() {
    let lead_in = json!({ "length": "18 m", "gauge": "16 AWG", "inductance": "0.25 uH/ft" });
    let wire = json!({ "gauge": "12 AWG", "over_insulation": "0.16 in" });
    let mut compared = 0;
    for mut job in jobs() {
        job["lead_in"] = lead_in.clone();
        job["wire"] = wire.clone();
        let answer = sized(&job);
        let is_us = job["opening"]["width"].as_str().unwrap().ends_with("ft");
        let plan = |length: &Value| if is_us { format!("{} ft", length["ft"]) } else { format!("{} m", length["m"]) };
        let cut =
            |length: &Value| if is_us { format!("{} in", length["inch"]) } else { format!("{} mm", length["mm"]) };
        for sized in answer.body["loops"].as_array().unwrap() {
            // A loop that lies far away has a longer lead-in.
            let length = &sized["lead_in"]["length"];
            let own = if length["m"] == 18.0 { lead_in.clone() } else { with(&lead_in, "/length", plan(length)) };
            let request = json!({
                "loop": {
                    "shape": sized["shape"], "along_travel": plan(&sized["along_travel"]),
                    "across_lane": plan(&sized["across_lane"]), "turns": sized["turns"],
                    "corner_cut": cut(&sized["corner_cut"]), "wire": wire
                },
                "lead_in": own
            });
            let measured = calculate("loop-characteristics", &request);
            assert_eq!(measured.status, 200, "{request}: {:#}", measured.body);
            for (name, figure) in sized["electrical"].as_object().unwrap() {
                assert_eq!(measured.body[name], *figure, "{name} of {request}");
                compared += 1;
            }
        }
    }
    assert!(compared > 1000, "only {compared} figures were compared");
}

#[test]
fn a_loop_without_a_stop_tunes_wherever_in_its_band_it_falls() {
    for job in jobs() {
        let answer = sized(&job);
        for sized in answer.body["loops"].as_array().unwrap() {
            let is_stopped = answer.body["findings"]
                .as_array()
                .unwrap()
                .iter()
                .any(|finding| finding["subject"] == sized["role"] && finding["level"] == "stop");
            let of = |name: &str| sized["electrical"][name].as_f64().unwrap();
            if !is_stopped {
                assert!(of("as_built_low_uh") >= 50.0 && of("as_built_high_uh") <= 700.0, "{job}: {sized:#}");
                assert!(of("quality_factor") >= 5.0, "{job}");
            }
            let weighs = of("loop_inductance_uh") >= 2.0 * of("lead_in_inductance_uh");
            let said = answer.body["findings"].to_string().contains("lead_in_outweighs_loop");
            assert!(weighs || said, "{job}: {sized:#}");
        }
    }
}

#[test]
fn a_long_lead_in_is_warned_about() {
    let short = sized(&gate("24 ft", "slide_gate", json!({ "lead_in": { "length": "100 ft" } })));
    assert_eq!(level(&short, "lead_in_outweighs_loop"), "");
    let long = sized(&gate("24 ft", "slide_gate", json!({ "lead_in": { "length": "2000 ft" } })));
    assert_eq!(level(&long, "lead_in_outweighs_loop"), "warning");
}

#[test]
fn a_unit_that_no_turn_count_suits_is_stopped() {
    // A window narrower than the band of any finished loop.
    let unit = json!({ "detector": { "inductance_min_uh": 300, "inductance_max_uh": 310 } });
    let answer = sized(&gate("24 ft", "slide_gate", unit));
    assert_eq!(level(&answer, "no_working_turns"), "stop");
    assert_eq!(finding(&answer, "no_working_turns").unwrap()["about"], "#/detector");
    let wide = json!({ "detector": { "inductance_min_uh": 20, "inductance_max_uh": 2000 } });
    assert_eq!(level(&sized(&gate("24 ft", "slide_gate", wide)), "no_working_turns"), "");
}

#[test]
fn a_slot_that_is_too_shallow_is_stopped_with_the_depth_that_is_needed() {
    let slot = json!({ "slot": { "depth": "1.3 in", "cover": "1-1/4 in" }, "roles": ["exit"] });
    let answer = sized(&gate("24 ft", "slide_gate", slot));
    let stop = finding(&answer, "slot_too_shallow").unwrap();
    assert_eq!((&stop["level"], &stop["about"]), (&json!("stop"), &json!("#/slot/depth")));
    let turns = of_role(&answer, "exit")["turns"].as_f64().unwrap();
    let figure = |name: &str| {
        let figures = stop["figures"].as_array().unwrap();
        figures.iter().find(|figure| figure["name"] == name).unwrap()["value"].as_f64().unwrap()
    };
    assert!((figure("needed_depth") - (1.25 + 0.130 * turns)).abs() < 2e-3, "{stop:#}");
    assert_eq!(figure("slot_depth"), 1.3);
}

#[test]
fn a_slot_of_free_depth_is_cut_as_deep_as_the_turns_need() {
    for (width, step) in [("24 ft", 0.25), ("7.2 m", 5.0 / 25.4)] {
        for cover in ["1/2 in", "1-1/4 in", "2 in"] {
            let answer = sized(&gate(width, "slide_gate", json!({ "slot": { "cover": cover } })));
            assert_eq!(level(&answer, "slot_too_shallow"), "", "{width} {cover}");
            let cover = answer.body["inputs"]["slot"]["cover"]["inch"].as_f64().unwrap();
            for sized in answer.body["loops"].as_array().unwrap() {
                let needed = cover + 0.130 * sized["turns"].as_f64().unwrap();
                let depth = sized["slot_depth"]["inch"].as_f64().unwrap();
                assert!(depth >= needed - 1e-3, "{width}: {depth} in for {needed} in");
                assert!(depth <= 1.5_f64.max(needed + step + 1e-3), "{width}: {depth} in for {needed} in");
            }
        }
    }
}

#[test]
fn a_smaller_and_a_larger_loop_are_offered_with_what_they_cost() {
    for width in ["16 ft", "24 ft", "7.2 m"] {
        let answer = sized(&gate(width, "slide_gate", json!({})));
        for sized in answer.body["loops"].as_array().unwrap() {
            let offers = sized["alternatives"].as_array().unwrap();
            let own = feet(&sized["along_travel"]);
            for (name, sign) in [("shorter", -1.0), ("longer", 1.0)] {
                let offer = offers.iter().find(|offer| offer["alternative"] == name);
                let offer = offer.unwrap_or_else(|| panic!("{width}: nothing {name} is offered"));
                assert!(sign * (feet(&offer["along_travel"]) - own) > 0.5, "{offer:#}");
                assert!(sign * feet(&offer["saw_cut_change"]) > 0.0, "{offer:#}");
                assert!(sign * feet(&offer["seen_height_change"]) > 0.0, "{offer:#}");
                assert!(offer["message"].as_str().unwrap().ends_with('.') && offer["turns"].as_u64() >= Some(1));
            }
        }
    }
}

#[test]
fn a_drive_through_window_is_offered_the_narrow_loop() {
    let cars = |vehicles: Value| json!({ "roles": ["presence"], "vehicles": vehicles });
    let narrow = |vehicles: Value| {
        let answer = sized(&gate("12 ft", "none", cars(vehicles)));
        let offers = of_role(&answer, "presence")["alternatives"].as_array().unwrap().clone();
        offers.into_iter().find(|offer| offer["alternative"] == "window")
    };
    let offer = narrow(json!(["passenger_car", "pickup"])).unwrap();
    assert_eq!((&offer["along_travel"]["ft"], &offer["across_lane"]["ft"]), (&json!(2.0), &json!(6.0)));
    assert_eq!(narrow(json!(["passenger_car", "high_bed_truck"])), None);
}

#[test]
fn the_lead_in_is_ordered_with_its_spare_and_twisted_where_it_is_loose() {
    let lead_in = json!({ "lead_in": { "length": "40 ft", "spare": "5 ft" } });
    let answer = sized(&gate("24 ft", "slide_gate", lead_in));
    let advice = &answer.body["lead_in"];
    assert_eq!((&advice["order_length"]["ft"], &advice["pair"]), (&json!(45.0), &json!("twisted_on_site")));
    let of = |name: &str| advice[name]["uh_per_ft"].as_f64().unwrap();
    assert!(of("untwisted") > 1.5 * of("twisted"), "{advice:#}");
    assert_eq!((level(&answer, "loose_lead_in"), level(&answer, "lead_in_conduit")), ("note", ""));

    let jacketed = sized(&gate("24 ft", "slide_gate", json!({ "construction": "preformed_saw_cut" })));
    assert_eq!(jacketed.body["lead_in"]["pair"], "jacketed");
    assert_eq!((level(&jacketed, "loose_lead_in"), level(&jacketed, "lead_in_conduit")), ("", ""));
    let buried = sized(&gate("24 ft", "slide_gate", json!({ "surface": "gravel" })));
    assert_eq!((level(&buried, "loose_lead_in"), level(&buried, "lead_in_conduit")), ("", "note"));
}
