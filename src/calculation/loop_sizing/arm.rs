//! The loop under a barrier arm: every tail is past the arm when the unit lets go of it.

use uom::si::f64::{Length, Ratio};
use uom::si::ratio::percent;

use super::resolved::ResolvedLoopSizing;
use crate::calculation::layout::{LaidLoop, LoopRow};
use crate::calculation::report::{Decimals, Diagnostics, FieldPath, Finding, Statement};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::layout::{BEFORE_THE_ARM, PAST_THE_ARM, STEP};
use crate::practice::vehicles::VehicleClass;

/// What the loop under an arm must leave room for.
pub struct ArmRule {
    /// How far past the line every tail must be.
    margin: Length,
    /// Whether the loop may be moved towards travel: vehicles come one way only.
    moves: bool,
}

impl ArmRule {
    /// The rule of a job.
    pub fn of(job: &ResolvedLoopSizing) -> Self {
        Self { margin: PAST_THE_ARM.in_system(job.system()), moves: job.drives_inwards_only() }
    }

    /// How far inwards the loop is moved, tidy; `None` where no place serves.
    ///
    /// Two-wheelers are judged afterwards: no leg holds on to one until it is past the arm, so no loop grows for them.
    pub fn shift(&self, row: &LoopRow<'_>, leg: Length, step: Ratio, job: &ResolvedLoopSizing) -> Option<Length> {
        let Some((tail, _)) = earliest_release(row, leg, step, job, |class| !class.is_two_wheeler()) else {
            return Some(Length::default());
        };
        let system = job.system();
        let needed = STEP.ceil((self.margin - tail).max(Length::default()), system);
        let most = if self.moves { leg / 2.0 - BEFORE_THE_ARM.in_system(system) } else { Length::default() };
        (needed <= 1.000_001 * most.max(Length::default())).then_some(needed)
    }
}

/// Where the tail of the vehicle that the unit lets go first is then, past the middle of the loops, and the vehicle, of those that
/// count; `None` where none of them is seen by these loops alone.
fn earliest_release(
    row: &LoopRow<'_>,
    leg: Length,
    step: Ratio,
    job: &ResolvedLoopSizing,
    counts: impl Fn(VehicleClass) -> bool,
) -> Option<(Length, VehicleClass)> {
    let judged = job.vehicles.iter().filter(|class| counts(**class) && !job.seen_elsewhere.contains(class));
    let tails = judged.map(|class| (row.tail_at_release(*class, step) - leg / 2.0, *class));
    tails.min_by(|a, b| a.0.value.total_cmp(&b.0.value))
}

/// States where the arm falls before a tail is past it; `step` is that of the loop itself.
pub fn judge(laid: &LaidLoop, row: &LoopRow<'_>, step: Ratio, job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    let Some((tail, class)) = earliest_release(row, laid.coil.along_travel, step, job, |_| true) else { return };
    let system = job.system();
    let margin = PAST_THE_ARM.in_system(system);
    let past = tail + if job.drives_inwards_only() { laid.place.middle() } else { -laid.place.middle().abs() };
    if past >= 0.999 * margin {
        return;
    }
    let threshold = laid.step.get::<percent>();
    let message = Statement::new("sizing-arm-falls-early")
        .member("vehicle", class)
        .code("place", if past < Length::default() { "short" } else { "past" })
        .length("tail_from_arm", past.abs(), system)
        .length("wanted", margin, system)
        .percent("threshold", threshold, Decimals::AtMost(3));
    diagnostics.add_finding(
        Finding::new(FindingCode::ArmFallsEarly, Level::Stop, &FieldPath::BODY.field("vehicles"), message)
            .on(Some(laid.role))
            .length("tail_past_arm", past, system)
            .length("wanted", margin, system)
            .figure("threshold", threshold, "percent")
            .send(&FieldPath::BODY.field("detector").field("threshold_steps_percent"))
            .send(&FieldPath::BODY.field("fixed_loops")),
    );
}
