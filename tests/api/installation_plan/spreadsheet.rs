//! The bill for a spreadsheet: rows of RFC 4180 with the numbers of the report.

use serde_json::{Value, json};

use super::plan;
use crate::harness::post;
use crate::requests::with;

fn priced() -> Value {
    json!({
        "opening": { "width": "24 ft", "barrier": "slide_gate" }, "construction": "preformed_saw_cut",
        "stock": [
            { "sku": "=cmd|'/c calc'!A1", "along_travel": "6 ft", "across_lane": "20 ft", "lead_in_length": "60 ft", "price": "210" }
        ],
        "prices": { "currency": "USD", "hourly_rate": "95", "items": { "sealant_cartridge": "24.50", "saw_blade": "148" } },
        "saw": { "owns_blades": true }
    })
}

fn exported(request: &Value) -> (String, String) {
    let answer = post("/v1/installation-plan/bill", request.to_string());
    assert_eq!(answer.status, 200, "{}", answer.body);
    (answer.headers["content-type"].to_str().unwrap().to_owned(), answer.body.as_str().unwrap().to_owned())
}

#[test]
fn each_line_of_the_bill_is_a_row_with_its_price() {
    let (media, text) = exported(&priced());
    assert_eq!(media, "text/csv; charset=utf-8; header=present");
    assert_eq!(text.matches("\r\n").count(), text.matches('\n').count());
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    assert_eq!(
        reader.headers().unwrap(),
        vec!["item", "label", "sku", "size", "quantity", "unit", "exact", "unit_price", "amount", "currency", "note"]
    );
    let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    let report = plan(&priced());
    let (items, cost) = (report["materials"]["items"].as_array().unwrap(), &report["materials"]["cost"]);
    assert_eq!(rows.len(), items.len() + 1);
    for (row, line) in rows.iter().zip(items) {
        assert_eq!((&row[0], &row[4]), (line["item"].as_str().unwrap(), line["quantity"].to_string().as_str()));
        assert_eq!(
            (&row[5], row[6].parse::<f64>().unwrap()),
            (line["unit"].as_str().unwrap(), line["exact"].as_f64().unwrap())
        );
    }
    let labour = rows.last().unwrap();
    assert_eq!((&labour[0], &labour[5], &labour[9]), ("labour", "h", "USD"));
    let cents = |text: &str| text.replace('.', "").parse::<i64>().unwrap();
    let sum: i64 = rows.iter().filter(|row| !row[8].is_empty()).map(|row| cents(&row[8])).sum();
    assert_eq!(sum, cents(cost["total"].as_str().unwrap()));
    // What the crew owns has no amount, though it has a price.
    assert!(
        rows.iter()
            .filter(|row| &row[0] == "saw_blade")
            .all(|row| row[8].is_empty() && row[10].starts_with("Not bought"))
    );
}

#[test]
fn a_text_that_would_be_a_formula_is_none_in_a_spreadsheet() {
    let (_, text) = exported(&priced());
    assert!(text.contains("'=cmd|'/c calc'!A1"), "{text}");
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    for row in reader.records().map(Result::unwrap) {
        assert!(row.iter().all(|cell| !cell.starts_with(['=', '+', '-', '@', '\t', '\r'])), "{row:?}");
    }
}

#[test]
fn a_plan_that_is_refused_is_refused_here_and_one_without_materials_has_no_rows() {
    let answer = post("/v1/installation-plan/bill", with(&priced(), "/opening/width", "24").to_string());
    assert_eq!((answer.status, answer.faults()[0].0.as_str()), (422, "#/opening/width"));
    let (_, text) = exported(&with(&priced(), "/parts", json!(["detector"])));
    assert_eq!(text.lines().count(), 1);
}
