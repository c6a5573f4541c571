//! Where across the lane a two-wheeler is not seen.

use uom::si::f64::{Length, Ratio};
use uom::si::length::meter;

use super::loop_field::LoopField;
use super::vehicle_model::VehicleModel;

/// The longest step with which the lane is searched, metres.
const STEP_M: f64 = 0.05;
/// Halvings that bring an edge from [`STEP_M`] below a millimetre.
const HALVINGS: usize = 6;

/// The strips of a lane in which a vehicle never reaches the threshold, as offsets from the lane's centre.
pub struct UnseenStrips {
    /// From and to, left to right.
    pub strips: Vec<(Length, Length)>,
}

impl UnseenStrips {
    /// All strips together.
    pub fn width(&self) -> Length {
        self.strips.iter().map(|(from, to)| *to - *from).fold(Length::default(), |sum, width| sum + width)
    }

    /// Whether the lane's centre lies in one.
    pub fn contains_centre(&self) -> bool {
        self.strips.iter().any(|(from, to)| *from <= Length::default() && *to >= Length::default())
    }
}

/// Searches a lane, whose centre is the loops', for strips in which none of the loops, at these offsets, sees the vehicle.
pub fn find_unseen_strips(
    field: &LoopField,
    centres: &[Length],
    model: &VehicleModel,
    lane: Length,
    threshold: Ratio,
) -> UnseenStrips {
    // The field of every loop is even in both axes, and so is the row of loops: one half of the lane is searched.
    let half = lane / 2.0;
    let steps = (half.get::<meter>() / STEP_M).ceil().max(1.0) as usize;
    let step = half / steps as f64;
    let is_seen = |offset: Length| centres.iter().any(|centre| best(field, model, offset - *centre) >= threshold);
    let edge = |mut blind: Length, mut seen: Length| {
        for _ in 0..HALVINGS {
            let middle = (blind + seen) / 2.0;
            if is_seen(middle) { seen = middle } else { blind = middle }
        }
        blind
    };
    let mut right = Vec::new();
    let mut before = (Length::default(), is_seen(Length::default()));
    let mut from = (!before.1).then_some(before.0);
    for index in 1..=steps {
        let offset = index as f64 * step;
        let seen = is_seen(offset);
        match (before.1, seen) {
            (true, false) => from = Some(edge(offset, before.0)),
            (false, true) => right.extend(from.take().map(|from| (from, edge(before.0, offset)))),
            _ => {}
        }
        before = (offset, seen);
    }
    right.extend(from.map(|from| (from, half)));
    UnseenStrips { strips: mirrored(&right) }
}

/// The best change of a pass; a turn as long as a two-wheeler's is seen best within a quarter leg of the middle.
fn best(field: &LoopField, model: &VehicleModel, offset: Length) -> Ratio {
    let middle = field.centred(model);
    field.change(model, middle, offset).max(field.change(model, middle + field.along / 4.0, offset))
}

/// Both halves; a strip that starts at the centre is one with its mirror image.
fn mirrored(right: &[(Length, Length)]) -> Vec<(Length, Length)> {
    let centre = Length::default();
    let left = right.iter().rev().map(|(from, to)| if *from == centre { (-*to, *to) } else { (-*to, -*from) });
    left.chain(right.iter().copied().filter(|(from, _)| *from != centre)).collect()
}
