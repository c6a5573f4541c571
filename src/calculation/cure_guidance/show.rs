//! From what was computed to the parts of the report.

use uom::si::f64::Time;
use uom::si::molar_energy::kilojoule_per_mole;
use uom::si::time::{hour as an_hour, second};

use super::job::Job;
use super::judgement::{Weighed, earliest_start, reasons};
use super::law::Law;
use super::product::{Behaviour, Product};
use super::report::{
    CureAlternative, CureEquivalentHours, CureGuidanceInputs, CureHour, CureMilestoneReached, CureReferenceTime,
    CureSealantEcho, CureSheetEcho, CureShelf, CureTimes, CureWindow,
};
use super::sheet::usual_skin;
use super::stops::passes;
use crate::practice::cure::{CureMilestone, dew_point_margin};
use crate::practice::sealants::SealantKind;
use crate::quantity::output::{DepthPerDayValue, round};
use crate::vocabulary::Vocabulary;

impl Job {
    /// A milestone is to the minute, and never before the start.
    fn write_reached(&self, time: Time) -> String {
        let reached = self.sky.moment(time).to_minute();
        let start = self.sky.moment(self.sky.start);
        if reached.at < start.at { start.write() } else { reached.write() }
    }

    /// The times at which the work might begin, each in an hour of its own, and whether it would pass.
    pub fn chances(&self) -> Vec<(Time, bool)> {
        self.sky.starts().map(|start| (start, passes(&self.product, start, &self.sky))).collect()
    }

    /// The stretches in which the work would pass.
    pub fn windows(&self, chances: &[(Time, bool)]) -> Vec<CureWindow> {
        let mut windows: Vec<(Time, Time)> = Vec::new();
        for (start, _) in chances.iter().filter(|(_, passes)| *passes) {
            let until = self.sky.hour(*start).until;
            match windows.last_mut() {
                Some((_, end)) if *end == *start => *end = until,
                _ => windows.push((*start, until)),
            }
        }
        let write = |time| self.sky.moment(time).write();
        let window = |(start, end)| CureWindow { start: write(start), end: write(end) };
        windows.into_iter().map(window).collect()
    }

    /// Every milestone that this kind has.
    pub fn milestones(&self) -> Vec<CureMilestoneReached> {
        let (product, sky) = (&self.product, &self.sky);
        let (start, end) = (sky.start, sky.end());
        let reached = |milestone: &CureMilestone| {
            let span = product.reached(*milestone, start, sky)?;
            let is_open = span.latest.is_none();
            let progress = product.progress(*milestone, start, end).filter(|_| is_open);
            let is_front = matches!(milestone, CureMilestone::OpenToTraffic | CureMilestone::FullCure);
            let depth = product.depth(start, end, self.slot.depth).filter(|_| is_open && is_front);
            Some(CureMilestoneReached {
                milestone: milestone.code(),
                earliest: span.earliest.map(|time| self.write_reached(time)),
                latest: span.latest.map(|time| self.write_reached(time)),
                progress_low_percent: progress.map(|(low, _)| percent(low)),
                progress_high_percent: progress.map(|(_, high)| percent(high)),
                depth_low: depth.map(|(low, _)| low.into()),
                depth_high: depth.map(|(_, high)| high.into()),
            })
        };
        CureMilestone::ALL.iter().filter_map(reached).collect()
    }

    /// The hours from the start on.
    pub fn hourly(&self, chances: &[(Time, bool)]) -> Vec<CureHour> {
        let (product, sky) = (&self.product, &self.sky);
        let of = |(row, (_, can_apply)): (&super::sky::Hour, &(Time, bool))| {
            let rates = match &product.behaviour {
                Behaviour::Cures(curing) => Some(curing.laws.map(|law| law.rate(row.sealant(), row.vapour))),
                Behaviour::Cools(_) => None,
            };
            let progress = product.progress(CureMilestone::FullCure, sky.start, row.until);
            CureHour {
                time: sky.moment(row.from).write(),
                air: row.air.into(),
                surface: row.surface.into(),
                surface_is_assumed: row.surface_is_assumed,
                dew_point: row.dew_point.into(),
                frost_point: row.frost_point.map(Into::into),
                dew_point_margin: row.margin().into(),
                rain: row.rain_said(),
                can_apply: *can_apply,
                rate_low: rates.map(|[one, other]| round(one.min(other), 4)),
                rate_high: rates.map(|[one, other]| round(one.max(other), 4)),
                progress_low_percent: progress.map(|(low, _)| percent(low)),
                progress_high_percent: progress.map(|(_, high)| percent(high)),
            }
        };
        sky.hours.iter().filter(|row| row.until > sky.start).zip(chances).map(of).collect()
    }

    /// What the weather is worth; nothing for what only cools.
    pub fn equivalent_hours(&self) -> Option<CureEquivalentHours> {
        let Behaviour::Cures(_) = self.product.behaviour else { return None };
        let energies = self.product.energies();
        let worth = |law: Law| {
            let (sum, sky) = (law.sum(&self.sky), &self.sky);
            let seconds = sum.at(sky.end().get::<second>()) - sum.at(sky.start.get::<second>());
            round(Time::new::<second>(seconds).get::<an_hour>(), 3)
        };
        Some(CureEquivalentHours {
            vapour_pressure: worth(Law::Vapour),
            arrhenius_low: worth(Law::Arrhenius(energies[0])),
            arrhenius_high: worth(Law::Arrhenius(energies[1])),
            vapour_pressure_and_arrhenius: worth(self.product.latest_law()),
        })
    }

    /// Every kind side by side.
    pub fn alternatives(&self, weighed: &[Weighed]) -> Vec<CureAlternative> {
        let of = |Weighed { product, findings, verdict }: &Weighed| {
            let span = product.reached(CureMilestone::OpenToTraffic, self.sky.start, &self.sky);
            CureAlternative {
                kind: product.kind.code(),
                is_chosen: product.kind == self.product.kind,
                verdict: verdict.code(),
                reasons: reasons(findings),
                open_to_traffic_earliest: span.and_then(|span| span.earliest).map(|time| self.write_reached(time)),
                open_to_traffic_latest: span.and_then(|span| span.latest).map(|time| self.write_reached(time)),
                earliest_start: earliest_start(self, product).map(|time| self.sky.moment(time).write()),
            }
        };
        weighed.iter().map(of).collect()
    }

    /// How long the sealant keeps.
    pub fn show_shelf(&self) -> Option<CureShelf> {
        self.shelf.map(|shelf| CureShelf { ends_on: shelf.until.to_string(), days_left: shelf.days_left })
    }

    /// How long it can be worked.
    pub fn show_pot_life(&self) -> Option<CureTimes> {
        let [least, most] = self.product.pot_life(self.sky.start, &self.sky)?;
        Some(CureTimes { least: least.into(), most: most.into() })
    }

    /// What was understood.
    pub fn echo(&self) -> CureGuidanceInputs {
        let (product, sky) = (&self.product, &self.sky);
        let [low, high] = product.energies();
        let is_hot = product.kind == SealantKind::HotApplied;
        let energy = |energy: uom::si::f64::MolarEnergy| round(energy.get::<kilojoule_per_mole>(), 1);
        let reference = |(milestone, [least, most]): (CureMilestone, [Time; 2])| CureReferenceTime {
            milestone: milestone.code(),
            least: least.into(),
            most: most.into(),
        };
        let day = Time::new::<uom::si::time::day>(1.0);
        let first_day = product.first_day().map(|depths| depths.map(|depth| DepthPerDayValue::from(depth / day)));
        CureGuidanceInputs {
            sealant: CureSealantEcho {
                kind: product.kind.code(),
                minimum_application_temperature: product.sheet.least_temperature().into(),
                maximum_application_temperature: product.sheet.maximum.map(Into::into),
                data_sheet: (!is_hot).then(|| product.echo_sheet()),
                reference_times: product.needs().into_iter().map(reference).collect(),
                depth_per_day_low: first_day.map(|[low, _]| low),
                depth_per_day_high: first_day.map(|[_, high]| high),
                activation_energy_low_kj_per_mol: (product.kind == SealantKind::TwoPartReactive).then(|| energy(low)),
                activation_energy_high_kj_per_mol: (!is_hot).then(|| energy(high)),
                pour_temperature: is_hot.then(|| product.sheet.pour.into()),
            },
            slot: self.slot.echo(),
            insulation_rating: self.rating.map(Into::into),
            start: sky.moment(sky.start).write(),
            least_dew_point_margin: dew_point_margin().into(),
            surface_condition: self.condition.code(),
            needed_open_by: self.needed.map(|needed| needed.write()),
            weather_from: sky.begin.write(),
            weather_until: sky.moment(sky.end()).write(),
        }
    }
}

impl Product {
    fn echo_sheet(&self) -> CureSheetEcho {
        let sheet = &self.sheet;
        let is_one_part = self.kind == SealantKind::OnePartMoistureCure;
        CureSheetEcho {
            skin_over: sheet.skin.or_else(|| is_one_part.then(usual_skin)).map(Into::into),
            open_to_traffic: sheet.traffic.map(Into::into),
            full_cure: sheet.full.map(Into::into),
            depth_per_day: sheet.depth_per_day.filter(|_| is_one_part).map(Into::into),
            pot_life: sheet.pot_life.map(Into::into),
            at_temperature: sheet.at_temperature.into(),
            at_relative_humidity_percent: is_one_part.then(|| round(sheet.at_humidity_percent, 1)),
        }
    }
}

fn percent(share: f64) -> f64 {
    round(100.0 * share, 1)
}
