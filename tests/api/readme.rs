//! The README, the guide and the page for operators are true: calls answer what is shown below them, the table of jobs is what
//! the service sizes, every path and every setting is named.

use std::path::Path;

use serde_json::{Value, json};

use super::harness::{Answer, calculate, description, get, post};

const README: &str = include_str!("../../README.md");
const GUIDE: &str = include_str!("../../openapi/GUIDE.md");
const OPERATORS: &str = include_str!("../../deploy/README.md");

/// The pages with calls, and where each lies.
const PAGES: [(&str, &str); 2] = [("README.md", README), ("openapi/GUIDE.md", GUIDE)];

/// The text of fenced blocks of a language, in order.
fn blocks(page: &'static str, language: &str) -> Vec<&'static str> {
    let fence = format!("```{language}\n");
    page.split(fence.as_str()).skip(1).map(|rest| rest.split("```").next().unwrap()).collect()
}

/// The calls of a page: those that print their answer, or those that write it to a file.
fn calls(page: &'static str, into_file: bool) -> Vec<&'static str> {
    let calls = blocks(page, "sh").into_iter().filter(|block| block.starts_with("curl"));
    calls.filter(|block| block.contains(" -o ") == into_file).collect()
}

/// What a call is answered: a POST when it has a body, else a GET.
fn answer(call: &'static str) -> Answer {
    let path = call.split("127.0.0.1:8080").nth(1).unwrap().split_whitespace().next().unwrap().trim_end_matches('\'');
    match call.split_once("-d '") {
        Some((_, body)) => post(path, body.split('\'').next().unwrap()),
        None => get(path),
    }
}

/// Whether everything that is shown stands in the answer: objects may have more members, arrays are whole.
fn shows(shown: &Value, answer: &Value) -> bool {
    match (shown, answer) {
        (Value::Object(shown), Value::Object(answer)) => {
            shown.iter().all(|(key, value)| answer.get(key).is_some_and(|other| shows(value, other)))
        }
        (Value::Array(shown), Value::Array(answer)) => {
            shown.len() == answer.len() && shown.iter().zip(answer).all(|(value, other)| shows(value, other))
        }
        _ => shown == answer,
    }
}

#[test]
fn every_call_answers_what_is_shown_below_it() {
    for ((name, page), least) in PAGES.into_iter().zip([1, 8]) {
        let (calls, answers) = (calls(page, false), blocks(page, "json"));
        let counts = (calls.len(), answers.len());
        assert!(counts.0 >= least && counts.0 == counts.1, "{name}: calls and answers are {counts:?}");
        for (call, shown) in calls.into_iter().zip(answers) {
            let shown: Value = serde_json::from_str(shown).unwrap();
            let answered = answer(call).body;
            assert!(shows(&shown, &answered), "{name}: {call}\nshows {shown:#}\nbut is answered {answered:#}");
        }
    }
}

#[test]
fn every_call_that_writes_a_file_gets_a_drawing() {
    let calls = calls(GUIDE, true);
    assert!(!calls.is_empty(), "the guide draws nothing");
    for call in calls {
        let answer = answer(call);
        assert_eq!((answer.status, answer.header("content-type")), (200, "image/svg+xml"), "{call}");
        assert!(answer.body.as_str().unwrap().starts_with("<svg "), "{call}");
    }
}

#[test]
fn every_path_is_named() {
    for path in description()["paths"].as_object().unwrap().keys() {
        match path.strip_prefix("/v1/reference/") {
            Some(table) => assert!(GUIDE.contains(&format!("`{table}`")), "the guide does not name the table {table}"),
            None => assert!(README.contains(path.as_str()), "README does not name {path}"),
        }
    }
}

#[test]
fn the_readme_stays_short() {
    assert!(README.lines().count() < 200, "README is for newcomers; the guide and deploy/README.md hold the rest");
}

#[test]
fn every_link_leads_to_a_file_and_every_anchor_to_a_heading() {
    let anchor_of = |heading: &str| heading.to_lowercase().replace(' ', "-");
    for (name, page) in PAGES.into_iter().chain([("deploy/README.md", OPERATORS)]) {
        let home = Path::new(env!("CARGO_MANIFEST_DIR")).join(name);
        for link in page.split("](").skip(1).map(|rest| rest.split(')').next().unwrap()) {
            let (file, anchor) = link.split_once('#').unwrap_or((link, ""));
            let target = if file.is_empty() { home.clone() } else { home.parent().unwrap().join(file) };
            assert!(target.exists(), "{name} links to {link}");
            if !anchor.is_empty() {
                let text = std::fs::read_to_string(target).unwrap();
                let mut headings = text.lines().filter_map(|line| line.strip_prefix("## "));
                assert!(headings.any(|heading| anchor_of(heading) == anchor), "{name} links to {link}");
            }
        }
    }
}

/// A row of the table of jobs, from the answer for its first loop that holds the gate, or its only one.
fn row(job: &str, request: &Value) -> String {
    let report = calculate("loop-sizing", request).body;
    let loops = report["loops"].as_array().unwrap_or_else(|| panic!("{report:#}"));
    let holds = |sized: &&Value| {
        ["obstruction_outside", "closing", "between_leaves"].contains(&sized["role"].as_str().unwrap())
    };
    let sized = loops.iter().find(holds).unwrap_or(&loops[0]);
    let threshold = sized["threshold_percent"].as_f64().unwrap();
    let vehicle = |seen: &Value| {
        let least = seen["least_change_percent"].as_f64().unwrap();
        format!("`{}` {least} % ({:.1} ×)", seen["vehicle"].as_str().unwrap(), least / threshold)
    };
    let vehicles: Vec<_> = sized["vehicles"].as_array().unwrap().iter().map(vehicle).collect();
    let is_stop = |finding: &&Value| finding["level"] == "stop";
    assert!(!report["findings"].as_array().unwrap().iter().any(|finding| is_stop(&finding)), "{job}: a stop");
    let warnings = report["findings"].as_array().unwrap().iter().filter(|finding| finding["level"] == "warning");
    let mut warned: Vec<_> = warnings.map(|finding| format!("`{}`", finding["code"].as_str().unwrap())).collect();
    warned.sort();
    warned.dedup();
    format!(
        "| {job} | {} | {}: {} × {} ft, {} turns, {} µH | {threshold} % | {} | {} |",
        loops.len(),
        sized["mark"].as_str().unwrap(),
        sized["along_travel"]["ft"],
        sized["across_lane"]["ft"],
        sized["turns"],
        sized["electrical"]["terminal_inductance_uh"],
        vehicles.join(", "),
        if warned.is_empty() { "none".to_owned() } else { warned.join(", ") },
    )
}

#[test]
fn the_table_of_jobs_is_what_the_service_sizes() {
    let jobs = [
        ("24 ft sliding gate, usual vehicles", json!({ "opening": { "width": "24 ft", "barrier": "slide_gate" } })),
        (
            "40 ft sliding gate, cars, a beam across",
            json!({ "opening": { "width": "40 ft", "barrier": "slide_gate", "seen_otherwise": true },
                    "vehicles": ["passenger_car"] }),
        ),
        (
            "16 ft pair of swing gates, usual vehicles",
            json!({ "opening": { "width": "16 ft", "barrier": "swing_gate_pair" } }),
        ),
        (
            "24 ft swing gate of one leaf, usual vehicles",
            json!({ "opening": { "width": "24 ft", "barrier": "swing_gate" } }),
        ),
        (
            "12 ft barrier arm with a ticket post, usual vehicles",
            json!({ "opening": { "width": "12 ft", "barrier": "barrier_arm" } }),
        ),
        ("12 ft overhead door, usual vehicles", json!({ "opening": { "width": "12 ft", "barrier": "overhead_door" } })),
        (
            "12 ft drive-through, presence, cars and pickups",
            json!({ "opening": { "width": "12 ft", "barrier": "none" }, "roles": ["presence"],
                    "vehicles": ["passenger_car", "pickup"] }),
        ),
    ];
    let rows: Vec<_> = jobs.iter().map(|(job, request)| row(job, request)).collect();
    assert!(rows.iter().all(|row| GUIDE.contains(row)), "the guide should have the rows\n{}", rows.join("\n"));
}

#[test]
fn every_setting_is_listed() {
    for name in loopwright::settings::VARIABLES {
        assert!(OPERATORS.contains(&format!("| `{name}` |")), "deploy/README.md does not list {name}");
    }
}
