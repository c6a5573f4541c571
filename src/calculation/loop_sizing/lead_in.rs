//! What to know and order about the lead-ins.

use uom::si::f64::Length;
use uom::si::length::{foot, meter};
use uom::si::magnetic_permeability::henry_per_meter;

use super::job::Job;
use super::report::LeadInAdvice;
use crate::calculation::answer::{At, Finding, Notes};
use crate::physics::circuit;
use crate::practice::findings::{FindingCode, Level};
use crate::practice::site::Construction;
use crate::practice::wires;
use crate::quantity::dimension::{self, PerLength};
use crate::quantity::parse;

/// Computes the advice and states what follows from it.
pub fn advise(job: &Job, notes: &mut Notes) -> LeadInAdvice {
    let loose =
        parse::<dimension::Length>(wires::LOOSE_PAIR_SPACING).map_or(job.wire.over_insulation, |spacing| spacing.si);
    let twisted = pair_inductance(job.wire.over_insulation, job);
    let untwisted = pair_inductance(loose.max(job.wire.over_insulation), job);
    let order_length = job.lead_in.length + job.lead_in.spare;
    let (pair, message) = if job.construction == Construction::HandWound {
        ("twisted_on_site", twist(twisted, untwisted, job, notes))
    } else {
        (
            "jacketed",
            "The pair comes twisted inside its jacket, so its inductance is fixed; bring it to the unit without a splice in the \
             pavement."
                .to_owned(),
        )
    };
    if job.construction == Construction::PreformedDirectBurial {
        notes.find(Finding::new(
            FindingCode::LeadInConduit,
            Level::Note,
            &At::BODY.field("lead_in"),
            "Bring the lead-in through conduit from the edge of the loop to the unit, sealed against water at both ends.",
        ));
    }
    LeadInAdvice {
        order_length: order_length.into(),
        pair,
        twisted: twisted.into(),
        untwisted: untwisted.into(),
        message,
    }
}

fn twist(twisted: PerLength, untwisted: PerLength, job: &Job, notes: &mut Notes) -> String {
    let per_foot = |value: PerLength| 1e6 * value.get::<henry_per_meter>() * Length::new::<foot>(1.0).get::<meter>();
    let feet = job.lead_in.length.get::<foot>();
    let gained = (per_foot(untwisted) - per_foot(twisted)) * feet;
    let message = format!(
        "Twist the two tails at least 2 turns per foot (6 per metre) all the way. Loose, the pair has about {:.2} instead of \
         {:.2} µH/ft, {gained:.0} µH more over {feet:.0} ft, and that changes whenever the wires shift; it also picks up hum and \
         sees vehicles that cross it.",
        per_foot(untwisted),
        per_foot(twisted)
    );
    notes.find(
        Finding::new(FindingCode::LooseLeadIn, Level::Note, &At::BODY.field("lead_in"), message.clone())
            .figure("twisted", per_foot(twisted), "uH/ft")
            .figure("untwisted", per_foot(untwisted), "uH/ft"),
    );
    message
}

/// Of the loop's own wire as a pair at this spacing of centres.
fn pair_inductance(spacing: Length, job: &Job) -> PerLength {
    PerLength::new::<henry_per_meter>(circuit::pair_inductance_per_metre(
        spacing.get::<meter>(),
        job.wire.diameter().get::<meter>(),
    ))
}
