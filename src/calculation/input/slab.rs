//! The slab that is cut, and what it leaves a slot.

use serde::Deserialize;
use uom::si::f64::Length;
use utoipa::ToSchema;
use validator::Validate;

use super::{GroundDistance, SlabSteelDepth, SlabThickness};
use crate::calculation::report::{Diagnostics, FieldPath};
use crate::practice::materials::steel_clearance;

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
    /// Reads what was sent of the slab.
    pub fn resolve(slab: Option<&Self>, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> ResolvedSlab {
        slab.map_or_else(ResolvedSlab::default, |slab| ResolvedSlab {
            thickness: diagnostics.parse_optional(&at.field("thickness"), slab.thickness.as_ref()),
            steel: diagnostics.parse_optional(&at.field("reinforcement_depth"), slab.reinforcement_depth.as_ref()),
            edge: diagnostics.parse_optional(&at.field("edge_distance"), slab.edge_distance.as_ref()),
            is_suspended: slab.is_suspended.unwrap_or_default(),
            cut_approved: slab.cut_approved.unwrap_or_default(),
        })
    }
}

/// The slab.
#[derive(Clone, Debug, Default)]
pub struct ResolvedSlab {
    /// Thickness, when given.
    pub thickness: Option<Length>,
    /// Depth of the highest steel, when given.
    pub steel: Option<Length>,
    /// From the wires to the nearest edge, when given.
    pub edge: Option<Length>,
    /// Whether it is suspended.
    pub is_suspended: bool,
    /// Whether a scan was made and the engineer agreed.
    pub cut_approved: bool,
}

impl ResolvedSlab {
    /// What a cut may take without coming near its steel or weakening it, where known.
    pub fn deepest_cut(&self) -> Option<Length> {
        let over_steel = self.steel.map(|steel| (steel - steel_clearance()).max(Length::default()));
        let enough = self.thickness.map(|thickness| thickness / 3.0);
        over_steel.into_iter().chain(enough).reduce(Length::min)
    }
}
