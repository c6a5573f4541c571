//! A job in a few lines: the same as the report says, short, and in words that a customer reads.

use serde_json::{Value, json};

use super::harness::{Answer, calculate, post};
use super::requests::with;

fn gate() -> Value {
    json!({ "opening": { "width": "24 ft", "barrier": "slide_gate" } })
}

/// Three preformed loops, of which the shelf has some.
fn gate_from_stock() -> Value {
    let request = with(&gate(), "/surface", "new_asphalt");
    let item = |sku: &str, across: &str| {
        json!({ "sku": sku, "along_travel": "6 ft", "across_lane": across, "lead_in_length": "100 ft", "turns": 3,
            "construction": "preformed_direct_burial" })
    };
    with(&request, "/stock", json!([item("TIB-0620-100", "20 ft"), item("TIB-0606-100", "6 ft")]))
}

/// Jobs of three loops, short and long.
fn jobs() -> Vec<Value> {
    let metric = with(&gate(), "/opening/width", "7.2 m");
    let worst = json!({
        "opening": { "width": "7.35 m", "barrier": "vertical_lift_gate" }, "vehicles": ["high_bed_truck", "bicycle"],
        "surface": "existing_concrete", "site_hazards": ["reinforcing_mesh", "freezing_climate", "adjacent_traffic"],
        "construction": "preformed_saw_cut", "lead_in": { "length": "137.5 m" }
    });
    vec![gate(), metric, worst, gate_from_stock(), with(&gate(), "/surface", "pavers")]
}

fn sized(request: &Value) -> Answer {
    let answer = calculate("loop-sizing", request);
    assert_eq!(answer.status, 200, "{request}: {:#}", answer.body);
    answer
}

/// Every sentence of a summary.
fn sentences(summary: &Value) -> Vec<&str> {
    let texts = |list: &'static str, names: &'static [&'static str]| {
        let items = summary[list].as_array().unwrap().iter();
        items.flat_map(move |item| names.iter().map(move |name| item[*name].as_str().unwrap()))
    };
    std::iter::once(summary["headline"].as_str().unwrap())
        .chain(texts("lines", &["role_label", "size", "place"]))
        .chain(texts("to_order", &["specification"]))
        .chain(texts("top_findings", &["message"]))
        .collect()
}

#[test]
fn a_summary_alone_is_that_of_its_report() {
    for request in jobs() {
        for calculation in ["loop-sizing", "installation-plan"] {
            let alone = post(&format!("/v1/{calculation}/summary"), request.to_string());
            let report = calculate(calculation, &request);
            assert_eq!((alone.status, &alone.body), (200, &report.body["summary"]), "{request}");
            assert_eq!(alone.header("cache-control"), "no-store");
        }
    }
}

#[test]
fn a_job_of_three_loops_fits_into_a_kilobyte_and_a_half() {
    for request in jobs() {
        for calculation in ["loop-sizing", "installation-plan"] {
            let alone = post(&format!("/v1/{calculation}/summary"), request.to_string()).body;
            assert_eq!(alone["lines"].as_array().unwrap().len(), 3);
            let length = alone.to_string().len();
            assert!(length < 1500, "{length} bytes: {alone:#}");
        }
    }
}

#[test]
fn the_lines_are_the_loops_of_the_report() {
    for request in jobs() {
        let report = sized(&request).body;
        let summary = &report["summary"];
        let (lines, loops) = (summary["lines"].as_array().unwrap(), report["loops"].as_array().unwrap());
        assert_eq!(lines.len(), loops.len());
        for (line, sized) in lines.iter().zip(loops) {
            for name in ["mark", "role", "turns"] {
                assert_eq!(line[name], sized[name], "{name}");
            }
            let unit = if request["opening"]["width"].as_str().unwrap().ends_with('m') { "m" } else { "ft" };
            let across = sized["across_lane"][unit].as_f64().unwrap();
            assert!(line["size"].as_str().unwrap().ends_with(&format!("x {across} {unit}")), "{line} {across}");
            let side = sized["side"].as_str().unwrap();
            assert!(line["place"].as_str().unwrap().contains(&format!("{side} the gate")), "{line}");
        }
        let levels: Vec<_> = report["findings"].as_array().unwrap().iter().map(|finding| &finding["level"]).collect();
        assert_eq!(Some(&&summary["worst_level"]), levels.first(), "the gravest stands first");
        let top = summary["top_findings"].as_array().unwrap();
        assert!(top.len() <= 3 && top.iter().all(|finding| finding["level"] != "note"), "{top:?}");
        assert_eq!(
            top.first().map(|finding| &finding["level"]),
            levels.iter().find(|level| ***level != "note").copied()
        );
        let headline = summary["headline"].as_str().unwrap();
        assert_eq!(headline.contains("nothing stands against it"), top.is_empty(), "{headline}");
        assert_eq!(headline.contains("do not build it"), levels.contains(&&json!("stop")), "{headline}");
    }
}

#[test]
fn its_sentences_are_for_people() {
    for request in jobs() {
        let summary = sized(&request).body["summary"].clone();
        for sentence in sentences(&summary) {
            assert!(!sentence.contains(['_', '{', '}', '#', '`']), "{sentence}");
            assert!(sentence.len() > 3 && !sentence.contains("  "), "{sentence:?}");
        }
    }
    let summary = sized(&gate()).body["summary"].clone();
    let headline = summary["headline"].as_str().unwrap();
    assert!(headline.starts_with("3 loops of 6 x 20 ft with 2 turns; "), "{headline}");
    assert_eq!(summary["lines"][0]["role_label"], "Exit");
    let place = |width: &str, barrier: &str| {
        let request = json!({ "opening": { "width": width, "barrier": barrier } });
        sized(&request).body["summary"]["lines"][0]["place"].as_str().unwrap().to_owned()
    };
    assert!(place("24 ft", "swing_gate_pair").ends_with(" ft inside the gate"));
    assert!(place("12 ft", "overhead_door").ends_with(" the door"));
    assert!(place("3.9 m", "barrier_arm").ends_with(" the arm"));
}

#[test]
fn what_the_shelf_has_goes_into_the_cart_and_the_rest_is_ordered_in_words() {
    let taken = sized(&gate_from_stock()).body;
    let in_stock: Vec<_> =
        taken["loops"].as_array().unwrap().iter().map(|sized| &sized["stock_choice"]["sku"]).collect();
    assert!(in_stock.iter().any(|sku| sku.is_string()), "{in_stock:?}");
    let cart = taken["summary"]["cart"].as_array().unwrap();
    for line in cart {
        let marks = in_stock.iter().filter(|sku| **sku == &line["sku"]).count();
        assert_eq!((line["quantity"].as_u64(), line["marks"].as_array().unwrap().len()), (Some(marks as u64), marks));
    }
    let ordered = |summary: &Value| -> u64 {
        summary["to_order"].as_array().unwrap().iter().map(|line| line["quantity"].as_u64().unwrap()).sum()
    };
    let in_cart: u64 = cart.iter().map(|line| line["quantity"].as_u64().unwrap()).sum();
    assert_eq!(in_cart + ordered(&taken["summary"]), 3, "every loop stands once");

    let wound = &sized(&gate()).body["summary"];
    assert_eq!((wound["cart"].as_array().unwrap().len(), ordered(wound)), (0, 3));
    let wire = wound["to_order"][0]["specification"].as_str().unwrap();
    assert!(wire.starts_with("14 AWG loop wire in whole lengths"), "{wire}");
    // The wire is as long as the bill has it.
    let plan = calculate("installation-plan", &gate()).body;
    let items = plan["materials"]["items"].as_array().unwrap();
    let bill = items.iter().find(|item| item["item"] == "loop_wire").unwrap()["exact"].as_f64().unwrap();
    // "215.6 ft", or "3 of 215.6 ft".
    let length = |said: &str| {
        let (count, length) = said.split_once(" of ").unwrap_or(("1", said));
        count.parse::<f64>().unwrap() * length.trim_end_matches(" ft").parse::<f64>().unwrap()
    };
    let said: f64 = wire.rsplit_once(": ").unwrap().1.split(", ").map(length).sum();
    assert!((said - bill).abs() < 0.5, "{said} ft and {bill} ft");
}

#[test]
fn a_plan_puts_its_spools_into_the_cart_by_their_numbers() {
    let request = with(&gate(), "/wire_spools", json!([{ "length": "500 ft", "sku": "TIB-W500" }]));
    let plan = calculate("installation-plan", &request).body;
    let line = plan["materials"]["items"].as_array().unwrap().iter().find(|item| item["sku"] == "TIB-W500").unwrap();
    let cart = plan["summary"]["cart"].as_array().unwrap();
    assert_eq!(cart, &[json!({ "sku": "TIB-W500", "quantity": line["quantity"], "marks": [] })]);
    assert_eq!(plan["summary"]["to_order"], json!([]));
}

#[test]
fn an_opening_without_a_barrier_has_its_place_at_the_line() {
    let request = json!({ "opening": { "width": "12 ft", "barrier": "none" }, "roles": ["presence"] });
    let line = &sized(&request).body["summary"]["lines"][0];
    assert_eq!(line["place"], "at the window, post or stop line");
}

#[test]
fn before_a_home_run_only_the_pair_up_to_its_box_is_ordered() {
    let lead_in = json!({ "length": "500 ft", "gauge": "18 AWG" });
    let request = json!({ "opening": { "width": "24 ft", "barrier": "slide_gate" }, "lead_in": lead_in });
    let report = calculate("installation-plan", &request).body;
    let billed = |item: &str| {
        let lines = report["materials"]["items"].as_array().unwrap().iter();
        lines.filter(|line| line["item"] == item).map(|line| line["exact"].as_f64().unwrap()).sum::<f64>()
    };
    let said = report["summary"]["to_order"][0]["specification"].as_str().unwrap();
    let one: f64 = said.split("3 of ").nth(1).unwrap().split(' ').next().unwrap().parse().unwrap();
    assert!((3.0 * one - billed("loop_wire")).abs() < 1.0, "{said}: {}", billed("loop_wire"));
}
