//! The response of a loop to a vehicle: the change along the vehicle's path, and where the unit switches.
//!
//! `change_plot` draws the curve with its threshold and axes, and the loop and the vehicle below it to the same scale.

mod change_plot;

use super::canvas::{Canvas, GAP};
use super::dimension_text::{format_area_both, format_plan_both};
use super::report_text::{
    BUILD_STOP_HEADING, describe_findings, draw_footer, draw_heading, draw_notes, draw_stops, draw_warnings,
};
use super::traits::Drawing;
use crate::calculation::vehicle_response::{DrivenVehicle, VehicleResponseReport, VehicleResponseRequest};
use crate::quantity::output::PlanLength;
use crate::quantity::{QuantityField, UnitSystem};
use crate::vocabulary::Vocabulary;
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
        written in, the other in brackets. The drawing is one `svg` element without script or outside references, legible 320 \
        pixels wide, light or dark as the reader's device asks, and light in print.";

    fn system(request: &VehicleResponseRequest) -> UnitSystem {
        // A request whose leg cannot be parsed is never drawn.
        request.r#loop.along_travel.read().map_or(UnitSystem::Metric, |leg| leg.system)
    }

    fn draw(report: &VehicleResponseReport, system: UnitSystem) -> String {
        draw(report, system)
    }
}

/// Draws the profile of a report.
pub fn draw(report: &VehicleResponseReport, system: UnitSystem) -> String {
    let coil = &report.inputs.r#loop;
    let vehicle = match report.inputs.vehicle {
        DrivenVehicle::Plate => "A flat underside",
        DrivenVehicle::Class(class) => class.label(),
    };
    let size = format_area_both(coil.along_travel.into(), coil.across_lane.into(), system);
    let title = format!("Response: {} over a loop of {size}, {}\u{a0}turns", vehicle.to_lowercase(), coil.turns);

    let mut canvas = Canvas::default();
    let top = draw_heading(&mut canvas, &title);
    let top = draw_stops(&mut canvas, top, BUILD_STOP_HEADING, &report.findings, |_| None);
    let plot = ChangePlot::new(report, system, top);
    let bottom = plot.draw(&mut canvas);
    let bottom = plot.draw_vehicle_and_loop(&mut canvas, report, bottom);
    let notes = format_notes(report, vehicle, system);
    let bottom = draw_notes(&mut canvas, bottom, &notes) + GAP;
    let bottom = draw_warnings(&mut canvas, bottom, &report.findings, |_| None);
    let height = draw_footer(&mut canvas, bottom, report.basis.engine);

    let description = notes.join(" ") + &describe_findings(BUILD_STOP_HEADING, &report.findings, |_| None);
    canvas.finish(ResponseProfile::NAME, &title, &description, height)
}

/// What the curve says, in words.
fn format_notes(report: &VehicleResponseReport, vehicle: &str, system: UnitSystem) -> Vec<String> {
    let front = |length: PlanLength| format_front(length, system);
    let mut notes = vec![format!(
        "The change peaks at {} % with the front {}, where the vehicle is drawn: {} times the {} % that the unit switches at.",
        report.peak_change_percent,
        front(report.peak_position),
        report.times_threshold,
        report.threshold_percent
    )];
    match report.switches_on_at.zip(report.switches_off_at) {
        Some((on, off)) => {
            notes.push(format!("On (hatched) with the front {}, off {}.", front(on), front(off)));
            notes.extend(report.drop_outs.iter().map(|gap| {
                if gap.comes_back_before(off) {
                    format!("Lets go from {} to {}.", front(gap.from), front(gap.to))
                } else {
                    format!("Lets go before the tail reaches the loop, which is with the front {}.", front(gap.to))
                }
            }));
        }
        None => notes.push("The unit does not switch.".to_owned()),
    }
    if let Some(blind) = &report.blind_strip {
        let centre = if blind.contains_centre { ", the centre included" } else { "" };
        notes.push(format!("Not seen over {} of the lane{centre}.", format_plan_both(blind.width, system)));
    }
    let offset = report.inputs.offset_across;
    let line = match offset.m() {
        0.0 => "over the middle".to_owned(),
        m => format!(
            "{} {} of the middle",
            format_plan_both(without_sign(offset), system),
            if m < 0.0 { "left" } else { "right" }
        ),
    };
    notes.push(format!(
        "{vehicle}: {} long, {line} of the loop; the model is {}.",
        format_plan_both(report.inputs.vehicle_length, system),
        match report.model {
            "plate" => "the caller's plate",
            model => model,
        }
    ));
    notes
}

/// Where the front of the vehicle is.
fn format_front(length: PlanLength, system: UnitSystem) -> String {
    let side = if length.m() < 0.0 { "before" } else { "past" };
    format!("{} {side} the leading edge", format_plan_both(without_sign(length), system))
}

/// A length without its sign.
fn without_sign(length: PlanLength) -> PlanLength {
    length.abs()
}
