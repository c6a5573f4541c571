//! What was understood of the request, as the report says it.

use serde::Serialize;
use utoipa::ToSchema;

use crate::calculation::input::{ResolvedLeadIn, ResolvedLoop};
use crate::practice::materials::{Corner, RodForm};
use crate::practice::sealants::SealantKind;
use crate::practice::site::{Construction, SiteHazard, Surface};
use crate::quantity::output::{DetailLength, DurationValue, PlanLength, TemperatureValue, VolumeValue, WorkSpeedValue};

/// What was understood of a material-estimate request.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct MaterialEstimateInputs {
    /// The loops.
    pub loops: Vec<EstimatedLoopEcho>,
    /// The diameter of the blade.
    pub blade_diameter: DetailLength,
    /// How corners are cut; absent when not given: by each loop.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>)]
    pub corner: Option<Corner>,
    /// The hole of a cored corner.
    pub core_diameter: DetailLength,
    /// What a blade cuts before it is worn.
    pub blade_life: PlanLength,
    /// Whether the crew owns its blades.
    pub owns_blades: bool,
    /// The sealant's family.
    #[schema(value_type = String)]
    pub sealant_kind: SealantKind,
    /// The volume of a cartridge; absent for hot-applied sealant.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cartridge: Option<VolumeValue>,
    /// From the pavement down to the top of the sealant.
    pub finish_below_surface: DetailLength,
    /// What hot-applied sealant is poured at; absent for the others.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pour_temperature: Option<TemperatureValue>,
    /// How single wire is held down.
    #[schema(value_type = String)]
    pub backer_rod: RodForm,
    /// The length of a piece of rod.
    pub rod_piece_length: DetailLength,
    /// From piece to piece.
    pub rod_spacing: DetailLength,
    /// The diameter of the rod; absent when not given: by the slot.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rod_diameter: Option<DetailLength>,
    /// The spools that wire comes on; empty: by length.
    pub wire_spools: Vec<PlanLength>,
    /// Wire that is pulled beyond its measure, percent, 3 decimals.
    pub wire_allowance_percent: f64,
    /// The sealant that is lost, percent, 3 decimals.
    pub waste_percent: f64,
    /// What the loops lie in.
    #[schema(value_type = String)]
    pub surface: Surface,
    /// What stands in the way.
    #[schema(value_type = Vec<String>)]
    pub site_hazards: Vec<SiteHazard>,
    /// Joints and cracks that wires cross.
    pub crossings: u32,
    /// The slab's thickness; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slab_thickness: Option<DetailLength>,
    /// The depth of its steel; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reinforcement_depth: Option<DetailLength>,
    /// From the wires to the nearest edge of the slab; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub edge_distance: Option<PlanLength>,
    /// Whether the slab is suspended.
    pub is_suspended: bool,
    /// Whether a scan was made and the engineer agreed to the cut.
    pub cut_approved: bool,
    /// Whose least width of a slot is heeded; absent when none is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub agency: Option<String>,
    /// That least width.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub agency_slot_width: Option<DetailLength>,
    /// The width of the lead-ins' slot; absent when not given: see `loops[].lead_in_slot_width`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lead_in_slot_width: Option<DetailLength>,
    /// The depth of the lead-ins' slot; absent when not given: see `loops[].lead_in_slot_depth`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lead_in_slot_depth: Option<DetailLength>,
    /// The sealant to keep over the pair; absent when not given: as over the loop.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lead_in_cover: Option<DetailLength>,
    /// The currency of the prices; absent without prices.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub currency: Option<String>,
    /// The pace of the crew.
    pub productivity: ProductivityEcho,
    /// How many stock loops were looked at.
    pub stock_items: usize,
}

/// A loop of the request as it was understood.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct EstimatedLoopEcho {
    /// What the caller calls it.
    pub label: String,
    /// How many.
    pub quantity: u32,
    /// How it is made.
    #[schema(value_type = String)]
    pub construction: Construction,
    /// The loop.
    pub r#loop: ResolvedLoop,
    /// The sealant that is asked for over its top wire, whoever asks for it; absent where nothing is sawn.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cover: Option<DetailLength>,
    /// The diameter over its jacket; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub over_jacket: Option<DetailLength>,
    /// What insulation and jacket stand; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub insulation_rating: Option<TemperatureValue>,
    /// The lead-in.
    pub lead_in: ResolvedLeadIn,
}

/// The pace of the crew as it was understood.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct ProductivityEcho {
    /// For the whole job.
    pub set_up: DurationValue,
    /// Of the saw at the depth of one pass; absent where it follows surface and depth.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub saw_speed: Option<WorkSpeedValue>,
    /// For one corner.
    pub core: DurationValue,
    /// Along the slots.
    pub cleaning_speed: WorkSpeedValue,
    /// For one pull.
    pub pull: DurationValue,
    /// For one buried loop.
    pub burial: DurationValue,
    /// Along the slots.
    pub sealing_speed: WorkSpeedValue,
    /// For the ends of one loop.
    pub termination: DurationValue,
    /// For the readings of one loop, once.
    pub test: DurationValue,
}
