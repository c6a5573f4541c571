//! The loop of each role. Roles that ask for the same loop share one search.

use std::rc::Rc;

use super::alternatives::{OfferedCandidate, find_alternatives};
use super::resolved::ResolvedLoopSizing;
use super::search::{LoopCandidate, RoleSearch};
use crate::calculation::loop_characteristics::MeasurementConditions;
use crate::practice::roles::Role;

/// The loop that a search found, and its alternatives.
struct SearchResult {
    chosen: LoopCandidate,
    alternatives: Vec<OfferedCandidate>,
}

/// What was found for a role.
pub struct RoleSelection {
    /// What the loop is for.
    pub role: Role,
    result: Rc<SearchResult>,
}

impl RoleSelection {
    /// The loop, or the row of loops.
    pub fn chosen(&self) -> &LoopCandidate {
        &self.result.chosen
    }

    /// Other sizes and shapes.
    pub fn alternatives(&self) -> &[OfferedCandidate] {
        &self.result.alternatives
    }
}

/// Searches the loop of each role, once for all that ask for the same.
pub fn select_loops(job: &ResolvedLoopSizing, conditions: &MeasurementConditions) -> Vec<RoleSelection> {
    let mut done: Vec<(RoleSearch<'_>, Rc<SearchResult>)> = Vec::new();
    let mut selections = Vec::new();
    for role in &job.roles {
        let search = RoleSearch::of(*role, job, conditions);
        let known = done.iter().find(|(other, _)| other.gives_same_loop_as(&search)).map(|(_, result)| result.clone());
        let result = known.unwrap_or_else(|| {
            let chosen = search.run();
            let alternatives = find_alternatives(&search, &chosen);
            let result = Rc::new(SearchResult { chosen, alternatives });
            done.push((search, result.clone()));
            result
        });
        selections.push(RoleSelection { role: *role, result });
    }
    selections
}
