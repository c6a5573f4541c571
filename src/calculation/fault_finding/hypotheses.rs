//! The faults in the forms that they take, each with what it lets expect of every meter.

use super::reading::{Band, Forecast, Meter};
use super::sound::{Change, Sound, Turns};
use crate::practice::faults::{LoopFault, ReadingPlace};

/// Where a fault sits, from the unit outwards.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Place {
    /// The unit and its supply.
    Unit,
    /// Its wiring.
    Harness,
    /// The pair to the loop.
    LeadIn,
    /// The splice of lead-in and loop.
    Splice,
    /// The loop.
    Loop,
    /// Round the loop, or nowhere.
    Beyond,
}

/// A fault in one of its forms.
#[derive(Clone, Debug)]
pub struct Form {
    /// The fault.
    pub fault: LoopFault,
    /// The form in words, where the fault has several.
    pub variant: Option<String>,
    /// Where it sits.
    pub place: Place,
    /// How often the fault takes this form; over the forms of a fault they sum to 1. Choices made here.
    pub share: f64,
    /// What the meters show, in the order of [`Meter::ALL`].
    pub forecasts: [Forecast; 4],
}

impl Form {
    /// What it lets expect of a meter.
    pub fn forecast(&self, meter: Meter) -> &Forecast {
        &self.forecasts[meter as usize]
    }
}

/// Insulation that leaks, megohm: from a dead earth to the reading below which engineering judgement calls it poor.
const LEAK: Forecast =
    Forecast { band: Band { low: 0.001, high: 10.0, relative: 0.3, absolute: 0.0 }, over_range: 0.005 };
/// Sound insulation, of old loops too; testers differ in where their range ends.
const TIGHT: Forecast =
    Forecast { band: Band { low: 50.0, high: 20_000.0, relative: 0.4, absolute: 0.0 }, over_range: 0.4 };
/// Resistance of a parted wire, ohm: mostly over range, else what a damp gap lets through.
const PARTED: Forecast =
    Forecast { band: Band { low: 300.0, high: 1e7, relative: 0.3, absolute: 0.0 }, over_range: 0.85 };
/// What meters of inductance make of an open circuit, µH.
const NO_COIL: Forecast =
    Forecast { band: Band { low: 5_000.0, high: 1e5, relative: 0.3, absolute: 0.0 }, over_range: 0.7 };
/// Quality factor of an open circuit.
const NO_QUALITY: Forecast =
    Forecast { band: Band { low: 0.0, high: 2.0, relative: 0.2, absolute: 0.3 }, over_range: 0.3 };
/// Added resistance of a bad joint, ohm: low, high, share. From what an ohmmeter barely shows to nearly open.
const JOINTS: [(f64, f64, f64); 5] =
    [(0.3, 1.0, 0.25), (1.0, 3.0, 0.3), (3.0, 10.0, 0.2), (10.0, 30.0, 0.15), (30.0, 300.0, 0.1)];
/// Wrong counts: turns more or less, share.
const COUNTS: [(i32, f64); 4] = [(-1, 0.4), (1, 0.35), (-2, 0.1), (2, 0.15)];

/// Gathers forms; what sits nearer to the unit than the meter is not measured.
struct Gathering<'a> {
    sound: &'a Sound,
    measured_from: Place,
    forms: Vec<Form>,
}

impl Gathering<'_> {
    fn add(&mut self, fault: LoopFault, variant: Option<String>, place: Place, share: f64, forecasts: [Forecast; 4]) {
        let forecasts =
            if place < self.measured_from { electric(self.sound.forecasts(&Change::NOTHING)) } else { forecasts };
        self.forms.push(Form { fault, variant, place, share, forecasts });
    }

    /// A form that changes inductance, resistance or quality and leaves the insulation tight.
    fn change(&mut self, fault: LoopFault, variant: Option<String>, place: Place, share: f64, change: &Change) {
        let forecasts = electric(self.sound.forecasts(change));
        self.add(fault, variant, place, share, forecasts);
    }

    /// A form that meters do not show.
    fn silent(&mut self, fault: LoopFault, place: Place) {
        self.change(fault, None, place, 1.0, &Change::NOTHING);
    }

    fn leak(&mut self, fault: LoopFault, variant: Option<&str>, place: Place, share: f64) {
        let [resistance, inductance, quality] = self.sound.forecasts(&Change::NOTHING);
        let variant = variant.map(str::to_owned);
        self.add(fault, variant, place, share, [LEAK, resistance, inductance, quality]);
    }

    fn parted(&mut self, fault: LoopFault, variant: &str, place: Place, share: f64) {
        self.add(fault, Some(variant.to_owned()), place, share, [TIGHT, PARTED, NO_COIL, NO_QUALITY]);
    }
}

fn electric([resistance, inductance, quality]: [Forecast; 3]) -> [Forecast; 4] {
    [TIGHT, resistance, inductance, quality]
}

/// Every fault in every form, for readings taken at a place.
pub fn forms(sound: &Sound, taken_at: ReadingPlace) -> Vec<Form> {
    let measured_from = match taken_at {
        ReadingPlace::DetectorEnd => Place::LeadIn,
        ReadingPlace::LoopEnd => Place::Loop,
    };
    let mut all = Gathering { sound, measured_from, forms: Vec::new() };
    all.leak(LoopFault::InsulationBreach, Some("in the loop"), Place::Loop, 0.7);
    all.leak(LoopFault::InsulationBreach, Some("in the lead-in"), Place::LeadIn, 0.3);
    all.leak(LoopFault::WetSplice, None, Place::Splice, 1.0);
    all.parted(LoopFault::BrokenConductor, "in the loop", Place::Loop, 0.6);
    all.parted(LoopFault::BrokenConductor, "in the lead-in or at the splice", Place::LeadIn, 0.4);
    for (place, words, part) in
        [(Place::Splice, "at the splice of loop and lead-in", 0.8), (Place::LeadIn, "along the lead-in", 0.2)]
    {
        for (low, high, share) in JOINTS {
            let change = Change { added_ohm: (low, high), ..Change::NOTHING };
            all.change(LoopFault::HighResistanceJoint, Some(words.to_owned()), place, part * share, &change);
        }
    }
    touching(&mut all);
    match &sound.turns {
        Some(turns) => miscounted(&mut all, turns),
        None => miscounted_unseen(&mut all),
    }
    // Loops on one site are alike within a factor of two or so.
    let other = Change { coil_uh: (0.4, 2.5), coil_ohm: (0.5, 2.0), ..Change::NOTHING };
    all.change(LoopFault::SwappedPair, Some("another loop is connected".to_owned()), Place::LeadIn, 0.7, &other);
    all.parted(LoopFault::SwappedPair, "one wire of each of two loops is connected", Place::LeadIn, 0.3);
    // Mesh as a mirror takes about a quarter at 4 in, a plate on the loop more; below 5 % it hides in the as-built spread.
    let steel = Change { coil_uh: (0.55, 0.95), quality: (0.3, 0.9), ..Change::NOTHING };
    all.change(LoopFault::SteelNearby, None, Place::Beyond, 1.0, &steel);
    all.silent(LoopFault::OutsideEnvelope, Place::Loop);
    all.silent(LoopFault::DetectorUnit, Place::Unit);
    all.silent(LoopFault::Harness, Place::Harness);
    all.silent(LoopFault::Crosstalk, Place::Beyond);
    all.silent(LoopFault::None, Place::Beyond);
    all.forms
}

/// Wires that touch: turn to turn, across the loop's tails, or along the pair.
fn touching(all: &mut Gathering) {
    let fault = LoopFault::ShortedTurn;
    match &all.sound.turns {
        Some(turns) if turns.count > 1 => {
            let count = f64::from(turns.count);
            let variant = format!("one turn of {} closed on itself", turns.count);
            let changes = turns.shorted.iter().map(|coil| {
                let (left, wire) = (coil.inductance / turns.computed, 1.0 - f64::from(coil.turns) / count);
                let added_loss = coil.added_loss / count;
                Change { coil_uh: (left, left), coil_ohm: (wire, wire), added_loss, ..Change::NOTHING }
            });
            for change in changes.collect::<Vec<_>>() {
                all.change(fault, Some(variant.clone()), Place::Loop, 0.7 / count, &change);
            }
        }
        Some(_) => {
            let change = Change { coil_uh: (0.0, 0.5), coil_ohm: (0.0, 0.9), ..Change::NOTHING };
            all.change(fault, Some("the turn bridged".to_owned()), Place::Loop, 0.7, &change);
        }
        // Of two to five turns, with or without their lead-in.
        None => {
            let change = Change { coil_uh: (0.2, 0.65), coil_ohm: (0.5, 0.9), added_loss: 0.4, ..Change::NOTHING };
            all.change(fault, Some("one turn closed on itself".to_owned()), Place::Loop, 0.7, &change);
        }
    }
    let bridged = Change { coil_uh: (0.0, 0.0), coil_ohm: (0.0, 0.0), ..Change::NOTHING };
    all.change(fault, Some("the loop bridged at its tails".to_owned()), Place::Loop, 0.15, &bridged);
    for quarter in [0.0, 0.33, 0.67] {
        let change = Change { lead_in: quarter, ..bridged };
        all.change(fault, Some("the pair bridged along the lead-in".to_owned()), Place::LeadIn, 0.05, &change);
    }
}

/// Another number of turns than the design has.
fn miscounted(all: &mut Gathering, turns: &Turns) {
    let counts = || COUNTS.iter().filter_map(|(more, share)| Some((turns.count.checked_add_signed(*more)?, share)));
    let possible = || counts().filter(|(count, _)| *count > 0);
    let sum: f64 = possible().map(|(_, share)| share).sum();
    for (count, share) in possible() {
        let inductance = turns.ladder[count as usize];
        let wire = f64::from(count) / f64::from(turns.count);
        let change = Change { coil_uh: (inductance, inductance), coil_ohm: (wire, wire), ..Change::NOTHING };
        let variant = format!("{count} turns instead of {}", turns.count);
        all.change(LoopFault::WrongTurnCount, Some(variant), Place::Loop, share / sum, &change);
    }
}

/// A turn less or more of two to five, by N(N + 1) and the wire, with or without their lead-in.
fn miscounted_unseen(all: &mut Gathering) {
    for (words, inductance, wire) in
        [("turns too few", (0.35, 0.75), (0.5, 0.85)), ("turns too many", (1.3, 2.5), (1.15, 1.5))]
    {
        let change = Change { coil_uh: inductance, coil_ohm: wire, ..Change::NOTHING };
        all.change(LoopFault::WrongTurnCount, Some(words.to_owned()), Place::Loop, 0.5, &change);
    }
}
