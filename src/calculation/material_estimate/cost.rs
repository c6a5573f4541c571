//! What it costs, in decimals and never in binary fractions.

use rust_decimal::Decimal;
use uom::si::f64::Time;
use uom::si::time::hour;

use super::items::Line;
use super::report::{Cost, CostLine};
use crate::calculation::subject::PricesUnderstood;
use crate::practice::Vocabulary;

/// The name of the line of labour, and of labour that has no price.
const LABOUR: &str = "labour";

/// Prices the lines and the hours. Each line is rounded to the currency's minor unit, and the total is the sum of the lines as shown.
pub fn price(lines: &[Line], hours: Time, prices: &PricesUnderstood) -> Cost {
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
        let item = line.item.code();
        let own = line.sku.as_ref().and_then(|sku| Some((sku.clone(), *prices.items.get(sku)?)));
        let quantity = Decimal::from(line.quantity());
        match own {
            Some((sku, price)) => add(sku, quantity, line.unit, Some(price)),
            None => match prices.items.get(item) {
                Some(price) => add(item.to_owned(), quantity, line.unit, Some(*price)),
                None => add(line.sku.clone().unwrap_or_else(|| item.to_owned()), quantity, line.unit, None),
            },
        }
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
