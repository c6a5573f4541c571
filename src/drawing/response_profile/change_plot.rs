//! The curve: change over the position of the vehicle's front, the threshold, and where the unit switches; below it the loop and
//! the vehicle to the same scale.

use crate::calculation::report::Statement;
use crate::calculation::vehicle_response::{ProfilePoint, VehicleResponseReport};
use crate::drawing::canvas::{Canvas, CanvasPoint, MARGIN, WIDTH};
use crate::drawing::dimension_text::{format_signed, length_number, other_system};
use crate::drawing::label_layout::{axis_ticks, spread_labels};
use crate::drawing::text_metrics::{MIDDLE_TO_BASELINE, TEXT_SIZE, lines_height, max_width};
use crate::quantity::UnitSystem;
use crate::quantity::output::{PlanLength, round};
use crate::wording::{Reader, unit_sign};

/// The left edge of the curve.
const LEFT: f64 = 54.0;
/// The right edge of the curve.
const RIGHT: f64 = WIDTH - 14.0;
/// How high the curve is drawn.
const HEIGHT: f64 = 150.0;
/// The end of the axis of changes, as a multiple of the highest figure.
const HEADROOM: f64 = 1.08;
/// The smallest distance of two figures beside the axis of changes.
const MIN_FIGURE_DISTANCE: f64 = 14.0;
/// The height of the bars that stand for the vehicle and the loop.
const BAR_HEIGHT: f64 = 7.0;
/// From bar to bar.
const BAR_STEP: f64 = 17.0;

/// The figures and the scales of a curve.
pub struct ChangePlot {
    reader: Reader,
    top: f64,
    bottom: f64,
    /// First and last position, in the caller's system and the other.
    ranges: [(f64, f64); 2],
    /// The change at the end of the axis, percent.
    axis_end: f64,
    threshold: f64,
    /// Positions in the caller's system with the change there.
    points: Vec<(f64, f64)>,
    /// Where the unit switches, and what it does there.
    switches: Vec<(f64, String)>,
    /// Where the unit is on, from and to.
    on: Vec<(f64, f64)>,
}

impl ChangePlot {
    /// The plot of a report, drawn from `top` down.
    pub fn new(report: &VehicleResponseReport, reader: Reader, top: f64) -> Self {
        let own = |length: PlanLength| length_number(length, reader.system);
        let threshold = report.threshold_percent;
        let range = |system| {
            let end = |point: Option<&ProfilePoint>| point.map_or(0.0, |point| length_number(point.position, system));
            (end(report.profile.first()), end(report.profile.last()))
        };
        let mut switches = Vec::new();
        let switching = |what: &'static str| {
            reader.say(&Statement::new("drawings-profile-switching").code("what", what)).into_owned()
        };
        if let Some((first, last)) = report.switches_on_at.zip(report.switches_off_at) {
            switches.push((own(first), switching("on")));
            for gap in report.drop_outs.iter().filter(|gap| gap.comes_back_before(last)) {
                switches.extend([(own(gap.from), switching("lets_go")), (own(gap.to), switching("on_again"))]);
            }
            let is_release = report.drop_outs.iter().all(|gap| gap.comes_back_before(last));
            switches.push((own(last), switching(if is_release { "off" } else { "lets_go" })));
        }
        let on = switches.chunks(2).map(|pair| (pair[0].0, pair[1].0)).collect();
        // The switching points and the peak are part of the curve, however few points the request asked for.
        let mut points: Vec<_> =
            report.profile.iter().map(|point| (own(point.position), point.change_percent)).collect();
        points.push((own(report.peak_position), report.peak_change_percent));
        let (begin, end) = range(reader.system);
        let inner = |position: &f64| (begin..end).contains(position) && *position > begin;
        points
            .extend(switches.iter().map(|(position, _)| *position).filter(inner).map(|position| (position, threshold)));
        points.sort_by(|a, b| a.0.total_cmp(&b.0));
        let top = top + lines_height(2) + 10.0;
        Self {
            reader,
            top,
            bottom: top + HEIGHT,
            ranges: [range(reader.system), range(other_system(reader.system))],
            axis_end: HEADROOM * report.peak_change_percent.max(threshold),
            threshold,
            points,
            switches,
            on,
        }
    }

    /// The x coordinate of a position of the report.
    fn length_x(&self, length: PlanLength) -> f64 {
        self.x(length_number(length, self.reader.system))
    }

    /// The x coordinate of a position in the caller's system.
    fn x(&self, position: f64) -> f64 {
        position_x(self.ranges[0], position)
    }

    fn at(&self, (position, change): (f64, f64)) -> CanvasPoint {
        (self.x(position), self.bottom - HEIGHT * change / self.axis_end)
    }

    /// Draws the curve with its axes; returns the lower edge.
    pub fn draw(&self, canvas: &mut Canvas) -> f64 {
        self.draw_on_ranges(canvas);
        self.draw_change_axis(canvas);
        let curve: Vec<_> = self.points.iter().map(|point| self.at(*point)).collect();
        canvas.polyline("wire", &curve);
        let level = self.at((0.0, self.threshold)).1;
        canvas.line("dashed", (LEFT, level), (RIGHT, level));
        self.draw_switch_points(canvas, level);
        canvas.line("line", (LEFT, self.bottom), (RIGHT, self.bottom));
        self.draw_position_axis(canvas)
    }

    /// Hatches where the unit is on, below the threshold.
    fn draw_on_ranges(&self, canvas: &mut Canvas) {
        for (from, to) in &self.on {
            let (from, to) = (self.at((*from, 0.0)), self.at((*to, self.threshold)));
            canvas.hatch("fine", from, to, 5.0);
        }
    }

    /// Draws the axis of changes, with the threshold's figure in bold.
    fn draw_change_axis(&self, canvas: &mut Canvas) {
        let caption = self.reader.say(&Statement::new("drawings-profile-change"));
        canvas.text("", (MARGIN, self.top - lines_height(1) - 12.0), &caption);
        canvas.line("line", (LEFT, self.top - 2.0), (LEFT, self.bottom));
        let threshold = self.at((0.0, self.threshold)).1;
        let figure = |canvas: &mut Canvas, class: &str, y: f64, change: f64| {
            canvas.line("line", (LEFT - 3.0, y), (LEFT, y));
            canvas.text(class, (LEFT - 5.0, y + MIDDLE_TO_BASELINE), &self.reader.number(round(change, 3)));
        };
        figure(canvas, "strong end", threshold, self.threshold);
        for change in axis_ticks(0.0, self.axis_end, 5) {
            let y = self.at((0.0, change)).1;
            if (y - threshold).abs() >= MIN_FIGURE_DISTANCE {
                figure(canvas, "end", y, change);
            }
        }
    }

    /// Marks each switching on the curve, with its name above the plot.
    fn draw_switch_points(&self, canvas: &mut Canvas, level: f64) {
        let wanted: Vec<_> = self
            .switches
            .iter()
            .map(|(position, name)| (self.x(*position), max_width(name, TEXT_SIZE, true) + 4.0))
            .collect();
        let middles = spread_labels(&wanted, LEFT - 12.0, WIDTH - 2.0);
        let leader = self.top - 3.0;
        for (((x, _), (_, name)), middle) in wanted.iter().zip(&self.switches).zip(middles) {
            canvas.polyline("fine", &[(middle, leader - 4.0), (*x, leader + 4.0), (*x, level)]);
            canvas.circle("dot", (*x, level), 2.6);
            canvas.text("strong middle", (middle, leader - 6.0), name);
        }
    }

    /// Draws the axis of positions, in both systems; returns its lower edge.
    fn draw_position_axis(&self, canvas: &mut Canvas) -> f64 {
        let row = |canvas: &mut Canvas, line: usize, range: (f64, f64), format_figure: &dyn Fn(f64) -> String| {
            for tick in axis_ticks(range.0, range.1, 6) {
                let x = position_x(range, tick);
                let y = self.bottom + 4.0 + lines_height(line);
                if line == 1 {
                    canvas.line("line", (x, self.bottom), (x, self.bottom + 4.0));
                }
                let words = format_figure(tick);
                let half = max_width(&words, TEXT_SIZE, false) / 2.0;
                canvas.text("middle", (x.clamp(MARGIN + half, WIDTH - 2.0 - half), y), &words);
            }
        };
        row(canvas, 1, self.ranges[0], &|tick| format_signed(tick, self.reader));
        row(canvas, 2, self.ranges[1], &|tick| format!("[{}]", format_signed(tick, self.reader)));
        let unit = |system| match system {
            UnitSystem::UsCustomary => unit_sign("ft", self.reader.language),
            UnitSystem::Metric => unit_sign("m", self.reader.language),
        };
        let (own, other) = (unit(self.reader.system), unit(other_system(self.reader.system)));
        let caption = Statement::new("drawings-profile-positions").text("unit", own).text("other_unit", other);
        let caption = self.reader.say(&caption);
        canvas.paragraph(
            "middle",
            (f64::midpoint(LEFT, RIGHT), self.bottom + 7.0 + lines_height(2)),
            // The right margin leaves so much at both sides of the middle.
            RIGHT - LEFT + 22.0,
            &caption,
        ) + 4.0
    }

    /// Draws the vehicle where the change peaks, and the loop; returns the lower edge.
    pub fn draw_vehicle_and_loop(&self, canvas: &mut Canvas, report: &VehicleResponseReport, top: f64) -> f64 {
        let along = report.inputs.r#loop.along_travel.into();
        let (front, length) = (report.peak_position, report.inputs.vehicle_length);
        let rear = self.x(length_number(front, self.reader.system) - length_number(length, self.reader.system));
        let name = |canvas: &mut Canvas, top: f64, words: &str| {
            canvas.text("end", (LEFT - 5.0, top + BAR_HEIGHT / 2.0 + MIDDLE_TO_BASELINE), words);
        };

        let (left, right) = (rear.max(LEFT), self.length_x(front));
        name(canvas, top, &self.reader.say(&Statement::new("drawings-profile-vehicle")));
        let is_whole = rear >= LEFT;
        let bottom = top + BAR_HEIGHT;
        let outline =
            [(left, top), (right - 4.0, top), (right, top + BAR_HEIGHT / 2.0), (right - 4.0, bottom), (left, bottom)];
        if is_whole {
            canvas.polygon("line", &outline);
        } else {
            // Its rear lies before the first position of the curve.
            canvas.polyline("line", &outline);
        }

        let top = top + BAR_STEP;
        name(canvas, top, &self.reader.say(&Statement::new("drawings-profile-loop")));
        let leading_edge = self.length_x(PlanLength::zero());
        let (from, to) = ((leading_edge, top), (self.length_x(along), top + BAR_HEIGHT));
        canvas.hatch("wire", from, to, 5.0);
        canvas.rectangle("wire", from, to);
        top + BAR_STEP
    }
}

/// The x coordinate of a position on an axis between two ends.
fn position_x((from, to): (f64, f64), position: f64) -> f64 {
    LEFT + (RIGHT - LEFT) * (position - from) / (to - from).max(1e-9)
}
