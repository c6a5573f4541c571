//! The loop for a role: its legs, its turns, and what it measures.

use uom::si::f64::Length;
use uom::si::inductance::microhenry;
use uom::si::length::meter;

use super::resolved::ResolvedLoopSizing;
use crate::calculation::input::{CutLevels, CutPlace, ResolvedLeadIn, ResolvedLoop, Shape};
use crate::calculation::loop_characteristics::{ElectricalFigures, MeasurementConditions, measure};
use crate::physics::saw;
use crate::practice::detectors::{LOOP_TO_LEAD_IN, LOW_END_MARGIN, MAX_TURNS};
use crate::practice::layout::{MIN_ACROSS, MIN_EDGE_SETBACK, STEP, usual_corner_cut};
use crate::practice::materials::USUAL_BLADE;
use crate::practice::roles::Role;
use crate::practice::wires;
use crate::quantity::{dimension, parse};

/// A loop for a role, with its figures.
#[derive(Clone)]
pub struct GradedLoop {
    /// The loop.
    pub coil: ResolvedLoop,
    /// What it measures.
    pub electrical: ElectricalFigures,
    /// What the choice of turns satisfies.
    pub grade: LoopGrade,
}

/// How well a turn count serves; the order is the order of preference.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum LoopGrade {
    /// The unit tunes to it wherever in the band it falls, the turns fit the slot, the loop is twice its lead-in, and the low end of the
    /// band keeps its margin.
    Right,
    /// The same, but the low end of the band lies near the least that the unit tunes to.
    NearLeast,
    /// The low end keeps its margin, but the loop has less than twice its lead-in's inductance, though no less than the lead-in.
    LeadInHeavy,
    /// The unit tunes to it and the turns fit, but the lead-in outweighs the loop.
    LeadInOutweighs,
    /// The unit tunes to it, but in the slot that was sent it has less cover than should be, or it needs a deeper one than usual.
    TightSlot,
    /// The unit tunes to it, but the turns do not fit the slot.
    TooDeep,
    /// The band leaves what the unit tunes to.
    Untunable,
}

/// What a loop is designed for.
#[derive(Clone, Copy)]
pub struct DesignBrief<'a> {
    /// The job.
    pub job: &'a ResolvedLoopSizing,
    /// The pair to the unit, as long as the place of the loop needs.
    pub lead_in: &'a ResolvedLeadIn,
    /// Under what conditions loops are measured.
    pub conditions: &'a MeasurementConditions,
}

/// The leg along travel that the search for a role starts with.
pub fn first_leg(role: Role, job: &ResolvedLoopSizing) -> Length {
    role.usual_leg(job.only_low_vehicles()).in_system(job.system())
}

/// The clear strips at the edges of the opening, left and right as one drives in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EdgeSetbacks {
    /// At the left edge.
    pub left: Length,
    /// At the right edge.
    pub right: Length,
}

impl EdgeSetbacks {
    /// The strip asked for, or the usual one, at both edges.
    pub fn usual(job: &ResolvedLoopSizing) -> Self {
        let setback = job.edge_setback();
        Self { left: setback, right: setback }
    }

    /// The wider of each.
    #[must_use]
    pub fn wider(self, other: Self) -> Self {
        Self { left: self.left.max(other.left), right: self.right.max(other.right) }
    }

    /// The leg across that they leave, tidy, and the middle of it as an offset from that of the opening; a narrow opening gives up setback
    /// first, where none was asked for.
    pub fn span(self, job: &ResolvedLoopSizing) -> (Length, Length) {
        let (system, width) = (job.system(), job.opening.width);
        let across = width - self.left - self.right;
        let least = MIN_ACROSS.in_system(system);
        let middle = (self.left - self.right) / 2.0;
        if job.opening.edge_setback.is_some() || across >= least {
            return (tidy_leg(across, job), middle);
        }
        // A strip that is wider than the other keeps off a leaf, and stays.
        let usual = Self::usual(job);
        let give = |setback: Length, usual: Length| {
            if setback > usual { setback } else { setback.min(MIN_EDGE_SETBACK.in_system(system)) }
        };
        let (left, right) = (give(self.left, usual.left), give(self.right, usual.right));
        let across = tidy_leg(least.min(width - left - right), job);
        let spare = width - left - right - across;
        // What is left over goes to the strip that gave way; to both alike where both did.
        let middle = match (self.left > usual.left, self.right > usual.right) {
            (true, false) => (left - right - spare) / 2.0,
            (false, true) => (left - right + spare) / 2.0,
            _ => (left - right) / 2.0,
        };
        (across, middle)
    }
}

fn tidy_leg(across: Length, job: &ResolvedLoopSizing) -> Length {
    let system = job.system();
    STEP.floor(across, system).max(STEP.in_system(system))
}

/// How many turns more than the fewest are tried: with still more, the lead-in takes little anyway.
pub const MORE_TURNS: u32 = 2;

/// Designs a loop with these legs: the fewest turns that serve best electrically.
pub fn design(along_travel: Length, across_lane: Length, shape: Shape, brief: DesignBrief<'_>) -> GradedLoop {
    let job = brief.job;
    let candidate = |turns| GradedLoop::new(coil(along_travel, across_lane, shape, turns, job), brief);
    let mut best = candidate(1);
    for turns in 2..=MAX_TURNS {
        if best.grade == LoopGrade::Right {
            break;
        }
        let next = candidate(turns);
        // Above the band, more turns only lead farther away.
        let inductance_is_low =
            best.electrical.as_built_high.get::<microhenry>() < job.detector.limits.inductance_max_uh;
        if next.grade < best.grade
            || (next.grade == LoopGrade::Untunable && best.grade == next.grade && inductance_is_low)
        {
            best = next;
        }
    }
    best
}

/// The same loop with other turns.
pub fn with_turns(design: &GradedLoop, turns: u32, brief: DesignBrief<'_>) -> GradedLoop {
    GradedLoop::new(ResolvedLoop { turns, ..design.coil.clone() }, brief)
}

impl GradedLoop {
    /// A loop with its figures.
    pub fn new(coil: ResolvedLoop, brief: DesignBrief<'_>) -> Self {
        let stack = coil.height_in_slot(brief.job.construction);
        let cover = brief.job.slot.as_ref().map_or(brief.job.cover, |slot| slot.cover_over(stack));
        let coil = ResolvedLoop { cover, ..coil };
        let conditions = MeasurementConditions { steel_below: brief.job.steel_below(&coil), ..*brief.conditions };
        brief.job.budget.count(coil.measure_steps());
        let electrical = measure(&coil, brief.lead_in, &conditions);
        let grade = grade(&coil, &electrical, brief.job);
        Self { coil, electrical, grade }
    }
}

/// A loop of the job's wire, its corners cut as the construction asks.
pub fn coil(
    along_travel: Length,
    across_lane: Length,
    shape: Shape,
    turns: u32,
    job: &ResolvedLoopSizing,
) -> ResolvedLoop {
    let short = along_travel.min(across_lane);
    ResolvedLoop {
        shape,
        along_travel,
        across_lane,
        turns,
        corner_cut: if job.has_square_corners {
            Length::default()
        } else {
            usual_corner_cut(job.construction, short, job.system())
        },
        cover: job.cover,
        wire: job.wire.clone(),
        system: job.system(),
    }
}

fn grade(coil: &ResolvedLoop, electrical: &ElectricalFigures, job: &ResolvedLoopSizing) -> LoopGrade {
    let limits = &job.detector.limits;
    let low = electrical.as_built_low.get::<microhenry>();
    let tunes = low >= limits.inductance_min_uh
        && electrical.as_built_high.get::<microhenry>() <= limits.inductance_max_uh
        && electrical.quality_factor >= limits.quality_factor_min;
    let levels = slot_levels(coil, job);
    if !tunes {
        LoopGrade::Untunable
    } else if levels.is_some_and(|levels| levels.is_too_shallow()) {
        LoopGrade::TooDeep
    } else if levels.is_some_and(|levels| levels.is_thin() || is_deeper_than_usual(levels.depth, job)) {
        LoopGrade::TightSlot
    } else if electrical.loop_inductance >= LOOP_TO_LEAD_IN * electrical.lead_in_inductance {
        if low >= LOW_END_MARGIN * limits.inductance_min_uh { LoopGrade::Right } else { LoopGrade::NearLeast }
    } else if electrical.loop_inductance >= electrical.lead_in_inductance {
        LoopGrade::LeadInHeavy
    } else {
        LoopGrade::LeadInOutweighs
    }
}

/// Turns and cover in the slot; `None` where nothing is sawn.
pub fn slot_levels(coil: &ResolvedLoop, job: &ResolvedLoopSizing) -> Option<CutLevels> {
    let stack = coil.height_in_slot(job.construction);
    Some(job.slot.as_ref()?.levels(CutPlace::Loop, stack, job.system()))
}

/// Whether a slot of ours is deeper than the sizing takes more turns for.
fn is_deeper_than_usual(depth: Length, job: &ResolvedLoopSizing) -> bool {
    let deepest = parse::<dimension::Length>(wires::DEEPEST_SLOT).map_or(depth, |deepest| deepest.si);
    depth > deepest && job.slot.as_ref().is_some_and(|slot| !slot.depth_is_fixed)
}

/// The depth to cut; `None` where nothing is sawn.
pub fn slot_depth(coil: &ResolvedLoop, job: &ResolvedLoopSizing) -> Option<Length> {
    slot_levels(coil, job).map(|levels| levels.depth)
}

/// How far the usual blade runs on past an end of its cut; `None` where nothing is sawn.
pub fn run_out(coil: &ResolvedLoop, job: &ResolvedLoopSizing) -> Option<Length> {
    let (depth, blade) = (slot_depth(coil, job)?, parse::<dimension::Length>(USUAL_BLADE).ok()?.si);
    Some(Length::new::<meter>(saw::run_out(depth.get::<meter>(), blade.get::<meter>())))
}

/// The saw cut of a loop; `None` where nothing is sawn. Sides end at the diagonals, unless the square is cut full first.
pub fn saw_cut(coil: &ResolvedLoop, job: &ResolvedLoopSizing) -> Option<Length> {
    let winding = coil.winding();
    let spared = if job.cuts_square_full { 0.0 } else { winding.spared_cut() };
    job.slot.as_ref().map(|_| Length::new::<meter>(winding.straight_cut() - spared + winding.diagonal_cut()))
}
