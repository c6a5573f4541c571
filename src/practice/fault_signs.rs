//! What people notice of a fault, how much each sign weighs, and how each fault shows in the tests that need no meter.
//!
//! All of it is a choice made here after common practice, for no public statistics exist. It decides only where readings do not.

use super::faults::{FaultManner, LoopFault};
use super::sources::sourced_vocabulary;
use crate::vocabulary::Vocabulary;

sourced_vocabulary! {
    /// What people notice.
    Observation {
        FaultAfterRain "fault_after_rain" "Fault after rain" "The fault comes with rain and goes as the ground dries." [CommonPractice];
        FaultInFrost "fault_in_frost" "Fault in frost" "The fault comes with frost." [CommonPractice];
        StuckInDetect "stuck_in_detect" "Stuck in detect" "The output stays on with nothing on the loop." [CommonPractice];
        NeverDetects "never_detects" "Never detects" "The output never switches, whatever stands on the loop." [CommonPractice];
        Intermittent "intermittent" "Intermittent" "The fault comes and goes without an evident cause." [CommonPractice];
        DetectsTheGate "detects_the_gate" "Detects the gate" "The output switches as the gate moves." [CommonPractice];
        DetectsNextLane "detects_next_lane" "Detects the next lane" "The output switches with traffic in another lane or on another loop." [CommonPractice];
        Drifts "drifts" "Drifts" "The unit retunes often, or its reading wanders." [CommonPractice];
        FaultWhenPavementFlexes "fault_when_pavement_flexes" "Fault when the pavement flexes" "The fault comes as a heavy vehicle loads the pavement, or as wires are moved." [CommonPractice];
        DropsHighVehicles "drops_high_vehicles" "Drops high vehicles" "The output lets go under trucks and others that sit high, or never sees them, while cars are seen." [CommonPractice];
        MissesTwoWheelers "misses_two_wheelers" "Misses two-wheelers" "Motorcycles and bicycles are not seen, while cars are." [CommonPractice];
        StaysOnAfterPowerUp "stays_on_after_power_up" "Stays on after power-up" "The output stays on from the moment at which the unit is switched on or reset." [CommonPractice];
        MissesAfterPowerUp "misses_after_power_up" "Misses after power-up" "Vehicles are missed since the unit was switched on or reset: one that stood on the loop then is learned as empty." [CommonPractice];
        NeverCloses "never_closes" "Never closes" "The gate or barrier stays open, as if something always stood in its way." [CommonPractice];
    }
}

/// How often a fault shows in each test that needs no meter, 0 to 1.
#[derive(Clone, Copy, Debug)]
pub struct FaultSigns {
    /// It goes while the other units and channels nearby are switched off.
    pub neighbours_off: f64,
    /// The resistance jumps while the pavement is loaded and wires are moved.
    pub load: f64,
    /// A search round the loop finds metal that was not there before.
    pub metal: f64,
    /// A look at the settings finds something wrong.
    pub settings: f64,
    /// The unit's own reading follows the gate with the loops connected.
    pub gate: f64,
    /// A look at arresters and input finds damage by a surge.
    pub surge: f64,
    /// It goes when a unit that is known to be good takes the place of this one.
    pub another_unit: f64,
    /// It goes when the unit is restarted with its loops empty.
    pub restart: f64,
    /// The wires that are counted in an opened slot are not those of the record.
    pub count: f64,
    /// Of drives over each loop: all are seen as they should be, another channel answers, a vehicle is missed. Sums to 1.
    pub driven_over: [f64; 3],
}

impl FaultSigns {
    /// How often each test shows what has nothing to do with it: people err.
    const RARE: Self = Self {
        neighbours_off: 0.03,
        load: 0.03,
        metal: 0.05,
        settings: 0.01,
        gate: 0.02,
        surge: 0.01,
        another_unit: 0.02,
        restart: 0.03,
        count: 0.02,
        driven_over: [1.0, 0.0, 0.0],
    };
}

impl LoopFault {
    /// How much more often (above 1) or less often (below 1) each observation is made with this fault than in all call-backs, in the
    /// order of [`Observation::ALL`]. 6 and 8 mark the classic sign of a fault, 2 to 4 a usual one, 1 no bearing, below that a sign that
    /// hardly fits. Choices made here.
    #[rustfmt::skip]
    fn observation_weights(self) -> [f64; Observation::ALL.len()] {
        match self {
            // Rain, frost, stuck, never, intermittent; gate, lane, drifts, flexes; high, two-wheelers; on, misses after power-up; closes.
            Self::InsulationBreach =>    [6.0, 2.0, 3.0, 0.5, 2.0,  0.3, 0.4, 3.0, 2.0,  0.7, 0.7,  1.5, 0.7,  3.0],
            Self::WetSplice =>           [6.0, 2.0, 3.0, 0.5, 2.0,  0.3, 0.4, 3.0, 1.0,  0.7, 0.7,  1.5, 0.7,  3.0],
            Self::BrokenConductor =>     [0.7, 3.0, 2.0, 3.0, 2.0,  0.1, 0.2, 0.5, 5.0,  0.3, 0.3,  3.0, 0.7,  2.0],
            Self::TornWire =>            [2.0, 2.0, 2.5, 3.0, 1.5,  0.1, 0.2, 0.7, 5.0,  0.3, 0.3,  3.0, 0.7,  2.5],
            Self::HighResistanceJoint => [1.5, 2.0, 1.5, 1.0, 4.0,  0.3, 0.4, 2.0, 4.0,  1.0, 1.0,  1.0, 0.7,  1.5],
            Self::ShortedTurn =>         [1.0, 1.5, 1.5, 2.5, 1.5,  0.3, 0.3, 1.0, 3.0,  3.0, 2.0,  1.0, 0.7,  1.0],
            Self::WrongTurnCount =>      [0.3, 0.3, 0.5, 1.5, 0.3,  0.7, 1.0, 0.3, 0.3,  2.0, 2.0,  0.7, 0.5,  0.5],
            Self::SwappedPair =>         [0.3, 0.3, 0.7, 2.5, 0.3,  0.7, 6.0, 0.3, 0.3,  1.0, 1.0,  0.7, 0.5,  1.5],
            Self::SteelNearby =>         [0.3, 0.3, 1.0, 1.5, 0.5,  8.0, 0.7, 1.0, 0.7,  4.0, 2.0,  0.7, 0.5,  1.5],
            Self::OutsideEnvelope =>     [0.3, 0.3, 1.0, 3.0, 1.0,  0.5, 0.4, 1.5, 0.3,  1.0, 1.0,  3.0, 1.0,  1.5],
            Self::DetectorUnit =>        [0.4, 0.8, 2.0, 2.5, 1.5,  0.5, 0.5, 2.0, 0.3,  0.7, 0.7,  2.0, 1.5,  2.0],
            Self::Settings =>            [0.2, 0.2, 1.5, 1.5, 0.5,  1.5, 3.0, 0.5, 0.3,  6.0, 6.0,  3.0, 3.0,  2.0],
            Self::SurgeDamage =>         [1.0, 0.3, 2.0, 2.5, 1.0,  0.3, 0.3, 1.5, 0.3,  0.5, 0.5,  2.5, 1.5,  2.0],
            Self::Harness =>             [1.0, 1.0, 1.5, 2.5, 3.0,  0.3, 0.5, 1.5, 0.5,  0.3, 0.3,  2.0, 0.7,  2.0],
            Self::Crosstalk =>           [0.3, 0.3, 1.0, 0.3, 3.0,  1.0, 6.0, 1.5, 0.5,  0.5, 0.5,  0.7, 0.5,  1.5],
            // A two-wheeler in the blind strip, a vehicle that was learned as empty and another device that holds the gate are no faults.
            Self::None =>                [0.2, 0.2, 0.2, 0.2, 0.3,  0.3, 0.3, 0.3, 0.2,  0.3, 1.0,  0.3, 3.0,  1.0],
        }
    }

    /// How it shows in the tests that need no meter.
    pub fn signs(self, manner: FaultManner) -> FaultSigns {
        let driven_over = match manner {
            FaultManner::Always => self.driven_over(),
            FaultManner::WhenWet | FaultManner::WithTheGate => [0.88, 0.02, 0.10],
            FaultManner::UnderLoad => [0.68, 0.02, 0.30],
        };
        let signs = FaultSigns { driven_over, ..self.signs_at_rest() };
        match manner {
            FaultManner::Always | FaultManner::WhenWet => signs,
            FaultManner::UnderLoad => FaultSigns { load: 0.85, ..signs },
            // A leaf is in its place: nobody finds it as metal that was not there.
            FaultManner::WithTheGate => FaultSigns { gate: 0.97, metal: FaultSigns::RARE.metal, ..signs },
        }
    }

    fn signs_at_rest(self) -> FaultSigns {
        const RARE: FaultSigns = FaultSigns::RARE;
        match self {
            Self::InsulationBreach | Self::WetSplice | Self::Harness => FaultSigns { restart: 0.2, ..RARE },
            Self::BrokenConductor | Self::TornWire | Self::ShortedTurn => FaultSigns { load: 0.2, ..RARE },
            Self::HighResistanceJoint => FaultSigns { load: 0.5, restart: 0.2, ..RARE },
            Self::WrongTurnCount => FaultSigns { count: 0.97, ..RARE },
            Self::SwappedPair => FaultSigns { neighbours_off: 0.4, ..RARE },
            // A leaf always changes the loop's inductance a little.
            Self::SteelNearby => FaultSigns { metal: 0.85, gate: 0.3, ..RARE },
            Self::OutsideEnvelope => FaultSigns { another_unit: 0.15, ..RARE },
            Self::DetectorUnit => FaultSigns { another_unit: 0.97, surge: 0.05, restart: 0.3, ..RARE },
            // A step that is too fine sees the leaf, too.
            Self::Settings => FaultSigns { settings: 0.98, gate: 0.3, another_unit: 0.7, restart: 0.3, ..RARE },
            Self::SurgeDamage => FaultSigns { surge: 0.95, another_unit: 0.6, ..RARE },
            Self::Crosstalk => FaultSigns { neighbours_off: 0.95, another_unit: 0.15, restart: 0.3, ..RARE },
            // What was learned as empty is learned anew.
            Self::None => FaultSigns { restart: 0.8, ..RARE },
        }
    }

    fn driven_over(self) -> [f64; 3] {
        match self {
            Self::None => [0.96, 0.01, 0.03],
            Self::SwappedPair => [0.04, 0.90, 0.06],
            Self::Crosstalk => [0.60, 0.30, 0.10],
            Self::Settings => [0.25, 0.05, 0.70],
            Self::InsulationBreach | Self::WetSplice | Self::HighResistanceJoint => [0.45, 0.02, 0.53],
            Self::WrongTurnCount | Self::SteelNearby => [0.40, 0.02, 0.58],
            Self::OutsideEnvelope | Self::Harness => [0.20, 0.02, 0.78],
            Self::DetectorUnit | Self::SurgeDamage | Self::ShortedTurn => [0.15, 0.02, 0.83],
            Self::BrokenConductor | Self::TornWire => [0.04, 0.02, 0.94],
        }
    }
}

impl Observation {
    /// How much more often (above 1) or less often (below 1) this is noticed with a fault that shows so than in all call-backs. What was
    /// not noticed counts for nothing, as nobody may have looked.
    pub fn weight_for(self, fault: LoopFault, manner: FaultManner) -> f64 {
        let weight = fault.observation_weights()[self as usize];
        weight
            * match (self, manner) {
                (Self::FaultAfterRain, FaultManner::WhenWet) => 2.0,
                (Self::FaultWhenPavementFlexes | Self::Intermittent, FaultManner::UnderLoad)
                | (Self::DetectsTheGate | Self::NeverCloses, FaultManner::WithTheGate) => 1.5,
                // What is there at all times is seldom noticed of a fault that comes and goes, and little else of a leaf that passes.
                (_, FaultManner::WithTheGate)
                | (
                    Self::NeverDetects
                    | Self::DropsHighVehicles
                    | Self::MissesTwoWheelers
                    | Self::StaysOnAfterPowerUp
                    | Self::MissesAfterPowerUp,
                    FaultManner::WhenWet | FaultManner::UnderLoad,
                ) => 0.3,
                _ => 1.0,
            }
    }

    /// Whether it tells of a vehicle that the unit may have learned as empty.
    pub fn follows_power_up(self) -> bool {
        matches!(self, Self::StaysOnAfterPowerUp | Self::MissesAfterPowerUp)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_observation_speaks_for_some_fault_and_few_against_none() {
        assert!(Observation::ALL.iter().enumerate().all(|(index, observation)| *observation as usize == index));
        for observation in Observation::ALL {
            let weights = LoopFault::ALL.iter().map(|fault| observation.weight_for(*fault, FaultManner::Always));
            assert!(weights.fold(0.0, f64::max) >= 3.0, "{observation:?}");
            let harmless = observation.weight_for(LoopFault::None, FaultManner::Always);
            let has_harmless_cause =
                [Observation::MissesTwoWheelers, Observation::MissesAfterPowerUp, Observation::NeverCloses];
            assert!(harmless <= 0.3 || has_harmless_cause.contains(observation), "{observation:?}");
        }
    }

    #[test]
    fn what_is_seen_when_driven_over_sums_to_one() {
        for fault in LoopFault::ALL {
            for manner in [FaultManner::Always, FaultManner::WhenWet, FaultManner::UnderLoad, FaultManner::WithTheGate]
            {
                let sum: f64 = fault.signs(manner).driven_over.iter().sum();
                assert!((sum - 1.0).abs() < 1e-12, "{fault:?}: {sum}");
            }
        }
    }
}
