//! Reports as drawings: SVG that a page, a van's dashboard or a printer shows.
//!
//! A drawing is one trait on a type of its own. It takes the report of a calculation and the caller's system of units, and gives
//! text; it computes nothing that the report does not hold. To add one: a file or folder beside the others, and one line in
//! [`visit_all`].
//!
//! - [`sheet`]: lines, text, hatching; the one place that writes SVG, and so the one that escapes.
//! - [`style`]: the style sheet: light, dark, and light again in print.
//! - [`letters`]: how wide text is at most, and where it wraps.
//! - [`spread`]: labels that keep out of each other's way.
//! - [`units`]: dimensions in the caller's system, with the other in brackets.
//! - [`words`]: what every drawing says in words: what stops the job, warnings, the foot.
//! - [`axis`]: round figures along an axis.
//! - [`pen`]: the drawings of an installation plan.
//! - [`plan`], [`response_profile`], [`slot_section`], [`cure_timeline`]: the drawings.
//! - [`job_sheet`]: the whole job as a page to print, with drawings in it.

pub mod axis;
pub mod cure_timeline;
pub mod job_sheet;
pub mod letters;
pub mod pen;
pub mod plan;
pub mod response_profile;
pub mod sheet;
pub mod slot_section;
pub mod spread;
pub mod style;
pub mod units;
pub mod words;

pub use pen::Pen;

use crate::calculation::Calculation;
use crate::quantity::UnitSystem;

/// The media type of drawings.
pub const MEDIA_TYPE: &str = "image/svg+xml";

/// One drawing: the report of a calculation as SVG.
pub trait Drawing: 'static {
    /// The request whose report is drawn.
    type Request: Calculation;
    /// The last part of the path, and the name of the room: `plan`.
    const NAME: &'static str;
    /// The name of the operation in generated clients: `draw_plan`.
    const OPERATION_ID: &'static str;
    /// The drawing in a phrase.
    const SUMMARY: &'static str;
    /// What it shows, and what to know about it.
    const DESCRIPTION: &'static str;

    /// The system that the caller of a sound request works in.
    fn system(request: &Self::Request) -> UnitSystem;

    /// Draws a report: one `svg` element without references to anything outside it.
    fn draw(report: &<Self::Request as Calculation>::Report, system: UnitSystem) -> String;
}

/// Something to be done for each drawing: a route, an operation.
pub trait Visitor {
    /// Called once for each drawing, in order.
    fn visit<D: Drawing>(&mut self);
}

/// The list of all drawings.
pub fn visit_all(visitor: &mut impl Visitor) {
    visitor.visit::<plan::Plan>();
    visitor.visit::<response_profile::ResponseProfile>();
    visitor.visit::<slot_section::SlotSection>();
    visitor.visit::<cure_timeline::CureTimeline>();
}
