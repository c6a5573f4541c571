//! A kind of sealant under a sky: how long it needs, and how far it has come.

use uom::si::f64::{Length, MolarEnergy, ThermodynamicTemperature, Time};
use uom::si::length::meter;
use uom::si::time::{day, second};

use super::law::{Law, Need};
use super::sheet::{Sheet, usual_skin};
use super::sky::Sky;
use crate::physics::kinetics::{Accumulated, front_depth};
use crate::practice::cure::{
    CureMilestone, activation_energies, calibration_depth, calibration_times, cooling_times, traffic_skin,
    two_part_full, two_part_set, two_part_temperature, two_part_traffic,
};
use crate::practice::sealants::SealantKind;

/// A cure: two laws that bracket it, what each milestone needs, and for one part the front.
#[derive(Clone, Debug)]
pub struct Curing {
    /// The two laws.
    pub laws: [Law; 2],
    sums: [Accumulated; 2],
    skin: Need,
    traffic: Need,
    full: Need,
    /// What the front needs for the depth of the calibration; one part only.
    front: Option<Need>,
    /// What the pot life needs, and the laws that shorten it: heat counts in full here, for sealant that is still soft.
    pot_life: Option<(Need, [Law; 2])>,
}

/// What a sealant does once it lies in the slot.
#[derive(Clone, Debug)]
pub enum Behaviour {
    /// It reacts.
    Cures(Box<Curing>),
    /// It cools within these times, whatever the sky.
    Cools([Time; 2]),
}

/// A kind of sealant in this slot under this sky.
#[derive(Clone, Debug)]
pub struct Product {
    /// The kind.
    pub kind: SealantKind,
    /// What its data sheet says.
    pub sheet: Sheet,
    /// What it does.
    pub behaviour: Behaviour,
    cover: Length,
}

/// The earliest and the latest time of something, from the beginning of the sky; `None` beyond its end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// At the earliest.
    pub earliest: Option<Time>,
    /// At the latest.
    pub latest: Option<Time>,
}

impl Product {
    /// The low and the high activation energy. One-part sealant is bracketed by none and the high one, so its sheet replaces that alone.
    pub fn energies(&self) -> [MolarEnergy; 2] {
        Self::bracket(self.kind, &self.sheet)
    }

    fn bracket(kind: SealantKind, sheet: &Sheet) -> [MolarEnergy; 2] {
        let [low, _] = activation_energies();
        match sheet.energy {
            Some(energy) if kind == SealantKind::OnePartMoistureCure => [low.min(energy), energy],
            Some(energy) => [energy; 2],
            None => activation_energies(),
        }
    }

    /// The law of one part that the latest times go by: no faster than its sheet, or a laboratory, shows it by heat.
    pub fn latest_law(&self) -> Law {
        Self::slowed(self.energies()[1], &self.sheet)
    }

    fn slowed(energy: MolarEnergy, sheet: &Sheet) -> Law {
        let (laboratory, sheets) = (Sheet::default().at_temperature, sheet.at_temperature);
        Law::VapourAndCold(energy, if sheets > laboratory { sheets } else { laboratory })
    }

    /// A kind of sealant with its sheet, or with an empty one.
    pub fn new(kind: SealantKind, sheet: Sheet, cover: Length, sky: &Sky) -> Self {
        let behaviour = match kind {
            SealantKind::HotApplied => Behaviour::Cools(sheet.traffic.map_or_else(cooling_times, |time| [time; 2])),
            _ => Behaviour::Cures(Box::new(Curing::new(kind, &sheet, cover, sky))),
        };
        Self { kind, sheet, behaviour, cover }
    }

    /// When a milestone is reached after a start; `None` where this kind has no such milestone.
    pub fn reached(&self, milestone: CureMilestone, start: Time, sky: &Sky) -> Option<Span> {
        match &self.behaviour {
            Behaviour::Cures(curing) => Some(curing.reached(curing.need(milestone), start)),
            Behaviour::Cools([least, most]) => {
                let inside = |time: Time| Some(start + time).filter(|time| *time <= sky.end());
                (milestone == CureMilestone::OpenToTraffic)
                    .then(|| Span { earliest: inside(*least), latest: inside(*most) })
            }
        }
    }

    /// When rain and cold no longer matter: at the latest; `None` beyond the end of the sky.
    pub fn safe(&self, start: Time, sky: &Sky) -> Option<Time> {
        let milestone = match self.behaviour {
            Behaviour::Cures(_) => CureMilestone::RainSafe,
            Behaviour::Cools(_) => CureMilestone::OpenToTraffic,
        };
        self.reached(milestone, start, sky)?.latest
    }

    /// The moment of [`Self::safe`], in words that follow "before".
    pub fn when_safe(&self) -> &'static str {
        match self.kind {
            SealantKind::OnePartMoistureCure => "the sealant has surely skinned over",
            SealantKind::TwoPartReactive => "the sealant has surely set",
            SealantKind::HotApplied => "the sealant is surely cold",
        }
    }

    /// How far a milestone has come at a time, as a band from 0 to 1: of a front, its share of the depth; of any other reaction, its
    /// share of the time.
    pub fn progress(&self, milestone: CureMilestone, start: Time, time: Time) -> Option<(f64, f64)> {
        let Behaviour::Cures(curing) = &self.behaviour else { return None };
        let need = curing.need(milestone);
        let is_front =
            curing.front.is_some() && matches!(milestone, CureMilestone::OpenToTraffic | CureMilestone::FullCure);
        let share = |share: f64| if is_front { share.min(1.0).sqrt() } else { share.min(1.0) };
        let (low, high) = curing.shares(need, start, time);
        Some((share(low), share(high)))
    }

    /// How deep one-part sealant has cured at a time, at most to the bottom of the slot.
    pub fn depth(&self, start: Time, time: Time, bottom: Length) -> Option<(Length, Length)> {
        let Behaviour::Cures(curing) = &self.behaviour else { return None };
        let (low, high) = curing.shares(curing.front?, start, time);
        let depth =
            |share: f64| Length::new::<meter>(front_depth(calibration_depth().get::<meter>(), 1.0, share)).min(bottom);
        Some((depth(low), depth(high)))
    }

    /// How long it can be worked at a time, where its sheet gives that.
    pub fn pot_life(&self, start: Time, sky: &Sky) -> Option<[Time; 2]> {
        let Behaviour::Cures(curing) = &self.behaviour else { return None };
        let (need, laws) = curing.pot_life?;
        let hour = sky.hour(start);
        let times = [0, 1].map(|law| need.least[law] / laws[law].rate(hour.sealant(), hour.vapour));
        Some([times[0].min(times[1]), times[0].max(times[1])])
    }

    /// How long a two-part sealant takes to set at a time.
    pub fn set_time(&self, start: Time, sky: &Sky) -> Option<[Time; 2]> {
        let Behaviour::Cures(curing) = &self.behaviour else { return None };
        let hour = sky.hour(start);
        let rates = curing.laws.map(|law| law.rate(hour.sealant(), hour.vapour));
        let least = [0, 1].map(|law| curing.skin.least[law] / rates[law]);
        let most = [0, 1].map(|law| curing.skin.most[law] / rates[law]);
        Some([least[0].min(least[1]), most[0].max(most[1])])
    }

    /// What the milestones and the first day of the front need in the reference climate, by the first law: least and most.
    pub fn needs(&self) -> Vec<(CureMilestone, [Time; 2])> {
        use CureMilestone::{FullCure, OpenToTraffic, SkinOver};
        match &self.behaviour {
            Behaviour::Cools(times) => vec![(OpenToTraffic, *times)],
            Behaviour::Cures(curing) => [SkinOver, OpenToTraffic, FullCure]
                .map(|milestone| {
                    let need = curing.need(milestone);
                    // Two laws agree in the reference climate, but for a sheet that holds elsewhere.
                    (milestone, need.span())
                })
                .into(),
        }
    }

    /// The depth of the front after a day of the reference climate: least and most.
    pub fn first_day(&self) -> Option<[Length; 2]> {
        let Behaviour::Cures(curing) = &self.behaviour else { return None };
        let front = curing.front?;
        let depth = |amount: Time| {
            let depth = front_depth(
                calibration_depth().get::<meter>(),
                amount.get::<second>(),
                Time::new::<day>(1.0).get::<second>(),
            );
            Length::new::<meter>(depth)
        };
        let [fastest, slowest] = front.span();
        Some([depth(slowest), depth(fastest)])
    }

    /// The cured skin that is taken to carry traffic, where no sheet says when it may return; one part only.
    pub fn traffic_skin(&self) -> Option<Length> {
        let is_by_skin = self.kind == SealantKind::OnePartMoistureCure && self.sheet.traffic.is_none();
        is_by_skin.then(|| traffic_skin().min(self.cover / 2.0))
    }

    /// The sealant over the top wire.
    pub fn cover(&self) -> Length {
        self.cover
    }
}

impl Curing {
    fn new(kind: SealantKind, sheet: &Sheet, cover: Length, sky: &Sky) -> Self {
        let [low, high] = Product::bracket(kind, sheet);
        let is_one_part = kind == SealantKind::OnePartMoistureCure;
        let by_temperature = [Law::Arrhenius(low), Law::Arrhenius(high)];
        let (laws, in_the_pot) = if is_one_part {
            ([Law::Vapour, Product::slowed(high, sheet)], [Law::Vapour, Law::VapourAndArrhenius(high)])
        } else {
            (by_temperature, by_temperature)
        };
        let laboratory = Sheet::default();
        let usual =
            |times: [Time; 2], at: ThermodynamicTemperature| Need::of(times, &laws, at, laboratory.at_humidity_percent);
        let of_sheet = |time: Time| Need::of([time; 2], &laws, sheet.at_temperature, sheet.at_humidity_percent);
        let known = calibration_depth();
        let sheet_full = sheet.full.map(of_sheet);
        let front = is_one_part.then(|| match (sheet.depth_per_day, sheet_full) {
            (Some(speed), _) => of_sheet(Time::new::<day>(1.0)).deeper(speed * Time::new::<day>(1.0), known),
            (None, Some(full)) if cover > Length::default() => full.deeper(cover, known),
            _ => usual(calibration_times(), laboratory.at_temperature),
        });
        let by_front = |depth: Length| front.map(|front| front.deeper(known, depth));
        let skin = sheet.skin.map(of_sheet);
        let traffic = sheet.traffic.map(of_sheet);
        let usual_skin = if is_one_part {
            usual([usual_skin(); 2], laboratory.at_temperature)
        } else {
            usual(two_part_set(), laboratory.at_temperature)
        };
        let usual_traffic = by_front(traffic_skin().min(cover / 2.0))
            .unwrap_or_else(|| usual(two_part_traffic(), two_part_temperature()));
        let usual_full = by_front(cover).unwrap_or_else(|| usual([two_part_full(); 2], two_part_temperature()));
        let (skin, traffic, full) = in_order([skin, traffic, sheet_full], [usual_skin, usual_traffic, usual_full]);
        let sums = laws.map(|law| law.sum(sky));
        let pot_life = sheet.pot_life.map(|time| {
            let need = Need::of([time; 2], &in_the_pot, sheet.at_temperature, sheet.at_humidity_percent);
            (need, in_the_pot)
        });
        Self { laws, sums, skin, traffic, full, front, pot_life }
    }

    fn need(&self, milestone: CureMilestone) -> Need {
        match milestone {
            CureMilestone::SkinOver | CureMilestone::RainSafe => self.skin,
            CureMilestone::OpenToTraffic => self.traffic,
            CureMilestone::FullCure => self.full,
        }
    }

    fn reached(&self, need: Need, start: Time) -> Span {
        let when = |law: usize, need: Time| {
            let sum = &self.sums[law];
            sum.when(sum.at(start.get::<second>()) + need.get::<second>())
                .map(|time| Time::new::<second>(time).max(start))
        };
        let least = [0, 1].map(|law| when(law, need.least[law]));
        let most = [0, 1].map(|law| when(law, need.most[law]));
        let earliest = least.into_iter().flatten().reduce(Time::min);
        let latest = most[0].zip(most[1]).map(|(one, other)| one.max(other));
        Span { earliest, latest }
    }

    /// What was offered from a start until a time, over what is needed: the least and the most.
    fn shares(&self, need: Need, start: Time, time: Time) -> (f64, f64) {
        let offered = [0, 1].map(|law| {
            let sum = &self.sums[law];
            (sum.at(time.get::<second>()) - sum.at(start.get::<second>())).max(0.0)
        });
        // A need of nothing is met at once.
        let share = |law: usize, need: Time| {
            if need.get::<second>() > 0.0 { offered[law] / need.get::<second>() } else { 1.0 }
        };
        let low = share(0, need.most[0]).min(share(1, need.most[1]));
        let high = share(0, need.least[0]).max(share(1, need.least[1]));
        (low, high)
    }
}

/// What the sheet gives stands; what is usual gives way to it, so that skin, traffic and full cure come in order.
fn in_order(given: [Option<Need>; 3], usual: [Need; 3]) -> (Need, Need, Need) {
    let [given_skin, given_traffic, given_full] = given;
    let before =
        |need: Need, bounds: &[Option<Need>]| bounds.iter().flatten().fold(need, |need, bound| need.at_most(*bound));
    let skin = given_skin.unwrap_or_else(|| before(usual[0], &[given_traffic, given_full]));
    let traffic = given_traffic.unwrap_or_else(|| before(usual[1], &[given_full])).at_least(skin);
    let full = given_full.unwrap_or(usual[2]).at_least(traffic);
    (skin, traffic, full)
}
