//! Whether to seal, hour by hour: the weather against what the sealant asks for, and what it comes to afterwards.
//!
//! `clock` holds the hours along the sheet, `weather` draws the temperatures, `rows` the bars below them.

mod clock;
mod rows;
mod weather;

use super::sheet::Sheet;
use super::{Drawing, words};
use crate::calculation::cure_guidance::{CureGuidanceReport, CureGuidanceRequest};
use crate::calculation::report::Finding;
use crate::practice::cure::{CureVerdict, SurfaceCondition};
use crate::practice::findings::Level;
use crate::practice::sealants::SealantKind;
use crate::quantity::{QuantityField, UnitSystem};
use clock::{Clock, say};
use weather::{Plot, both};

/// What heads the stops: nothing is built from this drawing.
const SEAL: &str = "Do not seal at this start";

/// Whether to seal, hour by hour.
pub struct CureTimeline;

impl Drawing for CureTimeline {
    type Request = CureGuidanceRequest;
    const NAME: &'static str = "cure-timeline";
    const OPERATION_ID: &'static str = "draw_cure_timeline";
    const SUMMARY: &'static str = "The weather of a sealing job, and when traffic may return";
    const DESCRIPTION: &'static str = "The report of `cure-guidance` over its hours: slab, air and dew point, the margin over the \
        dew point that the slab must keep, the least temperature of application, the start, hours of rain, the hours in which it \
        could be applied, and each milestone from its earliest to its latest, with times and verdict in words. Temperatures stand \
        in the system that the first `air` is written in, the other in brackets; times on the clock of the start. The drawing is \
        one `svg` element without script or outside references, legible 320 pixels wide, light or dark as the reader's device \
        asks, and light in print.";

    fn system(request: &CureGuidanceRequest) -> UnitSystem {
        // Weather that cannot be read has been refused before anything is drawn.
        let first = request.weather.conditions.as_ref().and_then(|rows| rows.first()?.air.read().ok());
        first.map_or(UnitSystem::Metric, |air| air.system)
    }

    fn draw(report: &CureGuidanceReport, system: UnitSystem) -> String {
        draw(report, system)
    }
}

/// Draws the hours of a report.
pub fn draw(report: &CureGuidanceReport, system: UnitSystem) -> String {
    let none = |_: &Finding| None;
    let start = say(&report.inputs.start);
    let verdict = words::label::<CureVerdict>(report.verdict);
    let title = format!("Sealing, start {start}: {}", verdict.to_lowercase());

    let mut sheet = Sheet::default();
    let top = words::head(&mut sheet, &title);
    let about = about(report, system);
    let top = words::notes(&mut sheet, top, &about);
    let top = words::stops(&mut sheet, top + 2.0, SEAL, &report.findings, none);
    let clock = Clock::of(report);
    let bottom = Plot::of(report, &clock, system, top).draw(&mut sheet);
    let rows = rows::all(report, &clock);
    let bottom = rows::draw(&mut sheet, &rows, report, &clock, bottom + words::GAP) + words::GAP;
    let notes = notes(report);
    let bottom = words::notes(&mut sheet, bottom, &notes) + words::GAP;
    let bottom = words::warnings(&mut sheet, bottom, &report.findings, none);
    let height = words::foot(&mut sheet, bottom, report.basis.engine);

    let rows: Vec<_> = rows.into_iter().map(|row| row.words).collect();
    let told = [about, rows, notes].concat().join(" ") + &words::told(SEAL, &report.findings, none);
    sheet.finish(CureTimeline::NAME, &title, &told, height)
}

/// What is sealed, and why the verdict is what it is where nothing stands against it.
fn about(report: &CureGuidanceReport, system: UnitSystem) -> Vec<String> {
    let inputs = &report.inputs;
    let sealant = words::label::<SealantKind>(inputs.sealant.kind);
    let condition = words::label::<SurfaceCondition>(inputs.surface_condition);
    let mut about = format!("{sealant}; slot {}", condition.to_lowercase());
    if report.assumed.iter().any(|assumed| assumed.about == "#/surface_condition") {
        about += " as far as anyone said";
    }
    about += ".";
    if let Some(needed) = &inputs.needed_open_by {
        about += &format!(" Traffic is needed by {}.", say(needed));
    }
    if let Some(pour) = inputs.sealant.pour_temperature {
        about += &format!(
            " Poured at {}: it cools and does not cure, so its times do not follow the weather.",
            both(pour, system)
        );
    }
    let notes = report.reasons.iter().filter(|reason| reason.level == Level::Note);
    std::iter::once(about).chain(notes.map(|reason| reason.message.clone())).collect()
}

/// What holds for all of it.
fn notes(report: &CureGuidanceReport) -> Vec<String> {
    let mut notes = vec![format!(
        "Bars run from the earliest to the latest. The weather ends {}; nothing is guessed beyond. On site the test is that nothing tracks.",
        say(&report.inputs.weather_until)
    )];
    if let Some(shelf) = &report.shelf {
        notes.push(format!("The sealant keeps until {}.", shelf.ends_on));
    }
    notes
}
