//! Whether to seal, and when to open to traffic.

use maud::{Markup, html};

use super::build;
use super::format::format_time;
use crate::calculation::cure_guidance::{CureGuidanceReport, CureWindow};
use crate::calculation::installation_plan::InstallationPlanReport;
use crate::drawing::codes::format_code;
use crate::practice::finding_codes::Level;
use crate::practice::sealing::CureMilestone;
use crate::vocabulary::Vocabulary;

/// The most windows of application that the page lists; the report holds all.
const MAX_WINDOWS: usize = 4;

/// The section; without weather it has blank lines for what the crew finds.
pub fn section(report: &InstallationPlanReport) -> Markup {
    match &report.cure {
        Some(cure) => computed(cure),
        None if build::is_sawn(report) => html! {
            section {
                h2 { "Seal and open" }
                p {
                    "No weather was planned with: seal a dry, clean slot within the limits of the sealant's data sheet, and let traffic back \
                     when nothing tracks."
                }
                p.blanks {
                    @for name in ["Slab", "Air", "Sealed at", "Opened at"] { span { (name) span.line { } } }
                }
            }
        },
        None => html! {},
    }
}

fn computed(cure: &CureGuidanceReport) -> Markup {
    let until = format_time(&cure.inputs.weather_until);
    let is_assumed = cure.assumed.iter().any(|assumed| assumed.about == "#/surface_condition");
    let taken = if is_assumed { "taken to be " } else { "" };
    let starts = cure.verdict.allows_start().then(|| format_time(&cure.inputs.start));
    html! {
        section {
            h2 { "Seal and open" }
            p {
                b { (cure.verdict.label()) } @if let Some(start) = &starts { " at " (start) } ": "
                (cure.inputs.sealant.kind.label().to_lowercase()) ", slot " (taken)
                (format_code(cure.inputs.surface_condition.code())) "."
            }
            // What stops the job stands at its head.
            ul { @for reason in cure.reasons.iter().filter(|reason| reason.level != Level::Stop) { li { (reason.message) } } }
            @if starts.is_none() || !cure.windows.is_empty() { (begin("Begin: ", &cure.windows, &until)) }
            @if !cure.windows_once_dry.is_empty() {
                (begin("Once the slot is dry, begin: ", &cure.windows_once_dry, &until))
            }
            @if let (Some(from), Some(sealed)) = (&cure.milestones_from, &cure.last_foot_sealed) {
                div.wide { table {
                    thead { tr {
                        th { "Begun " (format_time(from)) ", last foot sealed " (format_time(sealed)) }
                        th { "Earliest" }
                        th { "Latest" }
                    } }
                    tbody {
                        @for reached in &cure.milestones {
                            tr class=[(reached.milestone == CureMilestone::OpenToTraffic).then_some("strong")] {
                                th { (reached.milestone.label()) }
                                td.tied { (reached.earliest.as_deref().map_or("beyond the forecast".to_owned(), format_time)) }
                                td.tied { (reached.latest.as_deref().map_or("beyond the forecast".to_owned(), format_time)) }
                            }
                        }
                    }
                } }
            }
            p { "Times are on the clock of the site (" (format_offset(&cure.inputs.start)) "); the forecast ends " (until) "." }
            @for advice in &cure.handling { p { (advice.message) } }
            p.blanks {
                @for name in ["Slab", "Air", "Sealed at", "Opened at"] { span { (name) span.line { } } }
            }
        }
    }
}

/// The starts that would do.
fn begin(heading: &str, windows: &[CureWindow], until: &str) -> Markup {
    html! {
        p {
            b { (heading) }
            @if windows.is_empty() { "at no time until " (until) }
            @for (index, window) in windows.iter().take(MAX_WINDOWS).enumerate() {
                @if index > 0 { "; " }
                (format_time(&window.start)) " to " (format_time(&window.end))
            }
            @if windows.len() > MAX_WINDOWS { "; more later" }
            "."
        }
    }
}

/// The offset of a clock: `UTC-05:00`.
fn format_offset(rfc3339: &str) -> String {
    let from = rfc3339.rfind(['+', '-', 'Z', 'z']).unwrap_or(rfc3339.len());
    match rfc3339.get(from..) {
        Some("Z" | "z") | None => "UTC".to_owned(),
        Some(offset) => format!("UTC{offset}"),
    }
}
