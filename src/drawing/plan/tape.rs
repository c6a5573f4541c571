//! Distances along the lane, as a tape from the line of the barrier reads them.

use uom::si::f64::Length;
use uom::si::length::meter;

use super::placed_loop::PlacedLoop;
use super::projection::SiteProjection;
use crate::calculation::report::Statement;
use crate::drawing::canvas::Canvas;
use crate::drawing::dimension_text::PrintedLength;
use crate::drawing::label_layout::spread_labels;
use crate::drawing::text_metrics::lines_height;
use crate::practice::roles::Side;
use crate::practice::site::Barrier;
use crate::quantity::output::PlanLength;
use crate::wording::Reader;

/// The right edge of the readings.
const READINGS: f64 = 76.0;
/// Where the tape is drawn.
const TAPE: f64 = 94.0;
/// Marks closer than this are drawn as one, metres.
const SAME_MARK_TOLERANCE_M: f64 = 0.005;

/// A mark on the tape, and what it reads.
struct TapeMark {
    /// Metres along.
    along: f64,
    /// How far right the line from the tape reaches, metres across.
    to: f64,
    reading: [String; 2],
    is_bold: bool,
}

/// How much higher than `height` the readings are, one below the other.
pub fn missing_height(loops: &[PlacedLoop<'_>], height: f64) -> f64 {
    // Two for each loop, and the line.
    ((2.0 * loops.len() as f64 + 1.0) * extent() - height).max(0.0)
}

/// The height of a reading.
fn extent() -> f64 {
    lines_height(2) + 3.0
}

/// Draws the tape with its readings between `top` and `bottom`.
pub fn draw(
    canvas: &mut Canvas,
    projection: &SiteProjection,
    loops: &[PlacedLoop<'_>],
    barrier: Barrier,
    reader: Reader,
    (top, bottom): (f64, f64),
) {
    let marks = marks(projection, loops, barrier, reader);
    let wanted: Vec<_> = marks.iter().map(|mark| (projection.y(mark.along), extent())).collect();
    let middles = spread_labels(&wanted, top, bottom);
    let (first, last) = (wanted.first().map_or(0.0, |(y, _)| *y), wanted.last().map_or(0.0, |(y, _)| *y));
    canvas.line("line", (TAPE, first), (TAPE, last));
    for ((mark, (y, _)), middle) in marks.iter().zip(&wanted).zip(&middles) {
        canvas.tick((TAPE, *y));
        canvas.line("fine", (TAPE + 4.0, *y), (projection.x(mark.to), *y));
        canvas.polyline("fine", &[(READINGS + 2.0, *middle), (READINGS + 5.0, *middle), (TAPE - 4.0, *y)]);
        let class = if mark.is_bold { "strong end" } else { "end" };
        canvas.text_lines(class, (READINGS, *middle), &mark.reading);
    }
}

/// The marks from the inside outwards, which is down the canvas.
fn marks(projection: &SiteProjection, loops: &[PlacedLoop<'_>], barrier: Barrier, reader: Reader) -> Vec<TapeMark> {
    let mut marks = vec![TapeMark {
        along: 0.0,
        to: -projection.half(),
        reading: format_line_name(barrier, reader),
        is_bold: true,
    }];
    for placed in loops {
        let (leg, near) = (PrintedLength::from(placed.sized.along_travel), PrintedLength::from(placed.distance));
        let far = near.plus(leg);
        let end = |along: f64| PrintedLength::from(PlanLength(Length::new::<meter>(along.abs())));
        let (low, high) = match placed.side {
            Side::Outside => (far, near),
            Side::Inside => (near, far),
            Side::OnTheLine => (end(placed.from), end(placed.to)),
        };
        let left = placed.edges().next().map_or(0.0, |(left, _)| left);
        for (along, length) in [(placed.from, low), (placed.to, high)] {
            marks.push(TapeMark { along, to: left, reading: length.format_lines(reader), is_bold: false });
        }
    }
    marks.sort_by(|a, b| b.along.total_cmp(&a.along));
    marks.dedup_by(|b, a| (a.along - b.along).abs() < SAME_MARK_TOLERANCE_M);
    marks
}

/// The name of the line that the tape starts from, in two short lines: `0 sliding`, `gate`.
fn format_line_name(barrier: Barrier, reader: Reader) -> [String; 2] {
    let name = reader.say(&Statement::new("drawings-plan-line").member("barrier", barrier));
    let (first, second) = name.split_once(' ').unwrap_or((&name, ""));
    [format!("0 {first}"), second.to_owned()]
}

#[cfg(test)]
mod tests {
    use super::{READINGS, format_line_name};
    use crate::drawing::text_metrics::{TEXT_SIZE, max_width};
    use crate::practice::site::Barrier;
    use crate::quantity::UnitSystem;
    use crate::vocabulary::Vocabulary;
    use crate::wording::{Language, Reader};

    #[test]
    fn the_name_of_the_line_has_two_lines_that_fit_beside_the_tape() {
        for language in Language::ALL {
            for barrier in Barrier::ALL {
                let lines = format_line_name(*barrier, Reader::new(UnitSystem::Metric, *language));
                let widths = lines.each_ref().map(|line| max_width(line, TEXT_SIZE, true));
                // These are the widths of the widest face; others leave space.
                assert!(widths.iter().all(|width| (20.0..READINGS + 1.0).contains(width)), "{lines:?}: {widths:?}");
            }
        }
    }
}
