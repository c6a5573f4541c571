//! The ground that a section is cut through: pavement, slab and steel, to the scale of the slot.

use super::labels::Label;
use crate::calculation::material_estimate::MaterialEstimateInputs;
use crate::drawing::sheet::Sheet;
use crate::drawing::units::fine;
use crate::drawing::words;
use crate::practice::site::Surface;
use crate::quantity::UnitSystem;
use crate::quantity::output::DetailLength;

/// The left edge of the ground.
pub const LEFT: f64 = 92.0;
/// Its right edge.
pub const RIGHT: f64 = 188.0;
/// How much ground is drawn below what lies in it, as a share of its depth.
const BELOW: f64 = 1.22;
/// A slab no thicker than this share of the depth is drawn whole.
const WHOLE: f64 = 1.6;
/// The radius of a bar of steel; its own size is not known.
const BAR: f64 = 3.5;

/// The ground round a slot.
pub struct Ground<'a> {
    /// What is known of the slab.
    pub inputs: &'a MaterialEstimateInputs,
    /// Units of the sheet per millimetre.
    pub scale: f64,
    /// The pavement on the sheet.
    pub surface: f64,
    /// How deep the slot is, or what is buried; millimetres.
    pub depth: f64,
    /// The left and right side of the slot; the same where there is none.
    pub sides: (f64, f64),
}

impl Ground<'_> {
    /// A depth on the sheet.
    pub fn y(&self, depth_mm: f64) -> f64 {
        self.surface + self.scale * depth_mm
    }

    /// The slab's thickness where it is drawn whole.
    fn slab(&self) -> Option<DetailLength> {
        self.inputs.slab_thickness.filter(|slab| self.sides.0 < self.sides.1 && slab.mm <= WHOLE * self.depth)
    }

    /// The lower edge of what is drawn.
    pub fn bottom(&self) -> f64 {
        self.slab().map_or_else(|| self.y(BELOW * self.depth).max(self.y(self.depth) + 14.0), |slab| self.y(slab.mm))
    }

    /// Draws it and adds its labels.
    pub fn draw(&self, sheet: &mut Sheet, labels: &mut Vec<Label>, system: UnitSystem) {
        let (left, right) = self.sides;
        let bottom = self.bottom();
        let floor = if left < right { self.y(self.depth).min(bottom) } else { self.surface };
        for (from, to) in [
            ((LEFT, self.surface), (left, bottom)),
            ((left, floor), (right, bottom)),
            ((right, self.surface), (RIGHT, bottom)),
        ] {
            sheet.hatch("fine", from, to, 9.0);
        }
        sheet.line("heavy", (LEFT, self.surface), (left, self.surface));
        sheet.line("heavy", (right, self.surface), (RIGHT, self.surface));
        labels.push(Label {
            at: (RIGHT - 3.0, self.surface),
            words: words::label::<Surface>(self.inputs.surface).to_owned(),
        });
        if left < right {
            self.slab_and_steel(sheet, labels, system);
        } else {
            labels.push(Label { at: (RIGHT - 8.0, bottom), words: "Not to scale".to_owned() });
            sheet.line("line", (LEFT, bottom), (RIGHT, bottom));
        }
    }

    fn slab_and_steel(&self, sheet: &mut Sheet, labels: &mut Vec<Label>, system: UnitSystem) {
        let bottom = self.bottom();
        let (left, right) = self.sides;
        let is_whole = self.slab().is_some();
        if is_whole {
            let is_through = left < right && self.y(self.depth) >= bottom;
            let inner = if is_through { (left, right) } else { (LEFT, LEFT) };
            sheet.line("line", (LEFT, bottom), (inner.0, bottom));
            sheet.line("line", (inner.1, bottom), (RIGHT, bottom));
        } else {
            let middle = f64::midpoint(LEFT, RIGHT);
            let step = |x: f64, y: f64| (middle + x, bottom + y);
            sheet.polyline(
                "line",
                &[(LEFT, bottom), step(-6.0, 0.0), step(-3.0, -5.0), step(3.0, 5.0), step(6.0, 0.0), (RIGHT, bottom)],
            );
        }
        if let Some(slab) = self.inputs.slab_thickness {
            let broken = if is_whole { "" } else { " (broken off here)" };
            let words = format!("Slab {} thick{broken}", fine(slab, system));
            labels.push(Label { at: (RIGHT - 8.0, bottom), words });
        }
        if let Some(steel) = self.inputs.reinforcement_depth {
            let y = self.y(steel.mm);
            let is_drawn = y + BAR < bottom;
            if is_drawn {
                for x in [LEFT + 12.0, RIGHT - 12.0] {
                    sheet.circle("balloon", (x, y), BAR);
                }
            }
            let below = if is_drawn { "" } else { ", below what is drawn" };
            let words = format!("Steel {} deep{below}", fine(steel, system));
            labels.push(Label { at: (RIGHT - 12.0, y.min(bottom - 2.0)), words });
        }
    }
}
