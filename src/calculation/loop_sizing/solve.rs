//! From a resolved request to the layout. Loops, steps, places and lead-ins hang on one another, so they are settled in rounds.

use uom::si::f64::Length;

use super::design::EdgeSetbacks;
use super::leaf_clearance::{clear_of_closed_leaf, setbacks_beside_open_leaf};
use super::placement::{LoopToPlace, Placing};
use super::resolved::ResolvedLoopSizing;
use super::scanning::{LayoutCouplings, assign_units};
use super::selection::{FoundDetails, FoundLoop, LoopSelections, RoleAsk, RoleChoice};
use super::stock::StockMatch;
use super::unseen::{HoldingLoop, UnseenReach, longest_stretch};
use crate::calculation::budget::Search;
use crate::calculation::input::ResolvedLeadIn;
use crate::calculation::layout::{JobLayout, LaidLoop, LeadInWay, Leaf, LoopMark, LoopPlacement, StepLadder, lay_ways};
use crate::calculation::loop_characteristics::MeasurementConditions;
use crate::practice::layout::{STEP, WAY_TO_UNIT};
use crate::practice::vehicles::VehicleClass;

/// How often loops, steps, places and lead-ins are decided anew at most. From round to round steps get finer, lead-ins longer and strips
/// beside a leaf wider.
const MAX_ROUNDS: usize = 48;

/// How many more rounds settle a layout whose search has no steps left.
const MAX_CLOSING_ROUNDS: usize = 3;

/// The answer of the sizing before it is reported.
pub struct LoopSizing<'a> {
    /// The loops that are laid.
    pub layout: JobLayout,
    /// The loops that were found.
    pub selections: LoopSelections<'a>,
    /// What follows from their steps.
    pub details: Vec<FoundDetails>,
    /// The metal leaf; `None` without one.
    pub leaf: Option<Leaf>,
    /// The longest plate of a car that stands unseen between two loops that hold the gate; `None` with fewer than two.
    pub unseen_stretch: Option<Length>,
    /// How the loops couple, as far as it was asked.
    pub couplings: LayoutCouplings,
    /// For each loop of the layout, the role's choice, and the index of its details.
    laid_for: Vec<(usize, usize)>,
}

/// A loop of the layout with what was found for it.
pub struct SolvedLoop<'s, 'a> {
    /// The loop.
    pub laid: &'s LaidLoop,
    /// The choice of its role.
    pub choice: &'s RoleChoice,
    /// What the search found.
    pub found: &'s FoundLoop<'a>,
    /// What follows from its step.
    pub details: &'s FoundDetails,
}

impl<'a> LoopSizing<'a> {
    /// The loops of the layout, each with what was found for it.
    pub fn loops<'s>(&'s self) -> impl Iterator<Item = SolvedLoop<'s, 'a>> {
        self.layout.loops.iter().zip(&self.laid_for).map(|(laid, (choice, details))| {
            let choice = &self.selections.choices[*choice];
            SolvedLoop { laid, choice, found: &self.selections.found[choice.found], details: &self.details[*details] }
        })
    }
}

/// Decides loops, steps, places and lead-ins.
pub fn solve<'a>(job: &'a ResolvedLoopSizing, conditions: &'a MeasurementConditions) -> LoopSizing<'a> {
    let (ladder, leaf) = (StepLadder::of(&job.detector), Leaf::of(&job.opening, &job.budget));
    let usual = EdgeSetbacks::usual(job);
    let ask = |role: &_| RoleAsk { role: *role, lead_in: job.lead_in.clone(), setbacks: usual, in_sweep: 1, rung: 0 };
    let mut asks: Vec<_> = job.roles.iter().map(ask).collect();
    let mut selections = LoopSelections::default();
    let mut places = Vec::new();
    let mut closing_rounds = 0;
    for round in 1..=MAX_ROUNDS {
        selections.choose(&asks, &ladder, job, conditions);
        let reaches = unseen_reaches(&selections, job);
        places = place(&selections, &reaches, leaf.as_ref(), job);
        let mut next = asks.clone();
        for ((ask, places), (_, found)) in next.iter_mut().zip(&places).zip(selections.iter()) {
            grow_lead_in(ask, places, found.chosen.lane.row_width(), job);
            ask.in_sweep = places.len();
        }
        if let Some(leaf) = &leaf {
            for (ask, (choice, found)) in next.iter_mut().zip(selections.iter()) {
                // Strips only widen, so that rounds come to an end.
                ask.setbacks = ask.setbacks.wider(setbacks_beside_open_leaf(leaf, choice, found, job));
            }
        }
        let is_settled = next == asks;
        if is_settled {
            take_finer_steps(&mut next, &selections, (&places, &reaches), &ladder, job);
        }
        if next == asks || round == MAX_ROUNDS {
            break;
        }
        if !job.budget.allows(Search::Places) {
            // Steps stay as they are; places, lead-ins and strips come to fit one another.
            closing_rounds += 1;
            if is_settled || closing_rounds > MAX_CLOSING_ROUNDS {
                break;
            }
        }
        asks = next;
    }
    let (details, detail_of) = selections.details(job);
    let (mut layout, laid_for, couplings) = lay(&selections, &places, &asks, job);
    let unseen_stretch =
        longest_stretch(holding_loops(&places, &unseen_reaches(&selections, job)).map(|(_, holding)| holding));
    layout.needs_line_device =
        !job.opening.seen_otherwise && unseen_stretch.is_some_and(|unseen| unseen > VehicleClass::shortest_car());
    let laid_for = laid_for.into_iter().map(|choice| (choice, detail_of[choice])).collect();
    LoopSizing { layout, selections, details, leaf, unseen_stretch, couplings, laid_for }
}

/// How far a usual car reaches unseen over the loop of each role that holds the gate and fits the barrier.
fn unseen_reaches(selections: &LoopSelections<'_>, job: &ResolvedLoopSizing) -> Vec<Option<UnseenReach>> {
    let reach = |(choice, found): (&RoleChoice, &FoundLoop<'_>)| {
        let holds = choice.role.holds_the_gate() && choice.role.fits(job.opening.barrier);
        holds.then(|| found.at_step(choice.step_at_loop()).reach).flatten()
    };
    selections.iter().map(reach).collect()
}

fn place(
    selections: &LoopSelections<'_>,
    reaches: &[Option<UnseenReach>],
    leaf: Option<&Leaf>,
    job: &ResolvedLoopSizing,
) -> Vec<Vec<LoopPlacement>> {
    let loops =
        selections.iter().zip(reaches).map(|((choice, found), reach)| LoopToPlace { choice, found, reach: *reach });
    let loops: Vec<_> = loops.collect();
    let clearance = leaf.map(|leaf| clear_of_closed_leaf(leaf, &loops, job));
    Placing::place(job, loops, clearance)
}

/// The lead-in of a loop at its place: the one that was sent, or, where the loop lies farther from the gate than that reaches, one as
/// long as the way to the gate and to the unit beside it, from the far end of a row. A lead-in of no length asks about loops at their own tails. It only grows:
/// a shorter one could bring back the loop that asked for the longer one.
fn grow_lead_in(ask: &mut RoleAsk, places: &[LoopPlacement], row_width: Length, job: &ResolvedLoopSizing) {
    let (system, sent) = (job.system(), job.lead_in.length);
    let farthest = places.iter().map(LoopPlacement::distance).fold(row_width, |most, way| most.max(way + row_width));
    if sent == Length::default() || farthest <= sent {
        return;
    }
    let length = STEP.ceil(farthest + WAY_TO_UNIT.in_system(system), system);
    if length > ask.lead_in.length {
        // Where the parts were sent, the longer way is conduit.
        let in_conduit = job.lead_in.in_conduit.map(|conduit| conduit + length - sent);
        ask.lead_in = ResolvedLeadIn { length, in_conduit, ..job.lead_in.clone() };
    }
}

/// Takes the next finer step where one does not serve: by what vehicles make, under an arm, or because a car would stand unseen.
fn take_finer_steps(
    asks: &mut [RoleAsk],
    selections: &LoopSelections<'_>,
    (places, reaches): (&[Vec<LoopPlacement>], &[Option<UnseenReach>]),
    ladder: &StepLadder,
    job: &ResolvedLoopSizing,
) {
    let unseen = if job.opening.seen_otherwise { Vec::new() } else { with_car_unseen(places, reaches) };
    let verdicts = selections.verdicts(&unseen, job);
    for (ask, verdict) in asks.iter_mut().zip(verdicts) {
        ask.rung = ladder.finer(ask.rung, verdict).unwrap_or(ask.rung);
    }
}

/// The loops that hold the gate, each with the index of its role.
fn holding_loops<'p>(
    places: &'p [Vec<LoopPlacement>],
    reaches: &'p [Option<UnseenReach>],
) -> impl Iterator<Item = (usize, HoldingLoop)> + 'p {
    let of_role = |(index, (places, reach)): (usize, (&'p Vec<LoopPlacement>, &'p Option<UnseenReach>))| {
        let held =
            reach.iter().flat_map(|reach| places.iter().map(|place| HoldingLoop { place: *place, reach: *reach }));
        held.map(move |holding| (index, holding))
    };
    places.iter().zip(reaches).enumerate().flat_map(of_role)
}

/// The roles between whose loops a usual car stands unseen.
fn with_car_unseen(places: &[Vec<LoopPlacement>], reaches: &[Option<UnseenReach>]) -> Vec<usize> {
    let mut holding: Vec<_> = holding_loops(places, reaches).collect();
    holding.sort_by(|(_, a), (_, b)| a.place.from.value.total_cmp(&b.place.from.value));
    let car = VehicleClass::PassengerCar.length();
    let long = holding.windows(2).filter(|pair| pair[0].1.longest_unseen_to(&pair[1].1) > car);
    long.flat_map(|pair| [pair[0].0, pair[1].0]).collect()
}

/// The layout, in the order in which a vehicle that leaves meets the loops, the choice that each belongs to, and how they couple.
fn lay(
    selections: &LoopSelections<'_>,
    places: &[Vec<LoopPlacement>],
    asks: &[RoleAsk],
    job: &ResolvedLoopSizing,
) -> (JobLayout, Vec<usize>, LayoutCouplings) {
    let entries = places.iter().enumerate().flat_map(|(choice, places)| {
        places.iter().enumerate().map(move |(order, place)| (choice, (places.len() > 1).then_some(order + 1), *place))
    });
    let mut order: Vec<_> = entries.collect();
    // The innermost comes first.
    order.sort_by(|(_, _, a), (_, _, b)| b.middle().value.total_cmp(&a.middle().value));
    let lay_one = |(index, (choice, ordinal, place)): (usize, &(usize, Option<usize>, LoopPlacement))| {
        let (ask, choice) = (&asks[*choice], &selections.choices[*choice]);
        let found = &selections.found[choice.found];
        let candidate = &found.chosen;
        LaidLoop {
            mark: LoopMark::at(index),
            role: choice.role,
            ordinal: *ordinal,
            unit: 1,
            coil: candidate.design.coil.clone(),
            construction: job.construction,
            stock: found.stock.as_ref().and_then(StockMatch::taken).cloned(),
            lead_in: ask.lead_in.clone(),
            // Decided once the units are.
            way: LeadInWay::alone(ask.lead_in.pair_of(job.construction), Length::default()),
            lane: candidate.lane.clone(),
            place: *place,
            steel_below: job.steel_below(&candidate.design.coil),
            electrical: candidate.design.electrical,
            step: choice.step,
            sightings: selections.sightings(choice),
            alone: candidate.sightings.clone(),
        }
    };
    let loops = order.iter().enumerate().map(lay_one).collect();
    let mut layout = JobLayout { loops, needs_line_device: false };
    let couplings = assign_units(&mut layout, job);
    lay_ways(&mut layout.loops, &job.opening);
    (layout, order.into_iter().map(|(choice, _, _)| choice).collect(), couplings)
}
