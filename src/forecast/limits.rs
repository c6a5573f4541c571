//! The limits of the client of the weather service, and how long its answers may be used again.

use std::time::Duration;

/// The most places in a cache, each with some 40 kB of rows.
pub const MAX_CACHED_PLACES: usize = 128;

/// The longest time that a forecast is used again: services renew them hourly. Choice made here.
pub const MAX_FORECAST_AGE: Duration = Duration::from_secs(3600);

/// The longest time that the address of a place's forecast is used again. Choice made here.
pub const MAX_URL_AGE: Duration = Duration::from_secs(24 * 3600);

/// How long and how much one forecast may take. The figures are choices made here.
#[derive(Clone, Copy, Debug)]
pub struct ForecastLimits {
    /// The time for a forecast: both steps and their retries.
    pub total: Duration,
    /// The time for one document; short enough for a retry within the whole.
    pub attempt: Duration,
    /// The time to connect.
    pub connect: Duration,
    /// The shortest pause before a retry; the longest is twice that.
    pub pause: Duration,
    /// The largest document, bytes.
    pub body: usize,
    /// The most forecasts under way at once.
    pub max_concurrent: usize,
    /// How many failures in a row open the circuit breaker.
    pub max_failures: u32,
    /// How long the circuit breaker stays open.
    pub open_for: Duration,
}

impl ForecastLimits {
    /// The usual limits, within `total`.
    pub fn within(total: Duration) -> Self {
        Self {
            total,
            attempt: total / 2,
            connect: (total / 2).min(Duration::from_secs(2)),
            pause: Duration::from_millis(100),
            // An hourly forecast of a week is some 200 kB, from memory.
            body: 1024 * 1024,
            max_concurrent: 8,
            max_failures: 5,
            open_for: Duration::from_secs(30),
        }
    }
}
