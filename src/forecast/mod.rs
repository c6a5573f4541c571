//! The hourly weather at a place, from a weather service that the operator has chosen.
//!
//! A calculation needs the weather hour by hour and never waits. A request may name a place instead; `api` then asks a
//! [`ForecastSource`] before the calculation, and replaces the place by the hours. Nothing here runs unless the operator has set the
//! address of a service, and no address ever comes from a caller.
//!
//! - [`service`]: the source over HTTP: two steps, with limits, a cache and a circuit breaker.
//! - [`limits`]: how long and how much one forecast may take.
//! - [`transport`]: one document of the service, with one retry.
//! - [`document`]: the service's documents, and the rows in them.
//! - [`units`]: the service's unit codes.
//! - [`grid_point`]: a place as it is sent and used as a cache key.
//! - [`cache`]: the bounded cache, and how long an answer may be used.
//! - [`breaker`]: when a failing service is not asked.

pub mod breaker;
pub mod cache;
pub mod document;
pub mod grid_point;
pub mod limits;
pub mod service;
pub mod transport;
pub mod units;

use std::time::Duration;

use futures_util::future::BoxFuture;

use crate::calculation::input::{HourlyConditions, Location};

pub use limits::ForecastLimits;
pub use service::HttpForecastSource;

/// A source of hourly forecasts.
pub trait ForecastSource: Send + Sync {
    /// The weather at a place on earth, from this hour on.
    ///
    /// # Errors
    /// A [`ForecastError`]: the place has no forecast, or the source gave none.
    fn hourly(&self, place: Location) -> BoxFuture<'_, Result<HourlyForecast, ForecastError>>;
}

/// A forecast, in the form of a request.
#[derive(Clone, Debug)]
pub struct HourlyForecast {
    /// Hour by hour, in order of time: at least one row, at most [`document::MAX_ROWS`].
    pub conditions: Vec<HourlyConditions>,
    /// Whether it came from the cache.
    pub is_cached: bool,
}

/// Why there is no forecast. The texts are for the operator's log: they contain no coordinates and nothing that a caller sent.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ForecastError {
    /// The service has no hourly forecast for the place.
    NotCovered,
    /// The service did not answer in time.
    Timeout,
    /// No connection, one that broke, or an error of the service's own.
    Unreachable(String),
    /// The service answered with an unusable status.
    Refused(u16),
    /// The service answered with something other than a forecast.
    Malformed(String),
    /// The circuit breaker is open for this long.
    Open(Duration),
    /// As many forecasts as are allowed at once are under way.
    Busy,
}

impl ForecastError {
    /// The outcome in one word, for a counter.
    pub fn outcome(&self) -> &'static str {
        match self {
            Self::NotCovered => "not_covered",
            Self::Timeout => "timeout",
            Self::Unreachable(_) | Self::Refused(_) => "error",
            Self::Malformed(_) => "malformed",
            Self::Open(_) => "open",
            Self::Busy => "busy",
        }
    }

    /// Whether a retry a moment later may succeed.
    pub fn is_transient(&self) -> bool {
        matches!(self, Self::Timeout | Self::Unreachable(_))
    }

    /// Whether the service is to blame.
    pub fn is_service_fault(&self) -> bool {
        matches!(self, Self::Timeout | Self::Unreachable(_) | Self::Refused(_) | Self::Malformed(_))
    }
}
