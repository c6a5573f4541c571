//! The sections of the slots of a job: how wide, how deep, what lies in them and what covers it.
//!
//! `cross_section` finds the sections that differ, `view` draws one, `ground` what it is cut through, `labels` the words beside it.

mod cross_section;
mod ground;
mod labels;
mod view;

use super::canvas::{Canvas, GAP, INNER, MARGIN};
use super::codes::format_code_capitalized;
use super::dimension_text::format_fine_both;
use super::report_text::{
    BUILD_STOP_HEADING, describe_findings, draw_footer, draw_heading, draw_notes, draw_stops, draw_warnings,
};
use super::traits::Drawing;
use crate::calculation::material_estimate::{LoopMaterials, MaterialEstimateReport, MaterialEstimateRequest};
use crate::calculation::report::{Finding, Subject};
use crate::quantity::{QuantityField, UnitSystem};
use crate::vocabulary::Vocabulary;
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
        drawing is one `svg` element without script or outside references, legible 320 pixels wide, light or dark as the reader's device asks, and light in print.";

    fn system(request: &MaterialEstimateRequest) -> UnitSystem {
        // A request whose leg cannot be parsed is never drawn.
        let first = request.loops.first().and_then(|first| first.r#loop.along_travel.read().ok());
        first.map_or(UnitSystem::Metric, |leg| leg.system)
    }

    fn draw(report: &MaterialEstimateReport, system: UnitSystem) -> String {
        draw(report, system)
    }
}

/// A loop as the sections name it: by its mark in a plan, else as its caller does.
fn name(subject: &Subject, report: &MaterialEstimateReport) -> String {
    let is_meant = |one: &&LoopMaterials| one.role.is_some_and(|role| *subject == Subject::Role(role));
    let mark = report.loops.iter().find(is_meant).and_then(|one| one.mark);
    mark.map_or_else(|| subject.to_string(), |mark| mark.to_string())
}

/// Draws the sections of a report.
pub fn draw(report: &MaterialEstimateReport, system: UnitSystem) -> String {
    let sections = SharedSection::all(report);
    let sawn = sections.iter().filter(|shared| shared.section.slot.is_some()).count();
    let title = match (sawn, sections.len()) {
        (0, _) => "Section: buried loops, nothing is sawn".to_owned(),
        (1, 1) => "Section of the slot".to_owned(),
        (_, count) => format!("Sections of the slots: {count}"),
    };
    let name_subject = |finding: &Finding| {
        finding.subject.as_ref().filter(|_| report.loops.len() > 1).map(|subject| name(subject, report))
    };

    let mut canvas = Canvas::default();
    let top = draw_heading(&mut canvas, &title);
    let mut bottom = draw_stops(&mut canvas, top, BUILD_STOP_HEADING, &report.findings, name_subject);
    let mut description = String::new();
    for (index, shared) in sections.iter().enumerate() {
        let heading = format!("{}. {}", index + 1, format_heading(shared));
        let verdict = format_verdict(shared, system);
        bottom = canvas.paragraph("strong", (MARGIN, bottom), INNER, &heading);
        bottom = view::draw(&mut canvas, &shared.section, &report.inputs, system, bottom + 2.0);
        bottom = canvas.paragraph("", (MARGIN, bottom), INNER, &verdict) + GAP;
        description += &format!("{heading}: {verdict} ");
    }
    let notes = format_notes(report, &sections);
    let bottom = draw_notes(&mut canvas, bottom, &notes) + GAP;
    let bottom = draw_warnings(&mut canvas, bottom, &report.findings, name_subject);
    let height = draw_footer(&mut canvas, bottom, report.basis.engine);

    let findings = describe_findings(BUILD_STOP_HEADING, &report.findings, name_subject);
    canvas.finish(SlotSection::NAME, &title, &(description + &notes.join(" ") + &findings), height)
}

/// The section of the first loop for a page that says the rest itself; `None` without one.
pub fn picture(report: &MaterialEstimateReport, system: UnitSystem) -> Option<String> {
    let sections = SharedSection::all(report);
    let first = sections.first()?;
    let heading = format_heading(first);
    let mut canvas = Canvas::default();
    let top = canvas.paragraph("strong", (MARGIN, GAP), INNER, &heading);
    let bottom = view::draw(&mut canvas, &first.section, &report.inputs, system, top + 2.0);
    Some(canvas.finish(SlotSection::NAME, &heading, &format_verdict(first, system), bottom + GAP))
}

fn format_heading(shared: &SharedSection) -> String {
    let what = match shared.section.place {
        SectionPlace::Loop => "Slot of the loop",
        SectionPlace::LeadIn => "Slot of the lead-in",
        SectionPlace::SharedLeadIn => "Slot that pairs share",
        SectionPlace::Buried => "Buried",
    };
    format!("{what}: {}", shared.labels.join(", "))
}

/// How the loop is made, how it fits the slot, and what to do about it.
fn format_verdict(shared: &SharedSection, system: UnitSystem) -> String {
    let made = shared.section.construction.label();
    let Some(slot) = &shared.section.slot else {
        let laid = shared.section.burial.as_ref().map_or("", |burial| burial.message.words());
        return format!("{made}, its lead-in in conduit. {laid}");
    };
    let free = if slot.clearance.mm() > 0.0 {
        format!("{} of the width is free, half at each side", format_fine_both(slot.clearance, system))
    } else {
        "nothing of the width is free".to_owned()
    };
    format!(
        "{made}, {} wide and {} deep. {}: {free}. {}",
        format_fine_both(slot.width, system),
        format_fine_both(slot.depth, system),
        format_code_capitalized(slot.verdict),
        slot.advice
    )
}

/// What holds for all sections.
fn format_notes(report: &MaterialEstimateReport, sections: &[SharedSection]) -> Vec<String> {
    let is_sawn = sections.iter().any(|shared| shared.section.slot.is_some());
    let mut notes = Vec::new();
    if is_sawn {
        let sealant = report.inputs.sealant_kind.label();
        notes.push(format!(
            "Sealant: {}. Each section has a scale of its own; steel is drawn at its depth, its bars are not to scale.",
            sealant.to_lowercase()
        ));
        let has_pieces = |shared: &SharedSection| {
            shared.section.slot.as_ref().and_then(|slot| slot.rod.as_ref()).is_some_and(|rod| rod.in_pieces)
        };
        if sections.iter().any(has_pieces) {
            let form = report.inputs.backer_rod.label().to_lowercase();
            notes.push(format!("Backer rod in {form}: between them sealant fills the slot round the wire."));
        }
    }
    notes
}
