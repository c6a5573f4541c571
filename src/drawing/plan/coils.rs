//! The loops on the ground: their outlines, their lead-ins as far as the kerb, and the letters that the schedule explains.

use super::ground::Ground;
use crate::calculation::loop_sizing::SizedLoop;
use crate::drawing::letters::SIZE;
use crate::drawing::sheet::{Point, Sheet};
use crate::drawing::spread::spread;
use crate::quantity::output::PlanLength;

/// Where the letters stand, and the radius of the circle round each.
const LETTERS: f64 = 346.0;
/// See [`LETTERS`].
const RADIUS: f64 = 8.0;
/// Where on a loop the line from its letter ends, as a share of its leg from the end towards the barrier: clear of the arm above
/// it and of its lead-in.
const FOOT: f64 = 0.35;
/// How far a lead-in is drawn beyond the edge of the lane.
const BEYOND_KERB: f64 = 8.0;

/// The loop, or row of loops, of a role.
pub struct Coil<'a> {
    /// Its letter.
    pub letter: char,
    /// What the report says of it.
    pub sized: &'a SizedLoop,
    /// From the line to the nearest wire.
    pub distance: PlanLength,
    /// Its end towards the outside, metres along.
    pub from: f64,
    /// Its end towards the inside.
    pub to: f64,
    /// The middle of each loop of the row, metres across, left to right.
    pub centres: Vec<f64>,
}

impl<'a> Coil<'a> {
    /// The loops of a report as they follow from the inside outwards, which is down the sheet.
    pub fn all(loops: &'a [SizedLoop]) -> Vec<Self> {
        let mut coils: Vec<_> = loops.iter().map(Self::of).collect();
        coils.sort_by(|a, b| b.from.total_cmp(&a.from));
        for (coil, letter) in coils.iter_mut().zip('A'..='Z') {
            coil.letter = letter;
        }
        coils
    }

    fn of(sized: &'a SizedLoop) -> Self {
        let at_line = PlanLength { ft: 0.0, m: 0.0 };
        let distance = sized.distance_from_barrier.or(sized.distance_from_reference).unwrap_or(at_line);
        let leg = sized.along_travel.m;
        let (from, to) = match sized.side {
            "outside" => (-distance.m - leg, -distance.m),
            "inside" => (distance.m, distance.m + leg),
            _ => (-leg / 2.0, leg / 2.0),
        };
        let row = sized.side_by_side.as_ref();
        let centres = row.map_or(vec![0.0], |row| row.centres.iter().map(|centre| centre.m).collect());
        Self { letter: 'A', sized, distance, from, to, centres }
    }

    /// The left and right edge of each loop, metres across.
    pub fn edges(&self) -> impl Iterator<Item = (f64, f64)> {
        let half = self.sized.across_lane.m / 2.0;
        self.centres.iter().map(move |centre| (centre - half, centre + half))
    }
}

/// Draws the loops.
pub fn draw(sheet: &mut Sheet, ground: &Ground, coils: &[Coil<'_>]) {
    for coil in coils {
        for (index, (left, right)) in coil.edges().enumerate() {
            outline(sheet, ground, coil, left, right);
            lead_in(sheet, ground, coil, index);
            if let Some(row) = &coil.sized.side_by_side {
                sense(sheet, ground, coil, f64::midpoint(left, right), row.wound.get(index) == Some(&"clockwise"));
            }
        }
    }
    letters(sheet, ground, coils);
}

/// The way of the wire: a rectangle with its corners cut, and the centre slot of a quadrupole.
fn outline(sheet: &mut Sheet, ground: &Ground, coil: &Coil<'_>, left: f64, right: f64) {
    let cut = coil.sized.corner_cut.mm / 1000.0;
    let (from, to) = (coil.from, coil.to);
    let corners = [
        (left + cut, from),
        (right - cut, from),
        (right, from + cut),
        (right, to - cut),
        (right - cut, to),
        (left + cut, to),
        (left, to - cut),
        (left, from + cut),
    ];
    let corners: Vec<Point> = corners.into_iter().map(|(across, along)| ground.at(across, along)).collect();
    sheet.polygon("wire", &corners);
    if coil.sized.shape == "quadrupole" {
        let middle = f64::midpoint(left, right);
        sheet.line("wire", ground.at(middle, from), ground.at(middle, to));
    }
}

/// The pair, as far as the kerb of its own side; from an inner loop of a row it passes the outer ones on the side away from the
/// barrier.
fn lead_in(sheet: &mut Sheet, ground: &Ground, coil: &Coil<'_>, index: usize) {
    let count = coil.centres.len();
    let to_right = 2 * index >= count.saturating_sub(1);
    let side = if to_right { 1.0 } else { -1.0 };
    let outer = if to_right { count - 1 - index } else { index };
    let half = coil.sized.across_lane.m / 2.0;
    let edge = ground.x(coil.centres[index] + side * half);
    let kerb = ground.x(side * ground.half()) + side * BEYOND_KERB;
    let inwards = coil.from > 0.0;
    // The corner away from the barrier.
    let (near, far) = if inwards { (coil.from, coil.to) } else { (coil.to, coil.from) };
    let away = if inwards { -1.0 } else { 1.0 };
    let cut = coil.sized.corner_cut.mm / 1000.0 * ground.scale;
    let leg = (ground.y(far) - ground.y(near)).abs();
    let start = ground.y(far) - away * (cut + 0.12 * leg);
    for pair in [-1.0, 1.0] {
        if outer == 0 {
            sheet.line("line", (edge, start + pair), (kerb, start + pair));
            continue;
        }
        // Out at the far side: the pavement between two loops of a row stays whole.
        let turn = edge - side * (cut + 3.0 + pair * away);
        let level = ground.y(far) + away * (1.0 + 4.0 * outer as f64) + pair;
        sheet.polyline("line", &[(turn, ground.y(far)), (turn, level), (kerb, level)]);
    }
}

/// The sense in which a loop of a row is wound: a head on its upper side.
fn sense(sheet: &mut Sheet, ground: &Ground, coil: &Coil<'_>, middle: f64, clockwise: bool) {
    let (x, y) = ground.at(middle, coil.to);
    let way = if clockwise { 1.0 } else { -1.0 };
    sheet.head("wire", (x - way, y), (x + 2.5 * way, y));
}

/// The end of the line from a letter, metres along.
fn foot(coil: &Coil<'_>) -> f64 {
    let leg = coil.to - coil.from;
    if coil.from > 0.0 { coil.from + FOOT * leg } else { coil.to - FOOT * leg }
}

/// A letter for each loop beside the lane, with a line to it.
fn letters(sheet: &mut Sheet, ground: &Ground, coils: &[Coil<'_>]) {
    let mut order: Vec<_> = coils.iter().map(|coil| (ground.y(foot(coil)), coil)).collect();
    order.sort_by(|a, b| a.0.total_cmp(&b.0));
    let wanted: Vec<_> = order.iter().map(|(y, _)| (*y, 2.0 * RADIUS + 2.0)).collect();
    let places = spread(&wanted, ground.top - 10.0, ground.bottom + 10.0);
    for ((y, coil), place) in order.into_iter().zip(places) {
        let last = coil.edges().last().map_or(0.0, |(_, right)| right);
        let inset = (0.25 * coil.sized.across_lane.m * ground.scale).min(8.0);
        let foot = (ground.x(last) - inset, y);
        sheet.line("fine", foot, (LETTERS - RADIUS, place));
        sheet.circle("wiredot", foot, 1.8);
        sheet.circle("balloon", (LETTERS, place), RADIUS);
        sheet.text("strong middle", (LETTERS, place + 0.36 * SIZE), &coil.letter.to_string());
    }
}
