//! Reads the bytes of a body and decodes them to a typed request, or to a problem that says what is wrong with them.

use std::time::Instant;

use actix_web::http::header;
use actix_web::{HttpRequest, web};
use futures_util::StreamExt;
use serde::de::DeserializeOwned;

use super::app_state::AppState;
use super::caller_shares::{Exhausted, TakenShare};
use super::json_limits::{JsonLimits, NestingDepth};
use super::problem::{Problem, ProblemCode};
use super::request_context::RequestContext;
use super::strict::{StrictDeserializer, StrictRules};
use super::structure::{CollectedFaults, collect_faults};
use crate::calculation::Calculation;
use crate::calculation::report::{Diagnostics, FieldError, Statement};

/// The most memory that is reserved before a body arrives, bytes.
const MAX_RESERVED: usize = 64 * 1024;

/// The largest body of any path, as a multiple of the setting: that of a batch.
pub const MAX_BODY_LIMIT_FACTOR: usize = 64;

/// A body that has arrived. It counts as arriving until it is dropped, for it is not understood before.
pub struct ReadBody {
    /// Its bytes.
    pub bytes: Vec<u8>,
    _arrived: TakenShare,
}

/// Reads the whole body, up to `limit` bytes, within the deadline of the settings.
///
/// # Errors
/// 408 after the deadline, 413, 415, 503 when too many bytes of bodies are arriving, or 400 when the connection breaks.
pub async fn read(request: &HttpRequest, payload: &mut web::Payload, limit: usize) -> Result<ReadBody, Problem> {
    let deadline = AppState::of(request).settings.limits.deadline;
    let too_late = |_| Err(Problem::new(ProblemCode::RequestTimeout));
    tokio::time::timeout(deadline, read_all(request, payload, limit)).await.unwrap_or_else(too_late)
}

/// The body is read before its media type is checked: an answer with unread bytes behind it would close the connection.
async fn read_all(request: &HttpRequest, payload: &mut web::Payload, limit: usize) -> Result<ReadBody, Problem> {
    let too_large = || {
        let detail = Statement::new("problems-body-larger").count("limit", limit as u64);
        Problem::new(ProblemCode::BodyTooLarge).detail(detail)
    };
    let announced = request
        .headers()
        .get(header::CONTENT_LENGTH)
        .and_then(|length| length.to_str().ok())
        .and_then(|length| length.parse::<usize>().ok());
    if announced.is_some_and(|length| length > limit) {
        return Err(too_large());
    }
    let too_busy = |exhausted| Problem::new(ProblemCode::Overloaded).detail(too_many_arriving(exhausted));
    let arriving = &AppState::of(request).arriving;
    let context = RequestContext::of(request);
    let mut arrived = arriving.take(context.caller_id(), 0).map_err(too_busy)?;
    // What is only announced takes no memory.
    let mut body = Vec::with_capacity(announced.unwrap_or(1024).min(MAX_RESERVED));
    while let Some(chunk) = payload.next().await {
        let chunk = chunk.map_err(|error| {
            let detail = Statement::new("problems-body-broke-off").text("reason", error.to_string());
            Problem::new(ProblemCode::MalformedJson).detail(detail)
        })?;
        if body.len() + chunk.len() > limit {
            return Err(too_large());
        }
        arrived.grow(chunk.len()).map_err(too_busy)?;
        body.extend_from_slice(&chunk);
    }
    context.body_read_at.set(Some(Instant::now()));
    check_media_type(request)?;
    Ok(ReadBody { bytes: body, _arrived: arrived })
}

fn too_many_arriving(exhausted: Exhausted) -> Statement {
    Statement::new("problems-arriving").code("whose", exhausted.code())
}

fn check_media_type(request: &HttpRequest) -> Result<(), Problem> {
    // A proxy may read another of several lines than this service does.
    for (name, title) in [(header::CONTENT_TYPE, "Content-Type"), (header::CONTENT_ENCODING, "Content-Encoding")] {
        if request.headers().get_all(name).count() > 1 {
            let detail = Statement::new("problems-header-twice").text("header", title);
            return Err(Problem::new(ProblemCode::UnsupportedMediaType).detail(detail));
        }
    }
    let text = |name: header::HeaderName| {
        request.headers().get(name).map(|value| value.to_str().unwrap_or("?").to_ascii_lowercase())
    };
    let content_type = text(header::CONTENT_TYPE).unwrap_or_default();
    let mut parts = content_type.split(';').map(str::trim);
    let is_json = parts.next() == Some("application/json");
    let is_utf8 = parts.all(|part| part.strip_prefix("charset=").is_none_or(|set| set.trim_matches('"') == "utf-8"));
    let is_plain = text(header::CONTENT_ENCODING).is_none_or(|encoding| encoding == "identity");
    if is_json && is_utf8 && is_plain { Ok(()) } else { Err(Problem::new(ProblemCode::UnsupportedMediaType)) }
}

/// Decodes a typed value from JSON.
///
/// A valid body is read once. Only one that fails is read again, to find where and what is wrong.
///
/// # Errors
/// 400 when the body is not one JSON text or nests too deep, 422 with the pointers of all faults when it has another structure.
pub fn decode<T: DeserializeOwned>(body: &[u8], limits: JsonLimits) -> Result<T, Problem> {
    try_decode(body, limits).ok_or_else(|| match find_faults::<T>(body, limits) {
        Ok((_, faults)) => Problem::first_invalid_fields(faults.errors, faults.count),
        Err(problem) => problem,
    })
}

/// Decodes the request of a calculation, which may have to be completed before it is answered. What the calculation finds wrong
/// with the rest of a faulty body comes with its faults of structure.
///
/// # Errors
/// As [`decode`].
pub fn decode_request<C: Calculation>(
    body: &[u8],
    limits: JsonLimits,
    complete: impl FnOnce(&mut C, &mut Diagnostics),
) -> Result<C, Problem> {
    try_decode(body, limits).ok_or_else(|| match find_faults::<C>(body, limits) {
        Ok((request, mut faults)) => {
            // Of more than are listed, no further ones are looked for.
            if let Some(mut request) = request.filter(|_| faults.count == faults.errors.len()) {
                add_faults_of_calculation(&mut request, &mut faults, complete);
            }
            Problem::first_invalid_fields(faults.errors, faults.count)
        }
        Err(problem) => problem,
    })
}

fn try_decode<T: DeserializeOwned>(body: &[u8], limits: JsonLimits) -> Option<T> {
    let mut json = serde_json::Deserializer::from_slice(body);
    let request = T::deserialize(StrictDeserializer(&mut json, StrictRules::for_body(body, limits.items))).ok()?;
    json.end().ok().map(|()| request)
}

/// Reads a body that could not be decoded: with stand-ins for what is wrong, and the faults of its structure.
fn find_faults<T: DeserializeOwned>(body: &[u8], limits: JsonLimits) -> Result<(Option<T>, CollectedFaults), Problem> {
    if body.iter().all(u8::is_ascii_whitespace) {
        return Err(malformed(Statement::new("problems-body-empty")));
    }
    // A syntax error anywhere counts before a wrong field.
    let depth = match serde_json::from_slice::<NestingDepth>(body) {
        Ok(NestingDepth(depth)) => depth,
        Err(error) => {
            return Err(malformed(Statement::new("problems-body-not-json").text("reason", error.to_string())));
        }
    };
    // No request type is deep, so only a body that could not be decoded can be too deep.
    if depth > limits.depth {
        return Err(malformed(Statement::new("problems-body-too-deep").count("depth", limits.depth as u64)));
    }
    let text = std::str::from_utf8(body).map_err(|_| Problem::new(ProblemCode::MalformedJson))?;
    let (request, faults) = collect_faults(text, limits);
    // The first pass failed, so the second finds why.
    if faults.count == 0 { Err(Problem::new(ProblemCode::InternalError)) } else { Ok((request, faults)) }
}

fn malformed(detail: Statement) -> Problem {
    Problem::new(ProblemCode::MalformedJson).detail(detail)
}

/// Adds what the calculation finds wrong with what could be decoded. That a calculation was given faults keeps it from computing.
fn add_faults_of_calculation<C: Calculation>(
    request: &mut C,
    faults: &mut CollectedFaults,
    complete: impl FnOnce(&mut C, &mut Diagnostics),
) {
    let mut diagnostics = Diagnostics::default();
    for error in &faults.errors {
        diagnostics.push_error(error.clone());
    }
    complete(request, &mut diagnostics);
    let Err(invalid) = request.answer_with(diagnostics) else { return };
    let is_known = |error: &FieldError| faults.errors.contains(error) || faults.covers(&error.pointer);
    // Beside a stand-in, only what is wrong with one field alone is wrong for sure.
    let is_sure = |error: &FieldError| !faults.has_stand_ins || error.concerns_one_field();
    let further: Vec<_> = invalid.errors.into_iter().filter(|error| is_sure(error) && !is_known(error)).collect();
    for error in further {
        let pointer = faults.sent_pointer(error.pointer.clone());
        faults.errors.push(FieldError { pointer, ..error });
    }
    faults.count = faults.errors.len();
}
