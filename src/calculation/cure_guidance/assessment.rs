//! What is to be said of a kind of sealant at the start, and the verdict that follows.

use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::hour as an_hour;

use super::candidate::SealantCandidate;
use super::deadline::{earliest_start, traffic_finding, traffic_skin_finding};
use super::report::CureReason;
use super::request::ResolvedCureGuidance;
use super::slot_condition::{insulation_finding, slot_finding};
use super::weather_stops::find_stops;
use crate::calculation::report::{FieldPath, Finding};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::sealants::CureMechanism;
use crate::practice::sealing::{CureVerdict, SHELF_LIFE_SHORT_DAYS, hot_handling, slab_memory};
use crate::quantity::format::{format_count, format_duration, format_temperature, format_temperature_difference};
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
            message: finding.message.words().to_owned(),
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
        let when = weather.date_time(hour.from).format_for_sentence();
        findings.push(
            Finding::at(
                FindingCode::RainPossible,
                Level::Warning,
                row(hour.index, "precipitation_probability_percent"),
                format!("At {when} rain or snow is possible ({percent:.0} %), before the sealant keeps it out. Have a cover ready that does not touch the sealant."),
            )
            .figure("probability", percent, "percent"),
        );
    }
    if let Some(hour) = weather.hours_between(start, until).find(|hour| !hour.is_rain_known()) {
        findings.push(Finding::at(
            FindingCode::RainUnknown,
            Level::Warning,
            row(hour.index, "precipitation_probability_percent"),
            "The weather that was sent does not say whether it rains before the sealant keeps water out. Look at the sky, or send precipitation_probability_percent.",
        ));
    }
    if safe.is_none() {
        findings.push(Finding::at(
            FindingCode::ForecastTooShort,
            Level::Warning,
            FieldPath::BODY.field("weather").pointer(),
            format!(
                "The weather ends at {}, before {}. What comes after is not guessed: send more hours.",
                weather.date_time(weather.end()).format_for_sentence(),
                candidate.safe_event()
            ),
        ));
    }
    findings
}

/// Whether the temperature of the slab at the start is assumed.
fn surface_finding(job: &ResolvedCureGuidance) -> Option<Finding> {
    let hour = job.weather.hour_at(job.weather.start);
    hour.surface_is_assumed.then(|| {
        let at = FieldPath::BODY.field("weather").field("conditions").item(hour.index).field("surface").pointer();
        let slab = format_temperature(hour.surface, job.weather.system);
        let message = if hour.from < slab_memory() {
            format!(
                "Nobody measured the slab, and the weather that was sent begins only at {}: what the hours before left in the slab is not known. It is taken to be at {slab}. Measure it beside the slot before you decide, and send surface.",
                job.weather.begin.format_for_sentence()
            )
        } else {
            format!(
                "Nobody measured the slab; it is taken to be at {slab}, the lowest air of the last 12 hours and less at night. Measure it beside the slot and send surface."
            )
        };
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
    let find = |code, message| {
        let finding = Finding::at(code, Level::Warning, at, message);
        Some(finding.figure("warmest", warmest.get::<degree_celsius>(), "celsius"))
    };
    let temperature = format_temperature(warmest, job.weather.system);
    match candidate.kind.cure_mechanism() {
        CureMechanism::MoistureFront(_) if candidate.sheet.maximum.is_none() => {
            let message = format!(
                "It is {temperature}, and nobody said how hot this sealant may be applied: in heat it skins over fast, and gas below the skin blows bubbles. Look for the highest temperature on the data sheet, or work in the cooler hours."
            );
            return find(FindingCode::HotSlab, message);
        }
        CureMechanism::MoistureFront(_) | CureMechanism::Cooling(_) => return None,
        CureMechanism::Reaction(_) => {}
    }
    let pot_life = candidate.pot_life(job.weather.start, &job.weather);
    let (what, [least, most]) = match pot_life {
        Some(times) => ("can be worked for", times),
        None => ("sets in", candidate.set_time(job.weather.start, &job.weather)?),
    };
    let band = match (format_duration(least), format_duration(most)) {
        (least, most) if least == most => least,
        (least, most) => format!("{least} to {most}"),
    };
    let message = format!(
        "At {temperature} mixed sealant {what} about {band}. Mix little, pour at once, and keep both parts in the shade."
    );
    find(FindingCode::ShortPotLife, message)
}

/// What is to be said of the age of the chosen sealant.
fn shelf_life_finding(job: &ResolvedCureGuidance) -> Option<Finding> {
    let shelf_life = job.shelf_life?;
    let at = FieldPath::BODY.field("sealant").field("made_on").pointer();
    let (until, days) = (shelf_life.until, shelf_life.days_left);
    let finding = if days < 0 {
        let message = format!(
            "The sealant's shelf life ended on {until}. Take fresh sealant; old sealant cures badly or not at all."
        );
        Finding::at(FindingCode::PastShelfLife, Level::Stop, at, message)
    } else if days <= SHELF_LIFE_SHORT_DAYS {
        let when = if days == 0 {
            "the day of the start".to_owned()
        } else {
            format!("in {}", format_count(days as f64, "day"))
        };
        let message = format!("The sealant's shelf life ends on {until}, {when}. Use it first, and try it on a scrap.");
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
    let message = format!(
        "The slot is dry, the slab is at {}, {} above the dew point, and rain is unlikely before {}, by {}. Begin.",
        format_temperature(hour.surface, system),
        format_temperature_difference(hour.dew_point_margin(), system),
        candidate.safe_event(),
        job.weather.date_time(safe).round_to_minute().format_for_sentence(),
    );
    Finding::at(FindingCode::FitToApply, Level::Note, FieldPath::BODY.field("start").pointer(), message)
        .figure("margin", hour.dew_point_margin().get::<uom::si::temperature_interval::degree_celsius>(), "celsius")
        .figure("safe_after", (safe - job.weather.start).get::<an_hour>(), "h")
}
