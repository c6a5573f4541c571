//! What is remembered of a weather service: places that it does not cover, the pause that it asks for, a forecast that may stand in.

use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::Duration;

use loopwright::forecast::{ForecastError, ForecastLimits, ForecastOrigin};
use serde_json::{Value, json};

use super::forecast::{assert_problem, by_place, instance, only_fault, post, post_as};
use super::forecast_source::{ask, hasty, rows, source};
use super::harness::{Answer, calculate};
use super::weather_service::{HOURLY, PLACE, POINT, Reply, WeatherService, hourly, periods, sound};

/// A weather service whose second step answers one reply after the other, and the last again and again.
fn with_replies(replies: Vec<fn() -> Reply>) -> WeatherService {
    let given = Arc::new(AtomicUsize::new(0));
    WeatherService::with_hourly(move || {
        let next = given.fetch_add(1, Ordering::SeqCst).min(replies.len() - 1);
        replies[next]()
    })
}

/// A forecast that expires at once and may stand in for a newer one for some minutes.
fn lasting() -> Reply {
    Reply::cached(&hourly(periods(48)), "public, max-age=0, stale-if-error=600")
}

/// What the report says of where its weather came from.
fn assumed(answer: &Answer) -> &Value {
    assert_eq!(answer.status, 200, "{:#}", answer.body);
    let all = answer.body["assumed"].as_array().unwrap();
    all.iter().find(|assumed| assumed["about"] == "#/weather/conditions").unwrap()
}

#[test]
fn a_place_that_is_not_covered_is_asked_about_once() {
    let nowhere = |cache_control: &'static str| {
        WeatherService::start(move |_, _, _| Reply { status: 404, ..Reply::cached(&json!({}), cache_control) })
    };
    let at_sea = WeatherService::start(|_, _, _| Reply::json(&json!({ "properties": { "forecastHourly": null } }), 0));
    // Also where the service says nothing of how long, or that it must not be remembered.
    for service in [WeatherService::sound(), nowhere("max-age=3600"), nowhere("no-store"), at_sea] {
        let address = instance(&service, "4 s");
        for _ in 0..2 {
            only_fault(&post(address, &by_place((51.5, -0.1))), "forecast_not_covered");
        }
        assert_eq!(service.paths(), ["/points/51.5,-0.1"]);
    }
}

#[test]
fn a_place_without_hours_is_asked_about_once() {
    let service = WeatherService::with_hourly(|| Reply::text(404, "{}"));
    let address = instance(&service, "4 s");
    for _ in 0..2 {
        only_fault(&post(address, &by_place(PLACE)), "forecast_not_covered");
    }
    assert_eq!(service.paths(), [POINT, HOURLY]);
}

#[test]
fn a_place_that_fails_is_left_alone_for_a_while() {
    let service = with_replies(vec![|| Reply::text(200, "no forecast"), || Reply::json(&hourly(periods(3)), 0)]);
    let address = instance(&service, "4 s");
    for caller in ["192.0.2.11", "192.0.2.12"] {
        assert_problem(&post_as(address, caller, &by_place(PLACE)), 502, "forecast_failed");
    }
    assert_eq!(service.paths(), [POINT, HOURLY]);

    let service = with_replies(vec![|| Reply::text(200, "no forecast"), || Reply::json(&hourly(periods(3)), 0)]);
    let source = source(&service, ForecastLimits { place_rest: Duration::ZERO, ..hasty() });
    assert!(matches!(ask(&source), Err(ForecastError::Malformed(_))));
    assert_eq!(rows(ask(&source)).len(), 3, "it is never asked again");
}

#[test]
fn a_service_that_wants_a_pause_is_asked_nothing_and_callers_are_told_how_long() {
    let in_an_hour = httpdate::fmt_http_date(std::time::SystemTime::now() + Duration::from_secs(1800));
    for (status, retry_after, wait) in
        [(503, "120", 60..=120), (429, "120", 60..=120), (503, &in_an_hour, 1700..=1800), (429, "86400", 3500..=3600)]
    {
        let header = format!("retry-after: {retry_after}");
        let service = WeatherService::start(move |_, _, _| Reply {
            headers: vec![header.clone()],
            ..Reply::text(status, "later")
        });
        let address = instance(&service, "4 s");
        for (caller, place) in [("192.0.2.11", PLACE), ("192.0.2.11", PLACE), ("192.0.2.12", (45.0, -68.0))] {
            let refused = post_as(address, caller, &by_place(place));
            assert_problem(&refused, 503, "forecast_unavailable");
            assert!(refused.body["detail"].as_str().unwrap().contains("wants no questions"), "{:#}", refused.body);
            let seconds = refused.header("retry-after").parse::<u64>().unwrap();
            assert!(wait.contains(&seconds), "{status} {retry_after}: {seconds}");
        }
        assert_eq!(service.asked().len(), 1, "{status} {retry_after}");
    }
}

#[test]
fn a_pause_ends() {
    let service = WeatherService::start(|asked, before, base| match before {
        0 => Reply { headers: vec!["retry-after: 1".to_owned()], ..Reply::text(503, "later") },
        _ => sound(asked, base),
    });
    let source = source(&service, hasty());
    let Err(ForecastError::Paused(wait)) = ask(&source) else { panic!("no pause") };
    std::thread::sleep(wait);
    assert_eq!(rows(ask(&source)).len(), 48);
}

#[test]
fn a_forecast_that_may_stand_in_does_and_the_report_says_so() {
    let failures: [fn() -> Reply; 5] = [
        || Reply::text(500, "no"),
        || Reply::text(403, "no"),
        || Reply::text(200, "no forecast"),
        || Reply { announced: Some(99_999), ..Reply::text(200, "{") },
        || Reply { headers: vec!["retry-after: 120".to_owned()], ..Reply::text(503, "later") },
    ];
    for failure in failures {
        let service = with_replies(vec![lasting, failure]);
        let address = instance(&service, "4 s");
        let fetched = post(address, &by_place(PLACE));
        let reason = "The weather service's forecast for the place that was given.";
        assert_eq!(assumed(&fetched)["reason"], reason);
        // The service fails, then is not asked: both times the old forecast is used, with the same figures.
        for _ in 0..7 {
            let stale = post(address, &by_place(PLACE));
            assert_eq!(
                assumed(&stale)["reason"],
                "The weather service's forecast for the place that was given, 0 min old: the service gives no newer one now."
            );
            assert_eq!(assumed(&stale)["value"], assumed(&fetched)["value"]);
            assert_eq!(stale.body["conditions_used"], fetched.body["conditions_used"]);
        }
        let metrics = super::harness::send(address, &reqwest::Method::GET, "/metrics", &[]).body;
        assert!(metrics.as_str().unwrap().contains("loopwright_forecasts_total{outcome=\"stale\"} 7\n"), "{metrics}");
    }
}

#[test]
fn no_forecast_stands_in_where_the_service_does_not_allow_it_or_covers_the_place_no_more() {
    let refused: fn() -> Reply = || Reply::text(500, "no");
    for reply in [
        || Reply::cached(&hourly(periods(48)), "max-age=0"),
        || Reply::cached(&hourly(periods(48)), "max-age=0, must-revalidate, stale-if-error=600"),
    ] {
        let address = instance(&with_replies(vec![reply, refused]), "4 s");
        assert_eq!(post(address, &by_place(PLACE)).status, 200);
        assert_problem(&post(address, &by_place(PLACE)), 502, "forecast_failed");
    }
    let address = instance(&with_replies(vec![lasting, || Reply::text(404, "{}")]), "4 s");
    assert_eq!(post(address, &by_place(PLACE)).status, 200);
    only_fault(&post(address, &by_place(PLACE)), "forecast_not_covered");
}

#[test]
fn a_new_forecast_takes_the_place_of_one_that_stood_in() {
    let service = with_replies(vec![lasting, || Reply::text(403, "no"), || Reply::json(&hourly(periods(3)), 600)]);
    let source = source(&service, hasty());
    let origins = [(); 4].map(|()| ask(&source).unwrap().origin);
    let is_stale = |origin: &ForecastOrigin| matches!(origin, ForecastOrigin::Stale(_));
    assert_eq!(origins.each_ref().map(is_stale), [false, true, false, false]);
    assert_eq!(
        (origins[0], origins[2], origins[3]),
        (ForecastOrigin::Service, ForecastOrigin::Service, ForecastOrigin::Cache)
    );
}

#[test]
fn rows_before_the_start_of_the_work_do_not_stand_in_its_way() {
    // A forecast of seven hours ago, the oldest that may stand in: the work begins in its eighth hour.
    let rows: Vec<_> = (7..31)
        .map(|hour| {
            let (day, hour) = (25 + hour / 24, hour % 24);
            json!({ "time": format!("2026-11-{day}T{hour:02}:00:00-05:00"), "air": "43 °F", "relative_humidity_percent": 80 })
        })
        .collect();
    let mut request = by_place(PLACE);
    request["start"] = json!("2026-11-25T14:30:00-05:00");
    request["weather"] = json!({ "conditions": rows });
    let old = calculate("cure-guidance", &request);
    assert_eq!(old.status, 200, "{:#}", old.body);
    assert_eq!(old.body["conditions_used"].as_array().unwrap().len(), rows.len());
}
