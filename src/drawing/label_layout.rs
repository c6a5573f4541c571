//! Where figures and labels stand: round figures along an axis, and labels on one line that do not overlap.

use crate::quantity::output::round;

/// Round figures between two ends, in at most `max_steps` steps.
pub fn axis_ticks(from: f64, to: f64, max_steps: usize) -> Vec<f64> {
    let coarse = ((to - from) / max_steps as f64).max(1e-6);
    let ten = 10.0_f64.powf(coarse.log10().floor());
    let step = [1.0, 2.0, 5.0, 10.0].into_iter().map(|part| part * ten).find(|step| *step >= coarse).unwrap_or(coarse);
    let first = (from / step - 1e-9).ceil() as i64;
    let last = (to / step + 1e-9).floor() as i64;
    (first..=last).map(|index| round(index as f64 * step, 6)).collect()
}

/// The middles of labels, given the wanted middle and the extent of each, in the order of the middles.
///
/// No two overlap and none begins before `from`; the sum of the squared shifts is the smallest possible. None ends after `to`
/// where all of them fit between the two.
pub fn spread_labels(labels: &[(f64, f64)], from: f64, to: f64) -> Vec<f64> {
    // The middle of each label if all stood side by side from 0 on.
    let mut packed = Vec::with_capacity(labels.len());
    let mut end = 0.0;
    for (_, extent) in labels {
        packed.push(end + extent / 2.0);
        end += extent;
    }
    // The shift of each label from there must not decrease from label to label: the pool-adjacent-violators algorithm.
    let mut pools: Vec<(f64, usize)> = Vec::new();
    for ((wanted, _), packed) in labels.iter().zip(&packed) {
        let mut pool = (wanted - packed, 1);
        while let Some((shift, count)) = pools.last().copied().filter(|(shift, _)| *shift > pool.0) {
            pools.pop();
            let both = count + pool.1;
            pool = ((shift * count as f64 + pool.0 * pool.1 as f64) / both as f64, both);
        }
        pools.push(pool);
    }
    let max_shift = (to - end).max(from);
    let shifts = pools.iter().flat_map(|(shift, count)| std::iter::repeat_n(shift.clamp(from, max_shift), *count));
    shifts.zip(packed).map(|(shift, packed)| shift + packed).collect()
}

#[cfg(test)]
mod tests {
    use super::{axis_ticks, spread_labels};

    #[test]
    fn figures_of_an_axis_are_round_and_few() {
        assert_eq!(axis_ticks(0.0, 3.46, 5), [0.0, 1.0, 2.0, 3.0]);
        assert_eq!(axis_ticks(-3.28, 24.05, 6), [0.0, 5.0, 10.0, 15.0, 20.0]);
        assert_eq!(axis_ticks(0.0, 0.0054, 5), [0.0, 0.002, 0.004]);
    }

    #[test]
    fn labels_that_do_not_overlap_stay_where_they_are_wanted() {
        assert_eq!(spread_labels(&[(20.0, 10.0), (40.0, 10.0)], 0.0, 100.0), [20.0, 40.0]);
    }

    #[test]
    fn labels_that_would_overlap_share_the_shift() {
        assert_eq!(spread_labels(&[(50.0, 10.0), (50.0, 10.0)], 0.0, 100.0), [45.0, 55.0]);
        assert_eq!(spread_labels(&[(20.0, 10.0), (21.0, 10.0), (80.0, 6.0)], 0.0, 100.0), [15.5, 25.5, 80.0]);
    }

    #[test]
    fn labels_stay_within_the_bounds_while_they_fit() {
        assert_eq!(spread_labels(&[(0.0, 10.0), (1.0, 10.0)], 0.0, 100.0), [5.0, 15.0]);
        assert_eq!(spread_labels(&[(99.0, 10.0), (100.0, 10.0)], 0.0, 100.0), [85.0, 95.0]);
        assert_eq!(spread_labels(&[(5.0, 10.0), (5.0, 10.0)], 0.0, 12.0), [5.0, 15.0]);
        assert!(spread_labels(&[], 0.0, 1.0).is_empty());
    }
}
