//! Figures that others have published or that anyone can compute again, against ours.
//!
//! A test's name starts with the number of its check value; source and tolerance stand above it.

mod circuits;
mod loops;
mod wires;
mod worked;

const FOOT: f64 = 0.3048;
const INCH: f64 = 0.0254;
const MICRO: f64 = 1e-6;

#[track_caller]
fn assert_within(percent: f64, found: f64, expected: f64) {
    assert!(
        (found - expected).abs() <= percent / 100.0 * expected.abs(),
        "found {found}, expected {expected} within {percent} %"
    );
}

/// For tables: as near as half of the last printed digit, and a little for the rounding of both.
#[track_caller]
fn assert_rounds_to(digit: f64, found: f64, expected: f64) {
    assert!((found - expected).abs() <= 0.6 * digit, "found {found}, expected {expected}");
}
