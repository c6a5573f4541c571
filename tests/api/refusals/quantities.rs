//! Texts that are no quantity, or not one that the field holds.

use serde_json::{Value, json};

use super::{hint, refused, taken};
use crate::requests::{Need, all, loop_characteristics, loop_sizing, material_estimate, need, with};

/// Every text that is refused in a field for lengths, whatever its range.
const NO_LENGTHS: [(&str, &str); 38] = [
    ("6", "unit_missing"),
    (" 24 ", "unit_missing"),
    ("3/16", "unit_missing"),
    ("-7.2", "unit_missing"),
    ("1,200 mm", "decimal_comma"),
    ("1,200.5 m", "decimal_comma"),
    ("1,000 ft", "decimal_comma"),
    (",500 m", "decimal_comma"),
    ("1,5,2 m", "decimal_comma"),
    ("6 mph", "unit_wrong_dimension"),
    ("20 °C", "unit_wrong_dimension"),
    ("14 AWG", "unit_wrong_dimension"),
    ("2 h", "unit_wrong_dimension"),
    ("6 furlongs", "unit_unknown"),
    ("6 ft 13", "unit_unknown"),
    ("6' 6'", "unit_unknown"),
    ("7m2", "unit_unknown"),
    ("7 m 5 ft", "unit_unknown"),
    ("-1 ft 6 in", "unit_unknown"),
    ("6 ft 6 m", "unit_unknown"),
    ("6.5 ft 6 in", "unit_unknown"),
    ("6 ft by 20 ft", "unit_unknown"),
    ("0x10 ft", "unit_unknown"),
    ("NaN m", "number_invalid"),
    ("inf ft", "number_invalid"),
    ("-inf ft", "number_invalid"),
    ("1e3 ft", "number_invalid"),
    ("1e9 ft", "number_invalid"),
    ("1E-3 m", "number_invalid"),
    ("3/0 in", "number_invalid"),
    ("1/2/3 in", "number_invalid"),
    ("1.5/2 in", "number_invalid"),
    ("6..2 m", "number_invalid"),
    ("6. m", "number_invalid"),
    ("about 6 ft", "number_invalid"),
    ("ft", "number_invalid"),
    ("", "number_invalid"),
    ("٦ m", "number_invalid"),
];

/// What lies at the lower end of the range of a field.
#[derive(Clone, Copy, PartialEq)]
enum Least {
    Positive,
    Zero,
    Negative,
}
use Least::{Negative, Positive, Zero};

/// The fields for lengths.
fn lengths(calculation: &str) -> &'static [(&'static str, Least)] {
    match calculation {
        "loop-characteristics" => &[
            ("/loop/along_travel", Positive),
            ("/loop/across_lane", Positive),
            ("/loop/corner_cut", Zero),
            ("/loop/cover", Zero),
            ("/loop/wire/over_insulation", Positive),
            ("/lead_in/length", Zero),
            ("/lead_in/in_slot", Zero),
            ("/lead_in/in_conduit", Zero),
            ("/lead_in/spare", Zero),
            ("/reinforcement/depth_below_loop", Positive),
        ],
        "vehicle-response" => &[
            ("/loop/along_travel", Positive),
            ("/lead_in/length", Zero),
            ("/plate/width", Positive),
            ("/plate/length", Positive),
            ("/plate/effective_height", Positive),
            ("/offset_across", Negative),
            ("/lane_width", Positive),
        ],
        "detector-compatibility" => &[
            ("/loops/0/loop/across_lane", Positive),
            ("/loops/0/lead_in/length", Zero),
            ("/loops/0/position/along", Negative),
            ("/loops/0/position/across", Negative),
        ],
        "cure-guidance" => &[
            ("/sealant/finish_below_surface", Zero),
            ("/slot/width", Positive),
            ("/slot/depth", Positive),
            ("/slot/cover", Zero),
            ("/wire/over_insulation", Positive),
            ("/wire/over_jacket", Positive),
            ("/weather/conditions/1/precipitation", Zero),
        ],
        "loop-sizing" => &[
            ("/opening/width", Positive),
            ("/opening/edge_setback", Zero),
            ("/opening/leaf_height", Positive),
            ("/opening/leaf_ground_gap", Zero),
            ("/lead_in/length", Zero),
            ("/lead_in/in_slot", Zero),
            ("/lead_in/in_conduit", Zero),
            ("/lead_in/spare", Zero),
            ("/wire/over_insulation", Positive),
            ("/slot/width", Positive),
            ("/slot/depth", Positive),
            ("/slot/cover", Zero),
            ("/stock/0/along_travel", Positive),
            ("/stock/0/across_lane", Positive),
            ("/stock/1/along_travel", Positive),
            ("/stock/1/lead_in_length", Zero),
        ],
        "material-estimate" => &[
            ("/loops/0/loop/along_travel", Positive),
            ("/loops/0/lead_in/length", Zero),
            ("/loops/0/slot/width", Positive),
            ("/slot/depth", Positive),
            ("/lead_in_slot/width", Positive),
            ("/saw/blade_diameter", Positive),
            ("/saw/blade_life", Positive),
            ("/sealant/finish_below_surface", Zero),
            ("/backer_rod/piece_length", Positive),
            ("/backer_rod/spacing", Positive),
            ("/backer_rod/diameter", Positive),
            ("/wire_spools/0/length", Positive),
            ("/slab/thickness", Positive),
            ("/slab/reinforcement_depth", Positive),
            ("/slab/edge_distance", Zero),
            ("/agency_minimum/slot_width", Positive),
        ],
        "existing-loop" => &[
            ("/along_travel", Positive),
            ("/across_lane", Positive),
            ("/lead_in/length", Zero),
            ("/lead_in/in_slot", Zero),
            ("/lane_width", Positive),
            ("/reinforcement/depth_below_loop", Positive),
        ],
        other => panic!("no lengths are listed for {other}"),
    }
}

#[test]
fn a_text_that_is_no_length_is_refused_in_every_length_field() {
    for (calculation, request) in all() {
        for (pointer, _) in lengths(calculation) {
            // No text at all is absent in an optional field.
            let is_optional = matches!(need(calculation, pointer), Need::Optional);
            for (text, code) in NO_LENGTHS.into_iter().filter(|(text, _)| !(is_optional && text.is_empty())) {
                refused(calculation, &with(&request, pointer, text), &[(&format!("#{pointer}"), code)]);
            }
        }
    }
}

#[test]
fn a_bare_number_misses_its_unit() {
    for (calculation, request) in all() {
        for (pointer, _) in lengths(calculation) {
            for number in [json!(24), json!(7.2), json!(-3), json!(0), json!(1e9), json!(1e300)] {
                // The plain digits of 1e300 are longer than any quantity.
                let code = if number == json!(1e300) { "number_invalid" } else { "unit_missing" };
                refused(calculation, &with(&request, pointer, number), &[(&format!("#{pointer}"), code)]);
            }
        }
    }
}

#[test]
fn a_length_outside_the_range_of_its_field_is_refused_with_the_range() {
    for (calculation, request) in all() {
        for &(pointer, least) in lengths(calculation) {
            let mut texts = vec!["-6000 ft", "1000000000 ft", "99999999999999999999999999999999999 m"];
            if least != Negative {
                texts.extend(["-6 ft", "-1/16 in"]);
            }
            if least == Positive {
                texts.extend(["0 ft", "0 mm", "-0 in", "0.000001 mm"]);
            }
            for text in texts {
                let request = with(&request, pointer, text);
                let answer = refused(calculation, &request, &[(&format!("#{pointer}"), "out_of_range")]);
                assert!(hint(&answer).starts_with("Send a length from "), "{text}: {}", hint(&answer));
            }
        }
    }
}

#[test]
fn a_text_of_400_characters_is_refused_and_not_repeated() {
    let long = format!("{} ft", "6".repeat(397));
    for (calculation, request) in all() {
        for (pointer, _) in lengths(calculation) {
            let request = with(&request, pointer, long.as_str());
            let answer = refused(calculation, &request, &[(&format!("#{pointer}"), "number_invalid")]);
            assert!(!answer.body.to_string().contains("6666666666"), "the text is repeated");
        }
    }
}

#[test]
fn other_dimensions_refuse_what_is_not_theirs() {
    let (characteristics, sizing) = (loop_characteristics(), loop_sizing());
    let rows: [(&str, &Value, &str, &str, &str); 19] = [
        ("loop-characteristics", &characteristics, "/temperature", "20", "unit_missing"),
        ("loop-characteristics", &characteristics, "/temperature", "6 ft", "unit_wrong_dimension"),
        ("loop-characteristics", &characteristics, "/temperature", "-5,500 °C", "decimal_comma"),
        ("loop-characteristics", &characteristics, "/temperature", "500 °F", "out_of_range"),
        ("loop-characteristics", &characteristics, "/temperature", "-300 °C", "out_of_range"),
        ("loop-characteristics", &characteristics, "/loop/wire/gauge", "14", "unit_missing"),
        ("loop-characteristics", &characteristics, "/loop/wire/gauge", "14.5 AWG", "number_invalid"),
        ("loop-characteristics", &characteristics, "/loop/wire/gauge", "0 AWG", "out_of_range"),
        ("loop-characteristics", &characteristics, "/loop/wire/gauge", "41 AWG", "out_of_range"),
        ("loop-characteristics", &characteristics, "/loop/wire/gauge", "-14 AWG", "out_of_range"),
        ("loop-characteristics", &characteristics, "/lead_in/inductance", "0.22 uH", "unit_unknown"),
        ("loop-characteristics", &characteristics, "/lead_in/inductance", "0 uH/m", "out_of_range"),
        ("loop-sizing", &sizing, "/opening/approach_speed", "10 ft", "unit_wrong_dimension"),
        ("loop-sizing", &sizing, "/opening/approach_speed", "10", "unit_missing"),
        ("loop-sizing", &sizing, "/opening/approach_speed", "0 mph", "out_of_range"),
        ("loop-sizing", &sizing, "/opening/opening_time", "12 m", "unit_wrong_dimension"),
        ("loop-sizing", &sizing, "/opening/opening_time", "3 days", "out_of_range"),
        ("loop-sizing", &sizing, "/wire/gauge", "2.5 sq ft", "unit_unknown"),
        ("loop-sizing", &sizing, "/lead_in/gauge", "1,500 mm2", "decimal_comma"),
    ];
    for (calculation, request, pointer, text, code) in rows {
        refused(calculation, &with(request, pointer, text), &[(&format!("#{pointer}"), code)]);
    }
}

#[test]
fn the_hint_shows_what_to_write() {
    let rows = [
        ("7,200 mm", "Write \"7200 mm\", without a separator."),
        ("7,200 m", "Write \"7.200 m\", with a point."),
        ("1,000 ft", "Write the number without a comma, with a point for decimals, as \"24 ft\" or \"7.2 m\"."),
        ("24 feets", "Did you mean \"24 ft\"? Otherwise write a length as \"24 ft\" or \"7.2 m\"."),
        ("24", "Write a length as \"24 ft\" or \"7.2 m\"."),
        ("24 mph", "Write a length as \"24 ft\" or \"7.2 m\"."),
        ("24 cubits", "Write a length as \"24 ft\" or \"7.2 m\"."),
        ("wide", "Write \"24 ft\" or \"7.2 m\"."),
        ("300 ft", "Send a length from 3 ft to 200 ft, such as \"24 ft\" or \"7.2 m\"."),
    ];
    for (text, expected) in rows {
        let request = json!({ "opening": { "width": text, "barrier": "none" } });
        assert_eq!(calculate_hint(&request), expected, "{text}");
    }
}

fn calculate_hint(request: &Value) -> String {
    let answer = crate::harness::calculate("loop-sizing", request);
    hint(&answer).to_owned()
}

#[test]
fn ways_in_which_people_write_lengths_are_taken() {
    let spellings = [
        "24 ft",
        "24ft",
        "24'",
        "24′",
        "23 ft 12 in",
        "23'-12\"",
        "288 in",
        "8 yd",
        "7.3152 m",
        "7315.2 mm",
        "24-ft",
        "24 ft.",
        "24 pies",
        "24 pieds",
        "24 Fuß",
        "288 pulgadas",
        "288 pouces",
        "288 Zoll",
        "7,3152 mètres",
        "7315,2 mm",
        "24\u{a0}ft",
        "24\u{202f}ft",
        "24 ft 0",
    ];
    let widths = spellings.map(|text| {
        let request = json!({ "opening": { "width": text, "barrier": "none" } });
        taken("loop-sizing", &request).body["inputs"]["opening"]["width"].clone()
    });
    for (width, text) in widths.iter().zip(spellings) {
        assert_eq!(*width, json!({ "ft": 24.0, "m": 7.315 }), "{text}");
    }
}

/// A refusal suggests what the field takes and was likely meant, in quantities, money, currencies and closed lists; sent, it passes.
#[test]
fn what_is_suggested_passes() {
    let estimate = material_estimate();
    let sizing = loop_sizing();
    for (calculation, request, pointer, text, expected) in [
        ("loop-sizing", &sizing, "/opening/width", "7,200 mm", Some("7200 mm")),
        ("loop-sizing", &sizing, "/opening/width", "7m2", Some("7.2 m")),
        ("loop-sizing", &sizing, "/opening/width", "24", None),
        ("loop-sizing", &sizing, "/opening/width", "5 ft 13", None),
        ("loop-sizing", &sizing, "/opening/opening_time", "12", Some("12 s")),
        ("loop-sizing", &sizing, "/opening/approach_speed", "10 miles", Some("10 mph")),
        ("loop-sizing", &sizing, "/lead_in/gauge", "14", Some("14 AWG")),
        ("loop-sizing", &sizing, "/opening/barrier", "Slide gate", Some("slide_gate")),
        ("loop-sizing", &sizing, "/opening/barrier", "wall", None),
        ("material-estimate", &estimate, "/prices/currency", "usd", Some("USD")),
        ("material-estimate", &estimate, "/prices/items/saw_blade", "$ 95,50", Some("95.50")),
        ("material-estimate", &estimate, "/prices/items/saw_blade", "1,200", None),
    ] {
        let answer = crate::harness::calculate(calculation, &with(request, pointer, text));
        assert_eq!(answer.status, 422, "{pointer} {text}");
        let fault = &answer.body["errors"][0];
        assert_eq!(
            (fault["pointer"].as_str(), fault["suggestion"].as_str()),
            (Some(&*format!("#{pointer}")), expected),
            "{fault}"
        );
        if let Some(suggestion) = expected {
            taken(calculation, &with(request, pointer, suggestion));
        }
    }
}

#[test]
fn the_ends_of_a_range_belong_to_it_however_they_are_written() {
    for (least, greatest) in
        [("1 ft", "200 ft"), ("12 in", "2400 in"), ("0.3048 m", "60.96 m"), ("304.8 mm", "60960 mm")]
    {
        for leg in [least, greatest] {
            let request = json!({
                "loop": { "along_travel": leg, "across_lane": "6 ft", "turns": 3 }, "lead_in": { "length": "0 ft" },
            });
            assert_eq!(crate::harness::calculate("loop-characteristics", &request).status, 200, "{leg}");
        }
    }
    let beyond = json!({
        "loop": { "along_travel": "11.99 in", "across_lane": "2400.01 in", "turns": 3 }, "lead_in": { "length": "0 ft" },
    });
    assert_eq!(crate::harness::calculate("loop-characteristics", &beyond).faults().len(), 2);
}
