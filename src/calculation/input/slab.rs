//! The slab that is cut.

use serde::Deserialize;
use utoipa::ToSchema;
use validator::Validate;

use super::{GroundDistance, SlabSteelDepth, SlabThickness};

/// The slab that is cut.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Slab {
    /// Its thickness.
    pub thickness: Option<SlabThickness>,
    /// From the surface down to the highest steel.
    pub reinforcement_depth: Option<SlabSteelDepth>,
    /// From the wires to the nearest edge, kerb or joint.
    pub edge_distance: Option<GroundDistance>,
    /// Whether it is suspended: a deck, a ramp, a floor with rooms below. Default no.
    pub is_suspended: Option<bool>,
    /// Whether a scan was made and the engineer agreed to the cut in writing. Default no.
    pub cut_approved: Option<bool>,
}

impl Slab {
    /// Which of its fields were sent, the depth of its steel first.
    pub fn parts_sent(&self) -> [(&'static str, bool); 5] {
        [
            ("reinforcement_depth", self.reinforcement_depth.is_some()),
            ("thickness", self.thickness.is_some()),
            ("edge_distance", self.edge_distance.is_some()),
            ("is_suspended", self.is_suspended.is_some()),
            ("cut_approved", self.cut_approved.is_some()),
        ]
    }
}
