//! What must live until an answer is written: the rest of a request, a place among the batches, a connection's sign of life.

use std::error::Error;
use std::pin::Pin;
use std::task::{Context, Poll};

use actix_web::body::{BodySize, BoxBody, MessageBody};
use actix_web::web::Bytes;

/// An answer, and what must live until it is written.
pub struct GuardedBody<T> {
    answer: BoxBody,
    _kept: T,
}

impl<T: 'static> GuardedBody<T> {
    /// Keeps something until an answer is written, or its connection gone.
    pub fn until_written(answer: BoxBody, kept: T) -> BoxBody {
        BoxBody::new(Self { answer, _kept: kept })
    }
}

impl<T> Unpin for GuardedBody<T> {}

impl<T: 'static> MessageBody for GuardedBody<T> {
    type Error = Box<dyn Error>;

    fn size(&self) -> BodySize {
        self.answer.size()
    }

    fn poll_next(self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<Option<Result<Bytes, Self::Error>>> {
        Pin::new(&mut self.get_mut().answer).poll_next(context)
    }
}
