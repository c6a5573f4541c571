//! `installation-plan`: the numbers are those of the single calculations, whatever is said is about the plan's own request.

use serde_json::{Value, json};

use super::harness::{calculate, description};
use super::requests::{Need, cure_guidance, loop_sizing, material_estimate, need, with, without};

mod batch;
mod drawn;
mod foreman;
mod one_truth;
mod openings;
mod pooled;
mod spreadsheet;
mod ways;

/// A plan of everything, each noun as the single calculations' full requests have it.
pub fn full() -> Value {
    let (sizing, materials, cure) = (loop_sizing(), material_estimate(), cure_guidance());
    let mut plan = sizing.as_object().unwrap().clone();
    for name in [
        "lead_in_slot",
        "saw",
        "sealant",
        "backer_rod",
        "wire_spools",
        "wire_allowance_percent",
        "waste_percent",
        "slab",
        "crossings",
        "agency_minimum",
        "prices",
        "productivity",
    ] {
        plan.insert(name.to_owned(), materials[name].clone());
    }
    for name in ["start", "work_duration", "surface_condition", "needed_open_by", "weather"] {
        plan.insert(name.to_owned(), cure[name].clone());
    }
    Value::Object(plan)
}

fn plan(request: &Value) -> Value {
    let answer = calculate("installation-plan", request);
    assert_eq!(answer.status, 200, "{:#}", answer.body);
    answer.body
}

fn single(calculation: &str, request: &Value) -> Value {
    let answer = calculate(calculation, request);
    assert_eq!(answer.status, 200, "{calculation}: {:#}", answer.body);
    answer.body
}

/// A report without what points into its request, what was echoed, and the marks that only the loops of a plan have.
fn figures(report: &Value) -> Value {
    let mut report = without_marks(report);
    for part in ["inputs", "findings", "assumed", "unused", "cautions", "basis"] {
        report.as_object_mut().unwrap().shift_remove(part).unwrap();
    }
    report
}

fn without_marks(value: &Value) -> Value {
    match value {
        Value::Object(members) => {
            let kept = members.iter().filter(|(name, _)| !["mark", "marks"].contains(&name.as_str()));
            Value::Object(kept.map(|(name, value)| (name.clone(), without_marks(value))).collect())
        }
        Value::Array(items) => items.iter().map(without_marks).collect(),
        other => other.clone(),
    }
}

/// The fields of the plan that a calculation takes.
fn taken(request: &Value, calculation: &str) -> Value {
    let body = &description()["paths"][format!("/v1/{calculation}")]["post"]["requestBody"]["content"];
    let name = body["application/json"]["schema"]["$ref"].as_str().unwrap();
    let known = &description().pointer(name.trim_start_matches('#')).unwrap()["properties"];
    let members = request.as_object().unwrap().iter().filter(|(name, _)| known.get(name.as_str()).is_some());
    Value::Object(members.map(|(name, value)| (name.clone(), value.clone())).collect())
}

/// A loop of the sizing as an installer would type it into the next form.
fn typed(sized: &Value, request: &Value, unit: &str) -> Value {
    let (plan, detail) = if unit == "ft" { ("ft", "inch") } else { ("m", "mm") };
    let small = if unit == "ft" { "in" } else { "mm" };
    json!({
        "shape": sized["shape"], "turns": sized["turns"], "wire": request["wire"],
        "along_travel": format!("{} {unit}", sized["along_travel"][plan]),
        "across_lane": format!("{} {unit}", sized["across_lane"][plan]),
        "corner_cut": format!("{} {small}", sized["corner_cut"][detail])
    })
}

fn no_number_differs(request: &Value, unit: &str) {
    let report = plan(request);
    let sizing = single("loop-sizing", &taken(request, "loop-sizing"));
    assert_eq!(figures(&report["sizing"]), figures(&sizing));
    let loops = sizing["loops"].as_array().unwrap();

    let mut materials = taken(request, "material-estimate");
    let estimated = |sized: &Value| {
        let mut lead_in = request["lead_in"].clone();
        for part in ["in_slot", "in_shared_slot", "in_conduit"] {
            lead_in[part] = json!(format!("{} {unit}", sized["lead_in"][part][unit]));
        }
        json!({
            "label": sized["role"], "loop": typed(sized, request, unit), "construction": sized["construction"],
            "quantity": sized["count"], "lead_in": lead_in, "unit": sized["unit"].to_string()
        })
    };
    materials["loops"] = loops.iter().map(estimated).collect();
    assert_eq!(figures(&report["materials"]), figures(&single("material-estimate", &materials)));

    let mut detector = taken(request, "detector-compatibility");
    let inside = |sized: &Value| {
        let (plan, sign) = (if unit == "ft" { "ft" } else { "m" }, if sized["side"] == "outside" { -1.0 } else { 1.0 });
        let middle = sized["distance_from_barrier"][plan].as_f64().unwrap()
            + sized["along_travel"][plan].as_f64().unwrap() / 2.0;
        format!("{} {unit}", (sign * middle * 1e4).round() / 1e4)
    };
    let connected = |sized: &Value| {
        json!({
            "label": sized["role"], "role": sized["role"], "loop": typed(sized, request, unit), "lead_in": request["lead_in"],
            "lane_width": request["opening"]["width"],
            "position": { "along": inside(sized), "across": format!("0 {unit}") }
        })
    };
    detector["loops"] = loops.iter().map(connected).collect();
    assert_eq!(figures(&report["detector"]), figures(&single("detector-compatibility", &detector)));

    let cure = single("cure-guidance", &taken(request, "cure-guidance"));
    let (planned, alone) = (figures(&report["cure"]), figures(&cure));
    assert_eq!(planned, alone);
}

#[test]
fn no_number_differs_from_what_the_single_calculations_say() {
    no_number_differs(&full(), "ft");
    let metric = with(&full(), "/opening/width", "7.2 m");
    let metric = with(&metric, "/opening/edge_setback", "0.6 m");
    let metric = with(&metric, "/fixed_loops", json!([{ "role": "exit", "along_travel": "1.8 m", "turns": 3 }]));
    no_number_differs(&without(&metric, "/stock"), "m");
}

/// Without an answer of the sizing, the errors of all fields are told, and nothing fails.
#[test]
fn a_width_that_cannot_be_read_is_refused_for_any_wiring() {
    for wiring in ["separate", "series", "parallel"] {
        let request = json!({ "opening": { "width": "abc", "barrier": "slide_gate" }, "wiring": wiring });
        assert_eq!(calculate("installation-plan", &request).faults()[0].0, "#/opening/width", "{wiring}");
    }
}

/// A stock loop leaves the setback that was asked for.
#[test]
fn a_stock_loop_leaves_the_setback_that_was_sent() {
    let taken = |setback: &str| {
        let report = plan(&json!({
            "opening": { "width": "12 ft", "barrier": "none", "edge_setback": setback },
            "stock": [{ "sku": "TIB-1", "along_travel": "6 ft", "across_lane": "8 ft", "lead_in_length": "60 ft" }]
        }));
        report["sizing"]["loops"][0]["stock_choice"].get("sku").is_some()
    };
    assert!(taken("2 ft") && !taken("3 ft"));
}

#[test]
fn the_opening_alone_is_enough() {
    let report = plan(&json!({ "opening": { "width": "24 ft", "barrier": "slide_gate" } }));
    assert_eq!(report["sizing"]["loops"].as_array().unwrap().len(), 3);
    for part in ["detector", "materials", "commissioning", "steps"] {
        assert!(report.get(part).is_some(), "{part}");
    }
    for part in ["cure", "drawings"] {
        assert!(report.get(part).is_none(), "{part}");
    }
}

#[test]
fn parts_that_are_not_asked_for_are_absent_and_their_fields_unused() {
    let report = plan(&with(&full(), "/parts", json!(["commissioning"])));
    for part in ["detector", "materials", "cure", "drawings"] {
        assert!(report.get(part).is_none(), "{part}");
    }
    let unused = report["unused"].to_string();
    for field in ["saw", "sealant", "prices", "start", "weather", "productivity"] {
        assert!(unused.contains(&format!("\"#/{field}\"")), "{field}: {unused}");
    }
    let only = plan(&with(&full(), "/parts", json!(["materials"])));
    assert!(only.get("materials").is_some() && only.get("detector").is_none());
}

#[test]
fn whatever_is_said_is_about_the_plans_own_request() {
    for request in [full(), with(&without(&full(), "/construction"), "/surface", "gravel")] {
        let report = plan(&request);
        let parts = [&report, &report["sizing"], &report["detector"], &report["materials"], &report["cure"]];
        for said in parts.iter().filter(|part| part.is_object()) {
            for list in ["findings", "assumed"] {
                for one in said[list].as_array().unwrap() {
                    // Panics when the description does not have the place.
                    let sent = one.get("send").map_or(&[][..], |send| send.as_array().unwrap());
                    for pointer in std::iter::once(&one["about"]).chain(sent) {
                        let _: Need = need("installation-plan", pointer.as_str().unwrap().trim_start_matches('#'));
                    }
                }
            }
            for pointer in said["unused"].as_array().unwrap() {
                let pointer = pointer.as_str().unwrap().trim_start_matches('#');
                assert!(request.pointer(pointer).is_some(), "{pointer} was not sent");
            }
        }
    }
}

#[test]
fn a_default_that_several_parts_take_is_said_once() {
    let assumed_of = |request: &Value, expected: &[&str]| {
        let report = plan(request);
        let assumed = report["assumed"].as_array().unwrap();
        for pointer in expected {
            let count = assumed.iter().filter(|assumed| assumed["about"] == *pointer).count();
            assert_eq!(count, 1, "{pointer}: {assumed:#?}");
        }
        for (index, one) in assumed.iter().enumerate() {
            assert!(!assumed[..index].contains(one), "{one:#}");
        }
    };
    let bare = without(&without(&full(), "/surface"), "/sealant");
    assumed_of(&bare, &["#/surface", "#/sealant/kind"]);
    let poured = with(&full(), "/sealant", json!({ "kind": "hot_applied" }));
    assumed_of(&poured, &["#/sealant/data_sheet/pour_temperature"]);
    let on_asphalt = json!({ "opening": { "width": "24 ft", "barrier": "slide_gate" } });
    assumed_of(&on_asphalt, &["#/slot/cover"]);
}

#[test]
fn findings_of_all_parts_come_once_the_gravest_first() {
    let report = plan(&with(&full(), "/backer_rod/form", "continuous"));
    let findings = report["findings"].as_array().unwrap();
    let rank =
        |finding: &Value| ["stop", "warning", "note"].iter().position(|level| finding["level"] == *level).unwrap();
    let ranks: Vec<_> = findings.iter().map(rank).collect();
    assert!(ranks.is_sorted(), "{ranks:?}");
    for (index, finding) in findings.iter().enumerate() {
        assert!(!findings[..index].contains(finding), "twice: {finding}");
    }
    for part in ["sizing", "detector", "materials", "cure"] {
        for finding in report[part]["findings"].as_array().unwrap() {
            assert!(findings.contains(finding), "{part}: {finding}");
        }
    }
    assert!(findings.iter().any(|finding| finding["code"] == "continuous_rod" && finding["level"] == "stop"));
}

#[test]
fn a_field_that_one_part_needs_is_not_unused() {
    let report = plan(&full());
    let unused = report["unused"].to_string();
    // The sizing has no use for the edge of the slab, the estimate has.
    assert!(report["sizing"]["unused"].to_string().contains("#/slab/edge_distance"));
    assert!(!unused.contains("edge_distance"), "{unused}");
    assert!(!unused.contains("in_slot") && !unused.contains("in_conduit"), "{unused}");
    assert!(unused.contains("#/detector/insulation_min_megohm"), "{unused}");
}

#[test]
fn all_faults_of_all_parts_come_together() {
    let request = with(&with(&full(), "/opening/width", "24"), "/saw/blade_diameter", "14");
    let request = with(&with(&request, "/detector/threshold_percent", -1), "/start", "tomorrow");
    let answer = calculate("installation-plan", &with(&request, "/lead_in/length", "60"));
    let mut faults = answer.faults();
    faults.sort();
    let pointers: Vec<_> = faults.iter().map(|(pointer, _)| pointer.as_str()).collect();
    let expected =
        ["#/detector/threshold_percent", "#/lead_in/length", "#/opening/width", "#/saw/blade_diameter", "#/start"];
    assert_eq!(pointers, expected, "{:#}", answer.body);
}

#[test]
fn weather_needs_a_start_and_a_cure_that_is_asked_for_needs_weather() {
    let answer = calculate("installation-plan", &without(&full(), "/start"));
    assert_eq!(answer.faults(), [("#/start".to_owned(), "field_missing".to_owned())]);
    let request = json!({ "parts": ["cure"], "opening": { "width": "24 ft", "barrier": "slide_gate" } });
    assert_eq!(
        calculate("installation-plan", &request).faults(),
        [("#/weather".to_owned(), "field_missing".to_owned())]
    );
}

#[test]
fn commissioning_says_what_a_meter_shows_and_what_to_try() {
    let report = plan(&full());
    let loops = report["sizing"]["loops"].as_array().unwrap();
    let readings = report["commissioning"]["readings"].as_array().unwrap();
    assert_eq!(readings.len(), 4 * loops.len());
    for (sized, of_loop) in loops.iter().zip(readings.chunks(4)) {
        let [resistance, inductance, quality, insulation] = of_loop else { panic!() };
        assert_eq!(resistance["label"], sized["role"]);
        assert_eq!(resistance["expected"], sized["electrical"]["dc_resistance_ohm"]);
        let band = |reading: &Value| (reading["low"].as_f64().unwrap(), reading["high"].as_f64().unwrap());
        let (low, high) = band(resistance);
        let expected = resistance["expected"].as_f64().unwrap();
        // Copper at -20 and 40 °C, 0.00393 per kelvin from 20 °C, and 5 % for strands and meter.
        assert!((low / expected - (1.0 - 0.00393 * 40.0) * 0.95).abs() < 2e-3, "{low} of {expected}");
        assert!((high / expected - (1.0 + 0.00393 * 20.0) * 1.05).abs() < 2e-3, "{high} of {expected}");
        assert_eq!(inductance["expected"], sized["electrical"]["terminal_inductance_uh"]);
        assert_eq!(inductance["low"], sized["electrical"]["as_built_low_uh"]);
        assert_eq!(quality["expected"], sized["electrical"]["quality_factor"]);
        assert_eq!(insulation["at_least"], 100.0);
        assert_eq!(insulation["stages"], json!(["after_winding", "before_sealing", "after_sealing"]));
    }
    let trials = |report: &Value| {
        let trials = report["commissioning"]["trials"].as_array().unwrap();
        trials.iter().map(|trial| trial["trial"].as_str().unwrap().to_owned()).collect::<Vec<_>>()
    };
    let gate = ["tune_empty", "cycle_gate", "smallest_vehicle", "highest_vehicle", "power_fail", "protective_devices"];
    assert_eq!(trials(&report), gate);
    let lane = plan(&json!({
        "opening": { "width": "12 ft", "barrier": "none" }, "vehicles": ["passenger_car"], "site_hazards": ["adjacent_traffic"]
    }));
    assert_eq!(trials(&lane), ["tune_empty", "next_lane", "smallest_vehicle"]);
}

#[test]
fn the_work_has_an_order_and_each_step_its_caution() {
    let steps = |request: &Value| {
        let report = plan(request);
        let known: Vec<_> =
            report["cautions"].as_array().unwrap().iter().map(|caution| caution["code"].clone()).collect();
        let steps = report["steps"].as_array().unwrap().clone();
        for step in &steps {
            let cautions = step["cautions"].as_array().unwrap();
            assert!(!cautions.is_empty(), "{step}");
            assert!(cautions.iter().all(|caution| known.contains(caution)), "{step}");
        }
        steps.iter().map(|step| step["step"].as_str().unwrap().to_owned()).collect::<Vec<_>>()
    };
    let sawn = [
        "locate",
        "guard",
        "isolate",
        "mark_out",
        "cut",
        "clean",
        "lay",
        "measure_open",
        "seal",
        "protect",
        "terminate",
        "measure_sealed",
        "power_up",
        "prove",
        "restore",
    ];
    assert_eq!(steps(&full()), sawn);
    let buried = steps(&json!({ "opening": { "width": "12 ft", "barrier": "none" }, "surface": "gravel" }));
    assert!(
        buried.contains(&"bed".to_owned())
            && !buried.contains(&"cut".to_owned())
            && !buried.contains(&"isolate".to_owned())
    );
}

#[test]
fn loops_side_by_side_are_planned_one_by_one() {
    let request = json!({
        "opening": { "width": "60 ft", "barrier": "slide_gate" }, "vehicles": ["small_motorcycle", "passenger_car"], "surface": "existing_asphalt"
    });
    let report = plan(&request);
    let count: u64 =
        report["sizing"]["loops"].as_array().unwrap().iter().map(|sized| sized["count"].as_u64().unwrap()).sum();
    let settings = report["detector"]["settings"].as_array().unwrap().len() as u64;
    assert!(count > 3, "the opening is wide enough for one loop");
    assert_eq!(settings, count);
    let estimated = report["materials"]["loops"].as_array().unwrap();
    assert_eq!(estimated.iter().map(|one| one["quantity"].as_u64().unwrap()).sum::<u64>(), count);
}
