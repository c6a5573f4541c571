//! One document of the service: bounded in time and size, with one retry.

use std::error::Error;
use std::hash::{BuildHasher, Hasher, RandomState};
use std::time::Duration;

use reqwest::header::{ACCEPT, AGE, CACHE_CONTROL, HeaderMap, HeaderName};
use reqwest::redirect::Policy;
use reqwest::{Client, StatusCode, Url};

use super::ForecastError;
use super::cache::lifetime;
use super::limits::ForecastLimits;

/// The service's own media type; without it the service may answer in an older form. From memory.
const MEDIA_TYPE: &str = "application/geo+json";

/// The most redirects that are followed, all on the service's own origin.
const MAX_REDIRECTS: usize = 3;

/// A document as received.
pub struct FetchedDocument {
    /// Its bytes.
    pub body: Vec<u8>,
    /// How long it may be used again, by its own headers.
    pub lifetime: Duration,
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
    match response.status() {
        StatusCode::OK => {}
        StatusCode::NOT_FOUND => return Err(ForecastError::NotCovered),
        status if status.is_server_error() => {
            return Err(ForecastError::Unreachable(format!("status {}", status.as_u16())));
        }
        status => return Err(ForecastError::Refused(status.as_u16())),
    }
    let too_large = || ForecastError::Malformed(format!("more than {} bytes", limits.body));
    if response.content_length().is_some_and(|length| length > limits.body as u64) {
        return Err(too_large());
    }
    let lifetime = lifetime_of(response.headers());
    let mut body = Vec::new();
    while let Some(chunk) = response.chunk().await.map_err(broken)? {
        if body.len() + chunk.len() > limits.body {
            return Err(too_large());
        }
        body.extend_from_slice(&chunk);
    }
    Ok(FetchedDocument { body, lifetime })
}

/// The library's text names the address, and with it the place: it is left out, and the causes of the error are added.
fn broken(error: reqwest::Error) -> ForecastError {
    if error.is_timeout() {
        return ForecastError::Timeout;
    }
    let error = error.without_url();
    let mut text = error.to_string();
    let mut cause_of = error.source();
    while let Some(cause) = cause_of {
        text.push_str(&format!(": {cause}"));
        cause_of = cause.source();
    }
    ForecastError::Unreachable(text)
}

fn lifetime_of(headers: &HeaderMap) -> Duration {
    let text = |name: HeaderName| {
        let values = headers.get_all(name).iter().filter_map(|value| value.to_str().ok());
        values.collect::<Vec<_>>().join(", ")
    };
    lifetime(&text(CACHE_CONTROL), &text(AGE))
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
    fn only_addresses_of_this_machine_pass_by_a_proxy() {
        let of = |text: &str| is_on_this_machine(&Url::parse(text).unwrap());
        assert!(of("http://127.0.0.1:8080") && of("http://localhost/x") && of("http://[::1]:9"));
        assert!(!of("https://weather.tern-island.example") && !of("http://192.0.2.7"));
    }
}
