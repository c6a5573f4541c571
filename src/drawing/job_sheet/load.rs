//! What goes in the van.

use maud::{Markup, html};

use super::format::{format_amount, tick_box};
use crate::calculation::installation_plan::InstallationPlanReport;
use crate::calculation::report::Statement;
use crate::drawing::value_text::format_value;
use crate::wording::Reader;

/// The section.
pub fn section(report: &InstallationPlanReport, reader: Reader) -> Markup {
    let Some(materials) = &report.materials else { return html! {} };
    html! {
        section {
            h2 { (reader.say(&Statement::new("sheet-load"))) }
            table.load { tbody {
                @for (index, item) in materials.items.iter().enumerate() {
                    @let is_told = materials.items[..index].iter().any(|other| other.item == item.item);
                    tr {
                        td { (tick_box()) }
                        td.amount { (format_amount(item.quantity, item.unit, reader)) }
                        td {
                            b { (reader.label(item.item)) }
                            @if let Some(sku) = &item.sku { " (" (sku) ")" }
                            (reader.colon())
                            // What is said of the first size of a thing holds for the others.
                            @match item.size.as_deref().filter(|_| is_told) {
                                Some(size) => { (format_value("size", size, reader)) }
                                None => { (item.how) }
                            }
                        }
                    }
                }
            } }
        }
    }
}
