//! Whether to seal: verdicts, times and refusals, over HTTP.

mod care;
mod sheets;
mod times;
mod verdicts;
mod windows;
mod winter;

use serde_json::{Value, json};

use super::harness::{Answer, calculate};

const ONE: &str = "one_part_moisture_cure";
const TWO: &str = "two_part_reactive";
const HOT: &str = "hot_applied";

/// An hour of 2026-05-01 or later, on a clock 4 h behind.
fn at(hour: usize) -> String {
    format!("2026-05-{:02}T{:02}:00:00-04:00", 1 + hour / 24, hour % 24)
}

/// A dry sky of so many hours in which every hour is the same; 23 °C and 50 % where a test says nothing else.
fn steady(hours: usize, air: &str, surface: &str, humidity: u32) -> Vec<Value> {
    let hour = |hour| {
        json!({
            "time": at(hour), "air": air, "surface": surface, "relative_humidity_percent": humidity,
            "precipitation_probability_percent": 0
        })
    };
    (0..hours).map(hour).collect()
}

fn mild(hours: usize) -> Vec<Value> {
    steady(hours, "23 °C", "23 °C", 50)
}

/// A request in a dry slot, begun with the first row.
fn request(kind: &str, conditions: Vec<Value>) -> Value {
    json!({
        "sealant": { "kind": kind }, "start": conditions[0]["time"], "surface_condition": "dry",
        "weather": { "conditions": conditions }
    })
}

fn ask(request: &Value) -> Answer {
    let answer = calculate("cure-guidance", request);
    assert_eq!(answer.status, 200, "{request}: {:#}", answer.body);
    answer
}

fn verdict(answer: &Answer) -> &str {
    answer.body["verdict"].as_str().unwrap()
}

/// The codes of the reasons.
fn reasons(answer: &Answer) -> Vec<&str> {
    answer.body["reasons"].as_array().unwrap().iter().map(|reason| reason["code"].as_str().unwrap()).collect()
}

fn finding<'a>(answer: &'a Answer, code: &str) -> &'a Value {
    let findings = answer.body["findings"].as_array().unwrap();
    let finding = findings.iter().find(|finding| finding["code"] == code);
    finding.unwrap_or_else(|| panic!("no {code} in {:#}", answer.body["findings"]))
}

fn message<'a>(answer: &'a Answer, code: &str) -> &'a str {
    finding(answer, code)["message"].as_str().unwrap()
}

fn milestone<'a>(answer: &'a Answer, code: &str) -> &'a Value {
    let milestones = answer.body["milestones"].as_array().unwrap();
    milestones.iter().find(|milestone| milestone["milestone"] == code).unwrap_or_else(|| panic!("no {code}"))
}

/// Earliest and latest of a milestone, an hour early: as if the last foot were sealed at the start, in weather that does not change.
fn span(answer: &Answer, code: &str) -> [String; 2] {
    ["earliest", "latest"].map(|key| {
        let Some(text) = milestone(answer, code)[key].as_str() else { return "beyond".to_owned() };
        let (clock, offset) = text.split_at(19);
        let time: jiff::civil::DateTime = clock.parse().unwrap();
        format!("{}{offset}", time - jiff::SignedDuration::from_hours(1))
    })
}

fn alternative<'a>(answer: &'a Answer, kind: &str) -> &'a Value {
    answer.body["alternatives"].as_array().unwrap().iter().find(|row| row["kind"] == kind).unwrap()
}
