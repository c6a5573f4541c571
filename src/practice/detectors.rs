//! The envelopes of detector units: what they tune to, in public standards.

use super::sources::sourced_vocabulary;

sourced_vocabulary! {
    /// Envelopes that stand in for a unit whose data sheet is not at hand.
    DetectorEnvelope {
        StandardMinimum "standard_minimum" "Standard minimum" "What a unit built to the North American standard tunes at least: 50 to 700 µH with Q of 5 or more, 20 to 100 kHz. The unit's own sheet governs." [NemaEnvelope FhwaHandbook];
    }
}

sourced_vocabulary! {
    /// How several loops come to a detector unit.
    Wiring {
        Separate "separate" "Each on its own channel" "Every loop has its own channel: the rule." [CommonPractice];
        Series "series" "In series on one channel" "The inductances add, and a vehicle over one loop changes the group by less." [CircuitTheory];
        Parallel "parallel" "In parallel on one channel" "The inductance falls, and a vehicle over one loop changes the group by less." [CircuitTheory];
    }
}

sourced_vocabulary! {
    /// What a channel's output does while a vehicle is there.
    OutputMode {
        Presence "presence" "Presence" "The output holds as long as the vehicle is there." [CommonPractice];
        Pulse "pulse" "Pulse" "The output gives one pulse when the vehicle comes." [CommonPractice];
    }
}

sourced_vocabulary! {
    /// What a channel's output does when its loop fails.
    FailureBehaviour {
        Detect "detect" "Detect" "The output goes to detect, as if a vehicle were there." [CommonPractice];
        NoDetect "no_detect" "No detect" "The output goes to no detect, as if nothing were there." [CommonPractice];
    }
}

/// The steps that a unit is taken to have when neither its sheet nor a threshold is given, percent, coarsest first: those of the
/// NEMA sensitivity classes that concern openings (from memory). A finer one must stand on the unit's sheet.
pub const USUAL_STEPS_PERCENT: [f64; 2] = [0.32, FINEST_CLASS_PERCENT];
/// How far the quality factor, an upper bound, should lie over what the unit needs. A choice made here.
pub const QUALITY_MARGIN: f64 = 1.5;
/// The coupling of two loops, as a share, below which units on different channels hardly disturb each other. A choice made here: two
/// loops of 6 x 6 ft about 5 ft apart.
pub const HARMLESS_COUPLING: f64 = 0.005;
/// The separation of two frequencies, as a share, at which coupled units no longer follow each other. A choice made here: half of
/// what one turn more or less brings.
pub const SEPARATE_FREQUENCIES: f64 = 0.1;

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

/// A limit of the envelope gives way to the other one that was sent: a unit is taken to tune from a quarter of its greatest inductance, for
/// from one turn to two it grows fourfold, and to twice its least, for there each turn adds less. A choice made here.
pub const INDUCTANCE_SHARE: f64 = 0.25;
/// The same of frequencies: from half of the greatest, for they go with the root. A choice made here.
pub const FREQUENCY_SHARE: f64 = 0.5;
/// The least factor from the least limit to the greatest, where the greatest was not sent. A choice made here.
pub const LIMIT_FACTOR: f64 = 2.0;

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
/// The greatest number of turns that the sizing tries for the unit's sake; for a vehicle's sake it adds up to two. A choice made here.
pub const MAX_TURNS: u32 = 8;
/// How often the low end of the as-built band should be the least inductance that the unit tunes to. A choice made here: one turn
/// more costs little, and a loop at the edge of the range drifts out of it.
pub const LOW_END_MARGIN: f64 = 1.2;
/// How often the change should be the threshold, at the least. A choice made here: pavement, age and weather take their part.
pub const MIN_TIMES_THRESHOLD: f64 = 2.0;
/// How often the change must be the threshold for its margin to be called thin, and not missing. A choice made here.
pub const THIN_TIMES_THRESHOLD: f64 = 1.5;
/// The finest step of the NEMA sensitivity classes, percent (from memory): a finer threshold must stand on the unit's sheet.
pub const FINEST_CLASS_PERCENT: f64 = 0.13;
