//! How fast a reaction runs, and how far it has come when its rate changes from hour to hour.

/// Molar gas constant in J/(mol K): exact since the 2019 revision of the SI.
const GAS_CONSTANT: f64 = 8.314_462_618_153_24;

/// How many times faster a reaction runs at a temperature than at a reference temperature.
///
/// `energy` in J/mol, temperatures in K, above 0. Source: the law of Arrhenius.
/// Worked number: 51.2 kJ/mol from 20 to 30 °C, 2.00.
pub fn arrhenius(energy: f64, kelvin: f64, reference_kelvin: f64) -> f64 {
    (energy / GAS_CONSTANT * (reference_kelvin.recip() - kelvin.recip())).exp()
}

/// Depth in metres of a front that a moisture cure drives down from the surface: ∝ √ of what the surface was offered.
///
/// The front stands at `known_depth` (m) when `known_amount` has been offered; amounts are in s of a reference climate. Source:
/// Comyn, 1998: what arrives at the front diffuses through the cured layer above it.
/// Worked number: four times the amount, twice the depth.
pub fn front_depth(known_depth: f64, known_amount: f64, amount: f64) -> f64 {
    known_depth * (amount / known_amount).sqrt()
}

/// The amount in s of a reference climate after which a front reaches a depth in metres: the inverse of [`front_depth`].
pub fn front_amount(known_depth: f64, known_amount: f64, depth: f64) -> f64 {
    known_amount * (depth / known_depth).powi(2)
}

/// The integral of a rate that is constant over each of several steps: its value at any time, and the time of any value.
#[derive(Clone, Debug)]
pub struct PiecewiseIntegral {
    /// The times at which the rate changes, the beginning and the end included.
    times: Vec<f64>,
    /// The integral up to each.
    amounts: Vec<f64>,
}

impl PiecewiseIntegral {
    /// Integrates from time 0: each step is the time at which it ends, in s and later than the one before, and its rate, 0 or more.
    pub fn new(steps: impl IntoIterator<Item = (f64, f64)>) -> Self {
        let mut sum = Self { times: vec![0.0], amounts: vec![0.0] };
        let (mut time, mut amount) = (0.0, 0.0);
        for (until, rate) in steps {
            amount += rate * (until - time);
            time = until;
            sum.times.push(time);
            sum.amounts.push(amount);
        }
        sum
    }

    /// The integral from 0 to a time in s; it is constant before and after the steps.
    pub fn at(&self, time: f64) -> f64 {
        Self::interpolate(&self.times, &self.amounts, time)
    }

    /// The time in s at which the integral from 0 reaches an amount, exact inside a step; `None` when it never does.
    pub fn inverse(&self, amount: f64) -> Option<f64> {
        let end = self.amounts.last().copied().unwrap_or_default();
        (amount <= end).then(|| Self::interpolate(&self.amounts, &self.times, amount))
    }

    /// The piecewise linear function through the points (x, y), at `x`; for an x that several points share, the y of the first.
    fn interpolate(xs: &[f64], ys: &[f64], x: f64) -> f64 {
        let next = xs.partition_point(|other| *other < x);
        match (next.checked_sub(1), xs.get(next)) {
            (None, _) => ys[0],
            (Some(last), None) => ys[last],
            (Some(last), Some(upper)) => ys[last] + (ys[next] - ys[last]) * (x - xs[last]) / (upper - xs[last]),
        }
    }
}
