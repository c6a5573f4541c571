//! The paper that goes in the van: a whole job as one page of HTML, on two sheets of A4 or Letter.
//!
//! It holds no script and nothing from elsewhere, is read on a telephone as well, and says only what the report of the plan holds:
//! no figure is computed here. What stops the job stands first. `head` says what it is and what stops it, `build` what to cut, to
//! load and to wind, `measure` what to measure, to set and to try, `seal` when to seal and to open, `work` the steps, the cautions
//! and what was assumed; `say` has the words and `style` the style sheet. All text goes through `maud`, which escapes it.

mod build;
mod head;
mod measure;
mod say;
mod seal;
mod style;
mod work;

use maud::{DOCTYPE, PreEscaped, html};

use super::sheet;
use crate::calculation::installation_plan::InstallationPlanReport;
use crate::quantity::UnitSystem;

/// The media type of the page.
pub const MEDIA_TYPE: &str = "text/html";

/// The path of the page: that of its request's calculation, and this.
pub const PATH: &str = "/v1/installation-plan/job-sheet";
/// The name of the operation in generated clients.
pub const OPERATION_ID: &str = "print_job_sheet";
/// The page in a phrase.
pub const SUMMARY: &str = "The whole job on paper";
/// What the page shows, and what to know about it.
pub const DESCRIPTION: &str = "The report of `installation-plan` as a page for the van: what stops the job first, then what to cut, to \
    load and to wind, what to measure, with blank cells for the readings, when to seal and to open, the steps, the trials, the \
    cautions in full, and what was assumed and is to be checked on site. Lengths stand in the system that `opening.width` is written \
    in. The page is always HTML, whatever `Accept` asks for: one document without script or outside references, its drawings inside. \
    A usual job prints on two sheets of A4 or Letter; on a screen it is light or dark as the reader's device asks, and reads on a \
    telephone. It has all of its drawings whether `include` asks for them or not.";

/// The page of a report, in the caller's system.
pub fn page(report: &InstallationPlanReport, system: UnitSystem) -> String {
    let title = head::title(report, system);
    let page = html! {
        (DOCTYPE)
        html lang="en" {
            head {
                // Written out, for the macro leaves elements without content open.
                (PreEscaped(r#"<meta charset="utf-8"/><meta name="viewport" content="width=device-width, initial-scale=1"/>"#))
                title { "Job sheet: " (title) }
                style { (PreEscaped(style::SHEET)) }
            }
            body {
                (head::masthead(&title))
                (head::stops(report))
                (head::warnings(report))
                main {
                    (build::cut(report, system))
                    (build::load(report))
                    (build::wind(report, system))
                    (measure::readings(report))
                    (measure::settings(report))
                    (seal::section(report))
                    (work::steps(report))
                    (measure::trials(report))
                    (work::cautions(report))
                    (work::assumed(report, system))
                    (work::notes(report))
                }
                (work::foot(report))
            }
        }
    };
    sheet::plain(&page.into_string())
}
