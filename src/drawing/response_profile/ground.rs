//! The loop and the vehicle below the curve, to the scale of the way: the vehicle where the change peaks.

use super::plot::Plot;
use crate::calculation::vehicle_response::VehicleResponseReport;
use crate::drawing::letters::SIZE;
use crate::drawing::sheet::Sheet;
use crate::quantity::output::PlanLength;

/// How high a bar is drawn.
const BAR: f64 = 7.0;
/// From bar to bar.
const STEP: f64 = 17.0;

/// Draws the two bars; gives the lower edge.
pub fn draw(sheet: &mut Sheet, plot: &Plot, report: &VehicleResponseReport, top: f64) -> f64 {
    let along = report.inputs.r#loop.along_travel;
    let (front, length) = (report.peak_position, report.inputs.vehicle_length);
    let rear = PlanLength { ft: front.ft - length.ft, m: front.m - length.m };
    let name = |sheet: &mut Sheet, top: f64, words: &str| {
        sheet.text("end", (Plot::LEFT - 5.0, top + BAR / 2.0 + 0.36 * SIZE), words);
    };

    let (left, right) = (plot.place(rear).max(Plot::LEFT), plot.place(front));
    name(sheet, top, "vehicle");
    let is_whole = plot.place(rear) >= Plot::LEFT;
    let (roof, floor) = (top, top + BAR);
    let outline = [(left, roof), (right - 4.0, roof), (right, roof + BAR / 2.0), (right - 4.0, floor), (left, floor)];
    if is_whole {
        sheet.polygon("line", &outline);
    } else {
        // Its rear lies before what the curve shows.
        sheet.polyline("line", &outline);
    }

    let top = top + STEP;
    name(sheet, top, "loop");
    let (from, to) = ((plot.place(PlanLength { ft: 0.0, m: 0.0 }), top), (plot.place(along), top + BAR));
    sheet.hatch("wire", from, to, 5.0);
    sheet.rectangle("wire", from, to);
    top + STEP
}
