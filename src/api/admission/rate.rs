//! Rate limits: a caller may use up a burst of units, which is refilled at a steady rate.

use std::net::IpAddr;
use std::num::NonZeroU32;
use std::time::Duration;

use governor::clock::{Clock, DefaultClock};
use governor::middleware::{StateInformationMiddleware, StateSnapshot};
use governor::state::keyed::DefaultKeyedStateStore;
use governor::state::{InMemoryState, NotKeyed};
use governor::{InsufficientCapacity, NotUntil, Quota, RateLimiter};

use crate::settings::Rate;

/// Which limit units exceed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RateExceeded {
    /// The rate: they may be sent after this time.
    Rate(Duration),
    /// The burst, which is this many: they can never be sent at once.
    Burst(u32),
}

/// What a caller may ask: told in the headers `RateLimit-Policy` and `RateLimit` (draft of the HTTP API working group of the IETF).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RateAllowance {
    /// The rate of the caller.
    pub rate: Rate,
    /// The units that are left.
    pub remaining: u32,
}

impl RateAllowance {
    /// The value of `RateLimit-Policy`: the burst, and the seconds in which it is refilled.
    pub fn policy(self) -> String {
        format!("\"caller\";q={};w={}", self.rate.burst, self.refilled_in(self.rate.burst))
    }

    /// The value of `RateLimit`: the units that are left, and the seconds until the burst is full again.
    pub fn state(self) -> String {
        let missing = self.rate.burst.saturating_sub(self.remaining);
        format!("\"caller\";r={};t={}", self.remaining, self.refilled_in(missing))
    }

    fn refilled_in(self, units: u32) -> u32 {
        units.div_ceil(self.rate.per_second.max(1))
    }
}

type DirectLimiter = RateLimiter<NotKeyed, InMemoryState, DefaultClock, StateInformationMiddleware>;
type KeyedLimiter = RateLimiter<IpAddr, DefaultKeyedStateStore<IpAddr>, DefaultClock, StateInformationMiddleware>;

/// The rate limit of one client, if it has one.
pub enum ClientLimiter {
    /// For all its requests together.
    Common(CommonLimiter),
    /// For each address that sends its key.
    OfEach(AddressLimiter),
}

impl ClientLimiter {
    /// Starts with a full burst, for all requests together or for each address.
    pub fn new(rate: Rate, is_of_each: bool) -> Self {
        if is_of_each {
            Self::OfEach(AddressLimiter::new(rate))
        } else {
            let limiter = quota(rate).map(|quota| RateLimiter::direct(quota).with_middleware());
            Self::Common(CommonLimiter { rate, limiter })
        }
    }

    /// The rate that it was made for.
    pub fn rate(&self) -> Rate {
        match self {
            Self::Common(limiter) => limiter.rate,
            Self::OfEach(limiter) => limiter.rate,
        }
    }

    /// Counts units that an address asks for; what is left, where there is a limit.
    ///
    /// # Errors
    /// The limit that they exceed; then they are not counted.
    pub fn take(&self, address: IpAddr, units: NonZeroU32) -> Result<Option<u32>, RateExceeded> {
        match self {
            Self::Common(limiter) => limiter.take(units),
            Self::OfEach(limiter) => limiter.take(address, units),
        }
    }

    /// Forgets addresses as [`AddressLimiter::forget_idle`] does.
    pub fn forget_idle(&self) {
        if let Self::OfEach(limiter) = self {
            limiter.forget_idle();
        }
    }
}

/// A rate limit of all that it counts.
pub struct CommonLimiter {
    rate: Rate,
    limiter: Option<DirectLimiter>,
}

impl CommonLimiter {
    fn take(&self, units: NonZeroU32) -> Result<Option<u32>, RateExceeded> {
        self.limiter.as_ref().map_or(Ok(None), |limiter| outcome(limiter.check_n(units)))
    }
}

/// A rate limit of each address, if they have one.
pub struct AddressLimiter {
    rate: Rate,
    limiter: Option<KeyedLimiter>,
}

impl AddressLimiter {
    /// Each address starts with a full burst.
    pub fn new(rate: Rate) -> Self {
        Self { rate, limiter: quota(rate).map(|quota| RateLimiter::keyed(quota).with_middleware()) }
    }

    /// Counts units of an address; what is left, where there is a limit.
    ///
    /// # Errors
    /// The limit that they exceed; then they are not counted.
    pub fn take(&self, address: IpAddr, units: NonZeroU32) -> Result<Option<u32>, RateExceeded> {
        self.limiter.as_ref().map_or(Ok(None), |limiter| outcome(limiter.check_key_n(&address, units)))
    }

    /// Forgets addresses whose burst is full again: they are treated like new ones.
    pub fn forget_idle(&self) {
        if let Some(limiter) = &self.limiter {
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
    checked: Result<Result<StateSnapshot, NotUntil<P>>, InsufficientCapacity>,
) -> Result<Option<u32>, RateExceeded>
where
    DefaultClock: Clock<Instant = P>,
{
    match checked {
        Ok(Ok(state)) => Ok(Some(state.remaining_burst_capacity())),
        Ok(Err(until)) => Err(RateExceeded::Rate(until.wait_time_from(DefaultClock::default().now()))),
        Err(InsufficientCapacity(most)) => Err(RateExceeded::Burst(most)),
    }
}
