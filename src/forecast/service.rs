//! A weather service over HTTP, with limits, a cache and a circuit breaker.

use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::Instant;

use futures_util::FutureExt;
use futures_util::future::BoxFuture;
use reqwest::{Client, Url};
use tokio::sync::Semaphore;

use super::breaker::CircuitBreaker;
use super::cache::ExpiringCache;
use super::grid_point::GridPoint;
use super::limits::{ForecastLimits, MAX_CACHED_PLACES, MAX_FORECAST_AGE, MAX_URL_AGE};
use super::{ForecastError, ForecastSource, HourlyForecast, document, transport};
use crate::calculation::input::{HourlyConditions, Location};

/// Forecasts from a service with the interface of the public US weather service.
pub struct HttpForecastSource {
    client: Client,
    base: Url,
    limits: ForecastLimits,
    hourly_urls: Mutex<ExpiringCache<Url>>,
    forecasts: Mutex<ExpiringCache<Vec<HourlyConditions>>>,
    breaker: CircuitBreaker,
    permits: Semaphore,
}

impl HttpForecastSource {
    /// A source at `base`, with `user_agent` in each request. Sends nothing yet.
    ///
    /// # Errors
    /// When the address cannot have paths or the HTTP client cannot be built.
    pub fn new(base: Url, user_agent: &str, limits: ForecastLimits) -> Result<Self, String> {
        if base.cannot_be_a_base() {
            return Err("the address of the forecast service cannot have paths".to_owned());
        }
        Ok(Self {
            client: transport::client(&base, user_agent, &limits)?,
            base,
            limits,
            hourly_urls: Mutex::new(ExpiringCache::new(MAX_CACHED_PLACES)),
            forecasts: Mutex::new(ExpiringCache::new(MAX_CACHED_PLACES)),
            breaker: CircuitBreaker::new(limits.max_failures, limits.open_for),
            permits: Semaphore::new(limits.max_concurrent),
        })
    }

    async fn ask(&self, grid_point: GridPoint) -> Result<HourlyForecast, ForecastError> {
        if let Some(conditions) = lock(&self.forecasts).get(grid_point, Instant::now()) {
            return Ok(HourlyForecast { conditions, is_cached: true });
        }
        let _permit = self.permits.try_acquire().map_err(|_| ForecastError::Busy)?;
        let breaker_permit = self.breaker.try_acquire(Instant::now()).map_err(ForecastError::Open)?;
        let outcome = tokio::time::timeout(self.limits.total, self.fetch_hourly(grid_point)).await;
        let outcome = outcome.unwrap_or(Err(ForecastError::Timeout));
        breaker_permit.record(outcome.as_ref().is_err_and(ForecastError::is_service_fault), Instant::now());
        outcome.map(|conditions| HourlyForecast { conditions, is_cached: false })
    }

    async fn fetch_hourly(&self, grid_point: GridPoint) -> Result<Vec<HourlyConditions>, ForecastError> {
        let hourly_url = self.hourly_url(grid_point).await?;
        let fetched = transport::get(&self.client, &hourly_url, &self.limits).await;
        let document = fetched.inspect_err(|_| lock(&self.hourly_urls).remove(grid_point))?;
        let conditions = document::parse_hourly(&document.body)?;
        let lifetime = document.lifetime.min(MAX_FORECAST_AGE);
        lock(&self.forecasts).insert(grid_point, conditions.clone(), lifetime, Instant::now());
        Ok(conditions)
    }

    /// Where the service has the hourly forecast of a place.
    async fn hourly_url(&self, grid_point: GridPoint) -> Result<Url, ForecastError> {
        if let Some(hourly_url) = lock(&self.hourly_urls).get(grid_point, Instant::now()) {
            return Ok(hourly_url);
        }
        let document = transport::get(&self.client, &self.points_url(grid_point), &self.limits).await?;
        let hourly_url = document::parse_hourly_url(&document.body, &self.base)?;
        lock(&self.hourly_urls).insert(
            grid_point,
            hourly_url.clone(),
            document.lifetime.min(MAX_URL_AGE),
            Instant::now(),
        );
        Ok(hourly_url)
    }

    fn points_url(&self, grid_point: GridPoint) -> Url {
        let mut url = self.base.clone();
        if let Ok(mut path) = url.path_segments_mut() {
            path.pop_if_empty().push("points").push(&grid_point.to_string());
        }
        url
    }
}

impl ForecastSource for HttpForecastSource {
    fn hourly(&self, place: Location) -> BoxFuture<'_, Result<HourlyForecast, ForecastError>> {
        async move {
            let outcome = self.ask(place.into()).await;
            if let Err(failure) = &outcome
                && failure.is_service_fault()
            {
                tracing::warn!(outcome = failure.outcome(), reason = ?failure, "the forecast failed");
            }
            outcome
        }
        .boxed()
    }
}

/// Locks in spite of a panic elsewhere: no code here panics between two writes.
fn lock<T>(lock: &Mutex<T>) -> MutexGuard<'_, T> {
    lock.lock().unwrap_or_else(PoisonError::into_inner)
}
