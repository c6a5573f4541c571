//! What [`super`] answers.

use serde::Serialize;
use uom::si::frequency::kilohertz;
use utoipa::ToSchema;

use super::meters::{MeterKind, ReadingBand};
use super::request::Substitution;
use super::resolve::{ResolvedFaultFinding, ResolvedLoopDesign};
use super::sound_loop::{LoopChange, SoundLoopModel};
use crate::calculation::input::{DetectorEcho, ResolvedLeadIn, ResolvedLoop};
use crate::calculation::report::{Assumed, Basis, Caution, Finding, Message, has_messages};
use crate::practice::cautions::CautionCode;
use crate::practice::fault_signs::Observation;
use crate::practice::fault_tests::{Disturbance, FaultTest, FaultTestOutcome};
use crate::practice::faults::LoopFault;
use crate::practice::meter_readings::{InsulationState, ReadingPlace, SubstitutionPoint};
use crate::quantity::output::{TemperatureValue, round};

/// What may have failed, and what to test next.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct FaultFindingReport {
    /// Every fault that was considered, the most likely first. One cause is assumed; the likelihoods sum to 1.
    pub suspects: Vec<FaultSuspect>,
    /// Whether one fault at one place leads so far, with 0.9 or more, that work on it comes next; `next_test` only confirms it then.
    pub settled: bool,
    /// The test that is expected to tell most for its cost: its minutes, and what it disturbs.
    pub next_test: NextTest,
    /// The tests as they come if each shows what is likeliest, until one fault at one place leads, or no test tells more; empty when settled.
    pub plan_of_tests: Vec<PlannedTest>,
    /// All tests that can still tell something of a part that is not cleared, the one that tells most for its cost first.
    pub open_tests: Vec<OpenTest>,
    /// What was understood of the request.
    pub inputs: FaultFindingInputs,
    /// Statements about the readings, the gravest first.
    pub findings: Vec<Finding>,
    /// Defaults that stood in for fields that were not sent.
    pub assumed: Vec<Assumed>,
    /// Fields that were sent and are not needed here, as JSON Pointers.
    pub unused: Vec<String>,
    /// What can hurt someone on this job.
    pub cautions: Vec<Caution>,
    /// What the figures rest on.
    pub basis: Basis,
}

has_messages! {
    FaultFindingReport: suspects, next_test, plan_of_tests, open_tests, findings, assumed, cautions, basis;
    FaultSuspect: label, variant, evidence_for, evidence_against;
    NextTest: label, how, reason, outcomes;
    TestOutcome: outcome, meaning;
    PlannedTest: label, likely_outcome;
    OpenTest: label;
}

/// One fault, and what speaks for and against it.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct FaultSuspect {
    /// The fault; a `code` of `reference/faults`.
    #[schema(value_type = String)]
    pub fault: LoopFault,
    /// Its short name.
    #[schema(value_type = String)]
    pub label: Message,
    /// How likely it is the cause, 0 to 1, 3 decimals.
    pub likelihood: f64,
    /// The form of the fault that fits best; absent where it has one form only.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>)]
    pub variant: Option<Message>,
    /// What speaks for it, in sentences.
    #[schema(value_type = Vec<String>)]
    pub evidence_for: Vec<Message>,
    /// What speaks against it, in sentences.
    #[schema(value_type = Vec<String>)]
    pub evidence_against: Vec<Message>,
    /// What this fault, in its best form, would show on the meters that were read.
    pub comparison: Vec<ReadingCompared>,
}

/// What a fault would show beside what was measured.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct ReadingCompared {
    /// The field of `readings`.
    pub reading: &'static str,
    /// The least that the fault would show, 3 decimals.
    pub predicted_low: f64,
    /// The most that the fault would show as a number, 3 decimals.
    pub predicted_high: f64,
    /// Whether the fault would rather show more than the meter's range than a number.
    pub predicted_over_range: bool,
    /// What was measured, 3 decimals; absent when it was over range.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub measured: Option<f64>,
    /// Whether the measurement was over range.
    pub measured_over_range: bool,
    /// The unit, or `ratio` where there is none.
    pub unit: &'static str,
}

impl ReadingCompared {
    /// Whether what was measured lies in what the fault would show.
    pub fn is_expected(&self) -> bool {
        match self.measured {
            Some(measured) => {
                !self.predicted_over_range && (self.predicted_low..=self.predicted_high).contains(&measured)
            }
            None => self.predicted_over_range,
        }
    }
}

/// The test to do next.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct NextTest {
    /// The test; a `code` of `reference/fault-tests`.
    #[schema(value_type = String)]
    pub test: FaultTest,
    /// Its short name.
    #[schema(value_type = String)]
    pub label: Message,
    /// How it is done.
    #[schema(value_type = String)]
    pub how: Message,
    /// How long it takes from here, minutes: common practice. Less where the splice stands open already.
    pub minutes: u32,
    /// What it disturbs: a `code` of `reference/disturbances`.
    #[schema(value_type = String)]
    pub disturbs: Disturbance,
    /// Why it comes next, in words.
    #[schema(value_type = String)]
    pub reason: Message,
    /// How much it is expected to narrow fault and place, bits, 3 decimals: one bit halves them.
    pub expected_information_bits: f64,
    /// What it can show.
    pub outcomes: Vec<TestOutcome>,
    /// What to heed: codes of `cautions`.
    #[schema(value_type = Vec<String>)]
    pub cautions: Vec<CautionCode>,
}

/// What a test can show, and what that would mean.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct TestOutcome {
    /// What is seen: a `code` of `reference/fault-test-outcomes`, to be sent back in `tests_done`.
    #[schema(value_type = String)]
    pub code: FaultTestOutcome,
    /// What is seen, in words.
    #[schema(value_type = String)]
    pub outcome: Message,
    /// How likely it is, 0 to 1, 3 decimals.
    pub probability: f64,
    /// The faults that it points to, the most likely first.
    #[schema(value_type = Vec<String>)]
    pub points_to: Vec<LoopFault>,
    /// What it would mean, in words.
    #[schema(value_type = String)]
    pub meaning: Message,
}

/// A test of the likely order.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct PlannedTest {
    /// The test; a `code` of `reference/fault-tests`.
    #[schema(value_type = String)]
    pub test: FaultTest,
    /// Its short name.
    #[schema(value_type = String)]
    pub label: Message,
    /// How long it takes from where the tests before it have come, minutes.
    pub minutes: u32,
    /// The minutes of all tests up to and with this one.
    pub minutes_so_far: u32,
    /// What it disturbs: a `code` of `reference/disturbances`.
    #[schema(value_type = String)]
    pub disturbs: Disturbance,
    /// What it most likely shows: a `code` of `reference/fault-test-outcomes`. The tests behind it stand for this case.
    #[schema(value_type = String)]
    pub likely_outcome_code: FaultTestOutcome,
    /// What it most likely shows, in words.
    #[schema(value_type = String)]
    pub likely_outcome: Message,
    /// How likely it shows that, given what the tests before it are taken to show, 0 to 1, 3 decimals.
    pub probability: f64,
}

/// A test that can be done.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct OpenTest {
    /// The test; a `code` of `reference/fault-tests`.
    #[schema(value_type = String)]
    pub test: FaultTest,
    /// Its short name.
    #[schema(value_type = String)]
    pub label: Message,
    /// How long it takes from here, minutes.
    pub minutes: u32,
    /// What it disturbs: a `code` of `reference/disturbances`.
    #[schema(value_type = String)]
    pub disturbs: Disturbance,
    /// How much it is expected to narrow fault and place, bits, 3 decimals.
    pub expected_information_bits: f64,
}

/// A test that was done, as it was understood.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct FaultTestDoneEcho {
    /// The test.
    #[schema(value_type = String)]
    pub test: FaultTest,
    /// What it showed.
    #[schema(value_type = String)]
    pub outcome: FaultTestOutcome,
}

/// What was understood of a fault-finding request.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct FaultFindingInputs {
    /// The design; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub design: Option<LoopDesignEcho>,
    /// The detector unit.
    pub detector: DetectorEcho,
    /// What a sound loop would show at the place and temperature of the readings.
    pub sound_loop: SoundLoop,
    /// The temperature of the wire.
    pub temperature: TemperatureValue,
    /// The frequency at which inductance and quality factor hold, kHz, 3 decimals.
    pub frequency_khz: f64,
    /// Where the meters were connected.
    #[schema(value_type = String)]
    pub taken_at: ReadingPlace,
    /// How wet the ground was when insulation was measured; absent without a reading of it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>)]
    pub insulation_measured: Option<InsulationState>,
    /// Tests that were done and that no reading stands for.
    pub tests_done: Vec<FaultTestDoneEcho>,
    /// What was noticed.
    #[schema(value_type = Vec<String>)]
    pub observations: Vec<Observation>,
    /// The substitution; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub substitution: Option<SubstitutionEcho>,
    /// How long there still is for tests, minutes; absent when not said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub minutes_left: Option<f64>,
    /// The most that tests may disturb.
    #[schema(value_type = String)]
    pub disturb_at_most: Disturbance,
}

/// A design as it was understood.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct LoopDesignEcho {
    /// The loop.
    pub r#loop: ResolvedLoop,
    /// The lead-in.
    pub lead_in: ResolvedLeadIn,
}

/// What a sound loop would show; wide where neither design nor record gives the figure.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct SoundLoop {
    /// Least inductance, µH, 2 decimals.
    pub inductance_low_uh: f64,
    /// Greatest inductance, µH, 2 decimals.
    pub inductance_high_uh: f64,
    /// Least resistance, ohm, 3 decimals.
    pub resistance_low_ohm: f64,
    /// Greatest resistance, ohm, 3 decimals.
    pub resistance_high_ohm: f64,
    /// Least quality factor, 2 decimals.
    pub quality_factor_low: f64,
    /// Greatest quality factor, 2 decimals.
    pub quality_factor_high: f64,
}

/// A substitution as it was understood.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct SubstitutionEcho {
    /// Where the inductor was connected.
    #[schema(value_type = String)]
    pub connected_at: SubstitutionPoint,
    /// Its inductance, µH, 2 decimals.
    pub inductance_uh: f64,
    /// Whether the unit ran.
    pub unit_runs: bool,
    /// Whether the output switched; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub simulated_vehicle_switches: Option<bool>,
}

impl FaultFindingInputs {
    /// The echo of a request.
    pub fn new(resolved: &ResolvedFaultFinding, substitution: Option<&Substitution>, sound: &SoundLoopModel) -> Self {
        let ResolvedFaultFinding { design, detector, observations, tests_done, .. } = resolved;
        let conditions = &resolved.readings.conditions;
        Self {
            design: design.as_ref().map(LoopDesignEcho::new),
            detector: detector.echo(),
            sound_loop: SoundLoop::new(sound),
            temperature: conditions.temperature.into(),
            frequency_khz: round(conditions.frequency.get::<kilohertz>(), 3),
            taken_at: conditions.place,
            insulation_measured: resolved.readings.of(MeterKind::Insulation).map(|_| conditions.ground),
            tests_done: tests_done
                .iter()
                .map(|(test, outcome)| FaultTestDoneEcho { test: *test, outcome: *outcome })
                .collect(),
            observations: observations.clone(),
            substitution: substitution.map(SubstitutionEcho::new),
            minutes_left: resolved.minutes_left.map(|minutes| round(minutes, 1)),
            disturb_at_most: resolved.disturb_at_most,
        }
    }
}

impl LoopDesignEcho {
    fn new(design: &ResolvedLoopDesign) -> Self {
        Self { r#loop: design.coil.clone(), lead_in: design.lead_in.clone() }
    }
}

impl SoundLoop {
    fn new(sound: &SoundLoopModel) -> Self {
        let rounded = |band: ReadingBand, meter, decimals| {
            let (low, high) = band.expected_range(meter);
            (round(low, decimals), round(high, decimals))
        };
        let inductance = rounded(sound.inductance(&LoopChange::NOTHING), MeterKind::Inductance, 2);
        let resistance = rounded(sound.resistance(&LoopChange::NOTHING), MeterKind::Resistance, 3);
        let quality = rounded(sound.quality(&LoopChange::NOTHING), MeterKind::Quality, 2);
        Self {
            inductance_low_uh: inductance.0,
            inductance_high_uh: inductance.1,
            resistance_low_ohm: resistance.0,
            resistance_high_ohm: resistance.1,
            quality_factor_low: quality.0,
            quality_factor_high: quality.1,
        }
    }
}

impl SubstitutionEcho {
    fn new(done: &Substitution) -> Self {
        Self {
            connected_at: done.connected_at,
            inductance_uh: round(done.inductance_uh, 2),
            unit_runs: done.unit_runs,
            simulated_vehicle_switches: done.simulated_vehicle_switches,
        }
    }
}
