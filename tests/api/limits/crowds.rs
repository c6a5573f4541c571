//! Many at once: connections, requests in work, batches in work.

use std::sync::Mutex;
use std::sync::mpsc::channel;

use reqwest::Method;
use serde_json::json;

use super::super::harness::{send, start, start_both, wait_until_in_work};
use super::super::socket::Socket;
use super::super::weather_service::{PLACE, WeatherService, sound};
use super::{GATE, JSON, batch, size};

/// Begins a request and keeps its last byte back.
fn begin(socket: &mut Socket) {
    let (first, _) = GATE.split_at(GATE.len() - 1);
    let length = GATE.len();
    socket
        .send(format!("POST /v1/loop-sizing HTTP/1.1\r\nhost: loops\r\n{JSON}content-length: {length}\r\n\r\n{first}"));
}

fn finish(socket: &mut Socket) -> u16 {
    socket.send("}");
    socket.read(&Method::POST, "/v1/loop-sizing").status
}

#[test]
fn a_full_instance_says_so_and_stays_healthy() {
    let (small, metrics) = start_both(&[("LOOPWRIGHT_IN_FLIGHT", "2"), ("LOOPWRIGHT_METRICS_LISTEN", "127.0.0.1:0")]);
    let mut held = [Socket::open(small), Socket::open(small)];
    held.iter_mut().for_each(begin);
    // Both are in work once their heads were read, which takes a moment; the question is the third.
    wait_until_in_work(metrics.unwrap(), 2);
    let mut late = Socket::open(small);
    let refused = size(&mut late, "");
    assert_eq!((refused.status, &refused.body["code"]), (503, &json!("overloaded")));
    assert!(refused.head.contains("retry-after: 1\r\n"), "{}", refused.head);
    assert_eq!(send(small, &Method::GET, "/v1/reference/roles", &[]).status, 503);
    for path in ["/health/live", "/health/ready"] {
        assert_eq!(send(small, &Method::GET, path, &[]).status, 200, "{path}");
    }
    assert_eq!(held.each_mut().map(finish), [200, 200]);
    assert_eq!(size(&mut late, "").status, 200, "the refused caller may try again on its connection");
}

#[test]
fn a_caller_that_hangs_up_gives_its_place_back() {
    let small = start(&[("LOOPWRIGHT_IN_FLIGHT", "1")]);
    for _ in 0..5 {
        let mut leaving = Socket::open(small);
        begin(&mut leaving);
        drop(leaving);
    }
    let mut socket = Socket::open(small);
    assert!((0..1000).any(|_| size(&mut socket, "").status == 200), "the place of a caller that left stays taken");
}

#[test]
fn as_many_batches_as_are_taken_are_in_work() {
    let (asked, is_asked) = channel();
    let (release, released) = channel::<()>();
    let released = Mutex::new(released);
    let service = WeatherService::start(move |question, _, base| {
        asked.send(()).unwrap();
        // Ends when the test lets go, or with it.
        let _ = released.lock().unwrap().recv();
        sound(question, base)
    });
    let address = start(&[
        ("LOOPWRIGHT_BATCHES_IN_FLIGHT", "1"),
        ("LOOPWRIGHT_FORECAST_URL", &service.base()),
        ("LOOPWRIGHT_FORECAST_USER_AGENT", "yard@tern-island.example"),
        ("LOOPWRIGHT_FORECAST_TIMEOUT", "50 s"),
    ]);
    let mut plans: serde_json::Value = serde_json::from_str(&batch(1)).unwrap();
    plans["weather"] = json!({ "location": { "latitude": PLACE.0, "longitude": PLACE.1 } });
    let (path, body) = ("/v1/installation-plan/batch", plans.to_string());
    let mut first = Socket::open(address);
    first.send(format!("POST {path} HTTP/1.1\r\nhost: loops\r\n{JSON}content-length: {}\r\n\r\n{body}", body.len()));
    is_asked.recv().unwrap();

    let mut second = Socket::open(address);
    let refused = second.post(path, JSON, batch(1).as_bytes());
    assert_eq!((refused.status, &refused.body["code"]), (503, &json!("overloaded")));
    assert!(refused.head.contains("retry-after: 1\r\n"), "{}", refused.head);
    assert_eq!(size(&mut second, "").status, 200, "a single request is refused for the sake of batches");
    drop(release);
    first.read(&Method::POST, path);
    assert_eq!(second.post(path, JSON, batch(1).as_bytes()).status, 200);
}

#[test]
fn connections_past_the_limit_wait_their_turn() {
    let small =
        start(&[("LOOPWRIGHT_CONNECTIONS", "2"), ("LOOPWRIGHT_WORKERS", "1"), ("LOOPWRIGHT_IDLE_TIMEOUT", "60 s")]);
    let mut held: Vec<_> = (0..2).map(|_| Socket::open(small)).collect();
    for socket in &mut held {
        assert_eq!(size(socket, "").status, 200);
    }
    let mut waiting = Socket::open(small);
    waiting.send("GET /health/live HTTP/1.1\r\nhost: loops\r\n\r\n");
    assert!(waiting.is_silent(), "a third connection is served beside two");
    drop(held);
    assert_eq!(waiting.read(&Method::GET, "/health/live").status, 200);
}
