//! Hours along the sheet, on the clock of the start.

use jiff::ToSpan;
use jiff::civil::DateTime;

use crate::calculation::cure_guidance::CureGuidanceReport;
use crate::drawing::letters::{SIZE, width};
use crate::drawing::sheet::{MARGIN, Sheet, WIDTH};
use crate::drawing::words::lines;

/// The left edge of the weather.
pub const LEFT: f64 = 40.0;
/// Its right edge.
pub const RIGHT: f64 = WIDTH - 44.0;
/// The least distance of two times beside each other.
const BETWEEN_TIMES: f64 = 40.0;
/// The space between two dates.
const BETWEEN_DATES: f64 = 5.0;
const MONTHS: [&str; 12] = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/// The stretch of weather that is drawn.
pub struct Clock {
    begin: DateTime,
    /// Its end, hours from the beginning.
    pub end: f64,
}

/// The clock's own reading of a time of the report: all times of a report stand on one clock, so the offset tells nothing more.
fn read(text: &str) -> Option<DateTime> {
    text.get(..19)?.parse().ok()
}

/// A date in a word or two.
fn date(at: DateTime) -> String {
    let month = MONTHS.get(usize::try_from(at.month() - 1).unwrap_or_default()).copied().unwrap_or_default();
    format!("{month}\u{a0}{}", at.day())
}

fn time(at: DateTime) -> String {
    format!("{:02}:{:02}", at.hour(), at.minute())
}

/// A time of the report in words: `Jan 20 13:00`.
pub fn say(text: &str) -> String {
    read(text).map_or_else(|| text.to_owned(), |at| format!("{}\u{a0}{}", date(at), time(at)))
}

/// From one time to another in words, the date only where it changes.
pub fn say_span(from: &str, to: &str) -> String {
    match (read(from), read(to)) {
        (Some(one), Some(other)) if one == other => say(from),
        (Some(one), Some(other)) if one.date() == other.date() => format!("{} to {}", say(from), time(other)),
        _ => format!("{} to {}", say(from), say(to)),
    }
}

impl Clock {
    /// The clock of a report; a report always holds an hour.
    pub fn of(report: &CureGuidanceReport) -> Self {
        let first = report.hourly.first().map_or(report.inputs.start.as_str(), |hour| hour.time.as_str());
        let mut clock = Self { begin: read(first).unwrap_or_default(), end: 0.0 };
        clock.end = clock.hours(&report.inputs.weather_until).max(0.1);
        clock
    }

    /// Hours from the beginning to a time of the report.
    pub fn hours(&self, text: &str) -> f64 {
        read(text).map_or(0.0, |at| at.duration_since(self.begin).as_secs_f64() / 3600.0)
    }

    /// An hour on the sheet.
    pub fn x(&self, hours: f64) -> f64 {
        LEFT + (RIGHT - LEFT) * (hours / self.end).clamp(0.0, 1.0)
    }

    /// A time of the report on the sheet.
    pub fn place(&self, text: &str) -> f64 {
        self.x(self.hours(text))
    }

    /// How far the beginning lies past midnight, hours.
    fn past_midnight(&self) -> f64 {
        f64::from(self.begin.hour()) + f64::from(self.begin.minute()) / 60.0 + f64::from(self.begin.second()) / 3600.0
    }

    /// Hours from the beginning to each multiple of a step on the clock.
    fn steps(&self, step: f64) -> impl Iterator<Item = f64> {
        let past = self.past_midnight();
        let first = (past / step - 1e-9).ceil() as i64;
        let last = ((past + self.end) / step + 1e-9).floor() as i64;
        (first..=last).map(move |index| index as f64 * step - past)
    }

    /// Hours from the beginning to each midnight.
    pub fn midnights(&self) -> impl Iterator<Item = f64> {
        self.steps(24.0)
    }

    /// Times and dates below the weather; gives the lower edge.
    pub fn axis(&self, sheet: &mut Sheet, top: f64) -> f64 {
        sheet.line("line", (LEFT, top), (RIGHT, top));
        let room = |step: &f64| step * (RIGHT - LEFT) / self.end >= BETWEEN_TIMES;
        let mut bottom = top + 3.0;
        if let Some(step) = [1.0, 2.0, 3.0, 6.0, 12.0].into_iter().find(room) {
            bottom += lines(1);
            for hours in self.steps(step) {
                let x = self.x(hours);
                sheet.line("line", (x, top), (x, top + 3.0));
                let hour = (hours + self.past_midnight()).rem_euclid(24.0).round() as u32 % 24;
                sheet.text("middle", (x, bottom - 2.0), &format!("{hour:02}:00"));
            }
        }
        self.dates(sheet, top, bottom + lines(1));
        bottom + lines(1) + 4.0
    }

    fn dates(&self, sheet: &mut Sheet, top: f64, baseline: f64) {
        let mut days = vec![0.0];
        days.extend(self.midnights().filter(|hours| *hours > 0.0));
        let mut free = MARGIN;
        for hours in days {
            let x = self.x(hours);
            let words = date(self.begin.saturating_add((hours.round() as i64).hours()));
            let half = width(&words, SIZE, false) / 2.0;
            let middle = x.min(WIDTH - MARGIN - half);
            sheet.line("line", (x, top), (x, top + 5.0));
            if middle - half >= free {
                sheet.text("middle", (middle, baseline - 2.0), &words);
                free = middle + half + BETWEEN_DATES;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Clock, say_span};

    #[test]
    fn a_span_names_its_date_once() {
        let plain = |from, to| say_span(from, to).replace('\u{a0}', " ");
        assert_eq!(plain("2026-01-20T17:05:00-05:00", "2026-01-20T19:40:00-05:00"), "Jan 20 17:05 to 19:40");
        assert_eq!(plain("2026-01-31T17:05:00-05:00", "2026-02-01T02:00:00-05:00"), "Jan 31 17:05 to Feb 1 02:00");
        assert_eq!(plain("2026-01-31T17:05:00-05:00", "2026-01-31T17:05:00-05:00"), "Jan 31 17:05");
    }

    #[test]
    fn hours_count_from_the_beginning_and_midnights_from_the_clock() {
        let begin = "2026-01-20T21:30:00".parse().unwrap_or_default();
        let clock = Clock { begin, end: 30.0 };
        assert!((clock.hours("2026-01-21T00:00:00-05:00") - 2.5).abs() < 1e-9);
        let midnights: Vec<_> = clock.midnights().collect();
        assert_eq!(midnights, [2.5, 26.5]);
    }
}
