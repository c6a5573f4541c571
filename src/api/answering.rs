//! From a typed request to what is made of its report.

use std::sync::Arc;

use actix_web::HttpRequest;

use super::app_state::AppState;
use super::compute::for_request;
use super::content_language;
use super::problem::Problem;
use super::request_context::RequestContext;
use super::weather::{self, FetchedWeather};
use crate::calculation::Calculation;
use crate::calculation::budget::WorkBudget;
use crate::wording::Worded;

/// What is estimated to take less is computed on the thread that has read it: the way to the pool and back costs about a tenth of that.
const MAX_MICROS_WHERE_READ: u64 = 100;

/// Computes the report of a request; returns what `make` makes of both. What is estimated to take long is computed on the pool, and
/// stops when the caller leaves.
///
/// # Errors
/// 422 for errors of the request, 429 when it costs more than the caller may ask now, 503 when too much waits, and those of the forecast.
pub async fn compute_report<C: Calculation, T: Send + 'static>(
    request: &HttpRequest,
    mut asked: C,
    make: impl FnOnce(&C, C::Report) -> T + Send + 'static,
) -> Result<T, Problem> {
    let (state, context) = (AppState::of(request), RequestContext::of(request));
    let estimate = asked.estimated_micros();
    state.admission.charge_cost(&context, estimate)?;
    let language = content_language::of_request(request);
    let fetched = FetchedWeather::of(&mut asked, state, weather::asker(request)).await?;
    let answer = move |is_abandoned| {
        let report = fetched.answer(&asked, WorkBudget::until(is_abandoned))?.worded(language);
        Ok(make(&asked, report))
    };
    if estimate < MAX_MICROS_WHERE_READ {
        return context.compute(|| answer(Arc::default()));
    }
    // Apart, for what is computed here should not carry the room for it.
    Box::pin(for_request::run(request, answer)).await?
}
