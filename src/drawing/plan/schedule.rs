//! The schedule of loops, and the notes below it.

use super::placed_loop::{PlacedLoop, format_position};
use super::projection::SiteProjection;
use super::way_to_unit::crossing;
use crate::calculation::input::Shape;
use crate::calculation::loop_sizing::{LoopLeadIn, LoopSizingReport, SizedLoop};
use crate::calculation::report::{ListJoin, Statement};
use crate::drawing::canvas::{Canvas, GAP, INNER, MARGIN};
use crate::drawing::dimension_text::{format_area_both, format_detail_both, format_plan_both};
use crate::drawing::text_metrics::MIDDLE_TO_BASELINE;
use crate::practice::finding_codes::FindingCode;
use crate::practice::site::Barrier;
use crate::quantity::output::{PlanLength, round};
use crate::vocabulary::Vocabulary;
use crate::wording::Reader;

/// The radius of the circle round a letter.
const RADIUS: f64 = 8.0;
/// How far right of the margin the text beside a letter begins.
const INDENT: f64 = 24.0;

/// Draws the schedule; returns its lower edge. A figure has none.
pub fn draw(canvas: &mut Canvas, loops: &[PlacedLoop<'_>], reader: Reader, top: f64) -> f64 {
    if canvas.is_figure() {
        return top;
    }
    let rows: Vec<_> = loops.iter().map(|placed| format_row(placed, reader)).collect();
    loops.iter().enumerate().fold(top, |top, (index, placed)| {
        let middle = (MARGIN + RADIUS, top + RADIUS + 1.0);
        canvas.circle("balloon", middle, RADIUS);
        canvas.text("strong middle", (middle.0, middle.1 + MIDDLE_TO_BASELINE), &placed.sized.mark.to_string());
        let [name, what] = &rows[index];
        let alike = rows[..index].iter().position(|[_, other]| other == what);
        let made_as = |other: usize| {
            let mark = loops[other].sized.mark.to_string();
            reader.say(&Statement::new("drawings-plan-made-as").text("mark", mark)).into_owned()
        };
        let what = alike.map_or(what.clone(), made_as);
        let bottom = canvas.paragraph("strong", (MARGIN + INDENT, top), INNER - INDENT, name);
        canvas.paragraph("", (MARGIN + INDENT, bottom), INNER - INDENT, &what) + GAP / 2.0
    }) + GAP / 2.0
}

/// What a loop is for and where it lies, and how it is made.
pub fn format_row(placed: &PlacedLoop<'_>, reader: Reader) -> [String; 2] {
    let sized = placed.sized;
    let position = format_position(sized, |length| format_plan_both(length, reader), true, reader);
    let name = Statement::new("drawings-plan-name").member("role", sized.role).text("position", position);
    let mut made = Statement::new("drawings-plan-made")
        .count("count", sized.count as u64)
        .text("size", format_area_both(sized.along_travel, sized.across_lane, reader))
        .count("turns", sized.turns.into())
        .code("cells", if sized.shape == Shape::Quadrupole { "two" } else { "one" })
        .code("corners", if sized.corner_cut.mm() > 0.0 { "cut" } else { "square" })
        .text("corner_cut", format_detail_both(sized.corner_cut, reader))
        .code("slot", if sized.slot_depth.is_some() { "sawn" } else { "none" })
        .text("slot_depth", sized.slot_depth.map_or_else(String::new, |depth| format_detail_both(depth, reader)))
        .text("inductance", reader.with_unit(&round(sized.electrical.terminal_inductance_uh, 1).to_string(), "uH"));
    if let Some(sku) = sized.stock_choice.as_ref().and_then(|choice| choice.sku.clone()) {
        made = made.followed_by(Statement::new("drawings-plan-from-stock").text("sku", sku));
    }
    [reader.say(&name).into_owned(), reader.say(&made).into_owned()]
}

/// What to order for the lead-ins: `53 ft of pair for each loop, 194 ft for A`, or the cable of home runs.
pub fn say_lead_in_orders(report: &LoopSizingReport, format: impl Fn(PlanLength) -> String) -> Statement {
    let (home_runs, pairs): (Vec<&SizedLoop>, Vec<&SizedLoop>) =
        report.loops.iter().partition(|sized| sized.lead_in.home_run.is_some());
    let usual = report.lead_in.order_length;
    let mut orders = Vec::new();
    if !pairs.is_empty() || home_runs.is_empty() {
        let longer = pairs.iter().filter(|sized| sized.lead_in.order_length != usual).map(|sized| {
            Statement::new("drawings-plan-order-longer")
                .text("length", format(sized.lead_in.order_length))
                .text("mark", sized.mark.to_string())
        });
        let all = Statement::new("drawings-plan-order-pairs").text("length", format(usual));
        let all = std::iter::once(all).chain(longer).collect();
        orders.push(Statement::new("drawings-plan-order").phrases("orders", all, ListJoin::Comma));
    }
    let cables = home_runs.iter().filter_map(|sized| Some((sized, sized.lead_in.home_run.as_ref()?)));
    let cables: Vec<_> = cables
        .map(|(sized, cable)| {
            Statement::new("drawings-plan-order-cable")
                .text("length", format(cable.length))
                .text("gauge", cable.gauge.clone())
                .text("mark", sized.mark.to_string())
        })
        .collect();
    if !cables.is_empty() {
        orders.push(Statement::new("drawings-plan-order-home-runs").phrases("cables", cables, ListJoin::Comma));
    }
    Statement::new("drawings-plan-order").phrases("orders", orders, ListJoin::Semicolon)
}

/// Marks in a row: `A, B and C`.
fn format_marks<'a>(loops: impl IntoIterator<Item = &'a SizedLoop>, reader: Reader) -> String {
    let mut marks: Vec<_> = loops.into_iter().map(|sized| sized.mark.to_string()).collect();
    match marks.pop() {
        Some(last) if !marks.is_empty() => {
            let list = Statement::new("drawings-and").text("first", marks.join(", ")).text("last", last);
            reader.say(&list).into_owned()
        }
        last => last.unwrap_or_default(),
    }
}

/// The way of the pairs to the unit, and where a sliding leaf goes.
fn format_way(report: &LoopSizingReport, reader: Reader) -> Vec<String> {
    let opening = &report.inputs.opening;
    let mut notes = Vec::new();
    let loops = PlacedLoop::all(&report.loops);
    if loops.iter().any(PlacedLoop::has_pair) {
        notes.push(format_pairs(report, reader));
        let crossing = crossing(&loops);
        if opening.barrier.is_present() && !crossing.is_empty() {
            let in_conduit = crossing.iter().any(|placed| placed.sized.lead_in.in_conduit.m() > 0.0);
            let under = match (in_conduit, opening.barrier) {
                (true, Barrier::SlideGate) => "conduit_track",
                (true, _) => "conduit",
                (false, Barrier::SlideGate) => "slot_track",
                (false, _) => "slot",
            };
            let note = Statement::new("drawings-plan-crossing")
                .count("pairs", crossing.len() as u64)
                .text("marks", format_marks(crossing.iter().map(|placed| placed.sized), reader))
                .code("under", under);
            notes.push(reader.say(&note).into_owned());
        }
    }
    if opening.barrier == Barrier::SlideGate {
        notes.push(reader.say(&Statement::new("drawings-plan-parking")).into_owned());
    }
    notes
}

/// What the lines from the loops to the unit are.
fn format_pairs(report: &LoopSizingReport, reader: Reader) -> String {
    let having = |what: fn(&LoopLeadIn) -> bool| -> Vec<&SizedLoop> {
        report.loops.iter().filter(|sized| sized.lead_in.length.m() > 0.0 && what(&sized.lead_in)).collect()
    };
    let of_marks = |note: Statement, loops: Vec<&SizedLoop>| note.text("marks", format_marks(loops, reader));
    let mut notes = vec![Statement::new("drawings-plan-unit").code("side", report.inputs.opening.unit_side.code())];
    let sawn = having(|pair| pair.in_slot.m() > 0.0);
    if !sawn.is_empty() {
        notes.push(Statement::new("drawings-plan-double-lines"));
    }
    let in_row = having(|pair| pair.shared_with == Some("row"));
    if !in_row.is_empty() {
        notes.push(of_marks(Statement::new("drawings-plan-row-slot"), in_row));
    }
    for sized in having(|pair| pair.slot_end == "before_edge") {
        let short = format_plan_both(sized.lead_in.from_edge, reader);
        let note = Statement::new("drawings-plan-slot-short").text("mark", sized.mark.to_string());
        notes.push(note.text("short", short));
    }
    let past = having(|pair| pair.slot_end == "past_edge");
    if !past.is_empty() {
        let all_the_way = past.iter().all(|sized| sized.lead_in.in_conduit.m() == 0.0);
        let note =
            Statement::new("drawings-plan-past-edge").code("until", if all_the_way { "unit" } else { "conduit" });
        notes.push(of_marks(note, past));
    }
    if !having(|pair| pair.in_conduit.m() > 0.0).is_empty() {
        notes.push(Statement::new("drawings-plan-conduit"));
    }
    if !having(|pair| pair.home_run.is_some()).is_empty() {
        notes.push(Statement::new("drawings-plan-pull-box").code("to", "home_run"));
    } else if !having(|pair| pair.has_pull_box).is_empty() {
        notes.push(Statement::new("drawings-plan-pull-box").code("to", "next_piece"));
    }
    notes.iter().map(|note| reader.say(note)).collect::<Vec<_>>().join(" ")
}

/// The notes of the plan.
pub fn format_notes(report: &LoopSizingReport, projection: &SiteProjection, reader: Reader) -> Vec<String> {
    let both = |length| format_plan_both(length, reader);
    let say = |note: &Statement| reader.say(note).into_owned();
    let tape = Statement::new("drawings-plan-tape").phrase("orders", say_lead_in_orders(report, both));
    let mut notes = vec![say(&tape)];
    notes.extend(format_way(report, reader));
    // Where it matters, a finding says it.
    let is_told = report.findings.iter().any(|finding| finding.code == FindingCode::UnseenStretch);
    if let Some(stretch) = report.unseen_stretch.filter(|_| !is_told) {
        notes.push(say(&Statement::new("drawings-plan-unseen").text("stretch", both(stretch))));
    }
    if projection.sweep > 0.0 {
        notes.push(say(&Statement::new("drawings-plan-sweep")));
    }
    let broken = if projection.breaks.is_empty() { "no" } else { "yes" };
    notes.push(say(&Statement::new("drawings-plan-scale").code("broken", broken)));
    notes
}
