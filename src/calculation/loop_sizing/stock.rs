//! Which loop of the caller's stock serves a role.

use uom::si::f64::Length;
use uom::si::length::foot;

use super::design::{Design, coil};
use super::job::Job;
use super::report::StockChoice;
use super::search::{Brief, Choice};
use crate::calculation::input::{ResolvedStockItem, Shape};
use crate::calculation::loop_characteristics::Conditions;
use crate::calculation::report::{Diagnostics, FieldPath, Finding};
use crate::practice::findings::{FindingCode, Level};
use crate::practice::roles::{MIN_EDGE_SETBACK, Role, STEP};
use crate::quantity::format::format_length;
use crate::vocabulary::Vocabulary;

/// Chooses from the stock, or says what to order; `None` when no stock was sent.
pub fn choose(
    role: Role,
    choice: &Choice,
    job: &Job,
    conditions: &Conditions,
    diagnostics: &mut Diagnostics,
) -> Option<StockChoice> {
    let stock = job.stock.as_ref()?;
    let design = &choice.design;
    let brief = Brief::of(role, job, conditions);
    let needed = job.lead_in.length;
    let serving = stock
        .iter()
        .filter(|item| misfit(item, choice, &brief).is_none())
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
            format_length(item.along_travel, system),
            format_length(item.across_lane, system),
            format_length(item.lead_in_length, system),
        );
        return Some(StockChoice { sku: Some(item.sku.clone()), why });
    }
    let nearest = stock.iter().min_by(|a, b| strain(a, design, needed).total_cmp(&strain(b, design, needed)));
    let reason = nearest
        .and_then(|item| Some(format!(" The nearest, {}, {}.", item.sku, misfit(item, choice, &brief)?)))
        .unwrap_or_default();
    let why = format!(
        "None in stock serves.{reason} Order {} x {}, {} turns, {}, with {} of lead-in.",
        format_length(design.coil.along_travel, system),
        format_length(design.coil.across_lane, system),
        design.coil.turns,
        job.construction.label().to_lowercase(),
        format_length(job.lead_in.length + job.lead_in.spare, system),
    );
    diagnostics.add_finding(
        Finding::new(FindingCode::NoStockFits, Level::Note, &FieldPath::BODY.field("stock"), why.clone())
            .on(Some(role.code())),
    );
    Some(StockChoice { sku: None, why })
}

/// Why an item cannot serve; `None` when it can.
fn misfit(item: &ResolvedStockItem, choice: &Choice, brief: &Brief<'_>) -> Option<&'static str> {
    let (job, design) = (brief.job, &choice.design);
    let step = STEP.in_system(job.system());
    let widest = job.opening.width - 2.0 * MIN_EDGE_SETBACK.in_system(job.system());
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
    } else if choice.centres.len() == 1 && !serves(item, design, brief) {
        Some("does not tune with this unit and lead-in, or does not see every vehicle")
    } else {
        None
    }
}

/// Whether the loop with its turns, or with those of the design where they are not known, suits the unit and sees every vehicle.
fn serves(item: &ResolvedStockItem, design: &Design, brief: &Brief<'_>) -> bool {
    let turns = item.turns.unwrap_or(design.coil.turns);
    let coil = coil(item.along_travel, item.across_lane, Shape::Rectangle, turns, brief.job);
    brief.accepts(Design::new(coil, brief.job, brief.conditions))
}

/// How far an item is from the design, in feet; spare lead-in counts a little.
fn strain(item: &ResolvedStockItem, design: &Design, needed: Length) -> f64 {
    let apart = |a: Length, b: Length| (a - b).abs().get::<foot>();
    apart(item.along_travel, design.coil.along_travel)
        + apart(item.across_lane, design.coil.across_lane)
        + 0.01 * apart(item.lead_in_length, needed)
}
