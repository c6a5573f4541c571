//! Whether traffic may return when it is needed.

use uom::si::f64::Time;

use super::candidate::SealantCandidate;
use super::cure_model::MilestoneTimes;
use super::request::ResolvedCureGuidance;
use crate::practice::finding_codes::Level;
use crate::practice::sealing::CureMilestone;

/// When traffic may return, where that need not be in time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LateReturn {
    /// At the earliest and at the latest.
    pub times: MilestoneTimes,
    /// Whether it surely comes too late, and not only perhaps.
    pub is_sure: bool,
    /// Whether the weather ends before traffic is needed.
    pub is_beyond_weather: bool,
}

impl LateReturn {
    /// How much it weighs.
    pub fn level(self) -> Level {
        if self.is_sure { Level::Stop } else { Level::Warning }
    }
}

/// The return of traffic over sealant whose last foot goes in at a time; `None` where it surely is in time, or no time is needed.
pub fn late_return(job: &ResolvedCureGuidance, candidate: &SealantCandidate, sealed: Time) -> Option<LateReturn> {
    let weather = &job.weather;
    let limit = job.needed?.since(weather.begin.at);
    let times = candidate.milestone_times(CureMilestone::OpenToTraffic, sealed, weather)?;
    if times.latest.is_some_and(|latest| latest <= limit) {
        return None;
    }
    let is_beyond_weather = times.latest.is_none() && limit > weather.end();
    let is_in_time = times.earliest.is_some_and(|earliest| earliest <= limit);
    Some(LateReturn { times, is_sure: !is_beyond_weather && !is_in_time, is_beyond_weather })
}
