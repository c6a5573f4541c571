//! Whether traffic may return when it is needed, the earliest start that would allow it, and what to do instead.

use uom::si::f64::Time;
use uom::si::length::millimeter;

use super::candidate::SealantCandidate;
use super::request::ResolvedCureGuidance;
use super::slot_condition::insulation_finding;
use super::weather_stops::passes;
use crate::calculation::report::{FieldPath, Finding, ListJoin, Statement};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::sealing::CureMilestone;

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
    let opens = |time: Time| weather.date_time(time).round_to_minute().format_for_sentence();
    let with_need = |statement: Statement| statement.text("needed_open_by", needed.format_for_sentence());
    let is_beyond = limit > weather.end();
    let (code, level, message) = match (times.earliest, times.latest) {
        (_, None) if is_beyond => (
            FindingCode::ForecastTooShort,
            Level::Warning,
            with_need(Statement::new("cure-weather-ends-before-traffic")),
        ),
        (Some(earliest), Some(latest)) if earliest <= limit => (
            FindingCode::OpensLate,
            Level::Warning,
            with_need(Statement::new("cure-may-open-late"))
                .text("earliest", opens(earliest))
                .text("latest", opens(latest)),
        ),
        (Some(earliest), None) if earliest <= limit => (
            FindingCode::OpensLate,
            Level::Warning,
            with_need(Statement::new("cure-may-open-after-weather")).text("earliest", opens(earliest)),
        ),
        (Some(earliest), _) => (
            FindingCode::OpensLate,
            Level::Stop,
            with_need(Statement::new("cure-opens-late"))
                .text("earliest", opens(earliest))
                .followed_by(alternatives(job, candidate)),
        ),
        (None, _) => (
            FindingCode::OpensLate,
            Level::Stop,
            with_need(Statement::new("cure-opens-after-weather")).followed_by(alternatives(job, candidate)),
        ),
    };
    Some(Finding::at(code, level, at, message))
}

/// What the times of traffic rest on where no sheet gives them: a note, or a warning where the needed time relies on them.
pub fn traffic_skin_finding(job: &ResolvedCureGuidance, candidate: &SealantCandidate) -> Option<Finding> {
    let skin = candidate.traffic_skin()?;
    let is_relied_on = job.needed.is_some() && traffic_finding(job, candidate).is_none();
    let level = if is_relied_on { Level::Warning } else { Level::Note };
    let message = Statement::new("cure-traffic-by-skin").detail_length("skin", skin, job.weather.system);
    let at = FieldPath::BODY.field("sealant").field("data_sheet").field("open_to_traffic").pointer();
    Some(Finding::at(FindingCode::TrafficBySkin, level, at, message).figure("skin", skin.get::<millimeter>(), "mm"))
}

/// What would meet the needed time: another kind, another start.
fn alternatives(job: &ResolvedCureGuidance, candidate: &SealantCandidate) -> Statement {
    let with_start = |statement: Statement, start: Time| {
        statement.text("earliest_start", job.weather.date_time(start).format_for_sentence())
    };
    let own = earliest_start(job, candidate).map(|start| with_start(Statement::new("cure-alternative-own"), start));
    let others = job.candidates().into_iter().filter(|other| other.kind != candidate.kind).filter_map(|other| {
        let start = earliest_start(job, &other)?;
        Some(with_start(Statement::new("cure-alternative-other").member("kind", other.kind), start))
    });
    let all: Vec<_> = own.into_iter().chain(others).collect();
    if all.is_empty() {
        return Statement::new("cure-no-alternative");
    }
    Statement::new("cure-alternatives").phrases("alternatives", all, ListJoin::Semicolon)
}
