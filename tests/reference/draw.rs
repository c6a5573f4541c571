//! A source of numbers that are the same everywhere.

/// A small linear congruential generator (Knuth's MMIX constants), so that a study is the same everywhere.
pub struct Draw(pub u64);

impl Draw {
    /// Alike between two ends.
    pub fn uniform(&mut self, low: f64, high: f64) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        low + (high - low) * ((self.0 >> 11) as f64 / (1_u64 << 53) as f64)
    }

    /// Normal, as twelve uniform draws make it.
    pub fn normal(&mut self, middle: f64, deviation: f64) -> f64 {
        middle + deviation * ((0..12).map(|_| self.uniform(0.0, 1.0)).sum::<f64>() - 6.0)
    }

    /// Alike between two ends, on a logarithmic scale.
    pub fn logarithmic(&mut self, low: f64, high: f64) -> f64 {
        self.uniform(low.ln(), high.ln()).exp()
    }

    /// Whether something happens that happens so often.
    pub fn happens(&mut self, share: f64) -> bool {
        self.uniform(0.0, 1.0) < share
    }

    /// The place of one of some weights, as often as its weight says.
    pub fn weighted(&mut self, weights: &[f64]) -> usize {
        let mut left = self.uniform(0.0, weights.iter().sum());
        let place = weights.iter().position(|weight| {
            left -= weight;
            left < 0.0
        });
        place.unwrap_or(weights.len() - 1)
    }
}
