//! Times: RFC 3339 with offset, in order, without gaps, across a change of the clock; bodies of two weeks.

use serde_json::{Value, json};

use super::{ONE, TWO, ask, at, mild, milestone, request, span};
use crate::harness::{calculate, post};
use crate::requests::{with, without};

fn refused(request: &Value, faults: &[(&str, &str)]) {
    let answer = calculate("cure-guidance", request);
    assert_eq!(answer.status, 422, "{:#}", answer.body);
    let expected: Vec<_> = faults.iter().map(|(pointer, code)| ((*pointer).to_owned(), (*code).to_owned())).collect();
    assert_eq!(answer.faults(), expected, "{:#}", answer.body);
}

fn timed(times: &[&str]) -> Value {
    let rows = times.iter().map(|time| with(&mild(1)[0], "/time", *time)).collect();
    request(TWO, rows)
}

#[test]
fn a_time_without_an_offset_is_no_time() {
    for text in [
        "2026-05-01T00:00:00",
        "2026-05-01",
        "2026-05-01T00:00Z",
        "2026-05-01 00:00:00Z",
        "2026-02-30T00:00:00Z",
        "soon",
    ] {
        refused(
            &with(&request(TWO, mild(3)), "/weather/conditions/1/time", text),
            &[("#/weather/conditions/1/time", "time_invalid")],
        );
        refused(&with(&request(TWO, mild(3)), "/start", text), &[("#/start", "time_invalid")]);
        refused(&with(&request(TWO, mild(3)), "/needed_open_by", text), &[("#/needed_open_by", "time_invalid")]);
    }
    refused(&with(&request(TWO, mild(3)), "/sealant/made_on", "01.05.2026"), &[("#/sealant/made_on", "time_invalid")]);
    refused(&with(&request(TWO, mild(3)), "/start", ""), &[("#/start", "text_size")]);
}

#[test]
fn rows_rise_and_leave_no_gap() {
    let z = |hour: u32| format!("2026-05-01T{hour:02}:00:00Z");
    let of = |hours: &[u32]| {
        timed(&hours.iter().map(|hour| z(*hour)).collect::<Vec<_>>().iter().map(String::as_str).collect::<Vec<_>>())
    };
    refused(&of(&[0, 1, 1, 2]), &[("#/weather/conditions/2/time", "time_order")]);
    refused(&of(&[0, 2, 1, 3]), &[("#/weather/conditions/2/time", "time_order")]);
    // Further back than a slab remembers.
    refused(&of(&[14, 1, 2]), &[("#/weather/conditions/1/time", "time_order")]);
    refused(&of(&[0, 1, 2, 6]), &[("#/weather/conditions/3/time", "time_gap")]);
    refused(
        &of(&[0, 6, 5, 5]),
        &[
            ("#/weather/conditions/1/time", "time_gap"),
            ("#/weather/conditions/2/time", "time_order"),
            ("#/weather/conditions/3/time", "time_order"),
        ],
    );
    // Three hours may lie between two rows, and the first holds until the second.
    let answer = ask(&of(&[0, 3, 6]));
    assert_eq!(answer.body["inputs"]["weather_until"], "2026-05-01T07:00:00+00:00");
    refused(&timed(&["2026-05-01T00:00:00Z", "2026-05-01T03:00:01Z"]), &[("#/weather/conditions/1/time", "time_gap")]);
}

#[test]
fn instants_count_and_not_what_clocks_show() {
    // The same hour on two clocks is sent twice; a later text may be an earlier instant.
    refused(
        &timed(&["2026-05-01T04:00:00Z", "2026-05-01T00:00:00-04:00"]),
        &[("#/weather/conditions/1/time", "time_order")],
    );
    refused(
        &timed(&["2026-05-01T04:00:00Z", "2026-05-01T06:00:00+05:00"]),
        &[("#/weather/conditions/1/time", "time_order")],
    );
    let mixed = ask(&timed(&["2026-05-01T04:00:00Z", "2026-05-01T01:00:00-04:00", "2026-05-01T11:30:00+05:30"]));
    let shown: Vec<_> =
        mixed.body["hourly"].as_array().unwrap().iter().map(|hour| hour["time"].as_str().unwrap()).collect();
    assert_eq!(shown, ["2026-05-01T04:00:00+00:00", "2026-05-01T05:00:00+00:00", "2026-05-01T06:00:00+00:00"]);
    assert_eq!(mixed.body["conditions_used"][1]["time"], "2026-05-01T01:00:00-04:00");
}

#[test]
fn a_change_of_the_clock_is_no_gap_and_no_repetition() {
    // In spring 02:00 does not exist; in autumn 01:00 comes twice, each with its own offset.
    let spring = ["2026-03-08T01:00:00-05:00", "2026-03-08T03:00:00-04:00", "2026-03-08T04:00:00-04:00"];
    let autumn = ["2026-11-01T01:00:00-04:00", "2026-11-01T01:00:00-05:00", "2026-11-01T02:00:00-05:00"];
    for times in [spring, autumn] {
        let answer = ask(&timed(&times));
        let hours = answer.body["equivalent_hours"]["arrhenius_high"].as_f64().unwrap();
        assert!((hours - 3.0).abs() < 1e-9, "{times:?}: {hours}");
    }
    // Answers keep to the clock of the start.
    assert_eq!(ask(&timed(&spring)).body["inputs"]["weather_until"], "2026-03-08T04:00:00-05:00");
}

#[test]
fn the_start_lies_within_the_weather() {
    let start = |text: &str| with(&request(TWO, mild(3)), "/start", text);
    for text in ["2026-04-30T23:59:59-04:00", "2026-05-01T03:00:00-04:00", "2026-05-02T00:00:00Z"] {
        refused(&start(text), &[("#/start", "out_of_range")]);
    }
    // The last row holds for an hour, and another clock is another text for the same instant.
    ask(&start("2026-05-01T02:59:59-04:00"));
    let answer = ask(&start("2026-05-01T09:30:00+05:30"));
    assert_eq!(span(&answer, "skin_over"), ["2026-05-01T09:40:00+05:30", "2026-05-01T09:45:00+05:30"]);
    refused(
        &with(&start("2026-05-01T01:00:00-04:00"), "/needed_open_by", at(1)),
        &[("#/needed_open_by", "contradiction")],
    );
}

#[test]
fn milestones_are_solved_inside_the_hour() {
    // From 08:20 one part needs three hours of 23 °C and 50 %; a row at 10:00 has twice the vapour.
    let mut conditions = mild(24);
    conditions[10]["relative_humidity_percent"] = json!(100);
    let answer = ask(&with(&request(ONE, conditions), "/start", "2026-05-01T08:20:00-04:00"));
    // From the last foot at 09:20 40 min by 10:00, 120 min in the next hour, then 20; two thirds of it are there after 40 min of that hour.
    let clock = |key: &str| milestone(&answer, "skin_over")[key].as_str().unwrap()[11..16].to_owned();
    assert_eq!((clock("earliest"), clock("latest")), ("10:40".to_owned(), "11:20".to_owned()));
}

#[test]
fn weather_is_sent_once_and_two_weeks_at_most() {
    let place = json!({ "latitude": 44.1, "longitude": -68.9 });
    let sound = request(TWO, mild(3));
    refused(&with(&sound, "/weather/location", place.clone()), &[("#/weather/location", "contradiction")]);
    refused(&with(&sound, "/weather", json!({ "location": place })), &[("#/weather/location", "forecast_off")]);
    refused(&with(&sound, "/weather", json!({})), &[("#/weather/conditions", "field_missing")]);
    refused(&without(&sound, "/weather"), &[("#/weather", "field_missing")]);
    refused(&with(&sound, "/weather/conditions", json!([])), &[("#/weather/conditions", "field_missing")]);
    let too_long: Vec<_> = (0..120).map(|index| with(&mild(1)[0], "/time", at(3 * index))).collect();
    refused(&request(TWO, too_long), &[("#/weather/conditions/112/time", "out_of_range")]);
}

#[test]
fn two_weeks_of_hours_fit_and_their_report_stays_readable() {
    let full: Vec<_> = mild(336)
        .into_iter()
        .map(|row| with(&with(&row, "/dew_point", "12.03 °C"), "/precipitation", "0.00 mm"))
        .collect();
    let text = format!("{:#}", request(ONE, full));
    assert!((64 * 1024..256 * 1024).contains(&text.len()), "{}", text.len());
    let answer = post("/v1/cure-guidance", text.clone());
    assert_eq!(answer.status, 200, "{:#}", answer.body);
    assert_eq!(answer.body["hourly"].as_array().unwrap().len(), 336);
    let length = answer.body.to_string().len();
    assert!(length < 300_000, "the report has {length} bytes");
    refused(
        &request(ONE, mild(337)),
        &[("#/weather/conditions", "list_size"), ("#/weather/conditions/336/time", "out_of_range")],
    );
    assert_eq!(post("/v1/loop-sizing", text).status, 413, "only this path takes so much");
}
