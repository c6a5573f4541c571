//! Pooled batches reckoned by hand, and what a longer way costs.

use proptest::prelude::*;
use serde_json::{Value, json};

use super::{holds, post};

/// A lane without a barrier whose loop of 6 ft along travel, three turns, is decided; slots of 1/4 x 2 in.
fn lane(width: &str, across: &str) -> Value {
    json!({
        "opening": { "width": width, "barrier": "none" }, "roles": ["presence"], "parts": ["materials"],
        "fixed_loops": [{ "role": "presence", "along_travel": "6 ft", "across_lane": across, "turns": 3 }],
        "slot": { "width": "1/4 in", "depth": "2 in" }
    })
}

fn pooled(requests: &[Value], shared: &Value) -> Value {
    let items = requests.iter().enumerate();
    let items: Vec<_> = items.map(|(index, request)| json!({ "id": index.to_string(), "request": request })).collect();
    let body = json!({ "items": items, "shared": shared, "pool": true });
    let answer = post("/v1/installation-plan/batch", body.to_string());
    assert_eq!((answer.status, &answer.body["failed"]), (200, &json!(0)), "{:#}", answer.body);
    answer.body
}

#[test]
fn eight_three_alike_lanes_on_one_spool() {
    let spools = json!([{ "length": "500 ft", "sku": "TIB-W500" }, { "length": "1000 ft", "sku": "TIB-W1000" }]);
    let prices =
        json!({ "currency": "USD", "items": { "TIB-W500": "95", "TIB-W1000": "170", "sealant_cartridge": "24.50" } });
    let lanes = [lane("12 ft", "6 ft"), lane("12 ft", "6 ft"), lane("12 ft", "6 ft")];
    let body = pooled(&lanes, &json!({ "wire_spools": spools, "prices": prices }));
    // Each: 28.189 ft of cut and a slot of 3 ft to the edge, 3.8165 ft with its ends; 47 ft of conduit.
    // Each wire: 64.971 + 2 x 53 ft with 5 % is 179.52 ft: three lie on one spool of 1,000 ft for 170, not on two of 500 ft for 190.
    // Each slot: 143.66 in³, and of the pair 22.5 + 4.22 - 0.96 - 0.44 = 25.32 in³: 168.98 in³, 3.552 cartridges: three jobs take 10.656.
    let lines = [
        ("saw_blade", "0.25 in x 14 in", "each", 0.08457, 1),
        ("saw_blade", "0.3125 in x 14 in", "each", 0.01145, 1),
        ("loop_wire", "TIB-W1000", "spool", 1.0, 1),
        ("backer_rod", "0.3125 in", "ft", 9.5, 10),
        ("backer_rod", "0.375 in", "ft", 1.0, 1),
        ("lead_in_conduit", "1/2 in", "ft", 141.0, 141),
        ("sealant_cartridge", "29 fl oz", "cartridge", 10.656, 11),
        ("blending_sand", "", "lot", 3.0, 3),
        ("termination", "", "each", 6.0, 6),
    ];
    holds(&body["pooled_bill"], &lines);
    let wire = |cost: &Value| cost["lines"][0]["amount"].as_str().unwrap().to_owned();
    assert_eq!(wire(&body["pooled_bill"]["cost"]), "170.00");
    assert_eq!(wire(&body["results"][0]["report"]["materials"]["cost"]), "95.00");
    // Four cartridges each by themselves.
    assert_eq!(body["pooled_bill"]["cost"]["total"], "439.50");
}

#[test]
fn nine_two_lanes_of_different_widths() {
    let body = pooled(&[lane("12 ft", "6 ft"), lane("16 ft", "10 ft")], &json!({}));
    // The second: 29.657 ft + 16 x 4.8990 in = 36.189 ft of cut, and 3.8165 ft; a turn is 29.657 ft: 88.971 + 106 ft with 5 %, 204.72 ft.
    // Rod: 15 + 8 pieces. Sealant: 177.94 + 26.98 - 14.17 - 3.53 + 25.32 = 212.54 in³, 4.467 cartridges.
    let lines = [
        ("saw_blade", "0.25 in x 14 in", "each", 0.06438, 1),
        ("saw_blade", "0.3125 in x 14 in", "each", 0.00763, 1),
        ("loop_wire", "14 AWG, 0.13 in", "ft", 384.24, 385),
        ("backer_rod", "0.3125 in", "ft", 7.0, 7),
        ("backer_rod", "0.375 in", "ft", 0.667, 1),
        ("lead_in_conduit", "1/2 in", "ft", 94.0, 94),
        ("sealant_cartridge", "29 fl oz", "cartridge", 8.019, 9),
        ("blending_sand", "", "lot", 2.0, 2),
        ("termination", "", "each", 4.0, 4),
    ];
    holds(&body["pooled_bill"], &lines);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_longer_way_is_never_cheaper(
        length in 10..400_u32, more in 1..60_u32, in_slot in 0..10_u32, gauge in proptest::bool::ANY, preformed in proptest::bool::ANY
    ) {
        let total = |length: u32, in_slot: u32| {
            let mut lead_in = json!({ "length": format!("{length} ft"), "in_slot": format!("{in_slot} ft") });
            if gauge {
                lead_in["gauge"] = json!("18 AWG");
            }
            let mut request = super::squares("12 in", &lead_in);
            if preformed {
                request["loops"][0]["construction"] = json!("preformed_saw_cut");
            }
            let items = json!({
                "saw_blade/ft": "0.30", "loop_wire/ft": "0.21", "home_run_cable/ft": "0.33", "splice_kit": "11.75", "pull_box": "38",
                "lead_in_conduit/ft": "0.10", "backer_rod/ft": "0.11", "sealant_cartridge": "24.50", "preformed_loop": "100"
            });
            request["prices"] = json!({ "currency": "USD", "items": items });
            let report = super::estimated(&request);
            report["cost"]["total"].as_str().unwrap().replace('.', "").parse::<u64>().unwrap()
        };
        let base = total(length, in_slot);
        prop_assert!(total(length + more, in_slot) >= base, "a longer pair");
        prop_assert!(total(length + more, in_slot + more) >= base, "a longer slot");
    }
}
