//! A sizing request in typed quantities, with every default taken.

use uom::si::f64::{Length, Ratio};
use uom::si::ratio::percent;

use super::request::LoopSizingRequest;
use crate::calculation::input::{
    Cover, Detector, LeadIn, ResolvedDetector, ResolvedLeadIn, ResolvedOpening, ResolvedSlot, ResolvedStockItem,
    ResolvedWire, Slot, Wire, list,
};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath};
use crate::practice::roles::{EDGE_SETBACK, EDGE_SETBACK_BESIDE_TRAFFIC, Role};
use crate::practice::site::{Construction, SiteHazard, Surface};
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use crate::quantity::QuantityField;
use crate::quantity::UnitSystem;
use crate::vocabulary::Vocabulary;

/// The job, understood.
pub struct Job {
    /// The opening.
    pub opening: ResolvedOpening,
    /// What the loops are for, each once.
    pub roles: Vec<Role>,
    /// The vehicles that must be seen.
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
    /// What lies over the top wire.
    pub cover: Length,
    /// The detector unit.
    pub detector: ResolvedDetector,
    /// The caller's stock; `None` when none was sent.
    pub stock: Option<Vec<ResolvedStockItem>>,
}

impl Job {
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

    /// The change that the unit is set to switch at: the given one, or what the hardest vehicle asks for; of the steps on its
    /// sheet the coarsest that is as fine, else the finest.
    pub fn threshold(&self) -> Ratio {
        let hardest = self.vehicles.iter().map(|vehicle| vehicle.threshold_percent()).fold(f64::INFINITY, f64::min);
        let steps = &self.detector.threshold_steps_percent;
        let step = || steps.iter().find(|step| **step <= hardest).or(steps.last()).copied();
        Ratio::new::<percent>(self.detector.threshold_percent.or_else(step).unwrap_or(hardest))
    }

    /// The setback asked for, or the usual one.
    pub fn edge_setback(&self) -> Length {
        let usual = if self.has(SiteHazard::AdjacentTraffic) { EDGE_SETBACK_BESIDE_TRAFFIC } else { EDGE_SETBACK };
        self.opening.edge_setback.unwrap_or_else(|| usual.in_system(self.system()))
    }
}

impl LoopSizingRequest {
    /// Reads the request.
    pub(super) fn read(&self, diagnostics: &mut Diagnostics) -> Option<Job> {
        let body = FieldPath::BODY;
        let opening = self.opening.read(&body.field("opening"), diagnostics);
        let roles = self.read_roles(&body.field("roles"), diagnostics);
        let vehicles = VehicleClass::read_list(self.vehicles.as_deref(), &body.field("vehicles"), diagnostics);
        let surface = diagnostics.value_or_default(
            &body.field("surface"),
            self.surface,
            (Surface::ExistingAsphalt, Surface::ExistingAsphalt.code()),
            "The usual surface.",
            Source::OwnChoice,
        );
        let hazards = self.site_hazards.clone().unwrap_or_default();
        let construction = self.read_construction(surface, &hazards, &body.field("construction"), diagnostics);
        let lead_in = LeadIn::read_or_usual(self.lead_in.as_ref(), &body.field("lead_in"), diagnostics);
        let wire = Wire::read(self.wire.as_ref(), &body.field("wire"), diagnostics);
        let slot = self.read_slot(construction, &body.field("slot"), diagnostics);
        let cover = if construction.is_sawn() && slot.is_none() {
            None
        } else {
            self.read_cover(slot.as_ref(), surface, &body.field("slot"), diagnostics)
        };
        let detector = Detector::resolve(self.detector.as_ref(), &body.field("detector"), diagnostics);
        let stock = self.read_stock(&body.field("stock"), diagnostics);
        Some(Job {
            opening: opening?,
            roles,
            vehicles,
            seen_elsewhere: self.seen_by_other_devices.clone().unwrap_or_default(),
            surface,
            hazards,
            construction,
            lead_in: lead_in?,
            wire: wire?,
            slot,
            cover: cover?,
            detector: detector?,
            stock,
        })
    }

    fn read_roles(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Vec<Role> {
        let Some(roles) = &self.roles else {
            let usual = Role::usual_for(self.opening.barrier);
            diagnostics.add_assumption(at, list(usual), "What this barrier usually needs.", &[Source::CommonPractice]);
            return usual.to_vec();
        };
        for (index, role) in roles.iter().enumerate() {
            if roles[..index].contains(role) {
                diagnostics.add_error(
                    &at.item(index),
                    FieldErrorCode::Contradiction,
                    format!("The role {} stands twice.", role.code()),
                    "Send each role once; several loops side by side come from the width.",
                );
            }
        }
        roles.clone()
    }

    fn read_construction(
        &self,
        surface: Surface,
        hazards: &[SiteHazard],
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Construction {
        if let Some(construction) = self.construction {
            return construction;
        }
        let (construction, reason) = if !surface.is_sawn() {
            (Construction::PreformedDirectBurial, "This surface is laid over the loop.")
        } else if hazards.contains(&SiteHazard::CrackedPavement) {
            (Construction::PreformedSawCut, "A jacketed loop lasts longer in pavement that moves.")
        } else if self.stock.is_some() {
            (Construction::PreformedSawCut, "Loops in stock come preformed.")
        } else {
            (Construction::HandWound, "A finished surface is sawn, and wire is at hand.")
        };
        diagnostics.add_assumption(at, construction.code(), reason, &[Source::CommonPractice]);
        construction
    }

    /// `None` where nothing is sawn; of a slot that was sent all the same, the cover counts and the rest must be sound.
    fn read_slot(
        &self,
        construction: Construction,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Option<ResolvedSlot> {
        if construction.is_sawn() {
            return Slot::read(self.slot.as_ref(), construction, at, diagnostics);
        }
        if let Some(slot) = &self.slot {
            let mut aside = Diagnostics::default();
            Slot::read(Some(slot), construction, at, &mut aside);
            diagnostics.append_errors(&mut aside);
            diagnostics.mark_unneeded(at, &[("width", slot.width.is_some()), ("depth", slot.depth.is_some())]);
        }
        None
    }

    /// What lies over the top wire: sealant in a slot, pavement or sand over a buried loop.
    fn read_cover(
        &self,
        slot: Option<&ResolvedSlot>,
        surface: Surface,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Option<Length> {
        if let Some(slot) = slot {
            return Some(slot.cover);
        }
        let sent = self.slot.as_ref().and_then(|slot| slot.cover.as_ref());
        let reason = "How deep a loop usually lies under this surface.";
        // A fault of the cover was noted with the slot.
        match sent {
            Some(cover) => cover.read().ok().map(|written| written.si),
            None => diagnostics.parse_or_default(
                &at.field("cover"),
                None::<&Cover>,
                surface.burial_cover(),
                reason,
                Source::OwnChoice,
            ),
        }
    }

    fn read_stock(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<Vec<ResolvedStockItem>> {
        let stock = self.stock.as_ref()?;
        Some(stock.iter().enumerate().filter_map(|(index, item)| item.read(&at.item(index), diagnostics)).collect())
    }
}
