//! Cuts of lead-ins, jackets, quadrupoles, finishes and widths.

use serde_json::{Value, json};

use super::judgement::{finding, has};
use super::{close, codes, estimate, line, number, request, square};
use crate::harness::calculate;
use crate::requests::{with, without};

/// A wound loop in 1/4 x 2 in with 20 ft of lead-in in a saw cut of its own.
fn with_lead_in(slot: &Value) -> Value {
    let mut request = request(&square(), "hand_wound", &json!({ "width": "1/4 in", "depth": "2 in" }));
    request["loops"][0]["lead_in"] = json!({ "length": "20 ft", "in_slot": "20 ft" });
    request["lead_in_slot"] = slot.clone();
    request
}

/// The finding of a code that points into the slot of the lead-in.
fn of_lead_in<'a>(report: &'a Value, code: &str) -> &'a Value {
    let findings = report["findings"].as_array().unwrap();
    let is_it =
        |finding: &&Value| finding["code"] == code && finding["about"].as_str().unwrap().starts_with("#/lead_in_slot");
    findings.iter().find(is_it).unwrap_or_else(|| panic!("no {code}: {findings:#?}"))
}

#[test]
fn the_cut_of_a_lead_in_is_judged_like_that_of_a_loop() {
    let shallow = estimate(&with_lead_in(&json!({ "width": "3/8 in", "depth": "1/4 in", "cover": "1 in" })));
    let stop = of_lead_in(&shallow, "slot_too_shallow");
    assert_eq!((&stop["level"], &stop["subject"]), (&json!("stop"), &json!("one")));
    // 1 in of cover over two twisted wires of 0.130 in.
    assert_eq!(stop["figures"][0]["value"], 1.26);
    assert!(stop["message"].as_str().unwrap().contains("leaves it bare"), "{stop}");
    let deep = with_lead_in(&json!({ "depth": "5-1/2 in" }));
    let slab = with(&deep, "/slab", json!({ "thickness": "12 in", "reinforcement_depth": "5 in" }));
    let report = estimate(&slab);
    assert_eq!(of_lead_in(&report, "steel_near_cut")["level"], "stop");
    assert_eq!(of_lead_in(&report, "cut_deep_for_slab")["level"], "warning");
    assert!(of_lead_in(&report, "cut_deep_for_slab")["message"].as_str().unwrap().contains("4 in is enough"));
    assert!(of_lead_in(&report, "blade_too_small")["message"].as_str().unwrap().contains("Take one of 16 in"));
    assert_eq!(number(&report, "/saw_cut/passes"), 3.0, "the lead-in is the deepest cut");
    // One that only follows the loop's depth is not named a second time.
    let follows = with(&with_lead_in(&json!({})), "/slab", json!({ "reinforcement_depth": "2 in" }));
    assert_eq!(codes(&estimate(&follows), "stop"), ["steel_near_cut"]);
}

#[test]
fn cover_is_the_sealant_over_the_wire_and_the_finish_comes_on_top() {
    let mut request =
        request(&square(), "hand_wound", &json!({ "width": "1/4 in", "depth": "1-1/2 in", "cover": "1 in" }));
    request["sealant"] = json!({ "kind": "one_part_moisture_cure", "finish_below_surface": "1/8 in" });
    let report = estimate(&request);
    // 1 in + 3 x 0.130 in + 0.125 in.
    assert_eq!(finding(&report, "slot_too_shallow")["figures"][0]["value"], 1.515);
    assert_eq!(number(&report, "/loops/0/cover/inch"), 0.985);
    let free = estimate(&without(&request, "/slot/depth"));
    assert_eq!(number(&free, "/loops/0/slot_depth/inch"), 1.75);
    let bare = with(&with(&request, "/slot/depth", "1-1/8 in"), "/sealant/finish_below_surface", "1 in");
    let message = finding(&estimate(&bare), "slot_too_shallow")["message"].clone();
    assert!(message.as_str().unwrap().contains("leaves it bare"), "{message}");
}

#[test]
fn a_jacket_that_nobody_measured_is_assumed_and_asked_for_once() {
    let coil = json!({ "along_travel": "4 ft", "across_lane": "8 ft", "turns": 3 });
    let mut request = request(&coil, "preformed_saw_cut", &json!({ "width": "3/16 in", "depth": "1-1/4 in" }));
    let mut second = request["loops"][0].clone();
    second["label"] = json!("two");
    request["loops"].as_array_mut().unwrap().push(second);
    let report = estimate(&request);
    // What practice does: a jacketed loop in 3/16 x 1-1/4 in.
    assert_eq!(report["slot_fit"][0]["verdict"], "right");
    assert!(codes(&report, "stop").is_empty(), "{:#}", report["findings"]);
    assert_eq!(codes(&report, "note").iter().filter(|code| *code == "jacket_assumed").count(), 1);
    let about = json!("#/loops/0/loop/wire/over_jacket");
    let assumed = report["assumed"].as_array().unwrap().iter().find(|assumed| assumed["about"] == about).unwrap();
    assert_eq!(assumed["value"], "0.13 in wide, 0.39 in high");
    let measured = with(&request, "/loops/0/loop/wire", json!({ "over_jacket": "5/16 in" }));
    let measured = estimate(&with(
        &measured,
        "/loops/1/loop/wire",
        json!({ "over_jacket": "1/8 in", "over_insulation": "0.1 in" }),
    ));
    assert!(!has(&measured, "note", "jacket_assumed"));
    // A jacket does not give way: 5/16 in never goes into 3/16 in.
    assert_eq!(finding(&measured, "slot_too_narrow")["level"], "stop");
    // What nobody sent gives way to a thin jacket; what was sent does not.
    let thin = with(&request, "/loops/0/loop/wire", json!({ "over_jacket": "1/10 in" }));
    assert_eq!(number(&estimate(&thin), "/inputs/loops/0/loop/wire/over_insulation/inch"), 0.1);
    let thin = with(&thin, "/loops/0/loop/wire/over_insulation", "0.130 in");
    let faults = calculate("material-estimate", &thin).faults();
    assert_eq!(faults, [("#/loops/0/loop/wire/over_jacket".to_owned(), "contradiction".to_owned())]);
}

#[test]
fn the_pair_of_a_jacketed_loop_has_its_jacket() {
    let coil = with(&square(), "/wire", json!({ "over_jacket": "5/16 in" }));
    let volume = |lead_in: &str| {
        let mut request = request(&coil, "preformed_saw_cut", &json!({ "width": "3/8 in", "depth": "2 in" }));
        request["loops"][0]["lead_in"] = json!({ "length": lead_in, "spare": "0 ft" });
        request["loops"][0]["quantity"] = json!(50);
        number(&estimate(&request), "/volumes/wire/ml")
    };
    let pair = volume("30 ft") - volume("0 ft");
    // 50 x 30 ft of a disc of 5/16 in, in millilitres of 1/16.387 in3.
    close(pair, 50.0 * 360.0 * std::f64::consts::FRAC_PI_4 * 0.3125_f64.powi(2) * 16.387_064, 1e-3);
}

#[test]
fn an_agency_sets_the_width_that_nobody_gave() {
    let mut request = with_lead_in(&json!({}));
    request["slot"] = json!({});
    request["agency_minimum"] = json!({ "agency": "Tern Island Harbour Office", "slot_width": "3/8 in" });
    let report = estimate(&request);
    for (place, fit) in report["slot_fit"].as_array().unwrap().iter().enumerate() {
        assert_eq!((number(fit, "/width/inch"), &fit["verdict"]), (0.375, &json!("right")), "{place}");
    }
    assert_eq!(
        (&report["inputs"]["agency"], number(&report, "/inputs/agency_slot_width/inch")),
        (&json!("Tern Island Harbour Office"), 0.375)
    );
    // Tubed wire gets its room as well.
    let tubed =
        with(&without(&request, "/agency_minimum"), "/loops/0/loop/wire", json!({ "over_insulation": "1/4 in" }));
    assert_eq!(number(&estimate(&tubed), "/loops/0/slot_width/inch"), 0.3125);
    // The advice to a wide slot is never narrower than the agency allows.
    let wide = estimate(&with(&request, "/slot", json!({ "width": "1/2 in" })));
    assert!(wide["slot_fit"][0]["advice"].as_str().unwrap().contains("than 3/8 in would"), "{}", wide["slot_fit"][0]);
}

#[test]
fn a_wire_that_does_not_go_in_is_a_stop() {
    let coil = with(&square(), "/wire", json!({ "over_insulation": "1/4 in" }));
    let report = estimate(&request(&coil, "hand_wound", &json!({ "width": "3/16 in", "depth": "3 in" })));
    assert_eq!(finding(&report, "slot_too_narrow")["level"], "stop");
    assert_eq!(report["slot_fit"][0]["verdict"], "too_narrow");
    // A pair can still lie one wire over the other.
    let pair = estimate(&with_lead_in(&json!({ "width": "3/16 in" })));
    assert_eq!(of_lead_in(&pair, "slot_too_narrow")["level"], "warning");
}

#[test]
fn a_quadrupole_shares_the_rod_of_its_centre_slot_and_is_drilled_six_times() {
    let coil = json!({ "shape": "quadrupole", "along_travel": "6 ft", "across_lane": "6 ft", "turns": 2 });
    let mut request = request(&coil, "hand_wound", &json!({ "width": "1/4 in", "depth": "2 in" }));
    request["saw"] = json!({ "corner": "cored" });
    let report = estimate(&request);
    assert_eq!(number(&report, "/saw_cut/cored_corners"), 6.0);
    assert_eq!(number(&report, "/saw_cut/overruns/ft"), 0.0);
    // 30 ft of slot: 15 pieces, and one at each of six bends, 2 in each.
    close(line(&report, "backer_rod").unwrap()["exact"].as_f64().unwrap(), 21.0 * 2.0 / 12.0, 1e-3);
}

#[test]
fn no_blade_cuts_more_than_a_foot() {
    let slot = json!({ "width": "1/2 in", "cover": "11-1/2 in" });
    let coil = with(&square(), "/wire", json!({ "over_insulation": "1/4 in" }));
    let report = estimate(&request(&coil, "hand_wound", &slot));
    let stop = finding(&report, "blade_too_small");
    assert_eq!(stop["level"], "stop");
    assert!(stop["message"].as_str().unwrap().contains("12 in is enough"), "{stop}");
}
