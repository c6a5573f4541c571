//! Steel in the slab below a loop.

use serde::{Deserialize, Serialize};
use uom::si::f64::Length;
use utoipa::ToSchema;
use validator::Validate;

use super::SteelDepth;
use crate::calculation::report::{Diagnostics, FieldPath};

/// Steel in the slab below the loop.
#[derive(Clone, Debug, Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Reinforcement {
    /// From the lowest turn down to the steel.
    pub depth_below_loop: SteelDepth,
}

impl Reinforcement {
    /// Reads the depth, where steel was sent.
    pub fn resolve(sent: Option<&Self>, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<Length> {
        diagnostics.parse_optional(&at.field("depth_below_loop"), sent.map(|steel| &steel.depth_below_loop))
    }
}
