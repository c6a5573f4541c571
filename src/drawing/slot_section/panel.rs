//! One section: the slot in its ground with what lies in it, dimensions at the left, words at the right.

use super::ground::{Ground, LEFT, RIGHT};
use super::labels::{self, Label};
use super::section::{Lies, Place, Section, Slot};
use crate::calculation::material_estimate::MaterialEstimateInputs;
use crate::drawing::sheet::Sheet;
use crate::drawing::units::{fine, fine_lines};
use crate::drawing::words::lines;
use crate::quantity::UnitSystem;
use crate::quantity::output::DetailLength;

/// How deep a section is drawn at most.
const DEEP: f64 = 150.0;
/// How wide a slot is drawn at most.
const WIDE: f64 = 62.0;
/// Where the dimension of the depth stands.
const TAPE: f64 = 84.0;
/// The middle of the slot.
const MIDDLE: f64 = f64::midpoint(LEFT, RIGHT);
/// How deep a buried loop is drawn, and how large; neither is to scale.
const BURIED: f64 = 70.0;
/// See [`BURIED`].
const BURIED_RADIUS: f64 = 9.0;
/// The radius of a jacket whose diameter is not known, and the least of any.
const MIN_RADIUS: f64 = 2.0;
/// The most turns that are drawn in a jacket.
const MAX_WIRES_IN_JACKET: u32 = 9;

/// Draws a section from `top` down; gives the lower edge.
pub fn draw(
    sheet: &mut Sheet,
    section: &Section,
    inputs: &MaterialEstimateInputs,
    system: UnitSystem,
    top: f64,
) -> f64 {
    let stack = section.lies.height(section.slot.as_ref());
    let (scale, depth, above, half) = match &section.slot {
        Some(slot) => {
            let scale = (DEEP / slot.depth.mm).min(WIDE / slot.width.mm);
            let rod = slot.rod.as_ref().map_or(0.0, |rod| rod.height.mm);
            (scale, slot.depth.mm, (stack + rod - slot.depth.mm).max(0.0), slot.width.mm / 2.0)
        }
        // How deep a buried loop lies is no figure of the report: a picture without scale.
        None => (1.0, BURIED, 0.0, 0.0),
    };
    let surface = top + lines(1) + 20.0 + scale * above;
    let sides = (MIDDLE - scale * half, MIDDLE + scale * half);
    let ground = Ground { inputs, scale, surface, depth, sides };
    let mut labels = Vec::new();
    ground.draw(sheet, &mut labels, system);
    let panel = Panel { section, ground: &ground, system };
    match &section.slot {
        Some(slot) => panel.sawn(sheet, &mut labels, slot, (stack, above)),
        None => panel.lying(sheet, &mut labels, f64::INFINITY),
    }
    let bottom = labels::draw(sheet, &mut labels, top);
    bottom.max(ground.bottom() + 8.0).max(ground.y(depth) + 8.0)
}

impl Lies {
    /// How high it stands from the floor, millimetres.
    fn height(&self, slot: Option<&Slot>) -> f64 {
        match self {
            Self::Wires { count, over, .. } => f64::from(*count) * over.mm,
            Self::Pair { over, .. } => over.mm + pair(over.mm, slot.map_or(f64::INFINITY, |slot| slot.width.mm)).1,
            Self::Jacket { over, .. } => over.map_or(0.0, |over| over.mm),
        }
    }
}

/// From the middle of one wire of a pair to that of the other, across and up, in a slot of a width.
fn pair(over: f64, width: f64) -> (f64, f64) {
    let across = (width - over).clamp(0.0, over);
    (across, (over * over - across * across).sqrt())
}

/// The wires in a jacket, where there is room to show them.
fn turns_in(sheet: &mut Sheet, middle: (f64, f64), radius: f64, turns: u32) {
    if radius < 5.0 || turns > MAX_WIRES_IN_JACKET {
        return;
    }
    let (way, size) = if turns == 1 { (0.0, 0.3) } else { (0.58, (1.4 / f64::from(turns)).min(0.24)) };
    for index in 0..turns {
        let angle = std::f64::consts::TAU * f64::from(index) / f64::from(turns);
        let (up, across) = angle.sin_cos();
        sheet.circle("wiredot", (middle.0 + way * radius * across, middle.1 - way * radius * up), size * radius);
    }
}

/// A section on its place of the sheet.
struct Panel<'a> {
    section: &'a Section,
    ground: &'a Ground<'a>,
    system: UnitSystem,
}

impl Panel<'_> {
    /// A slot with what lies in it: so high, and so far above the pavement.
    fn sawn(&self, sheet: &mut Sheet, labels: &mut Vec<Label>, slot: &Slot, (stack, above): (f64, f64)) {
        self.slot(sheet, labels, slot);
        self.lying(sheet, labels, slot.width.mm);
        let over = self.rod(sheet, labels, slot, slot.depth.mm - stack);
        self.width(sheet, slot, above);
        self.depth(sheet, slot.depth);
        self.cover(sheet, labels, over);
    }

    /// Walls, floor and sealant.
    fn slot(&self, sheet: &mut Sheet, labels: &mut Vec<Label>, slot: &Slot) {
        let (left, right) = self.ground.sides;
        let finish = self.ground.inputs.finish_below_surface;
        let (top, floor) = (self.ground.y(finish.mm.min(slot.depth.mm)), self.ground.y(slot.depth.mm));
        sheet.rectangle("fill", (left, top), (right, floor));
        sheet.line("line", (left, top), (right, top));
        sheet.polyline(
            "line",
            &[(left, self.ground.surface), (left, floor), (right, floor), (right, self.ground.surface)],
        );
        let words = if finish.mm == 0.0 {
            "Sealant, flush with the surface".to_owned()
        } else {
            format!("Sealant, {} below the surface", fine(finish, self.system))
        };
        labels.push(Label { at: (right - 0.2 * (right - left), (top + 4.0).min(floor)), words });
    }

    /// Wires, pair or jacket, from the floor up.
    fn lying(&self, sheet: &mut Sheet, labels: &mut Vec<Label>, width: f64) {
        let (scale, floor) = (self.ground.scale, self.ground.y(self.ground.depth));
        let wire = |sheet: &mut Sheet, x: f64, y: f64, over: DetailLength, conductor: DetailLength| {
            sheet.circle("core", (x, y), scale * over.mm / 2.0);
            sheet.circle("wiredot", (x, y), scale * conductor.mm / 2.0);
        };
        let of = |over| fine(over, self.system);
        let (words, at) = match &self.section.lies {
            Lies::Wires { count, over, conductor } => {
                let up = |index: u32| floor - scale * over.mm * (f64::from(index) + 0.5);
                for index in 0..*count {
                    wire(sheet, MIDDLE, up(index), *over, *conductor);
                }
                let name = if *count == 1 { "wire".to_owned() } else { "wires, one on the other, each".to_owned() };
                (format!("{count} {name} {} over its insulation", of(*over)), (MIDDLE, up(count / 2)))
            }
            Lies::Pair { over, conductor } => {
                let (across, up) = pair(over.mm, width);
                let (x, y) = (scale * across / 2.0, floor - scale * over.mm / 2.0);
                wire(sheet, MIDDLE - x, y, *over, *conductor);
                wire(sheet, MIDDLE + x, y - scale * up, *over, *conductor);
                (format!("Twisted pair, each wire {} over its insulation", of(*over)), (MIDDLE + x, y - scale * up))
            }
            Lies::Jacket { over, turns } => {
                let is_buried = self.section.place == Place::Buried;
                let to_scale = (scale * over.map_or(0.0, |over| over.mm) / 2.0).max(MIN_RADIUS);
                let radius = if is_buried { BURIED_RADIUS } else { to_scale };
                let middle = (MIDDLE, floor - radius);
                sheet.circle("core", middle, radius);
                turns_in(sheet, middle, radius, turns.unwrap_or(2));
                let holds = turns.map_or("a pair".to_owned(), |turns| {
                    if turns == 1 { "1 turn".to_owned() } else { format!("{turns} turns") }
                });
                let size = over.map_or(", its diameter not given".to_owned(), |over| format!(" {}", of(over)));
                (format!("Jacket{size}, {holds} in it"), (middle.0 + 0.5 * radius, middle.1))
            }
        };
        labels.push(Label { at, words });
    }

    /// The rod over them; gives the depth of what the sealant covers, millimetres.
    fn rod(&self, sheet: &mut Sheet, labels: &mut Vec<Label>, slot: &Slot, top_of_stack: f64) -> f64 {
        let Some(rod) = &slot.rod else { return top_of_stack };
        let (left, right) = self.ground.sides;
        let (top, foot) = (self.ground.y(top_of_stack - rod.height.mm), self.ground.y(top_of_stack));
        let (class, words) = if rod.in_pieces {
            ("dashed", "Backer rod, in pieces (dashed)")
        } else {
            ("line", "Backer rod, continuous")
        };
        if !rod.in_pieces {
            sheet.rectangle("paper", (left, top), (right, foot));
            sheet.hatch("fine", (left, top), (right, foot), 4.0);
        }
        sheet.rectangle(class, (left, top), (right, foot));
        labels.push(Label { at: (right - 0.2 * (right - left), f64::midpoint(top, foot)), words: words.to_owned() });
        if rod.in_pieces { top_of_stack } else { top_of_stack - rod.height.mm }
    }

    /// The width above the pavement.
    fn width(&self, sheet: &mut Sheet, slot: &Slot, above: f64) {
        let (left, right) = self.ground.sides;
        let y = self.ground.y(-above) - 9.0;
        for x in [left, right] {
            sheet.line("fine", (x, self.ground.surface - 2.0), (x, y - 4.0));
        }
        sheet.arrow("line", (left - 16.0, y), (left, y));
        sheet.arrow("line", (right + 16.0, y), (right, y));
        sheet.text("middle", (MIDDLE, y - 8.0), &fine(slot.width, self.system));
    }

    /// The depth at the left.
    fn depth(&self, sheet: &mut Sheet, depth: DetailLength) {
        let (top, floor) = (self.ground.surface, self.ground.y(depth.mm));
        sheet.line("fine", (TAPE - 4.0, top), (LEFT, top));
        sheet.line("fine", (TAPE - 4.0, floor), (self.ground.sides.0, floor));
        sheet.line("line", (TAPE, top), (TAPE, floor));
        sheet.tick((TAPE, top));
        sheet.tick((TAPE, floor));
        let middle = f64::midpoint(top, floor);
        for (line, words) in fine_lines(depth, self.system).iter().enumerate() {
            sheet.text("end", (TAPE - 6.0, middle - lines(1) + lines(line + 1) - 3.4), words);
        }
    }

    /// What covers that which lies there, `from` a depth up.
    fn cover(&self, sheet: &mut Sheet, labels: &mut Vec<Label>, from: f64) {
        let Some(cover) = self.section.cover else { return };
        let x = self.ground.sides.1 + 12.0;
        let foot = self.ground.y(from);
        if cover.mm <= 0.0 {
            labels.push(Label { at: (MIDDLE, foot), words: "Nothing covers it".to_owned() });
            return;
        }
        let top = foot - self.ground.scale * cover.mm;
        sheet.line("fine", (self.ground.sides.1, foot), (x + 4.0, foot));
        sheet.line("line", (x, top), (x, foot));
        sheet.tick((x, top));
        sheet.tick((x, foot));
        let what = if self.section.lies.is_single() { "Cover over it" } else { "Cover over the top wire" };
        labels.push(Label { at: (x, f64::midpoint(top, foot)), words: format!("{what} {}", fine(cover, self.system)) });
    }
}

impl Lies {
    fn is_single(&self) -> bool {
        !matches!(self, Self::Wires { count: 2.., .. })
    }
}
