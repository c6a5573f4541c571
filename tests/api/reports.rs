//! What every report carries: its release, its sources, its assumptions, its cautions, and findings that lead somewhere.

use std::collections::BTreeSet;

use serde_json::{Value, json};

use super::harness::calculate;
use super::requests::{all, need, places, with, without};

/// Requests of many kinds: the smallest, the fullest, and jobs with much to be said about.
fn requests() -> Vec<(&'static str, Value)> {
    let hazards = [
        "reinforcing_mesh",
        "post_tensioned_slab",
        "snow_melt_cable",
        "buried_power_line",
        "adjacent_traffic",
        "cracked_pavement",
        "old_loop_cut",
    ];
    let mut requests: Vec<_> = all().into();
    requests.extend(smallest());
    let weather = json!({ "conditions": [
        { "time": "2026-01-20T22:00:00Z", "air": "39 °F", "dew_point": "38 °F", "precipitation_probability_percent": 70 },
        { "time": "2026-01-20T23:00:00Z", "air": "95 °F", "dew_point": "38 °F" },
    ] });
    requests.extend([
        ("cure-guidance", json!({ "sealant": { "kind": "hot_applied", "made_on": "2025-02-01" }, "start": "2026-01-20T22:10:00Z", "surface_condition": "damp", "needed_open_by": "2026-01-20T22:20:00Z", "weather": weather })),
        ("cure-guidance", json!({ "sealant": { "kind": "two_part_reactive", "data_sheet": { "maximum_application_temperature": "90 °F" } }, "start": "2026-01-20T23:10:00Z", "wire": { "insulation_rating": "90 °C" }, "weather": weather })),
        ("loop-characteristics", json!({ "loop": { "along_travel": "1 ft", "across_lane": "1 ft", "turns": 1 }, "lead_in": { "length": "5000 ft", "gauge": "24 AWG" }, "shunt_capacitance_nf": 100 })),
        ("loop-sizing", json!({ "opening": { "width": "6 ft", "barrier": "swing_gate_pair", "approach_speed": "30 mph", "opening_time": "20 s" }, "roles": ["exit", "closing"], "site_hazards": hazards, "stock": [] })),
        ("loop-sizing", json!({ "opening": { "width": "4.5 m", "barrier": "barrier_arm" }, "surface": "pavers", "construction": "hand_wound", "vehicles": ["bicycle"] })),
        ("loop-sizing", json!({ "opening": { "width": "200 ft", "barrier": "none" }, "slot": { "depth": "1.3 in", "cover": "1-1/4 in" } })),
    ]);
    requests
}

fn smallest() -> [(&'static str, Value); 6] {
    let coil = json!({ "along_travel": "6 ft", "across_lane": "8 ft", "turns": 3 });
    let lead_in = json!({ "length": "50 ft" });
    [
        ("loop-characteristics", json!({ "loop": coil, "lead_in": lead_in })),
        ("vehicle-response", json!({ "loop": coil, "lead_in": lead_in, "vehicle": "passenger_car" })),
        ("vehicle-response", json!({ "loop": coil, "lead_in": lead_in, "vehicle": "small_motorcycle" })),
        ("loop-sizing", json!({ "opening": { "width": "24 ft", "barrier": "slide_gate" } })),
        (
            "detector-compatibility",
            json!({ "loops": [{ "label": "A", "role": "exit", "loop": coil, "lead_in": lead_in }] }),
        ),
        (
            "cure-guidance",
            json!({
                "sealant": { "kind": "one_part_moisture_cure" }, "start": "2026-01-20T12:00:00Z", "surface_condition": "wet",
                "weather": { "conditions": [
                    { "time": "2026-01-20T12:00:00Z", "air": "6 °C", "relative_humidity_percent": 60, "surface": "4 °C" }
                ] }
            }),
        ),
    ]
}

fn report(calculation: &str, request: &Value) -> Value {
    let answer = calculate(calculation, request);
    assert_eq!(answer.status, 200, "{request}: {:#}", answer.body);
    answer.body
}

fn list<'a>(report: &'a Value, name: &str) -> &'a [Value] {
    report[name].as_array().unwrap()
}

#[test]
fn every_source_that_a_report_names_is_in_its_basis_once() {
    for (calculation, request) in requests() {
        let report = report(calculation, &request);
        assert_eq!(report["basis"]["engine"], env!("CARGO_PKG_VERSION"));
        let sources: Vec<_> =
            report["basis"]["sources"].as_array().unwrap().iter().map(|source| &source["id"]).collect();
        let unique: BTreeSet<_> = sources.iter().map(|id| id.as_str().unwrap()).collect();
        assert_eq!(unique.len(), sources.len(), "{calculation}");
        for (place, value) in places(&report) {
            if place.contains("/source_ids/") {
                assert!(unique.contains(value.as_str().unwrap()), "{calculation} {place}: {value} is not in the basis");
            }
        }
    }
}

#[test]
fn the_gravest_finding_comes_first() {
    let mut levels = BTreeSet::new();
    for (calculation, request) in requests() {
        let report = report(calculation, &request);
        let ranks: Vec<_> = list(&report, "findings")
            .iter()
            .map(|finding| {
                let level = finding["level"].as_str().unwrap().to_owned();
                levels.insert(level.clone());
                ["stop", "warning", "note"].iter().position(|known| *known == level).unwrap()
            })
            .collect();
        assert!(ranks.is_sorted(), "{calculation}: {ranks:?}");
    }
    assert_eq!(levels.len(), 3, "the requests do not meet every level");
}

#[test]
fn whatever_is_said_is_about_a_field_of_the_request() {
    for (calculation, request) in requests() {
        let report = report(calculation, &request);
        for said in ["findings", "assumed"].iter().flat_map(|name| list(&report, name)) {
            let about = said["about"].as_str().unwrap();
            // Panics when the description does not have the place.
            need(calculation, about.strip_prefix('#').unwrap());
        }
        for finding in list(&report, "findings") {
            for send in finding.get("send").map(|send| send.as_array().unwrap()).into_iter().flatten() {
                need(calculation, send.as_str().unwrap().strip_prefix('#').unwrap());
            }
            let message = finding["message"].as_str().unwrap();
            assert!(message.len() > 20 && message.ends_with('.') && !message.contains("  "), "{message}");
            assert!(!list(finding, "source_ids").is_empty(), "{finding}");
            for figure in list(finding, "figures") {
                let unit = figure["unit"].as_str().unwrap();
                let units = [
                    "ft", "m", "inch", "mm", "uH", "uH/ft", "uH/m", "ohm", "kHz", "percent", "ratio", "count",
                    "celsius", "h", "s", "megohm",
                ];
                assert!(units.contains(&unit), "{finding}");
            }
            if let Some(subject) = finding.get("subject") {
                assert!(report["inputs"].to_string().contains(&subject.to_string()), "{finding}");
            }
        }
    }
}

#[test]
fn only_what_was_not_sent_is_assumed() {
    for (calculation, request) in requests() {
        for assumed in list(&report(calculation, &request), "assumed") {
            let about = assumed["about"].as_str().unwrap().trim_start_matches('#');
            assert!(request.pointer(about).is_none(), "{calculation}: {about} was sent");
            assert!(assumed["reason"].as_str().unwrap().ends_with('.') && !list(assumed, "source_ids").is_empty());
        }
    }
    for (calculation, request) in all() {
        let report = report(calculation, &request);
        assert_eq!(list(&report, "assumed"), &[] as &[Value], "{calculation}: everything was sent");
    }
}

/// An assumed value as a request would hold it.
fn as_sent(calculation: &str, about: &str, text: &str) -> Value {
    let full = all().into_iter().find(|(name, _)| *name == calculation).unwrap().1;
    match full.pointer(about) {
        Some(Value::Array(items)) if items[0].is_number() => {
            json!(text.split(", ").map(|number| number.parse::<f64>().unwrap()).collect::<Vec<_>>())
        }
        Some(Value::Array(_)) => json!(text.split(", ").collect::<Vec<_>>()),
        Some(Value::Number(_)) => json!(text.parse::<f64>().unwrap()),
        _ => json!(text),
    }
}

#[test]
fn an_assumed_value_may_be_sent_and_changes_nothing_else() {
    for (calculation, request) in smallest() {
        let silent = report(calculation, &request);
        let mut spoken = request;
        let assumed = list(&silent, "assumed").to_vec();
        assert!(assumed.len() > 5, "{assumed:?}");
        for entry in &assumed {
            let about = entry["about"].as_str().unwrap().trim_start_matches('#');
            if let Some((parent, _)) = about.rsplit_once('/').filter(|(parent, _)| spoken.pointer(parent).is_none()) {
                spoken = with(&spoken, parent, json!({}));
            }
            spoken = with(&spoken, about, as_sent(calculation, about, entry["value"].as_str().unwrap()));
        }
        let spoken = report(calculation, &spoken);
        assert_eq!(list(&spoken, "assumed"), &[] as &[Value], "{calculation}");
        let figures = |report: &Value| {
            let report = without(&without(report, "/assumed"), "/basis");
            // A slot that is sent is kept to, which the same figures show.
            without(&report, "/unused")
        };
        assert_eq!(figures(&spoken), figures(&silent), "{calculation}");
    }
}

#[test]
fn no_report_leaves_out_that_a_loop_sees_no_people() {
    for (calculation, request) in requests() {
        let report = report(calculation, &request);
        let codes: Vec<_> = list(&report, "cautions").iter().map(|caution| caution["code"].as_str().unwrap()).collect();
        for code in ["not_for_people", "local_codes"] {
            assert_eq!(codes.iter().filter(|other| **other == code).count(), 1, "{calculation}: {codes:?}");
        }
    }
}

#[test]
fn the_same_request_has_the_same_answer() {
    for (calculation, request) in requests() {
        assert_eq!(report(calculation, &request), report(calculation, &request));
    }
}
