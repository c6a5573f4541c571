//! A default never refuses and never stops a job: where it does not fit what was sent, it gives way, and `assumed` says so.

mod cover;
mod ends;
mod labels;
mod plans;
mod unit;
mod wire;

use serde_json::Value;

use super::harness::{Answer, calculate};

/// The answer of a request that must be answered.
fn answered(calculation: &str, request: &Value) -> Answer {
    let answer = calculate(calculation, request);
    assert_eq!(answer.status, 200, "{calculation} {request}: {:#}", answer.body);
    answer
}

/// What was assumed about a field; the last that was said, and empty where nothing was.
fn assumed(answer: &Answer, about: &str) -> (String, String) {
    let mut entries = answer.body["assumed"].as_array().unwrap().iter();
    let entry = entries.rfind(|assumed| assumed["about"] == about);
    let text = |name: &str| entry.map_or("", |entry| entry[name].as_str().unwrap()).to_owned();
    (text("value"), text("reason"))
}

/// The findings of a code.
fn of_code<'a>(answer: &'a Answer, code: &str) -> Vec<&'a Value> {
    answer.body["findings"].as_array().unwrap().iter().filter(|finding| finding["code"] == code).collect()
}

/// A number of an answer.
fn number(answer: &Answer, pointer: &str) -> f64 {
    answer.body.pointer(pointer).and_then(Value::as_f64).unwrap_or_else(|| panic!("no {pointer}: {:#}", answer.body))
}
