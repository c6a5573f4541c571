//! The hypotheses: every fault in each of its variants, with what it predicts for every meter.

use super::meters::{MeterKind, MeterPredictions, Prediction, ReadingBand};
use super::sound_loop::{DesignedTurns, LoopChange, SoundLoopModel};
use crate::calculation::report::Statement;
use crate::practice::faults::{FaultLocation, LoopFault, ReadingPlace};
use crate::vocabulary::Vocabulary;

/// A fault in one of its variants.
#[derive(Clone, Debug)]
pub struct FaultHypothesis {
    /// The fault.
    pub fault: LoopFault,
    /// The variant, where the fault has several.
    pub variant: Option<Statement>,
    /// Where it sits.
    pub location: FaultLocation,
    /// How often the fault takes this variant; over the variants of a fault they sum to 1. Choices made here.
    pub share: f64,
    /// What the meters show.
    predictions: MeterPredictions,
}

impl FaultHypothesis {
    /// What it predicts for a meter.
    pub fn prediction(&self, meter: MeterKind) -> &Prediction {
        self.predictions.of(meter)
    }
}

/// The hypotheses for readings taken at one place.
pub struct HypothesisSet {
    /// Every fault in each of its variants, in the order of [`LoopFault::ALL`].
    pub hypotheses: Vec<FaultHypothesis>,
    /// What the meters show of a sound loop.
    pub sound: MeterPredictions,
}

impl HypothesisSet {
    /// The hypotheses for readings taken at `taken_at`.
    pub fn new(sound: &SoundLoopModel, taken_at: ReadingPlace) -> Self {
        let mut builder = HypothesisBuilder { sound, measured_from: taken_at.measures_from(), hypotheses: Vec::new() };
        for fault in LoopFault::ALL {
            builder.add_fault(*fault);
        }
        Self { hypotheses: builder.hypotheses, sound: sound.predictions(&LoopChange::NOTHING) }
    }
}

/// Insulation that leaks, megohm: from a dead earth to the reading below which engineering judgement calls it poor.
const LEAK: Prediction =
    Prediction { band: ReadingBand { low: 0.001, high: 10.0, relative: 0.3, absolute: 0.0 }, over_range: 0.005 };
/// Resistance of a parted wire, ohm: mostly over range, else what a damp gap lets through.
const PARTED: Prediction =
    Prediction { band: ReadingBand { low: 300.0, high: 1e7, relative: 0.3, absolute: 0.0 }, over_range: 0.85 };
/// What meters of inductance show of an open circuit, µH.
const OPEN_INDUCTANCE: Prediction =
    Prediction { band: ReadingBand { low: 5_000.0, high: 1e5, relative: 0.3, absolute: 0.0 }, over_range: 0.7 };
/// Quality factor of an open circuit.
const OPEN_QUALITY: Prediction =
    Prediction { band: ReadingBand { low: 0.0, high: 2.0, relative: 0.2, absolute: 0.3 }, over_range: 0.3 };
/// Added resistance of a bad joint, ohm: low, high, share. From what an ohmmeter barely shows to nearly open.
const JOINT_RESISTANCES: [(f64, f64, f64); 5] =
    [(0.3, 1.0, 0.25), (1.0, 3.0, 0.3), (3.0, 10.0, 0.2), (10.0, 30.0, 0.15), (30.0, 300.0, 0.1)];
/// Wrong counts: turns more or less, share.
const WRONG_COUNTS: [(i32, f64); 4] = [(-1, 0.4), (1, 0.35), (-2, 0.1), (2, 0.15)];

/// Collects the hypotheses for readings taken at one place.
struct HypothesisBuilder<'a> {
    sound: &'a SoundLoopModel,
    /// Faults nearer to the unit are not measured.
    measured_from: FaultLocation,
    hypotheses: Vec<FaultHypothesis>,
}

impl HypothesisBuilder<'_> {
    fn add(
        &mut self,
        fault: LoopFault,
        variant: Option<Statement>,
        location: FaultLocation,
        share: f64,
        predictions: MeterPredictions,
    ) {
        let is_measured = location >= self.measured_from;
        let predictions = if is_measured { predictions } else { self.sound.predictions(&LoopChange::NOTHING) };
        self.hypotheses.push(FaultHypothesis { fault, variant, location, share, predictions });
    }

    /// A variant that changes inductance, resistance or quality and leaves the insulation tight.
    fn add_change(
        &mut self,
        fault: LoopFault,
        variant: Option<Statement>,
        location: FaultLocation,
        share: f64,
        change: &LoopChange,
    ) {
        self.add(fault, variant, location, share, self.sound.predictions(change));
    }

    /// A fault that meters do not show.
    fn add_unmeasurable(&mut self, fault: LoopFault, location: FaultLocation) {
        self.add_change(fault, None, location, 1.0, &LoopChange::NOTHING);
    }

    fn add_leak(&mut self, fault: LoopFault, variant: Option<Statement>, location: FaultLocation, share: f64) {
        let predictions = MeterPredictions { insulation: LEAK, ..self.sound.predictions(&LoopChange::NOTHING) };
        self.add(fault, variant, location, share, predictions);
    }

    fn add_parted(&mut self, fault: LoopFault, variant: Statement, location: FaultLocation, share: f64) {
        let predictions = MeterPredictions {
            resistance: PARTED,
            inductance: OPEN_INDUCTANCE,
            quality: OPEN_QUALITY,
            ..self.sound.predictions(&LoopChange::NOTHING)
        };
        self.add(fault, Some(variant), location, share, predictions);
    }

    /// Adds every variant of a fault.
    fn add_fault(&mut self, fault: LoopFault) {
        match fault {
            LoopFault::InsulationBreach => {
                self.add_leak(fault, Some(Statement::new("faults-in-loop")), FaultLocation::Loop, 0.7);
                self.add_leak(fault, Some(Statement::new("faults-in-lead-in")), FaultLocation::LeadIn, 0.3);
            }
            LoopFault::WetSplice => self.add_leak(fault, None, FaultLocation::Splice, 1.0),
            LoopFault::BrokenConductor => {
                self.add_parted(fault, Statement::new("faults-in-loop"), FaultLocation::Loop, 0.6);
                self.add_parted(fault, Statement::new("faults-in-lead-in-or-splice"), FaultLocation::LeadIn, 0.4);
            }
            LoopFault::HighResistanceJoint => self.add_bad_joints(),
            LoopFault::ShortedTurn => self.add_shorts(),
            LoopFault::WrongTurnCount => match &self.sound.turns {
                Some(turns) => self.add_wrong_counts(turns),
                None => self.add_wrong_counts_without_design(),
            },
            LoopFault::SwappedPair => {
                // Loops on one site are alike within a factor of two or so.
                let other = LoopChange { coil_uh: (0.4, 2.5), coil_ohm: (0.5, 2.0), ..LoopChange::NOTHING };
                let variant = Some(Statement::new("faults-other-loop-connected"));
                self.add_change(fault, variant, FaultLocation::LeadIn, 0.7, &other);
                let variant = Statement::new("faults-wires-of-two-loops-connected");
                self.add_parted(fault, variant, FaultLocation::LeadIn, 0.3);
            }
            LoopFault::SteelNearby => {
                // Mesh as a mirror takes about a quarter at 4 in, a plate on the loop more; below 5 % it hides in the
                // as-built spread.
                let steel = LoopChange { coil_uh: (0.55, 0.95), quality: (0.3, 0.9), ..LoopChange::NOTHING };
                self.add_change(fault, None, FaultLocation::Beyond, 1.0, &steel);
            }
            LoopFault::OutsideEnvelope => self.add_unmeasurable(fault, FaultLocation::Loop),
            LoopFault::DetectorUnit => self.add_unmeasurable(fault, FaultLocation::Unit),
            LoopFault::Harness => self.add_unmeasurable(fault, FaultLocation::Harness),
            LoopFault::Crosstalk | LoopFault::None => self.add_unmeasurable(fault, FaultLocation::Beyond),
        }
    }

    fn add_bad_joints(&mut self) {
        for (location, variant, part) in [
            (FaultLocation::Splice, Statement::new("faults-at-splice"), 0.8),
            (FaultLocation::LeadIn, Statement::new("faults-along-lead-in"), 0.2),
        ] {
            for (low, high, share) in JOINT_RESISTANCES {
                let change = LoopChange { added_ohm: (low, high), ..LoopChange::NOTHING };
                let variant = Some(variant.clone());
                self.add_change(LoopFault::HighResistanceJoint, variant, location, part * share, &change);
            }
        }
    }

    /// Wires that touch: turn to turn, across the loop's tails, or along the pair.
    fn add_shorts(&mut self) {
        let fault = LoopFault::ShortedTurn;
        match &self.sound.turns {
            Some(turns) if turns.count > 1 => {
                let count = f64::from(turns.count);
                let variant = Statement::new("faults-turn-of-count-closed").count("turns", turns.count.into());
                for coil in &turns.shorted {
                    let (left, wire) = (coil.inductance / turns.computed, 1.0 - f64::from(coil.turns) / count);
                    let change = LoopChange {
                        coil_uh: (left, left),
                        coil_ohm: (wire, wire),
                        added_loss: coil.added_loss / count,
                        ..LoopChange::NOTHING
                    };
                    self.add_change(fault, Some(variant.clone()), FaultLocation::Loop, 0.7 / count, &change);
                }
            }
            Some(_) => {
                let change = LoopChange { coil_uh: (0.0, 0.5), coil_ohm: (0.0, 0.9), ..LoopChange::NOTHING };
                self.add_change(fault, Some(Statement::new("faults-turn-bridged")), FaultLocation::Loop, 0.7, &change);
            }
            // Of two to five turns, with or without their lead-in.
            None => {
                let change =
                    LoopChange { coil_uh: (0.2, 0.65), coil_ohm: (0.5, 0.9), added_loss: 0.4, ..LoopChange::NOTHING };
                let variant = Some(Statement::new("faults-turn-closed"));
                self.add_change(fault, variant, FaultLocation::Loop, 0.7, &change);
            }
        }
        let bridged = LoopChange { coil_uh: (0.0, 0.0), coil_ohm: (0.0, 0.0), ..LoopChange::NOTHING };
        let variant = Some(Statement::new("faults-bridged-at-tails"));
        self.add_change(fault, variant, FaultLocation::Loop, 0.15, &bridged);
        for lead_in in [0.0, 0.33, 0.67] {
            let change = LoopChange { lead_in, ..bridged };
            let variant = Some(Statement::new("faults-bridged-along-lead-in"));
            self.add_change(fault, variant, FaultLocation::LeadIn, 0.05, &change);
        }
    }

    /// Another number of turns than the design has.
    fn add_wrong_counts(&mut self, turns: &DesignedTurns) {
        let counts = WRONG_COUNTS.iter().filter_map(|(extra, share)| {
            turns.count.checked_add_signed(*extra).filter(|count| *count > 0).map(|count| (count, share))
        });
        let counts: Vec<_> = counts.collect();
        let sum: f64 = counts.iter().map(|(_, share)| *share).sum();
        for (count, share) in counts {
            let inductance = turns.ladder[count as usize];
            let wire = f64::from(count) / f64::from(turns.count);
            let change =
                LoopChange { coil_uh: (inductance, inductance), coil_ohm: (wire, wire), ..LoopChange::NOTHING };
            let variant = Statement::new("faults-wrong-turns")
                .count("turns", count.into())
                .count("designed_turns", turns.count.into());
            self.add_change(LoopFault::WrongTurnCount, Some(variant), FaultLocation::Loop, share / sum, &change);
        }
    }

    /// A turn less or more of two to five, by N(N + 1) and the wire, with or without their lead-in.
    fn add_wrong_counts_without_design(&mut self) {
        for (variant, inductance, wire) in [
            (Statement::new("faults-turns-too-few"), (0.35, 0.75), (0.5, 0.85)),
            (Statement::new("faults-turns-too-many"), (1.3, 2.5), (1.15, 1.5)),
        ] {
            let change = LoopChange { coil_uh: inductance, coil_ohm: wire, ..LoopChange::NOTHING };
            let variant = Some(variant);
            self.add_change(LoopFault::WrongTurnCount, variant, FaultLocation::Loop, 0.5, &change);
        }
    }
}
