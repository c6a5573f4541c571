//! The bill of a plan as comma-separated values (RFC 4180), for a spreadsheet.
//!
//! Its numbers are those of the report, in plain decimals without separators of thousands. A cell of text that a spreadsheet would take for
//! a formula begins with an apostrophe, for labels and numbers come from whoever sends the request.

use csv::{Terminator, WriterBuilder};
use uom::si::time::hour;

use crate::calculation::installation_plan::InstallationPlanReport;
use crate::calculation::material_estimate::{CostLine, LABOUR, MaterialEstimateReport, MaterialLine, priced_lines};
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

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

/// The columns.
const COLUMNS: [&str; 11] =
    ["item", "label", "sku", "size", "quantity", "unit", "exact", "unit_price", "amount", "currency", "note"];

/// The bill of a report.
pub fn table(report: &InstallationPlanReport) -> String {
    let mut rows = vec![COLUMNS.map(str::to_owned)];
    if let Some(materials) = &report.materials {
        let priced = priced_lines(&materials.bill);
        rows.extend(materials.items.iter().zip(priced).map(|(line, priced)| row(line, priced.as_ref(), materials)));
        rows.push(labour_row(materials));
    }
    let mut writer = WriterBuilder::new().terminator(Terminator::CRLF).from_writer(Vec::new());
    // Rows of one length, written to memory: nothing of that fails.
    let written = rows.iter().try_for_each(|row| writer.write_record(row));
    let text = written.ok().and_then(|()| writer.into_inner().ok());
    text.and_then(|text| String::from_utf8(text).ok()).unwrap_or_default()
}

fn row(line: &MaterialLine, priced: Option<&CostLine>, materials: &MaterialEstimateReport) -> [String; 11] {
    let note = if line.is_owned { format!("Not bought. {}", line.how) } else { line.how.to_string() };
    [
        line.item.code().to_owned(),
        line.item.label().to_owned(),
        guard(line.sku.as_deref().unwrap_or_default()),
        guard(line.size.as_deref().unwrap_or_default()),
        line.quantity.to_string(),
        line.unit.to_owned(),
        line.exact.to_string(),
        priced.map_or_else(String::new, |priced| priced.unit_price.clone()),
        priced.map_or_else(String::new, |priced| priced.amount.clone()),
        currency(materials),
        guard(&note),
    ]
}

fn labour_row(materials: &MaterialEstimateReport) -> [String; 11] {
    let hours = round(materials.labour.total.0.get::<hour>(), 3);
    let lines = materials.cost.iter().flat_map(|cost| &cost.lines);
    let priced = lines.into_iter().find(|line| line.item == LABOUR);
    [
        LABOUR.to_owned(),
        "Hours of the crew".to_owned(),
        String::new(),
        String::new(),
        priced.map_or_else(|| hours.to_string(), |priced| priced.quantity.clone()),
        "h".to_owned(),
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
