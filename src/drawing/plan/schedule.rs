//! The schedule of loops, and what the drawing notes below it.

use super::coils::Coil;
use super::ground::Ground;
use super::role;
use crate::calculation::loop_sizing::LoopSizingReport;
use crate::drawing::letters::SIZE;
use crate::drawing::sheet::{INNER, MARGIN, Sheet};
use crate::drawing::units::{area, both, detail};
use crate::drawing::words::GAP;
use crate::quantity::UnitSystem;
use crate::quantity::output::round;

/// The radius of the circle round a letter, and what stands beside it.
const RADIUS: f64 = 8.0;
/// See [`RADIUS`].
const INDENT: f64 = 24.0;

/// Draws the schedule; gives its lower edge.
pub fn draw(sheet: &mut Sheet, coils: &[Coil<'_>], system: UnitSystem, top: f64) -> f64 {
    let rows: Vec<_> = coils.iter().map(|coil| row(coil, system)).collect();
    coils.iter().enumerate().fold(top, |top, (index, coil)| {
        let middle = (MARGIN + RADIUS, top + RADIUS + 1.0);
        sheet.circle("balloon", middle, RADIUS);
        sheet.text("strong middle", (middle.0, middle.1 + 0.36 * SIZE), &coil.letter.to_string());
        let [name, what] = &rows[index];
        let like = rows[..index].iter().position(|[_, other]| other == what);
        let what = like.map_or(what.clone(), |other| format!("Made as {}.", coils[other].letter));
        let place = |top| (MARGIN + INDENT, top);
        let bottom = sheet.paragraph("strong", place(top), INNER - INDENT, name);
        sheet.paragraph("", place(bottom), INNER - INDENT, &what) + GAP / 2.0
    }) + GAP / 2.0
}

/// What a loop is for and where it lies, and how it is made.
pub fn row(coil: &Coil<'_>, system: UnitSystem) -> [String; 2] {
    let sized = coil.sized;
    let is_lane = sized.distance_from_reference.is_some();
    let line = if is_lane { "the reference line" } else { "the barrier" };
    let side = match sized.side {
        "outside" if is_lane => "before",
        "inside" if is_lane => "past",
        side => side,
    };
    let place = match sized.side {
        "outside" | "inside" if coil.distance.m == 0.0 => format!("right {side} {line}"),
        "outside" | "inside" => format!("{} {side} {line}", both(coil.distance, system)),
        _ => format!("across {line}"),
    };
    let mut what = match sized.count {
        1 => String::new(),
        count => format!("{count} side by side, wound as the arrow heads show, each "),
    };
    what += &format!("{}, {}\u{a0}turns", area(sized.along_travel, sized.across_lane, system), sized.turns);
    if sized.shape == "quadrupole" {
        what += " round each of two cells";
    }
    if sized.corner_cut.mm > 0.0 {
        what += &format!(", corners cut {}", detail(sized.corner_cut, system));
    }
    if let Some(depth) = sized.slot_depth {
        what += &format!(", slot {} deep", detail(depth, system));
    }
    what += &format!("; {} µH at the unit.", round(sized.electrical.terminal_inductance_uh, 1));
    if let Some(sku) = sized.stock_choice.as_ref().and_then(|choice| choice.sku.as_deref()) {
        what += &format!(" From stock: {sku}.");
    }
    [format!("{}: {place}", role(sized.role)), what]
}

/// What the drawing notes.
pub fn notes(report: &LoopSizingReport, ground: &Ground, system: UnitSystem) -> Vec<String> {
    let mut notes = vec![format!(
        "Tape: from the line to the wires. Lead-ins are drawn to the kerb; order {} of pair for each loop and route it as the \
         site allows.",
        both(report.lead_in.order_length, system)
    )];
    if let Some(stretch) = report.unseen_stretch {
        notes.push(format!("Unseen between the loops that hold the barrier: {}.", both(stretch, system)));
    }
    if ground.sweep > 0.0 {
        notes.push("Leaves are taken to swing inwards; chain lines show their sweep.".to_owned());
    }
    let scale = if ground.breaks.is_empty() {
        "To scale."
    } else {
        "To scale, but for the stretch between zigzag lines, which is shortened."
    };
    notes.push(scale.to_owned());
    notes
}
