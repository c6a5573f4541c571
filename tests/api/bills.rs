//! Bills reckoned by hand, each line of them.
//!
//! Inches and cubic inches are reckoned with; a fluid ounce is 1.8046875 in³, a cartridge 29 fl oz, waste 10 %. A 14 in blade that cuts 2 in
//! deep runs 4.8990 in on, where it takes 6.7448 in² seen from the side: half of 4.8990 x 5 + 49 asin(0.69985), less 5 x 4.8990. Wire of
//! 0.130 in has 0.0132732 in². Rod in a slot of 1/4 in is 5/16 in across, 0.0766990 in²; in one of 5/16 in it is 3/8 in, 0.110447 in².

use serde_json::{Value, json};

use super::harness::{calculate, post};
use super::requests::with;

mod burial;
mod pooled;

/// A line as it is reckoned: item, size or number, unit, exact quantity, and what is bought.
type Line = (&'static str, &'static str, &'static str, f64, u64);

/// Holds every line of a bill against those that were reckoned, in their order.
fn holds(bill: &Value, expected: &[Line]) {
    let lines = bill["items"].as_array().unwrap();
    let items: Vec<_> = lines.iter().map(|line| line["item"].as_str().unwrap()).collect();
    assert_eq!(items, expected.iter().map(|line| line.0).collect::<Vec<_>>());
    for (line, (item, size, unit, exact, quantity)) in lines.iter().zip(expected) {
        let name = line.get("sku").or(line.get("size")).and_then(Value::as_str).unwrap_or_default();
        assert_eq!((name, line["unit"].as_str().unwrap()), (*size, *unit), "{item}");
        let found = line["exact"].as_f64().unwrap();
        assert!((found - exact).abs() <= 6e-4 + 2e-4 * exact, "{item}: {found} is not {exact}");
        assert_eq!(line["quantity"], *quantity, "{item}: {found}");
    }
}

fn estimated(request: &Value) -> Value {
    let answer = calculate("material-estimate", request);
    assert_eq!(answer.status, 200, "{:#}", answer.body);
    answer.body
}

/// Loops of 6 x 6 ft with three turns, wound in slots of 1/4 x 2 in.
fn squares(corner_cut: &str, lead_in: &Value) -> Value {
    let coil = json!({ "along_travel": "6 ft", "across_lane": "6 ft", "turns": 3, "corner_cut": corner_cut });
    json!({
        "loops": [{ "label": "one", "loop": coil, "construction": "hand_wound", "lead_in": lead_in }],
        "slot": { "width": "1/4 in", "depth": "2 in" }
    })
}

fn no_lead_in() -> Value {
    json!({ "length": "0 ft", "spare": "0 ft" })
}

#[test]
fn one_sides_that_end_at_the_diagonal() {
    // Cut: 4 x 4 ft + 4 x 1.41421 ft + 16 x 4.8990 in = 28.189 ft. A turn is 21.6569 ft: three with 5 % are 68.219 ft.
    // Rod: 11 pieces at 2 ft on 21.66 ft, and 8 bends: 19 x 2 in.
    // Slot: 0.5 x 259.88 + 16 x 0.25 x 6.7448 = 156.92; less wire 3 x 0.0132732 x 259.88 = 10.35, less rod 38 x 0.0766990 = 2.91: 143.66 in³.
    // 143.66 / 1.8046875 x 1.1 / 29 = 3.019 cartridges.
    holds(
        &estimated(&squares("12 in", &no_lead_in())),
        &[
            ("saw_blade", "0.25 in x 14 in", "each", 0.0282, 1),
            ("loop_wire", "14 AWG, 0.13 in", "ft", 68.219, 69),
            ("backer_rod", "0.3125 in", "ft", 3.167, 4),
            ("sealant_cartridge", "29 fl oz", "cartridge", 3.019, 4),
            ("blending_sand", "", "lot", 1.0, 1),
            ("termination", "", "each", 2.0, 2),
        ],
    );
}

#[test]
fn two_a_square_cut_full_and_then_its_diagonals() {
    let mut request = squares("12 in", &no_lead_in());
    request["saw"] = json!({ "corner": "diagonal_full" });
    // Cut: 24 ft + 5.6569 ft + 8 x 4.8990 in = 32.923 ft. Wire and rod as before.
    // Slot: 0.5 x 355.88 + 8 x 0.25 x 6.7448 = 191.43; less 10.35 and 2.91: 178.17 in³, 3.745 cartridges.
    holds(
        &estimated(&request),
        &[
            ("saw_blade", "0.25 in x 14 in", "each", 0.0329, 1),
            ("loop_wire", "14 AWG, 0.13 in", "ft", 68.219, 69),
            ("backer_rod", "0.3125 in", "ft", 3.167, 4),
            ("sealant_cartridge", "29 fl oz", "cartridge", 3.745, 4),
            ("blending_sand", "", "lot", 1.0, 1),
            ("termination", "", "each", 2.0, 2),
        ],
    );
}

#[test]
fn three_twisted_pairs_of_one_unit_in_one_slot() {
    let mut request = squares("0 in", &json!({ "length": "30 ft", "in_slot": "30 ft", "in_shared_slot": "20 ft" }));
    let mut second = request["loops"][0].clone();
    second["label"] = json!("two");
    request["loops"].as_array_mut().unwrap().push(second);
    let report = estimated(&request);
    // Each loop: 24 ft + 8 x 4.8990 in = 27.266 ft. Each pair: 10 ft of its own and two ends, 10.8165 ft; both together 20.8165 ft.
    // Wire: 3 x 24 + 2 x 33 = 138 ft each, with 5 % 144.9 ft. Rod: 12 + 4 pieces each loop; 5 pieces each pair, 10 in the shared slot.
    // Loops: 2 x (144 + 13.49 - 11.47 - 2.45) = 287.13. Pairs: 2 x (75 + 4.22 - 3.19 - 1.10) = 149.85. Shared: 150 + 4.22 - 12.74 - 2.21 =
    // 139.26 in³. Together 576.25 in³, 12.112 cartridges.
    holds(
        &report,
        &[
            ("saw_blade", "0.25 in x 14 in", "each", 0.0545, 1),
            ("saw_blade", "0.3125 in x 14 in", "each", 0.0424, 1),
            ("loop_wire", "14 AWG, 0.13 in", "ft", 289.8, 290),
            ("backer_rod", "0.3125 in", "ft", 5.333, 6),
            ("backer_rod", "0.375 in", "ft", 3.333, 4),
            ("sealant_cartridge", "29 fl oz", "cartridge", 12.112, 13),
            ("blending_sand", "", "lot", 1.0, 1),
            ("termination", "", "each", 4.0, 4),
        ],
    );
    // Pairs of two units have a slot each: the bill is dearer by one of 20.8165 ft less its pair.
    let apart = estimated(&with(&request, "/loops/1/unit", "2"));
    assert_eq!(apart["shared_slots"], json!([]));
    assert!(apart["saw_cut"]["total"]["ft"].as_f64() > report["saw_cut"]["total"]["ft"].as_f64());
}

#[test]
fn four_jacketed_pairs_in_one_slot_and_one_conduit() {
    let coil =
        json!({ "along_travel": "4 ft", "across_lane": "8 ft", "turns": 3, "wire": { "over_jacket": "5/16 in" } });
    let lead_in = json!({ "length": "40 ft", "in_slot": "30 ft", "in_shared_slot": "25 ft" });
    // Each loop: 24 ft + 8 ends, 27.266 ft. Each pair: 5.8165 ft; all three together 25.8165 ft: 125.06 ft.
    // Loops: 3 x (216 + 20.23 - 22.09) = 642.44. Pairs: 3 x (45 + 5.06 - 4.60) = 136.37. Shared: 225 + 5.06 - 69.03 = 161.03 in³.
    // Together 939.84 in³, 19.753 cartridges. Three cables of 0.0767 in² are 0.2301 in²: 40 % of 3/4 in are 0.2133 in², of 1 in 0.3457 in².
    holds(
        &estimated(&json!({
            "loops": [{
                "label": "row", "loop": coil, "construction": "preformed_saw_cut", "quantity": 3, "lead_in": lead_in
            }],
            "slot": { "width": "3/8 in", "depth": "2 in" }
        })),
        &[
            ("saw_blade", "0.375 in x 14 in", "each", 0.1251, 1),
            ("preformed_loop", "4 ft x 8 ft, 3 turns, 43 ft", "each", 3.0, 3),
            ("lead_in_conduit", "1 in", "ft", 10.0, 10),
            ("sealant_cartridge", "29 fl oz", "cartridge", 19.753, 20),
            ("blending_sand", "", "lot", 1.0, 1),
            ("termination", "", "each", 6.0, 6),
        ],
    );
}

#[test]
fn five_a_home_run_of_another_gauge_with_its_splices() {
    let lead_in = json!({ "length": "500 ft", "in_slot": "4 ft", "gauge": "18 AWG" });
    let mut request = squares("0 in", &lead_in);
    request["prices"] = json!({
        "currency": "USD", "hourly_rate": "95",
        "items": {
            "saw_blade/ft": "0.30", "loop_wire/ft": "0.21", "home_run_cable/ft": "0.33", "splice_kit": "11.75", "pull_box": "38",
            "lead_in_conduit/ft": "1.30", "backer_rod/ft": "0.11", "sealant_cartridge": "24.50", "blending_sand": "6", "termination": "0.90"
        }
    });
    let report = estimated(&request);
    // Cut: 27.266 ft for the loop, 4.8165 ft for the pair. Wire: 72 ft and twice 4 + 3 ft to the box, 86 ft with 5 %.
    // Cable: 496 ft to the unit and 3 ft of spare, 523.95 ft with 5 %. Two wires of 0.106 in twisted are 0.0353 in²: 53 % of 1/2 in are 0.161 in².
    // Sealant: 143.57 + (30 + 4.22 - 1.27 - 0.44) = 176.07 in³, 3.701 cartridges.
    holds(
        &report,
        &[
            ("saw_blade", "0.25 in x 14 in", "ft", 27.266, 28),
            ("saw_blade", "0.3125 in x 14 in", "ft", 4.8165, 5),
            ("loop_wire", "14 AWG, 0.13 in", "ft", 90.3, 91),
            ("backer_rod", "0.3125 in", "ft", 2.667, 3),
            ("backer_rod", "0.375 in", "ft", 0.333, 1),
            ("home_run_cable", "18 AWG", "ft", 523.95, 524),
            ("splice_kit", "", "each", 1.0, 1),
            ("pull_box", "", "each", 1.0, 1),
            ("lead_in_conduit", "1/2 in", "ft", 496.0, 496),
            ("sealant_cartridge", "29 fl oz", "cartridge", 3.701, 4),
            ("blending_sand", "", "lot", 1.0, 1),
            ("termination", "", "each", 2.0, 2),
        ],
    );
    let amounts: Vec<_> =
        report["cost"]["lines"].as_array().unwrap().iter().map(|line| line["amount"].as_str().unwrap()).collect();
    let of_items =
        ["8.40", "1.50", "19.11", "0.33", "0.11", "172.92", "11.75", "38.00", "644.80", "98.00", "6.00", "1.80"];
    assert_eq!(amounts[..12], of_items);
}

#[test]
fn six_drilled_corners_take_no_overruns() {
    let mut request = squares("0 in", &no_lead_in());
    request["loops"][0]["loop"]["turns"] = json!(2);
    request["saw"] = json!({ "corner": "cored" });
    // 24 ft of cut. Two turns: 48 ft with 5 %. Four holes of 1-1/2 in: 14.14 in³. 144 + 14.14 - 7.65 - 2.45 = 148.04 in³, 3.111 cartridges.
    holds(
        &estimated(&request),
        &[
            ("saw_blade", "0.25 in x 14 in", "each", 0.024, 1),
            ("loop_wire", "14 AWG, 0.13 in", "ft", 50.4, 51),
            ("backer_rod", "0.3125 in", "ft", 2.667, 3),
            ("sealant_cartridge", "29 fl oz", "cartridge", 3.111, 4),
            ("blending_sand", "", "lot", 1.0, 1),
            ("termination", "", "each", 2.0, 2),
        ],
    );
}

#[test]
fn seven_hot_sealant_comes_by_volume_and_joints_get_sleeves() {
    let mut request = squares("12 in", &no_lead_in());
    request["sealant"] = json!({ "kind": "hot_applied" });
    request["crossings"] = json!(2);
    request["surface"] = json!("existing_concrete");
    // 143.66 in³ x 1.1 of 231 in³ each: 0.6841 gal.
    holds(
        &estimated(&request),
        &[
            ("saw_blade", "0.25 in x 14 in", "each", 0.0282, 1),
            ("loop_wire", "14 AWG, 0.13 in", "ft", 68.219, 69),
            ("backer_rod", "0.3125 in", "ft", 3.167, 4),
            ("joint_sleeve", "", "each", 2.0, 2),
            ("hot_sealant", "", "gal", 0.6841, 1),
            ("blending_sand", "", "lot", 1.0, 1),
            ("termination", "", "each", 2.0, 2),
        ],
    );
}

#[test]
fn nothing_is_billed_that_has_no_place_where_it_is_used() {
    let items = |request: &Value| -> Vec<String> {
        let report = estimated(request);
        report["items"].as_array().unwrap().iter().map(|line| line["item"].as_str().unwrap().to_owned()).collect()
    };
    let bare = items(&squares("0 in", &no_lead_in()));
    let buried = items(&with(
        &with(&squares("0 in", &no_lead_in()), "/surface", "gravel"),
        "/loops/0/construction",
        "preformed_direct_burial",
    ));
    for (bill, absent) in [
        (&bare, &["lead_in_conduit", "home_run_cable", "splice_kit", "pull_box", "joint_sleeve", "line_device"][..]),
        (
            &buried,
            &["saw_blade", "sealant_cartridge", "backer_rod", "blending_sand", "loop_wire", "lead_in_conduit"][..],
        ),
    ] {
        assert!(absent.iter().all(|item| !bill.iter().any(|billed| billed == item)), "{bill:?}");
    }
}
