//! Content codings: what is large is packed for callers that take it, and reads as what is not packed.

use std::collections::BTreeSet;
use std::io::Read;

use flate2::read::GzDecoder;
use reqwest::Method;
use serde_json::{Value, json};

use super::harness::{client, shared};

/// An answer as it comes: status, headers, bytes.
fn raw(
    method: &Method,
    path: &str,
    headers: &[(&str, &str)],
    body: &str,
) -> (u16, reqwest::header::HeaderMap, Vec<u8>) {
    let mut request = client().request(method.clone(), format!("http://{}{path}", shared()));
    for (name, value) in headers {
        request = request.header(*name, *value);
    }
    if !body.is_empty() {
        request = request.header("content-type", "application/json").body(body.to_owned());
    }
    let answer = request.send().unwrap();
    let (status, headers) = (answer.status().as_u16(), answer.headers().clone());
    (status, headers, answer.bytes().unwrap().to_vec())
}

fn text<'a>(headers: &'a reqwest::header::HeaderMap, name: &str) -> &'a str {
    headers.get(name).map_or("", |value| value.to_str().unwrap())
}

fn unpacked(coding: &str, bytes: &[u8]) -> Vec<u8> {
    let mut plain = Vec::new();
    match coding {
        "gzip" => GzDecoder::new(bytes).read_to_end(&mut plain).map(drop).unwrap(),
        "br" => brotli::BrotliDecompress(&mut &*bytes, &mut plain).unwrap(),
        _ => plain.extend(bytes),
    }
    plain
}

const YARD: &str = include_str!("../../openapi/examples/installation-plan/yard_gate_in_january.request.json");

#[test]
fn a_computed_answer_is_packed_for_who_takes_it_and_says_the_same() {
    let cases = ["/v1/installation-plan", "/v1/installation-plan/job-sheet", "/v1/installation-plan/bill"];
    let both = "accept-encoding, accept-language";
    for path in cases {
        let (_, plain_headers, plain) = raw(&Method::POST, path, &[], YARD);
        assert_eq!((text(&plain_headers, "content-encoding"), text(&plain_headers, "vary")), ("", both));
        let (_, headers, packed) = raw(&Method::POST, path, &[("accept-encoding", "gzip, br")], YARD);
        assert_eq!((text(&headers, "content-encoding"), text(&headers, "vary")), ("gzip", both));
        assert_eq!(unpacked("gzip", &packed), plain, "{path}");
        assert!(packed.len() * 3 < plain.len() * 2, "{path}: {} of {}", packed.len(), plain.len());
        assert_eq!(text(&headers, "content-length"), packed.len().to_string(), "{path}");
    }
    // What is small, and what is refused, is sent as it is.
    for (path, body) in [("/v1/loop-sizing", "{}"), ("/v1/nope", "")] {
        let (status, headers, _) = raw(&Method::POST, path, &[("accept-encoding", "gzip")], body);
        assert!(status >= 400 && !headers.contains_key("content-encoding"), "{path}");
    }
    let (_, headers, _) = raw(&Method::GET, "/health/live", &[("accept-encoding", "gzip, br")], "");
    assert!(!headers.contains_key("content-encoding"));
}

#[test]
fn a_batch_is_one_stream_of_which_each_part_can_be_read() {
    let request: Value = serde_json::from_str(YARD).unwrap();
    let items: Vec<_> = (0..3).map(|id| json!({ "id": id.to_string(), "request": request })).collect();
    let body = json!({ "items": items, "pool": true }).to_string();
    let path = "/v1/installation-plan/batch";
    let (_, _, plain) = raw(&Method::POST, path, &[], &body);
    let (_, headers, packed) = raw(&Method::POST, path, &[("accept-encoding", "gzip")], &body);
    assert_eq!(text(&headers, "content-encoding"), "gzip");
    assert_eq!(unpacked("gzip", &packed), plain);
    assert!(packed.len() * 2 < plain.len());
}

#[test]
fn a_packed_batch_is_written_item_by_item() {
    let request: Value = serde_json::from_str(YARD).unwrap();
    let items: Vec<_> = (0..40).map(|id| json!({ "id": id.to_string(), "request": request })).collect();
    let asked = client()
        .post(format!("http://{}/v1/installation-plan/batch", shared()))
        .header("content-type", "application/json")
        .header("accept-encoding", "gzip")
        .body(json!({ "items": items }).to_string());
    let mut answer = asked.send().unwrap();
    let mut packed = Vec::new();
    let mut part = vec![0; 4096];
    // Reads until the second item begins.
    let first = loop {
        let count = answer.read(&mut part).unwrap();
        assert!(count > 0, "the answer ended before its first item");
        packed.extend(&part[..count]);
        let mut plain = Vec::new();
        let _ = GzDecoder::new(&packed[..]).read_to_end(&mut plain);
        if String::from_utf8_lossy(&plain).contains("{\"id\":\"1\"") {
            break plain;
        }
    };
    assert!(!String::from_utf8_lossy(&first).contains("{\"id\":\"3\""), "the first items come together");
    let item = String::from_utf8(first).unwrap();
    let item = item.strip_prefix("{\"results\":[").unwrap().split(",{\"id\":\"1\"").next().unwrap();
    assert_eq!(serde_json::from_str::<Value>(item).unwrap()["status"], 200);
}

#[test]
fn what_is_fixed_has_a_strong_tag_for_each_coding_and_an_unchanged_answer_repeats_its_headers() {
    let paths = [
        "/openapi.json",
        "/openapi-compact.json",
        "/docs/",
        "/docs/guide",
        "/docs/loop-sizing",
        "/docs/try/swagger-ui.css",
        "/docs/try/swagger-ui-bundle.js",
        "/changes",
        "/problems/validation-failed",
        "/v1/reference/findings",
        "/v1/forms/installation-plan",
    ];
    for path in paths {
        let (_, _, plain) = raw(&Method::GET, path, &[], "");
        let mut tags = BTreeSet::new();
        for coding in ["identity", "gzip", "br"] {
            let (status, headers, bytes) = raw(&Method::GET, path, &[("accept-encoding", coding)], "");
            assert_eq!(status, 200, "{path}");
            let sent = text(&headers, "content-encoding").to_owned();
            let is_small = plain.len() < 2048;
            assert_eq!(sent, if coding == "identity" || is_small { "" } else { coding }, "{path}");
            assert_eq!(unpacked(&sent, &bytes), plain, "{path} {coding}");
            let tag = text(&headers, "etag").to_owned();
            assert!(tag.starts_with('"') && tag.len() > 10, "{path} {coding}: {tag}");
            let known = [("accept-encoding", coding), ("if-none-match", tag.as_str())];
            let (status, unchanged, bytes) = raw(&Method::GET, path, &known, "");
            assert_eq!((status, bytes.len()), (304, 0), "{path} {coding}");
            for name in ["etag", "vary", "cache-control"] {
                assert_eq!(text(&unchanged, name), text(&headers, name), "{path} {coding} {name}");
            }
            assert!(text(&headers, "vary").starts_with("accept-encoding"), "{path}");
            tags.insert(tag);
        }
        assert_eq!(tags.len(), if plain.len() < 2048 { 1 } else { 3 }, "{path}: bytes that differ have one tag");
    }
}

/// What a page loads by itself: how many answers with its own, and their bytes.
fn loaded(folder: &str, addresses_of: impl Fn(&str) -> Vec<String>) -> (usize, usize) {
    let (_, headers, page) = raw(&Method::GET, folder, &[("accept-encoding", "br")], "");
    let addresses: BTreeSet<_> =
        addresses_of(&String::from_utf8(unpacked(text(&headers, "content-encoding"), &page)).unwrap())
            .into_iter()
            .collect();
    let mut bytes = page.len();
    for address in &addresses {
        let path = match address.strip_prefix("../../") {
            Some(up) => format!("/{up}"),
            None => format!("{folder}{address}"),
        };
        let (status, headers, sent) = raw(&Method::GET, &path, &[("accept-encoding", "br")], "");
        assert_eq!(status, 200, "{path}");
        bytes += sent.len();
        let kept = text(&headers, "cache-control");
        let wanted =
            if address.contains("?v=") { "public, max-age=31536000, immutable" } else { "public, max-age=3600" };
        assert_eq!(kept, wanted, "{path}");
    }
    (addresses.len() + 1, bytes)
}

/// The addresses of what a page loads before it can be used; the icon is asked for when the page is there.
fn before_use(page: &str) -> Vec<String> {
    let tags = page.split('<').filter(|tag| tag.starts_with("link") || tag.starts_with("script"));
    let addresses = tags.filter_map(|tag| {
        let after = tag.split("href=\"").nth(1).or_else(|| tag.split("src=\"").nth(1))?;
        Some(after.split('"').next().unwrap().to_owned())
    });
    addresses.filter(|address| !address.contains("icon")).collect()
}

#[test]
fn the_documentation_can_be_used_after_three_answers_of_12_kb() {
    let (count, bytes) = loaded("/docs/", before_use);
    assert!(count == 3 && (2000..12_000).contains(&bytes), "{count} answers, {bytes} bytes");
}

#[test]
fn the_viewer_can_be_used_after_six_answers_of_450_kb() {
    let (_, _, script) = raw(&Method::GET, "/docs/try/swagger-initializer.js", &[], "");
    assert!(String::from_utf8(script).unwrap().contains("url: \"../../openapi-compact.json\""));
    let (count, bytes) = loaded("/docs/try/", before_use);
    assert!(count == 6 && bytes < 450_000, "{count} answers, {bytes} bytes");
}
