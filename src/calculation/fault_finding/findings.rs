//! What the readings and the substitution mean in themselves: the findings.

use uom::si::thermodynamic_temperature::degree_celsius;

use super::meters::{MeterKind, MeterReading, format_plain};
use super::request::Substitution;
use super::resolve::ReadingConditions;
use super::sound_loop::{LoopChange, SoundLoopModel};
use crate::calculation::report::{Diagnostics, FieldPath, Finding};
use crate::practice::detectors::Limits;
use crate::practice::faults::{INSULATION_BANDS, USUAL_TEST_VOLTAGE_V};
use crate::practice::finding_codes::{FindingCode, Level};

/// Farther than this from 20 °C, the effect on the resistance is explained; kelvin. A choice made here: 4 % of the copper's
/// resistance.
const MAX_UNEXPLAINED_WARMING: f64 = 10.0;

/// What insulation is judged by, beside the reading.
#[derive(Clone, Copy)]
pub struct InsulationTest {
    /// Its voltage, V, when given.
    pub voltage: Option<f64>,
    /// What the unit's sheet asks for, megohm, when given.
    pub asked_megohm: Option<f64>,
}

/// States whose limits an insulation reading meets, and what to do.
pub fn judge_insulation(reading: MeterReading, test: InsulationTest, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let readings = body.field("readings");
    let megohm = match reading {
        MeterReading::Number(megohm) => megohm,
        MeterReading::OverRange => f64::INFINITY,
    };
    if let Some(band) = INSULATION_BANDS.iter().find(|band| megohm >= band.from_megohm) {
        let level = if band.is_bad { Level::Warning } else { Level::Note };
        let mut message = format!("{} {}.", MeterKind::Insulation.format_reading(reading), band.meaning);
        if let Some(asked) = test.asked_megohm.filter(|asked| megohm < *asked) {
            message.push_str(&format!(" The unit's sheet asks for {} megohm.", format_plain(asked)));
        }
        let mut finding =
            Finding::new(FindingCode::InsulationReading, level, &readings.field("insulation_megohm"), message);
        if let MeterReading::Number(megohm) = reading {
            finding = finding.figure("insulation", megohm, "megohm");
        }
        finding.source_ids = band.sources.to_vec();
        diagnostics.add_finding(finding.figure("band_from", band.from_megohm, "megohm"));
    }
    if let Some(voltage) = test.voltage.filter(|voltage| *voltage < USUAL_TEST_VOLTAGE_V) {
        let message = format!(
            "Insulation was tested at {} V; the agencies' limits hold at {USUAL_TEST_VOLTAGE_V} V, and a leak may hide at \
             less. Repeat it at {USUAL_TEST_VOLTAGE_V} V if the wire and everything still connected bear that.",
            format_plain(voltage)
        );
        diagnostics.add_finding(
            Finding::new(FindingCode::TestVoltage, Level::Note, &readings.field("test_voltage_v"), message).figure(
                "test_voltage",
                voltage,
                "V",
            ),
        );
    }
}

/// States how far the temperature of the wire moves the resistance that is expected.
pub fn judge_temperature(sound: &SoundLoopModel, conditions: &ReadingConditions, diagnostics: &mut Diagnostics) {
    let celsius = conditions.temperature.get::<degree_celsius>();
    if (celsius - 20.0).abs() <= MAX_UNEXPLAINED_WARMING {
        return;
    }
    let band = sound.resistance(&LoopChange::NOTHING);
    let percent = 0.393 * (celsius - 20.0);
    let message = format!(
        "At {} °C copper has {} % {} resistance than at 20 °C: a sound loop shows {} to {} ohm, and the suspects are judged \
         by that.",
        format_signed(celsius),
        format_plain(percent.abs()),
        if percent > 0.0 { "more" } else { "less" },
        format_plain(band.low),
        format_plain(band.high)
    );
    let body = FieldPath::BODY;
    let readings = body.field("readings");
    diagnostics.add_finding(
        Finding::new(FindingCode::ReadingTemperature, Level::Note, &readings.field("temperature"), message)
            .figure("expected_low", band.low, "ohm")
            .figure("expected_high", band.high, "ohm"),
    );
}

/// States that no single fault explains all readings.
pub fn judge_contradiction(readings: &[(MeterKind, MeterReading)], diagnostics: &mut Diagnostics) {
    let formatted: Vec<_> = readings.iter().map(|(meter, reading)| meter.format_reading(*reading)).collect();
    let message = format!(
        "No single fault explains these readings together: {}. One of them is wrong, or there are two faults. Measure each \
         again with the leads checked, before you act on the suspects.",
        formatted.join("; ")
    );
    let body = FieldPath::BODY;
    diagnostics.add_finding(Finding::new(
        FindingCode::ContradictoryReadings,
        Level::Warning,
        &body.field("readings"),
        message,
    ));
}

/// States what the substitution shows, or that it shows nothing.
pub fn judge_substitution(substitution: &Substitution, limits: &Limits, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let at = body.field("substitution");
    let Limits { inductance_min_uh: least, inductance_max_uh: most, .. } = *limits;
    if substitution.is_void(limits) {
        let message = format!(
            "The known inductor has {} µH and the unit tunes {least} to {most} µH: whether it runs says nothing. Repeat \
             the test with an inductor from the middle of that range.",
            substitution.inductance_uh
        );
        diagnostics.add_finding(
            Finding::new(FindingCode::SubstitutionVoid, Level::Warning, &at.field("inductance_uh"), message)
                .figure("inductance", substitution.inductance_uh, "uH")
                .figure("inductance_min", least, "uH")
                .figure("inductance_max", most, "uH"),
        );
        return;
    }
    let (within, beyond) = substitution.connected_at.in_circuit_and_replaced();
    let message = match (substitution.unit_runs, substitution.simulated_vehicle_switches) {
        (false, _) => format!("On a known inductor the unit does not run: the fault is in {within}, not in the loop."),
        (true, Some(false)) => {
            "On a known inductor the unit runs but does not switch: look at the unit, its sensitivity \
             and its output first."
                .to_owned()
        }
        (true, _) => format!("On a known inductor the unit runs: {within} will do, and the fault is in {beyond}."),
    };
    diagnostics.add_finding(Finding::new(FindingCode::SubstitutionResult, Level::Note, &at, message));
}

fn format_signed(number: f64) -> String {
    if number < 0.0 { format!("-{}", format_plain(-number)) } else { format_plain(number) }
}
