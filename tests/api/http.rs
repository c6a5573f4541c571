//! What every answer has in common, whatever path and method: problems, `Allow`, ids, headers, HEAD, entity tags.

use std::collections::BTreeSet;

use reqwest::Method;
use serde_json::json;

use super::harness::{calculate, description, get, post, send, shared, start};
use super::requests::all;

/// Every path with each of its own methods; those with a parameter at one value of it.
fn paths() -> Vec<(String, Method)> {
    let described = description()["paths"].as_object().unwrap().iter().flat_map(|(path, item)| {
        let methods = [("post", Method::POST), ("get", Method::GET)].into_iter();
        let methods = methods.filter(|(name, _)| item.get(*name).is_some());
        methods.map(|(_, method)| (path.replace("{slug}", "not-found"), method))
    });
    let others = ["/docs", "/docs/", "/docs/index.css", "/docs/loop-sizing", "/docs/try/", "/docs/guide", "/changes"]
        .map(|path| (path.to_owned(), Method::GET));
    described.chain(others).collect()
}

#[test]
fn a_path_that_does_not_exist_is_a_problem_for_every_method() {
    for path in
        ["//", "/nope", "/v1", "/v1/loop-sizing/", "/v1/reference/nope", "/problems/nope", "/docs/nope.js", "/%ff%00"]
    {
        for method in [Method::GET, Method::POST, Method::PUT, Method::DELETE] {
            let answer = send(shared(), &method, path, &[]);
            let is_known = path.starts_with("/problems") || path.starts_with("/docs");
            if is_known && method != Method::GET {
                assert_eq!(answer.status, 405, "{method} {path}");
                continue;
            }
            assert_eq!(answer.status, 404, "{method} {path}");
            assert_eq!(answer.body["code"], "not_found");
            assert_eq!(answer.body["errors"], json!([]));
        }
    }
}

#[test]
fn a_wrong_method_is_a_problem_that_names_the_right_ones() {
    for (path, own) in paths() {
        let allow = match own {
            _ if path == "/v1/drawings/plan" => "GET, HEAD, POST",
            Method::POST => "POST",
            _ => "GET, HEAD",
        };
        for name in ["GET", "POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE", "PROPFIND"] {
            if allow.contains(name) {
                continue;
            }
            let method: Method = name.parse().unwrap();
            let answer = send(shared(), &method, &path, &[]);
            assert_eq!(answer.status, 405, "{name} {path}");
            assert_eq!(answer.header("allow"), allow, "{name} {path}");
            assert_eq!(answer.body["code"], "method_not_allowed");
            assert_eq!(answer.body["detail"], format!("This path takes {allow}."));
        }
    }
}

#[test]
fn head_answers_as_get_without_the_body() {
    for (path, own) in paths() {
        let headers = |method: Method| {
            let answer = send(shared(), &method, &path, &[]);
            let text = answer.body.as_str().unwrap_or("{}").to_owned();
            (answer.status, answer.header("content-type").to_owned(), answer.header("etag").to_owned(), text)
        };
        let head = headers(Method::HEAD);
        if own == Method::POST && path == "/v1/drawings/plan" {
            continue;
        }
        if own == Method::POST {
            assert_eq!(head.0, 405, "{path}");
            continue;
        }
        let (get, is_redirect) = (headers(Method::GET), path == "/docs");
        assert_eq!((head.0, &head.1, &head.2), (get.0, &get.1, &get.2), "{path}");
        assert!(head.3.is_empty() && (is_redirect || !get.3.is_empty()), "{path}");
    }
}

#[test]
fn a_plain_request_id_is_echoed_and_any_other_is_replaced() {
    let longest = "a".repeat(64);
    for id in ["7", "job-17", "TIB_2026.03.01-a", longest.as_str()] {
        for path in ["/health/live", "/nope"] {
            let answer = send(shared(), &Method::GET, path, &[("x-request-id", id)]);
            assert_eq!(answer.header("x-request-id"), id);
            if answer.status == 404 {
                assert_eq!(answer.body["request_id"], id);
            }
        }
    }
    let too_long = "a".repeat(65);
    for id in ["", "a b", "a\tb", "a;b", "<script>", "a\"b", "a/b", "%0a", too_long.as_str()] {
        let answer = send(shared(), &Method::GET, "/nope", &[("x-request-id", id)]);
        let made = answer.header("x-request-id").to_owned();
        assert_eq!((made.len(), made.matches('-').count()), (36, 4), "{id:?} became {made}");
        assert_eq!(answer.body["request_id"], made, "{id:?}");
    }
}

#[test]
fn every_request_without_an_id_gets_its_own() {
    let ids: BTreeSet<_> = (0..50).map(|_| get("/health/live").header("x-request-id").to_owned()).collect();
    assert_eq!(ids.len(), 50);
}

#[test]
fn no_answer_invites_a_browser_to_guess_its_type() {
    for (path, method) in paths() {
        assert_eq!(send(shared(), &method, &path, &[]).header("x-content-type-options"), "nosniff", "{path}");
    }
    assert_eq!(get("/nope").header("x-content-type-options"), "nosniff");
}

#[test]
fn what_is_computed_and_what_went_wrong_is_never_stored() {
    for (calculation, request) in all() {
        assert_eq!(calculate(calculation, &request).header("cache-control"), "no-store");
        assert_eq!(calculate(calculation, &json!({})).header("cache-control"), "no-store");
        assert_eq!(get(&format!("/v1/{calculation}")).header("cache-control"), "no-store");
    }
    for path in ["/nope", "/docs/nope", "/health/live", "/health/ready", "/metrics"] {
        assert_eq!(get(path).header("cache-control"), "no-store", "{path}");
    }
    for path in [
        "/v1/reference/roles",
        "/openapi.json",
        "/problems/not-found",
        "/docs/index.css",
        "/docs/loop-sizing",
        "/docs/drawings-plan.svg",
        "/changes",
    ] {
        assert_eq!(get(path).header("cache-control"), "public, max-age=3600", "{path}");
    }
}

#[test]
fn a_fixed_answer_has_a_strong_tag_and_is_sent_once() {
    for (path, _) in paths()
        .iter()
        .filter(|(path, _)| ["/v1/reference/", "/v1/forms/", "/openapi"].iter().any(|start| path.starts_with(start)))
    {
        let full = get(path);
        let tag = full.header("etag");
        assert!(tag.starts_with('"') && tag.ends_with('"') && tag.len() > 10, "{path}: {tag}");
        let list = format!("\"other\", {tag}");
        let weak = format!("W/{tag}");
        for sent in [tag, list.as_str(), weak.as_str(), "*"] {
            let answer = send(shared(), &Method::GET, path, &[("if-none-match", sent)]);
            assert_eq!(answer.status, 304, "{path} {sent}");
            assert_eq!(answer.body, "", "{path} {sent}");
            assert_eq!((answer.header("etag"), answer.header("content-type")), (tag, ""));
        }
        for sent in ["\"other\"", "other", ""] {
            let answer = send(shared(), &Method::GET, path, &[("if-none-match", sent)]);
            assert_eq!((answer.status, &answer.body), (200, &full.body), "{path} {sent}");
        }
    }
}

#[test]
fn the_type_of_a_problem_is_a_path_or_an_address_as_callers_see_it() {
    let public = start(&[("LOOPWRIGHT_PUBLIC_URL", "https://loops.tern-island.example/api/")]);
    let answer = send(public, &Method::GET, "/nope", &[]);
    assert_eq!(answer.body["type"], "https://loops.tern-island.example/api/problems/not-found");
    assert_eq!(get("/nope").body["type"], "/problems/not-found");
    assert_eq!(post("/v1/loop-sizing", "{}").body["type"], "/problems/validation-failed");

    let servers = |body: &serde_json::Value| body["servers"].clone();
    let described = send(public, &Method::GET, "/openapi.json", &[]);
    assert_eq!(servers(&described.body), json!([{ "url": "https://loops.tern-island.example/api" }]));
    assert_eq!(servers(&get("/openapi.json").body), json!([{ "url": "/" }]));
    assert_eq!(described.body["externalDocs"]["url"], "https://loops.tern-island.example/api/docs/guide");
    assert!(get("/openapi.json").body.get("externalDocs").is_none(), "the address of a guide must be a whole one");
}
