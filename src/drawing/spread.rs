//! Labels on one line that keep out of each other's way: each as near to its place as the others let it.

/// The middles of labels, given the wanted middle and the extent of each, in the order of the middles.
///
/// No two overlap and none begins before `from`; the sum of squared shifts is the least. `to` bounds them from above where all
/// have room below it.
pub fn spread(labels: &[(f64, f64)], from: f64, to: f64) -> Vec<f64> {
    // Where each label's middle would lie if all stood side by side from 0 on.
    let mut packed = Vec::with_capacity(labels.len());
    let mut end = 0.0;
    for (_, extent) in labels {
        packed.push(end + extent / 2.0);
        end += extent;
    }
    // The shift of each against that must not fall from label to label: the pool-adjacent-violators method.
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
    let most = (to - end).max(from);
    let shifts = pools.iter().flat_map(|(shift, count)| std::iter::repeat_n(shift.clamp(from, most), *count));
    shifts.zip(packed).map(|(shift, packed)| shift + packed).collect()
}

#[cfg(test)]
mod tests {
    use super::spread;

    #[test]
    fn labels_with_room_stay_where_they_are_wanted() {
        assert_eq!(spread(&[(20.0, 10.0), (40.0, 10.0)], 0.0, 100.0), [20.0, 40.0]);
    }

    #[test]
    fn labels_that_crowd_share_the_shift() {
        assert_eq!(spread(&[(50.0, 10.0), (50.0, 10.0)], 0.0, 100.0), [45.0, 55.0]);
        assert_eq!(spread(&[(20.0, 10.0), (21.0, 10.0), (80.0, 6.0)], 0.0, 100.0), [15.5, 25.5, 80.0]);
    }

    #[test]
    fn labels_stay_within_the_bounds_while_they_have_room() {
        assert_eq!(spread(&[(0.0, 10.0), (1.0, 10.0)], 0.0, 100.0), [5.0, 15.0]);
        assert_eq!(spread(&[(99.0, 10.0), (100.0, 10.0)], 0.0, 100.0), [85.0, 95.0]);
        assert_eq!(spread(&[(5.0, 10.0), (5.0, 10.0)], 0.0, 12.0), [5.0, 15.0]);
        assert!(spread(&[], 0.0, 1.0).is_empty());
    }
}
