//! What all handlers share: settings, metrics, readiness; and the id of a request.

use std::fmt;
use std::sync::OnceLock;
use std::sync::atomic::{AtomicBool, Ordering};

use actix_web::{HttpMessage, HttpRequest, web};

use super::fixed::Fixed;
use super::metrics::Metrics;
use crate::forecast::{Forecast, Limits, PublicService};
use crate::settings::{ForecastSettings, Settings};

/// The state of one instance.
pub struct Edge {
    /// How it was set up.
    pub settings: Settings,
    /// What it counts.
    pub metrics: Metrics,
    /// The description with this instance's address, rendered when it is first asked for.
    pub description: OnceLock<Fixed>,
    /// Where forecasts come from, if from anywhere.
    pub forecast: Option<Box<dyn Forecast>>,
    ready: AtomicBool,
}

impl Edge {
    /// An instance that is not ready yet.
    ///
    /// # Errors
    /// When the settings ask for forecasts and the client for them cannot be built.
    pub fn new(settings: Settings) -> Result<Self, String> {
        Ok(Self {
            forecast: settings.forecast.as_ref().map(source).transpose()?,
            settings,
            metrics: Metrics::default(),
            description: OnceLock::new(),
            ready: AtomicBool::new(false),
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

    /// Whether requests should be sent here.
    pub fn is_ready(&self) -> bool {
        self.ready.load(Ordering::Relaxed)
    }

    /// Says whether requests should be sent here.
    pub fn set_ready(&self, ready: bool) {
        self.ready.store(ready, Ordering::Relaxed);
    }

    /// A path of this service as callers see it.
    pub fn link(&self, path: &str) -> String {
        format!("{}{path}", self.settings.public_url)
    }
}

/// The weather service of the settings.
fn source(settings: &ForecastSettings) -> Result<Box<dyn Forecast>, String> {
    let limits = Limits::within(settings.timeout);
    Ok(Box::new(PublicService::new(settings.url.clone(), &settings.user_agent, limits)?))
}

/// The id of a request: the caller's, or one made here.
#[derive(Clone, Debug)]
pub struct RequestId(String);

impl RequestId {
    /// The header that carries it, in and out.
    pub const HEADER: &'static str = "x-request-id";

    /// Takes the caller's id if it is short and plain, so that it is safe in logs and headers; else makes one.
    pub fn take(request: &impl HttpMessage) -> Self {
        let sent = request.headers().get(Self::HEADER).and_then(|value| value.to_str().ok()).filter(|id| {
            (1..=64).contains(&id.len())
                && id.bytes().all(|byte| byte.is_ascii_alphanumeric() || b"-_.".contains(&byte))
        });
        Self(sent.map_or_else(|| uuid::Uuid::now_v7().to_string(), str::to_owned))
    }

    /// The id that a request was given on its way in.
    pub fn of(request: &HttpRequest) -> Self {
        request.extensions().get::<Self>().cloned().unwrap_or_else(|| Self::take(request))
    }

    /// The id as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for RequestId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}
