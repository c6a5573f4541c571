//! What all handlers share: settings, metrics, readiness.

use std::sync::OnceLock;
use std::sync::atomic::{AtomicBool, Ordering};

use actix_web::{HttpRequest, web};

use super::body::JsonLimits;
use super::response_body::CachedDocument;
use super::admission::AdmissionControl;
use super::metrics::Metrics;
use super::problem::{Problem, ProblemCode};
use crate::forecast::{ForecastSource, ForecastLimits, HttpForecastSource};
use crate::settings::{ForecastSettings, Settings};

/// The state of one instance.
pub struct AppState {
    /// How it was set up.
    pub settings: Settings,
    /// What it lets in.
    pub admission: AdmissionControl,
    /// What it counts.
    pub metrics: Metrics,
    /// The description with this instance's address, rendered when it is first asked for.
    pub description: OnceLock<CachedDocument>,
    /// Where forecasts come from, if from anywhere.
    pub forecast: Option<Box<dyn ForecastSource>>,
    ready: AtomicBool,
    stopping: AtomicBool,
}

impl AppState {
    /// An instance that is not ready yet.
    ///
    /// # Errors
    /// When the settings ask for forecasts and the client for them cannot be built, or name a file of keys that cannot be used.
    pub fn new(settings: Settings) -> Result<Self, String> {
        Ok(Self {
            forecast: settings.forecast.as_ref().map(source).transpose()?,
            admission: AdmissionControl::new(&settings)?,
            settings,
            metrics: Metrics::default(),
            description: OnceLock::new(),
            ready: AtomicBool::new(false),
            stopping: AtomicBool::new(false),
        })
    }

    /// The instance that serves a request.
    ///
    /// # Panics
    /// When the app was built without its state, which no route of ours is.
    #[expect(clippy::expect_used, reason = "the app is built in one place, with its state")]
    pub fn of(request: &HttpRequest) -> &web::Data<Self> {
        request.app_data().expect("the app holds its state")
    }

    /// Whether requests should be sent here: the self-test has passed, and the instance is not stopping.
    pub fn is_ready(&self) -> bool {
        self.ready.load(Ordering::Relaxed) && !self.is_stopping()
    }

    /// Says that the self-test has passed.
    pub fn set_ready(&self) {
        self.ready.store(true, Ordering::Relaxed);
    }

    /// Whether the instance is stopping, so that no connection should be kept.
    pub fn is_stopping(&self) -> bool {
        self.stopping.load(Ordering::Relaxed)
    }

    /// Says that the instance is stopping.
    pub fn set_stopping(&self) {
        self.stopping.store(true, Ordering::Relaxed);
    }

    /// How much structure a body may have.
    pub fn json_limits(&self) -> JsonLimits {
        JsonLimits { depth: self.settings.limits.json_depth, items: self.settings.limits.array }
    }

    /// Counts a panic; the problem that it becomes tells nothing about it.
    pub fn panicked(&self) -> Problem {
        self.metrics.panics.inc();
        Problem::new(ProblemCode::InternalError)
    }

    /// A path of this service as callers see it.
    pub fn link(&self, path: &str) -> String {
        format!("{}{path}", self.settings.public_url)
    }
}

/// The weather service of the settings.
fn source(settings: &ForecastSettings) -> Result<Box<dyn ForecastSource>, String> {
    let limits = ForecastLimits::within(settings.timeout);
    Ok(Box::new(HttpForecastSource::new(settings.url.clone(), &settings.user_agent, limits)?))
}

/// Whether a name is short and plain, so that it is safe in logs and headers: 1 to 64 letters, digits, `-`, `_` or `.`.
pub fn is_plain(name: &str) -> bool {
    (1..=64).contains(&name.len()) && name.bytes().all(|byte| byte.is_ascii_alphanumeric() || b"-_.".contains(&byte))
}
