//! The step that a channel is set to: chosen once, after the loops, and read by every part of a job.

use uom::si::f64::Ratio;
use uom::si::ratio::percent;

use super::sightings::ClassSighting;
use crate::calculation::input::ResolvedDetector;
use crate::practice::detectors::{
    FINEST_CLASS_PERCENT, MIN_TIMES_THRESHOLD, THIN_TIMES_THRESHOLD, USUAL_STEPS_PERCENT,
};

/// How the vehicles of a channel stand against one step, from best to worst.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum StepVerdict {
    /// Every vehicle makes twice the step at its hardest place, and the unit lets go under none.
    Serves,
    /// Every vehicle makes one and a half times the step, and the unit lets go under none.
    Thin,
    /// Less.
    Fails,
}

impl StepVerdict {
    fn of(sightings: &[ClassSighting], step: Ratio) -> Self {
        let times = sightings.iter().map(|sighting| (sighting.least / step).value).fold(f64::INFINITY, f64::min);
        let drops_out = sightings.iter().any(|sighting| sighting.drops_out(step));
        match times {
            times if times >= MIN_TIMES_THRESHOLD && !drops_out => Self::Serves,
            times if times >= THIN_TIMES_THRESHOLD && !drops_out => Self::Thin,
            _ => Self::Fails,
        }
    }
}

/// The steps that a channel may be set to, percent, coarsest first: the one that the caller gives, those on the unit's sheet, or those
/// of the standard's sensitivity classes.
pub fn candidate_steps(detector: &ResolvedDetector) -> Vec<f64> {
    match (detector.threshold_percent, detector.threshold_steps_percent.as_slice()) {
        (Some(threshold), _) => vec![threshold],
        (None, steps @ [_, ..]) => steps.to_vec(),
        (None, []) => USUAL_STEPS_PERCENT.to_vec(),
    }
}

/// The step that loops are designed for: the one that the caller gives, else the standard's class for high beds, or the nearest to it
/// that the unit has, finer rather than coarser. A choice made here.
pub fn design_step(detector: &ResolvedDetector) -> Ratio {
    let steps = candidate_steps(detector);
    let fine_enough = steps.iter().find(|step| **step <= FINEST_CLASS_PERCENT).or(steps.last());
    Ratio::new::<percent>(fine_enough.copied().unwrap_or(FINEST_CLASS_PERCENT))
}

/// The step to set for what vehicles make at the terminals of a channel: of those down to the standard's finest class the coarsest that serves; where none does, the finest of them, if its
/// margin is only thin; else the coarsest finer step on the unit's sheet whose margin is at least thin, or the finest of all. Common
/// practice, and the margins are a choice made here.
pub fn choose_step(sightings: &[ClassSighting], detector: &ResolvedDetector) -> Ratio {
    let steps: Vec<_> = candidate_steps(detector).into_iter().map(Ratio::new::<percent>).collect();
    let verdict = |step: &Ratio| StepVerdict::of(sightings, *step);
    let finest_class = Ratio::new::<percent>(FINEST_CLASS_PERCENT);
    let (usual, finer) = steps.split_at(steps.partition_point(|step| *step >= finest_class));
    let serving = usual.iter().find(|step| verdict(step) == StepVerdict::Serves);
    let last_usual = || usual.last().filter(|step| verdict(step) <= StepVerdict::Thin);
    let finer_one = || finer.iter().find(|step| verdict(step) <= StepVerdict::Thin);
    let chosen = serving.or_else(last_usual).or_else(finer_one).or(steps.last());
    chosen.copied().unwrap_or(finest_class)
}
