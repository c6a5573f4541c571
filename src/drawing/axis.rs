//! Round figures along an axis.

use crate::quantity::output::round;

/// Round figures between two ends, at most so many.
pub fn ticks(from: f64, to: f64, most: usize) -> Vec<f64> {
    let coarse = ((to - from) / most as f64).max(1e-6);
    let ten = 10.0_f64.powf(coarse.log10().floor());
    let step = [1.0, 2.0, 5.0, 10.0].into_iter().map(|part| part * ten).find(|step| *step >= coarse).unwrap_or(coarse);
    let first = (from / step - 1e-9).ceil() as i64;
    let last = (to / step + 1e-9).floor() as i64;
    (first..=last).map(|index| round(index as f64 * step, 6)).collect()
}

#[cfg(test)]
mod tests {
    use super::ticks;

    #[test]
    fn figures_of_an_axis_are_round_and_few() {
        assert_eq!(ticks(0.0, 3.46, 5), [0.0, 1.0, 2.0, 3.0]);
        assert_eq!(ticks(-3.28, 24.05, 6), [0.0, 5.0, 10.0, 15.0, 20.0]);
        assert_eq!(ticks(0.0, 0.0054, 5), [0.0, 0.002, 0.004]);
    }
}
