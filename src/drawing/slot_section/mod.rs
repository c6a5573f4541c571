//! The sections of the slots of a job: how wide, how deep, what lies in them and what covers it.
//!
//! `cross_section` finds the sections that differ, `view` draws one, `ground` what it is cut through, `labels` the words beside it.

mod cross_section;
mod ground;
mod labels;
mod view;

use super::canvas::{Canvas, GAP, INNER, MARGIN};
use super::dimension_text::format_fine_both;
use super::options::DrawingOptions;
use super::report_text::{
    build_stop_heading, describe_findings, draw_footer, draw_heading, draw_notes, draw_stops, draw_warnings,
};
use super::traits::Drawing;
use crate::calculation::material_estimate::{LoopMaterials, MaterialEstimateReport, MaterialEstimateRequest};
use crate::calculation::report::{Finding, Statement, Subject};
use crate::quantity::{QuantityField, UnitSystem};
use crate::wording::Reader;
use cross_section::{SectionPlace, SharedSection};

/// The sections of the slots of a job.
pub struct SlotSection;

impl Drawing for SlotSection {
    type Request = MaterialEstimateRequest;
    const NAME: &'static str = "slot-section";
    const OPERATION_ID: &'static str = "draw_slot_section";
    const SUMMARY: &'static str = "What lies in the slots of a job, cut through";
    const DESCRIPTION: &'static str = "The report of `material-estimate` as sections, each to its own scale: the slot of each loop \
        and of its lead-in, and each slot that pairs of several loops share, with wires, pair or jacket, backer rod (dashed where it lies in pieces), sealant and its finish below \
        the surface, cover and clearance, whether sealant can flow round it, and slab and steel where they were sent. Loops with \
        the same section share one. A buried loop is shown on its bed, under its cover. Dimensions stand in the system that `along_travel` of the first loop is written in, the other in brackets. The \
        drawing is one `svg` element without script or outside references, legible 280 pixels wide, light or dark as the reader's device asks, and light in print.";

    fn system(request: &MaterialEstimateRequest) -> UnitSystem {
        // A request whose leg cannot be parsed is never drawn.
        let first = request.loops.first().and_then(|first| first.r#loop.along_travel.read().ok());
        first.map_or(UnitSystem::Metric, |leg| leg.system)
    }

    fn draw(report: &MaterialEstimateReport, reader: Reader, options: &DrawingOptions) -> String {
        draw(report, reader, options)
    }
}

/// A loop as the sections name it: by its mark in a plan, else as its caller does.
fn name(subject: &Subject, report: &MaterialEstimateReport, reader: Reader) -> String {
    let is_meant = |one: &&LoopMaterials| one.role.is_some_and(|role| *subject == Subject::Role(role));
    let mark = report.loops.iter().find(is_meant).and_then(|one| one.mark);
    match (mark, subject) {
        (Some(mark), _) => mark.to_string(),
        (None, Subject::Role(role)) => reader.label(*role).to_owned(),
        (None, Subject::Label(label)) => label.clone(),
    }
}

/// Draws the sections of a report.
pub fn draw(report: &MaterialEstimateReport, reader: Reader, options: &DrawingOptions) -> String {
    let sections = SharedSection::all(report, reader);
    let sawn = sections.iter().filter(|shared| shared.section.slot.is_some()).count();
    let sections_are = match (sawn, sections.len()) {
        (0, _) => "buried",
        (1, 1) => "one",
        _ => "several",
    };
    let title = Statement::new("drawings-section-title").code("sections", sections_are);
    let title = reader.say(&title.count("count", sections.len() as u64)).into_owned();
    let stop_heading = build_stop_heading();
    let name_subject = |finding: &Finding| {
        finding.subject.as_ref().filter(|_| report.loops.len() > 1).map(|subject| name(subject, report, reader))
    };

    let mut canvas = Canvas::new(reader.language, options);
    let top = draw_heading(&mut canvas, &title);
    let mut bottom = draw_stops(&mut canvas, top, &stop_heading, &report.findings, name_subject, reader);
    let mut description = String::new();
    for (index, shared) in sections.iter().enumerate() {
        let heading = format!("{}. {}", index + 1, format_heading(shared, reader));
        let verdict = format_verdict(shared, reader);
        bottom = canvas.paragraph("strong", (MARGIN, bottom), INNER, &heading);
        bottom = view::draw(&mut canvas, &shared.section, &report.inputs, reader, bottom + 2.0);
        bottom = draw_notes(&mut canvas, bottom, std::slice::from_ref(&verdict)) + GAP;
        description += &format!("{heading}{}{verdict} ", reader.colon());
    }
    let notes = format_notes(report, &sections, reader);
    let bottom = draw_notes(&mut canvas, bottom, &notes) + GAP;
    let bottom = draw_warnings(&mut canvas, bottom, &report.findings, name_subject, reader);
    let height = draw_footer(&mut canvas, bottom, report.basis.engine, reader);

    let findings = describe_findings(&stop_heading, &report.findings, name_subject, reader);
    canvas.finish(SlotSection::NAME, &title, &(description + &notes.join(" ") + &findings), height)
}

/// The section of the first loop for a page that says the rest itself; `None` without one.
pub fn picture(report: &MaterialEstimateReport, reader: Reader) -> Option<String> {
    let sections = SharedSection::all(report, reader);
    let first = sections.first()?;
    let heading = format_heading(first, reader);
    let mut canvas = Canvas::new(reader.language, &DrawingOptions::default());
    let top = canvas.paragraph("strong", (MARGIN, GAP), INNER, &heading);
    let bottom = view::draw(&mut canvas, &first.section, &report.inputs, reader, top + 2.0);
    Some(canvas.finish(SlotSection::NAME, &heading, &format_verdict(first, reader), bottom + GAP))
}

fn format_heading(shared: &SharedSection, reader: Reader) -> String {
    let place = match shared.section.place {
        SectionPlace::Loop => "loop",
        SectionPlace::LeadIn => "lead_in",
        SectionPlace::SharedLeadIn => "shared",
        SectionPlace::Buried => "buried",
    };
    let heading = Statement::new("drawings-section-heading").code("place", place);
    reader.say(&heading.text("labels", shared.labels.join(", "))).into_owned()
}

/// How the loop is made, how it fits the slot, and what to do about it.
fn format_verdict(shared: &SharedSection, reader: Reader) -> String {
    let construction = shared.section.construction;
    let Some(slot) = &shared.section.slot else {
        let made = reader.say(&Statement::new("drawings-section-buried").member("construction", construction));
        let laid = shared.section.burial.as_ref().map_or("", |burial| burial.message.words());
        return format!("{made} {laid}");
    };
    let made = Statement::new("drawings-section-verdict")
        .member("construction", construction)
        .text("width", format_fine_both(slot.width, reader))
        .text("depth", format_fine_both(slot.depth, reader))
        .code("verdict", slot.verdict)
        .code("free", if slot.clearance.mm() > 0.0 { "some" } else { "nothing" })
        .text("clearance", format_fine_both(slot.clearance, reader));
    format!("{} {}", reader.say(&made), slot.advice)
}

/// What holds for all sections.
fn format_notes(report: &MaterialEstimateReport, sections: &[SharedSection], reader: Reader) -> Vec<String> {
    let is_sawn = sections.iter().any(|shared| shared.section.slot.is_some());
    let mut notes = Vec::new();
    if is_sawn {
        notes.push(Statement::new("drawings-section-sealant").member("sealant", report.inputs.sealant_kind));
        let has_pieces = |shared: &SharedSection| {
            shared.section.slot.as_ref().and_then(|slot| slot.rod.as_ref()).is_some_and(|rod| rod.in_pieces)
        };
        if sections.iter().any(has_pieces) {
            notes.push(Statement::new("drawings-section-rod-note").member("form", report.inputs.backer_rod));
        }
    }
    notes.iter().map(|note| reader.say(note).into_owned()).collect()
}
