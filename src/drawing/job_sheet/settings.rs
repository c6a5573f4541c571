//! How to set the unit, and what to try.

use maud::{Markup, html};
use uom::si::f64::Time;
use uom::si::time::second;

use super::format::tick_box;
use crate::calculation::detector_compatibility::ChannelSettings;
use crate::calculation::installation_plan::InstallationPlanReport;
use crate::calculation::layout::LoopMark;
use crate::calculation::report::Statement;
use crate::drawing::dimension_text::{format_duration, format_percent};
use crate::wording::Reader;

/// How to set each channel of the unit.
pub fn section(report: &InstallationPlanReport, reader: Reader) -> Markup {
    let Some(detector) = &report.detector else { return html! {} };
    let columns = [
        Statement::new("sheet-column-channel"),
        Statement::new("sheet-column-threshold"),
        Statement::new("sheet-column-output"),
        Statement::new("sheet-column-failure"),
    ];
    let blank_columns = [Statement::new("sheet-column-unit"), Statement::new("sheet-column-as-left")];
    html! {
        section {
            h2 { (reader.say(&Statement::new("sheet-settings"))) }
            div.wide { table {
                thead { tr {
                    @for column in &columns { th { (reader.say(column)) } }
                    @for column in &blank_columns { th.blank { (reader.say(column)) } }
                } }
                tbody {
                    @for channel in &detector.settings {
                        tr {
                            th { (format_loops(report, &channel.marks, reader)) }
                            td.tied { (format_percent(channel.threshold_percent, reader)) }
                            td { (format_output(channel, reader)) }
                            td {
                                (reader.label(channel.to_set.on_loop_failure).to_lowercase()) (reader.colon())
                                (channel.failure_consequence)
                            }
                            @for _ in &blank_columns { td.blank { } }
                        }
                    }
                }
            } }
            @for pair in &detector.neighbours {
                @if let Some(easiest) = pair.actions.first() {
                    p { b { (format_loops(report, &pair.marks, reader)) (reader.colon()) } (easiest.message) }
                }
            }
            @if let Some(channel) = detector.settings.first() {
                p {
                    b { (reader.say(&Statement::new("sheet-frequency"))) (reader.colon()) } (channel.frequency_setting)
                }
            }
        }
    }
}

/// Loops of the plan by their marks and roles.
fn format_loops(report: &InstallationPlanReport, marks: &[LoopMark], reader: Reader) -> String {
    let name = |mark: &LoopMark| {
        let laid = report.layout.loops.iter().find(|laid| laid.marks().contains(mark));
        laid.map_or_else(|| mark.to_string(), |laid| format!("{mark} {}", reader.label(laid.role)))
    };
    marks.iter().map(name).collect::<Vec<_>>().join(" + ")
}

/// What the output does, and the input of the operator that it drives.
fn format_output(channel: &ChannelSettings, reader: Reader) -> String {
    let held = channel.to_set.presence_time.map(|time| Time::new::<second>(time.s()));
    let words = Statement::new("sheet-output")
        .member("output", channel.to_set.output)
        .code("lets_go", if held.is_some() { "yes" } else { "never" })
        .text("held", held.map_or_else(String::new, |held| format_duration(held, reader)))
        .code("input", channel.operator_input);
    reader.say(&words).into_owned()
}

/// What to try before leaving, with boxes to tick.
pub fn trials(report: &InstallationPlanReport, reader: Reader) -> Markup {
    let Some(commissioning) = &report.commissioning else { return html! {} };
    let vehicles = Statement::new("sheet-vehicles").members("vehicles", &report.sizing.inputs.vehicles);
    html! {
        section {
            h2 { (reader.say(&Statement::new("sheet-trials"))) }
            p { (reader.say(&vehicles)) }
            ul.ticks {
                @for trial in &commissioning.trials {
                    li { (tick_box()) b { (reader.label(trial.trial)) ". " } (reader.description(trial.trial)) }
                }
            }
        }
    }
}
