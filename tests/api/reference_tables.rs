//! The reference tables: what a form needs for its menus, and what a reader needs to check a report.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::{Value, json};

use super::harness::{calculate, description, get};
use super::requests::{all, loop_characteristics, with};

/// The tables of the description, by name.
fn tables() -> BTreeMap<String, Vec<Value>> {
    let paths = description()["paths"].as_object().unwrap().keys();
    // The sentences of reports are not the members of a list.
    let names = paths.filter_map(|path| path.strip_prefix("/v1/reference/")).filter(|name| *name != "messages");
    names.map(|name| (name.to_owned(), rows(name))).collect()
}

fn rows(table: &str) -> Vec<Value> {
    let answer = get(&format!("/v1/reference/{table}"));
    assert_eq!(answer.status, 200, "{table}");
    answer.body["rows"].as_array().unwrap().clone()
}

fn codes(rows: &[Value]) -> Vec<&str> {
    rows.iter().map(|row| row["code"].as_str().unwrap()).collect()
}

fn texts(list: &Value) -> Vec<&str> {
    list.as_array().unwrap().iter().map(|text| text.as_str().unwrap()).collect()
}

#[test]
fn every_table_that_is_needed_answers() {
    let tables = tables();
    for name in [
        "wire-gauges",
        "vehicle-classes",
        "surfaces",
        "barriers",
        "site-hazards",
        "roles",
        "shapes",
        "constructions",
        "detector-envelopes",
        "observations",
        "faults",
        "reading-places",
        "substitution-points",
        "fault-tests",
        "fault-test-outcomes",
        "disturbances",
        "insulation-states",
        "existing-loop-verdicts",
        "surface-conditions",
        "cure-milestones",
        "cure-verdicts",
        "findings",
        "problems",
        "sources",
    ] {
        assert!(tables.contains_key(name), "{name} is not described");
    }
    assert!(tables.values().all(|rows| !rows.is_empty()), "a table is empty");
}

#[test]
fn each_row_starts_with_its_code_and_says_what_it_is() {
    for (table, rows) in tables() {
        let unique: BTreeSet<_> = codes(&rows).into_iter().map(str::to_owned).collect();
        assert_eq!(unique.len(), rows.len(), "{table} has a code twice");
        for row in &rows {
            let keys: Vec<_> = row.as_object().unwrap().keys().take(4).map(String::as_str).collect();
            assert_eq!(keys, ["code", "label", "description", "source_ids"], "{table}");
            let label = row["label"].as_str().unwrap();
            assert!((2..=50).contains(&label.chars().count()) && !label.ends_with('.'), "{table}: {label}");
            let text = row["description"].as_str().unwrap();
            assert!(text.len() > 10 && text.ends_with('.') && !text.contains('\n'), "{table}: {text}");
        }
    }
}

#[test]
fn every_source_that_is_named_is_in_the_register() {
    let tables = tables();
    let sources: BTreeSet<_> = codes(&tables["sources"]).into_iter().collect();
    for (table, rows) in &tables {
        for row in rows {
            let named = texts(&row["source_ids"]);
            // Codes of the protocol and the sources themselves need no source.
            assert!(!named.is_empty() || ["problems", "sources"].contains(&table.as_str()), "{table}: {row}");
            assert!(named.iter().all(|id| sources.contains(id)), "{table}: {named:?}");
        }
    }
}

#[test]
fn the_menus_of_a_form_hold_just_what_requests_take() {
    let tables = tables();
    let closed: BTreeMap<_, _> = description()["components"]["schemas"]
        .as_object()
        .unwrap()
        .iter()
        .filter_map(|(name, schema)| Some((name.as_str(), texts(schema.get("enum")?))))
        .collect();
    let menus = [
        ("Barrier", "barriers"),
        ("Construction", "constructions"),
        ("Corner", "corners"),
        ("DetectorEnvelope", "detector-envelopes"),
        ("Disturbance", "disturbances"),
        ("FailureBehaviour", "failure-behaviours"),
        ("FaultTest", "fault-tests"),
        ("FaultTestOutcome", "fault-test-outcomes"),
        ("InsulationState", "insulation-states"),
        ("LeadInPair", "lead-in-pairs"),
        ("LeafOpen", "leaf-positions"),
        ("Observation", "observations"),
        ("OutputMode", "output-modes"),
        ("PlanExtra", "plan-extras"),
        ("PlanPart", "plan-parts"),
        ("ReadingPlace", "reading-places"),
        ("RodForm", "backer-rods"),
        ("Role", "roles"),
        ("SealantKind", "sealant-kinds"),
        ("Shape", "shapes"),
        ("SiteHazard", "site-hazards"),
        ("SubstitutionPoint", "substitution-points"),
        ("Surface", "surfaces"),
        ("SurfaceCondition", "surface-conditions"),
        ("UnitSide", "unit-sides"),
        ("VehicleClass", "vehicle-classes"),
        ("Wiring", "wirings"),
    ];
    assert!(menus.iter().map(|(schema, _)| *schema).eq(closed.keys().copied()), "{:?}", closed.keys());
    for (schema, table) in menus {
        assert_eq!(closed[schema], codes(&tables[table]), "{schema} and {table}");
    }
}

#[test]
fn every_wire_on_the_menu_is_taken_and_understood_as_listed() {
    for row in rows("wire-gauges") {
        let code = row["code"].as_str().unwrap();
        let request =
            with(&loop_characteristics(), "/loop/wire", json!({ "gauge": code, "over_insulation": "0.2 in" }));
        let answer = calculate("loop-characteristics", &with(&request, "/lead_in/gauge", code));
        assert_eq!(answer.status, 200, "{code}: {}", answer.body);
        let wire = &answer.body["inputs"]["loop"]["wire"];
        assert_eq!((&wire["gauge"], &wire["conductor_diameter"]), (&row["code"], &row["conductor_diameter"]));
    }
}

#[test]
fn wire_has_its_standard_diameter_and_resistance() {
    // Nominal diameters of ASTM B258, inch; ohm per 1000 ft at 20 °C of annealed copper (IACS).
    let published = [
        ("10 AWG", 0.1019, 0.9989),
        ("12 AWG", 0.0808, 1.588),
        ("14 AWG", 0.0641, 2.525),
        ("16 AWG", 0.0508, 4.016),
        ("18 AWG", 0.0403, 6.385),
        ("20 AWG", 0.0320, 10.15),
    ];
    let rows = rows("wire-gauges");
    for (code, inch, ohm_per_kft) in published {
        let row = rows.iter().find(|row| row["code"] == code).unwrap();
        let close = |key: &Value, expected: f64| (key.as_f64().unwrap() / expected - 1.0).abs() < 0.002;
        assert!(close(&row["conductor_diameter"]["inch"], inch), "{row}");
        assert!(close(&row["resistance_ohm_per_kft"], ohm_per_kft), "{row}");
        assert!(close(&row["resistance_ohm_per_km"], ohm_per_kft / 0.3048), "{row}");
    }
    // 1.7241e-8 ohm metre over the area.
    for (code, area) in [("1 mm2", 1.0), ("1.5 mm2", 1.5), ("2.5 mm2", 2.5)] {
        let row = rows.iter().find(|row| row["code"] == code).unwrap();
        assert!((row["resistance_ohm_per_km"].as_f64().unwrap() - 17.241 / area).abs() < 0.001, "{row}");
    }
}

#[test]
fn a_barrier_lists_the_roles_that_it_is_given_when_none_are_sent() {
    for row in rows("barriers") {
        let request = json!({ "opening": { "width": "16 ft", "barrier": row["code"] } });
        let answer = calculate("loop-sizing", &request);
        assert_eq!(answer.body["inputs"]["roles"], row["usual_roles"], "{}", row["code"]);
        let assumed = answer.body["assumed"].as_array().unwrap();
        let roles = assumed.iter().find(|assumed| assumed["about"] == "#/roles").unwrap();
        assert_eq!(roles["value"].as_str().unwrap().split(", ").collect::<Vec<_>>(), texts(&row["usual_roles"]));
    }
}

#[test]
fn every_problem_of_the_description_is_in_the_table_with_its_status() {
    let rows = rows("problems");
    let mut met = BTreeSet::new();
    for (path, item) in description()["paths"].as_object().unwrap() {
        for (status, response) in
            item.as_object().unwrap().values().flat_map(|operation| operation["responses"].as_object().unwrap())
        {
            let Some(examples) = response["content"]["application/problem+json"]["examples"].as_object() else {
                continue;
            };
            for (code, example) in examples {
                met.insert(code.clone());
                let row =
                    rows.iter().find(|row| row["code"] == *code).unwrap_or_else(|| panic!("{code} is not listed"));
                assert_eq!(row["status"].to_string(), *status, "{path} {code}");
                assert_eq!(row["applies_to"], "answer");
                assert_eq!((&example["value"]["title"], &example["value"]["code"]), (&row["label"], &row["code"]));
            }
        }
    }
    let answers =
        rows.iter().filter(|row| row["applies_to"] == "answer").map(|row| row["code"].as_str().unwrap().to_owned());
    // A wrong method and a refused preflight belong to no operation.
    let elsewhere = ["method_not_allowed", "preflight_refused"].map(str::to_owned);
    assert_eq!(met, answers.filter(|code| !elsewhere.contains(code)).collect());
}

#[test]
fn every_finding_of_every_example_is_in_the_table() {
    let findings = rows("findings");
    let codes = codes(&findings);
    // Drawings and summaries take the same requests and answer no findings of this kind.
    let paths = description()["paths"].as_object().unwrap().iter();
    let paths = paths.filter(|(path, item)| item["post"]["tags"][0] == "calculations" && !path.ends_with("/summary"));
    let examples = paths.filter_map(|(path, item)| {
        let examples = item["post"]["requestBody"]["content"]["application/json"]["examples"].as_object()?;
        Some(examples.values().map(|example| (path.trim_start_matches("/v1/").to_owned(), example["value"].clone())))
    });
    let full = all().into_iter().map(|(name, request)| (name.to_owned(), request));
    let mut met = 0;
    for (calculation, request) in examples.flatten().chain(full) {
        for finding in calculate(&calculation, &request).body["findings"].as_array().unwrap() {
            assert!(codes.contains(&finding["code"].as_str().unwrap()), "{finding}");
            met += 1;
        }
    }
    assert!(met > 10, "the examples find nothing");
}
