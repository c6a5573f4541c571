//! Money: decimal text in and out, and nothing silently zero.

use serde_json::{Value, json};

use super::{close, codes, estimate, request, square};
use crate::harness::{calculate, post};
use crate::requests::with;

fn priced(prices: Value) -> Value {
    let mut request = request(&square(), "hand_wound", &json!({}));
    request["prices"] = prices;
    request
}

/// An amount as a whole number of minor units.
fn minor(text: &Value) -> i128 {
    text.as_str().unwrap().replace('.', "").parse().unwrap()
}

#[test]
fn the_total_is_the_sum_of_the_shown_lines() {
    for (currency, decimals) in [("USD", 2), ("JPY", 0), ("KWD", 3)] {
        // Prices of six decimals, so that every line is rounded.
        let items = json!({
            "sealant_cartridge": "23.333333", "loop_wire/ft": "0.184567", "backer_rod/ft": "0.051234", "saw_blade": "149.994999",
            "termination": "0.605", "blending_sand": "5.995"
        });
        let report = estimate(&priced(json!({ "currency": currency, "items": items, "hourly_rate": "94.333333" })));
        let cost = &report["cost"];
        let lines = cost["lines"].as_array().unwrap();
        assert_eq!(lines.len(), 7, "{cost:#}");
        for amount in lines.iter().map(|line| &line["amount"]).chain([&cost["total"]]) {
            let fraction = amount.as_str().unwrap().split_once('.').map_or(0, |(_, fraction)| fraction.len());
            assert_eq!(fraction, decimals, "{amount} {currency}");
        }
        assert_eq!(lines.iter().map(|line| minor(&line["amount"])).sum::<i128>(), minor(&cost["total"]));
        assert_eq!(cost["is_complete"], true);
    }
}

#[test]
fn a_line_is_its_quantity_times_its_price_rounded_half_away_from_zero() {
    let report =
        estimate(&priced(json!({ "currency": "USD", "items": { "termination": "0.0025", "saw_blade": "19.995" } })));
    let amount = |item: &str| {
        let lines = report["cost"]["lines"].as_array().unwrap();
        lines.iter().find(|line| line["item"] == item).unwrap()["amount"].as_str().unwrap().to_owned()
    };
    assert_eq!(amount("termination"), "0.01", "2 x 0.0025 is half a cent");
    assert_eq!(amount("saw_blade"), "20.00", "19.995, which no binary fraction holds");
}

#[test]
fn what_has_no_price_is_named_and_never_zero() {
    let report = estimate(&priced(json!({ "currency": "USD", "items": { "saw_blade": "150" } })));
    let cost = &report["cost"];
    assert_eq!(cost["total"], "150.00");
    assert_eq!(cost["is_complete"], false);
    assert_eq!(
        cost["unpriced"],
        json!(["loop_wire/ft", "backer_rod/ft", "sealant_cartridge", "blending_sand", "termination", "labour"])
    );
    assert!(codes(&report, "warning").contains(&"unpriced".to_owned()));
    let missing = report["findings"].as_array().unwrap().iter().find(|finding| finding["code"] == "unpriced").unwrap();
    assert!(missing["message"].as_str().unwrap().contains("loop wire, backer rod, sealant cartridge"), "{missing:#}");
    let named = ["items/loop_wire~1ft", "items/backer_rod~1ft", "items/sealant_cartridge", "items/blending_sand"];
    let named = named.into_iter().chain(["items/termination", "hourly_rate"]).map(|name| format!("#/prices/{name}"));
    assert_eq!(missing["send"], json!(named.collect::<Vec<_>>()));
    let other = &report["comparison"][1];
    assert_eq!((&other["unpriced"][0], &other["is_complete"]), (&json!("preformed_loop"), &json!(false)));
    assert!(
        other["message"].as_str().unwrap().contains("does not count what has no price: preformed loop"),
        "{other:#}"
    );
    assert!(estimate(&request(&square(), "hand_wound", &json!({}))).get("cost").is_none());
}

#[test]
fn a_sku_goes_before_its_item_and_other_names_are_unused() {
    let mut request = priced(json!({
        "currency": "USD", "items": { "loop_wire": "90", "TIB-W500": "75.5", "paint": "3", "a/b": "1" }, "hourly_rate": "90"
    }));
    request["wire_spools"] = json!([{ "length": "500 ft", "sku": "TIB-W500" }]);
    let report = estimate(&request);
    let lines = report["cost"]["lines"].as_array().unwrap();
    assert!(lines.iter().any(|line| line["item"] == "TIB-W500" && line["amount"] == "75.50"), "{lines:#?}");
    let unused = report["unused"].as_array().unwrap();
    assert!(
        unused.contains(&json!("#/prices/items/paint")) && unused.contains(&json!("#/prices/items/a~1b")),
        "{unused:?}"
    );
}

#[test]
fn amounts_that_are_no_decimal_text_are_refused_all_at_once() {
    let wrong = priced(json!({
        "currency": "XXQ",
        "items": { "saw_blade": "12,50", "loop_wire": "-1", "backer_rod": "1e3", "termination": "1234567890", "x": "0.1234567" },
        "hourly_rate": "$95"
    }));
    let answer = calculate("material-estimate", &wrong);
    let mut faults = answer.faults();
    faults.sort();
    let expected = [
        ("#/prices/currency", "value_unknown"),
        ("#/prices/hourly_rate", "number_invalid"),
        ("#/prices/items/backer_rod", "number_invalid"),
        ("#/prices/items/loop_wire", "number_invalid"),
        ("#/prices/items/saw_blade", "decimal_comma"),
        ("#/prices/items/termination", "number_invalid"),
        ("#/prices/items/x", "number_invalid"),
    ];
    assert_eq!(faults, expected.map(|(pointer, code)| (pointer.to_owned(), code.to_owned())));
}

#[test]
fn a_price_as_a_number_or_twice_is_a_fault_of_structure() {
    let number = with(&priced(json!({ "currency": "USD" })), "/prices/hourly_rate", 95);
    let answer = calculate("material-estimate", &number);
    assert_eq!(answer.faults(), [("#/prices/hourly_rate".to_owned(), "type_wrong".to_owned())]);
    assert!(answer.body["errors"][0]["hint"].as_str().unwrap().contains("\"24.50\""));
    let text = priced(json!({ "currency": "USD", "items": { "saw_blade": "1", "loop_wire": "2" } })).to_string();
    let answer = post("/v1/material-estimate", text.replace("loop_wire", "saw_blade"));
    assert_eq!(answer.faults(), [("#/prices/items/saw_blade".to_owned(), "field_duplicate".to_owned())]);
}

#[test]
fn the_greatest_amounts_are_still_exact() {
    let mut request = priced(json!({ "currency": "USD", "items": { "termination": "999999999.999999" } }));
    request["loops"][0]["quantity"] = json!(200);
    let report = estimate(&request);
    // 400 ends.
    assert_eq!(report["cost"]["total"], "400000000000.00");
}

#[test]
fn a_price_counts_for_the_unit_that_it_names() {
    // Without a unit nobody knows whether it is the price of a foot or of a metre.
    let bare = estimate(&priced(json!({ "currency": "USD", "items": { "loop_wire": "1", "backer_rod": "1" } })));
    let unused = bare["unused"].as_array().unwrap();
    assert!(
        unused.contains(&json!("#/prices/items/loop_wire")) && unused.contains(&json!("#/prices/items/backer_rod"))
    );
    assert_eq!(bare["cost"]["lines"], json!([]));
    let findings = bare["findings"].as_array().unwrap();
    let missing = findings.iter().find(|finding| finding["code"] == "unpriced").unwrap();
    assert!(missing["message"].as_str().unwrap().contains("loop wire, backer rod"), "{missing}");
    assert!(missing["send"].to_string().contains("/loop_wire~1ft\",\"#/prices/items/backer_rod~1ft"), "{missing}");
    // A job in feet takes the price of a foot, and leaves that of a metre.
    let both = json!({ "currency": "USD", "items": { "loop_wire/ft": "1", "loop_wire/m": "100" } });
    let report = estimate(&priced(both));
    let line = &report["cost"]["lines"][0];
    assert_eq!(
        (&line["item"], &line["unit"], &line["unit_price"]),
        (&json!("loop_wire/ft"), &json!("ft"), &json!("1"))
    );
    // Wire on a spool is priced by the number of the spool only.
    let mut spool = priced(json!({ "currency": "USD", "items": { "loop_wire/ft": "1", "TIB-W500": "80" } }));
    spool["wire_spools"] = json!([{ "length": "500 ft" }]);
    let report = estimate(&spool);
    assert!(report["cost"]["unpriced"].as_array().unwrap().contains(&json!("loop_wire")), "{}", report["cost"]);
    assert!(report["findings"].to_string().contains("by the spool's own number"));
    spool["wire_spools"][0]["sku"] = json!("TIB-W500");
    assert_eq!(estimate(&spool)["cost"]["lines"][0]["amount"], "80.00");
}

#[test]
fn a_currency_that_cannot_be_paid_in_is_refused_once_with_what_to_send() {
    let errors = |currency: &str| {
        let answer = calculate("material-estimate", &priced(json!({ "currency": currency })));
        assert_eq!(answer.status, 422, "{currency}");
        answer.body["errors"].as_array().unwrap().clone()
    };
    for (currency, hint) in
        [("usd", "Send \"USD\""), ("XAU", "that you pay in"), ("XXX", "that you pay in"), ("QQQ", "such as")]
    {
        let errors = errors(currency);
        assert_eq!(errors.len(), 1, "{currency}");
        assert_eq!((&errors[0]["pointer"], &errors[0]["code"]), (&json!("#/prices/currency"), &json!("value_unknown")));
        assert!(errors[0]["hint"].as_str().unwrap().contains(hint), "{currency}: {}", errors[0]);
    }
    assert_eq!(errors("US").len(), 1, "a wrong length is said once");
}

#[test]
fn a_sku_is_no_name_of_an_item() {
    for sku in ["loop_wire", "backer_rod/ft", "saw_blade"] {
        let mut request = priced(json!({ "currency": "USD" }));
        request["wire_spools"] = json!([{ "length": "500 ft", "sku": sku }]);
        let faults = calculate("material-estimate", &request).faults();
        assert_eq!(faults, [("#/wire_spools/0/sku".to_owned(), "contradiction".to_owned())], "{sku}");
    }
}

#[test]
fn blades_wear_by_length_or_are_bought_and_what_is_owned_is_not() {
    // 16 ft + 5.657 ft, and sixteen ends of 4.330 in: 27.43 ft.
    let blade = |life: &str, owns: bool, items: Value| {
        let mut request = priced(json!({ "currency": "USD", "items": items }));
        request["saw"] = json!({ "blade_life": life, "owns_blades": owns });
        let report = estimate(&request);
        let line = report["items"].as_array().unwrap().iter().find(|line| line["item"] == "saw_blade").unwrap().clone();
        let lines = report["cost"]["lines"].as_array().unwrap();
        let amount = lines.iter().find(|line| line["item"].as_str().unwrap().starts_with("saw_blade"));
        (line, amount.map(|line| line["amount"].as_str().unwrap().to_owned()))
    };
    let (bought, amount) = blade("500 ft", false, json!({ "saw_blade": "148" }));
    assert_eq!((&bought["quantity"], &bought["unit"], amount.as_deref()), (&json!(1), &json!("each"), Some("148.00")));
    close(bought["exact"].as_f64().unwrap(), 27.43 / 500.0, 1e-2);
    assert_eq!(blade("10 ft", false, json!({ "saw_blade": "148" })).0["quantity"], 3);
    // 28 ft at 0.30.
    let (worn, amount) = blade("500 ft", true, json!({ "saw_blade": "148", "saw_blade/ft": "0.30" }));
    assert_eq!((&worn["quantity"], &worn["unit"], amount.as_deref()), (&json!(28), &json!("ft"), Some("8.40")));
    // 8.36 m, so 9 at 1.00.
    let (metric, amount) = blade("500 ft", false, json!({ "saw_blade/m": "1.00" }));
    assert_eq!((&metric["quantity"], amount.as_deref()), (&json!(9), Some("9.00")));
    let (owned, amount) = blade("500 ft", true, json!({ "saw_blade": "148" }));
    assert_eq!((&owned["is_owned"], &owned["quantity"], amount), (&json!(true), &json!(1), None));
}

#[test]
fn a_misspelt_price_key_is_asked_about() {
    let report = estimate(&priced(json!({ "currency": "USD", "items": { "saw_blades": "150", "paint": "3" } })));
    let asked = super::judgement::finding(&report, "price_key_unknown");
    assert_eq!((&asked["about"], &asked["level"]), (&json!("#/prices/items/saw_blades"), &json!("warning")));
    assert!(asked["message"].as_str().unwrap().contains("Did you mean saw_blade?"), "{asked}");
    assert_eq!(codes(&report, "warning").iter().filter(|code| *code == "price_key_unknown").count(), 1);
}

#[test]
fn the_cheapest_spools_that_splice_nothing_are_bought() {
    // Two lengths of 390 ft with their allowance: 2 x (65 + 2 x 150 + ...) come to 780 ft.
    let mut request = priced(json!({ "currency": "USD", "items": { "TIB-W500": "95", "TIB-W1000": "170" } }));
    request["loops"][0]["quantity"] = json!(2);
    request["loops"][0]["lead_in"] = json!({ "length": "150 ft", "spare": "3.2 ft" });
    request["wire_spools"] =
        json!([{ "length": "500 ft", "sku": "TIB-W500" }, { "length": "1000 ft", "sku": "TIB-W1000" }]);
    let report = estimate(&request);
    let wire: Vec<_> = report["items"].as_array().unwrap().iter().filter(|line| line["item"] == "loop_wire").collect();
    assert_eq!((wire.len(), &wire[0]["sku"], &wire[0]["quantity"]), (1, &json!("TIB-W1000"), &json!(1)));
    // The other way round the two small ones are cheaper.
    let dear = estimate(&with(&request, "/prices/items/TIB-W1000", "191"));
    let wire = dear["items"].as_array().unwrap().iter().find(|line| line["item"] == "loop_wire").unwrap();
    assert_eq!((&wire["sku"], &wire["quantity"]), (&json!("TIB-W500"), &json!(2)));
}

#[test]
fn stock_may_carry_its_price_and_how_much_is_there() {
    let coil = json!({ "along_travel": "4 ft", "across_lane": "8 ft", "turns": 3 });
    let mut request = request(&coil, "preformed_saw_cut", &json!({}));
    request["prices"] = json!({ "currency": "USD" });
    let item = |sku: &str, price: &str, available: u32| {
        json!({
            "sku": sku, "along_travel": "4 ft", "across_lane": "8 ft", "lead_in_length": "50 ft", "price": price, "available": available
        })
    };
    request["stock"] = json!([item("TIB-A", "80", 9), item("TIB-B", "70", 9), item("TIB-C", "60", 0)]);
    let report = estimate(&request);
    let line = &report["cost"]["lines"][0];
    assert_eq!(
        (&line["item"], &line["amount"]),
        (&json!("TIB-B"), &json!("70.00")),
        "what is there, and of that the cheaper"
    );
    let short = estimate(&with(&request, "/loops/0/quantity", 10));
    let finding = super::judgement::finding(&short, "stock_short");
    assert!(finding["message"].as_str().unwrap().contains("order 1 more"), "{finding}");
}
