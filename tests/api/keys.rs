//! Keys: who may ask when the operator says so, and that a key is seen by nobody.

use std::fmt::Write;
use std::net::SocketAddr;
use std::path::PathBuf;

use reqwest::Method;
use serde_json::{Value, json};
use sha2::{Digest, Sha256};

use super::harness::{Answer, checked, client, get, send, start};
use super::instance::Instance;
use super::requests::loop_characteristics;
use super::socket::Socket;

const SHOP: &str = "tern-island-shop-key";
const YARD: &str = "tern-island-yard-key";

/// The hash of a key, as a file of keys lists it.
pub fn hash(key: &str) -> String {
    Sha256::digest(key).iter().fold(String::new(), |mut text, byte| {
        write!(text, "{byte:02x}").unwrap();
        text
    })
}

/// A file of keys that is gone after the test.
pub struct File(PathBuf);

impl File {
    pub fn new(name: &str, content: &Value) -> Self {
        let file = Self(std::env::temp_dir().join(format!("loopwright-keys-{}-{name}.json", std::process::id())));
        file.write(&content.to_string());
        file
    }

    pub fn write(&self, content: &str) {
        std::fs::write(&self.0, content).unwrap();
    }

    pub fn setting(&self) -> (&'static str, &str) {
        ("LOOPWRIGHT_KEYS", self.0.to_str().unwrap())
    }
}

impl Drop for File {
    fn drop(&mut self) {
        std::fs::remove_file(&self.0).unwrap();
    }
}

fn both() -> Value {
    json!([{ "name": "shop", "sha256": [hash(SHOP)] }, { "name": "yard", "sha256": [hash("old"), hash(YARD)] }])
}

/// Asks for what needs a key where keys are on.
fn ask(address: SocketAddr, authorization: &str) -> Answer {
    ask_with(address, &[("authorization", authorization)])
}

fn ask_with(address: SocketAddr, headers: &[(&str, &str)]) -> Answer {
    let request = client().post(format!("http://{address}/v1/loop-characteristics"));
    let request = request.header("content-type", "application/json").body(loop_characteristics().to_string());
    let request = headers.iter().fold(request, |request, (name, value)| request.header(*name, *value));
    checked(&Method::POST, "/v1/loop-characteristics", request.send().unwrap())
}

#[test]
fn without_a_file_no_key_is_needed_and_any_is_ignored() {
    let open = start(&[]);
    assert_eq!(ask_with(open, &[]).status, 200);
    assert_eq!(ask(open, "Bearer anything").status, 200);
}

#[test]
fn a_hash_is_compared_from_its_first_digit_to_its_last() {
    let right = hash(SHOP);
    let other = |digit: char| if digit == '0' { '1' } else { '0' };
    let first = format!("{}{}", other(right.chars().next().unwrap()), &right[1..]);
    let last = format!("{}{}", &right[..63], other(right.chars().last().unwrap()));
    for (hash, status) in [(first, 401), (last, 401), (right.to_uppercase(), 200)] {
        let file = File::new("digits", &json!([{ "name": "shop", "sha256": [hash] }]));
        let instance = start(&[file.setting()]);
        assert_eq!(ask(instance, &format!("Bearer {SHOP}")).status, status, "{hash}");
    }
}

#[test]
fn a_known_key_is_let_in_whatever_the_case_of_its_scheme() {
    let file = File::new("known", &both());
    let closed = start(&[file.setting()]);
    for authorization in ["Bearer tern-island-shop-key", "bearer tern-island-yard-key", "BEARER  old"] {
        assert_eq!(ask(closed, authorization).status, 200, "{authorization}");
    }
}

#[test]
fn anyone_else_is_told_how_to_send_one() {
    let file = File::new("unknown", &both());
    let closed = start(&[file.setting()]);
    let longer = format!("Bearer {SHOP}x");
    let hashed = format!("Bearer {}", hash(SHOP));
    let bare = ask_with(closed, &[]);
    assert_eq!(bare.header("www-authenticate"), "Bearer realm=\"loopwright\"");
    let wrong =
        [longer.as_str(), &hashed, "Bearer tern-island-shop-ke", "Bearer", "Bearer ", "Basic c2hvcDp4", "old", ""];
    for answer in wrong.map(|authorization| ask(closed, authorization)).into_iter().chain([bare]) {
        assert_eq!((answer.status, &answer.body["code"]), (401, &json!("unauthorized")));
        assert!(answer.header("www-authenticate").starts_with("Bearer realm=\"loopwright\""));
        assert!(answer.body["detail"].as_str().unwrap().contains("Authorization: Bearer KEY"), "{}", answer.body);
    }
    assert!(ask(closed, &longer).header("www-authenticate").ends_with("error=\"invalid_token\""));
}

#[test]
fn a_refused_body_is_read_so_that_the_key_can_follow() {
    let file = File::new("follow", &both());
    let closed = start(&[file.setting()]);
    let mut socket = Socket::open(closed);
    let body = b"{\"opening\":{\"width\":\"7.2 m\",\"barrier\":\"slide_gate\"}}";
    let json = "content-type: application/json\r\n";
    assert_eq!(socket.post("/v1/loop-sizing", json, body).status, 401);
    let json = format!("{json}authorization: Bearer {SHOP}\r\n");
    assert_eq!(socket.post("/v1/loop-sizing", &json, body).status, 200);
}

#[test]
fn what_explains_the_service_needs_no_key() {
    let file = File::new("open", &both());
    let closed = start(&[file.setting()]);
    let open = [
        "/",
        "/embed/helper.js",
        "/embed/frame",
        "/openapi.json",
        "/openapi-compact.json",
        "/docs/",
        "/docs/loop-sizing",
        "/docs/try/",
        "/docs/guide",
        "/changes",
        "/problems/unauthorized",
        "/v1/reference/roles",
        "/v1/reference/messages",
    ];
    for path in open.iter().chain(&["/health/live", "/metrics"]) {
        assert_eq!(send(closed, &Method::GET, path, &[]).status, 200, "{path}");
    }
    for path in ["/v1/nope", "/v1/loop-sizing", "/nope", "/embed", "//"] {
        assert_eq!(send(closed, &Method::GET, path, &[]).status, 401, "{path} tells strangers what exists");
    }
}

#[test]
fn the_description_says_which_operations_need_a_key() {
    let file = File::new("described", &both());
    let closed = start(&[file.setting()]);
    let description = get("/openapi.json").body;
    let paths = description["paths"].as_object().unwrap().iter().filter(|(path, _)| path.starts_with("/v1/"));
    for (path, item) in paths {
        for (method, operation) in item.as_object().unwrap() {
            let method = Method::from_bytes(method.to_uppercase().as_bytes()).unwrap();
            let needs_key = send(closed, &method, path, &[]).status == 401;
            assert_eq!(operation.get("security"), (!needs_key).then_some(&json!([])), "{method} {path}");
            assert_eq!(operation["responses"].get("403").is_some(), needs_key, "{method} {path}");
            // What was released stays stated.
            let is_released = needs_key || path.starts_with("/v1/reference/");
            assert_eq!(operation["responses"].get("401").is_some(), is_released, "{method} {path}");
        }
    }
}

#[test]
fn no_other_way_to_write_a_path_leads_round_the_key() {
    let file = File::new("round", &both());
    let closed = start(&[file.setting()]);
    let paths = [
        "/%761/reference/roles",
        "/v%31/reference/roles",
        "/v1/reference/%72oles",
        "//v1/reference/roles",
        "/docs/../v1/reference/roles",
        "/docs/%2e%2e/v1/reference/roles",
        "/health/../v1/reference/roles",
        "/V1/reference/roles",
    ];
    for path in paths {
        let mut socket = Socket::open(closed);
        socket.send(format!("GET {path} HTTP/1.1\r\nhost: loops\r\nconnection: close\r\n\r\n"));
        let answer = socket.read_to_the_end();
        assert!(answer.starts_with("HTTP/1.1 401 ") || answer.starts_with("HTTP/1.1 404 "), "{path}: {answer}");
    }
}

#[test]
fn each_client_has_its_own_rate() {
    let file = File::new(
        "rates",
        &json!([
            { "name": "slow", "sha256": [hash("slow-1"), hash("slow-2")], "requests_per_second": 1, "burst": 3 },
            { "name": "free", "sha256": [hash("free")], "requests_per_second": 0 },
            { "name": "usual", "sha256": [hash("usual")] }
        ]),
    );
    let closed = start(&[file.setting(), ("LOOPWRIGHT_RATE", "1"), ("LOOPWRIGHT_BURST", "200")]);
    let answered = |key: &str| (0..1000).take_while(|_| ask(closed, &format!("Bearer {key}")).status == 200).count();
    let slow = answered("slow-1");
    assert!((3..200).contains(&slow), "{slow} of a burst of 3");
    assert!(answered("slow-2") < 3, "a second key doubles the rate");
    assert_eq!(answered("free"), 1000);
    let usual = answered("usual");
    assert!((200..1000).contains(&usual), "{usual} of a burst of 200");
    // Guesses count against the address of the caller.
    let guessed = (0..1000).map(|_| ask(closed, "Bearer guess").status).find(|status| *status != 401);
    assert_eq!(guessed, Some(429));
}

#[test]
fn a_file_that_cannot_be_used_stops_the_start() {
    let entry = |name: &str, key: &str| json!({ "name": name, "sha256": [key] });
    let sound = hash(SHOP);
    for (index, (content, said)) in [
        (json!([]), "LOOPWRIGHT_KEYS_MAY_BE_EMPTY=yes"),
        (json!([{ "name": "shop", "sha256": [sound], "not_after": "2027-03-31" }]), "not_after takes a time"),
        (json!([{ "name": "shop", "sha256": [sound], "not_after": "soon" }]), "2027-03-31T00:00:00Z"),
        (json!(["x".repeat(1024 * 1024)]), "the file has 1048580 bytes; at most 1048576"),
        (json!({}), "expected a sequence"),
        (json!([{ "name": "shop" }]), "missing field `sha256`"),
        (json!([{ "name": "shop", "sha256": [sound], "rate": 1 }]), "unknown field `rate`"),
        (json!([{ "name": "shop", "sha256": [] }]), "lists no key"),
        (json!([entry("shop", "tern-island-shop-key")]), "64 hexadecimal digits"),
        (json!([entry("shop", &sound[1..])]), "64 hexadecimal digits"),
        (json!([{ "name": "shop", "sha256": [sound], "burst": 0 }]), "burst 1 to"),
        (
            json!([{ "name": "shop", "sha256": [sound], "requests_per_second": 2_000_000_000 }]),
            "requests_per_second takes",
        ),
        (json!([entry("shop\n", &sound)]), "letters, digits"),
        (json!([entry("", &sound)]), "letters, digits"),
        (json!([entry("shop", &sound), entry("shop", &hash(YARD))]), "stands twice"),
        (json!([entry("shop", &sound), entry("yard", &sound.to_uppercase())]), "shop and yard have the same key"),
    ]
    .into_iter()
    .enumerate()
    {
        let file = File::new(&format!("wrong-{index}"), &content);
        let output = super::instance::run(&[], &[file.setting(), ("LOOPWRIGHT_LISTEN", "127.0.0.1:0")]);
        let text = String::from_utf8(output.stderr).unwrap();
        assert!(
            !output.status.success() && text.contains(said) && text.contains("LOOPWRIGHT_KEYS"),
            "{content}: {text}"
        );
        assert!(!text.contains("tern-island-shop-key"), "what may be a key is repeated: {text}");
    }
}

#[test]
fn a_hangup_reads_the_file_again_and_a_broken_one_changes_nothing() {
    let file = File::new("reload", &json!([{ "name": "shop", "sha256": [hash(SHOP)] }]));
    let mut instance = Instance::start(&[file.setting()]);
    let address = instance.address;
    let statuses = || [SHOP, YARD].map(|key| ask(address, &format!("Bearer {key}")).status);
    assert_eq!(statuses(), [200, 401]);
    file.write(&json!([{ "name": "yard", "sha256": [hash(YARD)] }]).to_string());
    instance.signal("-HUP");
    let read = instance.wait_for("the keys were read");
    assert_eq!([&read["clients"], &read["new"], &read["gone"]], [&json!(1), &json!("yard"), &json!("shop")]);
    assert_eq!(statuses(), [401, 200]);
    file.write("[]");
    instance.signal("-HUP");
    assert_eq!(instance.wait_for("the list is empty")["level"], "ERROR");
    assert_eq!(statuses(), [401, 200]);
    file.write("[{");
    instance.signal("-HUP");
    assert_eq!(instance.wait_for("the keys stay as they were")["level"], "ERROR");
    assert_eq!(statuses(), [401, 200]);
    instance.terminate();
    instance.end();
}

#[test]
fn the_log_names_the_client_and_never_the_key() {
    let file = File::new("log", &both());
    let instance = Instance::start(&[file.setting(), ("LOOPWRIGHT_LOG", "trace")]);
    assert_eq!(ask(instance.address, &format!("Bearer {SHOP}")).status, 200);
    assert_eq!(ask(instance.address, "Bearer a-guess-that-failed").status, 401);
    let method = Method::from_bytes(YARD.as_bytes()).unwrap();
    assert_eq!(send(instance.address, &method, "/v1/loop-sizing", &[]).status, 401);
    instance.terminate();
    let log = instance.end();
    let events: Vec<Value> = log.lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    let requests: Vec<_> = events.iter().filter(|event| event["message"] == "request").collect();
    assert_eq!(
        requests.iter().map(|event| &event["client"]).collect::<Vec<_>>(),
        [&json!("shop"), &Value::Null, &Value::Null]
    );
    assert_eq!(requests[2]["method"], "other");
    for secret in [SHOP, "a-guess-that-failed", &hash(SHOP), YARD] {
        assert!(!log.contains(secret), "{secret} is logged:\n{log}");
    }
}

#[test]
fn an_empty_list_is_taken_where_that_is_meant() {
    let file = File::new("empty", &json!([]));
    let closed = start(&[file.setting(), ("LOOPWRIGHT_KEYS_MAY_BE_EMPTY", "yes")]);
    assert_eq!(ask(closed, &format!("Bearer {SHOP}")).status, 401);
    let mut instance = Instance::start(&[file.setting(), ("LOOPWRIGHT_KEYS_MAY_BE_EMPTY", "yes")]);
    instance.signal("-HUP");
    assert_eq!(instance.wait_for("the keys were read")["clients"], 0);
}

#[test]
fn an_expired_key_is_told_so() {
    let entry = |name: &str, key: &str, end: &str| json!({ "name": name, "sha256": [hash(key)], "not_after": end });
    let ends = json!([entry("shop", SHOP, "2026-01-31T12:00:00+02:00"), entry("yard", YARD, "2199-12-31T00:00:00Z"),]);
    let file = File::new("expired", &ends);
    let closed = start(&[file.setting()]);
    assert_eq!(ask(closed, &format!("Bearer {YARD}")).status, 200);
    let refused = ask(closed, &format!("Bearer {SHOP}"));
    assert_eq!((refused.status, &refused.body["code"]), (401, &json!("unauthorized")));
    let detail = refused.body["detail"].as_str().unwrap();
    assert!(detail.contains("expired at 2026-01-31T10:00:00Z") && detail.contains("operator"), "{detail}");
    assert!(refused.header("www-authenticate").ends_with("error=\"invalid_token\""));
}

#[test]
fn two_keys_are_as_good_as_none() {
    let file = File::new("two", &both());
    let closed = start(&[file.setting()]);
    let mut socket = Socket::open(closed);
    let keys = format!("authorization: Bearer {SHOP}\r\nauthorization: Bearer {YARD}\r\n");
    let body = loop_characteristics().to_string();
    assert_eq!(socket.post("/v1/loop-characteristics", &keys, body.as_bytes()).status, 401);
}

#[test]
fn what_is_cached_is_private_where_a_key_is_needed() {
    let file = File::new("private", &both());
    let closed = start(&[file.setting()]);
    let key = format!("Bearer {SHOP}");
    let plan = "/v1/drawings/plan?width=24%20ft&barrier=slide_gate";
    let drawing = send(closed, &Method::GET, plan, &[("authorization", &key)]);
    let tag = drawing.header("etag").to_owned();
    let known = [("authorization", key.as_str()), ("if-none-match", tag.as_str())];
    let unchanged = send(closed, &Method::GET, plan, &known);
    assert_eq!(unchanged.status, 304);
    for answer in [drawing, unchanged] {
        assert_eq!(answer.header("cache-control"), "private, max-age=3600");
    }
    for path in
        ["/openapi.json", "/docs/index.css", "/problems/unauthorized", "/v1/reference/roles", "/embed/helper.js"]
    {
        let answer = send(closed, &Method::GET, path, &[]);
        assert_eq!(answer.header("cache-control"), "public, max-age=3600", "{path}");
    }
}
