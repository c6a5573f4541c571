//! The hourly weather at a place, from a weather service that the operator has chosen.
//!
//! A calculation needs the weather hour by hour and never waits. A request may name a place instead; `api` then asks a
//! [`ForecastSource`] before the calculation, and replaces the place by the hours. Nothing here runs unless the operator has set the
//! address of a service, and no address ever comes from a caller.
//!
//! - [`service`]: the source over HTTP: equal questions are asked once, and what is known is not asked.
//! - [`question`]: one question: two steps, within a time, and what is remembered of the answer.
//! - [`single_flight`]: equal work at the same time is done once.
//! - [`limits`]: how long and how much one forecast may take.
//! - [`transport`]: one document of the service, with one retry.
//! - [`document`]: the service's documents, and the rows in them.
//! - [`units`]: the service's unit codes.
//! - [`grid_point`]: a place as it is sent and used as a cache key.
//! - [`cache`]: a bounded cache of answers.
//! - [`lifetime`]: how long an answer may be used.
//! - [`guard`]: whether the service may be asked now, and by whom.
//! - [`breaker`]: when a failing service is not asked.
//! - [`question_limiter`]: how many questions are under way.

pub mod breaker;
pub mod cache;
pub mod document;
pub mod grid_point;
pub mod guard;
pub mod lifetime;
pub mod limits;
pub mod question;
pub mod question_limiter;
pub mod service;
pub mod single_flight;
pub mod transport;
pub mod units;

use std::sync::Arc;
use std::time::Duration;

use futures_util::future::BoxFuture;

use crate::calculation::input::{HourlyConditions, Location};

pub use limits::ForecastLimits;
pub use service::HttpForecastSource;

/// Who asks for a forecast: a number for whom each has a share of the questions. Who stands behind it, only the caller knows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct AskerId(pub u64);

/// A source of hourly forecasts.
pub trait ForecastSource: Send + Sync {
    /// The weather at a place on earth, from this hour on.
    ///
    /// # Errors
    /// A [`ForecastError`]: the place has no forecast, or the source gave none.
    fn hourly(&self, place: Location, asker: AskerId) -> BoxFuture<'_, Result<HourlyForecast, ForecastError>>;
}

/// A forecast, in the form of a request.
#[derive(Clone, Debug)]
pub struct HourlyForecast {
    /// Hour by hour, in order of time: at least one row, at most [`document::MAX_ROWS`].
    pub conditions: Arc<[HourlyConditions]>,
    /// How the source came by it.
    pub origin: ForecastOrigin,
}

/// How a source came by a forecast.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ForecastOrigin {
    /// The service gave it now.
    Service,
    /// The service gave it before, and it is fresh.
    Cache,
    /// The service gave it so long ago and has failed since. It begins in the past; its later hours are as they were forecast then.
    Stale(Duration),
}

impl ForecastOrigin {
    /// The outcome in one word, for a counter.
    pub fn outcome(self) -> &'static str {
        match self {
            Self::Service => "ok",
            Self::Cache => "cached",
            Self::Stale(_) => "stale",
        }
    }
}

/// Why there is no forecast. The texts are for the operator's log: they contain no coordinates and nothing that a caller sent.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ForecastError {
    /// The service has no hourly forecast for the place.
    NotCovered,
    /// The service did not answer in time.
    Timeout,
    /// No connection.
    Unreachable(String),
    /// A connection that broke.
    Broken(String),
    /// The service answered with an unusable status.
    Refused(u16),
    /// The service answered with something other than a forecast.
    Malformed(String),
    /// The service wants to be left alone for this long.
    Paused(Duration),
    /// A circuit breaker is open for this long.
    Open(Duration),
    /// As many forecasts as are allowed at once, to this asker or to all, are under way.
    Busy,
}

impl ForecastError {
    /// The outcome in one word, for a counter.
    pub fn outcome(&self) -> &'static str {
        match self {
            Self::NotCovered => "not_covered",
            Self::Timeout => "timeout",
            Self::Unreachable(_) | Self::Broken(_) | Self::Refused(_) => "error",
            Self::Malformed(_) => "malformed",
            Self::Paused(_) => "paused",
            Self::Open(_) => "open",
            Self::Busy => "busy",
        }
    }

    /// Whether a retry a moment later may succeed.
    pub fn is_transient(&self) -> bool {
        matches!(self, Self::Timeout | Self::Unreachable(_) | Self::Broken(_) | Self::Refused(500..))
    }

    /// Whether the service is to blame.
    pub fn is_service_fault(&self) -> bool {
        self.is_certain() || matches!(self, Self::Timeout | Self::Broken(_) | Self::Refused(_) | Self::Malformed(_))
    }

    /// Whether the service fails for sure, and not only at this place.
    pub fn is_certain(&self) -> bool {
        matches!(self, Self::Unreachable(_) | Self::Refused(401 | 403 | 429))
    }
}
