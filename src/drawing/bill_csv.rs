//! The bill of a plan as comma-separated values (RFC 4180), for a spreadsheet.
//!
//! Its numbers are those of the report, in plain decimals without separators of thousands. A cell of text that a spreadsheet would take for
//! a formula begins with an apostrophe, for labels and numbers come from whoever sends the request.

use csv::{Terminator, WriterBuilder};
use uom::si::time::hour;

use crate::calculation::installation_plan::InstallationPlanReport;
use crate::calculation::material_estimate::{CostLine, LABOUR, MaterialEstimateReport, MaterialLine, priced_lines};
use crate::calculation::report::Statement;
use crate::drawing::value_text::format_value;
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;
use crate::wording::{Language, Reader, unit_sign};

/// The media type of the bill.
pub const MEDIA_TYPE: &str = "text/csv";
/// The path of the bill: that of its request's calculation, and this.
pub const PATH: &str = "/v1/installation-plan/bill";
/// The name of the operation in generated clients.
pub const OPERATION_ID: &str = "export_bill";
/// The bill in a phrase.
pub const SUMMARY: &str = "The bill for a spreadsheet";
/// What the bill holds, and what to know about it.
pub const DESCRIPTION: &str = "The bill of `installation-plan` as comma-separated values (RFC 4180): a header, a row for each line of \
    `materials.items` in their order, and one for the hours of the crew. Prices and amounts are those of `materials.cost`, and \
    empty where there is none; there is no row for the total, so that a column can be summed. Text that a spreadsheet would take \
    for a formula begins with an apostrophe. The answer is always UTF-8 with CRLF at the end of each row, whatever `Accept` asks \
    for. Only the header comes where `parts` leaves out `materials`.";

/// The names of the columns.
fn columns(reader: Reader) -> [String; 11] {
    [
        Statement::new("bill-item"),
        Statement::new("bill-label"),
        Statement::new("bill-sku"),
        Statement::new("bill-size"),
        Statement::new("bill-quantity"),
        Statement::new("bill-unit"),
        Statement::new("bill-exact"),
        Statement::new("bill-unit-price"),
        Statement::new("bill-amount"),
        Statement::new("bill-currency"),
        Statement::new("bill-note"),
    ]
    .map(|name| reader.say(&name).into_owned())
}

/// The bill of a report whose words are of the reader's language.
pub fn table(report: &InstallationPlanReport, reader: Reader) -> String {
    let mut rows = vec![columns(reader)];
    if let Some(materials) = &report.materials {
        let priced = priced_lines(&materials.bill);
        let lines = materials.items.iter().zip(priced);
        rows.extend(lines.map(|(line, priced)| row(line, priced.as_ref(), materials, reader)));
        rows.push(labour_row(materials, reader));
    }
    let mut writer = WriterBuilder::new().terminator(Terminator::CRLF).from_writer(Vec::new());
    // Rows of one length, written to memory: nothing of that fails.
    let written = rows.iter().try_for_each(|row| writer.write_record(row));
    let text = written.ok().and_then(|()| writer.into_inner().ok());
    text.and_then(|text| String::from_utf8(text).ok()).unwrap_or_default()
}

fn row(
    line: &MaterialLine,
    priced: Option<&CostLine>,
    materials: &MaterialEstimateReport,
    reader: Reader,
) -> [String; 11] {
    let how = line.how.words();
    let note = if line.is_owned {
        reader.say(&Statement::new("bill-not-bought").text("how", how.to_owned())).into_owned()
    } else {
        how.to_owned()
    };
    [
        line.item.code().to_owned(),
        reader.label(line.item).to_owned(),
        guard(line.sku.as_deref().unwrap_or_default()),
        guard(&line.size.as_deref().map_or_else(String::new, |size| format_size(size, reader))),
        line.quantity.to_string(),
        format_unit(line.unit, reader),
        line.exact.to_string(),
        priced.map_or_else(String::new, |priced| priced.unit_price.clone()),
        priced.map_or_else(String::new, |priced| priced.amount.clone()),
        currency(materials),
        guard(&note),
    ]
}

/// A size: in English as the report holds it, for programs read that column too.
fn format_size(size: &str, reader: Reader) -> String {
    match reader.language {
        Language::English => size.to_owned(),
        Language::Spanish | Language::French => format_value("size", size, reader).replace(['\u{a0}', '\u{202f}'], " "),
    }
}

/// The unit of a quantity.
fn format_unit(unit: &'static str, reader: Reader) -> String {
    match unit {
        "cartridge" | "spool" | "each" | "lot" => {
            reader.say(&Statement::new("bill-pack").code("pack", unit)).into_owned()
        }
        unit => unit_sign(unit, reader.language).to_owned(),
    }
}

fn labour_row(materials: &MaterialEstimateReport, reader: Reader) -> [String; 11] {
    let hours = round(materials.labour.total.0.get::<hour>(), 3);
    let lines = materials.cost.iter().flat_map(|cost| &cost.lines);
    let priced = lines.into_iter().find(|line| line.item == LABOUR);
    [
        LABOUR.to_owned(),
        reader.say(&Statement::new("bill-labour")).into_owned(),
        String::new(),
        String::new(),
        priced.map_or_else(|| hours.to_string(), |priced| priced.quantity.clone()),
        format_unit("h", reader),
        hours.to_string(),
        priced.map_or_else(String::new, |priced| priced.unit_price.clone()),
        priced.map_or_else(String::new, |priced| priced.amount.clone()),
        currency(materials),
        String::new(),
    ]
}

fn currency(materials: &MaterialEstimateReport) -> String {
    materials.cost.as_ref().map_or_else(String::new, |cost| cost.currency.clone())
}

/// Text that no spreadsheet takes for a formula.
fn guard(text: &str) -> String {
    let is_formula = text.trim_start_matches(' ').starts_with(['=', '+', '-', '@', '\t', '\r', '\n']);
    if is_formula { format!("'{text}") } else { text.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::guard;

    #[test]
    fn formulas_are_guarded() {
        for text in ["=1+1", "+1", "-1", "@sum", "\t=1", " =1"] {
            assert_eq!(guard(text), format!("'{text}"));
        }
        assert_eq!([guard("TIB-1"), guard("1/2 in")], ["TIB-1", "1/2 in"]);
    }
}
