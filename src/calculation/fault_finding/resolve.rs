//! From the request to typed quantities and readings; reports every error of it at once.

use uom::si::f64::{Frequency, ThermodynamicTemperature};
use uom::si::frequency::kilohertz;

use super::meters::{MeterKind, MeterReading};
use super::request::{CommissioningRecord, FaultFindingRequest, FaultReadings, LoopDesign, Substitution};
use crate::calculation::input::{Detector, ResolvedDetector, ResolvedLeadIn, ResolvedLoop};
use crate::calculation::loop_characteristics::USUAL_FREQUENCY_KHZ;
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::practice::fault_tests::FaultTest;
use crate::practice::faults::{Observation, ReadingPlace, SubstitutionPoint};
use crate::practice::sources::Source;
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// A design in typed quantities.
pub struct ResolvedLoopDesign {
    /// The loop.
    pub coil: ResolvedLoop,
    /// The lead-in.
    pub lead_in: ResolvedLeadIn,
}

/// How the meters were used.
#[derive(Clone, Copy)]
pub struct ReadingConditions {
    /// Frequency of inductance and quality factor.
    pub frequency: Frequency,
    /// Temperature of the wire.
    pub temperature: ThermodynamicTemperature,
    /// Where they were connected.
    pub place: ReadingPlace,
}

/// A request in typed quantities.
pub struct ResolvedFaultFinding {
    /// The design, when given.
    pub design: Option<ResolvedLoopDesign>,
    /// The unit.
    pub detector: ResolvedDetector,
    /// How the meters were used.
    pub conditions: ReadingConditions,
    /// What they show.
    pub readings: Vec<(MeterKind, MeterReading)>,
    /// What was noticed.
    pub observations: Vec<Observation>,
}

impl ResolvedFaultFinding {
    /// Resolves the request; `None` when it has an error.
    pub fn resolve(request: &FaultFindingRequest, diagnostics: &mut Diagnostics) -> Option<Self> {
        let body = FieldPath::BODY;
        let design = request
            .design
            .as_ref()
            .map(|design| ResolvedLoopDesign::resolve(design, &body.field("design"), diagnostics));
        check_expected(request, diagnostics);
        let detector = Detector::resolve(request.detector.as_ref(), &body.field("detector"), diagnostics);
        let observations = request.observations.clone().unwrap_or_default();
        for (index, observation) in observations.iter().enumerate() {
            if observations[..index].contains(observation) {
                diagnostics.add_error(
                    &body.field("observations").item(index),
                    FieldErrorCode::Contradiction,
                    Statement::new("errors-observation-twice").code("observation", observation.code()),
                    Statement::new("errors-observation-twice-hint"),
                );
            }
        }
        if let Some(done) = &request.substitution
            && done.simulated_vehicle_switches.is_some()
            && !done.unit_runs
        {
            diagnostics.add_error(
                &body.field("substitution").field("simulated_vehicle_switches"),
                FieldErrorCode::Contradiction,
                Statement::new("errors-simulated-vehicle"),
                Statement::new("errors-simulated-vehicle-hint"),
            );
        }

        let readings_at = body.field("readings");
        let usual = FaultReadings::default();
        let sent = request.readings.as_ref().unwrap_or(&usual);
        let tank_nf = request.detector.as_ref().and_then(|detector| detector.tuning_capacitance_nf);
        let readings = resolve_readings(sent, &readings_at, tank_nf, diagnostics);
        let conditions = ReadingConditions::resolve(sent, &readings_at, diagnostics);
        let runs_on_tank = sent.inductance_by_tank(tank_nf).is_some();
        if let Some(detector) = &request.detector {
            mark_unneeded(detector, &readings, runs_on_tank, diagnostics);
        }
        if readings.is_empty() && observations.is_empty() && request.substitution.is_none() {
            diagnostics.add_error(
                &readings_at,
                FieldErrorCode::FieldMissing,
                Statement::new("errors-nothing-observed"),
                Statement::new("errors-nothing-observed-hint"),
            );
        }
        let design = match design {
            Some(design) => Some(design?),
            None => None,
        };
        Some(Self { design, detector: detector?, conditions: conditions?, readings, observations })
    }

    /// Whether a meter was read.
    pub fn has_reading(&self, meter: MeterKind) -> bool {
        self.readings.iter().any(|(other, _)| *other == meter)
    }

    /// The tests that were not done yet; `substitution` is one that is not void.
    pub fn open_tests(&self, substitution: Option<&Substitution>) -> Vec<FaultTest> {
        let was_read_at = |meter, place| self.has_reading(meter) && self.conditions.place == place;
        let was_connected_at = |point| substitution.is_some_and(|done| done.connected_at == point);
        let is_done = |test: FaultTest| match test {
            FaultTest::Insulation => self.has_reading(MeterKind::Insulation),
            FaultTest::Resistance => was_read_at(MeterKind::Resistance, ReadingPlace::DetectorEnd),
            FaultTest::ResistanceAtLoop => was_read_at(MeterKind::Resistance, ReadingPlace::LoopEnd),
            FaultTest::Inductance => was_read_at(MeterKind::Inductance, ReadingPlace::DetectorEnd),
            FaultTest::InductanceAtLoop => was_read_at(MeterKind::Inductance, ReadingPlace::LoopEnd),
            FaultTest::SubstituteAtUnit => was_connected_at(SubstitutionPoint::UnitTerminals),
            FaultTest::SubstituteAtHarness => was_connected_at(SubstitutionPoint::HarnessEnd),
            FaultTest::SubstituteAtLeadIn => was_connected_at(SubstitutionPoint::LeadInEnd),
            FaultTest::SplitAtSplice
            | FaultTest::NeighboursOff
            | FaultTest::LoadAndWiggle
            | FaultTest::LookForSteel => false,
        };
        FaultTest::ALL.iter().copied().filter(|test| !is_done(*test)).collect()
    }
}

/// A sound loop must be known by its design or by its record.
fn check_expected(request: &FaultFindingRequest, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    if request.design.is_none() && request.expected.is_none() {
        for field in ["design", "expected"] {
            diagnostics.add_error(
                &body.field(field),
                FieldErrorCode::FieldMissing,
                Statement::new("errors-nothing-expected"),
                Statement::new("errors-nothing-expected-hint"),
            );
        }
    }
    if request.expected.as_ref().is_some_and(CommissioningRecord::is_empty) {
        diagnostics.add_error(
            &body.field("expected"),
            FieldErrorCode::FieldMissing,
            Statement::new("errors-empty-record"),
            Statement::new("errors-empty-record-hint"),
        );
    }
}

/// Lists the fields of the unit that this request has no use for.
fn mark_unneeded(
    detector: &Detector,
    readings: &[(MeterKind, MeterReading)],
    runs_on_tank: bool,
    diagnostics: &mut Diagnostics,
) {
    let body = FieldPath::BODY;
    let at = body.field("detector");
    let reads_insulation = readings.iter().any(|(meter, _)| *meter == MeterKind::Insulation);
    let [frequency_min, frequency_max, tank, insulation] = detector.parts_sent();
    let fields = [
        (frequency_min, false),
        (frequency_max, false),
        (tank, runs_on_tank),
        (insulation, reads_insulation),
        (("threshold_percent", detector.threshold_percent.is_some()), false),
        (("threshold_steps_percent", detector.threshold_steps_percent.is_some()), false),
    ];
    let unneeded: Vec<_> = fields.into_iter().filter(|(_, is_needed)| !is_needed).map(|(field, _)| field).collect();
    diagnostics.mark_unneeded(&at, &unneeded);
}

impl ResolvedLoopDesign {
    fn resolve(design: &LoopDesign, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<Self> {
        let (loop_at, lead_in_at) = (at.field("loop"), at.field("lead_in"));
        let coil = design.r#loop.resolve(&loop_at, diagnostics);
        let lead_in = design.lead_in.resolve(&lead_in_at, diagnostics);
        diagnostics.mark_unneeded(&loop_at, &[("cover", design.r#loop.cover.is_some())]);
        diagnostics.mark_unneeded(&lead_in_at, &design.lead_in.parts_sent());
        Some(Self { coil: coil?, lead_in: lead_in? })
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
        Some(Self { frequency: Frequency::new::<kilohertz>(frequency), temperature: temperature?, place })
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
    if sent.test_voltage_v.is_some() && !readings.iter().any(|(meter, _)| *meter == MeterKind::Insulation) {
        diagnostics.add_error(
            &at.field("test_voltage_v"),
            FieldErrorCode::Contradiction,
            Statement::new("errors-test-voltage-alone"),
            Statement::new("errors-test-voltage-alone-hint"),
        );
    }
    readings
}
