//! Which loop of the caller's stock serves.

use serde_json::{Value, json};

use super::{finding, gate, level, of_role, sized};
use crate::requests::with;

const LEAD_IN: &str = "40 ft";
/// The same with its spare, which a loop in stock must come with.
const TAIL: &str = "43 ft";

/// The exit of the yard gate, from these items.
fn exit_from(stock: Value) -> Value {
    let mut request = gate("16 ft", "slide_gate", json!({ "roles": ["exit"], "lead_in": { "length": LEAD_IN } }));
    request["stock"] = stock;
    request
}

/// An item that has just the legs and turns that the opening asks for.
fn fitting() -> Value {
    let answer = sized(&exit_from(json!([])));
    let exit = of_role(&answer, "exit");
    json!({
        "sku": "TIB-FIT", "along_travel": format!("{} ft", exit["along_travel"]["ft"]),
        "across_lane": format!("{} ft", exit["across_lane"]["ft"]), "lead_in_length": TAIL, "turns": exit["turns"]
    })
}

#[test]
fn an_item_of_the_right_size_is_chosen() {
    let answer = sized(&exit_from(json!([fitting()])));
    let choice = &of_role(&answer, "exit")["stock_choice"];
    assert_eq!(choice["sku"], "TIB-FIT", "{choice}");
    assert!(choice["why"].as_str().unwrap().ends_with('.'));
    assert_eq!(level(&answer, "no_stock_fits"), "");
    assert_eq!(answer.body["inputs"]["stock_items"], 1);
    assert_eq!(answer.body["inputs"]["construction"], "preformed_saw_cut", "loops in stock come preformed");
}

#[test]
fn an_item_that_does_not_serve_is_passed_over_and_one_is_ordered() {
    let rows = [
        ("/along_travel", json!("3 ft"), "too short along travel"),
        ("/along_travel", json!("15 ft"), "too long along travel"),
        ("/across_lane", json!("16 ft"), "too wide"),
        ("/across_lane", json!("4 ft"), "unseen"),
        ("/lead_in_length", json!("42 ft"), "too short a lead-in"),
        ("/turns", json!(1), "does not tune"),
        ("/turns", json!(20), "does not tune"),
        ("/construction", json!("preformed_direct_burial"), "another construction"),
    ];
    for (field, value, reason) in rows {
        let odd = with(&with(&fitting(), field, value.clone()), "/sku", "TIB-ODD");
        let answer = sized(&exit_from(json!([odd])));
        let choice = &of_role(&answer, "exit")["stock_choice"];
        assert!(choice.get("sku").is_none(), "{field} {value}: {choice}");
        let why = choice["why"].as_str().unwrap();
        assert!(why.contains(reason) && why.contains("TIB-ODD") && why.contains(" Order "), "{field}: {why}");
        let said = finding(&answer, "no_stock_fits").unwrap();
        assert_eq!(
            (&said["level"], &said["about"], &said["subject"]),
            (&json!("note"), &json!("#/stock"), &json!("exit"))
        );
        // Beside one that fits it does no harm.
        let answer = sized(&exit_from(json!([odd, fitting(), odd])));
        assert_eq!(of_role(&answer, "exit")["stock_choice"]["sku"], "TIB-FIT", "{field}");
    }
}

#[test]
fn an_item_of_unknown_turns_serves_with_a_question() {
    let unknown = crate::requests::without(&fitting(), "/turns");
    let answer = sized(&exit_from(json!([unknown])));
    let choice = &of_role(&answer, "exit")["stock_choice"];
    assert_eq!(choice["sku"], "TIB-FIT");
    assert!(choice["why"].as_str().unwrap().contains("ask for its turns"), "{choice}");
}

#[test]
fn the_nearest_of_several_that_serve_is_chosen() {
    let longer = with(&with(&fitting(), "/lead_in_length", "100 ft"), "/sku", "TIB-LONG");
    let narrower = with(&with(&fitting(), "/across_lane", "11 ft"), "/sku", "TIB-NARROW");
    let answer = sized(&exit_from(json!([longer, narrower, fitting()])));
    assert_eq!(of_role(&answer, "exit")["stock_choice"]["sku"], "TIB-FIT");
    let answer = sized(&exit_from(json!([narrower, longer])));
    assert_eq!(of_role(&answer, "exit")["stock_choice"]["sku"], "TIB-LONG");
    // Both tails are cut to one length: where both have a price, the cheaper is taken.
    let priced = |item: &Value, price: &str| with(item, "/price", price);
    let answer = sized(&exit_from(json!([priced(&fitting(), "350"), priced(&longer, "300")])));
    assert_eq!(of_role(&answer, "exit")["stock_choice"]["sku"], "TIB-LONG");
    let answer = sized(&exit_from(json!([priced(&longer, "350"), priced(&fitting(), "300")])));
    assert_eq!(of_role(&answer, "exit")["stock_choice"]["sku"], "TIB-FIT");
}

#[test]
fn stock_is_spoken_of_only_when_some_was_sent() {
    let answer = sized(&gate("16 ft", "slide_gate", json!({})));
    assert!(of_role(&answer, "exit").get("stock_choice").is_none());
    assert_eq!(level(&answer, "no_stock_fits"), "");
    // An empty list is what clients send for none.
    let answer = sized(&exit_from(json!([])));
    assert!(of_role(&answer, "exit").get("stock_choice").is_none());
}
