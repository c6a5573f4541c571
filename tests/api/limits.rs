//! Every limit of `deploy/LIMITS.md`, over raw sockets: what is answered at it, and what becomes of the connection.

mod crowds;
mod fairness;
mod rates;
mod reading;
mod sizes;
mod times;

use serde_json::{Value, json};

use super::socket::{Reply, Socket};

const PAGE: &str = include_str!("../../deploy/LIMITS.md");

/// The header line of a JSON body.
const JSON: &str = "content-type: application/json\r\n";

/// A sound sizing.
const GATE: &str = "{\"opening\":{\"width\":\"7.2 m\",\"barrier\":\"slide_gate\"}}";

/// Posts a sound sizing on a connection.
fn size(socket: &mut Socket, headers: &str) -> Reply {
    socket.post("/v1/loop-sizing", &format!("{JSON}{headers}"), GATE.as_bytes())
}

/// A sizing that takes as long as any.
fn costly() -> String {
    let roles = ["exit", "obstruction_outside", "obstruction_inside", "between_leaves", "arming", "presence"];
    let vehicles =
        ["passenger_car", "pickup", "high_bed_truck", "tractor_trailer", "bus", "bicycle", "small_motorcycle"];
    json!({
        "opening": { "width": "40 ft", "barrier": "swing_gate_pair" }, "roles": roles, "vehicles": vehicles,
        "detector": { "threshold_percent": 0.001 },
    })
    .to_string()
}

/// A batch of so many small plans.
fn batch(items: usize) -> String {
    let item = |index| {
        format!(
            "{{\"id\":\"{index}\",\"request\":{{\"parts\":[\"commissioning\"],\"opening\":{{\"width\":\"12 ft\",\"barrier\":\"none\"}}}}}}"
        )
    };
    format!("{{\"items\":[{}]}}", (0..items).map(item).collect::<Vec<_>>().join(","))
}

/// A batch whose answer is far more than the buffers of both ends hold.
fn heavy_batch() -> String {
    let plan = include_str!("../../openapi/examples/installation-plan/yard_gate_in_january.request.json");
    let mut plan: Value = serde_json::from_str(plan).unwrap();
    plan["include"] = json!(["drawings"]);
    let items: Vec<_> = (0..120).map(|index| json!({ "id": index.to_string(), "request": plan })).collect();
    json!({ "items": items }).to_string()
}

#[test]
fn every_limit_has_a_row_with_its_default() {
    let defaults = loopwright::settings::Settings::read(|_| None).unwrap().limits;
    let seconds = |time: std::time::Duration| format!("`{} s`", time.as_secs());
    let plain = |number: usize| format!("`{number}`");
    for (variable, default) in [
        ("HEADER_LIMIT", plain(defaults.header)),
        ("BODY_LIMIT", plain(defaults.body)),
        ("JSON_DEPTH", plain(defaults.json_depth)),
        ("ARRAY_LIMIT", plain(defaults.array)),
        ("BATCH_LIMIT", plain(defaults.batch)),
        ("HEADER_DEADLINE", seconds(defaults.header_deadline)),
        ("DEADLINE", seconds(defaults.deadline)),
        ("BATCH_DEADLINE", seconds(defaults.batch_deadline)),
        ("IDLE_TIMEOUT", seconds(defaults.idle)),
        ("ANSWER_DEADLINE", seconds(defaults.answer_deadline)),
        ("CONNECTIONS", plain(defaults.connections)),
        ("CONNECTIONS_PER_ADDRESS", plain(defaults.connections_per_address)),
        ("ARRIVING_LIMIT", plain(defaults.arriving)),
        ("UNWRITTEN_LIMIT", plain(defaults.unwritten)),
        ("IN_FLIGHT", plain(defaults.in_flight)),
        ("QUEUE_DEADLINE", seconds(defaults.queue_deadline)),
        ("BATCHES_IN_FLIGHT", plain(defaults.batches_in_flight)),
        ("BATCH_ANSWER_LIMIT", plain(defaults.batch_answer)),
        ("RATE", plain(defaults.rate.per_second as usize)),
        ("BURST", plain(defaults.rate.burst as usize)),
        ("TRUSTED_PROXIES", "none".to_owned()),
    ] {
        let row = format!("| `LOOPWRIGHT_{variable}` | {default} |");
        assert!(PAGE.contains(&row), "deploy/LIMITS.md should have a row {row}");
        let listed = include_str!("../../deploy/README.md");
        assert!(listed.contains(&row), "deploy/README.md should have a row {row}");
    }
}
