//! The slab, and what it leaves a slot.

use uom::si::f64::Length;

use crate::practice::materials::steel_clearance;

/// The slab.
#[derive(Default)]
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
