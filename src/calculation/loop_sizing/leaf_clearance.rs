//! How far loops must lie from a metal leaf, closed, open and on its way.

use uom::si::f64::{Length, Ratio};
use uom::si::ratio::percent;

use super::design::{EdgeSetbacks, design, first_leg};
use super::placement::LoopToPlace;
use super::resolved::ResolvedLoopSizing;
use super::search::RoleSearch;
use crate::calculation::input::{ResolvedLeadIn, Shape};
use crate::calculation::layout::{LaidLoop, Leaf, LeafChanges, LeafState, LoopBesideLeaf};
use crate::calculation::loop_characteristics::MeasurementConditions;
use crate::calculation::report::{Diagnostics, FieldPath, Finding, Statement};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::layout::{HALF_STEP, LEAF_CLEARANCE, OPEN_LEAF_CLEARANCE, STEP};
use crate::practice::roles::Role;
use crate::practice::site::Barrier;
use crate::practice::vehicles::VehicleClass;

/// How many steps a loop is moved away from a closed leaf at most.
const MAX_STEPS: u32 = 60;
/// The widest strip beside an open leaf, as a share of the opening: a wider one leaves no loop to speak of.
const WIDEST_STRIP: f64 = 1.0 / 3.0;

/// The least distance from the closed leaf to the nearest wire, never under 4 ft / 1.2 m, at which it changes every loop beside it by no
/// more than half its step. Where a car would then stand unseen between the loops on both sides of it, they lie as far off as leaves
/// none unseen.
pub fn clear_of_closed_leaf(leaf: &Leaf, loops: &[LoopToPlace<'_>], job: &ResolvedLoopSizing) -> Length {
    let system = job.system();
    // Nearer than the solver resolves, the figure would be rough.
    let least = LEAF_CLEARANCE.in_system(system).max(STEP.ceil(leaf.least_distance(), system));
    let is_beside =
        |role: Role| role.fits(job.opening.barrier) && (role.lies_beside_leaf() || role.lies_beside_open_leaf());
    let beside: Vec<_> = loops.iter().filter(|one| is_beside(one.choice.role)).collect();
    let is_seen = |distance: Length| {
        beside.iter().any(|one| {
            let design = &one.found.chosen.design;
            let middle = one.found.chosen.lane.middle();
            let place = (distance + design.coil.along_travel / 2.0, middle);
            let change = leaf.change(&LoopBesideLeaf::new(&design.coil, &design.electrical, place), LeafState::Closed);
            one.choice.share * change > one.choice.step / 2.0
        })
    };
    let distances = |step: Length| (0..MAX_STEPS).map(move |count| least + f64::from(count) * step);
    let wanted = distances(STEP.in_system(system)).find(|distance| !is_seen(*distance)).unwrap_or(least);
    let reach = |role: Role| loops.iter().find(|one| one.choice.role == role).and_then(|one| one.reach);
    let inner = if job.opening.barrier.has_sweep() { Role::BetweenLeaves } else { Role::ObstructionInside };
    let Some((outside, inside)) = reach(Role::ObstructionOutside).zip(reach(inner)) else { return wanted };
    let car = VehicleClass::PassengerCar.length();
    let leaves_none_unseen = |distance: &Length| outside.longest_unseen(2.0 * *distance, &inside) <= car;
    if job.opening.seen_otherwise || leaves_none_unseen(&wanted) {
        return wanted;
    }
    let nearer = distances(HALF_STEP.in_system(system)).take_while(|distance| *distance < wanted);
    nearer.filter(leaves_none_unseen).last().unwrap_or(least)
}

/// The clear strips beside the loop of a role: the usual ones, or, beside a swing leaf that stands open, as wide as keeps the leaf's change
/// at half the step or less, 2 ft / 0.6 m at the least.
pub fn setbacks_beside_open_leaf(
    leaf: &Leaf,
    (role, step): (Role, Ratio),
    lead_in: &ResolvedLeadIn,
    job: &ResolvedLoopSizing,
    conditions: &MeasurementConditions,
) -> EdgeSetbacks {
    let usual = EdgeSetbacks::usual(job);
    if !role.lies_beside_open_leaf() || job.opening.edge_setback.is_some() {
        return usual;
    }
    let (system, width) = (job.system(), job.opening.width);
    let beside = |strip: Length| match job.opening.barrier {
        Barrier::SwingGatePair => EdgeSetbacks { left: strip, right: strip },
        _ => EdgeSetbacks { left: strip, ..usual },
    };
    let is_seen = |strip: Length| {
        let search = RoleSearch::of(role, lead_in.clone(), beside(strip), job, conditions);
        let (across, middle) = beside(strip).span(job);
        let design = design(first_leg(role, job), across, Shape::Rectangle, search.brief());
        // Beside the middle of the leaf, where it changes a loop most.
        let along = job.opening.barrier.sweep_share() * width / 2.0;
        let loop_there = LoopBesideLeaf::new(&design.coil, &design.electrical, (along, middle));
        leaf.change(&loop_there, LeafState::Open) > step / 2.0
    };
    let least = OPEN_LEAF_CLEARANCE.in_system(system).max(usual.left);
    let mut strip = least;
    while strip < WIDEST_STRIP * width && is_seen(strip) {
        strip += STEP.in_system(system);
    }
    beside(if is_seen(strip) { least } else { strip })
}

/// What the leaf makes over a loop that is laid, at the terminals; on its way only where the loop is listened to then.
pub fn leaf_changes(leaf: &Leaf, laid: &LaidLoop, share: Ratio) -> LeafChanges {
    let place = (laid.place.middle(), laid.lane.middle());
    let changes = leaf.changes(&LoopBesideLeaf::new(&laid.coil, &laid.electrical, place));
    LeafChanges { closed: share * changes.closed, open: share * changes.open, moving: share * changes.moving }
}

/// Whether a loop is listened to while the leaf moves.
pub fn is_watched_while_moving(role: Role) -> bool {
    role != Role::BetweenLeaves
}

/// States what the leaf makes over the loops: over half a step it may be seen, from the step on the gate holds itself.
pub fn judge<'a>(
    loops: impl Iterator<Item = (&'a LaidLoop, LeafChanges)>,
    job: &ResolvedLoopSizing,
    diagnostics: &mut Diagnostics,
) {
    let fitting = loops.filter(|(laid, _)| laid.role.fits(job.opening.barrier));
    let worst = fitting.map(|(laid, changes)| {
        let mut states = vec![("closed", changes.closed), ("open", changes.open)];
        states.extend(is_watched_while_moving(laid.role).then_some(("moving", changes.moving)));
        let worst = states.into_iter().max_by(|a, b| a.1.value.total_cmp(&b.1.value));
        (laid, worst.unwrap_or(("closed", changes.closed)))
    });
    let in_steps = |(laid, (_, change)): &(&LaidLoop, (&'static str, Ratio))| (*change / laid.step).value;
    let mut by_weight: Vec<_> = worst.collect();
    by_weight.sort_by(|a, b| in_steps(b).total_cmp(&in_steps(a)));
    // Of several that stand alike the worst is enough.
    let mut told: Vec<(&'static str, Level)> = Vec::new();
    for (laid, worst) in by_weight {
        let verdict = (worst.0, verdict(worst, laid.step));
        if told.is_empty() || (verdict.1 != Level::Note && !told.contains(&verdict)) {
            told.push(verdict);
            judge_one(laid, worst, job, diagnostics);
        }
    }
}

/// How a change that the leaf makes stands against a step. A closed leaf is what the unit knows as empty, so only one that stands open, or
/// moves, holds the gate.
fn verdict((state, change): (&'static str, Ratio), step: Ratio) -> Level {
    if change > step / 2.0 {
        if state != "closed" && change >= step { Level::Stop } else { Level::Warning }
    } else {
        Level::Note
    }
}

fn judge_one(laid: &LaidLoop, worst: (&'static str, Ratio), job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    let system = job.system();
    let (distance, at) = (laid.place.distance(), FieldPath::BODY.field("opening").field("barrier").pointer());
    let (change, half) = (worst.1.get::<percent>(), laid.step.get::<percent>() / 2.0);
    let with_change = |statement: Statement| {
        statement
            .member("role", laid.role)
            .length("clearance", distance, system)
            .percent("change_by_leaf", change, 3)
            .code("state", worst.0)
    };
    let level = verdict(worst, laid.step);
    let (code, message) = match level {
        Level::Stop => (FindingCode::LeafSeen, Statement::new("sizing-leaf-holds-the-gate")),
        Level::Warning => (FindingCode::LeafSeen, Statement::new("sizing-leaf-seen")),
        Level::Note => (FindingCode::LeafClearance, Statement::new("sizing-leaf-clearance")),
    };
    diagnostics.add_finding(
        Finding::at(code, level, at, with_change(message))
            .on((level != Level::Note).then_some(laid.role))
            .length("clearance", distance, system)
            .figure("change_by_leaf", change, "percent")
            .figure("half_threshold", half, "percent"),
    );
}
