//! Whether an instance lives and takes requests, and what it counted.

use reqwest::Method;
use serde_json::json;

use super::harness::{client, get, send, start, start_both};

#[test]
fn a_live_instance_says_so_and_becomes_ready() {
    assert_eq!(get("/health/live").body, json!({ "status": "live" }));
    // Readiness follows the self-test, which runs while the first requests already come in.
    let ready = || {
        let answer = get("/health/ready");
        assert!(answer.status == 200 || answer.header("retry-after") == "1", "{}", answer.body);
        (answer.status == 200).then_some(answer.body)
    };
    let body = (0..1000).find_map(|_| {
        ready().or_else(|| {
            std::thread::sleep(std::time::Duration::from_millis(10));
            None
        })
    });
    assert_eq!(body, Some(json!({ "status": "ready" })));
}

#[test]
fn requests_are_counted_by_route_and_status() {
    let own = start(&[]);
    let post = |path: &str, body: &'static str| {
        let request =
            client().post(format!("http://{own}{path}")).header("content-type", "application/json").body(body);
        request.send().unwrap().status().as_u16()
    };
    let sound = "{\"opening\":{\"width\":\"7.2 m\",\"barrier\":\"slide_gate\"}}";
    assert_eq!(
        [post("/v1/loop-sizing", sound), post("/v1/loop-sizing", sound), post("/v1/loop-sizing", "{}")],
        [200, 200, 422]
    );
    for path in ["/nope", "/nope/either?with=query", "/problems/not-found", "/problems/body-too-large", "/docs/nope"] {
        send(own, &Method::GET, path, &[]);
    }
    send(own, &Method::GET, "/v1/loop-sizing", &[]);

    let answer = send(own, &Method::GET, "/metrics", &[]);
    assert!(answer.header("content-type").starts_with("application/openmetrics-text; version=1.0.0"));
    let text = answer.body.as_str().unwrap();
    for (route, status, count) in [
        ("/v1/loop-sizing", 200, 2),
        ("/v1/loop-sizing", 422, 1),
        ("/v1/loop-sizing", 405, 1),
        ("/problems/{slug}", 200, 2),
        ("/docs/{file:.*}", 404, 1),
        ("other", 404, 2),
    ] {
        let line = format!("loopwright_http_requests_total{{route=\"{route}\",status=\"{status}\"}} {count}\n");
        assert!(text.contains(&line), "{line} is not in\n{text}");
    }
    assert!(text.contains("loopwright_http_request_duration_seconds_count{route=\"/v1/loop-sizing\"} 4\n"), "{text}");
    assert!(text.contains("loopwright_http_requests_in_flight 1\n"), "{text}");
    assert!(text.contains("loopwright_panics_total 0\n"), "{text}");
    assert!(!text.contains("nope") && text.ends_with("# EOF\n"), "callers can add series: {text}");
}

#[test]
fn the_counters_are_for_this_machine_unless_they_have_an_address_of_their_own() {
    let near = start(&[]);
    assert_eq!(send(near, &Method::GET, "/metrics", &[]).status, 200);
    for passed_on in [("x-forwarded-for", "192.0.2.1"), ("forwarded", "for=192.0.2.1"), ("via", "1.1 proxy")] {
        assert_eq!(send(near, &Method::GET, "/metrics", &[passed_on]).status, 404, "{passed_on:?}");
    }
    let (service, metrics) = start_both(&[("LOOPWRIGHT_METRICS_LISTEN", "127.0.0.1:0")]);
    assert_eq!(send(service, &Method::GET, "/metrics", &[]).status, 404);
    let answer = send(metrics.unwrap(), &Method::GET, "/metrics", &[("x-forwarded-for", "192.0.2.1")]);
    assert_eq!(answer.status, 200);
    let line = "loopwright_http_requests_total{route=\"/metrics\",status=\"404\"} 1\n";
    assert!(answer.body.as_str().unwrap().contains(line), "{}", answer.body);
    assert_eq!(send(metrics.unwrap(), &Method::GET, "/v1/reference/roles", &[]).status, 404);
}

#[test]
fn items_of_a_batch_are_counted_by_their_status() {
    let own = start(&[]);
    let body = "{\"items\":[{\"id\":\"a\",\"request\":{}},{\"id\":\"b\",\"request\":{}},{\"id\":\"c\",\"request\":\
                {\"parts\":[\"commissioning\"],\"opening\":{\"width\":\"12 ft\",\"barrier\":\"none\"}}}]}";
    let request = client().post(format!("http://{own}/v1/installation-plan/batch"));
    let answer = request.header("content-type", "application/json").body(body).send().unwrap();
    assert!(answer.status() == 200 && !answer.text().unwrap().is_empty());
    let text = send(own, &Method::GET, "/metrics", &[]).body.as_str().unwrap().to_owned();
    for (status, count) in [(200, 1), (422, 2)] {
        let line = format!("loopwright_batch_items_total{{status=\"{status}\"}} {count}\n");
        assert!(text.contains(&line), "{line} is not in\n{text}");
    }
}
