//! Distances along the way, as a tape from the line of the barrier reads them.

use super::coils::Coil;
use super::ground::Ground;
use crate::drawing::sheet::Sheet;
use crate::drawing::spread::spread;
use crate::drawing::units::{sum, two_lines};
use crate::drawing::words::lines;
use crate::quantity::UnitSystem;
use crate::quantity::output::PlanLength;

/// The right edge of the readings, and the tape.
const READINGS: f64 = 76.0;
/// See [`READINGS`].
const TAPE: f64 = 94.0;
/// The closest that two marks lie that are not one, metres.
const ONE_MARK_M: f64 = 0.005;

/// A place on the tape, and what it reads.
struct Mark {
    along: f64,
    /// How far right the line from the tape reaches, metres across.
    to: f64,
    lines: [String; 2],
    strong: bool,
}

/// How much more than `height` the readings need, one below the other.
pub fn lacks(coils: &[Coil<'_>], height: f64) -> f64 {
    // Two for each loop, and the line.
    ((2.0 * coils.len() as f64 + 1.0) * extent() - height).max(0.0)
}

/// The height of a reading.
fn extent() -> f64 {
    lines(2) + 3.0
}

/// Draws the tape with its readings between `top` and `bottom`.
pub fn draw(
    sheet: &mut Sheet,
    ground: &Ground,
    coils: &[Coil<'_>],
    barrier: &str,
    system: UnitSystem,
    (top, bottom): (f64, f64),
) {
    let marks = marks(ground, coils, barrier, system);
    let wanted: Vec<_> = marks.iter().map(|mark| (ground.y(mark.along), extent())).collect();
    let places = spread(&wanted, top, bottom);
    let (first, last) = (wanted.first().map_or(0.0, |(y, _)| *y), wanted.last().map_or(0.0, |(y, _)| *y));
    sheet.line("line", (TAPE, first), (TAPE, last));
    for ((mark, (y, _)), place) in marks.iter().zip(&wanted).zip(&places) {
        sheet.tick((TAPE, *y));
        sheet.line("fine", (TAPE + 4.0, *y), (ground.x(mark.to), *y));
        sheet.polyline("fine", &[(READINGS + 2.0, *place), (READINGS + 5.0, *place), (TAPE - 4.0, *y)]);
        let class = if mark.strong { "strong end" } else { "end" };
        for (line, words) in mark.lines.iter().enumerate() {
            let baseline = place - lines(1) + lines(line + 1) - 3.4;
            sheet.text(class, (READINGS, baseline), words);
        }
    }
}

/// The marks from the inside outwards, as they follow down the sheet.
fn marks(ground: &Ground, coils: &[Coil<'_>], barrier: &str, system: UnitSystem) -> Vec<Mark> {
    let [first, second] = line_name(barrier);
    let mut marks =
        vec![Mark { along: 0.0, to: -ground.half(), lines: [first.to_owned(), second.to_owned()], strong: true }];
    for coil in coils {
        let leg = coil.sized.along_travel;
        let half = PlanLength { ft: leg.ft / 2.0, m: leg.m / 2.0 };
        let (near, far) = match coil.sized.side {
            "outside" | "inside" => (coil.distance, sum(coil.distance, leg)),
            _ => (half, half),
        };
        let (low, high) = if coil.sized.side == "outside" { (far, near) } else { (near, far) };
        let left = coil.edges().next().map_or(0.0, |(left, _)| left);
        for (along, length) in [(coil.from, low), (coil.to, high)] {
            marks.push(Mark { along, to: left, lines: two_lines(length, system), strong: false });
        }
    }
    marks.sort_by(|a, b| b.along.total_cmp(&a.along));
    marks.dedup_by(|b, a| (a.along - b.along).abs() < ONE_MARK_M);
    marks
}

/// The line that the tape starts from, in two short lines.
fn line_name(barrier: &str) -> [&'static str; 2] {
    match barrier {
        "slide_gate" => ["0 sliding", "gate"],
        "swing_gate" => ["0 swing", "gate"],
        "swing_gate_pair" => ["0 swing", "gates"],
        "barrier_arm" => ["0 barrier", "arm"],
        "vertical_lift_gate" => ["0 lift", "gate"],
        "overhead_door" => ["0 overhead", "door"],
        _ => ["0 reference", "line"],
    }
}
