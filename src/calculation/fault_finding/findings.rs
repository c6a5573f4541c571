//! What the readings and the substitution mean in themselves: the findings.

use uom::si::thermodynamic_temperature::degree_celsius;

use super::meters::{MeterKind, MeterReading, plain_decimals};
use super::readings::ReadingConditions;
use super::request::{FaultReadings, Substitution};
use super::resolve::ResolvedFaultFinding;
use super::sound_loop::{LoopChange, SoundLoopModel};
use crate::calculation::input::Detector;
use crate::calculation::report::{Decimals, Diagnostics, FieldPath, Finding, ListJoin, Statement};
use crate::practice::detectors::Limits;
use crate::practice::fault_signs::Observation;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::meter_readings::{INSULATION_BANDS, USUAL_TEST_VOLTAGE_V};

/// Farther than this from 20 °C, the effect on the resistance is explained; kelvin. A choice made here: 4 % of the copper's
/// resistance.
const MAX_UNEXPLAINED_WARMING: f64 = 10.0;

/// An open wire that has this share of the whole pair's capacitance, or more, reaches the splice. A choice made here: meters and like pairs
/// differ by a few percent.
const WHOLE_FROM: f64 = 0.95;
/// The lead-in and a loop on its end have less than this share of the lead-in's capacitance: more is of another cable. A choice made here.
const NOT_OF_THIS_CABLE_FROM: f64 = 2.5;

/// What insulation is judged by, beside the reading.
#[derive(Clone, Copy)]
pub struct InsulationTest {
    /// Its voltage, V, when given.
    pub voltage: Option<f64>,
    /// What the unit's sheet asks for, megohm, when given.
    pub asked_megohm: Option<f64>,
    /// Whether the fault comes with rain, and the ground was dry.
    pub clears_nothing: bool,
}

impl InsulationTest {
    /// What was sent of it.
    pub fn sent(readings: Option<&FaultReadings>, detector: Option<&Detector>) -> Self {
        Self {
            voltage: readings.and_then(|readings| readings.test_voltage_v),
            asked_megohm: detector.and_then(|detector| detector.insulation_min_megohm),
            clears_nothing: false,
        }
    }
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
        let mut message = Statement::new("faults-insulation-reading")
            .phrase("reading", MeterKind::Insulation.state_reading(reading))
            .phrase("meaning", Statement::new("practice-insulation-band").code("insulation_band", band.code));
        if let Some(asked) = test.asked_megohm.filter(|asked| megohm < *asked) {
            message = message.followed_by(Statement::new("faults-insulation-asked").quantity(
                "insulation_min",
                asked,
                plain_decimals(asked),
                "megohm",
            ));
        }
        if test.clears_nothing && !band.is_bad {
            message = message.followed_by(Statement::new("faults-insulation-dry"));
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
        let message = Statement::new("faults-test-voltage")
            .quantity("test_voltage", voltage, plain_decimals(voltage), "V")
            .quantity("usual_test_voltage", USUAL_TEST_VOLTAGE_V, Decimals::All, "V");
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
    let message = Statement::new("faults-reading-temperature")
        .quantity("temperature", celsius, plain_decimals(celsius), "celsius")
        .percent("difference", percent.abs(), plain_decimals(percent))
        .code("direction", if percent > 0.0 { "more" } else { "less" })
        .quantity("expected_low", band.low, plain_decimals(band.low), "ohm")
        .quantity("expected_high", band.high, plain_decimals(band.high), "ohm");
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
    let stated = readings.iter().map(|(meter, reading)| meter.state_reading(*reading)).collect();
    let message = Statement::new("faults-contradictory-readings").phrases("readings", stated, ListJoin::Semicolon);
    let body = FieldPath::BODY;
    diagnostics.add_finding(Finding::new(
        FindingCode::ContradictoryReadings,
        Level::Warning,
        &body.field("readings"),
        message,
    ));
}

/// States that the unit ran on a known inductor with more in the circuit than where it did not.
pub fn judge_substitutions_apart(diagnostics: &mut Diagnostics) {
    let (body, message) = (FieldPath::BODY, Statement::new("faults-contradictory-substitutions"));
    let at = body.field("tests_done");
    diagnostics.add_finding(Finding::new(FindingCode::ContradictoryReadings, Level::Warning, &at, message));
}

/// States what the substitution shows, or that it shows nothing.
pub fn judge_substitution(substitution: &Substitution, limits: &Limits, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let at = body.field("substitution");
    let Limits { inductance_min_uh: least, inductance_max_uh: most, .. } = *limits;
    if substitution.is_void(limits) {
        let message = Statement::new("faults-substitution-void")
            .quantity("inductance", substitution.inductance_uh, Decimals::All, "uH")
            .quantity("inductance_min", least, Decimals::All, "uH")
            .quantity("inductance_max", most, Decimals::All, "uH");
        diagnostics.add_finding(
            Finding::new(FindingCode::SubstitutionVoid, Level::Warning, &at.field("inductance_uh"), message)
                .figure("inductance", substitution.inductance_uh, "uH")
                .figure("inductance_min", least, "uH")
                .figure("inductance_max", most, "uH"),
        );
        return;
    }
    let message = match (substitution.unit_runs, substitution.simulated_vehicle_switches) {
        (false, _) => {
            Statement::new("faults-substitute-does-not-run").member("connected_at", substitution.connected_at)
        }
        (true, Some(false)) => Statement::new("faults-substitute-does-not-switch"),
        (true, _) => Statement::new("faults-substitute-runs").member("connected_at", substitution.connected_at),
    };
    diagnostics.add_finding(Finding::new(FindingCode::SubstitutionResult, Level::Note, &at, message));
}

/// States where the wire is open, by the capacitance that is left of it; nothing while the circuit is not known to be open.
pub fn judge_break(resolved: &ResolvedFaultFinding, diagnostics: &mut Diagnostics) {
    let is_open = resolved.readings.of(MeterKind::Resistance).is_some_and(MeterReading::is_open);
    let (Some(MeterReading::Number(left)), Some(whole), true) =
        (resolved.readings.of(MeterKind::Capacitance), resolved.readings.conditions.whole_capacitance_nf, is_open)
    else {
        return;
    };
    let share = left / whole;
    let message = Statement::new("faults-break-place")
        .quantity("capacitance", left, plain_decimals(left), "nF")
        .quantity("whole_capacitance", whole, plain_decimals(whole), "nF");
    let message = if share >= NOT_OF_THIS_CABLE_FROM {
        message.code("place", "unknown")
    } else if share >= WHOLE_FROM {
        message.code("place", "splice_or_loop")
    } else {
        let message = message.code("place", "lead_in").percent("share", 100.0 * share, 0);
        match resolved.lead_in() {
            Some(pair) => message.followed_by(Statement::new("faults-break-distance").length(
                "distance",
                share * pair.length,
                pair.system,
            )),
            None => message,
        }
    };
    let body = FieldPath::BODY;
    let at = body.field("readings");
    let finding = Finding::new(FindingCode::BreakPlace, Level::Note, &at.field("capacitance_nf"), message);
    diagnostics.add_finding(finding.figure("share_of_pair", 100.0 * share, "percent"));
}

/// Says how a gate that is seen is looked into: with the loops connected.
pub fn judge_gate(observations: &[Observation], diagnostics: &mut Diagnostics) {
    if !observations.contains(&Observation::DetectsTheGate) {
        return;
    }
    let (body, message) = (FieldPath::BODY, Statement::new("faults-gate-seen"));
    let at = body.field("observations");
    diagnostics.add_finding(Finding::new(FindingCode::GateSeen, Level::Warning, &at, message));
}
