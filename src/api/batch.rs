//! Many plans in one call: each item is answered by itself, on all cores, off the threads that serve.

use std::panic::AssertUnwindSafe;
use std::sync::Arc;
use std::time::Instant;

use actix_web::{HttpRequest, HttpResponse, web};
use rayon::iter::{IndexedParallelIterator, IntoParallelIterator, ParallelIterator};
use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;
use utoipa::ToSchema;
use validator::Validate;

use super::app_state::AppState;
use super::middleware::handle;
use super::response_body::GuardedBody;
use super::problem::{Problem, ProblemBody, ProblemCode};
use super::request_context::RequestContext;
use super::{body, routes, drain, weather};
use crate::calculation::Calculation;
use crate::calculation::input::Weather;
use crate::calculation::installation_plan::{InstallationPlanReport, InstallationPlanRequest};
use crate::calculation::report::{Diagnostics, FieldError, FieldErrorCode, FieldPath};
use crate::drawing::Pen;

/// How many times the usual limit a batch may be large.
pub const BODY_SHARE: usize = body::MAX_BODY_SHARE;

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

/// Answers a batch. Its place among the batches is taken before its body arrives, and kept until its answer is written: both are
/// large, and so is what is computed between.
pub async fn answer(request: HttpRequest, mut payload: web::Payload) -> HttpResponse {
    let state = AppState::of(&request).clone();
    let place = match state.admission.acquire_batch_permit() {
        Ok(place) => Arc::new(place),
        Err(problem) => return drain::refuse(&request, payload, problem).await,
    };
    let response = handle(request.clone(), async {
        let limits = &state.settings.limits;
        let body = body::read(&request, &mut payload, limits.body.saturating_mul(BODY_SHARE)).await?;
        let batch: PlanBatchRequest = body::decode(&body, state.json_limits())?;
        judge(&batch, limits.batch)?;
        state.admission.charge_batch(&request, batch.items.len())?;
        let shared = shared_weather(&batch, &state).await?;
        let ids: Vec<_> = batch.items.iter().map(|item| item.id.clone()).collect();
        let until = Instant::now() + limits.batch_deadline;
        let kept = (state.clone(), place.clone());
        let (answers, took) = web::block(move || {
            // A caller that hangs up leaves its batch in work, and so in its place.
            let (state, _place) = kept;
            let begun = Instant::now();
            (all(batch.items, shared.as_ref(), until, &state), begun.elapsed())
        })
        .await
        .map_err(|_| Problem::new(ProblemCode::InternalError))?;
        RequestContext::of(&request).add_computed(took);
        let results: Vec<_> = ids.into_iter().zip(answers).map(|(id, answer)| result(id, answer, &request)).collect();
        for result in &results {
            state.metrics.item_answered(result.status);
        }
        let succeeded = results.iter().filter(|result| result.report.is_some()).count();
        let room = succeeded.saturating_mul(InstallationPlanRequest::REPORT_CAPACITY);
        routes::json_report(&PlanBatchReport { failed: results.len() - succeeded, succeeded, results }, room)
    })
    .await;
    drain::close_behind(response.map_body(|_, answer| GuardedBody::until_written(answer, place)), payload)
}

/// Refuses a batch of more items than this instance takes; the description's own limit is judged with the other faults.
fn judge(batch: &PlanBatchRequest, most: usize) -> Result<(), Problem> {
    let items = batch.items.len();
    if items <= most {
        return Ok(());
    }
    Err(Problem::too_many_items(format!("{items} items are more than a batch may have here."), most))
}

/// The weather beside the items, fetched where it names a place; faults of the batch itself come with its own.
async fn shared_weather(batch: &PlanBatchRequest, state: &AppState) -> Result<Option<Weather>, Problem> {
    let mut diagnostics = Diagnostics::default();
    if let Err(errors) = batch.validate() {
        diagnostics.add_validation(&errors);
    }
    let mut shared = batch.weather.clone();
    if let Some(weather) = &mut shared {
        weather::resolve(weather, state.forecast.as_deref(), &state.metrics, &mut diagnostics).await?;
    }
    Ok(diagnostics.finish(Some(shared))?)
}

/// Answers all items, each on whatever core is free.
fn all(
    items: Vec<PlanBatchItem>,
    shared: Option<&Weather>,
    until: Instant,
    state: &AppState,
) -> Vec<Result<InstallationPlanReport, Problem>> {
    let each = |(index, item): (usize, PlanBatchItem)| {
        if Instant::now() >= until {
            return Err(out_of_time());
        }
        // A panic is this item's alone.
        let answer = std::panic::catch_unwind(AssertUnwindSafe(|| one(item.request.get(), shared, state.json_limits())));
        answer.unwrap_or_else(|_panic| Err(state.panicked())).map_err(|problem| within(index, problem))
    };
    items.into_par_iter().enumerate().map(each).collect()
}

/// Answers one item.
fn one(text: &str, shared: Option<&Weather>, json_limits: body::JsonLimits) -> Result<InstallationPlanReport, Problem> {
    let mut asked: InstallationPlanRequest = body::decode(text.as_bytes(), json_limits)?;
    let mut diagnostics = Diagnostics::default();
    if asked.weather.as_ref().is_some_and(|weather| weather.location.is_some()) {
        let body = FieldPath::BODY;
        let weather_at = body.field("weather");
        let detail = "A batch fetches no forecast for a single item.";
        let hint = "Send conditions, or one location beside the items.";
        diagnostics.add_error(&weather_at.field("location"), FieldErrorCode::Contradiction, detail, hint);
    }
    if asked.weather.is_none() && asked.start.is_some() {
        asked.weather = shared.cloned();
    }
    let mut report = asked.answer_with(diagnostics)?;
    asked.illustrate(&mut report, &Pen);
    Ok(report)
}

fn out_of_time() -> Problem {
    Problem::new(ProblemCode::Unavailable)
        .detail("The batch ran out of time before this item was begun. Send it again, in a smaller batch.")
}

/// A problem of an item, its pointers from the whole body. Faults of weather that stands beside the items point there.
fn within(index: usize, mut problem: Problem) -> Problem {
    problem.errors = problem
        .errors
        .into_iter()
        .map(|fault| FieldError {
            pointer: fault.pointer.replacen('#', &format!("#/items/{index}/request"), 1),
            ..fault
        })
        .collect();
    problem
}

fn result(id: String, answer: Result<InstallationPlanReport, Problem>, request: &HttpRequest) -> PlanBatchResult {
    match answer {
        Ok(report) => PlanBatchResult { id, status: 200, report: Some(report), problem: None },
        Err(problem) => PlanBatchResult {
            id,
            status: problem.code.status().as_u16(),
            report: None,
            problem: Some(problem.body(request)),
        },
    }
}
