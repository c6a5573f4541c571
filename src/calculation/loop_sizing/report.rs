//! What [`super`] answers.

use serde::Serialize;
use utoipa::ToSchema;

use crate::calculation::answer::{Assumed, Basis, Caution, Finding};
use crate::calculation::loop_characteristics::LoopElectrical;
use crate::calculation::subject::{DetectorEcho, LeadInEcho, OpeningEcho, SlotEcho, WireEcho};
use crate::quantity::shown::{DetailLength, InductancePerLengthValue, PlanLength};

/// Loops for an opening.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct LoopSizingReport {
    /// What was understood of the request.
    pub inputs: LoopSizingInputs,
    /// The loops, one for each role.
    pub loops: Vec<SizedLoop>,
    /// What to know and order about the lead-ins.
    pub lead_in: LeadInAdvice,
    /// The longest stretch between loops that hold the gate in which a vehicle stands unseen; absent with fewer than two.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unseen_stretch: Option<PlanLength>,
    /// Statements about the job, the gravest first.
    pub findings: Vec<Finding>,
    /// Defaults that stood in for fields that were not sent.
    pub assumed: Vec<Assumed>,
    /// Fields that were sent and are not needed here, as JSON Pointers.
    pub unused: Vec<String>,
    /// What can hurt someone on this job.
    pub cautions: Vec<Caution>,
    /// What the figures rest on.
    pub basis: Basis,
}

/// What was understood of a loop-sizing request.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct LoopSizingInputs {
    /// The opening.
    pub opening: OpeningEcho,
    /// What the loops are for.
    pub roles: Vec<&'static str>,
    /// The vehicles that must be seen.
    pub vehicles: Vec<&'static str>,
    /// What the loops lie in.
    pub surface: &'static str,
    /// What stands in the way.
    pub site_hazards: Vec<&'static str>,
    /// How the loops are made.
    pub construction: &'static str,
    /// The lead-in.
    pub lead_in: LeadInEcho,
    /// The wire.
    pub wire: WireEcho,
    /// The saw cut; absent where nothing is sawn.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slot: Option<SlotEcho>,
    /// The detector unit.
    pub detector: DetectorEcho,
    /// How many stock loops were looked at.
    pub stock_items: usize,
}

/// One loop, ready to be cut and wound.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct SizedLoop {
    /// What it is for.
    pub role: &'static str,
    /// How it is made.
    pub construction: &'static str,
    /// Its shape.
    pub shape: &'static str,
    /// The leg in the direction of driving.
    pub along_travel: PlanLength,
    /// The leg across the lane.
    pub across_lane: PlanLength,
    /// Turns.
    pub turns: u32,
    /// The leg of the diagonal cut at each corner; 0 for square corners.
    pub corner_cut: DetailLength,
    /// The clear strip at each edge of the opening.
    pub edge_setback: PlanLength,
    /// The side of the barrier or reference that it lies on: `outside`, `inside` or `on_the_line`.
    pub side: &'static str,
    /// From the line of the closed barrier to the nearest wire; 0 for a loop that straddles the line. Absent without a barrier.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub distance_from_barrier: Option<PlanLength>,
    /// From the reference (window, post, stop line) to the nearest wire; 0 for a loop that straddles it. Absent with a barrier.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub distance_from_reference: Option<PlanLength>,
    /// How deep to cut: turns and cover, rounded up to the next 1/4 in or 5 mm unless a depth was given. Absent where nothing is sawn.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slot_depth: Option<DetailLength>,
    /// Straight and diagonal saw cuts of the loop, without lead-in and overruns. Absent where nothing is sawn.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub saw_cut: Option<PlanLength>,
    /// What it will measure at 50 kHz and 20 °C.
    pub electrical: LoopElectrical,
    /// How high above the pavement metal is commonly said to be seen.
    pub seen_height: SeenHeight,
    /// Other sizes, and what each costs and gains.
    pub alternatives: Vec<Alternative>,
    /// The stock loop that serves; absent when no stock was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stock_choice: Option<StockChoice>,
}

/// A height at which metal is seen, and how it is known.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct SeenHeight {
    /// Two thirds of the short leg: a rule of thumb.
    pub rule_of_thumb: PlanLength,
}

/// Another size for the same role.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct Alternative {
    /// Which: `shorter`, `longer`, or `window` for the narrow loop at a drive-through window.
    pub alternative: &'static str,
    /// The leg in the direction of driving.
    pub along_travel: PlanLength,
    /// The leg across the lane.
    pub across_lane: PlanLength,
    /// Turns.
    pub turns: u32,
    /// Inductance at the unit's terminals, µH, 2 decimals.
    pub terminal_inductance_uh: f64,
    /// The change of the saw cut against the loop above; negative saves. Absent where nothing is sawn.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub saw_cut_change: Option<PlanLength>,
    /// The change of the wire in the loop against the loop above; negative saves.
    pub wire_change: PlanLength,
    /// The change of the height by the rule of thumb against the loop above; negative loses.
    pub seen_height_change: PlanLength,
    /// What it costs and gains, in a sentence.
    pub message: String,
}

/// The loop to take from the caller's stock.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct StockChoice {
    /// The caller's number of the loop that serves; absent when none does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sku: Option<String>,
    /// Why this one, or why none and what to order.
    pub why: String,
}

/// What to know and order about the lead-ins.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct LeadInAdvice {
    /// The length of pair to order for each loop: length and spare.
    pub order_length: PlanLength,
    /// How the pair comes: `twisted_on_site` or `jacketed`.
    pub pair: &'static str,
    /// Inductance of the two loop wires twisted, from their geometry.
    pub twisted: InductancePerLengthValue,
    /// Inductance of the same wires lying loose, 1/2 in apart, from their geometry.
    pub untwisted: InductancePerLengthValue,
    /// What to do, in a sentence or two.
    pub message: String,
}
