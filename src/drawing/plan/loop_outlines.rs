//! The loops on the plan: their cuts and outlines, and the letters that the schedule explains.

use super::placed_loop::PlacedLoop;
use super::projection::SiteProjection;
use crate::calculation::input::Shape;
use crate::drawing::canvas::{Canvas, CanvasPoint};
use crate::drawing::label_layout::spread_labels;
use crate::drawing::text_metrics::MIDDLE_TO_BASELINE;
use crate::practice::materials::Corner;

/// The x coordinate of the letters.
const LETTERS: f64 = 328.0;
/// The radius of the circle round each letter.
const RADIUS: f64 = 8.0;
/// Where the line from a letter meets its loop, as a share of the leg from the end towards the barrier: clear of the arm above the
/// loop and of its lead-in.
const LEADER_SHARE: f64 = 0.35;

/// Draws the loops.
pub fn draw(canvas: &mut Canvas, projection: &SiteProjection, loops: &[PlacedLoop<'_>]) {
    for placed in loops {
        for (index, (left, right)) in placed.edges().enumerate() {
            cuts(canvas, projection, placed, left, right);
            outline(canvas, projection, placed, left, right);
            if let Some(row) = &placed.sized.side_by_side {
                winding_sense(
                    canvas,
                    projection,
                    placed,
                    f64::midpoint(left, right),
                    row.wound.get(index) == Some(&"clockwise"),
                );
            }
        }
    }
    letters(canvas, projection, loops);
}

/// The path of the wire: a rectangle with its corners cut, and the centre slot of a quadrupole.
fn outline(canvas: &mut Canvas, projection: &SiteProjection, placed: &PlacedLoop<'_>, left: f64, right: f64) {
    let cut = placed.sized.corner_cut.mm() / 1000.0;
    let (from, to) = (placed.from, placed.to);
    let corners = [
        (left + cut, from),
        (right - cut, from),
        (right, from + cut),
        (right, to - cut),
        (right - cut, to),
        (left + cut, to),
        (left, to - cut),
        (left, from + cut),
    ];
    let corners: Vec<CanvasPoint> = corners.into_iter().map(|(across, along)| projection.at(across, along)).collect();
    canvas.polygon("wire", &corners);
    if placed.sized.shape == Shape::Quadrupole {
        let middle = f64::midpoint(left, right);
        canvas.line("wire", projection.at(middle, from), projection.at(middle, to));
    }
}

/// The saw cuts of a loop: its sides and diagonals with what the blade runs on past their ends, under the path of the wire. Sides end at
/// the diagonals, unless the square is cut full.
fn cuts(canvas: &mut Canvas, projection: &SiteProjection, placed: &PlacedLoop<'_>, left: f64, right: f64) {
    let (Some(corner), Some(run_out)) = (placed.sized.corner, placed.sized.run_out) else { return };
    if corner.is_cored() {
        return;
    }
    let (leg, run) = (placed.sized.corner_cut.mm() / 1000.0, run_out.mm() / 1000.0);
    let (from, to) = (placed.from, placed.to);
    let past = if corner == Corner::DiagonalFull { (run - leg).max(0.0) } else { run - leg };
    for along in [from, to] {
        canvas.line("fine", projection.at(left - past, along), projection.at(right + past, along));
    }
    for across in [left, right] {
        canvas.line("fine", projection.at(across, from - past), projection.at(across, to + past));
    }
    if corner.is_diagonal() {
        let on = run * std::f64::consts::FRAC_1_SQRT_2;
        for (across, inwards) in [(left, 1.0), (right, -1.0)] {
            for (along, up) in [(from, 1.0), (to, -1.0)] {
                let outer = (across - inwards * on, along + up * (leg + on));
                let inner = (across + inwards * (leg + on), along - up * on);
                canvas.line("fine", projection.at(outer.0, outer.1), projection.at(inner.0, inner.1));
            }
        }
    }
}

/// The sense in which a loop of a row is wound: an arrow head on its upper side.
fn winding_sense(
    canvas: &mut Canvas,
    projection: &SiteProjection,
    placed: &PlacedLoop<'_>,
    middle: f64,
    clockwise: bool,
) {
    let (x, y) = projection.at(middle, placed.to);
    let direction = if clockwise { 1.0 } else { -1.0 };
    canvas.arrow_head("wire", (x - direction, y), (x + 2.5 * direction, y));
}

/// Where the line from a letter meets its loop, metres along.
fn leader_end(placed: &PlacedLoop<'_>) -> f64 {
    let leg = placed.to - placed.from;
    if placed.from > 0.0 { placed.from + LEADER_SHARE * leg } else { placed.to - LEADER_SHARE * leg }
}

/// A letter for each loop beside the lane, with a line to it.
fn letters(canvas: &mut Canvas, projection: &SiteProjection, loops: &[PlacedLoop<'_>]) {
    let mut order: Vec<_> = loops.iter().map(|placed| (projection.y(leader_end(placed)), placed)).collect();
    order.sort_by(|a, b| a.0.total_cmp(&b.0));
    let wanted: Vec<_> = order.iter().map(|(y, _)| (*y, 2.0 * RADIUS + 2.0)).collect();
    let middles = spread_labels(&wanted, projection.top - 10.0, projection.bottom + 10.0);
    for ((y, placed), middle) in order.into_iter().zip(middles) {
        let last = placed.edges().last().map_or(0.0, |(_, right)| right);
        let inset = (0.25 * placed.sized.across_lane.m() * projection.scale).min(8.0);
        let end = (projection.x(last) - inset, y);
        canvas.line("fine", end, (LETTERS - RADIUS, middle));
        canvas.circle("wiredot", end, 1.8);
        canvas.circle("balloon", (LETTERS, middle), RADIUS);
        canvas.text("strong middle", (LETTERS, middle + MIDDLE_TO_BASELINE), &placed.sized.mark.to_string());
    }
}
