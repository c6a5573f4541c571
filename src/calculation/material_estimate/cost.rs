//! What the job costs: money in decimals, never in binary fractions.

use rust_decimal::Decimal;
use uom::si::f64::Time;
use uom::si::time::hour;

use super::items::BillLine;
use super::report::{Cost, CostLine};
use crate::calculation::input::ResolvedPrices;
use crate::calculation::report::{Diagnostics, FieldPath, Finding, ListJoin, Statement};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::materials::MaterialItem;
use crate::vocabulary::Vocabulary;

/// The name of the line of labour, also in the list of what has no price.
const LABOUR: &str = "labour";

/// Prices the lines and the hours. Each line is rounded to the currency's minor unit, and the total is the sum of the lines as shown.
pub fn compute_cost(lines: &[BillLine], hours: Time, prices: &ResolvedPrices) -> Cost {
    let mut priced = Vec::new();
    let mut unpriced: Vec<String> = Vec::new();
    let mut total = prices.round(Decimal::ZERO);
    let mut add = |item: String, quantity: Decimal, unit: &'static str, price: Option<Decimal>| {
        let Some(price) = price else {
            if !unpriced.contains(&item) {
                unpriced.push(item);
            }
            return;
        };
        let amount = prices.round(quantity * price);
        total += amount;
        priced.push(CostLine {
            item,
            quantity: quantity.normalize().to_string(),
            unit,
            unit_price: price.to_string(),
            amount: amount.to_string(),
        });
    };
    for line in lines {
        let quantity = Decimal::from(line.quantity());
        let own = line.sku.as_ref().filter(|sku| prices.items.contains_key(*sku));
        // Without a price for the sku the item is priced by its key in this unit; a spool is priced by its sku or not at all.
        let key = line.item.price_key(line.unit);
        let named = own.or(key.as_ref().filter(|key| prices.items.contains_key(*key)));
        let price = named.and_then(|name| prices.items.get(name)).copied();
        let missing = || line.sku.clone().or(key.clone()).unwrap_or_else(|| line.item.code().to_owned());
        add(named.cloned().unwrap_or_else(missing), quantity, line.unit, price);
    }
    // The hours as they are shown, to three decimals, so that the line can be checked by hand.
    let thousandths = (hours.get::<hour>() * 1000.0).round() as i64;
    add(LABOUR.to_owned(), Decimal::new(thousandths, 3), "h", prices.hourly_rate);
    Cost {
        currency: prices.currency.code().to_owned(),
        lines: priced,
        total: total.to_string(),
        is_complete: unpriced.is_empty(),
        unpriced,
    }
}

/// Names what has no price, so that the total leaves it out.
pub fn judge_cost(unpriced: &[String], diagnostics: &mut Diagnostics) {
    if unpriced.is_empty() {
        return;
    }
    let mut message =
        Statement::new("materials-unpriced").phrases("unpriced", unpriced_names(unpriced), ListJoin::Comma);
    if unpriced.iter().any(|name| name == MaterialItem::LoopWire.code()) {
        message = message.followed_by(Statement::new("materials-unpriced-spool"));
    }
    let body = FieldPath::BODY;
    let finding = Finding::new(FindingCode::Unpriced, Level::Warning, &body.field("prices"), message);
    diagnostics.add_finding(finding.figure("unpriced", unpriced.len() as f64, "count"));
}

/// What has no price, as it stands in a sentence.
pub fn unpriced_names(unpriced: &[String]) -> Vec<Statement> {
    unpriced.iter().map(|name| Statement::new("materials-unpriced-name").text("unpriced", name.clone())).collect()
}
