//! What is asked of [`super`].

use serde::Deserialize;
use uom::si::f64::Length;
use utoipa::ToSchema;
use validator::Validate;

use super::fixed_loop::{FixedLoop, ResolvedFixedLoop};
use super::resolved::ResolvedLoopSizing;
use crate::calculation::input::{
    Detector, LeadIn, Opening, ResolvedSlot, ResolvedStockItem, ResolvedWire, Slab, Slot, SlotAllowance, StockItem,
    Wire, resolve_vehicles,
};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::practice::burial::usual_cover;
use crate::practice::detectors::Wiring;
use crate::practice::roles::Role;
use crate::practice::site::{Barrier, Construction, SiteHazard, Surface};
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use crate::quantity::QuantityField;
use crate::quantity::format::format_detail_length_input;
use crate::vocabulary::{Vocabulary, join_codes};

/// An opening that needs loops.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LoopSizingRequest {
    /// The opening.
    #[validate(nested)]
    pub opening: Opening,
    /// What the loops are for, each once. Default: what the barrier usually needs.
    #[validate(length(max = Role::COUNT))]
    #[schema(min_items = 1)]
    pub roles: Option<Vec<Role>>,
    /// The vehicles that must be seen. Default: passenger car and high-bed truck.
    #[validate(length(max = VehicleClass::COUNT))]
    #[schema(min_items = 1)]
    pub vehicles: Option<Vec<VehicleClass>>,
    /// Vehicles that another device (a beam, a camera) sees wherever a loop is blind to them. Default: none.
    #[validate(length(max = VehicleClass::COUNT))]
    pub seen_by_other_devices: Option<Vec<VehicleClass>>,
    /// What the loops lie in. Default `existing_asphalt`.
    pub surface: Option<Surface>,
    /// What stands in the way. Default: nothing.
    #[validate(length(max = SiteHazard::COUNT))]
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
    /// The slab: how deep a cut it allows, whether the engineer agreed to it, and, where there is reinforcing mesh, how deep its steel lies.
    /// Default: steel 2 in / 50 mm under the loop.
    #[validate(nested)]
    pub slab: Option<Slab>,
    /// What is decided already, for each role once. Default: nothing.
    #[validate(nested, length(max = Role::COUNT))]
    #[schema(max_items = 7)]
    pub fixed_loops: Option<Vec<FixedLoop>>,
    /// The detector unit. Default: the standard minimum.
    #[validate(nested)]
    pub detector: Option<Detector>,
    /// Loops on the caller's shelf, to choose from.
    #[validate(nested, length(max = 200))]
    #[schema(max_items = 200)]
    pub stock: Option<Vec<StockItem>>,
}

impl LoopSizingRequest {
    /// Reads the request; `None` after an error.
    pub fn resolve(&self, diagnostics: &mut Diagnostics) -> Option<ResolvedLoopSizing> {
        let body = FieldPath::BODY;
        let opening = self.opening.resolve(&body.field("opening"), diagnostics);
        let roles = self.resolve_roles(&body.field("roles"), diagnostics);
        let vehicles = resolve_vehicles(self.vehicles.as_deref(), &body.field("vehicles"), diagnostics);
        let surface = diagnostics.value_or_default(
            &body.field("surface"),
            self.surface,
            (Surface::ExistingAsphalt, Surface::ExistingAsphalt.code()),
            Statement::new("input-usual-surface"),
            Source::OwnChoice,
        );
        let hazards = self.site_hazards.clone().unwrap_or_default();
        let construction = self.resolve_construction(surface, &hazards, &body.field("construction"), diagnostics);
        let lead_in = LeadIn::resolve_or_default(self.lead_in.as_ref(), &body.field("lead_in"), diagnostics);
        let wire = Wire::resolve(self.wire.as_ref(), &body.field("wire"), diagnostics);
        let wire = wire.map(|wire| self.fit_jacket(wire, construction, diagnostics));
        let slab = Slab::resolve(self.slab.as_ref(), &body.field("slab"), diagnostics);
        let slot = self.resolve_slot(construction, wire.as_ref(), &body.field("slot"), diagnostics);
        let cover = if construction.is_sawn() && slot.is_none() {
            None
        } else {
            self.resolve_cover(slot.as_ref(), (surface, slab.steel), &body.field("slot"), diagnostics)
        };
        let detector = Detector::resolve(self.detector.as_ref(), &body.field("detector"), diagnostics);
        let stock = self.resolve_stock(&body.field("stock"), diagnostics);
        let width = opening.as_ref().map(|opening| opening.width);
        let fixed_loops =
            self.resolve_fixed_loops((&roles, self.opening.barrier, width), &body.field("fixed_loops"), diagnostics);
        let slot = slot.map(|slot| {
            let deepest = slab.deepest_cut();
            ResolvedSlot { allowance: SlotAllowance { deepest, ..slot.allowance }, ..slot }
        });
        Some(ResolvedLoopSizing {
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
            has_square_corners: false,
            cuts_square_full: false,
            detector: detector?,
            wiring: Wiring::Separate,
            fixed_loops,
            slab,
            stock,
            budget: diagnostics.budget().clone(),
        })
    }

    fn resolve_roles(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Vec<Role> {
        let Some(roles) = &self.roles else {
            let usual = Role::usual_for(self.opening.barrier);
            diagnostics.add_assumption(
                at,
                join_codes(usual),
                Statement::new("sizing-usual-roles"),
                &[Source::CommonPractice],
            );
            return usual.to_vec();
        };
        for (index, role) in roles.iter().enumerate() {
            if roles[..index].contains(role) {
                diagnostics.add_error(
                    &at.item(index),
                    FieldErrorCode::Contradiction,
                    Statement::new("errors-role-twice").member("role", *role),
                    Statement::new("errors-role-twice-hint"),
                );
            }
        }
        roles.clone()
    }

    fn resolve_fixed_loops(
        &self,
        opening: (&[Role], Barrier, Option<Length>),
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Vec<ResolvedFixedLoop> {
        let fixed = self.fixed_loops.as_deref().unwrap_or_default();
        for (index, one) in fixed.iter().enumerate() {
            if fixed[..index].iter().any(|other| other.role == one.role) {
                diagnostics.add_error(
                    &at.item(index).field("role"),
                    FieldErrorCode::Contradiction,
                    Statement::new("errors-fixed-role-twice").member("role", one.role),
                    Statement::new("errors-fixed-role-twice-hint"),
                );
            }
        }
        fixed.iter().enumerate().map(|(index, one)| one.resolve(opening, &at.item(index), diagnostics)).collect()
    }

    fn resolve_construction(
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
            (Construction::PreformedDirectBurial, Statement::new("sizing-laid-over-the-loop"))
        } else if hazards.contains(&SiteHazard::CrackedPavement) {
            (Construction::PreformedSawCut, Statement::new("sizing-jacketed-lasts-longer"))
        } else if self.stock.is_some() {
            (Construction::PreformedSawCut, Statement::new("sizing-stock-is-preformed"))
        } else {
            (Construction::HandWound, Statement::new("sizing-surface-is-sawn"))
        };
        diagnostics.add_assumption(at, construction.code(), reason, &[Source::CommonPractice]);
        construction
    }

    /// A jacket counts in the saw cut of a preformed loop. One that what was sent does not go into is refused where loops are ordered.
    fn fit_jacket(
        &self,
        mut wire: ResolvedWire,
        construction: Construction,
        diagnostics: &mut Diagnostics,
    ) -> ResolvedWire {
        if construction == Construction::PreformedSawCut {
            let (body, system) = (FieldPath::BODY, self.opening.system());
            let at = body.field("wire");
            diagnostics.mark_used(&at.field("over_jacket"));
            wire.fit_jacket(self.wire.as_ref(), &at, system, diagnostics);
        }
        wire
    }

    /// `None` where nothing is sawn; of a slot that was sent all the same, the cover is used and the rest is only checked.
    fn resolve_slot(
        &self,
        construction: Construction,
        wire: Option<&ResolvedWire>,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Option<ResolvedSlot> {
        if construction.is_sawn() {
            let wires = wire.map(|wire| (wire.widest(construction), self.opening.system()));
            return Slot::resolve(self.slot.as_ref(), construction, wires, at, diagnostics);
        }
        if let Some(slot) = &self.slot {
            let mut aside = Diagnostics::default();
            Slot::resolve(Some(slot), construction, None, at, &mut aside);
            diagnostics.append_errors(&mut aside);
            diagnostics.mark_unneeded(at, &[("width", slot.width.is_some()), ("depth", slot.depth.is_some())]);
        }
        None
    }

    /// What lies over the top wire: sealant in a slot, pavement or sand over a buried loop.
    fn resolve_cover(
        &self,
        slot: Option<&ResolvedSlot>,
        (surface, steel): (Surface, Option<Length>),
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Option<Length> {
        if let Some(slot) = slot {
            return Some(slot.cover);
        }
        if let Some(cover) = self.slot.as_ref().and_then(|slot| slot.cover.as_ref()) {
            // Its error was added with the slot.
            return cover.read().ok().map(|written| written.si);
        }
        let system = self.opening.system();
        let (usual, over_steel) = (usual_cover(surface, None, system), usual_cover(surface, steel, system));
        let (value, reason) = if over_steel < usual {
            let value = format_detail_length_input(over_steel, system);
            (value, Statement::new("sizing-burial-cover-over-steel"))
        } else {
            (surface.burial_cover().to_owned(), Statement::new("sizing-usual-burial-cover"))
        };
        diagnostics.add_assumption(&at.field("cover"), value, reason, &[Source::OwnChoice]);
        Some(over_steel)
    }

    fn resolve_stock(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<Vec<ResolvedStockItem>> {
        let stock = self.stock.as_ref()?;
        Some(stock.iter().enumerate().filter_map(|(index, item)| item.resolve(&at.item(index), diagnostics)).collect())
    }
}
