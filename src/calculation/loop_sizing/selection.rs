//! The loop of each role, and the step of its channel. Roles that ask for the same loop share one search.

use uom::si::f64::Ratio;
use uom::si::ratio::ratio;

use super::alternatives::{OfferedCandidate, find_alternatives};
use super::resolved::ResolvedLoopSizing;
use super::search::{LoopCandidate, RoleSearch, SeenAtStep};
use super::stock::{StockMatch, match_stock};
use crate::calculation::input::ResolvedLeadIn;
use crate::calculation::layout::{ChannelLoop, DetectorChannel, choose_step, join_channels};
use crate::calculation::loop_characteristics::MeasurementConditions;
use crate::practice::roles::Role;
use crate::vocabulary::Vocabulary;

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
    /// Searches the loop of each role, once for all that ask for the same, and chooses the steps. `lead_ins` are those of the roles.
    pub fn new(
        job: &'a ResolvedLoopSizing,
        conditions: &'a MeasurementConditions,
        lead_ins: &[ResolvedLeadIn],
    ) -> Self {
        let mut selections = Self { found: Vec::new(), roles: Vec::new() };
        for (role, lead_in) in job.roles.iter().zip(lead_ins) {
            let search = RoleSearch::of(*role, lead_in.clone(), job, conditions);
            let known = selections.found.iter().position(|found| found.search.gives_same_loop_as(&search));
            let index = known.unwrap_or_else(|| {
                let designed = search.run();
                let (chosen, stock) = match_stock(&search, designed);
                let share = Ratio::new::<ratio>(1.0);
                selections.found.push(FoundLoop { search, chosen, stock, step: job.design_step(), share });
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
        let channels =
            join_channels(self.iter().flat_map(|(role, found)| found.channel_loops(role)).collect(), job.wiring);
        let decided = |role: Role| {
            let place = |channel: &DetectorChannel| channel.loops.iter().position(|one| one.role == role);
            let (channel, index) = channels.iter().find_map(|channel| Some((channel, place(channel)?)))?;
            Some((choose_step(channel, &job.detector, &job.vehicles), channel.weights()[index]))
        };
        let mut found: Vec<Option<(Ratio, Ratio)>> = vec![None; self.found.len()];
        for (role, index) in &self.roles {
            found[*index] = found[*index].or_else(|| decided(*role));
        }
        for (found, decided) in self.found.iter_mut().zip(found) {
            (found.step, found.share) = decided.unwrap_or((found.step, found.share));
        }
    }
}

impl FoundLoop<'_> {
    /// The loops of the row as they come to a unit.
    fn channel_loops(&self, role: Role) -> impl Iterator<Item = ChannelLoop> {
        let (coil, lead_in, lane) = (&self.chosen.design.coil, &self.search.lead_in, &self.chosen.lane);
        let one = move |_| ChannelLoop::new(role.code().to_owned(), role, coil.clone(), lead_in.clone(), lane.clone());
        (0..self.chosen.count()).map(one)
    }
}
