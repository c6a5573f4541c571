//! Where a function of a length passes zero.

use uom::si::f64::Length;
use uom::si::length::meter;

/// The most steps, for a function on which the search converges slowly.
const MAX_STEPS: usize = 40;
/// The search ends with a step shorter than this, a tenth of the millimetre to which answers are given.
const TOLERANCE_M: f64 = 0.000_1;

/// The place between `from` and `to` at which `excess` changes its sign, found with steps down to a tenth of a millimetre. It must
/// change its sign once.
///
/// Regula falsi with the Illinois rule: each step follows a chord, and the value at an end that is kept twice running is halved.
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
