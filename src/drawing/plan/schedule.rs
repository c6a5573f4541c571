//! The schedule of loops, and the notes below it.

use super::placed_loop::{PlacedLoop, format_position};
use super::projection::SiteProjection;
use super::way_to_unit::crossing;
use crate::calculation::input::Shape;
use crate::calculation::loop_sizing::{LoopLeadIn, LoopSizingReport, SizedLoop};
use crate::drawing::canvas::{Canvas, GAP, INNER, MARGIN};
use crate::drawing::dimension_text::{format_area_both, format_detail_both, format_plan_both};
use crate::drawing::text_metrics::MIDDLE_TO_BASELINE;
use crate::practice::finding_codes::FindingCode;
use crate::practice::roles::Side;
use crate::practice::site::Barrier;
use crate::quantity::UnitSystem;
use crate::quantity::output::{PlanLength, round};
use crate::vocabulary::Vocabulary;

/// The radius of the circle round a letter.
const RADIUS: f64 = 8.0;
/// How far right of the margin the text beside a letter begins.
const INDENT: f64 = 24.0;

/// Draws the schedule; returns its lower edge.
pub fn draw(canvas: &mut Canvas, loops: &[PlacedLoop<'_>], system: UnitSystem, top: f64) -> f64 {
    let rows: Vec<_> = loops.iter().map(|placed| format_row(placed, system)).collect();
    loops.iter().enumerate().fold(top, |top, (index, placed)| {
        let middle = (MARGIN + RADIUS, top + RADIUS + 1.0);
        canvas.circle("balloon", middle, RADIUS);
        canvas.text("strong middle", (middle.0, middle.1 + MIDDLE_TO_BASELINE), &placed.sized.mark.to_string());
        let [name, what] = &rows[index];
        let alike = rows[..index].iter().position(|[_, other]| other == what);
        let what = alike.map_or(what.clone(), |other| format!("Made as {}.", loops[other].sized.mark));
        let bottom = canvas.paragraph("strong", (MARGIN + INDENT, top), INNER - INDENT, name);
        canvas.paragraph("", (MARGIN + INDENT, bottom), INNER - INDENT, &what) + GAP / 2.0
    }) + GAP / 2.0
}

/// What a loop is for and where it lies, and how it is made.
pub fn format_row(placed: &PlacedLoop<'_>, system: UnitSystem) -> [String; 2] {
    let sized = placed.sized;
    let is_lane = sized.distance_from_reference.is_some();
    let format = |length: PlanLength| {
        if length.m() == 0.0 { "right".to_owned() } else { format_plan_both(length, system) }
    };
    let position = format_position(sized, format, |distance, side, line| {
        let side = match side {
            Side::Outside if is_lane => "before",
            Side::Inside if is_lane => "past",
            Side::Outside | Side::Inside | Side::OnTheLine => side.code(),
        };
        format!("{distance} {side} {line}")
    });
    let mut what = match sized.count {
        1 => String::new(),
        count => format!("{count} side by side, wound as the arrow heads show, each "),
    };
    what += &format!("{}, {}\u{a0}turns", format_area_both(sized.along_travel, sized.across_lane, system), sized.turns);
    if sized.shape == Shape::Quadrupole {
        what += " round each of two cells";
    }
    if sized.corner_cut.mm() > 0.0 {
        what += &format!(", corners cut {}", format_detail_both(sized.corner_cut, system));
    }
    if let Some(depth) = sized.slot_depth {
        what += &format!(", slot {} deep", format_detail_both(depth, system));
    }
    what += &format!("; {} µH at the unit.", round(sized.electrical.terminal_inductance_uh, 1));
    if let Some(sku) = sized.stock_choice.as_ref().and_then(|choice| choice.sku.as_deref()) {
        what += &format!(" From stock: {sku}.");
    }
    [format!("{}: {position}", sized.role.label()), what]
}

/// What to order for the lead-ins: `53 ft of pair for each loop, 194 ft for A`, or the cable of home runs.
pub fn format_lead_in_orders(report: &LoopSizingReport, format: impl Fn(PlanLength) -> String) -> String {
    let (home_runs, pairs): (Vec<&SizedLoop>, Vec<&SizedLoop>) =
        report.loops.iter().partition(|sized| sized.lead_in.home_run.is_some());
    let usual = report.lead_in.order_length;
    let longer = pairs.iter().filter(|sized| sized.lead_in.order_length != usual);
    let longer: Vec<_> =
        longer.map(|sized| format!(", {} for {}", format(sized.lead_in.order_length), sized.mark)).collect();
    let mut orders = Vec::new();
    if !pairs.is_empty() || home_runs.is_empty() {
        orders.push(format!("{} of pair for each loop{}", format(usual), longer.concat()));
    }
    let cables = home_runs.iter().filter_map(|sized| Some((sized, sized.lead_in.home_run.as_ref()?)));
    let cables: Vec<_> = cables
        .map(|(sized, cable)| format!("{} of {} cable for {}", format(cable.length), cable.gauge, sized.mark))
        .collect();
    if !cables.is_empty() {
        orders.push(format!("from the pull box to the unit {}", cables.join(", ")));
    }
    orders.join("; ")
}

/// Marks in a row: `A, B and C`.
fn format_marks<'a>(loops: impl IntoIterator<Item = &'a SizedLoop>) -> String {
    let mut marks: Vec<_> = loops.into_iter().map(|sized| sized.mark.to_string()).collect();
    match marks.pop() {
        Some(last) if !marks.is_empty() => format!("{} and {last}", marks.join(", ")),
        last => last.unwrap_or_default(),
    }
}

/// The way of the pairs to the unit, and where a sliding leaf goes.
fn format_way(report: &LoopSizingReport) -> Vec<String> {
    let opening = &report.inputs.opening;
    let mut notes = Vec::new();
    let loops = PlacedLoop::all(&report.loops);
    if loops.iter().any(PlacedLoop::has_pair) {
        notes.extend(format_pairs(report));
        let crossing = crossing(&loops);
        if opening.barrier.is_present() && !crossing.is_empty() {
            let (pairs, cross) = if crossing.len() == 1 { ("pair", "crosses") } else { ("pairs", "cross") };
            let in_conduit = crossing.iter().any(|placed| placed.sized.lead_in.in_conduit.m() > 0.0);
            let under = match (in_conduit, opening.barrier) {
                (true, Barrier::SlideGate) => "in conduit under the track",
                (true, _) => "in conduit",
                (false, Barrier::SlideGate) => "in the slot, past the track",
                (false, _) => "in the slot",
            };
            let marks = format_marks(crossing.iter().map(|placed| placed.sized));
            notes.push(format!("The {pairs} of {marks} {cross} the line at the dot, {under}."));
        }
    }
    if opening.barrier == Barrier::SlideGate {
        notes.push(
            "Dashed in the line, broken off: where the leaf parks and its run-back, drawn on the side of the unit. It stays clear, as long \
             as the leaf."
                .to_owned(),
        );
    }
    notes
}

/// What the lines from the loops to the unit are.
fn format_pairs(report: &LoopSizingReport) -> Vec<String> {
    let system = report.inputs.opening.system;
    let having = |what: fn(&LoopLeadIn) -> bool| -> Vec<&SizedLoop> {
        report.loops.iter().filter(|sized| sized.lead_in.length.m() > 0.0 && what(&sized.lead_in)).collect()
    };
    let side = report.inputs.opening.unit_side.code();
    let mut notes = vec![format!("U is the unit, on the {side} as one leaves.")];
    let sawn = having(|pair| pair.in_slot.m() > 0.0);
    if !sawn.is_empty() {
        notes.push("Double lines are slots of pairs.".to_owned());
    }
    let in_row = having(|pair| pair.shared_with == Some("row"));
    if !in_row.is_empty() {
        notes.push(format!("The pairs of a row share the slot beside it: {}.", format_marks(in_row)));
    }
    for sized in having(|pair| pair.slot_end == "before_edge") {
        let short = format_plan_both(sized.lead_in.from_edge, system);
        notes.push(format!("The slot of {} ends {short} before the edge.", sized.mark));
    }
    let past = having(|pair| pair.slot_end == "past_edge");
    if !past.is_empty() {
        let all_the_way = past.iter().all(|sized| sized.lead_in.in_conduit.m() == 0.0);
        let to = if all_the_way { " all the way to the unit" } else { "" };
        notes.push(format!("Past the edge slots go on{to}, drawn shortened: {}.", format_marks(past)));
    }
    if !having(|pair| pair.in_conduit.m() > 0.0).is_empty() {
        notes.push("Dashed from there on: conduit, as the site allows.".to_owned());
    }
    if !having(|pair| pair.home_run.is_some()).is_empty() {
        notes.push(
            "A crossed box is a pull box: the pair of the loop ends there and is spliced to the cable of its home run."
                .to_owned(),
        );
    } else if !having(|pair| pair.has_pull_box).is_empty() {
        notes.push("A crossed box is a pull box: there the pair is spliced to that from the next spool.".to_owned());
    }
    vec![notes.join(" ")]
}

/// The notes of the plan.
pub fn format_notes(report: &LoopSizingReport, projection: &SiteProjection, system: UnitSystem) -> Vec<String> {
    let mut notes = vec![format!(
        "Tape: from the line to the wires. Order {}.",
        format_lead_in_orders(report, |length| format_plan_both(length, system)),
    )];
    notes.extend(format_way(report));
    // Where it matters, a finding says it.
    let is_told = report.findings.iter().any(|finding| finding.code == FindingCode::UnseenStretch);
    if let Some(stretch) = report.unseen_stretch.filter(|_| !is_told) {
        notes.push(format!("Unseen between the loops that hold the barrier: {}.", format_plan_both(stretch, system)));
    }
    if projection.sweep > 0.0 {
        notes.push("Leaves are taken to swing inwards; chain lines show their sweep.".to_owned());
    }
    let scale = if projection.breaks.is_empty() {
        "To scale."
    } else {
        "To scale, but for the stretch between zigzag lines, which is shortened."
    };
    notes.push(scale.to_owned());
    notes
}
