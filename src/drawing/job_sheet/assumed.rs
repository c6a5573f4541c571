//! What was assumed and is to be checked on site.

use maud::{Markup, html};

use super::format::tick_box;
use crate::calculation::installation_plan::InstallationPlanReport;
use crate::calculation::report::Statement;
use crate::drawing::value_text::format_value;
use crate::wording::Reader;

/// Assumed fields that cannot be checked on site: they serve only the counting of time, materials and money.
const NOT_ON_SITE: [&str; 5] =
    ["#/productivity/", "#/waste_percent", "#/wire_allowance_percent", "#/saw/blade_life", "#/prices"];

/// The section.
pub fn section(report: &InstallationPlanReport, reader: Reader) -> Markup {
    let on_site = |about: &str| !NOT_ON_SITE.iter().any(|start| about.starts_with(start));
    let mut all = Vec::new();
    for assumed in report.assumed.iter().filter(|assumed| on_site(&assumed.about)) {
        let field = names(&assumed.about).next_back().unwrap_or_default();
        let named = (format_field(&assumed.about, reader), format_value(field, &assumed.value, reader));
        // Two parts of the plan may have assumed what reads alike.
        if !all.contains(&named) {
            all.push(named);
        }
    }
    html! {
        @if !all.is_empty() {
            section {
                h2 { (reader.say(&Statement::new("sheet-assumed"))) }
                ul.ticks.few {
                    @for (field, value) in &all { li { (tick_box()) (field) (reader.colon()) b { (value) } } }
                }
            }
        }
    }
}

/// The names in a pointer, without the numbers of list items.
fn names(about: &str) -> impl DoubleEndedIterator<Item = &str> {
    let is_name = |part: &&str| !part.is_empty() && !part.chars().all(|letter| letter.is_ascii_digit());
    about.trim_start_matches('#').split('/').filter(is_name)
}

/// A field of the request in words: `lead-in gauge`.
fn format_field(about: &str, reader: Reader) -> String {
    let field = names(about).collect::<Vec<_>>().join("-");
    reader.say(&Statement::new("sheet-field").text("field", field)).into_owned()
}

#[cfg(test)]
mod tests {
    use super::format_field;
    use crate::quantity::UnitSystem;
    use crate::wording::{Language, Reader};

    #[test]
    fn fields_are_named_in_words() {
        let named = |about, language| format_field(about, Reader::new(UnitSystem::Metric, language));
        assert_eq!(named("#/lead_in/gauge", Language::English), "lead-in gauge");
        assert_eq!(named("#/weather/conditions/8/surface", Language::English), "slab temperature");
        assert_eq!(named("#/lead_in/gauge", Language::Spanish), "calibre del cable de conexión");
        assert_eq!(named("#/lead_in/gauge", Language::French), "calibre du câble de liaison");
    }
}
