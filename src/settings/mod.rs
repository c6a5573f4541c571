//! Settings: every one is an environment variable, and all are listed here; `reader` parses their values.

mod forecast;
mod limits;
mod reader;

use std::net::SocketAddr;
use std::path::PathBuf;
use std::time::Duration;

pub use forecast::ForecastSettings;
pub use limits::{LimitSettings, Rate};
use reader::{VariableReader, is_plain_address};

/// What an operator can set. Each field names its variable.
#[derive(Clone, Debug)]
pub struct Settings {
    /// `LOOPWRIGHT_LISTEN`: address and port to serve on. Default `127.0.0.1:8080`.
    pub listen: SocketAddr,
    /// `LOOPWRIGHT_METRICS_LISTEN`: address and port for `/metrics` alone. Default none: callers on this machine get it at `listen`.
    pub metrics_listen: Option<SocketAddr>,
    /// `LOOPWRIGHT_PROBE_LISTEN`: address and port for `/health/` alone, with a thread of its own. Default none: only at `listen`.
    pub probe_listen: Option<SocketAddr>,
    /// `LOOPWRIGHT_PUBLIC_URL`: what callers see before the path; prefixes links and problem types. Default none: paths.
    pub public_url: String,
    /// `LOOPWRIGHT_CORS_ORIGINS`: origins whose pages may call, separated by commas, or `*`. Default none.
    pub cors_origins: Vec<String>,
    /// `LOOPWRIGHT_KEYS`: the file of clients and their hashed keys. Default none: no key is needed.
    pub keys: Option<PathBuf>,
    /// `LOOPWRIGHT_KEYS_MAY_BE_EMPTY`: whether that file may list no client. Default `no`.
    pub keys_may_be_empty: bool,
    /// `LOOPWRIGHT_FRONT_PAGE_KEY`: the publishable key of the front page, where keys are on. Default none.
    pub front_page_key: Option<String>,
    /// `LOOPWRIGHT_OPEN_DRAWINGS`: whether links to drawings need no key where others do. Default `no`.
    pub open_drawings: bool,
    /// What one caller, and all together, may ask of an instance.
    pub limits: LimitSettings,
    /// `LOOPWRIGHT_DRAIN_DELAY`: how long readiness fails before the service stops taking connections. Default `2 s`.
    pub drain_delay: Duration,
    /// `LOOPWRIGHT_STOP_TIMEOUT`: how long running requests may take to end after that; longer than a batch may take. Default `35 s`.
    pub stop_timeout: Duration,
    /// `LOOPWRIGHT_WORKERS`: threads that serve. Default the number of cores.
    pub workers: usize,
    /// `LOOPWRIGHT_COMPUTE_THREADS`: threads that compute. Default the number of cores.
    pub compute_threads: usize,
    /// `LOOPWRIGHT_LOG`: what is logged, as a filter of the `tracing` crates. Default `info`.
    pub log: String,
    /// `LOOPWRIGHT_LOG_FORMAT`: `human` or `json`. Default by whether the output is a terminal.
    pub log_format: Option<LogFormat>,
    /// `LOOPWRIGHT_OTLP_URL`: the collector that traces are sent to, such as `http://127.0.0.1:4318`; needs a build with the feature
    /// `otlp`. Default none.
    pub otlp_url: Option<String>,
    /// Where forecasts come from. Default nowhere: nothing leaves this machine.
    pub forecast: Option<ForecastSettings>,
}

/// How log lines look.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LogFormat {
    /// Readable on a terminal.
    Human,
    /// A line of JSON for each event.
    Json,
}

/// The variables, as they are read.
pub const VARIABLES: [&str; 42] = [
    "LOOPWRIGHT_LISTEN",
    "LOOPWRIGHT_METRICS_LISTEN",
    "LOOPWRIGHT_PROBE_LISTEN",
    "LOOPWRIGHT_PUBLIC_URL",
    "LOOPWRIGHT_CORS_ORIGINS",
    "LOOPWRIGHT_KEYS",
    "LOOPWRIGHT_KEYS_MAY_BE_EMPTY",
    "LOOPWRIGHT_FRONT_PAGE_KEY",
    "LOOPWRIGHT_OPEN_DRAWINGS",
    "LOOPWRIGHT_HEADER_LIMIT",
    "LOOPWRIGHT_BODY_LIMIT",
    "LOOPWRIGHT_JSON_DEPTH",
    "LOOPWRIGHT_ARRAY_LIMIT",
    "LOOPWRIGHT_BATCH_LIMIT",
    "LOOPWRIGHT_HEADER_DEADLINE",
    "LOOPWRIGHT_DEADLINE",
    "LOOPWRIGHT_BATCH_DEADLINE",
    "LOOPWRIGHT_IDLE_TIMEOUT",
    "LOOPWRIGHT_ANSWER_DEADLINE",
    "LOOPWRIGHT_CONNECTIONS",
    "LOOPWRIGHT_CONNECTIONS_PER_ADDRESS",
    "LOOPWRIGHT_ARRIVING_LIMIT",
    "LOOPWRIGHT_UNWRITTEN_LIMIT",
    "LOOPWRIGHT_IN_FLIGHT",
    "LOOPWRIGHT_QUEUE_DEADLINE",
    "LOOPWRIGHT_BATCHES_IN_FLIGHT",
    "LOOPWRIGHT_BATCH_ANSWER_LIMIT",
    "LOOPWRIGHT_RATE",
    "LOOPWRIGHT_BURST",
    "LOOPWRIGHT_OPEN_DRAWING_RATE",
    "LOOPWRIGHT_OPEN_DRAWING_BURST",
    "LOOPWRIGHT_TRUSTED_PROXIES",
    "LOOPWRIGHT_DRAIN_DELAY",
    "LOOPWRIGHT_STOP_TIMEOUT",
    "LOOPWRIGHT_WORKERS",
    "LOOPWRIGHT_COMPUTE_THREADS",
    "LOOPWRIGHT_LOG",
    "LOOPWRIGHT_LOG_FORMAT",
    "LOOPWRIGHT_OTLP_URL",
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
        let variables = VariableReader(&variable);
        let cores = std::thread::available_parallelism().map_or(2, |cores| cores.get().min(256));
        let an_address = "an address and port such as 127.0.0.1:8080";
        Ok(Self {
            listen: variables.parsed("LOOPWRIGHT_LISTEN", "127.0.0.1:8080", an_address)?,
            probe_listen: variables.optional("LOOPWRIGHT_PROBE_LISTEN", an_address)?,
            metrics_listen: variables.optional("LOOPWRIGHT_METRICS_LISTEN", an_address)?,
            public_url: public_url(&variables)?,
            cors_origins: variables.list("LOOPWRIGHT_CORS_ORIGINS").map(origin).collect::<Result<_, _>>()?,
            keys: variables.optional("LOOPWRIGHT_KEYS", "the path of a file")?,
            keys_may_be_empty: variables
                .choice("LOOPWRIGHT_KEYS_MAY_BE_EMPTY", &[("no", false), ("yes", true)])?
                .unwrap_or(false),
            front_page_key: variables.get("LOOPWRIGHT_FRONT_PAGE_KEY"),
            open_drawings: variables
                .choice("LOOPWRIGHT_OPEN_DRAWINGS", &[("no", false), ("yes", true)])?
                .unwrap_or(false),
            limits: trusting_somebody(LimitSettings::read(&variables)?)?,
            drain_delay: variables.duration("LOOPWRIGHT_DRAIN_DELAY", "2 s", 0.0)?,
            stop_timeout: variables.duration("LOOPWRIGHT_STOP_TIMEOUT", "35 s", 1.0)?,
            workers: variables.count("LOOPWRIGHT_WORKERS", cores, "a number of threads", 1..=256)?,
            compute_threads: variables.count("LOOPWRIGHT_COMPUTE_THREADS", cores, "a number of threads", 1..=256)?,
            log: variable("LOOPWRIGHT_LOG").unwrap_or_else(|| "info".to_owned()),
            log_format: variables
                .choice("LOOPWRIGHT_LOG_FORMAT", &[("human", LogFormat::Human), ("json", LogFormat::Json)])?,
            otlp_url: variables.get("LOOPWRIGHT_OTLP_URL"),
            forecast: forecast::read(&variables)?,
        })
    }

    /// Whether pages of other sites may call, now or once the keys were read again.
    pub fn may_have_pages(&self) -> bool {
        self.keys.is_some() || !self.cors_origins.is_empty()
    }

    /// What may be meant, and is told to the operator at the start: each a sentence.
    pub fn warnings(&self) -> Vec<&'static str> {
        let cuts_batches = self.stop_timeout < self.limits.batch_deadline;
        let is_open_to_pages = self.keys.is_some() && self.cors_origins.iter().any(|origin| origin == "*");
        let refuses_batches = self.limits.arriving / 4 < self.limits.body.saturating_mul(64);
        let warnings = [
            (
                refuses_batches,
                "a quarter of LOOPWRIGHT_ARRIVING_LIMIT, the share of one caller, is less than a batch may have: 64 times LOOPWRIGHT_BODY_LIMIT",
            ),
            (
                cuts_batches,
                "LOOPWRIGHT_STOP_TIMEOUT is shorter than LOOPWRIGHT_BATCH_DEADLINE: a stop may cut a batch off",
            ),
            (
                is_open_to_pages,
                "LOOPWRIGHT_CORS_ORIGINS is * and LOOPWRIGHT_KEYS is set: any page may call with a secret key that it was given; \
                 list the origins of your clients; those of keys for pages pass without it",
            ),
        ];
        warnings.into_iter().filter_map(|(is_so, warning)| is_so.then_some(warning)).collect()
    }
}

/// The address that callers see, without a slash at its end. Links of problems and of the description begin with it.
fn public_url(variables: &VariableReader) -> Result<String, String> {
    let text = variables.text("LOOPWRIGHT_PUBLIC_URL");
    if text.is_empty() || is_plain_address(&text) {
        return Ok(text.trim_end_matches('/').to_owned());
    }
    // It may hold a password, so it is not repeated.
    Err("LOOPWRIGHT_PUBLIC_URL takes an address such as https://loops.example, without user, query or fragment"
        .to_owned())
}

/// Refuses to trust everybody: then anyone could name any address as that of the caller, and each would have a rate of its own.
fn trusting_somebody(limits: LimitSettings) -> Result<LimitSettings, String> {
    match limits.trusted_proxies.iter().find(|network| network.prefix_len() == 0) {
        Some(all) => Err(format!(
            "LOOPWRIGHT_TRUSTED_PROXIES holds {all}, which is every address: anyone could say whom a request is from; it takes \
             the networks of your proxies"
        )),
        None => Ok(limits),
    }
}

/// Whether a text is an origin as browsers send it: scheme, host and port, nothing behind them. It holds nothing that has a meaning in a
/// content security policy.
pub fn is_origin(text: &str) -> bool {
    let is_plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || "-._:/[]".contains(c);
    text.chars().all(is_plain) && reqwest::Url::parse(text).is_ok_and(|url| url.origin().ascii_serialization() == text)
}

/// An origin whose pages may call, or `*` for all.
fn origin(text: String) -> Result<String, String> {
    let is_origin = text == "*" || is_origin(&text);
    let refused =
        || format!("LOOPWRIGHT_CORS_ORIGINS holds \"{text}\"; it takes origins such as https://shop.example, or *");
    if is_origin { Ok(text) } else { Err(refused()) }
}
