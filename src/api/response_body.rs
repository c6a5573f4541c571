//! Answers that do not change while an instance runs: rendered once, cached by callers.

use std::hash::{DefaultHasher, Hash, Hasher};

use actix_web::http::header::{self, EntityTag, Header, IfNoneMatch};
use actix_web::web::Bytes;
use actix_web::{HttpRequest, HttpResponse};

/// A body that stays the same as long as the release does, with a strong entity tag.
pub struct CachedDocument {
    body: Bytes,
    media_type: &'static str,
    tag: EntityTag,
}

impl CachedDocument {
    /// Fixes a body.
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

    /// The answer: the body, or 304 when the caller has it.
    pub fn respond(&self, request: &HttpRequest) -> HttpResponse {
        let is_known = match IfNoneMatch::parse(request) {
            Ok(IfNoneMatch::Any) => true,
            Ok(IfNoneMatch::Items(tags)) => tags.iter().any(|tag| tag.weak_eq(&self.tag)),
            Err(_) => false,
        };
        let mut response = if is_known { HttpResponse::NotModified() } else { HttpResponse::Ok() };
        response
            .insert_header((header::ETAG, self.tag.to_string()))
            .insert_header((header::CACHE_CONTROL, "public, max-age=3600"));
        if is_known { response.finish() } else { response.content_type(self.media_type).body(self.body.clone()) }
    }
}
