//! How long the work takes.

use uom::si::f64::Time;
use uom::si::time::minute;

use super::estimate::{Estimate, Part};
use super::report::{Labour, LabourStep};
use super::trench::Trench;
use crate::practice::materials::WorkStep;
use crate::practice::site::Construction;
use crate::quantity::format::{format_count, format_length};
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// A step and how long it takes.
pub struct Step {
    /// Which.
    pub what: WorkStep,
    /// How long.
    pub time: Time,
    /// How it comes about.
    pub how: String,
}

/// The steps, in order; those that take no time are left out.
pub fn steps(estimate: &Estimate<'_>) -> Vec<Step> {
    let (job, system) = (estimate.job, estimate.job.system());
    let pace = &job.pace;
    let loops = estimate.loops() as f64;
    let sum = |of: &dyn Fn(&Part<'_>) -> f64| estimate.parts.iter().map(|part| part.count() * of(part)).sum::<f64>();
    let cut = estimate.sum(Trench::total);
    let sawing = estimate.cuts().map(|(part, cut)| part.count() * pace.sawing(cut.length(), cut.depth, job.surface));
    let sawing = sawing.fold(Time::default(), |a, b| a + b);
    let cores = sum(&|part| part.trench.as_ref().map_or(0.0, |trench| f64::from(trench.cores)));
    let pulls = sum(&|part| f64::from(part.pulls()));
    let buried = sum(&|part| f64::from(u8::from(part.construction == Construction::PreformedDirectBurial)));
    let along = |speed| cut / speed;
    let each = |count: f64, time: Time, what: &str| {
        (count * time, format!("{}, {} each", format_count(count, what), minutes(time)))
    };
    let by_cut = |time: Time| (time, format!("{} of cut", format_length(cut, system)));

    let rows: [(WorkStep, (Time, String)); 10] = [
        (WorkStep::SetUp, (pace.set_up, "once for the job".to_owned())),
        (WorkStep::Saw, by_cut(sawing)),
        (WorkStep::Core, each(cores, pace.core, "corner")),
        (WorkStep::CleanAndDry, by_cut(along(pace.cleaning_speed))),
        (WorkStep::Wind, each(pulls, pace.pull, "pull")),
        (WorkStep::Bury, each(buried, pace.burial, "loop")),
        (WorkStep::TestBeforeSealing, each(loops, pace.test, "loop")),
        (WorkStep::Seal, by_cut(along(pace.sealing_speed))),
        (WorkStep::Terminate, each(loops, pace.termination, "loop")),
        (WorkStep::TestAfterSealing, each(loops, pace.test, "loop")),
    ];
    let steps = rows.into_iter().map(|(what, (time, how))| Step { what, time, how });
    steps.filter(|step| step.time > Time::default()).collect()
}

/// All steps together.
pub fn total(steps: &[Step]) -> Time {
    steps.iter().map(|step| step.time).fold(Time::default(), |a, b| a + b)
}

/// The labour of the report.
pub fn shown(steps: &[Step]) -> Labour {
    let row = |step: &Step| LabourStep { step: step.what.code(), time: step.time.into(), how: step.how.clone() };
    Labour { steps: steps.iter().map(row).collect(), total: total(steps).into() }
}

fn minutes(time: Time) -> String {
    format!("{} min", round(time.get::<minute>(), 1))
}
