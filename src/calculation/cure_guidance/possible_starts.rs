//! The times at which the work may begin, and the windows that they form.

use uom::si::f64::Time;
use uom::si::time::{minute, second};

use super::candidate::SealantCandidate;
use super::deadline::late_return;
use super::request::ResolvedCureGuidance;
use super::work_stops::may_start;
use crate::practice::sealing::least_window;

/// A span of starts, each of which the verdict allows.
#[derive(Clone, Copy, Debug)]
pub struct StartWindow {
    /// The first.
    pub from: Time,
    /// The last, to the minute.
    pub until: Time,
    /// Whether the sealant stays workable while a cartridge is emptied, and traffic surely returns in time.
    pub is_preferred: bool,
}

/// The starts that are looked at: the one that was asked for, the beginning of every later hour, and when the slot has dried.
///
/// Between two of them all that changes is how far the work reaches into later hours, so what stops one start stops those after it.
fn starts(job: &ResolvedCureGuidance) -> Vec<Time> {
    let (weather, start) = (&job.weather, job.weather.start);
    let later = weather.hours.iter().map(|hour| hour.from).chain(job.condition.dry_times());
    let mut starts: Vec<_> = later.filter(|time| *time > start && *time < weather.end()).collect();
    starts.push(start);
    starts.sort_by(|one, other| one.get::<second>().total_cmp(&other.get::<second>()));
    starts.dedup();
    starts
}

/// The earliest start that nothing stops, and from which traffic surely returns when it is needed.
pub fn earliest_start(job: &ResolvedCureGuidance, candidate: &SealantCandidate) -> Option<Time> {
    let is_in_time = |start: Time| late_return(job, candidate, start + job.work.duration).is_none();
    starts(job).into_iter().find(|start| is_in_time(*start) && may_start(job, candidate, *start))
}

/// The windows of a kind of sealant, in order of time; where what is preferred begins or ends, one ends and the next begins.
///
/// What is open for less than a crew can keep to is left out, but for the start that was asked for.
pub fn start_windows(job: &ResolvedCureGuidance, candidate: &SealantCandidate) -> Vec<StartWindow> {
    let starts = starts(job);
    let mut runs: Vec<Vec<(Time, Time)>> = Vec::new();
    for (index, from) in starts.iter().copied().enumerate() {
        if !may_start(job, candidate, from) {
            continue;
        }
        let next = starts.get(index + 1).copied().unwrap_or_else(|| job.weather.end());
        let until = last_start(from, next, |start| may_start(job, candidate, start));
        match runs.last_mut() {
            Some(run) if run.last().is_some_and(|(_, end)| from - *end <= a_minute()) => run.push((from, until)),
            _ => runs.push(vec![(from, until)]),
        }
    }
    let is_kept = |from: Time, until: Time| from == job.weather.start || until - from >= least_window();
    let mut windows = Vec::new();
    for run in runs.iter().map(|run| split(job, candidate, run)) {
        let (first, last) = (run.first().map(|first| first.from), run.last().map(|last| last.until));
        if !first.zip(last).is_some_and(|(from, until)| is_kept(from, until)) {
            continue;
        }
        // Of a run that is long enough, what is too short beside what is not goes, too.
        let has_long = run.iter().any(|window| is_kept(window.from, window.until));
        windows.extend(run.into_iter().filter(|window| !has_long || is_kept(window.from, window.until)));
    }
    windows
}

/// The windows of a run of starts, each part of which is preferred from its first start to some other, or not at all.
fn split(job: &ResolvedCureGuidance, candidate: &SealantCandidate, run: &[(Time, Time)]) -> Vec<StartWindow> {
    let mut windows: Vec<StartWindow> = Vec::new();
    let mut add = |from: Time, until: Time, is_preferred: bool| match windows.last_mut() {
        Some(last) if last.is_preferred == is_preferred => last.until = until,
        _ => windows.push(StartWindow { from, until, is_preferred }),
    };
    let is_preferred = |start: Time| {
        is_workable(job, candidate, start) && late_return(job, candidate, start + job.work.duration).is_none()
    };
    for (from, until) in run.iter().copied() {
        if !is_preferred(from) {
            add(from, until, false);
            continue;
        }
        let last = last_start(from, until + a_minute(), is_preferred);
        add(from, last, true);
        if last < until {
            add(last + a_minute(), until, false);
        }
    }
    windows
}

/// Whether the sealant surely can be worked for as long as it takes to empty a cartridge, in every hour of the work from a start on.
pub fn is_workable(job: &ResolvedCureGuidance, candidate: &SealantCandidate, start: Time) -> bool {
    let mut hours = job.weather.hours_between(start, start + job.work.duration);
    hours.all(|hour| candidate.workable_time(hour).is_none_or(|(_, [least, _])| least >= job.work.cartridge))
}

/// The last of the starts that hold, in whole minutes from one that does and before another time.
fn last_start(from: Time, before: Time, holds: impl Fn(Time) -> bool) -> Time {
    let after = |minutes: u32| from + Time::new::<minute>(f64::from(minutes));
    // A little less than nothing of a minute is what sums leave.
    let (mut good, mut bad) = (0, ((before - from).get::<minute>() - 1e-9).ceil().max(1.0) as u32);
    if holds(after(bad - 1)) {
        return after(bad - 1);
    }
    while bad - good > 1 {
        let middle = u32::midpoint(good, bad);
        if holds(after(middle)) { good = middle } else { bad = middle }
    }
    after(good)
}

fn a_minute() -> Time {
    Time::new::<minute>(1.0)
}
