//! Parts of operations: texts, problems, and answers with an entity tag.

use serde_json::json;
use utoipa::ToSchema;
use utoipa::openapi::content::ContentBuilder;
use utoipa::openapi::example::ExampleBuilder;
use utoipa::openapi::header::{Header, HeaderBuilder};
use utoipa::openapi::path::{OperationBuilder, ParameterBuilder, ParameterIn};
use utoipa::openapi::response::{Response, ResponseBuilder};
use utoipa::openapi::schema::{KnownFormat, ObjectBuilder, SchemaFormat, Type};
use utoipa::openapi::{Ref, Required};

use crate::api::problem::{MEDIA_TYPE, ProblemBody, ProblemCode};
use crate::api::request_id::RequestId;
use crate::calculation::input::OpeningWidth;
use crate::calculation::report::{FieldError, FieldPath};
use crate::quantity::QuantityField;
use crate::vocabulary::Vocabulary;
use crate::wording::{Language, Worded};

/// An answer that is a document of this media type. Its schema says `binary`, which generated clients take as it comes; what is
/// only a string several of them try to read as JSON.
pub fn text(media_type: &str, description: &str) -> ResponseBuilder {
    let schema =
        ObjectBuilder::new().schema_type(Type::String).format(Some(SchemaFormat::KnownFormat(KnownFormat::Binary)));
    ResponseBuilder::new()
        .description(description)
        .content(media_type, ContentBuilder::new().schema(Some(schema)).build())
}

/// A failure, with an example of each kind that it can be.
pub fn problem(codes: &[ProblemCode]) -> ResponseBuilder {
    let examples = codes.iter().map(|code| {
        let mut body = json!({
            "type": format!("/problems/{}", code.slug()),
            "title": code.label(),
            "status": code.status().as_u16(),
            "code": code.code(),
            "detail": code.description(),
            "request_id": "0198c0de-5eed-7000-8000-000000000001",
            "errors": [],
            "error_count": 0,
        });
        if *code == ProblemCode::ValidationFailed {
            body["detail"] = json!("One field cannot be used; errors says what to send instead.");
            body["errors"] = json!([width_without_unit()]);
            body["error_count"] = json!(1);
        }
        (code.code(), ExampleBuilder::new().summary(code.label()).value(Some(body)).build())
    });
    let what: Vec<_> = codes.iter().map(|code| code.label()).collect();
    ResponseBuilder::new().description(what.join("; ")).content(
        MEDIA_TYPE,
        ContentBuilder::new()
            .schema(Some(Ref::from_schema_name(ProblemBody::name())))
            .examples_from_iter(examples)
            .build(),
    )
}

/// What is answered to a width of "24".
fn width_without_unit() -> Option<FieldError> {
    let body = FieldPath::BODY;
    let opening = body.field("opening");
    let error = OpeningWidth::from_text("24".to_owned()).read().err()?;
    Some(FieldError::of_text(&opening.field("width"), error).worded(Language::English))
}

/// Adds an answer with an entity tag to an operation, and the header that asks whether the tag is current.
pub fn with_entity_tag(operation: OperationBuilder, answer: ResponseBuilder) -> OperationBuilder {
    let known = ParameterBuilder::new()
        .name("if-none-match")
        .parameter_in(ParameterIn::Header)
        .required(Required::False)
        .description(Some("The `etag` of the answer that the caller has."))
        .schema(Some(ObjectBuilder::new().schema_type(Type::String)))
        .build();
    let unchanged = ResponseBuilder::new().description("The caller has it already.").header("etag", entity_tag());
    operation.parameter(known).response("200", answer.header("etag", entity_tag())).response("304", unchanged)
}

fn entity_tag() -> Header {
    header(Type::String, "The entity tag of the answer, for `if-none-match`.")
}

fn header(kind: Type, description: &str) -> Header {
    HeaderBuilder::new().description(Some(description)).schema(Some(ObjectBuilder::new().schema_type(kind))).build()
}

/// Adds the header that every answer has.
pub fn add_request_id(response: &mut Response) {
    let id = header(Type::String, "The caller's id for the request, or one made here.");
    response.headers.insert(RequestId::HEADER.to_owned(), id.into());
}

/// Adds the header that names the language of an answer.
pub fn add_content_language(response: &mut Response) {
    let language = header(Type::String, "The language of what a person reads in the answer: `en`, `es` or `fr`.");
    response.headers.insert("content-language".to_owned(), language.into());
}

/// Adds the headers that tell a caller how much it may ask and when to ask again.
pub fn add_limit_headers(status: &str, response: &mut Response) {
    let rate = [
        (
            "ratelimit-policy",
            "What a caller may ask where there is a rate: `q` units at once, refilled within `w` seconds.",
        ),
        ("ratelimit", "What the caller may still ask: `r` units, and `t` seconds until all are back."),
    ];
    if ["200", "429"].contains(&status) {
        let rate = rate.map(|(name, description)| (name.to_owned(), header(Type::String, description).into()));
        response.headers.extend(rate);
    }
    if status == "401" {
        let challenge = header(Type::String, "How a key is sent.");
        response.headers.insert("www-authenticate".to_owned(), challenge.into());
    }
    if ["429", "503"].contains(&status) {
        let retry_after = header(Type::Integer, "The seconds after which to repeat the request.");
        response.headers.insert("retry-after".to_owned(), retry_after.into());
    }
}
