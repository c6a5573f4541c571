//! Whether a detector unit tunes: the checks, the neighbours, the settings, and remedies that are computed.

mod places;
mod remedies;
mod settings;

use serde_json::{Value, json};

use super::harness::{Answer, calculate};

fn connected(label: &str, turns: u32, lead_in: &str, with: Value) -> Value {
    let mut connected = json!({
        "label": label,
        "role": "presence",
        "loop": { "along_travel": "6 ft", "across_lane": "6 ft", "turns": turns },
        "lead_in": { "length": lead_in },
    });
    for (key, value) in with.as_object().unwrap() {
        connected[key] = value.clone();
    }
    connected
}

fn check(request: &Value) -> Answer {
    let answer = calculate("detector-compatibility", request);
    assert_eq!(answer.status, 200, "{:#}", answer.body);
    answer
}

fn one(turns: u32, lead_in: &str) -> Answer {
    check(&json!({ "loops": [connected("A", turns, lead_in, json!({}))] }))
}

fn checked<'a>(answer: &'a Answer, name: &str) -> &'a Value {
    let checks = answer.body["checks"].as_array().unwrap();
    checks.iter().find(|check| check["check"] == name).unwrap_or_else(|| panic!("no {name}"))
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("{value} is no number"))
}

#[test]
fn three_turns_on_100_ft_are_suitable() {
    let answer = one(3, "100 ft");
    assert_eq!(answer.body["verdict"], "suitable", "{:#}", answer.body["checks"]);
    assert!(answer.body["remedies"].as_array().unwrap().is_empty());
}

#[test]
fn one_turn_is_unsuitable_on_inductance_and_the_first_remedy_is_more_turns_with_the_number() {
    let answer = one(1, "100 ft");
    assert_eq!(answer.body["verdict"], "unsuitable");
    assert_eq!(checked(&answer, "inductance")["verdict"], "unsuitable");
    let first = &answer.body["remedies"][0];
    assert_eq!(
        (&first["check"], &first["change"], &first["from"], &first["to"]),
        (&json!("inductance"), &json!("turns"), &json!("1"), &json!("2"))
    );
    // Two turns compute to 36.9 µH at low frequency and a little less at 50 kHz, and the lead-in has 22.
    assert!((number(&first["value"]) - 59.0).abs() < 1.0, "{first}");
}

#[test]
fn two_thousand_feet_of_lead_in_are_unsuitable_and_the_quality_factor_alone_passes() {
    let answer = one(3, "2000 ft");
    assert_eq!(answer.body["verdict"], "unsuitable");
    let share = checked(&answer, "lead_in_share");
    assert_eq!(share["verdict"], "unsuitable");
    assert!((number(&share["value"]) - 14.9).abs() < 0.2, "{share}");
    let resistance = checked(&answer, "dc_resistance");
    assert_eq!((&resistance["verdict"], &resistance["limit"]), (&json!("unsuitable"), &json!(5.0)));
    assert!((number(&resistance["value"]) - 10.3).abs() < 0.1, "{resistance}");
    assert_eq!(checked(&answer, "quality_factor")["verdict"], "suitable");
    // Shortening the lead-in is what helps both.
    let remedies = answer.body["remedies"].as_array().unwrap();
    for failed in ["lead_in_share", "dc_resistance"] {
        assert!(
            remedies.iter().any(|remedy| remedy["check"] == failed && remedy["change"] == "lead_in_length"),
            "{failed}: {remedies:#?}"
        );
    }
}

#[test]
fn a_band_that_straddles_a_limit_is_marginal() {
    let terminal = number(&checked(&one(3, "100 ft"), "inductance")["value"]);
    let with = |least: f64| {
        check(&json!({ "loops": [connected("A", 3, "100 ft", json!({}))], "detector": { "inductance_min_uh": least } }))
    };
    assert_eq!(checked(&with(terminal * 0.94), "inductance")["verdict"], "suitable");
    assert_eq!(checked(&with(terminal * 1.02), "inductance")["verdict"], "marginal");
    assert_eq!(checked(&with(terminal * 1.06), "inductance")["verdict"], "unsuitable");
    assert!(number(&checked(&with(terminal * 1.06), "inductance")["margin"]) < 0.0);
}

#[test]
fn a_remedy_does_what_it_says_and_spoils_nothing() {
    let answer = one(1, "100 ft");
    for remedy in answer.body["remedies"].as_array().unwrap().iter().filter(|remedy| remedy["change"] == "turns") {
        let turns: u32 = remedy["to"].as_str().unwrap().parse().unwrap();
        let then = one(turns, "100 ft");
        let name = remedy["check"].as_str().unwrap();
        let now = if name == "vehicle" { continue } else { checked(&then, name) };
        assert_eq!((&now["verdict"], &now["value"]), (&json!("suitable"), &remedy["value"]), "{remedy}");
    }
}

/// Published and independently computed: neighbours of 6 x 6 ft and three turns at gaps of 1 to 6 ft, within 5 %.
#[test]
fn neighbours_couple_as_computed() {
    for (gap, expected) in [(1.0, 3.0), (2.0, 1.5), (3.0, 0.94), (4.0, 0.63), (6.0, 0.33)] {
        let place = |along: f64| json!({ "position": { "along": format!("{along} ft"), "across": "0 ft" } });
        let answer = check(&json!({
            "loops": [connected("A", 3, "50 ft", place(0.0)), connected("B", 3, "50 ft", place(6.0 + gap))],
        }));
        let pair = &answer.body["neighbours"][0];
        let coupling = number(&pair["coupling_percent"]);
        assert!((coupling / expected - 1.0).abs() < 0.05, "{gap} ft: {coupling} %, expected {expected} %");
        assert_eq!(pair["actions"].as_array().unwrap().is_empty(), coupling < 0.5, "{pair}");
        assert_eq!(answer.findings("warning").contains(&"crosstalk"), coupling >= 0.5);
    }
}

#[test]
fn another_turn_count_separates_neighbours() {
    let place = |along: &str| json!({ "position": { "along": along, "across": "0 ft" } });
    let pair = |turns: u32| {
        let answer = check(&json!({
            "loops": [connected("A", 3, "100 ft", place("0 ft")), connected("B", turns, "100 ft", place("7 ft"))],
            "detector": { "tuning_capacitance_nf": 68 },
        }));
        answer.body["neighbours"][0].clone()
    };
    assert!(!pair(3)["actions"].as_array().unwrap().is_empty());
    let apart = pair(4);
    assert!(apart["actions"].as_array().unwrap().is_empty(), "{apart}");
    // 3 against 4 turns with 22 µH of lead-in on 68 nF: 61.4 and 49.6 kHz at low frequency, 24 % apart.
    assert!((number(&apart["frequencies_khz"][0]) / 61.4 - 1.0).abs() < 0.01, "{apart}");
    assert!((number(&apart["frequencies_khz"][1]) / 49.6 - 1.0).abs() < 0.01, "{apart}");
    assert!((number(&apart["frequency_separation_percent"]) - 24.0).abs() < 1.0, "{apart}");
}

#[test]
fn loops_that_lie_on_one_another_give_a_number_and_not_an_error() {
    let place = json!({ "position": { "along": "0 ft", "across": "0 ft" } });
    let answer =
        check(&json!({ "loops": [connected("A", 3, "50 ft", place.clone()), connected("B", 3, "50 ft", place)] }));
    let coupling = number(&answer.body["neighbours"][0]["coupling_percent"]);
    assert!((50.0..=100.0).contains(&coupling), "{coupling}");
}

/// Circuit theory: two equal loops, one covered, half the change either way.
#[test]
fn two_loops_on_one_channel_halve_the_change() {
    let change = |wiring: &str, count: usize| {
        let loops: Vec<_> =
            (0..count).map(|index| connected(&format!("loop {index}"), 3, "50 ft", json!({}))).collect();
        let answer = check(&json!({ "loops": loops, "wiring": wiring, "vehicles": ["passenger_car"] }));
        number(&answer.body["sensitivities"][0]["change_percent"])
    };
    let alone = change("separate", 1);
    for wiring in ["series", "parallel"] {
        assert!((change(wiring, 2) / alone - 0.5).abs() < 0.001, "{wiring}");
    }
}

#[test]
fn series_adds_and_parallel_divides_the_inductance() {
    let inductance = |wiring: &str| {
        let loops = [connected("A", 3, "50 ft", json!({})), connected("B", 3, "50 ft", json!({}))];
        number(&checked(&check(&json!({ "loops": loops, "wiring": wiring })), "inductance")["value"])
    };
    assert!((inductance("series") / inductance("separate") - 2.0).abs() < 1e-3);
    assert!((inductance("parallel") / inductance("separate") - 0.5).abs() < 1e-3);
}

#[test]
fn the_step_to_set_is_the_coarsest_that_serves_every_vehicle() {
    let set = |vehicles: Value| {
        let answer = check(&json!({
            "loops": [connected("A", 3, "50 ft", json!({}))], "vehicles": vehicles,
            "detector": { "threshold_steps_percent": [0.01, 1.0, 0.32, 0.1] },
        }));
        answer.body["settings"][0]["threshold_percent"].clone()
    };
    assert_eq!(set(json!(["passenger_car"])), 1.0);
    assert_eq!(set(json!(["passenger_car", "high_bed_truck"])), 0.32);
    assert_eq!(set(json!(["small_motorcycle"])), 0.01);
}

#[test]
fn what_would_close_the_gate_on_a_vehicle_is_a_stop_where_the_loop_holds_it() {
    let with = |role: &str, more: Value| {
        let mut connected = connected("A", 3, "50 ft", more);
        connected["role"] = json!(role);
        check(&json!({ "loops": [connected] }))
    };
    for (more, code) in [
        (json!({ "output": "pulse" }), "pulse_holds_nothing"),
        (json!({ "presence_time": "5 min" }), "presence_runs_out"),
        (json!({ "on_loop_failure": "no_detect" }), "fails_to_no_detect"),
    ] {
        for role in ["obstruction_outside", "obstruction_inside", "between_leaves", "closing"] {
            assert_eq!(with(role, more.clone()).findings("stop"), [code], "{role}");
        }
        for role in ["exit", "arming", "presence"] {
            assert!(with(role, more.clone()).findings("stop").is_empty(), "{role} {code}");
        }
    }
    let holding = with("closing", json!({}));
    let settings = &holding.body["settings"][0];
    assert_eq!((&settings["output"], &settings["on_loop_failure"]), (&json!("presence"), &json!("detect")));
    assert!(settings["presence_time"].is_null());
}

#[test]
fn a_wider_envelope_never_makes_it_worse() {
    let rank =
        |value: &Value| ["suitable", "marginal", "unsuitable"].iter().position(|verdict| value == verdict).unwrap();
    for turns in 1..=8 {
        let with = |least: f64, most: f64, quality: f64| {
            let answer = check(&json!({
                "loops": [connected("A", turns, "150 ft", json!({}))],
                "detector": { "inductance_min_uh": least, "inductance_max_uh": most, "quality_factor_min": quality },
            }));
            rank(&answer.body["verdict"])
        };
        assert!(with(40.0, 800.0, 4.0) <= with(60.0, 500.0, 6.0), "{turns} turns");
        assert!(with(20.0, 2000.0, 1.0) <= with(40.0, 800.0, 4.0), "{turns} turns");
    }
}

#[test]
fn the_order_of_loops_does_not_matter() {
    let place = |along: &str| json!({ "position": { "along": along, "across": "0 ft" } });
    let (a, b) = (connected("A", 3, "100 ft", place("0 ft")), connected("B", 2, "40 ft", place("7 ft")));
    let answers = [check(&json!({ "loops": [a.clone(), b.clone()] })), check(&json!({ "loops": [b, a] }))];
    assert_eq!(answers[0].body["verdict"], answers[1].body["verdict"]);
    assert_eq!(
        answers[0].body["neighbours"][0]["coupling_percent"],
        answers[1].body["neighbours"][0]["coupling_percent"]
    );
    let checks = |answer: &Answer| {
        let mut checks: Vec<_> = answer.body["checks"].as_array().unwrap().iter().map(Value::to_string).collect();
        checks.sort();
        checks
    };
    assert_eq!(checks(&answers[0]), checks(&answers[1]));
}

#[test]
fn labels_are_unique_and_lists_bounded() {
    let twice = calculate(
        "detector-compatibility",
        &json!({ "loops": [connected("A", 3, "50 ft", json!({})), connected("A", 0, "50", json!({}))] }),
    );
    let faults = twice.faults();
    for (pointer, code) in [
        ("#/loops/1/label", "contradiction"),
        ("#/loops/1/loop/turns", "out_of_range"),
        ("#/loops/1/lead_in/length", "unit_missing"),
    ] {
        assert!(faults.contains(&(pointer.to_owned(), code.to_owned())), "{pointer}: {faults:?}");
    }
    let none = calculate("detector-compatibility", &json!({ "loops": [] }));
    assert_eq!(none.faults(), [("#/loops".to_owned(), "list_size".to_owned())]);
}

#[test]
fn a_channel_that_holds_a_gate_is_judged_as_one_whoever_shares_it() {
    let exit = json!({ "label": "exit", "role": "exit", "output": "pulse", "loop": { "along_travel": "6 ft", "across_lane": "6 ft", "turns": 3 }, "lead_in": { "length": "50 ft" } });
    let mut holding = connected("inside", 3, "50 ft", json!({}));
    holding["role"] = json!("obstruction_inside");
    let joined = check(&json!({ "loops": [exit.clone(), holding.clone()], "wiring": "series" }));
    assert_eq!(joined.findings("stop"), ["pulse_holds_nothing", "mixed_roles"]);
    assert!(check(&json!({ "loops": [exit, holding] })).findings("stop").is_empty());
}

#[test]
fn a_unit_that_lets_go_between_the_parts_of_a_vehicle_is_a_stop_where_the_loop_holds_a_gate() {
    let over = |along: &str, role: &str| {
        let mut connected = connected("A", 3, "50 ft", json!({}));
        connected["role"] = json!(role);
        connected["loop"] = json!({ "along_travel": along, "across_lane": "10 ft", "turns": 3 });
        check(
            &json!({ "loops": [connected], "vehicles": ["tractor_trailer"], "detector": { "threshold_percent": 0.13 } }),
        )
    };
    assert_eq!(over("4 ft", "obstruction_inside").findings("stop"), ["drops_out"]);
    assert!(over("4 ft", "exit").findings("warning").contains(&"drops_out"));
    assert!(over("10 ft", "obstruction_inside").findings("stop").is_empty());
}
