//! The search for the loop of a role: the least saw cut with which every vehicle is seen.

use uom::si::f64::{Length, Ratio};

use super::design::{Design, Grade, MORE_TURNS, design, first_leg, leg_across, with_turns};
use super::job::Job;
use super::sight::{Row, Sighting};
use crate::calculation::input::Shape;
use crate::calculation::loop_characteristics::Conditions;
use crate::calculation::vehicle_response::{Field, Metal, flat_underside, highest};
use crate::practice::roles::{ALTERNATIVE_STEP, MAX_LEG, MAX_SIDE_BY_SIDE, MIN_ROW_LEG, ROW_GAP, Role, STEP};
use crate::practice::vehicles::VehicleClass;

/// What a search needs to know of a role; roles with the same brief get the same loop.
pub struct Brief<'a> {
    /// The job.
    pub job: &'a Job,
    /// Under what conditions loops are measured.
    pub conditions: &'a Conditions,
    /// Whether the loop keeps a barrier from closing on a vehicle.
    pub holds_the_gate: bool,
    /// The leg along travel to start with.
    pub first_leg: Length,
    /// The change that the unit switches at.
    pub threshold: Ratio,
}

/// The loop of a role, or the row of loops, and what it sees.
pub struct Choice {
    /// One loop.
    pub design: Design,
    /// Its field.
    pub field: Field,
    /// The middles of the loops, as offsets from the middle of the opening; one at 0 for a single loop.
    pub centres: Vec<Length>,
    /// The vehicles, in the order asked for.
    pub sightings: Vec<Sighting>,
    /// The highest flat underside that is seen.
    pub seen_height: Length,
}

/// How far a design came: better ones compare greater.
#[derive(Clone, Copy, PartialEq, PartialOrd)]
struct Merit {
    builds: bool,
    served: usize,
    weakest: f64,
}

impl<'a> Brief<'a> {
    /// The brief of a role.
    pub fn of(role: Role, job: &'a Job, conditions: &'a Conditions) -> Self {
        Self {
            job,
            conditions,
            holds_the_gate: role.holds_the_gate(),
            first_leg: first_leg(role, job),
            threshold: job.threshold(),
        }
    }

    /// Whether two roles of one job ask for the same loop.
    pub fn is_like(&self, other: &Self) -> bool {
        self.holds_the_gate == other.holds_the_gate && self.first_leg == other.first_leg
    }

    /// Searches legs, turns and rows, in the order of their saw cut; takes the first that serves, or the one that comes nearest.
    ///
    /// Longer legs buy height, more turns buy share against the lead-in, narrower loops in a row buy sensitivity. Once a longer
    /// leg is no better than the one before, still longer ones are not tried.
    pub fn search(&self) -> Choice {
        let system = self.job.system();
        let (step, longest) = (ALTERNATIVE_STEP.in_system(system), 1.001 * MAX_LEG.in_system(system));
        let mut best: Option<Choice> = None;
        for count in 1..=MAX_SIDE_BY_SIDE {
            let Some(across) = row_leg(count, self.job) else { break };
            let mut before: Option<Merit> = None;
            let mut along = self.first_leg;
            while along <= longest {
                let next = self.fewest_turns(along, across, Shape::Rectangle, count);
                let merit = self.merit(&next);
                if self.serves(&next) {
                    return self.complete(next);
                }
                if before.is_some_and(|before| merit <= before) {
                    break;
                }
                before = Some(merit);
                if best.as_ref().is_none_or(|best| merit > self.merit(best)) {
                    best = Some(next);
                }
                along += step;
            }
        }
        let usual = || self.fewest_turns(self.first_leg, leg_across(self.job), Shape::Rectangle, 1);
        self.complete(best.unwrap_or_else(usual))
    }

    /// The loop with these legs and the fewest turns that serve, for an alternative.
    pub fn fit(&self, along: Length, across: Length, shape: Shape, count: usize) -> Choice {
        self.complete(self.fewest_turns(along, across, shape, count))
    }

    /// Starts with the fewest turns that suit the unit, and adds some while that helps a vehicle that is not seen well.
    fn fewest_turns(&self, along: Length, across: Length, shape: Shape, count: usize) -> Choice {
        let fewest = design(along, across, shape, self.job, self.conditions);
        let (turns, grade) = (fewest.coil.turns, fewest.grade);
        let mut best = self.look(fewest, count);
        for turns in turns + 1..=turns + MORE_TURNS {
            let next = with_turns(&best.design, turns, self.job, self.conditions);
            if self.serves(&best) || next.grade > grade {
                break;
            }
            let next = self.look(next, count);
            if self.merit(&next) > self.merit(&best) {
                best = next;
            }
        }
        best
    }

    /// Looks at every vehicle over a design; what takes long is left to [`Brief::complete`].
    fn look(&self, design: Design, count: usize) -> Choice {
        let field = Field::new(&design.coil, &design.electrical);
        let pitch = design.coil.across_lane + ROW_GAP.in_system(self.job.system());
        let middle = (count - 1) as f64 / 2.0;
        let centres: Vec<_> = (0..count).map(|index| (index as f64 - middle) * pitch).collect();
        let row = Row { field: &field, centres: &centres };
        let sightings = self.job.vehicles.iter().map(|class| row.sight(*class, self)).collect();
        Choice { design, field, centres, sightings, seen_height: Length::default() }
    }

    /// Adds where a vehicle drops out, where a two-wheeler is not seen, and how high metal is seen.
    fn complete(&self, mut choice: Choice) -> Choice {
        let row = Row { field: &choice.field, centres: &choice.centres };
        for sighting in &mut choice.sightings {
            sighting.drops_out = row.drops_out(sighting.class, self);
            sighting.blind = row.blind(sighting.class, self);
        }
        choice.seen_height = highest(&choice.field, highest_underside(self.job), self.threshold);
        choice
    }

    /// Whether a loop of another make, as it is, sees every vehicle as the role asks and suits the unit.
    pub fn accepts(&self, design: Design) -> bool {
        self.serves(&self.look(design, 1))
    }

    fn merit(&self, choice: &Choice) -> Merit {
        let times = |sighting: &Sighting| (sighting.change.min(sighting.least) / self.threshold).value;
        if choice.design.grade >= Grade::TooDeep {
            // What cannot be built gets no better by seeing more: the smallest such loop shows what is wrong.
            return Merit { builds: false, served: 0, weakest: 0.0 };
        }
        Merit {
            builds: true,
            served: choice.sightings.iter().filter(|sighting| sighting.serves(self)).count(),
            weakest: choice.sightings.iter().map(times).fold(f64::INFINITY, f64::min),
        }
    }

    /// Whether a design can be built and every vehicle is seen as the role asks, without letting go.
    fn serves(&self, choice: &Choice) -> bool {
        let Merit { builds, served, .. } = self.merit(choice);
        let row = Row { field: &choice.field, centres: &choice.centres };
        builds
            && served == choice.sightings.len()
            && !(self.holds_the_gate && self.job.vehicles.iter().any(|class| row.drops_out(*class, self)))
    }
}

/// As large as the highest vehicle's that comes, or a car's where only two-wheelers come.
fn highest_underside(job: &Job) -> &'static Metal {
    let height = |class: &VehicleClass| flat_underside(*class).height;
    let highest = job.vehicles.iter().max_by(|a, b| height(a).value.total_cmp(&height(b).value));
    flat_underside(highest.copied().unwrap_or(VehicleClass::PassengerCar))
}

/// The leg across of each of `count` loops; `None` where a row would be too crowded.
fn row_leg(count: usize, job: &Job) -> Option<Length> {
    let system = job.system();
    let whole = leg_across(job);
    if count == 1 {
        return Some(whole);
    }
    let gaps = (count - 1) as f64 * ROW_GAP.in_system(system);
    let each = STEP.floor((whole - gaps) / count as f64, system);
    (each >= 0.999 * MIN_ROW_LEG.in_system(system)).then_some(each)
}
