//! The lane, what closes it, how far its leaves sweep, and the directions of travel.

use super::ground::Ground;
use crate::drawing::sheet::Sheet;

/// The strip above and below the ground that holds an arrow and a word.
pub const STRIP: f64 = 30.0;
/// How thick a leaf is drawn at the least, units.
const LEAF: f64 = 4.0;
/// The side of a post, units.
const POST: f64 = 8.0;

/// Draws the lane and its barrier.
pub fn draw(sheet: &mut Sheet, ground: &Ground, barrier: &str, has_exit: bool) {
    lane(sheet, ground);
    match barrier {
        "swing_gate" => {
            leaf(sheet, ground, -1.0, ground.width);
            posts(sheet, ground);
        }
        "swing_gate_pair" => {
            leaf(sheet, ground, -1.0, ground.half());
            leaf(sheet, ground, 1.0, ground.half());
            posts(sheet, ground);
        }
        "barrier_arm" => arm(sheet, ground),
        "none" => {
            let (left, right) = (ground.at(-ground.half(), 0.0), ground.at(ground.half(), 0.0));
            sheet.line("chain", (left.0 - POST, left.1), (right.0 + POST, right.1));
        }
        _ => {
            panel(sheet, ground, -ground.half(), ground.half());
            posts(sheet, ground);
        }
    }
    directions(sheet, ground, barrier, has_exit);
}

/// The edges of the lane, the kerb hatched beside them, and where a stretch is broken.
fn lane(sheet: &mut Sheet, ground: &Ground) {
    for side in [-1.0, 1.0] {
        let x = ground.x(side * ground.half());
        sheet.line("line", (x, ground.top), (x, ground.bottom));
        sheet.hatch("fine", (x, ground.top), (x + side * 4.0, ground.bottom), 6.0);
    }
    for middle in &ground.breaks {
        let y = ground.y(*middle);
        let (left, right) = (ground.x(-ground.half()) - 8.0, ground.x(ground.half()) + 8.0);
        sheet.rectangle("paper", (left, y - 3.0), (right, y + 3.0));
        for y in [y - 3.0, y + 3.0] {
            let middle = f64::midpoint(left, right);
            let zigzag =
                [(left, y), (middle - 5.0, y), (middle - 2.0, y - 5.0), (middle + 2.0, y + 5.0), (middle + 5.0, y)];
            sheet.polyline("line", &[&zigzag[..], &[(right, y)]].concat());
        }
    }
}

/// A leaf in the line of the barrier, hatched as what stands above the ground.
fn panel(sheet: &mut Sheet, ground: &Ground, from: f64, to: f64) {
    let (left, right) = (ground.at(from, 0.0), ground.at(to, 0.0));
    let (from, to) = ((left.0, left.1 - LEAF / 2.0), (right.0, right.1 + LEAF / 2.0));
    sheet.rectangle("paper", from, to);
    sheet.hatch("line", from, to, 3.0);
    sheet.rectangle("line", from, to);
}

/// A leaf hung at one edge: closed, its open place dashed, and the quarter circle that it sweeps.
fn leaf(sheet: &mut Sheet, ground: &Ground, side: f64, length: f64) {
    let hinge = side * ground.half();
    let tip = hinge - side * length;
    panel(sheet, ground, hinge, tip);
    let radius = ground.scale * length;
    let foot = ground.at(hinge, 0.0);
    let open = (foot.0, foot.1 - radius);
    // Within the lane, so that it is told from its edge.
    let edge = foot.0 - side * LEAF;
    sheet.polyline("dashed", &[(edge, foot.1), (edge, open.1), (foot.0, open.1)]);
    sheet.arc("chain", ground.at(tip, 0.0), open, radius, side > 0.0);
}

/// A thin arm on a post at the right.
fn arm(sheet: &mut Sheet, ground: &Ground) {
    let (left, right) = (ground.at(-ground.half(), 0.0), ground.at(ground.half(), 0.0));
    for y in [left.1 - 1.2, left.1 + 1.2] {
        sheet.line("line", (left.0, y), (right.0, y));
    }
    post(sheet, right.0, right.1, 1.0);
}

fn posts(sheet: &mut Sheet, ground: &Ground) {
    for side in [-1.0, 1.0] {
        post(sheet, ground.x(side * ground.half()), ground.y(0.0), side);
    }
}

fn post(sheet: &mut Sheet, x: f64, y: f64, side: f64) {
    let (from, to) = ((x, y - POST / 2.0), (x + side * POST, y + POST / 2.0));
    sheet.rectangle("paper", from, to);
    sheet.hatch("line", from, to, 3.0);
    sheet.rectangle("line", from, to);
}

/// Where vehicles come from, and where those go that leave.
fn directions(sheet: &mut Sheet, ground: &Ground, barrier: &str, has_exit: bool) {
    let x = ground.x(0.0);
    let (above, below) = (ground.top - 7.0, ground.bottom + 7.0);
    let (inside, outside) = if barrier == "none" { ("", "direction of travel") } else { ("inside", "outside, way in") };
    sheet.arrow("heavy", (x, below + 18.0), (x, below));
    sheet.text("", (x + 9.0, below + 13.0), outside);
    if has_exit {
        sheet.arrow("heavy", (x, above - 18.0), (x, above));
        sheet.text("", (x + 9.0, above - 5.0), "inside, way out");
    } else if !inside.is_empty() {
        sheet.text("middle", (x, above - 5.0), inside);
    }
}
