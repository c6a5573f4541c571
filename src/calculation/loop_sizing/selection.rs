//! The loop of each role, and the step of its channel. Roles that ask for the same loop share one search.

use std::iter::repeat_n;

use uom::si::f64::Ratio;
use uom::si::ratio::ratio;

use super::alternatives::{OfferedCandidate, find_alternatives};
use super::resolved::ResolvedLoopSizing;
use super::search::{LoopCandidate, RoleSearch, SeenAtStep};
use super::stock::{StockMatch, match_stock};
use crate::calculation::input::ResolvedLeadIn;
use crate::calculation::layout::{ClassSighting, channel_weights, choose_step};
use crate::calculation::loop_characteristics::MeasurementConditions;
use crate::practice::detectors::Wiring;
use crate::practice::roles::Role;

/// What a search found.
pub struct FoundLoop<'a> {
    /// The search.
    pub search: RoleSearch<'a>,
    /// The loop that is laid: that of the stock item, where one serves.
    pub chosen: LoopCandidate,
    /// What the caller's stock has for it; `None` when no stock was sent.
    pub stock: Option<StockMatch>,
    /// The step of its channel.
    pub step: Ratio,
    /// What the other loops of its channel leave of a change at this one; 1 for a channel of its own.
    pub share: Ratio,
}

/// What follows from the step of a loop.
pub struct FoundDetails {
    /// What the loop sees.
    pub seen: SeenAtStep,
    /// Other sizes and shapes.
    pub alternatives: Vec<OfferedCandidate>,
}

/// The loops of all roles.
pub struct LoopSelections<'a> {
    /// The loops, each once.
    pub found: Vec<FoundLoop<'a>>,
    /// The roles in the order of the request, each with the index of its loop.
    pub roles: Vec<(Role, usize)>,
}

impl<'a> LoopSelections<'a> {
    /// The loop of each role, searched once for all that ask for the same, and the steps. `lead_ins` are those of the roles; what was
    /// found `before` for others is not searched again.
    pub fn new(
        job: &'a ResolvedLoopSizing,
        conditions: &'a MeasurementConditions,
        lead_ins: &[ResolvedLeadIn],
        mut before: Vec<FoundLoop<'a>>,
    ) -> Self {
        let mut selections = Self { found: Vec::new(), roles: Vec::new() };
        for (role, lead_in) in job.roles.iter().zip(lead_ins) {
            let search = RoleSearch::of(*role, lead_in.clone(), job, conditions);
            let index = position_of(&selections.found, &search).unwrap_or_else(|| {
                let found = position_of(&before, &search).map(|index| before.swap_remove(index));
                selections.found.push(found.unwrap_or_else(|| FoundLoop::search(search)));
                selections.found.len() - 1
            });
            selections.roles.push((*role, index));
        }
        selections.choose_steps(job);
        selections
    }

    /// The loop of each role.
    pub fn iter(&self) -> impl Iterator<Item = (Role, &FoundLoop<'a>)> {
        self.roles.iter().map(|(role, index)| (*role, &self.found[*index]))
    }

    /// What follows from the steps, for each loop once.
    pub fn details(&self, job: &ResolvedLoopSizing) -> Vec<FoundDetails> {
        let details = |found: &FoundLoop<'_>| FoundDetails {
            seen: found.chosen.at_step(found.step, found.share, job),
            alternatives: find_alternatives(&found.search, &found.chosen, found.step, found.share),
        };
        self.found.iter().map(details).collect()
    }

    fn choose_steps(&mut self, job: &ResolvedLoopSizing) {
        match job.wiring {
            Wiring::Separate => {
                for found in &mut self.found {
                    found.step = choose_step(&found.chosen.sightings, &job.detector);
                }
            }
            wiring @ (Wiring::Series | Wiring::Parallel) => {
                let row = |found: &FoundLoop<'_>| repeat_n(found.chosen.design.electrical, found.chosen.count());
                let figures: Vec<_> = self.iter().flat_map(|(_, found)| row(found)).collect();
                let weights = channel_weights(&figures, wiring);
                let mut first = 0;
                for (_, index) in &self.roles {
                    let found = &mut self.found[*index];
                    found.share = weights[first];
                    first += found.chosen.count();
                }
                let sightings: Vec<_> = self.found.iter().flat_map(FoundLoop::sightings).collect();
                let step = choose_step(&sightings, &job.detector);
                for found in &mut self.found {
                    found.step = step;
                }
            }
        }
    }
}

fn position_of(known: &[FoundLoop<'_>], search: &RoleSearch<'_>) -> Option<usize> {
    known.iter().position(|found| found.search.gives_same_loop_as(search))
}

impl<'a> FoundLoop<'a> {
    /// Searches, and takes what the stock has. The step is that of the design until the steps are chosen.
    fn search(search: RoleSearch<'a>) -> Self {
        let (chosen, stock) = match_stock(&search, search.run());
        let (step, share) = (search.design_step, Ratio::new::<ratio>(1.0));
        Self { search, chosen, stock, step, share }
    }

    /// What vehicles make at the terminals of its channel.
    pub fn sightings(&self) -> Vec<ClassSighting> {
        self.chosen.sightings.iter().map(|sighting| sighting.diluted(self.share)).collect()
    }
}
