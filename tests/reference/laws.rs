//! What must hold for every loop, wire and sum, whatever its size.

use loopwright::physics::circuit::{parallel_pair, series_pair};
use loopwright::physics::conductor::skin_effect;
use loopwright::physics::filament::{Filament, Point3, mutual, self_inductance};
use loopwright::physics::kinetics::PiecewiseIntegral;
use loopwright::physics::winding::{Winding, WindingShape};
use proptest::prelude::*;

const LOW_FREQUENCY: f64 = 0.25;

fn rectangle() -> impl Strategy<Value = Winding> {
    (0.5..20.0_f64, 0.5..20.0_f64, 0.0..0.45_f64, 1..8_u32, 2.0..8.0_f64, 0.2..0.9_f64).prop_map(
        |(along, across, cut, turns, pitch, radius)| Winding {
            shape: WindingShape::Rectangle,
            along,
            across,
            corner_cut: cut * along.min(across),
            turns,
            pitch: pitch * 1e-3,
            wire_radius: radius * 1e-3,
        },
    )
}

fn winding() -> impl Strategy<Value = Winding> {
    let shapes = prop_oneof![Just(WindingShape::Rectangle), Just(WindingShape::Quadrupole)];
    (shapes, rectangle()).prop_map(|(shape, winding)| Winding { shape, ..winding })
}

fn point() -> impl Strategy<Value = Point3> {
    prop::array::uniform3(-3.0..3.0_f64)
}

fn segment() -> impl Strategy<Value = Filament> {
    (point(), point())
        .prop_map(|(from, to)| Filament { from, to })
        .prop_filter("long enough to have a direction", |s| s.length() > 0.1)
}

/// Turned by `angle` about the axis through the origin that `axis` numbers.
fn turned(segment: Filament, axis: usize, angle: f64) -> Filament {
    let (sine, cosine) = angle.sin_cos();
    let turn = |point: Point3| {
        let (u, v) = ((axis + 1) % 3, (axis + 2) % 3);
        let mut turned = point;
        turned[u] = cosine * point[u] - sine * point[v];
        turned[v] = sine * point[u] + cosine * point[v];
        turned
    };
    Filament { from: turn(segment.from), to: turn(segment.to) }
}

/// The mutual inductance of segments of this size is (μ0/4π) · length at most times a few; it is the
/// yardstick for rounding where the value itself may be nearly 0.
fn yardstick(a: &Filament, b: &Filament) -> f64 {
    1e-7 * a.length().min(b.length())
}

#[track_caller]
fn close(found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance, "found {found:e}, expected {expected:e}");
}

proptest! {
    #[test]
    fn inductance_scales_with_length(loop_ in winding(), scale in 0.1..10.0_f64) {
        let scaled = Winding {
            along: scale * loop_.along,
            across: scale * loop_.across,
            corner_cut: scale * loop_.corner_cut,
            pitch: scale * loop_.pitch,
            wire_radius: scale * loop_.wire_radius,
            ..loop_
        };
        let expected = scale * loop_.inductance(LOW_FREQUENCY);
        close(scaled.inductance(LOW_FREQUENCY), expected, 1e-9 * expected);
    }

    #[test]
    fn a_rectangle_may_lie_either_way(loop_ in rectangle()) {
        let other = Winding { along: loop_.across, across: loop_.along, ..loop_ };
        let expected = loop_.inductance(LOW_FREQUENCY);
        close(other.inductance(LOW_FREQUENCY), expected, 1e-10 * expected);
        close(other.turn_length(), loop_.turn_length(), 1e-12 * loop_.turn_length());
    }

    #[test]
    fn more_loop_is_more_inductance(loop_ in winding()) {
        let inductance = loop_.inductance(LOW_FREQUENCY);
        let longer = Winding { along: 1.05 * loop_.along, ..loop_ };
        let wider = Winding { across: 1.05 * loop_.across, ..loop_ };
        prop_assert!(longer.inductance(LOW_FREQUENCY) > inductance);
        prop_assert!(wider.inductance(LOW_FREQUENCY) > inductance);
    }

    #[test]
    fn turns_raise_inductance_between_their_number_and_its_square(loop_ in winding()) {
        let turns = f64::from(loop_.turns);
        let one = Winding { turns: 1, ..loop_ }.inductance(LOW_FREQUENCY);
        let all = loop_.inductance(LOW_FREQUENCY);
        prop_assert!(all >= turns * one * (1.0 - 1e-12));
        prop_assert!(all <= turns * turns * one * (1.0 + 1e-12));
        let more = Winding { turns: loop_.turns + 1, ..loop_ };
        prop_assert!(more.inductance(LOW_FREQUENCY) > all);
    }

    #[test]
    fn current_in_the_skin_and_thicker_wire_lower_inductance(loop_ in winding()) {
        prop_assert!(loop_.inductance(0.0) < loop_.inductance(LOW_FREQUENCY));
        let thicker = Winding { wire_radius: 1.1 * loop_.wire_radius, ..loop_ };
        prop_assert!(thicker.inductance(LOW_FREQUENCY) < loop_.inductance(LOW_FREQUENCY));
    }

    #[test]
    fn a_corner_cut_lowers_inductance_and_spares_wire(loop_ in winding()) {
        prop_assume!(loop_.corner_cut > 0.02);
        let sharp = Winding { corner_cut: 0.0, ..loop_ };
        prop_assert!(loop_.inductance(LOW_FREQUENCY) < sharp.inductance(LOW_FREQUENCY));
        prop_assert!(loop_.turn_length() < sharp.turn_length());
    }

    // Rosa & Grover's formula for one turn of thin wire, sharp corners.
    #[test]
    fn one_thin_turn_is_the_formula(loop_ in rectangle(), radius in 1e-6..1e-3_f64) {
        let one = Winding { corner_cut: 0.0, turns: 1, wire_radius: radius, ..loop_ };
        let (a, b) = (one.along, one.across);
        let diagonal = a.hypot(b);
        let expected = 4e-7 * (a * (2.0 * a / radius).ln() + b * (2.0 * b / radius).ln()
            + 2.0 * diagonal - a * (a / b).asinh() - b * (b / a).asinh()
            - (2.0 - LOW_FREQUENCY) * (a + b));
        close(one.inductance(LOW_FREQUENCY), expected, 1e-5 * expected);
    }

    #[test]
    fn loops_are_reciprocal(
        (one, other) in (winding(), winding()),
        offset in (-2.0..2.0_f64, -2.0..2.0_f64, 0.2..2.0_f64),
    ) {
        let offset = [offset.0, offset.1, offset.2];
        let back = offset.map(|component| -component);
        let tolerance = 1e-9 * one.inductance(0.0).max(other.inductance(0.0));
        close(one.mutual(&other, offset), other.mutual(&one, back), tolerance);
        prop_assert!(one.coupling(&other, offset, LOW_FREQUENCY).abs() < 1.0);
    }

    #[test]
    fn a_plane_below_takes_less_the_deeper_it_lies(loop_ in winding(), depth in 0.01..1.0_f64) {
        let near = loop_.mirror_mutual(depth);
        prop_assert!(near > loop_.mirror_mutual(1.1 * depth));
        prop_assert!(near < loop_.inductance(0.0));
        prop_assert!(loop_.mirror_mutual(1.1 * depth) > 0.0);
    }

    #[test]
    fn filaments_are_reciprocal_and_signed((a, b) in (segment(), segment())) {
        let tolerance = 1e-8 * yardstick(&a, &b);
        let forward = mutual(&a, &b);
        close(mutual(&b, &a), forward, tolerance);
        close(mutual(&a.reversed(), &b), -forward, tolerance);
        close(mutual(&a.reversed(), &b.reversed()), forward, tolerance);
    }

    #[test]
    fn filaments_do_not_feel_where_they_are(
        (a, b) in (segment(), segment()),
        offset in point(),
        angles in prop::array::uniform3(0.0..std::f64::consts::TAU),
    ) {
        let moved = |segment: Filament| {
            let turned = (0..3).fold(segment, |turning, axis| turned(turning, axis, angles[axis]));
            turned.shifted(offset)
        };
        let tolerance = 1e-8 * yardstick(&a, &b);
        close(mutual(&moved(a), &moved(b)), mutual(&a, &b), tolerance);
    }

    #[test]
    fn a_filament_is_the_sum_of_its_parts((a, b) in (segment(), segment()), share in 0.1..0.9_f64) {
        let middle = std::array::from_fn(|i| a.from[i] + share * (a.to[i] - a.from[i]));
        let parts = mutual(&Filament { from: a.from, to: middle }, &b)
            + mutual(&Filament { from: middle, to: a.to }, &b);
        close(parts, mutual(&a, &b), 1e-8 * yardstick(&a, &b));
    }

    #[test]
    fn equal_parallel_filaments_are_the_special_case(length in 0.1..20.0_f64, gap in 1e-4..5.0_f64) {
        let one = Filament { from: [0.0; 3], to: [0.0, length, 0.0] };
        let expected = self_inductance(length, gap);
        close(mutual(&one, &one.shifted([gap, 0.0, 0.0])), expected, 1e-9 * expected);
    }

    #[test]
    fn resistance_rises_and_internal_inductance_falls_with_frequency(
        radius in 1e-4..5e-3_f64,
        log_frequency in 0.0..6.0_f64,
        celsius in -40.0..90.0_f64,
    ) {
        let frequency = 10.0_f64.powf(log_frequency);
        let slower = skin_effect(radius, frequency, celsius);
        let faster = skin_effect(radius, 1.2 * frequency, celsius);
        prop_assert!(slower.resistance_ratio >= 1.0);
        prop_assert!(faster.resistance_ratio >= slower.resistance_ratio);
        prop_assert!(slower.internal_factor <= 0.25);
        prop_assert!(faster.internal_factor <= slower.internal_factor);
        prop_assert!(faster.internal_factor > 0.0);
    }

    #[test]
    fn coupled_pairs_lie_between_their_extremes(
        first in 20e-6..500e-6_f64,
        second in 20e-6..500e-6_f64,
        coupling in -0.5..0.5_f64,
    ) {
        let mutual = coupling * (first * second).sqrt();
        prop_assert!(series_pair(first, second, mutual) > 0.0);
        let together = parallel_pair(first, second, mutual);
        prop_assert!(together > 0.0 && together <= first.min(second) * (1.0 + 1e-12));
    }

    #[test]
    fn a_sum_is_inverted_where_it_stands(steps in prop::collection::vec((1.0..1e4_f64, 0.0..3.0_f64), 1..40), share in 0.0..1.0_f64) {
        let ends: Vec<_> = steps.iter().scan(0.0, |end, (length, rate)| { *end += length; Some((*end, *rate)) }).collect();
        let sum = PiecewiseIntegral::new(ends.iter().copied());
        let total: f64 = steps.iter().map(|(length, rate)| length * rate).sum();
        let end = ends.last().unwrap().0;
        prop_assert!((sum.at(end) - total).abs() <= 1e-9 * total);
        prop_assert!((sum.at(2.0 * end) - sum.at(end)).abs() <= 1e-12 * total);
        let when = sum.inverse(share * sum.at(end)).unwrap();
        prop_assert!((sum.at(when) - share * total).abs() <= 1e-9 * total);
        prop_assert_eq!(sum.inverse(total * (1.0 + 1e-9) + 1.0), None);
    }
}
