//! Loops on the caller's shelf.

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};
use uom::si::f64::Length;
use utoipa::ToSchema;
use validator::Validate;

use super::{CableLength, LoopLeg, MoneyText};
use crate::calculation::report::{Diagnostics, FieldPath, Finding, Statement};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::site::Construction;

/// A loop that the caller has in stock.
#[derive(Clone, Debug, Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct StockItem {
    /// The caller's own number for it.
    #[validate(length(min = 1, max = 64))]
    #[schema(min_length = 1, max_length = 64)]
    pub sku: String,
    /// The leg in the direction of driving.
    pub along_travel: LoopLeg,
    /// The leg across the lane.
    pub across_lane: LoopLeg,
    /// The length of the lead-in on it.
    pub lead_in_length: CableLength,
    /// The turns, if known.
    #[validate(range(min = 1, max = 20))]
    #[schema(minimum = 1, maximum = 20)]
    pub turns: Option<u32>,
    /// How it is made. Default: any that the job allows.
    pub construction: Option<Construction>,
    /// What one costs, in the currency of `prices`, unless `prices.items` has its sku. Of items that serve alike the cheaper is taken.
    pub price: Option<MoneyText>,
    /// How many are there. Default: enough. What is there goes before what is not.
    #[validate(range(max = 100_000))]
    #[schema(minimum = 0, maximum = 100_000)]
    pub available: Option<u32>,
}

/// A stock loop in typed quantities.
#[derive(Clone, Debug)]
pub struct ResolvedStockItem {
    /// The caller's own number for it.
    pub sku: String,
    /// Leg in the direction of driving.
    pub along_travel: Length,
    /// Leg across the lane.
    pub across_lane: Length,
    /// Length of its lead-in.
    pub lead_in_length: Length,
    /// Turns, if known.
    pub turns: Option<u32>,
    /// How it is made, if known.
    pub construction: Option<Construction>,
    /// What one costs, if known.
    pub price: Option<Decimal>,
    /// How many are there; `None` for enough.
    pub available: Option<u32>,
}

impl ResolvedStockItem {
    /// How many of so many are not there.
    pub fn missing(&self, count: u64) -> u64 {
        self.available.map_or(0, |available| count.saturating_sub(available.into()))
    }

    /// Its price to compare by: what has none comes last.
    pub fn price_to_compare(&self) -> Decimal {
        self.price.unwrap_or(Decimal::MAX)
    }
}

/// States of which items more are planned than are there. `taken` has each item that is laid, and how many of it.
pub fn judge_shortage<'a>(
    taken: impl Iterator<Item = (&'a ResolvedStockItem, u64)>,
    at: &FieldPath<'_>,
    diagnostics: &mut Diagnostics,
) {
    let mut totals: Vec<(&ResolvedStockItem, u64)> = Vec::new();
    for (item, count) in taken {
        match totals.iter_mut().find(|(known, _)| known.sku == item.sku) {
            Some((_, total)) => *total += count,
            None => totals.push((item, count)),
        }
    }
    for (item, needed) in totals.into_iter().filter(|(item, needed)| item.missing(*needed) > 0) {
        let available = needed - item.missing(needed);
        let message = Statement::new("input-stock-short")
            .text("sku", item.sku.clone())
            .count("needed", needed)
            .count("available", available)
            .count("missing", item.missing(needed));
        let finding = Finding::new(FindingCode::StockShort, Level::Warning, at, message);
        diagnostics.add_finding(finding.figure("needed", needed as f64, "count").figure(
            "available",
            available as f64,
            "count",
        ));
    }
}

impl StockItem {
    /// Reads the item.
    pub fn resolve(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<ResolvedStockItem> {
        let along_travel = diagnostics.parse(&at.field("along_travel"), &self.along_travel);
        let across_lane = diagnostics.parse(&at.field("across_lane"), &self.across_lane);
        let lead_in_length = diagnostics.parse(&at.field("lead_in_length"), &self.lead_in_length);
        let price = self.price.as_ref().map(|price| price.resolve(&at.field("price"), diagnostics));
        Some(ResolvedStockItem {
            sku: self.sku.clone(),
            along_travel: along_travel?.si,
            across_lane: across_lane?.si,
            lead_in_length: lead_in_length?.si,
            turns: self.turns,
            construction: self.construction,
            price: price.map_or(Some(None), |price| price.map(Some))?,
            available: self.available,
        })
    }
}
