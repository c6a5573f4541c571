//! Bodies that are no JSON object in UTF-8 of decent size, sent in time: each is refused by its own problem.

use reqwest::Method;
use reqwest::blocking::Body;
use serde_json::json;

use super::harness::{Answer, calculate, checked, client, post, shared, start};
use super::requests::{all, loop_characteristics};
use super::socket::Socket;

const PATHS: [&str; 5] = [
    "/v1/loop-characteristics",
    "/v1/loop-sizing",
    "/v1/vehicle-response",
    "/v1/detector-compatibility",
    "/v1/cure-guidance",
];

/// The largest body that a path takes, bytes.
fn limit(path: &str) -> usize {
    if path == "/v1/cure-guidance" { 4 * 65_536 } else { 65_536 }
}

/// Posts bytes with headers of the test's choice.
fn post_as(path: &str, headers: &[(&str, &str)], body: impl Into<Body>) -> Answer {
    let mut request = client().post(format!("http://{}{path}", shared())).body(body);
    for (name, value) in headers {
        request = request.header(*name, *value);
    }
    checked(&Method::POST, path, request.send().unwrap())
}

fn nested(levels: usize) -> String {
    format!("{{\"loop\":{}{}}}", "[".repeat(levels), "]".repeat(levels))
}

#[test]
fn what_is_not_one_json_text_is_malformed() {
    let sound = loop_characteristics().to_string();
    let bodies: Vec<Vec<u8>> = vec![
        b"".to_vec(),
        b" \r\n\t ".to_vec(),
        b"[".to_vec(),
        b"{".to_vec(),
        b"loop".to_vec(),
        b"{'loop': 1}".to_vec(),
        b"{\"loop\": 1,}".to_vec(),
        b"{\"loop\": NaN}".to_vec(),
        b"{\"loop\": 01}".to_vec(),
        b"{\"loop\": 1e400}".to_vec(),
        b"{\"loop\": \"\\ud800\"}".to_vec(),
        b"{\"loop\": \"a\nb\"}".to_vec(),
        b"{\"loop\": \"\xff\"}".to_vec(),
        b"{\"\xc3\": 1}".to_vec(),
        b"{\"nonsense\": \"\xff\"}".to_vec(),
        b"<loop/>".to_vec(),
        b"loop=1&turns=3".to_vec(),
        format!("\u{feff}{sound}").into_bytes(),
        format!("{sound}x").into_bytes(),
        format!("{sound}{sound}").into_bytes(),
        sound.as_bytes()[..sound.len() - 1].to_vec(),
        sound.encode_utf16().flat_map(u16::to_le_bytes).collect(),
        nested(200).into_bytes(),
        vec![b'['; 60_000],
        vec![0; 100],
    ];
    for path in PATHS {
        for body in &bodies {
            let answer = post(path, body.clone());
            let shown = String::from_utf8_lossy(&body[..body.len().min(60)]);
            assert_eq!(answer.status, 400, "{path} {shown}: {:#}", answer.body);
            assert_eq!(answer.body["code"], "malformed_json", "{shown}");
            assert_eq!(answer.body["errors"], json!([]), "{shown}");
            assert!(answer.body["detail"].as_str().unwrap().ends_with("Send one JSON object."), "{}", answer.body);
        }
    }
}

#[test]
fn a_syntax_error_counts_before_an_unknown_field_or_a_wrong_value() {
    for path in PATHS {
        for body in ["{\"nonsense\": 1, ", "{\"nonsense\": 1} x", "{\"loop\": [], \"opening\": [], }", "[1, 2"] {
            assert_eq!(post(path, body).status, 400, "{path} {body}");
        }
    }
}

#[test]
fn sound_json_in_odd_dress_is_taken() {
    for (calculation, request) in all() {
        let plain = calculate(calculation, &request);
        for text in
            [format!("  \n\t{request}\r\n "), format!("{request:#}"), request.to_string().replace("ft\"", "\\u0066t\"")]
        {
            let answer = post(&format!("/v1/{calculation}"), text);
            assert_eq!(answer.status, 200);
            assert_eq!(answer.body, plain.body);
        }
    }
}

#[test]
fn depth_is_bounded_and_shallow_nonsense_is_only_nonsense() {
    assert_eq!(post(PATHS[0], nested(31)).status, 422);
    assert_eq!(post(PATHS[0], nested(32)).status, 400);
}

#[test]
fn only_plain_json_in_utf_8_is_a_supported_media_type() {
    let rows: [(&[(&str, &str)], bool); 16] = [
        (&[("content-type", "application/json")], true),
        (&[("content-type", "Application/JSON")], true),
        (&[("content-type", "application/json; charset=utf-8")], true),
        (&[("content-type", "application/json;charset=\"UTF-8\"")], true),
        (&[("content-type", "application/json"), ("content-encoding", "identity")], true),
        (&[("content-type", "application/json"), ("accept", "text/html")], true),
        (&[], false),
        (&[("content-type", "")], false),
        (&[("content-type", "text/plain")], false),
        (&[("content-type", "text/json")], false),
        (&[("content-type", "application/jsonp")], false),
        (&[("content-type", "application/x-www-form-urlencoded")], false),
        (&[("content-type", "application/json; charset=latin1")], false),
        (&[("content-type", "application/json; charset=utf-16")], false),
        (&[("content-type", "application/json"), ("content-encoding", "gzip")], false),
        (&[("content-type", "multipart/form-data; boundary=x")], false),
    ];
    for (calculation, request) in all() {
        for (headers, is_supported) in rows {
            let answer = post_as(&format!("/v1/{calculation}"), headers, request.to_string());
            assert_eq!(answer.status, if is_supported { 200 } else { 415 }, "{headers:?}: {:#}", answer.body);
            if !is_supported {
                assert_eq!(answer.body["code"], "unsupported_media_type");
            }
        }
    }
}

#[test]
fn a_body_of_just_the_limit_is_taken_and_one_byte_more_is_not() {
    for (calculation, request) in all() {
        let path = format!("/v1/{calculation}");
        let padded = |length: usize| {
            let mut text = request.to_string();
            text.push_str(&" ".repeat(length - text.len()));
            text
        };
        // With its length announced, and in chunks of unknown number.
        let chunked = |text: String| Body::new(std::io::Cursor::new(text.into_bytes()));
        let limit = limit(&path);
        assert_eq!(post(&path, padded(limit)).status, 200);
        assert_eq!(post(&path, chunked(padded(limit))).status, 200);
        for length in [limit + 1, limit + 1024, 300_000] {
            for answer in [post(&path, padded(length)), post(&path, chunked(padded(length)))] {
                assert_eq!(answer.status, 413, "{length}");
                assert_eq!(answer.body["code"], "body_too_large");
                assert!(
                    answer.body["detail"].as_str().unwrap().contains(&format!("{limit} bytes")),
                    "{}",
                    answer.body["detail"]
                );
            }
        }
    }
}

#[test]
fn the_limit_is_a_setting() {
    let small = start(&[("LOOPWRIGHT_BODY_LIMIT", "100")]);
    for (length, status) in [(100, 400), (101, 413)] {
        let reply = Socket::open(small).post(PATHS[0], "content-type: application/json\r\n", &vec![b'x'; length]);
        assert_eq!(reply.status, status, "{length}");
    }
}

#[test]
fn a_body_that_is_not_sent_in_time_is_a_timeout() {
    let hasty = start(&[("LOOPWRIGHT_DEADLINE", "0.2 s")]);
    for (path, framing, part) in [
        (PATHS[0], "content-length: 100", "{\"loop\""),
        (PATHS[1], "content-length: 100", ""),
        (PATHS[1], "transfer-encoding: chunked", "5\r\n{\"ope"),
    ] {
        let mut socket = Socket::open(hasty);
        socket.send(format!(
            "POST {path} HTTP/1.1\r\nhost: loops\r\ncontent-type: application/json\r\n{framing}\r\n\r\n"
        ));
        socket.send(part);
        let reply = socket.read(&Method::POST, path);
        assert_eq!(reply.status, 408, "{framing}: {}", reply.body);
        assert_eq!(reply.body["code"], "request_timeout");
        assert!(socket.is_ended(), "a half-read connection is kept");
    }
}

#[test]
fn a_body_without_end_is_refused_at_the_limit_and_ends_its_connection() {
    for path in PATHS {
        let mut socket = Socket::open(shared());
        socket.send(format!(
            "POST {path} HTTP/1.1\r\nhost: loops\r\ncontent-type: application/json\r\ntransfer-encoding: chunked\r\n\r\n"
        ));
        let chunk = format!("1000\r\n{}\r\n", " ".repeat(0x1000));
        socket.send(chunk.repeat(limit(path) / 0x1000 + 1));
        assert_eq!(socket.read(&Method::POST, path).status, 413);
        assert!(socket.is_ended(), "a half-read connection is kept");
    }
}

#[test]
fn a_connection_lives_on_after_a_refused_body() {
    for path in PATHS {
        let mut socket = Socket::open(shared());
        let json = "content-type: application/json\r\n";
        for (headers, body, status) in [
            (json, "{}", 422),
            ("content-type: text/plain\r\n", "{}", 415),
            ("content-type: application/json\r\ncontent-encoding: gzip\r\n", "{}", 415),
            ("", "", 415),
            (json, "{", 400),
            (json, "", 400),
            (json, "[]", 422),
        ] {
            let reply = socket.post(path, headers, body.as_bytes());
            assert_eq!(reply.status, status, "{body}: {}", reply.head);
        }
        let (_, request) = all().into_iter().find(|(name, _)| path.ends_with(name)).unwrap();
        assert_eq!(socket.post(path, json, request.to_string().as_bytes()).status, 200);
    }
}

#[test]
fn a_caller_that_leaves_in_the_middle_disturbs_nobody() {
    for _ in 0..10 {
        let mut socket = Socket::open(shared());
        socket.send("POST /v1/loop-sizing HTTP/1.1\r\nhost: loops\r\ncontent-length: 1000\r\n\r\n{\"opening\"");
    }
    for (calculation, request) in all() {
        assert_eq!(calculate(calculation, &request).status, 200);
    }
}

#[test]
fn a_header_about_the_body_that_stands_twice_is_refused() {
    let sound = loop_characteristics().to_string();
    let json = ("content-type", "application/json");
    for (name, headers) in [
        ("Content-Type", vec![json, json]),
        ("Content-Type", vec![json, ("content-type", "text/plain")]),
        ("Content-Encoding", vec![json, ("content-encoding", "identity"), ("content-encoding", "identity")]),
    ] {
        let answer = post_as("/v1/loop-characteristics", &headers, sound.clone());
        assert_eq!((answer.status, &answer.body["code"]), (415, &json!("unsupported_media_type")), "{headers:?}");
        let detail = answer.body["detail"].as_str().unwrap();
        assert!(detail.contains(name) && detail.contains("Send one"), "{detail}");
    }
}
