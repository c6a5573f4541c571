//! What a sound loop shows, and what a change of the loop makes of that.

use uom::si::electrical_resistance::ohm;
use uom::si::f64::{Capacitance, ElectricalResistance};
use uom::si::frequency::hertz;
use uom::si::inductance::microhenry;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::designed_turns::DesignedTurns;
use super::meters::{MeterPredictions, Prediction, ReadingBand};
use super::readings::ReadingConditions;
use super::request::CommissioningRecord;
use super::resolve::ResolvedLoopDesign;
use super::usual_loops::UsualLoops;
use crate::calculation::loop_characteristics::{MeasurementConditions, measure};
use crate::physics::conductor;
use crate::practice::detectors::AS_BUILT_SPREAD;
use crate::practice::meter_readings::ReadingPlace;

/// Stranded wire has up to this much more resistance than solid wire of its gauge: NEC tables, from memory, say 2 to 5 %.
const MAX_STRANDED_FACTOR: f64 = 1.05;
/// The least share of the wire's own quality factor that pavement, steel and neighbouring turns leave. A choice made here.
const MIN_QUALITY_SHARE: f64 = 0.3;
/// Standard deviation of a commissioning record from the sound loop of today, as a share: meters and weather. A choice made here.
const RECORD_DEVIATION: f64 = 0.02;
/// Standard deviation of resistance meters, relative and in ohm: that of hand meters of 5 %, and 0.05 ohm for leads and contacts. A choice
/// made here.
const RESISTANCE_METER_DEVIATION: (f64, f64) = (0.025, 0.05);
/// Standard deviation of inductance meters, relative and in µH: that of hand meters of 5 %, and 0.3 µH for leads. A choice made here.
const INDUCTANCE_METER_DEVIATION: (f64, f64) = (0.025, 0.3);
/// Standard deviation of capacitance meters and of like pairs, relative and in nF. A choice made here.
const CAPACITANCE_METER_DEVIATION: (f64, f64) = (0.03, 0.02);
/// What a meter of capacitance shows of a closed circuit, nF: nothing sensible.
const CLOSED_CAPACITANCE: Prediction =
    Prediction { band: ReadingBand { low: 0.0, high: 1e4, relative: 0.3, absolute: 0.0 }, over_range: 0.3 };

/// The inductance of loops whose record has none, µH.
const ANY_INDUCTANCE: ReadingBand = ReadingBand { low: 30.0, high: 1000.0, relative: 0.1, absolute: 1.0 };
/// The resistance of loops whose record has none, ohm.
const ANY_RESISTANCE: ReadingBand = ReadingBand { low: 0.2, high: 5.0, relative: 0.1, absolute: 0.1 };
/// The quality factor of loops whose record has none.
const ANY_QUALITY: ReadingBand = ReadingBand { low: 3.0, high: 60.0, relative: 0.1, absolute: 0.5 };

/// Insulation of a sound loop, old ones too, megohm; testers differ in where their range ends.
const TIGHT_INSULATION: Prediction =
    Prediction { band: ReadingBand { low: 50.0, high: 20_000.0, relative: 0.4, absolute: 0.0 }, over_range: 0.4 };

/// What a sound loop shows at the place and temperature of the readings.
pub struct SoundLoopModel {
    coil_uh: ReadingBand,
    coil_ohm: ReadingBand,
    quality: ReadingBand,
    /// The lead-in as far as the meters measure it with the loop, µH and ohm.
    lead_in: (f64, f64),
    /// The capacitance of the whole pair, nF, where it is known.
    whole_nf: Option<f64>,
    /// The turns, where there is a design.
    pub turns: Option<DesignedTurns>,
    /// At the unit's terminals, µH, where design or record gives it.
    pub terminal_uh: Option<f64>,
    /// The greatest quality factor at the terminals, where design or record gives it.
    pub greatest_quality: Option<f64>,
}

/// What a fault changes of a sound loop; ranges as low and high.
#[derive(Clone, Copy)]
pub struct LoopChange {
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
    /// Factor on the quality factor for further losses.
    pub quality: (f64, f64),
}

impl LoopChange {
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

fn recorded_band(value: f64, deviations: (f64, f64)) -> ReadingBand {
    ReadingBand { low: value, high: value, relative: deviations.0.hypot(RECORD_DEVIATION), absolute: deviations.1 }
}

impl SoundLoopModel {
    /// A sound loop, from its commissioning record where that has the figure, else from its design, else what loops in
    /// general show.
    pub fn new(
        design: Option<&ResolvedLoopDesign>,
        record: Option<&CommissioningRecord>,
        usual: Option<&UsualLoops>,
        conditions: &ReadingConditions,
    ) -> Self {
        let celsius = conditions.temperature.get::<degree_celsius>();
        let frequency = conditions.frequency.get::<hertz>();
        let record = |figure: fn(&CommissioningRecord) -> Option<f64>| record.and_then(figure);
        let warmth = conductor::copper_resistivity(celsius) / conductor::copper_resistivity(20.0);
        let recorded_uh = record(|record| record.inductance_uh);
        let recorded_ohm = record(|record| record.resistance_ohm).map(|cold| cold * warmth);

        let figures = design.map(|design| {
            let unloaded = MeasurementConditions {
                frequency: conditions.frequency,
                temperature: conditions.temperature,
                steel_below: None,
                shunt_capacitance: Capacitance::default(),
            };
            measure(&design.coil, &design.lead_in, &unloaded)
        });
        let pair = design.map(|design| &design.lead_in).or(usual.map(|usual| &usual.lead_in));
        let lead_in = pair.map_or((0.0, 0.0), |pair| (pair.henries() * 1e6, pair.ohms(celsius)));
        let usual = usual.map(|usual| usual.bands(frequency, celsius));
        let designed_uh = figures.map(|figures| figures.loop_inductance.get::<microhenry>());
        let designed_ohm = figures.map(|figures| (figures.dc_resistance - ohms(lead_in.1)).get::<ohm>());

        // A record is of loop and lead-in together; the design's lead-in is taken off it, but never more than half.
        let of_coil = |total: f64, lead: f64| total - lead.min(0.5 * total);
        let coil_uh = match (recorded_uh, designed_uh) {
            (Some(total), _) => recorded_band(of_coil(total, lead_in.0), INDUCTANCE_METER_DEVIATION),
            // The as-built band holds nine loops in ten or so, which is a standard deviation of three fifths of it.
            (None, Some(coil)) => ReadingBand {
                low: coil,
                high: coil,
                relative: (0.6 * AS_BUILT_SPREAD).hypot(INDUCTANCE_METER_DEVIATION.0),
                absolute: INDUCTANCE_METER_DEVIATION.1,
            },
            (None, None) => usual.map_or(ANY_INDUCTANCE, |(inductance, _)| inductance),
        };
        let coil_ohm = match (recorded_ohm, designed_ohm) {
            (Some(total), _) => recorded_band(of_coil(total, lead_in.1), RESISTANCE_METER_DEVIATION),
            (None, Some(coil)) => ReadingBand {
                low: coil,
                high: coil * MAX_STRANDED_FACTOR,
                relative: RESISTANCE_METER_DEVIATION.0,
                absolute: RESISTANCE_METER_DEVIATION.1,
            },
            (None, None) => usual.map_or(ANY_RESISTANCE, |(_, resistance)| resistance),
        };
        let recorded_quality = record(|record| record.quality_factor);
        let bound = figures.map(|figures| figures.quality_factor);
        let quality = match (recorded_quality, bound) {
            (Some(value), _) => ReadingBand { low: value, high: value, relative: 0.15, absolute: 0.5 },
            (None, Some(bound)) => {
                ReadingBand { low: MIN_QUALITY_SHARE * bound, high: bound, relative: 0.1, absolute: 0.5 }
            }
            (None, None) => ANY_QUALITY,
        };

        let terminal_uh = recorded_uh.or(figures.map(|figures| figures.terminal_inductance.get::<microhenry>()));
        let sound = Self {
            coil_uh,
            coil_ohm,
            quality,
            lead_in,
            whole_nf: conditions.whole_capacitance_nf,
            turns: design.map(|design| DesignedTurns::new(&design.coil, frequency, celsius)),
            terminal_uh,
            greatest_quality: recorded_quality.or(bound),
        };
        match conditions.place {
            ReadingPlace::DetectorEnd => sound,
            ReadingPlace::LoopEnd => sound.without_lead_in(pair.is_some()),
        }
    }

    /// The same without its lead-in. A record alone does not give the share of the lead-in, so the band is widened to half.
    fn without_lead_in(self, is_designed: bool) -> Self {
        let half = |band: ReadingBand| if is_designed { band } else { band.with_ends(0.5 * band.low, band.high) };
        Self { coil_uh: half(self.coil_uh), coil_ohm: half(self.coil_ohm), lead_in: (0.0, 0.0), ..self }
    }

    /// Inductance with a change, µH.
    pub fn inductance(&self, change: &LoopChange) -> ReadingBand {
        let lead_in = change.lead_in * self.lead_in.0;
        let (low, high) = (self.coil_uh.low * change.coil_uh.0, self.coil_uh.high * change.coil_uh.1);
        self.coil_uh.with_ends(low + lead_in, high + lead_in)
    }

    /// Resistance with a change, ohm.
    pub fn resistance(&self, change: &LoopChange) -> ReadingBand {
        let lead_in = change.lead_in * self.lead_in.1;
        let end = |coil: f64, factor: f64, added: f64, lead_in: f64| coil * factor + added + lead_in;
        self.coil_ohm.with_ends(
            end(self.coil_ohm.low, change.coil_ohm.0, change.added_ohm.0, lead_in),
            end(self.coil_ohm.high, change.coil_ohm.1, change.added_ohm.1, lead_in * MAX_STRANDED_FACTOR),
        )
    }

    /// Quality factor with a change: it follows the inductance, and inversely the loss.
    pub fn quality(&self, change: &LoopChange) -> ReadingBand {
        let share = |band: ReadingBand, of: ReadingBand| band.middle() / of.middle().max(1e-9);
        let inductance = share(self.inductance(change), self.inductance(&LoopChange::NOTHING));
        let sound = self.resistance(&LoopChange::NOTHING);
        let loss = share(self.resistance(change), sound) + change.added_loss * share(self.coil_ohm, sound);
        let factor = inductance / loss.max(1e-3);
        self.quality
            .with_ends(self.quality.low * factor * change.quality.0, self.quality.high * factor * change.quality.1)
    }

    /// What every meter shows with a change that leaves the insulation tight.
    pub fn predictions(&self, change: &LoopChange) -> MeterPredictions {
        MeterPredictions {
            insulation: TIGHT_INSULATION,
            resistance: Prediction::of_number(self.resistance(change)),
            inductance: Prediction::of_number(self.inductance(change)),
            quality: Prediction::of_number(self.quality(change)),
            capacitance: CLOSED_CAPACITANCE,
        }
    }

    /// The capacitance of a pair that is open after a share of its length, low and high: it goes with the length. Source: circuit theory.
    pub fn open_capacitance(&self, share: (f64, f64)) -> Prediction {
        let whole = self.whole_nf.unwrap_or(1.0);
        let (relative, absolute) = CAPACITANCE_METER_DEVIATION;
        Prediction::of_number(ReadingBand { low: share.0 * whole, high: share.1 * whole, relative, absolute })
    }
}

fn ohms(value: f64) -> ElectricalResistance {
    ElectricalResistance::new::<ohm>(value)
}
