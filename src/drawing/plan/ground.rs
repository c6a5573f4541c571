//! From the ground to the sheet: one scale both ways, the inside up, long empty stretches broken.

use super::coils::Coil;
use crate::calculation::input::OpeningEcho;
use crate::drawing::sheet::{Point, WIDTH};
use crate::practice::site::Barrier;
use crate::vocabulary::Vocabulary;

/// The left and right edge of the part of the sheet that shows the ground.
pub const LEFT: f64 = 104.0;
/// See [`LEFT`].
pub const RIGHT: f64 = 330.0;
/// The middle of the lane.
const MIDDLE: f64 = f64::midpoint(LEFT, RIGHT);
/// The most that the opening takes of it: posts and lead-ins need room beside it.
const WIDEST: f64 = 198.0;
/// The most that the ground takes down the sheet.
const HIGHEST: f64 = 400.0;
/// The largest scale, units to the metre.
const LARGEST: f64 = 60.0;
/// How far the ground reaches beyond what lies on it, metres.
const BEYOND_M: f64 = 0.4;
/// The longest empty stretch that is drawn whole, and what is drawn of a longer one, metres.
const MAX_EMPTY_M: f64 = 8.0;
/// See [`MAX_EMPTY_M`].
const BROKEN_TO_M: f64 = 3.0;

/// The ground as the sheet shows it. Along the way the line of the barrier is at 0 and the inside positive; across it, 0 is the
/// middle of the opening.
pub struct Ground {
    /// Units to the metre.
    pub scale: f64,
    /// The clear width of the opening, metres.
    pub width: f64,
    /// How far a leaf sweeps past the line, metres.
    pub sweep: f64,
    /// The middle of each broken stretch, metres along.
    pub breaks: Vec<f64>,
    /// The upper edge of the ground on the sheet.
    pub top: f64,
    /// The lower edge.
    pub bottom: f64,
    /// Places along the way, metres, and where they are shown: metres from the lower edge.
    knots: Vec<(f64, f64)>,
}

impl Ground {
    /// The ground of an opening with its loops, drawn from `top` down.
    pub fn of(opening: &OpeningEcho, coils: &[Coil<'_>], top: f64) -> Self {
        let width = opening.width.m;
        let barrier = Barrier::ALL.iter().find(|barrier| barrier.code() == opening.barrier);
        let sweep = width * barrier.map_or(0.0, |barrier| barrier.sweep_share());
        let mut taken: Vec<_> = coils.iter().map(|coil| (coil.from - BEYOND_M, coil.to + BEYOND_M)).collect();
        taken.push((-BEYOND_M, sweep + BEYOND_M));
        taken.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut knots: Vec<(f64, f64)> = Vec::new();
        let mut breaks = Vec::new();
        for (from, to) in taken {
            let Some(&(end, shown)) = knots.last() else {
                knots.extend([(from, 0.0), (to, to - from)]);
                continue;
            };
            let empty = from - end;
            let shown = if empty > MAX_EMPTY_M {
                breaks.push(f64::midpoint(from, end));
                knots.push((from, shown + BROKEN_TO_M));
                shown + BROKEN_TO_M
            } else {
                shown + empty
            };
            if to > end {
                knots.push((to, shown + to - from));
            }
        }
        let length = knots.last().map_or(1.0, |(_, shown)| *shown);
        let scale = LARGEST.min(WIDEST / width).min(HIGHEST / length);
        Self { scale, width, sweep, breaks, top, bottom: top + scale * length, knots }
    }

    /// Moves the ground down the sheet.
    pub fn lower(&mut self, by: f64) {
        self.top += by;
        self.bottom += by;
    }

    /// The place on the sheet of a point so far across, to the right as one drives in, and so far along.
    pub fn at(&self, across: f64, along: f64) -> Point {
        (self.x(across), self.y(along))
    }

    /// Across the lane.
    pub fn x(&self, across: f64) -> f64 {
        MIDDLE + self.scale * across
    }

    /// Along the way.
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

/// The right edge must leave room for the letters.
const _: () = assert!(RIGHT + 26.0 < WIDTH);
