//! The way of the pairs to the unit: slots to the edge and past it, pull boxes, conduit, where it crosses the line of the barrier, and the
//! unit. And where a sliding leaf goes when it opens.

use super::pair_routes::{PairRoute, draw_slot, length, pair_routes, split};
use super::placed_loop::PlacedLoop;
use super::projection::SiteProjection;
use crate::drawing::canvas::{Canvas, CanvasPoint};
use crate::drawing::text_metrics::MIDDLE_TO_BASELINE;
use crate::practice::roles::Side;
use crate::practice::site::{Barrier, UnitSide};

/// How far beyond the edge of the lane the middle of the unit is drawn.
const UNIT: f64 = 14.0;
/// Half the side of the unit.
const HALF_UNIT: f64 = 6.5;
/// How far beyond the edge the nearest and the farthest of several ways run along it.
const COLUMNS: (f64, f64) = (9.5, 18.5);
/// How far inside the line the unit is drawn, units.
const INSIDE: f64 = 14.0;
/// How far beyond the edge a leaf that stands open is drawn before it is broken off.
const RUN_BACK: f64 = 20.0;
/// Half the thickness of that leaf.
const HALF_LEAF: f64 = 2.0;
/// Half the side of a pull box.
const HALF_BOX: f64 = 3.5;

/// The loops whose pairs cross the line of the barrier.
pub fn crossing<'a>(loops: &'a [PlacedLoop<'a>]) -> Vec<&'a PlacedLoop<'a>> {
    loops.iter().filter(|placed| placed.side == Side::Outside && placed.has_pair()).collect()
}

/// Draws the pairs, the unit and the conduit to it, and a sliding leaf as it stands open.
pub fn draw(
    canvas: &mut Canvas,
    projection: &SiteProjection,
    loops: &[PlacedLoop<'_>],
    barrier: Barrier,
    side: UnitSide,
) {
    let (side, line) = (side.across(), projection.y(0.0));
    let edge = projection.x(side * projection.half());
    if barrier == Barrier::SlideGate {
        // The leaf parks beyond the opening; it is broken off here.
        let (from, to) = (edge + side * 8.0, edge + side * RUN_BACK);
        let (left, right) = (from.min(to), from.max(to));
        canvas.rectangle("dashed", (left, line - HALF_LEAF), (right, line + HALF_LEAF));
    }
    let routes = pair_routes(projection, loops);
    if routes.is_empty() {
        return;
    }
    let unit = (edge + side * UNIT, line - INSIDE);
    let columns = columns(&routes, unit.1);
    let mut boxes = Vec::new();
    for (route, column) in routes.iter().zip(columns) {
        let x = edge + side * column;
        boxes.extend(draw_route(canvas, projection, route, x, unit));
        if route.placed.side == Side::Outside {
            canvas.circle("wiredot", (x, line), 2.2);
        }
    }
    for at in boxes {
        draw_pull_box(canvas, at);
    }
    canvas.rectangle("paper", (unit.0 - HALF_UNIT, unit.1 - HALF_UNIT), (unit.0 + HALF_UNIT, unit.1 + HALF_UNIT));
    canvas.rectangle("line", (unit.0 - HALF_UNIT, unit.1 - HALF_UNIT), (unit.0 + HALF_UNIT, unit.1 + HALF_UNIT));
    canvas.text("strong middle", (unit.0, unit.1 + MIDDLE_TO_BASELINE), "U");
}

/// How far beyond the edge each way runs along it: apart where they lie apart, and the one that comes from farthest outermost.
fn columns(routes: &[PairRoute<'_>], unit: f64) -> Vec<f64> {
    let is_above = |route: &PairRoute<'_>| route.level() < unit;
    // What lies together beyond the edge is one way.
    let same = |a: &PairRoute<'_>, b: &PairRoute<'_>| {
        std::ptr::eq(a, b) || (a.shared_beyond_edge().is_some() && a.shared_beyond_edge() == b.shared_beyond_edge())
    };
    let column = |route: &PairRoute<'_>| {
        let mut ways: Vec<&PairRoute<'_>> = Vec::new();
        let mut beside: Vec<_> = routes.iter().filter(|other| is_above(other) == is_above(route)).collect();
        beside.sort_by(|a, b| (a.level() - unit).abs().total_cmp(&(b.level() - unit).abs()));
        for other in beside {
            if !ways.iter().any(|way| same(way, other)) {
                ways.push(other);
            }
        }
        let place = ways.iter().position(|way| same(way, route)).unwrap_or(0);
        match ways.len() {
            0 | 1 => UNIT,
            count => COLUMNS.0 + (COLUMNS.1 - COLUMNS.0) * place as f64 / (count - 1) as f64,
        }
    };
    routes.iter().map(column).collect()
}

/// Draws the slots of a route and its conduit; returns where its pull box stands.
fn draw_route(
    canvas: &mut Canvas,
    projection: &SiteProjection,
    route: &PairRoute<'_>,
    x: f64,
    unit: CanvasPoint,
) -> Option<CanvasPoint> {
    let pair = &route.placed.sized.lead_in;
    let (level, from_edge) = (route.level(), pair.from_edge.m());
    let end = if level > unit.1 { unit.1 + HALF_UNIT } else { unit.1 - HALF_UNIT };
    let beyond = if (level - unit.1).abs() > HALF_UNIT { vec![(x, level), (x, end)] } else { vec![(unit.0, level)] };
    let mut way = route.to_edge.clone();
    let to_edge = length(&way);
    way.extend(beyond);
    let past_edge = length(&way) - to_edge;
    // Beyond the edge the way is not to scale: slot and conduit take their shares of it.
    let sawn = match pair.slot_end {
        "no_slot" => 0.0,
        "before_edge" => (to_edge - from_edge * projection.scale).max(0.0),
        "past_edge" => to_edge + past_edge * from_edge / (from_edge + pair.in_conduit.m()),
        _ => to_edge,
    };
    let (slot, rest) = split(&way, sawn);
    if sawn > 0.0 {
        for branch in &route.branches {
            draw_slot(canvas, branch);
        }
        draw_slot(canvas, &slot);
    }
    if pair.in_conduit.m() > 0.0 && rest.len() > 1 {
        canvas.polyline("dashed conduit", &rest);
    }
    pair.has_pull_box.then(|| slot.last().copied()).flatten()
}

/// A box with its diagonals.
fn draw_pull_box(canvas: &mut Canvas, (x, y): CanvasPoint) {
    let (from, to) = ((x - HALF_BOX, y - HALF_BOX), (x + HALF_BOX, y + HALF_BOX));
    canvas.rectangle("paper", from, to);
    canvas.rectangle("line pullbox", from, to);
    canvas.line("line", from, to);
    canvas.line("line", (from.0, to.1), (to.0, from.1));
}
