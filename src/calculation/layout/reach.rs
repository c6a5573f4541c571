//! Where a vehicle comes to be seen, and where the unit lets go of it.

use uom::si::f64::{Length, Ratio};
use uom::si::length::meter;

use super::sightings::LoopRow;
use crate::calculation::vehicle_response::{VehicleModel, find_crossing};
use crate::practice::vehicles::VehicleClass;

/// How far before and behind a loop a vehicle is followed, metres.
const BEYOND_M: f64 = 2.0;

impl LoopRow<'_> {
    /// How far the end of a vehicle that comes up to the loops may lie past their nearest wire and make less than `step`, with its middle
    /// `offset` from the lane's; negative where it is seen before. All of the leg where it is seen nowhere.
    pub fn unseen_reach(&self, model: &VehicleModel, step: Ratio, offset: Length) -> Length {
        let change = |front: Length| self.change_at(model, front, offset);
        let (far, near) = (self.field.centred(model).min(self.field.along), Length::new::<meter>(-BEYOND_M));
        if change(far) < step {
            return self.field.along;
        }
        if change(near) >= step {
            return near;
        }
        find_crossing(near, far, step, change)
    }

    /// How far the tail of a vehicle is past the first wire of the loops when a unit that switches at `step` lets go of it, where across
    /// the lane that is least; 0 where it lets go before.
    pub fn tail_at_release(&self, class: VehicleClass, step: Ratio) -> Length {
        let model = VehicleModel::of_class(class);
        let offsets = self.standing_offsets(class, model);
        let tail = |offset: Length| {
            let change = |front: Length| self.change_at(model, front, offset);
            let over = self.field.centred(model).max(model.length);
            let gone = model.length + self.field.along + Length::new::<meter>(BEYOND_M);
            if change(over) < step { Length::default() } else { find_crossing(over, gone, step, change) - model.length }
        };
        offsets.into_iter().map(tail).reduce(Length::min).unwrap_or_default()
    }

    /// The change of a vehicle that stands over the middle of the leg beside the lane, its side `edge` from the middle of it, on the side
    /// where it is seen best.
    pub fn peak_beside(&self, class: VehicleClass, edge: Length) -> Ratio {
        let model = VehicleModel::of_class(class);
        let offset = edge + model.width / 2.0;
        let change = |offset: Length| self.change_at(model, self.field.centred(model), offset);
        change(offset).max(change(-offset))
    }
}
