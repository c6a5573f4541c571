//! Which loop of the caller's stock serves a role. The item that is chosen is the loop, with its legs and turns; its lead-in is cut to
//! the length that the place of the loop needs.

use serde::Serialize;
use uom::si::f64::Length;
use uom::si::length::foot;
use utoipa::ToSchema;

use super::design::{EdgeSetbacks, GradedLoop, coil};
use super::search::{LoopCandidate, RoleSearch};
use crate::calculation::budget::Search;
use crate::calculation::input::{ResolvedStockItem, Shape};
use crate::calculation::report::{Diagnostics, FieldPath, Finding, Message, Statement, has_messages};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::layout::{MIN_EDGE_SETBACK, ROW_GAP, STEP};
use crate::practice::roles::Role;
use crate::quantity::UnitSystem;

/// The loop to take from the caller's stock.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct StockChoice {
    /// The caller's number of the loop that serves; absent when none does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sku: Option<String>,
    /// Why this one, or why none and what to order.
    #[schema(value_type = String)]
    pub why: Message,
}

has_messages! {
    StockChoice: why;
}

/// What the stock has for a loop.
pub enum StockMatch {
    /// The item that is laid.
    Taken(ResolvedStockItem),
    /// No item serves; the nearest, and why it does not.
    NoneServes(Option<(ResolvedStockItem, &'static str)>),
}

impl StockMatch {
    /// The item that is laid.
    pub fn taken(&self) -> Option<&ResolvedStockItem> {
        match self {
            Self::Taken(item) => Some(item),
            Self::NoneServes(_) => None,
        }
    }
}

/// Chooses from the stock: the loop to lay, which is the designed one where no item serves, and what the stock has; `None` when no
/// stock was sent.
pub fn match_stock(search: &RoleSearch<'_>, designed: LoopCandidate) -> (LoopCandidate, Option<StockMatch>) {
    let Some(stock) = &search.job.stock else { return (designed, None) };
    // Tails are cut to the same length: where all have a price, that tells what a longer one costs.
    let tail_counts = stock.iter().any(|item| item.price.is_none());
    let mut by_mismatch: Vec<_> =
        stock.iter().map(|item| (mismatch(item, &designed, search, tail_counts), item)).collect();
    // What is there goes before what is not; of items that are as near, the cheaper.
    let missing = |item: &ResolvedStockItem| item.missing(designed.count() as u64);
    by_mismatch.sort_by(|(near, item), (far, other)| {
        let by_price = || item.price_to_compare().cmp(&other.price_to_compare());
        missing(item).cmp(&missing(other)).then(near.total_cmp(far)).then_with(by_price)
    });
    let mut nearest = None;
    // Items that are alike in what counts are judged once, and one that was refused is refused again.
    let mut refused: Vec<&ResolvedStockItem> = Vec::new();
    for (_, item) in by_mismatch {
        let judged = match refuse(item, &designed, search) {
            Some(reason) => Err(reason),
            None if refused.iter().any(|other| are_alike(other, item)) => Err(DOES_NOT_SERVE),
            None if nearest.is_some() && !search.job.budget.allows(Search::Loops) => break,
            None => {
                refused.push(item);
                lay(item, &designed, search).ok_or(DOES_NOT_SERVE)
            }
        };
        match judged {
            Ok(laid) => return (laid, Some(StockMatch::Taken(item.clone()))),
            Err(reason) => {
                nearest.get_or_insert_with(|| (item.clone(), reason));
            }
        }
    }
    (designed, Some(StockMatch::NoneServes(nearest)))
}

/// Why an item that might be laid is not: it does not tune, or does not see every vehicle.
const DOES_NOT_SERVE: &str = "does_not_tune_or_see";

/// Whether two items make the same loop.
fn are_alike(one: &ResolvedStockItem, other: &ResolvedStockItem) -> bool {
    let loop_of = |item: &ResolvedStockItem| (item.along_travel, item.across_lane, item.turns);
    loop_of(one) == loop_of(other)
}

/// The loop that an item makes where the designed one would lie; `None` where it does not serve.
fn lay(item: &ResolvedStockItem, designed: &LoopCandidate, search: &RoleSearch<'_>) -> Option<LoopCandidate> {
    // An item whose turns are not known is taken to have those of the design.
    let turns = item.turns.unwrap_or(designed.design.coil.turns);
    let coil = coil(item.along_travel, item.across_lane, Shape::Rectangle, turns, search.job);
    search.accept(GradedLoop::new(coil, search.brief()), designed.count())
}

/// Why an item is not even tried where the designed loop would lie, as a code.
fn refuse(item: &ResolvedStockItem, designed: &LoopCandidate, search: &RoleSearch<'_>) -> Option<&'static str> {
    let (job, coil_of_design, count) = (search.job, &designed.design.coil, designed.count());
    let system = job.system();
    let step = STEP.in_system(system);
    let row = count as f64 * item.across_lane + (count - 1) as f64 * ROW_GAP.in_system(system);
    let EdgeSetbacks { left, right } = search.setbacks;
    let keeps_strips = job.must_keep_setback() || search.setbacks != EdgeSetbacks::usual(job);
    let strips = if keeps_strips { left + right } else { 2.0 * MIN_EDGE_SETBACK.in_system(system) };
    let widest = (job.opening.width - strips) * 1.000_001;
    if !job.construction.is_preformed() || item.construction.is_some_and(|made| made != job.construction) {
        Some("other_construction")
    } else if search.fixed.is_some_and(|fixed| !fixed.allows(item)) {
        Some("not_as_decided")
    } else if item.along_travel < coil_of_design.along_travel * 0.999 {
        Some("too_short")
    } else if item.along_travel > coil_of_design.along_travel + 2.001 * step.max(Length::new::<foot>(1.0)) {
        Some("too_long")
    } else if row > widest {
        Some("too_wide")
    } else if item.across_lane < coil_of_design.across_lane * 0.8 {
        Some("too_narrow")
    } else if item.lead_in_length < search.lead_in.order_length() * 0.999_999 {
        Some("lead_in_too_short")
    } else {
        None
    }
}

/// How far an item is from the design, in feet; a difference of the lead-in counts a hundredth.
fn mismatch(item: &ResolvedStockItem, designed: &LoopCandidate, search: &RoleSearch<'_>, tail_counts: bool) -> f64 {
    let apart = |a: Length, b: Length| (a - b).abs().get::<foot>();
    let coil = &designed.design.coil;
    apart(item.along_travel, coil.along_travel)
        + apart(item.across_lane, coil.across_lane)
        + if tail_counts { 0.01 * apart(item.lead_in_length, search.lead_in.order_length()) } else { 0.0 }
}

impl StockChoice {
    /// Why this item, or why none and what to order, which is a finding too.
    pub(super) fn of(
        found: &StockMatch,
        laid: &LoopCandidate,
        role: Role,
        search: &RoleSearch<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Self {
        let system = search.job.system();
        match found {
            StockMatch::Taken(item) => Self { sku: Some(item.sku.clone()), why: why_taken(item, system).into() },
            StockMatch::NoneServes(nearest) => {
                let why = Message::from(why_none(nearest.as_ref(), laid, search));
                diagnostics.add_finding(
                    Finding::new(FindingCode::NoStockFits, Level::Note, &FieldPath::BODY.field("stock"), why.clone())
                        .on(Some(role)),
                );
                Self { sku: None, why }
            }
        }
    }
}

fn why_taken(item: &ResolvedStockItem, system: UnitSystem) -> Statement {
    Statement::new("sizing-stock-fits")
        .length("along_travel", item.along_travel, system)
        .length("across_lane", item.across_lane, system)
        .length("lead_in_length", item.lead_in_length, system)
        .code("proof", if item.turns.is_some() { "tunes" } else { "turns_unknown" })
}

fn why_none(
    nearest: Option<&(ResolvedStockItem, &'static str)>,
    laid: &LoopCandidate,
    search: &RoleSearch<'_>,
) -> Statement {
    let (coil, system) = (&laid.design.coil, search.job.system());
    let mut why = Statement::new("sizing-no-stock-fits");
    if let Some((item, reason)) = nearest {
        why = why.followed_by(
            Statement::new("sizing-nearest-in-stock").text("sku", item.sku.clone()).code("reason", reason),
        );
    }
    why.followed_by(
        Statement::new("sizing-order-instead")
            .length("along_travel", coil.along_travel, system)
            .length("across_lane", coil.across_lane, system)
            .count("turns", coil.turns.into())
            .member("construction", search.job.construction)
            .length("lead_in_length", search.lead_in.order_length(), system),
    )
}
