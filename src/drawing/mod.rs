//! Reports as drawings: SVG that a page, a van's dashboard or a printer shows.
//!
//! A drawing implements the trait [`Drawing`]. It takes the report of a calculation and its reader, with units and language, and returns
//! text; its sentences stand in `wording/<language>/`: `drawings.ftl`, `sheet.ftl`, `bill.ftl`. It computes nothing that the report does not hold. To add one: a file or folder beside the others, and one line in
//! [`visit_all`].
//!
//! - [`traits`]: what a drawing is.
//! - [`canvas`]: lines, text, hatching; the only file that writes SVG, and so the only one that escapes it.
//! - [`options`]: colours, content and ids as a page asks for them.
//! - [`style`]: what each class of elements looks like: light, dark, light again in print, and in the reader's own colours.
//! - [`text_metrics`]: how wide text is at most, and where it wraps.
//! - [`label_layout`]: which figures an axis shows, and labels that do not overlap.
//! - [`dimension_text`]: dimensions in the reader's system, with the other in brackets.
//! - [`time_text`]: times and dates.
//! - [`value_text`]: values as a request holds them, in words.
//! - [`report_text`]: the text of every drawing: heading, stops, warnings, notes and footer.
//! - [`plan`], [`response_profile`], [`slot_section`], [`cure_timeline`], [`turn_candidates`]: the drawings.
//! - [`job_sheet`]: the whole job as a page to print, with drawings in it.
//! - [`bill_csv`]: the bill of a plan for a spreadsheet.

pub mod bill_csv;
pub mod canvas;
pub mod cure_timeline;
pub mod dimension_text;
pub mod job_sheet;
pub mod label_layout;
pub mod options;
pub mod plan;
pub mod report_text;
pub mod response_profile;
pub mod slot_section;
pub mod style;
pub mod text_metrics;
pub mod time_text;
pub mod traits;
pub mod turn_candidates;
pub mod value_text;

pub use options::DrawingOptions;
pub use traits::{Drawing, DrawingVisitor, MEDIA_TYPE};

use crate::calculation::cure_guidance::CureGuidanceReport;
use crate::calculation::installation_plan::Illustrator;
use crate::calculation::loop_sizing::LoopSizingReport;
use crate::calculation::material_estimate::MaterialEstimateReport;
use crate::calculation::vehicle_response::VehicleResponseReport;
use crate::quantity::UnitSystem;
use crate::wording::{Language, Reader, Worded};

/// The list of all drawings.
pub fn visit_all(visitor: &mut impl DrawingVisitor) {
    visitor.visit::<plan::OpeningPlan>();
    visitor.visit::<response_profile::ResponseProfile>();
    visitor.visit::<slot_section::SlotSection>();
    visitor.visit::<cure_timeline::CureTimeline>();
    visitor.visit::<turn_candidates::TurnCandidateChart>();
}

/// The drawings of an installation plan, for the calculation that asks for them without knowing this module.
#[derive(Clone, Copy)]
pub struct SvgIllustrator {
    /// The language of the report, which the drawings speak too.
    pub language: Language,
}

impl SvgIllustrator {
    fn reader(self, system: UnitSystem) -> Reader {
        Reader::new(system, self.language)
    }
}

impl Illustrator for SvgIllustrator {
    fn plan(&self, report: &LoopSizingReport, system: UnitSystem) -> String {
        plan::OpeningPlan::draw(report, self.reader(system), &DrawingOptions::default())
    }

    fn slot_section(&self, report: &MaterialEstimateReport, system: UnitSystem) -> String {
        slot_section::SlotSection::draw(report, self.reader(system), &DrawingOptions::default())
    }

    fn response_profile(&self, report: &VehicleResponseReport, system: UnitSystem) -> String {
        // The response of a plan is computed for its drawing alone.
        let report = report.clone().worded(self.language);
        response_profile::ResponseProfile::draw(&report, self.reader(system), &DrawingOptions::default())
    }

    fn cure_timeline(&self, report: &CureGuidanceReport, system: UnitSystem) -> String {
        cure_timeline::CureTimeline::draw(report, self.reader(system), &DrawingOptions::default())
    }
}
