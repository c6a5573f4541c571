//! The steps of the work, the cautions in full, what was assumed, notes, and the foot.

use maud::{Markup, html};

use super::format::{findings_of, format_value, message_list, tick_box};
use crate::calculation::installation_plan::{InstallationPlanReport, PlanStep};
use crate::drawing::codes::format_code;
use crate::drawing::report_text::format_footer;
use crate::practice::cautions::CautionCode;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::job_steps::JobStep;
use crate::quantity::UnitSystem;
use crate::vocabulary::Vocabulary;

/// Assumed fields that cannot be checked on site: they serve only the counting of time, materials and money.
const NOT_ON_SITE: [&str; 5] =
    ["#/productivity/", "#/waste_percent", "#/wire_allowance_percent", "#/saw/blade_life", "#/prices"];

/// The steps, in order; each names its cautions by number.
pub fn steps(report: &InstallationPlanReport) -> Markup {
    let number = |code: &CautionCode| report.cautions.iter().position(|caution| caution.code == *code).map(|at| at + 1);
    html! {
        section {
            h2 { "Steps" }
            ol.ticks {
                @for step in &report.steps {
                    @let cautions: Vec<_> = step.cautions.iter().filter_map(number).map(|at| at.to_string()).collect();
                    li {
                        (tick_box()) b { (step.label) ". " } (message(step))
                        @if !cautions.is_empty() { " " span.mark { "Caution " (cautions.join(", ")) } }
                    }
                }
            }
        }
    }
}

/// What to do, without figures that stand in a table of the page.
fn message(step: &PlanStep) -> &str {
    match step.step {
        JobStep::MarkOut
        | JobStep::Cut
        | JobStep::Lay
        | JobStep::Bed
        | JobStep::MeasureOpen
        | JobStep::MeasureSealed
        | JobStep::Protect => step.step.description(),
        JobStep::Locate
        | JobStep::Guard
        | JobStep::Isolate
        | JobStep::Clean
        | JobStep::Seal
        | JobStep::Cover
        | JobStep::Terminate
        | JobStep::PowerUp
        | JobStep::Prove
        | JobStep::Restore => step.message.words(),
    }
}

/// All cautions in full, numbered.
pub fn cautions(report: &InstallationPlanReport) -> Markup {
    html! {
        section {
            h2 { "Cautions" }
            ol { @for caution in &report.cautions { li { (caution.message) } } }
        }
    }
}

/// What was assumed and is to be checked on site.
pub fn assumed(report: &InstallationPlanReport, system: UnitSystem) -> Markup {
    let on_site = |about: &str| !NOT_ON_SITE.iter().any(|start| about.starts_with(start));
    let assumed: Vec<_> = report.assumed.iter().filter(|assumed| on_site(&assumed.about)).collect();
    html! {
        @if !assumed.is_empty() {
            section {
                h2 { "Assumed: check on site" }
                ul.ticks.few {
                    @for assumed in assumed {
                        li { (tick_box()) (format_field(&assumed.about)) ": " b { (format_value(&assumed.value, system)) } }
                    }
                }
            }
        }
    }
}

/// A field of the request in words: `lead-in gauge`.
fn format_field(about: &str) -> String {
    let is_name = |part: &&str| !part.is_empty() && !part.chars().all(|letter| letter.is_ascii_digit());
    let parts: Vec<_> = about.trim_start_matches('#').split('/').filter(is_name).map(format_code).collect();
    parts.join(" ").replace("lead in", "lead-in")
}

/// Notes that stand elsewhere on the page, or that only the caller of the service can act on.
const NOT_ON_PAPER: [FindingCode; 4] =
    [FindingCode::LooseLeadIn, FindingCode::Sensitivity, FindingCode::UsualTimes, FindingCode::NotEstimated];

/// What else there is to know.
pub fn notes(report: &InstallationPlanReport) -> Markup {
    let messages = findings_of(&report.findings, Level::Note, |finding| !NOT_ON_PAPER.contains(&finding.code));
    html! {
        @if !messages.is_empty() {
            section { h2 { "Notes" } (message_list(&messages)) }
        }
    }
}

/// The footer.
pub fn footer(report: &InstallationPlanReport) -> Markup {
    html! {
        footer {
            (format_footer(report.basis.engine))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::format_field;

    #[test]
    fn fields_are_named_in_words() {
        assert_eq!(format_field("#/lead_in/gauge"), "lead-in gauge");
        assert_eq!(format_field("#/weather/conditions/8/surface"), "weather conditions surface");
    }
}
