//! Which loops an opening needs: practice through the front door.

mod decided;
mod design;
mod judgement;
mod layout;
mod leaves;
mod site;
mod stock;

use serde_json::{Value, json};

use super::harness::{Answer, calculate};

/// A yard gate with what a test adds to the request.
fn gate(width: &str, barrier: &str, more: Value) -> Value {
    let mut request = json!({ "opening": { "width": width, "barrier": barrier } });
    let Value::Object(more) = more else { panic!("no object: {more}") };
    for (name, value) in more {
        match (request.get_mut(&name), value) {
            (Some(Value::Object(own)), Value::Object(added)) => own.extend(added),
            (_, value) => request[name] = value,
        }
    }
    request
}

fn sized(request: &Value) -> Answer {
    let answer = calculate("loop-sizing", request);
    assert_eq!(answer.status, 200, "{request}: {:#}", answer.body);
    answer
}

/// The loop of a role.
fn of_role<'a>(answer: &'a Answer, role: &str) -> &'a Value {
    let loops = answer.body["loops"].as_array().unwrap();
    loops.iter().find(|sized| sized["role"] == role).unwrap_or_else(|| panic!("no loop for {role}"))
}

/// The finding of a code, if it is made.
fn finding<'a>(answer: &'a Answer, code: &str) -> Option<&'a Value> {
    answer.body["findings"].as_array().unwrap().iter().find(|finding| finding["code"] == code)
}

/// The level of the finding of a code; empty when it is not made.
fn level<'a>(answer: &'a Answer, code: &str) -> &'a str {
    finding(answer, code).map_or("", |finding| finding["level"].as_str().unwrap())
}

fn feet(length: &Value) -> f64 {
    length["ft"].as_f64().unwrap_or_else(|| panic!("no length: {length}"))
}

fn metres(length: &Value) -> f64 {
    length["m"].as_f64().unwrap_or_else(|| panic!("no length: {length}"))
}

/// Jobs of many kinds, to hold rules against.
fn jobs() -> Vec<Value> {
    let mut jobs = Vec::new();
    for width in ["5 ft", "12 ft", "24 ft", "40 ft", "3.2 m", "7.2 m"] {
        for barrier in [
            "slide_gate",
            "swing_gate",
            "swing_gate_pair",
            "barrier_arm",
            "vertical_lift_gate",
            "overhead_door",
            "none",
        ] {
            for surface in ["existing_asphalt", "new_concrete"] {
                jobs.push(gate(width, barrier, json!({ "surface": surface })));
            }
        }
    }
    jobs
}
