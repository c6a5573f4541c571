//! What a drawing is, and the visitor of all drawings.

use super::options::DrawingOptions;
use crate::calculation::Calculation;
use crate::quantity::UnitSystem;
use crate::wording::Reader;

/// The media type of drawings.
pub const MEDIA_TYPE: &str = "image/svg+xml";

/// One drawing: the report of a calculation as SVG.
pub trait Drawing: 'static {
    /// The request whose report is drawn.
    type Request: Calculation;
    /// The last part of the path, and the name of the module: `plan`.
    const NAME: &'static str;
    /// The name of the operation in generated clients: `draw_plan`.
    const OPERATION_ID: &'static str;
    /// The drawing in a phrase.
    const SUMMARY: &'static str;
    /// What it shows, and what to know about it.
    const DESCRIPTION: &'static str;

    /// The unit system that the caller wrote a valid request in.
    fn system(request: &Self::Request) -> UnitSystem;

    /// Draws a report whose words are of the reader's language: one `svg` element without references to anything outside it.
    fn draw(report: &<Self::Request as Calculation>::Report, reader: Reader, options: &DrawingOptions) -> String;
}

/// Something to do for each drawing: add a route, describe an operation.
pub trait DrawingVisitor {
    /// Called once for each drawing, in order.
    fn visit<D: Drawing>(&mut self);
}
