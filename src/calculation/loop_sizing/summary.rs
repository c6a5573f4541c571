//! The summary of sized loops, for the sizing itself and for a plan.

use super::report::{LoopSizingInputs, LoopSizingReport, SizedLoop};
use crate::calculation::Example;
use crate::calculation::report::Finding;
use crate::calculation::summary::{JobSummary, JobToSum, LoopToSum, Summarized, plan_length};

impl Summarized for LoopSizingReport {
    const PATH: &'static str = "/v1/loop-sizing/summary";
    const OPERATION_ID: &'static str = "summarize_loops";
    const EXAMPLES: &'static [Example] = &[
        Example {
            name: "slide_gate",
            summary: "A 24 ft sliding gate, and nothing else known",
            request: include_str!("../../../openapi/examples/loop-sizing/summary/slide_gate.request.json"),
        },
        Example {
            name: "cafe_window",
            summary: "Tern Island Boatyard: the café drive-through, from stock",
            request: include_str!("../../../openapi/examples/loop-sizing/summary/cafe_window.request.json"),
        },
    ];

    fn summary(&self) -> &JobSummary {
        &self.summary
    }
}

/// Sums up sized loops. `packs` are what else is bought by the caller's numbers: a number, and how many.
pub fn summarize(
    inputs: &LoopSizingInputs,
    loops: &[SizedLoop],
    findings: &[Finding],
    packs: Vec<(String, u64)>,
) -> JobSummary {
    let loops: Vec<_> = loops.iter().map(loop_to_sum).collect();
    let (barrier, system) = (inputs.opening.barrier, inputs.opening.system);
    JobSummary::of(&loops, &JobToSum { barrier, wire: &inputs.wire.gauge, findings, packs, system })
}

fn loop_to_sum(sized: &SizedLoop) -> LoopToSum {
    LoopToSum {
        mark: sized.mark,
        role: sized.role,
        construction: sized.construction,
        count: sized.count,
        legs: [sized.along_travel.0, sized.across_lane.0],
        turns: sized.turns,
        side: sized.side,
        distance: plan_length(sized.distance_from_barrier.or(sized.distance_from_reference)),
        wire_length: sized.electrical.wire_length.0,
        // A home run begins where the pair of the loop ends.
        pair_length: sized.lead_in.home_run.as_ref().map_or(sized.lead_in.order_length, |run| run.pair_length).0,
        sku: sized.stock_choice.as_ref().and_then(|choice| choice.sku.clone()),
    }
}
