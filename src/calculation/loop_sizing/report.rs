//! What [`super`] answers. Parts of a loop's answer stand beside what computes them.

use serde::Serialize;
use uom::si::f64::{Length, Ratio};
use uom::si::ratio::percent;
use uom::si::time::second;
use utoipa::ToSchema;

use super::adjacent_lane::AdjacentLane;
use super::alternatives::Alternative;
use super::design;
use super::exit::ExitTimes;
use super::fixed_loop::ResolvedFixedLoop;
use super::lead_in::{LeadInAdvice, LoopLeadIn};
use super::leaf_clearance::is_watched_while_moving;
use super::resolved::ResolvedLoopSizing;
use super::side_by_side::SideBySide;
use super::solve::SolvedLoop;
use super::stock::StockChoice;
use super::vehicle_sighting::VehicleSighting;
use crate::calculation::input::{DetectorEcho, ResolvedLeadIn, ResolvedOpening, ResolvedSlot, ResolvedWire, Shape};
use crate::calculation::layout::{LeafChanges, LoopMark};
use crate::calculation::loop_characteristics::LoopElectrical;
use crate::calculation::report::{Assumed, Basis, Caution, Finding, has_messages};
use crate::calculation::summary::JobSummary;
use crate::calculation::vehicle_response::SeenHeight;
use crate::practice::materials::Corner;
use crate::practice::roles::{Role, Side};
use crate::practice::site::{Construction, SiteHazard, Surface};
use crate::practice::vehicles::VehicleClass;
use crate::quantity::output::{DetailLength, PlanLength, round};

/// Loops for an opening.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct LoopSizingReport {
    /// The same in a few lines.
    pub summary: JobSummary,
    /// What was understood of the request.
    pub inputs: LoopSizingInputs,
    /// The loops, one for each role but several in the sweep of a long leaf, in the order in which a vehicle that leaves meets them.
    pub loops: Vec<SizedLoop>,
    /// What to know and order about the lead-ins.
    pub lead_in: LeadInAdvice,
    /// The longest vehicle, as a plate of a car's width and height, that stands unseen between two loops that hold the gate, in the middle of
    /// the lane or at its edges; absent with fewer than two.
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

has_messages! {
    LoopSizingReport: summary, loops, lead_in, findings, assumed, cautions, basis;
    SizedLoop: lead_in, side_by_side, alternatives, stock_choice;
}

/// What was understood of a loop-sizing request.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct LoopSizingInputs {
    /// The opening.
    pub opening: ResolvedOpening,
    /// What the loops are for.
    #[schema(value_type = Vec<String>)]
    pub roles: Vec<Role>,
    /// The vehicles that must be seen.
    #[schema(value_type = Vec<String>)]
    pub vehicles: Vec<VehicleClass>,
    /// Vehicles that another device sees.
    #[schema(value_type = Vec<String>)]
    pub seen_by_other_devices: Vec<VehicleClass>,
    /// The change that the loops are designed for, percent, 3 decimals: the one that was sent, or the standard's class for high beds.
    pub threshold_percent: f64,
    /// What the loops lie in.
    #[schema(value_type = String)]
    pub surface: Surface,
    /// What stands in the way.
    #[schema(value_type = Vec<String>)]
    pub site_hazards: Vec<SiteHazard>,
    /// How the loops are made.
    #[schema(value_type = String)]
    pub construction: Construction,
    /// The lead-in.
    pub lead_in: ResolvedLeadIn,
    /// The wire.
    pub wire: ResolvedWire,
    /// The saw cut; absent where nothing is sawn.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slot: Option<ResolvedSlot>,
    /// What lies over the top wire: sealant, pavement or sand.
    pub cover: DetailLength,
    /// The detector unit.
    pub detector: DetectorEcho,
    /// What is decided already.
    pub fixed_loops: Vec<ResolvedFixedLoop>,
    /// How many stock loops were looked at.
    pub stock_items: usize,
}

impl LoopSizingInputs {
    /// `covers` are those of the loops, the thinnest first.
    pub(super) fn of(resolved: &ResolvedLoopSizing, covers: &[Length]) -> Self {
        let cover = covers.first().copied().unwrap_or(resolved.cover);
        Self {
            opening: resolved.opening.clone(),
            roles: resolved.roles.clone(),
            vehicles: resolved.vehicles.clone(),
            seen_by_other_devices: resolved.seen_elsewhere.clone(),
            threshold_percent: round(resolved.design_step().get::<percent>(), 3),
            surface: resolved.surface,
            site_hazards: resolved.hazards.clone(),
            construction: resolved.construction,
            lead_in: resolved.lead_in.clone(),
            wire: resolved.wire.clone(),
            slot: resolved.slot.clone().map(|slot| ResolvedSlot { cover, ..slot }),
            cover: cover.into(),
            detector: resolved.detector.echo(),
            fixed_loops: resolved.fixed_loops.clone(),
            stock_items: resolved.stock.as_ref().map_or(0, Vec::len),
        }
    }
}

/// One loop, ready to be cut and wound.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct SizedLoop {
    /// Its mark: a letter, in the order in which a vehicle that leaves meets the loops.
    #[schema(value_type = String)]
    pub mark: LoopMark,
    /// What it is for.
    #[schema(value_type = String)]
    pub role: Role,
    /// How it is made.
    #[schema(value_type = String)]
    pub construction: Construction,
    /// Its shape.
    #[schema(value_type = String)]
    pub shape: Shape,
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
    /// The clear strip at the edge of the opening; the narrower of two.
    pub edge_setback: PlanLength,
    /// The side of the barrier or reference that it lies on: `outside`, `inside` or `on_the_line`.
    #[schema(value_type = String)]
    pub side: Side,
    /// From the line of the closed barrier to the nearest wire; 0 for a loop that straddles the line. Absent without a barrier.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub distance_from_barrier: Option<PlanLength>,
    /// From the reference (window, post, stop line) to the nearest wire; 0 for a loop that straddles it. Absent with a barrier.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub distance_from_reference: Option<PlanLength>,
    /// The middle of the loop, or of the row of loops.
    pub position: LoopPosition,
    /// The unit that its channel belongs to, from 1. Loops of one unit couple; it scans them in turn, so that one is alive at a time.
    pub unit: usize,
    /// How deep to cut: turns and cover, rounded up to the next 1/4 in or 5 mm unless a depth was given. Absent where nothing is sawn.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slot_depth: Option<DetailLength>,
    /// How its corners are cut; a `code` of `reference/corners`. Absent where nothing is sawn.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>)]
    pub corner: Option<Corner>,
    /// How far the blade runs on past each end of a cut: that of the usual blade, or of the one that a plan is sent. Absent where nothing is sawn.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub run_out: Option<DetailLength>,
    /// Straight and diagonal saw cuts of the loop, without lead-in and overruns. Absent where nothing is sawn.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub saw_cut: Option<PlanLength>,
    /// The pair to its unit.
    pub lead_in: LoopLeadIn,
    /// The step that its channel is set to: the change that the unit switches at, percent, 3 decimals.
    pub threshold_percent: f64,
    /// What it will measure at 50 kHz and 20 °C.
    pub electrical: LoopElectrical,
    /// How high above the pavement metal is seen.
    pub seen_height: SeenHeight,
    /// The vehicles over it.
    pub vehicles: Vec<VehicleSighting>,
    /// What the metal leaf makes over it; absent without one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub leaf: Option<LeafOverLoop>,
    /// The vehicle in the next lane that it sees best; absent without traffic there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub adjacent_lane: Option<AdjacentLane>,
    /// How long a driver who leaves waits before the gate is open, seconds, 1 decimal; absent for other roles than `exit`, and unless
    /// speed of approach and opening time are known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wait_s: Option<f64>,
    /// How long the gate must stay open after a vehicle has left the exit loop, seconds, whole ones: one at walking pace then reaches what
    /// holds the gate. Absent for other roles than `exit`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub close_timer_min_s: Option<f64>,
    /// How the loops of a row share the opening; absent for a single loop.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub side_by_side: Option<SideBySide>,
    /// Other sizes, and what each costs and gains.
    pub alternatives: Vec<Alternative>,
    /// The stock loop that serves; absent when no stock was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stock_choice: Option<StockChoice>,
}

/// Where the middle of a loop lies.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct LoopPosition {
    /// From the line of the closed barrier or the reference, the inside positive.
    pub along: PlanLength,
    /// From the middle of the opening, to the right as one drives in.
    pub across: PlanLength,
}

/// What a metal leaf makes over a loop, percent of its inductance at the unit's terminals, 3 decimals.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct LeafOverLoop {
    /// While it is closed.
    pub closed_percent: f64,
    /// While it stands open.
    pub open_percent: f64,
    /// While it moves, at the most; absent for `between_leaves`, whose input is watched only while the leaves stand.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub moving_percent: Option<f64>,
}

impl LeafOverLoop {
    fn of(changes: &LeafChanges, role: Role) -> Self {
        let percents = |change: Ratio| round(change.get::<percent>(), 3);
        Self {
            closed_percent: percents(changes.closed),
            open_percent: percents(changes.open),
            moving_percent: is_watched_while_moving(role).then(|| percents(changes.moving)),
        }
    }
}

/// What was judged of a loop beside its own figures.
pub(super) struct LoopSurroundings {
    /// What the leaf makes over it.
    pub leaf: Option<LeafChanges>,
    /// What traffic in the next lane makes over it.
    pub adjacent_lane: Option<AdjacentLane>,
    /// The times of an exit loop.
    pub exit: Option<ExitTimes>,
    /// What the caller's stock has.
    pub stock_choice: Option<StockChoice>,
}

impl SizedLoop {
    pub(super) fn of(
        solved: &SolvedLoop<'_, '_>,
        surroundings: LoopSurroundings,
        resolved: &ResolvedLoopSizing,
    ) -> Self {
        let SolvedLoop { laid, found, details, .. } = solved;
        let (coil, chosen, seen) = (&laid.coil, &found.chosen, &details.seen);
        let LoopSurroundings { leaf, adjacent_lane, exit, stock_choice } = surroundings;
        let distance = laid.place.distance().into();
        let has_barrier = resolved.opening.barrier.is_present();
        Self {
            mark: laid.mark,
            role: laid.role,
            construction: laid.construction,
            shape: coil.shape,
            count: laid.count(),
            along_travel: coil.along_travel.into(),
            across_lane: coil.across_lane.into(),
            turns: coil.turns,
            corner_cut: coil.corner_cut.into(),
            edge_setback: laid.edge_setback().into(),
            side: laid.place.side,
            distance_from_barrier: has_barrier.then_some(distance),
            distance_from_reference: (!has_barrier).then_some(distance),
            position: LoopPosition { along: laid.place.middle().into(), across: laid.lane.middle().into() },
            unit: laid.unit,
            slot_depth: design::slot_depth(coil, resolved).map(Into::into),
            corner: resolved.slot.as_ref().map(|_| Corner::usual_for(coil.corner_cut)),
            run_out: design::run_out(coil, resolved).map(Into::into),
            saw_cut: design::saw_cut(coil, resolved).map(Into::into),
            lead_in: LoopLeadIn::of(laid, &resolved.opening),
            threshold_percent: round(laid.step.get::<percent>(), 3),
            electrical: (&laid.electrical).into(),
            seen_height: SeenHeight::of(&chosen.field, seen.seen_height),
            vehicles: chosen.vehicles(seen),
            leaf: leaf.map(|changes| LeafOverLoop::of(&changes, laid.role)),
            adjacent_lane,
            wait_s: exit.and_then(|times| times.wait).map(|wait| round(wait.get::<second>(), 1)),
            close_timer_min_s: exit.map(|times| times.close_timer_seconds()),
            side_by_side: SideBySide::of(laid, &chosen.sightings, resolved),
            alternatives: details
                .alternatives
                .iter()
                .map(|other| Alternative::of(other, (chosen, seen), resolved))
                .collect(),
            stock_choice,
        }
    }
}
