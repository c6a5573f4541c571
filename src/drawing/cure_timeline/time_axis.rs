//! Hours along the canvas, in the local time of the start.

use jiff::ToSpan;
use jiff::civil::DateTime;

use crate::calculation::cure_guidance::{CureGuidanceReport, CureHour};
use crate::drawing::canvas::{Canvas, MARGIN, WIDTH};
use crate::drawing::text_metrics::{TEXT_SIZE, lines_height, max_width};
use crate::drawing::time_text::{format_date, parse_local};
use crate::wording::Reader;

/// The left edge of the weather.
pub const LEFT: f64 = 40.0;
/// Its right edge.
pub const RIGHT: f64 = WIDTH - 44.0;
/// The smallest distance of two times beside each other.
const MIN_TIME_DISTANCE: f64 = 40.0;
/// The smallest space between two dates.
const MIN_DATE_GAP: f64 = 5.0;

/// The period of weather that is drawn, along the canvas.
pub struct TimeAxis {
    begin: DateTime,
    /// Its end, hours from the beginning.
    pub end: f64,
}

/// The hours that are drawn: from the start on, and before it from the first that told of rain.
pub fn drawn_hours(report: &CureGuidanceReport) -> Vec<&CureHour> {
    let is_rainy = |hour: &CureHour| matches!(hour.rain, Some("likely" | "possible"));
    let before = report.hours_before.iter().skip_while(|hour| !is_rainy(hour));
    before.chain(&report.hourly).collect()
}

impl TimeAxis {
    /// The axis of hours of a report, which always holds one.
    pub fn new(report: &CureGuidanceReport, hours: &[&CureHour]) -> Self {
        let first = hours.first().map_or(report.inputs.start.as_str(), |hour| hour.time.as_str());
        let mut axis = Self { begin: parse_local(first).unwrap_or_default(), end: 0.0 };
        axis.end = axis.hours(&report.inputs.weather_until).max(0.1);
        axis
    }

    /// Hours from the beginning to a time of the report.
    pub fn hours(&self, text: &str) -> f64 {
        parse_local(text).map_or(0.0, |at| at.duration_since(self.begin).as_secs_f64() / 3600.0)
    }

    /// The x coordinate of hours from the beginning.
    pub fn x(&self, hours: f64) -> f64 {
        LEFT + (RIGHT - LEFT) * (hours / self.end).clamp(0.0, 1.0)
    }

    /// The x coordinate of a time of the report.
    pub fn time_x(&self, text: &str) -> f64 {
        self.x(self.hours(text))
    }

    /// Hours from midnight to the beginning.
    fn hours_past_midnight(&self) -> f64 {
        f64::from(self.begin.hour()) + f64::from(self.begin.minute()) / 60.0 + f64::from(self.begin.second()) / 3600.0
    }

    /// Hours from the beginning to each multiple of a step in local time.
    fn steps(&self, step: f64) -> impl Iterator<Item = f64> {
        let past = self.hours_past_midnight();
        let first = (past / step - 1e-9).ceil() as i64;
        let last = ((past + self.end) / step + 1e-9).floor() as i64;
        (first..=last).map(move |index| index as f64 * step - past)
    }

    /// Hours from the beginning to each midnight.
    pub fn midnights(&self) -> impl Iterator<Item = f64> {
        self.steps(24.0)
    }

    /// Draws times and dates below the weather; returns the lower edge.
    pub fn draw(&self, canvas: &mut Canvas, reader: Reader, top: f64) -> f64 {
        canvas.line("line", (LEFT, top), (RIGHT, top));
        let fits = |step: &f64| step * (RIGHT - LEFT) / self.end >= MIN_TIME_DISTANCE;
        let mut bottom = top + 3.0;
        if let Some(step) = [1.0, 2.0, 3.0, 6.0, 12.0].into_iter().find(fits) {
            bottom += lines_height(1);
            for hours in self.steps(step) {
                let x = self.x(hours);
                canvas.line("line", (x, top), (x, top + 3.0));
                let hour = (hours + self.hours_past_midnight()).rem_euclid(24.0).round() as u32 % 24;
                canvas.text("middle", (x, bottom - 2.0), &format!("{hour:02}:00"));
            }
        }
        self.draw_dates(canvas, reader, top, bottom + lines_height(1));
        bottom + lines_height(1) + 4.0
    }

    fn draw_dates(&self, canvas: &mut Canvas, reader: Reader, top: f64, baseline: f64) {
        let mut days = vec![0.0];
        days.extend(self.midnights().filter(|hours| *hours > 0.0));
        let mut free = MARGIN;
        for hours in days {
            let x = self.x(hours);
            let words = format_date(self.begin.saturating_add((hours.round() as i64).hours()), reader);
            let half = max_width(&words, TEXT_SIZE, false) / 2.0;
            let middle = x.min(WIDTH - MARGIN - half);
            canvas.line("line", (x, top), (x, top + 5.0));
            if middle - half >= free {
                canvas.text("middle", (middle, baseline - 2.0), &words);
                free = middle + half + MIN_DATE_GAP;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::TimeAxis;

    #[test]
    fn hours_count_from_the_beginning_and_midnights_are_local() {
        let begin = "2026-01-20T21:30:00".parse().unwrap_or_default();
        let axis = TimeAxis { begin, end: 30.0 };
        assert!((axis.hours("2026-01-21T00:00:00-05:00") - 2.5).abs() < 1e-9);
        let midnights: Vec<_> = axis.midnights().collect();
        assert_eq!(midnights, [2.5, 26.5]);
    }
}
