//! How a request has something computed: on the pool, with its deadline, as its caller.

use std::future::poll_fn;
use std::pin::pin;
use std::sync::Arc;
use std::sync::atomic::AtomicBool;
use std::task::Poll;

use actix_web::HttpRequest;
use prometheus_client::metrics::counter::Counter;

use super::{Computed, NotComputed};
use crate::api::app_state::AppState;
use crate::api::connection;
use crate::api::problem::{Problem, ProblemCode};
use crate::api::request_context::RequestContext;

/// How often a request that waits may be woken: by its result, its deadline, and whatever else comes on its connection. The HTTP library
/// wakes one without end whose caller has sent more of the next requests than it buffers.
const MAX_POLLS: u32 = 10_000;

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
/// 503 when the queue is full, or the request waited in it for too long since its body arrived; 500 when the work panicked. A connection
/// with too many requests before their answers is cut.
pub async fn run<T: Send + 'static>(
    request: &HttpRequest,
    work: impl FnOnce(Arc<AtomicBool>) -> T + Send + 'static,
) -> Result<T, Problem> {
    let (state, context) = (AppState::of(request), RequestContext::of(request));
    let deadline = context.arrived_at() + state.settings.limits.queue_deadline;
    let mut count = AbandonCount(Some(state.metrics.abandoned.clone()));
    let mut computed = pin!(state.pool.run(context.caller_id(), deadline, work));
    let mut polls = 0_u32;
    let outcome = poll_fn(|context| {
        polls += 1;
        if polls > MAX_POLLS { Poll::Ready(None) } else { computed.as_mut().poll(context).map(Some) }
    });
    let Some(outcome) = outcome.await else {
        connection::cut(request);
        return Err(Problem::new(ProblemCode::Overloaded));
    };
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
