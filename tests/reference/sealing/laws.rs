//! What holds for every sky: more of what hinders never helps.

use super::*;

/// Earliest and latest return of traffic; what is not reached, or not allowed at all, comes after everything.
fn traffic(report: &Value) -> [String; 2] {
    let milestones = report["milestones"].as_array().unwrap();
    let traffic = milestones.iter().find(|milestone| milestone["milestone"] == "open_to_traffic");
    ["earliest", "latest"].map(|key| traffic.and_then(|row| row[key].as_str()).unwrap_or("9").to_owned())
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_later_end_of_work_never_brings_traffic_earlier(sky in sky(), job in job(), longer in 0..240_u32) {
        let long = Job { work: job.work + longer, ..job.clone() };
        let (short, long) = (report(&request(&sky, &job)), report(&request(&sky, &long)));
        for (short, long) in traffic(&short).iter().zip(&traffic(&long)) {
            prop_assert!(short <= long, "{short} after {long}");
        }
        prop_assert!(is_allowed(&short) || !is_allowed(&long));
    }

    #[test]
    fn a_later_start_never_brings_traffic_earlier(sky in sky(), job in job(), later in 1..8_usize) {
        // What was seen at a start is news; the sky alone is the same for both.
        let job = Job { condition: None, needed: None, ..job };
        let late = Job { start: (job.start + later).min(sky.hours - 1), ..job.clone() };
        prop_assume!(late.start > job.start);
        let (early, late) = (report(&request(&sky, &job)), report(&request(&sky, &late)));
        // Whoever asks may begin where no window opens: where the weather ends too early to be sure, or for some minutes.
        if windows(&late).first().is_none_or(|(from, until)| until - from < 15) {
            return Ok(());
        }
        for (early, late) in traffic(&early).iter().zip(&traffic(&late)) {
            prop_assert!(early <= late, "{early} after {late}");
        }
    }

    #[test]
    fn more_rain_never_turns_a_stop_into_a_go(sky in sky(), job in job(), first in 0..60_usize, hours in 1..4_usize, percent in 0..=100_u32, fall in 0..40_u32) {
        let mut wetter = sky.clone();
        wetter.rain.push((first, hours, percent, fall));
        let (dry, wet) = (report(&request(&sky, &job)), report(&request(&wetter, &job)));
        prop_assert!(is_allowed(&dry) || !is_allowed(&wet), "{} {}", dry["reasons"], wet["reasons"]);
        // Nor does it open a start.
        let was_open = |start: usize| windows(&dry).iter().any(|(from, until)| (*from..=*until).contains(&start));
        for (from, until) in windows(&wet) {
            prop_assert!(was_open(from) && was_open(until), "{} to {}", time(from), time(until));
        }
    }

    #[test]
    fn a_colder_slab_never_turns_a_stop_into_a_go(sky in sky(), job in job(), colder in 0..100_i32) {
        let over = sky.slab.unwrap_or(20);
        let warm = Sky { slab: Some(over), ..sky.clone() };
        let cold = Sky { slab: Some(over - colder), ..sky };
        let (warm, cold) = (report(&request(&warm, &job)), report(&request(&cold, &job)));
        prop_assert!(is_allowed(&warm) || !is_allowed(&cold), "{} {}", warm["reasons"], cold["reasons"]);
    }

    #[test]
    fn a_higher_dew_point_never_turns_a_stop_into_a_go(sky in sky(), job in job(), damper in 0..60_u32) {
        // One part cures with the water of the air: with more of it, it may have its skin before the rain. All else of it is the same.
        let rain = if job.kind == "one_part_moisture_cure" { Vec::new() } else { sky.rain.clone() };
        let job = Job { needed: job.needed.filter(|_| job.kind != "one_part_moisture_cure"), minimum: job.minimum.or(Some(44)), ..job };
        let drier = Sky { rain, ..sky };
        let damper = Sky { humidity: (drier.humidity + damper).min(100), ..drier.clone() };
        let (drier, damper) = (report(&request(&drier, &job)), report(&request(&damper, &job)));
        prop_assert!(is_allowed(&drier) || !is_allowed(&damper), "{} {}", drier["reasons"], damper["reasons"]);
    }

    #[test]
    fn windows_and_hours_tell_the_same(sky in sky(), job in job()) {
        let answer = report(&request(&sky, &job));
        let windows = windows(&answer);
        prop_assert!(windows.iter().all(|(from, until)| from <= until) && windows.is_sorted_by(|a, b| a.1 < b.0), "{windows:?}");
        for hour in answer["hourly"].as_array().unwrap() {
            let begin = minutes(hour["time"].as_str().unwrap()).max(60 * job.start);
            let is_open = windows.iter().any(|(from, until)| (*from..=*until).contains(&begin));
            prop_assert_eq!(hour["can_apply"].as_bool().unwrap(), is_open, "{}", hour["time"].clone());
        }
        // A later window opens where an earlier one has closed: a minute between the two is refused, or sets too fast.
        for pair in windows.windows(2) {
            let again = Job { start: job.start, ..job.clone() };
            let mut between = request(&sky, &again);
            between["start"] = json!(time(pair[0].1 + 1));
            prop_assert!(pair[1].0 == pair[0].1 + 1 || job.condition == Some("dry") || !is_allowed(&report(&between)));
        }
        prop_assert_eq!(answer.get("milestones_from").is_some(), is_allowed(&answer) || !windows.is_empty());
        prop_assert_eq!(answer["milestones"].as_array().unwrap().is_empty(), answer.get("milestones_from").is_none());
    }
}
