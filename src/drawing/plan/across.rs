//! Sizes across the lane: the opening, and the setbacks, loops and gaps of each row.

use uom::si::f64::Length;
use uom::si::length::meter;

use super::placed_loop::PlacedLoop;
use super::projection::{LEFT, RIGHT, SiteProjection};
use crate::calculation::report::Statement;
use crate::drawing::canvas::{Canvas, GAP};
use crate::drawing::dimension_text::{format_plan_both, format_plan_lines};
use crate::drawing::label_layout::spread_labels;
use crate::drawing::text_metrics::{TEXT_SIZE, lines_height, max_width, wrap};
use crate::quantity::output::PlanLength;
use crate::wording::Reader;

/// The right edge of the names of rows.
const NAMES: f64 = 96.0;
/// The shortest length that is dimensioned, metres.
const MIN_LENGTH_M: f64 = 0.01;
/// Rows whose edges differ by less are drawn as one, metres.
const SAME_ROW_TOLERANCE_M: f64 = 0.005;

/// Loops, or rows of loops, that lie one behind the other.
struct DimensionRow<'a> {
    /// The left and right edge of each loop, metres across.
    edges: Vec<(f64, f64)>,
    placed: &'a PlacedLoop<'a>,
    letters: String,
}

/// Draws the dimensions across; returns the lower edge.
pub fn draw(
    canvas: &mut Canvas,
    projection: &SiteProjection,
    loops: &[PlacedLoop<'_>],
    opening: PlanLength,
    reader: Reader,
    top: f64,
) -> f64 {
    let mut rows: Vec<DimensionRow<'_>> = Vec::new();
    for placed in loops {
        let edges: Vec<_> = placed.edges().collect();
        match rows.iter_mut().find(|row| is_same(&row.edges, &edges)) {
            Some(row) => row.letters += &format!(" {}", placed.sized.mark),
            None => rows.push(DimensionRow { edges, placed, letters: placed.sized.mark.to_string() }),
        }
    }
    let bottom = rows.iter().fold(top + GAP, |top, row| row.draw(canvas, projection, reader, top));
    let y = bottom + 4.0;
    chain(canvas, projection, &[-projection.half(), projection.half()], y);
    canvas.text("strong end", (NAMES, y + 4.0), &reader.say(&Statement::new("drawings-plan-width")));
    canvas.text("middle", (projection.x(0.0), y + 13.0), &format_plan_both(opening, reader));
    y + 13.0 + GAP
}

fn is_same(a: &[(f64, f64)], b: &[(f64, f64)]) -> bool {
    let near = |a: f64, b: f64| (a - b).abs() < SAME_ROW_TOLERANCE_M;
    a.len() == b.len() && a.iter().zip(b).all(|(a, b)| near(a.0, b.0) && near(a.1, b.1))
}

impl DimensionRow<'_> {
    /// Draws the row; returns the lower edge. The left strip, the first loop and the first gap are dimensioned, and the right strip where it
    /// differs: the others are equal.
    fn draw(&self, canvas: &mut Canvas, projection: &SiteProjection, reader: Reader, top: f64) -> f64 {
        let y = top + 4.0;
        let ends = self.edges.iter().flat_map(|(left, right)| [*left, *right]);
        let ends: Vec<_> = [-projection.half()].into_iter().chain(ends).chain([projection.half()]).collect();
        chain(canvas, projection, &ends, y);
        for (line, letters) in wrap(&self.letters, NAMES, TEXT_SIZE, true).iter().enumerate() {
            canvas.text("strong end", (NAMES, y + 4.0 + lines_height(line)), letters);
        }

        let sized = self.placed.sized;
        let gap = sized.side_by_side.as_ref().map(|row| row.gap);
        let strip = |pair: &[f64]| PlanLength(Length::new::<meter>(pair[1] - pair[0]));
        let (left, right) = (strip(&ends[..2]), strip(&ends[ends.len() - 2..]));
        let is_off_middle = (left.m() - right.m()).abs() > SAME_ROW_TOLERANCE_M;
        let lengths = [Some(left), Some(sized.across_lane), gap];
        let last = ends.windows(2).last().filter(|_| is_off_middle).map(|pair| (Some(right), pair));
        let dimensions: Vec<_> = lengths
            .into_iter()
            .zip(ends.windows(2))
            .chain(last)
            .filter_map(|(length, pair)| Some((length?, f64::midpoint(pair[0], pair[1]))))
            .filter(|(length, _)| length.m() >= MIN_LENGTH_M)
            .map(|(length, middle)| (projection.x(middle), format_plan_lines(length, reader)))
            .collect();
        let extent =
            |words: &[String; 2]| words.iter().map(|line| max_width(line, TEXT_SIZE, false)).fold(0.0, f64::max) + 4.0;
        let wanted: Vec<_> = dimensions.iter().map(|(x, words)| (*x, extent(words))).collect();
        let middles = spread_labels(&wanted, LEFT, RIGHT + 20.0);
        for ((x, words), middle) in dimensions.iter().zip(middles) {
            canvas.polyline("fine", &[(*x, y + 2.0), (middle, y + 7.0)]);
            for (line, words) in words.iter().enumerate() {
                canvas.text("middle", (middle, y + 4.0 + lines_height(line + 1)), words);
            }
        }
        y + 6.0 + lines_height(2) + GAP
    }
}

/// A dimension line with a tick at each end of each part.
fn chain(canvas: &mut Canvas, projection: &SiteProjection, ends: &[f64], y: f64) {
    let (first, last) = (ends.first().copied().unwrap_or(0.0), ends.last().copied().unwrap_or(0.0));
    canvas.line("line", (projection.x(first), y), (projection.x(last), y));
    for end in ends {
        canvas.tick((projection.x(*end), y));
    }
}
