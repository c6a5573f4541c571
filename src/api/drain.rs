//! What becomes of a body that no handler reads to its end.
//!
//! When a handler drops a chunked body half-read, the HTTP library waits for the rest, however long that takes, to use the
//! connection again. A body that lives until its answer is written counts as unread instead, and the connection is closed. The body
//! of a refused request is better drained: then its caller can try again on the same connection.

use std::time::Duration;

use actix_web::http::{ConnectionType, Method};
use actix_web::web::Payload;
use actix_web::{HttpRequest, HttpResponse};
use futures_util::StreamExt;

use super::app_state::AppState;
use super::body::MAX_BODY_LIMIT_FACTOR;
use super::problem::Problem;
use super::request_context::RequestContext;
use super::respond::problem_response;
use super::response_body::GuardedBody;

/// Closes the connection after an answer to a body that was not read to its end.
pub fn close_if_unread(request: &HttpRequest, response: HttpResponse, rest: Payload) -> HttpResponse {
    if RequestContext::of(request).body_read_at.get().is_some() { response } else { close(response, rest) }
}

/// Closes the connection after an answer.
fn close(response: HttpResponse, rest: Payload) -> HttpResponse {
    response.map_body(|head, body| {
        head.set_connection_type(ConnectionType::Close);
        GuardedBody::boxed(body, rest)
    })
}

/// Refuses a request whose body is not needed. The body is read to its end, so that the caller can try again on the same
/// connection; where that is too much or takes too long, the connection is closed.
pub async fn refuse(request: &HttpRequest, mut rest: Payload, problem: Problem) -> HttpResponse {
    if *request.method() == Method::CONNECT {
        // What follows is no body, and has no end.
        return close(problem_response(problem, request), rest);
    }
    let limits = &AppState::of(request).settings.limits;
    let is_read = drain(&mut rest, limits.body.saturating_mul(MAX_BODY_LIMIT_FACTOR), limits.deadline).await;
    let response = problem_response(problem, request);
    if is_read { response } else { close(response, rest) }
}

/// Reads a body that is not needed; whether it ended within `limit` bytes and the deadline.
async fn drain(rest: &mut Payload, limit: usize, deadline: Duration) -> bool {
    let read = async {
        let mut length = 0_usize;
        while let Some(Ok(chunk)) = rest.next().await {
            length += chunk.len();
            if length > limit {
                return false;
            }
        }
        true
    };
    tokio::time::timeout(deadline, read).await.unwrap_or(false)
}
