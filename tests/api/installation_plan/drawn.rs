//! Bill, steps, sheet and drawing of a job say the same of the way of its pairs and of its slots.

use roxmltree::Document;
use serde_json::{Value, json};

use super::plan;
use crate::drawings::{boxes, draw};
use crate::harness::post;
use crate::requests::with;

/// A job, as all of its papers tell it.
struct Told {
    report: Value,
    drawing: String,
    sheet: String,
}

impl Told {
    fn of(request: &Value) -> Self {
        let report = plan(&with(request, "/include", json!(["drawings"])));
        let drawing = report["drawings"]["plan"].as_str().unwrap().replace('\u{a0}', " ");
        let sheet = post("/v1/installation-plan/job-sheet", request.to_string());
        assert_eq!(sheet.status, 200, "{:#}", sheet.body);
        Self { report, drawing, sheet: sheet.body.as_str().unwrap().replace('\u{a0}', " ") }
    }

    fn step(&self, step: &str) -> &str {
        let steps = self.report["steps"].as_array().unwrap();
        steps.iter().find(|taken| taken["step"] == step).unwrap()["message"].as_str().unwrap()
    }

    /// How many of an item are on the bill, of all of its sizes.
    fn billed(&self, item: &str) -> f64 {
        let lines = self.report["materials"]["items"].as_array().unwrap().iter();
        lines.filter(|line| line["item"] == item).map(|line| line["exact"].as_f64().unwrap()).sum()
    }

    fn loops(&self) -> &[Value] {
        self.report["sizing"]["loops"].as_array().unwrap()
    }

    /// The lengths of the lines of a class on the drawing.
    fn lines(&self, class: &str) -> Vec<f64> {
        let drawn = Document::parse(&self.drawing).unwrap();
        let paths = drawn.descendants().filter(|node| node.attribute("class") == Some(class));
        paths.map(|path| length(path.attribute("d").unwrap())).collect()
    }

    /// Units of the drawing per foot.
    fn scale(&self) -> f64 {
        let drawn = Document::parse(&self.drawing).unwrap();
        let first = boxes(&drawn, "wire").into_iter().find(|[left, .., right, _]| right - left > 12.0).unwrap();
        (first[2] - first[0]) / self.loops()[0]["across_lane"]["ft"].as_f64().unwrap()
    }
}

/// The length of a way of straight lines.
fn length(way: &str) -> f64 {
    let numbers: Vec<f64> = way
        .split(|letter: char| !letter.is_ascii_digit() && letter != '.')
        .filter_map(|number| number.parse().ok())
        .collect();
    let points: Vec<_> = numbers.chunks(2).map(|pair| (pair[0], pair[1])).collect();
    points.windows(2).map(|pair| (pair[1].0 - pair[0].0).hypot(pair[1].1 - pair[0].1)).sum()
}

fn near(found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() < tolerance, "{found} is not {expected}");
}

fn slide_gate() -> Value {
    json!({ "opening": { "width": "24 ft", "barrier": "slide_gate" } })
}

/// Openings so wide that loops lie side by side.
fn rows() -> [Value; 2] {
    let of = |width, barrier| json!({ "opening": { "width": width, "barrier": barrier }, "vehicles": ["small_motorcycle", "passenger_car"] });
    [of("40 ft", "slide_gate"), of("60 ft", "none")]
}

#[test]
fn a_slot_that_goes_on_past_the_edge_is_drawn_and_said_so() {
    for (in_slot, conduit) in [("50 ft", 0.0), ("20 ft", 90.0), ("2 ft", 144.0)] {
        let told = Told::of(&with(&slide_gate(), "/lead_in", json!({ "length": "50 ft", "in_slot": in_slot })));
        near(told.billed("lead_in_conduit"), conduit, 0.01);
        // Two lines for each slot; 2 ft of each to scale up to the edge, and from there slot and conduit by their shares.
        let (slots, dashed) = (told.lines("line slot"), told.lines("dashed conduit"));
        assert_eq!((slots.len(), dashed.len()), (6, if conduit > 0.0 { 3 } else { 0 }), "{in_slot}");
        let past = slots.iter().sum::<f64>() / 2.0 - 3.0 * 2.0 * told.scale();
        let share = past / (past + dashed.iter().sum::<f64>());
        near(share, (144.0 - conduit) / 144.0, 0.02);
        let in_words = [told.drawing.as_str(), told.step("cut"), &told.sheet[told.sheet.find("<h2>Wind").unwrap()..]];
        for words in &in_words[..2] {
            assert_eq!(words.contains("in conduit") || words.contains("conduit,"), conduit > 0.0, "{in_slot}: {words}");
            assert_eq!(words.contains("ast the edge"), in_slot != "2 ft", "{in_slot}: {words}");
        }
        let way = told.loops()[0]["lead_in"]["way"].as_str().unwrap();
        assert!(in_words[1].contains(way) && in_words[2].contains(way), "{way}");
        assert!(!told.report["findings"].to_string().contains("slot_before_edge"));
    }
}

#[test]
fn a_slot_that_ends_before_the_edge_is_warned_of() {
    let request = with(&slide_gate(), "/lead_in", json!({ "length": "50 ft", "in_slot": "1 ft" }));
    let told = Told::of(&request);
    let warned: Vec<_> = told.report["findings"].as_array().unwrap().iter().collect();
    let warned: Vec<_> = warned.into_iter().filter(|finding| finding["code"] == "slot_before_edge").collect();
    assert_eq!(warned.len(), 3);
    assert_eq!((&warned[0]["level"], &warned[0]["about"]), (&json!("warning"), &json!("#/lead_in/in_slot")));
    assert!(warned[0]["message"].as_str().unwrap().contains("ends 1 ft before the edge"), "{}", warned[0]);
    assert!(!told.step("cut").contains("to the edge") && told.step("cut").contains("ends 1 ft before the edge"));
    assert!(told.drawing.contains("The slot of A ends 1 ft [0.31 m] before the edge."), "{}", told.drawing);
    for slot in told.lines("line slot") {
        near(slot, told.scale(), 0.1);
    }
    // A lead-in that is too short itself is told by its length.
    let short = plan(&with(
        &json!({ "opening": { "width": "12 ft", "barrier": "none" } }),
        "/lead_in",
        json!({ "length": "1 ft" }),
    ));
    let codes: Vec<_> = short["findings"].as_array().unwrap().iter().collect();
    assert!(
        codes.iter().any(|finding| finding["code"] == "slot_before_edge" && finding["about"] == "#/lead_in/length")
    );
}

#[test]
fn a_row_shows_the_one_slot_that_its_pairs_share() {
    for request in rows() {
        let told = Told::of(&request);
        let shared = told.report["materials"]["shared_slots"].as_array().unwrap();
        let counts: Vec<_> = told.loops().iter().map(|sized| sized["count"].as_u64().unwrap()).collect();
        assert!(counts.iter().all(|count| *count > 1), "{counts:?}");
        assert_eq!(shared.len(), counts.len());
        // A short slot for each pair and the one beside the row, two lines each; a conduit for each row.
        let slots = told.lines("line slot");
        assert_eq!(slots.len() as u64, counts.iter().map(|count| 2 * (count + 1)).sum::<u64>());
        assert_eq!(told.lines("dashed conduit").len(), counts.len());
        let longest = slots.iter().copied().fold(0.0, f64::max);
        // Pairs leave their loops beside a corner, a little farther from the edge than its leg.
        let billed = shared[0]["length"]["ft"].as_f64().unwrap() * told.scale();
        assert!(longest > billed - 0.5 && longest < billed + told.scale() + 4.0, "{longest} is not {billed}");
        let saw_plan = told.loops()[0]["side_by_side"]["saw_plan"].as_str().unwrap();
        assert!(saw_plan.contains("into one slot of") && told.sheet.contains(saw_plan), "{saw_plan}");
        for words in ["its own edge", "of it shared"] {
            assert!(!told.sheet.contains(words), "{words}");
        }
        assert!(told.step("cut").contains("in the shared slot of"), "{}", told.step("cut"));
        let depth = shared[0]["depth"]["inch"].as_f64().unwrap();
        assert!(depth > 2.0 && told.sheet.contains("shared 5/16 in × 2"), "{depth}");
        // Loose pairs lie apart: each has its slot and its conduit.
        let loose = Told::of(&with(&request, "/lead_in", json!({ "length": "90 ft", "pair": "loose" })));
        let pairs: u64 = loose.loops().iter().map(|sized| sized["count"].as_u64().unwrap()).sum();
        assert_eq!(loose.lines("line slot").len() as u64, 2 * pairs);
        assert_eq!(loose.lines("dashed conduit").len() as u64, pairs);
        assert!(loose.sheet.contains("Bring each pair out in a slot of its own"));
    }
}

#[test]
fn a_home_run_goes_on_from_a_pull_box() {
    let lead_in = json!({ "length": "500 ft", "gauge": "18 AWG" });
    for request in [slide_gate(), rows()[0].clone()] {
        let told = Told::of(&with(&request, "/lead_in", lead_in.clone()));
        assert_eq!(told.lines("line pullbox").len() as f64, told.billed("pull_box"));
        assert!(told.drawing.contains("A crossed box is a pull box"));
        assert!(told.step("terminate").contains("splice it there with a kit"), "{}", told.step("terminate"));
        let (mut cable, mut wire) = (0.0, 0.0);
        for (sized, made) in told.loops().iter().zip(told.report["materials"]["loops"].as_array().unwrap()) {
            let (count, home_run) = (sized["count"].as_f64().unwrap(), &sized["lead_in"]["home_run"]);
            cable += count * home_run["length"]["ft"].as_f64().unwrap();
            wire += count * made["wire_length"]["ft"].as_f64().unwrap();
            let way = sized["lead_in"]["way"].as_str().unwrap();
            assert!(
                way.contains("into a pull box there; from the box ") && way.contains("ft of 18 AWG cable"),
                "{way}"
            );
            assert!(told.step("cut").contains(way) && told.sheet.contains(way));
            let mark = sized["mark"].as_str().unwrap();
            assert!(told.drawing.contains(&format!("of 18 AWG cable for {mark}")), "{mark}");
        }
        // 5 % on both, and as many kits as pairs.
        near(told.billed("home_run_cable"), 1.05 * cable, 0.3);
        near(told.billed("loop_wire"), 1.05 * wire, 0.3);
        near(2.0 * told.billed("splice_kit"), told.billed("termination"), 1e-6);
        assert!(told.sheet.contains("of 14 AWG in one length"), "{}", told.sheet);
        assert!(told.sheet.contains("its pair to the pull box included, and 5 % more"), "{}", told.sheet);
        for words in ["503 ft", "lead-in included"] {
            assert!(!told.sheet.contains(words) && !told.drawing.contains(words), "{words}");
        }
    }
}

#[test]
fn a_spool_that_is_too_short_puts_the_splice_on_the_bill() {
    let request = with(&slide_gate(), "/lead_in", json!({ "length": "300 ft" }));
    let told = Told::of(&with(&request, "/wire_spools", json!([{ "length": "500 ft" }])));
    assert!(told.report["findings"].to_string().contains("splice_forced"));
    assert_eq!((told.billed("splice_kit"), told.billed("pull_box")), (3.0, 3.0));
    assert_eq!(told.lines("line pullbox").len(), 3);
    assert!(told.step("terminate").contains("pair from the next spool") && !told.sheet.contains("AWG in one length"));
    // 701 ft go on from each box: two more spools, and a box between them.
    let farther = with(&with(&request, "/lead_in/length", "700 ft"), "/wire_spools", json!([{ "length": "500 ft" }]));
    let farther = Told::of(&farther);
    assert_eq!((farther.billed("splice_kit"), farther.billed("pull_box")), (6.0, 6.0));
    let enough = Told::of(&with(&request, "/wire_spools", json!([{ "length": "1000 ft" }])));
    assert_eq!((enough.billed("splice_kit"), enough.lines("line pullbox").len()), (0.0, 0));
    assert!(enough.sheet.contains("AWG in one length, lead-in included"));
}

#[test]
fn a_slot_that_pairs_share_has_a_section_of_its_own() {
    let one = |label: &str| {
        json!({
            "label": label, "loop": { "along_travel": "6 ft", "across_lane": "10 ft", "turns": 3 },
            "lead_in": { "length": "50 ft", "in_slot": "20 ft", "in_shared_slot": "15 ft" }
        })
    };
    let request = json!({ "loops": [one("north"), one("middle"), one("south")] });
    let drawn = draw("slot-section", &request).replace('\u{a0}', " ");
    assert!(drawn.contains("3. Slot that pairs share: north, middle, south"), "{drawn}");
    // Three turns, a pair, and three pairs.
    assert_eq!(drawn.matches("class=\"core\"").count(), 3 + 2 + 6);
    let report = crate::harness::calculate("material-estimate", &request).body;
    let shared = &report["shared_slots"][0];
    assert_eq!((&shared["pairs"], &shared["depth"]["inch"]), (&json!(3), &json!(2.0)));
    assert!(drawn.contains("5/16 in [7.9 mm] wide and 2 in [50.8 mm] deep"), "{drawn}");
    let mut jacketed = request;
    for index in 0..3 {
        jacketed["loops"][index]["construction"] = json!("preformed_saw_cut");
        jacketed["loops"][index]["loop"]["wire"] = json!({ "over_jacket": "1/4 in" });
    }
    assert_eq!(draw("slot-section", &jacketed).matches("class=\"core\"").count(), 1 + 1 + 3);
}

#[test]
fn papers_name_loops_by_their_marks() {
    for surface in ["existing_asphalt", "gravel"] {
        let told = Told::of(&with(&slide_gate(), "/surface", surface));
        let section = told.report["drawings"]["slot_section"].as_str().unwrap();
        assert!(section.contains(": A, B, C</text>"), "{section}");
        for paper in [section, &told.sheet] {
            assert!(!paper.contains("obstruction_inside"), "{paper}");
        }
    }
}

#[test]
fn where_nothing_is_sawn_nothing_is_said_of_a_saw() {
    for (width, depth) in [("24 ft", "Dig 8-1/2 in deep"), ("7.2 m", "Dig 210 mm deep")] {
        let request = json!({ "opening": { "width": width, "barrier": "slide_gate" }, "surface": "gravel" });
        let told = Told::of(&request);
        assert!(told.step("bed").contains(depth) && told.sheet.contains(depth), "{}", told.step("bed"));
        let steps = told.report["steps"].to_string();
        for words in ["sealant carries", "anything is cut", "in slot", "sealing", "saw cut"] {
            assert!(!steps.contains(words) && !told.sheet.contains(words), "{words}: {steps}");
        }
        assert!(told.lines("line slot").is_empty() && told.lines("dashed conduit").len() == 3);
        assert!(told.step("bed").contains("out on the right as one leaves, "), "{}", told.step("bed"));
    }
}
