//! The greatest lengths of lists that follow from closed lists. An attribute of a field could only repeat such a length as a literal.

use std::collections::BTreeMap;

use utoipa::openapi::schema::{Array, ArrayItems};
use utoipa::openapi::{RefOr, Schema};

use super::builder::Schemas;
use crate::calculation::{self, Calculation, CalculationVisitor};

/// Bounds every list of members of a closed list by the number of members, and every list that a calculation bounds itself.
pub fn add_list_bounds(schemas: &mut Schemas) {
    let members: BTreeMap<_, _> =
        schemas.iter().filter_map(|(name, schema)| Some((name.clone(), count_members(schema)?))).collect();
    for schema in schemas.values_mut() {
        for list in lists(schema).map(|(_, list)| list) {
            let count = item_name(list).and_then(|name| members.get(name));
            list.max_items = count.copied().or(list.max_items);
        }
    }
    calculation::visit_all(&mut OwnBounds(schemas));
}

/// The bounds of [`Calculation::MAX_ITEMS`].
struct OwnBounds<'a>(&'a mut Schemas);

impl CalculationVisitor for OwnBounds<'_> {
    fn visit<C: Calculation>(&mut self) {
        let request = self.0.get_mut(&*C::name());
        for (field, list) in request.into_iter().flat_map(lists) {
            let bound = C::MAX_ITEMS.iter().find(|(bounded, _)| bounded == field);
            list.max_items = bound.map(|(_, max)| *max as usize).or(list.max_items);
        }
    }
}

/// How many members a closed list has; `None` for any other schema.
fn count_members(schema: &RefOr<Schema>) -> Option<usize> {
    let RefOr::T(Schema::Object(object)) = schema else { return None };
    object.enum_values.as_ref().map(Vec::len)
}

/// The fields of a schema that are lists.
fn lists(schema: &mut RefOr<Schema>) -> impl Iterator<Item = (&String, &mut Array)> {
    let properties = match schema {
        RefOr::T(Schema::Object(object)) => Some(&mut object.properties),
        _ => None,
    };
    properties.into_iter().flatten().filter_map(|(field, schema)| match schema {
        RefOr::T(Schema::Array(list)) => Some((field, list)),
        _ => None,
    })
}

/// The name of the schema that the items of a list refer to.
fn item_name(list: &Array) -> Option<&str> {
    let ArrayItems::RefOrSchema(items) = &list.items else { return None };
    let RefOr::Ref(items) = &**items else { return None };
    items.ref_location.rsplit('/').next()
}
