//! What to measure, with cells for the readings; how to set the unit; what to try.

use maud::{Markup, html};

use super::format::tick_box;
use crate::calculation::detector_compatibility::OutputSettings;
use crate::calculation::installation_plan::{ExpectedReading, InstallationPlanReport};
use crate::calculation::layout::LoopMark;
use crate::drawing::codes::{format_code, format_code_capitalized};
use crate::quantity::format::format_duration;
use crate::vocabulary::Vocabulary;

/// A table for each set of stages: a row for each loop and reading, a blank cell for each stage.
pub fn readings(report: &InstallationPlanReport) -> Markup {
    let Some(commissioning) = &report.commissioning else { return html! {} };
    let mut stages: Vec<&[&'static str]> = Vec::new();
    for reading in &commissioning.readings {
        if !stages.contains(&reading.stages.as_slice()) {
            stages.push(&reading.stages);
        }
    }
    html! {
        section {
            h2 { "Measure at the end of the lead-in" }
            @for stages in stages {
                div.wide { table.readings {
                    thead { tr {
                        th { "Reading" } th { "Sound" } th { "Limit" }
                        @for stage in stages { th.blank { (format_code(stage)) } }
                    } }
                    @for (name, readings) in of_loops(report, stages) {
                        tbody {
                            tr { th colspan=(3 + stages.len()) { (name) } }
                            @for reading in readings {
                                tr {
                                    td.tied { (format_name(reading)) }
                                    td.tied { (format_sound_range(reading)) }
                                    td.tied { (format_limit(reading)) }
                                    @for _ in stages { td.blank { } }
                                }
                            }
                        }
                    }
                } }
            }
            @for (name, message) in reading_notes(&commissioning.readings) {
                p { b { (name) ": " } (message) }
            }
        }
    }
}

/// The readings that are taken at these stages, loop by loop; each loop of a row has its own.
fn of_loops<'a>(
    report: &'a InstallationPlanReport,
    stages: &[&'static str],
) -> Vec<(String, Vec<&'a ExpectedReading>)> {
    let readings = report.commissioning.iter().flat_map(|commissioning| &commissioning.readings);
    let readings: Vec<_> = readings.filter(|reading| reading.stages == stages).collect();
    let mut loops = Vec::new();
    for laid in &report.layout.loops {
        let of_loop: Vec<_> = readings.iter().copied().filter(|reading| reading.mark == laid.mark).collect();
        if !of_loop.is_empty() {
            let name = |mark| format!("{mark} {}", laid.role.label());
            loops.extend(laid.marks().into_iter().map(|mark| (name(mark), of_loop.clone())));
        }
    }
    loops
}

fn format_name(reading: &ExpectedReading) -> String {
    match (reading.reading, reading.unit) {
        ("quality_factor", _) => "Quality factor".to_owned(),
        (reading, "uH") => format!("{}, µH", format_code_capitalized(reading)),
        (reading, unit) => format!("{}, {unit}", format_code_capitalized(reading)),
    }
}

fn format_sound_range(reading: &ExpectedReading) -> String {
    match (reading.low, reading.high) {
        (Some(low), Some(high)) => format!("{low}–{high}"),
        (None, Some(high)) => format!("≤ {high}"),
        (Some(low), None) => format!("≥ {low}"),
        (None, None) => String::new(),
    }
}

fn format_limit(reading: &ExpectedReading) -> String {
    match (reading.at_least, reading.at_most) {
        (Some(least), Some(most)) => format!("{least}–{most}"),
        (None, Some(most)) => format!("≤ {most}"),
        (Some(least), None) => format!("≥ {least}"),
        (None, None) => String::new(),
    }
}

/// How to take each reading, once.
fn reading_notes(readings: &[ExpectedReading]) -> Vec<(String, &str)> {
    let mut notes: Vec<(String, &str)> = Vec::new();
    for reading in readings {
        let words = reading.message.words();
        if !notes.iter().any(|(_, known)| *known == words) {
            notes.push((format_code_capitalized(reading.reading), words));
        }
    }
    notes
}

/// How to set each channel of the unit.
pub fn settings(report: &InstallationPlanReport) -> Markup {
    let Some(detector) = &report.detector else { return html! {} };
    html! {
        section {
            h2 { "Set the unit" }
            div.wide { table {
                thead { tr { th { "Channel" } th { "Switch at" } th { "Output, to" } th { "When the loop fails" }
                    th.blank { "Unit, serial" } th.blank { "As left" } } }
                tbody {
                    @for channel in &detector.settings {
                        tr {
                            th { (format_loops(report, &channel.marks)) }
                            td.tied { (channel.threshold_percent) " %" }
                            td { (format_output(&channel.to_set)) ", " (format_code(channel.operator_input)) }
                            td { (format_code(channel.to_set.on_loop_failure.code())) ": " (channel.failure_consequence) }
                            td.blank { } td.blank { }
                        }
                    }
                }
            } }
            @for pair in &detector.neighbours {
                @if let Some(easiest) = pair.actions.first() {
                    p { b { (format_loops(report, &pair.marks)) ": " } (easiest.message) }
                }
            }
            @if let Some(channel) = detector.settings.first() { p { b { "Frequency: " } (channel.frequency_setting) } }
        }
    }
}

/// Loops of the plan by their marks and roles.
fn format_loops(report: &InstallationPlanReport, marks: &[LoopMark]) -> String {
    let name = |mark: &LoopMark| {
        let laid = report.layout.loops.iter().find(|laid| laid.marks().contains(mark));
        laid.map_or_else(|| mark.to_string(), |laid| format!("{mark} {}", laid.role.label()))
    };
    marks.iter().map(name).collect::<Vec<_>>().join(" + ")
}

fn format_output(settings: &OutputSettings) -> String {
    match settings.presence_time {
        Some(time) => format!(
            "{}, lets go after {}",
            settings.output.code(),
            format_duration(uom::si::f64::Time::new::<uom::si::time::second>(time.s()))
        ),
        None => settings.output.code().to_owned(),
    }
}

/// What to try before leaving, with boxes to tick.
pub fn trials(report: &InstallationPlanReport) -> Markup {
    let Some(commissioning) = &report.commissioning else { return html! {} };
    let vehicles: Vec<_> = report.sizing.inputs.vehicles.iter().map(|class| class.label().to_lowercase()).collect();
    html! {
        section {
            h2 { "Try" }
            p { "Vehicles that must be seen: " (vehicles.join(", ")) "." }
            ul.ticks {
                @for trial in &commissioning.trials {
                    li { (tick_box()) b { (trial.label) ". " } (trial.trial.description()) }
                }
            }
        }
    }
}
