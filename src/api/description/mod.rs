//! The published description: OpenAPI 3.1, built from the calculations and tables themselves.

use std::collections::BTreeMap;

use serde_json::{Map, Value, json};
use utoipa::ToSchema;
use utoipa::openapi::content::ContentBuilder;
use utoipa::openapi::example::{Example, ExampleBuilder};
use utoipa::openapi::header::HeaderBuilder;
use utoipa::openapi::info::{InfoBuilder, LicenseBuilder};
use utoipa::openapi::path::{
    HttpMethod, Operation, OperationBuilder, ParameterBuilder, ParameterIn, PathItem, PathsBuilder,
};
use utoipa::openapi::request_body::RequestBodyBuilder;
use utoipa::openapi::response::ResponseBuilder;
use utoipa::openapi::schema::{ComponentsBuilder, ObjectBuilder, Type};
use utoipa::openapi::security::{HttpAuthScheme, HttpBuilder, SecurityScheme};
use utoipa::openapi::tag::TagBuilder;
use utoipa::openapi::{OpenApiBuilder, Ref, RefOr, Required, Schema, Server};

use super::problem::{MEDIA_TYPE, ProblemBody, ProblemCode};
use super::reference::{self, Table};
use crate::calculation::input::Weather;
use crate::calculation::{self, Calculation};
use crate::drawing::{self, Drawing};
use crate::vocabulary::Vocabulary;

const INTRODUCTION: &str = "The calculations of a vehicle-loop specialist, for the programs of other people: which loops an \
    opening needs, and what they will measure. Quantities go in as text with their unit (`\"24 ft\"`, `\"3/16 in\"`, `\"7.2 m\"`) and \
    come out as numbers in both systems. Every answer is a pure function of its request and the release in `basis.engine`, but \
    for a `weather.location`, which is answered with the forecast of the moment; any request may be repeated. Requests are closed: an unknown field is refused by name. Answers are open: they may gain \
    fields, and their codes may gain values. A vehicle loop never protects a person.";

/// Builds the description of the service as callers at `public_url` see it.
pub fn build(public_url: &str) -> Value {
    let mut builder = Builder::default();
    builder.schema::<ProblemBody>();
    calculation::visit_all(&mut builder);
    builder.batch();
    drawing::visit_all(&mut builder);
    builder.job_sheet();
    reference::visit_all(&mut builder);
    builder.service_paths();
    let schemas = std::mem::take(&mut builder.schemas);
    let info = InfoBuilder::new()
        .title("Loopwright")
        .version(env!("CARGO_PKG_VERSION"))
        .description(Some(INTRODUCTION))
        .license(Some(LicenseBuilder::new().name("MIT OR Apache-2.0").identifier(Some("MIT OR Apache-2.0")).build()))
        .build();
    let tag = |name: &str, text: &str| TagBuilder::new().name(name).description(Some(text)).build();
    let document = OpenApiBuilder::new()
        .info(info)
        .servers(Some([Server::new(if public_url.is_empty() { "/" } else { public_url })]))
        .tags(Some([
            tag("calculations", "Questions and their answers."),
            tag("drawings", "The same answers as drawings."),
            tag("reference", "What a form needs for its menus; each table is cached by its entity tag."),
            tag("service", "The service itself."),
        ]))
        .paths(builder.paths.build())
        .components(Some(ComponentsBuilder::new().schemas_from_iter(schemas).security_scheme("key", key()).build()))
        .build();
    let mut value = serde_json::to_value(&document).unwrap_or_default();
    // A key is needed only where the operator says so.
    value["security"] = json!([{}, { "key": [] }]);
    without_null(&mut value);
    value
}

mod kept;
mod plans;

use kept::kept;

fn key() -> SecurityScheme {
    let scheme = HttpBuilder::new().scheme(HttpAuthScheme::Bearer);
    SecurityScheme::Http(scheme.description(Some("The key that the operator gave you, where keys are needed.")).build())
}

#[derive(Default)]
struct Builder {
    paths: PathsBuilder,
    schemas: BTreeMap<String, RefOr<Schema>>,
}

impl Builder {
    /// Adds a schema with all that it refers to, and gives a reference to it.
    fn schema<T: ToSchema>(&mut self) -> Ref {
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

    fn path(&mut self, path: String, method: HttpMethod, operation: OperationBuilder) {
        let paths = std::mem::take(&mut self.paths);
        let operation = at_the_gate(&path, operation.build());
        self.paths = paths.path(path, PathItem::new(method, operation));
    }

    /// The paths that are no calculation and no table.
    fn service_paths(&mut self) {
        let text = |media: &str, what: &str| {
            ResponseBuilder::new().description(what).content(
                media,
                ContentBuilder::new().schema(Some(ObjectBuilder::new().schema_type(Type::String))).build(),
            )
        };
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
        let live = service(
            "check_live",
            "The process answers",
            "For a probe that restarts an instance which does not answer.",
        )
        .response("200", object("It does.", Some(json!({ "status": "live" }))))
        .response("500", problem(&[ProblemCode::InternalError]));
        self.path("/health/live".to_owned(), HttpMethod::Get, live);
        let ready = service(
            "check_ready",
            "The instance takes requests",
            "For a balancer: the self-test on reference rows has passed, and the instance is not stopping.",
        )
        .response("200", object("It does.", Some(json!({ "status": "ready" }))))
        .response("503", problem(&[ProblemCode::Unavailable]));
        self.path("/health/ready".to_owned(), HttpMethod::Get, ready);
        let metrics =
            service(
                "read_metrics",
                "What the instance counted",
                "Counters in the text format of OpenMetrics, for callers on its own machine; or at a listener of their own.",
            )
                .response("200", text("application/openmetrics-text", "The counters."))
                .response("404", problem(&[ProblemCode::NotFound]))
                .response("500", problem(&[ProblemCode::InternalError]));
        self.path("/metrics".to_owned(), HttpMethod::Get, metrics);
        let description = service("read_description", "This description", "OpenAPI 3.1, cached by its entity tag.")
            .response("404", problem(&[ProblemCode::NotFound]));
        let description = kept(description, object("The description.", None));
        self.path("/openapi.json".to_owned(), HttpMethod::Get, description);
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
        self.path("/problems/{slug}".to_owned(), HttpMethod::Get, page);
    }
}

impl calculation::CalculationVisitor for Builder {
    fn visit<C: Calculation>(&mut self) {
        let report = self.schema::<C::Report>();
        let answer = ResponseBuilder::new()
            .description("The report. A design that should not be built has a finding of level `stop`.")
            .content(
                "application/json",
                ContentBuilder::new()
                    .schema(Some(report))
                    .examples_from_iter(examples::<C>(|example| example.answer))
                    .build(),
            );
        let operation = OperationBuilder::new()
            .operation_id(Some(C::OPERATION_ID))
            .tag("calculations")
            .summary(Some(C::SUMMARY))
            .description(Some(C::DESCRIPTION));
        self.ask_of::<C>(format!("/v1/{}", C::NAME), operation, answer);
    }
}

impl drawing::Visitor for Builder {
    fn visit<D: Drawing>(&mut self) {
        let answer = ResponseBuilder::new()
            .description("The drawing, one `svg` element. A design that should not be built says so in words.")
            .content(
                drawing::MEDIA_TYPE,
                ContentBuilder::new().schema(Some(ObjectBuilder::new().schema_type(Type::String))).build(),
            );
        let operation = OperationBuilder::new()
            .operation_id(Some(D::OPERATION_ID))
            .tag("drawings")
            .summary(Some(D::SUMMARY))
            .description(Some(D::DESCRIPTION));
        self.ask_of::<D::Request>(format!("/v1/drawings/{}", D::NAME), operation, answer);
    }
}

impl Builder {
    /// Adds a path that takes the request of a calculation.
    fn ask_of<C: Calculation>(&mut self, path: String, operation: OperationBuilder, answer: ResponseBuilder) {
        let request = self.schema::<C>();
        let content =
            ContentBuilder::new().schema(Some(request)).examples_from_iter(examples::<C>(|example| example.request));
        self.ask(path, operation, content, C::BODY_SHARE, takes_weather::<C>(), answer);
    }

    /// Adds a path that takes a JSON body.
    fn ask(
        &mut self,
        path: String,
        operation: OperationBuilder,
        content: ContentBuilder,
        body_share: usize,
        takes_weather: bool,
        answer: ResponseBuilder,
    ) {
        let body = RequestBodyBuilder::new()
            .description(Some(format!("One JSON object, at most {} KiB.", 64 * body_share)))
            .required(Some(Required::True))
            .content("application/json", content.build())
            .build();
        let answer = answer.header(
            "x-request-id",
            HeaderBuilder::new()
                .description(Some("The caller's id for the request, or one made here."))
                .schema(Some(ObjectBuilder::new().schema_type(Type::String)))
                .build(),
        );
        let operation = operation
            .request_body(Some(body))
            .response("200", answer)
            .response("400", problem(&[ProblemCode::MalformedJson]))
            .response("408", problem(&[ProblemCode::RequestTimeout]))
            .response("413", problem(&[ProblemCode::BodyTooLarge]))
            .response("415", problem(&[ProblemCode::UnsupportedMediaType]))
            .response("422", problem(&[ProblemCode::ValidationFailed]))
            .response("500", problem(&[ProblemCode::InternalError]));
        let operation = if takes_weather {
            operation
                .response("502", problem(&[ProblemCode::ForecastFailed]))
                .response("503", problem(&[ProblemCode::Overloaded, ProblemCode::ForecastUnavailable]))
                .response("504", problem(&[ProblemCode::ForecastTimeout]))
        } else {
            operation
        };
        self.path(path, HttpMethod::Post, operation);
    }
}

/// The published examples of a calculation: their requests or their answers.
fn examples<C: Calculation>(
    of: fn(&calculation::Example) -> &'static str,
) -> impl Iterator<Item = (&'static str, Example)> {
    C::EXAMPLES.iter().map(move |example| {
        let value = serde_json::from_str::<Value>(of(example)).ok();
        (example.name, ExampleBuilder::new().summary(example.summary).value(value).build())
    })
}

impl reference::Visitor for Builder {
    fn visit<T: Table>(&mut self) {
        let answer = ResponseBuilder::new().description("The table.").content(
            "application/json",
            ContentBuilder::new()
                .schema(Some(self.schema::<T>()))
                .example(serde_json::to_value(T::table()).ok())
                .build(),
        );
        let operation = OperationBuilder::new()
            .operation_id(Some(T::OPERATION_ID))
            .tag("reference")
            .summary(Some(T::SUMMARY))
            .description(Some(
                "Each row starts with `code`, the value in requests and reports. Send the entity tag in \
                `if-none-match` to learn that nothing changed.",
            ))
            .response("404", problem(&[ProblemCode::NotFound]))
            .response("500", problem(&[ProblemCode::InternalError]));
        self.path(format!("/v1/reference/{}", T::NAME), HttpMethod::Get, kept(operation, answer));
    }
}

/// Whether a request has the weather among its nouns, and with it a place whose forecast may fail.
fn takes_weather<C: Calculation>() -> bool {
    let mut found = Vec::new();
    C::schemas(&mut found);
    found.iter().any(|(name, _)| *name == Weather::name())
}

/// Adds what the gate answers: a key where one may be needed, and the limits.
fn at_the_gate(path: &str, mut operation: Operation) -> Operation {
    use ProblemCode::{HeadTooLarge, Overloaded, RateLimited, Unauthorized};
    let answers: &[ProblemCode] = match path {
        path if path.starts_with("/health/") => &[HeadTooLarge],
        path if path.starts_with("/v1/") => &[Unauthorized, RateLimited, HeadTooLarge, Overloaded],
        _ => &[RateLimited, HeadTooLarge, Overloaded],
    };
    for code in answers {
        let responses = &mut operation.responses.responses;
        responses.entry(code.status().as_str().to_owned()).or_insert_with(|| problem(&[*code]).build().into());
    }
    if !answers.contains(&Unauthorized) {
        operation.security = Some(Vec::new());
    }
    operation
}

/// A failure, with an example of each kind that it can be.
fn problem(codes: &[ProblemCode]) -> ResponseBuilder {
    let examples = codes.iter().map(|code| {
        let mut body = json!({
            "type": format!("/problems/{}", code.slug()),
            "title": code.label(),
            "status": code.status().as_u16(),
            "code": code.code(),
            "detail": code.description(),
            "request_id": "0198c0de-5eed-7000-8000-000000000001",
            "errors": [],
        });
        if *code == ProblemCode::ValidationFailed {
            body["detail"] = json!("One field cannot be used; errors says what to send instead.");
            body["errors"] = json!([{
                "pointer": "#/opening/width",
                "code": "unit_missing",
                "detail": "A length needs a unit; \"24\" has none.",
                "hint": "Write a length as \"24 ft\" or \"7.2 m\".",
            }]);
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

/// Optional means absent, never null: takes the null that the schema library adds to optional fields out of the schemas, and
/// with it the unions that several client generators turn into wrong code.
fn without_null(value: &mut Value) {
    match value {
        Value::Object(object) => {
            if let Some(Value::Array(types)) = object.get_mut("type") {
                types.retain(|kind| kind != "null");
                if let [only] = types.as_slice() {
                    let only = only.clone();
                    object.insert("type".to_owned(), only);
                }
            }
            if let Some(inner) = sole_branch(object) {
                object.shift_remove("oneOf");
                for (key, value) in inner {
                    object.entry(key).or_insert(value);
                }
            }
            object.values_mut().for_each(without_null);
        }
        Value::Array(items) => items.iter_mut().for_each(without_null),
        _ => {}
    }
}

/// The branch of a `oneOf` that has no other beside null.
fn sole_branch(object: &Map<String, Value>) -> Option<Map<String, Value>> {
    let branches = object.get("oneOf")?.as_array()?;
    let mut others = branches.iter().filter(|branch| branch.get("type").is_none_or(|kind| kind != "null"));
    match (others.next(), others.next()) {
        (Some(Value::Object(only)), None) => Some(only.clone()),
        _ => None,
    }
}
