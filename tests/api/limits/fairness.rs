//! Calculations that take long: they wait their turn, callers in turn, and nothing else waits for them. No test reads the clock: what
//! is compared is the order and the number of answers.

use std::io::{Read, Write};
use std::net::SocketAddr;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

use reqwest::Method;
use serde_json::json;

use super::super::harness::{metric, send, start, start_both, wait_until_in_work};
use super::super::instance::Instance;
use super::super::requests::loop_characteristics;
use super::super::socket::Socket;
use super::{JSON, batch, costly, heavy_batch};

const PATH: &str = "/v1/loop-sizing";
const BATCH: &str = "/v1/installation-plan/batch";

fn begin(socket: &mut Socket, path: &str, body: &str) {
    socket.send(format!("POST {path} HTTP/1.1\r\nhost: loops\r\n{JSON}content-length: {}\r\n\r\n{body}", body.len()));
}

/// Begins so many costly requests of a caller, each on a connection of its own.
fn begin_costly(caller: [u8; 4], address: SocketAddr, count: usize) -> Vec<Socket> {
    let mut sockets: Vec<_> = (0..count).map(|_| Socket::open_as(caller, address)).collect();
    let asked = costly();
    for socket in &mut sockets {
        begin(socket, PATH, &asked);
    }
    sockets
}

/// An instance that computes one thing at a time, and the address of its counters.
fn one_thread(settings: &[(&str, &str)]) -> (SocketAddr, SocketAddr) {
    let usual = [("LOOPWRIGHT_COMPUTE_THREADS", "1"), ("LOOPWRIGHT_METRICS_LISTEN", "127.0.0.1:0")];
    let (address, metrics) = start_both(&[&usual[..], settings].concat());
    (address, metrics.unwrap())
}

const FIRST: [u8; 4] = [127, 0, 0, 1];
const SECOND: [u8; 4] = [127, 0, 0, 2];

#[test]
fn a_full_queue_says_so_and_what_takes_no_time_is_answered_beside_it() {
    let (small, _) = one_thread(&[("LOOPWRIGHT_IN_FLIGHT", "2"), ("LOOPWRIGHT_QUEUE_DEADLINE", "60 s")]);
    let mut asked = begin_costly(FIRST, small, 12);
    let mut other = Socket::open(small);
    assert_eq!(other.post("/v1/loop-characteristics", JSON, loop_characteristics().to_string().as_bytes()).status, 200);
    for path in ["/health/live", "/health/ready", "/v1/reference/roles"] {
        assert_eq!(send(small, &Method::GET, path, &[]).status, 200, "{path}");
    }
    let replies: Vec<_> = asked.iter_mut().map(|socket| socket.read(&Method::POST, PATH)).collect();
    let refused: Vec<_> = replies.iter().filter(|reply| reply.status == 503).collect();
    let answered = replies.iter().filter(|reply| reply.status == 200).count();
    // Two wait, and one is computed unless all came before it was taken; more are answered only as places come free.
    assert!(answered >= 2 && !refused.is_empty() && answered + refused.len() == 12, "{answered} of 12 are answered");
    for reply in refused {
        assert_eq!(reply.body["code"], json!("overloaded"));
        assert!(reply.head.contains("retry-after: 1\r\n"), "{}", reply.head);
    }
}

#[test]
fn callers_take_turns() {
    let (small, metrics) = one_thread(&[("LOOPWRIGHT_QUEUE_DEADLINE", "120 s")]);
    let many = begin_costly(FIRST, small, 16);
    wait_until_in_work(metrics, 16);
    let few = begin_costly(SECOND, small, 2);
    let ended = AtomicUsize::new(0);
    let last_of = |sockets: Vec<Socket>| {
        let read = |mut socket: Socket| {
            assert_eq!(socket.read(&Method::POST, PATH).status, 200);
            ended.fetch_add(1, Ordering::SeqCst)
        };
        thread::scope(|scope| {
            let readers: Vec<_> = sockets.into_iter().map(|socket| scope.spawn(|| read(socket))).collect();
            readers.into_iter().map(|reader| reader.join().unwrap()).max().unwrap()
        })
    };
    let (last_of_few, last_of_many) = thread::scope(|scope| {
        let many = scope.spawn(|| last_of(many));
        (last_of(few), many.join().unwrap())
    });
    assert_eq!(last_of_many, 17);
    // In turn the second caller's two are done when the first has had two more and the one in work; some may have ended before they came.
    assert!(last_of_few <= 12, "the second caller waits behind {last_of_few} answers");
}

#[test]
fn what_its_caller_has_left_is_not_computed() {
    let (small, metrics) = one_thread(&[("LOOPWRIGHT_QUEUE_DEADLINE", "60 s")]);
    let asked = begin_costly(FIRST, small, 40);
    wait_until_in_work(metrics, 40);
    drop(asked);
    wait_until_in_work(metrics, 0);
    let abandoned = metric(metrics, "loopwright_computations_abandoned_total");
    assert!(abandoned >= 30, "of 40 requests whose caller left, {abandoned} were given up");
    assert_eq!(begin_costly(SECOND, small, 1)[0].read(&Method::POST, PATH).status, 200);
}

#[test]
fn a_request_that_has_waited_too_long_is_refused() {
    let (small, _) = one_thread(&[("LOOPWRIGHT_QUEUE_DEADLINE", "0.05 s")]);
    let mut asked = begin_costly(FIRST, small, 40);
    let statuses: Vec<_> = asked.iter_mut().map(|socket| socket.read(&Method::POST, PATH).status).collect();
    assert!(statuses.contains(&200) && statuses.contains(&503), "{statuses:?}");
}

#[test]
fn a_batch_that_is_hung_up_ends_at_the_next_item() {
    let (small, metrics) = one_thread(&[("LOOPWRIGHT_BATCHES_IN_FLIGHT", "1")]);
    let mut caller = Socket::open_narrow(small);
    begin(&mut caller, BATCH, &heavy_batch());
    caller.wait_for_the_first_byte();
    drop(caller);
    let mut next = Socket::open(small);
    assert!((0..10_000).any(|_| next.post(BATCH, JSON, batch(1).as_bytes()).status == 200), "the place stays taken");
    let computed = metric(metrics, "loopwright_batch_items_total{status=\"200\"}");
    assert!(computed < 60, "{computed} of 120 items were computed for a caller that has left");
}

#[test]
fn items_beyond_the_largest_answer_are_refused_one_by_one() {
    let small = start(&[("LOOPWRIGHT_BATCH_ANSWER_LIMIT", "1"), ("LOOPWRIGHT_COMPUTE_THREADS", "2")]);
    let reply = Socket::open(small).post(BATCH, JSON, batch(9).as_bytes());
    assert_eq!((reply.status, &reply.body["succeeded"], &reply.body["failed"]), (200, &json!(4), &json!(5)));
    let last = &reply.body["results"][8];
    assert_eq!((&last["id"], &last["status"]), (&json!("8"), &json!(503)));
    let detail = last["problem"]["detail"].as_str().unwrap();
    assert!(detail.ends_with("Send it again, in another batch."), "{detail}");
}

#[test]
fn probes_have_an_address_of_their_own_where_they_are_told_to() {
    let instance = Instance::start(&[("LOOPWRIGHT_PROBE_LISTEN", "127.0.0.1:0")]);
    let probes = instance.probes.expect("the log names no address of the probes");
    for path in ["/health/live", "/health/ready"] {
        assert_eq!(send(probes, &Method::GET, path, &[]).status, 200, "{path}");
        assert_eq!(send(instance.address, &Method::GET, path, &[]).status, 200, "{path}");
    }
    assert_eq!(send(probes, &Method::GET, "/openapi.json", &[]).status, 404);
}

#[test]
fn what_was_accepted_before_a_stop_is_answered() {
    let settings = [
        ("LOOPWRIGHT_COMPUTE_THREADS", "1"),
        ("LOOPWRIGHT_QUEUE_DEADLINE", "120 s"),
        ("LOOPWRIGHT_STOP_TIMEOUT", "120 s"),
        ("LOOPWRIGHT_DRAIN_DELAY", "0 s"),
        ("LOOPWRIGHT_METRICS_LISTEN", "127.0.0.1:0"),
    ];
    let instance = Instance::start(&settings);
    let mut asked = begin_costly(FIRST, instance.address, 30);
    wait_until_in_work(instance.metrics.unwrap(), 30);
    instance.terminate();
    let statuses: Vec<_> = asked.iter_mut().map(|socket| socket.read(&Method::POST, PATH).status).collect();
    assert_eq!(statuses, [200; 30]);
    instance.end();
}

#[test]
fn a_connection_with_far_too_many_requests_before_their_answers_is_cut() {
    let (small, _) = one_thread(&[]);
    let body = costly();
    let padding = " ".repeat(2000);
    let length = body.len() + padding.len();
    let one = format!("POST {PATH} HTTP/1.1\r\nhost: loops\r\n{JSON}content-length: {length}\r\n\r\n{body}{padding}");
    let mut stream = std::net::TcpStream::connect(small).unwrap();
    stream.set_write_timeout(Some(std::time::Duration::from_secs(60))).unwrap();
    // It is cut while it is written or while it is read; either end is an error or an early end here.
    let mut answers = Vec::new();
    let _ = stream.write_all(one.repeat(400).as_bytes()).and_then(|()| stream.read_to_end(&mut answers).map(|_| ()));
    let answered = String::from_utf8_lossy(&answers).matches("HTTP/1.1 200").count();
    assert!(answered < 50, "{answered} of 400 requests were answered on one connection");
}

#[test]
fn a_connection_with_far_too_many_requests_behind_a_batch_is_cut() {
    let (small, metrics) = one_thread(&[]);
    let body = heavy_batch();
    let batch = format!("POST {BATCH} HTTP/1.1\r\nhost: loops\r\n{JSON}content-length: {}\r\n\r\n{body}", body.len());
    let next = format!("GET /health/live HTTP/1.1\r\nhost: loops\r\nx-padding: {}\r\n\r\n", "a".repeat(8000));
    let mut stream = std::net::TcpStream::connect(small).unwrap();
    stream.set_write_timeout(Some(std::time::Duration::from_secs(60))).unwrap();
    stream.write_all(batch.as_bytes()).unwrap();
    let mut answer = Vec::new();
    let _ = stream.write_all(next.repeat(100).as_bytes()).and_then(|()| stream.read_to_end(&mut answer).map(|_| ()));
    let answered = metric(metrics, "loopwright_batch_items_total{status=\"200\"}");
    assert!(answered < 120, "all {answered} items were answered before a flood of requests");
}
