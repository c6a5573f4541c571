//! Heads, bodies, depth and lists. The size of bodies itself is held in `body.rs`.

use serde_json::{Value, json};

use super::super::harness::{post, shared, start};
use super::super::socket::Socket;
use super::{GATE, JSON, batch, size};

#[test]
fn a_large_head_is_refused_and_its_connection_lives() {
    let small = start(&[("LOOPWRIGHT_HEADER_LIMIT", "1000")]);
    let mut socket = Socket::open(small);
    let padding = |length: usize| format!("x-padding: {}\r\n", "a".repeat(length));
    assert_eq!(size(&mut socket, &padding(700)).status, 200);
    let refused = size(&mut socket, &padding(1000));
    assert_eq!((refused.status, &refused.body["code"]), (431, &json!("head_too_large")));
    assert!(refused.body["detail"].as_str().unwrap().contains("1000 bytes"), "{}", refused.body);
    let many = "x-small: 123456\r\n".repeat(80);
    assert_eq!(size(&mut socket, &many).status, 431, "small headers are counted one by one");
    let path = format!("/v1/loop-sizing?{}", "a".repeat(1000));
    let long = format!("POST {path} HTTP/1.1\r\nhost: loops\r\n{JSON}content-length: {}\r\n\r\n{GATE}", GATE.len());
    socket.send(long);
    assert_eq!(socket.read(&reqwest::Method::POST, "/v1/loop-sizing").status, 431, "the path is not counted");
    let method = format!("{} /health/live HTTP/1.1\r\nhost: loops\r\n\r\n", "A".repeat(1000));
    socket.send(method);
    assert_eq!(socket.read(&reqwest::Method::POST, "/v1/loop-sizing").status, 431, "the method is not counted");
    assert_eq!(size(&mut socket, "").status, 200);
}

#[test]
fn the_default_head_is_sixteen_kibibytes() {
    let mut socket = Socket::open(shared());
    assert_eq!(size(&mut socket, &format!("x-padding: {}\r\n", "a".repeat(16_000))).status, 200);
    assert_eq!(size(&mut socket, &format!("x-padding: {}\r\n", "a".repeat(16_384))).status, 431);
}

#[test]
fn a_head_that_the_http_library_does_not_hold_ends_its_connection() {
    let answer = |headers: &str| {
        let mut socket = Socket::open(shared());
        socket.send(format!("GET /health/live HTTP/1.1\r\nhost: loops\r\n{headers}\r\n"));
        socket.read_to_the_end()
    };
    let many = answer(&"x: 1\r\n".repeat(200));
    assert!(many.starts_with("HTTP/1.1 431 "), "{many:?}");
    // The rest of a very long head may reset the connection before its answer is read.
    let long = answer(&format!("x-padding: {}\r\n", "a".repeat(140_000)));
    assert!(long.is_empty() || long.starts_with("HTTP/1.1 431 "), "{long:?}");
}

#[test]
fn depth_is_a_setting_and_is_judged_for_fields_that_do_not_exist_too() {
    let nested = |levels: usize| format!("{{\"nonsense\":{}{}}}", "[".repeat(levels - 1), "]".repeat(levels - 1));
    let shallow = start(&[("LOOPWRIGHT_JSON_DEPTH", "8")]);
    let mut socket = Socket::open(shallow);
    for (levels, status) in [(8, 422), (9, 400), (127, 400), (20_000, 400)] {
        let reply = socket.post("/v1/loop-sizing", JSON, nested(levels).as_bytes());
        assert_eq!(reply.status, status, "{levels}: {}", reply.body);
        if levels == 9 {
            assert!(reply.body["detail"].as_str().unwrap().contains("more than 8 objects"), "{}", reply.body);
        }
    }
    assert_eq!([post("/v1/loop-sizing", nested(32)).status, post("/v1/loop-sizing", nested(33)).status], [422, 400]);
    // An item of a batch is kept as text until its turn, and judged then.
    let items = json!({ "items": [{ "id": "deep", "request": { "nonsense": 0 } }, { "id": "sound", "request":
        serde_json::from_str::<Value>(GATE).unwrap() }] });
    let deep = items.to_string().replace("{\"nonsense\":0}", &nested(5000));
    let reply = socket.post("/v1/installation-plan/batch", JSON, deep.as_bytes());
    let statuses: Vec<_> = reply.body["results"].as_array().unwrap().iter().map(|result| &result["status"]).collect();
    assert_eq!(statuses, [&json!(400), &json!(200)]);
}

#[test]
fn a_list_longer_than_any_is_refused_where_it_stands() {
    let short = start(&[("LOOPWRIGHT_ARRAY_LIMIT", "3")]);
    let mut socket = Socket::open(short);
    for (vehicles, status) in [(3, 200), (4, 422), (3000, 422)] {
        let names = ["passenger_car", "pickup", "high_bed_truck"];
        let list: Vec<_> = (0..vehicles).map(|index| names[index % 3]).collect();
        let request =
            json!({ "opening": { "width": "7.2 m", "barrier": "none" }, "roles": ["presence"], "vehicles": list });
        let reply = socket.post("/v1/loop-sizing", JSON, request.to_string().as_bytes());
        assert_eq!(reply.status, status, "{}", reply.body);
        if status == 422 {
            let fault = &reply.body["errors"][0];
            assert_eq!((&fault["pointer"], &fault["code"]), (&json!("#/vehicles"), &json!("list_size")));
            assert_eq!(fault["hint"], "Send at most 3 items.");
        }
    }
}

#[test]
fn the_largest_batch_is_a_setting() {
    let small = start(&[("LOOPWRIGHT_BATCH_LIMIT", "2")]);
    let mut socket = Socket::open(small);
    let mut ask = |items| socket.post("/v1/installation-plan/batch", JSON, batch(items).as_bytes());
    assert_eq!(ask(2).body["succeeded"], 2);
    let refused = ask(3);
    assert_eq!((refused.status, &refused.body["errors"][0]["pointer"]), (422, &json!("#/items")));
    assert_eq!(refused.body["errors"][0]["hint"], "Send at most 2 items.");
}
