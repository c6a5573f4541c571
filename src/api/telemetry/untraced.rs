//! A build without the feature `otlp`: no traces, and no cost.

use actix_web::dev::ServiceRequest;
use tracing::Span;
use tracing_subscriber::layer::Identity;

/// Nothing.
pub struct Traces;

impl Traces {
    /// No traces.
    ///
    /// # Errors
    /// When the settings ask for some.
    pub fn new(url: Option<&str>) -> Result<Self, String> {
        let refused =
            "LOOPWRIGHT_OTLP_URL is set, and this program was built without traces; build it with --features otlp";
        if url.is_some() { Err(refused.to_owned()) } else { Ok(Self) }
    }

    /// No layer: one that does nothing would take every event.
    #[expect(clippy::unused_self, reason = "the build with traces needs it")]
    pub fn layer(&self) -> Option<Identity> {
        None
    }
}

/// No span.
pub fn begun(_request: &ServiceRequest, _request_id: &str) -> Span {
    Span::none()
}

/// Nothing.
pub fn answered(_span: &Span, _status: u16) {}
