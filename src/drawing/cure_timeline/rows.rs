//! Bars below the weather, on the same hours: rain, when the work could begin, the work, and the milestones of its cure.

use super::time_axis::{LEFT, RIGHT, TimeAxis, format_time, format_time_span};
use crate::calculation::cure_guidance::{CureGuidanceReport, CureHour, CureMilestoneReached, CureWindow};
use crate::drawing::canvas::{Canvas, INNER, MARGIN};
use crate::vocabulary::Vocabulary;

/// The height of a bar.
const BAR_HEIGHT: f64 = 9.0;
/// The smallest width of a bar, so that a minute is visible among days.
const MIN_BAR_WIDTH: f64 = 2.0;
/// The most windows that are listed in words.
const MAX_WINDOWS: usize = 4;

/// How a bar is drawn.
#[derive(Clone, Copy, PartialEq)]
enum BarStyle {
    Filled,
    Open,
    Hatched,
    Shaded,
    /// Shaded, with an arrow: it goes on beyond the weather.
    ShadedOpenEnded,
}

/// A row: its words, and its bars from hour to hour.
pub struct TimelineRow {
    /// What it says.
    pub words: String,
    bars: Vec<(f64, f64, BarStyle)>,
}

/// All rows of a report.
pub fn all(report: &CureGuidanceReport, hours: &[&CureHour], axis: &TimeAxis) -> Vec<TimelineRow> {
    let mut rows = vec![rain_row(hours, axis), windows_row(report, axis)];
    rows.extend(windows_once_dry_row(report, axis));
    rows.extend(work_row(report, axis));
    rows.extend(report.milestones.iter().map(|milestone| milestone_row(milestone, axis)));
    rows
}

/// Draws rows from `top` down; returns the lower edge.
pub fn draw(canvas: &mut Canvas, rows: &[TimelineRow], report: &CureGuidanceReport, axis: &TimeAxis, top: f64) -> f64 {
    let start = axis.time_x(&report.inputs.start);
    rows.iter().fold(top, |top, row| {
        let top = canvas.paragraph("", (MARGIN, top), INNER, &row.words) + 1.0;
        if row.bars.is_empty() {
            return top + 2.0;
        }
        let bottom = top + BAR_HEIGHT;
        canvas.line("fine", (LEFT, bottom), (RIGHT, bottom));
        for (from, to, style) in &row.bars {
            let left = axis.x(*from);
            draw_bar(canvas, (left, top), (axis.x(*to).max(left + MIN_BAR_WIDTH), bottom), *style);
        }
        canvas.line("line", (start, top - 1.0), (start, bottom + 2.0));
        bottom + 5.0
    })
}

fn draw_bar(canvas: &mut Canvas, from: (f64, f64), to: (f64, f64), style: BarStyle) {
    match style {
        BarStyle::Filled => canvas.rectangle("dot", from, to),
        BarStyle::Open => canvas.rectangle("line", from, to),
        BarStyle::Hatched => {
            canvas.hatch("fine", from, to, 4.0);
            canvas.rectangle("line", from, to);
        }
        BarStyle::Shaded => {
            canvas.rectangle("fill", from, to);
            canvas.rectangle("line", from, to);
        }
        BarStyle::ShadedOpenEnded => {
            canvas.rectangle("fill", from, to);
            canvas.polyline("line", &[(to.0, from.1), from, (from.0, to.1), to]);
            let middle = f64::midpoint(from.1, to.1);
            canvas.arrow("line", (to.0, middle), (to.0 + 12.0, middle));
        }
    }
}

/// Rain or snow hour by hour; neighbouring hours that are alike become one bar.
fn rain_row(hours: &[&CureHour], axis: &TimeAxis) -> TimelineRow {
    let style_of = |hour: &CureHour| match hour.rain {
        Some("likely") => Some(BarStyle::Filled),
        Some("possible") => Some(BarStyle::Open),
        Some(_) => None,
        None => Some(BarStyle::Hatched),
    };
    let mut bars: Vec<(f64, f64, BarStyle)> = Vec::new();
    for (index, hour) in hours.iter().enumerate() {
        let Some(style) = style_of(hour) else { continue };
        let from = axis.hours(&hour.time);
        let until = hours.get(index + 1).map_or(axis.end, |next| axis.hours(&next.time));
        match bars.last_mut() {
            Some((_, end, other)) if *other == style && (*end - from).abs() < 1e-6 => *end = until,
            _ => bars.push((from, until, style)),
        }
    }
    let has = |style: BarStyle| bars.iter().any(|(_, _, other)| *other == style);
    let mut texts = Vec::new();
    if has(BarStyle::Filled) {
        texts.push("likely where filled");
    }
    if has(BarStyle::Open) {
        texts.push("possible where open");
    }
    if has(BarStyle::Hatched) {
        texts.push("not known where hatched");
    }
    let is_silent = hours.iter().all(|hour| hour.rain.is_none());
    let words = match (is_silent, texts.is_empty()) {
        (true, _) => "not known: the weather does not say".to_owned(),
        (_, true) => "unlikely in every hour".to_owned(),
        _ => texts.join(", "),
    };
    TimelineRow { words: format!("Rain or snow: {words}."), bars: if is_silent { Vec::new() } else { bars } }
}

/// The starts that would do: shaded; all other hours from the start on are hatched.
fn windows_row(report: &CureGuidanceReport, axis: &TimeAxis) -> TimelineRow {
    let mut bars = Vec::new();
    let mut free = axis.hours(&report.inputs.start);
    for window in &report.windows {
        let (from, until) = (axis.hours(&window.start), axis.hours(&window.end));
        bars.push((free, from, BarStyle::Hatched));
        bars.push((from, until, BarStyle::Shaded));
        free = until;
    }
    bars.push((free, axis.end, BarStyle::Hatched));
    // Narrower than a minute is nothing.
    bars.retain(|(from, until, style)| *style == BarStyle::Shaded || until - from > 1.0 / 60.0);
    let words = match report.windows.as_slice() {
        [] if report.verdict.allows_start() => {
            "Begin: at the start; the weather ends before a later one is sure (hatched).".to_owned()
        }
        [] => "Begin: at no time of this weather (hatched).".to_owned(),
        windows => format!("Begin: {}; not where hatched.", list_windows(windows)),
    };
    TimelineRow { words, bars }
}

/// The starts that would do in a dried slot, where the slot as it is stops the work.
fn windows_once_dry_row(report: &CureGuidanceReport, axis: &TimeAxis) -> Option<TimelineRow> {
    let windows = report.windows_once_dry.as_slice();
    let bars = windows.iter().map(|window| (axis.hours(&window.start), axis.hours(&window.end), BarStyle::Open));
    let words = format!("Once the slot is dry, begin: {}.", list_windows(windows));
    (!windows.is_empty()).then(|| TimelineRow { words, bars: bars.collect() })
}

/// The first windows, in words.
fn list_windows(windows: &[CureWindow]) -> String {
    let mut texts: Vec<_> =
        windows.iter().take(MAX_WINDOWS).map(|window| format_time_span(&window.start, &window.end)).collect();
    if windows.len() > MAX_WINDOWS {
        texts.push(format!("and {} more", windows.len() - MAX_WINDOWS));
    }
    texts.join("; ")
}

/// The work that the milestones count from; `None` where there is none.
fn work_row(report: &CureGuidanceReport, axis: &TimeAxis) -> Option<TimelineRow> {
    let (from, sealed) = (report.milestones_from.as_ref()?, report.last_foot_sealed.as_ref()?);
    let begun = if *from == report.inputs.start { "Work" } else { "Work, begun with the first window" };
    let words = format!("{begun}: {}, when the last foot is sealed.", format_time_span(from, sealed));
    Some(TimelineRow { words, bars: vec![(axis.hours(from), axis.hours(sealed), BarStyle::Filled)] })
}

/// A milestone from its earliest to its latest.
fn milestone_row(milestone: &CureMilestoneReached, axis: &TimeAxis) -> TimelineRow {
    let name = milestone.milestone.label();
    let far = match (milestone.progress_low_percent, milestone.progress_high_percent) {
        (Some(low), Some(high)) if low < high => format!(" (by its end {low} to {high}\u{a0}% done)"),
        (Some(low), _) => format!(" (by its end {low}\u{a0}% done)"),
        _ => String::new(),
    };
    let (words, bars) = match (&milestone.earliest, &milestone.latest) {
        (Some(earliest), Some(latest)) => {
            let bar = (axis.hours(earliest), axis.hours(latest), BarStyle::Shaded);
            (format_time_span(earliest, latest), vec![bar])
        }
        (Some(earliest), None) => {
            let bar = (axis.hours(earliest), axis.end, BarStyle::ShadedOpenEnded);
            (format!("{} at the earliest, at the latest after this weather{far}", format_time(earliest)), vec![bar])
        }
        _ => (format!("after this weather{far}"), Vec::new()),
    };
    TimelineRow { words: format!("{name}: {words}."), bars }
}
