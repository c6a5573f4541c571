//! Answers that nobody reads: what they hold of the memory is bounded, and the caller who holds most pays. Memory is the figure of the
//! operating system, with a wide margin.

use std::net::SocketAddr;
use std::time::Duration;

use reqwest::Method;
use serde_json::json;

use super::super::harness::{metric, start_both};
use super::super::instance::Instance;
use super::super::socket::Socket;
use super::JSON;

/// Asks so often for the description, each time on a connection of its own, and reads nothing.
fn ask_for_descriptions(address: SocketAddr, count: usize) -> Vec<Socket> {
    let ask = |_| {
        let mut socket = Socket::open_narrow(address);
        socket.send("GET /openapi.json HTTP/1.1\r\nhost: loops\r\n\r\n");
        socket
    };
    (0..count).map(ask).collect()
}

#[test]
fn over_its_share_a_caller_loses_its_oldest_answer_and_no_other_caller_does() {
    let settings = [("LOOPWRIGHT_UNWRITTEN_LIMIT", "1048576"), ("LOOPWRIGHT_METRICS_LISTEN", "127.0.0.1:0")];
    let (small, metrics) = start_both(&settings);
    let mut other = Socket::open_as([127, 0, 0, 2], small);
    other.send("GET /openapi.json HTTP/1.1\r\nhost: loops\r\n\r\n");
    other.wait_for_the_first_byte();
    let mut unread = ask_for_descriptions(small, 12);
    unread.iter_mut().for_each(Socket::wait_for_the_first_byte);
    // Until an answer counts as stalled.
    std::thread::sleep(Duration::from_millis(1500));
    let mut next = ask_for_descriptions(small, 1).remove(0);
    next.wait_for_the_first_byte();
    let cut = metric(metrics.unwrap(), "loopwright_answers_cut_total");
    assert!((1..=12).contains(&cut), "of 12 answers that nobody reads {cut} were cut");
    assert!(unread[0].is_given_up(), "the oldest goes on");
    assert_eq!(next.read(&Method::GET, "/openapi.json").status, 200);
    assert_eq!(other.read(&Method::GET, "/openapi.json").status, 200);
}

#[test]
fn descriptions_that_nobody_reads_do_not_fill_the_memory() {
    let instance = Instance::start(&[("LOOPWRIGHT_CONNECTIONS_PER_ADDRESS", "1000"), ("LOOPWRIGHT_RATE", "0")]);
    // One that is read first: what making the description takes is there in any case.
    assert_eq!(ask_for_descriptions(instance.address, 1).remove(0).read(&Method::GET, "/openapi.json").status, 200);
    let before = instance.most_memory();
    let mut unread = ask_for_descriptions(instance.address, 400);
    unread[399].wait_for_the_first_byte();
    let kilobytes = instance.most_memory() - before;
    // Some 50 kB each; with a copy of the description each it would be 1 GB.
    assert!(kilobytes < 64 * 1024, "400 answers that nobody reads took {kilobytes} kB");
}

#[test]
fn batches_that_nobody_reads_do_not_fill_the_memory() {
    let hour = |index: usize| {
        let (day, hour) = (1 + index / 24, index % 24);
        json!({ "time": format!("2026-11-{day:02}T{hour:02}:00:00-05:00"), "air": "52 °F", "relative_humidity_percent": 60 })
    };
    let request = json!({
        "opening": { "width": "24 ft", "barrier": "slide_gate" },
        "vehicles": ["passenger_car", "pickup", "high_bed_truck"],
        "sealant": { "kind": "two_part_reactive" }, "start": "2026-11-03T09:00:00-05:00", "include": ["drawings"],
    });
    let items: Vec<_> = (0..200).map(|index| json!({ "id": index.to_string(), "request": request })).collect();
    let hours: Vec<_> = (0..336).map(hour).collect();
    let body = json!({ "items": items, "weather": { "conditions": hours } }).to_string();
    let path = "/v1/installation-plan/batch";
    let instance = Instance::start(&[("LOOPWRIGHT_BATCHES_IN_FLIGHT", "10"), ("LOOPWRIGHT_RATE", "0")]);
    let begin = || {
        let mut socket = Socket::open_narrow(instance.address);
        socket
            .send(format!("POST {path} HTTP/1.1\r\nhost: loops\r\n{JSON}content-length: {}\r\n\r\n{body}", body.len()));
        socket
    };
    let mut unread: Vec<_> = (0..4).map(|_| begin()).collect();
    unread.iter_mut().for_each(Socket::wait_for_the_first_byte);
    let whole = begin().read(&Method::POST, path);
    assert_eq!((whole.status, &whole.body["succeeded"]), (200, &json!(200)));
    let kilobytes = instance.most_memory();
    assert!(kilobytes < 192 * 1024, "four batches that nobody reads took {kilobytes} kB");
}
