//! Sizes across the lane: the opening, and the setbacks, loops and gaps of each row.

use super::coils::Coil;
use super::ground::{Ground, LEFT, RIGHT};
use crate::drawing::letters::{SIZE, width};
use crate::drawing::sheet::Sheet;
use crate::drawing::spread::spread;
use crate::drawing::units::{both, two_lines};
use crate::drawing::words::{GAP, lines};
use crate::quantity::UnitSystem;
use crate::quantity::output::PlanLength;

/// The right edge of the names of rows.
const NAMES: f64 = 96.0;
/// The least stretch that is dimensioned, metres.
const MIN_M: f64 = 0.01;
/// Rows whose places differ by less are one, metres.
const ONE_ROW_M: f64 = 0.005;

/// Loops, or rows of loops, that lie one behind the other.
struct Row<'a> {
    /// The left and right edge of each loop, metres across.
    edges: Vec<(f64, f64)>,
    coil: &'a Coil<'a>,
    letters: String,
}

/// Draws the dimensions across; gives the lower edge.
pub fn draw(
    sheet: &mut Sheet,
    ground: &Ground,
    coils: &[Coil<'_>],
    opening: PlanLength,
    system: UnitSystem,
    top: f64,
) -> f64 {
    let mut rows: Vec<Row<'_>> = Vec::new();
    for coil in coils {
        let edges: Vec<_> = coil.edges().collect();
        match rows.iter_mut().find(|row| is_same(&row.edges, &edges)) {
            Some(row) => row.letters += &format!(" {}", coil.letter),
            None => rows.push(Row { edges, coil, letters: coil.letter.to_string() }),
        }
    }
    let bottom = rows.iter().fold(top + GAP, |top, row| row.draw(sheet, ground, system, top));
    let y = bottom + 4.0;
    chain(sheet, ground, &[-ground.half(), ground.half()], y);
    sheet.text("strong end", (NAMES, y + 4.0), "opening");
    sheet.text("middle", (ground.x(0.0), y + 13.0), &both(opening, system));
    y + 13.0 + GAP
}

fn is_same(a: &[(f64, f64)], b: &[(f64, f64)]) -> bool {
    let near = |a: f64, b: f64| (a - b).abs() < ONE_ROW_M;
    a.len() == b.len() && a.iter().zip(b).all(|(a, b)| near(a.0, b.0) && near(a.1, b.1))
}

impl Row<'_> {
    /// The setback, the first loop and the first gap are dimensioned; the others are like them. Gives the lower edge.
    fn draw(&self, sheet: &mut Sheet, ground: &Ground, system: UnitSystem, top: f64) -> f64 {
        let y = top + 4.0;
        let ends = self.edges.iter().flat_map(|(left, right)| [*left, *right]);
        let ends: Vec<_> = [-ground.half()].into_iter().chain(ends).chain([ground.half()]).collect();
        chain(sheet, ground, &ends, y);
        sheet.text("strong end", (NAMES, y + 4.0), &self.letters);

        let sized = self.coil.sized;
        let gap = sized.side_by_side.as_ref().map(|row| row.gap);
        let lengths = [Some(sized.edge_setback), Some(sized.across_lane), gap];
        let shown: Vec<_> = lengths
            .into_iter()
            .zip(ends.windows(2))
            .filter_map(|(length, pair)| Some((length?, f64::midpoint(pair[0], pair[1]))))
            .filter(|(length, _)| length.m >= MIN_M)
            .map(|(length, middle)| (ground.x(middle), two_lines(length, system)))
            .collect();
        let extent = |words: &[String; 2]| words.iter().map(|line| width(line, SIZE, false)).fold(0.0, f64::max) + 4.0;
        let wanted: Vec<_> = shown.iter().map(|(x, words)| (*x, extent(words))).collect();
        let places = spread(&wanted, LEFT, RIGHT + 20.0);
        for ((x, words), place) in shown.iter().zip(places) {
            sheet.polyline("fine", &[(*x, y + 2.0), (place, y + 7.0)]);
            for (line, words) in words.iter().enumerate() {
                sheet.text("middle", (place, y + 4.0 + lines(line + 1)), words);
            }
        }
        y + 6.0 + lines(2) + GAP
    }
}

/// A dimension line with a tick at each end of each part.
fn chain(sheet: &mut Sheet, ground: &Ground, ends: &[f64], y: f64) {
    let (first, last) = (ends.first().copied().unwrap_or(0.0), ends.last().copied().unwrap_or(0.0));
    sheet.line("line", (ground.x(first), y), (ground.x(last), y));
    for end in ends {
        sheet.tick((ground.x(*end), y));
    }
}
