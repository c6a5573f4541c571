//! From the site to the canvas: one scale both ways, the inside up, long empty stretches shortened.

use super::placed_loop::PlacedLoop;
use crate::calculation::input::ResolvedOpening;
use crate::drawing::canvas::{CanvasPoint, WIDTH};
use crate::practice::site::Barrier;
use crate::quantity::output::PlanLength;

/// The left edge of the part of the canvas that shows the site.
pub const LEFT: f64 = 104.0;
/// The right edge of that part.
pub const RIGHT: f64 = 312.0;
/// The middle of the lane.
const MIDDLE: f64 = f64::midpoint(LEFT, RIGHT);
/// The largest width of the opening: posts and lead-ins need space beside it.
const MAX_WIDTH: f64 = 180.0;
/// The largest height of the site.
const MAX_HEIGHT: f64 = 400.0;
/// The largest scale, units per metre.
const MAX_SCALE: f64 = 60.0;
/// How far the lane is drawn beyond what lies on it, metres.
const BEYOND_M: f64 = 0.4;
/// The longest empty stretch that is drawn to scale, metres.
const MAX_EMPTY_M: f64 = 8.0;
/// How long a longer stretch is drawn, metres.
const SHORTENED_M: f64 = 3.0;

/// The site as the canvas shows it. Along the lane the line of the barrier is at 0 and the inside positive; across it, 0 is the
/// middle of the opening.
pub struct SiteProjection {
    /// Units per metre.
    pub scale: f64,
    /// The clear width of the opening, metres.
    pub width: f64,
    /// How far a leaf sweeps past the line, metres.
    pub sweep: f64,
    /// The middle of each shortened stretch, metres along.
    pub breaks: Vec<f64>,
    /// The upper edge of the site on the canvas.
    pub top: f64,
    /// The lower edge.
    pub bottom: f64,
    /// Positions along the lane, metres, and where they are shown: metres from the lower edge.
    knots: Vec<(f64, f64)>,
}

impl SiteProjection {
    /// The site of an opening with its loops, drawn from `top` down.
    pub fn new(opening: &ResolvedOpening, barrier: Barrier, loops: &[PlacedLoop<'_>], top: f64) -> Self {
        let width = PlanLength(opening.width).m();
        let sweep = width * barrier.sweep_share();
        let mut occupied: Vec<_> = loops.iter().map(|placed| (placed.from - BEYOND_M, placed.to + BEYOND_M)).collect();
        occupied.push((-BEYOND_M, sweep + BEYOND_M));
        occupied.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut knots: Vec<(f64, f64)> = Vec::new();
        let mut breaks = Vec::new();
        for (from, to) in occupied {
            let Some(&(end, shown)) = knots.last() else {
                knots.extend([(from, 0.0), (to, to - from)]);
                continue;
            };
            let empty = from - end;
            let shown = if empty > MAX_EMPTY_M {
                breaks.push(f64::midpoint(from, end));
                knots.push((from, shown + SHORTENED_M));
                shown + SHORTENED_M
            } else {
                shown + empty
            };
            if to > end {
                knots.push((to, shown + to - from));
            }
        }
        let length = knots.last().map_or(1.0, |(_, shown)| *shown);
        let scale = MAX_SCALE.min(MAX_WIDTH / width).min(MAX_HEIGHT / length);
        Self { scale, width, sweep, breaks, top, bottom: top + scale * length, knots }
    }

    /// Moves the site down the canvas.
    pub fn move_down(&mut self, by: f64) {
        self.top += by;
        self.bottom += by;
    }

    /// The point of the canvas for metres across, to the right as one drives in, and metres along.
    pub fn at(&self, across: f64, along: f64) -> CanvasPoint {
        (self.x(across), self.y(along))
    }

    /// The x coordinate of metres across.
    pub fn x(&self, across: f64) -> f64 {
        MIDDLE + self.scale * across
    }

    /// The y coordinate of metres along.
    pub fn y(&self, along: f64) -> f64 {
        let pairs = self.knots.windows(2);
        let shown = pairs
            .map(|pair| [pair[0], pair[1]])
            .find(|[_, (to, _)]| along <= *to)
            .or_else(|| self.knots.last().map(|last| [(last.0 - 1.0, last.1 - 1.0), *last]))
            .map_or(0.0, |[(from, low), (to, high)]| low + (along - from) * (high - low) / (to - from));
        self.bottom - self.scale * shown
    }

    /// Half the opening, metres.
    pub fn half(&self) -> f64 {
        self.width / 2.0
    }
}

/// The right edge must leave space for the letters.
const _: () = assert!(RIGHT + 26.0 < WIDTH);
