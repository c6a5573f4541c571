//! From the loops of a request to typed quantities, with their slots and lead-ins.

use uom::si::f64::Length;

use super::request::{EstimatedLoop, MaterialEstimateRequest};
use super::resolve_way::PairToLay;
use super::resolved::{GivenSlotFields, ResolvedEstimatedLoop, ResolvedLeadInSlot, SawnSlots, StockDecision};
use crate::calculation::input::{
    LeadIn, ResolvedLeadIn, ResolvedLoop, ResolvedSlot, Slot, SlotAllowance, Wire, resolve_labels,
};
use crate::calculation::layout::{HomeRun, JobLayout, LaidLoop, LeadInWay, LoopMark};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::practice::layout::usual_corner_cut;
use crate::practice::materials::usual_slot_width;
use crate::practice::roles::Role;
use crate::practice::site::{Construction, Surface};
use crate::practice::sources::Source;
use crate::quantity::QuantityField;
use crate::quantity::format::format_length_input;
use crate::vocabulary::Vocabulary;

/// What the slot of a loop depends on, apart from the loop.
struct SlotContext {
    construction: Construction,
    surface: Surface,
    agency_width: Length,
}

/// The loops of a layout, and what the caller sent of what they share.
#[derive(Clone, Copy)]
pub struct LaidLoops<'a> {
    /// The layout.
    pub layout: &'a JobLayout,
    /// Their wire.
    pub wire: Option<&'a Wire>,
    /// Their lead-in.
    pub lead_in: Option<&'a LeadIn>,
}

/// A loop before its slots are known.
struct EstimateLoop<'a> {
    label: String,
    mark: Option<LoopMark>,
    role: Option<Role>,
    coil: ResolvedLoop,
    /// The cover over the loop itself, when given.
    cover: Option<Length>,
    construction: Construction,
    quantity: u32,
    lead_in: ResolvedLeadIn,
    /// What was sent of the lead-in, the wire and a slot of its own.
    lead_in_sent: Option<&'a LeadIn>,
    wire_sent: Option<&'a Wire>,
    slot_sent: Option<&'a Slot>,
    stock: StockDecision,
    /// The way of its pair that a layout has decided, or the unit that the request names.
    way: Option<LeadInWay>,
    unit: Option<String>,
}

/// The constructions of the loops, as far as they are given.
pub fn given_constructions(
    request: &MaterialEstimateRequest,
    laid: Option<LaidLoops<'_>>,
) -> Vec<Option<Construction>> {
    match laid {
        Some(laid) => laid.layout.loops.iter().map(|one| Some(one.construction)).collect(),
        None => request.loops.iter().map(|estimated| estimated.construction).collect(),
    }
}

/// Resolves the loops: those of the request, or of a layout.
pub fn resolve_loops(
    request: &MaterialEstimateRequest,
    laid: Option<LaidLoops<'_>>,
    surface: Surface,
    agency_width: Length,
    diagnostics: &mut Diagnostics,
) -> Option<Vec<ResolvedEstimatedLoop>> {
    let body = FieldPath::BODY;
    let loops_at = body.field("loops");
    let mut loops = Vec::new();
    if let Some(laid) = laid {
        for (index, one) in laid.layout.loops.iter().enumerate() {
            let at = loops_at.item(index);
            let taken = take_laid(one, laid, &at, diagnostics);
            loops.push(complete_loop(request, taken, surface, agency_width, &at, diagnostics));
        }
        return loops.into_iter().collect();
    }
    let sent = request.loops.iter().map(|estimated| estimated.label.as_deref());
    let hint = Statement::new("errors-label-twice-quantity-hint");
    let labels = resolve_labels(sent, &loops_at, &hint, diagnostics);
    for (index, (estimated, label)) in request.loops.iter().zip(labels).enumerate() {
        let at = loops_at.item(index);
        let read = read_loop(estimated, label, surface, &at, diagnostics);
        loops.push(read.and_then(|read| complete_loop(request, read, surface, agency_width, &at, diagnostics)));
    }
    let mut loops: Vec<_> = loops.into_iter().collect::<Option<_>>()?;
    keep_lone_pairs_apart(&mut loops);
    Some(loops)
}

/// A loop of the request.
fn read_loop<'a>(
    estimated: &'a EstimatedLoop,
    label: String,
    surface: Surface,
    at: &FieldPath<'_>,
    diagnostics: &mut Diagnostics,
) -> Option<EstimateLoop<'a>> {
    let coil = estimated.r#loop.resolve(&at.field("loop"), diagnostics);
    let usual = surface.usual_construction();
    let construction = diagnostics.value_or_default(
        &at.field("construction"),
        estimated.construction,
        (usual, usual.code()),
        Statement::new("materials-usual-construction"),
        Source::CommonPractice,
    );
    let lead_in = LeadIn::resolve_or_default(estimated.lead_in.as_ref(), &at.field("lead_in"), diagnostics);
    let coil = coil?;
    Some(EstimateLoop {
        label,
        mark: None,
        role: None,
        cover: estimated.r#loop.cover.as_ref().map(|_| coil.cover),
        coil,
        construction,
        quantity: estimated.quantity.unwrap_or(1),
        lead_in: lead_in?,
        lead_in_sent: estimated.lead_in.as_ref(),
        wire_sent: estimated.r#loop.wire.as_ref(),
        slot_sent: estimated.slot.as_ref(),
        stock: StockDecision::Open,
        way: None,
        unit: estimated.unit.clone(),
    })
}

/// A loop of a layout. Its cover is that of its slot.
fn take_laid<'a>(
    one: &LaidLoop,
    laid: LaidLoops<'a>,
    at: &FieldPath<'_>,
    diagnostics: &mut Diagnostics,
) -> EstimateLoop<'a> {
    let loop_at = at.field("loop");
    if let Some(wire) = laid.wire {
        wire.mark_jacket_and_rating(&loop_at.field("wire"), diagnostics);
    }
    EstimateLoop {
        label: one.label(),
        mark: Some(one.mark),
        role: Some(one.role),
        coil: one.coil.clone(),
        cover: None,
        construction: one.construction,
        quantity: one.count() as u32,
        lead_in: one.lead_in.clone(),
        lead_in_sent: laid.lead_in,
        wire_sent: laid.wire,
        slot_sent: None,
        stock: StockDecision::Decided(one.stock.clone()),
        way: Some(one.way.clone()),
        unit: None,
    }
}

fn complete_loop(
    request: &MaterialEstimateRequest,
    estimated: EstimateLoop<'_>,
    surface: Surface,
    agency_width: Length,
    at: &FieldPath<'_>,
    diagnostics: &mut Diagnostics,
) -> Option<ResolvedEstimatedLoop> {
    let construction = estimated.construction;
    let pair = PairToLay {
        sent: estimated.lead_in_sent,
        lead_in: &estimated.lead_in,
        construction,
        surface,
        quantity: estimated.quantity,
        unit: estimated.unit.as_deref(),
        decided: estimated.way.as_ref(),
        is_home_run: has_home_run(&estimated),
    };
    let way = pair.resolve_way(&at.field("lead_in"), diagnostics);
    let home_run = pair.home_run(&way);
    let mut coil = take_usual_corner_cut(request, estimated.coil.clone(), construction, at, diagnostics);
    let loop_at = at.field("loop");
    let wire_at = loop_at.field("wire");
    if construction == Construction::PreformedSawCut || surface.allows(Construction::PreformedSawCut) {
        diagnostics.mark_used(&wire_at.field("over_jacket"));
    }
    // Of a loop that is wound on site the jacket counts only in the comparison, and a layout has decided on its wire.
    let fits = if construction.is_preformed() && estimated.mark.is_none() {
        let system = coil.system;
        coil.wire.fit_jacket(estimated.wire_sent, &wire_at, system, diagnostics)
    } else {
        let is_over_sent = estimated.wire_sent.is_some_and(|wire| wire.over_insulation.is_some());
        !is_over_sent || coil.wire.over_jacket.is_none_or(|jacket| jacket >= coil.wire.over_insulation)
    };
    if !fits {
        diagnostics.add_error(
            &wire_at.field("over_jacket"),
            FieldErrorCode::Contradiction,
            Statement::new("errors-thin-jacket"),
            Statement::new("errors-thin-jacket-hint"),
        );
    }
    if construction.is_sawn() && request.sealant.as_ref().is_some_and(|sealant| sealant.kind.is_poured_hot()) {
        diagnostics.mark_used(&wire_at.field("insulation_rating"));
    }
    let rating = estimated.wire_sent.and_then(|wire| wire.insulation_rating.as_ref());
    // The error of a rating that cannot be parsed was noted with the wire.
    let rating = rating.and_then(|rating| rating.read().ok()).map(|parsed| parsed.si);
    let context = SlotContext { construction, surface, agency_width };
    let (slots, given) = resolve_slots(request, &estimated, &coil, &context, at, diagnostics)?;
    Some(ResolvedEstimatedLoop {
        label: estimated.label,
        mark: estimated.mark,
        role: estimated.role,
        coil,
        construction,
        quantity: estimated.quantity,
        lead_in: estimated.lead_in,
        rating,
        way,
        home_run,
        burial_cover: if estimated.mark.is_some() { Some(estimated.coil.cover) } else { estimated.cover },
        has_own_slot: estimated.slot_sent.is_some(),
        given,
        slots,
        stock: estimated.stock,
    })
}

/// Whether a cable of its own gauge goes to the unit.
fn has_home_run(estimated: &EstimateLoop<'_>) -> bool {
    let is_from_stock = matches!(estimated.stock, StockDecision::Decided(Some(_)));
    HomeRun::is_asked(&estimated.lead_in, estimated.coil.wire.area, is_from_stock)
}

/// A slot that only one pair would share is its own.
fn keep_lone_pairs_apart(loops: &mut [ResolvedEstimatedLoop]) {
    for index in 0..loops.len() {
        let slot = loops[index].way.shared_slot.clone();
        let in_it = loops.iter().filter(|other| slot.is_some() && other.way.shared_slot == slot);
        if in_it.map(|other| other.quantity).sum::<u32>() == 1 {
            let way = &mut loops[index].way;
            *way = LeadInWay::alone(way.pair, way.in_slot());
        }
    }
}

/// Takes the usual corner cut where diagonal corners are asked for and the loop gives none.
fn take_usual_corner_cut(
    request: &MaterialEstimateRequest,
    mut coil: ResolvedLoop,
    construction: Construction,
    at: &FieldPath<'_>,
    diagnostics: &mut Diagnostics,
) -> ResolvedLoop {
    let Some(corner) = request.saw.as_ref().and_then(|saw| saw.corner) else { return coil };
    let loop_at = at.field("loop");
    let has_cut = coil.corner_cut > Length::default();
    if corner.is_diagonal() && !has_cut && construction.is_sawn() {
        coil.corner_cut = usual_corner_cut(construction, coil.along_travel.min(coil.across_lane), coil.system);
        diagnostics.mark_unneeded(&loop_at, &[("corner_cut", false)]);
        let reason = Statement::new("materials-usual-corner-cut");
        let value = format_length_input(coil.corner_cut, coil.system);
        diagnostics.add_assumption(&loop_at.field("corner_cut"), value, reason, &[Source::NemaTestLoop]);
    }
    if !corner.is_diagonal() && has_cut {
        let (body, detail) = (FieldPath::BODY, Statement::new("errors-corner-cut-unasked").member("corner", corner));
        let hint = Statement::new("errors-corner-cut-unasked-hint");
        let saw_at = body.field("saw");
        diagnostics.add_error(&saw_at.field("corner"), FieldErrorCode::Contradiction, detail, hint);
    }
    coil
}

/// The slot for each construction that is sawn. The assumptions about what was not given are added once the cuts are known.
fn resolve_slots(
    request: &MaterialEstimateRequest,
    estimated: &EstimateLoop<'_>,
    coil: &ResolvedLoop,
    context: &SlotContext,
    at: &FieldPath<'_>,
    diagnostics: &mut Diagnostics,
) -> Option<(SawnSlots, GivenSlotFields)> {
    let (body, own_at, loop_at) = (FieldPath::BODY, at.field("slot"), at.field("loop"));
    let common_at = body.field("slot");
    let (sent, slot_at) = match estimated.slot_sent {
        Some(own) => (Some(own), own_at),
        None => (request.slot.as_ref(), common_at),
    };
    let width = diagnostics.parse_optional(&slot_at.field("width"), sent.and_then(|slot| slot.width.as_ref()));
    let depth = diagnostics.parse_optional(&slot_at.field("depth"), sent.and_then(|slot| slot.depth.as_ref()));
    let slot_cover = diagnostics.parse_optional(&slot_at.field("cover"), sent.and_then(|slot| slot.cover.as_ref()));
    // The cover of the loop itself goes before that of its slot.
    let loop_cover = estimated.cover;
    let cover = loop_cover.or(slot_cover);
    let resolve_slot = |sawn: Construction| {
        let usual = Slot::resolve(None, sawn, None, &slot_at, &mut Diagnostics::default())?;
        let usual_width = usual_slot_width(coil.wire.widest(sawn), coil.system);
        Some(ResolvedSlot {
            width: width.unwrap_or(usual_width.max(context.agency_width)),
            depth: depth.unwrap_or(usual.depth),
            depth_is_fixed: depth.is_some(),
            cover: cover.unwrap_or(usual.cover),
            cover_is_fixed: cover.is_some(),
            allowance: SlotAllowance::default(),
        })
    };
    let slots = SawnSlots {
        hand_wound: resolve_slot(Construction::HandWound)?,
        preformed: resolve_slot(Construction::PreformedSawCut)?,
    };
    if depth.zip(cover).is_some_and(|(depth, cover)| cover >= depth) {
        let cover_at = if loop_cover.is_some() { loop_at.field("cover") } else { slot_at.field("cover") };
        let hint = Statement::new("errors-deep-cover-hint");
        diagnostics.add_error(&cover_at, FieldErrorCode::Contradiction, Statement::new("errors-deep-cover"), hint);
    }
    diagnostics.mark_unneeded(&loop_at, &[("cover", false)]);
    if estimated.slot_sent.is_some() && loop_cover.is_some() && slot_cover.is_some() {
        diagnostics.mark_unused(&slot_at.field("cover"));
    }
    if !context.construction.is_sawn() && !context.surface.allows(Construction::HandWound) {
        diagnostics.mark_unneeded(&loop_at, &[("cover", loop_cover.is_some())]);
        if let Some(sent) = sent {
            let fields =
                [("width", sent.width.is_some()), ("depth", sent.depth.is_some()), ("cover", sent.cover.is_some())];
            diagnostics.mark_unneeded(&slot_at, &fields);
        }
    }
    let given = GivenSlotFields { width: width.is_some(), depth: depth.is_some(), cover: cover.is_some() };
    Some((slots, given))
}

/// Checks a common slot that no loop of the request takes, for it must be valid all the same. Where every loop that takes it has a cover of its own,
/// only its cover is unused.
pub fn check_unused_slot(request: &MaterialEstimateRequest, diagnostics: &mut Diagnostics) {
    let Some(slot) = request.slot.as_ref().filter(|_| !request.loops.is_empty()) else { return };
    let body = FieldPath::BODY;
    let slot_at = body.field("slot");
    let mut takers = request.loops.iter().filter(|estimated| estimated.slot.is_none()).peekable();
    if takers.peek().is_some() {
        if slot.cover.is_some() && takers.all(|estimated| estimated.r#loop.cover.is_some()) {
            diagnostics.mark_unused(&slot_at.field("cover"));
        }
        return;
    }
    let mut unneeded = Diagnostics::default();
    Slot::resolve(Some(slot), Construction::HandWound, None, &slot_at, &mut unneeded);
    diagnostics.append_errors(&mut unneeded);
    diagnostics.mark_unused(&slot_at);
}

/// Resolves the common slot of the lead-ins: what is not given follows the slot of each loop.
pub fn resolve_lead_in_slot(
    slot: Option<&Slot>,
    at: &FieldPath<'_>,
    diagnostics: &mut Diagnostics,
) -> ResolvedLeadInSlot {
    slot.map_or_else(ResolvedLeadInSlot::default, |slot| ResolvedLeadInSlot {
        width: diagnostics.parse_optional(&at.field("width"), slot.width.as_ref()),
        depth: diagnostics.parse_optional(&at.field("depth"), slot.depth.as_ref()),
        cover: diagnostics.parse_optional(&at.field("cover"), slot.cover.as_ref()),
    })
}
