//! How far loops must lie from a metal leaf, closed, open and on its way.

use uom::si::f64::{Length, Ratio};
use uom::si::ratio::percent;

use super::design::EdgeSetbacks;
use super::placement::LoopToPlace;
use super::resolved::ResolvedLoopSizing;
use super::search::LoopCandidate;
use super::selection::{FoundLoop, RoleChoice};
use crate::calculation::budget::Search;
use crate::calculation::input::ResolvedLoop;
use crate::calculation::layout::{LaidLoop, Lane, Leaf, LeafChanges, LeafState, LoopBesideLeaf};
use crate::calculation::loop_characteristics::ElectricalFigures;
use crate::calculation::report::{Diagnostics, FieldPath, Finding, Statement};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::layout::{HALF_STEP, LEAF_CLEARANCE, OPEN_LEAF_CLEARANCE, STEP};
use crate::practice::roles::Role;
use crate::practice::site::Barrier;
use crate::practice::vehicles::VehicleClass;

/// How many steps a loop is moved away from a closed leaf at most.
const MAX_STEPS: u32 = 200;
/// How many steps a closed leaf may make at the most: the unit learns the loop with the gate closed, but not for ever.
const KNOWN_AS_EMPTY_STEPS: f64 = 3.0;
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
            let (design, lane) = (&one.found.chosen.design, &one.found.chosen.lane);
            let place = (distance + design.coil.along_travel / 2.0, lane);
            over_row(leaf, &design.coil, &design.electrical, place, LeafState::Closed) > one.choice.step_at_loop() / 2.0
        })
    };
    let distances = |step: Length| (0..MAX_STEPS).map(move |count| least + f64::from(count) * step);
    let distance = |count: usize| least + count as f64 * STEP.in_system(system);
    let wanted = first_unseen(|count| is_seen(distance(count))).map_or(least, distance);
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

/// The first of [`MAX_STEPS`] steps at which a leaf is no longer seen. What it makes falls with distance, so steps double until it is not
/// seen and are halved from there.
fn first_unseen(is_seen: impl Fn(usize) -> bool) -> Option<usize> {
    let most = MAX_STEPS as usize;
    let (mut seen, mut unseen) = (None, 0);
    while is_seen(unseen) {
        if unseen + 1 == most {
            return None;
        }
        (seen, unseen) = (Some(unseen), (2 * unseen + 1).min(most - 1));
    }
    let mut from = seen.map_or(0, |seen| seen + 1);
    while from < unseen {
        let middle = from.midpoint(unseen);
        if is_seen(middle) { from = middle + 1 } else { unseen = middle }
    }
    Some(unseen)
}

/// The clear strips beside the loop of a role: the usual ones, or, beside a swing leaf that stands open, as wide as keeps the leaf's change
/// at half the step or less, 2 ft / 0.6 m at the least.
pub fn setbacks_beside_open_leaf(
    leaf: &Leaf,
    choice: &RoleChoice,
    found: &FoundLoop<'_>,
    job: &ResolvedLoopSizing,
) -> EdgeSetbacks {
    let usual = EdgeSetbacks::usual(job);
    if !choice.role.lies_beside_open_leaf() || job.opening.edge_setback.is_some() {
        return usual;
    }
    let (system, width) = (job.system(), job.opening.width);
    let (step, half) = (STEP.in_system(system), choice.step_at_loop() / 2.0);
    let beside = |strip: Length| match job.opening.barrier {
        Barrier::SwingGatePair => EdgeSetbacks { left: strip, right: strip },
        _ => EdgeSetbacks { left: strip, ..usual },
    };
    let is_seen = |strip: Length| {
        let LoopCandidate { design, lane, .. } = found.search.fitted_between(beside(strip), &found.chosen);
        // Beside the middle of the leaf, where it changes a loop most.
        let along = job.opening.barrier.sweep_share() * width / 2.0;
        over_row(leaf, &design.coil, &design.electrical, (along, &lane), LeafState::Open) > half
    };
    let least = OPEN_LEAF_CLEARANCE.in_system(system).max(usual.left);
    let strips = (0..MAX_STEPS).map(|count| least + f64::from(count) * step);
    let mut wide_enough = strips
        .take_while(|strip| *strip <= WIDEST_STRIP * width)
        .filter(|strip| !is_seen(*strip) || !job.budget.allows(Search::Places));
    beside(wide_enough.next().unwrap_or(least))
}

/// What the leaf makes over the loop of a row that it changes most, the row's middle so far along.
fn over_row(
    leaf: &Leaf,
    coil: &ResolvedLoop,
    electrical: &ElectricalFigures,
    (along, lane): (Length, &Lane),
    state: LeafState,
) -> Ratio {
    let over = |across: &Length| leaf.change(&LoopBesideLeaf::new(coil, electrical, (along, *across)), state);
    // Of a row that is alike on both sides, under a leaf that is, one side is enough.
    let one_side = if leaf.is_symmetric() && lane.is_symmetric() { lane.centres.len() / 2 } else { 0 };
    lane.centres[one_side..].iter().map(over).fold(Ratio::default(), Ratio::max)
}

/// What the leaf makes over a loop that is laid, or the worst of a row, at the terminals.
pub fn leaf_changes(leaf: &Leaf, laid: &LaidLoop, share: Ratio) -> LeafChanges {
    let place = (laid.place.middle(), &laid.lane);
    let change = |state| share * over_row(leaf, &laid.coil, &laid.electrical, place, state);
    LeafChanges { closed: change(LeafState::Closed), open: change(LeafState::Open), moving: change(LeafState::Moving) }
}

/// Whether a loop is listened to while the leaf moves.
pub fn is_watched_while_moving(role: Role) -> bool {
    role != Role::BetweenLeaves
}

/// What the leaf makes over a loop in one of its states, and how that stands.
struct JudgedState {
    state: &'static str,
    change: Ratio,
    level: Level,
}

/// States what the leaf makes over the loops: over half a step it may be seen, from the step on the gate holds itself.
pub fn judge<'a>(
    loops: impl Iterator<Item = (&'a LaidLoop, LeafChanges)>,
    job: &ResolvedLoopSizing,
    diagnostics: &mut Diagnostics,
) {
    let fitting = loops.filter(|(laid, _)| laid.role.fits(job.opening.barrier));
    let worst = fitting.filter_map(|(laid, changes)| {
        let mut states = vec![("closed", changes.closed), ("open", changes.open)];
        states.extend(is_watched_while_moving(laid.role).then_some(("moving", changes.moving)));
        let judged = states.into_iter().map(|(state, change)| {
            let level = verdict((state, change), laid.step, job.opening.barrier);
            JudgedState { state, change, level }
        });
        // The gravest first: an open leaf at the step holds the gate, a closed one does not.
        let worst = judged.min_by(|a, b| a.level.cmp(&b.level).then(b.change.value.total_cmp(&a.change.value)));
        Some((laid, worst?))
    });
    let in_steps = |(laid, worst): &(&LaidLoop, JudgedState)| (worst.change / laid.step).value;
    let mut by_weight: Vec<_> = worst.collect();
    by_weight.sort_by(|a, b| a.1.level.cmp(&b.1.level).then(in_steps(b).total_cmp(&in_steps(a))));
    // Of several that stand alike the worst is enough.
    let mut told: Vec<(&'static str, Level)> = Vec::new();
    for (laid, worst) in by_weight {
        let verdict = (worst.state, worst.level);
        if told.is_empty() || (worst.level != Level::Note && !told.contains(&verdict)) {
            told.push(verdict);
            judge_one(laid, &worst, job, diagnostics);
        }
    }
}

/// How a change that the leaf makes stands against a step. A leaf that stands open or swings holds the gate from the step on; a closed one
/// is what the unit knows as empty, and one that moves in its own plane changes a loop less than that, so both may take more: a choice made
/// here.
fn verdict((state, change): (&'static str, Ratio), step: Ratio, barrier: Barrier) -> Level {
    let known_as_empty = state == "closed" || (state == "moving" && !barrier.has_sweep());
    let most = if known_as_empty { KNOWN_AS_EMPTY_STEPS } else { 1.0 };
    match change {
        change if change >= most * step => Level::Stop,
        change if change > step / 2.0 => Level::Warning,
        _ => Level::Note,
    }
}

fn judge_one(laid: &LaidLoop, worst: &JudgedState, job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    let system = job.system();
    let (distance, at) = (laid.place.distance(), FieldPath::BODY.field("opening").field("barrier").pointer());
    let (change, half) = (worst.change.get::<percent>(), laid.step.get::<percent>() / 2.0);
    let with_change = |statement: Statement| {
        statement
            .member("role", laid.role)
            .length("clearance", distance, system)
            .percent("change_by_leaf", change, 3)
            .code("state", worst.state)
    };
    let is_decided = job.opening.edge_setback.is_some() || job.fixed(laid.role).is_some();
    let place = if is_decided {
        "decided"
    } else if worst.state == "closed" && !job.opening.seen_otherwise {
        "device_helps"
    } else {
        "none"
    };
    let level = worst.level;
    let (code, message) = match level {
        Level::Stop => (FindingCode::LeafSeen, Statement::new("sizing-leaf-holds-the-gate")),
        Level::Warning => (FindingCode::LeafSeen, Statement::new("sizing-leaf-seen").code("place", place)),
        Level::Note => (FindingCode::LeafClearance, Statement::new("sizing-leaf-clearance")),
    };
    let finding = Finding::at(code, level, at, with_change(message))
        .on((level != Level::Note).then_some(laid.role))
        .length("clearance", distance, system)
        .figure("change_by_leaf", change, "percent")
        .figure("half_threshold", half, "percent");
    let (body, opening) = (FieldPath::BODY, FieldPath::BODY.field("opening"));
    let ways_out = [
        (body.field("fixed_loops"), job.fixed(laid.role).is_some()),
        (opening.field("edge_setback"), job.opening.edge_setback.is_some()),
        (
            opening.field("seen_otherwise"),
            !job.opening.seen_otherwise && (level == Level::Stop || place == "device_helps"),
        ),
    ];
    let ways_out = ways_out.iter().filter(|(_, helps)| *helps && level != Level::Note);
    diagnostics.add_finding(ways_out.fold(finding, |finding, (field, _)| finding.send(field)));
}
