//! Settings: every one is an environment variable, and all are listed here.

use std::net::SocketAddr;

use reqwest::Url;
use uom::si::time::second;

use crate::quantity::{dimension, parse};

/// What an operator can set. Each field names its variable.
#[derive(Clone, Debug)]
pub struct Settings {
    /// `LOOPWRIGHT_LISTEN`: address and port to serve on. Default `127.0.0.1:8080`.
    pub listen: SocketAddr,
    /// `LOOPWRIGHT_PUBLIC_URL`: what callers see before the path; prefixes links and problem types. Default none: paths.
    pub public_url: String,
    /// `LOOPWRIGHT_CORS_ORIGINS`: origins whose pages may call, separated by commas, or `*`. Default none.
    pub cors_origins: Vec<String>,
    /// `LOOPWRIGHT_BODY_LIMIT`: the largest body, bytes; `cure-guidance` takes four times as much. Default 65536.
    pub body_limit: usize,
    /// `LOOPWRIGHT_DEADLINE`: how long a request may take to arrive. Default `10 s`.
    pub deadline: std::time::Duration,
    /// `LOOPWRIGHT_BATCH_DEADLINE`: how long the items of a batch may take; those not begun by then are refused. Default `30 s`.
    pub batch_deadline: std::time::Duration,
    /// `LOOPWRIGHT_DRAIN_DELAY`: how long readiness fails before the service stops taking connections. Default `2 s`.
    pub drain_delay: std::time::Duration,
    /// `LOOPWRIGHT_STOP_TIMEOUT`: how long running requests may take to end after that. Default `20 s`.
    pub stop_timeout: std::time::Duration,
    /// `LOOPWRIGHT_WORKERS`: threads that serve. Default the number of cores.
    pub workers: usize,
    /// `LOOPWRIGHT_LOG`: what is logged, as a filter of the `tracing` crates. Default `info`.
    pub log: String,
    /// `LOOPWRIGHT_LOG_FORMAT`: `human` or `json`. Default by whether the output is a terminal.
    pub log_format: Option<LogFormat>,
    /// Where forecasts come from. Default nowhere: nothing leaves this machine.
    pub forecast: Option<ForecastSettings>,
}

/// A weather service that is asked for the forecast of a `weather.location`.
#[derive(Clone, Debug)]
pub struct ForecastSettings {
    /// `LOOPWRIGHT_FORECAST_URL`: its address, such as that of the public US weather service. Empty, the default, is off.
    pub url: Url,
    /// `LOOPWRIGHT_FORECAST_USER_AGENT`: how the instance names itself and its operator to the service. Needed when on.
    pub user_agent: String,
    /// `LOOPWRIGHT_FORECAST_TIMEOUT`: how long one forecast may take, retries included. Default `4 s`.
    pub timeout: std::time::Duration,
}

/// How log lines look.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LogFormat {
    /// For eyes.
    Human,
    /// For machines.
    Json,
}

/// The variables, as they are read.
pub const VARIABLES: [&str; 14] = [
    "LOOPWRIGHT_LISTEN",
    "LOOPWRIGHT_PUBLIC_URL",
    "LOOPWRIGHT_CORS_ORIGINS",
    "LOOPWRIGHT_BODY_LIMIT",
    "LOOPWRIGHT_DEADLINE",
    "LOOPWRIGHT_BATCH_DEADLINE",
    "LOOPWRIGHT_DRAIN_DELAY",
    "LOOPWRIGHT_STOP_TIMEOUT",
    "LOOPWRIGHT_WORKERS",
    "LOOPWRIGHT_LOG",
    "LOOPWRIGHT_LOG_FORMAT",
    "LOOPWRIGHT_FORECAST_URL",
    "LOOPWRIGHT_FORECAST_USER_AGENT",
    "LOOPWRIGHT_FORECAST_TIMEOUT",
];

impl Settings {
    /// Reads the environment.
    ///
    /// # Errors
    /// A message that names the variable, what it holds and what it takes; also for a `LOOPWRIGHT_` variable that does not exist.
    pub fn from_environment() -> Result<Self, String> {
        let names = std::env::vars_os().filter_map(|(name, _)| name.into_string().ok());
        for name in names.filter(|name| name.starts_with("LOOPWRIGHT_")) {
            if !VARIABLES.contains(&name.as_str()) {
                return Err(format!("{name} is no setting; the settings are {}", VARIABLES.join(", ")));
            }
            if let Err(std::env::VarError::NotUnicode(_)) = std::env::var(&name) {
                return Err(format!("{name} is not UTF-8 text"));
            }
        }
        Self::read(|name| std::env::var(name).ok().filter(|value| !value.is_empty()))
    }

    /// Reads settings from any source of variables.
    ///
    /// # Errors
    /// As [`Settings::from_environment`].
    pub fn read(variable: impl Fn(&'static str) -> Option<String>) -> Result<Self, String> {
        let cores = std::thread::available_parallelism().map_or(2, usize::from);
        let text = |name| variable(name).unwrap_or_default();
        Ok(Self {
            listen: parsed(
                &variable,
                "LOOPWRIGHT_LISTEN",
                "127.0.0.1:8080",
                "an address and port such as 127.0.0.1:8080",
            )?,
            public_url: text("LOOPWRIGHT_PUBLIC_URL").trim_end_matches('/').to_owned(),
            cors_origins: text("LOOPWRIGHT_CORS_ORIGINS")
                .split(',')
                .map(|origin| origin.trim().to_owned())
                .filter(|origin| !origin.is_empty())
                .collect(),
            body_limit: within(
                "LOOPWRIGHT_BODY_LIMIT",
                parsed(&variable, "LOOPWRIGHT_BODY_LIMIT", "65536", "a number of bytes")?,
                1..=16_777_216,
            )?,
            deadline: duration(&variable, "LOOPWRIGHT_DEADLINE", "10 s", 0.05)?,
            batch_deadline: duration(&variable, "LOOPWRIGHT_BATCH_DEADLINE", "30 s", 0.0)?,
            drain_delay: duration(&variable, "LOOPWRIGHT_DRAIN_DELAY", "2 s", 0.0)?,
            stop_timeout: duration(&variable, "LOOPWRIGHT_STOP_TIMEOUT", "20 s", 1.0)?,
            workers: within(
                "LOOPWRIGHT_WORKERS",
                parsed(&variable, "LOOPWRIGHT_WORKERS", &cores.to_string(), "a number of threads")?,
                1..=256,
            )?,
            log: variable("LOOPWRIGHT_LOG").unwrap_or_else(|| "info".to_owned()),
            log_format: match text("LOOPWRIGHT_LOG_FORMAT").as_str() {
                "" => None,
                "human" => Some(LogFormat::Human),
                "json" => Some(LogFormat::Json),
                other => return Err(format!("LOOPWRIGHT_LOG_FORMAT is \"{other}\"; it takes human or json")),
            },
            forecast: forecast(&variable)?,
        })
    }
}

/// The weather service, when its address is set; its other variables are checked all the same.
fn forecast(variable: &impl Fn(&'static str) -> Option<String>) -> Result<Option<ForecastSettings>, String> {
    let timeout = duration(variable, "LOOPWRIGHT_FORECAST_TIMEOUT", "4 s", 0.1)?;
    let user_agent = variable("LOOPWRIGHT_FORECAST_USER_AGENT").unwrap_or_default();
    if user_agent.len() > 200 || !user_agent.bytes().all(|byte| (b' '..=b'~').contains(&byte)) {
        return Err("LOOPWRIGHT_FORECAST_USER_AGENT takes at most 200 printable ASCII characters".to_owned());
    }
    let Some(address) = variable("LOOPWRIGHT_FORECAST_URL") else { return Ok(None) };
    let url = Url::parse(&address).ok().filter(|url| {
        let is_plain = url.username().is_empty() && url.password().is_none();
        ["http", "https"].contains(&url.scheme()) && is_plain && url.query().is_none() && url.fragment().is_none()
    });
    let Some(url) = url else {
        // The address may hold a password, so it is not repeated.
        return Err(
            "LOOPWRIGHT_FORECAST_URL takes an address such as https://weather.example, without user, query or \
                    fragment; empty switches forecasts off"
                .to_owned(),
        );
    };
    if user_agent.trim().is_empty() {
        return Err(
            "LOOPWRIGHT_FORECAST_USER_AGENT is needed with LOOPWRIGHT_FORECAST_URL; it takes a name and a way to \
                    reach you, such as loops.example (operator@loops.example)"
                .to_owned(),
        );
    }
    Ok(Some(ForecastSettings { url, user_agent, timeout }))
}

fn parsed<T: std::str::FromStr>(
    variable: &impl Fn(&'static str) -> Option<String>,
    name: &'static str,
    default: &str,
    takes: &str,
) -> Result<T, String> {
    let value = variable(name).unwrap_or_else(|| default.to_owned());
    value.parse().map_err(|_| format!("{name} is \"{value}\"; it takes {takes}"))
}

fn within(name: &str, value: usize, range: std::ops::RangeInclusive<usize>) -> Result<usize, String> {
    if range.contains(&value) {
        return Ok(value);
    }
    Err(format!("{name} is \"{value}\"; it takes {} to {}", range.start(), range.end()))
}

/// A duration in the grammar of the requests: `10 s`, `1 min`.
fn duration(
    variable: &impl Fn(&'static str) -> Option<String>,
    name: &'static str,
    default: &str,
    least_seconds: f64,
) -> Result<std::time::Duration, String> {
    let value = variable(name).unwrap_or_else(|| default.to_owned());
    let refused = |hint: &str| format!("{name} is \"{value}\"; {hint}");
    let time = parse::<dimension::Duration>(&value).map_err(|fault| refused(&fault.hint))?;
    if time.si.get::<second>() < least_seconds {
        return Err(refused(&format!("it takes a duration of {least_seconds} s or more")));
    }
    std::time::Duration::try_from_secs_f64(time.si.get::<second>())
        .map_err(|_| refused("it takes a duration such as 10 s"))
}
