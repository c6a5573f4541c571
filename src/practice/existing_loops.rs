//! Loops that are there already: how usual each turn count and wire is, and whether to keep one.
//!
//! Shares are choices made here after common practice; they decide only where readings do not.

use super::sources::sourced_vocabulary;
use super::wires::WireGauge;

sourced_vocabulary! {
    /// What to do with a loop that is there.
    ExistingLoopVerdict {
        Keep "keep" "Keep it" "It measures sound, the unit tunes to it, and every vehicle makes enough." [CommonPractice OwnChoice];
        KeepWithCare "keep_with_care" "Keep it with care" "It may serve, and something is thin, not measured or not proven: do what the answer names before you rely on it." [CommonPractice OwnChoice];
        Recut "recut" "Cut a new one" "It is faulty, the unit cannot tune to it, or a vehicle is not seen." [CommonPractice OwnChoice];
    }
}

sourced_vocabulary! {
    /// How a loop in the ground stands by its readings.
    LoopCondition {
        Sound "sound" "Sound" "Insulation is good, and the readings are those of a usual loop." [CommonPractice];
        Doubtful "doubtful" "Doubtful" "Insulation is only fair, or a reading fits no usual loop." [CommonPractice OwnChoice];
        Faulty "faulty" "Faulty" "It is open, or leaks to earth." [CommonPractice OwnChoice];
        NotMeasured "not_measured" "Not measured" "Insulation, resistance or inductance was not read." [CommonPractice];
    }
}

sourced_vocabulary! {
    /// Whether a unit tunes to a loop in the ground.
    TuningFit {
        Tunes "tunes" "Tunes" "What was measured lies inside what the unit tunes to, with room for the meter's error." [NemaEnvelope OwnChoice];
        Marginal "marginal" "Marginal" "It lies at the edge of what the unit tunes to, or was not measured." [NemaEnvelope OwnChoice];
        DoesNotTune "does_not_tune" "Does not tune" "It lies outside what the unit tunes to." [NemaEnvelope OwnChoice];
    }
}

/// The most turns that a loop in the ground is taken to have.
pub const MAX_EXISTING_TURNS: u32 = 10;

/// How often steel lies below a loop of which nobody knows. A choice made here.
pub const STEEL_SHARE: f64 = 0.15;

/// How usual a turn count is: two to four at openings, one on large loops, more on small ones.
pub fn turns_share(turns: u32) -> f64 {
    match turns {
        1 | 7 => 0.06,
        2 | 4 => 0.18,
        3 => 0.24,
        5 => 0.12,
        6 => 0.08,
        8 => 0.05,
        _ => 0.015,
    }
}

/// How usual a wire is in the ground. Metric sizes are next to their neighbours of AWG, and a meter cannot tell them apart.
pub fn wire_share(wire: WireGauge) -> f64 {
    match wire {
        WireGauge::Awg14 => 0.5,
        WireGauge::Awg16 | WireGauge::Awg18 => 0.15,
        WireGauge::Awg12 => 0.1,
        WireGauge::Awg20 => 0.06,
        WireGauge::Awg10 => 0.04,
        WireGauge::SquareMillimetre1 | WireGauge::SquareMillimetre1Half | WireGauge::SquareMillimetre2Half => 0.0,
    }
}

/// From this insulation on a loop counts as sound, megohm (Caltrans, from memory).
pub const SOUND_FROM_MEGOHM: f64 = 100.0;
/// Below this insulation it is faulty, megohm. Engineering judgement.
pub const FAULTY_BELOW_MEGOHM: f64 = 1.0;
/// From this likelihood on a wire is named beside the turns. A choice made here.
pub const WIRE_NAMED_FROM: f64 = 0.8;
/// How far the inductance at the terminals may be from what a hand meter shows, as a share: two standard deviations of one of 5 %, and the
/// weather. A choice made here.
pub const TUNING_ALLOWANCE: f64 = 0.06;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::vocabulary::Vocabulary;

    #[test]
    fn shares_sum_to_one() {
        let turns: f64 = (1..=MAX_EXISTING_TURNS).map(turns_share).sum();
        let wires: f64 = WireGauge::ALL.iter().map(|wire| wire_share(*wire)).sum();
        assert!((turns - 1.0).abs() < 1e-12 && (wires - 1.0).abs() < 1e-12, "{turns} {wires}");
    }
}
