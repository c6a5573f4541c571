//! What stands unseen between two loops that hold the gate: the longest plate that makes the step on neither, in the middle and at the
//! edges of the lane.

use uom::si::f64::{Length, Ratio};

use super::resolved::ResolvedLoopSizing;
use crate::calculation::input::ResolvedOpening;
use crate::calculation::layout::{LaidLoop, LoopPlacement, LoopRow};
use crate::calculation::report::{Diagnostics, FieldPath, Finding, Statement};
use crate::calculation::vehicle_response::{LoopField, VehicleModel};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::layout::LEAF_MARGIN;
use crate::practice::roles::Side;
use crate::practice::site::Barrier;
use crate::practice::vehicles::VehicleClass;

/// How far the ends of a vehicle may reach over a loop unseen: in the middle of the lane, and hard against either edge.
#[derive(Clone, Copy, Debug)]
pub struct UnseenReach([Length; 3]);

impl UnseenReach {
    /// Over loops whose unit switches at `step`, in changes of the loop itself. What stands across the line of a swing gate keeps off its
    /// open leaves.
    pub fn of(row: &LoopRow<'_>, class: VehicleClass, step: Ratio, opening: &ResolvedOpening) -> Self {
        let model = VehicleModel::of_class(class);
        let off_leaf = LEAF_MARGIN.in_system(opening.system);
        let (left, right) = match opening.barrier {
            Barrier::SwingGate => (off_leaf, Length::default()),
            Barrier::SwingGatePair => (off_leaf, off_leaf),
            _ => Default::default(),
        };
        let edge = |margin: Length| ((row.lane.width - model.width) / 2.0 - margin).max(Length::default());
        Self([Length::default(), edge(right), -edge(left)].map(|offset| row.unseen_reach(model, step, offset)))
    }

    /// The longest plate that stands unseen between these loops and others, across a gap between their wires.
    pub fn longest_unseen(&self, gap: Length, other: &Self) -> Length {
        let both = self.0.iter().zip(&other.0).map(|(ours, theirs)| gap + *ours + *theirs);
        both.reduce(Length::max).unwrap_or(gap).max(Length::default())
    }
}

/// A loop that holds the gate: its place, and how far vehicles reach over it unseen.
#[derive(Clone, Copy)]
pub struct HoldingLoop {
    /// Its place.
    pub place: LoopPlacement,
    /// The reach of a usual car.
    pub reach: UnseenReach,
}

impl HoldingLoop {
    /// The longest plate that stands unseen between this loop and the next one inwards.
    pub fn longest_unseen_to(&self, next: &Self) -> Length {
        self.reach.longest_unseen(next.place.from - self.place.to, &next.reach)
    }
}

/// The longest unseen plate between neighbours of these loops; `None` with fewer than two.
pub fn longest_stretch(holding: impl IntoIterator<Item = HoldingLoop>) -> Option<Length> {
    let mut holding: Vec<_> = holding.into_iter().collect();
    holding.sort_by(|a, b| a.place.from.value.total_cmp(&b.place.from.value));
    holding.windows(2).map(|pair| pair[0].longest_unseen_to(&pair[1])).reduce(Length::max)
}

/// States what can stand unseen between the loops that are laid, given the longest stretch for a usual car.
pub fn judge<'a>(
    loops: impl Iterator<Item = (&'a LaidLoop, &'a LoopField, Ratio)>,
    stretch: Option<Length>,
    job: &ResolvedLoopSizing,
    diagnostics: &mut Diagnostics,
) {
    let holding: Vec<_> =
        loops.filter(|(laid, _, _)| laid.role.holds_the_gate() && laid.role.fits(job.opening.barrier)).collect();
    judge_sides(holding.iter().map(|(laid, _, _)| *laid), job, diagnostics);
    let stretch_for = |class: VehicleClass| {
        let of = |(laid, field, step): &(&LaidLoop, &LoopField, Ratio)| HoldingLoop {
            place: laid.place,
            reach: UnseenReach::of(&LoopRow { field, lane: &laid.lane }, class, *step, &job.opening),
        };
        longest_stretch(holding.iter().map(of))
    };
    let Some(stretch) = stretch else { return };
    let (car, short_car) = (VehicleClass::PassengerCar.length(), VehicleClass::shortest_car());
    let two_wheelers =
        job.vehicles.iter().filter(|class| class.is_two_wheeler() && !job.seen_elsewhere.contains(class));
    let unseen_rider = || {
        let stretches = two_wheelers.filter_map(|class| Some((stretch_for(*class)?, *class)));
        stretches.filter(|(stretch, class)| *stretch > class.length()).max_by(|a, b| a.0.value.total_cmp(&b.0.value))
    };
    let (level, vehicle, unseen, (class, length)) = if stretch > car {
        (Level::Stop, "car", stretch, (VehicleClass::PassengerCar, car))
    } else if stretch > short_car {
        (Level::Warning, "short_car", stretch, (VehicleClass::PassengerCar, short_car))
    } else if let Some((unseen, class)) = unseen_rider() {
        (Level::Warning, "two_wheeler", unseen, (class, class.length()))
    } else {
        return;
    };
    let system = job.system();
    let watched = job.opening.seen_otherwise;
    let message = Statement::new("sizing-unseen-stretch")
        .code("vehicle", vehicle)
        .member("rider", class)
        .length("unseen_stretch", unseen, system)
        .code("watched", if watched { "yes" } else { "no" });
    let opening = FieldPath::BODY.field("opening");
    let (at, level) = (opening.field("seen_otherwise"), if watched { Level::Note } else { level });
    let finding = Finding::new(FindingCode::UnseenStretch, level, &at, message)
        .length("unseen_stretch", unseen, system)
        .length("vehicle_length", length, system);
    diagnostics.add_finding(if watched { finding } else { finding.send(&at) });
}

/// States where the loops that hold a barrier lie on one side of it only.
fn judge_sides<'a>(
    mut holding: impl Iterator<Item = &'a LaidLoop>,
    job: &ResolvedLoopSizing,
    diagnostics: &mut Diagnostics,
) {
    let Some(first) = holding.next() else { return };
    let is_same = |laid: &LaidLoop| laid.place.side == first.place.side;
    let one_sided = first.place.side != Side::OnTheLine && holding.all(is_same);
    if job.opening.barrier.is_present() && one_sided {
        let message = Statement::new("sizing-one-side-only");
        let roles = FieldPath::BODY.field("roles");
        diagnostics.add_finding(Finding::new(FindingCode::OneSideOnly, Level::Warning, &roles, message).send(&roles));
    }
}
