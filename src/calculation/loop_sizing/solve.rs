//! From a resolved request to the layout: search, steps, places, and lead-ins as long as the places need.

use uom::si::f64::Length;

use super::leaf_clearance::LeafClearance;
use super::placement;
use super::resolved::ResolvedLoopSizing;
use super::selection::{FoundDetails, FoundLoop, LoopSelections};
use super::stock::StockMatch;
use crate::calculation::input::ResolvedLeadIn;
use crate::calculation::layout::{JobLayout, LaidLoop, LoopMark, LoopPlacement};
use crate::calculation::loop_characteristics::MeasurementConditions;
use crate::practice::layout::{STEP, WAY_TO_UNIT};
use crate::practice::roles::Role;

/// How often places and lead-ins are decided anew: a longer lead-in may ask for another loop, which moves those beyond it.
const MAX_ROUNDS: usize = 3;

/// The answer of the sizing before it is reported.
pub struct LoopSizing<'a> {
    /// The loops that are laid.
    pub layout: JobLayout,
    /// The loops that were found.
    pub selections: LoopSelections<'a>,
    /// What follows from their steps.
    pub details: Vec<FoundDetails>,
    /// For each loop of the layout, the index of what was found for it.
    pub found_at: Vec<usize>,
    /// How far loops lie from a metal leaf; `None` without one.
    pub leaf_clearance: Option<LeafClearance>,
}

impl LoopSizing<'_> {
    /// The loops of the layout, each with what was found for it.
    pub fn loops(&self) -> impl Iterator<Item = (&LaidLoop, &FoundLoop<'_>, &FoundDetails)> {
        let found = self.found_at.iter().map(|index| (&self.selections.found[*index], &self.details[*index]));
        self.layout.loops.iter().zip(found).map(|(laid, (found, details))| (laid, found, details))
    }
}

/// Decides loops, steps, places and lead-ins.
pub fn solve<'a>(job: &'a ResolvedLoopSizing, conditions: &'a MeasurementConditions) -> LoopSizing<'a> {
    let mut lead_ins = vec![job.lead_in.clone(); job.roles.len()];
    let (mut rounds, mut before) = (1, Vec::new());
    let (selections, leaf_clearance, places) = loop {
        let selections = LoopSelections::new(job, conditions, &lead_ins, before);
        let legs: Vec<_> =
            selections.iter().map(|(role, found)| (role, found.chosen.design.coil.along_travel)).collect();
        let leaf_clearance = LeafClearance::compute(job, &selections);
        let places = placement::place(job, &legs, leaf_clearance.as_ref().map(|clearance| clearance.distance));
        // A lead-in only grows from round to round: a shorter one could bring back the loop that asked for the longer one.
        let grown = places.iter().zip(&lead_ins).map(|(place, known)| {
            let needed = lead_in_for(place, job);
            if needed.length > known.length { needed } else { known.clone() }
        });
        let needed: Vec<_> = grown.collect();
        let is_settled = needed.iter().zip(&lead_ins).all(|(needed, known)| needed.length == known.length);
        if is_settled || rounds == MAX_ROUNDS {
            break (selections, leaf_clearance, places);
        }
        (lead_ins, before) = (needed, selections.found);
        rounds += 1;
    };
    let details = selections.details(job);
    let mut order: Vec<_> = places.into_iter().zip(&selections.roles).collect();
    // A vehicle that leaves meets the innermost first.
    order.sort_by(|(a, _), (b, _)| b.middle().value.total_cmp(&a.middle().value));
    let found_at = order.iter().map(|(_, (_, index))| *index).collect();
    let lay = |(order, (place, (role, found))): (usize, (LoopPlacement, &(Role, usize)))| {
        laid_loop(LoopMark::at(order), *role, place, &selections.found[*found], job)
    };
    let layout = JobLayout { loops: order.into_iter().enumerate().map(lay).collect() };
    LoopSizing { layout, selections, details, found_at, leaf_clearance }
}

fn laid_loop(
    mark: LoopMark,
    role: Role,
    place: LoopPlacement,
    found: &FoundLoop<'_>,
    job: &ResolvedLoopSizing,
) -> LaidLoop {
    let candidate = &found.chosen;
    LaidLoop {
        mark,
        role,
        coil: candidate.design.coil.clone(),
        construction: job.construction,
        stock: found.stock.as_ref().and_then(StockMatch::taken).cloned(),
        lead_in: found.search.lead_in.clone(),
        lane: candidate.lane.clone(),
        place,
        electrical: candidate.design.electrical,
        step: found.step,
        sightings: found.sightings(),
    }
}

/// The lead-in of a loop at a place: the one that was sent, or, where the loop lies farther from the gate than that reaches, one as
/// long as the way to the gate and to the unit beside it. A lead-in of no length asks about loops at their own tails.
fn lead_in_for(place: &LoopPlacement, job: &ResolvedLoopSizing) -> ResolvedLeadIn {
    let (system, sent) = (job.system(), job.lead_in.length);
    if sent == Length::default() || place.distance() <= sent {
        return job.lead_in.clone();
    }
    let length = STEP.ceil(place.distance() + WAY_TO_UNIT.in_system(system), system);
    // Where the parts were sent, the longer way is conduit.
    let in_conduit = job.lead_in.in_conduit.map(|conduit| conduit + length - sent);
    ResolvedLeadIn { length, in_conduit, ..job.lead_in.clone() }
}
