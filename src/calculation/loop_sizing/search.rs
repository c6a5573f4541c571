//! The search for the loop of a role: the first, from small to large, with which every vehicle is seen.

use uom::si::f64::{Length, Ratio};

use super::arm::ArmRule;
use super::design::{
    DesignBrief, EdgeSetbacks, GradedLoop, LoopGrade, MORE_TURNS, coil, design, first_leg, with_turns,
};
use super::fixed_loop::ResolvedFixedLoop;
use super::resolved::ResolvedLoopSizing;
use super::vehicle_sighting::VehicleSighting;
use crate::calculation::budget::Search;
use crate::calculation::input::{ResolvedLeadIn, Shape};
use crate::calculation::layout::{ClassSighting, Lane, LoopRow};
use crate::calculation::loop_characteristics::MeasurementConditions;
use crate::calculation::vehicle_response::{LoopField, UnseenStrips, VehicleModel, find_seen_height};
use crate::practice::layout::{ALTERNATIVE_STEP, MAX_LEG, MAX_SIDE_BY_SIDE, MIN_ROW_LEG, ROW_GAP, STEP};
use crate::practice::roles::Role;
use crate::practice::site::Barrier;
use crate::practice::vehicles::VehicleClass;

/// The search for the loop of a role; roles that ask for the same get the same loop.
pub struct RoleSearch<'a> {
    /// The job.
    pub job: &'a ResolvedLoopSizing,
    role: Role,
    /// Whether the loop keeps a barrier from closing on a vehicle.
    pub holds_the_gate: bool,
    /// The pair to the unit.
    pub lead_in: ResolvedLeadIn,
    /// The change that loops are designed for.
    pub design_step: Ratio,
    conditions: &'a MeasurementConditions,
    /// The leg along travel to start with.
    first_leg: Length,
    /// The lane, with one loop in the middle of its span.
    lane: Lane,
    /// The leg across that the clear strips leave.
    across: Length,
    /// The clear strips.
    pub setbacks: EdgeSetbacks,
    /// What the caller has decided of it.
    pub fixed: Option<&'a ResolvedFixedLoop>,
    /// The rule of a loop under an arm; `None` for others.
    arm: Option<ArmRule>,
}

/// The loop of a role, or the row of loops, and what it sees.
pub struct LoopCandidate {
    /// One loop.
    pub design: GradedLoop,
    /// Its field.
    pub field: LoopField,
    /// The lane, and the middles of the loops across it.
    pub lane: Lane,
    /// The vehicles, in the order of the closed list, each once.
    pub sightings: Vec<ClassSighting>,
}

/// What of a candidate depends on the step that its unit is set to.
pub struct SeenAtStep {
    /// The step.
    pub step: Ratio,
    /// What the other loops of its channel leave of a change at this one; 1 for a channel of its own.
    pub share: Ratio,
    /// Where across the lane each two-wheeler is not seen; `None` for other vehicles. In the order of the sightings.
    pub unseen: Vec<Option<UnseenStrips>>,
    /// The highest flat underside that is seen.
    pub seen_height: Length,
}

impl LoopCandidate {
    /// Whether the turns fit the slot and the unit tunes to them.
    fn can_be_built(&self) -> bool {
        self.design.grade < LoopGrade::TooDeep
    }

    /// How many loops lie side by side.
    pub fn count(&self) -> usize {
        self.lane.centres.len()
    }

    /// The vehicles over it, for the report.
    pub fn vehicles(&self, seen: &SeenAtStep) -> Vec<VehicleSighting> {
        let pairs = self.sightings.iter().zip(&seen.unseen);
        pairs
            .map(|(sighting, unseen)| {
                VehicleSighting::of(&sighting.diluted(seen.share), unseen.as_ref(), seen.step, self.lane.width)
            })
            .collect()
    }

    /// What it sees at a step of its channel, of whose changes the other loops leave a share.
    pub fn at_step(&self, step: Ratio, share: Ratio, job: &ResolvedLoopSizing) -> SeenAtStep {
        let (row, at_loop) = (self.row(), step / share);
        SeenAtStep {
            step,
            share,
            unseen: self.sightings.iter().map(|sighting| row.unseen(sighting.class, at_loop)).collect(),
            seen_height: find_seen_height(&self.field, highest_underside(job), at_loop),
        }
    }

    /// The loops in their lane.
    pub fn row(&self) -> LoopRow<'_> {
        LoopRow { field: &self.field, lane: &self.lane }
    }
}

/// A candidate with how well it serves.
struct ScoredCandidate {
    candidate: LoopCandidate,
    score: CandidateScore,
}

/// How well a candidate serves: better ones compare greater.
#[derive(Clone, Copy, PartialEq, PartialOrd)]
struct CandidateScore {
    builds: bool,
    served: usize,
    /// Whether every tail is past the arm when the unit lets go; true of loops that lie under none.
    clears_arm: bool,
    weakest: f64,
}

impl<'a> RoleSearch<'a> {
    /// The search for a role on a lead-in, between clear strips at the edges.
    pub fn of(
        role: Role,
        lead_in: ResolvedLeadIn,
        setbacks: EdgeSetbacks,
        job: &'a ResolvedLoopSizing,
        conditions: &'a MeasurementConditions,
    ) -> Self {
        let (opening, fixed) = (&job.opening, job.fixed(role));
        let (across, middle) = setbacks.span(job);
        Self {
            job,
            conditions,
            role,
            holds_the_gate: role.holds_the_gate(),
            first_leg: fixed.and_then(|fixed| fixed.along_travel).unwrap_or_else(|| first_leg(role, job)),
            lane: match opening.barrier {
                Barrier::SwingGate => Lane::of(role, opening.width, vec![middle], opening.system).beside_one_leaf(),
                _ => Lane::of(role, opening.width, vec![middle], opening.system),
            },
            across,
            setbacks,
            lead_in,
            design_step: job.design_step(),
            fixed,
            arm: (role == Role::Closing).then(|| ArmRule::of(job)),
        }
    }

    /// What its loops are designed for.
    pub fn brief(&self) -> DesignBrief<'_> {
        DesignBrief { job: self.job, lead_in: &self.lead_in, conditions: self.conditions }
    }

    /// Whether two roles of one job ask for the same loop.
    pub fn gives_same_loop_as(&self, other: &Self) -> bool {
        let decided = |search: &Self| {
            let fixed = search.fixed?;
            Some((fixed.shape, fixed.across_lane, fixed.turns))
                .filter(|(shape, across, turns)| shape.is_some() || across.is_some() || turns.is_some())
        };
        let leg_is_fixed = |search: &Self| search.fixed.is_some_and(|fixed| fixed.along_travel.is_some());
        self.lane == other.lane
            && self.across == other.across
            && self.first_leg == other.first_leg
            && self.lead_in.length == other.lead_in.length
            && self.arm.is_some() == other.arm.is_some()
            && decided(self) == decided(other)
            && leg_is_fixed(self) == leg_is_fixed(other)
    }

    /// How far a loop under an arm is moved towards travel for the arm to fall behind every tail, when the unit switches at `step`; `None`
    /// where no place does. Nothing for other loops.
    pub fn shift_under_arm(&self, candidate: &LoopCandidate, step: Ratio) -> Option<Length> {
        let Some(arm) = &self.arm else { return Some(Length::default()) };
        arm.shift(&candidate.row(), candidate.design.coil.along_travel, step, self.job)
    }

    /// Searches single loops first, then rows of two and more; of each, legs along travel from short to long; of each, turns from
    /// few to many. Takes the first candidate that serves, or the one that comes nearest.
    ///
    /// Longer legs see higher metal, more turns lose less to the lead-in, narrower loops in a row are more sensitive. Once a longer
    /// leg is no better than the one before, still longer ones are not tried.
    pub fn run(&self) -> LoopCandidate {
        let system = self.job.system();
        let (step, longest) = (ALTERNATIVE_STEP.in_system(system), 1.001 * MAX_LEG.in_system(system));
        let mut best: Option<ScoredCandidate> = None;
        let shape = self.fixed.and_then(|fixed| fixed.shape).unwrap_or(Shape::Rectangle);
        let (most, longest) = match self.fixed {
            Some(ResolvedFixedLoop { across_lane, along_travel, .. }) => {
                (if across_lane.is_some() { 1 } else { MAX_SIDE_BY_SIDE }, along_travel.unwrap_or(longest))
            }
            None => (MAX_SIDE_BY_SIDE, longest),
        };
        'rows: for count in 1..=most {
            let Some(across) = self.row_leg(count) else { break };
            let mut before: Option<CandidateScore> = None;
            let mut along = self.first_leg;
            while along <= longest {
                if best.is_some() && !self.job.budget.allows(Search::Loops) {
                    break 'rows;
                }
                let next = self.fewest_turns(along, across, shape, count);
                let score = next.score;
                if self.serves(&next) {
                    return self.complete(next.candidate);
                }
                // Under an arm a longer leg lets go later, though it may see less.
                let goes_on = score.builds && !score.clears_arm;
                if before.is_some_and(|before| score <= before) && !goes_on {
                    break;
                }
                before = Some(score);
                if best.as_ref().is_none_or(|best| score > best.score) {
                    best = Some(next);
                }
                along += step;
            }
        }
        let usual = || self.fewest_turns(self.first_leg, self.across, shape, 1);
        self.complete(best.unwrap_or_else(usual).candidate)
    }

    /// The loop with these legs and the fewest turns that serve, for an alternative.
    pub fn fit(&self, along: Length, across: Length, shape: Shape, count: usize) -> LoopCandidate {
        self.complete(self.fewest_turns(along, across, shape, count).candidate)
    }

    /// The loops of a candidate between other clear strips: as many, with the same leg along travel, shape and turns.
    pub fn fitted_between(&self, setbacks: EdgeSetbacks, like: &LoopCandidate) -> LoopCandidate {
        let search = Self::of(self.role, self.lead_in.clone(), setbacks, self.job, self.conditions);
        let (own, count) = (&like.design.coil, like.count());
        let across = search.row_leg(count).unwrap_or(own.across_lane);
        let coil = coil(own.along_travel, across, own.shape, own.turns, self.job);
        search.laid_out(GradedLoop::new(coil, search.brief()), count)
    }

    /// Loops of another make, as they are, where they see every vehicle as the role asks, suit the unit and fit the opening. The first
    /// vehicle that they do not see is enough to refuse them.
    pub fn accept(&self, design: GradedLoop, count: usize) -> Option<LoopCandidate> {
        let candidate = self.laid_out(design, count);
        let row = candidate.row();
        let is_seen = |class: &VehicleClass| row.sight_whole(*class).serves(self.design_step);
        (candidate.can_be_built() && self.job.vehicles.iter().all(is_seen)).then_some(())?;
        let scored = self.scored(candidate);
        self.serves(&scored).then(|| self.complete(scored.candidate))
    }

    /// Starts with the fewest turns that suit the unit; while some vehicle is not seen well, tries up to [`MORE_TURNS`] more, and
    /// takes the best.
    fn fewest_turns(&self, along: Length, across: Length, shape: Shape, count: usize) -> ScoredCandidate {
        if let Some(turns) = self.fixed.and_then(|fixed| fixed.turns) {
            let coil = coil(along, across, shape, turns, self.job);
            return self.scored(self.laid_out(GradedLoop::new(coil, self.brief()), count));
        }
        let fewest = design(along, across, shape, self.brief());
        let (turns, grade) = (fewest.coil.turns, fewest.grade);
        let mut best = self.scored(self.laid_out(fewest, count));
        for turns in turns + 1..=turns + MORE_TURNS {
            if self.serves(&best) || !self.job.budget.allows(Search::Loops) {
                break;
            }
            let next = with_turns(&best.candidate.design, turns, self.brief());
            if next.grade > grade {
                break;
            }
            let next = self.scored(self.laid_out(next, count));
            if next.score > best.score {
                best = next;
            }
        }
        best
    }

    /// The leg across of each of `count` loops; `None` where a row would be too crowded.
    fn row_leg(&self, count: usize) -> Option<Length> {
        let system = self.job.system();
        if count == 1 {
            return Some(self.fixed.and_then(|fixed| fixed.across_lane).unwrap_or(self.across));
        }
        let gaps = (count - 1) as f64 * ROW_GAP.in_system(system);
        let each = STEP.floor((self.across - gaps) / count as f64, system);
        (each >= 0.999 * MIN_ROW_LEG.in_system(system)).then_some(each)
    }

    /// Computes the changes that every vehicle makes over loops that can be built, and how well they serve; what takes long is left to
    /// [`Self::complete`].
    fn scored(&self, mut candidate: LoopCandidate) -> ScoredCandidate {
        if candidate.can_be_built() {
            let row = LoopRow { field: &candidate.field, lane: &candidate.lane };
            candidate.sightings = self.job.vehicles.iter().map(|class| row.sight_whole(*class)).collect();
        }
        let score = self.score(&candidate);
        ScoredCandidate { candidate, score }
    }

    /// Adds what is left until the tails of vehicles reach the loops.
    fn complete(&self, mut candidate: LoopCandidate) -> LoopCandidate {
        let row = LoopRow { field: &candidate.field, lane: &candidate.lane };
        candidate.sightings = self.job.vehicles.iter().map(|class| row.sight(*class)).collect();
        candidate
    }

    /// So many loops of a design across the lane, without what vehicles make.
    fn laid_out(&self, design: GradedLoop, count: usize) -> LoopCandidate {
        let field = LoopField::new(&design.coil, &design.electrical, &self.job.budget);
        let pitch = design.coil.across_lane + ROW_GAP.in_system(self.job.system());
        let middle = (count - 1) as f64 / 2.0;
        // A leg that was decided may leave no strip beside a leaf, but stays in the opening.
        let spare = ((self.lane.width - design.coil.across_lane) / 2.0 - middle * pitch).max(Length::default());
        let at = self.lane.middle().min(spare).max(-spare);
        let centres = (0..count).map(|index| at + (index as f64 - middle) * pitch).collect();
        let lane = Lane { centres, ..self.lane.clone() };
        LoopCandidate { design, field, lane, sightings: Vec::new() }
    }

    fn score(&self, candidate: &LoopCandidate) -> CandidateScore {
        let times = |sighting: &ClassSighting| (sighting.change.min(sighting.least) / self.design_step).value;
        if !candidate.can_be_built() {
            // All that cannot be built score alike, so the smallest such loop is answered, with what is wrong.
            return CandidateScore { builds: false, served: 0, clears_arm: false, weakest: 0.0 };
        }
        CandidateScore {
            builds: true,
            served: candidate.sightings.iter().filter(|sighting| sighting.serves(self.design_step)).count(),
            clears_arm: self.shift_under_arm(candidate, self.design_step).is_some(),
            weakest: candidate.sightings.iter().map(times).fold(f64::INFINITY, f64::min),
        }
    }

    /// Whether a design can be built and every vehicle is seen as the role asks, without letting go.
    fn serves(&self, ScoredCandidate { candidate, score }: &ScoredCandidate) -> bool {
        let CandidateScore { builds, served, clears_arm, .. } = *score;
        let row = candidate.row();
        let drops_out = |class: &VehicleClass| row.weakest(*class).iter().any(|left| left.drops_out(self.design_step));
        builds
            && clears_arm
            && served == candidate.sightings.len()
            && !(self.holds_the_gate && self.job.vehicles.iter().any(drops_out))
    }
}

/// The underside of the highest vehicle, or a car's where only two-wheelers come.
fn highest_underside(job: &ResolvedLoopSizing) -> &'static VehicleModel {
    let undersides = job.vehicles.iter().map(|class| VehicleModel::for_seen_height(*class));
    let highest = undersides.max_by(|a, b| a.height.value.total_cmp(&b.height.value));
    highest.unwrap_or_else(|| VehicleModel::of_class(VehicleClass::PassengerCar))
}
