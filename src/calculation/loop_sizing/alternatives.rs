//! Other sizes for the same role, and what each costs and gains.

use uom::si::f64::Length;
use uom::si::inductance::microhenry;

use super::design::{Design, Grade, design, saw_cut, seen_height};
use super::job::Job;
use super::report::Alternative;
use crate::calculation::loop_characteristics::Conditions;
use crate::practice::roles::{ALTERNATIVE_STEP, LONGEST_LEG, Role, SHORT_LEG, USUAL_LEG, WINDOW_LEG};
use crate::practice::site::Barrier;
use crate::quantity::shown::{round, say};

/// The next smaller, the next larger, and the narrow loop at a drive-through window.
pub fn offer(role: Role, chosen: &Design, job: &Job, conditions: &Conditions) -> Vec<Alternative> {
    let system = job.system();
    let step = ALTERNATIVE_STEP.in_system(system);
    let leg = chosen.coil.along_travel;
    let across = chosen.coil.across_lane;
    let least = if role.holds_the_gate() { SHORT_LEG } else { WINDOW_LEG }.in_system(system);
    let at_window = matches!(role, Role::Presence | Role::Arming)
        && matches!(job.opening.barrier, Barrier::None | Barrier::BarrierArm)
        && job.only_low_vehicles();

    let mut sizes = Vec::new();
    if leg - step >= 0.999 * least {
        sizes.push(("shorter", leg - step, across));
    }
    if leg + step <= 1.001 * LONGEST_LEG.in_system(system) {
        sizes.push(("longer", leg + step, across));
    }
    if at_window && leg > WINDOW_LEG.in_system(system) {
        sizes.push(("window", WINDOW_LEG.in_system(system), across.min(USUAL_LEG.in_system(system))));
    }
    sizes
        .into_iter()
        .map(|(name, along, across)| describe(name, &design(along, across, job, conditions), chosen, job))
        .collect()
}

fn describe(name: &'static str, other: &Design, chosen: &Design, job: &Job) -> Alternative {
    let change = |of: fn(&Design) -> Length| of(other) - of(chosen);
    let saw_cut_change = saw_cut(&other.coil, job).zip(saw_cut(&chosen.coil, job)).map(|(a, b)| a - b);
    let wire_change = change(|design| design.electrical.wire_length);
    let height_change = change(|design| seen_height(&design.coil));
    let signed = |length: Length, more: &str, less: &str| {
        format!("{} {}", say(length.abs(), job.system()), if length < Length::default() { less } else { more })
    };
    let cut = saw_cut_change.map_or_else(
        || signed(wire_change, "more wire", "less wire"),
        |change| signed(change, "more saw cut", "less saw cut"),
    );
    let tuning = if other.grade >= Grade::TooDeep { " No turn count of it suits this unit and slot." } else { "" };
    let message = format!(
        "{} turns, {cut}, metal is seen {} by the rule of thumb.{tuning}",
        other.coil.turns,
        signed(height_change, "higher", "lower"),
    );
    Alternative {
        alternative: name,
        along_travel: other.coil.along_travel.into(),
        across_lane: other.coil.across_lane.into(),
        turns: other.coil.turns,
        terminal_inductance_uh: round(other.electrical.terminal_inductance.get::<microhenry>(), 2),
        saw_cut_change: saw_cut_change.map(Into::into),
        wire_change: wire_change.into(),
        seen_height_change: height_change.into(),
        message,
    }
}
