//! Which vehicles a loop, or a row of loops, sees.

use uom::si::f64::{Length, Ratio};

use super::search::Brief;
use crate::calculation::vehicle_response::{Blind, Field, Metal, search};
use crate::practice::detectors::MIN_TIMES_THRESHOLD;
use crate::practice::vehicles::VehicleClass;

/// One vehicle over the loops of one role.
pub struct Sighting {
    /// The vehicle.
    pub class: VehicleClass,
    /// The peak change over the middle of a loop; of a two-wheeler, on its riding line.
    pub change: Ratio,
    /// The least peak change across the lane: over the gaps of a row, and hard against either edge where the loop holds a gate. The
    /// same as `change` for two-wheelers.
    pub least: Ratio,
    /// Whether the unit lets go under the vehicle, in the middle or hard against an edge.
    pub drops_out: bool,
    /// Where across the lane a two-wheeler is not seen; `None` for other vehicles.
    pub blind: Option<Blind>,
}

impl Sighting {
    /// Whether the change serves: twice the threshold over the middle of a loop, and the threshold everywhere that counts.
    pub fn serves(&self, brief: &Brief<'_>) -> bool {
        self.change >= MIN_TIMES_THRESHOLD * brief.threshold && self.least >= brief.threshold
    }
}

/// Loops in a row across the lane, alike and each on its own channel: the unit's outputs are paralleled, so the best counts.
pub struct Row<'a> {
    /// The field of each.
    pub field: &'a Field,
    /// Their middles, as offsets from the middle of the lane.
    pub centres: &'a [Length],
}

impl Row<'_> {
    /// The changes that a vehicle makes.
    pub fn sight(&self, class: VehicleClass, brief: &Brief<'_>) -> Sighting {
        let metal = Metal::of_class(class);
        let (change, least) = if class.is_two_wheeler() {
            let change = self.best(metal, self.outermost() + self.field.riding_line);
            (change, change)
        } else {
            let change = self.best(metal, self.middlemost());
            let elsewhere = self.critical_offsets(metal, brief).map(|offset| self.best(metal, offset));
            (change, elsewhere.fold(change, Ratio::min))
        };
        Sighting { class, change, least, drops_out: false, blind: None }
    }

    /// Whether the unit lets go under a vehicle, as a gap between its parts passes over the loop.
    pub fn drops_out(&self, class: VehicleClass, brief: &Brief<'_>) -> bool {
        let metal = Metal::of_class(class);
        let lets_go =
            |offset: Length| self.field.weakest_in_gaps(metal, self.offset_to_nearest(offset)) < brief.threshold;
        !metal.gaps.is_empty() && (lets_go(self.middlemost()) || self.critical_offsets(metal, brief).any(lets_go))
    }

    /// Where across the lane a two-wheeler is not seen.
    pub fn blind(&self, class: VehicleClass, brief: &Brief<'_>) -> Option<Blind> {
        let lane = brief.job.opening.width;
        class.is_two_wheeler().then(|| search(self.field, self.centres, Metal::of_class(class), lane, brief.threshold))
    }

    /// The best of the row for a vehicle whose middle is `offset` from the lane's, standing over the middle of the loops.
    fn best(&self, metal: &Metal, offset: Length) -> Ratio {
        self.field.change(metal, self.field.centred(metal), self.offset_to_nearest(offset))
    }

    /// The offset from the middle of the nearest loop, which is the one that sees most.
    fn offset_to_nearest(&self, offset: Length) -> Length {
        let apart = self.centres.iter().map(|centre| offset - *centre);
        apart.min_by(|a, b| a.abs().value.total_cmp(&b.abs().value)).unwrap_or(offset)
    }

    /// Where a vehicle is hardest to see: over each gap of the row, and hard against the edge for a loop that holds a gate. The row
    /// is symmetric, so one side tells the other.
    fn critical_offsets<'a>(&'a self, metal: &Metal, brief: &Brief<'_>) -> impl Iterator<Item = Length> + 'a {
        let edge = ((brief.job.opening.width - metal.width) / 2.0).max(Length::default());
        let gaps = self.centres.windows(2).map(|pair| (pair[0] + pair[1]) / 2.0);
        gaps.filter(move |gap| *gap < edge).chain(brief.holds_the_gate.then_some(edge))
    }

    /// The middle of the loop nearest to the lane's, on the right where two are.
    fn middlemost(&self) -> Length {
        self.centres.get(self.centres.len() / 2).copied().unwrap_or_default()
    }

    fn outermost(&self) -> Length {
        self.centres.iter().copied().fold(Length::default(), Length::max)
    }
}
