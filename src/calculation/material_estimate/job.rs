//! A material-estimate request in typed quantities, with every default taken.

use uom::si::f64::{Length, Ratio, ThermodynamicTemperature, Volume};

use super::pace::Pace;
use super::rod::Rod;
use crate::calculation::input::{ResolvedLeadIn, ResolvedLoop, ResolvedPrices, ResolvedSlot, ResolvedStockItem};
use crate::practice::materials::Corner;
use crate::practice::sealants::SealantKind;
use crate::practice::site::{Construction, SiteHazard, Surface};
use crate::quantity::UnitSystem;

/// The job, understood.
pub struct Job {
    /// The loops.
    pub loops: Vec<LoopJob>,
    /// The saw cut of the lead-ins, as far as it was given.
    pub lead_in_slot: LeadInSlot,
    /// The saw.
    pub saw: ResolvedSaw,
    /// The sealant.
    pub sealant: ResolvedSealant,
    /// How single wire is held down.
    pub rod: Rod,
    /// Whether the caller asked for it.
    pub rod_is_asked: bool,
    /// The spools, as lengths with the caller's numbers; empty: wire by length.
    pub spools: Vec<(Length, Option<String>)>,
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
    /// Whose least width of a slot, and which.
    pub agency: Option<(String, Length)>,
    /// Prices, when given.
    pub prices: Option<ResolvedPrices>,
    /// How fast the crew works.
    pub pace: Pace,
    /// The caller's stock; `None` when none was sent.
    pub stock: Option<Vec<ResolvedStockItem>>,
}

/// What was given of the saw cut of the lead-ins.
#[derive(Default)]
pub struct LeadInSlot {
    /// Width.
    pub width: Option<Length>,
    /// Depth.
    pub depth: Option<Length>,
    /// Sealant over the pair.
    pub cover: Option<Length>,
}

/// What of the slot of a loop was given.
#[derive(Clone, Copy, Default)]
pub struct SlotGiven {
    /// Whether the width was given.
    pub width: bool,
    /// Whether the depth was given.
    pub depth: bool,
    /// Whether the cover was given, by the loop or by the slot.
    pub cover: bool,
}

/// Loops that are alike.
pub struct LoopJob {
    /// What the caller calls it.
    pub label: String,
    /// The loop.
    pub coil: ResolvedLoop,
    /// How it is made.
    pub construction: Construction,
    /// How many.
    pub quantity: u32,
    /// The pair.
    pub lead_in: ResolvedLeadIn,
    /// What the insulation of its wire stands, when given.
    pub rating: Option<ThermodynamicTemperature>,
    /// How much of the pair lies in a saw cut, where something is sawn.
    pub in_slot: Length,
    /// Whether it has a slot of its own.
    pub has_own_slot: bool,
    /// Which parts of its slot the caller gave.
    pub given: SlotGiven,
    /// The slot for each of the constructions that are sawn: wound on site, and preformed.
    pub slots: [ResolvedSlot; 2],
}

/// The saw.
pub struct ResolvedSaw {
    /// Diameter of the blade.
    pub blade: Length,
    /// How corners are cut; absent: by the loop.
    pub corner: Option<Corner>,
    /// The hole of a cored corner.
    pub core: Length,
    /// What a blade cuts before it is worn, when given.
    pub blade_life: Option<Length>,
}

/// The sealant.
pub struct ResolvedSealant {
    /// The family.
    pub kind: SealantKind,
    /// Volume of a cartridge.
    pub cartridge: Volume,
    /// From the pavement to its top.
    pub finish: Length,
    /// What it is poured at, where it is hot.
    pub pour: Option<ThermodynamicTemperature>,
}

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

impl LoopJob {
    /// The slot that this construction gets. Direct burial has none.
    pub fn slot(&self, construction: Construction) -> Option<&ResolvedSlot> {
        match construction {
            Construction::HandWound => self.slots.first(),
            Construction::PreformedSawCut => self.slots.last(),
            Construction::PreformedDirectBurial => None,
        }
    }

    /// The lead-in that a preformed loop must come with: its way and its spare.
    pub fn lead_in_needed(&self) -> Length {
        self.lead_in.length + self.lead_in.spare
    }

    /// How its corners are cut.
    pub fn corner(&self, saw: &ResolvedSaw) -> Corner {
        match saw.corner {
            Some(corner) => corner,
            None if self.coil.corner_cut > Length::default() => Corner::Diagonal,
            None => Corner::SquareOverrun,
        }
    }
}

impl Job {
    /// The system that the first loop is written in.
    pub fn system(&self) -> UnitSystem {
        self.loops.first().map_or(UnitSystem::UsCustomary, |first| first.coil.system)
    }

    /// The least width of a slot that an agency asks for; none is 0.
    pub fn agency_width(&self) -> Length {
        self.agency.as_ref().map_or_else(Length::default, |(_, least)| *least)
    }
}
