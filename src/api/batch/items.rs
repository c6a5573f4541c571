//! The answer to one item of a batch: a report or a problem, as JSON text.

use std::sync::Arc;
use std::sync::atomic::AtomicBool;
use std::time::{Duration, Instant};

use actix_web::web;

use super::plan_batch::{PlanBatchItem, PlanBatchResult};
use crate::api::app_state::AppState;
use crate::api::body;
use crate::api::compute::for_request;
use crate::api::content_coding::{CodedPart, Coding};
use crate::api::problem::{Problem, ProblemCode};
use crate::calculation::Calculation;
use crate::calculation::budget::WorkBudget;
use crate::calculation::input::Weather;
use crate::calculation::installation_plan::{InstallationPlanReport, InstallationPlanRequest};
use crate::calculation::material_estimate::JobBill;
use crate::calculation::report::{Diagnostics, FieldError, FieldErrorCode, FieldPath, Statement};
use crate::drawing::SvgIllustrator;
use crate::wording::{Language, Worded};

/// What the items of a batch have in common.
#[derive(Clone)]
pub(super) struct BatchJob {
    pub weather: Option<Arc<Weather>>,
    /// What items take where they do not send it themselves.
    pub defaults: Option<Arc<InstallationPlanRequest>>,
    /// Whether the bills of the items are kept for one of all.
    pub keeps_bills: bool,
    /// The language of the answer.
    pub language: Language,
    /// How the answer is coded.
    pub coding: Coding,
    pub caller: u64,
    pub request_id: String,
    pub state: web::Data<AppState>,
}

/// The answer to one item.
pub(super) struct ItemAnswer {
    pub status: u16,
    /// The JSON text of its result, behind the comma that divides it from the one before, coded.
    pub text: CodedPart,
    /// The bytes of the result, before it is coded.
    pub length: usize,
    /// Its id, and its bill where it has one, if bills are kept.
    pub bill: Option<(String, Option<JobBill>)>,
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
            let answer = answer_item(index, item.request.get(), &job, is_abandoned);
            job.write(index, item.id, answer)
        };
        match self.state.pool.run(self.caller, deadline, work).await {
            Ok(computed) => ItemAnswer { took: computed.took, ..computed.value },
            Err(reason) => self.write(index, id, Err(for_request::problem(reason, &self.state))),
        }
    }

    /// The result of an item that is not begun.
    pub fn refuse(&self, index: usize, item: PlanBatchItem, reason: NotBegun) -> ItemAnswer {
        let reason = match reason {
            NotBegun::OutOfTime => "out_of_time",
            NotBegun::AnswerTooLarge => "answer_too_large",
        };
        let detail = Statement::new("problems-item-not-begun").code("reason", reason);
        self.write(index, item.id, Err(Problem::new(ProblemCode::Unavailable).detail(detail)))
    }

    /// Gives a request what the items share, and notes what none may have. Returns the names of the fields that it took.
    fn complete(&self, asked: &mut InstallationPlanRequest, diagnostics: &mut Diagnostics) -> Vec<&'static str> {
        let taken = self.defaults.as_ref().map_or_else(Vec::new, |defaults| asked.take_absent(defaults));
        if asked.weather.as_ref().is_some_and(|weather| weather.location.is_some()) {
            let body = FieldPath::BODY;
            let weather_at = body.field("weather");
            let detail = Statement::new("errors-batch-item-location");
            let hint = Statement::new("errors-batch-item-location-hint");
            diagnostics.add_error(&weather_at.field("location"), FieldErrorCode::Contradiction, detail, hint);
        }
        if asked.weather.is_none() && asked.start.is_some() {
            asked.weather = self.weather.as_deref().cloned();
        }
        taken
    }

    fn write(&self, index: usize, id: String, answer: Result<InstallationPlanReport, Problem>) -> ItemAnswer {
        let of_problem = |id, problem: Problem| PlanBatchResult {
            id,
            status: problem.code.status().as_u16(),
            report: None,
            problem: Some(problem.into_body(&self.state.settings.public_url, self.request_id.clone(), self.language)),
        };
        let bill_of = |report: &InstallationPlanReport| Some(report.materials.as_ref()?.bill.clone());
        let bill = self.keeps_bills.then(|| (id.clone(), answer.as_ref().ok().and_then(bill_of)));
        let result = match answer {
            Ok(report) => PlanBatchResult { id, status: 200, report: Some(report), problem: None },
            Err(problem) => of_problem(id, problem),
        };
        let capacity = if result.report.is_some() { InstallationPlanRequest::REPORT_CAPACITY } else { 1024 };
        let comma: &[u8] = if index == 0 { b"" } else { b"," };
        let mut text = Vec::with_capacity(capacity);
        text.extend_from_slice(comma);
        if serde_json::to_writer(&mut text, &result).is_err() {
            // No text at all would be the end of a chunked answer.
            text = [comma, b"null"].concat();
        }
        let (length, text) = (text.len() - comma.len(), CodedPart::new(text, self.coding));
        ItemAnswer { status: result.status, text, length, bill, took: Duration::ZERO }
    }
}

/// Answers one item.
fn answer_item(
    index: usize,
    text: &str,
    job: &BatchJob,
    is_abandoned: Arc<AtomicBool>,
) -> Result<InstallationPlanReport, Problem> {
    let mut taken = Vec::new();
    let complete = |asked: &mut InstallationPlanRequest, diagnostics: &mut Diagnostics| {
        taken = job.complete(asked, diagnostics);
    };
    let asked = body::decode_request(text.as_bytes(), job.state.json_limits(), complete);
    let mut asked = asked.map_err(|problem| relocate(index, &taken, problem))?;
    let mut diagnostics = Diagnostics::within(WorkBudget::until(is_abandoned));
    let taken = job.complete(&mut asked, &mut diagnostics);
    let report = asked.answer_with(diagnostics).map_err(|refused| relocate(index, &taken, refused.into()))?;
    let mut report = report.worded(job.language);
    asked.illustrate(&mut report, &SvgIllustrator { language: job.language });
    Ok(report)
}

/// A problem of an item with pointers from the whole body; fields that were taken from what items share are wrong there.
fn relocate(index: usize, taken: &[&str], mut problem: Problem) -> Problem {
    let from_body = |pointer: &str| {
        let name = pointer.trim_start_matches("#/").split('/').next().unwrap_or_default();
        let place = if taken.contains(&name) { "#/shared".to_owned() } else { format!("#/items/{index}/request") };
        pointer.replacen('#', &place, 1)
    };
    problem.errors =
        problem.errors.into_iter().map(|error| FieldError { pointer: from_body(&error.pointer), ..error }).collect();
    problem
}
