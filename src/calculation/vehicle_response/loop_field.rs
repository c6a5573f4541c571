//! A loop ready to be driven over: the change at the unit's terminals for a vehicle at any place.

use uom::si::f64::{Length, Ratio};
use uom::si::inductance::henry;
use uom::si::length::meter;
use uom::si::ratio::ratio;

use super::vehicle_model::{FactoredShape, VehicleModel};
use crate::calculation::input::ResolvedLoop;
use crate::calculation::loop_characteristics::ElectricalFigures;
use crate::physics::plate::PrimaryLoop;

/// A loop's field, and what a change of its inductance comes to at the terminals.
pub struct LoopField {
    primary: PrimaryLoop,
    /// At the terminals, henry.
    terminal: f64,
    /// From the pavement down to the centre of the top wire, metres.
    depth: f64,
    /// From the loop's middle to the line on which two-wheelers are taken to ride.
    pub riding_line: Length,
    /// Leg along travel.
    pub along: Length,
    /// Leg across the lane.
    pub across: Length,
}

impl LoopField {
    /// The field of a loop that measures so.
    pub fn new(coil: &ResolvedLoop, electrical: &ElectricalFigures) -> Self {
        Self {
            primary: PrimaryLoop::new(&coil.winding()),
            terminal: electrical.terminal_inductance.get::<henry>(),
            depth: (coil.cover + coil.wire.over_insulation / 2.0).get::<meter>(),
            riding_line: coil.riding_line(),
            along: coil.along_travel,
            across: coil.across_lane,
        }
    }

    /// The change ΔL/L at the terminals with the vehicle's front `front` past the loop's leading edge, its middle `offset` across
    /// from the loop's.
    pub fn change(&self, model: &VehicleModel, front: Length, offset: Length) -> Ratio {
        let y = (front - self.along / 2.0).get::<meter>();
        let x = offset.get::<meter>();
        let z = model.height.get::<meter>() + self.depth;
        let henries = match &*model.shape {
            FactoredShape::Underside(plate) => plate.change(&self.primary, [x, y, z]),
            FactoredShape::Upright { turn, behind } => {
                turn.change(&self.primary, [x, y - behind - turn.length / 2.0, z])
            }
        };
        Ratio::new::<ratio>((henries / self.terminal).max(0.0))
    }

    /// The least change while a gap between the vehicle's parts passes over the loop; without gaps, none.
    pub fn weakest_in_gaps(&self, model: &VehicleModel, offset: Length) -> Ratio {
        // Steps of a quarter metre round the place where the gap lies over the loop's middle.
        let reach = (-5..=5).map(|step| Length::new::<meter>(0.25 * f64::from(step)));
        let fronts = model.gaps.iter().flat_map(|gap| reach.clone().map(|apart| *gap + self.along / 2.0 + apart));
        fronts.map(|front| self.change(model, front, offset)).reduce(Ratio::min).unwrap_or(Ratio::new::<ratio>(1.0))
    }

    /// The front's position with the vehicle's middle over the loop's: where one long enough is seen best.
    pub fn centred(&self, model: &VehicleModel) -> Length {
        (self.along + model.length) / 2.0
    }
}
