//! One job, one truth: what a plan decides once, every part of it, its drawing and its sheet say alike, and so do the single
//! calculations.
//!
//! `LOOPWRIGHT_TEST_OPENINGS=300` draws as many openings; a few by default.

use proptest::prelude::*;
use serde_json::{Value, json};

use super::openings::{count, opening};
use crate::harness::{calculate, post};

fn list<'a>(value: &'a Value, name: &str) -> &'a [Value] {
    value[name].as_array().map_or(&[], Vec::as_slice)
}

fn text<'a>(value: &'a Value, name: &str) -> &'a str {
    value[name].as_str().unwrap_or_else(|| panic!("no {name}: {value}"))
}

/// The marks of a loop's row.
fn marks(sized: &Value) -> Vec<Value> {
    match sized.get("side_by_side") {
        Some(row) => list(row, "marks").to_vec(),
        None => vec![sized["mark"].clone()],
    }
}

/// Both systems of a length, to compare.
fn metres(length: &Value) -> f64 {
    length["m"].as_f64().unwrap_or_else(|| panic!("no length: {length}"))
}

/// The middle of a loop along the way: the inside positive.
fn middle(sized: &Value) -> f64 {
    metres(&sized["position"]["along"])
}

/// The place of a loop is what its side and its distance say.
fn places_agree(loops: &[Value]) {
    for sized in loops {
        let from_line = sized.get("distance_from_barrier").or(sized.get("distance_from_reference")).map_or(0.0, metres);
        let half = metres(&sized["along_travel"]) / 2.0;
        let expected = match text(sized, "side") {
            "inside" => from_line + half,
            "outside" => -from_line - half,
            _ => middle(sized).clamp(0.0, half),
        };
        assert!((middle(sized) - expected).abs() < 0.002, "{sized}");
    }
}

/// The loops in the order in which a vehicle that leaves meets them, each with its letter.
fn marks_follow_the_way(loops: &[Value]) {
    for (sized, letter) in loops.iter().zip('A'..) {
        assert_eq!(sized["mark"], letter.to_string());
        for (index, mark) in marks(sized).iter().enumerate().filter(|_| sized["count"] != 1) {
            assert_eq!(*mark, format!("{letter}{}", index + 1));
        }
        assert_eq!(json!(marks(sized).len()), sized["count"]);
    }
    for pair in loops.windows(2) {
        assert!(middle(&pair[0]) >= middle(&pair[1]), "{} before {}", pair[0]["role"], pair[1]["role"]);
    }
}

/// The step of each loop is that of its channel, of the sheet and of the steps of the work.
fn steps_agree(plan: &Value, sheet: &str) {
    let settings = list(&plan["detector"], "settings");
    let by_id = |list: &[Value], name: &str, code: &str| {
        list.iter().find(|entry| entry[name] == code).map(|entry| text(entry, "message").to_owned()).unwrap()
    };
    let power_up = by_id(list(plan, "steps"), "step", "power_up");
    let tune = by_id(list(&plan["commissioning"], "trials"), "trial", "tune_empty");
    let loops = list(&plan["sizing"], "loops");
    let is_shared = loops.iter().all(|sized| sized["threshold_percent"] == loops[0]["threshold_percent"]);
    for sized in loops {
        let step = &sized["threshold_percent"];
        for mark in marks(sized) {
            let channel = settings.iter().find(|channel| list(channel, "marks").contains(&mark));
            assert_eq!(channel.unwrap_or_else(|| panic!("no channel of {mark}"))["threshold_percent"], *step);
        }
        let said = if is_shared { format!("{step} %") } else { format!("{step} % for {}", text(sized, "mark")) };
        assert!(power_up.contains(&said) && tune.contains(&said), "{said}: {power_up} {tune}");
        assert!(sheet.contains(&format!("{step} %")), "{step} % is not on the sheet");
        for vehicle in list(sized, "vehicles") {
            assert_eq!(vehicle["threshold_percent"], *step);
        }
    }
}

/// The loop that is sized is the one that is connected, bought, measured and drawn.
fn loops_agree(plan: &Value) {
    let connected = list(&plan["detector"]["inputs"], "loops");
    let bought = list(&plan["materials"]["inputs"], "loops");
    let made = list(&plan["materials"], "loops");
    let readings = list(&plan["commissioning"], "readings");
    let loops = list(&plan["sizing"], "loops");
    assert_eq!(bought.len(), loops.len());
    assert_eq!(json!(connected.len()), json!(loops.iter().map(|sized| marks(sized).len()).sum::<usize>()));
    for ((sized, bought), made) in loops.iter().zip(bought).zip(made) {
        assert_eq!((&made["mark"], &made["quantity"]), (&sized["mark"], &sized["count"]));
        let alike = |other: &Value| {
            for name in ["shape", "along_travel", "across_lane", "turns", "corner_cut"] {
                assert_eq!(other["loop"][name], sized[name], "{name} of {}", sized["role"]);
            }
            assert_eq!(other["lead_in"]["length"], sized["lead_in"]["length"]);
        };
        alike(bought);
        assert_eq!(bought["construction"], sized["construction"]);
        assert_eq!(made.get("slot_depth"), sized.get("slot_depth"));
        let is_there = |other: &Value| (other["along"]["m"].as_f64().unwrap() - middle(sized)).abs() < 0.002;
        let of_role: Vec<_> =
            connected.iter().filter(|other| other["role"] == sized["role"] && is_there(other)).collect();
        assert_eq!(of_role.len(), marks(sized).len());
        for other in of_role {
            alike(other);
        }
        let reading = |name: &str| {
            let found = readings.iter().find(|other| other["mark"] == sized["mark"] && other["reading"] == name);
            found.unwrap()["expected"].clone()
        };
        assert_eq!(reading("inductance"), sized["electrical"]["terminal_inductance_uh"]);
        assert_eq!(reading("resistance"), sized["electrical"]["dc_resistance_ohm"]);
    }
}

/// Lead-ins reach their loops, and what is ordered and taken from stock is as long.
fn lead_ins_agree(plan: &Value, request: &Value) {
    let spare = metres(&plan["sizing"]["inputs"]["lead_in"]["spare"]);
    for sized in list(&plan["sizing"], "loops") {
        let (length, ordered) = (metres(&sized["lead_in"]["length"]), metres(&sized["lead_in"]["order_length"]));
        let distance = sized.get("distance_from_barrier").or(sized.get("distance_from_reference")).map_or(0.0, metres);
        assert!(length >= distance, "{} lies beyond its lead-in", sized["role"]);
        assert!((ordered - length - spare).abs() < 0.002);
        if let Some(item) = stock_item_of(sized, request) {
            let tail = calculate_metres(text(item, "lead_in_length"));
            assert!(tail >= ordered - 0.002, "{} is too short for {}", item["sku"], sized["role"]);
        }
    }
}

fn calculate_metres(text: &str) -> f64 {
    let (number, unit) = text.split_once(' ').unwrap();
    number.parse::<f64>().unwrap() * if unit == "ft" { 0.3048 } else { 1.0 }
}

/// The item of the request's stock that a loop is.
fn stock_item_of<'a>(sized: &Value, request: &'a Value) -> Option<&'a Value> {
    let sku = sized.get("stock_choice")?.get("sku")?;
    list(request, "stock").iter().find(|item| item["sku"] == *sku)
}

/// A stock item that is chosen is the loop, on the bill too; where none is, nobody says so.
fn stock_agrees(plan: &Value, request: &Value) {
    let lines: Vec<_> =
        list(&plan["materials"], "items").iter().filter(|line| line["item"] == "preformed_loop").collect();
    let preformed: Vec<_> =
        list(&plan["sizing"], "loops").iter().filter(|sized| sized["construction"] != "hand_wound").collect();
    assert_eq!(lines.len(), preformed.len());
    for (sized, line) in preformed.iter().zip(lines) {
        let item = stock_item_of(sized, request);
        assert_eq!(line.get("sku"), item.map(|item| &item["sku"]));
        let none_fits = |finding: &&Value| finding["code"] == "no_stock_fits" && finding["subject"] == sized["role"];
        let is_said = list(plan, "findings").iter().any(|finding| none_fits(&finding));
        assert_eq!(is_said, item.is_none() && request.get("stock").is_some(), "{}", sized["role"]);
        let Some(item) = item else { continue };
        for (leg, name) in [("along_travel", "along_travel"), ("across_lane", "across_lane")] {
            assert!((metres(&sized[leg]) - calculate_metres(text(item, name))).abs() < 0.001);
        }
        if let Some(turns) = item.get("turns") {
            assert_eq!(sized["turns"], *turns);
        }
    }
    for sized in list(&plan["sizing"], "loops").iter().filter(|sized| sized["construction"] == "hand_wound") {
        assert!(stock_item_of(sized, request).is_none(), "wound on site and from stock");
    }
}

/// A vehicle that one part does not see, no other part sees; a stop of one part is a stop of the plan, and first on its sheet.
fn verdicts_agree(plan: &Value, sheet: &str) {
    let is_stop = |finding: &&Value| finding["level"] == "stop";
    let stops: Vec<_> = list(plan, "findings").iter().filter(is_stop).collect();
    for part in ["sizing", "detector", "materials"] {
        for stop in list(&plan[part], "findings").iter().filter(is_stop) {
            assert!(stops.contains(&stop), "{part} has a stop that the plan leaves out: {stop}");
        }
    }
    assert_eq!(sheet.contains("Do not build as planned"), !stops.is_empty());
    let loops = list(&plan["sizing"], "loops");
    for check in list(&plan["detector"], "checks").iter().filter(|check| check["check"] == "vehicle") {
        let channel = list(&plan["detector"], "settings").iter().find(|other| other["channel"] == check["channel"]);
        let on_it = list(channel.unwrap(), "marks");
        let seen = loops
            .iter()
            .filter(|sized| marks(sized).iter().any(|mark| on_it.contains(mark)))
            .map(|sized| list(sized, "vehicles").iter().find(|seen| seen["vehicle"] == check["vehicle"]).unwrap());
        let least = seen.clone().map(|seen| seen["least_change_percent"].as_f64().unwrap()).fold(100.0, f64::min);
        assert_eq!(json!(least), check["value"]);
        assert_eq!(seen.into_iter().any(|seen| seen["detected"] == false), check["verdict"] == "unsuitable", "{check}");
    }
    let is_untunable = |check: &Value| check["check"] == "inductance" && check["verdict"] == "unsuitable";
    assert!(!stops.is_empty() || !list(&plan["detector"], "checks").iter().any(is_untunable), "untunable, and no stop");
    let is_unseen = |finding: &Value| finding["code"] == "vehicle_not_seen" && finding["level"] == "stop";
    let is_unsuitable = |check: &Value| check["check"] == "vehicle" && check["verdict"] == "unsuitable";
    // What a loop of a role that does not fit would see is not spoken of.
    let is_misfit = |finding: &Value| finding["code"] == "role_does_not_fit" || finding["code"] == "closing_under_leaf";
    if list(plan, "findings").iter().any(is_misfit) {
        return;
    }
    assert_eq!(
        list(&plan["sizing"], "findings").iter().any(is_unseen),
        list(&plan["detector"], "checks").iter().any(is_unsuitable)
    );
}

/// The drawing and the sheet name every loop, its turns and its number in stock.
fn papers_agree(plan: &Value, sheet: &str) {
    let drawing = text(&plan["drawings"], "plan").replace('\u{a0}', " ");
    for sized in list(&plan["sizing"], "loops") {
        let (mark, turns) = (text(sized, "mark"), &sized["turns"]);
        assert!(drawing.contains(&format!(">{mark}</text>")), "{mark} is not on the drawing");
        assert!(drawing.contains(&format!("{turns} turns")) || *turns == 1, "{turns} turns are not on the drawing");
        for mark in marks(sized) {
            assert!(sheet.contains(mark.as_str().unwrap()), "{mark} is not on the sheet");
        }
        if let Some(sku) = sized.get("stock_choice").and_then(|choice| choice.get("sku")) {
            let sku = sku.as_str().unwrap();
            assert!(drawing.contains(sku) && sheet.contains(sku), "{sku} is not on both papers");
        }
    }
}

/// The sizing and the estimate have one verdict on the slot of a loop.
fn slots_agree(plan: &Value) {
    let of_slot = |report: &Value| -> Vec<Value> {
        let is_it = |finding: &&Value| {
            let code = text(finding, "code");
            (code == "slot_too_narrow" || code == "slot_too_shallow") && text(finding, "about").starts_with("#/slot")
        };
        let mut found: Vec<_> = list(report, "findings").iter().filter(is_it).cloned().collect();
        found.sort_by_key(Value::to_string);
        found
    };
    let said = of_slot(plan);
    assert_eq!((&of_slot(&plan["sizing"]), &of_slot(&plan["materials"])), (&said, &said));
}

/// A loop of a report as a request.
fn as_loop(sized: &Value, cover: &Value, wire: Option<&Value>) -> Value {
    let mut coil = json!({
        "shape": sized["shape"],
        "along_travel": format!("{} m", metres(&sized["along_travel"])),
        "across_lane": format!("{} m", metres(&sized["across_lane"])),
        "turns": sized["turns"],
        "corner_cut": format!("{} mm", sized["corner_cut"]["mm"]),
        "cover": format!("{} mm", cover["mm"]),
    });
    if let Some(wire) = wire {
        coil["wire"] = wire.clone();
    }
    coil
}

/// The single calculations find the same: the sizing by itself, each loop measured, and the channels checked.
fn single_calculations_agree(plan: &Value, request: &Value) {
    let sizing = &plan["sizing"];
    let loops = list(sizing, "loops");
    if request.get("wiring").is_none_or(|wiring| wiring == "separate") {
        let mut alone = request.as_object().unwrap().clone();
        alone.remove("wiring");
        alone.remove("include");
        alone.remove("sealant");
        let alone = calculate("loop-sizing", &Value::Object(alone));
        // The depth of the cut is that of the estimate, which knows the finish of the sealant.
        let without_depth = |loops: &Value| -> Vec<Value> {
            let without = crate::requests::without;
            list(loops, "loops").iter().map(|sized| without(&without(sized, "/slot_depth"), "/run_out")).collect()
        };
        let is_alike = |sized: &Value| sized.get("slot_depth").is_some();
        assert_eq!(list(&alone.body, "loops").iter().any(is_alike), loops.iter().any(is_alike));
        if loops.iter().any(is_alike) {
            assert_eq!(without_depth(&alone.body), without_depth(sizing));
        } else {
            assert_eq!(alone.body["loops"], sizing["loops"]);
        }
    }
    let opening = metres(&sizing["inputs"]["opening"]["width"]);
    let mut connected = Vec::new();
    for (sized, bought) in loops.iter().zip(list(&plan["materials"]["inputs"], "loops")) {
        // Where the depth was sent the cover follows the turns.
        let cover = bought.get("cover").unwrap_or(&sizing["inputs"]["cover"]);
        let coil = as_loop(sized, cover, request.get("wire"));
        let lead_in = json!({ "length": format!("{} m", metres(&sized["lead_in"]["length"])) });
        let mut question = json!({ "loop": coil, "lead_in": lead_in });
        let steel = list(request, "site_hazards").contains(&json!("reinforcing_mesh"));
        if steel {
            let depth = if text(&request["opening"], "width").ends_with("ft") { "2 in" } else { "50 mm" };
            question["reinforcement"] = json!({ "depth_below_loop": depth });
        }
        let measured = calculate("loop-characteristics", &question);
        let (one, other) = (&measured.body["terminal_inductance_uh"], &sized["electrical"]["terminal_inductance_uh"]);
        let (one, other) = (one.as_f64().unwrap(), other.as_f64().unwrap());
        let low = |figures: &Value| figures["as_built_low_uh"].as_f64().unwrap();
        let (low_alone, low_planned) = (low(&measured.body), low(&sized["electrical"]));
        assert!((low_alone - low_planned).abs() <= 2e-3 * low_planned, "{low_alone} and {low_planned} µH over steel");
        // The legs were typed in whole millimetres.
        assert!((one - other).abs() <= 1e-3 * other, "{one} and {other} µH");
        let alone = || vec![metres(&sized["position"]["across"])];
        let centres: Vec<f64> =
            sized.get("side_by_side").map_or_else(alone, |row| list(row, "centres").iter().map(metres).collect());
        for (index, across) in centres.iter().enumerate() {
            let mut loop_of_it = json!({
                "label": format!("{} {index}", text(sized, "mark")),
                "role": sized["role"],
                "loop": coil,
                "lead_in": lead_in,
                "lane_width": format!("{opening} m"),
                "lane_middle": "0 m",
                "unit": sized["unit"].to_string(),
                "position": { "along": format!("{} m", middle(sized)), "across": format!("{across} m") },
            });
            if steel {
                loop_of_it["reinforcement"] = question["reinforcement"].clone();
            }
            connected.push(loop_of_it);
        }
    }
    let mut question = json!({ "loops": connected });
    for name in ["wiring", "detector", "vehicles"] {
        if let Some(sent) = request.get(name) {
            question[name] = sent.clone();
        }
    }
    let alone = calculate("detector-compatibility", &question);
    assert_eq!(alone.status, 200, "{}", alone.body);
    let steps = |report: &Value| -> Vec<Value> {
        list(report, "settings").iter().map(|channel| channel["threshold_percent"].clone()).collect()
    };
    // What holds the gate may need a finer step for its place: a tail under the arm, a car between two loops.
    let holds = |channel: &Value| {
        let on_it = list(channel, "marks");
        let sized = loops.iter().filter(|sized| marks(sized).iter().any(|mark| on_it.contains(mark)));
        sized.into_iter().any(|sized| {
            ["obstruction_outside", "obstruction_inside", "between_leaves", "closing"].contains(&text(sized, "role"))
        })
    };
    let planned = steps(&plan["detector"]);
    for ((channel, ours), alone) in list(&plan["detector"], "settings").iter().zip(planned).zip(steps(&alone.body)) {
        let (ours, alone) = (ours.as_f64().unwrap(), alone.as_f64().unwrap());
        assert!(ours == alone || (ours < alone && holds(channel)), "{ours} in the plan, {alone} alone: {channel}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: count(), failure_persistence: None, max_shrink_iters: 64, ..ProptestConfig::default() })]

    #[test]
    fn every_part_of_a_plan_says_the_same(request in opening()) {
        let mut with_drawings = request.clone();
        with_drawings["include"] = json!(["drawings"]);
        let answer = calculate("installation-plan", &with_drawings);
        assert_eq!(answer.status, 200, "{:#}", answer.body);
        let sheet = post("/v1/installation-plan/job-sheet", request.to_string());
        let sheet = sheet.body.as_str().unwrap().replace('\u{a0}', " ");
        let plan = &answer.body;
        marks_follow_the_way(list(&plan["sizing"], "loops"));
        places_agree(list(&plan["sizing"], "loops"));
        steps_agree(plan, &sheet);
        loops_agree(plan);
        lead_ins_agree(plan, &request);
        stock_agrees(plan, &request);
        verdicts_agree(plan, &sheet);
        slots_agree(plan);
        papers_agree(plan, &sheet);
        single_calculations_agree(plan, &request);
    }
}
