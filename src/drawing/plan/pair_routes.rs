//! The ways of the pairs on the canvas: from each loop, in slots of their own or in one that they share, to the edge, and on to the unit.

use super::placed_loop::PlacedLoop;
use super::projection::SiteProjection;
use crate::drawing::canvas::{Canvas, CanvasPoint};

/// Half of what lies between the two lines of a slot.
const HALF_SLOT: f64 = 1.0;
/// From level to level where pairs of a row lie in slots of their own.
const LEVEL: f64 = 4.0;

/// A way that one slot takes to the edge, and what goes on from there.
pub struct PairRoute<'a> {
    /// The loop, or the row, whose pairs lie in it.
    pub placed: &'a PlacedLoop<'a>,
    /// Slots that lead into it: those of the pairs of a row.
    pub branches: Vec<Vec<CanvasPoint>>,
    /// Its way from the loop to the edge.
    pub to_edge: Vec<CanvasPoint>,
}

impl PairRoute<'_> {
    /// Where it reaches the edge.
    pub fn level(&self) -> f64 {
        self.to_edge.last().map_or(0.0, |(_, y)| *y)
    }

    /// What it lies in together with others from the edge on; `None` where it stays by itself.
    pub fn shared_beyond_edge(&self) -> Option<String> {
        match self.placed.sized.lead_in.shared_with? {
            "row" => None,
            "unit" => Some(self.placed.sized.unit.to_string()),
            _ => Some(String::new()),
        }
    }
}

/// The routes of all loops that have a pair.
pub fn pair_routes<'a>(projection: &SiteProjection, loops: &'a [PlacedLoop<'a>]) -> Vec<PairRoute<'a>> {
    loops.iter().filter(|placed| placed.has_pair()).flat_map(|placed| routes_of(projection, placed)).collect()
}

fn routes_of<'a>(projection: &SiteProjection, placed: &'a PlacedLoop<'a>) -> Vec<PairRoute<'a>> {
    let sized = placed.sized;
    let side = sized.lead_in.unit_side.across();
    let edge = projection.x(side * projection.half());
    let half = sized.across_lane.m() / 2.0;
    // The corner away from the barrier, past which a loop under an arm was moved.
    let inwards = placed.from + placed.to > 0.0;
    let (near, far) = if inwards { (placed.from, placed.to) } else { (placed.to, placed.from) };
    let away = if inwards { -1.0 } else { 1.0 };
    let (near, far) = (projection.y(near), projection.y(far));
    let cut = sized.corner_cut.mm() / 1000.0 * projection.scale;
    let beside = far - away * (cut + 0.12 * (far - near).abs());
    let leg = |centre: f64| projection.x(centre + side * half);
    // From the loop nearest to the edge outwards.
    let mut centres = placed.centres.clone();
    centres.sort_by(|a, b| (side * b).total_cmp(&(side * a)));
    let turn = |centre: f64| leg(centre) - side * (cut + 3.0);
    if sized.lead_in.shared_with.is_some() && centres.len() > 1 {
        let off = (sized.lead_in.in_slot.m() - sized.lead_in.in_shared_slot.m()) * projection.scale;
        let level = far + away * off;
        let branches = centres.iter().map(|centre| vec![(turn(*centre), far), (turn(*centre), level)]).collect();
        let first = centres.last().map_or(edge, |centre| turn(*centre));
        return vec![PairRoute { placed, branches, to_edge: vec![(first, level), (edge, level)] }];
    }
    let own = |(outer, centre): (usize, &f64)| {
        let to_edge = if outer == 0 {
            vec![(leg(*centre), beside), (edge, beside)]
        } else {
            // Out at the far side: the pavement between two loops of a row stays whole.
            let level = far + away * (HALF_SLOT + LEVEL * outer as f64);
            vec![(turn(*centre), far), (turn(*centre), level), (edge, level)]
        };
        PairRoute { placed, branches: Vec::new(), to_edge }
    };
    centres.iter().enumerate().map(own).collect()
}

/// The length of a way.
pub fn length(way: &[CanvasPoint]) -> f64 {
    way.windows(2).map(|pair| (pair[1].0 - pair[0].0).hypot(pair[1].1 - pair[0].1)).sum()
}

/// A way in two parts, the first of this length.
pub fn split(way: &[CanvasPoint], at: f64) -> (Vec<CanvasPoint>, Vec<CanvasPoint>) {
    let (mut first, mut second) = (Vec::new(), Vec::new());
    let mut passed = 0.0;
    for pair in way.windows(2) {
        let [from, to] = [pair[0], pair[1]];
        let part = length(pair);
        if first.is_empty() {
            first.push(from);
        }
        if passed + part <= at {
            first.push(to);
        } else if passed < at || second.is_empty() {
            let share = ((at - passed) / part).clamp(0.0, 1.0);
            let end = (from.0 + share * (to.0 - from.0), from.1 + share * (to.1 - from.1));
            first.push(end);
            second.extend([end, to]);
        } else {
            second.push(to);
        }
        passed += part;
    }
    (first, second)
}

/// Draws a slot as two lines beside its way, which turns at right angles only.
pub fn draw_slot(canvas: &mut Canvas, way: &[CanvasPoint]) {
    if length(way) <= 0.0 {
        return;
    }
    let mut way = way.to_vec();
    way.dedup_by(|a, b| (a.0 - b.0).hypot(a.1 - b.1) < 1e-6);
    let normal = |from: CanvasPoint, to: CanvasPoint| {
        let long = (to.0 - from.0).hypot(to.1 - from.1);
        ((to.1 - from.1) / long, (from.0 - to.0) / long)
    };
    let normals: Vec<CanvasPoint> = way.windows(2).map(|pair| normal(pair[0], pair[1])).collect();
    let offset = |index: usize| match (index.checked_sub(1).and_then(|before| normals.get(before)), normals.get(index))
    {
        (Some(before), Some(after)) if (before.0 * after.0 + before.1 * after.1).abs() < 0.5 => {
            (before.0 + after.0, before.1 + after.1)
        }
        (Some(one), _) | (None, Some(one)) => *one,
        (None, None) => (0.0, 0.0),
    };
    for side in [-HALF_SLOT, HALF_SLOT] {
        let moved = |(index, (x, y)): (usize, &CanvasPoint)| (x + side * offset(index).0, y + side * offset(index).1);
        canvas.polyline("line slot", &way.iter().enumerate().map(moved).collect::<Vec<_>>());
    }
}
