//! What the job costs: money in decimals, never in binary fractions.

use rust_decimal::Decimal;
use uom::si::f64::Time;
use uom::si::time::hour;

use super::bill::{BillLine, JobBill};
use super::report::{Cost, CostLine};
use crate::calculation::input::ResolvedPrices;
use crate::calculation::report::{Diagnostics, FieldPath, Finding, ListJoin, Statement};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::materials::MaterialItem;
use crate::vocabulary::Vocabulary;

/// The name of the line of labour, also in the list of what has no price.
pub const LABOUR: &str = "labour";

/// Prices the lines and the hours, in this order: the quantity is rounded up to whole units, once for the bill; times the price of one it is
/// rounded to the currency's minor unit, halves away from zero; the total is the sum of the lines as shown. Nothing else is added: tax
/// and margin are the caller's.
pub fn compute_cost(lines: &[BillLine], hours: Time, prices: &ResolvedPrices) -> Cost {
    let mut priced = Vec::new();
    let mut unpriced: Vec<String> = Vec::new();
    let mut total = prices.round(Decimal::ZERO);
    let labour = [price_labour(hours, prices)];
    let bought = lines.iter().filter(|line| !line.is_owned);
    for line in bought.map(|line| price_line(line, prices)).chain(labour) {
        match line {
            Ok((line, amount)) => {
                total += amount;
                priced.push(line);
            }
            Err(name) if unpriced.contains(&name) => {}
            Err(name) => unpriced.push(name),
        }
    }
    Cost {
        currency: prices.currency.code().to_owned(),
        lines: priced,
        total: total.to_string(),
        is_complete: unpriced.is_empty(),
        unpriced,
    }
}

/// Each line of a bill as it is priced; `None` where it has no price, or is not bought.
pub fn priced_lines(bill: &JobBill) -> impl Iterator<Item = Option<CostLine>> {
    bill.lines.iter().map(|line| {
        let prices = bill.prices.as_ref().filter(|_| !line.is_owned)?;
        price_line(line, prices).ok().map(|(priced, _)| priced)
    })
}

/// A priced line and its amount.
///
/// # Errors
/// The name to send a price under, where it has none.
fn price_line(line: &BillLine, prices: &ResolvedPrices) -> Result<(CostLine, Decimal), String> {
    let own = line.sku.as_ref().filter(|sku| prices.items.contains_key(*sku));
    // Without a price for the sku the item is priced by its key in this unit; a spool is priced by its sku or not at all.
    let key = line.item.price_key(line.unit);
    let named = own.or(key.as_ref().filter(|key| prices.items.contains_key(*key)));
    match named.and_then(|name| Some((name, prices.of(name)?))) {
        Some((name, price)) => Ok(cost_line(name.clone(), line.quantity().into(), line.unit, price, prices)),
        None => Err(line.sku.clone().or(key).unwrap_or_else(|| line.item.code().to_owned())),
    }
}

/// The hours as they are shown, to three decimals, so that the line can be checked by hand.
fn price_labour(hours: Time, prices: &ResolvedPrices) -> Result<(CostLine, Decimal), String> {
    let thousandths = (hours.get::<hour>() * 1000.0).round() as i64;
    let rate = prices.hourly_rate.ok_or_else(|| LABOUR.to_owned())?;
    Ok(cost_line(LABOUR.to_owned(), Decimal::new(thousandths, 3), "h", rate, prices))
}

fn cost_line(
    item: String,
    quantity: Decimal,
    unit: &'static str,
    price: Decimal,
    prices: &ResolvedPrices,
) -> (CostLine, Decimal) {
    let amount = prices.round(quantity * price);
    let line = CostLine {
        item,
        quantity: quantity.normalize().to_string(),
        unit,
        unit_price: price.to_string(),
        amount: amount.to_string(),
    };
    (line, amount)
}

/// Names what has no price, so that the total leaves it out.
pub fn judge_cost(unpriced: &[String], diagnostics: &mut Diagnostics) {
    if unpriced.is_empty() {
        return;
    }
    let mut message =
        Statement::new("materials-unpriced").phrases("unpriced", unpriced_names(unpriced), ListJoin::Comma);
    let body = FieldPath::BODY;
    let (prices_at, spools_at) = (body.field("prices"), body.field("wire_spools"));
    let items_at = prices_at.field("items");
    // Wire on a spool has no price under the name of the item.
    let is_spool = |name: &str| name == MaterialItem::LoopWire.code();
    let names_a_spool = unpriced.iter().any(|name| is_spool(name));
    if names_a_spool {
        message = message.followed_by(Statement::new("materials-unpriced-spool"));
    }
    let finding = Finding::new(FindingCode::Unpriced, Level::Warning, &prices_at, message);
    let finding = unpriced.iter().fold(finding, |finding, name| match name.as_str() {
        LABOUR => finding.send(&prices_at.field("hourly_rate")),
        name if is_spool(name) => finding.send(&spools_at),
        name => finding.send(&items_at.member(name)),
    });
    diagnostics.add_finding(finding.figure("unpriced", unpriced.len() as f64, "count"));
}

/// What has no price, as it stands in a sentence: an item by its name, and what has the caller's own number by that.
pub fn unpriced_names(unpriced: &[String]) -> Vec<Statement> {
    let item_of = |name: &str| {
        let code = name.split_once('/').map_or(name, |(code, _)| code);
        MaterialItem::ALL.iter().copied().find(|item| item.code() == code)
    };
    let name_of = |name: &String| {
        let said = match item_of(name) {
            _ if name == LABOUR => Statement::new("materials-unpriced-labour"),
            Some(item) => Statement::new("materials-unpriced-item").member("item", item),
            None => Statement::new("materials-unpriced-name"),
        };
        said.text("unpriced", name.clone())
    };
    unpriced.iter().map(name_of).collect()
}
