//! The ground that a section is cut through: pavement, slab and steel, to the scale of the slot.

use super::labels::SectionLabel;
use crate::calculation::material_estimate::MaterialEstimateInputs;
use crate::calculation::report::Statement;
use crate::drawing::canvas::Canvas;
use crate::drawing::dimension_text::format_fine_both;
use crate::quantity::output::DetailLength;
use crate::wording::Reader;

/// The left edge of the ground.
pub const LEFT: f64 = 92.0;
/// Its right edge.
pub const RIGHT: f64 = 188.0;
/// How deep the ground is drawn, as a multiple of the depth of the slot.
const GROUND_DEPTH: f64 = 1.22;
/// A slab is drawn whole up to this multiple of the depth of the slot.
const MAX_WHOLE_SLAB: f64 = 1.6;
/// The radius of a bar of steel; its size is not known.
const BAR_RADIUS: f64 = 3.5;

/// The ground round a slot.
pub struct SectionGround<'a> {
    /// What is known of the slab.
    pub inputs: &'a MaterialEstimateInputs,
    /// Units of the canvas per millimetre.
    pub scale: f64,
    /// The y coordinate of the pavement.
    pub surface: f64,
    /// How deep the slot is, or what is buried; millimetres.
    pub depth: f64,
    /// The bed below that; millimetres.
    pub below: f64,
    /// The left and right side of the slot; equal where there is none.
    pub sides: (f64, f64),
}

impl SectionGround<'_> {
    /// The y coordinate of a depth.
    pub fn y(&self, depth_mm: f64) -> f64 {
        self.surface + self.scale * depth_mm
    }

    /// The thickness of the slab where it is drawn whole.
    fn whole_slab(&self) -> Option<DetailLength> {
        self.inputs
            .slab_thickness
            .filter(|slab| self.sides.0 < self.sides.1 && slab.mm() <= MAX_WHOLE_SLAB * self.depth)
    }

    /// The lower edge of what is drawn.
    pub fn bottom(&self) -> f64 {
        let least = self.y(GROUND_DEPTH * self.depth).max(self.y(self.depth + self.below) + 14.0);
        self.whole_slab().map_or(least, |slab| self.y(slab.mm()))
    }

    /// Draws the ground and adds its labels.
    pub fn draw(&self, canvas: &mut Canvas, labels: &mut Vec<SectionLabel>, reader: Reader) {
        let (left, right) = self.sides;
        let bottom = self.bottom();
        let floor = if left < right { self.y(self.depth).min(bottom) } else { self.surface };
        for (from, to) in [
            ((LEFT, self.surface), (left, bottom)),
            ((left, floor), (right, bottom)),
            ((right, self.surface), (RIGHT, bottom)),
        ] {
            canvas.hatch("fine", from, to, 9.0);
        }
        canvas.line("heavy", (LEFT, self.surface), (left, self.surface));
        canvas.line("heavy", (right, self.surface), (RIGHT, self.surface));
        labels.push(SectionLabel {
            at: (RIGHT - 3.0, self.surface),
            words: reader.label(self.inputs.surface).to_owned(),
        });
        if left < right {
            self.draw_slab_and_steel(canvas, labels, reader);
        } else {
            canvas.line("line", (LEFT, bottom), (RIGHT, bottom));
        }
    }

    fn draw_slab_and_steel(&self, canvas: &mut Canvas, labels: &mut Vec<SectionLabel>, reader: Reader) {
        let bottom = self.bottom();
        let (left, right) = self.sides;
        let is_whole = self.whole_slab().is_some();
        if is_whole {
            let is_through = left < right && self.y(self.depth) >= bottom;
            let inner = if is_through { (left, right) } else { (LEFT, LEFT) };
            canvas.line("line", (LEFT, bottom), (inner.0, bottom));
            canvas.line("line", (inner.1, bottom), (RIGHT, bottom));
        } else {
            let middle = f64::midpoint(LEFT, RIGHT);
            let step = |x: f64, y: f64| (middle + x, bottom + y);
            canvas.polyline(
                "line",
                &[(LEFT, bottom), step(-6.0, 0.0), step(-3.0, -5.0), step(3.0, 5.0), step(6.0, 0.0), (RIGHT, bottom)],
            );
        }
        if let Some(slab) = self.inputs.slab_thickness {
            let words = Statement::new("drawings-section-slab")
                .text("thickness", format_fine_both(slab, reader))
                .code("drawn", if is_whole { "whole" } else { "broken_off" });
            labels.push(SectionLabel { at: (RIGHT - 8.0, bottom), words: reader.say(&words).into_owned() });
        }
        if let Some(steel) = self.inputs.reinforcement_depth {
            let y = self.y(steel.mm());
            let is_drawn = y + BAR_RADIUS < bottom;
            if is_drawn {
                for x in [LEFT + 12.0, RIGHT - 12.0] {
                    canvas.circle("balloon", (x, y), BAR_RADIUS);
                }
            }
            let words = Statement::new("drawings-section-steel")
                .text("depth", format_fine_both(steel, reader))
                .code("drawn", if is_drawn { "whole" } else { "below" });
            let at = (RIGHT - 12.0, y.min(bottom - 2.0));
            labels.push(SectionLabel { at, words: reader.say(&words).into_owned() });
        }
    }
}
