//! The hypotheses: every fault in each of its variants, with what it predicts for every meter.

use super::designed_turns::DesignedTurns;
use super::meters::{MeterKind, MeterPredictions, OPEN_FROM_OHM, Prediction, ReadingBand};
use super::sound_loop::{LoopChange, SoundLoopModel};
use crate::calculation::report::Statement;
use crate::practice::faults::{FaultLocation, FaultManner, LoopFault};
use crate::practice::meter_readings::{InsulationState, ReadingPlace};
use crate::vocabulary::Vocabulary;

/// A fault in one of its variants, without what meters show of it.
#[derive(Clone, Debug)]
pub struct FaultForm {
    /// The fault.
    pub fault: LoopFault,
    /// The variant, where the fault has several.
    pub variant: Option<Statement>,
    /// Where it sits.
    pub location: FaultLocation,
    /// When it shows.
    pub manner: FaultManner,
    /// How often the fault takes this variant; over the variants of a fault they sum to 1. Choices made here.
    pub share: f64,
    /// Whether it lets current to earth, when it shows.
    pub leaks: bool,
    /// Whether it opens the circuit, when it shows.
    pub parts: bool,
}

impl FaultForm {
    /// The only variant of a fault.
    fn only(fault: LoopFault, location: FaultLocation) -> Self {
        let (leaks, parts) = (false, false);
        Self { fault, variant: None, location, manner: FaultManner::Always, share: 1.0, leaks, parts }
    }

    /// One of several variants.
    fn variant(fault: LoopFault, variant: Statement, location: FaultLocation, share: f64) -> Self {
        Self { variant: Some(variant), share, ..Self::only(fault, location) }
    }

    fn leaking(self) -> Self {
        Self { leaks: true, ..self }
    }

    fn parted(self) -> Self {
        Self { parts: true, ..self }
    }

    /// The same, showing only so, in a share of the cases.
    fn showing(self, manner: FaultManner, share: f64) -> Self {
        Self { manner, share: share * self.share, ..self }
    }

    /// Whether it leaks in such ground.
    pub fn leaks_in(&self, ground: InsulationState) -> bool {
        self.leaks && self.shows_in(ground)
    }

    fn shows_in(&self, ground: InsulationState) -> bool {
        match self.manner {
            FaultManner::Always => true,
            FaultManner::WhenWet => ground == InsulationState::Wet,
            FaultManner::UnderLoad | FaultManner::WithTheGate => false,
        }
    }
}

/// A fault in one of its variants, with what meters show of it.
#[derive(Clone, Debug)]
pub struct FaultHypothesis {
    /// The fault and its variant.
    pub form: FaultForm,
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
    /// The hypotheses for readings taken at `taken_at`, of insulation in such ground.
    pub fn new(sound: &SoundLoopModel, taken_at: ReadingPlace, ground: InsulationState) -> Self {
        let measured_from = taken_at.measures_from();
        let mut builder = HypothesisBuilder { sound, measured_from, ground, hypotheses: Vec::new() };
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
    Prediction { band: ReadingBand { low: OPEN_FROM_OHM, high: 1e7, relative: 0.3, absolute: 0.0 }, over_range: 0.85 };
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

/// Leaks that show only when wet, of leaks. A choice made here: a nick dries out, and the fault goes as the ground dries.
const LEAKS_WHEN_WET: f64 = 0.3;
/// Breaks, and bad joints, that show only under load. A choice made here.
const BREAKS_UNDER_LOAD: f64 = 0.2;
/// Metal that is a leaf which passes, and takes too little for a meter to show. A choice made here.
const STEEL_IS_LEAF: f64 = 0.4;

/// Collects the hypotheses for readings taken at one place.
struct HypothesisBuilder<'a> {
    sound: &'a SoundLoopModel,
    /// Faults nearer to the unit are not measured.
    measured_from: FaultLocation,
    ground: InsulationState,
    hypotheses: Vec<FaultHypothesis>,
}

impl HypothesisBuilder<'_> {
    /// Adds a variant that changes the loop so when it shows.
    fn add_change(&mut self, form: FaultForm, change: &LoopChange) {
        let shows = form.shows_in(self.ground) && form.location >= self.measured_from;
        let mut predictions = self.sound.predictions(if shows { change } else { &LoopChange::NOTHING });
        if shows && form.leaks {
            predictions.insulation = LEAK;
        }
        if shows && form.parts {
            let reaches_splice = form.location >= FaultLocation::Splice;
            let capacitance = self.sound.open_capacitance(if reaches_splice { (0.95, 1.6) } else { (0.03, 0.95) });
            predictions = MeterPredictions {
                resistance: PARTED,
                inductance: OPEN_INDUCTANCE,
                quality: OPEN_QUALITY,
                capacitance,
                ..predictions
            };
        }
        self.hypotheses.push(FaultHypothesis { form, predictions });
    }

    /// Adds a variant that does nothing but leak or part.
    fn add(&mut self, form: FaultForm) {
        self.add_change(form, &LoopChange::NOTHING);
    }

    /// A leak that shows always, and one that shows when wet.
    fn add_leak(&mut self, form: FaultForm) {
        let form = form.leaking();
        self.add(form.clone().showing(FaultManner::Always, 1.0 - LEAKS_WHEN_WET));
        self.add(form.showing(FaultManner::WhenWet, LEAKS_WHEN_WET));
    }

    /// Adds every variant of a fault.
    fn add_fault(&mut self, fault: LoopFault) {
        use FaultLocation::{Beyond, Harness, LeadIn, Loop, Splice, Unit};
        let variant = |statement, location, share| FaultForm::variant(fault, statement, location, share);
        match fault {
            LoopFault::InsulationBreach => {
                self.add_leak(variant(Statement::new("faults-in-loop"), Loop, 0.7));
                self.add_leak(variant(Statement::new("faults-in-lead-in"), LeadIn, 0.3));
            }
            LoopFault::WetSplice => self.add_leak(FaultForm::only(fault, Splice)),
            LoopFault::BrokenConductor => {
                for (statement, location, share) in [
                    (Statement::new("faults-in-loop"), Loop, 0.45),
                    (Statement::new("faults-at-splice"), Splice, 0.25),
                    (Statement::new("faults-in-lead-in"), LeadIn, 0.3),
                ] {
                    let form = variant(statement, location, share).parted();
                    self.add(form.clone().showing(FaultManner::Always, 1.0 - BREAKS_UNDER_LOAD));
                    self.add(form.showing(FaultManner::UnderLoad, BREAKS_UNDER_LOAD));
                }
            }
            LoopFault::TornWire => {
                self.add(variant(Statement::new("faults-in-loop"), Loop, 0.65).parted().leaking());
                self.add(variant(Statement::new("faults-at-splice"), Splice, 0.1).parted().leaking());
                self.add(variant(Statement::new("faults-in-lead-in"), LeadIn, 0.25).parted().leaking());
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
                self.add_change(variant(Statement::new("faults-other-loop-connected"), LeadIn, 0.7), &other);
                self.add(variant(Statement::new("faults-wires-of-two-loops-connected"), LeadIn, 0.3).parted());
            }
            LoopFault::SteelNearby => {
                // Mesh as a mirror takes about a quarter at 4 in, a plate on the loop more; below 5 % it hides in the
                // as-built spread.
                let steel = LoopChange { coil_uh: (0.55, 0.95), quality: (0.3, 0.9), ..LoopChange::NOTHING };
                let by = |statement, manner, share| variant(statement, Beyond, 1.0).showing(manner, share);
                let mesh = by(Statement::new("faults-metal-at-rest"), FaultManner::Always, 1.0 - STEEL_IS_LEAF);
                self.add_change(mesh, &steel);
                self.add(by(Statement::new("faults-metal-of-the-gate"), FaultManner::WithTheGate, STEEL_IS_LEAF));
            }
            LoopFault::OutsideEnvelope => self.add(FaultForm::only(fault, Loop)),
            LoopFault::DetectorUnit | LoopFault::Settings => self.add(FaultForm::only(fault, Unit)),
            LoopFault::SurgeDamage => {
                self.add(variant(Statement::new("faults-in-unit"), Unit, 0.6));
                self.add(variant(Statement::new("faults-in-arrester"), Harness, 0.4));
            }
            LoopFault::Harness => self.add(FaultForm::only(fault, Harness)),
            LoopFault::Crosstalk | LoopFault::None => self.add(FaultForm::only(fault, Beyond)),
        }
    }

    fn add_bad_joints(&mut self) {
        let fault = LoopFault::HighResistanceJoint;
        let at_splice =
            |share| FaultForm::variant(fault, Statement::new("faults-at-splice"), FaultLocation::Splice, share);
        let along =
            |share| FaultForm::variant(fault, Statement::new("faults-along-lead-in"), FaultLocation::LeadIn, share);
        for (low, high, share) in JOINT_RESISTANCES {
            let change = LoopChange { added_ohm: (low, high), ..LoopChange::NOTHING };
            let always = (1.0 - BREAKS_UNDER_LOAD) * share;
            self.add_change(at_splice(0.8 * always), &change);
            self.add_change(along(0.2 * always), &change);
        }
        self.add(at_splice(0.8).showing(FaultManner::UnderLoad, BREAKS_UNDER_LOAD));
        self.add(along(0.2).showing(FaultManner::UnderLoad, BREAKS_UNDER_LOAD));
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
                    let form = FaultForm::variant(fault, variant.clone(), FaultLocation::Loop, 0.7 / count);
                    self.add_change(form, &change);
                }
            }
            Some(_) => {
                let change = LoopChange { coil_uh: (0.0, 0.5), coil_ohm: (0.0, 0.9), ..LoopChange::NOTHING };
                let variant = Statement::new("faults-turn-bridged");
                self.add_change(FaultForm::variant(fault, variant, FaultLocation::Loop, 0.7), &change);
            }
            // Of two to five turns, with or without their lead-in.
            None => {
                let change =
                    LoopChange { coil_uh: (0.2, 0.65), coil_ohm: (0.5, 0.9), added_loss: 0.4, ..LoopChange::NOTHING };
                let variant = Statement::new("faults-turn-closed");
                self.add_change(FaultForm::variant(fault, variant, FaultLocation::Loop, 0.7), &change);
            }
        }
        let bridged = LoopChange { coil_uh: (0.0, 0.0), coil_ohm: (0.0, 0.0), ..LoopChange::NOTHING };
        let variant = Statement::new("faults-bridged-at-tails");
        self.add_change(FaultForm::variant(fault, variant, FaultLocation::Loop, 0.15), &bridged);
        for lead_in in [0.0, 0.33, 0.67] {
            let change = LoopChange { lead_in, ..bridged };
            let variant = Statement::new("faults-bridged-along-lead-in");
            self.add_change(FaultForm::variant(fault, variant, FaultLocation::LeadIn, 0.05), &change);
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
            let form = FaultForm::variant(LoopFault::WrongTurnCount, variant, FaultLocation::Loop, share / sum);
            self.add_change(form, &change);
        }
    }

    /// A turn less or more of two to five, by N(N + 1) and the wire, with or without their lead-in.
    fn add_wrong_counts_without_design(&mut self) {
        for (variant, inductance, wire) in [
            (Statement::new("faults-turns-too-few"), (0.35, 0.75), (0.5, 0.85)),
            (Statement::new("faults-turns-too-many"), (1.3, 2.5), (1.15, 1.5)),
        ] {
            let change = LoopChange { coil_uh: inductance, coil_ohm: wire, ..LoopChange::NOTHING };
            let form = FaultForm::variant(LoopFault::WrongTurnCount, variant, FaultLocation::Loop, 0.5);
            self.add_change(form, &change);
        }
    }
}
