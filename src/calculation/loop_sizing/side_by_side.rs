//! Loops side by side: where each lies, how it is wound, and what one channel for all would cost.

use serde::Serialize;
use uom::si::f64::{Length, Ratio};
use uom::si::inductance::microhenry;
use uom::si::ratio::{percent, ratio};
use utoipa::ToSchema;

use super::resolved::ResolvedLoopSizing;
use crate::calculation::layout::{ClassSighting, LaidLoop, LoopMark, SharedSlotKey};
use crate::calculation::report::{Message, Statement, has_messages};
use crate::practice::detectors::{AS_BUILT_SPREAD, MIN_TIMES_THRESHOLD};
use crate::practice::layout::ROW_GAP;
use crate::quantity::output::{PlanLength, round};

/// Loops that share an opening side by side.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct SideBySide {
    /// Whole pavement between the nearest wires of neighbours.
    pub gap: PlanLength,
    /// The mark of each loop, left to right as one drives in: `A1`, `A2`, ….
    #[schema(value_type = Vec<String>)]
    pub marks: Vec<LoopMark>,
    /// The middles of the loops, as offsets from the middle of the opening, left to right.
    pub centres: Vec<PlanLength>,
    /// The winding senses, left to right: `clockwise` and `anticlockwise` in turn.
    pub wound: Vec<&'static str>,
    /// How to cut the shared gap, in a few sentences.
    #[schema(value_type = String)]
    pub saw_plan: Message,
    /// What all loops on one channel would come to; take it only where it passes.
    pub one_channel: Vec<OneChannel>,
}

has_messages! {
    SideBySide: saw_plan;
}

impl SideBySide {
    /// The plan of a row; `None` for a single loop.
    pub(super) fn of(laid: &LaidLoop, alone: &[ClassSighting], job: &ResolvedLoopSizing) -> Option<Self> {
        let count = laid.count();
        if count < 2 {
            return None;
        }
        let gap = ROW_GAP.in_system(job.system());
        let (way, system) = (&laid.way, job.system());
        let slots = match way.shared_slot {
            Some(SharedSlotKey::Row(_)) => "row",
            Some(SharedSlotKey::Unit(_) | SharedSlotKey::AllUnits) => "shared",
            None if way.own_slot > Length::default() => "own",
            None => "none",
        };
        let saw_plan = Statement::new("sizing-saw-plan")
            .length("gap", gap, system)
            .code("slots", slots)
            .length("own_slot", way.own_slot, system)
            .length("shared_slot", way.shared_slot_length(), system);
        Some(Self {
            gap: gap.into(),
            marks: laid.marks(),
            centres: laid.lane.centres.iter().map(|centre| (*centre).into()).collect(),
            wound: (0..count).map(|index| if index % 2 == 0 { "clockwise" } else { "anticlockwise" }).collect(),
            saw_plan: saw_plan.into(),
            one_channel: vec![OneChannel::of("series", laid, alone, job), OneChannel::of("parallel", laid, alone, job)],
        })
    }
}

/// All loops of a row on one channel.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct OneChannel {
    /// `series` or `parallel`.
    pub wiring: &'static str,
    /// Inductance at the unit's terminals, µH, 2 decimals, of the group behind one lead-in; coupling between neighbours is left out.
    pub terminal_inductance_uh: f64,
    /// The change that the hardest vehicle over one of the loops makes, percent, 3 decimals.
    pub change_percent: f64,
    /// Whether the unit tunes to it and the change is twice the threshold, at the hardest place too.
    pub passes: bool,
}

impl OneChannel {
    /// One vehicle over one loop of n changes the group by about an nth. `alone` is what vehicles make over one of them on a channel of its own.
    fn of(wiring: &'static str, laid: &LaidLoop, alone: &[ClassSighting], job: &ResolvedLoopSizing) -> Self {
        let count = laid.count() as f64;
        let electrical = &laid.electrical;
        let (single, lead_in) = (electrical.loop_inductance, electrical.lead_in_inductance);
        let group = if wiring == "series" { single * count } else { single / count };
        let terminal = group + lead_in;
        // At the loop itself, then spread over the group, then diluted by the lead-in.
        let of_group: Ratio = group / terminal / count;
        let of_single: Ratio = single / electrical.terminal_inductance;
        let dilution = (of_group / of_single).get::<ratio>();
        let least_of =
            |of: fn(&ClassSighting) -> Ratio| alone.iter().map(of).fold(Ratio::new::<ratio>(1.0), Ratio::min);
        let change = least_of(|sighting| sighting.change) * dilution;
        let least = least_of(|sighting| sighting.least) * dilution;
        let limits = &job.detector.limits;
        let (low, high) = (terminal * (1.0 - AS_BUILT_SPREAD), terminal * (1.0 + AS_BUILT_SPREAD));
        let tunes =
            low.get::<microhenry>() >= limits.inductance_min_uh && high.get::<microhenry>() <= limits.inductance_max_uh;
        Self {
            wiring,
            terminal_inductance_uh: round(terminal.get::<microhenry>(), 2),
            change_percent: round(change.get::<percent>(), 3),
            passes: tunes && least >= MIN_TIMES_THRESHOLD * laid.step,
        }
    }
}
