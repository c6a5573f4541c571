//! The README keeps its word: its calls answer what it shows, its table of jobs is what the service sizes, its settings exist.

use serde_json::{Value, json};

use super::harness::{calculate, post};

const README: &str = include_str!("../../README.md");

/// The text of fenced blocks of a language, in order.
fn blocks(language: &str) -> Vec<&'static str> {
    let fence = format!("```{language}\n");
    README.split(fence.as_str()).skip(1).map(|rest| rest.split("```").next().unwrap()).collect()
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
    let is_answered = |block: &&str| block.starts_with("curl") && !block.contains(" -o ");
    let calls: Vec<_> = blocks("sh").into_iter().filter(is_answered).collect();
    let answers = blocks("json");
    assert!(calls.len() >= 2 && calls.len() == answers.len(), "{} calls, {} answers", calls.len(), answers.len());
    for (call, answer) in calls.into_iter().zip(answers) {
        let (path, body) = read_call(call);
        let shown: Value = serde_json::from_str(answer).unwrap();
        let answered = post(path, body).body;
        assert!(shows(&shown, &answered), "README shows {shown:#}\nbut {path} answers {answered:#}");
    }
}

/// The path and the body of a call.
fn read_call(call: &str) -> (&str, &str) {
    let path = call.split("127.0.0.1:8080").nth(1).unwrap().split_whitespace().next().unwrap();
    (path, call.split("-d '").nth(1).unwrap().split('\'').next().unwrap())
}

#[test]
fn every_call_that_writes_a_file_gets_a_drawing() {
    let calls: Vec<_> = blocks("sh").into_iter().filter(|block| block.contains(" -o ")).collect();
    assert!(!calls.is_empty(), "the README draws nothing");
    for call in calls {
        let (path, body) = read_call(call);
        let answer = post(path, body);
        assert_eq!((answer.status, answer.header("content-type")), (200, "image/svg+xml"), "{call}");
        assert!(answer.body.as_str().unwrap().starts_with("<svg "), "{call}");
    }
}

/// A row of the table of jobs, from the answer for its first loop that holds the gate, or its only one.
fn row(job: &str, request: &Value) -> String {
    let report = calculate("loop-sizing", request).body;
    let loops = report["loops"].as_array().unwrap_or_else(|| panic!("{report:#}"));
    let holds = |sized: &&Value| ["obstruction_outside", "closing"].contains(&sized["role"].as_str().unwrap());
    let sized = loops.iter().find(holds).unwrap_or(&loops[0]);
    let vehicles: Vec<_> = sized["vehicles"]
        .as_array()
        .unwrap()
        .iter()
        .map(|seen| {
            format!(
                "`{}` {} % ({} ×)",
                seen["vehicle"].as_str().unwrap(),
                seen["change_percent"],
                seen["times_threshold"]
            )
        })
        .collect();
    let stops: Vec<_> = report["findings"]
        .as_array()
        .unwrap()
        .iter()
        .filter(|finding| finding["level"] == "stop")
        .map(|finding| format!("`{}`", finding["code"].as_str().unwrap()))
        .collect();
    format!(
        "| {job} | {} × {} ft, {} turns, {} µH | {} | {} |",
        sized["along_travel"]["ft"],
        sized["across_lane"]["ft"],
        sized["turns"],
        sized["electrical"]["terminal_inductance_uh"],
        vehicles.join(", "),
        if stops.is_empty() { "none".to_owned() } else { stops.join(", ") },
    )
}

#[test]
fn the_table_of_jobs_is_what_the_service_sizes() {
    let jobs = [
        ("24 ft sliding gate, usual vehicles", json!({ "opening": { "width": "24 ft", "barrier": "slide_gate" } })),
        (
            "12 ft drive-through, presence, cars and pickups",
            json!({ "opening": { "width": "12 ft", "barrier": "none" }, "roles": ["presence"],
                    "vehicles": ["passenger_car", "pickup"] }),
        ),
        (
            "40 ft sliding gate, cars",
            json!({ "opening": { "width": "40 ft", "barrier": "slide_gate" }, "vehicles": ["passenger_car"] }),
        ),
        (
            "10 ft barrier arm, cars and small motorcycles",
            json!({ "opening": { "width": "10 ft", "barrier": "barrier_arm" },
                    "vehicles": ["passenger_car", "small_motorcycle"] }),
        ),
        (
            "16 ft pair of swing gates, usual vehicles",
            json!({ "opening": { "width": "16 ft", "barrier": "swing_gate_pair" } }),
        ),
    ];
    for (job, request) in jobs {
        let row = row(job, &request);
        assert!(README.contains(&row), "README should have the row\n{row}");
    }
}

#[test]
fn every_setting_is_listed() {
    for name in loopwright::settings::VARIABLES {
        assert!(README.contains(&format!("| `{name}` |")), "README does not list {name}");
    }
}
