//! What to load on the van: from loops to a bill of materials, hours and money.
//!
//! `request` asks, `read` and `read_loops` make a `job` of it (with its `pace` and `rod`). `trench` digs one loop, of one `cut` or two
//! with a `blade` that reaches, `estimate` sums all; `items` (with `wire` and `stock`), `labour` and `cost` list what follows, `fit`,
//! `judgement` and `remarks` say what is wrong with it, `assumed` what was taken for what nobody sent, `comparison` does it again in
//! each construction, `report` answers. Geometry first; rules of thumb only where geometry ends.

mod assumed;
mod blade;
mod comparison;
mod cost;
mod cut;
mod echo;
mod estimate;
mod fit;
mod items;
mod job;
mod judgement;
mod labour;
mod pace;
mod read;
mod read_loops;
mod remarks;
mod report;
mod request;
mod rod;
mod stock;
mod trench;
mod wire;

pub use report::{
    ConstructionComparison, Cost, CostLine, EstimatedLoopEcho, Labour, LabourStep, LoopMaterials,
    MaterialEstimateInputs, MaterialEstimateReport, MaterialLine, ProductivityEcho, SawCut, SlotFit, SlotVolumes,
};
pub use request::{
    AgencyMinimum, BackerRod, EstimatedLoop, MaterialEstimateRequest, Productivity, Saw, Slab, WireSpool,
};

use super::loop_sizing::{Site, judge_construction, judge_site};
use super::report::{Diagnostics, FieldPath, InvalidRequest};
use super::{Calculation, Example};
use crate::practice::sources::Source;
use estimate::Estimate;
use job::Job;

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

    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest> {
        let job = self.read(diagnostics);
        let job = diagnostics.finish(job)?;
        let estimate = Estimate::new(&job, |one| one.construction);
        assumed::assume(&estimate, diagnostics);
        let slot_fit = Self::judge(&estimate, diagnostics);
        judge_sites(&job, diagnostics);

        let lines = items::list(&estimate);
        let steps = labour::steps(&estimate);
        let cost = job.prices.as_ref().map(|prices| cost::price(&lines, labour::total(&steps), prices));
        remarks::judge_cost(cost.as_ref().map_or(&[], |cost| &cost.unpriced), diagnostics);
        let items: Vec<_> = lines.iter().map(items::Line::shown).collect();
        for line in &items {
            diagnostics.add_sources(&line.source_ids);
        }
        diagnostics.add_sources(&[Source::Geometry, Source::CommonPractice]);

        let closing = diagnostics.into_parts();
        Ok(MaterialEstimateReport {
            inputs: job.echo(),
            items,
            saw_cut: estimate.saw_cut(),
            volumes: estimate.volumes(),
            loops: estimate.parts.iter().map(|part| part.shown(&job)).collect(),
            slot_fit,
            labour: labour::shown(&steps),
            cost,
            comparison: comparison::compare(&job),
            findings: closing.findings,
            assumed: closing.assumed,
            unused: closing.unused,
            cautions: closing.cautions,
            basis: closing.basis,
        })
    }
}

impl MaterialEstimateRequest {
    /// Judges every trench, and gives the fit of its slots.
    fn judge(estimate: &Estimate<'_>, diagnostics: &mut Diagnostics) -> Vec<SlotFit> {
        let body = FieldPath::BODY;
        let loops_at = body.field("loops");
        let mut fits = Vec::new();
        for (index, part) in estimate.parts.iter().enumerate() {
            let Some(trench) = &part.trench else { continue };
            let own_at = loops_at.item(index);
            let slot_at = if part.one.has_own_slot { own_at.field("slot") } else { body.field("slot") };
            judgement::judge_trench(part, trench, &slot_at, estimate.job, diagnostics);
            for fit in trench.cuts().map(|cut| fit::Fit::of(cut, part.one.coil.system, estimate.job)) {
                judgement::judge_fit(&fit, part, &slot_at, diagnostics);
                fits.push(fit.shown(part.one));
            }
        }
        remarks::judge_job(estimate, diagnostics);
        fits
    }
}

/// Says what the site asks for: hazards once, and of each loop whether it can be built so.
fn judge_sites(job: &Job, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let loops_at = body.field("loops");
    // Of several constructions the one that is sawn asks for more.
    let gravest = job.loops.iter().position(|one| one.construction.is_sawn()).unwrap_or_default();
    for (index, one) in job.loops.iter().enumerate() {
        let at = loops_at.item(index);
        let site = Site {
            surface: job.surface,
            hazards: &job.hazards,
            construction: one.construction,
            construction_at: at.field("construction"),
            has_barrier: false,
            cut_approved: job.slab.cut_approved,
        };
        if index == gravest { judge_site(&site, diagnostics) } else { judge_construction(&site, diagnostics) }
    }
}
