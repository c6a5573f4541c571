//! Words beside a section, each with a line to what it names.

use crate::drawing::canvas::{Canvas, CanvasPoint, MARGIN, WIDTH};
use crate::drawing::label_layout::spread_labels;
use crate::drawing::text_metrics::{TEXT_SIZE, lines_height, wrap};

/// Where the words begin.
const LEFT: f64 = 210.0;
/// Where the lines to them bend.
const BEND: f64 = 198.0;

/// Words for a point of the section.
pub struct SectionLabel {
    /// What they name.
    pub at: CanvasPoint,
    /// The words.
    pub words: String,
}

/// Draws labels from `top` down; returns the lower edge.
pub fn draw(canvas: &mut Canvas, labels: &mut [SectionLabel], top: f64) -> f64 {
    labels.sort_by(|a, b| a.at.1.total_cmp(&b.at.1));
    let wrapped: Vec<_> =
        labels.iter().map(|label| wrap(&label.words, WIDTH - MARGIN - LEFT, TEXT_SIZE, false)).collect();
    let extent = |count: usize| lines_height(count) + 4.0;
    let wanted: Vec<_> =
        labels.iter().zip(&wrapped).map(|(label, wrapped)| (label.at.1, extent(wrapped.len()))).collect();
    let middles = spread_labels(&wanted, top, f64::INFINITY);
    let mut bottom = top;
    for ((label, wrapped), middle) in labels.iter().zip(wrapped).zip(middles) {
        canvas.polyline("fine", &[label.at, (BEND, middle), (LEFT - 4.0, middle)]);
        canvas.circle("dot", label.at, 1.4);
        canvas.text_lines("", (LEFT, middle), &wrapped);
        bottom = middle + extent(wrapped.len()) / 2.0;
    }
    bottom
}
