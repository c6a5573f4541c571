//! A loop in the ground: what each likely turn count would show on the meters, beside what they showed.

use super::canvas::{Canvas, GAP, INNER, MARGIN, WIDTH};
use super::dimension_text::{format_area_both, format_plan_both};
use super::label_layout::axis_ticks;
use super::report_text::{describe_findings, draw_footer, draw_heading, draw_notes, draw_stops, draw_warnings};
use super::text_metrics::{MIDDLE_TO_BASELINE, lines_height};
use super::traits::Drawing;
use crate::calculation::existing_loop::{ExistingLoopCandidate, ExistingLoopReport, ExistingLoopRequest};
use crate::practice::meter_readings::ReadingPlace;
use crate::quantity::output::round;
use crate::quantity::{QuantityField, UnitSystem};
use crate::vocabulary::Vocabulary;

/// The heading over what stands against the loop.
const STOP_HEADING: &str = "Do not rely on this loop";
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
        in brackets. The drawing is one `svg` element without script or outside references, legible 320 pixels wide, light or dark \
        as the reader's device asks, and light in print.";

    fn system(request: &ExistingLoopRequest) -> UnitSystem {
        // A request whose leg cannot be parsed is never drawn.
        request.along_travel.read().map_or(UnitSystem::Metric, |leg| leg.system)
    }

    fn draw(report: &ExistingLoopReport, system: UnitSystem) -> String {
        draw(report, system)
    }
}

/// What one meter shows, and what it would show of each candidate.
struct MeterPanel<'a> {
    title: String,
    read: Option<f64>,
    range: fn(&ExistingLoopCandidate) -> (f64, f64),
    candidates: &'a [ExistingLoopCandidate],
}

/// Draws the candidates of a report.
pub fn draw(report: &ExistingLoopReport, system: UnitSystem) -> String {
    let inputs = &report.inputs;
    let size = format_area_both(inputs.along_travel, inputs.across_lane, system);
    let title = format!("A loop in the ground, {size}: {}", report.verdict.label().to_lowercase());

    let mut canvas = Canvas::default();
    let top = draw_heading(&mut canvas, &title);
    let top = draw_stops(&mut canvas, top, STOP_HEADING, &report.findings, |_| None);
    let candidates = &report.candidates[..report.candidates.len().min(MAX_ROWS)];
    let panels = [
        MeterPanel {
            title: "Inductance, µH".to_owned(),
            read: inputs.inductance_uh,
            range: |one| (one.inductance_low_uh, one.inductance_high_uh),
            candidates,
        },
        MeterPanel {
            title: "Resistance, ohm".to_owned(),
            read: inputs.resistance_ohm,
            range: |one| (one.resistance_low_ohm, one.resistance_high_ohm),
            candidates,
        },
    ];
    let bottom = panels.iter().fold(top, |top, panel| panel.draw(&mut canvas, top) + GAP);
    let notes = format_notes(report, system);
    let bottom = draw_notes(&mut canvas, bottom, &notes) + GAP;
    let bottom = draw_warnings(&mut canvas, bottom, &report.findings, |_| None);
    let height = draw_footer(&mut canvas, bottom, report.basis.engine);

    let description = notes.join(" ") + &describe_findings(STOP_HEADING, &report.findings, |_| None);
    canvas.finish(TurnCandidateChart::NAME, &title, &description, height)
}

impl MeterPanel<'_> {
    /// Where the axis ends: at the largest figure, but a reading far beyond all bars does not press them together.
    fn axis_end(&self) -> f64 {
        let bars = self.candidates.iter().map(|one| (self.range)(one).1).fold(f64::MIN_POSITIVE, f64::max);
        HEADROOM * self.read.map_or(bars, |read| bars.max(read.min(2.0 * bars)))
    }

    /// Draws the bars and the line of the reading; returns the lower edge.
    fn draw(&self, canvas: &mut Canvas, top: f64) -> f64 {
        let end = self.axis_end();
        let x = |value: f64| LEFT + (RIGHT - LEFT) * (value / end).min(1.0);
        let said = match self.read {
            Some(read) if read > end => format!("read {}, off the scale", round(read, 3)),
            Some(read) => format!("read {}", round(read, 3)),
            None => "not read".to_owned(),
        };
        let top = canvas.paragraph("strong", (MARGIN, top), INNER, &format!("{}: {said}", self.title)) + 4.0;
        let bottom = top + ROW_STEP * self.candidates.len() as f64;
        for (row, candidate) in self.candidates.iter().enumerate() {
            let middle = top + ROW_STEP * (row as f64 + 0.5);
            canvas.text("end", (LEFT - 6.0, middle + MIDDLE_TO_BASELINE), &format_candidate(candidate));
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
            canvas.text("middle", (x(tick), bottom + 4.0 + lines_height(1)), &round(tick, 3).to_string());
        }
        bottom + 6.0 + lines_height(1)
    }
}

/// A candidate before its bar.
fn format_candidate(candidate: &ExistingLoopCandidate) -> String {
    let turns = if candidate.turns == 1 { "turn" } else { "turns" };
    let wire = candidate.gauge.map_or_else(String::new, |gauge| format!(", {gauge}"));
    format!("{} {turns}{wire}, {} %", candidate.turns, round(100.0 * candidate.likelihood, 0))
}

/// What the bars say, in words.
fn format_notes(report: &ExistingLoopReport, system: UnitSystem) -> Vec<String> {
    let inputs = &report.inputs;
    let place = match inputs.taken_at {
        ReadingPlace::DetectorEnd => "at the unit's end of the lead-in",
        ReadingPlace::LoopEnd => "at the loop's own tails",
    };
    let mut notes = vec![
        "A bar is what the meter would show with so many turns; the heavy line is what it showed. Blue bars fit both readings."
            .to_owned(),
        format!(
            "Read {place}; the lead-in is {} long, and the legs may be off by {} %.",
            format_plan_both(inputs.lead_in.length.into(), system),
            inputs.size_uncertainty_percent
        ),
    ];
    if let Some(test) = &report.settling_test {
        notes.push(format!("What would settle it: {}, {} minutes.", test.label, test.minutes));
    }
    notes
}
