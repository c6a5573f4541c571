//! Loops on the caller's shelf.

use serde::{Deserialize, Serialize};
use uom::si::f64::Length;
use utoipa::ToSchema;
use validator::Validate;

use super::{CableLength, LoopLeg};
use crate::calculation::report::{Diagnostics, FieldPath};
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
}

impl StockItem {
    /// Reads the item.
    pub fn resolve(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<ResolvedStockItem> {
        let along_travel = diagnostics.parse(&at.field("along_travel"), &self.along_travel);
        let across_lane = diagnostics.parse(&at.field("across_lane"), &self.across_lane);
        let lead_in_length = diagnostics.parse(&at.field("lead_in_length"), &self.lead_in_length);
        Some(ResolvedStockItem {
            sku: self.sku.clone(),
            along_travel: along_travel?.si,
            across_lane: across_lane?.si,
            lead_in_length: lead_in_length?.si,
            turns: self.turns,
            construction: self.construction,
        })
    }
}
