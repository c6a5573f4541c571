//! The meters, what a fault predicts that they show, and how well a reading agrees with that.

use crate::calculation::report::{Decimals, Statement};

/// What a meter shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum MeterReading {
    /// A number in the unit of its meter.
    Number(f64),
    /// More than the meter's range.
    OverRange,
}

impl MeterReading {
    /// Whether a resistance of this much is an open circuit: over range, or what a damp gap lets through.
    pub fn is_open(self) -> bool {
        match self {
            Self::Number(ohms) => ohms >= OPEN_FROM_OHM,
            Self::OverRange => true,
        }
    }
}

/// From this resistance on a circuit counts as open, ohm: no joint that still conducts has as much. A choice made here.
pub const OPEN_FROM_OHM: f64 = 300.0;

/// The meters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MeterKind {
    /// Insulation to earth, megohm.
    Insulation,
    /// Resistance to direct current, ohm.
    Resistance,
    /// Inductance, µH.
    Inductance,
    /// Quality factor.
    Quality,
    /// Capacitance of the open pair from wire to wire, nF.
    Capacitance,
}

/// How often a reading is worthless: a slipped clip, a wrong range, a number misheard. A choice made here.
const OUTLIER_SHARE: f64 = 0.01;

impl MeterKind {
    /// The field of the request.
    pub fn field(self) -> &'static str {
        match self {
            Self::Insulation => "insulation_megohm",
            Self::Resistance => "resistance_ohm",
            Self::Inductance => "inductance_uh",
            Self::Quality => "quality_factor",
            Self::Capacitance => "capacitance_nf",
        }
    }

    /// The unit as reports name it.
    pub fn unit(self) -> &'static str {
        match self {
            Self::Insulation => "megohm",
            Self::Resistance => "ohm",
            Self::Inductance => "uH",
            Self::Quality => "ratio",
            Self::Capacitance => "nF",
        }
    }

    /// The reading as a phrase: `Insulation of 0.3 megohm`.
    pub fn state_reading(self, reading: MeterReading) -> Statement {
        let statement = Statement::new("faults-reading").code("meter", self.field());
        match reading {
            MeterReading::Number(number) => {
                let (statement, decimals) = (statement.code("range", "number"), plain_decimals(number));
                match self {
                    Self::Insulation | Self::Resistance | Self::Inductance | Self::Capacitance => {
                        statement.quantity("measured", number, decimals, self.unit())
                    }
                    Self::Quality => statement.number("measured", number, decimals),
                }
            }
            MeterReading::OverRange => statement.code("range", "over_range"),
        }
    }

    /// A number below this counts as 0 on the logarithmic scale; unit of the meter.
    fn scale_floor(self) -> f64 {
        match self {
            Self::Insulation => 0.001,
            Self::Resistance => 0.1,
            Self::Inductance => 1.0,
            Self::Quality => 0.5,
            Self::Capacitance => 0.01,
        }
    }

    /// The greatest number that a request can hold.
    fn max_reading(self) -> f64 {
        match self {
            Self::Insulation => 1e6,
            Self::Resistance => 1e8,
            Self::Inductance => 1e5,
            Self::Quality => 1e3,
            Self::Capacitance => 1e4,
        }
    }

    /// A number on the scale of the meter: logarithmic, so that doubling weighs the same everywhere.
    fn to_scale(self, number: f64) -> f64 {
        (number.max(0.0) + self.scale_floor()).ln()
    }

    fn unscale(self, scaled: f64) -> f64 {
        (scaled.exp() - self.scale_floor()).max(0.0)
    }

    /// The likelihood of a worthless reading: any number of the range alike, or over range half the time.
    fn outlier_likelihood(self, reading: MeterReading) -> f64 {
        match reading {
            MeterReading::Number(_) => 0.5 / (self.to_scale(self.max_reading()) - self.to_scale(0.0)),
            MeterReading::OverRange => 0.5,
        }
    }
}

/// Numbers between two ends, and how far a reading strays beyond them.
#[derive(Clone, Copy, Debug)]
pub struct ReadingBand {
    /// The lower end.
    pub low: f64,
    /// The upper end.
    pub high: f64,
    /// Standard deviation of a reading round the truth, as a share of the number.
    pub relative: f64,
    /// The same as a part that does not shrink with the number, in the unit of the meter.
    pub absolute: f64,
}

impl ReadingBand {
    /// The same deviations round other ends.
    #[must_use]
    pub fn with_ends(self, low: f64, high: f64) -> Self {
        Self { low, high, ..self }
    }

    /// The middle of the ends.
    pub fn middle(self) -> f64 {
        0.5 * (self.low + self.high)
    }

    /// The ends on the meter's scale, and the deviation there.
    fn to_scale(self, meter: MeterKind) -> (f64, f64, f64) {
        let middle = self.middle();
        let deviation = (self.relative * middle + self.absolute) / (middle + meter.scale_floor());
        (meter.to_scale(self.low), meter.to_scale(self.high), deviation.max(0.01))
    }

    /// The range of readings to expect: two standard deviations beyond the ends.
    pub fn expected_range(self, meter: MeterKind) -> (f64, f64) {
        let (low, high, deviation) = self.to_scale(meter);
        (meter.unscale(low - 2.0 * deviation), meter.unscale(high + 2.0 * deviation).min(meter.max_reading()))
    }

    /// Density on the meter's scale: every number between the ends is as likely, and readings stray as the logistic
    /// distribution has it. That is close to the normal one with longer tails: a careless reading must not decide alone.
    fn density(self, meter: MeterKind, number: f64) -> f64 {
        let (low, high, deviation) = self.to_scale(meter);
        let width = deviation * 3.0_f64.sqrt() / std::f64::consts::PI;
        let scaled = meter.to_scale(number);
        let below = |end: f64| 1.0 / (1.0 + ((end - scaled) / width).exp());
        if high - low < 0.1 * width {
            let share = below(0.5 * (low + high));
            share * (1.0 - share) / width
        } else {
            (below(low) - below(high)).max(0.0) / (high - low)
        }
    }
}

/// What a fault predicts that one meter shows.
#[derive(Clone, Copy, Debug)]
pub struct Prediction {
    /// The numbers that it shows, if it shows one.
    pub band: ReadingBand,
    /// How often it shows over range instead, 0 to 1.
    pub over_range: f64,
}

impl Prediction {
    /// A number and hardly ever over range.
    pub fn of_number(band: ReadingBand) -> Self {
        Self { band, over_range: 0.001 }
    }

    /// Whether over range is more likely than a number.
    pub fn is_over_range(&self) -> bool {
        self.over_range > 0.5
    }

    /// How likely the reading is, on the meter's scale; above 0 and finite, since any reading may be worthless.
    pub fn likelihood(&self, meter: MeterKind, reading: MeterReading) -> f64 {
        (1.0 - OUTLIER_SHARE) * self.valid_likelihood(meter, reading)
            + OUTLIER_SHARE * meter.outlier_likelihood(reading)
    }

    /// Whether the prediction explains the reading better than a worthless reading would.
    pub fn explains(&self, meter: MeterKind, reading: MeterReading) -> bool {
        self.valid_likelihood(meter, reading) > OUTLIER_SHARE * meter.outlier_likelihood(reading)
    }

    /// How likely the reading is if it is not worthless.
    fn valid_likelihood(&self, meter: MeterKind, reading: MeterReading) -> f64 {
        match reading {
            MeterReading::Number(number) => (1.0 - self.over_range) * self.band.density(meter, number),
            MeterReading::OverRange => self.over_range,
        }
    }
}

/// A prediction for each meter.
#[derive(Clone, Copy, Debug)]
pub struct MeterPredictions {
    /// Of insulation.
    pub insulation: Prediction,
    /// Of resistance.
    pub resistance: Prediction,
    /// Of inductance.
    pub inductance: Prediction,
    /// Of the quality factor.
    pub quality: Prediction,
    /// Of the capacitance.
    pub capacitance: Prediction,
}

impl MeterPredictions {
    /// The prediction of a meter.
    pub fn of(&self, meter: MeterKind) -> &Prediction {
        match meter {
            MeterKind::Insulation => &self.insulation,
            MeterKind::Resistance => &self.resistance,
            MeterKind::Inductance => &self.inductance,
            MeterKind::Quality => &self.quality,
            MeterKind::Capacitance => &self.capacitance,
        }
    }
}

/// The decimals that leave a number about three figures, as an installer writes it.
pub fn plain_decimals(number: f64) -> Decimals {
    Decimals::AtMost(match number.abs() {
        size if size >= 100.0 => 0,
        size if size >= 10.0 => 1,
        size if size >= 1.0 => 2,
        _ => 3,
    })
}
