//! The schedule of loops, and the notes below it.

use super::placed_loop::{PlacedLoop, format_position};
use super::projection::SiteProjection;
use crate::calculation::input::Shape;
use crate::calculation::loop_sizing::LoopSizingReport;
use crate::drawing::canvas::{Canvas, GAP, INNER, MARGIN};
use crate::drawing::dimension_text::{format_area_both, format_detail_both, format_plan_both};
use crate::drawing::text_metrics::MIDDLE_TO_BASELINE;
use crate::practice::finding_codes::FindingCode;
use crate::practice::roles::Side;
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

/// The lead-ins that are longer than the usual one of the job, after its length: `, 194 ft for A`.
pub fn format_longer_lead_ins(report: &LoopSizingReport, format: impl Fn(PlanLength) -> String) -> String {
    let usual = report.lead_in.order_length;
    let longer = report.loops.iter().filter(|sized| sized.lead_in.order_length != usual);
    let parts = longer.map(|sized| format!(", {} for {}", format(sized.lead_in.order_length), sized.mark));
    parts.collect::<Vec<_>>().concat()
}

/// The notes of the plan.
pub fn format_notes(report: &LoopSizingReport, projection: &SiteProjection, system: UnitSystem) -> Vec<String> {
    let mut notes = vec![format!(
        "Tape: from the line to the wires. Lead-ins are drawn to the kerb; order {} of pair for each loop{} and route it as the \
         site allows.",
        format_plan_both(report.lead_in.order_length, system),
        format_longer_lead_ins(report, |length| format_plan_both(length, system)),
    )];
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
