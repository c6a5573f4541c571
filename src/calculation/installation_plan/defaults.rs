//! What many plans have in common: fields that each takes where it does not send them itself.

use utoipa::openapi::RefOr;
use utoipa::openapi::schema::{Schema, SchemaType, Type};
use utoipa::{PartialSchema, ToSchema};

use super::request::InstallationPlanRequest;

/// The fields of a plan that may stand beside many: all but its opening, and the weather, which has a place of its own.
pub struct PlanDefaults;

impl PlanDefaults {
    /// The fields that are not among them.
    pub const OWN_FIELDS: [&'static str; 2] = ["opening", "weather"];
}

impl PartialSchema for PlanDefaults {
    fn schema() -> RefOr<Schema> {
        let mut schema = InstallationPlanRequest::schema();
        if let RefOr::T(Schema::Object(object)) = &mut schema {
            object.description = Some(
                "The fields of a plan that all items of a batch take where they do not send them: prices, stock, spools, and whatever else \
                 is the same for all. `opening` is each item's own, and `weather` stands beside this."
                    .to_owned(),
            );
            object.schema_type = SchemaType::Type(Type::Object);
            object.required.clear();
            for name in Self::OWN_FIELDS {
                object.properties.shift_remove(name);
            }
        }
        schema
    }
}

impl ToSchema for PlanDefaults {
    fn name() -> std::borrow::Cow<'static, str> {
        "PlanDefaults".into()
    }

    fn schemas(schemas: &mut Vec<(String, RefOr<Schema>)>) {
        InstallationPlanRequest::schemas(schemas);
    }
}

macro_rules! take_absent {
    ($taker:ident, $defaults:ident: $($field:ident)+) => {{
        // A field that is forgotten does not compile.
        let InstallationPlanRequest { opening: _, weather: _, $($field),+ } = $defaults;
        let mut taken = Vec::new();
        $(if let (None, Some(value)) = (&$taker.$field, $field) {
            $taker.$field = Some(value.clone());
            taken.push(stringify!($field));
        })+
        taken
    }};
}

impl InstallationPlanRequest {
    /// Takes from `defaults` what was not sent; gives the names of what was taken.
    pub fn take_absent(&mut self, defaults: &Self) -> Vec<&'static str> {
        take_absent!(self, defaults: parts include roles vehicles seen_by_other_devices surface site_hazards construction lead_in wire slot stock fixed_loops detector wiring lead_in_slot saw sealant backer_rod wire_spools wire_allowance_percent waste_percent slab crossings agency_minimum prices productivity start work_duration surface_condition needed_open_by)
    }
}
