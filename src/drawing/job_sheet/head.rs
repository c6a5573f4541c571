//! What the sheet is for, lines to be filled in by hand, what stops the job, and warnings.

use maud::{Markup, html};

use super::say;
use crate::calculation::installation_plan::InstallationPlanReport;
use crate::calculation::report::Finding;
use crate::drawing::units;
use crate::practice::findings::{FindingCode, Level};
use crate::practice::site::Barrier;
use crate::quantity::UnitSystem;

/// The job in a phrase: what closes the opening, and its width.
pub fn title(report: &InstallationPlanReport, system: UnitSystem) -> String {
    let opening = &report.sizing.inputs.opening;
    let width = units::plan(opening.width, system);
    match opening.barrier {
        "none" => format!("lane without a barrier, {width} wide"),
        barrier => format!("{}, opening {width}", say::label::<Barrier>(barrier).to_lowercase()),
    }
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

/// What must not be done as planned, first of all and in words.
pub fn stops(report: &InstallationPlanReport) -> Markup {
    let is_of_cure = |finding: &Finding| {
        report.cure.as_ref().is_some_and(|cure| {
            cure.findings.iter().any(|other| other.code == finding.code && other.message == finding.message)
        })
    };
    let build = say::findings(&report.findings, Level::Stop, |finding| !is_of_cure(finding));
    let seal = say::findings(&report.findings, Level::Stop, is_of_cure);
    let start = report.cure.as_ref().map(|cure| say::time(&cure.inputs.start)).unwrap_or_default();
    html! {
        @if !build.is_empty() {
            section.stop { h2 { "Do not build as planned" } (say::list(&build)) }
        }
        @if !seal.is_empty() {
            section.stop { h2 { "Do not build as planned: no sealing at " (start) } (say::list(&seal)) }
        }
    }
}

/// What to know before the work begins; what is missing of prices is no matter of the site.
pub fn warnings(report: &InstallationPlanReport) -> Markup {
    let said = say::findings(&report.findings, Level::Warning, |finding| finding.code != FindingCode::Unpriced);
    html! {
        @if !said.is_empty() {
            section { h2 { "Warnings" } (say::list(&said)) }
        }
    }
}
