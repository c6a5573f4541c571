//! Each optional field alone, at both ends of its range, beside no more than what must be sent.

use serde_json::{Value, json};

use super::super::harness::calculate;
use super::super::installation_plan::full;
use super::super::requests::{Need, all, described, need, places};

/// What contradicts a field that must be sent: the leg of the loop, the length of the pair, the width of the opening, the air of the hour.
const CONTRADICTIONS: [(&str, &str); 7] = [
    ("/loop/corner_cut", "10 ft"),
    ("/lead_in/in_slot", "5000 ft"),
    ("/lead_in/in_shared_slot", "5000 ft"),
    ("/lead_in/in_conduit", "5000 ft"),
    ("/opening/edge_setback", "20 ft"),
    ("/fixed_loops/0/across_lane", "200 ft"),
    ("/dew_point", "80 °C"),
];

/// A value without the optional fields that do not lead to a place.
fn least(calculation: &str, value: &Value, at: &str, place: &str) -> Value {
    match value {
        Value::Object(members) => {
            let is_kept = |name: &str| {
                let at = format!("{at}/{name}");
                let is_on_the_way = place == at || place.starts_with(&format!("{at}/"));
                // One of two is needed: a class or a plate, the weather or its place, one figure of damp or the other. Weather needs a start.
                let needed = ["/plate", "/weather/conditions", "/relative_humidity_percent", "/start"];
                let is_instead = place.strip_suffix("dew_point").is_some_and(|hour| at.starts_with(hour));
                let is_needed = needed.iter().any(|end| at.ends_with(end)) && !is_instead;
                is_on_the_way || is_needed || !matches!(need(calculation, &at), Need::Optional)
            };
            let kept = members.iter().filter(|(name, _)| is_kept(name));
            kept.map(|(name, member)| (name.clone(), least(calculation, member, &format!("{at}/{name}"), place)))
                .collect()
        }
        Value::Array(items) => {
            let item = |(index, item): (usize, &Value)| least(calculation, item, &format!("{at}/{index}"), place);
            items.iter().enumerate().map(item).collect()
        }
        other => other.clone(),
    }
}

/// Both ends of the range that the description states, or every value of a short list.
fn ends(schema: &Value) -> Vec<Value> {
    if let (Some(least), Some(most)) = (schema.get("minimum"), schema.get("maximum")) {
        return vec![least.clone(), most.clone()];
    }
    if let Some(values) = schema.get("enum") {
        return values.as_array().unwrap().clone();
    }
    if schema["type"] == "boolean" {
        return vec![json!(false), json!(true)];
    }
    // "The depth of a slot. From 1/4 in to 12 in. Units: ft, in, ..."
    let description = schema["description"].as_str().unwrap_or_default();
    let range = description.split_once(". Units: ").and_then(|(before, _)| before.rsplit_once("From "));
    let range = range.and_then(|(_, range)| range.split_once(" to "));
    range.map_or_else(Vec::new, |(least, most)| vec![json!(least), json!(most)])
}

/// Every optional field with a range or a list of values, alone.
fn alone() -> Vec<(&'static str, String, Value)> {
    let mut requests = Vec::new();
    for (calculation, request) in all().into_iter().chain([("installation-plan", full())]) {
        for (place, _) in places(&request) {
            let (need, schema) = described(calculation, &place);
            if !matches!(need, Need::Optional) {
                continue;
            }
            for end in ends(schema) {
                let mut body = least(calculation, &request, "", &place);
                *body.pointer_mut(&place).unwrap() = end;
                requests.push((calculation, place.clone(), body));
            }
        }
    }
    requests
}

#[test]
fn no_field_is_refused_for_what_nobody_sent() {
    let requests = alone();
    assert!(requests.len() > 400, "{} requests", requests.len());
    let mut wrong = Vec::new();
    for (calculation, place, body) in &requests {
        let answer = calculate(calculation, body);
        let value = body.pointer(place).unwrap();
        let is_contradiction = CONTRADICTIONS.iter().any(|(end, sent)| place.ends_with(end) && value == sent);
        if (answer.status == 200) == is_contradiction {
            wrong.push(format!("{calculation} {place} {value}: {} {}", answer.status, answer.body["errors"]));
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}
