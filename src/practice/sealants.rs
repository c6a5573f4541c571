//! Sealants: the families of public specifications, how each hardens, and the usual figures of each.
//!
//! Every usual figure holds where no data sheet gives its own.

use uom::si::f64::{Length, MolarEnergy, ThermodynamicTemperature, Time};
use uom::si::length::{inch, millimeter};
use uom::si::molar_energy::kilojoule_per_mole;
use uom::si::thermodynamic_temperature::degree_fahrenheit;
use uom::si::time::{day, minute};

use super::cautions::CautionCode;
use super::sources::{Source, sourced_vocabulary};

sourced_vocabulary! {
    /// The family of a loop sealant.
    SealantKind {
        OnePartMoistureCure "one_part_moisture_cure" "One-part, moisture cure" "Comes ready in a cartridge and cures from the surface down, with the moisture of the air: hours to a skin, days to a full cure, longer in the cold and in dry air." [TxDot6340 CommonPractice];
        TwoPartReactive "two_part_reactive" "Two-part, reactive" "Two components that cure by reacting with each other, in minutes when it is warm and without moisture: for traffic that must return the same hour, and for rain that is due." [TxDot6340 CommonPractice];
        HotApplied "hot_applied" "Hot-applied" "Melted in a kettle and poured; it does not cure, it cools. The wire's insulation must stand the pour." [TxDot6340];
    }
}

/// How long unopened sealant keeps: a year. Common practice; CT DOT asks for 12 months, too.
pub const SHELF_LIFE: &str = "365 d";

/// How a sealant hardens, with the usual figures of its kind.
#[derive(Clone, Copy, Debug)]
pub enum CureMechanism {
    /// It cures from the surface down, with the moisture of the air.
    MoistureFront(FrontFigures),
    /// It cures throughout at once, by a reaction of its parts.
    Reaction(ReactionFigures),
    /// It does not cure, it cools: the shortest and the longest time until it carries traffic, in any weather.
    Cooling([Time; 2]),
}

/// The usual figures of a sealant that cures from the surface down, at 23 °C and 50 %.
#[derive(Clone, Copy, Debug)]
pub struct FrontFigures {
    /// Until a skin has surely formed, as a quantity text.
    pub skin_over: &'static str,
    /// The share of a skin-over time, the usual one or that of a sheet, after which a skin forms at the earliest.
    pub earliest_skin: f64,
    /// The depth that `known_times` hold for.
    pub known_depth: Length,
    /// The shortest and the longest time until the front has reached `known_depth`.
    pub known_times: [Time; 2],
    /// The thickness of cured skin that carries traffic.
    pub traffic_skin: Length,
    /// The lowest and the highest activation energy of the cure.
    pub activation_energies: [MolarEnergy; 2],
}

impl FrontFigures {
    /// The cured skin that carries traffic over wires under a cover: at most half of the cover. A choice made here.
    pub fn traffic_skin_below(&self, cover: Length) -> Length {
        self.traffic_skin.min(cover / 2.0)
    }
}

/// The usual figures of a sealant whose parts react with each other; each pair is the shortest and the longest.
#[derive(Clone, Copy, Debug)]
pub struct ReactionFigures {
    /// Until it has set, at 23 °C.
    pub set: [Time; 2],
    /// Until traffic may return, at `temperature`.
    pub open_to_traffic: [Time; 2],
    /// Until it is cured through, at `temperature`.
    pub full_cure: [Time; 2],
    /// The temperature of the two figures above.
    pub temperature: ThermodynamicTemperature,
    /// The lowest and the highest activation energy of the cure.
    pub activation_energies: [MolarEnergy; 2],
}

impl SealantKind {
    /// The usual loop sealant, for requests that name none. Common practice.
    pub const DEFAULT: Self = Self::OnePartMoistureCure;

    /// How it hardens, with its usual figures.
    ///
    /// - One part: a skin in about 3 h in mild weather, and through the practice slot of 1-1/4 in in several days, taken as 3 to 7
    ///   (both common practice; mild is taken as 23 °C and 50 %; *calibrated*, not validated). A skin of 6 mm for traffic is a
    ///   choice made here, and so is the earliest skin at two thirds of its time, for no sheet says by how much its one figure scatters.
    /// - Two parts: set in 10 to 15 minutes in warm weather, taken as 23 °C (common practice); free of tack after 25 minutes and
    ///   fully cured within 60 at 77 °F (CT DOT M.16.12), between which it is taken to carry traffic.
    /// - Hot-applied: cold enough for traffic after 15 to 60 minutes, a choice made here; the test is that nothing tracks.
    ///
    /// The activation energies of urethanes, 45 to 60 kJ/mol, are a choice made here, round what doubles the rate per 10 °C.
    pub fn cure_mechanism(self) -> CureMechanism {
        let minutes = Time::new::<minute>;
        let activation_energies = [45.0, 60.0].map(MolarEnergy::new::<kilojoule_per_mole>);
        match self {
            Self::OnePartMoistureCure => CureMechanism::MoistureFront(FrontFigures {
                skin_over: "3 h",
                earliest_skin: 2.0 / 3.0,
                known_depth: Length::new::<inch>(1.25),
                known_times: [3.0, 7.0].map(Time::new::<day>),
                traffic_skin: Length::new::<millimeter>(6.0),
                activation_energies,
            }),
            Self::TwoPartReactive => CureMechanism::Reaction(ReactionFigures {
                set: [10.0, 15.0].map(minutes),
                open_to_traffic: [25.0, 60.0].map(minutes),
                full_cure: [60.0, 60.0].map(minutes),
                temperature: ThermodynamicTemperature::new::<degree_fahrenheit>(77.0),
                activation_energies,
            }),
            Self::HotApplied => CureMechanism::Cooling([15.0, 60.0].map(minutes)),
        }
    }

    /// The lowest temperature of application, as a quantity text: 40 °F and rising. City of Everett special provisions, for every kind.
    pub fn minimum_temperature(self) -> &'static str {
        match self {
            Self::OnePartMoistureCure | Self::TwoPartReactive | Self::HotApplied => "40 °F",
        }
    }

    /// The temperature that it is poured at, as a quantity text; `None` for what is applied cold. City of Everett special provisions.
    pub fn pour_temperature(self) -> Option<&'static str> {
        match self {
            Self::OnePartMoistureCure | Self::TwoPartReactive => None,
            Self::HotApplied => Some("387 °F"),
        }
    }

    /// Whether it is melted and poured: by volume instead of cartridges, on wire that must stand the heat.
    pub fn is_poured_hot(self) -> bool {
        self.pour_temperature().is_some()
    }

    /// Whether its parts are mixed on site, in small batches or through a nozzle.
    pub fn is_mixed_on_site(self) -> bool {
        match self {
            Self::OnePartMoistureCure | Self::HotApplied => false,
            Self::TwoPartReactive => true,
        }
    }

    /// Whether a damp slot only asks for care. For all other kinds it stops the work, unless the data sheet allows it.
    pub fn tolerates_damp(self) -> bool {
        match self {
            Self::OnePartMoistureCure => true,
            Self::TwoPartReactive | Self::HotApplied => false,
        }
    }

    /// The cautions that apply to it beside those of every sealant.
    pub fn cautions(self) -> &'static [CautionCode] {
        match self {
            Self::OnePartMoistureCure | Self::TwoPartReactive => &[],
            Self::HotApplied => &[CautionCode::HotWork, CautionCode::ClassifiedArea],
        }
    }

    /// What its cure or its cooling rests on.
    pub fn cure_sources(self) -> &'static [Source] {
        match self {
            Self::OnePartMoistureCure => &[Source::Comyn, Source::Arrhenius, Source::CommonPractice],
            Self::TwoPartReactive => &[Source::Arrhenius, Source::CommonPractice, Source::CtDot1612],
            Self::HotApplied => &[Source::EverettHotMelt],
        }
    }
}
