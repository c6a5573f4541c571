//! A body that was not read to its end ends its connection.
//!
//! When a handler drops a chunked body half-read, the HTTP library waits for the rest, however long that takes, to use the
//! connection again. A body that lives until its answer is out counts as unread instead, and the connection is closed.

use std::error::Error;
use std::pin::Pin;
use std::task::{Context, Poll};

use actix_web::HttpResponse;
use actix_web::body::{BodySize, BoxBody, MessageBody};
use actix_web::http::{ConnectionType, StatusCode};
use actix_web::web::{Bytes, Payload};

/// An answer, and the rest of the request that it answers.
struct Held {
    answer: BoxBody,
    _rest: Payload,
}

impl MessageBody for Held {
    type Error = Box<dyn Error>;

    fn size(&self) -> BodySize {
        self.answer.size()
    }

    fn poll_next(self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<Option<Result<Bytes, Self::Error>>> {
        Pin::new(&mut self.get_mut().answer).poll_next(context)
    }
}

/// Ends the connection behind an answer that says that the body was not read to its end.
pub fn close_behind(response: HttpResponse, rest: Payload) -> HttpResponse {
    if !matches!(response.status(), StatusCode::REQUEST_TIMEOUT | StatusCode::PAYLOAD_TOO_LARGE) {
        return response;
    }
    response.map_body(|head, answer| {
        head.set_connection_type(ConnectionType::Close);
        BoxBody::new(Held { answer, _rest: rest })
    })
}
