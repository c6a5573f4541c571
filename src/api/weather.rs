//! Replaces a place in a request by its forecast, before the calculation.
//!
//! What is wrong with the place itself is an error of its field, reported together with the other errors of the request. A weather
//! service that fails is a problem of its own: the same request with `conditions` would be answered.

use actix_web::HttpRequest;
use uom::si::f64 as si;
use uom::si::time::second;
use validator::Validate;

use super::app_state::AppState;
use super::metrics::Metrics;
use super::problem::{Problem, ProblemCode};
use super::request_context::RequestContext;
use crate::calculation::Calculation;
use crate::calculation::budget::WorkBudget;
use crate::calculation::input::Weather;
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, InvalidRequest, Statement};
use crate::forecast::{AskerId, ForecastError, ForecastOrigin, ForecastSource, HourlyForecast};
use crate::practice::sources::Source;

const HINT: Statement = Statement::new("errors-send-conditions");

const PAUSED: Statement = Statement::new("problems-forecast-paused");

/// The outcome of fetching the weather of a request: its diagnostics, and whether the request now contains a forecast.
pub struct FetchedWeather {
    diagnostics: Diagnostics,
    was_fetched: bool,
}

impl FetchedWeather {
    /// Replaces the `weather.location` of a request, if it has one, by its forecast.
    ///
    /// # Errors
    /// 502, 503 or 504 when the weather service gives no forecast.
    pub async fn of<C: Calculation>(request: &mut C, state: &AppState, asker: AskerId) -> Result<Self, Problem> {
        let mut diagnostics = Diagnostics::default();
        let was_fetched = match request.weather_mut() {
            Some(weather) => {
                resolve(weather, state.forecast.as_deref(), &state.metrics, asker, &mut diagnostics).await?
            }
            None => false,
        };
        Ok(Self { diagnostics, was_fetched })
    }

    /// Answers the request within a budget.
    ///
    /// # Errors
    /// 422 for errors of the request, 502 when the calculation cannot use the forecast.
    pub fn answer<C: Calculation>(self, request: &C, budget: WorkBudget) -> Result<C::Report, Problem> {
        let answer = request.answer_with(self.diagnostics.bounded_by(budget));
        answer.map_err(|invalid| if self.was_fetched { problem_with_forecast(invalid) } else { invalid.into() })
    }
}

/// The number of a request's caller, who has a share of the questions to the weather service.
pub fn asker(request: &HttpRequest) -> AskerId {
    AskerId(RequestContext::of(request).caller_id())
}

/// Errors in rows that the caller did not send are those of the weather service.
fn problem_with_forecast(mut invalid: InvalidRequest) -> Problem {
    let conditions = FieldPath::BODY.field("weather").field("conditions").pointer();
    let count = invalid.errors.len();
    invalid.errors.retain(|error| !error.pointer.starts_with(&conditions));
    if count > 0 && invalid.errors.is_empty() {
        tracing::warn!(count, "the forecast cannot be computed with");
        return Problem::new(ProblemCode::ForecastFailed);
    }
    invalid.into()
}

/// Replaces a `location` by its forecast, and returns whether it did. A wrong `location` stays: the calculation reports what is wrong
/// with its numbers, and that `conditions` were sent as well.
///
/// # Errors
/// 502, 503 or 504 when the weather service gives no forecast.
pub async fn resolve(
    weather: &mut Weather,
    forecast: Option<&dyn ForecastSource>,
    metrics: &Metrics,
    asker: AskerId,
    diagnostics: &mut Diagnostics,
) -> Result<bool, Problem> {
    let Some(place) = weather.location else { return Ok(false) };
    if weather.conditions.is_some() || place.validate().is_err() {
        return Ok(false);
    }
    let at = FieldPath::BODY.field("weather");
    let here = at.field("location");
    let Some(forecast) = forecast else {
        diagnostics.add_error(&here, FieldErrorCode::ForecastOff, Statement::new("errors-no-forecasts"), HINT);
        return Ok(false);
    };
    let outcome = forecast.hourly(place, asker).await;
    metrics.count_forecast(outcome.as_ref().map_or_else(ForecastError::outcome, |hourly| hourly.origin.outcome()));
    match outcome {
        Ok(HourlyForecast { conditions, origin }) => {
            if let [first, .., last] | [first @ last] = &*conditions {
                let value = format!("hourly from {} to {}", first.time, last.time);
                diagnostics.add_assumption(
                    &at.field("conditions"),
                    value,
                    reason_of(origin),
                    &[Source::PublicForecast],
                );
            }
            *weather = Weather { conditions: Some(conditions.to_vec()), location: None };
            Ok(true)
        }
        Err(ForecastError::NotCovered) => {
            let detail = Statement::new("errors-forecast-not-covered");
            diagnostics.add_error(&here, FieldErrorCode::ForecastNotCovered, detail, HINT);
            Ok(false)
        }
        Err(failure) => Err(forecast_problem(&failure)),
    }
}

fn reason_of(origin: ForecastOrigin) -> Statement {
    match origin {
        ForecastOrigin::Service | ForecastOrigin::Cache => Statement::new("input-forecast"),
        ForecastOrigin::Stale(age) => {
            Statement::new("input-forecast-stale").duration("age", si::Time::new::<second>(age.as_secs_f64()))
        }
    }
}

fn forecast_problem(failure: &ForecastError) -> Problem {
    match failure {
        ForecastError::Timeout => Problem::new(ProblemCode::ForecastTimeout),
        ForecastError::Open(wait) => unavailable().retry_after(*wait),
        ForecastError::Paused(wait) => unavailable().detail(PAUSED).retry_after(*wait),
        ForecastError::Busy => unavailable(),
        ForecastError::NotCovered
        | ForecastError::Unreachable(_)
        | ForecastError::Broken(_)
        | ForecastError::Refused(_)
        | ForecastError::Malformed(_) => Problem::new(ProblemCode::ForecastFailed),
    }
}

fn unavailable() -> Problem {
    Problem::new(ProblemCode::ForecastUnavailable)
}

#[cfg(test)]
mod tests {
    use std::time::Duration;

    use actix_web::http::StatusCode;
    use futures_util::FutureExt;
    use futures_util::future::{BoxFuture, ready};

    use super::*;
    use crate::calculation::input::Location;
    use crate::calculation::report::FieldError;
    use crate::wording::{Language, Worded};

    /// A source with one answer.
    struct FixedForecast(Result<HourlyForecast, ForecastError>);

    impl ForecastSource for FixedForecast {
        fn hourly(&self, _: Location, _: AskerId) -> BoxFuture<'_, Result<HourlyForecast, ForecastError>> {
            ready(self.0.clone()).boxed()
        }
    }

    fn weather(json: &str) -> Weather {
        serde_json::from_str(json).unwrap()
    }

    const ROW: &str = r#"{"time":"2026-11-25T07:00:00-05:00","air":"43 °F","relative_humidity_percent":80}"#;

    fn yard() -> Weather {
        weather(r#"{"location":{"latitude":44.31,"longitude":-68.204}}"#)
    }

    fn rows(origin: ForecastOrigin) -> HourlyForecast {
        HourlyForecast { conditions: [serde_json::from_str(ROW).unwrap()].into(), origin }
    }

    /// What becomes of the weather, with its faults; and the counters.
    async fn outcome(
        mut weather: Weather,
        forecast: Option<&dyn ForecastSource>,
    ) -> (Result<Vec<FieldError>, Problem>, Weather, String) {
        let (metrics, mut diagnostics) = (Metrics::default(), Diagnostics::default());
        let outcome = resolve(&mut weather, forecast, &metrics, AskerId(1), &mut diagnostics).await;
        let errors = diagnostics.finish(None::<()>).unwrap_err().errors;
        (outcome.map(|_| errors), weather, metrics.render())
    }

    async fn only_fault(weather: Weather, forecast: Option<&dyn ForecastSource>) -> (String, &'static str) {
        let (errors, left, _) = outcome(weather, forecast).await;
        let [error] = errors.unwrap().try_into().unwrap();
        let error = error.worded(Language::English);
        assert!(error.hint.words().contains("hour by hour"), "{error:?}");
        assert!(left.location.is_some(), "the place at fault is gone");
        (error.pointer, error.code)
    }

    #[actix_web::test]
    async fn a_place_becomes_its_hours_and_the_report_will_say_so_and_how_old_they_are() {
        let two_hours_ago = ForecastOrigin::Stale(Duration::from_secs(2 * 3600));
        for (origin, outcome, words) in [
            (ForecastOrigin::Service, "ok", "The weather service's forecast for the place that was given."),
            (ForecastOrigin::Cache, "cached", "The weather service's forecast for the place that was given."),
            (
                two_hours_ago,
                "stale",
                "The weather service's forecast for the place that was given, 2 h old: the service gives no newer one now.",
            ),
        ] {
            let (metrics, mut diagnostics, mut weather) = (Metrics::default(), Diagnostics::default(), yard());
            let forecast = FixedForecast(Ok(rows(origin)));
            assert!(resolve(&mut weather, Some(&forecast), &metrics, AskerId(1), &mut diagnostics).await.unwrap());
            assert!(weather.location.is_none());
            assert_eq!(weather.conditions.unwrap().len(), 1);
            let assumed = &diagnostics.into_parts().assumed[0];
            assert_eq!(assumed.about, "#/weather/conditions");
            assert_eq!(assumed.value, "hourly from 2026-11-25T07:00:00-05:00 to 2026-11-25T07:00:00-05:00");
            assert_eq!(assumed.reason.clone().worded(Language::English).words(), words);
            assert_eq!(assumed.source_ids[0], Source::PublicForecast);
            assert!(metrics.render().contains(&format!("loopwright_forecasts_total{{outcome=\"{outcome}\"}} 1\n")));
        }
    }

    #[actix_web::test]
    async fn weather_without_a_place_is_left_as_it_is_and_nobody_is_asked() {
        for text in ["{}".to_owned(), format!("{{\"conditions\":[{ROW}]}}")] {
            let (errors, left, counted) = outcome(weather(&text), Some(&FixedForecast(Err(ForecastError::Busy)))).await;
            assert_eq!(errors.unwrap(), []);
            assert_eq!(left.conditions.is_some(), text.len() > 2);
            assert!(!counted.contains("outcome="), "{counted}");
        }
    }

    #[actix_web::test]
    async fn errors_of_the_place_are_its_own_and_it_stays() {
        let here = "#/weather/location".to_owned();
        assert_eq!(only_fault(yard(), None).await, (here.clone(), "forecast_off"));
        assert_eq!(
            only_fault(yard(), Some(&FixedForecast(Err(ForecastError::NotCovered)))).await,
            (here, "forecast_not_covered")
        );
    }

    #[actix_web::test]
    async fn a_place_beside_conditions_or_nowhere_on_earth_is_left_to_the_calculation() {
        let both = format!(r#"{{"location":{{"latitude":44.31,"longitude":-68.204}},"conditions":[{ROW}]}}"#);
        for text in [both.as_str(), r#"{"location":{"latitude":91,"longitude":-68.204}}"#] {
            let (errors, left, counted) =
                outcome(weather(text), Some(&FixedForecast(Ok(rows(ForecastOrigin::Service))))).await;
            assert_eq!(errors.unwrap(), []);
            assert!(left.location.is_some() && !counted.contains("outcome="));
        }
    }

    #[test]
    fn a_fetched_row_that_cannot_be_computed_with_is_no_fault_of_the_caller() {
        let error = |pointer: &str| {
            FieldError::at(
                pointer.to_owned(),
                FieldErrorCode::Contradiction,
                Statement::new("errors-null"),
                Statement::new("errors-send-value"),
            )
        };
        let row = error("#/weather/conditions/3/dew_point");
        assert_eq!(
            problem_with_forecast(InvalidRequest { errors: vec![row.clone()] }).code,
            ProblemCode::ForecastFailed
        );
        let problem = problem_with_forecast(InvalidRequest { errors: vec![row, error("#/start")] });
        assert_eq!((problem.code, problem.errors), (ProblemCode::ValidationFailed, vec![error("#/start")]));
        assert_eq!(problem_with_forecast(InvalidRequest { errors: vec![] }).code, ProblemCode::InternalError);
    }

    #[actix_web::test]
    async fn a_service_that_fails_is_a_problem_that_says_what_to_send_instead() {
        let cases = [
            (ForecastError::Timeout, "forecast_timeout", StatusCode::GATEWAY_TIMEOUT, None, "timeout"),
            (ForecastError::Unreachable(String::new()), "forecast_failed", StatusCode::BAD_GATEWAY, None, "error"),
            (ForecastError::Broken(String::new()), "forecast_failed", StatusCode::BAD_GATEWAY, None, "error"),
            (ForecastError::Refused(403), "forecast_failed", StatusCode::BAD_GATEWAY, None, "error"),
            (ForecastError::Malformed(String::new()), "forecast_failed", StatusCode::BAD_GATEWAY, None, "malformed"),
            (ForecastError::Busy, "forecast_unavailable", StatusCode::SERVICE_UNAVAILABLE, Some(1), "busy"),
            (
                ForecastError::Open(Duration::from_millis(4100)),
                "forecast_unavailable",
                StatusCode::SERVICE_UNAVAILABLE,
                Some(5),
                "open",
            ),
            (
                ForecastError::Paused(Duration::from_secs(90)),
                "forecast_unavailable",
                StatusCode::SERVICE_UNAVAILABLE,
                Some(90),
                "paused",
            ),
        ];
        for (failure, code, status, retry_after, counted) in cases {
            let (problem, _, metrics) = outcome(yard(), Some(&FixedForecast(Err(failure)))).await;
            let problem = problem.unwrap_err();
            assert_eq!(serde_json::to_value(problem.code).unwrap(), code);
            assert_eq!((problem.code.status(), problem.retry_after), (status, retry_after));
            let detail = problem.detail.worded(Language::English);
            assert!(detail.words().contains("hour by hour"), "{detail}");
            assert!(metrics.contains(&format!("outcome=\"{counted}\"}} 1\n")), "{metrics}");
        }
    }
}
