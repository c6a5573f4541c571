//! The report, from the request in typed quantities and the assessments of all kinds of sealant.

use uom::si::f64::{MolarEnergy, Time};
use uom::si::molar_energy::kilojoule_per_mole;
use uom::si::time::{day, hour as an_hour, second};

use super::assessment::Assessment;
use super::candidate::{Hardening, SealantCandidate};
use super::cure_model::{CureModel, RateLaw};
use super::data_sheet::parse_usual;
use super::deadline::earliest_start;
use super::report::{
    CureAdvice, CureAlternative, CureConditions, CureEquivalentHours, CureGuidanceInputs, CureGuidanceReport, CureHour,
    CureMilestoneReached, CureReferenceTime, CureSealantEcho, CureSheetEcho, CureShelf, CureTimes, CureWindow,
};
use super::request::{CureGuidanceRequest, ResolvedCureGuidance};
use super::weather_series::WeatherHour;
use super::weather_stops::passes;
use crate::calculation::report::ReportParts;
use crate::practice::Sourced;
use crate::practice::sealants::CureMechanism;
use crate::practice::sealing::{CureHandling, CureMilestone, cold_handling, dew_point_margin, hot_handling};
use crate::quantity::dimension;
use crate::quantity::output::{DepthPerDayValue, DurationValue, round};
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
    let starts = possible_starts(job);
    let conditions = request.weather.conditions.as_deref().unwrap_or_default();
    CureGuidanceReport {
        verdict: chosen.verdict,
        reasons: chosen.reasons(),
        windows: windows(job, &starts),
        milestones: milestones(job),
        hourly: hourly(job, &starts),
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
            .pot_life(job.weather.start, &job.weather)
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

/// How to treat sealant and slot in the weather of the start, in the order of the work.
pub fn advice(job: &ResolvedCureGuidance) -> Vec<CureAdvice> {
    let hour = job.weather.hour_at(job.weather.start);
    let is_cold = hour.air < cold_handling() || hour.surface < cold_handling();
    let is_hot = hour.air >= hot_handling() || hour.surface >= hot_handling();
    CureHandling::ALL
        .iter()
        .filter(|advice| advice.fits(job.candidate.kind, job.condition.is_dry(), is_cold, is_hot))
        .map(|advice| CureAdvice {
            code: advice.code(),
            message: advice.description(),
            source_ids: advice.sources().to_vec(),
        })
        .collect()
}

/// The times at which the work may begin, each in an hour of its own, and whether it passes every stop of the weather.
fn possible_starts(job: &ResolvedCureGuidance) -> Vec<(Time, bool)> {
    job.weather.possible_starts().map(|start| (start, passes(&job.candidate, start, &job.weather))).collect()
}

/// A time of the weather, as the report has it.
fn format_time(job: &ResolvedCureGuidance, time: Time) -> String {
    job.weather.date_time(time).format_rfc_3339()
}

/// When a milestone is reached: to the minute, and never before the start.
fn format_reached(job: &ResolvedCureGuidance, time: Time) -> String {
    let reached = job.weather.date_time(time).round_to_minute();
    let start = job.weather.date_time(job.weather.start);
    if reached.at < start.at { start.format_rfc_3339() } else { reached.format_rfc_3339() }
}

/// The spans of consecutive hours in which the work passes.
fn windows(job: &ResolvedCureGuidance, starts: &[(Time, bool)]) -> Vec<CureWindow> {
    let mut windows: Vec<(Time, Time)> = Vec::new();
    for (start, _) in starts.iter().filter(|(_, passes)| *passes) {
        let until = job.weather.hour_at(*start).until;
        match windows.last_mut() {
            Some((_, end)) if *end == *start => *end = until,
            _ => windows.push((*start, until)),
        }
    }
    let window = |(start, end)| CureWindow { start: format_time(job, start), end: format_time(job, end) };
    windows.into_iter().map(window).collect()
}

/// Every milestone that the chosen kind has.
fn milestones(job: &ResolvedCureGuidance) -> Vec<CureMilestoneReached> {
    let (candidate, weather) = (&job.candidate, &job.weather);
    let (start, end) = (weather.start, weather.end());
    let reached = |milestone: &CureMilestone| {
        let times = candidate.milestone_times(*milestone, start, weather)?;
        let is_open = times.latest.is_none();
        let progress = candidate.progress(*milestone, start, end).filter(|_| is_open);
        let depth = candidate.depth(start, end, job.slot.depth).filter(|_| is_open && milestone.is_by_depth());
        Some(CureMilestoneReached {
            milestone: *milestone,
            earliest: times.earliest.map(|time| format_reached(job, time)),
            latest: times.latest.map(|time| format_reached(job, time)),
            progress_low_percent: progress.map(|(low, _)| percent(low)),
            progress_high_percent: progress.map(|(_, high)| percent(high)),
            depth_low: depth.map(|(low, _)| low.into()),
            depth_high: depth.map(|(_, high)| high.into()),
        })
    };
    CureMilestone::ALL.iter().filter_map(reached).collect()
}

/// The hours from the start on, of which each has one possible start.
fn hourly(job: &ResolvedCureGuidance, starts: &[(Time, bool)]) -> Vec<CureHour> {
    let (candidate, weather) = (&job.candidate, &job.weather);
    let of = |(hour, (_, can_apply)): (&WeatherHour, &(Time, bool))| {
        let rates = match &candidate.hardening {
            Hardening::Cures(model) => Some(model.laws.map(|law| law.rate_in(hour))),
            Hardening::Cools(_) => None,
        };
        let progress = candidate.progress(CureMilestone::FullCure, weather.start, hour.until);
        CureHour {
            time: format_time(job, hour.from),
            air: hour.air.into(),
            surface: hour.surface.into(),
            surface_is_assumed: hour.surface_is_assumed,
            dew_point: hour.dew_point.into(),
            frost_point: hour.frost_point.map(Into::into),
            dew_point_margin: hour.dew_point_margin().into(),
            rain: hour.rain_chance(),
            can_apply: *can_apply,
            rate_low: rates.map(|[one, other]| round(one.min(other), 4)),
            rate_high: rates.map(|[one, other]| round(one.max(other), 4)),
            progress_low_percent: progress.map(|(low, _)| percent(low)),
            progress_high_percent: progress.map(|(_, high)| percent(high)),
        }
    };
    weather.hours.iter().filter(|hour| hour.until > weather.start).zip(starts).map(of).collect()
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
    let times = candidate.milestone_times(CureMilestone::OpenToTraffic, job.weather.start, &job.weather);
    CureAlternative {
        kind: candidate.kind,
        is_chosen: candidate.kind == job.candidate.kind,
        verdict: assessment.verdict,
        reasons: assessment.reasons(),
        open_to_traffic_earliest: times.and_then(|times| times.earliest).map(|time| format_reached(job, time)),
        open_to_traffic_latest: times.and_then(|times| times.latest).map(|time| format_reached(job, time)),
        earliest_start: earliest_start(job, candidate).map(|time| format_time(job, time)),
    }
}

/// The request as it was resolved.
fn echo(job: &ResolvedCureGuidance) -> CureGuidanceInputs {
    let weather = &job.weather;
    CureGuidanceInputs {
        sealant: echo_sealant(&job.candidate),
        slot: job.slot.clone(),
        insulation_rating: job.rating.map(Into::into),
        start: format_time(job, weather.start),
        least_dew_point_margin: dew_point_margin().into(),
        surface_condition: job.condition,
        needed_open_by: job.needed.map(|needed| needed.format_rfc_3339()),
        weather_from: weather.begin.format_rfc_3339(),
        weather_until: format_time(job, weather.end()),
    }
}

fn echo_sealant(candidate: &SealantCandidate) -> CureSealantEcho {
    let sheet = &candidate.sheet;
    let energy = |energy: MolarEnergy| round(energy.get::<kilojoule_per_mole>(), 1);
    let energies = match &candidate.hardening {
        Hardening::Cures(model) => Some(model.energies),
        Hardening::Cools(_) => None,
    };
    // The earliest times of a front go by no activation energy.
    let has_low_energy = match candidate.kind.cure_mechanism() {
        CureMechanism::Reaction(_) => true,
        CureMechanism::MoistureFront(_) | CureMechanism::Cooling(_) => false,
    };
    let reference = |(milestone, [least, most]): (CureMilestone, [Time; 2])| CureReferenceTime {
        milestone,
        least: least.into(),
        most: most.into(),
    };
    let a_day = Time::new::<day>(1.0);
    let first_day = candidate.first_day_depth().map(|depths| depths.map(|depth| DepthPerDayValue::from(depth / a_day)));
    CureSealantEcho {
        kind: candidate.kind,
        minimum_application_temperature: sheet.minimum.into(),
        maximum_application_temperature: sheet.maximum.map(Into::into),
        data_sheet: echo_data_sheet(candidate),
        reference_times: candidate.reference_times().into_iter().map(reference).collect(),
        depth_per_day_low: first_day.map(|[low, _]| low),
        depth_per_day_high: first_day.map(|[_, high]| high),
        activation_energy_low_kj_per_mol: energies.filter(|_| has_low_energy).map(|[low, _]| energy(low)),
        activation_energy_high_kj_per_mol: energies.map(|[_, high]| energy(high)),
        pour_temperature: sheet.pour.map(Into::into),
    }
}

/// The times of the data sheet; `None` for what only cools.
fn echo_data_sheet(candidate: &SealantCandidate) -> Option<CureSheetEcho> {
    let sheet = &candidate.sheet;
    let skin_over = sheet.skin.map(DurationValue::from);
    let echo = CureSheetEcho {
        skin_over,
        open_to_traffic: sheet.traffic.map(Into::into),
        full_cure: sheet.full.map(Into::into),
        depth_per_day: None,
        pot_life: sheet.pot_life.map(Into::into),
        at_temperature: sheet.at_temperature.into(),
        at_relative_humidity_percent: None,
    };
    match candidate.kind.cure_mechanism() {
        CureMechanism::MoistureFront(figures) => Some(CureSheetEcho {
            skin_over: skin_over
                .or_else(|| Some(parse_usual::<dimension::Time>(figures.skin_over, Time::default()).into())),
            depth_per_day: sheet.depth_per_day.map(Into::into),
            at_relative_humidity_percent: Some(round(sheet.at_humidity_percent, 1)),
            ..echo
        }),
        CureMechanism::Reaction(_) => Some(echo),
        CureMechanism::Cooling(_) => None,
    }
}

fn percent(share: f64) -> f64 {
    round(100.0 * share, 1)
}
