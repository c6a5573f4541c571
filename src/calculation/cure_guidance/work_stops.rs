//! What stops the work at a start. Verdict and windows both ask here, so neither allows what the other forbids.

use uom::si::f64::{ThermodynamicTemperature, Time};

use super::candidate::{Hardening, SealantCandidate};
use super::cure_model::MilestoneTimes;
use super::deadline::{LateReturn, late_return};
use super::request::ResolvedCureGuidance;
use super::weather_series::WeatherHour;
use crate::practice::sealing::{
    SurfaceCondition, dew_point_margin, freezing, frost_memory, shift, slab_memory, warm_without_measuring,
};

/// What in an hour of weather stops the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HourStop {
    /// Frost lies on the slab, or may.
    Frost,
    /// Nobody measured a cool slab, and too few hours before it are known.
    SlabUnknown,
    /// Air or slab is too cold.
    TooCold,
    /// Air or slab is too hot.
    TooHot,
    /// The slab is near the dew point.
    NearDewPoint,
    /// Rain or snow before the sealant keeps it out.
    Rain,
    /// The air falls too cold before a skin can have formed.
    ColdBeforeSkin,
    /// The water of the saw freezes.
    SawWaterFreezes,
}

/// What stops the work.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum WorkStop {
    /// An hour of weather, by its index: the first that does.
    InHour(HourStop, usize),
    /// Rain has left the slot wet; the index is that of its last hour.
    WetByRain(usize),
    /// The slot as it was seen cannot be sealed.
    SlotAsSeen(SurfaceCondition),
    /// The weather ends before the last foot is sealed.
    BeyondWeather,
    /// The insulation of the wire does not stand the pour, or nobody said that it does.
    Insulation,
    /// The sealant is too old.
    PastShelfLife,
    /// Traffic cannot return when it is needed.
    OpensLate(LateReturn),
}

/// The work from a start on, with a kind of sealant.
#[derive(Clone, Copy)]
pub struct SealingSpan {
    /// When the first foot is sealed.
    pub start: Time,
    /// When the last foot is sealed.
    pub sealed: Time,
    /// When the last foot is safe from rain; for what only cools, when it is cold.
    pub safe: MilestoneTimes,
}

impl SealingSpan {
    /// The work of a job from a start on.
    pub fn new(job: &ResolvedCureGuidance, candidate: &SealantCandidate, start: Time) -> Self {
        let sealed = start + job.work.duration;
        let safe = candidate.safe_times(sealed, &job.weather);
        Self { start, sealed, safe }
    }

    /// When the last foot is surely safe from rain, or the end of the weather.
    pub fn safe_or_end(&self, job: &ResolvedCureGuidance) -> Time {
        self.safe.latest.unwrap_or_else(|| job.weather.end())
    }
}

/// Every stop at a start, at most one of each kind.
pub fn find_stops(job: &ResolvedCureGuidance, candidate: &SealantCandidate, span: &SealingSpan) -> Vec<WorkStop> {
    let mut stops = Vec::new();
    stops.extend(application_stops(job, candidate, span));
    let weather = &job.weather;
    let wet = weather.hours_between(span.start, span.sealed).find(|hour| hour.is_wetting());
    let rain =
        wet.or_else(|| weather.hours_between(span.sealed, span.safe_or_end(job)).find(|hour| hour.is_rain_likely()));
    stops.extend(rain.map(|hour| WorkStop::InHour(HourStop::Rain, hour.index)));
    let is_cold = stops.iter().any(|stop| matches!(stop, WorkStop::InHour(HourStop::TooCold, _)));
    let skin = candidate.skin_expected(span.sealed).unwrap_or_else(|| weather.end());
    let cold = cold_hours(job, candidate, span.sealed, skin).next().filter(|_| !is_cold);
    stops.extend(cold.map(|hour| WorkStop::InHour(HourStop::ColdBeforeSkin, hour.index)));
    if let Some(sawing) = job.work.sawing {
        let freezes = |hour: &&WeatherHour| hour.is_frozen() || hour.air <= freezing();
        let hour = weather.hours_between(span.start - sawing.min(shift()), span.start).find(freezes);
        stops.extend(hour.map(|hour| WorkStop::InHour(HourStop::SawWaterFreezes, hour.index)));
    }
    if span.sealed > weather.end() {
        stops.push(WorkStop::BeyondWeather);
    }
    stops.extend(slot_stop(job, candidate, span.start));
    if candidate.sheet.pour.is_some_and(|pour| job.rating.is_none_or(|rating| rating < pour)) {
        stops.push(WorkStop::Insulation);
    }
    let is_old =
        |last_foot| job.shelf_life.is_some_and(|shelf_life| weather.date_time(last_foot).date() > shelf_life.until);
    if candidate.kind == job.candidate.kind && is_old(span.sealed) {
        stops.push(WorkStop::PastShelfLife);
    }
    let late = late_return(job, candidate, span.sealed).filter(|late| late.is_sure);
    stops.extend(late.map(WorkStop::OpensLate));
    stops
}

/// Whether the work may begin at a time: nothing stops it, and the last foot is surely safe from rain before the weather ends.
pub fn may_start(job: &ResolvedCureGuidance, candidate: &SealantCandidate, start: Time) -> bool {
    let span = SealingSpan::new(job, candidate, start);
    span.safe.latest.is_some() && find_stops(job, candidate, &span).is_empty()
}

/// The hours of a span in which the air lies below the lowest temperature of application. What only cools does not mind the cold.
pub fn cold_hours<'a>(
    job: &'a ResolvedCureGuidance,
    candidate: &'a SealantCandidate,
    from: Time,
    until: Time,
) -> impl Iterator<Item = &'a WeatherHour> {
    let cold_matters = match candidate.hardening {
        Hardening::Cures(_) => true,
        Hardening::Cools(_) => false,
    };
    let hours = job.weather.hours_between(from, until);
    hours.filter(move |hour| cold_matters && hour.air < candidate.sheet.minimum)
}

/// Whether a frozen slab has frost on it, or may have: it does not where it was measured within the last hours, was called dry, lies clear of the frost
/// point, and nothing has fallen on it.
pub fn may_have_frost(job: &ResolvedCureGuidance, hour: &WeatherHour) -> bool {
    let is_called_dry = job.condition.seen.is_some_and(SurfaceCondition::is_dry);
    let has_fallen = || job.weather.hours_between(hour.from - frost_memory(), hour.until).any(WeatherHour::is_wetting);
    hour.is_frozen() && (!hour.surface_is_known || !is_called_dry || hour.is_near_frost_point() || has_fallen())
}

/// What in air and slab stops the work while sealant goes in.
fn application_stops(
    job: &ResolvedCureGuidance,
    candidate: &SealantCandidate,
    span: &SealingSpan,
) -> impl Iterator<Item = WorkStop> {
    let first = |stop: HourStop, stops: &dyn Fn(&WeatherHour) -> bool| {
        let hour = job.weather.hours_between(span.start, span.sealed).find(|hour| stops(hour));
        hour.map(|hour| WorkStop::InHour(stop, hour.index))
    };
    let sheet = &candidate.sheet;
    let is_over = |hour: &WeatherHour, maximum: ThermodynamicTemperature| hour.surface > maximum || hour.air > maximum;
    let is_unknown = |hour: &WeatherHour| {
        !hour.surface_is_known && hour.from < slab_memory() && hour.surface < warm_without_measuring()
    };
    let frost = first(HourStop::Frost, &|hour| may_have_frost(job, hour));
    let cold = first(HourStop::TooCold, &|hour| hour.surface < sheet.minimum || hour.air < sheet.minimum);
    let stops = [
        frost.or(cold),
        first(HourStop::SlabUnknown, &is_unknown),
        first(HourStop::TooHot, &|hour| sheet.maximum.is_some_and(|maximum| is_over(hour, maximum))),
        first(HourStop::NearDewPoint, &|hour| hour.dew_point_margin() < dew_point_margin()),
    ];
    stops.into_iter().flatten()
}

/// What in the state of the slot stops the work. Rain that still falls is a stop of its own.
fn slot_stop(job: &ResolvedCureGuidance, candidate: &SealantCandidate, start: Time) -> Option<WorkStop> {
    match job.condition.seen {
        None | Some(SurfaceCondition::Dry) => {
            let spell = job.condition.spell_at(start)?;
            (!job.weather.hour_at(start).is_wetting()).then_some(WorkStop::WetByRain(spell.last_rain))
        }
        Some(SurfaceCondition::Damp) if candidate.takes_damp() => None,
        Some(seen @ (SurfaceCondition::Damp | SurfaceCondition::Wet | SurfaceCondition::Frost)) => {
            Some(WorkStop::SlotAsSeen(seen))
        }
    }
}
