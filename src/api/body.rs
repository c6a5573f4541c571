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
use super::strict::{NULL_FOR_OPTIONAL, NULL_NOT_ALLOWED, StrictDeserializer, TOO_MANY_ITEMS};
use crate::calculation::report::{FieldError, FieldErrorCode, ListJoin, MAX_NAME_CHARS, Statement};

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
        Problem::new(ProblemCode::BodyTooLarge).detail(format!(
            "The body is larger than {limit} bytes, the most that this path takes. Send less, or several requests."
        ))
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
            Problem::new(ProblemCode::MalformedJson).detail(format!("The body broke off: {error}."))
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

fn too_many_arriving(exhausted: Exhausted) -> &'static str {
    match exhausted {
        Exhausted::Whole => {
            "The bodies that are arriving are as large as the instance takes. Repeat the request after the seconds in Retry-After."
        }
        Exhausted::Share => {
            "Your bodies that are arriving are as large as the instance takes of one caller. Send fewer at once, each in one go."
        }
    }
}

fn check_media_type(request: &HttpRequest) -> Result<(), Problem> {
    // A proxy may read another of several lines than this service does.
    for (name, title) in [(header::CONTENT_TYPE, "Content-Type"), (header::CONTENT_ENCODING, "Content-Encoding")] {
        if request.headers().get_all(name).count() > 1 {
            let detail = format!("The header {title} stands more than once. Send one.");
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

/// Decodes a typed request from JSON.
///
/// A valid body is read once. Only one that fails is read again, to find where and what is wrong.
///
/// # Errors
/// 400 when the body is not one JSON text or nests too deep, 422 with the pointer of the error when it is not this request.
pub fn decode<T: DeserializeOwned>(body: &[u8], limits: JsonLimits) -> Result<T, Problem> {
    let mut json = serde_json::Deserializer::from_slice(body);
    match T::deserialize(StrictDeserializer(&mut json, limits.items)) {
        Ok(request) if json.end().is_ok() => Ok(request),
        _ => Err(explain_failure::<T>(body, limits)),
    }
}

fn explain_failure<T: DeserializeOwned>(body: &[u8], limits: JsonLimits) -> Problem {
    if body.iter().all(u8::is_ascii_whitespace) {
        return Problem::new(ProblemCode::MalformedJson).detail("The body is empty. Send one JSON object.");
    }
    // A syntax error anywhere counts before a wrong field.
    let depth = match serde_json::from_slice::<NestingDepth>(body) {
        Ok(NestingDepth(depth)) => depth,
        Err(error) => {
            return Problem::new(ProblemCode::MalformedJson)
                .detail(format!("The body is not one JSON text: {error}. Send one JSON object."));
        }
    };
    // No request type is deep, so only a body that could not be decoded can be too deep.
    if depth > limits.depth {
        return Problem::new(ProblemCode::MalformedJson).detail(format!(
            "The body nests more than {} objects and arrays. No request needs as many; send one JSON object.",
            limits.depth
        ));
    }
    let mut json = serde_json::Deserializer::from_slice(body);
    match serde_path_to_error::deserialize::<_, T>(StrictDeserializer(&mut json, limits.items)) {
        Err(error) => Problem::invalid_fields(vec![field_error(error.path(), &error.inner().to_string(), limits)]),
        // The first pass failed, so the second does.
        Ok(_) => Problem::new(ProblemCode::InternalError),
    }
}

/// Translates a message of the deserializer. The messages are those of serde; a test checks them.
fn field_error(path: &serde_path_to_error::Path, message: &str, limits: JsonLimits) -> FieldError {
    let message = message.rsplit_once(" at line ").map_or(message, |(message, _)| message);
    let (first, others) = parse_names(message);
    let here = pointer(path);
    if message.starts_with("unknown field") {
        let hint = match nearest(&first, &others) {
            Some(name) => Statement::new("errors-did-you-mean").text("meant", name.to_owned()),
            None => Statement::new("errors-known-fields").text("known", others.join(", ")),
        };
        // The path ends in the unknown name already.
        let detail = Statement::new("errors-field-unknown").text("field", first);
        FieldError::at(here, FieldErrorCode::FieldUnknown, detail, hint)
    } else if message.starts_with("missing field") {
        let of_field = |statement: Statement| statement.text("field", first.clone());
        let detail = of_field(Statement::new("errors-field-missing"));
        let hint = of_field(Statement::new("errors-add-field"));
        FieldError::at(child(&here, &first), FieldErrorCode::FieldMissing, detail, hint)
    } else if message.starts_with("duplicate field") {
        let pointer = child(&here, &first);
        let detail = Statement::new("errors-field-twice").text("field", first);
        FieldError::at(pointer, FieldErrorCode::FieldDuplicate, detail, Statement::new("errors-send-once"))
    } else if message.starts_with("unknown variant") {
        // All members with that word are named: a guess between them could be dangerous.
        let meant = match names_containing(&first, &others) {
            words if words.is_empty() => nearest(&first, &others).map(|name| vec![name.to_owned()]),
            words => Some(words),
        };
        let list = Statement::new("errors-known-values").text("known", others.join(", "));
        let hint = match meant {
            Some(names) => {
                let name = |name: String| Statement::new("errors-meant").text("meant", name);
                let names = names.into_iter().map(name).collect();
                Statement::new("errors-did-you-mean").phrases("meant", names, ListJoin::Or).followed_by(list)
            }
            None => list,
        };
        let detail = Statement::new("errors-value-unknown").text("value", first);
        FieldError::at(here, FieldErrorCode::ValueUnknown, detail, hint)
    } else if [NULL_NOT_ALLOWED, NULL_FOR_OPTIONAL].contains(&message) || message.starts_with("invalid type: null") {
        let detail = Statement::new("errors-null");
        let hint = if message == NULL_FOR_OPTIONAL {
            Statement::new("errors-leave-out")
        } else {
            Statement::new("errors-send-value")
        };
        FieldError::at(here, FieldErrorCode::NullNotAllowed, detail, hint)
    } else if message == TOO_MANY_ITEMS {
        let of_limit = |statement: Statement| statement.count("max_items", limits.items as u64);
        let detail = of_limit(Statement::new("errors-list-too-long"));
        let hint = of_limit(Statement::new("errors-send-fewer-items"));
        FieldError::at(here, FieldErrorCode::ListSize, detail, hint)
    } else if message.starts_with("invalid value") {
        let detail = Statement::new("errors-value-not-taken").text("value", first);
        FieldError::at(here, FieldErrorCode::OutOfRange, detail, Statement::new("errors-send-whole-number"))
    } else {
        let expected = || expected_type(message.rsplit_once("expected ").map_or("", |(_, expected)| expected));
        let detail = Statement::new("errors-type-wrong").code("sent", sent_type(message));
        FieldError::at(
            here,
            FieldErrorCode::TypeWrong,
            detail.phrase("expected", expected()),
            Statement::new("errors-send-type").phrase("expected", expected()),
        )
    }
}

/// The name that a message is about, at most [`MAX_NAME_CHARS`] long, and the names that it lists as known.
///
/// The first name is the caller's and may contain anything; the known ones are ours and contain no backtick.
fn parse_names(message: &str) -> (String, Vec<&str>) {
    let (about, known) = message.rsplit_once("`, expected ").unwrap_or((message, ""));
    let first = about.split_once('`').map_or("", |(_, name)| name.trim_end_matches('`'));
    (first.chars().take(MAX_NAME_CHARS).collect(), known.split('`').skip(1).step_by(2).collect())
}

/// What serde expects, without the names of Rust types.
fn expected_type(expected: &str) -> Statement {
    let of = |code| Statement::new("errors-type").code("type", code);
    match expected {
        "a string" | "string" => of("text"),
        "f64" => of("number"),
        "u32" | "u64" | "usize" => of("whole_number"),
        "a sequence" => of("array"),
        "" => of("other"),
        expected if expected.starts_with("struct ") || expected == "a map" => of("object"),
        expected if expected.starts_with("enum ") || expected == "string or map" => of("listed_text"),
        // As our own types of text say it.
        expected => match expected.split_once(" as text, such as ") {
            Some((kind, example)) => Statement::new("errors-type-of-text")
                .text("dimension", kind.to_owned())
                .text("example", example.trim_matches('"').to_owned()),
            None => Statement::new("errors-type-other").text("type", expected.to_owned()),
        },
    }
}

/// What the caller sent, by the JSON type that the message names.
fn sent_type(message: &str) -> &'static str {
    let kind = message.strip_prefix("invalid type: ").unwrap_or_default();
    let is = |name: &str| kind.starts_with(name);
    match () {
        () if is("sequence") => "array",
        () if is("map") => "object",
        () if is("string") => "text",
        () if is("integer") || is("floating point") => "number",
        () if is("boolean") => "truth_value",
        () => "other",
    }
}

fn pointer(path: &serde_path_to_error::Path) -> String {
    use serde_path_to_error::Segment;
    path.iter().fold("#".to_owned(), |pointer, segment| match segment {
        Segment::Seq { index } => format!("{pointer}/{index}"),
        Segment::Map { key } => child(&pointer, key),
        Segment::Enum { .. } | Segment::Unknown => pointer,
    })
}

/// A member of the object at a pointer, its name escaped (RFC 6901).
fn child(pointer: &str, name: &str) -> String {
    let name = name.chars().take(MAX_NAME_CHARS).collect::<String>().replace('~', "~0").replace('/', "~1");
    format!("{pointer}/{name}")
}

/// Names that contain the text as one of their words: `car` for `passenger_car`.
fn names_containing(name: &str, known: &[&str]) -> Vec<String> {
    let name = name.to_lowercase().replace([' ', '-'], "_");
    let is_word = |other: &&&str| !name.is_empty() && format!("_{other}_").contains(&format!("_{name}_"));
    known.iter().filter(is_word).map(|other| (*other).to_owned()).collect()
}

fn nearest<'a>(name: &str, known: &[&'a str]) -> Option<&'a str> {
    let close = |other: &&str| strsim::damerau_levenshtein(name, other);
    known.iter().copied().min_by_key(close).filter(|other| close(other) <= 1 + other.len() / 4)
}
