//! Words beside a section, each with a line to what it names.

use crate::drawing::letters::{SIZE, wrap};
use crate::drawing::sheet::{MARGIN, Point, Sheet, WIDTH};
use crate::drawing::spread::spread;
use crate::drawing::words::lines;

/// Where the words begin.
const LEFT: f64 = 210.0;
/// Where the lines to them bend.
const BEND: f64 = 198.0;

/// Words for a point of the section.
pub struct Label {
    /// What they name.
    pub at: Point,
    /// The words.
    pub words: String,
}

/// Writes labels, from `top` down; gives the lower edge.
pub fn draw(sheet: &mut Sheet, labels: &mut [Label], top: f64) -> f64 {
    labels.sort_by(|a, b| a.at.1.total_cmp(&b.at.1));
    let wrapped: Vec<_> = labels.iter().map(|label| wrap(&label.words, WIDTH - MARGIN - LEFT, SIZE, false)).collect();
    let extent = |count: usize| lines(count) + 4.0;
    let wanted: Vec<_> =
        labels.iter().zip(&wrapped).map(|(label, wrapped)| (label.at.1, extent(wrapped.len()))).collect();
    let places = spread(&wanted, top, f64::INFINITY);
    let mut bottom = top;
    for ((label, wrapped), place) in labels.iter().zip(wrapped).zip(places) {
        let upper = place - lines(wrapped.len()) / 2.0;
        sheet.polyline("fine", &[label.at, (BEND, place), (LEFT - 4.0, place)]);
        sheet.circle("dot", label.at, 1.4);
        for (line, words) in wrapped.iter().enumerate() {
            sheet.text("", (LEFT, upper + lines(line + 1) - 3.4), words);
        }
        bottom = place + extent(wrapped.len()) / 2.0;
    }
    bottom
}
