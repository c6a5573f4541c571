//! A loop in the ground: what each likely turn count would show on the meters, beside what they showed.

use super::canvas::{Canvas, GAP, INNER, MARGIN, WIDTH};
use super::dimension_text::{format_area_both, format_percent, format_plan_both};
use super::label_layout::axis_ticks;
use super::options::DrawingOptions;
use super::report_text::{describe_findings, draw_footer, draw_heading, draw_notes, draw_stops, draw_warnings};
use super::text_metrics::{MIDDLE_TO_BASELINE, lines_height};
use super::traits::Drawing;
use crate::calculation::existing_loop::{ExistingLoopCandidate, ExistingLoopReport, ExistingLoopRequest};
use crate::calculation::report::Statement;
use crate::practice::meter_readings::ReadingPlace;
use crate::quantity::output::round;
use crate::quantity::{QuantityField, UnitSystem};
use crate::wording::Reader;

/// The most candidates that are drawn.
const MAX_ROWS: usize = 5;
/// The left edge of the bars; left of it stands the candidate.
const LEFT: f64 = 150.0;
/// The right edge of the bars.
const RIGHT: f64 = WIDTH - 16.0;
/// From row to row.
const ROW_STEP: f64 = 18.0;
/// The height of a bar.
const BAR_HEIGHT: f64 = 8.0;
/// The end of an axis, as a multiple of the largest figure.
const HEADROOM: f64 = 1.06;

/// What each likely turn count would show on the meters.
pub struct TurnCandidateChart;

impl Drawing for TurnCandidateChart {
    type Request = ExistingLoopRequest;
    const NAME: &'static str = "turn-candidates";
    const OPERATION_ID: &'static str = "draw_turn_candidates";
    const SUMMARY: &'static str = "What the likely turn counts would show";
    const DESCRIPTION: &'static str = "The report of `existing-loop` as bars: for each likely turn count the inductance and the \
        resistance that meters would show, and a line at what they showed. Where the line crosses a bar the count fits; the counts \
        stand in order of their likelihood, at most five. Lengths stand in the system that `along_travel` is written in, the other \
        in brackets. The drawing is one `svg` element without script or outside references, legible 280 pixels wide, light or dark \
        as the reader's device asks, and light in print.";

    fn system(request: &ExistingLoopRequest) -> UnitSystem {
        // A request whose leg cannot be parsed is never drawn.
        request.along_travel.read().map_or(UnitSystem::Metric, |leg| leg.system)
    }

    fn draw(report: &ExistingLoopReport, reader: Reader, options: &DrawingOptions) -> String {
        draw(report, reader, options)
    }
}

/// What one meter shows, and what it would show of each candidate.
struct MeterPanel<'a> {
    quantity: &'static str,
    read: Option<f64>,
    range: fn(&ExistingLoopCandidate) -> (f64, f64),
    candidates: &'a [ExistingLoopCandidate],
}

/// Draws the candidates of a report.
pub fn draw(report: &ExistingLoopReport, reader: Reader, options: &DrawingOptions) -> String {
    let inputs = &report.inputs;
    let title = Statement::new("drawings-turns-title")
        .text("size", format_area_both(inputs.along_travel, inputs.across_lane, reader))
        .member("verdict", report.verdict);
    // What stands against the loop.
    let (title, stop_heading) = (reader.say(&title), Statement::new("drawings-turns-do-not-rely"));

    let mut canvas = Canvas::new(reader.language, options);
    let top = draw_heading(&mut canvas, &title);
    let top = draw_stops(&mut canvas, top, &stop_heading, &report.findings, |_| None, reader);
    let candidates = &report.candidates[..report.candidates.len().min(MAX_ROWS)];
    let panels = [
        MeterPanel {
            quantity: "inductance",
            read: inputs.inductance_uh,
            range: |one| (one.inductance_low_uh, one.inductance_high_uh),
            candidates,
        },
        MeterPanel {
            quantity: "resistance",
            read: inputs.resistance_ohm,
            range: |one| (one.resistance_low_ohm, one.resistance_high_ohm),
            candidates,
        },
    ];
    let bottom = panels.iter().fold(top, |top, panel| panel.draw(&mut canvas, reader, top) + GAP);
    let notes = format_notes(report, reader);
    let bottom = draw_notes(&mut canvas, bottom, &notes) + GAP;
    let bottom = draw_warnings(&mut canvas, bottom, &report.findings, |_| None, reader);
    let height = draw_footer(&mut canvas, bottom, report.basis.engine, reader);

    let description = notes.join(" ") + &describe_findings(&stop_heading, &report.findings, |_| None, reader);
    canvas.finish(TurnCandidateChart::NAME, &title, &description, height)
}

impl MeterPanel<'_> {
    /// Where the axis ends: at the largest figure, but a reading far beyond all bars does not press them together.
    fn axis_end(&self) -> f64 {
        let bars = self.candidates.iter().map(|one| (self.range)(one).1).fold(f64::MIN_POSITIVE, f64::max);
        HEADROOM * self.read.map_or(bars, |read| bars.max(read.min(2.0 * bars)))
    }

    /// Draws the bars and the line of the reading; returns the lower edge.
    fn draw(&self, canvas: &mut Canvas, reader: Reader, top: f64) -> f64 {
        let end = self.axis_end();
        let x = |value: f64| LEFT + (RIGHT - LEFT) * (value / end).min(1.0);
        let is_read = match self.read {
            Some(read) if read > end => "off_the_scale",
            Some(_) => "yes",
            None => "no",
        };
        let heading = Statement::new("drawings-turns-panel")
            .code("quantity", self.quantity)
            .code("is_read", is_read)
            .text("reading", self.read.map_or_else(String::new, |read| reader.number(round(read, 3))));
        let top = canvas.paragraph("strong", (MARGIN, top), INNER, &reader.say(&heading)) + 4.0;
        let bottom = top + ROW_STEP * self.candidates.len() as f64;
        for (row, candidate) in self.candidates.iter().enumerate() {
            let middle = top + ROW_STEP * (row as f64 + 0.5);
            canvas.text("end", (LEFT - 6.0, middle + MIDDLE_TO_BASELINE), &format_candidate(candidate, reader));
            let (low, high) = (self.range)(candidate);
            let (from, to) = ((x(low), middle - BAR_HEIGHT / 2.0), (x(high), middle + BAR_HEIGHT / 2.0));
            canvas.hatch(if candidate.fits_readings { "wire" } else { "fine" }, from, to, 5.0);
            canvas.rectangle(if candidate.fits_readings { "wire" } else { "line" }, from, to);
        }
        if let Some(read) = self.read.filter(|read| *read <= end) {
            canvas.line("heavy", (x(read), top - 2.0), (x(read), bottom + 2.0));
        }
        canvas.line("line", (LEFT, bottom), (RIGHT, bottom));
        for tick in axis_ticks(0.0, end, 5) {
            canvas.line("line", (x(tick), bottom), (x(tick), bottom + 4.0));
            canvas.text("middle", (x(tick), bottom + 4.0 + lines_height(1)), &reader.number(round(tick, 3)));
        }
        bottom + 6.0 + lines_height(1)
    }
}

/// A candidate before its bar.
fn format_candidate(candidate: &ExistingLoopCandidate, reader: Reader) -> String {
    let words = Statement::new("drawings-turns-candidate")
        .count("turns", candidate.turns.into())
        .code("wire", if candidate.gauge.is_some() { "known" } else { "unknown" })
        .text("gauge", candidate.gauge.unwrap_or_default())
        .text("likelihood", format_percent(round(100.0 * candidate.likelihood, 0), reader));
    reader.say(&words).into_owned()
}

/// What the bars say, in words.
fn format_notes(report: &ExistingLoopReport, reader: Reader) -> Vec<String> {
    let inputs = &report.inputs;
    let place = match inputs.taken_at {
        ReadingPlace::DetectorEnd => "unit",
        ReadingPlace::LoopEnd => "tails",
    };
    let mut notes = vec![
        Statement::new("drawings-turns-key"),
        Statement::new("drawings-turns-read-at")
            .code("place", place)
            .text("length", format_plan_both(inputs.lead_in.length.into(), reader))
            .text("uncertainty", format_percent(inputs.size_uncertainty_percent, reader)),
    ];
    if let Some(test) = &report.settling_test {
        let note = Statement::new("drawings-turns-settle").member("test", test.test);
        notes.push(note.count("minutes", test.minutes.into()));
    }
    notes.iter().map(|note| reader.say(note).into_owned()).collect()
}
