//! How often a caller may ask: so many requests at once, which come back at a steady rate.

use std::net::IpAddr;
use std::num::NonZeroU32;
use std::time::Duration;

use governor::clock::{Clock, DefaultClock};
use governor::{DefaultDirectRateLimiter, DefaultKeyedRateLimiter, InsufficientCapacity, NotUntil, Quota, RateLimiter};

use crate::settings::Rate;

/// Why a request is refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refused {
    /// For now: it may be repeated after so long.
    Later(Duration),
    /// For ever: it counts more than may be asked at once.
    Never(u32),
}

/// The rate of one client; none is no limit.
pub struct Limiter {
    rate: Rate,
    limiter: Option<DefaultDirectRateLimiter>,
}

impl Limiter {
    /// Starts with a full burst.
    pub fn new(rate: Rate) -> Self {
        Self { rate, limiter: quota(rate).map(RateLimiter::direct) }
    }

    /// The rate it was made for.
    pub fn rate(&self) -> Rate {
        self.rate
    }

    /// Counts requests, or says when they may come.
    pub fn take(&self, requests: NonZeroU32) -> Result<(), Refused> {
        self.limiter.as_ref().map_or(Ok(()), |limiter| outcome(limiter.check_n(requests)))
    }
}

/// The rates of all addresses; none is no limit.
pub struct Addresses(Option<DefaultKeyedRateLimiter<IpAddr>>);

impl Addresses {
    /// Each address starts with a full burst.
    pub fn new(rate: Rate) -> Self {
        Self(quota(rate).map(RateLimiter::keyed))
    }

    /// Counts requests of an address, or says when they may come.
    pub fn take(&self, address: IpAddr, requests: NonZeroU32) -> Result<(), Refused> {
        self.0.as_ref().map_or(Ok(()), |limiter| outcome(limiter.check_key_n(&address, requests)))
    }

    /// Forgets addresses whose burst is full again: they count as if they had never asked.
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
) -> Result<(), Refused>
where
    DefaultClock: Clock<Instant = P>,
{
    match checked {
        Ok(Ok(())) => Ok(()),
        Ok(Err(until)) => Err(Refused::Later(until.wait_time_from(DefaultClock::default().now()))),
        Err(InsufficientCapacity(most)) => Err(Refused::Never(most)),
    }
}
