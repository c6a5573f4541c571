//! How a sealant that reacts cures in the weather: two rate laws that bracket it, and what each milestone requires by them.

use uom::si::f64::{Length, MolarEnergy, Pressure, ThermodynamicTemperature, Time};
use uom::si::length::meter;
use uom::si::molar_energy::joule_per_mole;
use uom::si::pressure::pascal;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};
use uom::si::time::{day, second};

use super::data_sheet::{DataSheet, parse_usual, reference_temperature};
use super::weather_series::{WeatherHour, WeatherSeries};
use crate::physics::kinetics::{PiecewiseIntegral, arrhenius, front_amount, front_depth};
use crate::physics::psychrometrics::vapour_pressure;
use crate::practice::sealants::{FrontFigures, ReactionFigures};
use crate::practice::sealing::{CureMilestone, REFERENCE_HUMIDITY_PERCENT};
use crate::quantity::dimension;

/// What sets the rate of a cure, relative to the reference climate.
#[derive(Clone, Copy, Debug)]
pub enum RateLaw {
    /// The pressure of water vapour alone.
    Vapour,
    /// The pressure of water vapour, and the temperature.
    VapourAndArrhenius(MolarEnergy),
    /// The same, but heat above a temperature does not hasten it: the front waits for the water that diffuses through the skin. A
    /// choice made here, after Comyn, so that nobody drives on a skin that by this law heat alone has cured.
    VapourAndCold(MolarEnergy, ThermodynamicTemperature),
    /// The temperature alone.
    Arrhenius(MolarEnergy),
}

impl RateLaw {
    /// How many times faster the cure runs than in the reference climate.
    pub fn rate(self, temperature: ThermodynamicTemperature, vapour: Pressure) -> f64 {
        let reference = reference_temperature();
        let by_vapour = vapour.get::<pascal>()
            / vapour_pressure(reference.get::<degree_celsius>(), REFERENCE_HUMIDITY_PERCENT / 100.0);
        let by_heat = |energy: MolarEnergy, temperature: ThermodynamicTemperature| {
            arrhenius(energy.get::<joule_per_mole>(), temperature.get::<kelvin>(), reference.get::<kelvin>())
        };
        match self {
            Self::Vapour => by_vapour,
            Self::VapourAndArrhenius(energy) => by_vapour * by_heat(energy, temperature),
            Self::VapourAndCold(energy, highest) => {
                by_vapour * by_heat(energy, if temperature < highest { temperature } else { highest })
            }
            Self::Arrhenius(energy) => by_heat(energy, temperature),
        }
    }

    /// The rate in an hour of weather.
    pub fn rate_in(self, hour: &WeatherHour) -> f64 {
        self.rate(hour.sealant_temperature(), hour.vapour)
    }

    /// The rate in a laboratory.
    fn rate_at(self, temperature: ThermodynamicTemperature, humidity_percent: f64) -> f64 {
        let pascals = vapour_pressure(temperature.get::<degree_celsius>(), humidity_percent / 100.0);
        self.rate(temperature, Pressure::new::<pascal>(pascals))
    }

    /// The time of the reference climate that weather is worth by this law, summed from its first hour.
    pub fn integrate(self, weather: &WeatherSeries) -> PiecewiseIntegral {
        PiecewiseIntegral::new(weather.hours.iter().map(|hour| (hour.until.get::<second>(), self.rate_in(hour))))
    }
}

/// What a milestone requires, in time of the reference climate: the least and the most, each by the two laws of a model.
#[derive(Clone, Copy, Debug)]
pub struct CureRequirement {
    least: [Time; 2],
    most: [Time; 2],
}

impl CureRequirement {
    /// From the shortest and the longest time in a laboratory.
    fn new(
        times: [Time; 2],
        laws: &[RateLaw; 2],
        temperature: ThermodynamicTemperature,
        humidity_percent: f64,
    ) -> Self {
        let rates = laws.map(|law| law.rate_at(temperature, humidity_percent));
        Self { least: rates.map(|rate| rate * times[0]), most: rates.map(|rate| rate * times[1]) }
    }

    /// From usual times at a temperature; their humidity is that of the reference climate.
    fn usual(times: [Time; 2], laws: &[RateLaw; 2], temperature: ThermodynamicTemperature) -> Self {
        Self::new(times, laws, temperature, REFERENCE_HUMIDITY_PERCENT)
    }

    /// From a time of a data sheet.
    fn of_sheet(time: Time, laws: &[RateLaw; 2], sheet: &DataSheet) -> Self {
        Self::new([time; 2], laws, sheet.at_temperature, sheet.at_humidity_percent)
    }

    fn combine(self, other: Self, pick: fn(Time, Time) -> Time) -> Self {
        let both = |a: [Time; 2], b: [Time; 2]| [pick(a[0], b[0]), pick(a[1], b[1])];
        Self { least: both(self.least, other.least), most: both(self.most, other.most) }
    }

    /// The lesser of two, part by part.
    fn at_most(self, other: Self) -> Self {
        self.combine(other, Time::min)
    }

    /// The greater of two, part by part.
    fn at_least(self, other: Self) -> Self {
        self.combine(other, Time::max)
    }

    /// The least and the most by either law.
    pub fn bounds(self) -> [Time; 2] {
        [self.least[0].min(self.least[1]), self.most[0].max(self.most[1])]
    }

    /// What a front that requires this for one depth requires for another.
    fn at_depth(self, known: Length, depth: Length) -> Self {
        let amount = |known_amount: Time| {
            let amount = front_amount(known.get::<meter>(), known_amount.get::<second>(), depth.get::<meter>());
            Time::new::<second>(amount)
        };
        Self { least: self.least.map(amount), most: self.most.map(amount) }
    }
}

/// The earliest and the latest time of an event, from the beginning of the weather; `None` beyond its end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MilestoneTimes {
    /// At the earliest.
    pub earliest: Option<Time>,
    /// At the latest.
    pub latest: Option<Time>,
}

/// The cure of a sealant that reacts: two laws that bracket it, and what each milestone requires by both.
#[derive(Clone, Debug)]
pub struct CureModel {
    /// The two laws.
    pub laws: [RateLaw; 2],
    /// The lowest and the highest activation energy that the laws, or one of them, go by.
    pub energies: [MolarEnergy; 2],
    /// The law of vapour pressure slowed by cold: by it go the latest times of a front.
    pub slowed_law: RateLaw,
    integrals: [PiecewiseIntegral; 2],
    skin: CureRequirement,
    traffic: CureRequirement,
    full: CureRequirement,
    front: Option<KnownFront>,
    /// What the end of the pot life requires, and the laws of the pot: sealant that is still soft feels heat in full.
    pot_life: Option<(CureRequirement, [RateLaw; 2])>,
}

/// What a front requires for one depth, from which all other depths follow.
#[derive(Clone, Copy, Debug)]
struct KnownFront {
    depth: Length,
    requirement: CureRequirement,
}

impl CureModel {
    /// The cure of sealant that hardens from the surface down, with the moisture of the air.
    ///
    /// The earliest times go by vapour pressure alone, the latest also by cold at the high activation energy; a data sheet replaces
    /// that energy alone.
    pub fn of_front(figures: &FrontFigures, sheet: &DataSheet, cover: Length, weather: &WeatherSeries) -> Self {
        let [low, high] = figures.activation_energies;
        let energies = sheet.energy.map_or([low, high], |energy| [low.min(energy), energy]);
        let slowed_law = slowed_law(energies[1], sheet);
        let laws = [RateLaw::Vapour, slowed_law];
        let pot_laws = [RateLaw::Vapour, RateLaw::VapourAndArrhenius(energies[1])];
        let of_sheet = |time: Time| CureRequirement::of_sheet(time, &laws, sheet);
        let depth = figures.known_depth;
        let requirement = match (sheet.depth_per_day, sheet.full) {
            (Some(speed), _) => {
                let one_day = Time::new::<day>(1.0);
                of_sheet(one_day).at_depth(speed * one_day, depth)
            }
            (None, Some(full)) if cover > Length::default() => of_sheet(full).at_depth(cover, depth),
            (None, _) => CureRequirement::usual(figures.known_times, &laws, reference_temperature()),
        };
        let skin = parse_usual::<dimension::Time>(figures.skin_over, Time::default());
        let usual = [
            CureRequirement::usual([skin; 2], &laws, reference_temperature()),
            requirement.at_depth(depth, figures.traffic_skin_below(cover)),
            requirement.at_depth(depth, cover),
        ];
        let front = Some(KnownFront { depth, requirement });
        let mut model = Self::new((laws, pot_laws), energies, slowed_law, usual, front, sheet, weather);
        // Traffic still waits for the whole time.
        model.skin.least = model.skin.least.map(|time| figures.earliest_skin * time);
        model
    }

    /// The cure of sealant whose parts react with each other: by temperature alone, between two activation energies, or by that of
    /// its data sheet.
    pub fn of_reaction(figures: &ReactionFigures, sheet: &DataSheet, weather: &WeatherSeries) -> Self {
        let energies = sheet.energy.map_or(figures.activation_energies, |energy| [energy; 2]);
        let laws = energies.map(RateLaw::Arrhenius);
        let usual = [
            CureRequirement::usual(figures.set, &laws, reference_temperature()),
            CureRequirement::usual(figures.open_to_traffic, &laws, figures.temperature),
            CureRequirement::usual(figures.full_cure, &laws, figures.temperature),
        ];
        Self::new((laws, laws), energies, slowed_law(energies[1], sheet), usual, None, sheet, weather)
    }

    fn new(
        (laws, pot_laws): ([RateLaw; 2], [RateLaw; 2]),
        energies: [MolarEnergy; 2],
        slowed_law: RateLaw,
        usual: [CureRequirement; 3],
        front: Option<KnownFront>,
        sheet: &DataSheet,
        weather: &WeatherSeries,
    ) -> Self {
        let of_sheet = |time: Time| CureRequirement::of_sheet(time, &laws, sheet);
        let given = [sheet.skin, sheet.traffic, sheet.full].map(|time| time.map(of_sheet));
        let [skin, traffic, full] = in_order(given, usual);
        let integrals = laws.map(|law| law.integrate(weather));
        let pot_life = sheet.pot_life.map(|time| (CureRequirement::of_sheet(time, &pot_laws, sheet), pot_laws));
        Self { laws, energies, slowed_law, integrals, skin, traffic, full, front, pot_life }
    }

    /// What a milestone requires.
    pub fn requirement(&self, milestone: CureMilestone) -> CureRequirement {
        match milestone {
            CureMilestone::SkinOver | CureMilestone::RainSafe => self.skin,
            CureMilestone::OpenToTraffic => self.traffic,
            CureMilestone::FullCure => self.full,
        }
    }

    /// When a milestone is reached after a start.
    pub fn milestone_times(&self, milestone: CureMilestone, start: Time) -> MilestoneTimes {
        let requirement = self.requirement(milestone);
        let least = self.reached(requirement.least, start);
        let most = self.reached(requirement.most, start);
        let earliest = least.into_iter().flatten().reduce(Time::min);
        let latest = most[0].zip(most[1]).map(|(one, other)| one.max(other));
        MilestoneTimes { earliest, latest }
    }

    /// When a skin may be counted on, though not surely: the whole time by the faster law.
    pub fn skin_expected(&self, sealed: Time) -> Option<Time> {
        self.reached(self.skin.most, sealed).into_iter().flatten().reduce(Time::min)
    }

    /// When each law has offered what is required by it after a start; `None` beyond the weather.
    fn reached(&self, required: [Time; 2], start: Time) -> [Option<Time>; 2] {
        [0, 1].map(|law| {
            let integral: &PiecewiseIntegral = &self.integrals[law];
            let amount = integral.at(start.get::<second>()) + required[law].get::<second>();
            Some(Time::new::<second>(integral.inverse(amount)?).max(start))
        })
    }

    /// How far a milestone has come at a time, as a band from 0 to 1: by the depth of a front, or by the share of the time.
    pub fn progress(&self, milestone: CureMilestone, start: Time, time: Time) -> (f64, f64) {
        let is_by_depth = self.front.is_some() && milestone.is_by_depth();
        let progress = |share: f64| if is_by_depth { share.min(1.0).sqrt() } else { share.min(1.0) };
        let (low, high) = self.shares(self.requirement(milestone), start, time);
        (progress(low), progress(high))
    }

    /// How deep the front has come at a time: least and most; `None` without a front.
    pub fn depth(&self, start: Time, time: Time) -> Option<(Length, Length)> {
        let front = self.front?;
        let (low, high) = self.shares(front.requirement, start, time);
        let depth = |share: f64| Length::new::<meter>(front_depth(front.depth.get::<meter>(), 1.0, share));
        Some((depth(low), depth(high)))
    }

    /// The depth of the front after a day of the reference climate: least and most; `None` without a front.
    pub fn first_day_depth(&self) -> Option<[Length; 2]> {
        let front = self.front?;
        let one_day = Time::new::<day>(1.0).get::<second>();
        let depth = |amount: Time| {
            Length::new::<meter>(front_depth(front.depth.get::<meter>(), amount.get::<second>(), one_day))
        };
        let [fastest, slowest] = front.requirement.bounds();
        Some([depth(slowest), depth(fastest)])
    }

    /// How long it takes in the weather of an hour until a skin has formed or it has set: shortest and longest.
    pub fn skin_time(&self, hour: &WeatherHour) -> [Time; 2] {
        times_at(self.skin, self.laws, hour)
    }

    /// How long it can be worked in the weather of an hour, where its sheet gives that: shortest and longest.
    pub fn pot_life(&self, hour: &WeatherHour) -> Option<[Time; 2]> {
        self.pot_life.map(|(requirement, laws)| times_at(requirement, laws, hour))
    }

    /// What the weather from a start until a time was worth, as a share of what is required: the least and the most.
    fn shares(&self, requirement: CureRequirement, start: Time, time: Time) -> (f64, f64) {
        let offered = [0, 1].map(|law| {
            let integral: &PiecewiseIntegral = &self.integrals[law];
            (integral.at(time.get::<second>()) - integral.at(start.get::<second>())).max(0.0)
        });
        // What requires nothing is reached at once.
        let share = |law: usize, required: Time| {
            if required.get::<second>() > 0.0 { offered[law] / required.get::<second>() } else { 1.0 }
        };
        let low = share(0, requirement.most[0]).min(share(1, requirement.most[1]));
        let high = share(0, requirement.least[0]).max(share(1, requirement.least[1]));
        (low, high)
    }
}

/// Vapour pressure slowed by cold; heat counts up to the temperature of the data sheet, or of a laboratory where that is warmer.
fn slowed_law(energy: MolarEnergy, sheet: &DataSheet) -> RateLaw {
    let (reference, of_sheet) = (reference_temperature(), sheet.at_temperature);
    RateLaw::VapourAndCold(energy, if of_sheet > reference { of_sheet } else { reference })
}

/// What a requirement takes at the constant rates of an hour: shortest and longest.
fn times_at(requirement: CureRequirement, laws: [RateLaw; 2], hour: &WeatherHour) -> [Time; 2] {
    let rates = laws.map(|law| law.rate_in(hour));
    let least = [0, 1].map(|law| requirement.least[law] / rates[law]);
    let most = [0, 1].map(|law| requirement.most[law] / rates[law]);
    [least[0].min(least[1]), most[0].max(most[1])]
}

/// Skin, traffic and full cure in order: usual figures give way to those of the data sheet.
fn in_order(given: [Option<CureRequirement>; 3], usual: [CureRequirement; 3]) -> [CureRequirement; 3] {
    let [given_skin, given_traffic, given_full] = given;
    let before = |requirement: CureRequirement, bounds: &[Option<CureRequirement>]| {
        bounds.iter().flatten().fold(requirement, |requirement, bound| requirement.at_most(*bound))
    };
    let skin = given_skin.unwrap_or_else(|| before(usual[0], &[given_traffic, given_full]));
    let traffic = given_traffic.unwrap_or_else(|| before(usual[1], &[given_full])).at_least(skin);
    let full = given_full.unwrap_or(usual[2]).at_least(traffic);
    [skin, traffic, full]
}
