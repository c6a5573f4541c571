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
pub enum StepVerdict {
    /// Every vehicle makes twice the step at its hardest place, and the unit lets go under none.
    Serves,
    /// Every vehicle makes one and a half times the step, and the unit lets go under none.
    Thin,
    /// Less.
    Fails,
}

impl StepVerdict {
    /// How vehicles that make so stand against a step.
    pub fn of(sightings: &[ClassSighting], step: Ratio) -> Self {
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

/// The steps that a channel may be set to, and the rule by which one gives way to the next finer.
///
/// Of those down to the standard's finest class the coarsest that serves; where none does, the finest of them, if its margin is only
/// thin; else the coarsest finer step on the unit's sheet whose margin is at least thin, or the finest of all. Common practice, and the
/// margins are a choice made here.
pub struct StepLadder {
    /// Coarsest first.
    steps: Vec<Ratio>,
    /// How many of them are no finer than the standard's finest class.
    usual: usize,
}

impl StepLadder {
    /// The steps of a unit.
    pub fn of(detector: &ResolvedDetector) -> Self {
        let steps: Vec<_> = candidate_steps(detector).into_iter().map(Ratio::new::<percent>).collect();
        let finest_class = Ratio::new::<percent>(FINEST_CLASS_PERCENT);
        let usual = steps.partition_point(|step| *step >= finest_class);
        Self { steps, usual }
    }

    /// A step; the finest where the ladder is shorter.
    pub fn step(&self, index: usize) -> Ratio {
        let step = self.steps.get(index).or(self.steps.last());
        step.copied().unwrap_or_else(|| Ratio::new::<percent>(FINEST_CLASS_PERCENT))
    }

    /// The finest.
    pub fn finest(&self) -> Ratio {
        self.step(self.steps.len())
    }

    /// The step to try instead of one that stands so; `None` where it is kept.
    pub fn finer(&self, index: usize, verdict: StepVerdict) -> Option<usize> {
        let next = index + 1;
        let gives_way = if next < self.usual {
            verdict != StepVerdict::Serves
        } else {
            verdict == StepVerdict::Fails && next < self.steps.len()
        };
        gives_way.then_some(next)
    }
}

/// The step to set for what vehicles make at the terminals of a channel, by the rule of [`StepLadder`].
pub fn choose_step(sightings: &[ClassSighting], detector: &ResolvedDetector) -> Ratio {
    let ladder = StepLadder::of(detector);
    let mut index = 0;
    while let Some(next) = ladder.finer(index, StepVerdict::of(sightings, ladder.step(index))) {
        index = next;
    }
    ladder.step(index)
}
