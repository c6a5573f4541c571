//! Where what a vehicle makes passes a step.

use uom::si::f64::{Length, Ratio};
use uom::si::length::meter;

/// The most trials, for a change on which the search converges slowly.
const MAX_TRIALS: usize = 40;
/// The search ends between places this near, a tenth of the millimetre to which answers are given.
const TOLERANCE_M: f64 = 0.000_1;
/// A change under this share of the step is taken to be this: far away it may come out as nothing, which has no logarithm.
const LEAST_SHARE: f64 = 1e-6;

/// The place between `from` and `to` at which a change passes a step, to a tenth of a millimetre. It must pass it once.
///
/// Searched on the logarithm, which is nearly straight in the height and bends little along travel. Source: T. R. Chandrupatla, Advances in
/// Engineering Software 28 (1997), from memory: inverse quadratic interpolation where three points promise that it helps, halves where not.
pub fn find_crossing(from: Length, to: Length, step: Ratio, change: impl Fn(Length) -> Ratio) -> Length {
    let excess = |at: f64| (change(Length::new::<meter>(at)) / step).value.max(LEAST_SHARE).ln();
    let point = |at: f64| (at, excess(at));
    // The latest point, the one across from it, and the one before on its side.
    let (mut a, mut b) = (point(from.get::<meter>()), point(to.get::<meter>()));
    let mut share = a.1 / (a.1 - b.1);
    for _ in 0..MAX_TRIALS {
        let next = point(a.0 + if share.is_finite() { share } else { 0.5 } * (b.0 - a.0));
        let c = if (next.1 < 0.0) == (a.1 < 0.0) { a } else { std::mem::replace(&mut b, a) };
        a = next;
        let width = (b.0 - a.0).abs();
        if width < TOLERANCE_M || a.1 == 0.0 {
            break;
        }
        let (place, level) = ((a.0 - b.0) / (c.0 - b.0), (a.1 - b.1) / (c.1 - b.1));
        let is_smooth = level.powi(2) < place && (1.0 - level).powi(2) < 1.0 - place;
        share = if is_smooth {
            a.1 / (b.1 - a.1) * c.1 / (b.1 - c.1) + (c.0 - a.0) / (b.0 - a.0) * a.1 / (c.1 - a.1) * b.1 / (c.1 - b.1)
        } else {
            0.5
        };
        // Interpolation is better than its last step is long.
        if is_smooth && share.abs() * width < TOLERANCE_M {
            return Length::new::<meter>(a.0 + share * (b.0 - a.0));
        }
        let least = 0.5 * TOLERANCE_M / width;
        share = share.clamp(least, 1.0 - least);
    }
    let nearest = if a.1.abs() < b.1.abs() { a } else { b };
    Length::new::<meter>(nearest.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use uom::si::ratio::ratio;

    proptest! {
        #[test]
        fn a_crossing_is_found_from_either_side(place in -1.9..1.9_f64, steepness in 0.1..20.0_f64, bend in 0.0..0.9_f64) {
            let (low, high, step) = (Length::new::<meter>(-2.0), Length::new::<meter>(2.0), Ratio::new::<ratio>(0.0016));
            let change = |at: Length| {
                let apart = at.get::<meter>() - place;
                step * (steepness * (apart + bend * apart * apart.abs() / 2.0)).exp()
            };
            for (from, to) in [(low, high), (high, low)] {
                let found = find_crossing(from, to, step, change);
                prop_assert!((found.get::<meter>() - place).abs() <= TOLERANCE_M, "{} {place}", found.get::<meter>());
            }
            let nothing_before = |at: Length| if at.get::<meter>() < place { Ratio::default() } else { step * 3.0 };
            let found = find_crossing(low, high, step, nothing_before);
            prop_assert!((found.get::<meter>() - place).abs() <= TOLERANCE_M, "{} {place}", found.get::<meter>());
        }
    }
}
