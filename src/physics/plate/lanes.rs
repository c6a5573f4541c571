//! Arithmetic on many numbers at once.
//!
//! Plain loops over blocks of numbers, which the compiler turns into instructions for several at once; [`with_widest`] compiles them for
//! the widest registers that it knows of and takes those that the machine has. Each operation is rounded as IEEE 754 has it and none
//! is fused with another, so every machine gives the same digits.

#![expect(clippy::inline_always, reason = "only what is inlined is compiled for the wider registers")]

use std::f64::consts::{LN_2, SQRT_2};

use pulp::{Arch, NullaryFnOnce};

/// How many numbers are worked on together. Measured: the corners of a car's meshes fill four blocks, those of the coarse mesh alone one.
pub(super) const BLOCK: usize = 36;

/// Bits of the fraction of a number.
const FRACTION_BITS: u32 = 52;

/// Terms of the series of a logarithm: the first that is left out is under 2⁻⁵³ of the sum.
const LOGARITHM_TERMS: usize = 10;

/// Runs work with the widest registers of the machine. What it calls must be inlined into it to be compiled for them.
pub(super) fn with_widest<Work: NullaryFnOnce>(work: Work) -> Work::Output {
    Arch::new().dispatch(work)
}

/// Natural logarithms of the quotients of positive, normal numbers, good to some 2⁻⁵² of the greater of 1 and the logarithm.
///
/// With x = 2ᵏ·m, and m between √½ and √2: ln x = k·ln 2 + 2·artanh((m - 1)/(m + 1)).
#[inline(always)]
pub(super) fn ln_of_quotients<const N: usize>(dividends: &[f64; N], divisors: &[f64; N]) -> [f64; N] {
    let least = SQRT_2.to_bits() - (1 << FRACTION_BITS);
    let offset = 1.0_f64.to_bits() - least;
    // A whole number of at most 52 bits, put into the fraction of 2⁵², is that number above it.
    let whole = (1_u64 << FRACTION_BITS) as f64;
    let mut logarithms = [0.0; N];
    for lane in 0..N {
        let bits = (dividends[lane] / divisors[lane]).to_bits().wrapping_add(offset);
        let exponent = f64::from_bits((bits >> FRACTION_BITS) | whole.to_bits()) - (whole + 1023.0);
        let mantissa = f64::from_bits((bits & ((1 << FRACTION_BITS) - 1)) + least);
        let ratio = (mantissa - 1.0) / (mantissa + 1.0);
        let square = ratio * ratio;
        let mut series = 0.0;
        for term in (0..LOGARITHM_TERMS).rev() {
            series = series * square + 1.0 / (2 * term + 1) as f64;
        }
        logarithms[lane] = exponent * LN_2 + 2.0 * ratio * series;
    }
    logarithms
}

/// A symmetric matrix K that is factored in its own place: `K = CCᵀ`, with a lower triangle C.
pub(super) struct SymmetricMatrix<'a> {
    /// The columns, each from its diagonal on, one behind the other.
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
            let diagonal = column[0].sqrt();
            for element in &mut *column {
                *element /= diagonal;
            }
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
    /// The columns of C, each from its diagonal on, one behind the other.
    pub columns: &'a [f64],
    /// b, and then x.
    pub unknowns: &'a mut [f64],
}

impl NullaryFnOnce for TriangularSystem<'_> {
    type Output = ();

    #[inline(always)]
    fn call(self) {
        let (mut columns, mut unknowns) = (self.columns, self.unknowns);
        while let [unknown, below @ ..] = unknowns {
            let (column, others) = columns.split_at(below.len() + 1);
            *unknown /= column[0];
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
                let expected = (dividend / divisor).ln();
                for found in ln_of_quotients(&[dividend; BLOCK], &[divisor; BLOCK]) {
                    prop_assert!((found - expected).abs() <= 1e-15 * expected.abs().max(1.0), "{found} {expected}");
                }
            }
        }
    }
}
