//! What to set, whatever was sent.

use serde_json::{Value, json};

use super::{check, connected};
use crate::harness::Answer;

fn with(role: &str, more: Value) -> Answer {
    let mut connected = connected("A", 3, "50 ft", more);
    connected["role"] = json!(role);
    check(&json!({ "loops": [connected] }))
}

fn flat(settings: &Value) -> Value {
    let mut flat = json!({});
    for name in ["output", "presence_time", "on_loop_failure"] {
        if let Some(value) = settings.get(name) {
            flat[name] = value.clone();
        }
    }
    flat
}

#[test]
fn what_is_unsafe_as_sent_is_answered_with_what_to_set() {
    let safe = json!({ "output": "presence", "on_loop_failure": "detect" });
    for (more, code) in [
        (json!({ "output": "pulse" }), "pulse_holds_nothing"),
        (json!({ "presence_time": "10 min" }), "presence_runs_out"),
        (json!({ "on_loop_failure": "no_detect" }), "fails_to_no_detect"),
    ] {
        for role in ["obstruction_outside", "obstruction_inside", "between_leaves", "closing"] {
            let answer = with(role, more.clone());
            assert_eq!(answer.findings("stop"), [code], "{role}");
            let settings = &answer.body["settings"][0];
            assert_eq!((&settings["to_set"], &flat(settings)), (&safe, &safe), "{role}");
            let sent = &settings["as_sent"];
            assert_eq!(sent.as_object().unwrap().len(), 1, "{sent}");
            match more.get("presence_time") {
                Some(_) => assert_eq!(sent["presence_time"]["s"], 600.0),
                None => assert_eq!(*sent, more),
            }
            assert!(settings["failure_consequence"].as_str().unwrap().contains("stays open"), "{settings}");
        }
    }
}

#[test]
fn what_no_gate_depends_on_is_set_as_sent() {
    let sent = json!({ "output": "pulse", "presence_time": "10 min", "on_loop_failure": "detect" });
    for role in ["exit", "arming", "presence"] {
        let settings = &with(role, sent.clone()).body["settings"][0];
        let to_set = &settings["to_set"];
        assert_eq!((&to_set["output"], &to_set["on_loop_failure"]), (&json!("pulse"), &json!("detect")), "{role}");
        assert_eq!(to_set["presence_time"]["s"], 600.0);
        assert_eq!(*to_set, flat(settings));
        assert!(settings.get("as_sent").is_none(), "{settings}");
    }
}

#[test]
fn a_shared_channel_is_set_for_the_loop_that_holds_the_gate() {
    let exit =
        connected("exit", 3, "50 ft", json!({ "role": "exit", "output": "pulse", "on_loop_failure": "no_detect" }));
    let inside = connected("inside", 3, "50 ft", json!({ "role": "obstruction_inside" }));
    let settings = &check(&json!({ "loops": [exit, inside], "wiring": "series" })).body["settings"][0];
    assert_eq!(settings["to_set"], json!({ "output": "presence", "on_loop_failure": "detect" }));
    assert_eq!(settings["as_sent"], json!({ "output": "pulse", "on_loop_failure": "no_detect" }));
}
