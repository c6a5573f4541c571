//! What pages embed: the helper's files, the page for frames, and the front page that shows it alive.

use std::net::SocketAddr;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use reqwest::Method;
use serde_json::json;
use sha2::{Digest, Sha384};

use super::harness::{Answer, get, send, shared, start};
use super::instance::run;
use super::keys::{File, hash};

const VERSION: &str = env!("CARGO_PKG_VERSION");
const KEY: &str = "tern-island-yard-page-key";
const YARD: &str = "https://yard.tern-island.example";
const CAFE: &str = "https://cafe.tern-island.example";

/// An instance with a publishable key of the boatyard, which two of its pages show.
fn with_keys(file: &File, further: &[(&str, &str)]) -> SocketAddr {
    start(&[&[file.setting()], further].concat())
}

fn keys(name: &str) -> File {
    let paths = ["/v1/loop-sizing", "/v1/loop-sizing/summary", "/v1/drawings/plan"];
    let yard = json!({ "name": "yard", "sha256": [hash(KEY)], "origins": [YARD, CAFE], "paths": paths });
    let office = json!({ "name": "office", "sha256": [hash("tern-island-office-key")] });
    File::new(name, &json!([yard, office]))
}

fn policy(answer: &Answer) -> &str {
    answer.header("content-security-policy")
}

#[test]
fn the_helper_of_a_release_is_kept_for_ever_and_any_page_may_load_it() {
    for (file, media) in [
        ("helper.js", "text/javascript"),
        ("helper.d.ts", "text/plain; charset=utf-8"),
        ("custom-elements.json", "application/json"),
    ] {
        let pinned = get(&format!("/embed/{VERSION}/{file}"));
        assert_eq!((pinned.status, pinned.header("content-type")), (200, media), "{file}");
        assert_eq!(pinned.header("cache-control"), "public, max-age=31536000, immutable", "{file}");
        let moving = get(&format!("/embed/{file}"));
        assert_eq!(moving.header("cache-control"), "public, max-age=3600", "{file}");
        assert_eq!(moving.body, pinned.body, "{file}");
        for answer in [pinned, moving] {
            assert_eq!(answer.header("access-control-allow-origin"), "*", "{file}");
            assert_eq!(answer.header("cross-origin-resource-policy"), "cross-origin", "{file}");
            assert!(!answer.header("etag").is_empty(), "{file}");
        }
    }
    for path in
        ["/embed/0.0.1/helper.js".to_owned(), format!("/embed/{VERSION}/other.js"), "/embed/other.js".to_owned()]
    {
        assert_eq!(get(&path).status, 404, "{path}");
    }
}

#[test]
fn pages_that_may_call_may_still_load_the_helper_from_anywhere() {
    let listed = start(&[("LOOPWRIGHT_CORS_ORIGINS", YARD)]);
    for (origin, allowed) in [(YARD, [YARD, "*"]), ("https://elsewhere.example", ["*", "*"])] {
        let answer = send(listed, &Method::GET, &format!("/embed/{VERSION}/helper.js"), &[("origin", origin)]);
        assert!(allowed.contains(&answer.header("access-control-allow-origin")), "{origin}");
    }
}

#[test]
fn the_frame_is_shown_by_pages_of_its_key_alone() {
    let file = keys("frame");
    let address = with_keys(&file, &[]);
    let frame = |query: &str| send(address, &Method::GET, &format!("/embed/frame{query}"), &[]);
    let own = frame(&format!("?publishable-key={KEY}&lang=es"));
    assert_eq!((own.status, own.header("content-language")), (200, "es"));
    assert!(policy(&own).ends_with(&format!("frame-ancestors {YARD} {CAFE}")), "{}", policy(&own));
    assert!(policy(&own).contains("require-trusted-types-for 'script'") && !policy(&own).contains("unsafe"));
    assert!(own.body.as_str().unwrap().contains(&format!("data-origins=\"{YARD} {CAFE}\"")));
    assert!(own.body.as_str().unwrap().contains(&format!("publishable-key=\"{KEY}\"")));
    // The key that is used is the one whose origins were looked up: of two neither is.
    let twice = frame(&format!("?publishable-key={KEY}&publishable-key=tern-island-office-key"));
    assert!(!twice.body.as_str().unwrap().contains(KEY));
    for query in [
        "",
        "?publishable-key=nobody",
        "?publishable-key=tern-island-office-key",
        &format!("?publishable-key={KEY}&publishable-key={KEY}"),
    ] {
        assert!(policy(&frame(query)).ends_with("frame-ancestors 'none'"), "{query}");
    }
    assert!(policy(&send(shared(), &Method::GET, "/embed/frame", &[])).ends_with("frame-ancestors 'none'"));
    let open = start(&[("LOOPWRIGHT_CORS_ORIGINS", YARD)]);
    assert!(policy(&send(open, &Method::GET, "/embed/frame", &[])).ends_with(&format!("frame-ancestors {YARD}")));
}

#[test]
fn the_front_page_needs_nothing_from_elsewhere_and_names_the_ways_on() {
    for (language, heading) in [("en", "loops"), ("es", "lazos"), ("fr", "boucles")] {
        let page = get(&format!("/?lang={language}"));
        assert_eq!((page.status, page.header("content-language")), (200, language));
        assert!(policy(&page).contains("default-src 'none'; script-src 'self'") && !policy(&page).contains("unsafe"));
        let text = page.body.as_str().unwrap();
        assert!(text.contains(&format!("<html lang=\"{language}\"")) && text.contains(heading), "{language}");
        assert!(!text.contains("front-") || text.matches("front-").count() == 0, "a sentence is missing: {language}");
        assert!(!text.contains("<style") && !text.contains(" style=") && !text.contains("onclick"), "{language}");
        for to in ["docs/", "docs/guide", "changes", "openapi.json"] {
            assert!(text.contains(&format!("href=\"{to}\"")), "{language} does not lead to {to}");
            assert_eq!(get(&format!("/{to}")).status, 200, "{to}");
        }
        let loaded: Vec<_> = text.split(" src=\"").skip(1).map(|rest| rest.split('"').next().unwrap()).collect();
        assert_eq!(loaded.len(), 2, "{loaded:?}");
        for file in loaded.into_iter().chain([&*format!("front/{VERSION}/front.css")]) {
            assert_eq!(get(&format!("/{file}")).status, 200, "{file}");
        }
    }
}

#[test]
fn the_front_page_pins_the_helper_by_its_hash() {
    let module = get(&format!("/embed/{VERSION}/helper.js"));
    let digest = STANDARD.encode(Sha384::digest(module.body.as_str().unwrap()));
    let page = get("/");
    assert!(page.body.as_str().unwrap().contains(&format!("integrity=&quot;sha384-{digest}&quot; crossorigin")));
}

#[test]
fn with_keys_on_the_front_page_has_a_key_of_its_own() {
    let file = keys("front");
    let settings = [("LOOPWRIGHT_FRONT_PAGE_KEY", KEY), ("LOOPWRIGHT_PUBLIC_URL", "https://loops.tern-island.example")];
    let address = with_keys(&file, &settings);
    let page = send(address, &Method::GET, "/", &[]);
    let text = page.body.as_str().unwrap();
    assert!(text.contains(&format!("publishable-key=\"{KEY}\"")));
    assert!(
        text.contains("Bearer $LOOPWRIGHT_KEY") && text.contains("https://loops.tern-island.example/v1/loop-sizing")
    );
    // The service's own pages call with its own origin, which passes with any publishable key, for its paths.
    let own = |origin: &str| {
        let headers =
            [("origin", origin), ("authorization", &*format!("Bearer {KEY}")), ("content-type", "application/json")];
        send(address, &Method::POST, "/v1/loop-sizing/summary", &headers).status
    };
    assert_eq!(own("https://loops.tern-island.example"), 400, "the key passes, and the body is none");
    for stranger in
        ["https://loops.tern-island.example:444", "http://loops.tern-island.example", "https://tern-island.example"]
    {
        assert_eq!(own(stranger), 403, "{stranger}");
    }
}

#[test]
fn a_secret_key_does_not_become_that_of_the_front_page() {
    let file = keys("secret");
    for key in ["tern-island-office-key", "nobody"] {
        let settings = [file.setting(), ("LOOPWRIGHT_FRONT_PAGE_KEY", key), ("LOOPWRIGHT_LISTEN", "127.0.0.1:0")];
        let output = run(&[], &settings);
        let said = String::from_utf8(output.stderr).unwrap();
        assert!(!output.status.success() && said.contains("LOOPWRIGHT_FRONT_PAGE_KEY"), "{key}: {said}");
        assert!(!said.contains(key), "the key is repeated: {said}");
    }
    let open = start(&[("LOOPWRIGHT_FRONT_PAGE_KEY", KEY)]);
    let page = send(open, &Method::GET, "/", &[]);
    assert!(!page.body.as_str().unwrap().contains(KEY), "a key is shown where none is needed");
}
