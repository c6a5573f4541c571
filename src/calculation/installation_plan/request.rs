//! What is asked of [`super`].

use serde::Deserialize;
use utoipa::ToSchema;
use validator::Validate;

use crate::calculation::input::{
    Detector, LeadIn, Opening, Prices, Sealant, Slab, Slot, StockItem, Weather, Wire, WorkDuration,
};
use crate::calculation::loop_sizing::FixedLoop;
use crate::calculation::material_estimate::{AgencyMinimum, BackerRod, Productivity, Saw, WireSpool};
use crate::practice::detectors::Wiring;
use crate::practice::job_steps::{PlanExtra, PlanPart};
use crate::practice::roles::Role;
use crate::practice::sealing::SurfaceCondition;
use crate::practice::site::{Construction, SiteHazard, Surface};
use crate::practice::vehicles::VehicleClass;
use crate::quantity::UnitSystem;
use crate::vocabulary::Vocabulary;

/// A whole job: the fields of loop-sizing, and of whatever else is to be planned.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct InstallationPlanRequest {
    /// The parts to plan beside the sizing. Default: all; `cure` where `weather` was sent.
    #[validate(length(max = PlanPart::COUNT))]
    pub parts: Option<Vec<PlanPart>>,
    /// What the report holds on request. Default: nothing.
    #[validate(length(max = PlanExtra::COUNT))]
    pub include: Option<Vec<PlanExtra>>,

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
    /// Loops on the caller's shelf, to choose from.
    #[validate(nested, length(max = 200))]
    #[schema(max_items = 200)]
    pub stock: Option<Vec<StockItem>>,
    /// What is decided already of the loops, for each role once. Default: nothing.
    #[validate(nested, length(max = Role::COUNT))]
    #[schema(max_items = 7)]
    pub fixed_loops: Option<Vec<FixedLoop>>,

    /// The detector unit. Default: the standard minimum.
    #[validate(nested)]
    pub detector: Option<Detector>,
    /// How the loops come to the unit. Default `separate`.
    pub wiring: Option<Wiring>,

    /// The saw cut of the lead-ins.
    #[validate(nested)]
    pub lead_in_slot: Option<Slot>,
    /// The saw.
    #[validate(nested)]
    pub saw: Option<Saw>,
    /// The sealant. Default one-part moisture cure.
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
    /// The slab that is cut.
    #[validate(nested)]
    pub slab: Option<Slab>,
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

    /// When the first sealant goes in, RFC 3339 with offset. Needed with `weather`.
    #[validate(length(min = 1, max = 40))]
    #[schema(min_length = 1, max_length = 40, format = DateTime)]
    pub start: Option<String>,
    /// How long the sealing of the whole job takes. Default what the estimate of the materials says.
    pub work_duration: Option<WorkDuration>,
    /// What the slot looks like at the start.
    pub surface_condition: Option<SurfaceCondition>,
    /// When traffic must be let back, RFC 3339 with offset.
    #[validate(length(min = 1, max = 40))]
    #[schema(min_length = 1, max_length = 40, format = DateTime)]
    pub needed_open_by: Option<String>,
    /// The weather of the work.
    #[validate(nested)]
    pub weather: Option<Weather>,
}

impl InstallationPlanRequest {
    /// The system of the plan: that of the opening's width.
    pub fn system(&self) -> UnitSystem {
        self.opening.system()
    }

    /// Whether a part is to be planned: one that was named, or any where none was.
    pub fn asks_for(&self, part: PlanPart) -> bool {
        self.parts.as_ref().is_none_or(|parts| parts.contains(&part))
    }
}
