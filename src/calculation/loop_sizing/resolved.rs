//! A sizing request in typed quantities, with every default taken.

use uom::si::f64::{Length, Ratio};
use uom::si::length::millimeter;

use super::fixed_loop::ResolvedFixedLoop;
use crate::calculation::budget::WorkBudget;
use crate::calculation::input::{
    ResolvedDetector, ResolvedLeadIn, ResolvedLoop, ResolvedOpening, ResolvedSlab, ResolvedSlot, ResolvedStockItem,
    ResolvedWire,
};
use crate::calculation::layout;
use crate::practice::detectors::Wiring;
use crate::practice::layout::{EDGE_SETBACK, EDGE_SETBACK_BESIDE_TRAFFIC, MESH_BELOW_LOOP};
use crate::practice::roles::Role;
use crate::practice::site::{Construction, SiteHazard, Surface};
use crate::practice::vehicles::VehicleClass;
use crate::quantity::UnitSystem;

/// A sizing request in typed quantities.
pub struct ResolvedLoopSizing {
    /// The opening.
    pub opening: ResolvedOpening,
    /// What the loops are for, each once.
    pub roles: Vec<Role>,
    /// The vehicles that must be seen, in the order of the closed list, each once.
    pub vehicles: Vec<VehicleClass>,
    /// Vehicles that another device sees.
    pub seen_elsewhere: Vec<VehicleClass>,
    /// What the loops lie in.
    pub surface: Surface,
    /// What stands in the way.
    pub hazards: Vec<SiteHazard>,
    /// How the loops are made.
    pub construction: Construction,
    /// The pair from each loop to the unit.
    pub lead_in: ResolvedLeadIn,
    /// The wire of the loops.
    pub wire: ResolvedWire,
    /// The saw cut; absent where nothing is sawn.
    pub slot: Option<ResolvedSlot>,
    /// What lies over the top wire, where the slot leaves that.
    pub cover: Length,
    /// Whether the saw cuts no diagonals, so that loops have square corners.
    pub has_square_corners: bool,
    /// Whether the square is cut full before its diagonals.
    pub cuts_square_full: bool,
    /// The detector unit.
    pub detector: ResolvedDetector,
    /// How the loops come to it.
    pub wiring: Wiring,
    /// What the caller has decided already.
    pub fixed_loops: Vec<ResolvedFixedLoop>,
    /// The slab.
    pub slab: ResolvedSlab,
    /// The caller's stock; `None` when none was sent.
    pub stock: Option<Vec<ResolvedStockItem>>,
    /// What the sizing may still compute.
    pub budget: WorkBudget,
}

impl ResolvedLoopSizing {
    /// The system of tidy sizes.
    pub fn system(&self) -> UnitSystem {
        self.opening.system
    }

    /// Whether a hazard was named.
    pub fn has(&self, hazard: SiteHazard) -> bool {
        self.hazards.contains(&hazard)
    }

    /// Whether only cars and pickups come.
    pub fn only_low_vehicles(&self) -> bool {
        self.vehicles.iter().all(|vehicle| vehicle.is_low())
    }

    /// The step that loops are designed for; what each channel is set to follows from the loops.
    pub fn design_step(&self) -> Ratio {
        layout::design_step(&self.detector)
    }

    /// What the caller has decided of the loop of a role.
    pub fn fixed(&self, role: Role) -> Option<&ResolvedFixedLoop> {
        self.fixed_loops.iter().find(|fixed| fixed.role == role)
    }

    /// From the lowest turn of a loop down to the mesh in the slab: from its known depth, else 2 in / 50 mm. `None` without mesh. Steel that
    /// is known to lie higher than the wire is taken to lie right under it.
    pub fn steel_below(&self, coil: &ResolvedLoop) -> Option<Length> {
        let below = |depth: Length| (depth - coil.cover - coil.stack()).max(Length::new::<millimeter>(1.0));
        let usual = MESH_BELOW_LOOP.in_system(self.system());
        self.has(SiteHazard::ReinforcingMesh).then(|| self.slab.steel.map_or(usual, below))
    }

    /// Whether vehicles are known to drive inwards only: past a ticket post, with no loop for those who leave.
    pub fn drives_inwards_only(&self) -> bool {
        self.roles.contains(&Role::Arming) && !self.roles.contains(&Role::Exit)
    }

    /// Whether the setback was asked for, or keeps traffic beside the lane unseen: a loop from stock must leave it too.
    pub fn must_keep_setback(&self) -> bool {
        self.opening.edge_setback.is_some() || self.has(SiteHazard::AdjacentTraffic)
    }

    /// The setback asked for, or the usual one.
    pub fn edge_setback(&self) -> Length {
        let usual = if self.has(SiteHazard::AdjacentTraffic) { EDGE_SETBACK_BESIDE_TRAFFIC } else { EDGE_SETBACK };
        self.opening.edge_setback.unwrap_or_else(|| usual.in_system(self.system()))
    }
}
