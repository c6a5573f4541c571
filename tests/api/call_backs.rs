//! Call-backs: the cheapest telling test comes first, records are not needed, and what is said agrees with itself.
//!
//! The loop is 6 × 8 ft, three turns, on 50 ft of lead-in: 104 µH and 0.47 ohm.

use serde_json::{Value, json};

use super::harness::{Answer, calculate, get};

fn ask(mut request: Value) -> Answer {
    if request.get("without_design").is_none() {
        request["design"] = json!({
            "loop": { "along_travel": "6 ft", "across_lane": "8 ft", "turns": 3 }, "lead_in": { "length": "50 ft" }
        });
    } else {
        request.as_object_mut().unwrap().remove("without_design");
    }
    let answer = calculate("fault-finding", &request);
    assert_eq!(answer.status, 200, "{request}: {:#}", answer.body);
    answer
}

fn healthy() -> Value {
    json!({ "inductance_uh": 104, "resistance_ohm": 0.48 })
}

fn leading(answer: &Answer, count: usize) -> Vec<&str> {
    let suspects = answer.body["suspects"].as_array().unwrap().iter().take(count);
    suspects.map(|suspect| suspect["fault"].as_str().unwrap()).collect()
}

fn next(answer: &Answer) -> &str {
    answer.body["next_test"]["test"].as_str().unwrap()
}

/// The tests that are still offered.
fn open(answer: &Answer) -> Vec<&str> {
    answer.body["open_tests"].as_array().unwrap().iter().map(|open| open["test"].as_str().unwrap()).collect()
}

fn message<'a>(answer: &'a Answer, code: &str) -> &'a str {
    let mut findings = answer.body["findings"].as_array().unwrap().iter();
    findings.find(|finding| finding["code"] == code).map_or("", |finding| finding["message"].as_str().unwrap())
}

#[test]
fn insulation_at_the_units_end_comes_before_any_splice() {
    for request in [
        json!({ "observations": ["drifts"] }),
        json!({ "observations": ["fault_after_rain"] }),
        json!({ "readings": healthy() }),
        json!({ "observations": ["drifts"], "readings": healthy() }),
        json!({ "observations": ["fault_after_rain"], "without_design": true }),
    ] {
        let answer = ask(request.clone());
        assert_eq!(next(&answer), "insulation_test", "{request}");
        assert_eq!(answer.body["next_test"]["outcomes"][0]["points_to"], json!(["insulation_breach", "wet_splice"]));
    }
}

#[test]
fn a_dry_reading_clears_nothing_that_comes_with_rain() {
    let rain = |readings: Value| ask(json!({ "observations": ["fault_after_rain"], "readings": readings }));
    for readings in [
        json!({ "insulation_megohm": 300, "test_voltage_v": 500 }),
        json!({ "insulation_megohm": 300, "insulation_measured": "dry" }),
        json!({ "insulation_over_range": true }),
    ] {
        let dry = rain(readings);
        let mut first = leading(&dry, 2);
        first.sort_unstable();
        assert_eq!((first, next(&dry)), (vec!["insulation_breach", "wet_splice"], "insulation_test_wet"));
        assert!(message(&dry, "insulation_reading").contains("clears nothing"), "{:#}", dry.body["findings"]);
        assert_eq!(dry.body["inputs"]["insulation_measured"], "dry");
    }
    let wet = rain(json!({ "insulation_megohm": 300, "insulation_measured": "wet" }));
    let first = leading(&wet, 4);
    assert!(!first.contains(&"insulation_breach") && !first.contains(&"wet_splice"), "{first:?}");
    assert!(!open(&wet).contains(&"insulation_test") && !open(&wet).contains(&"insulation_test_wet"));
    assert!(!message(&wet, "insulation_reading").contains("clears nothing"));
    // What leaks in dry ground leaks.
    let leak = rain(json!({ "insulation_megohm": 0.3 }));
    assert_eq!(next(&leak), "split_at_splice");
    assert!(leak.body["next_test"]["reason"].as_str().unwrap().contains("only the open splice tells"));
}

#[test]
fn open_and_earthed_is_one_torn_wire() {
    let answer = ask(json!({ "readings": { "resistance_over_range": true, "insulation_megohm": 0.01 } }));
    assert_eq!(leading(&answer, 1), ["torn_wire"]);
    assert_eq!(message(&answer, "contradictory_readings"), "");
}

#[test]
fn capacitance_tells_where_an_open_wire_ends() {
    for without_design in [false, true] {
        let mut request = json!({ "readings": { "resistance_over_range": true } });
        if without_design {
            request["without_design"] = json!(true);
        }
        let answer = ask(request.clone());
        assert_eq!(next(&answer), "capacitance_test");
        assert!(!open(&answer).contains(&"inductance_test"), "an open circuit leaves inductance nothing to read");
        assert!(answer.body["next_test"]["how"].as_str().unwrap().contains("like pair"));
        request["readings"]["whole_capacitance_nf"] = json!(0.8);
        request["readings"]["capacitance_nf"] = json!(0.5);
        let short = ask(request.clone());
        assert!(message(&short, "break_place").contains("62 %"), "{:#}", short.body["findings"]);
        assert!(message(&short, "break_place").contains("31.3 ft"), "{:#}", short.body["findings"]);
        assert_eq!(short.body["suspects"][0]["variant"], "in the lead-in");
        request["readings"]["capacitance_nf"] = json!(2.4);
        assert!(message(&ask(request.clone()), "break_place").contains("another cable"));
        request["readings"]["capacitance_nf"] = json!(0.82);
        let whole = ask(request);
        assert!(message(&whole, "break_place").contains("at the splice or in the loop"));
        assert_ne!(whole.body["suspects"][0]["variant"], "in the lead-in");
    }
}

#[test]
fn a_gate_that_is_seen_is_looked_into_with_the_loops_connected() {
    for readings in [json!({}), healthy()] {
        let answer = ask(json!({ "observations": ["detects_the_gate"], "readings": readings }));
        assert_eq!((next(&answer), leading(&answer, 1)), ("watch_reading_with_gate", vec!["steel_nearby"]));
        let test = &answer.body["next_test"];
        assert_eq!(test["disturbs"], "nothing");
        let how = test["how"].as_str().unwrap();
        for words in
            ["Leave the loops connected", "lock out the operator and move the leaf by hand", "its path watched"]
        {
            assert!(how.contains(words), "{how}");
        }
        let said = message(&answer, "gate_seen");
        assert!(
            said.contains("coarser step only where every vehicle is still seen") && said.contains("Never disconnect")
        );
    }
}

#[test]
fn substitutions_that_contradict_each_other_are_named_and_done_again() {
    let answer = ask(json!({
        "substitution": { "connected_at": "unit_terminals", "inductance_uh": 150, "unit_runs": false },
        "tests_done": [{ "test": "substitute_at_lead_in_end", "outcome": "unit_runs" }]
    }));
    assert!(message(&answer, "contradictory_readings").contains("do both again"), "{:#}", answer.body["findings"]);
    for test in ["substitute_at_unit_terminals", "substitute_at_lead_in_end"] {
        assert!(open(&answer).contains(&test), "{test}: {:?}", open(&answer));
    }
    assert_eq!(message(&answer, "substitution_result"), "", "said to show what the other test denies");
    // Neither clears the other parts.
    assert!(open(&answer).contains(&"look_for_surge_damage"), "{:?}", open(&answer));
    // A unit that runs at its own terminals and not at the end of the lead-in tells where the fault is.
    let agreeing = ask(json!({
        "substitution": { "connected_at": "unit_terminals", "inductance_uh": 150, "unit_runs": true },
        "tests_done": [{ "test": "substitute_at_lead_in_end", "outcome": "unit_does_not_run" }]
    }));
    assert_eq!(message(&agreeing, "contradictory_readings"), "");
}

#[test]
fn no_test_takes_longer_than_there_is_time_or_disturbs_more_than_it_may() {
    let leaking = |more: Value| {
        let mut request =
            json!({ "readings": { "inductance_uh": 104, "resistance_ohm": 0.48, "insulation_megohm": 0.4 } });
        request.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
        ask(request)
    };
    assert_eq!(next(&leaking(json!({}))), "split_at_splice");
    for (limit, most) in [(json!({ "time_left": "15 min" }), 15), (json!({ "time_left": "0.1 h" }), 6)] {
        let answer = leaking(limit);
        let minutes = |list: &str| {
            answer.body[list].as_array().unwrap().iter().map(|one| one["minutes"].as_u64().unwrap()).collect::<Vec<_>>()
        };
        assert!(minutes("open_tests").iter().all(|minutes| *minutes <= most), "{:?}", minutes("open_tests"));
        assert!(minutes("plan_of_tests").iter().sum::<u64>() <= most, "{:?}", minutes("plan_of_tests"));
    }
    let plug = leaking(json!({ "disturb_at_most": "plug" }));
    let disturbed = plug.body["open_tests"].as_array().unwrap().iter().map(|one| one["disturbs"].as_str().unwrap());
    assert!(
        disturbed.clone().all(|disturbed| ["nothing", "plug"].contains(&disturbed)),
        "{:?}",
        disturbed.collect::<Vec<_>>()
    );
    let none = leaking(json!({ "time_left": "0 min" }));
    assert_eq!((next(&none), &none.body["open_tests"]), ("drive_over", &json!([])));
    assert!(none.body["next_test"]["reason"].as_str().unwrap().contains("in the time that is left"));
}

#[test]
fn what_an_outcome_would_mean_names_the_place() {
    let answer = ask(json!({ "readings": { "inductance_uh": 104, "resistance_ohm": 0.48, "insulation_megohm": 0.4 } }));
    assert_eq!(next(&answer), "split_at_splice");
    for (index, place) in [(0, "in the loop"), (1, "in the lead-in")] {
        let meaning = answer.body["next_test"]["outcomes"][index]["meaning"].as_str().unwrap();
        assert!(meaning.contains(place), "{meaning}");
    }
    let rain = ask(json!({ "observations": ["fault_after_rain"] }));
    let sound = &rain.body["next_test"]["outcomes"][1];
    assert!(sound["meaning"].as_str().unwrap().contains("clears nothing"), "{sound}");
}

#[test]
fn what_a_substitution_has_cleared_is_not_tested_again() {
    let substituted = |at: &str, runs: bool| {
        ask(json!({ "substitution": { "connected_at": at, "inductance_uh": 150, "unit_runs": runs } }))
    };
    let unit = substituted("unit_terminals", false);
    let of_unit = ["check_settings", "look_for_surge_damage", "exchange_unit", "drive_over", "restart_empty"];
    assert!(open(&unit).iter().all(|test| of_unit.contains(test)), "{:?}", open(&unit));
    assert_eq!(leading(&unit, 1), ["detector_unit"]);

    let lead_in = substituted("lead_in_end", true);
    let beyond = ["split_at_splice", "resistance_at_loop_end", "inductance_at_loop_end"];
    assert!(beyond.contains(&next(&lead_in)), "{}", next(&lead_in));
    for cleared in [
        "inductance_test",
        "resistance_test",
        "insulation_test",
        "substitute_at_unit_terminals",
        "substitute_at_harness_end",
        "exchange_unit",
        "look_for_surge_damage",
        "check_settings",
    ] {
        assert!(!open(&lead_in).contains(&cleared), "{cleared}");
    }
    // The splice stands open already.
    assert!(lead_in.body["next_test"]["minutes"].as_u64().unwrap() <= 10);
    assert_eq!(lead_in.body["next_test"]["disturbs"], "nothing");
    // The same as a test that was done.
    let done = ask(json!({ "tests_done": [{ "test": "substitute_at_lead_in_end", "outcome": "unit_runs" }] }));
    assert_eq!((open(&done), leading(&done, 3)), (open(&lead_in), leading(&lead_in, 3)));
}

#[test]
fn no_evidence_contradicts_its_own_figures() {
    for readings in [
        json!({ "resistance_ohm": 0.45 }),
        json!({ "resistance_ohm": 0.45, "inductance_uh": 104, "insulation_megohm": 300 }),
        json!({ "resistance_ohm": 0.84, "inductance_uh": 60 }),
        json!({ "resistance_ohm": 40, "insulation_megohm": 9 }),
    ] {
        for suspect in ask(json!({ "readings": readings })).body["suspects"].as_array().unwrap() {
            let against = suspect["evidence_against"].to_string();
            for compared in suspect["comparison"].as_array().unwrap() {
                let number = |name: &str| compared[name].as_f64().unwrap();
                let is_expected = (number("predicted_low")..=number("predicted_high")).contains(&number("measured"));
                if is_expected && compared["predicted_over_range"] == false {
                    let unit = compared["unit"].as_str().unwrap().replace("uH", "µH");
                    assert!(!against.contains(&format!("{} {unit} does not fit", number("measured"))), "{suspect:#}");
                }
            }
        }
    }
}

#[test]
fn without_a_record_usual_loops_stand_in_and_assumed_says_so() {
    let answer = ask(json!({ "without_design": true, "readings": { "resistance_over_range": true } }));
    assert_eq!(leading(&answer, 1), ["broken_conductor"]);
    let abouts: Vec<_> = answer.body["assumed"].as_array().unwrap().iter().map(|assumed| &assumed["about"]).collect();
    for about in ["#/design", "#/size", "#/lead_in/length"] {
        assert!(abouts.contains(&&json!(about)), "{about}: {abouts:?}");
    }
    // The unit that does not run on a known inductor needs no record at all.
    let unit = ask(json!({ "without_design": true, "substitution":
        { "connected_at": "unit_terminals", "inductance_uh": 150, "unit_runs": false } }));
    assert_eq!(leading(&unit, 1), ["detector_unit"]);
    // A size is enough for what differs much from any usual loop.
    let size = json!({ "along_travel": "6 ft", "across_lane": "8 ft" });
    let bridged = ask(json!({ "without_design": true, "size": size, "readings": { "inductance_uh": 2 } }));
    assert_eq!(leading(&bridged, 1), ["shorted_turn"]);
    let about_size = |answer: &Answer| answer.body["assumed"].to_string().contains("#/size");
    assert!(!about_size(&bridged));
    // Beside a design neither is needed.
    let spare = ask(json!({ "size": size, "lead_in": { "length": "9 ft" }, "readings": healthy() }));
    assert_eq!(spare.body["unused"], json!(["#/size", "#/lead_in"]));
}

#[test]
fn the_plan_leads_to_the_end_and_each_outcome_says_what_it_means() {
    let answer = ask(json!({ "observations": ["fault_after_rain"] }));
    let (next, plan) = (&answer.body["next_test"], answer.body["plan_of_tests"].as_array().unwrap());
    assert_eq!(plan[0]["test"], next["test"]);
    let mut total = 0;
    for planned in plan {
        total += planned["minutes"].as_u64().unwrap();
        assert_eq!(planned["minutes_so_far"], total);
        assert_ne!(planned["disturbs"], "pavement");
    }
    assert!(next["reason"].as_str().unwrap().contains("tells most for that"), "{next:#}");
    for outcome in next["outcomes"].as_array().unwrap() {
        assert!(outcome["meaning"].as_str().unwrap().starts_with("Then "), "{outcome}");
    }
    // Whoever follows the plan comes to its end.
    let mut done = Vec::new();
    for planned in plan {
        done.push(json!({ "test": planned["test"], "outcome": planned["likely_outcome_code"] }));
    }
    let end = ask(json!({ "observations": ["fault_after_rain"], "tests_done": done }));
    assert!(
        end.body["settled"] == true || end.body["open_tests"][0]["expected_information_bits"].as_f64().unwrap() < 0.3
    );
    let settled = ask(json!({ "tests_done": [{ "test": "check_settings", "outcome": "settings_wrong" }],
        "observations": ["drops_high_vehicles"] }));
    assert_eq!((&settled.body["settled"], &settled.body["plan_of_tests"]), (&json!(true), &json!([])));
    assert!(settled.body["next_test"]["reason"].as_str().unwrap().contains("the repair is next"));
}

#[test]
fn a_test_whose_reading_was_sent_counts_once() {
    let twice = ask(json!({ "readings": healthy(),
        "tests_done": [{ "test": "resistance_test", "outcome": "open_circuit" }] }));
    let once = ask(json!({ "readings": healthy() }));
    assert_eq!(twice.body["suspects"], once.body["suspects"]);
    assert_eq!(twice.body["unused"], json!(["#/tests_done/0"]));
}

#[test]
fn a_unit_that_was_switched_on_under_a_vehicle_is_warned_of() {
    for observation in ["misses_after_power_up", "stays_on_after_power_up"] {
        let answer = ask(json!({ "observations": [observation] }));
        assert!(answer.body["cautions"].to_string().contains("power_up_empty"), "{observation}");
    }
}

#[test]
fn the_table_of_tests_has_their_cost_and_no_test_is_unsafe() {
    let rows = get("/v1/reference/fault-tests").body["rows"].clone();
    for row in rows.as_array().unwrap() {
        assert!((1..=120).contains(&row["minutes"].as_u64().unwrap()), "{row}");
        let cautions = row["cautions"].as_array().unwrap();
        assert!(cautions.contains(&json!("gate_can_move")), "{row}");
        let how = row["description"].as_str().unwrap();
        if row["disturbs"] != "nothing" {
            assert!(how.starts_with("Lock the gate out"), "{row}");
        }
        if how.contains("to earth") {
            assert!(cautions.contains(&json!("insulation_tester")) && how.contains("arresters"), "{row}");
        }
        assert!(row["outcomes"].as_array().unwrap().len() >= 2, "{row}");
    }
}

/// Tests that need the loop on its unit.
const CONNECTED: [&str; 5] =
    ["watch_reading_with_gate", "drive_over", "restart_empty", "exchange_unit", "neighbours_off"];

#[test]
fn no_gate_moves_while_the_splice_is_open() {
    let open = ask(json!({
        "observations": ["detects_the_gate"],
        "substitution": { "connected_at": "lead_in_end", "inductance_uh": 150, "unit_runs": true }
    }));
    let test = &open.body["next_test"];
    let says_so = test["reason"].as_str().unwrap().contains("Join the splice first");
    assert_eq!(CONNECTED.contains(&next(&open)), says_so, "{test}");
    // What it takes is in the minutes.
    let closed = ask(json!({ "observations": ["detects_the_gate"] }));
    let minutes = |answer: &Answer| {
        let open = answer.body["open_tests"].as_array().unwrap().clone();
        open.iter().find(|open| open["test"] == "watch_reading_with_gate").map(|open| open["minutes"].as_u64().unwrap())
    };
    assert_eq!(minutes(&open), minutes(&closed).map(|minutes| minutes + 10));
}

#[test]
fn a_reading_and_a_test_that_was_done_say_the_same() {
    let read = ask(json!({ "observations": ["fault_after_rain"], "readings": { "insulation_megohm": 300 } }));
    let done = ask(json!({
        "observations": ["fault_after_rain"], "tests_done": [{ "test": "insulation_test", "outcome": "sound" }]
    }));
    assert_eq!((next(&read), next(&done)), ("insulation_test_wet", "insulation_test_wet"));
    let plan = ask(json!({ "observations": ["fault_after_rain"] }));
    let order: Vec<_> =
        plan.body["plan_of_tests"].as_array().unwrap().iter().map(|row| row["test"].as_str().unwrap()).collect();
    let place = |test: &str| order.iter().position(|other| *other == test);
    assert!(place("insulation_test_wet") < place("split_at_splice") || place("split_at_splice").is_none(), "{order:?}");
    assert!(place("insulation_test_wet").is_some(), "{order:?}");
}
