//! What to cut, to load and to wind.

use maud::{Markup, PreEscaped, html};

use super::format::{format_amount, tick_box};
use crate::calculation::input::Shape;
use crate::calculation::installation_plan::InstallationPlanReport;
use crate::calculation::loop_sizing::SizedLoop;
use crate::calculation::material_estimate::LoopMaterials;
use crate::drawing::dimension_text::{format_detail, format_plan};
use crate::drawing::plan;
use crate::practice::site::Construction;
use crate::quantity::UnitSystem;
use crate::quantity::format::format_count;
use crate::vocabulary::Vocabulary;

/// The loops as they are cut or laid, and the plan that shows them.
pub fn cut(report: &InstallationPlanReport, system: UnitSystem) -> Markup {
    let (picture, notes) = plan::picture(&report.sizing, system);
    let loops = &report.sizing.loops;
    html! {
        section {
            h2 { @if is_sawn(report) { "Cut" } @else { "Lay out" } }
            div.wide { table {
                thead { tr {
                    th { "Loop" } th { "Along × across" } th { "Turns" } th { "Nearest wire" } th { "Slot" } th { "Corners cut" }
                } }
                tbody {
                    @for sized in loops {
                        tr {
                            th { (sized.mark) " " (format_name(sized)) }
                            td { (format_plan(sized.along_travel, system)) " × " (format_plan(sized.across_lane, system)) }
                            td { (sized.turns) @if sized.shape == Shape::Quadrupole { " in each of two cells" } }
                            td { (format_position(sized, system)) }
                            td { (format_slot(sized, report, system)) }
                            td { (format_corner(sized, report, system)) }
                        }
                    }
                }
            } }
            @for row in loops.iter().filter_map(|sized| sized.side_by_side.as_ref()) {
                p { (row.saw_plan) }
            }
            @if let Some(materials) = report.materials.as_ref().filter(|materials| materials.saw_cut.passes > 0) {
                @let cut = &materials.saw_cut;
                p {
                    (format_plan(cut.total, system)) " of cut in all, lead-ins " (format_plan(cut.lead_in, system))
                    @if let Some(width) = materials.loops.iter().find_map(|each| each.lead_in_slot_width) {
                        " at " (format_detail(width, system))
                    }
                    "; " (if cut.passes == 1 { "1 pass".to_owned() } else { format!("{} passes", cut.passes) })
                    "; the blade runs on past " (format_count(f64::from(cut.cut_ends), "end"))
                    @if cut.cored_corners > 0 { "; " (format_count(f64::from(cut.cored_corners), "corner")) " drilled" }
                    "."
                }
            }
            figure { (PreEscaped(picture)) }
            p { (notes.join(" ")) }
        }
    }
}

/// What goes in the van.
pub fn load(report: &InstallationPlanReport) -> Markup {
    let Some(materials) = &report.materials else { return html! {} };
    html! {
        section {
            h2 { "Load" }
            table.load { tbody {
                @for item in &materials.items {
                    tr {
                        td { (tick_box()) }
                        td.amount { (format_amount(item.quantity, item.unit)) }
                        td {
                            b { (item.item.label()) }
                            @if let Some(sku) = &item.sku { " (" (sku) ")" }
                            ": " (item.how)
                        }
                    }
                }
            } }
        }
    }
}

/// How each loop is wound, and how its lead-in is brought home.
pub fn wind(report: &InstallationPlanReport, system: UnitSystem) -> Markup {
    let sizing = &report.sizing;
    html! {
        section {
            h2 { "Wind" }
            ul {
                @for sized in &sizing.loops {
                    li {
                        b { (sized.mark) " " (format_name(sized)) ": " }
                        (format_count(f64::from(sized.turns), "turn")) ", " (sized.construction.label().to_lowercase())
                        @match &sized.side_by_side {
                            Some(row) => { ", left to right " (row.wound.join(", ")) }
                            None if sized.turns > 1 && sized.construction == Construction::HandWound => { ", all the same way round" }
                            None => {}
                        }
                        @if let Some(length) = materials(sized, report).and_then(|each| each.wire_length) {
                            "; pull " (format_plan(length, system)) " of " (sizing.inputs.wire.gauge)
                            " in one length" @if sized.count > 1 { " for each" } ", lead-in included"
                        }
                        @if let Some(sku) = sized.stock_choice.as_ref().and_then(|choice| choice.sku.as_deref()) {
                            "; from stock: " (sku)
                        }
                        "."
                    }
                }
            }
            p {
                "Lead-in: " (format_plan(sizing.lead_in.order_length, system)) " for each loop"
                (plan::format_longer_lead_ins(sizing, |length| format_plan(length, system))) ", slack included. "
                (sizing.lead_in.message)
            }
        }
    }
}

/// Whether anything is sawn.
pub fn is_sawn(report: &InstallationPlanReport) -> bool {
    report.sizing.loops.iter().any(|sized| sized.slot_depth.is_some())
}

/// A role with its number of loops.
fn format_name(sized: &SizedLoop) -> String {
    let role = sized.role.label();
    if sized.count > 1 { format!("{role}, {} side by side", sized.count) } else { role.to_owned() }
}

fn materials<'a>(sized: &SizedLoop, report: &'a InstallationPlanReport) -> Option<&'a LoopMaterials> {
    report.materials.as_ref()?.loops.iter().find(|each| each.mark == Some(sized.mark))
}

fn format_position(sized: &SizedLoop, system: UnitSystem) -> String {
    let format = |length| format_plan(length, system);
    plan::format_position(sized, format, |distance, side, line| format!("{distance} {} {line}", side.code()))
}

/// The width of a slot by its depth.
fn format_slot(sized: &SizedLoop, report: &InstallationPlanReport, system: UnitSystem) -> String {
    let Some(depth) = sized.slot_depth else { return "not sawn".to_owned() };
    let width = materials(sized, report).and_then(|each| each.slot_width);
    match width.or(report.sizing.inputs.slot.as_ref().map(|slot| slot.width.into())) {
        Some(width) => format!("{} × {} deep", format_detail(width, system), format_detail(depth, system)),
        None => format!("{} deep", format_detail(depth, system)),
    }
}

fn format_corner(sized: &SizedLoop, report: &InstallationPlanReport, system: UnitSystem) -> String {
    let is_cored = report.materials.as_ref().is_some_and(|materials| materials.saw_cut.cored_corners > 0);
    match sized.corner_cut.mm() > 0.0 {
        true if is_cored => "drilled".to_owned(),
        true => format_detail(sized.corner_cut, system),
        false => "square".to_owned(),
    }
}
