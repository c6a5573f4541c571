//! Which loop of the caller's stock serves a role.

use uom::si::f64::Length;
use uom::si::inductance::microhenry;
use uom::si::length::foot;

use super::design::{Design, coil};
use super::job::Job;
use super::report::StockChoice;
use crate::calculation::answer::{At, Finding, Notes};
use crate::calculation::loop_characteristics::{Conditions, measure};
use crate::calculation::subject::{Shape, StockItemUnderstood};
use crate::practice::Vocabulary;
use crate::practice::findings::{FindingCode, Level};
use crate::practice::roles::{LEAST_EDGE_SETBACK, Role, STEP};
use crate::quantity::shown::say;

/// Chooses from the stock, or says what to order; `None` when no stock was sent.
pub fn choose(
    role: Role,
    design: &Design,
    job: &Job,
    conditions: &Conditions,
    notes: &mut Notes,
) -> Option<StockChoice> {
    let stock = job.stock.as_ref()?;
    let needed = job.lead_in.length;
    let serving = stock
        .iter()
        .filter(|item| misfit(item, design, job, conditions).is_none())
        .min_by(|a, b| strain(a, design, needed).total_cmp(&strain(b, design, needed)));
    let system = job.system();
    if let Some(item) = serving {
        let fits = if item.turns.is_some() {
            "it fits the opening, reaches the unit and tunes"
        } else {
            "it fits the opening and reaches the unit; ask for its turns"
        };
        let why = format!(
            "{} x {} with {} of lead-in: {fits}.",
            say(item.along_travel, system),
            say(item.across_lane, system),
            say(item.lead_in_length, system),
        );
        return Some(StockChoice { sku: Some(item.sku.clone()), why });
    }
    let nearest = stock.iter().min_by(|a, b| strain(a, design, needed).total_cmp(&strain(b, design, needed)));
    let reason = nearest
        .and_then(|item| Some(format!(" The nearest, {}, {}.", item.sku, misfit(item, design, job, conditions)?)))
        .unwrap_or_default();
    let why = format!(
        "None in stock serves.{reason} Order {} x {}, {} turns, {}, with {} of lead-in.",
        say(design.coil.along_travel, system),
        say(design.coil.across_lane, system),
        design.coil.turns,
        job.construction.label().to_lowercase(),
        say(job.lead_in.length + job.lead_in.spare, system),
    );
    notes.find(
        Finding::new(FindingCode::NoStockFits, Level::Note, &At::BODY.field("stock"), why.clone())
            .on(Some(role.code())),
    );
    Some(StockChoice { sku: None, why })
}

/// Why an item cannot serve; `None` when it can.
fn misfit(item: &StockItemUnderstood, design: &Design, job: &Job, conditions: &Conditions) -> Option<&'static str> {
    let step = STEP.in_system(job.system());
    let widest = job.opening.width - 2.0 * LEAST_EDGE_SETBACK.in_system(job.system());
    if item.construction.is_some_and(|construction| construction != job.construction) {
        Some("is made for another construction")
    } else if item.along_travel < design.coil.along_travel * 0.999 {
        Some("is too short along travel")
    } else if item.along_travel > design.coil.along_travel + 2.001 * step.max(Length::new::<foot>(1.0)) {
        Some("is too long along travel")
    } else if item.across_lane > widest {
        Some("is too wide for the opening")
    } else if item.across_lane < design.coil.across_lane * 0.8 {
        Some("leaves too much of the opening unseen")
    } else if item.lead_in_length < job.lead_in.length {
        Some("has too short a lead-in")
    } else if item.turns.is_some_and(|turns| !tunes(item, turns, job, conditions)) {
        Some("does not tune with this unit and lead-in")
    } else {
        None
    }
}

fn tunes(item: &StockItemUnderstood, turns: u32, job: &Job, conditions: &Conditions) -> bool {
    let coil = coil(item.along_travel, item.across_lane, Shape::Rectangle, turns, job);
    let figures = measure(&coil, &job.lead_in, conditions);
    let limits = &job.detector.limits;
    figures.as_built_low.get::<microhenry>() >= limits.inductance_min_uh
        && figures.as_built_high.get::<microhenry>() <= limits.inductance_max_uh
}

/// How far an item is from the design, in feet; spare lead-in counts a little.
fn strain(item: &StockItemUnderstood, design: &Design, needed: Length) -> f64 {
    let apart = |a: Length, b: Length| (a - b).abs().get::<foot>();
    apart(item.along_travel, design.coil.along_travel)
        + apart(item.across_lane, design.coil.across_lane)
        + 0.01 * apart(item.lead_in_length, needed)
}
