//! Forms: every value of a request that a person can fill in is a field, and whatever a form offers is taken.

mod offers;

use std::collections::{BTreeMap, BTreeSet};

use loopwright::quantity::dimension::{
    DepthPerDay, InductancePerLength, Length, Magnitude, Speed, Temperature, Time, Volume, WireSize,
};
use loopwright::quantity::{Dimension, parse};
use reqwest::Method;
use serde_json::{Value, json};

use super::harness::{description, get, send, shared};

const FORMS: [(&str, &str); 2] =
    [("loop-sizing", "LoopSizingRequest"), ("installation-plan", "InstallationPlanRequest")];

fn form(calculation: &str) -> Value {
    let answer = get(&format!("/v1/forms/{calculation}"));
    assert_eq!(answer.status, 200, "{calculation}");
    answer.body
}

fn fields(calculation: &str) -> Vec<Value> {
    form(calculation)["fields"].as_array().unwrap().clone()
}

fn text<'a>(value: &'a Value, name: &str) -> &'a str {
    value[name].as_str().unwrap_or_else(|| panic!("no {name}: {value}"))
}

fn texts(list: &Value) -> Vec<&str> {
    list.as_array().into_iter().flatten().map(|text| text.as_str().unwrap()).collect()
}

fn codes(field: &Value) -> Vec<&str> {
    field["options"].as_array().into_iter().flatten().map(|option| text(option, "code")).collect()
}

/// The pointer of a field as a JSON pointer.
fn pointer(field: &Value) -> &str {
    text(field, "pointer").trim_start_matches('#')
}

/// A value of the description that a person can fill in: its schema, whether every request has it, and the object that must have it.
struct Leaf {
    schema: Value,
    is_required: bool,
    required_within: Option<String>,
}

/// The schema behind a reference.
fn resolved(schema: &Value) -> Value {
    let Some(reference) = schema["$ref"].as_str() else { return schema.clone() };
    description().pointer(reference.trim_start_matches('#')).unwrap().clone()
}

/// Adds the leaves of an object. Lists of objects, maps and the weather are data of the calling program, by rule.
fn add_leaves(at: &str, schema: &Value, is_required: bool, found: &mut BTreeMap<String, Leaf>) {
    let required = texts(&schema["required"]);
    for (name, property) in schema["properties"].as_object().unwrap() {
        let (pointer, schema) = (format!("{at}/{name}"), resolved(property));
        let is_required_here = required.contains(&name.as_str());
        let is_data = schema["type"] == "array" && resolved(&schema["items"])["type"] == "object";
        if pointer == "#/weather" {
            continue;
        }
        if schema["type"] == "object" {
            if schema.get("properties").is_some() {
                add_leaves(&pointer, &schema, is_required && is_required_here, found);
            }
        } else if !is_data {
            let is_required = is_required && is_required_here;
            let required_within = (is_required_here && !is_required).then(|| at.to_owned());
            found.insert(pointer, Leaf { schema, is_required, required_within });
        }
    }
}

/// What a request takes and does not need: no fields. A value of each, for the calculations that do not need it.
fn not_needed(calculation: &str) -> BTreeMap<&'static str, Value> {
    let only_of_plans = [
        ("#/slab/edge_distance", json!("15 ft")),
        ("#/slab/is_suspended", json!(true)),
        ("#/wire/insulation_rating", json!("90 °C")),
        ("#/detector/frequency_min_khz", json!(20)),
        ("#/detector/frequency_max_khz", json!(80)),
        ("#/detector/tuning_capacitance_nf", json!(100)),
    ];
    let of_neither = [("#/lead_in/in_shared_slot", json!("3 ft")), ("#/detector/insulation_min_megohm", json!(5))];
    let only_of_plans = (calculation == "loop-sizing").then_some(only_of_plans).into_iter().flatten();
    only_of_plans.chain(of_neither).collect()
}

fn leaves(schema: &str) -> BTreeMap<String, Leaf> {
    let mut found = BTreeMap::new();
    add_leaves("#", &description()["components"]["schemas"][schema], true, &mut found);
    found
}

/// A quantity in SI base units.
fn magnitude(text: &str) -> f64 {
    fn of<D: Dimension>(text: &str) -> Option<f64> {
        parse::<D>(text).ok().map(|parsed| parsed.si.magnitude())
    }
    let readers = [
        of::<Length>,
        of::<Temperature>,
        of::<Speed>,
        of::<Time>,
        of::<Volume>,
        of::<WireSize>,
        of::<InductancePerLength>,
        of::<DepthPerDay>,
    ];
    readers.iter().find_map(|read| read(text)).unwrap_or_else(|| panic!("{text} is no quantity"))
}

#[test]
fn every_value_that_a_person_can_fill_in_is_a_field_exactly_once() {
    for (calculation, schema) in FORMS {
        let fields = fields(calculation);
        let pointers: BTreeSet<_> = fields.iter().map(|field| text(field, "pointer").to_owned()).collect();
        assert_eq!(pointers.len(), fields.len(), "{calculation} has a field twice");
        let mut leaves: BTreeSet<_> = leaves(schema).into_keys().collect();
        for pointer in not_needed(calculation).keys() {
            assert!(leaves.remove(*pointer), "{calculation} has no {pointer}");
        }
        assert!(leaves.len() > 35 && leaves.contains("#/opening/leaf_height"), "{leaves:?}");
        let missing: Vec<_> = leaves.difference(&pointers).collect();
        assert!(missing.is_empty(), "not listed in src/api/forms for {calculation}: {missing:?}");
        let unknown: Vec<_> = pointers.difference(&leaves).collect();
        assert!(unknown.is_empty(), "{calculation} has no {unknown:?}");
    }
}

#[test]
fn a_placeholder_is_usual_for_its_field() {
    let fields = fields("installation-plan");
    let example = |at: &str| {
        let field = fields.iter().find(|field| text(field, "pointer") == at).unwrap();
        let [us, metric] = ["us", "metric"].map(|system| text(&field["example"], system));
        for (least, greatest) in ["us", "metric"].map(|s| (text(&field["least"], s), text(&field["greatest"], s))) {
            let range = magnitude(least)..=magnitude(greatest);
            assert!(range.contains(&magnitude(us)) && range.contains(&magnitude(metric)), "{at}: {us}, {metric}");
        }
        [us.to_owned(), metric.to_owned()]
    };
    assert_eq!(example("#/wire/insulation_rating"), ["194 °F", "90 °C"]);
    assert_eq!(example("#/lead_in/spare"), ["3 ft", "1 m"]);
    let sheet = |name: &str| example(&format!("#/sealant/data_sheet/{name}"));
    assert_eq!(sheet("maximum_application_temperature"), ["100 °F", "38 °C"]);
    assert_eq!(sheet("at_temperature"), ["73.4 °F", "23 °C"]);
    assert_eq!(sheet("pot_life"), ["10 min", "10 min"]);
    assert_eq!(sheet("full_cure"), ["3 d", "3 d"]);
}

#[test]
fn what_an_object_cannot_be_without_is_said() {
    let fields = fields("installation-plan");
    let within: BTreeMap<_, _> = fields
        .iter()
        .filter_map(|field| Some((text(field, "pointer"), field.get("required_within")?.as_str()?)))
        .collect();
    let expected = [
        ("#/lead_in/length", "#/lead_in"),
        ("#/sealant/kind", "#/sealant"),
        ("#/backer_rod/form", "#/backer_rod"),
        ("#/agency_minimum/agency", "#/agency_minimum"),
        ("#/agency_minimum/slot_width", "#/agency_minimum"),
        ("#/prices/currency", "#/prices"),
    ];
    assert_eq!(within, expected.into());
}

#[test]
fn a_field_agrees_with_the_schema_of_its_request() {
    for (calculation, schema) in FORMS {
        let leaves = leaves(schema);
        for field in fields(calculation) {
            let at = text(&field, "pointer");
            let Leaf { schema, is_required, required_within } = &leaves[at];
            assert_eq!(field["is_required"], json!(is_required), "{at}");
            assert_eq!(field["required_within"].as_str(), required_within.as_deref(), "{at}");
            let kind = match (schema["type"].as_str().unwrap(), schema["format"].as_str()) {
                ("string", _) if schema.get("x-units").is_some() => "quantity",
                ("string", _) if schema.get("enum").is_some() => "choice",
                ("string", Some("date-time")) => "time",
                ("string", Some("date")) => "date",
                ("string", _) if schema.get("pattern").is_some() => "money",
                ("string", _) => "text",
                ("array", _) if resolved(&schema["items"]).get("enum").is_some() => "list",
                ("array", _) => "numbers",
                ("integer", _) => "count",
                ("boolean", _) => "flag",
                (other, _) => other,
            };
            assert_eq!(text(&field, "kind"), kind, "{at}");
            let items = resolved(&schema["items"]);
            let of = if kind == "list" || kind == "numbers" { &items } else { schema };
            let members = if kind == "choice" || kind == "list" { texts(&of["enum"]) } else { Vec::new() };
            assert_eq!(codes(&field), members, "{at}");
            for (own, name) in [("minimum", "minimum"), ("maximum", "maximum")] {
                assert_eq!(field[own].as_f64(), of[name].as_f64(), "{at} {own}");
            }
            for (own, name) in [("min_items", "minItems"), ("max_items", "maxItems")] {
                assert_eq!(field[own], schema[name], "{at} {own}");
            }
            if kind == "text" {
                assert_eq!([&field["min_length"], &field["max_length"]], [&schema["minLength"], &schema["maxLength"]]);
            }
            if kind == "quantity" {
                agrees_with_quantity(&field, schema);
            }
        }
    }
}

fn agrees_with_quantity(field: &Value, schema: &Value) {
    let at = text(field, "pointer");
    let (units, usual) = (texts(&field["units"]), &field["usual_unit"]);
    let sorted = |units: &[&str]| units.iter().map(|unit| unit.to_lowercase()).collect::<BTreeSet<_>>();
    assert_eq!(sorted(&units), sorted(&texts(&schema["x-units"])), "{at}");
    assert_eq!(units[0], text(usual, "us"), "{at}");
    assert!(units[..2].contains(&text(usual, "metric")), "{at}");
    for (own, name, inwards) in [("least", "x-minimum", 1.0), ("greatest", "x-maximum", -1.0)] {
        let both = [text(&field[own], "us"), text(&field[own], "metric")];
        assert!(both.contains(&text(schema, name)), "{at} {own}: {both:?}");
        let stated = magnitude(text(schema, name));
        for bound in both {
            let off = (magnitude(bound) - stated) * inwards / stated.abs().max(1e-9);
            assert!((-1e-9..0.02).contains(&off), "{at} {own}: {bound} is off by {off}");
        }
    }
    for system in ["us", "metric"] {
        for name in ["least", "greatest"] {
            let unit =
                text(&field[name], system).trim_start_matches(|c: char| c.is_ascii_digit() || " ./-".contains(c));
            assert!(units.contains(&unit), "{at} {name}: {unit} is none of {units:?}");
        }
        assert!(text(&field["example"], system).ends_with(text(usual, system)), "{at}");
    }
}

#[test]
fn usual_fields_come_first_and_sections_in_order() {
    for (calculation, _) in FORMS {
        let form = form(calculation);
        assert_eq!((text(&form, "calculation"), text(&form, "path")), (calculation, &*format!("/v1/{calculation}")));
        let (fields, sections) = (form["fields"].as_array().unwrap(), form["sections"].as_array().unwrap());
        let usual = fields.iter().filter(|field| field["audience"] == "usual").count();
        assert!((8..=14).contains(&usual), "{calculation} has {usual} usual fields");
        assert!(fields[..usual].iter().all(|field| field["audience"] == "usual"), "{calculation}");
        let first: Vec<_> = fields.iter().take(3).map(pointer).collect();
        assert_eq!(first, ["/opening/width", "/opening/barrier", "/roles"]);
        assert!(fields.iter().filter(|field| field["is_required"] == true).all(|field| field["audience"] == "usual"));
        let order: Vec<_> = sections.iter().map(|section| text(section, "code")).collect();
        let at = |field: &Value| order.iter().position(|code| *code == text(field, "section")).unwrap();
        assert!(fields[usual..].is_sorted_by_key(at), "{calculation}");
    }
}

#[test]
fn a_form_is_cached_by_language_and_entity_tag() {
    let mut tags = BTreeSet::new();
    for language in ["en", "es", "fr"] {
        let path = format!("/v1/forms/loop-sizing?lang={language}");
        let answer = get(&path);
        assert_eq!((answer.header("content-language"), text(&answer.body, "language")), (language, language));
        assert!(answer.header("vary").contains("accept-language"));
        let tag = answer.header("etag").to_owned();
        assert!(tag.starts_with('"'), "{tag}");
        assert_eq!(send(shared(), &Method::GET, &path, &[("if-none-match", &tag)]).status, 304);
        tags.insert(tag);
    }
    assert_eq!(tags.len(), 3);
    assert_eq!(get("/v1/forms/fault-finding").status, 404);
}

#[test]
fn each_field_has_a_name_of_its_own_and_says_what_to_do() {
    for (calculation, _) in FORMS {
        for language in ["en", "es", "fr"] {
            let fields = get(&format!("/v1/forms/{calculation}?lang={language}")).body["fields"].clone();
            let fields = fields.as_array().unwrap();
            let labels: BTreeSet<_> = fields.iter().map(|field| text(field, "label")).collect();
            // A field that the job sheet does not know has the name of all such values there, and several would have it.
            assert_eq!(labels.len(), fields.len(), "{language} {calculation} has a label twice");
            for field in fields {
                let label = text(field, "label");
                let starts_large = label.starts_with(char::is_uppercase);
                assert!(starts_large && label.chars().count() <= 60 && !label.ends_with('.'), "{language}: {label}");
                for words in [field.get("help"), field.get("default_words")].into_iter().flatten() {
                    let words = words.as_str().unwrap();
                    assert!(words.ends_with('.') && words.matches(". ").count() <= 1, "{language}: {words}");
                    assert!((10..=200).contains(&words.chars().count()), "{language}: {words}");
                }
            }
        }
    }
}

#[test]
fn a_form_is_small() {
    for (calculation, most) in [("loop-sizing", 36 * 1024), ("installation-plan", 72 * 1024)] {
        let size = form(calculation).to_string().len();
        assert!(size <= most, "{calculation}: {size} bytes");
    }
}
