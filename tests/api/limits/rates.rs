//! How often a caller may ask. No test reads the clock: rates are so low that a test is done before much comes back.

use reqwest::Method;
use serde_json::json;

use super::super::harness::{send, start};
use super::super::requests::loop_characteristics;
use super::super::socket::{Reply, Socket};
use super::{JSON, batch, costly, size};

/// Asks until it is refused, at most so often; gives the number of answers before.
fn until_refused(socket: &mut Socket, headers: &str, most: usize) -> (usize, Reply) {
    for answered in 0..most {
        let reply = size(socket, headers);
        if reply.status != 200 {
            return (answered, reply);
        }
    }
    panic!("{most} requests in a row are no limit");
}

#[test]
fn a_caller_in_a_hurry_is_told_when_to_come_back() {
    let slow = start(&[("LOOPWRIGHT_RATE", "1"), ("LOOPWRIGHT_BURST", "3")]);
    let mut socket = Socket::open(slow);
    let (answered, refused) = until_refused(&mut socket, "", 500);
    assert!(answered >= 3, "the burst is 3, and {answered} were answered");
    assert_eq!((refused.status, &refused.body["code"]), (429, &json!("rate_limited")));
    assert!(refused.head.contains("retry-after: 1\r\n"), "{}", refused.head);
    // The body was read, so the connection lives; and probes are never refused.
    assert!((0..3000).any(|_| size(&mut socket, "").status == 200), "nothing ever comes back");
    for _ in 0..50 {
        assert_eq!(send(slow, &Method::GET, "/health/live", &[]).status, 200);
    }
}

/// The units that are left, as an answer tells.
fn left(reply: &Reply) -> u32 {
    let state = reply.head.split("ratelimit: \"caller\";r=").nth(1).unwrap_or_else(|| panic!("{}", reply.head));
    state.split(';').next().unwrap().parse().unwrap()
}

#[test]
fn each_answer_tells_what_may_still_be_asked_and_what_takes_long_costs_more() {
    let slow = start(&[("LOOPWRIGHT_RATE", "1"), ("LOOPWRIGHT_BURST", "60")]);
    let mut socket = Socket::open(slow);
    let cheap = loop_characteristics().to_string();
    let mut cost_of = |path, body: &str| {
        let before = left(&socket.post("/v1/loop-characteristics", JSON, cheap.as_bytes()));
        let reply = socket.post(path, JSON, body.as_bytes());
        assert_eq!(reply.status, 200, "{}", reply.body);
        assert!(reply.head.contains("ratelimit-policy: \"caller\";q=60;w=60\r\n"), "{}", reply.head);
        i64::from(before) - i64::from(left(&reply))
    };
    // A unit may have come back between the two.
    let cheap_cost = cost_of("/v1/loop-characteristics", &cheap);
    assert!((0..=1).contains(&cheap_cost), "{cheap_cost}");
    let costly_cost = cost_of("/v1/loop-sizing", &costly());
    assert!((2..=10).contains(&costly_cost), "{costly_cost}");
    let unlimited = size(&mut Socket::open(start(&[])), "");
    assert!(!unlimited.head.contains("ratelimit"), "{}", unlimited.head);
}

#[test]
fn no_request_costs_more_than_the_burst() {
    let slow = start(&[("LOOPWRIGHT_RATE", "1"), ("LOOPWRIGHT_BURST", "1")]);
    let reply = Socket::open(slow).post("/v1/loop-sizing", JSON, costly().as_bytes());
    assert_eq!(reply.status, 200, "{}", reply.body);
}

#[test]
fn a_large_body_is_read_before_the_refusal() {
    let slow = start(&[("LOOPWRIGHT_RATE", "1"), ("LOOPWRIGHT_BURST", "1")]);
    let mut socket = Socket::open(slow);
    let refused = (0..100).any(|_| socket.post("/v1/loop-sizing", JSON, &vec![b' '; 60_000]).status == 429);
    assert!(refused, "a hundred large bodies are no limit");
    let endless = "POST /v1/loop-sizing HTTP/1.1\r\nhost: loops\r\ncontent-length: 900000000\r\n\r\n";
    let hasty = start(&[("LOOPWRIGHT_RATE", "1"), ("LOOPWRIGHT_BURST", "1"), ("LOOPWRIGHT_DEADLINE", "0.2 s")]);
    let ended = (0..20).any(|_| {
        let mut socket = Socket::open(hasty);
        socket.send(endless);
        let reply = socket.read(&Method::POST, "/v1/loop-sizing");
        assert!(socket.is_ended(), "a half-read connection is kept behind {}", reply.status);
        reply.status == 429
    });
    assert!(ended, "a body without end is never refused for its rate");
}

#[test]
fn an_item_of_a_batch_is_a_request() {
    let slow = start(&[("LOOPWRIGHT_RATE", "1"), ("LOOPWRIGHT_BURST", "50")]);
    let mut socket = Socket::open(slow);
    let mut ask = |items| socket.post("/v1/installation-plan/batch", JSON, batch(items).as_bytes());
    assert_eq!(ask(30).status, 200);
    let refused = ask(45);
    assert_eq!((refused.status, &refused.body["code"]), (429, &json!("rate_limited")));
    let wait = refused.head.split("retry-after: ").nth(1).unwrap().split("\r\n").next().unwrap();
    assert!(wait.parse::<u64>().unwrap() > 5, "45 requests after 30 of a burst of 50 come back in {wait} s");
    for items in [6, 7, 150] {
        let slow = start(&[("LOOPWRIGHT_RATE", "1"), ("LOOPWRIGHT_BURST", "5")]);
        let never = Socket::open(slow).post("/v1/installation-plan/batch", JSON, batch(items).as_bytes());
        let fault = &never.body["errors"][0];
        assert_eq!((never.status, &fault["pointer"], &fault["code"]), (422, &json!("#/items"), &json!("list_size")));
        assert_eq!(fault["hint"], "Send at most 5 items.");
    }
}

#[test]
fn a_batch_that_comes_back_when_it_is_told_to_is_answered() {
    let slow = start(&[("LOOPWRIGHT_RATE", "4"), ("LOOPWRIGHT_BURST", "8")]);
    let mut socket = Socket::open(slow);
    let mut ask = || socket.post("/v1/installation-plan/batch", JSON, batch(8).as_bytes());
    assert_eq!(ask().status, 200);
    // The first refusal may be for the request alone, the second knows the items.
    let answered = (0..3).any(|_| {
        let reply = ask();
        if reply.status == 429 {
            let wait = reply.head.split("retry-after: ").nth(1).unwrap().split("\r\n").next().unwrap();
            std::thread::sleep(std::time::Duration::from_secs(wait.parse().unwrap()));
        }
        reply.status == 200
    });
    assert!(answered, "three times the wait was not enough");
}

#[test]
fn a_forwarded_address_counts_only_behind_a_trusted_proxy() {
    let settings = [("LOOPWRIGHT_RATE", "1"), ("LOOPWRIGHT_BURST", "3")];
    let trusting = start(&[settings[0], settings[1], ("LOOPWRIGHT_TRUSTED_PROXIES", "127.0.0.0/8, ::1")]);
    let mut socket = Socket::open(trusting);
    until_refused(&mut socket, "x-forwarded-for: 192.0.2.1\r\n", 500);
    assert_eq!(size(&mut socket, "x-forwarded-for: 192.0.2.2\r\n").status, 200, "another caller pays for the first");
    // What stands before the last address is the caller's own word.
    let (answered, _) = until_refused(&mut socket, "x-forwarded-for: 203.0.113.5, 192.0.2.2\r\n", 500);
    assert!(answered >= 2, "{answered}");

    let wary = start(&settings);
    let mut socket = Socket::open(wary);
    let refused =
        (0..500).any(|index| size(&mut socket, &format!("x-forwarded-for: 192.0.2.{index}\r\n")).status == 429);
    assert!(refused, "anyone may name an address of their own");
}
