//! What is to be said of a kind of sealant at the start, and the verdict that follows.

use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::hour as an_hour;

use super::candidate::SealantCandidate;
use super::deadline::{earliest_start, traffic_finding, traffic_skin_finding};
use super::report::CureReason;
use super::request::ResolvedCureGuidance;
use super::slot_condition::{insulation_finding, slot_finding};
use super::weather_stops::find_stops;
use crate::calculation::report::{FieldPath, Finding, Statement};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::sealants::CureMechanism;
use crate::practice::sealing::{CureVerdict, SHELF_LIFE_SHORT_DAYS, hot_handling, slab_memory};
use crate::quantity::format::format_duration;
use crate::vocabulary::Vocabulary;

/// A kind of sealant at the start, with what is to be said of it.
#[derive(Clone)]
pub struct Assessment {
    /// The kind.
    pub candidate: SealantCandidate,
    /// What is to be said of it, the gravest first.
    pub findings: Vec<Finding>,
    /// The verdict that follows.
    pub verdict: CureVerdict,
}

impl Assessment {
    /// Assesses a kind of sealant.
    pub fn new(job: &ResolvedCureGuidance, candidate: SealantCandidate) -> Self {
        let findings = find(job, &candidate);
        let verdict = decide(job, &candidate, &findings);
        Self { candidate, findings, verdict }
    }

    /// The findings that the verdict rests on: stops and warnings, or that nothing stands against the work.
    pub fn reasons(&self) -> Vec<CureReason> {
        let counts = |finding: &&Finding| finding.level != Level::Note || finding.code == FindingCode::FitToApply;
        let reason = |finding: &Finding| CureReason {
            code: finding.code.code(),
            level: finding.level,
            message: finding.message.clone(),
        };
        self.findings.iter().filter(counts).map(reason).collect()
    }
}

/// Everything that is to be said of a kind of sealant at the start, the gravest first.
fn find(job: &ResolvedCureGuidance, candidate: &SealantCandidate) -> Vec<Finding> {
    let stops = find_stops(candidate, job.weather.start, &job.weather);
    let mut findings: Vec<_> = stops.into_iter().map(|stop| stop.finding(job, candidate)).collect();
    findings.extend(slot_finding(job, candidate));
    findings.extend(insulation_finding(job, candidate));
    findings.extend(rain_findings(job, candidate));
    findings.extend(surface_finding(job));
    findings.extend(heat_finding(job, candidate));
    findings.extend(traffic_finding(job, candidate));
    if candidate.kind == job.candidate.kind {
        findings.extend(shelf_life_finding(job));
    }
    findings.extend(traffic_skin_finding(job, candidate));
    findings.sort_by_key(|finding| finding.level);
    if findings.iter().all(|finding| finding.level == Level::Note) {
        findings.insert(0, fit_finding(job, candidate));
    }
    findings
}

/// The verdict that follows from findings.
fn decide(job: &ResolvedCureGuidance, candidate: &SealantCandidate, findings: &[Finding]) -> CureVerdict {
    match findings.iter().map(|finding| finding.level).min() {
        Some(Level::Stop) if earliest_start(job, candidate).is_some() => CureVerdict::Wait,
        Some(Level::Stop) => CureVerdict::DoNotApply,
        Some(Level::Warning) => CureVerdict::GoWithCare,
        Some(Level::Note) | None => CureVerdict::Go,
    }
}

/// What is to be said of rain that does not stop the work, from the start until it no longer matters.
fn rain_findings(job: &ResolvedCureGuidance, candidate: &SealantCandidate) -> Vec<Finding> {
    let (weather, start) = (&job.weather, job.weather.start);
    let safe = candidate.safe_time(start, weather);
    let until = safe.unwrap_or_else(|| weather.end());
    let row = |index, field| FieldPath::BODY.field("weather").field("conditions").item(index).field(field).pointer();
    let mut findings = Vec::new();
    if let Some(hour) = weather.hours_between(start, until).find(|hour| hour.is_rain_possible()) {
        let percent = hour.rain_percent.unwrap_or_default();
        let message = Statement::new("cure-rain-possible")
            .text("time", weather.date_time(hour.from).format_for_sentence())
            .percent("probability", percent, 0);
        findings.push(
            Finding::at(
                FindingCode::RainPossible,
                Level::Warning,
                row(hour.index, "precipitation_probability_percent"),
                message,
            )
            .figure("probability", percent, "percent"),
        );
    }
    if let Some(hour) = weather.hours_between(start, until).find(|hour| !hour.is_rain_known()) {
        findings.push(Finding::at(
            FindingCode::RainUnknown,
            Level::Warning,
            row(hour.index, "precipitation_probability_percent"),
            Statement::new("cure-rain-unknown"),
        ));
    }
    if safe.is_none() {
        findings.push(Finding::at(
            FindingCode::ForecastTooShort,
            Level::Warning,
            FieldPath::BODY.field("weather").pointer(),
            Statement::new("cure-weather-too-short")
                .text("weather_end", weather.date_time(weather.end()).format_for_sentence())
                .phrase("safe_event", candidate.safe_event()),
        ));
    }
    findings
}

/// Whether the temperature of the slab at the start is assumed.
fn surface_finding(job: &ResolvedCureGuidance) -> Option<Finding> {
    let hour = job.weather.hour_at(job.weather.start);
    hour.surface_is_assumed.then(|| {
        let at = FieldPath::BODY.field("weather").field("conditions").item(hour.index).field("surface").pointer();
        let message = if hour.from < slab_memory() {
            Statement::new("cure-surface-assumed-by-few-hours")
                .text("weather_begin", job.weather.begin.format_for_sentence())
        } else {
            Statement::new("cure-surface-assumed")
        };
        let message = message.temperature("surface", hour.surface, job.weather.system);
        Finding::at(FindingCode::SurfaceAssumed, Level::Warning, at, message).figure(
            "surface",
            hour.surface.get::<degree_celsius>(),
            "celsius",
        )
    })
}

/// What heat at the start does to a sealant that cures.
fn heat_finding(job: &ResolvedCureGuidance, candidate: &SealantCandidate) -> Option<Finding> {
    let hour = job.weather.hour_at(job.weather.start);
    let warmest = if hour.air > hour.surface { hour.air } else { hour.surface };
    if warmest < hot_handling() {
        return None;
    }
    let at = FieldPath::BODY.field("weather").field("conditions").item(hour.index).field("air").pointer();
    let find = |code, message: Statement| {
        let message = message.temperature("warmest", warmest, job.weather.system);
        let finding = Finding::at(code, Level::Warning, at, message);
        Some(finding.figure("warmest", warmest.get::<degree_celsius>(), "celsius"))
    };
    match candidate.kind.cure_mechanism() {
        CureMechanism::MoistureFront(_) if candidate.sheet.maximum.is_none() => {
            return find(FindingCode::HotSlab, Statement::new("cure-hot-slab"));
        }
        CureMechanism::MoistureFront(_) | CureMechanism::Cooling(_) => return None,
        CureMechanism::Reaction(_) => {}
    }
    let pot_life = candidate.pot_life(job.weather.start, &job.weather);
    let (limit, [least, most]) = match pot_life {
        Some(times) => ("pot_life", times),
        None => ("set", candidate.set_time(job.weather.start, &job.weather)?),
    };
    // The reader sees no band where both ends read the same.
    let is_one = format_duration(least) == format_duration(most);
    let message = Statement::new("cure-short-pot-life")
        .code("limit", limit)
        .code("band", if is_one { "one" } else { "range" })
        .duration("least", least)
        .duration("most", most);
    find(FindingCode::ShortPotLife, message)
}

/// What is to be said of the age of the chosen sealant.
fn shelf_life_finding(job: &ResolvedCureGuidance) -> Option<Finding> {
    let shelf_life = job.shelf_life?;
    let at = FieldPath::BODY.field("sealant").field("made_on").pointer();
    let (until, days) = (shelf_life.until, shelf_life.days_left);
    let finding = if days < 0 {
        let message = Statement::new("cure-past-shelf-life").text("ends_on", until.to_string());
        Finding::at(FindingCode::PastShelfLife, Level::Stop, at, message)
    } else if days <= SHELF_LIFE_SHORT_DAYS {
        let message = Statement::new("cure-shelf-life-short")
            .text("ends_on", until.to_string())
            .count("days_left", days.unsigned_abs());
        Finding::at(FindingCode::ShelfLifeShort, Level::Note, at, message)
    } else {
        return None;
    };
    Some(finding.figure("left", 24.0 * days as f64, "h"))
}

/// That nothing stands against the work.
fn fit_finding(job: &ResolvedCureGuidance, candidate: &SealantCandidate) -> Finding {
    let hour = job.weather.hour_at(job.weather.start);
    let system = job.weather.system;
    let safe = candidate.safe_time(job.weather.start, &job.weather).unwrap_or(job.weather.start);
    let message = Statement::new("cure-fit-to-apply")
        .temperature("surface", hour.surface, system)
        .temperature_difference("margin", hour.dew_point_margin(), system)
        .phrase("safe_event", candidate.safe_event())
        .text("safe_at", job.weather.date_time(safe).round_to_minute().format_for_sentence());
    Finding::at(FindingCode::FitToApply, Level::Note, FieldPath::BODY.field("start").pointer(), message)
        .figure("margin", hour.dew_point_margin().get::<uom::si::temperature_interval::degree_celsius>(), "celsius")
        .figure("safe_after", (safe - job.weather.start).get::<an_hour>(), "h")
}
