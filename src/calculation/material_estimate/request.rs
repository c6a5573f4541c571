//! What is asked of [`super`].

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use validator::Validate;

use crate::calculation::input::{
    BladeDiameter, CoreDiameter, CutLength, LeadIn, Loop, Prices, RodDiameter, RodPiece, RodSpacing, Sealant, Slab,
    Slot, SlotWidth, SpoolLength, StockItem, WorkSpeed, WorkTime,
};
use crate::practice::materials::{Corner, RodForm};
use crate::practice::site::{Construction, SiteHazard, Surface};
use crate::vocabulary::Vocabulary;

/// Loops to be cut, laid and sealed, and what is known of site, tools and prices.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct MaterialEstimateRequest {
    /// The loops.
    #[validate(nested, length(min = 1, max = 50))]
    #[schema(min_items = 1, max_items = 50)]
    pub loops: Vec<EstimatedLoop>,
    /// The saw cut of all loops that have none of their own. A width that is not given is the usual one, or wider where wire, jacket or `agency_minimum` asks for more; a depth that is not given follows wires, cover and finish.
    #[validate(nested)]
    pub slot: Option<Slot>,
    /// The saw cut of the lead-ins. Default as deep and as wide as that of each loop, and more where the pair needs it; its cover by default that over the loop.
    #[validate(nested)]
    pub lead_in_slot: Option<Slot>,
    /// The saw.
    #[validate(nested)]
    pub saw: Option<Saw>,
    /// The sealant. Default one-part moisture cure in cartridges of 29 fl oz, flush with the surface.
    #[validate(nested)]
    pub sealant: Option<Sealant>,
    /// How single wire is held down. Default short pieces.
    #[validate(nested)]
    pub backer_rod: Option<BackerRod>,
    /// The spools that loop wire comes on. Default: wire by length.
    #[validate(nested, length(max = 10))]
    #[schema(min_items = 1, max_items = 10)]
    pub wire_spools: Option<Vec<WireSpool>>,
    /// Wire that is pulled beyond its measure, percent of each length: corners, ends and what is cut off. Default 5.
    #[validate(range(min = 0.0, max = 50.0))]
    #[schema(minimum = 0, maximum = 50)]
    pub wire_allowance_percent: Option<f64>,
    /// The sealant that is lost, percent of what fills the slots. Default 10.
    #[validate(range(min = 0.0, max = 100.0))]
    #[schema(minimum = 0, maximum = 100)]
    pub waste_percent: Option<f64>,
    /// What the loops lie in. Default `existing_asphalt`.
    pub surface: Option<Surface>,
    /// The slab that is cut.
    #[validate(nested)]
    pub slab: Option<Slab>,
    /// What stands in the way.
    #[validate(length(max = SiteHazard::COUNT))]
    pub site_hazards: Option<Vec<SiteHazard>>,
    /// How many joints and cracks wires cross. Default 0.
    #[validate(range(max = 100))]
    #[schema(minimum = 0, maximum = 100)]
    pub crossings: Option<u32>,
    /// What an agency asks for at the least.
    #[validate(nested)]
    pub agency_minimum: Option<AgencyMinimum>,
    /// The caller's own prices. Without them nothing is priced.
    #[validate(nested)]
    pub prices: Option<Prices>,
    /// How fast the crew works. Each absent figure is assumed.
    #[validate(nested)]
    pub productivity: Option<Productivity>,
    /// Preformed loops on the caller's shelf.
    #[validate(nested, length(max = 500))]
    #[schema(max_items = 500)]
    pub stock: Option<Vec<StockItem>>,
}

/// Loops that are alike.
#[derive(Clone, Debug, Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct EstimatedLoop {
    /// What the caller calls it; each label once. Default: its number.
    #[validate(length(min = 1, max = 64))]
    #[schema(min_length = 1, max_length = 64)]
    pub label: Option<String>,
    /// The loop.
    #[validate(nested)]
    pub r#loop: Loop,
    /// How it is made. Default: what the surface asks for.
    pub construction: Option<Construction>,
    /// How many of them. Default 1.
    #[validate(range(min = 1, max = 200))]
    #[schema(minimum = 1, maximum = 200)]
    pub quantity: Option<u32>,
    /// The pair from each to the unit. Default 50 ft.
    #[validate(nested)]
    pub lead_in: Option<LeadIn>,
    /// The unit that it goes to: what of its lead-in lies in a shared slot lies there with pairs of the same unit. Default: all go to one.
    #[validate(length(min = 1, max = 64))]
    #[schema(min_length = 1, max_length = 64)]
    pub unit: Option<String>,
    /// Its own saw cut, instead of the common one.
    #[validate(nested)]
    pub slot: Option<Slot>,
}

/// The saw and how it goes round corners.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Saw {
    /// The diameter of the blade. Default 14 in.
    pub blade_diameter: Option<BladeDiameter>,
    /// How corners are cut. Default `diagonal` where the loop has corner cuts, else `square_overrun`.
    pub corner: Option<Corner>,
    /// The hole of a cored corner. Default 1-1/2 in.
    pub core_diameter: Option<CoreDiameter>,
    /// How much a blade cuts before it is worn. Default 1000 ft.
    pub blade_life: Option<CutLength>,
    /// Whether the crew owns its blades: they are taken along and not bought; a price by length (`saw_blade/ft`, `saw_blade/m`) still counts
    /// their wear. Default false.
    pub owns_blades: Option<bool>,
}

/// How single wire is held down.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct BackerRod {
    /// In pieces, continuous, or none.
    pub form: RodForm,
    /// The length of a piece. Default 2 in.
    pub piece_length: Option<RodPiece>,
    /// From piece to piece. Default 2 ft; and one at each bend.
    pub spacing: Option<RodSpacing>,
    /// The diameter before it is pressed into the slot. Default 1/16 in more than the slot is wide.
    pub diameter: Option<RodDiameter>,
}

/// A spool of loop wire.
#[derive(Clone, Debug, Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct WireSpool {
    /// The wire on it.
    pub length: SpoolLength,
    /// The caller's own number for it.
    #[validate(length(min = 1, max = 64))]
    #[schema(min_length = 1, max_length = 64)]
    pub sku: Option<String>,
}

/// What an agency asks for at the least.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AgencyMinimum {
    /// Whose minimum it is.
    #[validate(length(min = 1, max = 80))]
    #[schema(min_length = 1, max_length = 80)]
    pub agency: String,
    /// The least width of a slot.
    pub slot_width: SlotWidth,
}

/// How fast the crew works.
#[derive(Clone, Debug, Default, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Productivity {
    /// To set up, mark out and guard the work zone, for the whole job. Default 45 min.
    pub set_up: Option<WorkTime>,
    /// How fast the saw goes forward at the depth of one pass. Default by surface and depth.
    pub saw_speed: Option<WorkSpeed>,
    /// To drill one corner. Default 5 min.
    pub core: Option<WorkTime>,
    /// How fast slots are washed and dried. Default 8 ft/min.
    pub cleaning_speed: Option<WorkSpeed>,
    /// To pull wire round once: a turn, or all turns of a preformed loop. Default 5 min.
    pub pull: Option<WorkTime>,
    /// To bed and cover a direct-burial loop. Default 30 min.
    pub burial: Option<WorkTime>,
    /// How fast slots are filled. Default 5 ft/min.
    pub sealing_speed: Option<WorkSpeed>,
    /// To solder, splice and seal the ends of one loop. Default 10 min.
    pub termination: Option<WorkTime>,
    /// To take the readings of one loop once. Default 5 min.
    pub test: Option<WorkTime>,
}
