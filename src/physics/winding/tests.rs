//! Sums shortened by symmetry against the sums in full.

use super::turn::wire;
use super::*;

const SHARP: Winding = Winding {
    shape: WindingShape::Rectangle,
    along: 1.8,
    across: 1.5,
    corner_cut: 0.0,
    turns: 3,
    pitch: 0.004,
    wire_radius: 0.0008,
};

/// The sums that symmetry shortens, in full.
fn all_pairs(winding: &Winding, copy: impl Fn(Filament) -> Filament, own: bool) -> f64 {
    let wires: Vec<Filament> = winding.wires().collect();
    let mut sum = 0.0;
    for (i, one) in wires.iter().enumerate() {
        for (j, other) in wires.iter().enumerate() {
            sum += if own && i == j { wire(one, 0.0, winding.wire_radius) } else { mutual(one, &copy(*other)) };
        }
    }
    sum
}

#[test]
fn symmetry_leaves_no_pair_out() {
    for shape in [WindingShape::Rectangle, WindingShape::Quadrupole] {
        for corner_cut in [0.0, 0.3] {
            let winding = Winding { shape, corner_cut, ..SHARP };
            let full = all_pairs(&winding, |wire| wire, true);
            assert!((winding.inductance(0.0) / full - 1.0).abs() < 1e-12);

            let plane = -0.05 - winding.pitch * f64::from(winding.stack() - 1);
            let image = |[x, y, z]: Point3| [x, y, 2.0 * plane - z];
            let full = all_pairs(&winding, |wire| Filament { from: image(wire.from), to: image(wire.to) }, false);
            assert!((winding.mirror_mutual(0.05) / full - 1.0).abs() < 1e-12);
        }
    }
}

#[test]
fn turns_close_and_are_as_long_as_they_say() {
    for shape in [WindingShape::Rectangle, WindingShape::Quadrupole] {
        let winding = Winding { shape, corner_cut: 0.2, ..SHARP };
        let outline = winding.outline();
        let total = |part: fn(&Strand) -> f64| -> f64 { outline.iter().map(part).sum() };
        let length = total(|strand| strand.wires * strand.segment.length());
        assert!((length / winding.wire_length() - 1.0).abs() < 1e-12);
        for axis in [
            |s: &Strand| s.wires * (s.segment.to[0] - s.segment.from[0]),
            |s: &Strand| s.wires * (s.segment.to[1] - s.segment.from[1]),
        ] {
            assert!(total(axis).abs() < 1e-12);
        }
    }
}

#[test]
fn corner_cuts_stop_at_half_a_side() {
    let most = Winding { corner_cut: 9.0, ..SHARP };
    assert!((most.diagonal_cut() - 4.0 * 0.75 * SQRT_2).abs() < 1e-12);
    assert!(most.inductance(0.25).is_finite());
}
