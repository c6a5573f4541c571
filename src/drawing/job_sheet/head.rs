//! What the sheet is for, lines to be filled in by hand, what stops the job, and warnings.

use maud::{Markup, html};

use super::format::{findings_of, format_time, message_list};
use crate::calculation::installation_plan::InstallationPlanReport;
use crate::calculation::report::Finding;
use crate::drawing::dimension_text::format_plan;
use crate::drawing::plan::format_opening;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::quantity::UnitSystem;

/// The job in a phrase: what closes the opening, and its width.
pub fn format_title(report: &InstallationPlanReport, system: UnitSystem) -> String {
    let opening = &report.sizing.inputs.opening;
    format_opening(opening, &format_plan(opening.width.into(), system))
}

/// The head of the sheet, with blank lines for the job, the date and the name.
pub fn masthead(title: &str) -> Markup {
    html! {
        header {
            h1 { "Job sheet" }
            p { (title) }
            p.blanks {
                @for name in ["Job", "Date", "By"] {
                    span class=(name.to_lowercase()) { (name) span.line { } }
                }
            }
        }
    }
}

/// What must not be done as planned.
pub fn stops(report: &InstallationPlanReport) -> Markup {
    let is_of_cure = |finding: &Finding| {
        report.cure.as_ref().is_some_and(|cure| {
            cure.findings.iter().any(|other| other.code == finding.code && other.message == finding.message)
        })
    };
    let build = findings_of(&report.findings, Level::Stop, |finding| !is_of_cure(finding));
    let seal = findings_of(&report.findings, Level::Stop, is_of_cure);
    let start = report.cure.as_ref().map(|cure| format_time(&cure.inputs.start)).unwrap_or_default();
    html! {
        @if !build.is_empty() {
            section.stop { h2 { "Do not build as planned" } (message_list(&build)) }
        }
        @if !seal.is_empty() {
            section.stop { h2 { "Do not build as planned: no sealing at " (start) } (message_list(&seal)) }
        }
    }
}

/// What to know before the work begins. Missing prices do not concern the people on site.
pub fn warnings(report: &InstallationPlanReport) -> Markup {
    let messages = findings_of(&report.findings, Level::Warning, |finding| {
        !matches!(finding.code, FindingCode::Unpriced | FindingCode::PriceKeyUnknown)
    });
    html! {
        @if !messages.is_empty() {
            section { h2 { "Warnings" } (message_list(&messages)) }
        }
    }
}
