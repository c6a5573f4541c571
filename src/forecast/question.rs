//! One question to the service: two steps, within a time, and what is remembered of the answers.

use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::Instant;

use reqwest::{Client, Url};

use super::cache::ExpiringCache;
use super::grid_point::GridPoint;
use super::guard::{GuardPermit, ServiceGuard};
use super::lifetime::Lifetime;
use super::limits::{
    ForecastLimits, MAX_CACHED_PLACES, MAX_FAILED_PLACES, MAX_FORECAST_AGE, MAX_NOT_COVERED_AGE, MAX_STALE_AGE,
    MAX_URL_AGE, MIN_NOT_COVERED_AGE,
};
use super::{AskerId, ForecastError, ForecastOrigin, HourlyForecast, document, transport};
use crate::calculation::input::HourlyConditions;

/// What comes of a question.
pub type ForecastOutcome = Result<HourlyForecast, ForecastError>;

/// Asks the service, and remembers what it said: addresses, forecasts, and the places that have none or fail.
pub struct ForecastClient {
    client: Client,
    base: Url,
    limits: ForecastLimits,
    guard: ServiceGuard,
    hourly_urls: Mutex<ExpiringCache<GridPoint, Url>>,
    forecasts: Mutex<ExpiringCache<GridPoint, CachedForecast>>,
    failures: Mutex<ExpiringCache<GridPoint, ForecastError>>,
}

#[derive(Clone)]
struct CachedForecast {
    conditions: Arc<[HourlyConditions]>,
    fetched_at: Instant,
}

impl ForecastClient {
    /// A client of the service at `base`.
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
            guard: ServiceGuard::new(&limits),
            limits,
            hourly_urls: Mutex::new(ExpiringCache::new(MAX_CACHED_PLACES)),
            forecasts: Mutex::new(ExpiringCache::new(MAX_CACHED_PLACES)),
            failures: Mutex::new(ExpiringCache::new(MAX_FAILED_PLACES)),
        })
    }

    /// What is known of a place without a question: a fresh forecast, or that it has none or fails.
    pub fn known(&self, place: GridPoint) -> Option<ForecastOutcome> {
        let now = Instant::now();
        if let Some(CachedForecast { conditions, .. }) = lock(&self.forecasts).get(place, now) {
            return Some(Ok(HourlyForecast { conditions, origin: ForecastOrigin::Cache }));
        }
        lock(&self.failures).get(place, now).map(Err)
    }

    /// A forecast that has expired and may stand in for a newer one.
    pub fn stale(&self, place: GridPoint) -> Option<HourlyForecast> {
        let now = Instant::now();
        let CachedForecast { conditions, fetched_at } = lock(&self.forecasts).get_stale(place, now)?;
        Some(HourlyForecast { conditions, origin: ForecastOrigin::Stale(now - fetched_at) })
    }

    /// Permits a question.
    ///
    /// # Errors
    /// Why the service must not be asked now.
    pub fn try_acquire(&self, asker: AskerId) -> Result<GuardPermit, ForecastError> {
        self.guard.try_acquire(asker, Instant::now())
    }

    /// Asks about a place.
    ///
    /// # Errors
    /// What kept the service from an answer; a place that has none is remembered, and one that failed for a while.
    pub async fn ask(self: Arc<Self>, place: GridPoint, permit: GuardPermit) -> ForecastOutcome {
        let outcome = tokio::time::timeout(self.limits.total, self.fetch_hourly(place)).await;
        let outcome = outcome.unwrap_or(Err(ForecastError::Timeout));
        let now = Instant::now();
        if let Err(failure) = &outcome
            && (failure.is_service_fault() || matches!(failure, ForecastError::Paused(_)))
        {
            tracing::warn!(outcome = failure.outcome(), reason = ?failure, "the forecast failed");
            if failure.is_service_fault() && !failure.is_certain() {
                let rest = Lifetime::fresh(self.limits.place_rest);
                lock(&self.failures).insert(place, failure.clone(), rest, now);
            }
        }
        self.guard.record(permit, place, outcome.as_ref().err(), now);
        outcome.map(|conditions| HourlyForecast { conditions, origin: ForecastOrigin::Service })
    }

    async fn fetch_hourly(&self, place: GridPoint) -> Result<Arc<[HourlyConditions]>, ForecastError> {
        let known = lock(&self.hourly_urls).get(place, Instant::now());
        if let Some(hourly_url) = known
            && let Some(conditions) = self.fetch_hourly_at(place, &hourly_url).await?.0
        {
            return Ok(conditions);
        }
        // Without a known address, or where nothing is any more: the service may have drawn its grid anew.
        let document = transport::get(&self.client, &self.points_url(place), &self.limits).await?;
        let hourly_url = document.body.map(|body| document::parse_hourly_url(&body, &self.base)).transpose()?.flatten();
        let Some(hourly_url) = hourly_url else { return Err(self.not_covered(place, document.lifetime)) };
        let lifetime = Lifetime::fresh(document.lifetime.fresh.min(MAX_URL_AGE));
        lock(&self.hourly_urls).insert(place, hourly_url.clone(), lifetime, Instant::now());
        let (conditions, lifetime) = self.fetch_hourly_at(place, &hourly_url).await?;
        conditions.ok_or_else(|| self.not_covered(place, lifetime))
    }

    /// The second step: the hours at an address, or `None` where there are none, and how long to remember that.
    async fn fetch_hourly_at(
        &self,
        place: GridPoint,
        hourly_url: &Url,
    ) -> Result<(Option<Arc<[HourlyConditions]>>, Lifetime), ForecastError> {
        let fetched = transport::get(&self.client, hourly_url, &self.limits).await;
        if !fetched.as_ref().is_ok_and(|document| document.body.is_some()) {
            lock(&self.hourly_urls).remove(place);
        }
        let document = fetched?;
        let Some(body) = document.body else { return Ok((None, document.lifetime)) };
        let conditions: Arc<[_]> = document::parse_hourly(&body)?.into();
        let (lifetime, fetched_at) = (document.lifetime.at_most(MAX_FORECAST_AGE, MAX_STALE_AGE), Instant::now());
        let cached = CachedForecast { conditions: conditions.clone(), fetched_at };
        lock(&self.forecasts).insert(place, cached, lifetime, fetched_at);
        Ok((Some(conditions), lifetime))
    }

    /// Remembers that a place is not covered, as long as the service says, within our own limits.
    fn not_covered(&self, place: GridPoint, lifetime: Lifetime) -> ForecastError {
        let lifetime = Lifetime::fresh(lifetime.fresh.clamp(MIN_NOT_COVERED_AGE, MAX_NOT_COVERED_AGE));
        lock(&self.failures).insert(place, ForecastError::NotCovered, lifetime, Instant::now());
        ForecastError::NotCovered
    }

    fn points_url(&self, place: GridPoint) -> Url {
        let mut url = self.base.clone();
        if let Ok(mut path) = url.path_segments_mut() {
            path.pop_if_empty().push("points").push(&place.to_string());
        }
        url
    }
}

/// Locks in spite of a panic elsewhere: no code here panics between two writes.
fn lock<T>(lock: &Mutex<T>) -> MutexGuard<'_, T> {
    lock.lock().unwrap_or_else(PoisonError::into_inner)
}
