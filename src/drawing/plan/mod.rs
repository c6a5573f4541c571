//! The plan of an opening: what closes it, the loops with their roles, and every distance from one line.
//!
//! Inside is up. `ground` maps the site to the sheet, to one scale both ways; `site` draws lane, barrier and sweep, `coils` the
//! loops, `tape` the distances along the way, `across` those across it, and `schedule` says what each loop is.

mod across;
mod coils;
mod ground;
mod schedule;
mod site;
mod tape;

use super::sheet::Sheet;
use super::units::both;
use super::{Drawing, words};
use crate::calculation::loop_sizing::{LoopSizingReport, LoopSizingRequest, SizedLoop};
use crate::calculation::report::Finding;
use crate::practice::roles::Role;
use crate::practice::site::Barrier;
use crate::quantity::{QuantityField, UnitSystem};
use coils::Coil;
use ground::Ground;

/// The plan of an opening.
pub struct Plan;

impl Drawing for Plan {
    type Request = LoopSizingRequest;
    const NAME: &'static str = "plan";
    const OPERATION_ID: &'static str = "draw_plan";
    const SUMMARY: &'static str = "The loops of an opening, from above";
    const DESCRIPTION: &'static str = "The report of `loop-sizing` as a plan, to scale: the opening, its barrier and the sweep of \
        its leaves, each loop with what it is for, distances from the line of the barrier as a tape reads them, sizes across the \
        lane, lead-ins as far as the kerb, and the directions of travel. Dimensions stand in the system that `opening.width` is \
        written in, the other in brackets. Stretches without a loop that are very long are broken, and say so. A design that \
        should not be built says so in words. The drawing is one `svg` element without script or outside references, legible \
        320 pixels wide, light or dark as the reader's device asks, and light in print.";

    fn system(request: &LoopSizingRequest) -> UnitSystem {
        // A width that cannot be read has been refused before anything is drawn.
        request.opening.width.read().map_or(UnitSystem::Metric, |width| width.system)
    }

    fn draw(report: &LoopSizingReport, system: UnitSystem) -> String {
        draw(report, system)
    }
}

/// Draws the plan of a report.
pub fn draw(report: &LoopSizingReport, system: UnitSystem) -> String {
    let opening = &report.inputs.opening;
    let coils = Coil::all(&report.loops);
    let mark = |finding: &Finding| {
        let subject = finding.subject.as_deref()?;
        coils.iter().find(|coil| coil.sized.role == subject).map(|coil| coil.letter.to_string())
    };
    let title = format!("Plan: {}", name(opening.barrier, &both(opening.width, system)));

    let mut sheet = Sheet::default();
    let top = words::head(&mut sheet, &title);
    let top = words::stops(&mut sheet, top, words::BUILD, &report.findings, mark);
    let (ground, bottom) = site_plan(&mut sheet, report, &coils, top, system);
    let bottom = schedule::draw(&mut sheet, &coils, system, bottom);
    let notes = schedule::notes(report, &ground, system);
    let bottom = words::notes(&mut sheet, bottom, &notes) + words::GAP;
    let bottom = words::warnings(&mut sheet, bottom, &report.findings, mark);
    let height = words::foot(&mut sheet, bottom, report.basis.engine);

    let rows: Vec<_> = coils.iter().map(|coil| schedule::row(coil, system).join(" ")).collect();
    let told = format!("{} {}{}", rows.join(" "), notes.join(" "), words::told(words::BUILD, &report.findings, mark));
    sheet.finish(Plan::NAME, &title, &told, height)
}

/// The picture alone and its notes, for a page that says itself what the loops are, what stops the job, and warnings.
pub fn picture(report: &LoopSizingReport, system: UnitSystem) -> (String, Vec<String>) {
    let opening = &report.inputs.opening;
    let coils = Coil::all(&report.loops);
    let mut sheet = Sheet::default();
    let (ground, bottom) = site_plan(&mut sheet, report, &coils, words::GAP, system);
    let notes = schedule::notes(report, &ground, system);
    let title = format!("Plan: {}", name(opening.barrier, &both(opening.width, system)));
    let rows: Vec<_> = coils.iter().map(|coil| schedule::row(coil, system).join(" ")).collect();
    (sheet.finish(Plan::NAME, &title, &format!("{} {}", rows.join(" "), notes.join(" ")), bottom), notes)
}

/// Draws lane, barrier, loops and distances below `top`; gives the ground and the lower edge.
fn site_plan(
    sheet: &mut Sheet,
    report: &LoopSizingReport,
    coils: &[Coil<'_>],
    top: f64,
    system: UnitSystem,
) -> (Ground, f64) {
    let opening = &report.inputs.opening;
    let mut ground = Ground::of(opening, coils, top + site::STRIP);
    // Readings that need more room than the ground get it above and below.
    let more = tape::lacks(coils, ground.bottom - ground.top + 2.0 * site::STRIP) / 2.0;
    ground.lower(more);
    let edges = (top, ground.bottom + more + site::STRIP);
    site::draw(sheet, &ground, opening.barrier, coils.iter().any(|coil| coil.sized.role == "exit"));
    coils::draw(sheet, &ground, coils);
    tape::draw(sheet, &ground, coils, opening.barrier, system, edges);
    let bottom = across::draw(sheet, &ground, coils, opening.width, system, edges.1);
    (ground, bottom)
}

/// What is planned, in a phrase.
fn name(barrier: &'static str, width: &str) -> String {
    if barrier == "none" {
        return format!("lane without a barrier, {width} wide");
    }
    format!("{}, opening {width}", words::label::<Barrier>(barrier).to_lowercase())
}

/// The name of a role, as a schedule holds it.
fn role(code: &'static str) -> &'static str {
    words::label::<Role>(code)
}

/// The loops with their letters on the plan, in the order of these.
pub fn lettered(loops: &[SizedLoop]) -> Vec<(char, &SizedLoop)> {
    Coil::all(loops).into_iter().map(|coil| (coil.letter, coil.sized)).collect()
}
