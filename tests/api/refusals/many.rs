//! However many faults a body has, of whatever kinds: one answer names them all.

use std::collections::BTreeSet;

use proptest::prelude::*;
use serde_json::{Value, json};

use super::{refused, refused_text};
use crate::harness::{Answer, calculate, description, post};
use crate::requests::{Need, all, loop_sizing, need, places, with, without};

/// For each calculation a sound request, and what is done to it: an unknown field, a value outside a closed list, a required field that is
/// left out, a wrong type, and a quantity or number out of range, each with its place.
fn five_kinds() -> Vec<(&'static str, Value, [&'static str; 5], [Value; 3])> {
    let of = |calculation| all().into_iter().find(|(name, _)| *name == calculation).unwrap().1;
    let faults = json!({
        "design": {
            "loop": { "along_travel": "6 ft", "across_lane": "6 ft", "turns": 3 }, "lead_in": { "length": "100 ft" }
        },
        "readings": { "insulation_megohm": 0.3, "test_voltage_v": 500 }, "observations": ["fault_after_rain"]
    });
    let row = |calculation, places, values| (calculation, of(calculation), places, values);
    let sizing = (
        ["/opening/colour", "/surface", "/opening/width", "/detector/frequency_min_khz", "/slot/depth"],
        [json!("concreet"), json!("20"), json!("2000 in")],
    );
    vec![
        row(
            "loop-characteristics",
            ["/colour", "/loop/shape", "/loop/across_lane", "/loop/turns", "/lead_in/length"],
            [json!("rectangel"), json!("three"), json!("60000 ft")],
        ),
        row(
            "vehicle-response",
            ["/loop/colour", "/loop/shape", "/lead_in/length", "/positions", "/offset_across"],
            [json!("rectangel"), json!(true), json!("2000 ft")],
        ),
        ("loop-sizing", loop_sizing(), sizing.0, sizing.1.clone()),
        row(
            "detector-compatibility",
            ["/loops/0/colour", "/wiring", "/loops/0/loop/along_travel", "/vehicles/0", "/loops/0/lead_in/length"],
            [json!("sereis"), json!(5), json!("60000 ft")],
        ),
        row(
            "material-estimate",
            ["/colour", "/sealant/kind", "/loops/0/loop/across_lane", "/crossings", "/saw/blade_diameter"],
            [json!("glue"), json!("two"), json!("1400 in")],
        ),
        row(
            "cure-guidance",
            [
                "/colour",
                "/surface_condition",
                "/start",
                "/weather/conditions/0/relative_humidity_percent",
                "/slot/depth",
            ],
            [json!("drie"), json!("70"), json!("2000 in")],
        ),
        ("installation-plan", loop_sizing(), sizing.0, sizing.1),
        (
            "fault-finding",
            faults,
            [
                "/colour",
                "/observations/0",
                "/design/loop/across_lane",
                "/readings/test_voltage_v",
                "/readings/insulation_megohm",
            ],
            [json!("fault_after_rane"), json!("500"), json!(-1)],
        ),
        row(
            "existing-loop",
            ["/colour", "/role", "/along_travel", "/over_steel", "/across_lane"],
            [json!("exitt"), json!("yes"), json!("8000 ft")],
        ),
    ]
}

const KINDS: [&str; 5] = ["field_unknown", "value_unknown", "field_missing", "type_wrong", "out_of_range"];

fn with_five(request: &Value, places: [&str; 5], [listed, typed, ranged]: [Value; 3]) -> Value {
    let request = with(request, places[0], 1);
    let request = with(&request, places[1], listed);
    let request = without(&request, places[2]);
    let request = with(&request, places[3], typed);
    with(&request, places[4], ranged)
}

/// The paths that take the request of a calculation.
fn paths_of(calculation: &str) -> Vec<&'static str> {
    let schema = |item: &'static Value| {
        let body = item["post"]["requestBody"]["content"]["application/json"].as_object()?;
        Some(&body["schema"])
    };
    let paths = description()["paths"].as_object().unwrap();
    let own = schema(&paths[&format!("/v1/{calculation}")]).unwrap();
    paths
        .iter()
        .filter(|(_, item)| schema(item) == Some(own))
        .map(|(path, _)| path.trim_start_matches("/v1/"))
        .collect()
}

#[test]
fn five_faults_of_five_kinds_come_in_one_answer_on_every_path() {
    let mut asked = 0;
    for (calculation, sound, places, values) in five_kinds() {
        assert_eq!(calculate(calculation, &sound).status, 200, "{calculation}");
        let wrong = with_five(&sound, places, values);
        let pointers = places.map(|place| format!("#{place}"));
        let expected: Vec<_> = pointers.iter().map(String::as_str).zip(KINDS).collect();
        for path in paths_of(calculation) {
            refused(path, &wrong, &expected);
            asked += 1;
        }
        // Each of them alone has the same words.
        let together = calculate(calculation, &wrong);
        for fault in together.body["errors"].as_array().unwrap() {
            let at = fault["pointer"].as_str().unwrap().trim_start_matches('#');
            let alone = if fault["code"] == "field_missing" {
                without(&sound, at)
            } else {
                with(&sound, at, wrong.pointer(at).unwrap().clone())
            };
            let alone = calculate(calculation, &alone);
            assert_eq!(alone.body["errors"], json!([fault]), "{calculation} {at}");
        }
    }
    assert!(asked >= 15, "{asked} paths were asked");
}

#[test]
fn an_item_of_a_batch_has_all_its_faults_too_and_never_fails_the_rest() {
    let (_, sound, places, values) = five_kinds().into_iter().find(|row| row.0 == "installation-plan").unwrap();
    let items = json!({ "items": [
        { "id": "wrong", "request": with_five(&sound, places, values.clone()) }, { "id": "sound", "request": sound },
    ], "shared": { "sealant": { "kind": "two_part_reactive" } } });
    let answer = calculate("installation-plan/batch", &items);
    assert_eq!(answer.body["results"][1]["status"], 200, "{:#}", answer.body["results"][1]["problem"]);
    let mut expected: Vec<_> =
        places.iter().zip(KINDS).map(|(place, kind)| (format!("#/items/0/request{place}"), kind.to_owned())).collect();
    let mut found = faults_of(&answer.body["results"][0]["problem"]);
    found.sort();
    expected.sort();
    assert_eq!(found, expected);
    // What is wrong with the frame of a batch comes at once, too.
    let frame = json!({ "items": [{ "id": 5, "request": {} }, { "request": {} }], "pool": "yes", "colour": 1 });
    refused(
        "installation-plan/batch",
        &frame,
        &[
            ("#/items/0/id", "type_wrong"),
            ("#/items/1/id", "field_missing"),
            ("#/pool", "type_wrong"),
            ("#/colour", "field_unknown"),
        ],
    );
    let shared = json!({ "items": [], "shared": { "surface": "concreet", "vehicles": [1, "van"], "colour": 1 } });
    refused(
        "installation-plan/batch",
        &shared,
        &[
            ("#/shared/surface", "value_unknown"),
            ("#/shared/vehicles/0", "type_wrong"),
            ("#/shared/vehicles/1", "value_unknown"),
            ("#/shared/colour", "field_unknown"),
        ],
    );
}

fn faults_of(problem: &Value) -> Vec<(String, String)> {
    let text = |fault: &Value, key: &str| fault[key].as_str().unwrap().to_owned();
    let errors = problem["errors"].as_array().unwrap();
    errors.iter().map(|fault| (text(fault, "pointer"), text(fault, "code"))).collect()
}

#[test]
fn a_misspelt_field_is_read_as_what_was_meant_and_judged_under_its_own_name() {
    let request = json!({ "opning": { "widht": "24", "barrier": "slide_gate" }, "lead_in": { "lenght": true } });
    refused(
        "loop-sizing",
        &request,
        &[
            ("#/opning", "field_unknown"),
            ("#/opning/widht", "field_unknown"),
            ("#/opning/widht", "unit_missing"),
            ("#/lead_in/lenght", "field_unknown"),
            ("#/lead_in/lenght", "type_wrong"),
        ],
    );
    // Where both were sent, nothing is meant.
    let request = json!({ "opening": { "width": "24 ft", "widht": "wide", "barrier": "slide_gate" } });
    refused("loop-sizing", &request, &[("#/opening/widht", "field_unknown")]);
}

#[test]
fn what_holds_between_fields_is_not_judged_by_a_value_that_stands_in() {
    // A slot of 1 in with a cover of 3 in contradicts itself, but one of them is unknown here.
    let request = with(&with(&loop_sizing(), "/slot/depth", true), "/slot/cover", "3 in");
    refused("loop-sizing", &request, &[("#/slot/depth", "type_wrong")]);
    // An unknown field takes nothing away.
    let request = with(&with(&loop_sizing(), "/colour", 1), "/slot/cover", "3 in");
    refused("loop-sizing", &request, &[("#/colour", "field_unknown"), ("#/slot/cover", "contradiction")]);
}

#[test]
fn fields_sent_twice_and_lists_that_are_too_long_are_counted_with_the_rest() {
    let text = r#"{"opening":{"width":"24 ft","width":"25 ft","barrier":"slide_gate"},"surface":3,"surface":"gravel"}"#;
    refused_text(
        "loop-sizing",
        text,
        &[("#/opening/width", "field_duplicate"), ("#/surface", "type_wrong"), ("#/surface", "field_duplicate")],
    );
    let many = vec!["exit"; 3000];
    let request = json!({ "opening": { "width": "24 ft", "barrier": 1 }, "roles": many });
    let answer = calculate("loop-sizing", &request);
    let codes: Vec<_> = answer.faults().into_iter().map(|(_, code)| code).collect();
    assert_eq!(codes, ["type_wrong", "list_size"], "{:#}", answer.body);
}

#[test]
fn a_body_of_nothing_but_faults_is_counted_and_its_first_hundred_are_listed() {
    let names: serde_json::Map<_, _> = (0..2000).map(|number| (format!("f{number}"), json!(1))).collect();
    let answer = calculate("loop-sizing", &Value::Object(names));
    // And the opening, which is missing.
    assert_eq!((answer.status, &answer.body["error_count"]), (422, &json!(2001)));
    assert_eq!(answer.body["errors"].as_array().unwrap().len(), 100);
    assert!(answer.body["detail"].as_str().unwrap().contains("has the first 100"), "{}", answer.body["detail"]);
}

/// What may be done to a place of a sound request.
#[derive(Clone, Copy, Debug)]
enum Damage {
    Unknown,
    Missing,
    Null,
    Type,
}

/// Does it, where the place allows; returns the pointer of the fault.
fn damage(calculation: &str, request: &Value, place: &str, damage: Damage) -> Option<(Value, String)> {
    let value = request.pointer(place)?;
    let is_required = matches!(need(calculation, place), Need::Required);
    let pointer = format!("#{place}");
    match damage {
        Damage::Unknown => {
            let is_closed = value.is_object() && place != "/prices/items";
            is_closed.then(|| (with(request, &format!("{place}/zzzzz"), 1), format!("{pointer}/zzzzz")))
        }
        Damage::Missing => is_required.then(|| (without(request, place), pointer)),
        Damage::Null => is_required.then(|| (with(request, place, Value::Null), pointer)),
        Damage::Type => {
            let wrong = if value.is_boolean() { json!("text") } else { json!(true) };
            Some((with(request, place, wrong), pointer))
        }
    }
}

fn is_apart(place: &str, others: &[String]) -> bool {
    let is_within = |inner: &str, outer: &str| inner.strip_prefix(outer).is_some_and(|rest| rest.starts_with('/'));
    others.iter().all(|other| place != other && !is_within(place, other) && !is_within(other, place))
}

fn kinds() -> impl Strategy<Value = Damage> {
    prop::sample::select(vec![Damage::Unknown, Damage::Missing, Damage::Null, Damage::Type])
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 150, failure_persistence: None, ..ProptestConfig::default() })]

    /// However many faults of structure stand apart from each other, each has its pointer in the one answer, and nothing else has.
    #[test]
    fn every_drawn_fault_has_its_pointer(
        which in any::<prop::sample::Index>(),
        drawn in prop::collection::vec((any::<prop::sample::Index>(), kinds()), 1..12),
    ) {
        let (calculation, sound) = which.get(&all()).clone();
        let all_places = places(&sound);
        let (mut request, mut taken, mut expected) = (sound.clone(), Vec::new(), BTreeSet::new());
        for (index, kind) in drawn {
            let place = &index.get(&all_places).0;
            if is_apart(place, &taken) && let Some((damaged, pointer)) = damage(calculation, &request, place, kind) {
                request = damaged;
                expected.insert(pointer);
                taken.push(place.clone());
            }
        }
        prop_assume!(!expected.is_empty());
        let answer: Answer = post(&format!("/v1/{calculation}"), request.to_string());
        let found: BTreeSet<_> = answer.faults().into_iter().map(|(pointer, _)| pointer).collect();
        prop_assert_eq!(answer.status, 422);
        prop_assert_eq!(&found, &expected, "{}: {:#}", request, answer.body);
    }
}
