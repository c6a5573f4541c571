//! From the request to typed quantities and readings; every fault of it at once.

use uom::si::f64::Frequency;
use uom::si::frequency::kilohertz;

use super::reading::{Meter, Shown};
use super::request::{CommissioningRecord, FaultFindingRequest, FaultReadings, LoopDesign};
use super::sound::{Circumstances, Design};
use crate::calculation::input::{Detector, ResolvedDetector};
use crate::calculation::loop_characteristics::USUAL_FREQUENCY_KHZ;
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath};
use crate::physics::circuit;
use crate::practice::faults::{Observation, ReadingPlace};
use crate::practice::sources::Source;
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// A request in typed quantities.
pub struct Understood {
    /// The design, when given.
    pub design: Option<Design>,
    /// The unit.
    pub detector: ResolvedDetector,
    /// How the meters were used.
    pub now: Circumstances,
    /// What they show.
    pub readings: Vec<(Meter, Shown)>,
    /// What was noticed.
    pub observations: Vec<Observation>,
}

impl FaultFindingRequest {
    /// Reads the request.
    pub fn read(&self, diagnostics: &mut Diagnostics) -> Option<Understood> {
        let body = FieldPath::BODY;
        let design = self.design.as_ref().map(|design| design.read(&body.field("design"), diagnostics));
        self.check_expected(diagnostics);
        let detector = Detector::read(self.detector.as_ref(), &body.field("detector"), diagnostics);
        let observations = self.observations.clone().unwrap_or_default();
        for (index, observation) in observations.iter().enumerate() {
            if observations[..index].contains(observation) {
                diagnostics.add_error(
                    &body.field("observations").item(index),
                    FieldErrorCode::Contradiction,
                    format!("{} stands twice.", observation.code()),
                    "Send each observation once.",
                );
            }
        }
        if let Some(done) = &self.substitution
            && done.simulated_vehicle_switches.is_some()
            && !done.unit_runs
        {
            diagnostics.add_error(
                &body.field("substitution").field("simulated_vehicle_switches"),
                FieldErrorCode::Contradiction,
                "A unit that does not run cannot be tried with a vehicle.",
                "Leave simulated_vehicle_switches out, or send unit_runs as true.",
            );
        }

        let place = body.field("readings");
        let usual = FaultReadings::default();
        let sent = self.readings.as_ref().unwrap_or(&usual);
        let tank_nf = self.detector.as_ref().and_then(|detector| detector.tuning_capacitance_nf);
        let (now, readings) = sent.read(&place, tank_nf, diagnostics);
        let runs_on_tank = sent.inductance_by_tank(tank_nf).is_some();
        if let Some(detector) = &self.detector {
            self.name_unused(detector, runs_on_tank, diagnostics);
        }
        if readings.is_empty() && observations.is_empty() && self.substitution.is_none() {
            diagnostics.add_error(
                &place,
                FieldErrorCode::FieldMissing,
                "There is nothing to reason from.",
                "Send at least one reading, one observation, or a substitution.",
            );
        }
        let design = match design {
            Some(design) => Some(design?),
            None => None,
        };
        Some(Understood { design, detector: detector?, now: now?, readings, observations })
    }

    /// A sound loop must be known by its design or by its record.
    fn check_expected(&self, diagnostics: &mut Diagnostics) {
        let body = FieldPath::BODY;
        match &self.expected {
            None if self.design.is_none() => {
                for field in ["design", "expected"] {
                    diagnostics.add_error(
                        &body.field(field),
                        FieldErrorCode::FieldMissing,
                        "Nothing says what the loop should measure.",
                        "Send design (loop and lead_in), or expected from the commissioning record, or both.",
                    );
                }
            }
            Some(CommissioningRecord { inductance_uh: None, resistance_ohm: None, quality_factor: None }) => {
                diagnostics.add_error(
                    &body.field("expected"),
                    FieldErrorCode::FieldMissing,
                    "The commissioning record holds no figure.",
                    "Send inductance_uh, resistance_ohm or quality_factor, or leave expected out.",
                );
            }
            _ => {}
        }
    }

    fn name_unused(&self, detector: &Detector, runs_on_tank: bool, diagnostics: &mut Diagnostics) {
        let body = FieldPath::BODY;
        let insulation = self.readings.as_ref().is_some_and(|readings| {
            readings.insulation_megohm.is_some() || readings.insulation_over_range == Some(true)
        });
        let needed = |field: &str| match field {
            "tuning_capacitance_nf" => runs_on_tank,
            "insulation_min_megohm" => insulation,
            _ => false,
        };
        let at = body.field("detector");
        for (field, sent) in detector.parts_sent() {
            if !needed(field) {
                diagnostics.mark_unneeded(&at, &[(field, sent)]);
            }
        }
        diagnostics.mark_unneeded(
            &at,
            &[
                ("threshold_percent", detector.threshold_percent.is_some()),
                ("threshold_steps_percent", detector.threshold_steps_percent.is_some()),
            ],
        );
    }
}

impl LoopDesign {
    fn read(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<Design> {
        let (loop_at, lead_in_at) = (at.field("loop"), at.field("lead_in"));
        let coil = self.r#loop.read(&loop_at, diagnostics);
        let lead_in = self.lead_in.read(&lead_in_at, diagnostics);
        diagnostics.mark_unneeded(&loop_at, &[("cover", self.r#loop.cover.is_some())]);
        diagnostics.mark_unneeded(&lead_in_at, &self.lead_in.parts_sent());
        Some(Design { coil: coil?, lead_in: lead_in? })
    }
}

impl FaultReadings {
    /// The inductance that makes the unit run at its frequency with its tank capacitance, µH.
    fn inductance_by_tank(&self, tank_nf: Option<f64>) -> Option<f64> {
        let measured = self.inductance_uh.is_some() || self.inductance_over_range == Some(true);
        let (tank_nf, khz) = (tank_nf?, self.frequency_khz.filter(|_| !measured)?);
        // Thomson's formula is its own inverse: f and L change places.
        let root = circuit::resonance(1.0, tank_nf * 1e-9) / (khz * 1e3);
        Some(root * root * 1e6).filter(|inductance| *inductance <= 1e5)
    }

    fn read(
        &self,
        at: &FieldPath<'_>,
        tank_nf: Option<f64>,
        diagnostics: &mut Diagnostics,
    ) -> (Option<Circumstances>, Vec<(Meter, Shown)>) {
        let by_tank = self.inductance_by_tank(tank_nf);
        if let Some(inductance) = by_tank {
            diagnostics.add_assumption(
                &at.field("inductance_uh"),
                round(inductance, 2).to_string(),
                "What makes the unit run at its frequency with the tank capacitance of its sheet.",
                &[Source::CircuitTheory],
            );
        }
        let sent = [
            (Meter::Insulation, "insulation_over_range", self.insulation_megohm, self.insulation_over_range),
            (Meter::Resistance, "resistance_over_range", self.resistance_ohm, self.resistance_over_range),
            (Meter::Inductance, "inductance_over_range", self.inductance_uh.or(by_tank), self.inductance_over_range),
            (Meter::Quality, "quality_factor", self.quality_factor, None),
        ];
        let mut readings = Vec::new();
        for (meter, flag, number, over_range) in sent {
            let is_over_range = over_range.unwrap_or(false);
            if number.is_some() && is_over_range {
                diagnostics.add_error(
                    &at.field(flag),
                    FieldErrorCode::Contradiction,
                    format!("{} is a number and over range at once.", meter.field()),
                    "Send the number, or the flag as true, not both.",
                );
            }
            let shown = number.map(Shown::Number).or_else(|| is_over_range.then_some(Shown::OverRange));
            readings.extend(shown.map(|shown| (meter, shown)));
        }
        if self.test_voltage_v.is_some() && !readings.iter().any(|(meter, _)| *meter == Meter::Insulation) {
            diagnostics.add_error(
                &at.field("test_voltage_v"),
                FieldErrorCode::Contradiction,
                "There is a test voltage and no reading of insulation.",
                "Send insulation_megohm with it, or leave it out.",
            );
        }
        let frequency = diagnostics.value_or_default(
            &at.field("frequency_khz"),
            self.frequency_khz,
            (USUAL_FREQUENCY_KHZ, "50"),
            "The frequency of an agency's acceptance test.",
            Source::Everett,
        );
        let temperature = diagnostics.parse_or_default(
            &at.field("temperature"),
            self.temperature.as_ref(),
            "20 °C",
            "The temperature at which wire tables hold.",
            Source::IacsCopper,
        );
        let place = diagnostics.value_or_default(
            &at.field("taken_at"),
            self.taken_at,
            (ReadingPlace::DetectorEnd, ReadingPlace::DetectorEnd.code()),
            "Where meters are connected first.",
            Source::CommonPractice,
        );
        let now = temperature.map(|temperature| Circumstances {
            frequency: Frequency::new::<kilohertz>(frequency),
            temperature,
            place,
        });
        (now, readings)
    }
}
