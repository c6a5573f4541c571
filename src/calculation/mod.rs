//! The questions that the service answers, a room each.
//!
//! A calculation is one trait on its request type. To add a question: a new room beside the others, and one line in
//! [`visit_all`]. Later rooms may call earlier ones, in the order of that list.
//!
//! - [`input`]: the nouns of requests (loop, lead-in, opening, ...) and their way to typed quantities.
//! - [`report`]: the common parts of reports, and refusals.
//! - [`loop_characteristics`]: what a loop measures.
//! - [`vehicle_response`]: which vehicles a loop sees.
//! - [`loop_sizing`]: which loops an opening needs.
//! - [`detector_compatibility`]: whether a detector unit tunes to loops.
//! - [`material_estimate`]: what to load on the van, how long it takes and what it costs.
//! - [`cure_guidance`]: whether to seal today, and when traffic may return.
//! - [`installation_plan`]: one call for the whole job.
//! - [`fault_finding`]: what has failed, and what to test next.

pub mod cure_guidance;
pub mod detector_compatibility;
pub mod fault_finding;
pub mod input;
pub mod installation_plan;
pub mod loop_characteristics;
pub mod loop_sizing;
pub mod material_estimate;
pub mod report;
pub mod vehicle_response;

use serde::Serialize;
use serde::de::DeserializeOwned;
use utoipa::ToSchema;
use validator::Validate;

use input::Weather;
use installation_plan::Illustrator;
use report::{Diagnostics, InvalidRequest};

/// A request and its exact answer, as published under `openapi/examples`.
pub struct Example {
    /// The name of the example in the description.
    pub name: &'static str,
    /// What it shows, in a phrase.
    pub summary: &'static str,
    /// The request, JSON text.
    pub request: &'static str,
    /// The answer, JSON text.
    pub answer: &'static str,
}

/// One question: a request that can be answered by a pure function of itself.
pub trait Calculation: DeserializeOwned + Validate + ToSchema + 'static {
    /// The answer.
    type Report: Serialize + ToSchema + 'static;
    /// The last part of the path, and the name of the room: `loop-sizing`.
    const NAME: &'static str;
    /// The name of the operation in generated clients: `size_loops`.
    const OPERATION_ID: &'static str;
    /// The question in a phrase.
    const SUMMARY: &'static str;
    /// What goes in, what comes out, and what to know about it.
    const DESCRIPTION: &'static str;
    /// How many times the usual limit a body may be large on this path.
    const BODY_SHARE: usize = 1;
    /// Room for the text of a report to begin with, bytes: most are written without being moved as they grow.
    const REPORT_CAPACITY: usize = 24 * 1024;
    /// Requests with their exact answers, at least one.
    const EXAMPLES: &'static [Example];

    /// Adds the drawings that the request asks for. Most reports have none.
    fn illustrate(&self, _report: &mut Self::Report, _illustrator: &dyn Illustrator) {}

    /// Answers the question. Reads no clock, waits for nothing, keeps nothing.
    ///
    /// # Errors
    /// A [`InvalidRequest`] that names every field that is wrong. A sound request that has no good answer is a report with a `stop`.
    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest>;

    /// The weather of the request, where it has one: the edge puts a forecast in the stead of its `location`, for a calculation
    /// waits for nothing. A request that has [`input::Weather`] says where.
    fn weather_mut(&mut self) -> Option<&mut Weather> {
        None
    }

    /// Checks counts and list sizes, then answers; all faults come together.
    ///
    /// # Errors
    /// As [`Calculation::calculate`].
    fn answer(&self) -> Result<Self::Report, InvalidRequest> {
        self.answer_with(Diagnostics::default())
    }

    /// Answers with what was noted before, as while a forecast was fetched.
    ///
    /// # Errors
    /// As [`Calculation::calculate`], the faults that were noted before among them.
    fn answer_with(&self, mut diagnostics: Diagnostics) -> Result<Self::Report, InvalidRequest> {
        if let Err(errors) = self.validate() {
            diagnostics.add_validation(&errors);
        }
        self.calculate(&mut diagnostics)
    }
}

/// Computes what every request needs and none should wait for.
pub fn prepare() {
    vehicle_response::prepare();
}

/// Something to be done for each calculation: a route, an operation, a test.
pub trait Visitor {
    /// Called once for each calculation, in order.
    fn visit<C: Calculation>(&mut self);
}

/// The list of all calculations.
pub fn visit_all(visitor: &mut impl Visitor) {
    visitor.visit::<loop_characteristics::LoopCharacteristicsRequest>();
    visitor.visit::<vehicle_response::VehicleResponseRequest>();
    visitor.visit::<loop_sizing::LoopSizingRequest>();
    visitor.visit::<detector_compatibility::DetectorCompatibilityRequest>();
    visitor.visit::<material_estimate::MaterialEstimateRequest>();
    visitor.visit::<cure_guidance::CureGuidanceRequest>();
    visitor.visit::<installation_plan::InstallationPlanRequest>();
    visitor.visit::<fault_finding::FaultFindingRequest>();
}
