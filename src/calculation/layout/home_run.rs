//! The home run: cable of its own gauge that goes on to the unit from a pull box, where the pair of the loop ends.

use uom::si::f64::{Area, Length, Ratio};
use uom::si::ratio::ratio;

use super::lead_in_way::LeadInWay;
use crate::calculation::input::ResolvedLeadIn;
use crate::practice::materials::TAIL_IN_PULL_BOX;
use crate::quantity::{dimension, parse};

/// Cable from the pull box to the unit.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct HomeRun {
    /// Its size as it was written.
    pub gauge: String,
    /// The cable that one loop needs: the way from the box, and the slack at the unit.
    pub cable: Length,
    /// The pair of the loop that ends in the box: its way in the slot and the tail there.
    pub tail: Length,
}

impl HomeRun {
    /// Whether a pair goes on as a home run: another gauge than that of the wire was sent, and the loop is none from stock, which comes with a
    /// pair that reaches.
    pub fn is_asked(lead_in: &ResolvedLeadIn, wire: Area, is_from_stock: bool) -> bool {
        let differs = (lead_in.area / wire - Ratio::new::<ratio>(1.0)).abs() > Ratio::new::<ratio>(1e-3);
        lead_in.gauge_is_sent && differs && lead_in.length > Length::default() && !is_from_stock
    }

    /// The home run of a pair from the end of its slot on, if it lies in one; of a row, from the slot that goes farthest.
    pub fn beyond_slot(lead_in: &ResolvedLeadIn, way: Option<&LeadInWay>) -> Option<Self> {
        let tail = parse::<dimension::Length>(TAIL_IN_PULL_BOX).ok()?.si;
        let in_slot = way.map_or_else(Length::default, LeadInWay::in_slot);
        let farthest = way.map_or_else(Length::default, LeadInWay::farthest_in_slot);
        let beyond = (lead_in.length - farthest).max(Length::default());
        Some(Self { gauge: lead_in.gauge.clone(), cable: beyond + lead_in.spare, tail: in_slot + tail })
    }
}
