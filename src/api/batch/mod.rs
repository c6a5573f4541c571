//! Many plans in one call: each item is answered by itself, on the pool, in its turn among those of other callers. The answer is written
//! item by item: what is not read yet is not computed yet.

mod items;
mod plan_batch;
mod written;

use std::sync::Arc;

use actix_web::http::{ConnectionType, Version};
use actix_web::{HttpRequest, HttpResponse, web};
use validator::Validate;

use super::app_state::AppState;
use super::compute::for_request;
use super::content_coding::Coding;
use super::json_limits::JsonLimits;
use super::problem::Problem;
use super::request_context::RequestContext;
use super::respond::{self, handle};
use super::{body, content_language, drain, weather};
use crate::calculation::Calculation;
use crate::calculation::input::Weather;
use crate::calculation::installation_plan::{InstallationPlanRequest, PlanDefaults};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::forecast::AskerId;
use items::BatchJob;
pub use plan_batch::{PlanBatchItem, PlanBatchReport, PlanBatchRequest, PlanBatchResult};
use written::BatchBody;

/// The largest body of a batch, as a multiple of the setting.
pub const BODY_LIMIT_FACTOR: usize = body::MAX_BODY_LIMIT_FACTOR;

/// Answers a batch: reads it, then answers item by item, as fast as its caller reads.
pub async fn answer(request: HttpRequest, mut payload: web::Payload) -> HttpResponse {
    let response = handle(request.clone(), async {
        let (state, context) = (AppState::of(&request), RequestContext::of(&request));
        let limits = &state.settings.limits;
        let body = body::read(&request, &mut payload, limits.body.saturating_mul(BODY_LIMIT_FACTOR)).await?;
        let permit = state.admission.acquire_batch_permit(&context)?;
        let (json_limits, most) = (state.json_limits(), limits.batch);
        let decode = move |_| {
            // All of it, for it counts as arriving until it is decoded.
            let body = body;
            decode(&body.bytes, json_limits, most)
        };
        let DecodedBatch { batch, defaults, estimates } = for_request::run(&request, decode).await??;
        state.admission.charge_batch(&context, &estimates)?;
        let weather = shared_weather(&batch, state, weather::asker(&request)).await?;
        let job = BatchJob {
            weather,
            defaults: defaults.map(Arc::new),
            keeps_bills: batch.pool.unwrap_or(false),
            language: content_language::of_request(&request),
            coding: Coding::of_computed(&request),
            caller: context.caller_id(),
            request_id: context.id.to_string(),
            state: state.clone(),
        };
        let mut response = respond::json_body(job.coding, BatchBody::new(batch.items, job, permit), &request);
        if request.version() < Version::HTTP_11 {
            // Its end is that of the connection: HTTP/1.0 knows no chunks.
            response.head_mut().no_chunking(true);
            response.head_mut().set_connection_type(ConnectionType::Close);
        }
        Ok(response)
    })
    .await;
    drain::close_if_unread(&request, response, payload)
}

/// A batch, what its items share, and what each is estimated to cost.
struct DecodedBatch {
    batch: PlanBatchRequest,
    defaults: Option<InstallationPlanRequest>,
    estimates: Vec<u64>,
}

/// Decodes a batch, and estimates what each item costs. What is wrong with an item is found when it is its turn.
fn decode(body: &[u8], limits: JsonLimits, most: usize) -> Result<DecodedBatch, Problem> {
    let batch: PlanBatchRequest = body::decode(body, limits)?;
    check_size(&batch, most)?;
    let defaults = batch.shared.as_ref().map(|shared| decode_shared(shared.get(), limits)).transpose()?;
    let estimate = |item: &PlanBatchItem| {
        let asked = serde_json::from_str::<InstallationPlanRequest>(item.request.get());
        asked.map_or(0, |mut asked| {
            if let Some(defaults) = &defaults {
                asked.take_absent(defaults);
            }
            asked.estimated_micros()
        })
    };
    let estimates = batch.items.iter().map(estimate).collect();
    Ok(DecodedBatch { batch, defaults, estimates })
}

/// Decodes what items share, as a plan whose opening stands in for those of the items.
fn decode_shared(text: &str, limits: JsonLimits) -> Result<InstallationPlanRequest, Problem> {
    let sent = serde_json::from_str::<serde_json::Map<String, serde_json::Value>>(text).unwrap_or_default();
    let mut diagnostics = Diagnostics::default();
    let body = FieldPath::BODY;
    let shared_at = body.field("shared");
    for name in PlanDefaults::OWN_FIELDS.into_iter().filter(|name| sent.contains_key(*name)) {
        diagnostics.add_error(
            &shared_at.field(name),
            FieldErrorCode::FieldUnknown,
            Statement::new("errors-batch-shared-field").text("name", name),
            Statement::new("errors-batch-shared-field-hint"),
        );
    }
    diagnostics.finish(Some(()))?;
    let opening = r#"{"opening":{"width":"12 ft","barrier":"none"}"#;
    let rest = text.trim_start().strip_prefix('{').map(str::trim_start);
    let whole = match rest {
        Some(rest) if rest.starts_with('}') => format!("{opening}{rest}"),
        Some(rest) => format!("{opening},{rest}"),
        // It is no object, which is said of it.
        None => text.to_owned(),
    };
    body::decode(whole.as_bytes(), limits).map_err(|mut problem: Problem| {
        for error in &mut problem.errors {
            error.pointer = error.pointer.replacen('#', "#/shared", 1);
        }
        problem
    })
}

/// Refuses a batch of more items than this instance accepts. The limit of the description is checked with the other fields.
fn check_size(batch: &PlanBatchRequest, most: usize) -> Result<(), Problem> {
    let items = batch.items.len();
    if items <= most {
        return Ok(());
    }
    Err(Problem::too_many_items(Statement::new("errors-batch-too-large").count("items", items as u64), most))
}

/// The weather beside the items, fetched where it names a place. Reports the errors of the batch itself together with its own.
async fn shared_weather(
    batch: &PlanBatchRequest,
    state: &AppState,
    asker: AskerId,
) -> Result<Option<Arc<Weather>>, Problem> {
    let mut diagnostics = Diagnostics::default();
    if let Err(errors) = batch.validate() {
        diagnostics.add_validation(&errors);
    }
    if batch.pool == Some(true) {
        refuse_same_ids(&batch.items, &mut diagnostics);
    }
    let mut shared = batch.weather.clone();
    if let Some(weather) = &mut shared {
        weather::resolve(weather, state.forecast.as_deref(), &state.metrics, asker, &mut diagnostics).await?;
    }
    Ok(diagnostics.finish(Some(shared.map(Arc::new)))?)
}

/// Refuses ids that occur twice: one bill of all names what it leaves out by its id.
fn refuse_same_ids(items: &[PlanBatchItem], diagnostics: &mut Diagnostics) {
    let (body, mut known) = (FieldPath::BODY, std::collections::BTreeSet::new());
    let items_at = body.field("items");
    for (index, item) in items.iter().enumerate().filter(|(_, item)| !known.insert(item.id.as_str())) {
        let item_at = items_at.item(index);
        diagnostics.add_error(
            &item_at.field("id"),
            FieldErrorCode::Contradiction,
            Statement::new("errors-batch-id-twice").text("id", item.id.clone()),
            Statement::new("errors-batch-id-twice-hint"),
        );
    }
}
