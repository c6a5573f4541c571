//! Which vehicles a loop, or a row of loops, sees.

use serde::Serialize;
use uom::si::f64::{Length, Ratio};
use uom::si::ratio::{percent, ratio};
use utoipa::ToSchema;

use crate::calculation::vehicle_response::{BlindStrip, LoopField, UnseenStrips, VehicleModel, find_unseen_strips};
use crate::practice::detectors::MIN_TIMES_THRESHOLD;
use crate::practice::vehicles::VehicleClass;
use crate::quantity::output::round;

/// One vehicle over the loops of one role.
pub struct ClassSighting {
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
    pub unseen: Option<UnseenStrips>,
}

impl ClassSighting {
    /// Whether the change serves: twice the threshold over the middle of a loop, and the threshold everywhere that counts.
    pub fn serves(&self, threshold: Ratio) -> bool {
        self.change >= MIN_TIMES_THRESHOLD * threshold && self.least >= threshold
    }
}

/// Loops in a row across the lane, alike and each on its own channel: the unit's outputs are paralleled, so the best counts.
pub struct LoopRow<'a> {
    /// The field of each.
    pub field: &'a LoopField,
    /// Their middles, as offsets from the middle of the lane.
    pub centres: &'a [Length],
    /// The width of the lane.
    pub lane: Length,
    /// The change that the units switch at.
    pub threshold: Ratio,
    /// Whether a vehicle must be seen hard against the edges too, as for a loop that holds a gate.
    pub reaches_edges: bool,
}

impl LoopRow<'_> {
    /// The changes that a vehicle makes.
    pub fn sight(&self, class: VehicleClass) -> ClassSighting {
        let model = VehicleModel::of_class(class);
        let (change, least) = if class.is_two_wheeler() {
            let change = self.best(model, self.outermost() + self.field.riding_line);
            (change, change)
        } else {
            let change = self.best(model, self.middlemost());
            let elsewhere = self.critical_offsets(model).map(|offset| self.best(model, offset));
            (change, elsewhere.fold(change, Ratio::min))
        };
        ClassSighting { class, change, least, drops_out: false, unseen: None }
    }

    /// Whether the unit lets go under a vehicle, as a gap between its parts passes over the loop.
    pub fn drops_out(&self, class: VehicleClass) -> bool {
        let model = VehicleModel::of_class(class);
        let lets_go =
            |offset: Length| self.field.weakest_in_gaps(model, self.offset_to_nearest(offset)) < self.threshold;
        !model.gaps.is_empty() && (lets_go(self.middlemost()) || self.critical_offsets(model).any(lets_go))
    }

    /// Where across the lane a two-wheeler is not seen.
    pub fn unseen(&self, class: VehicleClass) -> Option<UnseenStrips> {
        let model = VehicleModel::of_class(class);
        class.is_two_wheeler().then(|| find_unseen_strips(self.field, self.centres, model, self.lane, self.threshold))
    }

    /// The best of the row for a vehicle whose middle is `offset` from the lane's, standing over the middle of the loops.
    fn best(&self, model: &VehicleModel, offset: Length) -> Ratio {
        self.field.change(model, self.field.centred(model), self.offset_to_nearest(offset))
    }

    /// The offset from the middle of the nearest loop, which is the one that sees most.
    fn offset_to_nearest(&self, offset: Length) -> Length {
        let apart = self.centres.iter().map(|centre| offset - *centre);
        apart.min_by(|a, b| a.abs().value.total_cmp(&b.abs().value)).unwrap_or(offset)
    }

    /// Where a vehicle is hardest to see: over each gap of the row, and hard against the edge for a loop that holds a gate. The row
    /// is symmetric, so one side is enough.
    fn critical_offsets<'a>(&'a self, model: &VehicleModel) -> impl Iterator<Item = Length> + 'a {
        let edge = ((self.lane - model.width) / 2.0).max(Length::default());
        let gaps = self.centres.windows(2).map(|pair| (pair[0] + pair[1]) / 2.0);
        gaps.filter(move |gap| *gap < edge).chain(self.reaches_edges.then_some(edge))
    }

    /// The middle of the loop nearest to the lane's, on the right where two are.
    fn middlemost(&self) -> Length {
        self.centres.get(self.centres.len() / 2).copied().unwrap_or_default()
    }

    fn outermost(&self) -> Length {
        self.centres.iter().copied().fold(Length::default(), Length::max)
    }
}

/// A vehicle over the loop, or the row of loops, of a role.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct VehicleSighting {
    /// The class of the vehicle.
    #[schema(value_type = String)]
    pub vehicle: VehicleClass,
    /// The change at the unit's terminals with the vehicle's middle over the middle of a loop, percent, 3 decimals; for two-wheelers
    /// 0.3 m inside a side wire, or over the centre slot of a quadrupole; for a tractor and trailer under the trailer's floor.
    pub change_percent: f64,
    /// The least such change across the lane, percent, 3 decimals: over the gaps of a row, and hard against either edge where the
    /// loop holds a gate. The same as `change_percent` for two-wheelers.
    pub least_change_percent: f64,
    /// The change that the unit switches at, percent, 3 decimals.
    pub threshold_percent: f64,
    /// `change_percent` over the threshold, 2 decimals; a design wants 2 at least.
    pub times_threshold: f64,
    /// Whether `least_change_percent` reaches the threshold.
    pub detected: bool,
    /// Whether the unit lets go under the vehicle.
    pub drops_out: bool,
    /// Where across the lane a two-wheeler is not seen; absent for other vehicles.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub blind_strip: Option<BlindStrip>,
}

impl VehicleSighting {
    /// A vehicle over loops across a lane whose units switch at `threshold`.
    pub(super) fn of(sighting: &ClassSighting, threshold: Ratio, lane: Length) -> Self {
        Self {
            vehicle: sighting.class,
            change_percent: round(sighting.change.get::<percent>(), 3),
            least_change_percent: round(sighting.least.get::<percent>(), 3),
            threshold_percent: round(threshold.get::<percent>(), 3),
            times_threshold: round((sighting.change / threshold).get::<ratio>(), 2),
            detected: sighting.least >= threshold,
            drops_out: sighting.drops_out,
            blind_strip: sighting.unseen.as_ref().map(|unseen| BlindStrip::of(unseen, lane)),
        }
    }
}
