//! Times, quantities and messages of the page.

use maud::{Markup, html};

use crate::calculation::installation_plan::InstallationPlanReport;
use crate::calculation::report::{Finding, Statement, Subject};
use crate::drawing::report_text::group_by_message;
use crate::practice::finding_codes::Level;
use crate::wording::Reader;

/// The loop that a finding is about, by its mark and what it is for.
fn format_subject(subject: &Subject, report: &InstallationPlanReport, reader: Reader) -> String {
    match subject {
        Subject::Role(role) => {
            let mark = report.sizing.loops.iter().find(|sized| sized.role == *role).map(|sized| sized.mark);
            let role = reader.label(*role);
            mark.map_or_else(|| role.to_owned(), |mark| format!("{mark} {role}"))
        }
        Subject::Label(label) => label.clone(),
    }
}

/// A time of a report to the minute, without its offset: `2026-01-20 14:04`.
pub fn format_time(rfc3339: &str) -> String {
    rfc3339.chars().take(16).map(|letter| if letter == 'T' { ' ' } else { letter }).collect()
}

/// A quantity of a material in its unit: `24 cartridges`, `203 m`, `6`.
pub fn format_amount(quantity: u64, unit: &'static str, reader: Reader) -> String {
    match unit {
        "each" => quantity.to_string(),
        "cartridge" | "spool" | "lot" => {
            reader.say(&Statement::new("sheet-packs").count("quantity", quantity).code("pack", unit)).into_owned()
        }
        _ => reader.with_unit(&quantity.to_string(), unit),
    }
}

/// The messages of the findings of a level that pass, each once, with the loops that it is about.
pub fn findings_of(
    report: &InstallationPlanReport,
    level: Level,
    passes: impl Fn(&Finding) -> bool,
    reader: Reader,
) -> Vec<(Vec<String>, &str)> {
    group_by_message(report.findings.iter().filter(|finding| finding.level == level && passes(finding)), |finding| {
        finding.subject.as_ref().map(|subject| format_subject(subject, report, reader))
    })
}

/// Messages as a list, each after the loops that it is about.
pub fn message_list(messages: &[(Vec<String>, &str)], reader: Reader) -> Markup {
    html! {
        ul {
            @for (subjects, message) in messages {
                li { @if !subjects.is_empty() { b { (subjects.join(", ")) (reader.colon()) } } (message) }
            }
        }
    }
}

/// A box to tick by hand.
pub fn tick_box() -> Markup {
    html! { span.box { } }
}

#[cfg(test)]
mod tests {
    use super::{format_amount, format_time};
    use crate::quantity::UnitSystem;
    use crate::wording::{Language, Reader};

    #[test]
    fn times_and_amounts_are_shown_in_words() {
        let amounts = |language| {
            let reader = Reader::new(UnitSystem::UsCustomary, language);
            let amount = |quantity, unit| format_amount(quantity, unit, reader).replace('\u{a0}', " ");
            [amount(24, "cartridge"), amount(1, "spool"), amount(203, "ft"), amount(6, "each")]
        };
        assert_eq!(format_time("2026-01-20T14:04:00-05:00"), "2026-01-20 14:04");
        assert_eq!(amounts(Language::English), ["24 cartridges", "1 spool", "203 ft", "6"]);
        assert_eq!(amounts(Language::Spanish), ["24 cartuchos", "1 carrete", "203 ft", "6"]);
        assert_eq!(amounts(Language::French), ["24 cartouches", "1 touret", "203 ft", "6"]);
    }
}
