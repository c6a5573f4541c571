//! What is asked of [`super`].

use serde::Deserialize;
use utoipa::ToSchema;
use validator::Validate;

use crate::calculation::input::{Sealant, Slot, Weather, Wire};
use crate::practice::cure::SurfaceCondition;

/// A sealant, a slot, a start, and the weather round it.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CureGuidanceRequest {
    /// The sealant.
    #[validate(nested)]
    pub sealant: Sealant,
    /// The slot. Default: the usual one of a wound loop.
    #[validate(nested)]
    pub slot: Option<Slot>,
    /// The wire in it; its `insulation_rating` decides whether hot-applied sealant may be poured.
    #[validate(nested)]
    pub wire: Option<Wire>,
    /// When the sealant goes in, RFC 3339 with offset: `2026-01-20T13:00:00-05:00`. It lies within the weather. Send the offset of the
    /// site: times are answered on this clock, and it tells night from day for a slab that nobody measured.
    #[validate(length(min = 1, max = 40))]
    #[schema(min_length = 1, max_length = 40, format = DateTime)]
    pub start: String,
    /// What the slot looks like at the start. Default `dry`, and then no plain `go` is given.
    pub surface_condition: Option<SurfaceCondition>,
    /// When traffic must be let back, RFC 3339 with offset.
    #[validate(length(min = 1, max = 40))]
    #[schema(min_length = 1, max_length = 40, format = DateTime)]
    pub needed_open_by: Option<String>,
    /// The weather.
    #[validate(nested)]
    pub weather: Weather,
}
