//! Where each loop lies along the way, and what stays unseen between loops that hold the gate.

use uom::si::f64::Length;

use super::resolved::ResolvedLoopSizing;
use crate::calculation::layout::{LaidLoop, LoopPlacement};
use crate::calculation::report::{Diagnostics, FieldPath, Finding, Statement};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::layout::{ARM_CLEARANCE, FAR_EXIT, NEIGHBOUR_GAP, STEP};
use crate::practice::roles::{Role, Side};
use crate::practice::vehicles::VehicleClass;

/// Places the loops, given the leg along travel of each role. The order of the result is that of `legs`.
///
/// Distances are common practice, tidy in the caller's system. Loops of one side stand in a row: the one that holds the gate
/// nearest to it, then the others, each a neighbour's gap apart.
pub fn place(job: &ResolvedLoopSizing, legs: &[(Role, Length)], leaf_clearance: Option<Length>) -> Vec<LoopPlacement> {
    let leg = |role: Role| legs.iter().find(|(other, _)| *other == role).map(|(_, leg)| *leg);
    let tidy = |length: Length| STEP.ceil(length, job.system());
    let gap = NEIGHBOUR_GAP.in_system(job.system());
    let clear = clearance(job, leg(Role::Closing), leaf_clearance);
    let sweep = job.opening.barrier.sweep_share() * job.opening.width;

    // Inside, away from the barrier, in three steps; each clear of the one before.
    let between = leg(Role::BetweenLeaves).map(|leg| clear.max(tidy((sweep + clear - leg) / 2.0)));
    let past_between = between.zip(leg(Role::BetweenLeaves)).map_or(Length::default(), |(from, leg)| from + leg + gap);
    let inside = tidy(past_between.max(sweep + clear));
    let past_inside = leg(Role::ObstructionInside).map_or(inside, |leg| inside + leg + gap);
    let exit = tidy(past_inside.max(run_up(job).unwrap_or_default()));
    // Outside, likewise.
    let past_outside = tidy(leg(Role::ObstructionOutside).map_or(clear, |leg| clear + leg + gap));
    let arming = past_outside;
    let past_arming = leg(Role::Arming).map_or(arming, |leg| tidy(arming + leg + gap));

    legs.iter()
        .map(|&(role, leg)| {
            let side = role.side(job.opening.barrier);
            let near = match role {
                Role::Exit => exit,
                Role::ObstructionInside => inside,
                Role::BetweenLeaves => between.unwrap_or(clear),
                Role::ObstructionOutside => tidy(clear),
                Role::Arming => arming,
                Role::Presence => past_arming,
                Role::Closing => Length::default(),
            };
            let (from, to) = match side {
                Side::Inside => (near, near + leg),
                Side::Outside => (-(near + leg), -near),
                Side::OnTheLine => (-leg / 2.0, leg / 2.0),
            };
            LoopPlacement { side, from, to }
        })
        .collect()
}

/// The clear distance from the closed line to the first loop beside it.
fn clearance(job: &ResolvedLoopSizing, closing: Option<Length>, leaf_clearance: Option<Length>) -> Length {
    let system = job.system();
    let beside_closing = closing.map_or(Length::default(), |leg| leg / 2.0 + NEIGHBOUR_GAP.in_system(system));
    let beside_barrier = if job.opening.barrier.is_present() {
        leaf_clearance.unwrap_or_else(|| ARM_CLEARANCE.in_system(system))
    } else {
        Length::default()
    };
    STEP.ceil(beside_barrier.max(beside_closing), system)
}

/// How far a vehicle comes while the barrier opens; `None` unless speed and time are known.
fn run_up(job: &ResolvedLoopSizing) -> Option<Length> {
    Some(job.opening.approach_speed? * job.opening.opening_time?)
}

/// States what the places mean, and gives the longest unseen stretch.
pub fn judge(job: &ResolvedLoopSizing, places: &[LaidLoop], diagnostics: &mut Diagnostics) -> Option<Length> {
    judge_setback(job, places, diagnostics);
    judge_exit(job, places, diagnostics);
    judge_lead_ins(job, places, diagnostics);
    judge_roles(job, places, diagnostics);
    judge_stretch(job, places, diagnostics)
}

fn judge_setback(job: &ResolvedLoopSizing, places: &[LaidLoop], diagnostics: &mut Diagnostics) {
    let left = places.iter().map(LaidLoop::edge_setback).fold(job.opening.width, Length::min);
    let asked = job.edge_setback();
    if left < 0.999 * asked {
        let system = job.system();
        let message = Statement::new("sizing-edge-setback-reduced").length("edge_setback", left, system).length(
            "usual_edge_setback",
            asked,
            system,
        );
        let opening = FieldPath::BODY.field("opening");
        diagnostics.add_finding(
            Finding::new(FindingCode::EdgeSetbackReduced, Level::Note, &opening.field("width"), message)
                .length("edge_setback", left, system)
                .length("usual_edge_setback", asked, system),
        );
    }
}

fn judge_exit(job: &ResolvedLoopSizing, places: &[LaidLoop], diagnostics: &mut Diagnostics) {
    let Some(exit) = places.iter().find(|place| place.role == Role::Exit) else { return };
    let opening = FieldPath::BODY.field("opening");
    let subject = Some(Role::Exit);
    let (distance, system) = (exit.place.distance(), job.system());
    if run_up(job).is_none() {
        let message = Statement::new("sizing-exit-time-unknown");
        diagnostics.add_finding(Finding::new(FindingCode::ExitTimeUnknown, Level::Note, &opening, message).on(subject));
    }
    if distance > FAR_EXIT.in_system(system) {
        let message = Statement::new("sizing-exit-far-away").length("distance_from_barrier", distance, system);
        diagnostics.add_finding(
            Finding::new(FindingCode::ExitFarAway, Level::Warning, &opening.field("approach_speed"), message)
                .on(subject)
                .length("distance_from_barrier", distance, system),
        );
    }
}

/// States which loops lie farther away than the lead-in that was sent reaches.
fn judge_lead_ins(job: &ResolvedLoopSizing, places: &[LaidLoop], diagnostics: &mut Diagnostics) {
    let (lead_in, system) = (FieldPath::BODY.field("lead_in"), job.system());
    for laid in places.iter().filter(|laid| laid.lead_in.length > job.lead_in.length) {
        let message = Statement::new("sizing-exit-beyond-lead-in")
            .member("role", laid.role)
            .length("distance_from_barrier", laid.place.distance(), system)
            .length("lead_in_length", job.lead_in.length, system)
            .length("order_length", laid.lead_in.order_length(), system);
        diagnostics.add_finding(
            Finding::new(FindingCode::ExitBeyondLeadIn, Level::Warning, &lead_in.field("length"), message)
                .on(Some(laid.role))
                .length("distance_from_barrier", laid.place.distance(), system)
                .length("lead_in_length", job.lead_in.length, system),
        );
    }
}

fn judge_roles(job: &ResolvedLoopSizing, places: &[LaidLoop], diagnostics: &mut Diagnostics) {
    let has = |role| places.iter().any(|place| place.role == role);
    let roles = FieldPath::BODY.field("roles");
    let barrier = job.opening.barrier;
    let sweeps = barrier.sweep_share() > 0.0;
    if barrier.is_present() && !places.iter().any(|place| place.role.holds_the_gate()) {
        diagnostics.add_finding(Finding::new(
            FindingCode::NothingHoldsTheGate,
            Level::Warning,
            &roles,
            Statement::new("sizing-nothing-holds-the-gate"),
        ));
    }
    if sweeps {
        diagnostics.add_finding(Finding::new(
            FindingCode::LeafSweeps,
            Level::Note,
            &FieldPath::BODY.field("opening").field("barrier"),
            Statement::new("sizing-leaves-swing-inwards"),
        ));
    }
    if sweeps && !has(Role::BetweenLeaves) {
        diagnostics.add_finding(Finding::new(
            FindingCode::BetweenLeavesMissing,
            Level::Stop,
            &roles,
            Statement::new("sizing-between-leaves-missing"),
        ));
    }
    if has(Role::BetweenLeaves) && !sweeps {
        diagnostics.add_finding(
            Finding::new(FindingCode::RoleDoesNotFit, Level::Warning, &roles, Statement::new("sizing-no-leaf-sweeps"))
                .on(Some(Role::BetweenLeaves)),
        );
    }
    if has(Role::Closing) && barrier.has_metal_leaf() {
        diagnostics.add_finding(
            Finding::new(
                FindingCode::ClosingUnderLeaf,
                Level::Stop,
                &roles,
                Statement::new("sizing-closing-under-leaf"),
            )
            .on(Some(Role::Closing)),
        );
    }
}

fn judge_stretch(job: &ResolvedLoopSizing, places: &[LaidLoop], diagnostics: &mut Diagnostics) -> Option<Length> {
    let mut holding: Vec<_> = places.iter().filter(|place| place.role.holds_the_gate()).collect();
    holding.sort_by(|a, b| a.place.from.value.total_cmp(&b.place.from.value));
    let roles = FieldPath::BODY.field("roles");
    let closing_side_is_open = job.opening.barrier.is_present()
        && !holding.is_empty()
        && holding.iter().all(|laid| laid.place.side == holding[0].place.side && laid.place.side != Side::OnTheLine);
    if closing_side_is_open {
        diagnostics.add_finding(Finding::new(
            FindingCode::OneSideOnly,
            Level::Warning,
            &roles,
            Statement::new("sizing-one-side-only"),
        ));
    }
    let stretch = holding
        .windows(2)
        .map(|pair| pair[1].place.from - pair[0].place.to)
        .fold(None, |longest: Option<Length>, gap| Some(longest.map_or(gap, |longest| longest.max(gap))))?;
    let stretch = stretch.max(Length::default());
    let car = VehicleClass::PassengerCar.length();
    let two_wheeler = job
        .vehicles
        .iter()
        .filter(|vehicle| vehicle.is_two_wheeler())
        .map(|vehicle| vehicle.length())
        .fold(VehicleClass::SmallMotorcycle.length(), Length::min);
    let short_car = VehicleClass::shortest_car();
    let (level, vehicle, length) = if stretch > car {
        (Level::Stop, "car", car)
    } else if stretch > short_car {
        (Level::Warning, "short_car", short_car)
    } else if stretch > two_wheeler {
        (Level::Warning, "motorcycle", two_wheeler)
    } else {
        return Some(stretch);
    };
    let system = job.system();
    let message =
        Statement::new("sizing-unseen-stretch").code("vehicle", vehicle).length("unseen_stretch", stretch, system);
    diagnostics.add_finding(
        Finding::new(FindingCode::UnseenStretch, level, &roles, message)
            .length("unseen_stretch", stretch, system)
            .length("vehicle_length", length, system),
    );
    Some(stretch)
}
