//! A vehicle driven over a loop: the whole profile, and where the unit switches.

use uom::si::f64::{Length, Ratio};
use uom::si::length::meter;

use super::loop_field::LoopField;
use super::root_finding::find_crossing;
use super::vehicle_model::VehicleModel;

/// The longest step with which a pass is searched, metres. What is found does not depend on the positions of the profile.
const SEARCH_STEP_M: f64 = 0.25;
/// How far before and behind the loop the profile reaches, metres.
const MARGIN_M: f64 = 1.0;
/// Halvings of the step round a turning point of the change; such points are flat, so few are enough.
const HALVINGS: usize = 6;

/// A position of the front past the loop's leading edge, with the change there.
type SampledChange = (Length, Ratio);

/// A pass of one vehicle at one offset.
pub struct VehiclePass {
    /// Positions of the front past the loop's leading edge, with the change there.
    pub profile: Vec<(Length, Ratio)>,
    /// The best position and the change there.
    pub peak: (Length, Ratio),
    /// Stretches in which the change is at least the threshold, from and to.
    pub seen: Vec<(Length, Length)>,
    /// Stretches in which the unit has let go and comes back, and the one in which it has let go for good before the tail reaches the
    /// loop's leading edge.
    pub drop_outs: Vec<(Length, Length)>,
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
    let change = |front| field.change(model, front, offset);
    let evenly = |intervals: usize| -> Vec<_> {
        let fronts = (0..=intervals).map(|index| index as f64 / intervals as f64 * span - margin);
        fronts.map(|front| (front, change(front))).collect()
    };
    let steps = (span.get::<meter>() / SEARCH_STEP_M).ceil().max(1.0) as usize;
    let (mut searched, step) = (evenly(steps), span / steps as f64);
    let centred = field.centred(model);
    let best = searched.iter().copied().fold((centred, change(centred)), higher);
    let peak = climb(best, step / 2.0, higher, change);
    searched.extend(hidden_turns(&searched, threshold, step / 2.0, change));
    // With the peak among them, a unit that just switches there is seen to switch.
    searched.push(peak);
    searched.sort_by(|a, b| a.0.value.total_cmp(&b.0.value));
    let seen = stretches(&searched, threshold, change);
    VehiclePass { profile: evenly(positions.max(2) - 1), peak, drop_outs: drop_outs(&seen, model.length), seen }
}

/// The stretches between those in which the unit is on, and the one behind the last if it begins before the tail has reached the loop's
/// leading edge. One that begins later is the release.
fn drop_outs(seen: &[(Length, Length)], tail: Length) -> Vec<(Length, Length)> {
    let between = seen.windows(2).map(|pair| (pair[0].1, pair[1].0));
    let last = seen.last().map(|(_, to)| (*to, tail)).filter(|(from, _)| *from < tail);
    between.chain(last).collect()
}

/// The point with the greater change, the first where they are alike.
fn higher(a: SampledChange, b: SampledChange) -> SampledChange {
    if b.1 > a.1 { b } else { a }
}

fn lower(a: SampledChange, b: SampledChange) -> SampledChange {
    if b.1 < a.1 { b } else { a }
}

/// Narrows down the turning point next to a point.
fn climb(
    mut best: SampledChange,
    mut reach: Length,
    better: fn(SampledChange, SampledChange) -> SampledChange,
    change: impl Fn(Length) -> Ratio,
) -> SampledChange {
    for _ in 0..HALVINGS {
        for front in [best.0 - reach, best.0 + reach] {
            best = better(best, (front, change(front)));
        }
        reach /= 2.0;
    }
    best
}

/// The turning points that may pass the threshold between two points on the same side of it: a short dip or a short peak.
fn hidden_turns(
    points: &[SampledChange],
    threshold: Ratio,
    reach: Length,
    change: impl Fn(Length) -> Ratio,
) -> Vec<SampledChange> {
    let turn = |three: &[SampledChange]| {
        let (before, at, after) = (three[0].1, three[1].1, three[2].1);
        let is_dip = at >= threshold && at <= before && at <= after;
        let is_peak = at < threshold && at >= before && at >= after;
        // A parabola through the three turns within an eighth of this of the middle one.
        let swing = (before - at).abs().max((after - at).abs());
        ((is_dip || is_peak) && (at - threshold).abs() <= swing)
            .then(|| climb(three[1], reach, if is_dip { lower } else { higher }, &change))
    };
    points.windows(3).filter_map(turn).collect()
}

/// Where the change is at least the threshold; ends between points are found by [`find_crossing`].
fn stretches(points: &[SampledChange], threshold: Ratio, change: impl Fn(Length) -> Ratio) -> Vec<(Length, Length)> {
    let crossing = |from, to| find_crossing(from, to, threshold, &change);
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
