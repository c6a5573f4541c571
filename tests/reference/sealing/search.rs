//! A search for an answer that tells a crew to seal in rain, on frost, on damp, or with an expired product.

use std::cell::Cell;

use proptest::test_runner::{Config, TestRunner};

use super::*;

/// What forbids the work of a job begun at a minute, reckoned from what was sent and by other means than the service's.
fn forbidden(sky: &Sky, job: &Job, start: usize) -> Option<&'static str> {
    let last_foot = start + job.work as usize;
    let during = start / 60..=((last_foot - 1) / 60).min(sky.hours - 1);
    if during.clone().any(|hour| sky.is_wet(hour)) {
        return Some("rain");
    }
    match job.condition {
        Some("wet") => return Some("wet"),
        Some("frost") => return Some("frost"),
        Some("damp") if job.kind != "one_part_moisture_cure" && !job.damp_allowed => return Some("damp"),
        Some("damp" | "dry") => {}
        _ if is_undried(sky, 0, start) => return Some("wet by rain"),
        _ => {}
    }
    // What was called dry at the start may have been rained on since.
    if job.condition == Some("dry") && is_undried(sky, job.start, start) {
        return Some("wet by rain");
    }
    let slab = |hour: usize| sky.air(hour) + f64::from(sky.slab.unwrap_or(0));
    let snowed = |hour: usize| (hour.saturating_sub(24)..=hour).any(|hour| sky.is_wet(hour));
    let is_frosty =
        |hour: usize| slab(hour) <= 0.0 && (sky.slab.is_none() || job.condition != Some("dry") || snowed(hour));
    if during.clone().any(is_frosty) {
        return Some("frost");
    }
    if during.clone().any(|hour| sky.air(hour) < f64::from(job.minimum.unwrap_or(44))) {
        return Some("cold");
    }
    // A year from manufacture: the day itself is the last.
    let day = last_foot / 1440;
    job.made.filter(|made| *made as usize + day > 365).map(|_| "expired")
}

/// Whether rain from an hour on has left the slot wet at a minute, minute by minute.
fn is_undried(sky: &Sky, from: usize, until: usize) -> bool {
    let (mut wet, mut last_rain) = (0.0_f64, 0);
    for minute in 60 * from..until {
        let hour = minute / 60;
        if sky.is_wet(hour) {
            (wet, last_rain) = (1.0, minute);
        } else if minute - last_rain >= 24 * 60 {
            wet = 0.0;
        } else if sky.humidity < 85 {
            let air = sky.air(hour);
            let hours = if air > 100.0 { 2.0 } else { 4.0 };
            wet -= if air > 50.0 { 1.0 / (60.0 * hours) } else { 0.0 };
        }
    }
    wet > 1e-6
}

#[test]
fn no_answer_tells_a_crew_to_seal_what_will_not_hold() {
    // PROPTEST_CASES draws more.
    let config = Config { failure_persistence: None, ..Config::default() };
    let cases = config.cases;
    let (jobs, starts, stopped) = (Cell::new(0_u32), Cell::new(0_u32), Cell::new(0_u32));
    let count = |cell: &Cell<u32>| cell.set(cell.get() + 1);
    let mut runner = TestRunner::new_with_rng(config, TestRunner::deterministic().new_rng());
    let result = runner.run(&(sky(), job()), |(sky, job)| {
        let asked = request(&sky, &job);
        let answer = report(&asked);
        count(&jobs);
        count(if is_allowed(&answer) { &starts } else { &stopped });
        let mut told: Vec<_> = windows(&answer).into_iter().flat_map(|(a, b)| [a, usize::midpoint(a, b), b]).collect();
        if is_allowed(&answer) {
            told.push(60 * job.start);
        }
        for start in told {
            count(&starts);
            prop_assert_eq!(forbidden(&sky, &job, start), None, "told to begin at {}", time(start));
            // The window's start, asked for, is allowed; a sky that ends first is care, not a stop.
            let mut again = asked.clone();
            again["start"] = json!(time(start));
            prop_assert!(is_allowed(&report(&again)), "{}", time(start));
        }
        Ok(())
    });
    result.unwrap_or_else(|fault| panic!("{fault}"));
    println!(
        "{} jobs, {} starts that the service allows, {} jobs that it stops",
        jobs.get(),
        starts.get(),
        stopped.get()
    );
    assert!(jobs.get() >= cases && starts.get() > cases / 2 && stopped.get() > cases / 10, "the search saw too little");
}
