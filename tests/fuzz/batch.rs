//! The laws of a batch: each item is answered by itself, in its place.
//!
//! A batch goes through the service itself, in this process and without a socket, for its items are answered nowhere else.

use actix_web::http::header;
use actix_web::{App, test, web};
use loopwright::api::app_state::AppState;
use loopwright::api::request_id::RequestId;
use loopwright::api::routes;
use loopwright::settings::Settings;
use serde_json::Value;

use super::checks::{assert_names_faults, assert_no_null};

/// Something that answers a body with a status and a body.
type Service = dyn Fn(&[u8]) -> (u16, Vec<u8>);

thread_local! {
    /// Kept to the end of the process: the runtime inside it cannot be dropped when its thread is half gone.
    static SERVICE: &'static Service = Box::leak(service());
}

fn service() -> Box<Service> {
    // Nobody fuzzes from many addresses.
    let settings = Settings::read(|name| (name == "LOOPWRIGHT_RATE").then(|| "0".to_owned())).expect("sound settings");
    let state = web::Data::new(AppState::new(settings).expect("a state without forecasts"));
    let system = actix_web::rt::System::new();
    let app = system.block_on(test::init_service(App::new().app_data(state).configure(routes::configure)));
    Box::new(move |body| {
        system.block_on(async {
            let request = test::TestRequest::post()
                .uri("/v1/installation-plan/batch")
                .insert_header((header::CONTENT_TYPE, "application/json"))
                .insert_header((RequestId::HEADER, "fuzz"))
                .set_payload(body.to_vec());
            let response = test::call_service(&app, request.to_request()).await;
            (response.status().as_u16(), test::read_body(response).await.to_vec())
        })
    })
}

/// Holds the laws of a batch against the bytes of its body.
pub fn check(body: &[u8]) {
    let (status, answer) = SERVICE.with(|service| service(body));
    let value: Value = serde_json::from_slice(&answer).expect("an answer is JSON");
    match status {
        200 => judge(&value, &serde_json::from_slice(body).expect("what was answered is JSON")),
        400 => assert_eq!(value["errors"], Value::Array(Vec::new())),
        422 => assert_names_faults(&value),
        _ => panic!("{status}: {value}"),
    }
    assert_eq!((status, answer), SERVICE.with(|service| service(body)), "the same bytes have two answers");
}

fn judge(answer: &Value, asked: &Value) {
    assert_no_null(answer, "#");
    let list = |value: &'_ Value, key: &str| value[key].as_array().expect("a list").clone();
    let (items, results) = (list(asked, "items"), list(answer, "results"));
    assert_eq!(items.len(), results.len());
    let succeeded = results.iter().filter(|result| result["status"] == 200).count();
    assert_eq!((&answer["succeeded"], &answer["failed"]), (&succeeded.into(), &(results.len() - succeeded).into()));
    for (index, (item, result)) in items.iter().zip(&results).enumerate() {
        assert_eq!(item["id"], result["id"]);
        let is_answered = result["status"] == 200;
        assert_eq!((is_answered, !is_answered), (result.get("report").is_some(), result.get("problem").is_some()));
        if !is_answered {
            assert_eq!(result["status"], result["problem"]["status"]);
            assert_refused(&result["problem"], index);
        }
    }
}

/// An item is refused for what it holds, and its pointers are those of the whole body.
fn assert_refused(problem: &Value, index: usize) {
    match problem["status"].as_u64() {
        // Each item is JSON, for the batch is; what is left of this kind is text that is no number that can be held.
        Some(400) => assert_eq!(problem["errors"], Value::Array(Vec::new())),
        Some(422) => {
            assert_names_faults(problem);
            let here = format!("#/items/{index}/request");
            for fault in problem["errors"].as_array().into_iter().flatten() {
                let pointer = fault["pointer"].as_str().unwrap_or_default();
                assert!(pointer.starts_with(&here), "{fault}");
            }
        }
        status => panic!("{status:?}: {problem}"),
    }
}
