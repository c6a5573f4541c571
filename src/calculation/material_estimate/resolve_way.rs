//! The way of the pair of a loop: as a layout has decided it, or as the request says.

use uom::si::f64::Length;

use crate::calculation::input::{LeadIn, ResolvedLeadIn};
use crate::calculation::layout::{HomeRun, LeadInWay, SharedSlotKey};
use crate::calculation::report::{Diagnostics, FieldPath, Finding, Statement};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::layout::EDGE_SETBACK;
use crate::practice::site::{Construction, Surface};
use crate::practice::sources::Source;
use crate::quantity::format::format_length_input;

/// The unit that all loops go to where nobody says otherwise.
const USUAL_UNIT: &str = "1";

/// A pair whose way is asked for.
pub struct PairToLay<'a> {
    /// What was sent of it.
    pub sent: Option<&'a LeadIn>,
    /// As it was understood.
    pub lead_in: &'a ResolvedLeadIn,
    /// How its loop is made.
    pub construction: Construction,
    /// What that lies in.
    pub surface: Surface,
    /// How many there are.
    pub quantity: u32,
    /// The unit that it goes to, when given.
    pub unit: Option<&'a str>,
    /// The way that a layout has decided.
    pub decided: Option<&'a LeadInWay>,
    /// Whether cable of its own gauge goes on from the edge of the pavement.
    pub is_home_run: bool,
}

impl PairToLay<'_> {
    /// The way of the pair, where something is sawn; `at` is the lead-in in the request.
    pub fn resolve_way(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> LeadInWay {
        let is_sent = |field: fn(&LeadIn) -> bool| self.sent.is_some_and(field);
        let gauge_unused = is_sent(|lead_in| lead_in.gauge.is_some()) && !self.is_home_run;
        let inductance_sent = is_sent(|lead_in| lead_in.inductance.is_some());
        diagnostics.mark_unneeded(at, &[("gauge", gauge_unused), ("inductance", inductance_sent)]);
        let way = self.decided.cloned().unwrap_or_else(|| self.read_way(at, diagnostics));
        self.say(&way, at, diagnostics);
        if self.decided.is_some() || !self.construction.is_sawn() {
            let shared = is_sent(|lead_in| lead_in.in_shared_slot.is_some());
            diagnostics.mark_unneeded(at, &[("in_shared_slot", shared)]);
        }
        way
    }

    /// The way that the request says: what is not in conduit lies in a slot.
    fn read_way(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> LeadInWay {
        let (lead_in, pair) = (self.lead_in, self.lead_in.pair_of(self.construction));
        // A splice lies in no slot: a home run begins in a box at the edge of the pavement.
        let usual =
            if self.is_home_run { lead_in.length.min(EDGE_SETBACK.in_system(lead_in.system)) } else { lead_in.length };
        let in_slot = lead_in.slot_sent().unwrap_or(usual);
        let shared = lead_in.in_shared_slot.unwrap_or_default().min(in_slot);
        if shared <= Length::default() {
            return LeadInWay::alone(pair, in_slot);
        }
        if !pair.may_share_slot() {
            let message = Statement::new("materials-pairs-apart");
            let finding = Finding::new(FindingCode::PairsApart, Level::Warning, &at.field("in_shared_slot"), message);
            diagnostics.add_finding(finding);
            return LeadInWay::alone(pair, in_slot);
        }
        let unit = SharedSlotKey::Unit(self.unit.unwrap_or(USUAL_UNIT).to_owned());
        LeadInWay {
            pair,
            own_slot: in_slot - shared,
            shared_slots: vec![shared; self.quantity as usize],
            shared_slot: Some(if pair.may_share_with_other_units() { SharedSlotKey::AllUnits } else { unit }),
        }
    }

    /// The home run of a pair that lies so.
    pub fn home_run(&self, way: &LeadInWay) -> Option<HomeRun> {
        let way = self.construction.is_sawn().then_some(way);
        self.is_home_run.then(|| HomeRun::beyond_slot(self.lead_in, way)).flatten()
    }

    /// Says what was taken for what nobody sent.
    fn say(&self, way: &LeadInWay, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) {
        let (lead_in, zero) = (self.lead_in, Length::default());
        let (slot_at, conduit_at) = (at.field("in_slot"), at.field("in_conduit"));
        let mut assume = |field_at: &FieldPath<'_>, length, reason, source| {
            diagnostics.add_assumption(field_at, format_length_input(length, lead_in.system), reason, &[source]);
        };
        if !self.construction.is_sawn() {
            if lead_in.in_conduit.is_none() && lead_in.length > zero {
                assume(&conduit_at, lead_in.length, Statement::new("materials-buried-lead-in"), Source::CommonPractice);
            }
            // Where the comparison has a saw cut, it is needed for that.
            if !self.surface.allows(Construction::HandWound) {
                diagnostics.mark_unneeded(at, &[("in_slot", lead_in.in_slot.is_some())]);
            }
            return;
        }
        let (in_slot, in_conduit) = (way.in_slot(), (lead_in.length - way.farthest_in_slot()).max(zero));
        if lead_in.in_slot.is_none() && in_slot > zero {
            let is_shortest = self.decided.is_some() && lead_in.in_conduit.is_none();
            let reason = if is_shortest {
                Statement::new("materials-lead-in-to-edge")
            } else if self.is_home_run && lead_in.in_conduit.is_none() {
                Statement::new("materials-lead-in-to-box")
            } else {
                Statement::new("materials-lead-in-in-slot")
            };
            assume(&slot_at, in_slot, reason, Source::OwnChoice);
        }
        let is_said = lead_in.in_slot.is_some() || self.decided.is_some() || self.is_home_run;
        if is_said && lead_in.in_conduit.is_none() && in_conduit > 1e-9 * lead_in.length {
            assume(&conduit_at, in_conduit, Statement::new("materials-lead-in-in-conduit"), Source::OwnChoice);
        }
    }
}
