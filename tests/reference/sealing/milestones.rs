//! The milestones of the service against a reckoning of its own: in steps of a second, from the last foot on.

use super::*;

const GAS: f64 = 8.314_462_618;

/// Vapour pressure over water in Pa, after Alduchov and Eskridge (1996).
fn vapour(celsius: f64, percent: f64) -> f64 {
    percent / 100.0 * 610.94 * (17.625 * celsius / (celsius + 243.04)).exp()
}

/// The law of Arrhenius against 23 °C, for an energy in J/mol.
fn arrhenius(energy: f64, celsius: f64) -> f64 {
    (energy / GAS * (1.0 / 296.15 - 1.0 / (celsius + 273.15))).exp()
}

/// Both rate laws of a kind in air and slab of °C.
fn rates(kind: &str, air: f64, slab: f64, percent: f64) -> [f64; 2] {
    let by_water = vapour(air, percent) / vapour(23.0, 50.0);
    match kind {
        "one_part_moisture_cure" => [by_water, by_water * arrhenius(60e3, slab.min(23.0))],
        _ => [arrhenius(45e3, slab), arrhenius(60e3, slab)],
    }
}

/// What skin and traffic require, in hours of 23 °C and 50 %: least and most, by each law.
fn requirements(kind: &str) -> [[[f64; 2]; 2]; 2] {
    if kind == "one_part_moisture_cure" {
        // 3 h to a skin, two thirds of it at the earliest; 6 mm of the 1-1/4 in that take 3 to 7 days, and no wheel before 3 h.
        let skin = [2.0, 3.0];
        let share = (6.0_f64 / 31.75).powi(2);
        let traffic = [72.0, 168.0].map(|hours| (share * hours).max(3.0));
        return [[skin; 2], [traffic; 2]];
    }
    let at_77_f = [45e3, 60e3].map(|energy| arrhenius(energy, 25.0));
    let set = [10.0 / 60.0, 15.0 / 60.0];
    let traffic = at_77_f.map(|rate| [rate * 25.0 / 60.0, rate]);
    [[set; 2], traffic]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn skin_and_traffic_come_when_a_sum_over_seconds_has_them(sky in sky(), job in job(), over in 0..150_i32) {
        prop_assume!(job.kind != "hot_applied");
        let sky = Sky { slab: Some(over), hours: 60, ..sky };
        let answer = report(&request(&sky, &Job { condition: Some("dry"), made: None, ..job.clone() }));
        let Some(from) = answer["milestones_from"].as_str().map(minutes) else { return Ok(()) };
        let last_foot = from + job.work as usize;
        prop_assert_eq!(minutes(answer["last_foot_sealed"].as_str().unwrap()), last_foot);
        // What each law has offered after each second.
        let mut offered = [0.0_f64; 2];
        let mut reached = [[[None; 2]; 2]; 2];
        let wanted = requirements(job.kind);
        for second in 60 * last_foot..3600 * sky.hours {
            let air = sky.air(second / 3600) / 10.0;
            let slab = air + f64::from(over) / 10.0;
            let rates = rates(job.kind, air, slab, f64::from(sky.humidity));
            for law in 0..2 {
                offered[law] += rates[law] / 3600.0;
                for (milestone, wanted) in wanted.iter().enumerate() {
                    for end in 0..2 {
                        if reached[milestone][law][end].is_none() && offered[law] >= wanted[law][end] {
                            reached[milestone][law][end] = Some(second as f64 / 60.0);
                        }
                    }
                }
            }
        }
        for (name, [one, other]) in ["skin_over", "open_to_traffic"].into_iter().zip(reached) {
            let row = answer["milestones"].as_array().unwrap().iter().find(|row| row["milestone"] == name).unwrap();
            let earliest = [one[0], other[0]].into_iter().flatten().reduce(f64::min);
            let latest = one[1].zip(other[1]).map(|(one, other)| one.max(other));
            for (key, expected) in [("earliest", earliest), ("latest", latest)] {
                let found = row.get(key).map(|time| minutes(time.as_str().unwrap()) as f64);
                match (found, expected) {
                    (Some(found), Some(expected)) => prop_assert!((found - expected).abs() < 0.6, "{name} {key}: {found} {expected}"),
                    // At the very end of the weather a second decides.
                    (Some(time), None) | (None, Some(time)) => prop_assert!(60.0 * sky.hours as f64 - time < 1.0, "{name} {key}: {time}"),
                    (None, None) => {}
                }
            }
        }
    }
}
