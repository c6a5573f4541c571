//! The request in typed quantities, with every default taken, and its echo in the report.

use std::f64::consts::FRAC_PI_4;

use rust_decimal::Decimal;
use uom::si::f64::{Area, Length, Ratio, ThermodynamicTemperature, Volume};
use uom::si::length::meter;
use uom::si::ratio::percent;

use super::echo::{EstimatedLoopEcho, MaterialEstimateInputs};
use super::productivity::ResolvedProductivity;
use crate::calculation::input::{
    ResolvedLeadIn, ResolvedLoop, ResolvedPrices, ResolvedSlab, ResolvedSlot, ResolvedStockItem, SlotAllowance,
};
use crate::calculation::layout::{HomeRun, LeadInWay, LoopMark};
use crate::calculation::report::Subject;
use crate::practice::materials::{Corner, RodForm, rod_excess};
use crate::practice::roles::Role;
use crate::practice::sealants::SealantKind;
use crate::practice::site::{Construction, SiteHazard, Surface};
use crate::quantity::UnitSystem;
use crate::quantity::output::round;

/// The job.
pub struct ResolvedMaterialEstimate {
    /// The loops.
    pub loops: Vec<ResolvedEstimatedLoop>,
    /// The saw cut of the lead-ins, as far as it was given.
    pub lead_in_slot: ResolvedLeadInSlot,
    /// The saw.
    pub saw: ResolvedSaw,
    /// The sealant.
    pub sealant: ResolvedSealant,
    /// How single wire is held down.
    pub rod: ResolvedBackerRod,
    /// Whether the caller asked for rod.
    pub rod_is_asked: bool,
    /// The spools of loop wire; empty: wire by length.
    pub spools: Vec<ResolvedWireSpool>,
    /// Wire that is pulled beyond its measure.
    pub wire_allowance: Ratio,
    /// Sealant that is lost.
    pub waste: Ratio,
    /// What the loops lie in.
    pub surface: Surface,
    /// The slab.
    pub slab: ResolvedSlab,
    /// What stands in the way.
    pub hazards: Vec<SiteHazard>,
    /// Joints and cracks that wires cross.
    pub crossings: u32,
    /// What an agency asks for at the least, when given.
    pub agency: Option<ResolvedAgencyMinimum>,
    /// Prices, when given.
    pub prices: Option<ResolvedPrices>,
    /// How fast the crew works.
    pub productivity: ResolvedProductivity,
    /// The caller's stock; `None` when none was sent.
    pub stock: Option<Vec<ResolvedStockItem>>,
    /// Whether another device must watch the line of the gate, as the layout of a plan knows.
    pub needs_line_device: bool,
}

impl ResolvedMaterialEstimate {
    /// The system that the first loop is written in.
    pub fn system(&self) -> UnitSystem {
        self.loops.first().map_or(UnitSystem::UsCustomary, |first| first.coil.system)
    }

    /// The least width of a slot that an agency asks for; 0 where none does.
    pub fn agency_width(&self) -> Length {
        self.agency.as_ref().map_or_else(Length::default, |agency| agency.slot_width)
    }

    /// What a slot of this width holds beside wires and sealant, and how deep the slab lets it be.
    pub fn slot_allowance(&self, construction: Construction, width: Length) -> SlotAllowance {
        slot_allowance(&self.sealant, &self.rod, &self.slab, construction, width)
    }

    /// The echo of the report.
    pub fn echo(&self) -> MaterialEstimateInputs {
        MaterialEstimateInputs {
            loops: self.loops.iter().map(ResolvedEstimatedLoop::echo).collect(),
            blade_diameter: self.saw.blade.into(),
            corner: self.saw.corner,
            core_diameter: self.saw.core.into(),
            blade_life: self.saw.blade_life.into(),
            owns_blades: self.saw.owns_blades,
            sealant_kind: self.sealant.kind,
            cartridge: (!self.sealant.kind.is_poured_hot()).then(|| self.sealant.cartridge.into()),
            finish_below_surface: self.sealant.finish.into(),
            pour_temperature: self.sealant.pour.map(Into::into),
            backer_rod: self.rod.form,
            rod_piece_length: self.rod.piece.into(),
            rod_spacing: self.rod.spacing.into(),
            rod_diameter: self.rod.diameter.map(Into::into),
            wire_spools: self.spools.iter().map(|spool| spool.length.into()).collect(),
            wire_allowance_percent: round(self.wire_allowance.get::<percent>(), 3),
            waste_percent: round(self.waste.get::<percent>(), 3),
            surface: self.surface,
            site_hazards: self.hazards.clone(),
            crossings: self.crossings,
            slab_thickness: self.slab.thickness.map(Into::into),
            reinforcement_depth: self.slab.steel.map(Into::into),
            edge_distance: self.slab.edge.map(Into::into),
            is_suspended: self.slab.is_suspended,
            cut_approved: self.slab.cut_approved,
            agency: self.agency.as_ref().map(|agency| agency.name.clone()),
            agency_slot_width: self.agency.as_ref().map(|agency| agency.slot_width.into()),
            lead_in_slot_width: self.lead_in_slot.width.map(Into::into),
            lead_in_slot_depth: self.lead_in_slot.depth.map(Into::into),
            lead_in_cover: self.lead_in_slot.cover.map(Into::into),
            currency: self.prices.as_ref().map(|prices| prices.currency.code().to_owned()),
            productivity: self.productivity.echo(),
            stock_items: self.stock.as_ref().map_or(0, Vec::len),
        }
    }
}

/// What a slot of this width holds beside wires and sealant, and how deep the slab lets it be.
pub fn slot_allowance(
    sealant: &ResolvedSealant,
    rod: &ResolvedBackerRod,
    slab: &ResolvedSlab,
    construction: Construction,
    width: Length,
) -> SlotAllowance {
    let covers = rod.form_for(construction).covers_wire();
    SlotAllowance {
        finish: sealant.finish,
        rod_height: if covers { rod.height_in(width) } else { Length::default() },
        deepest: slab.deepest_cut(),
    }
}

/// Loops that are alike.
pub struct ResolvedEstimatedLoop {
    /// What the caller calls it.
    pub label: String,
    /// Its mark, where it belongs to a layout.
    pub mark: Option<LoopMark>,
    /// What it is for, where it belongs to a layout.
    pub role: Option<Role>,
    /// The loop.
    pub coil: ResolvedLoop,
    /// How it is made.
    pub construction: Construction,
    /// How many.
    pub quantity: u32,
    /// The pair.
    pub lead_in: ResolvedLeadIn,
    /// The temperature that the insulation of its wire stands, when given.
    pub rating: Option<ThermodynamicTemperature>,
    /// The way of the pair, where something is sawn.
    pub way: LeadInWay,
    /// The cable of its own gauge from the pull box to the unit; `None` where the pair goes all the way.
    pub home_run: Option<HomeRun>,
    /// What lies over it where it is buried, when given.
    pub burial_cover: Option<Length>,
    /// Whether it has a slot of its own.
    pub has_own_slot: bool,
    /// Which parts of its slot the caller gave.
    pub given: GivenSlotFields,
    /// Its slot in each construction that is sawn.
    pub slots: SawnSlots,
    /// What was decided about the caller's stock.
    pub stock: StockDecision,
}

/// Which item of the caller's stock a loop is.
pub enum StockDecision {
    /// Nothing was decided: an item that is alike serves.
    Open,
    /// The layout took this one, or found that none serves.
    Decided(Option<ResolvedStockItem>),
}

impl ResolvedEstimatedLoop {
    /// The loop as findings name it.
    pub fn subject(&self) -> Subject {
        self.role.map_or_else(|| Subject::Label(self.label.clone()), Subject::Role)
    }

    /// The loop as people name it: by its mark in a plan, else as its caller does.
    pub fn name(&self) -> String {
        self.mark.map_or_else(|| self.label.clone(), |mark| mark.to_string())
    }

    /// The lead-in that a preformed loop must come with: its length and its spare, or its tail where a home run goes on.
    pub fn lead_in_needed(&self) -> Length {
        self.home_run.as_ref().map_or_else(|| self.lead_in.order_length(), |home_run| home_run.tail)
    }

    /// The wire of one such loop when it is wound on site: its turns, and twice the lead-in with its spare.
    pub fn wire_length(&self) -> Length {
        Length::new::<meter>(self.coil.winding().wire_length()) + 2.0 * self.lead_in_needed()
    }

    /// How its corners are cut.
    pub fn corner(&self, saw: &ResolvedSaw) -> Corner {
        saw.corner.unwrap_or(Corner::usual_for(self.coil.corner_cut))
    }

    fn echo(&self) -> EstimatedLoopEcho {
        EstimatedLoopEcho {
            label: self.label.clone(),
            quantity: self.quantity,
            construction: self.construction,
            r#loop: self.coil.clone(),
            // It is known once the cuts are.
            cover: None,
            over_jacket: self.coil.wire.over_jacket.map(Into::into),
            insulation_rating: self.rating.map(Into::into),
            lead_in: self.lead_in.clone(),
        }
    }
}

/// The slot of a loop in each construction that is sawn: the comparison needs those that were not asked for too.
pub struct SawnSlots {
    /// For single wire.
    pub hand_wound: ResolvedSlot,
    /// For a jacketed loop.
    pub preformed: ResolvedSlot,
}

impl SawnSlots {
    /// The slot in a construction; `None` for direct burial.
    pub fn of(&self, construction: Construction) -> Option<&ResolvedSlot> {
        match construction {
            Construction::HandWound => Some(&self.hand_wound),
            Construction::PreformedSawCut => Some(&self.preformed),
            Construction::PreformedDirectBurial => None,
        }
    }
}

/// What of the slot of a loop was given.
#[derive(Clone, Copy, Default)]
pub struct GivenSlotFields {
    /// Whether the width was given.
    pub width: bool,
    /// Whether the depth was given.
    pub depth: bool,
    /// Whether the cover was given, by the loop or by the slot.
    pub cover: bool,
}

/// What was given of the saw cut of the lead-ins.
#[derive(Default)]
pub struct ResolvedLeadInSlot {
    /// Width.
    pub width: Option<Length>,
    /// Depth.
    pub depth: Option<Length>,
    /// Sealant over the pair.
    pub cover: Option<Length>,
}

/// The saw.
pub struct ResolvedSaw {
    /// Diameter of the blade.
    pub blade: Length,
    /// How corners are cut; absent: by the loop.
    pub corner: Option<Corner>,
    /// The hole of a cored corner.
    pub core: Length,
    /// What a blade cuts before it is worn.
    pub blade_life: Length,
    /// Whether the crew owns its blades.
    pub owns_blades: bool,
}

/// The sealant.
pub struct ResolvedSealant {
    /// The family.
    pub kind: SealantKind,
    /// Volume of a cartridge.
    pub cartridge: Volume,
    /// From the pavement down to its top.
    pub finish: Length,
    /// The temperature that it is poured at, where it is hot.
    pub pour: Option<ThermodynamicTemperature>,
}

/// A spool of loop wire.
#[derive(Clone, Debug, PartialEq)]
pub struct ResolvedWireSpool {
    /// The wire on it.
    pub length: Length,
    /// The caller's own number, when given.
    pub sku: Option<String>,
    /// Its price, when its number has one.
    pub price: Option<Decimal>,
}

/// What an agency asks for at the least.
pub struct ResolvedAgencyMinimum {
    /// The agency.
    pub name: String,
    /// The least width of a slot.
    pub slot_width: Length,
}

/// How single wire is held down.
pub struct ResolvedBackerRod {
    /// In pieces, continuous or none.
    pub form: RodForm,
    /// Length of a piece.
    pub piece: Length,
    /// From piece to piece.
    pub spacing: Length,
    /// Diameter before it is pressed into the slot, when given.
    pub diameter: Option<Length>,
}

impl ResolvedBackerRod {
    /// The form that a construction gets: a jacketed loop needs none.
    pub fn form_for(&self, construction: Construction) -> RodForm {
        if construction.is_preformed() { RodForm::None } else { self.form }
    }

    /// The diameter for a slot: the given one, or one that sits snug.
    pub fn diameter_for(&self, width: Length) -> Length {
        self.diameter.unwrap_or(width + rod_excess())
    }

    /// The area that it takes of a slot's section. Pressed into a narrower slot it keeps its area and grows in height.
    pub fn area_in(&self, width: Length) -> Area {
        let diameter = self.diameter_for(width);
        FRAC_PI_4 * diameter * diameter
    }

    /// The height that it takes of a slot.
    pub fn height_in(&self, width: Length) -> Length {
        let diameter = self.diameter_for(width);
        if diameter <= width { diameter } else { self.area_in(width) / width }
    }

    /// The rod of a form for a path of wire with so many bends.
    pub fn length_for(&self, form: RodForm, path: Length, bends: u32) -> Length {
        match form {
            RodForm::None => Length::default(),
            RodForm::Continuous => path,
            RodForm::Pieces => {
                let steps: f64 = (path / self.spacing).into();
                let pieces = (steps - 1e-9).ceil().max(0.0) + f64::from(bends);
                // Where pieces would touch they are one length.
                (pieces * self.piece).min(path)
            }
        }
    }
}
