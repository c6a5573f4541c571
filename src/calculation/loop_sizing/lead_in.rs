//! What to know and order about the lead-ins.

use serde::Serialize;
use uom::si::f64::Length;
use uom::si::inductance::microhenry;
use uom::si::length::{foot, meter};
use uom::si::magnetic_permeability::henry_per_meter;
use utoipa::ToSchema;

use super::resolved::ResolvedLoopSizing;
use crate::calculation::input::ResolvedLeadIn;
use crate::calculation::report::{Diagnostics, FieldPath, Finding, Message, Statement, has_messages};
use crate::physics::circuit;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::site::Construction;
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
}

impl From<&ResolvedLeadIn> for LoopLeadIn {
    fn from(lead_in: &ResolvedLeadIn) -> Self {
        Self { length: lead_in.length.into(), order_length: lead_in.order_length().into() }
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
