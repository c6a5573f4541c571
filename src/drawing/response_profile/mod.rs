//! The response of a loop to a vehicle: the change along the vehicle's path, and where the unit switches.
//!
//! `change_plot` draws the curve with its threshold and axes, and the loop and the vehicle below it to the same scale.

mod change_plot;

use super::canvas::{Canvas, GAP};
use super::dimension_text::{format_area_both, format_percent, format_plan_both};
use super::options::DrawingOptions;
use super::report_text::{
    build_stop_heading, describe_findings, draw_footer, draw_heading, draw_notes, draw_stops, draw_warnings,
};
use super::traits::Drawing;
use crate::calculation::report::Statement;
use crate::calculation::vehicle_response::{DrivenVehicle, VehicleResponseReport, VehicleResponseRequest};
use crate::quantity::output::PlanLength;
use crate::quantity::{QuantityField, UnitSystem};
use crate::wording::Reader;
use change_plot::ChangePlot;

/// The response of a loop to a vehicle.
pub struct ResponseProfile;

impl Drawing for ResponseProfile {
    type Request = VehicleResponseRequest;
    const NAME: &'static str = "response-profile";
    const OPERATION_ID: &'static str = "draw_response_profile";
    const SUMMARY: &'static str = "The change along a vehicle's way";
    const DESCRIPTION: &'static str = "The report of `vehicle-response` as a curve: the change at the unit's terminals over the \
        way of the vehicle's front, the threshold, where the unit switches on and off and where it lets go in between, and the \
        loop and the vehicle below to the scale of the way. The way stands in the system that the loop's `along_travel` is \
        written in, the other in brackets. The drawing is one `svg` element without script or outside references, legible 280 \
        pixels wide, light or dark as the reader's device asks, and light in print.";

    fn system(request: &VehicleResponseRequest) -> UnitSystem {
        // A request whose leg cannot be parsed is never drawn.
        request.r#loop.along_travel.read().map_or(UnitSystem::Metric, |leg| leg.system)
    }

    fn draw(report: &VehicleResponseReport, reader: Reader, options: &DrawingOptions) -> String {
        draw(report, reader, options)
    }
}

/// Draws the profile of a report.
pub fn draw(report: &VehicleResponseReport, reader: Reader, options: &DrawingOptions) -> String {
    let coil = &report.inputs.r#loop;
    let vehicle = match report.inputs.vehicle {
        DrivenVehicle::Plate => reader.say(&Statement::new("drawings-profile-plate")),
        DrivenVehicle::Class(class) => reader.label(class).into(),
    };
    let title = Statement::new("drawings-profile-title")
        .text("vehicle", vehicle.to_lowercase())
        .text("size", format_area_both(coil.along_travel.into(), coil.across_lane.into(), reader))
        .count("turns", coil.turns.into());
    let (title, stop_heading) = (reader.say(&title), build_stop_heading());

    let mut canvas = Canvas::new(reader.language, options);
    let top = draw_heading(&mut canvas, &title);
    let top = draw_stops(&mut canvas, top, &stop_heading, &report.findings, |_| None, reader);
    let plot = ChangePlot::new(report, reader, top);
    let bottom = plot.draw(&mut canvas);
    let bottom = plot.draw_vehicle_and_loop(&mut canvas, report, bottom);
    let notes = format_notes(report, &vehicle, reader);
    let bottom = draw_notes(&mut canvas, bottom, &notes) + GAP;
    let bottom = draw_warnings(&mut canvas, bottom, &report.findings, |_| None, reader);
    let height = draw_footer(&mut canvas, bottom, report.basis.engine, reader);

    let description = notes.join(" ") + &describe_findings(&stop_heading, &report.findings, |_| None, reader);
    canvas.finish(ResponseProfile::NAME, &title, &description, height)
}

/// What the curve says, in words.
fn format_notes(report: &VehicleResponseReport, vehicle: &str, reader: Reader) -> Vec<String> {
    let front = |length: PlanLength| say_front(length, reader);
    let mut notes = vec![
        Statement::new("drawings-profile-peak")
            .text("change", format_percent(report.peak_change_percent, reader))
            .phrase("front", front(report.peak_position))
            .text("times", reader.number(report.times_threshold))
            .text("threshold", format_percent(report.threshold_percent, reader)),
    ];
    match report.switches_on_at.zip(report.switches_off_at) {
        Some((on, off)) => {
            notes.push(Statement::new("drawings-profile-on").phrase("on", front(on)).phrase("off", front(off)));
            notes.extend(report.drop_outs.iter().map(|gap| {
                if gap.comes_back_before(off) {
                    let lets_go = Statement::new("drawings-profile-lets-go");
                    lets_go.phrase("from", front(gap.from)).phrase("until", front(gap.to))
                } else {
                    Statement::new("drawings-profile-lets-go-early").phrase("tail", front(gap.to))
                }
            }));
        }
        None => notes.push(Statement::new("drawings-profile-silent")),
    }
    if let Some(blind) = &report.blind_strip {
        let note = Statement::new("drawings-profile-blind").text("width", format_plan_both(blind.width, reader));
        notes.push(note.code("centre", if blind.contains_centre { "included" } else { "seen" }));
    }
    let offset = report.inputs.offset_across;
    let line = match offset.m() {
        0.0 => "middle",
        m if m < 0.0 => "left",
        _ => "right",
    };
    notes.push(
        Statement::new("drawings-profile-way")
            .text("vehicle", vehicle.to_owned())
            .text("length", format_plan_both(report.inputs.vehicle_length, reader))
            .code("line", line)
            .text("offset", format_plan_both(offset.abs(), reader))
            .code("model", report.model),
    );
    notes.iter().map(|note| reader.say(note).into_owned()).collect()
}

/// Where the front of the vehicle is.
fn say_front(length: PlanLength, reader: Reader) -> Statement {
    let side = if length.m() < 0.0 { "before" } else { "past" };
    let front = Statement::new("drawings-profile-front").text("length", format_plan_both(length.abs(), reader));
    front.code("side", side)
}
