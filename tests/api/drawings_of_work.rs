//! The drawings of the work itself: the sections of slots, and the hours of a sealing job.

use roxmltree::{Document, Node};
use serde_json::{Value, json};

use super::drawings::{boxes, draw, job_of, noon_of, texts};
use super::harness::calculate;
use super::requests::with;

/// The circles of a class: middle and radius.
fn circles(drawn: &Document<'_>, class: &str) -> Vec<[f64; 3]> {
    let of_class = |node: &Node<'_, '_>| node.tag_name().name() == "circle" && node.attribute("class") == Some(class);
    let of = |node: Node<'_, '_>| ["cx", "cy", "r"].map(|name| node.attribute(name).unwrap().parse().unwrap());
    drawn.descendants().filter(of_class).map(of).collect()
}

#[test]
fn a_slot_is_drawn_to_scale_with_what_lies_in_it() {
    let shallow = with(&job_of("6 ft", "hand_wound"), "/slot", json!({ "depth": "1 in", "cover": "1/2 in" }));
    for (request, name) in
        [(job_of("6 ft", "hand_wound"), "usual"), (job_of("1.8 m", "hand_wound"), "metric"), (shallow, "shallow")]
    {
        let report = calculate("material-estimate", &request).body;
        let text = draw("slot-section", &request);
        let drawn = Document::parse(&text).unwrap();
        let one = &report["loops"][0];
        let number = |value: &Value| value["mm"].as_f64().unwrap();
        // Sealant fills the slot to the surface where it is flush.
        let [left, top, right, bottom] = boxes(&drawn, "fill")[0];
        let scale = (bottom - top) / number(&one["slot_depth"]);
        assert!((right - left - scale * number(&one["slot_width"])).abs() < 0.3, "{name}: {left} to {right}");
        let wires: Vec<f64> = circles(&drawn, "core").iter().map(|[_, middle, _]| *middle).collect();
        // Three turns, and the two wires of the lead-in.
        assert_eq!(wires.len(), 5, "{name}");
        let [_, middle, radius] = circles(&drawn, "core")[2];
        let cover = scale * number(&one["cover"]);
        assert!((middle - radius - top - cover).abs() < 0.4, "{name}: {cover} over {middle}");
        assert!(wires[..3].windows(2).all(|pair| (pair[0] - pair[1] - 2.0 * radius).abs() < 0.3), "{name}: {wires:?}");
    }
}

#[test]
fn loops_with_the_same_section_share_one() {
    let one = |label: &str, turns: u32| json!({ "label": label, "loop": { "along_travel": "6 ft", "across_lane": "6 ft", "turns": turns }, "lead_in": { "length": "0 ft" } });
    let request = json!({ "loops": [one("exit", 3), one("inside", 3), one("outside", 4)] });
    let text = draw("slot-section", &request);
    let words = texts(&Document::parse(&text).unwrap());
    let headings: Vec<_> = words.iter().filter(|words| words.contains("Slot of the")).collect();
    assert_eq!(headings, ["1. Slot of the loop: exit, inside", "2. Slot of the loop: outside"]);
}

#[test]
fn hours_and_milestones_stand_where_the_report_says() {
    let request = noon_of("45 °F", "46 °F");
    let report = calculate("cure-guidance", &request).body;
    let text = draw("cure-timeline", &request);
    let drawn = Document::parse(&text).unwrap();
    let hours = |value: &Value| {
        let text = value.as_str().unwrap();
        text[11..13].parse::<f64>().unwrap() + text[14..16].parse::<f64>().unwrap() / 60.0
    };
    // The air holds from the first hour to the end of the weather.
    let [left, _, right, _] = boxes(&drawn, "wire")[0];
    let (begin, end) = (hours(&report["hourly"][0]["time"]), hours(&report["inputs"]["weather_until"]));
    assert_eq!((begin, end), (12.0, 18.0));
    let place = |value: &Value| left + (right - left) * (hours(value) - begin) / (end - begin);
    // After the band over the dew point and its sample, shading is windows, then milestones.
    let windows = report["windows"].as_array().unwrap();
    let bars = &boxes(&drawn, "fill")[2..];
    for (bar, window) in bars.iter().zip(windows) {
        let (from, to) = (place(&window["start"]), place(&window["end"]));
        assert!((bar[0] - from).abs() < 0.3 && (bar[2] - to.max(from + 2.0)).abs() < 0.3, "{window}: {bar:?}");
    }
    let bars = &bars[windows.len()..];
    let milestones = report["milestones"].as_array().unwrap();
    assert_eq!(bars.len(), milestones.len());
    for (bar, milestone) in bars.iter().zip(milestones) {
        let (from, to) = (place(&milestone["earliest"]), place(&milestone["latest"]));
        assert!((bar[0] - from).abs() < 0.3 && (bar[2] - to.max(from + 2.0)).abs() < 0.3, "{milestone}: {bar:?}");
    }
    let [left, _, right, _] = boxes(&drawn, "dot")[0];
    assert_eq!(report["hourly"][3]["rain"], "likely");
    assert!((left - place(&report["hourly"][3]["time"])).abs() < 0.3, "rain from {left}");
    assert!((right - place(&report["hourly"][4]["time"])).abs() < 0.3, "rain to {right}");
    let [left, _, right, _] = boxes(&drawn, "dot")[1];
    assert!((left - place(&report["milestones_from"])).abs() < 0.3, "work from {left}");
    assert!((right - place(&report["last_foot_sealed"])).abs() < 0.3, "work to {right}");
}

#[test]
fn a_start_that_must_wait_is_stated() {
    let request = noon_of("3 °C", "-1 °C");
    let text = draw("cure-timeline", &request);
    let drawn = Document::parse(&text).unwrap();
    let words = texts(&drawn).join(" ");
    assert!(words.contains("Do not seal at this start:") && words.contains("The slab is at -1 °C, below"), "{words}");
    let told = drawn.descendants().find(|node| node.attribute("id") == Some("cure-timeline-desc")).unwrap();
    assert!(told.text().unwrap().contains("Do not seal at this start:"));
    assert!(!draw("cure-timeline", &noon_of("45 °F", "46 °F")).contains("Do not seal"));
}
