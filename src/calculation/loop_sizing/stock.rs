//! Which loop of the caller's stock serves a role.

use serde::Serialize;
use uom::si::f64::Length;
use uom::si::length::foot;
use utoipa::ToSchema;

use super::design::{GradedLoop, coil};
use super::resolved::ResolvedLoopSizing;
use super::search::{LoopCandidate, RoleSearch};
use crate::calculation::input::{ResolvedStockItem, Shape};
use crate::calculation::loop_characteristics::MeasurementConditions;
use crate::calculation::report::{Diagnostics, FieldPath, Finding};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::layout::{MIN_EDGE_SETBACK, STEP};
use crate::practice::roles::Role;
use crate::quantity::format::format_length;
use crate::vocabulary::Vocabulary;

/// The loop to take from the caller's stock.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct StockChoice {
    /// The caller's number of the loop that serves; absent when none does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sku: Option<String>,
    /// Why this one, or why none and what to order.
    pub why: String,
}

/// Chooses from the stock, or says what to order; `None` when no stock was sent.
pub fn choose(
    role: Role,
    candidate: &LoopCandidate,
    job: &ResolvedLoopSizing,
    conditions: &MeasurementConditions,
    diagnostics: &mut Diagnostics,
) -> Option<StockChoice> {
    let stock = job.stock.as_ref()?;
    let design = &candidate.design;
    let search = RoleSearch::of(role, job, conditions);
    let needed = job.lead_in.length;
    let serving = stock
        .iter()
        .filter(|item| reason_against(item, candidate, &search).is_none())
        .min_by(|a, b| mismatch(a, design, needed).total_cmp(&mismatch(b, design, needed)));
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
    let nearest = stock.iter().min_by(|a, b| mismatch(a, design, needed).total_cmp(&mismatch(b, design, needed)));
    let reason = nearest
        .and_then(|item| Some(format!(" The nearest, {}, {}.", item.sku, reason_against(item, candidate, &search)?)))
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
fn reason_against(
    item: &ResolvedStockItem,
    candidate: &LoopCandidate,
    search: &RoleSearch<'_>,
) -> Option<&'static str> {
    let (job, design) = (search.job, &candidate.design);
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
    } else if candidate.centres.len() == 1 && !serves(item, design, search) {
        Some("does not tune with this unit and lead-in, or does not see every vehicle")
    } else {
        None
    }
}

/// Whether the loop with its turns, or with those of the design where they are not known, suits the unit and sees every vehicle.
fn serves(item: &ResolvedStockItem, design: &GradedLoop, search: &RoleSearch<'_>) -> bool {
    let turns = item.turns.unwrap_or(design.coil.turns);
    let coil = coil(item.along_travel, item.across_lane, Shape::Rectangle, turns, search.job);
    search.accepts(GradedLoop::new(coil, search.job, search.conditions))
}

/// How far an item is from the design, in feet; a difference of the lead-in counts a hundredth.
fn mismatch(item: &ResolvedStockItem, design: &GradedLoop, needed: Length) -> f64 {
    let apart = |a: Length, b: Length| (a - b).abs().get::<foot>();
    apart(item.along_travel, design.coil.along_travel)
        + apart(item.across_lane, design.coil.across_lane)
        + 0.01 * apart(item.lead_in_length, needed)
}
