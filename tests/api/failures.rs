//! Every status that the service fails with: a problem that a listed page can read, with the id of its request, never stored, and
//! counted by its code.

use std::net::SocketAddr;

use reqwest::Method;
use serde_json::{Value, json};

use super::harness::{send, start_both};
use super::socket::{Reply, Socket};
use super::weather_service::{Reply as Weather, WeatherService};

const SHOP: &str = "https://shop.tern-island.example";
const HEAD: &str =
    "content-type: application/json\r\norigin: https://shop.tern-island.example\r\nx-request-id: job-17\r\n";
const SIZING: &str = "/v1/loop-sizing";

/// An instance that lists the shop's pages, with further settings: a connection to it, and the address of its counters.
struct Setting {
    metrics: SocketAddr,
    socket: Socket,
}

impl Setting {
    fn new(variables: &[(&str, &str)]) -> Self {
        let usual = [("LOOPWRIGHT_CORS_ORIGINS", SHOP), ("LOOPWRIGHT_METRICS_LISTEN", "127.0.0.1:0")];
        let (address, metrics) = start_both(&[&usual, variables].concat());
        Self { metrics: metrics.unwrap(), socket: Socket::open(address) }
    }

    fn ask(&mut self, path: &str, headers: &str, body: impl AsRef<[u8]>) -> Reply {
        self.socket.post(path, headers, body.as_ref())
    }

    /// Holds what all failures have in common.
    fn failed(&mut self, status: u16, code: &str, reply: Reply) {
        assert_eq!((reply.status, &reply.body["code"]), (status, &json!(code)), "{}", reply.head);
        for line in [
            "content-type: application/problem+json",
            "access-control-allow-origin: https://shop.tern-island.example",
            "x-request-id: job-17",
            "cache-control: no-store",
            "x-content-type-options: nosniff",
        ] {
            assert!(reply.head.contains(&format!("{line}\r\n")), "{status} has no {line}:\n{}", reply.head);
        }
        assert_eq!(reply.body["request_id"], "job-17", "{status}");
        assert_eq!(reply.body["type"], format!("/problems/{}", code.replace('_', "-")));
        let counted = format!("loopwright_http_requests_refused_total{{reason=\"{code}\"}} ");
        let metrics = send(self.metrics, &Method::GET, "/metrics", &[]);
        let text = metrics.body.as_str().unwrap();
        assert!(text.contains(&counted), "{counted} is not in\n{text}");
    }
}

#[test]
fn bodies_paths_and_methods() {
    let mut usual = Setting::new(&[]);
    for (status, code, headers, body) in [
        (400, "malformed_json", HEAD, "{".to_owned()),
        (415, "unsupported_media_type", &HEAD.replace("application/json", "text/plain"), "{}".to_owned()),
        (422, "validation_failed", HEAD, "{}".to_owned()),
        (431, "head_too_large", &format!("{HEAD}x-padding: {}\r\n", "a".repeat(20_000)), "{}".to_owned()),
    ] {
        let reply = usual.ask(SIZING, headers, body);
        usual.failed(status, code, reply);
    }
    let reply = usual.ask("/nope", HEAD, "{}");
    usual.failed(404, "not_found", reply);
    let reply = usual.ask("/v1/reference/roles", HEAD, "{}");
    usual.failed(405, "method_not_allowed", reply);
    let reply = usual.ask(SIZING, HEAD, " ".repeat(70_000));
    usual.failed(413, "body_too_large", reply);
}

#[test]
fn time_keys_and_crowds() {
    let mut hasty = Setting::new(&[("LOOPWRIGHT_DEADLINE", "0.2 s")]);
    hasty.socket.send(format!("POST {SIZING} HTTP/1.1\r\nhost: loops\r\n{HEAD}content-length: 9\r\n\r\n"));
    let reply = hasty.socket.read(&Method::POST, SIZING);
    hasty.failed(408, "request_timeout", reply);

    let path = std::env::temp_dir().join(format!("loopwright-no-keys-{}.json", std::process::id()));
    std::fs::write(&path, "[]").unwrap();
    let none = [("LOOPWRIGHT_KEYS", path.to_str().unwrap()), ("LOOPWRIGHT_KEYS_MAY_BE_EMPTY", "yes")];
    let mut closed = Setting::new(&none);
    let reply = closed.ask(SIZING, HEAD, "{}");
    assert!(reply.head.contains("www-authenticate: Bearer realm=\"loopwright\"\r\n"), "{}", reply.head);
    closed.failed(401, "unauthorized", reply);

    let mut slow = Setting::new(&[("LOOPWRIGHT_RATE", "1"), ("LOOPWRIGHT_BURST", "1")]);
    let refused = (0..500).map(|_| slow.ask(SIZING, HEAD, "{}")).find(|reply| reply.status != 422).unwrap();
    assert!(refused.head.contains("retry-after: "), "{}", refused.head);
    slow.failed(429, "rate_limited", refused);

    let mut small = Setting::new(&[("LOOPWRIGHT_ARRIVING_LIMIT", "1048576")]);
    // More than one caller may have on its way.
    let batch = "/v1/installation-plan/batch";
    let head = format!("POST {batch} HTTP/1.1\r\nhost: loops\r\n{HEAD}content-length: 900000\r\n\r\n");
    small.socket.send(format!("{head}{}", " ".repeat(300_000)));
    let refused = small.socket.read(&Method::POST, batch);
    assert!(refused.head.contains("retry-after: 1\r\n"), "{}", refused.head);
    small.failed(503, "overloaded", refused);
}

#[test]
fn forecasts() {
    let cure = json!({
        "sealant": { "kind": "two_part_reactive" }, "start": "2026-11-25T09:00:00-05:00",
        "weather": { "location": { "latitude": 44.31, "longitude": -68.204 } }
    });
    let asked = |service: &WeatherService, timeout: &str| {
        let mut setting = Setting::new(&[
            ("LOOPWRIGHT_FORECAST_URL", &service.base()),
            ("LOOPWRIGHT_FORECAST_USER_AGENT", "yard@tern-island.example"),
            ("LOOPWRIGHT_FORECAST_TIMEOUT", timeout),
        ]);
        let ask = |setting: &mut Setting| setting.ask("/v1/cure-guidance", HEAD, cure.to_string());
        let reply = ask(&mut setting);
        (setting, reply, ask)
    };
    let broken = WeatherService::start(|_, _, _| Weather::text(403, "no"));
    let (mut setting, reply, ask) = asked(&broken, "4 s");
    setting.failed(502, "forecast_failed", reply);
    // After some failures in a row the service is left alone for a while.
    let refused = (0..20).map(|_| ask(&mut setting)).find(|reply| reply.status != 502).unwrap();
    setting.failed(503, "forecast_unavailable", refused);
    let late = WeatherService::start(|_, _, _| Weather {
        delay: std::time::Duration::from_secs(5),
        ..Weather::text(200, "{}")
    });
    let (mut setting, reply, _) = asked(&late, "0.2 s");
    setting.failed(504, "forecast_timeout", reply);
}

#[test]
fn every_code_of_a_failure_is_tried_somewhere() {
    let tried = include_str!("failures.rs");
    let others = [
        include_str!("cors.rs"),
        include_str!("process.rs"),
        include_str!("publishable_keys.rs"),
        include_str!("../../src/api/middleware.rs"),
    ]
    .concat();
    let table = super::harness::get("/v1/reference/problems").body;
    let rows = table["rows"].as_array().unwrap();
    let is_answer = |row: &&Value| row["applies_to"] == "answer";
    for code in rows.iter().filter(is_answer).map(|row| row["code"].as_str().unwrap()) {
        let quoted = format!("\"{code}\"");
        assert!(tried.contains(&quoted) || others.contains(&quoted), "no test fails with {code}");
    }
}
