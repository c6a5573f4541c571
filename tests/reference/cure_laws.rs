//! What must hold for every cure under every weather.

use loopwright::calculation::Calculation;
use loopwright::calculation::cure_guidance::CureGuidanceRequest;
use loopwright::wording::{Language, Worded};
use proptest::prelude::*;
use serde_json::{Value, json};

/// An hour: air and slab in tenths of °C, humidity, chance of rain.
#[derive(Clone, Debug)]
struct Hour {
    air: i32,
    humidity: u32,
    slab: Option<i32>,
    rain: u32,
    minutes: u32,
}

prop_compose! {
    fn hour()(air in -250..450_i32, humidity in 5..=100_u32, slab in prop::option::of(-250..600_i32), rain in 0..=100_u32, minutes in prop::sample::select(vec![20_u32, 60, 60, 60, 180])) -> Hour {
        Hour { air, humidity, slab, rain, minutes }
    }
}

/// Any weather; hardly anybody may begin in it.
fn weather() -> impl Strategy<Value = Vec<Hour>> {
    prop::collection::vec(hour(), 1..120)
}

/// Any weather after a morning in which everybody may begin and skins form.
fn weather_after_a_mild_morning() -> impl Strategy<Value = Vec<Hour>> {
    let mild = Hour { air: 200, humidity: 50, slab: Some(210), rain: 0, minutes: 60 };
    weather().prop_map(move |weather| [vec![mild.clone(); 8], weather].concat())
}

fn sealant_kinds() -> impl Strategy<Value = &'static str> {
    prop::sample::select(vec!["one_part_moisture_cure", "two_part_reactive", "hot_applied"])
}

/// Minutes after a midnight, as a time.
fn time(minutes: u32) -> String {
    let (day, hour, minute) = (1 + minutes / 1440, minutes / 60 % 24, minutes % 60);
    format!("2026-03-{day:02}T{hour:02}:{minute:02}:00-05:00")
}

fn request(kind: &str, weather: &[Hour], start: u32) -> Value {
    let mut minutes = 0;
    let rows: Vec<_> = weather
        .iter()
        .map(|hour| {
            let mut row = json!({
                "time": time(minutes), "air": format!("{} °C", f64::from(hour.air) / 10.0),
                "relative_humidity_percent": hour.humidity, "precipitation_probability_percent": hour.rain
            });
            if let Some(slab) = hour.slab {
                row["surface"] = json!(format!("{} °C", f64::from(slab) / 10.0));
            }
            minutes += hour.minutes;
            row
        })
        .collect();
    json!({
        "sealant": { "kind": kind }, "start": time(start), "work_duration": "1 min", "surface_condition": "dry",
        "wire": { "insulation_rating": "200 °C" }, "weather": { "conditions": rows }
    })
}

fn report(request: &Value) -> Value {
    let request: CureGuidanceRequest = serde_json::from_value(request.clone()).unwrap();
    let report = request.answer().unwrap_or_else(|refusal| panic!("{refusal:?}"));
    serde_json::to_value(report.worded(Language::English)).unwrap()
}

/// The times of each milestone; what is not reached comes after everything. On one clock, texts sort as times do.
fn times(report: &Value) -> Vec<[String; 2]> {
    let milestones = report["milestones"].as_array().unwrap().iter();
    milestones
        .map(|m| {
            ["earliest", "latest"].map(|key| m.get(key).map_or("9".to_owned(), |t| t.as_str().unwrap().to_owned()))
        })
        .collect()
}

fn has_null(value: &Value) -> bool {
    match value {
        Value::Null => true,
        Value::Array(items) => items.iter().any(has_null),
        Value::Object(members) => members.values().any(has_null),
        _ => false,
    }
}

/// No milestone of `faster` comes later than that of `slower`.
fn never_slower(faster: &Value, slower: &Value) -> bool {
    times(faster).iter().flatten().zip(times(slower).iter().flatten()).all(|(faster, slower)| faster <= slower)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 100, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_warmer_or_damper_hour_never_slows_a_cure(kind in sealant_kinds(), weather in weather_after_a_mild_morning(), at in any::<prop::sample::Index>(), warmer in 0..150_i32, damper in 0..50_u32) {
        let slower = report(&request(kind, &weather, 10));
        let mut changed = weather.clone();
        let hour = &mut changed[at.index(weather.len())];
        hour.air += warmer;
        hour.slab = hour.slab.map(|slab| slab + warmer);
        hour.humidity = (hour.humidity + damper).min(100);
        let faster = report(&request(kind, &changed, 10));
        prop_assert!(never_slower(&faster, &slower), "{:?}\n{:?}", times(&faster), times(&slower));
    }

    #[test]
    fn two_halves_of_an_hour_are_the_hour(kind in sealant_kinds(), weather in weather_after_a_mild_morning(), at in any::<prop::sample::Index>()) {
        let whole = report(&request(kind, &weather, 10));
        let (mut split, at) = (weather.clone(), at.index(weather.len()));
        // The last row holds for an hour, whatever follows; both of its halves together hold longer.
        prop_assume!(at + 1 < weather.len());
        split[at].minutes /= 2;
        let rest = Hour { minutes: weather[at].minutes - split[at].minutes, ..weather[at].clone() };
        split.insert(at + 1, rest);
        let halves = report(&request(kind, &split, 10));
        prop_assert_eq!(times(&whole), times(&halves));
        prop_assert_eq!(&whole["milestones"], &halves["milestones"]);
        prop_assert_eq!(&whole["equivalent_hours"], &halves["equivalent_hours"]);
    }

    #[test]
    fn progress_never_falls_and_stays_a_band(kind in sealant_kinds(), weather in weather_after_a_mild_morning(), start in 0..60_u32) {
        let report = report(&request(kind, &weather, start));
        prop_assert!(!has_null(&report), "{}", report);
        let hours = report["hourly"].as_array().unwrap();
        let column = |key: &str| hours.iter().filter_map(|hour| hour.get(key).and_then(Value::as_f64)).collect::<Vec<_>>();
        let (low, high) = (column("progress_low_percent"), column("progress_high_percent"));
        prop_assert!(low.is_sorted() && high.is_sorted());
        prop_assert!(low.iter().zip(&high).all(|(low, high)| low <= high && *high <= 100.0));
        prop_assert!(column("rate_low").iter().zip(column("rate_high")).all(|(low, high)| *low <= high && *low >= 0.0));
        prop_assert_eq!(low.is_empty(), kind == "hot_applied");
    }

    #[test]
    fn milestones_come_in_order_and_after_the_start(kind in sealant_kinds(), weather in weather_after_a_mild_morning()) {
        let report = report(&request(kind, &weather, 10));
        let times = times(&report);
        prop_assert_eq!(times.len(), if kind == "hot_applied" { 1 } else { 4 });
        prop_assert!(times.is_sorted_by(|a, b| a[0] <= b[0] && a[1] <= b[1]), "{:?}", times);
        prop_assert!(times.iter().all(|[earliest, latest]| earliest <= latest && *earliest >= time(10)), "{:?}", times);
    }

    #[test]
    fn a_verdict_is_what_its_reasons_weigh(kind in sealant_kinds(), weather in weather()) {
        let report = report(&request(kind, &weather, 10));
        let worst = report["findings"][0]["level"].as_str().unwrap();
        let verdict = report["verdict"].as_str().unwrap();
        prop_assert_eq!(worst == "stop", ["wait", "do_not_apply"].contains(&verdict), "{}: {}", verdict, report["findings"][0].clone());
        prop_assert_eq!(verdict == "wait", worst == "stop" && !report["windows"].as_array().unwrap().is_empty());
        prop_assert_eq!(report.get("milestones_from").is_some(), worst != "stop" || verdict == "wait");
        prop_assert!(!report["reasons"].as_array().unwrap().is_empty());
        if weather[0].slab.is_none() {
            prop_assert!(verdict != "go");
        }
    }

    #[test]
    fn the_weather_that_was_used_gives_the_same_answer(kind in sealant_kinds(), weather in weather()) {
        let mut request = request(kind, &weather, 10);
        let first = report(&request);
        request["weather"]["conditions"] = first["conditions_used"].clone();
        prop_assert_eq!(report(&request), first);
    }
}
