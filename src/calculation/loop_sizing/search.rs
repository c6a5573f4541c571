//! The search for the loop of a role: the first, from small to large, with which every vehicle is seen.

use uom::si::f64::{Length, Ratio};

use super::design::{GradedLoop, LoopGrade, MORE_TURNS, design, first_leg, leg_across, with_turns};
use super::resolved::ResolvedLoopSizing;
use super::sightings::{ClassSighting, LoopRow, VehicleSighting};
use crate::calculation::input::Shape;
use crate::calculation::loop_characteristics::MeasurementConditions;
use crate::calculation::vehicle_response::{LoopField, VehicleModel, find_seen_height};
use crate::practice::layout::{ALTERNATIVE_STEP, MAX_LEG, MAX_SIDE_BY_SIDE, MIN_ROW_LEG, ROW_GAP, STEP};
use crate::practice::roles::Role;
use crate::practice::vehicles::VehicleClass;

/// The search for the loop of a role; roles that ask for the same get the same loop.
pub struct RoleSearch<'a> {
    /// The job.
    pub job: &'a ResolvedLoopSizing,
    /// Under what conditions loops are measured.
    pub conditions: &'a MeasurementConditions,
    /// Whether the loop keeps a barrier from closing on a vehicle.
    pub holds_the_gate: bool,
    /// The leg along travel to start with.
    pub first_leg: Length,
    /// The change that the unit switches at.
    pub threshold: Ratio,
}

/// The loop of a role, or the row of loops, and what it sees.
pub struct LoopCandidate {
    /// One loop.
    pub design: GradedLoop,
    /// Its field.
    pub field: LoopField,
    /// The middles of the loops, as offsets from the middle of the opening; one at 0 for a single loop.
    pub centres: Vec<Length>,
    /// The vehicles, in the order of the closed list, each once.
    pub sightings: Vec<ClassSighting>,
    /// The highest flat underside that is seen.
    pub seen_height: Length,
}

impl LoopCandidate {
    /// From the outermost wire to the edge of an opening of this width.
    pub fn edge_setback(&self, opening_width: Length) -> Length {
        let outermost = self.centres.iter().copied().fold(Length::default(), Length::max);
        opening_width / 2.0 - outermost - self.design.coil.across_lane / 2.0
    }

    /// The vehicles over it, for the report.
    pub fn vehicles(&self, resolved: &ResolvedLoopSizing) -> Vec<VehicleSighting> {
        let (threshold, lane) = (resolved.threshold(), resolved.opening.width);
        self.sightings.iter().map(|sighting| VehicleSighting::of(sighting, threshold, lane)).collect()
    }
}

/// How well a candidate serves: better ones compare greater.
#[derive(Clone, Copy, PartialEq, PartialOrd)]
struct CandidateScore {
    builds: bool,
    served: usize,
    weakest: f64,
}

impl<'a> RoleSearch<'a> {
    /// The search for a role.
    pub fn of(role: Role, job: &'a ResolvedLoopSizing, conditions: &'a MeasurementConditions) -> Self {
        Self {
            job,
            conditions,
            holds_the_gate: role.holds_the_gate(),
            first_leg: first_leg(role, job),
            threshold: job.threshold(),
        }
    }

    /// Whether two roles of one job ask for the same loop.
    pub fn gives_same_loop_as(&self, other: &Self) -> bool {
        self.holds_the_gate == other.holds_the_gate && self.first_leg == other.first_leg
    }

    /// Searches single loops first, then rows of two and more; of each, legs along travel from short to long; of each, turns from
    /// few to many. Takes the first candidate that serves, or the one that comes nearest.
    ///
    /// Longer legs see higher metal, more turns lose less to the lead-in, narrower loops in a row are more sensitive. Once a longer
    /// leg is no better than the one before, still longer ones are not tried.
    pub fn run(&self) -> LoopCandidate {
        let system = self.job.system();
        let (step, longest) = (ALTERNATIVE_STEP.in_system(system), 1.001 * MAX_LEG.in_system(system));
        let mut best: Option<LoopCandidate> = None;
        for count in 1..=MAX_SIDE_BY_SIDE {
            let Some(across) = row_leg(count, self.job) else { break };
            let mut before: Option<CandidateScore> = None;
            let mut along = self.first_leg;
            while along <= longest {
                let next = self.fewest_turns(along, across, Shape::Rectangle, count);
                let score = self.score(&next);
                if self.serves(&next) {
                    return self.complete(next);
                }
                if before.is_some_and(|before| score <= before) {
                    break;
                }
                before = Some(score);
                if best.as_ref().is_none_or(|best| score > self.score(best)) {
                    best = Some(next);
                }
                along += step;
            }
        }
        let usual = || self.fewest_turns(self.first_leg, leg_across(self.job), Shape::Rectangle, 1);
        self.complete(best.unwrap_or_else(usual))
    }

    /// The loop with these legs and the fewest turns that serve, for an alternative.
    pub fn fit(&self, along: Length, across: Length, shape: Shape, count: usize) -> LoopCandidate {
        self.complete(self.fewest_turns(along, across, shape, count))
    }

    /// Starts with the fewest turns that suit the unit; while some vehicle is not seen well, tries up to [`MORE_TURNS`] more, and
    /// takes the best.
    fn fewest_turns(&self, along: Length, across: Length, shape: Shape, count: usize) -> LoopCandidate {
        let fewest = design(along, across, shape, self.job, self.conditions);
        let (turns, grade) = (fewest.coil.turns, fewest.grade);
        let mut best = self.with_sightings(fewest, count);
        for turns in turns + 1..=turns + MORE_TURNS {
            let next = with_turns(&best.design, turns, self.job, self.conditions);
            if self.serves(&best) || next.grade > grade {
                break;
            }
            let next = self.with_sightings(next, count);
            if self.score(&next) > self.score(&best) {
                best = next;
            }
        }
        best
    }

    /// Loops of this role in a row.
    fn row<'b>(&self, field: &'b LoopField, centres: &'b [Length]) -> LoopRow<'b> {
        let (lane, threshold) = (self.job.opening.width, self.threshold);
        LoopRow { field, centres, lane, threshold, reaches_edges: self.holds_the_gate }
    }

    /// Computes the changes that every vehicle makes over a design; what takes long is left to [`RoleSearch::complete`].
    fn with_sightings(&self, design: GradedLoop, count: usize) -> LoopCandidate {
        let field = LoopField::new(&design.coil, &design.electrical);
        let pitch = design.coil.across_lane + ROW_GAP.in_system(self.job.system());
        let middle = (count - 1) as f64 / 2.0;
        let centres: Vec<_> = (0..count).map(|index| (index as f64 - middle) * pitch).collect();
        let row = self.row(&field, &centres);
        let sightings = self.job.vehicles.iter().map(|class| row.sight(*class)).collect();
        LoopCandidate { design, field, centres, sightings, seen_height: Length::default() }
    }

    /// Adds where a vehicle drops out, where a two-wheeler is not seen, and how high metal is seen.
    fn complete(&self, mut candidate: LoopCandidate) -> LoopCandidate {
        let row = self.row(&candidate.field, &candidate.centres);
        for sighting in &mut candidate.sightings {
            sighting.drops_out = row.drops_out(sighting.class);
            sighting.unseen = row.unseen(sighting.class);
        }
        candidate.seen_height = find_seen_height(&candidate.field, highest_underside(self.job), self.threshold);
        candidate
    }

    /// Whether a loop of another make, as it is, sees every vehicle as the role asks and suits the unit.
    pub fn accepts(&self, design: GradedLoop) -> bool {
        self.serves(&self.with_sightings(design, 1))
    }

    fn score(&self, candidate: &LoopCandidate) -> CandidateScore {
        let times = |sighting: &ClassSighting| (sighting.change.min(sighting.least) / self.threshold).value;
        if candidate.design.grade >= LoopGrade::TooDeep {
            // All that cannot be built score alike, so the smallest such loop is answered, with what is wrong.
            return CandidateScore { builds: false, served: 0, weakest: 0.0 };
        }
        CandidateScore {
            builds: true,
            served: candidate.sightings.iter().filter(|sighting| sighting.serves(self.threshold)).count(),
            weakest: candidate.sightings.iter().map(times).fold(f64::INFINITY, f64::min),
        }
    }

    /// Whether a design can be built and every vehicle is seen as the role asks, without letting go.
    fn serves(&self, candidate: &LoopCandidate) -> bool {
        let CandidateScore { builds, served, .. } = self.score(candidate);
        let row = self.row(&candidate.field, &candidate.centres);
        builds
            && served == candidate.sightings.len()
            && !(self.holds_the_gate && self.job.vehicles.iter().any(|class| row.drops_out(*class)))
    }
}

/// The underside of the highest vehicle, or a car's where only two-wheelers come.
fn highest_underside(job: &ResolvedLoopSizing) -> &'static VehicleModel {
    let undersides = job.vehicles.iter().map(|class| VehicleModel::for_seen_height(*class));
    let highest = undersides.max_by(|a, b| a.height.value.total_cmp(&b.height.value));
    highest.unwrap_or_else(|| VehicleModel::of_class(VehicleClass::PassengerCar))
}

/// The leg across of each of `count` loops; `None` where a row would be too crowded.
fn row_leg(count: usize, job: &ResolvedLoopSizing) -> Option<Length> {
    let system = job.system();
    let whole = leg_across(job);
    if count == 1 {
        return Some(whole);
    }
    let gaps = (count - 1) as f64 * ROW_GAP.in_system(system);
    let each = STEP.floor((whole - gaps) / count as f64, system);
    (each >= 0.999 * MIN_ROW_LEG.in_system(system)).then_some(each)
}
