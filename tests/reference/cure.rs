//! The cure that the service reports for recorded weather, against sums made apart from it.

use loopwright::calculation::Calculation;
use loopwright::calculation::cure_guidance::CureGuidanceRequest;
use loopwright::wording::{Language, Worded};
use serde_json::{Value, json};

use crate::air::{close, hours};

/// The report for hours of a file, started with the first.
fn report(kind: &str, hours: &[(String, f64, f64)]) -> Value {
    let conditions: Vec<_> = hours
        .iter()
        .map(|(time, air, humidity)| json!({ "time": time, "air": format!("{air} °F"), "relative_humidity_percent": humidity }))
        .collect();
    let request = json!({
        "sealant": { "kind": kind }, "start": hours[0].0, "surface_condition": "dry", "weather": { "conditions": conditions }
    });
    let request: CureGuidanceRequest = serde_json::from_value(request).unwrap();
    serde_json::to_value(request.answer().unwrap().worded(Language::English)).unwrap()
}

#[test]
fn the_report_has_the_equivalent_hours_of_the_weather() {
    // By vapour pressure, and by Arrhenius at 45 and 60 kJ/mol, summed apart from this service.
    for (place, count, vapour, low, high) in [
        ("ewr_2013_01_22", 72, 7.1525, 8.7589, 4.3677),
        ("ewr_2013_01_22", 168, 26.9203, 24.4674, 13.1217),
        ("jfk_2013_02_04", 168, 42.2656, 33.4556, 19.6581),
        ("lga_2013_07_15", 168, 272.0106, 272.7608, 322.8257),
    ] {
        for kind in ["one_part_moisture_cure", "two_part_reactive"] {
            let worth = &report(kind, &hours(place)[..count])["equivalent_hours"];
            let close = |key: &str, expected: f64| close(worth[key].as_f64().unwrap() / expected, 1.0, 0.0005);
            close("vapour_pressure", vapour);
            close("arrhenius_low", low);
            close("arrhenius_high", high);
        }
    }
}

#[test]
fn a_week_of_frost_does_not_cure_one_part_through_and_a_hot_week_does() {
    let latest = |report: &Value, milestone: usize| report["milestones"][milestone].get("latest").cloned();
    let cold = report("one_part_moisture_cure", &hours("ewr_2013_01_22"));
    assert_eq!((cold["verdict"].as_str(), latest(&cold, 3)), (Some("do_not_apply"), None));
    assert_eq!(cold["windows"], json!([]));
    let hot = report("one_part_moisture_cure", &hours("lga_2013_07_15"));
    // 272 and more hours of 23 °C and 50 %; the practice slot takes 3 to 7 days, 1 in of cover less.
    assert!(latest(&hot, 3).is_some());
}
