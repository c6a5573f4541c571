//! What to measure, with cells for the readings.

use maud::{Markup, html};

use crate::calculation::installation_plan::{ExpectedReading, InstallationPlanReport};
use crate::calculation::report::Statement;
use crate::wording::{Reader, unit_sign};

/// A table for each set of stages: a row for each loop and reading, a blank cell for each stage.
pub fn readings(report: &InstallationPlanReport, reader: Reader) -> Markup {
    let Some(commissioning) = &report.commissioning else { return html! {} };
    let mut stages: Vec<&[&'static str]> = Vec::new();
    for reading in &commissioning.readings {
        if !stages.contains(&reading.stages.as_slice()) {
            stages.push(&reading.stages);
        }
    }
    let say_stage = |stage: &'static str| reader.say(&Statement::new("sheet-stage").code("stage", stage));
    html! {
        section {
            h2 { (reader.say(&Statement::new("sheet-measure"))) }
            @for stages in stages {
                div.wide { table.readings {
                    thead { tr {
                        th { (reader.say(&Statement::new("sheet-column-reading"))) }
                        th { (reader.say(&Statement::new("sheet-column-sound"))) }
                        th { (reader.say(&Statement::new("sheet-column-limit"))) }
                        @for stage in stages { th.blank { (say_stage(stage)) } }
                    } }
                    @for (name, readings) in of_loops(report, stages, reader) {
                        tbody {
                            tr { th colspan=(3 + stages.len()) { (name) } }
                            @for reading in readings {
                                tr {
                                    td.tied { (format_name_and_unit(reading, reader)) }
                                    td.tied { (format_range(reading.low, reading.high, reader)) }
                                    td.tied { (format_range(reading.at_least, reading.at_most, reader)) }
                                    @for _ in stages { td.blank { } }
                                }
                            }
                        }
                    }
                } }
            }
            @for (name, message) in reading_notes(&commissioning.readings, reader) {
                p { b { (name) (reader.colon()) } (message) }
            }
        }
    }
}

/// The readings that are taken at these stages, loop by loop; each loop of a row has its own.
fn of_loops<'a>(
    report: &'a InstallationPlanReport,
    stages: &[&'static str],
    reader: Reader,
) -> Vec<(String, Vec<&'a ExpectedReading>)> {
    let readings = report.commissioning.iter().flat_map(|commissioning| &commissioning.readings);
    let readings: Vec<_> = readings.filter(|reading| reading.stages == stages).collect();
    let mut loops = Vec::new();
    for laid in &report.layout.loops {
        let of_loop: Vec<_> = readings.iter().copied().filter(|reading| reading.mark == laid.mark).collect();
        if !of_loop.is_empty() {
            let name = |mark| format!("{mark} {}", reader.label(laid.role));
            loops.extend(laid.marks().into_iter().map(|mark| (name(mark), of_loop.clone())));
        }
    }
    loops
}

/// What is read: `Inductance`.
fn format_name(reading: &ExpectedReading, reader: Reader) -> String {
    reader.say(&Statement::new("sheet-reading").code("reading", reading.reading)).into_owned()
}

/// The same with its unit: `Inductance, µH`.
fn format_name_and_unit(reading: &ExpectedReading, reader: Reader) -> String {
    let name = format_name(reading, reader);
    match reading.unit {
        "ratio" => name,
        unit => format!("{name}, {}", unit_sign(unit, reader.language)),
    }
}

fn format_range(least: Option<f64>, most: Option<f64>, reader: Reader) -> String {
    match (least, most) {
        (Some(least), Some(most)) => format!("{}–{}", reader.number(least), reader.number(most)),
        (None, Some(most)) => format!("≤ {}", reader.number(most)),
        (Some(least), None) => format!("≥ {}", reader.number(least)),
        (None, None) => String::new(),
    }
}

/// How to take each reading, once.
fn reading_notes(readings: &[ExpectedReading], reader: Reader) -> Vec<(String, &str)> {
    let mut notes: Vec<(String, &str)> = Vec::new();
    for reading in readings {
        let words = reading.message.words();
        if !notes.iter().any(|(_, known)| *known == words) {
            notes.push((format_name(reading, reader), words));
        }
    }
    notes
}
