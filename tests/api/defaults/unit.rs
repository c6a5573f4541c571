//! Limits of a unit and of a sealant's sheet: the one that nobody sent gives way to the other.

use serde_json::{Value, json};

use super::super::requests::{cure_guidance, detector_compatibility, loop_sizing, with};
use super::{answered, assumed, number};

#[test]
fn a_limit_of_the_envelope_gives_way_to_the_other_one() {
    let rows = [
        ("inductance_max_uh", 40, "inductance_min_uh", 10.0),
        ("inductance_max_uh", 120, "inductance_min_uh", 30.0),
        ("inductance_min_uh", 900, "inductance_max_uh", 1800.0),
        ("frequency_max_khz", 15, "frequency_min_khz", 7.5),
        ("frequency_min_khz", 150, "frequency_max_khz", 300.0),
    ];
    for (sent, value, other, taken) in rows {
        let mut unit = json!({});
        unit[sent] = json!(value);
        for (calculation, request) in
            [("loop-sizing", loop_sizing()), ("detector-compatibility", detector_compatibility())]
        {
            let answer = answered(calculation, &with(&request, "/detector", unit.clone()));
            assert_eq!(number(&answer, &format!("/inputs/detector/{other}")), taken, "{calculation} {unit}");
            // Sizing needs no frequencies.
            if calculation == "detector-compatibility" || sent.starts_with("inductance") {
                let (value, reason) = assumed(&answer, &format!("#/detector/{other}"));
                assert!(value == taken.to_string() && reason.contains("gives way"), "{value} {reason}");
            }
        }
    }
}

#[test]
fn a_limit_that_fits_stays_that_of_the_envelope() {
    for (sent, value) in [("inductance_max_uh", 400), ("inductance_min_uh", 300), ("frequency_max_khz", 60)] {
        let mut unit = json!({});
        unit[sent] = json!(value);
        let answer = answered("detector-compatibility", &with(&detector_compatibility(), "/detector", unit));
        let entries = answer.body["assumed"].as_array().unwrap();
        let of_limits = |entry: &&Value| entry["about"].as_str().unwrap().contains("detector/inductance");
        assert_eq!(entries.iter().find(of_limits), None);
        assert_eq!(
            number(&answer, "/inputs/detector/inductance_min_uh"),
            if sent == "inductance_min_uh" { 300.0 } else { 50.0 }
        );
    }
}

#[test]
fn the_lowest_temperature_of_application_gives_way_to_the_highest() {
    let request = with(&cure_guidance(), "/sealant", json!({ "kind": "one_part_moisture_cure" }));
    let report = answered(
        "cure-guidance",
        &with(&request, "/sealant/data_sheet", json!({ "maximum_application_temperature": "0 °C" })),
    );
    let (value, reason) = assumed(&report, "#/sealant/data_sheet/minimum_application_temperature");
    assert!(value == "-20 °C" && reason.contains("gives way"), "{value} {reason}");
}
