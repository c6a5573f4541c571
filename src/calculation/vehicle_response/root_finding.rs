//! Where a falling or rising quantity passes zero.

use uom::si::f64::Length;
use uom::si::length::meter;

/// Steps at the most; each at least halves every second interval.
const MAX_STEPS: usize = 40;
/// The search ends with a step below this; a millimetre is finer than anybody parks.
const TOLERANCE_M: f64 = 0.0001;

/// The place between `from` and `to`, to a millimetre, at which `excess` changes its sign; it does so once.
///
/// Regula falsi with the Illinois rule: a chord for each step, its far end weighed down when it stays twice.
pub fn find_root(from: Length, to: Length, excess: impl Fn(Length) -> f64) -> Length {
    let ((mut a, mut at_a), (mut b, mut at_b)) = ((from, excess(from)), (to, excess(to)));
    for _ in 0..MAX_STEPS {
        let share = at_a / (at_a - at_b);
        let c = a + (b - a) * if share.is_finite() { share.clamp(0.01, 0.99) } else { 0.5 };
        let at_c = excess(c);
        let moved = (c - b).abs().min((c - a).abs());
        if (at_c < 0.0) == (at_b < 0.0) {
            at_a /= 2.0;
        } else {
            (a, at_a) = (b, at_b);
        }
        (b, at_b) = (c, at_c);
        if moved < Length::new::<meter>(TOLERANCE_M) {
            break;
        }
    }
    b
}
