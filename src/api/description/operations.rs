//! The operations of calculations, drawings and tables.

use serde_json::{Value, json};
use utoipa::ToSchema;
use utoipa::openapi::content::ContentBuilder;
use utoipa::openapi::example::{Example as OpenApiExample, ExampleBuilder};
use utoipa::openapi::path::{HttpMethod, OperationBuilder};
use utoipa::openapi::response::ResponseBuilder;

use super::builder::{DescriptionBuilder, JsonBody};
use super::responses::{problem, text, with_entity_tag};
use crate::api::batch::{self, PlanBatchReport, PlanBatchRequest};
use crate::api::problem::ProblemCode;
use crate::api::reference_tables::{self, Table, TableVisitor};
use crate::calculation::input::Weather;
use crate::calculation::installation_plan::InstallationPlanRequest;
use crate::calculation::{self, Calculation, CalculationVisitor, Example};
use crate::drawing::{self, Drawing, SvgIllustrator, job_sheet};
use crate::wording::{Language, Worded};

/// Adds a path for each calculation, and that of batches.
pub fn add_calculations(builder: &mut DescriptionBuilder) {
    calculation::visit_all(builder);
    add_batch(builder);
}

/// Adds a path for each drawing, and that of the job sheet.
pub fn add_drawings(builder: &mut DescriptionBuilder) {
    drawing::visit_all(builder);
    let answer = text(job_sheet::MEDIA_TYPE, "The page. What must not be built as planned says so first.");
    let operation = OperationBuilder::new()
        .operation_id(Some(job_sheet::OPERATION_ID))
        .tag("drawings")
        .summary(Some(job_sheet::SUMMARY))
        .description(Some(job_sheet::DESCRIPTION));
    add_calculation_post::<InstallationPlanRequest>(builder, job_sheet::PATH, operation, answer);
}

/// Adds a path for each reference table.
pub fn add_tables(builder: &mut DescriptionBuilder) {
    reference_tables::visit_all(builder);
}

impl CalculationVisitor for DescriptionBuilder {
    fn visit<C: Calculation>(&mut self) {
        let examples = C::EXAMPLES.iter().map(|example| named(example, answer_to::<C>(example)));
        let content = ContentBuilder::new().schema(Some(self.schema::<C::Report>())).examples_from_iter(examples);
        let answer = ResponseBuilder::new()
            .description("The report. A design that should not be built has a finding of level `stop`.")
            .content("application/json", content.build());
        let operation = OperationBuilder::new()
            .operation_id(Some(C::OPERATION_ID))
            .tag("calculations")
            .summary(Some(C::SUMMARY))
            .description(Some(C::DESCRIPTION));
        add_calculation_post::<C>(self, &format!("/v1/{}", C::NAME), operation, answer);
    }
}

impl drawing::DrawingVisitor for DescriptionBuilder {
    fn visit<D: Drawing>(&mut self) {
        let description = "The drawing, one `svg` element. A design that should not be built says so in words.";
        let operation = OperationBuilder::new()
            .operation_id(Some(D::OPERATION_ID))
            .tag("drawings")
            .summary(Some(D::SUMMARY))
            .description(Some(D::DESCRIPTION));
        let path = format!("/v1/drawings/{}", D::NAME);
        add_calculation_post::<D::Request>(self, &path, operation, text(drawing::MEDIA_TYPE, description));
    }
}

impl TableVisitor for DescriptionBuilder {
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
        let path = format!("/v1/reference/{}", T::NAME);
        self.add(&path, HttpMethod::Get, with_entity_tag(operation, answer));
    }
}

/// Adds a path that takes the request of a calculation.
fn add_calculation_post<C: Calculation>(
    builder: &mut DescriptionBuilder,
    path: &str,
    operation: OperationBuilder,
    answer: ResponseBuilder,
) {
    let examples = C::EXAMPLES.iter().map(|example| named(example, request_of(example)));
    let content = ContentBuilder::new().schema(Some(builder.schema::<C>())).examples_from_iter(examples);
    let body = JsonBody { content, share: C::BODY_LIMIT_FACTOR, takes_weather: takes_weather::<C>() };
    builder.add_post(path, operation, body, answer);
}

/// Adds the path of batches of plans.
fn add_batch(builder: &mut DescriptionBuilder) {
    let example = InstallationPlanRequest::EXAMPLES.last();
    let request = example.and_then(request_of);
    let items = json!({ "items": [{ "id": "cafe", "request": request }] });
    let report = example.and_then(answer_to::<InstallationPlanRequest>);
    let results = json!({
        "results": [{ "id": "cafe", "status": 200, "report": report }], "succeeded": 1, "failed": 0
    });
    let content = ContentBuilder::new().schema(Some(builder.schema::<PlanBatchRequest>())).example(Some(items));
    let report = builder.schema::<PlanBatchReport>();
    let answer = ResponseBuilder::new()
        .description("A result for each item, in order: a report, or a problem with pointers from the whole body.")
        .content("application/json", ContentBuilder::new().schema(Some(report)).example(Some(results)).build());
    let operation = OperationBuilder::new()
        .operation_id(Some("plan_installations"))
        .tag("calculations")
        .summary(Some("Many plans in one call"))
        .description(Some(
            "Up to 200 requests of `installation-plan`, fewer where the operator says so, each answered by itself and spread over the cores of the service: one bad \
             item never fails the rest. `weather` may stand once beside the items, for all that have a `start` and no weather of \
             their own; a `location` may stand only there. Items that are not begun within the service's time for batches, or before its \
             answer is as large as it may be, have a 503 of their own. The answer is written item by item.",
        ));
    let body = JsonBody { content, share: batch::BODY_LIMIT_FACTOR, takes_weather: true };
    builder.add_post(&format!("/v1/{}/batch", InstallationPlanRequest::NAME), operation, body, answer);
}

/// An example with its name.
fn named(example: &Example, value: Option<Value>) -> (&'static str, OpenApiExample) {
    (example.name, ExampleBuilder::new().summary(example.summary).value(value).build())
}

/// The request of an example.
fn request_of(example: &Example) -> Option<Value> {
    serde_json::from_str(example.request).ok()
}

/// The answer to an example, computed as its endpoint does.
fn answer_to<C: Calculation>(example: &Example) -> Option<Value> {
    let request: C = serde_json::from_str(example.request).ok()?;
    let mut report = request.answer().ok()?.worded(Language::English);
    request.illustrate(&mut report, &SvgIllustrator);
    serde_json::to_value(report).ok()
}

/// Whether a request has the weather among its nouns, and with it a place whose forecast may fail.
fn takes_weather<C: Calculation>() -> bool {
    let mut found = Vec::new();
    C::schemas(&mut found);
    found.iter().any(|(name, _)| *name == Weather::name())
}
