//! The description itself: what client generators, linters and readers rely on.

use std::collections::BTreeSet;

use serde_json::{Map, Value};

use super::harness::{calculate, description};
use super::requests::{all, places, with, without};

/// Calls for every object of the document, with its place.
fn walk(value: &Value, place: &str, visit: &mut impl FnMut(&str, &Map<String, Value>)) {
    match value {
        Value::Object(members) => {
            visit(place, members);
            // Examples are data, not schemas.
            for (name, member) in members.iter().filter(|(name, _)| !["example", "examples"].contains(&name.as_str())) {
                walk(member, &format!("{place}/{name}"), visit);
            }
        }
        Value::Array(items) => {
            items.iter().enumerate().for_each(|(index, item)| walk(item, &format!("{place}/{index}"), visit));
        }
        _ => {}
    }
}

fn resolve(reference: &str) -> &'static Value {
    description().pointer(reference.trim_start_matches('#')).unwrap_or_else(|| panic!("{reference} leads nowhere"))
}

/// The names of the schemas that are reached from a place.
fn reached(from: &Value, names: &mut BTreeSet<String>) {
    walk(from, "", &mut |_, members| {
        let Some(reference) = members.get("$ref").and_then(Value::as_str) else { return };
        if names.insert(reference.rsplit('/').next().unwrap().to_owned()) {
            reached(resolve(reference), names);
        }
    });
}

/// The operations with their places.
fn operations() -> Vec<(String, &'static Value)> {
    let paths = description()["paths"].as_object().unwrap();
    let each = |(path, item): (&String, &'static Value)| {
        let path = path.clone();
        item.as_object().unwrap().iter().map(move |(method, operation)| (format!("{method} {path}"), operation))
    };
    paths.iter().flat_map(each).collect()
}

/// The schemas that requests reach, and those that answers reach.
fn schemas() -> [Vec<(String, &'static Value)>; 2] {
    let (mut requests, mut answers) = (BTreeSet::new(), BTreeSet::new());
    for (_, operation) in operations() {
        let sent = [operation.get("requestBody"), operation.get("parameters")];
        sent.into_iter().flatten().for_each(|part| reached(part, &mut requests));
        reached(&operation["responses"], &mut answers);
    }
    let named = |names: BTreeSet<String>| {
        let schema = |name: String| (name.clone(), &description()["components"]["schemas"][&name]);
        names.into_iter().map(schema).collect()
    };
    [named(requests), named(answers)]
}

#[test]
fn there_are_no_unions_and_no_nulls() {
    walk(description(), "#", &mut |place, members| {
        for word in ["oneOf", "anyOf", "allOf", "not", "nullable", "discriminator", "const"] {
            assert!(!members.contains_key(word) || place.ends_with("/properties"), "{place} has {word}");
        }
        if let Some(kind) = members.get("type").filter(|_| !place.ends_with("/properties")) {
            assert!(kind.is_string() && kind != "null", "{place} has the type {kind}");
        }
        assert!(!members.values().any(Value::is_null), "{place} has a null");
    });
}

#[test]
fn every_reference_leads_to_a_schema_and_every_schema_is_led_to() {
    walk(description(), "#", &mut |_, members| {
        if let Some(reference) = members.get("$ref") {
            assert!(resolve(reference.as_str().unwrap())["type"].is_string(), "{reference}");
        }
    });
    let [requests, answers] = schemas();
    let reached: BTreeSet<_> = requests.into_iter().chain(answers).map(|(name, _)| name).collect();
    let all = description()["components"]["schemas"].as_object().unwrap().keys().cloned().collect();
    assert_eq!(reached, all);
}

/// The names of released schemas that a description no longer has.
fn missing_schemas<'a>(released: impl Iterator<Item = &'a String>, description: &Value) -> Vec<&'a String> {
    released.filter(|name| description["components"]["schemas"].get(name.as_str()).is_none()).collect()
}

#[test]
fn every_released_schema_keeps_its_name() {
    let released: Value = serde_json::from_str(include_str!("../../openapi/released/v1.json")).unwrap();
    let released = released["components"]["schemas"].as_object().unwrap();
    assert!(released.len() > 100, "only {} schemas were released", released.len());
    let missing = missing_schemas(released.keys(), description());
    assert!(missing.is_empty(), "clients use names that are gone: {missing:?}");
    // The finder finds a name that is gone.
    let renamed = "SchemaOfAnotherName".to_owned();
    assert_eq!(missing_schemas(released.keys().chain([&renamed]), description()), [&renamed]);
}

#[test]
fn every_operation_is_named_told_and_shown() {
    let mut ids = BTreeSet::new();
    let tags: Vec<_> = description()["tags"].as_array().unwrap().iter().map(|tag| &tag["name"]).collect();
    for (place, operation) in operations() {
        let id = operation["operationId"].as_str().unwrap();
        assert!(ids.insert(id), "{id} names two operations");
        assert!(id.bytes().all(|byte| byte.is_ascii_lowercase() || byte == b'_'), "{id}");
        assert!(operation["summary"].as_str().unwrap().len() > 5, "{place}");
        assert!(operation["description"].as_str().unwrap().len() > 20, "{place}");
        let own = operation["tags"].as_array().unwrap();
        assert!(own.len() == 1 && tags.contains(&&own[0]), "{place}: {own:?}");
        if let Some(body) = operation.get("requestBody") {
            assert!(body["required"] == true && body["description"].is_string(), "{place}");
            assert!(is_shown(&body["content"]["application/json"]), "{place} shows no request");
        }
        for (status, response) in operation["responses"].as_object().unwrap() {
            assert!(response["description"].as_str().unwrap().len() > 5, "{place} {status}");
            for (media, content) in response.get("content").and_then(Value::as_object).into_iter().flatten() {
                let is_document = place.starts_with("get /openapi") || !media.ends_with("json");
                assert!(is_shown(content) || is_document && status == "200", "{place} {status} shows no answer");
            }
        }
    }
}

fn is_shown(content: &Value) -> bool {
    content.get("example").is_some() || content["examples"].as_object().is_some_and(|examples| !examples.is_empty())
}

#[test]
fn every_failure_is_a_problem() {
    for (place, operation) in operations() {
        let responses = operation["responses"].as_object().unwrap();
        let failures: Vec<_> = responses.iter().filter(|(status, _)| status.as_str() >= "400").collect();
        assert!(!failures.is_empty(), "{place} never fails");
        for (status, response) in failures {
            let content = response["content"].as_object().unwrap();
            let media: Vec<_> = content.keys().collect();
            assert_eq!(media, ["application/problem+json"], "{place} {status}");
            assert_eq!(content["application/problem+json"]["schema"]["$ref"], "#/components/schemas/Problem");
        }
        if operation.get("requestBody").is_some() {
            for status in ["200", "400", "408", "413", "415", "422", "500", "503"] {
                assert!(responses.contains_key(status), "{place} lacks {status}");
            }
        }
    }
}

#[test]
fn requests_are_closed_and_answers_are_open() {
    let [requests, answers] = schemas();
    let objects = |schemas: Vec<(String, &'static Value)>| {
        let objects: Vec<_> = schemas.into_iter().filter(|(_, schema)| schema["type"] == "object").collect();
        assert!(objects.len() > 5, "the walk is lost");
        objects
    };
    for (name, schema) in objects(requests) {
        assert_eq!(schema["additionalProperties"], false, "{name} is open");
    }
    for (name, schema) in objects(answers) {
        assert!(schema.get("additionalProperties").is_none(), "{name} is closed");
    }
}

#[test]
fn answers_close_no_list_of_values() {
    for (name, schema) in &schemas()[1] {
        walk(schema, name, &mut |place, members| assert!(!members.contains_key("enum"), "{place} is a closed list"));
    }
}

#[test]
fn whatever_a_request_holds_is_bounded() {
    for (name, schema) in &schemas()[0] {
        walk(schema, name, &mut |place, members| match members.get("type").and_then(Value::as_str) {
            Some("number" | "integer") => {
                assert!(members.contains_key("minimum") && members.contains_key("maximum"), "{place} has no range");
            }
            Some("array") => assert!(members.contains_key("maxItems"), "{place} has no greatest size"),
            // Names that the caller chooses are bounded by the body.
            Some("string") if place.ends_with("/propertyNames") => {}
            Some("string") => {
                assert!(
                    members.contains_key("enum") || members.contains_key("maxLength"),
                    "{place} has no greatest size"
                );
            }
            _ => {}
        });
    }
}

#[test]
fn every_field_is_described_in_snake_case() {
    for (name, schema) in schemas().into_iter().flatten() {
        assert!(schema["description"].as_str().is_some_and(|text| text.len() > 10), "{name} is not described");
        for (field, property) in schema["properties"].as_object().into_iter().flatten() {
            let text = property["description"].as_str().unwrap_or_default();
            assert!(text.len() > 5 && text.trim().ends_with('.'), "{name}.{field}: {text:?}");
            let is_snake = field.bytes().all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'_');
            assert!(is_snake && !field.starts_with('_'), "{name}.{field}");
        }
        for required in schema["required"].as_array().into_iter().flatten() {
            assert!(schema["properties"].get(required.as_str().unwrap()).is_some(), "{name} lacks {required}");
        }
    }
}

/// Every place of a request that holds a quantity, with its schema.
fn quantities(schema: &'static Value, place: &str, found: &mut Vec<(String, &'static Value)>) {
    let schema = schema.get("$ref").map_or(schema, |reference| resolve(reference.as_str().unwrap()));
    if schema["description"].as_str().is_some_and(|text| text.contains(" Units: ")) {
        found.push((place.to_owned(), schema));
    }
    for (name, property) in schema["properties"].as_object().into_iter().flatten() {
        quantities(property, &format!("{place}/{name}"), found);
    }
    if let Some(items) = schema.get("items") {
        quantities(items, &format!("{place}/0"), found);
    }
}

#[test]
fn the_examples_of_a_quantity_match_its_pattern_and_are_taken() {
    for (calculation, request) in all() {
        // The parts of the lead-in depend on its length, the times of a sealant on each other, and the dew point on the air.
        let depending = ["/in_slot", "/in_conduit", "/skin_over", "/open_to_traffic", "/full_cure", "/dew_point"];
        let parts = places(&request).into_iter().map(|(place, _)| place);
        let parts = parts.filter(|place| depending.iter().any(|name| place.ends_with(name)));
        let request = parts.fold(request.clone(), |request, place| without(&request, &place));
        let operation = &description()["paths"][format!("/v1/{calculation}")]["post"];
        let mut found = Vec::new();
        quantities(&operation["requestBody"]["content"]["application/json"]["schema"], "", &mut found);
        assert!(found.len() > 10, "the walk is lost");
        for (place, schema) in found {
            let validator = jsonschema::draft202012::new(schema).unwrap();
            let examples = schema["examples"].as_array().unwrap();
            assert_eq!(examples.len(), 2, "{place}");
            for example in examples {
                assert!(validator.is_valid(example), "{place}: {example} does not match {}", schema["pattern"]);
                // The humidity is given by its share or by its dew point.
                let humidity = place.replace("/dew_point", "/relative_humidity_percent");
                let around = if humidity == place { request.clone() } else { without(&request, &humidity) };
                let answer = calculate(calculation, &with(&around, &place, example.clone()));
                assert_eq!(answer.status, 200, "{place} {example}: {:#}", answer.body);
            }
            for wrong in ["24", "ft", "", "about 6 ft", "6\u{20}", &"6 ft".repeat(11)] {
                assert!(!validator.is_valid(&wrong.into()), "{place} publishes that it takes {wrong:?}");
            }
        }
    }
}

#[test]
fn the_pattern_of_a_length_takes_every_spelling_that_the_service_takes() {
    let validator = jsonschema::draft202012::new(&description()["components"]["schemas"]["LoopLeg"]).unwrap();
    let spellings = [
        "6 ft",
        "6ft",
        "6'",
        "6′",
        "6’",
        "6'-6\"",
        "5′ 6″",
        "6 ft 6 in",
        "1-1/4 yd",
        "72 in",
        "72\"",
        "72”",
        "72“",
        "1.8 m",
        "+1.8 m",
        ".9 m",
        "180 cm",
        "1800 mm",
        " 6 FEET ",
        "24/4 ft",
    ];
    for text in spellings {
        assert!(validator.is_valid(&text.into()), "{text}");
        let request = with(&with(&all()[0].1, "/loop/corner_cut", "0 in"), "/loop/along_travel", text);
        let answer = calculate("loop-characteristics", &request);
        assert_eq!(answer.status, 200, "{text}: {:#}", answer.body);
    }
}

#[test]
fn a_plan_takes_the_fields_of_its_parts_as_they_do() {
    let schemas = &description()["components"]["schemas"];
    let form = |request: &str| {
        let mut fields = schemas[request]["properties"].as_object().unwrap().clone();
        for field in fields.values_mut() {
            field.as_object_mut().unwrap().remove("description");
        }
        fields
    };
    let plan = form("InstallationPlanRequest");
    for part in ["LoopSizingRequest", "DetectorCompatibilityRequest", "MaterialEstimateRequest", "CureGuidanceRequest"]
    {
        let shared: Vec<_> = form(part).into_iter().filter(|(name, _)| plan.contains_key(name)).collect();
        assert!(shared.len() >= 3, "{part} has lost its fields in common with the plan");
        for (name, field) in shared {
            // A plan sizes its loops from the same stock, and sizing takes less of it.
            let expected = if part == "MaterialEstimateRequest" && name == "stock" {
                &schemas["LoopSizingRequest"]["properties"]["stock"]["maxItems"]
            } else {
                &field["maxItems"]
            };
            assert_eq!(&plan[&name]["maxItems"], expected, "{part} {name}");
            let mut own = plan[&name].clone();
            own["maxItems"] = field["maxItems"].clone();
            let mut field = field;
            field["maxItems"] = own["maxItems"].clone();
            assert_eq!(own, field, "{part} {name}");
        }
    }
}
