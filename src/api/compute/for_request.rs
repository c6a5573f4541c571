//! How a request has something computed: on the pool, with its deadline, as its caller.

use std::sync::Arc;
use std::sync::atomic::AtomicBool;

use actix_web::HttpRequest;
use prometheus_client::metrics::counter::Counter;

use super::{Computed, NotComputed};
use crate::api::app_state::AppState;
use crate::api::problem::{Problem, ProblemCode};
use crate::api::request_context::RequestContext;

/// Counts a calculation as abandoned, unless it came to its end.
struct AbandonCount(Option<Counter>);

impl Drop for AbandonCount {
    fn drop(&mut self) {
        if let Some(counter) = &self.0 {
            counter.inc();
        }
    }
}

/// Runs work for a request on the pool; what it took is added to the computed time of the request.
///
/// # Errors
/// 503 when the queue is full, or the request waited in it for too long since its body arrived; 500 when the work panicked.
pub async fn run<T: Send + 'static>(
    request: &HttpRequest,
    work: impl FnOnce(Arc<AtomicBool>) -> T + Send + 'static,
) -> Result<T, Problem> {
    let (state, context) = (AppState::of(request), RequestContext::of(request));
    let deadline = context.arrived_at() + state.settings.limits.queue_deadline;
    let mut count = AbandonCount(Some(state.metrics.abandoned.clone()));
    let outcome = state.pool.run(context.caller_id(), deadline, work).await;
    count.0 = None;
    match outcome {
        Ok(Computed { value, took }) => {
            context.add_computed(took);
            Ok(value)
        }
        Err(reason) => Err(problem(reason, state)),
    }
}

/// The problem of work that was not done.
pub fn problem(reason: NotComputed, state: &AppState) -> Problem {
    match reason {
        NotComputed::Overloaded => Problem::new(ProblemCode::Overloaded),
        NotComputed::Panicked => state.count_panic(),
    }
}
