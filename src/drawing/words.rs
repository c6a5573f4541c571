//! What every drawing says in words: its heading, what stops the job, warnings, and the foot.

use super::letters::{LEADING, SIZE};
use super::sheet::{INNER, MARGIN, Sheet, WIDTH};
use crate::calculation::report::Finding;
use crate::practice::findings::Level;
use crate::vocabulary::Vocabulary;

/// The most statements of a level that a drawing spells out; the report holds all.
const MAX_MESSAGES: usize = 4;
/// The space between parts of a sheet.
pub const GAP: f64 = 8.0;
/// What heads the stops of a drawing that is built from.
pub const BUILD: &str = "Do not build as drawn";

/// The heading; gives its lower edge.
pub fn head(sheet: &mut Sheet, title: &str) -> f64 {
    sheet.paragraph("head", (MARGIN, MARGIN), INNER, title) + 2.0
}

/// A frame that says what not to do, and why, when a finding stops the job; gives the lower edge.
///
/// `mark` names the loop of a finding as the drawing does.
pub fn stops(
    sheet: &mut Sheet,
    top: f64,
    heading: &str,
    findings: &[Finding],
    mark: impl Fn(&Finding) -> Option<String>,
) -> f64 {
    let statements = statements(findings, Level::Stop, mark);
    if statements.is_empty() {
        return top;
    }
    let (left, most) = (MARGIN + 6.0, INNER - 12.0);
    let top = top + 2.0;
    let mut bottom = sheet.paragraph("strong stop", (left, top + 3.0), most, &format!("{heading}:"));
    for statement in &statements {
        bottom = sheet.paragraph("stop", (left, bottom), most, statement);
    }
    sheet.rectangle("frame", (MARGIN, top), (WIDTH - MARGIN, bottom + 5.0));
    bottom + 5.0 + GAP
}

/// The warnings of a report; gives the lower edge.
pub fn warnings(sheet: &mut Sheet, top: f64, findings: &[Finding], mark: impl Fn(&Finding) -> Option<String>) -> f64 {
    let statements = statements(findings, Level::Warning, mark);
    if statements.is_empty() {
        return top;
    }
    let mut bottom = sheet.paragraph("strong", (MARGIN, top), INNER, "Warnings");
    for statement in &statements {
        bottom = sheet.paragraph("", (MARGIN, bottom), INNER, statement);
    }
    bottom + GAP
}

/// Notes, one paragraph each; gives the lower edge.
pub fn notes(sheet: &mut Sheet, top: f64, notes: &[String]) -> f64 {
    notes.iter().fold(top, |top, note| sheet.paragraph("", (MARGIN, top), INNER, note) + 2.0)
}

/// The rule that ends a sheet, what a loop never does, and the release that computed; gives the height of the sheet.
pub fn foot(sheet: &mut Sheet, top: f64, engine: &str) -> f64 {
    sheet.line("fine", (MARGIN, top + 3.0), (WIDTH - MARGIN, top + 3.0));
    let words = format!(
        "A loop sees metal, not people: it protects nobody. Local codes, data sheets and licensed people decide. Loopwright {engine}"
    );
    sheet.paragraph("", (MARGIN, top + 5.0), INNER, &words) + MARGIN
}

/// What is told of findings to those who do not see the drawing.
pub fn told(heading: &str, findings: &[Finding], mark: impl Fn(&Finding) -> Option<String>) -> String {
    let stops = statements(findings, Level::Stop, &mark);
    let warnings = statements(findings, Level::Warning, &mark);
    let part = |name: &str, statements: Vec<String>| {
        if statements.is_empty() { String::new() } else { format!(" {name}: {}", statements.join(" ")) }
    };
    part(heading, stops) + &part("Warnings", warnings)
}

/// The statements of a level, each once, with the loops that it is about.
fn statements(findings: &[Finding], level: Level, mark: impl Fn(&Finding) -> Option<String>) -> Vec<String> {
    let mut found: Vec<(&str, Vec<String>)> = Vec::new();
    for finding in findings.iter().filter(|finding| finding.level == level) {
        let marks = mark(finding);
        match found.iter_mut().find(|(message, _)| *message == finding.message) {
            Some((_, others)) => others.extend(marks),
            None => found.push((&finding.message, marks.into_iter().collect())),
        }
    }
    let more = found.len().saturating_sub(MAX_MESSAGES);
    let mut said: Vec<_> = found
        .into_iter()
        .take(MAX_MESSAGES)
        .map(|(message, mut marks)| {
            marks.sort();
            marks.dedup();
            if marks.is_empty() { message.to_owned() } else { format!("{}: {message}", marks.join(", ")) }
        })
        .collect();
    if more > 0 {
        said.push(format!("And {more} more: the report holds them."));
    }
    said
}

/// The label of a code; the code itself where the list does not hold it.
pub fn label<V: Vocabulary>(code: &'static str) -> &'static str {
    V::ALL.iter().find(|member| member.code() == code).map_or(code, |member| member.label())
}

/// The height of so many lines of text.
pub fn lines(count: usize) -> f64 {
    count as f64 * LEADING * SIZE
}
