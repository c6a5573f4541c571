//! What the readings mean in themselves: the findings.

use uom::si::thermodynamic_temperature::degree_celsius;

use super::reading::{Meter, Shown, plain};
use super::sound::{Change, Circumstances, Sound};
use crate::calculation::report::{Diagnostics, FieldPath, Finding};
use crate::practice::faults::{INSULATION_BANDS, USUAL_TEST_VOLTAGE_V};
use crate::practice::findings::{FindingCode, Level};

/// Farther than this from 20 °C, a resistance is explained; kelvin. A choice made here: 4 % of the copper's resistance.
const WARM_BY: f64 = 10.0;

/// What only insulation is judged by.
#[derive(Clone, Copy)]
pub struct InsulationTest {
    /// Its voltage, V, when given.
    pub voltage: Option<f64>,
    /// What the unit's sheet asks for, megohm, when given.
    pub asked_megohm: Option<f64>,
}

/// Says whose limits an insulation meets, and what to do.
pub fn judge_insulation(shown: Shown, test: InsulationTest, diagnostics: &mut Diagnostics) {
    let readings = FieldPath::BODY;
    let readings = readings.field("readings");
    let megohm = match shown {
        Shown::Number(megohm) => megohm,
        Shown::OverRange => f64::INFINITY,
    };
    if let Some(band) = INSULATION_BANDS.iter().find(|band| megohm >= band.from_megohm) {
        let level = if band.is_bad { Level::Warning } else { Level::Note };
        let mut message = format!("{} {}.", Meter::Insulation.say(shown), band.meaning);
        if let Some(asked) = test.asked_megohm.filter(|asked| megohm < *asked) {
            message.push_str(&format!(" The unit's sheet asks for {} megohm.", plain(asked)));
        }
        let mut finding =
            Finding::new(FindingCode::InsulationReading, level, &readings.field("insulation_megohm"), message);
        if let Shown::Number(megohm) = shown {
            finding = finding.figure("insulation", megohm, "megohm");
        }
        finding.source_ids = band.sources.to_vec();
        diagnostics.add_finding(finding.figure("band_from", band.from_megohm, "megohm"));
    }
    if let Some(voltage) = test.voltage.filter(|voltage| *voltage < USUAL_TEST_VOLTAGE_V) {
        let message = format!(
            "Insulation was tested at {} V; the agencies' limits hold at {USUAL_TEST_VOLTAGE_V} V, and a leak may hide at \
             less. Repeat it at {USUAL_TEST_VOLTAGE_V} V if the wire and everything still connected bear that.",
            plain(voltage)
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

/// Says how warm or cold wire moves the resistance that is expected.
pub fn judge_temperature(sound: &Sound, now: &Circumstances, diagnostics: &mut Diagnostics) {
    let celsius = now.temperature.get::<degree_celsius>();
    if (celsius - 20.0).abs() <= WARM_BY {
        return;
    }
    let band = sound.resistance(&Change::NOTHING);
    let percent = 0.393 * (celsius - 20.0);
    let message = format!(
        "At {} °C copper has {} % {} resistance than at 20 °C: a sound loop shows {} to {} ohm, and the suspects are judged \
         by that.",
        plain_signed(celsius),
        plain(percent.abs()),
        if percent > 0.0 { "more" } else { "less" },
        plain(band.low),
        plain(band.high)
    );
    let readings = FieldPath::BODY;
    let readings = readings.field("readings");
    diagnostics.add_finding(
        Finding::new(FindingCode::ReadingTemperature, Level::Note, &readings.field("temperature"), message)
            .figure("expected_low", band.low, "ohm")
            .figure("expected_high", band.high, "ohm"),
    );
}

/// Says that no single fault explains all readings.
pub fn judge_contradiction(readings: &[(Meter, Shown)], diagnostics: &mut Diagnostics) {
    let said: Vec<_> = readings.iter().map(|(meter, shown)| meter.say(*shown)).collect();
    let message = format!(
        "No single fault explains these readings together: {}. One of them is wrong, or there are two faults. Measure each \
         again with the leads checked, before you act on the suspects.",
        said.join("; ")
    );
    let body = FieldPath::BODY;
    diagnostics.add_finding(Finding::new(
        FindingCode::ContradictoryReadings,
        Level::Warning,
        &body.field("readings"),
        message,
    ));
}

fn plain_signed(number: f64) -> String {
    if number < 0.0 { format!("-{}", plain(-number)) } else { plain(number) }
}
