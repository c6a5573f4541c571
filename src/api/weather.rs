//! A place in a request becomes its forecast, before the calculation.
//!
//! What is wrong with the place itself is noted as a fault of its field, so that it comes together with the request's other
//! faults; a weather service that fails is a problem of its own, and the same request with `conditions` would be answered.

use std::time::Duration;

use validator::Validate;

use super::edge::Edge;
use super::metrics::Metrics;
use super::problem::{Problem, ProblemCode};
use crate::calculation::Calculation;
use crate::calculation::answer::{At, FaultCode, Notes};
use crate::calculation::subject::Weather;
use crate::forecast::{Failure, Forecast, Hourly};
use crate::practice::sources::Source;

const HINT: &str = "Send conditions instead: the weather hour by hour.";

/// The request with the forecast in the stead of its `weather.location`, and what there is to say about that.
///
/// # Errors
/// 502, 503 or 504 when the weather service gives no forecast.
pub async fn resolved<C: Calculation>(mut request: C, edge: &Edge) -> Result<(C, Notes), Problem> {
    let mut notes = Notes::default();
    if let Some(weather) = request.weather_mut() {
        resolve(weather, edge.forecast.as_deref(), &edge.metrics, &mut notes).await?;
    }
    Ok((request, notes))
}

/// Puts the forecast in the stead of a `location`. One that is at fault stays where it is.
async fn resolve(
    weather: &mut Weather,
    forecast: Option<&dyn Forecast>,
    metrics: &Metrics,
    notes: &mut Notes,
) -> Result<(), Problem> {
    let Some(place) = weather.location else { return Ok(()) };
    let at = At::BODY.field("weather");
    let here = at.field("location");
    if weather.conditions.is_some() {
        let detail = "conditions and location were both sent.";
        notes.fault(&here, FaultCode::Contradiction, detail, "Leave location out, or leave conditions out.");
        return Ok(());
    }
    if place.validate().is_err() {
        // The calculation names what is wrong with its numbers.
        return Ok(());
    }
    let Some(forecast) = forecast else {
        notes.fault(&here, FaultCode::ForecastOff, "This service fetches no forecasts.", HINT);
        return Ok(());
    };
    let outcome = forecast.hourly(place).await;
    metrics.forecast_asked(match &outcome {
        Ok(Hourly { is_cached: true, .. }) => "cached",
        Ok(_) => "ok",
        Err(failure) => failure.outcome(),
    });
    match outcome {
        Ok(Hourly { conditions, .. }) => {
            if let Some(first) = conditions.first() {
                let value = format!("{} hours from {}", conditions.len(), first.time);
                let reason = "The weather service's forecast for weather.location.";
                notes.assume(&at.field("conditions"), value, reason, &[Source::PublicForecast]);
            }
            *weather = Weather { conditions: Some(conditions), location: None };
            Ok(())
        }
        Err(Failure::NotCovered) => {
            let detail = "The weather service has no hourly forecast for this place.";
            notes.fault(&here, FaultCode::ForecastNotCovered, detail, HINT);
            Ok(())
        }
        Err(failure) => Err(problem(&failure)),
    }
}

fn problem(failure: &Failure) -> Problem {
    match failure {
        Failure::Timeout => Problem::new(ProblemCode::ForecastTimeout),
        Failure::Open(wait) => Problem { retry_after: Some(seconds(*wait)), ..unavailable() },
        Failure::Busy => unavailable(),
        _ => Problem::new(ProblemCode::ForecastFailed),
    }
}

fn unavailable() -> Problem {
    Problem::new(ProblemCode::ForecastUnavailable)
}

/// Whole seconds, rounded up, at least one.
fn seconds(wait: Duration) -> u64 {
    (wait.as_secs() + u64::from(wait.subsec_nanos() > 0)).max(1)
}
