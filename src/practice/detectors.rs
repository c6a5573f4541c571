//! The envelopes of detector units: what they tune to, in public standards.

use super::vocabulary;

vocabulary! {
    /// Envelopes that stand in for a unit whose data sheet is not at hand.
    DetectorEnvelope {
        StandardMinimum "standard_minimum" "Standard minimum" "What a unit built to the North American standard tunes at least: 50 to 700 µH with Q of 5 or more, 20 to 100 kHz. The unit's own sheet governs." [NemaEnvelope FhwaHandbook];
    }
}

/// What a detector unit tunes to, at its terminals.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// Least inductance, µH.
    pub inductance_min_uh: f64,
    /// Greatest inductance, µH.
    pub inductance_max_uh: f64,
    /// Least quality factor.
    pub quality_factor_min: f64,
    /// Least drive frequency, kHz.
    pub frequency_min_khz: f64,
    /// Greatest drive frequency, kHz.
    pub frequency_max_khz: f64,
}

impl DetectorEnvelope {
    /// The figures of the envelope. 50-700 µH and Q ≥ 5 by the NEMA standards (from memory); 20-100 kHz a neutral part of
    /// the 10-200 kHz that the FHWA handbook gives for units in general.
    pub fn limits(self) -> Limits {
        match self {
            Self::StandardMinimum => Limits {
                inductance_min_uh: 50.0,
                inductance_max_uh: 700.0,
                quality_factor_min: 5.0,
                frequency_min_khz: 20.0,
                frequency_max_khz: 100.0,
            },
        }
    }
}

/// The greatest DC resistance of loop and lead-in that one agency accepts, ohm (City of Everett special provisions).
pub const RESISTANCE_LIMIT_OHM: f64 = 5.0;
/// The ratio of loop to lead-in inductance that a design should reach (FHWA handbook practice, from memory).
pub const LOOP_TO_LEAD_IN: f64 = 2.0;
/// How far an installed loop strays from the computed inductance, as a share: packing, wire and slot. Computed from the
/// spread of pitch and wire.
pub const AS_BUILT_SPREAD: f64 = 0.05;
/// The share of the self-resonant frequency above which the apparent inductance misleads. A choice made here.
pub const RESONANCE_SHARE: f64 = 0.3;
/// The greatest number of turns that the sizing tries. A choice made here.
pub const MOST_TURNS: u32 = 8;
/// How often the change should be the threshold, at the least. A choice made here: pavement, age and weather take their part.
pub const LEAST_TIMES_THRESHOLD: f64 = 2.0;
/// The finest step of the NEMA sensitivity classes, percent (from memory): a finer threshold must stand on the unit's sheet.
pub const FINEST_CLASS_PERCENT: f64 = 0.13;
