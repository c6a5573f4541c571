//! Loops: of 14 AWG with turns at 0.150 in, at low frequency, unless it says otherwise.

use super::{FOOT, INCH, MICRO, assert_rounds_to, assert_within};
use loopwright::physics::conductor::awg_diameter;
use loopwright::physics::winding::{Winding, WindingShape, quick_rule};

/// Y of a wire which the current fills.
const LOW_FREQUENCY: f64 = 0.25;

/// Sharp corners; `along` and `across` in feet.
fn rectangle(along: f64, across: f64, turns: u32) -> Winding {
    Winding {
        shape: WindingShape::Rectangle,
        along: along * FOOT,
        across: across * FOOT,
        corner_cut: 0.0,
        turns,
        pitch: 0.150 * INCH,
        wire_radius: 0.5 * awg_diameter(14),
    }
}

/// `legs` in inches.
fn cut(winding: Winding, legs: f64) -> Winding {
    Winding { corner_cut: legs * INCH, ..winding }
}

fn microhenry(winding: Winding) -> f64 {
    winding.inductance(LOW_FREQUENCY) / MICRO
}

// Common practice, P(N² + N)/4; exact.
#[test]
fn quick_rule_of_installers() {
    for (perimeter, turns, expected) in [(24.0, 3, 72.0), (92.0, 2, 138.0)] {
        let found = quick_rule(perimeter * FOOT, turns) / MICRO;
        assert_within(1e-10, found, expected);
    }
}

// Rosa & Grover, NBS Bulletin 8 no. 1; 0.2 %.
#[test]
fn one_turn() {
    assert_within(0.2, microhenry(rectangle(6.0, 6.0, 1)), 10.524);
}

// Neumann sums; 0.5 %.
#[test]
fn three_turns() {
    assert_within(0.5, microhenry(rectangle(6.0, 6.0, 3)), 76.97);
}

// Neumann sums, 1 %; and the window of the NEMA test-loop clause.
#[test]
fn corner_cuts() {
    let found = microhenry(cut(rectangle(6.0, 6.0, 3), 12.0));
    assert_within(1.0, found, 71.11);
    assert!((60.0..=80.0).contains(&found));
}

// Rosa & Grover, NBS Bulletin 8 no. 1; 0.01 %.
#[test]
fn one_metre_square() {
    let square = Winding { along: 1.0, across: 1.0, wire_radius: 1e-3, ..rectangle(0.0, 0.0, 1) };
    for (internal_factor, expected) in [(0.25, 5.10699), (0.0, 4.90699)] {
        assert_within(0.01, square.inductance(internal_factor) / MICRO, expected);
    }
}

// Neumann sums for 1.5 mm² at a pitch of 3 mm, 1 to 6 turns.
#[test]
fn metric_wire() {
    const TABLE: [(f64, [f64; 6]); 2] =
        [(2.0, [11.9, 42.2, 88.5, 149.7, 224.9, 313.2]), (1.0, [8.5, 29.7, 62.1, 104.7, 156.8, 217.8])];
    for (across, row) in TABLE {
        for (turns, expected) in (1..).zip(row) {
            let winding = Winding {
                shape: WindingShape::Rectangle,
                along: 2.0,
                across,
                corner_cut: 0.0,
                turns,
                pitch: 3e-3,
                wire_radius: 0.691e-3,
            };
            assert_within(0.5, microhenry(winding), expected);
            assert_rounds_to(0.1, microhenry(winding), expected);
        }
    }
}

// Neumann's integral, verified numerically; 0.01 %.
#[test]
fn coaxial_squares() {
    let square = rectangle(6.0, 6.0, 1);
    let found = square.mutual(&square, [0.0, 0.0, -16.0 * INCH]) / MICRO;
    assert_within(0.01, found, 1.38976);
}

// Neumann sums; 0.5 %.
#[test]
fn wide_loop() {
    assert_within(0.5, microhenry(rectangle(6.0, 20.0, 2)), 85.6);
}

// Neumann sums, 1 to 4 turns; 0.1 %, and 1 % for three turns of the octagon.
#[test]
fn octagon_and_corner_cuts() {
    let octagon = 72.0 * (1.0 - 0.5_f64.sqrt());
    let table = [
        (octagon, [8.85, 31.04, 64.90, 109.44]),
        (6.0, [10.16, 35.65, 74.55, 125.73]),
        (12.0, [9.68, 33.99, 71.11, 119.95]),
    ];
    for (legs, row) in table {
        for (turns, expected) in (1..).zip(row) {
            let found = microhenry(cut(rectangle(6.0, 6.0, turns), legs));
            assert_within(0.1, found, expected);
        }
    }
}

// Neumann sums, sharp corners, from one turn up; half of the last printed digit.
#[test]
fn table_of_inductances() {
    const TABLE: [(f64, f64, &[f64]); 17] = [
        (3.0, 3.0, &[4.8, 16.4, 33.9, 56.8, 84.5]),
        (3.0, 6.0, &[7.5, 25.9, 53.8, 90.3, 134.8]),
        (4.0, 4.0, &[6.6, 23.0, 47.8, 80.2, 119.6]),
        (4.0, 6.0, &[8.5, 29.6, 61.7, 103.8, 155.1]),
        (4.0, 8.0, &[10.4, 36.2, 75.5, 127.2, 190.2]),
        (4.0, 10.0, &[12.2, 42.8, 89.3, 150.4, 225.1]),
        (4.0, 20.0, &[21.5, 75.4, 157.7, 266.0]),
        (5.0, 5.0, &[8.5, 29.8, 62.1, 104.5, 156.3]),
        (6.0, 6.0, &[10.52, 36.9, 76.97, 129.7, 194.2]),
        (6.0, 8.0, &[12.5, 43.9, 91.9, 155.0, 232.3]),
        (6.0, 10.0, &[14.5, 50.9, 106.6, 180.0, 270.0]),
        (6.0, 12.0, &[16.4, 57.9, 121.3, 204.9]),
        (6.0, 20.0, &[24.2, 85.6, 179.7, 304.0]),
        (6.0, 30.0, &[34.0, 120.2, 252.5, 427.4]),
        (6.0, 40.0, &[43.7, 154.7, 325.2, 550.7]),
        (6.0, 60.0, &[63.1, 223.7, 470.5, 797.1]),
        (8.0, 8.0, &[14.6, 51.4, 107.7, 181.9]),
    ];
    for (along, across, row) in TABLE {
        for (turns, expected) in (1..).zip(row) {
            assert_rounds_to(0.1, microhenry(rectangle(along, across, turns)), *expected);
        }
    }
}

// Neumann sums for 6 × 6 ft, three turns: pitch in inches, then gauge; half of the last digit.
#[test]
fn sensitivity_to_pitch_and_wire() {
    let standard = rectangle(6.0, 6.0, 3);
    for (pitch, expected) in [(0.12, 78.92), (0.13, 78.22), (0.18, 75.37), (0.20, 74.45), (0.25, 72.50)] {
        let pitch = pitch * INCH;
        let found = microhenry(Winding { pitch, ..standard });
        assert_rounds_to(0.01, found, expected);
    }
    for (gauge, expected) in [(12, 75.95), (14, 76.97), (16, 77.99), (18, 79.00)] {
        let wire_radius = 0.5 * awg_diameter(gauge);
        let found = microhenry(Winding { wire_radius, ..standard });
        assert_rounds_to(0.01, found, expected);
    }
}

// Computed: M²/L for a shorted turn 18 in above the middle of the stack; 1 %.
#[test]
fn turns_under_a_shorted_turn() {
    let shorted = rectangle(6.0, 6.0, 1);
    let bound = |turns: u32| {
        let winding = rectangle(6.0, 6.0, turns);
        let middle = -0.5 * winding.pitch * f64::from(turns - 1);
        let mutual = winding.mutual(&shorted, [0.0, 0.0, 18.0 * INCH + middle]);
        mutual * mutual / winding.inductance(LOW_FREQUENCY)
    };
    assert_within(1.0, bound(3) / bound(1), 1.231);
}

// Computed, loops of 6 × 6 ft and three turns: edge gap in ft, |k| in %; 3 %, as the
// last printed digit allows.
#[test]
fn crosstalk_of_neighbours() {
    let winding = rectangle(6.0, 6.0, 3);
    for (gap, expected) in [(1.0, 3.0), (2.0, 1.5), (3.0, 0.94), (4.0, 0.63), (6.0, 0.33)] {
        let beside = [(6.0 + gap) * FOOT, 0.0, 0.0];
        let found = winding.coupling(&winding, beside, LOW_FREQUENCY);
        assert!(found < 0.0, "the same winding sense opposes side by side");
        assert_within(3.0, found.abs() * 100.0, expected);
    }
}

// Computed by images: depth in inches below the middle of three turns, drop in %; 0.5 %.
#[test]
fn steel_plane_below() {
    let winding = rectangle(6.0, 6.0, 3);
    for (depth, expected) in [(1.0, 48.5), (2.0, 37.2), (3.0, 30.7), (4.0, 26.2), (6.0, 20.2), (12.0, 11.2)] {
        let below_lowest = depth * INCH - winding.pitch;
        let drop = winding.mirror_mutual(below_lowest) / winding.inductance(LOW_FREQUENCY);
        assert_within(0.5, drop * 100.0, expected);
    }
}

// Geometry; 0.1 %: the wire of one turn, and the saw cut if the square is cut full.
#[test]
fn lengths_with_corner_cuts() {
    let winding = cut(rectangle(6.0, 6.0, 3), 12.0);
    assert_within(0.1, winding.turn_length() / FOOT, 21.66);
    let saw_cut = winding.straight_cut() + winding.diagonal_cut();
    assert_within(0.1, saw_cut / FOOT, 29.66);
}
