//! Laws that hold for any loop, slot and count.

use proptest::prelude::*;
use serde_json::{Value, json};

use super::{estimate, number};

/// A job of wound loops: legs in tenths of a foot, turns, width and depth of the slot in 32nds of an inch, lead-in in feet.
#[derive(Clone, Debug)]
struct Drawn {
    along: u32,
    across: u32,
    turns: u32,
    width: u32,
    depth: u32,
    lead_in: u32,
    quantity: u32,
    waste: u32,
}

fn drawn() -> impl Strategy<Value = Drawn> {
    (20..400_u32, 20..400_u32, 1..6_u32, 4..16_u32, 48..96_u32, 0..200_u32, 1..20_u32, 0..40_u32).prop_map(
        |(along, across, turns, width, depth, lead_in, quantity, waste)| Drawn {
            along,
            across,
            turns,
            width,
            depth,
            lead_in,
            quantity,
            waste,
        },
    )
}

fn report(drawn: &Drawn) -> Value {
    let tenths = |n: u32| format!("{}.{} ft", n / 10, n % 10);
    estimate(&json!({
        "loops": [{
            "label": "drawn", "construction": "hand_wound", "quantity": drawn.quantity,
            "loop": { "along_travel": tenths(drawn.along), "across_lane": tenths(drawn.across), "turns": drawn.turns },
            "lead_in": { "length": format!("{} ft", drawn.lead_in) }
        }],
        "slot": { "width": format!("{}/32 in", drawn.width), "depth": format!("{}/32 in", drawn.depth), "cover": "1/2 in" },
        "waste_percent": drawn.waste
    }))
}

fn ml(report: &Value, name: &str) -> f64 {
    number(report, &format!("/volumes/{name}/ml"))
}

fn exact(report: &Value, item: &str) -> f64 {
    super::exact(report, item)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn the_parts_fill_the_slot_and_waste_comes_on_top(drawn in drawn()) {
        let report = report(&drawn);
        let parts = ml(&report, "wire") + ml(&report, "rod") + ml(&report, "left_open") + ml(&report, "sealant_net");
        // Each is rounded to a millilitre; what would overfill a slot is not counted in it.
        prop_assert!((ml(&report, "slot") - parts).abs() <= 3.0, "{:#}", report["volumes"]);
        let with_waste = ml(&report, "sealant_net") * (1.0 + f64::from(drawn.waste) / 100.0);
        prop_assert!((ml(&report, "sealant_with_waste") - with_waste).abs() <= 1.5);
        let cut = |name: &str| number(&report, &format!("/saw_cut/{name}/m"));
        prop_assert!((cut("total") - cut("straight") - cut("diagonals") - cut("overruns") - cut("lead_in")).abs() < 0.003);
    }

    #[test]
    fn a_quantity_only_multiplies(drawn in drawn()) {
        let (one, many) = (report(&Drawn { quantity: 1, ..drawn.clone() }), report(&drawn));
        let count = f64::from(drawn.quantity);
        for item in ["sealant_cartridge", "loop_wire", "backer_rod", "termination"] {
            // Rod comes in a line for each of two slots, and each line is rounded.
            prop_assert!((exact(&many, item) - count * exact(&one, item)).abs() <= 2.0 * 0.0006 * (1.0 + count), "{item}");
        }
    }

    #[test]
    fn wider_deeper_and_longer_takes_more(drawn in drawn()) {
        let base = report(&drawn);
        let sealant = |changed: &Drawn| ml(&report(changed), "sealant_net");
        let changed = [
            Drawn { width: drawn.width + 2, ..drawn.clone() },
            Drawn { depth: drawn.depth + 8, ..drawn.clone() },
            Drawn { lead_in: drawn.lead_in + 10, ..drawn.clone() },
        ];
        for changed in &changed {
            prop_assert!(sealant(changed) >= ml(&base, "sealant_net"), "{changed:?}");
        }
        let more = report(&Drawn { turns: drawn.turns + 1, ..drawn.clone() });
        prop_assert!(exact(&more, "loop_wire") > exact(&base, "loop_wire"));
        prop_assert!(ml(&more, "sealant_net") <= ml(&base, "sealant_net"));
    }
}
