//! The report, from the request in typed quantities and the assessments of all kinds of sealant.

use uom::si::f64::Time;
use uom::si::time::{hour as an_hour, second};

use super::assessment::Assessment;
use super::candidate::Hardening;
use super::cure_model::{CureModel, RateLaw};
use super::echo::echo;
use super::possible_starts::{StartWindow, earliest_start};
use super::report::{
    CureAdvice, CureAlternative, CureConditions, CureEquivalentHours, CureGuidanceReport, CureHour,
    CureMilestoneReached, CureShelf, CureTimes, CureWindow,
};
use super::request::{CureGuidanceRequest, ResolvedCureGuidance};
use super::weather_series::WeatherHour;
use crate::calculation::report::{Message, ReportParts};
use crate::practice::Sourced;
use crate::practice::sealing::{CureHandling, CureMilestone, cold_handling, hot_handling, slab_memory};
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// The report; `chosen` is among `assessments`, too, and `handling` is that of [`advice`].
pub fn compose_report(
    request: &CureGuidanceRequest,
    job: &ResolvedCureGuidance,
    chosen: &Assessment,
    assessments: &[Assessment],
    handling: Vec<CureAdvice>,
    parts: ReportParts,
) -> CureGuidanceReport {
    let from = chosen.milestones_from(job);
    let sealed = from.map(|start| start + job.work.duration);
    let conditions = request.weather.conditions.as_deref().unwrap_or_default();
    let once_dry = &chosen.windows_once_dry;
    CureGuidanceReport {
        verdict: chosen.verdict,
        reasons: chosen.reasons(),
        windows: windows(job, chosen, &chosen.windows),
        windows_once_dry: if once_dry.is_empty() { Vec::new() } else { windows(&job.once_dry(), chosen, once_dry) },
        milestones_from: from.map(|start| format_time(job, start)),
        last_foot_sealed: sealed.map(|sealed| format_time(job, sealed)),
        milestones: sealed.map_or_else(Vec::new, |sealed| milestones(job, sealed)),
        hours_before: hours_before(job),
        hourly: hourly(job, chosen, sealed),
        equivalent_hours: match &job.candidate.hardening {
            Hardening::Cures(model) => Some(equivalent_hours(job, model)),
            Hardening::Cools(_) => None,
        },
        alternatives: assessments.iter().map(|assessment| alternative(job, assessment)).collect(),
        shelf: job
            .shelf_life
            .map(|shelf_life| CureShelf { ends_on: shelf_life.until.to_string(), days_left: shelf_life.days_left }),
        pot_life: job
            .candidate
            .pot_life(from.unwrap_or(job.weather.start), &job.weather)
            .map(|[least, most]| CureTimes { least: least.into(), most: most.into() }),
        handling,
        conditions_used: conditions.iter().map(CureConditions::from).collect(),
        inputs: echo(job),
        findings: parts.findings,
        assumed: parts.assumed,
        unused: parts.unused,
        cautions: parts.cautions,
        basis: parts.basis,
    }
}

/// How to treat sealant and slot in the weather of the start that milestones are given for, in the order of the work.
pub fn advice(job: &ResolvedCureGuidance, chosen: &Assessment) -> Vec<CureAdvice> {
    let hour = job.weather.hour_at(chosen.milestones_from(job).unwrap_or(job.weather.start));
    let is_cold = hour.air < cold_handling() || hour.surface < cold_handling();
    let is_hot = hour.air >= hot_handling() || hour.surface >= hot_handling();
    let is_dry = job.condition.at_start(&job.weather).is_dry();
    CureHandling::ALL
        .iter()
        .filter(|advice| advice.fits(job.candidate.kind, is_dry, is_cold, is_hot))
        .map(|advice| CureAdvice {
            code: advice.code(),
            message: Message::description_of(*advice),
            source_ids: advice.sources().to_vec(),
        })
        .collect()
}

/// A time of the weather, as the report has it.
fn format_time(job: &ResolvedCureGuidance, time: Time) -> String {
    job.weather.date_time(time).format_rfc_3339()
}

/// When a milestone is reached: to the minute, and never before the last foot is sealed.
fn format_reached(job: &ResolvedCureGuidance, sealed: Time, time: Time) -> String {
    let reached = job.weather.date_time(time).round_to_minute();
    let sealed = job.weather.date_time(sealed);
    if reached.at < sealed.at { sealed.format_rfc_3339() } else { reached.format_rfc_3339() }
}

/// Windows, with their length and why they end.
fn windows(job: &ResolvedCureGuidance, chosen: &Assessment, windows: &[StartWindow]) -> Vec<CureWindow> {
    let window = |window: &StartWindow| CureWindow {
        start: format_time(job, window.from),
        end: format_time(job, window.until),
        duration: (window.until - window.from).into(),
        preferred: window.is_preferred,
        ends_because: chosen.end_of(job, windows, window),
    };
    windows.iter().map(window).collect()
}

/// Every milestone that the chosen kind has, after its last foot is sealed.
fn milestones(job: &ResolvedCureGuidance, sealed: Time) -> Vec<CureMilestoneReached> {
    let (candidate, weather) = (&job.candidate, &job.weather);
    let end = weather.end();
    let reached = |milestone: &CureMilestone| {
        let times = candidate.milestone_times(*milestone, sealed, weather)?;
        let is_open = times.latest.is_none();
        let progress = candidate.progress(*milestone, sealed, end).filter(|_| is_open);
        let depth = candidate.depth(sealed, end, job.slot.depth).filter(|_| is_open && milestone.is_by_depth());
        Some(CureMilestoneReached {
            milestone: *milestone,
            earliest: times.earliest.map(|time| format_reached(job, sealed, time)),
            latest: times.latest.map(|time| format_reached(job, sealed, time)),
            progress_low_percent: progress.map(|(low, _)| percent(low)),
            progress_high_percent: progress.map(|(_, high)| percent(high)),
            depth_low: depth.map(|(low, _)| low.into()),
            depth_high: depth.map(|(_, high)| high.into()),
        })
    };
    CureMilestone::ALL.iter().filter_map(reached).collect()
}

/// The hours from the start on.
fn hourly(job: &ResolvedCureGuidance, chosen: &Assessment, sealed: Option<Time>) -> Vec<CureHour> {
    let weather = &job.weather;
    let of = |hour: &WeatherHour| {
        let begin = hour.from.max(weather.start);
        let can_apply = chosen.windows.iter().any(|window| window.from <= begin && begin <= window.until);
        let progress =
            sealed.and_then(|sealed| job.candidate.progress(CureMilestone::FullCure, sealed, hour.until.max(sealed)));
        hour_row(job, hour, can_apply, progress)
    };
    weather.hours_between(weather.start, weather.end()).map(of).collect()
}

/// The hours before the start, as far back as a slab remembers.
fn hours_before(job: &ResolvedCureGuidance) -> Vec<CureHour> {
    let (weather, first) = (&job.weather, job.weather.hour_at(job.weather.start).from);
    let hours = weather.hours_between(first - slab_memory(), first);
    hours.map(|hour| hour_row(job, hour, false, None)).collect()
}

fn hour_row(job: &ResolvedCureGuidance, hour: &WeatherHour, can_apply: bool, progress: Option<(f64, f64)>) -> CureHour {
    let rates = match &job.candidate.hardening {
        Hardening::Cures(model) => Some(model.laws.map(|law| law.rate_in(hour))),
        Hardening::Cools(_) => None,
    };
    CureHour {
        time: format_time(job, hour.from),
        air: hour.air.into(),
        surface: hour.surface.into(),
        surface_is_assumed: hour.surface_is_assumed,
        dew_point: hour.dew_point.into(),
        frost_point: hour.frost_point.map(Into::into),
        dew_point_margin: hour.dew_point_margin().into(),
        rain: hour.rain_chance(),
        can_apply,
        rate_low: rates.map(|[one, other]| round(one.min(other), 4)),
        rate_high: rates.map(|[one, other]| round(one.max(other), 4)),
        progress_low_percent: progress.map(|(low, _)| percent(low)),
        progress_high_percent: progress.map(|(_, high)| percent(high)),
    }
}

/// What the weather from the start to its end is worth, by each law.
fn equivalent_hours(job: &ResolvedCureGuidance, model: &CureModel) -> CureEquivalentHours {
    let worth = |law: RateLaw| {
        let (integral, weather) = (law.integrate(&job.weather), &job.weather);
        let seconds = integral.at(weather.end().get::<second>()) - integral.at(weather.start.get::<second>());
        round(Time::new::<second>(seconds).get::<an_hour>(), 3)
    };
    let [low, high] = model.energies;
    CureEquivalentHours {
        vapour_pressure: worth(RateLaw::Vapour),
        arrhenius_low: worth(RateLaw::Arrhenius(low)),
        arrhenius_high: worth(RateLaw::Arrhenius(high)),
        vapour_pressure_and_arrhenius: worth(model.slowed_law),
    }
}

/// A kind of sealant, for the comparison of all.
fn alternative(job: &ResolvedCureGuidance, assessment: &Assessment) -> CureAlternative {
    let candidate = &assessment.candidate;
    let from = assessment.milestones_from(job);
    let traffic = from.and_then(|start| {
        let sealed = start + job.work.duration;
        let times = candidate.milestone_times(CureMilestone::OpenToTraffic, sealed, &job.weather)?;
        Some([times.earliest, times.latest].map(|time| Some(format_reached(job, sealed, time?))))
    });
    let [earliest, latest] = traffic.unwrap_or_default();
    CureAlternative {
        kind: candidate.kind,
        is_chosen: candidate.kind == job.candidate.kind,
        verdict: assessment.verdict,
        reasons: assessment.reasons(),
        milestones_from: from.map(|start| format_time(job, start)),
        open_to_traffic_earliest: earliest,
        open_to_traffic_latest: latest,
        earliest_start: earliest_start(job, candidate).map(|time| format_time(job, time)),
    }
}

fn percent(share: f64) -> f64 {
    round(100.0 * share, 1)
}
