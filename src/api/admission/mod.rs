//! Who is let in, and how much at once: the size of the head, the key, the rate, the requests in work, in this order.
//!
//! What is refused here is answered like any failure: a problem, with the headers that pages of other sites need. Its body is
//! read to the end first, so that the connection lives and the caller can try again on it.

mod caller;
mod keys;
mod rate;

use std::num::NonZeroU32;
use std::sync::Arc;

use actix_web::body::{BoxBody, MessageBody};
use actix_web::dev::{ServiceRequest, ServiceResponse};
use actix_web::middleware::Next;
use actix_web::{Error, HttpRequest, web};
use tokio::sync::{OwnedSemaphorePermit, Semaphore, SemaphorePermit};

pub use caller::Caller;
use keys::Keys;
use rate::{Addresses, Refused};

use super::app_state::AppState;
use super::problem::{Problem, ProblemCode};
use super::request_context::RequestContext;
use super::drain;
use crate::settings::{LimitSettings, Settings};

/// What an instance lets in.
pub struct AdmissionControl {
    limits: LimitSettings,
    keys: Option<Keys>,
    addresses: Addresses,
    requests: Semaphore,
    batches: Arc<Semaphore>,
}

impl AdmissionControl {
    /// The gate of these settings.
    ///
    /// # Errors
    /// When the file of keys cannot be used; the message says why.
    pub fn new(settings: &Settings) -> Result<Self, String> {
        let limits = settings.limits.clone();
        let keys = settings.keys.as_ref().map(|path| Keys::open(path.clone(), limits.rate)).transpose()?;
        Ok(Self {
            keys,
            addresses: Addresses::new(limits.rate),
            requests: Semaphore::new(limits.in_flight),
            batches: Arc::new(Semaphore::new(limits.batches_in_flight)),
            limits,
        })
    }

    /// Reads the file of keys again; one that cannot be used changes nothing.
    pub fn reload_keys(&self) {
        match self.keys.as_ref().map(Keys::reload) {
            Some(Ok(clients)) => tracing::info!(clients, "the keys were read again"),
            Some(Err(error)) => tracing::error!("the keys stay as they were: {error}"),
            None => tracing::warn!("there are no keys to read again: LOOPWRIGHT_KEYS is not set"),
        }
    }

    /// Forgets addresses that have not asked for a while, so that memory does not grow with them.
    pub fn forget_idle(&self) {
        self.addresses.forget_idle();
    }

    /// Lets a request in, or says why not; notes who sent it either way. What is open to strangers takes no place of a client's.
    fn admit(&self, request: &ServiceRequest) -> Result<Option<SemaphorePermit<'_>>, Problem> {
        self.judge_head(request)?;
        if request.path().starts_with("/health/") {
            return Ok(None);
        }
        let context = RequestContext::of(request.request());
        let caller = context.caller.get_or_init(|| self.identify(request));
        self.charge(caller, NonZeroU32::MIN)?;
        if is_open(request.path()) {
            return Ok(None);
        }
        if self.keys.is_some() && matches!(caller, Caller::Address(_)) {
            return Err(Problem::unauthorized(keys::sent(request.headers()).is_some()));
        }
        self.requests.try_acquire().map(Some).map_err(|_| Problem::new(ProblemCode::Overloaded))
    }

    /// The client whose key was sent, when keys are on; else the address.
    fn identify(&self, request: &ServiceRequest) -> Caller {
        let client = self.keys.as_ref().and_then(|keys| keys.client(keys::sent(request.headers())?));
        client.map_or_else(|| Caller::Address(caller::address(request, &self.limits.trusted_proxies)), Caller::Client)
    }

    /// The head as it came: the line and each header with its separators.
    fn judge_head(&self, request: &ServiceRequest) -> Result<(), Problem> {
        let headers: usize = request.headers().iter().map(|(name, value)| name.as_str().len() + value.len() + 4).sum();
        let path = request.uri().path_and_query().map_or(0, |path| path.as_str().len());
        let line = request.method().as_str().len() + path + "  HTTP/1.1\r\n".len();
        if line + headers <= self.limits.header {
            return Ok(());
        }
        let detail = format!(
            "The request line and its headers are larger than {} bytes. Send fewer or shorter headers; what is to be \
             computed belongs in the body.",
            self.limits.header
        );
        Err(Problem::new(ProblemCode::HeadTooLarge).detail(detail))
    }

    /// Counts requests against the rate of their caller.
    fn charge(&self, caller: &Caller, requests: NonZeroU32) -> Result<(), Problem> {
        let charged = match caller {
            Caller::Client(client) => client.limiter.take(requests),
            Caller::Address(address) => self.addresses.take(*address, requests),
        };
        charged.map_err(refused)
    }

    /// A place among the batches in work.
    ///
    /// # Errors
    /// 503 when all are taken.
    pub fn acquire_batch_permit(&self) -> Result<OwnedSemaphorePermit, Problem> {
        self.batches.clone().try_acquire_owned().map_err(|_| {
            Problem::new(ProblemCode::Overloaded).detail(
                "The instance has as many batches in work as it takes. Repeat the request after the seconds in Retry-After.",
            )
        })
    }

    /// Counts the items of a batch, the first of which was counted as the request itself.
    ///
    /// # Errors
    /// 429 when the items are more than the caller may ask now, 422 when they are more than it may ever ask at once.
    pub fn charge_batch(&self, request: &HttpRequest, items: usize) -> Result<(), Problem> {
        let context = RequestContext::of(request);
        let Some(caller) = context.caller.get() else { return Ok(()) };
        let rate = match caller {
            Caller::Client(client) => client.limiter.rate(),
            Caller::Address(_) => self.limits.rate,
        };
        let items = u32::try_from(items).unwrap_or(u32::MAX);
        let Some(others) = NonZeroU32::new(items.saturating_sub(1)) else { return Ok(()) };
        match rate.at_once() {
            // Judged by all items: the first is a part of the burst, too.
            Some(most) if items > most => Err(refused(Refused::Never(most))),
            _ => self.charge(caller, others).map_err(|problem| Problem {
                // When it comes again, the request itself counts first.
                retry_after: problem.retry_after.map(|wait| wait + 1),
                ..problem
            }),
        }
    }
}

fn refused(refused: Refused) -> Problem {
    match refused {
        Refused::Later(wait) => Problem::new(ProblemCode::RateLimited).retry_after(wait),
        Refused::Never(most) => Problem::too_many_items(
            format!("The caller may send {most} requests at once, and an item of a batch counts as one."),
            most as usize,
        ),
    }
}

/// What explains the service, to strangers too. Listed are the open paths, not the closed ones: `/%761/` is another way to write
/// `/v1/`, and whatever is not written as it stands here needs a key.
fn is_open(path: &str) -> bool {
    ["/openapi.json", "/docs", "/metrics"].contains(&path)
        || ["/docs/", "/problems/"].iter().any(|open| path.starts_with(open))
}

/// Lets a request in to its handler, or answers it.
///
/// # Errors
/// Passes on what the service inside returns.
pub async fn admit(
    mut request: ServiceRequest,
    next: Next<impl MessageBody + 'static>,
) -> Result<ServiceResponse<BoxBody>, Error> {
    let state = AppState::of(request.request()).clone();
    let refused = match state.admission.admit(&request) {
        Ok(_place) => return next.call(request).await.map(ServiceResponse::map_into_boxed_body),
        Err(problem) => problem,
    };
    let rest = request.extract::<web::Payload>().await?;
    let response = drain::refuse(request.request(), rest, refused).await;
    Ok(request.into_response(response))
}
