//! Where each loop lies along the way.
//!
//! Distances are common practice, tidy in the caller's system. Loops of one side stand one behind the other: those that hold the gate
//! nearest to it, then the others, which move out until they hardly couple with what lies there already.

use uom::si::f64::Length;
use uom::si::ratio::ratio;

use super::resolved::ResolvedLoopSizing;
use super::selection::{FoundLoop, RoleChoice};
use super::unseen::{HoldingLoop, UnseenReach, longest_stretch};
use crate::calculation::budget::Search;
use crate::calculation::layout::{LoopPlacement, PlacedCoil, coupling};
use crate::practice::detectors::{HARMLESS_COUPLING, Wiring};
use crate::practice::layout::{ARM_CLEARANCE, FARTHEST_EXIT, MAX_IN_SWEEP, NEIGHBOUR_GAP, STEP};
use crate::practice::roles::{Role, Side};
use crate::practice::vehicles::VehicleClass;

/// How many steps a loop is moved out at most.
const MAX_STEPS_OUT: usize = 400;

/// The loop of a role that is to be placed.
#[derive(Clone, Copy)]
pub struct LoopToPlace<'a> {
    /// The role, and its step.
    pub choice: &'a RoleChoice,
    /// The loop.
    pub found: &'a FoundLoop<'a>,
    /// How far a car reaches over it unseen; `None` where it holds no gate.
    pub reach: Option<UnseenReach>,
}

impl LoopToPlace<'_> {
    fn leg(&self) -> Length {
        self.found.chosen.design.coil.along_travel
    }

    /// Each loop of the row at a place.
    pub fn coils_at(&self, place: LoopPlacement) -> impl Iterator<Item = PlacedCoil<'_>> {
        let design = &self.found.chosen.design;
        let (coil, inductance) = (&design.coil, design.electrical.loop_inductance);
        let centres = self.found.chosen.lane.centres.iter();
        centres.map(move |across| PlacedCoil { coil, inductance, position: (place.middle(), *across) })
    }
}

/// The places of the loops of a job.
pub struct Placing<'a> {
    job: &'a ResolvedLoopSizing,
    loops: Vec<LoopToPlace<'a>>,
    /// For each loop its places, one behind the other; empty until it is placed.
    places: Vec<Vec<LoopPlacement>>,
}

impl<'a> Placing<'a> {
    /// Places the loops, given how far the first lies from a closed leaf. The order of the result is that of `loops`.
    pub fn place(
        job: &'a ResolvedLoopSizing,
        loops: Vec<LoopToPlace<'a>>,
        leaf_clearance: Option<Length>,
    ) -> Vec<Vec<LoopPlacement>> {
        let places = vec![Vec::new(); loops.len()];
        let mut placing = Self { job, loops, places };
        placing.place_on_the_line();
        let clear = placing.clearance(leaf_clearance);
        placing.place_outside(clear);
        placing.place_inside(clear);
        placing.places
    }

    fn index(&self, role: Role) -> Option<usize> {
        self.loops.iter().position(|one| one.choice.role == role)
    }

    fn tidy(&self, length: Length) -> Length {
        STEP.ceil(length, self.job.system())
    }

    fn gap(&self) -> Length {
        NEIGHBOUR_GAP.in_system(self.job.system())
    }

    /// The distance that the caller has decided for a role.
    fn fixed(&self, role: Role) -> Option<Length> {
        self.job.fixed(role).and_then(|fixed| fixed.distance)
    }

    fn at(&self, index: usize, near: Length) -> LoopPlacement {
        let leg = self.loops[index].leg();
        match self.loops[index].choice.role.side(self.job.opening.barrier) {
            side @ Side::Inside => LoopPlacement { side, from: near, to: near + leg },
            side @ Side::Outside => LoopPlacement { side, from: -(near + leg), to: -near },
            side @ Side::OnTheLine => LoopPlacement { side, from: near - leg / 2.0, to: near + leg / 2.0 },
        }
    }

    fn place_on_the_line(&mut self) {
        for index in 0..self.loops.len() {
            let choice = self.loops[index].choice;
            if choice.role.side(self.job.opening.barrier) == Side::OnTheLine {
                let shift = self.loops[index].found.at_step(choice.step_at_loop()).shift;
                self.places[index] = vec![self.at(index, shift.unwrap_or_default())];
            }
        }
    }

    /// The clear distance from the closed line to the first loop beside it.
    fn clearance(&self, leaf_clearance: Option<Length>) -> Length {
        if self.job.opening.barrier.is_present() {
            leaf_clearance.unwrap_or_else(|| ARM_CLEARANCE.in_system(self.job.system()))
        } else {
            Length::default()
        }
    }

    /// Outside: what holds the gate, then the post, then what only reports.
    fn place_outside(&mut self, clear: Length) {
        let mut near = clear.max(self.past_the_line(Side::Outside));
        for role in [Role::ObstructionOutside, Role::Arming, Role::Presence] {
            let Some(index) = self.index(role).filter(|index| self.places[*index].is_empty()) else { continue };
            near = self.put(index, near, None);
            near = self.tidy(near + self.loops[index].leg() + self.gap());
        }
    }

    /// Inside: the sweep, then what holds the gate, then the exit.
    fn place_inside(&mut self, clear: Length) {
        let clear = clear.max(self.past_the_line(Side::Inside));
        let sweep = self.job.opening.barrier.sweep_share() * self.job.opening.width;
        let mut near = if sweep > Length::default() { self.tidy(sweep + clear) } else { clear };
        let between = self.index(Role::BetweenLeaves);
        if let Some(between) = between.filter(|_| self.job.opening.barrier.has_sweep()) {
            near = self.place_sweep(between, clear, near);
        }
        if let Some(inside) = self.index(Role::ObstructionInside) {
            near = self.put(inside, near, None) + self.loops[inside].leg() + self.gap();
        }
        if let Some(exit) = self.index(Role::Exit) {
            let limit = STEP.floor(farthest_exit(self.job, self.loops[exit].leg()), self.job.system());
            let wanted = run_up(self.job).unwrap_or_default().min(limit);
            near = self.put(exit, self.tidy(near.max(wanted)), Some(limit)) + self.loops[exit].leg() + self.gap();
        }
        // A role that does not fit takes no place from those that do.
        if let Some(misfit) = between.filter(|_| !self.job.opening.barrier.has_sweep()) {
            self.put(misfit, self.tidy(near), None);
        }
    }

    /// How far what straddles the line keeps others off it.
    fn past_the_line(&self, side: Side) -> Length {
        let straddling = self.fitting().flat_map(|(_, places)| places);
        let ends = straddling.map(|place| if side == Side::Inside { place.to } else { -place.from } + self.gap());
        ends.fold(Length::default(), Length::max)
    }

    /// Lays as many loops in the sweep as leave no car unseen, from `clear` on, and gives the place of what lies behind them.
    fn place_sweep(&mut self, index: usize, clear: Length, behind: Length) -> Length {
        let (leg, gap) = (self.loops[index].leg(), self.gap());
        let first = self.fixed(Role::BetweenLeaves).unwrap_or(clear);
        let car = VehicleClass::PassengerCar.length();
        let lay = |count: usize| {
            let least = first + count as f64 * (leg + gap);
            let behind = if least > behind { self.tidy(least) } else { behind };
            let free = (behind - first - count as f64 * leg) / count as f64;
            let near = |order: usize| match order {
                0 => first,
                order => STEP.floor(first + order as f64 * (leg + free), self.job.system()),
            };
            let places: Vec<_> = (0..count).map(|order| self.at(index, near(order))).collect();
            (places, behind)
        };
        let stretch = |(places, behind): &(Vec<LoopPlacement>, Length)| {
            let reach = self.loops[index].reach?;
            let mut holding: Vec<_> = places.iter().map(|place| HoldingLoop { place: *place, reach }).collect();
            if let Some((inside, reach)) =
                self.index(Role::ObstructionInside).and_then(|inside| Some((inside, self.loops[inside].reach?)))
            {
                let near = self.fixed(Role::ObstructionInside).unwrap_or(*behind);
                holding.push(HoldingLoop { place: self.at(inside, near), reach });
            }
            longest_stretch(holding)
        };
        let layouts: Vec<_> = (1..=MAX_IN_SWEEP).map(lay).collect();
        let serves = |layout: &&(Vec<LoopPlacement>, Length)| stretch(layout).is_none_or(|stretch| stretch <= car);
        let chosen = layouts.iter().find(serves).or(layouts.last());
        let (places, behind) = chosen.cloned().unwrap_or_default();
        self.places[index] = places;
        behind
    }

    /// Puts a loop at its fixed place, or at `near` or as far out as keeps it from coupling with what is there already, not beyond `limit`.
    /// What holds the gate stays near it. Gives the distance.
    fn put(&mut self, index: usize, near: Length, limit: Option<Length>) -> Length {
        let role = self.loops[index].choice.role;
        let step = STEP.in_system(self.job.system());
        let mut distance = near;
        if let Some(fixed) = self.fixed(role) {
            distance = fixed;
        } else if !role.holds_the_gate() && self.job.wiring == Wiring::Separate {
            let may_move = |distance: Length| limit.is_none_or(|limit| distance + step <= limit);
            for _ in 0..MAX_STEPS_OUT {
                if !self.couples(index, self.at(index, distance))
                    || !may_move(distance)
                    || !self.job.budget.allows(Search::Places)
                {
                    break;
                }
                distance += step;
            }
        }
        self.places[index] = vec![self.at(index, distance)];
        distance
    }

    /// The loops whose roles fit the barrier, with their places.
    fn fitting(&self) -> impl Iterator<Item = (&LoopToPlace<'a>, &Vec<LoopPlacement>)> {
        let barrier = self.job.opening.barrier;
        self.loops.iter().zip(&self.places).filter(move |(one, _)| one.choice.role.fits(barrier))
    }

    fn couples(&self, index: usize, place: LoopPlacement) -> bool {
        let others = self.fitting().flat_map(|(one, places)| places.iter().flat_map(move |place| one.coils_at(*place)));
        others.into_iter().any(|other| {
            self.loops[index]
                .coils_at(place)
                .any(|one| coupling(&one, &other, &self.job.budget).get::<ratio>() >= HARMLESS_COUPLING)
        })
    }
}

/// The farthest that the nearest wire of the exit loop is laid from the gate.
pub fn farthest_exit(job: &ResolvedLoopSizing, leg: Length) -> Length {
    let usual = FARTHEST_EXIT.in_system(job.system());
    job.opening.drive_length.map_or(usual, |drive| usual.min(drive - leg))
}

/// How far a vehicle comes while the barrier opens; `None` unless speed and time are known.
pub fn run_up(job: &ResolvedLoopSizing) -> Option<Length> {
    Some(job.opening.approach_speed? * job.opening.opening_time?)
}
