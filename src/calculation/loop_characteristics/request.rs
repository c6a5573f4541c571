//! What is asked of [`super`].

use serde::Deserialize;
use utoipa::ToSchema;
use validator::Validate;

use crate::calculation::input::{LeadIn, Loop, SteelDepth, WireTemperature};

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

/// Steel in the slab below the loop.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Reinforcement {
    /// From the lowest turn down to the steel.
    pub depth_below_loop: SteelDepth,
}
