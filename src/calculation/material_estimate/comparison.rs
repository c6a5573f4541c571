//! The same job, all loops in one construction, side by side.

use super::estimate::Estimate;
use super::job::Job;
use super::report::{ConstructionComparison, Cost};
use super::trench::Trench;
use super::{cost, items, labour};
use crate::practice::materials::suits;
use crate::practice::site::Construction;
use crate::quantity::format::format_count;
use crate::vocabulary::Vocabulary;

/// Each construction that the surface allows.
pub fn compare(job: &Job) -> Vec<ConstructionComparison> {
    let allowed = Construction::ALL.iter().copied().filter(|construction| suits(*construction, job.surface));
    allowed.map(|construction| row(job, construction)).collect()
}

fn row(job: &Job, construction: Construction) -> ConstructionComparison {
    let estimate = Estimate::new(job, |_| construction);
    let lines = items::list(&estimate);
    let hours = labour::total(&labour::steps(&estimate));
    let cost = job.prices.as_ref().map(|prices| cost::price(&lines, hours, prices));
    let pulls: f64 = estimate.parts.iter().map(|part| part.count() * f64::from(part.pulls())).sum();
    ConstructionComparison {
        construction: construction.code(),
        is_asked: job.loops.iter().all(|one| one.construction == construction),
        saw_cut: estimate.sum(Trench::total).into(),
        sealant_with_waste: estimate.sealant_with_waste().into(),
        hours: hours.into(),
        is_complete: cost.as_ref().map(|cost| cost.is_complete),
        message: message(construction, &format_count(pulls, "pull"), cost.as_ref()),
        unpriced: cost.as_ref().map_or_else(Vec::new, |cost| cost.unpriced.clone()),
        cost: cost.map(|cost| cost.total),
    }
}

fn message(construction: Construction, pulls: &str, cost: Option<&Cost>) -> String {
    let mut message = merits(construction, pulls);
    if let Some(cost) = cost.filter(|cost| !cost.is_complete) {
        message.push_str(&format!(" Its sum leaves out {}.", cost.unpriced.join(", ")));
    }
    message
}

fn merits(construction: Construction, pulls: &str) -> String {
    match construction {
        Construction::HandWound => format!(
            "Wire from the spool, {pulls}, held down with backer rod: nothing to wait for, and any size. The wire has no jacket."
        ),
        Construction::PreformedSawCut => format!(
            "{pulls}, one for each loop, and no backer rod; the jacket spares the wire. The loop must be in stock or made to size."
        ),
        Construction::PreformedDirectBurial => {
            "No cut and no sealant, but only before the surface is laid; bedding and cover come on top, and the lead-in in conduit."
                .to_owned()
        }
    }
}
