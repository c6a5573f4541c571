//! A body that was not read to its end ends its connection.
//!
//! When a handler drops a chunked body half-read, the HTTP library waits for the rest, however long that takes, to use the
//! connection again. A body that lives until its answer is out counts as unread instead, and the connection is closed. What a
//! refused request sent is better drained: then its caller can try again on the same connection.

use std::time::Duration;

use actix_web::http::{ConnectionType, StatusCode};
use actix_web::web::Payload;
use actix_web::{HttpRequest, HttpResponse};
use futures_util::StreamExt;

use super::app_state::AppState;
use super::body;
use super::response_body::GuardedBody;
use super::problem::Problem;

/// Ends the connection behind an answer that says that the body was not read to its end.
pub fn close_behind(response: HttpResponse, rest: Payload) -> HttpResponse {
    match response.status() {
        StatusCode::REQUEST_TIMEOUT | StatusCode::PAYLOAD_TOO_LARGE => close(response, rest),
        _ => response,
    }
}

/// Ends the connection behind an answer.
fn close(response: HttpResponse, rest: Payload) -> HttpResponse {
    response.map_body(|head, answer| {
        head.set_connection_type(ConnectionType::Close);
        GuardedBody::until_written(answer, rest)
    })
}

/// Refuses a request whose body nobody needs: it is read to its end, so that its caller can try again on the same connection; or
/// the connection is closed, where that takes too much or too long.
pub async fn refuse(request: &HttpRequest, mut rest: Payload, problem: Problem) -> HttpResponse {
    let limits = &AppState::of(request).settings.limits;
    let is_read = drain(&mut rest, limits.body.saturating_mul(body::MAX_BODY_SHARE), limits.deadline).await;
    let response = problem.respond(request);
    if is_read { response } else { close(response, rest) }
}

/// Reads a body that nobody needs, and says whether it came to its end within so many bytes and so much time.
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
