//! Reads the loops of a request, with their slots and lead-ins.

use uom::si::f64::Length;

use super::job::{LoopJob, SlotGiven};
use super::read::usual_construction;
use super::request::{EstimatedLoop, MaterialEstimateRequest};
use super::trench::widest;
use crate::calculation::input::{LeadIn, ResolvedLeadIn, ResolvedLoop, ResolvedSlot, Slot};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath};
use crate::practice::materials::{Corner, best_width, suits};
use crate::practice::roles::usual_corner_cut;
use crate::practice::sealants::SealantKind;
use crate::practice::site::{Construction, Surface};
use crate::practice::sources::Source;
use crate::practice::wires::least_clearance;
use crate::quantity::QuantityField;
use crate::quantity::format::format_length_input;
use crate::vocabulary::Vocabulary;

/// What decides over the slot of a loop.
struct Asked {
    construction: Construction,
    surface: Surface,
    agency_width: Length,
}

impl MaterialEstimateRequest {
    /// Reads the loops.
    pub(super) fn read_loops(
        &self,
        surface: Surface,
        agency_width: Length,
        diagnostics: &mut Diagnostics,
    ) -> Option<Vec<LoopJob>> {
        let body = FieldPath::BODY;
        let loops_at = body.field("loops");
        let mut loops = Vec::new();
        for (index, estimated) in self.loops.iter().enumerate() {
            let at = loops_at.item(index);
            if self.loops[..index].iter().any(|other| other.label == estimated.label) {
                diagnostics.add_error(
                    &at.field("label"),
                    FieldErrorCode::Contradiction,
                    format!("The label {} stands twice.", estimated.label),
                    "Give every loop a label of its own; loops that are alike are one with a quantity.",
                );
            }
            loops.push(self.read_loop(estimated, surface, agency_width, &at, diagnostics));
        }
        loops.into_iter().collect()
    }

    fn read_loop(
        &self,
        estimated: &EstimatedLoop,
        surface: Surface,
        agency_width: Length,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Option<LoopJob> {
        let coil = estimated.r#loop.read(&at.field("loop"), diagnostics);
        let usual = usual_construction(surface);
        let construction = diagnostics.value_or_default(
            &at.field("construction"),
            estimated.construction,
            (usual, usual.code()),
            "What the surface asks for.",
            Source::CommonPractice,
        );
        let lead_in = read_lead_in(estimated, construction, surface, at, diagnostics);
        let coil = self.round_corners(coil?, construction, at, diagnostics);
        let loop_at = at.field("loop");
        let wire_at = loop_at.field("wire");
        if construction == Construction::PreformedSawCut || suits(Construction::PreformedSawCut, surface) {
            diagnostics.mark_used(&wire_at.field("over_jacket"));
        }
        if coil.wire.over_jacket.is_some_and(|jacket| jacket < coil.wire.over_insulation) {
            diagnostics.add_error(
                &wire_at.field("over_jacket"),
                FieldErrorCode::Contradiction,
                "The jacket is thinner than one of the wires in it.",
                "Send the diameter over the jacket, or the over_insulation of the wires in it.",
            );
        }
        if construction.is_sawn()
            && self.sealant.as_ref().is_some_and(|sealant| sealant.kind == SealantKind::HotApplied)
        {
            diagnostics.mark_used(&wire_at.field("insulation_rating"));
        }
        let rating = estimated.r#loop.wire.as_ref().and_then(|wire| wire.insulation_rating.as_ref());
        // One that cannot be read was noted with the wire.
        let rating = rating.and_then(|rating| rating.read().ok()).map(|written| written.si);
        let asked = Asked { construction, surface, agency_width };
        let slots = self.read_slots(estimated, &coil, &asked, at, diagnostics);
        let (lead_in, in_slot) = lead_in?;
        let (slots, given) = slots?;
        Some(LoopJob {
            label: estimated.label.clone(),
            coil,
            construction,
            quantity: estimated.quantity.unwrap_or(1),
            lead_in,
            rating,
            in_slot,
            has_own_slot: estimated.slot.is_some(),
            given,
            slots,
        })
    }

    /// Takes the usual corner cut where diagonal corners are asked for and the loop gives none.
    fn round_corners(
        &self,
        mut coil: ResolvedLoop,
        construction: Construction,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> ResolvedLoop {
        let loop_at = at.field("loop");
        let has_cut = coil.corner_cut > Length::default();
        match self.saw.as_ref().and_then(|saw| saw.corner) {
            Some(Corner::Diagonal) if !has_cut && construction.is_sawn() => {
                coil.corner_cut = usual_corner_cut(construction, coil.along_travel.min(coil.across_lane), coil.system);
                diagnostics.mark_unneeded(&loop_at, &[("corner_cut", false)]);
                let reason = "The usual corner cut, for diagonal corners are asked for.";
                let value = format_length_input(coil.corner_cut, coil.system);
                diagnostics.add_assumption(&loop_at.field("corner_cut"), value, reason, &[Source::NemaTestLoop]);
            }
            Some(corner @ (Corner::SquareOverrun | Corner::Cored)) if has_cut => {
                let detail = format!("Corners are {}, and a loop has corner cuts.", corner.code());
                let hint = "Leave corner_cut of the loop out, or send diagonal.";
                diagnostics.add_error(
                    &FieldPath::BODY.field("saw").field("corner"),
                    FieldErrorCode::Contradiction,
                    detail,
                    hint,
                );
            }
            _ => {}
        }
        coil
    }

    /// The slot of each construction that is sawn. What was not given is said once it is known how deep is cut.
    fn read_slots(
        &self,
        estimated: &EstimatedLoop,
        coil: &ResolvedLoop,
        asked: &Asked,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Option<([ResolvedSlot; 2], SlotGiven)> {
        let (body, own_at, loop_at) = (FieldPath::BODY, at.field("slot"), at.field("loop"));
        let common_at = body.field("slot");
        let (sent, slot_at) = match &estimated.slot {
            Some(own) => (Some(own), own_at),
            None => (self.slot.as_ref(), common_at),
        };
        let width = diagnostics.parse_optional(&slot_at.field("width"), sent.and_then(|slot| slot.width.as_ref()));
        let depth = diagnostics.parse_optional(&slot_at.field("depth"), sent.and_then(|slot| slot.depth.as_ref()));
        let of_slot = diagnostics.parse_optional(&slot_at.field("cover"), sent.and_then(|slot| slot.cover.as_ref()));
        // The cover of the loop itself goes before that of its slot.
        let own_cover = estimated.r#loop.cover.as_ref().map(|_| coil.cover);
        let cover = own_cover.or(of_slot);
        let read = |sawn: Construction| {
            let usual = Slot::read(None, sawn, &slot_at, &mut Diagnostics::default())?;
            let widest = widest(coil, sawn);
            let has_room = widest + least_clearance() <= usual.width * 1.000_001;
            let usual_width = if has_room { usual.width } else { best_width(widest, coil.system) };
            Some(ResolvedSlot {
                width: width.unwrap_or(usual_width.max(asked.agency_width)),
                depth: depth.unwrap_or(usual.depth),
                depth_is_fixed: depth.is_some(),
                cover: cover.unwrap_or(usual.cover),
            })
        };
        let slots = [read(Construction::HandWound)?, read(Construction::PreformedSawCut)?];
        let too_much = match asked.construction {
            Construction::HandWound => slots[0].cover,
            Construction::PreformedSawCut => slots[1].cover,
            Construction::PreformedDirectBurial => cover.unwrap_or_default(),
        };
        if depth.is_some_and(|depth| too_much >= depth) {
            let place = if own_cover.is_some() { loop_at.field("cover") } else { slot_at.field("cover") };
            let hint = "Send a deeper slot or less cover.";
            diagnostics.add_error(&place, FieldErrorCode::Contradiction, "The cover is as deep as the slot.", hint);
        }
        diagnostics.mark_unneeded(&loop_at, &[("cover", false)]);
        if estimated.slot.is_some() && own_cover.is_some() && of_slot.is_some() {
            diagnostics.mark_unused(&slot_at.field("cover"));
        }
        if !asked.construction.is_sawn() && !suits(Construction::HandWound, asked.surface) {
            diagnostics.mark_unneeded(&loop_at, &[("cover", own_cover.is_some())]);
            if let Some(sent) = sent {
                let fields =
                    [("width", sent.width.is_some()), ("depth", sent.depth.is_some()), ("cover", sent.cover.is_some())];
                diagnostics.mark_unneeded(&slot_at, &fields);
            }
        }
        let given = SlotGiven { width: width.is_some(), depth: depth.is_some(), cover: cover.is_some() };
        Some((slots, given))
    }

    /// A common slot that no loop takes must be sound all the same; of one whose takers have covers of their own, the cover is unused.
    pub(super) fn read_idle_slot(&self, diagnostics: &mut Diagnostics) {
        let Some(slot) = self.slot.as_ref() else { return };
        let body = FieldPath::BODY;
        let mut takers = self.loops.iter().filter(|one| one.slot.is_none()).peekable();
        if takers.peek().is_some() {
            if slot.cover.is_some() && takers.all(|one| one.r#loop.cover.is_some()) {
                diagnostics.mark_unused(&body.field("slot").field("cover"));
            }
            return;
        }
        let mut aside = Diagnostics::default();
        Slot::read(Some(slot), Construction::HandWound, &body.field("slot"), &mut aside);
        diagnostics.append_errors(&mut aside);
        diagnostics.mark_unused(&body.field("slot"));
    }
}

/// The pair, and how much of it lies in a saw cut.
fn read_lead_in(
    estimated: &EstimatedLoop,
    construction: Construction,
    surface: Surface,
    at: &FieldPath<'_>,
    diagnostics: &mut Diagnostics,
) -> Option<(ResolvedLeadIn, Length)> {
    let at = at.field("lead_in");
    let sent = estimated.lead_in.as_ref();
    let lead_in = LeadIn::read_or_usual(sent, &at, diagnostics);
    // The pair is the loop's own wire, or comes with the preformed loop.
    let is_sent = |field: fn(&LeadIn) -> bool| sent.is_some_and(field);
    diagnostics.mark_unneeded(
        &at,
        &[
            ("gauge", is_sent(|lead_in| lead_in.gauge.is_some())),
            ("inductance", is_sent(|lead_in| lead_in.inductance.is_some())),
        ],
    );
    let lead_in = lead_in?;
    let rest_of = |part: Option<Length>| (lead_in.length - part.unwrap_or_default()).max(Length::default());
    let (beside_conduit, beside_slot) = (rest_of(lead_in.in_conduit), rest_of(lead_in.in_slot));
    let in_slot = lead_in.in_slot.unwrap_or(beside_conduit);
    let (slot_at, conduit_at) = (at.field("in_slot"), at.field("in_conduit"));
    let zero = Length::default();
    if construction.is_sawn() {
        if lead_in.in_slot.is_none() && beside_conduit > zero {
            let reason = "What is not in conduit lies in a saw cut; send in_slot where the cut ends before the unit.";
            diagnostics.add_assumption(
                &slot_at,
                format_length_input(beside_conduit, lead_in.system),
                reason,
                &[Source::OwnChoice],
            );
        } else if lead_in.in_slot.is_some() && lead_in.in_conduit.is_none() && beside_slot > zero {
            let reason = "What lies in no saw cut lies in conduit.";
            diagnostics.add_assumption(
                &conduit_at,
                format_length_input(beside_slot, lead_in.system),
                reason,
                &[Source::OwnChoice],
            );
        }
    } else {
        if lead_in.in_conduit.is_none() && lead_in.length > zero {
            let reason = "The lead-in of a buried loop lies in conduit all the way.";
            diagnostics.add_assumption(
                &conduit_at,
                format_length_input(lead_in.length, lead_in.system),
                reason,
                &[Source::CommonPractice],
            );
        }
        // Where the comparison has a saw cut, it is needed for that.
        if !suits(Construction::HandWound, surface) {
            diagnostics.mark_unneeded(&at, &[("in_slot", lead_in.in_slot.is_some())]);
        }
    }
    Some((lead_in, in_slot))
}
