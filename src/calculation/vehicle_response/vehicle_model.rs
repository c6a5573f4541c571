//! Vehicles ready for the solver. Each class is factored once; plates of callers are factored when asked for and cached.

use std::sync::{Arc, LazyLock};

use uom::si::f64::Length;
use uom::si::length::meter;

use crate::physics::plate::{self, BodyCache, Plate, UprightTurn};
use crate::practice::vehicles::{UndersidePanel, VehicleBody, VehicleClass};
use crate::vocabulary::Vocabulary;

/// The metal of a vehicle, with its front at the origin of its own axis.
#[derive(Clone)]
pub struct VehicleModel {
    /// What the solver takes.
    pub(super) shape: Arc<FactoredShape>,
    /// The lowest part of an underside, or the lower side of a two-wheeler's turn, above the pavement.
    pub height: Length,
    /// Length over all.
    pub length: Length,
    /// Width over all.
    pub width: Length,
    /// From its front to the middle of its longest part, where it is seen best once it stands over a loop.
    pub middle: Length,
    /// The middles of an underside's parts, behind its front; none for a two-wheeler.
    pub parts: Vec<Length>,
    /// The middles of the gaps between its parts, behind its front.
    pub gaps: Vec<Length>,
}

/// A factored underside or a two-wheeler's turn.
#[expect(clippy::large_enum_variant, reason = "few of them, each behind an Arc")]
pub(super) enum FactoredShape {
    Underside(Plate),
    /// In the middle of the vehicle.
    Upright(UprightTurn),
}

impl VehicleModel {
    /// The metal of a class. All classes are factored when the first is asked for.
    pub fn of_class(class: VehicleClass) -> &'static Self {
        static CLASSES: LazyLock<Vec<(VehicleClass, VehicleModel)>> = LazyLock::new(|| {
            VehicleClass::ALL.iter().filter_map(|class| Some((*class, VehicleModel::solve(*class)?))).collect()
        });
        // The fallback is never taken: every class can be factored, which a test checks.
        CLASSES.iter().find(|(other, _)| *other == class).map_or(&CLASSES[0].1, |(_, model)| model)
    }

    /// The metal whose height [`find_seen_height`](super::find_seen_height) looks for: that of the class itself, or of one that stands for it.
    pub fn for_seen_height(class: VehicleClass) -> &'static Self {
        Self::of_class(class.seen_height_class())
    }

    /// A flat plate of any size; `None` unless its sides are positive.
    pub fn of_plate(width: Length, length: Length, height: Length) -> Option<Self> {
        static OWN: BodyCache<FactoredShape> = BodyCache::empty();
        let sides = [width, length].map(|side| side.get::<meter>());
        let shape = OWN.body(sides, || Some(FactoredShape::Underside(Plate::assembled(&[flat(width, length)])?)))?;
        let middle = length / 2.0;
        Some(Self { shape, height, length, width, middle, parts: vec![middle], gaps: Vec::new() })
    }

    /// The lowest height that the solver resolves; an answer below it is rough.
    pub fn least_height(&self) -> Length {
        match &*self.shape {
            FactoredShape::Underside(plate) => Length::new::<meter>(plate.least_height()),
            FactoredShape::Upright(_) => Length::default(),
        }
    }

    fn solve(class: VehicleClass) -> Option<Self> {
        let (mut middle, mut parts, mut gaps) = (class.length() / 2.0, Vec::new(), Vec::new());
        let (shape, height) = match class.body() {
            VehicleBody::Underside(panels) => {
                let of_panel = |panel: &UndersidePanel| panel.behind + panel.length / 2.0;
                let longest = panels.iter().max_by(|a, b| a.length.value.total_cmp(&b.length.value));
                middle = longest.map(of_panel)?;
                parts.extend(panels.iter().map(of_panel));
                gaps.extend(panels.windows(2).map(|pair| (pair[0].behind + pair[0].length + pair[1].behind) / 2.0));
                let lowest = panels.iter().map(|panel| panel.height).reduce(Length::min)?;
                let panels: Vec<_> = panels.iter().map(|panel| above(lowest, panel)).collect();
                (FactoredShape::Underside(Plate::assembled(&panels)?), lowest)
            }
            VehicleBody::Upright { length, height, ground_gap, radius } => {
                let [length, height, radius] = [length, height, radius].map(|side| side.get::<meter>());
                (FactoredShape::Upright(UprightTurn::new(length, height, radius)), ground_gap)
            }
        };
        Some(Self { shape: shape.into(), height, length: class.length(), width: class.width(), middle, parts, gaps })
    }
}

/// A plate with its front at the origin, at the body's own zero.
fn flat(width: Length, length: Length) -> plate::PlatePanel {
    above(Length::default(), &UndersidePanel { width, length, behind: Length::default(), height: Length::default() })
}

fn above(lowest: Length, panel: &UndersidePanel) -> plate::PlatePanel {
    let length = panel.length.get::<meter>();
    plate::PlatePanel {
        width: panel.width.get::<meter>(),
        length,
        along: -panel.behind.get::<meter>() - length / 2.0,
        rise: (panel.height - lowest).get::<meter>(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_class_can_be_factored() {
        for class in VehicleClass::ALL {
            assert!(VehicleModel::solve(*class).is_some(), "{}", class.code());
        }
    }
}
