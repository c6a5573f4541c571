//! What is asked of [`super`].

use serde::Deserialize;
use uom::si::capacitance::nanofarad;
use uom::si::f64::{Capacitance, Frequency};
use uom::si::frequency::kilohertz;
use utoipa::ToSchema;
use validator::Validate;

use super::electrical::{MeasurementConditions, USUAL_FREQUENCY_KHZ};
use crate::calculation::input::{LeadIn, Loop, Reinforcement, ResolvedLeadIn, ResolvedLoop, WireTemperature};
use crate::calculation::report::{Diagnostics, FieldPath, Statement};
use crate::practice::sources::Source;

/// A loop and its lead-in, to be measured before it exists.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LoopCharacteristicsRequest {
    /// The loop.
    #[validate(nested)]
    pub r#loop: Loop,
    /// The pair to the detector unit. Send a length of 0 ft for the loop at its own tails.
    #[validate(nested)]
    pub lead_in: LeadIn,
    /// The frequency of the unit or meter, kHz. Default 50.
    #[validate(range(min = 1.0, max = 500.0))]
    #[schema(minimum = 1, maximum = 500)]
    pub frequency_khz: Option<f64>,
    /// The temperature of the wire. Default 20 °C.
    pub temperature: Option<WireTemperature>,
    /// Steel in the slab below the loop.
    #[validate(nested)]
    pub reinforcement: Option<Reinforcement>,
    /// The capacitance of slot and cable across the terminals, nF, where it is known. Default 0: no public figure exists.
    #[validate(range(min = 0.0, max = 100.0))]
    #[schema(minimum = 0, maximum = 100)]
    pub shunt_capacitance_nf: Option<f64>,
}

/// A request in typed quantities.
pub(super) struct ResolvedLoopCharacteristics {
    /// The loop.
    pub coil: ResolvedLoop,
    /// The pair to the unit.
    pub lead_in: ResolvedLeadIn,
    /// Under what conditions the loop is measured.
    pub conditions: MeasurementConditions,
}

impl LoopCharacteristicsRequest {
    /// Reads the request; `None` after an error.
    pub(super) fn resolve(&self, diagnostics: &mut Diagnostics) -> Option<ResolvedLoopCharacteristics> {
        let body = FieldPath::BODY;
        let coil = self.r#loop.resolve(&body.field("loop"), diagnostics);
        let lead_in = self.lead_in.resolve(&body.field("lead_in"), diagnostics);
        let frequency = diagnostics.value_or_default(
            &body.field("frequency_khz"),
            self.frequency_khz,
            (USUAL_FREQUENCY_KHZ, "50"),
            Statement::new("characteristics-usual-frequency"),
            Source::Everett,
        );
        let temperature = diagnostics.parse_or_default(
            &body.field("temperature"),
            self.temperature.as_ref(),
            "20 °C",
            Statement::new("characteristics-usual-temperature"),
            Source::IacsCopper,
        );
        let steel_below =
            Reinforcement::resolve(self.reinforcement.as_ref(), &body.field("reinforcement"), diagnostics);
        let capacitance = diagnostics.value_or_default(
            &body.field("shunt_capacitance_nf"),
            self.shunt_capacitance_nf,
            (0.0, "0"),
            Statement::new("characteristics-no-shunt-capacitance"),
            Source::OwnChoice,
        );
        Some(ResolvedLoopCharacteristics {
            coil: coil?,
            lead_in: lead_in?,
            conditions: MeasurementConditions {
                frequency: Frequency::new::<kilohertz>(frequency),
                temperature: temperature?,
                steel_below,
                shunt_capacitance: Capacitance::new::<nanofarad>(capacitance),
            },
        })
    }
}
