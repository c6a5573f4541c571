//! Does the ranking find faults that it did not make? Readings are drawn from hand-computed values with noise of their own.

use loopwright::calculation::Calculation;
use loopwright::calculation::fault_finding::{FaultFindingReport, FaultFindingRequest, FaultSuspect, ReadingCompared};
use loopwright::calculation::report::{FactValue, Meaning, Message};
use loopwright::practice::faults::LoopFault;
use loopwright::vocabulary::Vocabulary;
use loopwright::wording::{Language, Worded};
use proptest::prelude::*;
use serde_json::{Value, json};

use super::draw::Draw;

fn report(request: Value) -> FaultFindingReport {
    let request: FaultFindingRequest = serde_json::from_value(request).unwrap();
    request.answer().unwrap().worded(Language::English)
}

fn ranked(report: &FaultFindingReport) -> Vec<&'static str> {
    report.suspects.iter().map(|suspect| suspect.fault.code()).collect()
}

/// 6 × 6 ft of 14 AWG at 0.150 in, 1 to 5 turns, µH: table of Neumann sums.
const LADDER: [f64; 5] = [10.52, 36.9, 76.97, 129.7, 194.2];
/// With an outer and the middle turn of three closed, by hand from L₁ and Grover's coaxial rectangles: L - M²/L₁ of the rest.
const CLOSED: [f64; 3] = [16.05, 11.09, 16.05];
/// 100 ft of pair, µH and ohm; one turn of wire, ohm.
const LEAD_IN: (f64, f64) = (22.0, 0.505);
const TURN_OHM: f64 = 0.0606;

fn design(turns: u32) -> Value {
    json!({
        "loop": { "along_travel": "6 ft", "across_lane": "6 ft", "turns": turns, "wire": { "over_insulation": "0.150 in" } },
        "lead_in": { "length": "100 ft" }
    })
}

/// An installed loop on its lead-in, as meters show it: packing, strands, meters.
fn metered(draw: &mut Draw, coil_uh: f64, turns: f64, added_ohm: f64) -> (f64, f64) {
    let inductance = coil_uh * draw.normal(1.0, 0.025) + LEAD_IN.0 * draw.normal(1.0, 0.04);
    let resistance = (turns * TURN_OHM + LEAD_IN.1) * draw.uniform(1.0, 1.05) + added_ohm;
    (inductance * draw.normal(1.0, 0.007), (resistance * draw.normal(1.0, 0.01) + draw.normal(0.0, 0.03)).max(0.0))
}

/// A request with the readings of a fault.
fn drawn(fault: &str, draw: &mut Draw) -> Value {
    let pick = |draw: &mut Draw, of: usize| draw.uniform(0.0, of as f64) as usize;
    let both =
        |(inductance, resistance): (f64, f64)| json!({ "inductance_uh": inductance, "resistance_ohm": resistance });
    let tight = |draw: &mut Draw| draw.logarithmic(100.0, 5_000.0);
    let sound = |draw: &mut Draw| {
        let mut readings = both(metered(draw, LADDER[2], 3.0, 0.0));
        readings["insulation_megohm"] = json!(tight(draw));
        readings
    };
    let leak = |draw: &mut Draw| draw.logarithmic(0.01, 5.0);
    match fault {
        "insulation_breach" => {
            json!({ "design": design(3), "readings": { "insulation_megohm": leak(draw), "taken_at": "loop_end" } })
        }
        "wet_splice" => json!({ "design": design(3), "readings": { "insulation_megohm": leak(draw) } }),
        "broken_conductor" if draw.uniform(0.0, 1.0) < 0.8 => {
            json!({ "design": design(3), "readings": { "resistance_over_range": true } })
        }
        "broken_conductor" => {
            json!({ "design": design(3), "readings": { "resistance_ohm": draw.logarithmic(1e3, 1e6) } })
        }
        "torn_wire" => json!({ "design": design(3), "readings":
            { "resistance_over_range": true, "insulation_megohm": leak(draw) } }),
        "settings" => json!({ "design": design(3), "readings": sound(draw),
            "tests_done": [{ "test": "check_settings", "outcome": "settings_wrong" }] }),
        "surge_damage" => json!({ "design": design(3), "readings": sound(draw),
            "tests_done": [{ "test": "look_for_surge_damage", "outcome": "damage" }] }),
        "high_resistance_joint" => {
            let added = draw.logarithmic(0.5, 100.0);
            json!({ "design": design(3), "readings": both(metered(draw, LADDER[2], 3.0, added)) })
        }
        "shorted_turn" => {
            let coil = CLOSED[pick(draw, 3)];
            json!({ "design": design(3), "readings": both(metered(draw, coil, 2.0, 0.0)) })
        }
        "wrong_turn_count" => {
            // One turn off nine times in ten, else two.
            let counts = if draw.uniform(0.0, 1.0) < 0.9 { [2, 4] } else { [1, 5] };
            let count = counts[pick(draw, 2)];
            json!({ "design": design(3), "readings": both(metered(draw, LADDER[count - 1], count as f64, 0.0)) })
        }
        "swapped_pair" => {
            let coil = draw.logarithmic(40.0, 180.0);
            let turns = draw.uniform(2.0, 6.0);
            json!({ "design": design(3), "readings": both(metered(draw, coil, turns, 0.0)) })
        }
        "steel_nearby" => {
            let coil = LADDER[2] * draw.uniform(0.6, 0.85);
            json!({ "design": design(3), "readings": both(metered(draw, coil, 3.0, 0.0)) })
        }
        "outside_envelope" => json!({ "design": design(1), "readings": both(metered(draw, LADDER[0], 1.0, 0.0)) }),
        "detector_unit" => json!({ "design": design(3), "readings": sound(draw), "substitution":
            { "connected_at": "unit_terminals", "inductance_uh": draw.uniform(80.0, 400.0), "unit_runs": false } }),
        "harness" => json!({ "design": design(3), "readings": sound(draw), "substitution":
            { "connected_at": "harness_end", "inductance_uh": draw.uniform(80.0, 400.0), "unit_runs": false } }),
        "crosstalk" => {
            json!({ "design": design(3), "readings": sound(draw), "observations": ["detects_next_lane"] })
        }
        _ => json!({ "design": design(3), "readings": sound(draw) }),
    }
}

/// Which faults what is drawn for them separates from all others; fixed before the study was run.
///
/// Not separable: a wet splice leaks like any other insulation until the splice is opened; another loop on the pair measures
/// like steel, a wrong count or a sound loop; behind the harness, unit and harness fail alike.
const SEPARABLE: [(&str, bool); LoopFault::ALL.len()] = [
    ("insulation_breach", true),     // insulation at the loop's tails
    ("wet_splice", false),           // insulation at the detector end
    ("broken_conductor", true),      // resistance
    ("torn_wire", true),             // resistance and insulation
    ("high_resistance_joint", true), // resistance and inductance, from 0.5 ohm on
    ("shorted_turn", true),          // resistance and inductance
    ("wrong_turn_count", true),      // resistance and inductance
    ("swapped_pair", false),         // resistance and inductance
    ("steel_nearby", true),          // resistance and inductance, from 15 % on
    ("outside_envelope", true),      // the design, resistance and inductance
    ("detector_unit", true),         // all meters, and a known inductor at the terminals
    ("settings", true),              // all meters, and a look at the settings
    ("surge_damage", true),          // all meters, and a look at the arresters
    ("harness", false),              // all meters, and a known inductor behind the harness
    ("crosstalk", true),             // all meters, and traffic next door that is seen
    ("none", true),                  // all meters
];

#[test]
fn a_thousand_draws_of_each_fault_are_found_where_they_can_be() {
    let mut draw = Draw(20_261_125);
    for (fault, is_separable) in SEPARABLE {
        let reports: Vec<_> = (0..1000).map(|_| report(drawn(fault, &mut draw))).collect();
        let within = |first: usize| reports.iter().filter(|report| ranked(report)[..first].contains(&fault)).count();
        println!("{fault}: {:.1} % first, {:.1} % among two", within(1) as f64 / 10.0, within(2) as f64 / 10.0);
        if is_separable {
            assert!(within(1) >= 900, "{fault} ranks first in {} of 1000", within(1));
        } else if fault != "swapped_pair" {
            assert!(within(2) >= 900, "{fault} is among two in {} of 1000", within(2));
        }
    }
}

/// What a suspect would show of each reading, and whether that is said to speak for it and against it.
fn said_of_readings(suspect: &FaultSuspect) -> impl Iterator<Item = (&ReadingCompared, bool, bool)> {
    suspect.comparison.iter().map(|compared| {
        let is_of = |message: &Message| {
            let Meaning::Sentence(statement) = message.meaning() else { return false };
            let Some(FactValue::Phrases(phrases, _)) = statement.fact("reading") else { return false };
            phrases[0].fact("meter") == Some(&FactValue::Code(compared.reading))
        };
        (compared, suspect.evidence_for.iter().any(is_of), suspect.evidence_against.iter().any(is_of))
    })
}

fn maybe(values: impl Strategy<Value = f64> + 'static) -> impl Strategy<Value = Option<f64>> {
    prop::option::of(values)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn whatever_is_read_the_likelihoods_sum_to_one_and_every_number_is_finite(
        along in 1..200_u32, across in 1..200_u32, turns in 1..=20_u32, lead_in in 0..5000_u32, celsius in -40..=85_i32,
        insulation in maybe(prop_oneof![Just(0.0), 0.0..1e6]), resistance in maybe(prop_oneof![Just(0.0), 0.0..2.0, 0.0..1e8]),
        inductance in maybe(prop_oneof![Just(0.0), 0.0..300.0, 0.0..1e5]), quality in maybe(0.0..1e3), khz in 0.1..500.0_f64,
        at_loop in any::<bool>(), shape in any::<bool>(),
    ) {
        let mut readings = json!({
            "frequency_khz": khz, "temperature": format!("{celsius} °C"),
            "taken_at": if at_loop { "loop_end" } else { "detector_end" }
        });
        for (field, value) in [("insulation_megohm", insulation), ("resistance_ohm", resistance),
            ("inductance_uh", inductance), ("quality_factor", quality)] {
            if let Some(value) = value {
                readings[field] = json!(value);
            }
        }
        let report = report(json!({
            "design": {
                "loop": { "along_travel": format!("{along} ft"), "across_lane": format!("{across} ft"), "turns": turns,
                          "shape": if shape { "rectangle" } else { "quadrupole" } },
                "lead_in": { "length": format!("{lead_in} ft") }
            },
            "readings": readings, "observations": ["intermittent"]
        }));
        let sum: f64 = report.suspects.iter().map(|suspect| suspect.likelihood).sum();
        // Rounded to three decimals, each.
        prop_assert!((sum - 1.0).abs() < 0.01, "{sum}");
        for suspect in &report.suspects {
            for (compared, is_for, is_against) in said_of_readings(suspect) {
                let is_expected = match compared.measured {
                    Some(at) => !compared.predicted_over_range && (compared.predicted_low..=compared.predicted_high).contains(&at),
                    None => compared.predicted_over_range,
                };
                prop_assert!(!(is_expected && is_against || !is_expected && is_for), "{suspect:#?}");
            }
        }
        // What was done is not proposed again, and only what is open comes next.
        prop_assert_eq!(report.open_tests.first().map(|open| open.test), Some(report.next_test.test));
        // A number that is not finite would be sent as null.
        let text = serde_json::to_string(&report).unwrap();
        prop_assert!(!text.contains("null"), "{text}");
    }
}
