//! What to cut, to load and to wind.

use maud::{Markup, PreEscaped, html};

use super::format::{format_amount, tick_box};
use crate::calculation::input::Shape;
use crate::calculation::installation_plan::InstallationPlanReport;
use crate::calculation::loop_sizing::SizedLoop;
use crate::calculation::material_estimate::{LoopMaterials, MaterialEstimateReport};
use crate::calculation::report::Message;
use crate::drawing::dimension_text::{format_detail, format_plan};
use crate::drawing::{plan, slot_section};
use crate::practice::site::Construction;
use crate::quantity::UnitSystem;
use crate::quantity::format::{format_count, format_duration};
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
                    th { "Loop" } th { "Along × across" } th { "Turns" } th { "Nearest wire" } th { (if is_sawn(report) { "Slot" } else { "Cover" }) } th { (if is_sawn(report) { "Corners cut" } else { "Corners" }) }
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
            @for how in burials(report) {
                p { (how) }
            }
            @if let Some(materials) = report.materials.as_ref().filter(|materials| materials.saw_cut.passes > 0) {
                @let cut = &materials.saw_cut;
                p {
                    (format_plan(cut.total, system)) " of cut in all, lead-ins " (format_plan(cut.lead_in, system))
                    (format_lead_in_slots(materials, system))
                    "; " (if cut.passes == 1 { "1 pass".to_owned() } else { format!("{} passes", cut.passes) })
                    "; the blade runs on past " (format_count(f64::from(cut.cut_ends), "end"))
                    @if cut.cored_corners > 0 { "; " (format_count(f64::from(cut.cored_corners), "corner")) " drilled" }
                    "."
                }
            }
            figure { (PreEscaped(picture)) }
            p { (notes.join(" ")) }
            @if let Some(section) = report.materials.as_ref().and_then(|materials| slot_section::picture(materials, system)) {
                figure.section { (PreEscaped(section)) }
            }
        }
    }
}

/// The slots of lead-ins that differ, each with its width and depth: ` (5/16 in × 1-1/2 in deep)`.
fn format_lead_in_slots(materials: &MaterialEstimateReport, system: UnitSystem) -> String {
    let section = |width, depth| format!("{} × {} deep", format_detail(width, system), format_detail(depth, system));
    let own = materials.loops.iter().filter_map(|each| each.lead_in_slot_width.zip(each.lead_in_slot_depth));
    let own = own.map(|(width, depth)| section(width, depth));
    let shared = materials.shared_slots.iter().map(|slot| format!("shared {}", section(slot.width, slot.depth)));
    let mut slots: Vec<String> = Vec::new();
    for slot in own.chain(shared) {
        if !slots.contains(&slot) {
            slots.push(slot);
        }
    }
    if slots.is_empty() { String::new() } else { format!(" ({})", slots.join(", ")) }
}

/// What goes in the van.
pub fn load(report: &InstallationPlanReport) -> Markup {
    let Some(materials) = &report.materials else { return html! {} };
    html! {
        section {
            h2 { "Load" }
            table.load { tbody {
                @for (index, item) in materials.items.iter().enumerate() {
                    @let is_told = materials.items[..index].iter().any(|other| other.item == item.item);
                    tr {
                        td { (tick_box()) }
                        td.amount { (format_amount(item.quantity, item.unit)) }
                        td {
                            b { (item.item.label()) }
                            @if let Some(sku) = &item.sku { " (" (sku) ")" }
                            // What is said of the first size of a thing holds for the others.
                            @match item.size.as_deref().filter(|_| is_told) {
                                Some(size) => { ": " (size) }
                                None => { ": " (item.how) }
                            }
                        }
                    }
                }
            } }
        }
    }
}

/// How long the crew takes, step by step.
pub fn hours(report: &InstallationPlanReport) -> Markup {
    let Some(labour) = report.materials.as_ref().map(|materials| &materials.labour) else { return html! {} };
    let steps = labour
        .steps
        .iter()
        .map(|timed| format!("{} {}", timed.step.label().to_lowercase(), format_duration(timed.time.0)));
    html! {
        section {
            h2 { "Hours of the crew: " (format_duration(labour.total.0)) }
            p { (steps.collect::<Vec<_>>().join(", ")) "." }
        }
    }
}

/// The wire to pull, in one length or in several.
fn format_pull(sized: &SizedLoop, report: &InstallationPlanReport, system: UnitSystem) -> Option<String> {
    let (materials, made) = (report.materials.as_ref()?, materials(sized, report)?);
    let (length, gauge) = (format_plan(made.wire_length?, system), &report.sizing.inputs.wire.gauge);
    let each = if sized.count > 1 { " for each" } else { "" };
    let how = match (&sized.lead_in.home_run, made.splices) {
        (Some(_), _) => format!(" in one length{each}, its pair to the pull box included"),
        (None, 0) => format!(" in one length{each}, lead-in included"),
        (None, _) => format!("{each}, lead-in included, spliced in the pull box"),
    };
    let allowance = materials.inputs.wire_allowance_percent;
    let more = if allowance > 0.0 { format!(", and {allowance}\u{a0}% more") } else { String::new() };
    Some(format!("; pull {length} of {gauge}{how}{more}"))
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
                        (format_pull(sized, report, system).unwrap_or_default())
                        @if let Some(sku) = sized.stock_choice.as_ref().and_then(|choice| choice.sku.as_deref()) {
                            "; from stock: " (sku)
                        }
                        @if sized.lead_in.length.m() > 0.0 {
                            "; label its pair " (sized.mark) " at both ends: " (sized.lead_in.way)
                        }
                        "."
                    }
                }
            }
            p {
                "Lead-in: " (plan::format_lead_in_orders(sizing, |length| format_plan(length, system))) ", slack included. "
                (sizing.lead_in.message)
            }
        }
    }
}

/// How buried loops are laid, each sentence once.
fn burials(report: &InstallationPlanReport) -> Vec<&Message> {
    let mut said: Vec<&Message> = Vec::new();
    let burials =
        report.materials.iter().flat_map(|materials| &materials.loops).filter_map(|each| each.burial.as_ref());
    for burial in burials {
        if !said.contains(&&burial.message) {
            said.push(&burial.message);
        }
    }
    said
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
    let Some(depth) = sized.slot_depth else {
        let burial = materials(sized, report).and_then(|each| each.burial.as_ref());
        return burial.map_or("not sawn".to_owned(), |burial| {
            format!("{} under the surface", format_detail(burial.cover, system))
        });
    };
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
