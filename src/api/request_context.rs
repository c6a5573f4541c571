//! What is known of a request while it is processed: its id, who sent it, how long was computed for it.

use std::cell::{Cell, OnceCell};
use std::rc::Rc;
use std::time::{Duration, Instant};

use actix_web::{HttpMessage, HttpRequest};

use super::admission::{Caller, RateAllowance};
use super::request_id::RequestId;
use crate::wording::Language;

/// What middleware and handlers share about a request. None of them leaves the request's thread.
pub struct RequestContext {
    /// Its id.
    pub id: RequestId,
    /// Who sent it, as admission control has found.
    pub caller: OnceCell<Caller>,
    /// When its body was read to the end.
    pub body_read_at: Cell<Option<Instant>>,
    /// The language of its answer, once it was asked for.
    pub language: OnceCell<Language>,
    /// What its caller may ask now, where there is a rate.
    pub allowance: Cell<Option<RateAllowance>>,
    computed: Cell<Duration>,
}

impl RequestContext {
    /// Starts the context of a new request.
    pub fn begin(request: &impl HttpMessage) -> Rc<Self> {
        let id = RequestId::of_request(request);
        let context = Rc::new(Self {
            id,
            caller: OnceCell::new(),
            body_read_at: Cell::default(),
            language: OnceCell::new(),
            allowance: Cell::default(),
            computed: Cell::default(),
        });
        request.extensions_mut().insert(context.clone());
        context
    }

    /// The context of a request.
    pub fn of(request: &HttpRequest) -> Rc<Self> {
        let known = request.extensions().get::<Rc<Self>>().cloned();
        known.unwrap_or_else(|| Self::begin(request))
    }

    /// When it had arrived, with its body.
    pub fn arrived_at(&self) -> Instant {
        self.body_read_at.get().unwrap_or_else(Instant::now)
    }

    /// The number that stands for its caller.
    pub fn caller_id(&self) -> u64 {
        self.caller.get().map_or(0, Caller::id)
    }

    /// Runs a part of the calculation, and adds its time to [`RequestContext::computed`].
    pub fn compute<T>(&self, work: impl FnOnce() -> T) -> T {
        let started = Instant::now();
        let done = work();
        self.add_computed(started.elapsed());
        done
    }

    /// Adds time that was computed for the request on another thread.
    pub fn add_computed(&self, time: Duration) {
        self.computed.set(self.computed.get() + time);
    }

    /// The time that was computed so far.
    pub fn computed(&self) -> Duration {
        self.computed.get()
    }
}
