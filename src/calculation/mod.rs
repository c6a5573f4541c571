//! The questions that the service answers, a module each.
//!
//! A calculation is one trait on its request type. To add a question: a new module beside the others, and one line in
//! [`visit_all`]. Later modules may call earlier ones, in the order of that list.
//!
//! - [`input`]: the nouns of requests (loop, lead-in, opening, ...) and their way to typed quantities.
//! - [`layout`]: the typed job that the parts of a plan share.
//! - [`report`]: the common parts of reports, and refusals.
//! - [`summary`]: a job in a few lines.
//! - [`loop_characteristics`]: what a loop measures.
//! - [`vehicle_response`]: which vehicles a loop sees.
//! - [`loop_sizing`]: which loops an opening needs.
//! - [`detector_compatibility`]: whether a detector unit tunes to loops.
//! - [`material_estimate`]: what to load on the van, how long it takes and what it costs.
//! - [`cure_guidance`]: whether to seal today, and when traffic may return.
//! - [`installation_plan`]: one call for the whole job.
//! - [`fault_finding`]: what has failed, and what to test next.
//! - [`existing_loop`]: what a loop in the ground is, and whether to keep it.

pub mod budget;
pub mod cost;
pub mod cure_guidance;
pub mod detector_compatibility;
mod example;
pub mod existing_loop;
pub mod fault_finding;
pub mod input;
pub mod installation_plan;
pub mod layout;
pub mod loop_characteristics;
pub mod loop_sizing;
pub mod material_estimate;
pub mod report;
pub mod summary;
mod traits;
pub mod vehicle_response;

pub use example::Example;
pub use traits::{Calculation, CalculationVisitor};

/// Computes what every request needs, before the first one waits for it.
pub fn prepare() {
    vehicle_response::prepare();
}

/// The list of all calculations.
pub fn visit_all(visitor: &mut impl CalculationVisitor) {
    visitor.visit::<loop_characteristics::LoopCharacteristicsRequest>();
    visitor.visit::<vehicle_response::VehicleResponseRequest>();
    visitor.visit::<loop_sizing::LoopSizingRequest>();
    visitor.visit::<detector_compatibility::DetectorCompatibilityRequest>();
    visitor.visit::<material_estimate::MaterialEstimateRequest>();
    visitor.visit::<cure_guidance::CureGuidanceRequest>();
    visitor.visit::<installation_plan::InstallationPlanRequest>();
    visitor.visit::<fault_finding::FaultFindingRequest>();
    visitor.visit::<existing_loop::ExistingLoopRequest>();
}
