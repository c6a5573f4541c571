//! Paths and schemas of the description, with what all operations have in common.

use std::collections::BTreeMap;

use utoipa::ToSchema;
use utoipa::openapi::content::ContentBuilder;
use utoipa::openapi::path::{HttpMethod, Operation, OperationBuilder, PathItem, Paths, PathsBuilder};
use utoipa::openapi::request_body::RequestBodyBuilder;
use utoipa::openapi::response::ResponseBuilder;
use utoipa::openapi::{Ref, RefOr, Required, Schema};

use super::responses::{add_content_language, add_limit_headers, add_request_id, problem};
use crate::api::paths;
use crate::api::problem::{ProblemBody, ProblemCode};

/// The default of `LOOPWRIGHT_BODY_LIMIT`, KiB.
const DEFAULT_BODY_KIB: usize = 64;

/// The schemas of the description, by name.
pub type Schemas = BTreeMap<String, RefOr<Schema>>;

/// Collects the paths of the description and the schemas that they refer to.
pub struct DescriptionBuilder {
    paths: PathsBuilder,
    schemas: Schemas,
}

/// A JSON body of a request: its content, the largest one as a multiple of the setting, and whether it may name a place whose
/// forecast may fail.
pub struct JsonBody {
    pub content: ContentBuilder,
    pub share: usize,
    pub takes_weather: bool,
}

impl DescriptionBuilder {
    /// A description without paths; every path may answer with a problem.
    pub fn new() -> Self {
        let mut builder = Self { paths: PathsBuilder::new(), schemas: Schemas::new() };
        builder.schema::<ProblemBody>();
        builder
    }

    /// Adds a schema with all that it refers to, and returns a reference to it.
    pub fn schema<T: ToSchema>(&mut self) -> Ref {
        let mut found = Vec::new();
        T::schemas(&mut found);
        found.push((T::name().into_owned(), T::schema()));
        for (name, schema) in found {
            let known = self.schemas.get(&name);
            debug_assert!(known.is_none_or(|known| *known == schema), "two types share the schema name {name}");
            self.schemas.insert(name, schema);
        }
        Ref::from_schema_name(T::name())
    }

    /// Adds an operation, with the answers of admission control.
    pub fn add(&mut self, path: &str, method: HttpMethod, operation: OperationBuilder) {
        let paths = std::mem::take(&mut self.paths);
        let operation = add_admission_responses(path, operation.build());
        self.paths = paths.path(path, PathItem::new(method, operation));
    }

    /// Adds an operation that takes a JSON body, with the answers to a body that cannot be used.
    pub fn add_post(&mut self, path: &str, operation: OperationBuilder, body: JsonBody, answer: ResponseBuilder) {
        let request = RequestBodyBuilder::new()
            .description(Some(format!(
                "One JSON object, at most {} KiB unless the operator of the service has set another limit.",
                DEFAULT_BODY_KIB * body.share
            )))
            .required(Some(Required::True))
            .content("application/json", body.content.build())
            .build();
        let operation = operation
            .request_body(Some(request))
            .response("200", answer)
            .response("400", problem(&[ProblemCode::MalformedJson]))
            .response("408", problem(&[ProblemCode::RequestTimeout]))
            .response("413", problem(&[ProblemCode::BodyTooLarge]))
            .response("415", problem(&[ProblemCode::UnsupportedMediaType]))
            .response("422", problem(&[ProblemCode::ValidationFailed]))
            .response("500", problem(&[ProblemCode::InternalError]));
        let operation = if body.takes_weather {
            operation
                .response("502", problem(&[ProblemCode::ForecastFailed]))
                .response("503", problem(&[ProblemCode::Overloaded, ProblemCode::ForecastUnavailable]))
                .response("504", problem(&[ProblemCode::ForecastTimeout]))
        } else {
            operation
        };
        self.add(path, HttpMethod::Post, operation);
    }

    /// The paths and the schemas.
    pub fn into_parts(self) -> (Paths, Schemas) {
        (self.paths.build(), self.schemas)
    }
}

/// Adds the answers of admission control: a key where one may be needed, and the limits.
fn add_admission_responses(path: &str, mut operation: Operation) -> Operation {
    use ProblemCode::{HeadTooLarge, KeyNotForHere, Overloaded, RateLimited, Unauthorized};
    let needs_key = path.starts_with("/v1/") && !paths::is_keyless(path);
    // What computes nothing is not refused for what waits any more, and a table needs no key any more, but an answer that was stated
    // is not taken back within /v1.
    let answers: &[ProblemCode] = match path {
        path if path.starts_with("/health/") => &[HeadTooLarge],
        _ if needs_key => &[Unauthorized, KeyNotForHere, RateLimited, HeadTooLarge, Overloaded],
        path if path.starts_with("/v1/reference/") => &[Unauthorized, RateLimited, HeadTooLarge, Overloaded],
        _ => &[RateLimited, HeadTooLarge, Overloaded],
    };
    for code in answers {
        let responses = &mut operation.responses.responses;
        responses.entry(code.status().as_str().to_owned()).or_insert_with(|| problem(&[*code]).build().into());
    }
    for (status, response) in &mut operation.responses.responses {
        if let RefOr::T(response) = response {
            add_request_id(response);
            if path.starts_with("/v1/") && status != "304" {
                add_content_language(response);
            }
            if !path.starts_with("/health/") {
                add_limit_headers(status, response);
            }
        }
    }
    if !needs_key {
        operation.security = Some(Vec::new());
    }
    operation
}
