//! A kind of sealant in this slot and weather: how long it takes, and how far it has come.

use uom::si::f64::{Length, Time};

use super::cure_model::{CureModel, MilestoneTimes};
use super::data_sheet::DataSheet;
use super::weather_series::WeatherSeries;
use crate::calculation::report::Statement;
use crate::practice::sealants::{CureMechanism, SealantKind};
use crate::practice::sealing::CureMilestone;
use crate::vocabulary::Vocabulary;

/// How a sealant hardens once it lies in the slot.
#[derive(Clone, Debug)]
pub enum Hardening {
    /// It reacts.
    Cures(Box<CureModel>),
    /// It cools: the shortest and the longest time, in any weather.
    Cools([Time; 2]),
}

/// A kind of sealant in this slot and weather.
#[derive(Clone, Debug)]
pub struct SealantCandidate {
    /// The kind.
    pub kind: SealantKind,
    /// What its data sheet says.
    pub sheet: DataSheet,
    /// How it hardens.
    pub hardening: Hardening,
    /// The sealant over the top wire.
    pub cover: Length,
}

impl SealantCandidate {
    /// A kind of sealant with its data sheet, or with [`DataSheet::usual`].
    pub fn new(kind: SealantKind, sheet: DataSheet, cover: Length, weather: &WeatherSeries) -> Self {
        let hardening = match kind.cure_mechanism() {
            CureMechanism::MoistureFront(figures) => {
                Hardening::Cures(Box::new(CureModel::of_front(&figures, &sheet, cover, weather)))
            }
            CureMechanism::Reaction(figures) => {
                Hardening::Cures(Box::new(CureModel::of_reaction(&figures, &sheet, weather)))
            }
            CureMechanism::Cooling(usual) => Hardening::Cools(sheet.traffic.map_or(usual, |time| [time; 2])),
        };
        Self { kind, sheet, hardening, cover }
    }

    /// When a milestone is reached after a start; `None` where this kind has no such milestone.
    pub fn milestone_times(
        &self,
        milestone: CureMilestone,
        start: Time,
        weather: &WeatherSeries,
    ) -> Option<MilestoneTimes> {
        match &self.hardening {
            Hardening::Cures(model) => Some(model.milestone_times(milestone, start)),
            Hardening::Cools([shortest, longest]) => {
                let within = |time: Time| Some(start + time).filter(|time| *time <= weather.end());
                milestone
                    .is_by_cooling()
                    .then(|| MilestoneTimes { earliest: within(*shortest), latest: within(*longest) })
            }
        }
    }

    /// The latest time from which rain and cold no longer matter; `None` beyond the end of the weather.
    pub fn safe_time(&self, start: Time, weather: &WeatherSeries) -> Option<Time> {
        let milestone = match self.hardening {
            Hardening::Cures(_) => CureMilestone::RainSafe,
            Hardening::Cools(_) => CureMilestone::OpenToTraffic,
        };
        self.milestone_times(milestone, start, weather)?.latest
    }

    /// What has happened at [`Self::safe_time`]: a phrase that follows "before".
    pub fn safe_event(&self) -> Statement {
        match self.kind.cure_mechanism() {
            CureMechanism::MoistureFront(_) => Statement::new("cure-event-skinned-over"),
            CureMechanism::Reaction(_) => Statement::new("cure-event-set"),
            CureMechanism::Cooling(_) => Statement::new("cure-event-cold"),
        }
    }

    /// How far a milestone has come at a time, as a band from 0 to 1: of a front, its share of the depth; of any other reaction, its
    /// share of the time.
    pub fn progress(&self, milestone: CureMilestone, start: Time, time: Time) -> Option<(f64, f64)> {
        let Hardening::Cures(model) = &self.hardening else { return None };
        Some(model.progress(milestone, start, time))
    }

    /// How deep a front has come at a time, at most to the bottom of the slot; `None` for sealant that does not cure by one.
    pub fn depth(&self, start: Time, time: Time, bottom: Length) -> Option<(Length, Length)> {
        let Hardening::Cures(model) = &self.hardening else { return None };
        let (low, high) = model.depth(start, time)?;
        Some((low.min(bottom), high.min(bottom)))
    }

    /// How long it can be worked at a time, where its sheet gives that: shortest and longest.
    pub fn pot_life(&self, start: Time, weather: &WeatherSeries) -> Option<[Time; 2]> {
        let Hardening::Cures(model) = &self.hardening else { return None };
        model.pot_life(weather.hour_at(start))
    }

    /// How long it takes to set at a time, shortest and longest; `None` for what only cools.
    pub fn set_time(&self, start: Time, weather: &WeatherSeries) -> Option<[Time; 2]> {
        let Hardening::Cures(model) = &self.hardening else { return None };
        Some(model.skin_time(weather.hour_at(start)))
    }

    /// What the milestones take in the reference climate, shortest and longest; cooling takes the same in any weather.
    pub fn reference_times(&self) -> Vec<(CureMilestone, [Time; 2])> {
        let times = |milestone: &CureMilestone| {
            let times = match &self.hardening {
                Hardening::Cools(times) => Some(*times).filter(|_| milestone.is_by_cooling()),
                Hardening::Cures(model) => {
                    milestone.has_reference_time().then(|| model.requirement(*milestone).bounds())
                }
            };
            Some((*milestone, times?))
        };
        CureMilestone::ALL.iter().filter_map(times).collect()
    }

    /// The depth of the front after a day of the reference climate, least and most; `None` for sealant that does not cure by one.
    pub fn first_day_depth(&self) -> Option<[Length; 2]> {
        let Hardening::Cures(model) = &self.hardening else { return None };
        model.first_day_depth()
    }

    /// The cured skin that is taken to carry traffic, where no data sheet says when it may return; `None` for sealant that does not
    /// cure by a front.
    pub fn traffic_skin(&self) -> Option<Length> {
        match self.kind.cure_mechanism() {
            CureMechanism::MoistureFront(figures) if self.sheet.traffic.is_none() => {
                Some(figures.traffic_skin_below(self.cover))
            }
            CureMechanism::MoistureFront(_) | CureMechanism::Reaction(_) | CureMechanism::Cooling(_) => None,
        }
    }
}
