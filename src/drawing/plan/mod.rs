//! The plan of an opening: what closes it, the loops with their roles, and every distance from one line.
//!
//! Inside is up. `placed_loop` holds where the loops lie, `projection` maps the site to the canvas, to one scale both ways; `lane_and_barrier`
//! draws lane, barrier and sweep, `loop_outlines` the loops, `pair_routes` and `way_to_unit` the way of the pairs and the unit, `tape` the distances along the lane, `across` those across it, and
//! `schedule` says what each loop is.

mod across;
mod lane_and_barrier;
mod loop_outlines;
mod pair_routes;
mod placed_loop;
mod projection;
mod schedule;
mod tape;
mod way_to_unit;

pub use placed_loop::format_position;
pub use schedule::say_lead_in_orders;

use super::canvas::{Canvas, GAP};
use super::dimension_text::format_plan_both;
use super::options::DrawingOptions;
use super::report_text::{
    build_stop_heading, describe_findings, draw_footer, draw_heading, draw_notes, draw_stops, draw_warnings,
};
use super::traits::Drawing;
use crate::calculation::input::ResolvedOpening;
use crate::calculation::loop_sizing::{LoopSizingReport, LoopSizingRequest};
use crate::calculation::report::{Finding, Statement, Subject};
use crate::practice::roles::Role;
use crate::practice::site::Barrier;
use crate::quantity::{QuantityField, UnitSystem};
use crate::wording::Reader;
use placed_loop::PlacedLoop;
use projection::SiteProjection;

/// The path of the drawing, which a link may ask for, too.
pub const PATH: &str = "/v1/drawings/plan";

/// The plan of an opening.
pub struct OpeningPlan;

impl Drawing for OpeningPlan {
    type Request = LoopSizingRequest;
    const NAME: &'static str = "plan";
    const OPERATION_ID: &'static str = "draw_plan";
    const SUMMARY: &'static str = "The loops of an opening, from above";
    const DESCRIPTION: &'static str = "The report of `loop-sizing` as a plan, to scale: the opening, its barrier and the sweep of \
        its leaves, each loop with what it is for, distances from the line of the barrier as a tape reads them, sizes across the \
        lane, the slots of the pairs, their own and shared ones, to the edge on the side of the unit or as far as they go, pull boxes, conduit (dashed) to the unit, where pairs cross the line, where a sliding leaf parks, and the directions of travel. Dimensions stand in the system that `opening.width` is \
        written in, the other in brackets. Stretches without a loop that are very long are broken, and say so. A design that \
        should not be built says so in words. The drawing is one `svg` element without script or outside references, legible \
        280 pixels wide, light or dark as the reader's device asks, and light in print.";

    fn system(request: &LoopSizingRequest) -> UnitSystem {
        // A request whose width cannot be parsed is never drawn.
        request.opening.width.read().map_or(UnitSystem::Metric, |width| width.system)
    }

    fn draw(report: &LoopSizingReport, reader: Reader, options: &DrawingOptions) -> String {
        draw(report, reader, options)
    }
}

/// Draws the plan of a report.
pub fn draw(report: &LoopSizingReport, reader: Reader, options: &DrawingOptions) -> String {
    let loops = PlacedLoop::all(&report.loops);
    let mark_of = |finding: &Finding| {
        let Some(Subject::Role(role)) = finding.subject else { return None };
        loops.iter().find(|placed| placed.sized.role == role).map(|placed| placed.sized.mark.to_string())
    };
    let (title, stop_heading) = (format_title(&report.inputs.opening, reader), build_stop_heading());

    let mut canvas = Canvas::new(reader.language, options);
    let top = draw_heading(&mut canvas, &title);
    let top = draw_stops(&mut canvas, top, &stop_heading, &report.findings, mark_of, reader);
    let (projection, bottom) = draw_site(&mut canvas, report, &loops, top, reader);
    let bottom = schedule::draw(&mut canvas, &loops, reader, bottom);
    let notes = schedule::format_notes(report, &projection, reader);
    let bottom = draw_notes(&mut canvas, bottom, &notes) + GAP;
    let bottom = draw_warnings(&mut canvas, bottom, &report.findings, mark_of, reader);
    let height = draw_footer(&mut canvas, bottom, report.basis.engine, reader);

    let description = format!(
        "{}{}",
        describe_loops(&loops, &notes, reader),
        describe_findings(&stop_heading, &report.findings, mark_of, reader)
    );
    canvas.finish(OpeningPlan::NAME, &title, &description, height)
}

/// The plan without schedule, findings and footer, and its notes, for a page that has those itself.
pub fn picture(report: &LoopSizingReport, reader: Reader) -> (String, Vec<String>) {
    let loops = PlacedLoop::all(&report.loops);
    let mut canvas = Canvas::new(reader.language, &DrawingOptions::default());
    let (projection, bottom) = draw_site(&mut canvas, report, &loops, GAP, reader);
    let notes = schedule::format_notes(report, &projection, reader);
    let title = format_title(&report.inputs.opening, reader);
    let description = describe_loops(&loops, &notes, reader);
    (canvas.finish(OpeningPlan::NAME, &title, &description, bottom), notes)
}

/// Draws lane, barrier, loops and distances below `top`; returns the projection of the site and the lower edge.
fn draw_site(
    canvas: &mut Canvas,
    report: &LoopSizingReport,
    loops: &[PlacedLoop<'_>],
    top: f64,
    reader: Reader,
) -> (SiteProjection, f64) {
    let opening = &report.inputs.opening;
    let barrier = opening.barrier;
    let mut projection = SiteProjection::new(opening, barrier, loops, top + lane_and_barrier::STRIP);
    // Readings that need more space than the site leaves get it above and below.
    let more = tape::missing_height(loops, projection.bottom - projection.top + 2.0 * lane_and_barrier::STRIP) / 2.0;
    projection.move_down(more);
    let edges = (top, projection.bottom + more + lane_and_barrier::STRIP);
    let has_exit = loops.iter().any(|placed| placed.sized.role == Role::Exit);
    lane_and_barrier::draw(canvas, &projection, barrier, has_exit, reader);
    loop_outlines::draw(canvas, &projection, loops);
    way_to_unit::draw(canvas, &projection, loops, barrier, opening.unit_side);
    tape::draw(canvas, &projection, loops, barrier, reader, edges);
    let bottom = across::draw(canvas, &projection, loops, opening.width.into(), reader, edges.1);
    (projection, bottom)
}

fn format_title(opening: &ResolvedOpening, reader: Reader) -> String {
    let opening = say_opening(opening, format_plan_both(opening.width.into(), reader));
    reader.say(&Statement::new("drawings-plan-title").phrase("opening", opening)).into_owned()
}

/// What closes an opening and how wide it is, in a phrase.
pub fn say_opening(opening: &ResolvedOpening, width: String) -> Statement {
    if opening.barrier == Barrier::None {
        return Statement::new("drawings-plan-lane").text("width", width);
    }
    Statement::new("drawings-plan-opening").member("barrier", opening.barrier).text("width", width)
}

/// What the plan says of its loops, and its notes, as running text.
fn describe_loops(loops: &[PlacedLoop<'_>], notes: &[String], reader: Reader) -> String {
    let rows: Vec<_> = loops.iter().map(|placed| schedule::format_row(placed, reader).join(" ")).collect();
    format!("{} {}", rows.join(" "), notes.join(" "))
}
