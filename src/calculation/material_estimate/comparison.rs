//! The same job, all loops in one construction, side by side.

use super::cost::compute_cost;
use super::estimate::{LoopEstimate, MaterialEstimate};
use super::items::bill_lines;
use super::labour::{timed_steps, total_time};
use super::loop_cuts::LoopCuts;
use super::report::ConstructionComparison;
use super::resolved::ResolvedMaterialEstimate;
use crate::practice::site::Construction;
use crate::quantity::format::format_count;
use crate::vocabulary::Vocabulary;

/// Each construction that the surface allows.
pub fn compare_constructions(job: &ResolvedMaterialEstimate) -> Vec<ConstructionComparison> {
    let allowed = Construction::ALL.iter().copied().filter(|construction| job.surface.allows(*construction));
    allowed.map(|construction| estimate_in(job, construction)).collect()
}

fn estimate_in(job: &ResolvedMaterialEstimate, construction: Construction) -> ConstructionComparison {
    let estimate = MaterialEstimate::new(job, |_| construction);
    let hours = total_time(&timed_steps(&estimate));
    let cost = job.prices.as_ref().map(|prices| compute_cost(&bill_lines(&estimate), hours, prices));
    let pulls = |each: &LoopEstimate<'_>| each.count() * f64::from(each.pulls());
    let pulls = format_count(estimate.loops.iter().map(pulls).sum(), "pull");
    let mut message = match construction {
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
    };
    if let Some(cost) = cost.as_ref().filter(|cost| !cost.is_complete) {
        message.push_str(&format!(" Its sum leaves out {}.", cost.unpriced.join(", ")));
    }
    ConstructionComparison {
        construction,
        is_asked: job.loops.iter().all(|resolved| resolved.construction == construction),
        saw_cut: estimate.sum_of_cuts(LoopCuts::total_length).into(),
        sealant_with_waste: estimate.sealant_with_waste().into(),
        hours: hours.into(),
        is_complete: cost.as_ref().map(|cost| cost.is_complete),
        message,
        unpriced: cost.as_ref().map_or_else(Vec::new, |cost| cost.unpriced.clone()),
        cost: cost.map(|cost| cost.total),
    }
}
