//! The log: nobody waits for who reads it, and nobody fills it with what is no HTTP.

use reqwest::Method;
use serde_json::Value;

use super::instance::Instance;
use super::socket::Socket;

/// Asks so often that the lines fill the pipe, what is being written and what waits: some 2.1 MB.
fn fill_the_log(instance: &Instance) {
    let id = "x".repeat(64);
    let mut socket = Socket::open(instance.address);
    for _ in 0..100 {
        // A hundred at a time, for speed.
        socket.send(format!("GET /health/live HTTP/1.1\r\nhost: loops\r\nx-request-id: {id}\r\n\r\n").repeat(120));
        for _ in 0..120 {
            assert_eq!(socket.read(&Method::GET, "/health/live").status, 200);
        }
    }
}

const DROPPED: &str = "loopwright_log_lines_dropped_total";

#[test]
fn an_instance_whose_log_nobody_reads_answers_and_stops_and_says_what_it_dropped() {
    let mut instance = Instance::start(&[("LOOPWRIGHT_DRAIN_DELAY", "0 s")]);
    assert_eq!(instance.counter(DROPPED), 0);
    fill_the_log(&instance);
    let dropped = instance.counter(DROPPED);
    assert!(dropped > 1000, "{dropped} of 12000 lines were dropped");
    // Once the log is read again, it says so.
    let said = instance.wait_for("lines of the log were dropped");
    // The line of the question for the counter may have been dropped after it was answered.
    let told = said["dropped"].as_u64().unwrap();
    assert!(said["level"] == "WARN" && (dropped..=dropped + 1).contains(&told), "{said}, counted {dropped}");
    fill_the_log(&instance);
    assert!(instance.counter(DROPPED) > dropped);
    instance.terminate();
    assert!(instance.ends_unread());
}

#[test]
fn a_log_for_people_stops_nobody_either() {
    let human = [("LOOPWRIGHT_LOG_FORMAT", "human"), ("LOOPWRIGHT_DRAIN_DELAY", "0 s")];
    let instance = Instance::start(&human);
    fill_the_log(&instance);
    assert!(instance.counter(DROPPED) > 0);
    instance.terminate();
    assert!(instance.ends_unread());
}

/// Sends what is no HTTP so often, and gives the rest of the log.
fn send_malformed(instance: Instance, times: usize) -> (Vec<Value>, u64) {
    for turn in 0..times {
        let mut socket = Socket::open(instance.address);
        match turn % 3 {
            0 => socket.send("\u{1}\u{2} nonsense\r\n\r\n"),
            1 => socket.send("GET / HTTP/1.1\r\nhost: loops\r\nbro ken\u{7}: yes\r\n\r\n"),
            _ => socket.send("POST /v1/loop-sizing HTTP/1.1\r\ntransfer-encoding: chunked\r\n\r\nnot a size\r\n"),
        }
        socket.read_to_the_end();
    }
    let counted = instance.counter("loopwright_http_requests_malformed_total");
    instance.terminate();
    (instance.end().lines().map(|line| serde_json::from_str(line).unwrap()).collect(), counted)
}

#[test]
fn what_is_no_http_is_counted_and_writes_no_line() {
    let of_reader = |events: &[Value]| -> Vec<String> {
        let lines = events.iter().map(Value::to_string);
        lines.filter(|line| line.contains("HTTP") || line.contains("stream error") || line.contains("ERROR")).collect()
    };
    let (events, counted) = send_malformed(Instance::start(&[]), 300);
    assert_eq!((counted, of_reader(&events)), (300, vec![]));
    let (events, counted) = send_malformed(Instance::start(&[("LOOPWRIGHT_LOG", "loopwright=debug")]), 30);
    let told: Vec<_> = events.iter().filter(|event| event["message"] == "a request is no HTTP").collect();
    assert_eq!((counted, told.len()), (30, 30));
    assert!(told.iter().all(|event| event["level"] == "DEBUG" && event["reason"].is_string()), "{told:?}");
    assert_eq!(of_reader(&events).len(), 30);
    // Also where the log is off.
    assert_eq!(send_malformed_unseen(&Instance::start(&[("LOOPWRIGHT_LOG", "loopwright=info,actix_http=off")])), 1);
}

fn send_malformed_unseen(instance: &Instance) -> u64 {
    let mut socket = Socket::open(instance.address);
    socket.send("nonsense\r\n\r\n");
    socket.read_to_the_end();
    instance.counter("loopwright_http_requests_malformed_total")
}
