//! One section: the slot in its ground with what lies in it, dimensions at the left, words at the right.

use super::cross_section::{CrossSection, SawnSlot, SlotContents, pair_offset};
use super::ground::{LEFT, RIGHT, SectionGround};
use super::labels::{self, SectionLabel};
use crate::calculation::material_estimate::MaterialEstimateInputs;
use crate::calculation::report::Statement;
use crate::drawing::canvas::{Canvas, CanvasPoint};
use crate::drawing::dimension_text::{format_fine_both, format_fine_lines};
use crate::drawing::text_metrics::lines_height;
use crate::quantity::output::DetailLength;
use crate::wording::Reader;

/// The largest depth of a section.
const MAX_DEPTH: f64 = 150.0;
/// The largest width of a slot.
const MAX_WIDTH: f64 = 62.0;
/// Where the dimension of the depth stands.
const DEPTH_LINE: f64 = 84.0;
/// The middle of the slot.
const MIDDLE: f64 = f64::midpoint(LEFT, RIGHT);
/// How deep the bed of a buried loop is drawn.
const BURIED_DEPTH: f64 = 110.0;
/// The radius of a jacket whose diameter is not known, and the smallest of any.
const MIN_RADIUS: f64 = 2.0;
/// The most turns that are drawn in a jacket.
const MAX_WIRES_IN_JACKET: u32 = 9;

/// Draws a section from `top` down; returns the lower edge.
pub fn draw(
    canvas: &mut Canvas,
    section: &CrossSection,
    inputs: &MaterialEstimateInputs,
    reader: Reader,
    top: f64,
) -> f64 {
    let stack = section.contents.height(section.slot.as_ref());
    let (scale, depth, above, half) = if let Some(slot) = &section.slot {
        let scale = (MAX_DEPTH / slot.depth.mm()).min(MAX_WIDTH / slot.width.mm());
        let rod = slot.rod.as_ref().map_or(0.0, |rod| rod.height.mm());
        (scale, slot.depth.mm(), (stack + rod - slot.depth.mm()).max(0.0), slot.width.mm() / 2.0)
    } else {
        // Down to its bed; the jacket of a loop whose diameter is not known is drawn as if it were thin.
        let depth = section.burial.as_ref().map_or(0.0, |burial| burial.cover.mm() + stack);
        let bed = section.burial.as_ref().map_or(0.0, |burial| burial.bed_under.mm());
        (BURIED_DEPTH / (depth + bed).max(1.0), depth, 0.0, 0.0)
    };
    let surface = top + lines_height(1) + 20.0 + scale * above;
    let sides = (MIDDLE - scale * half, MIDDLE + scale * half);
    let below = section.burial.as_ref().map_or(0.0, |burial| burial.bed_under.mm());
    let ground = SectionGround { inputs, scale, surface, depth, below, sides };
    let mut labels = Vec::new();
    ground.draw(canvas, &mut labels, reader);
    let view = SectionView { section, ground: &ground, reader };
    match &section.slot {
        Some(slot) => view.draw_sawn(canvas, &mut labels, slot, (stack, above)),
        None => view.draw_buried(canvas, &mut labels),
    }
    let bottom = labels::draw(canvas, &mut labels, top);
    bottom.max(ground.bottom() + 8.0).max(ground.y(depth) + 8.0)
}

/// Draws the wires in a jacket, where it is large enough to show them.
fn draw_turns(canvas: &mut Canvas, middle: (f64, f64), radius: f64, turns: u32) {
    if radius < 5.0 || turns > MAX_WIRES_IN_JACKET {
        return;
    }
    let (distance, size) = if turns == 1 { (0.0, 0.3) } else { (0.58, (1.4 / f64::from(turns)).min(0.24)) };
    for index in 0..turns {
        let angle = std::f64::consts::TAU * f64::from(index) / f64::from(turns);
        let (up, across) = angle.sin_cos();
        canvas.circle(
            "wiredot",
            (middle.0 + distance * radius * across, middle.1 - distance * radius * up),
            size * radius,
        );
    }
}

/// A section at its place on the canvas.
struct SectionView<'a> {
    section: &'a CrossSection,
    ground: &'a SectionGround<'a>,
    reader: Reader,
}

impl SectionView<'_> {
    /// A dimension in both systems.
    fn both(&self, length: DetailLength) -> String {
        format_fine_both(length, self.reader)
    }

    /// Words for a point.
    fn label(&self, at: CanvasPoint, words: &Statement) -> SectionLabel {
        SectionLabel { at, words: self.reader.say(words).into_owned() }
    }

    /// Draws a slot with its contents. `stack` is how high they stand, `above` how far they and the rod stand out of the slot, mm.
    fn draw_sawn(
        &self,
        canvas: &mut Canvas,
        labels: &mut Vec<SectionLabel>,
        slot: &SawnSlot,
        (stack, above): (f64, f64),
    ) {
        self.draw_slot(canvas, labels, slot);
        self.draw_contents(canvas, labels, slot.width.mm());
        let over = self.draw_rod(canvas, labels, slot, slot.depth.mm() - stack);
        self.draw_width(canvas, slot, above);
        self.draw_depth(canvas, slot.depth);
        self.draw_cover(canvas, labels, over);
    }

    /// Draws a buried loop on its bed, and how deep it lies.
    fn draw_buried(&self, canvas: &mut Canvas, labels: &mut Vec<SectionLabel>) {
        self.draw_contents(canvas, labels, f64::INFINITY);
        let Some(burial) = &self.section.burial else { return };
        let floor = self.ground.y(self.ground.depth);
        if burial.bed_under.mm() > 0.0 {
            let foot = self.ground.y(self.ground.depth + burial.bed_under.mm());
            canvas.rectangle("dashed", (LEFT + 14.0, floor), (RIGHT - 14.0, foot));
            let words = Statement::new("drawings-section-bed").text("depth", self.both(burial.bed_under));
            labels.push(self.label((RIGHT - 18.0, f64::midpoint(floor, foot)), &words));
        }
        self.draw_depth(canvas, burial.cover);
        let (x, top) = (MIDDLE - 16.0, self.ground.surface);
        canvas.line("fine", (x, top), (x, self.ground.y(burial.cover.mm())));
        let words = Statement::new("drawings-section-cover").code("over", "it").text("depth", self.both(burial.cover));
        labels.push(self.label((x, self.ground.y(burial.cover.mm() / 2.0)), &words));
    }

    /// Draws walls, floor and sealant.
    fn draw_slot(&self, canvas: &mut Canvas, labels: &mut Vec<SectionLabel>, slot: &SawnSlot) {
        let (left, right) = self.ground.sides;
        let finish = self.ground.inputs.finish_below_surface;
        let (top, floor) = (self.ground.y(finish.mm().min(slot.depth.mm())), self.ground.y(slot.depth.mm()));
        canvas.rectangle("fill", (left, top), (right, floor));
        canvas.line("line", (left, top), (right, top));
        canvas.polyline(
            "line",
            &[(left, self.ground.surface), (left, floor), (right, floor), (right, self.ground.surface)],
        );
        let words = Statement::new("drawings-section-finish")
            .code("finish", if finish.mm() == 0.0 { "flush" } else { "below" })
            .text("depth", self.both(finish));
        labels.push(self.label((right - 0.2 * (right - left), (top + 4.0).min(floor)), &words));
    }

    /// Draws wires, pair or jacket, from the floor up.
    fn draw_contents(&self, canvas: &mut Canvas, labels: &mut Vec<SectionLabel>, width: f64) {
        let (scale, floor) = (self.ground.scale, self.ground.y(self.ground.depth));
        let wire = |canvas: &mut Canvas, x: f64, y: f64, over: DetailLength, conductor: DetailLength| {
            canvas.circle("core", (x, y), scale * over.mm() / 2.0);
            canvas.circle("wiredot", (x, y), scale * conductor.mm() / 2.0);
        };
        let (words, at) = match &self.section.contents {
            SlotContents::Wires { count, over, conductor } => {
                let up = |index: u32| floor - scale * over.mm() * (f64::from(index) + 0.5);
                for index in 0..*count {
                    wire(canvas, MIDDLE, up(index), *over, *conductor);
                }
                let words = Statement::new("drawings-section-wires").count("count", (*count).into());
                (words.text("diameter", self.both(*over)), (MIDDLE, up(count / 2)))
            }
            SlotContents::Pairs { count, over, conductor } => {
                let (across, up) = pair_offset(over.mm(), width);
                let x = scale * across / 2.0;
                let foot = |index: u32| floor - scale * over.mm() * (2.0 * f64::from(index) + 0.5);
                for index in 0..*count {
                    wire(canvas, MIDDLE - x, foot(index), *over, *conductor);
                    wire(canvas, MIDDLE + x, foot(index) - scale * up, *over, *conductor);
                }
                let words = Statement::new("drawings-section-pairs").count("count", (*count).into());
                (words.text("diameter", self.both(*over)), (MIDDLE + x, foot(count / 2) - scale * up))
            }
            SlotContents::JacketedPairs { count, over } => {
                let radius = scale * over.mm() / 2.0;
                let middle = |index: u32| (MIDDLE, floor - radius * (2.0 * f64::from(index) + 1.0));
                for index in 0..*count {
                    canvas.circle("core", middle(index), radius);
                    draw_turns(canvas, middle(index), radius, 2);
                }
                let words = Statement::new("drawings-section-jacketed-pairs").count("count", (*count).into());
                (words.text("diameter", self.both(*over)), middle(count / 2))
            }
            SlotContents::Jacket { over, turns } => {
                let radius =
                    (scale * over.map_or(0.0, crate::quantity::output::DetailLength::mm) / 2.0).max(MIN_RADIUS);
                let middle = (MIDDLE, floor - radius);
                canvas.circle("core", middle, radius);
                draw_turns(canvas, middle, radius, turns.unwrap_or(2));
                let words = Statement::new("drawings-section-jacket")
                    .code("size", if over.is_some() { "given" } else { "not_given" })
                    .text("diameter", over.map_or_else(String::new, |over| self.both(over)))
                    .code("holds", if turns.is_some() { "turns" } else { "pair" })
                    .count("turns", turns.unwrap_or_default().into());
                (words, (middle.0 + 0.5 * radius, middle.1))
            }
        };
        labels.push(self.label(at, &words));
    }

    /// Draws the rod over the contents; returns the depth of what the sealant covers, millimetres.
    fn draw_rod(&self, canvas: &mut Canvas, labels: &mut Vec<SectionLabel>, slot: &SawnSlot, top_of_stack: f64) -> f64 {
        let Some(rod) = &slot.rod else { return top_of_stack };
        let (left, right) = self.ground.sides;
        let (top, foot) = (self.ground.y(top_of_stack - rod.height.mm()), self.ground.y(top_of_stack));
        let (class, form) = if rod.in_pieces { ("dashed", "pieces") } else { ("line", "continuous") };
        if !rod.in_pieces {
            canvas.rectangle("paper", (left, top), (right, foot));
            canvas.hatch("fine", (left, top), (right, foot), 4.0);
        }
        canvas.rectangle(class, (left, top), (right, foot));
        let words = Statement::new("drawings-section-rod").code("form", form);
        labels.push(self.label((right - 0.2 * (right - left), f64::midpoint(top, foot)), &words));
        if rod.in_pieces { top_of_stack } else { top_of_stack - rod.height.mm() }
    }

    /// Draws the width above the pavement.
    fn draw_width(&self, canvas: &mut Canvas, slot: &SawnSlot, above: f64) {
        let (left, right) = self.ground.sides;
        let y = self.ground.y(-above) - 9.0;
        for x in [left, right] {
            canvas.line("fine", (x, self.ground.surface - 2.0), (x, y - 4.0));
        }
        canvas.arrow("line", (left - 16.0, y), (left, y));
        canvas.arrow("line", (right + 16.0, y), (right, y));
        canvas.text("middle", (MIDDLE, y - 8.0), &self.both(slot.width));
    }

    /// Draws the depth at the left.
    fn draw_depth(&self, canvas: &mut Canvas, depth: DetailLength) {
        let (top, floor) = (self.ground.surface, self.ground.y(depth.mm()));
        canvas.line("fine", (DEPTH_LINE - 4.0, top), (LEFT, top));
        canvas.line("fine", (DEPTH_LINE - 4.0, floor), (self.ground.sides.0, floor));
        canvas.line("line", (DEPTH_LINE, top), (DEPTH_LINE, floor));
        canvas.tick((DEPTH_LINE, top));
        canvas.tick((DEPTH_LINE, floor));
        let middle = f64::midpoint(top, floor);
        canvas.text_lines("end", (DEPTH_LINE - 6.0, middle), &format_fine_lines(depth, self.reader));
    }

    /// Draws the cover from a depth up to the finish.
    fn draw_cover(&self, canvas: &mut Canvas, labels: &mut Vec<SectionLabel>, from: f64) {
        let Some(cover) = self.section.cover else { return };
        let x = self.ground.sides.1 + 12.0;
        let foot = self.ground.y(from);
        if cover.mm() <= 0.0 {
            labels.push(self.label((MIDDLE, foot), &Statement::new("drawings-section-uncovered")));
            return;
        }
        let top = foot - self.ground.scale * cover.mm();
        canvas.line("fine", (self.ground.sides.1, foot), (x + 4.0, foot));
        canvas.line("line", (x, top), (x, foot));
        canvas.tick((x, top));
        canvas.tick((x, foot));
        let over = match &self.section.contents {
            contents if contents.is_single() => "it",
            SlotContents::Pairs { .. } | SlotContents::JacketedPairs { .. } => "pair",
            SlotContents::Wires { .. } | SlotContents::Jacket { .. } => "wire",
        };
        let words = Statement::new("drawings-section-cover").code("over", over).text("depth", self.both(cover));
        labels.push(self.label((x, f64::midpoint(top, foot)), &words));
    }
}
