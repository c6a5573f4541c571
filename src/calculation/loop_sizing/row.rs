//! Loops side by side: where each lies, how it is wound, and what one channel for all would cost.

use uom::si::f64::Ratio;
use uom::si::inductance::microhenry;
use uom::si::ratio::{percent, ratio};

use super::job::Job;
use super::report::{OneChannel, SideBySide};
use super::search::Choice;
use crate::practice::detectors::{AS_BUILT_SPREAD, MIN_TIMES_THRESHOLD};
use crate::practice::roles::ROW_GAP;
use crate::quantity::format::format_length;
use crate::quantity::output::round;

/// The plan of a row; `None` for a single loop.
pub fn plan(choice: &Choice, job: &Job) -> Option<SideBySide> {
    let count = choice.centres.len();
    if count < 2 {
        return None;
    }
    let gap = ROW_GAP.in_system(job.system());
    let saw_plan = format!(
        "Cut each loop by itself with all four sides; leave {} of whole pavement between the neighbouring slots and lay no two \
         loops in one slot. Wind the first clockwise, the next anticlockwise, and so on. Bring each lead-in out at its own edge.",
        format_length(gap, job.system())
    );
    Some(SideBySide {
        gap: gap.into(),
        centres: choice.centres.iter().map(|centre| (*centre).into()).collect(),
        wound: (0..count).map(|index| if index % 2 == 0 { "clockwise" } else { "anticlockwise" }).collect(),
        saw_plan,
        one_channel: vec![one_channel("series", choice, job), one_channel("parallel", choice, job)],
    })
}

/// All loops on one channel: one vehicle over one loop of n changes the group by about an nth.
fn one_channel(wiring: &'static str, choice: &Choice, job: &Job) -> OneChannel {
    let count = choice.centres.len() as f64;
    let electrical = &choice.design.electrical;
    let (single, lead_in) = (electrical.loop_inductance, electrical.lead_in_inductance);
    let group = if wiring == "series" { single * count } else { single / count };
    let terminal = group + lead_in;
    // At the loop itself, then spread over the group, then diluted by the lead-in.
    let of_group: Ratio = group / terminal / count;
    let of_single: Ratio = single / electrical.terminal_inductance;
    let dilution = (of_group / of_single).get::<ratio>();
    let hardest = choice.sightings.iter().map(|sighting| sighting.change).fold(Ratio::new::<ratio>(1.0), Ratio::min);
    let change = hardest * dilution;
    let limits = &job.detector.limits;
    let (low, high) = (terminal * (1.0 - AS_BUILT_SPREAD), terminal * (1.0 + AS_BUILT_SPREAD));
    let tunes =
        low.get::<microhenry>() >= limits.inductance_min_uh && high.get::<microhenry>() <= limits.inductance_max_uh;
    OneChannel {
        wiring,
        terminal_inductance_uh: round(terminal.get::<microhenry>(), 2),
        change_percent: round(change.get::<percent>(), 3),
        passes: tunes && change >= MIN_TIMES_THRESHOLD * job.threshold(),
    }
}
