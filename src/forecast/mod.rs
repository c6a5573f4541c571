//! The hourly weather at a place, from a weather service that the operator has chosen.
//!
//! A calculation takes the weather hour by hour and waits for nothing. A request may name a place instead; the edge then asks a
//! [`Forecast`] before it calculates, and puts what it gets in the place's stead. Nothing here runs unless the operator has set
//! the address of a service, and no address ever comes from a caller.
//!
//! - [`service`]: the source over HTTP: two steps, bounded in time, size and number, remembered and rested.
//! - [`transport`]: one document of the service, with its one retry.
//! - [`document`]: the service's documents, and the rows that they hold.
//! - [`units`]: the service's unit codes.
//! - [`place`]: a place as it is sent and remembered.
//! - [`cache`]: what is remembered, and how long.
//! - [`breaker`]: when a failing service is left alone.

pub mod breaker;
pub mod cache;
pub mod document;
pub mod place;
pub mod service;
pub mod transport;
pub mod units;

use std::time::Duration;

use futures_util::future::BoxFuture;

use crate::calculation::input::{HourlyConditions, Location};

pub use service::{Limits, PublicService};

/// A source of hourly forecasts.
pub trait Forecast: Send + Sync {
    /// The weather at a place on earth, from this hour on.
    ///
    /// # Errors
    /// A [`Failure`]: the place has no forecast, or the source gave none.
    fn hourly(&self, place: Location) -> BoxFuture<'_, Result<Hourly, Failure>>;
}

/// A forecast, in the form of a request.
#[derive(Clone, Debug)]
pub struct Hourly {
    /// Hour by hour, in order of time: at least one row, at most [`document::MAX_ROWS`].
    pub conditions: Vec<HourlyConditions>,
    /// Whether it was remembered from an earlier question.
    pub is_cached: bool,
}

/// Why there is no forecast. The texts are for the operator's log: they hold no coordinates and nothing that a caller sent.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Failure {
    /// The service has no hourly forecast for the place.
    NotCovered,
    /// The service did not answer in time.
    Timeout,
    /// No connection, one that broke, or an error of the service's own.
    Unreachable(String),
    /// The service answered with a status that is no answer.
    Refused(u16),
    /// The service answered with what is no forecast.
    Malformed(String),
    /// The service has failed so often that it is left alone for this long.
    Open(Duration),
    /// As many questions as are allowed at once are under way.
    Busy,
}

impl Failure {
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

    /// Whether the same question may be answered a moment later.
    pub fn may_pass(&self) -> bool {
        matches!(self, Self::Timeout | Self::Unreachable(_))
    }

    /// Whether the service is to blame.
    pub fn is_of_the_service(&self) -> bool {
        matches!(self, Self::Timeout | Self::Unreachable(_) | Self::Refused(_) | Self::Malformed(_))
    }
}
