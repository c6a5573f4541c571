//! When to seal: skies and jobs that are drawn, judged apart from the service, and the laws that its windows keep.

mod laws;
mod milestones;
mod search;

use loopwright::calculation::Calculation;
use loopwright::calculation::cure_guidance::CureGuidanceRequest;
use loopwright::wording::{Language, Worded};
use proptest::prelude::*;
use serde_json::{Value, json};

/// A day and more that a weather service could have sent: waves of temperature, spells of rain.
#[derive(Clone, Debug)]
struct Sky {
    hours: usize,
    /// Mean and swing of the air, tenths of °C; it is warmest at 15:00.
    mean: i32,
    swing: i32,
    humidity: u32,
    /// The slab over the air, tenths of °C; `None` where nobody measured it.
    slab: Option<i32>,
    /// First hour, hours, percent, hundredths of mm.
    rain: Vec<(usize, usize, u32, u32)>,
}

/// A job of sealing.
#[derive(Clone, Debug)]
struct Job {
    kind: &'static str,
    condition: Option<&'static str>,
    work: u32,
    start: usize,
    minimum: Option<i32>,
    /// Days before the first of March on which the sealant was made.
    made: Option<u32>,
    damp_allowed: bool,
    /// Hours from the start to when traffic is needed.
    needed: Option<u32>,
}

prop_compose! {
    fn sky()(
        hours in 14..60_usize, mean in -60..260_i32, swing in 0..80_i32, humidity in 25..=95_u32, slab in prop::option::weighted(0.8, -40..150_i32),
        rain in prop::collection::vec((0..60_usize, 1..4_usize, prop::sample::select(vec![0_u32, 10, 30, 49, 50, 90]), prop::sample::select(vec![0_u32, 0, 5, 30])), 0..3)
    ) -> Sky {
        Sky { hours, mean, swing, humidity, slab, rain }
    }
}

prop_compose! {
    fn job()(
        kind in prop::sample::select(vec!["one_part_moisture_cure", "two_part_reactive", "hot_applied"]),
        condition in prop::sample::select(vec![None, Some("dry"), Some("dry"), Some("damp"), Some("wet"), Some("frost")]),
        work in 1..240_u32, start in 0..14_usize, minimum in prop::option::of(-150..100_i32), made in prop::option::weighted(0.3, 355..370_u32),
        damp_allowed in any::<bool>(), needed in prop::option::weighted(0.2, 1..40_u32)
    ) -> Job {
        Job { kind, condition, work, start, minimum, made, damp_allowed, needed }
    }
}

/// Minutes after the midnight of 2026-03-01, as a time.
fn time(minutes: usize) -> String {
    let (day, hour, minute) = (1 + minutes / 1440, minutes / 60 % 24, minutes % 60);
    format!("2026-03-{day:02}T{hour:02}:{minute:02}:00-05:00")
}

/// Minutes after that midnight.
fn minutes(time: &str) -> usize {
    let number = |range: std::ops::Range<usize>| time[range].parse::<usize>().unwrap();
    1440 * (number(8..10) - 1) + 60 * number(11..13) + number(14..16)
}

fn celsius(tenths: f64) -> String {
    format!("{:.2} °C", tenths / 10.0)
}

impl Sky {
    /// The air of an hour, tenths of °C, to the decimal that is sent.
    fn air(&self, hour: usize) -> f64 {
        let phase = std::f64::consts::TAU * (hour as f64 - 15.0) / 24.0;
        (10.0 * (f64::from(self.mean) + f64::from(self.swing) * phase.cos())).round() / 10.0
    }

    /// Percent and hundredths of mm in an hour.
    fn rain_in(&self, hour: usize) -> (u32, u32) {
        let spells = self.rain.iter().filter(|(first, hours, ..)| (*first..first + hours).contains(&hour));
        spells.fold((0, 0), |(percent, fall), spell| (percent.max(spell.2), fall.max(spell.3)))
    }

    /// Whether rain of an hour wets an open slot.
    fn is_wet(&self, hour: usize) -> bool {
        let (percent, fall) = self.rain_in(hour);
        percent >= 50 || fall > 0
    }

    fn rows(&self) -> Vec<Value> {
        let row = |hour: usize| {
            let (percent, fall) = self.rain_in(hour);
            let mut row = json!({
                "time": time(60 * hour), "air": celsius(self.air(hour)), "relative_humidity_percent": self.humidity,
                "precipitation_probability_percent": percent, "precipitation": format!("{} mm", f64::from(fall) / 100.0)
            });
            if let Some(over) = self.slab {
                row["surface"] = json!(celsius(self.air(hour) + f64::from(over)));
            }
            row
        };
        (0..self.hours).map(row).collect()
    }
}

fn request(sky: &Sky, job: &Job) -> Value {
    let mut request = json!({
        "sealant": { "kind": job.kind, "data_sheet": {} }, "start": time(60 * job.start), "work_duration": format!("{} min", job.work),
        "wire": { "insulation_rating": "200 °C" }, "weather": { "conditions": sky.rows() }
    });
    if let Some(condition) = job.condition {
        request["surface_condition"] = json!(condition);
    }
    if let Some(minimum) = job.minimum {
        request["sealant"]["data_sheet"]["minimum_application_temperature"] = json!(celsius(f64::from(minimum)));
    }
    if job.damp_allowed {
        request["sealant"]["data_sheet"]["damp_slot_allowed"] = json!(true);
    }
    if let Some(days) = job.made {
        let made = "2026-03-01".parse::<jiff::civil::Date>().unwrap() - jiff::Span::new().days(days);
        request["sealant"]["made_on"] = json!(made.to_string());
    }
    if let Some(hours) = job.needed {
        request["needed_open_by"] = json!(time(60 * (job.start + hours as usize)));
    }
    request
}

fn report(request: &Value) -> Value {
    let request: CureGuidanceRequest = serde_json::from_value(request.clone()).unwrap();
    let report = request.answer().unwrap_or_else(|refusal| panic!("{refusal:?}"));
    serde_json::to_value(report.worded(Language::English)).unwrap()
}

fn is_allowed(report: &Value) -> bool {
    ["go", "go_with_care"].contains(&report["verdict"].as_str().unwrap())
}

/// The windows of a report, in minutes.
fn windows(report: &Value) -> Vec<(usize, usize)> {
    let windows = report["windows"].as_array().unwrap().iter();
    windows
        .map(|window| (minutes(window["start"].as_str().unwrap()), minutes(window["end"].as_str().unwrap())))
        .collect()
}
