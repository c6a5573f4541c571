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
use utoipa::openapi::info::{InfoBuilder, LicenseBuilder};
use utoipa::openapi::schema::ComponentsBuilder;
use utoipa::openapi::security::{HttpAuthScheme, HttpBuilder, SecurityScheme};
use utoipa::openapi::tag::TagBuilder;
use utoipa::openapi::{OpenApiBuilder, Server};

use builder::DescriptionBuilder;
use list_bounds::add_list_bounds;

const INTRODUCTION: &str = "The calculations of a vehicle-loop specialist, for the programs of other people: which loops an \
    opening needs, and what they will measure. Quantities go in as text with their unit (`\"24 ft\"`, `\"3/16 in\"`, `\"7.2 m\"`) and \
    come out as numbers in both systems. Every answer is a pure function of its request and the release in `basis.engine`, but \
    for a `weather.location`, which is answered with the forecast of the moment; any request may be repeated. Requests are closed: an unknown field is refused by name. Answers are open: they may gain \
    fields, and their codes may gain values. A vehicle loop never protects a person.";

/// Builds the description of the service as callers at `public_url` see it. Computes the answers of all examples.
pub fn build(public_url: &str) -> Value {
    let mut builder = DescriptionBuilder::new();
    operations::add_calculations(&mut builder);
    operations::add_drawings(&mut builder);
    operations::add_tables(&mut builder);
    service::add_service_paths(&mut builder);
    let info = InfoBuilder::new()
        .title("Loopwright")
        .version(env!("CARGO_PKG_VERSION"))
        .description(Some(INTRODUCTION))
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
            tag("reference", "What a form needs for its menus; each table is cached by its entity tag."),
            tag("service", "The service itself."),
        ]))
        .paths(paths)
        .components(Some(ComponentsBuilder::new().schemas_from_iter(schemas).security_scheme("key", key()).build()))
        .build();
    let mut value = serde_json::to_value(&document).unwrap_or_default();
    // A key is needed only where the operator says so.
    value["security"] = json!([{}, { "key": [] }]);
    remove_null(&mut value);
    value
}

fn key() -> SecurityScheme {
    let scheme = HttpBuilder::new().scheme(HttpAuthScheme::Bearer);
    SecurityScheme::Http(scheme.description(Some("The key that the operator gave you, where keys are needed.")).build())
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
