//! The work lasts: stops from the first foot to the last, milestones from the last foot, and windows of starts that obey every stop.

use serde_json::{Value, json};

use super::{HOT, ONE, TWO, alternative, ask, message, reasons, request, verdict};
use crate::requests::{with, without};

/// A day of 70 °F, 60 % and a slab of 75 °F, on a clock 4 h behind; 05:00 is the fifth row.
fn day() -> Vec<Value> {
    super::steady(30, "70 °F", "75 °F", 60)
}

/// 2026-05-01 at a time of day.
fn clock(time: &str) -> String {
    format!("2026-05-01T{time}:00-04:00")
}

/// A dry slot under that day, begun at a time.
fn begun(kind: &str, time: &str) -> Value {
    with(&request(kind, day()), "/start", clock(time))
}

/// With rain of a probability in some hours.
fn rain(request: &Value, hours: std::ops::Range<usize>, percent: u32) -> Value {
    hours.fold(request.clone(), |request, hour| {
        with(&request, &format!("/weather/conditions/{hour}/precipitation_probability_percent"), percent)
    })
}

/// Start and end of each window, as times of day of the first of May.
fn windows(answer: &Value) -> Vec<[String; 2]> {
    let rows = answer["windows"].as_array().unwrap().iter();
    rows.map(|window| ["start", "end"].map(|key| window[key].as_str().unwrap()[8..16].replace('T', " "))).collect()
}

#[test]
fn the_work_lasts_as_long_as_was_sent_or_an_hour() {
    let answer = ask(&begun(TWO, "09:00"));
    assert_eq!(answer.body["inputs"]["work_duration"]["min"], 60.0);
    assert_eq!(answer.body["milestones_from"], clock("09:00"));
    assert_eq!(answer.body["last_foot_sealed"], clock("10:00"));
    let assumed = answer.body["assumed"].as_array().unwrap();
    assert!(assumed.iter().any(|entry| entry["about"] == "#/work_duration" && entry["value"] == "60 min"));
    let sent = ask(&with(&begun(TWO, "09:00"), "/work_duration", "1.5 h"));
    assert_eq!(sent.body["last_foot_sealed"], clock("10:30"));
    let moved = |answer: &Value| answer["milestones"][0]["earliest"].as_str().unwrap()[11..16].to_owned();
    // Two parts set 10 to 15 min after the last foot, a little sooner on a slab of 75 °F.
    assert_eq!((moved(&answer.body), moved(&sent.body)), ("10:09".to_owned(), "10:39".to_owned()));
    for (text, code) in [("0 min", "out_of_range"), ("49 h", "out_of_range"), ("60", "unit_missing")] {
        let refused = crate::harness::calculate("cure-guidance", &with(&begun(TWO, "09:00"), "/work_duration", text));
        assert_eq!(refused.faults(), [("#/work_duration".to_owned(), code.to_owned())], "{text}");
    }
}

#[test]
fn rain_within_the_work_is_a_stop_and_the_window_ends_before_it() {
    // Rain from 11:00: the last foot must have set by then.
    let wet = rain(&begun(TWO, "10:30"), 11..30, 95);
    let stopped = ask(&wet);
    assert_eq!((verdict(&stopped), reasons(&stopped)), ("do_not_apply", vec!["rain_before_skin"]));
    assert_eq!(stopped.body["milestones"], json!([]));
    assert!(stopped.body.get("milestones_from").is_none() && stopped.body.get("last_foot_sealed").is_none());
    let early = ask(&with(&wet, "/start", clock("08:00")));
    assert_eq!(windows(&early.body), [["01 08:00", "01 09:45"]]);
    let window = &early.body["windows"][0];
    assert_eq!((&window["duration"]["min"], &window["preferred"]), (&json!(105.0), &json!(true)));
    assert_eq!(
        (&window["ends_because"]["code"], &window["ends_because"]["level"]),
        (&json!("rain_before_skin"), &json!("stop"))
    );
    assert!(
        window["ends_because"]["message"].as_str().unwrap().starts_with("At 2026-05-01 11:00 rain or snow is likely")
    );
    for (start, expected) in [("09:45", "go_with_care"), ("09:46", "do_not_apply")] {
        assert_eq!(verdict(&ask(&with(&wet, "/start", clock(start)))), expected, "{start}");
    }
}

#[test]
fn rain_that_has_fallen_wets_the_slot_until_it_has_dried() {
    let untold = without(&rain(&begun(TWO, "09:00"), 6..9, 100), "/surface_condition");
    let answer = ask(&untold);
    assert_eq!((verdict(&answer), answer.findings("stop")), ("wait", vec!["slot_wet"]));
    // Two dry hours above 10 °C.
    assert_eq!(windows(&answer.body)[0][0], "01 11:00");
    let what = message(&answer, "slot_wet");
    assert!(what.contains("until 2026-05-01 09:00") && what.contains("dry by 2026-05-01 11:00"), "{what}");
    assert_eq!(answer.body["milestones_from"], clock("11:00"));
    assert_eq!(answer.body["inputs"]["surface_condition"], "wet");
    let before = answer.body["hours_before"].as_array().unwrap();
    assert_eq!(before.len(), 9);
    assert_eq!((&before[6]["rain"], &before[6]["can_apply"]), (&json!("likely"), &json!(false)));
    // Once it has dried, rain of the last hours still asks for a look.
    let later = ask(&with(&untold, "/start", clock("11:00")));
    assert_eq!(
        (verdict(&later), reasons(&later)),
        ("go_with_care", vec!["surface_condition_assumed", "rained_before"])
    );
    let told = ask(&with(&untold, "/surface_condition", "dry"));
    assert_eq!((verdict(&told), reasons(&told)), ("go_with_care", vec!["rained_before"]));
    // Six hours later it is forgotten.
    assert_eq!(verdict(&ask(&with(&with(&untold, "/surface_condition", "dry"), "/start", clock("15:00")))), "go");
}

#[test]
fn only_dry_and_mild_hours_dry_a_slot() {
    let dried = |air: &str, humidity: u32, field: &str, value: Value| {
        let sheet = json!({ "minimum_application_temperature": "0 °C" });
        let rows = super::steady(30, air, "12 °C", humidity);
        let request = with(&without(&request(TWO, rows), "/surface_condition"), "/sealant/data_sheet", sheet);
        let wet = with(&request, &format!("/weather/conditions/2/{field}"), value);
        windows(&ask(&with(&wet, "/start", clock("03:00"))).body).first().map(|window| window[0].clone())
    };
    let likely = ("precipitation_probability_percent", json!(50));
    let of = |air, humidity| dried(air, humidity, likely.0, likely.1.clone());
    assert_eq!(of("10.1 °C", 60).as_deref(), Some("01 05:00"));
    assert_eq!(of("10 °C", 60).as_deref(), Some("01 07:00"));
    assert_eq!(of("5.1 °C", 60).as_deref(), Some("01 07:00"));
    // Else it is forgotten after a day.
    assert_eq!(of("5 °C", 60).as_deref(), Some("02 03:00"));
    assert_eq!(of("8 °C", 84).as_deref(), Some("01 07:00"));
    assert_eq!(of("8 °C", 85).as_deref(), Some("02 03:00"));
    // What may rain does not wet; what falls does, however little.
    assert_eq!(dried("12 °C", 60, likely.0, json!(49)).as_deref(), Some("01 03:00"));
    assert_eq!(dried("12 °C", 60, "precipitation", json!("0.01 mm")).as_deref(), Some("01 05:00"));
}

#[test]
fn what_was_seen_in_the_slot_holds_until_somebody_looks_again() {
    for (kind, seen, code) in [
        (TWO, "frost", "slab_frozen"),
        (TWO, "wet", "slot_wet"),
        (TWO, "damp", "slot_damp"),
        (ONE, "frost", "slab_frozen"),
        (ONE, "wet", "slot_wet"),
        (HOT, "damp", "slot_damp"),
    ] {
        let request = with(&begun(kind, "09:00"), "/wire", json!({ "insulation_rating": "400 °F" }));
        let answer = ask(&with(&request, "/surface_condition", seen));
        assert_eq!((verdict(&answer), answer.findings("stop")), ("wait", vec![code]), "{kind} {seen}");
        assert_eq!((windows(&answer.body).len(), &answer.body["milestones"]), (0, &json!([])), "{kind} {seen}");
        assert!(answer.body.get("milestones_from").is_none());
        assert!(answer.body["hourly"].as_array().unwrap().iter().all(|hour| hour["can_apply"] == false));
        // Whoever dries it and looks may begin at once.
        assert_eq!(answer.body["windows_once_dry"][0]["start"], clock("09:00"), "{kind} {seen}");
        assert!(alternative(&answer, kind).get("earliest_start").is_none());
    }
    assert!(ask(&begun(TWO, "09:00")).body.get("windows_once_dry").is_none());
}

#[test]
fn no_window_opens_for_what_no_hour_mends() {
    let old = with(&begun(TWO, "09:00"), "/sealant/made_on", "2024-05-01");
    let unrated = begun(HOT, "09:00");
    let late = with(&begun(ONE, "09:00"), "/needed_open_by", clock("10:30"));
    for (request, code) in [(old, "past_shelf_life"), (unrated, "insulation_unknown"), (late, "opens_late")] {
        let answer = ask(&request);
        assert_eq!((verdict(&answer), answer.findings("stop")), ("do_not_apply", vec![code]));
        assert_eq!((windows(&answer.body).len(), &answer.body["milestones"]), (0, &json!([])), "{code}");
    }
    // The day on which it ends is the last.
    let ends = with(&begun(TWO, "09:00"), "/sealant/made_on", "2025-05-01");
    let answer = ask(&ends);
    assert_eq!(windows(&answer.body), [["01 09:00", "01 22:59"]], "the last foot goes in before midnight");
    assert_eq!(answer.body["windows"][0]["ends_because"]["code"], "past_shelf_life");
}

#[test]
fn a_deadline_ends_the_window_of_starts_that_may_meet_it() {
    // Two parts: traffic at the earliest 25 min after the last foot at 77 °F.
    let needed = with(&begun(TWO, "09:00"), "/needed_open_by", clock("12:00"));
    let answer = ask(&needed);
    let rows = answer.body["windows"].as_array().unwrap();
    let told: Vec<_> =
        rows.iter().map(|row| (row["preferred"].as_bool(), row["ends_because"]["level"].as_str())).collect();
    assert_eq!(told, [(Some(true), Some("warning")), (Some(false), Some("stop"))]);
    assert!(rows.iter().all(|row| row["ends_because"]["code"] == "opens_late"));
    // Up to the end of the first it surely is in time, up to the end of the second perhaps.
    for (row, expected) in rows.iter().zip([("go", "fit_to_apply"), ("go_with_care", "opens_late")]) {
        let at_end = ask(&with(&needed, "/start", row["end"].clone()));
        assert_eq!((verdict(&at_end), reasons(&at_end)), (expected.0, vec![expected.1]), "{row}");
    }
}

/// A slab of -4 °C that was measured, under air of -2 °C, with a sheet that goes down to -10 °C.
fn frozen(humidity: u32, condition: &str) -> Value {
    let request = request(TWO, super::steady(30, "-2 °C", "-4 °C", humidity));
    let sheet = json!({ "minimum_application_temperature": "-10 °C" });
    with(&with(&request, "/sealant/data_sheet", sheet), "/surface_condition", condition)
}

#[test]
fn frost_is_a_stop_whatever_the_sheet_says_and_a_dry_frozen_slab_is_not() {
    // At 60 % the frost point of -2 °C air lies at -8 °C, at 80 % at -4.6 °C.
    let dry = ask(&frozen(60, "dry"));
    assert_eq!((verdict(&dry), reasons(&dry)), ("go_with_care", vec!["frozen_dry_slab"]));
    let near = ask(&frozen(80, "dry"));
    assert!(verdict(&near) == "do_not_apply" && near.findings("stop").contains(&"slab_frozen"));
    let what = message(&near, "slab_frozen");
    assert!(what.contains("above 0 °C"), "not the least temperature of the sheet: {what}");
    let snowed = with(&frozen(60, "dry"), "/weather/conditions/2/precipitation", "0.1 mm");
    assert_eq!(ask(&with(&snowed, "/start", clock("20:00"))).findings("stop"), ["slab_frozen"]);
    let unmeasured = (0..3)
        .fold(frozen(60, "dry"), |request, hour| without(&request, &format!("/weather/conditions/{hour}/surface")));
    assert!(ask(&with(&unmeasured, "/start", clock("02:00"))).findings("stop").contains(&"slab_frozen"));
    let untold = ask(&without(&frozen(60, "dry"), "/surface_condition"));
    assert_eq!(untold.findings("stop"), ["slab_frozen"], "nobody called it dry");
    assert_eq!(ask(&frozen(60, "frost")).findings("stop"), ["slab_frozen"; 2], "the slab, and what was seen on it");
}

#[test]
fn a_skin_is_a_band_and_rain_close_behind_it_asks_for_care() {
    // 3 h of the reference climate take 2 h 48 min at 70 °F and 60 %, at the earliest two thirds of it.
    let dry = ask(&begun(ONE, "09:00"));
    assert_eq!(super::milestone(&dry, "skin_over")["earliest"], clock("11:52"));
    assert_eq!(super::milestone(&dry, "skin_over")["latest"], clock("12:48"));
    let at = |hour: usize| ask(&rain(&begun(ONE, "09:00"), hour..hour + 1, 95));
    assert_eq!((verdict(&at(13)), reasons(&at(13))), ("go_with_care", vec!["rain_after_skin"]));
    let what = at(13);
    assert!(message(&what, "rain_after_skin").contains("At 2026-05-01 13:00"), "{}", message(&what, "rain_after_skin"));
    assert_eq!(reasons(&at(12)), ["rain_before_skin"]);
    assert_eq!(reasons(&at(14)), ["fit_to_apply"]);
}

#[test]
fn cold_after_the_skin_slows_the_cure_and_forbids_nothing() {
    let night = |from: usize| {
        (from..30).fold(super::request(ONE, super::steady(30, "62 °F", "62 °F", 60)), |request, hour| {
            let request = with(&request, &format!("/weather/conditions/{hour}/air"), "36 °F");
            with(&request, &format!("/weather/conditions/{hour}/surface"), "45 °F")
        })
    };
    let begun = |from: usize| ask(&with(&night(from), "/start", clock("10:00")));
    // The skin is there between 13:28 and 17:18; by 14:42 it may be counted on.
    for (from, skin) in [(20, "The skin is there before the cold"), (15, "The skin should be there before the cold")] {
        let answer = begun(from);
        assert_eq!((verdict(&answer), reasons(&answer)), ("go_with_care", vec!["cold_after_skin"]), "{from}");
        assert!(message(&answer, "cold_after_skin").contains(skin), "{}", message(&answer, "cold_after_skin"));
        assert!(!answer.body["windows"].as_array().unwrap().is_empty());
    }
    assert_eq!(begun(13).findings("stop"), ["cold_before_skin"]);
}

#[test]
fn sealant_that_sets_before_a_cartridge_is_empty_names_cooler_hours() {
    let mut rows = super::steady(30, "100 °F", "143 °F", 40);
    for row in &mut rows[20..] {
        *row = with(&with(row, "/air", "75 °F"), "/surface", "80 °F");
    }
    let hot = with(&with(&request(TWO, rows), "/start", clock("12:00")), "/work_duration", "8 min");
    let answer = ask(&hot);
    assert_eq!((verdict(&answer), reasons(&answer)), ("go_with_care", vec!["short_pot_life"]));
    let what = message(&answer, "short_pot_life");
    assert!(what.contains("sets in about 1 min to 2 min, less than the 4 min"), "{what}");
    assert!(what.contains("from 2026-05-01 20:00 to"), "{what}");
    let preferred: Vec<_> = answer.body["windows"]
        .as_array()
        .unwrap()
        .iter()
        .map(|window| window["preferred"].as_bool().unwrap())
        .collect();
    assert_eq!(preferred, [false, true]);
    assert_eq!(answer.body["windows"][0]["ends_because"]["code"], "short_pot_life");
    let steady = with(&request(TWO, super::steady(30, "100 °F", "143 °F", 40)), "/work_duration", "8 min");
    let never = ask(&steady);
    assert!(message(&never, "short_pot_life").contains("take another day"), "{}", message(&never, "short_pot_life"));
    // Who needs a minute for each has none to spare, either; who is quicker than it sets does.
    let quick = json!({ "pot_life": "3 h" });
    assert_eq!(ask(&with(&steady, "/sealant/data_sheet", quick)).body["windows"][0]["preferred"], true);
}

#[test]
fn a_slab_that_nobody_measured_needs_the_night_before_it() {
    let cool = |start: usize, air: &str| {
        let rows = super::steady(30, air, air, 40).iter().map(|row| without(row, "/surface")).collect();
        ask(&with(&request(TWO, rows), "/start", super::at(start)))
    };
    // 11 h of weather: taken as 9.9 °C it stops, as 10 °C it does not.
    assert_eq!((verdict(&cool(11, "9.9 °C")), cool(11, "9.9 °C").findings("stop")), ("wait", vec!["surface_assumed"]));
    assert_eq!(cool(11, "10 °C").findings("stop"), Vec::<&str>::new());
    assert_eq!(cool(12, "9.9 °C").findings("stop"), Vec::<&str>::new());
    assert!(message(&cool(11, "9 °C"), "surface_assumed").contains("begins only at 2026-05-01 00:00"));
}

#[test]
fn a_measured_slab_tells_of_the_next_hours() {
    let rows = |measured: usize, later: &str| {
        let rows = super::steady(24, "60 °F", "65 °F", 40).into_iter().enumerate();
        let rows = rows.map(|(hour, row)| if hour == measured { row } else { without(&row, "/surface") });
        let rows: Vec<_> =
            rows.enumerate().map(|(hour, row)| if hour > measured { with(&row, "/air", later) } else { row }).collect();
        with(&request(TWO, rows[measured..].to_vec()), "/start", super::at(measured))
    };
    let slab = |request: &Value, hour: usize| ask(request).body["hourly"][hour]["surface"]["f"].as_f64().unwrap();
    let (same, colder, warmer) = (rows(12, "60 °F"), rows(12, "52 °F"), rows(12, "70 °F"));
    assert_eq!([slab(&same, 1), slab(&colder, 1), slab(&warmer, 1)], [65.0, 57.0, 65.0]);
    // For three hours; then the air of the hours before is all that is known.
    assert_eq!([slab(&same, 3), slab(&same, 4)], [65.0, 60.0]);
    assert_eq!(verdict(&ask(&same)), "go", "the work goes on into hours that nobody measured");
}

#[test]
fn nothing_is_sealed_beyond_the_weather() {
    let long = with(&begun(TWO, "09:00"), "/work_duration", "22 h");
    let answer = ask(&long);
    assert_eq!((verdict(&answer), reasons(&answer)), ("do_not_apply", vec!["forecast_too_short"]));
    // What is sealed by its end, and not safe by then, asks for care.
    let just = ask(&with(&long, "/work_duration", "21 h"));
    assert_eq!((verdict(&just), reasons(&just)), ("go_with_care", vec!["forecast_too_short"]));
}

#[test]
fn what_was_assumed_gives_the_same_verdict_when_it_is_sent() {
    let mut cold = super::steady(24, "45 °F", "55 °F", 40);
    for row in &mut cold[12..] {
        *row = with(row, "/air", "30 °F");
    }
    for (kind, start) in [(TWO, "10:54"), (ONE, "08:00")] {
        let asked = with(&request(kind, cold.clone()), "/start", clock(start));
        let answer = ask(&asked);
        let mut sent = asked.clone();
        for entry in answer.body["assumed"].as_array().unwrap() {
            let names: Vec<_> = entry["about"].as_str().unwrap()[2..].split('/').collect();
            let value = &entry["value"];
            let number = value.as_str().unwrap().parse::<f64>().map_or_else(|_| value.clone(), |number| json!(number));
            let place = names.iter().fold(&mut sent, |place, name| &mut place[*name]);
            *place = number;
        }
        let again = ask(&sent);
        assert_eq!((verdict(&answer), reasons(&answer)), (verdict(&again), reasons(&again)), "{kind}: {sent}");
        assert_eq!(answer.findings("stop"), ["cold_before_skin"], "{kind}");
    }
}

#[test]
fn a_window_is_long_enough_for_a_crew() {
    // Only a start at 10:00 sharp lies between the damp before and the rain behind.
    let request = rain(&begun(TWO, "08:00"), 11..12, 40);
    let request = with(&request, "/weather/conditions/11/precipitation", "0.1 mm");
    let damp = (8..10).fold(request, |request, hour| {
        with(&request, &format!("/weather/conditions/{hour}/relative_humidity_percent"), 99)
    });
    let answer = ask(&damp);
    assert!(windows(&answer.body).iter().all(|window| window[0] != "01 10:00"), "{:?}", windows(&answer.body));
    let sharp = ask(&with(&damp, "/start", clock("10:00")));
    assert_eq!(windows(&sharp.body)[0], ["01 10:00", "01 10:00"], "who asks for it is told");
}
