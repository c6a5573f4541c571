//! Changes a request as JSON: bytes changed at random seldom get past the decoder, and say little of what lies behind it.
//!
//! One to three changes at places drawn at random: a field that the description knows is added or sent anew, a leaf or an object
//! goes or stands twice, two places change their values. One time in five the bytes themselves are changed.

use libfuzzer_sys::fuzzer_mutate;
use serde_json::Value;

use super::values::{Draw, Schemas};

/// Changes the first `size` bytes of `data`, and says how many they are now.
pub fn mutate(target: &str, data: &mut [u8], size: usize, most: usize, seed: u32) -> usize {
    let mut draw = Draw::new(seed);
    let parsed = serde_json::from_slice::<Value>(&data[..size]).ok();
    let Some(mut body) = parsed.filter(|body| body.is_object() && !draw.one_in(5)) else {
        return fuzzer_mutate(data, size, most);
    };
    let schemas = Schemas::of(target);
    for _ in 0..=draw.below(3) {
        change(&mut body, schemas, &mut draw);
    }
    let text = body.to_string();
    if text.len() > most.min(data.len()) {
        return fuzzer_mutate(data, size, most);
    }
    data[..text.len()].copy_from_slice(text.as_bytes());
    text.len()
}

/// One change at one place.
fn change(body: &mut Value, schemas: &Schemas, draw: &mut Draw) {
    let places = places(body);
    let place = draw.of(&places).clone();
    let schema = schemas.at(&place);
    match draw.below(8) {
        0..=2 => add_member(body, &place, schemas, draw),
        3..=4 => set(body, &place, drawn(schema, schemas, draw)),
        5 => remove(body, &place),
        6 => repeat(body, &place, draw),
        _ => {
            let other = draw.of(&places).clone();
            let value = body.pointer(&pointer(&other)).cloned().unwrap_or_else(|| draw.leaf());
            set(body, &place, if draw.one_in(2) { value } else { draw.leaf() });
        }
    }
}

fn drawn(schema: Option<&Value>, schemas: &Schemas, draw: &mut Draw) -> Value {
    match schema {
        Some(schema) => schemas.value(schema, draw, 0),
        None => draw.leaf(),
    }
}

/// Every place of a body, as its steps.
fn places(body: &Value) -> Vec<Vec<String>> {
    fn walk(value: &Value, here: &mut Vec<String>, places: &mut Vec<Vec<String>>) {
        places.push(here.clone());
        let steps: Vec<_> = match value {
            Value::Array(items) => items.iter().enumerate().map(|(index, item)| (index.to_string(), item)).collect(),
            Value::Object(members) => members.iter().map(|(name, member)| (name.clone(), member)).collect(),
            _ => Vec::new(),
        };
        for (step, inner) in steps {
            here.push(step);
            walk(inner, here, places);
            here.pop();
        }
    }
    let mut places = Vec::new();
    walk(body, &mut Vec::new(), &mut places);
    places
}

fn pointer(place: &[String]) -> String {
    place.iter().map(|step| format!("/{}", step.replace('~', "~0").replace('/', "~1"))).collect()
}

fn set(body: &mut Value, place: &[String], value: Value) {
    if let Some(old) = body.pointer_mut(&pointer(place)) {
        *old = value;
    }
}

/// Adds a field that the description knows to the object at a place, or to the one that the place stands in.
fn add_member(body: &mut Value, place: &[String], schemas: &Schemas, draw: &mut Draw) {
    for place in [place, &place[..place.len().saturating_sub(1)]] {
        let Some(properties) = schemas.at(place).and_then(|schema| schema["properties"].as_object()) else { continue };
        let names: Vec<_> = properties.keys().collect();
        if let (false, Some(Value::Object(members))) = (names.is_empty(), body.pointer_mut(&pointer(place))) {
            let name = *draw.of(&names);
            members.insert(name.clone(), schemas.value(&properties[name], draw, 0));
            return;
        }
    }
}

fn remove(body: &mut Value, place: &[String]) {
    let Some((last, parent)) = place.split_last() else { return };
    match body.pointer_mut(&pointer(parent)) {
        Some(Value::Object(members)) => drop(members.shift_remove(last)),
        Some(Value::Array(items)) => drop(items.remove(last.parse().expect("an index"))),
        _ => {}
    }
}

/// Sends an item of a list once more, at the end or many times.
fn repeat(body: &mut Value, place: &[String], draw: &mut Draw) {
    let Some(value) = body.pointer(&pointer(place)).cloned() else { return };
    let Some((_, parent)) = place.split_last() else { return };
    if let Some(Value::Array(items)) = body.pointer_mut(&pointer(parent)) {
        let times = if draw.one_in(6) { 1 + draw.below(24) } else { 1 };
        items.extend(std::iter::repeat_n(value, times));
    }
}
