//! The turns of a designed loop: what other counts measure, and what a turn that is closed on itself takes.

use std::f64::consts::TAU;

use crate::calculation::input::ResolvedLoop;
use crate::physics::conductor;
use crate::physics::winding::Winding;

/// Turns beyond the design that a wrong count may have.
const MAX_EXTRA_TURNS: u32 = 2;

/// The turns of a designed loop.
pub struct DesignedTurns {
    /// How many there are.
    pub count: u32,
    /// Inductance over that of the sound coil, by number of turns.
    pub ladder: Vec<f64>,
    /// Each turn closed on itself.
    pub shorted: Vec<ShortedCoil>,
    /// Inductance of the sound coil as computed, henry.
    pub computed: f64,
}

impl DesignedTurns {
    /// The turns of a loop at a frequency and a temperature of the wire.
    pub fn new(coil: &ResolvedLoop, frequency: f64, celsius: f64) -> Self {
        let winding = coil.winding();
        let skin = conductor::skin_effect(winding.wire_radius, frequency, celsius);
        let ladder = inductance_ladder(&winding, skin.internal_factor, coil.turns + MAX_EXTRA_TURNS);
        let turn_resistance = winding.turn_length()
            * conductor::dc_resistance_per_metre(coil.wire.area_m2(), celsius)
            * skin.resistance_ratio;
        let computed = ladder[coil.turns as usize];
        Self {
            count: coil.turns,
            shorted: close_each_turn(&ladder, coil.turns, turn_resistance, frequency),
            ladder: ladder.into_iter().map(|rung| rung / computed).collect(),
            computed,
        }
    }
}

/// A coil of which some turns are closed on themselves.
#[derive(Clone, Copy, Debug)]
pub struct ShortedCoil {
    /// What is left of the inductance, henry.
    pub inductance: f64,
    /// How many turns are out of the circuit.
    pub turns: u32,
    /// Loss that the closed turns add to the circuit at this frequency, as a multiple of the resistance of one turn.
    pub added_loss: f64,
}

/// Inductances of the first turns of a winding, henry: item n has n turns. Everything else about its turns follows.
pub fn inductance_ladder(winding: &Winding, internal_factor: f64, max_turns: u32) -> Vec<f64> {
    let rung = |turns| if turns == 0 { 0.0 } else { Winding { turns, ..*winding }.inductance(internal_factor) };
    (0..=max_turns).map(rung).collect()
}

/// The coil with one turn closed, for each turn that it may be.
///
/// With `M` between that turn and the others, `L₁` and `R₁` its own, Lᵣ of the others: L = Lᵣ − ω²M²L₁/(R₁² + ω²L₁²), which at a unit's
/// frequency is Lᵣ − M²/L₁ and far below it no change. M(k) of two turns k apart is half the second difference of the
/// ladder. Source: circuit theory. A quadrupole's turns are taken as if evenly stacked.
///
/// Worked number: 6 × 6 ft, 3 turns of 14 AWG at 0.150 in, 76.97 µH: 16.1 µH with an outer turn closed, 11.1 µH with the
/// middle one.
fn close_each_turn(ladder: &[f64], turns: u32, turn_resistance: f64, frequency: f64) -> Vec<ShortedCoil> {
    let turns = turns as usize;
    let apart = |k: usize| 0.5 * (ladder[k + 1] - 2.0 * ladder[k] + ladder[k - 1]);
    let (own, omega) = (ladder[1], TAU * frequency);
    let closed = |turn: usize| {
        let mutual: f64 = (0..turns).filter(|other| *other != turn).map(|other| apart(other.abs_diff(turn))).sum();
        let rest = ladder[turns] - own - 2.0 * mutual;
        // ω²M²/(R₁² + ω²L₁²): what the closed turn transforms into the circuit.
        let transformed = (omega * mutual).powi(2) / (turn_resistance.powi(2) + (omega * own).powi(2));
        ShortedCoil { inductance: (rest - transformed * own).max(0.0), turns: 1, added_loss: transformed }
    };
    (0..turns).map(closed).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::winding::WindingShape;

    fn test_loop() -> Winding {
        Winding {
            shape: WindingShape::Rectangle,
            along: 1.8288,
            across: 1.8288,
            corner_cut: 0.0,
            turns: 3,
            pitch: 0.15 * 0.0254,
            wire_radius: 0.8139e-3,
        }
    }

    #[test]
    fn a_closed_turn_takes_most_of_three_turns() {
        // By hand from Grover's coaxial rectangles: L₁ 10.524, M(1) 7.903, M(2) 6.892 µH.
        let ladder = inductance_ladder(&test_loop(), 0.25, 3);
        let found: Vec<_> = close_each_turn(&ladder, 3, 0.06, 50e3).iter().map(|coil| coil.inductance * 1e6).collect();
        for (found, expected) in found.iter().zip([16.05, 11.09, 16.05]) {
            assert!((found - expected).abs() < 0.03, "{found} against {expected}");
        }
    }

    #[test]
    fn far_below_its_corner_frequency_a_closed_turn_is_merely_missing() {
        let ladder = inductance_ladder(&test_loop(), 0.25, 3);
        let slow = close_each_turn(&ladder, 3, 0.06, 1.0);
        assert!((slow[0].inductance / ladder[2] - 1.0).abs() < 1e-4);
    }
}
