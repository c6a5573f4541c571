//! Closed forms against quadrature.

use super::*;

/// Neumann's double integral: the inner one exactly, the outer one by the tanh-sinh rule, in
/// two pieces that meet where the lines come nearest.
fn by_quadrature(a: &Filament, b: &Filament) -> f64 {
    let (along_a, along_b) = (difference(a.to, a.from), difference(b.to, b.from));
    let (aa, bb, ab) = (dot(along_a, along_a), dot(along_b, along_b), dot(along_a, along_b));
    let reach = difference(b.from, a.from);
    let nearest = (ab * dot(reach, along_a) - aa * dot(reach, along_b)) / (aa * bb - ab * ab);
    let split = if nearest > 0.0 && nearest < 1.0 { nearest } else { 0.5 };
    // Not by `sight`, which is under test and coarse within 1e-8 of the wire.
    let sight_from = |share: f64| {
        let from_start = difference(sum(b.from, scale(along_b, share)), a.from);
        let aside = cross(from_start, along_a);
        let distance = (dot(aside, aside) / aa).sqrt().max(1e-100);
        let behind = dot(from_start, along_a) / aa.sqrt();
        let ahead = aa.sqrt() - behind;
        (behind / distance).asinh() + (ahead / distance).asinh()
    };
    let piece = |start: f64, end: f64| -> f64 {
        (-320..=320)
            .map(|k| {
                let u = f64::from(k) * 0.01;
                let inner = std::f64::consts::FRAC_PI_2 * u.sinh();
                let weight = std::f64::consts::FRAC_PI_2 * u.cosh() / inner.cosh().powi(2);
                let share = start + (end - start) * 0.5 * (1.0 + inner.tanh());
                0.005 * (end - start) * weight * sight_from(share)
            })
            .sum()
    };
    NEUMANN * ab / aa.sqrt() * (piece(0.0, split) + piece(split, 1.0))
}

fn segment(from: Point3, to: Point3) -> Filament {
    Filament { from, to }
}

#[track_caller]
fn assert_near(found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance * expected.abs(), "found {found:e}, expected {expected:e}");
}

#[test]
fn skew_crossing_and_touching_segments_agree_with_quadrature() {
    let a = segment([0.0, 0.0, 0.0], [2.0, 0.0, 0.0]);
    for b in [
        segment([0.3, 0.2, 0.5], [1.7, 1.9, -0.4]),
        segment([0.3, 0.2, 0.01], [-1.7, 0.9, -0.02]),
        segment([2.0, 0.0, -0.004], [2.5, 0.5, -0.004]),
        segment([5.0, 4.0, 3.0], [7.0, 5.0, 3.5]),
        segment([0.5, -1.0, 0.0], [1.0, 1.0, 0.0]),
        segment([2.0, 0.0, 0.0], [2.7, 0.7, 0.0]),
        segment([1.0, 0.0, 0.0], [1.5, 0.9, 0.3]),
        segment([0.0, 0.01, 0.0], [2.0, 0.02, 0.0]),
    ] {
        assert_near(mutual(&a, &b), by_quadrature(&a, &b), 1e-9);
    }
}

#[test]
fn nearly_parallel_segments_join_smoothly() {
    let a = segment([0.0, 0.0, 0.0], [2.0, 0.0, 0.0]);
    for tilt in [1e-6, 0.9e-4, 1.1e-4, 1e-3] {
        let b = segment([0.1, 0.05, 0.02], [1.9, 0.05 + 1.8 * tilt, 0.02]);
        assert_near(mutual(&a, &b), by_quadrature(&a, &b), 3e-7);
    }
}

#[test]
fn what_is_left_beside_a_right_angle_goes_with_the_cosine() {
    let a = segment([0.0, 0.0, 0.0], [2.0, 0.0, 0.0]);
    let of = |cosine: f64| mutual(&a, &segment([0.0, 0.0, 0.1], [cosine, 1.0, 0.1]));
    for cosine in [1e-6, 1e-7, 1e-9, 1e-12] {
        assert_near(of(cosine) / cosine, of(1e-5) / 1e-5, 1e-4);
    }
    assert_eq!(of(0.0), 0.0);
}

#[test]
fn parallel_segments_agree_with_the_equal_pair() {
    let a = segment([0.0, 0.0, 0.0], [1.0, 2.0, 2.0]);
    let b = a.shifted([0.02, -0.01, 0.0]);
    assert_near(mutual(&a, &b), self_inductance(3.0, 0.0005_f64.sqrt()), 1e-12);
    assert_near(mutual(&a, &b.reversed()), -mutual(&a, &b), 1e-12);
}

#[test]
fn collinear_segments_have_their_logarithms_only() {
    let a = segment([0.0; 3], [1.0, 0.0, 0.0]);
    let touching = segment([1.0, 0.0, 0.0], [2.0, 0.0, 0.0]);
    assert_near(mutual(&a, &touching), NEUMANN * 4.0_f64.ln(), 1e-12);
    // Three thirds of a tilted line: the parts must add up to the whole.
    for size in [1e-6, 1.0, 1e6] {
        let point = |s: f64| [0.3 * s * size, 0.7 * s * size, -0.2 * s * size];
        let (first, second) = (segment(point(0.0), point(1.0)), segment(point(1.0), point(2.0)));
        let third = segment(point(2.0), point(3.0));
        let whole = segment(point(1.0), point(3.0));
        assert_near(mutual(&first, &second) + mutual(&first, &third), mutual(&first, &whole), 1e-12);
    }
    assert_eq!(mutual(&a, &a), f64::INFINITY);
    // What counts as touching is a share of the lengths, so a real overlap of very long ones is none.
    let (long, on_it) = (segment([0.0; 3], [1e6, 0.0, 0.0]), segment([1e6 - 0.5, 0.0, 0.0], [2e6, 0.0, 0.0]));
    assert_eq!(mutual(&long, &on_it), f64::INFINITY);
}

#[test]
fn worked_numbers() {
    let a = segment([0.0; 3], [1.0, 0.0, 0.0]);
    let b = segment([0.0; 3], [0.5, 0.75_f64.sqrt(), 0.0]);
    assert_near(mutual(&a, &b), NEUMANN * 3.0_f64.ln(), 1e-12);
    assert_near(self_inductance(1.0, 1e-3 * (-0.25_f64).exp()), 1.37034e-6, 1e-5);
}
