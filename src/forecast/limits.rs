//! The limits of the client of the weather service, and how long its answers may be used again.

use std::time::Duration;

/// The most places in a cache, each with some 40 kB of rows.
pub const MAX_CACHED_PLACES: usize = 128;

/// The longest time that a forecast is used again: services renew them hourly. Choice made here.
pub const MAX_FORECAST_AGE: Duration = Duration::from_secs(3600);

/// The longest time that the address of a place's forecast is used again. Choice made here.
pub const MAX_URL_AGE: Duration = Duration::from_secs(24 * 3600);

/// The longest time that an expired forecast is used for want of a newer one, where the service allows it: the weather of the work may
/// have turned by then, but seven hours ago a forecast said more of it than nothing does. Choice made here.
pub const MAX_STALE_AGE: Duration = Duration::from_secs(6 * 3600);

/// The shortest and the longest time that a place counts as not covered; services extend their area rarely. Choices made here.
pub const MIN_NOT_COVERED_AGE: Duration = Duration::from_secs(600);
/// The longest time that a place counts as not covered.
pub const MAX_NOT_COVERED_AGE: Duration = Duration::from_secs(24 * 3600);

/// The most places that are remembered as not covered or as failing, each with some 100 bytes.
pub const MAX_FAILED_PLACES: usize = 1024;

/// The longest pause that the service may ask for. Choice made here.
pub const MAX_PAUSE: Duration = Duration::from_secs(3600);

/// The most askers whose failures are counted, and how long after their last question. Choices made here.
pub const MAX_ASKERS: usize = 1024;
/// How long failures of an asker count after its last question.
pub const ASKER_AGE: Duration = Duration::from_secs(600);

/// How many failures in a row of one asker count for all, where a place may be the cause: with five that open the circuit breaker,
/// three askers at least. Choice made here.
pub const MAX_FAILURES_OF_ASKER: usize = 2;

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
    /// The most forecasts under way at once; half of them for one asker.
    pub max_concurrent: usize,
    /// How many failures in a row open a circuit breaker.
    pub max_failures: usize,
    /// How long a circuit breaker stays open.
    pub open_for: Duration,
    /// How long a place is not asked about again after a failure that it may have caused.
    pub place_rest: Duration,
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
            place_rest: Duration::from_secs(10),
        }
    }
}
