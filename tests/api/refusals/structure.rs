//! JSON of another structure than the description: unknown, missing and repeated fields, other types, `null`, other values.

use serde_json::{Value, json};

use super::{hint, refused, refused_text, taken};
use crate::harness::{Answer, calculate, description, post};
use crate::requests::{Need, all, described, loop_characteristics, loop_sizing, need, places, with, without};

/// The places of closed lists, with the schema of each.
const CLOSED: [(&str, &str, &str); 10] = [
    ("loop-characteristics", "/loop/shape", "Shape"),
    ("loop-sizing", "/opening/barrier", "Barrier"),
    ("loop-sizing", "/roles/1", "Role"),
    ("loop-sizing", "/vehicles/0", "VehicleClass"),
    ("loop-sizing", "/surface", "Surface"),
    ("loop-sizing", "/site_hazards/0", "SiteHazard"),
    ("loop-sizing", "/construction", "Construction"),
    ("loop-sizing", "/detector/envelope", "DetectorEnvelope"),
    ("cure-guidance", "/sealant/kind", "SealantKind"),
    ("cure-guidance", "/surface_condition", "SurfaceCondition"),
];

/// Every place, the request itself included, at which an object stands.
fn objects(request: &Value) -> Vec<String> {
    let mut objects = vec![String::new()];
    let named = |(pointer, value): &(String, Value)| value.is_object() && pointer != "/prices/items";
    objects.extend(places(request).into_iter().filter(named).map(|(pointer, _)| pointer));
    objects
}

#[test]
fn the_requests_that_the_other_tests_change_are_sound() {
    for (calculation, request) in all() {
        taken(calculation, &request);
    }
}

#[test]
fn a_misspelt_field_is_named_with_the_nearest_known_one() {
    for (calculation, request) in all() {
        for (pointer, value) in places(&request) {
            let (parent, name) = pointer.rsplit_once('/').unwrap();
            if name.parse::<usize>().is_ok() {
                continue;
            }
            let (wrong, around) = (format!("{parent}/{name}{}", &name[name.len() - 1..]), without(&request, &pointer));
            let answer =
                refused(calculation, &with(&around, &wrong, value), &[(&format!("#{wrong}"), "field_unknown")]);
            assert_eq!(hint(&answer), format!("Did you mean {name}?"));
        }
    }
    let request = with(&without(&loop_characteristics(), "/lead_in/length"), "/lead_in/lenght", "60 ft");
    let answer = refused("loop-characteristics", &request, &[("#/lead_in/lenght", "field_unknown")]);
    assert_eq!(hint(&answer), "Did you mean length?");
}

#[test]
fn a_field_that_resembles_none_is_answered_with_those_that_exist() {
    for (calculation, request) in all() {
        for object in objects(&request) {
            for name in ["zzz", "a/b~c", "a`b", "`, expected `x"] {
                let escaped = name.replace('~', "~0").replace('/', "~1");
                let mut changed = request.clone();
                changed.pointer_mut(&object).unwrap().as_object_mut().unwrap().insert(name.to_owned(), json!(1));
                let answer = refused(calculation, &changed, &[(&format!("#{object}/{escaped}"), "field_unknown")]);
                for known in request.pointer(&object).unwrap().as_object().unwrap().keys() {
                    assert!(hint(&answer).contains(known.as_str()), "{object} {name}: {}", hint(&answer));
                }
            }
        }
    }
}

#[test]
fn an_unknown_field_with_the_name_of_its_parent_is_not_taken_for_the_parent() {
    let request = with(&loop_characteristics(), "/loop/loop", json!({}));
    refused("loop-characteristics", &request, &[("#/loop/loop", "field_unknown")]);
}

#[test]
fn a_long_name_is_cut_in_the_answer() {
    let (name, cut) = ("n".repeat(5000), "n".repeat(64));
    let request = with(&loop_sizing(), &format!("/{name}"), 1);
    refused("loop-sizing", &request, &[(&format!("#/{cut}"), "field_unknown")]);
    let request = with(&loop_sizing(), "/surface", name);
    refused("loop-sizing", &request, &[("#/surface", "value_unknown")]);
}

#[test]
fn a_field_sent_twice_is_refused_wherever_it_stands() {
    for (calculation, request) in all() {
        for (pointer, value) in places(&request) {
            let (parent, name) = pointer.rsplit_once('/').unwrap();
            if name.parse::<usize>().is_ok() {
                continue;
            }
            let text = with(&request, &format!("{parent}/again"), value).to_string();
            let text = text.replace("\"again\":", &format!("\"{name}\":"));
            let answer = refused_text(calculation, &text, &[(&format!("#{pointer}"), "field_duplicate")]);
            assert_eq!(hint(&answer), "Send it once.");
        }
    }
}

#[test]
fn a_required_field_that_is_missing_is_named_and_an_optional_one_is_not_missed() {
    for (calculation, request) in all() {
        for (pointer, _) in places(&request) {
            let name = pointer.rsplit('/').next().unwrap();
            match need(calculation, &pointer) {
                Need::Required => {
                    let fault = (&*format!("#{pointer}"), "field_missing");
                    let answer = refused(calculation, &without(&request, &pointer), &[fault]);
                    assert!(hint(&answer).starts_with(&format!("Add {name};")), "{}", hint(&answer));
                }
                // A vehicle class could stand instead.
                Need::Optional if pointer == "/plate" => {
                    let answer = refused(calculation, &without(&request, &pointer), &[("#/vehicle", "field_missing")]);
                    assert!(hint(&answer).starts_with("Send a vehicle class"), "{}", hint(&answer));
                }
                // A place could stand instead.
                Need::Optional if pointer == "/weather/conditions" => {
                    let fault = ("#/weather/conditions", "field_missing");
                    let answer = refused(calculation, &without(&request, &pointer), &[fault]);
                    assert!(hint(&answer).starts_with("Send the weather hour by hour"), "{}", hint(&answer));
                }
                Need::Optional => drop(taken(calculation, &without(&request, &pointer))),
                Need::Item => {}
            }
        }
        let required = described(calculation, "").1["required"].as_array().unwrap();
        let pointers: Vec<_> = required.iter().map(|name| format!("#/{}", name.as_str().unwrap())).collect();
        let missing: Vec<_> = pointers.iter().map(|pointer| (pointer.as_str(), "field_missing")).collect();
        refused(calculation, &json!({}), &missing);
    }
}

#[test]
fn null_is_refused_where_a_value_belongs() {
    for (calculation, request) in all() {
        for (pointer, _) in places(&request) {
            if !matches!(need(calculation, &pointer), Need::Optional) {
                let fault = (&*format!("#{pointer}"), "null_not_allowed");
                let answer = refused(calculation, &with(&request, &pointer, Value::Null), &[fault]);
                assert_eq!(hint(&answer), "Send a value.", "{pointer}");
            }
        }
        refused(calculation, &Value::Null, &[("#", "null_not_allowed")]);
    }
}

#[test]
fn null_an_empty_text_and_an_empty_list_in_an_optional_field_count_as_absent() {
    let mut compared = 0;
    for (calculation, request) in all() {
        for (pointer, _) in places(&request) {
            if !matches!(need(calculation, &pointer), Need::Optional) {
                continue;
            }
            let absent = calculate(calculation, &without(&request, &pointer));
            for empty in [json!(null), json!(""), json!([])] {
                let answer = calculate(calculation, &with(&request, &pointer, empty.clone()));
                let said = |answer: &Answer| (answer.status, without_id(&answer.body));
                assert_eq!(said(&answer), said(&absent), "{calculation} {pointer} {empty}");
                compared += 1;
            }
        }
    }
    assert!(compared > 400, "{compared}");
    // With white space, and beside text that only looks like it.
    let loose = "{ \"opening\": { \"width\": \"24 ft\", \"barrier\": \"slide_gate\" }, \"roles\": [ \n ], \"vehicles\" : null }";
    assert_eq!(post("/v1/loop-sizing", loose.to_owned()).status, 200);
    // An error behind such a value still has its place and its words.
    let wrong = json!({ "opening": { "width": "24 ft", "barrier": "slide_gate", "drive_length": null, "colour": 1 }, "roles": [] });
    let answer = refused("loop-sizing", &wrong, &[("#/opening/colour", "field_unknown")]);
    assert!(!answer.body.to_string().contains("at line"), "{:#}", answer.body);
    let typed = json!({ "opening": { "width": "24 ft", "barrier": "slide_gate" }, "lead_in": { "length": "60 ft", "gauge": true }, "roles": null });
    refused("loop-sizing", &typed, &[("#/lead_in/gauge", "type_wrong")]);
}

/// A body without what differs from call to call.
fn without_id(body: &Value) -> Value {
    let mut body = body.clone();
    body.as_object_mut().unwrap().remove("request_id");
    body
}

#[test]
fn a_label_out_of_a_menu_is_answered_with_its_code() {
    for (label, code) in [
        ("Sliding gate", "slide_gate"),
        ("Slide gate", "slide_gate"),
        ("Swing Gate", "swing_gate"),
        ("Barrier arm", "barrier_arm"),
    ] {
        let answer = refused(
            "loop-sizing",
            &json!({ "opening": { "width": "24 ft", "barrier": label } }),
            &[("#/opening/barrier", "value_unknown")],
        );
        assert!(hint(&answer).starts_with(&format!("Did you mean {code}")), "{label}: {}", hint(&answer));
    }
}

#[test]
fn an_array_is_no_object() {
    for (calculation, request) in all() {
        for object in objects(&request) {
            let members = request.pointer(&object).unwrap().as_object().unwrap();
            // With the very values that the object has, in the order of its fields; and with none, which in an optional field is absent.
            let mut lists = vec![members.values().cloned().collect()];
            if object.is_empty() || !matches!(need(calculation, &object), Need::Optional) {
                lists.push(Vec::new());
            }
            for list in lists {
                let changed = if object.is_empty() { Value::Array(list) } else { with(&request, &object, list) };
                let answer = refused(calculation, &changed, &[(&format!("#{object}"), "type_wrong")]);
                assert_eq!(hint(&answer), "Send an object.");
            }
        }
    }
}

#[test]
fn other_json_types_are_refused_wherever_they_stand() {
    for (calculation, request) in all() {
        for (pointer, value) in places(&request) {
            let others = match value {
                Value::Object(_) => vec![json!("text"), json!(1), json!(true)],
                Value::Array(_) => vec![json!("text"), json!(1), json!({}), json!(false)],
                Value::String(_) => vec![json!([]), json!({ "ft": 6 }), json!(true)],
                Value::Bool(_) => vec![json!([]), json!({}), json!("text"), json!(1)],
                _ => vec![json!([]), json!({}), json!("text"), json!(true)],
            };
            // An empty list in an optional field is absent.
            let is_optional = matches!(need(calculation, &pointer), Need::Optional);
            for other in others.into_iter().filter(|other| !(is_optional && *other == json!([]))) {
                let answer =
                    refused(calculation, &with(&request, &pointer, other), &[(&format!("#{pointer}"), "type_wrong")]);
                let machine = ["struct", "enum", "u32", "f64", "unit", "map", "sequence", "value"];
                assert!(
                    !machine.iter().any(|word| hint(&answer).contains(word)),
                    "the machine's words: {}",
                    hint(&answer)
                );
            }
        }
        for scalar in [json!(5), json!("text"), json!(true)] {
            refused(calculation, &scalar, &[("#", "type_wrong")]);
        }
    }
}

#[test]
fn a_value_outside_a_closed_list_is_answered_with_the_list() {
    for (calculation, pointer, schema) in CLOSED {
        let request = all().into_iter().find(|(name, _)| *name == calculation).unwrap().1;
        let codes = description()["components"]["schemas"][schema]["enum"].as_array().unwrap();
        let codes: Vec<_> = codes.iter().map(|code| code.as_str().unwrap()).collect();
        let list = format!("One of: {}.", codes.join(", "));
        let at = [(&*format!("#{pointer}"), "value_unknown")];
        let is_optional = matches!(need(calculation, pointer), Need::Optional);
        for value in ["qqqqqqqqqqqqqqqqqqqqqqqq", "", "`", "None"] {
            if is_optional && value.is_empty() {
                continue;
            }
            let answer = refused(calculation, &with(&request, pointer, value), &at);
            assert!(hint(&answer).ends_with(&list), "{pointer}: {}", hint(&answer));
        }
        for code in codes {
            let answer = refused(calculation, &with(&request, pointer, format!("{code}x")), &at);
            assert_eq!(hint(&answer), format!("Did you mean {code}? {list}"));
        }
        // Only the text itself counts, not its name in the machine and not one in upper case.
        for value in [schema.to_owned(), request.pointer(pointer).unwrap().as_str().unwrap().to_uppercase()] {
            refused(calculation, &with(&request, pointer, value), &at);
        }
        refused(calculation, &with(&request, pointer, 3), &[(&*format!("#{pointer}"), "type_wrong")]);
    }
}

#[test]
fn a_word_of_several_members_suggests_them_all() {
    let hint = |field: &str, value: serde_json::Value| {
        let mut request = json!({ "opening": { "width": "24 ft", "barrier": "slide_gate" } });
        request[field] = value;
        let answer = crate::harness::calculate("loop-sizing", &request);
        answer.body["errors"][0]["hint"].as_str().unwrap().to_owned()
    };
    assert!(hint("surface", json!("concrete")).starts_with("Did you mean existing_concrete or new_concrete?"));
    assert!(hint("vehicles", json!(["car"])).starts_with("Did you mean passenger_car or car_with_trailer?"));
}
