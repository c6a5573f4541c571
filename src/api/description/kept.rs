//! Answers that callers keep as long as their entity tag holds: the tables and the description.

use utoipa::openapi::Required;
use utoipa::openapi::header::{Header, HeaderBuilder};
use utoipa::openapi::path::{OperationBuilder, ParameterBuilder, ParameterIn};
use utoipa::openapi::response::ResponseBuilder;
use utoipa::openapi::schema::{ObjectBuilder, Type};

/// Adds the answer to an operation, with the tag that it carries and the way to ask whether it still holds.
pub(super) fn kept(operation: OperationBuilder, answer: ResponseBuilder) -> OperationBuilder {
    let known = ParameterBuilder::new()
        .name("if-none-match")
        .parameter_in(ParameterIn::Header)
        .required(Required::False)
        .description(Some("The `etag` of the answer that the caller has."))
        .schema(Some(ObjectBuilder::new().schema_type(Type::String)))
        .build();
    let unchanged = ResponseBuilder::new().description("The caller has it already.").header("etag", tag());
    operation.parameter(known).response("200", answer.header("etag", tag())).response("304", unchanged)
}

fn tag() -> Header {
    HeaderBuilder::new()
        .description(Some("The entity tag of the answer, for `if-none-match`."))
        .schema(Some(ObjectBuilder::new().schema_type(Type::String)))
        .build()
}
