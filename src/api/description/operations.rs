//! The operations of calculations, drawings and tables.

use serde_json::{Value, json};
use utoipa::openapi::content::ContentBuilder;
use utoipa::openapi::example::{Example as OpenApiExample, ExampleBuilder};
use utoipa::openapi::path::{HttpMethod, OperationBuilder, ParameterBuilder, ParameterIn, ParameterStyle};
use utoipa::openapi::response::ResponseBuilder;
use utoipa::openapi::schema::{ArrayBuilder, ObjectBuilder, Type};
use utoipa::openapi::{RefOr, Required, Schema};
use utoipa::{PartialSchema, ToSchema};

use super::builder::{DescriptionBuilder, JsonBody};
use super::responses::{problem, text, with_entity_tag};
use crate::api::batch::{self, PlanBatchReport, PlanBatchRequest};
use crate::api::content_language;
use crate::api::drawing_query;
use crate::api::forms::shape::RequestForm;
use crate::api::forms::{self, FormVisitor, HasForm};
use crate::api::messages::MessagesTable;
use crate::api::paths;
use crate::api::plan_link::{self, DrawingUnits};
use crate::api::problem::ProblemCode;
use crate::api::reference_tables::{self, Table, TableVisitor};
use crate::calculation::input::{OpeningWidth, Weather};
use crate::calculation::installation_plan::InstallationPlanRequest;
use crate::calculation::loop_sizing::LoopSizingRequest;
use crate::calculation::summary::{JobSummary, Summarized};
use crate::calculation::{self, Calculation, CalculationVisitor, Example};
use crate::drawing::{self, Drawing, SvgIllustrator, bill_csv, job_sheet};
use crate::practice::roles::Role;
use crate::practice::site::{Barrier, Surface};
use crate::vocabulary::Vocabulary;
use crate::wording::{Language, Worded};

/// Adds a path for each calculation, and that of batches.
pub fn add_calculations(builder: &mut DescriptionBuilder) {
    calculation::visit_all(builder);
    add_batch(builder);
    add_summary::<LoopSizingRequest>(builder);
    add_summary::<InstallationPlanRequest>(builder);
}

/// Adds a path for each drawing, that of the job sheet, and that of the bill for a spreadsheet.
pub fn add_drawings(builder: &mut DescriptionBuilder) {
    drawing::visit_all(builder);
    add_plan_link(builder);
    let answer = text(job_sheet::MEDIA_TYPE, "The page. What must not be built as planned says so first.");
    let operation = OperationBuilder::new()
        .operation_id(Some(job_sheet::OPERATION_ID))
        .tag("drawings")
        .summary(Some(job_sheet::SUMMARY))
        .description(Some(job_sheet::DESCRIPTION));
    add_calculation_post::<InstallationPlanRequest>(builder, job_sheet::PATH, operation, answer);
    let answer = text(bill_csv::MEDIA_TYPE, "The bill: a header, and a row for each line.");
    let operation = OperationBuilder::new()
        .operation_id(Some(bill_csv::OPERATION_ID))
        .tag("drawings")
        .summary(Some(bill_csv::SUMMARY))
        .description(Some(bill_csv::DESCRIPTION));
    add_calculation_post::<InstallationPlanRequest>(builder, bill_csv::PATH, operation, answer);
}

/// Adds the drawing that a link asks for.
fn add_plan_link(builder: &mut DescriptionBuilder) {
    let schema = |name: &str, builder: &mut DescriptionBuilder| -> RefOr<Schema> {
        match name {
            "width" => builder.schema::<OpeningWidth>().into(),
            "barrier" => builder.schema::<Barrier>().into(),
            "roles" => ArrayBuilder::new().items(builder.schema::<Role>()).max_items(Some(Role::ALL.len())).into(),
            "surface" => builder.schema::<Surface>().into(),
            // No body has the rest, so no table lists them.
            "units" => DrawingUnits::schema(),
            content_language::PARAMETER => language_tag(),
            name => drawing_query::schema(name),
        }
    };
    let mut operation = OperationBuilder::new()
        .operation_id(Some(plan_link::OPERATION_ID))
        .tag("drawings")
        .summary(Some(plan_link::SUMMARY))
        .description(Some(plan_link::DESCRIPTION));
    for (name, _, description) in plan_link::PARAMETERS {
        let is_required = ["width", "barrier"].contains(&name);
        let parameter = ParameterBuilder::new()
            .name(name)
            .parameter_in(ParameterIn::Query)
            .required(if is_required { Required::True } else { Required::False })
            .description(Some(description))
            .example(match name {
                "width" => Some("24 ft".into()),
                "barrier" => Some(Barrier::SlideGate.code().into()),
                _ => None,
            })
            .schema(Some(schema(name, builder)));
        // Separated by commas.
        let parameter =
            if name == "roles" { parameter.style(Some(ParameterStyle::Form)).explode(Some(false)) } else { parameter };
        operation = operation.parameter(parameter);
    }
    let operation = operation
        .response("422", problem(&[ProblemCode::ValidationFailed]))
        .response("500", problem(&[ProblemCode::InternalError]));
    let answer = text(
        drawing::MEDIA_TYPE,
        "The drawing, one `svg` element. A design that should not be built says so in words.",
    );
    builder.add(drawing::plan::PATH, HttpMethod::Get, with_entity_tag(operation, answer));
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
        let parameter = |(name, description): (&str, &str)| {
            let parameter = ParameterBuilder::new().name(name).parameter_in(ParameterIn::Query);
            let parameter = parameter.required(Required::False).description(Some(description));
            parameter.schema(Some(drawing_query::schema(name))).build()
        };
        let operation =
            drawing_query::PARAMETERS.map(parameter).into_iter().fold(operation, OperationBuilder::parameter);
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
                .example(serde_json::to_value(T::table(Language::English)).ok())
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

/// Adds a path for each form.
pub fn add_forms(builder: &mut DescriptionBuilder) {
    forms::visit_all(builder);
}

impl FormVisitor for DescriptionBuilder {
    fn visit<C: HasForm>(&mut self) {
        let content = ContentBuilder::new().schema(Some(self.schema::<RequestForm>()));
        let content = content.example(serde_json::to_value(forms::example::<C>()).ok());
        let answer = ResponseBuilder::new().description("The form.").content("application/json", content.build());
        let operation = OperationBuilder::new()
            .operation_id(Some(C::FORM_OPERATION_ID))
            .tag("reference")
            .summary(Some(C::FORM_SUMMARY))
            .description(Some(format!(
                "All that a page needs to draw a form for a request of `{}`, in the language of the caller: the fields in the order in \
                 which a person is asked, with labels, help, units, ranges, defaults and menus. Lists of objects and maps (`stock`, \
                 `fixed_loops`, ...) and the weather are data of the calling program and no fields; what the calculation \
                 takes but does not need is left out as well. Send the entity tag in `if-none-match` to learn \
                 that nothing changed.",
                C::NAME
            )))
            .response("500", problem(&[ProblemCode::InternalError]));
        self.add(&forms::path::<C>(), HttpMethod::Get, with_language(with_entity_tag(operation, answer)));
    }
}

/// Adds the sentences that reports are made of.
pub fn add_messages(builder: &mut DescriptionBuilder) {
    let content = ContentBuilder::new().schema(Some(builder.schema::<MessagesTable>()));
    let content = content.example(serde_json::to_value(MessagesTable::example()).ok());
    let answer = ResponseBuilder::new().description("The sentences.").content("application/json", content.build());
    let operation = OperationBuilder::new()
        .operation_id(Some("list_messages"))
        .tag("reference")
        .summary(Some("Sentences that reports are made of"))
        .description(Some(
            "Every sentence of every answer in a language, with the facts that it holds: the `params` of findings and of faults. For \
             programs that have their own words.",
        ))
        .response("500", problem(&[ProblemCode::InternalError]));
    builder.add(paths::MESSAGES, HttpMethod::Get, with_language(with_entity_tag(operation, answer)));
}

/// Adds the parameter that chooses the language of what a link leads to. Operations that were released without it stay so: methods of
/// generated Java clients take every parameter, and another one would break their callers.
fn with_language(operation: OperationBuilder) -> OperationBuilder {
    let parameter = ParameterBuilder::new()
        .name(content_language::PARAMETER)
        .parameter_in(ParameterIn::Query)
        .required(Required::False)
        .description(Some(content_language::PARAMETER_DESCRIPTION))
        .schema(Some(language_tag()));
    operation.parameter(parameter)
}

fn language_tag() -> RefOr<Schema> {
    ObjectBuilder::new().schema_type(Type::String).examples(["es"]).into()
}

/// Adds the path of the summary of a calculation.
fn add_summary<C: Calculation<Report: Summarized>>(builder: &mut DescriptionBuilder) {
    let summary_of = |example| serde_json::to_value(report_of::<C>(example)?.summary()).ok();
    let examples = C::Report::EXAMPLES.iter().map(|example| named(example, summary_of(example)));
    let content = ContentBuilder::new().schema(Some(builder.schema::<JobSummary>())).examples_from_iter(examples);
    let answer = ResponseBuilder::new()
        .description("The summary. A design that should not be built says so in its headline.")
        .content("application/json", content.build());
    let operation = OperationBuilder::new()
        .operation_id(Some(C::Report::OPERATION_ID))
        .tag("calculations")
        .summary(Some(format!("{}, in a few lines", C::SUMMARY)))
        .description(Some(format!(
            "The `summary` of the report of `{}` alone, for whoever shows one gate: what is laid in a sentence, the loops with \
             their sizes and places in words, what goes into a cart by the caller's own numbers, what is to be ordered, and at \
             most three findings. It takes the same request and costs as much.",
            C::NAME
        )));
    add_post_with::<C>(builder, C::Report::PATH, C::Report::EXAMPLES, operation, answer);
}

/// Adds a path that takes the request of a calculation.
fn add_calculation_post<C: Calculation>(
    builder: &mut DescriptionBuilder,
    path: &str,
    operation: OperationBuilder,
    answer: ResponseBuilder,
) {
    add_post_with::<C>(builder, path, C::EXAMPLES, operation, answer);
}

/// The same, with examples of its own.
fn add_post_with<C: Calculation>(
    builder: &mut DescriptionBuilder,
    path: &str,
    examples: &[Example],
    operation: OperationBuilder,
    answer: ResponseBuilder,
) {
    let examples = examples.iter().map(|example| named(example, request_of(example)));
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
             their own; a `location` may stand only there. `shared` holds what all items take where they do not send it: prices, stock, \
             spools, and any other field but the opening; errors of it point there. With `pool` one bill for all items comes behind the \
             results, with its rounding once; ids must then differ. Items that are not begun within the service's time for batches, or before its \
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
    serde_json::to_value(report_of::<C>(example)?).ok()
}

fn report_of<C: Calculation>(example: &Example) -> Option<C::Report> {
    let request: C = serde_json::from_str(example.request).ok()?;
    let mut report = request.answer().ok()?.worded(Language::English);
    request.illustrate(&mut report, &SvgIllustrator { language: Language::English });
    Some(report)
}

/// Whether a request has the weather among its nouns, and with it a place whose forecast may fail.
fn takes_weather<C: Calculation>() -> bool {
    let mut found = Vec::new();
    C::schemas(&mut found);
    found.iter().any(|(name, _)| *name == Weather::name())
}
