//! A weather service over HTTP: bounded in time, size and number, remembered and rested.

use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};

use futures_util::FutureExt;
use futures_util::future::BoxFuture;
use reqwest::{Client, Url};
use tokio::sync::Semaphore;

use super::breaker::Breaker;
use super::cache::Cache;
use super::place::Place;
use super::{Failure, Forecast, Hourly, document, transport};
use crate::calculation::input::{HourlyConditions, Location};

/// How many places are remembered, each with some 40 kB of rows.
const PLACES: usize = 128;

/// The longest that a forecast is used again: services renew them hourly. Choice made here.
const FORECAST_HOLDS: Duration = Duration::from_secs(3600);

/// The longest that the address of a place's forecast is used again. Choice made here.
const ADDRESS_HOLDS: Duration = Duration::from_secs(24 * 3600);

/// How far a question may go. The figures are choices made here.
#[derive(Clone, Copy, Debug)]
pub struct Limits {
    /// For the whole question: both steps and their retries.
    pub total: Duration,
    /// For one document, so that a retry has its chance within the whole.
    pub attempt: Duration,
    /// For a connection to stand.
    pub connect: Duration,
    /// The least pause before a retry; the longest is twice that.
    pub pause: Duration,
    /// The largest document, bytes.
    pub body: usize,
    /// The most questions at once.
    pub at_once: usize,
    /// So many failures in a row open the breaker.
    pub open_after: u32,
    /// How long it stays open.
    pub open_for: Duration,
}

impl Limits {
    /// The usual limits, within a time for the whole question.
    pub fn within(total: Duration) -> Self {
        Self {
            total,
            attempt: total / 2,
            connect: (total / 2).min(Duration::from_secs(2)),
            pause: Duration::from_millis(100),
            // An hourly forecast of a week is some 200 kB, from memory.
            body: 1024 * 1024,
            at_once: 8,
            open_after: 5,
            open_for: Duration::from_secs(30),
        }
    }
}

/// The source of forecasts that asks a service in the public US weather service's form.
pub struct PublicService {
    client: Client,
    base: Url,
    limits: Limits,
    addresses: Mutex<Cache<Url>>,
    forecasts: Mutex<Cache<Vec<HourlyConditions>>>,
    breaker: Breaker,
    questions: Semaphore,
}

impl PublicService {
    /// A source at an address, to which it names itself as `user_agent`. Asks nothing yet.
    ///
    /// # Errors
    /// When the address cannot have paths or the HTTP client cannot be built.
    pub fn new(base: Url, user_agent: &str, limits: Limits) -> Result<Self, String> {
        if base.cannot_be_a_base() {
            return Err("the address of the forecast service cannot have paths".to_owned());
        }
        Ok(Self {
            client: transport::client(&base, user_agent, &limits)?,
            base,
            limits,
            addresses: Mutex::new(Cache::new(PLACES)),
            forecasts: Mutex::new(Cache::new(PLACES)),
            breaker: Breaker::new(limits.open_after, limits.open_for),
            questions: Semaphore::new(limits.at_once),
        })
    }

    async fn ask(&self, place: Place) -> Result<Hourly, Failure> {
        if let Some(conditions) = held(&self.forecasts).get(place, Instant::now()) {
            return Ok(Hourly { conditions, is_cached: true });
        }
        let _question = self.questions.try_acquire().map_err(|_| Failure::Busy)?;
        let turn = self.breaker.admit(Instant::now()).map_err(Failure::Open)?;
        let outcome = tokio::time::timeout(self.limits.total, self.fetch(place)).await;
        let outcome = outcome.unwrap_or(Err(Failure::Timeout));
        turn.end(outcome.as_ref().is_err_and(Failure::is_of_the_service), Instant::now());
        outcome.map(|conditions| Hourly { conditions, is_cached: false })
    }

    async fn fetch(&self, place: Place) -> Result<Vec<HourlyConditions>, Failure> {
        let address = self.address(place).await?;
        let fetched = transport::get(&self.client, &address, &self.limits).await;
        let document = fetched.inspect_err(|_| held(&self.addresses).forget(place))?;
        let conditions = document::rows(&document.body)?;
        let lifetime = document.lifetime.min(FORECAST_HOLDS);
        held(&self.forecasts).put(place, conditions.clone(), lifetime, Instant::now());
        Ok(conditions)
    }

    /// Where the service has the hourly forecast of a place.
    async fn address(&self, place: Place) -> Result<Url, Failure> {
        if let Some(address) = held(&self.addresses).get(place, Instant::now()) {
            return Ok(address);
        }
        let document = transport::get(&self.client, &self.point(place), &self.limits).await?;
        let address = document::second_step(&document.body, &self.base)?;
        held(&self.addresses).put(place, address.clone(), document.lifetime.min(ADDRESS_HOLDS), Instant::now());
        Ok(address)
    }

    fn point(&self, place: Place) -> Url {
        let mut address = self.base.clone();
        if let Ok(mut path) = address.path_segments_mut() {
            path.pop_if_empty().push("points").push(&place.to_string());
        }
        address
    }
}

impl Forecast for PublicService {
    fn hourly(&self, place: Location) -> BoxFuture<'_, Result<Hourly, Failure>> {
        async move {
            let outcome = self.ask(place.into()).await;
            if let Err(failure) = &outcome
                && failure.is_of_the_service()
            {
                tracing::warn!(outcome = failure.outcome(), reason = ?failure, "the forecast failed");
            }
            outcome
        }
        .boxed()
    }
}

/// What a lock holds; a panic elsewhere has left it whole, for nothing here panics halfway.
fn held<T>(lock: &Mutex<T>) -> MutexGuard<'_, T> {
    lock.lock().unwrap_or_else(PoisonError::into_inner)
}
