//! The loop of each role, and the step of its channel. Roles that ask for the same loop share one search.

use std::cell::RefCell;
use std::iter::repeat_n;

use uom::si::f64::{Length, Ratio};
use uom::si::ratio::ratio;

use super::alternatives::{OfferedCandidate, find_alternatives};
use super::design::EdgeSetbacks;
use super::resolved::ResolvedLoopSizing;
use super::search::{LoopCandidate, RoleSearch, SeenAtStep};
use super::stock::{StockMatch, match_stock};
use super::unseen::UnseenReach;
use crate::calculation::input::ResolvedLeadIn;
use crate::calculation::layout::{ClassSighting, StepLadder, StepVerdict, channel_weights};
use crate::calculation::loop_characteristics::MeasurementConditions;
use crate::practice::detectors::Wiring;
use crate::practice::roles::Role;
use crate::practice::vehicles::VehicleClass;

/// What a search found.
pub struct FoundLoop<'a> {
    /// The search.
    pub search: RoleSearch<'a>,
    /// The loop that is laid: that of the stock item, where one serves.
    pub chosen: LoopCandidate,
    /// What the caller's stock has for it; `None` when no stock was sent.
    pub stock: Option<StockMatch>,
    /// What was found at steps already: rounds ask again, and each answer takes many positions of a vehicle.
    known: RefCell<Vec<(Ratio, AtStep)>>,
}

/// What a step means for the place of a loop, in changes of the loop itself.
#[derive(Clone, Copy)]
pub struct AtStep {
    /// How far a loop under an arm is moved inwards; `None` where no place serves.
    pub shift: Option<Length>,
    /// How far a usual car reaches over it unseen; `None` where it holds no gate.
    pub reach: Option<UnseenReach>,
}

impl<'a> FoundLoop<'a> {
    /// Searches, and takes what the stock has.
    fn search(search: RoleSearch<'a>) -> Self {
        let (chosen, stock) = match_stock(&search, search.run());
        Self { search, chosen, stock, known: RefCell::default() }
    }

    /// What a step at the loop means for its place.
    pub fn at_step(&self, step: Ratio) -> AtStep {
        if let Some((_, known)) = self.known.borrow().iter().find(|(other, _)| *other == step) {
            return *known;
        }
        let (search, row) = (&self.search, self.chosen.row());
        let reach = || UnseenReach::of(&row, VehicleClass::PassengerCar, step, &search.job.opening);
        let found =
            AtStep { shift: search.shift_under_arm(&self.chosen, step), reach: search.holds_the_gate.then(reach) };
        self.known.borrow_mut().push((step, found));
        found
    }
}

/// What a role asks for, settled round by round.
#[derive(Clone)]
pub struct RoleAsk {
    /// The role.
    pub role: Role,
    /// The pair to the unit, as long as the place of the loop needs.
    pub lead_in: ResolvedLeadIn,
    /// The clear strips at the edges.
    pub setbacks: EdgeSetbacks,
    /// How many loops lie one behind the other: 1 but in a sweep.
    pub in_sweep: usize,
    /// The step of its channel, as its place on the ladder.
    pub rung: usize,
}

impl PartialEq for RoleAsk {
    /// Of a lead-in only the length is settled in rounds.
    fn eq(&self, other: &Self) -> bool {
        let key = |ask: &Self| (ask.role, ask.lead_in.length, ask.setbacks, ask.in_sweep, ask.rung);
        key(self) == key(other)
    }
}

/// The loop of a role.
pub struct RoleChoice {
    /// The role.
    pub role: Role,
    /// The index of what was found for it.
    pub found: usize,
    /// The step of its channel.
    pub step: Ratio,
    /// What the other loops of its channel leave of a change at this one; 1 for a channel of its own.
    pub share: Ratio,
}

impl RoleChoice {
    /// The change at the loop itself that the step of its channel means.
    pub fn step_at_loop(&self) -> Ratio {
        self.step / self.share
    }
}

/// What follows from the step of a loop.
pub struct FoundDetails {
    /// What the loop sees.
    pub seen: SeenAtStep,
    /// Other sizes and shapes.
    pub alternatives: Vec<OfferedCandidate>,
}

/// The loops of all roles.
#[derive(Default)]
pub struct LoopSelections<'a> {
    /// The loops that were searched, each once.
    pub found: Vec<FoundLoop<'a>>,
    /// The roles in the order of the request.
    pub choices: Vec<RoleChoice>,
}

impl<'a> LoopSelections<'a> {
    /// Chooses the loop of each role; what was found in earlier rounds is not searched again.
    pub fn choose(
        &mut self,
        asks: &[RoleAsk],
        ladder: &StepLadder,
        job: &'a ResolvedLoopSizing,
        conditions: &'a MeasurementConditions,
    ) {
        self.choices = asks.iter().map(|ask| self.choose_one(ask, ladder, job, conditions)).collect();
        if job.wiring == Wiring::Separate {
            return;
        }
        let counts: Vec<_> =
            self.iter().zip(asks).map(|((_, found), ask)| found.chosen.count() * ask.in_sweep).collect();
        let figures =
            |((_, found), count): ((_, &FoundLoop<'_>), &usize)| repeat_n(found.chosen.design.electrical, *count);
        let joined: Vec<_> = self.iter().zip(&counts).flat_map(figures).collect();
        let weights = channel_weights(&joined, job.wiring);
        let mut first = 0;
        for (choice, count) in self.choices.iter_mut().zip(counts) {
            choice.share = weights[first];
            first += count;
        }
    }

    fn choose_one(
        &mut self,
        ask: &RoleAsk,
        ladder: &StepLadder,
        job: &'a ResolvedLoopSizing,
        conditions: &'a MeasurementConditions,
    ) -> RoleChoice {
        let search = RoleSearch::of(ask.role, ask.lead_in.clone(), ask.setbacks, job, conditions);
        let known = self.found.iter().position(|found| found.search.gives_same_loop_as(&search));
        let found = known.unwrap_or_else(|| {
            self.found.push(FoundLoop::search(search));
            self.found.len() - 1
        });
        RoleChoice { role: ask.role, found, step: ladder.step(ask.rung), share: Ratio::new::<ratio>(1.0) }
    }

    /// The loop of each role, with what was found for it.
    pub fn iter(&self) -> impl Iterator<Item = (&RoleChoice, &FoundLoop<'a>)> {
        self.choices.iter().map(|choice| (choice, &self.found[choice.found]))
    }

    /// What vehicles make at the terminals of the channel of a role.
    pub fn sightings(&self, choice: &RoleChoice) -> Vec<ClassSighting> {
        let sightings = &self.found[choice.found].chosen.sightings;
        sightings.iter().map(|sighting| sighting.diluted(choice.share)).collect()
    }

    /// How the step of each role stands by what vehicles make over its loop, by where the unit lets go of them under an arm, and by whether a
    /// car stands unseen beside it, as it does beside the roles of these indices.
    pub fn verdicts(&self, car_is_unseen: &[usize], job: &ResolvedLoopSizing) -> Vec<StepVerdict> {
        let alone = |(index, (choice, found)): (usize, (&RoleChoice, &FoundLoop<'_>))| {
            let verdict = StepVerdict::of(&self.sightings(choice), choice.step);
            let shift = found.at_step(choice.step_at_loop()).shift;
            // A finer step is tried before a loop is moved.
            let serves = shift == Some(Length::default()) && !car_is_unseen.contains(&index);
            if serves { verdict } else { verdict.max(StepVerdict::Thin) }
        };
        let verdicts: Vec<_> = self.iter().enumerate().map(alone).collect();
        match job.wiring {
            Wiring::Separate => verdicts,
            Wiring::Series | Wiring::Parallel => {
                let worst = verdicts.iter().copied().max().unwrap_or(StepVerdict::Serves);
                vec![worst; verdicts.len()]
            }
        }
    }

    /// What follows from the step of each role, computed once for roles that are alike.
    pub fn details(&self, job: &ResolvedLoopSizing) -> (Vec<FoundDetails>, Vec<usize>) {
        let mut details = Vec::new();
        let mut indices: Vec<usize> = Vec::new();
        for (index, choice) in self.choices.iter().enumerate() {
            let is_alike = |other: &&RoleChoice| {
                (other.found, other.step, other.share) == (choice.found, choice.step, choice.share)
            };
            if let Some(alike) = self.choices[..index].iter().position(|other| is_alike(&other)) {
                indices.push(indices[alike]);
                continue;
            }
            let found = &self.found[choice.found];
            indices.push(details.len());
            details.push(FoundDetails {
                seen: found.chosen.at_step(choice.step, choice.share, job),
                alternatives: find_alternatives(&found.search, &found.chosen, choice.step, choice.share),
            });
        }
        (details, indices)
    }
}
