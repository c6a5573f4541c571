//! What the slot is like: as it was seen, or as rain has left it.

use uom::si::f64::Time;
use uom::si::time::hour as an_hour;

use super::weather_series::WeatherSeries;
use crate::practice::sealing::{SurfaceCondition, drying_per_hour, rain_memory, wet_memory};

/// A time in which rain or snow leaves an open slot wet.
#[derive(Clone, Copy, Debug)]
pub struct WetSpell {
    /// When the rain began.
    from: Time,
    /// The index of the last hour of rain.
    pub last_rain: usize,
    /// When the slot has dried; `None` where it does not within the weather.
    pub dry: Option<Time>,
}

/// The state of the slot over the weather.
#[derive(Clone, Debug)]
pub struct SlotCondition {
    /// What was seen at the start; `None` where nobody said. It holds for every start until somebody looks again.
    pub seen: Option<SurfaceCondition>,
    spells: Vec<WetSpell>,
}

impl SlotCondition {
    /// The slot as it was seen, and the rain since; without a word of it, all the rain of the weather.
    pub fn new(seen: Option<SurfaceCondition>, weather: &WeatherSeries) -> Self {
        let since = if seen.is_some() { weather.start } else { Time::default() };
        Self { seen, spells: wet_spells(weather, since) }
    }

    /// What is taken for the state at the start: as seen, else wet where rain has left it so, else the usual.
    pub fn at_start(&self, weather: &WeatherSeries) -> SurfaceCondition {
        let by_rain = self.spell_at(weather.start).map(|_| SurfaceCondition::Wet);
        self.seen.or(by_rain).unwrap_or(SurfaceCondition::DEFAULT)
    }

    /// The spell that leaves the slot wet at a time.
    pub fn spell_at(&self, time: Time) -> Option<&WetSpell> {
        self.spells.iter().find(|spell| spell.from <= time && spell.dry.is_none_or(|dry| time < dry))
    }

    /// The times at which the slot has dried.
    pub fn dry_times(&self) -> impl Iterator<Item = Time> {
        self.spells.iter().filter_map(|spell| spell.dry)
    }
}

/// The index of the last hour of rain or snow within the hours that still ask for care at a time.
pub fn recent_rain(weather: &WeatherSeries, time: Time) -> Option<usize> {
    let recent = weather.hours_between(time - rain_memory(), time).filter(|hour| hour.until <= time);
    recent.filter(|hour| hour.is_wetting()).last().map(|hour| hour.index)
}

/// The spells of the weather from a time on: each begins with rain, and ends where hours that dry have dried the slot, or a day later.
fn wet_spells(weather: &WeatherSeries, since: Time) -> Vec<WetSpell> {
    let mut spells = Vec::new();
    // The spell that is not over, and the share of the drying that is still to come.
    let mut open: Option<(WetSpell, f64)> = None;
    for hour in weather.hours_between(since, weather.end()) {
        if hour.is_wetting() {
            let from = open.map_or(hour.from, |(spell, _)| spell.from);
            open = Some((WetSpell { from, last_rain: hour.index, dry: None }, 1.0));
            continue;
        }
        let Some((spell, left)) = open else { continue };
        let rate = drying_per_hour(hour.air, hour.humidity_percent);
        let dried = rate * (hour.until - hour.from).get::<an_hour>();
        let forgotten = weather.hours[spell.last_rain].until + wet_memory();
        open = if rate > 0.0 && dried >= left {
            spells.push(WetSpell { dry: Some(hour.from + Time::new::<an_hour>(left / rate)), ..spell });
            None
        } else if hour.until >= forgotten {
            spells.push(WetSpell { dry: Some(forgotten), ..spell });
            None
        } else {
            Some((spell, left - dried))
        };
    }
    spells.extend(open.map(|(spell, _)| spell));
    spells
}
