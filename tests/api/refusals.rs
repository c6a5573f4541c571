//! Content that cannot be used is refused with every field's name, a code, and what to send instead.

mod contradictions;
mod counts;
mod many;
mod quantities;
mod structure;
mod together;

use serde_json::Value;

use super::harness::{Answer, calculate, post};

/// How a hint may begin: each tells what to do.
const INSTRUCTIONS: [&str; 8] =
    ["Give ", "Write ", "Send ", "Add ", "Leave ", "Did you mean ", "One of: ", "Known here: "];

/// Sends a request that must be refused for just these `(pointer, code)`, in any order.
fn refused(calculation: &str, request: &Value, faults: &[(&str, &str)]) -> Answer {
    refused_text(calculation, &request.to_string(), faults)
}

/// As [`refused`], for JSON that no [`Value`] can hold.
fn refused_text(calculation: &str, request: &str, faults: &[(&str, &str)]) -> Answer {
    let answer = post(&format!("/v1/{calculation}"), request.to_owned());
    assert_eq!(answer.status, 422, "{request}: {:#}", answer.body);
    assert_eq!(answer.body["code"], "validation_failed", "{request}");
    assert_eq!(answer.body["status"], 422, "{request}");
    let mut found = answer.faults();
    let mut expected: Vec<_> =
        faults.iter().map(|(pointer, code)| ((*pointer).to_owned(), (*code).to_owned())).collect();
    found.sort();
    expected.sort();
    assert_eq!(found, expected, "{request}: {:#}", answer.body);
    for fault in answer.body["errors"].as_array().unwrap() {
        let hint = fault["hint"].as_str().unwrap();
        assert!(INSTRUCTIONS.iter().any(|words| hint.starts_with(words)), "{request}: no instruction: {hint}");
        assert!(hint.ends_with(['.', '?']), "{request}: no sentence: {hint}");
        assert!(hint.len() < 400 && fault["detail"].as_str().unwrap().len() < 400, "{request}: {fault}");
    }
    answer
}

/// Sends a request that must be answered.
fn taken(calculation: &str, request: &Value) -> Answer {
    let answer = calculate(calculation, request);
    assert_eq!(answer.status, 200, "{request}: {:#}", answer.body);
    answer
}

/// The hint of the only fault.
fn hint(answer: &Answer) -> &str {
    assert_eq!(answer.body["errors"].as_array().unwrap().len(), 1);
    answer.body["errors"][0]["hint"].as_str().unwrap()
}
