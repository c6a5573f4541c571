//! Where the slot of a pair ends, seen from the edge of the pavement, and the way of the pair in words.

use uom::si::f64::Length;
use uom::si::length::millimeter;

use super::job_layout::LaidLoop;
use super::lead_in_way::SharedSlotKey;
use super::way_to_unit::edge_distance;
use crate::calculation::input::ResolvedOpening;
use crate::calculation::report::Statement;
use crate::practice::lead_ins::OFF_THE_ROW;
use crate::vocabulary::Vocabulary;

/// The ways to the edge from the loops of a row, each with what it lies off the row.
fn ways_to_edge(laid: &LaidLoop, opening: &ResolvedOpening) -> impl Iterator<Item = Length> {
    let is_row = laid.lane.centres.len() > 1;
    let off_row = if is_row { OFF_THE_ROW.in_system(opening.system) } else { Length::default() };
    laid.lane.centres.iter().map(move |centre| off_row + edge_distance(laid, *centre, opening))
}

/// The slot that takes the pair of a loop to the edge: of a row the longest, or, where each pair has a slot of its own, what they need on the
/// average.
pub fn slot_to_edge(laid: &LaidLoop, opening: &ResolvedOpening) -> Length {
    let ways: Vec<Length> = ways_to_edge(laid, opening).collect();
    if laid.way.shared_slots.is_empty() {
        ways.iter().fold(Length::default(), |sum, way| sum + *way) / ways.len().max(1) as f64
    } else {
        ways.into_iter().fold(Length::default(), Length::max)
    }
}

/// Where the slot of a pair ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SlotEnd {
    /// There is none.
    NoSlot,
    /// So far short of the edge.
    BeforeEdge(Length),
    /// At the edge.
    AtEdge,
    /// So far past the edge, in a slab that goes on there.
    PastEdge(Length),
}

impl SlotEnd {
    /// The end of the slot of a loop, or of the pair of a row that has the longest way.
    pub fn of(laid: &LaidLoop, opening: &ResolvedOpening) -> Self {
        let way = &laid.way;
        if way.in_slot() <= Length::default() {
            return Self::NoSlot;
        }
        let slots = way.shared_slots.iter().map(|shared| way.own_slot + *shared);
        let past = if way.shared_slots.is_empty() {
            way.own_slot - slot_to_edge(laid, opening)
        } else {
            let ends = slots.zip(ways_to_edge(laid, opening)).map(|(slot, needed)| slot - needed);
            ends.reduce(Length::min).unwrap_or_default()
        };
        if past.abs() < Length::new::<millimeter>(1.0) {
            Self::AtEdge
        } else if past > Length::default() {
            Self::PastEdge(past)
        } else {
            Self::BeforeEdge(-past)
        }
    }

    /// The value in reports.
    pub fn code(self) -> &'static str {
        match self {
            Self::NoSlot => "no_slot",
            Self::BeforeEdge(_) => "before_edge",
            Self::AtEdge => "at_edge",
            Self::PastEdge(_) => "past_edge",
        }
    }

    /// How far it is from the edge.
    pub fn from_edge(self) -> Length {
        match self {
            Self::NoSlot | Self::AtEdge => Length::default(),
            Self::BeforeEdge(short) | Self::PastEdge(short) => short,
        }
    }
}

/// The way of the pair of a loop in a phrase: what of it lies in which slot, where that ends, and what goes on to the unit.
pub fn describe_way(laid: &LaidLoop, opening: &ResolvedOpening) -> Statement {
    let (way, end, system) = (&laid.way, SlotEnd::of(laid, opening), opening.system);
    let in_conduit = laid.in_conduit();
    let home_run = laid.home_run();
    let slot = match way.shared_slot {
        _ if end == SlotEnd::NoSlot => "none",
        None => "own",
        Some(SharedSlotKey::Row(_)) => "row",
        Some(SharedSlotKey::Unit(_)) => "unit",
        Some(SharedSlotKey::AllUnits) => "all_units",
    };
    let goes_on = match (&home_run, in_conduit > 1e-6 * laid.lead_in.length) {
        (Some(_), true) => "home_run",
        (Some(_), false) => "home_run_bare",
        (None, true) => "conduit",
        (None, false) => "slot",
    };
    let home_run = home_run.unwrap_or_default();
    Statement::new("sizing-way-of-pair")
        .code("slot", slot)
        .length("own_slot", way.own_slot, system)
        .length("shared_slot", way.shared_slot_length(), system)
        .code("slot_end", end.code())
        .length("from_edge", end.from_edge(), system)
        .code("unit_side", opening.unit_side.code())
        .code("goes_on", goes_on)
        .length("in_conduit", in_conduit, system)
        .length("cable_length", home_run.cable, system)
        .text("gauge", home_run.gauge)
        .count("unit", laid.unit as u64)
}
