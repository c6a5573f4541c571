//! What to know and order about the lead-ins.

use serde::Serialize;
use uom::si::f64::Length;
use uom::si::inductance::microhenry;
use uom::si::length::{foot, meter};
use uom::si::magnetic_permeability::henry_per_meter;
use utoipa::ToSchema;

use super::resolved::ResolvedLoopSizing;
use crate::calculation::input::ResolvedOpening;
use crate::calculation::layout::{HomeRun, JobLayout, LaidLoop, SharedSlotKey, SlotEnd, describe_way, slot_to_edge};
use crate::calculation::report::{Diagnostics, FieldPath, Finding, Message, Statement, has_messages};
use crate::physics::circuit;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::lead_ins::LeadInPair;
use crate::practice::site::{Construction, UnitSide};
use crate::practice::wires;
use crate::quantity::dimension::{self, PerLength};
use crate::quantity::output::{InductancePerLengthValue, PlanLength};
use crate::quantity::{UnitSystem, parse};

/// What to know and order about the lead-ins.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct LeadInAdvice {
    /// The length of pair to order for each loop, length and spare; more for a loop whose own `lead_in` says so.
    pub order_length: PlanLength,
    /// How the pair comes: `twisted_on_site` or `jacketed`.
    pub pair: &'static str,
    /// Inductance of the two loop wires twisted, from their geometry.
    pub twisted: InductancePerLengthValue,
    /// Inductance of the same wires lying loose, 1/2 in apart, from their geometry.
    pub untwisted: InductancePerLengthValue,
    /// What to do, in a sentence or two.
    #[schema(value_type = String)]
    pub message: Message,
}

has_messages! {
    LeadInAdvice: message;
}

/// The pair of one loop.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct LoopLeadIn {
    /// From the loop to the unit: the length that was sent, or what the place of the loop needs.
    pub length: PlanLength,
    /// The length of pair to order: with its spare.
    pub order_length: PlanLength,
    /// How the pair is made; a `code` of `reference/lead-in-pairs`.
    #[schema(value_type = String)]
    pub pair: LeadInPair,
    /// The side of the opening on which it leaves the pavement, as one leaves; a `code` of `reference/unit-sides`.
    #[schema(value_type = String)]
    pub unit_side: UnitSide,
    /// How much of it lies in a saw cut: the way to the edge of the pavement, or what was sent; of a row, on the average of its loops.
    pub in_slot: PlanLength,
    /// How much of `in_slot` lies in a slot together with other pairs.
    pub in_shared_slot: PlanLength,
    /// The length of that slot; absent where the pair shares none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shared_slot: Option<PlanLength>,
    /// Whose pairs lie in that slot: `row`, those of its own row beside the row; `unit`, those of its unit from the edge on; `all_units`.
    /// Absent where the pair shares none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shared_with: Option<&'static str>,
    /// Where its slot ends: `at_edge` of the pavement, `before_edge`, `past_edge` in a slab that goes on there, or `no_slot`.
    pub slot_end: &'static str,
    /// How far that is from the edge; 0 at it.
    pub from_edge: PlanLength,
    /// What of it lies in conduit; of a row, what is left of the pair that lies farthest in the slot.
    pub in_conduit: PlanLength,
    /// The cable of its own gauge that goes on to the unit from a pull box at the end of the slot; absent where the pair goes all the way.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub home_run: Option<HomeRunCable>,
    /// Whether a pull box stands where its slot ends: for a home run, or, in a plan, because no spool holds its wire in one length.
    pub has_pull_box: bool,
    /// The way of the pair to the unit, in a phrase.
    #[schema(value_type = String)]
    pub way: Message,
}

has_messages! {
    LoopLeadIn: way;
}

/// Cable from the pull box, where the pair of a loop ends, to the unit.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct HomeRunCable {
    /// Its size as it was written.
    pub gauge: String,
    /// The cable that the loop needs, its slack at the unit included.
    pub length: PlanLength,
    /// The pair of the loop up to its end in the box: what lies in the slot, and a tail.
    pub pair_length: PlanLength,
}

impl From<HomeRun> for HomeRunCable {
    fn from(home_run: HomeRun) -> Self {
        Self { gauge: home_run.gauge, length: home_run.cable.into(), pair_length: home_run.tail.into() }
    }
}

impl LoopLeadIn {
    /// The pair of a loop that is laid.
    pub fn of(laid: &LaidLoop, opening: &ResolvedOpening) -> Self {
        let (lead_in, way, end) = (&laid.lead_in, &laid.way, SlotEnd::of(laid, opening));
        let shared_with = |key: &SharedSlotKey| match key {
            SharedSlotKey::Row(_) => "row",
            SharedSlotKey::Unit(_) => "unit",
            SharedSlotKey::AllUnits => "all_units",
        };
        Self {
            length: lead_in.length.into(),
            order_length: lead_in.order_length().into(),
            pair: way.pair,
            unit_side: opening.unit_side,
            in_slot: way.in_slot().into(),
            in_shared_slot: way.in_shared_slot().into(),
            shared_slot: way.shared_slot.as_ref().map(|_| way.shared_slot_length().into()),
            shared_with: way.shared_slot.as_ref().map(shared_with),
            slot_end: end.code(),
            from_edge: end.from_edge().into(),
            in_conduit: laid.in_conduit().into(),
            home_run: laid.home_run().map(Into::into),
            has_pull_box: laid.home_run().is_some(),
            way: describe_way(laid, opening).into(),
        }
    }
}

/// States which slots end before the edge of the pavement: conduit cannot lie in the slab.
pub fn judge_slot_ends(layout: &JobLayout, job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    let (body, system) = (FieldPath::BODY, job.system());
    let lead_in_at = body.field("lead_in");
    for laid in layout.loops.iter().filter(|laid| laid.ordinal.is_none_or(|ordinal| ordinal == 1)) {
        let SlotEnd::BeforeEdge(short) = SlotEnd::of(laid, &job.opening) else { continue };
        let needed = slot_to_edge(laid, &job.opening);
        let is_too_short = needed > 1.000_001 * laid.lead_in.length;
        let field = match (is_too_short, laid.lead_in.in_slot) {
            (true, _) => "length",
            (false, Some(_)) => "in_slot",
            (false, None) => "in_conduit",
        };
        let message = Statement::new("sizing-slot-before-edge")
            .length("from_edge", short, system)
            .length("needed", needed, system)
            .code("field", field);
        let at = lead_in_at.field(field);
        let finding = Finding::new(FindingCode::SlotBeforeEdge, Level::Warning, &at, message);
        diagnostics.add_finding(finding.on(Some(laid.role)).length("needed", needed, system).send(&at));
    }
}

/// Computes the advice and states what follows from it.
pub fn advise(job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) -> LeadInAdvice {
    let loose =
        parse::<dimension::Length>(wires::LOOSE_PAIR_SPACING).map_or(job.wire.over_insulation, |spacing| spacing.si);
    let twisted = pair_inductance(job.wire.over_insulation, job);
    let untwisted = pair_inductance(loose.max(job.wire.over_insulation), job);
    let order_length = job.lead_in.order_length();
    let (pair, message) = if job.construction == Construction::HandWound {
        ("twisted_on_site", twist(twisted, untwisted, job, diagnostics))
    } else {
        ("jacketed", Statement::new("sizing-jacketed-pair"))
    };
    if job.construction == Construction::PreformedDirectBurial {
        diagnostics.add_finding(Finding::new(
            FindingCode::LeadInConduit,
            Level::Note,
            &FieldPath::BODY.field("lead_in"),
            Statement::new("sizing-lead-in-conduit"),
        ));
    }
    LeadInAdvice {
        order_length: order_length.into(),
        pair,
        twisted: twisted.into(),
        untwisted: untwisted.into(),
        message: message.into(),
    }
}

fn twist(
    twisted: PerLength,
    untwisted: PerLength,
    job: &ResolvedLoopSizing,
    diagnostics: &mut Diagnostics,
) -> Statement {
    let gained = (untwisted - twisted) * job.lead_in.length;
    let (unit, per_length) = match job.system() {
        UnitSystem::UsCustomary => ("uH/ft", Length::new::<foot>(1.0)),
        UnitSystem::Metric => ("uH/m", Length::new::<meter>(1.0)),
    };
    let per = |value: PerLength| (value * per_length).get::<microhenry>();
    let message = Statement::new("sizing-twist-the-tails")
        .quantity("untwisted", per(untwisted), 2, unit)
        .quantity("twisted", per(twisted), 2, unit)
        .quantity("gained", gained.get::<microhenry>(), 0, "uH")
        .length("lead_in_length", job.lead_in.length, job.system());
    diagnostics.add_finding(
        Finding::new(FindingCode::LooseLeadIn, Level::Note, &FieldPath::BODY.field("lead_in"), message.clone())
            .figure("twisted", per(twisted), unit)
            .figure("untwisted", per(untwisted), unit),
    );
    message
}

/// Of the loop's own wire as a pair at this spacing of centres.
fn pair_inductance(spacing: Length, job: &ResolvedLoopSizing) -> PerLength {
    PerLength::new::<henry_per_meter>(circuit::pair_inductance_per_metre(
        spacing.get::<meter>(),
        job.wire.diameter().get::<meter>(),
    ))
}
