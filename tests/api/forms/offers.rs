//! Whatever a form offers is taken by the path that it is for.

use serde_json::{Value, json};

use super::{FORMS, codes, fields, magnitude, not_needed, pointer, text, texts};
use crate::harness::calculate;
use crate::requests::{with, without};

/// A request that has nothing but what it must have, and for a plan the weather of a day.
fn base(calculation: &str) -> Value {
    let request = json!({ "opening": { "width": "24 ft", "barrier": "slide_gate" } });
    if calculation == "loop-sizing" {
        return request;
    }
    let hour = |hour: u32| {
        json!({
            "time": format!("2026-06-{:02}T{:02}:00:00-05:00", 1 + hour / 24, hour % 24),
            "air": "22 °C", "surface": "25 °C", "relative_humidity_percent": 55, "precipitation_probability_percent": 0
        })
    };
    let request = with(&request, "/start", "2026-06-02T08:00:00-05:00");
    with(&request, "/weather", json!({ "conditions": (0..72).map(hour).collect::<Vec<_>>() }))
}

/// Puts a value where a pointer says, with the objects on the way.
fn put(request: &Value, pointer: &str, value: impl Into<Value>) -> Value {
    let (parent, _) = pointer.rsplit_once('/').unwrap();
    let request = if parent.is_empty() || request.pointer(parent).is_some() {
        request.clone()
    } else {
        put(request, parent, json!({}))
    };
    with(&request, pointer, value)
}

/// The request that a field is tried in: with what its object must have, taken from the form itself, and with what it is needed with.
fn base_for(calculation: &str, field: &Value, fields: &[Value]) -> Value {
    let own = pointer(field);
    let mut request = base(calculation);
    for other in fields.iter().filter(|other| pointer(other) != own) {
        let within = other["required_within"].as_str().unwrap_or("none").trim_start_matches('#');
        if own.starts_with(&format!("{within}/")) {
            request = put(&request, pointer(other), usual(other));
        }
    }
    beside(own).iter().fold(request, |request, (pointer, value)| put(&request, pointer, *value))
}

/// What a field is needed with.
fn beside(pointer: &str) -> &'static [(&'static str, &'static str)] {
    match pointer {
        "/opening/leaf_open" => &[("/opening/barrier", "overhead_door")],
        "/saw/core_diameter" | "/productivity/core" => &[("/saw/corner", "cored")],
        "/productivity/burial" => &[("/surface", "gravel")],
        "/sealant/shelf_life" => &[("/sealant/made_on", "2026-01-31")],
        "/sealant/data_sheet/at_temperature" | "/sealant/data_sheet/at_relative_humidity_percent" => {
            &[("/sealant/data_sheet/skin_over", "1 h")]
        }
        "/sealant/data_sheet/damp_slot_allowed" => {
            &[("/sealant/kind", "two_part_reactive"), ("/surface_condition", "damp")]
        }
        _ => &[],
    }
}

/// What some offers need beside them, for they contradict what is usual.
fn beside_an_offer(pointer: &str) -> &'static [(&'static str, &'static str)] {
    match pointer {
        // A setback takes at most two fifths of the width.
        "/opening/edge_setback" => &[("/opening/width", "200 ft")],
        // A part of the length is no longer than it.
        "/lead_in/in_slot" | "/lead_in/in_conduit" => &[("/lead_in/length", "5000 ft")],
        // Insulation is wider than its conductor.
        "/wire/over_insulation" => &[("/wire/gauge", "24 AWG")],
        _ => &[],
    }
}

/// A value that a field is usually given.
fn usual(field: &Value) -> Value {
    match text(field, "kind") {
        "quantity" => field["example"]["us"].clone(),
        "choice" => field.get("default_code").unwrap_or(&field["options"][0]["code"]).clone(),
        "number" => field["minimum"].clone(),
        "text" if field["max_length"] == 3 => json!("USD"),
        "text" => json!("Tern Island Boatyard"),
        kind => panic!("{kind} is required of {field}"),
    }
}

/// The default of a field, in each form in which it may be sent.
fn defaults(field: &Value) -> Vec<Value> {
    let plain = ["default_code", "default_codes", "default_number", "default_flag"];
    let quantity = ["us", "metric"].into_iter().filter_map(|system| field.get("default_quantity")?.get(system));
    plain.into_iter().filter_map(|name| field.get(name)).chain(quantity).cloned().collect()
}

/// Every value that a form offers for a field.
fn offered(field: &Value) -> Vec<Value> {
    let systems = |name: &str| ["us", "metric"].map(|system| field[name][system].clone()).to_vec();
    let mut values = match text(field, "kind") {
        "quantity" => ["least", "greatest", "example"].into_iter().flat_map(systems).collect(),
        "choice" => codes(field).into_iter().map(Value::from).collect(),
        "list" => {
            let one_by_one = codes(field).into_iter().map(|code| json!([code]));
            one_by_one.chain([json!(codes(field))]).collect()
        }
        "number" | "count" => vec![field["minimum"].clone(), field["maximum"].clone()],
        "numbers" => vec![json!([field["minimum"]]), json!([field["minimum"], field["maximum"]])],
        "flag" => vec![json!(true), json!(false)],
        "time" => vec![json!("2026-06-02T09:00:00-05:00")],
        "date" => vec![json!("2026-01-31")],
        "money" => vec![json!("24.50")],
        "text" => vec![usual(field)],
        kind => panic!("unknown kind {kind}"),
    };
    for default in defaults(field) {
        if !values.contains(&default) {
            values.push(default);
        }
    }
    values
}

fn every_offer_is_taken(calculation: &str) {
    let fields = fields(calculation);
    let mut tried = 0;
    let mut refused = Vec::new();
    for field in &fields {
        let base = base_for(calculation, field, &fields);
        let more = beside_an_offer(pointer(field)).iter();
        let base = more.fold(base, |request, (pointer, value)| put(&request, pointer, *value));
        for value in offered(field) {
            let request = put(&base, pointer(field), value.clone());
            let answer = calculate(calculation, &request);
            tried += 1;
            if answer.status != 200 {
                refused.push(format!("{} {value}: {}", pointer(field), answer.body["errors"]));
            }
        }
    }
    assert!(refused.is_empty(), "{} of {tried} are refused: {refused:#?}", refused.len());
    assert!(tried > 4 * fields.len(), "only {tried} were tried");
}

#[test]
fn a_sizing_takes_whatever_its_form_offers() {
    every_offer_is_taken("loop-sizing");
}

#[test]
fn a_plan_takes_whatever_its_form_offers() {
    every_offer_is_taken("installation-plan");
}

/// What an answer says of the job, without what it says of the request.
fn of_the_job(answer: &Value) -> Value {
    match answer {
        Value::Object(members) => {
            let is_of_job = |name: &str| !["assumed", "inputs", "unused", "basis"].contains(&name);
            let members = members.iter().filter(|(name, _)| is_of_job(name));
            members.map(|(name, value)| (name.clone(), of_the_job(value))).collect()
        }
        Value::Array(items) => items.iter().map(of_the_job).collect(),
        other => other.clone(),
    }
}

#[test]
fn what_is_no_field_is_unused_when_it_is_sent() {
    for (calculation, _) in FORMS {
        for (at, value) in not_needed(calculation) {
            let length = json!("50 ft");
            let base = put(&base(calculation), "/lead_in/length", length.clone());
            let base = put(&base, "/lead_in/in_slot", length);
            let answer = calculate(calculation, &put(&base, at.trim_start_matches('#'), value));
            assert_eq!(answer.status, 200, "{calculation} {at}: {}", answer.body);
            assert_eq!(texts(&answer.body["unused"]), [at], "{calculation}");
        }
    }
}

/// Whether a default is the one that is stated, and not its rounded conversion.
fn is_exact(field: &Value, default: &Value) -> bool {
    let Some(both) = field.get("default_quantity") else { return true };
    let [us, metric] = ["us", "metric"].map(|system| magnitude(text(both, system)));
    let off = (us - metric).abs() / us.abs().max(1e-9);
    // Two parts in a hundred: a tenth of a metre per minute, of a millimetre, of a degree.
    assert!(off < 0.02, "{field}");
    off < 1e-9 || *default == both["us"]
}

fn a_default_changes_nothing(calculation: &str) {
    let fields = fields(calculation);
    let (mut tried, mut changed) = (0, Vec::new());
    for field in &fields {
        let base = base_for(calculation, field, &fields);
        let base = if base.pointer(pointer(field)).is_some() { without(&base, pointer(field)) } else { base };
        for default in defaults(field) {
            let request = put(&base, pointer(field), default.clone());
            let sent = calculate(calculation, &request);
            assert_eq!(sent.status, 200, "{} {default}: {}", pointer(field), sent.body);
            let at = text(field, "pointer");
            let is_unused = texts(&sent.body["unused"]).contains(&at);
            assert!(!is_unused, "{at}: its default tells nothing");
            let left_out = calculate(calculation, &base);
            tried += 1;
            // Where its object cannot be without it, nothing can be left out.
            let can_be_left_out = left_out.status == 200;
            assert!(can_be_left_out || field["required_within"].is_string(), "{at}: {}", left_out.body);
            if can_be_left_out && is_exact(field, &default) && of_the_job(&left_out.body) != of_the_job(&sent.body) {
                changed.push(format!("{at} {default}"));
            }
        }
    }
    assert!(changed.is_empty(), "{} of {tried} defaults change something: {changed:#?}", changed.len());
    assert!(tried > 20, "only {tried} were tried");
}

#[test]
fn a_default_that_is_sent_changes_nothing_of_a_sizing() {
    a_default_changes_nothing("loop-sizing");
}

#[test]
fn a_default_that_is_sent_changes_nothing_of_a_plan() {
    a_default_changes_nothing("installation-plan");
}

#[test]
fn the_roles_of_a_barrier_are_those_that_it_is_given() {
    for field in fields("loop-sizing").iter().filter(|field| pointer(field) == "/roles") {
        let by_option = field["defaults_by_option"].as_array().unwrap();
        assert_eq!(by_option.len(), 7);
        for by in by_option {
            let request = put(&base("loop-sizing"), pointer(by), by["code"].clone());
            let answer = calculate("loop-sizing", &request);
            assert_eq!(answer.body["inputs"]["roles"], by["default_codes"], "{by}");
        }
    }
}

#[test]
fn a_refusal_points_to_its_field() {
    for (calculation, _) in FORMS {
        let fields = fields(calculation);
        for field in &fields {
            let wrong = match text(field, "kind") {
                "list" | "numbers" => json!(["nonsense"]),
                "text" => json!(""),
                _ => json!("nonsense"),
            };
            let answer = calculate(calculation, &put(&base_for(calculation, field, &fields), pointer(field), wrong));
            assert_eq!(answer.status, 422, "{field}");
            for (refused, code) in answer.faults() {
                // As the guide says: the field whose pointer it is, or begins with.
                let found: Vec<_> = fields
                    .iter()
                    .map(|field| text(field, "pointer"))
                    .filter(|own| refused == **own || refused.starts_with(&format!("{own}/")))
                    .collect();
                assert_eq!(found, [text(field, "pointer")], "{refused} {code}");
            }
        }
    }
}
