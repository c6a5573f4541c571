//! Whether to seal, hour by hour: the weather against what the sealant needs, and the milestones of its cure.
//!
//! `time_axis` holds the hours along the canvas, `weather_plot` draws the temperatures, `rows` the bars below them.

mod rows;
mod time_axis;
mod weather_plot;

use super::canvas::{Canvas, GAP};
use super::dimension_text::format_temperature_both;
use super::report_text::{describe_findings, draw_footer, draw_heading, draw_notes, draw_stops, draw_warnings};
use super::traits::Drawing;
use crate::calculation::cure_guidance::{CureGuidanceReport, CureGuidanceRequest};
use crate::calculation::report::Finding;
use crate::practice::finding_codes::Level;
use crate::quantity::{QuantityField, UnitSystem};
use crate::vocabulary::Vocabulary;
use time_axis::{TimeAxis, drawn_hours, format_time};
use weather_plot::WeatherPlot;

/// The heading over the stops: nothing is built from this drawing.
const SEAL_STOP_HEADING: &str = "Do not seal at this start";

/// Whether to seal, hour by hour.
pub struct CureTimeline;

impl Drawing for CureTimeline {
    type Request = CureGuidanceRequest;
    const NAME: &'static str = "cure-timeline";
    const OPERATION_ID: &'static str = "draw_cure_timeline";
    const SUMMARY: &'static str = "The weather of a sealing job, and when traffic may return";
    const DESCRIPTION: &'static str = "The report of `cure-guidance` over its hours: slab, air and dew point, the margin over the \
        dew point that the slab must keep, the least temperature of application, the start, rain that was and that comes, the windows of \
        possible starts with all other hours hatched, the work, and each milestone from its earliest to its latest, with times and \
        verdict in words. Temperatures stand \
        in the system that the first `air` is written in, the other in brackets; times on the clock of the start. The drawing is \
        one `svg` element without script or outside references, legible 320 pixels wide, light or dark as the reader's device \
        asks, and light in print.";

    fn system(request: &CureGuidanceRequest) -> UnitSystem {
        // A request whose weather cannot be parsed is never drawn.
        let first = request.weather.conditions.as_ref().and_then(|rows| rows.first()?.air.read().ok());
        first.map_or(UnitSystem::Metric, |air| air.system)
    }

    fn draw(report: &CureGuidanceReport, system: UnitSystem) -> String {
        draw(report, system)
    }
}

/// Draws the hours of a report.
pub fn draw(report: &CureGuidanceReport, system: UnitSystem) -> String {
    let no_subject = |_: &Finding| None;
    let start = format_time(&report.inputs.start);
    let verdict = report.verdict.label();
    let title = format!("Sealing, start {start}: {}", verdict.to_lowercase());

    let mut canvas = Canvas::default();
    let top = draw_heading(&mut canvas, &title);
    let job = format_job(report, system);
    let top = draw_notes(&mut canvas, top, &job);
    let top = draw_stops(&mut canvas, top + 2.0, SEAL_STOP_HEADING, &report.findings, no_subject);
    let hours = drawn_hours(report);
    let axis = TimeAxis::new(report, &hours);
    let bottom = WeatherPlot::new(report, &hours, &axis, system, top).draw(&mut canvas);
    let rows = rows::all(report, &hours, &axis);
    let bottom = rows::draw(&mut canvas, &rows, report, &axis, bottom + GAP) + GAP;
    let notes = format_notes(report);
    let bottom = draw_notes(&mut canvas, bottom, &notes) + GAP;
    let bottom = draw_warnings(&mut canvas, bottom, &report.findings, no_subject);
    let height = draw_footer(&mut canvas, bottom, report.basis.engine);

    let rows: Vec<_> = rows.into_iter().map(|row| row.words).collect();
    let description =
        [job, rows, notes].concat().join(" ") + &describe_findings(SEAL_STOP_HEADING, &report.findings, no_subject);
    canvas.finish(CureTimeline::NAME, &title, &description, height)
}

/// What is sealed and in what condition the slot is, and the notes among the reasons of the verdict.
fn format_job(report: &CureGuidanceReport, system: UnitSystem) -> Vec<String> {
    let inputs = &report.inputs;
    let sealant = inputs.sealant.kind.label();
    let condition = inputs.surface_condition.label();
    let is_assumed = report.assumed.iter().any(|assumed| assumed.about == "#/surface_condition");
    let seen = if is_assumed { "taken to be " } else { "" };
    let mut job = format!("{sealant}; slot {seen}{}.", condition.to_lowercase());
    if let Some(needed) = &inputs.needed_open_by {
        job += &format!(" Traffic is needed by {}.", format_time(needed));
    }
    if let Some(pour) = inputs.sealant.pour_temperature {
        job += &format!(
            " Poured at {}: it cools and does not cure, so its times do not follow the weather.",
            format_temperature_both(pour, system)
        );
    }
    let notes = report.reasons.iter().filter(|reason| reason.level == Level::Note);
    std::iter::once(job).chain(notes.map(|reason| reason.message.words().to_owned())).collect()
}

/// What holds for the whole drawing.
fn format_notes(report: &CureGuidanceReport) -> Vec<String> {
    let mut notes = vec![format!(
        "Bars run from the earliest to the latest. The weather ends {}; nothing is guessed beyond. On site the test is that nothing tracks.",
        format_time(&report.inputs.weather_until)
    )];
    if let Some(shelf) = &report.shelf {
        notes.push(format!("The sealant keeps until {}.", shelf.ends_on));
    }
    notes
}
