//! A batch as it is asked and answered.

use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;
use utoipa::ToSchema;
use validator::Validate;

use crate::api::problem::ProblemBody;
use crate::calculation::input::Weather;
use crate::calculation::installation_plan::{InstallationPlanReport, InstallationPlanRequest, PlanDefaults};
use crate::calculation::material_estimate::PooledBill;

/// Plans to be made, each by itself.
#[derive(Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PlanBatchRequest {
    /// The items, answered in this order.
    #[validate(nested, length(min = 1, max = 200))]
    #[schema(min_items = 1, max_items = 200)]
    pub items: Vec<PlanBatchItem>,
    /// The weather of all items that have a `start` and no weather of their own. A `location` may only stand here, and is asked once.
    #[validate(nested)]
    pub weather: Option<Weather>,
    /// What all items take where they do not send it themselves: prices, stock, spools, and any other field of a plan but its opening.
    #[schema(value_type = Option<PlanDefaults>)]
    pub shared: Option<Box<RawValue>>,
    /// Whether to answer one bill for all items as well, with its rounding once. Each id must then be its own. Default false.
    pub pool: Option<bool>,
}

/// One plan of a batch.
#[derive(Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PlanBatchItem {
    /// The caller's own name for it, repeated in its result.
    #[validate(length(min = 1, max = 64))]
    #[schema(min_length = 1, max_length = 64)]
    pub id: String,
    /// The plan's request.
    #[schema(value_type = InstallationPlanRequest)]
    pub request: Box<RawValue>,
}

/// The answers to a batch.
#[derive(Serialize, ToSchema)]
pub struct PlanBatchReport {
    /// The results, in the order of the items.
    pub results: Vec<PlanBatchResult>,
    /// How many items have a report.
    pub succeeded: usize,
    /// How many items have a problem.
    pub failed: usize,
    /// One bill for all items that have one; absent unless `pool` asks for it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pooled_bill: Option<PooledBill>,
}

/// The answer to one item: a report or a problem.
#[derive(Serialize, ToSchema)]
pub struct PlanBatchResult {
    /// The name of the item.
    pub id: String,
    /// The status that the item would have had on its own.
    pub status: u16,
    /// The report; absent when there is a problem.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub report: Option<InstallationPlanReport>,
    /// The problem, its pointers from the whole body; absent when there is a report.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub problem: Option<ProblemBody>,
}
