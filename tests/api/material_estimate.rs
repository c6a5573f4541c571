//! `material-estimate` through the front door: cuts, volumes, slots, wire.

use serde_json::{Value, json};

use super::harness::calculate;
use super::requests::{with, without};

mod cuts;
mod judgement;
mod laws;
mod money;
mod needs;

/// One loop in a slot, without a lead-in.
fn request(coil: &Value, construction: &str, slot: &Value) -> Value {
    json!({
        "loops": [{
            "label": "one", "loop": coil, "construction": construction, "lead_in": { "length": "0 ft", "spare": "0 ft" }
        }],
        "slot": slot
    })
}

fn square() -> Value {
    json!({ "along_travel": "6 ft", "across_lane": "6 ft", "turns": 3, "corner_cut": "12 in" })
}

fn estimate(request: &Value) -> Value {
    let answer = calculate("material-estimate", request);
    assert_eq!(answer.status, 200, "{:#}", answer.body);
    answer.body
}

fn number(report: &Value, pointer: &str) -> f64 {
    report.pointer(pointer).and_then(Value::as_f64).unwrap_or_else(|| panic!("no {pointer}: {report:#}"))
}

/// The line of an item.
fn line<'a>(report: &'a Value, item: &str) -> Option<&'a Value> {
    report["items"].as_array().unwrap().iter().find(|line| line["item"] == item)
}

/// All lines of an item together.
fn exact(report: &Value, item: &str) -> f64 {
    let lines = report["items"].as_array().unwrap().iter().filter(|line| line["item"] == item);
    lines.map(|line| line["exact"].as_f64().unwrap()).sum()
}

fn codes(report: &Value, level: &str) -> Vec<String> {
    let findings = report["findings"].as_array().unwrap().iter().filter(|finding| finding["level"] == level);
    findings.map(|finding| finding["code"].as_str().unwrap().to_owned()).collect()
}

fn close(found: f64, expected: f64, share: f64) {
    assert!((found / expected - 1.0).abs() <= share, "{found} is not {expected}");
}

#[test]
fn v01_a_hundred_feet_of_slot_by_geometry() {
    // A 25 x 25 ft loop with drilled corners too small to matter has 100 ft of cut and no overruns. Source: geometry.
    let coil = json!({ "along_travel": "25 ft", "across_lane": "25 ft", "turns": 1 });
    let slot = json!({ "width": "1/4 in", "depth": "1-1/2 in" });
    let mut request = request(&coil, "hand_wound", &slot);
    request["saw"] = json!({ "corner": "cored", "core_diameter": "1/2 in" });
    let report = estimate(&request);
    assert_eq!(number(&report, "/saw_cut/total/ft"), 100.0);
    let holes = 4.0 * std::f64::consts::FRAC_PI_4 * 0.25 * 1.5;
    // 450 in3, 1.948 gal, in fluid ounces of 1.8046875 in3.
    close(number(&report, "/volumes/slot/fl_oz"), (450.0 + holes) / 1.804_687_5, 1e-3);
    close(450.0 / 231.0, 1.948, 1e-3);
}

#[test]
fn v02_and_v03_corner_cuts_and_run_outs_checked_by_hand() {
    let slot = json!({ "width": "1/4 in", "depth": "2 in", "cover": "1 in" });
    let mut request = request(&square(), "hand_wound", &slot);
    request["saw"] = json!({ "blade_diameter": "14 in", "corner": "diagonal_full" });
    let report = estimate(&request);
    // Each diagonal runs on at both of its ends; the sides, cut full, have their full depth where the diagonals meet them.
    assert_eq!(number(&report, "/saw_cut/cut_ends"), 8.0);
    close(number(&report, "/loops/0/run_out/inch"), 4.899, 1e-4);
    assert_eq!(number(&report, "/saw_cut/straight/ft"), 24.0);
    close(number(&report, "/saw_cut/diagonals/ft"), 5.657, 1e-3);
    close(number(&report, "/saw_cut/straight/ft") + number(&report, "/saw_cut/diagonals/ft"), 29.66, 1e-3);
    close(number(&report, "/saw_cut/total/ft"), 24.0 + 5.657 + 8.0 * 4.899 / 12.0, 1e-3);
    assert!(codes(&report, "note").contains(&"corner_stands_alone".to_owned()));
    // 21.66 ft of wire each turn.
    close(number(&report, "/loops/0/wire_length/ft") / 3.0, 21.66, 1e-3);
}

#[test]
fn sides_end_at_the_diagonal_and_run_on_as_it_does() {
    let slot = json!({ "width": "1/4 in", "depth": "2 in", "cover": "1 in" });
    let cut = |corner: &str, blade: &str| {
        let mut request = request(&square(), "hand_wound", &slot);
        request["saw"] = json!({ "blade_diameter": blade, "corner": corner });
        estimate(&request)
    };
    let report = cut("diagonal", "14 in");
    // Four sides of 6 ft less 1 ft at each end, four diagonals of 1.414 ft, and sixteen ends that run 4.899 in on.
    assert_eq!(number(&report, "/saw_cut/straight/ft"), 16.0);
    assert_eq!(number(&report, "/saw_cut/cut_ends"), 16.0);
    close(number(&report, "/saw_cut/total/ft"), 16.0 + 5.657 + 16.0 * 4.899 / 12.0, 1e-3);
    assert!(!codes(&report, "note").contains(&"corner_stands_alone".to_owned()));
    // A 20 in blade runs 6 in on at 2 in: with a corner cut of 6 in both ways are one.
    let mut short = request(&with(&square(), "/corner_cut", "6 in"), "hand_wound", &slot);
    short["saw"] = json!({ "blade_diameter": "20 in", "corner": "diagonal" });
    let (first, second) = (estimate(&short), estimate(&with(&short, "/saw/corner", "diagonal_full")));
    close(number(&first, "/saw_cut/total/ft"), number(&second, "/saw_cut/total/ft"), 1e-4);
    assert!(codes(&first, "note").contains(&"corner_stands_alone".to_owned()));
    // Hours follow the cut: 8 ft/min of cleaning.
    let cleaning = |report: &Value| {
        let steps = report["labour"]["steps"].as_array().unwrap();
        steps.iter().find(|step| step["step"] == "clean_and_dry").unwrap()["time"]["min"].as_f64().unwrap()
    };
    close(cleaning(&report), number(&report, "/saw_cut/total/ft") / 8.0, 1e-2);
}

#[test]
fn square_corners_run_on_at_eight_ends_and_short_diagonals_partly() {
    let slot = json!({ "width": "1/4 in", "depth": "2 in", "cover": "1 in" });
    let square_corners = request(&without(&square(), "/corner_cut"), "hand_wound", &slot);
    let report = estimate(&square_corners);
    assert_eq!(number(&report, "/saw_cut/cut_ends"), 8.0);
    close(number(&report, "/saw_cut/overruns/ft"), 8.0 * 4.899 / 12.0, 2e-3);
    // A leg of 3 in is shorter than the run-out: the sides run on by the rest of it, 1.899 in at each of eight ends.
    let mut short = request(&with(&square(), "/corner_cut", "3 in"), "hand_wound", &slot);
    short["saw"] = json!({ "corner": "diagonal_full" });
    let short = estimate(&short);
    assert_eq!(number(&short, "/saw_cut/cut_ends"), 16.0);
    close(number(&short, "/saw_cut/overruns/ft"), 8.0 * (4.899 + 1.899) / 12.0, 2e-3);
    let mut cored = square_corners;
    cored["saw"] = json!({ "corner": "cored" });
    let cored = estimate(&cored);
    assert_eq!(number(&cored, "/saw_cut/overruns/ft"), 0.0);
    assert_eq!(number(&cored, "/saw_cut/cored_corners"), 4.0);
}

#[test]
fn v04_one_cartridge_seals_about_twenty_feet_of_a_preformed_loop() {
    let coil = json!({ "along_travel": "4 ft", "across_lane": "8 ft", "turns": 3 });
    let slot = json!({ "width": "3/16 in", "depth": "1-1/4 in" });
    for cartridge in ["28 fl oz", "29 fl oz"] {
        let mut request = request(&coil, "preformed_saw_cut", &slot);
        request["saw"] = json!({ "corner": "cored", "core_diameter": "1/2 in" });
        request["sealant"] = json!({ "kind": "one_part_moisture_cure", "cartridge": cartridge });
        let report = estimate(&request);
        let cartridges = line(&report, "sealant_cartridge").unwrap();
        assert_eq!(cartridges["quantity"], 2, "{cartridge}");
        // 24 ft of loop; common practice has 20 ft for each cartridge.
        close(24.0 / cartridges["exact"].as_f64().unwrap(), 20.0, 0.1);
    }
}

#[test]
fn v05_a_quarter_inch_takes_one_third_more_slot() {
    let volume = |width: &str| {
        let slot = json!({ "width": width, "depth": "1-1/2 in" });
        let mut request = request(&without(&square(), "/corner_cut"), "hand_wound", &slot);
        request["loops"][0]["quantity"] = json!(200);
        number(&estimate(&request), "/volumes/slot/ml")
    };
    close(volume("1/4 in") / volume("3/16 in"), 4.0 / 3.0, 1e-4);
}

#[test]
fn what_is_cut_is_wire_rod_sealant_and_what_stays_open() {
    let mut request = request(&square(), "hand_wound", &json!({ "width": "1/4 in", "depth": "2 in" }));
    request["loops"][0]["lead_in"] = json!({ "length": "40 ft", "in_slot": "30 ft", "in_conduit": "10 ft" });
    request["loops"][0]["quantity"] = json!(7);
    request["sealant"] = json!({ "kind": "one_part_moisture_cure", "finish_below_surface": "1/8 in" });
    let report = estimate(&request);
    let ml = |name: &str| number(&report, &format!("/volumes/{name}/ml"));
    let parts = ml("wire") + ml("rod") + ml("left_open") + ml("sealant_net");
    assert!((ml("slot") - parts).abs() <= 2.0, "{} and {parts}", ml("slot"));
    close(ml("sealant_with_waste"), 1.1 * ml("sealant_net"), 1e-3);
    // Pieces of 2 in every 2 ft and at eight bends of 21.66 ft, and every 2 ft of 30 ft: (11 + 8 + 15) x 2 in.
    close(exact(&report, "backer_rod"), 7.0 * 34.0 * 2.0 / 12.0, 1e-3);
    // The pair's slot is wider, so its rod is thicker.
    let rods = report["items"].as_array().unwrap().iter().filter(|line| line["item"] == "backer_rod");
    let how: Vec<_> = rods.map(|line| line["how"].as_str().unwrap()).collect();
    assert!(how.len() == 2 && how[0].contains("5/16 in across") && how[1].contains("3/8 in across"), "{how:?}");
}

#[test]
fn without_waste_net_is_what_is_loaded() {
    let mut request = request(&square(), "hand_wound", &json!({}));
    request["waste_percent"] = json!(0);
    let report = estimate(&request);
    assert_eq!(report["volumes"]["sealant_net"], report["volumes"]["sealant_with_waste"]);
}

#[test]
fn two_alike_are_twice_one_before_packs() {
    let one = request(&square(), "hand_wound", &json!({ "width": "1/4 in", "depth": "2 in" }));
    let two = with(&one, "/loops/0/quantity", 2);
    let mut apart = one.clone();
    let mut second = one["loops"][0].clone();
    second["label"] = json!("other");
    apart["loops"].as_array_mut().unwrap().push(second);
    let (one, two, apart) = (estimate(&one), estimate(&two), estimate(&apart));
    for item in ["sealant_cartridge", "loop_wire", "backer_rod", "termination"] {
        let exact = |report: &Value| exact(report, item);
        assert!((exact(&two) - 2.0 * exact(&one)).abs() <= 0.002, "{item}");
        assert_eq!(exact(&two), exact(&apart), "{item}");
    }
    for pointer in ["/saw_cut/total/m", "/volumes/sealant_net/ml"] {
        close(number(&two, pointer), 2.0 * number(&one, pointer), 1e-3);
        assert_eq!(number(&two, pointer), number(&apart, pointer));
    }
}

#[test]
fn the_same_job_in_feet_and_in_metres_takes_the_same() {
    let us = json!({
        "loops": [{
            "label": "one", "construction": "hand_wound", "lead_in": { "length": "40 ft", "in_slot": "30 ft", "spare": "3 ft" },
            "loop": {
                "along_travel": "6 ft", "across_lane": "20 ft", "turns": 2, "corner_cut": "12 in",
                "wire": { "over_insulation": "0.130 in" }
            }
        }],
        "slot": { "width": "1/4 in", "depth": "2 in", "cover": "1 in" },
        "lead_in_slot": { "width": "3/8 in", "depth": "2 in" }, "saw": { "blade_diameter": "14 in" },
        "backer_rod": { "form": "pieces", "piece_length": "2 in", "spacing": "2 ft", "diameter": "1/4 in" },
        "sealant": { "kind": "two_part_reactive", "cartridge": "29 fl oz" }
    });
    let metric = json!({
        "loops": [{
            "label": "one", "construction": "hand_wound",
            "lead_in": { "length": "12.192 m", "in_slot": "9.144 m", "spare": "914.4 mm" },
            "loop": {
                "along_travel": "1828.8 mm", "across_lane": "6.096 m", "turns": 2, "corner_cut": "304.8 mm",
                "wire": { "over_insulation": "3.302 mm" }
            }
        }],
        "slot": { "width": "6.35 mm", "depth": "50.8 mm", "cover": "25.4 mm" },
        "lead_in_slot": { "width": "9.525 mm", "depth": "50.8 mm" }, "saw": { "blade_diameter": "355.6 mm" },
        "backer_rod": { "form": "pieces", "piece_length": "50.8 mm", "spacing": "609.6 mm", "diameter": "6.35 mm" },
        "sealant": { "kind": "two_part_reactive", "cartridge": "857.639 ml" }
    });
    let (us, metric) = (estimate(&us), estimate(&metric));
    for part in ["saw_cut", "volumes", "loops"] {
        assert_eq!(us[part], metric[part], "{part}");
    }
    assert_eq!(us["labour"]["total"], metric["labour"]["total"]);
    close(
        line(&us, "sealant_cartridge").unwrap()["exact"].as_f64().unwrap(),
        line(&metric, "sealant_cartridge").unwrap()["exact"].as_f64().unwrap(),
        1e-3,
    );
}

#[test]
fn a_jacket_takes_its_own_room_and_is_pulled_once() {
    let slot = json!({ "width": "3/8 in", "depth": "2 in" });
    let plain = request(&square(), "preformed_saw_cut", &slot);
    let jacketed = with(&plain, "/loops/0/loop/wire", json!({ "over_jacket": "5/16 in" }));
    let (plain, jacketed) = (estimate(&plain), estimate(&jacketed));
    // Three wires of 0.130 in against one jacket of 0.3125 in, over the same path.
    let areas = 0.3125_f64.powi(2) / (3.0 * 0.130_f64.powi(2));
    close(number(&jacketed, "/volumes/wire/ml"), areas * number(&plain, "/volumes/wire/ml"), 5e-3);
    assert_eq!(number(&jacketed, "/loops/0/cover/inch"), 2.0 - 0.3125);
    let step = jacketed["labour"]["steps"].as_array().unwrap().iter().find(|step| step["step"] == "wind").unwrap();
    assert_eq!(step["how"], "1 pull, 5 min each");
    assert!(line(&jacketed, "backer_rod").is_none() && line(&jacketed, "loop_wire").is_none());
}

#[test]
fn three_turns_in_one_pull_save_two_thirds_of_the_winding() {
    let minutes = |construction: &str| {
        let report = estimate(&request(&square(), construction, &json!({ "width": "1/4 in", "depth": "2 in" })));
        let steps = report["labour"]["steps"].as_array().unwrap().clone();
        steps.iter().find(|step| step["step"] == "wind").unwrap()["time"]["min"].as_f64().unwrap()
    };
    close(minutes("preformed_saw_cut"), minutes("hand_wound") / 3.0, 1e-9);
}

#[test]
fn wire_is_turns_and_twice_the_lead_in_on_spools_without_a_splice() {
    let mut request = request(&square(), "hand_wound", &json!({}));
    request["loops"][0]["lead_in"] = json!({ "length": "50 ft", "spare": "3 ft", "in_conduit": "50 ft" });
    request["loops"][0]["quantity"] = json!(3);
    let report = estimate(&request);
    // 3 x (3 x 21.657 + 2 x 53) ft, and 5 % of allowance.
    let wire = line(&report, "loop_wire").unwrap();
    close(wire["exact"].as_f64().unwrap(), 1.05 * 512.9, 1e-3);
    assert_eq!((wire["unit"].as_str(), wire["quantity"].as_u64()), (Some("ft"), Some(539)));
    assert!(wire["how"].as_str().unwrap().contains("with 5 % for corners and ends"), "{wire}");
    // Each loop takes 180 ft: 500 ft hold two in one length each, so that a third needs a spool of its own.
    request["wire_spools"] =
        json!([{ "length": "500 ft", "sku": "TIB-W500" }, { "length": "200 ft", "sku": "TIB-W200" }]);
    let report = estimate(&request);
    let spools: Vec<_> =
        report["items"].as_array().unwrap().iter().filter(|line| line["item"] == "loop_wire").collect();
    let counts: Vec<_> =
        spools.iter().map(|line| (line["sku"].as_str().unwrap(), line["quantity"].as_u64().unwrap())).collect();
    assert_eq!(counts, [("TIB-W200", 3)], "600 ft in three spools is less than 700 ft in two");
    assert!(!codes(&report, "warning").contains(&"splice_forced".to_owned()));
    request["wire_spools"] = json!([{ "length": "150 ft" }]);
    let report = estimate(&request);
    assert!(codes(&report, "warning").contains(&"splice_forced".to_owned()), "{:#}", report["findings"]);
    assert_eq!(line(&report, "loop_wire").unwrap()["quantity"], 4, "three spools and three rests of 21 ft on a fourth");
}
