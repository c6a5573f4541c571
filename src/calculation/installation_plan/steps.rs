//! The order of the work, with the figures of the job.

use uom::si::f64::Ratio;
use uom::si::ratio::percent;

use super::report::PlanStep;
use crate::calculation::cure_guidance::CureGuidanceReport;
use crate::calculation::layout::{JobLayout, LoopMark};
use crate::calculation::loop_sizing::{LoopSizingReport, SizedLoop};
use crate::calculation::material_estimate::MaterialEstimateReport;
use crate::practice::job_steps::JobStep;
use crate::practice::materials::MaterialItem;
use crate::practice::roles::Side;
use crate::practice::sealing::CureMilestone;
use crate::practice::site::Barrier;
use crate::quantity::UnitSystem;
use crate::quantity::format::format_count;
use crate::quantity::output::{DetailLength, PlanLength, round};
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
        .map(|step| PlanStep {
            step,
            label: step.label(),
            message: match figures(step, job) {
                Some(figures) => format!("{} {figures}", step.description()),
                None => step.description().to_owned(),
            },
            cautions: step.cautions().to_vec(),
        })
        .collect()
}

/// What this job adds to a step.
fn figures(step: JobStep, job: &StepContext<'_>) -> Option<String> {
    match step {
        JobStep::MarkOut => Some(join_sentence(job.sizing.loops.iter().map(|sized| format_place(sized, job.system)))),
        JobStep::Cut => Some(format_cuts(job)),
        JobStep::Lay | JobStep::Bed => Some(join_sentence(
            job.sizing
                .loops
                .iter()
                .map(|sized| format!("{}: {}", loop_name(sized), format_count(f64::from(sized.turns), "turn"))),
        )),
        JobStep::MeasureOpen | JobStep::MeasureSealed => Some(join_sentence(job.sizing.loops.iter().map(|sized| {
            format!(
                "{}: {} to {} µH, {} ohm",
                loop_name(sized),
                sized.electrical.as_built_low_uh,
                sized.electrical.as_built_high_uh,
                sized.electrical.dc_resistance_ohm
            )
        }))),
        JobStep::Seal => {
            let cure = job
                .cure
                .map(|cure| format!("At the start that was asked for: {}.", cure.verdict.code().replace('_', " ")));
            let line = |item: MaterialItem| job.materials?.items.iter().find(|line| line.item == item);
            let sealant =
                line(MaterialItem::SealantCartridge).map(|line| format_count(line.quantity as f64, "cartridge"));
            let sealant = sealant.map(|cartridges| format!("{cartridges} loaded."));
            let both: Vec<_> = [sealant, cure].into_iter().flatten().collect();
            (!both.is_empty()).then(|| both.join(" "))
        }
        JobStep::Protect => {
            let open =
                job.cure?.milestones.iter().find(|milestone| milestone.milestone == CureMilestone::OpenToTraffic)?;
            Some(match (&open.earliest, &open.latest) {
                (Some(earliest), Some(latest)) => {
                    format!("Computed: between {} and {}.", format_time(earliest), format_time(latest))
                }
                (Some(earliest), None) => {
                    format!(
                        "Computed: from {} at the earliest; the forecast ends before it is sure.",
                        format_time(earliest)
                    )
                }
                (None, _) => "Not before the forecast ends.".to_owned(),
            })
        }
        JobStep::PowerUp => Some(format!("It is to switch at {}.", format_steps(job.layout))),
        JobStep::Locate
        | JobStep::Guard
        | JobStep::Isolate
        | JobStep::Clean
        | JobStep::Cover
        | JobStep::Terminate
        | JobStep::Prove
        | JobStep::Restore => None,
    }
}

fn format_cuts(job: &StepContext<'_>) -> String {
    let Some(materials) = job.materials else {
        return join_sentence(job.sizing.loops.iter().filter_map(|sized| {
            Some(format!("{}: {} deep", loop_name(sized), format_exact_detail(sized.slot_depth?, job.system)))
        }));
    };
    let passes = match materials.saw_cut.passes {
        0 | 1 => "in one pass".to_owned(),
        passes => format!("in {passes} passes"),
    };
    format!(
        "{} of cut in all, {passes}; the blade runs on past {}.",
        format_plan_length(materials.saw_cut.total, job.system),
        format_count(f64::from(materials.saw_cut.cut_ends), "end"),
    )
}

fn format_place(sized: &SizedLoop, system: UnitSystem) -> String {
    let size = format!(
        "{}: {} along travel, {} across",
        loop_name(sized),
        format_plan_length(sized.along_travel, system),
        format_plan_length(sized.across_lane, system)
    );
    let side = sized.side.code().replace('_', " ");
    match (&sized.distance_from_barrier, &sized.distance_from_reference) {
        (Some(distance), _) if sized.side != Side::OnTheLine => {
            format!("{size}, {} {side} the barrier", format_plan_length(*distance, system))
        }
        (_, Some(distance)) if sized.side != Side::OnTheLine => {
            format!("{size}, {} {side} the reference", format_plan_length(*distance, system))
        }
        _ => format!("{size}, {side}"),
    }
}

/// A time without seconds and offset: `2026-01-20 14:04`.
fn format_time(time: &str) -> String {
    time.get(..16).unwrap_or(time).replace('T', " ")
}

/// The steps to set: one for all, or one for each loop.
pub fn format_steps(layout: &JobLayout) -> String {
    let format = |(mark, step): (Option<LoopMark>, Ratio)| {
        let step = format!("{} %", round(step.get::<percent>(), 3));
        mark.map_or(step.clone(), |mark| format!("{step} for {mark}"))
    };
    layout.steps().into_iter().map(format).collect::<Vec<_>>().join(", ")
}

/// A loop by its mark and its role.
fn loop_name(sized: &SizedLoop) -> String {
    format!("{} {}", sized.mark, sized.role.code().replace('_', " "))
}

fn join_sentence(parts: impl Iterator<Item = String>) -> String {
    let joined = parts.collect::<Vec<_>>().join("; ");
    let mut chars = joined.chars();
    let first = chars.next().map(|first| first.to_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}.", chars.as_str())
}

/// A length with the decimals of a tape, rounded from the figure of the report.
fn format_plan_length(length: PlanLength, system: UnitSystem) -> String {
    match system {
        UnitSystem::UsCustomary => format!("{} ft", round(length.ft(), 1)),
        UnitSystem::Metric => format!("{} m", round(length.m(), 2)),
    }
}

fn format_exact_detail(length: DetailLength, system: UnitSystem) -> String {
    match system {
        UnitSystem::UsCustomary => format!("{} in", length.inch()),
        UnitSystem::Metric => format!("{} mm", length.mm()),
    }
}
