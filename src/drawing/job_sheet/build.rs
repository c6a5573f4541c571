//! What to cut and to wind.

use maud::{Markup, PreEscaped, html};

use crate::calculation::input::Shape;
use crate::calculation::installation_plan::InstallationPlanReport;
use crate::calculation::loop_sizing::SizedLoop;
use crate::calculation::material_estimate::{LoopMaterials, MaterialEstimateReport, SawCut};
use crate::calculation::report::{ListJoin, Message, Statement};
use crate::drawing::dimension_text::{format_detail, format_duration, format_percent, format_plan};
use crate::drawing::{plan, slot_section};
use crate::practice::site::Construction;
use crate::wording::Reader;

/// The loops as they are cut or laid, and the plan that shows them.
pub fn cut(report: &InstallationPlanReport, reader: Reader) -> Markup {
    let (picture, notes) = plan::picture(&report.sizing, reader);
    let loops = &report.sizing.loops;
    let sawn = if is_sawn(report) { "yes" } else { "no" };
    let columns = [
        Statement::new("sheet-column-loop"),
        Statement::new("sheet-column-size"),
        Statement::new("sheet-column-turns"),
        Statement::new("sheet-column-nearest-wire"),
        Statement::new("sheet-column-slot").code("sawn", sawn),
        Statement::new("sheet-column-corners").code("sawn", sawn),
    ];
    html! {
        section {
            h2 { (reader.say(&Statement::new("sheet-cut").code("sawn", sawn))) }
            div.wide { table {
                thead { tr { @for column in &columns { th { (reader.say(column)) } } } }
                tbody {
                    @for sized in loops {
                        tr {
                            th { (sized.mark) " " (format_name(sized, reader)) }
                            td { (format_plan(sized.along_travel, reader)) " × " (format_plan(sized.across_lane, reader)) }
                            td { (format_turns(sized, reader)) }
                            td { (plan::format_position(sized, |length| format_plan(length, reader), false, reader)) }
                            td { (format_slot(sized, report, reader)) }
                            td { (format_corner(sized, report, reader)) }
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
                p { (format_saw_cut(&materials.saw_cut, materials, reader)) }
            }
            figure { (PreEscaped(picture)) }
            p { (notes.join(" ")) }
            @if let Some(section) = report.materials.as_ref().and_then(|materials| slot_section::picture(materials, reader)) {
                figure.section { (PreEscaped(section)) }
            }
        }
    }
}

/// The turns, which a quadrupole has in each of its cells.
fn format_turns(sized: &SizedLoop, reader: Reader) -> String {
    let cells = if sized.shape == Shape::Quadrupole { "two" } else { "one" };
    reader.say(&Statement::new("sheet-turns").count("turns", sized.turns.into()).code("cells", cells)).into_owned()
}

/// How much is cut, and how.
fn format_saw_cut(cut: &SawCut, materials: &MaterialEstimateReport, reader: Reader) -> String {
    let slots = lead_in_slots(materials, reader);
    let words = Statement::new("sheet-saw-cut")
        .text("total", format_plan(cut.total, reader))
        .text("lead_in", format_plan(cut.lead_in, reader))
        .code("slots_differ", if slots.is_empty() { "no" } else { "yes" })
        .text("slots", slots.join(", "))
        .count("passes", cut.passes.into())
        .count("ends", cut.cut_ends.into())
        .count("drilled", cut.cored_corners.into());
    reader.say(&words).into_owned()
}

/// The slots of lead-ins that differ, each with its width and depth: `5/16 in × 1-1/2 in deep`.
fn lead_in_slots(materials: &MaterialEstimateReport, reader: Reader) -> Vec<String> {
    let section = |is_shared: bool, width, depth| {
        let slot = Statement::new("sheet-lead-in-slot").code("shared", if is_shared { "yes" } else { "no" });
        let slot = slot.text("width", format_detail(width, reader)).text("depth", format_detail(depth, reader));
        reader.say(&slot).into_owned()
    };
    let own = materials.loops.iter().filter_map(|each| each.lead_in_slot_width.zip(each.lead_in_slot_depth));
    let own = own.map(|(width, depth)| section(false, width, depth));
    let shared = materials.shared_slots.iter().map(|slot| section(true, slot.width, slot.depth));
    let mut slots: Vec<String> = Vec::new();
    for slot in own.chain(shared) {
        if !slots.contains(&slot) {
            slots.push(slot);
        }
    }
    slots
}

/// How long the crew takes, step by step.
pub fn hours(report: &InstallationPlanReport, reader: Reader) -> Markup {
    let Some(labour) = report.materials.as_ref().map(|materials| &materials.labour) else { return html! {} };
    let heading = Statement::new("sheet-hours").text("hours", format_duration(labour.total.0, reader));
    let step = |step, time| format!("{} {}", reader.label(step).to_lowercase(), format_duration(time, reader));
    let steps = labour.steps.iter().map(|timed| step(timed.step, timed.time.0));
    html! {
        section {
            h2 { (reader.say(&heading)) }
            p { (steps.collect::<Vec<_>>().join(", ")) "." }
        }
    }
}

/// The wire to pull, in one length or in several.
fn say_pull(sized: &SizedLoop, report: &InstallationPlanReport, reader: Reader) -> Option<Statement> {
    let (materials, made) = (report.materials.as_ref()?, materials(sized, report)?);
    let how = match (&sized.lead_in.home_run, made.splices) {
        (Some(_), _) => "to_the_box",
        (None, 0) => "in_one_length",
        (None, _) => "spliced",
    };
    let allowance = materials.inputs.wire_allowance_percent;
    Some(
        Statement::new("sheet-pull")
            .text("length", format_plan(made.wire_length?, reader))
            .text("gauge", report.sizing.inputs.wire.gauge.clone())
            .code("how", how)
            .code("each", if sized.count > 1 { "yes" } else { "no" })
            .code("more", if allowance > 0.0 { "yes" } else { "no" })
            .text("allowance", format_percent(allowance, reader)),
    )
}

/// How a loop is wound, and how its pair is brought home.
fn say_winding(sized: &SizedLoop, report: &InstallationPlanReport, reader: Reader) -> Statement {
    let senses = sized.side_by_side.iter().flat_map(|row| &row.wound);
    let senses: Vec<_> = senses.map(|sense| reader.say(&Statement::new("sheet-sense").code("sense", sense))).collect();
    let is_wound = sized.turns > 1 && sized.construction == Construction::HandWound;
    let sense = match (&sized.side_by_side, is_wound) {
        (Some(_), _) => "row",
        (None, true) => "same",
        (None, false) => "any",
    };
    let mut parts = vec![
        Statement::new("sheet-winding")
            .count("turns", sized.turns.into())
            .member("construction", sized.construction)
            .code("sense", sense)
            .text("senses", senses.join(", ")),
    ];
    parts.extend(say_pull(sized, report, reader));
    let stock = sized.stock_choice.as_ref().and_then(|choice| choice.sku.clone());
    parts.extend(stock.map(|sku| Statement::new("sheet-from-stock").text("sku", sku)));
    if sized.lead_in.length.m() > 0.0 {
        let label = Statement::new("sheet-label-pair").text("mark", sized.mark.to_string());
        parts.push(label.text("way", sized.lead_in.way.words().to_owned()));
    }
    Statement::new("sheet-parts").phrases("parts", parts, ListJoin::Semicolon)
}

/// How each loop is wound, and how its lead-in is brought home.
pub fn wind(report: &InstallationPlanReport, reader: Reader) -> Markup {
    let sizing = &report.sizing;
    let orders = plan::say_lead_in_orders(sizing, |length| format_plan(length, reader));
    html! {
        section {
            h2 { (reader.say(&Statement::new("sheet-wind"))) }
            ul {
                @for sized in &sizing.loops {
                    li {
                        b { (sized.mark) " " (format_name(sized, reader)) (reader.colon()) }
                        (reader.say(&say_winding(sized, report, reader)))
                    }
                }
            }
            p {
                (reader.say(&Statement::new("sheet-lead-in").phrase("orders", orders))) " " (sizing.lead_in.message)
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
fn format_name(sized: &SizedLoop, reader: Reader) -> String {
    let name = Statement::new("sheet-loop").member("role", sized.role).count("count", sized.count as u64);
    reader.say(&name).into_owned()
}

fn materials<'a>(sized: &SizedLoop, report: &'a InstallationPlanReport) -> Option<&'a LoopMaterials> {
    report.materials.as_ref()?.loops.iter().find(|each| each.mark == Some(sized.mark))
}

/// The width of a slot by its depth.
fn format_slot(sized: &SizedLoop, report: &InstallationPlanReport, reader: Reader) -> String {
    let detail = |length| format_detail(length, reader);
    let materials = materials(sized, report);
    let slot = match sized.slot_depth {
        None => match materials.and_then(|each| each.burial.as_ref()) {
            None => Statement::new("sheet-not-sawn"),
            Some(burial) => Statement::new("sheet-under-surface").text("cover", detail(burial.cover)),
        },
        Some(depth) => {
            let width = materials.and_then(|each| each.slot_width);
            let width = width.or(report.sizing.inputs.slot.as_ref().map(|slot| slot.width.into()));
            Statement::new("sheet-slot")
                .code("width_is", if width.is_some() { "known" } else { "open" })
                .text("width", width.map_or_else(String::new, detail))
                .text("depth", detail(depth))
        }
    };
    reader.say(&slot).into_owned()
}

fn format_corner(sized: &SizedLoop, report: &InstallationPlanReport, reader: Reader) -> String {
    let is_cored = report.materials.as_ref().is_some_and(|materials| materials.saw_cut.cored_corners > 0);
    let corner = match sized.corner_cut.mm() > 0.0 {
        true if is_cored => "drilled",
        true => return format_detail(sized.corner_cut, reader),
        false => "square",
    };
    reader.say(&Statement::new("sheet-corner").code("corner", corner)).into_owned()
}
