//! The lanes of loops that no layout has decided: what was sent, else the loop, or its row, and the usual setback.

use std::borrow::Borrow;

use uom::si::f64::Length;
use uom::si::length::millimeter;

use crate::calculation::input::ResolvedLoop;
use crate::calculation::layout::{ChannelLoop, Lane};
use crate::practice::layout::{EDGE_SETBACK, NEIGHBOUR_GAP};

/// What was sent of the lane of a loop.
#[derive(Clone, Copy, Debug, Default)]
pub struct SentLane {
    /// Its width.
    pub width: Option<Length>,
    /// Where its middle lies across.
    pub middle: Option<Length>,
}

/// The lane of a loop among others: loops of one role that are alike and lie side by side form a row across one lane.
pub fn lane_of(one: &ChannelLoop, loops: &[impl Borrow<ChannelLoop>], sent: SentLane) -> Lane {
    let (row, system) = (row_of(one, loops, sent.width), one.coil.system);
    let (first, last) = (row.first().copied().unwrap_or_default(), row.last().copied().unwrap_or_default());
    let middle = sent.middle.unwrap_or((first + last) / 2.0);
    let outermost = (last - middle).max(middle - first) + one.coil.across_lane / 2.0;
    let usual = 2.0 * (outermost + EDGE_SETBACK.in_system(system));
    let centres = match row.as_slice() {
        [] => vec![Length::default()],
        row => row.iter().map(|across| *across - middle).collect(),
    };
    Lane::of(one.role, sent.width.unwrap_or(usual), centres, system)
}

/// Where across the loops of one row lie, left to right: those of the role that are alike and lie side by side, each no farther from the
/// next than a neighbour's gap, and all within the lane where its width was sent.
fn row_of(one: &ChannelLoop, loops: &[impl Borrow<ChannelLoop>], sent_width: Option<Length>) -> Vec<Length> {
    let Some((_, own)) = one.position else { return Vec::new() };
    let beside =
        loops.iter().map(Borrow::borrow).filter(|other| is_beside(one, other)).filter_map(|other| other.position);
    let mut across: Vec<_> = beside.map(|(_, across)| across).collect();
    across.sort_by(|a, b| a.value.total_cmp(&b.value));
    let reach = one.coil.across_lane + NEIGHBOUR_GAP.in_system(one.coil.system);
    let is_next = |pair: &[Length]| pair[1] - pair[0] <= reach;
    let own_at = across.iter().position(|other| *other == own).unwrap_or_default();
    let before = across[..=own_at].windows(2).rev().take_while(|pair| is_next(pair)).count();
    let behind = across[own_at..].windows(2).take_while(|pair| is_next(pair)).count();
    let row = across[own_at - before..=own_at + behind].to_vec();
    let span = row[row.len() - 1] - row[0] + one.coil.across_lane;
    if sent_width.is_some_and(|width| span > width) { vec![own] } else { row }
}

/// Whether two loops of one role are alike and lie side by side, or are the same.
fn is_beside(one: &ChannelLoop, other: &ChannelLoop) -> bool {
    let near = |a: Length, b: Length| (a - b).abs() <= Length::new::<millimeter>(1.0);
    let are_alike = |a: &ResolvedLoop, b: &ResolvedLoop| {
        a.turns == b.turns && near(a.along_travel, b.along_travel) && near(a.across_lane, b.across_lane)
    };
    let places = one.position.zip(other.position);
    one.role == other.role
        && are_alike(&one.coil, &other.coil)
        && places.is_some_and(|((ours, _), (theirs, _))| near(ours, theirs))
}

/// Whether two loops belong to one row of their lane.
pub fn are_in_one_row(one: &ChannelLoop, other: &ChannelLoop) -> bool {
    one.lane.centres.len() > 1 && one.lane == other.lane && is_beside(one, other)
}
