//! The published description: OpenAPI 3.1, built from the calculations and tables themselves.
//!
//! - `builder`: paths and schemas, with what all operations have in common.
//! - `operations`: calculations, drawings and tables.
//! - `list_bounds`: the greatest lengths of lists of members of closed lists.
//! - `service`: the service itself.
//! - `responses`: problems and answers with an entity tag.

mod builder;
mod list_bounds;
mod operations;
mod responses;
mod service;

use serde_json::{Map, Value, json};
use utoipa::openapi::external_docs::ExternalDocsBuilder;
use utoipa::openapi::info::{ContactBuilder, InfoBuilder, LicenseBuilder};
use utoipa::openapi::schema::ComponentsBuilder;
use utoipa::openapi::security::{HttpAuthScheme, HttpBuilder, SecurityScheme};
use utoipa::openapi::tag::TagBuilder;
use utoipa::openapi::{ExternalDocs, OpenApiBuilder, Server};

use builder::DescriptionBuilder;
use list_bounds::add_list_bounds;

use crate::api::deprecation::{self, DEPRECATED};

const INTRODUCTION: &str = "The calculations of a vehicle-loop specialist, for the programs of other people: which loops an \
    opening needs, and what they will measure. Quantities go in as text with their unit (`\"24 ft\"`, `\"3/16 in\"`, `\"7.2 m\"`) and \
    come out as numbers in both systems. Every answer is a pure function of its request and the release in `basis.engine`, but \
    for a `weather.location`, which is answered with the forecast of the moment; any request may be repeated. Requests are closed: an unknown field is refused by name. Answers are open: they may gain \
    fields, and their codes may gain values. A vehicle loop never protects a person. What people read comes in English, Spanish or French: \
    `accept-language` chooses, and `?lang=es` wins over it on every path; codes and numbers are the same in all. The guide for \
    integrators is at `/docs/guide`, the changes at `/changes`.";

/// Builds the description of the service as callers at `public_url` see it. Computes the answers of all examples.
pub fn build(public_url: &str) -> Value {
    let mut builder = DescriptionBuilder::new();
    operations::add_calculations(&mut builder);
    operations::add_drawings(&mut builder);
    operations::add_tables(&mut builder);
    operations::add_forms(&mut builder);
    operations::add_messages(&mut builder);
    service::add_service_paths(&mut builder);
    let info = InfoBuilder::new()
        .title("Loopwright")
        .version(env!("CARGO_PKG_VERSION"))
        .description(Some(INTRODUCTION))
        .contact(Some(ContactBuilder::new().name(Some("The operator of this instance")).build()))
        .license(Some(LicenseBuilder::new().name("MIT OR Apache-2.0").identifier(Some("MIT OR Apache-2.0")).build()))
        .build();
    let tag = |name: &str, text: &str| TagBuilder::new().name(name).description(Some(text)).build();
    let (paths, mut schemas) = builder.into_parts();
    add_list_bounds(&mut schemas);
    let document = OpenApiBuilder::new()
        .info(info)
        .servers(Some([Server::new(if public_url.is_empty() { "/" } else { public_url })]))
        .tags(Some([
            tag("calculations", "Questions and their answers."),
            tag("drawings", "The same answers as drawings."),
            tag("reference", "What a form needs: whole forms, and tables for menus; each is cached by its entity tag."),
            tag("service", "The service itself."),
        ]))
        .external_docs(guide(public_url))
        .paths(paths)
        .components(Some(ComponentsBuilder::new().schemas_from_iter(schemas).security_scheme("key", key()).build()))
        .build();
    let mut value = serde_json::to_value(&document).unwrap_or_default();
    // A key is needed only where the operator says so.
    value["security"] = json!([{}, { "key": [] }]);
    remove_null(&mut value);
    deprecation::mark(&mut value, DEPRECATED);
    if let Some(schemas) = value["components"]["schemas"].as_object_mut() {
        schemas.values_mut().filter_map(Value::as_object_mut).for_each(order_extensions);
    }
    value
}

/// The same without the examples of answers. Those of requests stay, for whoever tries an operation out begins with one.
pub fn build_compact(public_url: &str) -> Value {
    let mut description = build(public_url);
    let paths = description.get_mut("paths").and_then(Value::as_object_mut);
    for operation in
        paths.into_iter().flat_map(Map::values_mut).filter_map(Value::as_object_mut).flat_map(Map::values_mut)
    {
        if let Some(responses) = operation.get_mut("responses") {
            remove_examples(responses);
        }
    }
    description
}

/// Removes the examples of media types from responses.
fn remove_examples(value: &mut Value) {
    if let Value::Object(object) = value {
        object.retain(|name, _| name != "example" && name != "examples");
        object.values_mut().for_each(remove_examples);
    }
}

/// The guide for integrators; none where the address of the service is not set, for the address of a guide must be a whole one.
fn guide(public_url: &str) -> Option<ExternalDocs> {
    let guide = ExternalDocsBuilder::new()
        .description(Some("The guide for integrators: requests, problems, limits, and a part for each language."))
        .url(format!("{public_url}/docs/guide"))
        .build();
    (!public_url.is_empty()).then_some(guide)
}

fn key() -> SecurityScheme {
    let scheme = HttpBuilder::new().scheme(HttpAuthScheme::Bearer);
    SecurityScheme::Http(scheme.description(Some("The key that the operator gave you, where keys are needed.")).build())
}

/// Puts the extensions of a schema behind the rest, in order: the schema library keeps them in none.
fn order_extensions(schema: &mut Map<String, Value>) {
    for name in ["x-minimum", "x-maximum", "x-units"] {
        if let Some(value) = schema.shift_remove(name) {
            schema.insert(name.to_owned(), value);
        }
    }
}

/// Optional means absent, never null: removes the null that the schema library adds to optional fields, and with it the unions
/// that several client generators turn into wrong code.
fn remove_null(value: &mut Value) {
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
            object.values_mut().for_each(remove_null);
        }
        Value::Array(items) => items.iter_mut().for_each(remove_null),
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
