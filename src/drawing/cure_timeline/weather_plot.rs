//! The temperatures of slab, air and dew point over the hours, with the limits of the sealant.

use super::time_axis::{LEFT, RIGHT, TimeAxis};
use crate::calculation::cure_guidance::{CureGuidanceReport, CureHour};
use crate::calculation::report::Statement;
use crate::drawing::canvas::{Canvas, INNER, MARGIN};
use crate::drawing::dimension_text::{
    format_difference_both, format_signed, format_temperature_both, other_system, temperature_number,
};
use crate::drawing::label_layout::{axis_ticks, spread_labels};
use crate::drawing::text_metrics::{MIDDLE_TO_BASELINE, TEXT_SIZE, lines_height, max_width};
use crate::quantity::UnitSystem;
use crate::quantity::output::{TemperatureDifferenceValue, TemperatureValue};
use crate::wording::Reader;

/// How high the plot is.
const HEIGHT: f64 = 150.0;
/// The space above and below the curves, as a share of what they span.
const SPACE_SHARE: f64 = 0.06;
/// The length of the sample of a line in the key.
const SAMPLE_LENGTH: f64 = 24.0;

/// The temperatures over the hours.
pub struct WeatherPlot<'a> {
    report: &'a CureGuidanceReport,
    hours: &'a [&'a CureHour],
    time_axis: &'a TimeAxis,
    reader: Reader,
    top: f64,
    /// The ends of the axis in the caller's system and in the other.
    ends: [(f64, f64); 2],
}

/// The dew point plus the margin that the slab must keep above it.
fn dew_point_limit(hour: &CureHour, margin: TemperatureDifferenceValue) -> TemperatureValue {
    TemperatureValue(hour.dew_point.0 + margin.0)
}

impl<'a> WeatherPlot<'a> {
    /// The plot of a report, drawn from `top` down.
    pub fn new(
        report: &'a CureGuidanceReport,
        hours: &'a [&'a CureHour],
        time_axis: &'a TimeAxis,
        reader: Reader,
        top: f64,
    ) -> Self {
        let margin = report.inputs.least_dew_point_margin;
        let ends = |system| {
            let of_hours =
                hours.iter().flat_map(|hour| [hour.air, hour.surface, hour.dew_point, dew_point_limit(hour, margin)]);
            let values = of_hours.chain([report.inputs.sealant.minimum_application_temperature]);
            let (low, high) = values
                .map(|value| temperature_number(value, system))
                .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| (low.min(value), high.max(value)));
            let space = SPACE_SHARE * (high - low).max(1.0);
            (low - space, high + space)
        };
        Self {
            report,
            hours,
            time_axis,
            reader,
            top: top + lines_height(1) + 6.0,
            ends: [ends(reader.system), ends(other_system(reader.system))],
        }
    }

    fn bottom(&self) -> f64 {
        self.top + HEIGHT
    }

    fn number_y(&self, value: f64, (low, high): (f64, f64)) -> f64 {
        self.bottom() - HEIGHT * (value - low) / (high - low)
    }

    fn y(&self, value: TemperatureValue) -> f64 {
        self.number_y(temperature_number(value, self.reader.system), self.ends[0])
    }

    /// A value of each hour as steps: each lasts until the next.
    fn steps(&self, of: impl Fn(&CureHour) -> TemperatureValue) -> Vec<(f64, f64)> {
        let hours = self.hours;
        let mut points = Vec::with_capacity(2 * hours.len());
        for (index, hour) in hours.iter().enumerate() {
            let until = hours.get(index + 1).map_or(RIGHT, |next| self.time_axis.time_x(&next.time));
            let y = self.y(of(hour));
            points.extend([(self.time_axis.time_x(&hour.time), y), (until, y)]);
        }
        points
    }

    /// Draws the plot with its axes and its key; returns the lower edge.
    pub fn draw(&self, canvas: &mut Canvas) -> f64 {
        let margin = self.report.inputs.least_dew_point_margin;
        let mut band = self.steps(|hour| dew_point_limit(hour, margin));
        band.extend(self.steps(|hour| hour.dew_point).into_iter().rev());
        canvas.polygon("fill", &band);
        for hours in self.time_axis.midnights() {
            let x = self.time_axis.x(hours);
            canvas.line("fine", (x, self.top), (x, self.bottom()));
        }
        canvas.polyline("dashed", &self.steps(|hour| hour.dew_point));
        canvas.polyline("wire", &self.steps(|hour| hour.air));
        canvas.polyline("heavy", &self.steps(|hour| hour.surface));
        for value in self.limits() {
            canvas.line("chain", (LEFT, self.y(value)), (RIGHT, self.y(value)));
        }
        self.draw_temperature_axes(canvas);
        self.draw_moments(canvas);
        let bottom = self.time_axis.draw(canvas, self.reader, self.bottom());
        self.draw_key(canvas, bottom + 2.0)
    }

    /// The lowest temperature of application, and the highest where it lies within the plot.
    fn limits(&self) -> impl Iterator<Item = TemperatureValue> {
        let sealant = &self.report.inputs.sealant;
        let highest = sealant.maximum_application_temperature.filter(|value| {
            let value = temperature_number(*value, self.reader.system);
            value < self.ends[0].1 && value > self.ends[0].0
        });
        std::iter::once(sealant.minimum_application_temperature).chain(highest)
    }

    fn draw_temperature_axes(&self, canvas: &mut Canvas) {
        let units = |system| if system == UnitSystem::UsCustomary { "°F" } else { "°C" };
        let baseline = self.top - 6.0;
        canvas.text("end", (LEFT - 5.0, baseline), units(self.reader.system));
        canvas.text("", (RIGHT + 5.0, baseline), &format!("[{}]", units(other_system(self.reader.system))));
        for x in [LEFT, RIGHT] {
            canvas.line("line", (x, self.top), (x, self.bottom()));
        }
        // A figure must not overlap the units above or the times below.
        let is_free = |y: f64| y > self.top + 2.0 && y < self.bottom() - 5.0;
        for value in axis_ticks(self.ends[0].0, self.ends[0].1, 6) {
            let y = self.number_y(value, self.ends[0]);
            if is_free(y) {
                canvas.line("line", (LEFT - 3.0, y), (LEFT, y));
                canvas.text("end", (LEFT - 5.0, y + MIDDLE_TO_BASELINE), &format_signed(value, self.reader));
            }
        }
        for value in axis_ticks(self.ends[1].0, self.ends[1].1, 6) {
            let y = self.number_y(value, self.ends[1]);
            if is_free(y) {
                canvas.line("line", (RIGHT, y), (RIGHT + 3.0, y));
                canvas.text(
                    "",
                    (RIGHT + 5.0, y + MIDDLE_TO_BASELINE),
                    &format!("[{}]", format_signed(value, self.reader)),
                );
            }
        }
    }

    /// Draws the start, and when traffic is needed where that lies within the weather.
    fn draw_moments(&self, canvas: &mut Canvas) {
        let inputs = &self.report.inputs;
        let moment = |moment: &'static str| {
            self.reader.say(&Statement::new("drawings-cure-moment").code("moment", moment)).into_owned()
        };
        let mut moments = vec![(self.time_axis.time_x(&inputs.start), moment("start"), "line")];
        let needed = inputs.needed_open_by.as_ref().filter(|needed| self.time_axis.hours(needed) <= self.time_axis.end);
        moments.extend(needed.map(|needed| (self.time_axis.time_x(needed), moment("needed"), "dashed")));
        let wanted: Vec<_> = moments.iter().map(|(x, name, _)| (*x, max_width(name, TEXT_SIZE, true) + 6.0)).collect();
        let middles = spread_labels(&wanted, LEFT - 2.0, RIGHT + 2.0);
        for ((x, name, class), middle) in moments.iter().zip(middles) {
            canvas.text("strong middle", (middle, self.top - 6.0), name);
            canvas.line("fine", (middle, self.top - 4.0), (*x, self.top));
            canvas.line(class, (*x, self.top), (*x, self.bottom()));
        }
    }

    /// Draws what each line means; returns the lower edge. A figure has no key.
    fn draw_key(&self, canvas: &mut Canvas, top: f64) -> f64 {
        if canvas.is_figure() {
            return top;
        }
        let inputs = &self.report.inputs;
        let both = |value| format_temperature_both(value, self.reader);
        let sealant = &inputs.sealant;
        let highest = sealant.maximum_application_temperature;
        let limits = Statement::new("drawings-cure-limits")
            .text("least", both(sealant.minimum_application_temperature))
            .code("limits", if highest.is_some() { "two" } else { "one" })
            .text("most", highest.map_or_else(String::new, both));
        let assumed = self.hours.iter().filter(|hour| hour.surface_is_assumed).count();
        let measured = match assumed {
            0 => "all",
            count if count == self.hours.len() => "none",
            _ => "some",
        };
        let slab = Statement::new("drawings-cure-slab")
            .code("measured", measured)
            .count("assumed", assumed as u64)
            .count("all", self.hours.len() as u64);
        let margin = format_difference_both(inputs.least_dew_point_margin, self.reader);
        let band = Statement::new("drawings-cure-dew-point").text("margin", margin);
        let rows =
            [("heavy", slab), ("wire", Statement::new("drawings-cure-air")), ("dashed", band), ("chain", limits)];
        let left = MARGIN + SAMPLE_LENGTH + 6.0;
        let mut bottom = top;
        for (class, words) in rows {
            let y = bottom + 0.5 * lines_height(1) - 1.0;
            if class == "dashed" {
                canvas.rectangle("fill", (MARGIN, y - 6.0), (MARGIN + SAMPLE_LENGTH, y));
            }
            canvas.line(class, (MARGIN, y), (MARGIN + SAMPLE_LENGTH, y));
            bottom = canvas.paragraph("", (left, bottom), INNER - SAMPLE_LENGTH - 6.0, &self.reader.say(&words)) + 1.0;
        }
        bottom
    }
}
