//! A body that is given to the HTTP library slice by slice, as fast as its caller reads, and counts as unwritten until it is.

use std::error::Error;
use std::pin::Pin;
use std::task::{Context, Poll};

use actix_web::HttpResponse;
use actix_web::body::{BodySize, BoxBody, MessageBody};
use actix_web::web::Bytes;

use super::unwritten::AnswerInWriting;
use super::wake_count::WakeCount;

/// Marks an answer whose bytes other answers share: it holds no memory of its own.
#[derive(Clone, Copy)]
pub struct SharedBytes;

/// The same answer, marked as one whose bytes other answers share.
pub fn shared(mut response: HttpResponse) -> HttpResponse {
    response.extensions_mut().insert(SharedBytes);
    response
}

/// The most bytes that the HTTP library is given at once: it copies what it is given.
const SLICE: usize = 8 * 1024;

/// Answers up to so many bytes are given to the library at once, and are not counted.
pub const LARGEST_UNCOUNTED: u64 = 16 * 1024;

/// A body that is given to the HTTP library in slices, as fast as its caller reads.
pub struct SlicedBody {
    body: BoxBody,
    rest: Bytes,
    /// The bytes of the chunk that the rest is of: none of them is freed before the last is written.
    held: usize,
    /// Whether other answers share its bytes.
    is_shared: bool,
    /// The wakes since the last chunk.
    wakes: WakeCount,
    writing: AnswerInWriting,
}

impl SlicedBody {
    /// Slices a body, and counts it as unwritten.
    pub fn boxed(body: BoxBody, is_shared: bool, writing: AnswerInWriting) -> BoxBody {
        let sliced = Self { body, rest: Bytes::new(), held: 0, is_shared, wakes: WakeCount::default(), writing };
        let BodySize::Sized(length) = sliced.body.size() else { return BoxBody::new(sliced) };
        sliced.count(length as usize);
        BoxBody::new(sliced)
    }

    fn count(&self, bytes: usize) {
        self.writing.holds(if self.is_shared { 0 } else { bytes });
    }
}

impl MessageBody for SlicedBody {
    type Error = Box<dyn Error>;

    fn size(&self) -> BodySize {
        self.body.size()
    }

    fn poll_next(self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<Option<Result<Bytes, Self::Error>>> {
        let this = self.get_mut();
        if this.rest.is_empty() {
            match Pin::new(&mut this.body).poll_next(context) {
                Poll::Ready(Some(Ok(chunk))) => {
                    this.held = chunk.len();
                    this.rest = chunk;
                    this.wakes = WakeCount::default();
                }
                Poll::Pending if this.wakes.is_flooded() => {
                    return Poll::Ready(Some(Err("too many requests on a connection before their answers".into())));
                }
                Poll::Pending => {
                    this.writing.waits_for_service();
                    return Poll::Pending;
                }
                end @ Poll::Ready(_) => return end,
            }
        }
        let slice = this.rest.split_to(this.rest.len().min(SLICE));
        this.count(if this.rest.is_empty() { 0 } else { this.held });
        Poll::Ready(Some(Ok(slice)))
    }
}
