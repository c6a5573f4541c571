//! What the estimate says of slots, slabs, rod and constructions.

use serde_json::{Value, json};

use super::{codes, estimate, line, number, request, square};
use crate::requests::{with, without};

pub fn finding<'a>(report: &'a Value, code: &str) -> &'a Value {
    let findings = report["findings"].as_array().unwrap();
    findings.iter().find(|finding| finding["code"] == code).unwrap_or_else(|| panic!("no {code}: {findings:#?}"))
}

pub fn has(report: &Value, level: &str, code: &str) -> bool {
    codes(report, level).contains(&code.to_owned())
}

#[test]
fn ordinary_wire_finds_three_widths_as_practice_does() {
    for (width, verdict) in [("1/8 in", "too_narrow"), ("3/16 in", "right"), ("1/4 in", "generous")] {
        let report = estimate(&request(&square(), "hand_wound", &json!({ "width": width, "depth": "1-1/2 in" })));
        assert_eq!(report["slot_fit"][0]["verdict"], verdict, "{width}");
    }
    let generous = estimate(&request(&square(), "hand_wound", &json!({ "width": "1/4 in", "depth": "1-1/2 in" })));
    let advice = generous["slot_fit"][0]["advice"].as_str().unwrap();
    assert!(advice.contains("one third more slot"), "{advice}");
    assert!(has(&generous, "note", "slot_generous"));
}

#[test]
fn tubed_wire_needs_what_its_tube_needs() {
    let coil = with(&square(), "/wire", json!({ "over_insulation": "1/4 in" }));
    let fit = |width: &str| {
        let slot = json!({ "width": width, "depth": "2-1/2 in" });
        estimate(&request(&coil, "hand_wound", &slot))["slot_fit"][0]["verdict"].as_str().unwrap().to_owned()
    };
    assert_eq!(fit("1/4 in"), "too_narrow");
    // A clearance of 1/16 in and of 1/8 in.
    assert_eq!(fit("5/16 in"), "right");
    assert_eq!(fit("3/8 in"), "generous");
}

#[test]
fn a_named_agency_minimum_goes_first() {
    let mut request = request(&square(), "hand_wound", &json!({ "width": "3/16 in", "depth": "1-1/2 in" }));
    request["agency_minimum"] = json!({ "agency": "Tern Island Harbour Office", "slot_width": "1/4 in" });
    let narrow = estimate(&request);
    assert_eq!(narrow["slot_fit"][0]["verdict"], "too_narrow");
    assert!(
        narrow["slot_fit"][0]["advice"].as_str().unwrap().starts_with("Tern Island Harbour Office asks for 1/4 in")
    );
    let wide = estimate(&with(&request, "/slot/width", "1/4 in"));
    assert_eq!(wide["slot_fit"][0]["verdict"], "right");
}

#[test]
fn a_twisted_pair_needs_two_wires_and_a_jacketed_one_its_loops_slot() {
    let mut request = request(&square(), "hand_wound", &json!({ "width": "3/16 in", "depth": "1-1/2 in" }));
    request["loops"][0]["lead_in"] = json!({ "length": "20 ft" });
    let wound = estimate(&request);
    // 0.260 in and 1/32 in of room: the next blade is 5/16 in.
    assert_eq!(number(&wound, "/loops/0/lead_in_slot_width/inch"), 0.3125);
    assert_eq!(wound["slot_fit"][1]["place"], "lead_in");
    request["lead_in_slot"] = json!({ "width": "3/16 in" });
    assert_eq!(estimate(&request)["slot_fit"][1]["verdict"], "too_narrow");
    let jacketed = estimate(&without(&with(&request, "/loops/0/construction", "preformed_saw_cut"), "/lead_in_slot"));
    assert_eq!(number(&jacketed, "/loops/0/lead_in_slot_width/inch"), 0.1875);
}

#[test]
fn a_slot_too_shallow_for_its_cover_is_a_stop_with_the_depth_that_would_do() {
    let report = estimate(&request(&square(), "hand_wound", &json!({ "depth": "1-1/4 in", "cover": "1 in" })));
    let stop = finding(&report, "slot_too_shallow");
    assert_eq!(stop["level"], "stop");
    // 1 in and three wires of 0.130 in.
    assert_eq!(stop["figures"][0]["value"], 1.39);
    assert!(stop["message"].as_str().unwrap().contains("1-7/16 in deep"));
    // Continuous rod takes room as well: 1/4 in, pressed into 3/16 in, is 0.262 in high.
    let mut rod = request(&square(), "hand_wound", &json!({ "depth": "1-1/2 in", "cover": "1 in" }));
    rod["backer_rod"] = json!({ "form": "continuous" });
    let needed = finding(&estimate(&rod), "slot_too_shallow")["figures"][0]["value"].as_f64().unwrap();
    assert!((needed - 1.652).abs() < 1e-3, "{needed}");
    // Without a depth of its own the slot is cut as deep as it must be.
    let report = estimate(&with(&without(&rod, "/slot/depth"), "/backer_rod/form", "pieces"));
    assert_eq!(number(&report, "/loops/0/slot_depth/inch"), 1.5);
}

#[test]
fn a_cut_spares_the_slab_and_its_steel() {
    let cut = |slab: Value| {
        let mut request = request(&square(), "hand_wound", &json!({ "width": "1/4 in", "depth": "2 in" }));
        request["surface"] = json!("existing_concrete");
        request["slab"] = slab;
        estimate(&request)
    };
    assert!(codes(&cut(json!({ "thickness": "6 in" })), "warning").is_empty());
    assert!(has(&cut(json!({ "thickness": "5-7/8 in" })), "warning", "cut_deep_for_slab"));
    assert!(has(&cut(json!({ "thickness": "2 in" })), "stop", "cut_deep_for_slab"));
    assert!(!has(&cut(json!({ "reinforcement_depth": "2-1/2 in" })), "stop", "steel_near_cut"));
    assert!(has(&cut(json!({ "reinforcement_depth": "2-7/16 in" })), "stop", "steel_near_cut"));
    assert!(has(&cut(json!({ "is_suspended": true })), "stop", "tensioned_deck"));
    let approved = cut(json!({ "is_suspended": true, "cut_approved": true }));
    assert!(has(&approved, "warning", "tensioned_deck") && !has(&approved, "stop", "tensioned_deck"));
}

#[test]
fn a_deck_is_not_cut_without_a_scan_and_the_engineer() {
    for hazard in ["post_tensioned_slab", "bridge_deck"] {
        let mut request = request(&square(), "hand_wound", &json!({}));
        request["site_hazards"] = json!([hazard]);
        assert!(has(&estimate(&request), "stop", "tensioned_deck"), "{hazard}");
        request["slab"] = json!({ "cut_approved": true });
        let report = estimate(&request);
        assert!(!has(&report, "stop", "tensioned_deck") && has(&report, "warning", "tensioned_deck"), "{hazard}");
        let cautions = report["cautions"].to_string();
        assert!(cautions.contains("tensioned_slab"), "{cautions}");
    }
}

#[test]
fn continuous_rod_is_never_right_and_where_it_freezes_a_stop() {
    let mut request = request(&square(), "hand_wound", &json!({ "depth": "2 in" }));
    request["backer_rod"] = json!({ "form": "continuous" });
    assert!(has(&estimate(&request), "warning", "continuous_rod"));
    request["site_hazards"] = json!(["freezing_climate"]);
    assert!(has(&estimate(&request), "stop", "continuous_rod"));
    let jacketed = estimate(&with(&request, "/loops/0/construction", "preformed_saw_cut"));
    assert!(has(&jacketed, "note", "rod_not_needed") && line(&jacketed, "backer_rod").is_none());
}

#[test]
fn a_blade_must_reach_and_may_not_leave_the_slab() {
    let mut request = request(&without(&square(), "/corner_cut"), "hand_wound", &json!({ "depth": "3 in" }));
    request["saw"] = json!({ "blade_diameter": "9 in" });
    let report = estimate(&request);
    let message = finding(&report, "blade_too_small")["message"].as_str().unwrap();
    assert!(message.contains("Take one of 12 in"), "{message}");
    // 12 in, 3 in deep: 5.196 in; the estimate counts with the blade that is loaded.
    assert_eq!(number(&report, "/loops/0/blade_diameter/inch"), 12.0);
    super::close(number(&report, "/loops/0/run_out/inch"), 5.196, 1e-3);
    assert!(line(&report, "saw_blade").unwrap()["how"].as_str().unwrap().contains("12 in across"));
    request["saw"] = json!({ "blade_diameter": "14 in" });
    request["slab"] = json!({ "edge_distance": "4 in" });
    // 14 in, 3 in deep: 5.745 in.
    let report = estimate(&request);
    assert!(has(&report, "warning", "overrun_leaves_slab"));
    request["slab"] = json!({ "edge_distance": "6 in" });
    assert!(!has(&estimate(&request), "warning", "overrun_leaves_slab"));
}

#[test]
fn what_a_surface_allows_is_compared() {
    let compared = |surface: &str, construction: &str| {
        let mut request = request(&square(), construction, &json!({}));
        request["surface"] = json!(surface);
        let report = estimate(&request);
        let rows = report["comparison"].as_array().unwrap().clone();
        rows.into_iter().map(|row| (row["construction"].as_str().unwrap().to_owned(), row)).collect::<Vec<_>>()
    };
    let names = |rows: &[(String, Value)]| rows.iter().map(|(name, _)| name.clone()).collect::<Vec<_>>();
    let existing = compared("existing_asphalt", "hand_wound");
    assert_eq!(names(&existing), ["hand_wound", "preformed_saw_cut"]);
    assert_eq!(existing[0].1["is_asked"], true);
    assert_eq!(names(&compared("new_concrete", "preformed_direct_burial")).len(), 3);
    let gravel = compared("gravel", "preformed_direct_burial");
    assert_eq!(names(&gravel), ["preformed_direct_burial"]);
    assert_eq!(number(&gravel[0].1, "/saw_cut/m"), 0.0);
    assert_eq!(number(&gravel[0].1, "/sealant_with_waste/ml"), 0.0);
    // Each row is what the estimate of that construction itself says.
    let wound = estimate(&request(&square(), "hand_wound", &json!({})));
    let jacketed = estimate(&request(&square(), "preformed_saw_cut", &json!({})));
    for report in [&wound, &jacketed] {
        let row = report["comparison"].as_array().unwrap().iter().find(|row| row["is_asked"] == true).unwrap();
        assert_eq!(row["saw_cut"], report["saw_cut"]["total"]);
        assert_eq!(row["hours"], report["labour"]["total"]);
        assert_eq!(row["sealant_with_waste"], report["volumes"]["sealant_with_waste"]);
    }
    assert_eq!(wound["comparison"][1]["hours"], jacketed["labour"]["total"]);
}

#[test]
fn a_buried_loop_has_no_cut_and_its_lead_in_lies_in_conduit() {
    let mut request = request(&square(), "preformed_direct_burial", &json!({ "width": "1/4 in" }));
    request["surface"] = json!("pavers");
    request["loops"][0]["lead_in"] = json!({ "length": "33 ft" });
    let report = estimate(&request);
    assert_eq!(number(&report, "/saw_cut/total/m"), 0.0);
    assert_eq!(line(&report, "lead_in_conduit").unwrap()["quantity"], 33);
    assert!(line(&report, "sealant_cartridge").is_none() && line(&report, "saw_blade").is_none());
    assert!(report["unused"].as_array().unwrap().contains(&json!("#/slot/width")), "{:#}", report["unused"]);
    assert!(has(&report, "note", "not_estimated"));
    let sawn = with(&request, "/loops/0/construction", "hand_wound");
    assert!(has(&estimate(&sawn), "stop", "wrong_construction"));
}

#[test]
fn the_line_items_fit_the_job() {
    let mut request = request(&square(), "hand_wound", &json!({}));
    request["crossings"] = json!(2);
    request["sealant"] = json!({ "kind": "two_part_reactive" });
    let asphalt = estimate(&request);
    assert_eq!(line(&asphalt, "joint_sleeve").unwrap()["quantity"], 2);
    assert_eq!(line(&asphalt, "mixing_nozzle").unwrap()["quantity"], 1);
    assert_eq!(line(&asphalt, "termination").unwrap()["quantity"], 2);
    assert!(line(&asphalt, "sealant_cartridge").unwrap()["how"].as_str().unwrap().contains("black"));
    let concrete = with(&with(&request, "/surface", "existing_concrete"), "/sealant/kind", "hot_applied");
    let concrete = estimate(&concrete);
    let hot = line(&concrete, "hot_sealant").unwrap();
    assert!(hot["how"].as_str().unwrap().contains("grey") && hot["unit"] == "gal", "{hot}");
    assert!(line(&concrete, "mixing_nozzle").is_none() && concrete["inputs"].get("cartridge").is_none());
}

#[test]
fn the_loop_on_the_shelf_is_taken_with_the_shortest_lead_in_that_reaches() {
    let mut request = request(&square(), "preformed_saw_cut", &json!({}));
    request["loops"][0]["lead_in"] = json!({ "length": "30 ft" });
    let item = |sku: &str, lead_in: &str, turns: u32| json!({ "sku": sku, "along_travel": "6 ft", "across_lane": "6 ft", "lead_in_length": lead_in, "turns": turns });
    request["stock"] =
        json!([item("A", "100 ft", 3), item("B", "50 ft", 3), item("C", "20 ft", 3), item("D", "40 ft", 4)]);
    let report = estimate(&request);
    assert_eq!(line(&report, "preformed_loop").unwrap()["sku"], "B");
    let missing = estimate(&with(&request, "/loops/0/loop/turns", 5));
    assert!(line(&missing, "preformed_loop").unwrap().get("sku").is_none() && has(&missing, "note", "no_stock_fits"));
}

#[test]
fn contradictions_are_refused_by_name() {
    let base = request(&square(), "hand_wound", &json!({}));
    let faults = |request: &Value| crate::harness::calculate("material-estimate", request).faults();
    let at = |pointer: &str, code: &str| vec![(pointer.to_owned(), code.to_owned())];
    let cored = with(&base, "/saw", json!({ "corner": "cored" }));
    assert_eq!(faults(&cored), at("#/saw/corner", "contradiction"));
    let mut twice = base.clone();
    let second = base["loops"][0].clone();
    twice["loops"].as_array_mut().unwrap().push(second);
    assert_eq!(faults(&twice), at("#/loops/1/label", "contradiction"));
    let deep = with(&base, "/slot", json!({ "depth": "1 in", "cover": "1 in" }));
    assert_eq!(faults(&deep), at("#/slot/cover", "contradiction"));
    assert_eq!(faults(&with(&base, "/loops", json!([]))), at("#/loops", "list_size"));
}
