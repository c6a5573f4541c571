//! Bars below the weather, on the same hours: rain, when the work could begin, the work, and the milestones of its cure.

use super::time_axis::{LEFT, RIGHT, TimeAxis};
use crate::calculation::cure_guidance::{CureGuidanceReport, CureHour, CureMilestoneReached, CureWindow};
use crate::calculation::report::{ListJoin, Statement};
use crate::drawing::canvas::{Canvas, INNER, MARGIN};
use crate::drawing::dimension_text::format_percent;
use crate::drawing::time_text::{format_time, format_time_span};
use crate::wording::Reader;

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
pub fn all(report: &CureGuidanceReport, hours: &[&CureHour], axis: &TimeAxis, reader: Reader) -> Vec<TimelineRow> {
    let mut rows = vec![rain_row(hours, axis, reader), windows_row(report, axis, reader)];
    rows.extend(windows_once_dry_row(report, axis, reader));
    rows.extend(work_row(report, axis, reader));
    rows.extend(report.milestones.iter().map(|milestone| milestone_row(milestone, axis, reader)));
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
fn rain_row(hours: &[&CureHour], axis: &TimeAxis, reader: Reader) -> TimelineRow {
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
    let kinds = [(BarStyle::Filled, "likely"), (BarStyle::Open, "possible"), (BarStyle::Hatched, "not_known")];
    let kinds = kinds.into_iter().filter(|(style, _)| has(*style));
    let kinds: Vec<_> = kinds.map(|(_, rain)| Statement::new("drawings-cure-rain-kind").code("rain", rain)).collect();
    let is_silent = hours.iter().all(|hour| hour.rain.is_none());
    let told = match (is_silent, kinds.is_empty()) {
        (true, _) => "nothing",
        (_, true) => "unlikely",
        _ => "kinds",
    };
    let words = Statement::new("drawings-cure-rain").code("told", told).phrases("kinds", kinds, ListJoin::Comma);
    let words = reader.say(&words).into_owned();
    TimelineRow { words, bars: if is_silent { Vec::new() } else { bars } }
}

/// The starts that would do: shaded; all other hours from the start on are hatched.
fn windows_row(report: &CureGuidanceReport, axis: &TimeAxis, reader: Reader) -> TimelineRow {
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
        [] if report.verdict.allows_start() => Statement::new("drawings-cure-begin-at-start"),
        [] => Statement::new("drawings-cure-begin-never"),
        windows => list_windows(Statement::new("drawings-cure-begin"), windows, reader),
    };
    TimelineRow { words: reader.say(&words).into_owned(), bars }
}

/// The starts that would do in a dried slot, where the slot as it is stops the work.
fn windows_once_dry_row(report: &CureGuidanceReport, axis: &TimeAxis, reader: Reader) -> Option<TimelineRow> {
    let windows = report.windows_once_dry.as_slice();
    let bars = windows.iter().map(|window| (axis.hours(&window.start), axis.hours(&window.end), BarStyle::Open));
    let words = list_windows(Statement::new("drawings-cure-begin-once-dry"), windows, reader);
    (!windows.is_empty()).then(|| TimelineRow { words: reader.say(&words).into_owned(), bars: bars.collect() })
}

/// Adds the first windows to a sentence.
fn list_windows(words: Statement, windows: &[CureWindow], reader: Reader) -> Statement {
    let span = |window: &CureWindow| format_time_span(&window.start, &window.end, reader);
    let mut texts: Vec<_> = windows.iter().take(MAX_WINDOWS).map(span).collect();
    if windows.len() > MAX_WINDOWS {
        let more = Statement::new("drawings-cure-more-windows").count("more", (windows.len() - MAX_WINDOWS) as u64);
        texts.push(reader.say(&more).into_owned());
    }
    words.text("windows", texts.join("; "))
}

/// The work that the milestones count from; `None` where there is none.
fn work_row(report: &CureGuidanceReport, axis: &TimeAxis, reader: Reader) -> Option<TimelineRow> {
    let (from, sealed) = (report.milestones_from.as_ref()?, report.last_foot_sealed.as_ref()?);
    let words = Statement::new("drawings-cure-work")
        .code("begun", if *from == report.inputs.start { "at_start" } else { "later" })
        .text("span", format_time_span(from, sealed, reader));
    let bars = vec![(axis.hours(from), axis.hours(sealed), BarStyle::Filled)];
    Some(TimelineRow { words: reader.say(&words).into_owned(), bars })
}

/// A milestone from its earliest to its latest.
fn milestone_row(milestone: &CureMilestoneReached, axis: &TimeAxis, reader: Reader) -> TimelineRow {
    let progress = match (milestone.progress_low_percent, milestone.progress_high_percent) {
        (Some(low), Some(high)) if low < high => Some((reader.number(low), high)),
        (Some(low), _) => Some((String::new(), low)),
        _ => None,
    };
    let (reached, bars) = match (&milestone.earliest, &milestone.latest) {
        (Some(earliest), Some(latest)) => {
            let bar = (axis.hours(earliest), axis.hours(latest), BarStyle::Shaded);
            ("both", vec![bar])
        }
        (Some(earliest), None) => ("earliest", vec![(axis.hours(earliest), axis.end, BarStyle::ShadedOpenEnded)]),
        _ => ("none", Vec::new()),
    };
    let span = milestone.earliest.as_deref().zip(milestone.latest.as_deref());
    let words = Statement::new("drawings-cure-milestone")
        .member("milestone", milestone.milestone)
        .code("reached", reached)
        .text("span", span.map_or_else(String::new, |(from, until)| format_time_span(from, until, reader)))
        .text("earliest", milestone.earliest.as_deref().map_or_else(String::new, |time| format_time(time, reader)))
        .code(
            "progress",
            match &progress {
                Some((low, _)) if low.is_empty() => "one",
                Some(_) => "band",
                None => "none",
            },
        )
        .text("low", progress.as_ref().map_or_else(String::new, |(low, _)| low.clone()))
        .text("high", progress.map_or_else(String::new, |(_, high)| format_percent(high, reader)));
    TimelineRow { words: reader.say(&words).into_owned(), bars }
}
