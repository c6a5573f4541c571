//! The steps of the work, the cautions in full, notes, and the foot.

use maud::{Markup, html};

use super::format::{findings_of, message_list, tick_box};
use crate::calculation::installation_plan::{InstallationPlanReport, PlanStep};
use crate::calculation::report::Statement;
use crate::drawing::report_text::format_footer;
use crate::practice::cautions::CautionCode;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::job_steps::JobStep;
use crate::wording::Reader;

/// The steps, in order; each names its cautions by number.
pub fn steps(report: &InstallationPlanReport, reader: Reader) -> Markup {
    let number = |code: &CautionCode| report.cautions.iter().position(|caution| caution.code == *code).map(|at| at + 1);
    let mark = |cautions: &[String]| {
        let mark = Statement::new("sheet-caution-mark").count("count", cautions.len() as u64);
        reader.say(&mark.text("numbers", cautions.join(", "))).into_owned()
    };
    html! {
        section {
            h2 { (reader.say(&Statement::new("sheet-steps"))) }
            ol.ticks {
                @for step in &report.steps {
                    @let cautions: Vec<_> = step.cautions.iter().filter_map(number).map(|at| at.to_string()).collect();
                    li {
                        (tick_box()) b { (reader.label(step.step)) ". " } (message(step, reader))
                        @if !cautions.is_empty() { " " span.mark { (mark(&cautions)) } }
                    }
                }
            }
        }
    }
}

/// What to do, without figures that stand in a table of the page.
fn message(step: &PlanStep, reader: Reader) -> &str {
    match step.step {
        JobStep::MarkOut
        | JobStep::Cut
        | JobStep::Lay
        | JobStep::Bed
        | JobStep::MeasureOpen
        | JobStep::MeasureSealed
        | JobStep::Protect => reader.description(step.step),
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
pub fn cautions(report: &InstallationPlanReport, reader: Reader) -> Markup {
    html! {
        section {
            h2 { (reader.say(&Statement::new("sheet-cautions"))) }
            ol { @for caution in &report.cautions { li { (caution.message) } } }
        }
    }
}

/// Notes that stand elsewhere on the page, or that only the caller of the service can act on.
const NOT_ON_PAPER: [FindingCode; 4] =
    [FindingCode::LooseLeadIn, FindingCode::Sensitivity, FindingCode::UsualTimes, FindingCode::NotEstimated];

/// What else there is to know.
pub fn notes(report: &InstallationPlanReport, reader: Reader) -> Markup {
    let messages = findings_of(report, Level::Note, |finding| !NOT_ON_PAPER.contains(&finding.code), reader);
    html! {
        @if !messages.is_empty() {
            section { h2 { (reader.say(&Statement::new("sheet-notes"))) } (message_list(&messages, reader)) }
        }
    }
}

/// The footer.
pub fn footer(report: &InstallationPlanReport, reader: Reader) -> Markup {
    html! {
        footer {
            (format_footer(report.basis.engine, reader))
        }
    }
}
