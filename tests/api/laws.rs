//! What must hold for whatever is sent: no input breaks the service, every answer is described and finite.

use proptest::prelude::*;
use serde_json::{Value, json};

use super::harness::{Answer, calculate, post};
use super::requests::{all, places, with};

/// Any JSON, shallow, with words that the service knows among those that it does not.
fn any_json() -> impl Strategy<Value = Value> {
    let texts = prop_oneof![
        ".{0,12}",
        "[-+]?[0-9]{1,4}[./ -]?[0-9]{0,3} ?(ft|in|m|mm|AWG|mph|s|uH/ft|°C|)",
        prop::sample::select(vec!["exit", "slide_gate", "gravel", "6 ft 6 in", "1/0 in", "standard_minimum"])
            .prop_map(str::to_owned),
    ];
    let leaves = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        (-30..30_i64).prop_map(Value::from),
        any::<f64>()
            .prop_filter_map("JSON has no such number", |number| serde_json::Number::from_f64(number).map(Value::from)),
        texts.prop_map(Value::from),
    ];
    let names = prop_oneof![
        prop::sample::select(vec![
            "loop", "lead_in", "opening", "width", "length", "turns", "stock", "roles", "barrier"
        ])
        .prop_map(str::to_owned),
        ".{0,8}",
    ];
    leaves.prop_recursive(3, 24, 6, move |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..5).prop_map(Value::from),
            prop::collection::vec((names.clone(), inner), 0..5)
                .prop_map(|members| Value::Object(members.into_iter().collect())),
        ]
    })
}

/// The harness has held the answer against the description; here only the kind of outcome is left.
fn is_answered(answer: &Answer) -> bool {
    match answer.status {
        200 => has_no_null(&answer.body),
        422 => !answer.faults().is_empty(),
        _ => false,
    }
}

/// A number that is not finite would be written as null.
fn has_no_null(report: &Value) -> bool {
    places(report).iter().all(|(_, value)| !value.is_null())
}

fn tenths(range: std::ops::Range<u32>, unit: &'static str) -> impl Strategy<Value = String> {
    range.prop_map(move |tenths| format!("{}.{} {unit}", tenths / 10, tenths % 10))
}

fn leg() -> impl Strategy<Value = String> {
    prop_oneof![tenths(10..2000, "ft"), tenths(4..600, "m"), tenths(120..24000, "in")]
}

fn any_of(codes: &'static [&'static str]) -> impl Strategy<Value = &'static str> {
    prop::sample::select(codes)
}

prop_compose! {
    /// A sound loop on a sound lead-in.
    fn measured_loop()(
        shape in any_of(&["rectangle", "quadrupole"]), along in leg(), across in leg(), turns in 1..=20_u32,
        gauge in any_of(&["8 AWG", "14 AWG", "24 AWG", "0.5 mm2", "6 mm2"]), over in tenths(50..120, "mm"),
        length in tenths(0..50_000, "ft"), inductance in any_of(&["0.05 uH/ft", "0.22 uH/ft", "1 uH/ft", "0.7 uH/m"]),
        frequency in 1.0..=500.0_f64, celsius in -40..=85_i32, depth in tenths(70..30_000, "mm"), nf in 0.0..=100.0_f64,
    ) -> Value {
        json!({
            "loop": { "shape": shape, "along_travel": along, "across_lane": across, "turns": turns, "wire": { "gauge": gauge, "over_insulation": over } },
            "lead_in": { "length": length, "inductance": inductance, "gauge": gauge },
            "frequency_khz": frequency, "temperature": format!("{celsius} °C"),
            "reinforcement": { "depth_below_loop": depth }, "shunt_capacitance_nf": nf
        })
    }
}

prop_compose! {
    /// A sound opening.
    fn job()(
        width in prop_oneof![tenths(30..2000, "ft"), tenths(10..600, "m")],
        barrier in any_of(&["slide_gate", "swing_gate", "swing_gate_pair", "barrier_arm", "vertical_lift_gate", "overhead_door", "none"]),
        roles in prop::sample::subsequence(vec!["exit", "obstruction_outside", "obstruction_inside", "between_leaves", "arming", "closing", "presence"], 1..=7).prop_shuffle(),
        vehicles in prop::sample::subsequence(vec!["passenger_car", "pickup", "high_bed_truck", "tractor_trailer", "small_motorcycle", "bicycle", "car_with_trailer", "bus", "forklift", "golf_cart"], 1..=6),
        surface in any_of(&["existing_asphalt", "existing_concrete", "new_asphalt", "gravel", "soil", "pavers"]),
        construction in any_of(&["hand_wound", "preformed_saw_cut", "preformed_direct_burial"]),
        length in tenths(0..20_000, "ft"), speed in 1..=60_u32, time in 1..=120_u32, least in 1.0..600.0_f64,
        cover in tenths(0..60, "mm"), item in (leg(), leg(), 1..=20_u32),
    ) -> Value {
        json!({
            "opening": { "width": width, "barrier": barrier, "approach_speed": format!("{speed} mph"), "opening_time": format!("{time} s") },
            "roles": roles, "vehicles": vehicles, "surface": surface, "construction": construction,
            "lead_in": { "length": length }, "detector": { "inductance_min_uh": least }, "slot": { "cover": cover, "depth": "75 mm" },
            "stock": [{ "sku": "TIB-1", "along_travel": item.0, "across_lane": item.1, "lead_in_length": length, "turns": item.2 }]
        })
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_json_is_answered(body in any_json()) {
        for (calculation, _) in all() {
            let answer = calculate(calculation, &body);
            prop_assert!(is_answered(&answer), "{} {body}: {:#}", answer.status, answer.body);
        }
    }

    #[test]
    fn any_change_of_a_sound_request_is_answered(at in any::<prop::sample::Index>(), value in any_json()) {
        for (calculation, request) in all() {
            let places = places(&request);
            let changed = with(&request, &at.get(&places).0, value.clone());
            let answer = calculate(calculation, &changed);
            prop_assert!(is_answered(&answer), "{} {changed}: {:#}", answer.status, answer.body);
        }
    }

    #[test]
    fn any_bytes_are_answered(body in prop::collection::vec(any::<u8>(), 0..60), at in any::<prop::sample::Index>()) {
        for (calculation, request) in all() {
            // Alone, and in the midst of a sound request.
            let mut spoilt = request.to_string().into_bytes();
            let start = at.index(spoilt.len());
            let end = spoilt.len().min(start + body.len());
            spoilt.splice(start..end, body.clone());
            for bytes in [body.clone(), spoilt] {
                let answer = post(&format!("/v1/{calculation}"), bytes.clone());
                prop_assert!(is_answered(&answer) || answer.status == 400, "{bytes:?}: {:#}", answer.body);
            }
        }
    }

    #[test]
    fn every_sound_loop_has_finite_figures(request in measured_loop()) {
        let answer = calculate("loop-characteristics", &request);
        prop_assert_eq!(answer.status, 200, "{}: {:#}", request, answer.body);
        prop_assert!(has_no_null(&answer.body));
        for name in ["loop_inductance_uh", "terminal_inductance_uh", "as_built_high_uh", "dc_resistance_ohm", "quality_factor"] {
            prop_assert!(answer.body[name].as_f64() > Some(0.0), "{}: {:#}", name, answer.body);
        }
        prop_assert!(answer.body["as_built_low_uh"].as_f64() < answer.body["as_built_high_uh"].as_f64());
    }

    #[test]
    fn every_vehicle_over_a_sound_loop_has_a_finite_profile(
        request in measured_loop(), class in any_of(&["passenger_car", "tractor_trailer", "small_motorcycle", "bicycle", "car_with_trailer", "forklift"]),
        offset in -300..300_i32, positions in 2..=60_u32,
    ) {
        let vehicle = json!({
            "loop": request["loop"], "lead_in": request["lead_in"], "vehicle": class,
            "offset_across": format!("{} ft", f64::from(offset) / 10.0), "positions": positions
        });
        let answer = calculate("vehicle-response", &vehicle);
        prop_assert_eq!(answer.status, 200, "{}: {:#}", vehicle, answer.body);
        prop_assert!(has_no_null(&answer.body));
        let profile = answer.body["profile"].as_array().unwrap();
        prop_assert_eq!(profile.len(), positions as usize);
        let peak = answer.body["peak_change_percent"].as_f64().unwrap();
        prop_assert!((0.0..100.0).contains(&peak), "{}: {}", vehicle, peak);
        let highest = profile.iter().map(|point| point["change_percent"].as_f64().unwrap()).fold(0.0, f64::max);
        prop_assert!(highest <= peak + 0.001, "{}: {} above the peak {}", vehicle, highest, peak);
    }

    #[test]
    fn every_sound_job_has_a_loop_for_each_role(job in job()) {
        let answer = calculate("loop-sizing", &job);
        prop_assert_eq!(answer.status, 200, "{}: {:#}", job, answer.body);
        prop_assert!(has_no_null(&answer.body));
        let loops = answer.body["loops"].as_array().unwrap();
        let asked = job["roles"].as_array().unwrap();
        // Several in the sweep of a leaf, one for every other role.
        let others = loops.iter().filter(|sized| sized["role"] != "between_leaves").count();
        prop_assert_eq!(others, asked.iter().filter(|role| **role != "between_leaves").count());
        prop_assert!(asked.iter().all(|role| loops.iter().any(|sized| sized["role"] == *role)));
        for sized in answer.body["loops"].as_array().unwrap() {
            prop_assert!(sized["across_lane"]["m"].as_f64() < answer.body["inputs"]["opening"]["width"]["m"].as_f64());
            prop_assert!(sized["edge_setback"]["m"].as_f64() > Some(0.0), "{}: {:#}", job, sized);
        }
    }

    #[test]
    fn feet_and_metres_measure_the_same(along in 100..20_000_u64, across in 100..20_000_u64, length in 0..100_000_u64, turns in 1..=20_u32) {
        // Hundredths of a foot are whole micrometres times 3048, so both texts are exact.
        let us = |hundredths: u64| format!("{}.{:02} ft", hundredths / 100, hundredths % 100);
        let metric = |hundredths: u64| format!("{}.{:06} m", hundredths * 3048 / 1_000_000, hundredths * 3048 % 1_000_000);
        let figures = |written: &dyn Fn(u64) -> String| {
            let request = json!({
                "loop": { "along_travel": written(along), "across_lane": written(across), "turns": turns },
                "lead_in": { "length": written(length) }
            });
            let mut body = calculate("loop-characteristics", &request).body;
            body.as_object_mut().unwrap().shift_remove("findings").unwrap();
            body
        };
        prop_assert_eq!(figures(&us), figures(&metric));
    }
}
