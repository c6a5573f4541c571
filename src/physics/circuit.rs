//! What a lead-in, a second loop and a capacitance make of a loop's inductance.

use super::MU_0;
use std::f64::consts::{PI, TAU};

/// Share of a relative change at the loop that is left at the far end of the lead-in, 0 to 1.
///
/// Both inductances in henry. Exact for inductances in series. Source: circuit theory.
/// Worked number: 77.0 µH behind 100 ft of 0.22 µH/ft, 0.7778.
pub fn share(loop_inductance: f64, lead_in_inductance: f64) -> f64 {
    loop_inductance / (loop_inductance + lead_in_inductance)
}

/// Quality factor ωL/R of a coil: henry, Hz, ohm.
///
/// From the wire's resistance alone it is an upper bound, as pavement and steel add loss. Source:
/// circuit theory. Worked number: 94 µH and 5 Ω at 50 kHz, 5.906.
pub fn quality_factor(inductance: f64, frequency: f64, resistance: f64) -> f64 {
    TAU * frequency * inductance / resistance
}

/// Inductance of a two-wire line in H/m, twisted or not.
///
/// `centre_spacing` of the wires and their bare `wire_diameter` in metres, the spacing at least the
/// diameter. Low frequency: the second term of (μ0/π)·acosh(D/d) + μ0/4π is internal to the wires.
/// Source: textbook formula, from memory. Worked number: 14 AWG at 4.0 mm, 0.719 µH/m
/// (0.219 µH/ft).
pub fn pair_inductance_per_metre(centre_spacing: f64, wire_diameter: f64) -> f64 {
    MU_0 / PI * (centre_spacing / wire_diameter).acosh() + MU_0 / (4.0 * PI)
}

/// Inductance in henry of uncoupled loops in series.
///
/// Source: circuit theory. Worked number: two of 77.0 µH, 154.0 µH.
pub fn series(inductances: &[f64]) -> f64 {
    inductances.iter().sum()
}

/// Inductance in henry of uncoupled loops in parallel, infinite for none.
///
/// Source: circuit theory. Worked number: two of 77.0 µH, 38.5 µH.
pub fn parallel(inductances: &[f64]) -> f64 {
    inductances.iter().map(|l| l.recip()).sum::<f64>().recip()
}

/// Weight of each loop's relative change in that of loops in series: its share of ΣL.
///
/// For changes that are small against 1. Worked number: 80 and 20 µH weigh 0.8 and 0.2.
pub fn series_weights(inductances: &[f64]) -> Vec<f64> {
    let total = series(inductances);
    inductances.iter().map(|l| l / total).collect()
}

/// Weight of each loop's relative change in that of loops in parallel: its share of Σ1/L.
///
/// For changes that are small against 1. Worked number: 80 and 20 µH weigh 0.2 and 0.8.
pub fn parallel_weights(inductances: &[f64]) -> Vec<f64> {
    let total = parallel(inductances);
    inductances.iter().map(|l| total / l).collect()
}

/// Inductance in henry of two coupled loops in series, L₁ + L₂ + 2M.
///
/// `mutual` is signed by how their currents run: for loops side by side it is negative when both go
/// the same way round, see [`Winding::mutual`](super::winding::Winding::mutual); change its sign if
/// one goes round the other way. Source: circuit theory. Worked number: 77 and 77 µH with -2 µH,
/// 150 µH.
pub fn series_pair(first: f64, second: f64, mutual: f64) -> f64 {
    first + second + 2.0 * mutual
}

/// Inductance in henry of two coupled loops in parallel, (L₁L₂ - M²) / (L₁ + L₂ - 2M).
///
/// `mutual` is signed as for [`series_pair`]. Source: circuit theory. Worked number: 77 and 77 µH
/// with -2 µH, 37.5 µH.
pub fn parallel_pair(first: f64, second: f64, mutual: f64) -> f64 {
    (first * second - mutual * mutual) / (first + second - 2.0 * mutual)
}

/// Resonant frequency in Hz of henry and farad, 1/(2π√(LC)).
///
/// Source: Thomson's formula. Worked number: 100 µH and 1 nF, 503.3 kHz.
pub fn resonance(inductance: f64, capacitance: f64) -> f64 {
    (TAU * (inductance * capacitance).sqrt()).recip()
}

/// Inductance in henry that a meter reads at `frequency` Hz when `capacitance` farad lies across
/// the loop: `L / (1 - ω²LC)`.
///
/// Lumped, so valid well below [`resonance`]; it has a pole there and is negative above. Source:
/// circuit theory. Worked number: 100 µH and 1 nF at 100 kHz, 104.11 µH.
pub fn apparent_inductance(inductance: f64, capacitance: f64, frequency: f64) -> f64 {
    let omega = TAU * frequency;
    inductance / (1.0 - omega * omega * inductance * capacitance)
}

/// Relative rise of an oscillator's frequency when its inductance falls by `relative_change`, a
/// fraction below 1: (1 - x)^(-1/2) - 1.
///
/// Source: circuit theory. Worked number: 5 %, a rise of 2.5978 %.
pub fn frequency_shift(relative_change: f64) -> f64 {
    (1.0 - relative_change).sqrt().recip() - 1.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_group_reads_the_weighted_sum_of_small_changes() {
        type Group = (fn(&[f64]) -> f64, fn(&[f64]) -> Vec<f64>);
        let loops = [80e-6, 20e-6, 50e-6];
        let change = 1e-6;
        for (combine, weights) in [(series, series_weights), (parallel, parallel_weights)] as [Group; 2] {
            for (index, weight) in weights(&loops).into_iter().enumerate() {
                let mut changed = loops;
                changed[index] *= 1.0 - change;
                let seen = 1.0 - combine(&changed) / combine(&loops);
                assert!((seen / (weight * change) - 1.0).abs() < 1e-5);
            }
        }
    }

    #[test]
    fn uncoupled_pairs_are_plain_groups() {
        let (first, second) = (80e-6, 20e-6);
        assert_eq!(series_pair(first, second, 0.0), series(&[first, second]));
        let plain = parallel(&[first, second]);
        assert!((parallel_pair(first, second, 0.0) / plain - 1.0).abs() < 1e-15);
    }
}
