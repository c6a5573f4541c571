//! Problems: every failure in one form (RFC 9457), with a page for each kind. [`super::respond`] turns one into an answer.

use std::time::Duration;

use actix_web::http::StatusCode;
use serde::Serialize;
use utoipa::ToSchema;

use crate::calculation::report::{FieldError, FieldErrorCode, FieldPath, InvalidRequest, Message, Statement};
use crate::vocabulary::{Vocabulary, vocabulary};
use crate::wording::{Language, MemberIn, Worded};

/// The most errors that an answer lists: a body of faults must not be answered with ten times as much.
pub const MAX_ERRORS: usize = 100;

/// The media type of problems.
pub const MEDIA_TYPE: &str = "application/problem+json";

vocabulary! {
    /// The kinds of problems.
    ProblemCode {
        MalformedJson "malformed_json" "The body is not JSON" "The body is not one JSON text: a syntax error, text that is not UTF-8, a number out of range, or objects and arrays too deep within each other. Send one JSON object.";
        PreflightRefused "preflight_refused" "Call from this page refused" "A page asked whether it may call, and it may not: its origin, method or header is not among those that are taken from pages of other sites. The operator sets the origins.";
        Unauthorized "unauthorized" "Key needed" "The service answers only clients whose key it knows. Send the key that its operator gave you as: Authorization: Bearer KEY.";
        KeyNotForHere "key_not_for_here" "Key not for here" "The key is for certain pages and certain paths, and this request is not from one of those pages or not for one of those paths. The operator of the service lists the origins and the paths of each such key.";
        NotFound "not_found" "Nothing here" "The path does not exist. The description at /openapi.json lists those that do.";
        MethodNotAllowed "method_not_allowed" "Method not allowed" "The path exists, but not for this method. The Allow header lists the methods.";
        RequestTimeout "request_timeout" "Body not sent in time" "The body did not arrive within the deadline. Send it in one go; all calls are safe to repeat.";
        BodyTooLarge "body_too_large" "Body too large" "The body is larger than this path takes. Send less, or several requests.";
        UnsupportedMediaType "unsupported_media_type" "Media type not supported" "Send the body as application/json, in UTF-8 and without content encoding.";
        ValidationFailed "validation_failed" "Some fields cannot be used" "The body is JSON, but its content cannot be computed. Each field at fault is named, with what to send instead.";
        RateLimited "rate_limited" "Too many requests" "The caller has sent more requests than it may. Repeat the request after the seconds in Retry-After. What takes long costs more, and an item of a batch as much as a request.";
        HeadTooLarge "head_too_large" "Request head too large" "The request line and its headers are larger than is taken. Send fewer or shorter headers; what is to be computed belongs in the body.";
        InternalError "internal_error" "Our fault" "Something failed here. Report the request id to the operator; the request may be repeated.";
        Unavailable "unavailable" "Not ready" "The instance is starting or stopping. Repeat the request after the seconds in Retry-After.";
        Overloaded "overloaded" "Too much in work" "More is waiting than the instance takes, or the request has waited for as long as it may. Repeat the request after the seconds in Retry-After.";
        ForecastFailed "forecast_failed" "Forecast not usable" "The weather service could not be reached, or answered with what is no forecast. Send the weather hour by hour instead of the place; or repeat the request later.";
        ForecastTimeout "forecast_timeout" "Forecast too late" "The weather service did not answer in time. Send the weather hour by hour instead of the place; or repeat the request later.";
        ForecastUnavailable "forecast_unavailable" "Forecast not asked for" "The weather service was not asked: it has failed several times in a row, or too many forecasts are under way. Send the weather hour by hour instead of the place; or repeat the request after the seconds in Retry-After.";
    }
}

impl ProblemCode {
    /// The status of the answer.
    pub fn status(self) -> StatusCode {
        match self {
            Self::MalformedJson | Self::PreflightRefused => StatusCode::BAD_REQUEST,
            Self::Unauthorized => StatusCode::UNAUTHORIZED,
            Self::KeyNotForHere => StatusCode::FORBIDDEN,
            Self::NotFound => StatusCode::NOT_FOUND,
            Self::MethodNotAllowed => StatusCode::METHOD_NOT_ALLOWED,
            Self::RequestTimeout => StatusCode::REQUEST_TIMEOUT,
            Self::BodyTooLarge => StatusCode::PAYLOAD_TOO_LARGE,
            Self::UnsupportedMediaType => StatusCode::UNSUPPORTED_MEDIA_TYPE,
            Self::ValidationFailed => StatusCode::UNPROCESSABLE_ENTITY,
            Self::RateLimited => StatusCode::TOO_MANY_REQUESTS,
            Self::HeadTooLarge => StatusCode::REQUEST_HEADER_FIELDS_TOO_LARGE,
            Self::InternalError => StatusCode::INTERNAL_SERVER_ERROR,
            Self::Unavailable | Self::Overloaded | Self::ForecastUnavailable => StatusCode::SERVICE_UNAVAILABLE,
            Self::ForecastFailed => StatusCode::BAD_GATEWAY,
            Self::ForecastTimeout => StatusCode::GATEWAY_TIMEOUT,
        }
    }

    /// The last part of the path of its page: `validation-failed`.
    pub fn slug(self) -> String {
        self.code().replace('_', "-")
    }

    /// The kind for a status without a problem, for answers of the framework.
    pub fn of_status(status: StatusCode) -> Self {
        Self::ALL.iter().copied().find(|code| code.status() == status).unwrap_or(if status.is_server_error() {
            Self::InternalError
        } else {
            Self::MalformedJson
        })
    }
}

/// A failure that will be reported to the caller.
#[derive(Debug)]
pub struct Problem {
    /// The kind.
    pub code: ProblemCode,
    /// What happened this time.
    pub detail: Box<Message>,
    /// The fields that cannot be used, at most the first hundred.
    pub errors: Vec<FieldError>,
    /// How many cannot be used.
    pub error_count: usize,
    /// The methods that a path has, for a 405.
    pub allow: Option<&'static str>,
    /// The seconds after which to try again, for a 429 or 503.
    pub retry_after: Option<u64>,
    /// How to send a key, for a 401.
    pub challenge: Option<&'static str>,
}

/// A problem as it is sent (RFC 9457, `application/problem+json`).
#[derive(Serialize, ToSchema)]
#[schema(as = Problem)]
pub struct ProblemBody {
    /// The address of a page about this kind of problem.
    #[schema(format = "uri-reference", min_length = 1)]
    pub r#type: String,
    /// The kind, for a person.
    #[schema(min_length = 1)]
    pub title: &'static str,
    /// The HTTP status.
    #[schema(minimum = 400, maximum = 599)]
    pub status: u16,
    /// The kind, for a program; a `code` of `reference/problems`.
    #[schema(pattern = "^[a-z_]+$")]
    pub code: &'static str,
    /// What happened this time, and what to do.
    #[schema(value_type = String, min_length = 1)]
    pub detail: Message,
    /// The id of this request, as in the header `x-request-id`.
    #[schema(pattern = "^[A-Za-z0-9._-]+$", max_length = 64)]
    pub request_id: String,
    /// The fields that cannot be used, the first 100 of them; empty for other kinds.
    #[schema(max_items = 100)]
    pub errors: Vec<FieldError>,
    /// How many faults there are, those beyond the first 100 included; 0 for other kinds.
    #[schema(minimum = 0)]
    pub error_count: usize,
}

impl Problem {
    /// A problem of this kind, with the description of the kind as its detail.
    pub fn new(code: ProblemCode) -> Self {
        let retry_after = (code.status() == StatusCode::SERVICE_UNAVAILABLE).then_some(1);
        Self {
            code,
            detail: Box::new(Message::description_of(code)),
            errors: Vec::new(),
            error_count: 0,
            allow: None,
            retry_after,
            challenge: None,
        }
    }

    /// The same problem with another detail.
    #[must_use]
    pub fn detail(mut self, detail: Statement) -> Self {
        *self.detail = detail.into();
        self
    }

    /// The same problem, to be tried again after `wait`: in whole seconds, rounded up, at least one.
    #[must_use]
    pub fn retry_after(self, wait: Duration) -> Self {
        let seconds = wait.as_secs() + u64::from(wait.subsec_nanos() > 0);
        Self { retry_after: Some(seconds.max(1)), ..self }
    }

    /// A 405 for a path that has these methods.
    pub fn method_not_allowed(allow: &'static str) -> Self {
        let problem =
            Self::new(ProblemCode::MethodNotAllowed).detail(Statement::new("problems-methods").text("methods", allow));
        Self { allow: Some(allow), ..problem }
    }

    /// A 401 that says how to send a key (RFC 6750).
    pub fn key_needed() -> Self {
        Self { challenge: Some("Bearer realm=\"loopwright\""), ..Self::new(ProblemCode::Unauthorized) }
    }

    /// A 401 for a key that was sent, and why it is not taken.
    pub fn key_refused(detail: Statement) -> Self {
        let challenge = Some("Bearer realm=\"loopwright\", error=\"invalid_token\"");
        Self { challenge, ..Self::new(ProblemCode::Unauthorized).detail(detail) }
    }

    /// Fields that cannot be used. Those that are not listed are dropped before anything is done for them.
    pub fn invalid_fields(errors: Vec<FieldError>) -> Self {
        let error_count = errors.len();
        Self::first_invalid_fields(errors, error_count)
    }

    /// The same, of so many faults that only the first were kept.
    pub fn first_invalid_fields(mut errors: Vec<FieldError>, error_count: usize) -> Self {
        let listed = match error_count {
            1 => "one",
            2..=MAX_ERRORS => "all",
            _ => "first",
        };
        let detail = Statement::new("problems-fields").code("listed", listed);
        let detail = detail.count("fields", error_count as u64).count("most", MAX_ERRORS as u64);
        errors.truncate(MAX_ERRORS);
        Self { errors, error_count, ..Self::new(ProblemCode::ValidationFailed).detail(detail) }
    }

    /// A batch that can never be answered, and how large it may be.
    pub fn too_many_items(detail: Statement, most: usize) -> Self {
        let hint = Statement::new("errors-send-fewer-items").count("max_items", most as u64);
        Self::invalid_fields(vec![FieldError::new(
            &FieldPath::BODY.field("items"),
            FieldErrorCode::ListSize,
            detail,
            hint,
        )])
    }

    /// The problem as it is sent, by an instance with this public address.
    pub fn into_body(self, public_url: &str, request_id: String, language: Language) -> ProblemBody {
        ProblemBody {
            r#type: format!("{public_url}/problems/{}", self.code.slug()),
            title: self.code.label_in(language),
            status: self.code.status().as_u16(),
            code: self.code.code(),
            detail: (*self.detail).worded(language),
            request_id,
            errors: self.errors.worded(language),
            error_count: self.error_count,
        }
    }
}

impl From<InvalidRequest> for Problem {
    fn from(invalid: InvalidRequest) -> Self {
        // An invalid request without an error is a mistake of this program, not of the caller.
        if invalid.errors.is_empty() {
            Self::new(ProblemCode::InternalError)
        } else {
            Self::invalid_fields(invalid.errors)
        }
    }
}
