//! What the estimate needs of a request, what it takes for the rest, and what it says once.

use std::time::Instant;

use serde_json::{Value, json};

use super::judgement::{finding, has};
use super::{codes, estimate, line, number, request, square};
use crate::harness::calculate;
use crate::requests::{with, without};

fn unused(report: &Value) -> Vec<&str> {
    report["unused"].as_array().unwrap().iter().map(|pointer| pointer.as_str().unwrap()).collect()
}

fn assumed<'a>(report: &'a Value, about: &str) -> Option<&'a str> {
    let entries = report["assumed"].as_array().unwrap();
    assert!(entries.iter().filter(|entry| entry["about"] == about).count() <= 1, "{about} stands twice");
    entries.iter().find(|entry| entry["about"] == about)?["value"].as_str()
}

#[test]
fn wire_is_listed_by_its_sort_and_each_sort_has_its_spools() {
    let mut request = request(&square(), "hand_wound", &json!({}));
    let mut thick = request["loops"][0].clone();
    thick["label"] = json!("thick");
    thick["loop"]["wire"] = json!({ "gauge": "12 AWG", "over_insulation": "0.15 in" });
    request["loops"].as_array_mut().unwrap().push(thick);
    request["wire_spools"] = json!([{ "length": "500 ft", "sku": "TIB-W500" }]);
    let report = estimate(&request);
    let lines: Vec<_> = report["items"].as_array().unwrap().iter().filter(|line| line["item"] == "loop_wire").collect();
    assert_eq!(lines.len(), 2);
    for (line, gauge) in lines.iter().zip(["14 AWG", "12 AWG"]) {
        assert_eq!(line["quantity"], 1);
        assert!(line["how"].as_str().unwrap().contains(gauge), "{line}");
    }
}

#[test]
fn the_greatest_job_is_packed_on_spools() {
    let one = request(&square(), "hand_wound", &json!({}));
    let mut greatest = one.clone();
    let loops = (0..50).map(|index| {
        let mut one = one["loops"][0].clone();
        one["label"] = json!(format!("loop {index}"));
        one["quantity"] = json!(200);
        one["lead_in"] = json!({ "length": format!("{} ft", 100 + 7 * index) });
        one
    });
    greatest["loops"] = loops.collect();
    let spool = |index: u32| json!({ "length": format!("{} ft", 90 * index), "sku": format!("{}", 90 * index) });
    greatest["wire_spools"] = (1..=10).map(spool).collect();
    let begin = Instant::now();
    let report = estimate(&greatest);
    println!("10 000 loops on ten sorts of spools: {:?}", begin.elapsed());
    let spools = report["items"].as_array().unwrap().iter().filter(|line| line["item"] == "loop_wire");
    let feet =
        |line: &Value| line["quantity"].as_f64().unwrap() * line["sku"].as_str().unwrap().parse::<f64>().unwrap();
    let bought: f64 = spools.map(feet).sum();
    let each = |index: u32| 3.0 * 21.657 + 2.0 * (f64::from(100 + 7 * index) + 3.0);
    let needed: f64 = (0..50).map(|index| 200.0 * each(index)).sum();
    assert!((1.0..1.25).contains(&(bought / needed)), "{bought} ft for {needed} ft");
}

#[test]
fn hot_sealant_asks_what_the_insulation_stands() {
    let mut request = request(&square(), "hand_wound", &json!({}));
    request["sealant"] =
        json!({ "kind": "hot_applied", "data_sheet": { "pour_temperature": "380 °F", "pot_life": "20 min" } });
    let unknown = estimate(&request);
    assert!(has(&unknown, "warning", "insulation_unknown") && has(&unknown, "warning", "rod_melts"));
    assert_eq!(unused(&unknown), ["#/sealant/data_sheet/pot_life"]);
    let rated = |rating: &str| estimate(&with(&request, "/loops/0/loop/wire", json!({ "insulation_rating": rating })));
    let (low, enough) = (rated("221 °F"), rated("392 °F"));
    let stop = finding(&low, "insulation_too_low");
    assert_eq!((&stop["level"], &stop["about"]), (&json!("stop"), &json!("#/loops/0/loop/wire/insulation_rating")));
    assert!(codes(&enough, "stop").is_empty() && !has(&enough, "warning", "insulation_unknown"));
    assert_eq!(unused(&enough), ["#/sealant/data_sheet/pot_life"]);
    let silent = estimate(&without(&request, "/sealant/data_sheet"));
    assert_eq!(assumed(&silent, "#/sealant/data_sheet/pour_temperature"), Some("387 °F"));
}

#[test]
fn a_stock_loop_reaches_with_its_spare_and_tells_its_own_lead_in() {
    let mut request = request(&square(), "preformed_saw_cut", &json!({}));
    request["loops"][0]["lead_in"] = json!({ "length": "30 ft", "spare": "3 ft" });
    let item = |sku: &str, lead_in: &str| json!({ "sku": sku, "along_travel": "6 ft", "across_lane": "6 ft", "lead_in_length": lead_in });
    request["stock"] = json!([item("A", "32 ft"), item("B", "50 ft")]);
    let report = estimate(&request);
    let line = line(&report, "preformed_loop").unwrap();
    assert_eq!(line["sku"], "B");
    assert!(line["how"].as_str().unwrap().contains("with 50 ft of lead-in, from stock"), "{line}");
}

#[test]
fn no_part_of_a_lead_in_is_lost() {
    let report = |construction: &str, surface: &str, lead_in: Value| {
        let mut request = request(&square(), construction, &json!({}));
        request["surface"] = json!(surface);
        request["loops"][0]["lead_in"] = lead_in;
        estimate(&request)
    };
    let sawn = report("hand_wound", "existing_asphalt", json!({ "length": "50 ft", "in_slot": "20 ft" }));
    assert_eq!(line(&sawn, "lead_in_conduit").unwrap()["quantity"], 30);
    assert_eq!(assumed(&sawn, "#/loops/0/lead_in/in_conduit"), Some("30 ft"));
    assert!(finding(&sawn, "not_estimated")["message"].as_str().unwrap().contains("hours to lay conduit"));
    let lost = report(
        "hand_wound",
        "existing_asphalt",
        json!({ "length": "50 ft", "in_slot": "20 ft", "in_conduit": "10 ft" }),
    );
    assert!(lost["findings"].to_string().contains("20 ft of the lead-in lies neither"), "{:#}", lost["findings"]);
    let buried = report("preformed_direct_burial", "pavers", json!({ "length": "50 ft", "in_slot": "20 ft" }));
    assert_eq!(line(&buried, "lead_in_conduit").unwrap()["quantity"], 50);
    assert_eq!(unused(&buried), ["#/loops/0/lead_in/in_slot"]);
}

#[test]
fn what_is_only_for_cuts_is_unused_where_nothing_is_cut() {
    let mut request = request(&square(), "preformed_direct_burial", &json!({}));
    request["surface"] = json!("gravel");
    let silent = estimate(&request);
    for cut in [
        "#/sealant",
        "#/saw",
        "#/backer_rod",
        "#/waste",
        "#/slab",
        "#/lead_in_slot",
        "#/productivity/s",
        "#/productivity/cl",
    ] {
        let entries = silent["assumed"].as_array().unwrap();
        let is_idle = |entry: &&Value| {
            let about = entry["about"].as_str().unwrap();
            about.starts_with(cut) && about != "#/productivity/set_up"
        };
        assert_eq!(entries.iter().find(is_idle), None, "{cut}");
    }
    request["sealant"] = json!({ "kind": "hot_applied" });
    request["saw"] = json!({ "blade_diameter": "14 in" });
    request["backer_rod"] = json!({ "form": "continuous" });
    request["waste_percent"] = json!(5);
    request["lead_in_slot"] = json!({ "width": "1/4 in" });
    request["agency_minimum"] = json!({ "agency": "Tern Island Harbour Office", "slot_width": "1/4 in" });
    request["slab"] = json!({ "thickness": "6 in" });
    request["productivity"] =
        json!({ "saw_speed": "3 ft/min", "cleaning_speed": "8 ft/min", "sealing_speed": "5 ft/min" });
    let report = estimate(&request);
    let mut named = unused(&report);
    named.sort_unstable();
    let expected = [
        "#/agency_minimum",
        "#/backer_rod",
        "#/lead_in_slot",
        "#/productivity/cleaning_speed",
        "#/productivity/saw_speed",
        "#/productivity/sealing_speed",
        "#/saw",
        "#/sealant",
        "#/slab",
        "#/waste_percent",
    ];
    assert_eq!(named, expected);
    assert!(!has(&report, "warning", "continuous_rod"));
    let wrong = calculate("material-estimate", &with(&request, "/saw/blade_diameter", "14"));
    assert_eq!(wrong.faults()[0].0, "#/saw/blade_diameter", "what is unused is sound all the same");
}

#[test]
fn a_surface_that_is_loose_has_nothing_to_blend_in_with() {
    let mut request = request(&square(), "hand_wound", &json!({}));
    request["surface"] = json!("gravel");
    let report = estimate(&request);
    assert!(line(&report, "blending_sand").is_none());
    assert!(!line(&report, "sealant_cartridge").unwrap()["how"].as_str().unwrap().contains("asphalt"));
}

#[test]
fn what_stands_in_for_a_common_slot_is_said_by_construction() {
    let mut request = request(&square(), "hand_wound", &json!({}));
    let mut jacketed = request["loops"][0].clone();
    jacketed["label"] = json!("jacketed");
    jacketed["construction"] = json!("preformed_saw_cut");
    request["loops"].as_array_mut().unwrap().push(jacketed);
    request["loops"][0]["lead_in"] = json!({ "length": "20 ft" });
    let report = estimate(&request);
    assert_eq!(assumed(&report, "#/slot/depth"), Some("1.5 in (hand_wound), 1.25 in (preformed_saw_cut)"));
    assert_eq!(assumed(&report, "#/slot/width"), Some("0.1875 in"));
    assert_eq!(assumed(&report, "#/lead_in_slot/width"), Some("0.3125 in"));
    assert_eq!(assumed(&report, "#/lead_in_slot/depth"), Some("1.5 in"));
    assert_eq!(assumed(&report, "#/saw/corner"), Some("diagonal"));
    assert_eq!(assumed(&report, "#/backer_rod/diameter"), Some("0.25 in or 0.375 in"));
}

#[test]
fn the_cover_of_a_loop_goes_before_that_of_its_slot() {
    let coil = with(&square(), "/cover", "1-1/4 in");
    let base = request(&coil, "hand_wound", &json!({ "depth": "2 in", "cover": "1 in" }));
    let report = estimate(&base);
    assert_eq!(unused(&report), ["#/slot/cover"]);
    assert_eq!(number(&report, "/inputs/loops/0/cover/inch"), 1.25);
    let deep = calculate("material-estimate", &with(&base, "/slot/depth", "1-1/4 in")).faults();
    assert_eq!(deep, [("#/loops/0/loop/cover".to_owned(), "contradiction".to_owned())]);
    // Another loop that has none of its own takes that of the slot.
    let mut two = base.clone();
    let mut other = two["loops"][0].clone();
    other["label"] = json!("other");
    two["loops"].as_array_mut().unwrap().push(without(&other, "/loop/cover"));
    assert!(unused(&estimate(&two)).is_empty());
}

#[test]
fn a_joint_asks_for_crossings_and_loose_wire_for_something_that_holds_it() {
    let mut request = request(&square(), "hand_wound", &json!({}));
    request["site_hazards"] = json!(["pavement_joint"]);
    request["backer_rod"] = json!({ "form": "none" });
    let report = estimate(&request);
    let about =
        |report: &Value| report["findings"].as_array().unwrap().iter().any(|finding| finding["about"] == "#/crossings");
    assert!(about(&report) && has(&report, "warning", "wire_loose"));
    assert!(!about(&estimate(&with(&request, "/crossings", 2))));
    let jacketed = estimate(&with(&request, "/loops/0/construction", "preformed_saw_cut"));
    assert!(!has(&jacketed, "warning", "wire_loose"));
}

#[test]
fn continuous_rod_that_is_laid_nowhere_is_not_judged() {
    let mut request = request(&square(), "preformed_saw_cut", &json!({}));
    request["backer_rod"] = json!({ "form": "continuous" });
    let report = estimate(&request);
    assert!(!has(&report, "warning", "continuous_rod") && has(&report, "note", "rod_not_needed"));
}
