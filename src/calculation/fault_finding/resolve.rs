//! From the request to typed quantities and readings; reports every error of it at once.

use uom::si::time::minute;

use super::meters::{MeterKind, MeterReading};
use super::readings::{ReadingConditions, ResolvedReadings};
use super::request::{CommissioningRecord, FaultFindingRequest, FaultTestDone, LoopDesign, Substitution};
use super::test_progress::TestProgress;
use super::usual_loops::UsualLoops;
use crate::calculation::input::{Detector, ResolvedDetector, ResolvedLeadIn, ResolvedLoop};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::practice::fault_signs::Observation;
use crate::practice::fault_tests::{Disturbance, FaultTest, FaultTestOutcome};
use crate::practice::meter_readings::{InsulationState, LEAK_BELOW_MEGOHM, ReadingPlace};

/// A design in typed quantities.
pub struct ResolvedLoopDesign {
    /// The loop.
    pub coil: ResolvedLoop,
    /// The lead-in.
    pub lead_in: ResolvedLeadIn,
}

/// A request in typed quantities.
pub struct ResolvedFaultFinding {
    /// The design, when given.
    pub design: Option<ResolvedLoopDesign>,
    /// The loops that it may be, without a design and a record.
    pub usual: Option<UsualLoops>,
    /// The unit.
    pub detector: ResolvedDetector,
    /// What meters show, and how they were used.
    pub readings: ResolvedReadings,
    /// What was noticed.
    pub observations: Vec<Observation>,
    /// Tests that were done and that no reading stands for.
    pub tests_done: Vec<(FaultTest, FaultTestOutcome)>,
    /// How long there still is for tests, minutes, when said.
    pub minutes_left: Option<f64>,
    /// The most that tests may disturb.
    pub disturb_at_most: Disturbance,
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
        let has_record = request.design.is_some() || request.expected.is_some();
        let usual = if has_record { None } else { UsualLoops::resolve(request, diagnostics) };
        if has_record {
            mark_stand_ins(request, diagnostics);
        }
        let detector = Detector::resolve(request.detector.as_ref(), &body.field("detector"), diagnostics);
        let observations = request.observations.clone().unwrap_or_default();
        for (index, observation) in observations.iter().enumerate() {
            if observations[..index].contains(observation) {
                diagnostics.add_error(
                    &body.field("observations").item(index),
                    FieldErrorCode::Contradiction,
                    Statement::new("errors-observation-twice").member("observation", *observation),
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
        let tank_nf = request.detector.as_ref().and_then(|detector| detector.tuning_capacitance_nf);
        let readings = ResolvedReadings::resolve(request.readings.as_ref(), &readings_at, tank_nf, diagnostics);
        let shown = readings.as_ref().map_or_else(Vec::new, |readings| readings.shown.clone());
        let runs_on_tank = request.readings.as_ref().is_some_and(|sent| sent.inductance_by_tank(tank_nf).is_some());
        if let Some(detector) = &request.detector {
            mark_unneeded(detector, &shown, runs_on_tank, diagnostics);
        }
        let tests_done = resolve_tests(request, &shown, diagnostics);
        let time_left = diagnostics.parse_optional(&body.field("time_left"), request.time_left.as_ref());
        let is_told = !observations.is_empty()
            || request.substitution.is_some()
            || request.tests_done.as_ref().is_some_and(|tests| !tests.is_empty());
        if readings.as_ref().is_some_and(|readings| readings.shown.is_empty()) && !is_told {
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
        if usual.is_none() && !has_record {
            return None;
        }
        let (detector, readings) = (detector?, readings?);
        let minutes_left = time_left.map(|time| time.get::<minute>());
        let disturb_at_most = request.disturb_at_most.unwrap_or(Disturbance::Pavement);
        Some(Self { design, usual, detector, readings, observations, tests_done, minutes_left, disturb_at_most })
    }

    /// The lead-in, where its length is known or taken.
    pub fn lead_in(&self) -> Option<&ResolvedLeadIn> {
        let designed = self.design.as_ref().map(|design| &design.lead_in);
        designed.or(self.usual.as_ref().map(|usual| &usual.lead_in))
    }

    /// How far the tests have come; `substitution` is one that is not void.
    pub fn progress(&self, substitution: Option<&Substitution>) -> TestProgress {
        let ReadingConditions { place, ground, .. } = self.readings.conditions;
        let mut progress = TestProgress::new(ground);
        progress.limit_to(self.minutes_left, self.disturb_at_most);
        if self.observations.contains(&Observation::FaultAfterRain) {
            progress.fault_comes_with_rain();
        }
        for (meter, _) in &self.readings.shown {
            if let Some(test) = reading_test(*meter, place, ground) {
                progress.take(test, None);
            }
        }
        if place == ReadingPlace::LoopEnd && !self.readings.shown.is_empty() {
            progress.open_splice();
        } else if self.readings.of(MeterKind::Resistance).is_some_and(MeterReading::is_open) {
            progress.open_circuit();
        }
        match self.readings.of(MeterKind::Insulation) {
            Some(MeterReading::Number(megohm)) if megohm < LEAK_BELOW_MEGOHM => progress.find_leak(),
            Some(_) => progress.find_sound_insulation(),
            None => {}
        }
        if let Some(done) = substitution {
            progress.take_substitution(done);
        }
        for (test, outcome) in &self.tests_done {
            progress.take(*test, Some(*outcome));
        }
        progress
    }
}

/// The test that a reading is of.
fn reading_test(meter: MeterKind, place: ReadingPlace, ground: InsulationState) -> Option<FaultTest> {
    match (meter, place) {
        (MeterKind::Insulation, _) if ground == InsulationState::Wet => Some(FaultTest::InsulationWet),
        (MeterKind::Insulation, _) => Some(FaultTest::Insulation),
        (MeterKind::Resistance, ReadingPlace::DetectorEnd) => Some(FaultTest::Resistance),
        (MeterKind::Resistance, ReadingPlace::LoopEnd) => Some(FaultTest::ResistanceAtLoop),
        (MeterKind::Inductance, ReadingPlace::DetectorEnd) => Some(FaultTest::Inductance),
        (MeterKind::Inductance, ReadingPlace::LoopEnd) => Some(FaultTest::InductanceAtLoop),
        (MeterKind::Capacitance, _) => Some(FaultTest::Capacitance),
        (MeterKind::Quality, _) => None,
    }
}

/// The tests that were done, each once, without those whose readings were sent.
fn resolve_tests(
    request: &FaultFindingRequest,
    readings: &[(MeterKind, MeterReading)],
    diagnostics: &mut Diagnostics,
) -> Vec<(FaultTest, FaultTestOutcome)> {
    let sent = request.tests_done.as_deref().unwrap_or_default();
    let body = FieldPath::BODY;
    let at = body.field("tests_done");
    let taken_at =
        request.readings.as_ref().and_then(|readings| readings.taken_at).unwrap_or(ReadingPlace::DetectorEnd);
    let ground = request.readings.as_ref().and_then(|readings| readings.insulation_measured);
    let is_read = |test| {
        let of = |(meter, _): &(MeterKind, MeterReading)| {
            reading_test(*meter, taken_at, ground.unwrap_or(InsulationState::Dry))
        };
        let is_substituted = request
            .substitution
            .as_ref()
            .is_some_and(|done| FaultTest::substitution_point(test) == Some(done.connected_at));
        is_substituted || readings.iter().filter_map(of).any(|read| read == test)
    };
    let mut tests = Vec::new();
    for (index, FaultTestDone { test, outcome }) in sent.iter().enumerate() {
        let item = at.item(index);
        if sent[..index].iter().any(|other| other.test == *test) {
            diagnostics.add_error(
                &item.field("test"),
                FieldErrorCode::Contradiction,
                Statement::new("errors-test-twice").member("test", *test),
                Statement::new("errors-test-twice-hint"),
            );
        } else if !test.outcomes().contains(outcome) {
            diagnostics.add_error(
                &item.field("outcome"),
                FieldErrorCode::Contradiction,
                Statement::new("errors-test-outcome").member("test", *test).member("outcome", *outcome),
                Statement::new("errors-test-outcome-hint").members("outcomes", test.outcomes()),
            );
        } else if is_read(*test) {
            diagnostics.mark_unused(&item);
        } else {
            tests.push((*test, *outcome));
        }
    }
    tests
}

/// What stands in without a design and a record is not needed beside them.
fn mark_stand_ins(request: &FaultFindingRequest, diagnostics: &mut Diagnostics) {
    let sent = [("size", request.size.is_some()), ("lead_in", request.lead_in.is_some())];
    diagnostics.mark_unneeded(&FieldPath::BODY, &sent);
}

/// A record that was sent holds a figure.
fn check_expected(request: &FaultFindingRequest, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
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
