//! How far loops must lie from a metal leaf, computed as a finite plate in the loop's field.

use uom::si::f64::{Length, Ratio};
use uom::si::length::meter;
use uom::si::ratio::percent;

use super::resolved::ResolvedLoopSizing;
use super::selection::RoleSelection;
use crate::calculation::report::{Diagnostics, FieldPath, Finding};
use crate::physics::plate::Wall;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::layout::{LEAF_CLEARANCE, STEP};
use crate::practice::roles::Role;
use crate::practice::vehicles::VehicleClass;
use crate::quantity::format::format_length;

/// The greatest distance that is searched, metres.
const MAX_CLEARANCE_M: f64 = 6.0;

/// The least distance, never under 4 ft / 1.2 m, at which the closed leaf changes every loop beside it by less than half the
/// threshold. Where that would let a car stand unseen between the loops, they stay closer, with a warning. `None` without a leaf.
pub fn compute(
    job: &ResolvedLoopSizing,
    selections: &[RoleSelection],
    diagnostics: &mut Diagnostics,
) -> Option<Length> {
    let (height, ground_gap) = job.opening.leaf?;
    let wall = Wall::new(job.opening.width.get::<meter>(), height.get::<meter>())?;
    let system = job.system();
    let step = STEP.in_system(system);
    // Nearer than the solver resolves, the figure would be rough.
    let resolved = STEP.ceil(Length::new::<meter>(wall.least_distance()), system);
    let least = LEAF_CLEARANCE.in_system(system).max(resolved);
    let beside: Vec<_> =
        selections.iter().filter(|selection| selection.role.lies_beside_leaf()).map(RoleSelection::chosen).collect();
    let change = |distance: Length| {
        beside
            .iter()
            .map(|candidate| candidate.field.change_by_leaf(&wall, distance, ground_gap))
            .fold(Ratio::default(), Ratio::max)
    };
    let limit = job.threshold() / 2.0;
    let farthest = Length::new::<meter>(MAX_CLEARANCE_M);
    let mut wanted = least;
    while wanted < farthest && change(wanted) > limit {
        wanted += step;
    }
    // The stretch between loops on both sides of the line is twice the distance.
    let widest = if holds_both_sides(selections) && job.opening.barrier.sweep_share() == 0.0 {
        STEP.floor(VehicleClass::PassengerCar.length() / 2.0, system).max(least)
    } else {
        farthest
    };
    let distance = wanted.min(widest);
    if !beside.is_empty() {
        add_finding(distance, change(distance), limit, job, diagnostics);
    }
    Some(distance)
}

fn add_finding(distance: Length, change: Ratio, limit: Ratio, job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    let at = FieldPath::BODY.field("opening").field("barrier").pointer();
    let system = job.system();
    let percents = (change.get::<percent>(), limit.get::<percent>());
    let finding = if change > limit {
        let message = format!(
            "At {} the closed leaf changes the loops by {:.3} %, over half the threshold, but farther apart a car could stand \
             unseen between them. Shorten the leg along travel, set a coarser sensitivity, or prove on site that the moving gate \
             makes no call.",
            format_length(distance, system),
            percents.0,
        );
        Finding::at(FindingCode::LeafSeen, Level::Warning, at, message)
    } else {
        let message = format!(
            "Keep every wire of these loops, lead-in included, {} from the metal leaf in any position: closed, it changes a loop there \
             by {:.3} %, under half the threshold.",
            format_length(distance, system),
            percents.0,
        );
        Finding::at(FindingCode::LeafClearance, Level::Note, at, message)
    };
    diagnostics.add_finding(
        finding.length("clearance", distance, system).figure("change_by_leaf", percents.0, "percent").figure(
            "half_threshold",
            percents.1,
            "percent",
        ),
    );
}

fn holds_both_sides(selections: &[RoleSelection]) -> bool {
    let has = |role| selections.iter().any(|selection| selection.role == role);
    has(Role::ObstructionOutside) && has(Role::ObstructionInside)
}
