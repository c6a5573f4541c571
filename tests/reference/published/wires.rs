//! Copper wires.

use super::{FOOT, INCH, assert_within};
use loopwright::physics::conductor::{awg_diameter, dc_resistance_per_metre, round_area, skin_depth, skin_effect};

/// Ω per 1000 ft.
fn per_kilofoot(gauge: u32, celsius: f64) -> f64 {
    dc_resistance_per_metre(round_area(awg_diameter(gauge)), celsius) * 1000.0 * FOOT
}

// ASTM B258; 0.2 %.
#[test]
fn wire_diameter() {
    assert_within(0.2, awg_diameter(14) / INCH, 0.06408);
}

// ASTM B258, IACS copper; 0.2 %. Gauge, °C, Ω per 1000 ft.
#[test]
fn wire_resistance() {
    const TABLE: [(u32, f64, f64); 15] = [
        (14, 20.0, 2.525),
        (14, -20.0, 2.128),
        (14, 0.0, 2.327),
        (14, 40.0, 2.724),
        (10, 20.0, 0.9988),
        (12, 20.0, 1.588),
        (16, 20.0, 4.016),
        (18, 20.0, 6.385),
        (20, 20.0, 10.15),
        (10, 75.0, 1.215),
        (12, 75.0, 1.932),
        (14, 75.0, 3.071),
        (16, 75.0, 4.883),
        (18, 75.0, 7.765),
        (20, 75.0, 12.35),
    ];
    for (gauge, celsius, expected) in TABLE {
        assert_within(0.2, per_kilofoot(gauge, celsius), expected);
    }
}

// Bessel solution of the round wire; 0.5 %. R_ac/R_dc at 20, 50 and 100 kHz; depth in mm.
#[test]
fn the_resistance_rises_with_frequency_as_by_bessel() {
    const FREQUENCIES: [f64; 3] = [20e3, 50e3, 100e3];
    const TABLE: [(u32, [f64; 3]); 3] =
        [(14, [1.167, 1.638, 2.222]), (16, [1.072, 1.347, 1.814]), (18, [1.029, 1.163, 1.479])];
    for (gauge, row) in TABLE {
        for (frequency, expected) in FREQUENCIES.into_iter().zip(row) {
            let found = skin_effect(0.5 * awg_diameter(gauge), frequency, 20.0);
            assert_within(0.5, found.resistance_ratio, expected);
        }
    }
    for (frequency, expected) in FREQUENCIES.into_iter().zip([0.467, 0.296, 0.209]) {
        assert_within(0.5, skin_depth(frequency, 20.0) * 1e3, expected);
    }
}

// Arithmetic; 0.5 %.
#[test]
fn loop_and_lead_in_resistance() {
    assert_within(0.5, per_kilofoot(14, 20.0) * 0.272, 0.687);
}
