//! Sound requests in which every field is sent, and how a test changes one place of them.
//!
//! The job is the yard gate of the invented Tern Island Boatyard.

use serde_json::{Value, json};

use super::harness::description;

/// A loop-characteristics request with every field.
pub fn loop_characteristics() -> Value {
    json!({
        "loop": {
            "shape": "rectangle", "along_travel": "6 ft", "across_lane": "20 ft", "turns": 3, "corner_cut": "12 in",
            "cover": "1 in", "wire": {
                "gauge": "14 AWG", "over_insulation": "0.130 in", "over_jacket": "3/16 in", "insulation_rating": "194 °F"
            }
        },
        "lead_in": {
            "length": "60 ft", "in_slot": "10 ft", "in_shared_slot": "0 ft", "in_conduit": "40 ft", "pair": "twisted", "spare": "3 ft", "gauge": "14 AWG",
            "inductance": "0.22 uH/ft"
        },
        "frequency_khz": 50, "temperature": "68 °F", "reinforcement": { "depth_below_loop": "3 in" },
        "shunt_capacitance_nf": 0.5
    })
}

/// A loop-sizing request with every field.
pub fn loop_sizing() -> Value {
    json!({
        "opening": {
            "width": "24 ft", "barrier": "slide_gate", "edge_setback": "2 ft", "approach_speed": "5 mph",
            "opening_time": "4 s", "drive_length": "80 ft", "leaf_height": "6 ft", "leaf_ground_gap": "4 in",
            "leaf_open": "level", "unit_side": "right", "seen_otherwise": true
        },
        "roles": ["exit", "obstruction_outside", "obstruction_inside"],
        "vehicles": ["passenger_car", "high_bed_truck"],
        "surface": "existing_concrete",
        "site_hazards": ["freezing_climate", "pavement_joint"],
        "construction": "hand_wound",
        "lead_in": {
            "length": "60 ft", "in_slot": "10 ft", "in_shared_slot": "0 ft", "in_conduit": "40 ft", "pair": "twisted", "spare": "3 ft", "gauge": "14 AWG",
            "inductance": "0.22 uH/ft"
        },
        "wire": {
                "gauge": "14 AWG", "over_insulation": "0.130 in", "over_jacket": "3/16 in", "insulation_rating": "194 °F"
            },
        "slot": { "width": "3/16 in", "depth": "2 in", "cover": "1 in" },
        "slab": {
            "thickness": "6 in", "reinforcement_depth": "3 in", "edge_distance": "10 ft", "is_suspended": false,
            "cut_approved": true
        },
        "fixed_loops": [
            {
                "role": "exit", "shape": "rectangle", "along_travel": "6 ft", "across_lane": "6 ft", "turns": 3,
                "distance": "30 ft"
            }
        ],
        "detector": {
            "envelope": "standard_minimum", "inductance_min_uh": 40, "inductance_max_uh": 900, "quality_factor_min": 5,
            "frequency_min_khz": 20, "frequency_max_khz": 90, "tuning_capacitance_nf": 60, "threshold_percent": 0.1,
            "threshold_steps_percent": [0.5, 0.1, 0.02], "insulation_min_megohm": 1
        },
        "stock": [
            {
                "sku": "TIB-0620-60", "along_travel": "6 ft", "across_lane": "20 ft", "lead_in_length": "60 ft",
                "turns": 3, "construction": "preformed_saw_cut"
            },
            { "sku": "TIB-0618-60", "along_travel": "6 ft", "across_lane": "18 ft", "lead_in_length": "60 ft" }
        ]
    })
}

/// A vehicle-response request with every field, but for the class that stands instead of the plate.
pub fn vehicle_response() -> Value {
    let Value::Object(mut request) = loop_characteristics() else { unreachable!("a request is an object") };
    request.retain(|name, _| ["loop", "lead_in"].contains(&name.as_str()));
    let own = json!({
        "plate": { "width": "6 ft", "length": "15 ft", "effective_height": "20 in" },
        "offset_across": "2 ft", "threshold_percent": 0.1, "positions": 11, "lane_width": "24 ft"
    });
    request.extend(own.as_object().unwrap().clone());
    Value::Object(request)
}

/// A detector-compatibility request with every field.
pub fn detector_compatibility() -> Value {
    let (coil, unit) = (loop_characteristics(), loop_sizing());
    json!({
        "loops": [{
            "label": "inside", "role": "obstruction_inside", "loop": coil["loop"], "lead_in": coil["lead_in"],
            "position": { "along": "-7 ft", "across": "0 ft" }, "lane_width": "24 ft", "lane_middle": "0 ft", "output": "presence", "presence_time": "5 min",
            "on_loop_failure": "detect", "reinforcement": { "depth_below_loop": "4 in" }, "unit": "1"
        }],
        "wiring": "separate", "detector": unit["detector"], "vehicles": ["passenger_car", "pickup"]
    })
}

/// A material-estimate request with every field.
pub fn material_estimate() -> Value {
    let (coil, sizing) = (loop_characteristics(), loop_sizing());
    json!({
        "loops": [{
            "label": "inside", "loop": coil["loop"], "construction": "hand_wound", "quantity": 2, "lead_in": coil["lead_in"], "unit": "1",
            "slot": { "width": "3/16 in", "depth": "2 in", "cover": "1 in" }
        }],
        "slot": { "width": "1/4 in", "depth": "2 in", "cover": "1 in" },
        "lead_in_slot": { "width": "3/8 in", "depth": "2 in", "cover": "1 in" },
        "saw": { "blade_diameter": "14 in", "corner": "diagonal", "core_diameter": "1-1/2 in", "blade_life": "500 ft", "owns_blades": false },
        "sealant": {
            "kind": "one_part_moisture_cure", "cartridge": "29 fl oz", "finish_below_surface": "1/8 in",
            "data_sheet": {
                "skin_over": "3 h", "open_to_traffic": "12 h", "full_cure": "5 d", "depth_per_day": "1/8 in/day", "pot_life": "20 min",
                "at_temperature": "73 °F", "at_relative_humidity_percent": 50, "minimum_application_temperature": "40 °F",
                "maximum_application_temperature": "100 °F", "activation_energy_kj_per_mol": 50, "pour_temperature": "387 °F",
                "damp_slot_allowed": false
            },
            "made_on": "2026-05-04", "shelf_life": "365 d"
        },
        "backer_rod": { "form": "pieces", "piece_length": "2 in", "spacing": "2 ft", "diameter": "1/4 in" },
        "wire_spools": [{ "length": "500 ft", "sku": "TIB-W500" }, { "length": "1000 ft" }],
        "wire_allowance_percent": 5, "waste_percent": 10, "surface": "existing_concrete",
        "slab": {
            "thickness": "7 in", "reinforcement_depth": "3 in", "edge_distance": "4 ft", "is_suspended": false, "cut_approved": false
        },
        "site_hazards": ["freezing_climate", "pavement_joint"], "crossings": 2,
        "agency_minimum": { "agency": "Tern Island Harbour Office", "slot_width": "1/8 in" },
        "prices": {
            "currency": "USD", "items": { "sealant_cartridge": "24.50", "TIB-W500": "98.00" }, "hourly_rate": "95"
        },
        "productivity": {
            "set_up": "45 min", "saw_speed": "3 ft/min", "core": "5 min", "cleaning_speed": "8 ft/min", "pull": "5 min",
            "burial": "30 min", "sealing_speed": "5 ft/min", "termination": "10 min", "test": "5 min"
        },
        "stock": sizing["stock"]
    })
}

/// A cure-guidance request with every field, but for the place that stands instead of the conditions.
pub fn cure_guidance() -> Value {
    let (coil, unit) = (loop_characteristics(), loop_sizing());
    let hour = |time: &str, air: &str, humidity: u32, dew_point: &str| {
        json!({
            "time": time, "air": air, "relative_humidity_percent": humidity, "dew_point": dew_point, "surface": "64 °F",
            "precipitation_probability_percent": 5, "precipitation": "0 in"
        })
    };
    json!({
        "sealant": {
            "kind": "one_part_moisture_cure", "cartridge": "29 fl oz", "finish_below_surface": "1/8 in",
            "data_sheet": {
                "skin_over": "1 h", "open_to_traffic": "3 h", "full_cure": "4 d", "depth_per_day": "1/4 in/day",
                "pot_life": "30 min", "at_temperature": "73 °F", "at_relative_humidity_percent": 50,
                "minimum_application_temperature": "35 °F", "maximum_application_temperature": "95 °F",
                "activation_energy_kj_per_mol": 55, "pour_temperature": "387 °F", "damp_slot_allowed": false
            },
            "made_on": "2026-02-28", "shelf_life": "300 d"
        },
        "slot": unit["slot"],
        "wire": coil["loop"]["wire"],
        "start": "2026-06-01T08:15:00-04:00",
        "work_duration": "45 min",
        "surface_condition": "dry",
        "needed_open_by": "2026-06-01T17:00:00-04:00",
        "weather": { "conditions": [
            hour("2026-06-01T08:00:00-04:00", "62 °F", 70, "52 °F"),
            hour("2026-06-01T09:00:00-04:00", "66 °F", 62, "52.5 °F"),
            hour("2026-06-01T12:00:00-04:00", "70 °F", 55, "53 °F")
        ] }
    })
}

/// An existing-loop request with every field, but for those that need another.
pub fn existing_loop() -> Value {
    let (coil, unit) = (loop_characteristics(), detector_compatibility());
    json!({
        "along_travel": "6 ft", "across_lane": "8 ft", "size_uncertainty": "5 %", "lead_in": coil["lead_in"],
        "readings": {
            "insulation_megohm": 300, "insulation_over_range": false, "insulation_measured": "wet",
            "resistance_ohm": 0.6, "resistance_over_range": false, "inductance_uh": 104, "inductance_over_range": false,
            "whole_capacitance_nf": 0.9, "quality_factor": 20, "frequency_khz": 45,
            "temperature": "50 °F", "taken_at": "detector_end"
        },
        "detector": unit["detector"], "vehicles": ["passenger_car", "small_motorcycle"], "role": "obstruction_inside",
        "lane_width": "12 ft", "over_steel": true, "reinforcement": coil["reinforcement"], "drive_over_passed": true
    })
}

/// All calculations, each with its request that has every field. A new one is added here, and the tests of refusals, bodies,
/// reports and laws cover it.
pub fn all() -> [(&'static str, Value); 7] {
    [
        ("loop-characteristics", loop_characteristics()),
        ("vehicle-response", vehicle_response()),
        ("loop-sizing", loop_sizing()),
        ("detector-compatibility", detector_compatibility()),
        ("material-estimate", material_estimate()),
        ("cure-guidance", cure_guidance()),
        ("existing-loop", existing_loop()),
    ]
}

/// The same request with another value at a place that it has, or with a new member of an object.
pub fn with(request: &Value, pointer: &str, value: impl Into<Value>) -> Value {
    let (mut request, value) = (request.clone(), value.into());
    if let Some(place) = request.pointer_mut(pointer) {
        *place = value;
    } else {
        let (parent, name) = pointer.rsplit_once('/').unwrap();
        request.pointer_mut(parent).unwrap().as_object_mut().unwrap().insert(name.to_owned(), value);
    }
    request
}

/// The same request without the member at a place.
pub fn without(request: &Value, pointer: &str) -> Value {
    let mut request = request.clone();
    let (parent, name) = pointer.rsplit_once('/').unwrap();
    request.pointer_mut(parent).unwrap().as_object_mut().unwrap().shift_remove(name).unwrap();
    request
}

/// The object whose members the caller names.
const NAMED_BY_CALLER: &str = "/prices/items";

/// Every place below the root, with what stands there; the members that the caller names are no places of the description.
pub fn places(request: &Value) -> Vec<(String, Value)> {
    fn walk(pointer: &str, value: &Value, places: &mut Vec<(String, Value)>) {
        let mut each = |name: String, member: &Value| {
            let pointer = format!("{pointer}/{name}");
            places.push((pointer.clone(), member.clone()));
            walk(&pointer, member, places);
        };
        match value {
            Value::Object(_) if pointer == NAMED_BY_CALLER => {}
            Value::Object(members) => members.iter().for_each(|(name, member)| each(name.clone(), member)),
            Value::Array(items) => items.iter().enumerate().for_each(|(index, item)| each(index.to_string(), item)),
            _ => {}
        }
    }
    let mut places = Vec::new();
    walk("", request, &mut places);
    places
}

/// Whether a request can do without what stands at a place.
pub enum Need {
    /// A field that must be sent.
    Required,
    /// A field that may be left out.
    Optional,
    /// An item of a list.
    Item,
}

/// What the description says of a place of a request: whether it is needed, and its schema.
pub fn described(calculation: &str, pointer: &str) -> (Need, &'static Value) {
    let resolve = |schema: &'static Value| match schema.get("$ref") {
        Some(reference) => description().pointer(reference.as_str().unwrap().trim_start_matches('#')).unwrap(),
        None => schema,
    };
    let body = &description()["paths"][format!("/v1/{calculation}")]["post"]["requestBody"]["content"];
    let mut schema = resolve(&body["application/json"]["schema"]);
    let mut need = Need::Required;
    for name in pointer.split('/').skip(1) {
        if schema["type"] == "array" {
            (schema, need) = (resolve(&schema["items"]), Need::Item);
            continue;
        }
        let required = schema["required"].as_array().is_some_and(|names| names.iter().any(|known| known == name));
        need = if required { Need::Required } else { Need::Optional };
        // A map has entries by names of the caller's own.
        let entry = schema.get("additionalProperties").filter(|entry| entry.is_object());
        let place = schema["properties"].get(name).or(entry);
        schema = resolve(place.unwrap_or_else(|| panic!("{pointer} is not described")));
    }
    (need, schema)
}

/// Whether the description asks for a place of a request.
pub fn need(calculation: &str, pointer: &str) -> Need {
    described(calculation, pointer).0
}
