//! Openings as they are drawn for the laws of a plan.

use loopwright::practice::detectors::Wiring;
use loopwright::practice::roles::Role;
use loopwright::practice::site::{Barrier, Construction};
use loopwright::vocabulary::Vocabulary;
use proptest::prelude::*;
use serde_json::{Value, json};

/// How many openings are drawn.
pub fn count() -> u32 {
    std::env::var("LOOPWRIGHT_TEST_OPENINGS").map_or(40, |count| count.parse().unwrap())
}

/// A length of so many tenths of a foot, in one of the two systems.
fn length(tenths: u32, metric: bool) -> String {
    let feet = f64::from(tenths) / 10.0;
    if metric { format!("{:.1} m", feet * 0.3048) } else { format!("{feet} ft") }
}

/// The codes of a closed list.
fn codes<V: Vocabulary>() -> Vec<&'static str> {
    V::ALL.iter().map(|member| member.code()).collect()
}

fn one_of<T: Clone + std::fmt::Debug + 'static>(choices: &[T]) -> impl Strategy<Value = T> + use<T> {
    prop::sample::select(choices.to_vec())
}

/// Legs, tail, turns and construction of an item of stock.
type DrawnItem = (u32, u32, u32, Option<u32>, Option<&'static str>);

/// An item of stock round the sizes that openings need.
fn stock_item() -> impl Strategy<Value = DrawnItem> {
    (
        one_of(&[40_u32, 60, 60, 60, 70, 80]),
        one_of(&[40_u32, 60, 80, 100, 160, 200]),
        one_of(&[200_u32, 500, 530, 1000, 4000]),
        prop::option::of(2..5_u32),
        prop::option::of(one_of(&["preformed_saw_cut", "preformed_direct_burial"])),
    )
}

/// A plan's request: all barriers, roles, constructions and surfaces, both systems, stock, long lead-ins, steps, wirings, slots and gauges.
pub fn opening() -> impl Strategy<Value = Value> {
    let place = (
        one_of(&codes::<Barrier>()),
        80..320_u32,
        any::<bool>(),
        prop::option::of(prop::sample::subsequence(codes::<Role>(), 1..5)),
        prop::option::of(prop::sample::subsequence(
            vec![
                "passenger_car",
                "pickup",
                "high_bed_truck",
                "tractor_trailer",
                "small_motorcycle",
                "car_with_trailer",
                "bus",
                "forklift",
                "golf_cart",
            ],
            1..4,
        )),
        prop::option::weighted(0.3, (2..20_u32, 4..16_u32)),
    );
    let make = (
        prop::option::of(one_of(&codes::<Construction>())),
        one_of(&["existing_asphalt", "existing_concrete", "new_concrete", "gravel"]),
        prop::option::of(one_of(&[200_u32, 500, 900, 1500, 3000])),
        prop::option::of(prop::collection::vec(stock_item(), 1..5)),
        prop::option::weighted(0.3, one_of(&["adjacent_traffic", "reinforcing_mesh"])),
        prop::option::weighted(0.2, 5..35_u32),
        prop::option::weighted(0.2, Just("1/2 in")),
        prop::option::weighted(0.3, (1..5_u32, 1..5_u32)),
    );
    let unit = (
        prop::option::weighted(0.3, one_of(&codes::<Wiring>())),
        prop::option::weighted(0.3, one_of(&[0.02_f64, 0.05, 0.13, 0.2, 0.32])),
        prop::option::weighted(
            0.3,
            one_of(&[vec![0.5, 0.25, 0.1, 0.05], vec![0.32, 0.16, 0.08, 0.04, 0.02], vec![0.4]]),
        ),
        prop::option::weighted(0.3, one_of(&["1/2 in", "1 in", "1-1/4 in", "1-1/2 in", "50 mm"])),
        prop::option::weighted(0.2, one_of(&["1/8 in", "0.15 in", "1/4 in"])),
        prop::option::weighted(0.2, one_of(&["10 AWG", "16 AWG", "2.5 mm2"])),
    );
    let decided = (
        prop::option::weighted(0.3, (3..9_u32, 1..6_u32, 2..40_u32, any::<bool>())),
        prop::option::weighted(0.2, 20..200_u32),
        prop::option::weighted(0.3, any::<bool>()),
        one_of(&["level", "coiled"]),
    );
    (place, make, unit, decided).prop_map(|(place, make, unit, decided)| {
        let (barrier, width, metric, roles, vehicles, run_up) = place;
        let (construction, surface, lead_in, stock, hazard, setback, finish, parts) = make;
        let (wiring, threshold, steps, depth, slot_width, gauge) = unit;
        // A finish takes of the depth that was sent, and only a plan knows both.
        let finish = finish.filter(|_| depth.is_none());
        let mut plan = json!({ "opening": { "width": length(width, metric), "barrier": barrier }, "surface": surface });
        let mut add = |name: &str, value: Option<Value>| {
            if let Some(value) = value {
                plan[name] = value;
            }
        };
        let (fixed, drive, watched, open) = decided;
        let first = roles.as_ref().and_then(|roles| roles.first().copied());
        if let Some((role, (leg, turns, distance, has_distance))) = first.zip(fixed) {
            let mut fixed = json!({ "role": role, "along_travel": length(leg * 10, metric), "turns": turns });
            if has_distance && role != "closing" {
                fixed["distance"] = length(distance * 10, metric).into();
            }
            add("fixed_loops", Some(json!([fixed])));
        }
        add("roles", roles.map(Value::from));
        add("vehicles", vehicles.map(Value::from));
        add("construction", construction.map(Value::from));
        add("wiring", wiring.map(Value::from));
        add("site_hazards", hazard.map(|hazard| json!([hazard])));
        // Of the way, so many tenths lie in a slot and so many in conduit.
        let way = |tenths: u32| {
            let mut way = json!({ "length": length(tenths, metric) });
            if let Some((in_slot, in_conduit)) = parts {
                way["in_slot"] = length(tenths * in_slot / 10, metric).into();
                way["in_conduit"] = length(tenths * in_conduit / 10, metric).into();
            }
            way
        };
        add("lead_in", lead_in.map(way));
        add(
            "sealant",
            finish.map(|finish| json!({ "kind": "one_part_moisture_cure", "finish_below_surface": finish })),
        );
        let item = |(index, (along, across, tail, turns, made)): (usize, DrawnItem)| {
            let mut item = json!({
                "sku": format!("TIB-{index}"),
                "along_travel": length(along, metric),
                "across_lane": length(across, metric),
                "lead_in_length": length(tail, metric),
            });
            if let Some(turns) = turns {
                item["turns"] = turns.into();
            }
            if let Some(made) = made {
                item["construction"] = made.into();
            }
            item
        };
        let slot = [("depth", depth), ("width", slot_width)].into_iter().filter_map(|(name, text)| Some((name, text?)));
        let slot: serde_json::Map<_, _> = slot.map(|(name, text)| (name.to_owned(), text.into())).collect();
        add("slot", Some(Value::Object(slot)).filter(|slot| *slot != json!({})));
        add("wire", gauge.map(|gauge| json!({ "gauge": gauge })));
        add("stock", stock.map(|stock| stock.into_iter().enumerate().map(item).collect()));
        let detector = match (threshold, steps) {
            (None, None) => None,
            (Some(threshold), _) => Some(json!({ "threshold_percent": threshold })),
            (None, Some(steps)) => Some(json!({ "threshold_steps_percent": steps })),
        };
        add("detector", detector);
        if let Some(tenths) = setback.filter(|tenths| 2 * tenths < 8 * width / 10) {
            plan["opening"]["edge_setback"] = length(tenths, metric).into();
        }
        if let Some(drive) = drive {
            plan["opening"]["drive_length"] = length(drive * 10, metric).into();
        }
        if let Some(watched) = watched {
            plan["opening"]["seen_otherwise"] = watched.into();
        }
        if barrier == "overhead_door" {
            plan["opening"]["leaf_open"] = open.into();
        }
        if let Some((speed, time)) = run_up {
            plan["opening"]["approach_speed"] = format!("{speed} mph").into();
            plan["opening"]["opening_time"] = format!("{time} s").into();
        }
        plan
    })
}
