//! The answer to one item of a batch: a report or a problem, as JSON text.

use std::sync::Arc;
use std::sync::atomic::AtomicBool;
use std::time::{Duration, Instant};

use actix_web::web;

use super::plan_batch::{PlanBatchItem, PlanBatchResult};
use crate::api::app_state::AppState;
use crate::api::compute::for_request;
use crate::api::json_limits::JsonLimits;
use crate::api::problem::{Problem, ProblemCode};
use crate::api::{body, respond};
use crate::calculation::Calculation;
use crate::calculation::budget::WorkBudget;
use crate::calculation::input::Weather;
use crate::calculation::installation_plan::{InstallationPlanReport, InstallationPlanRequest};
use crate::calculation::report::{Diagnostics, FieldError, FieldErrorCode, FieldPath, Statement};
use crate::drawing::SvgIllustrator;
use crate::wording::{Language, Worded};

/// What the items of a batch have in common.
#[derive(Clone)]
pub(super) struct BatchJob {
    pub shared: Option<Arc<Weather>>,
    pub caller: u64,
    pub request_id: String,
    pub state: web::Data<AppState>,
}

/// The answer to one item.
pub(super) struct ItemAnswer {
    pub status: u16,
    /// The JSON text of its result.
    pub text: Vec<u8>,
    /// How long a thread was busy with it.
    pub took: Duration,
}

/// Why an item is not begun.
#[derive(Clone, Copy)]
pub(super) enum NotBegun {
    OutOfTime,
    AnswerTooLarge,
}

impl BatchJob {
    /// Has an item answered by the pool, where it waits for so long at most.
    pub async fn answer(self, index: usize, item: PlanBatchItem, patience: Duration) -> ItemAnswer {
        let (job, id) = (self.clone(), item.id.clone());
        let deadline = Instant::now() + patience;
        let work = move |is_abandoned| {
            let answer = answer_item(item.request.get(), job.shared.as_deref(), job.state.json_limits(), is_abandoned);
            job.write(item.id, answer.map_err(|problem| relocate(index, problem)))
        };
        match self.state.pool.run(self.caller, deadline, work).await {
            Ok(computed) => ItemAnswer { took: computed.took, ..computed.value },
            Err(reason) => self.write(id, Err(for_request::problem(reason, &self.state))),
        }
    }

    /// The result of an item that is not begun.
    pub fn refuse(&self, item: PlanBatchItem, reason: NotBegun) -> ItemAnswer {
        let detail = match reason {
            NotBegun::OutOfTime => {
                "The batch ran out of time before this item was begun. Send it again, in a smaller batch."
            }
            NotBegun::AnswerTooLarge => {
                "The answer to the batch was as large as it may be before this item was begun. Send it again, in another batch."
            }
        };
        self.write(item.id, Err(Problem::new(ProblemCode::Unavailable).detail(detail)))
    }

    fn write(&self, id: String, answer: Result<InstallationPlanReport, Problem>) -> ItemAnswer {
        let of_problem = |id, problem: Problem| PlanBatchResult {
            id,
            status: problem.code.status().as_u16(),
            report: None,
            problem: Some(problem.into_body(&self.state.settings.public_url, self.request_id.clone())),
        };
        let result = match answer {
            Ok(report) => PlanBatchResult { id, status: 200, report: Some(report), problem: None },
            Err(problem) => of_problem(id, problem),
        };
        let capacity = if result.report.is_some() { InstallationPlanRequest::REPORT_CAPACITY } else { 1024 };
        // No text at all would be the end of a chunked answer.
        let text = respond::json_text(&result, capacity).unwrap_or_else(|_| b"null".to_vec());
        ItemAnswer { status: result.status, text, took: Duration::ZERO }
    }
}

/// Answers one item.
fn answer_item(
    text: &str,
    shared: Option<&Weather>,
    json_limits: JsonLimits,
    is_abandoned: Arc<AtomicBool>,
) -> Result<InstallationPlanReport, Problem> {
    let mut asked: InstallationPlanRequest = body::decode(text.as_bytes(), json_limits)?;
    let mut diagnostics = Diagnostics::within(WorkBudget::until(is_abandoned));
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
