//! Loops in the ground: are their turns found, and is none kept that the unit cannot tune to? Loops are drawn with sizes that are off, and
//! measured with meters of 5 %. Self-consistency, no validation: the loops follow the same physics as the answers.

use loopwright::calculation::Calculation;
use loopwright::calculation::existing_loop::{ExistingLoopReport, ExistingLoopRequest};
use loopwright::calculation::fault_finding::inductance_ladder;
use loopwright::physics::winding::{Winding, WindingShape};
use loopwright::practice::existing_loops::{ExistingLoopVerdict, TuningFit};
use serde_json::{Value, json};

use super::draw::Draw;

/// A loop that is there.
struct DrawnLoop {
    turns: usize,
    /// µH and ohm at the unit's terminals.
    there: (f64, f64),
    request: Value,
}

/// A loop of 1 to 8 turns with legs that are off by up to 10 %, over steel that leaves a share of its inductance.
fn drawn(draw: &mut Draw, steel: Option<f64>, sizes_off: f64) -> DrawnLoop {
    let turns = 1 + draw.weighted(&[1.0; 8]);
    let (along, across) = (draw.uniform(4.0, 8.0), draw.uniform(5.0, 14.0));
    let mut off = |leg: f64| leg * draw.uniform(1.0 - sizes_off, 1.0 + sizes_off) * 0.3048;
    let (true_along, true_across) = (off(along), off(across));
    // 14 AWG mostly, some 16 and 12: radius in mm, ohm per 1000 ft, over insulation in inch.
    let (radius, per_kft, over) =
        [(0.8139, 2.525, 0.130), (0.6454, 4.016, 0.117), (1.0264, 1.588, 0.147)][draw.weighted(&[0.7, 0.2, 0.1])];
    let winding = Winding {
        shape: WindingShape::Rectangle,
        along: true_along,
        across: true_across,
        corner_cut: 0.0,
        turns: 8,
        pitch: over * 0.0254,
        wire_radius: radius * 1e-3,
    };
    let coil = inductance_ladder(&winding, 0.23, 8)[turns] * 1e6 * steel.unwrap_or(1.0) * draw.normal(1.0, 0.02);
    let lead_in = draw.uniform(20.0, 120.0).round();
    let wire = turns as f64 * winding.turn_length() / 0.3048 * per_kft * 1e-3;
    let there = (coil + 0.22 * lead_in, wire * draw.uniform(1.0, 1.05) + 2.0 * lead_in * 2.525e-3);
    let mut meter = |value: f64| value * draw.uniform(0.95, 1.05);
    let request = json!({
        "along_travel": format!("{along:.2} ft"), "across_lane": format!("{across:.2} ft"),
        "lead_in": { "length": format!("{lead_in} ft") },
        "readings": { "inductance_uh": meter(there.0), "resistance_ohm": meter(there.1), "insulation_megohm": 400 },
        "vehicles": ["passenger_car"]
    });
    DrawnLoop { turns, there, request }
}

fn report(request: &Value) -> ExistingLoopReport {
    let request: ExistingLoopRequest = serde_json::from_value(request.clone()).unwrap();
    request.answer().unwrap()
}

#[test]
fn of_a_thousand_loops_in_the_ground_the_turns_are_found() {
    let mut draw = Draw(20_261_128);
    let mut first = [0, 0];
    for _ in 0..1000 {
        let mut one = drawn(&mut draw, None, 0.1);
        // Whether somebody knows that there is no steel, or nobody knows.
        for (place, told) in [Some(false), None].into_iter().enumerate() {
            if let Some(told) = told {
                one.request["over_steel"] = json!(told);
            } else {
                one.request.as_object_mut().unwrap().remove("over_steel");
            }
            first[place] += u32::from(report(&one.request).candidates[0].turns == one.turns as u32);
        }
    }
    println!("no steel: first {first:?} of 1000, told and not told");
    assert!(first.iter().all(|first| *first >= 900), "{first:?}");
}

#[test]
fn over_steel_the_turns_are_among_the_first_two_and_the_loop_is_kept_with_care_at_most() {
    let mut draw = Draw(20_261_129);
    let mut among = 0;
    for _ in 0..1000 {
        let left = draw.uniform(0.65, 0.97);
        let mut one = drawn(&mut draw, Some(left), 0.1);
        one.request["over_steel"] = json!(true);
        let report = report(&one.request);
        assert!(report.candidates.len() >= 2 && report.verdict != ExistingLoopVerdict::Keep);
        among += u32::from(report.candidates.iter().take(2).any(|candidate| candidate.turns == one.turns as u32));
    }
    println!("over steel: among the first two in {among} of 1000");
    assert!(among >= 900, "{among}");
}

#[test]
fn no_loop_is_kept_that_the_unit_cannot_tune_to() {
    let mut draw = Draw(20_261_130);
    let (mut kept, mut untunable) = (0, 0);
    for _ in 0..1000 {
        let mut one = drawn(&mut draw, None, 0.1);
        let (least, most) = (draw.logarithmic(20.0, 200.0), draw.logarithmic(200.0, 1500.0));
        let needed = draw.uniform(3.0, 25.0);
        one.request["detector"] =
            json!({ "inductance_min_uh": least, "inductance_max_uh": most, "quality_factor_min": needed });
        // Resistance to direct current bounds the quality factor.
        let quality = std::f64::consts::TAU * 50e3 * one.there.0 * 1e-6 / one.there.1;
        let tunes = (least..=most).contains(&one.there.0) && quality >= needed;
        let report = report(&one.request);
        let is_kept = report.verdict == ExistingLoopVerdict::Keep;
        assert!(
            tunes || !is_kept,
            "{:?} µH and Q {quality} in {least} to {most}, {needed}: {}",
            one.there,
            one.request
        );
        assert!(!is_kept || report.tuning.fit == TuningFit::Tunes);
        kept += u32::from(is_kept);
        untunable += u32::from(!tunes);
    }
    println!("{kept} kept, {untunable} that the unit cannot tune to");
    assert!(kept > 100 && untunable > 100, "the study shows nothing: {kept} {untunable}");
}
