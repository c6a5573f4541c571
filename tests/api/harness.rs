//! An instance for all tests, and a client that holds every answer against the committed description.

use std::collections::HashMap;
use std::net::SocketAddr;
use std::sync::{LazyLock, Mutex, OnceLock};

use jsonschema::Validator;
use loopwright::api::serve;
use loopwright::settings::Settings;
use reqwest::Method;
use reqwest::blocking::{Client, Response};
use reqwest::redirect::Policy;
use serde_json::{Value, json};

/// An answer: status, headers and JSON.
pub struct Answer {
    pub status: u16,
    pub headers: reqwest::header::HeaderMap,
    pub body: Value,
}

impl Answer {
    /// A header as text; empty when absent.
    pub fn header(&self, name: &str) -> &str {
        self.headers.get(name).map_or("", |value| value.to_str().unwrap())
    }

    /// The codes of the findings of a level, in order.
    pub fn findings(&self, level: &str) -> Vec<&str> {
        let findings = self.body["findings"].as_array().unwrap_or_else(|| panic!("no report: {}", self.body));
        let of_level = findings.iter().filter(|finding| finding["level"] == level);
        of_level.map(|finding| finding["code"].as_str().unwrap()).collect()
    }

    /// The faults of a problem as `(pointer, code)`.
    pub fn faults(&self) -> Vec<(String, String)> {
        let text = |fault: &Value, key: &str| fault[key].as_str().unwrap().to_owned();
        let errors = self.body["errors"].as_array().unwrap_or_else(|| panic!("no problem: {}", self.body));
        errors.iter().map(|fault| (text(fault, "pointer"), text(fault, "code"))).collect()
    }
}

/// Starts an instance with these variables set, on a free port, on threads of its own that end with the test process.
pub fn start(variables: &[(&str, &str)]) -> SocketAddr {
    start_both(variables).0
}

/// The same, with the address of its counters where they have one.
pub fn start_both(variables: &[(&str, &str)]) -> (SocketAddr, Option<SocketAddr>) {
    // All tests come from one address, faster than any caller.
    let usual = [("LOOPWRIGHT_LISTEN", "127.0.0.1:0"), ("LOOPWRIGHT_WORKERS", "2"), ("LOOPWRIGHT_RATE", "0")];
    let value = |name| variables.iter().chain(&usual).find(|(other, _)| *other == name);
    let settings = Settings::read(|name| value(name).map(|(_, value)| (*value).to_owned())).unwrap();
    let listeners = serve::bind(&settings).unwrap();
    let address = listeners.service.local_addr().unwrap();
    let metrics = listeners.metrics.as_ref().map(|listener| listener.local_addr().unwrap());
    std::thread::spawn(move || actix_web::rt::System::new().block_on(serve::run(settings, listeners)));
    (address, metrics)
}

/// Waits until an instance has so many requests in work, which its own counters tell.
pub fn wait_until_in_work(metrics: SocketAddr, count: usize) {
    // The question itself is one more.
    let line = format!("loopwright_http_requests_in_flight {}\n", count + 1);
    let is_so = || send(metrics, &Method::GET, "/metrics", &[]).body.as_str().unwrap().contains(&line);
    assert!((0..10_000).any(|_| is_so()), "there are never {count} requests in work");
}

/// The instance that most tests share.
pub fn shared() -> SocketAddr {
    static SHARED: OnceLock<SocketAddr> = OnceLock::new();
    *SHARED.get_or_init(|| start(&[]))
}

/// The value of a counter, which its own line tells.
pub fn metric(metrics: SocketAddr, name: &str) -> usize {
    let answer = send(metrics, &Method::GET, "/metrics", &[]);
    let line = answer.body.as_str().unwrap().lines().find_map(|line| line.strip_prefix(name)?.strip_prefix(' '));
    line.map_or(0, |value| value.parse().unwrap())
}

/// The client that all tests share.
pub fn client() -> &'static Client {
    static CLIENT: LazyLock<Client> =
        LazyLock::new(|| Client::builder().no_proxy().redirect(Policy::none()).build().unwrap());
    &CLIENT
}

/// Posts a body as JSON to a path of the shared instance.
pub fn post(path: &str, body: impl Into<reqwest::blocking::Body>) -> Answer {
    let request =
        client().post(format!("http://{}{path}", shared())).header("content-type", "application/json").body(body);
    checked(&Method::POST, path, request.send().unwrap())
}

/// Posts a value to a calculation of the shared instance.
pub fn calculate(calculation: &str, request: &Value) -> Answer {
    post(&format!("/v1/{calculation}"), request.to_string())
}

/// Gets a path of the shared instance.
pub fn get(path: &str) -> Answer {
    checked(&Method::GET, path, client().get(format!("http://{}{path}", shared())).send().unwrap())
}

/// Sends a request without a body to any instance.
pub fn send(address: SocketAddr, method: &Method, path: &str, headers: &[(&str, &str)]) -> Answer {
    let mut request = client().request(method.clone(), format!("http://{address}{path}"));
    for (name, value) in headers {
        request = request.header(*name, *value);
    }
    checked(method, path, request.send().unwrap())
}

/// Holds an answer against the committed description, then gives it.
pub fn checked(method: &Method, path: &str, response: Response) -> Answer {
    let status = response.status().as_u16();
    let headers = response.headers().clone();
    let text = response.text().unwrap();
    let media = headers.get("content-type").map_or("", |value| value.to_str().unwrap());
    let is_json = media == "application/json" || media == "application/problem+json";
    // An answer to HEAD has the media type of the body that it leaves out. The files of the helper are no answers.
    let is_json = is_json && method != Method::HEAD && !path.starts_with("/embed/");
    let body = if is_json { serde_json::from_str(&text).unwrap() } else { Value::String(text) };
    if is_json {
        check(method, path, status, media, &body);
    }
    Answer { status, headers, body }
}

/// Every JSON answer, problems included, must be what the description says, and say nothing beyond it.
pub fn check(method: &Method, path: &str, status: u16, media: &str, body: &Value) {
    static VALIDATORS: LazyLock<Mutex<HashMap<String, std::sync::Arc<Validator>>>> = LazyLock::new(Mutex::default);
    let pointer = format!(
        "/paths/{}/{}/responses/{status}/content/{}/schema",
        escape(path.split('?').next().unwrap()),
        method.as_str().to_lowercase(),
        escape(media)
    );
    let described = description().pointer(&pointer).cloned();
    // Paths and methods that the description does not have are answered with a problem all the same.
    let schema = described.unwrap_or_else(|| {
        assert!(media == "application/problem+json", "{method} {path} answers an undescribed {status} {media}: {body}");
        let is_expected = matches!(status, 401 | 403 | 404 | 405 | 429 | 431 | 503) || method == Method::OPTIONS;
        assert!(is_expected, "{method} {path} answers an undescribed {status}: {body}");
        json!({ "$ref": "#/components/schemas/Problem" })
    });
    let key = schema.to_string();
    let validator = VALIDATORS.lock().unwrap().entry(key).or_insert_with(|| compile(schema).into()).clone();
    let errors: Vec<_> =
        validator.iter_errors(body).map(|error| format!("{} at {}", error, error.instance_path())).collect();
    assert!(errors.is_empty(), "{method} {path} {status} breaks the description: {errors:#?}\n{body:#}");
}

/// A validator in which answers are closed, so that an undescribed field is found.
fn compile(mut schema: Value) -> Validator {
    let mut components = description()["components"].clone();
    close(&mut components);
    close(&mut schema);
    schema["components"] = components;
    jsonschema::draft202012::new(&schema).unwrap()
}

fn close(value: &mut Value) {
    if let Value::Object(object) = value {
        if object.get("type") == Some(&json!("object")) && object.contains_key("properties") {
            object.insert("additionalProperties".to_owned(), json!(false));
        }
        object.values_mut().for_each(close);
    } else if let Value::Array(items) = value {
        items.iter_mut().for_each(close);
    }
}

/// The committed description.
pub fn description() -> &'static Value {
    static DESCRIPTION: LazyLock<Value> =
        LazyLock::new(|| serde_json::from_str(include_str!("../../openapi/openapi.json")).unwrap());
    &DESCRIPTION
}

fn escape(part: &str) -> String {
    part.replace('~', "~0").replace('/', "~1")
}
