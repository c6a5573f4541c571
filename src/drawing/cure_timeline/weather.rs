//! The temperatures of slab, air and dew point over the hours, with what the sealant asks for.

use super::clock::{Clock, LEFT, RIGHT};
use crate::calculation::cure_guidance::{CureGuidanceReport, CureHour};
use crate::drawing::axis::ticks;
use crate::drawing::letters::{SIZE, width};
use crate::drawing::sheet::{INNER, MARGIN, Sheet};
use crate::drawing::spread::spread;
use crate::drawing::units::other;
use crate::drawing::words::lines;
use crate::quantity::UnitSystem;
use crate::quantity::output::{TemperatureDifferenceValue, TemperatureValue, round};

/// How high the plot is.
const HEIGHT: f64 = 150.0;
/// The room above and below the curves, as a share of what they span.
const ROOM: f64 = 0.06;
/// How long the sample of a line is.
const SAMPLE: f64 = 24.0;

/// The temperatures over the hours.
pub struct Plot<'a> {
    report: &'a CureGuidanceReport,
    clock: &'a Clock,
    system: UnitSystem,
    top: f64,
    /// The ends of the axis in the caller's system and in the other.
    ends: [(f64, f64); 2],
}

/// A temperature on a scale.
fn degrees(value: TemperatureValue, system: UnitSystem) -> f64 {
    match system {
        UnitSystem::UsCustomary => value.f,
        UnitSystem::Metric => value.c,
    }
}

/// A temperature in both systems, to a tenth of a degree: `40 °F [4.4 °C]`.
pub fn both(value: TemperatureValue, system: UnitSystem) -> String {
    two(value.f, value.c, system)
}

/// A difference in both systems.
pub fn both_differences(value: TemperatureDifferenceValue, system: UnitSystem) -> String {
    two(value.f, value.c, system)
}

fn two(f: f64, c: f64, system: UnitSystem) -> String {
    let write = |value: f64, unit: &str| format!("{}\u{a0}{unit}", round(value, 1)).replace('-', "−");
    let (us, metric) = (write(f, "°F"), write(c, "°C"));
    match system {
        UnitSystem::UsCustomary => format!("{us} [{metric}]"),
        UnitSystem::Metric => format!("{metric} [{us}]"),
    }
}

/// The dew point with the margin that is asked for on it.
fn limit(hour: &CureHour, margin: TemperatureDifferenceValue) -> TemperatureValue {
    TemperatureValue { f: hour.dew_point.f + margin.f, c: hour.dew_point.c + margin.c }
}

impl<'a> Plot<'a> {
    /// The plot of a report, drawn from `top` down.
    pub fn of(report: &'a CureGuidanceReport, clock: &'a Clock, system: UnitSystem, top: f64) -> Self {
        let margin = report.inputs.least_dew_point_margin;
        let ends = |system| {
            let of_hours =
                report.hourly.iter().flat_map(|hour| [hour.air, hour.surface, hour.dew_point, limit(hour, margin)]);
            let values = of_hours.chain([report.inputs.sealant.minimum_application_temperature]);
            let (low, high) = values
                .map(|value| degrees(value, system))
                .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| (low.min(value), high.max(value)));
            let room = ROOM * (high - low).max(1.0);
            (low - room, high + room)
        };
        Self { report, clock, system, top: top + lines(1) + 6.0, ends: [ends(system), ends(other(system))] }
    }

    fn bottom(&self) -> f64 {
        self.top + HEIGHT
    }

    fn height(&self, value: f64, (low, high): (f64, f64)) -> f64 {
        self.bottom() - HEIGHT * (value - low) / (high - low)
    }

    fn y(&self, value: TemperatureValue) -> f64 {
        self.height(degrees(value, self.system), self.ends[0])
    }

    /// A value of each hour, held until the next.
    fn steps(&self, of: impl Fn(&CureHour) -> TemperatureValue) -> Vec<(f64, f64)> {
        let hours = &self.report.hourly;
        let mut points = Vec::with_capacity(2 * hours.len());
        for (index, hour) in hours.iter().enumerate() {
            let until = hours.get(index + 1).map_or(RIGHT, |next| self.clock.place(&next.time));
            let y = self.y(of(hour));
            points.extend([(self.clock.place(&hour.time), y), (until, y)]);
        }
        points
    }

    /// Draws it with its axes and what its lines mean; gives the lower edge.
    pub fn draw(&self, sheet: &mut Sheet) -> f64 {
        let margin = self.report.inputs.least_dew_point_margin;
        let mut band = self.steps(|hour| limit(hour, margin));
        band.extend(self.steps(|hour| hour.dew_point).into_iter().rev());
        sheet.polygon("fill", &band);
        for hours in self.clock.midnights() {
            let x = self.clock.x(hours);
            sheet.line("fine", (x, self.top), (x, self.bottom()));
        }
        sheet.polyline("dashed", &self.steps(|hour| hour.dew_point));
        sheet.polyline("wire", &self.steps(|hour| hour.air));
        sheet.polyline("heavy", &self.steps(|hour| hour.surface));
        for value in self.limits() {
            sheet.line("chain", (LEFT, self.y(value)), (RIGHT, self.y(value)));
        }
        self.figures(sheet);
        self.moments(sheet);
        let bottom = self.clock.axis(sheet, self.bottom());
        self.key(sheet, bottom + 2.0)
    }

    /// The least temperature of application, and the greatest where it lies within the plot.
    fn limits(&self) -> impl Iterator<Item = TemperatureValue> {
        let sealant = &self.report.inputs.sealant;
        let greatest = sealant.maximum_application_temperature.filter(|value| {
            let value = degrees(*value, self.system);
            value < self.ends[0].1 && value > self.ends[0].0
        });
        std::iter::once(sealant.minimum_application_temperature).chain(greatest)
    }

    fn figures(&self, sheet: &mut Sheet) {
        let units = |system| if system == UnitSystem::UsCustomary { "°F" } else { "°C" };
        let baseline = self.top - 6.0;
        sheet.text("end", (LEFT - 5.0, baseline), units(self.system));
        sheet.text("", (RIGHT + 5.0, baseline), &format!("[{}]", units(other(self.system))));
        for x in [LEFT, RIGHT] {
            sheet.line("line", (x, self.top), (x, self.bottom()));
        }
        let write = |value: f64| value.to_string().replace('-', "−");
        // Neither the units above nor the times below.
        let is_free = |y: f64| y > self.top + 2.0 && y < self.bottom() - 5.0;
        for value in ticks(self.ends[0].0, self.ends[0].1, 6) {
            let y = self.height(value, self.ends[0]);
            if is_free(y) {
                sheet.line("line", (LEFT - 3.0, y), (LEFT, y));
                sheet.text("end", (LEFT - 5.0, y + 0.36 * SIZE), &write(value));
            }
        }
        for value in ticks(self.ends[1].0, self.ends[1].1, 6) {
            let y = self.height(value, self.ends[1]);
            if is_free(y) {
                sheet.line("line", (RIGHT, y), (RIGHT + 3.0, y));
                sheet.text("", (RIGHT + 5.0, y + 0.36 * SIZE), &format!("[{}]", write(value)));
            }
        }
    }

    /// The start, and when traffic is needed where that lies within the weather.
    fn moments(&self, sheet: &mut Sheet) {
        let inputs = &self.report.inputs;
        let mut moments = vec![(self.clock.place(&inputs.start), "start", "line")];
        let needed = inputs.needed_open_by.as_ref().filter(|needed| self.clock.hours(needed) <= self.clock.end);
        moments.extend(needed.map(|needed| (self.clock.place(needed), "traffic needed", "dashed")));
        let wanted: Vec<_> = moments.iter().map(|(x, name, _)| (*x, width(name, SIZE, true) + 6.0)).collect();
        let places = spread(&wanted, LEFT - 2.0, RIGHT + 2.0);
        for ((x, name, class), place) in moments.iter().zip(places) {
            sheet.text("strong middle", (place, self.top - 6.0), name);
            sheet.line("fine", (place, self.top - 4.0), (*x, self.top));
            sheet.line(class, (*x, self.top), (*x, self.bottom()));
        }
    }

    /// What each line means.
    fn key(&self, sheet: &mut Sheet, top: f64) -> f64 {
        let inputs = &self.report.inputs;
        let mut limits =
            format!("least to apply at: {}", both(inputs.sealant.minimum_application_temperature, self.system));
        if let Some(greatest) = inputs.sealant.maximum_application_temperature {
            limits += &format!("; at most {}", both(greatest, self.system));
        }
        let assumed = self.report.hourly.iter().filter(|hour| hour.surface_is_assumed).count();
        let slab = match assumed {
            0 => "slab, measured".to_owned(),
            count if count == self.report.hourly.len() => "slab, not measured: taken from the air".to_owned(),
            count => format!("slab; {count} of {} rows not measured: taken from the air", self.report.hourly.len()),
        };
        let band = format!(
            "dew point, and the {} over it (shaded) in which the slab must not lie: water condenses",
            both_differences(inputs.least_dew_point_margin, self.system)
        );
        let rows = [("heavy", slab), ("wire", "air".to_owned()), ("dashed", band), ("chain", limits)];
        let left = MARGIN + SAMPLE + 6.0;
        let mut bottom = top;
        for (class, words) in rows {
            let y = bottom + 0.5 * lines(1) - 1.0;
            if class == "dashed" {
                sheet.rectangle("fill", (MARGIN, y - 6.0), (MARGIN + SAMPLE, y));
            }
            sheet.line(class, (MARGIN, y), (MARGIN + SAMPLE, y));
            bottom = sheet.paragraph("", (left, bottom), INNER - SAMPLE - 6.0, &words) + 1.0;
        }
        bottom
    }
}
