//! What would turn a check that is not suitable: whole changes, computed by trying, the smallest first.
//!
//! - `changes`: what is tried
//! - `trial`: how a request stands with it

mod changes;
mod trial;

use super::checks::{CheckResult, CheckVerdict};
use super::report::{Remedy, RemedyChange};
use crate::calculation::layout::ChannelLoop;
use crate::calculation::report::{Decimals, ListJoin, Message, Statement};
use crate::practice::detectors::Wiring;
use crate::quantity::output::round;
use changes::{Change, ChangeKind, ChangeableChannel};
use trial::Outcome;
pub use trial::Workshop;

/// What turns may be changed together with.
const SECOND_KINDS: [ChangeKind; 4] =
    [ChangeKind::LeadInGauge, ChangeKind::LeadInLength, ChangeKind::AlongTravel, ChangeKind::Wiring];
/// How many changes of turns, and how many others, are tried together at most.
const MAX_PAIRED: (usize, usize) = (8, 6);
/// How many pairs of each two kinds are tried at most, those of small changes first. A choice made here, for the time that it takes.
const MAX_PAIRS: usize = 32;

/// Changes that leave nothing worse, and how the channel then stands.
struct Cure {
    changes: Vec<Change>,
    outcome: Outcome,
}

impl Cure {
    fn turns<'a>(&'a self, check: &CheckResult) -> Option<&'a CheckResult> {
        let then = self.outcome.checks.iter().find(|other| other.is_same_check(check));
        then.filter(|then| then.verdict == CheckVerdict::Suitable)
    }
}

/// The remedies of a channel: of each kind of change the smallest that turns a check, and two changes where no single one is enough.
pub fn find(workshop: &Workshop<'_>, channel: usize) -> Vec<Remedy> {
    let now = workshop.judgement(channel);
    let failing: Vec<_> = now.checks.iter().filter(|check| check.verdict != CheckVerdict::Suitable).collect();
    let Some(first) = failing.first() else { return Vec::new() };
    let changeable = workshop.changeable(channel);
    let mut by_kind = ChangeKind::ALL.map(|_| Vec::new());
    for (kind, cures) in ChangeKind::ALL.into_iter().zip(&mut by_kind) {
        for change in changeable.changes(kind) {
            cures.extend(try_changes(workshop, channel, vec![change]));
            if cures.iter().any(|cure| cure.outcome.cures)
                && failing.iter().all(|check| cures.iter().any(|cure| cure.turns(check).is_some()))
            {
                break;
            }
        }
    }
    let describe = |cure: &Cure, check: &CheckResult| {
        cure.turns(check).map(|turned| describe(workshop.label(channel), cure, turned, &changeable))
    };
    let mut remedies = Vec::new();
    for check in &failing {
        for cures in &by_kind {
            remedies.extend(cures.iter().find_map(|cure| describe(cure, check)));
        }
    }
    if remedies.iter().any(|remedy| remedy.cures_channel) {
        return remedies;
    }
    // Of each kind the smallest that turns a check is said above; one that cures the channel may be larger.
    let whole = by_kind.iter().flatten().find(|cure| cure.outcome.cures);
    if let Some(whole) = whole {
        remedies.extend(describe(whole, first));
        return remedies;
    }
    let pairs = find_pairs(workshop, channel, &changeable);
    if pairs.iter().any(|cure| cure.outcome.cures) {
        remedies.extend(pairs.iter().filter(|cure| cure.outcome.cures).filter_map(|cure| describe(cure, first)));
    } else {
        let is_open = |check: &&&CheckResult| by_kind.iter().flatten().all(|cure| cure.turns(check).is_none());
        for check in failing.iter().filter(is_open) {
            remedies.extend(pairs.iter().find_map(|cure| describe(cure, check)));
        }
    }
    remedies
}

fn try_changes(workshop: &Workshop<'_>, channel: usize, changes: Vec<Change>) -> Option<Cure> {
    workshop.may_try().then_some(())?;
    let outcome = workshop.judge(channel, &changes)?;
    Some(Cure { changes, outcome })
}

/// Turns with one other change: of each two kinds those tried until the channel is cured.
fn find_pairs(workshop: &Workshop<'_>, channel: usize, changeable: &ChangeableChannel<'_>) -> Vec<Cure> {
    let turns = changeable.few_changes(ChangeKind::Turns, MAX_PAIRED.0);
    let mut cures = Vec::new();
    for kind in SECOND_KINDS {
        let others = changeable.few_changes(kind, MAX_PAIRED.1);
        let places = (0..turns.len()).flat_map(|turns| (0..others.len()).map(move |other| (turns, other)));
        let mut by_size: Vec<_> = places.collect();
        by_size.sort_by_key(|(turns, other)| turns + other);
        for (turn, other) in by_size.into_iter().take(MAX_PAIRS) {
            let cure = try_changes(workshop, channel, vec![turns[turn].clone(), others[other].clone()]);
            let is_whole = cure.as_ref().is_some_and(|cure| cure.outcome.cures);
            cures.extend(cure);
            if is_whole {
                break;
            }
        }
    }
    cures
}

fn describe(channel: String, cure: &Cure, turned: &CheckResult, changeable: &ChangeableChannel<'_>) -> Remedy {
    let (all, wiring) = (changeable.all, changeable.wiring);
    let phrases = cure.changes.iter().enumerate().map(|(index, change)| change.phrase(index == 0, all, wiring));
    let message = Statement::new("compatibility-remedy")
        .phrases("changes", phrases.collect(), ListJoin::And)
        .code("check", turned.check)
        .code("outcome", if cure.outcome.cures { "suitable" } else { "better" });
    let message = match turned.unit() {
        "ratio" => message.number("value", turned.value, Decimals::AtMost(1)),
        unit => message.quantity("value", turned.value, decimals_of(turned), unit),
    };
    let message = turned.vehicle.into_iter().fold(message, |message, class| message.member("vehicle", class));
    let changes: Vec<_> = cure.changes.iter().flat_map(|change| report(change, all, wiring)).collect();
    let first = report(&cure.changes[0], all, wiring).swap_remove(0);
    Remedy {
        channel,
        check: turned.check,
        changes,
        cures_channel: cure.outcome.cures,
        change: first.change,
        from: first.from,
        to: first.to,
        value: round(turned.value, 3),
        message: message.into(),
    }
}

/// As many decimals as the sentence of the check has.
fn decimals_of(check: &CheckResult) -> Decimals {
    match check.unit() {
        "percent" if check.vehicle.is_some() => Decimals::AtMost(3),
        "ohm" => Decimals::AtMost(2),
        _ => Decimals::AtMost(1),
    }
}

/// A change, loop by loop.
fn report(change: &Change, all: &[ChannelLoop], wiring: Wiring) -> Vec<RemedyChange> {
    let words = |fact| Message::value(Statement::new("compatibility-changed-value").with("value", fact));
    let of = |one: Option<&ChannelLoop>| RemedyChange {
        r#loop: one.map(|one| one.label.clone()),
        change: change.kind().code(),
        from: words(change.from(one, wiring)),
        to: words(change.to()),
        set: change.set(),
    };
    match change.loops.as_slice() {
        [] => vec![of(None)],
        loops => loops.iter().map(|index| of(Some(&all[*index]))).collect(),
    }
}
