//! Admission control: which requests are processed. In this order it checks the size of the head, the rate, the key, and how many
//! requests are in work. [`super::middleware::admit`] asks it about each request.

mod caller;
mod keys;
mod rate;

use std::num::NonZeroU32;
use std::sync::Arc;

use actix_web::HttpRequest;
use actix_web::dev::ServiceRequest;
use tokio::sync::{OwnedSemaphorePermit, Semaphore, SemaphorePermit};

pub use caller::Caller;
use keys::KeyFile;
use rate::{AddressLimiter, RateExceeded};

use super::problem::{Problem, ProblemCode};
use super::request_context::RequestContext;
use crate::calculation::report::Statement;
use crate::settings::{LimitSettings, Settings};

/// Who may send requests to an instance, and how many.
pub struct AdmissionControl {
    limits: LimitSettings,
    keys: Option<KeyFile>,
    addresses: AddressLimiter,
    requests: Semaphore,
    batches: Arc<Semaphore>,
}

impl AdmissionControl {
    /// The admission control that these settings ask for.
    ///
    /// # Errors
    /// When the file of keys cannot be used; the message says why.
    pub fn new(settings: &Settings) -> Result<Self, String> {
        let limits = settings.limits.clone();
        let keys = settings
            .keys
            .as_ref()
            .map(|path| KeyFile::open(path.clone(), limits.rate, settings.keys_may_be_empty))
            .transpose()?;
        Ok(Self {
            keys,
            addresses: AddressLimiter::new(limits.rate),
            requests: Semaphore::new(limits.in_flight),
            batches: Arc::new(Semaphore::new(limits.batches_in_flight)),
            limits,
        })
    }

    /// Reads the file of keys again; a file that cannot be used changes nothing.
    pub fn reload_keys(&self) {
        match self.keys.as_ref().map(KeyFile::reload) {
            Some(Ok(())) => (),
            Some(Err(error)) => tracing::error!("the keys stay as they were: {error}"),
            None => tracing::warn!("there are no keys to read again: LOOPWRIGHT_KEYS is not set"),
        }
    }

    /// Forgets addresses that have sent nothing for a while, which bounds the memory for them.
    pub fn forget_idle(&self) {
        self.addresses.forget_idle();
    }

    /// Admits a request until the permit is dropped, and records its caller in its context. Public paths need no permit.
    ///
    /// # Errors
    /// 401, 429, 431 or 503 when it is not admitted.
    pub fn admit(&self, request: &ServiceRequest) -> Result<Option<SemaphorePermit<'_>>, Problem> {
        self.check_head(request)?;
        if request.path().starts_with("/health/") {
            return Ok(None);
        }
        let context = RequestContext::of(request.request());
        let caller = context.caller.get_or_init(|| self.identify(request));
        self.charge(caller, NonZeroU32::MIN)?;
        if is_public(request.path()) {
            return Ok(None);
        }
        if let (Some(keys), Caller::Address(_)) = (&self.keys, caller) {
            return Err(keys.refusal(request.headers()));
        }
        self.requests.try_acquire().map(Some).map_err(|_| Problem::new(ProblemCode::Overloaded))
    }

    /// The client whose key was sent, when keys are on; else the address.
    fn identify(&self, request: &ServiceRequest) -> Caller {
        let client = self.keys.as_ref().and_then(|keys| keys.client(keys::bearer_key(request.headers())?));
        client.map_or_else(|| Caller::Address(caller::address(request, &self.limits.trusted_proxies)), Caller::Client)
    }

    /// Checks the size of the head as received: the request line and each header with its separators.
    fn check_head(&self, request: &ServiceRequest) -> Result<(), Problem> {
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
        charged.map_err(rate_problem)
    }

    /// Permission to process a batch.
    ///
    /// # Errors
    /// 503 when as many batches as allowed are in work.
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
            // Compared with all items: the first is a part of the burst, too.
            Some(most) if items > most => Err(rate_problem(RateExceeded::Burst(most))),
            _ => self.charge(caller, others).map_err(|problem| Problem {
                // When the batch is sent again, the request itself counts first.
                retry_after: problem.retry_after.map(|wait| wait + 1),
                ..problem
            }),
        }
    }
}

fn rate_problem(exceeded: RateExceeded) -> Problem {
    match exceeded {
        RateExceeded::Rate(wait) => Problem::new(ProblemCode::RateLimited).retry_after(wait),
        RateExceeded::Burst(most) => Problem::too_many_items(
            Statement::new("errors-batch-over-burst").count("max_items", u64::from(most)),
            most as usize,
        ),
    }
}

/// Whether a path needs no key. The public paths are listed, not the others: `/%761/` is another way to write `/v1/`, and whatever
/// is not written as here needs a key.
fn is_public(path: &str) -> bool {
    ["/openapi.json", "/docs", "/metrics"].contains(&path)
        || ["/docs/", "/problems/"].iter().any(|open| path.starts_with(open))
}
