//! The paper that goes in the van: a whole job as one page of HTML, on two sheets of A4 or Letter.
//!
//! It holds no script and no reference to anything outside, reads on a telephone as well, and says only what the report of the plan
//! holds: no figure is computed here. What stops the job stands first. `head` says what the job is and what stops it, `build` what
//! to cut and to wind, `load` what to take along, `measure` what to measure, `settings` how to set the unit and what to try, `seal` when to
//! seal and to open, `work` the steps and the cautions, `assumed` what is to be checked on site; `format` formats times, quantities and
//! messages. The words stand in `wording/<language>/sheet.ftl`. All text goes through `maud`, which escapes it.

mod assumed;
mod build;
mod format;
mod head;
mod load;
mod measure;
mod seal;
mod settings;
mod work;

use maud::{DOCTYPE, PreEscaped, html};

use super::canvas;
use crate::calculation::installation_plan::InstallationPlanReport;
use crate::calculation::report::Statement;
use crate::wording::Reader;

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

/// The page of a report whose words are of the reader's language.
pub fn page(report: &InstallationPlanReport, reader: Reader) -> String {
    let opening = head::say_opening(report, reader);
    let title = reader.say(&Statement::new("sheet-page-title").phrase("opening", opening.clone()));
    let page = html! {
        (DOCTYPE)
        html lang=(reader.language.tag()) {
            head {
                // As text, because the macro does not close elements without content.
                (PreEscaped(r#"<meta charset="utf-8"/><meta name="viewport" content="width=device-width, initial-scale=1"/>"#))
                title { (title) }
                style { (PreEscaped(STYLE_SHEET)) }
            }
            body {
                (head::masthead(&opening, reader))
                (head::stops(report, reader))
                (head::warnings(report, reader))
                main {
                    (build::cut(report, reader))
                    (load::section(report, reader))
                    (build::hours(report, reader))
                    (build::wind(report, reader))
                    (measure::readings(report, reader))
                    (settings::section(report, reader))
                    (seal::section(report, reader))
                    (work::steps(report, reader))
                    (settings::trials(report, reader))
                    (work::cautions(report, reader))
                    (assumed::section(report, reader))
                    (work::notes(report, reader))
                }
                (work::footer(report, reader))
            }
        }
    };
    canvas::sanitize(&page.into_string())
}

/// The style sheet: one column on a screen, light or dark; two narrow columns on paper, always light. The printer sets the size of
/// the paper.
const STYLE_SHEET: &str = concat!(
    ":root{--paper:#fff;--ink:#16191d;--faint:#79828c;--stop:#a3140c}",
    "@media screen and (prefers-color-scheme:dark){:root{--paper:#14171b;--ink:#eceff2;--faint:#8b949e;--stop:#ff9d93}}",
    "*{box-sizing:border-box}",
    "body{margin:0 auto;padding:1rem;max-width:46rem;font:1rem/1.4 'Liberation Sans',Arial,Helvetica,sans-serif;color:var(--ink);background:var(--paper)}",
    "h1,h2,p,ul,ol,figure,table{margin:0 0 .5em}h1{font-size:1.5em}h2{font-size:1.1em;margin-top:1em}",
    "ul{padding-left:1.3em}ol{padding-left:2em}table{border-collapse:collapse;width:100%}",
    "th,td{text-align:left;vertical-align:top;padding:.15em .4em;border:1px solid var(--faint)}",
    "tbody th{font-weight:600}.load td{border-width:0 0 1px}.load td:last-child{width:100%}.load td:first-child{padding-right:0}.load .amount{white-space:nowrap;font-weight:600}",
    "th.blank,td.blank{min-width:4.5em}td.blank{height:2em}.strong td,.strong th{font-weight:700}",
    ".wide{overflow-x:auto}figure svg{display:block;width:100%;max-width:34rem;height:auto}figure.section svg{max-width:24rem}",
    ".stop{border:2px solid var(--stop);padding:.5em .8em;margin:0 0 .6em}.stop h2{margin-top:0;color:var(--stop)}",
    ".blanks{display:flex;flex-wrap:wrap;gap:.6em 1.2em}.blanks>span{display:flex;flex:1 1 8em;gap:.4em}",
    ".line{flex:1;border-bottom:1px solid var(--ink);min-height:1.6em}.blanks .job{flex-grow:3}",
    ".box{display:inline-block;width:.8em;height:.8em;border:1px solid var(--ink);margin-right:.4em}",
    ".tied{white-space:nowrap}tbody{break-inside:avoid}",
    "ul.ticks{list-style:none;padding-left:0}.few li{display:inline-block;margin-right:1em}.mark{white-space:nowrap;font-style:italic}",
    "footer{border-top:1px solid var(--faint);padding-top:.4em;font-size:.9em}",
    "@media screen and (max-width:30rem){.wide table{font-size:.85em}.wide th,.wide td{padding:.15em .25em}}",
    "@page{margin:8mm 10mm}",
    "@media print{body{max-width:none;padding:0;font-size:7pt;line-height:1.1}main{columns:2;column-gap:6mm;margin-top:1.5mm}",
    "h1{font-size:13pt;display:inline;margin-right:.6em}header>p:not(.blanks){display:inline}header .blanks{margin-top:1.2mm}",
    "h2{font-size:9pt;margin:1.3mm 0 .4mm;break-after:avoid}h1,p,ul,ol,figure,table{margin-bottom:.5mm}",
    "main>section:first-child>h2{margin-top:0}th,td{padding:.1mm .8mm}",
    "li,tr,figure,thead,p{break-inside:avoid}td.blank{height:4.8mm}.readings td{vertical-align:middle}",
    "th.blank,td.blank{min-width:11mm}.wide{overflow:visible}figure svg{width:auto;max-width:100%;max-height:96mm;margin:0 auto}figure.section svg{max-height:27mm}",
    ".load tbody{break-inside:auto}.few li{margin-right:3mm}.stop{padding:1mm 2mm;break-inside:avoid}.line{min-height:4mm}",
    // Spanish and French take a fifth more space than English.
    "html:not(:lang(en)) body{font-size:6.4pt}html:not(:lang(en)) figure svg{max-height:82mm}",
    "html:not(:lang(en)) figure.section svg{max-height:25mm}html:not(:lang(en)) td.blank{height:4.4mm}}",
);
