//! Readings, what a fault lets expect of them, and how well the two agree.

use crate::quantity::output::round;

/// What a meter shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shown {
    /// A number in the unit of its meter.
    Number(f64),
    /// More than the meter's range.
    OverRange,
}

/// The meters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Meter {
    /// Insulation to earth, megohm.
    Insulation,
    /// Resistance to direct current, ohm.
    Resistance,
    /// Inductance, µH.
    Inductance,
    /// Quality factor.
    Quality,
}

/// How often a reading is worthless: a slipped clip, a wrong range, a number misheard. A choice made here.
const OUTLIERS: f64 = 0.01;

impl Meter {
    /// All meters, in the order of a report.
    pub const ALL: [Self; 4] = [Self::Insulation, Self::Resistance, Self::Inductance, Self::Quality];

    /// The field of the request.
    pub fn field(self) -> &'static str {
        match self {
            Self::Insulation => "insulation_megohm",
            Self::Resistance => "resistance_ohm",
            Self::Inductance => "inductance_uh",
            Self::Quality => "quality_factor",
        }
    }

    /// The unit as reports name it.
    pub fn unit(self) -> &'static str {
        match self {
            Self::Insulation => "megohm",
            Self::Resistance => "ohm",
            Self::Inductance => "uH",
            Self::Quality => "ratio",
        }
    }

    /// The reading in words: `Insulation of 0.3 megohm`.
    pub fn say(self, shown: Shown) -> String {
        let (noun, unit) = match self {
            Self::Insulation => ("Insulation", " megohm"),
            Self::Resistance => ("Resistance", " ohm"),
            Self::Inductance => ("Inductance", " µH"),
            Self::Quality => ("Quality factor", ""),
        };
        match shown {
            Shown::Number(number) => format!("{noun} of {}{unit}", plain(number)),
            Shown::OverRange => format!("{noun} over range"),
        }
    }

    /// Below this a number is as good as 0, so the logarithmic scale ends there; unit of the meter.
    fn foot(self) -> f64 {
        match self {
            Self::Insulation => 0.001,
            Self::Resistance => 0.1,
            Self::Inductance => 1.0,
            Self::Quality => 0.5,
        }
    }

    /// The greatest number that a request can hold.
    fn greatest(self) -> f64 {
        match self {
            Self::Insulation => 1e6,
            Self::Resistance => 1e8,
            Self::Inductance => 1e5,
            Self::Quality => 1e3,
        }
    }

    /// A number on the scale of the meter: logarithmic, so that doubling weighs the same everywhere.
    fn scale(self, number: f64) -> f64 {
        (number.max(0.0) + self.foot()).ln()
    }

    fn unscale(self, place: f64) -> f64 {
        (place.exp() - self.foot()).max(0.0)
    }

    /// The density of a worthless reading: any number of the range, or over range half the time.
    fn outlier(self) -> f64 {
        0.5 / (self.scale(self.greatest()) - self.scale(0.0))
    }
}

/// Numbers between two ends, and how far a meter strays beyond them.
#[derive(Clone, Copy, Debug)]
pub struct Band {
    /// The lower end.
    pub low: f64,
    /// The upper end.
    pub high: f64,
    /// Standard deviation of a reading round the truth, as a share of the number.
    pub relative: f64,
    /// The same as a part that does not shrink with the number, in the unit of the meter.
    pub absolute: f64,
}

/// What a fault lets expect of one meter.
#[derive(Clone, Copy, Debug)]
pub struct Forecast {
    /// The numbers that it shows, if it shows one.
    pub band: Band,
    /// How often it shows over range instead, 0 to 1.
    pub over_range: f64,
}

impl Band {
    /// The same errors round other ends.
    pub fn between(self, low: f64, high: f64) -> Self {
        Self { low, high, ..self }
    }

    /// The middle of the ends.
    pub fn middle(self) -> f64 {
        0.5 * (self.low + self.high)
    }

    /// The ends on the meter's scale, and the deviation there.
    fn on_scale(self, meter: Meter) -> (f64, f64, f64) {
        let middle = self.middle();
        let deviation = (self.relative * middle + self.absolute) / (middle + meter.foot());
        (meter.scale(self.low), meter.scale(self.high), deviation.max(0.01))
    }

    /// What a meter would show, nineteen times in twenty.
    pub fn shown(self, meter: Meter) -> (f64, f64) {
        let (low, high, deviation) = self.on_scale(meter);
        (meter.unscale(low - 2.0 * deviation), meter.unscale(high + 2.0 * deviation).min(meter.greatest()))
    }

    /// Density on the meter's scale: every place between the ends is as likely, and readings stray as the logistic
    /// distribution has it. That is close to the normal one with longer tails: a careless reading must not decide alone.
    fn density(self, meter: Meter, number: f64) -> f64 {
        let (low, high, deviation) = self.on_scale(meter);
        let width = deviation * 3.0_f64.sqrt() / std::f64::consts::PI;
        let place = meter.scale(number);
        let below = |end: f64| 1.0 / (1.0 + ((end - place) / width).exp());
        if high - low < 0.1 * width {
            let share = below(0.5 * (low + high));
            share * (1.0 - share) / width
        } else {
            (below(low) - below(high)).max(0.0) / (high - low)
        }
    }
}

impl Forecast {
    /// A number and hardly ever over range.
    pub fn number(band: Band) -> Self {
        Self { band, over_range: 0.001 }
    }

    /// How likely the reading is, on the meter's scale; above 0 and finite, since any reading may be worthless.
    pub fn likelihood(&self, meter: Meter, shown: Shown) -> f64 {
        (1.0 - OUTLIERS) * self.sound(meter, shown) + OUTLIERS * worthless(meter, shown)
    }

    /// Whether the forecast explains the reading better than a worthless reading would.
    pub fn explains(&self, meter: Meter, shown: Shown) -> bool {
        self.sound(meter, shown) > OUTLIERS * worthless(meter, shown)
    }

    fn sound(&self, meter: Meter, shown: Shown) -> f64 {
        match shown {
            Shown::Number(number) => (1.0 - self.over_range) * self.band.density(meter, number),
            Shown::OverRange => self.over_range,
        }
    }
}

fn worthless(meter: Meter, shown: Shown) -> f64 {
    match shown {
        Shown::Number(_) => meter.outlier(),
        Shown::OverRange => 0.5,
    }
}

/// A number with about three figures, as an installer writes it.
pub fn plain(number: f64) -> String {
    let decimals = match number {
        _ if number >= 100.0 => 0,
        _ if number >= 10.0 => 1,
        _ if number >= 1.0 => 2,
        _ => 3,
    };
    round(number, decimals).to_string()
}
