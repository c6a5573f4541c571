//! How long the work takes.

use uom::si::f64::Time;
use uom::si::time::minute;

use super::estimate::MaterialEstimate;
use super::loop_estimate::LoopEstimate;
use super::report::{Labour, LabourStep};
use crate::calculation::report::{Decimals, Statement};
use crate::practice::materials::WorkStep;
use crate::vocabulary::Vocabulary;

/// A step of the work and how long it takes.
pub struct TimedStep {
    /// Which.
    pub step: WorkStep,
    /// How long.
    pub time: Time,
    /// How it comes about.
    pub how: Statement,
}

/// The steps, in order; those that take no time are left out.
pub fn timed_steps(estimate: &MaterialEstimate<'_>) -> Vec<TimedStep> {
    let (job, system) = (estimate.job, estimate.job.system());
    let productivity = &job.productivity;
    let cut_length = estimate.cut_length();
    let per_piece = |count: u64, time: Time, how: Statement| {
        let how = how.count("pieces", count).quantity("each", time.get::<minute>(), Decimals::AtMost(1), "min");
        (count as f64 * time, how)
    };
    let per_loop = |time: Time| per_piece(estimate.loop_count(), time, Statement::new("materials-work-per-loop"));
    let per_cut = |time: Time| (time, Statement::new("materials-work-per-cut").length("saw_cut", cut_length, system));
    let timed = |step: WorkStep| {
        let (time, how) = match step {
            WorkStep::SetUp => (productivity.set_up, Statement::new("materials-work-once")),
            WorkStep::Saw => {
                let times = estimate
                    .cuts()
                    .map(|(count, _, cut)| count * productivity.sawing_time(cut.length(), cut.depth(), job.surface));
                per_cut(times.fold(Time::default(), |a, b| a + b))
            }
            WorkStep::Core => {
                let cores = estimate.total_of(|each| each.cuts.as_ref().map_or(0, |cuts| cuts.cores));
                per_piece(cores, productivity.core, Statement::new("materials-work-per-corner"))
            }
            WorkStep::CleanAndDry => per_cut(cut_length / productivity.cleaning_speed),
            WorkStep::Wind => {
                let pulls = estimate.total_of(LoopEstimate::pulls);
                per_piece(pulls, productivity.pull, Statement::new("materials-work-per-pull"))
            }
            WorkStep::Bury => {
                let buried = estimate.total_of(|each| u32::from(!each.construction.is_sawn()));
                per_piece(buried, productivity.burial, Statement::new("materials-work-per-loop"))
            }
            WorkStep::TestBeforeSealing | WorkStep::TestAfterSealing => per_loop(productivity.test),
            WorkStep::Seal => per_cut(cut_length / productivity.sealing_speed),
            WorkStep::Terminate => per_loop(productivity.termination),
        };
        TimedStep { step, time, how }
    };
    WorkStep::ALL.iter().map(|step| timed(*step)).filter(|timed| timed.time > Time::default()).collect()
}

/// All steps together.
pub fn total_time(steps: &[TimedStep]) -> Time {
    steps.iter().map(|timed| timed.time).fold(Time::default(), |a, b| a + b)
}

/// The labour of the report.
pub fn labour_report(steps: &[TimedStep]) -> Labour {
    let row =
        |timed: &TimedStep| LabourStep { step: timed.step, time: timed.time.into(), how: timed.how.clone().into() };
    Labour { steps: steps.iter().map(row).collect(), total: total_time(steps).into() }
}
