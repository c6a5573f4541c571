//! Fields that are sound one by one and cannot hold together.

use serde_json::json;

use super::{refused, taken};
use crate::requests::{
    all, detector_compatibility, loop_characteristics, loop_sizing, vehicle_response, with, without,
};

#[test]
fn corner_cuts_may_not_take_a_leg() {
    let request = loop_characteristics();
    let at = [("#/loop/corner_cut", "contradiction")];
    refused("loop-characteristics", &with(&request, "/loop/corner_cut", "2.8 ft"), &at);
    taken("loop-characteristics", &with(&request, "/loop/corner_cut", "2.7 ft"));
    // Each cell of a quadrupole has half the leg across.
    let quadrupole = with(&with(&request, "/loop/shape", "quadrupole"), "/loop/across_lane", "10 ft");
    refused("loop-characteristics", &with(&quadrupole, "/loop/corner_cut", "2.3 ft"), &at);
    taken("loop-characteristics", &with(&quadrupole, "/loop/corner_cut", "2.2 ft"));
}

#[test]
fn the_parts_of_a_lead_in_may_not_be_longer_than_it() {
    for (calculation, request) in all() {
        let lead_in = if request.get("loops").is_some() { "/loops/0/lead_in" } else { "/lead_in" };
        if request.pointer(lead_in).is_none() {
            continue;
        }
        let request = with(&request, &format!("{lead_in}/in_slot"), "30 ft");
        let in_conduit = |length: &str| with(&request, &format!("{lead_in}/in_conduit"), length);
        refused(calculation, &in_conduit("31 ft"), &[(&format!("#{lead_in}/length"), "contradiction")]);
        taken(calculation, &in_conduit("30 ft"));
    }
}

#[test]
fn insulated_wire_is_thicker_than_bare_wire() {
    for (calculation, pointer) in [("loop-characteristics", "/loop/wire"), ("loop-sizing", "/wire")] {
        let request = all().into_iter().find(|(name, _)| *name == calculation).unwrap().1;
        let at = format!("{pointer}/over_insulation");
        for (gauge, over) in [("14 AWG", "0.064 in"), ("2.5 mm2", "1.7 mm")] {
            refused(
                calculation,
                &with(&request, pointer, json!({ "gauge": gauge, "over_insulation": over })),
                &[(&format!("#{at}"), "contradiction")],
            );
        }
        // The gauge that is assumed when it is not sent gives way.
        taken(calculation, &with(&request, pointer, json!({ "over_insulation": "0.06 in" })));
    }
}

#[test]
fn cover_leaves_room_in_the_slot() {
    let request = loop_sizing();
    for (depth, cover) in [("1 in", "1 in"), ("1 in", "2 in"), ("25 mm", "1 in")] {
        let slot = json!({ "depth": depth, "cover": cover });
        refused("loop-sizing", &with(&request, "/slot", slot), &[("#/slot/cover", "contradiction")]);
    }
    taken("loop-sizing", &with(&request, "/slot", json!({ "depth": "2 in", "cover": "1 in" })));
}

#[test]
fn the_least_of_a_unit_is_below_its_greatest() {
    let request = loop_sizing();
    let rows = [
        (json!({ "inductance_min_uh": 300, "inductance_max_uh": 200 }), "inductance_min_uh"),
        (json!({ "inductance_min_uh": 300, "inductance_max_uh": 300 }), "inductance_min_uh"),
        (json!({ "frequency_min_khz": 90, "frequency_max_khz": 30 }), "frequency_min_khz"),
    ];
    for (detector, field) in rows {
        refused(
            "loop-sizing",
            &with(&request, "/detector", detector),
            &[(&format!("#/detector/{field}"), "contradiction")],
        );
    }
}

#[test]
fn two_setbacks_leave_most_of_the_width() {
    let request = loop_sizing();
    let narrow = with(&request, "/opening/width", "10 ft");
    refused(
        "loop-sizing",
        &with(&narrow, "/opening/edge_setback", "4.1 ft"),
        &[("#/opening/edge_setback", "contradiction")],
    );
    taken("loop-sizing", &with(&narrow, "/opening/edge_setback", "4 ft"));
}

#[test]
fn a_vehicle_is_a_class_or_a_plate() {
    let both = with(&vehicle_response(), "/vehicle", "pickup");
    refused("vehicle-response", &both, &[("#/plate", "contradiction")]);
    taken("vehicle-response", &without(&both, "/plate"));
}

#[test]
fn a_label_names_one_loop() {
    let request = detector_compatibility();
    let first = &request["loops"][0];
    let second = |label: &str| with(&request, "/loops", json!([first, with(first, "/label", label)]));
    refused("detector-compatibility", &second("inside"), &[("#/loops/1/label", "contradiction")]);
    taken("detector-compatibility", &second("outside"));
}

#[test]
fn a_role_is_sent_once() {
    let request = with(&loop_sizing(), "/roles", json!(["exit", "closing", "exit", "closing"]));
    refused("loop-sizing", &request, &[("#/roles/2", "contradiction"), ("#/roles/3", "contradiction")]);
}
