//! A weather service over HTTP: what is known is not asked, and what several want at once is asked once.

use std::sync::Arc;

use futures_util::FutureExt;
use futures_util::future::BoxFuture;
use reqwest::Url;
use tracing::Instrument;

use super::grid_point::GridPoint;
use super::limits::ForecastLimits;
use super::question::{ForecastClient, ForecastOutcome};
use super::single_flight::SingleFlight;
use super::{AskerId, ForecastError, ForecastSource};
use crate::calculation::input::Location;

/// How often a question begins anew that ended with the thread of another request, as when an instance stops.
const MAX_BEGINNINGS: usize = 3;

/// Forecasts from a service with the interface of the public US weather service.
pub struct HttpForecastSource {
    client: Arc<ForecastClient>,
    flights: SingleFlight<GridPoint, ForecastOutcome>,
}

impl HttpForecastSource {
    /// A source at `base`, with `user_agent` in each request. Sends nothing yet.
    ///
    /// # Errors
    /// When the address cannot have paths or the HTTP client cannot be built.
    pub fn new(base: Url, user_agent: &str, limits: ForecastLimits) -> Result<Self, String> {
        Ok(Self { client: Arc::new(ForecastClient::new(base, user_agent, limits)?), flights: SingleFlight::default() })
    }

    /// Asks about a place, or waits for what others have asked already.
    async fn ask(&self, place: GridPoint, asker: AskerId) -> ForecastOutcome {
        for _ in 0..MAX_BEGINNINGS {
            let flight = self.flights.join(place, || {
                if let Some(known) = self.client.known(place) {
                    return Err(known);
                }
                let permit = self.client.try_acquire(asker).map_err(Err)?;
                Ok(self.client.clone().ask(place, permit).in_current_span().boxed())
            });
            match flight {
                Err(known) => return known,
                Ok(flight) => {
                    if let Some(outcome) = flight.await {
                        return outcome;
                    }
                }
            }
        }
        Err(ForecastError::Broken("the instance is stopping".to_owned()))
    }
}

impl ForecastSource for HttpForecastSource {
    fn hourly(&self, place: Location, asker: AskerId) -> BoxFuture<'_, ForecastOutcome> {
        async move {
            let place = place.into();
            match self.ask(place, asker).await {
                Err(failure) if failure != ForecastError::NotCovered => self.client.stale(place).ok_or(failure),
                outcome => outcome,
            }
        }
        .boxed()
    }
}
