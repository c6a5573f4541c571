//! What has failed: hand-written cases whose readings were not made by the engine, and what the answer must say.
//!
//! The loop is 6 × 6 ft, three turns, on 100 ft of lead-in: 77 and 22 µH (Neumann sums; the middle of 20 to 24 µH), 72 and 200 ft
//! of 14 AWG at 2.525 ohm per 1000 ft make 0.18 and 0.505 ohm.

use loopwright::practice::faults::LoopFault;
use loopwright::vocabulary::Vocabulary;
use serde_json::{Value, json};

use super::harness::{Answer, calculate};

fn design() -> Value {
    json!({
        "loop": { "along_travel": "6 ft", "across_lane": "6 ft", "turns": 3 },
        "lead_in": { "length": "100 ft" }
    })
}

/// The answer for the loop of this page with further fields.
fn ask(mut request: Value) -> Answer {
    if request.get("expected").is_none() && request.get("design").is_none() {
        request["design"] = design();
    }
    let answer = calculate("fault-finding", &request);
    assert_eq!(answer.status, 200, "{request}: {:#}", answer.body);
    let likelihoods: Vec<_> = suspects(&answer).iter().map(|(_, likelihood)| *likelihood).collect();
    assert_eq!(likelihoods.len(), LoopFault::ALL.len());
    assert!((likelihoods.iter().sum::<f64>() - 1.0).abs() < 0.0085 && likelihoods.is_sorted_by(|a, b| a >= b));
    answer
}

fn suspects(answer: &Answer) -> Vec<(&str, f64)> {
    let suspects = answer.body["suspects"].as_array().unwrap().iter();
    suspects.map(|suspect| (suspect["fault"].as_str().unwrap(), suspect["likelihood"].as_f64().unwrap())).collect()
}

fn likelihood(answer: &Answer, fault: &str) -> f64 {
    suspects(answer).into_iter().find(|(name, _)| *name == fault).unwrap().1
}

fn finding<'a>(answer: &'a Answer, code: &str) -> Option<&'a Value> {
    answer.body["findings"].as_array().unwrap().iter().find(|finding| finding["code"] == code)
}

#[test]
fn readings_of_known_faults_lead_to_them() {
    let cases = [
        (
            "an outer turn closed: 16 + 22 µH, a turn's wire less",
            json!({ "inductance_uh": 38, "resistance_ohm": 0.63 }),
            "shorted_turn",
        ),
        ("a turn closed, about 13 + 22 µH", json!({ "inductance_uh": 35, "resistance_ohm": 0.62 }), "shorted_turn"),
        (
            "the same at the loop alone",
            json!({ "inductance_uh": 13, "resistance_ohm": 0.13, "taken_at": "loop_end" }),
            "shorted_turn",
        ),
        ("two turns: 36.9 + 22 µH", json!({ "inductance_uh": 58.9, "resistance_ohm": 0.63 }), "wrong_turn_count"),
        ("four turns: 129.7 + 22 µH", json!({ "inductance_uh": 151.7, "resistance_ohm": 0.75 }), "wrong_turn_count"),
        ("five turns: 194 + 22 µH", json!({ "inductance_uh": 216, "resistance_ohm": 0.81 }), "wrong_turn_count"),
        ("open", json!({ "resistance_over_range": true }), "broken_conductor"),
        (
            "open on both meters",
            json!({ "resistance_over_range": true, "inductance_over_range": true }),
            "broken_conductor",
        ),
        ("a damp gap", json!({ "resistance_ohm": 250_000 }), "broken_conductor"),
        ("no inductance at all", json!({ "inductance_uh": 0 }), "shorted_turn"),
        ("the pair bridged at the splice", json!({ "inductance_uh": 22, "resistance_ohm": 0.5 }), "shorted_turn"),
        ("1.5 ohm too much", json!({ "resistance_ohm": 2.2, "inductance_uh": 98 }), "high_resistance_joint"),
        ("40 ohm too much", json!({ "resistance_ohm": 41 }), "high_resistance_joint"),
        (
            "a fifth of the loop's inductance gone",
            json!({ "inductance_uh": 83.6, "resistance_ohm": 0.69 }),
            "steel_nearby",
        ),
        (
            "all as it should be",
            json!({ "inductance_uh": 98, "resistance_ohm": 0.7, "insulation_megohm": 400 }),
            "none",
        ),
        ("a poor insulation alone", json!({ "insulation_megohm": 3 }), "insulation_breach"),
        (
            "an earthed loop, splice open",
            json!({ "insulation_megohm": 0.05, "taken_at": "loop_end" }),
            "insulation_breach",
        ),
    ];
    for (name, readings, expected) in cases {
        let answer = ask(json!({ "readings": readings }));
        assert_eq!(suspects(&answer)[0].0, expected, "{name}: {:?}", suspects(&answer));
        assert!(finding(&answer, "contradictory_readings").is_none(), "{name}");
    }
}

#[test]
fn a_leak_after_rain_opens_the_splice() {
    let answer = ask(json!({ "readings": { "insulation_megohm": 0.3 }, "observations": ["fault_after_rain"] }));
    let (breach, splice) = (likelihood(&answer, "insulation_breach"), likelihood(&answer, "wet_splice"));
    assert!(breach + splice > 0.95 && breach < 3.0 * splice && splice < 3.0 * breach, "{breach} {splice}");
    let next = &answer.body["next_test"];
    assert_eq!(next["test"], "split_at_splice");
    assert_eq!(next["cautions"][0], "gate_can_move");
    assert_eq!(next["outcomes"][0]["points_to"], json!(["insulation_breach"]));
    assert_eq!(next["outcomes"][2]["points_to"], json!(["wet_splice"]));
    let band = finding(&answer, "insulation_reading").unwrap();
    assert_eq!((&band["level"], &band["source_ids"]), (&json!("warning"), &json!(["own_choice"])));
    let codes: Vec<_> = answer.body["cautions"].as_array().unwrap().iter().map(|caution| &caution["code"]).collect();
    for code in ["gate_can_move", "insulation_tester", "live_parts", "not_for_people", "local_codes"] {
        assert!(codes.contains(&&json!(code)), "{code}");
    }
}

#[test]
fn insulation_is_judged_by_whose_limit_it_is() {
    for (megohm, level, source) in [
        (250.0, "note", "wsdot_8_20_3_14_d"),
        (150.0, "note", "caltrans_87_1_01d"),
        (20.0, "note", "fp_96_636"),
        (5.0, "warning", "own_choice"),
        (0.0, "warning", "own_choice"),
    ] {
        let answer = ask(json!({ "readings": { "insulation_megohm": megohm, "test_voltage_v": 250 } }));
        let band = finding(&answer, "insulation_reading").unwrap();
        assert_eq!(band["level"], level, "{megohm}");
        assert!(band["source_ids"].as_array().unwrap().contains(&json!(source)), "{megohm}: {band}");
        assert!(finding(&answer, "test_voltage").is_some());
    }
}

fn substituted(at: &str, inductance: f64, runs: bool) -> Answer {
    ask(json!({ "substitution": { "connected_at": at, "inductance_uh": inductance, "unit_runs": runs } }))
}

#[test]
fn a_unit_that_does_not_run_on_a_known_inductor_is_never_a_matter_of_the_loop() {
    let unit = substituted("unit_terminals", 100.0, false);
    let of_unit = ["detector_unit", "surge_damage", "settings"].map(|fault| likelihood(&unit, fault));
    assert!(of_unit[0] > 0.7 && of_unit.iter().sum::<f64>() > 0.97, "{:?}", suspects(&unit));

    let harness = substituted("harness_end", 100.0, false);
    let of_both = ["detector_unit", "surge_damage", "settings", "harness"].map(|fault| likelihood(&harness, fault));
    assert!(of_both.iter().sum::<f64>() > 0.96, "{:?}", suspects(&harness));

    let lead_in = substituted("lead_in_end", 100.0, false);
    for fault in ["detector_unit", "harness", "insulation_breach", "broken_conductor"] {
        assert!(likelihood(&lead_in, fault) > 0.08, "{fault}: {:?}", suspects(&lead_in));
    }
    for suspect in lead_in.body["suspects"].as_array().unwrap() {
        let variant = suspect["variant"].as_str().unwrap_or_default();
        let is_likely = suspect["likelihood"].as_f64().unwrap() > 0.01;
        assert!(!is_likely || !variant.contains("in the loop"), "{suspect}");
    }
    for fault in ["steel_nearby", "wrong_turn_count", "wet_splice", "outside_envelope", "crosstalk", "none"] {
        for answer in [&unit, &harness, &lead_in] {
            assert!(likelihood(answer, fault) < 0.01, "{fault}: {:?}", suspects(answer));
        }
    }
    for (answer, words) in [(&unit, "the unit or its supply"), (&harness, "harness"), (&lead_in, "lead-in")] {
        let message = finding(answer, "substitution_result").unwrap()["message"].as_str().unwrap();
        assert!(message.contains(words) && message.contains("not in the loop"), "{message}");
    }
}

#[test]
fn a_unit_that_runs_on_a_known_inductor_is_cleared_as_far_as_the_inductor_stood() {
    let answer = substituted("lead_in_end", 100.0, true);
    assert!(likelihood(&answer, "detector_unit") + likelihood(&answer, "harness") < 0.03, "{:?}", suspects(&answer));
    let mute = ask(json!({ "substitution": {
        "connected_at": "unit_terminals", "inductance_uh": 100, "unit_runs": true, "simulated_vehicle_switches": false
    } }));
    assert_eq!(suspects(&mute)[0].0, "detector_unit");
}

#[test]
fn an_inductor_outside_the_envelope_proves_nothing() {
    let nothing = ask(json!({ "observations": ["drifts"] }));
    for inductance in [49.0, 701.0] {
        let answer = ask(json!({ "observations": ["drifts"], "substitution": {
            "connected_at": "unit_terminals", "inductance_uh": inductance, "unit_runs": false
        } }));
        assert_eq!(finding(&answer, "substitution_void").unwrap()["level"], "warning");
        assert!(finding(&answer, "substitution_result").is_none());
        assert_eq!(suspects(&answer), suspects(&nothing), "a void test must not weigh");
    }
}

#[test]
fn readings_that_cannot_both_be_true_are_said_to_contradict() {
    let answer = ask(json!({ "readings": { "resistance_over_range": true, "inductance_uh": 99 } }));
    assert_eq!(finding(&answer, "contradictory_readings").unwrap()["level"], "warning");
    let sound = ask(json!({ "readings": { "resistance_ohm": 0.7, "inductance_uh": 99 } }));
    assert!(finding(&sound, "contradictory_readings").is_none());
}

#[test]
fn cold_wire_is_no_fault_and_a_unit_that_cannot_tune_is() {
    // 272 ft at -20 °C: 2.128 ohm per 1000 ft make 0.58 ohm.
    let cold = ask(json!({ "readings": {
        "resistance_ohm": 0.59, "inductance_uh": 99, "insulation_megohm": 300, "temperature": "-20 °C"
    } }));
    assert_eq!(suspects(&cold)[0].0, "none");
    assert!(finding(&cold, "reading_temperature").is_some());

    let one_turn = json!({
        "design": {
            "loop": { "along_travel": "6 ft", "across_lane": "6 ft", "turns": 1 }, "lead_in": { "length": "50 ft" }
        },
        "observations": ["never_detects"]
    });
    assert_eq!(suspects(&ask(one_turn))[0].0, "outside_envelope");
}

#[test]
fn a_commissioning_record_stands_for_the_design() {
    let ask = |readings: Value| {
        ask(json!({ "expected": { "inductance_uh": 100, "resistance_ohm": 0.7 }, "readings": readings }))
    };
    assert_eq!(suspects(&ask(json!({ "resistance_ohm": 4.0 })))[0].0, "high_resistance_joint");
    assert_eq!(suspects(&ask(json!({ "inductance_uh": 160, "resistance_ohm": 0.85 })))[0].0, "wrong_turn_count");
    assert_eq!(suspects(&ask(json!({ "inductance_uh": 85, "resistance_ohm": 0.7 })))[0].0, "steel_nearby");
}

#[test]
fn the_frequency_and_the_tank_of_the_unit_give_the_inductance() {
    // 68 nF with 99 µH run at 61.34 kHz.
    let answer = ask(json!({
        "detector": { "tuning_capacitance_nf": 68 }, "readings": { "frequency_khz": 61.34 }
    }));
    let compared = &answer.body["suspects"][0]["comparison"][0];
    assert_eq!(compared["reading"], "inductance_uh");
    assert!((compared["measured"].as_f64().unwrap() - 99.0).abs() < 0.1, "{compared}");
}

#[test]
fn every_observation_is_taken_and_their_order_does_not_matter() {
    let all = [
        "fault_after_rain",
        "fault_in_frost",
        "stuck_in_detect",
        "never_detects",
        "intermittent",
        "detects_the_gate",
        "detects_next_lane",
        "drifts",
        "fault_when_pavement_flexes",
        "drops_high_vehicles",
        "misses_two_wheelers",
        "stays_on_after_power_up",
        "misses_after_power_up",
        "never_closes",
    ];
    for (observation, expected) in [
        ("detects_the_gate", "steel_nearby"),
        ("detects_next_lane", "crosstalk"),
        ("fault_when_pavement_flexes", "broken_conductor"),
        ("fault_after_rain", "insulation_breach"),
        ("drops_high_vehicles", "settings"),
        ("misses_two_wheelers", "settings"),
        ("stays_on_after_power_up", "broken_conductor"),
        ("misses_after_power_up", "none"),
        ("never_closes", "insulation_breach"),
    ] {
        assert_eq!(suspects(&ask(json!({ "observations": [observation] })))[0].0, expected, "{observation}");
    }
    let mut reversed = all;
    reversed.reverse();
    let (one, other) = (ask(json!({ "observations": all })), ask(json!({ "observations": reversed })));
    assert_eq!((&one.body["suspects"], &one.body["next_test"]), (&other.body["suspects"], &other.body["next_test"]));
}

#[test]
fn what_cannot_be_reasoned_from_is_refused() {
    let refused = |request: Value| {
        let answer = calculate("fault-finding", &request);
        assert_eq!(answer.status, 422, "{request}: {:#}", answer.body);
        answer.faults()
    };
    let fault = |pointer: &str, code: &str| (pointer.to_owned(), code.to_owned());
    let reading = json!({ "insulation_megohm": 1 });
    assert_eq!(refused(json!({ "design": design() })), [fault("#/readings", "field_missing")]);
    assert_eq!(
        refused(json!({ "design": design(), "readings": { "frequency_khz": 40 } })),
        [fault("#/readings", "field_missing")]
    );
    assert_eq!(refused(json!({ "expected": {}, "readings": reading })), [fault("#/expected", "field_missing")]);
    let rows = [
        (
            json!({ "readings": { "resistance_ohm": 1, "resistance_over_range": true } }),
            "#/readings/resistance_over_range",
        ),
        (json!({ "readings": { "inductance_uh": 1, "test_voltage_v": 500 } }), "#/readings/test_voltage_v"),
        (json!({ "tests_done": [{ "test": "check_settings", "outcome": "leak" }] }), "#/tests_done/0/outcome"),
        (
            json!({ "tests_done": [{ "test": "check_settings", "outcome": "settings_right" },
                                   { "test": "check_settings", "outcome": "settings_wrong" }] }),
            "#/tests_done/1/test",
        ),
        (json!({ "observations": ["drifts", "intermittent", "drifts"] }), "#/observations/2"),
        (
            json!({ "substitution": { "connected_at": "harness_end", "inductance_uh": 100, "unit_runs": false,
                                      "simulated_vehicle_switches": true } }),
            "#/substitution/simulated_vehicle_switches",
        ),
    ];
    for (mut request, pointer) in rows {
        request["design"] = design();
        assert_eq!(refused(request), [fault(pointer, "contradiction")]);
    }
    let alone = json!({ "design": design(), "readings": { "resistance_over_range": true, "capacitance_nf": 1 } });
    assert_eq!(refused(alone), [fault("#/readings/whole_capacitance_nf", "field_missing")]);
    for (field, wrong) in
        [("insulation_megohm", -1.0), ("resistance_ohm", 1e9), ("inductance_uh", -0.1), ("frequency_khz", 0.0)]
    {
        let request = json!({ "design": design(), "readings": { field: wrong }, "observations": ["drifts"] });
        assert_eq!(refused(request), [fault(&format!("#/readings/{field}"), "out_of_range")]);
    }
}
