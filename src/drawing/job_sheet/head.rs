//! What the sheet is for, lines to be filled in by hand, what stops the job, and warnings.

use maud::{Markup, html};

use super::format::{findings_of, format_time, message_list};
use crate::calculation::installation_plan::InstallationPlanReport;
use crate::calculation::report::{Finding, Statement};
use crate::drawing::dimension_text::format_plan;
use crate::drawing::plan;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::wording::Reader;

/// The job in a phrase: what closes the opening, and its width.
pub fn say_opening(report: &InstallationPlanReport, reader: Reader) -> Statement {
    let opening = &report.sizing.inputs.opening;
    plan::say_opening(opening, format_plan(opening.width.into(), reader))
}

/// The head of the sheet, with blank lines for the job, the date and the name.
pub fn masthead(opening: &Statement, reader: Reader) -> Markup {
    let blanks = [
        ("job", Statement::new("sheet-job")),
        ("date", Statement::new("sheet-date")),
        ("by", Statement::new("sheet-by")),
    ];
    html! {
        header {
            h1 { (reader.say(&Statement::new("sheet-name"))) }
            p { (reader.say(opening)) }
            p.blanks {
                @for (class, name) in &blanks {
                    span class=(class) { (reader.say(name)) span.line { } }
                }
            }
        }
    }
}

/// What must not be done as planned.
pub fn stops(report: &InstallationPlanReport, reader: Reader) -> Markup {
    let is_of_cure = |finding: &Finding| {
        report.cure.as_ref().is_some_and(|cure| {
            cure.findings.iter().any(|other| other.code == finding.code && other.message == finding.message)
        })
    };
    let build = findings_of(report, Level::Stop, |finding| !is_of_cure(finding), reader);
    let seal = findings_of(report, Level::Stop, is_of_cure, reader);
    let start = report.cure.as_ref().map(|cure| format_time(&cure.inputs.start)).unwrap_or_default();
    let no_sealing = Statement::new("sheet-do-not-seal").text("start", start);
    html! {
        @if !build.is_empty() {
            section.stop { h2 { (reader.say(&Statement::new("sheet-do-not-build"))) } (message_list(&build, reader)) }
        }
        @if !seal.is_empty() {
            section.stop { h2 { (reader.say(&no_sealing)) } (message_list(&seal, reader)) }
        }
    }
}

/// What to know before the work begins. Missing prices do not concern the people on site.
pub fn warnings(report: &InstallationPlanReport, reader: Reader) -> Markup {
    let is_for_crew = |finding: &Finding| !matches!(finding.code, FindingCode::Unpriced | FindingCode::PriceKeyUnknown);
    let messages = findings_of(report, Level::Warning, is_for_crew, reader);
    html! {
        @if !messages.is_empty() {
            section { h2 { (reader.say(&Statement::new("sheet-warnings"))) } (message_list(&messages, reader)) }
        }
    }
}
