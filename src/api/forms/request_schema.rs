//! What is derived of fields: the schema of a request, taken apart into what a person can fill in.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::{Map, Number, Value};

use crate::calculation::Calculation;

/// A value of a request that a person can fill in.
pub struct RequestValue {
    /// What it holds.
    pub kind: ValueKind,
    /// Whether every request must have it.
    pub is_required: bool,
    /// The object that must have it where that is sent at all.
    pub required_within: Option<String>,
}

/// What a value holds.
pub enum ValueKind {
    /// Text with a unit; the schema has its range, its units and its examples.
    Quantity(Value),
    /// One code of a closed list.
    Choice(String),
    /// Codes of a closed list.
    List { list: String, min_items: Option<u64>, max_items: Option<u64> },
    /// A number.
    Number { minimum: Option<Number>, maximum: Option<Number> },
    /// Numbers.
    Numbers { minimum: Option<Number>, maximum: Option<Number>, min_items: Option<u64>, max_items: Option<u64> },
    /// A whole number.
    Count { minimum: Option<Number>, maximum: Option<Number> },
    /// True or false.
    Flag,
    /// A moment.
    Time,
    /// A day.
    Date,
    /// An amount of money.
    Money,
    /// Any other text.
    Text { min_length: Option<u64>, max_length: Option<u64> },
}

impl ValueKind {
    /// The value in a form.
    pub fn code(&self) -> &'static str {
        match self {
            Self::Quantity(_) => "quantity",
            Self::Choice(_) => "choice",
            Self::List { .. } => "list",
            Self::Number { .. } => "number",
            Self::Numbers { .. } => "numbers",
            Self::Count { .. } => "count",
            Self::Flag => "flag",
            Self::Time => "time",
            Self::Date => "date",
            Self::Money => "money",
            Self::Text { .. } => "text",
        }
    }
}

/// The values of a request that a person can fill in, by their pointers. Lists of objects and maps are data of the calling program, and so is
/// the weather, which gets no row.
pub fn values_of<C: Calculation>() -> BTreeMap<String, RequestValue> {
    let mut found = Vec::new();
    C::schemas(&mut found);
    let schemas = found.into_iter().map(|(name, schema)| (name, serde_json::to_value(schema).unwrap_or_default()));
    let mut walk = Walk { schemas: schemas.collect(), values: BTreeMap::new() };
    let root = serde_json::to_value(C::schema()).unwrap_or_default();
    walk.object("#", &root, true);
    walk.values
}

struct Walk {
    schemas: BTreeMap<String, Value>,
    values: BTreeMap<String, RequestValue>,
}

impl Walk {
    /// Adds the values of an object; `is_required` says whether every request has it.
    fn object(&mut self, at: &str, schema: &Value, is_required: bool) {
        let required: BTreeSet<_> =
            schema["required"].as_array().into_iter().flatten().filter_map(Value::as_str).collect();
        for (name, property) in schema["properties"].as_object().into_iter().flatten() {
            let (pointer, is_required_here) = (format!("{at}/{name}"), required.contains(name.as_str()));
            let (name, schema) = self.resolved(property);
            if schema.get("properties").is_some() {
                self.object(&pointer, &schema, is_required && is_required_here);
            } else if let Some(kind) = self.kind(name, schema) {
                let is_required = is_required && is_required_here;
                let required_within = (is_required_here && !is_required).then(|| at.to_owned());
                self.values.insert(pointer, RequestValue { kind, is_required, required_within });
            }
        }
    }

    /// A schema and its name, behind a reference and beside null.
    fn resolved(&self, schema: &Value) -> (String, Value) {
        let branches = schema["oneOf"].as_array().map_or_else(Vec::new, |branches| branches.iter().collect());
        let mut references = std::iter::once(schema).chain(branches).filter_map(|branch| branch["$ref"].as_str());
        let name = references.next().and_then(|reference| reference.rsplit('/').next()).unwrap_or_default();
        (name.to_owned(), self.schemas.get(name).unwrap_or(schema).clone())
    }

    /// What a schema lets a person fill in; `None` for lists of objects and maps.
    fn kind(&self, name: String, schema: Value) -> Option<ValueKind> {
        let (minimum, maximum) = (number(&schema, "minimum"), number(&schema, "maximum"));
        let is_type = |schema: &Value, expected: &str| match &schema["type"] {
            Value::Array(types) => types.iter().any(|kind| kind == expected),
            kind => kind == expected,
        };
        if is_type(&schema, "array") {
            let (list, items) = self.resolved(&schema["items"]);
            let (min_items, max_items) = (count(&schema, "minItems"), count(&schema, "maxItems"));
            if let Some(members) = items["enum"].as_array() {
                return Some(ValueKind::List { list, min_items, max_items: max_items.or(Some(members.len() as u64)) });
            }
            let (minimum, maximum) = (number(&items, "minimum"), number(&items, "maximum"));
            return is_type(&items, "number").then_some(ValueKind::Numbers { minimum, maximum, min_items, max_items });
        }
        let kind = if is_type(&schema, "boolean") {
            ValueKind::Flag
        } else if is_type(&schema, "integer") {
            ValueKind::Count { minimum, maximum }
        } else if is_type(&schema, "number") {
            ValueKind::Number { minimum, maximum }
        } else if !is_type(&schema, "string") {
            return None;
        } else if schema.get("x-units").is_some() {
            ValueKind::Quantity(schema)
        } else if schema.get("enum").is_some() {
            ValueKind::Choice(name)
        } else {
            match (schema["format"].as_str(), name.as_str()) {
                (Some("date-time"), _) => ValueKind::Time,
                (Some("date"), _) => ValueKind::Date,
                (_, "MoneyText") => ValueKind::Money,
                _ => {
                    ValueKind::Text { min_length: count(&schema, "minLength"), max_length: count(&schema, "maxLength") }
                }
            }
        };
        Some(kind)
    }
}

fn number(schema: &Value, name: &str) -> Option<Number> {
    schema.as_object().and_then(|schema: &Map<_, _>| schema.get(name)).and_then(Value::as_number).cloned()
}

fn count(schema: &Value, name: &str) -> Option<u64> {
    schema.get(name).and_then(Value::as_u64)
}
