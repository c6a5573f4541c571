//! The way of each pair from its loop to the unit: a slot to the edge of the pavement on the side of the unit, the shortest there, then
//! conduit. Only what is sent lies in the slab farther.
//!
//! Each pair leaves its loop in a slot of its own. Pairs go on in one slot only where they may: twisted or jacketed, and of one unit; screened
//! ones of any unit. A row's pairs run beside the row, off the slots of its loops, into one slot to the edge. What was sent to lie in the
//! slab farther shares one slot for each unit from the edge on.

use uom::si::f64::Length;

use super::job_layout::LaidLoop;
use super::lead_in_way::{LeadInWay, SharedSlotKey};
use crate::calculation::input::ResolvedOpening;
use crate::practice::lead_ins::OFF_THE_ROW;

/// Decides the way of each pair.
pub fn lay_ways(loops: &mut [LaidLoop], opening: &ResolvedOpening) {
    let mut ways: Vec<LeadInWay> = loops.iter().map(|laid| lay_way(laid, opening)).collect();
    // A slot that only one pair would lie in is its own.
    for index in 0..ways.len() {
        let slot = ways[index].shared_slot.clone();
        if slot.is_none() {
            continue;
        }
        let pairs: usize = ways.iter().filter(|way| way.shared_slot == slot).map(|way| way.shared_slots.len()).sum();
        if pairs < 2 {
            ways[index] = LeadInWay::alone(ways[index].pair, ways[index].in_slot());
        }
    }
    for (laid, way) in loops.iter_mut().zip(ways) {
        laid.way = way;
    }
}

fn lay_way(laid: &LaidLoop, opening: &ResolvedOpening) -> LeadInWay {
    let (lead_in, system) = (&laid.lead_in, opening.system);
    let pair = lead_in.pair_of(laid.construction);
    if !laid.construction.is_sawn() {
        return LeadInWay::alone(pair, Length::default());
    }
    let reach = |way: Length| way.max(Length::default()).min(lead_in.length);
    let to_edge: Vec<Length> = laid.lane.centres.iter().map(|centre| edge_distance(laid, *centre, opening)).collect();
    let (sent, is_row) = (lead_in.slot_sent(), to_edge.len() > 1);
    let to_row_slot = OFF_THE_ROW.in_system(system);
    // Where the pair may go on with others: at the edge, or beside its row.
    let own = reach(if is_row { to_row_slot } else { to_edge.first().copied().unwrap_or_default() });
    let own = sent.map_or(own, |sent| own.min(sent));
    let shared: Vec<Length> = to_edge
        .iter()
        .map(|edge| match sent {
            Some(sent) => sent - own,
            None if is_row => reach(own + *edge) - own,
            None => Length::default(),
        })
        .collect();
    let total = shared.iter().fold(Length::default(), |sum, shared| sum + *shared);
    // What is left of a way that ends at the edge is a binary fraction, and no slot.
    if !pair.may_share_slot() || total <= 1e-6 * lead_in.length {
        return LeadInWay::alone(pair, own + total / shared.len().max(1) as f64);
    }
    let shared_slot = match sent {
        Some(_) if pair.may_share_with_other_units() => SharedSlotKey::AllUnits,
        Some(_) => SharedSlotKey::Unit(laid.unit.to_string()),
        None => SharedSlotKey::Row(laid.mark),
    };
    LeadInWay { pair, own_slot: own, shared_slots: shared, shared_slot: Some(shared_slot) }
}

/// From the nearest leg of a loop to the edge of the pavement on the side of the unit.
pub(super) fn edge_distance(laid: &LaidLoop, centre: Length, opening: &ResolvedOpening) -> Length {
    // Across is to the right as one drives in.
    let towards_unit = centre * opening.unit_side.across();
    opening.width / 2.0 - towards_unit - laid.coil.across_lane / 2.0
}
