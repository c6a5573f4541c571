//! What is to be said of the return of traffic, and what to do instead.

use uom::si::f64::Time;
use uom::si::length::millimeter;

use super::candidate::SealantCandidate;
use super::deadline::{LateReturn, late_return};
use super::fields_to_send::with_more_hours;
use super::possible_starts::earliest_start;
use super::request::ResolvedCureGuidance;
use crate::calculation::report::{FieldPath, Finding, ListJoin, Statement};
use crate::practice::finding_codes::{FindingCode, Level};

/// What is to be said of traffic that returns too late, surely or perhaps.
pub fn late_finding(job: &ResolvedCureGuidance, candidate: &SealantCandidate, late: &LateReturn) -> Finding {
    let opens = |time: Time| job.weather.date_time(time).round_to_minute().format_for_sentence();
    let with_need = |statement: Statement| match &job.needed {
        Some(needed) => statement.text("needed_open_by", needed.format_for_sentence()),
        None => statement,
    };
    let (code, message) = match (late.times.earliest, late.times.latest) {
        (Some(earliest), _) if late.is_sure => (
            FindingCode::OpensLate,
            with_need(Statement::new("cure-opens-late"))
                .text("earliest", opens(earliest))
                .followed_by(alternatives(job, candidate)),
        ),
        (None, _) if late.is_sure => (
            FindingCode::OpensLate,
            with_need(Statement::new("cure-opens-after-weather")).followed_by(alternatives(job, candidate)),
        ),
        (Some(earliest), Some(latest)) => (
            FindingCode::OpensLate,
            with_need(Statement::new("cure-may-open-late"))
                .text("earliest", opens(earliest))
                .text("latest", opens(latest)),
        ),
        (Some(earliest), None) if !late.is_beyond_weather => (
            FindingCode::OpensLate,
            with_need(Statement::new("cure-may-open-after-weather")).text("earliest", opens(earliest)),
        ),
        _ => (FindingCode::ForecastTooShort, with_need(Statement::new("cure-weather-ends-before-traffic"))),
    };
    let finding = Finding::at(code, late.level(), FieldPath::BODY.field("needed_open_by").pointer(), message);
    if code == FindingCode::ForecastTooShort { with_more_hours(finding) } else { finding }
}

/// What the times of traffic rest on where no sheet gives them: a note, or a warning where the needed time relies on them.
pub fn traffic_skin_finding(job: &ResolvedCureGuidance, candidate: &SealantCandidate, sealed: Time) -> Option<Finding> {
    let skin = candidate.traffic_skin()?;
    let is_relied_on = job.needed.is_some() && late_return(job, candidate, sealed).is_none();
    let level = if is_relied_on { Level::Warning } else { Level::Note };
    let message = Statement::new("cure-traffic-by-skin").detail_length("skin", skin, job.weather.system);
    let at = FieldPath::BODY.field("sealant").field("data_sheet").field("open_to_traffic").pointer();
    let finding = Finding::at(FindingCode::TrafficBySkin, level, at, message)
        .send(&FieldPath::BODY.field("sealant").field("data_sheet").field("open_to_traffic"));
    Some(finding.figure("skin", skin.get::<millimeter>(), "mm"))
}

/// What would meet the needed time: another kind, another start.
fn alternatives(job: &ResolvedCureGuidance, candidate: &SealantCandidate) -> Statement {
    let with_start = |statement: Statement, start: Time| {
        statement.text("earliest_start", job.weather.date_time(start).format_for_sentence())
    };
    let dry = job.once_dry();
    let own = earliest_start(&dry, candidate).map(|start| with_start(Statement::new("cure-alternative-own"), start));
    let others = job.candidates().into_iter().filter(|other| other.kind != candidate.kind).filter_map(|other| {
        let start = earliest_start(&dry, &other)?;
        Some(with_start(Statement::new("cure-alternative-other").member("kind", other.kind), start))
    });
    let all: Vec<_> = own.into_iter().chain(others).collect();
    if all.is_empty() {
        return Statement::new("cure-no-alternative");
    }
    Statement::new("cure-alternatives").phrases("alternatives", all, ListJoin::Semicolon)
}
