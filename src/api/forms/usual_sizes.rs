//! Sizes that defaults are said with, from the constants that the calculations take them from, in both systems of units.

use uom::si::f64 as si;
use uom::si::length::millimeter;

use crate::calculation::report::Statement;
use crate::practice::layout::{EDGE_SETBACK, EDGE_SETBACK_BESIDE_TRAFFIC, NominalLength};
use crate::practice::site::{Barrier, Construction};
use crate::quantity::{UnitSystem, dimension, parse};

/// The clear strip at each edge.
pub fn edge_setback() -> Statement {
    let said = strip(Statement::new("forms-edge-setback-default"), ["strip", "strip_metric"], EDGE_SETBACK);
    strip(said, ["beside_traffic", "beside_traffic_metric"], EDGE_SETBACK_BESIDE_TRAFFIC)
}

/// The height of a leaf.
pub fn leaf_height() -> Statement {
    let [(leaf, _), (door, _)] = leaves();
    let said = high(Statement::new("forms-leaf-height-default"), ["leaf", "leaf_metric"], leaf);
    high(said, ["door", "door_metric"], door)
}

/// The gap under a leaf.
pub fn leaf_gap() -> Statement {
    let [(_, leaf), (_, door)] = leaves();
    let said = small(Statement::new("forms-leaf-gap-default"), ["leaf", "leaf_metric"], leaf);
    small(said, ["door", "door_metric"], door)
}

/// The depth of a slot.
pub fn slot_depth() -> Statement {
    let [wound, jacketed] = constructions().map(|construction| construction.usual_slot_depth().0);
    let said = small(Statement::new("forms-slot-depth-default"), ["wound", "wound_metric"], wound);
    small(said, ["jacketed", "jacketed_metric"], jacketed)
}

/// The cover over the wire.
pub fn cover() -> Statement {
    let [wound, jacketed] = constructions().map(|construction| construction.usual_cover().0);
    let said = small(Statement::new("forms-cover-default"), ["wound", "wound_metric"], wound);
    small(said, ["jacketed", "jacketed_metric"], jacketed)
}

/// Height and gap of a gate leaf, and those of an overhead door.
fn leaves() -> [(&'static str, &'static str); 2] {
    [Barrier::SlideGate, Barrier::OverheadDoor].map(Barrier::usual_leaf)
}

/// A loop that is wound on site, and one that comes ready made.
fn constructions() -> [Construction; 2] {
    [Construction::HandWound, Construction::PreformedSawCut]
}

/// Adds a length that is tidy in both systems.
fn strip(said: Statement, names: [&'static str; 2], length: NominalLength) -> Statement {
    let [us, metric] = [UnitSystem::UsCustomary, UnitSystem::Metric];
    said.length(names[0], length.in_system(us), us).length(names[1], length.in_system(metric), metric)
}

/// Adds a plan length.
fn high(said: Statement, names: [&'static str; 2], text: &str) -> Statement {
    let length = length(text);
    said.length(names[0], length, UnitSystem::UsCustomary).length(names[1], length, UnitSystem::Metric)
}

/// Adds a small length, in whole millimetres where it is metric, as a rule shows them.
fn small(said: Statement, names: [&'static str; 2], text: &str) -> Statement {
    let length = length(text);
    let whole = si::Length::new::<millimeter>(length.get::<millimeter>().round());
    said.detail_length(names[0], length, UnitSystem::UsCustomary).detail_length(names[1], whole, UnitSystem::Metric)
}

fn length(text: &str) -> si::Length {
    parse::<dimension::Length>(text).map_or_else(|_| si::Length::default(), |parsed| parsed.si)
}
