//! Which pages of other sites may call: none unless the operator lists them.

use std::net::SocketAddr;
use std::sync::LazyLock;

use reqwest::Method;
use reqwest::blocking::Body;

use super::harness::{Answer, checked, client, send, shared, start};
use super::requests::all;

const SHOP: &str = "https://shop.tern-island.example";
const STRANGER: &str = "https://elsewhere.example";

fn listed() -> SocketAddr {
    static LISTED: LazyLock<SocketAddr> = LazyLock::new(|| {
        start(&[("LOOPWRIGHT_CORS_ORIGINS", "https://quote.tern-island.example, https://shop.tern-island.example")])
    });
    *LISTED
}

fn preflight(address: SocketAddr, path: &str, origin: &str, method: &str, headers: &str) -> Answer {
    let asked =
        [("origin", origin), ("access-control-request-method", method), ("access-control-request-headers", headers)];
    send(address, &Method::OPTIONS, path, &asked)
}

fn post(address: SocketAddr, path: &str, media: &str, body: impl Into<Body>) -> Answer {
    let request = client().post(format!("http://{address}{path}"));
    let request = request.header("origin", SHOP).header("content-type", media).body(body);
    checked(&Method::POST, path, request.send().unwrap())
}

#[test]
fn no_page_may_call_by_default() {
    let simple = send(shared(), &Method::GET, "/v1/reference/roles", &[("origin", SHOP)]);
    assert_eq!(simple.status, 200);
    let asked = preflight(shared(), "/v1/loop-sizing", SHOP, "POST", "content-type");
    assert_eq!((asked.status, asked.header("allow")), (405, "POST"));
    for answer in [simple, asked] {
        let names: Vec<_> = answer.headers.keys().map(|name| name.as_str().to_owned()).collect();
        assert!(names.iter().all(|name| !name.starts_with("access-control-")), "{names:?}");
    }
}

#[test]
fn a_listed_page_may_ask_and_call() {
    for (path, method) in [("/v1/loop-sizing", "POST"), ("/v1/reference/roles", "GET"), ("/openapi.json", "HEAD")] {
        let asked = preflight(
            listed(),
            path,
            SHOP,
            method,
            "content-type, if-none-match, x-request-id, traceparent, X-Requested-With, idempotency-key",
        );
        assert_eq!(asked.status, 200, "{path}: {}", asked.body);
        assert_eq!(asked.header("access-control-allow-origin"), SHOP);
        assert!(asked.header("access-control-allow-methods").contains(method));
        assert!(asked.header("access-control-allow-headers").contains("content-type"));
        assert!(asked.header("vary").contains("Origin"));
    }
    for (calculation, request) in all() {
        let answer = post(listed(), &format!("/v1/{calculation}"), "application/json", request.to_string());
        assert_eq!(answer.status, 200);
        assert_eq!(answer.header("access-control-allow-origin"), SHOP);
        for name in ["x-request-id", "etag", "retry-after"] {
            assert!(answer.header("access-control-expose-headers").contains(name), "{name}");
        }
    }
}

#[test]
fn an_unlisted_page_is_given_nothing_to_read() {
    let answer = send(listed(), &Method::GET, "/v1/reference/roles", &[("origin", STRANGER)]);
    assert_eq!(answer.header("access-control-allow-origin"), "");
    assert!(answer.header("vary").contains("Origin"), "a shared cache would mix the answers up");
}

#[test]
fn a_refused_preflight_is_a_problem_of_its_own() {
    for (origin, method, headers, named) in [
        (STRANGER, "POST", "content-type", "origin"),
        ("null", "POST", "content-type", "origin"),
        (SHOP, "DELETE", "content-type", "method"),
        (SHOP, "POST", "x-secret", "x-secret"),
        (SHOP, "POST", "content-type, x-secret, traceparent", "pages of other sites: x-secret."),
    ] {
        let answer = preflight(listed(), "/v1/loop-sizing", origin, method, headers);
        assert_eq!(answer.status, 400, "{origin} {method} {headers}");
        assert_eq!(answer.header("content-type"), "application/problem+json");
        assert_eq!(answer.body["code"], "preflight_refused");
        assert!(answer.body["detail"].as_str().unwrap().contains(named), "{}", answer.body["detail"]);
        let allowed = answer.header("access-control-allow-origin");
        assert!(allowed.is_empty() || origin == SHOP, "{origin} may read: {allowed}");
    }
}

#[test]
fn a_star_lists_every_page() {
    let open = start(&[("LOOPWRIGHT_CORS_ORIGINS", "*")]);
    let answer = send(open, &Method::GET, "/v1/reference/roles", &[("origin", STRANGER)]);
    assert_eq!(answer.header("access-control-allow-origin"), "*");
    assert_eq!(answer.header("access-control-allow-credentials"), "");
    assert_eq!(preflight(open, "/v1/loop-sizing", STRANGER, "POST", "content-type").status, 200);
}
