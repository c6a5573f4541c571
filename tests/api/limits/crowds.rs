//! Many at once: connections, requests in work, batches in work.

use std::net::SocketAddr;
use std::time::Duration;

use reqwest::Method;
use serde_json::json;

use super::super::harness::{start, start_both, wait_until_in_work};
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
fn a_body_that_is_arriving_takes_no_place() {
    let (small, metrics) = start_both(&[("LOOPWRIGHT_IN_FLIGHT", "1"), ("LOOPWRIGHT_METRICS_LISTEN", "127.0.0.1:0")]);
    let mut slow: Vec<_> = (0..64).map(|_| Socket::open(small)).collect();
    slow.iter_mut().for_each(begin);
    wait_until_in_work(metrics.unwrap(), 64);
    assert_eq!(size(&mut Socket::open(small), "").status, 200);
    assert_eq!(finish(&mut slow[0]), 200);
}

#[test]
fn bodies_that_are_arriving_have_a_share_of_each_caller() {
    let small = start(&[("LOOPWRIGHT_ARRIVING_LIMIT", "1048576")]);
    let begin_batch = |socket: &mut Socket, bytes: usize| {
        socket.send(format!("POST {BATCH} HTTP/1.1\r\nhost: loops\r\n{JSON}content-length: 900000\r\n\r\n"));
        socket.send(vec![b' '; bytes]);
    };
    // A quarter of a mebibyte is one caller's share.
    let mut greedy = Socket::open(small);
    begin_batch(&mut greedy, 300_000);
    let refused = greedy.read(&Method::POST, BATCH);
    assert_eq!((refused.status, &refused.body["code"]), (503, &json!("overloaded")));
    assert!(refused.body["detail"].as_str().unwrap().contains("one caller"), "{}", refused.body);
    let mut held = Socket::open(small);
    begin_batch(&mut held, 200_000);
    assert_eq!(Socket::open_as([127, 0, 0, 2], small).post(BATCH, JSON, batch(1).as_bytes()).status, 200);
}

#[test]
fn a_tunnel_is_refused_at_once() {
    // Were each waited for, the test would end in an hour.
    let patient = start(&[("LOOPWRIGHT_DEADLINE", "60 s")]);
    let mut tunnels: Vec<_> = (0..64).map(|_| Socket::open(patient)).collect();
    for tunnel in &mut tunnels {
        tunnel.send("CONNECT tern-island.example:443 HTTP/1.1\r\nhost: tern-island.example:443\r\n\r\nhello");
    }
    for tunnel in &mut tunnels {
        let refused = tunnel.read(&Method::CONNECT, "/");
        assert_eq!((refused.status, &refused.body["code"]), (405, &json!("method_not_allowed")));
        assert!(refused.head.contains("allow: GET, HEAD, POST\r\n"), "{}", refused.head);
        assert!(tunnel.is_ended());
    }
}

#[test]
fn an_address_has_so_many_connections_and_others_have_theirs() {
    let small = start(&[("LOOPWRIGHT_CONNECTIONS_PER_ADDRESS", "3")]);
    let mut held: Vec<_> = (0..3).map(|_| Socket::open(small)).collect();
    assert!(held.iter_mut().all(|socket| size(socket, "").status == 200));
    assert_eq!(Socket::open(small).read_to_the_end(), "", "a fourth connection of an address is served");
    assert_eq!(size(&mut Socket::open_as([127, 0, 0, 2], small), "").status, 200);
    drop(held.pop());
    assert!((0..1000).any(|_| is_served(small)), "the place of a connection that ended stays taken");

    let trusting = start(&[("LOOPWRIGHT_CONNECTIONS_PER_ADDRESS", "3"), ("LOOPWRIGHT_TRUSTED_PROXIES", "127.0.0.1")]);
    let mut many: Vec<_> = (0..9).map(|_| Socket::open(trusting)).collect();
    assert!(many.iter_mut().all(|socket| size(socket, "").status == 200));
}

/// Whether a new connection is served, or ended at once.
fn is_served(address: SocketAddr) -> bool {
    let request = "GET /health/live HTTP/1.1\r\nhost: loops\r\nconnection: close\r\n\r\n";
    let mut stream = std::net::TcpStream::connect(address).unwrap();
    let mut answer = Vec::new();
    let asked = std::io::Write::write_all(&mut stream, request.as_bytes());
    asked.and_then(|()| std::io::Read::read_to_end(&mut stream, &mut answer)).is_ok() && !answer.is_empty()
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
fn a_batch_whose_body_is_arriving_takes_no_place() {
    let (address, metrics) = one_batch();
    let (mut first, body) = (Socket::open(address), batch(2));
    let (begun, rest) = body.split_at(40);
    first.send(format!("POST {BATCH} HTTP/1.1\r\nhost: loops\r\n{JSON}content-length: {}\r\n\r\n{begun}", body.len()));
    wait_until_in_work(metrics, 1);
    let mut second = Socket::open(address);
    assert_eq!(second.post(BATCH, JSON, body.as_bytes()).status, 200);
    first.send(rest);
    assert_eq!(first.read(&Method::POST, BATCH).status, 200);
}

#[test]
fn a_batch_has_its_place_until_its_answer_is_read() {
    let (address, metrics) = one_batch();
    let (mut first, body) = (Socket::open_narrow(address), heavy_batch());
    first.send(format!("POST {BATCH} HTTP/1.1\r\nhost: loops\r\n{JSON}content-length: {}\r\n\r\n{body}", body.len()));
    first.wait_for_the_first_byte();
    wait_until_in_work(metrics, 0);
    let mut second = Socket::open(address);
    let refused = second.post(BATCH, JSON, batch(1).as_bytes());
    assert_eq!((refused.status, &refused.body["code"]), (503, &json!("overloaded")));
    assert!(refused.head.contains("retry-after: 1\r\n"), "{}", refused.head);
    assert_eq!(size(&mut second, "").status, 200, "a single request is refused for the sake of batches");
    assert!(first.read_slowly(Duration::ZERO).1, "the answer is cut");
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
