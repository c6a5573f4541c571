//! The order of the work, with the figures of the job.

use uom::si::electrical_resistance::ohm;
use uom::si::f64::{Length, Ratio};
use uom::si::inductance::microhenry;
use uom::si::ratio::percent;

use super::report::PlanStep;
use crate::calculation::cure_guidance::{CureGuidanceReport, CureWindow};
use crate::calculation::layout::{JobLayout, LaidLoop, LoopMark, describe_way};
use crate::calculation::loop_sizing::LoopSizingReport;
use crate::calculation::material_estimate::{MaterialEstimateReport, describe_burial};
use crate::calculation::report::{Decimals, ListJoin, Message, Statement};
use crate::practice::job_steps::JobStep;
use crate::practice::materials::MaterialItem;
use crate::practice::sealing::CureMilestone;
use crate::practice::site::Barrier;
use crate::quantity::UnitSystem;
use crate::vocabulary::Vocabulary;

/// What the steps take their figures from.
pub struct StepContext<'a> {
    /// The loops that are laid.
    pub layout: &'a JobLayout,
    /// What the sizing reports of them.
    pub sizing: &'a LoopSizingReport,
    /// The materials, where asked for.
    pub materials: Option<&'a MaterialEstimateReport>,
    /// The cure, where asked for.
    pub cure: Option<&'a CureGuidanceReport>,
    /// What closes the opening.
    pub barrier: Barrier,
    /// The caller's system.
    pub system: UnitSystem,
}

/// The steps of this job, in order.
pub fn plan_steps(job: &StepContext<'_>) -> Vec<PlanStep> {
    let sawn = job.layout.loops.iter().any(|laid| laid.construction.is_sawn());
    let buried = job.layout.loops.iter().any(|laid| !laid.construction.is_sawn());
    let is_taken = |step: JobStep| match step {
        JobStep::Isolate => job.barrier != Barrier::None,
        JobStep::Cut | JobStep::Clean | JobStep::Lay | JobStep::Seal | JobStep::Protect => sawn,
        JobStep::Bed | JobStep::Cover => buried,
        JobStep::Locate
        | JobStep::Guard
        | JobStep::MarkOut
        | JobStep::MeasureOpen
        | JobStep::Terminate
        | JobStep::MeasureSealed
        | JobStep::PowerUp
        | JobStep::Prove
        | JobStep::Restore => true,
    };
    let steps = JobStep::ALL.iter().copied().filter(|step| is_taken(*step));
    steps
        .map(|step| {
            let what = Statement::new("plan-step").member("step", step);
            PlanStep {
                step,
                label: Message::label_of(step),
                message: figures(step, job).into_iter().fold(what, Statement::followed_by).into(),
                cautions: step.cautions().to_vec(),
            }
        })
        .collect()
}

/// What this job adds to a step.
fn figures(step: JobStep, job: &StepContext<'_>) -> Vec<Statement> {
    match step {
        JobStep::MarkOut => vec![of_loops(job, |laid| place(laid, job))],
        JobStep::Cut => [Some(cuts(job)), ways(job)].into_iter().flatten().collect(),
        JobStep::Lay | JobStep::Bed => {
            let turns =
                |laid: &LaidLoop| named(Statement::new("plan-turns"), laid).count("turns", u64::from(laid.coil.turns));
            let burials = if step == JobStep::Bed { burials(job) } else { Vec::new() };
            let ways = if step == JobStep::Bed { ways(job) } else { None };
            burials.into_iter().chain([of_loops(job, turns)]).chain(ways).collect()
        }
        JobStep::MeasureOpen | JobStep::MeasureSealed => vec![of_loops(job, readings)],
        JobStep::Seal => {
            let line = |item: MaterialItem| job.materials?.items.iter().find(|line| line.item == item);
            let sealant = line(MaterialItem::SealantCartridge)
                .map(|line| Statement::new("plan-sealant-loaded").count("cartridges", line.quantity));
            sealant.into_iter().chain(job.cure.map(seal_start)).collect()
        }
        JobStep::Protect => job.cure.and_then(opening_time).into_iter().collect(),
        JobStep::Terminate => splices(job).into_iter().collect(),
        JobStep::PowerUp => {
            vec![Statement::new("plan-switch-at").phrases("steps", step_phrases(job.layout), ListJoin::Comma)]
        }
        JobStep::Locate
        | JobStep::Guard
        | JobStep::Isolate
        | JobStep::Clean
        | JobStep::Cover
        | JobStep::Prove
        | JobStep::Restore => Vec::new(),
    }
}

/// A phrase for each loop.
fn of_loops(job: &StepContext<'_>, phrase: impl Fn(&LaidLoop) -> Statement) -> Statement {
    let phrases = job.layout.loops.iter().map(phrase).collect();
    Statement::new("plan-for-each-loop").phrases("loops", phrases, ListJoin::Semicolon)
}

/// A phrase that begins with the mark and the role of a loop.
fn named(phrase: Statement, laid: &LaidLoop) -> Statement {
    phrase.text("mark", laid.mark.to_string()).member("role", laid.role)
}

fn place(laid: &LaidLoop, job: &StepContext<'_>) -> Statement {
    let line = if job.barrier == Barrier::None { "reference" } else { "barrier" };
    let (shift, offset) = (laid.place.middle(), laid.lane.middle());
    let across_side = match offset.value {
        offset if offset < 0.0 => "left",
        offset if offset > 0.0 => "right",
        _ => "none",
    };
    named(Statement::new("plan-place"), laid)
        .length("shift", shift.abs(), job.system)
        .code("shift_side", if shift.value > 0.0 { "inside" } else { "none" })
        .length("offset", offset.abs(), job.system)
        .code("across_side", across_side)
        .length("along_travel", laid.coil.along_travel, job.system)
        .length("across_lane", laid.coil.across_lane, job.system)
        .length("distance", laid.place.distance(), job.system)
        .code("side", laid.place.side.code())
        .code("line", line)
}

/// How buried loops are laid, each sentence once.
fn burials(job: &StepContext<'_>) -> Vec<Statement> {
    let mut said = Vec::new();
    for laid in job.layout.loops.iter().filter(|laid| !laid.construction.is_sawn()) {
        let height = laid.coil.height_in_slot(laid.construction);
        let burial = describe_burial(job.sizing.inputs.surface, laid.coil.cover, height, job.system);
        if !said.contains(&burial) {
            said.push(burial);
        }
    }
    said
}

/// The ways of the pairs; `None` where loops have no lead-in.
fn ways(job: &StepContext<'_>) -> Option<Statement> {
    let way = |laid: &LaidLoop| {
        named(Statement::new("plan-lead-in-way"), laid).phrase("way", describe_way(laid, &job.sizing.inputs.opening))
    };
    let has_pair = job.layout.loops.iter().any(|laid| laid.lead_in.length > Length::default());
    has_pair.then(|| of_loops(job, way))
}

/// What is spliced in pull boxes; `None` where no pair is.
fn splices(job: &StepContext<'_>) -> Option<Statement> {
    let home_run = job.layout.loops.iter().find_map(LaidLoop::home_run);
    let is_spliced = job.materials.is_some_and(|materials| materials.loops.iter().any(|each| each.splices > 0));
    let to = if home_run.is_some() { "home_run" } else { "next_piece" };
    (home_run.is_some() || is_spliced).then(|| Statement::new("plan-splice-in-box").code("to", to))
}

fn readings(laid: &LaidLoop) -> Statement {
    let figures = &laid.electrical;
    named(Statement::new("plan-measured"), laid)
        .quantity("as_built_low", figures.as_built_low.get::<microhenry>(), Decimals::AtMost(2), "uH")
        .quantity("as_built_high", figures.as_built_high.get::<microhenry>(), Decimals::AtMost(2), "uH")
        .quantity("dc_resistance", figures.dc_resistance.get::<ohm>(), Decimals::AtMost(3), "ohm")
}

fn cuts(job: &StepContext<'_>) -> Statement {
    let Some(materials) = job.materials else {
        let depths = job.sizing.loops.iter().zip(&job.layout.loops).filter_map(|(sized, laid)| {
            Some(named(Statement::new("plan-slot-depth"), laid).detail_length(
                "slot_depth",
                sized.slot_depth?.0,
                job.system,
            ))
        });
        return Statement::new("plan-for-each-loop").phrases("loops", depths.collect(), ListJoin::Semicolon);
    };
    let cut = &materials.saw_cut;
    Statement::new("plan-cut")
        .length("total", cut.total.0, job.system)
        .count("passes", u64::from(cut.passes.max(1)))
        .count("cut_ends", u64::from(cut.cut_ends))
}

/// When to begin: at the start that was asked for, or in the first window.
fn seal_start(cure: &CureGuidanceReport) -> Statement {
    if cure.verdict.allows_start() {
        return Statement::new("plan-seal-verdict").member("verdict", cure.verdict);
    }
    let begin = |statement: Statement, window: &CureWindow| {
        statement.text("from", format_time(&window.start)).text("until", format_time(&window.end))
    };
    match (cure.windows.first(), cure.windows_once_dry.first()) {
        (Some(window), _) => begin(Statement::new("plan-seal-in-window"), window),
        (None, Some(window)) => begin(Statement::new("plan-seal-once-dry"), window),
        (None, None) => Statement::new("plan-seal-another-day"),
    }
}

/// When traffic may return; `None` where the cure does not say.
fn opening_time(cure: &CureGuidanceReport) -> Option<Statement> {
    let open = cure.milestones.iter().find(|milestone| milestone.milestone == CureMilestone::OpenToTraffic)?;
    Some(match (&open.earliest, &open.latest) {
        (Some(earliest), Some(latest)) => Statement::new("plan-open-between")
            .text("earliest", format_time(earliest))
            .text("latest", format_time(latest)),
        (Some(earliest), None) => Statement::new("plan-open-from").text("earliest", format_time(earliest)),
        (None, _) => Statement::new("plan-open-beyond-forecast"),
    })
}

/// The steps to set: one for all, or one for each loop.
pub fn step_phrases(layout: &JobLayout) -> Vec<Statement> {
    let phrase = |(mark, step): (Option<LoopMark>, Ratio)| {
        let step = step.get::<percent>();
        match mark {
            None => Statement::new("plan-step-for-all").percent("threshold", step, Decimals::AtMost(3)),
            Some(mark) => Statement::new("plan-step-for-one")
                .percent("threshold", step, Decimals::AtMost(3))
                .text("mark", mark.to_string()),
        }
    };
    layout.steps().into_iter().map(phrase).collect()
}

/// A time without seconds and offset: `2026-01-20 14:04`.
fn format_time(time: &str) -> String {
    time.get(..16).unwrap_or(time).replace('T', " ")
}
