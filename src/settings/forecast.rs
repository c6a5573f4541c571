//! The weather service.

use std::time::Duration;

use reqwest::Url;

use super::reader::{VariableReader, is_plain_address};

/// A weather service that is asked for the forecast of a `weather.location`.
#[derive(Clone, Debug)]
pub struct ForecastSettings {
    /// `LOOPWRIGHT_FORECAST_URL`: its address, such as that of the public US weather service; one that begins with `https` needs a
    /// build with the feature `tls`. Empty, the default, is off.
    pub url: Url,
    /// `LOOPWRIGHT_FORECAST_USER_AGENT`: how the instance names itself and its operator to the service. Needed when on.
    pub user_agent: String,
    /// `LOOPWRIGHT_FORECAST_TIMEOUT`: how long one forecast may take, retries included. Default `4 s`.
    pub timeout: Duration,
}

/// The weather service, when its address is set; its other variables are checked all the same.
pub(super) fn read(variables: &VariableReader) -> Result<Option<ForecastSettings>, String> {
    let timeout = variables.duration("LOOPWRIGHT_FORECAST_TIMEOUT", "4 s", 0.1)?;
    let user_agent = variables.text("LOOPWRIGHT_FORECAST_USER_AGENT");
    if user_agent.len() > 200 || !user_agent.bytes().all(|byte| (b' '..=b'~').contains(&byte)) {
        return Err("LOOPWRIGHT_FORECAST_USER_AGENT takes at most 200 printable ASCII characters".to_owned());
    }
    let Some(address) = variables.get("LOOPWRIGHT_FORECAST_URL") else { return Ok(None) };
    let Some(url) = Url::parse(&address).ok().filter(|_| is_plain_address(&address)) else {
        // The address may hold a password, so it is not repeated.
        return Err(
            "LOOPWRIGHT_FORECAST_URL takes an address such as https://weather.example, without user, query or \
                    fragment; empty switches forecasts off"
                .to_owned(),
        );
    };
    if url.scheme() == "https" && !cfg!(feature = "tls") {
        return Err(
            "LOOPWRIGHT_FORECAST_URL begins with https, and this build speaks no TLS: build it with --features tls"
                .to_owned(),
        );
    }
    if user_agent.trim().is_empty() {
        return Err(
            "LOOPWRIGHT_FORECAST_USER_AGENT is needed with LOOPWRIGHT_FORECAST_URL; it takes a name and a way to \
                    reach you, such as loops.example (operator@loops.example)"
                .to_owned(),
        );
    }
    Ok(Some(ForecastSettings { url, user_agent, timeout }))
}
