//! Answers to examples that are no JSON: drawings, the job sheet and the bill. The description does not hold them.

use crate::calculation::installation_plan::InstallationPlanRequest;
use crate::calculation::loop_sizing::LoopSizingRequest;
use crate::calculation::{Calculation, Example};
use crate::drawing::{self, Drawing, DrawingOptions, DrawingVisitor, SvgIllustrator, bill_csv, job_sheet, plan};
use crate::wording::{Language, Reader, Worded};

/// What an operation answers to its first example.
pub struct ExampleFile {
    /// The method of the operation, as the description writes it.
    pub method: &'static str,
    /// Its path.
    pub path: String,
    /// What its name ends with.
    pub extension: &'static str,
    /// Its media type.
    pub media_type: &'static str,
    /// What it holds.
    pub text: String,
}

/// The answers of all operations that answer no JSON, but for the link.
pub fn all() -> Vec<ExampleFile> {
    let mut drawings = Drawings(Vec::new());
    drawing::visit_all(&mut drawings);
    let mut files = drawings.0;
    let Some((asked, report)) = first::<InstallationPlanRequest>(InstallationPlanRequest::EXAMPLES) else {
        return files;
    };
    let reader = Reader::new(asked.system(), Language::English);
    let (sheet, bill) = (job_sheet::page(&report, reader), bill_csv::table(&report, reader));
    for (path, extension, media_type, text) in [
        (job_sheet::PATH, "html", "text/html; charset=utf-8", sheet),
        (bill_csv::PATH, "csv", "text/csv; charset=utf-8", bill),
    ] {
        files.push(ExampleFile { method: "post", path: path.to_owned(), extension, media_type, text });
    }
    files
}

/// What a link is answered that asks for the plan of this width and barrier.
pub fn of_link(width: &str, barrier: &str) -> Option<ExampleFile> {
    let opening = serde_json::json!({ "opening": { "width": width, "barrier": barrier } });
    let asked: LoopSizingRequest = serde_json::from_value(opening).ok()?;
    let report = asked.answer().ok()?.worded(Language::English);
    let text = plan::OpeningPlan::draw(
        &report,
        Reader::new(plan::OpeningPlan::system(&asked), Language::English),
        &DrawingOptions::default(),
    );
    Some(ExampleFile { method: "get", ..drawn(plan::PATH.to_owned(), text) })
}

struct Drawings(Vec<ExampleFile>);

impl DrawingVisitor for Drawings {
    fn visit<D: Drawing>(&mut self) {
        if let Some((asked, report)) = first::<D::Request>(D::Request::EXAMPLES) {
            let text = D::draw(&report, Reader::new(D::system(&asked), Language::English), &DrawingOptions::default());
            self.0.push(drawn(format!("/v1/drawings/{}", D::NAME), text));
        }
    }
}

fn drawn(path: String, text: String) -> ExampleFile {
    ExampleFile { method: "post", path, extension: "svg", media_type: drawing::MEDIA_TYPE, text }
}

/// The first example, with its report.
fn first<C: Calculation>(examples: &[Example]) -> Option<(C, C::Report)> {
    let asked: C = serde_json::from_str(examples.first()?.request).ok()?;
    let mut report = asked.answer().ok()?.worded(Language::English);
    asked.illustrate(&mut report, &SvgIllustrator { language: Language::English });
    Some((asked, report))
}
