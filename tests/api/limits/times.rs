//! Slow heads, silent connections, answers that nobody reads. Slow bodies are held in `body.rs`.

use super::super::harness::{shared, start};
use super::super::socket::Socket;
use super::{JSON, batch, heavy_batch, size};

#[test]
fn a_head_that_does_not_arrive_in_time_ends_its_connection() {
    let hasty = start(&[("LOOPWRIGHT_HEADER_DEADLINE", "1 s")]);
    for begun in ["POST /v1/loop-sizing HTTP/1.1\r\nhost: lo", "G", "GET /health/live HTTP/1.1\r\n"] {
        let mut socket = Socket::open(hasty);
        socket.send(begun);
        let answer = socket.read_to_the_end();
        assert!(answer.starts_with("HTTP/1.1 408 "), "{begun:?} is answered {answer:?}");
    }
    // One that says nothing at all is in the same case.
    Socket::open(hasty).read_to_the_end();
    assert_eq!(size(&mut Socket::open(hasty), "").status, 200);
}

#[test]
fn the_head_of_a_later_request_is_timed_too() {
    let hasty = start(&[("LOOPWRIGHT_HEADER_DEADLINE", "1 s"), ("LOOPWRIGHT_IDLE_TIMEOUT", "1 s")]);
    let mut socket = Socket::open(hasty);
    assert_eq!(size(&mut socket, "").status, 200);
    socket.send("POST /v1/loop-sizing HTTP/1.1\r\nhost: lo");
    assert_eq!(socket.read_to_the_end(), "", "a half-sent head after a whole request");
}

#[test]
fn a_caller_that_reads_slowly_gets_its_whole_answer() {
    let hasty = start(&[("LOOPWRIGHT_HEADER_DEADLINE", "1 s"), ("LOOPWRIGHT_IDLE_TIMEOUT", "1 s")]);
    let (path, body) = ("/v1/installation-plan/batch", batch(200));
    let mut socket = Socket::open_narrow(hasty);
    socket.send(format!("POST {path} HTTP/1.1\r\nhost: loops\r\n{JSON}content-length: {}\r\n\r\n{body}", body.len()));
    let (length, is_whole) = socket.read_slowly(std::time::Duration::from_millis(40));
    assert!(is_whole, "the answer ends after {length} bytes");
    assert!(length > 5_000_000, "an answer of {length} bytes fits into the buffers of both ends");
}

#[test]
fn a_connection_without_a_next_request_is_ended() {
    let hasty = start(&[("LOOPWRIGHT_IDLE_TIMEOUT", "1 s")]);
    let mut socket = Socket::open_narrow(hasty);
    assert_eq!(size(&mut socket, "").status, 200);
    assert!(socket.is_ended(), "an idle connection is kept");
    // The usual time is longer than any balancer keeps its own.
    let mut patient = Socket::open(shared());
    for _ in 0..2 {
        assert_eq!(size(&mut patient, "").status, 200);
    }
}

#[test]
fn a_caller_that_reads_nothing_loses_its_connection() {
    let hasty = start(&[("LOOPWRIGHT_IDLE_TIMEOUT", "1 s")]);
    let mut socket = Socket::open_narrow(hasty);
    let body = batch(150);
    for _ in 0..4 {
        let path = "/v1/installation-plan/batch";
        socket
            .send(format!("POST {path} HTTP/1.1\r\nhost: loops\r\n{JSON}content-length: {}\r\n\r\n{body}", body.len()));
    }
    // Far more than both ends buffer is on its way, and none of it is read until the other end has given up.
    assert!(socket.is_given_up(), "the instance still waits for a caller that reads nothing");
}

#[test]
fn a_caller_that_reads_for_ever_loses_its_connection() {
    let hasty = start(&[("LOOPWRIGHT_ANSWER_DEADLINE", "1 s")]);
    let (path, body) = ("/v1/installation-plan/batch", heavy_batch());
    let mut socket = Socket::open_narrow(hasty);
    socket.send(format!("POST {path} HTTP/1.1\r\nhost: loops\r\n{JSON}content-length: {}\r\n\r\n{body}", body.len()));
    let (length, is_whole) = socket.read_slowly(std::time::Duration::from_millis(100));
    assert!(!is_whole, "an answer of {length} bytes may be read for ever");
}
