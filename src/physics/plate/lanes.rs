//! Arithmetic on many numbers at once.
//!
//! Plain loops over slices, which the compiler turns into instructions for several numbers at once; [`with_widest`] compiles them for
//! the widest registers that it knows of and takes those that the machine has. Over arrays it would unroll them instead. Each operation
//! is rounded as IEEE 754 has it and none is fused with another, so every machine gives the same digits.

#![expect(clippy::inline_always, reason = "only what is inlined is compiled for the wider registers")]

use std::f64::consts::LN_2;

use pulp::{Arch, NullaryFnOnce};

/// Bits of the fraction of a number.
const FRACTION_BITS: u32 = 52;

/// Runs work with the widest registers of the machine. What it calls must be inlined into it to be compiled for them.
pub(super) fn with_widest<Work: NullaryFnOnce>(work: Work) -> Work::Output {
    Arch::new().dispatch(work)
}

/// The natural logarithm of the quotient of two positive, normal numbers, good to some 2⁻⁵² of the greater of 1 and the logarithm.
///
/// With a/b = 2ᵏ·m/b, and m/b between 2/3 and 3/2: ln(a/b) = k·ln 2 + 2·artanh((m - b)/(m + b)). So one division is enough.
#[inline(always)]
pub(super) fn ln_of_quotient(dividend: f64, divisor: f64) -> f64 {
    let (one, fraction) = (1.0_f64.to_bits(), (1 << FRACTION_BITS) - 1);
    // A whole number of at most 52 bits, put into the fraction of 2⁵², is that number above it.
    let whole = (1_u64 << FRACTION_BITS) as f64;
    // The bits of a number are nearly its binary logarithm: the exponent of their difference, rounded, is k.
    let bits = dividend.to_bits().wrapping_sub(divisor.to_bits()).wrapping_add(one + fraction / 2);
    let exponent = f64::from_bits((bits >> FRACTION_BITS) | whole.to_bits()) - (whole + 1023.0);
    let scaled = f64::from_bits(dividend.to_bits().wrapping_sub((bits & !fraction).wrapping_sub(one)));
    let ratio = (scaled - divisor) / (scaled + divisor);
    // Eleven terms of the series in the square, by halves, so that few wait for others: the first that is left out is under 2⁻⁵⁵.
    let square = ratio * ratio;
    let fourth = square * square;
    let eighth = fourth * fourth;
    let term = |power: u32| 1.0 / f64::from(2 * power + 1);
    let two = |power: u32| term(power) + square * term(power + 1);
    let four = |power: u32| two(power) + fourth * two(power + 2);
    let series = (four(0) + eighth * four(4)) + (eighth * eighth) * (two(8) + fourth * term(10));
    exponent * LN_2 + 2.0 * ratio * series
}

/// A symmetric matrix K that is factored in its own place: `K = CCᵀ`, with a lower triangle C.
pub(super) struct SymmetricMatrix<'a> {
    /// The columns, each from its diagonal on, one behind the other; then those of C, with the inverses of its diagonal.
    pub columns: &'a mut [f64],
    /// How many there are.
    pub order: usize,
}

impl NullaryFnOnce for SymmetricMatrix<'_> {
    /// Whether it is positive definite, so that there is a factor. Source: Cholesky's method.
    type Output = bool;

    #[inline(always)]
    fn call(self) -> bool {
        let mut columns = self.columns;
        for order in (1..=self.order).rev() {
            let (column, others) = columns.split_at_mut(order);
            let is_positive = column[0] > 0.0;
            if !is_positive {
                return false;
            }
            let inverse = 1.0 / column[0].sqrt();
            for element in &mut *column {
                *element *= inverse;
            }
            column[0] = inverse;
            let mut behind = &mut *others;
            for first in 1..order {
                let (changed, rest) = behind.split_at_mut(order - first);
                for (changed, element) in changed.iter_mut().zip(&column[first..]) {
                    *changed -= column[first] * element;
                }
                behind = rest;
            }
            columns = others;
        }
        true
    }
}

/// C·x = b with a lower triangle C, solved in the place of b.
pub(super) struct TriangularSystem<'a> {
    /// The columns of C as [`SymmetricMatrix`] leaves them.
    pub columns: &'a [f64],
    /// b, and then x.
    pub unknowns: &'a mut [f64],
}

impl NullaryFnOnce for TriangularSystem<'_> {
    type Output = ();

    #[inline(always)]
    fn call(self) {
        let (mut columns, mut unknowns) = (self.columns, self.unknowns);
        // Four columns at a time, so that what is below is read and written once for all of them.
        while let [first, second, third, fourth, below @ ..] = unknowns {
            let (one, others) = columns.split_at(below.len() + 4);
            let (two, others) = others.split_at(below.len() + 3);
            let (three, others) = others.split_at(below.len() + 2);
            let (four, others) = others.split_at(below.len() + 1);
            *first *= one[0];
            *second = (*second - one[1] * *first) * two[0];
            *third = (*third - one[2] * *first - two[1] * *second) * three[0];
            *fourth = (*fourth - one[3] * *first - two[2] * *second - three[1] * *third) * four[0];
            let factors = one[4..].iter().zip(&two[3..]).zip(&three[2..]).zip(&four[1..]);
            for (below, (((one, two), three), four)) in below.iter_mut().zip(factors) {
                *below = *below - one * *first - two * *second - three * *third - four * *fourth;
            }
            (columns, unknowns) = (others, below);
        }
        while let [unknown, below @ ..] = unknowns {
            let (column, others) = columns.split_at(below.len() + 1);
            *unknown *= column[0];
            for (below, factor) in below.iter_mut().zip(&column[1..]) {
                *below -= factor * *unknown;
            }
            (columns, unknowns) = (others, below);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn logarithms_agree_with_those_of_the_library(exponent in -200.0..200.0_f64, near_one in 0.5..2.0_f64, divisor in 1e-9..1e9_f64) {
            for dividend in [exponent.exp(), near_one, 1.0] {
                let (found, expected) = (ln_of_quotient(dividend, divisor), (dividend / divisor).ln());
                prop_assert!((found - expected).abs() <= 1e-15 * expected.abs().max(1.0), "{found} {expected}");
            }
        }
    }
}
