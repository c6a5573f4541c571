//! How long the work takes.

use uom::si::f64::Time;
use uom::si::time::minute;

use super::estimate::{LoopEstimate, MaterialEstimate};
use super::loop_cuts::LoopCuts;
use super::report::{Labour, LabourStep};
use crate::practice::materials::WorkStep;
use crate::quantity::format::{format_count, format_length};
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// A step of the work and how long it takes.
pub struct TimedStep {
    /// Which.
    pub step: WorkStep,
    /// How long.
    pub time: Time,
    /// How it comes about.
    pub how: String,
}

/// The steps, in order; those that take no time are left out.
pub fn timed_steps(estimate: &MaterialEstimate<'_>) -> Vec<TimedStep> {
    let (job, system) = (estimate.job, estimate.job.system());
    let productivity = &job.productivity;
    let loops = estimate.loop_count() as f64;
    let sum = |number: &dyn Fn(&LoopEstimate<'_>) -> u32| {
        estimate.loops.iter().map(|each| each.count() * f64::from(number(each))).sum::<f64>()
    };
    let cut_length = estimate.sum_of_cuts(LoopCuts::total_length);
    let per_piece = |count: f64, time: Time, what: &str| {
        (count * time, format!("{}, {} each", format_count(count, what), format_minutes(time)))
    };
    let per_cut = |time: Time| (time, format!("{} of cut", format_length(cut_length, system)));
    let timed = |step: WorkStep| {
        let (time, how) = match step {
            WorkStep::SetUp => (productivity.set_up, "once for the job".to_owned()),
            WorkStep::Saw => {
                let times = estimate
                    .cuts()
                    .map(|(each, cut)| each.count() * productivity.sawing_time(cut.length(), cut.depth, job.surface));
                per_cut(times.fold(Time::default(), |a, b| a + b))
            }
            WorkStep::Core => {
                let cores = sum(&|each| each.cuts.as_ref().map_or(0, |cuts| cuts.cores));
                per_piece(cores, productivity.core, "corner")
            }
            WorkStep::CleanAndDry => per_cut(cut_length / productivity.cleaning_speed),
            WorkStep::Wind => per_piece(sum(&|each| each.pulls()), productivity.pull, "pull"),
            WorkStep::Bury => {
                let buried = sum(&|each| u32::from(!each.construction.is_sawn()));
                per_piece(buried, productivity.burial, "loop")
            }
            WorkStep::TestBeforeSealing | WorkStep::TestAfterSealing => per_piece(loops, productivity.test, "loop"),
            WorkStep::Seal => per_cut(cut_length / productivity.sealing_speed),
            WorkStep::Terminate => per_piece(loops, productivity.termination, "loop"),
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
    let row = |timed: &TimedStep| LabourStep { step: timed.step, time: timed.time.into(), how: timed.how.clone() };
    Labour { steps: steps.iter().map(row).collect(), total: total_time(steps).into() }
}

fn format_minutes(time: Time) -> String {
    format!("{} min", round(time.get::<minute>(), 1))
}
