//! Other sizes and shapes for the same role, and what each costs and gains.

use serde::Serialize;
use uom::si::f64::{Length, Ratio};
use uom::si::inductance::microhenry;
use uom::si::length::meter;
use uom::si::ratio::percent;
use utoipa::ToSchema;

use super::design::{GradedLoop, LoopGrade, saw_cut};
use super::resolved::ResolvedLoopSizing;
use super::search::{LoopCandidate, RoleSearch, SeenAtStep};
use super::vehicle_sighting::VehicleSighting;
use crate::calculation::budget::Search;
use crate::calculation::input::Shape;
use crate::calculation::report::{Diagnostics, FieldPath, Finding, Message, Statement, has_messages};
use crate::calculation::vehicle_response::VehicleModel;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::layout::{ALTERNATIVE_STEP, MAX_LEG, SHORT_LEG, USUAL_LEG, WINDOW_LEG};
use crate::practice::roles::Role;
use crate::quantity::output::{PlanLength, round};

/// Another size for the same role.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct Alternative {
    /// Which: `shorter`, `longer`, `window` for the narrow loop at a drive-through window, or `quadrupole`.
    pub alternative: &'static str,
    /// Its shape.
    #[schema(value_type = String)]
    pub shape: Shape,
    /// The leg in the direction of driving.
    pub along_travel: PlanLength,
    /// The leg across the lane.
    pub across_lane: PlanLength,
    /// Turns.
    pub turns: u32,
    /// Inductance at the unit's terminals, µH, 2 decimals.
    pub terminal_inductance_uh: f64,
    /// The change of the saw cut against the loop above; negative saves. Absent where nothing is sawn.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub saw_cut_change: Option<PlanLength>,
    /// The change of the wire in the loop against the loop above; negative saves.
    pub wire_change: PlanLength,
    /// The change of the height at which a flat underside is seen against the loop above; negative loses.
    pub seen_height_change: PlanLength,
    /// The vehicles over it.
    pub vehicles: Vec<VehicleSighting>,
    /// What it costs and gains, in a sentence.
    #[schema(value_type = String)]
    pub message: Message,
}

has_messages! {
    Alternative: message;
}

impl Alternative {
    /// What an alternative costs and gains against the chosen loop.
    pub(super) fn of(
        offered: &OfferedCandidate,
        chosen: (&LoopCandidate, &SeenAtStep),
        job: &ResolvedLoopSizing,
    ) -> Self {
        let (other, (chosen, seen)) = (&offered.candidate, chosen);
        let cut = |design: &GradedLoop| saw_cut(&design.coil, job);
        let saw_cut_change = cut(&other.design).zip(cut(&chosen.design)).map(|(a, b)| a - b);
        let wire_change = other.design.electrical.wire_length - chosen.design.electrical.wire_length;
        let height_change = offered.seen.seen_height - seen.seen_height;
        let turns = other.design.coil.turns;
        let (cost, kind) = match saw_cut_change {
            Some(change) => (change, if change < Length::default() { "less_saw_cut" } else { "more_saw_cut" }),
            None => (wire_change, if wire_change < Length::default() { "less_wire" } else { "more_wire" }),
        };
        let height = if height_change.abs() < Length::new::<meter>(0.02) {
            "equal"
        } else if height_change < Length::default() {
            "lower"
        } else {
            "higher"
        };
        let mut message = Statement::new("sizing-alternative")
            .count("turns", turns.into())
            .length("cost", cost.abs(), job.system())
            .code("cost_kind", kind)
            .code("height", height)
            .length("height_change", height_change.abs(), job.system());
        if other.design.grade >= LoopGrade::TooDeep {
            message = message.followed_by(Statement::new("sizing-alternative-cannot-be-built"));
        }
        Self {
            alternative: offered.code,
            shape: other.design.coil.shape,
            along_travel: other.design.coil.along_travel.into(),
            across_lane: other.design.coil.across_lane.into(),
            turns,
            terminal_inductance_uh: round(other.design.electrical.terminal_inductance.get::<microhenry>(), 2),
            saw_cut_change: saw_cut_change.map(Into::into),
            wire_change: wire_change.into(),
            seen_height_change: height_change.into(),
            vehicles: other.vehicles(&offered.seen),
            message: message.into(),
        }
    }
}

/// A candidate that is offered beside the chosen one.
pub struct OfferedCandidate {
    /// The code of the alternative.
    pub code: &'static str,
    /// The loop, or the row of loops.
    pub candidate: LoopCandidate,
    /// What it sees.
    pub seen: SeenAtStep,
}

/// The next smaller, the next larger, the narrow loop at a drive-through window, and a quadrupole where two-wheelers come.
pub fn find_alternatives(
    search: &RoleSearch<'_>,
    chosen: &LoopCandidate,
    step: Ratio,
    share: Ratio,
) -> Vec<OfferedCandidate> {
    let job = search.job;
    let system = job.system();
    let longer = ALTERNATIVE_STEP.in_system(system);
    let (leg, across) = (chosen.design.coil.along_travel, chosen.design.coil.across_lane);
    let least = if search.holds_the_gate { SHORT_LEG } else { WINDOW_LEG }.in_system(system);
    let window = WINDOW_LEG.in_system(system);
    let at_window = !search.holds_the_gate && !job.opening.barrier.is_present() && job.only_low_vehicles();
    let offer = |code, along, across, shape| {
        job.budget.allows(Search::Alternatives).then_some(())?;
        let candidate = search.fit(along, across, shape, chosen.count());
        let seen = candidate.at_step(step, share, job);
        Some(OfferedCandidate { code, candidate, seen })
    };

    let mut offered = Vec::new();
    if leg - longer >= 0.999 * least {
        offered.extend(offer("shorter", leg - longer, across, Shape::Rectangle));
    }
    if leg + longer <= 1.001 * MAX_LEG.in_system(system) {
        offered.extend(offer("longer", leg + longer, across, Shape::Rectangle));
    }
    if at_window && leg > window {
        offered.extend(offer("window", window, across.min(USUAL_LEG.in_system(system)), Shape::Rectangle));
    }
    if job.vehicles.iter().any(|vehicle| vehicle.is_two_wheeler()) {
        offered.extend(offer("quadrupole", leg, across, Shape::Quadrupole));
    }
    offered
}

/// States what a quadrupole gives two-wheelers, and what it takes from high beds.
pub fn judge_quadrupole(
    role: Role,
    other: &OfferedCandidate,
    chosen: (&LoopCandidate, &SeenAtStep),
    job: &ResolvedLoopSizing,
    diagnostics: &mut Diagnostics,
) {
    let Some(class) = job.vehicles.iter().find(|class| class.is_two_wheeler()) else { return };
    let model = VehicleModel::of_class(*class);
    let at_centre = |candidate: &LoopCandidate| {
        candidate.field.change(model, candidate.field.centred(model), Length::default()).get::<percent>()
    };
    let (gained, had, system) = (at_centre(&other.candidate), at_centre(chosen.0), job.system());
    let heights = (other.seen.seen_height, chosen.1.seen_height);
    let message = Statement::new("sizing-quadrupole-offered")
        .percent("change_at_centre", gained, 3)
        .member("vehicle", *class)
        .percent("change_at_centre_of_rectangle", had, 3)
        .length("seen_height", heights.0, system)
        .length("seen_height_of_rectangle", heights.1, system);
    diagnostics.add_finding(
        Finding::new(FindingCode::QuadrupoleOffered, Level::Note, &FieldPath::BODY.field("vehicles"), message)
            .on(Some(role))
            .figure("change_at_centre", gained, "percent")
            .figure("change_at_centre_of_rectangle", had, "percent")
            .length("seen_height", heights.0, system)
            .length("seen_height_of_rectangle", heights.1, system)
            .send(&FieldPath::BODY.field("fixed_loops")),
    );
}
