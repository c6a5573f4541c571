//! With the feature `otlp`: one span per request, in the caller's trace, without what the caller sent. `.ci/run` builds it so.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpListener;
use std::sync::mpsc::{Receiver, channel};

use reqwest::Method;

use super::instance::Instance;
use super::socket::Socket;

/// A collector on loopback: gives the path and the bytes of each delivery.
fn collector() -> (String, Receiver<(String, Vec<u8>)>) {
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let url = format!("http://{}", listener.local_addr().unwrap());
    let (send, received) = channel();
    std::thread::spawn(move || {
        for stream in listener.incoming() {
            let mut reader = BufReader::new(stream.unwrap());
            let mut head = String::new();
            while !head.ends_with("\r\n\r\n") && reader.read_line(&mut head).unwrap() > 0 {}
            let length =
                head.to_lowercase().split("content-length: ").nth(1).unwrap().split("\r\n").next().unwrap().parse();
            let mut body = vec![0; length.unwrap()];
            reader.read_exact(&mut body).unwrap();
            let path = head.split(' ').nth(1).unwrap().to_owned();
            let _ = send.send((path, body));
            reader.get_mut().write_all(b"HTTP/1.1 200 OK\r\nconnection: close\r\ncontent-length: 0\r\n\r\n").unwrap();
        }
    });
    (url, received)
}

fn holds(bytes: &[u8], part: &[u8]) -> bool {
    bytes.windows(part.len()).any(|window| window == part)
}

#[test]
fn a_request_is_a_span_of_its_callers_trace() {
    let (url, received) = collector();
    let instance = Instance::start(&[("LOOPWRIGHT_OTLP_URL", &url)]);
    let trace: [u8; 16] = std::array::from_fn(|index| 0x10 + index as u8);
    let hex: String = trace.iter().fold(String::new(), |text, byte| format!("{text}{byte:02x}"));
    let headers = format!(
        "content-type: application/json\r\ntraceparent: 00-{hex}-00f067aa0ba902b7-01\r\n\
        x-request-id: job-17\r\nauthorization: Bearer secret-key\r\nconnection: close\r\n"
    );
    let body = "{\"opening\":{\"width\":\"7,200 mm\",\"barrier\":\"slide_gate\"}}";
    let mut socket = Socket::open(instance.address);
    let (path, length) = ("/v1/loop-sizing", body.len());
    socket.send(format!(
        "POST {path}?token=secret HTTP/1.1\r\nhost: loops\r\n{headers}content-length: {length}\r\n\r\n{body}"
    ));
    assert_eq!(socket.read(&Method::POST, path).status, 422);
    instance.terminate();
    let log = instance.end();
    let (path, spans) = received.recv().unwrap();
    assert_eq!(path, "/v1/traces");
    for part in [&trace[..], b"POST /v1/loop-sizing", b"http.response.status_code", b"job-17", b"loopwright"] {
        assert!(holds(&spans, part), "{part:?} is not in {:?}", String::from_utf8_lossy(&spans));
    }
    for secret in ["secret", "7,200 mm", "127.0.0.1"] {
        assert!(!holds(&spans, secret.as_bytes()), "{secret} is sent: {:?}", String::from_utf8_lossy(&spans));
    }
    assert_eq!(log.lines().filter(|line| line.contains("\"request\"")).count(), 1, "{log}");
}

#[test]
fn a_collector_that_is_gone_hurts_nobody() {
    let instance = Instance::start(&[("LOOPWRIGHT_OTLP_URL", "http://127.0.0.1:9")]);
    let headers = "content-type: application/json\r\nconnection: close\r\n";
    assert_eq!(Socket::open(instance.address).post("/v1/loop-sizing", headers, b"{}").status, 422);
    instance.terminate();
    instance.end();
}
