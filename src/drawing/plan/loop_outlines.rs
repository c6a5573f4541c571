//! The loops on the plan: their outlines, their lead-ins as far as the kerb, and the letters that the schedule explains.

use super::placed_loop::PlacedLoop;
use super::projection::SiteProjection;
use crate::calculation::input::Shape;
use crate::drawing::canvas::{Canvas, CanvasPoint};
use crate::drawing::label_layout::spread_labels;
use crate::drawing::text_metrics::MIDDLE_TO_BASELINE;

/// The x coordinate of the letters.
const LETTERS: f64 = 346.0;
/// The radius of the circle round each letter.
const RADIUS: f64 = 8.0;
/// Where the line from a letter meets its loop, as a share of the leg from the end towards the barrier: clear of the arm above the
/// loop and of its lead-in.
const LEADER_SHARE: f64 = 0.35;
/// How far a lead-in is drawn beyond the edge of the lane.
const BEYOND_KERB: f64 = 8.0;

/// Draws the loops.
pub fn draw(canvas: &mut Canvas, projection: &SiteProjection, loops: &[PlacedLoop<'_>]) {
    for placed in loops {
        for (index, (left, right)) in placed.edges().enumerate() {
            outline(canvas, projection, placed, left, right);
            lead_in(canvas, projection, placed, index);
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

/// The lead-in, as far as the kerb on its side. From an inner loop of a row it passes the outer ones on the side away from the
/// barrier.
fn lead_in(canvas: &mut Canvas, projection: &SiteProjection, placed: &PlacedLoop<'_>, index: usize) {
    let count = placed.centres.len();
    let to_right = 2 * index >= count.saturating_sub(1);
    let side = if to_right { 1.0 } else { -1.0 };
    let outer = if to_right { count - 1 - index } else { index };
    let half = placed.sized.across_lane.m() / 2.0;
    let edge = projection.x(placed.centres[index] + side * half);
    let kerb = projection.x(side * projection.half()) + side * BEYOND_KERB;
    let inwards = placed.from + placed.to > 0.0;
    // The corner away from the barrier, past which a loop under an arm was moved.
    let (near, far) = if inwards { (placed.from, placed.to) } else { (placed.to, placed.from) };
    let away = if inwards { -1.0 } else { 1.0 };
    let cut = placed.sized.corner_cut.mm() / 1000.0 * projection.scale;
    let leg = (projection.y(far) - projection.y(near)).abs();
    let start = projection.y(far) - away * (cut + 0.12 * leg);
    for pair in [-1.0, 1.0] {
        if outer == 0 {
            canvas.line("line", (edge, start + pair), (kerb, start + pair));
            continue;
        }
        // Out at the far side: the pavement between two loops of a row stays whole.
        let turn = edge - side * (cut + 3.0 + pair * away);
        let level = projection.y(far) + away * (1.0 + 4.0 * outer as f64) + pair;
        canvas.polyline("line", &[(turn, projection.y(far)), (turn, level), (kerb, level)]);
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
