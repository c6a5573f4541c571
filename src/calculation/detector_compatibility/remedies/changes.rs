//! The changes that are tried: each sets one value, on one loop or on several alike.

use std::rc::Rc;

use uom::si::f64::{Area, Length};

use crate::calculation::input::ResolvedLoop;
use crate::calculation::layout::ChannelLoop;
use crate::calculation::report::{FactValue, ListJoin, Statement};
use crate::practice::detectors::Wiring;
use crate::practice::layout::{ALTERNATIVE_STEP, MAX_LEG, STEP};
use crate::quantity::format::format_length_input;
use crate::quantity::{UnitSystem, dimension, parse};
use crate::vocabulary::Vocabulary;

use super::super::lanes::are_in_one_row;

/// How many turns more or less are tried at most.
const MAX_TURNS_APART: u32 = 4;
/// How many legs are tried at most.
const MAX_LEGS: u32 = 6;
/// The lead-in is shortened in steps of this fraction of its length: one over this number.
const LEAD_IN_STEPS: u32 = 20;
/// How many loops of a channel are changed one by one at most, the first of them.
const MAX_SINGLE_LOOPS: usize = 8;
/// Wire for lead-ins, in the order of their areas: of requests in gauges, and of those in square millimetres.
const GAUGES: [&str; 4] = ["16 AWG", "14 AWG", "12 AWG", "10 AWG"];
const METRIC_GAUGES: [&str; 4] = ["1.5 mm2", "2.5 mm2", "4 mm2", "6 mm2"];
/// Wire of less than this many times the area is the same size by another name.
const NEXT_SIZE: f64 = 1.2;

/// The kinds of change, in the order of a report.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ChangeKind {
    Turns,
    Wiring,
    LeadInGauge,
    LeadInLength,
    AlongTravel,
}

impl ChangeKind {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Turns, Self::Wiring, Self::LeadInGauge, Self::LeadInLength, Self::AlongTravel];

    /// The value in reports.
    pub fn code(self) -> &'static str {
        match self {
            Self::Turns => "turns",
            Self::Wiring => "wiring",
            Self::LeadInGauge => "lead_in_gauge",
            Self::LeadInLength => "lead_in_length",
            Self::AlongTravel => "along_travel",
        }
    }
}

/// What is set.
#[derive(Clone, Debug)]
enum NewValue {
    Turns(u32),
    Wiring(Wiring),
    LeadInGauge(&'static str, Area),
    LeadInLength(Length, UnitSystem),
    AlongTravel(Length, UnitSystem),
}

/// One value that is set on one loop, or on several alike.
#[derive(Clone, Debug)]
pub struct Change {
    /// The places of the loops among all; none for the wiring.
    pub loops: Vec<usize>,
    value: NewValue,
}

impl Change {
    /// Its kind.
    pub fn kind(&self) -> ChangeKind {
        match self.value {
            NewValue::Turns(_) => ChangeKind::Turns,
            NewValue::Wiring(_) => ChangeKind::Wiring,
            NewValue::LeadInGauge(..) => ChangeKind::LeadInGauge,
            NewValue::LeadInLength(..) => ChangeKind::LeadInLength,
            NewValue::AlongTravel(..) => ChangeKind::AlongTravel,
        }
    }

    /// Makes the change.
    pub fn apply(&self, loops: &mut [Rc<ChannelLoop>], wiring: &mut Wiring) {
        if let NewValue::Wiring(to) = self.value {
            *wiring = to;
        }
        for index in &self.loops {
            let one = Rc::make_mut(&mut loops[*index]);
            match self.value {
                NewValue::Turns(to) => one.coil.turns = to,
                NewValue::LeadInGauge(text, area) => {
                    text.clone_into(&mut one.lead_in.gauge);
                    one.lead_in.area = area;
                }
                NewValue::LeadInLength(to, system) => (one.lead_in.length, one.lead_in.system) = (to, system),
                NewValue::AlongTravel(to, system) => (one.coil.along_travel, one.coil.system) = (to, system),
                NewValue::Wiring(_) => {}
            }
        }
    }

    /// What a loop has before it; the wiring where none is named.
    pub fn from(&self, one: Option<&ChannelLoop>, wiring: Wiring) -> FactValue {
        match (&self.value, one) {
            (NewValue::Turns(_), Some(one)) => FactValue::Count(one.coil.turns.into()),
            (NewValue::LeadInGauge(..), Some(one)) => FactValue::Text(one.lead_in.gauge.clone().into()),
            (NewValue::LeadInLength(_, system), Some(one)) => FactValue::Length(one.lead_in.length, *system),
            (NewValue::AlongTravel(_, system), Some(one)) => FactValue::Length(one.coil.along_travel, *system),
            (_, _) => FactValue::Code(wiring.code()),
        }
    }

    /// What it has then.
    pub fn to(&self) -> FactValue {
        match self.value {
            NewValue::Turns(to) => FactValue::Count(to.into()),
            NewValue::Wiring(to) => FactValue::Code(to.code()),
            NewValue::LeadInGauge(text, _) => FactValue::Text(text.into()),
            NewValue::LeadInLength(to, system) | NewValue::AlongTravel(to, system) => FactValue::Length(to, system),
        }
    }

    /// The same as the request takes it.
    pub fn set(&self) -> String {
        match self.value {
            NewValue::Turns(to) => to.to_string(),
            NewValue::Wiring(to) => to.code().to_owned(),
            NewValue::LeadInGauge(text, _) => text.to_owned(),
            NewValue::LeadInLength(to, system) | NewValue::AlongTravel(to, system) => format_length_input(to, system),
        }
    }

    /// What to do, as the first or a later part of a sentence.
    pub fn phrase(&self, is_first: bool, all: &[ChannelLoop], wiring: Wiring) -> Statement {
        let statement = match self.kind() {
            ChangeKind::Turns => Statement::new("compatibility-change-turns"),
            ChangeKind::Wiring => Statement::new("compatibility-change-wiring"),
            ChangeKind::LeadInGauge => Statement::new("compatibility-change-lead-in-gauge"),
            ChangeKind::LeadInLength => Statement::new("compatibility-change-lead-in-length"),
            ChangeKind::AlongTravel => Statement::new("compatibility-change-along-travel"),
        };
        let statement = statement.code("place", if is_first { "first" } else { "next" }).with("to", self.to());
        if self.kind() == ChangeKind::Wiring {
            return statement.with("from", self.from(None, wiring));
        }
        let name = |index: &usize| {
            let one = &all[*index];
            let name = one.mark.map_or_else(|| one.label.clone(), |mark| mark.to_string());
            Statement::new("compatibility-changed-loop").text("loop", name)
        };
        let mut before: Vec<Statement> = Vec::new();
        for index in &self.loops {
            let value =
                Statement::new("compatibility-changed-value").with("value", self.from(Some(&all[*index]), wiring));
            if !before.contains(&value) {
                before.push(value);
            }
        }
        let join = list_join(before.len());
        statement
            .count("count", self.loops.len() as u64)
            .phrases("loops", self.loops.iter().map(name).collect(), list_join(self.loops.len()))
            .phrases("from", before, join)
    }
}

/// What stands between so many things.
fn list_join(count: usize) -> ListJoin {
    if count > 2 { ListJoin::Comma } else { ListJoin::And }
}

/// A length as a request would hold it, and as it is then read.
fn as_sent(length: Length, system: UnitSystem) -> Length {
    parse::<dimension::Length>(&format_length_input(length, system)).map_or(length, |read| read.si)
}

/// The loops of a channel among all loops of a request.
pub struct ChangeableChannel<'a> {
    /// All loops.
    pub all: &'a [ChannelLoop],
    /// Those of the channel.
    pub own: std::ops::Range<usize>,
    /// How loops come to the unit.
    pub wiring: Wiring,
}

impl ChangeableChannel<'_> {
    /// The changes of a kind to try, the smallest first: of one loop at a time, then of all alike. Loops of one row stay alike.
    pub fn changes(&self, kind: ChangeKind) -> Vec<Change> {
        self.single_changes(kind).into_iter().chain(self.common_changes(kind)).collect()
    }

    /// A few changes of a kind: of one loop, and of all alike.
    pub fn few_changes(&self, kind: ChangeKind, count: usize) -> Vec<Change> {
        let (single, common) = (self.single_changes(kind), self.common_changes(kind));
        let singles = if common.is_empty() { count } else { count / 2 };
        let spread = |changes: Vec<Change>, count: usize| {
            // Lead-ins have many lengths: some of them, over the whole range.
            let every = if kind == ChangeKind::LeadInLength { changes.len().div_ceil(count.max(1)).max(1) } else { 1 };
            changes.into_iter().skip(every - 1).step_by(every).take(count).collect::<Vec<_>>()
        };
        let common = spread(common, count - singles);
        spread(single, singles).into_iter().chain(common).collect()
    }

    fn loops(&self) -> impl Iterator<Item = &ChannelLoop> {
        self.all[self.own.clone()].iter()
    }

    /// The loops that change together where a row stays alike: each once, a few at most.
    fn rows(&self) -> Vec<Vec<usize>> {
        let mut rows: Vec<Vec<usize>> = Vec::new();
        for index in self.own.clone() {
            if rows.iter().any(|row| row.contains(&index)) {
                continue;
            }
            let is_mate = |other: &usize| *other == index || are_in_one_row(&self.all[index], &self.all[*other]);
            rows.push((0..self.all.len()).filter(is_mate).collect());
        }
        rows
    }

    /// Changes of one loop, or one row.
    fn single_changes(&self, kind: ChangeKind) -> Vec<Change> {
        let rows = match kind {
            ChangeKind::Wiring => return self.wirings(),
            ChangeKind::Turns | ChangeKind::AlongTravel => self.rows(),
            ChangeKind::LeadInGauge | ChangeKind::LeadInLength => self.own.clone().map(|index| vec![index]).collect(),
        };
        let mut by_size: Vec<(usize, Change)> = Vec::new();
        for loops in rows.into_iter().take(MAX_SINGLE_LOOPS) {
            let values = values(kind, &self.all[loops[0]]).into_iter().enumerate();
            by_size.extend(values.map(|(size, value)| (size, Change { loops: loops.clone(), value })));
        }
        by_size.sort_by_key(|(size, _)| *size);
        by_size.into_iter().map(|(_, change)| change).collect()
    }

    /// Changes of all loops to one value; none where that would change only one, or one row.
    pub fn common_changes(&self, kind: ChangeKind) -> Vec<Change> {
        let rows = self.rows();
        if self.own.len() < 2 || (rows.len() < 2 && matches!(kind, ChangeKind::Turns | ChangeKind::AlongTravel)) {
            return Vec::new();
        }
        let with_rows = |values: Vec<NewValue>, changes: &dyn Fn(&ChannelLoop, &NewValue) -> bool| {
            let change = |value: NewValue| {
                let changed = rows.iter().flatten().filter(|index| changes(&self.all[**index], &value));
                Change { loops: changed.copied().collect(), value }
            };
            values.into_iter().map(change).filter(|change| change.loops.len() > 1).collect::<Vec<_>>()
        };
        let longest = |of: fn(&ChannelLoop) -> Length| {
            self.loops().max_by(|one, other| of(one).value.total_cmp(&of(other).value))
        };
        match kind {
            ChangeKind::Wiring => Vec::new(),
            ChangeKind::Turns => with_rows(
                self.common_turns(),
                &|one, value| matches!(value, NewValue::Turns(to) if *to != one.coil.turns),
            ),
            ChangeKind::AlongTravel => {
                let longest = longest(|one| one.coil.along_travel);
                let values = longest.map_or_else(Vec::new, |longest| values(kind, longest));
                with_rows(
                    values,
                    &|one, value| matches!(value, NewValue::AlongTravel(to, _) if *to > one.coil.along_travel),
                )
            }
            ChangeKind::LeadInLength => {
                let longest = longest(|one| one.lead_in.length);
                let values = longest.map_or_else(Vec::new, |longest| values(kind, longest));
                with_rows(
                    values,
                    &|one, value| matches!(value, NewValue::LeadInLength(to, _) if *to < one.lead_in.length && *to >= laid(one)),
                )
            }
            ChangeKind::LeadInGauge => {
                let values = self.loops().next().map_or_else(Vec::new, |first| values(kind, first));
                with_rows(
                    values,
                    &|one, value| matches!(value, NewValue::LeadInGauge(_, area) if *area >= NEXT_SIZE * one.lead_in.area),
                )
            }
        }
    }

    /// Turns for all loops, those first that change the least.
    fn common_turns(&self) -> Vec<NewValue> {
        let turns: Vec<_> = self.loops().map(|one| one.coil.turns).collect();
        let (least, most) = (turns.iter().min().copied().unwrap_or(1), turns.iter().max().copied().unwrap_or(1));
        let range = least.saturating_sub(MAX_TURNS_APART).max(1)..=(most + MAX_TURNS_APART).min(20);
        let mut by_size: Vec<_> = range.collect();
        by_size.sort_by_key(|to| turns.iter().map(|from| to.abs_diff(*from)).sum::<u32>());
        by_size.into_iter().take(2 * MAX_TURNS_APART as usize).map(NewValue::Turns).collect()
    }

    fn wirings(&self) -> Vec<Change> {
        if self.own.len() < 2 {
            return Vec::new();
        }
        let others = [Wiring::Series, Wiring::Parallel, Wiring::Separate].into_iter();
        let change = |wiring| Change { loops: Vec::new(), value: NewValue::Wiring(wiring) };
        others.filter(|wiring| *wiring != self.wiring).map(change).collect()
    }
}

/// The values to try on a loop, the smallest change first.
fn values(kind: ChangeKind, one: &ChannelLoop) -> Vec<NewValue> {
    match kind {
        ChangeKind::Turns => {
            let from = one.coil.turns;
            let by_size = (1..=MAX_TURNS_APART).flat_map(|apart| [from.checked_add(apart), from.checked_sub(apart)]);
            by_size.flatten().filter(|turns| (1..=20).contains(turns)).map(NewValue::Turns).collect()
        }
        ChangeKind::Wiring => Vec::new(),
        ChangeKind::LeadInGauge => {
            let sizes = if one.lead_in.gauge.to_lowercase().contains("mm") { METRIC_GAUGES } else { GAUGES };
            let read = |text: &'static str| Some((text, parse::<dimension::WireSize>(text).ok()?.si));
            let larger = sizes.into_iter().filter_map(read).filter(|(_, area)| *area >= NEXT_SIZE * one.lead_in.area);
            larger.map(|(text, area)| NewValue::LeadInGauge(text, area)).collect()
        }
        ChangeKind::LeadInLength => {
            let (longest, system) = (one.lead_in.length, one.lead_in.system);
            let shares = (1..LEAD_IN_STEPS).map(|step| 1.0 - f64::from(step) / f64::from(LEAD_IN_STEPS));
            let mut lengths: Vec<_> =
                shares.map(|share| as_sent(STEP.floor(share * longest, system), system)).collect();
            lengths.dedup();
            let possible = |length: &Length| *length > Length::default() && *length >= laid(one) && *length < longest;
            lengths.into_iter().filter(possible).map(|length| NewValue::LeadInLength(length, system)).collect()
        }
        ChangeKind::AlongTravel => {
            let ResolvedLoop { along_travel: from, system, .. } = one.coil;
            let tidy = ALTERNATIVE_STEP.floor(from, system);
            let legs = (1..=MAX_LEGS).map(|count| tidy + f64::from(count) * ALTERNATIVE_STEP.in_system(system));
            let possible = legs.take_while(|leg| *leg <= 1.000_001 * MAX_LEG.in_system(system));
            possible.map(|leg| NewValue::AlongTravel(as_sent(leg, system), system)).collect()
        }
    }
}

/// What of a lead-in is said to lie in slots and conduit: it gets no shorter than that.
fn laid(one: &ChannelLoop) -> Length {
    one.lead_in.in_slot.unwrap_or_default() + one.lead_in.in_conduit.unwrap_or_default()
}
