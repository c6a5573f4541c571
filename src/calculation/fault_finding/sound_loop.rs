//! What a sound loop shows, what a change of the loop makes of that, and what a turn that is closed on itself takes.

use std::f64::consts::TAU;

use uom::si::electrical_resistance::ohm;
use uom::si::f64::{Capacitance, ElectricalResistance};
use uom::si::frequency::hertz;
use uom::si::inductance::microhenry;
use uom::si::length::meter;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::meters::{MeterPredictions, Prediction, ReadingBand};
use super::request::CommissioningRecord;
use super::resolve::{ReadingConditions, ResolvedLoopDesign};
use crate::calculation::input::ResolvedLoop;
use crate::calculation::loop_characteristics::{MeasurementConditions, measure};
use crate::physics::conductor;
use crate::physics::winding::Winding;
use crate::practice::detectors::AS_BUILT_SPREAD;
use crate::practice::faults::ReadingPlace;

/// Turns beyond the design that a wrong count may have.
const MAX_EXTRA_TURNS: u32 = 2;
/// Stranded wire has up to this much more resistance than solid wire of its gauge: NEC tables, from memory, say 2 to 5 %.
const MAX_STRANDED_FACTOR: f64 = 1.05;
/// The least share of the wire's own quality factor that pavement, steel and neighbouring turns leave. A choice made here.
const MIN_QUALITY_SHARE: f64 = 0.3;
/// Standard deviation of a commissioning record from the sound loop of today, as a share: meters and weather. A choice made here.
const RECORD_DEVIATION: f64 = 0.02;
/// Standard deviation of resistance meters, relative and in ohm: 2 %, and 0.05 ohm for leads and contacts. A choice made here.
const RESISTANCE_METER_DEVIATION: (f64, f64) = (0.02, 0.05);
/// Standard deviation of inductance meters, relative and in µH: 1 %, and 0.3 µH for leads. A choice made here.
const INDUCTANCE_METER_DEVIATION: (f64, f64) = (0.01, 0.3);

/// Insulation of a sound loop, old ones too, megohm; testers differ in where their range ends.
const TIGHT_INSULATION: Prediction =
    Prediction { band: ReadingBand { low: 50.0, high: 20_000.0, relative: 0.4, absolute: 0.0 }, over_range: 0.4 };

/// The turns of a designed loop.
pub struct DesignedTurns {
    /// How many there are.
    pub count: u32,
    /// Inductance over that of the sound coil, by number of turns.
    pub ladder: Vec<f64>,
    /// Each turn closed on itself.
    pub shorted: Vec<ShortedCoil>,
    /// Inductance of the sound coil as computed, henry.
    pub computed: f64,
}

/// What a sound loop shows at the place and temperature of the readings.
pub struct SoundLoopModel {
    coil_uh: ReadingBand,
    coil_ohm: ReadingBand,
    quality: ReadingBand,
    /// The lead-in as far as the meters measure it with the loop, µH and ohm.
    lead_in: (f64, f64),
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
        let lead_in = design.map_or((0.0, 0.0), |design| {
            let per_metre = conductor::dc_resistance_per_metre(design.lead_in.area_m2(), celsius);
            (design.lead_in.henries() * 1e6, 2.0 * design.lead_in.length.get::<meter>() * per_metre)
        });
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
            (None, None) => ReadingBand { low: 30.0, high: 1000.0, relative: 0.1, absolute: 1.0 },
        };
        let coil_ohm = match (recorded_ohm, designed_ohm) {
            (Some(total), _) => recorded_band(of_coil(total, lead_in.1), RESISTANCE_METER_DEVIATION),
            (None, Some(coil)) => ReadingBand {
                low: coil,
                high: coil * MAX_STRANDED_FACTOR,
                relative: RESISTANCE_METER_DEVIATION.0,
                absolute: RESISTANCE_METER_DEVIATION.1,
            },
            (None, None) => ReadingBand { low: 0.2, high: 5.0, relative: 0.1, absolute: 0.1 },
        };
        let recorded_quality = record(|record| record.quality_factor);
        let bound = figures.map(|figures| figures.quality_factor);
        let quality = match (recorded_quality, bound) {
            (Some(value), _) => ReadingBand { low: value, high: value, relative: 0.15, absolute: 0.5 },
            (None, Some(bound)) => {
                ReadingBand { low: MIN_QUALITY_SHARE * bound, high: bound, relative: 0.1, absolute: 0.5 }
            }
            (None, None) => ReadingBand { low: 3.0, high: 60.0, relative: 0.1, absolute: 0.5 },
        };

        let terminal_uh = recorded_uh.or(figures.map(|figures| figures.terminal_inductance.get::<microhenry>()));
        let sound = Self {
            coil_uh,
            coil_ohm,
            quality,
            lead_in,
            turns: design.map(|design| DesignedTurns::new(&design.coil, frequency, celsius)),
            terminal_uh,
            greatest_quality: recorded_quality.or(bound),
        };
        match conditions.place {
            ReadingPlace::DetectorEnd => sound,
            ReadingPlace::LoopEnd => sound.without_lead_in(design.is_some()),
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
        }
    }
}

impl DesignedTurns {
    fn new(coil: &ResolvedLoop, frequency: f64, celsius: f64) -> Self {
        let winding = coil.winding();
        let skin = conductor::skin_effect(winding.wire_radius, frequency, celsius);
        let ladder = inductance_ladder(&winding, skin.internal_factor, coil.turns + MAX_EXTRA_TURNS);
        let turn_resistance = winding.turn_length()
            * conductor::dc_resistance_per_metre(coil.wire.area_m2(), celsius)
            * skin.resistance_ratio;
        let computed = ladder[coil.turns as usize];
        Self {
            count: coil.turns,
            shorted: close_each_turn(&ladder, coil.turns, turn_resistance, frequency),
            ladder: ladder.into_iter().map(|rung| rung / computed).collect(),
            computed,
        }
    }
}

fn ohms(value: f64) -> ElectricalResistance {
    ElectricalResistance::new::<ohm>(value)
}

/// A coil of which some turns are closed on themselves.
#[derive(Clone, Copy, Debug)]
pub struct ShortedCoil {
    /// What is left of the inductance, henry.
    pub inductance: f64,
    /// How many turns are out of the circuit.
    pub turns: u32,
    /// Loss that the closed turns add to the circuit at this frequency, as a multiple of the resistance of one turn.
    pub added_loss: f64,
}

/// Inductances of the first turns of a winding, henry: item n has n turns. Everything else about its turns follows.
fn inductance_ladder(winding: &Winding, internal_factor: f64, max_turns: u32) -> Vec<f64> {
    let rung = |turns| if turns == 0 { 0.0 } else { Winding { turns, ..*winding }.inductance(internal_factor) };
    (0..=max_turns).map(rung).collect()
}

/// The coil with one turn closed, for each turn that it may be.
///
/// With `M` between that turn and the others, `L₁` and `R₁` its own, Lᵣ of the others: L = Lᵣ − ω²M²L₁/(R₁² + ω²L₁²), which at a unit's
/// frequency is Lᵣ − M²/L₁ and far below it no change. M(k) of two turns k apart is half the second difference of the
/// ladder. Source: circuit theory. A quadrupole's turns are taken as if evenly stacked.
///
/// Worked number: 6 × 6 ft, 3 turns of 14 AWG at 0.150 in, 76.97 µH: 16.1 µH with an outer turn closed, 11.1 µH with the
/// middle one.
fn close_each_turn(ladder: &[f64], turns: u32, turn_resistance: f64, frequency: f64) -> Vec<ShortedCoil> {
    let turns = turns as usize;
    let apart = |k: usize| 0.5 * (ladder[k + 1] - 2.0 * ladder[k] + ladder[k - 1]);
    let (own, omega) = (ladder[1], TAU * frequency);
    let closed = |turn: usize| {
        let mutual: f64 = (0..turns).filter(|other| *other != turn).map(|other| apart(other.abs_diff(turn))).sum();
        let rest = ladder[turns] - own - 2.0 * mutual;
        // ω²M²/(R₁² + ω²L₁²): what the closed turn transforms into the circuit.
        let transformed = (omega * mutual).powi(2) / (turn_resistance.powi(2) + (omega * own).powi(2));
        ShortedCoil { inductance: (rest - transformed * own).max(0.0), turns: 1, added_loss: transformed }
    };
    (0..turns).map(closed).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::winding::WindingShape;

    fn test_loop() -> Winding {
        Winding {
            shape: WindingShape::Rectangle,
            along: 1.8288,
            across: 1.8288,
            corner_cut: 0.0,
            turns: 3,
            pitch: 0.15 * 0.0254,
            wire_radius: 0.8139e-3,
        }
    }

    #[test]
    fn a_closed_turn_takes_most_of_three_turns() {
        // By hand from Grover's coaxial rectangles: L₁ 10.524, M(1) 7.903, M(2) 6.892 µH.
        let ladder = inductance_ladder(&test_loop(), 0.25, 3);
        let found: Vec<_> = close_each_turn(&ladder, 3, 0.06, 50e3).iter().map(|coil| coil.inductance * 1e6).collect();
        for (found, expected) in found.iter().zip([16.05, 11.09, 16.05]) {
            assert!((found - expected).abs() < 0.03, "{found} against {expected}");
        }
    }

    #[test]
    fn far_below_its_corner_frequency_a_closed_turn_is_merely_missing() {
        let ladder = inductance_ladder(&test_loop(), 0.25, 3);
        let slow = close_each_turn(&ladder, 3, 0.06, 1.0);
        assert!((slow[0].inductance / ladder[2] - 1.0).abs() < 1e-4);
    }
}
