//! What is asked of [`super`].

use serde::{Deserialize, Serialize};
use uom::si::f64::Length;
use utoipa::ToSchema;
use validator::Validate;

use crate::calculation::input::{Detector, LeadIn, Loop, LoopLeg, WireTemperature, WorkTime};
use crate::calculation::report::{Diagnostics, FieldPath};
use crate::physics::circuit;
use crate::practice::detectors::Limits;
use crate::practice::fault_signs::Observation;
use crate::practice::fault_tests::{Disturbance, FaultTest, FaultTestOutcome};
use crate::practice::meter_readings::{InsulationState, ReadingPlace, SubstitutionPoint};
use crate::vocabulary::Vocabulary;

/// A loop that gives trouble: what it should measure, what it measures, and what was noticed.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct FaultFindingRequest {
    /// The loop as it was designed. Send this, `expected`, or both, where there is a record; without, usual loops stand in, and `assumed`
    /// says so.
    #[validate(nested)]
    pub design: Option<LoopDesign>,
    /// What was measured at commissioning. Goes before the figures of the design.
    #[validate(nested)]
    pub expected: Option<CommissioningRecord>,
    /// The legs of a loop without `design` and `expected`, as paced out.
    #[validate(nested)]
    pub size: Option<LoopSize>,
    /// The lead-in of a loop without `design` and `expected`. Default 50 ft.
    #[validate(nested)]
    pub lead_in: Option<LeadIn>,
    /// The detector unit. Default: the standard minimum.
    #[validate(nested)]
    pub detector: Option<Detector>,
    /// What the meters show now.
    #[validate(nested)]
    pub readings: Option<FaultReadings>,
    /// What people notice, each once.
    #[validate(length(max = Observation::COUNT))]
    pub observations: Option<Vec<Observation>>,
    /// A known inductor that was connected in place of the loop.
    #[validate(nested)]
    pub substitution: Option<Substitution>,
    /// Tests that were done and what each showed, each test once; `next_test.outcomes[].code` lists what to send. What a meter shows as a
    /// number is better sent in `readings`, which goes before.
    #[validate(length(max = FaultTest::COUNT))]
    pub tests_done: Option<Vec<FaultTestDone>>,
    /// How long there still is for tests. What takes longer is not proposed. Default: as long as it takes.
    pub time_left: Option<WorkTime>,
    /// The most that tests may disturb. Default: the pavement.
    pub disturb_at_most: Option<Disturbance>,
}

/// The legs of a loop of which no more is known.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LoopSize {
    /// The leg in the direction of driving.
    pub along_travel: LoopLeg,
    /// The leg across the lane.
    pub across_lane: LoopLeg,
}

/// A test that was done.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct FaultTestDone {
    /// The test.
    pub test: FaultTest,
    /// What it showed.
    pub outcome: FaultTestOutcome,
}

/// A loop with its lead-in, as designed.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LoopDesign {
    /// The loop.
    #[validate(nested)]
    pub r#loop: Loop,
    /// The pair to the detector unit.
    #[validate(nested)]
    pub lead_in: LeadIn,
}

/// What was measured at the unit's end when the loop was sound, at least one figure.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CommissioningRecord {
    /// Inductance, µH.
    #[validate(range(min = 1.0, max = 100_000.0))]
    #[schema(minimum = 1, maximum = 100_000)]
    pub inductance_uh: Option<f64>,
    /// Resistance to direct current, ohm, taken as at 20 °C.
    #[validate(range(min = 0.01, max = 1_000.0))]
    #[schema(minimum = 0.01, maximum = 1_000)]
    pub resistance_ohm: Option<f64>,
    /// Quality factor.
    #[validate(range(min = 0.1, max = 1_000.0))]
    #[schema(minimum = 0.1, maximum = 1_000)]
    pub quality_factor: Option<f64>,
}

/// What meters show, with the unit disconnected.
#[derive(Clone, Debug, Default, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct FaultReadings {
    /// Insulation of the conductors to earth, megohm.
    #[validate(range(min = 0.0, max = 1_000_000.0))]
    #[schema(minimum = 0, maximum = 1_000_000)]
    pub insulation_megohm: Option<f64>,
    /// Whether the insulation is more than the tester shows. Default false. Send no `insulation_megohm` with it.
    pub insulation_over_range: Option<bool>,
    /// How wet the ground was when insulation was measured. Default `dry`, of which a good reading clears nothing that comes with
    /// rain.
    pub insulation_measured: Option<InsulationState>,
    /// The voltage of the insulation test, V. Only with a reading of insulation.
    #[validate(range(min = 1.0, max = 5_000.0))]
    #[schema(minimum = 1, maximum = 5_000)]
    pub test_voltage_v: Option<f64>,
    /// Resistance from wire to wire to direct current, ohm.
    #[validate(range(min = 0.0, max = 100_000_000.0))]
    #[schema(minimum = 0, maximum = 100_000_000)]
    pub resistance_ohm: Option<f64>,
    /// Whether the resistance is more than the meter shows: an open circuit. Default false. Send no `resistance_ohm` with it.
    pub resistance_over_range: Option<bool>,
    /// Inductance, µH.
    #[validate(range(min = 0.0, max = 100_000.0))]
    #[schema(minimum = 0, maximum = 100_000)]
    pub inductance_uh: Option<f64>,
    /// Whether the inductance is more than the meter shows. Default false. Send no `inductance_uh` with it.
    pub inductance_over_range: Option<bool>,
    /// Capacitance of the lead-in's pair from wire to wire at the unit's end, nF, where the circuit is open: it tells how far the open wire
    /// reaches. Needs `whole_capacitance_nf`.
    #[validate(range(min = 0.0, max = 10_000.0))]
    #[schema(minimum = 0, maximum = 10_000)]
    pub capacitance_nf: Option<f64>,
    /// Capacitance of the whole pair, nF: that of a like pair which is whole, or the cable's sheet times the length.
    #[validate(range(min = 0.01, max = 10_000.0))]
    #[schema(minimum = 0.01, maximum = 10_000)]
    pub whole_capacitance_nf: Option<f64>,
    /// Quality factor.
    #[validate(range(min = 0.0, max = 1_000.0))]
    #[schema(minimum = 0, maximum = 1_000)]
    pub quality_factor: Option<f64>,
    /// The frequency at which inductance and quality factor were read, or at which the unit runs, kHz. Default 50. With the
    /// unit's `tuning_capacitance_nf`, and without `inductance_uh`, it gives the inductance.
    #[validate(range(min = 0.1, max = 500.0))]
    #[schema(minimum = 0.1, maximum = 500)]
    pub frequency_khz: Option<f64>,
    /// The temperature of the wire. Default 20 °C.
    pub temperature: Option<WireTemperature>,
    /// Where the meters were connected. Default `detector_end`.
    pub taken_at: Option<ReadingPlace>,
}

/// A known inductor in place of the loop.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Substitution {
    /// Where it was connected.
    pub connected_at: SubstitutionPoint,
    /// Its inductance, µH.
    #[validate(range(min = 0.1, max = 100_000.0))]
    #[schema(minimum = 0.1, maximum = 100_000)]
    pub inductance_uh: f64,
    /// Whether the unit tunes and shows no fault.
    pub unit_runs: bool,
    /// Whether the output switches when the inductance is lowered as by a vehicle. Only when the unit runs.
    pub simulated_vehicle_switches: Option<bool>,
}

impl LoopSize {
    /// Reads the legs, along and across.
    pub fn resolve(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<[Length; 2]> {
        let along = diagnostics.parse(&at.field("along_travel"), &self.along_travel);
        let across = diagnostics.parse(&at.field("across_lane"), &self.across_lane);
        Some([along?.si, across?.si])
    }
}

impl CommissioningRecord {
    /// Whether it holds no figure.
    pub fn is_empty(&self) -> bool {
        let Self { inductance_uh, resistance_ohm, quality_factor } = self;
        inductance_uh.is_none() && resistance_ohm.is_none() && quality_factor.is_none()
    }
}

impl FaultReadings {
    /// The inductance that makes the unit run at its frequency with its tank capacitance, µH; `None` where one was measured.
    pub fn inductance_by_tank(&self, tank_nf: Option<f64>) -> Option<f64> {
        let measured = self.inductance_uh.is_some() || self.inductance_over_range == Some(true);
        let (tank_nf, khz) = (tank_nf?, self.frequency_khz.filter(|_| !measured)?);
        // Thomson's formula is its own inverse: f and L change places.
        let root = circuit::resonance(1.0, tank_nf * 1e-9) / (khz * 1e3);
        Some(root * root * 1e6).filter(|inductance| *inductance <= 1e5)
    }
}

impl Substitution {
    /// Whether the unit does not tune to the inductor at all, so that the outcome says nothing.
    pub fn is_void(&self, limits: &Limits) -> bool {
        !(limits.inductance_min_uh..=limits.inductance_max_uh).contains(&self.inductance_uh)
    }
}
