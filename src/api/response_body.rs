//! Bodies of answers: one that is rendered once and cached by callers, and one that owns something until it is written.

use std::error::Error;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::pin::Pin;
use std::sync::OnceLock;
use std::task::{Context, Poll};

use actix_web::body::{BodySize, BoxBody, MessageBody};
use actix_web::http::header::{self, EntityTag, Header, HeaderName, HeaderValue, IfNoneMatch, TryIntoHeaderPair};
use actix_web::web::Bytes;
use actix_web::{HttpRequest, HttpResponse};

use super::content_coding::{Coding, LEAST_CODED};
use super::content_language::{VARY_BY_CODING_AND_LANGUAGE, content_language};
use super::sliced_body::shared;
use crate::wording::Language;

/// Says that an answer depends on the codings that its caller takes.
const VARY_BY_CODING: (HeaderName, HeaderValue) = (header::VARY, HeaderValue::from_static("accept-encoding"));

/// A body that does not change while the instance runs, with a strong entity tag for each coding in which it is sent.
pub struct CachedDocument {
    body: Bytes,
    media_type: &'static str,
    hash: String,
    /// The language, of a document that there is in several.
    language: Option<Language>,
    gzip: OnceLock<Bytes>,
    brotli: OnceLock<Bytes>,
}

impl CachedDocument {
    /// A document with this body.
    pub fn new(body: impl Into<Vec<u8>>, media_type: &'static str) -> Self {
        let body = Bytes::from(body.into());
        let mut hasher = DefaultHasher::new();
        body.hash(&mut hasher);
        let hash = format!("{:016x}", hasher.finish());
        Self { body, media_type, hash, language: None, gzip: OnceLock::new(), brotli: OnceLock::new() }
    }

    /// The same document, as the one in this language among several.
    #[must_use]
    pub fn in_language(self, language: Language) -> Self {
        let hash = format!("{}-{}", self.hash, language.tag());
        Self { hash, language: Some(language), ..self }
    }

    /// The same document, coded in every way now: on the thread that made it, and not on the one that first sends it.
    #[must_use]
    pub fn packed(self) -> Self {
        for coding in [Coding::Gzip, Coding::Brotli] {
            self.bytes(coding);
        }
        self
    }

    /// The same document, coded now in the way that this request is answered in.
    #[must_use]
    pub fn packed_for(self, coding: Coding) -> Self {
        self.bytes(coding);
        self
    }

    /// The coding in which a request is answered.
    fn coding_for(&self, request: &HttpRequest) -> Coding {
        if self.body.len() < LEAST_CODED { Coding::Identity } else { Self::best_coding(request) }
    }

    /// The coding that the caller of a request likes best for what is large enough.
    pub fn best_coding(request: &HttpRequest) -> Coding {
        Coding::best_of(&[Coding::Brotli, Coding::Gzip], request)
    }

    fn bytes(&self, coding: Coding) -> &Bytes {
        let packed = match coding {
            Coding::Identity => return &self.body,
            Coding::Gzip => &self.gzip,
            Coding::Brotli => &self.brotli,
        };
        packed.get_or_init(|| coding.pack_well(&self.body).into())
    }

    /// The body.
    pub fn body(&self) -> &[u8] {
        &self.body
    }

    /// The answer: the body, or 304 when the caller has it; with the header that says who may keep it.
    pub fn respond(&self, request: &HttpRequest, cache_control: impl TryIntoHeaderPair) -> HttpResponse {
        let coding = self.coding_for(request);
        let current = EntityTag::new_strong(format!("{}{}", self.hash, coding.tag_suffix()));
        let is_known = match IfNoneMatch::parse(request) {
            Ok(IfNoneMatch::Any) => true,
            Ok(IfNoneMatch::Items(tags)) => tags.iter().any(|tag| tag.weak_eq(&current)),
            Err(_) => false,
        };
        let mut response = if is_known { HttpResponse::NotModified() } else { HttpResponse::Ok() };
        response
            .insert_header((header::ETAG, current.to_string()))
            .insert_header(if self.language.is_some() { VARY_BY_CODING_AND_LANGUAGE } else { VARY_BY_CODING })
            .insert_header(cache_control);
        if is_known {
            return response.finish();
        }
        response.insert_header(content_language(self.language.unwrap_or(Language::English)));
        if let Some(coding) = coding.header() {
            response.insert_header((header::CONTENT_ENCODING, coding));
        }
        shared(response.content_type(self.media_type).body(self.bytes(coding).clone()))
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
