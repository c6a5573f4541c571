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
use super::json_limits::JsonLimits;
use super::problem::Problem;
use super::request_context::RequestContext;
use super::respond::{self, handle};
use super::{body, drain, weather};
use crate::calculation::Calculation;
use crate::calculation::input::Weather;
use crate::calculation::installation_plan::InstallationPlanRequest;
use crate::calculation::report::{Diagnostics, Statement};
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
        let (batch, estimates) = for_request::run(&request, decode).await??;
        state.admission.charge_batch(&context, &estimates)?;
        let shared = shared_weather(&batch, state, weather::asker(&request)).await?;
        let job =
            BatchJob { shared, caller: context.caller_id(), request_id: context.id.to_string(), state: state.clone() };
        let mut response = respond::json(BatchBody::new(batch.items, job, permit));
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

/// Decodes a batch, and estimates what each item costs. What is wrong with an item is found when it is its turn.
fn decode(body: &[u8], limits: JsonLimits, most: usize) -> Result<(PlanBatchRequest, Vec<u64>), Problem> {
    let batch: PlanBatchRequest = body::decode(body, limits)?;
    check_size(&batch, most)?;
    let estimate = |item: &PlanBatchItem| {
        let asked = serde_json::from_str::<InstallationPlanRequest>(item.request.get());
        asked.map_or(0, |asked| asked.estimated_micros())
    };
    let estimates = batch.items.iter().map(estimate).collect();
    Ok((batch, estimates))
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
    let mut shared = batch.weather.clone();
    if let Some(weather) = &mut shared {
        weather::resolve(weather, state.forecast.as_deref(), &state.metrics, asker, &mut diagnostics).await?;
    }
    Ok(diagnostics.finish(Some(shared.map(Arc::new)))?)
}
