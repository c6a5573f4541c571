//! The laws of cure, and what a milestone needs by them.

use uom::si::f64::{Length, MolarEnergy, Pressure, ThermodynamicTemperature, Time};
use uom::si::length::meter;
use uom::si::molar_energy::joule_per_mole;
use uom::si::pressure::pascal;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};
use uom::si::time::second;

use super::sheet::Sheet;
use super::sky::{Hour, Sky};
use crate::physics::kinetics::{Accumulated, arrhenius, front_amount};
use crate::physics::psychrometrics::vapour_pressure;

/// What sets the rate of a cure, against 23 °C and 50 %.
#[derive(Clone, Copy, Debug)]
pub enum Law {
    /// The pressure of water vapour alone.
    Vapour,
    /// The pressure of water vapour, and the temperature.
    VapourAndArrhenius(MolarEnergy),
    /// The same, but that heat above a temperature is not counted on: the front waits for the water that seeps through the skin. A
    /// choice made here, after Comyn, so that nobody drives on a skin that heat alone is said to have cured.
    VapourAndCold(MolarEnergy, ThermodynamicTemperature),
    /// The temperature alone.
    Arrhenius(MolarEnergy),
}

impl Law {
    /// How many times faster the cure runs than in the reference climate.
    pub fn rate(self, temperature: ThermodynamicTemperature, vapour: Pressure) -> f64 {
        let reference = Sheet::default();
        let celsius = reference.at_temperature.get::<degree_celsius>();
        let by_vapour = vapour.get::<pascal>() / vapour_pressure(celsius, reference.at_humidity_percent / 100.0);
        let by = |energy: MolarEnergy, temperature: ThermodynamicTemperature| {
            arrhenius(
                energy.get::<joule_per_mole>(),
                temperature.get::<kelvin>(),
                reference.at_temperature.get::<kelvin>(),
            )
        };
        match self {
            Self::Vapour => by_vapour,
            Self::VapourAndArrhenius(energy) => by_vapour * by(energy, temperature),
            Self::VapourAndCold(energy, most) => {
                by_vapour * by(energy, if temperature < most { temperature } else { most })
            }
            Self::Arrhenius(energy) => by(energy, temperature),
        }
    }

    /// The rate in a laboratory.
    fn rate_at(self, temperature: ThermodynamicTemperature, humidity_percent: f64) -> f64 {
        let pascals = vapour_pressure(temperature.get::<degree_celsius>(), humidity_percent / 100.0);
        self.rate(temperature, Pressure::new::<pascal>(pascals))
    }

    /// What a sky offers by this law, summed from its first hour.
    pub fn sum(self, sky: &Sky) -> Accumulated {
        let step = |hour: &Hour| (hour.until.get::<second>(), self.rate(hour.sealant(), hour.vapour));
        Accumulated::new(sky.hours.iter().map(step))
    }
}

/// What a milestone needs, in time of the reference climate: by each of two laws the least and the most.
#[derive(Clone, Copy, Debug)]
pub struct Need {
    /// At least.
    pub least: [Time; 2],
    /// At most.
    pub most: [Time; 2],
}

impl Need {
    /// From times in a laboratory.
    pub fn of(times: [Time; 2], laws: &[Law; 2], temperature: ThermodynamicTemperature, humidity_percent: f64) -> Self {
        let rates = laws.map(|law| law.rate_at(temperature, humidity_percent));
        Self { least: rates.map(|rate| rate * times[0]), most: rates.map(|rate| rate * times[1]) }
    }

    fn each(self, other: Self, pick: fn(Time, Time) -> Time) -> Self {
        let both = |a: [Time; 2], b: [Time; 2]| [pick(a[0], b[0]), pick(a[1], b[1])];
        Self { least: both(self.least, other.least), most: both(self.most, other.most) }
    }

    /// The lesser of two, part by part.
    pub fn at_most(self, other: Self) -> Self {
        self.each(other, Time::min)
    }

    /// The greater of two, part by part.
    pub fn at_least(self, other: Self) -> Self {
        self.each(other, Time::max)
    }

    /// The least and the most by either law.
    pub fn span(self) -> [Time; 2] {
        [self.least[0].min(self.least[1]), self.most[0].max(self.most[1])]
    }

    /// What a front needs for another depth.
    pub fn deeper(self, known: Length, depth: Length) -> Self {
        let amount = |known_amount: Time| {
            let amount = front_amount(known.get::<meter>(), known_amount.get::<second>(), depth.get::<meter>());
            Time::new::<second>(amount)
        };
        Self { least: self.least.map(amount), most: self.most.map(amount) }
    }
}
