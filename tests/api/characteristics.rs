//! What a loop measures: published and independently computed values, through the front door.

use serde_json::{Value, json};

use super::harness::{Answer, calculate};
use super::requests::{loop_characteristics, with};

/// A rectangle of 14 AWG at a pitch of 0.150 in, on a lead-in of a length; at 1 kHz, where the skin effect of this wire is
/// below 0.1 %, so that values for low frequency hold.
fn low_frequency(along: &str, across: &str, turns: u32, lead_in: &str) -> Value {
    json!({
        "loop": { "along_travel": along, "across_lane": across, "turns": turns, "wire": { "over_insulation": "0.150 in" } },
        "lead_in": { "length": lead_in },
        "frequency_khz": 1
    })
}

fn measured(request: &Value) -> Answer {
    let answer = calculate("loop-characteristics", request);
    assert_eq!(answer.status, 200, "{:#}", answer.body);
    answer
}

fn figure(request: &Value, name: &str) -> f64 {
    measured(request).body[name].as_f64().unwrap_or_else(|| panic!("no {name}"))
}

#[track_caller]
fn close(found: f64, expected: f64, tolerance: f64) {
    assert!((found / expected - 1.0).abs() <= tolerance, "found {found}, expected {expected}");
}

#[test]
fn the_quick_rule_is_the_one_that_installers_know() {
    // P (N² + N) / 4, common practice.
    for (along, across, turns, expected) in [("6 ft", "6 ft", 3, 72.0), ("6 ft", "40 ft", 2, 138.0)] {
        let found = figure(&low_frequency(along, across, turns, "0 ft"), "quick_rule_uh");
        assert!((found - expected).abs() < 1e-9, "{found}");
    }
}

#[test]
fn inductance_agrees_with_the_formulas_of_rosa_and_grover_and_with_neumann_sums() {
    let square = |turns| low_frequency("6 ft", "6 ft", turns, "0 ft");
    let cut = with(&square(3), "/loop/corner_cut", "12 in");
    let metric = with(
        &low_frequency("2 m", "2 m", 3, "0 ft"),
        "/loop/wire",
        json!({ "gauge": "1.5 mm2", "over_insulation": "3 mm" }),
    );
    for (request, expected, tolerance) in [
        (square(1), 10.524, 0.002),
        (square(3), 76.97, 0.005),
        (cut, 71.11, 0.01),
        (low_frequency("6 ft", "20 ft", 2, "0 ft"), 85.6, 0.005),
        (metric, 88.5, 0.005),
    ] {
        close(figure(&request, "loop_inductance_uh"), expected, tolerance);
    }
}

#[test]
fn the_standard_test_loop_lies_in_its_window_at_working_frequencies() {
    // The window of the NEMA test-loop clause: 60 to 80 µH.
    for frequency in [20, 50, 100] {
        let request = with(
            &with(&low_frequency("6 ft", "6 ft", 3, "100 ft"), "/loop/corner_cut", "12 in"),
            "/frequency_khz",
            frequency,
        );
        let found = figure(&request, "loop_inductance_uh");
        assert!((60.0..80.0).contains(&found), "{found} at {frequency} kHz");
        let lead_in = figure(&request, "lead_in_inductance_uh");
        assert!((20.0..=24.0).contains(&lead_in), "{lead_in}");
    }
}

#[test]
fn skin_effect_takes_at_most_the_internal_inductance() {
    // µ0/8π, 0.05 µH, for each metre of wire.
    let at = |frequency: u32| with(&low_frequency("6 ft", "6 ft", 3, "0 ft"), "/frequency_khz", frequency);
    let found = [1, 20, 50, 100, 500].map(|frequency| figure(&at(frequency), "loop_inductance_uh"));
    assert!(found.is_sorted_by(|low, high| low > high), "{found:?}");
    assert!(found[0] - found[4] < 0.05 * measured(&at(1)).body["wire_length"]["m"].as_f64().unwrap(), "{found:?}");
}

#[test]
fn resistance_is_that_of_the_wire() {
    // 72 ft of loop and 200 ft of lead-in conductor; ASTM B258 and IACS copper.
    let request = low_frequency("6 ft", "6 ft", 3, "100 ft");
    close(figure(&request, "dc_resistance_ohm"), 0.687, 0.005);
    // 2.128 of 2.525 ohm per 1000 ft are left at -20 °C.
    close(figure(&with(&request, "/temperature", "-20 °C"), "dc_resistance_ohm"), 0.687 * 2.128 / 2.525, 0.005);
    // A long wire, so that three decimals tell; the Bessel solution of the round wire.
    let long = low_frequency("200 ft", "200 ft", 20, "0 ft");
    for (frequency, ratio) in [(20, 1.167), (50, 1.638)] {
        let body = measured(&with(&long, "/frequency_khz", frequency)).body;
        close(body["ac_resistance_ohm"].as_f64().unwrap() / body["dc_resistance_ohm"].as_f64().unwrap(), ratio, 0.005);
    }
}

#[test]
fn the_lead_in_dilutes_a_change() {
    // 77.0 µH on 0.22 µH/ft: 0.7777 and 0.4117 are left.
    for (length, share) in [("100 ft", 77.77), ("500 ft", 41.17)] {
        close(figure(&low_frequency("6 ft", "6 ft", 3, length), "loop_share_percent"), share, 0.002);
    }
    let shares = ["0 ft", "1 ft", "50 ft", "15.3 m", "400 ft", "5000 ft"]
        .map(|length| figure(&low_frequency("6 ft", "6 ft", 3, length), "loop_share_percent"));
    assert!(shares[0] == 100.0 && shares.is_sorted_by(|short, long| short > long), "{shares:?}");
}

#[test]
fn the_figures_hang_together() {
    let requests = [loop_characteristics(), with(&loop_characteristics(), "/loop/shape", "quadrupole")];
    for request in requests {
        let body = measured(&with(&request, "/shunt_capacitance_nf", 0)).body;
        let of = |name: &str| body[name].as_f64().unwrap();
        let (coil, lead_in, terminal) =
            (of("loop_inductance_uh"), of("lead_in_inductance_uh"), of("terminal_inductance_uh"));
        assert!((coil + lead_in - terminal).abs() < 0.011, "{body:#}");
        close(of("loop_share_percent"), 100.0 * coil / terminal, 1e-3);
        close(of("as_built_high_uh"), 1.05 * terminal, 1e-3);
        // With steel below, the lower end counts as if the steel were a sheet.
        assert!(of("as_built_low_uh") < 0.95 * terminal, "{body:#}");
        assert!(of("ac_resistance_ohm") > of("dc_resistance_ohm"));
        // Q = 2πfL/R at the terminals; three decimals of R leave 0.2 %.
        close(of("quality_factor"), std::f64::consts::TAU * 0.05 * terminal / of("ac_resistance_ohm"), 0.002);
    }
}

#[test]
fn a_quadrupole_has_twice_the_cells_and_more_wire() {
    let body = |shape: &str| measured(&with(&loop_characteristics(), "/loop/shape", shape)).body;
    let (rectangle, quadrupole) = (body("rectangle"), body("quadrupole"));
    let of = |body: &Value, name: &str| body[name].as_f64().unwrap();
    assert!(quadrupole["wire_length"]["ft"].as_f64() > rectangle["wire_length"]["ft"].as_f64());
    assert!(of(&quadrupole, "dc_resistance_ohm") > of(&rectangle, "dc_resistance_ohm"));
    assert_eq!(quadrupole["inputs"]["loop"]["shape"], "quadrupole");
}

#[test]
fn the_same_job_in_feet_and_in_metres_measures_the_same() {
    let us = loop_characteristics();
    let metric = json!({
        "loop": {
            "shape": "rectangle", "along_travel": "1828.8 mm", "across_lane": "6.096 m", "turns": 3, "corner_cut": "30.48 cm",
            "cover": "25.4 mm", "wire": {
                "gauge": "14 AWG", "over_insulation": "3.302 mm", "over_jacket": "4.7625 mm", "insulation_rating": "90 °C"
            }
        },
        "lead_in": {
            "length": "18.288 m", "in_slot": "3.048 m", "in_shared_slot": "0 m", "in_conduit": "12.192 m", "pair": "twisted", "spare": "0.9144 m", "gauge": "14 AWG",
            "inductance": "0.721784776902887 uH/m"
        },
        "frequency_khz": 50, "temperature": "20 °C", "reinforcement": { "depth_below_loop": "76.2 mm" },
        "shunt_capacitance_nf": 0.5
    });
    let (mut us, mut metric) = (measured(&us).body, measured(&metric).body);
    // Findings speak the system of the reader.
    let findings = [&mut us, &mut metric].map(|body| body.as_object_mut().unwrap().shift_remove("findings").unwrap());
    assert_eq!(us, metric);
    let codes =
        findings.map(|list| list.as_array().unwrap().iter().map(|finding| finding["code"].clone()).collect::<Vec<_>>());
    assert_eq!(codes[0], codes[1]);
}

#[test]
fn each_way_in_which_a_loop_can_be_wrong_is_found() {
    let square = |turns: u32, lead_in: Value| json!({ "loop": { "along_travel": "6 ft", "across_lane": "6 ft", "turns": turns }, "lead_in": lead_in });
    let plain = |turns, length: &str| square(turns, json!({ "length": length }));
    let thin = |length: &str| square(3, json!({ "length": length, "gauge": "24 AWG" }));
    let steel = |depth: &str| with(&plain(3, "50 ft"), "/reinforcement", json!({ "depth_below_loop": depth }));
    let capacitance = |nf: f64| with(&plain(3, "50 ft"), "/shunt_capacitance_nf", nf);
    let rows: [(Value, &[(&str, &str)]); 14] = [
        (plain(3, "50 ft"), &[]),
        (plain(1, "0 ft"), &[("stop", "below_envelope")]),
        // The band of the finished loop reaches across the limit.
        (plain(2, "65 ft"), &[("warning", "below_envelope")]),
        (plain(16, "50 ft"), &[("stop", "above_envelope")]),
        (plain(3, "400 ft"), &[("warning", "lead_in_outweighs_loop")]),
        (plain(3, "170 ft"), &[]),
        (plain(3, "190 ft"), &[("warning", "lead_in_outweighs_loop")]),
        (thin("110 ft"), &[("warning", "high_resistance")]),
        (with(&thin("110 ft"), "/frequency_khz", 20), &[("stop", "low_quality"), ("warning", "high_resistance")]),
        (capacitance(0.5), &[]),
        (capacitance(20.0), &[("warning", "near_self_resonance")]),
        (steel("10 ft"), &[("note", "steel_below")]),
        (steel("2 ft"), &[("note", "steel_below")]),
        (steel("2 in"), &[("warning", "steel_below")]),
    ];
    for (request, expected) in rows {
        let answer = measured(&request);
        let findings = answer.body["findings"].as_array().unwrap().iter();
        let found: Vec<_> = findings.map(|f| (f["level"].as_str().unwrap(), f["code"].as_str().unwrap())).collect();
        assert_eq!(found, expected, "{request}: {:#}", answer.body["findings"]);
    }
}

#[test]
fn steel_takes_more_the_nearer_it_lies() {
    let drop = |depth: &str| {
        let answer = measured(&with(&loop_characteristics(), "/reinforcement/depth_below_loop", depth));
        let finding =
            answer.body["findings"].as_array().unwrap().iter().find(|finding| finding["code"] == "steel_below");
        finding.unwrap()["figures"][0]["value"].as_f64().unwrap()
    };
    let drops = ["1/4 in", "2 in", "100 mm", "1 ft", "10 ft"].map(drop);
    assert!(drops.is_sorted_by(|near, far| near > far), "{drops:?}");
    assert!(drops[0] < 100.0 && drops[4] >= 0.0, "{drops:?}");
}
