//! What [`super`] answers.

use serde::Serialize;
use uom::si::ratio::{percent, ratio};
use utoipa::ToSchema;

use super::job::Job;
use super::sight::Sighting;
use crate::calculation::input::{DetectorEcho, LeadInEcho, OpeningEcho, SlotEcho, WireEcho};
use crate::calculation::loop_characteristics::LoopElectrical;
use crate::calculation::report::{Assumed, Basis, Caution, Finding};
use crate::calculation::vehicle_response::{BlindStrip, SeenHeight};
use crate::quantity::output::{DetailLength, InductancePerLengthValue, PlanLength, round};
use crate::vocabulary::Vocabulary;

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
    /// Vehicles that another device sees.
    pub seen_by_other_devices: Vec<&'static str>,
    /// The change that the unit is set to switch at, percent, 3 decimals.
    pub threshold_percent: f64,
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
    /// What lies over the top wire: sealant, pavement or sand.
    pub cover: DetailLength,
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
    /// How many such loops lie side by side; 1 as a rule. All figures are for each.
    pub count: usize,
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
    /// How high above the pavement metal is seen.
    pub seen_height: SeenHeight,
    /// The vehicles over it.
    pub vehicles: Vec<VehicleSighting>,
    /// How the loops of a row share the opening; absent for a single loop.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub side_by_side: Option<SideBySide>,
    /// Other sizes, and what each costs and gains.
    pub alternatives: Vec<Alternative>,
    /// The stock loop that serves; absent when no stock was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stock_choice: Option<StockChoice>,
}

/// A vehicle over the loop, or the row of loops, of a role.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct VehicleSighting {
    /// The class of the vehicle.
    pub vehicle: &'static str,
    /// The change at the unit's terminals with the vehicle's middle over the middle of a loop, percent, 3 decimals; for two-wheelers
    /// 0.3 m inside a side wire, or over the centre slot of a quadrupole; for a tractor and trailer under the trailer's floor.
    pub change_percent: f64,
    /// The least such change across the lane, percent, 3 decimals: over the gaps of a row, and hard against either edge where the
    /// loop holds a gate. The same as `change_percent` for two-wheelers.
    pub least_change_percent: f64,
    /// The change that the unit switches at, percent, 3 decimals.
    pub threshold_percent: f64,
    /// `change_percent` over the threshold, 2 decimals; a design wants 2 at least.
    pub times_threshold: f64,
    /// Whether `least_change_percent` reaches the threshold.
    pub detected: bool,
    /// Whether the unit lets go under the vehicle.
    pub drops_out: bool,
    /// Where across the lane a two-wheeler is not seen; absent for other vehicles.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub blind_strip: Option<BlindStrip>,
}

impl VehicleSighting {
    pub(super) fn of(sighting: &Sighting, job: &Job) -> Self {
        let threshold = job.threshold();
        Self {
            vehicle: sighting.class.code(),
            change_percent: round(sighting.change.get::<percent>(), 3),
            least_change_percent: round(sighting.least.get::<percent>(), 3),
            threshold_percent: round(threshold.get::<percent>(), 3),
            times_threshold: round((sighting.change / threshold).get::<ratio>(), 2),
            detected: sighting.least >= threshold,
            drops_out: sighting.drops_out,
            blind_strip: sighting.blind.as_ref().map(|blind| BlindStrip::of(blind, job.opening.width)),
        }
    }
}

/// Loops that share an opening side by side.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct SideBySide {
    /// Whole pavement between the nearest wires of neighbours.
    pub gap: PlanLength,
    /// The middles of the loops, as offsets from the middle of the opening, left to right.
    pub centres: Vec<PlanLength>,
    /// The winding senses, left to right: `clockwise` and `anticlockwise` in turn.
    pub wound: Vec<&'static str>,
    /// How to cut the shared gap, in a few sentences.
    pub saw_plan: String,
    /// What all loops on one channel would come to; take it only where it passes.
    pub one_channel: Vec<OneChannel>,
}

/// All loops of a row on one channel.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct OneChannel {
    /// `series` or `parallel`.
    pub wiring: &'static str,
    /// Inductance at the unit's terminals, µH, 2 decimals, of the group behind one lead-in; coupling between neighbours is left out.
    pub terminal_inductance_uh: f64,
    /// The change that the hardest vehicle over one of the loops makes, percent, 3 decimals.
    pub change_percent: f64,
    /// Whether the unit tunes to it and the change is twice the threshold.
    pub passes: bool,
}

/// Another size for the same role.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct Alternative {
    /// Which: `shorter`, `longer`, `window` for the narrow loop at a drive-through window, or `quadrupole`.
    pub alternative: &'static str,
    /// Its shape.
    pub shape: &'static str,
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
    /// The change of the height at which a flat underside is seen against the loop above; negative loses.
    pub seen_height_change: PlanLength,
    /// The vehicles over it.
    pub vehicles: Vec<VehicleSighting>,
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
