//! Whether to seal, and when to open to traffic.

use maud::{Markup, html};

use super::build;
use super::format::format_time;
use crate::calculation::cure_guidance::{CureGuidanceReport, CureWindow};
use crate::calculation::installation_plan::InstallationPlanReport;
use crate::calculation::report::Statement;
use crate::practice::finding_codes::Level;
use crate::practice::sealing::CureMilestone;
use crate::wording::Reader;

/// The most windows of application that the page lists; the report holds all.
const MAX_WINDOWS: usize = 4;

/// The section; without weather it has blank lines for what the crew finds.
pub fn section(report: &InstallationPlanReport, reader: Reader) -> Markup {
    match &report.cure {
        Some(cure) => computed(cure, reader),
        None if build::is_sawn(report) => html! {
            section {
                h2 { (reader.say(&Statement::new("sheet-seal"))) }
                p { (reader.say(&Statement::new("sheet-no-weather"))) }
                (blanks(reader))
            }
        },
        None => html! {},
    }
}

/// Lines for what the crew finds.
fn blanks(reader: Reader) -> Markup {
    let names = [
        Statement::new("sheet-slab"),
        Statement::new("sheet-air"),
        Statement::new("sheet-sealed-at"),
        Statement::new("sheet-opened-at"),
    ];
    html! { p.blanks { @for name in &names { span { (reader.say(name)) span.line { } } } } }
}

fn computed(cure: &CureGuidanceReport, reader: Reader) -> Markup {
    let until = format_time(&cure.inputs.weather_until);
    let is_assumed = cure.assumed.iter().any(|assumed| assumed.about == "#/surface_condition");
    let starts = cure.verdict.allows_start().then(|| format_time(&cure.inputs.start));
    let verdict = Statement::new("sheet-verdict")
        .member("verdict", cure.verdict)
        .code("starts", if starts.is_some() { "yes" } else { "no" })
        .text("start", starts.clone().unwrap_or_default());
    let job = Statement::new("sheet-sealant-and-slot")
        .member("sealant", cure.inputs.sealant.kind)
        .code("seen", if is_assumed { "no" } else { "yes" })
        .member("condition", cure.inputs.surface_condition);
    html! {
        section {
            h2 { (reader.say(&Statement::new("sheet-seal"))) }
            p { b { (reader.say(&verdict)) (reader.colon()) } (reader.say(&job)) }
            // What stops the job stands at its head.
            ul { @for reason in cure.reasons.iter().filter(|reason| reason.level != Level::Stop) { li { (reason.message) } } }
            @if starts.is_none() || !cure.windows.is_empty() {
                (begin(&Statement::new("sheet-begin"), &cure.windows, &until, reader))
            }
            @if !cure.windows_once_dry.is_empty() {
                (begin(&Statement::new("sheet-begin-once-dry"), &cure.windows_once_dry, &until, reader))
            }
            (milestones(cure, reader))
            p {
                (reader.say(&Statement::new("sheet-clock").text("clock", format_offset(&cure.inputs.start)).text("until", until)))
            }
            @for advice in &cure.handling { p { (advice.message) } }
            (blanks(reader))
        }
    }
}

/// When each milestone is reached.
fn milestones(cure: &CureGuidanceReport, reader: Reader) -> Markup {
    let Some((from, sealed)) = cure.milestones_from.as_ref().zip(cure.last_foot_sealed.as_ref()) else {
        return html! {};
    };
    let heading =
        Statement::new("sheet-column-begun").text("from", format_time(from)).text("sealed", format_time(sealed));
    let time = |time: Option<&String>| {
        let beyond = || reader.say(&Statement::new("sheet-beyond-forecast")).into_owned();
        time.map_or_else(beyond, |time| format_time(time))
    };
    html! {
        div.wide { table {
            thead { tr {
                th { (reader.say(&heading)) }
                th { (reader.say(&Statement::new("sheet-column-earliest"))) }
                th { (reader.say(&Statement::new("sheet-column-latest"))) }
            } }
            tbody {
                @for reached in &cure.milestones {
                    tr class=[(reached.milestone == CureMilestone::OpenToTraffic).then_some("strong")] {
                        th { (reader.label(reached.milestone)) }
                        td.tied { (time(reached.earliest.as_ref())) }
                        td.tied { (time(reached.latest.as_ref())) }
                    }
                }
            }
        } }
    }
}

/// The starts that would do.
fn begin(heading: &Statement, windows: &[CureWindow], until: &str, reader: Reader) -> Markup {
    let spans = windows.iter().take(MAX_WINDOWS).map(|window| {
        let span = Statement::new("sheet-window").text("from", format_time(&window.start));
        reader.say(&span.text("until", format_time(&window.end))).into_owned()
    });
    let starts = Statement::new("sheet-windows")
        .code(
            "which",
            match windows.len() {
                0 => "none",
                count if count > MAX_WINDOWS => "more",
                _ => "all",
            },
        )
        .text("windows", spans.collect::<Vec<_>>().join("; "))
        .text("until", until.to_owned());
    html! { p { b { (reader.say(heading)) (reader.colon()) } (reader.say(&starts)) } }
}

/// The offset of a clock: `UTC-05:00`.
fn format_offset(rfc3339: &str) -> String {
    let from = rfc3339.rfind(['+', '-', 'Z', 'z']).unwrap_or(rfc3339.len());
    match rfc3339.get(from..) {
        Some("Z" | "z") | None => "UTC".to_owned(),
        Some(offset) => format!("UTC{offset}"),
    }
}
