//! A vehicle driven over a loop: the whole profile, and where the unit switches.

use uom::si::f64::{Length, Ratio};
use uom::si::length::meter;

use super::loop_field::LoopField;
use super::root_finding::find_root;
use super::vehicle_model::VehicleModel;

/// The longest step with which a pass is searched for gaps, whatever the number of positions asked for, metres.
const MAX_STEP_M: f64 = 0.25;
/// How far before and behind the loop the profile reaches, metres.
const MARGIN_M: f64 = 1.0;
/// Halvings of the step round the best point; a peak is flat, so few are enough.
const HALVINGS: usize = 3;

/// A pass of one vehicle at one offset.
pub struct VehiclePass {
    /// Positions of the front past the loop's leading edge, with the change there.
    pub profile: Vec<(Length, Ratio)>,
    /// The best position and the change there.
    pub peak: (Length, Ratio),
    /// Stretches in which the change is at least the threshold, from and to.
    pub seen: Vec<(Length, Length)>,
}

impl VehiclePass {
    /// Stretches between the first and the last in which the unit lets go.
    pub fn gaps(&self) -> impl Iterator<Item = (Length, Length)> + '_ {
        self.seen.windows(2).map(|pair| (pair[0].1, pair[1].0))
    }
}

/// Drives a vehicle over a loop at `offset` across, with `positions` points in the profile.
pub fn drive_over(
    field: &LoopField,
    model: &VehicleModel,
    offset: Length,
    threshold: Ratio,
    positions: usize,
) -> VehiclePass {
    let margin = Length::new::<meter>(MARGIN_M);
    let span = field.along + model.length + 2.0 * margin;
    let intervals = positions.max(2) - 1;
    let fine = (span.get::<meter>() / (MAX_STEP_M * intervals as f64)).ceil().max(1.0) as usize;
    let step = span / (intervals * fine) as f64;
    let change = |front| field.change(model, front, offset);
    let points: Vec<_> = (0..=intervals * fine)
        .map(|index| {
            let front = index as f64 * step - margin;
            (front, change(front))
        })
        .collect();
    let peak = best(&points, step, field.centred(model), change);
    // With the peak among them, a unit that just switches there is seen to switch.
    let mut searched = points.clone();
    let place = searched.partition_point(|(front, _)| *front < peak.0);
    searched.insert(place, peak);
    VehiclePass {
        seen: stretches(&searched, threshold, change),
        profile: points.into_iter().step_by(fine).collect(),
        peak,
    }
}

/// The best of the points and of the centred position, then narrowed down round it.
fn best(
    points: &[(Length, Ratio)],
    step: Length,
    centred: Length,
    change: impl Fn(Length) -> Ratio,
) -> (Length, Ratio) {
    let better = |a: (Length, Ratio), b: (Length, Ratio)| if b.1 > a.1 { b } else { a };
    let mut peak = points.iter().copied().fold((centred, change(centred)), better);
    let mut reach = step / 2.0;
    for _ in 0..HALVINGS {
        for front in [peak.0 - reach, peak.0 + reach] {
            peak = better(peak, (front, change(front)));
        }
        reach /= 2.0;
    }
    peak
}

/// Where the change is at least the threshold; ends between points are found by [`find_root`].
fn stretches(points: &[(Length, Ratio)], threshold: Ratio, change: impl Fn(Length) -> Ratio) -> Vec<(Length, Length)> {
    let crossing = |from, to| find_root(from, to, |front| (change(front) - threshold).value);
    let mut seen = Vec::new();
    let mut from = points.first().filter(|(_, first)| *first >= threshold).map(|(front, _)| *front);
    for pair in points.windows(2) {
        let [(before, was), (after, is)] = [pair[0], pair[1]];
        match (was >= threshold, is >= threshold) {
            (false, true) => from = Some(crossing(before, after)),
            (true, false) => seen.extend(from.take().map(|from| (from, crossing(after, before)))),
            _ => {}
        }
    }
    seen.extend(from.zip(points.last()).map(|(from, (last, _))| (from, *last)));
    seen
}
