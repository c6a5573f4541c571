//! The source of forecasts against a real HTTP server: what it asks, where it goes, what it remembers, and every way in which a
//! connection can fail.

use std::time::{Duration, Instant};

use loopwright::calculation::input::Location;
use loopwright::forecast::{
    AskerId, ForecastError, ForecastLimits, ForecastOrigin, ForecastSource, HourlyForecast, HttpForecastSource,
};
use serde_json::{Value, json};

use super::weather_service::{HOURLY, PLACE, POINT, Reply, WeatherService, hourly, periods, point, sound};

const AGENT: &str = "loops.tern-island.example (yard@tern-island.example)";

/// Limits that a test can wait for.
pub fn hasty() -> ForecastLimits {
    ForecastLimits { pause: Duration::from_millis(10), ..ForecastLimits::within(Duration::from_secs(4)) }
}

/// Limits that give up on one document after a little more than half a second.
fn impatient() -> ForecastLimits {
    ForecastLimits {
        attempt: Duration::from_millis(600),
        pause: Duration::from_millis(10),
        ..ForecastLimits::within(Duration::from_secs(8))
    }
}

pub fn source(service: &WeatherService, limits: ForecastLimits) -> HttpForecastSource {
    HttpForecastSource::new(service.base().parse().unwrap(), AGENT, limits).unwrap()
}

pub fn ask_at(source: &HttpForecastSource, (latitude, longitude): (f64, f64)) -> Result<HourlyForecast, ForecastError> {
    actix_web::rt::System::new().block_on(source.hourly(Location { latitude, longitude }, AskerId(1)))
}

pub fn ask(source: &HttpForecastSource) -> Result<HourlyForecast, ForecastError> {
    ask_at(source, PLACE)
}

/// The rows as a request has them.
pub fn rows(outcome: Result<HourlyForecast, ForecastError>) -> Vec<Value> {
    let conditions = serde_json::to_value(&*outcome.unwrap().conditions).unwrap();
    let Value::Array(mut rows) = conditions else { panic!("no rows: {conditions}") };
    for row in &mut rows {
        row.as_object_mut().unwrap().retain(|_, value| !value.is_null());
    }
    rows
}

pub fn is_malformed(outcome: &Result<HourlyForecast, ForecastError>) -> bool {
    matches!(outcome, Err(ForecastError::Malformed(_)))
}

#[test]
fn two_steps_give_the_hours_in_the_form_of_a_request() {
    let service = WeatherService::sound();
    let outcome = ask(&source(&service, hasty()));
    assert_eq!(outcome.as_ref().unwrap().origin, ForecastOrigin::Service);
    let rows = rows(outcome);
    assert_eq!(rows.len(), 48);
    assert_eq!(
        rows[0],
        json!({
            "time": "2026-11-25T07:00:00-05:00", "air": "43 °F", "relative_humidity_percent": 80.0,
            "precipitation_probability_percent": 5.0
        })
    );
    assert_eq!(
        rows[47],
        json!({ "time": "2026-11-27T06:00:00-05:00", "air": "34 °F", "relative_humidity_percent": 80.0 })
    );
    let asked = service.asked();
    assert_eq!(asked.iter().map(|asked| asked.path.as_str()).collect::<Vec<_>>(), [POINT, HOURLY]);
    for question in asked {
        let head = question.head.to_ascii_lowercase();
        assert!(head.contains(&format!("\r\nuser-agent: {AGENT}\r\n")), "{head}");
        assert!(head.contains("\r\naccept: application/geo+json\r\n"), "{head}");
        assert!(!head.contains("\r\nreferer:"), "{head}");
    }
}

#[test]
fn an_address_with_a_path_keeps_it() {
    for path in ["/weather/v2", "/weather/v2/"] {
        let service = WeatherService::start(|asked, _, base| {
            let point_here = Reply::json(&point(&format!("{base}{HOURLY}")), 0);
            if asked.path == format!("/weather/v2{POINT}") { point_here } else { sound(asked, base) }
        });
        let base = format!("{}{path}", service.base());
        let source = HttpForecastSource::new(base.parse().unwrap(), AGENT, hasty()).unwrap();
        assert_eq!(rows(ask(&source)).len(), 48);
    }
}

#[test]
fn a_place_without_a_forecast_is_said_so() {
    let service = WeatherService::sound();
    assert_eq!(ask_at(&source(&service, hasty()), (51.5, -0.1)).unwrap_err(), ForecastError::NotCovered);
    assert_eq!(service.paths(), ["/points/51.5,-0.1"]);
    let at_sea = WeatherService::start(|_, _, _| Reply::json(&json!({ "properties": { "forecastHourly": null } }), 0));
    assert_eq!(ask(&source(&at_sea, hasty())).unwrap_err(), ForecastError::NotCovered);
    let gone = WeatherService::with_hourly(|| Reply::text(404, "{}"));
    assert_eq!(ask(&source(&gone, hasty())).unwrap_err(), ForecastError::NotCovered);
}

#[test]
fn the_second_step_stays_with_the_service() {
    let elsewhere = WeatherService::sound();
    let addresses = [
        format!("{}{HOURLY}", elsewhere.base()),
        "http://169.254.169.254/latest/meta-data".to_owned(),
        "https://127.0.0.1/".to_owned(),
        "file:///etc/passwd".to_owned(),
        "/gridpoints/TIB/41,12/forecast/hourly".to_owned(),
        String::new(),
    ];
    for address in addresses {
        let service = WeatherService::start({
            let address = address.clone();
            move |_, _, _| Reply::json(&point(&address), 600)
        });
        assert!(is_malformed(&ask(&source(&service, hasty()))), "{address}");
        assert_eq!(service.asked().len(), 1, "{address}");
    }
    let service = WeatherService::start(|_, _, base| {
        Reply::json(&point(&format!("{}{HOURLY}", base.replace("http://", "http://user:pass@"))), 600)
    });
    assert!(is_malformed(&ask(&source(&service, hasty()))));
    assert_eq!(elsewhere.asked().len(), 0, "another host was asked");
}

#[test]
fn redirects_are_followed_on_the_service_only_and_not_for_ever() {
    let moved = |to: String| Reply { headers: vec![format!("location: {to}")], ..Reply::text(301, "") };
    let within = WeatherService::start(move |asked, _, base| {
        if asked.path == POINT {
            moved("/moved".to_owned())
        } else if asked.path == "/moved" {
            Reply::json(&point(&format!("{base}{HOURLY}")), 0)
        } else {
            sound(asked, base)
        }
    });
    assert_eq!(rows(ask(&source(&within, hasty()))).len(), 48);

    let elsewhere = WeatherService::sound();
    let target = format!("{}{POINT}", elsewhere.base());
    let leaving = WeatherService::start(move |_, _, _| moved(target.clone()));
    assert_eq!(ask(&source(&leaving, hasty())).unwrap_err(), ForecastError::Refused(301));
    assert_eq!(elsewhere.asked().len(), 0, "a redirect elsewhere was followed");

    let circling = WeatherService::start(move |_, before, _| moved(format!("/round/{before}")));
    assert_eq!(ask(&source(&circling, hasty())).unwrap_err(), ForecastError::Refused(301));
    assert_eq!(circling.asked().len(), 4);
}

#[test]
fn an_error_of_the_service_is_tried_once_more() {
    let service =
        WeatherService::start(
            |asked, before, base| {
                if [0, 2].contains(&before) { Reply::text(503, "later") } else { sound(asked, base) }
            },
        );
    assert_eq!(rows(ask(&source(&service, hasty()))).len(), 48);
    assert_eq!(service.paths(), [POINT, POINT, HOURLY, HOURLY]);

    let failing = WeatherService::start(|_, _, _| Reply::text(500, "no"));
    assert_eq!(ask(&source(&failing, hasty())).unwrap_err(), ForecastError::Refused(500));
    assert_eq!(failing.asked().len(), 2);
}

#[test]
fn a_refusal_is_not_tried_again() {
    for status in [400, 401, 403, 429, 204, 304] {
        let service = WeatherService::start(move |_, _, _| Reply::text(status, ""));
        assert_eq!(ask(&source(&service, hasty())).unwrap_err(), ForecastError::Refused(status));
        assert_eq!(service.asked().len(), 1, "{status}");
    }
}

#[test]
fn a_service_that_is_slow_once_is_asked_again_and_one_that_stays_slow_is_too_late() {
    let slow = || Reply { delay: Duration::from_secs(5), ..Reply::text(200, "") };
    let once = WeatherService::start(move |asked, before, base| if before == 0 { slow() } else { sound(asked, base) });
    assert_eq!(rows(ask(&source(&once, impatient()))).len(), 48);
    assert_eq!(once.paths(), [POINT, POINT, HOURLY]);

    let always = WeatherService::start(move |_, _, _| slow());
    assert_eq!(ask(&source(&always, impatient())).unwrap_err(), ForecastError::Timeout);
    assert_eq!(always.asked().len(), 2);

    let stalling = WeatherService::with_hourly(|| Reply { stall: Duration::from_secs(5), ..Reply::text(200, "{}") });
    assert_eq!(ask(&source(&stalling, impatient())).unwrap_err(), ForecastError::Timeout);
}

#[test]
fn one_time_bounds_the_whole_question() {
    let service = WeatherService::start(|_, _, _| Reply { delay: Duration::from_secs(30), ..Reply::text(200, "") });
    let limits =
        ForecastLimits { attempt: Duration::from_secs(20), ..ForecastLimits::within(Duration::from_millis(300)) };
    assert_eq!(ask(&source(&service, limits)).unwrap_err(), ForecastError::Timeout);
    assert_eq!(service.asked().len(), 1);
}

#[test]
fn a_broken_or_absent_connection_is_told_without_the_place() {
    let cut = WeatherService::with_hourly(|| Reply { announced: Some(1000), ..Reply::text(200, "{\"properties\":") });
    let closed = std::net::TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap();
    let absent = HttpForecastSource::new(format!("http://{closed}").parse().unwrap(), AGENT, hasty()).unwrap();
    let broken = ask(&source(&cut, hasty()));
    let unreachable = ask(&absent);
    let (Err(ForecastError::Broken(broken)), Err(ForecastError::Unreachable(unreachable))) = (&broken, &unreachable)
    else {
        panic!("{broken:?}, {unreachable:?}")
    };
    for text in [broken, unreachable] {
        assert!(!text.contains("44.31") && !text.contains("points") && !text.contains("http://"), "{text}");
    }
    assert_eq!(cut.paths(), [POINT, HOURLY, HOURLY]);
}

#[test]
fn a_document_of_any_size_is_read_to_its_cap_and_no_further() {
    let limits = ForecastLimits { body: 60_000, ..hasty() };
    let padded = |length: usize| format!("{:<length$}", hourly(periods(2)).to_string());
    for is_chunked in [false, true] {
        let of = |length| {
            let service =
                WeatherService::with_hourly(move || Reply { is_chunked, ..Reply::text(200, &padded(length)) });
            ask(&source(&service, limits))
        };
        assert_eq!(rows(of(60_000)).len(), 2, "chunked {is_chunked}");
        assert!(is_malformed(&of(60_001)), "chunked {is_chunked}");
    }
    // An announced length is believed at once: nothing of the body is waited for.
    let boasting = WeatherService::with_hourly(|| Reply {
        announced: Some(1 << 40),
        stall: Duration::from_secs(30),
        ..Reply::text(200, "{}")
    });
    assert!(is_malformed(&ask(&source(&boasting, limits))));
}

#[test]
fn a_forecast_is_remembered_as_long_as_the_service_allows() {
    let service = WeatherService::sound();
    let source = source(&service, hasty());
    let first = rows(ask(&source));
    // Half a thousandth of a degree away is the same place.
    let again = ask_at(&source, (PLACE.0 + 0.0001, PLACE.1));
    assert_eq!(again.as_ref().unwrap().origin, ForecastOrigin::Cache);
    assert_eq!((rows(again), service.asked().len()), (first, 2));
}

#[test]
fn what_must_not_be_used_again_is_asked_for_again_and_the_address_remembered_alone() {
    let service = WeatherService::with_hourly(|| Reply {
        headers: vec!["cache-control: no-store".to_owned()],
        ..Reply::text(200, &hourly(periods(3)).to_string())
    });
    let source = source(&service, hasty());
    for _ in 0..2 {
        assert_eq!(ask(&source).unwrap().origin, ForecastOrigin::Service);
    }
    assert_eq!(service.paths(), [POINT, HOURLY, HOURLY]);
}

#[test]
fn where_a_known_address_leads_nowhere_any_more_the_service_is_asked_for_another() {
    let service = WeatherService::start(|asked, before, base| match (asked.path.as_str(), before) {
        (HOURLY, 2) => Reply::text(404, "{}"),
        (HOURLY, _) => Reply::json(&hourly(periods(3)), 0),
        _ => sound(asked, base),
    });
    let source = source(&service, hasty());
    for _ in 0..2 {
        assert_eq!(rows(ask(&source)).len(), 3);
    }
    assert_eq!(service.paths(), [POINT, HOURLY, HOURLY, POINT, HOURLY]);
}

#[test]
fn a_service_that_keeps_failing_is_left_alone_then_tried_again() {
    let is_well = std::sync::Arc::new(std::sync::atomic::AtomicBool::new(false));
    let service = WeatherService::start({
        let is_well = is_well.clone();
        move |asked, _, base| {
            if is_well.load(std::sync::atomic::Ordering::SeqCst) { sound(asked, base) } else { Reply::text(403, "") }
        }
    });
    let rest = Duration::from_millis(500);
    let source = source(&service, ForecastLimits { max_failures: 3, open_for: rest, ..hasty() });
    for _ in 0..3 {
        assert_eq!(ask(&source).unwrap_err(), ForecastError::Refused(403));
    }
    let opened = Instant::now();
    is_well.store(true, std::sync::atomic::Ordering::SeqCst);
    match ask(&source) {
        Err(ForecastError::Open(wait)) => assert!(wait <= rest, "{wait:?}"),
        outcome => assert!(opened.elapsed() >= rest, "it was not left alone: {outcome:?}"),
    }
    std::thread::sleep(rest);
    assert_eq!(rows(ask(&source)).len(), 48);
}

#[test]
fn places_that_are_not_covered_do_not_count_as_failures() {
    let service = WeatherService::sound();
    let source = source(&service, ForecastLimits { max_failures: 2, ..hasty() });
    for latitude in 0..4 {
        assert_eq!(ask_at(&source, (latitude.into(), 0.0)).unwrap_err(), ForecastError::NotCovered);
    }
    assert!(ask(&source).is_ok());
}

#[test]
fn only_so_many_questions_run_at_once() {
    let service =
        WeatherService::start(|asked, _, base| Reply { delay: Duration::from_millis(300), ..sound(asked, base) });
    let source = source(&service, ForecastLimits { max_concurrent: 2, ..hasty() });
    let outcomes = actix_web::rt::System::new().block_on(futures_util::future::join_all((0..4u32).map(|east| {
        // Other places, so that none waits for another, of other callers, so that none has spent its share.
        let place = Location { latitude: PLACE.0, longitude: PLACE.1 + f64::from(east) };
        source.hourly(place, AskerId(east.into()))
    })));
    let busy = outcomes.iter().filter(|outcome| matches!(outcome, Err(ForecastError::Busy))).count();
    assert_eq!(busy, 2, "{outcomes:?}");
    assert!(outcomes[0].is_ok());
    assert!(ask(&source).is_ok(), "a place among those at once is not given back");
}
