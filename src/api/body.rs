//! From the bytes of a request to a typed request, or a problem that says what is wrong with them.

use actix_web::http::header;
use actix_web::{HttpRequest, web};
use futures_util::StreamExt;
use serde::de::DeserializeOwned;

use super::app_state::AppState;
use super::depth::Depth;
use super::problem::{Problem, ProblemCode};
use super::strict::{NULL, NULL_FOR_ABSENT, Strict, TOO_MANY};
use crate::calculation::report::{FieldError, FieldErrorCode, MAX_NAME_CHARS};
use crate::vocabulary::Vocabulary;

/// The largest body of any path, as a multiple of the setting: that of a batch.
pub const MAX_BODY_SHARE: usize = 64;

/// How much structure a body may have, whatever its fields take.
#[derive(Clone, Copy, Debug)]
pub struct JsonLimits {
    /// Objects and arrays within each other.
    pub depth: usize,
    /// Items of one array.
    pub items: usize,
}

/// Reads the whole body, up to `limit` bytes, within the deadline of the settings.
///
/// # Errors
/// 408 after the deadline, 413, 415, or 400 when the connection breaks.
pub async fn read(request: &HttpRequest, payload: &mut web::Payload, limit: usize) -> Result<Vec<u8>, Problem> {
    let deadline = AppState::of(request).settings.limits.deadline;
    let too_late = |_| Err(Problem::new(ProblemCode::RequestTimeout));
    tokio::time::timeout(deadline, read_all(request, payload, limit)).await.unwrap_or_else(too_late)
}

/// The body is read before its type is judged: an answer with unread bytes behind it would close the connection.
async fn read_all(request: &HttpRequest, payload: &mut web::Payload, limit: usize) -> Result<Vec<u8>, Problem> {
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
    let mut body = Vec::with_capacity(announced.unwrap_or(1024));
    while let Some(chunk) = payload.next().await {
        let chunk = chunk.map_err(|error| {
            Problem::new(ProblemCode::MalformedJson).detail(format!("The body broke off: {error}."))
        })?;
        if body.len() + chunk.len() > limit {
            return Err(too_large());
        }
        body.extend_from_slice(&chunk);
    }
    judge_type(request)?;
    Ok(body)
}

fn judge_type(request: &HttpRequest) -> Result<(), Problem> {
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

/// Reads a typed request from JSON.
///
/// The good path is one pass. Only a failure is looked at again, to tell where and what it is.
///
/// # Errors
/// 400 when the body is not one JSON text or nests too deep, 422 with the place of the fault when it is not this request.
pub fn decode<T: DeserializeOwned>(body: &[u8], json_limits: JsonLimits) -> Result<T, Problem> {
    let mut json = serde_json::Deserializer::from_slice(body);
    match T::deserialize(Strict(&mut json, json_limits.items)) {
        Ok(request) if json.end().is_ok() => Ok(request),
        _ => Err(explain::<T>(body, json_limits)),
    }
}

fn explain<T: DeserializeOwned>(body: &[u8], json_limits: JsonLimits) -> Problem {
    if body.iter().all(u8::is_ascii_whitespace) {
        return Problem::new(ProblemCode::MalformedJson).detail("The body is empty. Send one JSON object.");
    }
    // A syntax error anywhere counts before a wrong field.
    let depth = match serde_json::from_slice::<Depth>(body) {
        Ok(Depth(depth)) => depth,
        Err(error) => {
            return Problem::new(ProblemCode::MalformedJson)
                .detail(format!("The body is not one JSON text: {error}. Send one JSON object."));
        }
    };
    // No request is deep, so a body that could be read is not; this tells one that could not.
    if depth > json_limits.depth {
        return Problem::new(ProblemCode::MalformedJson).detail(format!(
            "The body nests more than {} objects and arrays. No request needs as many; send one JSON object.",
            json_limits.depth
        ));
    }
    let mut json = serde_json::Deserializer::from_slice(body);
    match serde_path_to_error::deserialize::<_, T>(Strict(&mut json, json_limits.items)) {
        Err(error) => Problem::faults(vec![fault(error.path(), &error.inner().to_string(), json_limits)]),
        // The first pass failed, so the second does.
        Ok(_) => Problem::new(ProblemCode::InternalError),
    }
}

/// What the deserializer's message says, as a fault. The messages are those of serde; a test holds them.
fn fault(path: &serde_path_to_error::Path, message: &str, json_limits: JsonLimits) -> FieldError {
    let message = message.rsplit_once(" at line ").map_or(message, |(message, _)| message);
    let (first, others) = names(message);
    let here = pointer(path);
    let of = |pointer: String, code: FieldErrorCode, detail: String, hint: String| FieldError {
        pointer,
        code: code.code(),
        detail,
        hint,
    };
    if message.starts_with("unknown field") {
        let hint = nearest(&first, &others)
            .map_or_else(|| format!("Known here: {}.", others.join(", ")), |name| format!("Did you mean {name}?"));
        // The path ends in the unknown name already.
        of(here, FieldErrorCode::FieldUnknown, format!("There is no field {first} here."), hint)
    } else if message.starts_with("missing field") {
        let detail = format!("The field {first} is needed and was not sent.");
        of(
            child(&here, &first),
            FieldErrorCode::FieldMissing,
            detail,
            format!("Add {first}; its description says what it takes."),
        )
    } else if message.starts_with("duplicate field") {
        let detail = format!("The field {first} stands twice in one object.");
        of(child(&here, &first), FieldErrorCode::FieldDuplicate, detail, "Send it once.".to_owned())
    } else if message.starts_with("unknown variant") {
        let list = format!("One of: {}.", others.join(", "));
        // Several members with that word are all named, for a guess between them could be dangerous.
        let meant = match holding(&first, &others) {
            words if words.is_empty() => nearest(&first, &others).map(str::to_owned),
            words => Some(words.join(" or ")),
        };
        let hint = meant.map_or(list.clone(), |name| format!("Did you mean {name}? {list}"));
        of(here, FieldErrorCode::ValueUnknown, format!("\"{first}\" is not a value that this field takes."), hint)
    } else if [NULL, NULL_FOR_ABSENT].contains(&message) || message.starts_with("invalid type: null") {
        let hint = if message == NULL_FOR_ABSENT { "Leave the field out instead." } else { "Send a value." };
        of(here, FieldErrorCode::NullNotAllowed, "null is not taken here.".to_owned(), hint.to_owned())
    } else if message == TOO_MANY {
        let detail =
            format!("The list has more than {} items, the most that this service takes in any list.", json_limits.items);
        of(here, FieldErrorCode::ListSize, detail, format!("Send at most {} items.", json_limits.items))
    } else if message.starts_with("invalid value") {
        let hint = "Send a whole number within the range of the field; its description gives it.";
        of(here, FieldErrorCode::OutOfRange, format!("The field does not take {first}."), hint.to_owned())
    } else {
        let found = found(message);
        let expected = message.rsplit_once("expected ").map_or("another type", |(_, expected)| plain(expected));
        of(
            here,
            FieldErrorCode::TypeWrong,
            format!("{found} stands where {expected} belongs."),
            format!("Send {expected}."),
        )
    }
}

/// The name that a message is about, cut to a decent length, and the names that it lists as known.
///
/// The first name is the caller's and may hold anything; the known ones are ours and hold no backtick.
fn names(message: &str) -> (String, Vec<&str>) {
    let (about, known) = message.rsplit_once("`, expected ").unwrap_or((message, ""));
    let first = about.split_once('`').map_or("", |(_, name)| name.trim_end_matches('`'));
    (first.chars().take(MAX_NAME_CHARS).collect(), known.split('`').skip(1).step_by(2).collect())
}

/// What serde expects, without the names of our types.
fn plain(expected: &str) -> &str {
    match expected {
        "a string" | "string" => "text",
        "f64" => "a number",
        "u32" | "u64" | "usize" => "a whole number",
        "a sequence" => "an array",
        expected if expected.starts_with("struct ") || expected == "a map" => "an object",
        expected if expected.starts_with("enum ") || expected == "string or map" => "one of the listed texts",
        expected => expected,
    }
}

/// What the caller sent, by the JSON type that the message names.
fn found(message: &str) -> &'static str {
    let kind = message.strip_prefix("invalid type: ").unwrap_or_default();
    let is = |name: &str| kind.starts_with(name);
    match () {
        () if is("sequence") => "An array",
        () if is("map") => "An object",
        () if is("string") => "Text",
        () if is("integer") || is("floating point") => "A number",
        () if is("boolean") => "A truth value",
        () => "Another value",
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

/// Names that hold what was written as one of their words: `car` for `passenger_car`.
fn holding(name: &str, known: &[&str]) -> Vec<String> {
    let name = name.to_lowercase().replace([' ', '-'], "_");
    let is_word = |other: &&&str| !name.is_empty() && format!("_{other}_").contains(&format!("_{name}_"));
    known.iter().filter(is_word).map(|other| (*other).to_owned()).collect()
}

fn nearest<'a>(name: &str, known: &[&'a str]) -> Option<&'a str> {
    let close = |other: &&str| strsim::damerau_levenshtein(name, other);
    known.iter().copied().min_by_key(close).filter(|other| close(other) <= 1 + other.len() / 4)
}
