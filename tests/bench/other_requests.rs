//! The spaces of the calculations that are not asked for an opening.

use serde_json::{Value, json};

use super::{Gene, Genome, HAZARDS, LEAD_INS, LEGS, ROLES, RequestSpace, VEHICLES, feet_of, hourly, set, some};

const OBSERVATIONS: &[&str] = &[
    "fault_after_rain",
    "fault_in_frost",
    "stuck_in_detect",
    "never_detects",
    "intermittent",
    "detects_the_gate",
    "detects_next_lane",
    "drifts",
    "fault_when_pavement_flexes",
    "drops_high_vehicles",
    "misses_two_wheelers",
    "stays_on_after_power_up",
    "misses_after_power_up",
    "never_closes",
];

pub(super) fn compatibility() -> RequestSpace {
    let genes = vec![
        ("count", Gene::Number(27)),
        ("leg", Gene::Number(LEGS.len() as u64 - 1)),
        ("other leg", Gene::Number(LEGS.len() as u64 - 1)),
        ("leg apart", Gene::Number(3)),
        ("other leg apart", Gene::Number(3)),
        ("corner", Gene::Number(2)),
        ("turns", Gene::Number(19)),
        ("turns apart", Gene::Number(3)),
        ("role", Gene::Number(7)),
        ("shape", Gene::Number(3)),
        ("rows", Gene::Number(5)),
        ("spacing", Gene::Number(30)),
        ("lead_in", Gene::Number(LEAD_INS.len() as u64 - 1)),
        ("lane", Gene::Number(7)),
        ("unit", Gene::Number(3)),
        ("steel", Gene::Number(3)),
        ("wiring", some(&["series", "parallel", "separate"])),
        ("vehicles", Gene::Some(VEHICLES)),
        ("detector.threshold_percent", Gene::Choice([0.001, 0.02, 0.05, 0.32, 5.0].map(|step| json!(step)).to_vec())),
        (
            "detector.threshold_steps_percent",
            Gene::Choice(vec![json!((0..32).map(|step| 10.0 * 0.8_f64.powi(step)).collect::<Vec<_>>())]),
        ),
        ("detector.inductance_min_uh", Gene::Choice(vec![json!(20.0), json!(100.0), json!(300.0)])),
        ("detector.tuning_capacitance_nf", Gene::Choice(vec![json!(10.0), json!(68.0)])),
    ];
    let build = |genome: &Genome<'_>, request: &mut Value| {
        if request["detector"]["threshold_percent"].is_number() {
            request["detector"].as_object_mut().expect("an object").remove("threshold_steps_percent");
        }
        if request["detector"].is_null() {
            request.as_object_mut().expect("an object").remove("detector");
        }
        let one = |index: u64| {
            let leg = (feet_of(LEGS[genome.number("leg") as usize])
                + 0.5 * (index * genome.number("leg apart")) as f64)
                .min(200.0);
            let other = (feet_of(LEGS[genome.number("other leg") as usize])
                + 0.25 * (index * genome.number("other leg apart")) as f64)
                .min(200.0);
            let spacing = leg + genome.number("spacing") as f64 - 2.0;
            let rows = genome.number("rows").max(1);
            let corner = ["6 in", "0 in", "18 in"][genome.number("corner") as usize];
            let role = if genome.number("role") == 7 { index % 7 } else { genome.number("role") };
            let mut one = json!({
                "label": format!("loop {index}"), "role": ROLES[role as usize],
                "loop": {
                    "shape": if genome.number("shape") == 0 { "quadrupole" } else { "rectangle" },
                    "along_travel": format!("{leg:.2} ft"), "across_lane": format!("{other:.2} ft"),
                    "turns": 1 + (genome.number("turns") + index * genome.number("turns apart")) % 20,
                    "corner_cut": corner,
                },
                "lead_in": { "length": LEAD_INS[genome.number("lead_in") as usize] },
            });
            if genome.number("spacing") > 0 {
                let (along, across) = ((index / rows) as f64 * spacing, (index % rows) as f64 * (other + 1.0));
                one["position"] = json!({ "along": format!("{:.2} ft", along.min(1000.0)), "across": format!("{:.2} ft", across.min(1000.0)) });
            }
            let lane = genome.number("lane");
            if lane > 3 {
                one["lane_width"] = json!("200 ft");
                if lane > 5 {
                    one["lane_middle"] = json!(format!("{} ft", (lane - 6) * index));
                }
            }
            if genome.number("unit") == 0 {
                one["unit"] = json!("one");
            }
            if genome.number("steel") == 0 {
                one["reinforcement"] = json!({ "depth_below_loop": "2 in" });
            }
            one
        };
        set(request, "loops", json!((0..=genome.number("count")).map(one).collect::<Vec<_>>()));
    };
    RequestSpace { calculation: "detector-compatibility", genes, build }
}

/// Says of a loop what has genes of its own, and a lead-in where none was drawn.
fn set_loop(genome: &Genome<'_>, request: &mut Value) {
    set(request, "loop.along_travel", json!(LEGS[genome.number("along") as usize]));
    set(request, "loop.across_lane", json!(LEGS[genome.number("across") as usize]));
    set(request, "loop.turns", json!(genome.number("turns") + 1));
    if request["lead_in"].is_null() {
        set(request, "lead_in.length", json!("50 ft"));
    }
}

pub(super) fn response() -> RequestSpace {
    let mut vehicles = some(VEHICLES);
    if let Gene::Choice(values) = &mut vehicles {
        values.sort_by_key(std::string::ToString::to_string);
    }
    let genes = vec![
        ("loop.shape", some(&["quadrupole"])),
        ("along", Gene::Number(LEGS.len() as u64 - 1)),
        ("across", Gene::Number(LEGS.len() as u64 - 1)),
        ("turns", Gene::Number(19)),
        ("loop.corner_cut", some(&["0 in", "6 in", "10 ft"])),
        ("vehicle", vehicles),
        ("plate", Gene::Number(8)),
        ("offset_across", some(&["0 ft", "1 ft", "3 ft", "20 ft"])),
        ("threshold_percent", Gene::Choice([0.001, 0.02, 0.05, 0.32, 3.0].map(|step| json!(step)).to_vec())),
        ("positions", Gene::Choice(vec![json!(2), json!(101), json!(201)])),
        ("lane_width", some(&["3 ft", "40 ft", "200 ft"])),
        ("lead_in.length", some(LEAD_INS)),
    ];
    let build = |genome: &Genome<'_>, request: &mut Value| {
        set_loop(genome, request);
        if request["vehicle"].is_null() {
            let sides = ["1 ft", "2 m", "4 m"];
            let plate = genome.number("plate") as usize;
            let length = ["1 ft", "5 m", "16 m"][plate / 3 % 3];
            set(request, "plate", json!({ "width": sides[plate % 3], "length": length, "effective_height": "20 in" }));
        }
    };
    RequestSpace { calculation: "vehicle-response", genes, build }
}

pub(super) fn existing() -> RequestSpace {
    let numbers = |values: &[f64]| Gene::Choice(values.iter().map(|value| json!(value)).collect());
    let genes = vec![
        ("along", Gene::Number(LEGS.len() as u64 - 1)),
        ("across", Gene::Number(LEGS.len() as u64 - 1)),
        ("size_uncertainty", some(&["0 %", "5 %", "30 %"])),
        ("readings.inductance_uh", numbers(&[20.0, 60.0, 101.0, 300.0, 1000.0, 5000.0])),
        ("readings.resistance_ohm", numbers(&[0.2, 0.6, 5.0])),
        ("vehicles", Gene::Some(VEHICLES)),
        ("role", some(ROLES)),
        ("lane_width", some(&["3 ft", "40 ft", "200 ft"])),
        ("over_steel", Gene::Choice(vec![json!(true), json!(false)])),
        ("lead_in.length", some(LEAD_INS)),
        ("detector.threshold_percent", numbers(&[0.001, 0.02, 0.32])),
    ];
    let build = |genome: &Genome<'_>, request: &mut Value| {
        set(request, "along_travel", json!(LEGS[genome.number("along") as usize]));
        set(request, "across_lane", json!(LEGS[genome.number("across") as usize]));
    };
    RequestSpace { calculation: "existing-loop", genes, build }
}

pub(super) fn characteristics() -> RequestSpace {
    let genes = vec![
        ("loop.shape", some(&["quadrupole"])),
        ("along", Gene::Number(LEGS.len() as u64 - 1)),
        ("across", Gene::Number(LEGS.len() as u64 - 1)),
        ("turns", Gene::Number(19)),
        ("loop.corner_cut", some(&["0 in", "6 in", "10 ft"])),
        ("lead_in.length", some(LEAD_INS)),
        ("frequency_khz", Gene::Choice(vec![json!(1.0), json!(500.0)])),
        ("reinforcement.depth_below_loop", some(&["2 in", "12 in"])),
        ("shunt_capacitance_nf", Gene::Choice(vec![json!(0.1), json!(10.0)])),
    ];
    RequestSpace { calculation: "loop-characteristics", genes, build: set_loop }
}

pub(super) fn materials() -> RequestSpace {
    let genes = vec![
        ("count", Gene::Number(49)),
        ("quantity", Gene::Choice(vec![json!(1), json!(20), json!(200)])),
        ("turns", Gene::Number(19)),
        ("spools", Gene::Number(10)),
        ("shelf", Gene::Number(500)),
        ("construction", Gene::Number(2)),
        ("surface", some(&["existing_asphalt", "existing_concrete", "gravel"])),
        ("site_hazards", Gene::Some(HAZARDS)),
        ("saw.corner", some(&["diagonal", "square_overrun", "cored"])),
        ("backer_rod.form", some(&["pieces", "continuous", "none"])),
        ("crossings", Gene::Choice(vec![json!(100)])),
    ];
    let build = |genome: &Genome<'_>, request: &mut Value| {
        let quantity = request.as_object_mut().expect("an object").remove("quantity").unwrap_or(json!(1));
        let construction = request.as_object_mut().expect("an object").remove("construction");
        drop(construction);
        let made =
            ["hand_wound", "preformed_saw_cut", "preformed_direct_burial"][genome.number("construction") as usize];
        let one = |index: u64| {
            json!({
                "label": format!("loop {index}"), "quantity": quantity, "construction": made,
                "loop": { "along_travel": format!("{} ft", 4 + index % 40), "across_lane": format!("{} ft", 6 + index), "turns": 1 + (genome.number("turns") + index) % 20 },
                "lead_in": { "length": format!("{} ft", 10 + 3 * index) },
            })
        };
        set(request, "loops", json!((0..=genome.number("count")).map(one).collect::<Vec<_>>()));
        let spools = genome.number("spools");
        if spools > 0 {
            let spool =
                |index: u64| json!({ "length": format!("{} ft", 500 + 37 * index), "sku": format!("TIB-W{index}") });
            set(request, "wire_spools", json!((0..spools).map(spool).collect::<Vec<_>>()));
        }
        let shelf = genome.number("shelf");
        if shelf > 200 {
            let item = |index: u64| {
                json!({
                    "sku": format!("TIB-{index}"), "along_travel": format!("{} ft", 4 + index % 40),
                    "across_lane": format!("{} ft", 6 + index % 50), "lead_in_length": "200 ft", "turns": 1 + index % 20,
                })
            };
            set(request, "stock", json!((0..shelf).map(item).collect::<Vec<_>>()));
        }
    };
    RequestSpace { calculation: "material-estimate", genes, build }
}

pub(super) fn cure() -> RequestSpace {
    let genes = vec![
        ("sealant.kind", some(&["one_part_moisture_cure", "two_part_reactive", "hot_applied"])),
        ("hours", Gene::Number(336)),
        ("air", Gene::Number(30)),
        ("work_duration", some(&["1 min", "60 min", "12 h"])),
        ("surface_condition", some(&["dry", "damp", "wet"])),
    ];
    let build = |genome: &Genome<'_>, request: &mut Value| {
        if request["sealant"].is_null() {
            set(request, "sealant.kind", json!("one_part_moisture_cure"));
        }
        set(request, "start", json!("2026-05-01T00:00:00-04:00"));
        set(request, "weather.conditions", hourly(genome.number("hours"), genome.number("air")));
    };
    RequestSpace { calculation: "cure-guidance", genes, build }
}

pub(super) fn faults() -> RequestSpace {
    let genes = vec![
        ("along", Gene::Number(LEGS.len() as u64 - 1)),
        ("turns", Gene::Number(19)),
        ("observations", Gene::Some(OBSERVATIONS)),
        ("readings.inductance_uh", Gene::Choice(vec![json!(0.0), json!(28.5), json!(104.0), json!(1000.0)])),
        ("readings.resistance_ohm", Gene::Choice(vec![json!(0.0), json!(0.6), json!(30.0)])),
        ("readings.insulation_megohm", Gene::Choice(vec![json!(0.0), json!(5.0), json!(500.0)])),
        ("readings.quality_factor", Gene::Choice(vec![json!(1.0), json!(20.0)])),
        ("design.lead_in.length", some(LEAD_INS)),
    ];
    let build = |genome: &Genome<'_>, request: &mut Value| {
        let leg = LEGS[genome.number("along") as usize];
        set(
            request,
            "design.loop",
            json!({ "along_travel": leg, "across_lane": "200 ft", "shape": "quadrupole", "turns": genome.number("turns") + 1 }),
        );
        if request["design"]["lead_in"].is_null() {
            set(request, "design.lead_in.length", json!("50 ft"));
        }
    };
    RequestSpace { calculation: "fault-finding", genes, build }
}
