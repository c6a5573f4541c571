//! Keys that stand in pages: good from the pages and for the paths of their entry alone, at a rate for each address.

use std::net::SocketAddr;
use std::sync::LazyLock;

use reqwest::Method;
use serde_json::{Value, json};

use super::harness::{send, start};
use super::instance::Instance;
use super::keys::{File, hash};
use super::requests::loop_characteristics;
use super::socket::{Reply, Socket};

const SHOP: &str = "https://shop.tern-island.example";
const YARD: &str = "https://yard.tern-island.example";
const STRANGER: &str = "https://elsewhere.example";
const LOOP: &str = "/v1/loop-characteristics";
const PLAN: &str = "/v1/drawings/plan";
const BATCH: &str = "/v1/installation-plan/batch";

fn clients() -> Value {
    json!([
        {
            "name": "shop-page", "sha256": [hash("shop-page-key")], "paths": [LOOP, PLAN, BATCH],
            "origins": [SHOP, "https://shop.tern-island.example:8443", "http://localhost:3000"]
        },
        { "name": "yard-page", "sha256": [hash("yard-page-key")], "origins": [YARD], "paths": ["/v1/loop-sizing"] },
        { "name": "office", "sha256": [hash("office-key")], "requests_per_second": 1, "burst": 77 },
        {
            "name": "old-page", "sha256": [hash("old-page-key")], "origins": [SHOP], "paths": [LOOP],
            "not_after": "2026-01-31T00:00:00Z"
        }
    ])
}

/// An instance with these keys.
fn closed() -> SocketAddr {
    static CLOSED: LazyLock<SocketAddr> = LazyLock::new(|| {
        let file = File::new("pages", &clients());
        let closed = start(&[file.setting(), ("LOOPWRIGHT_TRUSTED_PROXIES", "127.0.0.0/8")]);
        // Once it answers, it has read the file.
        send(closed, &Method::GET, "/health/live", &[]);
        closed
    });
    *CLOSED
}

/// Asks with a key, over a raw socket: what is sent is what is written here.
fn ask(address: SocketAddr, method: &str, path: &str, key: &str, headers: &str) -> Reply {
    let body = if ["GET", "HEAD"].contains(&method) { String::new() } else { loop_characteristics().to_string() };
    let mut socket = Socket::open(address);
    let json = format!("content-type: application/json\r\ncontent-length: {}\r\n", body.len());
    socket.send(format!(
        "{method} {path} HTTP/1.1\r\nhost: loops\r\nauthorization: Bearer {key}\r\n{json}{headers}\r\n{body}"
    ));
    let method = Method::from_bytes(method.as_bytes()).unwrap();
    socket.read(&method, path.split('?').next().unwrap())
}

/// Posts with the shop's key from a page of this origin.
fn from(address: SocketAddr, origin: &str, more: &str) -> Reply {
    ask(address, "POST", LOOP, "shop-page-key", &format!("origin: {origin}\r\n{more}"))
}

fn preflight(address: SocketAddr, origin: &str) -> u16 {
    let headers = "authorization,content-type";
    let asked =
        [("origin", origin), ("access-control-request-method", "POST"), ("access-control-request-headers", headers)];
    send(address, &Method::OPTIONS, LOOP, &asked).status
}

fn header<'a>(reply: &'a Reply, name: &str) -> &'a str {
    let value = reply.head.lines().find_map(|line| line.split_once(": ").filter(|(known, _)| *known == name));
    value.map_or("", |(_, value)| value)
}

/// Holds that a key was refused for where it was sent, and gives the detail.
fn refused<'a>(reply: &'a Reply, what: &str) -> &'a str {
    assert_eq!((reply.status, &reply.body["code"]), (403, &json!("key_not_for_here")), "{what}: {}", reply.body);
    assert_eq!(header(reply, "www-authenticate"), "", "{what}: another key would not help");
    reply.body["detail"].as_str().unwrap()
}

#[test]
fn a_key_is_good_on_its_pages_for_its_paths() {
    for origin in [SHOP, "https://shop.tern-island.example:8443", "http://localhost:3000"] {
        let reply = from(closed(), origin, "");
        assert_eq!(reply.status, 200, "{origin}: {}", reply.body);
        assert_eq!(header(&reply, "access-control-allow-origin"), origin);
        assert!(header(&reply, "vary").contains("Origin"), "{}", reply.head);
    }
    let page = format!("origin: {SHOP}\r\n");
    assert_eq!(ask(closed(), "POST", &format!("{LOOP}?lang=es"), "shop-page-key", &page).status, 200);
    // Past the key: the drawing lacks its query.
    assert_eq!(ask(closed(), "GET", PLAN, "shop-page-key", &page).status, 422);
    let sent = [("authorization", "Bearer shop-page-key"), ("origin", SHOP)];
    assert_eq!(send(closed(), &Method::HEAD, PLAN, &sent).status, 422);
}

#[test]
fn no_other_origin_passes() {
    let others = [
        String::new(),
        "origin: \r\n".to_owned(),
        "origin: null\r\n".to_owned(),
        format!("origin: {STRANGER}\r\n"),
        format!("origin: {YARD}\r\n"),
        format!("origin: {SHOP}/\r\n"),
        format!("origin: {SHOP}:8444\r\n"),
        format!("origin: {SHOP}, {SHOP}\r\n"),
        format!("origin: {SHOP}.elsewhere.example\r\n"),
        format!("origin: {SHOP}\r\norigin: {SHOP}\r\n"),
        format!("origin: {SHOP}\r\norigin: {STRANGER}\r\n"),
        format!("origin: {STRANGER}\r\nOrigin: {SHOP}\r\n"),
        format!("referer: {SHOP}/gates\r\n"),
        "origin: https://www.shop.tern-island.example\r\n".to_owned(),
        "origin: https://tern-island.example\r\n".to_owned(),
        "origin: https://Shop.tern-island.example\r\n".to_owned(),
        "origin: HTTPS://shop.tern-island.example\r\n".to_owned(),
        "origin: http://shop.tern-island.example\r\n".to_owned(),
        "origin: http://localhost:3001\r\n".to_owned(),
    ];
    for other in others {
        let reply = ask(closed(), "POST", LOOP, "shop-page-key", &other);
        let detail = refused(&reply, &other);
        assert!(detail.contains("rigin"), "{other}: {detail}");
    }
    let reply = from(closed(), YARD, "");
    assert!(refused(&reply, YARD).contains(&format!("origin {YARD}. The operator")), "{}", reply.body);
    let long = format!("https://{}.example", "a".repeat(5000));
    assert!(refused(&from(closed(), &long, ""), "a long origin").len() < 400);
}

#[test]
fn no_other_path_passes_however_it_is_written() {
    for path in [
        "/v1/%6Coop-characteristics",
        "/v1/loop%2Dcharacteristics",
        "/%761/loop-characteristics",
        "/v1/./loop-characteristics",
        "/v1/drawings/../loop-characteristics",
        "/v1/loop-characteristics/.",
        "/v1/loop-characteristics/",
        "/v1/loop-characteristics%3F",
        "//v1/loop-characteristics",
        "/v1//loop-characteristics",
        "/V1/loop-characteristics",
        "/v1/loop-sizing",
        "/v1/nope",
        "//",
    ] {
        let reply = ask(closed(), "POST", path, "shop-page-key", &format!("origin: {SHOP}\r\n"));
        let detail = refused(&reply, path);
        assert!(detail.contains(&format!("not for the path {path}. ")) && detail.contains("operator"), "{detail}");
    }
}

#[test]
fn no_other_method_passes() {
    for method in ["PUT", "PATCH", "DELETE", "OPTIONS", "post", "TRACE"] {
        let reply = ask(closed(), method, LOOP, "shop-page-key", &format!("origin: {SHOP}\r\n"));
        assert!(refused(&reply, method).contains("GET, HEAD, POST"), "{}", reply.body);
    }
}

#[test]
fn a_refusal_can_be_read_on_the_pages_of_every_key() {
    // Without a key the preflight passes for all of them; the key then decides.
    assert_eq!([SHOP, YARD, STRANGER].map(|origin| preflight(closed(), origin)), [200, 200, 400]);
    let reply = from(closed(), YARD, "x-request-id: job-17\r\naccept-language: es\r\n");
    let detail = refused(&reply, YARD);
    assert!(detail.starts_with("La clave no es para páginas del origen https://yard"), "{detail}");
    for (name, value) in [
        ("access-control-allow-origin", YARD),
        ("content-type", "application/problem+json"),
        ("content-language", "es"),
        ("cache-control", "no-store"),
        ("x-request-id", "job-17"),
    ] {
        assert_eq!(header(&reply, name), value, "{}", reply.head);
    }
    assert!(header(&reply, "vary").contains("Origin"), "{}", reply.head);
    assert!(header(&reply, "access-control-expose-headers").contains("x-request-id"), "{}", reply.head);
    assert_eq!(
        (&reply.body["request_id"], &reply.body["type"]),
        (&json!("job-17"), &json!("/problems/key-not-for-here"))
    );
    let page = send(closed(), &Method::GET, "/problems/key-not-for-here", &[]);
    assert!(page.status == 200 && page.body.as_str().unwrap().contains("Key not for here"), "{}", page.body);

    let stranger = from(closed(), STRANGER, "");
    refused(&stranger, STRANGER);
    assert_eq!(header(&stranger, "access-control-allow-origin"), "");
    let unknown = ask(closed(), "POST", LOOP, "nobody", &format!("origin: {YARD}\r\n"));
    assert_eq!((unknown.status, header(&unknown, "access-control-allow-origin")), (401, YARD));
    let expired = ask(closed(), "POST", LOOP, "old-page-key", &format!("origin: {SHOP}\r\n"));
    assert!(expired.status == 401 && expired.body.to_string().contains("expired"), "{}", expired.body);
    // A secret key from a page is as good as ever.
    assert_eq!(ask(closed(), "POST", LOOP, "office-key", &format!("origin: {STRANGER}\r\n")).status, 200);
}

#[test]
fn the_setting_lists_further_origins_and_opens_no_key() {
    let file = File::new("pages-and-setting", &clients());
    let listed = start(&[file.setting(), ("LOOPWRIGHT_CORS_ORIGINS", STRANGER)]);
    assert_eq!([SHOP, STRANGER, "null"].map(|origin| preflight(listed, origin)), [200, 200, 400]);
    let reply = from(listed, STRANGER, "");
    refused(&reply, STRANGER);
    assert_eq!(header(&reply, "access-control-allow-origin"), STRANGER);
    let open = start(&[file.setting(), ("LOOPWRIGHT_CORS_ORIGINS", "*")]);
    assert_eq!([SHOP, STRANGER].map(|origin| preflight(open, origin)), [200, 200]);
    let reply = from(open, STRANGER, "");
    refused(&reply, STRANGER);
    assert_eq!(header(&reply, "access-control-allow-origin"), "*");
    assert_eq!(from(open, SHOP, "").status, 200);
}

#[test]
fn a_hangup_takes_origins_in_and_out_and_keeps_what_was_counted() {
    let entry = |origins: Value| {
        json!([{
            "name": "shop-page", "sha256": [hash("shop-page-key")], "origins": origins, "paths": [LOOP],
            "requests_per_second": 1, "burst": 500
        }])
    };
    let file = File::new("pages-reload", &entry(json!([SHOP])));
    let mut instance = Instance::start(&[file.setting()]);
    let address = instance.address;
    let statuses = || [SHOP, YARD].map(|origin| (preflight(address, origin), from(address, origin, "").status));
    assert_eq!(statuses(), [(200, 200), (400, 403)]);
    assert!((0..150).all(|_| from(address, SHOP, "").status == 200));
    for (origins, expected) in
        [(json!([SHOP, YARD]), [(200, 200), (200, 200)]), (json!([YARD]), [(400, 403), (200, 200)])]
    {
        file.write(&entry(origins).to_string());
        instance.signal("-HUP");
        instance.wait_for("the keys were read");
        assert_eq!(statuses(), expected);
    }
    let reply = from(address, YARD, "");
    let left = header(&reply, "ratelimit").split("r=").nth(1).and_then(|state| state.split(';').next());
    assert!(left.unwrap().parse::<u32>().unwrap() < 450, "the address has a new burst: {}", reply.head);
    file.write(&entry(json!(["https://Yard.example"])).to_string());
    instance.signal("-HUP");
    instance.wait_for("the keys stay as they were");
    assert_eq!(statuses(), [(400, 403), (200, 200)]);
}

#[test]
fn each_address_has_a_rate_of_its_own() {
    let mut clients = clients();
    clients[0]["requests_per_second"] = json!(1);
    clients[0]["burst"] = json!(3);
    let file = File::new("pages-rate", &clients);
    let behind = |proxies| start(&[file.setting(), ("LOOPWRIGHT_TRUSTED_PROXIES", proxies)]);
    let proxied = behind("127.0.0.0/8");
    let visitor = |address, index: usize| from(address, SHOP, &format!("x-forwarded-for: 192.0.2.{index}\r\n"));
    let first = visitor(proxied, 1);
    assert_eq!(header(&first, "ratelimit-policy"), "\"caller\";q=3;w=3");
    let limited = (0..500).map(|_| visitor(proxied, 1)).find(|reply| reply.status != 200).unwrap();
    assert_eq!((limited.status, header(&limited, "access-control-allow-origin")), (429, SHOP));
    assert_eq!(visitor(proxied, 2).status, 200, "another visitor pays for the first");
    // What stands before the last address is the visitor's own word.
    let own_word = |_| from(proxied, SHOP, "x-forwarded-for: 203.0.113.5, 192.0.2.2\r\n").status;
    assert!((0..500).map(own_word).any(|status| status == 429), "a visitor may name an address of its own");
    // Other keys, and the address without one, have what they had.
    let yard = ask(proxied, "POST", "/v1/loop-sizing", "yard-page-key", &format!("origin: {YARD}\r\n"));
    assert_eq!((yard.status, header(&yard, "ratelimit-policy")), (422, "\"caller\";q=100;w=20"));
    assert_eq!(ask(proxied, "POST", LOOP, "office-key", "").status, 200);

    let direct = behind("10.0.0.0/8");
    assert!((0..500).any(|index| visitor(direct, index % 250).status == 429), "anyone may name an address");
}

#[test]
fn each_address_has_a_share_of_its_own() {
    let file = File::new("pages-share", &clients());
    // A caller may have 256 KiB on their way.
    let limits = [("LOOPWRIGHT_ARRIVING_LIMIT", "1048576"), ("LOOPWRIGHT_TRUSTED_PROXIES", "127.0.0.0/8")];
    let small = start(&[file.setting(), limits[0], limits[1]]);
    let head = |visitor: u8| {
        format!(
            "content-type: application/json\r\nauthorization: Bearer shop-page-key\r\norigin: {SHOP}\r\n\
             x-forwarded-for: 192.0.2.{visitor}\r\n"
        )
    };
    let another = |visitor| Socket::open(small).post(BATCH, &head(visitor), &vec![b' '; 150_000]).status;
    let held = (0..40).find_map(|_| {
        let mut waiting = Socket::open(small);
        waiting.send(format!("POST {BATCH} HTTP/1.1\r\nhost: loops\r\ncontent-length: 250000\r\n{}\r\n", head(1)));
        waiting.send(" ".repeat(200_000));
        // Whichever of the two arrives last is refused.
        (another(1) == 503).then_some(waiting)
    });
    assert!(held.is_some(), "a visitor has more than the share of a caller");
    assert_eq!(another(2), 400, "another visitor pays for the first");
}

#[test]
fn forms_tables_and_messages_need_no_key_and_look_at_none_of_a_page() {
    let get = |path: &str, sent: &[(&str, &str)]| send(closed(), &Method::GET, path, sent);
    let page = ("authorization", "Bearer shop-page-key");
    for path in ["/v1/reference/roles", "/v1/reference/problems", "/v1/reference/messages"] {
        for sent in [&[][..], &[page], &[page, ("origin", SHOP)], &[page, ("origin", STRANGER)]] {
            let answer = get(path, sent);
            // The rate of addresses is off here, that of the key is not.
            assert_eq!((answer.status, answer.header("ratelimit-policy")), (200, ""), "{path} {sent:?}");
        }
        let office = get(path, &[("authorization", "Bearer office-key")]);
        assert_eq!((office.status, office.header("ratelimit-policy")), (200, "\"caller\";q=77;w=77"), "{path}");
        assert_eq!(get(path, &[("authorization", "Bearer nobody")]).status, 200, "{path}");
    }
    for path in ["/v1/forms/loop-sizing", "/v1/forms/installation-plan"] {
        assert_ne!(get(path, &[]).status, 401, "{path}");
    }
    for path in [
        "/v1/reference/%72oles",
        "/v1/reference/roles/",
        "/v1/reference//roles",
        "/v1/reference/",
        "/v1/reference/nope",
        "/v1/reference/../loop-sizing",
        "/v1/forms/%6Coop-sizing",
        "/v1/forms/../loop-sizing",
    ] {
        let mut socket = Socket::open(closed());
        socket.send(format!("GET {path} HTTP/1.1\r\nhost: loops\r\n\r\n"));
        assert_eq!(socket.read(&Method::GET, path).status, 401, "{path} leads round the key");
        let reply = ask(closed(), "GET", path, "shop-page-key", &format!("origin: {SHOP}\r\n"));
        refused(&reply, path);
    }
}

#[test]
fn a_link_that_anyone_may_open_still_asks_whether_a_key_is_for_here() {
    let file = File::new("pages-links", &clients());
    let open = start(&[file.setting(), ("LOOPWRIGHT_OPEN_DRAWINGS", "yes")]);
    let link = format!("{PLAN}?width=wide&barrier=slide_gate");
    assert_eq!(send(open, &Method::GET, &link, &[]).status, 422);
    refused(&ask(open, "GET", &link, "shop-page-key", &format!("origin: {STRANGER}\r\n")), "a stranger");
    refused(&ask(open, "GET", &link, "yard-page-key", &format!("origin: {YARD}\r\n")), "another path");
    assert_eq!(ask(open, "GET", &link, "shop-page-key", &format!("origin: {SHOP}\r\n")).status, 422);
}

#[test]
fn the_log_names_the_page_also_where_its_key_is_refused() {
    let file = File::new("pages-log", &clients());
    let instance = Instance::start(&[file.setting()]);
    assert_eq!([SHOP, YARD].map(|origin| from(instance.address, origin, "").status), [200, 403]);
    instance.terminate();
    let log = instance.end();
    let events = log.lines().map(|line| serde_json::from_str::<Value>(line).unwrap());
    let clients: Vec<_> = events.filter(|event| event["message"] == "request").map(|e| e["client"].clone()).collect();
    assert_eq!(clients, ["shop-page", "shop-page"]);
    assert!(!log.contains("shop-page-key"), "{log}");
}

#[test]
fn a_file_that_leaves_a_page_unclear_stops_the_start() {
    let both = [("origins", json!([SHOP])), ("paths", json!([LOOP]))];
    let (together, no_star, no_path) = ("origins and paths go together", "no *", "without a query or a slash");
    for (index, (changes, said)) in [
        (vec![("paths", Value::Null)], "null"),
        (vec![("origins", Value::Null)], "null"),
        (vec![("paths", json!([]))], together),
        (vec![("origins", json!([]))], together),
        (vec![("origins", json!(["*"]))], no_star),
        (vec![("origins", json!([SHOP, "http://shop.tern-island.example"]))], "http://localhost:3000"),
        (vec![("origins", json!(["https://shop.tern-island.example/"]))], "nothing behind"),
        (vec![("paths", json!(["/v1/loop-sizing/"]))], no_path),
        (vec![("paths", json!([LOOP, "/v1/%6Coop-sizing"]))], no_path),
        (vec![("paths", json!(["/v1/loop-sizing?lang=es"]))], no_path),
        (vec![("paths", json!(["/v1/nope"]))], "/v1/nope"),
        (vec![("paths", json!(["/v1/*"]))], no_path),
        (vec![("paths", json!(["/docs/"]))], no_path),
        (vec![("requests_per_second", json!(0))], "requests_per_second takes 1 to"),
    ]
    .into_iter()
    .enumerate()
    {
        let mut entry = json!({ "name": "shop-page", "sha256": [hash("shop-page-key")] });
        for (name, value) in both.iter().chain(&changes) {
            entry[*name] = value.clone();
        }
        refuses_the_start(index, &json!([entry]), said);
    }
    for (index, (name, value)) in both.into_iter().enumerate() {
        let entry = json!({ "name": "shop-page", "sha256": [hash("shop-page-key")], name: value });
        refuses_the_start(100 + index, &json!([entry]), together);
    }
}

fn refuses_the_start(index: usize, content: &Value, said: &str) {
    let file = File::new(&format!("pages-wrong-{index}"), content);
    let output = super::instance::run(&[], &[file.setting(), ("LOOPWRIGHT_LISTEN", "127.0.0.1:0")]);
    let text = String::from_utf8(output.stderr).unwrap();
    assert!(!output.status.success() && text.contains(said) && text.contains("LOOPWRIGHT_KEYS"), "{content}: {text}");
}
