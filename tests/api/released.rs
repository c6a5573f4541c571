//! What was released is still taken: every request that the released description shows, and every quantity that it gives as an example.

use reqwest::Method;
use serde_json::{Value, json};

use super::harness::{client, description, shared};

fn released() -> Value {
    serde_json::from_str(include_str!("../../openapi/released/v1.json")).unwrap()
}

/// A validator of a schema of the committed description.
fn validator(schema: &Value) -> jsonschema::Validator {
    let mut schema = schema.clone();
    schema["components"] = description()["components"].clone();
    jsonschema::draft202012::new(&schema).unwrap()
}

#[test]
fn every_released_request_fits_its_schema_and_is_answered() {
    let released = released();
    let mut asked = 0;
    for (path, item) in released["paths"].as_object().unwrap() {
        let Some(content) = item.pointer("/post/requestBody/content/application~1json") else { continue };
        let named = content["examples"].as_object().into_iter().flat_map(|examples| examples.values());
        let examples: Vec<_> = named.map(|example| &example["value"]).chain(content.get("example")).collect();
        assert!(!examples.is_empty(), "{path} shows no request");
        let now = &description()["paths"][path]["post"]["requestBody"]["content"]["application/json"]["schema"];
        let validator = validator(now);
        for example in examples {
            asked += 1;
            let faults: Vec<_> = validator.iter_errors(example).map(|error| error.to_string()).collect();
            assert!(faults.is_empty(), "{path} no longer takes {example}: {faults:?}");
            let request = client().request(Method::POST, format!("http://{}{path}", shared()));
            let answer = request.header("content-type", "application/json").body(example.to_string()).send().unwrap();
            assert_eq!(answer.status(), 200, "{path} {example}");
        }
    }
    assert!(asked >= 30, "only {asked} requests were released");
}

#[test]
fn every_released_quantity_fits_its_pattern() {
    let released = released();
    let mut tried = 0;
    for (name, schema) in released["components"]["schemas"].as_object().unwrap() {
        let examples = schema["examples"].as_array().into_iter().flatten();
        for example in examples.filter(|_| schema.get("pattern").is_some()) {
            tried += 1;
            let now = validator(&json!({ "$ref": format!("#/components/schemas/{name}") }));
            assert!(now.is_valid(example), "{name} no longer takes {example}");
        }
    }
    assert!(tried >= 60, "only {tried} quantities were released");
}

/// `tests/contract/check` asks the same, after all else; this is heard of sooner.
#[test]
fn each_reviewed_widening_begins_at_what_was_released() {
    let widened: Vec<Value> = serde_json::from_str(include_str!("../contract/widened.json")).unwrap();
    let pattern = |document: &Value, schema: &str| document["components"]["schemas"][schema]["pattern"].clone();
    let released = released();
    for one in &widened {
        let schema = one["schema"].as_str().unwrap();
        assert_eq!(one["before"], pattern(&released, schema), "{schema}: tests/contract/release empties the list");
        assert_eq!(one["after"], pattern(description(), schema), "{schema}");
    }
}

#[test]
fn a_quantity_says_its_range_and_its_units() {
    let schemas = description()["components"]["schemas"].as_object().unwrap();
    let quantities: Vec<_> = schemas.iter().filter(|(_, schema)| schema.get("x-units").is_some()).collect();
    assert!(quantities.len() > 40, "only {} quantities", quantities.len());
    for (name, schema) in quantities {
        let text = |key: &str| schema[key].as_str().unwrap();
        let (least, greatest, told) = (text("x-minimum"), text("x-maximum"), text("description"));
        assert!(told.contains(&format!("From {least} to {greatest}.")), "{name}: {told}");
        let units: Vec<_> = schema["x-units"].as_array().unwrap().iter().map(|unit| unit.as_str().unwrap()).collect();
        assert!(told.ends_with(&format!("Units: {}.", units.join(", "))), "{name}: {told}");
        let pattern = validator(&json!({ "$ref": format!("#/components/schemas/{name}") }));
        for limit in [least, greatest] {
            assert!(pattern.is_valid(&json!(limit)), "{name} does not take its own limit {limit}");
        }
    }
    // The limits are those that are held.
    let width = &schemas["OpeningWidth"];
    for (text, status) in [(&width["x-minimum"], 200), (&width["x-maximum"], 200), (&json!("201 ft"), 422)] {
        let asked = json!({ "opening": { "width": text, "barrier": "none" } });
        assert_eq!(super::harness::calculate("loop-sizing", &asked).status, status, "{text}");
    }
}
