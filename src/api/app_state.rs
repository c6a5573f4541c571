//! What all handlers share: settings, metrics, readiness.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use actix_web::{HttpRequest, web};
use tokio::sync::OnceCell;

use super::admission::AdmissionControl;
use super::caller_shares::CallerShares;
use super::compute::ComputePool;
use super::json_limits::JsonLimits;
use super::metrics::Metrics;
use super::problem::{Problem, ProblemCode};
use super::response_body::CachedDocument;
use super::unwritten::UnwrittenAnswers;
use crate::forecast::{ForecastLimits, ForecastSource, HttpForecastSource};
use crate::settings::{ForecastSettings, Settings};
use crate::wording::Language;

/// How many callers use up what is divided into bytes. Choice made here.
const SHARES: usize = 4;

/// The state of one instance.
pub struct AppState {
    /// How it was set up.
    pub settings: Settings,
    /// Who may send requests, and how many.
    pub admission: AdmissionControl,
    /// Where it computes.
    pub pool: ComputePool,
    /// The connections of addresses.
    pub connections: Arc<CallerShares>,
    /// The bytes of bodies that are arriving.
    pub arriving: Arc<CallerShares>,
    /// The answers that are being written.
    pub unwritten: Arc<UnwrittenAnswers>,
    /// What it counts.
    pub metrics: Metrics,
    /// The description with this instance's address, rendered when it is first asked for: an instance that is never asked does not compute its examples.
    pub description: OnceCell<CachedDocument>,
    /// The same without the examples of answers.
    pub compact_description: OnceCell<CachedDocument>,
    /// The front page, in each language.
    pub front_pages: [OnceCell<CachedDocument>; Language::ALL.len()],
    /// Where forecasts come from; `None` switches them off.
    pub forecast: Option<Box<dyn ForecastSource>>,
    ready: AtomicBool,
    stopping: AtomicBool,
}

impl AppState {
    /// An instance that is not ready yet.
    ///
    /// # Errors
    /// When the settings ask for forecasts and the client for them cannot be built, or name a file of keys that cannot be used; or when no
    /// threads can be started.
    pub fn new(settings: Settings) -> Result<Self, String> {
        let (limits, metrics) = (&settings.limits, Metrics::default());
        let no_threads = |error| format!("the threads that compute cannot be started: {error}");
        Ok(Self {
            pool: ComputePool::start(settings.compute_threads, limits.in_flight).map_err(no_threads)?,
            connections: CallerShares::new(usize::MAX, limits.connections_per_address),
            arriving: CallerShares::new(limits.arriving, limits.arriving / SHARES),
            unwritten: UnwrittenAnswers::new(limits.unwritten, limits.unwritten / SHARES, metrics.answers_cut.clone()),
            forecast: settings.forecast.as_ref().map(forecast_source).transpose()?,
            admission: AdmissionControl::new(&settings)?,
            settings,
            metrics,
            description: OnceCell::new(),
            compact_description: OnceCell::new(),
            front_pages: [const { OnceCell::const_new() }; Language::ALL.len()],
            ready: AtomicBool::new(false),
            stopping: AtomicBool::new(false),
        })
    }

    /// The instance that serves a request.
    ///
    /// # Panics
    /// When the app was built without its state, which no app of this service is.
    #[expect(clippy::expect_used, reason = "the app is built in one place, with its state")]
    pub fn of(request: &HttpRequest) -> &web::Data<Self> {
        request.app_data().expect("the app holds its state")
    }

    /// Whether requests should be sent here: the self-test has passed, and the instance is not stopping.
    pub fn is_ready(&self) -> bool {
        self.ready.load(Ordering::Relaxed) && !self.is_stopping()
    }

    /// Records that the self-test has passed.
    pub fn set_ready(&self) {
        self.ready.store(true, Ordering::Relaxed);
    }

    /// Whether the instance is stopping, so that connections are closed after their answer.
    pub fn is_stopping(&self) -> bool {
        self.stopping.load(Ordering::Relaxed)
    }

    /// Records that the instance is stopping.
    pub fn set_stopping(&self) {
        self.stopping.store(true, Ordering::Relaxed);
    }

    /// How much structure a body may have.
    pub fn json_limits(&self) -> JsonLimits {
        JsonLimits { depth: self.settings.limits.json_depth, items: self.settings.limits.array }
    }

    /// Counts a panic. Its problem discloses nothing about it.
    pub fn count_panic(&self) -> Problem {
        self.metrics.panics.inc();
        Problem::new(ProblemCode::InternalError)
    }
}

/// The weather service of the settings.
fn forecast_source(settings: &ForecastSettings) -> Result<Box<dyn ForecastSource>, String> {
    let limits = ForecastLimits::within(settings.timeout);
    Ok(Box::new(HttpForecastSource::new(settings.url.clone(), &settings.user_agent, limits)?))
}
