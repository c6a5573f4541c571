//! Tables of the fields of schemas: one for each object and each closed list, whose fields lead to the tables of what they hold.

use std::collections::{BTreeSet, VecDeque};

use maud::{Markup, PreEscaped, html};
use serde_json::{Map, Value};

use super::content::text;
use crate::api::markdown;
use crate::calculation::report::Statement;
use crate::wording::{Language, say};

/// The tables of one operation. Each schema has one, however many fields hold it.
pub struct FieldTables<'a> {
    schemas: &'a Map<String, Value>,
    /// The name of the operation, with which all anchors begin.
    anchor: &'a str,
    language: Language,
    known: BTreeSet<String>,
    waiting: VecDeque<String>,
}

impl<'a> FieldTables<'a> {
    /// No tables yet.
    pub fn new(schemas: &'a Map<String, Value>, anchor: &'a str, language: Language) -> Self {
        Self { schemas, anchor, language, known: BTreeSet::new(), waiting: VecDeque::new() }
    }

    /// The tables of a schema and of all that it leads to, but for those that were written already.
    pub fn of(&mut self, schema: &Value) -> Markup {
        if let Some(name) = reference(schema) {
            self.ask_for(name);
        }
        let mut tables = Vec::new();
        while let Some(name) = self.waiting.pop_front() {
            tables.push(self.section(&name));
        }
        html! { @for table in &tables { (table) } }
    }

    /// A table of parameters or of the fields of an object: names, whether each is needed, schema, meaning.
    pub fn rows<'v>(&mut self, rows: impl Iterator<Item = (&'v str, bool, &'v Value, &'v str)>) -> Markup {
        let rows: Vec<_> = rows
            .map(|(name, is_required, schema, meaning)| {
                let value = self.value(schema);
                html! {
                    tr {
                        th scope="row" {
                            code { (name) }
                            @if is_required { " " em { (self.say(&Statement::new("docs-required"))) } }
                        }
                        td { (value) }
                        td lang="en" { (described(meaning)) }
                    }
                }
            })
            .collect();
        html! {
            table {
                thead {
                    tr {
                        th scope="col" { (self.say(&Statement::new("docs-field"))) }
                        th scope="col" { (self.say(&Statement::new("docs-value"))) }
                        th scope="col" { (self.say(&Statement::new("docs-meaning"))) }
                    }
                }
                tbody { @for row in &rows { (row) } }
            }
        }
    }

    fn say(&self, statement: &Statement) -> String {
        say(statement, self.language).into_owned()
    }

    fn ask_for(&mut self, name: &str) {
        if self.known.insert(name.to_owned()) {
            self.waiting.push_back(name.to_owned());
        }
    }

    fn section(&mut self, name: &str) -> Markup {
        let schema = &self.schemas[name];
        let required: Vec<_> = schema["required"].as_array().into_iter().flatten().filter_map(Value::as_str).collect();
        let properties = schema["properties"].as_object();
        let rows = properties.map(|properties| {
            self.rows(properties.iter().map(|(field, property)| {
                (field.as_str(), required.contains(&field.as_str()), property, text(property, "description"))
            }))
        });
        html! {
            h4 id=(format!("{}.{name}", self.anchor)) { (name) }
            div lang="en" { (described(text(schema, "description"))) }
            @if let Some(rows) = rows { (rows) }
        }
    }

    /// What stands in a field.
    fn value(&mut self, schema: &Value) -> Markup {
        if let Some(name) = reference(schema) {
            let Some(target) = self.schemas.get(name) else { return html! {} };
            if target.get("properties").is_none() && target.get("enum").is_none() {
                return self.value(target);
            }
            self.ask_for(name);
            return html! { a href=(format!("#{}.{name}", self.anchor)) { (name) } };
        }
        let kind = text(schema, "type");
        if let Some(items) = schema.get("items") {
            let items = self.value(items);
            return html! {
                (self.say(&Statement::new("docs-list-of"))) " " (items) (self.bounds(schema, "minItems", "maxItems", "entries"))
            };
        }
        if let Some(values) = schema.get("additionalProperties").filter(|values| values.is_object()) {
            let values = self.value(values);
            return html! { (self.say(&Statement::new("docs-map-of"))) " " (values) };
        }
        let codes: Vec<_> = schema["enum"].as_array().into_iter().flatten().filter_map(Value::as_str).collect();
        let kind = match (kind, text(schema, "format")) {
            ("string", "date-time") => "time",
            ("string", _) if schema.get("x-units").is_some() => "quantity",
            ("string", "binary") => "file",
            ("string", _) => "text",
            ("number", _) => "number",
            ("integer", _) => "integer",
            ("boolean", _) => "boolean",
            _ => "object",
        };
        html! {
            @if codes.is_empty() { (self.say(&Statement::new("docs-kind").code("kind", kind))) }
            @for (at, code) in codes.iter().enumerate() { @if at > 0 { ", " } code { (code) } }
            (self.bounds(schema, "minimum", "maximum", "none"))
            (self.bounds(schema, "x-minimum", "x-maximum", "none"))
            @if kind == "text" { (self.bounds(schema, "", "maxLength", "characters")) }
            (self.units(schema))
            (self.for_example(schema))
        }
    }

    /// From where to where, of values, entries or characters.
    fn bounds(&self, schema: &Value, least: &str, greatest: &str, things: &'static str) -> Markup {
        let bound =
            |name: &str| schema.get(name).map(|bound| bound.as_str().map_or_else(|| bound.to_string(), str::to_owned));
        let (bounds, least, greatest) = match (bound(least), bound(greatest)) {
            (Some(least), Some(greatest)) => ("both", least, greatest),
            (Some(least), None) => ("least", least, String::new()),
            (None, Some(greatest)) => ("greatest", String::new(), greatest),
            (None, None) => return html! {},
        };
        let said = Statement::new("docs-bounds").code("bounds", bounds).code("things", things);
        html! { ", " (self.say(&said.text("least", least).text("greatest", greatest))) }
    }

    fn units(&self, schema: &Value) -> Markup {
        let units: Vec<_> = schema["x-units"].as_array().into_iter().flatten().filter_map(Value::as_str).collect();
        html! {
            @if !units.is_empty() {
                br;
                (self.say(&Statement::new("docs-units"))) " "
                @for (at, unit) in units.iter().enumerate() { @if at > 0 { ", " } code { (unit) } }
            }
        }
    }

    fn for_example(&self, schema: &Value) -> Markup {
        let examples = schema["examples"].as_array().into_iter().flatten().filter_map(Value::as_str).take(2);
        let examples: Vec<_> = examples.collect();
        html! {
            @if !examples.is_empty() {
                br;
                (self.say(&Statement::new("docs-for-example"))) " "
                @for (at, example) in examples.iter().enumerate() { @if at > 0 { ", " } code { (example) } }
            }
        }
    }
}

/// The name of the schema that a schema refers to.
fn reference(schema: &Value) -> Option<&str> {
    schema["$ref"].as_str().and_then(|address| address.rsplit('/').next())
}

/// A text of the description, which is Markdown written here.
pub fn described(text: &str) -> Markup {
    PreEscaped(markdown::to_html(text, |_| None))
}
