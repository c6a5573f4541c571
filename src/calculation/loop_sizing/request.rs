//! What is asked of [`super`].

use serde::Deserialize;
use utoipa::ToSchema;
use validator::Validate;

use crate::calculation::input::{Detector, LeadIn, Opening, Slot, StockItem, Wire};
use crate::practice::roles::Role;
use crate::practice::site::{Construction, SiteHazard, Surface};
use crate::practice::vehicles::VehicleClass;

/// An opening that needs loops.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LoopSizingRequest {
    /// The opening.
    #[validate(nested)]
    pub opening: Opening,
    /// What the loops are for, each once. Default: what the barrier usually needs.
    #[validate(length(min = 1, max = 7))]
    #[schema(min_items = 1, max_items = 7)]
    pub roles: Option<Vec<Role>>,
    /// The vehicles that must be seen. Default: passenger car and high-bed truck.
    #[validate(length(min = 1, max = 7))]
    #[schema(min_items = 1, max_items = 7)]
    pub vehicles: Option<Vec<VehicleClass>>,
    /// Vehicles that another device (a beam, a camera) sees wherever a loop is blind to them. Default: none.
    #[validate(length(max = 7))]
    #[schema(max_items = 7)]
    pub seen_by_other_devices: Option<Vec<VehicleClass>>,
    /// What the loops lie in. Default `existing_asphalt`.
    pub surface: Option<Surface>,
    /// What stands in the way. Default: nothing.
    #[validate(length(max = 12))]
    #[schema(max_items = 12)]
    pub site_hazards: Option<Vec<SiteHazard>>,
    /// How the loops are made. Default: what the surface asks for.
    pub construction: Option<Construction>,
    /// The pair from each loop to the detector unit. Default 50 ft.
    #[validate(nested)]
    pub lead_in: Option<LeadIn>,
    /// The wire of the loops. Default 14 AWG.
    #[validate(nested)]
    pub wire: Option<Wire>,
    /// The saw cut. Default: the usual one of the construction, as deep as the turns need.
    #[validate(nested)]
    pub slot: Option<Slot>,
    /// The detector unit. Default: the standard minimum.
    #[validate(nested)]
    pub detector: Option<Detector>,
    /// Loops on the caller's shelf, to choose from.
    #[validate(nested, length(max = 200))]
    #[schema(max_items = 200)]
    pub stock: Option<Vec<StockItem>>,
}
