//! Many at once: connections, requests in work, batches in work.

use std::net::SocketAddr;
use std::time::Duration;

use reqwest::Method;
use serde_json::json;

use super::super::harness::{send, start, start_both, wait_until_in_work};
use super::super::keys::{File, hash};
use super::super::socket::Socket;
use super::{GATE, JSON, batch, heavy_batch, size};

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

/// An instance that takes one batch at once, and the address of its counters.
fn one_batch() -> (SocketAddr, SocketAddr) {
    let settings = [("LOOPWRIGHT_BATCHES_IN_FLIGHT", "1"), ("LOOPWRIGHT_METRICS_LISTEN", "127.0.0.1:0")];
    let (address, metrics) = start_both(&settings);
    (address, metrics.unwrap())
}

const BATCH: &str = "/v1/installation-plan/batch";

/// The place of a batch is given back behind the last byte of its answer, which a caller may have read a little before.
fn assert_place_comes_free(caller: &mut Socket) {
    assert!((0..1000).any(|_| caller.post(BATCH, JSON, batch(1).as_bytes()).status == 200), "the place stays taken");
}

#[test]
fn a_batch_has_its_place_before_its_body_has_arrived() {
    let (address, metrics) = one_batch();
    let (mut first, body) = (Socket::open(address), batch(2));
    let (begun, rest) = body.split_at(40);
    first.send(format!("POST {BATCH} HTTP/1.1\r\nhost: loops\r\n{JSON}content-length: {}\r\n\r\n{begun}", body.len()));
    wait_until_in_work(metrics, 1);
    let mut second = Socket::open(address);
    let refused = second.post(BATCH, JSON, body.as_bytes());
    assert_eq!((refused.status, &refused.body["code"]), (503, &json!("overloaded")));
    assert!(refused.head.contains("retry-after: 1\r\n"), "{}", refused.head);
    assert_eq!(size(&mut second, "").status, 200, "a single request is refused for the sake of batches");
    first.send(rest);
    assert_eq!(first.read(&Method::POST, BATCH).status, 200);
    assert_place_comes_free(&mut second);
}

#[test]
fn a_batch_has_its_place_until_its_answer_is_read() {
    let (address, metrics) = one_batch();
    let (mut first, body) = (Socket::open_narrow(address), heavy_batch());
    first.send(format!("POST {BATCH} HTTP/1.1\r\nhost: loops\r\n{JSON}content-length: {}\r\n\r\n{body}", body.len()));
    first.wait_for_the_first_byte();
    wait_until_in_work(metrics, 0);
    let mut second = Socket::open(address);
    assert_eq!(second.post(BATCH, JSON, batch(1).as_bytes()).status, 503);
    let (length, read) = first.read_slowly(Duration::ZERO);
    assert_eq!(read, length);
    assert_place_comes_free(&mut second);
}

#[test]
fn strangers_take_no_place_of_a_client() {
    let file = File::new("places", &json!([{ "name": "shop", "sha256": [hash("secret")] }]));
    let (address, metrics) =
        start_both(&[("LOOPWRIGHT_IN_FLIGHT", "1"), ("LOOPWRIGHT_METRICS_LISTEN", "127.0.0.1:0"), file.setting()]);
    let mut strangers: Vec<_> = (0..8).map(|_| Socket::open(address)).collect();
    for (stranger, path) in
        strangers.iter_mut().zip(["/problems/x", "/v1/loop-sizing", "/docs/", "/openapi.json"].iter().cycle())
    {
        stranger.send(format!("POST {path} HTTP/1.1\r\nhost: loops\r\ncontent-length: 9\r\n\r\n"));
    }
    wait_until_in_work(metrics.unwrap(), 8);
    assert_eq!(size(&mut Socket::open(address), "authorization: Bearer secret\r\n").status, 200);
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
