//! A place in a request: the service fetches its forecast when the operator lets it, and says what to send when it cannot.

use std::net::SocketAddr;
use std::time::Duration;

use reqwest::Method;
use serde_json::{Value, json};

use super::harness::{Answer, calculate, checked, client, description, send, shared, start};
use super::weather_service::{HOURLY, PLACE, POINT, Reply, WeatherService, hourly, periods, point, sound};

const PATH: &str = "/v1/cure-guidance";

/// The boatyard's gate on a cold morning, the weather by its place.
pub fn by_place((latitude, longitude): (f64, f64)) -> Value {
    json!({
        "sealant": { "kind": "one_part_moisture_cure" }, "start": "2026-11-25T09:00:00-05:00", "surface_condition": "dry",
        "weather": { "location": { "latitude": latitude, "longitude": longitude } }
    })
}

/// An instance that asks this weather service, and believes this machine whom it speaks for.
pub fn instance(service: &WeatherService, timeout: &str) -> SocketAddr {
    start(&[
        ("LOOPWRIGHT_FORECAST_URL", &service.base()),
        ("LOOPWRIGHT_FORECAST_USER_AGENT", "loops.tern-island.example (yard@tern-island.example)"),
        ("LOOPWRIGHT_FORECAST_TIMEOUT", timeout),
        ("LOOPWRIGHT_TRUSTED_PROXIES", "127.0.0.0/8"),
    ])
}

pub fn post(address: SocketAddr, request: &Value) -> Answer {
    post_as(address, "192.0.2.1", request)
}

/// Posts a request of a caller with this address.
pub fn post_as(address: SocketAddr, caller: &str, request: &Value) -> Answer {
    let sent = client().post(format!("http://{address}{PATH}")).header("x-forwarded-for", caller);
    let sent = sent.header("content-type", "application/json").body(request.to_string()).send().unwrap();
    checked(&Method::POST, PATH, sent)
}

/// A problem of a forecast says what to send instead.
pub fn assert_problem(answer: &Answer, status: u16, code: &str) {
    assert_eq!((answer.status, &answer.body["code"]), (status, &json!(code)), "{:#}", answer.body);
    assert!(answer.body["detail"].as_str().unwrap().contains("Send the weather hour by hour"), "{:#}", answer.body);
    assert_eq!(answer.body["errors"], json!([]));
    assert_eq!(answer.header("cache-control"), "no-store");
}

/// The hint of the only fault, which must be of the place.
pub fn only_fault(answer: &Answer, code: &str) -> String {
    assert_eq!(answer.status, 422, "{:#}", answer.body);
    assert_eq!(answer.faults(), [("#/weather/location".to_owned(), code.to_owned())]);
    answer.body["errors"][0]["hint"].as_str().unwrap().to_owned()
}

#[test]
fn a_place_is_answered_with_its_forecast_and_the_conditions_used_give_the_answer_again() {
    let service = WeatherService::sound();
    let address = instance(&service, "4 s");
    let by_forecast = post(address, &by_place(PLACE));
    assert_eq!(by_forecast.status, 200, "{:#}", by_forecast.body);
    let used = by_forecast.body["conditions_used"].clone();
    assert_eq!(used.as_array().unwrap().len(), 48);
    let assumed = by_forecast.body["assumed"].as_array().unwrap();
    let forecast: Vec<_> = assumed.iter().filter(|assumed| assumed["about"] == "#/weather/conditions").collect();
    assert_eq!(forecast.len(), 1);
    assert_eq!(forecast[0]["value"], "hourly from 2026-11-25T07:00:00-05:00 to 2026-11-27T06:00:00-05:00");
    assert_eq!(forecast[0]["source_ids"], json!(["public_forecast"]));
    let sources = by_forecast.body["basis"]["sources"].as_array().unwrap();
    assert!(sources.iter().any(|source| source["id"] == "public_forecast"), "{sources:?}");

    let mut by_rows = by_place(PLACE);
    by_rows["weather"] = json!({ "conditions": used });
    // An instance without forecasts answers the same, but for where the weather came from.
    let again = calculate("cure-guidance", &by_rows);
    assert_eq!(again.status, 200, "{:#}", again.body);
    let without_source = |mut body: Value| {
        body["assumed"].as_array_mut().unwrap().retain(|assumed| assumed["about"] != "#/weather/conditions");
        body["basis"]["sources"].as_array_mut().unwrap().retain(|source| source["id"] != "public_forecast");
        body
    };
    assert_eq!(without_source(by_forecast.body), again.body);
    assert_eq!(service.paths(), [POINT, HOURLY]);
}

#[test]
fn every_calculation_with_weather_takes_a_place_and_says_that_forecasts_are_off() {
    let schemas = &description()["components"]["schemas"];
    let takes_weather: Vec<_> = description()["paths"]
        .as_object()
        .unwrap()
        .iter()
        .filter(|(_, item)| {
            let body = &item["post"]["requestBody"]["content"]["application/json"]["schema"]["$ref"];
            let name = body.as_str().unwrap_or_default().rsplit('/').next().unwrap();
            schemas[name]["properties"]["weather"]["$ref"] == "#/components/schemas/Weather"
        })
        .collect();
    assert!(takes_weather.iter().any(|(path, _)| *path == PATH), "{takes_weather:?}");
    // A batch takes a place beside its items, and is tried with the plans.
    for (path, item) in takes_weather.into_iter().filter(|(path, _)| !path.ends_with("/batch")) {
        let examples = item["post"]["requestBody"]["content"]["application/json"]["examples"].as_object().unwrap();
        let with_weather: Vec<_> =
            examples.values().filter(|example| example["value"].get("weather").is_some()).collect();
        assert!(!with_weather.is_empty(), "no example of {path} sends its weather");
        for example in with_weather {
            let mut request = example["value"].clone();
            request["weather"] = by_place(PLACE)["weather"].clone();
            let answer = calculate(path.trim_start_matches("/v1/"), &request);
            assert_eq!(only_fault(&answer, "forecast_off"), "Send the weather hour by hour instead.", "{path}");
        }
        for (status, code) in [("502", "forecast_failed"), ("503", "forecast_unavailable"), ("504", "forecast_timeout")]
        {
            let known = &item["post"]["responses"][status]["content"]["application/problem+json"]["examples"];
            assert!(known.get(code).is_some(), "{path} does not describe {code}");
        }
    }
}

#[test]
fn a_place_at_fault_comes_with_the_other_faults_and_is_not_asked_about() {
    let service = WeatherService::sound();
    let on = instance(&service, "4 s");
    for (address, place, code, at) in [
        (shared(), PLACE, "forecast_off", "#/weather/location"),
        (shared(), (91.0, 0.0), "out_of_range", "#/weather/location/latitude"),
        (on, (44.0, 181.0), "out_of_range", "#/weather/location/longitude"),
    ] {
        let mut request = by_place(place);
        request["start"] = json!("yesterday");
        let mut faults = post(address, &request).faults();
        faults.sort();
        let expected = [("#/start", "time_invalid"), (at, code)].map(|(at, code)| (at.to_owned(), code.to_owned()));
        assert_eq!(faults, expected);
    }
    let mut both = by_place(PLACE);
    both["weather"]["conditions"] =
        json!([{ "time": "2026-11-25T09:00:00-05:00", "air": "43 °F", "relative_humidity_percent": 80 }]);
    for address in [shared(), on] {
        only_fault(&post(address, &both), "contradiction");
    }
    assert_eq!(service.paths(), Vec::<String>::new());
}

#[test]
fn a_place_without_a_forecast_is_a_fault_of_the_request() {
    let service = WeatherService::sound();
    let hint = only_fault(&post(instance(&service, "4 s"), &by_place((51.5, -0.1))), "forecast_not_covered");
    assert_eq!(hint, "Send the weather hour by hour instead.");
}

#[test]
fn a_start_outside_the_forecast_is_the_callers_fault() {
    let service = WeatherService::sound();
    let mut request = by_place(PLACE);
    request["start"] = json!("2026-12-25T09:00:00-05:00");
    let answer = post(instance(&service, "4 s"), &request);
    assert_eq!((answer.status, answer.faults()), (422, vec![("#/start".to_owned(), "out_of_range".to_owned())]));
}

#[test]
fn a_service_that_answers_nonsense_is_a_bad_gateway() {
    let replies: [fn() -> Reply; 5] = [
        || Reply::text(200, "<html>busy</html>"),
        || Reply::text(500, "no"),
        || Reply::text(302, "elsewhere"),
        || Reply { announced: Some(99_999), ..Reply::text(200, "{") },
        // No dew point lies so far above the air: the calculation would refuse the row.
        || {
            let mut periods = periods(24);
            periods[3]["relativeHumidity"] = json!(null);
            periods[3]["dewpoint"]["value"] = json!(30);
            Reply::json(&hourly(periods), 0)
        },
    ];
    for reply in replies {
        let service = WeatherService::with_hourly(reply);
        assert_problem(&post(instance(&service, "4 s"), &by_place(PLACE)), 502, "forecast_failed");
    }
    let elsewhere = WeatherService::start(|_, _, _| Reply::json(&point("http://169.254.169.254/latest"), 600));
    assert_problem(&post(instance(&elsewhere, "4 s"), &by_place(PLACE)), 502, "forecast_failed");
}

#[test]
fn a_service_that_does_not_answer_is_a_gateway_timeout() {
    let service = WeatherService::start(|_, _, _| Reply { delay: Duration::from_secs(30), ..Reply::text(200, "") });
    assert_problem(&post(instance(&service, "0.4 s"), &by_place(PLACE)), 504, "forecast_timeout");
}

#[test]
fn the_deadline_of_the_body_leaves_the_forecast_its_own_time() {
    let service =
        WeatherService::start(|asked, _, base| Reply { delay: Duration::from_millis(700), ..sound(asked, base) });
    let address = start(&[
        ("LOOPWRIGHT_DEADLINE", "0.6 s"),
        ("LOOPWRIGHT_FORECAST_URL", &service.base()),
        ("LOOPWRIGHT_FORECAST_USER_AGENT", "yard@tern-island.example"),
    ]);
    assert_eq!(post(address, &by_place(PLACE)).status, 200);
}

#[test]
fn a_service_that_keeps_failing_is_not_asked_and_the_caller_told_when_to_come_back() {
    let service = WeatherService::start(|_, _, _| Reply::text(403, ""));
    let address = instance(&service, "4 s");
    let answers: Vec<_> = (0..6).map(|_| post(address, &by_place(PLACE))).collect();
    for answer in &answers[..5] {
        assert_problem(answer, 502, "forecast_failed");
    }
    assert_problem(&answers[5], 503, "forecast_unavailable");
    let seconds: u64 = answers[5].header("retry-after").parse().unwrap();
    assert!((1..=30).contains(&seconds), "{seconds}");
    assert_eq!(service.asked().len(), 5);
    // Conditions are answered all the same.
    let mut request = by_place(PLACE);
    request["weather"] = json!({ "conditions": [
        { "time": "2026-11-25T09:00:00-05:00", "air": "43 °F", "relative_humidity_percent": 80 }
    ] });
    assert_eq!(post(address, &request).status, 200);
}

#[test]
fn forecasts_are_counted_by_how_they_ended() {
    let service = WeatherService::sound();
    let address = instance(&service, "4 s");
    for place in [PLACE, PLACE, PLACE, (51.5, -0.1)] {
        post(address, &by_place(place));
    }
    let metrics = send(address, &Method::GET, "/metrics", &[]).body;
    for (outcome, count) in [("ok", 1), ("cached", 2), ("not_covered", 1)] {
        let line = format!("loopwright_forecasts_total{{outcome=\"{outcome}\"}} {count}\n");
        assert!(metrics.as_str().unwrap().contains(&line), "{line} is not in {metrics}");
    }
}
