//! The lane, what closes it, how far its leaves sweep, and the directions of travel.

use super::projection::SiteProjection;
use crate::calculation::report::Statement;
use crate::drawing::canvas::{Canvas, CanvasPoint, WIDTH};
use crate::drawing::text_metrics::{TEXT_SIZE, max_width};
use crate::practice::site::Barrier;
use crate::wording::Reader;

/// The strip above and below the site that holds an arrow and a word.
pub const STRIP: f64 = 30.0;
/// How thick a leaf is drawn, units.
const LEAF_THICKNESS: f64 = 4.0;
/// The side of a post, units.
const POST_SIDE: f64 = 8.0;

/// Draws the lane and its barrier.
pub fn draw(canvas: &mut Canvas, projection: &SiteProjection, barrier: Barrier, has_exit: bool, reader: Reader) {
    lane(canvas, projection);
    match barrier {
        Barrier::SwingGate => {
            leaf(canvas, projection, -1.0, projection.width);
            posts(canvas, projection);
        }
        Barrier::SwingGatePair => {
            leaf(canvas, projection, -1.0, projection.half());
            leaf(canvas, projection, 1.0, projection.half());
            posts(canvas, projection);
        }
        Barrier::BarrierArm => arm(canvas, projection),
        Barrier::None => {
            let (left, right) = (projection.at(-projection.half(), 0.0), projection.at(projection.half(), 0.0));
            canvas.line("chain", (left.0 - POST_SIDE, left.1), (right.0 + POST_SIDE, right.1));
        }
        Barrier::SlideGate | Barrier::VerticalLiftGate | Barrier::OverheadDoor => {
            panel(canvas, projection, -projection.half(), projection.half());
            posts(canvas, projection);
        }
    }
    directions(canvas, projection, barrier, has_exit, reader);
}

/// The edges of the lane, the kerb hatched beside them, and zigzag lines where a stretch is shortened.
fn lane(canvas: &mut Canvas, projection: &SiteProjection) {
    for side in [-1.0, 1.0] {
        let x = projection.x(side * projection.half());
        canvas.line("line", (x, projection.top), (x, projection.bottom));
        canvas.hatch("fine", (x, projection.top), (x + side * 4.0, projection.bottom), 6.0);
    }
    for middle in &projection.breaks {
        let y = projection.y(*middle);
        let (left, right) = (projection.x(-projection.half()) - 8.0, projection.x(projection.half()) + 8.0);
        canvas.rectangle("paper", (left, y - 3.0), (right, y + 3.0));
        for y in [y - 3.0, y + 3.0] {
            let middle = f64::midpoint(left, right);
            let zigzag =
                [(left, y), (middle - 5.0, y), (middle - 2.0, y - 5.0), (middle + 2.0, y + 5.0), (middle + 5.0, y)];
            canvas.polyline("line", &[&zigzag[..], &[(right, y)]].concat());
        }
    }
}

/// A leaf in the line of the barrier, hatched because it stands above the ground.
fn panel(canvas: &mut Canvas, projection: &SiteProjection, from: f64, to: f64) {
    let (left, right) = (projection.at(from, 0.0), projection.at(to, 0.0));
    let (from, to) = ((left.0, left.1 - LEAF_THICKNESS / 2.0), (right.0, right.1 + LEAF_THICKNESS / 2.0));
    canvas.rectangle("paper", from, to);
    canvas.hatch("line", from, to, 3.0);
    canvas.rectangle("line", from, to);
}

/// A leaf hinged at one edge: closed, dashed where it stands open, and the quarter circle that it sweeps.
fn leaf(canvas: &mut Canvas, projection: &SiteProjection, side: f64, length: f64) {
    let hinge = side * projection.half();
    let tip = hinge - side * length;
    panel(canvas, projection, hinge, tip);
    let radius = projection.scale * length;
    let closed = projection.at(hinge, 0.0);
    let open = (closed.0, closed.1 - radius);
    // Inside the lane, so that it does not coincide with its edge.
    let edge = closed.0 - side * LEAF_THICKNESS;
    canvas.polyline("dashed", &[(edge, closed.1), (edge, open.1), (closed.0, open.1)]);
    canvas.arc("chain", projection.at(tip, 0.0), open, radius, side > 0.0);
}

/// A thin arm on a post at the right.
fn arm(canvas: &mut Canvas, projection: &SiteProjection) {
    let (left, right) = (projection.at(-projection.half(), 0.0), projection.at(projection.half(), 0.0));
    for y in [left.1 - 1.2, left.1 + 1.2] {
        canvas.line("line", (left.0, y), (right.0, y));
    }
    post(canvas, right.0, right.1, 1.0);
}

fn posts(canvas: &mut Canvas, projection: &SiteProjection) {
    for side in [-1.0, 1.0] {
        post(canvas, projection.x(side * projection.half()), projection.y(0.0), side);
    }
}

fn post(canvas: &mut Canvas, x: f64, y: f64, side: f64) {
    let (from, to) = ((x, y - POST_SIDE / 2.0), (x + side * POST_SIDE, y + POST_SIDE / 2.0));
    canvas.rectangle("paper", from, to);
    canvas.hatch("line", from, to, 3.0);
    canvas.rectangle("line", from, to);
}

/// Arrows for vehicles that come in, and for those that leave.
fn directions(canvas: &mut Canvas, projection: &SiteProjection, barrier: Barrier, has_exit: bool, reader: Reader) {
    let x = projection.x(0.0);
    let (above, below) = (projection.top - 7.0, projection.bottom + 7.0);
    let is_lane = barrier == Barrier::None;
    let outside =
        if is_lane { Statement::new("drawings-plan-direction") } else { Statement::new("drawings-plan-way-in") };
    canvas.arrow("heavy", (x, below + 18.0), (x, below));
    beside_arrow(canvas, (x, below + 13.0), &reader.say(&outside));
    if has_exit {
        canvas.arrow("heavy", (x, above - 18.0), (x, above));
        beside_arrow(canvas, (x, above - 5.0), &reader.say(&Statement::new("drawings-plan-way-out")));
    } else if !is_lane {
        canvas.text("middle", (x, above - 5.0), &reader.say(&Statement::new("drawings-plan-inside")));
    }
}

/// Words at the right of an arrow, nearer to it where they would leave the drawing.
fn beside_arrow(canvas: &mut Canvas, (x, baseline): CanvasPoint, words: &str) {
    let left = (x + 9.0).min(WIDTH - 2.0 - max_width(words, TEXT_SIZE, false));
    canvas.text("", (left, baseline), words);
}
