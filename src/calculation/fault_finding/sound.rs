//! What a sound loop shows, and what a change of the loop makes of that.

use uom::si::electrical_resistance::ohm;
use uom::si::f64::{Capacitance, ElectricalResistance, Frequency, ThermodynamicTemperature};
use uom::si::frequency::hertz;
use uom::si::inductance::microhenry;
use uom::si::length::meter;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::reading::{Band, Forecast};
use super::request::CommissioningRecord;
use super::shorted::{self, Shorted};
use crate::calculation::input::{ResolvedLeadIn, ResolvedLoop};
use crate::calculation::loop_characteristics::{Conditions, measure};
use crate::physics::conductor;
use crate::practice::detectors::AS_BUILT_SPREAD;
use crate::practice::faults::ReadingPlace;

/// Turns beyond the design that a wrong count may have.
pub const MAX_TURNS_MORE: u32 = 2;
/// Stranded wire has up to this much more resistance than solid wire of its gauge: NEC tables, from memory, say 2 to 5 %.
const STRANDED: f64 = 1.05;
/// The part of the wire's own quality factor that pavement, steel and neighbouring turns may leave. A choice made here.
const QUALITY_LEFT: f64 = 0.3;
/// How far a commissioning record may lie from a sound loop of today: meters and weather. A choice made here.
const RECORD_SPREAD: f64 = 0.02;
/// Meters of resistance: 2 % and 0.05 ohm for leads and contacts. A choice made here.
const OHM_METER: (f64, f64) = (0.02, 0.05);
/// Meters of inductance: 1 % and 0.3 µH for leads. A choice made here.
const INDUCTANCE_METER: (f64, f64) = (0.01, 0.3);

/// A design in typed quantities.
pub struct Design {
    /// The loop.
    pub coil: ResolvedLoop,
    /// The lead-in.
    pub lead_in: ResolvedLeadIn,
}

/// How the meters were used.
#[derive(Clone, Copy)]
pub struct Circumstances {
    /// Frequency of inductance and quality factor.
    pub frequency: Frequency,
    /// Temperature of the wire.
    pub temperature: ThermodynamicTemperature,
    /// Where they were connected.
    pub place: ReadingPlace,
}

/// The turns of a designed loop.
pub struct Turns {
    /// How many there are.
    pub count: u32,
    /// Inductance over that of the sound coil, by number of turns.
    pub ladder: Vec<f64>,
    /// Each turn closed on itself.
    pub shorted: Vec<Shorted>,
    /// Inductance of the sound coil as computed, henry.
    pub computed: f64,
}

/// What a sound loop shows at the place and temperature of the readings.
pub struct Sound {
    coil_uh: Band,
    coil_ohm: Band,
    quality: Band,
    /// The lead-in as far as it is measured along, µH and ohm.
    pub lead_in: (f64, f64),
    /// The turns, where there is a design.
    pub turns: Option<Turns>,
    /// At the unit's terminals, µH, where design or record gives it.
    pub terminal_uh: Option<f64>,
    /// The greatest quality factor at the terminals, where design or record gives it.
    pub greatest_quality: Option<f64>,
}

/// What a fault changes of a sound loop; ranges as low and high.
#[derive(Clone, Copy)]
pub struct Change {
    /// Factor on the inductance of the coil.
    pub coil_uh: (f64, f64),
    /// Factor on the resistance of the coil.
    pub coil_ohm: (f64, f64),
    /// Factor on inductance and resistance of the lead-in.
    pub lead_in: f64,
    /// Resistance that comes on top, ohm.
    pub added_ohm: (f64, f64),
    /// Loss that only alternating current meets, as a share of the coil's resistance.
    pub added_loss: f64,
    /// Factor on the quality factor for whatever else takes from it.
    pub quality: (f64, f64),
}

impl Change {
    /// Nothing changes.
    pub const NOTHING: Self = Self {
        coil_uh: (1.0, 1.0),
        coil_ohm: (1.0, 1.0),
        lead_in: 1.0,
        added_ohm: (0.0, 0.0),
        added_loss: 0.0,
        quality: (1.0, 1.0),
    };
}

fn of_record(value: f64, errors: (f64, f64)) -> Band {
    Band { low: value, high: value, relative: errors.0.hypot(RECORD_SPREAD), absolute: errors.1 }
}

impl Sound {
    /// A sound loop, from its commissioning record where that has the figure, else from its design, else what loops in
    /// general show.
    pub fn of(design: Option<&Design>, record: Option<&CommissioningRecord>, now: &Circumstances) -> Self {
        let celsius = now.temperature.get::<degree_celsius>();
        let frequency = now.frequency.get::<hertz>();
        let record = |figure: fn(&CommissioningRecord) -> Option<f64>| record.and_then(figure);
        let warmth = conductor::copper_resistivity(celsius) / conductor::copper_resistivity(20.0);
        let recorded_uh = record(|record| record.inductance_uh);
        let recorded_ohm = record(|record| record.resistance_ohm).map(|cold| cold * warmth);

        let figures = design.map(|design| {
            let conditions = Conditions {
                frequency: now.frequency,
                temperature: now.temperature,
                steel_below: None,
                shunt_capacitance: Capacitance::default(),
            };
            measure(&design.coil, &design.lead_in, &conditions)
        });
        let lead_in = design.map_or((0.0, 0.0), |design| {
            let per_metre = conductor::dc_resistance_per_metre(design.lead_in.area_m2(), celsius);
            (design.lead_in.henries() * 1e6, 2.0 * design.lead_in.length.get::<meter>() * per_metre)
        });
        let designed_uh = figures.map(|figures| figures.loop_inductance.get::<microhenry>());
        let designed_ohm = figures.map(|figures| (figures.dc_resistance - ohms(lead_in.1)).get::<ohm>());

        // A record is of loop and lead-in together; the design's lead-in is taken off it, but never more than half.
        let of_coil = |total: f64, lead: f64| total - lead.min(0.5 * total);
        let coil_uh = match (recorded_uh, designed_uh) {
            (Some(total), _) => of_record(of_coil(total, lead_in.0), INDUCTANCE_METER),
            // The as-built band holds nine loops in ten or so, which is a standard deviation of three fifths of it.
            (None, Some(coil)) => Band {
                low: coil,
                high: coil,
                relative: (0.6 * AS_BUILT_SPREAD).hypot(INDUCTANCE_METER.0),
                absolute: INDUCTANCE_METER.1,
            },
            (None, None) => Band { low: 30.0, high: 1000.0, relative: 0.1, absolute: 1.0 },
        };
        let coil_ohm = match (recorded_ohm, designed_ohm) {
            (Some(total), _) => of_record(of_coil(total, lead_in.1), OHM_METER),
            (None, Some(coil)) => {
                Band { low: coil, high: coil * STRANDED, relative: OHM_METER.0, absolute: OHM_METER.1 }
            }
            (None, None) => Band { low: 0.2, high: 5.0, relative: 0.1, absolute: 0.1 },
        };
        let recorded_quality = record(|record| record.quality_factor);
        let bound = figures.map(|figures| figures.quality_factor);
        let quality = match (recorded_quality, bound) {
            (Some(value), _) => Band { low: value, high: value, relative: 0.15, absolute: 0.5 },
            (None, Some(bound)) => Band { low: QUALITY_LEFT * bound, high: bound, relative: 0.1, absolute: 0.5 },
            (None, None) => Band { low: 3.0, high: 60.0, relative: 0.1, absolute: 0.5 },
        };

        let terminal_uh = recorded_uh.or(figures.map(|figures| figures.terminal_inductance.get::<microhenry>()));
        let sound = Self {
            coil_uh,
            coil_ohm,
            quality,
            lead_in,
            turns: design.map(|design| Turns::of(&design.coil, frequency, celsius)),
            terminal_uh,
            greatest_quality: recorded_quality.or(bound),
        };
        match now.place {
            ReadingPlace::DetectorEnd => sound,
            ReadingPlace::LoopEnd => sound.at_the_loop(design.is_some()),
        }
    }

    /// The same without its lead-in; a record alone does not tell how much of it that was.
    fn at_the_loop(self, is_designed: bool) -> Self {
        let half = |band: Band| if is_designed { band } else { band.between(0.5 * band.low, band.high) };
        Self { coil_uh: half(self.coil_uh), coil_ohm: half(self.coil_ohm), lead_in: (0.0, 0.0), ..self }
    }

    /// Inductance with a change, µH.
    pub fn inductance(&self, change: &Change) -> Band {
        let lead_in = change.lead_in * self.lead_in.0;
        let (low, high) = (self.coil_uh.low * change.coil_uh.0, self.coil_uh.high * change.coil_uh.1);
        self.coil_uh.between(low + lead_in, high + lead_in)
    }

    /// Resistance with a change, ohm.
    pub fn resistance(&self, change: &Change) -> Band {
        let lead_in = change.lead_in * self.lead_in.1;
        let end = |coil: f64, factor: f64, added: f64, lead_in: f64| coil * factor + added + lead_in;
        self.coil_ohm.between(
            end(self.coil_ohm.low, change.coil_ohm.0, change.added_ohm.0, lead_in),
            end(self.coil_ohm.high, change.coil_ohm.1, change.added_ohm.1, lead_in * STRANDED),
        )
    }

    /// Quality factor with a change: it follows the inductance, and inversely the loss.
    pub fn quality(&self, change: &Change) -> Band {
        let share = |band: Band, of: Band| band.middle() / of.middle().max(1e-9);
        let inductance = share(self.inductance(change), self.inductance(&Change::NOTHING));
        let sound = self.resistance(&Change::NOTHING);
        let loss = share(self.resistance(change), sound) + change.added_loss * share(self.coil_ohm, sound);
        let factor = inductance / loss.max(1e-3);
        self.quality
            .between(self.quality.low * factor * change.quality.0, self.quality.high * factor * change.quality.1)
    }

    /// Forecasts for the meters of resistance, inductance and quality factor.
    pub fn forecasts(&self, change: &Change) -> [Forecast; 3] {
        [self.resistance(change), self.inductance(change), self.quality(change)].map(Forecast::number)
    }
}

impl Turns {
    fn of(coil: &ResolvedLoop, frequency: f64, celsius: f64) -> Self {
        let winding = coil.winding();
        let skin = conductor::skin_effect(winding.wire_radius, frequency, celsius);
        let ladder = shorted::ladder(&winding, skin.internal_factor, coil.turns + MAX_TURNS_MORE);
        let turn_resistance = winding.turn_length()
            * conductor::dc_resistance_per_metre(coil.wire.area_m2(), celsius)
            * skin.resistance_ratio;
        let computed = ladder[coil.turns as usize];
        Self {
            count: coil.turns,
            shorted: shorted::one_turn(&ladder, coil.turns, turn_resistance, frequency),
            ladder: ladder.into_iter().map(|rung| rung / computed).collect(),
            computed,
        }
    }
}

fn ohms(value: f64) -> ElectricalResistance {
    ElectricalResistance::new::<ohm>(value)
}
