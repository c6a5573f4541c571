//! One bill for a batch beside the single ones, and what items share.

use proptest::prelude::*;
use serde_json::{Value, json};

use crate::harness::{Answer, calculate, post};
use crate::requests::with;

fn batch(request: &Value) -> Answer {
    post("/v1/installation-plan/batch", request.to_string())
}

fn answered(request: &Value) -> Value {
    let answer = batch(request);
    assert_eq!(answer.status, 200, "{:#}", answer.body);
    answer.body
}

fn prices() -> Value {
    json!({
        "currency": "USD", "hourly_rate": "95",
        "items": {
            "saw_blade": "148", "sealant_cartridge": "24.50", "loop_wire/ft": "0.21", "backer_rod/ft": "0.11", "lead_in_conduit/ft": "1.30",
            "blending_sand": "6", "termination": "0.90", "line_device": "240", "TIB-W500": "95", "TIB-W1000": "170"
        }
    })
}

fn gates(widths: &[&str]) -> Vec<Value> {
    let item = |(index, width): (usize, &&str)| {
        json!({
            "id": format!("gate {index}"),
            "request": { "opening": { "width": width, "barrier": "slide_gate" }, "parts": ["materials"] }
        })
    };
    widths.iter().enumerate().map(item).collect()
}

fn cents(text: &Value) -> i64 {
    text.as_str().unwrap().replace('.', "").parse().unwrap()
}

fn exact_of(bill: &Value, item: &str) -> f64 {
    let lines = bill["items"].as_array().unwrap().iter().filter(|line| line["item"] == item);
    lines.map(|line| line["exact"].as_f64().unwrap()).sum()
}

#[test]
fn a_pooled_bill_rounds_once_and_each_single_bill_is_as_before() {
    let request =
        json!({ "items": gates(&["24 ft", "16 ft", "20 ft"]), "shared": { "prices": prices() }, "pool": true });
    let body = answered(&request);
    let (pooled, results) = (&body["pooled_bill"], body["results"].as_array().unwrap());
    assert_eq!((&pooled["jobs"], &pooled["left_out"]), (&json!(3), &json!([])));
    for (result, item) in results.iter().zip(request["items"].as_array().unwrap()) {
        let alone = calculate("installation-plan", &with(&item["request"], "/prices", prices()));
        assert_eq!(result["report"], alone.body);
    }
    let single = |item: &str| results.iter().map(|one| exact_of(&one["report"]["materials"], item)).sum::<f64>();
    for item in ["saw_blade", "loop_wire", "lead_in_conduit", "sealant_cartridge", "termination", "line_device"] {
        let (sum, found) = (single(item), exact_of(pooled, item));
        assert!((found - sum).abs() < 0.01, "{item}: {found} of {sum}");
    }
    let cartridges = pooled["items"].as_array().unwrap().iter().find(|line| line["item"] == "sealant_cartridge");
    assert_eq!(cartridges.unwrap()["quantity"], single("sealant_cartridge").ceil());
    // Two widths of blade, each worn by less than one life.
    let blades = pooled["items"].as_array().unwrap().iter().filter(|line| line["item"] == "saw_blade");
    assert_eq!(blades.map(|line| line["quantity"].as_u64().unwrap()).sum::<u64>(), 2);
    let sum: i64 = results.iter().map(|one| cents(&one["report"]["materials"]["cost"]["total"])).sum();
    // Four blades at 148.00 are not bought twice more.
    assert!(cents(&pooled["cost"]["total"]) <= sum - 4 * 14_800, "{} of {sum}", pooled["cost"]["total"]);
}

#[test]
fn ids_that_occur_twice_are_refused_only_where_bills_are_pooled() {
    let mut items = gates(&["24 ft", "16 ft"]);
    items[1]["id"] = items[0]["id"].clone();
    assert_eq!(batch(&json!({ "items": items })).status, 200);
    assert_eq!(batch(&json!({ "items": items, "pool": false })).status, 200);
    let answer = batch(&json!({ "items": items, "pool": true }));
    assert_eq!(answer.status, 422);
    assert_eq!(answer.faults(), [("#/items/1/id".to_owned(), "contradiction".to_owned())]);
}

#[test]
fn what_items_share_is_theirs_where_they_do_not_send_it() {
    let mut items = gates(&["24 ft", "24 ft"]);
    items[1]["request"]["surface"] = json!("existing_concrete");
    let shared = json!({ "surface": "existing_asphalt", "lead_in": { "length": "80 ft" }, "sealant": { "kind": "hot_applied" } });
    let body = answered(&json!({ "items": items, "shared": shared }));
    assert!(body.get("pooled_bill").is_none());
    for (result, surface) in body["results"].as_array().unwrap().iter().zip(["existing_asphalt", "existing_concrete"]) {
        let inputs = &result["report"]["materials"]["inputs"];
        assert_eq!((&inputs["surface"], &inputs["sealant_kind"]), (&json!(surface), &json!("hot_applied")));
    }
    // What is wrong with it is said of it, and not of the items that take it.
    let wrong = answered(&json!({ "items": gates(&["24 ft"]), "shared": { "lead_in": { "length": "80" } } }));
    let errors = &wrong["results"][0]["problem"]["errors"];
    assert_eq!(errors[0]["pointer"], "#/shared/lead_in/length", "{errors:#}");
    let unknown = batch(&json!({ "items": gates(&["24 ft"]), "shared": { "leadin": {} } }));
    assert_eq!((unknown.status, unknown.faults()[0].0.as_str()), (422, "#/shared/leadin"));
    for own in ["opening", "weather"] {
        let refused = batch(&json!({ "items": gates(&["24 ft"]), "shared": { own: {} } }));
        assert_eq!(refused.faults(), [(format!("#/shared/{own}"), "field_unknown".to_owned())]);
    }
    assert_eq!(batch(&json!({ "items": gates(&["24 ft"]), "shared": {} })).status, 200);
}

#[test]
fn a_pooled_bill_names_what_it_leaves_out_and_why_it_has_no_sum() {
    let mut items = gates(&["24 ft", "24", "20 ft"]);
    items[2]["request"]["parts"] = json!(["detector"]);
    let body = answered(&json!({ "items": items, "pool": true }));
    let pooled = &body["pooled_bill"];
    assert_eq!((&pooled["jobs"], &pooled["left_out"]), (&json!(1), &json!(["gate 1", "gate 2"])));
    assert!(pooled.get("cost").is_none());
    let mut dearer = gates(&["24 ft", "20 ft"]);
    dearer[0]["request"]["prices"] = prices();
    let body = answered(&json!({ "items": dearer, "pool": true }));
    assert!(body["pooled_bill"].get("cost").is_none());
    assert!(body["pooled_bill"]["message"].as_str().unwrap().contains("different prices"));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 8, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_pooled_bill_is_never_dearer_than_the_sum(
        widths in proptest::collection::vec(10..40_u32, 1..5), on_spools in any::<bool>(), life in 50..2000_u32
    ) {
        let texts: Vec<_> = widths.iter().map(|width| format!("{width} ft")).collect();
        let texts: Vec<&str> = texts.iter().map(String::as_str).collect();
        let mut shared = json!({ "prices": prices(), "saw": { "blade_life": format!("{life} ft") } });
        if on_spools {
            shared["wire_spools"] =
                json!([{ "length": "500 ft", "sku": "TIB-W500" }, { "length": "1000 ft", "sku": "TIB-W1000" }]);
        }
        let body = answered(&json!({ "items": gates(&texts), "shared": shared, "pool": true }));
        let results = body["results"].as_array().unwrap();
        let sum: i64 = results.iter().map(|one| cents(&one["report"]["materials"]["cost"]["total"])).sum();
        let pooled = cents(&body["pooled_bill"]["cost"]["total"]);
        // Hours are shown to a thousandth, so that the sum of rounded ones may differ by a few cents.
        prop_assert!(pooled <= sum + 5 * i64::try_from(widths.len()).unwrap(), "{pooled} of {sum}");
        prop_assert_eq!(&body["pooled_bill"]["cost"]["is_complete"], &results[0]["report"]["materials"]["cost"]["is_complete"]);
    }
}

/// The lines of an item in the pooled bill of two jobs that differ in what is sent.
fn pooled_lines(item: &str, differ: [(&str, Value); 2]) -> Vec<Value> {
    let one = |(index, (pointer, value)): (usize, (&str, Value))| {
        let request = json!({ "opening": { "width": "24 ft", "barrier": "slide_gate" }, "parts": ["materials"] });
        json!({ "id": index.to_string(), "request": with(&request, pointer, value) })
    };
    let items: Vec<_> = differ.into_iter().enumerate().map(one).collect();
    let body = answered(&json!({ "items": items, "pool": true }));
    let lines = body["pooled_bill"]["items"].as_array().unwrap().iter();
    lines.filter(|line| line["item"] == item).cloned().collect()
}

#[test]
fn what_is_not_alike_is_not_added_up() {
    let sealant = |kind: &str, cartridge: &str| json!({ "kind": kind, "cartridge": cartridge });
    let apart = [
        (
            "sealant_cartridge",
            "size",
            "/sealant",
            [sealant("one_part_moisture_cure", "29 fl oz"), sealant("one_part_moisture_cure", "10 fl oz")],
        ),
        (
            "sealant_cartridge",
            "sealant",
            "/sealant",
            [sealant("one_part_moisture_cure", "29 fl oz"), sealant("two_part_reactive", "29 fl oz")],
        ),
        ("sealant_cartridge", "blends_with", "/surface", [json!("existing_concrete"), json!("existing_asphalt")]),
        ("blending_sand", "blends_with", "/surface", [json!("existing_concrete"), json!("existing_asphalt")]),
        (
            "loop_wire",
            "size",
            "/wire",
            [json!({ "over_insulation": "0.13 in" }), json!({ "over_insulation": "0.2 in" })],
        ),
    ];
    for (item, field, pointer, [one, other]) in apart {
        let lines = pooled_lines(item, [(pointer, one.clone()), (pointer, other)]);
        assert_eq!(lines.len(), 2, "{item} by {pointer}: {lines:#?}");
        assert_ne!(lines[0][field], lines[1][field], "{lines:#?}");
        assert_eq!(pooled_lines(item, [(pointer, one.clone()), (pointer, one)]).len(), 1, "{item} by {pointer}");
    }
}

#[test]
fn spools_of_a_pool_are_for_all_jobs_that_lie_on_them() {
    let shared = json!({ "wire_spools": [{ "length": "1000 ft", "sku": "TIB-W1000" }] });
    let body = answered(&json!({ "items": gates(&["24 ft", "16 ft", "20 ft"]), "shared": shared, "pool": true }));
    let lines = body["pooled_bill"]["items"].as_array().unwrap();
    let spools: Vec<_> = lines.iter().filter(|line| line["unit"] == "spool").collect();
    assert_eq!(spools.len(), 1, "{lines:#?}");
    assert!(spools[0]["how"].as_str().unwrap().contains("spools in all for 3 jobs"), "{}", spools[0]["how"]);
}
