//! Drawings: they show what the report says, as valid XML without script or outside references.
//!
//! `tests/drawings/*.svg` hold some of them exactly; after an intended change, write them with `LOOPWRIGHT_BLESS=1` and look at them.
//! That texts are legible and do not overlap is measured in a browser by `tests/drawings/render`.

use std::collections::BTreeSet;
use std::path::Path;

use roxmltree::{Document, Node};
use serde_json::{Value, json};

use super::harness::{Answer, calculate, client, description, post, send, shared};
use super::requests::{cure_guidance, existing_loop, loop_sizing, material_estimate, vehicle_response, with};

const DRAWINGS: [(&str, &str); 5] = [
    ("plan", "loop-sizing"),
    ("response-profile", "vehicle-response"),
    ("slot-section", "material-estimate"),
    ("cure-timeline", "cure-guidance"),
    ("turn-candidates", "existing-loop"),
];

/// What a drawing and a page may load: their own style sheet, nothing else; and what may be done with them.
pub const POLICY: &str =
    "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

pub fn draw(drawing: &str, request: &Value) -> String {
    let answer = post(&format!("/v1/drawings/{drawing}"), request.to_string());
    assert_eq!(answer.status, 200, "{request}: {:#}", answer.body);
    answer.body.as_str().unwrap().to_owned()
}

/// A sound request of a drawing with every field.
fn sound(drawing: &str) -> Value {
    match drawing {
        "plan" => loop_sizing(),
        "response-profile" => vehicle_response(),
        "slot-section" => material_estimate(),
        "turn-candidates" => existing_loop(),
        _ => cure_guidance(),
    }
}

pub fn plan_of(width: &str, barrier: &str) -> Value {
    json!({ "opening": { "width": width, "barrier": barrier } })
}

pub fn pass_of(vehicle: &str, leg: &str) -> Value {
    json!({
        "loop": { "along_travel": leg, "across_lane": "6 ft", "turns": 3 }, "lead_in": { "length": "50 ft" },
        "vehicle": vehicle
    })
}

pub fn in_the_ground(leg: &str) -> Value {
    json!({
        "along_travel": leg, "across_lane": "8 ft", "lead_in": { "length": "50 ft" },
        "readings": { "inductance_uh": 131, "resistance_ohm": 0.47, "insulation_megohm": 300 }
    })
}

pub fn job_of(leg: &str, construction: &str) -> Value {
    json!({ "loops": [{
        "label": "drive", "construction": construction,
        "loop": { "along_travel": leg, "across_lane": "6 ft", "turns": 3, "wire": { "over_jacket": "1/4 in" } }
    }] })
}

/// Two-part sealant at noon of a day that begins at ten, with air and slab as warm as given.
pub fn noon_of(air: &str, slab: &str) -> Value {
    let hour = |hour: u32| {
        json!({
            "time": format!("2026-01-20T{hour}:00:00-05:00"), "air": air, "relative_humidity_percent": 55, "surface": slab,
            "precipitation_probability_percent": if hour == 15 { 60 } else { 0 }
        })
    };
    json!({
        "sealant": { "kind": "two_part_reactive" }, "start": "2026-01-20T12:00:00-05:00", "surface_condition": "dry",
        "weather": { "conditions": (10..18).map(hour).collect::<Vec<_>>() }
    })
}

/// The texts of a drawing as they are read, with plain spaces.
pub fn texts(drawn: &Document<'_>) -> Vec<String> {
    let texts = drawn.descendants().filter(|node| node.has_tag_name(("http://www.w3.org/2000/svg", "text")));
    texts.map(|node| node.text().unwrap().replace('\u{a0}', " ")).collect()
}

/// The bounding boxes of the paths of a class: left, top, right, bottom.
pub fn boxes(drawn: &Document<'_>, class: &str) -> Vec<[f64; 4]> {
    let of_class = |node: &Node<'_, '_>| node.tag_name().name() == "path" && node.attribute("class") == Some(class);
    let numbers = |way: &str| -> Vec<f64> {
        way.split(|letter: char| !letter.is_ascii_digit() && letter != '.')
            .filter_map(|text| text.parse().ok())
            .collect()
    };
    let of = |node: Node<'_, '_>| {
        let numbers = numbers(node.attribute("d").unwrap());
        let (x, y): (Vec<_>, Vec<_>) = numbers.chunks(2).map(|pair| (pair[0], pair[1])).unzip();
        let least = |list: &[f64]| list.iter().copied().fold(f64::INFINITY, f64::min);
        let most = |list: &[f64]| list.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        [least(&x), least(&y), most(&x), most(&y)]
    };
    drawn.descendants().filter(of_class).map(of).collect()
}

#[test]
fn golden_drawings_are_drawn_byte_for_byte() {
    let cases = [
        ("plan-sliding-gate", "plan", plan_of("7.2 m", "slide_gate")),
        ("plan-swing-gates", "plan", plan_of("16 ft", "swing_gate_pair")),
        ("plan-barrier-lane", "plan", plan_of("3.5 m", "barrier_arm")),
        ("plan-drive-through", "plan", plan_of("12 ft", "none")),
        ("plan-row-that-stops", "plan", with(&plan_of("14 m", "slide_gate"), "/vehicles", json!(["bicycle"]))),
        ("profile-car", "response-profile", pass_of("passenger_car", "6 ft")),
        ("section-wound", "slot-section", job_of("6 ft", "hand_wound")),
        ("section-jacketed", "slot-section", job_of("1.8 m", "preformed_saw_cut")),
        ("section-buried", "slot-section", with(&job_of("1.8 m", "preformed_direct_burial"), "/surface", "gravel")),
        ("timeline-fit", "cure-timeline", noon_of("45 °F", "46 °F")),
        ("timeline-frozen", "cure-timeline", noon_of("3 °C", "-1 °C")),
        ("candidates-fit", "turn-candidates", in_the_ground("6 ft")),
        ("profile-lets-go", "response-profile", with(&pass_of("tractor_trailer", "1.8 m"), "/threshold_percent", 0.4)),
    ];
    for (name, drawing, request) in cases {
        let drawn = draw(drawing, &request);
        let file = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("tests/drawings/{name}.svg"));
        if std::env::var_os("LOOPWRIGHT_BLESS").is_some() {
            std::fs::write(&file, &drawn).unwrap();
        }
        let golden = std::fs::read_to_string(&file).unwrap_or_default();
        assert!(drawn == golden, "{name} has changed: see the head of tests/api/drawings.rs");
    }
}

#[test]
fn a_drawing_is_one_described_image_without_script_or_outside_references() {
    for (drawing, _) in DRAWINGS {
        let text = draw(drawing, &sound(drawing));
        let drawn = Document::parse(&text).unwrap();
        let root = drawn.root_element();
        assert_eq!((root.tag_name().name(), root.attribute("role")), ("svg", Some("img")));
        let mut ids = BTreeSet::new();
        for node in drawn.descendants().filter(Node::is_element) {
            let name = node.tag_name().name();
            assert!(
                ["svg", "title", "desc", "style", "g", "path", "circle", "text"].contains(&name),
                "{drawing} holds {name}"
            );
            for attribute in node.attributes() {
                let name = attribute.name();
                assert!(!name.starts_with("on") && !name.contains("href") && name != "style", "{drawing}: {name}");
                assert!(
                    name != "id" || ids.insert(attribute.value().to_owned()),
                    "{drawing}: {} twice",
                    attribute.value()
                );
            }
        }
        let labels: Vec<_> = root.attribute("aria-labelledby").unwrap().split(' ').collect();
        assert_eq!(labels, [format!("{drawing}-title"), format!("{drawing}-desc")]);
        for label in labels {
            let told = drawn.descendants().find(|node| node.attribute("id") == Some(label)).unwrap();
            assert!(told.text().unwrap().len() > 20, "{drawing}: {label} says nothing");
        }
        assert!(!text.contains("url(") && !text.contains("@import"), "{drawing} reaches out");
        // The only address is the name of the language.
        assert_eq!(text.matches("http").count(), 1, "{drawing}");
        assert!(text.contains("@media screen and (prefers-color-scheme:dark)"), "{drawing} is dark in print or never");
    }
}

#[test]
fn what_callers_write_stays_text() {
    let number = "</text><script>alert('&amp;')</script>\u{0}\u{7}\u{202e}<!--]]>\"";
    let stock = json!([{ "sku": number, "along_travel": "6 ft", "across_lane": "20 ft", "lead_in_length": "60 ft" }]);
    let request = with(&plan_of("24 ft", "slide_gate"), "/stock", stock);
    assert!(
        calculate("loop-sizing", &request).body["loops"][0]["stock_choice"]["sku"] == number,
        "it is not drawn at all"
    );
    let labelled = with(&job_of("6 ft", "hand_wound"), "/loops/0/label", number);
    for (drawing, request) in [("plan", request), ("slot-section", labelled)] {
        let text = draw(drawing, &request);
        let drawn = Document::parse(&text).unwrap();
        assert!(!drawn.descendants().any(|node| node.tag_name().name() == "script"));
        let words: String = texts(&drawn).concat().split_whitespace().collect();
        let shown = "</text><script>alert('&amp;')</script>\u{fffd}\u{fffd}\u{fffd}<!--]]>\"";
        assert!(words.contains(shown), "{words}");
    }
}

#[test]
fn dimensions_stand_in_the_callers_system_and_in_brackets_in_the_other() {
    for (drawing, request, own) in [
        ("plan", plan_of("24 ft", "slide_gate"), "24 ft [7.32 m]"),
        ("plan", plan_of("7.2 m", "slide_gate"), "7.2 m [23 ft 7 in]"),
        ("response-profile", pass_of("passenger_car", "6 ft"), "6 ft × 6 ft [1.83 m × 1.83 m]"),
        ("slot-section", job_of("6 ft", "hand_wound"), "3/16 in [4.8 mm]"),
        ("slot-section", job_of("1.8 m", "hand_wound"), "4.8 mm [3/16 in]"),
        ("cure-timeline", noon_of("45 °F", "46 °F"), "40 °F [4.4 °C]"),
        ("cure-timeline", noon_of("7 °C", "8 °C"), "4.4 °C [40 °F]"),
        ("turn-candidates", in_the_ground("6 ft"), "6 ft × 8 ft [1.83 m × 2.44 m]"),
        ("turn-candidates", in_the_ground("1.8 m"), "1.8 m × 2.44 m [5 ft 11 in × 8 ft]"),
        ("response-profile", pass_of("passenger_car", "1.8 m"), "1.8 m × 1.83 m [5 ft 11 in × 6 ft]"),
    ] {
        let text = draw(drawing, &request);
        let words = texts(&Document::parse(&text).unwrap()).join(" ");
        assert!(words.contains(own), "{words}");
    }
}

#[test]
fn loops_are_drawn_to_one_scale_at_their_distances() {
    for request in
        [plan_of("24 ft", "slide_gate"), plan_of("7.2 m", "vertical_lift_gate"), plan_of("60 ft", "slide_gate")]
    {
        let report = calculate("loop-sizing", &request).body;
        let text = draw("plan", &request);
        let drawn = Document::parse(&text).unwrap();
        let number = |value: &Value| value["m"].as_f64().unwrap();
        // The legs as the wires lie on the sheet; arrow heads of rows are much smaller.
        let coils: Vec<_> = boxes(&drawn, "wire")
            .into_iter()
            .filter(|[left, top, right, bottom]| right - left > 12.0 && bottom - top > 8.0)
            .collect();
        let sized = report["loops"].as_array().unwrap();
        let counts: Vec<_> = sized.iter().map(|sized| sized["count"].as_u64().unwrap()).collect();
        assert_eq!(coils.len() as u64, counts.iter().sum::<u64>());
        let exit = &sized[0];
        let [left, top, right, bottom] = coils[0];
        let scale = (right - left) / number(&exit["across_lane"]);
        let near = |drawn: f64, metres: f64| (drawn - scale * metres).abs() < 0.6;
        assert!(near(bottom - top, number(&exit["along_travel"])), "{scale} across, {} along", bottom - top);
        // Down the sheet: exit, inside, outside; the line of the barrier lies between the last two.
        let last = coils.last().unwrap();
        let (inside, outside) =
            (number(&sized[0]["distance_from_barrier"]), number(&sized[1]["distance_from_barrier"]));
        assert!(near(last[1] - bottom, inside + outside), "{} from the exit to the outside", last[1] - bottom);
    }
}

#[test]
fn a_bar_of_turns_is_what_the_report_expects_and_the_line_what_was_read() {
    let request = in_the_ground("6 ft");
    let report = calculate("existing-loop", &request).body;
    let text = draw("turn-candidates", &request);
    let drawn = Document::parse(&text).unwrap();
    let candidates = report["candidates"].as_array().unwrap();
    let rows = candidates.len().min(5);
    // Bars of what fits are blue, the others black; of each row one for inductance, then one for resistance.
    let fits: Vec<_> = candidates.iter().take(rows).map(|one| one["fits_readings"] == true).collect();
    assert!(fits.contains(&true) && fits.contains(&false), "{candidates:?}");
    let is_bar = |[left, top, right, bottom]: &[f64; 4]| (bottom - top - 8.0).abs() < 0.2 && right > left;
    let of_class = |class: &str| boxes(&drawn, class).into_iter().filter(is_bar).collect::<Vec<_>>();
    let (blue, black) = (of_class("wire"), of_class("line"));
    let of_inductance = |index: usize| {
        let place = fits[..index].iter().filter(|other| **other == fits[index]).count();
        if fits[index] { blue[place * 2] } else { black[place] }
    };
    let read = boxes(&drawn, "heavy")[0][0];
    let number = |index: usize, name: &str| candidates[index][name].as_f64().unwrap();
    let scale = |x: f64| (x - 150.0) / (read - 150.0) * 131.0;
    for (index, is_fit) in fits.iter().enumerate() {
        let [left, _, right, _] = of_inductance(index);
        let (low, high) = (scale(left), scale(right));
        assert!((low - number(index, "inductance_low_uh")).abs() < 1.0, "{index}, {is_fit}: {low}");
        assert!((high - number(index, "inductance_high_uh")).abs() < 1.0, "{index}, {is_fit}: {high}");
    }
}

#[test]
fn the_unit_switches_on_the_curve_where_the_report_says() {
    let lets_go = with(&pass_of("tractor_trailer", "6 ft"), "/threshold_percent", 0.4);
    for (request, count) in [(pass_of("passenger_car", "6 ft"), 2), (lets_go, 4)] {
        // Also with the fewest points that a profile may have.
        for positions in [2, 41] {
            let request = with(&request, "/positions", positions);
            let report = calculate("vehicle-response", &request).body;
            let text = draw("response-profile", &request);
            let drawn = Document::parse(&text).unwrap();
            let dots: Vec<f64> = drawn
                .descendants()
                .filter(|node| node.attribute("class") == Some("dot"))
                .map(|node| node.attribute("cx").unwrap().parse().unwrap())
                .collect();
            assert_eq!(dots.len(), count);
            let [left, _, right, _] = boxes(&drawn, "dashed")[0];
            let profile = report["profile"].as_array().unwrap();
            let place = |value: &Value| value["ft"].as_f64().unwrap();
            let (begin, end) = (place(&profile[0]["position"]), place(&profile.last().unwrap()["position"]));
            for (dot, switch) in [(dots[0], "switches_on_at"), (dots[count - 1], "switches_off_at")] {
                let share = (place(&report[switch]) - begin) / (end - begin);
                assert!(((dot - left) / (right - left) - share).abs() < 0.002, "{switch} at {dot}");
            }
        }
    }
}

#[test]
fn what_stops_the_job_stands_in_text_and_description() {
    let request = with(&plan_of("16 ft", "swing_gate"), "/roles", json!(["obstruction_outside", "obstruction_inside"]));
    let report = calculate("loop-sizing", &request);
    assert!(report.findings("stop").contains(&"between_leaves_missing"));
    let message = report.body["findings"][0]["message"].as_str().unwrap().to_owned();
    let text = draw("plan", &request);
    let drawn = Document::parse(&text).unwrap();
    let words = texts(&drawn).join(" ");
    assert!(words.contains("Do not build as drawn:") && words.contains(&message), "{words}");
    let told = drawn.descendants().find(|node| node.attribute("id") == Some("plan-desc")).unwrap();
    assert!(told.text().unwrap().contains(&format!("Do not build as drawn: {message}")));

    let sound = plan_of("24 ft", "slide_gate");
    assert!(calculate("loop-sizing", &sound).findings("stop").is_empty());
    assert!(!draw("plan", &sound).contains("Do not build"));
}

#[test]
fn a_drawing_is_sent_with_headers_against_sniffing_caching_and_scripts() {
    for (drawing, _) in DRAWINGS {
        let answer = post(&format!("/v1/drawings/{drawing}"), sound(drawing).to_string());
        assert_eq!(answer.header("content-type"), "image/svg+xml");
        assert_eq!(answer.header("cache-control"), "no-store");
        assert_eq!(answer.header("x-content-type-options"), "nosniff");
        assert_eq!(answer.header("content-security-policy"), POLICY);
        assert_eq!(answer.header("x-request-id").len(), 36);
    }
}

#[test]
fn a_request_that_cannot_be_drawn_is_refused_as_its_calculation_refuses_it() {
    let same = |drawing: &str, calculation: &str, body: &str| -> Answer {
        let (drawn, calculated) = (
            post(&format!("/v1/drawings/{drawing}"), body.to_owned()),
            post(&format!("/v1/{calculation}"), body.to_owned()),
        );
        assert_eq!((drawn.status, &drawn.body["errors"]), (calculated.status, &calculated.body["errors"]), "{body}");
        assert_eq!(drawn.header("content-type"), "application/problem+json");
        drawn
    };
    for (drawing, calculation) in DRAWINGS {
        assert_eq!(same(drawing, calculation, "{").status, 400);
        assert_eq!(same(drawing, calculation, "{}").status, 422);
        assert_eq!(same(drawing, calculation, &" ".repeat(600_000)).status, 413);
        let length = match drawing {
            "slot-section" => "/loops/0/lead_in/length",
            "cure-timeline" => "/slot/depth",
            _ => "/lead_in/length",
        };
        let wrong = with(&sound(drawing), length, "24");
        assert_eq!(
            same(drawing, calculation, &wrong.to_string()).faults(),
            [(format!("#{length}"), "unit_missing".to_owned())]
        );
        let path = format!("http://{}/v1/drawings/{drawing}", shared());
        let plain = client().post(path).header("content-type", "text/plain").body("{}").send().unwrap();
        assert_eq!(plain.status(), 415);
        let get = send(shared(), &reqwest::Method::GET, &format!("/v1/drawings/{drawing}"), &[]);
        // A plan has an address, too.
        let refusal = if drawing == "plan" { (422, "") } else { (405, "POST") };
        assert_eq!((get.status, get.header("allow")), refusal, "{drawing}");
    }
}

#[test]
fn a_drawing_is_described_as_taking_what_its_calculation_takes() {
    for (drawing, calculation) in DRAWINGS {
        let operation = |path: String| &description()["paths"][path]["post"];
        let (drawn, calculated) =
            (operation(format!("/v1/drawings/{drawing}")), operation(format!("/v1/{calculation}")));
        assert_eq!(drawn["requestBody"], calculated["requestBody"]);
        assert_eq!(drawn["tags"], json!(["drawings"]));
        assert_eq!(
            drawn["responses"]["200"]["content"],
            json!({ "image/svg+xml": { "schema": { "type": "string", "format": "binary" } } })
        );
    }
}
