//! Bars below the weather, to its hours: rain, when it could be applied, and what the sealant comes to.

use super::clock::{Clock, LEFT, RIGHT, say, say_span};
use crate::calculation::cure_guidance::{CureGuidanceReport, CureHour, CureMilestoneReached};
use crate::drawing::sheet::{INNER, MARGIN, Sheet};
use crate::drawing::words;
use crate::practice::cure::CureMilestone;

/// How high a bar is.
const BAR: f64 = 9.0;
/// The least width of a bar, so that a minute is seen among days.
const MIN_BAR: f64 = 2.0;
/// The most windows that are named in words.
const MAX_WINDOWS: usize = 4;

/// How a bar is drawn.
#[derive(Clone, Copy, PartialEq)]
enum Look {
    Filled,
    Open,
    Hatched,
    Shaded,
    /// Shaded, and it goes on beyond the weather.
    ShadedOn,
}

/// A row: its words, and its bars by the hour.
pub struct Row {
    /// What it says.
    pub words: String,
    bars: Vec<(f64, f64, Look)>,
}

/// All rows of a report.
pub fn all(report: &CureGuidanceReport, clock: &Clock) -> Vec<Row> {
    let mut rows = vec![rain(report, clock), windows(report, clock)];
    rows.extend(report.milestones.iter().map(|milestone| reached(milestone, clock)));
    rows
}

/// Draws rows from `top` down; gives the lower edge.
pub fn draw(sheet: &mut Sheet, rows: &[Row], report: &CureGuidanceReport, clock: &Clock, top: f64) -> f64 {
    let start = clock.place(&report.inputs.start);
    rows.iter().fold(top, |top, row| {
        let top = sheet.paragraph("", (MARGIN, top), INNER, &row.words) + 1.0;
        if row.bars.is_empty() {
            return top + 2.0;
        }
        let foot = top + BAR;
        sheet.line("fine", (LEFT, foot), (RIGHT, foot));
        for (from, to, look) in &row.bars {
            let left = clock.x(*from);
            bar(sheet, (left, top), (clock.x(*to).max(left + MIN_BAR), foot), *look);
        }
        sheet.line("line", (start, top - 1.0), (start, foot + 2.0));
        foot + 5.0
    })
}

fn bar(sheet: &mut Sheet, from: (f64, f64), to: (f64, f64), look: Look) {
    match look {
        Look::Filled => sheet.rectangle("dot", from, to),
        Look::Open => sheet.rectangle("line", from, to),
        Look::Hatched => {
            sheet.hatch("fine", from, to, 4.0);
            sheet.rectangle("line", from, to);
        }
        Look::Shaded => {
            sheet.rectangle("fill", from, to);
            sheet.rectangle("line", from, to);
        }
        Look::ShadedOn => {
            sheet.rectangle("fill", from, to);
            sheet.polyline("line", &[(to.0, from.1), from, (from.0, to.1), to]);
            let middle = f64::midpoint(from.1, to.1);
            sheet.arrow("line", (to.0, middle), (to.0 + 12.0, middle));
        }
    }
}

/// Rain or snow hour by hour; neighbours alike are one bar.
fn rain(report: &CureGuidanceReport, clock: &Clock) -> Row {
    let look = |hour: &CureHour| match hour.rain {
        Some("likely") => Some(Look::Filled),
        Some("possible") => Some(Look::Open),
        Some(_) => None,
        None => Some(Look::Hatched),
    };
    let mut bars: Vec<(f64, f64, Look)> = Vec::new();
    for (index, hour) in report.hourly.iter().enumerate() {
        let Some(look) = look(hour) else { continue };
        let from = clock.hours(&hour.time);
        let until = report.hourly.get(index + 1).map_or(clock.end, |next| clock.hours(&next.time));
        match bars.last_mut() {
            Some((_, end, other)) if *other == look && (*end - from).abs() < 1e-6 => *end = until,
            _ => bars.push((from, until, look)),
        }
    }
    let has = |look: Look| bars.iter().any(|(_, _, other)| *other == look);
    let mut said = Vec::new();
    if has(Look::Filled) {
        said.push("likely where filled");
    }
    if has(Look::Open) {
        said.push("possible where open");
    }
    if has(Look::Hatched) {
        said.push("not known where hatched");
    }
    let is_silent = report.hourly.iter().all(|hour| hour.rain.is_none());
    let words = match (is_silent, said.is_empty()) {
        (true, _) => "not known: the weather does not say".to_owned(),
        (_, true) => "unlikely in every hour".to_owned(),
        _ => said.join(", "),
    };
    Row { words: format!("Rain or snow: {words}."), bars: if is_silent { Vec::new() } else { bars } }
}

/// When the work would pass, a dry slot supposed.
fn windows(report: &CureGuidanceReport, clock: &Clock) -> Row {
    let windows = &report.windows;
    if windows.is_empty() {
        return Row { words: "Could be applied: in no hour of this weather.".to_owned(), bars: Vec::new() };
    }
    let mut said: Vec<_> =
        windows.iter().take(MAX_WINDOWS).map(|window| say_span(&window.start, &window.end)).collect();
    if windows.len() > MAX_WINDOWS {
        said.push(format!("and {} more", windows.len() - MAX_WINDOWS));
    }
    let bars = windows.iter().map(|window| (clock.hours(&window.start), clock.hours(&window.end), Look::Hatched));
    Row { words: format!("Could be applied to a dry slot: {}.", said.join("; ")), bars: bars.collect() }
}

/// A milestone from its earliest to its latest.
fn reached(milestone: &CureMilestoneReached, clock: &Clock) -> Row {
    let name = words::label::<CureMilestone>(milestone.milestone);
    let far = match (milestone.progress_low_percent, milestone.progress_high_percent) {
        (Some(low), Some(high)) if low < high => format!(" (by its end {low} to {high}\u{a0}% done)"),
        (Some(low), _) => format!(" (by its end {low}\u{a0}% done)"),
        _ => String::new(),
    };
    let (words, bars) = match (&milestone.earliest, &milestone.latest) {
        (Some(earliest), Some(latest)) => {
            let bar = (clock.hours(earliest), clock.hours(latest), Look::Shaded);
            (say_span(earliest, latest), vec![bar])
        }
        (Some(earliest), None) => {
            let bar = (clock.hours(earliest), clock.end, Look::ShadedOn);
            (format!("{} at the earliest, at the latest after this weather{far}", say(earliest)), vec![bar])
        }
        _ => (format!("after this weather{far}"), Vec::new()),
    };
    Row { words: format!("{name}: {words}."), bars }
}
