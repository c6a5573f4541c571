//! The sections of the slots of a job: how wide, how deep, what lies in them and what covers it.
//!
//! `section` finds the sections that differ, `panel` draws one, `ground` what it is cut through, `labels` the words beside it.

mod ground;
mod labels;
mod panel;
mod section;

use super::sheet::{INNER, MARGIN, Sheet};
use super::units::fine;
use super::{Drawing, words};
use crate::calculation::material_estimate::{MaterialEstimateReport, MaterialEstimateRequest};
use crate::calculation::report::Finding;
use crate::practice::materials::RodForm;
use crate::practice::sealants::SealantKind;
use crate::practice::site::Construction;
use crate::quantity::{QuantityField, UnitSystem};
use section::{Place, Shared};

/// The sections of the slots of a job.
pub struct SlotSection;

impl Drawing for SlotSection {
    type Request = MaterialEstimateRequest;
    const NAME: &'static str = "slot-section";
    const OPERATION_ID: &'static str = "draw_slot_section";
    const SUMMARY: &'static str = "What lies in the slots of a job, cut through";
    const DESCRIPTION: &'static str = "The report of `material-estimate` as sections, each to its own scale: the slot of each loop \
        and of its lead-in with wires, pair or jacket, backer rod (dashed where it lies in pieces), sealant and its finish below \
        the surface, cover and clearance, whether sealant can flow round it, and slab and steel where they were sent. Loops with \
        the same section share one. A buried loop is shown without scale, for its depth is no part of \
        the estimate. Dimensions stand in the system that `along_travel` of the first loop is written in, the other in brackets. The \
        drawing is one `svg` element without script or outside references, legible 320 pixels wide, light or dark as the reader's device asks, and light in print.";

    fn system(request: &MaterialEstimateRequest) -> UnitSystem {
        // A leg that cannot be read has been refused before anything is drawn.
        let first = request.loops.first().and_then(|first| first.r#loop.along_travel.read().ok());
        first.map_or(UnitSystem::Metric, |leg| leg.system)
    }

    fn draw(report: &MaterialEstimateReport, system: UnitSystem) -> String {
        draw(report, system)
    }
}

/// Draws the sections of a report.
pub fn draw(report: &MaterialEstimateReport, system: UnitSystem) -> String {
    let sections = section::all(report);
    let sawn = sections.iter().filter(|shared| shared.section.slot.is_some()).count();
    let title = match (sawn, sections.len()) {
        (0, _) => "Section: buried loops, nothing is sawn".to_owned(),
        (1, 1) => "Section of the slot".to_owned(),
        (_, count) => format!("Sections of the slots: {count}"),
    };
    let mark = |finding: &Finding| finding.subject.clone().filter(|_| report.loops.len() > 1);

    let mut sheet = Sheet::default();
    let top = words::head(&mut sheet, &title);
    let mut bottom = words::stops(&mut sheet, top, words::BUILD, &report.findings, mark);
    let mut told = String::new();
    for (index, shared) in sections.iter().enumerate() {
        let heading = format!("{}. {}", index + 1, heading(shared));
        let verdict = verdict(shared, system);
        bottom = sheet.paragraph("strong", (MARGIN, bottom), INNER, &heading);
        bottom = panel::draw(&mut sheet, &shared.section, &report.inputs, system, bottom + 2.0);
        bottom = sheet.paragraph("", (MARGIN, bottom), INNER, &verdict) + words::GAP;
        told += &format!("{heading}: {verdict} ");
    }
    let notes = notes(report, &sections);
    let bottom = words::notes(&mut sheet, bottom, &notes) + words::GAP;
    let bottom = words::warnings(&mut sheet, bottom, &report.findings, mark);
    let height = words::foot(&mut sheet, bottom, report.basis.engine);

    let told = told + &notes.join(" ") + &words::told(words::BUILD, &report.findings, mark);
    sheet.finish(SlotSection::NAME, &title, &told, height)
}

fn heading(shared: &Shared) -> String {
    let what = match shared.section.place {
        Place::Loop => "Slot of the loop",
        Place::LeadIn => "Slot of the lead-in",
        Place::Buried => "Buried",
    };
    format!("{what}: {}", shared.labels.join(", "))
}

/// How it is made, how it fits, and what to do about it.
fn verdict(shared: &Shared, system: UnitSystem) -> String {
    let made = words::label::<Construction>(shared.section.construction);
    let Some(slot) = &shared.section.slot else {
        return format!(
            "{made}: no slot and no sealant, and its lead-in lies in conduit. How deep it lies is no part of this estimate: loop-sizing \
             takes the usual cover of each surface."
        );
    };
    let fit = slot.verdict.replace('_', " ");
    let free = if slot.clearance.mm > 0.0 {
        format!("{} of the width is free, half at each side", fine(slot.clearance, system))
    } else {
        "nothing of the width is free".to_owned()
    };
    format!(
        "{made}, {} wide and {} deep. {}: {free}. {}",
        fine(slot.width, system),
        fine(slot.depth, system),
        capital(&fit),
        slot.advice
    )
}

/// What holds for all of them.
fn notes(report: &MaterialEstimateReport, sections: &[Shared]) -> Vec<String> {
    let is_sawn = sections.iter().any(|shared| shared.section.slot.is_some());
    let mut notes = Vec::new();
    if is_sawn {
        let sealant = words::label::<SealantKind>(report.inputs.sealant_kind);
        notes.push(format!(
            "Sealant: {}. Each section has a scale of its own; steel is drawn at its depth, its bars are not to scale.",
            sealant.to_lowercase()
        ));
        let has_pieces = |shared: &Shared| {
            shared.section.slot.as_ref().and_then(|slot| slot.rod.as_ref()).is_some_and(|rod| rod.in_pieces)
        };
        if sections.iter().any(has_pieces) {
            let form = words::label::<RodForm>(report.inputs.backer_rod).to_lowercase();
            notes.push(format!("Backer rod in {form}: between them sealant fills the slot round the wire."));
        }
    }
    notes
}

fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}
