//! Admission control: which requests are processed. In this order it checks the size of the head, the rate and the key;
//! [`super::middleware::admit`] asks it about each request. What a request is estimated to cost is charged once it is understood.

mod caller;
mod keys;
mod places;
mod rate;

use std::num::NonZeroU32;
use std::sync::Arc;

use actix_web::dev::ServiceRequest;
use actix_web::http::{Method, header};
pub use caller::{Caller, is_trusted};
use keys::KeyFile;
pub use rate::RateAllowance;
use rate::{AddressLimiter, RateExceeded};
use reqwest::Url;

use super::caller_shares::{CallerShares, TakenShare};
use super::paths;
use super::problem::{Problem, ProblemCode};
use super::request_context::RequestContext;
use crate::calculation::report::Statement;
use crate::drawing;
use crate::settings::{LimitSettings, Rate, Settings};

/// What one unit beyond the first pays for, µs of a core.
const MICROS_PER_UNIT: u64 = 10_000;

/// The most that is charged for one request, µs of a core: searches end before they take longer, whatever the counts of a request promise.
const MAX_CHARGED_MICROS: u64 = 300_000;

/// Who may send requests to an instance, and how many.
pub struct AdmissionControl {
    limits: LimitSettings,
    keys: Option<KeyFile>,
    addresses: AddressLimiter,
    /// The addresses that may draw without a key, where any may.
    guests: Option<AddressLimiter>,
    batches: Arc<CallerShares>,
    /// The origin of the service's own pages, where callers reach it by a public address.
    own_origin: Option<String>,
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
            .map(|path| KeyFile::open(path.clone(), limits.rate, settings.keys_may_be_empty, paths::exists))
            .transpose()?;
        let own_origin = Url::parse(&settings.public_url).ok().map(|url| url.origin().ascii_serialization());
        if let Some(keys) = &keys {
            if settings.front_page_key.as_ref().is_some_and(|key| keys.page_origins(key.as_bytes()).is_empty()) {
                return Err(
                    "LOOPWRIGHT_FRONT_PAGE_KEY is no publishable key of LOOPWRIGHT_KEYS: a page shows it to all, \
                            so its client needs origins and paths"
                        .to_owned(),
                );
            }
            if own_origin.is_none() && !settings.listen.ip().is_loopback() && keys.has_pages() {
                tracing::warn!(
                    "LOOPWRIGHT_PUBLIC_URL is not set: with publishable keys the front page and the frame can ask nothing"
                );
            }
        }
        Ok(Self {
            keys,
            addresses: AddressLimiter::new(limits.rate),
            guests: settings.open_drawings.then(|| AddressLimiter::new(limits.open_drawing_rate)),
            batches: CallerShares::new(limits.batches_in_flight, limits.batches_in_flight.div_ceil(2)),
            limits,
            own_origin,
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
        self.guests.iter().for_each(AddressLimiter::forget_idle);
        self.keys.iter().for_each(KeyFile::forget_idle);
    }

    /// Admits a request, and records its caller in its context.
    ///
    /// # Errors
    /// 401, 403, 405 for a tunnel, 429 or 431 when it is not admitted.
    pub fn admit(&self, request: &ServiceRequest) -> Result<(), Problem> {
        if *request.method() == Method::CONNECT {
            return Err(Problem::method_not_allowed("GET, HEAD, POST"));
        }
        self.check_head(request)?;
        if request.path().starts_with("/health/") {
            return Ok(());
        }
        let context = RequestContext::of(request.request());
        let caller = context.caller.get_or_init(|| self.identify(request));
        self.charge(&context, NonZeroU32::MIN)?;
        match (caller, &self.keys) {
            (Caller::Client(client, _), _) => {
                client.places.as_ref().map_or(Ok(()), |places| places.check(request, self.own_origin.as_deref()))
            }
            (Caller::Address(_), Some(keys)) if !is_public(request.path()) => Err(keys.refusal(request.headers())),
            _ => Ok(()),
        }
    }

    /// The origins of the pages that a publishable key is for; none of another key.
    pub fn page_origins(&self, key: &[u8]) -> Vec<String> {
        self.keys.as_ref().map(|keys| keys.page_origins(key)).unwrap_or_default()
    }

    /// Whether any key is for pages of this origin.
    pub fn has_key_for(&self, origin: &[u8]) -> bool {
        self.keys.as_ref().is_some_and(|keys| keys.is_for_origin(origin))
    }

    /// The client whose key was sent, when keys are on; else the address. Where no key is needed, a publishable one is not looked at.
    fn identify(&self, request: &ServiceRequest) -> Caller {
        let client = self.keys.as_ref().and_then(|keys| keys.client(keys::bearer_key(request.headers())?));
        let address = caller::address(request, &self.limits.trusted_proxies);
        match client {
            Some(client) if client.places.is_none() || !is_public(request.path()) => Caller::Client(client, address),
            _ if self.is_guest(request) => Caller::Guest(address),
            _ => Caller::Address(address),
        }
    }

    /// Whether a request without a key asks for a drawing that needs none. One with a key that is not known is told so.
    fn is_guest(&self, request: &ServiceRequest) -> bool {
        self.keys.is_some()
            && self.guests.is_some()
            && request.path() == drawing::plan::PATH
            && [Method::GET, Method::HEAD].contains(request.method())
            && !request.headers().contains_key(header::AUTHORIZATION)
    }

    /// Checks the size of the head as received: the request line and each header with its separators.
    fn check_head(&self, request: &ServiceRequest) -> Result<(), Problem> {
        let headers: usize = request.headers().iter().map(|(name, value)| name.as_str().len() + value.len() + 4).sum();
        let path = request.uri().path_and_query().map_or(0, |path| path.as_str().len());
        let line = request.method().as_str().len() + path + "  HTTP/1.1\r\n".len();
        if line + headers <= self.limits.header {
            return Ok(());
        }
        let detail = Statement::new("problems-head-larger").count("limit", self.limits.header as u64);
        Err(Problem::new(ProblemCode::HeadTooLarge).detail(detail))
    }

    /// Counts units against the rate of a caller, and notes what is left.
    fn charge(&self, context: &RequestContext, units: NonZeroU32) -> Result<(), Problem> {
        let Some(caller) = context.caller.get() else { return Ok(()) };
        let (rate, charged) = match caller {
            Caller::Client(client, address) => (client.limiter.rate(), client.limiter.take(*address, units)),
            Caller::Address(address) => (self.limits.rate, self.addresses.take(*address, units)),
            Caller::Guest(address) => {
                let limiter = self.guests.as_ref().unwrap_or(&self.addresses);
                (self.limits.open_drawing_rate, limiter.take(*address, units))
            }
        };
        match charged {
            Ok(remaining) => context.allowance.set(remaining.map(|remaining| RateAllowance { rate, remaining })),
            // What is refused beyond the first unit leaves what was there.
            Err(_) if context.allowance.get().is_some() => (),
            Err(_) => context.allowance.set(Some(RateAllowance { rate, remaining: 0 })),
        }
        charged.map(|_| ()).map_err(rate_problem)
    }

    /// Counts units beyond the first of a request, which was counted on arrival; of all together never more than the burst.
    fn charge_further(&self, context: &RequestContext, further: u32) -> Result<(), Problem> {
        let most = self.rate_of(context).at_once().map_or(u32::MAX, |burst| burst - 1);
        let Some(further) = NonZeroU32::new(further.min(most)) else { return Ok(()) };
        self.charge(context, further).map_err(|problem| Problem {
            // When the request is sent again, its first unit counts first.
            retry_after: problem.retry_after.map(|wait| wait + 1),
            ..problem
        })
    }

    fn rate_of(&self, context: &RequestContext) -> Rate {
        match context.caller.get() {
            Some(Caller::Client(client, _)) => client.limiter.rate(),
            Some(Caller::Guest(_)) => self.limits.open_drawing_rate,
            _ => self.limits.rate,
        }
    }

    /// Counts what a request is estimated to cost beyond its first unit.
    ///
    /// # Errors
    /// 429 when that is more than the caller may ask now.
    pub fn charge_cost(&self, context: &RequestContext, estimated_micros: u64) -> Result<(), Problem> {
        self.charge_further(context, units_of_cost(estimated_micros))
    }

    /// Counts the items of a batch as requests of their own, by the estimates of each.
    ///
    /// # Errors
    /// 429 when they are more than the caller may ask now, 422 when the items are more than it may ever ask at once.
    pub fn charge_batch(&self, context: &RequestContext, estimates: &[u64]) -> Result<(), Problem> {
        let items = u32::try_from(estimates.len()).unwrap_or(u32::MAX);
        match self.rate_of(context).at_once() {
            Some(most) if items > most => Err(rate_problem(RateExceeded::Burst(most))),
            _ => {
                let cost = estimates.iter().fold(0_u32, |sum, micros| sum.saturating_add(units_of_cost(*micros)));
                self.charge_further(context, cost.saturating_add(items - items.min(1)))
            }
        }
    }

    /// Permission to process a batch, until it is dropped.
    ///
    /// # Errors
    /// 503 when as many batches as allowed are in work, of all callers or of this one.
    pub fn acquire_batch_permit(&self, context: &RequestContext) -> Result<TakenShare, Problem> {
        self.batches.take(context.caller_id(), 1).map_err(|exhausted| {
            let detail = Statement::new("problems-batches").code("whose", exhausted.code());
            Problem::new(ProblemCode::Overloaded).detail(detail)
        })
    }
}

/// The units that an estimate costs beyond the first.
fn units_of_cost(estimated_micros: u64) -> u32 {
    (estimated_micros.min(MAX_CHARGED_MICROS) / MICROS_PER_UNIT) as u32
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
pub fn is_public(path: &str) -> bool {
    ["/", "/openapi.json", "/openapi-compact.json", "/changes", "/docs", "/metrics"].contains(&path)
        || ["/docs/", "/problems/", "/embed/", "/front/"].iter().any(|open| path.starts_with(open))
        || paths::is_keyless(path)
}
