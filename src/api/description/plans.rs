//! The paths of plans beside the plan itself: many at once, and on paper.

use serde_json::{Value, json};
use utoipa::openapi::content::ContentBuilder;
use utoipa::openapi::path::OperationBuilder;
use utoipa::openapi::response::ResponseBuilder;
use utoipa::openapi::schema::{ObjectBuilder, Type};

use super::Builder;
use crate::api::batch;
use crate::calculation::installation_plan::InstallationPlanRequest;
use crate::calculation::{self, Calculation};
use crate::drawing::job_sheet;

impl Builder {
    /// Adds the path of plans by the batch.
    pub(super) fn batch(&mut self) {
        let request = self.schema::<batch::PlanBatchRequest>();
        let report = self.schema::<batch::PlanBatchReport>();
        let example = InstallationPlanRequest::EXAMPLES.last();
        let part = |of: fn(&calculation::Example) -> &'static str| {
            example.and_then(|example| serde_json::from_str::<Value>(of(example)).ok())
        };
        let items = json!({ "items": [{ "id": "cafe", "request": part(|example| example.request) }] });
        let results = json!({
            "results": [{ "id": "cafe", "status": 200, "report": part(|example| example.answer) }], "succeeded": 1, "failed": 0
        });
        let answer = ResponseBuilder::new()
            .description("A result for each item, in order: a report, or a problem with pointers from the whole body.")
            .content("application/json", ContentBuilder::new().schema(Some(report)).example(Some(results)).build());
        let operation = OperationBuilder::new()
            .operation_id(Some("plan_installations"))
            .tag("calculations")
            .summary(Some("Many plans in one call"))
            .description(Some(
                "Up to 200 requests of `installation-plan`, each answered by itself and spread over the cores of the service: one bad \
                 item never fails the rest. `weather` may stand once beside the items, for all that have a `start` and no weather of \
                 their own; a `location` may stand only there. Items that are not begun within the service's time for batches have a \
                 503 of their own.",
            ));
        let content = ContentBuilder::new().schema(Some(request)).example(Some(items));
        self.ask(
            format!("/v1/{}/batch", InstallationPlanRequest::NAME),
            operation,
            content,
            batch::BODY_SHARE,
            true,
            answer,
        );
    }

    /// The page of a whole job.
    pub(super) fn job_sheet(&mut self) {
        let answer =
            ResponseBuilder::new().description("The page. What must not be built as planned says so first.").content(
                job_sheet::MEDIA_TYPE,
                ContentBuilder::new().schema(Some(ObjectBuilder::new().schema_type(Type::String))).build(),
            );
        let operation = OperationBuilder::new()
            .operation_id(Some(job_sheet::OPERATION_ID))
            .tag("drawings")
            .summary(Some(job_sheet::SUMMARY))
            .description(Some(job_sheet::DESCRIPTION));
        self.ask_of::<InstallationPlanRequest>(job_sheet::PATH.to_owned(), operation, answer);
    }
}
