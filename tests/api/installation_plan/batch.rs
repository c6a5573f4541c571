//! `installation-plan/batch`: each item by itself, in order, whatever the others are.

use serde_json::{Value, json};

use super::full;
use crate::harness::{calculate, post};
use crate::requests::{with, without};

fn batch(request: &Value) -> crate::harness::Answer {
    post("/v1/installation-plan/batch", request.to_string())
}

fn lane() -> Value {
    json!({ "opening": { "width": "12 ft", "barrier": "none" } })
}

#[test]
fn each_item_is_answered_as_on_its_own_and_in_order() {
    let broken = with(&lane(), "/opening/width", "12");
    let items = json!([
        { "id": "a", "request": lane() }, { "id": "b", "request": broken }, { "id": "c", "request": full() },
        { "id": "d", "request": 7 }, { "id": "e", "request": { "opening": null } }
    ]);
    let answer = batch(&json!({ "items": items }));
    assert_eq!(answer.status, 200, "{:#}", answer.body);
    let results = answer.body["results"].as_array().unwrap();
    let ids: Vec<_> = results.iter().map(|result| result["id"].as_str().unwrap()).collect();
    assert_eq!(ids, ["a", "b", "c", "d", "e"]);
    assert_eq!((&answer.body["succeeded"], &answer.body["failed"]), (&json!(2), &json!(3)));
    for (index, request) in [(0, lane()), (2, full())] {
        assert_eq!(results[index]["report"], calculate("installation-plan", &request).body);
        assert_eq!(results[index]["status"], 200);
        assert!(results[index].get("problem").is_none());
    }
    let pointer = |index: usize| results[index]["problem"]["errors"][0]["pointer"].clone();
    assert_eq!(pointer(1), "#/items/1/request/opening/width");
    assert_eq!(pointer(3), "#/items/3/request");
    assert_eq!(pointer(4), "#/items/4/request/opening");
    assert!([1, 3, 4].iter().all(|index| results[*index]["status"] == 422 && results[*index].get("report").is_none()));
}

#[test]
fn weather_may_stand_once_beside_the_items() {
    let bare = without(&full(), "/weather");
    let apart = batch(
        &json!({ "items": [{ "id": "a", "request": bare }, { "id": "b", "request": lane() }], "weather": full()["weather"] }),
    );
    assert_eq!(apart.status, 200, "{:#}", apart.body);
    assert_eq!(apart.body["results"][0]["report"], calculate("installation-plan", &full()).body);
    // An item without a start is planned without the cure.
    assert!(apart.body["results"][1]["report"].get("cure").is_none());
}

#[test]
fn a_place_is_refused_inside_an_item() {
    let request = with(&full(), "/weather", json!({ "location": { "latitude": 44.3, "longitude": -68.2 } }));
    let answer = batch(&json!({ "items": [{ "id": "a", "request": request }] }));
    assert_eq!(answer.status, 200);
    let errors = answer.body["results"][0]["problem"]["errors"].as_array().unwrap();
    assert!(errors.iter().any(|fault| fault["pointer"] == "#/items/0/request/weather/location"), "{errors:#?}");
    // Beside the items it may stand, and this instance fetches no forecasts.
    let answer = batch(&json!({
        "items": [{ "id": "a", "request": lane() }], "weather": { "location": { "latitude": 44.3, "longitude": -68.2 } }
    }));
    assert_eq!(answer.faults(), [("#/weather/location".to_owned(), "forecast_off".to_owned())]);
}

#[test]
fn the_batch_itself_is_refused_like_any_request() {
    let cases = [
        (json!({ "items": [] }), "#/items", "list_size"),
        (json!({}), "#/items", "field_missing"),
        (json!({ "items": [{ "id": "", "request": lane() }] }), "#/items/0/id", "text_size"),
        (json!({ "items": [{ "request": lane() }] }), "#/items/0/id", "field_missing"),
        (json!({ "items": [{ "id": "a" }] }), "#/items/0/request", "field_missing"),
        (json!({ "items": [{ "id": "a", "request": lane() }], "weathr": {} }), "#/weathr", "field_unknown"),
        (json!({ "items": vec![json!({ "id": "a", "request": {} }); 201] }), "#/items", "list_size"),
    ];
    for (request, pointer, code) in cases {
        let answer = batch(&request);
        assert_eq!(answer.status, 422, "{:#}", answer.body);
        assert_eq!(answer.faults(), [(pointer.to_owned(), code.to_owned())]);
    }
}

#[test]
fn a_field_sent_twice_in_an_item_is_that_items_fault() {
    let text = r#"{"items":[{"id":"a","request":{"opening":{"width":"12 ft","width":"13 ft","barrier":"none"}}},
        {"id":"b","request":{"opening":{"width":"12 ft","barrier":"none"}}}]}"#;
    let answer = post("/v1/installation-plan/batch", text.to_owned());
    assert_eq!(answer.body["results"][0]["problem"]["errors"][0]["code"], "field_duplicate");
    assert_eq!(answer.body["results"][1]["status"], 200);
}

#[test]
fn two_hundred_items_of_any_kind_are_all_answered() {
    let items: Vec<_> = (0..200)
        .map(|index| {
            let request = if index % 3 == 0 { json!({ "opening": index }) } else { lane() };
            json!({ "id": index.to_string(), "request": request })
        })
        .collect();
    let answer = batch(&json!({ "items": items }));
    assert_eq!((&answer.body["succeeded"], &answer.body["failed"]), (&json!(133), &json!(67)));
}
