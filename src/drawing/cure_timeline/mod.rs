//! Whether to seal, hour by hour: the weather against what the sealant needs, and the milestones of its cure.
//!
//! `time_axis` holds the hours along the canvas, `weather_plot` draws the temperatures, `rows` the bars below them.

mod rows;
mod time_axis;
mod weather_plot;

use super::canvas::{Canvas, GAP};
use super::dimension_text::format_temperature_both;
use super::options::DrawingOptions;
use super::report_text::{describe_findings, draw_footer, draw_heading, draw_notes, draw_stops, draw_warnings};
use super::time_text::format_time;
use super::traits::Drawing;
use crate::calculation::cure_guidance::{CureGuidanceReport, CureGuidanceRequest};
use crate::calculation::report::{Finding, Statement};
use crate::practice::finding_codes::Level;
use crate::quantity::{QuantityField, UnitSystem};
use crate::wording::Reader;
use time_axis::{TimeAxis, drawn_hours};
use weather_plot::WeatherPlot;

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
        one `svg` element without script or outside references, legible 280 pixels wide, light or dark as the reader's device \
        asks, and light in print.";

    fn system(request: &CureGuidanceRequest) -> UnitSystem {
        // A request whose weather cannot be parsed is never drawn.
        let first = request.weather.conditions.as_ref().and_then(|rows| rows.first()?.air.read().ok());
        first.map_or(UnitSystem::Metric, |air| air.system)
    }

    fn draw(report: &CureGuidanceReport, reader: Reader, options: &DrawingOptions) -> String {
        draw(report, reader, options)
    }
}

/// Draws the hours of a report.
pub fn draw(report: &CureGuidanceReport, reader: Reader, options: &DrawingOptions) -> String {
    let no_subject = |_: &Finding| None;
    let title = Statement::new("drawings-cure-title")
        .text("start", format_time(&report.inputs.start, reader))
        .member("verdict", report.verdict);
    // Nothing is built from this drawing.
    let (title, stop_heading) = (reader.say(&title), Statement::new("drawings-cure-do-not-seal"));

    let mut canvas = Canvas::new(reader.language, options);
    let top = draw_heading(&mut canvas, &title);
    let job = format_job(report, reader);
    let top = draw_notes(&mut canvas, top, &job);
    let top = draw_stops(&mut canvas, top + 2.0, &stop_heading, &report.findings, no_subject, reader);
    let hours = drawn_hours(report);
    let axis = TimeAxis::new(report, &hours);
    let bottom = WeatherPlot::new(report, &hours, &axis, reader, top).draw(&mut canvas);
    let rows = rows::all(report, &hours, &axis, reader);
    let bottom = rows::draw(&mut canvas, &rows, report, &axis, bottom + GAP) + GAP;
    let notes = format_notes(report, reader);
    let bottom = draw_notes(&mut canvas, bottom, &notes) + GAP;
    let bottom = draw_warnings(&mut canvas, bottom, &report.findings, no_subject, reader);
    let height = draw_footer(&mut canvas, bottom, report.basis.engine, reader);

    let rows: Vec<_> = rows.into_iter().map(|row| row.words).collect();
    let description =
        [job, rows, notes].concat().join(" ") + &describe_findings(&stop_heading, &report.findings, no_subject, reader);
    canvas.finish(CureTimeline::NAME, &title, &description, height)
}

/// What is sealed and in what condition the slot is, and the notes among the reasons of the verdict.
fn format_job(report: &CureGuidanceReport, reader: Reader) -> Vec<String> {
    let inputs = &report.inputs;
    let is_assumed = report.assumed.iter().any(|assumed| assumed.about == "#/surface_condition");
    let mut job = Statement::new("drawings-cure-job")
        .member("sealant", inputs.sealant.kind)
        .code("seen", if is_assumed { "no" } else { "yes" })
        .member("condition", inputs.surface_condition);
    if let Some(needed) = &inputs.needed_open_by {
        job = job.followed_by(Statement::new("drawings-cure-needed").text("time", format_time(needed, reader)));
    }
    if let Some(pour) = inputs.sealant.pour_temperature {
        let poured = Statement::new("drawings-cure-poured");
        job = job.followed_by(poured.text("temperature", format_temperature_both(pour, reader)));
    }
    let notes = report.reasons.iter().filter(|reason| reason.level == Level::Note);
    let job = reader.say(&job).into_owned();
    std::iter::once(job).chain(notes.map(|reason| reason.message.words().to_owned())).collect()
}

/// What holds for the whole drawing.
fn format_notes(report: &CureGuidanceReport, reader: Reader) -> Vec<String> {
    let until = format_time(&report.inputs.weather_until, reader);
    let mut notes = vec![Statement::new("drawings-cure-key").text("until", until)];
    if let Some(shelf) = &report.shelf {
        notes.push(Statement::new("drawings-cure-shelf").text("ends_on", shelf.ends_on.clone()));
    }
    notes.iter().map(|note| reader.say(note).into_owned()).collect()
}
