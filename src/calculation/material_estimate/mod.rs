//! What to load on the van: from loops to a bill of materials, hours and money.
//!
//! - `request`: what is asked; `resolve`, `resolve_loops` and `resolve_way` turn it into the quantities of `resolved`.
//! - `cut`: the geometry of one saw cut; `loop_cuts`: those of one loop and its lead-in; `wire`: lengths of wire and their spools.
//! - `shared_slots`: slots that pairs of several loops lie in.
//! - `loop_estimate`: one loop in one construction; `estimate`: all loops in a choice of constructions, and their sums.
//! - `bill`: a line of it; `items`, `lead_in_items`, `burial_items`: the bill of materials; `labour`: hours; `cost`: money; `comparison`: the same job in each construction.
//! - `burial`: how buried loops lie.
//! - `pooled_bill`: one bill for several jobs.
//! - `assumptions`: what was taken for what nobody sent, once the cuts are known.
//! - `cut_findings`: statements about each cut and the fit of its slot; `job_findings`: statements about the whole job.
//! - `report`: what is answered; `echo`: its part about what was understood.
//!
//! Figures come from geometry; rules of thumb are used only where geometry ends.

mod assumptions;
mod bill;
mod burial;
mod burial_items;
mod comparison;
mod cost;
mod cut;
mod cut_findings;
mod echo;
mod estimate;
mod items;
mod job_findings;
mod labour;
mod lead_in_items;
mod loop_cuts;
mod loop_estimate;
mod pooled_bill;
mod productivity;
mod report;
mod request;
mod resolve;
mod resolve_loops;
mod resolve_way;
mod resolved;
mod shared_slots;
mod wire;

pub use bill::JobBill;
pub use burial::{LoopBurial, describe_burial};
pub use cost::{LABOUR, priced_lines};
pub use echo::{EstimatedLoopEcho, MaterialEstimateInputs, ProductivityEcho};
pub use pooled_bill::PooledBill;
pub use report::{
    ConstructionComparison, Cost, CostLine, Labour, LabourStep, LoopMaterials, MaterialEstimateReport, MaterialLine,
    SawCut, SharedLeadInSlot, SlotFit, SlotVolumes,
};
pub use request::{AgencyMinimum, BackerRod, EstimatedLoop, MaterialEstimateRequest, Productivity, Saw, WireSpool};

use super::cost::CostTerm;
use super::loop_sizing::{SiteConditions, judge_construction, judge_site};
use super::report::{Diagnostics, FieldPath, InvalidRequest};
use super::{Calculation, Example};
use crate::practice::sources::Source;
use estimate::MaterialEstimate;
pub use resolve::{fill_slot, resolve};
pub use resolve_loops::LaidLoops;
pub use resolved::ResolvedMaterialEstimate;

impl Calculation for MaterialEstimateRequest {
    type Report = MaterialEstimateReport;
    const NAME: &'static str = "material-estimate";
    const OPERATION_ID: &'static str = "estimate_materials";
    const SUMMARY: &'static str = "What to load on the van";
    const DESCRIPTION: &'static str = "From loops to a bill of materials, hours and money. The saw cut counts every end that must be \
        deep, for the blade runs on past it; sealant is the slot less wire and rod, with waste, in whole cartridges; wire is turns \
        and twice the lead-in, in spools without a splice. Each slot is judged by the clearance round what lies in it, each cut by \
        the slab and its steel. Hours follow from the pace of the crew, money from the caller's own prices, in decimals: what has \
        no price is named and never counted as zero. The same job is compared wound on site, preformed, and buried where the \
        surface allows it.";
    const EXAMPLES: &'static [Example] = &[
        Example {
            name: "yard_gate",
            summary: "Tern Island Boatyard: three wound loops at the yard gate, priced",
            request: include_str!("../../../openapi/examples/material-estimate/yard_gate.request.json"),
        },
        Example {
            name: "cafe_window",
            summary: "Tern Island Boatyard: a preformed loop at the café window",
            request: include_str!("../../../openapi/examples/material-estimate/cafe_window.request.json"),
        },
    ];

    fn cost_terms(&self) -> Vec<CostTerm> {
        let stock = self.stock.as_ref().map_or(0, Vec::len);
        vec![
            CostTerm::new("an estimate of materials", 1, 30),
            CostTerm::new("a loop of an estimate", self.loops.len(), 25),
            CostTerm::new("an item of stock of an estimate", stock, 2),
        ]
    }

    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest> {
        let job = resolve(self, None, diagnostics);
        let job = diagnostics.finish(job)?;
        Ok(solve(&job, diagnostics))
    }
}

/// Computes and judges the estimate.
pub fn solve(job: &ResolvedMaterialEstimate, diagnostics: &mut Diagnostics) -> MaterialEstimateReport {
    let estimate = MaterialEstimate::new(job, |resolved| resolved.construction);
    assumptions::add_assumptions(&estimate, diagnostics);
    let slot_fit = cut_findings::judge_cuts(&estimate, diagnostics);
    job_findings::judge_job(&estimate, diagnostics);
    judge_sites(job, diagnostics);

    let lines = items::bill_lines(&estimate);
    let steps = labour::timed_steps(&estimate);
    let hours = labour::total_time(&steps);
    let cost = job.prices.as_ref().map(|prices| cost::compute_cost(&lines, hours, prices));
    let bill = JobBill {
        lines: lines.clone(),
        wires: estimate.wires.clone(),
        spools: job.spools.clone(),
        hours,
        prices: job.prices.clone(),
    };
    cost::judge_cost(cost.as_ref().map_or(&[], |cost| &cost.unpriced), diagnostics);
    let items: Vec<MaterialLine> = lines.iter().map(Into::into).collect();
    for line in &items {
        diagnostics.add_sources(&line.source_ids);
    }
    diagnostics.add_sources(&[Source::Geometry, Source::CommonPractice]);

    let closing = diagnostics.into_parts();
    let mut inputs = job.echo();
    for (echo, each) in inputs.loops.iter_mut().zip(&estimate.loops) {
        echo.cover = each.cuts.as_ref().map(|cuts| cuts.loop_cut.levels.asked_cover.into());
    }
    MaterialEstimateReport {
        bill,
        inputs,
        items,
        saw_cut: estimate.saw_cut_report(),
        volumes: estimate.volumes_report(),
        loops: estimate.loops.iter().map(|each| each.to_report(job)).collect(),
        shared_slots: estimate.shared_slots.iter().map(|shared| shared.to_report(&estimate.loops, job)).collect(),
        slot_fit,
        labour: labour::labour_report(&steps),
        cost,
        comparison: comparison::compare_constructions(job),
        findings: closing.findings,
        assumed: closing.assumed,
        unused: closing.unused,
        cautions: closing.cautions,
        basis: closing.basis,
    }
}

/// Judges the site: its hazards once, and of each loop whether it can be built in the surface.
fn judge_sites(job: &ResolvedMaterialEstimate, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let loops_at = body.field("loops");
    // Hazards matter most to a construction that is sawn.
    let judged_in_full = job.loops.iter().position(|resolved| resolved.construction.is_sawn()).unwrap_or_default();
    for (index, resolved) in job.loops.iter().enumerate() {
        let at = loops_at.item(index);
        let site = SiteConditions {
            surface: job.surface,
            hazards: &job.hazards,
            construction: resolved.construction,
            construction_at: at.field("construction"),
            has_barrier: false,
            cut_approved: job.slab.cut_approved,
        };
        if index == judged_in_full { judge_site(&site, diagnostics) } else { judge_construction(&site, diagnostics) }
    }
}
