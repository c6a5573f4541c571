//! A kind of sealant in this slot and weather: how long it takes, and how far it has come.

use uom::si::f64::{Length, Time};

use super::cure_model::{CureModel, MilestoneTimes};
use super::data_sheet::DataSheet;
use super::weather_series::{WeatherHour, WeatherSeries};
use crate::calculation::report::Statement;
use crate::practice::sealants::{CureMechanism, SealantKind};
use crate::practice::sealing::{CureMilestone, SurfaceCondition};
use crate::vocabulary::Vocabulary;

/// How a sealant hardens once it lies in the slot.
#[derive(Clone, Debug)]
pub enum Hardening {
    /// It reacts.
    Cures(Box<CureModel>),
    /// It cools: the shortest and the longest time, in any weather.
    Cools([Time; 2]),
}

/// What ends the time in which sealant can be worked.
#[derive(Clone, Copy, Debug)]
pub enum WorkableLimit {
    /// The pot life of its sheet.
    PotLife,
    /// That it sets, or skins over.
    Set,
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

    /// When the last foot, sealed at a time, reaches a milestone; `None` where this kind has no such milestone.
    pub fn milestone_times(
        &self,
        milestone: CureMilestone,
        sealed: Time,
        weather: &WeatherSeries,
    ) -> Option<MilestoneTimes> {
        match &self.hardening {
            Hardening::Cures(model) => Some(model.milestone_times(milestone, sealed)),
            Hardening::Cools([shortest, longest]) => {
                let within = |time: Time| Some(sealed + time).filter(|time| *time <= weather.end());
                milestone
                    .is_by_cooling()
                    .then(|| MilestoneTimes { earliest: within(*shortest), latest: within(*longest) })
            }
        }
    }

    /// When the last foot, sealed at a time, is safe from rain; what only cools, when it is cold.
    pub fn safe_times(&self, sealed: Time, weather: &WeatherSeries) -> MilestoneTimes {
        let milestone = match self.hardening {
            Hardening::Cures(_) => CureMilestone::RainSafe,
            Hardening::Cools(_) => CureMilestone::OpenToTraffic,
        };
        let beyond = MilestoneTimes { earliest: None, latest: None };
        self.milestone_times(milestone, sealed, weather).unwrap_or(beyond)
    }

    /// When a skin may be counted on, or that it has set, though not surely; `None` for what only cools, and beyond the weather.
    pub fn skin_expected(&self, sealed: Time) -> Option<Time> {
        let Hardening::Cures(model) = &self.hardening else { return None };
        model.skin_expected(sealed)
    }

    /// What has surely happened by the end of [`Self::safe_times`]: a phrase that follows "before".
    pub fn safe_event(&self) -> Statement {
        match self.kind.cure_mechanism() {
            CureMechanism::MoistureFront(_) => Statement::new("cure-event-skinned-over"),
            CureMechanism::Reaction(_) => Statement::new("cure-event-set"),
            CureMechanism::Cooling(_) => Statement::new("cure-event-cold"),
        }
    }

    /// Whether it takes a damp slot, by its kind or by its sheet.
    pub fn takes_damp(&self) -> bool {
        self.sheet.damp_allowed || !SurfaceCondition::Damp.needs_sheet_approval(self.kind)
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
    pub fn pot_life(&self, time: Time, weather: &WeatherSeries) -> Option<[Time; 2]> {
        let Hardening::Cures(model) = &self.hardening else { return None };
        model.pot_life(weather.hour_at(time))
    }

    /// How long it can be worked in an hour of weather: the pot life of the sheet, or until it sets; `None` for what only cools.
    pub fn workable_time(&self, hour: &WeatherHour) -> Option<(WorkableLimit, [Time; 2])> {
        let Hardening::Cures(model) = &self.hardening else { return None };
        let set = || (WorkableLimit::Set, model.skin_time(hour));
        Some(model.pot_life(hour).map_or_else(set, |times| (WorkableLimit::PotLife, times)))
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
