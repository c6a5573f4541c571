//! What asks for care at a start that may be allowed.

use uom::si::f64::Time;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::{day, hour as an_hour, minute};

use super::candidate::{SealantCandidate, WorkableLimit};
use super::fields_to_send::{weather_pointer, with_more_hours, with_row_field, with_slot_condition};
use super::possible_starts::{StartWindow, is_workable};
use super::request::ResolvedCureGuidance;
use super::slot_condition::recent_rain;
use super::stop_findings::{with_outlook, with_surface};
use super::weather_series::WeatherHour;
use super::work_stops::{HourStop, SealingSpan, WorkStop, cold_hours};
use crate::calculation::report::{FieldPath, Finding, ListJoin, Statement};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::sealants::CureMechanism;
use crate::practice::sealing::{
    CureMilestone, SHELF_LIFE_SHORT_DAYS, SurfaceCondition, hot_handling, rain_margin, slab_memory,
};
use crate::quantity::format::format_duration;

/// The most windows that a sentence names.
const MAX_COOLER_WINDOWS: usize = 3;

/// What is to be said of the state of a slot that does not stop the work.
pub fn slot_findings(job: &ResolvedCureGuidance, candidate: &SealantCandidate, start: Time) -> Vec<Finding> {
    let at = FieldPath::BODY.field("surface_condition").pointer();
    let find = |code, message: Statement| Finding::at(code, Level::Warning, at.clone(), message);
    let mut findings = Vec::new();
    match job.condition.seen {
        Some(SurfaceCondition::Damp) if candidate.takes_damp() => {
            findings.push(find(FindingCode::SlotDamp, Statement::new("cure-slot-damp")));
        }
        None if job.condition.spell_at(start).is_none() => {
            let message = Statement::new("cure-surface-condition-assumed");
            findings.push(with_slot_condition(find(FindingCode::SurfaceConditionAssumed, message)));
        }
        _ => {}
    }
    let is_taken_for_dry =
        job.condition.seen.is_none_or(SurfaceCondition::is_dry) && job.condition.spell_at(start).is_none();
    if let Some(index) = recent_rain(&job.weather, start).filter(|_| is_taken_for_dry) {
        let until = job.weather.date_time(job.weather.hours[index].until).format_for_sentence();
        let message = Statement::new("cure-rained-before").text("rained_until", until);
        let about = weather_pointer(index, "precipitation_probability_percent");
        findings.push(Finding::at(FindingCode::RainedBefore, Level::Warning, about, message));
    }
    findings
}

/// What is to be said of rain that does not stop the work, from the start until it no longer matters.
pub fn rain_findings(job: &ResolvedCureGuidance, candidate: &SealantCandidate, span: &SealingSpan) -> Vec<Finding> {
    let weather = &job.weather;
    let until = span.safe_or_end(job);
    let mut findings = Vec::new();
    let mut add = |hour: &WeatherHour, code, message: Statement| {
        let field = "precipitation_probability_percent";
        let finding = Finding::at(code, Level::Warning, weather_pointer(hour.index, field), message);
        findings.push(match hour.rain_percent {
            Some(percent) => finding.figure("probability", percent, "percent"),
            None if code == FindingCode::RainUnknown => with_row_field(finding, hour.index, field),
            None => finding,
        });
    };
    let with_time =
        |id: Statement, hour: &WeatherHour| id.text("time", weather.date_time(hour.from).format_for_sentence());
    if let Some(hour) = weather.hours_between(span.start, until).find(|hour| {
        // What wets the open slot is a stop.
        hour.is_rain_possible() && (hour.from >= span.sealed || !hour.is_wetting())
    }) {
        let message = with_outlook(with_time(Statement::new("cure-rain-possible"), hour), hour, weather.system);
        add(hour, FindingCode::RainPossible, message);
    }
    if let Some(latest) = span.safe.latest {
        let soon = weather.hours_between(latest, latest + rain_margin()).find(|hour| hour.is_rain_likely());
        if let Some(hour) = soon.filter(|hour| hour.from >= latest) {
            let safe_at = weather.date_time(latest).round_to_minute().format_for_sentence();
            let message = with_outlook(with_time(Statement::new("cure-rain-after-safe"), hour), hour, weather.system)
                .phrase("safe_event", candidate.safe_event())
                .text("safe_at", safe_at);
            add(hour, FindingCode::RainAfterSkin, message);
        }
    }
    if let Some(hour) = weather.hours_between(span.start, until).find(|hour| !hour.is_rain_known()) {
        add(hour, FindingCode::RainUnknown, Statement::new("cure-rain-unknown"));
    }
    if span.safe.latest.is_none() && span.sealed <= weather.end() {
        findings.push(weather_too_short(job, candidate));
    }
    findings
}

/// That the weather ends before the last foot is safe.
pub fn weather_too_short(job: &ResolvedCureGuidance, candidate: &SealantCandidate) -> Finding {
    let message = Statement::new("cure-weather-too-short")
        .text("weather_end", job.weather.date_time(job.weather.end()).format_for_sentence())
        .phrase("safe_event", candidate.safe_event());
    let at = FieldPath::BODY.field("weather").pointer();
    with_more_hours(Finding::at(FindingCode::ForecastTooShort, Level::Warning, at, message))
}

/// What is to be said of cold that comes within a day, once a skin may be counted on: it slows the cure and does not forbid the start.
pub fn cold_finding(
    job: &ResolvedCureGuidance,
    candidate: &SealantCandidate,
    span: &SealingSpan,
    stops: &[WorkStop],
) -> Option<Finding> {
    let is_cold = |stop: &WorkStop| matches!(stop, WorkStop::InHour(HourStop::TooCold | HourStop::ColdBeforeSkin, _));
    if stops.iter().any(is_cold) {
        return None;
    }
    let (weather, system) = (&job.weather, job.weather.system);
    let skin = candidate.skin_expected(span.sealed)?;
    let full = candidate.milestone_times(CureMilestone::FullCure, span.sealed, weather)?;
    let next_day = span.sealed + Time::new::<day>(1.0);
    let until = full.latest.map_or(next_day, |full| full.min(next_day));
    let hour = cold_hours(job, candidate, skin, until).find(|hour| hour.from >= skin)?;
    let is_sure = span.safe.latest.is_some_and(|latest| latest <= hour.from);
    let message = Statement::new("cure-cold-after-skin")
        .text("time", weather.date_time(hour.from).format_for_sentence())
        .temperature("air", hour.air, system)
        .code("skin", if is_sure { "formed" } else { "forming" });
    let finding = Finding::at(FindingCode::ColdAfterSkin, Level::Warning, weather_pointer(hour.index, "air"), message);
    Some(finding.figure("air", hour.air.get::<degree_celsius>(), "celsius"))
}

/// What is to be said of a slab that does not stop the work: that nobody measured it, or that it is frozen and dry.
pub fn slab_findings(job: &ResolvedCureGuidance, span: &SealingSpan, stops: &[WorkStop]) -> Vec<Finding> {
    let (weather, system) = (&job.weather, job.weather.system);
    let find = |hour: &WeatherHour, code, message: Statement| {
        let finding = Finding::at(code, Level::Warning, weather_pointer(hour.index, "surface"), message);
        finding.figure("surface", hour.surface.get::<degree_celsius>(), "celsius")
    };
    let mut findings = Vec::new();
    let hour = weather.hour_at(span.start);
    let is_unknown = |stop: &WorkStop| matches!(stop, WorkStop::InHour(HourStop::SlabUnknown, _));
    if hour.surface_is_assumed && !stops.iter().any(is_unknown) {
        let message = if hour.surface_is_known {
            Statement::new("cure-surface-measured-before")
        } else if hour.from < slab_memory() {
            Statement::new("cure-surface-assumed-by-few-hours")
                .text("weather_begin", weather.begin.format_for_sentence())
        } else {
            Statement::new("cure-surface-assumed")
        };
        let finding = find(hour, FindingCode::SurfaceAssumed, message.temperature("surface", hour.surface, system));
        findings.push(with_row_field(finding, hour.index, "surface"));
    }
    let is_cold = |stop: &WorkStop| {
        matches!(stop, WorkStop::InHour(HourStop::Frost | HourStop::TooCold | HourStop::NearDewPoint, _))
    };
    let mut during = weather.hours_between(span.start, span.sealed).filter(|_| !stops.iter().any(is_cold));
    if let Some(hour) = during.find(|hour| hour.is_frozen()) {
        let message = with_surface(Statement::new("cure-frozen-dry-slab"), hour, system);
        findings.push(find(hour, FindingCode::FrozenDrySlab, message));
    }
    findings
}

/// What heat does to a sealant that cures: it sets too fast, or it skins over before it has let its gas go.
pub fn heat_finding(
    job: &ResolvedCureGuidance,
    candidate: &SealantCandidate,
    start: Time,
    windows: &[StartWindow],
) -> Option<Finding> {
    let workable = |hour: &&WeatherHour| candidate.workable_time(hour).map(|(_, [least, _])| least);
    let is_short = |hour: &&WeatherHour| workable(hour).is_some_and(|least| least < job.work.cartridge);
    let mut during = job.weather.hours_between(start, start + job.work.duration);
    let hour = during.find(is_short).unwrap_or_else(|| job.weather.hour_at(start));
    let warmest = if hour.air > hour.surface { hour.air } else { hour.surface };
    let find = |code, message: Statement| {
        let message = message.temperature("warmest", warmest, job.weather.system);
        let finding = Finding::at(code, Level::Warning, weather_pointer(hour.index, "air"), message);
        Some(finding.figure("warmest", warmest.get::<degree_celsius>(), "celsius"))
    };
    let (limit, [least, most]) = candidate.workable_time(hour)?;
    let is_too_short = is_short(&hour);
    let is_hot = warmest >= hot_handling();
    match candidate.kind.cure_mechanism() {
        CureMechanism::MoistureFront(_) if is_hot && candidate.sheet.maximum.is_none() => {
            let sheet_at = FieldPath::BODY.field("sealant");
            let sheet_at = sheet_at.field("data_sheet");
            return find(FindingCode::HotSlab, Statement::new("cure-hot-slab"))
                .map(|finding| finding.send(&sheet_at.field("maximum_application_temperature")));
        }
        CureMechanism::Reaction(_) if is_hot => {}
        CureMechanism::MoistureFront(_) | CureMechanism::Reaction(_) | CureMechanism::Cooling(_) if is_too_short => {}
        CureMechanism::MoistureFront(_) | CureMechanism::Reaction(_) | CureMechanism::Cooling(_) => return None,
    }
    // The reader sees no band where both ends read the same, and no time of nothing.
    let [least, most] = [least, most].map(|time| time.max(Time::new::<minute>(1.0)));
    let is_one = format_duration(least) == format_duration(most);
    let message =
        if is_too_short { Statement::new("cure-sets-before-emptied") } else { Statement::new("cure-short-pot-life") };
    let message = message
        .code(
            "limit",
            match limit {
                WorkableLimit::PotLife => "pot_life",
                WorkableLimit::Set => "set",
            },
        )
        .code("band", if is_one { "one" } else { "range" })
        .duration("least", least)
        .duration("most", most);
    if !is_too_short {
        return find(FindingCode::ShortPotLife, message);
    }
    let message = message.duration("cartridge", job.work.cartridge).followed_by(cooler_hours(job, candidate, windows));
    find(FindingCode::ShortPotLife, message)
}

/// The hours in which the sealant sets slowly enough.
fn cooler_hours(job: &ResolvedCureGuidance, candidate: &SealantCandidate, windows: &[StartWindow]) -> Statement {
    let time = |time: Time| job.weather.date_time(time).format_for_sentence();
    let is_cool = |window: &&StartWindow| is_workable(job, candidate, window.from);
    let cooler = windows.iter().filter(is_cool).take(MAX_COOLER_WINDOWS);
    let cooler: Vec<_> = cooler
        .map(|window| Statement::new("cure-window").text("from", time(window.from)).text("until", time(window.until)))
        .collect();
    let mut later = job.weather.hours_between(job.weather.start, job.weather.end());
    if cooler.is_empty() && later.any(|hour| is_workable(job, candidate, hour.from)) {
        return Statement::new("cure-cooler-hours-stopped");
    }
    if cooler.is_empty() {
        return Statement::new("cure-no-cooler-hours");
    }
    Statement::new("cure-cooler-hours").phrases("windows", cooler, ListJoin::Semicolon)
}

/// That the chosen sealant comes to the end of its shelf life.
pub fn shelf_life_finding(job: &ResolvedCureGuidance) -> Option<Finding> {
    let shelf_life = job.shelf_life.filter(|shelf_life| (0..=SHELF_LIFE_SHORT_DAYS).contains(&shelf_life.days_left))?;
    let message = Statement::new("cure-shelf-life-short")
        .text("ends_on", shelf_life.until.to_string())
        .count("days_left", shelf_life.days_left.unsigned_abs());
    let at = FieldPath::BODY.field("sealant").field("made_on").pointer();
    let finding = Finding::at(FindingCode::ShelfLifeShort, Level::Note, at, message);
    Some(finding.figure("left", 24.0 * shelf_life.days_left as f64, "h"))
}

/// That nothing stands against the work.
pub fn fit_finding(job: &ResolvedCureGuidance, candidate: &SealantCandidate, span: &SealingSpan) -> Finding {
    let (hour, system) = (job.weather.hour_at(span.start), job.weather.system);
    let safe = span.safe.latest.unwrap_or(span.sealed);
    let message = Statement::new("cure-fit-to-apply")
        .temperature("surface", hour.surface, system)
        .temperature_difference("margin", hour.dew_point_margin(), system)
        .phrase("safe_event", candidate.safe_event())
        .text("safe_at", job.weather.date_time(safe).round_to_minute().format_for_sentence());
    Finding::at(FindingCode::FitToApply, Level::Note, FieldPath::BODY.field("start").pointer(), message)
        .figure("margin", hour.dew_point_margin().get::<uom::si::temperature_interval::degree_celsius>(), "celsius")
        .figure("safe_after", (safe - span.start).get::<an_hour>(), "h")
}
