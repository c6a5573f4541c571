//! The job sheet: one page that says what the plan says, what stops the job first, without script or outside references.
//!
//! That it prints on two pages is counted in a browser by `tests/drawings/print`.

use std::collections::BTreeSet;

use reqwest::Method;
use roxmltree::{Document, Node, ParsingOptions};
use serde_json::{Value, json};

use super::drawings::POLICY;
use super::harness::{calculate, client, description, post, send, shared};
use super::requests::{with, without};

const PATH: &str = "/v1/installation-plan/job-sheet";

/// A published example of the plan.
fn example(name: &str) -> Value {
    let content = &description()["paths"]["/v1/installation-plan"]["post"]["requestBody"]["content"];
    content["application/json"]["examples"][name]["value"].clone()
}

fn examples() -> [Value; 3] {
    ["yard_gate_in_january", "barrier_lane", "cafe_drive_through"].map(example)
}

fn print(request: &Value) -> String {
    let answer = post(PATH, request.to_string());
    assert_eq!(answer.status, 200, "{request}: {:#}", answer.body);
    answer.body.as_str().unwrap().to_owned()
}

/// The page as a tree: every element of it is closed.
fn parse(page: &str) -> Document<'_> {
    let options = ParsingOptions { allow_dtd: true, ..ParsingOptions::default() };
    Document::parse_with_options(page, options).unwrap_or_else(|error| panic!("{error}: {page}"))
}

/// What a part of the page reads, style sheets aside, with plain spaces.
fn words(node: Node<'_, '_>) -> String {
    let is_read = |text: &Node<'_, '_>| text.ancestors().all(|element| element.tag_name().name() != "style");
    let texts: String =
        node.descendants().filter(|node| node.is_text() && is_read(node)).filter_map(|text| text.text()).collect();
    texts.replace('\u{a0}', " ")
}

fn element<'a>(page: &'a Document<'_>, name: &str) -> Node<'a, 'a> {
    page.descendants().find(|node| node.has_tag_name(name)).unwrap_or_else(|| panic!("no {name}"))
}

/// The section of a heading.
fn section<'a>(page: &'a Document<'_>, heading: &str) -> Node<'a, 'a> {
    let is_it = |node: &Node<'_, '_>| node.has_tag_name("h2") && words(*node).starts_with(heading);
    page.descendants().find(is_it).and_then(|node| node.parent()).unwrap_or_else(|| panic!("no section {heading}"))
}

fn texts<'a>(list: &'a Value, key: &str) -> Vec<&'a str> {
    list.as_array().unwrap().iter().map(|item| item[key].as_str().unwrap()).collect()
}

#[test]
fn the_sheet_says_what_the_plan_says() {
    for request in examples() {
        let report = calculate("installation-plan", &request).body;
        let text = print(&request);
        let page = parse(&text);
        let all = words(element(&page, "body"));
        for (list, key) in [("cautions", "message"), ("steps", "label")] {
            for text in texts(&report[list], key) {
                assert!(all.contains(text), "the sheet lacks {text:?}");
            }
        }
        let weighty = report["findings"].as_array().unwrap().iter().filter(|finding| finding["level"] != "note");
        // Prices are no matter of the site.
        for finding in
            weighty.filter(|finding| !["unpriced", "price_key_unknown"].contains(&finding["code"].as_str().unwrap()))
        {
            assert!(all.contains(finding["message"].as_str().unwrap()), "the sheet lacks {finding}");
        }
        let load = words(section(&page, "Load"));
        let items = report["materials"]["items"].as_array().unwrap();
        for (index, item) in items.iter().enumerate() {
            // What is said of the first size of a thing holds for the others, which have their size as a tape reads it.
            let is_told = items[..index].iter().any(|other| other["item"] == item["item"]);
            let quantity = item["quantity"].to_string();
            assert!(load.contains(&quantity), "{item} is not loaded: {load}");
            assert!(is_told || load.contains(item["how"].as_str().unwrap()), "{item} is not loaded: {load}");
        }
        let loops = report["sizing"]["loops"].as_array().unwrap();
        assert_eq!(section(&page, "Cut").descendants().filter(|node| node.has_tag_name("tr")).count(), loops.len() + 1);
        for pair in report["detector"]["neighbours"].as_array().into_iter().flatten() {
            let Some(easiest) = pair["actions"].get(0) else { continue };
            assert!(all.contains(easiest["message"].as_str().unwrap()), "the sheet lacks {easiest}");
        }
        let engine = report["basis"]["engine"].as_str().unwrap();
        assert!(words(element(&page, "footer")).ends_with(&format!("Loopwright {engine}")));
        for heading in ["Assumed", "Wind", "Seal and open", "Steps"] {
            section(&page, heading);
        }
    }
}

#[test]
fn every_reading_has_its_limits_and_a_blank_cell_for_each_stage() {
    let mut met = 0;
    for request in examples() {
        let report = calculate("installation-plan", &request).body;
        let text = print(&request);
        let page = parse(&text);
        let Some(readings) = report["commissioning"]["readings"].as_array() else { continue };
        let measure = section(&page, "Measure");
        let blanks =
            measure.descendants().filter(|node| node.has_tag_name("td") && node.attribute("class") == Some("blank"));
        let blanks: Vec<_> = blanks.map(words).collect();
        let count = |reading: &Value| {
            let sized =
                report["sizing"]["loops"].as_array().unwrap().iter().find(|sized| sized["role"] == reading["label"]);
            sized.unwrap()["count"].as_u64().unwrap() as usize * reading["stages"].as_array().unwrap().len()
        };
        assert_eq!(blanks.len(), readings.iter().map(count).sum::<usize>());
        assert!(blanks.iter().all(String::is_empty), "{blanks:?}");
        let said = words(measure);
        for reading in readings {
            for key in ["low", "high", "at_least", "at_most"] {
                let Some(number) = reading[key].as_f64() else { continue };
                assert!(said.contains(&number.to_string()), "{key} of {reading} is not said: {said}");
                met += 1;
            }
        }
        let trials = words(section(&page, "Try"));
        for label in texts(&report["commissioning"]["trials"], "label") {
            assert!(trials.contains(label), "{label} is not tried");
        }
    }
    assert!(met > 30, "the examples measure nothing");
}

#[test]
fn milestones_and_windows_are_those_of_the_cure() {
    let stopped = print(&example("yard_gate_in_january"));
    let seal = words(section(&parse(&stopped), "Seal and open"));
    assert!(seal.contains("Do not apply: ") && seal.contains("at no time until"), "{seal}");
    assert!(!seal.contains("Earliest"), "a start that is forbidden has no times: {seal}");
    // A dry and mild day, with rain that falls until 08:00.
    let rows: Vec<_> = (0..24)
        .map(|hour| {
            json!({
                "time": format!("2026-05-20T{hour:02}:00:00-04:00"), "air": "70 °F", "surface": "75 °F",
                "relative_humidity_percent": 60, "precipitation_probability_percent": if hour == 7 { 90 } else { 0 }
            })
        })
        .collect();
    let rained = without(&with(&example("yard_gate_in_january"), "/weather/conditions", rows), "/surface_condition");
    let rained = without(&with(&rained, "/start", "2026-05-20T09:00:00-04:00"), "/needed_open_by");
    let rained = with(&rained, "/sealant/made_on", "2026-01-20");
    let cure = &calculate("installation-plan", &rained).body["cure"];
    let text = print(&rained);
    let seal = words(section(&parse(&text), "Seal and open"));
    let time = |value: &Value| value.as_str().unwrap()[..16].replace('T', " ");
    assert!(seal.contains("Wait: ") && seal.contains("Begin: 2026-05-20 10:00 to "), "{seal}");
    assert!(seal.contains("Begun 2026-05-20 10:00, last foot sealed"), "{seal}");
    assert_eq!(cure["milestones"].as_array().unwrap().len(), 4);
    for reached in cure["milestones"].as_array().unwrap() {
        for key in ["earliest", "latest"] {
            assert!(seal.contains(&time(&reached[key])), "{reached} is not said: {seal}");
        }
    }
}

#[test]
fn what_stops_the_job_stands_before_everything_else() {
    let sealing = example("yard_gate_in_january");
    let building = with(
        &json!({ "opening": { "width": "16 ft", "barrier": "swing_gate" } }),
        "/roles",
        json!(["obstruction_outside", "obstruction_inside"]),
    );
    for request in [sealing, building] {
        let report = calculate("installation-plan", &request);
        assert!(!report.findings("stop").is_empty());
        let text = print(&request);
        let page = parse(&text);
        let first = element(&page, "body").descendants().find(|node| node.has_tag_name("section")).unwrap();
        assert_eq!(first.attribute("class"), Some("stop"));
        let said = words(first);
        assert!(said.starts_with("Do not build as planned"), "{said}");
        for finding in report.body["findings"].as_array().unwrap().iter().filter(|finding| finding["level"] == "stop") {
            assert!(said.contains(finding["message"].as_str().unwrap()), "{finding} does not stand first: {said}");
        }
    }
    let sound = json!({ "opening": { "width": "24 ft", "barrier": "slide_gate" } });
    assert!(calculate("installation-plan", &sound).findings("stop").is_empty());
    assert!(!print(&sound).contains("Do not build"));
}

#[test]
fn the_page_has_no_script_or_outside_reference_and_its_ids_are_unique() {
    for request in examples() {
        let text = print(&request);
        let page = parse(&text);
        let mut ids = BTreeSet::new();
        for node in page.descendants().filter(Node::is_element) {
            let name = node.tag_name().name();
            let acts = [
                "script",
                "iframe",
                "object",
                "embed",
                "form",
                "link",
                "base",
                "a",
                "img",
                "image",
                "use",
                "foreignObject",
            ];
            assert!(!acts.contains(&name), "the page holds {name}");
            for attribute in node.attributes() {
                let name = attribute.name();
                assert!(
                    !name.starts_with("on") && !name.contains("href") && name != "src" && name != "style",
                    "{name}"
                );
                assert!(name != "id" || ids.insert(attribute.value().to_owned()), "{} twice", attribute.value());
            }
        }
        assert!(ids.contains("plan-title"), "no plan: {ids:?}");
        assert!(!text.contains("url(") && !text.contains("@import"), "the page reaches out");
        // The only addresses are the names of the drawings' language.
        assert_eq!(text.matches("http").count(), text.matches("xmlns=\"http://www.w3.org/2000/svg\"").count());
        assert!(text.contains("@media screen and (prefers-color-scheme:dark)") && text.contains("@media print"));
    }
}

#[test]
fn what_callers_write_stays_text() {
    let hostile = "</style></svg><script>alert('&amp;')</script>\u{0}\u{202e}<!--\"";
    let shown = "</style></svg><script>alert('&amp;')</script>\u{fffd}\u{fffd}<!--\"";
    let stock = json!([{ "sku": hostile, "along_travel": "6 ft", "across_lane": "20 ft", "lead_in_length": "60 ft" }]);
    let request = with(&json!({ "opening": { "width": "24 ft", "barrier": "slide_gate" } }), "/stock", stock);
    let agency = json!({ "agency": hostile, "slot_width": "1/2 in" });
    let with_agency = with(&with(&request, "/agency_minimum", agency), "/slot", json!({ "width": "3/16 in" }));
    let report = calculate("installation-plan", &with_agency).body;
    assert_eq!(report["sizing"]["loops"][0]["stock_choice"]["sku"], hostile, "it is not chosen at all");
    let text = print(&with_agency);
    let page = parse(&text);
    assert!(page.descendants().all(|node| node.tag_name().name() != "script" && !node.is_comment()));
    assert!(words(section(&page, "Wind")).contains(shown), "the stock number is not said");
    assert!(words(section(&page, "Warnings")).contains(shown), "the agency is not said");
}

#[test]
fn lengths_stand_in_the_callers_system() {
    for (width, own, other) in [("24 ft", "20 ft", "6.1 m"), ("7.2 m", "6 m", "19 ft 8 in")] {
        let text = print(&json!({ "opening": { "width": width, "barrier": "slide_gate" } }));
        let page = parse(&text);
        let table = words(section(&page, "Cut").descendants().find(|node| node.has_tag_name("table")).unwrap());
        assert!(table.contains(own) && !table.contains(other), "{table}");
    }
}

#[test]
fn the_page_is_sent_as_what_it_is_whatever_is_accepted() {
    let body = json!({ "opening": { "width": "24 ft", "barrier": "slide_gate" } }).to_string();
    let ask = |media: &str, accept: &str| {
        let request = client().post(format!("http://{}{PATH}", shared())).header("content-type", media.to_owned());
        request.header("accept", accept.to_owned()).body(body.clone()).send().unwrap()
    };
    for accept in ["application/json", "image/svg+xml", "*/*"] {
        let answer = ask("application/json", accept);
        assert_eq!(answer.status(), 200);
        let header = |name: &str| answer.headers()[name].to_str().unwrap().to_owned();
        assert_eq!(header("content-type"), "text/html; charset=utf-8");
        assert_eq!(header("cache-control"), "no-store");
        assert_eq!(header("x-content-type-options"), "nosniff");
        assert_eq!(header("content-security-policy"), POLICY);
    }
    assert_eq!(ask("text/plain", "*/*").status(), 415);
    let get = send(shared(), &Method::GET, PATH, &[]);
    assert_eq!((get.status, get.header("allow")), (405, "POST"));
}

#[test]
fn a_request_that_cannot_be_planned_is_refused_as_the_plan_refuses_it() {
    let wrong = with(&example("barrier_lane"), "/lead_in/length", "24").to_string();
    for (body, status) in [("{".to_owned(), 400), ("{}".to_owned(), 422), (wrong, 422), (" ".repeat(300_000), 413)] {
        let (printed, planned) = (post(PATH, body.clone()), post("/v1/installation-plan", body));
        assert_eq!((printed.status, planned.status), (status, status));
        assert_eq!(printed.body["errors"], planned.body["errors"]);
        assert_eq!(printed.header("content-type"), "application/problem+json");
    }
}

#[test]
fn the_page_is_described_as_taking_what_the_plan_takes_and_failing_as_it_fails() {
    let operation = |path: &str| &description()["paths"][path]["post"];
    let (printed, planned) = (operation(PATH), operation("/v1/installation-plan"));
    assert_eq!(printed["operationId"], "print_job_sheet");
    assert_eq!(printed["tags"], json!(["drawings"]));
    assert_eq!(printed["requestBody"], planned["requestBody"]);
    let page = json!({ "text/html": { "schema": { "type": "string", "format": "binary" } } });
    assert_eq!(printed["responses"]["200"]["content"], page);
    let statuses = |operation: &'static Value| operation["responses"].as_object().unwrap().keys().collect::<Vec<_>>();
    assert_eq!(statuses(printed), statuses(planned));
    assert!(statuses(printed).iter().any(|status| *status == "504"));
}
