//! One document of the service: bounded in time and size, with one retry.

use std::error::Error;
use std::hash::{BuildHasher, Hasher, RandomState};
use std::time::{Duration, SystemTime};

use reqwest::header::{ACCEPT, AGE, CACHE_CONTROL, HeaderMap, HeaderName, RETRY_AFTER};
use reqwest::redirect::Policy;
use reqwest::{Client, StatusCode, Url};

use super::ForecastError;
use super::lifetime::Lifetime;
use super::limits::{ForecastLimits, MAX_PAUSE};

/// The service's own media type; without it the service may answer in an older form. From memory.
const MEDIA_TYPE: &str = "application/geo+json";

/// The most redirects that are followed, all on the service's own origin.
const MAX_REDIRECTS: usize = 3;

/// A document as received.
pub struct FetchedDocument {
    /// Its bytes; `None` where the service has no such document (404).
    pub body: Option<Vec<u8>>,
    /// How long it may be used again, by its own headers.
    pub lifetime: Lifetime,
}

/// A client for one service.
///
/// # Errors
/// When the client cannot be built, as with a `user_agent` that is no header value or no certificates on the machine.
pub fn client(base: &Url, user_agent: &str, limits: &ForecastLimits) -> Result<Client, String> {
    let origin = base.origin();
    let policy = Policy::custom(move |attempt| {
        let stays = attempt.url().origin() == origin && attempt.previous().len() <= MAX_REDIRECTS;
        if stays { attempt.follow() } else { attempt.stop() }
    });
    let client =
        Client::builder().user_agent(user_agent).connect_timeout(limits.connect).redirect(policy).referer(false);
    // The usual proxy variables apply, but no proxy reaches the addresses of this machine.
    let client = if is_on_this_machine(base) { client.no_proxy() } else { client };
    client.build().map_err(|error| format!("the forecast client cannot be built: {error:?}"))
}

fn is_on_this_machine(base: &Url) -> bool {
    let host = base.host_str().unwrap_or_default().trim_matches(['[', ']']);
    host == "localhost" || host.parse::<std::net::IpAddr>().is_ok_and(|address| address.is_loopback())
}

/// Gets a document, with one retry after a pause when the failure is transient.
///
/// # Errors
/// A [`ForecastError`] that says what was received instead.
pub async fn get(client: &Client, address: &Url, limits: &ForecastLimits) -> Result<FetchedDocument, ForecastError> {
    match attempt(client, address, limits).await {
        Err(failure) if failure.is_transient() => {
            tokio::time::sleep(pause(limits.pause)).await;
            attempt(client, address, limits).await
        }
        outcome => outcome,
    }
}

async fn attempt(client: &Client, address: &Url, limits: &ForecastLimits) -> Result<FetchedDocument, ForecastError> {
    let request = client.get(address.clone()).header(ACCEPT, MEDIA_TYPE).timeout(limits.attempt);
    let mut response = request.send().await.map_err(broken)?;
    let lifetime = lifetime_of(response.headers());
    match response.status() {
        StatusCode::OK => {}
        StatusCode::NOT_FOUND => return Ok(FetchedDocument { body: None, lifetime }),
        status => {
            let wait = pause_of(status, response.headers());
            return Err(wait.map_or(ForecastError::Refused(status.as_u16()), ForecastError::Paused));
        }
    }
    let too_large = || ForecastError::Malformed(format!("more than {} bytes", limits.body));
    if response.content_length().is_some_and(|length| length > limits.body as u64) {
        return Err(too_large());
    }
    let mut body = Vec::new();
    while let Some(chunk) = response.chunk().await.map_err(broken)? {
        if body.len() + chunk.len() > limits.body {
            return Err(too_large());
        }
        body.extend_from_slice(&chunk);
    }
    Ok(FetchedDocument { body: Some(body), lifetime })
}

/// The library's text names the address, and with it the place: it is left out, and the causes of the error are added.
fn broken(error: reqwest::Error) -> ForecastError {
    if error.is_timeout() {
        return ForecastError::Timeout;
    }
    let is_connected = !error.is_connect();
    let error = error.without_url();
    let mut text = error.to_string();
    let mut cause_of = error.source();
    while let Some(cause) = cause_of {
        text.push_str(&format!(": {cause}"));
        cause_of = cause.source();
    }
    if is_connected { ForecastError::Broken(text) } else { ForecastError::Unreachable(text) }
}

fn lifetime_of(headers: &HeaderMap) -> Lifetime {
    let text = |name: HeaderName| {
        let values = headers.get_all(name).iter().filter_map(|value| value.to_str().ok());
        values.collect::<Vec<_>>().join(", ")
    };
    Lifetime::stated(&text(CACHE_CONTROL), &text(AGE))
}

/// How long the service wants to be left alone, in so far as it is.
fn pause_of(status: StatusCode, headers: &HeaderMap) -> Option<Duration> {
    let may_pause = [StatusCode::TOO_MANY_REQUESTS, StatusCode::SERVICE_UNAVAILABLE].contains(&status);
    let text = headers.get(RETRY_AFTER).filter(|_| may_pause)?.to_str().ok()?;
    parse_retry_after(text.trim(), SystemTime::now())
}

/// Parses a `Retry-After`: seconds, or the date at which it ends. `None` when it is over.
fn parse_retry_after(text: &str, now: SystemTime) -> Option<Duration> {
    let wait = match text.parse().map(Duration::from_secs) {
        Ok(wait) => wait,
        Err(_) => httpdate::parse_http_date(text).ok()?.duration_since(now).ok()?,
    };
    Some(wait.min(MAX_PAUSE)).filter(|wait| !wait.is_zero())
}

/// From once to twice the given time, so that many callers do not retry at the same moment. The standard library's hasher has
/// random keys, which is random enough for this.
fn pause(least: Duration) -> Duration {
    let random = RandomState::new().build_hasher().finish();
    least + least.mul_f64(random as f64 / u64::MAX as f64)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pauses_differ_and_keep_their_bounds() {
        let least = Duration::from_millis(100);
        let pauses: Vec<_> = (0..100).map(|_| pause(least)).collect();
        assert!(pauses.iter().all(|pause| (least..=2 * least).contains(pause)));
        let distinct: std::collections::HashSet<_> = pauses.iter().collect();
        assert!(distinct.len() > 50, "{pauses:?}");
    }

    #[test]
    fn a_pause_is_a_number_of_seconds_or_ends_at_a_date() {
        let now = httpdate::parse_http_date("Wed, 25 Nov 2026 12:00:00 GMT").unwrap();
        let of = |text| parse_retry_after(text, now).map(|wait| wait.as_secs());
        assert_eq!(of("120"), Some(120));
        assert_eq!((of("86400"), of("Thu, 26 Nov 2026 12:00:00 GMT")), (Some(3600), Some(3600)));
        assert_eq!(of("Wed, 25 Nov 2026 12:01:30 GMT"), Some(90));
        for over in ["0", "Wed, 25 Nov 2026 12:00:00 GMT", "Wed, 25 Nov 2026 11:00:00 GMT", "-5", "soon", "1.5", ""] {
            assert_eq!(of(over), None, "{over}");
        }
    }

    #[test]
    fn only_addresses_of_this_machine_pass_by_a_proxy() {
        let of = |text: &str| is_on_this_machine(&Url::parse(text).unwrap());
        assert!(of("http://127.0.0.1:8080") && of("http://localhost/x") && of("http://[::1]:9"));
        assert!(!of("https://weather.tern-island.example") && !of("http://192.0.2.7"));
    }
}
