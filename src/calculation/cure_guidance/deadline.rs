//! Whether traffic may return when it is needed, the earliest start that would allow it, and what to do instead.

use uom::si::f64::Time;
use uom::si::length::millimeter;

use super::candidate::SealantCandidate;
use super::request::ResolvedCureGuidance;
use super::slot_condition::insulation_finding;
use super::weather_stops::passes;
use crate::calculation::report::{FieldPath, Finding};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::sealing::CureMilestone;
use crate::quantity::format::format_detail_length;
use crate::vocabulary::Vocabulary;

/// The earliest start that no weather stops, and from which traffic surely may return when it is needed. `None` at every hour for
/// sealant past its shelf life, and where the insulation does not stand the pour.
pub fn earliest_start(job: &ResolvedCureGuidance, candidate: &SealantCandidate) -> Option<Time> {
    let is_old =
        candidate.kind == job.candidate.kind && job.shelf_life.is_some_and(|shelf_life| shelf_life.days_left < 0);
    if is_old || insulation_finding(job, candidate).is_some() {
        return None;
    }
    let meets_need = |at: Time| {
        let Some(needed) = job.needed else { return true };
        let times = candidate.milestone_times(CureMilestone::OpenToTraffic, at, &job.weather);
        times.and_then(|times| times.latest).is_some_and(|latest| latest <= needed.since(job.weather.begin.at))
    };
    job.weather.possible_starts().find(|at| passes(candidate, *at, &job.weather) && meets_need(*at))
}

/// What is to be said of traffic that may return too late; `None` where it surely returns in time, or no time is needed.
pub fn traffic_finding(job: &ResolvedCureGuidance, candidate: &SealantCandidate) -> Option<Finding> {
    let needed = job.needed?;
    let (weather, at) = (&job.weather, FieldPath::BODY.field("needed_open_by").pointer());
    let times = candidate.milestone_times(CureMilestone::OpenToTraffic, weather.start, weather)?;
    let limit = needed.since(weather.begin.at);
    if times.latest.is_some_and(|latest| latest <= limit) {
        return None;
    }
    let (needed, opens) =
        (needed.format_for_sentence(), |time: Time| weather.date_time(time).round_to_minute().format_for_sentence());
    let is_beyond = limit > weather.end();
    let (code, level, message) = match (times.earliest, times.latest) {
        (_, None) if is_beyond => (
            FindingCode::ForecastTooShort,
            Level::Warning,
            format!(
                "The weather ends before traffic may surely return, so nobody can say whether {needed} is met. Send more hours."
            ),
        ),
        (Some(earliest), Some(latest)) if earliest <= limit => (
            FindingCode::OpensLate,
            Level::Warning,
            format!(
                "Traffic may return between {} and {}, and is needed at {needed}. Have a way round ready.",
                opens(earliest),
                opens(latest)
            ),
        ),
        (Some(earliest), None) if earliest <= limit => (
            FindingCode::OpensLate,
            Level::Warning,
            format!(
                "Traffic may return from {} on, but perhaps only after the weather that was sent ends; it is needed at {needed}. Have a way round ready.",
                opens(earliest)
            ),
        ),
        (Some(earliest), _) => (
            FindingCode::OpensLate,
            Level::Stop,
            format!(
                "Traffic may return at {} at the earliest, and is needed at {needed}.{}",
                opens(earliest),
                format_alternatives(job, candidate)
            ),
        ),
        (None, _) => (
            FindingCode::OpensLate,
            Level::Stop,
            format!(
                "Traffic may not return within the weather that was sent, and is needed at {needed}.{}",
                format_alternatives(job, candidate)
            ),
        ),
    };
    Some(Finding::at(code, level, at, message))
}

/// What the times of traffic rest on where no sheet gives them: a note, or a warning where the needed time relies on them.
pub fn traffic_skin_finding(job: &ResolvedCureGuidance, candidate: &SealantCandidate) -> Option<Finding> {
    let skin = candidate.traffic_skin()?;
    let is_relied_on = job.needed.is_some() && traffic_finding(job, candidate).is_none();
    let level = if is_relied_on { Level::Warning } else { Level::Note };
    let message = format!(
        "No data sheet says when traffic may return, so a cured skin of {} stands in: a choice made here. Below it the sealant stays soft for days. Keep wheels off until nothing tracks; where they must be back the same day, take two-part sealant.",
        format_detail_length(skin, job.weather.system)
    );
    let at = FieldPath::BODY.field("sealant").field("data_sheet").field("open_to_traffic").pointer();
    Some(Finding::at(FindingCode::TrafficBySkin, level, at, message).figure("skin", skin.get::<millimeter>(), "mm"))
}

/// What would meet the needed time: another kind, another start.
fn format_alternatives(job: &ResolvedCureGuidance, candidate: &SealantCandidate) -> String {
    let format = |start: Time| job.weather.date_time(start).format_for_sentence();
    let own = earliest_start(job, candidate).map(|start| format!("this sealant from {}", format(start)));
    let others = job.candidates().into_iter().filter(|other| other.kind != candidate.kind).filter_map(|other| {
        let start = earliest_start(job, &other)?;
        Some(format!("{} sealant from {}", other.kind.label().to_lowercase(), format(start)))
    });
    let all: Vec<_> = own.into_iter().chain(others).collect();
    if all.is_empty() {
        return " Nothing in this weather meets it: take a later time, or another day.".to_owned();
    }
    format!(" What would meet it, in a dry slot: {}.", all.join("; "))
}
