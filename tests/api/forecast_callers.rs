//! Many callers and one weather service: equal questions are asked once, and no caller takes the service from the others.

use std::net::SocketAddr;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, mpsc};
use std::time::Duration;

use futures_util::FutureExt;
use loopwright::calculation::input::Location;
use loopwright::forecast::{AskerId, ForecastSource};

use super::forecast::{assert_problem, by_place, instance, only_fault, post_as};
use super::forecast_source::{hasty, rows, source};
use super::harness::Answer;
use super::weather_service::{HOURLY, PLACE, POINT, Reply, WeatherService, sound};

const ANN: &str = "192.0.2.11";
const BEN: &str = "192.0.2.12";

/// A weather service that keeps the questions of some paths waiting until it is opened.
fn closed_service(is_held: fn(&str) -> bool) -> (Arc<AtomicBool>, WeatherService) {
    let is_open = Arc::new(AtomicBool::new(false));
    let gate = is_open.clone();
    let service = WeatherService::start(move |asked, _, base| {
        // Bounded, so that no thread stays behind a test that fails.
        let waits = |_: &u32| is_held(&asked.path) && !gate.load(Ordering::SeqCst);
        (0..6000).take_while(waits).for_each(|_| std::thread::sleep(Duration::from_millis(5)));
        sound(asked, base)
    });
    (is_open, service)
}

/// Asks at the same time; the answers come as they arrive.
fn post_at_once(address: SocketAddr, caller: &'static str, places: &[(f64, f64)]) -> mpsc::Receiver<Answer> {
    let (send, answers) = mpsc::channel();
    for place in places {
        let (send, request) = (send.clone(), by_place(*place));
        std::thread::spawn(move || send.send(post_as(address, caller, &request)).unwrap());
    }
    answers
}

#[test]
fn forty_equal_cold_places_are_one_question_and_all_are_answered() {
    let (is_open, service) = closed_service(|_| true);
    let answers = post_at_once(instance(&service, "20 s"), ANN, &[PLACE; 40]);
    service.wait_for(1);
    assert_eq!(answers.try_recv().err(), Some(mpsc::TryRecvError::Empty), "somebody is turned away");
    is_open.store(true, Ordering::SeqCst);
    let statuses: Vec<_> = answers.iter().map(|answer| answer.status).collect();
    assert_eq!(statuses, [200; 40]);
    assert_eq!(service.paths(), [POINT, HOURLY]);
}

#[test]
fn forty_equal_places_that_fail_are_one_question_too() {
    let service = WeatherService::start(|_, _, _| Reply { delay: Duration::from_millis(200), ..Reply::text(400, "") });
    let answers: Vec<_> = post_at_once(instance(&service, "20 s"), ANN, &[PLACE; 40]).iter().collect();
    assert_eq!(answers.len(), 40);
    for answer in &answers {
        assert_problem(answer, 502, "forecast_failed");
    }
    assert_eq!(service.paths(), [POINT]);
}

#[test]
fn whoever_asked_first_and_leaves_strands_nobody_and_the_question_goes_on() {
    let (is_open, service) = closed_service(|_| true);
    let source = source(&service, hasty());
    let place = Location { latitude: PLACE.0, longitude: PLACE.1 };
    actix_web::rt::System::new().block_on(async {
        let mut first = source.hourly(place, AskerId(1));
        let mut second = source.hourly(place, AskerId(2));
        assert!((&mut first).now_or_never().is_none() && (&mut second).now_or_never().is_none());
        while service.asked().is_empty() {
            actix_web::rt::time::sleep(Duration::from_millis(5)).await;
        }
        drop(first);
        is_open.store(true, Ordering::SeqCst);
        assert_eq!(rows(second.await).len(), 48);
    });
    assert_eq!(service.paths(), [POINT, HOURLY]);
}

#[test]
fn bad_places_of_one_caller_stop_its_own_questions_and_nobody_elses() {
    for reply in [|| Reply::text(500, "no"), || Reply::text(400, "no"), || Reply::text(200, "no forecast")] {
        let service = WeatherService::start(move |asked, _, base| match asked.path.as_str() {
            POINT | HOURLY => sound(asked, base),
            _ => reply(),
        });
        let address = instance(&service, "4 s");
        for latitude in 0..5 {
            assert_problem(&post_as(address, ANN, &by_place((latitude.into(), 0.0))), 502, "forecast_failed");
        }
        let (before, refused) = (service.asked().len(), post_as(address, ANN, &by_place((5.0, 0.0))));
        assert_problem(&refused, 503, "forecast_unavailable");
        assert!((1..=30).contains(&refused.header("retry-after").parse::<u64>().unwrap()));
        assert_eq!(service.asked().len(), before, "who has asked about bad places alone goes on");
        assert_eq!(post_as(address, BEN, &by_place(PLACE)).status, 200);
    }
}

#[test]
fn a_service_that_fails_several_callers_at_several_places_is_left_alone_by_all() {
    let service = WeatherService::start(|_, _, _| Reply::text(500, "no"));
    let address = instance(&service, "4 s");
    for (caller, latitude) in [(ANN, 1.0), (ANN, 2.0), (BEN, 3.0), (BEN, 4.0), ("192.0.2.13", 5.0)] {
        assert_problem(&post_as(address, caller, &by_place((latitude, 0.0))), 502, "forecast_failed");
    }
    let before = service.asked().len();
    assert_problem(&post_as(address, "192.0.2.14", &by_place(PLACE)), 503, "forecast_unavailable");
    assert_eq!(service.asked().len(), before);
}

#[test]
fn one_caller_has_half_of_the_questions_at_once_and_others_are_answered_beside_it() {
    let (is_open, service) = closed_service(|path| ![POINT, HOURLY].contains(&path));
    let address = instance(&service, "20 s");
    let places: Vec<_> = (0..8).map(|latitude| (f64::from(latitude), 0.0)).collect();
    let answers = post_at_once(address, ANN, &places);
    for _ in 0..4 {
        let refused = answers.recv().unwrap();
        assert_problem(&refused, 503, "forecast_unavailable");
        assert_eq!(refused.header("retry-after"), "1");
    }
    service.wait_for(4);
    assert_eq!(post_as(address, BEN, &by_place(PLACE)).status, 200);
    assert_eq!(post_as(address, ANN, &by_place(PLACE)).status, 200, "what is known is no question");
    assert_eq!(service.asked().len(), 4 + 2);
    is_open.store(true, Ordering::SeqCst);
    let others: Vec<_> = answers.iter().collect();
    assert_eq!(others.len(), 4);
    for answer in &others {
        only_fault(answer, "forecast_not_covered");
    }
}
