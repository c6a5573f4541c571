//! The response of a loop to a vehicle: the change along the way, and where the unit switches.
//!
//! `plot` draws the curve with its threshold and axes, `ground` the loop and the vehicle below it to the same scale.

mod ground;
mod plot;

use super::sheet::Sheet;
use super::units::{area, both};
use super::{Drawing, words};
use crate::calculation::vehicle_response::{VehicleResponseReport, VehicleResponseRequest};
use crate::practice::vehicles::VehicleClass;
use crate::quantity::output::PlanLength;
use crate::quantity::{QuantityField, UnitSystem};
use plot::Plot;

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
        // A leg that cannot be read has been refused before anything is drawn.
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
        "plate" => "A flat underside",
        code => words::label::<VehicleClass>(code),
    };
    let size = area(coil.along_travel, coil.across_lane, system);
    let title = format!("Response: {} over a loop of {size}, {}\u{a0}turns", vehicle.to_lowercase(), coil.turns);

    let mut sheet = Sheet::default();
    let top = words::head(&mut sheet, &title);
    let top = words::stops(&mut sheet, top, words::BUILD, &report.findings, |_| None);
    let plot = Plot::of(report, system, top);
    let bottom = plot.draw(&mut sheet);
    let bottom = ground::draw(&mut sheet, &plot, report, bottom);
    let notes = notes(report, vehicle, system);
    let bottom = words::notes(&mut sheet, bottom, &notes) + words::GAP;
    let bottom = words::warnings(&mut sheet, bottom, &report.findings, |_| None);
    let height = words::foot(&mut sheet, bottom, report.basis.engine);

    let told = notes.join(" ") + &words::told(words::BUILD, &report.findings, |_| None);
    sheet.finish(ResponseProfile::NAME, &title, &told, height)
}

/// What the curve says, in words.
fn notes(report: &VehicleResponseReport, vehicle: &str, system: UnitSystem) -> Vec<String> {
    let past = |length: PlanLength| place(length, system);
    let mut notes = vec![format!(
        "The change peaks at {} % with the front {}, where the vehicle is drawn: {} times the {} % that the unit switches at.",
        report.peak_change_percent,
        past(report.peak_position),
        report.times_threshold,
        report.threshold_percent
    )];
    match report.switches_on_at.zip(report.switches_off_at) {
        Some((on, off)) => notes.push(format!("On (hatched) with the front {}, off {}.", past(on), past(off))),
        None => notes.push("The unit does not switch.".to_owned()),
    }
    for gap in &report.drop_outs {
        notes.push(format!("Lets go from {} to {}.", past(gap.from), past(gap.to)));
    }
    if let Some(blind) = &report.blind_strip {
        let centre = if blind.contains_centre { ", the centre included" } else { "" };
        notes.push(format!("Not seen over {} of the lane{centre}.", both(blind.width, system)));
    }
    let offset = report.inputs.offset_across;
    let line = match offset.m {
        0.0 => "over the middle".to_owned(),
        m => format!("{} {} of the middle", both(size(offset), system), if m < 0.0 { "left" } else { "right" }),
    };
    notes.push(format!(
        "{vehicle}: {} long, {line} of the loop; the model is {}.",
        both(report.inputs.vehicle_length, system),
        match report.model {
            "plate" => "the caller's plate",
            model => model,
        }
    ));
    notes
}

/// A place of the front on the way.
fn place(length: PlanLength, system: UnitSystem) -> String {
    let side = if length.m < 0.0 { "before" } else { "past" };
    format!("{} {side} the leading edge", both(size(length), system))
}

/// A length without its sign.
fn size(length: PlanLength) -> PlanLength {
    PlanLength { ft: length.ft.abs(), m: length.m.abs() }
}
