//! Lead-ins, groups of loops, capacitance.

use super::{FOOT, MICRO, assert_rounds_to, assert_within};
use loopwright::physics::circuit::{
    apparent_inductance, frequency_shift, pair_inductance_per_metre, parallel, parallel_weights, quality_factor,
    resonance, series, series_weights, share,
};
use loopwright::physics::conductor::awg_diameter;

// An agency's acceptance test, R ≤ 5 Ω and Q ≥ 5 at 50 kHz; 0.1 %.
#[test]
fn the_quality_factor_of_an_agency_test() {
    for (inductance, expected) in [(76.0, 4.775), (94.0, 5.906), (79.58, 5.0)] {
        let found = quality_factor(inductance * MICRO, 50e3, 5.0);
        assert_within(0.1, found, expected);
    }
}

// Exact; 0.2 %.
#[test]
fn lead_in_dilution() {
    for (feet, expected) in [(100.0, 0.7777), (500.0, 0.4117)] {
        let found = share(77.0 * MICRO, 0.22 * MICRO * feet);
        assert_within(0.2, found, expected);
    }
}

// Exact; 0.01 %.
#[test]
fn the_frequency_shifts_by_half_the_change() {
    for (change, expected) in [(0.01, 0.0050378), (0.05, 0.025978)] {
        assert_within(0.01, frequency_shift(change), expected);
    }
}

// Circuit theory; exact.
#[test]
fn two_equal_loops() {
    let loops = [77.0 * MICRO; 2];
    for weights in [series_weights(&loops), parallel_weights(&loops)] {
        assert_eq!(weights, [0.5, 0.5]);
    }
    assert_within(1e-10, series(&loops), 154.0 * MICRO);
    assert_within(1e-10, parallel(&loops), 38.5 * MICRO);
}

// Computed, an untwisted or twisted pair: gauge, spacing in mm, µH/ft; half of the last digit.
#[test]
fn lead_in_from_geometry() {
    for (gauge, spacing, expected) in [
        (14, 3.0, 0.179),
        (14, 3.5, 0.201),
        (14, 3.8, 0.212),
        (14, 4.0, 0.219),
        (14, 4.5, 0.235),
        (18, 2.2, 0.201),
        (18, 2.6, 0.224),
        (18, 3.0, 0.242),
    ] {
        let found = pair_inductance_per_metre(spacing * 1e-3, awg_diameter(gauge)) * FOOT;
        assert_rounds_to(0.001, found / MICRO, expected);
    }
}

// Exact; half of the last digit. µH, nF, kHz, ratio; then the resonance in kHz.
#[test]
fn shunt_capacitance() {
    for (inductance, capacitance, frequency, expected) in
        [(100.0, 1.0, 20.0, 1.00158), (100.0, 1.0, 100.0, 1.0411), (300.0, 2.0, 60.0, 1.0932)]
    {
        let inductance = inductance * MICRO;
        let found = apparent_inductance(inductance, capacitance * 1e-9, frequency * 1e3);
        assert_within(0.005, found / inductance, expected);
    }
    for (inductance, capacitance, expected) in [(100.0, 1.0, 503.0), (300.0, 2.0, 205.0)] {
        let found = resonance(inductance * MICRO, capacitance * 1e-9) / 1e3;
        assert_rounds_to(1.0, found, expected);
    }
}
