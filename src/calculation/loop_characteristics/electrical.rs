//! The electrical model of a loop on its lead-in.

use uom::si::capacitance::farad;
use uom::si::electrical_resistance::ohm;
use uom::si::f64::{Capacitance, ElectricalResistance, Frequency, Inductance, Length, Ratio, ThermodynamicTemperature};
use uom::si::frequency::{hertz, kilohertz};
use uom::si::inductance::henry;
use uom::si::length::meter;
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::degree_celsius;

use crate::calculation::input::{ResolvedLeadIn, ResolvedLoop};
use crate::physics::{circuit, conductor, winding};
use crate::practice::detectors::AS_BUILT_SPREAD;
use crate::practice::sources::Source;

/// The sources of every figure here.
pub const SOURCES: &[Source] = &[
    Source::RosaGrover,
    Source::Grover,
    Source::AstmB258,
    Source::IacsCopper,
    Source::SkinEffect,
    Source::CircuitTheory,
    Source::CommonPractice,
];

/// The frequency at which one agency tests loops, and the middle of what units run at, kHz.
pub const USUAL_FREQUENCY_KHZ: f64 = 50.0;

/// Under what conditions the loop is measured.
#[derive(Clone, Copy, Debug)]
pub struct MeasurementConditions {
    /// Working frequency.
    pub frequency: Frequency,
    /// Temperature of the wire.
    pub temperature: ThermodynamicTemperature,
    /// From the lowest turn down to steel, if any.
    pub steel_below: Option<Length>,
    /// Capacitance across the terminals.
    pub shunt_capacitance: Capacitance,
}

impl MeasurementConditions {
    /// Those of an agency's acceptance test: 50 kHz and 20 °C, no steel below and no capacitance.
    pub fn usual() -> Self {
        Self {
            frequency: Frequency::new::<kilohertz>(USUAL_FREQUENCY_KHZ),
            temperature: ThermodynamicTemperature::new::<degree_celsius>(20.0),
            steel_below: None,
            shunt_capacitance: Capacitance::new::<farad>(0.0),
        }
    }
}

/// What a loop on its lead-in measures, unrounded.
#[derive(Clone, Copy, Debug)]
pub struct ElectricalFigures {
    /// The loop alone, in air.
    pub loop_inductance: Inductance,
    /// The loop alone, if the steel below were a solid sheet.
    pub loop_inductance_over_steel: Inductance,
    /// The lead-in.
    pub lead_in_inductance: Inductance,
    /// At the terminals.
    pub terminal_inductance: Inductance,
    /// Lower end of the as-built band at the terminals.
    pub as_built_low: Inductance,
    /// Upper end of the as-built band at the terminals.
    pub as_built_high: Inductance,
    /// The installer's rule.
    pub quick_rule: Inductance,
    /// To direct current.
    pub dc_resistance: ElectricalResistance,
    /// At the working frequency.
    pub ac_resistance: ElectricalResistance,
    /// Upper bound of the quality factor.
    pub quality_factor: f64,
    /// What the lead-in leaves of a change.
    pub loop_share: Ratio,
    /// Wire in the loop.
    pub wire_length: Length,
    /// Where loop and capacitance resonate; absent without capacitance.
    pub self_resonance: Option<Frequency>,
}

/// Computes what a loop on its lead-in measures.
///
/// Inductance by filament sums with the internal part at the working frequency, resistance by the standards of wire, skin
/// effect by the Bessel solution, the as-built band by [`AS_BUILT_SPREAD`]. Proximity of turns, pavement and steel add loss
/// that is not modelled, so the quality factor is an upper bound.
pub fn measure(coil: &ResolvedLoop, lead_in: &ResolvedLeadIn, conditions: &MeasurementConditions) -> ElectricalFigures {
    let winding = coil.winding();
    let frequency = conditions.frequency.get::<hertz>();
    let celsius = conditions.temperature.get::<degree_celsius>();

    let skin = conductor::skin_effect(winding.wire_radius, frequency, celsius);
    let loop_inductance = winding.inductance(skin.internal_factor);
    let over_steel = conditions
        .steel_below
        .map_or(loop_inductance, |depth| (loop_inductance - winding.mirror_mutual(depth.get::<meter>())).max(0.0));
    let lead_in_inductance = lead_in.henries();
    let terminal = loop_inductance + lead_in_inductance;

    let loop_dc = winding.wire_length() * conductor::dc_resistance_per_metre(coil.wire.area_m2(), celsius);
    let lead_in_dc = lead_in.ohms(celsius);
    let lead_in_radius = (lead_in.area_m2() / std::f64::consts::PI).sqrt();
    let lead_in_skin = conductor::skin_effect(lead_in_radius, frequency, celsius);
    let ac_resistance = loop_dc * skin.resistance_ratio + lead_in_dc * lead_in_skin.resistance_ratio;

    let capacitance = conditions.shunt_capacitance.get::<farad>();
    ElectricalFigures {
        loop_inductance: Inductance::new::<henry>(loop_inductance),
        loop_inductance_over_steel: Inductance::new::<henry>(over_steel),
        lead_in_inductance: Inductance::new::<henry>(lead_in_inductance),
        terminal_inductance: Inductance::new::<henry>(terminal),
        as_built_low: Inductance::new::<henry>((1.0 - AS_BUILT_SPREAD) * (over_steel + lead_in_inductance)),
        as_built_high: Inductance::new::<henry>((1.0 + AS_BUILT_SPREAD) * terminal),
        quick_rule: Inductance::new::<henry>(winding::quick_rule(2.0 * (winding.along + winding.across), coil.turns)),
        dc_resistance: ElectricalResistance::new::<ohm>(loop_dc + lead_in_dc),
        ac_resistance: ElectricalResistance::new::<ohm>(ac_resistance),
        quality_factor: circuit::quality_factor(terminal, frequency, ac_resistance),
        loop_share: Ratio::new::<ratio>(circuit::share(loop_inductance, lead_in_inductance)),
        wire_length: Length::new::<meter>(winding.wire_length()),
        self_resonance: (capacitance > 0.0).then(|| Frequency::new::<hertz>(circuit::resonance(terminal, capacitance))),
    }
}
