//! Many plans in one call: each item is answered by itself, on all cores, outside the threads that serve.

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
use super::json_limits::JsonLimits;
use super::problem::{Problem, ProblemBody, ProblemCode};
use super::request_context::RequestContext;
use super::respond::{self, handle};
use super::response_body::GuardedBody;
use super::{body, drain, weather};
use crate::calculation::Calculation;
use crate::calculation::input::Weather;
use crate::calculation::installation_plan::{InstallationPlanReport, InstallationPlanRequest};
use crate::calculation::report::{Diagnostics, FieldError, FieldErrorCode, FieldPath, Statement};
use crate::drawing::SvgIllustrator;
use crate::forecast::AskerId;
use crate::wording::{Language, Worded};

/// The largest body of a batch, as a multiple of the setting.
pub const BODY_LIMIT_FACTOR: usize = body::MAX_BODY_LIMIT_FACTOR;

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

/// Answers a batch. It needs a permit from before its body arrives until its answer is written: both are large, and so is what is
/// computed between.
pub async fn answer(request: HttpRequest, mut payload: web::Payload) -> HttpResponse {
    let state = AppState::of(&request).clone();
    let permit = match state.admission.acquire_batch_permit() {
        Ok(permit) => Arc::new(permit),
        Err(problem) => return drain::refuse(&request, payload, problem).await,
    };
    let response = handle(request.clone(), async {
        let limits = &state.settings.limits;
        let body = body::read(&request, &mut payload, limits.body.saturating_mul(BODY_LIMIT_FACTOR)).await?;
        let batch: PlanBatchRequest = body::decode(&body, state.json_limits())?;
        check_size(&batch, limits.batch)?;
        state.admission.charge_batch(&request, batch.items.len())?;
        let shared = shared_weather(&batch, &state, weather::asker(&request)).await?;
        let ids: Vec<_> = batch.items.iter().map(|item| item.id.clone()).collect();
        let deadline = Instant::now() + limits.batch_deadline;
        let owned = (state.clone(), permit.clone());
        let (answers, took) = web::block(move || {
            // When the caller disconnects the batch goes on, so it keeps its permit.
            let (state, _permit) = owned;
            let started = Instant::now();
            (answer_all(batch.items, shared.as_ref(), deadline, &state), started.elapsed())
        })
        .await
        .map_err(|_| Problem::new(ProblemCode::InternalError))?;
        RequestContext::of(&request).add_computed(took);
        let results: Vec<_> =
            ids.into_iter().zip(answers).map(|(id, answer)| item_result(id, answer, &request)).collect();
        for result in &results {
            state.metrics.count_item(result.status);
        }
        let succeeded = results.iter().filter(|result| result.report.is_some()).count();
        let capacity = succeeded.saturating_mul(InstallationPlanRequest::REPORT_CAPACITY);
        respond::json_report(&PlanBatchReport { failed: results.len() - succeeded, succeeded, results }, capacity)
    })
    .await;
    drain::close_if_unread(response.map_body(|_, body| GuardedBody::boxed(body, permit)), payload)
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
) -> Result<Option<Weather>, Problem> {
    let mut diagnostics = Diagnostics::default();
    if let Err(errors) = batch.validate() {
        diagnostics.add_validation(&errors);
    }
    let mut shared = batch.weather.clone();
    if let Some(weather) = &mut shared {
        weather::resolve(weather, state.forecast.as_deref(), &state.metrics, asker, &mut diagnostics).await?;
    }
    Ok(diagnostics.finish(Some(shared))?)
}

/// Answers all items, on all cores.
fn answer_all(
    items: Vec<PlanBatchItem>,
    shared: Option<&Weather>,
    deadline: Instant,
    state: &AppState,
) -> Vec<Result<InstallationPlanReport, Problem>> {
    let each = |(index, item): (usize, PlanBatchItem)| {
        if Instant::now() >= deadline {
            return Err(out_of_time());
        }
        // A panic fails this item only.
        let answer =
            std::panic::catch_unwind(AssertUnwindSafe(|| answer_item(item.request.get(), shared, state.json_limits())));
        answer.unwrap_or_else(|_panic| Err(state.count_panic())).map_err(|problem| relocate(index, problem))
    };
    items.into_par_iter().enumerate().map(each).collect()
}

/// Answers one item.
fn answer_item(
    text: &str,
    shared: Option<&Weather>,
    json_limits: JsonLimits,
) -> Result<InstallationPlanReport, Problem> {
    let mut asked: InstallationPlanRequest = body::decode(text.as_bytes(), json_limits)?;
    let mut diagnostics = Diagnostics::default();
    if asked.weather.as_ref().is_some_and(|weather| weather.location.is_some()) {
        let body = FieldPath::BODY;
        let weather_at = body.field("weather");
        let detail = Statement::new("errors-batch-item-location");
        let hint = Statement::new("errors-batch-item-location-hint");
        diagnostics.add_error(&weather_at.field("location"), FieldErrorCode::Contradiction, detail, hint);
    }
    if asked.weather.is_none() && asked.start.is_some() {
        asked.weather = shared.cloned();
    }
    let mut report = asked.answer_with(diagnostics)?.worded(Language::English);
    asked.illustrate(&mut report, &SvgIllustrator);
    Ok(report)
}

fn out_of_time() -> Problem {
    Problem::new(ProblemCode::Unavailable)
        .detail("The batch ran out of time before this item was begun. Send it again, in a smaller batch.")
}

/// A problem of an item with pointers from the whole body.
fn relocate(index: usize, mut problem: Problem) -> Problem {
    problem.errors = problem
        .errors
        .into_iter()
        .map(|error| FieldError {
            pointer: error.pointer.replacen('#', &format!("#/items/{index}/request"), 1),
            ..error
        })
        .collect();
    problem
}

fn item_result(id: String, answer: Result<InstallationPlanReport, Problem>, request: &HttpRequest) -> PlanBatchResult {
    match answer {
        Ok(report) => PlanBatchResult { id, status: 200, report: Some(report), problem: None },
        Err(problem) => PlanBatchResult {
            id,
            status: problem.code.status().as_u16(),
            report: None,
            problem: Some(respond::problem_body(problem, request)),
        },
    }
}
