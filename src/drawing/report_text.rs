//! The text of every drawing: its heading, what stops the job, warnings, notes and the footer.

use super::canvas::{Canvas, GAP, INNER, MARGIN, WIDTH};
use crate::calculation::report::{Finding, Statement};
use crate::practice::finding_codes::Level;
use crate::wording::Reader;

/// The most messages of a level that a drawing shows; the report holds all.
const MAX_MESSAGES: usize = 4;

/// The heading over the stops of a drawing that is built from.
pub fn build_stop_heading() -> Statement {
    Statement::new("drawings-do-not-build")
}

/// The heading over the warnings.
fn warnings_heading(reader: Reader) -> String {
    reader.say(&Statement::new("drawings-warnings")).into_owned()
}

/// Draws the heading; returns its lower edge. A figure has none.
pub fn draw_heading(canvas: &mut Canvas, title: &str) -> f64 {
    if canvas.is_figure() {
        return GAP;
    }
    canvas.paragraph("head", (MARGIN, MARGIN), INNER, title) + 2.0
}

/// Draws a frame that says what not to do, and why, when a finding stops the job; returns the lower edge.
///
/// `name_subject` names the loop of a finding as the drawing does. A figure says only what not to do: it never looks sound where the
/// job is not.
pub fn draw_stops(
    canvas: &mut Canvas,
    top: f64,
    heading: &Statement,
    findings: &[Finding],
    name_subject: impl Fn(&Finding) -> Option<String>,
    reader: Reader,
) -> f64 {
    let mut messages = format_messages(findings, Level::Stop, name_subject, reader);
    if messages.is_empty() {
        return top;
    }
    let (left, line_width) = (MARGIN + 6.0, INNER - 12.0);
    let mut heading = reader.say(heading).into_owned();
    if canvas.is_figure() {
        messages.clear();
    } else {
        heading += reader.colon().trim_end_matches(' ');
    }
    let top = top + 2.0;
    let mut bottom = canvas.paragraph("strong stop", (left, top + 3.0), line_width, &heading);
    for message in &messages {
        bottom = canvas.paragraph("stop", (left, bottom), line_width, message);
    }
    canvas.rectangle("frame", (MARGIN, top), (WIDTH - MARGIN, bottom + 5.0));
    bottom + 5.0 + GAP
}

/// Draws the warnings of a report; returns the lower edge. A figure has none.
pub fn draw_warnings(
    canvas: &mut Canvas,
    top: f64,
    findings: &[Finding],
    name_subject: impl Fn(&Finding) -> Option<String>,
    reader: Reader,
) -> f64 {
    let messages = format_messages(findings, Level::Warning, name_subject, reader);
    if messages.is_empty() || canvas.is_figure() {
        return top;
    }
    let mut bottom = canvas.paragraph("strong", (MARGIN, top), INNER, &warnings_heading(reader));
    for message in &messages {
        bottom = canvas.paragraph("", (MARGIN, bottom), INNER, message);
    }
    bottom + GAP
}

/// Draws notes, one paragraph each; returns the lower edge. A figure has none.
pub fn draw_notes(canvas: &mut Canvas, top: f64, notes: &[String]) -> f64 {
    if canvas.is_figure() {
        return top;
    }
    notes.iter().fold(top, |top, note| canvas.paragraph("", (MARGIN, top), INNER, note) + 2.0)
}

/// Draws the rule and the text that end a drawing; returns the height of the drawing. A figure has none.
pub fn draw_footer(canvas: &mut Canvas, top: f64, engine: &'static str, reader: Reader) -> f64 {
    if canvas.is_figure() {
        // The space before notes and that behind them are one.
        return top - GAP;
    }
    canvas.line("fine", (MARGIN, top + 3.0), (WIDTH - MARGIN, top + 3.0));
    canvas.paragraph("", (MARGIN, top + 5.0), INNER, &format_footer(engine, reader)) + MARGIN
}

/// What a loop never does, who decides, and the release that computed the report.
pub fn format_footer(engine: &'static str, reader: Reader) -> String {
    reader.say(&Statement::new("drawings-footer").text("engine", engine)).into_owned()
}

/// Stops and warnings as running text, for readers that do not see the drawing.
pub fn describe_findings(
    stop_heading: &Statement,
    findings: &[Finding],
    name_subject: impl Fn(&Finding) -> Option<String>,
    reader: Reader,
) -> String {
    let stops = format_messages(findings, Level::Stop, &name_subject, reader);
    let warnings = format_messages(findings, Level::Warning, &name_subject, reader);
    let part = |heading: &str, messages: Vec<String>| {
        if messages.is_empty() { String::new() } else { format!(" {heading}{}{}", reader.colon(), messages.join(" ")) }
    };
    part(&reader.say(stop_heading), stops) + &part(&warnings_heading(reader), warnings)
}

/// The messages of findings, each once, with the subjects of all findings that have it.
pub fn group_by_message<'a>(
    findings: impl Iterator<Item = &'a Finding>,
    name_subject: impl Fn(&Finding) -> Option<String>,
) -> Vec<(Vec<String>, &'a str)> {
    let mut groups: Vec<(Vec<String>, &str)> = Vec::new();
    for finding in findings {
        let subject = name_subject(finding);
        match groups.iter_mut().find(|(_, message)| *message == finding.message.words()) {
            Some((subjects, _)) => subjects.extend(subject),
            None => groups.push((subject.into_iter().collect(), finding.message.words())),
        }
    }
    groups
}

/// The messages of a level, each once, after the names of the loops that it is about.
fn format_messages(
    findings: &[Finding],
    level: Level,
    name_subject: impl Fn(&Finding) -> Option<String>,
    reader: Reader,
) -> Vec<String> {
    let groups = group_by_message(findings.iter().filter(|finding| finding.level == level), name_subject);
    let more = groups.len().saturating_sub(MAX_MESSAGES);
    let mut messages: Vec<_> = groups
        .into_iter()
        .take(MAX_MESSAGES)
        .map(|(mut subjects, message)| {
            subjects.sort();
            subjects.dedup();
            if subjects.is_empty() {
                message.to_owned()
            } else {
                format!("{}{}{message}", subjects.join(", "), reader.colon())
            }
        })
        .collect();
    if more > 0 {
        messages.push(reader.say(&Statement::new("drawings-more").count("more", more as u64)).into_owned());
    }
    messages
}
