//! What [`super`] answers.

use serde::Serialize;
use uom::si::frequency::kilohertz;
use uom::si::ratio::percent;
use utoipa::ToSchema;

use super::candidates::{TurnCandidate, TurnCandidates};
use super::request::{ResolvedExistingLoop, SteelBelow};
use crate::calculation::fault_finding::MeterKind;
use crate::calculation::input::{DetectorEcho, ResolvedLeadIn};
use crate::calculation::loop_sizing::VehicleSighting;
use crate::calculation::report::{Assumed, Basis, Caution, Finding, Message, has_messages};
use crate::practice::cautions::CautionCode;
use crate::practice::existing_loops::{ExistingLoopVerdict, LoopCondition, TuningFit, WIRE_NAMED_FROM};
use crate::practice::fault_tests::{Disturbance, FaultTest};
use crate::practice::meter_readings::ReadingPlace;
use crate::practice::roles::Role;
use crate::practice::vehicles::VehicleClass;
use crate::quantity::output::{PlanLength, TemperatureValue, round};
use crate::vocabulary::Vocabulary;

/// What a loop in the ground is, and whether to keep it.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct ExistingLoopReport {
    /// Whether to keep it: a `code` of `reference/existing-loop-verdicts`.
    #[schema(value_type = String)]
    pub verdict: ExistingLoopVerdict,
    /// What stands behind the verdict, in sentences, the gravest first; empty when nothing stands against keeping it.
    #[schema(value_type = Vec<String>)]
    pub reasons: Vec<Message>,
    /// The turn counts that it may have, the likeliest first; with what little is left for others the likelihoods sum to 1.
    pub candidates: Vec<ExistingLoopCandidate>,
    /// How it stands by its readings: a `code` of `reference/loop-conditions`.
    #[schema(value_type = String)]
    pub condition: LoopCondition,
    /// How likely steel lies below it, 0 to 1, 3 decimals.
    pub steel_likelihood: f64,
    /// Whether the unit tunes to it.
    pub tuning: ExistingLoopTuning,
    /// What the vehicles make over it, taken as the likeliest candidate.
    pub vehicles: Vec<VehicleSighting>,
    /// The test that would settle what is open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub settling_test: Option<SettlingTest>,
    /// What was understood of the request.
    pub inputs: ExistingLoopInputs,
    /// Statements about the loop, the gravest first.
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
    ExistingLoopReport: reasons, settling_test, findings, assumed, cautions, basis;
    SettlingTest: label, how, reason;
}

/// A turn count that the loop may have.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct ExistingLoopCandidate {
    /// The turns.
    pub turns: u32,
    /// The wire, where the resistance tells it; absent otherwise.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub gauge: Option<&'static str>,
    /// How likely it has as many turns, 0 to 1, 3 decimals.
    pub likelihood: f64,
    /// How likely steel lies below it, if it has as many, 0 to 1, 3 decimals.
    pub steel_likelihood: f64,
    /// Least inductance that meters would show at the place of the readings, µH, 2 decimals.
    pub inductance_low_uh: f64,
    /// Greatest inductance, µH, 2 decimals.
    pub inductance_high_uh: f64,
    /// Least resistance, ohm, 3 decimals, with the wire that is likeliest.
    pub resistance_low_ohm: f64,
    /// Greatest resistance, ohm, 3 decimals.
    pub resistance_high_ohm: f64,
    /// Whether what was measured lies in both ranges.
    pub fits_readings: bool,
}

/// Whether a unit tunes to the loop.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct ExistingLoopTuning {
    /// Whether it does: a `code` of `reference/tuning-fits`.
    #[schema(value_type = String)]
    pub fit: TuningFit,
    /// Least inductance at the unit's terminals, µH, 2 decimals: what was measured and the meter's error, else by the candidates.
    pub inductance_low_uh: f64,
    /// Greatest inductance at the unit's terminals, µH, 2 decimals.
    pub inductance_high_uh: f64,
    /// Upper bound of the quality factor, 2 decimals, from what was measured; absent where it was not.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub quality_factor: Option<f64>,
}

/// The test that would settle what is open.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct SettlingTest {
    /// The test; a `code` of `reference/fault-tests`.
    #[schema(value_type = String)]
    pub test: FaultTest,
    /// Its short name.
    #[schema(value_type = String)]
    pub label: Message,
    /// How it is done.
    #[schema(value_type = String)]
    pub how: Message,
    /// How long it takes, minutes: common practice.
    pub minutes: u32,
    /// What it disturbs: a `code` of `reference/disturbances`.
    #[schema(value_type = String)]
    pub disturbs: Disturbance,
    /// What it would settle, in words.
    #[schema(value_type = String)]
    pub reason: Message,
    /// What to heed: codes of `cautions`.
    #[schema(value_type = Vec<String>)]
    pub cautions: Vec<CautionCode>,
}

/// What was understood of an existing-loop request.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct ExistingLoopInputs {
    /// Leg in the direction of driving.
    pub along_travel: PlanLength,
    /// Leg across the lane.
    pub across_lane: PlanLength,
    /// How far the legs may be off, percent, 3 decimals.
    pub size_uncertainty_percent: f64,
    /// The pair to the unit.
    pub lead_in: ResolvedLeadIn,
    /// The unit.
    pub detector: DetectorEcho,
    /// The vehicles that must be seen.
    #[schema(value_type = Vec<String>)]
    pub vehicles: Vec<VehicleClass>,
    /// What the loop is for; absent when not said.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>)]
    pub role: Option<Role>,
    /// The clear width of the lane.
    pub lane_width: PlanLength,
    /// Whether steel lies below; absent when nobody knows.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub over_steel: Option<bool>,
    /// The temperature of the wire.
    pub temperature: TemperatureValue,
    /// The frequency at which inductance and quality factor hold, kHz, 3 decimals.
    pub frequency_khz: f64,
    /// Where the meters were connected.
    #[schema(value_type = String)]
    pub taken_at: ReadingPlace,
    /// The inductance that was read, µH, 2 decimals; absent where it was not read or over range.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inductance_uh: Option<f64>,
    /// The resistance that was read, ohm, 3 decimals; absent where it was not read or over range.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub resistance_ohm: Option<f64>,
    /// Whether vehicles were driven over it and seen; absent when not tried.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub drive_over_passed: Option<bool>,
}

impl ExistingLoopCandidate {
    /// The candidates that are worth naming: the likeliest, a second where steel may lie below, and all that are likely at all.
    pub(super) fn of(candidates: &TurnCandidates) -> Vec<Self> {
        let needed = if candidates.steel() >= 0.5 { 2 } else { 1 };
        let named = candidates.ranked.iter().enumerate();
        let named = named.filter(|(index, one)| *index < needed || one.likelihood >= 0.01);
        named.map(|(_, one)| Self::new(one)).collect()
    }

    fn new(candidate: &TurnCandidate) -> Self {
        let TurnCandidate { turns, likelihood, steel, wire: (wire, wire_share), inductance, resistance, fits } =
            *candidate;
        Self {
            turns,
            gauge: (wire_share >= WIRE_NAMED_FROM).then(|| wire.code()),
            likelihood: round(likelihood, 3),
            steel_likelihood: round(steel, 3),
            inductance_low_uh: round(inductance.0, 2),
            inductance_high_uh: round(inductance.1, 2),
            resistance_low_ohm: round(resistance.0, 3),
            resistance_high_ohm: round(resistance.1, 3),
            fits_readings: fits,
        }
    }
}

impl ExistingLoopInputs {
    /// The echo of a request.
    pub(super) fn new(resolved: &ResolvedExistingLoop) -> Self {
        let conditions = &resolved.readings.conditions;
        Self {
            along_travel: resolved.along_travel.into(),
            across_lane: resolved.across_lane.into(),
            size_uncertainty_percent: round(resolved.size_uncertainty.get::<percent>(), 3),
            lead_in: resolved.lead_in.clone(),
            detector: resolved.detector.echo(),
            vehicles: resolved.vehicles.clone(),
            role: resolved.role,
            lane_width: resolved.lane_width.into(),
            over_steel: match resolved.steel {
                SteelBelow::Unknown => None,
                SteelBelow::Absent => Some(false),
                SteelBelow::Present(_) => Some(true),
            },
            temperature: conditions.temperature.into(),
            frequency_khz: round(conditions.frequency.get::<kilohertz>(), 3),
            taken_at: conditions.place,
            inductance_uh: resolved.readings.number(MeterKind::Inductance).map(|read| round(read, 2)),
            resistance_ohm: resolved.readings.number(MeterKind::Resistance).map(|read| round(read, 3)),
            drive_over_passed: resolved.drive_over_passed,
        }
    }
}
