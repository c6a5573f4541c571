//! The operations of the service itself: health, counters, this description, the pages of problems.

use serde_json::{Value, json};
use utoipa::openapi::Required;
use utoipa::openapi::content::ContentBuilder;
use utoipa::openapi::path::{HttpMethod, OperationBuilder, ParameterBuilder, ParameterIn};
use utoipa::openapi::response::ResponseBuilder;
use utoipa::openapi::schema::{ObjectBuilder, Type};

use super::builder::DescriptionBuilder;
use super::responses::{problem, text, with_entity_tag};
use crate::api::problem::ProblemCode;
use crate::vocabulary::Vocabulary;

/// Adds the paths that are neither calculation nor drawing nor table.
pub fn add_service_paths(builder: &mut DescriptionBuilder) {
    let object = |what: &str, example: Option<Value>| {
        ResponseBuilder::new().description(what).content(
            "application/json",
            ContentBuilder::new().schema(Some(ObjectBuilder::new())).example(example).build(),
        )
    };
    let service = |id: &str, summary: &str, description: &str| {
        OperationBuilder::new()
            .operation_id(Some(id))
            .tag("service")
            .summary(Some(summary))
            .description(Some(description))
    };
    let live =
        service("check_live", "The process answers", "For a probe that restarts an instance which does not answer.")
            .response("200", object("It does.", Some(json!({ "status": "live" }))))
            .response("500", problem(&[ProblemCode::InternalError]));
    builder.add("/health/live", HttpMethod::Get, live);
    let ready = service(
        "check_ready",
        "The instance takes requests",
        "For a balancer: the self-test on reference rows has passed, and the instance is not stopping.",
    )
    .response("200", object("It does.", Some(json!({ "status": "ready" }))))
    .response("503", problem(&[ProblemCode::Unavailable]));
    builder.add("/health/ready", HttpMethod::Get, ready);
    let metrics = service(
        "read_metrics",
        "What the instance counted",
        "Counters in the text format of OpenMetrics, for callers on its own machine; or at a listener of their own.",
    )
    .response("200", text("application/openmetrics-text", "The counters."))
    .response("404", problem(&[ProblemCode::NotFound]))
    .response("500", problem(&[ProblemCode::InternalError]));
    builder.add("/metrics", HttpMethod::Get, metrics);
    let description = service("read_description", "This description", "OpenAPI 3.1, cached by its entity tag.")
        .response("404", problem(&[ProblemCode::NotFound]));
    let description = with_entity_tag(description, object("The description.", None));
    builder.add("/openapi.json", HttpMethod::Get, description);
    let compact = service(
        "read_compact_description",
        "This description without answers",
        "OpenAPI 3.1 without the examples of answers, which are most of it; cached by its entity tag.",
    )
    .response("404", problem(&[ProblemCode::NotFound]));
    let compact = with_entity_tag(compact, object("The description.", None));
    builder.add("/openapi-compact.json", HttpMethod::Get, compact);
    let slugs: Vec<_> = ProblemCode::ALL.iter().map(|code| code.slug()).collect();
    let page = service(
        "read_problem_page",
        "What a kind of problem means",
        "The page that the `type` of a problem points to.",
    )
    .parameter(
        ParameterBuilder::new()
            .name("slug")
            .parameter_in(ParameterIn::Path)
            .required(Required::True)
            .description(Some("The kind: its code, with hyphens."))
            .schema(Some(ObjectBuilder::new().schema_type(Type::String).enum_values(Some(slugs)))),
    )
    .response("200", text("text/html", "The page."))
    .response("404", problem(&[ProblemCode::NotFound]));
    builder.add("/problems/{slug}", HttpMethod::Get, page);
}
