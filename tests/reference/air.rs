//! Moist air, reaction rates and the hours that weather is worth, against published and independently computed values.

use loopwright::physics::kinetics::{PiecewiseIntegral, arrhenius, front_amount, front_depth};
use loopwright::physics::psychrometrics::{dew_point, frost_point, saturation_pressure, vapour_pressure};

/// Vapour pressure at 23 °C and 50 %, Pa (14.019 hPa).
const REFERENCE: f64 = 1401.9;
const HOUR: f64 = 3600.0;

#[track_caller]
pub fn close(found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance, "found {found}, expected {expected}");
}

fn celsius(fahrenheit: f64) -> f64 {
    (fahrenheit - 32.0) / 1.8
}

/// Hours of `tests/reference/weather`: time, air °F, humidity percent.
pub fn hours(place: &str) -> Vec<(String, f64, f64)> {
    let path = format!("{}/tests/reference/weather/{place}.csv", env!("CARGO_MANIFEST_DIR"));
    let mut reader = csv::Reader::from_path(path).unwrap();
    let rows = reader.deserialize::<(String, f64, f64, f64)>();
    rows.map(|row| row.map(|(time, air, _, humidity)| (time, air, humidity)).unwrap()).collect()
}

/// Equivalent hours by a rate of air (°C) and humidity (a share).
fn equivalent(hours: &[(String, f64, f64)], rate: impl Fn(f64, f64) -> f64) -> f64 {
    let steps = hours
        .iter()
        .zip(1_u32..)
        .map(|((_, air, humidity), hour)| (f64::from(hour) * HOUR, rate(celsius(*air), humidity / 100.0)));
    PiecewiseIntegral::new(steps).at(1e9) / HOUR
}

#[test]
fn dew_points_over_water_are_those_of_alduchov_and_eskridge() {
    // Air °C, relative humidity over water, dew point °C: computed from 6.1094 hPa, 17.625, 243.04 (1996).
    let rows = [
        (30.0, 0.50, 18.45),
        (25.0, 0.60, 16.70),
        (23.0, 0.50, 12.02),
        (20.0, 0.50, 9.26),
        (20.0, 0.65, 13.22),
        (10.0, 0.70, 4.78),
        (5.0, 0.80, 1.84),
        (5.0, 0.60, -2.13),
        (0.0, 0.75, -3.90),
        (-5.0, 0.70, -9.63),
        (-10.0, 0.80, -12.80),
        (-20.0, 0.70, -24.07),
    ];
    for (air, humidity, expected) in rows {
        close(dew_point(vapour_pressure(air, humidity)), expected, 0.01);
    }
    close(vapour_pressure(23.0, 0.5), REFERENCE, 0.1);
}

#[test]
fn vapour_pressures_agree_with_the_weather_service_tables() {
    // US National Weather Service psychrometric tables, inHg at °F over water; old tables lie some 0.8 % below modern formulas.
    for (fahrenheit, inch_of_mercury) in [(76.0, 0.896), (80.0, 1.022), (104.0, 2.160), (110.0, 2.576)] {
        let ratio = saturation_pressure(celsius(fahrenheit)) / (inch_of_mercury * 3386.39);
        close(ratio, 1.0, 0.015);
    }
    // Over ice, by the temperature at which air of that pressure is saturated: a hundredth of pressure is a fifth of a degree.
    for (fahrenheit, inch_of_mercury) in [(20.0, 0.1026), (15.0, 0.0810), (-30.0, 0.0069), (-40.0, 0.0039)] {
        close(frost_point(inch_of_mercury * 3386.39), celsius(fahrenheit), 0.3);
    }
}

#[test]
fn below_freezing_the_frost_point_lies_above_the_dew_point() {
    for air in [-2.0, -10.0, -25.0] {
        let vapour = vapour_pressure(air, 0.7);
        assert!(dew_point(vapour) < frost_point(vapour) && frost_point(vapour) < air, "{air}");
    }
}

#[test]
fn cold_and_dry_air_take_their_time() {
    // Time factors of vapour pressure against 23 °C and 50 %, from the same formula by hand.
    for (air, humidity, expected) in [
        (30.0, 0.5, 0.662),
        (23.0, 0.2, 2.5),
        (10.0, 0.7, 1.634),
        (5.0, 0.8, 2.011),
        (0.0, 0.75, 3.06),
        (-5.0, 0.7, 4.747),
    ] {
        let factor = REFERENCE / vapour_pressure(air, humidity);
        close(factor / expected, 1.0, 0.005);
    }
    // Time factors of the law of Arrhenius at 50 kJ/mol against 23 °C.
    for (air, expected) in [(30.0, 0.626), (10.0, 2.540), (5.0, 3.721), (0.0, 5.528), (-5.0, 8.334), (-10.0, 12.76)] {
        let factor = 1.0 / arrhenius(50e3, air + 273.15, 296.15);
        close(factor / expected, 1.0, 0.005);
    }
    close(arrhenius(51.2e3, 303.15, 293.15), 2.0, 0.005);
    close(arrhenius(44.6e3, 283.15, 273.15), 2.0, 0.005);
}

#[test]
fn a_front_goes_with_the_root_of_what_it_is_offered() {
    close(front_depth(0.004, 24.0 * HOUR, 96.0 * HOUR), 0.008, 1e-15);
    close(front_amount(0.004, 24.0 * HOUR, 0.002), 6.0 * HOUR, 1e-9);
}

#[test]
fn the_sum_of_a_winter_is_what_its_hours_make_it() {
    let by_vapour = |air: f64, humidity: f64| vapour_pressure(air, humidity) / REFERENCE;
    // A rate that doubles per 10 degrees tests the integrator; the service does not use it.
    let doubling = |air: f64, _: f64| 2.0_f64.powf((air - 23.0) / 10.0);
    let newark = hours("ewr_2013_01_22");
    close(equivalent(&newark[..72], by_vapour) / 7.15, 1.0, 0.01);
    close(equivalent(&newark[..72], doubling) / 8.63, 1.0, 0.01);
    for (place, vapour, doubled) in
        [("ewr_2013_01_22", 26.92, 23.74), ("jfk_2013_02_04", 42.27, 31.79), ("lga_2013_07_15", 272.0, 295.5)]
    {
        let hours = hours(place);
        assert_eq!(hours.len(), 168);
        close(equivalent(&hours, by_vapour) / vapour, 1.0, 0.005);
        close(equivalent(&hours, doubling) / doubled, 1.0, 0.005);
    }
}

#[test]
fn the_file_of_weather_has_its_humidity_over_water() {
    // The dew points of the file are its own; over ice they would lie some tenths of a degree higher in the frost.
    let path = format!("{}/tests/reference/weather/ewr_2013_01_22.csv", env!("CARGO_MANIFEST_DIR"));
    let rows: Vec<(String, f64, f64, f64)> =
        csv::Reader::from_path(path).unwrap().deserialize().map(Result::unwrap).collect();
    let apart = |(_, air, dew, humidity): &(String, f64, f64, f64)| {
        (dew_point(vapour_pressure(celsius(*air), humidity / 100.0)) - celsius(*dew)).abs()
    };
    assert!(rows.iter().map(apart).sum::<f64>() / 168.0 < 0.1);
}

/// A rate of 1, then a stretch of nothing, then 2: by hand.
#[test]
fn a_sum_stands_still_where_nothing_is_added() {
    let sum = PiecewiseIntegral::new([(10.0, 1.0), (20.0, 0.0), (30.0, 2.0)]);
    for (time, expected) in [
        (-5.0, 0.0),
        (0.0, 0.0),
        (5.0, 5.0),
        (10.0, 10.0),
        (15.0, 10.0),
        (20.0, 10.0),
        (25.0, 20.0),
        (30.0, 30.0),
        (40.0, 30.0),
    ] {
        assert_eq!(sum.at(time), expected, "at {time}");
    }
    // Of the times that have an amount, the first.
    for (amount, expected) in [(0.0, 0.0), (5.0, 5.0), (10.0, 10.0), (20.0, 25.0), (30.0, 30.0)] {
        assert_eq!(sum.inverse(amount), Some(expected), "{amount}");
    }
    assert_eq!(sum.inverse(30.000_001), None);
    let nothing = PiecewiseIntegral::new([]);
    assert_eq!((nothing.at(5.0), nothing.inverse(0.0), nothing.inverse(1.0)), (0.0, Some(0.0), None));
}
