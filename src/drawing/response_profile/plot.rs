//! The curve: change over the way of the vehicle's front, the threshold, and where the unit switches.

use crate::calculation::vehicle_response::{ProfilePoint, VehicleResponseReport};
use crate::drawing::axis::ticks;
use crate::drawing::letters::{SIZE, width};
use crate::drawing::sheet::{MARGIN, Point, Sheet, WIDTH};
use crate::drawing::spread::spread;
use crate::drawing::units::{number, other};
use crate::drawing::words::lines;
use crate::quantity::UnitSystem;
use crate::quantity::output::{PlanLength, round};

/// The left and right edge of the curve.
const LEFT: f64 = 54.0;
/// See [`LEFT`].
const RIGHT: f64 = WIDTH - 14.0;
/// How high the curve is drawn.
const HEIGHT: f64 = 150.0;
/// How far above the highest figure the axis reaches.
const HEADROOM: f64 = 1.08;
/// The least distance of two figures beside the axis of changes.
const BETWEEN_FIGURES: f64 = 14.0;

/// The figures and the scales of a curve.
pub struct Plot {
    system: UnitSystem,
    top: f64,
    bottom: f64,
    /// First and last position, in the caller's system and the other.
    ways: [(f64, f64); 2],
    most: f64,
    threshold: f64,
    /// Positions in the caller's system with the change there.
    points: Vec<(f64, f64)>,
    /// Where the unit switches, what it does there, and whether it is on from there.
    switches: Vec<(f64, &'static str)>,
    /// Stretches in which the unit is on.
    on: Vec<(f64, f64)>,
}

impl Plot {
    /// The plot of a report, drawn from `top` down.
    pub fn of(report: &VehicleResponseReport, system: UnitSystem, top: f64) -> Self {
        let own = |length: PlanLength| number(length, system);
        let threshold = report.threshold_percent;
        let way = |system| {
            let end = |point: Option<&ProfilePoint>| point.map_or(0.0, |point| number(point.position, system));
            (end(report.profile.first()), end(report.profile.last()))
        };
        let mut switches = Vec::new();
        if let Some((first, last)) = report.switches_on_at.zip(report.switches_off_at) {
            switches.push((own(first), "on"));
            for gap in &report.drop_outs {
                switches.extend([(own(gap.from), "lets go"), (own(gap.to), "on again")]);
            }
            switches.push((own(last), "off"));
        }
        let on = switches.chunks(2).map(|pair| (pair[0].0, pair[1].0)).collect();
        // The switching points and the peak belong to the curve, however few points it was asked to have.
        let mut points: Vec<_> =
            report.profile.iter().map(|point| (own(point.position), point.change_percent)).collect();
        points.push((own(report.peak_position), report.peak_change_percent));
        let (begin, end) = way(system);
        let inner = |position: &f64| (begin..end).contains(position) && *position > begin;
        points
            .extend(switches.iter().map(|(position, _)| *position).filter(inner).map(|position| (position, threshold)));
        points.sort_by(|a, b| a.0.total_cmp(&b.0));
        let top = top + lines(2) + 10.0;
        Self {
            system,
            top,
            bottom: top + HEIGHT,
            ways: [way(system), way(other(system))],
            most: HEADROOM * report.peak_change_percent.max(threshold),
            threshold,
            points,
            switches,
            on,
        }
    }

    /// A place on the way, across the sheet.
    pub fn place(&self, length: PlanLength) -> f64 {
        self.x(number(length, self.system))
    }

    /// A position in the caller's system, across the sheet.
    fn x(&self, position: f64) -> f64 {
        along(self.ways[0], position)
    }

    /// The left edge of the curve.
    pub const LEFT: f64 = LEFT;

    fn at(&self, (position, change): (f64, f64)) -> Point {
        (self.x(position), self.bottom - HEIGHT * change / self.most)
    }

    /// Draws the curve with its axes; gives the lower edge.
    pub fn draw(&self, sheet: &mut Sheet) -> f64 {
        self.stretches(sheet);
        self.changes(sheet);
        let curve: Vec<_> = self.points.iter().map(|point| self.at(*point)).collect();
        sheet.polyline("wire", &curve);
        let level = self.at((0.0, self.threshold)).1;
        sheet.line("dashed", (LEFT, level), (RIGHT, level));
        self.switch_points(sheet, level);
        sheet.line("line", (LEFT, self.bottom), (RIGHT, self.bottom));
        self.positions(sheet)
    }

    /// Where the unit is on: hatched below the threshold.
    fn stretches(&self, sheet: &mut Sheet) {
        for (from, to) in &self.on {
            let (from, to) = (self.at((*from, 0.0)), self.at((*to, self.threshold)));
            sheet.hatch("fine", from, to, 5.0);
        }
    }

    /// The axis of changes, the threshold's figure in bold on it.
    fn changes(&self, sheet: &mut Sheet) {
        sheet.text("", (MARGIN, self.top - lines(1) - 12.0), "Change at the unit, %");
        sheet.line("line", (LEFT, self.top - 2.0), (LEFT, self.bottom));
        let threshold = self.at((0.0, self.threshold)).1;
        let figure = |sheet: &mut Sheet, class: &str, y: f64, change: f64| {
            sheet.line("line", (LEFT - 3.0, y), (LEFT, y));
            sheet.text(class, (LEFT - 5.0, y + 0.36 * SIZE), &round(change, 3).to_string());
        };
        figure(sheet, "strong end", threshold, self.threshold);
        for change in ticks(0.0, self.most, 5) {
            let y = self.at((0.0, change)).1;
            if (y - threshold).abs() >= BETWEEN_FIGURES {
                figure(sheet, "end", y, change);
            }
        }
    }

    /// A mark on the curve for each switching, its name above the plot.
    fn switch_points(&self, sheet: &mut Sheet, level: f64) {
        let wanted: Vec<_> =
            self.switches.iter().map(|(position, name)| (self.x(*position), width(name, SIZE, true) + 4.0)).collect();
        let places = spread(&wanted, LEFT - 12.0, WIDTH - 2.0);
        let foot = self.top - 3.0;
        for (((x, _), (_, name)), place) in wanted.iter().zip(&self.switches).zip(places) {
            sheet.polyline("fine", &[(place, foot - 4.0), (*x, foot + 4.0), (*x, level)]);
            sheet.circle("dot", (*x, level), 2.6);
            sheet.text("strong middle", (place, foot - 6.0), name);
        }
    }

    /// The axis of the way, in both systems; gives its lower edge.
    fn positions(&self, sheet: &mut Sheet) -> f64 {
        let row = |sheet: &mut Sheet, line: usize, way: (f64, f64), shown: &dyn Fn(f64) -> String| {
            for tick in ticks(way.0, way.1, 6) {
                let x = along(way, tick);
                let y = self.bottom + 4.0 + lines(line);
                if line == 1 {
                    sheet.line("line", (x, self.bottom), (x, self.bottom + 4.0));
                }
                let words = shown(tick).replace('-', "−");
                let half = width(&words, SIZE, false) / 2.0;
                sheet.text("middle", (x.clamp(MARGIN + half, WIDTH - 2.0 - half), y), &words);
            }
        };
        row(sheet, 1, self.ways[0], &|tick| tick.to_string());
        row(sheet, 2, self.ways[1], &|tick| format!("[{tick}]"));
        let units = match self.system {
            UnitSystem::UsCustomary => "ft [m]",
            UnitSystem::Metric => "m [ft]",
        };
        let caption = format!("Front of the vehicle past the leading edge, {units}");
        sheet.paragraph("middle", (f64::midpoint(LEFT, RIGHT), self.bottom + 6.0 + lines(2)), RIGHT - LEFT, &caption)
            + 4.0
    }
}

/// A position on a way between two ends, across the sheet.
fn along((from, to): (f64, f64), position: f64) -> f64 {
    LEFT + (RIGHT - LEFT) * (position - from) / (to - from).max(1e-9)
}
