//! Loops on different channels: how they couple, and what to do about it.

use uom::si::f64::{Inductance, Length};
use uom::si::frequency::kilohertz;
use uom::si::inductance::microhenry;
use uom::si::length::meter;

use super::names::{name_loop, name_loops};
use super::report::{NeighbourAction, Neighbours};
use crate::calculation::budget::WorkBudget;
use crate::calculation::input::{ResolvedDetector, ResolvedLoop};
use crate::calculation::layout::{DetectorChannel, MeasuredLoop, PlacedCoil, coupling};
use crate::calculation::loop_characteristics::{MeasurementConditions, measure};
use crate::calculation::report::{Decimals, Diagnostics, FieldPath, Finding, Statement};
use crate::practice::detectors::{HARMLESS_COUPLING, SEPARATE_FREQUENCIES};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::quantity::output::round;

/// How many steps the search for a harmless distance takes at most.
const MAX_STEPS: u32 = 120;
/// The most turns that a request takes.
const MAX_WOUND_TURNS: u32 = 20;
/// The step of that search, metres.
const STEP_M: f64 = 0.1;

/// How two loops on different channels stand to each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Relation {
    /// They couple too little to matter.
    Harmless,
    /// One unit scans them in turn.
    ScannedTogether,
    /// They run far apart in frequency.
    FarApart,
    /// One can follow the other.
    Disturbing,
    /// They lie over one another.
    SamePlace,
}

impl Relation {
    fn code(self) -> &'static str {
        match self {
            Self::Harmless => "harmless",
            Self::ScannedTogether => "scanned_together",
            Self::FarApart => "far_apart",
            Self::Disturbing => "disturbs",
            Self::SamePlace => "same_place",
        }
    }

    /// How bad it is: 0 for what needs nothing.
    pub fn gravity(self) -> u8 {
        match self {
            Self::Harmless | Self::ScannedTogether | Self::FarApart => 0,
            Self::Disturbing => 1,
            Self::SamePlace => 2,
        }
    }
}

/// Two loops on different channels, whose places are known.
pub struct RelatedPair {
    /// Their coupling coefficient, a share.
    coupling: f64,
    /// How far apart they would run at the same setting, a share of the lower.
    separation: f64,
    /// What it comes to.
    pub relation: Relation,
}

/// How two loops stand to each other; `None` unless the places of both are known.
pub fn relate(one: &MeasuredLoop, other: &MeasuredLoop) -> Option<RelatedPair> {
    let (ours, theirs) = one.placed().zip(other.placed())?;
    Some(relate_placed((one, &ours), (other, &theirs), coupling(&ours, &theirs, one.budget()).value))
}

fn relate_placed(
    (one, ours): (&MeasuredLoop, &PlacedCoil<'_>),
    (other, theirs): (&MeasuredLoop, &PlacedCoil<'_>),
    coupling: f64,
) -> RelatedPair {
    let (first, second) = (one.figures.terminal_inductance, other.figures.terminal_inductance);
    let separation = separation(first, second);
    let relation = if ours.overlaps(theirs) {
        Relation::SamePlace
    } else if one.own.shares_unit(&other.own) {
        Relation::ScannedTogether
    } else if coupling < HARMLESS_COUPLING {
        Relation::Harmless
    } else if separation < SEPARATE_FREQUENCIES {
        Relation::Disturbing
    } else {
        Relation::FarApart
    };
    RelatedPair { coupling, separation, relation }
}

/// How badly two loops stand to each other, as [`Relation::gravity`] counts: trials ask often, so the coupling, a share, is asked for only
/// where it decides.
pub fn gravity(
    one: &MeasuredLoop,
    other: &MeasuredLoop,
    coupling: impl FnOnce(&PlacedCoil<'_>, &PlacedCoil<'_>) -> f64,
) -> Option<u8> {
    let (ours, theirs) = one.placed().zip(other.placed())?;
    let run_apart =
        || separation(one.figures.terminal_inductance, other.figures.terminal_inductance) >= SEPARATE_FREQUENCIES;
    if !ours.overlaps(&theirs) && (one.own.shares_unit(&other.own) || run_apart()) {
        return Some(Relation::FarApart.gravity());
    }
    Some(relate_placed((one, &ours), (other, &theirs), coupling(&ours, &theirs)).relation.gravity())
}

/// How far apart two inductances run at the same setting, a share of the lower frequency: f goes with 1/√L, so no capacitance is needed.
fn separation(one: Inductance, other: Inductance) -> f64 {
    (one.max(other) / one.min(other)).value.sqrt() - 1.0
}

/// All pairs of single loops whose positions are known; loops on one channel do not disturb each other.
pub fn pairs(
    channels: &[DetectorChannel],
    detector: &ResolvedDetector,
    diagnostics: &mut Diagnostics,
) -> Vec<Neighbours> {
    let loops: Vec<_> = channels
        .iter()
        .enumerate()
        .flat_map(|(index, channel)| channel.loops.iter().map(move |one| (index, one)))
        .collect();
    let mut pairs = Vec::new();
    let mut are_positions_missing = false;
    for (second, (theirs, other)) in loops.iter().enumerate() {
        for (ours, one) in &loops[..second] {
            if ours == theirs {
                continue;
            }
            match relate(one, other) {
                Some(related) => pairs.push(pair(one, other, &related, detector, diagnostics)),
                None => are_positions_missing = true,
            }
        }
    }
    if are_positions_missing {
        let (at, message) = (FieldPath::BODY.field("loops"), Statement::new("compatibility-position-unknown"));
        let finding = Finding::new(FindingCode::PositionUnknown, Level::Note, &at, message);
        let unplaced = loops.iter().enumerate().filter(|(_, (_, one))| one.own.position.is_none());
        let send = |finding: Finding, index: usize| finding.send(&at.item(index).field("position"));
        diagnostics.add_finding(unplaced.fold(finding, |finding, (index, _)| send(finding, index)));
    }
    pairs
}

fn pair(
    one: &MeasuredLoop,
    other: &MeasuredLoop,
    related: &RelatedPair,
    detector: &ResolvedDetector,
    diagnostics: &mut Diagnostics,
) -> Neighbours {
    let frequencies = detector.tuning_capacitance.map_or_else(Vec::new, |capacitance| {
        [one, other]
            .map(|one| DetectorChannel::frequency(one.figures.terminal_inductance, capacitance).get::<kilohertz>())
            .to_vec()
    });
    let percents = (100.0 * related.coupling, 100.0 * related.separation);
    let message = Statement::new("compatibility-coupling")
        .percent("coupling", percents.0, 2)
        .percent("frequency_separation", percents.1, 1)
        .code("outcome", related.relation.code());
    let at = FieldPath::BODY.field("loops");
    let named = |statement: Statement| name_loops(statement, &one.own, &other.own);
    let finding = match related.relation {
        Relation::Disturbing => {
            let message = named(Statement::new("compatibility-crosstalk")).phrase("sentence", message.clone());
            let finding = Finding::new(FindingCode::Crosstalk, Level::Warning, &at, message);
            Some(finding.figure("coupling", percents.0, "percent").figure(
                "frequency_separation",
                percents.1,
                "percent",
            ))
        }
        // Loops of a layout were told already.
        Relation::SamePlace if one.own.mark.is_none() => {
            let roles = if one.own.role == other.own.role { "same" } else { "different" };
            let message = named(Statement::new("compatibility-same-place")).code("roles", roles);
            let finding = Finding::new(FindingCode::SamePlace, Level::Stop, &at, message);
            Some(finding.figure("coupling", percents.0, "percent").send(&at))
        }
        Relation::SamePlace | Relation::Harmless | Relation::ScannedTogether | Relation::FarApart => None,
    };
    if let Some(finding) = finding {
        diagnostics.add_finding(finding);
    }
    Neighbours {
        between: vec![one.own.label.clone(), other.own.label.clone()],
        marks: [one.own.mark, other.own.mark].into_iter().flatten().collect(),
        coupling_percent: round(percents.0, 3),
        frequencies_khz: frequencies.into_iter().map(|frequency| round(frequency, 3)).collect(),
        frequency_separation_percent: round(percents.1, 3),
        scanned_together: one.own.shares_unit(&other.own),
        actions: if related.relation == Relation::Disturbing { actions(one, other) } else { Vec::new() },
        message: message.into(),
    }
}

fn actions(one: &MeasuredLoop, other: &MeasuredLoop) -> Vec<NeighbourAction> {
    let mut actions = vec![
        NeighbourAction {
            action: "frequency_setting",
            message: name_loops(Statement::new("compatibility-set-another-frequency"), &one.own, &other.own).into(),
        },
        NeighbourAction { action: "scanning_unit", message: Statement::new("compatibility-take-scanning-unit").into() },
    ];
    let more = ResolvedLoop { turns: other.own.coil.turns + 1, ..other.own.coil.clone() };
    one.budget().count(more.measure_steps());
    let changed = measure(&more, &other.own.lead_in, &MeasurementConditions::usual()).terminal_inductance;
    let apart = separation(one.figures.terminal_inductance, changed);
    if more.turns <= MAX_WOUND_TURNS && apart >= SEPARATE_FREQUENCIES {
        actions.push(NeighbourAction {
            action: "turn_count",
            message: name_loop(Statement::new("compatibility-wind-more-turns"), &other.own)
                .count("turns", more.turns.into())
                .quantity("terminal_inductance", changed.get::<microhenry>(), 0, "uH")
                .percent("frequency_separation", 100.0 * apart, 0)
                .into(),
        });
    }
    let placed = one.placed().zip(other.placed());
    let distance = placed.and_then(|(ours, theirs)| harmless_distance(&ours, &theirs, one.budget()));
    actions.extend(distance.map(|distance| {
        NeighbourAction {
            action: "distance",
            message: Statement::new("compatibility-move-apart")
                .length("distance", distance, one.own.coil.system)
                .percent("harmless_coupling", 100.0 * HARMLESS_COUPLING, Decimals::All)
                .into(),
        }
    }));
    actions
}

/// The distance of the middles, along the line that joins them, from which on the coupling is harmless.
fn harmless_distance(one: &PlacedCoil<'_>, other: &PlacedCoil<'_>, budget: &WorkBudget) -> Option<Length> {
    let (from, to) = (one.position, other.position);
    let (along, across) = (to.0 - from.0, to.1 - from.1);
    let distance = along.get::<meter>().hypot(across.get::<meter>());
    if distance <= 0.0 {
        return None;
    }
    let farther = |step: u32| distance + STEP_M * f64::from(step);
    let moved = |step: u32| {
        let stretch = farther(step) / distance;
        other.moved_to((from.0 + stretch * along, from.1 + stretch * across))
    };
    let disturbs = |step: u32| coupling(one, &moved(step), budget).value >= HARMLESS_COUPLING;
    // Of loops that overlap the coupling changes its sign on the way out. Once they do not, it falls with distance, and halving the
    // steps finds the first that is far enough.
    let clear: Vec<_> = (0..=MAX_STEPS).skip_while(|step| one.overlaps(&moved(*step))).skip(1).collect();
    let step = clear.get(clear.partition_point(|step| disturbs(*step)))?;
    Some(Length::new::<meter>(farther(*step)))
}
