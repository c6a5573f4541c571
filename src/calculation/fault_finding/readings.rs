//! What meters show and how they were used, in typed quantities.

use uom::si::f64::{Frequency, ThermodynamicTemperature};
use uom::si::frequency::kilohertz;

use super::meters::{MeterKind, MeterReading};
use super::request::FaultReadings;
use crate::calculation::loop_characteristics::USUAL_FREQUENCY_KHZ;
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::practice::meter_readings::{InsulationState, ReadingPlace};
use crate::practice::sources::Source;
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// How the meters were used.
#[derive(Clone, Copy)]
pub struct ReadingConditions {
    /// Frequency of inductance and quality factor.
    pub frequency: Frequency,
    /// Temperature of the wire.
    pub temperature: ThermodynamicTemperature,
    /// Where they were connected.
    pub place: ReadingPlace,
    /// How wet the ground was when insulation was measured; dry where nobody said so.
    pub ground: InsulationState,
    /// The capacitance of the whole pair, nF, where it is known.
    pub whole_capacitance_nf: Option<f64>,
}

/// Readings in typed quantities.
pub struct ResolvedReadings {
    /// How the meters were used.
    pub conditions: ReadingConditions,
    /// What they show, each meter at most once.
    pub shown: Vec<(MeterKind, MeterReading)>,
}

impl ResolvedReadings {
    /// Reads what was sent; `tank_nf` is the unit's tank, whose frequency gives the inductance.
    pub fn resolve(
        sent: Option<&FaultReadings>,
        at: &FieldPath<'_>,
        tank_nf: Option<f64>,
        diagnostics: &mut Diagnostics,
    ) -> Option<Self> {
        let none = FaultReadings::default();
        let sent = sent.unwrap_or(&none);
        let shown = resolve_readings(sent, at, tank_nf, diagnostics);
        let conditions = ReadingConditions::resolve(sent, at, diagnostics)?;
        Some(Self { conditions, shown })
    }

    /// The reading of a meter.
    pub fn of(&self, meter: MeterKind) -> Option<MeterReading> {
        self.shown.iter().find(|(other, _)| *other == meter).map(|(_, reading)| *reading)
    }

    /// The number that a meter shows.
    pub fn number(&self, meter: MeterKind) -> Option<f64> {
        match self.of(meter)? {
            MeterReading::Number(number) => Some(number),
            MeterReading::OverRange => None,
        }
    }
}

impl ReadingConditions {
    fn resolve(sent: &FaultReadings, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<Self> {
        let frequency = diagnostics.value_or_default(
            &at.field("frequency_khz"),
            sent.frequency_khz,
            (USUAL_FREQUENCY_KHZ, "50"),
            Statement::new("characteristics-usual-frequency"),
            Source::Everett,
        );
        let temperature = diagnostics.parse_or_default(
            &at.field("temperature"),
            sent.temperature.as_ref(),
            "20 °C",
            Statement::new("characteristics-usual-temperature"),
            Source::IacsCopper,
        );
        let place = diagnostics.value_or_default(
            &at.field("taken_at"),
            sent.taken_at,
            (ReadingPlace::DetectorEnd, ReadingPlace::DetectorEnd.code()),
            Statement::new("faults-usual-place"),
            Source::CommonPractice,
        );
        let is_insulation_read = sent.insulation_megohm.is_some() || sent.insulation_over_range == Some(true);
        let ground = if is_insulation_read {
            diagnostics.value_or_default(
                &at.field("insulation_measured"),
                sent.insulation_measured,
                (InsulationState::Dry, InsulationState::Dry.code()),
                Statement::new("faults-usual-ground"),
                Source::OwnChoice,
            )
        } else {
            InsulationState::Dry
        };
        let whole_capacitance_nf = sent.whole_capacitance_nf;
        let frequency = Frequency::new::<kilohertz>(frequency);
        Some(Self { frequency, temperature: temperature?, place, ground, whole_capacitance_nf })
    }
}

/// The readings that were sent, each meter at most once, and the inductance that follows from the unit's frequency.
fn resolve_readings(
    sent: &FaultReadings,
    at: &FieldPath<'_>,
    tank_nf: Option<f64>,
    diagnostics: &mut Diagnostics,
) -> Vec<(MeterKind, MeterReading)> {
    let by_tank = sent.inductance_by_tank(tank_nf);
    if let Some(inductance) = by_tank {
        diagnostics.add_assumption(
            &at.field("inductance_uh"),
            round(inductance, 2).to_string(),
            Statement::new("faults-inductance-by-tank"),
            &[Source::CircuitTheory],
        );
    }
    let meters = [
        (MeterKind::Insulation, "insulation_over_range", sent.insulation_megohm, sent.insulation_over_range),
        (MeterKind::Resistance, "resistance_over_range", sent.resistance_ohm, sent.resistance_over_range),
        (MeterKind::Inductance, "inductance_over_range", sent.inductance_uh.or(by_tank), sent.inductance_over_range),
        (MeterKind::Quality, "quality_factor", sent.quality_factor, None),
        (MeterKind::Capacitance, "capacitance_nf", sent.capacitance_nf, None),
    ];
    let mut readings = Vec::new();
    for (meter, flag, number, over_range) in meters {
        let is_over_range = over_range.unwrap_or(false);
        if number.is_some() && is_over_range {
            diagnostics.add_error(
                &at.field(flag),
                FieldErrorCode::Contradiction,
                Statement::new("errors-number-and-over-range").text("field", meter.field()),
                Statement::new("errors-number-and-over-range-hint"),
            );
        }
        let reading = number.map(MeterReading::Number).or_else(|| is_over_range.then_some(MeterReading::OverRange));
        readings.extend(reading.map(|reading| (meter, reading)));
    }
    let is_insulation_read = readings.iter().any(|(meter, _)| *meter == MeterKind::Insulation);
    if sent.test_voltage_v.is_some() && !is_insulation_read {
        diagnostics.add_error(
            &at.field("test_voltage_v"),
            FieldErrorCode::Contradiction,
            Statement::new("errors-test-voltage-alone"),
            Statement::new("errors-test-voltage-alone-hint"),
        );
    }
    if sent.insulation_measured.is_some() && !is_insulation_read {
        diagnostics.mark_unused(&at.field("insulation_measured"));
    }
    match (sent.capacitance_nf, sent.whole_capacitance_nf) {
        (Some(_), None) => diagnostics.add_error(
            &at.field("whole_capacitance_nf"),
            FieldErrorCode::FieldMissing,
            Statement::new("errors-whole-capacitance"),
            Statement::new("errors-whole-capacitance-hint"),
        ),
        (None, Some(_)) => diagnostics.mark_unused(&at.field("whole_capacitance_nf")),
        _ => {}
    }
    readings
}
