//! The same job, all loops in one construction, side by side.

use super::cost::{compute_cost, unpriced_names};
use super::estimate::MaterialEstimate;
use super::items::bill_lines;
use super::labour::{timed_steps, total_time};
use super::loop_estimate::LoopEstimate;
use super::report::ConstructionComparison;
use super::resolved::ResolvedMaterialEstimate;
use crate::calculation::report::{ListJoin, Statement};
use crate::practice::site::Construction;
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
    let pulls = estimate.total_of(LoopEstimate::pulls);
    let mut message = match construction {
        Construction::HandWound => Statement::new("materials-compare-hand-wound").count("pulls", pulls),
        Construction::PreformedSawCut => Statement::new("materials-compare-saw-cut").count("pulls", pulls),
        Construction::PreformedDirectBurial => Statement::new("materials-compare-direct-burial"),
    };
    if let Some(cost) = cost.as_ref().filter(|cost| !cost.is_complete) {
        let names = unpriced_names(&cost.unpriced);
        message = message.followed_by(Statement::new("materials-compare-unpriced").phrases(
            "unpriced",
            names,
            ListJoin::Comma,
        ));
    }
    ConstructionComparison {
        construction,
        is_asked: job.loops.iter().all(|resolved| resolved.construction == construction),
        saw_cut: estimate.cut_length().into(),
        sealant_with_waste: estimate.sealant_with_waste().into(),
        hours: hours.into(),
        is_complete: cost.as_ref().map(|cost| cost.is_complete),
        message: message.into(),
        unpriced: cost.as_ref().map_or_else(Vec::new, |cost| cost.unpriced.clone()),
        cost: cost.map(|cost| cost.total),
    }
}
