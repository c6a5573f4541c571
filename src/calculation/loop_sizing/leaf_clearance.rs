//! How far loops must lie from a metal leaf, computed as a finite plate in the loop's field.

use uom::si::f64::{Length, Ratio};
use uom::si::length::meter;
use uom::si::ratio::percent;

use super::resolved::ResolvedLoopSizing;
use super::selection::{FoundLoop, LoopSelections};
use crate::calculation::report::{Diagnostics, FieldPath, Finding, Statement};
use crate::physics::plate::Wall;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::layout::{LEAF_CLEARANCE, STEP};
use crate::practice::roles::Role;
use crate::practice::vehicles::VehicleClass;

/// The greatest distance that is searched, metres.
const MAX_CLEARANCE_M: f64 = 6.0;

/// How far loops lie from a metal leaf.
pub struct LeafClearance {
    /// From the closed leaf to the nearest wire.
    pub distance: Length,
    /// What the leaf makes there over the loop that minds it most, and half the step of that loop; `None` where no loop lies beside it.
    change: Option<(Ratio, Ratio)>,
}

impl LeafClearance {
    /// The least distance, never under 4 ft / 1.2 m, at which the closed leaf changes every loop beside it by less than half its step.
    /// Where that would let a car stand unseen between the loops, they stay closer, with a warning. `None` without a leaf.
    pub fn compute(job: &ResolvedLoopSizing, selections: &LoopSelections<'_>) -> Option<Self> {
        let (height, ground_gap) = job.opening.leaf_height.zip(job.opening.leaf_ground_gap)?;
        let wall = Wall::new(job.opening.width.get::<meter>(), height.get::<meter>())?;
        let system = job.system();
        let step = STEP.in_system(system);
        // Nearer than the solver resolves, the figure would be rough.
        let resolved = STEP.ceil(Length::new::<meter>(wall.least_distance()), system);
        let least = LEAF_CLEARANCE.in_system(system).max(resolved);
        let beside: Vec<_> =
            selections.iter().filter(|(role, _)| role.lies_beside_leaf()).map(|(_, found)| found).collect();
        let change = |distance: Length| {
            let of = |found: &&FoundLoop<'_>| {
                (found.chosen.field.change_by_leaf(&wall, distance, ground_gap), found.step / 2.0)
            };
            beside.iter().map(of).max_by(|a, b| (a.0 / a.1).value.total_cmp(&(b.0 / b.1).value))
        };
        let is_seen = |distance: Length| change(distance).is_some_and(|(change, limit)| change > limit);
        let farthest = Length::new::<meter>(MAX_CLEARANCE_M);
        let mut wanted = least;
        while wanted < farthest && is_seen(wanted) {
            wanted += step;
        }
        // The stretch between loops on both sides of the line is twice the distance.
        let widest = if holds_both_sides(job) && job.opening.barrier.sweep_share() == 0.0 {
            STEP.floor(VehicleClass::PassengerCar.length() / 2.0, system).max(least)
        } else {
            farthest
        };
        let distance = wanted.min(widest);
        Some(Self { distance, change: change(distance) })
    }

    /// States what it means.
    pub fn judge(&self, job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
        let Some((change, limit)) = self.change else { return };
        let at = FieldPath::BODY.field("opening").field("barrier").pointer();
        let system = job.system();
        let percents = (change.get::<percent>(), limit.get::<percent>());
        let with_change = |statement: Statement| {
            statement.length("clearance", self.distance, system).percent("change_by_leaf", percents.0, 3)
        };
        let finding = if change > limit {
            let message = with_change(Statement::new("sizing-leaf-seen"));
            Finding::at(FindingCode::LeafSeen, Level::Warning, at, message)
        } else {
            let message = with_change(Statement::new("sizing-leaf-clearance"));
            Finding::at(FindingCode::LeafClearance, Level::Note, at, message)
        };
        diagnostics.add_finding(
            finding.length("clearance", self.distance, system).figure("change_by_leaf", percents.0, "percent").figure(
                "half_threshold",
                percents.1,
                "percent",
            ),
        );
    }
}

fn holds_both_sides(job: &ResolvedLoopSizing) -> bool {
    job.roles.contains(&Role::ObstructionOutside) && job.roles.contains(&Role::ObstructionInside)
}
