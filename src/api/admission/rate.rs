//! Rate limits: a caller may send a burst of requests, which is refilled at a steady rate.

use std::net::IpAddr;
use std::num::NonZeroU32;
use std::time::Duration;

use governor::clock::{Clock, DefaultClock};
use governor::{DefaultDirectRateLimiter, DefaultKeyedRateLimiter, InsufficientCapacity, NotUntil, Quota, RateLimiter};

use crate::settings::Rate;

/// Which limit requests exceed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RateExceeded {
    /// The rate: they may be sent after this time.
    Rate(Duration),
    /// The burst, which is this many: they can never be sent at once.
    Burst(u32),
}

/// The rate limit of one client, if it has one.
pub struct ClientLimiter {
    rate: Rate,
    limiter: Option<DefaultDirectRateLimiter>,
}

impl ClientLimiter {
    /// Starts with a full burst.
    pub fn new(rate: Rate) -> Self {
        Self { rate, limiter: quota(rate).map(RateLimiter::direct) }
    }

    /// The rate that it was made for.
    pub fn rate(&self) -> Rate {
        self.rate
    }

    /// Counts requests.
    ///
    /// # Errors
    /// The limit that they exceed; then they are not counted.
    pub fn take(&self, requests: NonZeroU32) -> Result<(), RateExceeded> {
        self.limiter.as_ref().map_or(Ok(()), |limiter| outcome(limiter.check_n(requests)))
    }
}

/// The rate limits of all addresses, if they have any.
pub struct AddressLimiter(Option<DefaultKeyedRateLimiter<IpAddr>>);

impl AddressLimiter {
    /// Each address starts with a full burst.
    pub fn new(rate: Rate) -> Self {
        Self(quota(rate).map(RateLimiter::keyed))
    }

    /// Counts requests of an address.
    ///
    /// # Errors
    /// The limit that they exceed; then they are not counted.
    pub fn take(&self, address: IpAddr, requests: NonZeroU32) -> Result<(), RateExceeded> {
        self.0.as_ref().map_or(Ok(()), |limiter| outcome(limiter.check_key_n(&address, requests)))
    }

    /// Forgets addresses whose burst is full again: they are treated like new ones.
    pub fn forget_idle(&self) {
        if let Some(limiter) = &self.0 {
            limiter.retain_recent();
            limiter.shrink_to_fit();
        }
    }
}

fn quota(rate: Rate) -> Option<Quota> {
    let burst = NonZeroU32::new(rate.burst).unwrap_or(NonZeroU32::MIN);
    NonZeroU32::new(rate.per_second).map(|per_second| Quota::per_second(per_second).allow_burst(burst))
}

fn outcome<P: governor::clock::Reference>(
    checked: Result<Result<(), NotUntil<P>>, InsufficientCapacity>,
) -> Result<(), RateExceeded>
where
    DefaultClock: Clock<Instant = P>,
{
    match checked {
        Ok(Ok(())) => Ok(()),
        Ok(Err(until)) => Err(RateExceeded::Rate(until.wait_time_from(DefaultClock::default().now()))),
        Err(InsufficientCapacity(most)) => Err(RateExceeded::Burst(most)),
    }
}
