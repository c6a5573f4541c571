//! What is asked of [`super`].

use serde::Deserialize;
use utoipa::ToSchema;
use validator::Validate;

use crate::calculation::input::{Detector, LeadIn, Loop, WireTemperature};
use crate::physics::circuit;
use crate::practice::detectors::Limits;
use crate::practice::faults::{Observation, ReadingPlace, SubstitutionPoint};
use crate::vocabulary::Vocabulary;

/// A loop that gives trouble: what it should measure, what it measures, and what was noticed.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct FaultFindingRequest {
    /// The loop as it was designed. Send this, `expected`, or both.
    #[validate(nested)]
    pub design: Option<LoopDesign>,
    /// What was measured at commissioning. Goes before the figures of the design.
    #[validate(nested)]
    pub expected: Option<CommissioningRecord>,
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
