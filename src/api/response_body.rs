//! Bodies of answers: one that is rendered once and cached by callers, and one that owns something until it is written.

use std::error::Error;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::pin::Pin;
use std::task::{Context, Poll};

use actix_web::body::{BodySize, BoxBody, MessageBody};
use actix_web::http::header::{self, EntityTag, Header, IfNoneMatch, TryIntoHeaderPair};
use actix_web::web::Bytes;
use actix_web::{HttpRequest, HttpResponse};

use super::sliced_body::shared;

/// A body that does not change while the instance runs, with a strong entity tag.
pub struct CachedDocument {
    body: Bytes,
    media_type: &'static str,
    tag: EntityTag,
}

impl CachedDocument {
    /// A document with this body.
    pub fn new(body: impl Into<Vec<u8>>, media_type: &'static str) -> Self {
        let body = Bytes::from(body.into());
        let mut hasher = DefaultHasher::new();
        body.hash(&mut hasher);
        let tag = EntityTag::new_strong(format!("{:016x}", hasher.finish()));
        Self { body, media_type, tag }
    }

    /// The body.
    pub fn body(&self) -> &[u8] {
        &self.body
    }

    /// The answer: the body, or 304 when the caller has it; with the header that says who may keep it.
    pub fn respond(&self, request: &HttpRequest, cache_control: impl TryIntoHeaderPair) -> HttpResponse {
        let is_known = match IfNoneMatch::parse(request) {
            Ok(IfNoneMatch::Any) => true,
            Ok(IfNoneMatch::Items(tags)) => tags.iter().any(|tag| tag.weak_eq(&self.tag)),
            Err(_) => false,
        };
        let mut response = if is_known { HttpResponse::NotModified() } else { HttpResponse::Ok() };
        response.insert_header((header::ETAG, self.tag.to_string())).insert_header(cache_control);
        if is_known {
            response.finish()
        } else {
            shared(response.content_type(self.media_type).body(self.body.clone()))
        }
    }
}

/// A body that owns a value until the body is written or its connection is gone: the rest of a request, a permit, a counter.
pub struct GuardedBody<T> {
    body: BoxBody,
    _guard: T,
}

impl<T: 'static> GuardedBody<T> {
    /// A body that owns `guard`.
    pub fn boxed(body: BoxBody, guard: T) -> BoxBody {
        BoxBody::new(Self { body, _guard: guard })
    }
}

impl<T> Unpin for GuardedBody<T> {}

impl<T: 'static> MessageBody for GuardedBody<T> {
    type Error = Box<dyn Error>;

    fn size(&self) -> BodySize {
        self.body.size()
    }

    fn poll_next(self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<Option<Result<Bytes, Self::Error>>> {
        Pin::new(&mut self.get_mut().body).poll_next(context)
    }
}
